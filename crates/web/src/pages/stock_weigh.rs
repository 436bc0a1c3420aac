//! Weigh-in by keyboard: the code and the mass, Enter, the next.

use super::entries::{Entries, capital, query};
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::look::{
    Action, Button, ButtonKind, Choice, Field, Nav, Notice, Tone, button, check, empty_state, hidden, keypad_hints,
    link_button, radios,
};
use crate::units::{self, restated};
use app::App;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use maud::{Markup, html};
use workshop::model::{Model, PartKind, TipShape};
use workshop::reading::Unit;
use workshop::stock_file::BadRow;

pub(super) async fn form(State(app): State<App>, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    weigh_page(&app, &Entries::new(pairs), None, None, StatusCode::OK).await
}

/// The numbers that a part of this model may have; empty where it has none.
fn numbers(model: &Model) -> Vec<&str> {
    match model {
        Model::Head(head) => head.numbers.iter().map(|n| n.number.as_str()).collect(),
        Model::Shaft(shaft) if shaft.tip == TipShape::Taper => {
            shaft.blanks.iter().filter_map(|b| b.number.as_deref()).collect()
        }
        _ => Vec::new(),
    }
}

async fn weigh_page(
    app: &App,
    form: &Entries,
    doubt: Option<&str>,
    notice: Option<Notice>,
    status: StatusCode,
) -> PageResult {
    let models = app.models(None).await?;
    let model = models.iter().find(|m| m.code() == form.text("model"));
    let kept = form.text("kept");
    let notice = notice.or_else(|| form.notice()).or_else(|| {
        (!kept.is_empty()).then(|| Notice {
            tone: Tone::Good,
            text: format!("{kept} kept."),
            next: "The next one's code is filled in; type over it where it is another.".into(),
        })
    });
    let body = if models.is_empty() {
        empty_state(
            "There are no models yet.",
            "A part belongs to a model: add that first.",
            &[
                Action { href: "/stock/models/new?kind=head", label: "New head model", primary: true },
                Action { href: "/stock/models/file", label: "Load models from a file", primary: false },
            ],
        )
    } else {
        html! {
            @if !kept.is_empty() {
                p.actions { (link_button(&format!("/labels?codes={}&paper=strip", super::entries::in_address(kept)), "Print its label", ButtonKind::Quiet, Some(crate::look::Icon::Print), "")) }
            }
            (model_form(form, &models))
            @if let Some(model) = model { (part_form(form, model, doubt)) }
        }
    };
    let crumb = model.map_or("choose the model first".to_owned(), |m| format!("{} {}", m.name(), m.kind()));
    let page =
        framed(app, Framed { title: "Weigh in", active: Nav::Stock, crumb, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

fn model_form(form: &Entries, models: &[Model]) -> Markup {
    let now = form.text("model");
    html! {
        form.search method="get" action="/stock/new" {
            label.hidden for="model" { "Model" }
            select #model name="model" {
                @for kind in PartKind::ALL {
                    @if models.iter().any(|m| m.kind() == *kind) {
                        optgroup label={ (capital(kind.word())) "s" } {
                            @for model in models.iter().filter(|m| m.kind() == *kind) {
                                option value=(model.code()) selected[model.code() == now] { (model.name()) }
                            }
                        }
                    }
                }
            }
            (hidden("lot", form.raw("lot"))) (hidden("place", form.raw("place")))
            button.button.(if now.is_empty() { "primary" } else { "quiet" }) type="submit" {
                span { @if now.is_empty() { "Weigh in this model" } @else { "Another model" } }
            }
        }
    }
}

fn part_form(form: &Entries, model: &Model, doubt: Option<&str>) -> Markup {
    let numbers = numbers(model);
    let kind = model.kind();
    let bulk = !matches!(kind, PartKind::Head | PartKind::Shaft);
    let chosen: Vec<Choice<'_>> =
        numbers.iter().map(|n| Choice { value: n, label: n, chosen: *n == form.text("number") }).collect();
    let small = |unit| Field { unit, inputmode: "decimal", ..Field::default() };
    html! {
        form.card method="post" action="/stock/new" {
            (hidden("model", model.code()))
            @if !numbers.is_empty() {
                (radios("number", "Number", &chosen))
                @if let Some(error) = form.error("number") { p.error { (error) } }
            }
            div.fields {
                (form.field("code", "Code on the label", Field { required: true, autofocus: form.text("code").is_empty(), enter_next: true, hint: "H7-014", ..Field::default() }))
                (form.field("mass", "Mass", Field { unit: units::mass_sign(), inputmode: "decimal", autofocus: !form.text("code").is_empty(), hint: units::example("256.1, or 9.03 oz", "9.034, or 256.1 g", Unit::Gram), required: !bulk, ..Field::default() }))
                @if kind == PartKind::Head {
                    (form.field("loft", "Loft as received", small("°")))
                    (form.field("lie", "Lie as received", small("°")))
                }
                @if kind == PartKind::Shaft {
                    (form.field("length", "Raw length", Field { hint: "Empty: the model's", ..small("mm") }))
                    (form.field("balance_point", "Balance point from the butt", Field { hint: "Empty: the model's", ..small("mm") }))
                }
                @if bulk { (form.field("count", "How many in the box", Field { inputmode: "numeric", hint: "Empty: a single piece", ..Field::default() })) }
                (form.field("lot", "Lot", Field { hint: "Stays for the next one", ..Field::default() }))
                (form.field("place", "Place", Field { hint: "Stays for the next one", ..Field::default() }))
            }
            @if let Some(doubt) = doubt {
                div.notice.care role="alert" { p { strong { (capital(doubt)) "." } " Mend it, or keep it as it is." } }
                (check("sure", "1", "It is right: keep it as it is", false))
            }
            div.actions {
                (button(&Button { label: "Keep, next", big: true, ..Button::default() }))
                (link_button("/stock", "Done", ButtonKind::Quiet, None, ""))
            }
            (keypad_hints(&[("Enter", "keep, next part")]))
        }
    }
}

/// The columns of the one-row file that a weighed part is read by, with the form's field of each.
const COLUMNS: [(&str, &str); 12] = [
    ("code", "code"),
    ("kind", "kind"),
    ("model", "model"),
    ("number", "number"),
    ("mass_g", "mass"),
    ("length_mm", "length"),
    ("balance_point_mm", "balance_point"),
    ("loft_deg", "loft"),
    ("lie_deg", "lie"),
    ("lot", "lot"),
    ("place", "place"),
    ("count", "count"),
];

/// A part is read like a row of a list, so that both are held against the same rules.
fn as_row(form: &Entries, kind: PartKind) -> String {
    let quoted = |text: &str| format!("\"{}\"", text.replace('"', "\"\""));
    let cell = |name: &str| quoted(if name == "kind" { kind.key() } else { form.text(name) });
    let heads: Vec<&str> = COLUMNS.iter().map(|(column, _)| *column).collect();
    let cells: Vec<String> = COLUMNS.iter().map(|(_, name)| cell(name)).collect();
    format!("{}\r\n{}\r\n", heads.join(","), cells.join(","))
}

pub(super) async fn keep(State(app): State<App>, Form(fields): Form<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(fields);
    let model = app.model(form.text("model")).await?;
    let missing_number = !numbers(&model).is_empty() && form.text("number").is_empty();
    if missing_number {
        form.refuse("number", "Choose the number first");
    }
    if form.text("mass").is_empty() && matches!(model.kind(), PartKind::Head | PartKind::Shaft) {
        form.refuse("mass", "Put it on the scale and enter its mass, for example 256.1");
    }
    if !form.is_sound() {
        return weigh_page(&app, &form, None, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    let file = as_row(&form, model.kind());
    let read = app.preview_parts(file.as_bytes()).await?;
    if let Some(bad) = read.bad.first() {
        beside(&mut form, bad);
        return weigh_page(&app, &form, None, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    if let Some(doubt) = read.warnings.first()
        && !form.has("sure", "1")
    {
        return weigh_page(&app, &form, Some(&restated(&doubt.words)), None, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    match app.import_parts(file.as_bytes()).await {
        Ok(_) => {
            let code = form.text("code");
            let again = query(&[
                ("model", model.code()),
                ("number", form.text("number")),
                ("lot", form.text("lot")),
                ("place", form.text("place")),
                ("code", &next_code(code)),
                ("kept", code),
            ]);
            Ok(Redirect::to(&format!("/stock/new{again}")).into_response())
        }
        Err(error) => weigh_page(&app, &form, None, Some(failure(&error)), failure_status(&error)).await,
    }
}

/// Puts what was wrong with the row beside the field of its column.
fn beside(form: &mut Entries, bad: &BadRow) {
    let field = COLUMNS.iter().find(|(column, _)| *column == bad.column).map_or("code", |(_, name)| *name);
    let more = if bad.also.is_empty() { String::new() } else { format!(". Also {}", bad.also.join("; ")) };
    let next = bad.next.replace("Correct the cell", "Correct it").replace("Correct the row", "Correct it");
    form.refuse(field, format!("{}. {next}{more}", capital(bad.problem.trim_end_matches('.'))));
}

/// The code after this one: its last digits counted up, their width kept; empty where it ends in no digit.
fn next_code(code: &str) -> String {
    let digits = code.chars().rev().take_while(char::is_ascii_digit).count();
    let (front, last) = code.split_at(code.len() - digits);
    match last.parse::<u64>() {
        Ok(n) if n < u64::MAX => format!("{front}{:0digits$}", n + 1),
        _ => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_next_code_counts_up() {
        assert_eq!(next_code("H7-014"), "H7-015");
        assert_eq!(next_code("H7-099"), "H7-100");
        assert_eq!(next_code("S9"), "S10");
        assert_eq!(next_code("GRIP"), "");
    }

    #[test]
    fn a_comma_in_a_cell_does_not_split_the_row() {
        let form = Entries::new(vec![("code".into(), "H1".into()), ("mass".into(), "256,1".into())]);
        let row = as_row(&form, PartKind::Head);
        assert!(row.ends_with("\"H1\",\"head\",\"\",\"\",\"256,1\",\"\",\"\",\"\",\"\",\"\",\"\",\"\"\r\n"), "{row}");
    }
}
