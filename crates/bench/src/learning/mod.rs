//! What one more job teaches the shop: its learned values after it.

mod scatter;
use crate::assembly::Assembly;

use crate::belief::Believed;
use crate::learned::{
    HABIT_SHARE, JOB_LEVEL, JOBS_NAMED, KEPT_PER_JOB, Learned, LearnedFrom, LearnedValue, ValueKey, habit_key,
};
use estimation::{Belief, Gaussian, JobModel, Link, ScalePrior, Whitened};
use std::collections::{BTreeMap, BTreeSet};
use trade::error::TradeError;
use trade::scale::Scale;

/// Which clubs have a part in what: numbers of the clubs by key.
type Clubs = BTreeMap<String, Vec<String>>;

impl Learned {
    /// What the shop has learned once a job is believed to the end. `self` must be what that job was believed with.
    ///
    /// The joint posterior of the job's shared deviations moves all values, also those that the job does not have, by
    /// way of their correlation. What builders said is left out: it counts in each job, once, and can
    /// be withdrawn. Doubted readings are not part of the belief and teach nothing. Values of the job are
    /// then let slide a little toward the prior, so that the result is the prior of the next job.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn after(&self, believed: &Believed<'_>) -> Result<Self, TradeError> {
        if !self.told.is_empty() {
            let alone = self.without_told();
            let assembly = Assembly { learned: &alone, ..believed.assembly };
            let learned = alone.after(&assembly.believe(believed.readings())?)?;
            return Ok(Self { told: self.told.clone(), ..learned });
        }
        let mut next = self.clone();
        next.learn_weights(believed)?;
        next.learn_flex(believed)?;
        next.learn_gauges(believed);
        Ok(next)
    }

    /// What the readings of masses, lengths and swing weights teach.
    fn learn_weights(&mut self, believed: &Believed<'_>) -> Result<(), TradeError> {
        let clubs = clubs_of(believed)?;
        if clubs.is_empty() {
            return Ok(());
        }
        let next = self;
        let shop = believed.assembly.shop;
        for key in clubs.keys().filter(|key| !matches!(key.parse(), Ok(ValueKey::UsualOffset(_)))) {
            let (_, sd) = believed.usual_belief().prior_of(key)?;
            next.add(key, sd);
        }
        let scales: Vec<&Scale> = [&shop.balance_scale, &shop.mass_scale]
            .into_iter()
            .filter(|scale| clubs.contains_key(&habit_key(&scale.key)))
            .collect();
        for scale in &scales {
            next.add_scale(scale);
        }
        let today = next.carry(believed, believed.usual_belief(), &clubs, &scales)?;
        next.name(believed.assembly.job.number, &clubs);
        // What a scale was off by while something was wrong with it says nothing of its usual days.
        let today: Vec<(String, Whitened)> =
            today.into_iter().filter(|(scale, _)| believed.assembly.watch.against(scale).is_none()).collect();
        next.learn_scatter(believed, &today)
    }

    /// What the frequencies teach: of shaft models, of the clamp, of how single shafts scatter.
    fn learn_flex(&mut self, believed: &Believed<'_>) -> Result<(), TradeError> {
        let Some(belief) = believed.flex().usual() else { return Ok(()) };
        let job = believed.assembly.job;
        let mut clubs = Clubs::new();
        for (club, keys) in believed.flex().read_of() {
            let Some(club) = job.club(club) else { continue };
            for key in keys {
                clubs.entry(key.clone()).or_default().push(club.target.number.clone());
            }
        }
        for key in clubs.keys() {
            self.add(key, belief.prior_of(key)?.1);
        }
        if !clubs.is_empty() {
            self.carry(believed, belief, &clubs, &[])?;
            self.name(job.number, &clubs);
            self.learn_stiffness_scatter(believed, belief)?;
        }
        Ok(())
    }

    /// Room for a value that is not there yet, as a new shop knows it.
    fn add(&mut self, key: &str, prior_sd: f64) {
        if prior_sd <= 0.0 || self.position(key).is_some() {
            return;
        }
        let at = self.values.partition_point(|v| v.key.as_str() < key);
        self.values.insert(
            at,
            LearnedValue {
                key: key.to_owned(),
                mean_shift: 0.0,
                prior_sd,
                clubs: 0,
                jobs: 0,
                from: Vec::new(),
                pinned: false,
            },
        );
        self.covariance.iter_mut().for_each(|row| row.insert(at, 0.0));
        let mut row = vec![0.0; self.values.len()];
        row[at] = prior_sd * prior_sd;
        self.covariance.insert(at, row);
    }

    /// A scale's usual offset; anew where the shop has stated the scale anew.
    fn add_scale(&mut self, scale: &Scale) {
        let key = habit_key(&scale.key);
        let prior_sd = scale.offset_sd * HABIT_SHARE;
        if let Some(at) = self.position(&key)
            && self.values[at].prior_sd != prior_sd
        {
            // Only what is there can be taken away, so this cannot fail.
            let _ = self.reset(&key);
        }
        self.add(&key, prior_sd);
    }

    /// Moves all values by what the job saw, and forgets a little. Returns what each scale was off by beyond its habit.
    fn carry(
        &mut self,
        believed: &Believed<'_>,
        belief: &Belief,
        clubs: &Clubs,
        scales: &[&Scale],
    ) -> Result<Vec<(String, Whitened)>, TradeError> {
        let free: Vec<usize> = (0..self.values.len()).filter(|i| !self.values[*i].pinned).collect();
        let mut links = Vec::new();
        let mut seen_keys = Vec::new();
        for (place, i) in free.iter().enumerate() {
            let key = &self.values[*i].key;
            if let Some(scale) = scales.iter().find(|s| habit_key(&s.key) == *key) {
                let today_sd = believed.assembly.today_sd(scale);
                links.push(Link { value: place, own_variance: today_sd * today_sd });
                seen_keys.push(ScalePrior::offset_key(&scale.key));
            } else if clubs.contains_key(key) {
                links.push(Link { value: place, own_variance: 0.0 });
                seen_keys.push(key.clone());
            }
        }
        let seen = belief.joint_shared(&seen_keys.iter().map(String::as_str).collect::<Vec<_>>())?;
        let before = Gaussian {
            mean: free.iter().map(|i| self.values[*i].mean_shift).collect(),
            covariance: free.iter().map(|i| free.iter().map(|j| self.covariance[*i][*j]).collect()).collect(),
        };
        let mut carried = before.carried(&links, &Gaussian { mean: seen.mean, covariance: seen.covariance })?;
        let touched: BTreeSet<usize> = links.iter().map(|link| link.value).collect();
        let prior_sd: Vec<Option<f64>> = free
            .iter()
            .enumerate()
            .map(|(place, i)| touched.contains(&place).then(|| self.values[*i].prior_sd))
            .collect();
        carried.values.forget(KEPT_PER_JOB, &prior_sd)?;
        for (place, i) in free.iter().enumerate() {
            self.values[*i].mean_shift = carried.values.mean[place];
            for (other, j) in free.iter().enumerate() {
                self.covariance[*i][*j] = carried.values.covariance[place][other];
            }
        }
        let of_scale = |link: &Link| {
            let key = &self.values[free[link.value]].key;
            scales.iter().find(|s| habit_key(&s.key) == *key).map(|s| s.key.clone())
        };
        Ok(links.iter().zip(carried.own).filter_map(|(link, own)| of_scale(link).zip(own)).collect())
    }

    /// Notes which clubs of which job had a part in what.
    fn name(&mut self, job: i64, clubs: &Clubs) {
        for value in self.values.iter_mut().filter(|v| !v.pinned) {
            let Some(of) = clubs.get(&value.key) else { continue };
            value.clubs += i64::try_from(of.len()).unwrap_or(0);
            value.jobs += 1;
            value.from.push(LearnedFrom { job, clubs: of.clone() });
            let surplus = value.from.len().saturating_sub(JOBS_NAMED);
            value.from.drain(..surplus);
        }
    }
}

