//! Every picture keeps its promises: readable by a screen reader, no figure that is none, nothing outside its paper.

use super::*;
use quantity::Units;
use words::Words;

fn w() -> Words {
    Words::english(Units { length: quantity::LengthUnit::Millimetre, ..Units::default() })
}
use maud::Markup;

fn examples() -> Vec<(&'static str, Markup)> {
    examples_for(&w())
}

fn examples_for(w: &Words) -> Vec<(&'static str, Markup)> {
    let bent: Vec<(f64, f64)> = (0..=30).map(|i| (f64::from(i) * 28.0, (f64::from(i) / 30.0).powi(2) * 33.0)).collect();
    let wave = |phase: f64| (0..400).map(|i| (f64::from(i) * 0.7 + phase).sin()).collect::<Vec<_>>();
    let turn =
        |scale: f64| (0..=120).map(|i| (f64::from(i) * 3.0, 15.0 + scale * (f64::from(i) * 0.1).sin())).collect();
    vec![
        (
            "shaft",
            shaft(
                w,
                &ShaftView {
                    cut_mm: 929.2,
                    butt_trim_mm: 61.4,
                    tip_trim_mm: 25.4,
                    balance_mm: 457.9,
                    mass_g: 116.9,
                    finish: Some(FinishView {
                        cap_mm: 3.0,
                        insertion_mm: Some(32.0),
                        bore_to_ground_mm: 33.0,
                        to_shaft_end_mm: 962.2,
                        to_cap_mm: 965.2,
                        asked_to_cap: true,
                        ..FinishView::default()
                    }),
                    density: vec![(0.0, 131.9), (1016.0, 120.0)],
                },
            ),
        ),
        (
            "pivot",
            pivot(
                w,
                &PivotView {
                    parts: vec![
                        PivotPart { name: "head".into(), mass_g: 256.0, position_mm: 950.0, inertia_kg_cm2: 2310.0 },
                        PivotPart { name: "grip".into(), mass_g: 50.0, position_mm: 105.0, inertia_kg_cm2: 9.0 },
                    ],
                    pivot_mm: 0.0,
                    balance_mm: 812.0,
                    inertia_kg_cm2: 2319.0,
                    mass_g: 306.0,
                },
            ),
        ),
        (
            "series",
            series(w, &SeriesView { rows: vec![(975.4, 243.0, 240.8), (924.6, 270.1, 272.4)], reference_mm: 950.0 }),
        ),
        (
            "modes",
            modes(
                w,
                &ModesView {
                    modes: vec![(305.0, bent.clone()), (3972.0, bent.clone())],
                    bent,
                    load_n: 9.8,
                    head: true,
                },
            ),
        ),
        (
            "around",
            around(
                w,
                &AroundView {
                    readings: (0..12).map(|i| (f64::from(i) * 30.0, 15.0 + 0.2 * f64::from(i % 3))).collect(),
                    fitted: turn(0.2),
                    quantity: "force, N".into(),
                    soft_deg: Some(40.0),
                    bow: Some((200.0, 1.5)),
                    mark_deg: Some(220.0),
                    resting_deg: vec![41.0, 222.0],
                },
            ),
        ),
        (
            "recording",
            recording(
                w,
                &RecordingView {
                    step_s: 0.025,
                    used_s: (0.0, 9.975),
                    axes: vec![wave(0.0), wave(1.0)],
                    cpm: 267.0,
                    amplitude: 1.0,
                    decay_per_s: 0.25,
                    planes: Some([
                        PlaneView { direction_deg: 26.6, cpm: 264.0 },
                        PlaneView { direction_deg: 116.6, cpm: 270.0 },
                    ]),
                },
            ),
        ),
        (
            "grip",
            grip(
                w,
                &GripView {
                    places: vec![
                        GripPlace {
                            below_cap_in: 2.0,
                            nominal_in: 0.9,
                            diameter_in: 0.94,
                            diameter_in_sd: Some(0.001),
                            kept_in: 0.926,
                        },
                        GripPlace {
                            below_cap_in: 6.0,
                            nominal_in: 0.77,
                            diameter_in: 0.805,
                            diameter_in_sd: None,
                            kept_in: 0.795,
                        },
                    ],
                    wanted_in: Some(0.94),
                    tape_to_in: Some(9.5),
                },
            ),
        ),
        ("lie", lie(w, &LieView { before: (952.5, 60.0), after: (965.2, 58.57), hands_mm: 100.0 })),
        ("aim", aim(w, &AimView { lie_error_deg: -1.0, aim_deg: -0.6, off: Some((150.0, -1.6)) })),
        (
            "bend",
            bend(
                w,
                &BendView {
                    limit_deg: 2.0,
                    rows: vec![("lie".into(), 0.0, vec![1.0, 2.0]), ("loft".into(), 0.0, vec![-0.5, -1.0])],
                },
            ),
        ),
        (
            "joint",
            joint(
                w,
                &JointView {
                    bore_mm: 9.65,
                    tip_mm: 9.4,
                    depth_mm: 32.0,
                    bottom_gap_mm: 1.0,
                    ring_g: 0.138,
                    all_told_g: 1.638,
                },
            ),
        ),
        (
            "cure",
            cure(
                w,
                &CureView {
                    here_c: 20.0,
                    lines: vec![
                        CureLine {
                            name: "pot life".into(),
                            sheet: [(25.0, 40.0), (35.0, 20.0)],
                            one_point: false,
                            here_min: 57.6,
                            here_min_sd: Some(4.3),
                        },
                        CureLine {
                            name: "full cure".into(),
                            sheet: [(25.0, 1440.0), (60.0, 120.0)],
                            one_point: false,
                            here_min: 2155.0,
                            here_min_sd: None,
                        },
                    ],
                },
            ),
        ),
    ]
}

