//! The page that shows the look itself: every colour, icon and component with invented data.

use maud::{Markup, html};
use words::Words;

use super::*;

/// Colours with what they stand for.
const COLOURS: [(&str, &str); 14] = [
    ("paper", "the page"),
    ("card", "what lies on it"),
    ("ink", "what matters"),
    ("ink-2", "what explains"),
    ("line", "edges"),
    ("line-strong", "edges of entries"),
    ("brass", "mass"),
    ("brass-text", "care, as text"),
    ("brass-soft", "mass to come, band"),
    ("spruce", "within tolerance"),
    ("spruce-soft", "tolerance"),
    ("rust", "doubt"),
    ("rust-soft", "behind doubt"),
    ("steel", "shaft"),
];

fn piece(label: &str, mass_g: f64, arm_in: f64, on: bool, kind: PieceKind) -> BeamPiece {
    // Points by the letter scale's constants: 49.612 g·in a point about 14 in.
    BeamPiece { label: label.to_owned(), mass_g, arm_in, points: mass_g * (arm_in - 14.0) / 49.612, on, kind }
}

/// An invented iron before gluing.
fn iron_beam(w: &Words) -> BeamView {
    BeamView {
        id: "beam-6".to_owned(),
        club: "6 iron".to_owned(),
        length_in: 37.5,
        pieces: vec![
            piece("shaft", 98.6, 16.9, true, PieceKind::Shaft),
            piece("tip weight", 5.0, 36.1, true, PieceKind::TipWeight),
            piece("head", 256.1, 37.7, true, PieceKind::Head),
            piece("adhesive", 1.8, 35.8, false, PieceKind::Adhesive),
            piece("tape", 3.2, 5.2, false, PieceKind::Tape),
            piece("grip", 48.3, 4.0, false, PieceKind::Grip),
        ],
        now_points: Some(38.9),
        forecast_points: Some(30.1),
        forecast_band_points: 0.4,
        target_points: Some(30.0),
        remainder_label: "cap under the butt".to_owned(),
        ..BeamView::default()
    }
}

