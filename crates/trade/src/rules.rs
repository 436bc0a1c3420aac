//! Measured margins against the limits of the Equipment Rules of golf.
//!
//! Source of the limits: The R&A and USGA, Equipment Rules, effective 2019, Part 2 (clauses as cited on each line), local
//! rule G-10, and Rule 4.1b(1) of the Rules of Golf. Only the governing bodies rule on a club: what stands here is a
//! measured figure beside a published limit, and what was not measured is said to be so.

use crate::grip::{GripModel, GripShape};
use crate::kind::{ClubKind, LengthTo};
use crate::sheet::SheetClub;
use quantity::{INCH_MM, decimal, round_to};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Shortest length of a club (2.1c).
pub const LENGTH_MIN_MM: f64 = 18.0 * INCH_MM;
/// Longest length of a club that is not a putter (2.1c).
pub const LENGTH_MAX_MM: f64 = 48.0 * INCH_MM;
/// Longest length under local rule G-10, where it is in force, putters excluded.
pub const LENGTH_LOCAL_MM: f64 = 46.0 * INCH_MM;
/// Least angle of the shaft from the vertical, seen along the line of play (2.1d).
pub const SHAFT_LEAN_MIN_DEG: f64 = 10.0;
/// Shortest grip (2.3a).
pub const GRIP_LENGTH_MIN_MM: f64 = 7.0 * INCH_MM;
/// Largest grip across (2.3b).
pub const GRIP_WIDEST_MM: f64 = 1.75 * INCH_MM;
/// Most clubs that a player may carry (Rule 4.1b(1)).
pub const CLUBS_MAX: usize = 14;

/// What is known of one club, for the comparison. What is `None` was not measured.
///
/// The rules measure the length of woods and irons from a plane at 60° against the sole; the length here starts where
/// the shaft axis meets the ground, which differs by a few millimetres: near a limit, measure as the rules do.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct RuleFigures {
    /// What sort of club.
    pub club_kind: ClubKind,
    /// Length from where the shaft axis meets the ground to the outside of the cap.
    pub length_to_cap_mm: Option<f64>,
    /// Lie.
    pub lie_deg: Option<f64>,
    /// Length of the grip.
    pub grip_length_mm: Option<f64>,
    /// Largest outside diameter of the grip.
    pub grip_widest_mm: Option<f64>,
    /// Shape of the grip.
    pub grip_shape: Option<GripShape>,
}

impl RuleFigures {
    /// The figures that a sheet asks for.
    #[must_use]
    pub fn of_sheet(club: &SheetClub, grip: Option<&GripModel>) -> Self {
        let cap_mm = grip.map(|g| g.cap_mm);
        Self {
            club_kind: club.club_kind,
            length_to_cap_mm: match club.length_to {
                LengthTo::Cap => Some(club.length_mm),
                LengthTo::ShaftEnd => cap_mm.map(|cap_mm| club.length_mm + cap_mm),
            },
            lie_deg: Some(club.lie_deg),
            grip_length_mm: grip.map(|g| g.length_mm),
            grip_widest_mm: grip.and_then(|g| g.widest_mm),
            grip_shape: grip.map(|g| g.shape),
        }
    }
}

/// One line: a clause, its limit, and how far the club is from it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Margin {
    /// Clause of the Equipment Rules (Part 2), of the Rules of Golf, or local rule.
    pub clause: String,
    /// What is limited.
    pub what: String,
    /// The limit in words.
    pub limit: String,
    /// Measured value in `unit`; none where it was not measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measured: Option<f64>,
    /// How far inside the limit, in `unit`; negative beyond it; none where not measured or not a figure.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub margin: Option<f64>,
    /// Unit of `measured` and `margin`; empty where there is none.
    pub unit: String,
    /// The line in words.
    pub words: String,
}

impl Margin {
    /// Whether a measured figure lies beyond its limit.
    #[must_use]
    pub fn is_beyond(&self) -> bool {
        self.margin.is_some_and(|m| m < 0.0)
    }
}

/// A limit on one side.
#[derive(Clone, Copy)]
enum Limit {
    AtLeast(f64),
    AtMost(f64),
}

