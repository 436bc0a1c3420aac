//! The stiffness along a shaft.

use super::{print_json, reader, say};
use crate::config::ProfileArguments;
use crate::failure::Failure;
use app::stiffness_profile::{ReadShaft, StiffnessOfShaft};
use std::fmt::Write;
use trade::stiffness_profile::StiffnessReading;
use words::{Words, text};

/// Prints how stiff a shaft is along its length, by its readings and by its model; keeps readings where that is asked.
///
/// # Errors
/// No such shaft; readings that no shaft gives; what the store says.
pub async fn profile(arguments: &ProfileArguments) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    let clamp = app.shop().await?.clamp;
    let weight_g = arguments.weight.or(clamp.test_weight_g).unwrap_or_default();
    let weight_beyond_tip_mm = arguments.beyond_tip.unwrap_or(clamp.test_weight_centre_mm);
    let one = |held_mm: f64, cpm: Option<f64>, deflection_mm: Option<f64>| StiffnessReading {
        held_mm,
        weight_g,
        weight_beyond_tip_mm,
        cpm,
        deflection_mm,
    };
    let cpm = arguments.cpm.iter().map(|(held, cpm)| one(*held, Some(*cpm), None));
    let deflection = arguments.deflection.iter().map(|(held, mm)| one(*held, None, Some(*mm)));
    let readings: Vec<StiffnessReading> = cpm.chain(deflection).collect();
    let found = if readings.is_empty() && !arguments.take_back {
        app.shaft_stiffness(&arguments.code).await?
    } else {
        let look = !(arguments.keep || arguments.take_back);
        let read = ReadShaft { readings, look, request_key: None, by: arguments.signed.by.clone() };
        app.read_shaft(&arguments.code, &read).await?
    };
    app.close().await;
    if arguments.signed.database.json { print_json(&found) } else { say(&lines(&reader(), &found)) }
}

fn lines(w: &Words, found: &StiffnessOfShaft) -> String {
    let stiffness = &found.stiffness;
    let percent = |value: f64| w.printed(&quantity::decimal(value, 1));
    let mut text = String::new();
    for row in &stiffness.rows {
        let line = text!(
            w,
            "profile-line",
            place_mm = row.from_tip_mm,
            own = format!("{:.1} N·m²", row.stiffness_n_m2),
            band = percent(row.band_percent),
            model = format!("{:.1}", row.model_n_m2),
            model_band = percent(row.model_band_percent)
        );
        // Writing to a string does not fail.
        let _ = writeln!(text, "{line}");
    }
    for line in app::stiffness_profile::said(w, found) {
        let _ = writeln!(text, "{line}");
    }
    text
}
