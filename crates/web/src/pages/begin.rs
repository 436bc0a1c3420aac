//! The first hour of a new shop: three questions, one set in a line, its parts; then the plan and the bench as ever.
//!
//! The pages keep nothing of their own: where the shop is shows in its models, sheets, parts and jobs, so that whoever comes
//! back, loads a page again or takes another tablet goes on there.

use super::entries::{Entries, go_to, in_address, plain};
use super::{Framed, NOBODY, PageResult, Who, beside, failure, failure_status, framed, within_its_entry};
use crate::asked::Path;
use crate::cookies::{self, keep};
use crate::reader::Reader;
use crate::units::explicit;
use app::App;
use app::begin::{BeginSet, BeginShop, PieceToWeigh, PieceWeighed};
use app::told::TellShop;
use app::weigh_in::WeighedIn;
use axum::Router;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::{AppendHeaders, IntoResponse};
use axum::routing::get;
use bench::told::{Sureness, ToldOf};
use jiff::ToSpan;
use look::{Button, ButtonKind, Choice, Field, Icon, Nav, Notice, button, check, link_button, radios, section};
use maud::{Markup, html};
use quantity::Units;
use trade::kind::Hand;
use trade::model::usual::usual_models;
use trade::model::{Model, PartKind};
use trade::reading::Unit;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/begin", get(questions).post(answer))
        .route("/begin/set", get(set).post(keep_set))
        .route("/begin/parts/{id}", get(parts).post(weigh_parts))
        .route("/begin/lists", get(lists))
        .route("/begin/try", get(try_out))
}

/// The three ways into a shop that has nothing yet.
pub(super) fn ways(w: &Words) -> Markup {
    section(
        &w.text("begin-ways"),
        &html! {},
        &html! {
            p { (w.text("begin-ways-about")) }
            div.actions { (link_button("/begin", &w.text("begin-one-set"), ButtonKind::Primary, Some(Icon::Forward), "n")) }
            div.actions {
                (link_button("/begin/lists", &w.text("begin-my-lists"), ButtonKind::Quiet, None, ""))
                (link_button("/begin/try", &w.text("begin-try"), ButtonKind::Quiet, None, ""))
            }
        },
    )
}

/// What the builder is asked to know: the figures that he may leave empty.
const KNOWN: [ToldOf; 3] = [ToldOf::Joint, ToldOf::Grip, ToldOf::Wrap];

/// The model that each of them is about: its field, its kind, and the usual one.
const MADE_OF: [(&str, PartKind, &str); 3] = [
    ("adhesive", PartKind::Adhesive, "ANY-EPOXY-DAY"),
    ("grip", PartKind::Grip, "ANY-GRIP"),
    ("tape", PartKind::Tape, "ANY-TAPE"),
];

/// The shop's own models of a kind, then the usual ones that it does not have.
fn choices(w: &Words, models: &[Model], kind: PartKind) -> Vec<(String, String)> {
    let own = models.iter().filter(|m| m.kind() == kind).map(|m| (m.code().to_owned(), m.name().to_owned()));
    let mut all: Vec<(String, String)> = own.collect();
    for usual in usual_models().iter().filter(|usual| usual.model.kind() == kind) {
        // The hand of the player says which of the two heads is meant.
        let other_hand = matches!(&usual.model, Model::Head(head) if head.hand == Hand::Left);
        if !other_hand && !all.iter().any(|(code, _)| code == usual.model.code()) {
            all.push((usual.model.code().to_owned(), w.tell(&usual.name)));
        }
    }
    all
}

fn borrowed(list: &[(String, String)]) -> Vec<(&str, &str)> {
    list.iter().map(|(code, name)| (code.as_str(), name.as_str())).collect()
}

async fn questions(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let shop = app.shop().await?;
    let models = app.models(None).await?;
    let mut form = Entries::default();
    form.set("units", w.units.key());
    form.set("balance_step", plain(shop.balance_scale.display_step));
    form.set("mass_step", super::measured::Measured::Gram.typed(&w, shop.mass_scale.display_step));
    for (field, kind, usual) in MADE_OF {
        let own = match kind {
            PartKind::Adhesive => shop.adhesive.clone(),
            PartKind::Tape => shop.tape.clone(),
            _ => None,
        };
        let first = || models.iter().find(|m| m.kind() == kind).map(|m| m.code().to_owned());
        form.set(field, own.or_else(first).unwrap_or_else(|| usual.to_owned()));
    }
    questions_page(&w, &app, &form, None, StatusCode::OK).await
}

