//! One row of a parts file: its cells read, held against the models, and written again.

use super::BadRow;
use super::mapping::Resolved;
use super::table::{Table, TableRow};
use crate::weigh_in::judge;
use fact::{Fact, Refusal, Told};
use quantity::{MassUnit, NotationError, parse_mass};
use std::collections::BTreeMap;
use trade::WorkshopError;
use trade::model::{Library, Model, PartKind};
use trade::part::{Part, PartState};
use trade::part_field::{self, Field};
use trade::shaft::TipShape;

/// Reads rows of a list by what is known of its columns.
pub(super) struct RowReader<'a> {
    pub library: &'a Library,
    pub table: &'a Table,
    pub resolved: &'a Resolved,
}

/// What is wrong with one cell.
#[derive(Default)]
struct Fault {
    column: &'static str,
    cell: String,
    problem: String,
    next: String,
}

/// The faults of a row as they are found.
#[derive(Default)]
struct Faults(Vec<Fault>);

impl Faults {
    fn add(&mut self, column: &'static str, cell: &str, problem: impl Into<String>, next: impl Into<String>) {
        self.0.push(Fault { column, cell: cell.to_owned(), problem: problem.into(), next: next.into() });
    }

    /// The value, or its notation error as a fault.
    fn read<T>(&mut self, column: &'static str, cell: &str, read: Result<T, NotationError>) -> Option<T> {
        read.map_err(|e| {
            self.add(column, cell, e.to_string().trim_end_matches('.'), "Correct the cell");
        })
        .ok()
    }
}

