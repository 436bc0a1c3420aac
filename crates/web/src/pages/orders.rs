//! Orders: the list, a new one, one with what happened to it; what the plan of a job lacks; what a job waits for.

use super::entries::{Entries, counted, go_to, query};
use super::{Framed, PageError, PageResult, Who, failure, failure_status, framed};
use crate::asked::Path;
use crate::reader::Reader;
use crate::units;
use app::job::JobFile;
use app::order::{CloseOrder, JobCount, NewOrder, OrderForJob, OrderQuery, Receive, TellOrder};
use app::{App, AppError, Kind};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use axum::routing::{get, post};
use desk::order::Waiting;
use desk::order::Wanted;
use desk::order::named_count;
use jiff::civil::Date;
use look::{
    Action, Button, ButtonKind, Cell, Column, Field, Figure, Icon, Nav, Notice, Tab, Table, Tone, button, check,
    definitions, empty_state, figures, hidden, link_button, section, table, tabs, tag,
};
use maud::{Markup, html};
use trade::job::JobState;
use trade::model::Library;
use trade::model::Model;
use trade::model::PartKind;
use trade::order::OrderEvent;
use trade::order::OrderState;
use trade::order::OrderStep;
use trade::order::OrderView;
use trade::reading::Unit;
use words::Words;

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
        (StockPlace::Parts, "/stock", "Parts"),
        (StockPlace::Orders, "/orders", "Orders"),
        (StockPlace::Needs, "/stock/needs", "Needed and short"),
        (StockPlace::Sort, "/stock/sort", "Sort by weight"),
        (StockPlace::Ask, "/stock/ask", "Heads to ask for"),
    ];
    let list: Vec<Tab<'_>> = places
        .iter()
        .map(|(place, href, label)| Tab { label: (*label).into(), href, count: "", current: *place == now })
        .collect();
    tabs("Places of the stock", &list)
}

async fn library(app: &App) -> Result<Library, AppError> {
    Ok(app.models(None).await?.into_iter().collect())
}

fn window(w: &Words, from_g: Option<f64>, to_g: Option<f64>) -> String {
    match (from_g, to_g) {
        (Some(from), Some(to)) => format!("{} to {}", w.mass_figure(from), w.mass(to)),
        (Some(from), None) => format!("{} or more", w.mass(from)),
        (None, Some(to)) => format!("{} or less", w.mass(to)),
        (None, None) => String::new(),
    }
}

fn state_tag(w: &Words, order: &OrderView) -> Markup {
    match (order.state, order.days_late) {
        (_, Some(1)) => tag(Tone::Bad, "1 day overdue"),
        (_, Some(days)) => tag(Tone::Bad, &format!("{days} days overdue")),
        (OrderState::Ordered | OrderState::PartlyHere, None) => tag(Tone::Care, order.state.word()),
        (OrderState::Here, _) => tag(Tone::Good, order.state.word()),
        (OrderState::Short | OrderState::Cancelled, _) => tag(Tone::Plain, order.state.word()),
    }
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
            (link_button("/orders/new", "New order", ButtonKind::Primary, Some(Icon::Plus), "n"))
            (link_button(export, "Export CSV", ButtonKind::Quiet, Some(Icon::Export), ""))
            @if all { (link_button("/orders", "Still to come only", ButtonKind::Quiet, None, "")) }
            @else { (link_button("/orders?show=all", "All orders", ButtonKind::Quiet, None, "")) }
        }
        @if orders.is_empty() {
            (empty_state(
                if all { "Nothing was ordered yet." } else { "Nothing is on order." },
                "A plan that lacks parts says what to order; so does the list of what is needed and short.",
                &[Action { href: "/stock/needs", label: "Needed and short", primary: true }],
            ))
        } @else {
            (orders_table(&w, &orders, &library))
            @if total > PAGE { p.hint { "Page " (page) ", " (total) " in all. "
                @if page > 1 { a href={ "/orders" (query(&[("show", asked.text("show")), ("page", &(page - 1).to_string())])) } { "Newer" } " " }
                @if page * PAGE < total { a href={ "/orders" (query(&[("show", asked.text("show")), ("page", &(page + 1).to_string())])) } { "Older" } }
            } }
        }
    };
    let crumb =
        counted(usize::try_from(total).unwrap_or(0), "order") + if all { "" } else { " with something to come" };
    Ok(framed(&w, &app, Framed { title: "Orders", active: Nav::Stock, crumb, body, ..Framed::default() })
        .await?
        .into_response())
}

