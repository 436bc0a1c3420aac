//! Readings at the bench.

use crate::asked::{Asked, Path};
use crate::problem::{ApiError, Body};
use crate::reader::Answer;
use app::App;
use app::advice::{Advice, DeclineOffer};
use app::bench::{DoubtedReading, Kept, LetPassRequest, NewReadings};
use app::cpm::{AskCpm, TakeTrims, TrimsTaken};
use app::fit::{ExchangeParts, FitTaken, PartsExchanged, TakeFit, UndoExchange};
use app::grip_size::{TakeWraps, WrapsTaken};
use app::scan::{ScanAt, ScanSaid};
use app::soft_side::{FindSoftSide, ReadTwoPlanes, SoftSideKept, TwoPlanesRead};
use axum::extract::State;
use axum::http::StatusCode;
use bench::club_state::ClubState;
use bench::remedy::GripPick;
use bench::set_fit::SetFit;
use bench::trim_to_cpm::{SetCpm, Slope};
use bench::work_order::SetAdvice;
use bench::wrap_advice::GripSizeOfClub;
use serde::Deserialize;
use utoipa::{IntoParams, ToSchema};
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(keep_readings))
        .routes(routes!(take_back_reading))
        .routes(routes!(insist_on_reading))
        .routes(routes!(let_step_pass))
        .routes(routes!(list_causes))
        .routes(routes!(get_advice))
        .routes(routes!(get_set_advice))
        .routes(routes!(pick_grips))
        .routes(routes!(get_set_fit, take_set_fit))
        .routes(routes!(get_set_cpm, take_set_cpm))
        .routes(routes!(get_grip_sizes, take_wraps))
        .routes(routes!(find_soft_side))
        .routes(routes!(read_two_planes))
        .routes(routes!(exchange_parts))
        .routes(routes!(undo_exchange))
        .routes(routes!(decline_offer))
        .routes(routes!(scan_at_club))
}

/// Keep readings of one club at one step, all or none, and learn what they mean.
#[utoipa::path(post, path = "/jobs/{number}/readings", params(("number" = i64, Path)), request_body = NewReadings,
    responses((status = 201, body = Kept), (status = 200, body = Kept, description = "sent before; kept once")))]
async fn keep_readings(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(new): Body<NewReadings>,
) -> Result<(StatusCode, Answer<Kept>), ApiError> {
    let kept = app.read(number, &new).await?;
    Ok((if kept.repeated { StatusCode::OK } else { StatusCode::CREATED }, Answer(kept)))
}

/// A code scanned at a club and step: a free part takes its place where the step has one for it, a card leads to its club.
/// A label scanned twice, or one of another club, changes nothing.
#[utoipa::path(post, path = "/jobs/{number}/clubs/{slot}/scan",
    params(("number" = i64, Path), ("slot" = i64, Path)), request_body = ScanAt,
    responses((status = 200, body = ScanSaid)))]
async fn scan_at_club(
    State(app): State<App>,
    Path((number, slot)): Path<(i64, i64)>,
    Body(scan): Body<ScanAt>,
) -> Result<Answer<ScanSaid>, ApiError> {
    Ok(Answer(app.scan_at(number, slot, &scan).await?))
}

/// Why a reading is taken back or stood by, and who says so.
#[derive(Debug, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
struct ReadingWord {
    /// Why.
    #[serde(default)]
    reason: String,
    /// Older name of `reason`.
    #[serde(default)]
    #[schema(deprecated)]
    why: String,
    /// Who.
    by: String,
}

impl ReadingWord {
    fn reason(&self) -> &str {
        if self.reason.is_empty() { &self.why } else { &self.reason }
    }
}

/// "That was wrong": take a reading back. It stays in the record.
#[utoipa::path(post, path = "/jobs/{number}/readings/{id}/take-back",
    params(("number" = i64, Path), ("id" = String, Path)), request_body = ReadingWord,
    responses((status = 200, body = ClubState)))]
async fn take_back_reading(
    State(app): State<App>,
    Path((number, id)): Path<(i64, String)>,
    Body(word): Body<ReadingWord>,
) -> Result<Answer<ClubState>, ApiError> {
    Ok(Answer(app.take_back(number, &id.as_str().into(), word.reason(), &word.by).await?))
}

/// Stand by a doubted reading: it is believed, and the record says so.
#[utoipa::path(post, path = "/jobs/{number}/readings/{id}/insist",
    params(("number" = i64, Path), ("id" = String, Path)), request_body = ReadingWord,
    responses((status = 200, body = ClubState)))]
