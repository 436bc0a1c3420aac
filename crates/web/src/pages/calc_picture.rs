//! From a calculation's documents to its picture.

use clubphysics::glue::{SheetPoint, time_at};
use clubphysics::{soft_side, vibration};
use look::calc_pictures::{
    self as pictures, AimView, AroundView, BendView, CureLine, CureView, FinishView, GripPlace, GripView, JointView,
    LieView, ModesView, PivotPart, PivotView, PlaneView, RecordingView, SeriesView, ShaftView,
};
use look::{BeamPiece, BeamView, PieceKind, beam};
use maud::{Markup, html};
use quantity::{FULCRUM_IN, INCH_MM, POINT_G_IN};
use serde::de::DeserializeOwned;
use serde_json::Value;
use words::{Words, text};

/// The pictures of a result; none where what was asked cannot be drawn.
pub(super) fn pictures(w: &Words, topic: &str, input: &Value, output: &Value) -> Vec<Markup> {
    match topic {
        "swing-weight" => swing_weight(w, input, output).into_iter().collect(),
        "inertia" => inertia(w, input, output),
        "trim" => trim(w, input, output).into_iter().collect(),
        "frequency" => frequency(w, input, output).into_iter().collect(),
        "soft-side" => soft(w, input, output).into_iter().collect(),
        "pluck" => pluck(w, input, output).into_iter().collect(),
        "grip-size" => grip(w, input, output).into_iter().collect(),
        "lie" => lie(w, input, output),
        "glue" => glue(w, input, output),
        _ => Vec::new(),
    }
}

/// A figure of a document, nothing where it is left out.
fn figure(value: &Value, key: &str) -> f64 {
    value[key].as_f64().unwrap_or(0.0)
}

fn rows(value: &Value) -> impl Iterator<Item = &Value> {
    value.as_array().into_iter().flatten()
}

/// The document as the topic reads it.
fn read<T: DeserializeOwned>(input: &Value) -> Option<T> {
    serde_json::from_value(input.clone()).ok()
}

/// The parts of a swing weight hung on the beam; nothing where the club was given whole.
fn swing_weight(w: &Words, input: &Value, output: &Value) -> Option<Markup> {
    let fulcrum_in = input["fulcrum_in"].as_f64().unwrap_or(FULCRUM_IN);
    let piece = |row: &Value, on: bool| {
        let (mass_g, arm_in) = (row["mass_g"].as_f64()?, row["position_mm"].as_f64()? / INCH_MM);
        let label = row["name"]
            .as_str()
            .filter(|name| !name.is_empty())
            .map_or_else(|| w.text("picture-calc-one-part"), str::to_owned);
        let kind = kind_of(&label);
        Some(BeamPiece { points: mass_g * (arm_in - fulcrum_in) / POINT_G_IN, label, mass_g, arm_in, on, kind })
    };
    let mut pieces: Vec<BeamPiece> = rows(&input["parts"]).filter_map(|row| piece(row, true)).collect();
    if pieces.is_empty() {
        let whole = serde_json::json!({ "name": w.text("picture-calc-whole"), "mass_g": input["total_mass_g"], "position_mm": input["balance_point_mm"] });
        pieces.extend(piece(&whole, true));
    }
    pieces.extend(rows(&input["what_if"]["add"]).filter_map(|row| piece(row, false)));
    let farthest_in = pieces.iter().map(|p| p.arm_in).fold(20.0, f64::max);
    let view = BeamView {
        club: w.text("picture-calc-club"),
        length_in: farthest_in,
        fulcrum_in,
        now_points: output["points"].as_f64(),
        forecast_points: output["what_if"]["points"].as_f64(),
        pieces,
        ..BeamView::default()
    };
    (!view.pieces.is_empty()).then(|| beam(w, &view))
}

/// What a part is, by its name.
fn kind_of(name: &str) -> PieceKind {
    let name = name.to_lowercase();
    [
        ("head", PieceKind::Head),
        ("shaft", PieceKind::Shaft),
        ("grip", PieceKind::Grip),
        ("tape", PieceKind::Tape),
        ("ferrule", PieceKind::Ferrule),
        ("weight", PieceKind::TipWeight),
        ("adapter", PieceKind::Adapter),
        ("glue", PieceKind::Adhesive),
    ]
    .into_iter()
    .find(|(word, _)| name.contains(word))
    .map_or(PieceKind::Other, |(_, kind)| kind)
}

