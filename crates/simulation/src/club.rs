//! A true club: masses on an axis, weighed up by their moments. This is the simulation's own physics; it shares no line
//! with what forecasts the clubs.
//!
//! Arms are millimetres from the butt end of the bare shaft. Once the grip is on, the club sits on the grip's cap and
//! every arm grows by its thickness; the grip's own arm is counted from the outside of its cap.

use trade::kind::Role;

/// One inch.
const INCH_MM: f64 = 25.4;
/// One point: 1.75 oz·in in g·mm (the trade's scale, from memory; the ounce is 28.349523125 g by definition).
const POINT_G_MM: f64 = 1.75 * 28.349_523_125 * INCH_MM;
/// Points from no moment to A0: 161 oz·in at 1.75 oz·in a point.
const TO_A0_POINTS: f64 = 92.0;
/// The fulcrum, from the stop.
const FULCRUM_MM: f64 = 14.0 * INCH_MM;

/// One mass on the axis.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mass {
    /// Which piece it is: head, shaft, grip …
    pub role: Role,
    /// What the piece truly weighs.
    pub mass_g: f64,
    /// Its centre from the butt end of the shaft; the grip's from the outside of its cap.
    pub arm_mm: f64,
}

/// A club as it truly is.
#[derive(Debug, Clone, PartialEq)]
pub struct TrueClub {
    /// Every piece on it, with what it truly weighs and where it truly lies.
    pub masses: Vec<Mass>,
    /// Thickness of the grip's cap.
    pub cap_mm: f64,
    /// Cut shaft.
    pub shaft_mm: f64,
    /// From the bottom of the bore to the ground.
    pub bore_to_ground_mm: f64,
}

impl TrueClub {
    /// Swing weight with these pieces on, points since A0.
    #[must_use]
    pub fn swing_weight_points(&self, on: &[Role]) -> f64 {
        let gripped = on.contains(&Role::Grip);
        let moment_g_mm: f64 = self
            .masses
            .iter()
            .filter(|m| on.contains(&m.role))
            .map(|m| {
                let lifted_mm = if gripped && m.role != Role::Grip { self.cap_mm } else { 0.0 };
                m.mass_g * (m.arm_mm + lifted_mm - FULCRUM_MM)
            })
            .sum();
        moment_g_mm / POINT_G_MM - TO_A0_POINTS
    }

    /// Mass with these pieces on, g.
    #[must_use]
    pub fn mass_g(&self, on: &[Role]) -> f64 {
        self.masses.iter().filter(|m| on.contains(&m.role)).map(|m| m.mass_g).sum()
    }

    /// Balance point with these pieces on, mm from the end that sits on the stop; none of nothing.
    #[must_use]
    pub fn balance_point_mm(&self, on: &[Role]) -> Option<f64> {
        let mass_g = self.mass_g(on);
        let moment_g_mm = (self.swing_weight_points(on) + TO_A0_POINTS) * POINT_G_MM;
        (mass_g > 0.0).then(|| FULCRUM_MM + moment_g_mm / mass_g)
    }

    /// Swing weight of the finished, dry club, points since A0.
    #[must_use]
    pub fn finish_points(&self) -> f64 {
        self.swing_weight_points(&FINISHED)
    }
}

/// What is on a finished, dry club.
pub const FINISHED: [Role; 7] =
    [Role::Head, Role::Shaft, Role::Ferrule, Role::TipWeight, Role::Adhesive, Role::Tape, Role::Grip];
/// What is on a dry club.
pub const DRY: [Role; 4] = [Role::Head, Role::Shaft, Role::Ferrule, Role::Turnings];
/// What is on a cured club without grip, its ferrule turned.
pub const CURED: [Role; 5] = [Role::Head, Role::Shaft, Role::Ferrule, Role::TipWeight, Role::Adhesive];

/// What was put together.
#[derive(Debug, Clone, PartialEq)]
pub struct Build {
    /// Code of the head.
    pub head: String,
    /// Code of the shaft.
    pub shaft: String,
    /// Code of the grip.
    pub grip: String,
    /// Nominal grams of what goes into the tip, the lowest first.
    pub tips_g: Vec<f64>,
    /// Cut off the tip.
    pub tip_trim_mm: f64,
    /// Length that the shaft should be cut to.
    pub cut_mm: f64,
}

/// What is wrong with a club.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Faults {
    /// The head differs from what its label says by so many grams.
    pub head_g: f64,
    /// The shaft was cut so much too long.
    pub cut_mm: f64,
    /// The tip weight is not in.
    pub tip_left_out: bool,
    /// The ferrule is not on.
    pub ferrule_missing: bool,
}

