//! Readings that the others speak against.

use crate::belief::Belief;
use crate::error::EstimationError as E;
use crate::job::JobModel;
use crate::layout::Layout;
use crate::reading::{Observation, Standing};
use crate::solve::in_order;
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;
use std::sync::Arc;
use utoipa::ToSchema;

/// A reading is doubted when it lies this many standard deviations from what the others forecast: 0.27 % of good ones.
pub const DOUBT_LIMIT: f64 = 3.0;

/// No reading is doubted, however far out: for readings that were tested before.
pub const NO_DOUBT: f64 = f64::MAX;

/// Rounds in which a belief of readings that fit has long settled.
const TRIAL_ROUNDS: usize = 8;

/// A reading that may be the wrong one.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Suspect {
    /// Name of the reading, its own `id`.
    pub id: String,
    /// Its leave-one-out deviation, standard deviations.
    pub z: f64,
    /// Odds that this one is wrong against the one that was set aside: exp((z² − z_max²)/2), the ratio of how well
    /// all readings are explained by a shift of the one or of the other.
    pub odds: f64,
}

/// One reading set aside, with those that could have been it instead.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Suspicion {
    /// All suspects with odds of at least 1 in 100, the likeliest first: the first was set aside. Neighbouring readings
    /// of one club are often hard to tell apart; another reading tells.
    pub suspects: Vec<Suspect>,
}

/// A belief without the readings that could not be believed.
#[derive(Debug, Clone)]
pub struct Doubt {
    /// The belief from the rest.
    pub belief: Belief,
    /// Names of the readings set aside in this test, in the order of their names.
    pub set_aside: Vec<String>,
    /// Names of readings that came in doubted and are believed again.
    pub rehabilitated: Vec<String>,
    /// How each reading came to be set aside, in the order in which it happened; those that came back later are among
    /// them.
    pub suspicions: Vec<Suspicion>,
}

impl JobModel {
    /// Solve, setting aside the readings that the others speak against.
    ///
    /// Every reading is tested anew, whatever was thought of it before, so that one believed early is found out when
    /// later ones have sharpened the forecast, and one doubted early may come back. The reading with the largest
    /// leave-one-out deviation beyond `limit` standard deviations is set aside and all is solved again; when none is
    /// left, those set aside are tried against the rest, the mildest first, and come back if they now fit and nothing
    /// else is doubted for it. Of two that deviate alike the later name is set aside. What the builder insists on
    /// stays; what was withdrawn stays out.
    ///
    /// # Errors
    ///
    /// As [`JobModel::solve`]; a limit that is not positive.
    ///
    /// # Examples
    ///
    /// ```
    /// use estimation::{Club, DOUBT_LIMIT, JobModel, Observation, OnClub, Piece, Prior, Quantity, Role};
    /// let head = Piece::new(Role::Head, Prior::new(256.0, 5.0), Prior::known(37.0));
    /// let job = JobModel { clubs: vec![Club::new("iron-7", 36.5).with_piece(head)], ..JobModel::default() };
    /// let mass = Quantity::PartMass(Role::Head);
    /// let read = |id: &str, g| Observation::new(id, mass.clone(), g, 0.1).of_club("iron-7", OnClub::NONE);
    /// // Two readings agree, the third has two digits exchanged: it lies 27 g off, hundreds of its standard deviations.
    /// let doubt = job.solve_with_doubt(&[read("a", 256.0), read("b", 256.0), read("c", 283.0)], DOUBT_LIMIT)?;
    /// assert_eq!(doubt.set_aside, ["c"]);
    /// let believed = doubt.belief.forecast("iron-7", &mass, OnClub::NONE, None)?;
    /// assert!((believed.mean - 256.0).abs() < 1e-3);
    /// # Ok::<(), estimation::EstimationError>(())
    /// ```
    pub fn solve_with_doubt(&self, readings: &[Observation], limit: f64) -> Result<Doubt, E> {
        E::positive(|| "doubt_limit".into(), limit)?;
        let layout = Arc::new(Layout::new(self)?);
        let readings = in_order(readings)?;
        let mut trial = Trial { layout, readings, limit, aside: BTreeSet::new() };
        let (mut belief, mut settled) = trial.solve()?;
        let mut suspicions = Vec::new();
        while let Some(suspicion) = trial.suspects(&belief)? {
            trial.aside.insert(suspicion.suspects[0].id.clone());
            suspicions.push(suspicion);
            (belief, settled) = trial.solve()?;
        }
        // From here on the set only shrinks: a reading comes back for good, or is refused until another has come back.
        let mut refused = BTreeSet::new();
        while let Some(mildest) = trial.mildest(&belief, &refused)? {
            trial.aside.remove(&mildest);
            let (again, again_settled) = trial.solve()?;
            if trial.suspects(&again)?.is_some() {
                trial.aside.insert(mildest.clone());
                refused.insert(mildest);
            } else {
                refused.clear();
                (belief, settled) = (again, again_settled);
            }
        }
        if !settled {
            belief = Belief::new(trial.layout.clone(), belief.readings.to_vec())?;
        }
        let came_doubted = |id: &&Observation| id.standing == Standing::Doubted && !trial.aside.contains(&id.id);
        let rehabilitated = trial.readings.iter().filter(came_doubted).map(|r| r.id.clone()).collect();
        Ok(Doubt { belief, set_aside: trial.aside.into_iter().collect(), rehabilitated, suspicions })
    }
}

