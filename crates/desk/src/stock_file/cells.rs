//! One row of a parts file: its cells read, held against the models, and written again.

use super::fault::{CellFault, FigureName};
use super::mapping::Resolved;
use super::table::{Table, TableRow};
use super::{BadCell, BadRow};
use crate::weigh_in::judge;
use fact::{Fact, Figure, Refusal, Told};
use quantity::{MassUnit, NotationError, parse_mass};
use std::collections::BTreeMap;
use trade::customer;
use trade::error::TradeError;
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
struct Fault {
    column: &'static str,
    cell: String,
    what: Told,
}

/// The faults of a row as they are found.
#[derive(Default)]
struct Faults(Vec<Fault>);

impl Faults {
    fn add(&mut self, column: &'static str, cell: &str, what: &impl Fact) {
        self.0.push(Fault { column, cell: cell.to_owned(), what: what.told() });
    }

    /// The value, or its notation error as a fault.
    fn read<T>(&mut self, column: &'static str, cell: &str, read: Result<T, NotationError>) -> Option<T> {
        read.map_err(|e| self.add(column, cell, &CellFault::Unreadable { what: e.told() })).ok()
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
                faults.add(column, row.cell(trouble.column), &trouble.fault);
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
                faults.add(column, cell(column), &impossible(&e, part.kind));
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
        let cell = |fault: Fault| BadCell { column: self.heading(fault.column), cell: fault.cell, problem: fault.what };
        let mut cells = faults.0.into_iter().map(cell);
        let first = cells.next().unwrap_or_else(|| BadCell::of_row(&CellFault::CodeMissing));
        BadRow {
            line: row.line,
            column: first.column,
            cell: first.cell,
            problem: first.problem,
            also: cells.collect(),
            row: self.row(row),
        }
    }

    fn uneven(&self, row: &TableRow) -> BadRow {
        let (has, width) = (row.cells.len(), self.table.header.len());
        let fault = if row.cells.iter().any(|cell| cell.contains('\n')) {
            CellFault::QuoteOpen { has, width }
        } else if has > width {
            CellFault::TooManyCells { has, width }
        } else {
            CellFault::TooFewCells { has, width }
        };
        let BadCell { column, cell, problem } = BadCell::of_row(&fault);
        BadRow { line: row.line, column, cell, problem, also: vec![], row: self.row(row) }
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
            owner: owner_of(cell("owner"), faults),
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
            faults.add("model", code, &CellFault::NoModel);
            return None;
        }
        let Some(model) = self.library.get(code) else {
            let near = self.library.iter().find(|m| m.code().eq_ignore_ascii_case(code));
            let fault = if let Some(model) = near {
                CellFault::ModelSpelling { code: model.code().to_owned() }
            } else {
                let known = self.library.iter().filter(|m| kind.is_none_or(|k| k == m.kind()));
                let known: Vec<String> = known.map(|model| model.code().to_owned()).take(8).collect();
                CellFault::UnknownModel { known: Some(known).filter(|known| !known.is_empty()) }
            };
            faults.add("model", code, &fault);
            return None;
        };
        if let Some(kind) = kind
            && model.kind() != kind
        {
            faults.add("model", code, &CellFault::OtherKind { model: model.kind(), kind });
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
                let fault = match other {
                    Model::Shaft(_) => CellFault::ParallelNumber,
                    other => CellFault::NoNumbers { kind: other.kind() },
                };
                faults.add("number", number, &fault);
                return None;
            }
            _ => return None,
        };
        let found = known.iter().find(|k| k.eq_ignore_ascii_case(number));
        if found.is_none() {
            let known = known.iter().map(|number| (*number).to_owned()).collect();
            let fault = match number {
                "" => CellFault::NumberMissing { known },
                _ => CellFault::UnknownNumber { known },
            };
            faults.add("number", number, &fault);
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

/// What is wrong with a figure that no part of its kind can have: `5000 g cannot be the mass of a head, which is between 120 g
/// and 600 g`.
fn impossible(error: &TradeError, kind: PartKind) -> Told {
    let refusal = error.refusal();
    let told = refusal.fact();
    let (Some(value), Some(low), Some(high)) = (told.figure("value"), told.figure("low"), told.figure("high")) else {
        return match error {
            TradeError::Unreadable(_) => told.figure("what").map_or_else(|| told.clone(), inner),
            _ => CellFault::Part { what: told.clone() }.told(),
        };
    };
    let name = match super::mapping::name_of(error.field().unwrap_or_default()) {
        "mass" => FigureName::Mass,
        "length" => FigureName::Length,
        "balance_point" => FigureName::BalancePoint,
        "cpm" => FigureName::Frequency,
        "loft" => FigureName::Loft,
        "lie" => FigureName::Lie,
        name => FigureName::Other { name: name.to_owned() },
    };
    let what = Told::new("cell_fault.impossible").with("value", value).with("low", low).with("high", high);
    what.with("name", &name).with("kind", &kind)
}

/// The fact that a figure is.
fn inner(figure: &Figure) -> Told {
    match figure {
        Figure::Fact(told) => told.clone(),
        other => Told::verbatim(other.to_string()),
    }
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
        faults.add("code", code, if code.is_empty() { &CellFault::CodeMissing } else { &CellFault::BadCode });
        return;
    }
    match seen.get(&code.to_lowercase()) {
        Some(0) => faults.add("code", code, &CellFault::CodeInStock),
        Some(before) => faults.add("code", code, &CellFault::CodeBefore { line: *before }),
        None => {}
    }
}

fn kind_of(text: &str, faults: &mut Faults) -> Option<PartKind> {
    // Lists write a key with blanks, too: `tip weight`.
    let key = text.to_lowercase().replace(' ', "_");
    let found = PartKind::ALL.iter().copied().find(|kind| kind.key() == key);
    if found.is_none() {
        let known = PartKind::ALL.iter().map(|k| k.key().to_owned()).collect();
        let fault = if text.is_empty() { CellFault::KindMissing { known } } else { CellFault::UnknownKind { known } };
        faults.add("kind", text, &fault);
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
            faults.add("state", text, &CellFault::OfJob { state });
            PartState::Free
        }
        None => {
            faults.add("state", text, &CellFault::UnknownState);
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
        faults.add("count", text, &CellFault::BadCount);
    }
    count
}

/// Heads and shafts are weighed one by one, unless they are still on their way.
fn needs_mass(text: &str, kind: PartKind, state: PartState, faults: &mut Faults) {
    if text.is_empty() && matches!(kind, PartKind::Head | PartKind::Shaft) && state != PartState::Ordered {
        faults.add("mass_g", text, &CellFault::NotWeighed { kind });
    }
}

/// Whose the part is: a customer's code or number; empty or `shop`: the shop's.
fn owner_of(text: &str, faults: &mut Faults) -> Option<i64> {
    let text = text.trim();
    if text.is_empty() || text.eq_ignore_ascii_case("shop") {
        return None;
    }
    let number = customer::number_of(text).or_else(|| text.parse::<i64>().ok().filter(|n| *n > 0));
    if number.is_none() {
        faults.add("owner", text, &CellFault::NoOwner);
    }
    number
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
        "owner" => part.owner.map_or_else(String::new, customer::code),
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
