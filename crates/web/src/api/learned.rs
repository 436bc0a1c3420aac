//! What the shop has learned, and how well it meets its tolerances.

use crate::problem::{ApiError, Body};
use crate::reader::Answer;
use app::App;
use app::learned::{LearnedChange, LearnedShop, PinLearned, ResetLearned};
use app::told::{SkipTold, TellShop, ToldShop, WithdrawTold};
use axum::extract::State;
use bench::capability::ShopCapability;
use bench::learned::Learned;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(get_learned))
        .routes(routes!(get_learned_state))
        .routes(routes!(list_learned_changes))
        .routes(routes!(reset_learned))
        .routes(routes!(pin_learned))
        .routes(routes!(get_told))
        .routes(routes!(tell_shop))
        .routes(routes!(withdraw_told))
        .routes(routes!(skip_told))
        .routes(routes!(get_capability))
}

/// What the shop has learned: each value with its mean, band, evidence and how it came about, in shown units.
#[utoipa::path(get, path = "/learned", responses((status = 200, body = LearnedShop)))]
async fn get_learned(State(app): State<App>) -> Result<Answer<LearnedShop>, ApiError> {
    Ok(Answer(app.learned().await?))
}

/// The state that the next job begins with: means, joint covariance and scatter, in grams and inches.
#[utoipa::path(get, path = "/learned/state", responses((status = 200, body = Learned)))]
async fn get_learned_state(State(app): State<App>) -> Result<Answer<Learned>, ApiError> {
    Ok(Answer(app.learned_state().await?))
}

/// What changed what the shop knows, the newest first.
#[utoipa::path(get, path = "/learned/history", responses((status = 200, body = Vec<LearnedChange>)))]
async fn list_learned_changes(State(app): State<App>) -> Result<Answer<Vec<LearnedChange>>, ApiError> {
    Ok(Answer(app.learned_history().await?))
}

/// Set one learned value, or all of them, back to what a new shop begins with.
#[utoipa::path(post, path = "/learned/reset", request_body = ResetLearned,
    responses((status = 200, body = LearnedShop)))]
async fn reset_learned(
    State(app): State<App>,
    Body(request): Body<ResetLearned>,
) -> Result<Answer<LearnedShop>, ApiError> {
    app.reset_learned(&request).await?;
    Ok(Answer(app.learned().await?))
}

/// Fix a learned value, or let it learn again.
#[utoipa::path(post, path = "/learned/pin", request_body = PinLearned,
    responses((status = 200, body = LearnedShop)))]
async fn pin_learned(State(app): State<App>, Body(request): Body<PinLearned>) -> Result<Answer<LearnedShop>, ApiError> {
    app.pin_learned(&request).await?;
    Ok(Answer(app.learned().await?))
}

/// What builders said of the shop beside what was learned since, and what it can still be asked.
#[utoipa::path(get, path = "/learned/told", responses((status = 200, body = ToldShop)))]
async fn get_told(State(app): State<App>) -> Result<Answer<ToldShop>, ApiError> {
    Ok(Answer(app.told().await?))
}

/// Say what a joint, a grip, a wrap of tape or a ferrule puts on the swing weight of a club or takes off it. It replaces what
/// was said of the same before.
#[utoipa::path(post, path = "/learned/told", request_body = TellShop, responses((status = 200, body = ToldShop)))]
async fn tell_shop(State(app): State<App>, Body(request): Body<TellShop>) -> Result<Answer<ToldShop>, ApiError> {
    app.tell_shop(&[request]).await?;
    Ok(Answer(app.told().await?))
}

/// Withdraw what was said: it counts as if it had never been said, and the history keeps it.
#[utoipa::path(post, path = "/learned/told/withdraw", request_body = WithdrawTold,
    responses((status = 200, body = ToldShop)))]
async fn withdraw_told(
    State(app): State<App>,
    Body(request): Body<WithdrawTold>,
) -> Result<Answer<ToldShop>, ApiError> {
    app.withdraw_told(&request).await?;
    Ok(Answer(app.told().await?))
}

/// Ask the shop no more for what it knows; it can still say it.
#[utoipa::path(post, path = "/learned/told/skip", request_body = SkipTold, responses((status = 200, body = ToldShop)))]
async fn skip_told(State(app): State<App>, Body(request): Body<SkipTold>) -> Result<Answer<ToldShop>, ApiError> {
    app.skip_told(&request).await?;
    Ok(Answer(app.told().await?))
}

/// Cp and Cpk of the swing weight with their intervals, over all finished clubs, by month and by head model.
#[utoipa::path(get, path = "/capability", responses((status = 200, body = ShopCapability)))]
async fn get_capability(State(app): State<App>) -> Result<Answer<ShopCapability>, ApiError> {
    Ok(Answer(app.capability().await?))
}
