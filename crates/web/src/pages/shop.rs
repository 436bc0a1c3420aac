//! The shop: what it says of itself once, its steps, and who is at this tablet.

use super::beside_its_entry;
use super::entries::{Entries, go_on, go_to, group, plain};
use super::measured::Measured;
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::cookies::{self, keep};
use crate::reader::Reader;
use crate::tablet::Done;
use app::App;
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::{AppendHeaders, IntoResponse};
use axum::routing::{get, post};
use look::{
    Button, ButtonKind, Choice, Field, Notice, Select, Tone, button, check, columns, field, section, select,
    titled_card,
};
use maud::{Markup, html};
use quantity::{SwingWeight, round_to};
use trade::check_weight::CheckWeight;
use trade::model::{Model, PartKind};
use trade::plan_weights::PlanWeights;
use trade::reading::What;
use trade::scale::Scale;
use trade::shop::{Shop, Units};
use trade::step::{Step, Strength};
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/shop", get(show).post(change))
        .route("/shop/steps", post(change_steps))
        .route("/shop/who", post(who))
}

async fn show(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Query(asked): Query<Vec<(String, String)>>,
) -> PageResult {
    let shop = app.shop().await?;
    let notice = Entries::new(asked).has("kept", "1").then(|| Notice {
        tone: Tone::Good,
        text: w.text("shop-kept"),
        next: w.text("shop-kept-next"),
    });
    shop_page(&w, &app, &by, &typed(&w, &shop), &steps_typed(&shop.steps), notice, StatusCode::OK).await
}

fn typed(w: &Words, shop: &Shop) -> Entries {
    let mut pairs = vec![
        ("name".to_owned(), shop.name.clone()),
        ("room_c".to_owned(), plain(shop.room_c)),
        ("adhesive".to_owned(), shop.adhesive.clone().unwrap_or_default()),
        ("tape".to_owned(), shop.tape.clone().unwrap_or_default()),
        ("tip_weight_cap_g".to_owned(), Measured::Gram.typed(w, shop.tip_weight_cap_g)),
        ("bead_share_percent".to_owned(), plain(shop.bead_share_percent)),
    ];
    for (name, weight) in shop.plan_weights.named() {
        pairs.push((format!("plan_weights.{name}"), plain(round_to(100.0 * weight, 9))));
    }
    for (which, scale) in [("balance_scale", &shop.balance_scale), ("mass_scale", &shop.mass_scale)] {
        pairs.push((format!("{which}.name"), scale.name.clone()));
        let figure = |value| if which == "mass_scale" { Measured::Gram.typed(w, value) } else { plain(value) };
        pairs.push((format!("{which}.display_step"), figure(scale.display_step)));
        pairs.push((format!("{which}.noise_sd"), figure(scale.noise_sd)));
        pairs.push((format!("{which}.offset_sd"), figure(scale.offset_sd)));
        pairs.push((format!("{which}.drift_sd_per_root_h"), figure(scale.drift_sd_per_root_h)));
        pairs.push((format!("{which}.drift_sd_per_day"), scale.drift_sd_per_day.map_or_else(String::new, figure)));
    }
    if let Some(check) = &shop.check_weight {
        pairs.push(("check_weight.name".to_owned(), check.name.clone()));
        pairs.push((
            "check_weight.swing_weight_points".to_owned(),
            SwingWeight::from_points(check.swing_weight_points).letter(2),
        ));
        pairs.push(("check_weight.sd_points".to_owned(), plain(check.sd_points)));
        pairs.push(("check_weight.mass_g".to_owned(), Measured::Gram.typed(w, check.mass_g)));
    }
    Entries::new(pairs)
}

