//! Parts sorted by weight, and which head masses to ask for.

use crate::look_up::LookUp;
use crate::{App, AppError, load_library, load_shop};
use desk::ask::{AskClub, AskGround, HeadAsk, Supply, ask};
use desk::stock_csv;
use desk::weight_class::{Classes, Sorting, sort};
use serde::Deserialize;
use store::PartFilter;
use trade::error::Noun;
use trade::part::PartState;
use trade::sheet::Sheet;
use utoipa::ToSchema;

/// Width of a class where none is given, g.
pub const USUAL_WIDTH_G: f64 = 1.0;
/// Places in a row of the tray where none are given.
pub(crate) const USUAL_COLUMNS: usize = 6;

/// Which parts to sort, and how.
#[derive(Debug, Clone, Default, PartialEq, Deserialize, ToSchema, utoipa::IntoParams)]
#[into_params(parameter_in = Query)]
#[serde(deny_unknown_fields, default)]
pub struct SortRequest {
    /// Code of the model.
    pub model: String,
    /// Number; left out: all of the model.
    pub number: Option<String>,
    /// State; left out: free.
    pub state: Option<PartState>,
    /// Width of a class; left out, and no count given: 1 g.
    #[param(minimum = 0.1, maximum = 100)]
    pub width_g: Option<f64>,
    /// How many classes of equal width.
    #[param(minimum = 1, maximum = 60)]
    pub classes: Option<usize>,
    /// Places in a row of the tray; left out: 6.
    #[param(minimum = 1, maximum = 40)]
    pub columns: Option<usize>,
}

/// Which head masses to ask for: of a job, of a saved sheet, of a sheet, or of single clubs.
#[derive(Debug, Clone, Default, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
pub struct AskRequest {
    /// Running number of a job.
    pub job: Option<i64>,
    /// A sheet that is not saved, given whole.
    pub sheet: Option<Sheet>,
    /// Identity of a saved sheet.
    pub sheet_id: Option<String>,
    /// Single clubs.
    pub clubs: Vec<AskClub>,
    /// What the supplier says of the heads; left out: from the stock, or the model's mass and the usual scatter.
    pub supply: Vec<Supply>,
    /// Most in the tip; left out: the shop's own.
    #[schema(minimum = 0, maximum = 40)]
    pub cap_g: Option<f64>,
    /// How far from its swing weight a club may stay and still count.
    #[schema(minimum = 0, maximum = 5)]
    pub within_points: f64,
}

impl App {
    /// Sorts the parts of a model by weight.
    ///
    /// # Errors
    /// An unknown model; a width or count that makes no classes; what the store says.
    pub async fn sort_parts(&self, request: &SortRequest) -> Result<Sorting, AppError> {
        let classes = match (request.width_g, request.classes) {
            (Some(_), Some(_)) => {
                return Err(AppError::invalid(SortingFault::WidthAndCount));
            }
            (_, Some(count)) => Classes::Count(count),
            (width_g, None) => Classes::WidthG(width_g.unwrap_or(USUAL_WIDTH_G)),
        };
        let mut tx = self.store.read().await?;
        let wanted = request.model.trim();
        let model = tx.model(wanted).await?.ok_or_else(|| AppError::not_found(Noun::Model, wanted, &LookUp::Models))?;
        let filter = PartFilter {
            model: Some(model.code().to_owned()),
            number: request.number.as_ref().map(|n| n.trim().to_owned()).filter(|n| !n.is_empty()),
            state: Some(request.state.unwrap_or(PartState::Free)),
            ..PartFilter::default()
        };
        let parts: Vec<_> =
            tx.parts(&filter).await?.into_iter().filter(|p| p.count.is_none() && p.owner.is_none()).collect();
        Ok(sort(&parts, classes, request.columns.unwrap_or(USUAL_COLUMNS))?)
    }

    /// The same as a CSV file.
    ///
    /// # Errors
    /// As [`Self::sort_parts`].
    pub async fn export_sorting(&self, request: &SortRequest) -> Result<String, AppError> {
        Ok(stock_csv::sorting(&self.sort_parts(request).await?))
    }

    /// Which head masses to ask a supplier for.
    ///
    /// # Errors
    /// No club asked about; figures that cannot be; an unknown job, sheet or model; what the store says.
    pub async fn ask_heads(&self, request: &AskRequest) -> Result<Vec<HeadAsk>, AppError> {
        let mut tx = self.store.read().await?;
        let mut clubs = request.clubs.clone();
        if let Some(number) = request.job {
            let job = crate::order::job_of(&mut tx, number).await?;
            clubs.extend(job.clubs.iter().map(|c| AskClub::from(&c.target)));
        }
        if let Some(sheet) = &request.sheet {
            trade::price::check_lines(&sheet.quote)?;
            clubs.extend(sheet.clubs.iter().map(AskClub::from));
        }
        if let Some(id) = &request.sheet_id {
            let row = tx.sheet(&id.as_str().into()).await?;
            let row = row.ok_or_else(|| AppError::not_found(Noun::Sheet, id, &LookUp::Sheets))?;
            clubs.extend(row.sheet.clubs.iter().map(AskClub::from));
        }
        if clubs.is_empty() {
            return Err(AppError::invalid(SortingFault::NoClub));
        }
        let (library, shop) = (load_library(&mut tx).await?, load_shop(&mut tx).await?);
        let parts = Self::free_parts_for(&mut tx, None).await?;
        let ground = AskGround {
            library: &library,
            shop: &shop,
            parts: &parts,
            supply: &request.supply,
            cap_g: request.cap_g,
            within_points: request.within_points,
        };
        Ok(ask(&clubs, ground)?)
    }

    /// The same as a CSV file.
    ///
    /// # Errors
    /// As [`Self::ask_heads`].
    pub async fn export_asks(&self, request: &AskRequest) -> Result<String, AppError> {
        Ok(stock_csv::asks(&self.ask_heads(request).await?))
    }
}

fact::facts! {
    /// What is refused of a question about weights.
    pub(crate) enum SortingFault: "sorting_fault" {
        WidthAndCount,
        NoClub,
    }
}
