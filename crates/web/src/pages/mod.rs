//! The pages: server-made HTML with real forms, complete without script.

mod again;
mod ask;
mod begin;
mod bench;
mod bench_advice;
mod bench_entry;
mod bench_readings;
mod bench_scan;
mod bench_screen;
mod calc;
mod calc_picture;
mod calc_shape;
mod calendar;
mod capability;
mod club_beam;
mod club_job;
mod clubs;
mod cpm;
mod customer_delete;
mod customers;
mod entries;
mod exports;
mod fields;
mod find;
mod fit;
mod gauge_study;
mod glossary;
mod glue;
mod grid;
pub(crate) mod grip_size;
mod help;
mod job_card;
mod job_kinds;
mod keys;
pub(crate) mod labels;
pub(crate) mod learned;
pub(crate) mod ledger;
mod match_set;
mod measured;
mod model_shape;
mod models;
mod needs;
mod open;
mod order_shape;
mod orders;
mod part_life;
mod plan;
mod plan_choice;
mod plan_day;
mod player;
mod prices;
mod printers;
mod recall;
mod records;
mod say;
mod scale_check;
pub(crate) mod scale_health;
mod scale_setup;
mod scales;
mod shaft_profile;
mod sheet_club;
mod sheet_file;
mod sheet_form;
mod sheet_reference;
mod sheets;
mod shop;
mod soft_side;
mod sorting;
mod step_says;
mod stock;
mod stock_columns;
mod stock_import;
mod stock_weigh;
mod stock_weighed;
mod style;
mod swing_inertia;
mod tablet;
mod today;
mod told;
mod trust;
mod usual_models;
mod what_if;
mod work_order;

use self::entries::go_to;
use crate::asked::Path;
use crate::cookies;
use crate::problem::{EdgeFault, Problem};
use app::glue::Cup;
use app::{App, AppError};
use axum::Router;
use axum::extract::{FromRequestParts, State};
use axum::http::{StatusCode, request::Parts};
use axum::response::{IntoResponse, Redirect, Response};
use axum::routing::get;
use fact::{Figure, Refusal};
use look::{Clock, FooterLink, Nav, Notice, PageFrame, Tone, page};
use maud::{Markup, html};
use std::convert::Infallible;
use words::{Words, text};

pub(crate) fn router() -> Router<App> {
    Router::new()
        .merge(today::router())
        .merge(begin::router())
        .merge(sheets::router())
        .merge(customers::router())
        .merge(customer_delete::router())
        .merge(find::router())
        .merge(calendar::router())
        .merge(exports::router())
        .merge(stock::router())
        .merge(labels::router())
        .merge(printers::router())
        .merge(orders::router())
        .merge(needs::router())
        .merge(sorting::router())
        .merge(ask::router())
        .merge(part_life::router())
        .merge(models::router())
        .merge(usual_models::router())
        .merge(job_card::router())
        .merge(plan::router())
        .merge(plan_choice::router())
        .merge(plan_day::router())
        .merge(scales::router())
        .merge(scale_health::router())
        .merge(scale_check::router())
        .merge(scale_setup::router())
        .merge(swing_inertia::router())
        .merge(gauge_study::router())
        .merge(bench::router())
        .merge(grid::router())
        .merge(cpm::router())
        .merge(grip_size::router())
        .merge(shaft_profile::router())
        .merge(soft_side::router())
        .merge(open::router())
        .merge(fit::router())
        .merge(glossary::router())
        .merge(help::router())
        .merge(glue::router())
        .merge(prices::router())
        .merge(player::router())
        .merge(recall::router())
        .merge(records::router())
        .merge(clubs::router())
        .merge(again::router())
        .merge(club_job::router())
        .merge(match_set::router())
        .merge(job_kinds::router())
        .merge(learned::router())
        .merge(ledger::router())
        .merge(told::router())
        .merge(capability::router())
        .merge(shop::router())
        .merge(keys::router())
        .merge(trust::router())
        .merge(calc::router())
        .merge(style::router())
        .merge(tablet::router())
        .route("/card/{code}", get(card))
        .fallback(|| async { PageError(Problem::new(StatusCode::NOT_FOUND, "not_found", EdgeFault::NoPage)) })
}

