//! The forward calculation: what a club of known masses and arms reads, independent of the belief's code.

use super::{BORE_DEPTH, BORE_TO_GROUND, CAP, CENTRE, INCH};
use serde_json::Value;

/// What one club really is: the forward calculation. Masses in g, arms in mm from the shaft's butt end.
pub struct Truth {
    pub pieces: Vec<(&'static str, f64, f64)>,
}

impl Truth {
    /// From the plan's parts and cut, with true values of what the shop does not know: the head's centre 1.5 mm beyond
    /// the ground point, 1.9 g adhesive, 0.4 g turned off the ferrule, the grip's centre 2 mm nearer the mouth.
    pub fn of(plan: &Value) -> Self {
        let mass = |kind: &str| {
            plan["parts"]
                .as_array()
                .expect("parts")
                .iter()
                .filter(|p| p["kind"] == kind)
                .map(|p| p["mass_g"].as_f64().expect("a mass"))
                .sum::<f64>()
        };
        let cut = plan["cut_shaft_mm"].as_f64().expect("a cut");
        let ground = cut + BORE_TO_GROUND;
        // A shaft of linear density a + b·x with the raw mass and balance point, cut at the butt: integrated here.
        let (raw_mass, raw_length, raw_centre) = (mass("shaft"), 1041.4, 508.0);
        let b = 12.0 * raw_mass * (raw_centre - raw_length / 2.0) / f64::powi(raw_length, 3);
        let a = raw_mass / raw_length - b * raw_length / 2.0;
        let butt = raw_length - cut;
        let integral = |power: i32, x: f64| {
            a * x.powi(power + 1) / f64::from(power + 1) + b * x.powi(power + 2) / f64::from(power + 2)
        };
        let shaft = integral(0, raw_length) - integral(0, butt);
        let shaft_arm = (integral(1, raw_length) - integral(1, butt)) / shaft - butt;
        let strip = 267.0 - CAP - 13.0;
        let tape = strip * std::f64::consts::PI * 15.2 * 115e-6 * 2.0;
        // Weights stand on each other from the tip end up; the tray's 2 g are 10 mm long, its 4 g 14 mm.
        let (mut tip_moment, mut below) = (0.0, 0.0);
        for part in plan["parts"].as_array().expect("parts").iter().filter(|p| p["kind"] == "tip_weight") {
            let length = if part["model"] == "TW4" { 14.0 } else { 10.0 };
            tip_moment += part["mass_g"].as_f64().expect("a mass") * (cut - below - length / 2.0);
            below += length;
        }
        let tip_arm = if mass("tip_weight") > 0.0 { tip_moment / mass("tip_weight") } else { cut };
        Self {
            pieces: vec![
                ("head", mass("head"), ground + 1.5),
                ("shaft", shaft, shaft_arm),
                ("ferrule", mass("ferrule") - 0.4, cut - BORE_DEPTH - 12.5),
                ("turnings", 0.4, cut - BORE_DEPTH - 12.5),
                ("tip_weight", mass("tip_weight"), tip_arm),
                ("adhesive", 1.9, cut - BORE_DEPTH / 2.0),
                ("tape", tape, strip / 2.0),
                ("grip", mass("grip"), CENTRE - CAP - 2.0),
                ("solvent", 2.2, 267.0 / 2.0),
            ],
        }
    }

    fn on(&self, roles: &[&str]) -> impl Iterator<Item = (f64, f64)> {
        let cap = if roles.contains(&"grip") { CAP } else { 0.0 };
        self.pieces
            .iter()
            .filter(|p| roles.contains(&p.0))
            .map(move |p| (p.1, p.2 + cap))
            .collect::<Vec<_>>()
            .into_iter()
    }

    /// Points since A0 on the 14-inch fulcrum: 161 oz·in is A0, 1.75 oz·in a point, an ounce 28.349523125 g
    /// (constants of the scale, from memory; ounce: UCUM 2.2).
    pub fn points(&self, roles: &[&str]) -> f64 {
        let g_in: f64 = self.on(roles).map(|(mass, arm)| mass * (arm / INCH - 14.0)).sum();
        (g_in / 28.349_523_125 - 161.0) / 1.75
    }

    pub fn mass(&self, roles: &[&str]) -> f64 {
        self.on(roles).map(|p| p.0).sum()
    }
}

pub const DRY: [&str; 4] = ["head", "shaft", "ferrule", "turnings"];
pub const TIP: [&str; 5] = ["head", "shaft", "ferrule", "turnings", "tip_weight"];
pub const CURED: [&str; 5] = ["head", "shaft", "ferrule", "tip_weight", "adhesive"];
pub const WET: [&str; 8] = ["head", "shaft", "ferrule", "tip_weight", "adhesive", "tape", "grip", "solvent"];
pub const FINISH: [&str; 7] = ["head", "shaft", "ferrule", "tip_weight", "adhesive", "tape", "grip"];

pub fn near(name: &str, got: f64, want: f64, tolerance: f64) {
    assert!((got - want).abs() <= tolerance, "{name}: got {got}, want {want} within {tolerance}");
}
