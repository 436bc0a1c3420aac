//! Weigh-in: the model and the number once, then one part after the other, by a connected scale or by keyboard.

use super::entries::{Entries, capital, go_on, go_to, in_address, query};
use super::stock::{asked_figures, figure_field};
use super::stock_weighed::{heap_of, last_list, settings_part, sign, sign_kept};
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::reader::Reader;
use crate::tablet::Done;
use crate::units::{explicit, length_with_unit};
use app::App;
use app::weigh_in::{TakeBackPart, WeighIn, WeighView, WeighedIn};
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use desk::stock_file::BadRow;
use desk::weigh_in::Judged;
use desk::weigh_in::Looks;
use look::{
    Action, Button, ButtonKind, Field, Nav, Notice, Tab, Tone, button, empty_state, hidden, keypad_hints, link_button,
    request_key, rich, tabs,
};
use maud::{Markup, html};
use trade::model::Model;
use trade::model::PartKind;
use trade::part_field::{Field as PartField, Measure};
use trade::reading::Unit;
use trade::shaft::TipShape;
use trade::shop::WeighInSettings;
use words::{Words, text};

pub(super) async fn form(
    State(app): State<App>,
    Reader(w): Reader,
    Query(pairs): Query<Vec<(String, String)>>,
) -> PageResult {
    weigh_page(&w, &app, &Entries::new(pairs), None, None, StatusCode::OK).await
}

/// The numbers that a part of this model may have; empty where it has none.
fn numbers(model: &Model) -> Vec<&str> {
    match model {
        Model::Head(head) => head.numbers.iter().map(|n| n.number.as_str()).collect(),
        Model::Shaft(shaft) if shaft.tip == TipShape::Taper => {
            shaft.blanks.iter().filter_map(|b| b.number.as_deref()).collect()
        }
        _ => Vec::new(),
    }
}

/// What rides along from one part to the next.
fn again<'a>(form: &'a Entries, number: &'a str) -> [(&'static str, &'a str); 6] {
    [
        ("model", form.text("model")),
        ("number", number),
        ("lot", form.text("lot")),
        ("place", form.text("place")),
        ("owner", form.text("owner")),
        ("angles", form.text("angles")),
    ]
}

async fn weigh_page(
    w: &Words,
    app: &App,
    form: &Entries,
    question: Option<&Judged>,
    notice: Option<Notice>,
    status: StatusCode,
) -> PageResult {
    let models = app.models(None).await?;
    let model = models.iter().find(|m| m.code() == form.text("model"));
    let shop = app.shop().await?;
    let ready = model.filter(|m| numbers(m).is_empty() || numbers(m).contains(&form.text("number")));
    let body = match (model, ready) {
        _ if models.is_empty() => empty_state(
            &w.text("weigh-in-no-models"),
            &w.text("weigh-in-no-models-next"),
            &[
                Action { href: "/stock/models/new?kind=head", label: &w.text("stock-new-head-model"), primary: true },
                Action { href: "/stock/models/file", label: &w.text("stock-load-models"), primary: false },
            ],
        ),
        (_, Some(model)) => {
            let number = form.some("number");
            let view = app.weigh_view(model.code(), number.as_deref()).await?;
            let shown = Shown { form, model, view: &view, question, settings: &shop.weigh_in };
            html! { (model_form(w, form, &models)) (number_tabs(w, form, model)) (shown.body(w, app, &models).await?) }
        }
        (Some(model), None) => html! {
            (model_form(w, form, &models)) (number_tabs(w, form, model))
            @if let Some(error) = form.error("number") { p.error role="alert" { (error) } }
            @else { p { (rich!(w, "weigh-in-which-number", |_, inner| html! { strong { (inner) } })) } }
        },
        (None, None) => html! {
            (model_form(w, form, &models))
            (settings_part(w, &shop.weigh_in, form))
        },
    };
    let crumb = match (model, form.some("number")) {
        (Some(m), Some(number)) => format!("{} {} {}", m.name(), w.club_number(&number), w.tell(&m.kind())),
        (Some(m), None) => format!("{} {}", m.name(), w.tell(&m.kind())),
        _ => w.text("weigh-in-choose-model"),
    };
    let booked_in = || {
        let (order, count) = (form.some("order")?, form.some("to_weigh")?);
        Some(Notice {
            tone: Tone::Good,
            text: text!(w, "weigh-in-booked", order = order),
            next: text!(w, "weigh-in-booked-next", n = count),
        })
    };
    let notice = notice.or_else(|| form.notice(w)).or_else(booked_in);
    let page = framed(
        w,
        app,
        Framed {
            title: &w.text("weigh-in-title"),
            active: Nav::Stock,
            crumb,
            notice,
            body,
            sheets: &["calc.css"],
            ..Framed::default()
        },
    )
    .await?;
    Ok((status, page).into_response())
}

