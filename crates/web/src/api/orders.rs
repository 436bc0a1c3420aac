//! Orders, the stock against the sheets to come, sorting, head masses to ask for, the life of a part.

use super::described::{Conflict, NotFound};
use crate::asked::{Asked, Path};
use crate::file::csv_file;
use crate::problem::{ApiError, Body};
use crate::reader::Answer;
use app::App;
use app::life::{AskedAction, PartLife};
use app::order::{CloseOrder, NewOrder, OrderForJob, OrderQuery, Receive, Received, TellOrder};
use app::sorting::{AskRequest, SortRequest};
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::IntoResponse;
use desk::ask::HeadAsk;
use desk::needs::Need;
use desk::order::{Waiting, Wanted};
use desk::weight_class::Sorting;
use serde::Serialize;
use trade::order::OrderView;
use utoipa::ToSchema;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(list_orders, place_orders))
        .routes(routes!(export_orders))
        .routes(routes!(get_order))
        .routes(routes!(receive_order))
        .routes(routes!(close_order))
        .routes(routes!(change_order))
        .routes(routes!(list_waits))
        .routes(routes!(list_missing_parts, order_for_job))
        .routes(routes!(list_needs))
        .routes(routes!(export_needs))
        .routes(routes!(sort_parts))
        .routes(routes!(export_sorted_parts))
        .routes(routes!(ask_for_heads))
        .routes(routes!(export_heads_to_ask_for))
        .routes(routes!(get_part_life, act_on_part))
        .routes(routes!(export_part_life))
}

/// A page of orders.
#[derive(Debug, Serialize, ToSchema)]
struct OrdersPage {
    /// How many there are in all.
    total: i64,
    /// The orders asked for, the newest first.
    orders: Vec<OrderView>,
}

/// Orders, the newest first.
#[utoipa::path(get, path = "/orders", params(OrderQuery), responses((status = 200, body = OrdersPage), NotFound))]
async fn list_orders(State(app): State<App>, Asked(query): Asked<OrderQuery>) -> Result<Answer<OrdersPage>, ApiError> {
    let (orders, total) = app.orders(&query).await?;
    Ok(Answer(OrdersPage { total, orders }))
}

/// Place orders, all or none.
#[utoipa::path(post, path = "/orders", request_body = Vec<NewOrder>,
    responses((status = 201, body = Vec<OrderView>)))]
async fn place_orders(
    State(app): State<App>,
    Body(new): Body<Vec<NewOrder>>,
) -> Result<(StatusCode, Answer<Vec<OrderView>>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.place_orders(&new).await?)))
}

/// Orders as a CSV file.
#[utoipa::path(get, path = "/orders/export", params(OrderQuery),
    responses((status = 200, body = String, content_type = "text/csv"), NotFound))]
async fn export_orders(State(app): State<App>, Asked(query): Asked<OrderQuery>) -> Result<impl IntoResponse, ApiError> {
    Ok(csv_file("orders", app.export_orders(&query).await?))
}

/// One order with what happened to it.
#[utoipa::path(get, path = "/orders/{number}", params(("number" = i64, Path)),
    responses((status = 200, body = OrderView)))]
async fn get_order(State(app): State<App>, Path(number): Path<i64>) -> Result<Answer<OrderView>, ApiError> {
    Ok(Answer(app.order(number).await?))
}

/// Book in what came. More than was to come, or parts of a cancelled order, are asked about: say `anyway`.
#[utoipa::path(post, path = "/orders/{number}/receive", params(("number" = i64, Path)), request_body = Receive,
    responses((status = 200, body = Received)))]
async fn receive_order(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(receive): Body<Receive>,
) -> Result<Answer<Received>, ApiError> {
    Ok(Answer(app.receive_order(number, &receive).await?))
}

/// Cancel what is still to come, or say that it does not come.
#[utoipa::path(post, path = "/orders/{number}/close", params(("number" = i64, Path)), request_body = CloseOrder,
    responses((status = 200, body = OrderView)))]
async fn close_order(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(close): Body<CloseOrder>,
) -> Result<Answer<OrderView>, ApiError> {
    Ok(Answer(app.close_order(number, &close).await?))
}

/// Say another supplier or another day.
#[utoipa::path(post, path = "/orders/{number}/tell", params(("number" = i64, Path)), request_body = TellOrder,
    responses((status = 200, body = OrderView)))]
async fn change_order(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(told): Body<TellOrder>,
) -> Result<Answer<OrderView>, ApiError> {
    Ok(Answer(app.tell_order(number, &told).await?))
}

/// What the jobs under way wait for.
#[derive(Debug, Serialize, ToSchema)]
struct JobWaits {
    /// Running number of the job.
    job: i64,
    /// What it waits for.
    waits: Vec<Waiting>,
}