fn steps_typed(steps: &[Step]) -> Entries {
    let mut pairs = Vec::new();
    for (step, place) in steps.iter().zip(1..) {
        let mut put = |name: &str, value: &str| pairs.push((format!("{name}-{}", step.key), value.to_owned()));
        put("place", &place.to_string());
        put("label", &step.label);
        put("say", &step.say);
        put("needs", step.needs.key());
        put("optional", if step.optional { "1" } else { "" });
    }
    pairs.push(("new-place".into(), (steps.len() + 1).to_string()));
    Entries::new(pairs)
}

async fn shop_page(
    w: &Words,
    app: &App,
    by: &str,
    form: &Entries,
    steps: &Entries,
    notice: Option<Notice>,
    status: StatusCode,
) -> PageResult {
    let shop = app.shop().await?;
    let models = app.models(None).await?;
    let names = shop.steps.iter().map(|s| s.label.as_str()).collect::<Vec<_>>().join(", ");
    let scales = [
        scale(w, form, "balance_scale", "shop-balance-scale", &w.text("unit-points")),
        scale(w, form, "mass_scale", "shop-mass-scale", w.mass_sign()),
        check_weight(w, form),
    ];
    let body = html! {
        form.card method="post" action="/shop/who" {
            div.fields {
                (field(&Field { name: "who", label: &w.text("shop-who"), value: if by == "bench" { "" } else { by }, hint: &w.text("shop-who-hint"), list: "people", ..Field::default() }))
                (select(&Select { name: "units", label: &w.text("shop-units"), hint: &w.text("shop-units-hint"), error: None, choices: units_choices(w, by != "bench") }))
                datalist #people { @for person in &shop.people { option value=(person.name) {} } }
            }
            div.actions { (button(&Button { label: &w.text("shop-keep"), kind: ButtonKind::Quiet, ..Button::default() })) }
        }
        p.actions {
            a.button.quiet href="/shop/scales" { (w.text("shop-serial")) } " "
            a.button.quiet href="/shop/printers" { (w.text("label-printers")) } " "
            a.button.quiet href="/calendar" { (w.text("calendar-title")) } " "
            a.button.quiet href="/exports" { (w.text("export-title")) }
        }
        form method="post" action="/shop" {
            div.card { div.fields { (figures(w, form, &models)) } }
            details open[form.notice(w).is_some()] { summary { (w.text("shop-scales")) } (columns(&scales)) }
            details open[form.notice(w).is_some()] { summary { (w.text("shop-weights")) }
                div.card {
                    p.hint { (w.text("shop-weights-about")) }
                    div.fields { (plan_weights(w, form)) }
                }
            }
            div.actions { (button(&Button { label: &w.text("shop-keep"), ..Button::default() })) }
        }
        (section(&w.text("shop-steps"), &html! {}, &html! {
            details open[steps.notice(w).is_some()] { summary { (text!(w, "shop-steps-count", n = shop.steps.len(), names = names)) }
                p.hint { (w.text("shop-steps-about")) }
                form method="post" action="/shop/steps" { (steps_part(w, steps, &shop.steps)) }
            }
        }))
    };
    let (title, notice) = (w.text("shop-title"), form.notice(w).or_else(|| steps.notice(w)).or(notice));
    let page = framed(
        w,
        app,
        Framed { title: &title, crumb: shop.name, notice, body, help: Some("set-up"), ..Framed::default() },
    )
    .await?;
    Ok((status, page).into_response())
}

