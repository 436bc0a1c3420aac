//! What a builder knows of his shop: asked first, shown beside what was learned since, withdrawn at any time.

use super::entries::{Entries, go_to};
use super::fields::{self, Ask, Way, at};
use super::learned::learned_page;
use super::models::ask_field;
use super::{PageResult, Who, beside, failure, failure_status};
use crate::reader::Reader;
use app::App;
use app::told::{SkipTold, TellShop, ToldShop, ToldView, WithdrawTold};
use axum::Router;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::post;
use bench::told::{Sureness, ToldOf};
use fact::{Fact, Told};
use look::{Button, ButtonKind, button, definitions, hidden, section};
use maud::{Markup, html};
use serde_json::Value;
use trade::model::Model;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/learned/tell", post(tell))
        .route("/learned/withdraw", post(withdraw))
        .route("/learned/skip", post(skip))
}

/// The fields of one entry: figure, how sure, model.
fn asks(of: ToldOf) -> [Ask; 3] {
    let name = |field: &str| format!("{}.{field}", of.key());
    let [points, how_sure, model] = match of {
        ToldOf::Joint => ["told_form.joint_points", "told_form.joint_sure", "told_form.joint_model"],
        ToldOf::Grip => ["told_form.grip_points", "told_form.grip_sure", "told_form.grip_model"],
        ToldOf::Wrap => ["told_form.wrap_points", "told_form.wrap_sure", "told_form.wrap_model"],
        ToldOf::Ferrule => ["told_form.ferrule_points", "told_form.ferrule_sure", "told_form.ferrule_model"],
    };
    let sure = Way::Choice(Sureness::ALL.iter().map(|v| (v.key().to_owned(), v.told())).collect());
    [
        Ask::new(name("points"), Told::new(points), Way::Number("points")).optional(),
        Ask::new(name("sure"), Told::new(how_sure), sure).optional(),
        Ask::new(name("model"), Told::new(model), Way::Model(of.kind())).optional(),
    ]
}

/// The form as it begins: what was said, with the models that are meant.
fn begun(w: &Words, shop: &ToldShop) -> Entries {
    let value = |view: &ToldView| {
        let points = view.change_points.map(|points| Value::from(points.abs()));
        (view.of.key().to_owned(), serde_json::json!({ "points": points, "sure": view.sure, "model": view.model }))
    };
    let document: Value = shop.told.iter().chain(&shop.open).map(value).collect::<serde_json::Map<_, _>>().into();
    let asks: Vec<Ask> = ToldOf::ALL.iter().flat_map(|of| asks(*of)).collect();
    Entries::new(fields::typed(w, &asks, &document))
}

/// What was said, and the form to say it.
pub(super) fn part(w: &Words, shop: &ToldShop, models: &[Model], typed: Option<Entries>) -> Markup {
    let open = shop.ask || typed.is_some();
    let form = typed.unwrap_or_else(|| begun(w, shop));
    section(
        &w.text("told-title"),
        &html! {},
        &html! {
            p { (w.text("told-about")) }
            @for view in &shop.told { (said(w, view)) }
            details #told open[open] {
                summary { (w.text(if shop.told.is_empty() { "told-say" } else { "told-say-more" })) }
                form.card method="post" action="/learned/tell" {
                    p.hint { (w.text("told-hint")) }
                    @for of in ToldOf::ALL {
                        div.fields { @for ask in asks(*of) { (ask_field(w, &ask, &form, models)) } }
                    }
                    div.actions { (button(&Button { label: &w.text("told-keep"), ..Button::default() })) }
                }
                @if shop.ask {
                    form method="post" action="/learned/skip" {
                        div.actions { (button(&Button { label: &w.text("told-skip"), kind: ButtonKind::Quiet, ..Button::default() })) }
                    }
                }
            }
        },
    )
}

/// A figure with its direction: puts on or takes off.
fn change(w: &Words, points: f64) -> String {
    if points < 0.0 {
        text!(w, "told-takes-off", by_points = -points)
    } else {
        text!(w, "told-puts-on", by_points = points)
    }
}

