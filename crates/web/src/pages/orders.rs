//! Orders: the list, a new one, one with what happened to it; what the plan of a job lacks; what a job waits for.

use super::entries::{Entries, go_on, go_to, query};
use super::order_shape::{close_form, history, parts, receive_form, state_tag, tell_form, window};
use super::{Framed, PageError, PageResult, Who, failure, failure_status, framed};
use crate::asked::Path;
use crate::reader::Reader;
use crate::tablet::Done;
use crate::units;
use app::job::JobFile;
use app::order::{CloseOrder, JobCount, NewOrder, OrderForJob, OrderQuery, Receive, TellOrder};
use app::{App, AppError, Kind};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use axum::routing::{get, post};
use desk::order::PartCount;
use desk::order::Wait;
use desk::order::Waiting;
use desk::order::Wanted;
use jiff::civil::Date;
use look::{
    Action, Button, ButtonKind, Cell, Column, Field, Figure, Icon, Nav, Notice, Tab, Table, Tone, button, definitions,
    empty_state, figures, link_button, section, table, tabs, tag,
};
use maud::{Markup, html};
use trade::job::JobState;
use trade::model::Library;
use trade::model::Model;
use trade::model::PartKind;
use trade::order::OrderView;
use trade::reading::Unit;
use words::{Words, text};

/// Orders on one page.
const PAGE: i64 = 50;

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/orders", get(list))
        .route("/orders/new", get(new).post(place))
        .route("/orders/{number}", get(show))
        .route("/orders/{number}/receive", post(receive))
        .route("/orders/{number}/close", post(close))
        .route("/orders/{number}/tell", post(tell))
        .route("/plan/{job}/order", post(order_for_job))
}

/// The places of the stock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum StockPlace {
    Parts,
    Orders,
    Needs,
    Sort,
    Ask,
}

/// The places of the stock as tabs.
pub(super) fn stock_places(w: &Words, now: StockPlace) -> Markup {
    let places = [
        (StockPlace::Parts, "/stock", "order-place-parts"),
        (StockPlace::Orders, "/orders", "order-place-orders"),
        (StockPlace::Needs, "/stock/needs", "need-page"),
        (StockPlace::Sort, "/stock/sort", "weight-class-page"),
        (StockPlace::Ask, "/stock/ask", "ask-page"),
    ];
    let list: Vec<Tab<'_>> = places
        .iter()
        .map(|(place, href, id)| Tab { label: w.text(id).into(), href, count: "", current: *place == now })
        .collect();
    tabs(&w.text("order-places"), &list)
}

async fn library(app: &App) -> Result<Library, AppError> {
    Ok(app.models(None).await?.into_iter().collect())
}

async fn list(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    let asked = Entries::new(pairs);
    let all = asked.text("show") == "all";
    let page = asked.text("page").parse::<i64>().unwrap_or(1).clamp(1, 1_000_000);
    let wanted = OrderQuery { open: !all, limit: Some(PAGE), offset: Some((page - 1) * PAGE), ..OrderQuery::default() };
    let (orders, total) = app.orders(&wanted).await?;
    let library = library(&app).await?;
    let export = if all { "/api/v1/orders/export" } else { "/api/v1/orders/export?open=true" };
    let body = html! {
        (stock_places(&w, StockPlace::Orders))
        div.actions {
            (link_button("/orders/new", &w.text("order-new"), ButtonKind::Primary, Some(Icon::Plus), "n"))
            (link_button(export, &w.text("order-export"), ButtonKind::Quiet, Some(Icon::Export), ""))
            (link_button("/calendar", &w.text("calendar-title"), ButtonKind::Quiet, Some(Icon::Clock), ""))
            @if all { (link_button("/orders", &w.text("order-open-only"), ButtonKind::Quiet, None, "")) }
            @else { (link_button("/orders?show=all", &w.text("order-all"), ButtonKind::Quiet, None, "")) }
        }
        @if orders.is_empty() {
            (empty_state(
                &w.text(if all { "order-none-ever" } else { "order-none" }),
                &w.text("order-none-next"),
                &[Action { href: "/stock/needs", label: &w.text("need-page"), primary: true }],
            ))
        } @else {
            (orders_table(&w, &orders, &library))
            @if total > PAGE { p.hint { (text!(w, "order-page-of", page = page, total = total)) " "
                @if page > 1 { a href={ "/orders" (query(&[("show", asked.text("show")), ("page", &(page - 1).to_string())])) } { (w.text("order-newer")) } " " }
                @if page * PAGE < total { a href={ "/orders" (query(&[("show", asked.text("show")), ("page", &(page + 1).to_string())])) } { (w.text("order-older")) } }
            } }
        }
    };
    let crumb = if all { text!(w, "order-count", n = total) } else { text!(w, "order-count-open", n = total) };
    Ok(framed(
        &w,
        &app,
        Framed { title: &w.text("order-place-orders"), active: Nav::Stock, crumb, body, ..Framed::default() },
    )
    .await?
    .into_response())
}

