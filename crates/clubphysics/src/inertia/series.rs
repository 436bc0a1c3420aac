//! A series of lengths, matched by swing weight or by inertia: two different laws.
//!
//! The reference club keeps its grip; every length of the series has the same model of head at the same place beyond
//! the shaft. US patent 3,698,239 (1972) is a source for sets of equal inertia.

use crate::advice::Advice;
use quantity::{FULCRUM_IN, INCH_MM, OZ_G};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::kernel::inertia;
use crate::{
    PhysicsError, check, plausible,
    real::Real,
    swing_weight,
    trim::MassLine,
    uncertainty::{Estimate, Inputs, Var, results},
};

/// Grams times square millimetres in a kg·cm².
const G_MM2_IN_KG_CM2: f64 = 1e5;

/// What happens to the shaft with length.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Hash, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum ShaftLaw {
    /// Its mass stays and its centre moves by half the change: shafts of one constant weight.
    #[default]
    Stretched,
    /// It is cut or extended at the butt: the piece's mass goes and every arm moves. The shaft's mass line is straight,
    /// by its mass, length and balance point.
    CutAtButt,
}

/// The reference club and the lengths that are to match it.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SeriesInput {
    /// Length of the reference club in millimetres, in the convention of `lengths_mm`.
    pub reference_length_mm: f64,
    /// Lengths of the series in millimetres.
    pub lengths_mm: Vec<f64>,
    /// Mass of the reference club's head in grams.
    pub head_mass_g: f64,
    /// Standard deviation of `head_mass_g`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub head_mass_g_sd: Option<f64>,
    /// Place of its centre of mass from the butt end, in millimetres.
    pub head_position_mm: f64,
    /// Standard deviation of `head_position_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub head_position_mm_sd: Option<f64>,
    /// Mass of the reference club's shaft in grams.
    pub shaft_mass_g: f64,
    /// Length of the reference club's cut shaft in millimetres.
    pub shaft_length_mm: f64,
    /// Its balance point from the butt end in millimetres.
    pub shaft_position_mm: f64,
    /// Density of the shaft at the butt in grams a metre; where left out, that of a straight mass line.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub butt_density_g_m: Option<f64>,
    /// Mass of the grip in grams.
    pub grip_mass_g: f64,
    /// Length of the grip in millimetres: it counts as an even rod.
    pub grip_length_mm: f64,
    /// Its centre from the butt end in millimetres.
    pub grip_position_mm: f64,
    /// What happens to the shaft with length.
    #[serde(default)]
    pub shaft_law: ShaftLaw,
}

/// One length of the series, with both laws side by side.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct SeriesRow {
    /// Length of this club in millimetres, from `lengths_mm`.
    pub length_mm: f64,
    /// Head mass that keeps the swing weight of the reference club, in grams.
    pub head_for_equal_swing_weight_g: f64,
    /// Standard deviation of `head_for_equal_swing_weight_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub head_for_equal_swing_weight_g_sd: Option<f64>,
    /// Inertia about the butt with that head, in kg·cm².
    pub inertia_at_equal_swing_weight_kg_cm2: f64,
    /// Standard deviation of `inertia_at_equal_swing_weight_kg_cm2`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub inertia_at_equal_swing_weight_kg_cm2_sd: Option<f64>,
    /// Head mass that keeps the inertia of the reference club about the butt, in grams.
    pub head_for_equal_inertia_g: f64,
    /// Standard deviation of `head_for_equal_inertia_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub head_for_equal_inertia_g_sd: Option<f64>,
    /// Swing weight with that head, in points above A0.
    pub points_at_equal_inertia: f64,
    /// Standard deviation of `points_at_equal_inertia`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub points_at_equal_inertia_sd: Option<f64>,
}

/// The series among the inputs.
pub(super) struct Series<'a> {
    document: &'a SeriesInput,
    head: Var,
    head_place: Var,
}

/// A club of three parts, in grams and millimetres.
#[derive(Clone, Copy)]
struct Club<T> {
    head_g: T,
    head_mm: T,
    shaft_g: f64,
    shaft_mm: f64,
    /// Inertia of the shaft about its own centre, g·mm².
    shaft_own_g_mm2: f64,
    shaft_length_mm: f64,
    grip_g: f64,
    grip_mm: f64,
    grip_length_mm: f64,
}

impl<T: Real> Club<T> {
    /// Everything but the head: moment about the fulcrum (g·mm) and inertia about the butt (g·mm²).
    fn without_head(&self) -> [f64; 2] {
        let fulcrum_mm = FULCRUM_IN * INCH_MM;
        let parts = [
            (self.shaft_g, self.shaft_mm, self.shaft_own_g_mm2),
            (self.grip_g, self.grip_mm, rod(self.grip_g, self.grip_length_mm)),
        ];
        let moment = parts.iter().map(|(mass_g, place_mm, _)| mass_g * (place_mm - fulcrum_mm)).sum();
        [moment, inertia(parts, 0.0)]
    }

