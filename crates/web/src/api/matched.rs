//! Matching: one sheet, a day's jobs, a plan made anew, plans to choose from.

use crate::asked::Path;
use crate::problem::{ApiError, Body};
use crate::reader::Answer;
use app::App;
use app::matched::{AcceptPicks, AcceptReplan, DayRequest, ReplanProposal, SetMatch, SetRequest};
use axum::extract::State;
use desk::planner::{DayPlan, Lock, PlanOption};
use serde::Deserialize;
use trade::plan::Plan;
use utoipa::ToSchema;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(match_set))
        .routes(routes!(match_day))
        .routes(routes!(list_plan_options))
        .routes(routes!(accept_picks))
        .routes(routes!(propose_replan))
        .routes(routes!(accept_replan))
}

/// Match one sheet against the free stock: a proven plan, and others to choose from. Nothing is saved.
#[utoipa::path(post, path = "/match/set", request_body = SetRequest,
    responses((status = 200, body = SetMatch)))]
async fn match_set(State(app): State<App>, Body(request): Body<SetRequest>) -> Result<Answer<SetMatch>, ApiError> {
    Ok(Answer(app.match_set(&request, |_| true).await?))
}

/// Plan a day's jobs on the stock that they share: the best plan found in the time given, with its proven bound.
/// Nothing is held.
#[utoipa::path(post, path = "/match/day", request_body = DayRequest,
    responses((status = 200, body = DayPlan)))]
async fn match_day(State(app): State<App>, Body(request): Body<DayRequest>) -> Result<Answer<DayPlan>, ApiError> {
    Ok(Answer(app.plan_day(&request, |_| true).await?))
}

/// Parts that must go into certain clubs: "this part in this club".
#[derive(Debug, Default, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
struct Locks {
    /// The parts and their clubs; left out: none.
    #[serde(default)]
    locks: Vec<Lock>,
}

/// Plans to choose from for a job that waits for its plan: little in the tips or close to the target, equal swing weight or
/// equal inertia.
#[utoipa::path(post, path = "/jobs/{number}/plan/options", params(("number" = i64, Path)), request_body = Locks,
    responses((status = 200, body = Vec<PlanOption>)))]
async fn list_plan_options(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(locks): Body<Locks>,
) -> Result<Answer<Vec<PlanOption>>, ApiError> {
    Ok(Answer(app.plan_options(number, &locks.locks).await?))
}

/// Hold parts that were chosen by their codes, from a day's plan or from plans to choose from, all or none.
#[utoipa::path(post, path = "/jobs/{number}/plan/picks", params(("number" = i64, Path)), request_body = AcceptPicks,
    responses((status = 200, body = Plan)))]
async fn accept_picks(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(picks): Body<AcceptPicks>,
) -> Result<Answer<Plan>, ApiError> {
    Ok(Answer(app.accept_picks(number, &picks).await?))
}

/// Plan a job anew around what is cut, glued or gripped, and say what would change. Nothing is held.
#[utoipa::path(post, path = "/jobs/{number}/plan/again", params(("number" = i64, Path)), request_body = Locks,
    responses((status = 200, body = ReplanProposal)))]
async fn propose_replan(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(locks): Body<Locks>,
) -> Result<Answer<ReplanProposal>, ApiError> {
    Ok(Answer(app.plan_again(number, &locks.locks).await?))
}

/// Accept the plan made anew that was looked at, all or none.
#[utoipa::path(post, path = "/jobs/{number}/plan/again/accept", params(("number" = i64, Path)),
    request_body = AcceptReplan, responses((status = 200, body = Plan)))]
async fn accept_replan(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(accept): Body<AcceptReplan>,
) -> Result<Answer<Plan>, ApiError> {
    Ok(Answer(app.accept_again(number, &accept).await?))
}