fn inertia(w: &Words, input: &Value, output: &Value) -> Vec<Markup> {
    const G_MM2_IN_KG_CM2: f64 = 1e5;
    let mut found = Vec::new();
    let axis_mm = figure(input, "axis_mm");
    let part = |(row, at): (&Value, usize)| {
        let (mass_g, position_mm, length_mm) =
            (figure(row, "mass_g"), figure(row, "position_mm"), figure(row, "length_mm"));
        let own = figure(row, "own_inertia_kg_cm2") + mass_g * length_mm * length_mm / 12.0 / G_MM2_IN_KG_CM2;
        let name = row["name"].as_str().filter(|name| !name.is_empty());
        PivotPart {
            name: name.map_or_else(|| text!(w, "picture-calc-part", at = at), str::to_owned),
            mass_g,
            position_mm,
            inertia_kg_cm2: own + mass_g * (position_mm - axis_mm).powi(2) / G_MM2_IN_KG_CM2,
        }
    };
    let parts: Vec<PivotPart> = rows(&input["parts"]).zip(1..).map(part).collect();
    if !parts.is_empty() {
        found.push(pictures::pivot(
            w,
            &PivotView {
                parts,
                pivot_mm: axis_mm,
                balance_mm: figure(output, "balance_point_mm"),
                inertia_kg_cm2: figure(output, "inertia_about_axis_kg_cm2"),
                mass_g: figure(output, "total_mass_g"),
            },
        ));
    } else if input["pendulum"].is_object() {
        let pendulum = &input["pendulum"];
        found.push(pictures::pivot(
            w,
            &PivotView {
                parts: Vec::new(),
                pivot_mm: figure(pendulum, "pivot_mm"),
                balance_mm: figure(pendulum, "balance_point_mm"),
                inertia_kg_cm2: figure(&output["pendulum"], "inertia_about_pivot_kg_cm2"),
                mass_g: figure(pendulum, "total_mass_g"),
            },
        ));
    }
    let row = |row: &Value| {
        (
            figure(row, "length_mm"),
            figure(row, "head_for_equal_swing_weight_g"),
            figure(row, "head_for_equal_inertia_g"),
        )
    };
    let series: Vec<_> = rows(&output["series"]).map(row).collect();
    if series.len() > 1 {
        let reference_mm = figure(&input["series"], "reference_length_mm");
        found.push(pictures::series(w, &SeriesView { rows: series, reference_mm }));
    }
    found
}

fn trim(w: &Words, input: &Value, output: &Value) -> Option<Markup> {
    let finish = output["finished"].is_object().then(|| FinishView {
        cap_mm: figure(&input["finished"], "cap_mm"),
        insertion_mm: output["finished"]["insertion_mm"].as_f64(),
        off_bottom_mm: figure(&input["finished"], "off_bottom_mm"),
        bore_to_ground_mm: figure(&input["finished"], "bore_to_ground_mm"),
        to_shaft_end_mm: figure(&output["finished"], "to_shaft_end_mm"),
        to_cap_mm: figure(&output["finished"], "to_cap_mm"),
        asked_to_cap: input["finished"]["convention"] == "to_cap",
    });
    let density = rows(&output["raw_mass_line"]).flat_map(|piece| {
        [("from_mm", "from_g_m"), ("to_mm", "to_g_m")].map(|(at, g_m)| (figure(piece, at), figure(piece, g_m)))
    });
    Some(pictures::shaft(
        w,
        &ShaftView {
            cut_mm: output["length_mm"].as_f64()?,
            butt_trim_mm: figure(&output["butt_piece"], "length_mm"),
            tip_trim_mm: figure(&output["tip_piece"], "length_mm"),
            balance_mm: figure(output, "balance_point_mm"),
            mass_g: figure(output, "mass_g"),
            finish,
            density: density.collect(),
        },
    ))
}

