//! The same again.

use super::described::NotFound;
use crate::asked::Asked;
use crate::problem::{ApiError, Body};
use crate::reader::Answer;
use app::App;
use app::same_again::{Again, SameAgain, SheetAgain, codes_of};
use app::sheet::SheetView;
use axum::extract::State;
use axum::http::StatusCode;
use serde::Deserialize;
use utoipa::IntoParams;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new().routes(routes!(look_at_again, add_sheet_again))
}

#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
struct AgainQuery {
    /// Codes of the clubs, separated by commas.
    #[serde(default)]
    clubs: String,
    /// Running number of a job that was handed over: all its clubs.
    job: Option<i64>,
    /// Running number of a customer: all clubs of theirs that were not given up.
    customer: Option<i64>,
    /// Whether one club is to match the others of its set as they are today.
    #[serde(default)]
    as_others: bool,
}

/// Clubs as they would be built again: what was read of them last as targets, and what differs in the parts that can be had.
#[utoipa::path(get, path = "/again", params(AgainQuery), responses((status = 200, body = SameAgain), NotFound))]
async fn look_at_again(State(app): State<App>, Asked(query): Asked<AgainQuery>) -> Result<Answer<SameAgain>, ApiError> {
    let AgainQuery { clubs, job, customer, as_others } = query;
    Ok(Answer(app.same_again(&Again { clubs: codes_of(&clubs), job, customer, as_others }).await?))
}

/// Save a new sheet of clubs that are to be built again. It is checked and approved as any other.
#[utoipa::path(post, path = "/again", request_body = SheetAgain, responses((status = 201, body = SheetView), NotFound))]
async fn add_sheet_again(
    State(app): State<App>,
    Body(request): Body<SheetAgain>,
) -> Result<(StatusCode, Answer<SheetView>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.sheet_again(&request).await?)))
}
