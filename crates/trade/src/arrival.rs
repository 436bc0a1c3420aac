//! What was read of a club from elsewhere, and which of it is odd: asked about before it is believed.

use crate::club_name::ClubName;
use crate::error::{TradeError, within};
use crate::kind::ClubKind;
use crate::model::as_it_came::usual;
use crate::pendulum::Pendulum;
use crate::reading::{What, check_value};
use crate::reading_figure::ReadingFigure;
use clubphysics::inertia::{InertiaInput, PendulumInput, inertia};
use quantity::{FULCRUM_IN, INCH_MM, SwingMoment};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A club from elsewhere as it is noted: what it is, and what was read of it on arrival.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Arrival {
    /// Swing weight, points since A0.
    #[schema(minimum = -60, maximum = 160)]
    pub swing_weight_points: Option<f64>,
    /// Mass of the whole club.
    #[schema(minimum = 200, maximum = 1000)]
    pub total_mass_g: Option<f64>,
    /// Length from where the shaft axis meets the ground to the cap.
    #[schema(minimum = 400, maximum = 1350)]
    pub length_mm: Option<f64>,
    /// Frequency, cycles a minute.
    #[schema(minimum = 50, maximum = 600)]
    pub cpm: Option<f64>,
    /// Period of one full swing, there and back, hung from the shop's pivot or from `pivot_mm`. With the mass and the swing weight
    /// it gives the inertia.
    #[schema(minimum = 1, maximum = 4)]
    pub swing_period_s: Option<f64>,
    /// Where the club hung, from the outside of its cap; left out: the shop's own pivot.
    #[schema(minimum = -200, maximum = 500)]
    pub pivot_mm: Option<f64>,
    /// Moment of inertia about the butt, where a machine showed it.
    #[schema(minimum = 500, maximum = 9000)]
    pub swing_inertia_kg_cm2: Option<f64>,
    /// Loft as it was measured, between the face and a plumb line.
    #[schema(minimum = 0, maximum = 80)]
    pub loft_deg: Option<f64>,
    /// Lie as it was measured: the angle between shaft and ground.
    #[schema(minimum = 40, maximum = 80)]
    pub lie_deg: Option<f64>,
    /// Outside diameter of the grip 50 mm below the cap, for the size of the next one.
    #[schema(minimum = 15, maximum = 50)]
    pub grip_size_mm: Option<f64>,
    /// What the head weighs, where it was ever weighed loose.
    #[schema(minimum = 120, maximum = 600)]
    pub head_mass_g: Option<f64>,
    /// What the shaft weighs as cut, where it was ever weighed loose.
    #[schema(minimum = 20, maximum = 250)]
    pub shaft_mass_g: Option<f64>,
    /// What its grip weighs, where that is known.
    #[schema(minimum = 10, maximum = 250)]
    pub grip_mass_g: Option<f64>,
}

impl Arrival {
    /// The figures that were read, with what each is.
    #[must_use]
    pub fn read(&self) -> Vec<(What, f64)> {
        let read = [
            (What::SwingWeight, self.swing_weight_points),
            (What::TotalMass, self.total_mass_g),
            (What::FinishedLength, self.length_mm),
            (What::Cpm, self.cpm),
            (What::SwingInertia, self.swing_inertia_kg_cm2),
            (What::Loft, self.loft_deg),
            (What::Lie, self.lie_deg),
        ];
        read.into_iter().filter_map(|(what, value)| Some((what, value?))).collect()
    }

    /// The same with the inertia in place of the period that it was timed from.
    ///
    /// # Errors
    /// A period without the mass and the swing weight that it needs, or one that no club of that balance point has: most often
    /// the swings were counted wrong.
    pub fn with_inertia(mut self, pendulum: &Pendulum) -> Result<Self, TradeError> {
        let Some(period_s) = self.swing_period_s.take() else { return Ok(self) };
        let (Some(total_mass_g), Some(points)) = (self.total_mass_g, self.swing_weight_points) else {
            return Err(TradeError::refused(ArrivalFault::PeriodAlone));
        };
        let gravity_m_s2 = Some(pendulum.gravity_m_s2);
        let balance_point_mm = FULCRUM_MM + SwingMoment::from_points(points).g_in() * INCH_MM / total_mass_g;
        let pendulum = PendulumInput {
            period_s,
            total_mass_g,
            balance_point_mm,
            pivot_mm: self.pivot_mm.take().unwrap_or(pendulum.pivot_mm),
            amplitude_deg: pendulum.amplitude_deg,
            ..PendulumInput::default()
        };
        let found = inertia(&InertiaInput { pendulum: Some(pendulum), gravity_m_s2, ..InertiaInput::default() })?;
        let timed = found.pendulum.map(|swung| swung.inertia_about_butt_kg_cm2);
        self.swing_inertia_kg_cm2 = timed.or(self.swing_inertia_kg_cm2);
        Ok(self)
    }