fn frequency(w: &Words, input: &Value, output: &Value) -> Option<Markup> {
    let read: vibration::FrequencyInput = read(input)?;
    let shapes = vibration::shapes(&read).ok()?;
    let cpm = rows(&output["frequencies_cpm"]).filter_map(Value::as_f64);
    Some(pictures::modes(
        w,
        &ModesView {
            modes: cpm.zip(shapes.modes).collect(),
            bent: shapes.bent_mm,
            load_n: read.tip_load_n,
            head: read.tip_body.mass_g > 0.0,
        },
    ))
}

fn soft(w: &Words, input: &Value, output: &Value) -> Option<Markup> {
    let read: soft_side::SoftSideInput = read(input)?;
    let around = soft_side::around(&read).ok()?;
    let (values, what) = match (&read.forces_n, &read.deflections_mm, &read.frequencies_cpm) {
        (Some(values), ..) => (values, "picture-calc-force"),
        (None, Some(values), _) => (values, "picture-calc-deflection"),
        (None, None, values) => (values.as_ref()?, "picture-calc-frequency"),
    };
    let is_length = what == "picture-calc-deflection";
    let unit = if is_length { quantity::Length::from_mm(1.0).in_unit(w.units.length) } else { 1.0 };
    Some(pictures::around(
        w,
        &AroundView {
            readings: read.angles_deg.iter().copied().zip(values.iter().map(|v| v * unit)).collect(),
            fitted: around.fitted.into_iter().map(|(angle, v)| (angle, v * unit)).collect(),
            quantity: w.text_with(what, &[("unit", words::figure(w.length_sign()))]),
            soft_deg: output["soft_direction_deg"].as_f64(),
            bow: output["bow_direction_deg"].as_f64().zip(output["bow_mm"].as_f64()),
            mark_deg: output["mark_deg"].as_f64(),
            resting_deg: around.resting_deg,
        },
    ))
}

fn pluck(w: &Words, input: &Value, output: &Value) -> Option<Markup> {
    let plane = |key: &str| {
        let plane = &output["planes"][key];
        Some(PlaneView { direction_deg: plane["direction_deg"].as_f64()?, cpm: plane["frequency_cpm"].as_f64()? })
    };
    let axes = ["axis_1", "axis_2"].into_iter().filter_map(|key| read(&input[key])).collect();
    Some(pictures::recording(
        w,
        &RecordingView {
            step_s: 1.0 / input["sample_rate_hz"].as_f64()?,
            used_s: (figure(output, "used_from_s"), figure(output, "used_to_s")),
            cpm: figure(output, "frequency_cpm"),
            amplitude: figure(output, "amplitude"),
            decay_per_s: figure(output, "decay_per_s"),
            planes: plane("soft").zip(plane("stiff")).map(|(soft, stiff)| [soft, stiff]),
            axes,
        },
    ))
}

fn grip(w: &Words, input: &Value, output: &Value) -> Option<Markup> {
    let nominal = |at: usize| input["stations"][at]["nominal_in"].as_f64();
    let place = |(row, at): (&Value, usize)| GripPlace {
        below_cap_in: figure(row, "below_cap_in"),
        // The men's size, which the topic takes where no place is named.
        nominal_in: nominal(at).unwrap_or(0.900),
        diameter_in: figure(row, "diameter_in"),
        diameter_in_sd: row["diameter_in_sd"].as_f64(),
        kept_in: figure(row, "diameter_of_kept_volume_in"),
    };
    let places: Vec<GripPlace> = rows(&output["stations"]).zip(0..).map(place).collect();
    let tape = &input["tape"];
    let laid = figure(tape, "layers") > 0.0;
    let tape_to_in = laid.then(|| tape["length_in"].as_f64().unwrap_or(10.0) + figure(tape, "cap_in"));
    (!places.is_empty())
        .then(|| pictures::grip(w, &GripView { places, wanted_in: input["wanted_in"].as_f64(), tape_to_in }))
}

