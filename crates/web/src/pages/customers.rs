//! Customers: the list, one with their sheets and jobs, the form, the names on sheets that belong to nobody.

use super::clubs::clubs_table;
use super::entries::{Entries, go_to, in_address, plain, query, words_cards};
use super::measured::Measured;
use super::{Framed, PageResult, Who, beside, failure_status, framed, today};
use crate::asked::Path;
use crate::reader::Reader;
use app::App;
use app::customer::{CUSTOMERS_SHOWN, CustomerSummary, CustomerView, NameOnSheets, TakeName};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use look::{
    Action, Button, ButtonKind, Cell, Choice, Column, Field, Icon, Nav, Select, Tab, Tone, button, definitions,
    empty_state, hidden, link_button, search_bar, section, select, tabs, tag,
};
use maud::{Markup, html};
use trade::customer::{Customer, code};
use trade::job::JobState;
use trade::kind::Hand;
use trade::wrap::Wraps;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/customers", get(list))
        .route("/customers/new", get(blank).post(add))
        .route("/customers/names", post(take_name))
        .route("/customers/{number}", get(show))
        .route("/customers/{number}/change", get(form_of).post(change))
}

/// Sheets, the customers that they are for, the clubs that live on and the prices, as tabs; `now` is the address of the one that is open.
pub(super) fn sheet_places(w: &Words, now: &str) -> Markup {
    let places = [
        ("frame-sheets", "/sheets"),
        ("customer-title", "/customers"),
        ("club-life-page", "/clubs"),
        ("price-title", "/prices"),
    ];
    tabs(
        &w.text("customer-places"),
        &places.map(|(id, href)| Tab { label: w.text(id).into(), href, count: "", current: href == now }),
    )
}

