//! What the columns of a list mean: guessed from their headings, or said by a person.

use super::refuse::columns as columns_of_export;
use super::table::Table;
use super::{COLUMNS, PROBLEM, StockFileError};
use quantity::{LengthUnit, MassUnit};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use trade::part_field::{self, Field, LISTED, Measure};
use utoipa::ToSchema;

/// Words for a unit at the end of a heading.
const UNIT_WORDS: [&str; 28] = [
    "g",
    "gm",
    "gram",
    "grams",
    "kg",
    "oz",
    "ounce",
    "ounces",
    "lb",
    "lbs",
    "pound",
    "pounds",
    "grain",
    "grains",
    "gr",
    "grs",
    "mm",
    "cm",
    "m",
    "in",
    "inch",
    "inches",
    "deg",
    "degree",
    "degrees",
    "millimetres",
    "millimeters",
    "°",
];

/// The names of all that can be read of a part.
fn unknown_field(name: &str) -> StockFileError {
    StockFileError::UnknownField { name: name.to_owned(), known: field_names().map(str::to_owned).to_vec() }
}

fn wrong_unit(field: String, unit: &str, known: Option<&[&str]>) -> StockFileError {
    let known = known.map(|units| units.iter().map(|unit| (*unit).to_owned()).collect());
    StockFileError::WrongUnit { field, unit: unit.to_owned(), known, two_meanings: None }
}

/// What can be read of a part, in the order of an exported file.
#[must_use]
pub fn field_names() -> [&'static str; LISTED] {
    COLUMNS.map(name_of)
}

/// Whether a unit belongs to it: `g` for the mass, `mm` for the lengths, none for the rest.
#[must_use]
pub fn units_of(field: &str) -> &'static [&'static str] {
    match Field::by_name(field).map(|field| field.measure) {
        Some(Measure::Mass) => &["g", "oz", "lb", "kg", "grain"],
        Some(Measure::Length) => &["mm", "in", "cm", "m"],
        _ => &[],
    }
}

/// The column of an exported file for a name: `mass_g` for `mass`.
fn column_of(name: &str) -> Option<&'static str> {
    let name = name.trim().to_lowercase().replace([' ', '-'], "_");
    part_field::listed().find(|field| field.name == name || field.key == name).map(|field| field.key)
}

/// The name for a column of an exported file: `mass` for `mass_g`.
#[must_use]
pub(crate) fn name_of(column: &str) -> &'static str {
    Field::by_key(column).map_or("", |field| field.name)
}

/// What a heading means by its words: the name, and the unit that stands in it as it is written there. A heading in
/// brackets, `(colour)`, and `problem` mean nothing.
#[must_use]
pub fn heading_of(heading: &str) -> Option<(&'static str, Option<String>)> {
    let heading = heading.trim();
    if is_left_aside(heading) {
        return None;
    }
    let lower = heading.to_lowercase();
    let mut words: Vec<&str> =
        lower.split(|c: char| !c.is_alphanumeric() && c != '°').filter(|word| !word.is_empty()).collect();
    let mut unit = None;
    if words.len() > 1
        && let Some(last) = words.last()
        && UNIT_WORDS.contains(last)
    {
        unit = Some((*last).to_owned());
        words.pop();
    }
    let plain = words.join(" ");
    let named = |name: &str| name.replace('_', " ") == plain;
    part_field::listed()
        .find(|field| named(field.name) || named(field.key) || field.also.contains(&plain.as_str()))
        .map(|field| (field.name, unit))
}

/// Whether a column is ignored without a question.
pub(super) fn is_left_aside(heading: &str) -> bool {
    let heading = heading.trim();
    heading.eq_ignore_ascii_case(PROBLEM) || (heading.starts_with('(') && heading.ends_with(')'))
}

