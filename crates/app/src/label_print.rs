//! Labels straight to a printer.

use crate::{App, AppError, load_shop};
use desk::label::{Label, pages};
use instrument::printer::{Patience, send};
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::label_printer::{LabelPrinter, PrinterSetting};
use utoipa::ToSchema;

/// Labels to print.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PrintLabels {
    /// Name of the shop's printer; left out: the first one of the shop.
    #[serde(default)]
    pub printer: Option<String>,
    /// Codes of the parts whose labels are printed.
    #[serde(default)]
    #[schema(max_items = 500)]
    pub codes: Vec<String>,
    /// Codes of the clubs whose labels are printed.
    #[serde(default)]
    #[schema(max_items = 500)]
    pub clubs: Vec<String>,
    /// How often each is printed.
    #[serde(default = "once")]
    #[schema(minimum = 1, maximum = 50, default = 1)]
    pub copies: u32,
}

const fn once() -> u32 {
    1
}

/// Labels that were sent to a printer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct LabelsSent {
    /// Name of the printer.
    pub printer: String,
    /// How many labels, copies counted.
    pub labels: usize,
    /// Whether the printer said that it can print. One that answers nothing may have printed all the same: look.
    pub ready: bool,
}

impl App {
    /// The shop's printer of a name; without a name its first one.
    ///
    /// # Errors
    /// The shop has no such printer; what the store says.
    pub async fn label_printer(&self, name: Option<&str>) -> Result<LabelPrinter, AppError> {
        let mut tx = self.store.read().await?;
        let shop = load_shop(&mut tx).await?;
        let wanted = name.map(|name| name.trim().to_lowercase()).filter(|name| !name.is_empty());
        let found = shop.label_printers.iter().find(|printer| match &wanted {
            Some(name) => printer.name.trim().to_lowercase() == *name,
            None => true,
        });
        found.cloned().ok_or_else(|| {
            let known: Vec<String> = shop.label_printers.iter().map(|printer| printer.name.clone()).collect();
            let name = name.unwrap_or_default().to_owned();
            AppError::NotFound(match known.is_empty() {
                true => PrinterSetting::None.into(),
                false => PrinterSetting::Unknown { name, known }.into(),
            })
        })
    }

    /// Prints labels: all are laid out before the first is sent.
    ///
    /// # Errors
    /// Nothing to print; a code that does not fit its label; a printer that is off, open, out of labels or stops.
    pub async fn print_labels(
        &self,
        printer: &LabelPrinter,
        labels: &[Label],
        copies: u32,
    ) -> Result<LabelsSent, AppError> {
        let place = printer.check().map_err(AppError::Trade)?;
        let bytes = pages(printer, labels, copies).map_err(|refusal| AppError::Trade(TradeError::refused(refusal)))?;
        let language = printer.language;
        // A printer that is slow holds up a thread of its own and none that answers.
        let sent = tokio::task::spawn_blocking(move || send(&place, language, &bytes, Patience::default())).await;
        let ready = sent.map_err(|e| AppError::Internal(e.to_string()))?.map_err(AppError::conflict)?;
        let labels = labels.len() * usize::try_from(copies).unwrap_or(1);
        Ok(LabelsSent { printer: printer.name.clone(), labels, ready })
    }
}
