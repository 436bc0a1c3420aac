//! The figure of a reading as a figure of a fact: what was read decides its unit.

use crate::reading::{Unit, What};

fact::facts! {
    /// A figure in the unit of what is read: `D2.1`, `256.1 g`, `36.75 in`.
    pub enum ReadingFigure: "reading_figure" {
        /// A swing weight, points since A0.
        SwingWeight {
            /// The figure.
            value_points: f64,
        },
        /// A difference of two swing weights.
        Points {
            /// The figure.
            by_points: f64,
        },
        /// A mass.
        Mass {
            /// The figure.
            value_g: f64,
        },
        /// A length.
        Length {
            /// The figure.
            value_mm: f64,
        },
        /// An angle.
        Angle {
            /// The figure.
            value_deg: f64,
        },
        /// A frequency.
        Frequency {
            /// The figure.
            value_cpm: f64,
        },
        /// A time.
        Time {
            /// The figure.
            value_s: f64,
        },
        /// A moment of inertia.
        Inertia {
            /// The figure.
            value_kg_cm2: f64,
        },
        /// Nothing but that it is done.
        Done,
    }
}

impl ReadingFigure {
    /// A value of what was read, in its own unit.
    #[must_use]
    pub const fn of(what: What, value: f64) -> Self {
        match what.unit() {
            Unit::Points => Self::SwingWeight { value_points: value },
            other => Self::in_unit(other, value),
        }
    }

    /// Half a band or a tolerance of what was read: a swing weight's is in points, and no letter.
    #[must_use]
    pub const fn half(what: What, half: f64) -> Self {
        Self::in_unit(what.unit(), half)
    }

    const fn in_unit(unit: Unit, value: f64) -> Self {
        match unit {
            Unit::Points => Self::Points { by_points: value },
            Unit::Gram => Self::Mass { value_g: value },
            Unit::Millimetre => Self::Length { value_mm: value },
            Unit::Degree => Self::Angle { value_deg: value },
            Unit::Cpm => Self::Frequency { value_cpm: value },
            Unit::Second => Self::Time { value_s: value },
            Unit::KgCm2 => Self::Inertia { value_kg_cm2: value },
            Unit::None => Self::Done,
        }
    }
}
