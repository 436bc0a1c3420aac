//! Parts: the list with its filters, one part, the links to weigh in, import and export.

use super::entries::{Entries, go_on, in_address, plain, query, typed_length, words_table};
use super::{Framed, PageResult, Who, failure_status, framed, say, stock_import, stock_weigh};
use super::{beside_its_entry, still_below};
use crate::asked::Path;
use crate::reader::Reader;
use crate::tablet::Done;
use app::App;
use app::stock::{PartChange, PartQuery};
use axum::Router;
use axum::extract::{DefaultBodyLimit, Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use look::{
    Action, Button, ButtonKind, Cell, Column, Field, Figure, Icon, Nav, Notice, Tab, Tone, button, empty_state,
    figures, hidden, icon, link_button, rich, tabs, tag,
};
use maud::{Markup, html};
use trade::customer::code;
use trade::model::Model;
use trade::model::PartKind;
use trade::part::Part;
use trade::part::PartState;
use trade::part_field::{self, Measure};
use trade::reading::What;
use words::{Words, text};

/// Parts on one page.
const PAGE: i64 = 50;

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/stock", get(list))
        .route("/stock/new", get(stock_weigh::form).post(stock_weigh::keep))
        .route("/stock/new/take-back", post(stock_weigh::take_back))
        .route("/stock/new/settings", post(stock_weigh::settings))
        .route("/stock/import", get(stock_import::form).post(stock_import::look).layer(wide()))
        .route("/stock/import/keep", post(stock_import::keep).layer(wide()))
        .route("/stock/import/mend", post(stock_import::mend))
        .route("/stock/import/forget", post(stock_import::forget))
        .route("/stock/parts/{code}", get(show).post(change))
}

/// The list that is carried from one step of the import to the next is a third longer as letters.
fn wide() -> DefaultBodyLimit {
    DefaultBodyLimit::max(app::stock::IMPORT_MAX_BYTES / 3 * 4 + 64 * 1024)
}

/// Which parts an address asks for. What no filter knows is left out. What went out in clubs is not in the shop any more
/// and is listed only where a state asks for it.
pub(super) fn filter(asked: &Entries) -> PartQuery {
    let in_shop = asked.some("state").is_none();
    PartQuery {
        kind: PartKind::from_key(asked.text("kind")),
        model: asked.some("model"),
        number: asked.some("number"),
        state: PartState::from_key(asked.text("state")),
        without: in_shop.then_some(PartState::Used),
        text: asked.some("text"),
        ..PartQuery::default()
    }
}

/// The same filter as the query of an address, with one value put in another's place.
fn with(asked: &Entries, name: &str, value: &str) -> String {
    let keep = |n: &'static str| if n == name { (n, value) } else { (n, asked.text(n)) };
    query(&["kind", "model", "number", "state", "text", "page"].map(keep))
}

/// The filter as the query of the files, which know no page.
fn file_query(wanted: &PartQuery) -> String {
    let text = |t: &Option<String>| t.clone().unwrap_or_default();
    let (model, number, words) = (text(&wanted.model), text(&wanted.number), text(&wanted.text));
    query(&[
        ("kind", wanted.kind.map_or("", PartKind::key)),
        ("model", &model),
        ("number", &number),
        ("state", wanted.state.map_or("", PartState::key)),
        ("without", wanted.without.map_or("", PartState::key)),
        ("text", &words),
    ])
}

