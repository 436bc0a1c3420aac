//! Swing moment: mass times its distance from the fulcrum, what a swing weight reads.

use serde::{Deserialize, Serialize};

use crate::{INCH_MM, Length, Mass, OZ_G, rounding::written, scalar::scalar};

/// Distance of the usual fulcrum from the butt stop, in inches. Source: US patent 1,953,916 (apparatus); common practice.
pub const FULCRUM_IN: f64 = 14.0;
/// Moment at A0 on the letter scale. From memory, the constant of the trade's scale.
pub const A0_OZ_IN: f64 = 161.0;
/// Moment of one point of the letter scale: 14 in × 1/8 oz. From memory, the constant of the trade's scale.
pub const POINT_OZ_IN: f64 = 1.75;
/// One point in gram inches, 49.6117. Derived: 1.75 oz·in × 28.349523125 g/oz.
pub const POINT_G_IN: f64 = POINT_OZ_IN * OZ_G;
/// Points between no moment at all and A0, 92. Derived: 161 oz·in ÷ 1.75 oz·in a point.
pub const A0_POINTS: f64 = A0_OZ_IN / POINT_OZ_IN;

/// A swing moment about a fulcrum, or a difference of two. In JSON it is a plain number of ounce inches: name the
/// field `..._oz_in`.
///
/// Kept in ounce inches, since the letter scale is defined in them and D2 must be D2 exactly.
#[derive(Debug, Clone, Copy, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct SwingMoment(f64);

scalar!(SwingMoment);

impl SwingMoment {
    /// Moment of a mass at a place on the shaft axis about a fulcrum, both measured from the butt end.
    ///
    /// # Examples
    ///
    /// ```
    /// use quantity::{Length, Mass, SwingMoment};
    /// // By hand: 200 g at 43 − 14 in are 5800 g·in; 5800 / 28.349523125 = 204.589 oz·in.
    /// let moment = SwingMoment::of(Mass::from_g(200.0), Length::from_inch(43.0), Length::from_inch(14.0));
    /// assert!((moment.g_in() - 5800.0).abs() < 1e-9 && (moment.oz_in() - 204.589).abs() < 0.0005);
    /// ```
    #[must_use]
    pub fn of(mass: Mass, place: Length, fulcrum: Length) -> Self {
        Self::from_g_in(mass.g() * (place - fulcrum).inch())
    }

    /// So many ounce inches.
    #[must_use]
    pub const fn from_oz_in(moment_oz_in: f64) -> Self {
        Self(moment_oz_in)
    }

    /// So many gram inches.
    #[must_use]
    pub const fn from_g_in(moment_g_in: f64) -> Self {
        Self(moment_g_in / OZ_G)
    }

    /// So many gram centimetres.
    #[must_use]
    pub const fn from_g_cm(moment_g_cm: f64) -> Self {
        Self(moment_g_cm * 10.0 / INCH_MM / OZ_G)
    }

    /// The absolute moment at so many points above A0.
    #[must_use]
    pub const fn from_points(points: f64) -> Self {
        Self(A0_OZ_IN + POINT_OZ_IN * points)
    }

    /// The difference of moments that moves a reading by so many points.
    #[must_use]
    pub const fn from_point_difference(points: f64) -> Self {
        Self(POINT_OZ_IN * points)
    }

    /// In ounce inches.
    #[must_use]
    pub const fn oz_in(self) -> f64 {
        self.0
    }

    /// In gram inches.
    #[must_use]
    pub const fn g_in(self) -> f64 {
        self.0 * OZ_G
    }

    /// In gram centimetres.
    #[must_use]
    pub const fn g_cm(self) -> f64 {
        self.0 * OZ_G * INCH_MM / 10.0
    }

    /// Points above A0, for an absolute moment about the 14-inch fulcrum.
    #[must_use]
    pub const fn points(self) -> f64 {
        (self.0 - A0_OZ_IN) / POINT_OZ_IN
    }

    /// Points, for a difference of two moments.
    #[must_use]
    pub const fn point_difference(self) -> f64 {
        self.0 / POINT_OZ_IN
    }
}

impl std::fmt::Display for SwingMoment {
    /// Ounce inches, with the formatter's precision or as many decimals as are needed: `213.5 oz in`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} oz in", written(self.0, f.precision()))
    }
}
