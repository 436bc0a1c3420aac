//! A club that was not built here, as far as nobody has taken it apart: models without a maker, with wide figures.
//!
//! They are in every library and in no shop's list of models: their codes hold a blank, which no model of a shop may. What
//! a reading of the club says moves its belief off these figures; what cannot be read without taking the club apart stays
//! as wide as it is here. All figures: common practice, from memory, no source, and wide for it.

use crate::adhesive::{AdhesiveModel, CurePoint};
use crate::grip::{GripModel, GripShape};
use crate::head::{ChartEntry, HeadModel, HeadNumber};
use crate::kind::{ClubKind, Hand, LengthTo, closed_list};
use crate::model::Model;
use crate::shaft::{ShaftBlank, ShaftMaterial, ShaftModel, TipShape};
use crate::tape::TapeModel;
use quantity::INCH_MM;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::sync::LazyLock;
use utoipa::ToSchema;

closed_list! {
    /// What a head is made of, as far as it limits bending.
    HeadMaterial {
        /// Nobody knows.
        Unknown = "unknown";
        /// Forged of carbon steel.
        Forged = "forged";
        /// Cast of stainless steel.
        Cast = "cast";
        /// Titanium, zinc, or anything else that breaks before it bends.
        Brittle = "brittle";
    }
}

impl HeadMaterial {
    /// How far loft or lie is bent where the maker says nothing, degrees: castings 1°, forgings 2°, others not at all. The low
    /// end of common practice; the maker's sheet always goes before it.
    #[must_use]
    pub const fn bend_limit_deg(self) -> f64 {
        match self {
            Self::Forged => 2.0,
            Self::Cast | Self::Unknown => 1.0,
            Self::Brittle => 0.0,
        }
    }
}

/// Code of the grip that a club came with.
pub const GRIP: &str = "as it came: grip";
/// Code of the tape under it.
pub const TAPE: &str = "as it came: tape";
/// Code of what holds its joint together: adhesive and ferrule, as one.
pub const JOINT: &str = "as it came: joint";
/// Standard deviation of a head's mass by its number alone, g.
pub const HEAD_SD_G: f64 = 9.0;
/// Of a shaft's mass, with steel or composite not known, g.
pub const SHAFT_SD_G: f64 = 20.0;
/// Of a shaft's balance point, mm.
pub const SHAFT_CENTRE_SD_MM: f64 = 22.0;
/// Of a grip's mass, g.
pub const GRIP_SD_G: f64 = 7.0;
/// Of a grip's centre, mm.
pub const GRIP_CENTRE_SD_MM: f64 = 9.0;
/// Of a cap's thickness, mm.
pub const CAP_SD_MM: f64 = 0.8;
/// Of the mass of tape, as a share of one layer's.
pub const TAPE_SHARE_SD: f64 = 0.8;
/// Of the length, where it was not measured, mm.
pub const LENGTH_SD_MM: f64 = 12.0;
/// From the bottom of the tip to the ground, mm.
pub const TIP_TO_GROUND_MM: f64 = 30.0;
/// What holds a joint together and how well that is known, g: adhesive of 1 to 3 g and a ferrule of 1 to 2 g.
const JOINT_G: (f64, f64) = (3.5, 1.0);
/// What may be in the tip of a shaft that nobody has looked into, and how well that is known, g: nothing in most, up to 9 g in
/// some. It is no part of the joint: a head that is pulled and glued again leaves it where it is.
pub const HIDDEN_TIP_G: (f64, f64) = (0.7, 2.2);
/// How far up in the tip its middle sits, mm.
pub const HIDDEN_TIP_UP_MM: f64 = 10.0;

/// How much wider a bore is than the tip that it is made for, mm (common practice, no source).
pub const BORE_OVER_TIP_MM: f64 = 0.1;

/// The tips that heads of a kind are usually made for, mm, the thinnest first: irons 0.355 in taper and 0.370 in parallel,
/// woods 0.335 and 0.350 in (several published lists agree); hybrids are made for either; empty where any may be (putters).
#[must_use]
pub fn usual_tips_mm(kind: ClubKind) -> Vec<f64> {
    let of = |inches: &[f64]| inches.iter().map(|d| d * INCH_MM).collect();
    match kind {
        ClubKind::Iron | ClubKind::Wedge => of(&[0.355, 0.370]),
        ClubKind::Wood => of(&[0.335, 0.350]),
        ClubKind::Hybrid => of(&[0.335, 0.350, 0.370]),
        ClubKind::Putter => Vec::new(),
    }
}

/// Code of the head that a club came with.
#[must_use]
pub fn head_code(kind: ClubKind, material: HeadMaterial) -> String {
    format!("as it came: {} {}", kind.key(), material.key())
}

