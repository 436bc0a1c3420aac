//! What a person reads of an output: its facts as sentences.

use fact::Fact;
use quantity::Units;
use serde_json::Value;
use words::Words;

/// The sentence of a fact.
pub fn tell(fact: &impl Fact) -> String {
    Words::english(Units::default()).tell(fact)
}

/// The sentence of a fact of an output; empty where the value is none.
pub fn words(value: &Value) -> String {
    words_in(value, Units::default())
}

/// The same for a reader of these units.
pub fn words_in(value: &Value, units: Units) -> String {
    let mut value = value.clone();
    words::speak(&mut value, &Words::english(units));
    value["words"].as_str().unwrap_or_default().to_owned()
}
