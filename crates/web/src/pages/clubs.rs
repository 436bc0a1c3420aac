//! Clubs that live on: the list found from one field, one club with its life, a club from elsewhere.

use super::customers::sheet_places;
use super::entries::{Entries, capital, go_to, query, typed_length, typed_swing_weight, words_cards};
use super::{Framed, PageResult, Who, failure, failure_status, framed, still_below};
use crate::asked::Path;
use crate::reader::Reader;
use app::club::{ChangeClub, ClubLine, ClubView, MeasureClub, NewClub};
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use look::{
    Action, Button, ButtonKind, Cell, Column, Field, Figure, Icon, LifePoint, LifeView, Nav, Notice, button,
    definitions, empty_state, figures, life, link_button, search_bar, section,
};
use maud::{Markup, html};
use trade::arrival::Arrival;
use trade::club::{Club, ClubEvent, ClubFigure};
use trade::job_kind::JobKind;
use trade::kind::{ClubKind, Hand};
use trade::model::as_it_came::HeadMaterial;
use trade::model::{Library, Model, PartKind};
use trade::pendulum::Pendulum;
use trade::reading::{Unit, What};
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/clubs", get(list))
        .route("/clubs/new", get(new).post(note))
        .route("/clubs/{code}", get(show))
        .route("/clubs/{code}/measured", post(measured))
        .route("/clubs/{code}/change", post(change))
}

async fn list(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    let asked = Entries::new(pairs);
    let search = asked.text("search");
    let clubs = app.clubs(search, None, 200).await?;
    let body = html! {
        (sheet_places(&w, "/clubs"))
        (search_bar(&w, "/clubs", "search", &w.text("club-life-search"), search, &html! {}))
        div.actions {
            (link_button("/clubs/new", &w.text("club-life-note"), ButtonKind::Primary, Some(Icon::Plus), "n"))
            (link_button("/kinds", &w.text("job-kind-page"), ButtonKind::Quiet, None, ""))
            (link_button("/exports", &w.text("export-title"), ButtonKind::Quiet, Some(Icon::Export), ""))
        }
        @if clubs.is_empty() {
            (empty_state(&w.text("club-life-none"), &w.text("club-life-none-next"),
                &[Action { href: "/clubs/new", label: &w.text("club-life-note"), primary: true }]))
        } @else {
            form method="get" action="/clubs/job" {
                (clubs_table(&w, &clubs, true))
                div.actions { (button(&Button { label: &w.text("match-set-button"), kind: ButtonKind::Quiet, formaction: "/clubs/match", ..Button::default() })) (button(&Button { label: &w.text("again-button"), kind: ButtonKind::Quiet, formaction: "/again", ..Button::default() })) (button(&Button { label: &w.text("label-of-clubs"), kind: ButtonKind::Quiet, formaction: "/labels", ..Button::default() })) (button(&Button { label: &w.text("club-life-job-on-these"), kind: ButtonKind::Quiet, ..Button::default() })) }
            }
        }
    };
    let crumb = text!(w, "club-life-count", n = clubs.len());
    let title = w.text("club-life-page");
    Ok(framed(
        &w,
        &app,
        Framed { title: &title, active: Nav::Sheets, crumb, body, help: Some("other-jobs"), ..Framed::default() },
    )
    .await?
    .into_response())
}

/// What a club is called: its own name, or its number and whose it is.
pub(super) fn called(w: &Words, club: &Club) -> String {
    if !club.label.is_empty() {
        return club.label.clone();
    }
    text!(w, "club-life-of", club = w.tell(&club.name()), player = club.player.as_str())
}

/// Clubs, each with its figures; `pick`: with a box to tick.
pub(super) fn clubs_table(w: &Words, clubs: &[ClubLine], pick: bool) -> Markup {
    let row = |line: &ClubLine| {
        let club = &line.club;
        let figure = |what| club.figure(what).map_or_else(|| "–".to_owned(), |f| shown(w, f));
        let code = club.code.as_str();
        let picked = html! {
            @if line.job.is_none() { label.pick { input type="checkbox" name="club" value=(code); span.hidden { (text!(w, "club-life-pick", club = code)) } } }
        };
        let mut cells = vec![
            Cell(picked),
            Cell(html! { a href={ "/clubs/" (code) } { (code) } }),
            Cell(
                html! { (called(w, club)) @if !club.label.is_empty() { br; span.small { (text!(w, "club-life-of", club = w.tell(&club.name()), player = club.player.as_str())) } } },
            ),
            Cell::from(figure(What::SwingWeight)),
            Cell::from(figure(What::FinishedLength)),
            Cell::from(figure(What::TotalMass)),
            Cell(
                html! { @if let Some(job) = line.job { a href={ "/bench/" (job) } { (text!(w, "order-job", job = job)) } } @else { "–" } },
            ),
        ];
        if !pick {
            cells.remove(0);
        }
        cells
    };
    let columns = ["pick", "code", "club", "swing-weight", "length", "mass", "job"];
    let columns = &columns[usize::from(!pick)..];
    words_cards(
        &w.text("club-life-caption"),
        columns.iter().map(|column| Column::words(w.text(&format!("club-life-column-{column}")))).collect(),
        clubs.iter().map(row).collect(),
    )
}

