//! What the shop has learned, and how well it meets its tolerances.

use crate::problem::{ApiError, Body, Problem};
use app::App;
use app::learned::{LearnedChange, LearnedShop, PinLearned, ResetLearned};
use axum::Json;
use axum::extract::State;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;
use workshop::capability::ShopCapability;
use workshop::learned::Learned;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(learned))
        .routes(routes!(state))
        .routes(routes!(history))
        .routes(routes!(reset))
        .routes(routes!(pin))
        .routes(routes!(capability))
}

/// What the shop has learned: each value with its mean, band, evidence and how it came about, in shown units.
#[utoipa::path(get, path = "/learned", responses((status = 200, body = LearnedShop)))]
async fn learned(State(app): State<App>) -> Result<Json<LearnedShop>, ApiError> {
    Ok(Json(app.learned().await?))
}

/// The state that the next job begins with: means, joint covariance and scatter, in grams and inches.
#[utoipa::path(get, path = "/learned/state", responses((status = 200, body = Learned)))]
async fn state(State(app): State<App>) -> Result<Json<Learned>, ApiError> {
    Ok(Json(app.learned_state().await?))
}

/// What changed what the shop knows, the newest first.
#[utoipa::path(get, path = "/learned/history", responses((status = 200, body = Vec<LearnedChange>)))]
async fn history(State(app): State<App>) -> Result<Json<Vec<LearnedChange>>, ApiError> {
    Ok(Json(app.learned_history().await?))
}

/// Set one learned value, or all of them, back to what a new shop begins with.
#[utoipa::path(post, path = "/learned/reset", request_body = ResetLearned,
    responses((status = 200, body = LearnedShop), (status = 409, body = Problem), (status = 422, body = Problem)))]
async fn reset(State(app): State<App>, Body(request): Body<ResetLearned>) -> Result<Json<LearnedShop>, ApiError> {
    app.reset_learned(&request).await?;
    Ok(Json(app.learned().await?))
}

/// Fix a learned value, or let it learn again.
#[utoipa::path(post, path = "/learned/pin", request_body = PinLearned,
    responses((status = 200, body = LearnedShop), (status = 409, body = Problem), (status = 422, body = Problem)))]
async fn pin(State(app): State<App>, Body(request): Body<PinLearned>) -> Result<Json<LearnedShop>, ApiError> {
    app.pin_learned(&request).await?;
    Ok(Json(app.learned().await?))
}

/// Cp and Cpk of the balance with their intervals, over all finished clubs, by month and by head model.
#[utoipa::path(get, path = "/capability", responses((status = 200, body = ShopCapability)))]
async fn capability(State(app): State<App>) -> Result<Json<ShopCapability>, ApiError> {
    Ok(Json(app.capability().await?))
}
