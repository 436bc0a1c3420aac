//! What the makers say of the models that simulated shops build from: the library that the advice sees. Names are
//! plain words of what they are.

use trade::adhesive::{AdhesiveModel, CurePoint};
use trade::ferrule::FerruleModel;
use trade::grip::{GripModel, GripShape};
use trade::head::{ChartEntry, HeadModel, HeadNumber};
use trade::kind::{ClubKind, Hand, LengthTo};
use trade::model::{Library, Model};
use trade::shaft::{ShaftBlank, ShaftMaterial, ShaftModel, TipShape, TipTrim};
use trade::tape::TapeModel;
use trade::tip_weight::TipWeightModel;

/// The set: number and length to the cap, inches.
pub const IRONS: [(&str, f64); 8] =
    [("4", 38.5), ("5", 38.0), ("6", 37.5), ("7", 37.0), ("8", 36.5), ("9", 36.0), ("P", 35.5), ("G", 35.25)];
/// Weights of the tray, g: 1 g is not there.
pub const TRAY_G: [u8; 7] = [2, 3, 4, 5, 6, 7, 8];
/// Most grams in one tip.
pub(crate) const TIP_CAP_G: f64 = 9.0;

/// Figures of the makers that the true physics starts from too: lengths and masses that stand on the boxes.
#[derive(Debug, Clone, PartialEq)]
#[allow(missing_docs)]
pub struct Nominal {
    pub shaft_g: f64,
    pub shaft_mm: f64,
    pub shaft_centre_mm: f64,
    pub butt_mm: f64,
    pub bore_mm: f64,
    pub bore_to_ground_mm: Vec<f64>,
    pub tip_trim_mm: Vec<f64>,
    pub length_mm: Vec<f64>,
    pub ferrule_g: f64,
    pub ferrule_mm: f64,
    pub grip_g: f64,
    pub grip_mm: f64,
    pub grip_centre_mm: f64,
    pub cap_mm: f64,
    pub tape_g_m2: f64,
    pub joint_g: f64,
}

impl Default for Nominal {
    fn default() -> Self {
        let grip = crate::shop::GripTruth::nominal();
        Self {
            shaft_g: 118.0,
            shaft_mm: 41.0 * 25.4,
            shaft_centre_mm: 498.0,
            butt_mm: 15.24,
            bore_mm: 32.0,
            bore_to_ground_mm: (0..8).map(|i| 26.0 + f64::from(i)).collect(),
            tip_trim_mm: (0..8).map(|i| 12.7 * f64::from(i + 1)).collect(),
            length_mm: IRONS.iter().map(|(_, length_in)| length_in * 25.4).collect(),
            ferrule_g: 1.5,
            ferrule_mm: 22.0,
            grip_g: 50.0,
            grip_mm: 267.0,
            grip_centre_mm: grip.centre_mm,
            cap_mm: grip.cap_mm,
            tape_g_m2: 120.0,
            joint_g: crate::shop::JOINT_NOMINAL_G,
        }
    }
}

/// Length of a brass tip weight, mm: it fills the bore of the tip.
#[must_use]
pub(crate) fn tip_weight_mm(mass_g: f64) -> f64 {
    6.0 + 3.0 * mass_g
}

/// Code of the head model of this index.
#[must_use]
pub(crate) fn head_code(model: u64) -> String {
    format!("HEAD-{model}")
}

/// Code of the grip model of this index.
#[must_use]
pub(crate) fn grip_code(model: u64) -> String {
    format!("GRIP-{model}")
}

