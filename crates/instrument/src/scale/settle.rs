//! When a value has settled, for scales that do not say so, and one value for one part.

use super::line::Measured;

/// Takes values as they come and gives each part's settled value once.
///
/// A value counts as settled when the scale says so, or when it has stood within `within` for `for_s` seconds. After one
/// was given the next is given only when the scale has moved away by more than ten times that: the part was lifted, or
/// another put down.
#[derive(Debug, Clone)]
pub struct Settler {
    within: f64,
    for_s: f64,
    least: f64,
    since: Option<(f64, f64)>,
    given: Option<f64>,
}

impl Settler {
    /// For a scale that shows steps of `step` and a value is only of interest from `least` on, both in its own unit.
    #[must_use]
    pub fn new(step: f64, least: f64) -> Self {
        Self { within: 1.01 * step, for_s: 0.8, least, since: None, given: None }
    }

    /// The next value at a time in seconds; the settled value if this makes it one.
    pub fn take(&mut self, measured: Measured, settled: Option<bool>, at_s: f64) -> Option<Measured> {
        let value = measured.figure();
        if self.given.is_some_and(|given| (value - given).abs() > 10.0 * self.within) {
            self.given = None;
        }
        let (anchor, began) = match self.since {
            Some((anchor, began)) if (value - anchor).abs() <= self.within => (anchor, began),
            _ => (value, at_s),
        };
        self.since = Some((anchor, began));
        let stands = settled.unwrap_or(at_s - began >= self.for_s);
        if !stands || self.given.is_some() || value < self.least {
            return None;
        }
        self.given = Some(value);
        Some(measured)
    }

    /// The line went silent or was lost: what comes next is new.
    pub fn forget(&mut self) {
        self.since = None;
        self.given = None;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn run(settler: &mut Settler, values: &[f64], told: Option<bool>) -> Vec<f64> {
        values
            .iter()
            .enumerate()
            .filter_map(|(i, v)| settler.take(Measured::MassG(*v), told, i as f64 * 0.2))
            .map(Measured::figure)
            .collect()
    }

    #[test]
    fn a_part_gives_one_value_when_it_stands_still() {
        let mut settler = Settler::new(0.1, 5.0);
        let on = [0.0, 120.0, 250.0, 255.9, 256.1, 256.1, 256.1, 256.0, 256.1, 256.1, 256.1, 256.1];
        assert_eq!(run(&mut settler, &on, None), [256.1]);
        // Lifted and another put down.
        let next = [100.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 254.3, 254.3, 254.3, 254.3, 254.3, 254.3];
        assert_eq!(run(&mut settler, &next, None), [254.3], "an empty scale is nothing");
    }

    #[test]
    fn a_scale_that_says_so_is_believed() {
        let mut settler = Settler::new(0.1, 5.0);
        assert_eq!(run(&mut settler, &[256.1, 256.1], Some(false)), Vec::<f64>::new());
        assert_eq!(run(&mut settler, &[256.1, 256.1], Some(true)), [256.1]);
        // Creeping by less than a part would is the same part.
        assert_eq!(run(&mut settler, &[256.2, 256.3], Some(true)), Vec::<f64>::new());
    }

    #[test]
    fn a_value_that_never_stands_still_is_never_taken() {
        let mut settler = Settler::new(0.1, 5.0);
        let wobble: Vec<f64> = (0..60).map(|i| 250.0 + f64::from(i % 5)).collect();
        assert!(run(&mut settler, &wobble, None).is_empty());
    }
}