#[test]
fn every_drawing_has_a_title_and_a_description_and_both_papers() {
    for (name, markup) in examples() {
        let text = markup.into_string();
        assert_eq!(text.matches("role=\"img\"").count(), 2, "{name}");
        for tag in ["<title id=", "<desc id=", "aria-labelledby=", "aria-describedby="] {
            assert_eq!(text.matches(tag).count(), 2, "{name} {tag}");
        }
        assert!(text.contains("calc-wide") && text.contains("calc-narrow") && text.contains("<text"), "{name}");
        assert!(!text.contains("style=") && !text.contains("fill=\"#"), "{name} names a colour");
    }
}

/// Where every straight mark of a drawing lies: `x1`, `cx` and the like, and the first of each pair of `points`.
fn spots(svg: &str) -> Vec<f64> {
    let numbers = |key: &str| -> Vec<f64> {
        svg.split(key).skip(1).filter_map(|rest| rest.split('"').next()?.parse().ok()).collect()
    };
    let mut found: Vec<f64> = [" x1=\"", " x2=\"", " cx=\""].into_iter().flat_map(numbers).collect();
    for list in svg.split("points=\"").skip(1).filter_map(|rest| rest.split('"').next()) {
        found.extend(list.split(' ').filter_map(|pair| pair.split(',').next()?.parse::<f64>().ok()));
    }
    found
}

#[test]
fn nothing_is_drawn_beside_its_paper() {
    for (name, markup) in examples() {
        for svg in markup.into_string().split("<svg ").skip(1) {
            let width: f64 = if svg.starts_with("class=\"calc-wide") { 680.0 } else { 340.0 };
            let spots = spots(svg);
            assert!(spots.len() >= 6, "{name}: {spots:?}");
            let out: Vec<f64> = spots.into_iter().filter(|x| !(-1.0..=width + 1.0).contains(x)).collect();
            assert!(out.is_empty(), "{name}: {out:?} of {width}");
        }
    }
}