/// What the jobs under way wait for: parts on order, and parts that are short and not ordered.
#[utoipa::path(get, path = "/waits", responses((status = 200, body = Vec<JobWaits>)))]
async fn list_waits(State(app): State<App>) -> Result<Answer<Vec<JobWaits>>, ApiError> {
    Ok(Answer(app.waits().await?.into_iter().map(|(job, waits)| JobWaits { job, waits }).collect()))
}

/// What a job lacks by its plan, and how much of it is ordered.
#[utoipa::path(get, path = "/jobs/{number}/order", params(("number" = i64, Path)),
    responses((status = 200, body = Vec<Wanted>), Conflict))]
async fn list_missing_parts(State(app): State<App>, Path(number): Path<i64>) -> Result<Answer<Vec<Wanted>>, ApiError> {
    Ok(Answer(app.wanted(number).await?))
}

/// Order what a job lacks and nobody has ordered for it yet.
#[utoipa::path(post, path = "/jobs/{number}/order", params(("number" = i64, Path)), request_body = OrderForJob,
    responses((status = 201, body = Vec<OrderView>)))]
async fn order_for_job(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(wish): Body<OrderForJob>,
) -> Result<(StatusCode, Answer<Vec<OrderView>>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.order_for_job(number, &wish).await?)))
}

/// The stock against the sheets to come, by kind, model and number.
#[utoipa::path(get, path = "/needs", responses((status = 200, body = Vec<Need>)))]
async fn list_needs(State(app): State<App>) -> Result<Answer<Vec<Need>>, ApiError> {
    Ok(Answer(app.stock_needs().await?))
}

/// The same as a CSV file.
#[utoipa::path(get, path = "/needs/export", responses((status = 200, body = String, content_type = "text/csv")))]
async fn export_needs(State(app): State<App>) -> Result<impl IntoResponse, ApiError> {
    Ok(csv_file("needs", app.export_needs().await?))
}

/// The parts of a model in weight classes, each with its place in the tray.
#[utoipa::path(get, path = "/parts/sorted", params(SortRequest),
    responses((status = 200, body = Sorting), NotFound))]
async fn sort_parts(State(app): State<App>, Asked(request): Asked<SortRequest>) -> Result<Answer<Sorting>, ApiError> {
    Ok(Answer(app.sort_parts(&request).await?))
}

/// The same as a CSV file.
#[utoipa::path(get, path = "/parts/sorted/export", params(SortRequest),
    responses((status = 200, body = String, content_type = "text/csv"), NotFound))]
async fn export_sorted_parts(
    State(app): State<App>,
    Asked(request): Asked<SortRequest>,
) -> Result<impl IntoResponse, ApiError> {
    Ok(csv_file("sorted", app.export_sorting(&request).await?))
}

/// Which head masses to ask a supplier for: the window of each club, and how likely a head lies inside.
#[utoipa::path(post, path = "/ask", request_body = AskRequest,
    responses((status = 200, body = Vec<HeadAsk>)))]
async fn ask_for_heads(
    State(app): State<App>,
    Body(request): Body<AskRequest>,
) -> Result<Answer<Vec<HeadAsk>>, ApiError> {
    Ok(Answer(app.ask_heads(&request).await?))
}

/// The same as a CSV file.
#[utoipa::path(post, path = "/ask/export", request_body = AskRequest,
    responses((status = 200, body = String, content_type = "text/csv")))]
async fn export_heads_to_ask_for(
    State(app): State<App>,
    Body(request): Body<AskRequest>,
) -> Result<impl IntoResponse, ApiError> {
    Ok(csv_file("heads-to-ask-for", app.export_asks(&request).await?))
}

/// A part with its life.
#[utoipa::path(get, path = "/parts/{code}/life", params(("code" = String, Path)),
    responses((status = 200, body = PartLife)))]
async fn get_part_life(State(app): State<App>, Path(code): Path<String>) -> Result<Answer<PartLife>, ApiError> {
    Ok(Answer(app.part_life(&code).await?))
}

/// Reserve, give back, use, scrap, restore, correct or pull a part, or say that a shaft was cut wrongly.
#[utoipa::path(post, path = "/parts/{code}/life", params(("code" = String, Path)), request_body = AskedAction,
    responses((status = 200, body = PartLife)))]
async fn act_on_part(
    State(app): State<App>,
    Path(code): Path<String>,
    Body(asked): Body<AskedAction>,
) -> Result<Answer<PartLife>, ApiError> {
    Ok(Answer(app.part_deed(&code, &asked.read(&code)?).await?))
}

/// The life of a part as a CSV file.
#[utoipa::path(get, path = "/parts/{code}/life/export", params(("code" = String, Path)),
    responses((status = 200, body = String, content_type = "text/csv")))]
async fn export_part_life(State(app): State<App>, Path(code): Path<String>) -> Result<impl IntoResponse, ApiError> {
    Ok(csv_file("life", app.export_life(&code).await?))
}
