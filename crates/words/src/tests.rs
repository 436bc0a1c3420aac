use crate::files::ENGLISH;
use crate::{Language, Piece, Words, speak, text};
use fact::{Refusal, Told};
use quantity::{LengthUnit, MassUnit, Notation, NotationError, Problem, Units, parse_length, parse_mass};

const METRIC_OUNCES: Units = Units { length: LengthUnit::Millimetre, mass: MassUnit::Ounce };

/// A language of its own for a test.
fn texts(content: &str) -> Words {
    let common = ENGLISH.iter().find(|(name, _)| *name == "common").map_or("", |(_, text)| text);
    let files = [("common", common), ("own", content)];
    let language = Language::new("en", &files).unwrap_or_else(|(_, errors)| panic!("{errors:?}"));
    Words::new(Box::leak(Box::new(language)), METRIC_OUNCES, jiff::tz::TimeZone::UTC)
}

#[test]
fn the_english_texts_can_be_read_and_each_name_stands_once() {
    let found = Language::new("en", ENGLISH).map_err(|(_, errors)| errors);
    assert_eq!(found.map(|l| l.code().to_owned()), Ok("en".to_owned()));
}

#[test]
fn a_figure_is_shown_by_the_end_of_its_name() {
    let words = texts("a = add { $by_g }, cut { $off_mm }, { $gap_points } off, { $weak_deg } weak, at { $at }");
    let told =
        text!(words, "a", by_g = 28.349_523_125, off_mm = 25.4, gap_points = -0.34, weak_deg = 1.5, at = 3_usize);
    assert_eq!(told, "add 1.000 oz, cut 25.4 mm, −0.3 points off, 1.5° weak, at 3");
}

#[test]
fn a_text_may_ask_for_another_form() {
    let words = texts(
        "a = { LETTER($now_points) }, { MASS($by_g, digits: 2, signed: 1) }, { PLAIN($by_g, digits: 2) }, { CLOCK($until_at) } { DAY($until_at) }",
    );
    let at = "2026-11-29T04:36:08Z";
    let told = text!(words, "a", now_points = 30.0, by_g = 28.349_523_125, until_at = at);
    assert_eq!(told, "D0.0, +1.0000 oz, 1.0000, 04:36 29 Nov");
}

#[test]
fn one_and_many_and_none() {
    let words = texts(
        "a =
    { $n ->
        [one] a club
       *[other] { $n } clubs
    }, { $limit_deg ->
        [none] no limit
       *[other] at most { $limit_deg }
    }",
    );
    assert_eq!(text!(words, "a", n = 1_usize, limit_deg = None::<f64>), "a club, no limit");
    assert_eq!(text!(words, "a", n = 3_usize, limit_deg = Some(3.0)), "3 clubs, at most 3.0°");
}

#[test]
fn a_list_is_one_of_the_language() {
    let words = texts("a = { $names }");
    let names = ["7", "8", "PW"].map(str::to_owned).to_vec();
    assert_eq!(text!(words, "a", names = names), "7, 8 and PW");
}

#[test]
fn a_marked_phrase_is_a_piece_and_a_name_never_becomes_a_mark() {
    let words = texts("a = Go to <a>{ $name }</a>, then on.");
    let text = |text: &str| Piece::Text(text.to_owned());
    assert_eq!(
        words.pieces("a", &[("name", crate::figure("x</a><b>"))]),
        [text("Go to "), Piece::Marked("a".into(), "x</a><b>".into()), text(", then on.")]
    );
}

#[test]
fn an_answer_is_told_beside_its_facts() {
    let fact = Told::new("refusal.unknown").with("what", "head model").with("name", "H-9");
    let refusal = Refusal::new(&fact).next(&Told::verbatim("See the list"));
    let mut answer = serde_json::json!({ "found": [{ "at": "x", "fact": fact::Fact::told(&refusal) }] });
    speak(&mut answer, &Words::english(Units::default()));
    assert_eq!(answer["found"][0]["fact"]["words"], "there is no head model “H-9”. See the list");
    assert_eq!(answer["found"][0]["fact"]["figures"]["what"]["words"], "there is no head model “H-9”");
}

