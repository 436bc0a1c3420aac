//! The page that shows the look itself: every colour, icon and component with invented data.

use maud::{Markup, html};
use words::{Words, text};

use super::*;

/// Colours; what each stands for is the text of its name.
const COLOURS: [&str; 14] = [
    "paper",
    "card",
    "ink",
    "ink-2",
    "line",
    "line-strong",
    "brass",
    "brass-text",
    "brass-soft",
    "spruce",
    "spruce-soft",
    "rust",
    "rust-soft",
    "steel",
];

fn piece(label: &str, mass_g: f64, arm_in: f64, on: bool, kind: PieceKind) -> BeamPiece {
    // Points by the letter scale's constants: 49.612 g·in a point about 14 in.
    BeamPiece { label: label.to_owned(), mass_g, arm_in, points: mass_g * (arm_in - 14.0) / 49.612, on, kind }
}

/// An invented iron before gluing.
fn iron_beam(w: &Words) -> BeamView {
    BeamView {
        id: "beam-6".to_owned(),
        club: w.text("gallery-six-iron"),
        length_in: 37.5,
        pieces: vec![
            piece(&w.text("gallery-piece-shaft"), 98.6, 16.9, true, PieceKind::Shaft),
            piece(&w.text("gallery-piece-tip-weight"), 5.0, 36.1, true, PieceKind::TipWeight),
            piece(&w.text("gallery-piece-head"), 256.1, 37.7, true, PieceKind::Head),
            piece(&w.text("gallery-piece-adhesive"), 1.8, 35.8, false, PieceKind::Adhesive),
            piece(&w.text("gallery-piece-tape"), 3.2, 5.2, false, PieceKind::Tape),
            piece(&w.text("gallery-piece-grip"), 48.3, 4.0, false, PieceKind::Grip),
        ],
        now_points: Some(38.9),
        forecast_points: Some(30.1),
        forecast_band_points: 0.4,
        target_points: Some(30.0),
        remainder_label: w.text("gallery-remainder"),
        ..BeamView::default()
    }
}

fn wood_beam(w: &Words) -> BeamView {
    BeamView {
        id: "beam-wood".to_owned(),
        club: w.text("gallery-driver"),
        shape: ClubShape::Wood,
        length_in: 45.0,
        pieces: vec![
            piece(&w.text("gallery-piece-head"), 198.4, 44.6, true, PieceKind::Head),
            piece(&w.text("gallery-piece-adapter"), 5.1, 42.6, true, PieceKind::Adapter),
            piece(&w.text("gallery-piece-shaft"), 61.2, 21.3, true, PieceKind::Shaft),
            piece(&w.text("gallery-piece-ferrule"), 1.4, 42.0, true, PieceKind::Ferrule),
            piece(&w.text("gallery-piece-adhesive"), 1.6, 42.8, true, PieceKind::Adhesive),
            piece(&w.text("gallery-piece-tape"), 3.0, 5.2, true, PieceKind::Tape),
            piece(&w.text("gallery-piece-grip"), 49.8, 4.1, true, PieceKind::Grip),
        ],
        now_points: Some(31.6),
        forecast_points: Some(31.6),
        forecast_band_points: 0.1,
        target_points: Some(32.0),
        ..BeamView::default()
    }
}

fn putter_beam(w: &Words) -> BeamView {
    BeamView {
        id: "beam-putter".to_owned(),
        club: w.text("gallery-putter"),
        shape: ClubShape::Putter,
        length_in: 34.0,
        pieces: vec![
            piece(&w.text("gallery-piece-head"), 352.0, 34.2, false, PieceKind::Head),
            piece(&w.text("gallery-piece-shaft"), 118.0, 15.2, false, PieceKind::Shaft),
            piece(&w.text("gallery-piece-grip"), 92.0, 4.4, false, PieceKind::Grip),
        ],
        forecast_points: Some(46.3),
        forecast_band_points: 1.9,
        target_points: Some(45.0),
        tolerance_points: 1.0,
        ..BeamView::default()
    }
}

