//! A plain mass model of a finished club, for what must be known before parts are chosen: the swing weight that equal inertia
//! asks of each club, and the head masses that can reach a swing weight at all.
//!
//! Model (derived; no readings enter it):
//! - The axis starts at the outside of the grip's cap, where the finished club sits on the stop of the scale. The
//!   shaft's butt end lies one cap thickness beyond it.
//! - The shaft has a mass line that runs straight from butt to tip, fixed by the raw blank's mass, length and balance
//!   point; tip trim and butt cut take its ends off.
//! - Head, ferrule, adhesive, adapter and tip weight are points on the axis, where the belief has them too
//!   (`trade::places`); the ferrule is turned.
//! - Grip and tape are rods of their length about their centre; a head has its own inertia (`trade::places`).
//! - The mass of the head is free: it is what a swing weight or an inertia is solved for.
//!
//! Domain: the nominal figures of the models. Accuracy: that of the models' own figures; it orders heads and steps
//! swing weights, it does not forecast a reading.

use clubphysics::trim::Shaft;
use quantity::{A0_POINTS, FULCRUM_IN, INCH_MM, POINT_G_IN};
use trade::error::TradeError;
use trade::error::{Entry, FindIt, NotFound, within};
use trade::grip::GripModel;
use trade::head::{HeadModel, HeadNumber};
use trade::kind::LengthTo;
use trade::model::Library;
use trade::places::{HEAD_INERTIA_KG_CM2, Places, turned_g};
use trade::shaft::ShaftModel;
use trade::sheet::SheetClub;
use trade::shop::Shop;
use trade::tape::TapeModel;
use trade::wrap::Wraps;
use trade::wrap::tape_on;

/// Square millimetres grams in a kg·cm².
const G_MM2_PER_KG_CM2: f64 = 100_000.0;
/// Centre of a tip weight above the tip's end, mm: half of a usual one of 20 mm (common practice, no source).
const TIP_WEIGHT_ABOVE_TIP_MM: f64 = 10.0;
/// One mass on the axis.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Mass {
    mass_g: f64,
    /// From the stop.
    at_mm: f64,
    /// Its own inertia about its centre.
    own_g_mm2: f64,
}

impl Mass {
    const fn point(mass_g: f64, at_mm: f64) -> Self {
        Self { mass_g, at_mm, own_g_mm2: 0.0 }
    }

    fn rod(mass_g: f64, at_mm: f64, length_mm: f64) -> Self {
        Self { mass_g, at_mm, own_g_mm2: mass_g * length_mm * length_mm / 12.0 }
    }
}

/// A club without its head and tip weight, and where these two go.
#[derive(Debug, Clone, PartialEq)]
pub struct MassModel {
    fixed: Vec<Mass>,
    /// Where the head's centre lies, from the stop.
    pub head_at_mm: f64,
    /// Where a tip weight lies, from the stop.
    pub tip_weight_at_mm: f64,
    /// The shaft after both cuts, from its butt end to its tip.
    pub cut_shaft_mm: f64,
    /// What the butt cut takes; negative where the blank is too short.
    pub butt_cut_mm: f64,
}

/// What a club is made of, for the model.
#[derive(Debug, Clone, Copy)]
pub struct Ingredients<'a> {
    /// The head model: where its centre lies and how deep its bore is.
    pub head: &'a HeadModel,
    /// The number of that model: how far the bottom of its bore is from the ground.
    pub number: &'a HeadNumber,
    /// The shaft model, with the blank for this number.
    pub shaft: &'a ShaftModel,
    /// Raw mass of the shaft, where another than the blank's nominal one is meant.
    pub shaft_mass_g: Option<f64>,
    /// What the grip weighs, where its centre lies and how thick its cap is.
    pub grip: &'a GripModel,
    /// Mass of the grip, where another than the nominal one is meant.
    pub grip_mass_g: Option<f64>,
    /// Mass of the adapter, g, and its length, mm; none where the shaft goes straight into the bore.
    pub adapter: Option<(f64, f64)>,
    /// Mass of the ferrule before it is turned, g, and its length, mm; none where there is no ferrule.
    pub ferrule: Option<(f64, f64)>,
    /// Adhesive that the joint takes.
    pub adhesive_g: f64,
    /// What a layer under the grip weighs; none for no tape.
    pub tape: Option<&'a TapeModel>,
    /// Layers of tape.
    pub wraps: Wraps,
    /// How long the club is to be, from where the shaft axis meets the ground to `length_to`.
    pub length_mm: f64,
    /// Where that length ends at the butt: at the cap or at the end of the shaft.
    pub length_to: LengthTo,
}

