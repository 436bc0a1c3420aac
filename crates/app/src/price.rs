//! Prices, quotes and bills: the list, the lines on a sheet, and the bill that goes with the record.

use crate::sheet::sheet_row;
use crate::{App, AppError, load_library, load_shop};
use bench::record::Record;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use std::sync::Arc;
use trade::id::SheetId;
use trade::price::{PriceLine, PriceList, check_lines, total_minor};
use utoipa::ToSchema;

/// The quote of a sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct QuoteView {
    /// Its lines as they are kept with the sheet; empty where none was made yet.
    pub lines: Vec<PriceLine>,
    /// What they come to, in smallest coins.
    pub total_minor: i64,
    /// What the price list would make of the sheet now.
    pub proposed: Vec<PriceLine>,
    /// The currency as it stands behind an amount.
    pub currency: String,
    /// Digits behind the point.
    pub decimals: u8,
    /// What stands under the total.
    pub tax_text: String,
}

/// The lines that a quote is to have.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PutQuote {
    /// In their order; none takes the quote away.
    pub lines: Vec<PriceLine>,
}

/// A bill with the record of what was built.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct Bill {
    /// Name of the shop.
    pub shop: String,
    /// Running number of the job; the bill goes by it.
    pub job: i64,
    /// Who it is for.
    pub name: String,
    /// Their address, where they are a customer who gave one.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub address: String,
    /// The day that it is drawn up.
    #[schema(value_type = String, format = Date)]
    pub on: Date,
    /// Its lines: those of the quote.
    pub lines: Vec<PriceLine>,
    /// What they come to, in smallest coins.
    pub total_minor: i64,
    /// The currency as it stands behind an amount.
    pub currency: String,
    /// Digits behind the point.
    pub decimals: u8,
    /// What stands under the total.
    pub tax_text: String,
    /// What was built.
    pub record: Record,
}

impl App {
    /// The shop's prices.
    ///
    /// # Errors
    /// What the store says.
    pub async fn prices(&self) -> Result<PriceList, AppError> {
        Ok(self.shop().await?.prices)
    }

    /// Keeps the shop's prices. Quotes that were made keep theirs.
    ///
    /// # Errors
    /// Prices that cannot be; what the store says.
    pub async fn save_prices(&self, prices: &PriceList) -> Result<PriceList, AppError> {
        prices.check()?;
        let mut tx = self.store.write().await?;
        let mut shop = Arc::unwrap_or_clone(load_shop(&mut tx).await?);
        shop.prices = prices.clone();
        tx.save_shop(&shop, self.now()).await?;
        tx.commit().await?;
        Ok(shop.prices)
    }

    /// The quote of a sheet, and what the price list would make of it now.
    ///
    /// # Errors
    /// No such sheet; what the store says.
    pub async fn quote(&self, id: &SheetId) -> Result<QuoteView, AppError> {
        let mut tx = self.store.read().await?;
        let row = sheet_row(&mut tx, id).await?;
        let prices = load_shop(&mut tx).await?.prices.clone();
        let library = load_library(&mut tx).await?;
        Ok(QuoteView {
            total_minor: total_minor(&row.sheet.quote),
            proposed: desk::quote::proposed(&row.sheet, &prices, &library),
            lines: row.sheet.quote,
            currency: prices.currency,
            decimals: prices.decimals,
            tax_text: prices.tax_text,
        })
    }

    /// Keeps the quote of a sheet, and of the job that was made from it: it may be agreed on later than the clubs.
    ///
    /// # Errors
    /// No such sheet; lines that cannot be; what the store says.
    pub async fn put_quote(&self, id: &SheetId, put: &PutQuote) -> Result<QuoteView, AppError> {
        check_lines(&put.lines)?;
        let mut tx = self.store.write().await?;
        let mut row = sheet_row(&mut tx, id).await?;
        row.sheet.quote.clone_from(&put.lines);
        let saved_at = row.saved_at;
        tx.update_sheet(&row, saved_at).await?;
        if let Some(job) = &row.approved_job
            && let Some(mut job) = tx.job(job).await?
        {
            job.sheet.quote.clone_from(&put.lines);
            tx.save_job(&job).await?;
        }
        tx.commit().await?;
        self.tell(None, "sheet");
        self.quote(id).await
    }

    /// The bill of a job, with its record.
    ///
    /// # Errors
    /// No such job; what the store says.
    pub async fn bill(&self, number: i64) -> Result<Bill, AppError> {
        let record = self.record(number).await?;
        let file = self.job_file(number).await?;
        let sheet = &file.job.sheet;
        let address = match sheet.customer {
            Some(customer) => self.store.read().await?.customer(customer).await?.map(|row| row.customer.address),
            None => None,
        };
        let prices = file.shop.prices.clone();
        Ok(Bill {
            shop: file.shop.name.clone(),
            job: number,
            name: sheet.player.clone(),
            address: address.unwrap_or_default(),
            on: self.today(),
            total_minor: total_minor(&sheet.quote),
            lines: sheet.quote.clone(),
            currency: prices.currency,
            decimals: prices.decimals,
            tax_text: prices.tax_text,
            record,
        })
    }
}
