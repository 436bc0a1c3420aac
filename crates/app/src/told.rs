//! What builders know of the shop: said, withdrawn, and shown beside what was learned since.

use crate::need::need_name;
use crate::{App, AppError, load_learned, load_library, load_shop, new_id};
use bench::belief::BAND_95;
use bench::learned::{Learned, LearnedCause};
use bench::told::{Sureness, ToldFault, ToldFigure, ToldOf, told_key};
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use std::sync::Arc;
use store::{LearnedRow, Tx};
use trade::error::TradeError;
use trade::model::Library;
use trade::shop::Shop;
use utoipa::ToSchema;

/// What a builder says that something does to the swing weight of a club: exactly one of what it puts on and takes off.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TellShop {
    /// Which deed or part the figure is for: gluing a joint, a grip, a wrap of tape or a ferrule.
    pub of: ToldOf,
    /// Code of the adhesive, grip, tape or ferrule; left out: the shop's own adhesive or tape, or the only model there is.
    #[serde(default)]
    pub model: Option<String>,
    /// What it puts on, points: a joint, a ferrule.
    #[serde(default)]
    pub puts_on_points: Option<f64>,
    /// What it takes off, points: a grip, a wrap.
    #[serde(default)]
    pub takes_off_points: Option<f64>,
    /// How sure he is; left out: a figure that he works with.
    #[serde(default)]
    pub sure: Option<Sureness>,
    /// Who says so.
    pub by: String,
}

/// Withdrawing what a builder said.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct WithdrawTold {
    /// Which figure is withdrawn: that for a joint, a grip, a wrap or a ferrule.
    pub of: ToldOf,
    /// Code of the model; left out as in [`TellShop`].
    #[serde(default)]
    pub model: Option<String>,
    /// Who.
    pub by: String,
    /// Why, for the history.
    #[serde(default)]
    pub reason: String,
}

/// Not to be asked what one knows.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SkipTold {
    /// Who.
    pub by: String,
}

/// What a builder has said, beside what is known without it. All figures are points put on; less than 0 is taken off.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct ToldView {
    /// Which deed or part it is for: gluing a joint, a grip, a wrap of tape or a ferrule.
    pub of: ToldOf,
    /// Code of its model.
    pub model: String,
    /// Name of its model.
    pub name: String,
    /// What was said; none where nothing was.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub change_points: Option<f64>,
    /// How sure, where something was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sure: Option<Sureness>,
    /// One standard deviation of what was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sd_points: Option<f64>,
    /// Who said it.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub by: String,
    /// When.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub at: Option<Timestamp>,
    /// By the models' own figures.
    pub model_change_points: f64,
    /// By what the shop's clubs have taught since, without what was said; none where they have taught nothing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub learned_change_points: Option<f64>,
    /// Half width of its 95 % band.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub learned_band_points: Option<f64>,
}

/// What builders said, and what the shop can still be asked.
#[derive(Debug, Clone, PartialEq, Default, Serialize, ToSchema)]
pub struct ToldShop {
    /// What was said.
    pub told: Vec<ToldView>,
    /// What has not been said yet of what the shop uses.
    pub open: Vec<ToldView>,
    /// Whether the shop should be asked: nothing was said, nothing learned, and it has not declined.
    pub ask: bool,
}

/// The model that is meant where none is named: the shop's own, or the only one.
fn usual_model(of: ToldOf, shop: &Shop, library: &Library) -> Option<String> {
    let own = match of {
        ToldOf::Joint => shop.adhesive.clone(),
        ToldOf::Wrap => shop.tape.clone(),
        ToldOf::Grip | ToldOf::Ferrule => None,
    };
    let mut of_kind = library.of_kind(of.kind());
    own.or_else(|| of_kind.next().filter(|_| of_kind.next().is_none()).map(|model| model.code().to_owned()))
}

fn meant(of: ToldOf, named: Option<&str>, shop: &Shop, library: &Library) -> Result<String, AppError> {
    let named = named.map(str::trim).filter(|code| !code.is_empty()).map(str::to_owned);
    let known = || library.of_kind(of.kind()).map(|m| m.code().to_owned()).collect::<Vec<_>>();
    named.or_else(|| usual_model(of, shop, library)).ok_or_else(|| {
        let known = Some(known()).filter(|known| !known.is_empty());
        TradeError::refused(ToldFault::NoModel { of, known }).into()
    })
}

fn view(of: ToldOf, model: &str, learned: &Learned, library: &Library) -> Option<ToldView> {
    let beside = learned.beside_told(of, model, library)?;
    let said = learned.told_of(of, model);
    let name = library.of_kind(of.kind()).find(|m| m.code() == model).map_or(model, |m| m.name());
    Some(ToldView {
        of,
        model: model.to_owned(),
        name: name.to_owned(),
        change_points: said.map(|t| t.change_points),
        sure: said.map(|t| t.sure),
        sd_points: said.map(|t| t.sure.sd_points()),
        by: said.map_or_else(String::new, |t| t.by.clone()),
        at: said.map(|t| t.at),
        model_change_points: beside.model_points,
        learned_change_points: beside.learned_points.map(|(points, _)| points),
        learned_band_points: beside.learned_points.map(|(_, sd)| BAND_95 * sd),
    })
}

