//! A fitting sheet as a file: saved from the shop, loaded into it.

use super::entries::{Entries, go_on, in_address};
use super::{Framed, PageError, PageResult, failure, failure_status, framed, notice_of};
use crate::asked::Path;
use crate::problem::{EdgeFault, Problem};
use crate::reader::Reader;
use crate::tablet::Done;
use app::App;
use axum::Router;
use axum::extract::{Multipart, State};
use axum::http::{StatusCode, header};
use axum::response::IntoResponse;
use axum::routing::get;
use look::{Action, Button, Field, Nav, Notice, Tone, actions, button, file_field, rich};
use maud::html;
use trade::sheet::Sheet;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/sheets/file", get(file_form).post(load_file)).route("/sheets/{id}/file", get(saved))
}

async fn saved(State(app): State<App>, Path(id): Path<String>) -> PageResult {
    let view = app.sheet(&id.as_str().into()).await?;
    let text = serde_json::to_string_pretty(&view.sheet)
        .map_err(|e| PageError(Problem::invalid(EdgeFault::Unwritable { log: e.to_string() })))?;
    let headers = [
        (header::CONTENT_TYPE, "application/json"),
        (header::CONTENT_DISPOSITION, "attachment; filename=\"sheet.json\""),
    ];
    Ok((headers, text).into_response())
}

async fn file_form(State(app): State<App>, Reader(w): Reader) -> PageResult {
    file_page(&w, &app, &Entries::default(), None, StatusCode::OK).await
}

async fn file_page(w: &Words, app: &App, form: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let body = html! {
        form.card method="post" action="/sheets/file" enctype="multipart/form-data" {
            (file_field("file", &w.text("sheet-file"), &w.text("sheet-file-hint"), ".json,application/json"))
            (form.area("written", &w.text("sheet-file-text"), 12, Field { hint: &w.text("sheet-file-text-hint"), ..Field::default() }))
            div.actions { (button(&Button { label: &w.text("sheet-load"), ..Button::default() })) }
        }
        p.hint { (rich!(w, "sheet-file-schema", |_, inner| html! { a href="/api/v1/sheets/schema" { (inner) } })) }
        (actions(&[Action { href: "/sheets", label: &w.text("sheet-back"), primary: false }]))
    };
    let page = framed(
        w,
        app,
        Framed { title: &w.text("sheet-load-title"), active: Nav::Sheets, notice, body, ..Framed::default() },
    )
    .await?;
    Ok((status, page).into_response())
}

async fn load_file(State(app): State<App>, Reader(w): Reader, form: Multipart) -> PageResult {
    let (mut form, file) = match Entries::with_file(form).await {
        Ok(read) => read,
        Err(fault) => {
            let notice = Some(notice_of(&w, &fault.into()));
            return file_page(&w, &app, &Entries::default(), notice, StatusCode::BAD_REQUEST).await;
        }
    };
    let text = match file {
        Some(bytes) => String::from_utf8_lossy(&bytes).trim_start_matches('\u{feff}').to_owned(),
        None => form.raw("written").to_owned(),
    };
    form.set("written", text.clone());
    match read_sheet(&w, &text) {
        Ok(sheet) => match app.save_sheet(&sheet).await {
            Ok(view) => Ok(go_on(&format!("/sheets/{}", in_address(view.id.as_str())), Done::Saved)),
            Err(error) => file_page(&w, &app, &form, Some(failure(&w, &error)), failure_status(&error)).await,
        },
        Err(words) => {
            form.refuse("written", words);
            let notice = Some(Notice {
                tone: Tone::Bad,
                text: w.text("sheet-file-refused"),
                next: w.text("sheet-file-refused-next"),
            });
            file_page(&w, &app, &form, notice, StatusCode::UNPROCESSABLE_ENTITY).await
        }
    }
}

/// Reads a sheet's document; a mistake is named with its line.
fn read_sheet(w: &Words, text: &str) -> Result<Sheet, String> {
    if text.trim().is_empty() {
        return Err(w.text("sheet-file-missing"));
    }
    document::read::<Sheet>(text.as_bytes()).map_err(|error| {
        let n = error.at.map_or(1, |(line, _)| line);
        let line = text.lines().nth(n.saturating_sub(1)).unwrap_or_default().trim();
        let line = Some(shortened(line)).filter(|line| !line.is_empty());
        text!(w, "sheet-file-line", n = n, what = error.what, line = line)
    })
}

fn shortened(line: &str) -> String {
    if line.chars().count() > 80 { line.chars().take(80).chain("…".chars()).collect() } else { line.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bad_sheet_file_is_named_by_line() {
        let w = Words::english(quantity::Units::default());
        let words = read_sheet(&w, "{\n \"player\": \"A\",\n \"dew\": 1\n}").unwrap_err();
        assert!(words.starts_with("Line 3") && words.contains("dew"), "{words}");
        assert!(read_sheet(&w, "  ").unwrap_err().contains("Choose a file"));
    }
}
