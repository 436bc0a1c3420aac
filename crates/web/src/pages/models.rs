//! Models: what the maker says of heads, shafts, grips and the small things, by kind; a form a kind; a file of all.

use super::beside;
use super::entries::{Entries, go_on, go_to, in_address, plain, words_cards};
use super::fields::{Ask, Way, header};
use super::model_shape::{asks, model, typed};
use super::notice_of;
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::asked::Path;
use crate::reader::Reader;
use crate::tablet::Done;
use app::App;
use axum::Router;
use axum::extract::{Form, Multipart, Query, State};
use axum::http::{StatusCode, header as http};
use axum::response::IntoResponse;
use axum::routing::{get, post};
use fact::Refusal;
use look::{
    Action, Button, ButtonKind, Cell, Column, Field, Icon, Nav, Notice, Tab, Tone, actions, button, check, empty_state,
    file_field, link_button, section, tabs, tag,
};
use maud::{Markup, html};
use trade::kind::Hand;
use trade::model::Model;
use trade::model::PartKind;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/stock/models", get(list))
        .route("/stock/models/new", get(blank).post(add))
        .route("/stock/models/file", get(file_form).post(load_file))
        .route("/stock/models/export", get(export))
        .route("/stock/models/{code}", get(show).post(change))
        .route("/stock/models/{code}/remove", post(remove))
}

async fn list(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    let asked = Entries::new(pairs);
    let models = app.models(None).await?;
    let kind = PartKind::from_key(asked.text("kind")).unwrap_or(PartKind::Head);
    let shown: Vec<&Model> = models.iter().filter(|m| m.kind() == kind).collect();
    let made: Vec<(String, String, String, bool)> = PartKind::ALL
        .iter()
        .map(|k| {
            let count = models.iter().filter(|m| m.kind() == *k).count();
            (
                w.text(&format!("model-kind-{}", k.key().replace('_', "-"))),
                format!("/stock/models?kind={}", k.key()),
                count.to_string(),
                *k == kind,
            )
        })
        .collect();
    let kinds: Vec<Tab<'_>> = made
        .iter()
        .map(|(label, href, count, current)| Tab { label: label.into(), href, count, current: *current })
        .collect();
    let new = format!("/stock/models/new?kind={}", kind.key());
    let new_label = text!(&w, "model-new", kind = kind);
    let body = html! {
        div.actions {
            (link_button(&new, &new_label, ButtonKind::Primary, Some(Icon::Plus), "n"))
            (link_button("/stock/models/usual", &w.text("usual-title"), ButtonKind::Quiet, None, ""))
            (link_button("/stock/models/file", &w.text("model-load-file"), ButtonKind::Quiet, Some(Icon::Import), ""))
            (link_button("/stock/models/export", &w.text("model-save-file"), ButtonKind::Quiet, Some(Icon::Export), ""))
            (link_button("/stock", &w.text("model-parts"), ButtonKind::Quiet, None, ""))
        }
        (tabs(&w.text("model-kinds"), &kinds))
        @if shown.is_empty() {
            (empty_state(&text!(&w, "model-none", kind = kind), &w.text("model-none-next"),
                &[
                    Action { href: &new, label: &new_label, primary: true },
                    Action { href: "/stock/models/usual", label: &w.text("usual-title"), primary: false },
                ]))
        } @else { (models_table(&w, kind, &shown)) }
    };
    let crumb = text!(&w, "model-count", count = models.len());
    Ok(framed(
        &w,
        &app,
        Framed { title: &w.text("model-models"), active: Nav::Stock, crumb, body, ..Framed::default() },
    )
    .await?
    .into_response())
}

fn models_table(w: &Words, kind: PartKind, models: &[&Model]) -> Markup {
    let row = |model: &&Model| {
        vec![
            Cell(html! { a href={ "/stock/models/" (in_address(model.code())) } { (model.name()) } }),
            Cell::from(model.code()),
            Cell::from(summary(w, model)),
        ]
    };
    words_cards(
        &text!(w, "model-of-kind", kind = kind),
        vec![
            Column::words(w.text("model-name")),
            Column::words(w.text("model-code")),
            Column::words(w.text("model-what")),
        ],
        models.iter().map(row).collect(),
    )
}