    fn moment_g_mm(&self) -> T {
        self.head_g * (self.head_mm - FULCRUM_IN * INCH_MM) + self.without_head()[0]
    }

    fn inertia_g_mm2(&self) -> T {
        self.head_g * self.head_mm.squared() + self.without_head()[1]
    }
}

/// Inertia of an even rod about its middle.
fn rod(mass_g: f64, length_mm: f64) -> f64 {
    mass_g * length_mm * length_mm / 12.0
}

results! {
    /// One length: the head that has the reference's swing weight, and the one that has its inertia.
    pub(super) struct Matched {
        equal_swing_weight_g,
        /// With the head of equal swing weight.
        inertia_kg_cm2,
        equal_inertia_g,
        /// With the head of equal inertia.
        moment_oz_in,
    }
}

impl<'a> Series<'a> {
    pub fn read(document: &'a SeriesInput, inputs: &mut Inputs) -> Result<Self, PhysicsError> {
        check::enough("series.lengths_mm", document.lengths_mm.len(), 1, Advice::ListLengthsOfSet)?;
        check::positive("series.head_position_mm", document.head_position_mm, "mm")?;
        for (field, value, table) in [
            ("series.reference_length_mm", document.reference_length_mm, plausible::CLUB_LENGTH_MM),
            ("series.head_mass_g", document.head_mass_g, plausible::HEAD_MASS_G),
            ("series.head_position_mm", document.head_position_mm, plausible::CLUB_LENGTH_MM),
            ("series.shaft_length_mm", document.shaft_length_mm, plausible::SHAFT_LENGTH_MM),
            ("series.shaft_mass_g", document.shaft_mass_g, plausible::SHAFT_MASS_G),
            ("series.shaft_position_mm", document.shaft_position_mm, plausible::PLACE_MM),
            ("series.grip_mass_g", document.grip_mass_g, plausible::GRIP_MASS_G),
            ("series.grip_length_mm", document.grip_length_mm, plausible::GRIP_LENGTH_MM),
            ("series.grip_position_mm", document.grip_position_mm, plausible::GRIP_CENTRE_MM),
            ("series.butt_density_g_m", document.butt_density_g_m.unwrap_or(0.0), plausible::SHAFT_DENSITY_G_M),
        ] {
            table.check(field, value)?;
        }
        let advice = Advice::BalancePointOnShaft;
        check::below("series.shaft_position_mm", document.shaft_position_mm, document.shaft_length_mm, "mm", advice)?;
        for (i, length_mm) in document.lengths_mm.iter().enumerate() {
            plausible::CLUB_LENGTH_MM.check(&format!("series.lengths_mm[{i}]"), *length_mm)?;
        }
        if document.shaft_law == ShaftLaw::CutAtButt {
            // The cut takes from a straight mass line, which must be one.
            MassLine::straight(document.shaft_mass_g, document.shaft_length_mm, document.shaft_position_mm)
                .refuse_negative("series.shaft_position_mm", document.shaft_position_mm)?;
        }
        Ok(Self {
            document,
            head: inputs.add("series.head_mass_g", document.head_mass_g, document.head_mass_g_sd)?,
            head_place: inputs.add(
                "series.head_position_mm",
                document.head_position_mm,
                document.head_position_mm_sd,
            )?,
        })
    }

    pub fn vars(&self) -> [Var; 2] {
        [self.head, self.head_place]
    }

    /// The reference club with its shaft changed for a length.
    fn club<T: Real>(&self, head_g: T, head_place_mm: T, length_mm: f64) -> Club<T> {
        let document = self.document;
        let longer_mm = length_mm - document.reference_length_mm;
        let shaft_length_mm = document.shaft_length_mm + longer_mm;
        let (shaft_g, shaft_mm, shaft_own_g_mm2) = match document.shaft_law {
            ShaftLaw::Stretched => (
                document.shaft_mass_g,
                document.shaft_position_mm + longer_mm / 2.0,
                rod(document.shaft_mass_g, shaft_length_mm),
            ),
            ShaftLaw::CutAtButt => self.cut_shaft(longer_mm),
        };
        Club {
            head_g,
            head_mm: head_place_mm + longer_mm,
            shaft_g,
            shaft_mm,
            shaft_own_g_mm2,
            shaft_length_mm,
            grip_g: document.grip_mass_g,
            grip_mm: document.grip_position_mm,
            grip_length_mm: document.grip_length_mm,
        }
    }

