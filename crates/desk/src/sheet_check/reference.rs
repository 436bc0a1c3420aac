//! The reference club's readings: possible, complete, and at one with each other.

use crate::sheet_check::{ReferenceFinding, Severity, SheetNext, SheetProblem};
use crate::short_sheet::canonical;
use fact::{Fact, Told};
use jiff::civil::Date;
use quantity::{A0_POINTS, FULCRUM_IN, INCH_MM, POINT_G_IN};
use trade::error::within;
use trade::model::Library;
use trade::part::{CPM_LEAST, CPM_MOST};
use trade::reading::What;
use trade::scale::Scale;
use trade::sheet::{ReferenceClub, Sheet};
use trade::shop::Shop;

/// Two readings of one club that are this far apart are not explained by two scales, points: five standard deviations of
/// 0.2 and 0.2 points, which two balance scales may be off by (common practice, no source).
const APART_POINTS: f64 = 1.4;

/// What is wrong or missing in them.
pub(super) fn check(
    sheet: &Sheet,
    r: &ReferenceClub,
    library: &Library,
    shop: &Shop,
    today: Date,
    found: &mut Vec<SheetProblem>,
) {
    let before = found.len();
    let mut push = |severity, name: &str, fact: Told, next: SheetNext| {
        found.push(SheetProblem::new(severity, format!("reference.{name}"), &fact, &next).of_reference(r));
    };
    let (low, high) = What::SwingWeight.possible();
    let figures = [
        ("length_mm", r.length_mm, 400.0, 1300.0, "mm"),
        ("swing_weight_points", r.swing_weight_points, low, high, "points"),
        ("total_mass_g", r.total_mass_g, 200.0, 1000.0, "g"),
        ("balance_point_mm", r.balance_point_mm, 300.0, 1200.0, "mm"),
        ("loft_deg", r.loft_deg, 0.0, 80.0, "°"),
        ("lie_deg", r.lie_deg, 40.0, 80.0, "°"),
        ("cpm", r.cpm, CPM_LEAST, CPM_MOST, "cpm"),
        ("clamp_mm", r.clamp_mm, 20.0, 300.0, "mm"),
        ("cap_mm", r.cap_mm, 0.5, 15.0, "mm"),
        ("coupler_g", r.coupler_g, 0.1, 40.0, "g"),
        ("swing_weight_sd_points", r.swing_weight_sd_points, 0.0, 3.0, "points"),
    ];
    for (name, value, low, high, unit) in figures {
        if let Some(Err(e)) = value.map(|v| within(name, v, low, high, unit)) {
            push(Severity::Stop, name, e.refusal().fact().clone(), SheetNext::CorrectReading);
        }
    }
    for (i, read) in r.also_read.iter().enumerate() {
        if let Err(e) = within("swing_weight_points", read.swing_weight_points, low, high, "points") {
            let name = format!("also_read[{i}].swing_weight_points");
            push(Severity::Stop, &name, e.refusal().fact().clone(), SheetNext::CorrectReading);
        }
    }
    let mut push = |severity, name: &str, fact: ReferenceFinding, next| push(severity, name, fact.told(), next);
    if r.length_mm.is_some() && r.length_to.is_none() {
        push(Severity::Warn, "length_to", ReferenceFinding::NoLengthEnd, SheetNext::NameEnd);
    }
    if r.swing_weight_points.is_some() && r.scale.trim().is_empty() {
        push(Severity::Note, "scale", ReferenceFinding::NoScale, SheetNext::NameScale);
    }
    if r.cpm.is_some() && r.clamp_mm.is_none() {
        push(Severity::Note, "clamp_mm", ReferenceFinding::NoClamp, SheetNext::GiveClamp);
    }
    if let Some(read_on) = r.read_on.filter(|day| *day > today) {
        push(Severity::Warn, "read_on", ReferenceFinding::ReadLater { read_on }, SheetNext::CorrectDate);
    }
    for (i, read) in r.also_read.iter().enumerate() {
        if let Some(read_on) = read.read_on.filter(|day| *day > today) {
            let fact = ReferenceFinding::ReadLater { read_on };
            push(Severity::Warn, &format!("also_read[{i}].read_on"), fact, SheetNext::CorrectDate);
        }
        let other_points = read.swing_weight_points;
        if let Some(first_points) = r.swing_weight_points.filter(|p| (p - other_points).abs() > APART_POINTS) {
            let fact = ReferenceFinding::ReadingsApart { first_points, other_points };
            push(Severity::Warn, &format!("also_read[{i}].swing_weight_points"), fact, SheetNext::CorrectReading);
        }
    }
    if let Some(code) = r.grip_model.clone().filter(|code| library.grip(code).is_err()) {
        push(Severity::Warn, "grip_model", ReferenceFinding::UnknownGrip { code }, SheetNext::AddGripModel);
    }
    if let Some(coupler_g) = r.coupler_g {
        push(Severity::Note, "coupler_g", ReferenceFinding::Coupler { coupler_g }, SheetNext::HeadCarriesCoupler);
    }
    let known = sheet.clubs.iter().find(|c| canonical(&c.number) == canonical(r.number.trim()));
    if let (Some(club), Some(read)) = (known, r.swing_weight_points)
        && (club.swing_weight_points - read).abs() > club.tolerances.swing_weight_points
        && club.swing_weight_points.is_finite()
        && read.is_finite()
    {
        let fact = ReferenceFinding::OtherSwingWeight { read_points: read, asked_points: club.swing_weight_points };
        push(Severity::Note, "swing_weight_points", fact, SheetNext::IfFittingMeantIt);
    }
    if found[before..].iter().all(|p| p.severity != Severity::Stop) {
        found.extend(contradiction(r, library, shop).map(|p| p.of_reference(r)));
        found.extend(balance_point_beyond_club(r).map(|p| p.of_reference(r)));
    }
}

