//! Scatter learned from what pieces, jobs, readings and hands turned out to deviate.
//!
//! Each deviation has a mean `m` and a variance `v` in units of what was believed before; with `γ = 1 − v` what is
//! settled of it, `Σ(m² − γ)/Σγ²` estimates by how much the variance was believed too small, in its own unit, and is
//! worth `Σγ²` observations (derived: one step of Fisher scoring on the evidence; the expectation of `m²` is `γ` where
//! the belief is right). The new shop's figure counts as `PRIOR_WEIGHT` observations for ever.

use crate::assembly;
use crate::belief::Believed;
use crate::learned::{JOB_LEVEL, KEPT_PER_JOB, Learned, Scatter, ScatterKey, Scattered, ValueKey};
use estimation::{OwnOf, Residual, Role, Whitened};
use std::collections::BTreeMap;
use trade::error::TradeError;

/// Observations that the figure of a new shop is worth.
const PRIOR_WEIGHT: f64 = 8.0;
/// A scatter is not believed beyond this many times the new shop's figure, nor below its inverse.
const FARTHEST: f64 = 3.0;

/// What a job says of one scatter figure.
#[derive(Debug, Clone, Copy, Default)]
struct Score {
    /// Σ(m² − γ).
    excess: f64,
    /// Σγ².
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
        let belief = believed.belief();
        let mut scores: BTreeMap<Scattered, Score> = BTreeMap::new();
        for own in belief.own_deviations() {
            if let Some(key) = piece_key(own.of) {
                scores.entry(key).or_default().add(own.now);
            }
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
        self.learn_noise(believed);
        Ok(())
    }

    /// The noise of the scales, then what each hand adds to or takes from it.
    fn learn_noise(&mut self, believed: &Believed<'_>) {
        let shop = believed.assembly.shop;
        let residuals = believed.belief().residuals();
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

    /// `used` is the figure that the job was believed with.
    fn learn(&mut self, key: &str, new_shop: f64, used: f64, score: Score) {
        let nothing_to_learn = !(new_shop > 0.0 && score.weight > 0.0 && score.excess.is_finite());
        let at = self.scatter.partition_point(|s| s.key.as_str() < key);
        let known = self.scatter.get(at).is_some_and(|s| s.key == key);
        if nothing_to_learn || (known && self.scatter[at].pinned) {
            return;
        }
        let fresh = || Scatter { key: key.to_owned(), sd: new_shop, prior_sd: new_shop, weight: 0.0, pinned: false };
        if !known {
            self.scatter.insert(at, fresh());
        } else if self.scatter[at].prior_sd != new_shop {
            self.scatter[at] = fresh();
        }
        let scatter = &mut self.scatter[at];
        let (now, prior) = (scatter.sd.powi(2), new_shop.powi(2));
        let seen = now * (PRIOR_WEIGHT + scatter.weight) - prior * PRIOR_WEIGHT;
        let seen = KEPT_PER_JOB * seen + used.powi(2) * (score.weight + score.excess);
        scatter.weight = KEPT_PER_JOB * scatter.weight + score.weight;
        let variance = (prior * PRIOR_WEIGHT + seen) / (PRIOR_WEIGHT + scatter.weight);
        scatter.sd = variance.max(0.0).sqrt().clamp(new_shop / FARTHEST, new_shop * FARTHEST);
    }
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
