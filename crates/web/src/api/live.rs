//! What other screens are told as it happens: server-sent events.

use crate::access::Visitor;
use crate::reader::{Answer, Reader};
use app::App;
use app::scales::ScaleNow;
use axum::Extension;
use axum::extract::State;
use axum::response::sse::{Event, KeepAlive, Sse};
use std::convert::Infallible;
use std::time::Duration;
use tokio_stream::wrappers::{BroadcastStream, IntervalStream};
use tokio_stream::{Stream, StreamExt};
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

/// How often a stream that is open asks whether its key is still good.
const KEY_LOOKED_AT_EACH: Duration = Duration::from_secs(5);

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
    visitor: Option<Extension<Visitor>>,
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
    let told = events.merge(scales).merge(imports).map(Some);
    let own = visitor.and_then(|Extension(visitor)| visitor.key).map(|key| key.number);
    let still_in = IntervalStream::new(tokio::time::interval(KEY_LOOKED_AT_EACH)).then(move |_| {
        let app = app.clone();
        async move {
            match own {
                Some(number) => app.key_is_good(number).await.unwrap_or(true),
                None => true,
            }
        }
    });
    let ends = still_in.filter(|good| !good).map(|_| None);
    // A stream that was let in ends soon after its key was taken away.
    Sse::new(told.merge(ends).map_while(|event| event)).keep_alive(KeepAlive::default())
}

/// What each connected scale shows now, with its last lines as they came and as they were read.
#[utoipa::path(get, path = "/scales", responses((status = 200, body = Vec<ScaleNow>)))]
async fn list_scales(State(app): State<App>) -> Answer<Vec<ScaleNow>> {
    Answer(app.scales())
}