/// Code of the shaft that a club came with.
#[must_use]
pub fn shaft_code(kind: ClubKind) -> String {
    format!("as it came: shaft of {}", kind.key())
}

/// Whether a code is that of a model without a maker.
#[must_use]
pub fn is(code: &str) -> bool {
    code.starts_with("as it came: ")
}

/// What is usual for a club before anybody has measured it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Usual {
    /// Mass of the head, g.
    pub head_g: f64,
    /// Length to the cap, mm.
    pub length_mm: f64,
    /// Loft, degrees.
    pub loft_deg: f64,
    /// Lie, degrees.
    pub lie_deg: f64,
    /// Mass of the shaft as cut, g.
    pub shaft_g: f64,
}

/// What is usual for a kind and number of club: seven grams and half an inch a number.
#[must_use]
pub fn usual(kind: ClubKind, number: &str) -> Usual {
    let of = |head_g, length_in: f64, loft_deg, lie_deg, shaft_g| Usual {
        head_g,
        length_mm: length_in * INCH_MM,
        loft_deg,
        lie_deg,
        shaft_g,
    };
    let whole = || number.parse::<f64>().ok();
    match kind {
        ClubKind::Iron => {
            let n = match number.to_ascii_uppercase().as_str() {
                "P" | "PW" => 10.0,
                "A" | "G" | "U" | "AW" | "GW" => 11.0,
                "S" | "SW" => 12.5,
                "L" | "LW" => 13.0,
                _ => whole().filter(|n| (1.0..=9.0).contains(n)).unwrap_or(7.0),
            };
            of(268.0 + 7.0 * (n - 7.0), 37.0 - 0.5 * (n - 7.0), 33.0 + 4.0 * (n - 7.0), 62.5 + 0.5 * (n - 7.0), 105.0)
        }
        ClubKind::Wedge => of(298.0, 35.5, whole().filter(|n| *n > 40.0).unwrap_or(54.0), 64.0, 115.0),
        ClubKind::Wood => {
            let n = whole().filter(|n| (1.0..=9.0).contains(n)).unwrap_or(3.0);
            of(196.0 + 5.0 * n, 45.5 - 0.6 * n, 8.0 + 2.3 * n, 57.0 + 0.4 * n, 62.0)
        }
        ClubKind::Hybrid => {
            let n = whole().filter(|n| (1.0..=9.0).contains(n)).unwrap_or(4.0);
            of(232.0 + 6.0 * (n - 3.0), 40.25 - 0.5 * (n - 3.0), 19.0 + 3.0 * (n - 3.0), 58.5 + 0.5 * (n - 3.0), 80.0)
        }
        ClubKind::Putter => of(350.0, 34.0, 3.0, 71.0, 120.0),
    }
}

/// The models without a maker, by code.
static MODELS: LazyLock<BTreeMap<String, Model>> = LazyLock::new(|| {
    let heads = ClubKind::ALL
        .iter()
        .flat_map(|kind| HeadMaterial::ALL.iter().map(|material| Model::Head(head(*kind, *material))));
    let shafts = ClubKind::ALL.iter().map(|kind| Model::Shaft(shaft(*kind)));
    let others = [Model::Grip(grip()), Model::Tape(tape()), Model::Adhesive(joint())];
    heads.chain(shafts).chain(others).map(|model| (model.code().to_owned(), model)).collect()
});

/// The model without a maker that has this code.
#[must_use]
pub(crate) fn model(code: &str) -> Option<&'static Model> {
    if is(code) { MODELS.get(code) } else { None }
}

/// What a person reads for these models.
const NAME: &str = "as it came";

fn head(kind: ClubKind, material: HeadMaterial) -> HeadModel {
    let numbers: Vec<String> = match kind {
        ClubKind::Iron => {
            (1..=9).map(|n: i32| n.to_string()).chain(["P", "A", "G", "U", "S", "L"].map(str::to_owned)).collect()
        }
        ClubKind::Wedge => (44..=64).step_by(2).map(|n: i32| n.to_string()).collect(),
        ClubKind::Wood | ClubKind::Hybrid => (1..=9).map(|n: i32| n.to_string()).collect(),
        ClubKind::Putter => vec!["P".to_owned()],
    };
    let number = |number: String| {
        let usual = usual(kind, &number);
        let chart = ChartEntry { length_mm: usual.length_mm, swing_weight_points: 31.0 };
        HeadNumber {
            number,
            mass_g: usual.head_g,
            loft_deg: usual.loft_deg,
            lie_deg: usual.lie_deg,
            bounce_deg: None,
            bore_to_ground_mm: TIP_TO_GROUND_MM,
            chart,
        }
    };
    HeadModel {
        code: head_code(kind, material),
        name: NAME.to_owned(),
        label: String::new(),
        club_kind: kind,
        hand: Hand::Right,
        bore_diameter_mm: 9.4,
        bore_depth_mm: 30.0,
        offset_mm: None,
        offset_sd_mm: Some(6.0),
        bend_limit_deg: material.bend_limit_deg(),
        screws: Vec::new(),
        mass_sd_g: None,
        heel_radius_mm: None,
        sole_contact_mm: None,
        sole_radius_mm: None,
        takes_adapter: false,
        chart_length_to: LengthTo::Cap,
        numbers: numbers.into_iter().map(number).collect(),
    }
}

