//! A list of parts as a file: looked at first, the good rows kept, the bad ones given back to mend.

use super::entries::{Entries, capital, counted, words_table};
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::look::{
    Action, Button, ButtonKind, Cell, Field, Figure, Icon, Nav, Notice, Tone, actions, button, figures, file_field,
    hidden, section, tag,
};
use app::App;
use axum::extract::{Multipart, State};
use axum::http::{StatusCode, header};
use axum::response::IntoResponse;
use maud::{Markup, html};
use workshop::stock_file::{BadRow, COLUMNS, Imported, RowWarning};

/// Rows of a list of mistakes or doubts that a page shows; the file of bad rows holds all.
const SHOWN: usize = 200;

pub(super) async fn form(State(app): State<App>) -> PageResult {
    form_page(&app, &Entries::default(), None, StatusCode::OK).await
}

async fn form_page(app: &App, form: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let body = html! {
        form.card method="post" action="/stock/import" enctype="multipart/form-data" {
            (file_field("file", "File", "A table saved as CSV (comma-separated, UTF-8)", ".csv,text/csv"))
            (form.area("text", "Or its rows", 8, Field { placeholder: "code,kind,model,number,mass_g\nH7-014,head,HERON,7,268.4", ..Field::default() }))
            div.actions { (button(&Button { label: "Look at it", ..Button::default() })) }
            p.hint { "Nothing is kept before you have seen what is in it." }
        }
        (section("What the file looks like", &html! {}, &html! {
            p { "The first line names the columns, in any order: " code { (COLUMNS.join(", ")) } ". "
                "Code, kind and model must be there." }
            p { "Cells are written as in the workshop: 256.1, \"256,1\" in quotes, 8.9 oz, 36 3/4 in. The unit in the heading holds where a cell has none." }
            p { "The models must be known first: " a href="/stock/models/file" { "load models" } "." }
        }))
    };
    let notice = notice.or_else(|| form.notice());
    let page =
        framed(app, Framed { title: "Import parts", active: Nav::Stock, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

pub(super) async fn preview(State(app): State<App>, form: Multipart) -> PageResult {
    let (mut form, file) = match Entries::with_file(form).await {
        Ok(read) => read,
        Err(words) => {
            let notice = Notice { tone: Tone::Bad, text: words, next: String::new() };
            return form_page(&app, &Entries::default(), Some(notice), StatusCode::BAD_REQUEST).await;
        }
    };
    let bytes = file.unwrap_or_else(|| form.raw("text").as_bytes().to_vec());
    if bytes.iter().all(u8::is_ascii_whitespace) {
        form.refuse("text", "There is no file and no text. Choose a file, or paste its rows");
        return form_page(&app, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    match app.preview_parts(&bytes).await {
        Ok(read) => {
            let text = String::from_utf8_lossy(&bytes);
            let page = framed(
                &app,
                Framed {
                    title: "Import parts",
                    active: Nav::Stock,
                    crumb: "nothing is kept yet".to_owned(),
                    body: preview_body(&read, &text),
                    ..Framed::default()
                },
            )
            .await?;
            Ok(page.into_response())
        }
        Err(error) => form_page(&app, &form, Some(failure(&error)), failure_status(&error)).await,
    }
}

fn preview_body(read: &Imported, text: &str) -> Markup {
    let (good, bad, doubtful) = (read.parts.len(), read.bad.len(), read.warnings.len());
    let label = if bad == 0 { format!("Keep {}", counted(good, "part")) } else { format!("Keep the {good} good rows") };
    html! {
        div.card { (figures(&[
            Figure { label: "good rows", value: &good.to_string(), note: "" },
            Figure { label: "of them doubtful", value: &doubtful.to_string(), note: "" },
            Figure { label: "bad rows", value: &bad.to_string(), note: "" },
        ])) }
        @if good > 0 {
            form method="post" action="/stock/import/keep" enctype="multipart/form-data" {
                (hidden("text", text))
                div.actions {
                    (button(&Button { label: &label, ..Button::default() }))
                    a.button.quiet href="/stock/import" { "Another file" }
                }
            }
        } @else {
            p { "No row can be kept. Mend the rows below in your table, then load it again." }
            (actions(&[Action { href: "/stock/import", label: "Load it again", primary: true }]))
        }
        (bad_part(&read.bad))
        (doubt_part(&read.warnings))
        @if good > 0 {
            details { summary { "The good rows (first 50)" }
                (words_table("Good rows", &["code", "kind", "model", "number", "#mass", "place"], read.parts.iter().take(50).map(|p| vec![
                    Cell::from(p.code.as_str()),
                    Cell::from(p.kind.word()),
                    Cell::from(p.model.as_str()),
                    Cell::from(p.number.as_deref().unwrap_or("")),
                    Cell::from(p.mass_g.map_or("not weighed".to_owned(), |g| format!("{} g", quantity::decimal(g, 1)))),
                    Cell::from(p.place.as_str()),
                ]).collect()))
            }
        }
    }
}

fn bad_part(bad: &[BadRow]) -> Markup {
    html! { @if !bad.is_empty() {
        (section("Bad rows", &html! {}, &html! { ul.plain { @for row in bad.iter().take(SHOWN) {
            li {
                (tag(Tone::Bad, &format!("line {}", row.line))) " "
                @if !row.column.is_empty() { strong { (row.column) " “" (row.cell) "”: " } }
                (capital(row.problem.trim_end_matches('.'))) ". " (row.next) "."
                @for more in &row.also { " Also " (more) "." }
            }
        } } }))
        @if bad.len() > SHOWN { p.hint { "And " (bad.len() - SHOWN) " more, all in the file of bad rows." } }
    } }
}

fn doubt_part(warnings: &[RowWarning]) -> Markup {
    html! { @if !warnings.is_empty() {
        (section("Doubtful rows", &html! { span.hint { "good, but look again" } }, &html! { ul.plain {
            @for doubt in warnings.iter().take(SHOWN) {
                li { (tag(Tone::Care, &format!("line {}", doubt.line))) " " strong { (doubt.code) ": " } (doubt.words) "." }
            }
        } }))
        @if warnings.len() > SHOWN { p.hint { "And " (warnings.len() - SHOWN) " more." } }
    } }
}

pub(super) async fn keep(State(app): State<App>, form: Multipart) -> PageResult {
    let form = match Entries::with_file(form).await {
        Ok((form, _)) => form,
        Err(words) => {
            let notice = Notice { tone: Tone::Bad, text: words, next: String::new() };
            return form_page(&app, &Entries::default(), Some(notice), StatusCode::BAD_REQUEST).await;
        }
    };
    let kept = match app.import_parts(form.raw("text").as_bytes()).await {
        Ok(kept) => kept,
        Err(error) => return form_page(&app, &form, Some(failure(&error)), failure_status(&error)).await,
    };
    let body = html! {
        @if !kept.bad_csv.is_empty() {
            form method="post" action="/stock/import/mend" enctype="multipart/form-data" {
                (hidden("text", &kept.bad_csv))
                p { "Save the bad rows, mend them (the first column says what is wrong, and is ignored), and import that file." }
                div.actions {
                    (button(&Button { label: "Save the bad rows", icon: Some(Icon::Export), kind: ButtonKind::Quiet, ..Button::default() }))
                }
            }
            (bad_part(&kept.bad))
        }
        (doubt_part(&kept.warnings))
        (actions(&[
            Action { href: "/stock", label: "To the stock", primary: true },
            Action { href: "/stock/import", label: "Import more", primary: false },
        ]))
    };
    let count = usize::try_from(kept.kept).unwrap_or(0);
    let notice = Some(Notice {
        tone: if count > 0 { Tone::Good } else { Tone::Care },
        text: format!("{} kept.", capital(&counted(count, "part"))),
        next: if kept.bad.is_empty() {
            String::new()
        } else {
            format!("{} were not.", capital(&counted(kept.bad.len(), "row")))
        },
    });
    let page =
        framed(&app, Framed { title: "Import parts", active: Nav::Stock, notice, body, ..Framed::default() }).await?;
    Ok(page.into_response())
}

/// Gives the bad rows back as a file.
pub(super) async fn mend(State(app): State<App>, form: Multipart) -> PageResult {
    match Entries::with_file(form).await {
        Ok((form, _)) => {
            let headers = [
                (header::CONTENT_TYPE, "text/csv; charset=utf-8"),
                (header::CONTENT_DISPOSITION, "attachment; filename=\"parts-to-mend.csv\""),
            ];
            Ok((headers, form.raw("text").to_owned()).into_response())
        }
        Err(words) => {
            let notice = Notice { tone: Tone::Bad, text: words, next: String::new() };
            form_page(&app, &Entries::default(), Some(notice), StatusCode::BAD_REQUEST).await
        }
    }
}
