//! Fitting sheets: the list, a saved sheet with what is to be said of it, its approval, its file.

use super::beside;
use super::entries::{Entries, capital, counted, go_to, in_address, length_or_dash, words_cards, words_table};
use super::notice_of;
use super::{Framed, PageError, PageResult, Who, failure, failure_status, framed, sheet_club, sheet_form, today};
use crate::asked::Path;
use crate::problem::EdgeFault;
use crate::problem::Problem;
use crate::reader::Reader;
use crate::units::restated;
use app::App;
use app::sheet::{Approve, SheetSummary, SheetView};
use axum::Router;
use axum::extract::{Form, Multipart, Query, State};
use axum::http::{StatusCode, header};
use axum::response::IntoResponse;
use axum::routing::{get, post};
use desk::sheet_check::Severity;
use desk::sheet_check::SheetProblem;
use desk::short_sheet::Expanded;
use fact::Refusal;
use jiff::civil::Date;
use look::{
    Action, Button, ButtonKind, Cell, Column, Field, Icon, Nav, Notice, Tone, actions, button, columns, definitions,
    empty_state, file_field, hidden, icon, link_button, section, tag,
};
use maud::{Markup, html};
use quantity::decimal;
use std::collections::BTreeMap;
use trade::sheet::ReferenceClub;
use trade::sheet::Sheet;
use trade::sheet::SheetClub;
use words::Words;

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/sheets", get(list))
        .route("/sheets/new", get(sheet_form::blank).post(sheet_form::look_or_save))
        .route("/sheets/file", get(file_form).post(load_file))
        .route("/sheets/{id}", get(show).post(change_head))
        .route("/sheets/{id}/file", get(sheet_file))
        .route("/sheets/{id}/approve", post(approve))
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
    let body = if all.is_empty() {
        empty_state(
            "No sheet yet.",
            "Write down a fitting as you would on paper, or load a sheet that was saved as a file.",
            &[
                Action { href: "/sheets/new", label: "New sheet", primary: true },
                Action { href: "/sheets/file", label: "Load a file", primary: false },
            ],
        )
    } else {
        html! {
            div.actions {
                (link_button("/sheets/new", "New sheet", ButtonKind::Primary, Some(Icon::Plus), "n"))
                (link_button("/sheets/file", "Load a file", ButtonKind::Quiet, Some(Icon::Import), ""))
            }
            form.search role="search" method="get" action="/sheets" {
                label.hidden for="text" { "Player" }
                input #text type="search" name="text" value=(asked.raw("text")) placeholder="Player";
                label.check { input type="checkbox" name="only" value="open" checked[only == "open"]; span { "not approved" } }
                button.button.quiet type="submit" { (icon(Icon::Search)) span { "Find" } }
            }
            @if found.is_empty() {
                (empty_state("No sheet is like that.", "Take a shorter word, or look at all of them.",
                    &[Action { href: "/sheets", label: "All sheets", primary: true }]))
            } @else {
                (list_table(&w, &found[..found.len().min(PAGE)], app.today()))
                @if found.len() > PAGE { p.small { "The last " (PAGE) " of them; look for earlier ones by the player." } }
            }
        }
    };
    let crumb = match all.len() {
        0 => String::new(),
        more if more > PAGE && !narrowed => format!("more than {PAGE} sheets"),
        _ => counted(all.len(), "sheet"),
    };
    Ok(framed(&w, &app, Framed { title: "Sheets", active: Nav::Sheets, crumb, body, ..Framed::default() })
        .await?
        .into_response())
}

