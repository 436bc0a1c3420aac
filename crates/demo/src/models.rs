//! Models of the invented shop.

use quantity::{INCH_MM, round_to};
use trade::adapter::{AdapterModel, AdapterSetting};
use trade::adhesive::{AdhesiveModel, CurePoint};
use trade::ferrule::FerruleModel;
use trade::grip::{GripModel, GripShape};
use trade::head::{ChartEntry, HeadModel, HeadNumber, ScrewOption};
use trade::kind::{ClubKind, Facing, Hand, LengthTo};
use trade::model::Model;
use trade::shaft::{ShaftBlank, ShaftMaterial, ShaftModel, TipShape, TipTrim};
use trade::tape::TapeModel;
use trade::tip_weight::TipWeightModel;

/// Tip and bore of parallel iron shafts, 0.370 in, of taper ones, 0.355 in, and of woods, 0.335 in (published sizes).
const PARALLEL_MM: f64 = 9.40;
const TAPER_MM: f64 = 9.02;
const WOOD_MM: f64 = 8.51;
/// Butt of most shafts, 0.600 in.
const BUTT_MM: f64 = 15.24;

/// The tray's weights, g.
pub(super) const TRAY_G: [u8; 8] = [2, 3, 4, 5, 6, 7, 8, 9];
/// Numbers of the iron models.
pub(super) const IRONS: [&str; 8] = ["4", "5", "6", "7", "8", "9", "P", "G"];
/// Numbers of the wedge model.
pub(super) const WEDGES: [&str; 3] = ["50", "54", "58"];

/// Millimetres without the noise of binary arithmetic.
fn mm(length_in: f64) -> f64 {
    round_to(length_in * INCH_MM, 3)
}

/// All models.
#[must_use]
pub fn models() -> Vec<Model> {
    let mut all = heads();
    all.extend(shafts());
    all.extend(grips());
    all.extend(joint());
    all
}

