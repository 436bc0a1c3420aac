//! Prices, the quote of a sheet, the bill of a job.

use super::customers::sheet_places;
use super::entries::{Entries, go_to, in_address};
use super::{Framed, PageResult, beside, failure_status, framed};
use crate::asked::Path;
use crate::reader::Reader;
use app::App;
use app::price::{Bill, PutQuote};
use axum::Router;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use fact::Refusal;
use look::{
    Action, Button, ButtonKind, Cell, Column, Field, Icon, Nav, Table, actions, button, hidden, link_button, section,
    table,
};
use maud::{Markup, html};
use trade::price::{PartPrice, Per, PriceFault, PriceLine, PriceList, WorkPrice, read, shown};
use trade::reading::What;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/prices", get(list).post(save))
        .route("/sheets/{id}/quote", get(quote).post(save_quote))
        .route("/records/{job}/bill", get(bill))
}

/// An amount with the currency behind it.
fn amount(minor: i64, decimals: u8, currency: &str) -> String {
    let figure = shown(minor, decimals);
    if currency.is_empty() { figure } else { format!("{figure} {currency}") }
}

async fn list(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let prices = app.prices().await?;
    let mut pairs = vec![
        ("currency".to_owned(), prices.currency.clone()),
        ("decimals".to_owned(), prices.decimals.to_string()),
        ("tax_text".to_owned(), prices.tax_text.clone()),
        ("work".to_owned(), prices.work.iter().map(|work| work_line(&w, work, prices.decimals) + "\n").collect()),
    ];
    pairs.extend(prices.parts.iter().map(|p| (format!("part-{}", p.model), shown(p.each_minor, prices.decimals))));
    list_page(&w, &app, &Entries::new(pairs), StatusCode::OK).await
}

/// `Build; 25.00; club; usual`
fn work_line(w: &Words, work: &WorkPrice, decimals: u8) -> String {
    let usual = if work.usual { format!("; {}", w.text("price-usual")) } else { String::new() };
    format!("{}; {}; {}{usual}", work.name, shown(work.each_minor, decimals), w.tell(&work.per))
}