fn lie(w: &Words, input: &Value, output: &Value) -> Vec<Markup> {
    let mut found = Vec::new();
    if output["length"].is_object() {
        let asked = &input["length"];
        found.push(pictures::lie(
            w,
            &LieView {
                before: (figure(asked, "length_mm"), figure(asked, "lie_deg")),
                after: (figure(asked, "new_length_mm"), figure(&output["length"], "lie_deg")),
                hands_mm: figure(asked, "hands_below_butt_mm"),
            },
        ));
    }
    if output["aim"].is_object() {
        found.push(pictures::aim(
            w,
            &AimView {
                lie_error_deg: figure(&input["aim"], "lie_error_deg"),
                aim_deg: figure(&output["aim"], "aim_error_deg"),
                off: input["aim"]["distance_m"].as_f64().zip(output["aim"]["offset_m"].as_f64()),
            },
        ));
    }
    if output["bend"].is_object() {
        let (asked, steps) = (&input["bend"], &output["bend"]["steps"]);
        let bent = |name: &str, angle: &str, already: &str| {
            let maker = asked[angle].as_f64()? - figure(asked, already);
            let path: Vec<f64> = rows(steps).filter_map(|step| step[angle].as_f64()).map(|deg| deg - maker).collect();
            (!path.is_empty()).then(|| (w.text(name), figure(asked, already), path))
        };
        let rows: Vec<_> = [
            bent("calc-field-lie", "lie_deg", "already_bent_lie_deg"),
            bent("calc-field-loft", "loft_deg", "already_bent_loft_deg"),
        ]
        .into_iter()
        .flatten()
        .collect();
        if !rows.is_empty() {
            found.push(pictures::bend(w, &BendView { limit_deg: figure(asked, "limit_deg"), rows }));
        }
    }
    found
}

fn glue(w: &Words, input: &Value, output: &Value) -> Vec<Markup> {
    let mut found = Vec::new();
    if output["joint"].is_object() {
        let joint = &input["joint"];
        found.push(pictures::joint(
            w,
            &JointView {
                bore_mm: figure(joint, "bore_mm"),
                tip_mm: figure(joint, "tip_mm"),
                depth_mm: figure(joint, "depth_mm"),
                bottom_gap_mm: figure(joint, "bottom_gap_mm"),
                ring_g: figure(&output["joint"], "ring_g"),
                all_told_g: figure(&output["joint"], "adhesive_a_joint_g"),
            },
        ));
    }
    let cure = &input["cure"];
    let line = |name: &str, key: &str, result: &str| {
        let point = |at: usize| Some((cure[key][at]["temperature_c"].as_f64()?, cure[key][at]["time_min"].as_f64()?));
        let (one_c, one_min) = point(0)?;
        // A sheet with one point has a line all the same: the one by which the topic calculates.
        let other = point(1).or_else(|| {
            let sheet = [SheetPoint { temperature_c: one_c, time_min: one_min }];
            time_at(key, sheet, one_c + 10.0).ok().map(|(time_min, _)| (one_c + 10.0, time_min))
        })?;
        Some(CureLine {
            name: w.text(name),
            sheet: [(one_c, one_min), other],
            one_point: point(1).is_none(),
            here_min: output["cure"][result].as_f64()?,
            here_min_sd: output["cure"][&format!("{result}_sd")].as_f64(),
        })
    };
    let lines = [
        line("calc-field-pot-life", "pot_life", "pot_life_min"),
        line("calc-field-handling", "handling", "handling_min"),
        line("calc-field-full-cure", "full_cure", "full_cure_min"),
    ];
    let lines: Vec<CureLine> = lines.into_iter().flatten().collect();
    if !lines.is_empty() {
        found.push(pictures::cure(w, &CureView { here_c: figure(cure, "temperature_c"), lines }));
    }
    found
}

/// Pictures in their cards.
pub(super) fn cards(w: &Words, topic: &str, input: &Value, output: &Value) -> Markup {
    html! { div.calc-pictures { @for picture in pictures(w, topic, input, output) { div.card { (picture) } } } }
}

#[cfg(test)]
mod tests {
    use super::*;
    use clubphysics::calc::topics;
    use quantity::Units;
    use serde_json::json;

