//! Prices, quotes and bills.

use super::work::bytes_of;
use super::{print_json, reader, say};
use crate::config::{JobArguments, PricesArguments, QuoteArguments};
use crate::failure::{CommandFault, Failure};
use app::price::PutQuote;
use fact::Fact;
use std::path::Path;
use trade::price::{PriceLine, PriceList, shown};
use words::{Words, text};

/// Prints the price list, or keeps another.
///
/// # Errors
/// A file that is no price list; prices that cannot be; what the store says.
pub async fn prices(arguments: &PricesArguments) -> Result<(), Failure> {
    let given = arguments.set.as_deref().map(document::<PriceList>).transpose()?;
    let app = arguments.database.open().await?;
    let prices = match given {
        Some(prices) => app.save_prices(&prices).await?,
        None => app.prices().await?,
    };
    app.close().await;
    // A list of prices is its document: what is printed can be changed and kept again.
    print_json(&prices)
}

fn document<T: serde::de::DeserializeOwned>(path: &Path) -> Result<T, Failure> {
    let not = |what| Failure::usage(CommandFault::NotPrices { path: path.display().to_string(), what });
    ::document::read(&bytes_of(path)?).map_err(|e| not(e.told()))
}

/// Prints the quote of a sheet, after keeping another where that is asked.
///
/// # Errors
/// No such sheet; lines that cannot be; what the store says.
pub async fn quote(arguments: &QuoteArguments) -> Result<(), Failure> {
    let given = arguments.set.as_deref().map(document::<PutQuote>).transpose()?;
    let app = arguments.database.open().await?;
    let id = arguments.sheet.as_str().into();
    let mut view = app.quote(&id).await?;
    let put = given.or_else(|| arguments.take.then(|| PutQuote { lines: view.proposed.clone() }));
    if let Some(put) = put {
        view = app.put_quote(&id, &put).await?;
    }
    app.close().await;
    if arguments.database.json {
        return print_json(&view);
    }
    say(&told(&reader(), &view.lines, view.total_minor, view.decimals, &view.currency))
}

/// Prints the bill of a job.
///
/// # Errors
/// No such job; what the store says.
pub async fn bill(arguments: &JobArguments) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let bill = app.bill(arguments.job).await?;
    app.close().await;
    if arguments.database.json {
        return print_json(&bill);
    }
    let w = reader();
    let head = format!("{}\n{}\n", text!(w, "price-bill", job = bill.job), bill.name);
    let lines = told(&w, &bill.lines, bill.total_minor, bill.decimals, &bill.currency);
    let tax = if bill.tax_text.is_empty() { String::new() } else { bill.tax_text + "\n" };
    say(&(head + &lines + &tax))
}

fn told(w: &Words, lines: &[PriceLine], total: i64, decimals: u8, currency: &str) -> String {
    if lines.is_empty() {
        return w.text("price-bill-no-lines") + "\n";
    }
    let line = |l: &PriceLine| {
        text!(w, "price-line", count = l.count, what = l.what, sum = shown(l.sum_minor(), decimals)) + "\n"
    };
    let total = format!("{}: {} {currency}", w.text("price-total"), shown(total, decimals));
    lines.iter().map(line).collect::<String>() + total.trim_end() + "\n"
}
