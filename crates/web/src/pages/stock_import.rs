//! A list of parts as a file: looked at first, its columns named, the good rows kept, the bad ones given back to mend.

use super::beside;
use super::entries::{Entries, go_to, words_table};
use super::notice_of;
use super::stock_columns::{carried, columns_form, mapping_of};
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::file::csv_file;
use crate::reader::Reader;
use app::App;
use app::stock_list::Looked;
use axum::extract::{Form, Multipart, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use desk::stock_file::BadRow;
use desk::stock_file::COLUMNS;
use desk::stock_file::Layout;
use desk::stock_file::ROWS_MAX;
use desk::stock_file::RowWarning;
use fact::Refusal;
use look::{
    Action, Button, ButtonKind, Cell, Column, Field, Figure, Icon, Nav, Notice, Tone, actions, button, figures,
    file_field, hidden, rich, section, tag,
};
use maud::{Markup, html};
use words::{Words, text};

/// Rows of a list of mistakes or doubts that a page shows; the file of bad rows holds all.
const SHOWN: usize = 200;

pub(super) async fn form(State(app): State<App>, Reader(w): Reader) -> PageResult {
    form_page(&w, &app, &Entries::default(), None, StatusCode::OK).await
}

async fn form_page(w: &Words, app: &App, form: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let layouts = app.layouts().await?;
    let body = html! {
        form.card method="post" action="/stock/import" enctype="multipart/form-data" {
            (file_field("file", &w.text("stock-list-file"), &w.text("stock-list-file-hint"), ".xlsx,.csv,text/csv"))
            (form.area("text", &w.text("stock-list-rows"), 8, Field { placeholder: "code,kind,model,number,mass_g\nH7-014,head,HERON,7,268.4", ..Field::default() }))
            div.actions { (button(&Button { label: &w.text("stock-list-look"), ..Button::default() })) }
            p.hint { (w.text("stock-list-look-first")) }
        }
        (remembered(w, &layouts))
        (section(&w.text("stock-list-form"), &html! {}, &html! {
            p { (text!(w, "stock-list-form-size", rows = format!("{} 000", ROWS_MAX / 1000), size_mb = app::stock::IMPORT_MAX_BYTES / 1024 / 1024)) }
            p { (rich!(w, "stock-list-form-names", |_, inner| html! { code { (inner) } }, names = COLUMNS.join(", "))) }
            p.hint { (w.text("stock-list-form-cells")) }
            p { (rich!(w, "stock-list-form-models", |_, inner| html! { a href="/stock/models/file" { (inner) } })) }
        }))
    };
    let notice = notice.or_else(|| form.notice(w));
    let page = framed(
        w,
        app,
        Framed { title: &w.text("stock-list-title"), active: Nav::Stock, notice, body, ..Framed::default() },
    )
    .await?;
    Ok((status, page).into_response())
}

/// Lists whose columns are remembered.
fn remembered(w: &Words, layouts: &[Layout]) -> Markup {
    html! { @if !layouts.is_empty() {
        (section(&w.text("stock-list-remembered"), &html! { span.hint { (w.text("stock-list-remembered-hint")) } }, &html! {
            ul.plain.readings { @for layout in layouts { li {
                strong { (layout.name) } span.small { (layout.headings.join(" · ")) }
                form.inline method="post" action="/stock/import/forget" {
                    (hidden("name", &layout.name))
                    (button(&Button { label: &w.text("stock-list-forget"), kind: ButtonKind::Quiet, ..Button::default() }))
                }
            } } }
        }))
    } }
}

pub(super) async fn forget(
    State(app): State<App>,
    Reader(w): Reader,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    match app.forget_layout(Entries::new(fields).text("name")).await {
        Ok(()) => Ok(go_to("/stock/import").into_response()),
        Err(error) => form_page(&w, &app, &Entries::default(), Some(failure(&w, &error)), failure_status(&error)).await,
    }
}

async fn not_whole(w: &Words, app: &App, refusal: &Refusal) -> PageResult {
    form_page(w, app, &Entries::default(), Some(notice_of(w, refusal)), StatusCode::BAD_REQUEST).await
}

/// The second step: what the file would give. Sent again with other columns it looks again.
pub(super) async fn look(State(app): State<App>, Reader(w): Reader, form: Multipart) -> PageResult {
    let (mut form, file) = match Entries::with_file(form).await {
        Ok(read) => read,
        Err(fault) => return not_whole(&w, &app, &fault.into()).await,
    };
    let bytes = match carried(&form) {
        Ok(held) => file.or(held).unwrap_or_else(|| form.raw("text").as_bytes().to_vec()),
        Err(fault) => return not_whole(&w, &app, &fault.into()).await,
    };
    if bytes.len() <= app::stock::IMPORT_MAX_BYTES && bytes.iter().all(u8::is_ascii_whitespace) {
        form.refuse("text", w.text("stock-list-nothing"));
        return form_page(&w, &app, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    let (mapping, twice) = mapping_of(&w, &form);
    let mut looked = match app.look_at_parts(&bytes, mapping.as_ref()).await {
        Ok(looked) => looked,
        Err(error) => return form_page(&w, &app, &form, Some(failure(&w, &error)), failure_status(&error)).await,
    };
    if twice.is_some() {
        looked.refused = twice;
        looked.imported = desk::stock_file::Imported::default();
    }
    let status = if looked.refused.is_some() { StatusCode::UNPROCESSABLE_ENTITY } else { StatusCode::OK };
    let notice = looked.refused.as_ref().map(|words| Notice {
        tone: Tone::Bad,
        text: beside(&w, words),
        next: w.text("stock-list-columns-next"),
    });
    let known = looked.known_as.as_ref().map(|name| Notice {
        tone: Tone::Good,
        text: text!(w, "stock-list-known", name = name.as_str()),
        next: w.text("stock-list-known-next"),
    });
    let notice = notice.or(known);
    let models = app.models(None).await?;
    let body = html! {
        (counts(&w, &looked))
        (columns_form(&w, &looked, &form, &bytes, &models))
        (bad_part(&w, &looked.imported.bad))
        (doubt_part(&w, &looked.imported.warnings))
        (good_part(&w, &looked))
    };
    let crumb = w.text("stock-list-not-kept");
    let page = framed(
        &w,
        &app,
        Framed { title: &w.text("stock-list-title"), active: Nav::Stock, crumb, notice, body, ..Framed::default() },
    )
    .await?;
    Ok((status, page).into_response())
}

fn counts(w: &Words, looked: &Looked) -> Markup {
    let read = &looked.imported;
    html! {
        @if looked.refused.is_none() {
            div.card { (figures(&[
                Figure { label: &w.text("stock-list-good"), value: &read.parts.len().to_string(), note: "" },
                Figure { label: &w.text("stock-list-doubtful"), value: &read.warnings.len().to_string(), note: "" },
                Figure { label: &w.text("stock-list-bad"), value: &read.bad.len().to_string(), note: "" },
            ])) }
        }
    }
}

fn good_part(w: &Words, looked: &Looked) -> Markup {
    let parts = &looked.imported.parts;
    html! {
        @if !parts.is_empty() {
            details { summary { (w.text("stock-list-good-first")) }
                (words_table(&w.text("stock-list-good-rows"), good_columns(w), parts.iter().take(50).map(|p| vec![
                    Cell::from(p.code.as_str()),
                    Cell::from(w.tell(&p.kind)),
                    Cell::from(p.model.as_str()),
                    Cell::from(p.number.as_deref().map_or_else(String::new, |n| w.club_number(n))),
                    Cell::from(p.mass_g.map_or_else(|| w.text("stock-not-weighed"), |figure| w.mass(figure))),
                    Cell::from(p.place.as_str()),
                ]).collect()))
            }
        }
    }
}

fn good_columns(w: &Words) -> Vec<Column<'static>> {
    let field = |name: &str| w.text(&format!("part-field-{name}"));
    let mut columns: Vec<Column<'_>> =
        ["code", "kind", "model", "number", "place"].iter().map(|name| Column::words(field(name))).collect();
    columns.insert(4, Column::figures(field("mass")));
    columns
}

fn bad_part(w: &Words, bad: &[BadRow]) -> Markup {
    html! { @if !bad.is_empty() {
        (section(&w.text("stock-list-bad-rows"), &html! {}, &html! { ul.plain { @for row in bad.iter().take(SHOWN) {
            li {
                (tag(Tone::Bad, &text!(w, "stock-list-line", line = row.line))) " "
                @if !row.column.is_empty() { strong { (row.column) " “" (row.cell) "”: " } }
                (beside(w, &row.what()))
                @for more in row.refusals().iter().skip(1) { " Also " (beside(w, more)) }
            }
        } } }))
        @if bad.len() > SHOWN { p.hint { (text!(w, "stock-list-more-bad", n = bad.len() - SHOWN)) } }
    } }
}

fn doubt_part(w: &Words, warnings: &[RowWarning]) -> Markup {
    html! { @if !warnings.is_empty() {
        (section(&w.text("stock-list-doubtful-rows"), &html! { span.hint { (w.text("stock-list-doubtful-hint")) } }, &html! { ul.plain {
            @for doubt in warnings.iter().take(SHOWN) {
                li { (tag(Tone::Care, &text!(w, "stock-list-line", line = doubt.line))) " " strong { (doubt.code) ": " } (words::sentence(&w.told(&doubt.doubt))) }
            }
        } }))
        @if warnings.len() > SHOWN { p.hint { (text!(w, "stock-list-more", n = warnings.len() - SHOWN)) } }
    } }
}

pub(super) async fn keep(State(app): State<App>, Reader(w): Reader, form: Multipart) -> PageResult {
    let form = match Entries::with_file(form).await {
        Ok((form, _)) => form,
        Err(fault) => return not_whole(&w, &app, &fault.into()).await,
    };
    let bytes = match carried(&form) {
        Ok(held) => held.unwrap_or_else(|| form.raw("text").as_bytes().to_vec()),
        Err(fault) => return not_whole(&w, &app, &fault.into()).await,
    };
    let (mapping, twice) = mapping_of(&w, &form);
    if let Some(words) = &twice {
        let notice = Notice { tone: Tone::Bad, text: beside(&w, words), next: w.text("stock-list-load-again") };
        return form_page(&w, &app, &form, Some(notice), StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    let mapping = mapping.unwrap_or_default();
    let key = form.text("request_key");
    let kept = match app.import_mapped(&bytes, &mapping, |done, all| app.tell_import(key, done, all)).await {
        Ok(kept) => kept,
        Err(error) => return form_page(&w, &app, &form, Some(failure(&w, &error)), failure_status(&error)).await,
    };
    let remembered = match form.some("remember") {
        Some(name) => Some(app.remember_layout(&name, &bytes, &mapping).await),
        None => None,
    };
    let body = html! {
        @if !kept.bad_csv.is_empty() {
            form method="post" action="/stock/import/mend" enctype="multipart/form-data" {
                (hidden("text", &kept.bad_csv))
                p { (w.text("stock-list-bad-file")) }
                div.actions {
                    (button(&Button { label: &w.text("stock-list-save-bad"), icon: Some(Icon::Export), kind: ButtonKind::Quiet, ..Button::default() }))
                }
            }
            (bad_part(&w, &kept.bad))
        }
        (doubt_part(&w, &kept.warnings))
        @match &remembered {
            Some(Ok(layout)) => { p { (rich!(&w, "stock-list-remembered-as", |_, inner| html! { strong { (inner) } }, name = layout.name.as_str())) } }
            Some(Err(error)) => { p.error { (text!(w, "stock-list-not-remembered", what = beside(&w, &error.refusal()))) } }
            None => {}
        }
        (actions(&[
            Action { href: "/stock", label: &w.text("stock-back"), primary: true },
            Action { href: "/stock/import", label: &w.text("stock-list-import-more"), primary: false },
        ]))
    };
    let count = usize::try_from(kept.kept).unwrap_or(0);
    let notice = Some(Notice {
        tone: if count > 0 { Tone::Good } else { Tone::Care },
        text: text!(w, "stock-list-kept", n = count),
        next: if kept.bad.is_empty() { String::new() } else { text!(w, "stock-list-refused", n = kept.bad.len()) },
    });
    let page = framed(
        &w,
        &app,
        Framed { title: &w.text("stock-list-title"), active: Nav::Stock, notice, body, ..Framed::default() },
    )
    .await?;
    Ok(page.into_response())
}

/// Gives the bad rows back as a file.
pub(super) async fn mend(State(app): State<App>, Reader(w): Reader, form: Multipart) -> PageResult {
    match Entries::with_file(form).await {
        Ok((form, _)) => Ok(csv_file("parts-to-mend", form.raw("text").to_owned()).into_response()),
        Err(fault) => {
            let notice = notice_of(&w, &fault.into());
            form_page(&w, &app, &Entries::default(), Some(notice), StatusCode::BAD_REQUEST).await
        }
    }
}