async fn list(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    let mut asked = Entries::new(pairs);
    let models = app.models(None).await?;
    let page = asked.text("page").parse::<i64>().unwrap_or(1).clamp(1, 1_000_000);
    asked.set("page", "");
    let wanted = filter(&asked);
    let (parts, total) =
        app.parts(&PartQuery { limit: Some(PAGE), offset: Some((page - 1) * PAGE), ..wanted.clone() }).await?;
    let (kinds, own) = kind_tabs(&w, &app, &asked, &wanted).await?;
    let narrowed = ["kind", "model", "number", "state", "text"].iter().any(|n| asked.some(n).is_some());
    let gone = match &wanted.text {
        Some(code) if wanted.without.is_some() => app.part(code).await.ok().filter(|p| p.state == PartState::Used),
        _ => None,
    };
    let body = html! {
        (super::orders::stock_places(&w, super::orders::StockPlace::Parts))
        div.actions.tight {
            (link_button("/stock/new", &w.text("stock-weigh-in"), ButtonKind::Primary, Some(Icon::Plus), "n"))
            (link_button("/stock/import", &w.text("stock-import"), ButtonKind::Quiet, Some(Icon::Import), ""))
            (link_button(&format!("/labels{}", with(&asked, "page", "")), &w.text("stock-print-labels"), ButtonKind::Quiet, Some(Icon::Print), ""))
            (link_button("/stock/models", &w.text("stock-models"), ButtonKind::Quiet, None, ""))
        }
        @if total == 0 && !narrowed { (nothing_yet(&w, models.is_empty())) } @else {
            (super::find::find_form(&w, "", false))
            (kinds)
            (filter_form(&w, &asked, &models))
            @if let Some(part) = &gone {
                p { (rich!(&w, "stock-went-out", |_, inner| html! { a href={ "/stock/parts/" (in_address(&part.code)) } { (inner) } }, code = part.code.as_str())) }
            }
            @if parts.is_empty() && gone.is_none() {
                (empty_state(&w.text("stock-none-found"), &w.text("stock-none-found-next"), &[
                    Action { href: "/stock", label: &w.text("stock-all-parts"), primary: true },
                    Action { href: &format!("/stock{}", with(&asked, "state", "any")), label: &w.text("stock-with-gone"), primary: false },
                ]))
            } @else if !parts.is_empty() {
                (parts_table(&w, &parts, &models))
                (pager(&w, &asked, page, total))
            }
        }
        // What takes the list away stands under it: on a phone the list itself must not lie below the fold.
        div.actions {
            (link_button(&format!("/api/v1/parts/export{}", file_query(&wanted)), &w.text("stock-export-csv"), ButtonKind::Quiet, Some(Icon::Export), ""))
            (link_button(&format!("/api/v1/parts/export.xlsx{}", file_query(&wanted)), &w.text("stock-export-xlsx"), ButtonKind::Quiet, Some(Icon::Export), ""))
        }
    };
    let mut crumb = text!(w, "stock-count", n = own);
    if total > own {
        crumb = text!(w, "stock-count-and-customers", parts = crumb, n = total - own);
    }
    Ok(framed(&w, &app, Framed { title: &w.text("stock-title"), active: Nav::Stock, crumb, body, ..Framed::default() })
        .await?
        .into_response())
}

fn nothing_yet(w: &Words, no_models: bool) -> Markup {
    if no_models {
        empty_state(
            &w.text("stock-no-models"),
            &w.text("stock-no-models-next"),
            &[
                Action { href: "/stock/models/new?kind=head", label: &w.text("stock-new-head-model"), primary: true },
                Action { href: "/stock/models/file", label: &w.text("stock-load-models"), primary: false },
            ],
        )
    } else {
        empty_state(
            &w.text("stock-empty"),
            &w.text("stock-empty-next"),
            &[
                Action { href: "/stock/new", label: &w.text("stock-weigh-in"), primary: true },
                Action { href: "/stock/import", label: &w.text("stock-import"), primary: false },
            ],
        )
    }
}