/// Margins of one club, in the order of the clauses, and what was not measured.
#[must_use]
pub fn margins(club: &RuleFigures) -> Vec<Margin> {
    let putter = club.club_kind == ClubKind::Putter;
    let mut lines = vec![length_line("2.1c", "length", club.length_to_cap_mm, Limit::AtLeast(LENGTH_MIN_MM))];
    if !putter {
        lines.push(length_line("2.1c", "length", club.length_to_cap_mm, Limit::AtMost(LENGTH_MAX_MM)));
        lines.push(length_line(
            "local rule G-10, where in force",
            "length",
            club.length_to_cap_mm,
            Limit::AtMost(LENGTH_LOCAL_MM),
        ));
    }
    let lean_deg = club.lie_deg.map(|lie| 90.0 - lie);
    lines.push(line("2.1d", "shaft from the vertical", lean_deg, Limit::AtLeast(SHAFT_LEAN_MIN_DEG), "°", 1));
    lines.push(unmeasured("2.1d", "shaft along the line of play", "at most 20° forward and 10° back"));
    lines.push(unmeasured("2.2a", "straight shaft", "straight from the grip's top to within 5 in above the sole"));
    lines.push(unmeasured("2.2b", "bending and twisting", "the same however the shaft is turned"));
    if !putter {
        lines.push(unmeasured("2.2c", "neck", "shaft at the heel, neck at most 5 in"));
    }
    lines.push(length_line("2.3a", "grip length", club.grip_length_mm, Limit::AtLeast(GRIP_LENGTH_MIN_MM)));
    lines.push(length_line("2.3b", "grip across", club.grip_widest_mm, Limit::AtMost(GRIP_WIDEST_MM)));
    if !putter {
        lines.push(grip_shape(club.grip_shape));
    }
    if club.club_kind == ClubKind::Wood {
        lines.push(unmeasured(
            "2.4b(i)",
            "wood head",
            "heel to toe at most 5 in and more than face to back, sole to crown at most 2.8 in, at most 460 cc (+10), \
             inertia at most 5900 g·cm² (+100)",
        ));
    }
    lines
}

/// The limit on the number of clubs, for a whole bag.
#[must_use]
pub fn clubs_margin(clubs: usize) -> Margin {
    line("Rule 4.1b(1)", "clubs carried", Some(clubs as f64), Limit::AtMost(CLUBS_MAX as f64), "clubs", 0)
}

fn line(clause: &str, what: &str, measured: Option<f64>, limit: Limit, unit: &str, decimals: u8) -> Margin {
    let show = |v: f64| match unit {
        "°" => format!("{}°", decimal(v, decimals)),
        _ => format!("{} {unit}", decimal(v, decimals)),
    };
    let (limit_words, at) = match limit {
        Limit::AtLeast(at) => (format!("at least {}", show(at)), at),
        Limit::AtMost(at) => (format!("at most {}", show(at)), at),
    };
    let Some(value) = measured.filter(|v| v.is_finite()) else {
        return unmeasured(clause, what, &limit_words);
    };
    let margin = match limit {
        Limit::AtLeast(at) => value - at,
        Limit::AtMost(at) => at - value,
    };
    let side = if margin < 0.0 { "beyond" } else { "inside" };
    let words = if margin == 0.0 {
        format!("{what} {}, exactly at the limit of {}", show(value), show(at))
    } else {
        format!("{what} {}, {} {side} the limit of {}", show(value), show(margin.abs()), show(at))
    };
    Margin {
        clause: clause.into(),
        what: what.into(),
        limit: limit_words,
        measured: Some(value),
        margin: Some(margin),
        unit: unit.into(),
        words,
    }
}

/// A length, with the inches in which the rule states its limit.
fn length_line(clause: &str, what: &str, measured_mm: Option<f64>, limit: Limit) -> Margin {
    let mut made = line(clause, what, measured_mm, limit, "mm", 1);
    let (Limit::AtLeast(limit_mm) | Limit::AtMost(limit_mm)) = limit;
    made.limit = format!("{} ({} in)", made.limit, round_to(limit_mm / INCH_MM, 2));
    made
}

fn unmeasured(clause: &str, what: &str, limit: &str) -> Margin {
    Margin {
        clause: clause.into(),
        what: what.into(),
        limit: limit.into(),
        measured: None,
        margin: None,
        unit: String::new(),
        words: format!("{what}: not measured"),
    }
}

fn grip_shape(shape: Option<GripShape>) -> Margin {
    let limit = "circular across, except putters";
    let Some(shape) = shape else { return unmeasured("2.3b", "grip shape", limit) };
    let words = match shape {
        GripShape::Round => "grip is round by its model; not measured".to_owned(),
        GripShape::Ribbed => {
            "grip is ribbed by its model: only the governing bodies say which ribs are allowed".to_owned()
        }
        GripShape::FlatSided => "grip is flat-sided by its model, on a club that is not a putter".to_owned(),
    };
    Margin { words, ..unmeasured("2.3b", "grip shape", limit) }
}
