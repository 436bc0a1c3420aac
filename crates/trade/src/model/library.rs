//! All models of a shop, looked up by code.

use crate::adapter::AdapterModel;
use crate::adhesive::AdhesiveModel;
use crate::error::TradeError;
use crate::error::{FindIt, NotFound};
use crate::ferrule::FerruleModel;
use crate::grip::GripModel;
use crate::head::HeadModel;
use crate::head::HeadNumber;
use crate::model::{Model, PartKind, as_it_came};
use crate::shaft::ShaftModel;
use crate::tape::TapeModel;
use crate::tip_weight::TipWeightModel;
use fact::Fact;
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
    ($($(#[$doc:meta])* $name:ident: $variant:ident -> $model:ty;)*) => {$(
        $(#[$doc])*
        ///
        /// # Errors
        /// [`TradeError::Unknown`] where there is none of that kind with this code.
        pub fn $name(&self, code: &str) -> Result<&$model, TradeError> {
            match self.get(code) {
                Some(Model::$variant(model)) => Ok(model),
                _ => Err(self.unknown(code, PartKind::$variant)),
            }
        }
    )*};
}

impl Library {
    /// Any model by its code, those of clubs that came from elsewhere too.
    #[must_use]
    pub fn get(&self, code: &str) -> Option<&Model> {
        self.models.get(code).or_else(|| as_it_came::model(code))
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
        head: Head -> HeadModel;
        /// An adapter model.
        adapter: Adapter -> AdapterModel;
        /// A shaft model.
        shaft: Shaft -> ShaftModel;
        /// A grip model.
        grip: Grip -> GripModel;
        /// A tip weight of the tray.
        tip_weight: TipWeight -> TipWeightModel;
        /// A ferrule model.
        ferrule: Ferrule -> FerruleModel;
        /// An adhesive.
        adhesive: Adhesive -> AdhesiveModel;
        /// A tape.
        tape: Tape -> TapeModel;
    }

    /// The entry of one number of a head model.
    ///
    /// # Errors
    /// [`TradeError::Unknown`] where the model or the number does not exist.
    ///
    /// # Examples
    ///
    /// ```
    /// use trade::model::{Library, Model};
    ///
    /// let head = serde_json::json!({
    ///     "kind": "head", "code": "SISKIN", "name": "Siskin", "club_kind": "iron", "hand": "right",
    ///     "bore_diameter_mm": 9.5, "bore_depth_mm": 32, "bend_limit_deg": 2, "chart_length_to": "cap",
    ///     "numbers": [{
    ///         "number": "7", "mass_g": 268, "loft_deg": 31, "lie_deg": 62.5, "bore_to_ground_mm": 30,
    ///         "chart": { "length_mm": 939.8, "swing_weight_points": 32 },
    ///     }],
    /// });
    /// let library: Library = [serde_json::from_value::<Model>(head)?].into_iter().collect();
    /// let (model, seven) = library.head_number("SISKIN", "7")?;
    /// assert_eq!((model.bore_depth_mm, seven.loft_deg), (32.0, 31.0));
    /// assert!(library.head_number("SISKIN", "3").is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn head_number(&self, code: &str, number: &str) -> Result<(&HeadModel, &HeadNumber), TradeError> {
        let model = self.head(code)?;
        let any = || model.numbers.first().filter(|_| as_it_came::is(code));
        model.number(number).or_else(any).map(|n| (model, n)).ok_or_else(|| {
            let known = model.numbers.iter().map(|n| n.number.clone()).collect();
            let fault = NotFound::Number { number: number.to_owned(), model: model.name.clone() };
            TradeError::not_found(&fault, &FindIt::Known { known })
        })
    }

    fn unknown(&self, code: &str, kind: PartKind) -> TradeError {
        let known: Vec<String> = self.of_kind(kind).map(|model| model.code().to_owned()).take(8).collect();
        let kind = kind.told();
        let next =
            if known.is_empty() { FindIt::AddModel { kind: kind.clone() } } else { FindIt::KnownOrAdd { known } };
        TradeError::not_found(&NotFound::Model { kind, code: code.to_owned() }, &next)
    }
}
