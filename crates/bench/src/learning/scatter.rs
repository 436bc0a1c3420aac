//! Scatter learned from what pieces, jobs, readings and hands turned out to deviate.
//!
//! Each deviation has a mean `m` and a variance `v` in units of what was believed before; with `γ = 1 − v` what is
//! settled of it, `Σ(m² − γ)/Σγ²` estimates by how much the variance was believed too small, in its own unit, and is
//! worth `Σγ²` observations (derived: one step of Fisher scoring on the evidence; the expectation of `m²` is `γ` where
//! the belief is right). The new shop's figure counts as `PRIOR_WEIGHT` observations for ever.

use crate::accuracy;
use crate::assembly;
use crate::belief::Believed;
use crate::flex::{self, Flex};
use crate::learned::{JOB_LEVEL, KEPT_PER_JOB, Learned, Scatter, ScatterKey, Scattered, ValueKey};
use estimation::{Belief, Drift, MeasuredPiece, OwnOf, Residual, Role, Whitened, scatter_after};
use std::collections::BTreeMap;
use trade::error::TradeError;
use trade::gauge::Gauge;
use trade::id::ClubId;
use trade::reading::{Reading, What};

/// Observations that the figure of a new shop is worth.
const PRIOR_WEIGHT: f64 = 8.0;
/// A scatter is not believed beyond this many times the new shop's figure, nor below its inverse.
const FARTHEST: f64 = 3.0;

/// A piece counts as measured where its readings settle this much of it.
const MEASURED: f64 = 0.5;
/// A kind that was never measured scatters about as many times as much as the new shop's figure, give or take a factor of
/// two: a strip of tape about 0.12 g a layer, with 0.7 in the logarithm (common practice, no source).
const NEW_MEDIAN: f64 = 1.5;
const NEW_LOG_SD: f64 = 0.7;

/// What a job says of one scatter figure.
#[derive(Debug, Clone, Copy, Default)]
struct Score {
    /// Σ(m² − γ): how much more the deviations scatter than was believed, in units of that belief.
    excess: f64,
    /// Σγ²: how much the readings say of the scatter at all.
    weight: f64,
}

impl Score {
    fn add(&mut self, now: Whitened) {
        self.excess += now.mean * now.mean - now.settled();
        self.weight += now.settled().powi(2);
    }

    /// A reading whose noise has the variance `noise`, out of `variance` with its rounding.
    fn add_residual(&mut self, residual: f64, free: f64, noise: f64, variance: f64) {
        self.excess += noise / variance * (residual * residual / variance - free);
        self.weight += (noise / variance * free).powi(2);
    }
}

impl Learned {
    pub(super) fn learn_scatter(
        &mut self,
        believed: &Believed<'_>,
        today: &[(String, Whitened)],
    ) -> Result<(), TradeError> {
        let belief = believed.usual_belief();
        let mut scores: BTreeMap<Scattered, Score> = BTreeMap::new();
        let mut measured: BTreeMap<Scattered, Vec<Whitened>> = BTreeMap::new();
        for own in belief.own_deviations() {
            if let Some(key) = piece_key(own.of) {
                if is_measured_singly(key) && own.now.settled() >= MEASURED {
                    measured.entry(key).or_default().push(own.now);
                }
                scores.entry(key).or_default().add(own.now);
            }
        }
        scores.retain(|key, _| !measured.contains_key(key));
        for (of, pieces) in measured {
            self.learn_measured(of, &pieces)?;
        }
        for key in belief.shared_keys() {
            let value = key.strip_suffix(JOB_LEVEL).and_then(|key| key.parse::<ValueKey>().ok());
            let of_job = value.and_then(|value| value.scattered_by_job());
            if let Some((of_job, now)) = of_job.zip(belief.whitened(key)?) {
                scores.entry(of_job).or_default().add(now);
            }
        }
        for (of, score) in scores {
            let new_shop = assembly::new_shop_scatter(of);
            self.learn(of.key(), new_shop, self.scatter_sd(of.key(), new_shop), score);
        }
        let shop = believed.assembly.shop;
        for (scale, now) in today {
            let stated = if *scale == shop.balance_scale.key { &shop.balance_scale } else { &shop.mass_scale };
            let mut score = Score::default();
            score.add(*now);
            let new_shop = stated.offset_sd * (1.0 - crate::learned::HABIT_SHARE.powi(2)).sqrt();
            let key = ScatterKey::Today(scale.clone()).to_string();
            self.learn(&key, new_shop, self.scatter_sd(&key, new_shop), score);
        }
        self.learn_drift(believed)?;
        self.learn_noise(believed);
        Ok(())
    }

