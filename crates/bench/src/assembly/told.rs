//! What builders said, for the belief.

use super::Assembly;
use crate::learned::Tied;
use crate::told::{ToldFigure, ToldOf};
use estimation::{Observation, Quantity, Share, Standing};
use trade::reading::{Reading, What};

impl Assembly<'_> {
    /// What builders said, of models that are in the library.
    pub(crate) fn told(&self) -> impl Iterator<Item = (&ToldFigure, Tied)> {
        let tied = |told: &ToldFigure| Tied::of(told.of, &told.model, self.library);
        self.learned.told.iter().filter_map(move |told| Some((told, tied(told)?)))
    }

    /// The same as readings of the belief. A model's figure is the trade's, and a builder knows his shop better: as long as no
    /// club of his has shown otherwise, his word stands however far it lies from it.
    pub(crate) fn told_observations(&self, read: &[&Reading]) -> impl Iterator<Item = Observation> {
        self.told().map(|(told, tied)| {
            let learned = tied.shares.iter().any(|(key, _, _)| self.learned.position(key).is_some());
            let shown = learned || read.iter().any(|r| r.what == What::SwingWeight && r.on.contains(&told.of.role()));
            let shares = tied.shares.into_iter().map(|(key, gain, _)| Share { key, gain }).collect();
            let sd = told.sure.sd_points().hypot(tied.own_sd_points);
            let value = told.change_points - tied.model_points;
            Observation::new(told.key(), Quantity::Combination(shares), value, sd).standing(if shown {
                Standing::Believed
            } else {
                Standing::Insisted
            })
        })
    }

    /// Whether a ferrule's stated mass is open because a builder said something of it.
    pub(crate) fn ferrule_is_told(&self, code: &str) -> bool {
        self.learned.told_of(ToldOf::Ferrule, code).is_some()
    }
}