async fn insist_on_reading(
    State(app): State<App>,
    Path((number, id)): Path<(i64, String)>,
    Body(word): Body<ReadingWord>,
) -> Result<Answer<ClubState>, ApiError> {
    Ok(Answer(app.insist(number, &id.as_str().into(), word.reason(), &word.by).await?))
}

/// Let a step pass before the joint has its strength, with a reason that the record keeps. Where the club is in a batch, the
/// whole batch passes, at every step that needs no more than this one.
#[utoipa::path(post, path = "/jobs/{number}/let-pass", params(("number" = i64, Path)), request_body = LetPassRequest,
    responses((status = 204)))]
async fn let_step_pass(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(request): Body<LetPassRequest>,
) -> Result<StatusCode, ApiError> {
    app.let_pass(number, &request).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// What may be behind each doubted reading of a club, and the measurement that would tell.
#[utoipa::path(get, path = "/jobs/{number}/clubs/{slot}/causes",
    params(("number" = i64, Path), ("slot" = i64, Path)),
    responses((status = 200, body = Vec<DoubtedReading>)))]
async fn list_causes(
    State(app): State<App>,
    Path((number, slot)): Path<(i64, i64)>,
) -> Result<Answer<Vec<DoubtedReading>>, ApiError> {
    Ok(Answer(app.causes(number, slot).await?))
}

/// What can be done about a club now, the best first, and which extra measurements are worth their while.
#[utoipa::path(get, path = "/jobs/{number}/clubs/{slot}/advice",
    params(("number" = i64, Path), ("slot" = i64, Path)),
    responses((status = 200, body = Advice)))]
async fn get_advice(
    State(app): State<App>,
    Path((number, slot)): Path<(i64, i64)>,
) -> Result<Answer<Advice>, ApiError> {
    Ok(Answer(app.advice(number, slot).await?))
}

/// What is worth measuring before a set is glued, in which order it is best glued, and how its grips are best chosen; null
/// where no club waits for its grip.
#[utoipa::path(get, path = "/jobs/{number}/advice", params(("number" = i64, Path)),
    responses((status = 200, body = Option<SetAdvice>, description = "The advice; null where no club waits for its grip.")))]
async fn get_set_advice(
    State(app): State<App>,
    Path(number): Path<i64>,
) -> Result<Answer<Option<SetAdvice>>, ApiError> {
    Ok(Answer(app.set_advice(number).await?))
}

/// The grip that every club read after the cure should get, the whole set looked at together.
#[utoipa::path(get, path = "/jobs/{number}/grips", params(("number" = i64, Path)),
    responses((status = 200, body = Vec<GripPick>)))]
async fn pick_grips(State(app): State<App>, Path(number): Path<i64>) -> Result<Answer<Vec<GripPick>>, ApiError> {
    Ok(Answer(app.grips(number).await?))
}

#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
struct CpmQuery {
    /// What the clubs are to read. Left out: as the sheet asks, or the usual step where it asks nothing.
    slope: Option<Slope>,
    /// Cycles a minute for a half inch less of length, for a step and for a reference. Left out: 4.3.
    #[param(minimum = -30, maximum = 30)]
    step_cpm: Option<f64>,
    /// What the first club of the tray is to read. Left out: what suits the shafts of the set, or what the reference club read.
    #[param(minimum = 50, maximum = 600)]
    level_cpm: Option<f64>,
}

/// What each club of a set will read in the shop's clamp, what it is to read on a slope, and the tip trim before the cut that
/// brings it there, with the swing weight that it costs and the chance of landing in tolerance.
#[utoipa::path(get, path = "/jobs/{number}/cpm", params(("number" = i64, Path), CpmQuery),
    responses((status = 200, body = SetCpm)))]
async fn get_set_cpm(
    State(app): State<App>,
    Path(number): Path<i64>,
    Asked(query): Asked<CpmQuery>,
) -> Result<Answer<SetCpm>, ApiError> {
    let ask = AskCpm { slope: query.slope, step_cpm: query.step_cpm, level_cpm: query.level_cpm };
    Ok(Answer(app.set_cpm(number, ask).await?))
}

/// Take tip trims into the plans of clubs whose shafts are not cut yet, all or none: those that are named, or all that are advised
/// for a slope. The same request with what came back as `before` takes them back.
#[utoipa::path(post, path = "/jobs/{number}/cpm", params(("number" = i64, Path)), request_body = TakeTrims,
    responses((status = 200, body = TrimsTaken)))]
async fn take_set_cpm(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(take): Body<TakeTrims>,
) -> Result<Answer<TrimsTaken>, ApiError> {
    Ok(Answer(app.take_trims(number, &take).await?))
}

/// How thick the grip of each club of a set will be under either hand, what is asked there, and the layers of tape that bring it
/// there, with what they do to the swing weight.
#[utoipa::path(get, path = "/jobs/{number}/grip-sizes", params(("number" = i64, Path)),
    responses((status = 200, body = Vec<GripSizeOfClub>)))]