fn orders_table(w: &Words, orders: &[OrderView], library: &Library) -> Markup {
    let row = |o: &OrderView| {
        let line = &o.line;
        let jobs = html! { @for (i, job) in line.jobs.iter().enumerate() {
            @if i > 0 { ", " } a href={ "/plan/" (job.number) } { (text!(w, "order-job", job = job.number)) }
        } @if line.jobs.is_empty() { (w.text("order-shelf")) } };
        let masses = window(w, line.from_g, line.to_g);
        vec![
            Cell(html! { a href={ "/orders/" (line.order) } { (text!(w, "order-number", order = line.order)) } }),
            Cell(state_tag(w, o)),
            Cell(html! {
                (parts(w, line.count, line, library))
                @if o.received > 0 { ", " (text!(w, "order-here-of", n = o.received)) }
                @if !masses.is_empty() { br; span.small { (masses) } }
            }),
            Cell(jobs),
            Cell::from(if line.supplier.is_empty() { w.text("order-supplier-open") } else { line.supplier.clone() }),
            Cell::from(line.expected_on.map_or_else(|| w.text("order-no-day"), |on| w.date(on))),
        ]
    };
    let columns = ["order", "state", "what", "for", "supplier", "expected"];
    table(&Table {
        caption: &w.text("order-list-caption"),
        columns: columns.map(|column| Column::words(w.text(&format!("order-column-{column}")))).to_vec(),
        rows: orders.iter().map(row).collect(),
        cards: true,
        ..Table::default()
    })
}

async fn new(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(pairs);
    if form.text("supplier").is_empty()
        && !form.text("model").is_empty()
        && let Some(supplier) = app.last_supplier(form.text("model")).await?
    {
        form.set("supplier", supplier);
    }
    new_page(&w, &app, &form, None, StatusCode::OK).await
}

