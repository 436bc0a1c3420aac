//! Clubs that live on, and the kinds of job.

use super::described::NotFound;
use crate::asked::{Asked, Path};
use crate::problem::{ApiError, Body};
use crate::reader::{Answer, Reader};
use app::App;
use app::club::{ChangeClub, ClubLine, ClubView, MeasureClub, NewClub};
use app::club_job::{KindView, NewClubJob};
use app::match_job::NewMatch;
use axum::extract::State;
use axum::http::StatusCode;
use desk::match_set::MatchedClub;
use serde::Deserialize;
use trade::job::Job;
use trade::job_kind::JobKind;
use utoipa::IntoParams;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(list_clubs, add_club))
        .routes(routes!(match_club, build_match))
        .routes(routes!(get_club, change_club))
        .routes(routes!(measure_club))
        .routes(routes!(add_club_job))
        .routes(routes!(list_job_kinds, save_job_kind))
        .routes(routes!(remove_job_kind))
}

#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
struct ClubQuery {
    /// Words that must all be found in code, label, player, models or number; capitals do not matter. Left out: all.
    #[serde(default)]
    search: String,
    /// Running number of the customer whose they are. Left out: everybody's.
    owner: Option<i64>,
}

/// Clubs that live on, the latest first, at most 500.
#[utoipa::path(get, path = "/clubs", params(ClubQuery), responses((status = 200, body = Vec<ClubLine>)))]
async fn list_clubs(State(app): State<App>, Asked(query): Asked<ClubQuery>) -> Result<Answer<Vec<ClubLine>>, ApiError> {
    Ok(Answer(app.clubs(&query.search, query.owner, 500).await?))
}

/// Note a club from elsewhere with what was read of it on arrival. What is not known of it stays a wide guess until it is
/// read.
#[utoipa::path(post, path = "/clubs", request_body = NewClub, responses((status = 201, body = ClubView)))]
async fn add_club(
    State(app): State<App>,
    Body(club): Body<NewClub>,
) -> Result<(StatusCode, Answer<ClubView>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.add_club(&club).await?)))
}

#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
struct MatchQuery {
    /// Codes of the clubs that were measured, separated by commas: three at least, all of one sort.
    #[param(example = "C1,C2,C3")]
    clubs: String,
    /// Number or letter of the club that is to match them.
    #[param(example = "7")]
    number: String,
}

/// What one club must be to match a set: each figure from the line through those of the clubs that were measured, with how
/// well the line is known there; a club that lies off the line of the others is named and left out.
#[utoipa::path(get, path = "/match-set", params(MatchQuery),
    responses((status = 200, body = MatchedClub), NotFound))]
async fn match_club(State(app): State<App>, Asked(query): Asked<MatchQuery>) -> Result<Answer<MatchedClub>, ApiError> {
    let codes: Vec<String> =
        query.clubs.split(',').map(|code| code.trim().to_owned()).filter(|c| !c.is_empty()).collect();
    Ok(Answer(app.match_to_set(&codes, &query.number).await?))
}

/// Make the job of one club that is to match others that were measured, in swing weight or in swing inertia.
#[utoipa::path(post, path = "/match-set", request_body = NewMatch, responses((status = 201, body = Job)))]
async fn build_match(State(app): State<App>, Body(new): Body<NewMatch>) -> Result<(StatusCode, Answer<Job>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.new_match_job(new).await?)))
}

/// A club with its life.
#[utoipa::path(get, path = "/clubs/{code}", params(("code" = String, Path)), responses((status = 200, body = ClubView)))]
async fn get_club(State(app): State<App>, Path(code): Path<String>) -> Result<Answer<ClubView>, ApiError> {
    Ok(Answer(app.club(&code).await?))
}

/// Change what a club is called and whose it is, or give it up.
#[utoipa::path(patch, path = "/clubs/{code}", params(("code" = String, Path)), request_body = ChangeClub,
    responses((status = 200, body = ClubView)))]
async fn change_club(
    State(app): State<App>,
    Path(code): Path<String>,
    Body(change): Body<ChangeClub>,
) -> Result<Answer<ClubView>, ApiError> {
    Ok(Answer(app.change_club(&code, &change).await?))
}

/// Note what was read of a club outside of a job.
#[utoipa::path(post, path = "/clubs/{code}/readings", params(("code" = String, Path)), request_body = MeasureClub,
    responses((status = 201, body = ClubView)))]
async fn measure_club(
    State(app): State<App>,
    Path(code): Path<String>,
    Body(read): Body<MeasureClub>,
) -> Result<(StatusCode, Answer<ClubView>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.measure_club(&code, &read).await?)))
}

/// Make a job on clubs that are there: what goes on them is chosen from stock and held, all or none, and the clubs go to the
/// bench.
#[utoipa::path(post, path = "/jobs", request_body = NewClubJob, responses((status = 201, body = Job)))]
async fn add_club_job(
    State(app): State<App>,
    Body(new): Body<NewClubJob>,
) -> Result<(StatusCode, Answer<Job>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.new_club_job(&new).await?)))
}

/// The kinds of job: those of the trade, then the shop's own.
#[utoipa::path(get, path = "/job-kinds", responses((status = 200, body = Vec<KindView>)))]
async fn list_job_kinds(State(app): State<App>, Reader(w): Reader) -> Result<Answer<Vec<KindView>>, ApiError> {
    Ok(Answer(app.job_kinds(&w).await?))
}

/// Keep a kind of job of the shop's own, over the one with its key. Jobs that are made keep their steps.
#[utoipa::path(put, path = "/job-kinds", request_body = JobKind, responses((status = 200, body = JobKind)))]
async fn save_job_kind(State(app): State<App>, Body(kind): Body<JobKind>) -> Result<Answer<JobKind>, ApiError> {
    Ok(Answer(app.save_job_kind(&kind).await?))
}

/// Take a kind of job of the shop's own away.
#[utoipa::path(delete, path = "/job-kinds/{key}", params(("key" = String, Path)), responses((status = 204)))]
async fn remove_job_kind(State(app): State<App>, Path(key): Path<String>) -> Result<StatusCode, ApiError> {
    app.remove_job_kind(&key).await?;
    Ok(StatusCode::NO_CONTENT)
}
