//! The JSON API under `/api/v1`: everything that the pages do, described by OpenAPI 3.1 at `openapi.json`.

mod bench;
mod calc;
mod glue;
mod jobs;
mod learned;
mod live;
mod matched;
mod orders;
mod scale_health;
mod sheets;
mod shop;
mod stock;

use crate::problem::Problem;
use app::App;
use axum::Router;
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use utoipa::OpenApi;
use utoipa_axum::router::OpenApiRouter;

#[derive(OpenApi)]
#[openapi(
    info(
        title = "Setwright",
        version = "1",
        description = "The bench of a golf club builder: sheets, stock, plans, readings, glue, records. Numeric \
                       fields end in their unit; balances are points since A0 (D2 is 32). Errors are problem \
                       documents (RFC 9457).",
        license(name = "MIT", identifier = "MIT")
    ),
    components(schemas(Problem))
)]
struct Described;

/// The API with its own description.
pub(crate) fn router() -> Router<App> {
    let (router, description) = described().split_for_parts();
    let description = serde_json::to_string(&description).unwrap_or_default();
    let schema = sheets::schema(&description);
    router
        .route("/openapi.json", get(move || async move { json_text(description) }))
        .route("/sheets/schema", get(move || async move { json_text(schema) }))
        .fallback(|| async {
            Problem::new(
                StatusCode::NOT_FOUND,
                "not_found",
                "the API has no such address. All addresses are in /api/v1/openapi.json",
            )
        })
        .method_not_allowed_fallback(|| async {
            Problem::new(
                StatusCode::METHOD_NOT_ALLOWED,
                "method",
                "this address does not take that method. All of them are in /api/v1/openapi.json",
            )
        })
}

/// The JSON Schema of a fitting sheet's file.
#[must_use]
pub fn sheet_schema() -> String {
    let (_, description) = described().split_for_parts();
    sheets::schema(&serde_json::to_string(&description).unwrap_or_default())
}

fn described() -> OpenApiRouter<App> {
    OpenApiRouter::with_openapi(Described::openapi())
        .merge(shop::router())
        .merge(stock::router())
        .merge(orders::router())
        .merge(sheets::router())
        .merge(jobs::router())
        .merge(matched::router())
        .merge(bench::router())
        .merge(glue::router())
        .merge(calc::router())
        .merge(learned::router())
        .merge(scale_health::router())
        .merge(live::router())
}

fn json_text(text: String) -> impl IntoResponse {
    ([(axum::http::header::CONTENT_TYPE, "application/json")], text)
}
