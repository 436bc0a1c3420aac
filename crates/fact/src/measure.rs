//! A figure whose unit is known only where the program runs, as the limits of a field are.

crate::facts! {
    /// A figure with its unit.
    pub enum Measure: "measured" {
        /// A mass.
        Mass {
            /// Grams.
            value_g: f64,
        },
        /// A length.
        Length {
            /// Millimetres.
            value_mm: f64,
        },
        /// A difference of swing weight.
        Points {
            /// Points of swing weight, ten to a letter of the scale.
            value_points: f64,
        },
        /// An angle.
        Angle {
            /// Degrees.
            value_deg: f64,
        },
        /// A frequency of a clamped shaft.
        Frequency {
            /// Cycles a minute.
            value_cpm: f64,
        },
        /// A figure without a unit, or in one that is the same for every reader.
        Plain {
            /// The figure.
            value: f64,
        },
        /// A figure in a unit that is the same for every reader.
        With {
            /// The figure.
            value: f64,
            /// Sign of the unit: `N/mm²`, `h`.
            sign: String,
        },
    }
}

impl Measure {
    /// A figure in the unit of this sign: `g`, `mm`, `points`, `°`, `cpm`. Any other sign stands behind the figure as it is;
    /// without one the figure stands alone.
    ///
    /// # Examples
    ///
    /// ```
    /// use fact::{Fact, Measure};
    ///
    /// assert_eq!(Measure::new(254.6, "g"), Measure::Mass { value_g: 254.6 });
    /// // Newtons to the square millimetre are the same for every reader: the sign stays with the figure.
    /// assert_eq!(Measure::new(20.0, "N/mm²").told().code(), "measured.with");
    /// ```
    #[must_use]
    pub fn new(value: f64, sign: &str) -> Self {
        match sign {
            "g" => Self::Mass { value_g: value },
            "mm" => Self::Length { value_mm: value },
            "points" => Self::Points { value_points: value },
            "°" | "deg" => Self::Angle { value_deg: value },
            "cpm" => Self::Frequency { value_cpm: value },
            "" => Self::Plain { value },
            other => Self::With { value, sign: other.to_owned() },
        }
    }
}