pub(crate) fn told_shop(learned: &Learned, shop: &Shop, library: &Library) -> ToldShop {
    let told = learned.told.iter().filter_map(|t| view(t.of, &t.model, learned, library)).collect::<Vec<_>>();
    let open = ToldOf::ALL.iter().filter(|of| told.iter().all(|t| t.of != **of)).filter_map(|of| {
        let first = || library.of_kind(of.kind()).next().map(|m| m.code().to_owned());
        view(*of, &usual_model(*of, shop, library).or_else(first)?, learned, library)
    });
    let open: Vec<ToldView> = open.collect();
    let ask = told.is_empty() && !open.is_empty() && learned.values.is_empty() && !learned.not_asked;
    ToldShop { told, open, ask }
}

impl App {
    /// What builders said of the shop, and what it can still be asked.
    ///
    /// # Errors
    /// What the store says.
    pub async fn told(&self) -> Result<ToldShop, AppError> {
        let mut tx = self.store.read().await?;
        let (library, shop) = (load_library(&mut tx).await?, load_shop(&mut tx).await?);
        Ok(told_shop(&*load_learned(&mut tx).await?, &shop, &library))
    }

    /// Takes in what a builder knows, all of it or nothing. Open jobs use it from now on; what was said of the same before is
    /// replaced.
    ///
    /// # Errors
    /// No name; a figure that cannot be; a model that is not there; what the store says.
    pub async fn tell_shop(&self, requests: &[TellShop]) -> Result<(), AppError> {
        let mut tx = self.store.write().await?;
        let (library, shop) = (load_library(&mut tx).await?, load_shop(&mut tx).await?);
        let mut learned = Arc::unwrap_or_clone(load_learned(&mut tx).await?);
        for request in requests {
            let figure = self.figure(request, &shop, &library)?;
            let (about, by) = (figure.key(), figure.by.clone());
            learned.tell(figure);
            self.append_told(&mut tx, LearnedCause::Told, about, &by, "", learned.clone()).await?;
        }
        tx.commit().await?;
        self.tell(None, "learned");
        Ok(())
    }

    /// Whether a figure would be taken in.
    ///
    /// # Errors
    /// As [`App::tell_shop`].
    pub async fn check_told(&self, request: &TellShop) -> Result<(), AppError> {
        let mut tx = self.store.read().await?;
        let (library, shop) = (load_library(&mut tx).await?, load_shop(&mut tx).await?);
        self.figure(request, &shop, &library).map(drop)
    }

    fn figure(&self, request: &TellShop, shop: &Shop, library: &Library) -> Result<ToldFigure, AppError> {
        need_name(&request.by)?;
        let of = request.of;
        let model = meant(of, request.model.as_deref(), shop, library)?;
        let (on, off) = (request.puts_on_points, request.takes_off_points);
        let change_points = ToldFigure::checked(of, model.clone(), on, off, library)?;
        let sure = request.sure.unwrap_or(Sureness::Figure);
        Ok(ToldFigure { of, model, change_points, sure, by: request.by.trim().to_owned(), at: self.now() })
    }

    /// Withdraws what a builder said: from now on it counts as if it had never been said. The history keeps it.
    ///
    /// # Errors
    /// No name; nothing was said of it; what the store says.
    pub async fn withdraw_told(&self, request: &WithdrawTold) -> Result<(), AppError> {
        need_name(&request.by)?;
        let mut tx = self.store.write().await?;
        let (library, shop) = (load_library(&mut tx).await?, load_shop(&mut tx).await?);
        let model = meant(request.of, request.model.as_deref(), &shop, &library)?;
        let mut learned = Arc::unwrap_or_clone(load_learned(&mut tx).await?);
        learned.withdraw(request.of, &model)?;
        let about = told_key(request.of, &model);
        self.append_told(&mut tx, LearnedCause::Withdrawn, about, &request.by, &request.reason, learned).await?;
        tx.commit().await?;
        self.tell(None, "learned");
        Ok(())
    }

    /// The shop does not want to be asked what it knows; it can still be told.
    ///
    /// # Errors
    /// No name; what the store says.
    pub async fn skip_told(&self, request: &SkipTold) -> Result<(), AppError> {
        need_name(&request.by)?;
        let mut tx = self.store.write().await?;
        let mut learned = Arc::unwrap_or_clone(load_learned(&mut tx).await?);
        if learned.not_asked {
            return Ok(());
        }
        learned.not_asked = true;
        self.append_told(&mut tx, LearnedCause::NotAsked, String::new(), &request.by, "", learned).await?;
        tx.commit().await?;
        self.tell(None, "learned");
        Ok(())
    }

    async fn append_told(
        &self,
        tx: &mut Tx,
        cause: LearnedCause,
        about: String,
        by: &str,
        reason: &str,
        learned: Learned,
    ) -> Result<(), AppError> {
        let row = LearnedRow {
            id: new_id().as_str().into(),
            at: self.now(),
            by: by.trim().to_owned(),
            cause,
            job: None,
            about,
            reason: reason.trim().to_owned(),
            learned,
        };
        Ok(tx.append_learned(&row).await?)
    }
}
