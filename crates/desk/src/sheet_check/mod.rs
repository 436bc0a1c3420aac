//! What is wrong or doubtful in a sheet, before anything is planned.
//!
//! Nothing is repaired here: every finding names the club and the field, says by how much, and what to do next.

mod finding;
mod fit;
mod order;
mod reference;
mod stock;

pub use finding::{BoreOf, FitFinding, ReferenceFinding, SheetFinding, SheetNext, StockFinding};
pub use stock::{HeadWindow, head_window};

use fact::{Fact, Told};
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use trade::club_name::{ClubName, ClubNumber};
use trade::error::TradeError;
use trade::error::within;
use trade::grip::GripModel;
use trade::head::{HeadModel, HeadNumber};
use trade::kind::{ClubKind, LengthTo, closed_list};
use trade::model::Library;
use trade::part::{CPM_LEAST, CPM_MOST, Part};
use trade::reading::What;
use trade::rules::{self, Limited, RuleFigures};
use trade::shaft::ShaftModel;
use trade::sheet::{ReferenceClub, Sheet, SheetClub};
use trade::shop::Shop;
use utoipa::ToSchema;

closed_list! {
    /// How much a finding weighs.
    Severity {
        /// The sheet cannot be built as it stands.
        Stop = "stop";
        /// It can be built, but something is probably wrong.
        Warn = "warn";
        /// Worth knowing.
        Note = "note";
    }
}

/// One finding.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct SheetProblem {
    /// How much it weighs.
    pub severity: Severity,
    /// Number of the club; none where it is about the sheet, `reference` findings carry the reference club's number.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub club: Option<String>,
    /// Kind of that club; none for the reference club, whose kind nobody wrote down.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub club_kind: Option<ClubKind>,
    /// The field of the document, for example `clubs[2].lie_deg` or `reference.swing_weight_points`.
    pub field: String,
    /// What was found.
    #[serde(flatten)]
    pub fact: Told,
    /// What to do next.
    pub next: Told,
    /// Clause of the Equipment Rules, where it is about one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub clause: Option<String>,
}

impl SheetProblem {
    fn new(severity: Severity, field: impl Into<String>, fact: &impl Fact, next: &impl Fact) -> Self {
        Self {
            severity,
            club: None,
            club_kind: None,
            field: field.into(),
            fact: fact.told(),
            next: next.told(),
            clause: None,
        }
    }

    fn of(mut self, club: &SheetClub) -> Self {
        self.club = Some(club.number.clone());
        self.club_kind = Some(club.club_kind);
        self
    }

    fn of_reference(mut self, club: &ReferenceClub) -> Self {
        self.club = Some(club.number.clone());
        self
    }

    /// A refusal of the workshop's rules, beside the field it belongs to.
    fn refused(field: &str, error: &TradeError) -> Self {
        let refusal = error.refusal();
        Self::new(Severity::Stop, field, refusal.fact(), &refusal.told_next())
    }

    /// The club that it is about, as it is named.
    #[must_use]
    pub fn of_club(&self) -> Option<Told> {
        let number = self.club.as_deref()?;
        Some(match self.club_kind {
            Some(kind) => ClubName::of(kind, number).told(),
            None => ClubNumber::from(number).told(),
        })
    }
}

/// A club of the sheet with the models it names, as far as there are any.
struct Named<'a> {
    pub index: usize,
    pub club: &'a SheetClub,
    pub head: Option<&'a HeadModel>,
    pub number: Option<&'a HeadNumber>,
    pub shaft: Option<&'a ShaftModel>,
    pub grip: Option<&'a GripModel>,
    /// Whether all its figures are possible; what works with them waits for that.
    pub sound: bool,
}

impl Named<'_> {
    fn field(&self, name: &str) -> String {
        format!("clubs[{}].{name}", self.index)
    }

    /// Length to the cap, where the cap is known.
    fn to_cap_mm(&self) -> Option<f64> {
        match self.club.length_to {
            LengthTo::Cap => Some(self.club.length_mm),
            LengthTo::ShaftEnd => self.grip.map(|g| self.club.length_mm + g.cap_mm),
        }
    }
}

/// Most clubs of a sheet. Fourteen are played (Rules of Golf, 4.1b); a shop may write two sets and spare clubs together.
const CLUBS_MAX: usize = 40;

