//! The frequency line: where the raw shafts of a blank lie, and what one off it does to a club.
//!
//! A shop that clamps and plucks its shafts knows how stiff each is against others of its blank; a set whose shafts lie
//! on one line bends alike from club to club.
//!
//! # The line
//! - Only readings of one blank of one model are compared: same clamp, same weight at the tip, and the same length, to which each
//!   reading is brought by the length of its own shaft where that was measured (`even_cpm`).
//! - The centre of a blank is the median of the shafts of it that are in stock, free or held, and were measured; with
//!   fewer than `LEAST_MEASURED` there is none, and frequency says nothing of that blank.
//! - A taper model has a blank for each number, and the median of a few shafts is itself some cpm off: its wander from
//!   number to number would be taken for the set's slope, and shafts chosen for it would carry it into the clubs. So,
//!   where three blanks or more have a centre, a straight line through them against the raw length (median of the slopes
//!   of all pairs: Theil 1950, Sen 1968, from memory) says where a blank should lie, and its own median is believed
//!   against that line like `n / (n + 4)` of `n` shafts. Derived: a mean of two normal sources, scatter of single
//!   shafts about 3 cpm against about 1.5 cpm by which the centres of blanks truly leave a straight line (judgement, no
//!   source; half an inch less a number bends the line itself by 0.3 cpm from number to number at 320 cpm). Computed
//!   with numpy for eight numbers whose blanks lie 1 cpm off a cantilever's own frequencies: medians alone are 1.9 cpm
//!   off from club to club with three measured and 1.1 with eight, this line 1.2 and 0.9.
//!
//! # In the club
//! The reading is a cantilever with a weight at its tip, whose frequency goes with the root of its stiffness. A shaft
//! with `r` times the frequency of its line is `r²` times as stiff; cut to the same length under the same head it gives
//! a club of `r` times the frequency. So the club comes out `cpm · (r − 1)` off: `cpm` is what the sheet asks of the
//! club, or the line itself where it asks nothing. What the line's own level is does not matter to the set; only what
//! lies off it is counted. A shaft's mass needs no correction: a gram more lowers a raw reading by about 0.15 cpm, and that of its
//! club by as much, since a head weighs about what hangs at the tip. Limits: that the shaft is stiffer by the same share all along,
//! and that what its raw length has more or less is at the butt, where it is cut off.
//!
//! # Cost
//! `cpm_per_tolerance` times the square of the distance in tolerances, three tolerances at most. A shaft without a
//! reading costs the mean of what the measured ones of its blank cost in this club: what is to be expected of it, so it
//! is neither favoured over a shaft that is known nor shunned. (What is unknown of the centre adds the same to both.)

use std::collections::BTreeMap;
use trade::clamp::Clamp;
use trade::frequency_line::{BlankLine, FrequencyLine, ShaftFrequency};
use trade::job::JobClub;
use trade::model::{Library, PartKind};
use trade::part::{Part, PartState};
use trade::plan::ClubPlan;
use trade::shaft::{ShaftModel, TipShape};
use trade::sheet::SheetClub;
use trade::shop::Shop;

/// Measured shafts of a blank that make a line: the median of two is no more than their mean.
pub(crate) const LEAST_MEASURED: usize = 3;
/// Blanks with a centre that make a straight line across the numbers.
const LEAST_BLANKS: usize = 3;
/// Beyond so many tolerances off its line a shaft is simply wrong, and how wrong moves a plan no more: a slip of the
/// gauge must not outweigh the swing weight of a club.
const FARTHEST_TOLERANCES: f64 = 3.0;
/// How many shafts the straight line is worth against a blank's own.
const LINE_WORTH: f64 = 4.0;
/// How a clamped shaft's frequency falls with its free length, as a power of it. A uniform beam with a weight at its end has 3/2
/// (Euler and Bernoulli: deflection `W L³/3EI`); more length at the butt of one whose stiffness grows in a straight line to three
/// times that of its tip has 1.21 (derived: half of `L³/EI_butt` against `∫x²/EI dx`), and steel iron shafts lie between.
const LENGTH_POWER: f64 = 1.3;
/// As far as a raw shaft may be off its blank's length, mm: half an inch more is the next blank (common practice, no source).
const LENGTH_REACH_MM: f64 = 12.0;
/// The straight line leads no blank farther from its own median than this share of it.
const LINE_REACH: f64 = 0.1;

/// The measured shafts of one blank.
#[derive(Debug, Clone, Default)]
struct Blank {
    readings_cpm: Vec<f64>,
    line_cpm: Option<f64>,
}

/// The frequency lines of a stock.
#[derive(Debug, Clone, Default)]
pub struct Lines {
    blanks: BTreeMap<(String, usize), Blank>,
    held_mm: f64,
}

