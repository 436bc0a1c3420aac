//! Goal: the vibration topics are reached by name, their examples work, and strangers in the document are named.

use crate::told;
use clubphysics::{PhysicsError, calc};
use rstest::rstest;
use serde_json::{Value, json};

#[rstest]
#[case("frequency", "/frequencies_cpm/0", 305.0, 1e-9)]
// The example is a shaft of 2 % with readings rounded to 0.01 N of 15 N: 0.03 % covers three deviations of that.
#[case("soft-side", "/asymmetry_percent", 2.0, 0.03)]
#[case("pluck", "/planes/difference_cpm", 6.0, 0.05)]
fn examples_work(#[case] topic: &str, #[case] pointer: &str, #[case] expected: f64, #[case] tolerance: f64) {
    let found = calc::topics().iter().find(|known| known.name == topic).expect("the topic is offered");
    let output = calc::run(topic, (found.example)()).unwrap_or_else(|error| panic!("{error}"));
    let value = output.pointer(pointer).and_then(Value::as_f64).unwrap_or_else(|| panic!("{output:#}"));
    assert!((value - expected).abs() <= tolerance, "{value}");
}

#[rstest]
#[case("frequency")]
#[case("soft-side")]
#[case("pluck")]
fn unknown_fields_are_refused_by_name(#[case] topic: &str) {
    let found = calc::topics().iter().find(|known| known.name == topic).expect("the topic is offered");
    let mut input = (found.example)();
    input["colour"] = json!("red");
    match calc::run(topic, input).unwrap_err() {
        error @ PhysicsError::Unreadable { .. } => assert!(told(&error).contains("colour"), "{error}"),
        other => panic!("{other}"),
    }
}
