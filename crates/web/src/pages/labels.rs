//! Labels of parts to print.

use super::entries::{Entries, query};
use super::stock::filter;
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::problem::EdgeFault;
use crate::reader::Reader;
use app::label_print::{LabelsSent, PrintLabels};
use app::stock::PartQuery;
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use desk::label::{Label, check_copies};
use look::{
    Action, Button, ButtonKind, Field, Icon, LabelPaper, Nav, Notice, PartLabel, Tone, button, empty_state, hidden,
    label_page, link_button,
};
use maud::{Markup, html};
use trade::club::Club;
use trade::part::Part;
use trade::reading::What;
use words::{Words, text};

/// Most labels that are asked for by their codes.
pub(crate) const LABELS_MAX: usize = 500;

/// Labels of a filter's parts on one page: eight sheets of 24, and no more than a tablet loads at once.
const LABELS_A_PAGE: i64 = 192;

pub(super) fn router() -> Router<App> {
    Router::new().route("/labels", get(labels)).route("/labels/print", post(print))
}

/// What stands on the labels of parts.
pub(crate) async fn labels_of(w: &Words, app: &App, parts: &[Part]) -> Result<Vec<PartLabel>, AppError> {
    let models = app.models(None).await?;
    Ok(label_texts(w, parts, &models))
}

/// What stands on the labels of parts of these models.
#[must_use]
pub fn label_texts(w: &Words, parts: &[Part], models: &[trade::model::Model]) -> Vec<PartLabel> {
    let one = |part: &Part| {
        let name =
            models.iter().find(|m| m.code() == part.model).map_or(part.model.as_str(), trade::model::Model::name);
        PartLabel {
            code: part.code.clone(),
            what: part
                .number
                .as_deref()
                .map_or_else(|| name.to_owned(), |n| text!(w, "label-part", name = name, number = w.club_number(n))),
            mass: part.mass_g.map_or_else(String::new, |mass_g| w.mass(mass_g)),
        }
    };
    parts.iter().map(one).collect()
}

/// The parts that an address asks for: by `codes`, or by the filter of the stock page.
pub(crate) async fn asked_parts(app: &App, codes: &str, wanted: PartQuery) -> Result<(Vec<Part>, i64), AppError> {
    let codes: Vec<String> = codes.split([',', ' ', '\n']).map(str::to_owned).filter(|c| !c.is_empty()).collect();
    if codes.is_empty() {
        let limit = wanted.limit.or(i64::try_from(LABELS_MAX).ok());
        return app.parts(&PartQuery { limit, ..wanted }).await;
    }
    if codes.len() > LABELS_MAX {
        return Err(AppError::invalid(EdgeFault::TooManyLabels { n: codes.len(), most: LABELS_MAX }));
    }
    let parts = app.parts_by_code(&codes).await?;
    let count = i64::try_from(parts.len()).unwrap_or(i64::MAX);
    Ok((parts, count))
}

/// What stands on the labels of clubs: the club and its player, and its swing weight where it was read.
#[must_use]
pub fn club_label_texts(w: &Words, clubs: &[Club]) -> Vec<PartLabel> {
    let one = |club: &Club| PartLabel {
        code: club.code.0.clone(),
        what: text!(w, "label-club", club = w.tell(&club.name()), player = club.player.as_str()),
        mass: club
            .figure(What::SwingWeight)
            .map_or_else(String::new, |read| super::say::value(w, What::SwingWeight, read.value)),
    };
    clubs.iter().map(one).collect()
}

/// The labels as a printer takes them.
#[must_use]
pub fn printer_labels(labels: &[PartLabel]) -> Vec<Label> {
    labels
        .iter()
        .map(|label| Label { code: label.code.clone(), lines: vec![label.what.clone(), label.mass.clone()] })
        .collect()
}

fn codes_in(text: &str) -> Vec<String> {
    text.split([',', ' ', '\n']).map(str::to_owned).filter(|code| !code.is_empty()).collect()
}

async fn clubs_of(app: &App, codes: &[String]) -> Result<Vec<Club>, AppError> {
    if codes.len() > LABELS_MAX {
        return Err(AppError::invalid(EdgeFault::TooManyLabels { n: codes.len(), most: LABELS_MAX }));
    }
    let mut clubs = Vec::with_capacity(codes.len());
    for code in codes {
        clubs.push(app.club(code).await?.club);
    }
    Ok(clubs)
}

/// Prints the labels of parts and clubs on a printer of the shop.
pub(crate) async fn print_asked(w: &Words, app: &App, asked: &PrintLabels) -> Result<LabelsSent, AppError> {
    let n = asked.codes.len() + asked.clubs.len();
    if n > LABELS_MAX {
        return Err(AppError::invalid(EdgeFault::TooManyLabels { n, most: LABELS_MAX }));
    }
    check_copies(asked.copies).map_err(AppError::invalid)?;
    let printer = app.label_printer(asked.printer.as_deref()).await?;
    let mut labels = labels_of(w, app, &app.parts_by_code(&asked.codes).await?).await?;
    labels.extend(club_label_texts(w, &clubs_of(app, &asked.clubs).await?));
    app.print_labels(&printer, &printer_labels(&labels), asked.copies).await
}

/// What was sent, in words.
#[must_use]
pub fn sent_words(w: &Words, sent: &LabelsSent) -> String {
    let (n, printer) = (sent.labels, sent.printer.as_str());
    if sent.ready {
        text!(w, "label-sent", n = n, printer = printer)
    } else {
        text!(w, "label-sent-silent", n = n, printer = printer)
    }
}

