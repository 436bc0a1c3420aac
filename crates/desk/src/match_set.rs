//! One club to match a set: several clubs are measured, and each figure of the one that is lost is taken from the line
//! through theirs, with how well the line is known there. A club that lies off the line of the others is named and left out.
//!
//! Least squares with the scatter of the clubs themselves; a reading is never taken to be finer than its instrument. The test
//! for an outlier is that of the externally studentized residual with Bonferroni's correction for the number of clubs
//! (R. D. Cook and S. Weisberg, *Residuals and Influence in Regression*, 1982): named where the largest would come up once in
//! twenty sets without one.

use crate::mass_model::{Ingredients, MassModel};
use clubphysics::uncertainty::coverage_factor;
use serde::{Deserialize, Serialize};
use trade::club::Club;
use trade::error::TradeError;
use trade::kind::{ClubKind, LengthTo};
use trade::model::Library;
use trade::reading::{Unit, What};
use trade::sheet::{SheetClub, Tolerances};
use trade::shop::Shop;
use trade::wrap::Wraps;
use utoipa::ToSchema;

/// The fewest clubs that make a line with a scatter of its own.
const FEWEST: usize = 3;
/// The fewest of which one may be named as an outlier: the others must still make such a line.
const FEWEST_WITH_OUTLIER: usize = 4;
/// The share that a band holds.
const HELD: f64 = 0.95;

/// The figures that a line is drawn through, and how far one reading of an instrument may be off, standard deviation in the
/// unit of the figure (common practice, no source).
const FIGURES: [(What, f64); 7] = [
    (What::FinishedLength, 0.5),
    (What::SwingWeight, 0.1),
    (What::TotalMass, 0.1),
    (What::SwingInertia, 10.0),
    (What::Cpm, 0.5),
    (What::Loft, 0.25),
    (What::Lie, 0.25),
];

/// What a club is to be so that it matches a set.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct MatchedClub {
    /// What sort of club.
    pub club_kind: ClubKind,
    /// Its number or letter.
    pub number: String,
    /// Its targets, one for each figure that enough clubs were read of.
    pub targets: Vec<MatchTarget>,
    /// Figures of which fewer than three clubs were read: no line.
    pub too_few: Vec<What>,
}

/// One figure of the club that is to match.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct MatchTarget {
    /// Which figure.
    pub what: What,
    /// Unit of the figures.
    pub unit: Unit,
    /// What the line through the others gives.
    pub value: f64,
    /// Half width of the band that holds the line there 95 times in 100.
    pub band: f64,
    /// How much the figure grows from one number to the next.
    pub a_number: f64,
    /// How far single clubs lie off the line, standard deviation; none is taken to be smaller than the instrument's.
    pub scatter: f64,
    /// How many clubs the line goes through.
    pub clubs: usize,
    /// The club that lies off the line of the others and was left out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub outlier: Option<Outlier>,
}

/// A club that lies off the line of the others.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Outlier {
    /// Code of the club.
    pub club: String,
    /// What was read of it.
    pub value: f64,
    /// What the line through the others gives for it.
    pub expected: f64,
}

/// The place of a club in a set: one more for each number. Wedges are numbered by their loft, four degrees a club (common
/// practice, no source).
#[must_use]
pub fn place(kind: ClubKind, number: &str) -> Option<f64> {
    let letter = match number.trim().to_ascii_uppercase().as_str() {
        "P" | "PW" => Some(10.0),
        "A" | "G" | "U" | "AW" | "GW" => Some(11.0),
        "S" | "SW" => Some(12.0),
        "L" | "LW" => Some(13.0),
        _ => None,
    };
    let number = number.trim().parse::<f64>().ok().filter(|n| n.is_finite() && *n > 0.0);
    match kind {
        ClubKind::Iron => letter.or_else(|| number.filter(|n| *n <= 12.0)),
        ClubKind::Wedge => number.filter(|n| *n >= 40.0).map(|loft| loft / 4.0),
        ClubKind::Wood | ClubKind::Hybrid => number.filter(|n| *n <= 12.0),
        ClubKind::Putter => None,
    }
}

