//! The raw shaft of a club as a spring: what is known of its stiffness along it, before any reading.

use clubphysics::vibration::{BetweenRows, LineRow, MeasuredFrom, StiffnessLine};
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::job::JobClub;
use trade::kind::closed_list;
use trade::model::PartKind;
use trade::plan::ClubPlan;
use trade::shaft::{ShaftBlank, ShaftMaterial, ShaftModel};
use utoipa::ToSchema;

closed_list! {
    /// What the stiffness of a shaft model rests on before any of its shafts was read.
    StiffnessFrom {
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
/// Pieces that a shaft is divided into, how far they keep from the rows of a table, and those from the ends of the shaft, mm.
const PIECES: usize = 8;
const APART_MM: f64 = 10.0;
const CLOSE_MM: f64 = 0.5;

/// The raw shaft of a club.
#[derive(Debug, Clone)]
pub(super) struct RawShaft {
    rows: Vec<LineRow>,
    pub length_mm: f64,
    pub from: StiffnessFrom,
    /// Standard deviations of the model's level and tilt, as logarithms.
    pub level_sd: f64,
    pub tilt_sd: f64,
}

impl RawShaft {
    /// Of the shaft that a club's plan has; none where its model has no blank for it.
    pub(super) fn of(model: &ShaftModel, club: &JobClub, plan: &ClubPlan) -> Option<Self> {
        let part = plan.part(PartKind::Shaft)?;
        let blank = model.blank(plan.neighbour_blank.as_deref().unwrap_or(&club.target.number))?;
        let length_mm = plan.cut_shaft_mm + plan.butt_cut_mm + plan.tip_trim_mm;
        let lost_mm = part.tip_lost_mm.unwrap_or(0.0);
        let balance_mm = blank.balance_point_mm * length_mm / blank.length_mm;
        let own = |x_mm: f64| density_g_m(part.mass_g, length_mm, balance_mm, x_mm);
        let (from, (level_sd, tilt_sd)) = match (model.stiffness.is_empty(), model.material) {
            (false, _) => {
                let stated = model.stiffness_sd_percent.map(|percent| percent / 100.0);
                (StiffnessFrom::Table, (stated.unwrap_or(TABLE_SD.0), stated.map_or(TABLE_SD.1, |sd| sd.max(0.02))))
            }
            (true, ShaftMaterial::Steel) => (StiffnessFrom::Tube, STEEL_SD),
            (true, ShaftMaterial::Composite) => (StiffnessFrom::Tube, COMPOSITE_SD),
        };
        let tip_end_mm = length_mm + lost_mm;
        let stiffness = |x_mm: f64| match from {
            StiffnessFrom::Table => of_table(model, tip_end_mm - x_mm),
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
        Some(Self { rows: places.into_iter().map(row).collect(), length_mm, from, level_sd, tilt_sd })
    }

    /// The line with this tilt toward the tip.
    pub(super) fn line(&self, tilt: f64) -> Result<StiffnessLine, TradeError> {
        let mut rows = self.rows.clone();
        for row in &mut rows {
            row.stiffness_n_m2 *= (tilt * (2.0 * row.position_mm / self.length_mm - 1.0)).exp();
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