    /// How single shafts scatter about their model's stiffness.
    pub(super) fn learn_stiffness_scatter(
        &mut self,
        believed: &Believed<'_>,
        belief: &Belief,
    ) -> Result<(), TradeError> {
        let mut score = Score::default();
        for (club, _) in believed.flex().read_of() {
            if let Some(now) = belief.whitened(&flex::piece_key(club))? {
                score.add(now);
            }
        }
        let (key, new_shop) = (Scattered::StiffnessPiece.key(), assembly::STIFFNESS_PIECE_SD);
        self.learn(key, new_shop, self.scatter_sd(key, new_shop), score);
        Ok(())
    }

    /// How far the balance scale drifts one way over a day.
    fn learn_drift(&mut self, believed: &Believed<'_>) -> Result<(), TradeError> {
        let scale = &believed.assembly.shop.balance_scale;
        let belief = believed.usual_belief();
        let mut score = Score::default();
        for key in belief.shared_keys().iter().filter(|key| Drift::is_rate(&scale.key, key)) {
            if let Some(now) = belief.whitened(key)? {
                score.add(now);
            }
        }
        let stated = believed.assembly.stated_drift_day_sd();
        if stated > 0.0 {
            let key = ScatterKey::Drift(scale.key.clone()).to_string();
            self.learn(&key, stated, self.scatter_sd(&key, stated), score);
        }
        Ok(())
    }

    /// The noise of the scales, then what each hand adds to or takes from it.
    fn learn_noise(&mut self, believed: &Believed<'_>) {
        let shop = believed.assembly.shop;
        let residuals = believed.usual_belief().residuals();
        for scale in [&shop.balance_scale, &shop.mass_scale] {
            let on_it = || residuals.iter().filter(|r| r.scale.as_ref() == Some(&scale.key));
            let mut score = Score::default();
            on_it().for_each(|r| score.add_residual(r.residual, r.free, r.noise_variance, r.variance));
            let key = ScatterKey::Noise(scale.key.clone()).to_string();
            let before = self.scatter_sd(&key, scale.noise_sd);
            self.learn(&key, scale.noise_sd, before, score);
            self.not_below(&key, scale.noise_sd, scale.display_step);
            if scale.key == shop.balance_scale.key {
                let changed = (self.scatter_sd(&key, scale.noise_sd) / before).powi(2);
                self.learn_hands(believed, &on_it().collect::<Vec<_>>(), changed);
            }
        }
    }

    /// The noise of the gauges: of the frequency meter by what its readings are off from what all make expected; of the rule and of
    /// the machine for loft and lie by what was read again at the same step with the club seated again.
    pub(super) fn learn_gauges(&mut self, believed: &Believed<'_>) {
        let shop = believed.assembly.shop;
        if let (Some((gauge, _)), Some(belief)) = (shop.gauge_for(What::Cpm), believed.flex().usual()) {
            let mut score = Score::default();
            let of_clubs = belief.residuals().into_iter().filter(|r| Flex::is_of_club(&r.id));
            of_clubs.for_each(|r| score.add_residual(r.residual, r.free, r.noise_variance, r.variance));
            self.learn_gauge(&gauge, score);
        }
        self.learn_repeats(believed, &[What::FinishedLength, What::ShaftLength]);
        self.learn_repeats(believed, &[What::Loft, What::Lie]);
    }

    /// What the repeats of readings on one gauge say of its noise.
    fn learn_repeats(&mut self, believed: &Believed<'_>, of: &[What]) {
        let shop = believed.assembly.shop;
        let Some((gauge, _)) = of.first().and_then(|what| shop.gauge_for(*what)) else { return };
        let noise = accuracy::noise_sd(self, &gauge.key, gauge.noise_sd).powi(2);
        let mut repeats: BTreeMap<(&ClubId, &str, &str), Vec<&Reading>> = BTreeMap::new();
        let standing = believed.standing();
        for reading in standing.iter().copied().filter(|r| of.contains(&r.what) && !believed.is_doubted(&r.id)) {
            repeats.entry((&reading.club, &reading.step, reading.what.key())).or_default().push(reading);
        }
        let mut score = Score::default();
        for of_one in repeats.values().filter(|of_one| of_one.len() > 1) {
            let n = of_one.len() as f64;
            let step = of_one.iter().map(|r| r.display_step).fold(gauge.display_step, f64::max);
            let mean = of_one.iter().map(|r| r.value).sum::<f64>() / n;
            let square: f64 = of_one.iter().map(|r| (r.value - mean).powi(2)).sum();
            let variance = noise + step * step / 12.0;
            // n readings about their own mean are n − 1 without it.
            score.excess += noise / variance * (square / variance - (n - 1.0));
            score.weight += (noise / variance).powi(2) * (n - 1.0);
        }
        self.learn_gauge(&gauge, score);
    }

