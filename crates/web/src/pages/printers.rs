//! Printers for labels: what the shop has, a form for another, a test label.

use super::entries::{Entries, go_on, go_to};
use super::labels::sent_notice;
use super::{Framed, PageResult, beside, failure, failure_status, framed};
use crate::reader::Reader;
use crate::tablet::Done;
use app::App;
use axum::Router;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use desk::label::Label;
use look::{Button, ButtonKind, Field, Notice, button, hidden, section};
use maud::{Markup, html};
use trade::label_printer::{Fineness, LabelPrinter, PageLanguage};
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/shop/printers", get(show).post(keep))
        .route("/shop/printers/remove", post(remove))
        .route("/labels/test", post(test))
}

/// A roll as label printers are often sold with. Common practice, no source.
const USUAL: [(&str, &str); 3] = [("width", "62 mm"), ("height", "29 mm"), ("gap", "3 mm")];

async fn show(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let form = Entries::new(USUAL.map(|(name, value)| (name.to_owned(), value.to_owned())).to_vec());
    page(&w, &app, &form, None, StatusCode::OK).await
}

async fn page(w: &Words, app: &App, form: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let printers = app.shop().await?.label_printers;
    let languages: Vec<(&str, String)> = PageLanguage::ALL.iter().map(|one| (one.key(), w.tell(one))).collect();
    let dots: Vec<(&str, String)> = Fineness::ALL.iter().map(|one| (one.key(), w.tell(one))).collect();
    let body = html! {
        p { (w.text("label-printers-about")) }
        @if printers.is_empty() { p.hint { (w.text("label-printers-none")) } } @else {
            ul.plain.readings { @for printer in &printers { li { (printer_line(w, printer)) } } }
        }
        (section(&w.text("label-printer-keep"), &html! {}, &html! {
            form.card method="post" action="/shop/printers" {
                div.fields {
                    (form.field("name", &w.text("label-printer-name"), Field { hint: &w.text("label-printer-name-hint"), required: true, ..Field::default() }))
                    (form.field("to", &w.text("label-printer-to"), Field { hint: &w.text("label-printer-to-hint"), required: true, ..Field::default() }))
                    (form.select("language", &w.text("label-printer-language"), &w.text("label-printer-language-hint"), &languages))
                    (form.select("fineness", &w.text("label-printer-fineness"), "", &dots))
                    (form.field("width", &w.text("label-printer-width"), Field { required: true, ..Field::default() }))
                    (form.field("height", &w.text("label-printer-height"), Field { required: true, ..Field::default() }))
                    (form.field("gap", &w.text("label-printer-gap"), Field::default()))
                }
                div.actions { (button(&Button { label: &w.text("label-printer-keep"), ..Button::default() })) }
            }
        }))
    };
    let title = w.text("label-printers");
    let notice = form.notice(w).or(notice);
    let framing = Framed { title: &title, notice, body, help: Some("labels"), ..Framed::default() };
    let page = framed(w, app, framing).await?;
    Ok((status, page).into_response())
}

fn printer_line(w: &Words, printer: &LabelPrinter) -> Markup {
    let name = printer.name.as_str();
    let (width_mm, height_mm, to) = (printer.width_mm, printer.height_mm, printer.to.as_str());
    html! {
        span { (text!(w, "label-printer-is", printer = name, language = printer.language, width_mm = width_mm, height_mm = height_mm, to = to)) }
        form.inline method="post" action="/labels/test" {
            (hidden("name", name))
            (button(&Button { label: &w.text("label-printer-test"), kind: ButtonKind::Quiet, ..Button::default() }))
        }
        form.inline method="post" action="/shop/printers/remove" {
            (hidden("name", name))
            button.button.quiet type="submit" aria-label=(text!(w, "label-printer-remove-of", printer = name)) { (w.text("label-printer-remove")) }
        }
    }
}

async fn keep(State(app): State<App>, Reader(w): Reader, Form(fields): Form<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(fields);
    let width_mm = form.length_mm(&w, "width").unwrap_or(0.0);
    let height_mm = form.length_mm(&w, "height").unwrap_or(0.0);
    let gap_mm = form.length_mm(&w, "gap").unwrap_or(0.0);
    if !form.is_sound() {
        return page(&w, &app, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    let printer = LabelPrinter {
        name: form.text("name").to_owned(),
        to: form.text("to").to_owned(),
        language: PageLanguage::from_key(form.text("language")).unwrap_or(PageLanguage::Zpl),
        fineness: Fineness::from_key(form.text("fineness")).unwrap_or(Fineness::Dpi203),
        width_mm,
        height_mm,
        gap_mm,
    };
    let mut shop = app.shop().await?;
    // The same name again is the same printer with other settings.
    shop.label_printers.retain(|other| other.name.to_lowercase() != printer.name.to_lowercase());
    let checked = printer.check();
    shop.label_printers.push(printer);
    let kept = match checked {
        Ok(_) => app.save_shop(&shop).await,
        Err(error) => Err(error.into()),
    };
    match kept {
        Ok(()) => Ok(go_on("/shop/printers", Done::Saved).into_response()),
        Err(error) => {
            let refusal = error.refusal();
            let field = refusal.entry().unwrap_or("name").trim_end_matches("_mm").to_owned();
            form.refuse(&field, beside(&w, &refusal));
            page(&w, &app, &form, None, failure_status(&error)).await
        }
    }
}

async fn remove(State(app): State<App>, Form(fields): Form<Vec<(String, String)>>) -> PageResult {
    let form = Entries::new(fields);
    let mut shop = app.shop().await?;
    shop.label_printers.retain(|printer| printer.name != form.text("name"));
    app.save_shop(&shop).await?;
    Ok(go_to("/shop/printers").into_response())
}

async fn test(State(app): State<App>, Reader(w): Reader, Form(fields): Form<Vec<(String, String)>>) -> PageResult {
    let form = Entries::new(fields);
    let usual = Entries::new(USUAL.map(|(name, value)| (name.to_owned(), value.to_owned())).to_vec());
    let printed = match app.label_printer(form.some("name").as_deref()).await {
        Ok(printer) => {
            let label =
                Label { code: "TEST-1".to_owned(), lines: vec![w.text("label-test-line"), printer.name.clone()] };
            app.print_labels(&printer, &[label], 1).await
        }
        Err(error) => Err(error),
    };
    let (notice, status) = match &printed {
        Ok(sent) => (sent_notice(&w, sent), StatusCode::OK),
        Err(error) => (failure(&w, error), failure_status(error)),
    };
    page(&w, &app, &usual, Some(notice), status).await
}
