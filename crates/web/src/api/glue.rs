//! Adhesive.

use crate::problem::{ApiError, Body, Problem};
use app::App;
use app::glue::{BatchView, NewBatch, TakeBackBatch};
use axum::Json;
use axum::extract::{Path, Query, State};
use axum::http::StatusCode;
use serde::Deserialize;
use utoipa::IntoParams;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;
use workshop::glue::Mix;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new().routes(routes!(amounts)).routes(routes!(batches, start)).routes(routes!(take_back))
}

#[derive(Debug, Deserialize, IntoParams)]
struct MixQuery {
    /// How many joints.
    joints: usize,
    /// Code of the adhesive; left out: the shop's own.
    adhesive: Option<String>,
    /// Share of spacers, percent by mass.
    bead_share_percent: Option<f64>,
    /// Temperature of the room.
    room_c: Option<f64>,
}

/// What to weigh out for so many joints, and the times of the room.
#[utoipa::path(get, path = "/glue/mix", params(MixQuery),
    responses((status = 200, body = Mix), (status = 422, body = Problem)))]
async fn amounts(State(app): State<App>, Query(q): Query<MixQuery>) -> Result<Json<Mix>, ApiError> {
    Ok(Json(app.mix(q.adhesive.as_deref(), q.joints, q.bead_share_percent, q.room_c).await?))
}

/// Batches of the last fortnight, the latest first.
#[utoipa::path(get, path = "/batches", responses((status = 200, body = Vec<BatchView>)))]
async fn batches(State(app): State<App>) -> Result<Json<Vec<BatchView>>, ApiError> {
    Ok(Json(app.recent_batches(14).await?))
}

/// Start a batch: its clocks run, and its clubs count as glued.
#[utoipa::path(post, path = "/batches", request_body = NewBatch,
    responses((status = 201, body = BatchView), (status = 409, body = Problem)))]
async fn start(State(app): State<App>, Body(new): Body<NewBatch>) -> Result<(StatusCode, Json<BatchView>), ApiError> {
    Ok((StatusCode::CREATED, Json(app.start_batch(&new).await?)))
}

/// Take a batch back that was entered wrongly, while no reading rests on it.
#[utoipa::path(post, path = "/batches/{number}/take-back", params(("number" = i64, Path)), request_body = TakeBackBatch,
    responses((status = 200, body = BatchView), (status = 404, body = Problem), (status = 409, body = Problem)))]
async fn take_back(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(request): Body<TakeBackBatch>,
) -> Result<Json<BatchView>, ApiError> {
    Ok(Json(app.take_back_batch(number, &request).await?))
}