fn list_table(w: &Words, found: &[&SheetSummary], date: Date) -> Markup {
    let row = |sheet: &&SheetSummary| {
        vec![
            Cell(html! { a href={ "/sheets/" (in_address(sheet.id.as_str())) } { (sheet.player) } }),
            Cell(match sheet.job {
                Some(_) => html! { (w.date_near(sheet.due, date)) },
                None => today::due(w, sheet.due, date),
            }),
            Cell::from(sheet.clubs.join(" ")),
            Cell(match sheet.job {
                Some(job) => html! { a href={ "/bench/" (job) } { "Job " (job) } },
                None => tag(Tone::Care, "not approved"),
            }),
        ]
    };
    words_cards(
        "Fitting sheets",
        ["player", "due", "clubs", "job"].map(Column::words).to_vec(),
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
    let body = html! {
        (approval(w, view, refused))
        (super::orders::waits_part(w, &waits))
        (section("Clubs", &html! { span.hint { (sheet.rule.word()) } }, &html! { (clubs_table(w, &rows, &link)) }))
        @if !sheet.written.is_empty() { p.hint { "Written: " (sheet.written) } }
        @if !sheet.note.is_empty() { p { strong { "Note: " } (sheet.note) } }
        (findings(w, &view.problems))
        @if let Some(reference) = &sheet.reference { (reference_part(w, reference)) }
        @if view.job.is_none() { (head_form(w, view, head)) }
        p { a href={ "/sheets/" (in_address(view.id.as_str())) "/file" } download { "Save this sheet as a file" } }
    };
    let crumb = format!("due {} · {} · {}", w.date(sheet.due), sheet.hand.word(), counted(sheet.clubs.len(), "club"));
    let page =
        framed(w, app, Framed { title: &sheet.player, active: Nav::Sheets, crumb, notice, body, ..Framed::default() })
            .await?;
    Ok((status, page).into_response())
}

fn approval(w: &Words, view: &SheetView, refused: Option<&str>) -> Markup {
    if let Some(job) = view.job {
        return html! {
            p.actions {
                (link_button(&format!("/plan/{job}"), &format!("To job {job}"), ButtonKind::Primary, None, ""))
                (tag(Tone::Good, "approved"))
            }
        };
    }
    let stops = view.problems.iter().filter(|p| p.severity == Severity::Stop).count();
    html! {
        form method="post" action={ "/sheets/" (in_address(view.id.as_str())) "/approve" } {
            div.actions { (button(&Button { label: "Approve: make the job", ..Button::default() })) }
            @if let Some(words) = refused { p.error { (icon(Icon::Refused)) span { (words) } } }
            @else if stops > 0 {
                p.error { (icon(Icon::Refused)) span {
                    "It cannot be approved yet: " (counted(stops, "finding")) " below must be put right first."
                } }
            }
        }
    }
}

/// The clubs with every value; a second table, folded, says where each came from. `link` leads to a club's own form.
pub(super) fn clubs_table(
    w: &Words,
    clubs: &[(&SheetClub, &[desk::short_sheet::Origin])],
    link: &dyn Fn(usize) -> Option<String>,
) -> Markup {
    let rows = clubs.iter().enumerate().map(|(at, (club, _))| club_row(w, club, link(at))).collect();
    let columns = [
        "club",
        "length",
        "swing weight",
        "loft",
        "lie",
        "cpm",
        "whole mass",
        "tape",
        "labels",
        "soft side",
        "tolerance",
        "head",
        "shaft",
        "grip",
        "ferrule",
    ]
    .map(Column::words)
    .to_vec();
    html! {
        (words_table("Clubs of the sheet", columns, rows))
        @if clubs.iter().any(|(_, origins)| !origins.is_empty()) {
            details { summary { "Where each value comes from" }
                @for (club, origins) in clubs {
                    h3 { (club_title(w, club)) }
                    ul { @for origin in *origins {
                        li { strong { (field_word(w, &origin.field)) } ": " (restated(w, &origin.words)) }
                    } }
                }
            }
        }
    }
}

/// `7 iron`, `driver` has its number too: `1 wood`.
pub(super) fn club_title(w: &Words, club: &SheetClub) -> String {
    format!("{} {}", club.number, club.club_kind.word())
}

fn club_row(w: &Words, club: &SheetClub, link: Option<String>) -> Vec<Cell> {
    let t = &club.tolerances;
    let labels: Vec<String> = [("grip", club.grip_graphics), ("shaft", club.shaft_graphics)]
        .into_iter()
        .filter_map(|(what, way)| way.map(|w| format!("{what} {w}")))
        .collect();
    vec![
        Cell(match link {
            Some(href) => html! { a href=(href) { (club_title(w, club)) } },
            None => html! { (club_title(w, club)) },
        }),
        Cell::from(format!("{} {}", w.length(club.length_mm), club.length_to)),
        Cell::from(w.swing_weight(club.swing_weight_points)),
        Cell::from(w.angle(club.loft_deg)),
        Cell::from(w.angle(club.lie_deg)),
        Cell::from(club.cpm.map_or("–".into(), |c| decimal(c, 0))),
        Cell::from(club.total_mass_g.map_or("–".into(), |figure| w.mass(figure))),
        Cell::from(wraps(w, club)),
        Cell::from(if labels.is_empty() { "–".to_owned() } else { labels.join(", ") }),
        Cell::from(club.soft_side.map_or("–".into(), |s| s.word().to_owned())),
        Cell::from(format!(
            "±{} pt, ±{} mm, ±{}° loft, ±{}° lie",
            decimal(t.swing_weight_points, 1),
            decimal(t.length_mm, 1),
            decimal(t.loft_deg, 1),
            decimal(t.lie_deg, 1)
        )),
        Cell::from(club.head_model.as_str()),
        Cell::from(club.shaft_model.as_str()),
        Cell::from(club.grip_model.as_str()),
        Cell::from(club.ferrule_model.as_deref().unwrap_or("none")),
    ]
}

fn wraps(w: &Words, club: &SheetClub) -> String {
    let wraps = club.wraps;
    let mut text = format!("base {}", wraps.base);
    if wraps.full > 0 {
        text.push_str(&format!(" + {} full", wraps.full));
    }
    if wraps.lower_hand > 0 {
        text.push_str(&format!(" + {} lower hand", wraps.lower_hand));
    }
    text
}

/// The trade's word for a field of the document.
pub(super) fn field_word<'a>(w: &Words, field: &'a str) -> &'a str {
    match field {
        "head_model" => "head",
        "shaft_model" => "shaft",
        "grip_model" => "grip",
        "ferrule_model" => "ferrule",
        "length_mm" => "length",
        "swing_weight_points" => "swing weight",
        "loft_deg" => "loft",
        "lie_deg" => "lie",
        "total_mass_g" => "whole mass",
        "wraps" => "tape",
        "tolerances" => "tolerance",
        "grip_graphics" => "grip label",
        "shaft_graphics" => "shaft label",
        "soft_side" => "soft side",
        other => other,
    }
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
            ul.plain { @for (words, clubs) in merged(w, found) {
                li {
                    (tag(tone(severity), &clubs)) " " (words.0)
                    @if let Some(clause) = words.2 { " (" (clause) ")" }
                    ". " (words.1) "."
                }
            } }
        }
    };
    section(
        "Findings",
        &html! {},
        &html! {
            @if problems.is_empty() { p { (tag(Tone::Good, "nothing found")) " The sheet fits its models, the stock and the rules that were checked." } }
            @for (at, found) in &groups {
                @let severity = Severity::ALL[*at];
                @if severity == Severity::Note {
                    details { summary { (capital(severity.word())) "s (" (found.len()) ")" } (list(severity, found)) }
                } @else {
                    h3 { (capital(severity.word())) " (" (found.len()) ")" }
                    (list(severity, found))
                }
            }
        },
    )
}

