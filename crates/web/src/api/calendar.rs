//! The calendar.

use crate::problem::ApiError;
use crate::reader::Answer;
use app::App;
use axum::extract::State;
use desk::calendar::CalendarEntry;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new().routes(routes!(list_calendar))
}

/// What is in the calendar, the earliest first: jobs that are due, cures that end, parts that are expected. As an iCalendar file
/// (RFC 5545) it is at `/calendar.ics`, beside the root of this API.
#[utoipa::path(get, path = "/calendar", responses((status = 200, body = Vec<CalendarEntry>)))]
async fn list_calendar(State(app): State<App>) -> Result<Answer<Vec<CalendarEntry>>, ApiError> {
    Ok(Answer(app.calendar().await?))
}
