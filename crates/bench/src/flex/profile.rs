//! What the shop read of one very shaft, clamped at several lengths: its readings as the belief takes them.
//!
//! A measured shaft has unknowns of its own beside those of its model: smooth deviations along it, as independent figures of one
//! unit that [`ProfilePrior::shape_root`] turns into logarithms at the places of a profile. Its readings are worked out at the line
//! that they told when they were kept, so that what is taken as straight is so near its answer.

use super::setup::{Linear, Setup, share};
use super::shaft::RawShaft;
use super::{Known, PERCENT};
use crate::learned::CLAMP_GIVES_MM;
use clubphysics::stiffness_profile::{ProfilePrior, STRETCHES, Seen, Sensed, hats, sensed};
use clubphysics::vibration::RigidTip;
use estimation::Share;
use quantity::INCH_MM;
use trade::error::TradeError;
use trade::id::ClubId;
use trade::stiffness_profile::StiffnessReading;

/// How far apart two places of a shaft may be and still deviate alike from their model, mm (a judgement, no source).
pub(crate) const SHAPE_LENGTH_MM: f64 = 180.0;
/// How well the length in the clamp is set, mm: by a mark and a rule (common practice, no source).
pub(crate) const HELD_SD_MM: f64 = 0.5;
/// Noise of a deflection that is read by a rule beside the tip, mm (common practice, no source).
pub(crate) const DEFLECTION_SD_MM: f64 = 0.5;

/// Keys of the smooth deviations of one club's shaft.
pub(super) fn shape_keys(club: &ClubId) -> impl Iterator<Item = String> {
    let club = club.clone();
    (0..=STRETCHES).map(move |k| format!("flex_shape:{club}:{k}"))
}

/// A reading as a function of what it is of.
pub(crate) fn seen_of(read: &StiffnessReading, length_mm: f64) -> Seen {
    match read.deflection_mm {
        Some(mm) => {
            let from_butt_mm = length_mm + read.weight_beyond_tip_mm;
            Seen::Deflection { mm, load_g: read.weight_g, from_butt_mm }
        }
        None => {
            let tip = RigidTip {
                mass_kg: read.weight_g / 1000.0,
                offset_m: read.weight_beyond_tip_mm / 1000.0,
                inertia_kg_m2: 0.0,
            };
            Seen::Frequency { cpm: read.cpm.unwrap_or_default(), tip }
        }
    }
}

/// A figure and its noise in its own unit.
pub(crate) fn figure_of(read: &StiffnessReading, meter_sd_cpm: f64) -> (f64, f64) {
    match read.deflection_mm {
        Some(mm) => (mm, DEFLECTION_SD_MM),
        None => (read.cpm.unwrap_or_default(), meter_sd_cpm),
    }
}

/// The shares of the smooth deviations, by how a reading hangs on each place of the shaft.
pub(super) fn shape_shares(raw: &RawShaft, club: &ClubId, bending: &[(f64, f64)]) -> Vec<Share> {
    let places = ProfilePrior::places_mm(raw.length_mm);
    let mut by_place = vec![0.0; places.len()];
    for (x, part) in bending {
        for (sum, hat) in by_place.iter_mut().zip(hats(&places, x * 1000.0)) {
            *sum += part * hat;
        }
    }
    let root = ProfilePrior::shape_root(raw.length_mm, SHAPE_LENGTH_MM);
    let gain = |k: usize| {
        let sum: f64 = by_place.iter().zip(&root).map(|(by, row)| by * row[k]).sum();
        raw.shape_sd * sum * PERCENT
    };
    shape_keys(club).enumerate().map(|(k, key)| share(&key, gain(k))).collect()
}

impl Setup<'_> {
    /// One reading of the shaft's profile as a straight line of what is not known, its value and its noise, in hundredths of its
    /// logarithm; none where the shaft has no profile.
    pub(super) fn of_profile(
        &self,
        read: &StiffnessReading,
        known: &Known<'_>,
    ) -> Result<Option<(f64, Vec<Share>, f64)>, TradeError> {
        let Some(deviation) = self.raw.measured(known, &self.keys()?) else { return Ok(None) };
        let keys = self.keys()?;
        let before: Vec<f64> = keys[..3].iter().map(|(key, _)| known.mean(key)).collect();
        let line = self.raw.line(before[1], Some(&deviation))?;
        let gives_mm = CLAMP_GIVES_MM.0 + before[2] * INCH_MM;
        let found: Sensed = sensed(&line, read.held_mm - gives_mm, seen_of(read, self.raw.length_mm))?;
        let sum: f64 = found.bending.iter().map(|(_, part)| part).sum();
        let tilt: f64 =
            found.bending.iter().map(|(x, part)| part * (2.0 * x * 1000.0 / self.raw.length_mm - 1.0)).sum();
        let mut shares = vec![
            share(&keys[0].0, sum * PERCENT),
            share(&keys[1].0, tilt * PERCENT),
            share(&keys[2].0, found.by_free_mm * INCH_MM * PERCENT),
            share(&keys[5].0, sum * PERCENT),
        ];
        let at_means: f64 = shares.iter().map(|s| s.gain * known.mean(&s.key)).sum();
        let level = sum * PERCENT * before[0];
        let at_line: f64 = found.bending.iter().map(|(x, part)| part * deviation.at(x * 1000.0)).sum::<f64>() * PERCENT;
        shares.extend(shape_shares(&self.raw, &self.club.id, &found.bending));
        let constant = found.ln_value * PERCENT + level - at_means - at_line;
        let (noise, _) = self.assembly.meter();
        let (value, sd) = figure_of(read, noise);
        let sd = (sd / value).hypot(found.by_free_mm * HELD_SD_MM) * PERCENT;
        Ok(Some((value.ln() * PERCENT - constant, shares, sd)))
    }
}

/// Adds to a reading what the shaft's own profile makes of it: the line that it was worked out at already deviates as read.
pub(super) fn with_shape(setup: &Setup<'_>, linear: Linear, deviation: &Deviation, bending: &[(f64, f64)]) -> Linear {
    let at_line: f64 = bending.iter().map(|(x, part)| part * deviation.at(x * 1000.0)).sum::<f64>() * PERCENT;
    let mut linear = linear;
    linear.constant -= at_line;
    linear.shares.extend(shape_shares(&setup.raw, &setup.club.id, bending));
    linear
}

/// How the logarithm of a measured shaft's stiffness deviates from what is expected of its model, at the places of a profile.
#[derive(Debug, Clone)]
pub(super) struct Deviation {
    pub places_mm: Vec<f64>,
    pub ln_ratio: Vec<f64>,
}

impl Deviation {
    pub(super) fn at(&self, x_mm: f64) -> f64 {
        hats(&self.places_mm, x_mm).iter().zip(&self.ln_ratio).map(|(hat, value)| hat * value).sum()
    }
}
