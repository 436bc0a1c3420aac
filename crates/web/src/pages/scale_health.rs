//! Scales: how each stands, its checks on a chart, whether it is trusted and why not, its calibration.

use super::entries::{Entries, go_to, in_address};
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
    check_chart, columns, definitions, field, figures, hidden, link_button, notice_block, rich, section, tag,
};
use maud::{Markup, html};
use trade::gauge::{Gauge, Measures, Standard};
use trade::id::EventId;
use trade::scale_event::Happened;
use trade::scale_event::ScaleEvent;
use trade::trust::TrustCause;
use words::{Amount, Words, text};

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

/// What sort of figure an error of such an instrument is.
#[must_use]
pub const fn amount_of(measures: Measures) -> Amount {
    match measures {
        Measures::Mass => Amount::Mass,
        Measures::SwingWeight => Amount::Points,
        Measures::Frequency => Amount::Frequency,
        Measures::Angle => Amount::Angle,
        Measures::Length | Measures::Diameter => Amount::Length,
    }
}

pub(super) fn state_tag(w: &Words, health: &ScaleHealth) -> Markup {
    if !health.trust.trusted {
        return tag(Tone::Bad, &w.text("scale-state-not-trusted"));
    }
    match (health.standards.is_empty(), health.checked_today) {
        (true, _) => tag(Tone::Plain, &w.text("scale-state-no-weight")),
        (false, true) => tag(Tone::Good, &w.text("scale-state-checked")),
        (false, false) => tag(Tone::Care, &w.text("scale-state-not-checked")),
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
                Action { href: "/scales/setup", label: &w.text("scale-health-setup"), primary: false },
                Action { href: "/shop/scales", label: &w.text("scale-health-serial"), primary: false },
            ]))
        }
    };
    let (title, crumb) = (w.text("scale-health-title"), w.text("scale-health-crumb"));
    let page = framed(&w, &app, Framed { title: &title, crumb, body, help: Some("scales"), ..Framed::default() });
    Ok(page.await?.into_response())
}

fn card(w: &Words, health: &ScaleHealth) -> Markup {
    let gauge = &health.gauge;
    let at = format!("/scales/{}", in_address(&gauge.key));
    html! {
        section.card {
            div.section-head { h2 { a href=(at) { (words::capital(&gauge.name)) } } (state_tag(w, health)) }
            @if let Some(said) = &health.trust.said { p { strong { (w.tell(said)) } } }
            @if let Some(chart) = health.charts.first() { (picture(w, health, chart, "card")) }
            p.small { (last_check(w, health)) }
            div.actions {
                @if !health.standards.is_empty() {
                    (link_button(&format!("{at}/check"), &w.text("scale-health-check"),
                        if health.checked_today { ButtonKind::Quiet } else { ButtonKind::Primary }, None, ""))
                } @else {
                    (link_button("/scales/setup", &w.text("scale-health-enter-weight"), ButtonKind::Quiet, None, ""))
                }
                (link_button(&at, &w.text("scale-health-closer"), ButtonKind::Quiet, None, ""))
            }
        }
    }
}

fn last_check(w: &Words, health: &ScaleHealth) -> String {
    match health.last_check.as_ref().and_then(|e| e.check().map(|c| (e, c))) {
        Some((event, read)) => {
            let reading = health.gauge.reading(read.reading);
            text!(w, "scale-health-last", reading = reading, standard = read.name, by = event.by, checked_at = event.at)
        }
        None => w.text("scale-health-never"),
    }
}

fn picture(w: &Words, health: &ScaleHealth, chart: &CheckChart, place: &str) -> Markup {
    let gauge = &health.gauge;
    let marks = chart
        .points
        .iter()
        .map(|point| {
            let mut causes: Vec<TrustCause> = point.patterns.iter().map(|p| TrustCause::from(*p)).collect();
            if !point.passed {
                causes.insert(0, TrustCause::Tolerance);
            }
            CheckMark {
                error: point.error,
                range: point.range,
                speaks: !causes.is_empty(),
                jump: point.jump,
                in_base: point.in_base,
                day: w.day(point.day),
                words: causes.iter().map(|cause| w.tell(cause)).collect::<Vec<_>>().join("; "),
            }
        })
        .collect();
    check_chart(
        w,
        &CheckChartView {
            id: format!("checks-{place}-{}-{}", gauge.key, chart.standard),
            title: text!(w, "check-chart-title", scale = gauge.name, standard = chart.name),
            marks,
            tolerance: chart.tolerance,
            limits: chart.mean.zip(chart.lower.zip(chart.upper)).map(|(mean, (low, high))| (mean, low, high)),
            range_upper: chart.range_upper,
            amount: Some(amount_of(gauge.measures)),
            decimals: decimals(gauge),
        },
    )
}

