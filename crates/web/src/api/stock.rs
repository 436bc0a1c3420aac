//! Models and parts.

use crate::problem::{ApiError, Body, Problem};
use app::App;
use app::stock::{ModelsKept, NewPart, PartChange, PartQuery, PartsImported};
use axum::Json;
use axum::body::Bytes;
use axum::extract::{Path, Query, State};
use axum::http::{StatusCode, header};
use axum::response::IntoResponse;
use serde::{Deserialize, Serialize};
use utoipa::{IntoParams, ToSchema};
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;
use workshop::model::{Model, PartKind};
use workshop::part::Part;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(models, put_model))
        .routes(routes!(model, remove_model))
        .routes(routes!(import_models))
        .routes(routes!(parts, add_parts))
        .routes(routes!(part, change_part))
        .routes(routes!(import_parts))
        .routes(routes!(export_parts))
}

#[derive(Debug, Deserialize, IntoParams)]
struct ModelQuery {
    /// Only models of this kind.
    kind: Option<PartKind>,
}

/// Models, by code.
#[utoipa::path(get, path = "/models", params(ModelQuery), responses((status = 200, body = Vec<Model>)))]
async fn models(State(app): State<App>, Query(query): Query<ModelQuery>) -> Result<Json<Vec<Model>>, ApiError> {
    Ok(Json(app.models(query.kind).await?))
}

/// Add a model, or replace the one with its code.
#[utoipa::path(post, path = "/models", request_body = Model,
    responses((status = 201, body = Model), (status = 409, body = Problem), (status = 422, body = Problem)))]
async fn put_model(State(app): State<App>, Body(model): Body<Model>) -> Result<(StatusCode, Json<Model>), ApiError> {
    app.put_model(&model).await?;
    Ok((StatusCode::CREATED, Json(model)))
}

/// One model.
#[utoipa::path(get, path = "/models/{code}", params(("code" = String, Path)),
    responses((status = 200, body = Model), (status = 404, body = Problem)))]
async fn model(State(app): State<App>, Path(code): Path<String>) -> Result<Json<Model>, ApiError> {
    Ok(Json(app.model(&code).await?))
}

/// Take a model away that nothing uses.
#[utoipa::path(delete, path = "/models/{code}", params(("code" = String, Path)),
    responses((status = 204), (status = 409, body = Problem)))]
async fn remove_model(State(app): State<App>, Path(code): Path<String>) -> Result<StatusCode, ApiError> {
    app.remove_model(&code).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// Import a JSON list of models: good ones are kept, bad ones named.
#[utoipa::path(post, path = "/models/import", request_body(content = String, content_type = "application/json"),
    responses((status = 200, body = ModelsKept), (status = 422, body = Problem)))]
async fn import_models(State(app): State<App>, body: String) -> Result<Json<ModelsKept>, ApiError> {
    Ok(Json(app.import_models(&body).await?))
}

/// A page of parts.
#[derive(Debug, Serialize, ToSchema)]
struct PartsPage {
    /// How many there are in all.
    total: i64,
    /// The parts asked for.
    parts: Vec<Part>,
}

/// Parts in the order in which they came in.
#[utoipa::path(get, path = "/parts", params(PartQuery), responses((status = 200, body = PartsPage)))]
async fn parts(State(app): State<App>, Query(query): Query<PartQuery>) -> Result<Json<PartsPage>, ApiError> {
    let (parts, total) = app.parts(&query).await?;
    Ok(Json(PartsPage { total, parts }))
}

/// Add parts, all or none.
#[utoipa::path(post, path = "/parts", request_body = Vec<NewPart>,
    responses((status = 201, body = Vec<Part>), (status = 409, body = Problem), (status = 422, body = Problem)))]
async fn add_parts(
    State(app): State<App>,
    Body(new): Body<Vec<NewPart>>,
) -> Result<(StatusCode, Json<Vec<Part>>), ApiError> {
    Ok((StatusCode::CREATED, Json(app.add_parts(&new).await?)))
}

/// One part.
#[utoipa::path(get, path = "/parts/{code}", params(("code" = String, Path)),
    responses((status = 200, body = Part), (status = 404, body = Problem)))]
async fn part(State(app): State<App>, Path(code): Path<String>) -> Result<Json<Part>, ApiError> {
    Ok(Json(app.part(&code).await?))
}

/// Change a part by hand. Fields left out stay.
#[utoipa::path(patch, path = "/parts/{code}", params(("code" = String, Path)), request_body = PartChange,
    responses((status = 200, body = Part), (status = 409, body = Problem)))]
async fn change_part(
    State(app): State<App>,
    Path(code): Path<String>,
    Body(change): Body<PartChange>,
) -> Result<Json<Part>, ApiError> {
    Ok(Json(app.change_part(&code, &change).await?))
}

/// Import a CSV file of parts: good rows are kept, bad rows named.
#[utoipa::path(post, path = "/parts/import", request_body(content = String, content_type = "text/csv"),
    responses((status = 200, body = PartsImported), (status = 422, body = Problem)))]
async fn import_parts(State(app): State<App>, body: Bytes) -> Result<Json<PartsImported>, ApiError> {
    Ok(Json(app.import_parts(&body).await?))
}

/// The parts as a CSV file that can be imported again.
#[utoipa::path(get, path = "/parts/export", params(PartQuery),
    responses((status = 200, body = String, content_type = "text/csv")))]
async fn export_parts(State(app): State<App>, Query(query): Query<PartQuery>) -> Result<impl IntoResponse, ApiError> {
    let csv = app.export_parts(&query).await?;
    let headers = [
        (header::CONTENT_TYPE, "text/csv; charset=utf-8"),
        (header::CONTENT_DISPOSITION, "attachment; filename=\"parts.csv\""),
    ];
    Ok((headers, csv))
}
