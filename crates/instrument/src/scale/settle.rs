//! When a value has settled, for scales that do not say so, and one value for one part.

use super::line::Measured;

/// Takes values as they come and gives each part's settled value once.
///
/// A value counts as settled when the scale says so, or when it has stood within `within` for `for_s` seconds. After one
/// was given, the next is given only when the pan was empty in between; on a balance, which is never at nought, when it
/// has moved away by more than ten times `within`.
#[derive(Debug, Clone)]
pub struct Settler {
    within: f64,
    for_s: f64,
    least: f64,
    pan: bool,
    since: Option<(f64, f64)>,
    given: Option<f64>,
    /// What the pan showed when it was empty last.
    empty: f64,
}

impl Settler {
    /// For a swing weight that shows steps of `step`; a value is only of interest from `least` on, both in its own unit.
    #[must_use]
    pub fn new(step: f64, least: f64) -> Self {
        Self { within: 1.01 * step, for_s: 0.8, least, pan: false, since: None, given: None, empty: 0.0 }
    }

    /// For a scale with a pan that must be empty between two parts: nearer to nought than `least`, or than a twentieth
    /// of what lay on it, for those that drift.
    #[must_use]
    pub fn with_pan(step: f64, least: f64) -> Self {
        Self { pan: true, ..Self::new(step, least) }
    }

    /// The next value at a time in seconds; the settled value if this makes it one.
    pub fn take(&mut self, measured: Measured, settled: Option<bool>, at_s: f64) -> Option<Measured> {
        let value = measured.figure();
        let left = |given: f64| match self.pan {
            true => value < self.least.max(0.05 * given),
            false => (value - given).abs() > 10.0 * self.within,
        };
        if self.given.is_some_and(left) {
            self.given = None;
            self.empty = value;
        }
        // A pan that has drifted is no part.
        let nothing = if self.pan && self.given.is_none() {
            self.empty = self.empty.min(value);
            value - self.empty.max(0.0) < self.least
        } else {
            value < self.least
        };
        let (anchor, began) = match self.since {
            Some((anchor, began)) if (value - anchor).abs() <= self.within => (anchor, began),
            _ => (value, at_s),
        };
        self.since = Some((anchor, began));
        let stands = settled.unwrap_or(at_s - began >= self.for_s);
        if !stands || self.given.is_some() || nothing {
            return None;
        }
        self.given = Some(value);
        Some(measured)
    }

    /// The line went silent or was lost: what comes next is new; but what lies on a pan was taken before, and is not
    /// taken again until it was off.
    pub fn forget(&mut self) {
        self.since = None;
        if !self.pan {
            self.given = None;
        }
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
    fn on_a_pan_the_next_part_counts_once_the_pan_was_empty() {
        let mut pan = Settler::with_pan(0.1, 0.5);
        assert_eq!(run(&mut pan, &[256.1, 256.1], Some(true)), [256.1]);
        // Another head put beside the first, taken away again, nudged: still the first one.
        assert_eq!(run(&mut pan, &[512.4, 512.4, 256.1, 240.0, 256.1], Some(true)), Vec::<f64>::new());
        // Empty, though the scale has drifted by half a gram.
        assert_eq!(run(&mut pan, &[0.6, 254.3, 254.3], Some(true)), [254.3]);
        // Pulled out and plugged in with the part still on it.
        pan.forget();
        assert_eq!(run(&mut pan, &[254.3, 254.3], Some(true)), Vec::<f64>::new());
        // A ferrule of 1.2 g is a part as well.
        assert_eq!(run(&mut pan, &[0.0, 1.2, 1.2, 0.1, 1.3, 1.3], Some(true)), [1.2, 1.3]);
    }

    #[test]
    fn a_swing_weight_is_never_at_nought_and_takes_the_next_club_when_it_has_moved() {
        let mut swing_weight = Settler::new(0.1, -60.0);
        assert_eq!(run(&mut swing_weight, &[31.9, 31.9, 20.0, 32.2, 32.2], Some(true)), [31.9, 20.0, 32.2]);
    }

    #[test]
    fn a_value_that_never_stands_still_is_never_taken() {
        let mut settler = Settler::new(0.1, 5.0);
        let wobble: Vec<f64> = (0..60).map(|i| 250.0 + f64::from(i % 5)).collect();
        assert!(run(&mut settler, &wobble, None).is_empty());
    }
}
