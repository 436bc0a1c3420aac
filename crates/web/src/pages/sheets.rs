//! Fitting sheets: the list, a saved sheet with what is to be said of it, its approval.

use super::beside;
use super::customers::{new_address, sheet_places};
use super::entries::{Entries, go_on, go_to, in_address, words_cards};
use super::sheet_reference::{reference_once_more, reference_part};
use super::{Framed, PageError, PageResult, Who, failure_status, framed, sheet_club, sheet_file, sheet_form, today};
use crate::asked::Path;
use crate::reader::Reader;
use crate::tablet::Done;
use app::App;
use app::customer::{CustomerSummary, GiveSheet};
use app::sheet::{Approve, SheetSummary, SheetView};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use desk::sheet_check::Severity;
use desk::sheet_check::SheetProblem;
use desk::short_sheet::Expanded;
use jiff::civil::Date;
use look::{
    Action, Button, ButtonKind, Cell, Column, Icon, Nav, Tone, button, empty_state, hidden, icon, link_button, rich,
    section, tag,
};
use maud::{Markup, html};
use quantity::decimal;
use std::collections::BTreeMap;
use trade::customer::Customer;
use trade::model::Model;
use trade::sheet::Sheet;
use trade::sheet::SheetClub;
use trade::wrap::Wraps;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    sheet_file::router()
        .route("/sheets", get(list))
        .route("/sheets/new", get(sheet_form::blank).post(sheet_form::look_or_save))
        .route("/sheets/{id}", get(show).post(change_head))
        .route("/sheets/{id}/approve", post(approve))
        .route("/sheets/{id}/customer", post(give_to_customer))
        .route("/sheets/{id}/clubs/{index}", get(sheet_club::show).post(sheet_club::change))
}

/// Sheets that the list shows at once.
const PAGE: usize = 100;

async fn list(State(app): State<App>, Reader(w): Reader, Query(query): Query<Vec<(String, String)>>) -> PageResult {
    let asked = Entries::new(query);
    let wanted = asked.text("text").to_lowercase();
    let only = asked.text("only");
    let narrowed = !wanted.is_empty() || only == "open";
    let all = if narrowed { app.sheets().await? } else { app.latest_sheets(PAGE as i64 + 1).await? };
    let found: Vec<&SheetSummary> = all
        .iter()
        .filter(|s| wanted.is_empty() || s.player.to_lowercase().contains(&wanted))
        .filter(|s| only != "open" || s.job.is_none())
        .collect();
    let listed = if all.is_empty() {
        empty_state(
            &w.text("sheet-none-yet"),
            &w.text("sheet-none-yet-hint"),
            &[
                Action { href: "/sheets/new", label: &w.text("sheet-new"), primary: true },
                Action { href: "/sheets/file", label: &w.text("sheet-load-file"), primary: false },
            ],
        )
    } else {
        html! {
            div.actions {
                (link_button("/sheets/new", &w.text("sheet-new"), ButtonKind::Primary, Some(Icon::Plus), "n"))
                (link_button("/sheets/file", &w.text("sheet-load-file"), ButtonKind::Quiet, Some(Icon::Import), ""))
            }
            form.search role="search" method="get" action="/sheets" {
                label.hidden for="text" { (w.text("sheet-form-player")) }
                input #text type="search" name="text" value=(asked.raw("text")) placeholder=(w.text("sheet-form-player"));
                label.check { input type="checkbox" name="only" value="open" checked[only == "open"]; span { (w.text("sheet-not-approved")) } }
                button.button.quiet type="submit" { (icon(Icon::Search)) span { (w.text("sheet-find")) } }
            }
            @if found.is_empty() {
                (empty_state(&w.text("sheet-none-found"), &w.text("sheet-none-found-hint"),
                    &[Action { href: "/sheets", label: &w.text("sheet-all"), primary: true }]))
            } @else {
                (list_table(&w, &found[..found.len().min(PAGE)], app.today()))
                @if found.len() > PAGE { p.small { (text!(w, "sheet-last-shown", n = PAGE)) } }
            }
        }
    };
    let body = html! { (sheet_places(&w, "/sheets")) (listed) };
    let crumb = match all.len() {
        0 => String::new(),
        more if more > PAGE && !narrowed => text!(w, "sheet-more-than", n = PAGE),
        n => text!(w, "sheet-count", n = n),
    };
    let title = w.text("sheet-title");
    Ok(framed(&w, &app, Framed { title: &title, active: Nav::Sheets, crumb, body, ..Framed::default() })
        .await?
        .into_response())
}

