//! What loft and lie that are off do to the shot, in figures: where the ball starts, how far it goes, what the sole does.
//!
//! The start is geometry: a face of loft `λ` that is turned about the line of play by an error of lie `Δ` looks
//! `atan(tan λ · sin Δ)` to the side, toward the heel where the lie is upright (`clubphysics::lie`). The flight is taken as straight,
//! so that the distance is that of the ground; what a ball does in the air beyond that is not counted.

use clubphysics::lie::aim_error_deg;
use fact::{Fact, Told};
use trade::kind::{ClubKind, Hand};
use trade::model::Library;
use trade::reading::What;
use trade::sheet::SheetClub;

/// Less than this is not told, degrees: a machine for loft and lie does not show it (common practice, no source).
const LEAST_DEG: f64 = 0.25;
/// Distance for which the side is told, m.
const AT_M: f64 = 100.0;
/// Carry for a degree of loft, m: from wedges to long irons (common practice, no source).
const CARRY_M: (f64, f64) = (1.5, 4.0);

fact::facts! {
    /// What an angle that is off does to the shot.
    pub enum AngleEffect: "angle_effect" {
        /// The lie is off: the ball starts left of the target.
        Left {
            /// How far the lie is off, degrees; upright is positive.
            off_deg: f64,
            /// How far left the face looks, degrees.
            aim_deg: f64,
            /// What that is at the distance, metres.
            by_m: f64,
            /// The distance, metres.
            at_m: f64,
        },
        /// The lie is off: the ball starts right of the target.
        Right {
            /// How far the lie is off, degrees; upright is positive.
            off_deg: f64,
            /// How far right the face looks, degrees.
            aim_deg: f64,
            /// What that is at the distance, metres.
            by_m: f64,
            /// The distance, metres.
            at_m: f64,
        },
        /// The loft is strong: the ball goes farther.
        Farther {
            /// How far the loft is off, degrees.
            off_deg: f64,
            /// At least so much, metres.
            from_m: f64,
            /// At most so much, metres.
            to_m: f64,
        },
        /// The loft is weak: the ball goes less far.
        Shorter {
            /// How far the loft is off, degrees.
            off_deg: f64,
            /// At least so much, metres.
            from_m: f64,
            /// At most so much, metres.
            to_m: f64,
        },
        /// Bending the loft turns the sole with it.
        Bounce {
            /// Bounce of the head as it is now, degrees.
            now_deg: f64,
            /// Bounce once the loft is as asked, degrees.
            then_deg: f64,
        },
    }
}

/// What a reading of loft or lie that is off does, by the sheet; nothing for one that is as asked.
///
/// # Examples
///
/// ```
/// use bench::angle_effect::{AngleEffect, aim};
/// use trade::kind::Hand;
///
/// // By hand: tan 46° · sin 1° = 0.018 073, so atan of it 1.0354°, and 1.807 m at 100 m.
/// let Some(AngleEffect::Left { aim_deg, by_m, .. }) = aim(46.0, 1.0, Hand::Right) else { panic!("upright is left") };
/// assert!((aim_deg - 1.0354).abs() < 1e-4 && (by_m - 1.8073).abs() < 1e-4);
/// // For a left-hander the heel is on the other side.
/// assert!(matches!(aim(46.0, 1.0, Hand::Left), Some(AngleEffect::Right { .. })));
/// ```
#[must_use]
pub fn aim(loft_deg: f64, off_deg: f64, hand: Hand) -> Option<AngleEffect> {
    if off_deg.abs() < LEAST_DEG {
        return None;
    }
    let toward_heel_deg: f64 = aim_error_deg(loft_deg, off_deg);
    let (aim_deg, by_m) = (toward_heel_deg.abs(), AT_M * toward_heel_deg.to_radians().tan().abs());
    let left = (toward_heel_deg > 0.0) == (hand == Hand::Right);
    Some(if left {
        AngleEffect::Left { off_deg, aim_deg, by_m, at_m: AT_M }
    } else {
        AngleEffect::Right { off_deg, aim_deg, by_m, at_m: AT_M }
    })
}

/// What one reading does, as it is told.
#[must_use]
pub(crate) fn effects(library: &Library, club: &SheetClub, hand: Hand, what: What, read_deg: f64) -> Vec<Told> {
    let mut told = Vec::new();
    match what {
        What::Lie => told.extend(aim(club.loft_deg, read_deg - club.lie_deg, hand).map(|effect| effect.told())),
        What::Loft => {
            let off_deg = read_deg - club.loft_deg;
            let head = library.head(&club.head_model).ok();
            // A putt rolls: a degree of its loft is not told in metres of carry.
            if off_deg.abs() < LEAST_DEG || head.is_some_and(|head| head.club_kind == ClubKind::Putter) {
                return told;
            }
            let (from_m, to_m) = (CARRY_M.0 * off_deg.abs(), CARRY_M.1 * off_deg.abs());
            told.push(if off_deg < 0.0 {
                AngleEffect::Farther { off_deg: -off_deg, from_m, to_m }.told()
            } else {
                AngleEffect::Shorter { off_deg, from_m, to_m }.told()
            });
            let number = head.and_then(|head| head.number(&club.number));
            if let Some((number, bounce_deg)) = number.and_then(|number| Some((number, number.bounce_deg?))) {
                let at = |loft_deg: f64| bounce_deg + loft_deg - number.loft_deg;
                told.push(AngleEffect::Bounce { now_deg: at(read_deg), then_deg: at(club.loft_deg) }.told());
            }
        }
        _ => {}
    }
    told
}