async fn questions_page(
    w: &Words,
    app: &App,
    form: &Entries,
    notice: Option<Notice>,
    status: StatusCode,
) -> PageResult {
    let models = app.models(None).await?;
    let unit_choices: Vec<(&str, String)> =
        ["in-g", "mm-g", "in-oz", "mm-oz"].into_iter().map(|key| (key, w.text(&format!("shop-units-{key}")))).collect();
    let points = w.text("unit-points");
    let model = |(field, kind, _): (&str, PartKind, &str)| {
        let list = choices(w, &models, kind);
        form.select(field, &w.text(&format!("begin-{field}")), "", &borrowed(&list))
    };
    let figure = |name: &str, label: &str, unit: &str, autofocus: bool| {
        let shape = Field { unit, inputmode: "decimal", autofocus, ..Field::default() };
        form.field(name, &w.text(label), shape)
    };
    let body = html! {
        form method="post" action="/begin" {
            (section(&w.text("begin-known"), &html! {}, &html! {
                p.hint { (w.text("begin-known-hint")) }
                div.fields { (figure("joint.points", "begin-joint", &points, true)) (model(MADE_OF[0])) }
                div.fields { (figure("grip.points", "begin-grip-takes", &points, false)) (model(MADE_OF[1])) }
                div.fields { (figure("wrap.points", "begin-wrap-takes", &points, false)) (model(MADE_OF[2])) }
            }))
            (section(&w.text("begin-scales"), &html! {}, &html! {
                div.fields {
                    (figure("balance_step", "begin-balance-step", &points, false))
                    (figure("mass_step", "begin-mass-step", w.mass_sign(), false))
                }
            }))
            (section(&w.text("begin-units"), &html! {}, &html! {
                div.fields { (form.select("units", &w.text("begin-units-field"), &w.text("begin-units-hint"), &unit_choices)) }
            }))
            div.actions { (button(&Button { label: &w.text("begin-go-on"), big: true, ..Button::default() })) }
        }
    };
    page(w, app, ("begin-title", "begin-step-one"), form, notice, body, status).await
}

/// What all pages of this path share.
async fn page(
    w: &Words,
    app: &App,
    (title, crumb): (&str, &str),
    form: &Entries,
    notice: Option<Notice>,
    body: Markup,
    status: StatusCode,
) -> PageResult {
    let (title, crumb) = (w.text(title), w.text(crumb));
    let notice = form.notice(w).or(notice);
    let view =
        Framed { title: &title, active: Nav::Today, crumb, notice, body, help: Some("set-up"), ..Framed::default() };
    Ok((status, framed(w, app, view).await?).into_response())
}