type Told = (String, String, Option<String>);

/// Findings that say the same of several clubs, as one line with their numbers.
fn merged(w: &Words, found: &[&SheetProblem]) -> Vec<(Told, String)> {
    let mut lines: Vec<(Told, Vec<String>)> = Vec::new();
    for problem in found {
        let end = |text: &str| text.trim_end_matches('.').to_owned();
        let words =
            (restated(w, &capital(&end(&problem.words))), restated(w, &end(&problem.next)), problem.clause.clone());
        let club = problem.club.clone().unwrap_or_else(|| "sheet".to_owned());
        match lines.iter_mut().find(|(w, _)| *w == words) {
            Some((_, clubs)) if clubs.contains(&club) => {}
            Some((_, clubs)) => clubs.push(club),
            None => lines.push((words, vec![club])),
        }
    }
    lines.into_iter().map(|(words, clubs)| (words, clubs.join(" "))).collect()
}

fn reference_part(w: &Words, r: &ReferenceClub) -> Markup {
    let number =
        |v: Option<f64>, unit: &str, decimals| v.map_or("–".into(), |v| format!("{} {unit}", decimal(v, decimals)));
    let text = |t: String| html! { (t) };
    let to = r.length_to.map_or("", trade::kind::LengthTo::word);
    let left = definitions(&[
        ("length", text(format!("{} {to}", length_or_dash(w, r.length_mm)))),
        ("swing weight", text(r.swing_weight_points.map_or("–".into(), |figure| w.swing_weight(figure)))),
        ("total mass", text(number(r.total_mass_g, "g", 1))),
        ("balance point from the cap", text(number(r.balance_point_mm, "mm", 1))),
        ("loft", text(r.loft_deg.map_or("–".into(), |figure| w.angle(figure)))),
        ("lie", text(r.lie_deg.map_or("–".into(), |figure| w.angle(figure)))),
    ]);
    let right = definitions(&[
        ("frequency", text(number(r.cpm, "cpm", 1))),
        ("clamped length", text(number(r.clamp_mm, "mm", 0))),
        ("scale", text(if r.scale.is_empty() { "not noted".into() } else { r.scale.clone() })),
        ("grip", text(r.grip_model.clone().unwrap_or_else(|| "not noted".into()))),
        ("cap", text(number(r.cap_mm, "mm", 1))),
        ("coupler", text(number(r.coupler_g, "g", 1))),
        ("read on", text(r.read_on.map_or_else(|| "not noted".into(), |on| w.date(on)))),
    ]);
    section(&format!("Reference club: the {}", r.number), &html! {}, &columns(&[left, right]))
}