fn crowded_beam(w: &Words) -> BeamView {
    let mut view = BeamView { id: "beam-crowded".to_owned(), now_points: Some(-41.0), ..iron_beam(w) };
    view.pieces.extend([
        piece(&w.text("gallery-piece-second-ferrule"), 1.1, 34.7, true, PieceKind::Ferrule),
        piece(&w.text("gallery-piece-lead-tape"), 2.0, 38.4, true, PieceKind::Other),
        piece(&w.text("gallery-piece-powder"), 1.5, 34.9, true, PieceKind::Other),
        piece(&w.text("gallery-piece-counterweight"), 12.0, 0.6, false, PieceKind::Other),
        piece(&w.text("gallery-piece-sensor-ring"), 3.1, 10.8, false, PieceKind::Other),
    ]);
    view
}

fn stage(label: &str, centre_points: f64, half_band_points: f64, reading_points: Option<f64>) -> FunnelStage {
    FunnelStage { label: label.to_owned(), centre_points, half_band_points, reading_points, ..FunnelStage::default() }
}

fn sample_funnel(w: &Words, id: &str) -> FunnelView {
    let mut stages = vec![
        stage(&w.text("gallery-stage-weighed"), 0.1, 1.15, Some(0.1)),
        stage(&w.text("gallery-stage-dry"), -0.1, 0.6, Some(-0.15)),
        stage(&w.text("gallery-stage-tip-weight"), 0.1, 0.45, Some(0.1)),
        stage(&w.text("gallery-stage-cured"), 0.1, 0.25, None),
        stage(&w.text("gallery-stage-gripped"), 0.1, 0.12, None),
    ];
    stages[2].current = true;
    FunnelView {
        id: id.to_owned(),
        club: w.text("gallery-six-iron"),
        stages,
        target_label: w.swing_weight_short(30.0),
        tolerance_points: 0.3,
    }
}

fn doubted_funnel(w: &Words) -> FunnelView {
    let mut view = sample_funnel(w, "funnel-8");
    view.stages[2].reading_points = Some(-2.4);
    view.stages[2].doubted = true;
    view.stages[1].half_band_points = 0.9;
    view.stages[2].half_band_points = 0.9;
    view
}

fn chips(w: &Words) -> Vec<ClubChip> {
    let chip = |number: &str, deviation: f64, state, current, done| ClubChip {
        number: number.to_owned(),
        href: format!("#club-{number}"),
        deviation_points: (state != ClubState::Unknown).then_some(deviation),
        deviation_text: if state == ClubState::Unknown { "–".to_owned() } else { w.signed(deviation, 1) },
        half_band_points: 0.4,
        tolerance_points: 0.3,
        state,
        current,
        done,
    };
    vec![
        chip("4", 0.1, ClubState::Within, false, true),
        chip("5", -0.2, ClubState::Within, false, true),
        chip("6", 0.1, ClubState::Within, true, false),
        chip("7", 0.1, ClubState::Within, false, false),
        chip("8", -0.6, ClubState::Doubted, false, false),
        chip("9", 1.4, ClubState::Off, false, false),
        chip("P", 0.2, ClubState::Within, false, false),
        chip("G", 0.0, ClubState::Unknown, false, false),
    ]
}

fn entry_form(w: &Words) -> Markup {
    html! {
        form method="post" action="#kept" data-keep=(w.text("gallery-keep")) {
            (request_key("0199-invented"))
            (ask(&Ask {
                expected: &w.swing_weight(38.8),
                note: &w.text("gallery-decision-note"),
                entry: html! { div.entry-row {
                    (field(&Field { name: "reading", label: &w.text("gallery-reading"), value: "D8.9", inputmode: "text", big: true, ..Field::default() }))
                    (button(&Button { label: &w.text("button-keep"), big: true, ..Button::default() }))
                } },
            }))
        }
    }
}