/// The kinds of parts with how many of each are the shop's, and how many of the list are: what customers left here is listed
/// with the rest, and is not stock.
async fn kind_tabs(
    w: &Words,
    app: &App,
    asked: &Entries,
    wanted: &PartQuery,
) -> Result<(Markup, i64), super::PageError> {
    let mut shown = Vec::new();
    let owner = wanted.owner.clone().or_else(|| Some("shop".to_owned()));
    let counts = app.count_kinds(&PartQuery { kind: None, owner, ..wanted.clone() }).await?;
    let own = counts.iter().filter(|(of, _)| wanted.kind.is_none_or(|kind| kind == *of)).map(|(_, n)| n).sum();
    for kind in std::iter::once(None).chain(PartKind::ALL.iter().copied().map(Some)) {
        let count: i64 = counts.iter().filter(|(of, _)| kind.is_none_or(|k| k == *of)).map(|(_, n)| n).sum();
        if count > 0 || kind.is_none() || kind == wanted.kind {
            let href = format!("/stock{}", with(asked, "kind", kind.map_or("", PartKind::key)));
            shown.push((
                kind.map_or_else(|| w.text("stock-all-kinds"), |k| kinds(w, k)),
                href,
                count.to_string(),
                kind == wanted.kind,
            ));
        }
    }
    let list: Vec<Tab<'_>> = shown
        .iter()
        .map(|(label, href, count, current)| Tab { label: label.into(), href, count, current: *current })
        .collect();
    Ok((tabs(&w.text("stock-kinds"), &list), own))
}

/// A kind of parts in the plural: `heads`.
pub(super) fn kinds(w: &Words, kind: PartKind) -> String {
    w.text(&format!("stock-kinds-{}", kind.key().replace('_', "-")))
}

fn filter_form(w: &Words, asked: &Entries, models: &[Model]) -> Markup {
    let kind = asked.text("kind");
    let of_kind = models.iter().filter(|m| kind.is_empty() || m.kind().key() == kind);
    let option =
        |value: &str, label: &str, now: &str| html! { option value=(value) selected[value == now] { (label) } };
    html! {
        form.search role="search" method="get" action="/stock" {
            @if !kind.is_empty() { (hidden("kind", kind)) }
            label.hidden for="text" { (w.text("stock-search")) }
            input #text type="search" name="text" value=(asked.raw("text")) placeholder=(w.text("stock-search"));
            label.hidden for="model" { (w.text("part-label-model")) }
            select #model name="model" {
                (option("", &w.text("stock-any-model"), asked.text("model")))
                @for model in of_kind { (option(model.code(), model.name(), asked.text("model"))) }
            }
            label.hidden for="number" { (w.text("part-label-number")) }
            input #number name="number" value=(asked.raw("number")) placeholder=(w.text("part-label-number"));
            label.hidden for="state" { (w.text("part-label-state")) }
            select #state name="state" {
                (option("", &w.text("stock-in-shop"), asked.text("state")))
                (option("any", &w.text("stock-any-state"), asked.text("state")))
                @for state in PartState::ALL { (option(state.key(), &w.tell(state), asked.text("state"))) }
            }
            button.button.quiet type="submit" { (icon(Icon::Search)) span { (w.text("stock-find")) } }
            @if ["model", "number", "state", "text"].iter().any(|n| asked.some(n).is_some()) {
                a.button.quiet href={ "/stock" (query(&[("kind", kind)])) } { (icon(Icon::Close)) span { (w.text("stock-clear")) } }
            }
        }
    }
}

