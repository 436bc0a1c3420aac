//! Parts sorted by weight: each weight class with its letter, and which part lies where in the tray.

use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::error::within;
use trade::part::Part;
use utoipa::ToSchema;

/// Most classes of one sorting.
pub(crate) const CLASSES_MAX: usize = 60;
/// Most parts of one sorting.
pub(crate) const PARTS_MAX: usize = 5_000;
/// What a scale of a shop shows: masses are taken to this step, so that none falls on the wrong side of a limit by the
/// noise of binary arithmetic.
const STEP_G: f64 = 0.01;

/// How the classes are made.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Classes {
    /// Each so wide, beginning at whole multiples of the width, so that the next box falls into the same classes.
    WidthG(f64),
    /// So many of equal width from the lightest to the heaviest.
    Count(usize),
}

/// A class of weight.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct WeightClass {
    /// Its letter, from the lightest.
    pub name: String,
    /// Least mass of a part in the class.
    pub from_g: f64,
    /// Upper limit: a part of just this mass is in the next class; the last class of a count takes it in.
    pub to_g: f64,
    /// Its parts, the lightest first.
    pub parts: Vec<Sorted>,
}

/// A part of a class.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Sorted {
    /// Code on the part's label.
    pub code: String,
    /// What the part weighs on the shop's scale.
    pub mass_g: f64,
    /// Row of the tray, from 1.
    pub row: usize,
    /// Place in the row, from 1.
    pub column: usize,
}

/// A sorting.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Sorting {
    /// The classes, the lightest first; one without parts stays in its place.
    pub classes: Vec<WeightClass>,
    /// Parts sorted.
    pub count: usize,
    /// Their mean mass.
    pub mean_g: f64,
    /// How much they scatter: standard deviation.
    pub sd_g: f64,
    /// Places in a row of the tray.
    pub tray_columns: usize,
    /// Rows of the tray; each class begins a row of its own.
    pub tray_rows: usize,
    /// Codes of parts that are not weighed and so not sorted.
    pub not_weighed: Vec<String>,
}

/// Sorts parts by weight.
///
/// # Errors
/// A width or count that makes no classes or more than `CLASSES_MAX`; more than `PARTS_MAX` parts; a tray without
/// places.
pub fn sort(parts: &[Part], classes: Classes, tray_columns: usize) -> Result<Sorting, TradeError> {
    if !(1..=40).contains(&tray_columns) {
        return Err(TradeError::refused(SortFault::TrayRow { n: tray_columns }));
    }
    if parts.len() > PARTS_MAX {
        return Err(TradeError::refused(SortFault::TooManyParts { n: parts.len(), most: PARTS_MAX }));
    }
    let mut weighed: Vec<(f64, &str)> = parts.iter().filter_map(|p| Some((p.mass_g?, p.code.as_str()))).collect();
    weighed.sort_by(|a, b| a.0.total_cmp(&b.0).then_with(|| a.1.cmp(b.1)));
    let not_weighed = parts.iter().filter(|p| p.mass_g.is_none()).map(|p| p.code.clone()).collect();
    let limits = match (weighed.first(), weighed.last()) {
        (Some(first), Some(last)) => limits(classes, first.0, last.0)?,
        _ => limits(classes, 0.0, 0.0).map(|_| Vec::new())?,
    };
    let mut found: Vec<WeightClass> = limits
        .windows(2)
        .enumerate()
        .map(|(i, l)| WeightClass { name: letter(i), from_g: l[0], to_g: l[1], parts: Vec::new() })
        .collect();
    for (mass_g, code) in &weighed {
        let class = found.iter().rposition(|c| *mass_g >= c.from_g - STEP_G / 2.0).unwrap_or(0);
        if let Some(class) = found.get_mut(class) {
            class.parts.push(Sorted { code: (*code).to_owned(), mass_g: *mass_g, row: 0, column: 0 });
        }
    }
    let mut rows = 0;
    for class in &mut found {
        for (i, part) in class.parts.iter_mut().enumerate() {
            part.row = rows + i / tray_columns + 1;
            part.column = i % tray_columns + 1;
        }
        rows += class.parts.len().div_ceil(tray_columns);
    }
    let (mean_g, sd_g) = mean_and_sd(weighed.iter().map(|(m, _)| *m));
    Ok(Sorting { classes: found, count: weighed.len(), mean_g, sd_g, tray_columns, tray_rows: rows, not_weighed })
}

/// Mean and standard deviation (divisor n − 1) of masses; 0 where there are too few.
#[must_use]
pub fn mean_and_sd(masses_g: impl Iterator<Item = f64>) -> (f64, f64) {
    // Welford's running sums: no loss of digits however far the masses lie from zero.
    let (mut n, mut mean, mut square) = (0.0, 0.0, 0.0);
    for mass_g in masses_g {
        n += 1.0;
        let off = mass_g - mean;
        mean += off / n;
        square += off * (mass_g - mean);
    }
    (mean, if n > 1.0 { (square / (n - 1.0)).sqrt() } else { 0.0 })
}

/// The limits of the classes from the lightest to the heaviest.
fn limits(classes: Classes, lightest_g: f64, heaviest_g: f64) -> Result<Vec<f64>, TradeError> {
    let to_step = |mass_g: f64| (mass_g / STEP_G).round() * STEP_G;
    let too_many = |n: f64| TradeError::refused(SortFault::TooManyClasses { n, most: CLASSES_MAX });
    match classes {
        Classes::WidthG(width_g) => {
            within("width_g", width_g, 0.1, 100.0, "g")?;
            let first = ((lightest_g + STEP_G / 2.0) / width_g).floor();
            let last = ((heaviest_g + STEP_G / 2.0) / width_g).floor();
            let count = last - first + 1.0;
            if count > CLASSES_MAX as f64 {
                return Err(too_many(count));
            }
            Ok((0..=count as u32).map(|i| to_step((first + f64::from(i)) * width_g)).collect())
        }
        Classes::Count(count) => {
            if count == 0 || count > CLASSES_MAX {
                return Err(too_many(count as f64));
            }
            // At least a tenth of a gram each: finer than that no scale of the bench sorts.
            let width_g = ((heaviest_g - lightest_g) / count as f64).max(0.1);
            Ok((0..=count).map(|i| to_step(lightest_g + i as f64 * width_g)).collect())
        }
    }
}

/// A to Z, then AA, AB …
fn letter(index: usize) -> String {
    let of = |i: usize| char::from(b'A' + u8::try_from(i % 26).unwrap_or(0));
    match index / 26 {
        0 => of(index).to_string(),
        n => format!("{}{}", of(n - 1), of(index)),
    }
}

fact::facts! {
    /// What is refused of sorting parts into weight classes.
    pub(crate) enum SortFault: "sort_fault" {
        TrayRow { n: usize },
        TooManyParts { n: usize, most: usize },
        TooManyClasses { n: f64, most: usize },
    }
}