/// The library of a job: head and grip models of this index, head masses as given, grips that scatter so much.
#[must_use]
pub fn library(nominal: &Nominal, model: u64, head_masses_g: &[f64], grip_sd_g: f64) -> Library {
    let numbers = IRONS
        .iter()
        .enumerate()
        .map(|(i, (number, _))| HeadNumber {
            number: (*number).into(),
            mass_g: head_masses_g[i],
            loft_deg: 21.0 + 4.0 * i as f64,
            lie_deg: 60.5 + 0.5 * i as f64,
            bounce_deg: None,
            bore_to_ground_mm: nominal.bore_to_ground_mm[i],
            chart: ChartEntry { length_mm: nominal.length_mm[i], swing_weight_points: 32.0 },
        })
        .collect();
    let head = HeadModel {
        code: head_code(model),
        name: format!("Head {model}"),
        label: String::new(),
        club_kind: ClubKind::Iron,
        hand: Hand::Right,
        bore_diameter_mm: 9.4,
        bore_depth_mm: nominal.bore_mm,
        offset_mm: None,
        offset_sd_mm: None,
        bend_limit_deg: 2.0,
        screws: Vec::new(),
        mass_sd_g: None,
        heel_radius_mm: None,
        sole_contact_mm: None,
        sole_radius_mm: None,
        takes_adapter: false,
        chart_length_to: LengthTo::Cap,
        numbers,
    };
    let shaft = ShaftModel {
        code: "SHAFT".into(),
        name: "Shaft".into(),
        label: String::new(),
        material: ShaftMaterial::Steel,
        tip: TipShape::Parallel,
        tip_diameter_mm: 9.4,
        butt_diameter_mm: nominal.butt_mm,
        graphics_side: None,
        blanks: vec![ShaftBlank {
            number: None,
            mass_g: nominal.shaft_g,
            length_mm: nominal.shaft_mm,
            balance_point_mm: nominal.shaft_centre_mm,
        }],
        tip_trim: IRONS
            .iter()
            .zip(&nominal.tip_trim_mm)
            .map(|((number, _), &trim_mm)| TipTrim { number: (*number).into(), trim_mm })
            .collect(),
        mass_sd_g: 1.0,
        stiffness: Vec::new(),
        stiffness_sd_percent: None,
        neighbour_blanks: 0,
    };
    let grip = GripModel {
        code: grip_code(model),
        name: format!("Grip {model}"),
        label: String::new(),
        mass_g: nominal.grip_g,
        mass_sd_g: grip_sd_g,
        core_diameter_mm: nominal.butt_mm,
        length_mm: nominal.grip_mm,
        centre_mm: nominal.grip_centre_mm,
        cap_mm: nominal.cap_mm,
        widest_mm: Some(27.5),
        upper_mm: Some(23.0),
        lower_mm: Some(19.8),
        shape: GripShape::Round,
    };
    let tips = TRAY_G.iter().map(|&g| {
        Model::TipWeight(TipWeightModel {
            code: format!("TIP-{g}"),
            name: format!("Tip weight {g} g"),
            label: String::new(),
            mass_g: f64::from(g),
            tip_min_mm: 8.4,
            tip_max_mm: 9.5,
            length_mm: tip_weight_mm(f64::from(g)),
            flange_mm: 0.0,
        })
    });
    [Model::Head(head), Model::Shaft(shaft), Model::Grip(grip)]
        .into_iter()
        .chain(small_things(nominal))
        .chain(tips)
        .collect()
}

fn small_things(nominal: &Nominal) -> [Model; 3] {
    let ferrule = FerruleModel {
        code: "FERRULE".into(),
        name: "Ferrule".into(),
        label: String::new(),
        inside_diameter_mm: 9.4,
        length_mm: nominal.ferrule_mm,
        mass_g: nominal.ferrule_g,
    };
    let adhesive = AdhesiveModel {
        code: "ADHESIVE".into(),
        name: "Two-part adhesive".into(),
        label: String::new(),
        resin_per_hardener_by_mass: 1.0,
        resin_per_hardener_by_volume: 1.0,
        resin_density_g_per_ml: 1.1,
        hardener_density_g_per_ml: 1.1,
        pot_life_min: 60.0,
        pot_life_at_c: 23.0,
        pot_life_mass_g: 100.0,
        handling: vec![CurePoint { hours: 1.0, at_c: 60.0 }],
        full_cure: vec![CurePoint { hours: 24.0, at_c: 23.0 }],
        joint_mass_g: nominal.joint_g,
        // 1 to 3 g a joint, common practice: two standard deviations either way.
        joint_mass_sd_g: 0.5,
    };
    let tape = TapeModel {
        code: "TAPE".into(),
        name: "Double-sided tape".into(),
        label: String::new(),
        mass_per_area_g_per_m2: nominal.tape_g_m2,
        thickness_mm: 0.127,
        width_mm: 50.8,
    };
    [Model::Ferrule(ferrule), Model::Adhesive(adhesive), Model::Tape(tape)]
}