impl RowReader<'_> {
    /// What holds for every row and is in no column of the list.
    fn constants(&self) -> impl Iterator<Item = (&'static str, &String)> {
        self.resolved
            .fixed
            .iter()
            .filter(|(column, _)| !self.resolved.columns.contains(&Some(**column)))
            .map(|(column, value)| (*column, value))
    }

    /// The header for the file of refused rows.
    pub(super) fn header(&self) -> Vec<String> {
        self.constants().map(|(column, _)| column.to_owned()).chain(self.resolved.again.iter().cloned()).collect()
    }

    /// The cells of a row under [`Self::header`].
    fn row(&self, row: &TableRow) -> Vec<String> {
        let width = if self.table.even { row.cells.len() } else { self.table.header.len() };
        let cell = |at: usize| {
            let text = row.cells.get(at).cloned().unwrap_or_default();
            let fixed = self.resolved.columns.get(at).copied().flatten().and_then(|c| self.resolved.fixed.get(c));
            if text.trim().is_empty() { fixed.cloned().unwrap_or(text) } else { text }
        };
        self.constants().map(|(_, value)| value.clone()).chain((0..width).map(cell)).collect()
    }

    /// The heading that a person knows a column by.
    fn heading(&self, column: &str) -> String {
        let at = self.resolved.columns.iter().position(|c| *c == Some(column));
        at.map_or_else(|| column.to_owned(), |i| self.table.header[i].clone())
    }

    /// The part of a row and what is doubtful about it.
    pub(super) fn part(
        &self,
        row: &TableRow,
        seen: &mut BTreeMap<String, u64>,
    ) -> Result<(Part, Vec<Told>), Box<BadRow>> {
        if self.table.even && row.cells.len() != self.table.header.len() {
            return Err(Box::new(self.uneven(row)));
        }
        let mut faults = Faults::default();
        let cell = |name: &str| {
            let at = self.resolved.columns.iter().position(|c| *c == Some(name));
            let text = at.map_or("", |i| row.cell(i));
            if text.is_empty() { self.resolved.fixed.get(name).map_or("", String::as_str) } else { text }
        };
        for trouble in &row.trouble {
            if let Some(column) = self.resolved.columns.get(trouble.column).copied().flatten() {
                faults.add(column, row.cell(trouble.column), trouble.problem.clone(), trouble.next);
            }
        }
        if !faults.0.is_empty() {
            // What is said of a cell that could not be read would only be noise.
            return Err(Box::new(self.refused(row, faults)));
        }
        let part = self.read(&cell, &mut faults);
        code_is_new(&part.code, seen, &mut faults);
        if let Err(e) = part.check() {
            let column = e.field().and_then(|f| super::COLUMNS.iter().copied().find(|c| *c == f)).unwrap_or("code");
            if !faults.0.iter().any(|f| f.column == column) {
                let (problem, next) = impossible(&e, part.kind);
                faults.add(column, cell(column), problem, next);
            }
        }
        if !faults.0.is_empty() {
            return Err(Box::new(self.refused(row, faults)));
        }
        seen.insert(part.code.to_lowercase(), row.line);
        let doubts = self.doubts(&part);
        Ok((part, doubts))
    }

    fn refused(&self, row: &TableRow, faults: Faults) -> BadRow {
        let mut faults = faults.0.into_iter();
        let first = faults.next().unwrap_or_default();
        BadRow {
            line: row.line,
            column: self.heading(first.column),
            cell: first.cell,
            problem: first.problem,
            next: first.next,
            also: faults
                .map(|f| format!("{} “{}”: {}. {}", self.heading(f.column), f.cell, f.problem, f.next))
                .collect(),
            row: self.row(row),
        }
    }

    fn uneven(&self, row: &TableRow) -> BadRow {
        let (has, width) = (row.cells.len(), self.table.header.len());
        let next = if row.cells.iter().any(|cell| cell.contains('\n')) {
            "A quote in it is not closed"
        } else if has > width {
            "Put a cell that holds a comma in quotes, for example \"256,1\""
        } else {
            "Add the missing commas"
        };
        BadRow {
            line: row.line,
            column: String::new(),
            cell: String::new(),
            problem: format!("the row has {has} cells and the header {width}"),
            next: next.into(),
            also: vec![],
            row: self.row(row),
        }
    }

    fn read<'c>(&self, cell: &impl Fn(&str) -> &'c str, faults: &mut Faults) -> Part {
        let units = &self.resolved.units;
        let mut figures = Vec::new();
        for (field, figure) in part_field::figures().filter(|(field, _)| field.listed) {
            let text = cell(field.key);
            if !text.is_empty()
                && let Some(value) =
                    faults.read(field.key, text, field.parse(text, units.mass, units.length(field.key)))
            {
                figures.push((figure, value));
            }
        }
        let state = state_of(cell("state"), faults);
        let count = count_of(cell("count"), faults);
        // The model says what it is where nothing else does.
        let kind_is_said = !cell("kind").is_empty() || self.resolved.columns.contains(&Some("kind"));
        let kind = if kind_is_said { kind_of(cell("kind"), faults) } else { None };
        let model = self.model_of(cell("model"), kind, faults);
        let number = self.number_of(cell("number"), model, faults);
        let kind = kind.or_else(|| model.map(Model::kind)).unwrap_or(PartKind::Grip);
        needs_mass(cell("mass_g"), kind, state, faults);
        let mut part = Part {
            number,
            count,
            lot: cell("lot").to_owned(),
            place: cell("place").to_owned(),
            state,
            ..Part::new(cell("code"), kind, model.map_or_else(|| cell("model"), Model::code))
        };
        for (figure, value) in figures {
            (figure.set)(&mut part, Some(value));
        }
        part.mass_typed = part.mass_g.map_or_else(String::new, |g| typed_mass(cell("mass_g"), g, units.mass));
        part
    }

    fn model_of(&self, code: &str, kind: Option<PartKind>, faults: &mut Faults) -> Option<&Model> {
        if code.is_empty() {
            faults.add("model", code, "no model is named", "Write the code of its model");
            return None;
        }
        let Some(model) = self.library.get(code) else {
            let near = self.library.iter().find(|m| m.code().eq_ignore_ascii_case(code));
            let next = match near {
                Some(m) => format!("Write {}", m.code()),
                None => {
                    let known = self.library.iter().filter(|m| kind.is_none_or(|k| k == m.kind()));
                    let known: Vec<&str> = known.map(Model::code).take(8).collect();
                    if known.is_empty() {
                        "Add the model first".into()
                    } else {
                        format!("Known are {}", known.join(", "))
                    }
                }
            };
            faults.add("model", code, "there is no such model", next);
            return None;
        };
        if let Some(kind) = kind
            && model.kind() != kind
        {
            faults.add(
                "model",
                code,
                format!("it is a {} model and the row a {kind}", model.kind()),
                "Correct one of the two",
            );
            return None;
        }
        Some(model)
    }

    /// The number in the model's own spelling, where this sort of part has one.
    fn number_of(&self, number: &str, model: Option<&Model>, faults: &mut Faults) -> Option<String> {
        let known: Vec<&str> = match model {
            Some(Model::Head(head)) => head.numbers.iter().map(|n| n.number.as_str()).collect(),
            Some(Model::Shaft(shaft)) if shaft.tip == TipShape::Taper => {
                shaft.blanks.iter().filter_map(|b| b.number.as_deref()).collect()
            }
            Some(other) if !number.is_empty() => {
                let what = if matches!(other, Model::Shaft(_)) {
                    "a parallel tip".into()
                } else {
                    format!("a {}", other.kind())
                };
                faults.add("number", number, format!("{what} has no number"), "Leave the cell empty");
                return None;
            }
            _ => return None,
        };
        let found = known.iter().find(|k| k.eq_ignore_ascii_case(number));
        if found.is_none() {
            let problem = if number.is_empty() { "the number is missing" } else { "the model has no such number" };
            faults.add("number", number, problem, format!("Write one of {}", known.join(", ")));
        }
        found.map(|n| (*n).to_owned())
    }

    /// Masses far from what the model says, heads that cannot be bent to it: kept, but said.
    fn doubts(&self, part: &Part) -> Vec<Told> {
        // What was pulled from a club or cut weighs what it weighs.
        if part.state == PartState::Pulled {
            return Vec::new();
        }
        let Ok(judged) = judge(self.library, part, &[]) else { return Vec::new() };
        let mass = judged.next.map(|next| Refusal::new(&judged.finding).next(&next).told());
        mass.into_iter().chain(judged.bend.into_iter().map(Told::from)).collect()
    }
}

