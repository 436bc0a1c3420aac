//! Blunders seeded on purpose: what goes wrong, where it shows.

use crate::club::Faults;
use crate::draw::{Draw, Stream};
use crate::job::{CLUBS, SimulatedJob};
use crate::models::IRONS;
use crate::settings::Settings;
use crate::shop::SimulatedShop;

/// What can go wrong.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Blunder {
    /// The neighbouring number's head, so many grams heavier.
    NeighbourHead(f64),
    /// A head's mass was misread when it came in.
    MisreadMass(f64),
    /// The shaft was cut half an inch off.
    HalfInch(f64),
    /// The tip weight was left out when the club was put together.
    TipLeftOut,
    /// The ferrule was not on at the dry readings.
    FerruleMissing,
    /// Two digits of a swing weight reading were swapped, at this reading.
    DigitsSwapped(u64),
    /// The butt stood so many millimetres off the stop, at this reading.
    OffTheStop(u64, f64),
}

impl Blunder {
    /// The blunder of a club, if there is one.
    #[must_use]
    pub fn draw(settings: &Settings, shop: &SimulatedShop, job: &SimulatedJob, slot: usize) -> Option<Self> {
        use crate::hands::stage::{CURED, DRY, FINISH, TIP};
        let mut draw = Draw::of(settings.seed, Stream::Blunder, &[shop.id, job.number, slot as u64]);
        if !draw.happens(settings.blunders) {
            return None;
        }
        let read_at = [DRY, TIP, CURED, FINISH][draw.below(4)];
        Some(match draw.below(7) {
            0 => {
                let neighbour = if slot == 0 || (slot + 1 < CLUBS && draw.happens(0.5)) { slot + 1 } else { slot - 1 };
                let mass_g = |slot: usize| job.piece(&format!("H{}-1", IRONS[slot].0)).mass_g;
                Self::NeighbourHead(mass_g(neighbour) - mass_g(slot))
            }
            1 => Self::MisreadMass(draw.uniform(3.0, 9.0) * draw.sign()),
            2 => Self::HalfInch(12.7 * draw.sign()),
            3 => Self::TipLeftOut,
            4 => Self::FerruleMissing,
            5 => Self::DigitsSwapped(read_at),
            // A club can only stand too far out.
            _ => Self::OffTheStop(read_at, draw.uniform(2.0, 6.0)),
        })
    }

    /// Its name in the report.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::NeighbourHead(_) => "neighbour_head",
            Self::MisreadMass(_) => "misread_mass",
            Self::HalfInch(_) => "half_inch",
            Self::TipLeftOut => "tip_left_out",
            Self::FerruleMissing => "ferrule_missing",
            Self::DigitsSwapped(_) => "digits_swapped",
            Self::OffTheStop(..) => "off_the_stop",
        }
    }

    /// What is wrong with the club at a stage; a fault of a reading alone is none of the club.
    #[must_use]
    pub fn faults(self, stage: u64) -> Faults {
        let none = Faults::default();
        match self {
            Self::NeighbourHead(g) | Self::MisreadMass(g) => Faults { head_g: g, ..none },
            Self::HalfInch(mm) => Faults { cut_mm: mm, ..none },
            Self::TipLeftOut if stage >= crate::hands::stage::TIP => Faults { tip_left_out: true, ..none },
            Self::FerruleMissing if stage <= crate::hands::stage::TIP => Faults { ferrule_missing: true, ..none },
            _ => none,
        }
    }

    /// A reading as it is entered by mistake; the same where this blunder is none of a reading at this stage.
    #[must_use]
    pub fn misread(self, stage: u64, right_points: f64, mass_g: f64) -> f64 {
        match self {
            Self::DigitsSwapped(at) if at == stage => {
                // 42.3 is entered as 43.2.
                let tenths = (right_points * 10.0).round() as i64;
                let (whole, last, before) = (tenths / 100, tenths % 10, tenths / 10 % 10);
                (whole * 100 + last * 10 + before) as f64 / 10.0
            }
            // Every arm grows by as much: the mass times the gap, in points of 1260.1 g·mm.
            Self::OffTheStop(at, gap_mm) if at == stage => {
                ((right_points + mass_g * gap_mm / 1260.137) * 10.0).round() / 10.0
            }
            _ => right_points,
        }
    }

    /// Whether the number on the sole is not the club's.
    #[must_use]
    pub(crate) const fn is_another_number(self) -> bool {
        matches!(self, Self::NeighbourHead(_))
    }

    /// Whether a cause of this key is this blunder. A head whose mass was misread when it came in is another head of its
    /// number, as far as anything on the bench can tell.
    #[must_use]
    pub(crate) fn is_named_by(self, cause: &str) -> bool {
        match self {
            Self::NeighbourHead(_) => cause == "neighbour_head",
            Self::MisreadMass(_) => matches!(cause, "mass_noted" | "wrong_part"),
            Self::HalfInch(_) => cause == "cut_off",
            Self::TipLeftOut => cause == "tip_left_out",
            Self::FerruleMissing => cause == "ferrule_missing",
            Self::DigitsSwapped(_) => cause == "digits_swapped",
            Self::OffTheStop(..) => cause == "butt_off_stop",
        }
    }

    /// Whether it is a fault of the club, that stays until it is mended.
    #[must_use]
    pub const fn is_of_club(self) -> bool {
        !matches!(self, Self::DigitsSwapped(_) | Self::OffTheStop(..))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::hands::stage::{CURED, DRY};

    #[test]
    fn digits_are_swapped_once_and_a_gap_at_the_stop_lengthens_every_arm() {
        let swapped = Blunder::DigitsSwapped(DRY);
        assert!((swapped.misread(DRY, 42.3, 390.0) - 43.2).abs() < 1e-9);
        assert!((swapped.misread(CURED, 42.3, 390.0) - 42.3).abs() < 1e-9);
        // By hand: 400 g · 3.15 mm = 1260 g·mm, one point.
        let gap = Blunder::OffTheStop(DRY, 3.15);
        assert!((gap.misread(DRY, 42.3, 400.0) - 43.3).abs() < 1e-9);
    }

    #[test]
    fn a_ferrule_that_was_missing_is_on_after_gluing_and_a_neighbours_head_stays() {
        assert!(Blunder::FerruleMissing.faults(DRY).ferrule_missing);
        assert_eq!(Blunder::FerruleMissing.faults(CURED), Faults::default());
        assert!((Blunder::NeighbourHead(7.0).faults(CURED).head_g - 7.0).abs() < 1e-12);
    }
}
