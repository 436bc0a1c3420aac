//! Models: what the maker says of heads, shafts, grips and the small things, by kind; a form a kind; a file of all.

use super::beside;
use super::entries::{Entries, capital, counted, go_to, in_address, words_cards};
use super::model_shape::{Ask, Way, asks, header, model, typed};
use super::notice_of;
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::asked::Path;
use crate::reader::Reader;
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
use quantity::decimal;
use trade::kind::Hand;
use trade::model::Model;
use trade::model::PartKind;
use words::Words;

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
            (format!("{k}s"), format!("/stock/models?kind={}", k.key()), count.to_string(), *k == kind)
        })
        .collect();
    let kinds: Vec<Tab<'_>> = made
        .iter()
        .map(|(label, href, count, current)| Tab { label: label.into(), href, count, current: *current })
        .collect();
    let new = format!("/stock/models/new?kind={}", kind.key());
    let new_label = format!("New {kind} model");
    let body = html! {
        div.actions {
            (link_button(&new, &new_label, ButtonKind::Primary, Some(Icon::Plus), "n"))
            (link_button("/stock/models/file", "Load from a file", ButtonKind::Quiet, Some(Icon::Import), ""))
            (link_button("/stock/models/export", "Save all as a file", ButtonKind::Quiet, Some(Icon::Export), ""))
            (link_button("/stock", "Parts", ButtonKind::Quiet, None, ""))
        }
        (tabs("Kinds", &kinds))
        @if shown.is_empty() {
            (empty_state(&format!("No {kind} model yet."), "Write it from the maker's sheet, or load models from a file.",
                &[Action { href: &new, label: &new_label, primary: true }]))
        } @else { (models_table(&w, kind, &shown)) }
    };
    let crumb = counted(models.len(), "model");
    Ok(framed(&w, &app, Framed { title: "Models", active: Nav::Stock, crumb, body, ..Framed::default() })
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
        &format!("{} models", capital(kind.word())),
        vec![Column::words("name"), Column::words("code"), Column::words("what it is")],
        models.iter().map(row).collect(),
    )
}

/// A model in a line.
fn summary(w: &Words, model: &Model) -> String {
    match model {
        Model::Head(m) => {
            let hand = if m.hand == Hand::Left { ", left" } else { "" };
            let numbers: Vec<&str> = m.numbers.iter().map(|n| n.number.as_str()).collect();
            format!("{}{hand}: {}; bore {} mm", m.club_kind, numbers.join(" "), decimal(m.bore_diameter_mm, 2))
        }
        Model::Adapter(m) => format!("{}, for {}", w.mass(m.mass_g), m.fits_head_model),
        Model::Shaft(m) => format!(
            "{}, {} {} mm, {}",
            m.material,
            m.tip,
            decimal(m.tip_diameter_mm, 2),
            m.blanks.first().map_or(String::new(), |b| format!("{} raw", w.mass(b.mass_g)))
        ),
        Model::Grip(m) => {
            format!("{}, {}, core {} mm", w.mass(m.mass_g), m.shape, decimal(m.core_diameter_mm, 1))
        }
        Model::TipWeight(m) => {
            format!("{}, tips {} to {} mm", w.mass(m.mass_g), decimal(m.tip_min_mm, 1), decimal(m.tip_max_mm, 1))
        }
        Model::Ferrule(m) => format!("{} mm inside, {}", decimal(m.inside_diameter_mm, 2), w.mass(m.mass_g)),
        Model::Adhesive(m) => {
            format!("pot life {} min at {} °C", decimal(m.pot_life_min, 0), decimal(m.pot_life_at_c, 0))
        }
        Model::Tape(m) => format!("{} g/m², {} mm", decimal(m.mass_per_area_g_per_m2, 0), decimal(m.thickness_mm, 2)),
    }
}

/// An example of the kind, from the invented shop, to write over.
fn example(w: &Words, kind: PartKind) -> Entries {
    let mut form = demo::models().iter().find(|m| m.kind() == kind).map(|model| typed(w, model)).unwrap_or_default();
    for name in ["code", "name", "label", "fits_head_model", "setting"] {
        form.set(name, "");
    }
    form
}

