//! The soft side at the bench: what a sweep or a pluck says of it, and whether the finished club swings as it was turned.

use crate::belief::BAND_95;
use clubphysics::pluck::{PluckInput, pluck};
use clubphysics::soft_side::{Presence, SoftSideInput, SoftSideOutput, soft_side};
use fact::{Fact, Told};
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::kind::SoftSide;
use trade::soft_side::SoftSideRead;
use utoipa::ToSchema;

/// A band wider than this is no direction: the mark may be a quarter of a turn off.
const WIDEST_DEG: f64 = 45.0;

fact::facts! {
    /// What readings around a shaft say of its soft side.
    pub enum SoftSideSays: "soft_side_says" {
        /// It bends more easily one way: its stiffness.
        Stiffness {
            /// Degrees from the label.
            at_deg: f64,
            /// Half width of the 95 % band.
            band_deg: f64,
        },
        /// Likewise, and it is bowed as well.
        StiffnessAndBow {
            /// Degrees from the label, at the end on the side of the bow.
            at_deg: f64,
            /// Half width of the 95 % band.
            band_deg: f64,
            /// How far the tip stands off the axis, mm.
            bow_mm: f64,
            /// Which way, degrees from the label.
            bow_deg: f64,
        },
        /// It is bowed, and bends alike all round.
        BowAlone {
            /// How far the tip stands off the axis, mm.
            bow_mm: f64,
            /// Which way, degrees from the label.
            bow_deg: f64,
        },
        /// It bends alike all round within what would matter.
        Alike {
            /// At most so much, a share of the stiffness.
            at_most_share: f64,
        },
        /// The readings cannot tell.
        CannotTell {
            /// It could be up to this, a share of the stiffness.
            at_most_share: f64,
        },
    }
}

/// What a sweep or a pluck has found of one shaft.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct SoftSideFound {
    /// Direction to mark, degrees from the label; none where there is nothing to mark.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_deg: Option<f64>,
    /// Half width of its 95 % band, degrees.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub band_deg: Option<f64>,
    /// By how much stiffness differs: the planes have one and this share more and less than the mean, percent.
    pub asymmetry_percent: f64,
    /// Whether it is stiffness, a bow, both or nothing.
    pub says: Told,
}

impl SoftSideFound {
    /// What goes to the glue.
    #[must_use]
    pub fn read(&self) -> Option<SoftSideRead> {
        self.at_deg.map(|at_deg| SoftSideRead { at_deg, band_deg: self.band_deg })
    }
}

/// By readings at angles around the shaft.
///
/// # Errors
/// As [`soft_side`].
pub fn of_sweep(input: &SoftSideInput) -> Result<SoftSideFound, TradeError> {
    let found: SoftSideOutput = soft_side(input)?;
    let bow = found.bow_mm.zip(found.bow_direction_deg);
    let band = found.mark_deg_sd.map(|sd| found.coverage_factor_95 * sd).filter(|band| *band <= WIDEST_DEG);
    let at_most_share = found.asymmetry.at_most / 100.0;
    let (at, says) = match (found.asymmetry.presence, found.mark_deg.zip(band), bow) {
        (Presence::There, Some((at_deg, band_deg)), Some((bow_mm, bow_deg))) => {
            (Some((at_deg, band_deg)), SoftSideSays::StiffnessAndBow { at_deg, band_deg, bow_mm, bow_deg })
        }
        (Presence::There, Some((at_deg, band_deg)), None) => {
            (Some((at_deg, band_deg)), SoftSideSays::Stiffness { at_deg, band_deg })
        }
        (Presence::TooSmallToMatter, _, Some((bow_mm, bow_deg))) => (None, SoftSideSays::BowAlone { bow_mm, bow_deg }),
        (Presence::TooSmallToMatter, ..) => (None, SoftSideSays::Alike { at_most_share }),
        (Presence::There | Presence::CannotTell, ..) => (None, SoftSideSays::CannotTell { at_most_share }),
    };
    Ok(SoftSideFound {
        at_deg: at.map(|(at_deg, _)| at_deg),
        band_deg: at.map(|(_, band_deg)| band_deg),
        asymmetry_percent: found.asymmetry_percent,
        says: says.told(),
    })
}