/// A scanned card leads to its club's next step.
async fn card(State(app): State<App>, Path(code): Path<String>) -> Result<Redirect, PageError> {
    let (job, slot) = app.card(&code).await?;
    Ok(go_to(&format!("/bench/{job}/{slot}")))
}

/// By whom something is done at a tablet where nobody has given a name.
const NOBODY: &str = "bench";

/// Who is at this tablet: a name kept in a cookie, set on the Shop page.
#[derive(Debug, Clone)]
pub(crate) struct Who(pub String);

impl<S: Send + Sync> FromRequestParts<S> for Who {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Infallible> {
        let name = cookies::brought(&parts.headers, cookies::WHO).filter(|name| !name.is_empty());
        Ok(Self(name.unwrap_or_else(|| NOBODY.to_owned())))
    }
}

/// An error as a page: what happened, where, what to do next.
#[derive(Debug)]
pub(crate) struct PageError(pub Problem);

impl From<AppError> for PageError {
    fn from(error: AppError) -> Self {
        Self(Problem::of(&error))
    }
}

impl IntoResponse for PageError {
    /// The status and the problem alone: [`crate::dress`] makes the page of it, which knows where the request came from.
    fn into_response(self) -> Response {
        let mut response = self.0.status().into_response();
        response.extensions_mut().insert(self.0);
        response
    }
}

/// The page that tells of a problem, with the way back to where it arose, if that is known.
pub(crate) fn problem_page(w: &Words, problem: &Problem, back: Option<&str>) -> Response {
    let status = problem.status();
    let frame = PageFrame {
        title: problem.title(w),
        active: Nav::Elsewhere,
        notice: Some(notice_of(w, problem.refusal())),
        body: html! {
            p {
                @if let Some(back) = back { a.button.quiet href=(back) { (w.text("button-back")) } " " }
                a.button.quiet href="/" { (w.text("page-today")) }
            }
        },
        tablet: crate::tablet::here(),
        ..PageFrame::default()
    };
    (status, page(w, &frame)).into_response()
}

pub(crate) type PageResult = Result<Response, PageError>;

/// What every page of the shop has: its place, its title, the clocks that run.
pub(crate) struct Framed<'a> {
    pub title: &'a str,
    pub active: Nav,
    pub crumb: String,
    pub notice: Option<Notice>,
    pub at_bench: bool,
    /// Style sheets besides the one of all pages.
    pub sheets: &'static [&'static str],
    /// Cups mixed of late, the latest first, where the page has read them already.
    pub cups: Option<Vec<Cup>>,
    /// The chapter of the guide that the page leads to; none: that of its place.
    pub help: Option<&'static str>,
    /// Whether terms of the trade lead to the glossary where they are first mentioned.
    pub terms: bool,
    pub body: Markup,
}

impl Default for Framed<'_> {
    fn default() -> Self {
        Self {
            title: "",
            active: Nav::Elsewhere,
            crumb: String::new(),
            notice: None,
            at_bench: false,
            sheets: &[],
            cups: None,
            help: None,
            terms: false,
            body: html! {},
        }
    }
}

