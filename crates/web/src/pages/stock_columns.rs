//! The second step of an import: which column is what, in which unit, and what holds for every row.

use super::entries::Entries;
use crate::problem::EdgeFault;
use app::stock_list::Looked;
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use desk::stock_file::Mapping;
use desk::stock_file::StockFileError;
use desk::stock_file::field_names;
use desk::stock_file::heading_of;
use desk::stock_file::units_of;
use fact::Refusal;
use look::{Button, ButtonKind, Choice, Field, Select, button, field, hidden, request_key, section, select};
use maud::{Markup, html};
use std::collections::BTreeMap;
use trade::model::Model;
use trade::model::PartKind;
use trade::part_field;
use words::{Words, text};

/// What can hold for every row of a list.
const FIXED: [&str; 5] = ["kind", "model", "number", "lot", "place"];

/// The file as it was carried from the step before, in letters within the form; so neither a restart nor another
/// tablet can lose it. None where this is the first step.
pub(super) fn carried(form: &Entries) -> Result<Option<Vec<u8>>, EdgeFault> {
    let letters = form.text("held");
    if letters.is_empty() {
        return Ok(None);
    }
    let broken = |_| EdgeFault::FileLost;
    STANDARD.decode(letters).map(Some).map_err(broken)
}

/// What the form says of the columns; none on the first step, or where another sheet was chosen. A column chosen for
/// two things is told beside the mapping with the first of them.
pub(super) fn mapping_of(w: &Words, form: &Entries) -> (Option<Mapping>, Option<Refusal>) {
    let sheet = form.some("sheet");
    let header_line = form.text("header_line").parse::<u64>().ok();
    let fixed = FIXED
        .iter()
        .filter_map(|name| form.some(&format!("all_{name}")).map(|value| ((*name).to_owned(), value)))
        .collect::<BTreeMap<_, _>>();
    let mut mapping = Mapping { sheet, header_line, fixed, ignore_others: true, ..Mapping::default() };
    if form.text("held").is_empty() {
        return (None, None);
    }
    let moved =
        form.text("sheet") != form.text("sheet_was") || form.text("header_line") != form.text("header_line_was");
    if moved {
        if form.text("sheet") != form.text("sheet_was") {
            mapping.header_line = None;
        }
        return (Some(mapping), None);
    }
    // What no column was chosen for is in no column, whatever the headings say.
    mapping.columns = field_names().iter().map(|name| ((*name).to_owned(), String::new())).collect();
    let mut twice = None;
    for at in 0..desk::stock_file::COLUMNS_MAX {
        let Some(heading) = form.some(&format!("heading_{at}")) else { break };
        let name = form.text(&format!("means_{at}"));
        let Some(place) = mapping.columns.get_mut(name) else { continue };
        if place.is_empty() {
            *place = heading;
            let unit = form.text(&format!("unit_{at}"));
            if units_of(name).contains(&unit) {
                mapping.units.insert(name.to_owned(), unit.to_owned());
            }
        } else {
            let (first, second, field) = (place.clone(), heading, shown(w, name));
            twice.get_or_insert_with(|| StockFileError::FieldTwice { field, first, second }.into());
        }
    }
    (Some(mapping), twice)
}

/// A field of a part as its word.
fn shown(w: &Words, name: &str) -> String {
    part_field::Field::by_name(name).map_or_else(|| name.to_owned(), |field| w.tell(field))
}

/// What a column is taken for: as it was said, or as its heading says.
fn meaning<'a>(mapping: &'a Mapping, heading: &str) -> Option<&'a str> {
    mapping.columns.iter().find(|(_, h)| h.as_str() == heading).map(|(name, _)| name.as_str())
}