fn parts_table(w: &Words, parts: &[Part], models: &[Model]) -> Markup {
    let name = |code: &str| models.iter().find(|m| m.code() == code).map_or(code.to_owned(), |m| m.name().to_owned());
    // A column that is empty for most would only make the others narrow.
    let with_cpm = parts.iter().all(|p| p.kind == PartKind::Shaft) && parts.iter().any(|p| p.cpm.is_some());
    let row = |part: &Part| {
        let mut cells = vec![
            Cell(html! { a href={ "/stock/parts/" (in_address(&part.code)) } { (part.code) } }),
            Cell::from(part.mass_g.map_or_else(|| w.text("stock-not-weighed"), |figure| w.mass(figure))),
        ];
        if with_cpm {
            cells.push(Cell::from(part.cpm.map_or(String::new(), |cpm| say::value(w, What::Cpm, cpm))));
        }
        cells.extend([
            Cell(state_tag(w, part.state)),
            Cell::from(name(&part.model)),
            Cell::from(part.number.as_deref().map_or_else(String::new, |n| w.club_number(n))),
            Cell::from(w.tell(&part.kind)),
            Cell::from(part.count.map_or_else(String::new, |n| text!(w, "stock-left", n = n))),
            Cell(html! { (part.place) @if let Some(owner) = part.owner { " " a href={ "/customers/" (owner) } { (text!(w, "customer-part-of", code = code(owner))) } } }),
            Cell::from(part.lot.as_str()),
        ]);
        cells
    };
    let mut columns = vec![
        Column::words(w.text("part-field-code")),
        Column::figures(w.text("part-field-mass")),
        Column::words(w.text("part-field-state")),
        Column::words(w.text("part-field-model")),
        Column::words(w.text("part-field-number")),
        Column::words(w.text("part-field-kind")),
        Column::figures(w.text("part-field-count")),
        Column::words(w.text("part-field-place")),
        Column::words(w.text("part-field-lot")),
    ];
    if with_cpm {
        columns.insert(2, Column::figures(w.text("part-field-cpm")));
    }
    words_table(&w.text("stock-parts"), columns, parts.iter().map(row).collect())
}

fn state_tag(w: &Words, state: PartState) -> Markup {
    let tone = match state {
        PartState::Free => Tone::Good,
        PartState::Held | PartState::Ordered => Tone::Care,
        PartState::Used | PartState::Pulled => Tone::Plain,
        PartState::Rejected => Tone::Bad,
    };
    tag(tone, &w.tell(&state))
}

fn pager(w: &Words, asked: &Entries, page: i64, total: i64) -> Markup {
    let last = (total + PAGE - 1) / PAGE;
    let to = |n: i64| format!("/stock{}", with(asked, "page", &n.to_string()));
    html! {
        @if last > 1 {
            nav.actions aria-label=(w.text("stock-pages")) {
                @if page > 1 { (link_button(&to(page - 1), &w.text("stock-page-before"), ButtonKind::Quiet, Some(Icon::Back), "")) }
                span.hint { (text!(w, "stock-page", first = (page - 1) * PAGE + 1, last = (page * PAGE).min(total), total = total)) }
                @if page < last { (link_button(&to(page + 1), &w.text("stock-page-next"), ButtonKind::Quiet, Some(Icon::Forward), "")) }
            }
        }
    }
}

async fn show(State(app): State<App>, Reader(w): Reader, Path(code): Path<String>) -> PageResult {
    let part = app.part(&code).await?;
    part_page(&w, &app, &part, &typed(&w, &part), None, StatusCode::OK).await
}

fn typed(w: &Words, part: &Part) -> Entries {
    let mass =
        if part.mass_typed.is_empty() { part.mass_g.map(plain).unwrap_or_default() } else { part.mass_typed.clone() };
    let mut pairs = vec![
        ("mass", mass),
        ("place", part.place.clone()),
        ("owner", part.owner.map(code).unwrap_or_default()),
        ("lot", part.lot.clone()),
        ("state", part.state.key().to_owned()),
        ("count", part.count.map(|n| n.to_string()).unwrap_or_default()),
        ("version", part.version.to_string()),
    ];
    let figures = asked_figures(part.kind, |figure| figure.at_change);
    pairs.extend(figures.map(|(field, figure)| {
        let shown = |value| if field.measure == Measure::Length { typed_length(w, value) } else { plain(value) };
        (field.name, (figure.get)(part).map(shown).unwrap_or_default())
    }));
    Entries::new(pairs.into_iter().map(|(k, v)| (k.to_owned(), v)).collect())
}