impl Lines {
    /// The lines of the measured shafts among these parts. Those that are not in stock any more say nothing.
    #[must_use]
    pub fn of<'a>(library: &Library, clamp: &Clamp, parts: impl IntoIterator<Item = &'a Part>) -> Self {
        let mut blanks = BTreeMap::<(String, usize), Blank>::new();
        for part in parts.into_iter().filter(|p| matches!(p.state, PartState::Free | PartState::Held)) {
            if part.kind != PartKind::Shaft {
                continue;
            }
            let Ok(model) = library.shaft(&part.model) else { continue };
            let Some(blank) = blank_of(model, part) else { continue };
            let Some(cpm) = even_cpm(part, model.blanks[blank].length_mm, clamp.held_mm) else { continue };
            blanks.entry((model.code.clone(), blank)).or_default().readings_cpm.push(cpm);
        }
        let models: std::collections::BTreeSet<String> = blanks.keys().map(|(code, _)| code.clone()).collect();
        for code in models {
            let Ok(model) = library.shaft(&code) else { continue };
            // Raw length, centre and count of the blanks that have one.
            let centres: Vec<(usize, f64, f64, usize)> = blanks
                .iter()
                .filter(|((c, _), b)| *c == code && b.readings_cpm.len() >= LEAST_MEASURED)
                .filter_map(|((_, i), b)| {
                    Some((*i, model.blanks[*i].length_mm, median(&b.readings_cpm)?, b.readings_cpm.len()))
                })
                .collect();
            let points: Vec<(f64, f64)> = centres.iter().map(|c| (c.1, c.2)).collect();
            let straight = if model.tip == TipShape::Taper { straight_line(&points) } else { None };
            for (blank, length_mm, centre_cpm, count) in centres {
                let n = f64::from(u32::try_from(count).unwrap_or(u32::MAX));
                let line_cpm = straight.map_or(centre_cpm, |(slope, level)| {
                    let there_cpm = level + slope * length_mm;
                    there_cpm + n / (n + LINE_WORTH) * (centre_cpm - there_cpm)
                });
                if let Some(b) = blanks.get_mut(&(code.clone(), blank)) {
                    // A straight line through wild readings must not lead far from what was measured of a blank.
                    b.line_cpm = Some(line_cpm.clamp(centre_cpm * (1.0 - LINE_REACH), centre_cpm * (1.0 + LINE_REACH)));
                }
            }
        }
        Self { blanks, held_mm: clamp.held_mm }
    }

    /// The blank of a shaft, and what the shaft read, as if it were as long as that.
    fn blank(&self, model: &ShaftModel, part: &Part) -> Option<(&Blank, Option<f64>)> {
        let place = blank_of(model, part)?;
        let blank = self.blanks.get(&(model.code.clone(), place))?;
        Some((blank, even_cpm(part, model.blanks[place].length_mm, self.held_mm)))
    }

    /// What is known of the blank of a shaft.
    #[must_use]
    pub fn of_blank(&self, model: &ShaftModel, part: &Part) -> Option<FrequencyLine> {
        let place = blank_of(model, part)?;
        let nothing = Blank::default();
        let blank = self.blanks.get(&(model.code.clone(), place)).unwrap_or(&nothing);
        Some(line_of(model, model.blanks[place].number.clone(), blank))
    }

    /// How a shaft lies in a club; none where its blank has no line.
    #[must_use]
    pub fn shaft(&self, model: &ShaftModel, part: &Part, target: &SheetClub) -> Option<ShaftFrequency> {
        let (blank, even_cpm) = self.blank(model, part)?;
        let line_cpm = blank.line_cpm?;
        let club_cpm = target.cpm.unwrap_or(line_cpm);
        let off = |cpm: f64| (cpm - line_cpm) * (club_cpm / line_cpm);
        let usual_cpm = mean(blank.readings_cpm.iter().map(|cpm| off(*cpm).powi(2))).sqrt();
        let measured = count(&blank.readings_cpm);
        Some(ShaftFrequency { cpm: part.cpm, line_cpm, measured, off_cpm: even_cpm.map(off), usual_cpm })
    }

    /// The plan of a club with how its shaft lies against its line, also among the reasons.
    #[must_use]
    pub fn note(&self, model: &ShaftModel, shaft: &Part, club: &JobClub, mut plan: ClubPlan) -> ClubPlan {
        plan.frequency = self.shaft(model, shaft, &club.target);
        plan.reasons.extend(plan.frequency.map(|f| f.fact().into()));
        plan
    }

    /// What a shaft costs in a club for lying off its line, in units of one certainly missed club.
    pub(super) fn cost(&self, shop: &Shop, model: &ShaftModel, part: &Part, target: &SheetClub) -> f64 {
        let weight = shop.plan_weights.cpm_per_tolerance;
        let Some((blank, even_cpm)) = self.blank(model, part) else { return 0.0 };
        let Some(line_cpm) = blank.line_cpm else { return 0.0 };
        let club_cpm = target.cpm.unwrap_or(line_cpm);
        let tolerance_cpm = target.tolerances.cpm.max(0.01);
        let one = |cpm: f64| {
            ((cpm - line_cpm) * (club_cpm / line_cpm) / tolerance_cpm).abs().min(FARTHEST_TOLERANCES).powi(2)
        };
        weight * even_cpm.map_or_else(|| mean(blank.readings_cpm.iter().map(|cpm| one(*cpm))), one)
    }

    /// What is known of the blanks of some clubs; nothing where no shaft of their models was ever measured, so that a
    /// shop without a frequency gauge hears nothing of it.
    pub(super) fn told<'a>(
        &self,
        library: &Library,
        clubs: impl IntoIterator<Item = &'a SheetClub>,
    ) -> Vec<FrequencyLine> {
        let mut told = Vec::<FrequencyLine>::new();
        for club in clubs {
            let Ok(model) = library.shaft(&club.shaft_model) else { continue };
            if !self.blanks.keys().any(|(code, _)| *code == model.code) {
                continue;
            }
            let Some(place) = model.blank(&club.number).and_then(|b| model.blanks.iter().position(|o| o == b)) else {
                continue;
            };
            let number = model.blanks[place].number.clone();
            if told.iter().any(|t| t.shaft_model == model.code && t.number == number) {
                continue;
            }
            let nothing = Blank::default();
            let blank = self.blanks.get(&(model.code.clone(), place)).unwrap_or(&nothing);
            told.push(line_of(model, number, blank));
        }
        told
    }
}

