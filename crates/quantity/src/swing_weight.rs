//! The letter scale of swing weight.

use serde::{Deserialize, Serialize};

use crate::{SwingMoment, decimal, round_to, scalar::scalar};

/// Letters of the scale, ten points each from A0.
const LETTERS: [char; 7] = ['A', 'B', 'C', 'D', 'E', 'F', 'G'];
/// Points on one letter.
const POINTS_A_LETTER: f64 = 10.0;
/// Points at which the scale ends: one beyond G9.
const END_POINTS: f64 = 70.0;

/// A reading on the letter scale: points above A0, ten to a letter. In JSON a plain number: name the field `points`.
///
/// Points may run below A0 or beyond G9.9. The letter form then counts on from the nearest letter (`A-3.2`, `G12.4`)
/// and the moment is printed beside it.
///
/// # Examples
///
/// ```
/// use quantity::SwingWeight;
/// assert_eq!(SwingWeight::from_points(32.0).to_string(), "D2.0");
/// assert_eq!(SwingWeight::from_points(39.96).to_string(), "E0.0");
/// assert_eq!(SwingWeight::from_points(-3.2).to_string(), "A-3.2 (155.4 oz in)");
/// ```
#[derive(Debug, Clone, Copy, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct SwingWeight(f64);

scalar!(SwingWeight);

impl SwingWeight {
    /// So many points above A0.
    #[must_use]
    pub const fn from_points(points: f64) -> Self {
        Self(points)
    }

    /// Points above A0.
    #[must_use]
    pub const fn points(self) -> f64 {
        self.0
    }

    /// The moment about the 14-inch fulcrum.
    #[must_use]
    pub const fn moment(self) -> SwingMoment {
        SwingMoment::from_points(self.0)
    }

    /// Letter form alone with a fixed number of decimals, rounded *before* the letter is chosen: 39.96 is `E0.0`.
    ///
    /// NaN and infinite points give `?`, since no letter stands for them.
    ///
    /// # Examples
    ///
    /// ```
    /// use quantity::SwingWeight;
    /// // Three letters of ten points and nine more; with the tenth rounded up it is the next letter.
    /// assert_eq!(SwingWeight::from_points(39.94).letter(1), "D9.9");
    /// assert_eq!(SwingWeight::from_points(39.96).letter(1), "E0.0");
    /// ```
    #[must_use]
    pub fn letter(self, decimals: u8) -> String {
        if !self.0.is_finite() {
            return "?".to_owned();
        }
        let points = round_to(self.0, decimals);
        let place = (points / POINTS_A_LETTER).floor().clamp(0.0, (LETTERS.len() - 1) as f64);
        format!("{}{}", LETTERS[place as usize], decimal(points - place * POINTS_A_LETTER, decimals))
    }

    /// Letter form as it is said aloud, without a needless `.0`: `D2`, `D2.5`.
    #[must_use]
    pub fn letter_short(self) -> String {
        let text = self.letter(1);
        text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
    }

    /// True when the rounded letter form lies within A0 to G9.9.
    #[must_use]
    pub fn on_scale(self, decimals: u8) -> bool {
        (0.0..END_POINTS).contains(&round_to(self.0, decimals))
    }
}

impl From<SwingMoment> for SwingWeight {
    fn from(moment: SwingMoment) -> Self {
        Self(moment.points())
    }
}

impl From<SwingWeight> for SwingMoment {
    fn from(swing_weight: SwingWeight) -> Self {
        swing_weight.moment()
    }
}

impl std::fmt::Display for SwingWeight {
    /// Letter form with one decimal (or the formatter's precision); off the scale the moment stands beside it.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let decimals = f.precision().map_or(1, |places| u8::try_from(places).unwrap_or(9).min(9));
        f.write_str(&self.letter(decimals))?;
        if self.on_scale(decimals) { Ok(()) } else { write!(f, " ({:.1})", self.moment()) }
    }
}