async fn list_page(w: &Words, app: &App, form: &Entries, status: StatusCode) -> PageResult {
    let models = app.models(None).await?;
    let priced = |model: &&trade::model::Model| {
        use trade::model::PartKind::{Adapter, Ferrule, Grip, Head, Shaft};
        matches!(model.kind(), Head | Shaft | Grip | Ferrule | Adapter)
    };
    let body = html! {
        (sheet_places(w, "/prices"))
        form method="post" action="/prices" {
            div.card { div.fields {
                (form.field("currency", &w.text("price-currency"), Field { hint: &w.text("price-currency-hint"), ..Field::default() }))
                (form.field("decimals", &w.text("price-decimals"), Field { inputmode: "numeric", hint: &w.text("price-decimals-hint"), ..Field::default() }))
            }
            (form.area("tax_text", &w.text("price-tax"), 3, Field { hint: &w.text("price-tax-hint"), ..Field::default() })) }
            (section(&w.text("price-work"), &html! {}, &form.area("work", &w.text("price-work-lines"), 8, Field { hint: &w.text("price-work-hint"), ..Field::default() })))
            (section(&w.text("price-parts"), &html! {}, &html! {
                p.hint { (w.text("price-parts-hint")) }
                div.fields { @for model in models.iter().filter(priced) {
                    (form.field(&format!("part-{}", model.code()), model.name(), Field { inputmode: "decimal", ..Field::default() }))
                } }
            }))
            div.actions { (button(&Button { label: &w.text("customer-save"), ..Button::default() })) }
        }
    };
    let notice = form.notice(w);
    let title = w.text("price-title");
    let page = framed(w, app, Framed { title: &title, active: Nav::Sheets, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

async fn save(State(app): State<App>, Reader(w): Reader, Form(fields): Form<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(fields);
    let decimals = u8::try_from(form.count(&w, "decimals").unwrap_or(2)).unwrap_or(9);
    let mut prices = PriceList {
        currency: form.text("currency").to_owned(),
        decimals,
        tax_text: form.text("tax_text").to_owned(),
        ..PriceList::default()
    };
    let typed: Vec<(String, String)> = form.pairs().to_vec();
    for (name, typed) in typed.iter().filter(|(name, typed)| name.starts_with("part-") && !typed.trim().is_empty()) {
        match read(typed, decimals) {
            Ok(each_minor) => {
                prices.parts.push(PartPrice { model: name.trim_start_matches("part-").to_owned(), each_minor });
            }
            Err(fault) => form.refuse(name, beside(&w, &Refusal::new(&fault))),
        }
    }
    match work_of(&w, form.raw("work"), decimals) {
        Ok(work) => prices.work = work,
        Err(fault) => form.refuse("work", beside(&w, &Refusal::new(&fault))),
    }
    if form.is_sound() {
        match app.save_prices(&prices).await {
            Ok(_) => return Ok(go_to("/prices").into_response()),
            Err(error) => {
                let refusal = error.refusal();
                let at = refusal.entry().filter(|at| *at == "currency").unwrap_or("work").to_owned();
                form.refuse(&at, beside(&w, &refusal));
            }
        }
    }
    list_page(&w, &app, &form, StatusCode::UNPROCESSABLE_ENTITY).await
}

fn work_of(w: &Words, typed: &str, decimals: u8) -> Result<Vec<WorkPrice>, PriceFault> {
    let mut work = Vec::new();
    for (line, n) in typed.lines().zip(1..).filter(|(line, _)| !line.trim().is_empty()) {
        let cells: Vec<&str> = line.split(';').map(str::trim).collect();
        let (name, price, per) = match cells.as_slice() {
            [name, price] => (*name, *price, Per::Job),
            [name, price, per, ..] if cells.len() <= 4 => {
                let of = Per::ALL.iter().find(|one| w.tell(*one).eq_ignore_ascii_case(per) || one.key() == *per);
                (*name, *price, *of.ok_or(PriceFault::NoLine { n })?)
            }
            _ => return Err(PriceFault::NoLine { n }),
        };
        let usual = match cells.get(3) {
            None | Some(&"") => false,
            Some(word) if word.eq_ignore_ascii_case(&w.text("price-usual")) => true,
            Some(_) => return Err(PriceFault::NoLine { n }),
        };
        work.push(WorkPrice { name: name.to_owned(), per, each_minor: read(price, decimals)?, usual });
    }
    Ok(work)
}

/// `8; Grip; 12.95`
fn quote_text(lines: &[PriceLine], decimals: u8) -> String {
    lines.iter().map(|l| format!("{}; {}; {}\n", l.count, l.what, shown(l.each_minor, decimals))).collect()
}

fn lines_of(typed: &str, decimals: u8) -> Result<Vec<PriceLine>, PriceFault> {
    let mut lines = Vec::new();
    for (line, n) in typed.lines().zip(1..).filter(|(line, _)| !line.trim().is_empty()) {
        // What is charged for may hold a semicolon itself: count and price stand at the ends.
        let cells = line.split_once(';').and_then(|(count, rest)| Some((count, rest.rsplit_once(';')?)));
        let Some((count, (what, price))) = cells else { return Err(PriceFault::NoLine { n }) };
        let count = count.trim().parse().map_err(|_| PriceFault::NoLine { n })?;
        lines.push(PriceLine { what: what.trim().to_owned(), count, each_minor: read(price.trim(), decimals)? });
    }
    Ok(lines)
}

async fn quote(State(app): State<App>, Reader(w): Reader, Path(id): Path<String>) -> PageResult {
    quote_page(&w, &app, &id, None, StatusCode::OK).await
}

async fn quote_page(w: &Words, app: &App, id: &str, form: Option<Entries>, status: StatusCode) -> PageResult {
    let view = app.quote(&id.into()).await?;
    let sheet = app.sheet(&id.into()).await?;
    let begun = if view.lines.is_empty() { &view.proposed } else { &view.lines };
    let form = form.unwrap_or_else(|| Entries::new(vec![("lines".to_owned(), quote_text(begun, view.decimals))]));
    let to = format!("/sheets/{}", in_address(id));
    let body = html! {
        @if view.lines.is_empty() {
            p.hint { (w.text(if view.proposed.is_empty() { "price-no-prices" } else { "price-proposed" })) }
        } @else {
            (lines_table(w, &view.lines, view.total_minor, view.decimals, &view.currency))
            @if !view.tax_text.is_empty() { p.small { (view.tax_text) } }
        }
        form.card.no-print method="post" action={ (to) "/quote" } {
            (form.area("lines", &w.text("price-quote-lines"), 10, Field { hint: &w.text("price-quote-hint"), ..Field::default() }))
            div.actions { (button(&Button { label: &w.text("price-quote-save"), ..Button::default() })) }
        }
        @if !view.lines.is_empty() && view.lines != view.proposed && !view.proposed.is_empty() {
            form.no-print method="post" action={ (to) "/quote" } {
                (hidden("lines", &quote_text(&view.proposed, view.decimals)))
                div.actions { (button(&Button { label: &w.text("price-quote-anew"), kind: ButtonKind::Quiet, ..Button::default() })) }
            }
        }
        (actions(&[Action { href: &to, label: &w.text("button-back"), primary: false }, Action { href: "/prices", label: &w.text("price-title"), primary: false }]))
    };
    let title = text!(w, "price-quote-of", player = sheet.sheet.player);
    let notice = form.notice(w);
    let page = framed(w, app, Framed { title: &title, active: Nav::Sheets, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

async fn save_quote(
    State(app): State<App>,
    Reader(w): Reader,
    Path(id): Path<String>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let decimals = app.prices().await?.decimals;
    let refused = match lines_of(form.raw("lines"), decimals) {
        Ok(lines) => match app.put_quote(&id.as_str().into(), &PutQuote { lines }).await {
            Ok(_) => return Ok(go_to(&format!("/sheets/{}/quote", in_address(&id))).into_response()),
            Err(error) if failure_status(&error) == StatusCode::NOT_FOUND => return Err(error.into()),
            Err(error) => error.refusal(),
        },
        Err(fault) => Refusal::new(&fault),
    };
    form.refuse("lines", beside(&w, &refused));
    quote_page(&w, &app, &id, Some(form), StatusCode::UNPROCESSABLE_ENTITY).await
}

fn lines_table(w: &Words, lines: &[PriceLine], total: i64, decimals: u8, currency: &str) -> Markup {
    let row = |line: &PriceLine| {
        vec![
            Cell::from(line.what.as_str()),
            Cell::from(line.count.to_string()),
            Cell::from(shown(line.each_minor, decimals)),
            Cell::from(shown(line.sum_minor(), decimals)),
        ]
    };
    let mut rows: Vec<Vec<Cell>> = lines.iter().map(row).collect();
    rows.push(vec![
        Cell(html! { strong { (w.text("price-total")) } }),
        Cell::from(""),
        Cell::from(""),
        Cell(html! { strong { (amount(total, decimals, currency)) } }),
    ]);
    let columns = vec![
        Column::words(w.text("price-column-what")),
        Column::figures(w.text("price-column-count")),
        Column::figures(w.text("price-column-each")),
        Column::figures(w.text("price-column-sum")),
    ];
    table(&Table { caption: &w.text("price-lines"), columns, rows, ..Table::default() })
}

async fn bill(State(app): State<App>, Reader(w): Reader, Path(job): Path<i64>) -> PageResult {
    let bill = app.bill(job).await?;
    let sheet = app.job_file(job).await?.job.sheet_id.clone();
    let body = html! {
        p.actions.no-print {
            (link_button(&format!("/sheets/{}/quote", in_address(sheet.as_str())), &w.text("price-quote"), ButtonKind::Quiet, None, ""))
            (link_button(&format!("/records/{job}"), &w.text("record-title"), ButtonKind::Quiet, Some(Icon::Sheet), ""))
        }
        p { strong { (bill.shop) } }
        p { (bill.name) @for line in bill.address.lines() { br; (line) } }
        p { (text!(&w, "price-bill-on", job = bill.job, drawn_on = bill.on)) }
        @if bill.lines.is_empty() { p.hint { (w.text("price-bill-no-lines")) } }
        @else { (lines_table(&w, &bill.lines, bill.total_minor, bill.decimals, &bill.currency)) }
        @for line in bill.tax_text.lines() { p.small { (line) } }
        (built(&w, &bill))
    };
    let title = text!(&w, "price-bill", job = job);
    Ok(framed(&w, &app, Framed { title: &title, active: Nav::Records, body, ..Framed::default() })
        .await?
        .into_response())
}

/// What was built, a line a club: what a customer can read.
fn built(w: &Words, bill: &Bill) -> Markup {
    const SHOWN: [What; 5] = [What::FinishedLength, What::SwingWeight, What::TotalMass, What::Loft, What::Lie];
    let row = |club: &bench::record::ClubRecord| {
        let figure = |what: What| {
            let line = club.lines.iter().find(|line| line.what == what);
            line.and_then(|line| line.built).map_or_else(String::new, |built| super::say::value(w, what, built))
        };
        let name = Cell::from(w.club(&club.target.club_kind, &club.target.number));
        std::iter::once(name).chain(SHOWN.map(|what| Cell::from(figure(what)))).collect()
    };
    let columns = std::iter::once(Column::words(w.text("sheet-field-club")))
        .chain(SHOWN.map(|what| Column::figures(w.tell(&what))))
        .collect();
    let rows = bill.record.clubs.iter().map(row).collect();
    section(
        &w.text("price-built"),
        &html! {},
        &table(&Table { caption: &w.text("price-built"), columns, rows, cards: true, ..Table::default() }),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_of_a_quote_is_edited_whatever_it_says() {
        let line = PriceLine { what: "Grip; cord, size M".to_owned(), count: 8, each_minor: 1295 };
        assert_eq!(lines_of(&quote_text(std::slice::from_ref(&line), 2), 2).ok(), Some(vec![line]));
        assert!(lines_of("8 Grip 12.95", 2).is_err() && lines_of("8; Grip", 2).is_err());
    }
}
