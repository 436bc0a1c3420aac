//! The fields of a form that is made from a table: what is asked, under which name of the document, and how what was typed
//! becomes the document again. The forms of models and of calculations are such tables.

use super::entries::{Entries, capital, plain, plain_number, typed_swing_weight};
use super::measured::Measured;
use fact::{Fact, Refusal, Told};
use serde_json::{Map, Number, Value};
use trade::model::PartKind;
use trade::reading::Unit;
use words::{Words, text};

/// How a value is typed.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Way {
    Text,
    /// A number in the unit of the document, by its sign. A mass or a length is typed in the reader's own unit.
    Number(&'static str),
    /// A whole number from 0.
    Count,
    /// A length that may be written as a fraction, kept in millimetres.
    Length,
    /// A swing weight by its letter.
    SwingWeight,
    YesNo,
    /// One of a closed list: its keys with their words.
    Choice(Vec<(String, Told)>),
    /// The code of a model of this kind.
    Model(PartKind),
    /// Numbers in a unit, one after the other; a mass or a length in the reader's own.
    Numbers(&'static str),
    /// A list: one row a line under a header line.
    Rows(Vec<Ask>),
}

/// One value of a document.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Ask {
    /// Its place in the document; a dot leads into a part of it: `finished.cap_mm`.
    pub key: String,
    /// What it is called.
    pub label: Told,
    /// What stands below it.
    pub hint: Option<Told>,
    pub way: Way,
    pub optional: bool,
}

impl Ask {
    pub fn new(key: impl Into<String>, label: Told, way: Way) -> Self {
        Self { key: key.into(), label, hint: None, way, optional: false }
    }

    pub fn hint(self, hint: &'static str) -> Self {
        Self { hint: Some(Told::new(hint)), ..self }
    }

    pub fn optional(self) -> Self {
        Self { optional: true, ..self }
    }

    /// Its name as the heading of a column, with the unit in which it is typed.
    pub fn heading(&self, w: &Words) -> String {
        let label = w.tell(&self.label);
        self.unit(w).map_or(label.clone(), |unit| text!(w, "calc-form-with-unit", of = label, unit = unit))
    }

    /// The sign of the unit in which it is typed where no other is written; none where there is nothing to say.
    pub fn unit(&self, w: &Words) -> Option<String> {
        self.way.unit(w).filter(|unit| !unit.is_empty())
    }

    /// The heading with the unit of the document, as a list may have been written for a reader of other units.
    fn heading_of_document(&self, w: &Words) -> Option<String> {
        let unit = self.way.measured()?.sign();
        Some(text!(w, "calc-form-with-unit", of = w.tell(&self.label), unit = unit))
    }
}

impl Way {
    /// The sign of the unit in which a value is typed.
    fn unit(&self, w: &Words) -> Option<String> {
        match self {
            Self::Number(sign) | Self::Numbers(sign) => Some(match (Measured::of(sign), Unit::from_key(sign)) {
                (Some(measured), _) => measured.reader_sign(w).to_owned(),
                (None, Some(unit)) => w.tell(&unit),
                (None, None) => (*sign).to_owned(),
            }),
            Self::Length => Some(w.length_sign().to_owned()),
            _ => None,
        }
    }

    /// The mass or length that it asks for.
    fn measured(&self) -> Option<Measured> {
        match self {
            Self::Number(sign) => Measured::of(sign),
            Self::Length => Some(Measured::Millimetre),
            _ => None,
        }
    }
}

/// The value at a place of a document.
pub(super) fn at<'a>(value: &'a Value, key: &str) -> &'a Value {
    key.split('.').fold(value, |inside, step| &inside[step])
}

/// Puts a value at a place of a document.
pub(super) fn put(object: &mut Map<String, Value>, key: &str, value: Value) {
    match key.split_once('.') {
        None => {
            object.insert(key.to_owned(), value);
        }
        Some((first, rest)) => {
            let inner = object.entry(first).or_insert_with(|| Value::Object(Map::new()));
            if let Value::Object(inner) = inner {
                put(inner, rest, value);
            }
        }
    }
}

/// The header line of a list.
pub(super) fn header(w: &Words, columns: &[Ask]) -> String {
    columns.iter().map(|c| c.heading(w)).collect::<Vec<_>>().join(", ")
}

