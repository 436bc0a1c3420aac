//! Labels of parts to print.

use super::entries::{Entries, query};
use super::stock::filter;
use super::{Framed, PageResult, framed};
use crate::problem::EdgeFault;
use crate::reader::Reader;
use app::stock::PartQuery;
use app::{App, AppError};
use axum::Router;
use axum::extract::{Query, State};
use axum::response::IntoResponse;
use axum::routing::get;
use look::{Action, ButtonKind, Icon, LabelPaper, Nav, PartLabel, empty_state, label_page, link_button};
use maud::{Markup, html};
use trade::part::Part;
use words::{Words, text};

/// Most labels that are asked for by their codes.
pub(crate) const LABELS_MAX: usize = 500;

/// Labels of a filter's parts on one page: eight sheets of 24, and no more than a tablet loads at once.
const LABELS_A_PAGE: i64 = 192;

pub(super) fn router() -> Router<App> {
    Router::new().route("/labels", get(labels))
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

async fn labels(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    let asked = Entries::new(pairs);
    let paper = LabelPaper::from_key(asked.text("paper")).unwrap_or_default();
    let from = asked.text("from").parse::<i64>().unwrap_or(0).max(0);
    let wanted = PartQuery { limit: Some(LABELS_A_PAGE), offset: Some(from), ..filter(&asked) };
    let (parts, total) = asked_parts(&app, asked.text("codes"), wanted).await?;
    let labels = labels_of(&w, &app, &parts).await?;
    let body = if labels.is_empty() {
        empty_state(
            &w.text("label-none"),
            &w.text("label-none-next"),
            &[Action { href: "/stock", label: &w.text("frame-stock"), primary: true }],
        )
    } else {
        html! {
            (controls(&w, &asked, paper))
            @if total > from + LABELS_A_PAGE && asked.text("codes").is_empty() {
                @let next = (from + LABELS_A_PAGE).to_string();
                p.actions.no-print { (link_button(&address(&asked, asked.text("paper"), &next), &text!(w, "label-next", from = from + LABELS_A_PAGE + 1, total = total), ButtonKind::Quiet, Some(Icon::Forward), "n")) }
            }
            (label_page(&w, &labels, paper))
        }
    };
    let crumb = text!(w, "label-count", n = labels.len());
    let title = w.text("label-title");
    Ok(framed(
        &w,
        &app,
        Framed { title: &title, active: Nav::Stock, crumb, body, help: Some("labels"), ..Framed::default() },
    )
    .await?
    .into_response())
}

/// The same parts on a paper, from a place in their list.
fn address(asked: &Entries, paper: &str, from: &str) -> String {
    let kept = ["codes", "kind", "model", "number", "state", "text"].map(|n| (n, asked.text(n)));
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