fn model_form(w: &Words, form: &Entries, models: &[Model]) -> Markup {
    let now = form.text("model");
    html! {
        form.search method="get" action="/stock/new" {
            label.hidden for="model" { (w.text("part-label-model")) }
            select #model name="model" {
                @for kind in PartKind::ALL {
                    @if models.iter().any(|m| m.kind() == *kind) {
                        optgroup label=(capital(&super::stock::kinds(w, *kind))) {
                            @for model in models.iter().filter(|m| m.kind() == *kind) {
                                option value=(model.code()) selected[model.code() == now] { (model.name()) }
                            }
                        }
                    }
                }
            }
            (hidden("lot", form.raw("lot"))) (hidden("place", form.raw("place"))) (hidden("owner", form.raw("owner")))
            button.button.(if now.is_empty() { "primary" } else { "quiet" }) type="submit" {
                span { @if now.is_empty() { (w.text("weigh-in-this-model")) } @else { (w.text("weigh-in-another-model")) } }
            }
        }
    }
}

fn number_tabs(w: &Words, form: &Entries, model: &Model) -> Markup {
    let now = form.text("number");
    let made: Vec<(&str, String)> =
        numbers(model).into_iter().map(|n| (n, format!("/stock/new{}", query(&again(form, n))))).collect();
    let list: Vec<Tab<'_>> = made
        .iter()
        .map(|(label, href)| Tab { label: w.club_number(label).into(), href, count: "", current: *label == now })
        .collect();
    html! { @if !list.is_empty() { (tabs(&w.text("weigh-in-numbers"), &list)) } }
}

/// A page at which parts of one model and number are weighed.
pub(super) struct Shown<'a> {
    pub form: &'a Entries,
    pub model: &'a Model,
    pub view: &'a WeighView,
    /// What is asked about the mass that was typed last.
    pub question: Option<&'a Judged>,
    pub settings: &'a WeighInSettings,
}

