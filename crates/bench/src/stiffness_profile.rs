//! The stiffness along one shaft from its own readings: the line with its band beside the model's, how each reading agrees with the
//! others, and how many readings it takes.

use crate::assembly::STIFFNESS_PIECE_SD;
use crate::belief::BAND_95;
use crate::flex::{HELD_SD_MM, InHand, RawShaft, SHAPE_LENGTH_MM, StiffnessFrom, figure_of, meter_of, seen_of};
use crate::learned::{CLAMP_GIVES_MM, Learned, Scattered, ValueKey};
use clubphysics::stiffness_profile::{ClampedReading, ProfilePrior, StiffnessProfile, worth_of_readings};
use estimation::DOUBT_LIMIT;
use jiff::Timestamp;
use quantity::INCH_MM;
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::part::Part;
use trade::shaft::ShaftModel;
use trade::shop::Shop;
use trade::stiffness_profile::{ProfileRow, ShaftProfile, StiffnessFault, StiffnessReading, check};
use utoipa::ToSchema;

/// The worth of one more reading is told up to this many.
const WORTH_MOST: usize = 10;
/// A clamp holds at most this share of a shaft: beyond it the free end is short against what sticks in the clamp (a judgement, no
/// source).
const HELD_MOST_SHARE: f64 = 0.6;
/// Readings are enough where ten would not narrow the band by more than this share (a choice, no source).
const LITTLE: f64 = 0.1;
/// Weight at the tip by which the worth of readings is judged where the shop has stated none, g (common practice, no source).
const USUAL_WEIGHT_G: f64 = 250.0;

/// One place of a shaft: its stiffness by its readings and by its model.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct StiffnessAt {
    /// From the tip end of the shaft as its maker made it.
    pub from_tip_mm: f64,
    /// Bending stiffness by readings and model together.
    pub stiffness_n_m2: f64,
    /// Half width of its 95 % band, percent of it.
    pub band_percent: f64,
    /// What was expected by the model before this shaft was read.
    pub model_n_m2: f64,
    /// Half width of the 95 % band of that.
    pub model_band_percent: f64,
}

/// A reading beside what the line makes of it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct ReadingOfProfile {
    /// What was read.
    pub reading: StiffnessReading,
    /// What the line reads in the same clamp: cycles a minute, or millimetres where a deflection was read.
    pub fitted: f64,
    /// What was read less what the other readings expect, in standard deviations of that difference.
    pub off_sds: f64,
    /// Whether that is so far that the reading should be taken again.
    pub doubted: bool,
}

/// How stiff one shaft is along its length, and how well that is known.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct ShaftStiffness {
    /// Code of the shaft.
    pub code: String,
    /// Its length as it was read.
    pub length_mm: f64,
    /// What had been cut off its tip.
    pub tip_trimmed_mm: f64,
    /// What the model's line rests on.
    pub rests_on: StiffnessFrom,
    /// The shaft from butt to tip.
    pub rows: Vec<StiffnessAt>,
    /// What was read of it in the clamp, as entered, each beside what the line makes of it; empty where it was not read.
    pub readings: Vec<ReadingOfProfile>,
    /// How much longer than it is a shaft acts in this clamp, by these readings.
    pub clamp_gives_mm: f64,
    /// Half width of the 95 % band of that.
    pub clamp_gives_band_mm: f64,
    /// How many figures of the line the readings tell: at most as many as there are readings.
    pub told_figures: f64,
    /// Half width of the 95 % band of the stiffness between clamp and tip, root of the mean square, percent.
    pub band_percent: f64,
    /// The same before this shaft was read.
    pub model_band_percent: f64,
    /// What that would be after one frequency at the usual clamp length, and after two, three and so on, evenly spread up to the
    /// longest.
    pub band_after_percent: Vec<f64>,
    /// How many of those are enough: ten would bring little more.
    pub enough_readings: i64,
    /// The shortest of those clamp lengths: the shop's own.
    pub held_from_mm: f64,
    /// The longest of them.
    pub held_to_mm: f64,
}

impl ShaftStiffness {
    /// As it is kept with the part.
    #[must_use]
    pub fn kept(&self, by: &str, at: Timestamp) -> ShaftProfile {
        let row = |row: &StiffnessAt| ProfileRow {
            from_tip_mm: row.from_tip_mm,
            stiffness_n_m2: row.stiffness_n_m2,
            sd_percent: row.band_percent / BAND_95,
        };
        ShaftProfile {
            readings: self.readings.iter().map(|read| read.reading).collect(),
            rows: self.rows.iter().map(row).collect(),
            length_mm: self.length_mm,
            tip_trimmed_mm: self.tip_trimmed_mm,
            by: by.to_owned(),
            at,
        }
    }
}