/// What a club must be to match others.
///
/// # Errors
/// Fewer than three clubs; clubs of several sorts, or such as have no place in a set; no figure that three of them have.
pub fn match_set(clubs: &[Club], number: &str) -> Result<MatchedClub, TradeError> {
    let refuse = |fault: MatchFault| Err(TradeError::refused(fault));
    let Some(first) = clubs.first().filter(|_| clubs.len() >= FEWEST) else {
        return refuse(MatchFault::TooFewClubs { fewest: FEWEST });
    };
    let kind = first.made.row.club_kind;
    if let Some(other) = clubs.iter().find(|club| club.made.row.club_kind != kind) {
        let fault = MatchFault::SeveralSorts { club: first.code.0.clone(), other: other.code.0.clone() };
        return refuse(fault);
    }
    let Some(at) = place(kind, number) else {
        return refuse(MatchFault::NoPlace { number: number.trim().to_owned() });
    };
    let mut placed = Vec::new();
    for club in clubs {
        match place(kind, &club.made.row.number) {
            Some(x) => placed.push((x, club)),
            None => return refuse(MatchFault::NoPlace { number: club.made.row.number.clone() }),
        }
    }
    let (mut targets, mut too_few) = (Vec::new(), Vec::new());
    for (what, instrument_sd) in FIGURES {
        let read: Vec<Point<'_>> = placed
            .iter()
            .filter_map(|(x, club)| Some(Point { x: *x, y: club.figure(what)?.value, club: club.code.as_str() }))
            .collect();
        match target(what, instrument_sd, at, read)? {
            Some(target) => targets.push(target),
            None => too_few.push(what),
        }
    }
    if targets.is_empty() {
        return refuse(MatchFault::NothingRead { fewest: FEWEST });
    }
    Ok(MatchedClub { club_kind: kind, number: number.trim().to_owned(), targets, too_few })
}

/// Which models the club that is to match is built of.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct MatchModels {
    /// Code of the head's model.
    pub head: String,
    /// Code of the shaft's model.
    pub shaft: String,
    /// Code of the grip's model.
    pub grip: String,
    /// Code of the ferrule's model, where it has one.
    #[serde(default)]
    pub ferrule: Option<String>,
    /// Whether it is to match in swing inertia: its swing weight is then the one that gives it the inertia of the line.
    #[serde(default)]
    pub by_inertia: bool,
}

impl MatchedClub {
    /// The target of one figure.
    #[must_use]
    pub fn target(&self, what: What) -> Option<&MatchTarget> {
        self.targets.iter().find(|target| target.what == what)
    }

    /// The club as a row of a sheet, so that it can be planned and built. A loft or lie that has no line is the head's own.
    ///
    /// # Errors
    /// A model that the library lacks; no line of the length, or of the swing weight or inertia that it is to match in; a length
    /// that leaves no shaft.
    pub fn row(&self, library: &Library, shop: &Shop, models: MatchModels) -> Result<SheetClub, TradeError> {
        let needed = |what: What| {
            let missing = || TradeError::refused(MatchFault::NoLine { what });
            self.target(what).map(|target| target.value).ok_or_else(missing)
        };
        let (_, own) = library.head_number(&models.head, &self.number)?;
        let value = |what: What| self.target(what).map(|target| target.value);
        let by_inertia = models.by_inertia;
        let mut row = SheetClub {
            number: self.number.clone(),
            club_kind: self.club_kind,
            length_mm: needed(What::FinishedLength)?,
            length_to: LengthTo::Cap,
            swing_weight_points: if by_inertia { 0.0 } else { needed(What::SwingWeight)? },
            loft_deg: value(What::Loft).unwrap_or(own.loft_deg),
            lie_deg: value(What::Lie).unwrap_or(own.lie_deg),
            cpm: value(What::Cpm),
            total_mass_g: value(What::TotalMass),
            inertia_kg_cm2: None,
            grip_size: None,
            head_model: models.head,
            shaft_model: models.shaft,
            grip_model: models.grip,
            ferrule_model: models.ferrule,
            adhesive: None,
            tape: None,
            grip_graphics: None,
            adapter_setting: None,
            swing_weight_free: false,
            shaft_graphics: None,
            soft_side: None,
            tip_weight: None,
            wraps: Wraps { base: 1, full: 0, lower_hand: 0 },
            tolerances: Tolerances::default(),
        };
        if by_inertia {
            let inertia_kg_cm2 = needed(What::SwingInertia)?;
            let model = MassModel::of(&Ingredients::of_sheet(&row, library, shop)?)?;
            let head_g = model.head_for_inertia_g(inertia_kg_cm2);
            row.swing_weight_points = model.swing_weight_points(head_g, 0.0);
            row.inertia_kg_cm2 = Some(inertia_kg_cm2);
        }
        Ok(row)
    }
}