async fn new_page(w: &Words, app: &App, form: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let models = app.models(None).await?;
    let jobs = app.job_names(&JobState::UNDER_WAY).await?;
    let choices: Vec<(String, String)> = std::iter::once((String::new(), w.text("order-shelf")))
        .chain(jobs.iter().map(|j| (j.number.to_string(), text!(w, "plan-job", job = j.number, player = j.player))))
        .collect();
    let choices: Vec<(&str, &str)> = choices.iter().map(|(v, l)| (v.as_str(), l.as_str())).collect();
    let mass = Field { unit: w.mass_sign(), inputmode: "decimal", ..Field::default() };
    let body = html! {
        @if models.is_empty() {
            (empty_state(&w.text("order-no-models"), &w.text("order-no-models-next"),
                &[Action { href: "/stock/models/new?kind=head", label: &w.text("order-new-head-model"), primary: true }]))
        } @else {
            form.card method="post" action="/orders/new" data-keep="" {
                div.fields {
                    (model_select(w, form, &models))
                    (form.field("number", &w.text("order-field-number"), Field { hint: &w.text("order-field-number-hint"), ..Field::default() }))
                    (form.field("count", &w.text("order-field-count"), Field { required: true, inputmode: "numeric", autofocus: true, ..Field::default() }))
                    (form.field("from", &w.text("order-field-from"), Field { hint: &w.text(units::example(w, "order-field-from-hint", "order-field-from-hint-oz", Unit::Gram)), ..mass }))
                    (form.field("to", &w.text("order-field-to"), mass))
                    (form.select("job", &w.text("order-field-for"), "", &choices))
                    (form.field("supplier", &w.text("order-field-supplier"), Field { hint: &w.text("order-field-later"), ..Field::default() }))
                    (form.field("expected", &w.text("order-field-expected"), Field { kind: "date", ..Field::default() }))
                    (form.field("note", &w.text("order-field-note"), Field::default()))
                }
                div.actions { (button(&Button { label: &w.text("order-place"), big: true, ..Button::default() })) (link_button("/orders", &w.text("order-back"), ButtonKind::Quiet, None, "")) }
            }
        }
    };
    let notice = notice.or_else(|| form.notice(w));
    let title = w.text("order-new");
    let page = framed(w, app, Framed { title: &title, active: Nav::Stock, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

/// A model to choose, by kind.
pub(super) fn model_select(w: &Words, form: &Entries, models: &[Model]) -> Markup {
    let now = form.text("model");
    html! {
        div.field.wrong[form.error("model").is_some()] {
            label for="model" { (w.text("order-field-model")) }
            select #model name="model" {
                @for kind in PartKind::ALL {
                    @if models.iter().any(|m| m.kind() == *kind) {
                        optgroup label=(w.text(&format!("order-group-{}", kind.key().replace('_', "-")))) {
                            @for model in models.iter().filter(|m| m.kind() == *kind) {
                                option value=(model.code()) selected[model.code() == now] { (model.name()) }
                            }
                        }
                    }
                }
            }
            @if let Some(error) = form.error("model") { p.error { (error) } }
        }
    }
}

async fn place(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let count = form.count(&w, "count");
    let count = form.needed("count", count, &w.text("order-count-needed"));
    let (from_g, to_g, expected_on) = (form.mass_g(&w, "from"), form.mass_g(&w, "to"), form.date(&w, "expected"));
    let job = form.count(&w, "job");
    let (true, Some(count)) = (form.is_sound(), count) else {
        return new_page(&w, &app, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    };
    let order = NewOrder {
        supplier: form.text("supplier").to_owned(),
        model: form.text("model").to_owned(),
        number: form.some("number"),
        count,
        from_g,
        to_g,
        jobs: job.map(|job| JobCount { job, count }).into_iter().collect(),
        note: form.text("note").to_owned(),
        ordered_on: None,
        expected_on,
        by,
    };
    match app.place_orders(&[order]).await {
        Ok(placed) => {
            let number = placed.first().map_or(0, |o| o.line.order);
            Ok(go_on(&format!("/orders/{number}"), Done::Ordered))
        }
        Err(error) => new_page(&w, &app, &form, Some(failure(&w, &error)), failure_status(&error)).await,
    }
}

async fn show(State(app): State<App>, Reader(w): Reader, Path(number): Path<i64>) -> PageResult {
    order_page(&w, &app, number, &Entries::default(), None).await
}

async fn order_page(w: &Words, app: &App, number: i64, form: &Entries, error: Option<AppError>) -> PageResult {
    let order = app.order(number).await?;
    let library = library(app).await?;
    let line = &order.line;
    let (received, open) = (order.received.to_string(), order.open.to_string());
    let ordered = line.count.to_string();
    let masses = window(w, line.from_g, line.to_g);
    // A conflict is a question: the next try may say that it is so.
    let asks = error.as_ref().is_some_and(|e| e.kind() == Kind::Conflict) && form.some("count").is_some();
    let body = html! {
        div.card {
            (figures(&[
                Figure { label: &w.text("order-figure-ordered"), value: &ordered, note: &masses },
                Figure { label: &w.text("order-figure-here"), value: &received, note: "" },
                Figure { label: &w.text("order-figure-open"), value: &open, note: "" },
            ]))
            p { (state_tag(w, &order)) " " (parts(w, line.count, line, &library)) }
            (definitions(&[
                (w.text("order-column-supplier"), html! { @if line.supplier.is_empty() { (w.text("order-supplier-open")) } @else { (line.supplier) } }),
                (w.text("order-figure-ordered"), html! { (w.date(line.ordered_on)) @if !line.by.is_empty() { ", " (line.by) } }),
                (w.text("order-column-expected"), html! { (line.expected_on.map_or_else(|| w.text("order-no-day"), |on| w.date(on))) }),
                (w.text("order-column-for"), html! {
                    @if line.jobs.is_empty() { (w.text("order-shelf")) }
                    @for (i, job) in line.jobs.iter().enumerate() {
                        @if i > 0 { ", " }
                        (look::rich!(w, "order-for-job", |_: &str, inner: &str| html! { a href={ "/plan/" (job.number) } { (inner) } }, n = job.count, job = job.number))
                    }
                }),
            ]))
            @if !line.note.is_empty() { p { strong { (w.text("order-field-note")) ": " } (line.note) } }
        }
        (receive_form(w, &order, form, asks))
        @if order.open > 0 {
            details open[form.error("expected").is_some()] { summary { (w.text("order-tell")) } (tell_form(w, &order, form)) }
            details { summary { (w.text("order-close")) } (close_form(w, &order)) }
        }
        @if !order.events.is_empty() { (section(&w.text("order-history"), &html! {}, &history(w, &order.events, &library))) }
        div.actions {
            (link_button("/orders", &w.text("order-all"), ButtonKind::Quiet, Some(Icon::Back), ""))
        }
    };
    let status = error.as_ref().map_or(StatusCode::OK, failure_status);
    let notice = error.as_ref().map(|one| failure(w, one)).or_else(|| form.notice(w));
    let title = text!(w, "order-number", order = number);
    let crumb = parts(w, line.count, line, &library);
    let page =
        framed(w, app, Framed { title: &title, active: Nav::Stock, crumb, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

fn seen(form: &Entries) -> Option<i64> {
    form.text("version").parse().ok()
}

async fn receive(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(number): Path<i64>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let count = form.count(&w, "count");
    let Some(count) = form.needed("count", count, &w.text("order-came-needed")) else {
        let page = order_page(&w, &app, number, &form, None).await?;
        return Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response());
    };
    let receive = Receive {
        count,
        model: form.some("model"),
        number: form.some("number"),
        short: form.has("short", "1"),
        anyway: form.has("anyway", "1"),
        note: form.text("note").to_owned(),
        by,
        version: seen(&form),
    };
    match app.receive_order(number, &receive).await {
        Ok(received) => {
            // Straight to the scale, with model and number filled in.
            let here = query(&[
                ("model", &received.model),
                ("number", received.number.as_deref().unwrap_or_default()),
                ("order", &number.to_string()),
                ("to_weigh", &received.to_weigh.to_string()),
            ]);
            Ok(go_to(&format!("/stock/new{here}")).into_response())
        }
        Err(error) => order_page(&w, &app, number, &form, Some(error)).await,
    }
}

async fn close(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(number): Path<i64>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let form = Entries::new(fields);
    let close =
        CloseOrder { short: form.has("short", "1"), reason: form.text("reason").to_owned(), by, version: seen(&form) };
    match app.close_order(number, &close).await {
        Ok(_) => Ok(go_on(&format!("/orders/{number}"), Done::OrderClosed)),
        Err(error) => order_page(&w, &app, number, &Entries::default(), Some(error)).await,
    }
}

async fn tell(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(number): Path<i64>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let expected_on = form.date(&w, "expected");
    if !form.is_sound() {
        let page = order_page(&w, &app, number, &form, None).await?;
        return Ok((StatusCode::UNPROCESSABLE_ENTITY, page).into_response());
    }
    let told = TellOrder {
        supplier: Some(form.text("supplier").to_owned()),
        expected_on,
        note: form.text("note").to_owned(),
        by,
        version: seen(&form),
    };
    match app.tell_order(number, &told).await {
        Ok(_) => Ok(go_on(&format!("/orders/{number}"), Done::Saved)),
        Err(error) => order_page(&w, &app, number, &Entries::default(), Some(error)).await,
    }
}

async fn order_for_job(
    State(app): State<App>,
    Who(by): Who,
    Path(job): Path<i64>,
    Form(fields): Form<Vec<(String, String)>>,
) -> Result<Redirect, PageError> {
    let form = Entries::new(fields);
    let wish = OrderForJob {
        supplier: form.some("supplier"),
        // A day that cannot be read is asked for again at the order itself.
        expected_on: form.text("expected").parse::<Date>().ok(),
        by,
    };
    app.order_for_job(job, &wish).await?;
    Ok(go_to(&format!("/plan/{job}")))
}

/// What a job waits for, where it waits.
pub(super) fn waits_part(w: &Words, waits: &[Waiting]) -> Markup {
    html! { @if !waits.is_empty() { ul.plain.waits { @for wait in waits { li { (wait_line(w, wait)) } } } } }
}

fn wait_line(w: &Words, wait: &Waiting) -> Markup {
    let (tone, id) = match (wait.order, wait.days_late) {
        (None, _) => (Tone::Bad, "order-waits-lacks"),
        (_, Some(_)) => (Tone::Bad, "order-waits-overdue"),
        _ => (Tone::Care, "order-waits-for"),
    };
    // The mark has the first words of the fact already.
    let rest = match &wait.fact {
        Wait::Ordered { parts, expected } => text!(w, "order-waits-rest", parts = parts, expected = expected),
        Wait::NotOrdered { parts } => text!(w, "order-waits-rest-not-ordered", parts = parts),
    };
    html! {
        (tag(tone, &w.text(id))) " "
        @match wait.order {
            Some(order) => { a href={ "/orders/" (order) } { (rest) } }
            None => { (rest) }
        }
    }
}

/// What the plan of a job lacks, and ordering it with one touch.
pub(super) async fn order_part(w: &Words, app: &App, file: &JobFile, wanted: &[Wanted]) -> Result<Markup, AppError> {
    if wanted.is_empty() {
        return Ok(html! {});
    }
    let mut supplier = None;
    for wish in wanted.iter().filter(|wish| wish.to_order() > 0) {
        supplier = supplier.or(app.last_supplier(&wish.model).await?);
    }
    let open = wanted.iter().any(|wish| wish.to_order() > 0);
    let line = |wish: &Wanted| {
        let parts = PartCount::of(wish.count, wish.kind, &wish.model, wish.number.as_deref(), &file.library);
        let masses = window(w, wish.from_g, wish.to_g);
        let clubs: Vec<String> = wish.clubs.iter().map(|number| w.club_number(number)).collect();
        html! {
            @if wish.to_order() == 0 { (tag(Tone::Care, &w.text("order-wanted-ordered"))) }
            @else { (tag(Tone::Bad, &w.text("order-wanted-open"))) } " "
            strong { (w.tell(&parts)) } @if !masses.is_empty() { ", " (masses) }
            ", " (text!(w, "order-wanted-clubs", clubs = clubs))
            @if wish.ordered > 0 && wish.to_order() > 0 { ", " (text!(w, "order-wanted-of-them", n = wish.ordered)) }
        }
    };
    Ok(section(
        &w.text("order-wanted"),
        &html! { a href={ "/orders" } { (w.text("order-place-orders")) } },
        &html! {
            ul.plain.waits { @for wish in wanted { li { (line(wish)) } } }
            @if open {
                form.card method="post" action={ "/plan/" (file.job.number) "/order" } {
                    div.fields {
                        (look::field(&Field { name: "supplier", label: &w.text("order-field-supplier"), value: supplier.as_deref().unwrap_or_default(), hint: &w.text("order-field-later"), ..Field::default() }))
                        (look::field(&Field { name: "expected", label: &w.text("order-field-expected"), kind: "date", ..Field::default() }))
                    }
                    div.actions { (button(&Button { label: &w.text("order-wanted-button"), big: true, ..Button::default() })) }
                }
            }
        },
    ))
}

/// Orders that are to come today or are late.
pub(super) async fn due_part(w: &Words, app: &App) -> Result<(usize, Markup), AppError> {
    let (orders, _) = app.orders(&OrderQuery { open: true, limit: Some(200), ..OrderQuery::default() }).await?;
    let today = app.today();
    let due: Vec<&OrderView> = orders.iter().filter(|o| o.line.expected_on.is_some_and(|d| d <= today)).collect();
    if due.is_empty() {
        return Ok((0, html! {}));
    }
    let library = library(app).await?;
    let n = due.len();
    let part = section(
        &w.text("order-due"),
        &html! { a href="/orders" { (w.text("order-all")) } },
        &html! { ul.plain.waits { @for o in due { li {
            @if o.days_late.is_some() { (state_tag(w, o)) } @else { (tag(Tone::Care, &w.text("order-due-today"))) } " "
            a href={ "/orders/" (o.line.order) } { (parts(w, o.open, &o.line, &library)) }
            @if !o.line.supplier.is_empty() { " " (text!(w, "order-due-from", supplier = o.line.supplier)) }
        } } } },
    );
    Ok((n, part))
}
