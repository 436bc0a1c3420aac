//! All models of a shop, looked up by code.

use crate::WorkshopError;
use crate::adapter::AdapterModel;
use crate::adhesive::AdhesiveModel;
use crate::ferrule::FerruleModel;
use crate::grip::GripModel;
use crate::head::HeadModel;
use crate::head::HeadNumber;
use crate::model::{Model, PartKind};
use crate::shaft::ShaftModel;
use crate::tape::TapeModel;
use crate::tip_weight::TipWeightModel;
use std::collections::BTreeMap;

/// The models of a shop.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Library {
    models: BTreeMap<String, Model>,
}

impl FromIterator<Model> for Library {
    fn from_iter<I: IntoIterator<Item = Model>>(models: I) -> Self {
        Self { models: models.into_iter().map(|m| (m.code().to_owned(), m)).collect() }
    }
}

macro_rules! look_up {
    ($($(#[$doc:meta])* $name:ident: $variant:ident -> $model:ty, $word:literal;)*) => {$(
        $(#[$doc])*
        ///
        /// # Errors
        /// [`WorkshopError::Unknown`] where there is none of that kind with this code.
        pub fn $name(&self, code: &str) -> Result<&$model, WorkshopError> {
            match self.models.get(code) {
                Some(Model::$variant(model)) => Ok(model),
                _ => Err(self.unknown($word, code, PartKind::$variant)),
            }
        }
    )*};
}

impl Library {
    /// Any model by its code.
    #[must_use]
    pub fn get(&self, code: &str) -> Option<&Model> {
        self.models.get(code)
    }

    /// All models of a kind, by code.
    pub fn of_kind(&self, kind: PartKind) -> impl Iterator<Item = &Model> {
        self.models.values().filter(move |m| m.kind() == kind)
    }

    /// The adapter models that a head model takes, by code.
    pub fn adapters_of(&self, head: &str) -> impl Iterator<Item = &AdapterModel> {
        self.models.values().filter_map(move |model| match model {
            Model::Adapter(adapter) if adapter.fits_head_model == head => Some(adapter),
            _ => None,
        })
    }

    /// All models, by code.
    pub fn iter(&self) -> impl Iterator<Item = &Model> {
        self.models.values()
    }

    look_up! {
        /// A head model.
        head: Head -> HeadModel, "head model";
        /// An adapter model.
        adapter: Adapter -> AdapterModel, "adapter model";
        /// A shaft model.
        shaft: Shaft -> ShaftModel, "shaft model";
        /// A grip model.
        grip: Grip -> GripModel, "grip model";
        /// A tip weight of the tray.
        tip_weight: TipWeight -> TipWeightModel, "tip weight";
        /// A ferrule model.
        ferrule: Ferrule -> FerruleModel, "ferrule model";
        /// An adhesive.
        adhesive: Adhesive -> AdhesiveModel, "adhesive";
        /// A tape.
        tape: Tape -> TapeModel, "tape";
    }

    /// The entry of one number of a head model.
    ///
    /// # Errors
    /// [`WorkshopError::Unknown`] where the model or the number does not exist.
    pub fn head_number(&self, code: &str, number: &str) -> Result<(&HeadModel, &HeadNumber), WorkshopError> {
        let model = self.head(code)?;
        model.number(number).map(|n| (model, n)).ok_or_else(|| WorkshopError::Unknown {
            what: "number",
            name: format!("{number} of {}", model.name),
            next: format!("It has {}", model.numbers.iter().map(|n| n.number.as_str()).collect::<Vec<_>>().join(", ")),
        })
    }

    fn unknown(&self, what: &'static str, code: &str, kind: PartKind) -> WorkshopError {
        let known: Vec<&str> = self.of_kind(kind).map(Model::code).take(8).collect();
        WorkshopError::Unknown {
            what,
            name: code.to_owned(),
            next: if known.is_empty() {
                format!("Add the {what} first, under Stock, Models")
            } else {
                format!("Known are {}; or add it under Stock, Models", known.join(", "))
            },
        }
    }
}
