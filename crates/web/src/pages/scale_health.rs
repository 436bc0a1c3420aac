//! Scales: how each stands, its checks on a chart, whether it is trusted and why not, its calibration.

use super::entries::{Entries, capital, counted, go_to, in_address};
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::asked::Path;
use crate::reader::Reader;
use app::App;
use app::gauge_study::StudyView;
use app::scale_health::{CalibrationView, NewCalibration, ScaleHealth, TrustWord, WithReason};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use desk::scale_health::CheckChart;
use look::{
    Action, Button, ButtonKind, CheckChartView, CheckMark, Field, Figure, Notice, Tone, actions, button, check,
    check_chart, columns, definitions, field, figures, hidden, link_button, notice_block, section, tag,
};
use maud::{Markup, html};
use trade::gauge::Gauge;
use trade::gauge::print_error;
use trade::gauge::print_value;
use trade::id::EventId;
use trade::scale_event::Happened;
use trade::scale_event::ScaleEvent;
use trade::trust::TrustCause;
use words::Words;

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/scales", get(overview))
        .route("/scales/{scale}", get(show))
        .route("/scales/{scale}/trust", post(trust))
        .route("/scales/{scale}/calibrated", post(calibrated))
        .route("/scales/{scale}/anew", post(anew))
        .route("/scales/{scale}/take-back", post(take_back))
}

/// Decimals that show this gauge's errors.
fn decimals(gauge: &Gauge) -> u8 {
    if gauge.display_step >= 0.1 { 1 } else { 2 }
}

pub(super) fn state_tag(w: &Words, health: &ScaleHealth) -> Markup {
    if !health.trust.trusted {
        return tag(Tone::Bad, "not trusted");
    }
    match (health.standards.is_empty(), health.checked_today) {
        (true, _) => tag(Tone::Plain, "no check weight"),
        (false, true) => tag(Tone::Good, "checked today"),
        (false, false) => tag(Tone::Care, "not checked today"),
    }
}

async fn overview(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let all = app.scales_health().await?;
    let studies = app.studies().await?;
    let body = html! {
        div data-live="0" {
            (columns(&all.iter().map(|one| card(&w, one)).collect::<Vec<_>>()))
            (studies_part(&w, &studies))
            (actions(&[
                Action { href: "/scales/setup", label: "Weights and gauges", primary: false },
                Action { href: "/shop/scales", label: "Scales on a serial line", primary: false },
            ]))
        }
    };
    let page = framed(
        &w,
        &app,
        Framed { title: "Scales", crumb: "check weights, trust, gauge studies".into(), body, ..Framed::default() },
    );
    Ok(page.await?.into_response())
}

fn card(w: &Words, health: &ScaleHealth) -> Markup {
    let gauge = &health.gauge;
    html! {
        section.card {
            div.section-head { h2 { a href={ "/scales/" (in_address(&gauge.key)) } { (capital(&gauge.name)) } } (state_tag(w, health)) }
            @if !health.trust.trusted { p { strong { (health.trust.words) } } }
            @if let Some(chart) = health.charts.first() { (picture(w, health, chart, "card")) }
            p.small { (last_words(w, health)) }
            div.actions {
                @if !health.standards.is_empty() {
                    (link_button(&format!("/scales/{}/check", in_address(&gauge.key)), "Check it",
                        if health.checked_today { ButtonKind::Quiet } else { ButtonKind::Primary }, None, ""))
                } @else {
                    (link_button("/scales/setup", "Enter a check weight", ButtonKind::Quiet, None, ""))
                }
                (link_button(&format!("/scales/{}", in_address(&gauge.key)), "Look closer", ButtonKind::Quiet, None, ""))
            }
        }
    }
}

fn last_words(w: &Words, health: &ScaleHealth) -> String {
    match health.last_check.as_ref().and_then(|e| e.check().map(|c| (e, c))) {
        Some((event, read)) => format!(
            "Last check: {} for {}, {}, {}.",
            print_value(&health.gauge, read.reading),
            read.name,
            event.by,
            w.moment(event.at)
        ),
        None => "It was never checked.".into(),
    }
}

