//! What to fit across the set, in its grid: weights for the tips, grips to hang out, lead tape or nothing; the list to fetch it
//! by; and two clubs with each other's piece, put right by one touch.

use super::entries::{go_to, in_address, query};
use super::{PageResult, Who};
use crate::asked::{Filled, Path};
use crate::problem::EdgeFault;
use crate::reader::Reader;
use app::fit::{ExchangeParts, FitPick, TakeFit, UndoExchange};
use app::job::JobFile;
use app::{App, AppError};
use axum::Router;
use axum::extract::State;
use axum::response::IntoResponse;
use axum::routing::post;
use bench::cause::{Cause, Exchange};
use bench::set_fit::{Fetch, FitRow, FitStage, SetFit};
use look::{Button, ButtonKind, Cell, Column, Icon, Table, button, hidden, rich, table};
use maud::{Markup, html};
use serde::Deserialize;
use trade::kind::Role;
use trade::model::PartKind;
use trade::reading::What;
use trade::step::Step;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/bench/{job}/fit", post(take))
        .route("/bench/{job}/exchange", post(exchange))
        .route("/bench/{job}/exchange/undo", post(undo_exchange))
}

#[derive(Debug, Deserialize)]
struct TakeForm {
    /// What goes into which club, as the API takes it; empty: all that is advised.
    #[serde(default)]
    picks: String,
    /// These picks take back what was taken: nothing more is offered to take back.
    #[serde(default)]
    undone: String,
    step: String,
    what: What,
}

async fn take(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(job): Path<i64>,
    Filled(form): Filled<TakeForm>,
) -> PageResult {
    let picks = match form.picks.as_str() {
        "" => None,
        text => Some(picks_of(text)?),
    };
    match app.take_fit(job, &TakeFit { picks, by }).await {
        Ok(taken) => {
            let before = serde_json::to_string(&taken.before).unwrap_or_default();
            let undo = [("what", form.what.key()), ("taken", before.as_str())];
            let pairs = if form.undone.is_empty() { &undo[..] } else { &undo[..1] };
            Ok(go_to(&format!("{}{}", grid(job, &form.step), query(pairs))).into_response())
        }
        Err(error) => super::grid::refused(&w, &app, job, &form.step, form.what, error).await,
    }
}

/// What goes into which club, as a form carries it.
fn picks_of(text: &str) -> Result<Vec<FitPick>, AppError> {
    serde_json::from_str(text).map_err(|_| AppError::invalid(EdgeFault::NotPicks { text: text.to_owned() }))
}

fn grid(job: i64, step: &str) -> String {
    format!("/bench/{job}/grid/{}", in_address(step))
}

#[derive(Debug, Deserialize)]
struct ExchangeForm {
    kind: PartKind,
    first: i64,
    second: i64,
    step: String,
    what: What,
}

async fn exchange(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(job): Path<i64>,
    Filled(form): Filled<ExchangeForm>,
) -> PageResult {
    let asked = ExchangeParts { kind: form.kind, slots: vec![form.first, form.second], by };
    match app.exchange_parts(job, &asked).await {
        Ok(done) => {
            let slots: Vec<String> = done.slots.iter().map(ToString::to_string).collect();
            let pairs = [("what", form.what.key()), ("exchanged", &slots.join("+"))];
            Ok(go_to(&format!("{}{}", grid(job, &form.step), query(&pairs))).into_response())
        }
        Err(error) => super::grid::refused(&w, &app, job, &form.step, form.what, error).await,
    }
}

#[derive(Debug, Deserialize)]
struct UndoForm {
    step: String,
    what: What,
}

async fn undo_exchange(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(job): Path<i64>,
    Filled(form): Filled<UndoForm>,
) -> PageResult {
    match app.undo_exchange(job, &UndoExchange { by }).await {
        Ok(_) => {
            Ok(go_to(&format!("{}{}", grid(job, &form.step), query(&[("what", form.what.key())]))).into_response())
        }
        Err(error) => super::grid::refused(&w, &app, job, &form.step, form.what, error).await,
    }
}

/// Whether what is to be fitted at a stage stands in the grid of a step: weights while the club is read without its joint,
/// grips from the cure on, what is added once the grip is on.
pub(super) fn shows(step: &Step, stage: FitStage) -> bool {
    let (glued, gripped) = (step.on.contains(&Role::Adhesive), step.on.contains(&Role::Grip));
    match stage {
        FitStage::Tip => step.asks.contains(&What::SwingWeight) && !glued,
        FitStage::Grip => glued && !step.glues,
        FitStage::Added => gripped,
        FitStage::Waits => false,
    }
}

/// Where a club's advice stands.
pub(super) struct At<'a> {
    pub job: i64,
    pub step: &'a Step,
    pub what: What,
}