    fn learn_gauge(&mut self, gauge: &Gauge, score: Score) {
        let key = ScatterKey::Noise(gauge.key.clone()).to_string();
        let before = self.scatter_sd(&key, gauge.noise_sd);
        self.learn(&key, gauge.noise_sd, before, score);
        self.not_below(&key, gauge.noise_sd, gauge.display_step);
    }

    /// Readings finer than half a display step say more of the display than of the noise: once there, a figure could
    /// not be unlearned.
    fn not_below(&mut self, key: &str, stated: f64, display_step: f64) {
        let least = stated.min(0.5 * display_step);
        if let Some(scatter) = self.scatter.iter_mut().find(|s| s.key == key) {
            scatter.sd = scatter.sd.max(least);
        }
    }

    /// `changed` is by what the noise's variance was just learned to be another: what the whole shop does is not put
    /// down to its hands as well.
    fn learn_hands(&mut self, believed: &Believed<'_>, residuals: &[&Residual], changed: f64) {
        let mut scores: BTreeMap<String, Score> = BTreeMap::new();
        let standing = believed.standing();
        for r in residuals {
            let Some(reading) = standing.iter().find(|s| s.id.0 == r.id) else { continue };
            if reading.by.trim().is_empty() {
                continue;
            }
            let noise = r.noise_variance * changed;
            let variance = r.variance - r.noise_variance + noise;
            let score = scores.entry(reading.by.trim().to_owned()).or_default();
            score.add_residual(r.residual, r.free, noise, variance);
        }
        for (hand, score) in scores {
            self.learn(&ScatterKey::Hand(hand.clone()).to_string(), 1.0, self.hand(&hand), score);
        }
        self.level_hands();
    }

    /// Hands are held against each other: what they have in common is the scale's noise, which is learned as such.
    fn level_hands(&mut self) {
        let free = |s: &&mut Scatter| !s.pinned && matches!(s.key.parse(), Ok(ScatterKey::Hand(_)));
        let (mut sum, mut weight) = (0.0, 0.0);
        for scatter in self.scatter.iter_mut().filter(free) {
            sum += scatter.weight * scatter.sd * scatter.sd;
            weight += scatter.weight;
        }
        if sum > 0.0 {
            let common = (sum / weight).sqrt();
            self.scatter.iter_mut().filter(free).for_each(|s| s.sd /= common);
        }
    }

    /// The figure of a key, as a new shop has it where it was not learned from this one; none where somebody pinned it.
    fn entry(&mut self, key: &str, new_shop: f64) -> Option<&mut Scatter> {
        let at = self.scatter.partition_point(|s| s.key.as_str() < key);
        let known = self.scatter.get(at).is_some_and(|s| s.key == key);
        if known && self.scatter[at].pinned {
            return None;
        }
        let fresh = || Scatter { key: key.to_owned(), sd: new_shop, prior_sd: new_shop, weight: 0.0, pinned: false };
        if !known {
            self.scatter.insert(at, fresh());
        } else if self.scatter[at].prior_sd != new_shop {
            self.scatter[at] = fresh();
        }
        self.scatter.get_mut(at)
    }

    /// `used` is the figure that the job was believed with.
    fn learn(&mut self, key: &str, new_shop: f64, used: f64, score: Score) {
        if !(new_shop > 0.0 && score.weight > 0.0 && score.excess.is_finite()) {
            return;
        }
        let Some(scatter) = self.entry(key, new_shop) else { return };
        let (now, prior) = (scatter.sd.powi(2), new_shop.powi(2));
        let seen = now * (PRIOR_WEIGHT + scatter.weight) - prior * PRIOR_WEIGHT;
        let seen = KEPT_PER_JOB * seen + used.powi(2) * (score.weight + score.excess);
        scatter.weight = KEPT_PER_JOB * scatter.weight + score.weight;
        let variance = (prior * PRIOR_WEIGHT + seen) / (PRIOR_WEIGHT + scatter.weight);
        scatter.sd = variance.max(0.0).sqrt().clamp(new_shop / FARTHEST, new_shop * FARTHEST);
    }

