//! A number of parts of one model as it is told: `2 heads Siskin 7`.

use trade::model::{Library, Model, PartKind};

macro_rules! part_counts {
    ($($(#[$doc:meta])* $kind:ident;)*) => {
        fact::facts! {
            /// A number of parts of one model.
            pub enum PartCount: "order_parts" {
                $($(#[$doc])* $kind {
                    /// How many.
                    count: i64,
                    /// Name of the model.
                    model: String,
                    /// Number of a head or taper blank.
                    number: Option<String>,
                },)*
            }
        }

        impl PartCount {
            /// So many parts of a model, by the name that the library has for its code.
            #[must_use]
            pub fn of(count: i64, kind: PartKind, model: &str, number: Option<&str>, library: &Library) -> Self {
                let model = library.get(model).map_or(model, Model::name).to_owned();
                let number = number.map(str::to_owned);
                match kind {
                    $(PartKind::$kind => Self::$kind { count, model, number },)*
                }
            }
        }
    };
}

part_counts! {
    /// Heads.
    Head;
    /// Adapters.
    Adapter;
    /// Shafts.
    Shaft;
    /// Grips.
    Grip;
    /// Tip weights.
    TipWeight;
    /// Ferrules.
    Ferrule;
    /// Adhesives.
    Adhesive;
    /// Tapes.
    Tape;
}