#[derive(Clone, Copy)]
struct Point<'a> {
    x: f64,
    y: f64,
    club: &'a str,
}

/// A line by least squares.
struct Line {
    n: f64,
    mean_x: f64,
    mean_y: f64,
    slope: f64,
    /// Sum of the squares of the distances from the mean place.
    spread: f64,
    scatter: f64,
}

impl Line {
    /// None where all clubs have one place.
    fn through(points: &[Point<'_>], instrument_sd: f64) -> Option<Self> {
        let n = points.len() as f64;
        let mean = |of: fn(&Point<'_>) -> f64| points.iter().map(of).sum::<f64>() / n;
        let (mean_x, mean_y) = (mean(|p| p.x), mean(|p| p.y));
        let spread: f64 = points.iter().map(|p| (p.x - mean_x).powi(2)).sum();
        if points.len() < FEWEST || spread < 1e-9 {
            return None;
        }
        let slope = points.iter().map(|p| (p.x - mean_x) * (p.y - mean_y)).sum::<f64>() / spread;
        let off = |p: &Point<'_>| p.y - mean_y - slope * (p.x - mean_x);
        let scatter = (points.iter().map(|p| off(p).powi(2)).sum::<f64>() / (n - 2.0)).sqrt().max(instrument_sd);
        Some(Self { n, mean_x, mean_y, slope, spread, scatter })
    }

    fn at(&self, x: f64) -> f64 {
        self.mean_y + self.slope * (x - self.mean_x)
    }

    /// Variance of the line at a place, in squares of the scatter.
    fn share(&self, x: f64) -> f64 {
        1.0 / self.n + (x - self.mean_x).powi(2) / self.spread
    }
}

fn target(
    what: What,
    instrument_sd: f64,
    at: f64,
    mut read: Vec<Point<'_>>,
) -> Result<Option<MatchTarget>, TradeError> {
    let outlier = outlier(&read, instrument_sd)?;
    if let Some((club, _)) = &outlier {
        read.retain(|point| point.club != club.as_str());
    }
    let Some(line) = Line::through(&read, instrument_sd) else { return Ok(None) };
    let factor = coverage_factor(HELD, line.n - 2.0)?;
    Ok(Some(MatchTarget {
        what,
        unit: what.unit(),
        value: line.at(at),
        band: factor * line.scatter * line.share(at).sqrt(),
        a_number: line.slope,
        scatter: line.scatter,
        clubs: read.len(),
        outlier: outlier.map(|(_, outlier)| outlier),
    }))
}

/// The club that lies furthest off the line of the others, where that is more than chance.
fn outlier(read: &[Point<'_>], instrument_sd: f64) -> Result<Option<(String, Outlier)>, TradeError> {
    if read.len() < FEWEST_WITH_OUTLIER {
        return Ok(None);
    }
    // Two-sided, and one chance in twenty over all clubs together.
    let limit = coverage_factor(1.0 - (1.0 - HELD) / read.len() as f64, read.len() as f64 - 3.0)?;
    let mut worst: Option<(f64, Outlier)> = None;
    for point in read {
        let others: Vec<Point<'_>> = read.iter().filter(|other| other.club != point.club).copied().collect();
        let Some(line) = Line::through(&others, instrument_sd) else { continue };
        let expected = line.at(point.x);
        let off = (point.y - expected).abs() / (line.scatter * (1.0 + line.share(point.x)).sqrt());
        if off > limit && worst.as_ref().is_none_or(|(most, _)| off > *most) {
            worst = Some((off, Outlier { club: point.club.to_owned(), value: point.y, expected }));
        }
    }
    Ok(worst.map(|(_, outlier)| (outlier.club.clone(), outlier)))
}

fact::facts! {
    /// What is refused of a match.
    pub enum MatchFault: "match_fault" {
        /// Too few clubs for a line.
        TooFewClubs {
            /// How many it takes.
            fewest: usize,
        },
        /// Irons and woods have no line in common.
        SeveralSorts {
            /// Code of a club of the one sort.
            club: String,
            /// Code of one of another.
            other: String,
        },
        /// A number that has no place in a set.
        NoPlace {
            /// Number or letter as it was typed or stands on the club.
            number: String,
        },
        /// A club cannot be built without this target.
        NoLine {
            /// The figure.
            what: What,
        },
        /// No figure was read of enough clubs.
        NothingRead {
            /// How many it takes.
            fewest: usize,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn points(y: &[f64]) -> Vec<Point<'static>> {
        const CODES: [&str; 8] = ["C1", "C2", "C3", "C4", "C5", "C6", "C7", "C8"];
        y.iter().zip(CODES).enumerate().map(|(i, (y, club))| Point { x: i as f64 + 4.0, y: *y, club }).collect()
    }

    /// By hand: the mean is 946.44 at 6, the sum of products −127.7, that of squares 10, so −12.77 a number; the clubs scatter by
    /// less than the instrument's 0.5 mm, which stands in. Tables of Student's t have 3.182 for three degrees of freedom;
    /// at 9 the half width is 3.182 · 0.5 · √(1/5 + 9/10).
    #[test]
    fn a_line_with_its_band() {
        let found =
            target(What::FinishedLength, 0.5, 9.0, points(&[972.0, 959.5, 946.0, 933.6, 921.1])).unwrap().unwrap();
        assert!((found.a_number + 12.77).abs() < 1e-9);
        assert!((found.value - (946.44 - 3.0 * 12.77)).abs() < 1e-9);
        assert!((found.band - 3.182 * 0.5 * 1.1_f64.sqrt()).abs() < 5e-4);
        assert_eq!((found.scatter, found.clubs, found.outlier), (0.5, 5, None));
    }

    #[test]
    fn a_club_off_the_line_is_named_and_left_out() {
        let found = target(What::Lie, 0.25, 8.0, points(&[60.0, 60.6, 61.0, 64.5, 62.0, 62.4, 63.1])).unwrap().unwrap();
        let outlier = found.outlier.unwrap();
        assert_eq!((outlier.club.as_str(), outlier.value), ("C4", 64.5));
        assert!((outlier.expected - 61.5).abs() < 0.1, "{}", outlier.expected);
        assert_eq!(found.clubs, 6);
        // Without it nothing is named.
        let sound = target(What::Lie, 0.25, 8.0, points(&[60.0, 60.6, 61.0, 61.4, 62.0, 62.4, 63.1])).unwrap().unwrap();
        assert_eq!(sound.outlier, None);
    }

    #[test]
    fn two_clubs_make_no_line() {
        assert_eq!(target(What::Cpm, 0.5, 6.0, points(&[300.0, 304.0])).unwrap(), None);
    }
}
