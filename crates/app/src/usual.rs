//! Usual models: models that are nobody's, to keep in the shop and to correct by weighing.

use crate::look_up::LookUp;
use crate::{App, AppError};
use fact::{Fact, Refusal, Told};
use serde::{Deserialize, Serialize};
use std::collections::{BTreeMap, BTreeSet};
use trade::error::{NotFound, Noun};
use trade::model::usual::{UsualModel, UsualName, UsualSource, usual_model, usual_models};
use trade::model::{Model, PartKind};
use utoipa::ToSchema;

/// A usual model, and whether the shop has it.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct UsualView {
    /// Its code, the same in every shop.
    pub code: String,
    /// What it is a model of.
    pub kind: PartKind,
    /// What it is called until the shop calls it something else.
    pub name: Told,
    /// Whether the shop has a model with this code already.
    pub kept: bool,
    /// The model as it would be kept.
    pub model: Model,
    /// Where each figure comes from, by its place in the model: `numbers.mass_g` is the mass of every number.
    pub from: BTreeMap<String, UsualSource>,
}

/// Which usual models to keep.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct KeepUsual {
    /// Their codes. Capitals do not matter.
    #[schema(min_items = 1)]
    pub codes: Vec<String>,
}

/// What became of the usual models that were asked for.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct UsualKept {
    /// Codes of the models that are new in the shop.
    pub kept: Vec<String>,
    /// Codes that the shop had before; nothing of these models was changed.
    pub were_there: Vec<String>,
}

fact::facts! {
    /// What is refused when usual models are kept.
    pub(crate) enum UsualFault: "usual_fault" {
        NoCodes,
    }
}

impl App {
    /// The usual models of a kind, or all, with names in somebody's language.
    ///
    /// # Errors
    /// What the store says.
    pub async fn usual_models(
        &self,
        kind: Option<PartKind>,
        name: impl Fn(&UsualName) -> String + Send,
    ) -> Result<Vec<UsualView>, AppError> {
        let there: BTreeSet<String> =
            self.models(None).await?.iter().map(|model| model.code().to_ascii_uppercase()).collect();
        let view = |usual: &UsualModel| UsualView {
            code: usual.model.code().to_owned(),
            kind: usual.model.kind(),
            name: usual.name.told(),
            kept: there.contains(usual.model.code()),
            model: usual.named(name(&usual.name)),
            from: usual.from.clone(),
        };
        let of_kind = |usual: &&UsualModel| kind.is_none_or(|kind| usual.model.kind() == kind);
        Ok(usual_models().iter().filter(of_kind).map(view).collect())
    }

    /// Keeps usual models with names in somebody's language, all or none. One that the shop has stays as it is.
    ///
    /// # Errors
    /// No code at all, or one that no usual model has; what the store says.
    pub async fn keep_usual(
        &self,
        wanted: &KeepUsual,
        name: impl Fn(&UsualName) -> String + Send,
    ) -> Result<UsualKept, AppError> {
        if wanted.codes.is_empty() {
            return Err(AppError::invalid(Refusal::new(&UsualFault::NoCodes).at("codes")));
        }
        let mut models = Vec::with_capacity(wanted.codes.len());
        for code in &wanted.codes {
            let usual = usual_model(code).ok_or_else(|| {
                let fault = NotFound::Named { what: Noun::UsualModel, name: code.clone() };
                AppError::NotFound(Refusal::new(&fault).next(&LookUp::UsualModels).at("codes"))
            })?;
            models.push(usual.named(name(&usual.name)));
        }
        let mut tx = self.store.write().await?;
        let (mut kept, mut were_there) = (Vec::new(), Vec::new());
        for model in &models {
            let code = model.code().to_owned();
            if tx.model(&code).await?.is_some() {
                if !kept.contains(&code) {
                    were_there.push(code);
                }
            } else {
                tx.put_model(model, self.now()).await?;
                kept.push(code);
            }
        }
        tx.commit().await?;
        self.tell(None, "stock");
        Ok(UsualKept { kept, were_there })
    }
}
