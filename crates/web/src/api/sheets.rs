//! Fitting sheets.

use crate::asked::Path;
use crate::problem::{ApiError, Body};
use crate::reader::Answer;
use app::App;
use app::sheet::{Approve, SheetSummary, SheetView, ShortSheet};
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::IntoResponse;
use desk::sheet_check::SheetProblem;
use desk::short_sheet::Expanded;
use serde::Deserialize;
use serde_json::{Value, json};
use trade::job::Job;
use trade::sheet::Sheet;
use utoipa::ToSchema;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(list_sheets, add_sheet))
        .routes(routes!(get_sheet_schema))
        .routes(routes!(expand_sheet))
        .routes(routes!(check_sheet))
        .routes(routes!(get_sheet, change_sheet))
        .routes(routes!(approve_sheet))
}

/// The JSON Schema of a sheet's file, taken from the API's own description.
pub(super) fn schema(description: &Value) -> String {
    let schemas = description["components"]["schemas"].clone();
    let mut defs = serde_json::Map::new();
    let mut wanted = vec!["Sheet".to_owned()];
    while let Some(name) = wanted.pop() {
        if defs.contains_key(&name) || schemas[&name].is_null() {
            continue;
        }
        let text = schemas[&name].to_string().replace("#/components/schemas/", "#/$defs/");
        for piece in text.split("#/$defs/").skip(1) {
            wanted.push(piece.chars().take_while(char::is_ascii_alphanumeric).collect());
        }
        defs.insert(name, serde_json::from_str(&text).unwrap_or_default());
    }
    let schema = json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Fitting sheet",
        "$ref": "#/$defs/Sheet",
        "$defs": defs,
    });
    serde_json::to_string_pretty(&schema).unwrap_or_default()
}

/// The JSON Schema of a fitting sheet's file.
#[utoipa::path(get, path = "/sheets/schema", responses((status = 200, body = Value, description = "JSON Schema 2020-12.")))]
async fn get_sheet_schema() -> impl IntoResponse {
    super::json_text(super::sheet_schema())
}

/// Sheets, the latest first.
#[utoipa::path(get, path = "/sheets", responses((status = 200, body = Vec<SheetSummary>)))]
async fn list_sheets(State(app): State<App>) -> Result<Answer<Vec<SheetSummary>>, ApiError> {
    Ok(Answer(app.sheets().await?))
}

/// Save a sheet. One with findings may be saved, but not approved. Its JSON Schema is at `/sheets/schema`.
#[utoipa::path(post, path = "/sheets", request_body = Sheet,
    responses((status = 201, body = SheetView)))]
async fn add_sheet(
    State(app): State<App>,
    Body(sheet): Body<Sheet>,
) -> Result<(StatusCode, Answer<SheetView>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.save_sheet(&sheet).await?)))
}

/// Expand a sheet as builders write it: each club with where its fields came from.
#[utoipa::path(post, path = "/sheets/expand", request_body = ShortSheet,
    responses((status = 200, body = Vec<Expanded>)))]
async fn expand_sheet(
    State(app): State<App>,
    Body(short): Body<ShortSheet>,
) -> Result<Answer<Vec<Expanded>>, ApiError> {
    Ok(Answer(app.expand_sheet(&short).await?))
}

/// Everything that is to be said of a sheet, against models, stock and rules. Nothing is saved.
#[utoipa::path(post, path = "/sheets/check", request_body = Sheet,
    responses((status = 200, body = Vec<SheetProblem>)))]
async fn check_sheet(State(app): State<App>, Body(sheet): Body<Sheet>) -> Result<Answer<Vec<SheetProblem>>, ApiError> {
    Ok(Answer(app.check_sheet(&sheet).await?))
}

/// One sheet with its findings.
#[utoipa::path(get, path = "/sheets/{id}", params(("id" = String, Path)),
    responses((status = 200, body = SheetView)))]
async fn get_sheet(State(app): State<App>, Path(id): Path<String>) -> Result<Answer<SheetView>, ApiError> {
    Ok(Answer(app.sheet(&id.as_str().into()).await?))
}

/// A changed sheet with the version that was looked at.
#[derive(Debug, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
struct SheetChange {
    /// Version of the sheet that was looked at.
    version: i64,
    /// The sheet as it should be.
    sheet: Sheet,
}

/// Change a sheet that is not approved yet.
#[utoipa::path(put, path = "/sheets/{id}", params(("id" = String, Path)), request_body = SheetChange,
    responses((status = 200, body = SheetView)))]
async fn change_sheet(
    State(app): State<App>,
    Path(id): Path<String>,
    Body(change): Body<SheetChange>,
) -> Result<Answer<SheetView>, ApiError> {
    Ok(Answer(app.change_sheet(&id.as_str().into(), &change.sheet, change.version).await?))
}

/// Approve a sheet: its job is made.
#[utoipa::path(post, path = "/sheets/{id}/approve", params(("id" = String, Path)), request_body = Approve,
    responses((status = 201, body = Job)))]
async fn approve_sheet(
    State(app): State<App>,
    Path(id): Path<String>,
    Body(approve): Body<Approve>,
) -> Result<(StatusCode, Answer<Job>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.approve_sheet(&id.as_str().into(), &approve).await?)))
}
