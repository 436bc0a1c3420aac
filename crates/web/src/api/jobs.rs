//! Jobs, plans and records.

use crate::asked::{Asked, Path};
use crate::file::csv_file;
use crate::problem::{ApiError, Body};
use crate::reader::{Answer, Reader};
use app::App;
use app::done::{DoneForSet, SetDone};
use app::job::{JobSummary, JobView};
use app::open::{OpenBefore, PassOpen};
use app::plan::{Accept, AddExtra, Proposal, Swap};
use app::scale_health::WithReason;
use axum::extract::State;
use axum::response::IntoResponse;
use bench::ledger::Ledger;
use bench::open_point::OpenClub;
use bench::player_sheet::PlayerSheet;
use bench::record::Record;
use bench::seal::Verified;
use desk::ledger_csv::ledger_csv;
use desk::planner::Lock;
use serde::Deserialize;
use trade::job::JobState;
use trade::plan::{ClubPlan, Plan};
use utoipa::{IntoParams, ToSchema};
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(list_jobs))
        .routes(routes!(get_job))
        .routes(routes!(drop_job))
        .routes(routes!(propose_plan))
        .routes(routes!(accept_plan))
        .routes(routes!(swap_part))
        .routes(routes!(add_extra))
        .routes(routes!(list_open_points))
        .routes(routes!(list_next_open_points))
        .routes(routes!(pass_open_points))
        .routes(routes!(note_step_done))
        .routes(routes!(get_record))
        .routes(routes!(get_player_sheet))
        .routes(routes!(get_ledger))
        .routes(routes!(export_ledger))
        .routes(routes!(verify_record))
        .routes(routes!(verify_records))
        .routes(routes!(look_up_card))
}

#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
struct JobQuery {
    /// Only jobs of this state: `open`, `planned`, `finished` or `dropped`. Left out: open and planned.
    state: Option<JobState>,
}

/// Jobs, the earliest due first.
#[utoipa::path(get, path = "/jobs", params(JobQuery), responses((status = 200, body = Vec<JobSummary>)))]
async fn list_jobs(State(app): State<App>, Asked(query): Asked<JobQuery>) -> Result<Answer<Vec<JobSummary>>, ApiError> {
    Ok(Answer(app.jobs(query.state).await?))
}

/// A job with where each club stands, what to expect of every reading, and the finish it is heading for.
#[utoipa::path(get, path = "/jobs/{number}", params(("number" = i64, Path)),
    responses((status = 200, body = JobView)))]
async fn get_job(State(app): State<App>, Path(number): Path<i64>) -> Result<Answer<JobView>, ApiError> {
    Ok(Answer(app.job_view(number).await?))
}

#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
struct OpenQuery {
    /// Key of the step that cannot be undone: where the shaft is cut, the club glued or bent, or the last.
    step: String,
}

/// What is open on the clubs before a step that cannot be undone; clubs without anything open are left out.
#[utoipa::path(get, path = "/jobs/{number}/open", params(("number" = i64, Path), OpenQuery),
    responses((status = 200, body = Vec<OpenClub>)))]
async fn list_open_points(
    State(app): State<App>,
    Path(number): Path<i64>,
    Asked(query): Asked<OpenQuery>,
) -> Result<Answer<Vec<OpenClub>>, ApiError> {
    Ok(Answer(app.open_before(number, &query.step).await?))
}

/// What is open in a set before its next step that cannot be undone: cutting, gluing, bending, handing over.
#[utoipa::path(get, path = "/jobs/{number}/open/next", params(("number" = i64, Path)),
    responses((status = 200, body = OpenBefore)))]
async fn list_next_open_points(
    State(app): State<App>,
    Path(number): Path<i64>,
) -> Result<Answer<OpenBefore>, ApiError> {
    Ok(Answer(app.open_next(number).await?))
}

/// Go on with what is open before a step that cannot be undone, with one reason for all of it, which the record keeps. It is
/// not asked again at this step until a club is read once more. Gives what is open.
#[utoipa::path(post, path = "/jobs/{number}/open/pass", params(("number" = i64, Path)), request_body = PassOpen,
    responses((status = 200, body = Vec<OpenClub>)))]
async fn pass_open_points(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(pass): Body<PassOpen>,
) -> Result<Answer<Vec<OpenClub>>, ApiError> {
    Ok(Answer(app.pass_all_open(number, &pass).await?))
}

/// Note that a step which asks nothing but that it is done, such as turning the ferrules, is done for the clubs of a job: all
/// that can, or those named. Clubs whose joint waits are named in the answer; a step that asks for a reading is refused.
#[utoipa::path(post, path = "/jobs/{number}/done", params(("number" = i64, Path)), request_body = DoneForSet,
    responses((status = 200, body = SetDone)))]
async fn note_step_done(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(done): Body<DoneForSet>,
) -> Result<Answer<SetDone>, ApiError> {
    Ok(Answer(app.done_for_set(number, &done).await?))
}

/// Give a job up; what it holds is free again.
#[utoipa::path(post, path = "/jobs/{number}/drop", params(("number" = i64, Path)), request_body = WithReason,
    responses((status = 204)))]
async fn drop_job(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(reason): Body<WithReason>,
) -> Result<axum::http::StatusCode, ApiError> {
    app.drop_job(number, &reason.reason, &reason.by).await?;
    Ok(axum::http::StatusCode::NO_CONTENT)
}

/// What a proposed plan must keep to.
#[derive(Debug, Default, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
struct Propose {
    /// Parts that must go into certain clubs.
    #[serde(default)]
    locks: Vec<Lock>,
}