fn list_table(w: &Words, found: &[&SheetSummary], date: Date) -> Markup {
    let row = |sheet: &&SheetSummary| {
        let clubs: Vec<String> = sheet.clubs.iter().map(|number| w.club_number(number)).collect();
        vec![
            Cell(html! { a href={ "/sheets/" (in_address(sheet.id.as_str())) } { (sheet.player) } }),
            Cell(match sheet.job {
                Some(_) => html! { (w.date_near(sheet.due, date)) },
                None => today::due(w, sheet.due, date),
            }),
            Cell::from(clubs.join(" ")),
            Cell(match sheet.job {
                Some(job) => html! { a href={ "/bench/" (job) } { (text!(w, "sheet-job", job = job)) } },
                None => tag(Tone::Care, &w.text("sheet-not-approved")),
            }),
        ]
    };
    let columns = ["sheet-column-player", "sheet-column-due", "sheet-column-clubs", "sheet-column-job"];
    words_cards(
        &w.text("sheet-list"),
        columns.map(|id| Column::words(w.text(id))).to_vec(),
        found.iter().map(row).collect(),
    )
}

async fn show(State(app): State<App>, Reader(w): Reader, Path(id): Path<String>) -> PageResult {
    let view = app.sheet(&id.as_str().into()).await?;
    sheet_page(&w, &app, &view, Entries::default(), None, StatusCode::OK).await
}

/// The page of a saved sheet; `refused` stands beside the button to approve it.
async fn sheet_page(
    w: &Words,
    app: &App,
    view: &SheetView,
    head: Entries,
    refused: Option<&str>,
    status: StatusCode,
) -> PageResult {
    let sheet = &view.sheet;
    let notice = head.notice(w);
    let link = |at: usize| view.job.is_none().then(|| format!("/sheets/{}/clubs/{at}", in_address(view.id.as_str())));
    let rows: Vec<(&SheetClub, &[desk::short_sheet::Origin])> = sheet.clubs.iter().map(|c| (c, &[][..])).collect();
    let waits = match view.job {
        Some(job) => app.waits().await?.remove(&job).unwrap_or_default(),
        None => Vec::new(),
    };
    let whose = whose_part(w, app, view).await?;
    let models = app.models(None).await?;
    let body = html! {
        (approval(w, view, refused))
        (whose)
        (super::orders::waits_part(w, &waits))
        (section(&w.text("sheet-clubs"), &html! { span.hint { (w.tell(&sheet.rule)) } }, &html! { (clubs_table(w, &models, &rows, &link)) }))
        @if !sheet.written.is_empty() { p.hint { (text!(w, "sheet-written", text = sheet.written)) } }
        @if !sheet.note.is_empty() { p { (rich!(w, "sheet-note", |_, inner| html! { strong { (inner) } }, note = sheet.note)) } }
        (findings(w, &view.problems))
        @if let Some(reference) = &sheet.reference {
            (reference_part(w, &models, reference))
            (reference_once_more(w, app, reference, 0).await?)
        }
        @if view.job.is_none() { (head_form(w, view, head, &app.customers("").await?)) }
        p { a href={ "/sheets/" (in_address(view.id.as_str())) "/file" } download { (w.text("sheet-save-file")) } " · "
            a href={ "/sheets/" (in_address(view.id.as_str())) "/quote" } { (w.text("price-quote")) } }
    };
    let crumb = text!(w, "sheet-crumb", due_on = sheet.due, hand = sheet.hand, n = sheet.clubs.len());
    let page = framed(
        w,
        app,
        Framed { title: &sheet.player, active: Nav::Sheets, crumb, notice, body, terms: true, ..Framed::default() },
    )
    .await?;
    Ok((status, page).into_response())
}

