//! The health of the shop's scales, and gauge studies.

use crate::asked::Path;
use crate::problem::{ApiError, Body};
use crate::reader::Answer;
use app::App;
use app::gauge_study::{NewStudy, NewStudyReading, StudyAnswer, StudyView};
use app::scale_health::{CheckAnswer, NewCalibration, NewCheck, ScaleHealth, TrustWord, WithReason};
use axum::extract::State;
use axum::http::StatusCode;
use serde::Deserialize;
use trade::id::EventId;
use trade::shop::Shop;
use utoipa::ToSchema;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(list_scale_health))
        .routes(routes!(get_scale_health))
        .routes(routes!(check_scale))
        .routes(routes!(take_back_check))
        .routes(routes!(set_scale_trust))
        .routes(routes!(add_calibration))
        .routes(routes!(restart_scale_chart))
        .routes(routes!(list_gauge_studies, begin_gauge_study))
        .routes(routes!(get_gauge_study))
        .routes(routes!(keep_study_reading))
        .routes(routes!(adopt_study_noise))
}

/// How every scale and gauge of the shop stands: trust, checks, charts, offset and drift, what the belief begins with.
#[utoipa::path(get, path = "/scales/health", responses((status = 200, body = Vec<ScaleHealth>)))]
async fn list_scale_health(State(app): State<App>) -> Result<Answer<Vec<ScaleHealth>>, ApiError> {
    Ok(Answer(app.scales_health().await?))
}

/// How one scale stands.
#[utoipa::path(get, path = "/scales/{scale}/health", params(("scale" = String, Path)),
    responses((status = 200, body = ScaleHealth)))]
async fn get_scale_health(State(app): State<App>, Path(scale): Path<String>) -> Result<Answer<ScaleHealth>, ApiError> {
    Ok(Answer(app.scale_health(&scale).await?))
}

/// Keep a check, or be asked about it first: then `kept` is missing and `question` says why; send it again with
/// `confirmed` to keep it as it is.
#[utoipa::path(post, path = "/scales/{scale}/checks", params(("scale" = String, Path)),
    request_body = NewCheck,
    responses((status = 201, body = CheckAnswer), (status = 200, body = CheckAnswer, description = "Asked about, or kept before")))]
async fn check_scale(
    State(app): State<App>,
    Path(scale): Path<String>,
    Body(new): Body<NewCheck>,
) -> Result<(StatusCode, Answer<CheckAnswer>), ApiError> {
    let answer = app.check_scale(&scale, &new).await?;
    let fresh = answer.kept.is_some() && !answer.repeated;
    Ok((if fresh { StatusCode::CREATED } else { StatusCode::OK }, Answer(answer)))
}

/// Take a check back: it stays in the list and does not count.
#[utoipa::path(post, path = "/scales/{scale}/checks/{check}/take-back",
    params(("scale" = String, Path), ("check" = String, Path)),
    request_body = WithReason,
    responses((status = 200, body = ScaleHealth)))]
async fn take_back_check(
    State(app): State<App>,
    Path((scale, check)): Path<(String, String)>,
    Body(word): Body<WithReason>,
) -> Result<Answer<ScaleHealth>, ApiError> {
    Ok(Answer(app.take_back_check(&scale, &EventId(check), &word).await?))
}

/// Trust a scale again, on its passed check or on somebody's word, or take its trust away.
#[utoipa::path(post, path = "/scales/{scale}/trust", params(("scale" = String, Path)),
    request_body = TrustWord,
    responses((status = 200, body = ScaleHealth)))]
async fn set_scale_trust(
    State(app): State<App>,
    Path(scale): Path<String>,
    Body(word): Body<TrustWord>,
) -> Result<Answer<ScaleHealth>, ApiError> {
    Ok(Answer(app.word_on_scale(&scale, &word).await?))
}

/// Keep a calibration.
#[utoipa::path(post, path = "/scales/{scale}/calibrations",
    params(("scale" = String, Path)), request_body = NewCalibration,
    responses((status = 200, body = ScaleHealth)))]
async fn add_calibration(
    State(app): State<App>,
    Path(scale): Path<String>,
    Body(new): Body<NewCalibration>,
) -> Result<Answer<ScaleHealth>, ApiError> {
    Ok(Answer(app.calibrated(&scale, &new).await?))
}

/// Begin a scale's chart anew: it was moved or repaired.
#[utoipa::path(post, path = "/scales/{scale}/chart-anew",
    params(("scale" = String, Path)), request_body = WithReason,
    responses((status = 200, body = ScaleHealth)))]
async fn restart_scale_chart(
    State(app): State<App>,
    Path(scale): Path<String>,
    Body(word): Body<WithReason>,
) -> Result<Answer<ScaleHealth>, ApiError> {
    Ok(Answer(app.chart_anew(&scale, &word).await?))
}

/// All gauge studies, the newest first, with what they found.
#[utoipa::path(get, path = "/gauge-studies", responses((status = 200, body = Vec<StudyView>)))]
async fn list_gauge_studies(State(app): State<App>) -> Result<Answer<Vec<StudyView>>, ApiError> {
    Ok(Answer(app.studies().await?))
}

/// Begin a gauge study, its order drawn at random.
#[utoipa::path(post, path = "/gauge-studies", request_body = NewStudy,
    responses((status = 201, body = StudyView)))]
async fn begin_gauge_study(
    State(app): State<App>,
    Body(new): Body<NewStudy>,
) -> Result<(StatusCode, Answer<StudyView>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.begin_study(&new).await?)))
}

/// How a study stands: the next reading, or what it found.
#[utoipa::path(get, path = "/gauge-studies/{study}", params(("study" = String, Path)),
    responses((status = 200, body = StudyView)))]
async fn get_gauge_study(State(app): State<App>, Path(study): Path<String>) -> Result<Answer<StudyView>, ApiError> {
    Ok(Answer(app.study(&study).await?))
}

/// Keep a reading of a study, or be asked about it first.
#[utoipa::path(post, path = "/gauge-studies/{study}/readings",
    params(("study" = String, Path)), request_body = NewStudyReading,
    responses((status = 200, body = StudyAnswer)))]
async fn keep_study_reading(
    State(app): State<App>,
    Path(study): Path<String>,
    Body(new): Body<NewStudyReading>,
) -> Result<Answer<StudyAnswer>, ApiError> {
    Ok(Answer(app.read_study(&study, &new).await?))
}

/// Who does something.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
struct By {
    /// Their name.
    by: String,
}

/// The scatter that a study found becomes the stated noise of its scale.
#[utoipa::path(post, path = "/gauge-studies/{study}/take-noise",
    params(("study" = String, Path)), request_body = By,
    responses((status = 200, body = Shop)))]
async fn adopt_study_noise(
    State(app): State<App>,
    Path(study): Path<String>,
    Body(by): Body<By>,
) -> Result<Answer<Shop>, ApiError> {
    Ok(Answer(app.take_noise(&study, &by.by).await?))
}