/// The whole page around a body.
pub(crate) async fn framed(w: &Words, app: &App, view: Framed<'_>) -> Result<Markup, PageError> {
    let now = app.now();
    let mut cups = match view.cups {
        Some(cups) => cups,
        None => app.running_cups().await?,
    };
    // The one that ends first is the one that a narrow screen shows.
    cups.sort_by_key(|cup| cup.until);
    let clocks = cups
        .into_iter()
        .filter(|cup| cup.until > now)
        .take(2)
        .map(|cup| Clock {
            label: text!(w, "clock-glue", batch = cup.number),
            until: cup.until.to_string(),
            text: say::left(w, now, cup.until),
            done: w.text("left-over"),
            href: "/glue".to_owned(),
        })
        .collect();
    let chapter = view.help.or_else(|| help::chapter_of(view.active));
    let help = chapter.map_or_else(|| "/help".to_owned(), |chapter| format!("/help/{chapter}"));
    let footer = [
        (help.as_str(), "page-help"),
        ("/scan", "find-page"),
        ("/clubs", "club-life-page"),
        ("/recall", "page-recall"),
        ("/learned", "page-learned"),
        ("/capability", "page-capability"),
        ("/calc", "page-calc"),
        ("/scales", "page-scales"),
        ("/shop", "page-shop"),
        ("/keys", "page-keys"),
        ("/tablet", "page-tablet"),
        ("/glossary", "page-glossary"),
        ("/api/v1/openapi.json", "page-api"),
    ]
    .map(|(href, id)| FooterLink { href: href.to_owned(), label: w.text(id) })
    .to_vec();
    Ok(page(
        w,
        &PageFrame {
            title: view.title.to_owned(),
            active: view.active,
            crumb: view.crumb,
            clocks,
            now: Some(now.to_string()),
            notice: view.notice.or_else(|| done_notice(w)),
            at_bench: view.at_bench,
            bare: false,
            sheets: view.sheets,
            footer,
            tablet: crate::tablet::here(),
            body: if view.terms { look::with_terms(w, &view.body, &glossary::EXPLAINED) } else { view.body },
        },
    ))
}

/// A sentence confirms what the form before has done.
fn done_notice(w: &Words) -> Option<Notice> {
    let done = crate::tablet::done()?;
    Some(Notice { tone: Tone::Good, text: w.text(done.text()), next: String::new() })
}

/// A notice for a failure that is shown on the page it belongs to.
pub(crate) fn failure(w: &Words, error: &AppError) -> Notice {
    notice_of(w, &error.refusal())
}

/// The same over a form that still shows what was typed: where somebody else was first, that is worth saying.
pub(crate) fn still_below(w: &Words, error: &AppError) -> Notice {
    let mut notice = failure(w, error);
    if error.code() == "stale" {
        notice.next = w.text("page-still-below");
    }
    notice
}

/// What is wrong and what to do next, as a notice.
pub(crate) fn notice_of(w: &Words, refusal: &Refusal) -> Notice {
    let next = w.next(refusal).map(|next| words::sentence(&next)).unwrap_or_default();
    Notice { tone: Tone::Bad, text: words::sentence(&w.told(refusal.fact())), next }
}

/// A refusal beside an entry: what is wrong and what to do next.
pub(crate) fn beside(w: &Words, refusal: &Refusal) -> String {
    let next = w.next(refusal).map(|next| format!(" {}", words::sentence(&next))).unwrap_or_default();
    words::sentence(&w.told(refusal.fact())) + &next
}

/// What is wrong with a text that an entry holds, without the entry.
pub(crate) fn within_its_entry(refusal: &Refusal) -> Refusal {
    match refusal.fact().figure("what") {
        Some(Figure::Fact(what)) if refusal.fact().figure("entry").is_some() => Refusal::new(what),
        _ => refusal.clone(),
    }
}

/// The same where the entry has its own name on the page, so that the sentence calls it “it”.
pub(crate) fn beside_its_entry(w: &Words, refusal: &Refusal) -> String {
    let refusal = refusal.clone().with_figure("entry", &EntryName::It);
    beside(w, &refusal.with_figure("field", &EntryName::It))
}

fact::facts! {
    /// What a refusal calls an entry that it stands beside.
    pub(crate) enum EntryName: "entry_name" {
        It,
        Labelled { label: String },
    }
}

/// The status of a page that shows a failure.
pub(crate) fn failure_status(error: &AppError) -> StatusCode {
    Problem::from(error).status()
}