/// The form with the file in it.
pub(super) fn columns_form(w: &Words, looked: &Looked, form: &Entries, bytes: &[u8], models: &[Model]) -> Markup {
    let table = &looked.table;
    let guessed = Mapping::guessed(table);
    let mapping = if looked.mapping.columns.is_empty() { &guessed } else { &looked.mapping };
    let good = looked.imported.parts.len();
    let label = match (good, looked.imported.bad.len()) {
        (good, 0) => text!(w, "stock-list-keep-all", n = good),
        (good, _) => text!(w, "stock-list-keep-good", n = good),
    };
    let line = table.header_line.to_string();
    let remember = form.some("remember").or_else(|| looked.known_as.clone()).unwrap_or_default();
    html! {
        form.card.mapping method="post" action="/stock/import" enctype="multipart/form-data" data-progress {
            (hidden("held", &STANDARD.encode(bytes)))
            (request_key(&app::request_key())) (hidden("sheet_was", &table.sheet)) (hidden("header_line_was", &line))
            div.actions {
                @if good > 0 { (button(&Button { label: &label, formaction: "/stock/import/keep", ..Button::default() })) }
                (button(&Button { label: &w.text("stock-list-look-again"), kind: if good > 0 { ButtonKind::Quiet } else { ButtonKind::Primary }, ..Button::default() }))
                a.button.quiet href="/stock/import" { (w.text("stock-list-another")) }
            }
            div.fields {
                @if table.sheets.len() > 1 {
                    (select(&Select { name: "sheet", label: &w.text("stock-list-sheet"),
                        choices: table.sheets.iter().map(|s| Choice { value: s, label: s.into(), chosen: *s == table.sheet }).collect(), ..Select::default() }))
                } @else if !table.sheet.is_empty() { (hidden("sheet", &table.sheet)) }
                (look::field(&look::Field { name: "header_line", label: &w.text("stock-list-header-line"), value: &line, inputmode: "numeric", ..look::Field::default() }))
            }
            (field(&Field { name: "remember", label: &w.text("stock-list-remember"), value: &remember, hint: &w.text("stock-list-remember-hint"), ..Field::default() }))
            (section(&w.text("stock-list-columns"), &html! {}, &html! {
                div.table-wrap { table {
                    caption.hidden { (w.text("stock-list-columns-caption")) }
                    thead { tr { th scope="col" { (w.text("stock-list-heading")) } th scope="col" { (w.text("stock-list-is")) } th scope="col" { (w.text("stock-list-unit")) } th scope="col" { (w.text("stock-list-first-cells")) } } }
                    tbody { @for (at, heading) in table.header.iter().enumerate() { (column_row(w, looked, mapping, at, heading)) } }
                } }
            }))
            (section(&w.text("stock-list-every-row"), &html! { span.hint { (w.text("stock-list-every-row-hint")) } }, &html! {
                div.fields { @for name in FIXED { (fixed_field(w, form, mapping, name, models)) } }
            }))
        }
    }
}

fn column_row(w: &Words, looked: &Looked, mapping: &Mapping, at: usize, heading: &str) -> Markup {
    let means = meaning(mapping, heading);
    let in_heading = heading_of(heading).and_then(|(_, unit)| unit);
    let unit = means.and_then(|name| mapping.units.get(name)).cloned().or(in_heading).unwrap_or_default();
    let first: Vec<&str> =
        looked.table.rows.iter().map(|row| row.cell(at)).filter(|cell| !cell.is_empty()).take(3).collect();
    let ambiguous = matches!(unit.as_str(), "gr" | "grs");
    html! {
        tr {
            th scope="row" { (heading) (hidden(&format!("heading_{at}"), heading)) }
            td {
                select name={ "means_" (at) } aria-label=(text!(w, "stock-list-means", heading = heading)) {
                    option value="" selected[means.is_none()] { (w.text("stock-list-not-used")) }
                    @for name in field_names() { option value=(name) selected[means == Some(name)] { (shown(w, name)) } }
                }
            }
            td {
                select name={ "unit_" (at) } aria-label=(text!(w, "stock-list-unit-of", heading = heading)) {
                    option value="" { @if ambiguous { (w.text("stock-list-choose")) } @else { "–" } }
                    @for name in ["mass", "length"] {
                        optgroup label=(shown(w, name)) {
                            @for word in units_of(name) { option value=(word) selected[*word == unit] { (word) } }
                        }
                    }
                }
            }
            td.small { (first.join(" · ")) }
        }
    }
}

fn fixed_field(w: &Words, form: &Entries, mapping: &Mapping, name: &str, models: &[Model]) -> Markup {
    let field = format!("all_{name}");
    let now = mapping.fixed.get(name).map_or_else(|| form.text(&field), String::as_str);
    let label = w.text(&format!("part-label-{name}"));
    let none = Choice { value: "", label: w.text("stock-list-as-in-column").into(), chosen: now.is_empty() };
    let choices: Vec<Choice<'_>> = match name {
        "kind" => PartKind::ALL
            .iter()
            .map(|k| Choice { value: k.key(), label: w.tell(k).into(), chosen: k.key() == now })
            .collect(),
        "model" => {
            models.iter().map(|m| Choice { value: m.code(), label: m.name().into(), chosen: m.code() == now }).collect()
        }
        _ => {
            return look::field(&look::Field { name: &field, label: &label, value: now, ..look::Field::default() });
        }
    };
    select(&Select {
        name: &field,
        label: &label,
        choices: std::iter::once(none).chain(choices).collect(),
        ..Select::default()
    })
}