    /// Mass, place and own inertia of a shaft cut (negative) or extended at the butt, all of one mass line.
    fn cut_shaft(&self, longer_mm: f64) -> (f64, f64, f64) {
        let document = self.document;
        let raw = MassLine::straight(document.shaft_mass_g, document.shaft_length_mm, document.shaft_position_mm);
        let [raw_g, raw_g_mm, raw_g_mm2] = raw.moments();
        let mean_g_mm = document.shaft_mass_g / document.shaft_length_mm;
        let tilt = 6.0 * (document.shaft_position_mm / document.shaft_length_mm - 0.5);
        // Straight mass line between the old butt end and the new one, carried on where the shaft is extended.
        let at = |place_mm: f64| mean_g_mm * (1.0 + tilt * (2.0 * place_mm / document.shaft_length_mm - 1.0));
        let [old, new] = document.butt_density_g_m.map_or([at(0.0), at(-longer_mm)], |g_m| [g_m / 1000.0; 2]);
        // Mass, first and second moment about the new butt end; a piece cut off has a negative length.
        let mass_g = raw_g + longer_mm * f64::midpoint(old, new);
        let first_g_mm = raw_g_mm + raw_g * longer_mm + longer_mm.powi(2) * (new + 2.0 * old) / 6.0;
        let second_g_mm2 = raw_g_mm2
            + 2.0 * raw_g_mm * longer_mm
            + raw_g * longer_mm.powi(2)
            + longer_mm.powi(3) * (new + 3.0 * old) / 12.0;
        let place_mm = first_g_mm / mass_g;
        (mass_g, place_mm, second_g_mm2 - first_g_mm * place_mm)
    }

    /// What each length of the series asks of its head.
    pub fn results<T: Real>(&self, head_g: T, head_place_mm: T) -> Result<Vec<Matched<T>>, PhysicsError> {
        let reference = self.club(head_g, head_place_mm, self.document.reference_length_mm);
        let mut results = Vec::with_capacity(self.document.lengths_mm.len());
        for (i, length_mm) in self.document.lengths_mm.iter().enumerate() {
            let club = self.club(head_g, head_place_mm, *length_mm);
            let advice = Advice::LengthLeavesNoShaft;
            let field = format!("series.lengths_mm[{i}]");
            let shortest_mm = length_mm - club.shaft_length_mm.min(club.head_mm.value() - FULCRUM_IN * INCH_MM);
            check::above(&field, *length_mm, shortest_mm, "mm", advice)?;
            let [moment_g_mm, own_g_mm2] = club.without_head();
            let arm_mm = club.head_mm - FULCRUM_IN * INCH_MM;
            let equal_swing_weight_g = (reference.moment_g_mm() - moment_g_mm) / arm_mm;
            let equal_inertia_g = (reference.inertia_g_mm2() - own_g_mm2) / club.head_mm.squared();
            let by_swing_weight = Club { head_g: equal_swing_weight_g, ..club };
            let by_inertia = Club { head_g: equal_inertia_g, ..club };
            results.push(Matched {
                equal_swing_weight_g,
                inertia_kg_cm2: by_swing_weight.inertia_g_mm2() / G_MM2_IN_KG_CM2,
                equal_inertia_g,
                moment_oz_in: by_inertia.moment_g_mm() / (INCH_MM * OZ_G),
            });
        }
        Ok(results)
    }

    pub fn rows(&self, matched: &[Matched<Estimate>]) -> Vec<SeriesRow> {
        let points_oz_in = 1.0 / (swing_weight::points_from_oz_in(1.0) - swing_weight::points_from_oz_in(0.0));
        let row = |(length_mm, head): (&f64, &Matched<Estimate>)| SeriesRow {
            length_mm: *length_mm,
            head_for_equal_swing_weight_g: head.equal_swing_weight_g.value,
            head_for_equal_swing_weight_g_sd: head.equal_swing_weight_g.sd,
            inertia_at_equal_swing_weight_kg_cm2: head.inertia_kg_cm2.value,
            inertia_at_equal_swing_weight_kg_cm2_sd: head.inertia_kg_cm2.sd,
            head_for_equal_inertia_g: head.equal_inertia_g.value,
            head_for_equal_inertia_g_sd: head.equal_inertia_g.sd,
            points_at_equal_inertia: swing_weight::points_from_oz_in(head.moment_oz_in.value),
            // Points and ounce inches differ by where they count from and by a factor.
            points_at_equal_inertia_sd: head.moment_oz_in.sd.map(|sd| sd / points_oz_in),
        };
        self.document.lengths_mm.iter().zip(matched).map(row).collect()
    }
}