fn figures(w: &Words, form: &Entries, models: &[Model]) -> Markup {
    let none = w.text("shop-none");
    let list = |kind: PartKind| -> Vec<(&str, &str)> {
        std::iter::once(("", none.as_str()))
            .chain(models.iter().filter(|m| m.kind() == kind).map(|m| (m.code(), m.name())))
            .collect()
    };
    let decimal = |name: &str, label: &str, unit: &str, hint: &str| {
        let hint = w.text(hint);
        let shape = Field { unit, hint: &hint, inputmode: "decimal", required: true, ..Field::default() };
        form.field(name, &w.text(label), shape)
    };
    let where_none = w.text("shop-where-none");
    html! {
        (form.field("name", &w.text("shop-name"), Field { required: true, ..Field::default() }))
        (decimal("room_c", "shop-room", &w.text("shop-room-unit"), "shop-room-hint"))
        (form.select("adhesive", &w.text("shop-adhesive"), &where_none, &list(PartKind::Adhesive)))
        (form.select("tape", &w.text("shop-tape"), &where_none, &list(PartKind::Tape)))
        (decimal("tip_weight_cap_g", "shop-tip-cap", w.mass_sign(), "shop-tip-cap-hint"))
        (decimal("bead_share_percent", "shop-spacers", &w.text("shop-spacers-unit"), "shop-spacers-hint"))
    }
}

/// What things cost in a plan, in hundredths of a missed club.
fn plan_weights(w: &Words, form: &Entries) -> Markup {
    let unit = w.text("shop-weights-unit");
    let one = |(name, _): (&str, f64)| {
        let label = format!("shop-weight-{}", name.replace('_', "-"));
        let hint = w.text(&format!("{label}-hint"));
        form.field(
            &format!("plan_weights.{name}"),
            &w.text(&label),
            Field { unit: &unit, hint: &hint, inputmode: "decimal", required: true, ..Field::default() },
        )
    };
    html! { @for weight in PlanWeights::default().named() { (one(weight)) } }
}

fn scale(w: &Words, form: &Entries, which: &str, title: &str, unit: &str) -> Markup {
    let decimal = |name: &str, label: &str| {
        let hint = w.text(&format!("{label}-hint"));
        let required = name != "drift_sd_per_day";
        let shape = Field { unit, hint: &hint, inputmode: "decimal", required, ..Field::default() };
        form.field(&format!("{which}.{name}"), &w.text(label), shape)
    };
    titled_card(
        &w.text(title),
        &html! {
            (form.field(&format!("{which}.name"), &w.text("shop-scale-name"), Field { required: true, ..Field::default() }))
            (decimal("display_step", "shop-scale-step"))
            (decimal("noise_sd", "shop-scale-noise"))
            (decimal("offset_sd", "shop-scale-offset"))
            (decimal("drift_sd_per_root_h", "shop-scale-drift"))
            @if which == "balance_scale" { (decimal("drift_sd_per_day", "shop-scale-day-drift")) }
        },
    )
}

/// The weight that the balance scale is held against; left empty where the shop has none.
fn check_weight(w: &Words, form: &Entries) -> Markup {
    let one =
        |name: &str, label: &str, shape: Field<'_>| form.field(&format!("check_weight.{name}"), &w.text(label), shape);
    let points = w.text("unit-points");
    titled_card(
        &w.text("shop-check-weight"),
        &html! {
            (one("name", "shop-scale-name", Field { hint: &w.text("shop-check-name-hint"), ..Field::default() }))
            (one("swing_weight_points", "shop-check-value", Field { hint: &w.text("shop-check-value-hint"), ..Field::default() }))
            (one("sd_points", "shop-check-sd", Field { unit: &points, hint: &w.text("shop-check-sd-hint"), inputmode: "decimal", ..Field::default() }))
            (one("mass_g", "shop-check-mass", Field { unit: w.mass_sign(), inputmode: "decimal", ..Field::default() }))
        },
    )
}

/// The check weight as entered; none where its name is empty.
fn check_weight_typed(w: &Words, form: &mut Entries) -> Option<CheckWeight> {
    let name = form.some("check_weight.name")?;
    let swing_weight = form.swing_weight_points(w, "check_weight.swing_weight_points");
    let swing_weight_points =
        form.needed("check_weight.swing_weight_points", swing_weight, &w.text("shop-needs-value"));
    let mut number = |field: &str| {
        let value = figure(w, form, field);
        form.needed(field, value, &w.text("shop-needs-figure")).unwrap_or_default()
    };
    let (sd_points, mass_g) = (number("check_weight.sd_points"), number("check_weight.mass_g"));
    Some(CheckWeight { name, swing_weight_points: swing_weight_points.unwrap_or_default(), sd_points, mass_g })
}

