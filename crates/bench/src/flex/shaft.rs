//! The raw shaft of a club as a spring: what is known of its stiffness along it, before any reading.

use super::Known;
use super::profile::Deviation;
use clubphysics::stiffness_profile::ProfilePrior;
use clubphysics::vibration::{BetweenRows, LineRow, MeasuredFrom, StiffnessLine};
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::kind::closed_list;
use trade::shaft::{ShaftBlank, ShaftMaterial, ShaftModel};
use trade::stiffness_profile::{ProfileRow, ShaftProfile};
use utoipa::ToSchema;

closed_list! {
    /// What the stiffness of a shaft model rests on before any of its shafts was read.
    StiffnessFrom {
        /// Readings of this very shaft, clamped at several lengths, beside its model's line.
        Profile = "profile";
        /// The table that its maker states or the shop measured.
        Table = "table";
        /// Its mass, its diameters and its material, as a thin tube.
        Tube = "tube";
    }
}

/// Modulus over density, m²/s²: of steel 206 GPa over 7,850 kg/m³ (handbook values), less a seventh because steps put more of
/// the mass where the tube is thin (a judgement, no source); of fibres in epoxy about 70 GPa over 1,550 kg/m³ along a shaft (a
/// judgement, no source: it depends on how they are laid).
const STEEL_M2_S2: f64 = 206e9 / 7850.0 * 0.86;
const COMPOSITE_M2_S2: f64 = 70e9 / 1550.0;
/// What is not known of a shaft model's stiffness: of its level and of its tilt toward the tip, as standard deviations of its
/// logarithm. A table, a steel tube, a tube of fibres. Judgements, no source; the shop's readings narrow them.
const TABLE_SD: (f64, f64) = (0.05, 0.06);
const STEEL_SD: (f64, f64) = (0.15, 0.20);
const COMPOSITE_SD: (f64, f64) = (0.30, 0.30);
/// What neither level nor tilt follows at one place of a single shaft, a logarithm: of a table, a steel tube, a tube of fibres
/// (judgements, no source). It matters where a shaft was read at several clamp lengths.
const SHAPE_SD: (f64, f64, f64) = (0.04, 0.08, 0.12);
/// Pieces that a shaft is divided into, how far they keep from the rows of a table, and those from the ends of the shaft, mm.
const PIECES: usize = 8;
const APART_MM: f64 = 10.0;
const CLOSE_MM: f64 = 0.5;

/// The raw shaft of a club.
#[derive(Debug, Clone)]
pub(crate) struct RawShaft {
    rows: Vec<LineRow>,
    pub length_mm: f64,
    pub from: StiffnessFrom,
    /// Standard deviations of the model's level and tilt, as logarithms.
    pub level_sd: f64,
    pub tilt_sd: f64,
    /// Of its deviation from both at one place.
    pub shape_sd: f64,
    /// The line that its own readings told, each place from the butt, mm; none where it was not read or was cut since.
    own: Option<Vec<(f64, f64)>>,
}

/// One shaft in hand.
#[derive(Debug, Clone, Copy)]
pub(crate) struct InHand<'a> {
    /// Its blank, by its model.
    pub blank: &'a ShaftBlank,
    pub mass_g: f64,
    pub length_mm: f64,
    /// Balance point from its butt, mm; none where its model's is taken.
    pub balance_mm: Option<f64>,
    /// What had been cut off its tip, mm.
    pub tip_lost_mm: f64,
    pub profile: Option<&'a ShaftProfile>,
}

impl RawShaft {
    /// Of a shaft of this model.
    pub(crate) fn of(model: &ShaftModel, shaft: InHand<'_>) -> Self {
        let InHand { blank, length_mm, tip_lost_mm, .. } = shaft;
        let balance_mm = shaft.balance_mm.unwrap_or(blank.balance_point_mm * length_mm / blank.length_mm);
        let own = |x_mm: f64| density_g_m(shaft.mass_g, length_mm, balance_mm, x_mm);
        let (from, (level_sd, tilt_sd), shape_sd) = match (model.stiffness.is_empty(), model.material) {
            (false, _) => {
                let stated = model.stiffness_sd_percent.map(|percent| percent / 100.0);
                let sds = (stated.unwrap_or(TABLE_SD.0), stated.map_or(TABLE_SD.1, |sd| sd.max(0.02)));
                (StiffnessFrom::Table, sds, SHAPE_SD.0)
            }
            (true, ShaftMaterial::Steel) => (StiffnessFrom::Tube, STEEL_SD, SHAPE_SD.1),
            (true, ShaftMaterial::Composite) => (StiffnessFrom::Tube, COMPOSITE_SD, SHAPE_SD.2),
        };
        let tip_end_mm = length_mm + tip_lost_mm;
        let stiffness = |x_mm: f64| match from {
            StiffnessFrom::Table | StiffnessFrom::Profile => of_table(model, tip_end_mm - x_mm),
            StiffnessFrom::Tube => of_tube(model, blank, x_mm / tip_end_mm),
        };
        // Rows of a table, and even pieces between them: a tilt bends what is straight over a long stretch.
        let mut places: Vec<f64> = model.stiffness.iter().map(|row| tip_end_mm - row.from_tip_mm).collect();
        let even = (1..PIECES).map(|i| length_mm * i as f64 / PIECES as f64);
        let apart: Vec<f64> = even.filter(|x| places.iter().all(|row| (row - x).abs() > APART_MM)).collect();
        places.extend(apart);
        places.retain(|x| *x > CLOSE_MM && *x < length_mm - CLOSE_MM);
        places.sort_by(f64::total_cmp);
        places.insert(0, 0.0);
        places.push(length_mm);
        let row = |x: f64| LineRow { position_mm: x, stiffness_n_m2: stiffness(x), mass_g_m: own(x) };
        let read = shaft.profile.filter(|profile| !profile.rows.is_empty() && profile.is_of(length_mm, tip_lost_mm));
        let at = |row: &ProfileRow| (tip_end_mm - row.from_tip_mm, row.stiffness_n_m2);
        Self {
            rows: places.into_iter().map(row).collect(),
            length_mm,
            from: if read.is_some() { StiffnessFrom::Profile } else { from },
            level_sd,
            tilt_sd,
            shape_sd,
            own: read.map(|profile| profile.rows.iter().map(at).collect()),
        }
    }

