//! Adhesive.

use super::described::NotFound;
use crate::asked::{Asked, Path};
use crate::problem::{ApiError, Body};
use crate::reader::Answer;
use app::App;
use app::glue::{BatchView, LetBatchPass, NewBatch, TakeBackBatch};
use axum::extract::State;
use axum::http::StatusCode;
use bench::glue::Mix;
use serde::Deserialize;
use utoipa::IntoParams;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(get_mix))
        .routes(routes!(list_batches, start_batch))
        .routes(routes!(take_back_batch))
        .routes(routes!(let_batch_pass))
}

#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
struct MixQuery {
    /// How many joints.
    #[param(minimum = 1, maximum = 500)]
    joints: usize,
    /// Code of the adhesive; left out: the shop's own.
    adhesive: Option<String>,
    /// Share of spacers, percent by mass.
    #[param(minimum = 0, maximum = 30)]
    bead_share_percent: Option<f64>,
    /// Temperature of the room.
    #[param(minimum = -10, maximum = 50)]
    room_c: Option<f64>,
}

/// What to weigh out for a number of joints, and the times of the room.
#[utoipa::path(get, path = "/glue/mix", params(MixQuery),
    responses((status = 200, body = Mix), NotFound))]
async fn get_mix(State(app): State<App>, Asked(q): Asked<MixQuery>) -> Result<Answer<Mix>, ApiError> {
    Ok(Answer(app.mix(q.adhesive.as_deref(), q.joints, q.bead_share_percent, q.room_c).await?))
}

/// Batches of the last fortnight, the latest first.
#[utoipa::path(get, path = "/batches", responses((status = 200, body = Vec<BatchView>)))]
async fn list_batches(State(app): State<App>) -> Result<Answer<Vec<BatchView>>, ApiError> {
    Ok(Answer(app.recent_batches(14).await?))
}

/// Start a batch: its clocks run, and its clubs count as glued.
#[utoipa::path(post, path = "/batches", request_body = NewBatch,
    responses((status = 201, body = BatchView)))]
async fn start_batch(
    State(app): State<App>,
    Body(new): Body<NewBatch>,
) -> Result<(StatusCode, Answer<BatchView>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.start_batch(&new).await?)))
}

/// Take a batch back that was entered wrongly, while no reading rests on it.
#[utoipa::path(post, path = "/batches/{number}/take-back", params(("number" = i64, Path)), request_body = TakeBackBatch,
    responses((status = 200, body = BatchView)))]
async fn take_back_batch(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(request): Body<TakeBackBatch>,
) -> Result<Answer<BatchView>, ApiError> {
    Ok(Answer(app.take_back_batch(number, &request).await?))
}

/// Let a batch pass before its time, with one reason for all its clubs, which the record keeps: every step that needs no
/// more than the strength is open.
#[utoipa::path(post, path = "/batches/{number}/let-pass", params(("number" = i64, Path)), request_body = LetBatchPass,
    responses((status = 200, body = BatchView)))]
async fn let_batch_pass(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(request): Body<LetBatchPass>,
) -> Result<Answer<BatchView>, ApiError> {
    Ok(Answer(app.let_batch_pass(number, &request).await?))
}
