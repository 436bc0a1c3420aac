//! The gauge study at the bench: one reading a screen, then what it found.

use super::beside_its_entry;
use super::entries::{Entries, go_to, words_cards};
use super::scale_check::{live_name, what_it_shows, with_unit};
use super::scale_health::amount_of;
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::asked::Path;
use crate::reader::Reader;
use app::App;
use app::gauge_study::{NewStudy, NewStudyReading, StudyQuestion, StudyTurn, StudyView};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use desk::scale_health::Category;
use desk::scale_health::GaugeStudy;
use desk::scale_health::StudyResult;
use look::{
    Button, ButtonKind, Cell, Column, Field, Figure, Notice, Tone, button, figures, hidden, link_button, request_key,
    rich, section,
};
use maud::{Markup, html};
use trade::gauge::Gauge;
use words::{Amount, Words, text};

/// More classes than this are shown as more: the figure itself says nothing then.
const CLASSES_SHOWN: usize = 99;

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/scales/studies/new", get(new_page).post(begin))
        .route("/scales/studies/{study}", get(show).post(keep))
        .route("/scales/studies/{study}/take-noise", post(take_noise))
}

async fn new_page(State(app): State<App>, Reader(w): Reader, Query(asked): Query<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(asked);
    for (name, usual) in [("trials", "3"), ("parts", "1\n2\n3\n4\n5\n6\n7\n8\n9\n10")] {
        if form.text(name).is_empty() {
            form.set(name, usual);
        }
    }
    begin_page(&w, &app, &form, None, StatusCode::OK).await
}

async fn begin_page(w: &Words, app: &App, form: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let shop = app.shop().await?;
    let gauges = shop.instruments();
    let choices: Vec<(&str, &str)> = gauges.iter().map(|g| (g.key.as_str(), g.name.as_str())).collect();
    let key = form.some("request_key").unwrap_or_else(app::request_key);
    let body = html! {
        p { (w.text("study-about")) }
        form.card method="post" action="/scales/studies/new" {
            (request_key(&key))
            div.fields {
                (form.select("scale", &w.text("study-scale"), "", &choices))
                (form.field("trials", &w.text("study-trials"), Field { inputmode: "numeric", required: true, hint: &w.text("study-trials-hint"), ..Field::default() }))
            }
            (form.area("builders", &w.text("study-builders"), 3, Field { required: true, hint: &w.text("study-builders-hint"), ..Field::default() }))
            (form.area("parts", &w.text("study-parts"), 6, Field { required: true, hint: &w.text("study-parts-hint"), ..Field::default() }))
            div.actions { (button(&Button { label: &w.text("study-begin"), ..Button::default() })) }
        }
    };
    let (title, notice) = (w.text("study-new-title"), form.notice(w).or(notice));
    let view =
        Framed { title: &title, crumb: w.text("study-crumb"), notice, body, help: Some("scales"), ..Framed::default() };
    Ok((status, framed(w, app, view).await?).into_response())
}

fn lines(text: &str) -> Vec<String> {
    text.lines().map(|l| l.trim().to_owned()).filter(|l| !l.is_empty()).collect()
}