fn said(w: &Words, view: &ToldView) -> Markup {
    let figure = view.change_points.map_or_else(String::new, |points| change(w, points));
    let learned = view.learned_change_points.map_or_else(
        || w.text("told-nothing-learned"),
        |points| {
            let band_points = view.learned_band_points.unwrap_or(0.0);
            text!(w, "told-learned-change", change = change(w, points), band_points = band_points)
        },
    );
    let sure = text!(w, "told-sure", sure = view.sure, sd_points = view.sd_points);
    html! {
        section.card.told {
            h3 { (text!(w, "told-of", of = view.of, name = view.name)) }
            (definitions(&[
                (w.text("told-column-said"), html! { strong { (figure) } ", " (sure) " " span.small { (text!(w, "told-by", by = view.by, told_at = view.at)) } }),
                (w.text("told-column-learned"), html! { (learned) }),
                (w.text("told-column-models"), html! { (change(w, view.model_change_points)) }),
            ]))
            form method="post" action="/learned/withdraw" {
                (hidden("of", view.of.key()))
                (hidden("model", &view.model))
                div.actions { (button(&Button { label: &w.text("told-withdraw"), kind: ButtonKind::Quiet, ..Button::default() })) }
            }
        }
    }
}

/// Reads the form: what is filled in, each with the name of its field.
fn typed(w: &Words, form: &mut Entries, by: &str) -> Vec<(String, TellShop)> {
    let all: Vec<Ask> = ToldOf::ALL.iter().flat_map(|of| asks(*of)).collect();
    let document = Value::Object(fields::document(w, &all, form));
    let one = |of: &ToldOf| {
        let named = |field: &str| at(&document, &format!("{}.{field}", of.key())).clone();
        let points = named("points").as_f64()?;
        let (on, off) = if of.puts_on() { (Some(points), None) } else { (None, Some(points)) };
        let request = TellShop {
            of: *of,
            model: named("model").as_str().map(str::to_owned),
            puts_on_points: on,
            takes_off_points: off,
            sure: named("sure").as_str().and_then(Sureness::from_key),
            by: by.to_owned(),
        };
        Some((format!("{}.points", of.key()), request))
    };
    ToldOf::ALL.iter().filter_map(one).collect()
}

async fn tell(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(sent): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(sent);
    let told = typed(&w, &mut form, &by);
    for (field, request) in &told {
        if let Err(error) = app.check_told(request).await {
            form.refuse(field, beside(&w, &error.refusal()));
        }
    }
    if told.is_empty() && form.is_sound() {
        form.refuse("joint.points", w.text("told-nothing-typed"));
    }
    if !form.is_sound() {
        let notice = form.notice(&w);
        return learned_page(&w, &app, notice, Some(form), StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    let requests: Vec<TellShop> = told.into_iter().map(|(_, request)| request).collect();
    match app.tell_shop(&requests).await {
        Ok(()) => Ok(go_to("/learned?kept=1").into_response()),
        Err(error) => learned_page(&w, &app, Some(failure(&w, &error)), Some(form), failure_status(&error)).await,
    }
}

async fn withdraw(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(sent): Form<Vec<(String, String)>>,
) -> PageResult {
    let form = Entries::new(sent);
    let of = ToldOf::from_key(form.text("of")).unwrap_or(ToldOf::Joint);
    let request = WithdrawTold { of, model: form.some("model"), by, reason: form.text("reason").to_owned() };
    match app.withdraw_told(&request).await {
        Ok(()) => Ok(go_to("/learned?kept=1").into_response()),
        Err(error) => learned_page(&w, &app, Some(failure(&w, &error)), None, failure_status(&error)).await,
    }
}

async fn skip(State(app): State<App>, Reader(w): Reader, Who(by): Who) -> PageResult {
    match app.skip_told(&SkipTold { by }).await {
        Ok(()) => Ok(go_to("/").into_response()),
        Err(error) => learned_page(&w, &app, Some(failure(&w, &error)), None, failure_status(&error)).await,
    }
}