fn picture(w: &Words, health: &ScaleHealth, chart: &CheckChart, place: &str) -> Markup {
    let gauge = &health.gauge;
    let marks = chart
        .points
        .iter()
        .map(|point| {
            let mut words: Vec<&str> = point.patterns.iter().map(|p| TrustCause::from(*p).word()).collect();
            if !point.passed {
                words.insert(0, TrustCause::Tolerance.word());
            }
            CheckMark {
                error: point.error,
                range: point.range,
                speaks: !words.is_empty(),
                jump: point.jump,
                in_base: point.in_base,
                day: w.day(point.day),
                words: words.join("; "),
            }
        })
        .collect();
    check_chart(
        w,
        &CheckChartView {
            id: format!("checks-{place}-{}-{}", gauge.key, chart.standard),
            title: format!("What the {} shows too much with {}", gauge.name, chart.name),
            marks,
            tolerance: chart.tolerance,
            limits: chart.mean.zip(chart.lower.zip(chart.upper)).map(|(mean, (low, high))| (mean, low, high)),
            range_upper: chart.range_upper,
            unit: health.unit.clone(),
            decimals: decimals(gauge),
        },
    )
}

fn studies_part(w: &Words, studies: &[StudyView]) -> Markup {
    section(
        "Gauge studies",
        &html! { a.button.quiet href="/scales/studies/new" { "New study" } },
        &html! {
            @if studies.is_empty() {
                p.hint { "How much of the spread you see is the scale and the hands? Several parts, read by several builders, several times each." }
            }
            ul.plain { @for study in studies {
                li { a href={ "/scales/studies/" (study.id) } { (capital(&study.gauge.name)) ", " (w.moment(study.begun_at)) }
                    @match &study.result {
                        Some(result) => { ": " (format!("{:.0}", result.share_percent)) " % is the scale and the hands" }
                        None => { " " (tag(Tone::Care, &format!("{} of {} read", study.done, study.of))) }
                    } }
            } }
        },
    )
}

async fn show(
    State(app): State<App>,
    Reader(w): Reader,
    Path(scale): Path<String>,
    Query(asked): Query<Vec<(String, String)>>,
) -> PageResult {
    let health = app.scale_health(&scale).await?;
    let notice = if Entries::new(asked).has("kept", "1") { kept_notice(&w, &health) } else { None };
    page(&w, &app, &health, &Entries::default(), notice, StatusCode::OK).await
}

/// What the check that was just kept says.
fn kept_notice(w: &Words, health: &ScaleHealth) -> Option<Notice> {
    let read = health.last_check.as_ref()?.check()?;
    let gauge = &health.gauge;
    let text = match read.error() {
        error if error.abs() < 0.05 * gauge.display_step.max(0.001) => {
            format!("Kept: {}, as it should be.", print_value(gauge, read.reading))
        }
        error => format!(
            "Kept: {}, {} too {}.",
            print_value(gauge, read.reading),
            print_error(gauge, error),
            if error > 0.0 { "much" } else { "little" }
        ),
    };
    Some(if health.trust.trusted {
        Notice {
            tone: Tone::Good,
            text,
            next: "The scale is trusted. Jobs under way reckon with it from now on.".into(),
        }
    } else {
        Notice { tone: Tone::Bad, text, next: health.trust.words.clone() }
    })
}

