//! Goal: a document is read as its schema says, and a mistake is told with its place and in plain words.
//! Method: real types of every shape that serde derives are read from texts with one mistake each; the mistakes come by
//! way of `serde` and `serde_json` themselves, so that a change of theirs shows here.

use document::{Unreadable, read, read_value};
use quantity::Units;
use serde::Deserialize;
use serde_json::json;
use words::Words;

#[derive(Debug, Deserialize, PartialEq)]
#[serde(deny_unknown_fields)]
struct Sheet {
    golfer: String,
    clubs: Vec<Club>,
    #[serde(default)]
    seed: Option<u64>,
    #[serde(default)]
    points: Option<[f64; 2]>,
    #[serde(default)]
    done: bool,
    #[serde(default)]
    rule: Rule,
    #[serde(default)]
    from: Option<From>,
}

#[derive(Debug, Deserialize, PartialEq)]
#[serde(deny_unknown_fields)]
struct Club {
    number: String,
    mass_g: f64,
    #[serde(default)]
    slot: i64,
    #[serde(default)]
    wraps: u8,
}

#[derive(Debug, Default, Deserialize, PartialEq)]
#[serde(rename_all = "snake_case")]
enum Rule {
    #[default]
    Equal,
    Stepped,
}

#[derive(Debug, Deserialize, PartialEq)]
#[serde(rename_all = "snake_case")]
enum From {
    Stock { code: String },
    Order(i64),
}

#[derive(Debug, Deserialize, PartialEq)]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
enum Model {
    Head { code: String, mass_g: f64 },
}

#[derive(Debug, Deserialize, PartialEq)]
#[serde(default, deny_unknown_fields)]
#[derive(Default)]
struct AllLeftOut {
    seconds: f64,
}

const GOOD: &str = r#"{"golfer": "Ada", "clubs": [{"number": "7", "mass_g": 264.5}]}"#;

/// What is wrong, without the place.
fn said(error: &Unreadable) -> String {
    Words::english(Units::default()).told(&error.what)
}

/// What is wrong, with the place.
fn whole(error: &Unreadable) -> String {
    Words::english(Units::default()).tell(error)
}

fn mistake(text: &str) -> Unreadable {
    read::<Sheet>(text.as_bytes()).expect_err(text)
}

#[track_caller]
fn told(text: &str, pointer: &str, what: &str) {
    let error = mistake(text);
    assert_eq!((error.pointer.as_str(), said(&error).as_str()), (pointer, what), "{text}");
    let place = if pointer.is_empty() { "the document" } else { pointer };
    let (line, column) = error.at.expect("a place in the text");
    assert_eq!(whole(&error), format!("{place}: {what} (line {line}, column {column})"));
}