/// Names to choose from while one is typed.
pub(super) fn name_list(customers: &[CustomerSummary]) -> Markup {
    html! { datalist #customers { @for one in customers { option value=(one.name) { (one.code) } } } }
}

async fn list(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    let asked = Entries::new(pairs);
    let wanted = asked.text("text");
    let found = app.customers(wanted).await?;
    let names = app.names_on_sheets().await?;
    let body = html! {
        (sheet_places(&w, "/customers"))
        @if found.is_empty() && wanted.is_empty() {
            (empty_state(&w.text("customer-none-yet"), &w.text("customer-none-yet-next"),
                &[Action { href: "/customers/new", label: &w.text("customer-new"), primary: true }]))
        } @else {
            div.actions { (link_button("/customers/new", &w.text("customer-new"), ButtonKind::Primary, Some(Icon::Plus), "n")) }
            (search_bar(&w, "/customers", "text", &w.text("customer-search"), asked.raw("text"), &html! {}))
            @if found.is_empty() {
                (empty_state(&w.text("customer-none-found"), &w.text("customer-none-found-next"),
                    &[Action { href: "/customers", label: &w.text("customer-all"), primary: true }]))
            } @else { (list_table(&w, &found)) }
            @if i64::try_from(found.len()).is_ok_and(|n| n == CUSTOMERS_SHOWN) { p.small { (text!(w, "customer-first-shown", n = CUSTOMERS_SHOWN)) } }
        }
        @if !names.is_empty() { (names_part(&w, &names)) }
    };
    let crumb = text!(w, "customer-count", n = found.len());
    let title = w.text("customer-title");
    Ok(framed(&w, &app, Framed { title: &title, active: Nav::Sheets, crumb, body, ..Framed::default() })
        .await?
        .into_response())
}

fn list_table(w: &Words, found: &[CustomerSummary]) -> Markup {
    let row = |one: &CustomerSummary| {
        vec![
            Cell(html! { a href={ "/customers/" (one.number) } { (one.name) } }),
            Cell::from(one.code.as_str()),
            Cell::from(one.hand.map_or_else(String::new, |hand| w.tell(&hand))),
            Cell::from(one.sheets.to_string()),
            Cell::from(one.jobs.to_string()),
        ]
    };
    let columns = vec![
        Column::words(w.text("customer-column-name")),
        Column::words(w.text("customer-column-code")),
        Column::words(w.text("customer-column-hand")),
        Column::figures(w.text("customer-column-sheets")),
        Column::figures(w.text("customer-column-jobs")),
    ];
    words_cards(&w.text("customer-list"), columns, found.iter().map(row).collect())
}

/// The names on sheets that belong to nobody, each with one touch that makes a customer of it.
fn names_part(w: &Words, names: &[NameOnSheets]) -> Markup {
    section(
        &w.text("customer-names"),
        &html! {},
        &html! {
            p.hint { (w.text("customer-names-hint")) }
            ul.plain.readings { @for one in names { li {
                span { strong { (one.name) } " " span.small { (text!(w, "customer-names-sheets", n = one.sheets)) } }
                @for number in &one.customers {
                    (take_form(&one.name, &number.to_string(), &text!(w, "customer-names-give", code = code(*number))))
                }
                (take_form(&one.name, "", &w.text("customer-names-make")))
            } } }
        },
    )
}

fn take_form(name: &str, customer: &str, label: &str) -> Markup {
    html! {
        form method="post" action="/customers/names" {
            (hidden("name", name)) (hidden("customer", customer))
            (button(&Button { label, kind: ButtonKind::Quiet, ..Button::default() }))
        }
    }
}

async fn take_name(State(app): State<App>, Who(by): Who, Form(fields): Form<Vec<(String, String)>>) -> PageResult {
    let form = Entries::new(fields);
    let take = TakeName { name: form.raw("name").to_owned(), customer: form.text("customer").parse().ok(), by };
    let view = app.take_name(&take).await?;
    Ok(go_to(&format!("/customers/{}", view.number)).into_response())
}

async fn show(State(app): State<App>, Reader(w): Reader, Path(number): Path<i64>) -> PageResult {
    let view = app.customer(number).await?;
    let clubs = app.clubs("", Some(number), CUSTOMERS_SHOWN).await?;
    let body = html! {
        (sheet_places(&w, "/customers"))
        div.actions {
            (link_button(&format!("/sheets/new?customer={number}"), &w.text("sheet-new"), ButtonKind::Primary, Some(Icon::Plus), "n"))
            (link_button(&format!("/clubs/new{}", query(&[("owner", number.to_string().as_str()), ("player", view.customer.name.as_str())])), &w.text("club-life-note"), ButtonKind::Quiet, None, ""))
            (link_button(&format!("/customers/{number}/change"), &w.text("customer-change"), ButtonKind::Quiet, None, ""))
        }
        (about(&w, &view.customer))
        @if !clubs.is_empty() {
            (section(&w.text("customer-clubs"), &html! {}, &html! {
                (clubs_table(&w, &clubs, false))
                p.actions { (link_button(&format!("/api/v1/clubs/export?owner={number}"), &w.text("customer-clubs-export"), ButtonKind::Quiet, Some(Icon::Export), "")) }
            }))
        }
        (jobs_part(&w, &view))
        (sheets_part(&w, &app, &view))
        @if !view.parts.is_empty() {
            (section(&w.text("customer-parts"), &html! {}, &html! {
                p { @for part in &view.parts { a href={ "/stock/parts/" (in_address(part)) } { (part) } " " } }
            }))
        }
        (section(&w.text("customer-held"), &html! {}, &html! {
            p.hint { (w.text("customer-held-hint")) }
            p.actions {
                a.button.quiet href={ "/api/v1/customers/" (number) "/export" } download={ (view.code) ".json" } { (w.text("customer-export")) }
                (link_button(&format!("/customers/{number}/delete"), &w.text("customer-delete"), ButtonKind::Quiet, None, ""))
            }
        }))
    };
    let crumb = view.code.clone();
    let title = view.customer.name.clone();
    Ok(framed(&w, &app, Framed { title: &title, active: Nav::Sheets, crumb, body, ..Framed::default() })
        .await?
        .into_response())
}

/// What is known of a customer.
fn about(w: &Words, customer: &Customer) -> Markup {
    let mut rows = Vec::new();
    if let Some(hand) = customer.hand {
        rows.push((w.text("customer-form-hand"), html! { (w.tell(&hand)) }));
    }
    for (id, value) in [
        ("customer-form-phone", &customer.phone),
        ("customer-form-email", &customer.email),
        ("customer-form-address", &customer.address),
        ("customer-form-glove", &customer.glove),
    ] {
        if !value.is_empty() {
            rows.push((w.text(id), html! { (value) }));
        }
    }
    if let Some(mm) = customer.grip_diameter_mm {
        rows.push((w.text("customer-form-grip"), html! { (w.length_to(mm, 3)) }));
    }
    if let Some(wraps) = customer.wraps {
        rows.push((w.text("customer-form-wraps"), html! { (super::sheets::wraps(w, wraps)) }));
    }
    if !customer.note.is_empty() {
        rows.push((w.text("customer-form-note"), html! { (customer.note) }));
    }
    html! { @if rows.is_empty() { p.hint { (w.text("customer-only-name")) } } @else { (definitions(&rows)) } }
}

fn jobs_part(w: &Words, view: &CustomerView) -> Markup {
    let row = |job: &app::customer::CustomerJob| {
        let href = match job.state {
            JobState::Finished => format!("/records/{}", job.number),
            JobState::Planned => format!("/bench/{}", job.number),
            JobState::Open | JobState::Dropped => format!("/plan/{}", job.number),
        };
        let clubs: Vec<String> = job.clubs.iter().map(|number| w.club_number(number)).collect();
        vec![
            Cell(html! { a href=(href) { (text!(w, "sheet-job", job = job.number)) } }),
            Cell::from(w.tell(&job.state)),
            Cell::from(w.date(job.due)),
            Cell::from(clubs.join(" ")),
        ]
    };
    let columns = ["customer-column-job", "customer-column-state", "sheet-column-due", "sheet-column-clubs"];
    section(
        &w.text("customer-jobs"),
        &html! {},
        &html! {
            @if view.jobs.is_empty() { p { (w.text("customer-no-job")) } }
            @else { (words_cards(&w.text("customer-jobs"), columns.map(|id| Column::words(w.text(id))).to_vec(), view.jobs.iter().map(row).collect())) }
        },
    )
}

fn sheets_part(w: &Words, app: &App, view: &CustomerView) -> Markup {
    let open: Vec<_> = view.sheets.iter().filter(|sheet| sheet.job.is_none()).collect();
    let row = |sheet: &&app::sheet::SheetSummary| {
        let clubs: Vec<String> = sheet.clubs.iter().map(|number| w.club_number(number)).collect();
        vec![
            Cell(html! { a href={ "/sheets/" (in_address(sheet.id.as_str())) } { (clubs.join(" ")) } }),
            Cell(today::due(w, sheet.due, app.today())),
            Cell(tag(Tone::Care, &w.text("sheet-not-approved"))),
        ]
    };
    if open.is_empty() {
        return html! {};
    }
    let columns = ["sheet-column-clubs", "sheet-column-due", "customer-column-state"];
    section(
        &w.text("customer-sheets"),
        &html! {},
        &words_cards(
            &w.text("customer-sheets"),
            columns.map(|id| Column::words(w.text(id))).to_vec(),
            open.iter().map(row).collect(),
        ),
    )
}

async fn blank(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(pairs);
    let name = form.text("name").to_owned();
    form.set("name", name);
    form_page(&w, &app, &form, None, StatusCode::OK).await
}

async fn add(State(app): State<App>, Reader(w): Reader, Form(fields): Form<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(fields);
    let Some(customer) = read(&w, &mut form) else {
        return form_page(&w, &app, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    };
    let same = app.customers_named(&customer.name).await?;
    if !same.is_empty() && !form.has("another", "yes") {
        form.set("ask-another", "yes");
        let codes: Vec<String> = same.iter().map(|number| code(*number)).collect();
        form.refuse("name", text!(w, "customer-same-name", codes = codes));
        return form_page(&w, &app, &form, None, StatusCode::CONFLICT).await;
    }
    match app.add_customer(&customer).await {
        Ok(view) => Ok(go_to(&format!("/customers/{}", view.number)).into_response()),
        Err(error) => refused(&w, &app, form, None, &error).await,
    }
}

async fn form_of(State(app): State<App>, Reader(w): Reader, Path(number): Path<i64>) -> PageResult {
    let view = app.customer(number).await?;
    form_page(&w, &app, &typed(&w, &view.customer, view.version), Some(number), StatusCode::OK).await
}

async fn change(
    State(app): State<App>,
    Reader(w): Reader,
    Path(number): Path<i64>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let Some(customer) = read(&w, &mut form) else {
        return form_page(&w, &app, &form, Some(number), StatusCode::UNPROCESSABLE_ENTITY).await;
    };
    let version = form.text("version").parse().unwrap_or(-1);
    match app.change_customer(number, &customer, version).await {
        Ok(_) => Ok(go_to(&format!("/customers/{number}")).into_response()),
        Err(error) => refused(&w, &app, form, Some(number), &error).await,
    }
}

async fn refused(w: &Words, app: &App, mut form: Entries, number: Option<i64>, error: &app::AppError) -> PageResult {
    let refusal = error.refusal();
    let field = refusal.entry().unwrap_or("name").to_owned();
    form.refuse(&field, beside(w, &refusal));
    form_page(w, app, &form, number, failure_status(error)).await
}

/// The customer as they would be typed.
fn typed(w: &Words, customer: &Customer, version: i64) -> Entries {
    let count = |of: fn(&Wraps) -> u8| customer.wraps.map_or_else(String::new, |wraps| of(&wraps).to_string());
    let pairs = [
        ("name", customer.name.clone()),
        ("hand", customer.hand.map_or("", Hand::key).to_owned()),
        ("phone", customer.phone.clone()),
        ("email", customer.email.clone()),
        ("address", customer.address.clone()),
        ("glove", customer.glove.clone()),
        ("grip_diameter_mm", customer.grip_diameter_mm.map(|mm| Measured::Millimetre.typed(w, mm)).unwrap_or_default()),
        ("wraps_full", count(|wraps| wraps.full)),
        ("wraps_lower", count(|wraps| wraps.lower_hand)),
        ("note", customer.note.clone()),
        ("version", plain(version as f64)),
    ];
    Entries::new(pairs.map(|(k, v)| (k.to_owned(), v)).to_vec())
}

fn read(w: &Words, form: &mut Entries) -> Option<Customer> {
    let text = |name: &str| form.text(name).to_owned();
    let mut customer = Customer {
        name: text("name"),
        hand: Hand::from_key(form.text("hand")),
        phone: text("phone"),
        email: text("email"),
        address: text("address"),
        note: text("note"),
        glove: text("glove"),
        grip_diameter_mm: None,
        wraps: None,
    };
    customer.grip_diameter_mm = form.measured(w, "grip_diameter_mm", Measured::Millimetre);
    let (full, lower) = (form.count(w, "wraps_full"), form.count(w, "wraps_lower"));
    if full.is_some() || lower.is_some() {
        let mut layers = |name: &str, n: Option<i64>| match u8::try_from(n.unwrap_or(0)) {
            Ok(layers) if layers <= 20 => layers,
            _ => {
                form.refuse(name, w.text("customer-form-wraps-too-many"));
                0
            }
        };
        customer.wraps =
            Some(Wraps { base: 1, full: layers("wraps_full", full), lower_hand: layers("wraps_lower", lower) });
    }
    if let Err(error) = customer.clone().trimmed().check() {
        let refusal = error.refusal();
        let field = refusal.entry().unwrap_or("name").to_owned();
        form.refuse(&field, beside(w, &refusal));
    }
    form.is_sound().then_some(customer)
}

async fn form_page(w: &Words, app: &App, form: &Entries, number: Option<i64>, status: StatusCode) -> PageResult {
    let hands: Vec<Choice<'_>> = std::iter::once(("", w.text("customer-form-not-asked")))
        .chain(Hand::ALL.iter().map(|h| (h.key(), w.tell(h))))
        .map(|(value, label)| Choice { value, label: label.into(), chosen: form.text("hand") == value })
        .collect();
    let to = number.map_or_else(|| "/customers/new".to_owned(), |n| format!("/customers/{n}/change"));
    let back = number.map_or_else(|| "/customers".to_owned(), |n| format!("/customers/{n}"));
    let unit = w.length_sign();
    let wraps_hint = w.text("customer-form-wraps-hint");
    let whole = |hint| Field { inputmode: "numeric", hint, ..Field::default() };
    let body = html! {
        (sheet_places(w, "/customers"))
        form method="post" action=(to) {
            (hidden("version", form.text("version")))
            @if form.has("ask-another", "yes") { (hidden("another", "yes")) }
            div.card {
                div.fields {
                    (form.field("name", &w.text("customer-form-name"), Field { required: true, autofocus: number.is_none(), ..Field::default() }))
                    (select(&Select { name: "hand", label: &w.text("customer-form-hand"), hint: "", error: None, choices: hands }))
                    (form.field("glove", &w.text("customer-form-glove"), Field { hint: &w.text("customer-form-glove-hint"), ..Field::default() }))
                    (form.field("grip_diameter_mm", &w.text("customer-form-grip"), Field { unit, inputmode: "decimal", hint: &w.text("customer-form-grip-hint"), ..Field::default() }))
                    (form.field("wraps_full", &w.text("customer-form-wraps-full"), whole(&wraps_hint)))
                    (form.field("wraps_lower", &w.text("customer-form-wraps-lower"), whole("")))
                }
            }
            div.card {
                p.hint { (w.text("customer-form-contacts-hint")) }
                div.fields {
                    (form.field("phone", &w.text("customer-form-phone"), Field { kind: "tel", ..Field::default() }))
                    (form.field("email", &w.text("customer-form-email"), Field { inputmode: "email", ..Field::default() }))
                }
                (form.area("address", &w.text("customer-form-address"), 2, Field::default()))
                (form.area("note", &w.text("customer-form-note"), 3, Field::default()))
            }
            @let save = if form.has("ask-another", "yes") { "customer-save-another" } else { "customer-save" };
            div.actions {
                (button(&Button { label: &w.text(save), ..Button::default() }))
                (link_button(&back, &w.text("button-back"), ButtonKind::Quiet, None, ""))
            }
        }
    };
    let title = w.text(if number.is_some() { "customer-change-title" } else { "customer-new" });
    let notice = form.notice(w);
    let page = framed(w, app, Framed { title: &title, active: Nav::Sheets, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

/// Where a new customer of a name is entered.
pub(super) fn new_address(name: &str) -> String {
    format!("/customers/new{}", query(&[("name", name)]))
}
