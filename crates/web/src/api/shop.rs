//! The shop.

use crate::problem::{ApiError, Body};
use crate::reader::Answer;
use app::App;
use app::backup::{Backup, BackupState};
use app::clock_watch::{ClockState, ConfirmClock};
use axum::extract::State;
use axum::http::StatusCode;
use trade::shop::Shop;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(get_shop, save_shop))
        .routes(routes!(get_clock))
        .routes(routes!(confirm_clock))
        .routes(routes!(get_backups, back_up))
}

/// What the shop says of itself: room, scales, own adhesive and tape, steps.
#[utoipa::path(get, path = "/shop", responses((status = 200, body = Shop)))]
async fn get_shop(State(app): State<App>) -> Result<Answer<Shop>, ApiError> {
    Ok(Answer(app.shop().await?))
}

/// Change the shop. Jobs under way keep their own steps.
#[utoipa::path(put, path = "/shop", request_body = Shop,
    responses((status = 200, body = Shop)))]
async fn save_shop(State(app): State<App>, Body(shop): Body<Shop>) -> Result<Answer<Shop>, ApiError> {
    app.save_shop(&shop).await?;
    Ok(Answer(app.shop().await?))
}

/// The machine's clock, and why it is not relied on, if it is not.
#[utoipa::path(get, path = "/clock", responses((status = 200, body = ClockState)))]
async fn get_clock(State(app): State<App>) -> Result<Answer<ClockState>, ApiError> {
    Ok(Answer(app.clock_state().await?))
}

/// Say that the machine's clock is right, after a look at it.
#[utoipa::path(post, path = "/clock/confirm", request_body = ConfirmClock,
    responses((status = 200, body = ClockState)))]
async fn confirm_clock(
    State(app): State<App>,
    Body(confirm): Body<ConfirmClock>,
) -> Result<Answer<ClockState>, ApiError> {
    app.confirm_clock(&confirm).await?;
    Ok(Answer(app.clock_state().await?))
}

/// How the backups of the shop stand: where they are made, when the newest was, what is wrong.
#[utoipa::path(get, path = "/backups", responses((status = 200, body = BackupState)))]
async fn get_backups(State(app): State<App>) -> Answer<BackupState> {
    Answer(app.backup_state())
}

/// Make a backup now, in the folder where one is made each day. It is opened, found whole and counted before it is answered.
#[utoipa::path(post, path = "/backups", responses((status = 201, body = Backup)))]
async fn back_up(State(app): State<App>) -> Result<(StatusCode, Answer<Backup>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.back_up_now().await?)))
}