/// A figure as entered: masses in the reader's unit where they have none of their own.
fn figure(w: &Words, form: &mut Entries, name: &str) -> Option<f64> {
    let mass = name == "tip_weight_cap_g" || name == "check_weight.mass_g" || name.starts_with("mass_scale.");
    if mass { form.measured(w, name, Measured::Gram) } else { form.number(w, name) }
}

async fn change(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let mut shop = app.shop().await?;
    let mut number = |name: &str| {
        let value = figure(&w, &mut form, name);
        form.needed(name, value, &w.text("shop-needs-figure")).unwrap_or_default()
    };
    shop.room_c = number("room_c");
    shop.tip_weight_cap_g = number("tip_weight_cap_g");
    shop.bead_share_percent = number("bead_share_percent");
    let mut not_to_be_had = Vec::new();
    for (name, _) in shop.plan_weights.named() {
        let field = format!("plan_weights.{name}");
        match shop.plan_weights.with(name, number(&field) / 100.0) {
            Ok(weights) => shop.plan_weights = weights,
            Err(_) => not_to_be_had.push(field),
        }
    }
    for (which, scale) in [("balance_scale", &mut shop.balance_scale), ("mass_scale", &mut shop.mass_scale)] {
        *scale = Scale {
            display_step: number(&format!("{which}.display_step")),
            noise_sd: number(&format!("{which}.noise_sd")),
            offset_sd: number(&format!("{which}.offset_sd")),
            drift_sd_per_root_h: number(&format!("{which}.drift_sd_per_root_h")),
            ..scale.clone()
        };
    }
    shop.balance_scale.drift_sd_per_day = figure(&w, &mut form, "balance_scale.drift_sd_per_day");
    for (name, into) in [
        ("name", &mut shop.name),
        ("balance_scale.name", &mut shop.balance_scale.name),
        ("mass_scale.name", &mut shop.mass_scale.name),
    ] {
        let text = form.some(name);
        *into = form.needed(name, text, &w.text("shop-needs-name")).unwrap_or_default();
    }
    for field in not_to_be_had {
        form.refuse(&field, w.text("shop-needs-weight"));
    }
    shop.check_weight = check_weight_typed(&w, &mut form);
    shop.adhesive = form.some("adhesive");
    shop.tape = form.some("tape");
    let error = if form.is_sound() { app.save_shop(&shop).await.err() } else { None };
    if let Some(error) = &error
        && let Some(field) = error.field()
    {
        form.refuse(field, beside_its_entry(&w, &error.refusal()));
    }
    if form.is_sound() && error.is_none() {
        return Ok(go_to("/shop?kept=1").into_response());
    }
    let status = error.as_ref().map_or(StatusCode::UNPROCESSABLE_ENTITY, failure_status);
    let steps = steps_typed(&app.shop().await?.steps);
    shop_page(&w, &app, &by, &form, &steps, error.as_ref().map(|one| failure(&w, one)), status).await
}

