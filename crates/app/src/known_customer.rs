//! The customer that a sheet names: there, or why not.

use crate::AppError;
use crate::look_up::LookUp;
use fact::Refusal;
use jiff::Timestamp;
use store::{CustomerRow, Tx};
use trade::error::Noun;
use trade::price::check_lines;
use trade::sheet::Sheet;

/// The row of a customer who is there.
pub(crate) async fn customer_row(tx: &mut Tx, number: i64) -> Result<CustomerRow, AppError> {
    match tx.customer(number).await? {
        Some(CustomerRow { deleted_at: Some(deleted_at), .. }) => {
            Err(AppError::NotFound(Refusal::new(&CustomerDeed::Deleted { customer: number, deleted_at })))
        }
        Some(row) => Ok(row),
        None => Err(AppError::not_found(Noun::Customer, number.to_string(), &LookUp::Customers)),
    }
}

/// A sheet as it is taken in: with the name of the customer that it belongs to.
///
/// # Errors
/// A quote that none can have; a customer who is not there; what the store says.
pub(crate) async fn sheet_taken_in(tx: &mut Tx, sheet: &Sheet) -> Result<Sheet, AppError> {
    check_lines(&sheet.quote)?;
    let mut sheet = sheet.clone();
    if let Some(number) = sheet.customer {
        sheet.player = customer_row(tx, number).await?.customer.name;
    }
    Ok(sheet)
}

fact::facts! {
    /// What is refused of what is done with customers.
    pub(crate) enum CustomerDeed: "customer_deed" {
        Deleted { customer: i64, deleted_at: Timestamp },
        OtherName { typed: String, customer: i64 },
        UnderWay { jobs: Vec<i64> },
        PartsHere { codes: Vec<String> },
        HoldsTheirParts { job: i64, codes: Vec<String> },
    }
}
