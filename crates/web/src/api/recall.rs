//! Recall, and the marks on clubs until somebody has looked.

use super::described::NotFound;
use crate::asked::{Asked, Path};
use crate::file::{ADDRESSES, csv_file};
use crate::problem::{ApiError, Body};
use crate::reader::Answer;
use app::App;
use app::recall::{ClearMark, MarkClubs, MarkView};
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::IntoResponse;
use desk::recall::RecallList;
use jiff::civil::Date;
use serde::Deserialize;
use trade::recall::Recall;
use utoipa::IntoParams;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(recall_clubs))
        .routes(routes!(export_recall_addresses))
        .routes(routes!(mark_clubs, list_marks))
        .routes(routes!(clear_mark))
}

/// What is called back: exactly one of lot, part, model, scale and builder.
#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
struct RecallQuery {
    /// A lot of adhesive or of parts. Capitals do not matter.
    lot: Option<String>,
    /// Code of one part, or of a box of equal parts.
    part: Option<String>,
    /// Code or name of a model.
    model: Option<String>,
    /// Key or name of a scale.
    scale: Option<String>,
    /// Name of a builder.
    builder: Option<String>,
    /// The first day, of a scale or a builder; left out: all days.
    #[param(value_type = Option<String>, format = Date)]
    from: Option<Date>,
    /// The last day; left out: until today.
    #[param(value_type = Option<String>, format = Date)]
    to: Option<Date>,
}

impl From<RecallQuery> for Recall {
    fn from(query: RecallQuery) -> Self {
        let RecallQuery { lot, part, model, scale, builder, from, to } = query;
        Self { lot, part, model, scale, builder, from, to }
    }
}

/// The clubs that a lot, a part, a model, a scale or a builder reached, those still in the shop first, with their players.
#[utoipa::path(get, path = "/recall", params(RecallQuery), responses((status = 200, body = RecallList), NotFound))]
async fn recall_clubs(
    State(app): State<App>,
    Asked(query): Asked<RecallQuery>,
) -> Result<Answer<RecallList>, ApiError> {
    Ok(Answer(app.recall(&query.into()).await?))
}

/// Whom to write to, as a CSV file: a row a player.
#[utoipa::path(get, path = "/recall/addresses", params(RecallQuery),
    responses((status = 200, body = String, content_type = "text/csv"), NotFound))]
async fn export_recall_addresses(
    State(app): State<App>,
    Asked(query): Asked<RecallQuery>,
) -> Result<impl IntoResponse, ApiError> {
    Ok(csv_file(ADDRESSES, app.recall(&query.into()).await?.addresses_csv()))
}

/// Mark the clubs of a recall: what to look at stands at each until somebody has looked. A club that the same recall marked
/// with the same word is not marked twice. Returns the marks that were made.
#[utoipa::path(post, path = "/marks", request_body = MarkClubs, responses((status = 201, body = Vec<MarkView>), NotFound))]
async fn mark_clubs(
    State(app): State<App>,
    Body(request): Body<MarkClubs>,
) -> Result<(StatusCode, Answer<Vec<MarkView>>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.mark_clubs(&request).await?)))
}

#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
struct MarkQuery {
    /// Those that were cleared as well.
    #[serde(default)]
    cleared: bool,
}

/// The marks that stand on clubs, the oldest first.
#[utoipa::path(get, path = "/marks", params(MarkQuery), responses((status = 200, body = Vec<MarkView>)))]
async fn list_marks(State(app): State<App>, Asked(query): Asked<MarkQuery>) -> Result<Answer<Vec<MarkView>>, ApiError> {
    Ok(Answer(app.marks(query.cleared).await?))
}

/// Clear a mark with what was found.
#[utoipa::path(post, path = "/marks/{id}/clear", params(("id" = String, Path)), request_body = ClearMark,
    responses((status = 200, body = MarkView)))]
async fn clear_mark(
    State(app): State<App>,
    Path(id): Path<String>,
    Body(request): Body<ClearMark>,
) -> Result<Answer<MarkView>, ApiError> {
    Ok(Answer(app.clear_mark(&id, &request).await?))
}
