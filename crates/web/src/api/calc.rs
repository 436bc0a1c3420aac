//! Calculations by name.

use crate::problem::{ApiError, Problem, Text};
use app::App;
use axum::Json;
use axum::extract::Path;
use serde::Serialize;
use serde_json::Value;
use utoipa::ToSchema;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new().routes(routes!(topics)).routes(routes!(calc)).routes(routes!(recording))
}

/// A calculation that can be asked for.
#[derive(Debug, Serialize, ToSchema)]
struct TopicView {
    /// Name in the address.
    name: &'static str,
    /// Title.
    title: &'static str,
    /// What it does.
    summary: &'static str,
    /// An input that works.
    example: Value,
}

/// All calculations, each with an input that works.
#[utoipa::path(get, path = "/calc", responses((status = 200, body = Vec<TopicView>)))]
async fn topics() -> Json<Vec<TopicView>> {
    Json(
        clubphysics::calc::topics()
            .iter()
            .map(|t| TopicView { name: t.name, title: t.title, summary: t.summary, example: (t.example)() })
            .collect(),
    )
}

/// Run a calculation. Unknown fields are refused by name, and so is a field that is given twice.
#[utoipa::path(post, path = "/calc/{topic}", params(("topic" = String, Path)), request_body = Value,
    responses((status = 200, body = Value), (status = 422, body = Problem)))]
async fn calc(Path(topic): Path<String>, Text(text): Text) -> Result<Json<Value>, ApiError> {
    Ok(Json(app::calc::run_text(&topic, &text)?))
}

/// Run `pluck` on a recording as it is: a WAV file, or a CSV table of time and one or two axes.
#[utoipa::path(post, path = "/calc/pluck/recording", request_body(content = Vec<u8>, content_type = "application/octet-stream"),
    responses((status = 200, body = Value), (status = 422, body = Problem)))]
async fn recording(bytes: axum::body::Bytes) -> Result<Json<Value>, ApiError> {
    Ok(Json(app::calc::pluck(&bytes)?))
}