/// The customer that the sheet belongs to; else those of its name, or a new one, to give it to.
async fn whose_part(w: &Words, app: &App, view: &SheetView) -> Result<Markup, PageError> {
    let sheet = &view.sheet;
    if let Some(number) = sheet.customer {
        // A deleted customer has no page any more.
        let there = app.customer(number).await.is_ok();
        let code = trade::customer::code(number);
        return Ok(html! { p { @if there {
            (rich!(w, "sheet-of-customer", |_, inner| html! { a href={ "/customers/" (number) } { (inner) } }, name = sheet.player, code = code))
        } @else { (text!(w, "sheet-of-deleted", code = code)) } } });
    }
    if sheet.player.trim().is_empty() {
        return Ok(html! {});
    }
    let same = app.customers_named(&sheet.player).await.unwrap_or_default();
    let to = format!("/sheets/{}/customer", in_address(view.id.as_str()));
    let one = |customer: &str, label: &str| {
        html! {
            form method="post" action=(to) { (hidden("customer", customer))
                (button(&Button { label, kind: ButtonKind::Quiet, ..Button::default() })) }
        }
    };
    Ok(html! {
        div.actions {
            span.hint { (w.text("sheet-of-nobody")) }
            @for number in &same { (one(&number.to_string(), &text!(w, "customer-names-give", code = trade::customer::code(*number)))) }
            @if same.is_empty() { (one("new", &w.text("customer-names-make"))) }
            @else { (link_button(&new_address(&sheet.player), &w.text("sheet-of-another"), ButtonKind::Quiet, None, "")) }
        }
    })
}

async fn give_to_customer(
    State(app): State<App>,
    Who(by): Who,
    Path(id): Path<String>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let form = Entries::new(fields);
    let sheet = id.as_str().into();
    let customer = if form.has("customer", "new") {
        let view = app.sheet(&sheet).await?;
        let hand = Some(view.sheet.hand);
        Some(app.add_customer(&Customer { hand, ..Customer::named(&view.sheet.player) }).await?.number)
    } else {
        form.text("customer").parse().ok()
    };
    app.give_sheet(&sheet, &GiveSheet { customer, by }).await?;
    Ok(go_to(&format!("/sheets/{}", in_address(&id))).into_response())
}

fn approval(w: &Words, view: &SheetView, refused: Option<&str>) -> Markup {
    if let Some(job) = view.job {
        return html! {
            p.actions {
                (link_button(&format!("/plan/{job}"), &text!(w, "sheet-to-job", job = job), ButtonKind::Primary, None, ""))
                (tag(Tone::Good, &w.text("sheet-approved")))
            }
        };
    }
    let stops = view.problems.iter().filter(|p| p.severity == Severity::Stop).count();
    html! {
        form method="post" action={ "/sheets/" (in_address(view.id.as_str())) "/approve" } {
            div.actions { (button(&Button { label: &w.text("sheet-approve"), ..Button::default() })) }
            @if let Some(words) = refused { p.error { (icon(Icon::Refused)) span { (words) } } }
            @else if stops > 0 {
                p.error { (icon(Icon::Refused)) span { (text!(w, "sheet-not-approved-yet", n = stops)) } }
            }
        }
    }
}

/// The clubs with every value; a second table, folded, says where each came from. `link` leads to a club's own form.
pub(super) fn clubs_table(
    w: &Words,
    models: &[Model],
    clubs: &[(&SheetClub, &[desk::short_sheet::Origin])],
    link: &dyn Fn(usize) -> Option<String>,
) -> Markup {
    let rows = clubs.iter().enumerate().map(|(at, (club, _))| club_row(w, models, club, link(at))).collect();
    let columns = [
        "sheet-field-club",
        "sheet-field-length",
        "sheet-field-swing-weight",
        "sheet-field-loft",
        "sheet-field-lie",
        "sheet-field-cpm",
        "sheet-field-total-mass",
        "sheet-field-tape",
        "sheet-field-labels",
        "sheet-field-soft-side",
        "sheet-field-tolerance",
        "sheet-field-head",
        "sheet-field-shaft",
        "sheet-field-grip",
        "sheet-field-ferrule",
    ]
    .map(|id| Column::words(w.text(id)))
    .to_vec();
    html! {
        (look::table_of_alike(look::Table { caption: &w.text("sheet-clubs-of"), columns, rows, cards: true, ..look::Table::default() }))
        @if clubs.iter().any(|(_, origins)| !origins.is_empty()) {
            details { summary { (w.text("sheet-origins")) }
                @for (club, origins) in clubs {
                    h3 { (club_title(w, club)) }
                    ul { @for origin in *origins {
                        li { strong { (field_word(w, &origin.field)) } ": " (w.told(&origin.fact)) }
                    } }
                }
            }
        }
    }
}

