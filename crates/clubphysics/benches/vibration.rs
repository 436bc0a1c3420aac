//! How long the beam takes: first mode with 60 freedoms, the whole document.

use std::hint::black_box;

use clubphysics::vibration::{
    Beam, BetweenRows, FrequencyInput, LineRow, MeasuredFrom, RigidTip, StiffnessLine, frequency,
};
use criterion::{Criterion, criterion_group, criterion_main};

/// Rows of a plausible iron shaft from the butt: position mm, EI N·m², g/m.
const ROWS: [(f64, f64, f64); 6] = [
    (0.0, 80.0, 128.0),
    (200.0, 68.0, 124.0),
    (400.0, 55.0, 118.0),
    (600.0, 42.0, 110.0),
    (800.0, 29.0, 100.0),
    (960.0, 24.0, 95.0),
];

fn rows() -> Vec<LineRow> {
    ROWS.map(|(position_mm, stiffness_n_m2, mass_g_m)| LineRow { position_mm, stiffness_n_m2, mass_g_m }).to_vec()
}

fn beam(c: &mut Criterion) {
    let line = StiffnessLine::new(&rows(), MeasuredFrom::Butt, BetweenRows::Straight, 960.0).expect("a line");
    let tip = RigidTip { mass_kg: 0.256, offset_m: 0.012, inertia_kg_m2: 2.5e-4 };
    let built = Beam::new(&line, 0.127, 0.96, tip, 30).expect("a beam");
    assert_eq!(built.freedoms(), 60);
    c.bench_function("beam_60_freedoms_build_and_first_mode", |b| {
        b.iter(|| Beam::new(black_box(&line), 0.127, 0.96, tip, 30).and_then(|beam| beam.first_mode()));
    });
    c.bench_function("beam_60_freedoms_first_mode", |b| b.iter(|| black_box(&built).first_mode()));
    c.bench_function("beam_60_freedoms_three_modes", |b| b.iter(|| black_box(&built).modes(3)));
}

fn document(c: &mut Criterion) {
    let mut input: FrequencyInput = serde_json::from_str(
        r#"{"stiffness_line": [], "tip_body": {"mass_g": 256, "mass_g_sd": 0.5, "offset_mm": 12, "inertia_g_cm2": 2500},
            "clamp_mm_sd": 0.5, "stiffness_factor_sd": 0.02,
            "measured": {"frequency_cpm": 300, "frequency_cpm_sd": 0.5}, "what_if": [{"butt_trim_mm": 12.7}]}"#,
    )
    .expect("a document");
    input.stiffness_line = rows();
    c.bench_function("frequency_document_with_deviations", |b| b.iter(|| frequency(black_box(&input))));
    // The longest table that is taken: a row every millimetre or so, each a node of its own.
    input.stiffness_line = (0..1000)
        .map(|i| {
            let position_mm = 0.96 * f64::from(i);
            let (stiffness_n_m2, mass_g_m) = (80.0 - 0.056 * position_mm, 128.0 - 0.033 * position_mm);
            LineRow { position_mm, stiffness_n_m2, mass_g_m }
        })
        .collect();
    c.bench_function("frequency_document_of_a_thousand_rows", |b| b.iter(|| frequency(black_box(&input))));
}

criterion_group!(benches, beam, document);
criterion_main!(benches);