/// A figure as a builder reads it.
fn shown(w: &Words, figure: &ClubFigure) -> String {
    super::say::value(w, figure.what, figure.value)
}

async fn new(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    new_page(&w, &app, &Entries::new(pairs), None, StatusCode::OK).await
}

async fn new_page(w: &Words, app: &App, form: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let kinds = choices(w, ClubKind::ALL, ClubKind::key);
    let hands = choices(w, Hand::ALL, Hand::key);
    let materials = choices(w, HeadMaterial::ALL, HeadMaterial::key);
    // Most clubs that come in are irons; a 7 that is taken for a wood is forecast as one.
    let mut form = form.clone();
    if form.text("club_kind").is_empty() {
        form.set("club_kind", ClubKind::Iron.key());
    }
    let form = &form;
    let pendulum = app.shop().await?.pendulum;
    let body = html! {
        form.card method="post" action="/clubs/new" data-keep="" {
            @if !form.text("owner").is_empty() { input type="hidden" name="owner" value=(form.text("owner")); }
            div.fields {
                (form.field("player", &w.text("club-life-player"), Field { required: true, autofocus: true, ..Field::default() }))
                (form.select("club_kind", &w.text("club-life-kind"), "", &kinds))
                (form.field("number", &w.text("club-life-number"), Field { required: true, hint: &w.text("club-life-number-hint"), ..Field::default() }))
                (form.select("hand", &w.text("club-life-hand"), "", &hands))
                (form.field("label", &w.text("club-life-label"), Field { hint: &w.text("club-life-label-hint"), ..Field::default() }))
                (form.select("head_material", &w.text("club-life-material"), &w.text("club-life-material-hint"), &materials))
            }
            h2 { (w.text("club-life-on-arrival")) }
            p.hint { (w.text("club-life-on-arrival-hint")) }
            (arrival_fields(w, form, &pendulum))
            (form.field("note", &w.text("club-life-note-field"), Field::default()))
            (sure_check(w, form))
            div.actions { (button(&Button { label: &w.text("club-life-note"), big: true, ..Button::default() })) (link_button("/clubs", &w.text("button-back"), ButtonKind::Quiet, None, "")) }
        }
    };
    let notice = notice.or_else(|| form.notice(w));
    let title = w.text("club-life-new");
    let page = framed(
        w,
        app,
        Framed { title: &title, active: Nav::Sheets, notice, body, help: Some("other-jobs"), ..Framed::default() },
    )
    .await?;
    Ok((status, page).into_response())
}

fn choices<T: fact::Fact + Copy>(w: &Words, all: &[T], key: impl Fn(T) -> &'static str) -> Vec<(&'static str, String)> {
    all.iter().map(|one| (key(*one), capital(&w.tell(one)))).collect()
}

