//! Bending stiffness and mass along a shaft.

use crate::advice::{Advice, Clash};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::check::{above, at_least, enough, finite};
use crate::error::PhysicsError;

/// One row of a stiffness table.
///
/// Two rows with the same position are a step: the first holds before it, the second after it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct LineRow {
    /// Distance along the raw shaft from the end named by `measured_from`, mm.
    pub position_mm: f64,
    /// Bending stiffness EI there, N·m².
    pub stiffness_n_m2: f64,
    /// Mass per length there, g/m.
    pub mass_g_m: f64,
}

/// The end of the raw shaft from which the rows are measured.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum MeasuredFrom {
    /// From the butt end, as all other positions of a club are.
    #[default]
    Butt,
    /// From the tip end, as stiffness tables of shafts often are.
    Tip,
}

/// How stiffness and mass run between two rows.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum BetweenRows {
    /// Both are straight lines.
    #[default]
    Straight,
    /// A conical tube with a thin wall of one thickness: mass goes with the diameter, stiffness with its cube.
    ThinCone,
    /// A solid cone, or a tube whose wall shrinks with it: mass goes with the square, stiffness with the fourth power.
    SolidCone,
}

impl BetweenRows {
    /// Powers of the diameter that stiffness and mass follow.
    fn powers(self) -> (i32, i32) {
        match self {
            Self::Straight => (1, 1),
            Self::ThinCone => (3, 1),
            Self::SolidCone => (4, 2),
        }
    }
}

/// How far past its ends a table is continued while derivatives are taken; set-ups themselves must lie inside.
const BEYOND_M: f64 = 0.01;

/// The stretch between two neighbouring rows; `*_root` are the values whose power is the quantity.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stretch {
    from_m: f64,
    to_m: f64,
    /// Where the stretch is used: its ends, a little beyond them at both ends of the table.
    reach_m: (f64, f64),
    stiffness_root: (f64, f64),
    mass_root: (f64, f64),
    powers: (i32, i32),
}

impl Stretch {
    /// The part of `[from, to]` that belongs to this stretch.
    pub(super) fn clip(&self, from_m: f64, to_m: f64) -> (f64, f64) {
        (self.reach_m.0.max(from_m), self.reach_m.1.min(to_m))
    }

    /// Stiffness (N·m²) and mass per length (kg/m) at a place measured from the butt.
    pub(super) fn at(&self, x_m: f64) -> (f64, f64) {
        let share = (x_m - self.from_m) / (self.to_m - self.from_m);
        let stiffness = self.stiffness_root.0 + (self.stiffness_root.1 - self.stiffness_root.0) * share;
        let mass = self.mass_root.0 + (self.mass_root.1 - self.mass_root.0) * share;
        // A table that falls to nothing at the tip would fall below it where a derivative steps past the tip.
        (stiffness.max(0.0).powi(self.powers.0), mass.max(0.0).powi(self.powers.1))
    }
}

/// Stiffness and mass of a raw shaft as a function of the distance from its butt end.
#[derive(Debug, Clone)]
pub struct StiffnessLine {
    stretches: Vec<Stretch>,
    length_m: f64,
}

impl StiffnessLine {
    /// Builds the line from a table.
    ///
    /// # Errors
    /// Fewer than two rows, a value that is not finite, a negative mass, a stiffness that is not positive (zero is
    /// taken at the very tip only), positions out of order or more than two rows at one place.
    pub fn new(
        rows: &[LineRow],
        measured_from: MeasuredFrom,
        between: BetweenRows,
        length_mm: f64,
    ) -> Result<Self, PhysicsError> {
        check_rows(rows, measured_from)?;
        let place = |row: &LineRow| match measured_from {
            MeasuredFrom::Butt => row.position_mm / 1000.0,
            MeasuredFrom::Tip => (length_mm - row.position_mm) / 1000.0,
        };
        let powers = between.powers();
        let root = |value: f64, power: i32| if power == 1 { value } else { value.powf(1.0 / f64::from(power)) };
        let mut stretches: Vec<Stretch> = rows
            .windows(2)
            .filter(|pair| pair[1].position_mm > pair[0].position_mm)
            .map(|pair| {
                let (butt, tip) = match measured_from {
                    MeasuredFrom::Butt => (&pair[0], &pair[1]),
                    MeasuredFrom::Tip => (&pair[1], &pair[0]),
                };
                Stretch {
                    from_m: place(butt),
                    to_m: place(tip),
                    reach_m: (place(butt), place(tip)),
                    stiffness_root: (root(butt.stiffness_n_m2, powers.0), root(tip.stiffness_n_m2, powers.0)),
                    mass_root: (root(butt.mass_g_m / 1000.0, powers.1), root(tip.mass_g_m / 1000.0, powers.1)),
                    powers,
                }
            })
            .collect();
        if measured_from == MeasuredFrom::Tip {
            stretches.reverse();
        }
        if let Some(first) = stretches.first_mut() {
            first.reach_m.0 -= BEYOND_M;
        }
        if let Some(last) = stretches.last_mut() {
            last.reach_m.1 += BEYOND_M;
        }
        Ok(Self { stretches, length_m: length_mm / 1000.0 })
    }