/// Whether a shared deviation is the shop's: a value that it learns, and not what one job deviates from it.
fn is_carried(key: &str) -> bool {
    !key.ends_with(JOB_LEVEL) && key.parse::<ValueKey>().is_ok()
}

/// The clubs with believed readings, by what they tell something of.
fn clubs_of(believed: &Believed<'_>) -> Result<Clubs, TradeError> {
    let job = believed.assembly.job;
    let model: JobModel = believed.assembly.job_model()?;
    let number = |id: &str| job.clubs.iter().find(|c| c.id.0 == id).map(|c| c.target.number.clone());
    let mut clubs = Clubs::new();
    for club in &model.clubs {
        let own = || {
            believed.usual_belief().readings().iter().filter(|r| r.is_believed() && r.club.as_ref() == Some(&club.key))
        };
        let Some(number) = number(&club.key).filter(|_| own().next().is_some()) else { continue };
        let values = club.pieces.iter().flat_map(|p| [&p.mass_g, &p.arm_in]).chain([&club.cap_in]);
        let keys: BTreeSet<String> = values
            .flat_map(|v| v.shared.iter().map(|s| s.key.clone()))
            .filter(|key| is_carried(key))
            .chain(own().filter_map(|r| r.scale.as_deref().map(habit_key)))
            .collect();
        for key in keys {
            clubs.entry(key).or_default().push(number.clone());
        }
    }
    Ok(clubs)
}