fn wood_beam(w: &Words) -> BeamView {
    BeamView {
        id: "beam-wood".to_owned(),
        club: "driver".to_owned(),
        shape: ClubShape::Wood,
        length_in: 45.0,
        pieces: vec![
            piece("head", 198.4, 44.6, true, PieceKind::Head),
            piece("adapter", 5.1, 42.6, true, PieceKind::Adapter),
            piece("shaft", 61.2, 21.3, true, PieceKind::Shaft),
            piece("ferrule", 1.4, 42.0, true, PieceKind::Ferrule),
            piece("adhesive", 1.6, 42.8, true, PieceKind::Adhesive),
            piece("tape", 3.0, 5.2, true, PieceKind::Tape),
            piece("grip", 49.8, 4.1, true, PieceKind::Grip),
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
        club: "putter".to_owned(),
        shape: ClubShape::Putter,
        length_in: 34.0,
        pieces: vec![
            piece("head", 352.0, 34.2, false, PieceKind::Head),
            piece("shaft", 118.0, 15.2, false, PieceKind::Shaft),
            piece("grip", 92.0, 4.4, false, PieceKind::Grip),
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
        piece("second ferrule", 1.1, 34.7, true, PieceKind::Ferrule),
        piece("lead tape", 2.0, 38.4, true, PieceKind::Other),
        piece("powder", 1.5, 34.9, true, PieceKind::Other),
        piece("counterweight", 12.0, 0.6, false, PieceKind::Other),
        piece("sensor ring", 3.1, 10.8, false, PieceKind::Other),
    ]);
    view
}

fn stage(label: &str, centre_points: f64, half_band_points: f64, reading_points: Option<f64>) -> FunnelStage {
    FunnelStage { label: label.to_owned(), centre_points, half_band_points, reading_points, ..FunnelStage::default() }
}

fn sample_funnel(w: &Words, id: &str) -> FunnelView {
    let mut stages = vec![
        stage("weighed", 0.1, 1.15, Some(0.1)),
        stage("dry", -0.1, 0.6, Some(-0.15)),
        stage("tip weight", 0.1, 0.45, Some(0.1)),
        stage("cured", 0.1, 0.25, None),
        stage("gripped", 0.1, 0.12, None),
    ];
    stages[2].current = true;
    FunnelView {
        id: id.to_owned(),
        club: "6 iron".to_owned(),
        stages,
        target_label: "D0".to_owned(),
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
        form method="post" action="#kept" data-keep="6 iron, dry" {
            (request_key("0199-invented"))
            div.entry-row {
                (field(&Field { name: "reading", label: "Reading", value: "D8.9", inputmode: "text", big: true, ..Field::default() }))
                (button(&Button { label: "Keep", big: true, ..Button::default() }))
            }
        }
    }
}

/// The one-club screen of the bench with invented readings.
#[must_use]
pub fn bench_example(w: &Words) -> Markup {
    let view = Decision {
        heading: "6 iron · read dry with the tip weight",
        expected: "D8.8",
        expected_note: "± 0.3 expected",
        form: entry_form(w),
        verdict: html! { "Believed. Finish " strong { "D0.1 ± 0.4" } ", 9 in 10 inside. Glue it as it is." },
        tone: Tone::Good,
        caution: "Gloves on before the mix. No swing before the adhesive maker's full cure.",
    };
    let below = html! {
        (keypad_hints(&[("Enter", "keep, next club"), ("r", "read again"), ("z", "that was wrong")]))
    };
    bench_body(&BenchBody {
        clubs: club_row(w, &chips(w), ""),
        beam: beam(w, &iron_beam(w)),
        decision: decision(&view),
        funnel: funnel(w, &sample_funnel(w, "funnel-6")),
        below,
    })
}

/// One step across the set, with invented readings and a live scale.
#[must_use]
pub fn grid_example(w: &Words) -> Markup {
    let row = |number: &str, deviation: f64, expected: &str, reading: &str, words: &str, state| GridRow {
        number: number.to_owned(),
        href: format!("#club-{number}"),
        deviation_points: (state != ClubState::Unknown).then_some(deviation),
        half_band_points: 0.35,
        tolerance_points: 0.3,
        expected: expected.to_owned(),
        reading: html! { (reading) },
        words: words.to_owned(),
        state,
        current: false,
    };
    let mut rows = vec![
        row("4", 0.1, "D9.2 ± 0.4", "D9.3", "finish D0.1", ClubState::Within),
        row("5", -0.1, "D9.0 ± 0.4", "D8.8", "finish C9.9", ClubState::Within),
        row("6", 0.1, "D8.8 ± 0.3", "D8.9", "finish D0.1", ClubState::Within),
        row("7", 0.0, "D8.7 ± 0.3", "D8.7", "finish D0.0", ClubState::Within),
        row("8", -0.6, "D8.6 ± 0.3", "D8.0", "5 g in place of 6? Weigh it.", ClubState::Doubted),
        row("9", 0.05, "D8.5 ± 0.3", "", "", ClubState::Within),
        row("P", 0.1, "D8.5 ± 0.3", "", "", ClubState::Within),
        row("G", 0.0, "D8.4 ± 0.3", "", "", ClubState::Unknown),
    ];
    rows[5].current = true;
    rows[5].reading =
        html! { input name="reading" aria-label="Reading of the 9 iron" placeholder="D8.5" data-bench-entry; };
    html! {
        (stepper(w, &[
            Step { label: "weighed", href: "#1", state: StepState::Done },
            Step { label: "cut", href: "#2", state: StepState::Done },
            Step { label: "cpm", href: "#3", state: StepState::Skipped },
            Step { label: "dry", href: "#4", state: StepState::Doubted },
            Step { label: "tip weight", href: "#5", state: StepState::Current },
            Step { label: "glued", href: "#6", state: StepState::Open },
            Step { label: "cured", href: "#7", state: StepState::Open },
            Step { label: "gripped", href: "#8", state: StepState::Open },
        ]))
        (set_grid(w, "Dry with the tip weight, all clubs", "where it will finish, against D0", &rows))
        (live_bar(
            &LiveBar { scale: "scale 2 · steady", value: "D8.5", words: "to the 9 iron: scan its card, press the pedal, or Enter" },
            &link_button("#again", "Read again", ButtonKind::Quiet, Some(Icon::Again), "r"),
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
    let card = JobCard {
        size: CardSize::A6,
        club: "6 iron",
        job: "Job 42 · O. Lindqvale · due 14 May",
        slot: "3",
        code: "42-6",
        code_svg,
        lines: vec![
            ("Shaft, butt cut to".to_owned(), "36 5/16 in".to_owned()),
            ("Tip weight".to_owned(), "5 g".to_owned()),
            ("Wraps".to_owned(), "2, lower hand 1 more".to_owned()),
            ("Graphics".to_owned(), "shaft up, grip down".to_owned()),
            ("Bend".to_owned(), "loft 29.5°, lie 62.5° (1° up)".to_owned()),
        ],
        expected: vec![
            ("dry, no grip".to_owned(), "D8.6 ± 0.4".to_owned()),
            ("with tip weight".to_owned(), "D8.8 ± 0.3".to_owned()),
            ("cured, no grip".to_owned(), "D9.3 ± 0.3".to_owned()),
            ("finished".to_owned(), "D0.1 ± 0.4".to_owned()),
        ],
        caution: "No swing before full cure.",
    };
    html! { div.job-cards { (job_card(w, &card)) } }
}

fn words_and_blocks(w: &Words) -> Markup {
    html! {
        (section("Notices", &html! {}, &html! {
            @for (tone, text, next) in [
                (Tone::Plain, "The scale check is due today.", "Put the 200 g check weight on scale 2."),
                (Tone::Good, "Reading kept: 6 iron, D8.9.", ""),
                (Tone::Care, "Two heads are missing for job 42.", "Order 248 to 252 g, or plan with the 6 iron's spare."),
                (Tone::Doubt, "8 iron reads 0.6 low.", "5 g in place of 6? Weigh the tip weight."),
                (Tone::Bad, "Shaft S-114 is held by job 39.", "Take another, or free it there."),
            ] { (notice_block(tone, text, next)) }
        }))
        (columns(&[
            titled_card("Tags and caution", &html! {
                p { (tag(Tone::Plain, "ordered")) " " (tag(Tone::Good, "within")) " " (tag(Tone::Care, "held")) " "
                    (tag(Tone::Doubt, "doubted")) " " (tag(Tone::Bad, "rejected")) }
                (caution("Particle mask and extraction: never cut composite dry without them."))
            }),
            titled_card("Figures", &figures(&[
                Figure { label: "finish", value: "D0.1", note: "± 0.4" },
                Figure { label: "total mass", value: "417.3 g", note: "" },
            ])),
            titled_card("Names and values", &definitions(&[
                ("Shaft", html! { "S-114, cut 36 5/16 in" }),
                ("Tip weight", html! { "5 g" }),
                ("Batch", html! { "B-7, handling in " (clock("2030-01-01T12:00:00Z", "1 h 20 min", "now")) }),
            ])),
        ]))
        (tabs("Stock", &[
            Tab { label: "Heads".into(), href: "#h", count: "31", current: true },
            Tab { label: "Shafts".into(), href: "#s", count: "120", current: false },
            Tab { label: "Grips".into(), href: "#g", count: "96", current: false },
            Tab { label: "Tip weights".into(), href: "#t", count: "", current: false },
        ]))
        (table(&Table {
            caption: "Heads",
            columns: vec![
                Column::words("code"), Column::words("model"),
                Column::figures("number"), Column::figures("mass"),
                Column::words("place"), Column::words("state"),
            ],
            rows: vec![
                vec!["H-301".into(), "Quarrel CB".into(), "6".into(), "256.1 g".into(), "A3".into(), tag(Tone::Care, "held").into()],
                vec!["H-302".into(), "Quarrel CB".into(), "6".into(), "254.8 g".into(), "A3".into(), tag(Tone::Plain, "free").into()],
                vec!["H-310".into(), "Quarrel CB".into(), "7".into(), "262.4 g".into(), "A4".into(), tag(Tone::Bad, "rejected").into()],
            ],
            ..Table::default()
        }))
        (empty_state("No fitting sheet yet", "Write one short, such as 5–PW, +1/2, D3, or import a file.", &[
            Action { href: "#new", label: "New sheet", primary: true },
            Action { href: "#import", label: "Import", primary: false },
        ]))
    }
}

fn forms_shown(w: &Words) -> Markup {
    html! {
        form.card method="get" action="#form" {
            div.fields {
                (field(&Field { name: "mass", label: "Mass", value: "256.1", hint: "to 0.1 g, such as 256.1", inputmode: "decimal", unit: "g", ..Field::default() }))
                (field(&Field { name: "length", label: "Length", value: "36 3/x", hint: "such as 36 3/4", error: Some("Read 36 3/ and stopped at x. Write it like 36 3/4."), ..Field::default() }))
                (select(&Select { name: "hand", label: "Hand", choices: vec![
                    Choice { value: "r", label: "right".into(), chosen: true }, Choice { value: "l", label: "left".into(), chosen: false },
                ], ..Select::default() }))
                (field(&Field { name: "due", label: "Due", kind: "date", ..Field::default() }))
            }
            (radios("graphics", "Grip graphics", &[
                Choice { value: "up", label: "up".into(), chosen: true }, Choice { value: "down", label: "down".into(), chosen: false },
                Choice { value: "away", label: "away".into(), chosen: false },
            ]))
            (check("ferrule", "1", "Ferrule on", true))
            (text_area(&Field { name: "short", label: "Sheet, written short", value: "5–PW, +1/2, 2 up, D3, 2 wraps", ..Field::default() }, 2))
            (file_field("file", "Parts list", "CSV, one part a row", ".csv"))
            div.actions {
                (button(&Button { label: "Keep", ..Button::default() }))
                (button(&Button { label: "Read again", kind: ButtonKind::Quiet, icon: Some(Icon::Again), keys: "r", ..Button::default() }))
                (button(&Button { label: "That was wrong", kind: ButtonKind::Danger, icon: Some(Icon::Undo), keys: "z Backspace", ..Button::default() }))
            }
        }
        (search_bar(w, "#find", "q", "Find a code, a model or a place", "", &html! {}))
    }
}

/// Type and space as the style sheet sets them.
fn sizes_shown(w: &Words) -> Markup {
    let sizes = colours::sizes();
    let of = |start: &str| sizes.iter().filter(|(name, _)| name.starts_with(start)).collect::<Vec<_>>();
    let spaces = of("s").into_iter().filter(|(name, _)| name.as_str() != "sans");
    html! {
        (section("Type", &html! {}, &html! {
            div.type-scale.card { @for (name, size) in of("t-") {
                p class={ "size-" (name) } { "D8.9 ± 0.3" }
                p.small { (name) ": " (size) }
            } }
            p.hint { "The reader's own system face, figures of one width. Weights 400, 550, 650." }
        }))
        (section("Space", &html! {}, &html! {
            div.spaces.card {
                @for (name, size) in spaces { div { span class={ "wide-" (name) } {} (name) ": " (size) } }
                @if let Some(touch) = sizes.get("touch") {
                    div { span.wide-touch.high-touch {} "touch: " (touch) ", the least that a finger hits" }
                }
            }
        }))
    }
}

/// Contrast of every pair that is used, worked out from the style sheet.
fn contrasts(w: &Words) -> Markup {
    let schemes = colours::SCHEMES.map(|(name, opening)| (name, colours::variables(opening)));
    let mut columns = vec![Column::words("on its ground"), Column::figures("needs")];
    columns.extend(schemes.iter().map(|(name, _)| Column::figures(*name)));
    let row = |front: &str, ground: &str, least: f64| {
        let mut cells: Vec<Cell> = vec![format!("{front} on {ground}").into(), format!("{least:.1}").into()];
        cells.extend(schemes.iter().map(|(_, set)| {
            let ratio = set.get(front).zip(set.get(ground)).and_then(|(a, b)| colours::contrast(a, b));
            Cell::from(ratio.map_or_else(|| "–".to_owned(), |ratio| format!("{ratio:.1}")))
        }));
        cells
    };
    let text = colours::TEXT.iter().map(|(front, ground)| row(front, ground, colours::TEXT_LEAST));
    let graphics = colours::GRAPHICS.iter().map(|(front, ground)| row(front, ground, colours::GRAPHICS_LEAST));
    let rows = text.chain(graphics).collect();
    table(&Table { caption: "Contrast", show_caption: true, columns, rows, ..Table::default() })
}

/// What each scheme sets.
fn scheme_table(w: &Words) -> Markup {
    let schemes = colours::SCHEMES.map(|(name, opening)| (name, colours::variables(opening)));
    let mut columns = vec![Column::words("colour")];
    columns.extend(schemes.iter().map(|(name, _)| Column::words(*name)));
    let rows = COLOURS.iter().map(|(name, _)| {
        let mut cells = vec![Cell::from(*name)];
        cells.extend(schemes.iter().map(|(scheme, set)| {
            let value = set.get(*name).cloned().unwrap_or_default();
            Cell(html! { span.sample class=(sample_class(scheme, name)) {} " " (value) })
        }));
        cells
    });
    table(&Table { caption: "The schemes", show_caption: true, columns, rows: rows.collect(), ..Table::default() })
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
    for (name, _) in COLOURS {
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
        (section("Colours", &html! {}, &html! {
            div.swatches {
                @for (name, what) in COLOURS {
                    div.swatch class={ "ground-" (name) } { span { strong { (name) } br; (what) } }
                }
            }
            (scheme_table(w))
            (contrasts(w))
        }))
        (sizes_shown(w))
        (section("Icons", &html! {}, &html! {
            div.icons { @for (which, name) in icons::ALL_ICONS { span { (icon(which)) (name) } } }
        }))
        (words_and_blocks(w))
        (section("Forms", &html! {}, &forms_shown(w)))
        (section("Clubs", &html! {}, &club_row(w, &chips(w), "#clubs")))
        (section("The beam", &html! {}, &html! {
            @for view in [iron_beam(w), wood_beam(w), putter_beam(w), crowded_beam(w)] { div.card { (beam(w, &view)) } }
            div.card { (beam(w, &BeamView { id: "beam-empty".to_owned(), club: "9 iron".to_owned(), ..BeamView::default() })) }
            div.card { (beam(w, &BeamView { id: "beam-compact".to_owned(), compact: true, ..iron_beam(w) })) }
        }))
        (section("The funnel", &html! {}, &columns(&[
            card(&funnel(w, &sample_funnel(w, "funnel-a"))), card(&funnel(w, &doubted_funnel(w))),
            card(&funnel(w, &FunnelView::default())),
        ])))
    }
}
