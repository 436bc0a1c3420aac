//! Answers that a browser saves as a file.

use axum::http::header;
use axum::response::IntoResponse;

/// Name of the addresses of a recall.
pub(crate) const ADDRESSES: &str = "recall-addresses";

/// An iCalendar file (RFC 5545, 8.1).
pub(crate) fn calendar_file(text: String) -> impl IntoResponse + use<> {
    let headers = [
        (header::CONTENT_TYPE, "text/calendar; charset=utf-8"),
        (header::CONTENT_DISPOSITION, "attachment; filename=\"setwright.ics\""),
    ];
    (headers, text)
}

/// A CSV file under a name, which is given without its ending.
pub(crate) fn csv_file(name: &str, text: String) -> impl IntoResponse + use<> {
    let headers = [
        (header::CONTENT_TYPE, "text/csv; charset=utf-8".to_owned()),
        (header::CONTENT_DISPOSITION, format!("attachment; filename=\"{name}.csv\"")),
    ];
    (headers, text)
}
