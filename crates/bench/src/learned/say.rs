//! What a learned value is, in a builder's words and units.

use quantity::INCH_MM;
use trade::model::Library;
use trade::scale::Scale;
use trade::shop::Shop;

/// A learned value or scatter figure in words.
#[derive(Debug, Clone, PartialEq)]
pub struct Said {
    /// What it is: "Adhesive in one joint, Dolerite".
    pub words: String,
    /// Unit in which it is shown.
    pub unit: &'static str,
    /// Factor from the figure as kept to that unit.
    pub factor: f64,
    /// The model's own figure in that unit, where the value is a deviation from one.
    pub nominal: Option<f64>,
}

fn said(words: impl Into<String>, unit: &'static str, factor: f64, nominal: Option<f64>) -> Said {
    Said { words: words.into(), unit, factor, nominal }
}

/// Says what is kept under a key.
#[must_use]
pub fn say(key: &str, library: &Library, shop: &Shop) -> Said {
    let (kind, code) = key.split_once(':').unwrap_or((key, ""));
    let scale = || [&shop.balance_scale, &shop.mass_scale].into_iter().find(|s| s.key == code);
    let scale_name = || scale().map_or_else(|| code.to_owned(), |s: &Scale| s.name.clone());
    let unit = if scale().is_none_or(|s| s.key == shop.balance_scale.key) { "points" } else { "g" };
    match kind {
        "delta" => {
            let head = library.head(code).ok();
            let name = head.map_or(code, |m| m.name.as_str());
            said(
                format!("{name}: centre of the head beyond the ground point"),
                "mm",
                INCH_MM,
                head.map(|m| m.offset_prior_mm().0),
            )
        }
        "grip_centre" => {
            let grip = library.grip(code).ok();
            let name = grip.map_or(code, |m| m.name.as_str());
            said(format!("{name}: centre of the grip from its cap"), "mm", INCH_MM, grip.map(|m| m.centre_mm))
        }
        "cap" => {
            let grip = library.grip(code).ok();
            let name = grip.map_or(code, |m| m.name.as_str());
            said(format!("{name}: thickness of the cap"), "mm", INCH_MM, grip.map(|m| m.cap_mm))
        }
        "shaft_centre" => {
            let name = library.shaft(code).map_or(code, |m| m.name.as_str());
            said(format!("{name}: balance point of the cut shaft against its mass line"), "mm", INCH_MM, None)
        }
        "shaft_cut" => {
            let name = library.shaft(code).map_or(code, |m| m.name.as_str());
            said(format!("{name}: mass of what is cut off against its mass line"), "%", 100.0, None)
        }
        "adhesive" => {
            let glue = library.adhesive(code).ok();
            let name = glue.map_or(code, |m| m.name.as_str());
            said(format!("{name}: adhesive in one joint"), "g", 1.0, glue.map(|m| m.joint_mass_g))
        }
        "tape" => {
            let name = library.tape(code).map_or(code, |m| m.name.as_str());
            said(format!("{name}: mass of the tape against its model"), "%", 100.0, None)
        }
        "solvent" => said("Solvent left in a fresh grip", "g", 1.0, Some(crate::solvent::SOLVENT_G.0)),
        "usual_offset" => said(format!("The {} reads high by", scale_name()), unit, 1.0, None),
        "noise" => said(format!("The {}, one reading to the next", scale_name()), unit, 1.0, None),
        "today" => said(format!("The {}, one day to the next", scale_name()), unit, 1.0, None),
        "hand" => said(format!("Readings by {code} against the shop's"), "times", 1.0, None),
        "adhesive.piece" => said("Adhesive, one joint to the next", "g", 1.0, None),
        "adhesive.job" => said("Adhesive, one job's mix to the next", "g", 1.0, None),
        "tape.piece" => said("Tape, one club to the next, a layer", "g", 1.0, None),
        "tape.job" => said("Tape, one job to the next", "%", 100.0, None),
        "solvent.piece" => said("Solvent, one grip to the next", "g", 1.0, None),
        "solvent.job" => said("Solvent, one job to the next", "g", 1.0, None),
        "cap.piece" => said("Caps, one grip to the next", "mm", INCH_MM, None),
        "grip_centre.piece" => said("Centres of grips, one to the next", "mm", INCH_MM, None),
        "shaft_centre.piece" => said("Balance points of shafts, one to the next", "mm", INCH_MM, None),
        _ => said(key, "", 1.0, None),
    }
}