/// What the columns of a list mean. Whatever is not said is guessed from the headings.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Mapping {
    /// The sheet of a workbook; left out: the first one with something in it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sheet: Option<String>,
    /// Line of the headings, from 1; left out: looked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 1, maximum = 100_000)]
    pub header_line: Option<u64>,
    /// For each thing that is read (code, kind, model, number, mass, length, balance_point, cpm, loft, lie, lot,
    /// place, state, count) the heading of its column. An empty heading: this is in no column, whatever the headings say.
    pub columns: BTreeMap<String, String>,
    /// Units of mass, length and balance_point where a cell has none. Left out: the unit in the heading, else g and mm.
    pub units: BTreeMap<String, String>,
    /// What holds for every row: `{"kind": "head", "model": "HERON"}`.
    pub fixed: BTreeMap<String, String>,
    /// Whether columns that nobody knows are left aside; otherwise they are refused.
    pub ignore_others: bool,
}

/// Units where a cell has none.
#[derive(Debug, Clone)]
pub(super) struct Units {
    pub mass: MassUnit,
    lengths: BTreeMap<&'static str, LengthUnit>,
}

impl Units {
    /// The unit of a column of lengths.
    pub fn length(&self, column: &str) -> LengthUnit {
        self.lengths.get(column).copied().unwrap_or(LengthUnit::Millimetre)
    }
}

/// A mapping held against the headings of a list.
#[derive(Debug, Clone)]
pub(super) struct Resolved {
    /// For each column of the list the column of an exported file that it is.
    pub columns: Vec<Option<&'static str>>,
    pub units: Units,
    /// By column of an exported file.
    pub fixed: BTreeMap<&'static str, String>,
    /// Headings that are not used.
    pub unused: Vec<String>,
    /// Headings under which the rows can be imported again without a word.
    pub again: Vec<String>,
}

impl Mapping {
    /// What the headings of a list say by themselves, with everything that nobody knows left aside: a mapping to show
    /// and to correct.
    #[must_use]
    pub fn guessed(table: &Table) -> Self {
        let mut mapping = Self { ignore_others: true, ..Self::default() };
        if !table.sheet.is_empty() {
            mapping.sheet = Some(table.sheet.clone());
        }
        mapping.header_line = Some(table.header_line);
        for heading in &table.header {
            if let Some((name, unit)) = heading_of(heading)
                && !mapping.columns.contains_key(name)
            {
                mapping.columns.insert(name.to_owned(), heading.clone());
                if let Some(unit) = unit.filter(|_| !units_of(name).is_empty()) {
                    mapping.units.insert(name.to_owned(), unit_word(&unit));
                }
            }
        }
        mapping
    }

    /// The same with the headings written as a list has them.
    #[must_use]
    pub fn spelled_as(mut self, table: &Table) -> Self {
        for heading in self.columns.values_mut().filter(|h| !h.is_empty()) {
            if let Some(own) = table.header.iter().find(|h| plain(h) == plain(heading)) {
                heading.clone_from(own);
            }
        }
        self
    }

    pub(super) fn resolve(&self, table: &Table) -> Result<Resolved, StockFileError> {
        let known = |name: &String| column_of(name).ok_or_else(|| unknown_field(name));
        if let Some(name) = table.twice.first().filter(|_| !self.ignore_others) {
            return Err(StockFileError::TwoColumns { name: name.clone() });
        }
        let mut columns: Vec<Option<&'static str>> = vec![None; table.header.len()];
        let mut said = Vec::new();
        for (name, heading) in &self.columns {
            let column = known(name)?;
            said.push(column);
            if !heading.trim().is_empty() {
                let at = place_of(table, name, heading)?;
                claim(&mut columns, table, at, column)?;
            }
        }
        let fixed = self
            .fixed
            .iter()
            .filter(|(_, value)| !value.trim().is_empty())
            .map(|(name, value)| Ok((known(name)?, value.trim().to_owned())))
            .collect::<Result<BTreeMap<_, _>, StockFileError>>()?;
        for (at, heading) in table.header.iter().enumerate() {
            let Some((name, _)) = heading_of(heading) else { continue };
            let Some(column) = column_of(name) else { continue };
            if columns[at].is_some() || said.contains(&column) || fixed.contains_key(column) {
                continue;
            }
            if columns.contains(&Some(column)) {
                if self.ignore_others {
                    continue;
                }
                return Err(StockFileError::TwoColumns { name: heading.clone() });
            }
            columns[at] = Some(column);
        }
        check_needed(table, &columns, &fixed)?;
        let others: Vec<&String> = table
            .header
            .iter()
            .enumerate()
            .filter(|(at, h)| columns[*at].is_none() && !is_left_aside(h))
            .map(|(_, h)| h)
            .collect();
        if !others.is_empty() && !self.ignore_others {
            let names = others.iter().map(|h| format!("“{h}”")).collect();
            return Err(StockFileError::UnknownColumn { names, known: COLUMNS.map(str::to_owned).to_vec() });
        }
        let words = self.unit_words(table, &columns)?;
        let units = units_for(&words)?;
        let again = headings_again(table, &columns, &words);
        Ok(Resolved { unused: others.into_iter().cloned().collect(), columns, units, fixed, again })
    }