    /// Refuses figures that no club has.
    ///
    /// # Errors
    /// [`TradeError::Impossible`], named after the figure.
    pub fn check(&self) -> Result<(), TradeError> {
        for (what, value) in self.read() {
            check_value(what, value)?;
        }
        for (what, value) in [
            (What::HeadMass, self.head_mass_g),
            (What::ShaftMass, self.shaft_mass_g),
            (What::GripMass, self.grip_mass_g),
            (What::SwingPeriod, self.swing_period_s),
        ] {
            if let Some(value) = value {
                check_value(what, value)?;
            }
        }
        if let Some(pivot_mm) = self.pivot_mm {
            within("pivot_mm", pivot_mm, -200.0, 500.0, "mm")?;
        }
        self.grip_size_mm.map_or(Ok(()), |size| within("grip_size_mm", size, 15.0, 50.0, "mm").map(|_| ()))
    }
}

fact::facts! {
    /// What is refused of a club that came in.
    pub enum ArrivalFault: "arrival_fault" {
        /// A period says nothing of a club whose mass and balance are not known.
        PeriodAlone,
    }
}

fact::facts! {
    /// What is odd of the figures of a club that came in: more often a slip than such a club.
    pub enum ArrivalOdd: "arrival_odd" {
        /// Hardly any club of its kind has such a figure.
        OfKind {
            /// What was read.
            what: What,
            /// The figure.
            read: ReadingFigure,
            /// What the club was noted as.
            club: ClubName,
            /// The least that is usual.
            from: ReadingFigure,
            /// The most that is usual.
            to: ReadingFigure,
        },
        /// The pieces weigh more than the club.
        PiecesOverWhole {
            /// What the weighed pieces come to.
            pieces_g: f64,
            /// What the whole club weighs.
            total_g: f64,
        },
        /// The club weighs far more than all its pieces.
        WholeOverPieces {
            /// What the weighed pieces come to.
            pieces_g: f64,
            /// What the whole club weighs.
            total_g: f64,
        },
        /// Its swing weight and its mass would have it balance where no club does.
        Balance {
            /// Where it would balance, from the butt.
            balance_mm: f64,
            /// How long it is to the cap, as it was read on arrival.
            length_mm: f64,
        },
    }
}

/// How far a figure of a kind of club may lie from what is usual for its number before it is asked about. All of them are wide,
/// and common practice from memory, no source; a child's club is asked about, and taken.
struct Width {
    length_mm: f64,
    mass_share: (f64, f64),
    loft_deg: f64,
    lie_deg: f64,
    cpm: Option<(f64, f64)>,
    points: Option<(f64, f64)>,
    head_g: f64,
}

fn width(kind: ClubKind) -> Width {
    let of = |mass_share, cpm| Width {
        length_mm: 4.5 * INCH_MM,
        mass_share,
        loft_deg: 9.0,
        lie_deg: 6.0,
        cpm: Some(cpm),
        points: Some((10.0, 55.0)),
        head_g: 60.0,
    };
    match kind {
        // Published notes on clamped shafts name 200 to 350 cpm with the head on; stiff wedges read more.
        ClubKind::Iron | ClubKind::Wedge => of((0.72, 1.25), (200.0, 420.0)),
        ClubKind::Wood => of((0.72, 1.3), (160.0, 340.0)),
        ClubKind::Hybrid => of((0.72, 1.3), (180.0, 380.0)),
        ClubKind::Putter => Width {
            length_mm: 17.0 * INCH_MM,
            mass_share: (0.72, 1.6),
            loft_deg: 6.0,
            lie_deg: 10.0,
            cpm: None,
            points: None,
            head_g: 170.0,
        },
    }
}