fn shaft(kind: ClubKind) -> ShaftModel {
    let usual = usual(kind, "");
    let length_mm = usual.length_mm - TIP_TO_GROUND_MM;
    ShaftModel {
        code: shaft_code(kind),
        name: NAME.to_owned(),
        label: String::new(),
        material: ShaftMaterial::Steel,
        tip: TipShape::Parallel,
        tip_diameter_mm: 9.4,
        butt_diameter_mm: 15.24,
        graphics_side: None,
        blanks: vec![ShaftBlank {
            number: None,
            mass_g: usual.shaft_g,
            length_mm,
            balance_point_mm: length_mm * SHAFT_BALANCE_SHARE,
        }],
        tip_trim: Vec::new(),
        mass_sd_g: SHAFT_SD_G,
        stiffness: Vec::new(),
        stiffness_sd_percent: None,
        neighbour_blanks: 0,
    }
}

/// Where a cut shaft balances, as a share of its length from the butt.
pub const SHAFT_BALANCE_SHARE: f64 = 0.49;

fn grip() -> GripModel {
    GripModel {
        code: GRIP.to_owned(),
        name: NAME.to_owned(),
        label: String::new(),
        mass_g: 50.0,
        mass_sd_g: GRIP_SD_G,
        core_diameter_mm: 15.24,
        length_mm: 267.0,
        centre_mm: 108.0,
        cap_mm: 3.2,
        widest_mm: None,
        upper_mm: None,
        lower_mm: None,
        shape: GripShape::Round,
    }
}

fn tape() -> TapeModel {
    TapeModel {
        code: TAPE.to_owned(),
        name: NAME.to_owned(),
        label: String::new(),
        mass_per_area_g_per_m2: 160.0,
        thickness_mm: 0.18,
        width_mm: 50.0,
    }
}

fn joint() -> AdhesiveModel {
    AdhesiveModel {
        code: JOINT.to_owned(),
        name: NAME.to_owned(),
        label: String::new(),
        resin_per_hardener_by_mass: 1.0,
        resin_per_hardener_by_volume: 1.0,
        resin_density_g_per_ml: 1.1,
        hardener_density_g_per_ml: 1.1,
        pot_life_min: 30.0,
        pot_life_at_c: 20.0,
        pot_life_mass_g: 20.0,
        handling: vec![CurePoint { hours: 24.0, at_c: 20.0 }],
        full_cure: vec![CurePoint { hours: 48.0, at_c: 20.0 }],
        joint_mass_g: JOINT_G.0,
        joint_mass_sd_g: JOINT_G.1,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::Library;

    #[test]
    fn every_library_has_them_and_none_lists_them() {
        let library = Library::default();
        for kind in ClubKind::ALL {
            for material in HeadMaterial::ALL {
                let head = library.head(&head_code(*kind, *material)).unwrap();
                assert_eq!(head.bend_limit_deg, material.bend_limit_deg());
                assert!(library.head_number(&head.code, "no such number").is_ok());
            }
            assert!(library.shaft(&shaft_code(*kind)).is_ok());
        }
        assert!(library.grip(GRIP).is_ok() && library.tape(TAPE).is_ok() && library.adhesive(JOINT).is_ok());
        assert_eq!(library.iter().count(), 0);
    }

    #[test]
    fn their_figures_pass_the_checks_of_models_but_for_how_wide_they_are() {
        // A shaft of which not even the material is known scatters more than any model may.
        for model in MODELS.values().filter(|model| !matches!(model, Model::Shaft(_))) {
            model.check_figures().unwrap();
        }
    }

    #[test]
    fn a_number_is_seven_grams_and_half_an_inch() {
        let (six, seven) = (usual(ClubKind::Iron, "6"), usual(ClubKind::Iron, "7"));
        assert!((seven.head_g - six.head_g - 7.0).abs() < 1e-9);
        assert!((six.length_mm - seven.length_mm - 12.7).abs() < 1e-9);
    }
}