/// A model in a line.
pub(super) fn summary(w: &Words, model: &Model) -> String {
    match model {
        Model::Head(m) => {
            let numbers: Vec<&str> = m.numbers.iter().map(|n| n.number.as_str()).collect();
            let (kind, numbers, bore_mm) = (m.club_kind, numbers.join(" "), m.bore_diameter_mm);
            match m.hand {
                Hand::Left => text!(w, "model-head-left", kind = kind, numbers = numbers, bore_mm = bore_mm),
                Hand::Right => text!(w, "model-head-right", kind = kind, numbers = numbers, bore_mm = bore_mm),
            }
        }
        Model::Adapter(m) => text!(w, "model-adapter", mass_g = m.mass_g, head = m.fits_head_model),
        Model::Shaft(m) => {
            let (material, tip, tip_mm) = (m.material, m.tip, m.tip_diameter_mm);
            match m.blanks.first() {
                Some(b) => {
                    text!(w, "model-shaft-raw", material = material, tip = tip, tip_mm = tip_mm, mass_g = b.mass_g)
                }
                None => text!(w, "model-shaft", material = material, tip = tip, tip_mm = tip_mm),
            }
        }
        Model::Grip(m) => text!(w, "model-grip", mass_g = m.mass_g, shape = m.shape, core_mm = m.core_diameter_mm),
        Model::TipWeight(m) => {
            text!(w, "model-tip-weight", mass_g = m.mass_g, from_mm = m.tip_min_mm, to_mm = m.tip_max_mm)
        }
        Model::Ferrule(m) => text!(w, "model-ferrule", inside_mm = m.inside_diameter_mm, mass_g = m.mass_g),
        Model::Adhesive(m) => text!(w, "model-adhesive", life_min = m.pot_life_min, at_c = m.pot_life_at_c),
        Model::Tape(m) => {
            text!(w, "model-tape", area_g_per_m2 = m.mass_per_area_g_per_m2, thick_mm = m.thickness_mm)
        }
    }
}

/// An example of the kind, from the invented shop, to write over.
fn example(w: &Words, kind: PartKind) -> Entries {
    let mut form = demo::models().iter().find(|m| m.kind() == kind).map(|model| typed(w, model)).unwrap_or_default();
    for name in ["code", "name", "label", "fits_head_model", "setting"] {
        form.set(name, "");
    }
    // Nothing is kept of an example: it need not give back the last figure of another unit.
    let rounded: Vec<(String, String)> =
        form.pairs().iter().map(|(name, text)| (name.clone(), with_few_decimals(text))).collect();
    Entries::new(rounded)
}

/// A text with each figure in it rounded to three decimals.
fn with_few_decimals(text: &str) -> String {
    text.split_inclusive([',', ' ', '\n'])
        .map(|piece| {
            let figure = piece.trim_end_matches([',', ' ', '\n']);
            let long = figure.split_once('.').is_some_and(|(_, decimals)| decimals.len() > 3);
            match figure.parse::<f64>() {
                Ok(value) if long => format!("{}{}", plain(quantity::round_to(value, 3)), &piece[figure.len()..]),
                _ => piece.to_owned(),
            }
        })
        .collect()
}

async fn blank(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    let kind = PartKind::from_key(Entries::new(pairs).text("kind")).unwrap_or(PartKind::Head);
    let notice = Notice { tone: Tone::Plain, text: w.text("model-example"), next: w.text("model-example-next") };
    form_page(&w, &app, kind, None, &example(&w, kind), Some(notice), StatusCode::OK).await
}

async fn show(
    State(app): State<App>,
    Reader(w): Reader,
    Path(code): Path<String>,
    Query(asked): Query<Vec<(String, String)>>,
) -> PageResult {
    let model = app.model(&code).await?;
    let notice = Entries::new(asked).has("kept", "1").then(|| Notice {
        tone: Tone::Good,
        text: text!(&w, "model-kept", name = model.name()),
        next: String::new(),
    });
    form_page(&w, &app, model.kind(), Some(&code), &typed(&w, &model), notice, StatusCode::OK).await
}

async fn add(
    State(app): State<App>,
    Reader(w): Reader,
    Query(pairs): Query<Vec<(String, String)>>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let kind = PartKind::from_key(Entries::new(pairs).text("kind")).unwrap_or(PartKind::Head);
    let mut form = Entries::new(fields);
    if let Some(code) = form.some("code")
        && let Ok(other) = app.model(&code).await
    {
        form.refuse("code", text!(&w, "model-code-taken", code = code, name = other.name()));
    }
    keep(&w, &app, kind, None, form).await
}

async fn change(
    State(app): State<App>,
    Reader(w): Reader,
    Path(code): Path<String>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let kind = app.model(&code).await?.kind();
    let mut form = Entries::new(fields);
    form.set("code", code.clone());
    keep(&w, &app, kind, Some(&code), form).await
}