/// Propose a plan from the parts that are free now. Nothing is held.
#[utoipa::path(post, path = "/jobs/{number}/plan/propose", params(("number" = i64, Path)), request_body = Propose,
    responses((status = 200, body = Proposal)))]
async fn propose_plan(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(propose): Body<Propose>,
) -> Result<Answer<Proposal>, ApiError> {
    Ok(Answer(app.propose(number, &propose.locks).await?))
}

/// Accept the plan that was looked at: its parts are held, all or none.
#[utoipa::path(post, path = "/jobs/{number}/plan", params(("number" = i64, Path)), request_body = Accept,
    responses((status = 200, body = Plan)))]
async fn accept_plan(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(accept): Body<Accept>,
) -> Result<Answer<Plan>, ApiError> {
    Ok(Answer(app.accept(number, &accept).await?))
}

/// Put another part in place of a planned one.
#[utoipa::path(post, path = "/jobs/{number}/clubs/{slot}/parts",
    params(("number" = i64, Path), ("slot" = i64, Path)), request_body = Swap,
    responses((status = 200, body = ClubPlan)))]
async fn swap_part(
    State(app): State<App>,
    Path((number, slot)): Path<(i64, i64)>,
    Body(swap): Body<Swap>,
) -> Result<Answer<ClubPlan>, ApiError> {
    Ok(Answer(app.swap(number, slot, &swap).await?))
}

/// Keep what was added to a club beyond its parts: lead tape, powder, a plug in the butt, another screw.
#[utoipa::path(post, path = "/jobs/{number}/clubs/{slot}/extras",
    params(("number" = i64, Path), ("slot" = i64, Path)), request_body = AddExtra,
    responses((status = 200, body = ClubPlan)))]
async fn add_extra(
    State(app): State<App>,
    Path((number, slot)): Path<(i64, i64)>,
    Body(add): Body<AddExtra>,
) -> Result<Answer<ClubPlan>, ApiError> {
    Ok(Answer(app.add_extra(number, slot, &add).await?))
}

/// The record of a job as it stands now.
#[utoipa::path(get, path = "/jobs/{number}/record", params(("number" = i64, Path)),
    responses((status = 200, body = Record)))]
async fn get_record(State(app): State<App>, Path(number): Path<i64>) -> Result<Answer<Record>, ApiError> {
    Ok(Answer(app.record(number).await?))
}

/// The sheet that the player of a job keeps: what was felt, asked and built, the parts by their names, and who built it.
#[utoipa::path(get, path = "/jobs/{number}/player-sheet", params(("number" = i64, Path)),
    responses((status = 200, body = PlayerSheet)))]
async fn get_player_sheet(State(app): State<App>, Path(number): Path<i64>) -> Result<Answer<PlayerSheet>, ApiError> {
    Ok(Answer(app.player_sheet(number).await?))
}

/// The ledger of a job: its record, and every reading, joint and deed in the order in which it was written, each with its seal.
#[utoipa::path(get, path = "/jobs/{number}/ledger", params(("number" = i64, Path)),
    responses((status = 200, body = Ledger)))]
async fn get_ledger(State(app): State<App>, Path(number): Path<i64>) -> Result<Answer<Ledger>, ApiError> {
    Ok(Answer(app.ledger(number).await?))
}

/// The entries of a ledger as a CSV file.
#[utoipa::path(get, path = "/jobs/{number}/ledger/entries", params(("number" = i64, Path)),
    responses((status = 200, body = String, content_type = "text/csv")))]
async fn export_ledger(
    State(app): State<App>,
    Reader(w): Reader,
    Path(number): Path<i64>,
) -> Result<impl IntoResponse, ApiError> {
    let ledger = app.ledger(number).await?;
    Ok(csv_file(&format!("ledger-job-{number}"), ledger_csv(&ledger, &|reason| w.told(reason))))
}

#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
struct SealQuery {
    /// The end that a printed ledger shows, or at least its first 16 digits; blanks do not matter.
    end: Option<String>,
}

/// Hold the record of a job against the chain of its seals: what was changed, removed or inserted in the database since is named.
#[utoipa::path(get, path = "/jobs/{number}/seal", params(("number" = i64, Path), SealQuery),
    responses((status = 200, body = Verified)))]
async fn verify_record(
    State(app): State<App>,
    Path(number): Path<i64>,
    Asked(query): Asked<SealQuery>,
) -> Result<Answer<Verified>, ApiError> {
    Ok(Answer(app.verify_record(number, query.end.as_deref()).await?))
}

/// Hold the records of all jobs against the chains of their seals.
#[utoipa::path(get, path = "/seals", responses((status = 200, body = Vec<Verified>)))]
async fn verify_records(State(app): State<App>) -> Result<Answer<Vec<Verified>>, ApiError> {
    Ok(Answer(app.verify_records().await?))
}

/// The club of a job card.
#[derive(Debug, serde::Serialize, ToSchema)]
struct CardPlace {
    /// Running number of its job.
    job: i64,
    /// Its place in the tray, from 1.
    slot: i64,
}

/// The club that a scanned job card stands for.
#[utoipa::path(get, path = "/cards/{code}", params(("code" = String, Path)),
    responses((status = 200, body = CardPlace)))]
async fn look_up_card(State(app): State<App>, Path(code): Path<String>) -> Result<Answer<CardPlace>, ApiError> {
    let (job, slot) = app.card(&code).await?;
    Ok(Answer(CardPlace { job, slot }))
}