/// The one-club screen of the bench with invented readings.
#[must_use]
pub fn bench_example(w: &Words) -> Markup {
    let (heading, caution) = (w.text("gallery-decision"), w.text("gallery-decision-caution"));
    let view = Decision { heading: &heading, form: entry_form(w) };
    let finish = [("finish_points", words::figure(&30.1))];
    let said = rich(w, "gallery-decision-verdict", &finish, |_, inner| html! { strong { (inner) } });
    let line = |kind, label: &str, centre_points, half_band_points, chance: &str| OutlookLine {
        kind,
        label: w.text(label),
        centre_points,
        half_band_points,
        finish: text!(w, "gallery-grid-expected", expected_points = 30.0 + centre_points, band = half_band_points),
        chance: chance.to_owned(),
    };
    let lines = OutlookView {
        title: w.text("gallery-decision"),
        lines: vec![
            line(OutlookKind::Stands, "outlook-stands", -0.5, 0.4, &w.text("odds-seldom")),
            line(OutlookKind::Advised, "gallery-piece-tip-weight", 0.0, 0.4, &w.text("odds-nearly-sure")),
        ],
        target_points: 30.0,
        tolerance_points: 0.3,
    };
    let below = html! {
        (keypad_hints(&[
            ("Enter", w.text("gallery-key-keep")), ("r", w.text("gallery-key-again")), ("z", w.text("gallery-key-wrong")),
        ]))
    };
    bench_body(&BenchBody {
        clubs: club_row(w, &chips(w), ""),
        beam: beam(w, &iron_beam(w)),
        decision: decision(&view),
        outlook: html! { (verdict(Tone::Good, &said)) (outlook(w, &lines)) (super::caution(&caution)) },
        below: html! { (below) (funnel(w, &sample_funnel(w, "funnel-6"))) },
    })
}

/// One step across the set, with invented readings and a live scale.
#[must_use]
pub fn grid_example(w: &Words) -> Markup {
    let finish = |points: f64| text!(w, "gallery-grid-finish", finish_points = points);
    let expected = |points: f64, band: f64| text!(w, "gallery-grid-expected", expected_points = points, band = band);
    let row = |number: &str, deviation: f64, expected: String, reading: &str, words: String, state| GridRow {
        number: number.to_owned(),
        href: format!("#club-{number}"),
        deviation_points: (state != ClubState::Unknown).then_some(deviation),
        half_band_points: 0.35,
        tolerance_points: 0.3,
        expected,
        reading: html! { (reading) },
        becomes_points: None,
        said: html! { span { (words) } },
        state,
        current: false,
    };
    let mut rows = vec![
        row("4", 0.1, expected(39.2, 0.4), "D9.3", finish(30.1), ClubState::Within),
        row("5", -0.1, expected(39.0, 0.4), "D8.8", finish(29.9), ClubState::Within),
        row("6", 0.1, expected(38.8, 0.3), "D8.9", finish(30.1), ClubState::Within),
        row("7", 0.0, expected(38.7, 0.3), "D8.7", finish(30.0), ClubState::Within),
        row(
            "8",
            -0.6,
            expected(38.6, 0.3),
            "D8.0",
            text!(w, "gallery-grid-doubt", put_g = 5.0, planned_g = 6.0),
            ClubState::Doubted,
        ),
        row("9", 0.05, expected(38.5, 0.3), "", String::new(), ClubState::Within),
        row("P", 0.1, expected(38.5, 0.3), "", String::new(), ClubState::Within),
        row("G", 0.0, expected(38.4, 0.3), "", String::new(), ClubState::Unknown),
    ];
    rows[5].current = true;
    rows[5].reading =
        html! { input name="reading" aria-label=(w.text("gallery-reading-of")) placeholder="D8.5" data-bench-entry; };
    html! {
        (step_line(w, &[
            Step { label: &w.text("gallery-stage-weighed"), href: "#1", state: StepState::Done },
            Step { label: &w.text("gallery-stage-cut"), href: "#2", state: StepState::Done },
            Step { label: &w.text("gallery-stage-cpm"), href: "#3", state: StepState::Skipped },
            Step { label: &w.text("gallery-stage-dry"), href: "#4", state: StepState::Doubted },
            Step { label: &w.text("gallery-stage-tip-weight"), href: "#5", state: StepState::Current },
            Step { label: &w.text("gallery-stage-glued"), href: "#6", state: StepState::Open },
            Step { label: &w.text("gallery-stage-cured"), href: "#7", state: StepState::Open },
            Step { label: &w.text("gallery-stage-gripped"), href: "#8", state: StepState::Open },
        ]))
        (set_grid(w, &w.text("gallery-grid"), &text!(w, "gallery-grid-against", target_points = 30.0), &rows))
        (live_bar(
            &LiveBar { scale: &w.text("gallery-live-scale"), value: &w.swing_weight(38.5), words: &w.text("gallery-live-words") },
            &link_button("#again", &w.text("gallery-read-again"), ButtonKind::Quiet, Some(Icon::Again), "r"),
        ))
    }
}