/// Checks a sheet against the models, the free parts in stock and the shop. The order is that of the sheet: what is
/// about all of it first, then club by club.
///
/// Findings of [`Severity::Stop`] mean that the sheet cannot be built as it stands.
#[must_use]
pub fn check(sheet: &Sheet, library: &Library, stock: &[Part], shop: &Shop, today: Date) -> Vec<SheetProblem> {
    if sheet.clubs.len() > CLUBS_MAX {
        let (n, most) = (sheet.clubs.len(), CLUBS_MAX);
        let (fact, next) = (SheetFinding::TooManyClubs { n, most }, SheetNext::AtMostClubs { most });
        return vec![SheetProblem::new(Severity::Stop, "clubs", &fact, &next)];
    }
    let mut found = Vec::new();
    check_whole(sheet, today, &mut found);
    if let Some(reference) = &sheet.reference {
        reference::check(sheet, reference, library, shop, today, &mut found);
    }
    let clubs: Vec<Named<'_>> =
        sheet.clubs.iter().enumerate().map(|(index, club)| named(index, club, library, &mut found)).collect();
    order::check(sheet, &clubs, &mut found);
    for club in &clubs {
        fit::check(sheet, club, library, shop, stock, &mut found);
        check_rules(club, &mut found);
        check_tolerances(club, shop, &mut found);
        stock::check(club, library, stock, shop, &mut found);
    }
    let rank = |p: &SheetProblem| {
        sheet
            .clubs
            .iter()
            .enumerate()
            .position(|(i, _)| p.field.starts_with(&format!("clubs[{i}]")))
            .map_or(0, |i| i + 1)
    };
    found.sort_by_key(|p| (rank(p), p.severity));
    found
}

fn check_whole(sheet: &Sheet, today: Date, found: &mut Vec<SheetProblem>) {
    let mut push = |severity, field: &str, fact: SheetFinding, next: SheetNext| {
        found.push(SheetProblem::new(severity, field, &fact, &next));
    };
    if sheet.player.trim().is_empty() {
        push(Severity::Stop, "player", SheetFinding::NoPlayer, SheetNext::NamePlayer);
    }
    if sheet.clubs.is_empty() {
        push(Severity::Stop, "clubs", SheetFinding::NoClubs, SheetNext::AddClub);
    }
    if sheet.due < today {
        let n = i64::from((today - sheet.due).get_days());
        push(Severity::Note, "due", SheetFinding::Overdue { due_on: sheet.due, n }, SheetNext::NewDate);
    }
    let margin = rules::clubs_margin(sheet.clubs.len());
    if margin.is_beyond() {
        let fact = SheetFinding::MoreThanPlayed { n: sheet.clubs.len(), most: rules::CLUBS_MAX };
        let problem = SheetProblem::new(Severity::Note, "clubs", &fact, &SheetNext::SomeStayHome);
        found.push(SheetProblem { clause: Some(margin.clause), ..problem });
    }
}