/// Shafts as cut, from the lightest of composite to heavy steel, and grips, from a child's to a putter's, g.
const SHAFT_G: (f64, f64) = (30.0, 160.0);
const GRIP_G: (f64, f64) = (18.0, 140.0);
/// What a grip and the joint come to beside head and shaft, g.
const REST_G: f64 = 57.0;
/// The pieces may come to this much more than the whole by what scales scatter, and the whole to that much more than head, shaft
/// and grip by adhesive, ferrule, tape and a weight in the tip, g.
const SCALES_G: f64 = 1.0;
const JOINT_AND_TIP_G: f64 = 40.0;
/// Where a gripped club balances, as a share of its length from the butt: 0.73 to 0.80 for most, a little less with a
/// counterweight, more for a putter with a light shaft (worked out of usual masses and places).
const BALANCE_SHARE: (f64, f64) = (0.62, 0.90);
/// Fulcrum of the balance scale that letters are of, from the butt.
const FULCRUM_MM: f64 = FULCRUM_IN * INCH_MM;

impl Arrival {
    /// What is odd of the figures for such a club, or of one figure beside another.
    #[must_use]
    pub fn odd(&self, kind: ClubKind, number: &str) -> Vec<ArrivalOdd> {
        let (usual, width) = (usual(kind, number), width(kind));
        let about = |middle: f64, by: f64| Some(((middle - by).max(0.0), middle + by));
        let whole_g = usual.head_g + usual.shaft_g + REST_G;
        let asked = [
            (What::FinishedLength, self.length_mm, about(usual.length_mm, width.length_mm)),
            (What::TotalMass, self.total_mass_g, Some((width.mass_share.0 * whole_g, width.mass_share.1 * whole_g))),
            (What::Loft, self.loft_deg, about(usual.loft_deg, width.loft_deg)),
            (What::Lie, self.lie_deg, about(usual.lie_deg, width.lie_deg)),
            (What::Cpm, self.cpm, width.cpm),
            (What::SwingWeight, self.swing_weight_points, width.points),
            (What::HeadMass, self.head_mass_g, about(usual.head_g, width.head_g)),
            (What::ShaftMass, self.shaft_mass_g, Some(SHAFT_G)),
            (What::GripMass, self.grip_mass_g, Some(GRIP_G)),
        ];
        let mut odd: Vec<ArrivalOdd> = asked
            .into_iter()
            .filter_map(|(what, read, range)| Some((what, read?, range?)))
            .filter(|(_, read, (low, high))| !(low..=high).contains(&read))
            .map(|(what, read, (low, high))| ArrivalOdd::OfKind {
                what,
                read: ReadingFigure::of(what, read),
                club: ClubName::of(kind, number),
                from: ReadingFigure::of(what, low.round()),
                to: ReadingFigure::of(what, high.round()),
            })
            .collect();
        odd.extend(self.at_odds());
        odd
    }

    /// Figures that cannot all be true of one club.
    fn at_odds(&self) -> Vec<ArrivalOdd> {
        let mut odd = Vec::new();
        let Some(total_g) = self.total_mass_g else { return odd };
        let pieces = [self.head_mass_g, self.shaft_mass_g, self.grip_mass_g];
        let pieces_g: f64 = pieces.iter().flatten().sum();
        if pieces_g > total_g + SCALES_G {
            odd.push(ArrivalOdd::PiecesOverWhole { pieces_g, total_g });
        } else if pieces.iter().all(Option::is_some) && total_g > pieces_g + JOINT_AND_TIP_G {
            odd.push(ArrivalOdd::WholeOverPieces { pieces_g, total_g });
        }
        if let (Some(points), Some(length_mm)) = (self.swing_weight_points, self.length_mm) {
            // The moment about the fulcrum is the mass times the way from there to where the club balances.
            let moment_g_mm = SwingMoment::from_points(points).g_in() * INCH_MM;
            let balance_mm = FULCRUM_MM + moment_g_mm / total_g;
            let (low, high) = BALANCE_SHARE;
            if !(low * length_mm..=high * length_mm).contains(&balance_mm) {
                odd.push(ArrivalOdd::Balance { balance_mm, length_mm });
            }
        }
        odd
    }
}
