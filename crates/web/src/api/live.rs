//! What other screens are told as it happens: server-sent events.

use app::App;
use axum::extract::State;
use axum::response::sse::{Event, KeepAlive, Sse};
use std::convert::Infallible;
use tokio_stream::wrappers::BroadcastStream;
use tokio_stream::{Stream, StreamExt};
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new().routes(routes!(live))
}

/// Events `job` (data: a job's number, or 0 for the whole shop) as things change. A screen that missed some loads anew.
#[utoipa::path(get, path = "/live", responses((status = 200, content_type = "text/event-stream")))]
async fn live(State(app): State<App>) -> Sse<impl Stream<Item = Result<Event, Infallible>>> {
    let events = BroadcastStream::new(app.listen()).map(|event| {
        // A receiver that lagged behind is told to look at everything.
        let job = event.ok().and_then(|e| e.job).unwrap_or(0);
        Ok(Event::default().event("job").data(job.to_string()))
    });
    Sse::new(events).keep_alive(KeepAlive::default())
}