async fn get_grip_sizes(
    State(app): State<App>,
    Path(number): Path<i64>,
) -> Result<Answer<Vec<GripSizeOfClub>>, ApiError> {
    Ok(Answer(app.grip_sizes(number).await?))
}

/// Lay other layers of tape than the sheet says under grips that are not on yet, all or none: those that are named, or all that
/// are advised. The same request with what came back as `before` takes it back.
#[utoipa::path(post, path = "/jobs/{number}/grip-sizes", params(("number" = i64, Path)), request_body = TakeWraps,
    responses((status = 200, body = WrapsTaken)))]
async fn take_wraps(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(take): Body<TakeWraps>,
) -> Result<Answer<WrapsTaken>, ApiError> {
    Ok(Answer(app.take_wraps(number, &take).await?))
}

/// What is to be fitted in each club of a set now: a weight into the tip, a grip to hang out, lead tape, or nothing; each helps
/// its club, each part is given out once; and the list to fetch it by.
#[utoipa::path(get, path = "/jobs/{number}/fit", params(("number" = i64, Path)),
    responses((status = 200, body = SetFit)))]
async fn get_set_fit(State(app): State<App>, Path(number): Path<i64>) -> Result<Answer<SetFit>, ApiError> {
    Ok(Answer(app.fit(number).await?))
}

/// Take what is advised for a set into the plans of its clubs, or what is asked for, all or none. The picks that were there
/// before are given back: sent again, they take it back.
#[utoipa::path(post, path = "/jobs/{number}/fit", params(("number" = i64, Path)), request_body = TakeFit,
    responses((status = 200, body = FitTaken)))]
async fn take_set_fit(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(take): Body<TakeFit>,
) -> Result<Answer<FitTaken>, ApiError> {
    Ok(Answer(app.take_fit(number, &take).await?))
}

/// Two clubs that had each other's head, tip weight or grip were put right, in one step: readings that were taken with the
/// wrong piece on count no more.
#[utoipa::path(post, path = "/jobs/{number}/exchange", params(("number" = i64, Path)), request_body = ExchangeParts,
    responses((status = 200, body = PartsExchanged)))]
async fn exchange_parts(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(exchange): Body<ExchangeParts>,
) -> Result<Answer<PartsExchanged>, ApiError> {
    Ok(Answer(app.exchange_parts(number, &exchange).await?))
}

/// Take the last exchange of a job back: its readings count again as they were taken.
#[utoipa::path(post, path = "/jobs/{number}/exchange/undo", params(("number" = i64, Path)), request_body = UndoExchange,
    responses((status = 200, body = PartsExchanged)))]
async fn undo_exchange(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(undo): Body<UndoExchange>,
) -> Result<Answer<PartsExchanged>, ApiError> {
    Ok(Answer(app.undo_exchange(number, &undo).await?))
}

/// Not again in this job: an extra measurement is offered no more.
#[utoipa::path(post, path = "/jobs/{number}/decline-offer", params(("number" = i64, Path)), request_body = DeclineOffer,
    responses((status = 204)))]
async fn decline_offer(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(decline): Body<DeclineOffer>,
) -> Result<StatusCode, ApiError> {
    app.decline_offer(number, &decline).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// Find the soft side of a club's shaft from readings around it or a recording, and keep it where that is asked.
#[utoipa::path(post, path = "/jobs/{number}/clubs/{slot}/soft-side",
    params(("number" = i64, Path), ("slot" = i64, Path)), request_body = FindSoftSide,
    responses((status = 200, body = SoftSideKept)))]
async fn find_soft_side(
    State(app): State<App>,
    Path((number, slot)): Path<(i64, i64)>,
    Body(find): Body<FindSoftSide>,
) -> Result<Answer<SoftSideKept>, ApiError> {
    Ok(Answer(app.find_soft_side(number, slot, &find).await?))
}

/// Whether a finished club, plucked along the line of play and from heel to toe, has its soft side where the sheet wants it. The
/// readings stay in the job's log.
#[utoipa::path(post, path = "/jobs/{number}/clubs/{slot}/two-planes",
    params(("number" = i64, Path), ("slot" = i64, Path)), request_body = ReadTwoPlanes,
    responses((status = 200, body = TwoPlanesRead)))]
async fn read_two_planes(
    State(app): State<App>,
    Path((number, slot)): Path<(i64, i64)>,
    Body(read): Body<ReadTwoPlanes>,
) -> Result<Answer<TwoPlanesRead>, ApiError> {
    Ok(Answer(app.two_planes(number, slot, &read).await?))
}