/// Player, date, hand and note of a sheet that is not approved yet.
fn head_form(w: &Words, view: &SheetView, mut form: Entries) -> Markup {
    if form.pairs().is_empty() {
        form = Entries::new(vec![
            ("player".into(), view.sheet.player.clone()),
            ("due".into(), view.sheet.due.to_string()),
            ("hand".into(), view.sheet.hand.key().into()),
            ("note".into(), view.sheet.note.clone()),
            ("version".into(), view.version.to_string()),
        ]);
    }
    html! {
        details open[!form.is_sound()] { summary { "Change player, date, hand or note" }
            form.card method="post" action={ "/sheets/" (in_address(view.id.as_str())) } {
                (hidden("version", form.text("version")))
                (sheet_form::head_fields(w, &form))
                div.actions { (button(&Button { label: "Change", kind: ButtonKind::Quiet, ..Button::default() })) }
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
    let sheet = Sheet { player: head.player, due: head.due, hand: head.hand, note: head.note, ..view.sheet.clone() };
    let version = form.text("version").parse().unwrap_or(-1);
    match app.change_sheet(&view.id, &sheet, version).await {
        Ok(_) => Ok(go_to(&format!("/sheets/{}", in_address(&id))).into_response()),
        Err(error) => {
            form.refuse("player", beside(&w, &error.refusal()));
            sheet_page(&w, &app, &view, form, None, failure_status(&error)).await
        }
    }
}

async fn approve(State(app): State<App>, Reader(w): Reader, Who(by): Who, Path(id): Path<String>) -> PageResult {
    let id = id.as_str().into();
    match app.approve_sheet(&id, &Approve { steps: None, by }).await {
        Ok(job) => Ok(go_to(&format!("/plan/{}", job.number)).into_response()),
        Err(error) => {
            let view = app.sheet(&id).await?;
            let words = format!("Not approved: {error}");
            sheet_page(&w, &app, &view, Entries::default(), Some(&words), failure_status(&error)).await
        }
    }
}

async fn sheet_file(State(app): State<App>, Reader(w): Reader, Path(id): Path<String>) -> PageResult {
    let view = app.sheet(&id.as_str().into()).await?;
    let text = serde_json::to_string_pretty(&view.sheet)
        .map_err(|e| PageError(Problem::invalid(EdgeFault::Unwritable { log: e.to_string() })))?;
    let headers = [
        (header::CONTENT_TYPE, "application/json"),
        (header::CONTENT_DISPOSITION, "attachment; filename=\"sheet.json\""),
    ];
    Ok((headers, text).into_response())
}

async fn file_form(State(app): State<App>, Reader(w): Reader) -> PageResult {
    file_page(&w, &app, &Entries::default(), None, StatusCode::OK).await
}

async fn file_page(w: &Words, app: &App, form: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let body = html! {
        form.card method="post" action="/sheets/file" enctype="multipart/form-data" {
            (file_field("file", "File", "A sheet that was saved here as a file, or written by another program in the same form", ".json,application/json"))
            (form.area("written", "Or its text", 12, Field { hint: "Paste the whole document", ..Field::default() }))
            div.actions { (button(&Button { label: "Load the sheet", ..Button::default() })) }
        }
        p.hint {
            "The form of the file (JSON, with a schema that programs can check against): "
            a href="/api/v1/sheets/schema" { "sheet schema" } "."
        }
        (actions(&[Action { href: "/sheets", label: "Back to the sheets", primary: false }]))
    };
    let page = framed(w, app, Framed { title: "Load a sheet", active: Nav::Sheets, notice, body, ..Framed::default() })
        .await?;
    Ok((status, page).into_response())
}

async fn load_file(State(app): State<App>, Reader(w): Reader, form: Multipart) -> PageResult {
    let (mut form, file) = match Entries::with_file(&w, form).await {
        Ok(read) => read,
        Err(fault) => {
            let notice = Some(notice_of(&w, &fault.into()));
            return file_page(&w, &app, &Entries::default(), notice, StatusCode::BAD_REQUEST).await;
        }
    };
    let text = match file {
        Some(bytes) => String::from_utf8_lossy(&bytes).trim_start_matches('\u{feff}').to_owned(),
        None => form.raw("written").to_owned(),
    };
    form.set("written", text.clone());
    match read_sheet(&w, &text) {
        Ok(sheet) => match app.save_sheet(&sheet).await {
            Ok(view) => Ok(go_to(&format!("/sheets/{}", in_address(view.id.as_str()))).into_response()),
            Err(error) => file_page(&w, &app, &form, Some(failure(&w, &error)), failure_status(&error)).await,
        },
        Err(words) => {
            form.refuse("written", words);
            let notice = Some(Notice {
                tone: Tone::Bad,
                text: "The sheet could not be read.".into(),
                next: "Nothing was saved; the place is named under the text.".into(),
            });
            file_page(&w, &app, &form, notice, StatusCode::UNPROCESSABLE_ENTITY).await
        }
    }
}

/// Reads a sheet's document; a mistake is named with its line.
fn read_sheet(w: &Words, text: &str) -> Result<Sheet, String> {
    if text.trim().is_empty() {
        return Err("There is no file and no text. Choose a file, or paste the sheet".into());
    }
    document::read::<Sheet>(text.as_bytes()).map_err(|error| {
        let line = error.at.and_then(|(line, _)| text.lines().nth(line.saturating_sub(1))).unwrap_or_default().trim();
        let place = if line.is_empty() { String::new() } else { format!(" It reads “{}”.", shortened(line)) };
        format!("{}{place} Correct it, then load it again.", beside(w, &Refusal::new(&error)))
    })
}

fn shortened(line: &str) -> String {
    if line.chars().count() > 80 { line.chars().take(80).chain("…".chars()).collect() } else { line.to_owned() }
}

/// Clubs of a preview with where their values came from.
pub(super) fn expanded_table(w: &Words, expanded: &[Expanded]) -> Markup {
    let rows: Vec<_> = expanded.iter().map(|e| (&e.club, e.origins.as_slice())).collect();
    clubs_table(w, &rows, &|_| None)
}

/// The message for a page that looked at an older version.

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    #[test]
    fn a_bad_sheet_file_is_named_by_line() {
        let words = read_sheet(&w(), "{\n \"player\": \"A\",\n \"dew\": 1\n}").unwrap_err();
        assert!(words.starts_with("Line 3") && words.contains("dew"), "{words}");
        assert!(read_sheet(&w(), "  ").unwrap_err().contains("Choose a file"));
    }

    #[test]
    fn one_line_for_what_is_said_of_several_clubs() {
        let problem = |club: &str| SheetProblem {
            severity: Severity::Warn,
            club: Some(club.into()),
            field: "x".into(),
            words: "no free head".into(),
            next: "Order one.".into(),
            clause: None,
        };
        let (a, b) = (problem("5"), problem("6"));
        let lines = merged(&w(), &[&a, &b]);
        assert_eq!(lines.len(), 1);
        assert_eq!(lines[0].1, "5 6");
    }
}