/// What came out as no number, nothing at all, or hostile names must leave a drawing that can be shown.
#[test]
fn odd_figures_leave_a_drawing() {
    let bad = f64::NAN;
    let odd = [
        shaft(
            &w(),
            &ShaftView {
                cut_mm: bad,
                butt_trim_mm: f64::INFINITY,
                density: vec![(bad, 1.0), (2.0, bad)],
                ..ShaftView::default()
            },
        ),
        pivot(
            &w(),
            &PivotView {
                parts: vec![PivotPart { name: "<b>head".into(), mass_g: bad, position_mm: bad, inertia_kg_cm2: bad }],
                inertia_kg_cm2: bad,
                ..PivotView::default()
            },
        ),
        series(&w(), &SeriesView { rows: vec![(bad, 1.0, bad)], reference_mm: bad }),
        modes(
            &w(),
            &ModesView {
                modes: vec![(bad, vec![(0.0, 0.0), (1.0, bad)])],
                bent: vec![(bad, bad)],
                ..ModesView::default()
            },
        ),
        around(
            &w(),
            &AroundView {
                readings: vec![(bad, bad)],
                fitted: vec![(0.0, 5.0); 4],
                resting_deg: vec![bad],
                ..AroundView::default()
            },
        ),
        recording(
            &w(),
            &RecordingView { axes: vec![vec![bad; 5], vec![1.0; 5]], cpm: bad, ..RecordingView::default() },
        ),
        recording(&w(), &RecordingView { axes: Vec::new(), ..RecordingView::default() }),
        grip(
            &w(),
            &GripView {
                places: vec![GripPlace { below_cap_in: bad, ..GripPlace::default() }],
                wanted_in: Some(bad),
                tape_to_in: Some(bad),
            },
        ),
        grip(&w(), &GripView::default()),
        lie(&w(), &LieView { before: (bad, 60.0), after: (900.0, bad), hands_mm: 0.0 }),
        aim(&w(), &AimView { lie_error_deg: bad, aim_deg: bad, off: Some((bad, bad)) }),
        bend(&w(), &BendView { limit_deg: bad, rows: vec![("lie".into(), bad, vec![bad])] }),
        joint(&w(), &JointView { bore_mm: bad, ..JointView::default() }),
        cure(
            &w(),
            &CureView {
                here_c: bad,
                lines: vec![CureLine { sheet: [(20.0, bad), (20.0, 1.0)], ..CureLine::default() }],
            },
        ),
        cure(&w(), &CureView::default()),
    ];
    for markup in odd {
        let text = markup.into_string();
        assert!(!text.contains("NaN") && !text.contains("inf\"") && !text.contains("inf,"), "{text}");
        assert!(!text.contains("<b>"), "{text}");
        assert!(text.contains("<svg"), "{text}");
    }
}

#[test]
fn the_words_carry_the_figures() {
    let all: String = examples().into_iter().map(|(_, markup)| markup.into_string()).collect();
    for words in [
        "61.4 mm off the butt and 25.4 mm off the tip leave 929.2 mm",
        "head 99.6 %",
        "924.6 mm: 270.1 g for equal swing weight, 272.4 g for equal inertia",
        "bend it by 33.0 mm",
        "Soft along 40.0°. Bowed by 1.50 mm toward 200.0°. Mark at 220.0°.",
        "comes to rest at 41.0° and 222.0°",
        "6.00 cycles a minute apart",
        "51 mm below the cap: 23.88 mm",
        "1.43° flatter",
        "1.00° too flat aims 0.60° to the right, 1.60 m off at 150 m",
        "lie from 0.00° to 2.00° in 2 steps",
        "a gap of 0.125 mm",
        "0.138 g of adhesive fill it, and the joint takes 1.64 g in all",
        "At 20.0 °C: pot life 58 min and full cure 35.9 h",
    ] {
        assert!(all.contains(words), "{words}");
    }
}

/// Every figure is in the reader's units: nobody who works in inches and ounces meets a millimetre or a gram.
#[test]
fn the_figures_are_in_the_readers_units() {
    let inches = Words::english(Units { length: quantity::LengthUnit::Inch, mass: quantity::MassUnit::Ounce });
    for (name, markup) in examples_for(&inches) {
        let text = markup.into_string().replace("kg·cm²", "");
        assert!(
            !text.contains("mm") && !text.contains(" g ") && !text.contains(" g<") && !text.contains(", g<"),
            "{name}: {text}"
        );
    }
    let all: String = examples_for(&inches).into_iter().map(|(_, markup)| markup.into_string()).collect();
    // By hand: 61.4 / 25.4 = 2.417; 929.2 / 25.4 = 36.583; 270.1 / 28.3495 = 9.5275.
    for words in
        ["2.42 in off the butt", "leave 36.58 in", "9.527 oz for equal swing weight", "2.0 in below the cap: 0.940 in"]
    {
        assert!(all.contains(words), "{words}: {all}");
    }
    let metric: String = examples().into_iter().map(|(_, markup)| markup.into_string()).collect();
    assert!(!metric.contains(" in<") && !metric.contains(", in<"));
}