impl At<'_> {
    fn fields(&self) -> Markup {
        html! { (hidden("step", &self.step.key)) (hidden("what", self.what.key())) }
    }

    fn picks(&self, picks: &[FitPick]) -> Markup {
        html! { (hidden("picks", &serde_json::to_string(picks).unwrap_or_default())) (self.fields()) }
    }
}

/// What is to be fitted in a club, where its row has nothing weightier to say.
pub(super) fn fit_words(w: &Words, at: &At<'_>, row: &FitRow) -> Markup {
    let mark = |name: &str, inner: &str| match name {
        "b" => html! { strong.mass { (inner) } },
        _ => html! { span.small { (inner) } },
    };
    let fitted = match (&row.advised, row.stage) {
        (Some(a), FitStage::Tip) if a.code.is_empty() => rich!(w, "fit-tip-empty", mark, now_g = row.now_g),
        (Some(a), FitStage::Tip) if row.now.is_empty() => rich!(w, "fit-tip-first", mark, mass_g = a.mass_g),
        (Some(a), FitStage::Tip) => rich!(w, "fit-tip", mark, now_g = row.now_g, mass_g = a.mass_g),
        (Some(a), FitStage::Grip) if a.waits => html! { (text!(w, "fit-grip-later", code = a.code.to_string())) },
        (Some(a), FitStage::Grip) => rich!(w, "fit-grip", mark, code = a.code.to_string(), mass_g = a.mass_g),
        (Some(a), _) => rich!(w, "fit-added", mark, mass_g = a.mass_g, action = a.action),
        (None, FitStage::Tip) if row.now.is_empty() => html! { (w.text("fit-empty-stays")) },
        (None, FitStage::Tip) => html! { (text!(w, "fit-stays", now_g = row.now_g)) },
        (None, FitStage::Grip) => html! { (text!(w, "fit-grip-stays", code = row.now.to_string())) },
        (None, _) => html! {},
    };
    let finish = match &row.advised {
        Some(a) => text!(
            w,
            "fit-becomes",
            now_points = row.finish.swing_weight_points,
            finish_points = a.finish.swing_weight_points
        ),
        None => text!(
            w,
            "fit-finishes",
            finish_points = row.finish.swing_weight_points,
            band_points = row.finish.band_points.max(0.05)
        ),
    };
    html! {
        span.fit { (fitted) }
        span { (finish) }
        @if let Some(advised) = row.advised.as_ref().filter(|a| !a.waits) {
            @match advised.kind {
                Some(kind) => {
                    form method="post" action={ "/bench/" (at.job) "/fit" } {
                        (at.picks(&[FitPick { slot: row.slot, kind, code: advised.code.clone() }]))
                        (button(&Button { label: &w.text("fit-take"), kind: ButtonKind::Quiet, ..Button::default() }))
                    }
                }
                None => {
                    form method="post" action={ "/bench/" (at.job) "/" (row.slot) "/extra" } {
                        (hidden("action", advised.action.key())) (hidden("mass_g", &advised.mass_g.to_string()))
                        (hidden("step", &at.step.key))
                        (button(&Button { label: &w.text("remedy-done"), kind: ButtonKind::Quiet, ..Button::default() }))
                    }
                }
            }
        }
    }
}

/// The likely cause of a doubt in its row, with the button of a deed where there is one; `said` of it stands in another row
/// already.
pub(super) fn cause_words(w: &Words, at: &At<'_>, cause: &Cause, said: bool) -> Markup {
    html! {
        span { strong { (w.tell(&cause.fact)) } @if !said && cause.exchange.is_none() { " " (w.tell(&cause.what_to_do)) } }
        @if let Some(exchange) = cause.exchange.filter(|_| !said) { (exchange_form(w, at, exchange)) }
    }
}

fn exchange_form(w: &Words, at: &At<'_>, exchange: Exchange) -> Markup {
    html! {
        form.under method="post" action={ "/bench/" (at.job) "/exchange" } {
            (hidden("kind", exchange.kind.key()))
            (hidden("first", &exchange.slots[0].to_string())) (hidden("second", &exchange.slots[1].to_string()))
            (at.fields())
            (button(&Button {
                label: &w.text("fit-exchanged"),
                kind: ButtonKind::Quiet,
                icon: Some(Icon::Again),
                ..Button::default()
            }))
        }
    }
}