    /// Length of the raw shaft, m.
    #[must_use]
    pub fn length_m(&self) -> f64 {
        self.length_m
    }

    /// First and last place the table covers, m from the butt.
    #[must_use]
    pub(crate) fn covers_m(&self) -> (f64, f64) {
        let first = self.stretches.first().map_or(0.0, |stretch| stretch.from_m);
        let last = self.stretches.last().map_or(0.0, |stretch| stretch.to_m);
        (first, last)
    }

    /// Stiffness (N·m²) and mass per length (kg/m) at a place from the butt, m; past the ends as the table is continued there.
    #[must_use]
    pub(crate) fn at(&self, x_m: f64) -> (f64, f64) {
        let at = self.stretches.partition_point(|stretch| stretch.reach_m.1 < x_m).min(self.stretches.len() - 1);
        self.stretches[at].at(x_m)
    }

    /// Stretches that overlap `[from, to]`, in order from the butt.
    pub(super) fn overlapping(&self, from_m: f64, to_m: f64) -> impl Iterator<Item = &Stretch> {
        // By bisection: a table may have a thousand rows, and each of its elements asks.
        let first = self.stretches.partition_point(|stretch| stretch.reach_m.1 <= from_m);
        self.stretches[first..].iter().take_while(move |stretch| stretch.reach_m.0 < to_m)
    }

    /// The shaft from one row to the next, between two places that come first and last.
    ///
    /// Rows closer than a nanometre to each other or to an end count once: what the shaft is over a nanometre is a
    /// billionth of the answer, and below it the places themselves are rounding.
    pub(super) fn spans(&self, from_m: f64, to_m: f64) -> Vec<Span> {
        const SAME_PLACE_M: f64 = 1e-9;
        let mut spans: Vec<Span> = Vec::with_capacity(self.stretches.len());
        let mut from = from_m;
        for stretch in self.overlapping(from_m, to_m) {
            let (start, end) = stretch.clip(from_m, to_m);
            let last = to_m - end <= SAME_PLACE_M;
            if last || end - from > SAME_PLACE_M {
                let steepness = (stretch.at(end).0 / stretch.at(start).0).ln().abs();
                spans.push(Span { from_m: from, to_m: if last { to_m } else { end }, steepness });
                from = end;
            }
            if last {
                break;
            }
        }
        spans
    }
}

/// A piece of shaft without a row inside.
#[derive(Debug, Clone, Copy)]
pub(super) struct Span {
    pub(super) from_m: f64,
    pub(super) to_m: f64,
    /// Logarithm of the greater stiffness at its ends over the smaller; infinite where one is zero.
    pub(super) steepness: f64,
}

impl Span {
    pub(super) fn length_m(&self) -> f64 {
        self.to_m - self.from_m
    }
}

fn check_rows(rows: &[LineRow], measured_from: MeasuredFrom) -> Result<(), PhysicsError> {
    enough("stiffness_line", rows.len(), 2, Advice::StiffnessAtBothEnds)?;
    let tip_row = match measured_from {
        MeasuredFrom::Butt => rows.len() - 1,
        MeasuredFrom::Tip => 0,
    };
    for (i, row) in rows.iter().enumerate() {
        let field = |name: &str| format!("stiffness_line[{i}].{name}");
        finite(&field("position_mm"), row.position_mm, "mm")?;
        let check = if i == tip_row { at_least } else { above };
        check(&field("stiffness_n_m2"), row.stiffness_n_m2, 0.0, "N·m²", Advice::ShaftBendsEverywhere)?;
        at_least(&field("mass_g_m"), row.mass_g_m, 0.0, "g/m", Advice::MassOfAMetre)?;
        let Some(before) = i.checked_sub(1).map(|j| rows[j].position_mm) else {
            continue;
        };
        at_least(&field("position_mm"), row.position_mm, before, "mm", Advice::SortByPosition)?;
        if i >= 2 && rows[i - 2].position_mm == row.position_mm {
            return Err(PhysicsError::Contradiction {
                what: Clash::ThreeRows { place_mm: row.position_mm },
                advice: Box::new(Advice::TwoRowsAStep),
            });
        }
    }
    if rows[0].position_mm == rows[rows.len() - 1].position_mm {
        return Err(PhysicsError::Contradiction {
            what: Clash::OnePlace { place_mm: rows[0].position_mm },
            advice: Box::new(Advice::RowsAtTwoPlaces),
        });
    }
    Ok(())
}
