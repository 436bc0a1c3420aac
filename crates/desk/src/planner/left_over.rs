//! What a plan leaves for others: grips that can still put another club right, heads of which there are few.

use super::PlanWeights;
use trade::grip::GripModel;

/// Heads of a number are alike within so much: about half a point, a usual tolerance (a judgement, no source).
pub(super) const ALIKE_G: f64 = 1.0;
/// A grip farther off than so many standard deviations is no dearer for it.
const MOST_DEVIATIONS: f64 = 3.0;

/// The masses of the heads of one model and number that may be taken, in order.
#[derive(Debug)]
pub(super) struct HeadMasses(Vec<f64>);

impl HeadMasses {
    pub fn of(masses_g: impl Iterator<Item = f64>) -> Self {
        let mut masses: Vec<f64> = masses_g.collect();
        masses.sort_by(f64::total_cmp);
        Self(masses)
    }

    /// How many there are within a gram of a head, itself counted.
    pub fn alike(&self, mass_g: f64) -> usize {
        // A display's last digit more or less, so that heads read exactly a gram apart are alike.
        let reach = ALIKE_G + 1e-6;
        self.0.partition_point(|&g| g <= mass_g + reach) - self.0.partition_point(|&g| g < mass_g - reach)
    }

    /// What it counts to take a head: the whole weight for the last of its kind, half of it for one of two.
    pub fn cost(&self, weights: PlanWeights, mass_g: f64) -> f64 {
        weights.rare_head / self.alike(mass_g).max(1) as f64
    }

    /// Whether a head is the last of its kind, while there are others of its number.
    pub fn last(&self, mass_g: f64) -> bool {
        self.0.len() > 1 && self.alike(mass_g) == 1
    }
}

/// How many standard deviations a grip lies from its model's mass; one far off can still put another club right.
pub(super) fn deviations(model: &GripModel, mass_g: f64) -> f64 {
    (mass_g - model.mass_g) / model.mass_sd_g.max(0.1)
}

/// What it counts to take a grip, where any would do.
pub(super) fn grip_cost(weights: PlanWeights, model: &GripModel, mass_g: f64) -> f64 {
    weights.spent_grip * deviations(model, mass_g).abs().min(MOST_DEVIATIONS).powi(2)
}

#[cfg(test)]
mod tests {
    use super::HeadMasses;
    use trade::plan_weights::PlanWeights;

    #[test]
    fn the_last_of_its_kind_counts_most() {
        let heads = HeadMasses::of([250.0, 247.0, 250.9, 249.2, 255.1].into_iter());
        let weights = PlanWeights { rare_head: 0.006, ..PlanWeights::default() };
        let alike = [247.0, 249.2, 250.0, 250.9, 255.1].map(|g| heads.alike(g));
        // By hand: 249.2 has 250.0 beside it, 250.0 has 249.2 and 250.9.
        assert_eq!(alike, [1, 2, 3, 2, 1]);
        assert_eq!([247.0, 249.2, 250.0].map(|g| heads.cost(weights, g)), [0.006, 0.003, 0.002]);
        assert!(heads.last(255.1) && !heads.last(250.0));
        assert!(!HeadMasses::of([250.0].into_iter()).last(250.0), "there is no choice");
        let read = HeadMasses::of([250.3, 251.3].into_iter());
        assert_eq!(read.alike(250.3), 2, "read a gram apart");
    }
}
