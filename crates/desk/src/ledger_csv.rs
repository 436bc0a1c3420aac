//! The entries of a ledger as a CSV file: one row each, figures in the unit beside them.

use crate::stock_file::to_csv;
use bench::ledger::{Ledger, LedgerEntry, LedgerReading};
use fact::Told;

const COLUMNS: [&str; 22] = [
    "entry",
    "kind",
    "at",
    "by",
    "card",
    "step",
    "what",
    "unit",
    "value",
    "typed",
    "scale",
    "forecast",
    "forecast_band",
    "difference",
    "stands",
    "doubted",
    "doubt_ended",
    "about_entry",
    "batch",
    "deed",
    "reason",
    "sha256",
];

/// The entries of a ledger. `told` gives a reason in the reader's words.
#[must_use]
pub fn ledger_csv(ledger: &Ledger, told: &dyn Fn(&Told) -> String) -> String {
    let header = COLUMNS.map(str::to_owned).to_vec();
    to_csv(std::iter::once(header).chain(ledger.entries.iter().map(|entry| row(ledger, entry, told))))
}

fn row(ledger: &Ledger, entry: &LedgerEntry, told: &dyn Fn(&Told) -> String) -> Vec<String> {
    let reading = entry.reading.as_ref();
    let figure = |of: &dyn Fn(&LedgerReading) -> Option<f64>| {
        // A difference of two figures of one decimal is not to grow a tail of digits.
        reading.and_then(of).map(|value| ((value * 1e6).round() / 1e6 + 0.0).to_string()).unwrap_or_default()
    };
    let text = |of: &dyn Fn(&LedgerReading) -> String| reading.map(of).unwrap_or_default();
    let whole = |value: Option<i64>| value.map(|value| value.to_string()).unwrap_or_default();
    vec![
        entry.entry.to_string(),
        entry.kind.key().to_owned(),
        entry.at.map(|at| at.to_string()).unwrap_or_default(),
        entry.by.clone(),
        entry.slot.map(|slot| ledger.card(slot).to_owned()).unwrap_or_default(),
        text(&|r| r.step.clone()),
        text(&|r| r.what.key().to_owned()),
        text(&|r| r.unit.key().to_owned()),
        figure(&|r| Some(r.value)),
        text(&|r| r.typed.clone()),
        text(&|r| r.scale.clone().unwrap_or_default()),
        figure(&|r| r.forecast),
        figure(&|r| r.forecast_band),
        figure(&|r| r.difference),
        text(&|r| r.stands.to_string()),
        text(&|r| r.doubted.to_string()),
        text(&|r| r.ended.map(|ended| ended.key().to_owned()).unwrap_or_default()),
        whole(entry.about_entry.or_else(|| reading.and_then(|r| r.replaces_entry))),
        whole(entry.batch),
        entry.deed.clone(),
        entry.reason.as_ref().map(told).unwrap_or_default(),
        entry.sha256.clone(),
    ]
}
