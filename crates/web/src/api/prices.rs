//! Prices, quotes and bills.

use crate::asked::Path;
use crate::problem::{ApiError, Body};
use crate::reader::Answer;
use app::App;
use app::price::{Bill, PutQuote, QuoteView};
use axum::extract::State;
use trade::price::PriceList;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(get_prices, save_prices))
        .routes(routes!(get_quote, put_quote))
        .routes(routes!(get_bill))
}

/// The shop's prices.
#[utoipa::path(get, path = "/prices", responses((status = 200, body = PriceList)))]
async fn get_prices(State(app): State<App>) -> Result<Answer<PriceList>, ApiError> {
    Ok(Answer(app.prices().await?))
}

/// Keep the shop's prices. Quotes that were made keep theirs.
#[utoipa::path(put, path = "/prices", request_body = PriceList, responses((status = 200, body = PriceList)))]
async fn save_prices(State(app): State<App>, Body(prices): Body<PriceList>) -> Result<Answer<PriceList>, ApiError> {
    Ok(Answer(app.save_prices(&prices).await?))
}

/// The quote of a sheet, and what the price list would make of it now.
#[utoipa::path(get, path = "/sheets/{id}/quote", params(("id" = String, Path)),
    responses((status = 200, body = QuoteView)))]
async fn get_quote(State(app): State<App>, Path(id): Path<String>) -> Result<Answer<QuoteView>, ApiError> {
    Ok(Answer(app.quote(&id.as_str().into()).await?))
}

/// Keep the quote of a sheet, and of the job that was made from it.
#[utoipa::path(put, path = "/sheets/{id}/quote", params(("id" = String, Path)), request_body = PutQuote,
    responses((status = 200, body = QuoteView)))]
async fn put_quote(
    State(app): State<App>,
    Path(id): Path<String>,
    Body(put): Body<PutQuote>,
) -> Result<Answer<QuoteView>, ApiError> {
    Ok(Answer(app.put_quote(&id.as_str().into(), &put).await?))
}

/// The bill of a job, with the record of what was built.
#[utoipa::path(get, path = "/jobs/{number}/bill", params(("number" = i64, Path)),
    responses((status = 200, body = Bill)))]
async fn get_bill(State(app): State<App>, Path(number): Path<i64>) -> Result<Answer<Bill>, ApiError> {
    Ok(Answer(app.bill(number).await?))
}