impl Shown<'_> {
    async fn body(&self, w: &Words, app: &App, models: &[Model]) -> Result<Markup, super::PageError> {
        let kept = match self.form.some("kept") {
            Some(code) => app.part(&code).await.ok(),
            None => None,
        };
        let says = match (self.question, &kept) {
            (Some(judged), _) => sign(w, judged, self.form.text("mass")),
            (None, Some(part)) => sign_kept(w, self, part, models),
            (None, None) => html! {},
        };
        let scale = super::scale_check::gram_scale_words(w, app).await?;
        Ok(html! {
            div.weigh {
                div { (says) (scale) (self.entry(w)) }
                div data-live="0" { (heap_of(w, self)) (last_list(w, self)) }
            }
            (settings_part(w, self.settings, self.form))
        })
    }

    pub(super) fn here(&self, more: &[(&str, &str)]) -> String {
        format!("/stock/new{}", query(&[&again(self.form, self.form.text("number"))[..], more].concat()))
    }

    /// What is said of the place when something is kept on this tablet until the network is back.
    fn name(&self) -> String {
        format!("{} {}", self.model.name(), self.form.text("number")).trim().to_owned()
    }

    fn entry(&self, w: &Words) -> Markup {
        let form = self.form;
        let kind = self.model.kind();
        let bulk = !matches!(kind, PartKind::Head | PartKind::Shaft);
        let angles = kind == PartKind::Head && form.has("angles", "1");
        let proposed = &self.view.next_code;
        let mass = Field {
            unit: w.mass_sign(),
            inputmode: "decimal",
            autofocus: form.is_sound() || form.error("mass").is_some(),
            big: true,
            required: !bulk,
            enter_next: angles && self.question.is_none(),
            ..Field::default()
        };
        html! {
            form.card method="post" action="/stock/new" data-keep=(self.name()) data-queue data-weigh
                data-weigh-angles[angles] data-weigh-sound[self.settings.sound] {
                (hidden("model", self.model.code())) (hidden("number", form.text("number")))
                (hidden("proposed", proposed)) (hidden("angles", form.text("angles")))
                (request_key(&app::request_key()))
                div.entry-row { (form.field("mass", &w.text("part-label-mass"), mass)) (self.keep_button(w)) }
                (self.answers(w))
                div.fields {
                    @for (field, _) in asked_figures(kind, |figure| figure.at_weigh_in) {
                        (figure_field(w, form, field, angles && field.measure == Measure::Angle))
                    }
                    (self.code(w, proposed))
                    @if bulk { (form.field("count", &w.text("weigh-in-count"), Field { inputmode: "numeric", hint: &w.text("weigh-in-count-hint"), ..Field::default() })) }
                }
                details open[["lot", "place", "owner"].iter().any(|name| form.some(name).is_some())] { summary { (w.text("weigh-in-lot-and-place")) }
                    div.fields {
                        (form.field("lot", &w.text("part-label-lot"), Field { hint: &w.text("weigh-in-stays"), ..Field::default() }))
                        (form.field("place", &w.text("part-label-place"), Field { hint: &w.text("weigh-in-stays"), ..Field::default() }))
                        (form.field("owner", &w.text("part-label-owner"), Field { hint: &w.text("part-hint-owner"), ..Field::default() }))
                    }
                }
            }
            div.actions {
                @if kind == PartKind::Head { (self.angles_link(w, angles)) }
                (link_button("/stock", &w.text("weigh-in-done"), ButtonKind::Quiet, None, ""))
            }
            (keypad_hints(&if self.question.is_some() {
                [("Enter", w.text("weigh-in-key-same")), ("Esc", w.text("weigh-in-key-again"))]
            } else if angles {
                [("Enter", w.text("weigh-in-key-next-box")), ("z", w.text("weigh-in-key-undo"))]
            } else {
                [("Enter", w.text("weigh-in-key-next")), ("z", w.text("weigh-in-key-undo"))]
            }))
        }
    }

    fn keep_button(&self, w: &Words) -> Markup {
        button(&Button { label: &w.text("weigh-in-keep"), big: true, ..Button::default() })
    }

    /// What can be said to a question: the number that it looks like, that it is kept as it is, or that it is weighed again. Each
    /// is aimed at; Enter, which the hand presses after every part, answers none of them and asks again.
    fn answers(&self, w: &Words) -> Markup {
        let Some(judged) = self.question else { return html! {} };
        let other = judged
            .instead()
            .filter(|l| matches!(l.looks, Looks::Neighbour | Looks::OtherNumber))
            .and_then(|l| l.number.as_deref());
        html! {
            div.actions {
                @if let Some(number) = other {
                    (button(&Button { label: &text!(w, "weigh-in-it-is", number = w.club_number(number)), name: "as", value: number, kind: ButtonKind::Quiet, ..Button::default() }))
                }
                (button(&Button { label: &w.text("weigh-in-as-it-is"), name: "sure", value: self.form.text("mass"), kind: ButtonKind::Quiet, ..Button::default() }))
                a.button.quiet href=(self.here(&[])) data-weigh-again { span { (w.text("weigh-in-again")) } kbd aria-hidden="true" { "Esc" } }
            }
        }
    }

    /// The code that the part will get; typed over it is another.
    fn code(&self, w: &Words, proposed: &str) -> Markup {
        let mut shown = self.form.clone();
        if shown.text("code").is_empty() || self.form.text("code") == self.form.text("proposed") {
            shown.set("code", proposed);
        }
        let hint = w.text("weigh-in-code-hint");
        shown.field("code", &w.text("part-label-code"), Field { hint: &hint, ..Field::default() })
    }

    fn angles_link(&self, w: &Words, on: bool) -> Markup {
        let mut form = self.form.clone();
        form.set("angles", if on { "" } else { "1" });
        let href = format!("/stock/new{}", query(&again(&form, self.form.text("number"))));
        let label = w.text(if on { "weigh-in-mass-only" } else { "weigh-in-with-angles" });
        link_button(&href, &label, ButtonKind::Quiet, None, "")
    }
}