/// Job cards with invented figures.
#[must_use]
pub fn card_example(w: &Words) -> Markup {
    let code_svg = html! {
        svg viewBox="0 0 8 8" aria-hidden="true" {
            @for cell in 0..64u32 { @if (cell * 37 + cell / 8 * 11) % 5 < 2 { rect x=(cell % 8) y=(cell / 8) width="1" height="1" {} } }
        }
    };
    let expected = |points: f64, band: f64| text!(w, "gallery-grid-expected", expected_points = points, band = band);
    let (club, caution) = (w.text("gallery-six-iron"), w.text("gallery-card-caution"));
    let job = text!(w, "gallery-card-job", player = "O. Lindqvale");
    let card = JobCard {
        size: CardSize::A6,
        club: &club,
        job: &job,
        slot: "3",
        code: "42-6",
        code_svg,
        lines: vec![
            (w.text("gallery-card-cut"), w.length(36.3125 * 25.4)),
            (w.text("gallery-card-tip"), w.mass(5.0)),
            (w.text("gallery-card-wraps"), w.text("gallery-card-wraps-value")),
            (w.text("gallery-card-graphics"), w.text("gallery-card-graphics-value")),
            (
                w.text("gallery-card-bend"),
                text!(w, "gallery-card-bend-value", loft_deg = 29.5, lie_deg = 62.5, up_deg = 1.0),
            ),
        ],
        expected: vec![
            (w.text("gallery-card-dry"), expected(38.6, 0.4)),
            (w.text("gallery-card-with-tip"), expected(38.8, 0.3)),
            (w.text("gallery-card-cured"), expected(39.3, 0.3)),
            (w.text("gallery-card-finished"), expected(30.1, 0.4)),
        ],
        caution: &caution,
    };
    html! { div.job-cards { (job_card(w, &card)) } }
}