    fn w() -> Words {
        Words::english(Units::default())
    }

    fn drawn(topic: &str, input: &Value) -> Vec<String> {
        let output = clubphysics::calc::run(topic, input.clone()).unwrap_or_else(|error| panic!("{topic}: {error}"));
        pictures(&w(), topic, input, &output).into_iter().map(Markup::into_string).collect()
    }

    #[test]
    fn every_example_has_its_pictures() {
        let counts: Vec<(&str, usize)> =
            topics().iter().map(|topic| (topic.name, drawn(topic.name, &(topic.example)()).len())).collect();
        let expected = [
            ("swing-weight", 1),
            ("inertia", 2),
            ("trim", 1),
            ("frequency", 1),
            ("soft-side", 1),
            ("pluck", 1),
            ("grip-size", 1),
            ("lie", 3),
            ("glue", 2),
        ];
        assert_eq!(counts, expected);
    }

    /// Each question alone, by the other ways of asking it.
    #[test]
    fn every_way_of_asking_has_a_picture() {
        let angles: Vec<f64> = (0..12).map(|i| f64::from(i) * 30.0).collect();
        let flat = vec![250.0; 12];
        let ways = [
            ("swing-weight", json!({ "total_mass_g": 349.8, "balance_point_mm": 824.0 })),
            ("inertia", json!({ "pendulum": { "period_s": 1.88, "total_mass_g": 426.0, "balance_point_mm": 714.9 } })),
            ("trim", json!({ "mass_g": 128.0, "length_mm": 1016.0, "balance_point_mm": 500.0 })),
            ("soft-side", json!({ "angles_deg": angles, "frequencies_cpm": flat })),
            ("soft-side", json!({ "angles_deg": angles, "deflections_mm": flat, "fixed_force_n": 15.0 })),
            ("grip-size", json!({ "core_in": 0.580, "butt_diameter_in": 0.600 })),
            ("lie", json!({ "aim": { "loft_deg": 30.0, "lie_error_deg": -1.0 } })),
            ("lie", json!({ "bend": { "lie_deg": 61.0, "wanted_lie_deg": 62.0, "limit_deg": 2.0 } })),
            (
                "glue",
                json!({ "cure": { "temperature_c": 30.0, "handling": [{ "temperature_c": 25.0, "time_min": 300.0 }, { "temperature_c": 40.0, "time_min": 90.0 }] } }),
            ),
            (
                "glue",
                json!({ "cure": { "temperature_c": 30.0, "full_cure": [{ "temperature_c": 25.0, "time_min": 1440.0 }] } }),
            ),
        ];
        for (topic, input) in ways {
            let drawn = drawn(topic, &input);
            assert_eq!(drawn.len(), 1, "{topic} {input}");
            assert!(drawn[0].contains("<svg") && !drawn[0].contains("NaN"), "{topic}");
        }
    }

    /// The bars of the inertia add up to what the topic calculated.
    #[test]
    fn shares_of_the_inertia_add_up() {
        let input = json!({ "axis_mm": 30.0, "parts": [
            { "name": "head", "mass_g": 256.0, "position_mm": 950.0, "own_inertia_kg_cm2": 3.0 },
            { "mass_g": 120.0, "position_mm": 467.5, "length_mm": 935.0 }
        ] });
        let text = &drawn("inertia", &input)[0];
        let words =
            text.split("of which ").nth(1).and_then(|rest| rest.split('.').next().map(|_| rest)).expect("shares");
        let percent: f64 =
            words.split(" %").take(2).map(|s| s.rsplit(' ').next().unwrap().parse::<f64>().unwrap()).sum();
        assert!((percent - 100.0).abs() < 0.11, "{percent}");
        assert!(text.contains("part 2"), "a part without a name is counted");
    }

    #[test]
    fn bending_that_is_left_counts_what_was_bent_before() {
        let input = json!({ "bend": { "lie_deg": 61.0, "wanted_lie_deg": 62.0, "already_bent_lie_deg": 0.5, "limit_deg": 2.0 } });
        assert!(drawn("lie", &input)[0].contains("lie from 0.50° to 1.50°"));
    }
}