async fn keep(w: &Words, app: &App, kind: PartKind, code: Option<&str>, mut form: Entries) -> PageResult {
    let Some(made) = model(w, &mut form, kind) else {
        return form_page(w, app, kind, code, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    };
    match app.put_model(&made).await {
        Ok(()) => Ok(go_to(&format!("/stock/models/{}?kept=1", in_address(made.code()))).into_response()),
        Err(error) => form_page(w, app, kind, code, &form, Some(failure(w, &error)), failure_status(&error)).await,
    }
}

async fn remove(State(app): State<App>, Reader(w): Reader, Path(code): Path<String>) -> PageResult {
    let model = app.model(&code).await?;
    match app.remove_model(&code).await {
        Ok(()) => Ok(go_on(&format!("/stock/models?kind={}", model.kind().key()), Done::Removed)),
        Err(error) => {
            form_page(
                &w,
                &app,
                model.kind(),
                Some(&code),
                &typed(&w, &model),
                Some(failure(&w, &error)),
                failure_status(&error),
            )
            .await
        }
    }
}

async fn form_page(
    w: &Words,
    app: &App,
    kind: PartKind,
    code: Option<&str>,
    form: &Entries,
    notice: Option<Notice>,
    status: StatusCode,
) -> PageResult {
    let models = app.models(None).await?;
    let action = match code {
        Some(code) => format!("/stock/models/{}", in_address(code)),
        None => format!("/stock/models/new?kind={}", kind.key()),
    };
    let fields = asks(kind);
    let body = html! {
        form.card method="post" action=(action) {
            div.fields {
                @if code.is_none() {
                    (form.field("code", &w.text("model-form-code"), Field { hint: &w.text("model-form-code-hint"), required: true, ..Field::default() }))
                }
                (form.field("name", &w.text("model-form-name"), Field { hint: &w.text("model-form-name-hint"), required: true, ..Field::default() }))
                (form.field("label", &w.text("model-form-label"), Field { hint: &w.text("model-form-label-hint"), ..Field::default() }))
            }
            div.fields { @for ask in fields.iter().filter(|a| !matches!(a.way, Way::Rows(_))) { (ask_field(w, ask, form, &models)) } }
            @for ask in &fields { @if let Way::Rows(columns) = &ask.way { (rows_field(w, ask, columns, form)) } }
            div.actions { (button(&Button { label: &w.text(if code.is_some() { "model-keep-change" } else { "model-keep" }), ..Button::default() })) }
        }
        @if let Some(code) = code {
            details { summary { (w.text("model-remove-this")) }
                form method="post" action={ "/stock/models/" (in_address(code)) "/remove" } {
                    p { (w.text("model-remove-hint")) }
                    div.actions { (button(&Button { label: &w.text("model-remove"), kind: ButtonKind::Danger, ..Button::default() })) }
                }
            }
        }
        (actions(&[Action { href: &format!("/stock/models?kind={}", kind.key()), label: &text!(w, "model-all-of-kind", kind = kind), primary: false }]))
    };
    let title = if code.is_some() { form.text("name").to_owned() } else { text!(w, "model-new", kind = kind) };
    let crumb = code.map_or_else(String::new, |code| text!(w, "model-crumb", kind = kind, code = code));
    let notice = form.notice(w).or(notice);
    let page =
        framed(w, app, Framed { title: &title, active: Nav::Stock, crumb, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

pub(super) fn ask_field(w: &Words, ask: &Ask, form: &Entries, models: &[Model]) -> Markup {
    let (key, label) = (ask.key.as_str(), w.tell(&ask.label));
    let hint = ask.hint.as_ref().map(|hint| w.tell(hint)).unwrap_or_default();
    let shape = Field { hint: &hint, required: !ask.optional, ..Field::default() };
    match &ask.way {
        Way::Number(_) => {
            form.field(key, &label, Field { unit: &ask.unit(w).unwrap_or_default(), inputmode: "decimal", ..shape })
        }
        Way::Count => form.field(key, &label, Field { inputmode: "numeric", ..shape }),
        Way::Length => form.field(key, &label, Field { unit: w.length_sign(), ..shape }),
        Way::YesNo => check(key, "1", &label, form.has(key, "1")),
        Way::Choice(list) => {
            let none = ask.optional.then(|| ("", w.text("model-form-not-said")));
            let words = list.iter().map(|(key, told)| (key.as_str(), w.tell(told)));
            form.select(key, &label, &hint, &none.into_iter().chain(words).collect::<Vec<_>>())
        }
        Way::Model(kind) => {
            let none = ("", w.text("model-form-choose"));
            let known = models.iter().filter(|m| m.kind() == *kind).map(|m| (m.code(), m.name().to_owned()));
            form.select(key, &label, &hint, &std::iter::once(none).chain(known).collect::<Vec<_>>())
        }
        Way::Text | Way::SwingWeight | Way::Numbers(_) | Way::Rows(_) => form.field(key, &label, shape),
    }
}

fn rows_field(w: &Words, ask: &Ask, columns: &[Ask], form: &Entries) -> Markup {
    let lines = u32::try_from(form.raw(&ask.key).lines().count() + 1).unwrap_or(12).clamp(3, 16);
    let hint = match &ask.hint {
        Some(hint) => text!(w, "model-form-rows-more-hint", more = hint),
        None => w.text("model-form-rows-hint"),
    };
    let head = header(w, columns);
    form.area(&ask.key, &w.tell(&ask.label), lines, Field { hint: &hint, placeholder: &head, ..Field::default() })
}

async fn export(State(app): State<App>) -> PageResult {
    let text = app.export_models().await?;
    let headers =
        [(http::CONTENT_TYPE, "application/json"), (http::CONTENT_DISPOSITION, "attachment; filename=\"models.json\"")];
    Ok((headers, text).into_response())
}

async fn file_form(State(app): State<App>, Reader(w): Reader) -> PageResult {
    file_page(&w, &app, &Entries::default(), None, &html! {}, StatusCode::OK).await
}

async fn file_page(
    w: &Words,
    app: &App,
    form: &Entries,
    notice: Option<Notice>,
    above: &Markup,
    status: StatusCode,
) -> PageResult {
    let body = html! {
        (above)
        form.card method="post" action="/stock/models/file" enctype="multipart/form-data" {
            (file_field("file", &w.text("model-file"), &w.text("model-file-hint"), ".json,application/json"))
            (form.area("text", &w.text("model-file-text"), 8, Field::default()))
            p.hint { (w.text("model-file-good")) }
            div.actions { (button(&Button { label: &w.text("model-load"), ..Button::default() })) }
        }
        (actions(&[
            Action { href: "/stock/models/export", label: &w.text("model-save-all"), primary: false },
            Action { href: "/stock/models", label: &w.text("model-back"), primary: false },
        ]))
    };
    let notice = form.notice(w).or(notice);
    let page = framed(
        w,
        app,
        Framed { title: &w.text("model-from-file"), active: Nav::Stock, notice, body, ..Framed::default() },
    )
    .await?;
    Ok((status, page).into_response())
}

async fn load_file(State(app): State<App>, Reader(w): Reader, form: Multipart) -> PageResult {
    let (mut form, file) = match Entries::with_file(form).await {
        Ok(read) => read,
        Err(fault) => {
            let notice = notice_of(&w, &fault.into());
            return file_page(&w, &app, &Entries::default(), Some(notice), &html! {}, StatusCode::BAD_REQUEST).await;
        }
    };
    let text = file.map_or_else(|| form.raw("text").to_owned(), |bytes| String::from_utf8_lossy(&bytes).into_owned());
    if text.trim().is_empty() {
        form.refuse("text", w.text("model-file-none"));
        return file_page(&w, &app, &form, None, &html! {}, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    match app.import_models(&text).await {
        Ok(done) => {
            let above = html! { @if !done.bad.is_empty() {
                (section(&w.text("model-not-kept"), &html! {}, &html! { ul.plain { @for bad in &done.bad {
                    li { (tag(Tone::Bad, &text!(&w, "model-entry", entry = bad.entry))) " " @if !bad.code.is_empty() { strong { (bad.code) } ": " } (beside(&w, &Refusal::new(&bad.problem))) }
                } } }))
            } };
            let notice = Notice {
                tone: if done.kept.is_empty() { Tone::Care } else { Tone::Good },
                text: text!(&w, "model-count-kept", count = done.kept.len()),
                next: if done.bad.is_empty() { String::new() } else { w.text("model-file-again") },
            };
            file_page(&w, &app, &Entries::default(), Some(notice), &above, StatusCode::OK).await
        }
        Err(error) => {
            form.set("text", text);
            form.refuse("text", beside(&w, &error.refusal()));
            file_page(&w, &app, &form, None, &html! {}, failure_status(&error)).await
        }
    }
}

#[cfg(test)]
mod tests {
    use super::with_few_decimals;

    #[test]
    fn an_example_has_figures_that_can_be_read() {
        assert_eq!(with_few_decimals("0.37008"), "0.37");
        assert_eq!(
            with_few_decimals("mass, in\n4, 1.062992, 38 1/2\n5, 1.5, D2"),
            "mass, in\n4, 1.063, 38 1/2\n5, 1.5, D2"
        );
    }
}
