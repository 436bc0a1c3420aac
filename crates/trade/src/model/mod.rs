//! Models: what the maker says of a head, shaft, grip and of the small things that join them.
//!
//! A model is a document with a short code of the shop's own, by which sheets, parts and files refer to it.

pub mod as_it_came;
mod library;
pub mod usual;

pub use library::Library;

use crate::adapter::AdapterModel;
use crate::adhesive::AdhesiveModel;
use crate::error::TradeError;
use crate::ferrule::FerruleModel;
use crate::grip::GripModel;
use crate::head::HeadModel;
use crate::kind::closed_list;
use crate::shaft::ShaftModel;
use crate::tape::TapeModel;
use crate::tip_weight::TipWeightModel;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

closed_list! {
    /// What a model, or a part of it, is.
    PartKind {
        /// Club head.
        Head = "head";
        /// Adapter between head and shaft.
        Adapter = "adapter";
        /// Shaft.
        Shaft = "shaft";
        /// Grip.
        Grip = "grip";
        /// Weight inside the shaft's tip.
        TipWeight = "tip_weight";
        /// Ferrule.
        Ferrule = "ferrule";
        /// Two-part adhesive.
        Adhesive = "adhesive";
        /// Grip tape.
        Tape = "tape";
    }
}

/// Any model, told apart by `kind` in its document.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Model {
    /// A head.
    Head(HeadModel),
    /// An adapter.
    Adapter(AdapterModel),
    /// A shaft.
    Shaft(ShaftModel),
    /// A grip.
    Grip(GripModel),
    /// A tip weight.
    TipWeight(TipWeightModel),
    /// A ferrule.
    Ferrule(FerruleModel),
    /// An adhesive.
    Adhesive(AdhesiveModel),
    /// A tape.
    Tape(TapeModel),
}

impl Model {
    /// What it is a model of.
    #[must_use]
    pub const fn kind(&self) -> PartKind {
        match self {
            Self::Head(_) => PartKind::Head,
            Self::Adapter(_) => PartKind::Adapter,
            Self::Shaft(_) => PartKind::Shaft,
            Self::Grip(_) => PartKind::Grip,
            Self::TipWeight(_) => PartKind::TipWeight,
            Self::Ferrule(_) => PartKind::Ferrule,
            Self::Adhesive(_) => PartKind::Adhesive,
            Self::Tape(_) => PartKind::Tape,
        }
    }

    /// What the maker says that a part of it weighs, g; none for what is not weighed part by part (adhesive, tape), and for a
    /// number that the model lacks. A head needs its number, a taper blank too.
    #[must_use]
    pub fn part_mass_g(&self, number: Option<&str>) -> Option<f64> {
        match self {
            Self::Head(m) => m.number(number?).map(|n| n.mass_g),
            Self::Shaft(m) => m.blank(number.unwrap_or_default()).map(|b| b.mass_g),
            Self::Grip(m) => Some(m.mass_g),
            Self::Adapter(m) => Some(m.mass_g),
            Self::TipWeight(m) => Some(m.mass_g),
            Self::Ferrule(m) => Some(m.mass_g),
            Self::Adhesive(_) | Self::Tape(_) => None,
        }
    }

    /// The shop's short code.
    #[must_use]
    pub fn code(&self) -> &str {
        match self {
            Self::Head(m) => &m.code,
            Self::Adapter(m) => &m.code,
            Self::Shaft(m) => &m.code,
            Self::Grip(m) => &m.code,
            Self::TipWeight(m) => &m.code,
            Self::Ferrule(m) => &m.code,
            Self::Adhesive(m) => &m.code,
            Self::Tape(m) => &m.code,
        }
    }

    /// The name shown to people.
    #[must_use]
    pub fn name(&self) -> &str {
        match self {
            Self::Head(m) => &m.name,
            Self::Adapter(m) => &m.name,
            Self::Shaft(m) => &m.name,
            Self::Grip(m) => &m.name,
            Self::TipWeight(m) => &m.name,
            Self::Ferrule(m) => &m.name,
            Self::Adhesive(m) => &m.name,
            Self::Tape(m) => &m.name,
        }
    }

    /// Gives it another name.
    pub(crate) fn rename(&mut self, name: String) {
        *match self {
            Self::Head(m) => &mut m.name,
            Self::Adapter(m) => &mut m.name,
            Self::Shaft(m) => &mut m.name,
            Self::Grip(m) => &mut m.name,
            Self::TipWeight(m) => &mut m.name,
            Self::Ferrule(m) => &mut m.name,
            Self::Adhesive(m) => &mut m.name,
            Self::Tape(m) => &mut m.name,
        } = name;
    }

    /// Refuses a model whose figures no real thing can have.
    ///
    /// # Errors
    /// The first impossible figure, by its field name.
    pub fn check(&self) -> Result<(), TradeError> {
        check_code(self.code())?;
        if self.name().trim().is_empty() {
            return Err(TradeError::refused(ModelFault::NoName { code: self.code().to_owned() }));
        }
        self.check_figures()
    }

    fn check_figures(&self) -> Result<(), TradeError> {
        match self {
            Self::Head(m) => m.check(),
            Self::Adapter(m) => m.check(),
            Self::Shaft(m) => m.check(),
            Self::Grip(m) => m.check(),
            Self::TipWeight(m) => m.check(),
            Self::Ferrule(m) => m.check(),
            Self::Adhesive(m) => m.check(),
            Self::Tape(m) => m.check(),
        }
    }
}

/// A code is what a scanner reads and a hand types: short, no spaces.
fn check_code(code: &str) -> Result<(), TradeError> {
    let sound = !code.is_empty()
        && code.len() <= 32
        && code.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '_' | '.'));
    if sound { Ok(()) } else { Err(TradeError::unreadable("code", &ModelFault::BadCode { code: code.to_owned() })) }
}

fact::facts! {
    /// What is refused of a model.
    pub(crate) enum ModelFault: "model_fault" {
        NoName { code: String },
        BadCode { code: String },
    }
}