fn words_and_blocks(w: &Words) -> Markup {
    html! {
        (section(&w.text("gallery-notices"), &html! {}, &html! {
            @for (tone, text, next) in [
                (Tone::Plain, w.text("gallery-notice-due"), text!(w, "gallery-notice-due-next", mass_g = 200.0)),
                (Tone::Good, text!(w, "gallery-notice-kept", reading_points = 38.9), String::new()),
                (Tone::Care, w.text("gallery-notice-missing"), text!(w, "gallery-notice-missing-next", from_g = 248.0, to_g = 252.0)),
                (Tone::Doubt, w.text("gallery-notice-low"), text!(w, "gallery-notice-low-next", put_g = 5.0, planned_g = 6.0)),
                (Tone::Bad, text!(w, "gallery-notice-held", code = "S-114"), w.text("gallery-notice-held-next")),
            ] { (notice_block(tone, &text, &next)) }
        }))
        (columns(&[
            titled_card(&w.text("gallery-tags"), &html! {
                p { (tag(Tone::Plain, &w.text("gallery-tag-ordered"))) " " (tag(Tone::Good, &w.text("gallery-tag-within"))) " " (tag(Tone::Care, &w.text("gallery-tag-held"))) " "
                    (tag(Tone::Doubt, &w.text("gallery-tag-doubted"))) " " (tag(Tone::Bad, &w.text("gallery-tag-rejected"))) }
                (caution(&w.text("gallery-caution")))
            }),
            titled_card(&w.text("gallery-figures"), &figures(&[
                Figure { label: &w.text("gallery-figure-finish"), value: &w.swing_weight(30.1), note: "± 0.4" },
                Figure { label: &w.text("gallery-figure-mass"), value: &w.mass(417.3), note: "" },
            ])),
            titled_card(&w.text("gallery-values"), &definitions(&[
                (w.text("gallery-value-shaft"), html! { (text!(w, "gallery-value-shaft-cut", code = "S-114", length_mm = 36.3125 * 25.4)) }),
                (w.text("gallery-card-tip"), html! { (w.mass(5.0)) }),
                (w.text("gallery-value-batch"), html! {
                    (w.text("gallery-value-handling")) " "
                    (clock("2030-01-01T12:00:00Z", &text!(w, "left-hours", hours = "1", minutes = "20"), &w.text("left-over")))
                }),
            ])),
        ]))
        (tabs(&w.text("gallery-stock"), &[
            Tab { label: w.text("gallery-tab-heads").into(), href: "#h", count: "31", current: true },
            Tab { label: w.text("gallery-tab-shafts").into(), href: "#s", count: "120", current: false },
            Tab { label: w.text("gallery-tab-grips").into(), href: "#g", count: "96", current: false },
            Tab { label: w.text("gallery-tab-tip-weights").into(), href: "#t", count: "", current: false },
        ]))
        (table(&Table {
            caption: &w.text("gallery-tab-heads"),
            columns: vec![
                Column::words(w.text("gallery-column-code")), Column::words(w.text("gallery-column-model")),
                Column::figures(w.text("gallery-column-number")), Column::figures(w.text("gallery-column-mass")),
                Column::words(w.text("gallery-column-place")), Column::words(w.text("gallery-column-state")),
            ],
            rows: vec![
                vec!["H-301".into(), "Quarrel CB".into(), "6".into(), w.mass(256.1).into(), "A3".into(), tag(Tone::Care, &w.text("gallery-tag-held")).into()],
                vec!["H-302".into(), "Quarrel CB".into(), "6".into(), w.mass(254.8).into(), "A3".into(), tag(Tone::Plain, &w.text("gallery-tag-free")).into()],
                vec!["H-310".into(), "Quarrel CB".into(), "7".into(), w.mass(262.4).into(), "A4".into(), tag(Tone::Bad, &w.text("gallery-tag-rejected")).into()],
            ],
            ..Table::default()
        }))
        (empty_state(&w.text("gallery-empty"), &w.text("gallery-empty-next"), &[
            Action { href: "#new", label: &w.text("gallery-new-sheet"), primary: true },
            Action { href: "#import", label: &w.text("gallery-import"), primary: false },
        ]))
    }
}