impl<'a> Ingredients<'a> {
    /// The nominal ingredients of a club of a sheet. What the sheet leaves out is the shop's own.
    ///
    /// # Errors
    /// A model that is not in the library.
    pub fn of_sheet(club: &SheetClub, library: &'a Library, shop: &Shop) -> Result<Self, TradeError> {
        let (head, number) = library.head_number(&club.head_model, &club.number)?;
        let ferrule = club.ferrule_model.as_deref().map(|code| library.ferrule(code)).transpose()?;
        let adhesive = club.adhesive.as_deref().or(shop.adhesive.as_deref());
        let adhesive = adhesive.map(|code| library.adhesive(code)).transpose()?;
        let tape = club.tape.as_deref().or(shop.tape.as_deref()).map(|code| library.tape(code)).transpose()?;
        let setting = club.adapter_setting.as_deref();
        let adapter = library.adapters_of(&head.code).next().filter(|_| head.takes_adapter);
        let adapter = adapter.map(|a| (a.mass_g, a.lifts_mm(setting)));
        Ok(Self {
            head,
            number,
            shaft: library.shaft(&club.shaft_model)?,
            shaft_mass_g: None,
            grip: library.grip(&club.grip_model)?,
            grip_mass_g: None,
            adapter,
            ferrule: ferrule.map(|f| (f.mass_g, f.length_mm)),
            adhesive_g: adhesive.map_or(0.0, |a| a.joint_mass_g),
            tape,
            wraps: club.wraps,
            length_mm: club.length_mm,
            length_to: club.length_to,
        })
    }
}

impl MassModel {
    /// The club without head and tip weight.
    ///
    /// # Errors
    /// [`TradeError`] where the shaft has no blank for the number or the club would be shorter than its grip.
    pub fn of(i: &Ingredients<'_>) -> Result<Self, TradeError> {
        let cap_mm = i.grip.cap_mm;
        let to_cap_mm = i.length_to.to_cap_mm(i.length_mm, cap_mm);
        let tip_to_ground_mm = i.number.bore_to_ground_mm + i.adapter.map_or(0.0, |(_, length_mm)| length_mm);
        let cut_shaft_mm = to_cap_mm - cap_mm - tip_to_ground_mm;
        let blank = i.shaft.blank(&i.number.number).ok_or_else(|| {
            let (number, model) = (i.number.number.clone(), i.shaft.code.clone());
            TradeError::not_found(&NotFound::Blank { number, model }, &FindIt::ChooseShaft)
        })?;
        if !cut_shaft_mm.is_finite() || cut_shaft_mm < i.grip.length_mm {
            let low_mm = i.grip.length_mm + tip_to_ground_mm + cap_mm;
            within(Entry::LengthOf { number: i.number.number.clone() }, i.length_mm, low_mm, 1300.0, "mm")?;
        }
        let trim_mm = i.shaft.tip_trim_mm(&i.number.number);
        let butt_cut_mm = blank.length_mm - trim_mm - cut_shaft_mm;
        let raw_g = i.shaft_mass_g.unwrap_or(blank.mass_g);
        let raw = Shaft { mass_g: raw_g, length_mm: blank.length_mm, balance_point_mm: blank.balance_point_mm };
        // A blank that is too short is taken as it is: the check of the sheet says so, the arithmetic goes on.
        let shaft = piece(raw, butt_cut_mm.max(0.0), blank.length_mm - trim_mm)?;
        let places = Places::new(cut_shaft_mm, tip_to_ground_mm, i.head.bore_depth_mm);
        let mut fixed = vec![
            Mass { at_mm: shaft.at_mm + cap_mm, ..shaft },
            Mass::rod(i.grip_mass_g.unwrap_or(i.grip.mass_g), i.grip.centre_mm, i.grip.length_mm),
            Mass::point(i.adhesive_g, cap_mm + places.adhesive_mm()),
        ];
        if let Some((mass_g, length_mm)) = i.ferrule {
            fixed.push(Mass::point(turned_g(mass_g), cap_mm + places.ferrule_mm(length_mm)));
        }
        if let Some((mass_g, length_mm)) = i.adapter {
            fixed.push(Mass::point(mass_g, cap_mm + places.adapter_mm(length_mm)));
        }
        if let Some(tape) = i.tape {
            let (mass_g, arm_mm, _) = tape_on(i.wraps, tape, i.grip, i.shaft.butt_diameter_mm);
            fixed.push(Mass::rod(mass_g, cap_mm + arm_mm, i.grip.length_mm));
        }
        Ok(Self {
            fixed,
            head_at_mm: cap_mm + places.head_mm(i.head.offset_prior_mm().0),
            tip_weight_at_mm: cap_mm + places.tip_mm - TIP_WEIGHT_ABOVE_TIP_MM,
            cut_shaft_mm,
            butt_cut_mm,
        })
    }