/// `7-iron`, `driver`, `PW`.
pub(super) fn club_title(w: &Words, club: &SheetClub) -> String {
    w.club(&club.club_kind, &club.number)
}

pub(super) const NO_VALUE: &str = "–";

fn club_row(w: &Words, models: &[Model], club: &SheetClub, link: Option<String>) -> Vec<Cell> {
    // By the name on the box; a code that the library does not have stays as it was written.
    let named = |code: &str| models.iter().find(|m| m.code() == code).map_or(code, Model::name).to_owned();
    let t = &club.tolerances;
    let labels: Vec<String> = [("sheet-grip-label", club.grip_graphics), ("sheet-shaft-label", club.shaft_graphics)]
        .into_iter()
        .filter_map(|(id, way)| way.map(|way| w.text_with(id, &[("way", words::figure(&way))])))
        .chain(club.adapter_setting.iter().map(|setting| text!(w, "sheet-adapter", setting = setting)))
        .collect();
    let tolerance = text!(
        w,
        "sheet-tolerance",
        swing_weight_points = t.swing_weight_points,
        length_mm = t.length_mm,
        loft_deg = t.loft_deg,
        lie_deg = t.lie_deg,
    );
    let or_none = |text: Option<String>| Cell::from(text.unwrap_or_else(|| NO_VALUE.to_owned()));
    vec![
        Cell(match link {
            Some(href) => html! { a href=(href) { (club_title(w, club)) } },
            None => html! { (club_title(w, club)) },
        }),
        Cell::from(text!(w, "sheet-length", length_mm = club.length_mm, to = club.length_to)),
        or_none((!club.swing_weight_free).then(|| w.swing_weight(club.swing_weight_points))),
        Cell::from(w.angle(club.loft_deg)),
        Cell::from(w.angle(club.lie_deg)),
        or_none(club.cpm.map(|cpm| decimal(cpm, 0))),
        or_none(club.total_mass_g.map(|mass_g| w.mass(mass_g))),
        Cell::from(wraps(w, club.wraps)),
        or_none(Some(w.list(&labels)).filter(|text| !text.is_empty())),
        or_none(club.soft_side.map(|side| w.tell(&side))),
        Cell::from(tolerance),
        Cell::from(named(&club.head_model)),
        Cell::from(named(&club.shaft_model)),
        Cell::from(named(&club.grip_model)),
        Cell::from(club.ferrule_model.as_deref().map_or_else(|| w.text("sheet-form-none"), named)),
    ]
}

pub(super) fn wraps(w: &Words, wraps: Wraps) -> String {
    let [base, full, lower] = [wraps.base, wraps.full, wraps.lower_hand].map(i64::from);
    match (full, lower) {
        (0, 0) => text!(w, "sheet-wraps-base", base = base),
        (_, 0) => text!(w, "sheet-wraps-full", base = base, full = full),
        (0, _) => text!(w, "sheet-wraps-lower", base = base, lower = lower),
        _ => text!(w, "sheet-wraps-all", base = base, full = full, lower = lower),
    }
}