/// One value as it is typed.
fn shown(w: &Words, value: &Value, way: &Way) -> String {
    match (value, way) {
        (Value::Number(n), Way::Length) => Measured::Millimetre.typed_fraction(w, n.as_f64().unwrap_or(0.0)),
        (Value::Number(n), Way::SwingWeight) => typed_swing_weight(n.as_f64().unwrap_or(0.0)),
        (Value::Number(n), way) => {
            let value = n.as_f64().unwrap_or(0.0);
            way.measured().map_or_else(|| plain(value), |measured| measured.typed(w, value))
        }
        (Value::String(text), _) => text.clone(),
        (Value::Bool(true), _) => "1".to_owned(),
        (Value::Array(list), Way::Numbers(unit)) => {
            list.iter().map(|one| shown(w, one, &Way::Number(unit))).collect::<Vec<_>>().join(" ")
        }
        (Value::Array(rows), Way::Rows(columns)) => {
            let lines = rows
                .iter()
                .map(|row| columns.iter().map(|c| shown(w, at(row, &c.key), &c.way)).collect::<Vec<_>>().join(", "));
            std::iter::once(header(w, columns)).chain(lines).collect::<Vec<_>>().join("\n")
        }
        _ => String::new(),
    }
}

/// A document as its form shows it.
pub(super) fn typed(w: &Words, asks: &[Ask], document: &Value) -> Vec<(String, String)> {
    asks.iter().map(|ask| (ask.key.clone(), shown(w, at(document, &ask.key), &ask.way))).collect()
}

/// What cannot be read, and what to do.
fn told(w: &Words, fault: &impl Fact) -> String {
    w.refusal(&Refusal::new(fault))
}

/// Reads a cell or a field; none where it is empty.
fn read(w: &Words, typed: &str, way: &Way) -> Result<Option<Value>, String> {
    let typed = typed.trim();
    if typed.is_empty() {
        return Ok(None);
    }
    let number = |v: f64| {
        Number::from_f64(v)
            .map(|n| Some(Value::Number(n)))
            .ok_or_else(|| text!(w, "calc-form-no-number", typed = typed))
    };
    match way {
        Way::Number(sign) => match Measured::of(sign) {
            Some(measured) => measured.read(w, typed).map_err(|fault| told(w, &fault)).and_then(number),
            None => plain_number(typed).map_err(|fault| told(w, &fault)).and_then(number),
        },
        Way::Count => typed
            .parse::<u32>()
            .map(|n| Some(Value::from(n)))
            .map_err(|_| text!(w, "calc-form-no-count", typed = typed)),
        Way::Length => Measured::Millimetre.read(w, typed).map_err(|fault| told(w, &fault)).and_then(number),
        Way::SwingWeight => {
            quantity::parse_swing_weight(typed).map_err(|e| told(w, &e)).and_then(|b| number(b.points()))
        }
        Way::YesNo => Ok(Some(Value::Bool(true))),
        Way::Text | Way::Choice(_) | Way::Model(_) => Ok(Some(Value::String(typed.to_owned()))),
        Way::Numbers(unit) => {
            let words = typed.split([' ', ';', '\n', '\r', '\t']).filter(|word| !word.is_empty());
            let numbers = words.map(|word| read(w, word.trim_end_matches(','), &Way::Number(unit)));
            let numbers: Vec<Value> = numbers.filter_map(Result::transpose).collect::<Result<_, _>>()?;
            Ok(Some(Value::Array(numbers)))
        }
        Way::Rows(columns) => {
            let rows = rows(w, typed, columns)?;
            Ok((!rows.is_empty()).then_some(Value::Array(rows)))
        }
    }
}

/// Reads a list: a header line that names the columns in any order, by their headings, their names without a unit or their
/// keys; then one row a line. A cell may be left empty, also at the end of its line, where its column is optional.
pub(super) fn rows(w: &Words, typed: &str, columns: &[Ask]) -> Result<Vec<Value>, String> {
    let mut lines = typed.lines().zip(1..).filter(|(line, _)| !line.trim().is_empty());
    let Some((first, _)) = lines.next() else { return Ok(Vec::new()) };
    // Where cells need a decimal comma, semicolons or tabs stand between them.
    let between = ['\t', ';'].into_iter().find(|c| first.contains(*c)).unwrap_or(',');
    let cells = |line: &str| line.split(between).map(|c| c.trim().to_owned()).collect::<Vec<_>>();
    let known = |head: &str| {
        let is = |name: &str| name.eq_ignore_ascii_case(head);
        let ours = columns.iter().find(|c| is(&c.heading(w)) || is(&w.tell(&c.label)) || is(&c.key));
        let column = |ask, in_document| Column { ask, in_document };
        // A key, and a heading with the document's unit, carry their unit with them.
        let with_unit = |c: &&Ask| is(&c.key) || c.heading_of_document(w).is_some_and(|heading| is(&heading));
        let theirs = columns.iter().find(with_unit).filter(|c| !is(&c.heading(w)));
        theirs.map(|ask| column(ask, true)).or_else(|| ours.map(|ask| column(ask, false)))
    };
    let heads = cells(first)
        .iter()
        .map(|head| {
            known(head).ok_or_else(|| text!(w, "calc-form-unknown-column", columns = header(w, columns), typed = head))
        })
        .collect::<Result<Vec<_>, _>>()?;
    if let Some(lacking) = columns.iter().find(|c| !c.optional && !heads.iter().any(|h| h.ask.key == c.key)) {
        return Err(text!(w, "calc-form-missing-column", column = w.tell(&lacking.label)));
    }
    lines.map(|(line, number)| row(w, &cells(line), &heads, number)).collect()
}