/// The same as a notice.
pub(super) fn sent_notice(w: &Words, sent: &LabelsSent) -> Notice {
    let tone = if sent.ready { Tone::Good } else { Tone::Care };
    Notice { tone, text: sent_words(w, sent), next: String::new() }
}

async fn print(State(app): State<App>, Reader(w): Reader, Form(pairs): Form<Vec<(String, String)>>) -> PageResult {
    let mut asked = Entries::new(pairs);
    let copies = asked.count(&w, "copies").and_then(|n| u32::try_from(n).ok()).unwrap_or(0);
    let wanted = PrintLabels {
        printer: asked.some("printer"),
        codes: codes_in(asked.text("codes")),
        clubs: codes_in(asked.text("clubs")),
        copies,
    };
    match print_asked(&w, &app, &wanted).await {
        Ok(sent) => labels_page(&w, &app, &asked, Some(sent_notice(&w, &sent)), StatusCode::OK).await,
        Err(error) => labels_page(&w, &app, &asked, Some(failure(&w, &error)), failure_status(&error)).await,
    }
}

/// The printers of the shop, each with a button that prints what the page shows.
async fn printers_part(w: &Words, app: &App, labels: &[PartLabel], of_clubs: bool) -> Result<Markup, AppError> {
    let printers = app.shop().await?.label_printers;
    let codes: Vec<&str> = labels.iter().map(|label| label.code.as_str()).collect();
    Ok(html! {
        form.card.no-print method="post" action="/labels/print" {
            (hidden(if of_clubs { "clubs" } else { "codes" }, &codes.join(",")))
            @if printers.is_empty() { p.hint { (w.text("label-printers-none")) } } @else {
                div.fields { (look::field(&Field { name: "copies", label: &w.text("label-copies"), value: "1", inputmode: "numeric", ..Field::default() })) }
            }
            div.actions {
                @for printer in &printers {
                    (button(&Button { label: &text!(w, "label-print-on", printer = printer.name.as_str()), name: "printer", value: &printer.name, ..Button::default() }))
                }
                (link_button("/shop/printers", &w.text("label-printers"), ButtonKind::Quiet, Some(Icon::Print), ""))
            }
        }
    })
}

async fn labels(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    labels_page(&w, &app, &Entries::new(pairs), None, StatusCode::OK).await
}

async fn labels_page(w: &Words, app: &App, asked: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let paper = LabelPaper::from_key(asked.text("paper")).unwrap_or_default();
    let from = asked.text("from").parse::<i64>().unwrap_or(0).max(0);
    let of_clubs: Vec<String> = asked.all("clubs").chain(asked.all("club")).flat_map(codes_in).collect();
    let (labels, total) = if of_clubs.is_empty() {
        let wanted = PartQuery { limit: Some(LABELS_A_PAGE), offset: Some(from), ..filter(asked) };
        let (parts, total) = asked_parts(app, asked.text("codes"), wanted).await?;
        (labels_of(w, app, &parts).await?, total)
    } else {
        (club_label_texts(w, &clubs_of(app, &of_clubs).await?), 0)
    };
    let body = if labels.is_empty() {
        empty_state(
            &w.text("label-none"),
            &w.text("label-none-next"),
            &[Action { href: "/stock", label: &w.text("frame-stock"), primary: true }],
        )
    } else {
        html! {
            (controls(w, asked, paper))
            (printers_part(w, app, &labels, !of_clubs.is_empty()).await?)
            @if total > from + LABELS_A_PAGE && asked.text("codes").is_empty() {
                @let next = (from + LABELS_A_PAGE).to_string();
                p.actions.no-print { (link_button(&address(asked, asked.text("paper"), &next), &text!(w, "label-next", from = from + LABELS_A_PAGE + 1, total = total), ButtonKind::Quiet, Some(Icon::Forward), "n")) }
            }
            (label_page(w, &labels, paper))
        }
    };
    let crumb = text!(w, "label-count", n = labels.len());
    let title = w.text("label-title");
    let page = framed(
        w,
        app,
        Framed { title: &title, active: Nav::Stock, crumb, notice, body, help: Some("labels"), ..Framed::default() },
    )
    .await?;
    Ok((status, page).into_response())
}

/// The same parts on a paper, from a place in their list.
fn address(asked: &Entries, paper: &str, from: &str) -> String {
    let kept = ["codes", "clubs", "kind", "model", "number", "state", "text"].map(|n| (n, asked.text(n)));
    format!("/labels{}", query(&[&kept[..], &[("paper", paper), ("from", from)]].concat()))
}

fn controls(w: &Words, asked: &Entries, paper: LabelPaper) -> Markup {
    let to = |paper: &str| address(asked, paper, asked.text("from"));
    let kind = |own| if own == paper { ButtonKind::Primary } else { ButtonKind::Quiet };
    html! {
        div.actions {
            (link_button(&to("sheet"), &w.text("label-sheet"), kind(LabelPaper::Sheet), Some(Icon::Sheet), ""))
            (link_button(&to("strip"), &w.text("label-strip"), kind(LabelPaper::Strip), Some(Icon::Print), ""))
            (link_button("/stock", &w.text("label-back"), ButtonKind::Quiet, None, ""))
        }
        p.no-print.hint {
            (w.text(if paper == LabelPaper::Strip { "label-print-strip" } else { "label-print-sheet" }))
        }
    }
}
