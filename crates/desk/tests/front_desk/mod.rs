//! Goal: what comes in at the front desk (short sheets, sheets, stock files) is read whole or refused by name, and the
//! invented shop hangs together. Method: the demonstration models; expectations written out by hand or reckoned here by
//! other means than the code's.

mod check;
mod check_fit;
mod demo;
mod set_rule;
mod short;
mod stock_file;
mod weigh_in;
mod workbook;

use ::demo as shop_of;
use desk::sheet_check::SheetProblem;
use desk::short_sheet::{ExpandContext, Expanded, KindChoice, SetModels, ShortError, expand, explain};
use quantity::Units;
use trade::kind::ClubKind;
use trade::model::Library;
use trade::sheet::{ReferenceClub, SetRule, SheetClub};
use words::Words;
use words::check::InWords;

fn library() -> Library {
    shop_of::models().into_iter().collect()
}

/// A reader of English in inches and grams.
fn w() -> Words {
    Words::english(Units::default())
}

/// A finding as a line: where, of which club, what, by which clause, what to do.
fn line(problem: &SheetProblem) -> String {
    let w = w();
    let club = problem.of_club().map_or_else(String::new, |club| format!("the {}: ", w.told(&club)));
    let clause = problem.clause.as_deref().map_or_else(String::new, |c| format!(" ({c})"));
    format!("{}: {club}{}{clause}. {}", problem.field, w.told(&problem.fact), w.told(&problem.next))
}

fn today() -> jiff::civil::Date {
    jiff::civil::date(2026, 3, 2)
}

fn set_of(heads: &[&str]) -> SetModels {
    let choice = |kind, model: &str| KindChoice { club_kind: kind, model: model.into() };
    SetModels {
        heads: heads.iter().map(|h| (*h).into()).collect(),
        shafts: vec![
            choice(Some(ClubKind::Wood), "LEVANTER-W"),
            choice(Some(ClubKind::Wedge), "LIBECCIO-T"),
            choice(Some(ClubKind::Putter), "GREGALE-P"),
            choice(None, "TRAMONTANA-P"),
        ],
        grips: vec![choice(Some(ClubKind::Putter), "GNEISS"), choice(None, "OLIVINE")],
        ferrules: vec![choice(Some(ClubKind::Iron), "FERRULE-370")],
        adhesive: None,
        tape: None,
    }
}

fn read_with(
    heads: &[&str],
    short: &str,
    rule: SetRule,
    reference: Option<&ReferenceClub>,
) -> Result<Vec<SheetClub>, ShortError> {
    let (library, models, shop) = (library(), set_of(heads), shop_of::shop());
    expand(short, &ExpandContext::new(&library, &models, &shop), rule, reference)
}

fn explained(heads: &[&str], short: &str, rule: SetRule, reference: Option<&ReferenceClub>) -> Vec<Expanded> {
    let (library, models, shop) = (library(), set_of(heads), shop_of::shop());
    explain(short, &ExpandContext::new(&library, &models, &shop), rule, reference).unwrap()
}

/// The Siskin irons, as written.
fn irons(short: &str) -> Result<Vec<SheetClub>, ShortError> {
    read_with(&["SISKIN"], short, SetRule::AsWritten, None)
}

/// Why the Siskin irons are refused.
fn refused(short: &str) -> String {
    irons(short).unwrap_err().in_words()
}

fn numbers(clubs: &[SheetClub]) -> String {
    clubs.iter().map(|c| c.number.as_str()).collect::<Vec<_>>().join(" ")
}

fn reference(number: &str) -> ReferenceClub {
    serde_json::from_value(serde_json::json!({ "number": number })).unwrap()
}

/// The words of a program's answers.
fn words() -> words::Words {
    words::Words::of_documents(words::Language::english(), jiff::tz::TimeZone::UTC)
}