/// A column of a list as it was written.
struct Column<'a> {
    ask: &'a Ask,
    /// Whether its heading names the document's unit, so that its bare figures are in that.
    in_document: bool,
}

fn row(w: &Words, cells: &[String], heads: &[Column<'_>], line: i32) -> Result<Value, String> {
    if cells.len() > heads.len() {
        return Err(text!(w, "calc-form-many-cells", line = line, cells = cells.len(), columns = heads.len()));
    }
    let mut object = Map::new();
    let cells = cells.iter().map(String::as_str).chain(std::iter::repeat(""));
    for (cell, Column { ask: head, in_document }) in cells.zip(heads) {
        let own = match head.way.measured() {
            Some(measured) if *in_document && plain_number(cell).is_ok() => format!("{cell} {}", measured.sign()),
            _ => cell.to_owned(),
        };
        let wrong = |e: String| text!(w, "calc-form-line", line = line, column = head.heading(w), wrong = e);
        match read(w, &own, &head.way).map_err(wrong)? {
            Some(value) => put(&mut object, &head.key, value),
            None if head.optional => {}
            None => return Err(text!(w, "calc-form-missing-cell", line = line, column = w.tell(&head.label))),
        }
    }
    Ok(Value::Object(object))
}

/// The document that was typed; what could not be read, and what is missing, stands beside its field.
pub(super) fn document(w: &Words, asks: &[Ask], form: &mut Entries) -> Map<String, Value> {
    let mut object = Map::new();
    for ask in asks {
        match read(w, form.raw(&ask.key), &ask.way) {
            Ok(Some(value)) => put(&mut object, &ask.key, value),
            Ok(None) if ask.optional => {}
            Ok(None) if ask.way == Way::YesNo => put(&mut object, &ask.key, Value::Bool(false)),
            Ok(None) => form.refuse(&ask.key, w.text("calc-form-missing")),
            Err(words) => form.refuse(&ask.key, capital(&words)),
        }
    }
    object
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    #[test]
    fn a_mistake_in_a_row_is_named_by_its_line_and_column() {
        let columns = [
            Ask::new("name", Told::new("calc_field.name"), Way::Text).optional(),
            Ask::new("mass_g", Told::new("calc_field.mass"), Way::Number("g")),
        ];
        let said = rows(&w(), "name, mass (g)\nhead, heavy", &columns).unwrap_err();
        assert!(said.starts_with("Line 2, mass (g)"), "{said}");
        assert_eq!(rows(&w(), "name; mass (g)\nhead; 1,5", &columns).unwrap()[0]["mass_g"], 1.5);
        // By its name without the unit, by its key, and in any order.
        assert_eq!(rows(&w(), "mass, name\n1.5, head", &columns).unwrap()[0]["name"], "head");
        assert_eq!(rows(&w(), "mass_g\n1.5", &columns).unwrap()[0]["mass_g"], 1.5);
        let said = rows(&w(), "name, mass\nhead", &columns).unwrap_err();
        assert!(said.contains("the mass is missing"), "{said}");
        let said = rows(&w(), "name\nhead", &columns).unwrap_err();
        assert!(said.contains("column mass is missing"), "{said}");
        let said = rows(&w(), "name, weight\nhead, 1", &columns).unwrap_err();
        assert!(said.contains("“weight”"), "{said}");
        let said = rows(&w(), "name, mass\nhead, 1,5", &columns).unwrap_err();
        assert!(said.contains("semicolons"), "{said}");
    }
}