fn line_of(model: &ShaftModel, number: Option<String>, blank: &Blank) -> FrequencyLine {
    let measured = count(&blank.readings_cpm);
    let shaft = model.name.clone();
    let fact = match blank.line_cpm {
        Some(line_cpm) => BlankLine::Line { shaft, number: number.clone(), line_cpm, measured },
        None => BlankLine::TooFew { shaft, number: number.clone(), measured, needed: LEAST_MEASURED },
    };
    FrequencyLine { shaft_model: model.code.clone(), number, measured, line_cpm: blank.line_cpm, fact: fact.into() }
}

/// What a raw shaft would read at its blank's length, cpm: its own length is brought to that by [`LENGTH_POWER`]. As it was read
/// where its length was not measured, or says another blank than its own (farther off than [`LENGTH_REACH_MM`]).
fn even_cpm(part: &Part, blank_mm: f64, held_mm: f64) -> Option<f64> {
    let cpm = part.cpm?;
    let Some(own_mm) = part.length_mm.filter(|own_mm| (own_mm - blank_mm).abs() <= LENGTH_REACH_MM) else {
        return Some(cpm);
    };
    Some(cpm * ((own_mm - held_mm) / (blank_mm - held_mm)).powf(LENGTH_POWER))
}

/// The place of a shaft's blank among its model's.
fn blank_of(model: &ShaftModel, part: &Part) -> Option<usize> {
    match model.tip {
        TipShape::Parallel => model.blanks.iter().position(|b| b.number.is_none()),
        TipShape::Taper => {
            let number = part.number.as_deref()?;
            model.blanks.iter().position(|b| b.number.as_deref().is_some_and(|n| n.eq_ignore_ascii_case(number)))
        }
    }
}

/// Slope and level of the straight line through points: the median of the slopes of all pairs, then of the levels; none
/// for fewer than three points of different places.
fn straight_line(points: &[(f64, f64)]) -> Option<(f64, f64)> {
    let mut places: Vec<f64> = points.iter().map(|p| p.0).collect();
    places.sort_by(f64::total_cmp);
    places.dedup();
    if places.len() < LEAST_BLANKS {
        return None;
    }
    let mut slopes = Vec::new();
    for (i, a) in points.iter().enumerate() {
        slopes.extend(points[i + 1..].iter().filter(|b| b.0 != a.0).map(|b| (b.1 - a.1) / (b.0 - a.0)));
    }
    let slope = median(&slopes)?;
    let levels: Vec<f64> = points.iter().map(|p| p.1 - slope * p.0).collect();
    Some((slope, median(&levels)?))
}

fn median(values: &[f64]) -> Option<f64> {
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let n = sorted.len();
    if n == 0 {
        return None;
    }
    Some(f64::midpoint(sorted[(n - 1) / 2], sorted[n / 2]))
}

fn mean(values: impl ExactSizeIterator<Item = f64>) -> f64 {
    let n = values.len().max(1);
    values.sum::<f64>() / n as f64
}

fn count(readings: &[f64]) -> u32 {
    u32::try_from(readings.len()).unwrap_or(u32::MAX)
}
