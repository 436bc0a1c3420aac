//! The look itself, served: every colour, size, icon and component as the pages use them.

use super::{Framed, PageResult, framed};
use crate::reader::Reader;
use app::App;
use axum::Router;
use axum::extract::State;
use axum::http::header;
use axum::response::IntoResponse;
use axum::routing::get;
use look::gallery;

pub(super) fn router() -> Router<App> {
    Router::new().route("/style", get(style)).route(gallery::GALLERY_SHEET, get(sheet))
}

async fn sheet() -> impl IntoResponse {
    ([(header::CONTENT_TYPE, "text/css; charset=utf-8")], gallery::gallery_sheet())
}

async fn style(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let title = w.text("picture-style");
    let view = Framed {
        title: &title,
        crumb: w.text("picture-style-crumb"),
        body: gallery::gallery(&w),
        sheets: &["bench.css", "calc.css"],
        ..Framed::default()
    };
    Ok(framed(&w, &app, view).await?.into_response())
}