#[test]
fn a_good_document_is_read_as_serde_reads_it() {
    let plain: Sheet = serde_json::from_str(GOOD).expect("read");
    assert_eq!(read::<Sheet>(GOOD.as_bytes()), Ok(plain));
    let marked = format!("\u{feff}{GOOD}");
    assert!(read::<Sheet>(marked.as_bytes()).is_ok(), "a byte order mark is skipped");
    let whole = r#"{"golfer": "Ada", "clubs": [], "seed": 4, "points": [1, 2.5], "done": true, "rule": "stepped",
        "from": {"stock": {"code": "H7"}}}"#;
    let sheet: Sheet = read(whole.as_bytes()).expect("read");
    assert_eq!(sheet.points, Some([1.0, 2.5]));
    assert_eq!(sheet.from, Some(From::Stock { code: "H7".into() }));
    assert_eq!(read(br#"{"order": 5}"#), Ok(From::Order(5)));
    let model = json!({"code": "H", "mass_g": 5, "kind": "head"});
    assert_eq!(read_value(model), Ok(Model::Head { code: "H".into(), mass_g: 5.0 }));
}

#[test]
fn the_place_is_named_and_what_must_be_there() {
    told(
        r#"{"golfer": "Ada", "clubs": [{"number": "7", "mass_g": "x"}]}"#,
        "/clubs/0/mass_g",
        "must be a number, not the text “x”",
    );
    told(r#"{"golfer": "Ada", "clubs": [{"number": "7"}]}"#, "/clubs/0/mass_g", "is missing");
    told(r#"{"golfer": 5, "clubs": []}"#, "/golfer", "must be a text, not 5");
    told(r#"{"golfer": null, "clubs": []}"#, "/golfer", "must be a text, not an empty value");
    told(r#"{"golfer": "Ada", "clubs": {}}"#, "/clubs", "must be a list [ … ], not an object");
    told(r#"{"golfer": "Ada", "clubs": [], "seed": -1}"#, "/seed", "must be a whole number, 0 or more, not -1");
    told(r#"{"golfer": "Ada", "clubs": [], "seed": 1.5}"#, "/seed", "must be a whole number, 0 or more, not 1.5");
    told(r#"{"golfer": "Ada", "clubs": [], "done": "yes"}"#, "/done", "must be true or false, not the text “yes”");
    told(r#"{"golfer": "Ada", "clubs": [], "done": 1}"#, "/done", "must be true or false, not 1");
    told(r#"{"golfer": true, "clubs": []}"#, "/golfer", "must be a text, not true");
    told(r#"{"golfer": "Ada", "clubs": [], "points": [1]}"#, "/points", "must be a list of 2, but has 1");
    told(r#"{"golfer": "Ada", "clubs": [], "points": 1}"#, "/points", "must be a list of 2, not 1");
    told(
        r#"{"golfer": "Ada", "clubs": [], "rule": "flat"}"#,
        "/rule",
        "“flat” is not one of the choices; known here: equal and stepped",
    );
    told(r#"{"golfer": "Ada", "clubs": [], "golfer": "Eve"}"#, "/golfer", "is given twice");
    told(
        r#"{"golfer": "Ada", "clubs": [{"number": "7", "mass_g": 1, "a/b": 1}]}"#,
        "/clubs/0/a~1b",
        "unknown field `a/b`; known here: number, mass_g, slot and wraps",
    );
    told(
        r#"{"golfer": "Ada", "clubs": [{"number": "7", "mass_g": 1, "wraps": 300}]}"#,
        "/clubs/0/wraps",
        "must be a whole number from 0 to 255, not 300",
    );
    told(r#""a sheet""#, "", "must be an object { … }, not the text “a sheet”");
}

#[test]
fn an_object_is_not_filled_from_a_list() {
    // serde_json itself takes these.
    assert!(serde_json::from_str::<Club>(r#"["7", 264.5, 1, 0]"#).is_ok());
    assert!(serde_json::from_str::<AllLeftOut>("[]").is_ok());
    told(r#"{"golfer": "Ada", "clubs": [["7", 264.5, 1]]}"#, "/clubs/0", "must be an object { … }, not a list");
    assert_eq!(said(&read::<AllLeftOut>(b"[]").expect_err("a list")), "must be an object { … }, not a list");
    assert_eq!(said(&read_value::<AllLeftOut>(json!([])).expect_err("a list")), "must be an object { … }, not a list");
    let choice = read::<From>(br#"{"stock": ["H7"]}"#).expect_err("a list");
    assert_eq!((choice.pointer.as_str(), said(&choice).as_str()), ("/stock", "must be an object { … }, not a list"));
}

#[test]
fn a_whole_number_may_be_written_with_a_point() {
    // JSON Schema 2020-12 (validation, 6.1.1): a number whose fraction is zero is an integer.
    let club: Club = read(br#"{"number": "7", "mass_g": 264.5, "slot": 79.0}"#).expect("read");
    assert_eq!(club.slot, 79);
    let sheet: Sheet = read(br#"{"golfer": "Ada", "clubs": [], "seed": 1e3}"#).expect("read");
    assert_eq!(sheet.seed, Some(1000));
    // Beyond 2^53 a double no longer tells neighbours apart: refused, not rounded.
    assert!(read::<Sheet>(br#"{"golfer": "Ada", "clubs": [], "seed": 1e16}"#).is_err());
    assert!(read::<Sheet>(br#"{"golfer": "Ada", "clubs": [], "seed": -1.0}"#).is_err());
}

#[test]
fn a_text_that_is_not_json_is_told_with_its_line() {
    let told = |text: &str| whole(&mistake(text));
    let long = "[".repeat(200);
    for (text, words) in [
        ("", "line 1, column 1: it is empty"),
        ("{\"golfer\": \"Ada\",", "column 17: it ends too early"),
        ("{\"golfer\": Ada}", "line 1, column 12: a value is missing or misspelled"),
        ("{\"golfer\" 5}", "a colon is missing after a name"),
        ("{golfer: 5}", "a name must be in double quotes"),
        ("{\"golfer\": \"Ada\"\n \"clubs\": []}", "line 2, column 2: a comma or the end of an object is missing"),
        ("{\"golfer\": \"Ada\", \"clubs\": [],}", "a comma must not be before the end"),
        ("{\"golfer\": \"A\nda\"}", "a text holds a line break or a tab"),
        ("{\"golfer\": \"A\\da\"}", "a backslash that is not part of an escape"),
        ("{\"golfer\": 01}", "a number is misspelled"),
        ("{\"golfer\": 1e999}", "a number is too large"),
        (r#"{"golfer": "Ada", "clubs": []} more"#, "there is more text after the end"),
        (long.as_str(), "lists and objects are nested more than 128 deep"),
    ] {
        assert!(told(text).contains(words), "{text}: {}", told(text));
    }
    let deep = format!("{{\"golfer\": {}", "[".repeat(200));
    assert!(!read::<serde_json::Value>(deep.as_bytes()).expect_err("too deep").is_json);
    let late = "{\"golfer\": \"Ada\",\n \"clubs\": 5}";
    assert!(told(late).ends_with("(line 2, column 11)"), "{}", told(late));
}

#[test]
fn within_a_document_told_apart_by_a_field_the_sentence_still_names_the_field() {
    let missing = read_value::<Model>(json!({"kind": "head", "code": "H"})).expect_err("no mass");
    assert_eq!((missing.pointer.as_str(), said(&missing).as_str()), ("/mass_g", "is missing"));
    let hat = read_value::<Model>(json!({"kind": "hat"})).expect_err("no hat");
    assert_eq!(said(&hat), "“hat” is not one of the choices; known here: head");
    let none = read_value::<Vec<Model>>(json!([{}])).expect_err("no kind");
    assert_eq!((none.pointer.as_str(), said(&none).as_str()), ("/0/kind", "is missing"));
    let null = read_value::<Vec<Model>>(json!([null])).expect_err("null");
    assert_eq!((null.pointer.as_str(), said(&null).as_str()), ("/0", "must be an object { … }, not an empty value"));
}

/// The same name twice is a slip, and nobody knows which was meant. In a value of free form the last used to win.
#[test]
fn a_name_that_stands_twice_is_a_mistake_in_every_shape() {
    use serde_json::Value;
    use std::collections::BTreeMap;

    for (text, pointer, line) in [
        (r#"{"total_mass_g": 350, "balance_point_mm": 820, "total_mass_g": 305}"#, "/total_mass_g", 1),
        ("{\"parts\": [{\"mass_g\": 1},\n{\"mass_g\": 1, \"mass_g\": 1}]}", "/parts/1/mass_g", 2),
        (r#"{"what_if": {}, "total_mass_g": 1, "what_if": {}}"#, "/what_if", 1),
    ] {
        let error = read::<Value>(text.as_bytes()).expect_err("twice");
        assert_eq!((error.pointer.as_str(), said(&error).as_str()), (pointer, "is given twice"), "{text}");
        assert_eq!(error.at.expect("a place").0, line, "{text}");
    }
    let map = read::<BTreeMap<String, f64>>(br#"{"a": 1, "b": 2, "a": 3}"#).expect_err("twice");
    assert_eq!(map.pointer, "/a");
    told(r#"{"golfer": "Ada", "clubs": [], "golfer": "Eve"}"#, "/golfer", "is given twice");
}

/// A name of a map may be of a type that wraps a text, or one of a few words.
#[test]
fn names_of_a_map_are_read_as_their_type() {
    use std::collections::BTreeMap;

    #[derive(Debug, Deserialize, PartialEq, Eq, PartialOrd, Ord)]
    struct Code(String);
    #[derive(Debug, Deserialize, PartialEq, Eq, PartialOrd, Ord)]
    #[serde(rename_all = "snake_case")]
    enum Kind {
        Head,
        TipWeight,
    }
    let codes = read::<BTreeMap<Code, u8>>(br#"{"H1": 1, "H2": 2}"#).expect("codes");
    assert_eq!(codes, BTreeMap::from([(Code("H1".into()), 1), (Code("H2".into()), 2)]));
    let kinds = read::<BTreeMap<Kind, u8>>(br#"{"tip_weight": 3, "head": 1}"#).expect("kinds");
    assert_eq!(kinds, BTreeMap::from([(Kind::Head, 1), (Kind::TipWeight, 3)]));
    assert!(
        said(&read::<BTreeMap<Kind, u8>>(br#"{"boot": 3}"#).expect_err("no kind")).contains("not one of the choices")
    );
}

/// What JSON has besides: signs, escapes, nothing.
#[test]
fn a_value_is_read_as_it_stands() {
    let odd = r#"{"a": [-1, 1.5e-3, 18446744073709551615, "é\n\"", null, true, {}, []]}"#;
    let value: serde_json::Value = read(odd.as_bytes()).expect("good");
    assert_eq!(value, serde_json::from_str::<serde_json::Value>(odd).expect("good"));
}

#[test]
fn an_empty_text_is_said_to_be_empty() {
    for text in [" \n\t", "\u{feff}"] {
        assert_eq!(whole(&mistake(text)), "the text is not JSON at line 1, column 1: it is empty");
    }
}

/// `serde` numbers the choices by their order in the source and takes the number for the name.
#[test]
fn a_choice_is_named_and_not_numbered() {
    for (text, found) in [(r#"{ "kind": 0 }"#, "0"), (r#"{ "kind": -1 }"#, "-1")] {
        let error = document::read::<Model>(text.as_bytes()).expect_err("a number is no name");
        assert_eq!(error.what.code(), "document_mistake.wrong_kind", "{error}");
        assert!(error.to_string().contains(found), "{error}");
    }
}
