//! Keys: who may come in from outside this machine, six digits for a tablet, a key for a program; and the door where strangers
//! type the digits.

use super::entries::{Entries, go_to};
use super::trust::fingerprint_of;
use super::{Framed, PageError, PageResult, Who, failure, failure_status, framed, notice_of};
use crate::access::{COME_IN, Visitor};
use crate::asked::Path;
use crate::cookies;
use crate::door::Door;
use crate::encrypted::OverTls;
use crate::problem::{EdgeFault, Problem};
use crate::reader::Reader;
use app::App;
use app::access::{GiveProgramKey, GivenKey, LetTabletIn, ShownCode, TypedCode, WithdrawKey};
use axum::extract::{Form, Query, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{AppendHeaders, IntoResponse, Redirect};
use axum::routing::{get, post};
use axum::{Extension, Router};
use jiff::Timestamp;
use look::{
    Button, ButtonKind, Cell, Column, Field, Notice, PageFrame, Table, Tone, button, link_button, page, qr_code,
    section, table,
};
use maud::{Markup, html};
use trade::access::{AccessKey, KeyRole};
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/keys", get(show))
        .route("/keys/code", post(show_code))
        .route("/keys/program", post(give_program))
        .route("/keys/{number}/withdraw", post(withdraw))
        .route(COME_IN, get(door).post(come_in))
}

/// Days of a program's key where nothing else is typed.
const USUAL_DAYS: &str = "365";

async fn show(
    State(app): State<App>,
    Reader(w): Reader,
    Extension(door): Extension<Door>,
    visitor: Option<Extension<Visitor>>,
) -> PageResult {
    let form = Entries::new(vec![
        ("role".to_owned(), KeyRole::Builder.key().to_owned()),
        ("program_role".to_owned(), KeyRole::Reader.key().to_owned()),
        ("days".to_owned(), USUAL_DAYS.to_owned()),
    ]);
    let own = visitor.and_then(|Extension(visitor)| visitor.key).map(|key| key.number);
    keys_page(&w, &app, &door, own, &form, None, StatusCode::OK).await
}