fn steps_part(w: &Words, form: &Entries, steps: &[Step]) -> Markup {
    let needs: Vec<(&str, String)> = Strength::ALL.iter().map(|s| (s.key(), w.tell(s))).collect();
    let on: Vec<(&str, &str)> = steps.iter().map(|s| (s.key.as_str(), s.label.as_str())).collect();
    html! {
        ul.plain {
            @for step in steps {
                @let name = |what: &str| format!("{what}-{}", step.key);
                li.card {
                    details open[form.notice(w).is_some()] {
                        summary { (text!(w, "shop-step-head", place = form.text(&name("place")), label = form.text(&name("label")))) }
                        div.fields {
                            (form.field(&name("place"), &w.text("shop-step-place"), Field { inputmode: "numeric", required: true, ..Field::default() }))
                            (form.field(&name("label"), &w.text("shop-step-name"), Field { required: true, ..Field::default() }))
                            (form.select(&name("needs"), &w.text("shop-step-waits"), "", &needs))
                        }
                        (form.field(&name("say"), &w.text("shop-step-say"), Field::default()))
                        div.actions {
                            (check(&name("optional"), "1", &w.text("shop-step-optional"), form.has(&name("optional"), "1")))
                            (check(&name("drop"), "1", &w.text("shop-step-drop"), form.has(&name("drop"), "1")))
                        }
                        p.hint { (asked_words(w, step)) }
                    }
                }
            }
        }
        details.card { summary { (w.text("shop-step-add")) }
            div.fields {
                (form.field("new-label", &w.text("shop-step-name"), Field { hint: &w.text("shop-step-name-hint"), ..Field::default() }))
                (form.field("new-place", &w.text("shop-step-place"), Field { inputmode: "numeric", ..Field::default() }))
                (form.select("new-needs", &w.text("shop-step-waits"), "", &needs))
                (form.select("new-on", &w.text("shop-step-on"), "", &on))
            }
            (form.field("new-say", &w.text("shop-step-say"), Field::default()))
            (group(&w.text("shop-step-asks"), &html! {
                div.actions { @for what in What::ALL.iter().filter(|what| **what != What::Done) {
                    (check("new-asks", what.key(), &w.tell(what), form.has("new-asks", what.key())))
                } }
                p.hint { (w.text("shop-step-asks-none")) }
            }))
        }
        div.actions { (button(&Button { label: &w.text("shop-steps-keep"), ..Button::default() })) }
    }
}

fn asked_words(w: &Words, step: &Step) -> String {
    let asks: Vec<String> = step.asks.iter().filter(|what| **what != What::Done).map(|what| w.tell(what)).collect();
    let mut said = vec![if asks.is_empty() {
        w.text("shop-step-reads-nothing")
    } else {
        text!(w, "shop-step-reads", asks = w.list(&asks))
    }];
    said.extend(step.glues.then(|| w.text("shop-step-glues")));
    said.extend(step.caution.map(|caution| text!(w, "shop-step-caution", caution = caution)));
    said.join(" ")
}

async fn change_steps(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let mut shop = app.shop().await?;
    let steps = read_steps(&w, &mut form, &shop.steps);
    let error = match steps {
        Some(steps) => {
            shop.steps = steps;
            match app.save_shop(&shop).await {
                Ok(()) => return Ok(go_to("/shop?kept=1").into_response()),
                Err(error) => Some(error),
            }
        }
        None => None,
    };
    let status = error.as_ref().map_or(StatusCode::UNPROCESSABLE_ENTITY, failure_status);
    let shop = app.shop().await?;
    shop_page(&w, &app, &by, &typed(&w, &shop), &form, error.as_ref().map(|one| failure(&w, one)), status).await
}

/// The steps as the form has them, in the order of their places.
fn read_steps(w: &Words, form: &mut Entries, now: &[Step]) -> Option<Vec<Step>> {
    let mut placed: Vec<(f64, Step)> = Vec::new();
    for step in now {
        let name = |what: &str| format!("{what}-{}", step.key);
        if form.has(&name("drop"), "1") {
            continue;
        }
        let label = form.some(&name("label"));
        let label = form.needed(&name("label"), label, &w.text("shop-needs-step-name"));
        let place = form.number(w, &name("place"));
        let place = form.needed(&name("place"), place, &w.text("shop-needs-step-place"));
        let (Some(label), Some(place)) = (label, place) else { continue };
        let needs = Strength::from_key(form.text(&name("needs"))).unwrap_or(step.needs);
        placed.push((
            place,
            Step {
                label,
                say: form.text(&name("say")).to_owned(),
                needs,
                optional: form.has(&name("optional"), "1"),
                ..step.clone()
            },
        ));
    }
    if let Some(label) = form.some("new-label") {
        let place = form.number(w, "new-place").unwrap_or(f64::from(u16::MAX));
        placed.push((place - 0.5, new_step(form, label, now)));
    }
    if placed.is_empty() && form.is_sound() {
        form.refuse("new-label", w.text("shop-needs-step"));
    }
    placed.sort_by(|a, b| a.0.total_cmp(&b.0));
    form.is_sound().then(|| placed.into_iter().map(|(_, step)| step).collect())
}

