//! Customers, and one field for everything.

use crate::asked::{Asked, Path};
use crate::problem::{ApiError, Body};
use crate::reader::Answer;
use app::App;
use app::customer::{
    CustomerFile, CustomerSummary, CustomerView, DeleteCustomer, Deletion, GiveSheet, NameOnSheets, TakeName,
};
use app::find::Found;
use app::sheet::SheetView;
use axum::extract::State;
use axum::http::StatusCode;
use serde::Deserialize;
use trade::customer::Customer;
use utoipa::{IntoParams, ToSchema};
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(list_customers, add_customer))
        .routes(routes!(list_names_on_sheets, take_name))
        .routes(routes!(get_customer, change_customer))
        .routes(routes!(export_customer))
        .routes(routes!(look_at_deletion, delete_customer))
        .routes(routes!(give_sheet))
        .routes(routes!(find_anything))
}

/// Which customers.
#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
struct CustomerQuery {
    /// Words of which each occurs in code, name or contacts; capitals do not matter. All where it is left out.
    #[serde(default)]
    text: String,
}

/// Customers by name, at most 200.
#[utoipa::path(get, path = "/customers", params(CustomerQuery), responses((status = 200, body = Vec<CustomerSummary>)))]
async fn list_customers(
    State(app): State<App>,
    Asked(query): Asked<CustomerQuery>,
) -> Result<Answer<Vec<CustomerSummary>>, ApiError> {
    Ok(Answer(app.customers(&query.text).await?))
}

/// Keep a new customer.
#[utoipa::path(post, path = "/customers", request_body = Customer, responses((status = 201, body = CustomerView)))]
async fn add_customer(
    State(app): State<App>,
    Body(customer): Body<Customer>,
) -> Result<(StatusCode, Answer<CustomerView>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.add_customer(&customer).await?)))
}

/// The names on sheets that belong to no customer.
#[utoipa::path(get, path = "/customers/names", responses((status = 200, body = Vec<NameOnSheets>)))]
async fn list_names_on_sheets(State(app): State<App>) -> Result<Answer<Vec<NameOnSheets>>, ApiError> {
    Ok(Answer(app.names_on_sheets().await?))
}

/// Give all sheets of a name that belong to nobody, and the jobs made from them, to a customer; to a new one of that name
/// where no number is given.
#[utoipa::path(post, path = "/customers/names", request_body = TakeName, responses((status = 200, body = CustomerView)))]
async fn take_name(State(app): State<App>, Body(take): Body<TakeName>) -> Result<Answer<CustomerView>, ApiError> {
    Ok(Answer(app.take_name(&take).await?))
}

/// A customer with their sheets and jobs.
#[utoipa::path(get, path = "/customers/{number}", params(("number" = i64, Path)),
    responses((status = 200, body = CustomerView)))]
async fn get_customer(State(app): State<App>, Path(number): Path<i64>) -> Result<Answer<CustomerView>, ApiError> {
    Ok(Answer(app.customer(number).await?))
}

/// A changed customer with the version that was looked at.
#[derive(Debug, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
struct CustomerChange {
    /// Version of the customer that was looked at.
    version: i64,
    /// The customer as they should be.
    customer: Customer,
}

/// Change what is known of a customer. A new name goes onto all their sheets and jobs.
#[utoipa::path(put, path = "/customers/{number}", params(("number" = i64, Path)), request_body = CustomerChange,
    responses((status = 200, body = CustomerView)))]
async fn change_customer(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(change): Body<CustomerChange>,
) -> Result<Answer<CustomerView>, ApiError> {
    Ok(Answer(app.change_customer(number, &change.customer, change.version).await?))
}

/// Everything that is held about a customer, as one document: what is known of them, their sheets, their jobs with every
/// reading.
#[utoipa::path(get, path = "/customers/{number}/export", params(("number" = i64, Path)),
    responses((status = 200, body = CustomerFile)))]
async fn export_customer(State(app): State<App>, Path(number): Path<i64>) -> Result<Answer<CustomerFile>, ApiError> {
    Ok(Answer(app.customer_file(number).await?))
}

/// What deleting a customer would do: what goes, what stays without a name, where the name was typed into a reason, and what
/// backups still hold. Nothing is changed.
#[utoipa::path(get, path = "/customers/{number}/deletion", params(("number" = i64, Path)),
    responses((status = 200, body = Deletion)))]
async fn look_at_deletion(State(app): State<App>, Path(number): Path<i64>) -> Result<Answer<Deletion>, ApiError> {
    Ok(Answer(app.deletion(number).await?))
}

/// Delete a customer on request. Their name is sent with it, so that nobody deletes another; jobs under way stand against it.
#[utoipa::path(post, path = "/customers/{number}/deletion", params(("number" = i64, Path)),
    request_body = DeleteCustomer, responses((status = 200, body = Deletion)))]
async fn delete_customer(
    State(app): State<App>,
    Path(number): Path<i64>,
    Body(request): Body<DeleteCustomer>,
) -> Result<Answer<Deletion>, ApiError> {
    Ok(Answer(app.delete_customer(number, &request).await?))
}

/// Give a sheet, and the job that was made from it, to a customer; or to nobody.
#[utoipa::path(post, path = "/sheets/{id}/customer", params(("id" = String, Path)), request_body = GiveSheet,
    responses((status = 200, body = SheetView)))]
async fn give_sheet(
    State(app): State<App>,
    Path(id): Path<String>,
    Body(give): Body<GiveSheet>,
) -> Result<Answer<SheetView>, ApiError> {
    let id = id.as_str().into();
    app.give_sheet(&id, &give).await?;
    Ok(Answer(app.sheet(&id).await?))
}

/// What to look for.
#[derive(Debug, Default, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
#[into_params(parameter_in = Query)]
struct FindQuery {
    /// As it is typed or scanned: a customer's name, `job 1`, a number, the code of a part or job card, a lot, `order 2`, a word of
    /// a note. Parts of words will do.
    text: String,
    /// Whether words may have one slip of the hand where nothing fits them as they are: never for what a scanner sends.
    #[serde(default)]
    near: bool,
}

/// What a text may mean: customers, jobs, sheets, clubs, models, parts, lots, orders, batches, notes. What fits best comes
/// first. Empty where nothing fits.
#[utoipa::path(get, path = "/find", params(FindQuery), responses((status = 200, body = Vec<Found>)))]
async fn find_anything(State(app): State<App>, Asked(query): Asked<FindQuery>) -> Result<Answer<Vec<Found>>, ApiError> {
    let found = if query.near { app.find_near(&query.text).await?.found } else { app.find(&query.text).await? };
    Ok(Answer(found))
}