/// By a recording of a plucked shaft on two axes. A recording feels no bow.
///
/// # Errors
/// As [`pluck`].
pub fn of_pluck(input: &PluckInput) -> Result<SoftSideFound, TradeError> {
    let found = pluck(input)?;
    let planes = found.planes;
    let at = planes.map(|planes| (planes.soft.direction_deg, BAND_95 * planes.soft.direction_deg_sd));
    let at = at.filter(|(_, band)| *band <= WIDEST_DEG);
    let asymmetry_percent = planes.map_or(0.0, |planes| planes.asymmetry_percent);
    let says = match at {
        Some((at_deg, band_deg)) => SoftSideSays::Stiffness { at_deg, band_deg },
        None => SoftSideSays::CannotTell { at_most_share: asymmetry_percent / 100.0 },
    };
    Ok(SoftSideFound {
        at_deg: at.map(|(at_deg, _)| at_deg),
        band_deg: at.map(|(_, band_deg)| band_deg),
        asymmetry_percent,
        says: says.told(),
    })
}

fact::facts! {
    /// Whether a finished club swings as its soft side was to be turned.
    pub enum TwoPlanesSay: "two_planes_say" {
        /// The soft plane is where the sheet wants it.
        AsAsked {
            /// How much slower it is than the other, cpm.
            by_cpm: f64,
        },
        /// It is a quarter of a turn off.
        Turned {
            /// How much slower the wrong plane is, cpm.
            by_cpm: f64,
        },
        /// The planes differ by less than the meter can tell.
        CannotTell {
            /// What two readings must differ by, cpm.
            least_cpm: f64,
        },
        /// The sheet asks no direction: which plane is the soft one.
        SoftAlong {
            /// How much slower it is, cpm.
            by_cpm: f64,
        },
        /// The sheet asks no direction, and the soft plane is that from heel to toe.
        SoftAcross {
            /// How much slower it is, cpm.
            by_cpm: f64,
        },
    }
}

/// What two readings of a meter that scatters by `noise_cpm` must differ by for the difference to be real, at 95 %.
#[must_use]
pub fn least_difference_cpm(noise_cpm: f64) -> f64 {
    BAND_95 * std::f64::consts::SQRT_2 * noise_cpm
}

/// What the frequencies of a finished club in two planes say of where its soft side was turned: `along_cpm` swinging along the line
/// of play, `across_cpm` from heel to toe, read by a meter that scatters by `noise_cpm`.
///
/// Not counted: a head whose centre is off the axis is slower from heel to toe by itself, about a tenth of a cycle for an iron (a
/// judgement, no source).
///
/// # Examples
///
/// ```
/// use bench::soft_side::{TwoPlanesSay, two_planes};
/// use trade::kind::SoftSide;
///
/// // Turned to the target, it swings slower along the line of play.
/// let say = two_planes(Some(SoftSide::Target), 261.0, 263.5, 0.3);
/// assert!(matches!(say, TwoPlanesSay::AsAsked { by_cpm } if (by_cpm - 2.5).abs() < 1e-9));
/// assert!(matches!(two_planes(Some(SoftSide::Heel), 261.0, 263.5, 0.3), TwoPlanesSay::Turned { .. }));
/// // 1.96·√2·0.3 = 0.83: half a cycle tells nothing.
/// assert!(matches!(two_planes(None, 261.0, 261.5, 0.3), TwoPlanesSay::CannotTell { .. }));
/// ```
#[must_use]
pub fn two_planes(asked: Option<SoftSide>, along_cpm: f64, across_cpm: f64, noise_cpm: f64) -> TwoPlanesSay {
    let least_cpm = least_difference_cpm(noise_cpm);
    let by_cpm = (across_cpm - along_cpm).abs();
    let along = along_cpm < across_cpm;
    let wanted_along = asked.map(|side| matches!(side, SoftSide::Target | SoftSide::AwayFromTarget));
    match wanted_along {
        _ if by_cpm < least_cpm => TwoPlanesSay::CannotTell { least_cpm },
        Some(wanted) if wanted == along => TwoPlanesSay::AsAsked { by_cpm },
        Some(_) => TwoPlanesSay::Turned { by_cpm },
        None if along => TwoPlanesSay::SoftAlong { by_cpm },
        None => TwoPlanesSay::SoftAcross { by_cpm },
    }
}