    /// For each column with a unit its word, as said or as it stands in the heading.
    fn unit_words(
        &self,
        table: &Table,
        columns: &[Option<&'static str>],
    ) -> Result<BTreeMap<&'static str, String>, StockFileError> {
        let mut words = BTreeMap::new();
        for (name, unit) in self.units.iter().filter(|(_, unit)| !unit.trim().is_empty()) {
            let column = column_of(name).ok_or_else(|| unknown_field(name))?;
            if units_of(name_of(column)).is_empty() {
                return Err(wrong_unit(name.clone(), unit, None));
            }
            words.insert(column, unit_word(unit));
        }
        for (at, column) in columns.iter().enumerate() {
            if let Some(column) = column
                && !units_of(name_of(column)).is_empty()
                && let Some((_, Some(unit))) = heading_with_unit(&table.header[at])
            {
                words.entry(column).or_insert_with(|| unit_word(&unit));
            }
        }
        Ok(words)
    }
}

/// The unit at the end of any heading, known or not: `Gewicht (oz)`.
fn heading_with_unit(heading: &str) -> Option<(&'static str, Option<String>)> {
    heading_of(heading).or_else(|| {
        let lower = heading.to_lowercase();
        let last = lower.split(|c: char| !c.is_alphanumeric() && c != '°').rfind(|word| !word.is_empty())?;
        let alone = lower.trim() == last;
        (UNIT_WORDS.contains(&last) && !alone).then(|| ("", Some(last.to_owned())))
    })
}

/// A unit as it is listed, or as it was written where it is not known.
fn unit_word(unit: &str) -> String {
    let unit = unit.trim().to_lowercase();
    match unit.as_str() {
        "gm" | "gram" | "grams" => "g".to_owned(),
        "ounce" | "ounces" => "oz".to_owned(),
        "lbs" | "pound" | "pounds" => "lb".to_owned(),
        "grains" => "grain".to_owned(),
        "inch" | "inches" | "\"" => "in".to_owned(),
        "millimetres" | "millimeters" => "mm".to_owned(),
        _ => unit,
    }
}

fn units_for(words: &BTreeMap<&'static str, String>) -> Result<Units, StockFileError> {
    let mass = match words.get("mass_g").map_or("g", String::as_str) {
        "g" => MassUnit::Gram,
        "kg" => MassUnit::Kilogram,
        "oz" => MassUnit::Ounce,
        "lb" => MassUnit::Pound,
        "grain" => MassUnit::Grain,
        other => {
            let error = wrong_unit("mass".into(), other, Some(units_of("mass")));
            return Err(match error {
                StockFileError::WrongUnit { field, unit, known, .. } if matches!(other, "gr" | "grs") => {
                    let two_meanings = Some(UnitFault::GramOrGrain.into());
                    StockFileError::WrongUnit { field, unit, known, two_meanings }
                }
                error => error,
            });
        }
    };
    let length = |column: &str, unit: &str| match unit {
        "mm" => Ok(LengthUnit::Millimetre),
        "in" => Ok(LengthUnit::Inch),
        "cm" => Ok(LengthUnit::Centimetre),
        "m" => Ok(LengthUnit::Metre),
        other => {
            let field = name_of(column);
            Err(wrong_unit(field.replace('_', " "), other, Some(units_of(field))))
        }
    };
    let of_lengths =
        words.iter().filter(|(column, _)| Field::by_key(column).is_some_and(|f| f.measure == Measure::Length));
    let lengths = of_lengths.map(|(column, unit)| Ok((*column, length(column, unit)?))).collect::<Result<_, _>>()?;
    Ok(Units { mass, lengths })
}

