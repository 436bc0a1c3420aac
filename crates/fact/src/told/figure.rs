//! What a fact carries: numbers, names, and facts within facts.

use super::Told;
use serde::ser::{Serialize, Serializer};

/// One figure of a fact.
#[derive(Debug, Clone, PartialEq)]
pub enum Figure {
    /// A measured or computed figure; its unit is the end of its name.
    Number(f64),
    /// A count of things.
    Count(i64),
    /// A name, a code, or what somebody typed: shown as it is.
    Text(String),
    /// A fact within the fact.
    Fact(Told),
    /// Several of them.
    List(Vec<Figure>),
    /// Not known, or not there.
    Absent,
}

impl Serialize for Figure {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Number(value) => serializer.serialize_f64(*value),
            Self::Count(count) => serializer.serialize_i64(*count),
            Self::Text(text) => serializer.serialize_str(text),
            Self::Fact(told) => told.serialize(serializer),
            Self::List(figures) => figures.serialize(serializer),
            Self::Absent => serializer.serialize_none(),
        }
    }
}

/// What can stand in a fact as a figure.
pub trait ToFigure {
    /// As a figure.
    fn to_figure(&self) -> Figure;
}

impl ToFigure for Figure {
    fn to_figure(&self) -> Figure {
        self.clone()
    }
}

impl ToFigure for f64 {
    fn to_figure(&self) -> Figure {
        Figure::Number(*self)
    }
}

macro_rules! counts {
    ($($type:ty)*) => { $(
        impl ToFigure for $type {
            fn to_figure(&self) -> Figure {
                Figure::Count(i64::try_from(*self).unwrap_or(i64::MAX))
            }
        }
    )* };
}
counts! { i32 i64 u8 u16 u32 u64 usize }

impl ToFigure for str {
    fn to_figure(&self) -> Figure {
        Figure::Text(self.to_owned())
    }
}

impl ToFigure for String {
    fn to_figure(&self) -> Figure {
        Figure::Text(self.clone())
    }
}

impl ToFigure for char {
    fn to_figure(&self) -> Figure {
        Figure::Text(self.to_string())
    }
}

/// A moment, as RFC 3339 writes it; a name that ends in `_at` is shown as a date and a time of the shop's clock.
impl ToFigure for jiff::Timestamp {
    fn to_figure(&self) -> Figure {
        Figure::Text(self.to_string())
    }
}

/// A day, as ISO 8601 writes it; a name that ends in `_on` is shown as a date.
impl ToFigure for jiff::civil::Date {
    fn to_figure(&self) -> Figure {
        Figure::Text(self.to_string())
    }
}

impl<T: ToFigure + ?Sized> ToFigure for &T {
    fn to_figure(&self) -> Figure {
        (**self).to_figure()
    }
}

impl<T: ToFigure> ToFigure for Option<T> {
    fn to_figure(&self) -> Figure {
        self.as_ref().map_or(Figure::Absent, ToFigure::to_figure)
    }
}

impl<T: ToFigure> ToFigure for Vec<T> {
    fn to_figure(&self) -> Figure {
        Figure::List(self.iter().map(ToFigure::to_figure).collect())
    }
}

impl<T: ToFigure + ?Sized> ToFigure for Box<T> {
    fn to_figure(&self) -> Figure {
        (**self).to_figure()
    }
}

impl ToFigure for Told {
    fn to_figure(&self) -> Figure {
        Figure::Fact(self.clone())
    }
}
