//! Readings at the bench.

use crate::problem::{ApiError, Body, Problem};
use app::App;
use app::bench::{Kept, LetPassRequest, NewReadings};
use axum::Json;
use axum::extract::{Path, State};
use axum::http::StatusCode;
use serde::Deserialize;
use utoipa::ToSchema;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;
use workshop::bench::ClubState;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(read))
        .routes(routes!(take_back))
        .routes(routes!(insist))
        .routes(routes!(let_pass))
}

/// Keep readings of one club at one step, all or none, and learn what they mean.
#[utoipa::path(post, path = "/jobs/{number}/readings", params(("number" = i64, Path)), request_body = NewReadings,
    responses((status = 201, body = Kept), (status = 200, body = Kept, description = "sent before; kept once"),
        (status = 409, body = Problem), (status = 422, body = Problem)))]
async fn read(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(new): Body<NewReadings>,
) -> Result<(StatusCode, Json<Kept>), ApiError> {
    let kept = app.read(number, &new).await?;
    Ok((if kept.repeated { StatusCode::OK } else { StatusCode::CREATED }, Json(kept)))
}

/// Why, and who says so.
#[derive(Debug, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
struct Why {
    #[serde(default)]
    why: String,
    by: String,
}

/// "That was wrong": take a reading back. It stays in the record.
#[utoipa::path(post, path = "/jobs/{number}/readings/{id}/take-back",
    params(("number" = i64, Path), ("id" = String, Path)), request_body = Why,
    responses((status = 200, body = ClubState), (status = 409, body = Problem)))]
async fn take_back(
    State(app): State<App>,
    Path((number, id)): Path<(i64, String)>,
    Body(why): Body<Why>,
) -> Result<Json<ClubState>, ApiError> {
    Ok(Json(app.take_back(number, &id.as_str().into(), &why.why, &why.by).await?))
}

/// Stand by a doubted reading: it is believed, and the record says so.
#[utoipa::path(post, path = "/jobs/{number}/readings/{id}/insist",
    params(("number" = i64, Path), ("id" = String, Path)), request_body = Why,
    responses((status = 200, body = ClubState), (status = 422, body = Problem)))]
async fn insist(
    State(app): State<App>,
    Path((number, id)): Path<(i64, String)>,
    Body(why): Body<Why>,
) -> Result<Json<ClubState>, ApiError> {
    Ok(Json(app.insist(number, &id.as_str().into(), &why.why, &why.by).await?))
}

/// Let a step pass before the joint has its strength, with a reason that the record keeps.
#[utoipa::path(post, path = "/jobs/{number}/let-pass", params(("number" = i64, Path)), request_body = LetPassRequest,
    responses((status = 204), (status = 422, body = Problem)))]
async fn let_pass(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(request): Body<LetPassRequest>,
) -> Result<StatusCode, ApiError> {
    app.let_pass(number, &request).await?;
    Ok(StatusCode::NO_CONTENT)
}
