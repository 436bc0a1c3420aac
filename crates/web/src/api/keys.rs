//! Keys: who may come in from outside this machine.

use crate::access::Visitor;
use crate::asked::Path;
use crate::problem::{ApiError, Body};
use crate::reader::Answer;
use app::App;
use app::access::{GiveProgramKey, GivenKey, LetTabletIn, ShownCode, TypedCode, WithdrawKey};
use axum::Extension;
use axum::extract::State;
use axum::http::StatusCode;
use trade::access::AccessKey;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(list_keys, give_key))
        .routes(routes!(show_code))
        .routes(routes!(come_in))
        .routes(routes!(withdraw_key))
}

/// Every key that was ever given, the newest first.
#[utoipa::path(get, path = "/keys", responses((status = 200, body = Vec<AccessKey>)))]
async fn list_keys(State(app): State<App>) -> Result<Answer<Vec<AccessKey>>, ApiError> {
    Ok(Answer(app.access_keys().await?))
}

/// Give a program a key. Its secret is in this answer and nowhere else.
#[utoipa::path(post, path = "/keys", request_body = GiveProgramKey, responses((status = 201, body = GivenKey)))]
async fn give_key(
    State(app): State<App>,
    Body(wanted): Body<GiveProgramKey>,
) -> Result<(StatusCode, Answer<GivenKey>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.give_program_key(&wanted).await?)))
}

/// Show six digits that let one tablet in, once, within five minutes.
#[utoipa::path(post, path = "/keys/codes", request_body = LetTabletIn, responses((status = 201, body = ShownCode)))]
async fn show_code(
    State(app): State<App>,
    Body(wanted): Body<LetTabletIn>,
) -> Result<(StatusCode, Answer<ShownCode>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.let_tablet_in(&wanted).await?)))
}

/// Come in by six digits that are shown. The one operation that needs no key. Five wrong ones from one address are the last for ten
/// minutes.
#[utoipa::path(post, path = "/keys/come-in", request_body = TypedCode, responses((status = 201, body = GivenKey)))]
async fn come_in(
    State(app): State<App>,
    Extension(visitor): Extension<Visitor>,
    Body(typed): Body<TypedCode>,
) -> Result<(StatusCode, Answer<GivenKey>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.come_in(&typed, &visitor.from).await?)))
}

/// Take a key away; its holder is out with the next request.
#[utoipa::path(post, path = "/keys/{number}/withdraw", params(("number" = i64, Path)), request_body = WithdrawKey,
    responses((status = 200, body = Vec<AccessKey>)))]
async fn withdraw_key(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(request): Body<WithdrawKey>,
) -> Result<Answer<Vec<AccessKey>>, ApiError> {
    Ok(Answer(app.withdraw_key(number, &request).await?))
}