fn studies_part(w: &Words, studies: &[StudyView]) -> Markup {
    let one = |study: &StudyView| {
        let link = |_: &str, inner: &str| html! { a href={ "/scales/studies/" (study.id) } { (inner) } };
        match &study.result {
            Some(result) => rich!(
                w,
                "scale-health-study-found",
                link,
                scale = study.gauge.name,
                begun_at = study.begun_at,
                gauge_share = result.share_percent / 100.0
            ),
            None => html! {
                (rich!(w, "scale-health-study-open", link, scale = study.gauge.name, begun_at = study.begun_at)) " "
                (tag(Tone::Care, &text!(w, "scale-health-study-read", done = study.done, of = study.of)))
            },
        }
    };
    section(
        &w.text("scale-health-studies"),
        &html! { a.button.quiet href="/scales/studies/new" { (w.text("scale-health-new-study")) } },
        &html! {
            @if studies.is_empty() { p.hint { (w.text("scale-health-studies-about")) } }
            ul.plain { @for study in studies { li { (one(study)) } } }
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
    let (reading, by) = (gauge.reading(read.reading), gauge.amount(read.error()));
    let text = match read.error() {
        error if error.abs() < 0.05 * gauge.display_step.max(0.001) => {
            text!(w, "scale-health-kept-right", reading = reading)
        }
        error if error > 0.0 => text!(w, "scale-health-kept-much", reading = reading, by = by),
        _ => text!(w, "scale-health-kept-little", reading = reading, by = by),
    };
    Some(match &health.trust.said {
        None => Notice { tone: Tone::Good, text, next: w.text("scale-health-kept-next") },
        Some(said) => Notice { tone: Tone::Bad, text, next: w.tell(said) },
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
    let no_checks = if health.standards.is_empty() {
        rich!(w, "scale-health-no-checks-no-weight", |_, inner| html! { a href="/scales/setup" { (inner) } })
    } else {
        html! { (w.text("scale-health-no-checks")) }
    };
    let body = html! {
        div data-live="0" {
            div.actions {
                (state_tag(w, health))
                @if !health.standards.is_empty() {
                    (link_button(&format!("{at}/check"), &w.text("scale-health-check"), ButtonKind::Primary, None, "c"))
                }
            }
            @if let Some(clock) = &health.clock { (notice_block(Tone::Care, &w.tell(clock), "")) }
            (trust_part(w, health, &at))
            (figures_part(w, health))
            @for chart in &health.charts {
                (section(&words::capital(&chart.name), &html! { span.small { (text!(w, "scale-health-checks", n = chart.points.len())) } },
                    &html! { div.card { (picture(w, health, chart, "own")) } }))
            }
            @if health.charts.is_empty() { p.hint { (no_checks) } }
            (calibration_part(w, health, form, &at))
            (events_part(w, health, &at))
            (words_part(w, health, &at))
        }
    };
    let title = words::capital(&health.gauge.name);
    let crumb = text!(w, "scale-health-crumb-one", measures = health.gauge.measures);
    let notice = form.notice(w).or(notice);
    let page = framed(w, app, Framed { title: &title, crumb, notice, body, help: Some("scales"), ..Framed::default() })
        .await?;
    Ok((status, page).into_response())
}

/// What speaks against the scale, and how it is trusted again.
fn trust_part(w: &Words, health: &ScaleHealth, at: &str) -> Markup {
    let trust = &health.trust;
    let Some(said) = &trust.said else { return html! {} };
    let overdue_only = trust.reasons.iter().all(|r| r.cause == TrustCause::Overdue);
    let (label, hint, act, kind) = if trust.passed.is_some() {
        ("scale-health-done", "scale-health-done-hint", "scale-health-trust", ButtonKind::Primary)
    } else {
        ("scale-health-word", "scale-health-word-hint", "scale-health-trust-word", ButtonKind::Danger)
    };
    html! {
        section.card {
            p { strong { (w.tell(said)) } }
            ul.plain { @for reason in &trust.reasons { li { (w.sentence(&reason.finding)) } } }
            p.small { (text!(w, "scale-health-until-then", by = health.gauge.amount(2.0 * trust.extra_sd))) }
            @if !overdue_only {
                form method="post" action={ (at) "/trust" } {
                    (hidden("trusted", "1"))
                    (field(&Field { name: "reason", id: "trust-reason", required: true, label: &w.text(label), hint: &w.text(hint), ..Field::default() }))
                    div.actions { (button(&Button { label: &w.text(act), kind, ..Button::default() })) }
                }
            }
        }
    }
}

fn figures_part(w: &Words, health: &ScaleHealth) -> Markup {
    let (gauge, amount) = (&health.gauge, amount_of(health.gauge.measures));
    let fine = decimals(gauge).max(2);
    let band = |value: f64| w.amount_figure(amount, value, fine);
    let signed = |value: f64| w.signed_amount(amount, value, fine);
    let mut texts: Vec<(String, String, String)> = Vec::new();
    if let Some(offset) = &health.offset {
        let note = text!(w, "scale-health-figure-error-note", band = band(offset.offset_band), n = offset.checks);
        texts.push((w.text("scale-health-figure-error"), signed(offset.offset), note));
        if let Some((drift, width)) = offset.drift_per_day.zip(offset.drift_per_day_band) {
            let note = if offset.drifts {
                text!(w, "scale-health-figure-drift-note", band = band(7.0 * width))
            } else {
                text!(w, "scale-health-figure-no-drift-note", band = band(7.0 * width))
            };
            texts.push((w.text("scale-health-figure-drift"), signed(7.0 * drift), note));
        }
    }
    if let Some(belief) = &health.belief {
        let (own, without) = (band(belief.offset_band), band(belief.without_checks_band));
        let note = match belief.checks {
            0 => text!(w, "scale-health-figure-jobs-unchecked", band = own),
            n => text!(w, "scale-health-figure-jobs-checked", band = own, n = n, without = without),
        };
        texts.push((w.text("scale-health-figure-jobs"), signed(belief.offset), note));
    }
    let scatter = w.tell(&gauge.amount(gauge.noise_sd));
    texts.push((w.text("scale-health-figure-scatter"), scatter, w.text("scale-health-figure-scatter-note")));
    let views: Vec<Figure<'_>> = texts.iter().map(|(label, value, note)| Figure { label, value, note }).collect();
    html! { div.card { (figures(&views)) } }
}

fn calibration_part(w: &Words, health: &ScaleHealth, form: &Entries, at: &str) -> Markup {
    let gauge = &health.gauge;
    let standard = |s: &Standard| {
        let (value, sd) = (gauge.reading(s.value), gauge.amount(2.0 * s.sd));
        let mut notes: Vec<String> = Vec::new();
        notes.extend(s.certified_on.map(|on| text!(w, "scale-health-standard-of", certified_on = on)));
        notes.extend(Some(s.certificate.clone()).filter(|c| !c.is_empty()));
        notes.push(text!(w, "scale-health-standard-allowed", allowed = gauge.amount(s.tolerance_on(gauge))));
        html! { li { (text!(w, "scale-health-standard", standard = s.name, value = value, sd = sd)) " "
        span.small { (notes.join("; ")) } } }
    };
    section(
        &w.text("scale-health-calibration"),
        &html! { a.button.quiet href="/scales/setup" { (w.text("scale-health-weights")) } },
        &html! {
            @match &health.calibration {
                Some(last) => (calibration_words(w, last)),
                None => p.hint { (w.text("scale-health-no-calibration")) },
            }
            @if !health.standards.is_empty() { ul.plain { @for s in &health.standards { (standard(s)) } } }
            details open[form.notice(w).is_some()] { summary { (w.text("scale-health-enter-calibration")) }
                form.card method="post" action={ (at) "/calibrated" } {
                    div.fields {
                        (form.field("on", &w.text("scale-health-calibrated-on"), Field { kind: "date", required: true, ..Field::default() }))
                        (form.field("by_whom", &w.text("scale-health-by-whom"), Field { required: true, hint: &w.text("scale-health-by-whom-hint"), ..Field::default() }))
                        (form.field("next_due", &w.text("scale-health-next-due"), Field { kind: "date", hint: &w.text("scale-health-next-due-hint"), ..Field::default() }))
                        (form.field("note", &w.text("scale-health-note"), Field::default()))
                    }
                    (check("adjusted", "1", &w.text("scale-health-adjusted"), form.has("adjusted", "1")))
                    div.actions { (button(&Button { label: &w.text("scale-health-keep-calibration"), ..Button::default() })) }
                }
            }
        },
    )
}

fn calibration_words(w: &Words, last: &CalibrationView) -> Markup {
    definitions(&[
        (
            w.text("scale-health-calibrated"),
            html! {
                (text!(w, "scale-health-calibrated-by", calibrated_on = last.on, by = last.by_whom))
                @if !last.note.is_empty() { span.small { " " (last.note) } }
            },
        ),
        (
            w.text("scale-health-due"),
            html! { @match last.next_due {
                Some(due) => { (w.date(due)) @if last.overdue { " " (tag(Tone::Bad, &w.text("scale-health-overdue"))) } }
                None => (w.text("scale-health-not-said")),
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
                span.small { " " (text!(w, "scale-health-event-by", by = event.by, happened_at = event.at)) }
                @if event.check().is_some_and(|c| c.job.is_none()) && !gone && newest.contains(&&event.id) {
                    details { summary { (w.text("scale-health-wrong")) }
                        form.inline method="post" action={ (at) "/take-back" } {
                            (hidden("check", event.id.as_str()))
                            (field(&Field { name: "reason", id: &format!("back-{}", event.id), label: &w.text("scale-health-why"), required: true, ..Field::default() }))
                            (button(&Button { label: &w.text("scale-health-take-back"), kind: ButtonKind::Quiet, ..Button::default() }))
                        }
                    }
                }
            }
        }
    };
    let (recent, older) = health.events.split_at(health.events.len().min(8));
    section(
        &w.text("scale-health-events"),
        &html! {},
        &html! {
            ul.plain.readings { @for event in recent { (row(event)) } }
            @if !older.is_empty() {
                details { summary { (w.text("scale-health-earlier")) }
                    ul.plain.readings { @for event in older { (row(event)) } } }
            }
        },
    )
}

fn event_words(w: &Words, gauge: &Gauge, event: &ScaleEvent) -> Markup {
    html! {
        @match &event.what {
            Happened::Check(read) => {
                (rich!(w, "scale-health-event-check", |_, inner| html! { strong { (inner) } },
                    standard = read.name, reading = gauge.reading(read.reading)))
                @if !read.passed() { " " (tag(Tone::Bad, &w.text("scale-health-event-outside"))) }
                @if let Some(question) = &read.kept_though {
                    " " (tag(Tone::Care, &w.text("scale-health-event-as-it-is"))) span.small { " " (w.sentence(question)) }
                }
                @if read.job.is_some() { span.small { " " (w.text("scale-health-event-bench")) } }
            }
            Happened::TakenBack { reason, .. } => (text!(w, "scale-health-event-taken-back", reason = reason)),
            Happened::Calibrated { on, by_whom, adjusted: true, .. } =>
                (text!(w, "scale-health-event-adjusted", calibrated_on = on, by = by_whom)),
            Happened::Calibrated { on, by_whom, .. } =>
                (text!(w, "scale-health-event-calibrated", calibrated_on = on, by = by_whom)),
            Happened::Distrusted { reason, .. } => {
                (tag(Tone::Bad, &w.text("scale-state-not-trusted"))) " " (words::capital(&w.tell(reason)))
            }
            Happened::Trusted { reason, check } => {
                (tag(Tone::Good, &w.text("scale-health-event-trusted"))) " " (w.tell(reason))
                @if check.is_none() { span.small { " " (w.text("scale-health-event-word")) } }
            }
            Happened::NewBase { reason } => (text!(w, "scale-health-event-chart", reason = reason)),
            Happened::NoiseTaken { noise_sd, before_sd, .. } =>
                (text!(w, "scale-health-event-noise", now = gauge.amount(*noise_sd), before = gauge.amount(*before_sd))),
        }
    }
}

/// What may be said of a scale without a check.
fn words_part(w: &Words, health: &ScaleHealth, at: &str) -> Markup {
    let told = health.trust.reasons.iter().any(|r| r.cause != TrustCause::Overdue);
    html! {
        @if !told {
            details { summary { (w.text("scale-health-distrust")) }
                form.card method="post" action={ (at) "/trust" } {
                    (hidden("trusted", "0"))
                    (field(&Field { name: "reason", id: "distrust-reason", label: &w.text("scale-health-seen"), hint: &w.text("scale-health-seen-hint"), required: true, ..Field::default() }))
                    div.actions { (button(&Button { label: &w.text("scale-health-distrust"), kind: ButtonKind::Danger, ..Button::default() })) }
                }
            }
        }
        @if !health.charts.is_empty() {
            details { summary { (w.text("scale-health-new-chart")) }
                form.card method="post" action={ (at) "/anew" } {
                    (field(&Field { name: "reason", id: "anew-reason", label: &w.text("scale-health-why"), hint: &w.text("scale-health-new-chart-hint"), required: true, ..Field::default() }))
                    div.actions { (button(&Button { label: &w.text("scale-health-new-chart"), kind: ButtonKind::Quiet, ..Button::default() })) }
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
    let on = form.needed("on", on, &w.text("scale-health-needs-day"));
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