/// What was taken, or exchanged, just now: the line that takes it back.
pub(super) fn undo_part(
    w: &Words,
    at: &At<'_>,
    file: &JobFile,
    taken: Option<&str>,
    exchanged: Option<&str>,
) -> Result<Markup, AppError> {
    let number = |slot: i64| file.job.clubs.iter().find(|c| c.slot == slot).map(|c| w.club_number(&c.target.number));
    if let Some(before) = taken {
        let picks = picks_of(before)?;
        let clubs: Vec<String> = picks.iter().filter_map(|pick| number(pick.slot)).collect();
        let said = text!(w, "fit-taken", clubs = clubs);
        return Ok(html! { form.notice.good method="post" action={ "/bench/" (at.job) "/fit" } {
            p role="status" { (said) }
            (hidden("undone", "1")) (at.picks(&picks)) (undo_button(w))
        } });
    }
    let slots = exchanged.into_iter().flat_map(|text| text.split('+')).filter_map(|slot| slot.parse().ok());
    let clubs: Vec<String> = slots.filter_map(number).collect();
    let [first, second] = clubs.as_slice() else { return Ok(html! {}) };
    Ok(html! { form.notice.good method="post" action={ "/bench/" (at.job) "/exchange/undo" } {
        p role="status" { (text!(w, "fit-exchange-done", first = first, second = second)) }
        (at.fields()) (undo_button(w))
    } })
}

fn undo_button(w: &Words) -> Markup {
    button(&Button { label: &w.text("fit-undo"), kind: ButtonKind::Quiet, icon: Some(Icon::Undo), ..Button::default() })
}

/// All that is advised at a step: in words what it is, one touch to take it; and the list to fetch it by.
pub(super) fn fit_part(w: &Words, at: &At<'_>, fit: &SetFit) -> Markup {
    let mut groups: Vec<(PartKind, f64, String, Vec<String>)> = Vec::new();
    let (mut count, mut inside) = (0_i64, 0_i64);
    for (row, advised, kind) in fit.to_take().filter(|(row, ..)| shows(at.step, row.stage)) {
        count += 1;
        inside += i64::from(advised.finish.deviation_points.abs() <= advised.finish.tolerance_points);
        let same = |(of, g, code, _): &&mut (PartKind, f64, String, Vec<String>)| {
            *of == kind
                && (*g - advised.mass_g).abs() < 0.05
                && (kind == PartKind::TipWeight || *code == advised.code.to_string())
        };
        match groups.iter_mut().find(same) {
            Some((.., clubs)) => clubs.push(w.club_number(&row.number)),
            None => groups.push((kind, advised.mass_g, advised.code.to_string(), vec![w.club_number(&row.number)])),
        }
    }
    let said: Vec<String> = groups
        .iter()
        .map(|(kind, mass_g, code, clubs)| match kind {
            PartKind::Grip => text!(w, "fit-group-grip", what = code, clubs = clubs),
            _ if *mass_g < 0.05 => text!(w, "fit-group-empty", clubs = clubs),
            _ => text!(w, "fit-group", what = w.mass(*mass_g), clubs = clubs),
        })
        .collect();
    let kinds: Vec<PartKind> = [(FitStage::Tip, PartKind::TipWeight), (FitStage::Grip, PartKind::Grip)]
        .into_iter()
        .filter(|(stage, _)| shows(at.step, *stage))
        .map(|(_, kind)| kind)
        .collect();
    let fetch: Vec<&Fetch> = fit.fetch.iter().filter(|fetch| kinds.contains(&fetch.kind)).collect();
    html! {
        @if count > 0 {
            form.card.take-all method="post" action={ "/bench/" (at.job) "/fit" } {
                p { (text!(w, "fit-all", what = said, inside = inside, n = count)) }
                (hidden("picks", "")) (at.fields())
                (button(&Button { label: &text!(w, "fit-take-all", n = count), big: true, ..Button::default() }))
            }
        }
        @if !fetch.is_empty() { details { summary { (w.text("fit-fetch")) } (fetch_table(w, &fetch)) } }
    }
}

fn fetch_table(w: &Words, fetch: &[&Fetch]) -> Markup {
    let row = |of: &&Fetch| {
        let place = if of.place.is_empty() { w.text("fit-no-place") } else { of.place.clone() };
        vec![
            Cell::from(place),
            Cell::from(format!("{} · {}", of.code, w.mass(of.mass_g))),
            Cell::from(of.count.to_string()),
            Cell::from(w.list(&of.clubs.iter().map(|number| w.club_number(number)).collect::<Vec<_>>())),
        ]
    };
    let title = w.text("fit-fetch");
    table(&Table {
        caption: &title,
        columns: vec![
            Column::words(w.text("fit-fetch-place")),
            Column::words(w.text("fit-fetch-what")),
            Column::figures(w.text("fit-fetch-count")),
            Column::words(w.text("fit-fetch-clubs")),
        ],
        rows: fetch.iter().map(row).collect(),
        cards: true,
        ..Table::default()
    })
}
