//! Lists of clubs, jobs, readings and records as CSV files.

use super::described::NotFound;
use crate::asked::Asked;
use crate::file::csv_file;
use crate::problem::ApiError;
use app::App;
use app::export::ReadingsOf;
use axum::extract::State;
use axum::response::IntoResponse;
use serde::Deserialize;
use utoipa::IntoParams;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(export_clubs))
        .routes(routes!(export_jobs))
        .routes(routes!(export_readings))
        .routes(routes!(export_records))
}

#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
struct ClubsOf {
    /// Words that must all be found in code, label, player, models or number; capitals do not matter. Left out: all.
    #[serde(default)]
    search: String,
    /// Running number of the customer whose they are. Left out: everybody's.
    owner: Option<i64>,
}

/// Clubs that live on as a CSV file, all of them or one customer's.
#[utoipa::path(get, path = "/clubs/export", params(ClubsOf),
    responses((status = 200, body = String, content_type = "text/csv"), NotFound))]
async fn export_clubs(State(app): State<App>, Asked(of): Asked<ClubsOf>) -> Result<impl IntoResponse, ApiError> {
    Ok(csv_file("clubs", app.export_clubs(&of.search, of.owner).await?))
}

/// Jobs as a CSV file, those that are over too.
#[utoipa::path(get, path = "/jobs/export", responses((status = 200, body = String, content_type = "text/csv")))]
async fn export_jobs(State(app): State<App>) -> Result<impl IntoResponse, ApiError> {
    Ok(csv_file("jobs", app.export_jobs().await?))
}

/// Readings at the bench as a CSV file, at most 250,000: of days, of a job, or all. Days are those of the shop's clock.
#[utoipa::path(get, path = "/readings/export", params(ReadingsOf),
    responses((status = 200, body = String, content_type = "text/csv"), NotFound))]
async fn export_readings(State(app): State<App>, Asked(of): Asked<ReadingsOf>) -> Result<impl IntoResponse, ApiError> {
    Ok(csv_file("readings", app.export_readings(&of).await?))
}

/// Where the finished clubs came out as a CSV file: asked, built, band, tolerance, verdict.
#[utoipa::path(get, path = "/records/export", responses((status = 200, body = String, content_type = "text/csv")))]
async fn export_records(State(app): State<App>) -> Result<impl IntoResponse, ApiError> {
    Ok(csv_file("records", app.export_records().await?))
}
