//! What other screens are told as it happens: server-sent events.

use crate::reader::{Answer, Reader};
use app::App;
use app::scales::ScaleNow;
use axum::extract::State;
use axum::response::sse::{Event, KeepAlive, Sse};
use std::convert::Infallible;
use tokio_stream::wrappers::BroadcastStream;
use tokio_stream::{Stream, StreamExt};
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new().routes(routes!(follow_events)).routes(routes!(list_scales))
}

/// Events `job` (data: a job's number, or 0 for the whole shop) as things change; a screen that missed some loads the page again.
/// Events `scale` (data: what a connected scale shows) as values come. Events `import` (data: key, rows done, rows in all)
/// as a list is written.
#[utoipa::path(get, path = "/live", responses((status = 200, content_type = "text/event-stream", body = String, description = "Server-sent events, without end.")))]
async fn follow_events(
    State(app): State<App>,
    Reader(w): Reader,
) -> Sse<impl Stream<Item = Result<Event, Infallible>>> {
    let events = BroadcastStream::new(app.listen()).map(|event| {
        // A receiver that lagged behind is told to look at everything.
        let job = event.ok().and_then(|e| e.job).unwrap_or(0);
        Ok(Event::default().event("job").data(job.to_string()))
    });
    let scales = BroadcastStream::new(app.hear_scales())
        // What a slow screen missed of a scale is out of date anyway.
        .filter_map(Result::ok)
        .map(move |now| {
            let mut document = serde_json::to_value(&now).unwrap_or_default();
            words::speak(&mut document, &w);
            Ok(Event::default().event("scale").data(document.to_string()))
        });
    let imports = BroadcastStream::new(app.hear_imports())
        .filter_map(Result::ok)
        .map(|how| Ok(Event::default().event("import").data(serde_json::to_string(&how).unwrap_or_default())));
    Sse::new(events.merge(scales).merge(imports)).keep_alive(KeepAlive::default())
}

/// What each connected scale shows now, with its last lines as they came and as they were read.
#[utoipa::path(get, path = "/scales", responses((status = 200, body = Vec<ScaleNow>)))]
async fn list_scales(State(app): State<App>) -> Answer<Vec<ScaleNow>> {
    Answer(app.scales())
}
