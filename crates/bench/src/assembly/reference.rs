//! What the sheet says of the reference club, for the belief.

use super::Assembly;
use crate::learned::{HABIT_SHARE, Habit};
use crate::reference::{REFERENCE, REFERENCE_MASS_G, ReferenceRead, ScaleDay};
use estimation::{Observation, Quantity, ScalePrior, Standing};
use jiff::Timestamp;
use jiff::civil::Date;
use trade::reading::{Reading, What};
use trade::sheet::{ReferenceClub, ReferenceReading};

/// What a balance scale of another room may be off by, points, habit and day together: as a new scale of the shop's own.
/// Common practice, no source.
const OTHER_SCALE_SD_POINTS: f64 = 0.2;

/// No figure is believed to the last bit, points.
const LEAST_SD_POINTS: f64 = 1e-3;

impl Assembly<'_> {
    /// The reference club from whose figure the targets come; none where the sheet has no such figure.
    fn reference(&self) -> Option<(&ReferenceClub, f64)> {
        let club = self.job.sheet.reference.as_ref()?;
        Some((club, club.swing_weight_points?))
    }

    /// What the sheet says that the reference club read, points.
    pub(crate) fn reference_points(&self) -> Option<f64> {
        self.reference().map(|(_, points)| points)
    }

    /// The reference club on a scale.
    pub(crate) fn reference_on_scale(&self) -> Option<Quantity> {
        let (club, true_points) = self.reference()?;
        let mass_g = club.total_mass_g.unwrap_or(REFERENCE_MASS_G);
        Some(Quantity::CheckWeight { true_points, mass_g, shared: Some(REFERENCE.into()) })
    }

    /// Everything that scales showed of it, with the scale and day of each.
    fn reference_readings(&self) -> Vec<(ReferenceReading, ScaleDay)> {
        let shown = self.reference().map(|(club, _)| club.shown()).unwrap_or_default();
        shown.into_iter().map(|read| (self.scale_day(&read.scale, read.read_on), read)).map(|(d, r)| (r, d)).collect()
    }

    /// On which scale and day the reference club was read last, the bench's readings that are believed with the sheet's; none
    /// where the targets rest on no such club.
    #[must_use]
    pub fn reference_read(&self, believed: &[&Reading]) -> Option<ReferenceRead> {
        let (club, _) = self.reference()?;
        let at_bench = believed.iter().filter(|r| r.what == What::ReferenceSwingWeight).count();
        let is_bench_day = |day| self.watch.bench_day(day).is_some();
        ReferenceRead::of(club, &self.shop.balance_scale, is_bench_day, at_bench)
    }

    /// A scale that a sheet names, on a day. A reading that names no scale was read on the shop's own; one that names no day
    /// was read on a day that is not the bench's.
    fn scale_day(&self, named: &str, on: Option<Date>) -> ScaleDay {
        let (named, balance) = (named.trim(), &self.shop.balance_scale);
        let own = balance.is_named(named);
        let bench_at = on.filter(|_| own).and_then(|day| self.watch.bench_day(day));
        let scale = if own { balance.key.clone() } else { format!("elsewhere:{}", named.to_lowercase()) };
        let key = match (bench_at, on) {
            (Some(_), _) => balance.key.clone(),
            (None, Some(day)) => format!("{scale}@{day}"),
            (None, None) => format!("{scale}@"),
        };
        ScaleDay { key, scale, bench_at }
    }

    /// The scales and days on which the reference club was read and the bench does not read, each once.
    pub(crate) fn other_scale_days(&self) -> Vec<ScaleDay> {
        let mut days: Vec<ScaleDay> =
            self.reference_readings().into_iter().map(|(_, day)| day).filter(|day| day.bench_at.is_none()).collect();
        days.sort_by(|a, b| a.key.cmp(&b.key));
        days.dedup();
        days
    }

    /// What a scale that a sheet names is off by: the shop's own as it knows it, another as a new one.
    pub(crate) fn habit_of(&self, scale: &str) -> Habit {
        let balance = &self.shop.balance_scale;
        if scale == balance.key {
            return self.learned.habit(scale, balance.offset_sd);
        }
        let today_sd = OTHER_SCALE_SD_POINTS * (1.0 - HABIT_SHARE * HABIT_SHARE).sqrt();
        Habit { mean: 0.0, sd: OTHER_SCALE_SD_POINTS, today_sd }
    }

    /// Such a scale on its day, as an instrument of the belief.
    pub(crate) fn day_prior(&self, day: &ScaleDay) -> ScalePrior {
        let (habit, balance) = (self.habit_of(&day.scale), &self.shop.balance_scale);
        ScalePrior {
            offset_mean: habit.mean,
            offset_sd: habit.sd,
            noise_sd: self.noise_sd(balance),
            resolution: balance.display_step,
            ..ScalePrior::new(day.key.clone())
        }
    }

    /// What the sheet says of the reference club, as readings. The figure from which the targets come is what the fitting
    /// settled on: it stands whatever is read later, and a later reading that does not fit is doubted.
    pub(crate) fn reference_observations(&self, hours: impl Fn(Timestamp) -> f64) -> Vec<Observation> {
        let (Some((club, points)), Some(quantity)) = (self.reference(), self.reference_on_scale()) else {
            return Vec::new();
        };
        let balance = &self.shop.balance_scale;
        let known = club.swing_weight_sd_points.map(|sd| {
            let sd = sd.max(LEAST_SD_POINTS);
            Observation::new("reference:", quantity.clone(), points, sd).standing(Standing::Insisted)
        });
        let first = usize::from(known.is_some());
        let shown = self.reference_readings().into_iter().enumerate().map(|(i, (read, day))| {
            let standing = if i + first == 0 { Standing::Insisted } else { Standing::Believed };
            let id = format!("reference:{i:03}");
            Observation::new(id, quantity.clone(), read.swing_weight_points, self.noise_sd(balance))
                .rounded_to(balance.display_step)
                .at(day.bench_at.map_or(0.0, &hours))
                .on_scale(day.key)
                .standing(standing)
        });
        known.into_iter().chain(shown).collect()
    }
}