async fn part_page(
    w: &Words,
    app: &App,
    part: &Part,
    form: &Entries,
    notice: Option<Notice>,
    status: StatusCode,
) -> PageResult {
    let here = format!("/stock/parts/{}", in_address(&part.code));
    let model = app.model(&part.model).await.ok();
    let number = part.number.as_deref().map(|n| format!(" {}", w.club_number(n))).unwrap_or_default();
    let mass = part.mass_g.map_or("–".to_owned(), |figure| w.mass(figure));
    let mass_note = model
        .as_ref()
        .and_then(|m| m.part_mass_g(part.number.as_deref()))
        .map(|model_g| text!(w, "stock-model-mass", model_g = model_g));
    let cpm = part.cpm.map(|cpm| say::value(w, What::Cpm, cpm));
    let line = app
        .frequency_line(part)
        .await?
        .and_then(|l| l.line_cpm)
        .map(|line_cpm| text!(w, "stock-line", line_cpm = line_cpm));
    // What is in a club is not on its shelf any more, and its figures are rarely changed.
    let used = part.state == PartState::Used && part.club.is_some();
    let change = html! {
        form.card method="post" action=(here) {
            (hidden("version", form.text("version")))
            div.fields { (part_fields(w, part, form)) }
            (form.field("reason", &w.text("part-life-why"), Field { hint: &w.text("stock-why-hint"), ..Field::default() }))
            div.actions { (button(&Button { label: &w.text("stock-change"), ..Button::default() })) }
        }
    };
    let (mass_label, cpm_label) = (w.text("part-field-mass"), w.text("part-field-cpm"));
    let lot = if part.lot.is_empty() { String::new() } else { text!(w, "part-of-lot", lot = part.lot) };
    let (place_label, in_club) = (w.text("stock-where"), w.text("stock-in-club"));
    let mut shown = vec![Figure { label: &mass_label, value: &mass, note: mass_note.as_deref().unwrap_or("") }];
    shown.extend(cpm.as_ref().map(|value| Figure { label: &cpm_label, value, note: line.as_deref().unwrap_or("") }));
    shown.push(Figure {
        label: &place_label,
        value: if used {
            &in_club
        } else if part.place.is_empty() {
            "–"
        } else {
            &part.place
        },
        note: &lot,
    });
    let body = html! {
        @if status == StatusCode::CONFLICT { p.actions { (link_button(&here, &w.text("stock-see-now"), ButtonKind::Quiet, None, "")) } }
        div.card {
            (figures(&shown))
            p {
                (state_tag(w, part.state)) " " (w.tell(&part.kind)) ", "
                a href={ "/stock/models/" (in_address(&part.model)) } { (model.as_ref().map_or(part.model.as_str(), |m| m.name())) } (number)
            }
        }
        @if !used { (change) }
        (super::part_life::life_part(w, app, &part.code).await?)
        @if used { details open[!form.is_sound() || status != StatusCode::OK] { summary { (w.text("stock-figure-wrong")) } (change) } }
        div.actions {
            @if part.kind == PartKind::Shaft {
                (link_button(&format!("{here}/profile"), &w.text("profile-open"), ButtonKind::Quiet, None, ""))
            }
            (link_button(&format!("/labels?codes={}&paper=strip", in_address(&part.code)), &w.text("stock-print-label"), ButtonKind::Quiet, Some(Icon::Print), ""))
            (link_button("/stock", &w.text("stock-back"), ButtonKind::Quiet, None, ""))
        }
    };
    let notice = notice.or_else(|| form.notice(w));
    let crumb = format!("{}{number}", w.tell(&part.kind));
    let page =
        framed(w, app, Framed { title: &part.code, active: Nav::Stock, crumb, notice, body, ..Framed::default() })
            .await?;
    Ok((status, page).into_response())
}