/// A heading as it is compared: capitals and the width of its blanks do not matter.
pub(super) fn plain(heading: &str) -> String {
    heading.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase()
}

/// The place of a heading, written as it stands or with other capitals.
fn place_of(table: &Table, name: &str, heading: &str) -> Result<usize, StockFileError> {
    let heading = heading.trim();
    let exact = table.header.iter().position(|h| h == heading);
    exact.or_else(|| table.header.iter().position(|h| plain(h) == plain(heading))).ok_or_else(|| {
        StockFileError::NoHeading {
            field: name.replace('_', " "),
            heading: heading.to_owned(),
            found: table.header.clone(),
        }
    })
}

fn claim(
    columns: &mut [Option<&'static str>],
    table: &Table,
    at: usize,
    column: &'static str,
) -> Result<(), StockFileError> {
    let twice = |first: &str, second: &str| StockFileError::FieldTwice {
        field: name_of(column).replace('_', " "),
        first: first.to_owned(),
        second: second.to_owned(),
    };
    if let Some(before) = columns.iter().position(|c| *c == Some(column)).filter(|before| *before != at) {
        return Err(twice(&table.header[before], &table.header[at]));
    }
    if let Some(other) = columns[at].filter(|other| *other != column) {
        let (first, second) = (name_of(other), name_of(column));
        return Err(StockFileError::FieldTwice {
            field: format!("column “{}”", table.header[at]),
            first: first.replace('_', " "),
            second: second.replace('_', " "),
        });
    }
    columns[at] = Some(column);
    Ok(())
}

/// Code and model must come from somewhere; the model says the kind.
fn check_needed(
    table: &Table,
    columns: &[Option<&'static str>],
    fixed: &BTreeMap<&'static str, String>,
) -> Result<(), StockFileError> {
    let there = |name: &&str| columns.contains(&Some(*name)) || fixed.contains_key(*name);
    let missing: Vec<String> = ["code", "model"].into_iter().filter(|name| !there(name)).map(str::to_owned).collect();
    if missing.is_empty() {
        return Ok(());
    }
    if !fixed.is_empty() || columns.iter().any(Option::is_some) {
        return Err(StockFileError::NoColumn { missing });
    }
    Err(StockFileError::NoHeader {
        missing,
        columns: columns_of_export(),
        found: table.header.join(",").chars().take(80).collect(),
    })
}

/// Headings under which the same rows are understood without this mapping: one that says the same by itself stays, one
/// that does not is renamed, one that is not used goes into brackets.
fn headings_again(
    table: &Table,
    columns: &[Option<&'static str>],
    words: &BTreeMap<&'static str, String>,
) -> Vec<String> {
    let one = |(at, heading): (usize, &String)| {
        let Some(column) = columns[at] else {
            let aside = is_left_aside(heading);
            return if aside { heading.clone() } else { format!("({heading})") };
        };
        let unit = words.get(column);
        let says = heading_of(heading).is_some_and(|(name, in_it)| {
            column_of(name) == Some(column) && in_it.map(|u| unit_word(&u)).as_ref() == unit
        });
        match unit {
            _ if says || COLUMNS.contains(&heading.as_str()) && unit.is_none() => heading.clone(),
            Some(unit) => format!("{}_{unit}", name_of(column)),
            None => column.to_owned(),
        }
    };
    table.header.iter().enumerate().map(one).collect()
}

fact::facts! {
    /// A unit that means two things.
    pub(crate) enum UnitFault: "unit_fault" {
        GramOrGrain,
    }
}