/// Looks the models up and refuses impossible figures.
fn named<'a>(index: usize, club: &'a SheetClub, library: &'a Library, found: &mut Vec<SheetProblem>) -> Named<'a> {
    let field = |name: &str| format!("clubs[{index}].{name}");
    let before = found.len();
    let mut figure = |name: &str, value: f64, low: f64, high: f64, unit: &'static str| {
        if let Err(e) = within(name, value, low, high, unit) {
            found.push(SheetProblem::refused(&field(name), &e).of(club));
        }
    };
    figure("length_mm", club.length_mm, 400.0, 1300.0, "mm");
    let (low, high) = What::SwingWeight.possible();
    figure("swing_weight_points", club.swing_weight_points, low, high, "points");
    figure("loft_deg", club.loft_deg, 0.0, 80.0, "°");
    figure("lie_deg", club.lie_deg, 40.0, 80.0, "°");
    if let Some(cpm) = club.cpm {
        figure("cpm", cpm, CPM_LEAST, CPM_MOST, "cpm");
    }
    if let Some(mass_g) = club.total_mass_g {
        figure("total_mass_g", mass_g, 150.0, 1200.0, "g");
    }
    if let Some(size) = club.grip_size {
        let (low, high) = What::GripSize.possible();
        figure("grip_size.upper_mm", size.upper_mm, low, high, "mm");
        figure("grip_size.lower_mm", size.lower_mm.unwrap_or(size.upper_mm), low, high, "mm");
    }
    let t = club.tolerances;
    figure("tolerances.swing_weight_points", t.swing_weight_points, 0.001, 10.0, "points");
    figure("tolerances.length_mm", t.length_mm, 0.01, 30.0, "mm");
    figure("tolerances.loft_deg", t.loft_deg, 0.01, 5.0, "°");
    figure("tolerances.lie_deg", t.lie_deg, 0.01, 5.0, "°");
    figure("tolerances.cpm", t.cpm, 0.01, 30.0, "cpm");
    figure(
        "wraps",
        f64::from(club.wraps.base) + f64::from(club.wraps.full) + f64::from(club.wraps.lower_hand),
        0.0,
        20.0,
        "layers",
    );
    let sound = found.len() == before;

    let mut keep = |name: &str, e: &TradeError| found.push(SheetProblem::refused(&field(name), e).of(club));
    let head = library.head(&club.head_model).inspect_err(|e| keep("head_model", e)).ok();
    let shaft = library.shaft(&club.shaft_model).inspect_err(|e| keep("shaft_model", e)).ok();
    let grip = library.grip(&club.grip_model).inspect_err(|e| keep("grip_model", e)).ok();
    if let Some(code) = &club.ferrule_model {
        let _ = library.ferrule(code).inspect_err(|e| keep("ferrule_model", e));
    }
    if let Some(code) = &club.adhesive {
        let _ = library.adhesive(code).inspect_err(|e| keep("adhesive", e));
    }
    if let Some(code) = &club.tape {
        let _ = library.tape(code).inspect_err(|e| keep("tape", e));
    }
    let number = head.and_then(|h| h.number(&club.number));
    if let Some(head) = head
        && number.is_none()
    {
        let fact = SheetFinding::NoSuchNumber { head: head.name.clone(), number: club.number.as_str().into() };
        let known = head.numbers.iter().map(|n| n.number.as_str().into()).collect();
        let next = SheetNext::ChooseNumber { known };
        found.push(SheetProblem::new(Severity::Stop, field("number"), &fact, &next).of(club));
    }
    Named { index, club, head, number, shaft, grip, sound }
}

/// Limits of the Equipment Rules that the sheet's own figures lie beyond. The optional local rule is a note.
fn check_rules(club: &Named<'_>, found: &mut Vec<SheetProblem>) {
    if !club.sound {
        return;
    }
    let figures = RuleFigures::of_sheet(club.club, club.head, club.grip);
    let (beyond, inside): (Vec<_>, Vec<_>) = rules::margins(&figures).into_iter().partition(rules::Margin::is_beyond);
    let too_long = beyond.iter().filter(|m| m.what == Limited::Length).count() > 1;
    for margin in inside.into_iter().filter(rules::Margin::is_near) {
        let field = club.field("length_mm");
        let problem = SheetProblem::new(Severity::Note, field, &margin.fact, &SheetNext::MeasureAsRulesDo);
        found.push(SheetProblem { clause: Some(margin.clause), ..problem }.of(club.club));
    }
    for margin in beyond {
        if margin.is_local() && too_long {
            continue;
        }
        let name = match margin.what {
            Limited::Length => "length_mm",
            Limited::ShaftLean => "lie_deg",
            _ => "grip_model",
        };
        let severity = if margin.is_local() { Severity::Note } else { Severity::Warn };
        let problem = SheetProblem::new(severity, club.field(name), &margin.fact, &SheetNext::ChangeOrTell);
        found.push(SheetProblem { clause: Some(margin.clause), ..problem }.of(club.club));
    }
}

fn check_tolerances(club: &Named<'_>, shop: &Shop, found: &mut Vec<SheetProblem>) {
    let points = club.club.tolerances.swing_weight_points;
    if !club.sound || club.club.swing_weight_free {
        return;
    }
    let scale = &shop.balance_scale;
    let floor = 2.0 * scale.noise_sd.hypot(scale.display_step / 12f64.sqrt());
    let (fact, next) = if points < floor {
        let scale = scale.name.clone();
        let fact = SheetFinding::ToleranceTooFine { tolerance_points: points, scale, reading_points: floor };
        (fact, SheetNext::AllowMore)
    } else if points > 2.0 {
        (SheetFinding::ToleranceTooWide { tolerance_points: points }, SheetNext::AllowLess)
    } else {
        return;
    };
    let field = club.field("tolerances.swing_weight_points");
    found.push(SheetProblem::new(Severity::Warn, field, &fact, &next).of(club.club));
}
