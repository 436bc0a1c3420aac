//! The gauge study at the bench: one reading a screen, then what it found.

use super::beside_its_entry;
use super::entries::{Entries, go_to};
use super::scale_check::{live_name, what_it_shows};
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::asked::Path;
use crate::reader::Reader;
use app::App;
use app::gauge_study::{NewStudy, NewStudyReading, StudyTurn, StudyView};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use desk::scale_health::Category;
use desk::scale_health::GaugeStudy;
use desk::scale_health::StudyResult;
use look::{
    Button, ButtonKind, Cell, Column, Field, Figure, Notice, Table, Tone, button, figures, hidden, link_button,
    request_key, section, table,
};
use maud::{Markup, html};
use quantity::decimal;
use trade::gauge::print_error;
use words::Words;

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
        p { "Several parts, each read several times by several builders, in an order that nobody can foresee. It shows how much of the spread you see is the scale and the hands. It can be stopped and gone on with at any time." }
        form.card method="post" action="/scales/studies/new" {
            (request_key(&key))
            div.fields {
                (form.select("scale", "Scale", "", &choices))
                (form.field("trials", "How often each reads each part", Field { inputmode: "numeric", required: true, hint: "2 to 5; 3 is recommended", ..Field::default() }))
            }
            (form.area("builders", "Who reads", 3, Field { required: true, hint: "A name a line, 2 to 5; 3 are recommended. Alone? Yourself in the morning and yourself in the evening", ..Field::default() }))
            (form.area("parts", "Parts", 6, Field { required: true, hint: "A code or a number a line, 5 to 20; 10 are recommended, as different from each other as your stock is. Mark them so that the figure read cannot be seen", ..Field::default() }))
            div.actions { (button(&Button { label: "Begin", ..Button::default() })) }
        }
    };
    let view = Framed {
        title: "New gauge study",
        crumb: "scales".into(),
        notice: form.notice(w).or(notice),
        body,
        ..Framed::default()
    };
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
    let trials = form.needed("trials", trials, "A whole number is needed");
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
    question: Option<&str>,
    status: StatusCode,
) -> PageResult {
    let again = form.text("place").parse::<usize>().ok().and_then(|place| turn_at(view, place));
    let body = match (again.as_ref().or(view.next.as_ref()), &view.result) {
        (Some(turn), _) => entry(w, view, turn, form, question.is_some()),
        (None, Some(result)) => found(w, view, result),
        (None, None) => html! {},
    };
    let notice = question.map(|q| Notice { tone: Tone::Care, text: q.to_owned(), next: String::new() });
    let notice = form.notice(w).or(notice).or_else(|| {
        form.has("taken", "1").then(|| Notice {
            tone: Tone::Good,
            text: "Taken over: the scale states this scatter from now on.".into(),
            next: String::new(),
        })
    });
    let crumb = format!("{} · {} of {} read", view.gauge.name, view.done, view.of);
    let at_bench = view.next.is_some();
    let page = framed(w, app, Framed { title: "Gauge study", crumb, notice, at_bench, body, ..Framed::default() });
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
        progress.study-progress value=(view.done) max=(view.of) aria-label="How far it is" {}
        form.card.bench-decision.decision method="post" action={ "/scales/studies/" (view.id) } data-keep={ "study, " (turn.part) } data-queue {
            (request_key(&key)) (hidden("place", &turn.place.to_string())) (hidden("what", live_name(w, gauge.measures)))
            p.turn { (turn.builder) " reads " strong { (turn.part) } }
            @if asked { (hidden("asked_about", typed)) div.answers {
                (button(&Button { label: &format!("Keep “{typed}” as it is"), kind: ButtonKind::Danger, name: "confirmed", value: "1", ..Button::default() }))
            } }
            div.entry-row {
                (what_it_shows(w, form, gauge.measures, !asked))
                (button(&Button { label: "Keep", big: true, ..Button::default() }))
            }
            p.hint { "Reading " (turn.place + 1) " of " (view.of) ". What it read before is not shown on purpose. Stop whenever you like: the study waits under Scales." }
        }
        div.actions {
            @if let Some(last) = view.last.as_ref().filter(|last| last.place != turn.place) {
                (link_button(&format!("/scales/studies/{}?place={}", view.id, last.place), &format!("{} again: that was wrong", last.part), ButtonKind::Quiet, None, "z"))
            }
            (link_button("/scales", "Stop here", ButtonKind::Quiet, None, ""))
        }
        @if !view.recommended.is_empty() { p.small { (view.recommended) } }
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
    let new = NewStudyReading {
        place,
        typed: form.text("typed").to_owned(),
        // A new entry after a question is a new entry, whichever button Enter has pressed.
        confirmed: form.has("confirmed", "1") && form.text("asked_about") == form.text("typed"),
        by,
        request_key: form.some("request_key"),
    };
    match app.read_study(&study, &new).await {
        Ok(answer) if answer.kept => Ok(go_to(&format!("/scales/studies/{study}")).into_response()),
        Ok(answer) => {
            let status = StatusCode::UNPROCESSABLE_ENTITY;
            study_page(&w, &app, &answer.study, &form, Some(&answer.question), status).await
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
    let share = format!("{} %", decimal(result.share_percent, 0));
    let classes = if result.classes > 99 { "more than 99".to_owned() } else { result.classes.to_string() };
    let verdict = match result.category {
        Category::Good => "good: below 10 %",
        Category::Usable => "usable: 10 to 30 %",
        Category::Poor => "poor: above 30 %",
    };
    let noise = print_error(gauge, result.noise_sd);
    let columns: Vec<(&str, Option<&GaugeStudy>)> = vec![
        ("by analysis of variance", result.variance_analysis.as_ref()),
        ("by averages and ranges", Some(&result.average_range)),
    ];
    let row = |what: &str, of: &dyn Fn(&GaugeStudy) -> String| -> Vec<Cell> {
        let cells = columns.iter().map(|(_, s)| Cell::from(s.map_or_else(|| "–".to_owned(), of)));
        std::iter::once(Cell::from(what.to_owned())).chain(cells).collect()
    };
    let sd = |value: f64| format!("{} {}", decimal(value, 3), gauge.measures.unit());
    let rows = vec![
        row("one hand's repeats", &|s| sd(s.equipment)),
        row("between the hands", &|s| sd(s.appraiser)),
        row("hands that differ from part to part", &|s| sd(s.interaction)),
        row("scale and hands together", &|s| sd(s.gauge)),
        row("between the parts", &|s| sd(s.part)),
        row("everything", &|s| sd(s.total)),
        row("share of scale and hands", &|s| format!("{} %", decimal(s.gauge_percent, 1))),
    ];
    let heads = ["what", "by analysis of variance", "by averages and ranges"];
    html! {
        div.card {
            p { strong { (result.words) } }
            @if !result.next.is_empty() { p { (result.next) } }
            (figures(&[
                Figure { label: "scale and hands", value: &share, note: verdict },
                Figure { label: "classes told apart", value: &classes, note: "5 or more are wanted" },
                Figure { label: "one reading scatters by", value: &noise, note: "rounding taken off" },
            ]))
            @if !view.recommended.is_empty() { p.small { (view.recommended) } }
        }
        form.card method="post" action={ "/scales/studies/" (view.id) "/take-noise" } {
            p { "The " (gauge.name) " states a scatter of " strong { (print_error(gauge, gauge.noise_sd)) } ". Forecasts reckon with what is stated." }
            div.actions { (button(&Button { label: &format!("State {noise} from now on"), kind: ButtonKind::Quiet, ..Button::default() })) }
        }
        (section("The figures", &html! {}, &html! {
            (table(&Table {
                caption: "What the study found",
                columns: heads.iter().enumerate().map(|(i, head)| Column { head: (*head).into(), figures: i > 0 }).collect(),
                rows,
                cards: true,
                ..Table::default()
            }))

            p.small { "Figures are standard deviations. Spreads add up like the sides of a right triangle, so the shares do not add up to 100 %. "
                (view.plan.parts.len()) " parts, " (view.plan.builders.join(", ")) ", each " (view.plan.trials) " times, begun " (w.moment(view.begun_at)) "." }
        }))
        div.actions { (link_button("/scales", "Scales", ButtonKind::Quiet, None, "")) }
    }
}

async fn take_noise(State(app): State<App>, Reader(w): Reader, Who(by): Who, Path(study): Path<String>) -> PageResult {
    app.take_noise(&study, &by).await?;
    Ok(go_to(&format!("/scales/studies/{study}?taken=1")).into_response())
}