    /// What the model says along it, from the butt.
    pub(crate) fn rows(&self) -> &[LineRow] {
        &self.rows
    }

    /// How its own readings deviate from what is expected of its model, by level and tilt; none where it was not read.
    pub(super) fn measured(&self, known: &Known<'_>, keys: &[(String, f64)]) -> Option<Deviation> {
        let own = self.own.as_ref()?;
        let (level, tilt) = (known.mean(&keys[0].0), known.mean(&keys[1].0));
        let places_mm = ProfilePrior::places_mm(self.length_mm);
        let ln_ratio = places_mm.iter().map(|x| {
            let model = between(self.rows.iter().map(|row| (row.position_mm, row.stiffness_n_m2)), *x);
            let read = between(own.iter().copied(), *x);
            (read / model).ln() - level - tilt * (2.0 * x / self.length_mm - 1.0)
        });
        Some(Deviation { ln_ratio: ln_ratio.collect(), places_mm })
    }

    /// The line with this tilt toward the tip, and as its own readings deviate from that.
    pub(super) fn line(&self, tilt: f64, own: Option<&Deviation>) -> Result<StiffnessLine, TradeError> {
        let mut rows = self.rows.clone();
        for row in &mut rows {
            let deviation = own.map_or(0.0, |own| own.at(row.position_mm));
            row.stiffness_n_m2 *= (tilt * (2.0 * row.position_mm / self.length_mm - 1.0) + deviation).exp();
        }
        Ok(StiffnessLine::new(&rows, MeasuredFrom::Butt, BetweenRows::Straight, self.length_mm)?)
    }

    /// Mass of the last stretch before a place, g.
    pub(super) fn mass_before_g(&self, place_mm: f64, stretch_mm: f64) -> f64 {
        let middle = place_mm - stretch_mm / 2.0;
        let at = self.rows.partition_point(|row| row.position_mm < middle).clamp(1, self.rows.len() - 1);
        let (a, b) = (&self.rows[at - 1], &self.rows[at]);
        let share = (middle - a.position_mm) / (b.position_mm - a.position_mm);
        (a.mass_g_m + (b.mass_g_m - a.mass_g_m) * share) * stretch_mm / 1000.0
    }
}

/// The straight mass line of a shaft, g/m: `m/L·(1 + s·(2x/L − 1))`, `s = 6·(c/L − ½)` (derived; as in `clubphysics::trim`).
fn density_g_m(mass_g: f64, length_mm: f64, balance_mm: f64, x_mm: f64) -> f64 {
    let tilt = (6.0 * (balance_mm / length_mm - 0.5)).clamp(-0.95, 0.95);
    mass_g / length_mm * 1000.0 * (1.0 + tilt * (2.0 * x_mm / length_mm - 1.0))
}

/// Straight between points in any order of direction, level beyond them.
fn between(points: impl Iterator<Item = (f64, f64)>, x_mm: f64) -> f64 {
    let mut points: Vec<(f64, f64)> = points.collect();
    points.sort_by(|a, b| a.0.total_cmp(&b.0));
    let at = points.partition_point(|(place, _)| *place < x_mm).clamp(1, points.len().max(2) - 1);
    match (points.get(at - 1), points.get(at)) {
        (Some(a), Some(b)) if b.0 > a.0 => a.1 + (b.1 - a.1) * ((x_mm - a.0) / (b.0 - a.0)).clamp(0.0, 1.0),
        (Some(one), _) | (None, Some(one)) => one.1,
        (None, None) => 1.0,
    }
}

/// Straight between the rows of the table, even beyond them.
fn of_table(model: &ShaftModel, from_tip_mm: f64) -> f64 {
    let rows = &model.stiffness;
    let at = rows.partition_point(|row| row.from_tip_mm < from_tip_mm);
    let before = at.checked_sub(1).and_then(|i| rows.get(i));
    match (before, rows.get(at)) {
        (Some(a), Some(b)) => {
            let share = (from_tip_mm - a.from_tip_mm) / (b.from_tip_mm - a.from_tip_mm);
            a.stiffness_n_m2 + (b.stiffness_n_m2 - a.stiffness_n_m2) * share
        }
        (Some(only), None) | (None, Some(only)) => only.stiffness_n_m2,
        (None, None) => 1.0,
    }
}

/// A thin tube of diameter `D` and mass per length `m`: `EI = (E/ρ)·m·D²/8`, whatever its wall (derived: `m = ρ·π·D·t`,
/// `I = π·D³·t/8`). The diameter runs straight from butt to tip.
fn of_tube(model: &ShaftModel, blank: &ShaftBlank, share: f64) -> f64 {
    let specific = match model.material {
        ShaftMaterial::Steel => STEEL_M2_S2,
        ShaftMaterial::Composite => COMPOSITE_M2_S2,
    };
    let diameter_m = (model.butt_diameter_mm + (model.tip_diameter_mm - model.butt_diameter_mm) * share) / 1000.0;
    let mass_kg_m =
        density_g_m(blank.mass_g, blank.length_mm, blank.balance_point_mm, share * blank.length_mm) / 1000.0;
    specific * mass_kg_m * diameter_m * diameter_m / 8.0
}