fn arrival_fields(w: &Words, form: &Entries, pendulum: &Pendulum) -> Markup {
    let decimal = Field { inputmode: "decimal", ..Field::default() };
    let mass = Field { unit: w.mass_sign(), ..decimal };
    html! {
        div.fields {
            (form.field("swing_weight", &capital(&w.tell(&What::SwingWeight)), Field { placeholder: "D2.1", ..Field::default() }))
            (form.field("total_mass", &capital(&w.tell(&What::TotalMass)), mass))
            (form.field("length", &w.text("club-life-length"), Field::default()))
            (form.field("loft", &capital(&w.tell(&What::Loft)), Field { unit: "°", ..decimal }))
            (form.field("lie", &capital(&w.tell(&What::Lie)), Field { unit: "°", ..decimal }))
            (form.field("cpm", &capital(&w.tell(&What::Cpm)), Field { unit: "cpm", ..decimal }))
            (form.field("swing_time", &text!(w, "club-life-swing-time", n = pendulum.swings), Field { placeholder: "18.8", hint: &text!(w, "club-life-swing-time-hint", pivot_mm = pendulum.pivot_mm), ..Field::default() }))
            (form.field("grip_size", &w.text("club-life-grip-size"), Field::default()))
        }
        details open[["head_mass", "shaft_mass", "grip_mass"].iter().any(|name| !form.text(name).is_empty() || form.error(name).is_some())] {
            summary { (w.text("club-life-weighed-pieces")) }
            div.fields {
                (form.field("head_mass", &capital(&w.tell(&What::HeadMass)), mass))
                (form.field("shaft_mass", &capital(&w.tell(&What::ShaftMass)), mass))
                (form.field("grip_mass", &capital(&w.tell(&What::GripMass)), mass))
            }
        }
    }
}

/// Asked only once figures were sent that are odd for such a club.
fn sure_check(w: &Words, form: &Entries) -> Markup {
    html! { @if form.has("odd", "1") { (look::check("sure", "1", &w.text("club-life-sure"), form.has("sure", "1"))) } }
}

fn arrival(w: &Words, form: &mut Entries, pendulum: &Pendulum) -> Arrival {
    let timed = form.swing_time(w, "swing_time", pendulum);
    Arrival {
        swing_period_s: timed.map(|timed| timed.period_s),
        pivot_mm: timed.and_then(|timed| timed.pivot_mm),
        swing_inertia_kg_cm2: None,
        swing_weight_points: form.swing_weight_points(w, "swing_weight"),
        total_mass_g: form.mass_g(w, "total_mass"),
        length_mm: form.length_mm(w, "length"),
        cpm: form.cpm(w, "cpm"),
        loft_deg: form.angle_deg(w, "loft"),
        lie_deg: form.angle_deg(w, "lie"),
        grip_size_mm: form.length_mm(w, "grip_size"),
        head_mass_g: form.mass_g(w, "head_mass"),
        shaft_mass_g: form.mass_g(w, "shaft_mass"),
        grip_mass_g: form.mass_g(w, "grip_mass"),
    }
}