fn balance_point_beyond_club(r: &ReferenceClub) -> Option<SheetProblem> {
    let (at_mm, length_mm) = (r.balance_point_mm?, r.length_mm?);
    let share = at_mm / length_mm;
    // A club balances at 0.72 to 0.82 of its length from the butt. Derived from the fixtures of irons and drivers, wide.
    if (0.6..0.92).contains(&share) {
        return None;
    }
    let fact = ReferenceFinding::BalancePoint { at_mm, length_mm };
    let next = SheetNext::MeasureBalancePoint;
    Some(SheetProblem::new(Severity::Warn, "reference.balance_point_mm", &fact, &next))
}

/// What the fitting's readings of mass, balance point and swing weight are worth where nothing better is said: standard
/// deviations in g, mm and points. Common practice, no source.
const MASS_SD_G: f64 = 0.3;
const BALANCE_POINT_SD_MM: f64 = 1.0;
const OTHER_SCALE_SD_POINTS: f64 = 0.3;

/// Mass × balance point against swing weight: `points = W·(x − 14 in)/49.61 g·in − 92`, x from the cap, where the club sits
/// on the stop. The uncertainty is that of first order in all three.
fn contradiction(r: &ReferenceClub, library: &Library, shop: &Shop) -> Option<SheetProblem> {
    let (mass_g, at_mm, read_points) = (r.total_mass_g?, r.balance_point_mm?, r.swing_weight_points?);
    let points = |at_mm: f64| mass_g * (at_mm / INCH_MM - FULCRUM_IN) / POINT_G_IN - A0_POINTS;
    let makes_points = points(at_mm);
    let of_mass = (at_mm / INCH_MM - FULCRUM_IN) / POINT_G_IN * MASS_SD_G;
    let of_point = mass_g / INCH_MM / POINT_G_IN * BALANCE_POINT_SD_MM;
    let of_scale = scale_sd(&r.scale, &shop.balance_scale);
    let sd = of_mass.hypot(of_point).hypot(of_scale);
    let apart_points = (makes_points - read_points).abs();
    let ratio = apart_points / sd;
    if ratio <= 2.0 {
        return None;
    }
    let cap_mm =
        r.cap_mm.or_else(|| r.grip_model.as_ref().and_then(|g| library.grip(g).ok()).map(|g| g.cap_mm)).unwrap_or(3.0);
    let without_cap = (points(at_mm + cap_mm) - read_points).abs();
    let next = if without_cap < sd { SheetNext::MeasureFromCap { cap_mm } } else { SheetNext::ReadAgain };
    let [explained_points, of_mass_points, of_balance_points, of_scale_points] =
        [sd, of_mass, of_point, of_scale].map(|sd| 2.0 * sd);
    let (severity, fact) = if ratio > 5.0 {
        let fact = ReferenceFinding::NotOneClub {
            mass_g,
            at_mm,
            makes_points,
            read_points,
            apart_points,
            explained_points,
            of_mass_points,
            of_balance_points,
            of_scale_points,
        };
        (Severity::Stop, fact)
    } else {
        let fact = ReferenceFinding::Contradiction {
            mass_g,
            at_mm,
            makes_points,
            read_points,
            apart_points,
            explained_points,
            of_mass_points,
            of_balance_points,
            of_scale_points,
        };
        (Severity::Warn, fact)
    };
    Some(SheetProblem::new(severity, "reference.swing_weight_points", &fact, &next))
}

/// What the reading of a swing weight is worth: the shop's own scale by its figures, any other by common practice.
fn scale_sd(name: &str, own: &Scale) -> f64 {
    let display = own.display_step / 12f64.sqrt();
    if name.trim().eq_ignore_ascii_case(&own.key) || name.trim().eq_ignore_ascii_case(&own.name) {
        own.noise_sd.hypot(own.offset_sd).hypot(display)
    } else {
        OTHER_SCALE_SD_POINTS.hypot(display)
    }
}
