//! Kinds of job: those of the trade, and the shop's own, made from one of them.

use super::entries::{Entries, capital, go_to, words_cards};
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::asked::Path;
use crate::reader::Reader;
use app::App;
use app::club_job::KindView;
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use look::{Button, ButtonKind, Cell, Column, Field, Icon, Nav, Notice, button, link_button};
use maud::{Markup, html};
use trade::job_kind::JobKind;
use trade::step::{NEW_CLUB, Step};
use words::Words;

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/kinds", get(list))
        .route("/kinds/new", get(new).post(keep))
        .route("/kinds/{key}/remove", post(remove))
}

async fn list(State(app): State<App>, Reader(w): Reader) -> PageResult {
    list_page(&w, &app, None, StatusCode::OK).await
}

async fn list_page(w: &Words, app: &App, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let kinds = app.job_kinds(w).await?;
    let row = |kind: &KindView| {
        let steps: Vec<&str> = kind.kind.steps.iter().map(|step| step.label.as_str()).collect();
        let takes: Vec<String> = kind.kind.takes.iter().map(|part| w.tell(part)).collect();
        let asks: Vec<String> = kind.kind.asks.iter().map(|asked| w.tell(asked)).collect();
        vec![
            Cell(html! { strong { (kind.name) } @if !kind.say.is_empty() { br; span.small { (kind.say) } } }),
            Cell::from(if takes.is_empty() { "–".to_owned() } else { takes.join(", ") }),
            Cell(html! { span.small { (asks.join(", ")) } }),
            Cell(html! { span.small { (steps.join(" → ")) } }),
            Cell(
                html! { @if !kind.of_the_trade { form method="post" action={ "/kinds/" (kind.kind.key) "/remove" } { (button(&Button { label: &w.text("job-kind-remove"), kind: ButtonKind::Quiet, ..Button::default() })) } } },
            ),
        ]
    };
    let columns = ["name", "new-parts", "asks", "steps", "own"];
    let body = html! {
        div.actions {
            (link_button("/kinds/new", &w.text("job-kind-make"), ButtonKind::Primary, Some(Icon::Plus), "n"))
            (link_button("/clubs", &w.text("club-life-page"), ButtonKind::Quiet, Some(Icon::Back), ""))
        }
        (words_cards(&w.text("job-kind-page"), columns.map(|column| Column::words(w.text(&format!("job-kind-column-{column}")))).to_vec(), kinds.iter().map(row).collect()))
    };
    let title = w.text("job-kind-page");
    let page = framed(
        w,
        app,
        Framed { title: &title, active: Nav::Sheets, notice, body, help: Some("other-jobs"), ..Framed::default() },
    )
    .await?;
    Ok((status, page).into_response())
}

async fn new(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    new_page(&w, &app, &Entries::new(pairs), None, StatusCode::OK).await
}

async fn new_page(w: &Words, app: &App, form: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let kinds = app.job_kinds(w).await?;
    let like = kinds.iter().find(|kind| kind.kind.key == form.text("like")).or_else(|| kinds.first());
    let choices: Vec<(&str, &str)> = kinds.iter().map(|k| (k.kind.key.as_str(), k.name.as_str())).collect();
    let mut chosen = form.clone();
    chosen.set("like", like.map(|kind| kind.kind.key.clone()).unwrap_or_default());
    let body = html! {
        form.card method="get" action="/kinds/new" {
            div.fields { (chosen.select("like", &w.text("job-kind-like"), &w.text("job-kind-like-hint"), &choices)) }
            div.actions { (button(&Button { label: &w.text("job-kind-show-steps"), kind: ButtonKind::Quiet, ..Button::default() })) }
        }
        @if let Some(like) = like {
            form.card method="post" action="/kinds/new" {
                input type="hidden" name="like" value=(like.kind.key);
                div.fields {
                    (form.field("label", &w.text("job-kind-name"), Field { required: true, ..Field::default() }))
                }
                fieldset.choices.kind-steps { legend { (w.text("job-kind-steps")) } (steps(form, &like.kind.steps)) }
                div.actions { (button(&Button { label: &w.text("job-kind-make"), big: true, ..Button::default() })) (link_button("/kinds", &w.text("button-back"), ButtonKind::Quiet, None, "")) }
            }
        }
    };
    let notice = notice.or_else(|| form.notice(w));
    let title = w.text("job-kind-make");
    let page = framed(
        w,
        app,
        Framed { title: &title, active: Nav::Sheets, notice, body, help: Some("other-jobs"), ..Framed::default() },
    )
    .await?;
    Ok((status, page).into_response())
}

fn steps(form: &Entries, steps: &[Step]) -> Markup {
    let sent = !form.text("label").is_empty() || form.error("label").is_some();
    html! {
        @for step in steps {
            div { (look::check("step", &step.key, &capital(&step.label), !sent || form.has("step", &step.key))) span.hint { (step.say) } }
        }
    }
}

async fn keep(State(app): State<App>, Reader(w): Reader, Form(fields): Form<Vec<(String, String)>>) -> PageResult {
    let form = Entries::new(fields);
    let kinds = app.job_kinds(&w).await?;
    let Some(like) = kinds.iter().find(|kind| kind.kind.key == form.text("like")) else {
        return new_page(&w, &app, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    };
    let steps = like.kind.steps.iter().filter(|step| form.has("step", &step.key)).cloned().collect();
    let kind = JobKind {
        key: key_of(form.text("label"), &kinds),
        label: form.text("label").to_owned(),
        steps,
        ..like.kind.clone()
    };
    match app.save_job_kind(&kind).await {
        Ok(_) => Ok(go_to("/kinds").into_response()),
        Err(error) => new_page(&w, &app, &form, Some(failure(&w, &error)), failure_status(&error)).await,
    }
}

/// The key of a kind from its name, which nobody needs to think of: “Clean up” is `clean_up`, and `clean_up_2` where that is
/// taken.
fn key_of(label: &str, kinds: &[KindView]) -> String {
    let plain = |c: char| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { ' ' };
    let spaced: String = label.chars().map(plain).collect();
    let mut key = spaced.split_whitespace().collect::<Vec<_>>().join("_");
    key.truncate(28);
    if key.is_empty() {
        key = "kind".to_owned();
    }
    let taken = |key: &str| key == NEW_CLUB || kinds.iter().any(|kind| kind.kind.key == key);
    if !taken(&key) {
        return key;
    }
    (2..).map(|n| format!("{key}_{n}")).find(|key| !taken(key)).unwrap_or(key)
}

async fn remove(State(app): State<App>, Reader(w): Reader, Path(key): Path<String>) -> PageResult {
    match app.remove_job_kind(&key).await {
        Ok(()) => Ok(go_to("/kinds").into_response()),
        Err(error) => list_page(&w, &app, Some(failure(&w, &error)), failure_status(&error)).await,
    }
}
