//! Readings that the others speak against.

use crate::belief::Belief;
use crate::error::EstimationError as E;
use crate::job::JobModel;
use crate::layout::Layout;
use crate::reading::{Observation, Standing};
use crate::solve::in_order;
use std::collections::BTreeSet;

/// A reading is doubted when it lies this many standard deviations from what the others forecast: 0.27 % of good ones.
pub const DOUBT_LIMIT: f64 = 3.0;

/// A belief without the readings that could not be believed.
#[derive(Debug, Clone)]
pub struct Doubt {
    /// The belief from the rest.
    pub belief: Belief,
    /// Names of the readings set aside in this test, in the order of their names.
    pub set_aside: Vec<String>,
    /// Names of readings that came in doubted and are believed again.
    pub rehabilitated: Vec<String>,
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
    pub fn solve_with_doubt(&self, readings: &[Observation], limit: f64) -> Result<Doubt, E> {
        E::positive(|| "limit of doubt".into(), limit)?;
        let layout = Layout::new(self)?;
        let readings = in_order(readings)?;
        let mut trial = Trial { layout, readings, limit, aside: BTreeSet::new() };
        let mut belief = trial.solve()?;
        while let Some(worst) = trial.worst(&belief)? {
            trial.aside.insert(worst);
            belief = trial.solve()?;
        }
        // From here on the set only shrinks: a reading comes back for good, or is refused until another has come back.
        let mut refused = BTreeSet::new();
        while let Some(mildest) = trial.mildest(&belief, &refused)? {
            trial.aside.remove(&mildest);
            let again = trial.solve()?;
            if trial.worst(&again)?.is_some() {
                trial.aside.insert(mildest.clone());
                refused.insert(mildest);
            } else {
                refused.clear();
                belief = again;
            }
        }
        let came_doubted = |id: &&Observation| id.standing == Standing::Doubted && !trial.aside.contains(&id.id);
        let rehabilitated = trial.readings.iter().filter(came_doubted).map(|r| r.id.clone()).collect();
        Ok(Doubt { belief, set_aside: trial.aside.into_iter().collect(), rehabilitated })
    }
}

struct Trial {
    layout: Layout,
    readings: Vec<Observation>,
    limit: f64,
    aside: BTreeSet<String>,
}

impl Trial {
    fn solve(&self) -> Result<Belief, E> {
        let mut readings = self.readings.clone();
        for reading in &mut readings {
            if matches!(reading.standing, Standing::Believed | Standing::Doubted) {
                let aside = self.aside.contains(&reading.id);
                reading.standing = if aside { Standing::Doubted } else { Standing::Believed };
            }
        }
        Belief::new(self.layout.clone(), readings)
    }

    /// The believed reading that deviates most, if beyond the limit.
    fn worst(&self, belief: &Belief) -> Result<Option<String>, E> {
        let mut worst: Option<(f64, String)> = None;
        for (reading, i) in belief.readings().iter().zip(belief.innovations()?) {
            let testable = reading.standing == Standing::Believed;
            let least = worst.as_ref().map_or(self.limit, |(z, _)| *z);
            // Two readings that disagree only with each other deviate alike up to rounding: take the later.
            let close = worst.is_some() && (i.z.abs() - least).abs() <= 1e-9 * least;
            if testable && (i.z.abs() > least || close) {
                worst = Some((i.z.abs(), i.id));
            }
        }
        Ok(worst.map(|(_, id)| id))
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