/// Mass and centre of a raw shaft between two cuts, by a density with a slope that gives its balance point and a bulge
/// that changes neither mass nor balance point: `λ = m/L·(1 + s·u + k·(3u² − 1)/2)`, `u` from −1 at the butt to 1 at
/// the tip, `s = 6·(c/L − ½)` (derived; the second Legendre polynomial).
#[must_use]
pub fn cut_shaft(mass_g: f64, length_mm: f64, centre_mm: f64, bulge: f64, butt_mm: f64, tip_mm: f64) -> (f64, f64) {
    let s = 6.0 * (centre_mm / length_mm - 0.5);
    let zeroth = |u: f64| u + s * u * u / 2.0 + bulge * (u.powi(3) - u) / 2.0;
    let first = |u: f64| u * u / 2.0 + s * u.powi(3) / 3.0 + bulge * (0.75 * u.powi(4) - 0.5 * u * u) / 2.0;
    let (from, to) = (2.0 * butt_mm / length_mm - 1.0, 2.0 * (length_mm - tip_mm) / length_mm - 1.0);
    let share = zeroth(to) - zeroth(from);
    let middle = (first(to) - first(from)) / share;
    (mass_g / 2.0 * share, (middle + 1.0) * length_mm / 2.0 - butt_mm)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn club(masses: &[(Role, f64, f64)]) -> TrueClub {
        let masses = masses.iter().map(|&(role, mass_g, cm)| Mass { role, mass_g, arm_mm: cm * 10.0 }).collect();
        TrueClub { masses, cap_mm: 0.0, shaft_mm: 935.0, bore_to_ground_mm: 0.0 }
    }

    /// Computed by hand: 5-iron M = 212.57 oz·in, driver 208.61 oz·in, to the hundredth; a point is 1.75 oz·in.
    #[test]
    fn moments_of_an_iron_and_a_driver() {
        let iron = club(&[(Role::Head, 256.0, 95.0), (Role::Shaft, 120.0, 46.75), (Role::Grip, 50.0, 10.5)]);
        let driver = club(&[(Role::Head, 200.0, 112.0), (Role::Shaft, 60.0, 52.0), (Role::Grip, 50.0, 10.5)]);
        assert!(((iron.finish_points() + 92.0) * 1.75 - 212.57).abs() < 0.005);
        assert!(((driver.finish_points() + 92.0) * 1.75 - 208.61).abs() < 0.005);
        assert!((iron.mass_g(&FINISHED) - 426.0).abs() < 1e-9);
        // Computed by hand: 714.9 and 840.2 mm.
        assert!((iron.balance_point_mm(&FINISHED).expect("a club") - 714.9).abs() < 0.06);
        assert!((driver.balance_point_mm(&FINISHED).expect("a club") - 840.2).abs() < 0.06);
        assert_eq!(iron.balance_point_mm(&[]), None);
    }

    /// Derived: a cap of 3 mm lifts 390 g by 390·3 g·mm = 46.06 g·in, 0.928 point; the grip's own arm starts at its cap.
    #[test]
    fn the_cap_lifts_everything_but_the_grip() {
        let flat = club(&[(Role::Head, 390.0, 90.0), (Role::Grip, 50.0, 10.16)]);
        let capped = TrueClub { cap_mm: 3.0, ..flat.clone() };
        assert!((capped.finish_points() - flat.finish_points() - 0.9285).abs() < 0.0005);
        let bare = [Role::Head];
        assert!((capped.swing_weight_points(&bare) - flat.swing_weight_points(&bare)).abs() < 1e-12);
    }

    /// A shaft of even density: 118 g on 1000 mm, 50 mm off the butt and 100 mm off the tip leave 850 mm of it.
    #[test]
    fn a_cut_shaft_keeps_the_density_between_the_cuts() {
        let (mass_g, centre_mm) = cut_shaft(118.0, 1000.0, 500.0, 0.0, 50.0, 100.0);
        assert!((mass_g - 100.3).abs() < 1e-9 && (centre_mm - 425.0).abs() < 1e-9);
        // A bulge moves neither mass nor centre of the whole blank.
        let (mass_g, centre_mm) = cut_shaft(118.0, 1000.0, 478.0, 0.1, 0.0, 0.0);
        assert!((mass_g - 118.0).abs() < 1e-9 && (centre_mm - 478.0).abs() < 1e-9);
    }
}