async fn note(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let arrival = arrival(&w, &mut form, &app.shop().await?.pendulum);
    if !form.is_sound() {
        return new_page(&w, &app, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    let club = NewClub {
        label: form.text("label").to_owned(),
        player: form.text("player").to_owned(),
        owner: form.text("owner").parse().ok(),
        hand: Hand::from_key(form.text("hand")).unwrap_or(Hand::Right),
        club_kind: ClubKind::from_key(form.text("club_kind")).unwrap_or(ClubKind::Iron),
        number: form.text("number").to_owned(),
        head_material: HeadMaterial::from_key(form.text("head_material")).unwrap_or(HeadMaterial::Unknown),
        arrival,
        note: form.text("note").to_owned(),
        sure: form.has("sure", "1"),
        by,
    };
    form.set("odd", if club.arrival.odd(club.club_kind, club.number.trim()).is_empty() { "" } else { "1" });
    match app.add_club(&club).await {
        Ok(added) => Ok(go_to(&format!("/clubs/{}", added.club.code)).into_response()),
        Err(error) => new_page(&w, &app, &form, Some(failure(&w, &error)), failure_status(&error)).await,
    }
}

async fn show(State(app): State<App>, Reader(w): Reader, Path(code): Path<String>) -> PageResult {
    club_page(&w, &app, &code, &Entries::default(), None).await
}

async fn club_page(w: &Words, app: &App, code: &str, form: &Entries, error: Option<AppError>) -> PageResult {
    let view = app.club(code).await?;
    let library: Library = app.models(None).await?.into_iter().collect();
    let kinds = app.job_kinds(w).await?;
    let names: Vec<(JobKind, String)> = kinds.iter().map(|k| (k.kind.clone(), k.name.clone())).collect();
    let club = &view.club;
    let pendulum = app.shop().await?.pendulum;
    let mut figures_shown: Vec<(String, String)> =
        club.figures.iter().map(|f| (capital(&w.tell(&f.what)), shown(w, f))).collect();
    if let Some(size_mm) = club.grip_size_mm {
        figures_shown.push((w.text("club-life-grip-size"), w.length_to(size_mm, 3)));
    }
    let body = html! {
        (super::recall::marks_part(w, view.marks.iter(), &format!("/clubs/{}", club.code)))
        @if figures_shown.is_empty() { p.hint { (w.text("club-life-nothing-read")) } } @else {
            div.card { (figures(&figures_shown.iter().map(|(label, value)| Figure { label, value, note: "" }).collect::<Vec<_>>())) }
        }
        (section(&w.text("club-life-its-life"), &html! {}, &html! { (picture(w, &view)) (events(w, &view.life, &names)) }))
        (section(&w.text("club-life-made-of"), &html! {}, &made_of(w, club, &library)))
        @if let Some(job) = view.job {
            p { a href={ "/bench/" (job) } { (text!(w, "club-life-in-job", job = job)) } }
        } @else {
            section.no-print { h2 { (w.text("club-life-work")) } div.actions {
                @for kind in &kinds {
                    (link_button(&format!("/clubs/job{}", query(&[("club", club.code.as_str()), ("kind", &kind.kind.key)])), &kind.name, ButtonKind::Quiet, None, ""))
                }
            } }
            details.no-print open[!form.pairs().is_empty() && form.text("form") == "measured"] {
                summary { (w.text("club-life-measure")) }
                form method="post" action={ "/clubs/" (club.code) "/measured" } {
                    input type="hidden" name="form" value="measured";
                    input type="hidden" name="version" value=(club.version);
                    (arrival_fields(w, form, &pendulum))
                    (form.field("note", &w.text("club-life-note-field"), Field::default()))
                    (sure_check(w, form))
                    div.actions { (button(&Button { label: &w.text("button-keep"), ..Button::default() })) }
                }
            }
        }
        details.no-print { summary { (w.text("club-life-change")) }
            form method="post" action={ "/clubs/" (club.code) "/change" } {
                input type="hidden" name="version" value=(club.version);
                div.fields {
                    (look::field(&Field { name: "label", label: &w.text("club-life-label"), value: &club.label, ..Field::default() }))
                    (look::field(&Field { name: "player", label: &w.text("club-life-player"), value: &club.player, ..Field::default() }))
                    (look::field(&Field { name: "why", label: &w.text("club-life-note-field"), ..Field::default() }))
                }
                (look::check("retired", "yes", &w.text("club-life-retire"), false))
                div.actions { (button(&Button { label: &w.text("button-keep"), kind: ButtonKind::Quiet, ..Button::default() })) }
            }
        }
        div.actions.no-print { (super::again::again_link(w, "club", club.code.as_str())) (link_button(&format!("/labels?clubs={}", club.code.as_str()), &w.text("label-of-clubs"), ButtonKind::Quiet, Some(Icon::Print), "")) (link_button("/clubs", &w.text("club-life-all"), ButtonKind::Quiet, Some(Icon::Back), "")) }
    };
    let status = error.as_ref().map_or(StatusCode::OK, failure_status);
    let notice = error.as_ref().map(|one| still_below(w, one)).or_else(|| form.notice(w));
    let title = called(w, club);
    let crumb = club.code.0.clone();
    let page = framed(
        w,
        app,
        Framed {
            title: &title,
            active: Nav::Sheets,
            crumb,
            notice,
            body,
            help: Some("other-jobs"),
            ..Framed::default()
        },
    );
    Ok((status, page.await?).into_response())
}

/// Swing weight over the entries of its life.
fn picture(w: &Words, view: &ClubView) -> Markup {
    let read = |event: &ClubEvent| event.figures.iter().find(|f| f.what == What::SwingWeight).map(|f| f.value);
    let row = &view.club.made.row;
    let worked = view.life.iter().any(|event| event.job.is_some());
    life(&LifeView {
        title: text!(w, "club-life-picture", club = called(w, &view.club)),
        points: view
            .life
            .iter()
            .map(|event| LifePoint {
                above: read(event).map(|points| w.swing_weight(points)),
                points: read(event),
                below: w.tell(&event.deed),
                day: w.date(w.day_of(event.at)),
            })
            .collect(),
        aim: worked.then_some((row.swing_weight_points, row.tolerances.swing_weight_points)),
    })
}

fn events(w: &Words, life: &[ClubEvent], kinds: &[(JobKind, String)]) -> Markup {
    let row = |event: &ClubEvent| {
        let what = match &event.job_kind {
            Some(key) => kinds
                .iter()
                .find(|(kind, _)| kind.key == *key)
                .map_or_else(|| w.tell(&event.deed), |(_, name)| name.clone()),
            None => capital(&w.tell(&event.deed)),
        };
        let what =
            if event.job_kind.as_deref() == Some(trade::step::NEW_CLUB) { capital(&w.tell(&event.deed)) } else { what };
        let read: Vec<String> = event.figures.iter().map(|f| format!("{} {}", w.tell(&f.what), shown(w, f))).collect();
        let changes: Vec<String> = event.changes.iter().map(|change| w.told(change)).collect();
        vec![
            Cell::from(w.date(w.day_of(event.at))),
            Cell(
                html! { (what) @if let Some(job) = event.job { " " a href={ "/records/" (job) } { (text!(w, "order-job", job = job)) } } },
            ),
            Cell(
                html! { (changes.join(", ")) @if !event.note.is_empty() { @if !changes.is_empty() { br; } (event.note) } },
            ),
            Cell(html! { span.small { (read.join(", ")) } }),
            Cell::from(event.by.clone()),
        ]
    };
    let columns = ["day", "what", "changed", "read", "by"];
    words_cards(
        &w.text("club-life-its-life"),
        columns.map(|column| Column::words(w.text(&format!("club-life-column-{column}")))).to_vec(),
        life.iter().rev().map(row).collect(),
    )
}

fn made_of(w: &Words, club: &Club, library: &Library) -> Markup {
    let (row, pieces) = (&club.made.row, &club.made.pieces);
    let piece = |kind: PartKind, model: &str| {
        let part = pieces.part(kind);
        let name = library.get(model).map_or(model, Model::name).to_owned();
        let mass = part
            .map(|part| (part.weighed, if kind == PartKind::Shaft { pieces.cut_shaft_mass_g } else { part.mass_g }));
        html! {
            (name)
            @match mass {
                Some((true, mass_g)) => { ", " (w.mass(mass_g)) }
                Some((false, mass_g)) => { ", " (text!(w, "club-life-not-weighed", about_g = mass_g)) }
                None => {}
            }
        }
    };
    let mut pairs = vec![
        (capital(&w.tell(&PartKind::Head)), piece(PartKind::Head, &row.head_model)),
        (capital(&w.tell(&PartKind::Shaft)), piece(PartKind::Shaft, &row.shaft_model)),
        (capital(&w.tell(&PartKind::Grip)), piece(PartKind::Grip, &row.grip_model)),
    ];
    for extra in &pieces.extras {
        pairs.push((capital(&w.tell(&extra.action)), html! { (w.mass(extra.mass_g)) }));
    }
    definitions(&pairs)
}

async fn measured(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(code): Path<String>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let arrival = arrival(&w, &mut form, &app.shop().await?.pendulum);
    let version = form.count(&w, "version").unwrap_or_default();
    if !form.is_sound() {
        let mut response = club_page(&w, &app, &code, &form, None).await?;
        *response.status_mut() = StatusCode::UNPROCESSABLE_ENTITY;
        return Ok(response);
    }
    let sure = form.has("sure", "1");
    let read = MeasureClub { arrival, note: form.text("note").to_owned(), sure, by, version };
    let row = app.club(&code).await?.club.made.row;
    if !read.arrival.odd(row.club_kind, &row.number).is_empty() {
        form.set("odd", "1");
    }
    match app.measure_club(&code, &read).await {
        Ok(_) => Ok(go_to(&format!("/clubs/{code}")).into_response()),
        Err(error) => club_page(&w, &app, &code, &form, Some(error)).await,
    }
}

async fn change(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(code): Path<String>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let change = ChangeClub {
        label: Some(form.text("label").to_owned()),
        player: form.some("player"),
        owner: None,
        retired: form.has("retired", "yes"),
        note: form.text("why").to_owned(),
        by,
        version: form.count(&w, "version").unwrap_or_default(),
    };
    match app.change_club(&code, &change).await {
        Ok(_) => Ok(go_to(&format!("/clubs/{code}")).into_response()),
        Err(error) => club_page(&w, &app, &code, &form, Some(error)).await,
    }
}

/// A swing weight and a length as they are typed, for a form that begins with what is known.
pub(super) fn typed(w: &Words, club: &Club, what: What) -> Option<String> {
    let figure = club.figure(what)?;
    Some(match figure.unit {
        Unit::Points => typed_swing_weight(figure.value),
        Unit::Millimetre => typed_length(w, figure.value),
        _ => super::entries::plain(figure.value),
    })
}