fn orders_table(w: &Words, orders: &[OrderView], library: &Library) -> Markup {
    let row = |o: &OrderView| {
        let line = &o.line;
        let jobs = html! { @for (i, job) in line.jobs.iter().enumerate() {
            @if i > 0 { ", " } a href={ "/plan/" (job.number) } { "job " (job.number) }
        } @if line.jobs.is_empty() { "the shelf" } };
        let masses = window(w, line.from_g, line.to_g);
        vec![
            Cell(html! { a href={ "/orders/" (line.order) } { "Order " (line.order) } }),
            Cell(state_tag(w, o)),
            Cell(html! {
                (named_count(line.count, line.kind, &line.model, line.number.as_deref(), library))
                @if o.received > 0 { ", " (o.received) " here" }
                @if !masses.is_empty() { br; span.small { (masses) } }
            }),
            Cell(jobs),
            Cell::from(if line.supplier.is_empty() { "not settled" } else { &line.supplier }),
            Cell::from(line.expected_on.map_or_else(|| "no day named".to_owned(), |on| w.date(on))),
        ]
    };
    table(&Table {
        caption: "Orders, the newest first",
        columns: ["order", "state", "what", "for", "supplier", "expected"].map(Column::words).to_vec(),
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
    let choices: Vec<(String, String)> = std::iter::once((String::new(), "the shelf".to_owned()))
        .chain(jobs.iter().map(|j| (j.number.to_string(), format!("Job {} · {}", j.number, j.player))))
        .collect();
    let choices: Vec<(&str, &str)> = choices.iter().map(|(v, l)| (v.as_str(), l.as_str())).collect();
    let mass = Field { unit: w.mass_sign(), inputmode: "decimal", ..Field::default() };
    let body = html! {
        @if models.is_empty() {
            (empty_state("There are no models yet.", "What is ordered is of a model: add that first.",
                &[Action { href: "/stock/models/new?kind=head", label: "New head model", primary: true }]))
        } @else {
            form.card method="post" action="/orders/new" data-keep="" {
                div.fields {
                    (model_select(w, form, &models))
                    (form.field("number", "Number", Field { hint: "Of a head or taper blank", ..Field::default() }))
                    (form.field("count", "How many", Field { required: true, inputmode: "numeric", autofocus: true, ..Field::default() }))
                    (form.field("from", "Lightest that will do", Field { hint: units::example(w, "262.5; may be left out", "9.259; may be left out", Unit::Gram), ..mass }))
                    (form.field("to", "Heaviest that will do", mass))
                    (form.select("job", "For", "", &choices))
                    (form.field("supplier", "Supplier", Field { hint: "May be settled later", ..Field::default() }))
                    (form.field("expected", "Expected on", Field { kind: "date", ..Field::default() }))
                    (form.field("note", "Remark", Field::default()))
                }
                div.actions { (button(&Button { label: "Order", big: true, ..Button::default() })) (link_button("/orders", "Back", ButtonKind::Quiet, None, "")) }
            }
        }
    };
    let notice = notice.or_else(|| form.notice(w));
    let page =
        framed(w, app, Framed { title: "New order", active: Nav::Stock, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

/// A model to choose, by kind.
pub(super) fn model_select(w: &Words, form: &Entries, models: &[Model]) -> Markup {
    let now = form.text("model");
    html! {
        div.field.wrong[form.error("model").is_some()] {
            label for="model" { "Model" }
            select #model name="model" {
                @for kind in PartKind::ALL {
                    @if models.iter().any(|m| m.kind() == *kind) {
                        optgroup label={ (super::entries::capital(kind.word())) "s" } {
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
    let count = form.needed("count", count, "Say how many, for example 4");
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
            Ok(go_to(&format!("/orders/{number}")).into_response())
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
                Figure { label: "ordered", value: &ordered, note: &masses },
                Figure { label: "here", value: &received, note: "" },
                Figure { label: "to come", value: &open, note: "" },
            ]))
            p { (state_tag(w, &order)) " " (named_count(line.count, line.kind, &line.model, line.number.as_deref(), &library)) }
            (definitions(&[
                ("supplier", html! { @if line.supplier.is_empty() { "not settled yet" } @else { (line.supplier) } }),
                ("ordered", html! { (w.date(line.ordered_on)) @if !line.by.is_empty() { ", " (line.by) } }),
                ("expected", html! { (line.expected_on.map_or_else(|| "no day named yet".to_owned(), |on| w.date(on))) }),
                ("for", html! {
                    @if line.jobs.is_empty() { "the shelf" }
                    @for (i, job) in line.jobs.iter().enumerate() { @if i > 0 { ", " } (job.count) " for " a href={ "/plan/" (job.number) } { "job " (job.number) } }
                }),
            ]))
            @if !line.note.is_empty() { p { strong { "Remark: " } (line.note) } }
        }
        (receive_form(w, &order, form, asks))
        @if order.open > 0 {
            details open[form.error("expected").is_some()] { summary { "Another supplier or another day" } (tell_form(w, &order, form)) }
            details { summary { "Nothing more is to come" } (close_form(w, &order)) }
        }
        @if !order.events.is_empty() { (section("What happened", &html! {}, &history(w, &order.events, &library))) }
        div.actions {
            (link_button("/orders", "All orders", ButtonKind::Quiet, Some(Icon::Back), ""))
        }
    };
    let status = error.as_ref().map_or(StatusCode::OK, failure_status);
    let notice = error.as_ref().map(|one| failure(w, one)).or_else(|| form.notice(w));
    let title = format!("Order {number}");
    let crumb = named_count(line.count, line.kind, &line.model, line.number.as_deref(), &library);
    let page =
        framed(w, app, Framed { title: &title, active: Nav::Stock, crumb, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

fn version(order: &OrderView) -> Markup {
    hidden("version", &order.version.to_string())
}

fn receive_form(w: &Words, order: &OrderView, form: &Entries, asks: bool) -> Markup {
    let (line, number) = (&order.line, order.line.order);
    let count = if form.raw("count").is_empty() { order.open.to_string() } else { form.raw("count").to_owned() };
    let fields = html! {
        (version(order))
        div.fields {
            (look::field(&Field { name: "count", label: "How many came", value: &count, error: form.error("count"), inputmode: "numeric", required: true, ..Field::default() }))
            @if line.number.is_some() {
                (form.field("number", "Another number came", Field { hint: "Only where it is not the one ordered", ..Field::default() }))
            }
            (form.field("model", "Another model came", Field { hint: "Its code; only where it is not the one ordered", ..Field::default() }))
            (form.field("note", "Remark", Field::default()))
        }
        p { (check("short", "1", "The rest does not come", form.has("short", "1"))) }
        @if asks { p { (check("anyway", "1", "It is so: book them in", false)) } }
        div.actions { (button(&Button { label: "They are here, weigh them in", big: order.open > 0, ..Button::default() })) }
    };
    html! {
        @if order.open > 0 || asks {
            form.card method="post" action={ "/orders/" (number) "/receive" } { h2 { "They came" } (fields) }
        } @else {
            details { summary { "More came all the same" }
                form.card method="post" action={ "/orders/" (number) "/receive" } { (fields) }
            }
        }
    }
}

fn tell_form(w: &Words, order: &OrderView, form: &Entries) -> Markup {
    let line = &order.line;
    // What was typed stays where it could not be used.
    let typed =
        |name: &str, now: String| if form.error("expected").is_some() { form.raw(name).to_owned() } else { now };
    let supplier = typed("supplier", line.supplier.clone());
    let expected = typed("expected", line.expected_on.map(|d| d.to_string()).unwrap_or_default());
    html! {
        form.card method="post" action={ "/orders/" (line.order) "/tell" } {
            (version(order))
            div.fields {
                (look::field(&Field { name: "supplier", label: "Supplier", value: &supplier, ..Field::default() }))
                (look::field(&Field { name: "expected", label: "Expected on", value: &expected, error: form.error("expected"), kind: "date", ..Field::default() }))
                (look::field(&Field { name: "note", id: "told", label: "Remark", ..Field::default() }))
            }
            div.actions { (button(&Button { label: "Keep", kind: ButtonKind::Quiet, ..Button::default() })) }
        }
    }
}

fn close_form(w: &Words, order: &OrderView) -> Markup {
    html! {
        form.card method="post" action={ "/orders/" (order.line.order) "/close" } {
            (version(order))
            (look::field(&Field { name: "reason", label: "Why? It is kept.", required: true, ..Field::default() }))
            div.actions {
                (button(&Button { label: "The supplier sends no more", kind: ButtonKind::Quiet, name: "short", value: "1", ..Button::default() }))
                (button(&Button { label: "Cancel the order", kind: ButtonKind::Danger, ..Button::default() }))
            }
        }
    }
}

fn history(w: &Words, events: &[OrderEvent], library: &Library) -> Markup {
    let words = |e: &OrderEvent| match e.step {
        OrderStep::Received if e.is_substitute() => {
            let model = e.model.as_deref().map(|m| library.get(m).map_or(m, Model::name)).unwrap_or_default();
            let number = e.number.as_deref().unwrap_or_default();
            format!("{} came in their place: {}", e.count, format!("{model} {number}").trim())
        }
        OrderStep::Received => format!("{} came", e.count),
        OrderStep::Told => {
            let supplier = e.supplier.as_ref().map(|s| format!("supplier {s}"));
            let expected = e.expected_on.map(|d| format!("expected {}", w.date(d)));
            let said: Vec<String> = supplier.into_iter().chain(expected).collect();
            if said.is_empty() { "remark".to_owned() } else { said.join(", ") }
        }
        step => super::entries::capital(step.word()),
    };
    html! { ul.life { @for e in events.iter().rev() { li {
        strong { (words(e)) } @if !e.note.is_empty() { " “" (e.note) "”" }
        span.small { (w.moment(e.at)) @if !e.by.is_empty() { ", " (e.by) } }
    } } } }
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
    let Some(count) = form.needed("count", count, "Say how many came, for example 4") else {
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
        Ok(_) => Ok(go_to(&format!("/orders/{number}")).into_response()),
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
        Ok(_) => Ok(go_to(&format!("/orders/{number}")).into_response()),
        Err(error) => order_page(&w, &app, number, &Entries::default(), Some(error)).await,
    }
}

async fn order_for_job(
    State(app): State<App>,
    Reader(w): Reader,
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
    let (tone, word) = match (wait.order, wait.days_late) {
        (None, _) => (Tone::Bad, "lacks"),
        (_, Some(_)) => (Tone::Bad, "waits for, overdue"),
        _ => (Tone::Care, "waits for"),
    };
    // The mark says the first words already.
    let rest = wait.words.trim_start_matches("waits for ").trim_start_matches("lacks ");
    html! {
        (tag(tone, word)) " "
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
        let named = named_count(wish.count, wish.kind, &wish.model, wish.number.as_deref(), &file.library);
        let masses = window(w, wish.from_g, wish.to_g);
        html! {
            @if wish.to_order() == 0 { (tag(Tone::Care, "ordered")) } @else { (tag(Tone::Bad, "to order")) } " "
            strong { (named) } @if !masses.is_empty() { ", " (masses) }
            ", for the " (wish.clubs.join(", "))
            @if wish.ordered > 0 && wish.to_order() > 0 { ", " (wish.ordered) " of them ordered" }
        }
    };
    Ok(section(
        "What to order",
        &html! { a href={ "/orders" } { "Orders" } },
        &html! {
            ul.plain.waits { @for wish in wanted { li { (line(wish)) } } }
            @if open {
                form.card method="post" action={ "/plan/" (file.job.number) "/order" } {
                    div.fields {
                        (look::field(&Field { name: "supplier", label: "Supplier", value: supplier.as_deref().unwrap_or_default(), hint: "May be settled later", ..Field::default() }))
                        (look::field(&Field { name: "expected", label: "Expected on", kind: "date", ..Field::default() }))
                    }
                    div.actions { (button(&Button { label: "Order these for this job", big: true, ..Button::default() })) }
                }
            }
        },
    ))
}

/// Orders that are to come today or are late.
pub(super) async fn due_part(w: &Words, app: &App) -> Result<Markup, AppError> {
    let (orders, _) = app.orders(&OrderQuery { open: true, limit: Some(200), ..OrderQuery::default() }).await?;
    let today = app.today();
    let due: Vec<&OrderView> = orders.iter().filter(|o| o.line.expected_on.is_some_and(|d| d <= today)).collect();
    if due.is_empty() {
        return Ok(html! {});
    }
    let library = library(app).await?;
    Ok(section(
        "Expected",
        &html! { a href="/orders" { "All orders" } },
        &html! { ul.plain.waits { @for o in due { li {
            @if o.days_late.is_some() { (state_tag(w, o)) } @else { (tag(Tone::Care, "today")) } " "
            a href={ "/orders/" (o.line.order) } { (named_count(o.open, o.line.kind, &o.line.model, o.line.number.as_deref(), &library)) }
            @if !o.line.supplier.is_empty() { " from " (o.line.supplier) }
        } } } },
    ))
}