/// The boxes for what may be changed by hand: mass, place and lot, the count of a box, the figures of its kind.
fn part_fields(w: &Words, part: &Part, form: &Entries) -> Markup {
    html! {
        (form.field("mass", &w.text("part-label-mass"), Field { unit: w.mass_sign(), hint: &w.text(mass_example(w)), inputmode: "decimal", ..Field::default() }))
        (form.field("place", &w.text("part-label-place"), Field::default()))
        (form.field("owner", &w.text("part-label-owner"), Field { hint: &w.text("part-hint-owner"), ..Field::default() }))
        (form.field("lot", &w.text("part-label-lot"), Field::default()))
        @if part.count.is_some() { (form.field("count", &w.text("part-label-count"), Field { inputmode: "numeric", ..Field::default() })) }
        @for (field, _) in asked_figures(part.kind, |figure| figure.at_change) { (figure_field(w, form, field, false)) }
    }
}

/// The figures besides the mass that parts of a kind are asked for.
pub(super) fn asked_figures(
    kind: PartKind,
    asked: impl Fn(&part_field::Figure) -> bool,
) -> impl Iterator<Item = (&'static part_field::Field, &'static part_field::Figure)> {
    part_field::figures().filter(move |(_, figure)| figure.only == Some(kind) && asked(figure))
}

/// The box for a figure of a part, with its unit and hint. `next` leads on to the next box by Enter.
pub(super) fn figure_field(w: &Words, form: &Entries, field: &part_field::Field, next: bool) -> Markup {
    let id = field.name.replace('_', "-");
    let hint = match field.measure {
        Measure::Angle => String::new(),
        _ => w.text(&format!("part-hint-{id}")),
    };
    let unit = match field.measure {
        Measure::Mass => w.mass_sign(),
        Measure::Length => w.length_sign(),
        Measure::Frequency => "cpm",
        Measure::Angle => "°",
        Measure::Count | Measure::Word => "",
    };
    // Lengths may be typed with a fraction, which no keypad of digits has.
    let inputmode = if field.measure == Measure::Length { "" } else { "decimal" };
    let shape = Field { unit, inputmode, hint: &hint, enter_next: next, ..Field::default() };
    form.field(field.name, &w.text(&format!("part-label-{id}")), shape)
}

/// Name of the text with an example of a mass, in the reader's unit first.
fn mass_example(w: &Words) -> &'static str {
    if w.units.mass == quantity::MassUnit::Gram { "stock-mass-hint-g" } else { "stock-mass-hint-oz" }
}

async fn change(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(code): Path<String>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let part = app.part(&code).await?;
    let mut form = Entries::new(fields);
    // Only for its mistake; the text itself is kept with the part.
    let _ = form.mass_g(&w, "mass");
    let mut change = PartChange {
        version: form.text("version").parse().unwrap_or(-1),
        mass_typed: Some(form.text("mass").to_owned()),
        state: PartState::from_key(form.text("state")),
        place: Some(form.text("place").to_owned()),
        owner: Some(form.text("owner").to_owned()),
        lot: Some(form.text("lot").to_owned()),
        count: form.count(&w, "count"),
        reason: form.text("reason").to_owned(),
        by,
        ..PartChange::default()
    };
    for (field, _) in asked_figures(part.kind, |figure| figure.at_change) {
        change.set_figure(field.key, form.part_figure(&w, field));
    }
    if !form.is_sound() {
        return part_page(&w, &app, &part, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    match app.change_part(&code, &change).await {
        Ok(_) => Ok(go_on(&format!("/stock/parts/{}", in_address(&code)), Done::Corrected)),
        Err(error) => {
            let beside = error
                .field()
                .and_then(part_field::Field::by_key)
                .filter(|field| field.figure.as_ref().is_some_and(|figure| figure.at_change))
                .map(|field| field.name);
            let mut notice = None;
            match beside {
                Some(name) => form.refuse(name, beside_its_entry(&w, &error.refusal())),
                None => {
                    notice = Some(still_below(&w, &error));
                }
            }
            part_page(&w, &app, &part, &form, notice, failure_status(&error)).await
        }
    }
}
