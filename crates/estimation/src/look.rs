//! A look that answers yes or no, as a measurement: is the ferrule on, does the empty scale show zero?

use crate::error::EstimationError as E;
use crate::hypothesis::Weighed;

/// What a look is expected to tell.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Look {
    /// How many bits it is expected to tell about which group is the true one.
    pub bits: f64,
    /// Chance that the group that is likeliest after it is the true one.
    pub chance_of_naming: f64,
}

impl Weighed {
    /// What a look is expected to tell about which group of hypotheses is the true one; `yes[i]` is the chance of a yes
    /// under hypothesis `i`. The counterpart of [`Weighed::information_bits`] and [`Weighed::chance_of_naming`].
    ///
    /// # Errors
    ///
    /// Not one group and one chance a hypothesis; a chance that is negative or not finite.
    ///
    /// # Examples
    ///
    /// ```
    /// use estimation::{Deviations, Hypothesis};
    /// let one = Deviations { readings: vec!["r".into()], deviation: vec![0.0], covariance: vec![vec![1.0]] };
    /// let even = one.weigh(&[Hypothesis::nothing("a", 1.0), Hypothesis::nothing("b", 1.0)])?;
    /// // Two that are equally likely, and a look that tells them apart for certain: one bit.
    /// let look = even.after_look(&[1.0, 0.0], &[0, 1])?;
    /// assert!((look.bits - 1.0).abs() < 1e-12 && (look.chance_of_naming - 1.0).abs() < 1e-12);
    /// # Ok::<(), estimation::EstimationError>(())
    /// ```
    pub fn after_look(&self, yes: &[f64], group: &[usize]) -> Result<Look, E> {
        let now = self.grouped(group)?;
        if yes.len() != group.len() {
            let (found, expected) = (yes.len(), group.len());
            return Err(E::Shape { place: "look.yes".into(), found, expected });
        }
        let (mut with_yes, mut with_no) = (vec![0.0; now.len()], vec![0.0; now.len()]);
        for ((chance, p), g) in yes.iter().zip(&self.posterior).zip(group) {
            let chance = E::not_negative(|| "look.yes".into(), *chance)?.min(1.0);
            with_yes[*g] += p * chance;
            with_no[*g] += p * (1.0 - chance);
        }
        let mut look = Look { bits: 0.0, chance_of_naming: 0.0 };
        for outcome in [with_yes, with_no] {
            let total: f64 = outcome.iter().sum();
            look.chance_of_naming += outcome.iter().fold(0.0, |most: f64, share| most.max(*share));
            for (share, before) in outcome.iter().zip(&now).filter(|(share, _)| **share > 0.0) {
                look.bits += share * (share / total / before).log2();
            }
        }
        look.bits = look.bits.max(0.0);
        Ok(look)
    }
}