    /// What measured pieces tell of their scatter. What readings of finished clubs tell of it drowns in their noise.
    fn learn_measured(&mut self, of: Scattered, pieces: &[Whitened]) -> Result<(), TradeError> {
        let (key, new_shop) = (of.key(), assembly::new_shop_scatter(of));
        let used = self.scatter_sd(key, new_shop);
        if new_shop <= 0.0 {
            return Ok(());
        }
        let Some(scatter) = self.entry(key, new_shop) else { return Ok(()) };
        let prior = |weight: f64| (1.0 / NEW_LOG_SD.powi(2) + 2.0 * weight).recip().sqrt();
        let kept_weight = scatter.weight * KEPT_PER_JOB;
        let (median, log_sd) = if kept_weight > 0.0 {
            // What is kept is the root of the expected variance.
            (scatter.sd * (-prior(kept_weight).powi(2)).exp(), prior(kept_weight))
        } else {
            (NEW_MEDIAN * new_shop, NEW_LOG_SD)
        };
        let measured: Vec<MeasuredPiece> = pieces
            .iter()
            .map(|piece| MeasuredPiece {
                deviation: used * piece.mean / piece.settled(),
                noise_sd: used * (piece.variance.max(0.0) / piece.settled()).sqrt(),
                layers: 1.0,
            })
            .collect();
        let found = scatter_after(median, log_sd, &measured)?;
        scatter.sd = found.root_mean_square;
        scatter.weight = (0.5 * (found.log_sd.powi(-2) - NEW_LOG_SD.powi(-2))).max(0.0);
        Ok(())
    }
}

/// Whether single pieces are measured: a strip of tape weighed, a cap by caliper, a grip balanced.
const fn is_measured_singly(of: Scattered) -> bool {
    matches!(of, Scattered::TapePiece | Scattered::CapPiece | Scattered::GripCentrePiece)
}

/// The scatter figure that a piece's own deviation belongs to.
const fn piece_key(of: OwnOf) -> Option<Scattered> {
    match of {
        OwnOf::Mass(Role::Adhesive) => Some(Scattered::AdhesivePiece),
        OwnOf::Mass(Role::Tape) => Some(Scattered::TapePiece),
        OwnOf::Mass(Role::Solvent) => Some(Scattered::SolventPiece),
        OwnOf::Arm(Role::Grip) => Some(Scattered::GripCentrePiece),
        OwnOf::Arm(Role::Shaft) => Some(Scattered::ShaftCentrePiece),
        OwnOf::Cap => Some(Scattered::CapPiece),
        OwnOf::Mass(
            Role::Head
            | Role::Adapter
            | Role::Screw
            | Role::Shaft
            | Role::Ferrule
            | Role::Turnings
            | Role::TipWeight
            | Role::Grip
            | Role::Extra,
        )
        | OwnOf::Arm(
            Role::Head
            | Role::Adapter
            | Role::Screw
            | Role::Ferrule
            | Role::Turnings
            | Role::TipWeight
            | Role::Adhesive
            | Role::Tape
            | Role::Solvent
            | Role::Extra,
        )
        | OwnOf::Length => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A tape that scatters 0.3 g a layer, nearly four times what a new shop starts with: eight strips of the first job, one
    /// a job after. Pieces by a formula, not drawn, with the right mean square.
    #[test]
    fn a_tape_that_scatters_is_learned_from_its_strips() {
        let true_sd = 0.3;
        let mut learned = Learned::default();
        let new_shop = assembly::new_shop_scatter(Scattered::TapePiece);
        let strip = |learned: &Learned, z: f64| {
            // A strip on a scale of 0.042 g, in units of what was believed.
            let used = learned.scatter_sd(Scattered::TapePiece.key(), new_shop);
            let settled = used * used / (used * used + 0.042 * 0.042);
            Whitened { mean: settled * true_sd * z / used, variance: 1.0 - settled }
        };
        let eight = [-1.53, -0.89, -0.49, -0.16, 0.16, 0.49, 0.89, 1.53];
        let first: Vec<Whitened> = eight.iter().map(|z| strip(&learned, z * 1.09)).collect();
        learned.learn_measured(Scattered::TapePiece, &first).unwrap();
        let after_one = learned.scatter_sd(Scattered::TapePiece.key(), new_shop);
        assert!((0.22..0.36).contains(&after_one), "{after_one}");
        for job in 0..20 {
            let more = strip(&learned, eight[(job * 3) % 8] * 1.09);
            learned.learn_measured(Scattered::TapePiece, &[more]).unwrap();
        }
        let after = &learned.scatter[0];
        assert!((after.sd - true_sd).abs() < 0.05, "{after:?}");
        // A relative band of 1/sqrt(2n): some forty pieces are worth no more than that, as old ones are forgotten a little.
        assert!((6.0..40.0).contains(&after.weight), "{after:?}");
    }
}
