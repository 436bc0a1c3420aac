//! Documents that name the fields of a part: one that has its figures, one that has them as typed, a query by them. Each list of
//! names stands here once, so that a new figure is a line in each; a test fails while a list lacks it.

use crate::model::PartKind;
use crate::part::PartState;

/// Declares a document that has the figures of a part beside its own fields: the part itself, a new one, a change. The mass
/// is not among them, as it goes with what was typed.
#[macro_export]
macro_rules! with_part_figures {
    (@ $(#[$meta:meta])* $name:ident { $($own:tt)* } $($(#[$about:meta])* $figure:ident,)*) => {
        $(#[$meta])*
        pub struct $name {
            $($own)*
            $(
                $(#[$about])*
                #[serde(default, skip_serializing_if = "Option::is_none")]
                pub $figure: Option<f64>,
            )*
        }

        impl $name {
            /// Puts the figures that are given into a part; the others stay as they are.
            pub fn put_figures(&self, part: &mut $crate::part::Part) {
                $(part.$figure = self.$figure.or(part.$figure);)*
            }

            /// Sets the figure of this key; any other key changes nothing.
            pub fn set_figure(&mut self, key: &str, value: Option<f64>) {
                match key {
                    $(stringify!($figure) => self.$figure = value,)*
                    _ => {}
                }
            }

            /// The figures that are given, each with its key.
            #[must_use]
            pub fn given_figures(&self) -> Vec<(&'static str, f64)> {
                [$((stringify!($figure), self.$figure)),*].into_iter().filter_map(|(k, v)| Some((k, v?))).collect()
            }
        }
    };
    ($(#[$meta:meta])* pub struct $name:ident { $($own:tt)* }) => {
        $crate::with_part_figures! {
            @ $(#[$meta])* $name { $($own)* }
            /// Raw length of a shaft, millimetres, where it was measured.
            #[schema(minimum = 100, maximum = 1500)]
            length_mm,
            /// Balance point of a raw shaft from its butt, millimetres, where it was measured.
            balance_point_mm,
            /// Frequency of a raw shaft as received, cycles a minute: on the shop's own clamp, with the shop's own weight at
            /// the tip. It compares shafts of one blank that were measured the same way, and nothing else.
            #[schema(minimum = 50, maximum = 600)]
            cpm,
            /// Loft of a head as received, degrees.
            #[schema(minimum = 0, maximum = 80)]
            loft_deg,
            /// Lie of a head as received, degrees.
            #[schema(minimum = 40, maximum = 80)]
            lie_deg,
        }
    };
}
pub use with_part_figures;

/// Declares a document that has the figures of a part as they were typed, each under the name of its field.
#[macro_export]
macro_rules! with_typed_part_figures {
    (@ $(#[$meta:meta])* $name:ident { $($own:tt)* } $($(#[$about:meta])* $figure:ident,)*) => {
        $(#[$meta])*
        pub struct $name {
            $($own)*
            $($(#[$about])* pub $figure: String,)*
        }

        impl $name {
            /// The figures as typed, each with the name of its field.
            #[must_use]
            pub fn typed_figures(&self) -> Vec<(&'static str, &str)> {
                vec![$((stringify!($figure), self.$figure.as_str())),*]
            }

            /// Sets what was typed for the field of this name; any other name changes nothing.
            pub fn set_typed(&mut self, name: &str, typed: String) {
                match name {
                    $(stringify!($figure) => self.$figure = typed,)*
                    _ => {}
                }
            }
        }
    };
    ($(#[$meta:meta])* pub struct $name:ident { $($own:tt)* }) => {
        $crate::with_typed_part_figures! {
            @ $(#[$meta])* $name { $($own)* }
            /// Raw length of a shaft, millimetres where no unit stands.
            length,
            /// Balance point of a raw shaft from its butt, millimetres where no unit stands.
            balance_point,
            /// Frequency of a raw shaft on the shop's own clamp and weight, cycles a minute where no unit stands.
            cpm,
            /// Loft of a head as received.
            loft,
            /// Lie of a head as received.
            lie,
        }
    };
}
pub use with_typed_part_figures;

/// What a field of a part must be for the part to be asked for.
#[derive(Debug, Clone, PartialEq)]
pub enum Wanted {
    /// This word.
    Is(String),
    /// A figure that is known and not below this, in the unit of its key.
    AtLeast(f64),
    /// A figure that is known and not above this, in the unit of its key.
    AtMost(f64),
}

/// A value of a word's filter.
pub trait FilterWord {
    /// The word as the store has it; none where nothing is asked for.
    fn wanted(&self) -> Option<String>;
}

impl FilterWord for String {
    fn wanted(&self) -> Option<String> {
        Some(self.trim().to_owned()).filter(|text| !text.is_empty())
    }
}

impl FilterWord for PartKind {
    fn wanted(&self) -> Option<String> {
        Some(self.key().to_owned())
    }
}

impl FilterWord for PartState {
    fn wanted(&self) -> Option<String> {
        Some(self.key().to_owned())
    }
}

/// Declares a query of parts whose filters are the fields of a part, beside its own fields: what a word must be, between
/// which limits a figure must lie. Where it is declared, `PartKind` and `PartState` must be known.
#[macro_export]
macro_rules! with_part_filters {
    (@ $(#[$meta:meta])* $name:ident { $($own:tt)* }
        $($(#[$about:meta])* $word:ident: $type:ident,)*;
        $($figure:ident $(#[$about_least:meta])* $least:ident $(#[$about_most:meta])* $most:ident,)*
    ) => {
        $(#[$meta])*
        pub struct $name {
            $($(#[$about])* pub $word: Option<$type>,)*
            $(
                $(#[$about_least])*
                pub $least: Option<f64>,
                $(#[$about_most])*
                pub $most: Option<f64>,
            )*
            $($own)*
        }

        impl $name {
            /// The fields that are asked for, each with what it must be.
            #[must_use]
            pub fn wanted_fields(&self) -> Vec<(&'static $crate::part_field::Field, $crate::part::named_fields::Wanted)> {
                use $crate::part::named_fields::{FilterWord, Wanted};
                use $crate::part_field::Field;
                let words = [$((stringify!($word), self.$word.as_ref().and_then(FilterWord::wanted).map(Wanted::Is)),)*];
                let limits = [$(
                    (stringify!($figure), self.$least.map(Wanted::AtLeast)),
                    (stringify!($figure), self.$most.map(Wanted::AtMost)),
                )*];
                words.into_iter().chain(limits).filter_map(|(key, wanted)| Some((Field::by_key(key)?, wanted?))).collect()
            }
        }
    };
    ($(#[$meta:meta])* pub struct $name:ident { $($own:tt)* }) => {
        $crate::with_part_filters! {
            @ $(#[$meta])* $name { $($own)* }
            /// Its code; capitals do not matter.
            code: String,
            /// What sort of part: head, shaft, grip …
            kind: PartKind,
            /// Code of the model.
            model: String,
            /// Number; capitals do not matter.
            number: String,
            /// Lot; capitals do not matter.
            lot: String,
            /// Where it lies; capitals do not matter.
            place: String,
            /// Whose it is: the code or number of a customer, or `shop`.
            owner: String,
            /// Where in its life it is: free, held, used …
            state: PartState,
            ;
            mass_g
            /// Weighed, and not lighter than this, grams.
            least_mass_g
            /// Weighed, and not heavier than this, grams.
            most_mass_g,
            length_mm
            /// Measured, and not shorter than this, millimetres.
            least_length_mm
            /// Measured, and not longer than this, millimetres.
            most_length_mm,
            balance_point_mm
            /// Balance point measured, and not nearer to the butt than this, millimetres.
            least_balance_point_mm
            /// Balance point measured, and not further from the butt than this, millimetres.
            most_balance_point_mm,
            cpm
            /// Frequency measured, and not lower than this, cycles a minute.
            least_cpm
            /// Frequency measured, and not higher than this, cycles a minute.
            most_cpm,
            loft_deg
            /// Loft measured, and not below this, degrees.
            least_loft_deg
            /// Loft measured, and not above this, degrees.
            most_loft_deg,
            lie_deg
            /// Lie measured, and not flatter than this, degrees.
            least_lie_deg
            /// Lie measured, and not more upright than this, degrees.
            most_lie_deg,
        }
    };
}
pub use with_part_filters;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::part::Part;
    use crate::part_field::{FIELDS, Measure, figures};

    crate::with_part_filters! {
        /// A query without fields of its own.
        #[derive(Debug, Clone, Default, serde::Deserialize)]
        #[serde(deny_unknown_fields, default)]
        pub struct Query {}
    }

    crate::with_typed_part_figures! {
        /// Figures as they are typed.
        #[derive(Debug, Clone, Default)]
        pub struct TypedFigures {}
    }

    crate::with_part_figures! {
        /// Figures.
        #[derive(Debug, Clone, Default, serde::Serialize, utoipa::ToSchema)]
        pub struct Figures {}
    }

    /// Each field by itself, and none beside it.
    #[test]
    fn every_field_that_the_store_has_a_column_for_can_be_asked_for() {
        let ask = |name: String, value: serde_json::Value| -> Vec<(&str, Wanted)> {
            let query: Query = serde_json::from_value(serde_json::json!({ name.as_str(): value })).expect(&name);
            query.wanted_fields().into_iter().map(|(field, wanted)| (field.key, wanted)).collect()
        };
        for field in &FIELDS {
            if field.measure == Measure::Word {
                let word = match field.key {
                    "kind" => "shaft",
                    "state" => "free",
                    _ => "A 7",
                };
                assert_eq!(ask(field.key.to_owned(), word.into()), [(field.key, Wanted::Is(word.to_owned()))]);
            }
            if field.figure.as_ref().is_some_and(|figure| figure.si.is_some()) {
                assert_eq!(ask(format!("least_{}", field.key), 61.5.into()), [(field.key, Wanted::AtLeast(61.5))]);
                assert_eq!(ask(format!("most_{}", field.key), 61.5.into()), [(field.key, Wanted::AtMost(61.5))]);
            }
        }
        assert!(ask("lot".into(), " ".into()).is_empty(), "blanks ask for nothing");
    }

    #[test]
    fn every_figure_that_lists_have_is_in_the_lists_of_names() {
        for (field, _) in figures().filter(|(field, _)| field.listed && field.key != "mass_g") {
            let mut given = Figures::default();
            given.set_figure(field.key, Some(61.5));
            assert_eq!(given.given_figures(), [(field.key, 61.5)]);
            let mut part = Part::new("A", PartKind::Shaft, "M");
            given.put_figures(&mut part);
            assert_eq!(field.figure.as_ref().and_then(|figure| (figure.get)(&part)), Some(61.5));
            let mut typed = TypedFigures::default();
            typed.set_typed(field.name, "61.5".to_owned());
            assert!(typed.typed_figures().contains(&(field.name, "61.5")), "{}", field.name);
        }
    }
}