/// What is wrong with a figure that no part of its kind can have, in words: `5000 g cannot be the mass of a head, which
/// lies between 120 and 600 g`.
fn impossible(error: &WorkshopError, kind: PartKind) -> (String, String) {
    let (field, value, low, high, unit) = match error {
        WorkshopError::Impossible { field, value, low, high, unit, .. } => (field, value, low, high, unit),
        WorkshopError::Unreadable { problem, .. } => {
            let (what, next) = problem.split_once(". ").unwrap_or((problem, "Correct it"));
            return (what.to_owned(), next.to_owned());
        }
        _ => return (error.to_string(), "Correct it".to_owned()),
    };
    let name = match field.as_str() {
        "cpm" => "frequency".to_owned(),
        _ => super::mapping::name_of(field).replace('_', " "),
    };
    let sign = if *unit == "°" { "°".to_owned() } else { format!(" {unit}") };
    let figure = |v: f64| format!("{}{sign}", (v * 10.0).round() / 10.0);
    let problem = format!(
        "{} cannot be the {name} of a {kind}, which lies between {} and {}",
        figure(*value),
        (low * 10.0).round() / 10.0,
        figure(*high)
    );
    (problem, "Check the figure and its unit".into())
}

/// A mass as it was typed, with the unit of its column where that is not the gram: by itself it is read as grams.
fn typed_mass(text: &str, mass_g: f64, unit: MassUnit) -> String {
    let alone = parse_mass(text, MassUnit::Gram).is_ok_and(|m| m.g() == mass_g);
    if alone { text.to_owned() } else { format!("{text} {}", unit.symbol()) }
}

