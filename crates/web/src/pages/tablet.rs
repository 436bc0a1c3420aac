//! This tablet: its colours and figures, its keys and pedal, and what every key does.

use super::entries::{Entries, go_to};
use super::{Framed, PageResult, beside_its_entry, framed};
use crate::cookies::{self, keep};
use crate::reader::Reader;
use crate::tablet::{can_be_pedal, decimal_comma, here, language_kept};
use app::App;
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{AppendHeaders, IntoResponse};
use axum::routing::get;
use fact::Refusal;
use look::{
    Button, Cell, Choice, Column, Field, Notice, Select, Table, Tone, button, check, columns, field, section, select,
    table, titled_card,
};
use maud::{Markup, html};
use words::{Language, Words};

pub(super) fn router() -> Router<App> {
    Router::new().route("/tablet", get(show).post(change))
}

async fn show(
    State(app): State<App>,
    Reader(w): Reader,
    headers: HeaderMap,
    Query(asked): Query<Vec<(String, String)>>,
) -> PageResult {
    let kept = Entries::new(asked).has("kept", "1");
    let notice = kept.then(|| Notice { tone: Tone::Good, text: w.text("tablet-kept"), next: String::new() });
    let pedal = here().pedal.unwrap_or_default();
    tablet_page(&w, &app, &headers, &pedal, None, notice).await
}

async fn tablet_page(
    w: &Words,
    app: &App,
    headers: &HeaderMap,
    pedal: &str,
    wrong: Option<&str>,
    notice: Option<Notice>,
) -> PageResult {
    let tablet = here();
    let choice = |value, id: &str, chosen| Choice { value, label: w.text(id).into(), chosen };
    let themes = vec![
        choice("", "tablet-theme-device", tablet.theme.is_none()),
        choice("light", "tablet-theme-light", tablet.theme == Some("light")),
        choice("dark", "tablet-theme-dark", tablet.theme == Some("dark")),
    ];
    let decimal = decimal_comma(headers);
    let decimals = vec![
        choice("", "tablet-decimal-language", decimal.is_none()),
        choice("point", "tablet-decimal-point", decimal == Some(false)),
        choice("comma", "tablet-decimal-comma", decimal == Some(true)),
    ];
    let kept = language_kept(headers).map(Language::code);
    let mut languages = vec![choice("", "tablet-language-browser", kept.is_none())];
    languages.extend(Language::CODES.into_iter().filter_map(Language::of).map(|language| Choice {
        value: language.code(),
        label: language.own_name().into(),
        chosen: kept == Some(language.code()),
    }));
    let cards = [
        titled_card(
            &w.text("tablet-show"),
            &html! {
                (select(&Select { name: "language", label: &w.text("tablet-language"), hint: &w.text("tablet-language-hint"), error: None, choices: languages }))
                (select(&Select { name: "theme", label: &w.text("tablet-theme"), hint: "", error: None, choices: themes }))
                (select(&Select { name: "decimal", label: &w.text("tablet-decimal"), hint: &w.text("tablet-decimal-hint"), error: None, choices: decimals }))
            },
        ),
        titled_card(
            &w.text("tablet-hands"),
            &html! {
                (check("letters", "on", &w.text("tablet-letters"), !tablet.letters_off))
                p.hint { (w.text("tablet-letters-hint")) }
                div data-learn-pedal {
                    (field(&Field {
                        name: "pedal",
                        label: &w.text("tablet-pedal"),
                        value: pedal,
                        hint: &w.text("tablet-pedal-hint"),
                        error: wrong,
                        ..Field::default()
                    }))
                }
            },
        ),
    ];
    let body = html! {
        form method="post" action="/tablet" {
            (columns(&cards))
            div.actions { (button(&Button { label: &w.text("tablet-keep"), ..Button::default() })) }
        }
        div #keys { (section(&w.text("tablet-keys"), &html! {}, &key_list(w))) }
    };
    let (title, crumb) = (w.text("tablet-title"), w.text("tablet-crumb"));
    let page = framed(w, app, Framed { title: &title, crumb, notice, body, help: Some("set-up"), ..Framed::default() })
        .await?;
    let status = if wrong.is_some() { StatusCode::UNPROCESSABLE_ENTITY } else { StatusCode::OK };
    Ok((status, page).into_response())
}

/// Every key: its cap, where it works, what it does there.
const KEYS: [(&str, &str, &str); 16] = [
    ("?", "tablet-everywhere", "tablet-does-list"),
    ("tablet-key-enter", "tablet-at-bench", "tablet-does-enter"),
    ("tablet-key-pedal", "tablet-at-bench", "tablet-does-pedal"),
    ("tablet-key-scanner", "tablet-everywhere", "tablet-does-scanner"),
    ("tablet-key-tab", "tablet-everywhere", "tablet-does-tab"),
    ("N", "tablet-at-bench", "tablet-does-next"),
    ("A", "tablet-at-bench", "tablet-does-all"),
    ("Z", "tablet-at-bench", "tablet-does-wrong"),
    ("R", "tablet-at-bench", "tablet-does-again"),
    ("D", "tablet-at-bench", "tablet-does-done"),
    ("G", "tablet-at-bench", "tablet-does-glue"),
    ("N", "tablet-in-lists", "tablet-does-new"),
    ("tablet-key-enter", "tablet-at-weigh-in", "tablet-does-weigh-enter"),
    ("Z", "tablet-at-weigh-in", "tablet-does-weigh-wrong"),
    ("tablet-key-esc", "tablet-at-weigh-in", "tablet-does-weigh-again"),
    ("C", "tablet-at-scales", "tablet-does-check"),
];

fn key_list(w: &Words) -> Markup {
    let cap = |key: &str| html! { kbd { (if key.starts_with("tablet-") { w.text(key) } else { key.to_owned() }) } };
    table(&Table {
        caption: &w.text("tablet-keys"),
        columns: ["tablet-key", "tablet-where", "tablet-does"].map(|id| Column::words(w.text(id))).to_vec(),
        rows: KEYS
            .iter()
            .map(|(key, place, does)| vec![Cell(cap(key)), Cell::from(w.text(place)), Cell::from(w.text(does))])
            .collect(),
        cards: true,
        ..Table::default()
    })
}

async fn change(
    State(app): State<App>,
    Reader(w): Reader,
    headers: HeaderMap,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let form = Entries::new(fields);
    let pedal = form.text("pedal").trim();
    if !pedal.is_empty() && !can_be_pedal(pedal) {
        let wrong = beside_its_entry(&w, &Refusal::new(&TabletRefused::PedalWrong { key: pedal.to_owned() }));
        return tablet_page(&w, &app, &headers, pedal, Some(&wrong), None).await;
    }
    let letters = if form.has("letters", "on") { "" } else { "off" };
    let cookies = [
        keep(cookies::LANGUAGE, form.text("language")),
        keep(cookies::THEME, form.text("theme")),
        keep(cookies::DECIMAL, form.text("decimal")),
        keep(cookies::LETTERS, letters),
        keep(cookies::PEDAL, pedal),
    ];
    Ok((AppendHeaders(cookies), go_to("/tablet?kept=1")).into_response())
}

fact::facts! {
    /// What is refused of a tablet's settings.
    pub(crate) enum TabletRefused: "tablet" {
        /// A key that types a letter or moves the cursor.
        PedalWrong { key: String },
    }
}