/// The trade's word for a field of the document.
pub(super) fn field_word(w: &Words, field: &str) -> String {
    w.text(match field {
        "head_model" => "sheet-field-head",
        "shaft_model" => "sheet-field-shaft",
        "grip_model" => "sheet-field-grip",
        "ferrule_model" => "sheet-field-ferrule",
        "length_mm" => "sheet-field-length",
        "swing_weight_points" => "sheet-field-swing-weight",
        "loft_deg" => "sheet-field-loft",
        "lie_deg" => "sheet-field-lie",
        "cpm" => "sheet-field-cpm",
        "total_mass_g" => "sheet-field-total-mass",
        "wraps" => "sheet-field-tape",
        "grip_size.upper_mm" => "grip-size-asked-upper",
        "grip_size.lower_mm" => "grip-size-asked-lower",
        "tolerances" => "sheet-field-tolerance",
        "grip_graphics" => "sheet-field-grip-label",
        "shaft_graphics" => "sheet-field-shaft-label",
        "soft_side" => "sheet-field-soft-side",
        "adapter_setting" => "sheet-field-adapter-setting",
        other => return other.to_owned(),
    })
}

/// What was found, the gravest first, each with its clause and what to do next.
pub(super) fn findings(w: &Words, problems: &[SheetProblem]) -> Markup {
    let mut groups: BTreeMap<usize, Vec<&SheetProblem>> = BTreeMap::new();
    for problem in problems {
        let at = Severity::ALL.iter().position(|s| *s == problem.severity).unwrap_or(0);
        groups.entry(at).or_default().push(problem);
    }
    let tone = |s: Severity| match s {
        Severity::Stop => Tone::Bad,
        Severity::Warn => Tone::Care,
        Severity::Note => Tone::Plain,
    };
    let list = |severity: Severity, found: &[&SheetProblem]| {
        html! {
            ul.plain { @for (words, clubs) in merged(w, found) { li { (tag(tone(severity), &clubs)) " " (words) } } }
        }
    };
    section(
        &w.text("sheet-findings"),
        &html! {},
        &html! {
            @if problems.is_empty() { p { (tag(Tone::Good, &w.text("sheet-nothing-found"))) " " (w.text("sheet-nothing-found-of")) } }
            @for (at, found) in &groups {
                @let severity = Severity::ALL[*at];
                @let heading = text!(w, "sheet-findings-of", severity = severity.key(), n = found.len());
                @if severity == Severity::Note {
                    details { summary { (heading) } (list(severity, found)) }
                } @else {
                    h3 { (heading) }
                    (list(severity, found))
                }
            }
        },
    )
}

/// What was found, with its clause, and what to do next, as sentences.
fn finding(w: &Words, problem: &SheetProblem) -> String {
    let what = w.told(&problem.fact);
    let what = match &problem.clause {
        Some(clause) => {
            text!(w, "sheet-finding-by-clause", what = what, clause = text!(w, "rules-clause", clause = clause))
        }
        None => what,
    };
    text!(w, "sheet-finding", what = what, next = problem.next)
}

/// Findings that are the same of several clubs, as one line with their numbers.
fn merged(w: &Words, found: &[&SheetProblem]) -> Vec<(String, String)> {
    let mut lines: Vec<(String, Vec<String>)> = Vec::new();
    for problem in found {
        let words = finding(w, problem);
        let club = match (problem.club_kind, problem.club.as_deref()) {
            (Some(kind), Some(number)) => w.club_short(&kind, number),
            (None, Some(number)) => w.club_number(number),
            (_, None) => w.text("sheet-finding-of-sheet"),
        };
        match lines.iter_mut().find(|(other, _)| *other == words) {
            Some((_, clubs)) if clubs.contains(&club) => {}
            Some((_, clubs)) => clubs.push(club),
            None => lines.push((words, vec![club])),
        }
    }
    lines.into_iter().map(|(words, clubs)| (words, clubs.join(" "))).collect()
}

/// Player, date, hand and note of a sheet that is not approved yet.
fn head_form(w: &Words, view: &SheetView, mut form: Entries, customers: &[CustomerSummary]) -> Markup {
    if form.pairs().is_empty() {
        form = Entries::new(vec![
            ("player".into(), view.sheet.player.clone()),
            ("due".into(), view.sheet.due.to_string()),
            ("hand".into(), view.sheet.hand.key().into()),
            ("note".into(), view.sheet.note.clone()),
            ("customer".into(), view.sheet.customer.map(|number| number.to_string()).unwrap_or_default()),
            ("version".into(), view.version.to_string()),
        ]);
    }
    html! {
        details open[!form.is_sound()] { summary { (w.text("sheet-change-head")) }
            form.card method="post" action={ "/sheets/" (in_address(view.id.as_str())) } {
                (hidden("version", form.text("version")))
                (sheet_form::head_fields(w, &form, customers))
                div.actions { (button(&Button { label: &w.text("sheet-change"), kind: ButtonKind::Quiet, ..Button::default() })) }
            }
        }
    }
}