    /// Swing weight with this head and this much in the tip, in points since A0.
    #[must_use]
    pub fn swing_weight_points(&self, head_g: f64, tip_weight_g: f64) -> f64 {
        let fixed: f64 = self.fixed.iter().map(|m| m.mass_g * arm_in(m.at_mm)).sum();
        (fixed + head_g * arm_in(self.head_at_mm) + tip_weight_g * arm_in(self.tip_weight_at_mm)) / POINT_G_IN
            - A0_POINTS
    }

    /// The head that gives this swing weight with nothing in the tip.
    #[must_use]
    pub(crate) fn head_for_swing_weight_g(&self, swing_weight_points: f64) -> f64 {
        (swing_weight_points - self.swing_weight_points(0.0, 0.0)) * POINT_G_IN / arm_in(self.head_at_mm)
    }

    /// Moment of inertia about the butt with this head, kg·cm².
    #[must_use]
    pub fn inertia_kg_cm2(&self, head_g: f64) -> f64 {
        let fixed: f64 = self.fixed.iter().map(|m| m.mass_g * m.at_mm * m.at_mm + m.own_g_mm2).sum();
        (fixed + head_g * self.head_at_mm * self.head_at_mm) / G_MM2_PER_KG_CM2 + HEAD_INERTIA_KG_CM2.0
    }

    /// The head that gives this moment of inertia.
    #[must_use]
    pub(crate) fn head_for_inertia_g(&self, inertia_kg_cm2: f64) -> f64 {
        (inertia_kg_cm2 - self.inertia_kg_cm2(0.0)) * G_MM2_PER_KG_CM2 / (self.head_at_mm * self.head_at_mm)
    }

    /// Total mass with this head.
    #[must_use]
    pub fn total_g(&self, head_g: f64) -> f64 {
        self.fixed.iter().map(|m| m.mass_g).sum::<f64>() + head_g
    }
}

fn arm_in(at_mm: f64) -> f64 {
    at_mm / INCH_MM - FULCRUM_IN
}

/// The piece of a raw shaft between two places, its centre counted from the first of them.
fn piece(raw: Shaft, from_mm: f64, to_mm: f64) -> Result<Mass, TradeError> {
    let [mass_g, first, second] = raw.mass_line()?.part(from_mm, to_mm).moments();
    let at_mm = first / mass_g;
    Ok(Mass { mass_g, at_mm, own_g_mm2: second - mass_g * at_mm * at_mm })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A fixture of a 5-iron as a rod, a point and a rod: total moment of inertia and swing weight computed
    /// independently by hand in cm (derived; g = 9.80665 not needed): head 256 g at 95 cm, shaft 120 g over 93.5 cm
    /// about 46.75 cm, grip 50 g over 27 cm about 10.5 cm gives 2668.6 kg·cm² and C9.5; the head's own inertia of 3 kg·cm² comes to it.
    #[test]
    fn fixture_of_a_five_iron() {
        let even = Shaft { mass_g: 120.0, length_mm: 935.0, balance_point_mm: 467.5 };
        let model = MassModel {
            fixed: vec![piece(even, 0.0, 935.0).unwrap(), Mass::rod(50.0, 105.0, 270.0)],
            head_at_mm: 950.0,
            tip_weight_at_mm: 925.0,
            cut_shaft_mm: 935.0,
            butt_cut_mm: 0.0,
        };
        assert!((model.inertia_kg_cm2(256.0) - 2671.6).abs() < 0.05, "{}", model.inertia_kg_cm2(256.0));
        assert!(
            (model.swing_weight_points(256.0, 0.0) - 29.5).abs() < 0.05,
            "{}",
            model.swing_weight_points(256.0, 0.0)
        );
        assert!((model.total_g(256.0) - 426.0).abs() < 1e-9);
    }
}