pub(super) async fn keep(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let model = app.model(form.text("model")).await?;
    if !numbers(&model).is_empty() && form.text("number").is_empty() {
        form.refuse("number", w.text("weigh-in-number-first"));
        return weigh_page(&w, &app, &form, None, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    let text = |name: &str| form.text(name).to_owned();
    let number = form.some("as").unwrap_or_else(|| text("number"));
    let other_number = number != form.text("number");
    let mut new = WeighIn {
        model: model.code().to_owned(),
        // The proposal was for the other number's label.
        code: if other_number && form.text("code") == form.text("proposed") { String::new() } else { text("code") },
        code_proposed: form.text("code") == form.text("proposed"),
        number,
        mass: explicit(&w, Unit::Gram, form.text("mass")),
        count: text("count"),
        lot: text("lot"),
        place: text("place"),
        owner: text("owner"),
        sure: explicit(&w, Unit::Gram, form.text("sure")),
        request_key: text("request_key"),
        by,
        ..WeighIn::default()
    };
    for (field, _) in asked_figures(model.kind(), |figure| figure.at_weigh_in) {
        let typed = form.text(field.name);
        let typed = if field.measure == Measure::Length { length_with_unit(&w, typed) } else { typed.to_owned() };
        new.set_typed(field.name, typed);
    }
    match app.weigh_in(&new).await {
        Ok(WeighedIn::Kept(kept)) => {
            let to = [&again(&form, form.text("number"))[..], &[("kept", kept.part.code.as_str())]].concat();
            Ok(go_to(&format!("/stock/new{}", query(&to))).into_response())
        }
        Ok(WeighedIn::Questioned(judged)) => {
            weigh_page(&w, &app, &form, Some(&judged), None, StatusCode::UNPROCESSABLE_ENTITY).await
        }
        Ok(WeighedIn::Refused(bad)) => {
            beside(&w, &mut form, &bad);
            weigh_page(&w, &app, &form, None, None, StatusCode::UNPROCESSABLE_ENTITY).await
        }
        Err(error) => weigh_page(&w, &app, &form, None, Some(failure(&w, &error)), failure_status(&error)).await,
    }
}

/// Puts what was wrong with the row beside the field of its column.
fn beside(w: &Words, form: &mut Entries, bad: &BadRow) {
    let asked = PartField::by_key(&bad.column).filter(|field| !matches!(field.name, "kind" | "model" | "state"));
    let field = asked.map_or("mass", |field| field.name);
    let more = bad.refusals().iter().skip(1).map(|other| format!(" {}", super::beside(w, other))).collect::<String>();
    form.refuse(field, super::beside(w, &bad.what()) + &more);
}

pub(super) async fn take_back(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let form = Entries::new(fields);
    let taken = TakeBackPart { code: form.text("code").to_owned(), id: form.text("id").to_owned(), by };
    match app.take_back_part(&taken).await {
        Ok(()) => {
            let to = [&again(&form, form.text("number"))[..], &[("taken", taken.code.as_str())]].concat();
            Ok(go_to(&format!("/stock/new{}", query(&to))).into_response())
        }
        Err(error) => weigh_page(&w, &app, &form, None, Some(failure(&w, &error)), failure_status(&error)).await,
    }
}

pub(super) async fn settings(State(app): State<App>, Form(fields): Form<Vec<(String, String)>>) -> PageResult {
    let form = Entries::new(fields);
    let mut shop = app.shop().await?;
    shop.weigh_in = WeighInSettings { print_labels: form.has("print_labels", "1"), sound: form.has("sound", "1") };
    app.save_shop(&shop).await?;
    Ok(go_on(&format!("/stock/new{}", query(&again(&form, form.text("number")))), Done::Saved))
}

/// The address of a part.
pub(super) fn part_address(code: &str) -> String {
    format!("/stock/parts/{}", in_address(code))
}