/// The stiffness along a shaft by its readings and what the shop knows of its model and of its clamp; by the latter alone where
/// there are no readings.
///
/// # Errors
/// A part that is no shaft of the model, a model without a blank for it, readings that no shaft can give.
pub fn shaft_stiffness(
    shop: &Shop,
    learned: &Learned,
    model: &ShaftModel,
    part: &Part,
    readings: &[StiffnessReading],
) -> Result<ShaftStiffness, TradeError> {
    let blank = part.number.as_deref().map_or_else(|| model.blanks.first(), |number| model.blank(number));
    let blank = blank.ok_or_else(|| TradeError::refused(StiffnessFault::NoBlank { code: part.code.clone() }))?;
    let tip_lost_mm = part.tip_trimmed_mm.unwrap_or(0.0);
    let length_mm = part.length_mm.unwrap_or(blank.length_mm - tip_lost_mm);
    if !readings.is_empty() {
        check(readings, length_mm)?;
    }
    let mass_g = part.mass_g.unwrap_or(blank.mass_g * length_mm / blank.length_mm);
    let balance_mm = part.balance_point_mm;
    let raw = RawShaft::of(model, InHand { blank, mass_g, length_mm, balance_mm, tip_lost_mm, profile: None });
    let prior = prior_of(learned, model, &raw);
    let (meter_sd_cpm, step) = meter_of(shop, learned);
    let meter_sd_cpm = meter_sd_cpm.hypot(step / 12f64.sqrt());
    let clamped = |read: &StiffnessReading| {
        let seen = seen_of(read, length_mm);
        ClampedReading { held_mm: read.held_mm, held_sd_mm: HELD_SD_MM, seen, sd: figure_of(read, meter_sd_cpm).1 }
    };
    let found = StiffnessProfile::fit(&prior, &readings.iter().map(clamped).collect::<Vec<_>>())?;
    let before = StiffnessProfile::fit(&prior, &[])?;
    let held_mm = shop.clamp.held_mm;
    let held_to_mm = (HELD_MOST_SHARE * length_mm).max(held_mm);
    let weight_g = shop.clamp.test_weight_g.unwrap_or(USUAL_WEIGHT_G);
    let weight_beyond_tip_mm = shop.clamp.test_weight_centre_mm;
    let like = |held_mm: f64| {
        // The figure itself only sets how large a cycle a minute is in percent.
        let cpm = 250.0 * ((length_mm - shop.clamp.held_mm) / (length_mm - held_mm)).powf(1.5);
        Ok(clamped(&StiffnessReading { held_mm, weight_g, weight_beyond_tip_mm, cpm: Some(cpm), deflection_mm: None }))
    };
    let worth = worth_of_readings(&prior, held_mm, held_to_mm, WORTH_MOST, like)?;
    let least = worth.last().copied().unwrap_or(0.0);
    let enough = worth.iter().position(|band| *band <= (1.0 + LITTLE) * least).map_or(WORTH_MOST, |at| at + 1);
    let percent = |sd: f64| 100.0 * BAND_95 * sd;
    let rows = found.places_mm().iter().map(|x| {
        let ((stiffness_n_m2, sd), (model_n_m2, model_sd)) = (found.at(*x), before.at(*x));
        StiffnessAt {
            from_tip_mm: length_mm + tip_lost_mm - x,
            stiffness_n_m2,
            band_percent: percent(sd),
            model_n_m2,
            model_band_percent: percent(model_sd),
        }
    });
    let fitted = readings.iter().zip(&found.readings).map(|(reading, fit)| ReadingOfProfile {
        reading: *reading,
        fitted: fit.fitted,
        off_sds: fit.off_sds,
        doubted: fit.off_sds.abs() > DOUBT_LIMIT,
    });
    Ok(ShaftStiffness {
        code: part.code.clone(),
        length_mm,
        tip_trimmed_mm: tip_lost_mm,
        rests_on: raw.from,
        rows: rows.collect(),
        readings: fitted.collect(),
        clamp_gives_mm: found.gives_mm.0,
        clamp_gives_band_mm: BAND_95 * found.gives_mm.1,
        told_figures: found.told_figures,
        band_percent: percent(found.mean_sd(held_mm)),
        model_band_percent: percent(before.mean_sd(held_mm)),
        band_after_percent: worth.into_iter().map(percent).collect(),
        enough_readings: enough as i64,
        held_from_mm: held_mm,
        held_to_mm,
    })
}

/// What the shop expects of a shaft of this model: its line with what was learned of level, tilt and clamp.
fn prior_of(learned: &Learned, model: &ShaftModel, raw: &RawShaft) -> ProfilePrior {
    let known = |key: ValueKey, sd: f64| {
        let at = learned.position(&key.to_string());
        at.map_or((0.0, sd), |at| (learned.values[at].mean_shift, learned.covariance[at][at].max(0.0).sqrt()))
    };
    let (level, level_sd) = known(ValueKey::Stiffness(model.code.clone()), raw.level_sd);
    let (tilt, tilt_sd) = known(ValueKey::StiffnessTilt(model.code.clone()), raw.tilt_sd);
    let (gives, gives_sd) = known(ValueKey::ClampGives, CLAMP_GIVES_MM.1 / INCH_MM);
    let mut rows = raw.rows().to_vec();
    for row in &mut rows {
        row.stiffness_n_m2 *= (level + tilt * (2.0 * row.position_mm / raw.length_mm - 1.0)).exp();
    }
    ProfilePrior {
        rows,
        length_mm: raw.length_mm,
        level_sd: level_sd.hypot(learned.scatter_sd(Scattered::StiffnessPiece.key(), STIFFNESS_PIECE_SD)),
        tilt_sd,
        shape_sd: raw.shape_sd,
        shape_length_mm: SHAPE_LENGTH_MM,
        gives_mm: (CLAMP_GIVES_MM.0 + gives * INCH_MM, gives_sd * INCH_MM),
    }
}