fn forms_shown(w: &Words) -> Markup {
    html! {
        form.card method="get" action="#form" {
            div.fields {
                (field(&Field { name: "mass", label: &w.text("gallery-field-mass"), value: &w.mass_figure(256.1), hint: &w.text("gallery-field-mass-hint"), inputmode: "decimal", unit: w.mass_sign(), ..Field::default() }))
                (field(&Field { name: "length", label: &w.text("gallery-field-length"), value: "36 3/x", hint: &w.text("gallery-field-length-hint"), error: Some(&w.text("gallery-field-length-wrong")), ..Field::default() }))
                (select(&Select { name: "hand", label: &w.text("gallery-field-hand"), choices: vec![
                    Choice { value: "r", label: w.text("gallery-choice-right").into(), chosen: true }, Choice { value: "l", label: w.text("gallery-choice-left").into(), chosen: false },
                ], ..Select::default() }))
                (field(&Field { name: "due", label: &w.text("gallery-field-due"), kind: "date", ..Field::default() }))
            }
            (radios("graphics", &w.text("gallery-field-graphics"), &[
                Choice { value: "up", label: w.text("gallery-choice-up").into(), chosen: true }, Choice { value: "down", label: w.text("gallery-choice-down").into(), chosen: false },
                Choice { value: "away", label: w.text("gallery-choice-away").into(), chosen: false },
            ]))
            (check("ferrule", "1", &w.text("gallery-field-ferrule"), true))
            (text_area(&Field { name: "short", label: &w.text("gallery-field-short"), value: "5–PW, +1/2, 2 up, D3, 2 wraps", ..Field::default() }, 2))
            (file_field("file", &w.text("gallery-field-list"), &w.text("gallery-field-list-hint"), ".csv"))
            div.actions {
                (button(&Button { label: &w.text("button-keep"), ..Button::default() }))
                (button(&Button { label: &w.text("gallery-read-again"), kind: ButtonKind::Quiet, icon: Some(Icon::Again), keys: "r", ..Button::default() }))
                (button(&Button { label: &w.text("gallery-wrong"), kind: ButtonKind::Danger, icon: Some(Icon::Undo), keys: "z Backspace", ..Button::default() }))
            }
        }
        (search_bar(w, "#find", "q", &w.text("gallery-find"), "", &html! {}))
    }
}

/// Type and space as the style sheet sets them.
fn sizes_shown(w: &Words) -> Markup {
    let sizes = colours::sizes();
    let of = |start: &str| sizes.iter().filter(|(name, _)| name.starts_with(start)).collect::<Vec<_>>();
    let spaces = of("s").into_iter().filter(|(name, _)| name.as_str() != "sans");
    html! {
        (section(&w.text("gallery-type"), &html! {}, &html! {
            div.type-scale.card { @for (name, size) in of("t-") {
                p class={ "size-" (name) } { "D8.9 ± 0.3" }
                p.small { code { (name) ": " (size) } }
            } }
            p.hint { (w.text("gallery-type-hint")) }
        }))
        (section(&w.text("gallery-space"), &html! {}, &html! {
            div.spaces.card {
                @for (name, size) in spaces { div { span class={ "wide-" (name) } {} code { (name) ": " (size) } } }
                @if let Some(touch) = sizes.get("touch") {
                    div { span.wide-touch.high-touch {} code { "touch: " (touch) } " " (w.text("gallery-touch")) }
                }
            }
        }))
    }
}

/// Contrast of every pair that is used, worked out from the style sheet.
fn contrasts(w: &Words) -> Markup {
    let schemes = colours::SCHEMES.map(|(name, opening)| (name, colours::variables(opening)));
    let mut columns = vec![Column::words(w.text("gallery-on-ground")), Column::figures(w.text("gallery-needs"))];
    columns.extend(schemes.iter().map(|(name, _)| Column::figures(w.text(&format!("gallery-scheme-{name}")))));
    let row = |front: &str, ground: &str, least: f64| {
        let mut cells: Vec<Cell> = vec![Cell(html! { code { (front) " / " (ground) } }), format!("{least:.1}").into()];
        cells.extend(schemes.iter().map(|(_, set)| {
            let ratio = set.get(front).zip(set.get(ground)).and_then(|(a, b)| colours::contrast(a, b));
            Cell::from(ratio.map_or_else(|| "–".to_owned(), |ratio| format!("{ratio:.1}")))
        }));
        cells
    };
    let text = colours::TEXT.iter().map(|(front, ground)| row(front, ground, colours::TEXT_LEAST));
    let graphics = colours::GRAPHICS.iter().map(|(front, ground)| row(front, ground, colours::GRAPHICS_LEAST));
    let rows = text.chain(graphics).collect();
    table(&Table { caption: &w.text("gallery-contrast"), show_caption: true, columns, rows, ..Table::default() })
}