async fn answer(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    // What was typed without a unit is in the units that the page was shown in.
    let balance = form.number(&w, "balance_step");
    let balance = form.needed("balance_step", balance, &w.text("begin-step-needed"));
    let mass = form.measured(&w, "mass_step", super::measured::Measured::Gram);
    let mass = form.needed("mass_step", mass, &w.text("begin-step-needed"));
    let mut all_told = Vec::new();
    for (of, (field, ..)) in KNOWN.iter().zip(MADE_OF) {
        let name = format!("{}.points", of.key());
        let Some(points) = form.number(&w, &name) else { continue };
        let (on, off) = if of.puts_on() { (Some(points), None) } else { (None, Some(points)) };
        all_told.push(TellShop {
            of: *of,
            model: form.some(field),
            puts_on_points: on,
            takes_off_points: off,
            sure: Some(Sureness::Figure),
            by: by.clone(),
        });
    }
    let (true, Some(balance_step_points), Some(mass_step_g)) = (form.is_sound(), balance, mass) else {
        return questions_page(&w, &app, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    };
    let text = |name: &str| form.text(name).to_owned();
    let begin = BeginShop {
        balance_step_points,
        mass_step_g,
        adhesive: text("adhesive"),
        tape: text("tape"),
        grip: text("grip"),
        told: all_told,
        by: by.clone(),
    };
    if let Err(error) = app.begin_shop(&begin, |name| w.tell(name)).await {
        let notice = Some(failure(&w, &error));
        return questions_page(&w, &app, &form, notice, failure_status(&error)).await;
    }
    let chosen = Units::from_key(form.text("units"));
    let name = if by == NOBODY { "" } else { by.as_str() };
    let chosen = app.name_person(name, Some(chosen)).await?;
    let cookies = [keep(cookies::UNITS, &chosen.key())];
    let to = format!("/begin/set?grip={}", in_address(&begin.grip));
    Ok((AppendHeaders(cookies), go_to(&to)).into_response())
}

async fn set(
    State(app): State<App>,
    Reader(w): Reader,
    axum::extract::Query(asked): axum::extract::Query<Vec<(String, String)>>,
) -> PageResult {
    let asked = Entries::new(asked);
    let mut form = Entries::default();
    form.set("hand", Hand::Right.key());
    form.set("due", app.today().saturating_add(14.days()).to_string());
    form.set("grip", asked.some("grip").unwrap_or_else(|| "ANY-GRIP".to_owned()));
    let own = app.models(Some(PartKind::Head)).await?.first().map(|head| head.code().to_owned());
    form.set("head", own.unwrap_or_else(|| "ANY-CAVITY".to_owned()));
    set_page(&w, &app, &form, None, StatusCode::OK).await
}

async fn set_page(w: &Words, app: &App, form: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let models = app.models(None).await?;
    let list = |kind| choices(w, &models, kind);
    let (heads, grips) = (list(PartKind::Head), list(PartKind::Grip));
    let fits = (String::new(), w.text("begin-shaft-fits"));
    let shafts: Vec<(String, String)> = std::iter::once(fits).chain(list(PartKind::Shaft)).collect();
    let hands: Vec<Choice<'_>> = Hand::ALL
        .iter()
        .map(|h| Choice { value: h.key(), label: w.tell(h).into(), chosen: form.text("hand") == h.key() })
        .collect();
    let body = html! {
        form.card method="post" action="/begin/set" {
            div.fields {
                (form.field("player", &w.text("sheet-form-player"), Field { required: true, autofocus: true, ..Field::default() }))
                (form.field("written", &w.text("begin-written"), Field { required: true, hint: &w.text("begin-written-hint"), ..Field::default() }))
            }
            div.fields {
                (form.select("head", &w.text("begin-head"), "", &borrowed(&heads)))
                (form.select("shaft", &w.text("begin-shaft"), "", &borrowed(&shafts)))
                (form.select("grip", &w.text("begin-grip"), "", &borrowed(&grips)))
            }
            div.fields {
                (radios("hand", &w.text("sheet-form-hand"), &hands))
                (form.field("due", &w.text("sheet-form-due"), Field { kind: "date", required: true, ..Field::default() }))
            }
            div.actions { (button(&Button { label: &w.text("begin-go-on"), big: true, ..Button::default() })) }
            p.small { (w.text("begin-models-hint")) " " a href="/stock/models/new" { (w.text("begin-own-model")) } " · " a href="/sheets/new" { (w.text("begin-whole-sheet")) } }
        }
    };
    page(w, app, ("begin-set-title", "begin-step-two"), form, notice, body, status).await
}

async fn keep_set(State(app): State<App>, Reader(w): Reader, Form(fields): Form<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(fields);
    let player = form.some("player");
    let player = form.needed("player", player, &w.text("sheet-form-player-needed"));
    let written = form.some("written");
    let written = form.needed("written", written, &w.text("sheet-form-written-needed"));
    let due = form.date(&w, "due");
    let due = form.needed("due", due, &w.text("sheet-form-due-needed"));
    let (Some(player), Some(written), Some(due)) = (player, written, due) else {
        return set_page(&w, &app, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    };
    let begin = BeginSet {
        player,
        written,
        due,
        hand: Hand::from_key(form.text("hand")).unwrap_or(Hand::Right),
        head: form.text("head").to_owned(),
        shaft: form.some("shaft"),
        grip: form.text("grip").to_owned(),
    };
    match app.begin_set(&begin, |name| w.tell(name)).await {
        Ok(id) => Ok(go_to(&format!("/begin/parts/{}", in_address(id.as_str()))).into_response()),
        Err(error) => {
            form.refuse("written", beside(&w, &within_its_entry(&error.refusal())));
            set_page(&w, &app, &form, None, failure_status(&error)).await
        }
    }
}

async fn parts(State(app): State<App>, Reader(w): Reader, Path(id): Path<String>) -> PageResult {
    let mut form = Entries::default();
    form.set("small", "1");
    parts_page(&w, &app, &id, &form, &[], None, StatusCode::OK).await
}

async fn parts_page(
    w: &Words,
    app: &App,
    id: &str,
    form: &Entries,
    questioned: &[String],
    notice: Option<Notice>,
    status: StatusCode,
) -> PageResult {
    let sheet = app.sheet(&id.into()).await?;
    // A piece that was kept is not asked for again.
    let pieces = app.pieces_to_weigh(&sheet.id).await?;
    let labelled = |piece: &PieceToWeigh| match &piece.number {
        Some(number) => text!(w, "begin-piece-number", number = w.club_number(number), name = piece.name),
        None => piece.name.clone(),
    };
    let first_open =
        pieces.iter().position(|p| form.text(&p.request_key).is_empty() || form.error(&p.request_key).is_some());
    let mass = |(at, piece): (usize, &PieceToWeigh)| {
        let key = piece.request_key.as_str();
        let shape =
            Field { unit: w.mass_sign(), inputmode: "decimal", autofocus: first_open == Some(at), ..Field::default() };
        html! {
            (form.field(key, &labelled(piece), shape))
            @if questioned.iter().any(|asked| asked == key) {
                (check(&format!("sure-{key}"), "1", &w.text("begin-sure"), false))
            }
        }
    };
    let body = html! {
        form.card method="post" action={ "/begin/parts/" (in_address(id)) } {
            @if pieces.is_empty() { p { (w.text("begin-parts-there")) } }
            @else {
                p.hint { (w.text("begin-parts-hint")) }
                div.fields { @for piece in pieces.iter().enumerate() { (mass(piece)) } }
            }
            p { (check("small", "1", &text!(w, "begin-small", n = sheet.sheet.clubs.len()), form.has("small", "1"))) }
            div.actions { (button(&Button { label: &w.text("begin-to-plan"), big: true, ..Button::default() })) }
            p.small { a href={ "/sheets/" (in_address(id)) } { (w.text("begin-see-sheet")) } " · " a href="/stock/import" { (w.text("begin-import")) } }
        }
    };
    page(w, app, ("begin-parts-title", "begin-step-three"), form, notice, body, status).await
}

async fn weigh_parts(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(id): Path<String>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let sheet = app.sheet(&id.as_str().into()).await?.id;
    let pieces = app.pieces_to_weigh(&sheet).await?;
    let weighed: Vec<PieceWeighed> = pieces
        .iter()
        .filter_map(|piece| {
            let mass = form.some(&piece.request_key)?;
            let sure = form.has(&format!("sure-{}", piece.request_key), "1");
            Some(PieceWeighed { piece: piece.clone(), mass: explicit(&w, Unit::Gram, &mass), sure })
        })
        .collect();
    let mut questioned = Vec::new();
    for (key, answer) in app.begin_parts(&weighed, &by).await? {
        match answer {
            WeighedIn::Questioned(judged) => {
                form.refuse(&key, w.sentence(&judged.finding));
                questioned.push(key);
            }
            WeighedIn::Refused(bad) => form.refuse(&key, beside(&w, &bad.what())),
            WeighedIn::Kept(_) => {}
        }
    }
    if form.has("small", "1") {
        app.begin_small_parts(&sheet, &by).await?;
    }
    let open = app.pieces_to_weigh(&sheet).await?;
    let untyped = open.iter().any(|piece| form.text(&piece.request_key).is_empty());
    if !form.is_sound() || untyped && weighed.is_empty() && !open.is_empty() {
        if form.is_sound() {
            form.refuse(&open[0].request_key, w.text("begin-mass-needed"));
        }
        return parts_page(&w, &app, &id, &form, &questioned, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    match app.begin_job(&sheet, &by).await {
        Ok(job) => Ok(go_to(&format!("/plan/{job}")).into_response()),
        Err(error) => {
            let notice = Some(failure(&w, &error));
            parts_page(&w, &app, &id, &form, &[], notice, failure_status(&error)).await
        }
    }
}

/// Where lists go: models, parts, the sheet.
async fn lists(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let step = |href: &str, what: &str, how: &str| {
        html! { li { a.button.quiet href=(href) { (w.text(what)) } p.small { (w.text(how)) } } }
    };
    let body = html! {
        ol.plain.big-links {
            (step("/stock/models/file", "begin-lists-models", "begin-lists-models-how"))
            (step("/stock/models/usual", "begin-lists-usual", "begin-lists-usual-how"))
            (step("/stock/import", "begin-lists-parts", "begin-lists-parts-how"))
            (step("/sheets/file", "begin-lists-sheets", "begin-lists-sheets-how"))
            (step("/begin", "begin-one-set", "begin-lists-set-how"))
        }
    };
    page(&w, &app, ("begin-my-lists", "begin-lists-about"), &Entries::default(), None, body, StatusCode::OK).await
}

/// The invented shop has a database of its own, so that nothing of it gets into this one.
async fn try_out(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let body = html! {
        p { (w.text("begin-try-about")) }
        pre { code { "setwright demo" } }
        p { (w.text("begin-try-next")) }
        div.actions { (link_button("/begin", &w.text("begin-one-set"), ButtonKind::Primary, None, "")) }
    };
    page(&w, &app, ("begin-try", "begin-try-crumb"), &Entries::default(), None, body, StatusCode::OK).await
}
