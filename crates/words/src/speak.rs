//! The sentences of an answer for programs: beside every fact the same in words.

use crate::Words;
use fact::Told;
use serde_json::Value;

/// Whether a document in JSON may have facts; where it has none, [`speak`] has nothing to do.
#[must_use]
pub fn may_have_facts(json: &str) -> bool {
    json.contains("\"figures\":")
}

/// Writes `words` beside the `code` and `figures` of every fact in a document, within other facts too, and `next` beside
/// one that says what to do about it. A fact that a document has under the name `told` gives the document its sentence as
/// well.
///
/// A document is made of facts alone, so that it is the same for everybody; the sentences come last, where it is handed
/// out.
///
/// # Examples
///
/// ```
/// use quantity::Units;
/// use words::Words;
///
/// let mut answer = serde_json::json!({
///     "problem": { "code": "refusal.unknown", "figures": { "what": "head model", "name": "H-9" } }
/// });
/// words::speak(&mut answer, &Words::english(Units::default()));
/// assert_eq!(answer["problem"]["words"], "there is no head model “H-9”");
/// ```
pub fn speak(document: &mut Value, words: &Words) {
    speak_in(document, words, Place::Free);
}

/// Whether a fact stands for itself or is a figure of another, which then says what to do.
#[derive(Clone, Copy, PartialEq)]
enum Place {
    Free,
    Within,
}

fn speak_in(document: &mut Value, words: &Words, place: Place) {
    match document {
        Value::Array(items) => items.iter_mut().for_each(|item| speak_in(item, words, place)),
        Value::Object(fields) => {
            let is_fact = fields.get("code").is_some_and(Value::is_string)
                && fields.get("figures").is_some_and(Value::is_object)
                && !fields.contains_key("words");
            let told = is_fact.then(|| {
                let of = |name: &str| fields.get(name).cloned().unwrap_or_default();
                serde_json::from_value::<Told>(serde_json::json!({ "code": of("code"), "figures": of("figures") }))
            });
            for (name, value) in fields.iter_mut() {
                let inner = if is_fact && name == "figures" { Place::Within } else { place };
                speak_in(value, words, inner);
            }
            // A document with a code or figures of its own has its fact under a name; its sentence stands there as well.
            let sentence = fields.get("told").and_then(|told| told.get("words")).cloned();
            if let Some(sentence) = sentence.filter(|_| !fields.contains_key("words")) {
                let sentence = sentence.as_str().map(crate::sentence).unwrap_or_default();
                fields.insert("words".to_owned(), Value::String(sentence));
            }
            if let Some(Ok(told)) = told {
                fields.insert("words".to_owned(), Value::String(words.told(&told)));
                let next = if place == Place::Free { words.next_beside(&told) } else { None };
                if let Some(next) = next {
                    fields.entry("next").or_insert(Value::String(next));
                }
            }
        }
        _ => {}
    }
}