/// What each scheme sets.
fn scheme_table(w: &Words) -> Markup {
    let schemes = colours::SCHEMES.map(|(name, opening)| (name, colours::variables(opening)));
    let mut columns = vec![Column::words(w.text("gallery-colour"))];
    columns.extend(schemes.iter().map(|(name, _)| Column::words(w.text(&format!("gallery-scheme-{name}")))));
    let rows = COLOURS.iter().map(|name| {
        let mut cells = vec![Cell(html! { code { (name) } })];
        cells.extend(schemes.iter().map(|(scheme, set)| {
            let value = set.get(*name).cloned().unwrap_or_default();
            Cell(html! { span class={ "sample " (sample_class(scheme, name)) } {} " " code { (value) } })
        }));
        cells
    });
    table(&Table {
        caption: &w.text("gallery-schemes"),
        show_caption: true,
        columns,
        rows: rows.collect(),
        ..Table::default()
    })
}

/// Address of this page's own style sheet.
pub const GALLERY_SHEET: &str = "/style/gallery.css";

/// The class that shows a colour as one scheme sets it.
fn sample_class(scheme: &str, name: &str) -> String {
    format!("{}-{name}", scheme.replace(' ', "-"))
}

/// The style sheet of this page alone: it shows each colour and size by a class of its own, since pages allow no style
/// in their elements.
#[must_use]
pub fn gallery_sheet() -> String {
    use std::fmt::Write;
    let mut sheet = include_str!("gallery.css").to_owned();
    let mut rule = |class: &str, what: &str, value: &str| {
        // Writing to a string cannot fail.
        let _ = writeln!(sheet, ".{class} {{ {what}: {value}; }}");
    };
    for name in COLOURS {
        rule(&format!("ground-{name}"), "background", &format!("var(--{name})"));
        for (scheme, opening) in colours::SCHEMES {
            let value = colours::variables(opening).get(name).cloned().unwrap_or_default();
            rule(&sample_class(scheme, name), "background", &value);
        }
    }
    for name in colours::sizes().keys() {
        rule(&format!("size-{name}"), "font-size", &format!("var(--{name})"));
        rule(&format!("wide-{name}"), "width", &format!("var(--{name})"));
        rule(&format!("high-{name}"), "height", &format!("var(--{name})"));
    }
    sheet
}

/// The whole page: colours, type, icons, components, pictures.
#[must_use]
pub fn gallery(w: &Words) -> Markup {
    html! {
        link rel="stylesheet" href=(GALLERY_SHEET);
        (section(&w.text("gallery-colours"), &html! {}, &html! {
            div.swatches {
                @for name in COLOURS {
                    div class={ "swatch ground-" (name) } { span { strong { code { (name) } } br; (w.text(&format!("gallery-colour-{name}"))) } }
                }
            }
            (scheme_table(w))
            (contrasts(w))
        }))
        (sizes_shown(w))
        (section(&w.text("gallery-icons"), &html! {}, &html! {
            div.icons { @for (which, name) in icons::ALL_ICONS { span { (icon(which)) code { (name) } } } }
        }))
        (words_and_blocks(w))
        (section(&w.text("gallery-forms"), &html! {}, &forms_shown(w)))
        (section(&w.text("gallery-clubs"), &html! {}, &club_row(w, &chips(w), "#clubs")))
        (section(&w.text("gallery-beam"), &html! {}, &html! {
            @for view in [iron_beam(w), wood_beam(w), putter_beam(w), crowded_beam(w)] { div.card { (beam(w, &view)) } }
            div.card { (beam(w, &BeamView { id: "beam-empty".to_owned(), club: w.text("gallery-nine-iron"), ..BeamView::default() })) }
            div.card { (beam(w, &BeamView { id: "beam-compact".to_owned(), compact: true, ..iron_beam(w) })) }
        }))
        (section(&w.text("gallery-funnel"), &html! {}, &columns(&[
            card(&funnel(w, &sample_funnel(w, "funnel-a"))), card(&funnel(w, &doubted_funnel(w))),
            card(&funnel(w, &FunnelView::default())),
        ])))
    }
}