struct Trial {
    layout: Arc<Layout>,
    readings: Vec<Observation>,
    limit: f64,
    aside: BTreeSet<String>,
}

impl Trial {
    /// The belief without those set aside, and whether it has settled to the last digit: with a reading far out it takes
    /// many rounds to, and such a belief only has to show which reading that is.
    fn solve(&self) -> Result<(Belief, bool), E> {
        let mut readings = self.readings.clone();
        for reading in &mut readings {
            if matches!(reading.standing, Standing::Believed | Standing::Doubted) {
                let aside = self.aside.contains(&reading.id);
                reading.standing = if aside { Standing::Doubted } else { Standing::Believed };
            }
        }
        let (belief, unsettled) = Belief::settle(Arc::clone(&self.layout), readings, TRIAL_ROUNDS)?;
        Ok((belief, unsettled.is_none()))
    }

    /// The believed readings that deviate most, if the first is beyond the limit.
    fn suspects(&self, belief: &Belief) -> Result<Option<Suspicion>, E> {
        if self.limit >= NO_DOUBT {
            return Ok(None);
        }
        let testable = belief.readings().iter().map(|reading| reading.standing == Standing::Believed);
        let mut suspects: Vec<Suspect> = belief
            .innovations()?
            .into_iter()
            .zip(testable)
            .filter(|(_, testable)| *testable)
            .map(|(i, _)| Suspect { id: i.id, z: i.z, odds: 1.0 })
            .collect();
        let most = suspects.iter().fold(0.0, |most: f64, suspect| most.max(suspect.z.abs()));
        if most <= self.limit {
            return Ok(None);
        }
        // Two readings that disagree only with each other deviate alike up to rounding: the later is taken.
        let first = suspects.iter().rposition(|suspect| suspect.z.abs() >= most * (1.0 - 1e-6)).unwrap_or_default();
        let first = suspects.remove(first);
        suspects.iter_mut().for_each(|s| s.odds = (0.5 * (s.z * s.z - first.z * first.z)).exp().min(1.0));
        suspects.retain(|suspect| suspect.odds >= 0.01);
        suspects.sort_by(|a, b| b.odds.total_cmp(&a.odds).then_with(|| a.id.cmp(&b.id)));
        suspects.insert(0, first);
        Ok(Some(Suspicion { suspects }))
    }

    /// The reading set aside that now fits best, if within the limit.
    fn mildest(&self, belief: &Belief, refused: &BTreeSet<String>) -> Result<Option<String>, E> {
        let fits = belief
            .innovations()?
            .into_iter()
            .filter(|i| self.aside.contains(&i.id) && !refused.contains(&i.id) && i.z.abs() <= self.limit);
        Ok(fits.min_by(|a, b| a.z.abs().total_cmp(&b.z.abs()).then_with(|| a.id.cmp(&b.id))).map(|i| i.id))
    }
}