fn new_step(form: &Entries, label: String, now: &[Step]) -> Step {
    let like = form.text("new-on");
    let asks: Vec<What> = form.all("new-asks").filter_map(What::from_key).collect();
    Step {
        key: fresh_key(&label, now),
        say: form.text("new-say").to_owned(),
        asks: if asks.is_empty() { vec![What::Done] } else { asks },
        on: now.iter().find(|s| s.key == like).map(|s| s.on.clone()).unwrap_or_default(),
        needs: Strength::from_key(form.text("new-needs")).unwrap_or(Strength::None),
        glues: false,
        caution: None,
        optional: true,
        before: false,
        only: Vec::new(),
        label,
    }
}

/// A key from the step's name that no other step has.
fn fresh_key(label: &str, now: &[Step]) -> String {
    let plain: String = label.to_lowercase().chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '_' }).collect();
    let plain = plain.trim_matches('_');
    let base = if plain.is_empty() { "step" } else { plain };
    std::iter::once(base.to_owned())
        .chain((2..).map(|n| format!("{base}_{n}")))
        .find(|key| !now.iter().any(|s| s.key == *key))
        .unwrap_or_default()
}

/// Units to choose from; to begin with, those that the name had before.
fn units_choices(w: &Words, named: bool) -> Vec<Choice<'static>> {
    let own = w.units;
    let as_before = Choice { value: "", label: w.text("shop-units-as-before").into(), chosen: !named };
    let each = ["in-g", "mm-g", "in-oz", "mm-oz"].into_iter().map(|value| Choice {
        value,
        label: w.text(&format!("shop-units-{value}")).into(),
        chosen: named && own.key() == value,
    });
    std::iter::once(as_before).chain(each).collect()
}

async fn who(State(app): State<App>, Form(fields): Form<Vec<(String, String)>>) -> PageResult {
    let form = Entries::new(fields);
    let name: String = form.text("who").chars().take(60).collect();
    let units = app.name_person(&name, form.some("units").map(|key| Units::from_key(&key))).await?;
    let cookies = [keep(cookies::WHO, &name), keep(cookies::UNITS, &units.key())];
    Ok((AppendHeaders(cookies), go_on("/shop", Done::Saved)).into_response())
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    #[test]
    fn steps_follow_their_places_and_may_be_taken_away() {
        let now = trade::step::full_build();
        let mut form = steps_typed(&now);
        form.set("place-cpm", "0.5");
        form.set("drop-soft_side", "1");
        form.set("new-label", "Lead tape on");
        form.set("new-place", "3");
        form.set("new-on", "finish");
        let steps = read_steps(&w(), &mut form, &now).expect("sound");
        assert_eq!(steps.len(), now.len());
        assert_eq!(steps[0].key, "cpm");
        assert_eq!(steps[3].key, "lead_tape_on");
        assert!(!steps[3].on.is_empty());
        assert!(!steps.iter().any(|s| s.key == "soft_side"));
        trade::step::check_template(&steps).unwrap();
    }

    #[test]
    fn a_second_step_of_one_name_gets_its_own_key() {
        let now = trade::step::full_build();
        assert_eq!(fresh_key("Dry", &now), "dry_2");
        assert_eq!(fresh_key("  ", &now), "step");
    }
}