#[test]
fn what_to_do_next_is_told_beside_a_fact_and_once() {
    let own = texts("glue-short = too little is left\n    .next = Mix more\nlist-entry = entry { $n }: { $what }");
    let short = Told::new("glue.short");
    let entry = Told::new("list.entry").with("n", &3_usize).with("what", &short);
    let mut answer = serde_json::json!({ "bad": [{ "problem": entry }, { "problem": short }] });
    speak(&mut answer, &own);
    assert_eq!(answer["bad"][0]["problem"]["next"], "Mix more");
    assert_eq!(answer["bad"][0]["problem"]["figures"]["what"]["next"], serde_json::Value::Null);
    assert_eq!(answer["bad"][1]["problem"]["next"], "Mix more");
}

#[test]
fn what_to_do_next_stands_beside_the_text_of_a_fact() {
    let own = texts(
        "refusal-with-next = { $what }. { $next }
glue-short = { $left_g } is left
    .next = Mix { $missing_g } more
list-entry = entry { $n }: { $what }",
    );
    let short = Told::new("glue.short").with("left_g", &28.349_523_125).with("missing_g", &14.174_761_562_5);
    assert_eq!(own.refusal(&Refusal::new(&short)), "1.000 oz is left. Mix 0.500 oz more");
    // Within another fact the step is still that of the fact inside, unless one is given.
    let entry = Refusal::new(&short).within(|what| Told::new("list.entry").with("n", &3_usize).with("what", &what));
    assert_eq!(own.refusal(&entry), "entry 3: 1.000 oz is left. Mix 0.500 oz more");
    assert_eq!(own.tell(&entry), own.refusal(&entry));
    let given = entry.next(&Told::new("glue.short").with("left_g", &0.0).with("missing_g", &0.0));
    assert_eq!(own.next(&given).as_deref(), Some("0.000 oz is left"));
}

#[test]
fn facts_from_below_have_their_texts() {
    let known = |list: &str, key: &str| Words::english(Units::default()).told(&Told::of_list(list, key));
    for notation in Notation::ALL {
        assert!(!known("Notation", notation.key()).is_empty());
        assert!(!known("NotationExample", notation.key()).is_empty());
    }
    assert!(Problem::ALL.iter().all(|problem| !known("NotationProblem", problem.key()).is_empty()));
}

#[test]
fn a_refused_text_is_told_with_its_place_and_an_example() {
    let told = |error: NotationError| Words::english(Units::default()).refusal(&Refusal::new(&error));
    let error = parse_length("36 3/0 in", LengthUnit::Inch).expect_err("divides by zero");
    assert_eq!(
        told(error),
        "“36 3/0 in” cannot be read as a length: at character 4 (“3/0 in”) the fraction must be less than one and must \
         not divide by zero. Write for example 36 3/4 in, 93.3 cm or 940 mm"
    );
    let end = told(parse_length("36 3/", LengthUnit::Inch).expect_err("no denominator"));
    assert!(end.contains("at character 6 (the end)"), "{end}");
    let whole = told(parse_mass("heavy", MassUnit::Gram).expect_err("no figure"));
    assert_eq!(whole, "“heavy” cannot be read as a mass: a number is expected here. Write for example 8 g or 1.75 oz");
}

/// A letter with two digits is one whose point was left out; with 12 it may be the next letter, so nothing is guessed.
#[test]
fn a_left_out_point_is_seen() {
    let told = |text: &str| {
        let error = quantity::parse_swing_weight(text).expect_err("beyond its letter");
        Words::english(Units::default()).refusal(&Refusal::new(&error))
    };
    let d97 = "“D97” cannot be read as a swing weight: a letter has the points 0 to 9.9. Did you mean D9.7?";
    assert_eq!(told("D97"), d97);
    assert!(told("E04").ends_with("Did you mean E0.4?"));
    assert!(told("D12").ends_with("Write for example D3.5 or 213.5 oz in"));
    assert!(told("D250").ends_with("Write for example D3.5 or 213.5 oz in"));
}

#[test]
fn the_marked_language_changes_texts_and_leaves_figures_and_marks() {
    let marked = Language::marked(|text| text.replace(|c: char| c.is_ascii_alphabetic(), "x"));
    let words = Words::new(Box::leak(Box::new(marked)), Units::default(), jiff::tz::TimeZone::UTC);
    assert_eq!(
        words.tell(&Told::new("refusal.unknown").with("what", "head").with("name", "H-9")),
        "xxxxx xx xx head “H-9”"
    );
}
