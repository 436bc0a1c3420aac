//! Geometry shared by the pictures: a linear scale, and labels on one line that never overlap.

use std::fmt::Write as _;

/// A linear mapping from a quantity to a place on the drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scale {
    from: f64,
    at_from: f64,
    per_unit: f64,
}

impl Scale {
    /// The scale that puts `from` at `at_from` and `to` at `at_to`. An empty or unreadable range is drawn as a single
    /// place, `at_from`.
    #[must_use]
    pub fn new(from: f64, to: f64, at_from: f64, at_to: f64) -> Self {
        let span = to - from;
        let per_unit = if span.is_finite() && span.abs() > f64::EPSILON { (at_to - at_from) / span } else { 0.0 };
        Self { from, at_from, per_unit }
    }

    /// Where `value` stands.
    #[must_use]
    pub fn at(&self, value: f64) -> f64 {
        self.at_from + (value - self.from) * self.per_unit
    }

    /// Drawing units per unit of the quantity.
    #[must_use]
    pub fn per_unit(&self) -> f64 {
        self.per_unit
    }
}

/// Places labels of the given widths on one line, in the given order, as near to their wanted centres as possible in
/// the sense of least squares, at least `gap` apart and inside `low..high`. `None` when they cannot all fit.
///
/// Derived: with the cumulated half widths taken off, "no overlap" becomes "not decreasing", so pooling of adjacent
/// violators gives the exact optimum, and clamping it keeps it optimal inside the bounds.
#[must_use]
pub fn spread(wanted: &[f64], widths: &[f64], gap: f64, low: f64, high: f64) -> Option<Vec<f64>> {
    let (first, last) = (widths.first()?, widths.last()?);
    let total: f64 = widths.iter().sum::<f64>() + gap * (widths.len() as f64 - 1.0);
    if wanted.len() != widths.len() || total > high - low || wanted.iter().any(|x| !x.is_finite()) {
        return None;
    }
    let mut shifts = vec![0.0];
    for pair in widths.windows(2) {
        shifts.push(shifts[shifts.len() - 1] + f64::midpoint(pair[0], pair[1]) + gap);
    }
    // Blocks of (sum, count) whose means never decrease.
    let mut blocks: Vec<(f64, usize)> = Vec::new();
    for (want, shift) in wanted.iter().zip(&shifts) {
        let mut block = (want - shift, 1);
        while let Some(&(sum, count)) = blocks.last() {
            if sum / count as f64 <= block.0 / block.1 as f64 {
                break;
            }
            blocks.pop();
            block = (block.0 + sum, block.1 + count);
        }
        blocks.push(block);
    }
    let lowest = low + first / 2.0;
    let highest = high - last / 2.0 - shifts[shifts.len() - 1];
    let means = blocks.iter().flat_map(|&(sum, count)| std::iter::repeat_n(sum / count as f64, count));
    Some(means.zip(&shifts).map(|(mean, shift)| mean.max(lowest).min(highest.max(lowest)) + shift).collect())
}

/// A cautious estimate of the width of a text in a system sans, in the unit of its size. Fonts differ, so this errs
/// to the wide side.
#[must_use]
pub fn text_width(text: &str, size: f64, bold: bool) -> f64 {
    let ems: f64 = text
        .chars()
        .map(|c| match c {
            'i' | 'j' | 'l' | 't' | 'f' | 'r' | '.' | ',' | '·' | ' ' | '\'' | '|' => 0.36,
            'm' | 'w' | 'M' | 'W' | '@' => 0.92,
            'A'..='Z' | '+' | '−' | '±' => 0.68,
            _ => 0.6,
        })
        .sum();
    ems * size * if bold { 1.12 } else { 1.0 }
}

/// A number for an SVG attribute: at most two decimals, no closing zeros; what is not a number becomes 0.
#[must_use]
pub fn num(value: f64) -> String {
    if !value.is_finite() {
        return "0".to_owned();
    }
    let mut text = format!("{value:.2}");
    if text.contains('.') {
        text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    }
    if text == "-0" { "0".to_owned() } else { text }
}

/// A `points` or path attribute from places: `x,y x,y`.
#[must_use]
pub fn places(points: &[(f64, f64)]) -> String {
    let mut text = String::new();
    for (x, y) in points {
        if !text.is_empty() {
            text.push(' ');
        }
        // Writing to a String cannot fail.
        let _ = write!(text, "{},{}", num(*x), num(*y));
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A plain linear congruential generator (constants of Knuth's MMIX), so that a failure can be repeated.
    struct Lcg(u64);
    impl Lcg {
        fn next(&mut self) -> f64 {
            self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (self.0 >> 11) as f64 / (1_u64 << 53) as f64
        }
    }

    #[test]
    fn labels_never_overlap_and_stay_inside() {
        let mut lcg = Lcg(7);
        let mut placed = 0;
        for _ in 0..2000 {
            let count = 1 + (lcg.next() * 12.0) as usize;
            let mut wanted: Vec<f64> = (0..count).map(|_| lcg.next() * 1100.0 - 70.0).collect();
            wanted.sort_by(f64::total_cmp);
            let widths: Vec<f64> = (0..count).map(|_| 20.0 + lcg.next() * 110.0).collect();
            let Some(centres) = spread(&wanted, &widths, 6.0, 10.0, 950.0) else {
                assert!(widths.iter().sum::<f64>() + 6.0 * (count as f64 - 1.0) > 940.0);
                continue;
            };
            placed += 1;
            assert!(centres[0] - widths[0] / 2.0 >= 10.0 - 1e-9);
            assert!(centres[count - 1] + widths[count - 1] / 2.0 <= 950.0 + 1e-9);
            for i in 1..count {
                let free = (centres[i] - widths[i] / 2.0) - (centres[i - 1] + widths[i - 1] / 2.0);
                assert!(free >= 6.0 - 1e-9, "labels {i} and the one before are {free} apart");
            }
        }
        assert!(placed > 1000);
    }

    #[test]
    fn labels_with_room_stay_where_they_want() {
        let centres = spread(&[100.0, 300.0, 305.0], &[40.0, 40.0, 40.0], 0.0, 0.0, 900.0).unwrap();
        assert_eq!(centres[0], 100.0);
        // The two that clash part evenly about their common middle, 302.5.
        assert!((centres[1] - 282.5).abs() < 1e-9 && (centres[2] - 322.5).abs() < 1e-9, "{centres:?}");
    }

    #[test]
    fn labels_that_cannot_fit_are_refused() {
        assert_eq!(spread(&[1.0, 2.0], &[60.0, 60.0], 0.0, 0.0, 100.0), None);
        assert_eq!(spread(&[f64::NAN], &[10.0], 0.0, 0.0, 100.0), None);
        assert_eq!(spread(&[], &[], 0.0, 0.0, 100.0), None);
    }

    #[test]
    fn numbers_are_short() {
        assert_eq!(num(12.0), "12");
        assert_eq!(num(12.346), "12.35");
        assert_eq!(num(-0.001), "0");
        assert_eq!(num(f64::NAN), "0");
        assert_eq!(places(&[(1.0, 2.5), (3.0, 4.0)]), "1,2.5 3,4");
    }
}