async fn keys_page(
    w: &Words,
    app: &App,
    door: &Door,
    own: Option<i64>,
    form: &Entries,
    notice: Option<Notice>,
    status: StatusCode,
) -> PageResult {
    let now = app.now();
    let keys = app.access_keys().await?;
    let (good, ended): (Vec<&AccessKey>, Vec<&AccessKey>) = keys.iter().partition(|key| key.is_good(now));
    let roles: Vec<(&str, String)> = KeyRole::WORKING.iter().map(|role| (role.key(), w.tell(role))).collect();
    let roles: Vec<(&str, &str)> = roles.iter().map(|(key, words)| (*key, words.as_str())).collect();
    let body = html! {
        p { (w.text("keys-about")) }
        (reached(w, door))
        (section(&w.text("keys-tablet"), &html! {}, &html! {
            form.card method="post" action="/keys/code" {
                div.fields {
                    (form.field("name", &w.text("keys-name"), Field { hint: &w.text("keys-name-hint"), required: true, ..Field::default() }))
                    (form.select("role", &w.text("keys-role"), &w.text("keys-role-hint"), &roles))
                }
                div.actions { (button(&Button { label: &w.text("keys-show-code"), ..Button::default() })) }
            }
        }))
        (section(&w.text("keys-in"), &html! {}, &html! {
            @if good.is_empty() { p { (w.text("keys-none")) } } @else { (key_table(w, now, &good, own)) }
        }))
        details open[form.has("part", "program")] {
            summary { (w.text("keys-program")) }
            form.card method="post" action="/keys/program" {
                p.hint { (w.text("keys-program-about")) }
                div.fields {
                    (form.field("program_name", &w.text("keys-program-name"), Field { required: true, ..Field::default() }))
                    (form.select("program_role", &w.text("keys-role"), "", &roles))
                    (form.field("days", &w.text("keys-days"), Field { inputmode: "numeric", required: true, ..Field::default() }))
                }
                div.actions { (button(&Button { label: &w.text("keys-give"), kind: ButtonKind::Quiet, ..Button::default() })) }
            }
        }
        p.actions { (link_button("/calendar", &w.text("calendar-title"), ButtonKind::Quiet, Some(look::Icon::Clock), "")) }
        @if !ended.is_empty() {
            details { summary { (text!(w, "keys-ended", n = ended.len())) } (key_table(w, now, &ended, None)) }
        }
    };
    let title = w.text("keys-title");
    let notice = form.notice(w).or(notice);
    let page = framed(w, app, Framed { title: &title, notice, body, help: Some("run"), ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

/// How tablets reach this machine, with the picture to point a camera at.
fn reached(w: &Words, door: &Door) -> Markup {
    let Some(address) = &door.address else { return html! { p.caution { (w.text("keys-only-here")) } } };
    let root = door.encryption.as_deref().and_then(|encryption| Some((encryption, encryption.root.as_ref()?)));
    let Some((encryption, (_, fingerprint))) = root else {
        return html! {
            p { (text!(w, "keys-address", address = address.clone())) }
            @if door.encryption.is_none() { p.caution { (w.text("keys-not-encrypted")) } }
        };
    };
    html! {
        p { (text!(w, "keys-address", address = address.clone())) }
        details {
            summary { (w.text("keys-trust")) }
            @if let Some(begins_at) = &encryption.begins_at {
                p { (text!(w, "keys-trust-about", address = begins_at.clone())) }
                div.door-picture role="img" aria-label=(w.text("keys-trust-picture")) { (qr_code(begins_at)) }
            }
            (fingerprint_of(w, fingerprint))
        }
    }
}

fn key_table(w: &Words, now: Timestamp, keys: &[&AccessKey], own: Option<i64>) -> Markup {
    let row = |key: &&AccessKey| {
        let used = match (key.used_at, &key.used_from) {
            (Some(at), Some(from)) => html! { (text!(w, "keys-used", used_at = at)) br; (from) },
            _ => html! { (w.text("keys-never-used")) },
        };
        vec![
            Cell(html! {
                strong { (key.name) }
                @if own == Some(key.number) { " " span.small { (w.text("keys-this-one")) } }
            }),
            Cell::from(w.tell(&key.held())),
            Cell(used),
            Cell(html! {
                (text!(w, "keys-given", given_at = key.given_at, by = key.given_by.clone()))
                @if let Some(end) = key.end(now) { br; (w.tell(&end)) }
            }),
            Cell(html! {
                @if key.is_good(now) {
                    form method="post" action={ "/keys/" (key.number) "/withdraw" } {
                        button.button.quiet type="submit" aria-label=(text!(w, "keys-withdraw-of", name = key.name.clone())) { (w.text("keys-withdraw")) }
                    }
                }
            }),
        ]
    };
    table(&Table {
        caption: &w.text("keys-in"),
        columns: ["name", "role", "used", "until", "withdraw"]
            .map(|name| Column::words(w.text(&format!("keys-column-{name}"))))
            .to_vec(),
        rows: keys.iter().map(row).collect(),
        cards: true,
        ..Table::default()
    })
}

/// The role that a form names.
fn role_of(form: &Entries, name: &str) -> Result<KeyRole, PageError> {
    KeyRole::from_key(form.text(name)).ok_or_else(|| PageError(Problem::invalid(EdgeFault::NothingChosen)))
}

async fn show_code(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Extension(door): Extension<Door>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let wanted = LetTabletIn { name: form.text("name").to_owned(), role: role_of(&form, "role")?, by };
    match app.let_tablet_in(&wanted).await {
        Ok(shown) => code_page(&w, &app, &door, &shown).await,
        Err(error) => {
            form.set("program_role", KeyRole::Reader.key().to_owned());
            form.set("days", USUAL_DAYS.to_owned());
            keys_page(&w, &app, &door, None, &form, Some(failure(&w, &error)), failure_status(&error)).await
        }
    }
}

async fn code_page(w: &Words, app: &App, door: &Door, shown: &ShownCode) -> PageResult {
    let link = door.address.as_ref().map(|address| format!("{address}{COME_IN}?code={}", shown.code));
    let card = html! {
        p { (text!(w, "keys-code-for", name = shown.name.clone(), role = w.tell(&shown.role))) }
        p.door-digits { (shown.code[..3]) " " (shown.code[3..]) }
        @match (&door.address, &link) {
            (Some(address), Some(link)) => {
                p { (text!(w, "keys-code-type", address = address.clone())) }
                div.door-picture role="img" aria-label=(w.text("keys-code-picture")) { (qr_code(link)) }
                p.hint { (w.text("keys-code-scan")) }
            },
            _ => p.caution { (w.text("keys-only-here")) },
        }
        p.hint { (text!(w, "keys-code-until", time = w.clock(shown.ends_at))) }
    };
    given_page(w, app, "keys-tablet", StatusCode::OK, &card).await
}

/// What is shown once, and the way back to the keys.
pub(super) async fn given_page(w: &Words, app: &App, title: &str, status: StatusCode, card: &Markup) -> PageResult {
    let body = html! {
        div.card { (card) }
        div.actions { (link_button("/keys", &w.text("keys-code-done"), ButtonKind::Primary, None, "")) }
    };
    let title = w.text(title);
    let page = framed(w, app, Framed { title: &title, body, help: Some("run"), ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

async fn give_program(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Extension(door): Extension<Door>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let days = form.count(&w, "days").unwrap_or(0);
    let (name, role) = (form.text("program_name").to_owned(), role_of(&form, "program_role")?);
    let error = if form.is_sound() {
        match app.give_program_key(&GiveProgramKey { name, role, days, by }).await {
            Ok(given) => return secret_page(&w, &app, &given).await,
            Err(error) => Some(error),
        }
    } else {
        None
    };
    form.set("role", KeyRole::Builder.key().to_owned());
    form.set("part", "program".to_owned());
    let status = error.as_ref().map_or(StatusCode::UNPROCESSABLE_ENTITY, failure_status);
    let notice = error.as_ref().map(|error| failure(&w, error));
    keys_page(&w, &app, &door, None, &form, notice, status).await
}

async fn secret_page(w: &Words, app: &App, given: &GivenKey) -> PageResult {
    let card = html! {
        p { (text!(w, "keys-secret-for", name = given.key.name.clone(), role = w.tell(&given.key.role))) }
        p.door-secret { code { (given.secret) } }
        p.hint { (w.text("keys-secret-once")) }
    };
    given_page(w, app, "keys-program", StatusCode::CREATED, &card).await
}

async fn withdraw(State(app): State<App>, Who(by): Who, Path(number): Path<i64>) -> Result<Redirect, PageError> {
    app.withdraw_key(number, &WithdrawKey { by }).await?;
    Ok(go_to("/keys"))
}

async fn door(Reader(w): Reader, Query(asked): Query<Vec<(String, String)>>) -> PageResult {
    Ok(door_page(&w, &Entries::new(asked), None, StatusCode::OK))
}

fn door_page(w: &Words, form: &Entries, notice: Option<Notice>, status: StatusCode) -> axum::response::Response {
    let scanned = form.text("code").len() == 6;
    let body = html! {
        form.card.door method="post" action=(COME_IN) {
            p { (w.text(if scanned { "door-scanned" } else { "door-about" })) }
            input type="hidden" name="to" value=(own_path(form.text("to")));
            (form.field("code", &w.text("door-digits"), Field { inputmode: "numeric", autofocus: !scanned, required: true, ..Field::default() }))
            div.actions { (button(&Button { label: &w.text("door-come-in"), big: true, ..Button::default() })) }
        }
        p.hint { (w.text("door-lost")) }
    };
    let frame = PageFrame {
        title: w.text("door-title"),
        notice,
        bare: true,
        tablet: crate::tablet::here(),
        body,
        ..PageFrame::default()
    };
    (status, page(w, &frame)).into_response()
}

/// A page of ours to go on to: another host's would be a trap.
fn own_path(to: &str) -> &str {
    let own = to.starts_with('/') && !to.starts_with("//") && !to.contains('\\') && !to.starts_with(COME_IN);
    if own { to } else { "/" }
}

async fn come_in(
    State(app): State<App>,
    Reader(w): Reader,
    Extension(visitor): Extension<Visitor>,
    over_tls: Option<Extension<OverTls>>,
    headers: HeaderMap,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    match app.come_in(&TypedCode { code: form.text("code").to_owned() }, &visitor.from).await {
        Ok(given) => {
            let over_tls = over_tls.is_some() || headers.get("x-forwarded-proto").is_some_and(|value| value == "https");
            let kept = AppendHeaders([cookies::keep_key(&given.secret, over_tls)]);
            Ok((kept, go_to(own_path(form.text("to")))).into_response())
        }
        Err(error) if error.kind() == app::Kind::Forbidden => {
            let notice = Notice { tone: Tone::Bad, ..notice_of(&w, &error.refusal()) };
            // Wrong digits do not stay in the field: the next ones are typed into an empty one.
            form.set("code", "");
            Ok(door_page(&w, &form, Some(notice), StatusCode::FORBIDDEN))
        }
        Err(error) => Err(error.into()),
    }
}
