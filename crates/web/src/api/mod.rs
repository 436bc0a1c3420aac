//! The JSON API under `/api/v1`: everything that the pages do, described by OpenAPI 3.1 at `openapi.json`.

mod again;
mod bench;
mod calc;
mod calendar;
mod clubs;
mod customers;
mod described;
mod exports;
mod glue;
mod jobs;
mod keys;
mod learned;
mod live;
mod matched;
mod orders;
mod prices;
mod recall;
mod scale_health;
mod sheets;
mod shop;
mod stock;

use crate::problem::EdgeFault;
use crate::problem::Problem;
use app::App;
use axum::Router;
use axum::http::StatusCode;
use axum::response::IntoResponse;
use serde_json::Value;
use std::sync::LazyLock;
use utoipa::OpenApi;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

/// The API with its own description.
pub(crate) fn router() -> Router<App> {
    let (router, _) = operations().split_for_parts();
    router
        .fallback(|| async { Problem::new(StatusCode::NOT_FOUND, "not_found", EdgeFault::NoApiAddress) })
        .method_not_allowed_fallback(|| async {
            Problem::new(StatusCode::METHOD_NOT_ALLOWED, "method", EdgeFault::NoApiMethod)
        })
}

/// The description of the API. It is the same for every request, so it is made once.
pub(crate) static DESCRIPTION: LazyLock<Value> = LazyLock::new(|| {
    let (_, mut description) = operations().split_for_parts();
    described::complete(&mut description);
    serde_json::to_value(&description).unwrap_or_default()
});

/// The description of the API: an OpenAPI 3.1 document in JSON.
#[must_use]
pub fn openapi() -> String {
    DESCRIPTION.to_string()
}

/// The JSON Schema of a fitting sheet's file.
#[must_use]
pub fn sheet_schema() -> String {
    sheets::schema(&DESCRIPTION)
}

fn operations() -> OpenApiRouter<App> {
    OpenApiRouter::with_openapi(described::Described::openapi())
        .merge(shop::router())
        .merge(keys::router())
        .merge(stock::router())
        .merge(orders::router())
        .merge(sheets::router())
        .merge(customers::router())
        .merge(prices::router())
        .merge(jobs::router())
        .merge(calendar::router())
        .merge(exports::router())
        .merge(clubs::router())
        .merge(recall::router())
        .merge(again::router())
        .merge(matched::router())
        .merge(bench::router())
        .merge(glue::router())
        .merge(calc::router())
        .merge(learned::router())
        .merge(scale_health::router())
        .merge(live::router())
        .routes(routes!(get_openapi))
}

/// This document.
#[utoipa::path(get, path = "/openapi.json", responses((status = 200, body = Value, description = "OpenAPI 3.1.")))]
async fn get_openapi() -> impl IntoResponse {
    json_text(openapi())
}

/// A file as it is.
#[derive(utoipa::ToSchema)]
#[schema(value_type = String, format = Binary)]
struct File(#[allow(dead_code, reason = "only described")] Vec<u8>);

fn json_text(text: String) -> impl IntoResponse {
    ([(axum::http::header::CONTENT_TYPE, "application/json")], text)
}