async fn page(
    w: &Words,
    app: &App,
    health: &ScaleHealth,
    form: &Entries,
    notice: Option<Notice>,
    status: StatusCode,
) -> PageResult {
    let at = format!("/scales/{}", in_address(&health.gauge.key));
    let body = html! {
        div data-live="0" {
            div.actions {
                (state_tag(w, health))
                @if !health.standards.is_empty() {
                    (link_button(&format!("{at}/check"), "Check it", ButtonKind::Primary, None, "c"))
                }
            }
            @if !health.clock.is_empty() { (notice_block(Tone::Care, &format!("{}.", health.clock), "")) }
            (trust_part(w, health, &at))
            (figures_part(w, health))
            @for chart in &health.charts {
                (section(&capital(&chart.name), &html! { span.small { (counted(chart.points.len(), "check")) } },
                    &html! { div.card { (picture(w, health, chart, "own")) } }))
            }
            @if health.charts.is_empty() {
                p.hint { "No check since its chart was begun. " @if health.standards.is_empty() { "It has nothing to be checked with yet: " a href="/scales/setup" { "enter a check weight" } "." } }
            }
            (calibration_part(w, health, form, &at))
            (events_part(w, health, &at))
            (words_part(w, health, &at))
        }
    };
    let title = capital(&health.gauge.name);
    let crumb = format!("scales · {}", health.gauge.measures.word());
    let notice = form.notice(w).or(notice);
    let page = framed(w, app, Framed { title: &title, crumb, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

/// What speaks against the scale, and how it is trusted again.
fn trust_part(w: &Words, health: &ScaleHealth, at: &str) -> Markup {
    let trust = &health.trust;
    if trust.trusted {
        return html! {};
    }
    let overdue_only = trust.reasons.iter().all(|r| r.cause == TrustCause::Overdue);
    html! {
        section.card {
            p { strong { (trust.words) } }
            ul.plain { @for reason in &trust.reasons { li { (capital(&reason.words)) "." } } }
            p.small { "Until then its readings count with ± " (print_error(&health.gauge, 2.0 * trust.extra_sd)) " more." }
            @if !overdue_only {
                form method="post" action={ (at) "/trust" } {
                    (hidden("trusted", "1"))
                    (field(&Field { name: "reason", id: "trust-reason", required: true,
                        label: if trust.passed.is_some() { "What was done" } else { "Why it is right all the same" },
                        hint: if trust.passed.is_some() { "For example: levelled, zeroed anew. Stands in the list with your name" }
                            else { "No check was passed since: this is your word, and stands in the list with your name" },
                        ..Field::default() }))
                    div.actions { (button(&Button {
                        label: if trust.passed.is_some() { "It passed: trust it again" } else { "Trust it on my word" },
                        kind: if trust.passed.is_some() { ButtonKind::Primary } else { ButtonKind::Danger },
                        ..Button::default() })) }
                }
            }
        }
    }
}

fn figures_part(w: &Words, health: &ScaleHealth) -> Markup {
    let (gauge, places) = (&health.gauge, decimals(&health.gauge));
    let fine = places.max(2);
    let unit = &health.unit;
    let band = |value: f64| w.signed(value, fine).trim_start_matches('+').to_owned();
    let mut texts: Vec<(&str, String, String)> = Vec::new();
    if let Some(offset) = &health.offset {
        texts.push((
            "shows too much",
            format!("{} {unit}", w.signed(offset.offset, fine)),
            format!("± {}, from {}", band(offset.offset_band), counted(offset.checks, "check")),
        ));
        if let Some((drift, width)) = offset.drift_per_day.zip(offset.drift_per_day_band) {
            texts.push((
                "grows in a week by",
                format!("{} {unit}", w.signed(7.0 * drift, fine)),
                format!("± {}{}", band(7.0 * width), if offset.drifts { "" } else { ": none to speak of" }),
            ));
        }
    }
    if let Some(belief) = &health.belief {
        texts.push((
            "jobs reckon with",
            format!("{} {unit}", w.signed(belief.offset, fine)),
            match belief.checks {
                0 => format!("± {}, without a check of today", band(belief.offset_band)),
                checks => format!(
                    "± {} with {} of today, ± {} without",
                    band(belief.offset_band),
                    counted(checks, "check"),
                    band(belief.without_checks_band)
                ),
            },
        ));
    }
    texts.push(("scatters by", print_error(gauge, gauge.noise_sd), "one re-seated reading, as stated".into()));
    let views: Vec<Figure<'_>> = texts.iter().map(|(label, value, note)| Figure { label, value, note }).collect();
    html! { div.card { (figures(&views)) } }
}

fn calibration_part(w: &Words, health: &ScaleHealth, form: &Entries, at: &str) -> Markup {
    let standards: Vec<Markup> = health
        .standards
        .iter()
        .map(|s| {
            let certified = s.certified_on.map_or_else(String::new, |on| format!(", of {}", w.date(on)));
            html! { li { (s.name) ": " (print_value(&health.gauge, s.value)) " ± " (print_error(&health.gauge, 2.0 * s.sd))
                span.small { (certified) @if !s.certificate.is_empty() { ", " (s.certificate) }
                    "; may be off by " (print_error(&health.gauge, s.tolerance_on(&health.gauge))) } } }
        })
        .collect();
    section(
        "Calibration and check weights",
        &html! { a.button.quiet href="/scales/setup" { "Weights" } },
        &html! {
            @match &health.calibration {
                Some(last) => (calibration_words(w, last)),
                None => p.hint { "No calibration entered yet." },
            }
            @if !standards.is_empty() { ul.plain { @for standard in &standards { (standard) } } }
            details open[form.notice(w).is_some()] { summary { "Enter a calibration" }
                form.card method="post" action={ (at) "/calibrated" } {
                    div.fields {
                        (form.field("on", "Calibrated on", Field { kind: "date", required: true, ..Field::default() }))
                        (form.field("by_whom", "By whom", Field { required: true, hint: "The laboratory, or who did it here", ..Field::default() }))
                        (form.field("next_due", "Due again on", Field { kind: "date", hint: "Empty: never asked for", ..Field::default() }))
                        (form.field("note", "Certificate, note", Field::default()))
                    }
                    (check("adjusted", "1", "It was adjusted: begin its chart anew", form.has("adjusted", "1")))
                    div.actions { (button(&Button { label: "Keep the calibration", ..Button::default() })) }
                }
            }
        },
    )
}

fn calibration_words(w: &Words, last: &CalibrationView) -> Markup {
    definitions(&[
        (
            "Calibrated",
            html! { (w.date(last.on)) ", " (last.by_whom) @if !last.note.is_empty() { span.small { " " (last.note) } } },
        ),
        (
            "Due again",
            html! { @match last.next_due {
                Some(due) => { (w.date(due)) @if last.overdue { " " (tag(Tone::Bad, "overdue")) } }
                None => "not said",
            } },
        ),
    ])
}

fn events_part(w: &Words, health: &ScaleHealth, at: &str) -> Markup {
    if health.events.is_empty() {
        return html! {};
    }
    let back = |id: &EventId| {
        health.events.iter().any(|e| matches!(&e.what, Happened::TakenBack { check, .. } if check == id))
    };
    // Who mistyped says so at once; an old check is taken back through the API.
    let newest: Vec<&EventId> = health.events.iter().filter(|e| e.check().is_some()).take(3).map(|e| &e.id).collect();
    let row = |event: &ScaleEvent| {
        let gone = back(&event.id);
        html! {
            li.struck[gone] {
                span { (event_words(w, &health.gauge, event)) }
                span.small { " " (event.by) ", " (w.moment(event.at)) }
                @if event.check().is_some_and(|c| c.job.is_none()) && !gone && newest.contains(&&event.id) {
                    details { summary { "That was wrong" }
                        form.inline method="post" action={ (at) "/take-back" } {
                            (hidden("check", event.id.as_str()))
                            (field(&Field { name: "reason", id: &format!("back-{}", event.id), label: "Why", required: true, ..Field::default() }))
                            (button(&Button { label: "Take it back", kind: ButtonKind::Quiet, ..Button::default() }))
                        }
                    }
                }
            }
        }
    };
    let (recent, older) = health.events.split_at(health.events.len().min(8));
    section(
        "What happened",
        &html! {},
        &html! {
            ul.plain.readings { @for event in recent { (row(event)) } }
            @if !older.is_empty() {
                details { summary { "Earlier" } ul.plain.readings { @for event in older { (row(event)) } } }
            }
        },
    )
}

fn event_words(w: &Words, gauge: &Gauge, event: &ScaleEvent) -> Markup {
    html! {
        @match &event.what {
            Happened::Check(read) => {
                (read.name) ": " strong { (print_value(gauge, read.reading)) }
                @if !read.passed() { " " (tag(Tone::Bad, "outside")) }
                @if let Some(question) = &read.kept_though { " " (tag(Tone::Care, "kept as it is")) span.small { " " (capital(question)) } }
                @if read.job.is_some() { span.small { " at the bench" } }
            }
            Happened::TakenBack { reason, .. } => { "A check was taken back: " (reason) }
            Happened::Calibrated { on, by_whom, adjusted, .. } => { "Calibrated on " (w.date(*on)) " by " (by_whom) @if *adjusted { ", adjusted: its chart begins anew" } }
            Happened::Distrusted { reason, .. } => { (tag(Tone::Bad, "not trusted")) " " (capital(reason)) }
            Happened::Trusted { reason, check } => { (tag(Tone::Good, "trusted again")) " " (reason) @if check.is_none() { span.small { " on this word alone" } } }
            Happened::NewBase { reason } => { "Its chart begins anew: " (reason) }
            Happened::NoiseTaken { noise_sd, before_sd, .. } => { "Its scatter is stated as " (print_error(gauge, *noise_sd)) " after a gauge study, before " (print_error(gauge, *before_sd)) }
        }
    }
}

/// What may be said of a scale without a check.
fn words_part(w: &Words, health: &ScaleHealth, at: &str) -> Markup {
    let told = health.trust.reasons.iter().any(|r| r.cause != TrustCause::Overdue);
    html! {
        @if !told {
            details { summary { "Do not trust it" }
                form.card method="post" action={ (at) "/trust" } {
                    (hidden("trusted", "0"))
                    (field(&Field { name: "reason", id: "distrust-reason", label: "What was seen", hint: "For example: dropped, does not come back to zero", required: true, ..Field::default() }))
                    div.actions { (button(&Button { label: "Do not trust it", kind: ButtonKind::Danger, ..Button::default() })) }
                }
            }
        }
        @if !health.charts.is_empty() {
            details { summary { "Begin its chart anew" }
                form.card method="post" action={ (at) "/anew" } {
                    (field(&Field { name: "reason", id: "anew-reason", label: "Why", hint: "For example: moved to the other bench. Earlier checks stay in the list", required: true, ..Field::default() }))
                    div.actions { (button(&Button { label: "Begin anew", kind: ButtonKind::Quiet, ..Button::default() })) }
                }
            }
        }
    }
}

type Done = Result<ScaleHealth, app::AppError>;

async fn answered(w: &Words, app: &App, scale: &str, form: &Entries, done: Done) -> PageResult {
    match done {
        Ok(_) => Ok(go_to(&format!("/scales/{}", in_address(scale))).into_response()),
        Err(error) => {
            let health = app.scale_health(scale).await?;
            page(w, app, &health, form, Some(failure(w, &error)), failure_status(&error)).await
        }
    }
}

async fn trust(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(scale): Path<String>,
    Form(sent): Form<Vec<(String, String)>>,
) -> PageResult {
    let form = Entries::new(sent);
    let word = TrustWord { trusted: form.has("trusted", "1"), reason: form.text("reason").to_owned(), by };
    let done = app.word_on_scale(&scale, &word).await;
    answered(&w, &app, &scale, &Entries::default(), done).await
}

async fn calibrated(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(scale): Path<String>,
    Form(sent): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(sent);
    let on = form.date(&w, "on");
    let on = form.needed("on", on, "Enter the day");
    let next_due = form.date(&w, "next_due");
    let by_whom = form.text("by_whom").to_owned();
    let Some(on) = on.filter(|_| form.is_sound()) else {
        let health = app.scale_health(&scale).await?;
        return page(&w, &app, &health, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    };
    let new = NewCalibration {
        on,
        by_whom,
        next_due,
        note: form.text("note").to_owned(),
        adjusted: form.has("adjusted", "1"),
        by,
    };
    let done = app.calibrated(&scale, &new).await;
    answered(&w, &app, &scale, &form, done).await
}

async fn anew(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(scale): Path<String>,
    Form(sent): Form<Vec<(String, String)>>,
) -> PageResult {
    let word = WithReason { reason: Entries::new(sent).text("reason").to_owned(), by };
    let done = app.chart_anew(&scale, &word).await;
    answered(&w, &app, &scale, &Entries::default(), done).await
}

async fn take_back(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(scale): Path<String>,
    Form(sent): Form<Vec<(String, String)>>,
) -> PageResult {
    let form = Entries::new(sent);
    let word = WithReason { reason: form.text("reason").to_owned(), by };
    let done = app.take_back_check(&scale, &EventId(form.text("check").to_owned()), &word).await;
    answered(&w, &app, &scale, &Entries::default(), done).await
}