async fn begin(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(sent): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(sent);
    let trials = form.count(&w, "trials");
    let trials = form.needed("trials", trials, &w.text("study-needs-whole"));
    let Some(trials) = trials.filter(|_| form.is_sound()) else {
        return begin_page(&w, &app, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    };
    let new = NewStudy {
        scale: form.text("scale").to_owned(),
        parts: lines(form.raw("parts")),
        builders: lines(form.raw("builders")),
        trials: usize::try_from(trials).unwrap_or_default(),
        by,
        request_key: form.some("request_key"),
    };
    match app.begin_study(&new).await {
        Ok(study) => Ok(go_to(&format!("/scales/studies/{}", study.id)).into_response()),
        Err(error) => begin_page(&w, &app, &form, Some(failure(&w, &error)), failure_status(&error)).await,
    }
}

async fn show(
    State(app): State<App>,
    Reader(w): Reader,
    Path(study): Path<String>,
    Query(asked): Query<Vec<(String, String)>>,
) -> PageResult {
    let view = app.study(&study).await?;
    study_page(&w, &app, &view, &Entries::new(asked), None, StatusCode::OK).await
}

async fn study_page(
    w: &Words,
    app: &App,
    view: &StudyView,
    form: &Entries,
    question: Option<&StudyQuestion>,
    status: StatusCode,
) -> PageResult {
    let again = form.text("place").parse::<usize>().ok().and_then(|place| turn_at(view, place));
    let body = match (again.as_ref().or(view.next.as_ref()), &view.result) {
        (Some(turn), _) => entry(w, view, turn, form, question.is_some()),
        (None, Some(result)) => found(w, view, result),
        (None, None) => html! {},
    };
    let notice = question.map(|q| Notice { tone: Tone::Care, text: w.tell(q), next: String::new() });
    let notice = form.notice(w).or(notice).or_else(|| {
        form.has("taken", "1").then(|| Notice { tone: Tone::Good, text: w.text("study-taken"), next: String::new() })
    });
    let crumb = text!(w, "study-progress", scale = view.gauge.name, done = view.done, of = view.of);
    let at_bench = view.next.is_some();
    let title = w.text("study-title");
    let page = framed(
        w,
        app,
        Framed { title: &title, crumb, notice, at_bench, body, help: Some("scales"), ..Framed::default() },
    );
    Ok((status, page.await?).into_response())
}

fn turn_at(view: &StudyView, place: usize) -> Option<StudyTurn> {
    let step = view.plan.order.get(place)?;
    Some(StudyTurn {
        place,
        part: view.plan.parts[step.part].clone(),
        builder: view.plan.builders[step.builder].clone(),
        trial: step.trial + 1,
    })
}

fn entry(w: &Words, view: &StudyView, turn: &StudyTurn, form: &Entries, asked: bool) -> Markup {
    let gauge = &view.gauge;
    let key = form.some("request_key").filter(|_| asked).unwrap_or_else(app::request_key);
    let typed = form.text("typed");
    html! {
        progress.study-progress value=(view.done) max=(view.of) aria-label=(w.text("study-progress-bar")) {}
        form.card.bench-decision.decision method="post" action={ "/scales/studies/" (view.id) } data-keep=(text!(w, "study-queued", part = turn.part)) data-queue {
            (request_key(&key)) (hidden("place", &turn.place.to_string())) (hidden("what", live_name(gauge.measures)))
            p.turn { (rich!(w, "study-turn", |_, inner| html! { strong { (inner) } }, builder = turn.builder, part = turn.part)) }
            @if asked { (hidden("asked_about", typed)) div.answers {
                (button(&Button { label: &text!(w, "study-as-it-is", typed = typed), kind: ButtonKind::Danger, name: "confirmed", value: "1", ..Button::default() }))
            } }
            div.entry-row {
                (what_it_shows(w, form, gauge.measures, !asked))
                (button(&Button { label: &w.text("study-keep"), big: true, ..Button::default() }))
            }
            p.hint { (text!(w, "study-place", place = turn.place + 1, of = view.of)) }
        }
        div.actions {
            @if let Some(last) = view.last.as_ref().filter(|last| last.place != turn.place) {
                (link_button(&format!("/scales/studies/{}?place={}", view.id, last.place), &text!(w, "study-again", part = last.part), ButtonKind::Quiet, None, "z"))
            }
            (link_button("/scales", &w.text("study-stop"), ButtonKind::Quiet, None, ""))
        }
        @if let Some(advice) = &view.recommended { p.small { (w.tell(advice)) } }
    }
}

async fn keep(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(study): Path<String>,
    Form(sent): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(sent);
    let place = form.count(&w, "place").and_then(|p| usize::try_from(p).ok()).unwrap_or(usize::MAX);
    let measures = app.study(&study).await?.gauge.measures;
    let new = NewStudyReading {
        place,
        typed: with_unit(&w, measures, form.text("typed")),
        // A new entry after a question is a new entry, whichever button Enter has pressed.
        confirmed: form.has("confirmed", "1") && form.text("asked_about") == form.text("typed"),
        by,
        request_key: form.some("request_key"),
    };
    match app.read_study(&study, &new).await {
        Ok(answer) if answer.kept => Ok(go_to(&format!("/scales/studies/{study}")).into_response()),
        Ok(answer) => {
            let status = StatusCode::UNPROCESSABLE_ENTITY;
            study_page(&w, &app, &answer.study, &form, answer.question.as_ref(), status).await
        }
        Err(error) => {
            let view = app.study(&study).await?;
            form.refuse("typed", beside_its_entry(&w, &error.refusal()));
            study_page(&w, &app, &view, &form, None, failure_status(&error)).await
        }
    }
}

fn found(w: &Words, view: &StudyView, result: &StudyResult) -> Markup {
    let gauge = &view.gauge;
    let share = w.amount(Amount::Share, result.share_percent / 100.0, 0);
    let classes = if result.classes > CLASSES_SHOWN {
        text!(w, "study-more-than", most = CLASSES_SHOWN)
    } else {
        result.classes.to_string()
    };
    let verdict = match result.category {
        Category::Good => "study-good",
        Category::Usable => "study-usable",
        Category::Poor => "study-poor",
    };
    let noise = gauge.amount(result.noise_sd);
    html! {
        div.card {
            p { strong { (w.tell(&result.found)) } }
            @if let Some(next) = &result.next { p { (w.tell(next)) } }
            (figures(&[
                Figure { label: &w.text("study-figure-share"), value: &share, note: &w.text(verdict) },
                Figure { label: &w.text("study-figure-classes"), value: &classes, note: &w.text("study-figure-classes-note") },
                Figure { label: &w.text("study-figure-noise"), value: &w.tell(&noise), note: &w.text("study-figure-noise-note") },
            ]))
            @if let Some(advice) = &view.recommended { p.small { (w.tell(advice)) } }
        }
        form.card method="post" action={ "/scales/studies/" (view.id) "/take-noise" } {
            p { (rich!(w, "study-states", |_, inner| html! { strong { (inner) } }, scale = gauge.name, noise = gauge.amount(gauge.noise_sd))) }
            div.actions { (button(&Button { label: &text!(w, "study-take", noise = noise), kind: ButtonKind::Quiet, ..Button::default() })) }
        }
        (section(&w.text("study-figures"), &html! {}, &html! {
            (figures_table(w, gauge, result))
            p.small { (text!(w, "study-about-figures", parts = view.plan.parts.len(), builders = view.plan.builders.join(", "),
                trials = view.plan.trials, begun_at = view.begun_at)) }
        }))
        div.actions { (link_button("/scales", &w.text("study-back"), ButtonKind::Quiet, None, "")) }
    }
}

/// Standard deviations of each source of spread, by either method.
fn figures_table(w: &Words, gauge: &Gauge, result: &StudyResult) -> Markup {
    let methods = [result.variance_analysis.as_ref(), Some(&result.average_range)];
    let row = |what: &str, of: &dyn Fn(&GaugeStudy) -> String| -> Vec<Cell> {
        let cells = methods.iter().map(|s| Cell::from(s.map_or_else(|| "–".to_owned(), of)));
        std::iter::once(Cell::from(w.text(what))).chain(cells).collect()
    };
    let sd = |value: f64| w.amount(amount_of(gauge.measures), value, 3);
    let rows = vec![
        row("study-row-equipment", &|s| sd(s.equipment)),
        row("study-row-appraiser", &|s| sd(s.appraiser)),
        row("study-row-interaction", &|s| sd(s.interaction)),
        row("study-row-gauge", &|s| sd(s.gauge)),
        row("study-row-part", &|s| sd(s.part)),
        row("study-row-total", &|s| sd(s.total)),
        row("study-row-share", &|s| w.amount(Amount::Share, s.gauge_percent / 100.0, 1)),
    ];
    let columns = vec![
        Column::words(w.text("study-column-what")),
        Column::figures(w.text("study-column-variance")),
        Column::figures(w.text("study-column-ranges")),
    ];
    words_cards(&w.text("study-caption"), columns, rows)
}

async fn take_noise(State(app): State<App>, Who(by): Who, Path(study): Path<String>) -> PageResult {
    app.take_noise(&study, &by).await?;
    Ok(go_to(&format!("/scales/studies/{study}?taken=1")).into_response())
}