async fn change_head(
    State(app): State<App>,
    Reader(w): Reader,
    Path(id): Path<String>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let view = app.sheet(&id.as_str().into()).await?;
    let mut form = Entries::new(fields);
    let Some(head) = sheet_form::head(&w, &mut form) else {
        return sheet_page(&w, &app, &view, form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    };
    let customer = match sheet_form::customer_of(&w, &app, &mut form, &head.player).await? {
        Some(customer) => customer,
        None => return sheet_page(&w, &app, &view, form, None, StatusCode::UNPROCESSABLE_ENTITY).await,
    };
    let sheet =
        Sheet { customer, player: head.player, due: head.due, hand: head.hand, note: head.note, ..view.sheet.clone() };
    let version = form.text("version").parse().unwrap_or(-1);
    match app.change_sheet(&view.id, &sheet, version).await {
        Ok(_) => Ok(go_on(&format!("/sheets/{}", in_address(&id)), Done::Saved)),
        Err(error) => {
            form.refuse("player", beside(&w, &error.refusal()));
            sheet_page(&w, &app, &view, form, None, failure_status(&error)).await
        }
    }
}

async fn approve(State(app): State<App>, Reader(w): Reader, Who(by): Who, Path(id): Path<String>) -> PageResult {
    let id = id.as_str().into();
    match app.approve_sheet(&id, &Approve { steps: None, by }).await {
        Ok(job) => Ok(go_on(&format!("/plan/{}", job.number), Done::Approved)),
        Err(error) => {
            let view = app.sheet(&id).await?;
            let words = text!(w, "sheet-approve-refused", what = error.refusal());
            sheet_page(&w, &app, &view, Entries::default(), Some(&words), failure_status(&error)).await
        }
    }
}

/// Clubs of a preview with where their values came from.
pub(super) fn expanded_table(w: &Words, models: &[Model], expanded: &[Expanded]) -> Markup {
    let rows: Vec<_> = expanded.iter().map(|e| (&e.club, e.origins.as_slice())).collect();
    clubs_table(w, models, &rows, &|_| None)
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    #[test]
    fn a_finding_is_in_the_readers_units_and_names_the_club() {
        let other = trade::club_name::ClubName::of(trade::kind::ClubKind::Iron, "P");
        let same = desk::sheet_check::SheetFinding::SameLength { length_mm: 933.45, other };
        let problem = SheetProblem {
            severity: Severity::Warn,
            club: Some("G".into()),
            club_kind: Some(trade::kind::ClubKind::Iron),
            field: "clubs[1].length_mm".into(),
            fact: same.into(),
            next: desk::sheet_check::SheetNext::CorrectLength.into(),
            clause: None,
        };
        let metric = Units { length: quantity::LengthUnit::Millimetre, ..Units::default() };
        for (w, length) in [(w(), "36 3/4 in"), (Words::english(metric), "933.5 mm")] {
            let words = format!("{length} is also the length of the PW. Correct the length of one of the two.");
            assert_eq!(merged(&w, &[&problem]), [(words, "GW".to_owned())]);
        }
    }

    #[test]
    fn one_line_for_what_is_said_of_several_clubs() {
        let problem = |club: &str| SheetProblem {
            severity: Severity::Warn,
            club: Some(club.into()),
            club_kind: None,
            field: "x".into(),
            fact: fact::Told::verbatim("no free head"),
            next: fact::Told::verbatim("Order one"),
            clause: None,
        };
        let (a, b) = (problem("5"), problem("6"));
        let lines = merged(&w(), &[&a, &b]);
        assert_eq!(lines.len(), 1);
        assert_eq!(lines[0].1, "5 6");
    }
}
