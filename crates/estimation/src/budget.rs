//! Where the width of a forecast comes from.

use crate::belief::Belief;
use crate::club::{OnClub, Role};
use crate::error::EstimationError as E;
use crate::layout::{LocalState, SharedOwner};
use crate::reading::{Probe, Quantity};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use utoipa::ToSchema;

/// An independent source of uncertainty.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Source {
    /// Mass and arm of this club's own pieces of one role, beyond what they share with others.
    Piece(Role),
    /// This club's own length.
    Length,
    /// This club's own cap.
    Cap,
    /// A deviation that the job shares.
    Shared(String),
    /// Offset, gain, fulcrum and drift of a scale.
    Scale(String),
    /// Noise and rounding of the readings already taken.
    Readings,
    /// Pieces of the other clubs, by way of their readings.
    OtherClubs,
}

/// The part of a forecast's variance that one source makes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Contribution {
    /// Where that part comes from: a piece, a scale, the readings …
    pub source: Source,
    /// Its name in plain words.
    pub name: String,
    /// Its share of the variance; all shares add up to 1.
    pub share: f64,
    /// The standard deviation that it alone would leave, in the unit of the forecast.
    pub sd: f64,
}

impl Belief {
    /// Ranked sources of the uncertainty of the true swing weight with these pieces on.
    ///
    /// # Errors
    ///
    /// As [`Belief::forecast`].
    pub fn budget(&self, club: &str, on: OnClub) -> Result<Vec<Contribution>, E> {
        self.budget_of(&Probe::of_club(club, Quantity::SwingWeight, on))
    }

    /// Ranked sources of the uncertainty of any question; empty when there is none.
    ///
    /// After readings the unknowns are correlated, and shares of correlated unknowns are a matter of taste. The error
    /// of a forecast is however a sum over sources that are independent by the model: what each piece, shared value
    /// and scale deviates from its prior, and the noise of each reading. With the prior whitened, `A` the information
    /// matrix and `g` the gradient, `w = A⁻¹·g` gives the shares `w_i²` of the deviations and `(h_j·w)²/r_j` of the
    /// readings, and they add up to `gᵀ·A⁻¹·g` (derived).
    ///
    /// # Errors
    ///
    /// As [`Belief::forecast`].
    pub(crate) fn budget_of(&self, probe: &Probe) -> Result<Vec<Contribution>, E> {
        let row = self.row(probe)?;
        let mut local: Vec<Vec<f64>> = self.layout.clubs.iter().map(|club| vec![0.0; club.states.len()]).collect();
        if let Some(club) = row.club {
            local[club].clone_from(&row.local);
        }
        let mut shared = row.shared.clone();
        self.arrow.solve(&mut local, &mut shared);
        let tilt = self.tilt.as_ref().map(|tilt| (tilt.key.clone(), tilt.along(&self.arrow.half(&row))));
        let mut parts: BTreeMap<Source, f64> = BTreeMap::new();
        for (i, (club, weights)) in self.layout.clubs.iter().zip(&local).enumerate() {
            for (state, w) in club.states.iter().zip(weights) {
                let source = match state {
                    _ if Some(i) != row.club => Source::OtherClubs,
                    LocalState::Piece(role) => Source::Piece(*role),
                    LocalState::Length => Source::Length,
                    LocalState::Cap => Source::Cap,
                };
                *parts.entry(source).or_default() += w * w;
            }
        }
        for ((owner, key), w) in self.layout.shared_owner.iter().zip(&self.layout.shared_keys).zip(&shared) {
            let source = match owner {
                SharedOwner::Key => Source::Shared(key.clone()),
                SharedOwner::Scale(scale) => Source::Scale(self.layout.scales[*scale].key.clone()),
            };
            *parts.entry(source).or_default() += w * w;
        }
        for (reading, variance) in self.rows.iter() {
            let own = reading.club.map_or(0.0, |club| dot(&reading.local, &local[club]));
            *parts.entry(Source::Readings).or_default() += (own + dot(&reading.shared, &shared)).powi(2) / variance;
        }
        if let Some((key, along)) = tilt {
            *parts.entry(Source::Shared(key)).or_default() += along * along;
        }
        Ok(ranked(parts))
    }
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

fn ranked(parts: BTreeMap<Source, f64>) -> Vec<Contribution> {
    let total: f64 = parts.values().sum();
    if total <= 0.0 {
        return Vec::new();
    }
    let mut list: Vec<Contribution> = parts
        .into_iter()
        .filter(|(_, variance)| *variance > 0.0)
        .map(|(source, variance)| Contribution {
            name: name(&source),
            source,
            share: variance / total,
            sd: variance.sqrt(),
        })
        .collect();
    list.sort_by(|a, b| b.share.total_cmp(&a.share).then_with(|| a.source.cmp(&b.source)));
    list
}

fn name(source: &Source) -> String {
    match source {
        Source::Piece(role) => role.key().into(),
        Source::Length => "length".into(),
        Source::Cap => "cap of this grip".into(),
        Source::Shared(key) => key.clone(),
        Source::Scale(key) => format!("scale {key}"),
        Source::Readings => "noise and rounding of the readings".into(),
        Source::OtherClubs => "pieces of the other clubs".into(),
    }
}