fn code_is_new(code: &str, seen: &BTreeMap<String, u64>, faults: &mut Faults) {
    let sound = !code.is_empty()
        && code.len() <= 32
        && code.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '_' | '.'));
    if !sound {
        let problem = if code.is_empty() { "the code is missing" } else { "this cannot be a code" };
        faults.add("code", code, problem, "Use 1 to 32 letters, digits, - _ or ., for example H7-014");
        return;
    }
    match seen.get(&code.to_lowercase()) {
        Some(0) => faults.add("code", code, "a part in stock has this code", "Give the new part its own"),
        Some(before) => faults.add("code", code, format!("line {before} has this code too"), "Give each part its own"),
        None => {}
    }
}

fn kind_of(text: &str, faults: &mut Faults) -> Option<PartKind> {
    let plain = text.to_lowercase();
    let found = PartKind::ALL.iter().copied().find(|k| plain == k.key() || plain == k.word());
    if found.is_none() {
        let known = PartKind::ALL.iter().map(|k| k.key()).collect::<Vec<_>>().join(", ");
        let problem = if text.is_empty() { "the kind is missing" } else { "there is no such kind of part" };
        faults.add("kind", text, problem, format!("Write one of {known}"));
    }
    found
}

/// Empty is free. What is held or used belongs to a job and cannot come from a file.
fn state_of(text: &str, faults: &mut Faults) -> PartState {
    let plain = text.to_lowercase();
    if plain.is_empty() {
        return PartState::Free;
    }
    match PartState::from_key(&plain) {
        Some(state @ (PartState::Free | PartState::Ordered | PartState::Pulled | PartState::Rejected)) => state,
        Some(state) => {
            faults.add(
                "state",
                text,
                format!("a part that is {state} belongs to a job"),
                "Write free, or leave the row out",
            );
            PartState::Free
        }
        None => {
            faults.add("state", text, "there is no such state", "Write free, ordered, pulled or rejected");
            PartState::Free
        }
    }
}

fn count_of(text: &str, faults: &mut Faults) -> Option<i64> {
    if text.is_empty() {
        return None;
    }
    let count = text.parse::<i64>().ok().filter(|n| *n >= 0);
    if count.is_none() {
        faults.add(
            "count",
            text,
            "it is not a whole number from 0",
            "Write how many are in the box, or leave it empty",
        );
    }
    count
}

/// Heads and shafts are weighed one by one, unless they are still on their way.
fn needs_mass(text: &str, kind: PartKind, state: PartState, faults: &mut Faults) {
    if text.is_empty() && matches!(kind, PartKind::Head | PartKind::Shaft) && state != PartState::Ordered {
        faults.add("mass_g", text, format!("a {kind} in the shop is weighed"), "Weigh it to 0.1 g, or write ordered");
    }
}

/// A part as cells in the order of the columns.
pub(super) fn row_of(part: &Part) -> Vec<String> {
    part_field::listed().map(|field| cell_of(part, field)).collect()
}

fn cell_of(part: &Part, field: &Field) -> String {
    let figure =
        || field.figure.as_ref().and_then(|figure| (figure.get)(part)).map_or_else(String::new, |v| v.to_string());
    match field.key {
        "code" => part.code.clone(),
        "kind" => part.kind.key().to_owned(),
        "model" => part.model.clone(),
        "number" => part.number.clone().unwrap_or_default(),
        "lot" => part.lot.clone(),
        "place" => part.place.clone(),
        "state" => part.state.key().to_owned(),
        "count" => part.count.map_or_else(String::new, |n| n.to_string()),
        // What was typed, as long as it still says the same.
        "mass_g" => match parse_mass(&part.mass_typed, MassUnit::Gram) {
            Ok(typed) if Some(typed.g()) == part.mass_g => part.mass_typed.clone(),
            _ => figure(),
        },
        _ => figure(),
    }
}