/// Number, mass, loft, lie, bounce, bore to ground, chart length in inches, chart swing weight.
type Row = (&'static str, f64, f64, f64, Option<f64>, f64, f64, f64);

fn numbers(rows: &[Row]) -> Vec<HeadNumber> {
    rows.iter()
        .map(|&(number, mass_g, loft_deg, lie_deg, bounce_deg, bore_to_ground_mm, length_in, swing_weight_points)| {
            HeadNumber {
                number: number.into(),
                mass_g,
                loft_deg,
                lie_deg,
                bounce_deg,
                bore_to_ground_mm,
                chart: ChartEntry { length_mm: mm(length_in), swing_weight_points },
            }
        })
        .collect()
}

fn head(code: &str, name: &str, club_kind: ClubKind, bore_diameter_mm: f64, rows: &[Row]) -> HeadModel {
    HeadModel {
        code: code.into(),
        name: name.into(),
        label: String::new(),
        club_kind,
        hand: Hand::Right,
        bore_diameter_mm,
        bore_depth_mm: 32.0,
        offset_mm: None,
        offset_sd_mm: None,
        bend_limit_deg: 2.0,
        screws: vec![],
        mass_sd_g: None,
        heel_radius_mm: None,
        sole_contact_mm: None,
        sole_radius_mm: None,
        takes_adapter: false,
        chart_length_to: LengthTo::Cap,
        numbers: numbers(rows),
    }
}

fn heads() -> Vec<Model> {
    let siskin_rows: [Row; 8] = [
        ("4", 245.0, 21.0, 60.5, Some(2.0), 27.0, 38.5, 32.0),
        ("5", 251.5, 24.0, 61.0, Some(3.0), 28.0, 38.0, 32.0),
        ("6", 258.5, 27.0, 61.5, Some(4.0), 29.0, 37.5, 32.0),
        ("7", 265.5, 31.0, 62.0, Some(5.0), 30.0, 37.0, 32.0),
        ("8", 273.0, 35.0, 62.5, Some(6.0), 31.0, 36.5, 32.0),
        ("9", 280.5, 40.0, 63.0, Some(7.0), 32.0, 36.0, 32.0),
        ("P", 288.5, 45.0, 63.5, Some(8.0), 33.0, 35.5, 32.0),
        ("G", 292.0, 50.0, 63.5, Some(9.0), 33.0, 35.25, 32.0),
    ];
    let siskin = HeadModel {
        label: "forged".into(),
        bend_limit_deg: 3.0,
        ..head("SISKIN", "Siskin", ClubKind::Iron, PARALLEL_MM, &siskin_rows)
    };
    let siskin_left =
        HeadModel { code: "SISKIN-L".into(), name: "Siskin left".into(), hand: Hand::Left, ..siskin.clone() };
    let redstart = head(
        "REDSTART",
        "Redstart",
        ClubKind::Iron,
        TAPER_MM,
        &[
            ("4", 247.5, 20.0, 61.0, Some(3.0), 26.0, 38.5, 32.0),
            ("5", 254.0, 23.0, 61.5, Some(4.0), 27.0, 38.0, 32.0),
            ("6", 260.5, 26.0, 62.0, Some(5.0), 28.0, 37.5, 32.0),
            ("7", 267.5, 29.5, 62.5, Some(6.0), 29.0, 37.0, 32.0),
            ("8", 275.0, 33.5, 63.0, Some(7.0), 30.0, 36.5, 32.0),
            ("9", 283.0, 38.0, 63.5, Some(8.0), 31.0, 36.0, 32.0),
            ("P", 291.0, 43.0, 64.0, Some(9.0), 32.0, 35.5, 32.0),
            ("G", 295.0, 48.0, 64.0, Some(10.0), 32.0, 35.25, 32.0),
        ],
    );
    let whinchat = HeadModel {
        label: "forged".into(),
        bend_limit_deg: 2.0,
        ..head(
            "WHINCHAT",
            "Whinchat",
            ClubKind::Wedge,
            TAPER_MM,
            &[
                ("50", 292.0, 50.0, 64.0, Some(8.0), 33.0, 35.5, 33.0),
                ("54", 300.0, 54.0, 64.0, Some(10.0), 34.0, 35.25, 34.0),
                ("58", 306.5, 58.0, 64.0, Some(12.0), 34.0, 35.0, 35.0),
            ],
        )
    };
    let fieldfare = HeadModel {
        offset_mm: Some(-12.0),
        bend_limit_deg: 0.0,
        bore_depth_mm: 28.0,
        takes_adapter: true,
        screws: [4.0, 6.0, 8.0, 10.0].map(|g| ScrewOption { label: format!("{g}"), mass_g: g }).to_vec(),
        ..head(
            "FIELDFARE",
            "Fieldfare",
            ClubKind::Wood,
            10.4,
            &[("1", 192.0, 10.5, 58.0, None, 20.0, 45.0, 32.0), ("3", 208.0, 15.0, 57.5, None, 20.0, 43.0, 32.0)],
        )
    };
    let dotterel = HeadModel {
        bend_limit_deg: 3.0,
        bore_depth_mm: 25.0,
        ..head(
            "DOTTEREL",
            "Dotterel",
            ClubKind::Putter,
            PARALLEL_MM,
            &[("PT", 329.5, 3.0, 70.0, None, 30.0, 34.0, 36.0)],
        )
    };
    [siskin, redstart, siskin_left, whinchat, fieldfare, dotterel].into_iter().map(Model::Head).collect()
}

fn shafts() -> Vec<Model> {
    let parallel = |mass_g: f64, length_in: f64, swing_weight_share: f64| {
        let length_mm = mm(length_in);
        vec![ShaftBlank {
            number: None,
            mass_g,
            length_mm,
            balance_point_mm: round_to(length_mm * swing_weight_share, 1),
        }]
    };
    let trims = |numbers: &[&str], first_in: f64, step_in: f64| {
        let each = numbers.iter().enumerate();
        each.map(|(i, n)| TipTrim { number: (*n).into(), trim_mm: mm(first_in + step_in * i as f64) }).collect()
    };
    let base = ShaftModel {
        code: "TRAMONTANA-P".into(),
        name: "Tramontana parallel".into(),
        label: "regular".into(),
        material: ShaftMaterial::Steel,
        tip: TipShape::Parallel,
        tip_diameter_mm: PARALLEL_MM,
        butt_diameter_mm: BUTT_MM,
        graphics_side: None,
        blanks: parallel(118.0, 41.0, 0.478),
        tip_trim: trims(&IRONS, 0.5, 0.5),
        mass_sd_g: 1.2,
        stiffness: Vec::new(),
        stiffness_sd_percent: None,
        neighbour_blanks: 0,
    };
    let taper_blank = |number: &str, length_in: f64| ShaftBlank {
        number: Some(number.into()),
        mass_g: 112.0,
        length_mm: mm(length_in),
        balance_point_mm: round_to(mm(length_in) * 0.48, 1),
    };
    let irons = IRONS.iter().enumerate().map(|(i, n)| taper_blank(n, 40.0 - 0.5 * i as f64));
    let taper = ShaftModel {
        code: "LIBECCIO-T".into(),
        name: "Libeccio taper".into(),
        label: "stiff".into(),
        tip: TipShape::Taper,
        tip_diameter_mm: TAPER_MM,
        blanks: irons.chain(WEDGES.iter().map(|n| taper_blank(n, 36.5))).collect(),
        tip_trim: vec![],
        mass_sd_g: 1.0,
        neighbour_blanks: 1,
        ..base.clone()
    };
    let wood = ShaftModel {
        code: "LEVANTER-W".into(),
        name: "Levanter wood".into(),
        label: "stiff".into(),
        material: ShaftMaterial::Composite,
        tip_diameter_mm: WOOD_MM,
        butt_diameter_mm: 15.3,
        graphics_side: Some(Facing::Up),
        blanks: parallel(63.0, 46.0, 0.51),
        tip_trim: trims(&["1", "3"], 0.0, 0.5),
        mass_sd_g: 1.0,
        ..base.clone()
    };
    let putter = ShaftModel {
        code: "GREGALE-P".into(),
        name: "Gregale putter".into(),
        label: String::new(),
        butt_diameter_mm: 14.73,
        blanks: parallel(112.0, 36.0, 0.49),
        tip_trim: vec![],
        mass_sd_g: 0.8,
        ..base.clone()
    };
    [base, taper, wood, putter].into_iter().map(Model::Shaft).collect()
}

fn grips() -> Vec<Model> {
    let olivine = GripModel {
        code: "OLIVINE".into(),
        name: "Olivine".into(),
        label: "cord".into(),
        mass_g: 50.0,
        mass_sd_g: 1.0,
        core_diameter_mm: BUTT_MM,
        length_mm: 267.0,
        centre_mm: 101.0,
        cap_mm: 3.0,
        widest_mm: Some(27.5),
        upper_mm: Some(22.9),
        lower_mm: Some(19.7),
        shape: GripShape::Round,
    };
    let feldspar = GripModel {
        code: "FELDSPAR".into(),
        name: "Feldspar ribbed".into(),
        label: "soft".into(),
        mass_g: 46.5,
        cap_mm: 2.8,
        centre_mm: 99.0,
        shape: GripShape::Ribbed,
        ..olivine.clone()
    };
    let gneiss = GripModel {
        code: "GNEISS".into(),
        name: "Gneiss putter".into(),
        label: String::new(),
        mass_g: 82.0,
        mass_sd_g: 1.5,
        core_diameter_mm: 14.73,
        length_mm: 265.0,
        centre_mm: 122.0,
        cap_mm: 4.0,
        widest_mm: Some(33.0),
        upper_mm: None,
        lower_mm: None,
        shape: GripShape::FlatSided,
    };
    [olivine, feldspar, gneiss].into_iter().map(Model::Grip).collect()
}

fn joint() -> Vec<Model> {
    let weights = TRAY_G.iter().map(|&g| {
        Model::TipWeight(TipWeightModel {
            code: format!("TIP-{g}"),
            name: format!("Tip weight {g} g"),
            label: "brass".into(),
            mass_g: f64::from(g),
            tip_min_mm: 8.4,
            tip_max_mm: 9.5,
            length_mm: 6.0 + 3.0 * f64::from(g),
            flange_mm: 0.0,
        })
    });
    let ferrules = [
        ("FERRULE-370", PARALLEL_MM, 1.5, 22.0),
        ("FERRULE-355", TAPER_MM, 1.4, 22.0),
        ("FERRULE-335", WOOD_MM, 1.6, 25.0),
    ];
    let ferrules = ferrules.iter().map(|&(code, inside_diameter_mm, mass_g, length_mm)| {
        let name = format!(
            "Ferrule {} in",
            &code[8..].parse::<f64>().map_or_else(|_| String::new(), |v| format!("{:.3}", v / 1000.0))
        );
        Model::Ferrule(FerruleModel {
            code: code.into(),
            name,
            label: "black".into(),
            inside_diameter_mm,
            length_mm,
            mass_g,
        })
    });
    let adhesive = AdhesiveModel {
        code: "DOLERITE".into(),
        name: "Dolerite two-part".into(),
        label: "day cure".into(),
        resin_per_hardener_by_mass: 1.18,
        resin_per_hardener_by_volume: 1.0,
        resin_density_g_per_ml: 1.18,
        hardener_density_g_per_ml: 1.0,
        pot_life_min: 60.0,
        pot_life_at_c: 23.0,
        pot_life_mass_g: 100.0,
        handling: vec![CurePoint { hours: 6.0, at_c: 23.0 }, CurePoint { hours: 1.0, at_c: 60.0 }],
        full_cure: vec![CurePoint { hours: 24.0, at_c: 23.0 }, CurePoint { hours: 3.0, at_c: 60.0 }],
        joint_mass_g: 1.6,
        joint_mass_sd_g: 0.4,
    };
    let tape = |code: &str, name: &str, mass_per_area_g_per_m2: f64, thickness_mm: f64| {
        Model::Tape(TapeModel {
            code: code.into(),
            name: name.into(),
            label: String::new(),
            mass_per_area_g_per_m2,
            thickness_mm,
            width_mm: 50.8,
        })
    };
    let adapter = AdapterModel {
        code: "FIELDFARE-A".into(),
        name: "Fieldfare adapter".into(),
        label: String::new(),
        mass_g: 5.0,
        length_mm: 10.0,
        bore_diameter_mm: 8.55,
        fits_head_model: "FIELDFARE".into(),
        setting: "neutral".into(),
        settings: [
            ("neutral", 0.0, 0.0, 0.0),
            ("+1", 1.0, 0.5, -1.0),
            ("-1", -1.0, -0.5, 1.0),
            ("flat", 0.0, -1.5, 0.5),
        ]
        .map(|(name, loft_deg, lie_deg, face_deg)| AdapterSetting {
            name: name.into(),
            loft_deg,
            lie_deg,
            face_deg,
            length_mm: 0.0,
        })
        .to_vec(),
    };
    weights
        .chain(ferrules)
        .chain([
            Model::Adapter(adapter),
            Model::Adhesive(adhesive),
            tape("TAPE-2S", "Double-sided tape", 120.0, 0.127),
            tape("TAPE-BUILD", "Build-up tape", 110.0, 0.127),
        ])
        .collect()
}