async fn blank(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    let kind = PartKind::from_key(Entries::new(pairs).text("kind")).unwrap_or(PartKind::Head);
    let notice = Notice {
        tone: Tone::Plain,
        text: "The figures below are an example.".into(),
        next: "Write over every one of them from the maker's sheet or your own measuring.".into(),
    };
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
        text: format!("{} kept.", model.name()),
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
        form.refuse("code", format!("{code} is the code of {} already. Choose another", other.name()));
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
        Ok(()) => Ok(go_to(&format!("/stock/models?kind={}", model.kind().key())).into_response()),
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
    let body = html! {
        form.card method="post" action=(action) {
            div.fields {
                @if code.is_none() {
                    (form.field("code", "Code", Field { hint: "Short, of the shop's own: HERON-7", required: true, ..Field::default() }))
                }
                (form.field("name", "Name", Field { hint: "As it stands on the box", required: true, ..Field::default() }))
                (form.field("label", "Label", Field { hint: "Anything that helps to tell it", ..Field::default() }))
            }
            div.fields { @for ask in asks(kind).iter().filter(|a| !matches!(a.way, Way::Rows(_))) { (ask_field(w, ask, form, &models)) } }
            @for ask in asks(kind) { @if let Way::Rows(columns) = ask.way { (rows_field(w, ask, columns, form)) } }
            div.actions { (button(&Button { label: if code.is_some() { "Keep the change" } else { "Keep the model" }, ..Button::default() })) }
        }
        @if let Some(code) = code {
            details { summary { "Take this model away" }
                form method="post" action={ "/stock/models/" (in_address(code)) "/remove" } {
                    p { "Only a model that no part and no sheet uses can be taken away." }
                    div.actions { (button(&Button { label: "Take it away", kind: ButtonKind::Danger, ..Button::default() })) }
                }
            }
        }
        (actions(&[Action { href: &format!("/stock/models?kind={}", kind.key()), label: &format!("All {kind} models"), primary: false }]))
    };
    let title = if code.is_some() { form.text("name").to_owned() } else { format!("New {kind} model") };
    let crumb = code.map_or_else(String::new, |code| format!("{kind} model, code {code}"));
    let notice = form.notice(w).or(notice);
    let page =
        framed(w, app, Framed { title: &title, active: Nav::Stock, crumb, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

fn ask_field(w: &Words, ask: &Ask, form: &Entries, models: &[Model]) -> Markup {
    let shape = Field { hint: ask.hint, required: !ask.optional, ..Field::default() };
    match ask.way {
        Way::Number(unit) => form.field(ask.key, ask.label, Field { unit, inputmode: "decimal", ..shape }),
        Way::Length => form.field(ask.key, ask.label, Field { unit: w.length_sign(), ..shape }),
        Way::YesNo => check(ask.key, "1", ask.label, form.has(ask.key, "1")),
        Way::Choice(list) => {
            let mut choices = list();
            if ask.optional {
                choices.insert(0, ("", "not said"));
            }
            form.select(ask.key, ask.label, ask.hint, &choices)
        }
        Way::Model(kind) => {
            let choices: Vec<(&str, &str)> = std::iter::once(("", "choose"))
                .chain(models.iter().filter(|m| m.kind() == kind).map(|m| (m.code(), m.name())))
                .collect();
            form.select(ask.key, ask.label, ask.hint, &choices)
        }
        Way::Text | Way::SwingWeight | Way::Rows(_) => form.field(ask.key, ask.label, shape),
    }
}

fn rows_field(w: &Words, ask: &Ask, columns: &[Ask], form: &Entries) -> Markup {
    let lines = u32::try_from(form.raw(ask.key).lines().count() + 1).unwrap_or(12).clamp(3, 16);
    let units: Vec<String> = columns
        .iter()
        .filter_map(|c| match c.way {
            Way::Number(unit) => Some(format!("{} in {unit}", c.label)),
            Way::Length => Some(format!("{} in {} or with its unit", c.label, w.length_sign())),
            _ => None,
        })
        .collect();
    let dot = if ask.hint.is_empty() { "" } else { ". " };
    let hint = format!("One line each under the line that names the columns; {}. {}{dot}", units.join(", "), ask.hint);
    let head = header(w, columns);
    form.area(ask.key, ask.label, lines, Field { hint: hint.trim(), placeholder: &head, ..Field::default() })
}

async fn export(State(app): State<App>, Reader(w): Reader) -> PageResult {
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
            (file_field("file", "File", "Models that were saved here as a file (JSON)", ".json,application/json"))
            (form.area("text", "Or its text", 8, Field::default()))
            p.hint { "Good models are kept, and replace those with the same code; bad ones are named." }
            div.actions { (button(&Button { label: "Load the models", ..Button::default() })) }
        }
        (actions(&[
            Action { href: "/stock/models/export", label: "Save all models as a file", primary: false },
            Action { href: "/stock/models", label: "Back to the models", primary: false },
        ]))
    };
    let notice = form.notice(w).or(notice);
    let page =
        framed(w, app, Framed { title: "Models from a file", active: Nav::Stock, notice, body, ..Framed::default() })
            .await?;
    Ok((status, page).into_response())
}

async fn load_file(State(app): State<App>, Reader(w): Reader, form: Multipart) -> PageResult {
    let (mut form, file) = match Entries::with_file(&w, form).await {
        Ok(read) => read,
        Err(fault) => {
            let notice = notice_of(&w, &fault.into());
            return file_page(&w, &app, &Entries::default(), Some(notice), &html! {}, StatusCode::BAD_REQUEST).await;
        }
    };
    let text = file.map_or_else(|| form.raw("text").to_owned(), |bytes| String::from_utf8_lossy(&bytes).into_owned());
    if text.trim().is_empty() {
        form.refuse("text", "There is no file and no text. Choose a file, or paste the models");
        return file_page(&w, &app, &form, None, &html! {}, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    match app.import_models(&text).await {
        Ok(done) => {
            let above = html! { @if !done.bad.is_empty() {
                (section("Not kept", &html! {}, &html! { ul.plain { @for bad in &done.bad {
                    li { (tag(Tone::Bad, &format!("model {}", bad.entry))) " " @if !bad.code.is_empty() { strong { (bad.code) } ": " } (beside(&w, &Refusal::new(&bad.problem))) }
                } } }))
            } };
            let notice = Notice {
                tone: if done.kept.is_empty() { Tone::Care } else { Tone::Good },
                text: format!("{} kept.", capital(&counted(done.kept.len(), "model"))),
                next: if done.bad.is_empty() {
                    String::new()
                } else {
                    "Mend the others in the file and load it again.".into()
                },
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
