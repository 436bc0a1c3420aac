//! The form of a calculation, made from the schema of its input document: a field that the document gains is asked without
//! a word here, and a test says where its label is missing.

use super::EntryName;
use super::entries::{Entries, plain_number};
use super::fields::{self, Ask, Way, put};
use clubphysics::calc::Topic;
use fact::{Refusal, Told};
use serde_json::Value;
use words::{Words, text};

/// Signs of units by the end of a name, the longest first.
const UNITS: [(&str, &str); 27] = [
    ("_kj_mol", "kJ/mol"),
    ("_kg_cm2", "kg·cm²"),
    ("_g_cm2", "g·cm²"),
    ("_n_m2", "N·m²"),
    ("_m_s2", "m/s²"),
    ("_oz_in", "oz·in"),
    ("_g_ml", "g/ml"),
    ("_g_m2", "g/m²"),
    ("_per_s", "1/s"),
    ("_g_cm", "g·cm"),
    ("_g_m", "g/m"),
    ("_m_s", "m/s"),
    ("_n_m", "N/m"),
    ("_percent", "%"),
    ("_mpa", "MPa"),
    ("_cpm", "cpm"),
    ("_deg", "°"),
    ("_min", "min"),
    ("_hz", "Hz"),
    ("_mm", "mm"),
    ("_ml", "ml"),
    ("_in", "in"),
    ("_g", "g"),
    ("_c", "°C"),
    ("_s", "s"),
    ("_n", "N"),
    ("_m", "m"),
];

/// What a name of a document means: what it is of, the sign of its unit, and whether it is its standard deviation.
fn meaning(key: &str) -> (&str, &'static str, bool) {
    let (base, sd) = key.strip_suffix("_sd").map_or((key, false), |base| (base, true));
    let base = base.strip_suffix("_95").unwrap_or(base);
    let found = UNITS.iter().find(|(end, _)| base.ends_with(end) && base.len() > end.len());
    let (stem, unit) = found.map_or((base, ""), |(end, unit)| (&base[..base.len() - end.len()], *unit));
    (stem, unit, sd)
}

/// Label and unit of a name: `butt_trim_mm_sd` is `butt trim ±` in mm.
pub(super) fn named(key: &str) -> (Told, &'static str) {
    let (stem, unit, sd) = meaning(key);
    let label = Told::of_list("CalcField", stem);
    // A place that the name carries: `moment_12_in`.
    let place_in = stem.strip_suffix("_in").and_then(|stem| stem.rsplit('_').next()?.parse::<f64>().ok());
    let label = place_in.map_or(label.clone(), |place_in| label.with("place_mm", &(place_in * quantity::INCH_MM)));
    (if sd { Told::new("calc_form.sd").with("of", &label) } else { label }, unit)
}

/// The same in words.
pub(super) fn label(w: &Words, key: &str) -> String {
    w.tell(&named(key).0)
}

/// A choice of a document in words: `by_mass`.
pub(super) fn choice(key: &str) -> Told {
    Told::of_list("CalcChoice", key)
}

/// The last word of a place.
pub(super) fn last(path: &str) -> &str {
    path.rsplit('.').next().unwrap_or(path)
}

/// What stands before the last word of a place.
pub(super) fn group(path: &str) -> &str {
    path.rsplit_once('.').map_or("", |(front, _)| front)
}

/// A schema without its references, and without the alternative that nothing is given.
fn resolved<'a>(schema: &'a Value, whole: &'a Value) -> &'a Value {
    let inner = if let Some(name) = schema["$ref"].as_str().and_then(|path| path.rsplit('/').next()) {
        &whole["components"]["schemas"][name]
    } else {
        let mut ways = schema["oneOf"].as_array().into_iter().flatten().filter(|way| way["type"] != "null");
        match (ways.next(), ways.next()) {
            (Some(only), None) => only,
            _ => return schema,
        }
    };
    resolved(inner, whole)
}

/// The type that a schema names, beside `null`.
fn type_of(schema: &Value) -> &str {
    let named = schema["type"].as_array().into_iter().flatten().chain(std::iter::once(&schema["type"]));
    named.filter_map(Value::as_str).find(|name| *name != "null").unwrap_or_default()
}

/// The words of a closed list, where a schema is one; each may be described by itself.
fn keys_of(schema: &Value) -> Vec<&str> {
    let ways = schema["oneOf"].as_array().into_iter().flatten();
    let listed = ways.flat_map(|way| way["enum"].as_array().into_iter().flatten());
    listed.chain(schema["enum"].as_array().into_iter().flatten()).filter_map(Value::as_str).collect()
}

/// The fields of a schema, those inside of parts by their places.
fn collect(schema: &Value, whole: &Value, path: &str, found: &mut Vec<Ask>) {
    let required = |key: &str| schema["required"].as_array().into_iter().flatten().any(|name| name == key);
    for (key, field) in schema["properties"].as_object().into_iter().flatten() {
        let place = if path.is_empty() { key.clone() } else { format!("{path}.{key}") };
        let field = resolved(field, whole);
        let (label, unit) = named(key);
        let way = match type_of(field) {
            "object" => {
                collect(field, whole, &place, found);
                continue;
            }
            "array" => match resolved(&field["items"], whole) {
                row if row["properties"].is_object() => Way::Rows(columns(row, whole)),
                _ => Way::Numbers(unit),
            },
            "integer" => Way::Count,
            "boolean" => Way::YesNo,
            _ if !keys_of(field).is_empty() => {
                Way::Choice(keys_of(field).into_iter().map(|key| (key.to_owned(), choice(key))).collect())
            }
            "string" => Way::Text,
            _ => Way::Number(unit),
        };
        let mut ask = Ask::new(place, label, way);
        // What a part of the document needs, it needs only where the part is given: the topic says so.
        ask.optional = !path.is_empty() || !required(key);
        found.push(ask);
    }
}

/// The columns of a list, the name first; one inside of a part keeps its first word: `head mass`.
fn columns(row: &Value, whole: &Value) -> Vec<Ask> {
    let mut found = Vec::new();
    collect(row, whole, "", &mut found);
    for ask in &mut found {
        if let Some((front, _)) = ask.key.split_once('.') {
            ask.label = Told::new("calc_form.within").with("part", &named(front).0).with("of", &ask.label);
        }
        // A row that lacks a figure is named by the topic with its place.
        ask.optional = true;
    }
    found.sort_by_key(|ask| ask.key != "name");
    found
}

/// What a topic asks: the plain values of the document first, then what belongs together.
pub(super) fn asks(topic: &Topic) -> Vec<Ask> {
    let whole = (topic.input)();
    let mut found = Vec::new();
    collect(&whole, &whole, "", &mut found);
    for ask in &mut found {
        ask.optional = true;
    }
    found.sort_by_key(|a| (!group(&a.key).is_empty(), group(&a.key).to_owned()));
    found
}

/// A document as its form shows it. Columns that no row of it uses are left out, so that a line can be read.
pub(super) fn typed(w: &Words, asks: &[Ask], document: &Value) -> Entries {
    let used: Vec<Ask> = asks.iter().map(|ask| used(ask, fields::at(document, &ask.key))).collect();
    Entries::new(fields::typed(w, &used, document))
}

fn used(ask: &Ask, value: &Value) -> Ask {
    let mut ask = ask.clone();
    if let (Way::Rows(columns), Value::Array(rows)) = (&mut ask.way, value) {
        columns.retain(|column| rows.iter().any(|row| !fields::at(row, &column.key).is_null()));
    }
    ask
}

/// The document that was typed; what could not be read stands beside its field.
pub(super) fn document(w: &Words, asks: &[Ask], form: &mut Entries) -> Value {
    let mut object = fields::document(w, asks, form);
    // What no field shows may still be given in the address; the topic refuses by name what it does not know.
    let unknown: Vec<(String, String)> = form
        .pairs()
        .iter()
        .filter(|(name, text)| !text.trim().is_empty() && !asks.iter().any(|a| a.key == *name))
        .cloned()
        .collect();
    for (name, text) in unknown {
        put(&mut object, &name, plain_number(&text).map_or(Value::String(text), Value::from));
    }
    Value::Object(object)
}

/// Beside which of the asked fields a refusal belongs that names `field` of the document.
pub(super) fn beside<'a>(asks: &'a [Ask], field: &str) -> Option<&'a str> {
    let plain = field.split('[').next().unwrap_or(field);
    let by = |test: &dyn Fn(&str) -> bool| asks.iter().find(|a| test(&a.key)).map(|a| a.key.as_str());
    by(&|key| key == field || key == plain)
        .or_else(|| by(&|key| last(key) == plain))
        .or_else(|| by(&|key| group(key) == plain))
}

/// A refusal in the form's words: the document's name of the field becomes its label, where it is not one of a list.
pub(super) fn in_words(w: &Words, refusal: Refusal, field: &str) -> String {
    if field.contains('[') {
        return super::beside(w, &refusal);
    }
    let label = EntryName::Labelled { label: label(w, last(field)) };
    super::beside(w, &refusal.with_figure("field", &label))
}

/// A name with its unit in one: `mass (g)`.
pub(super) fn with_unit(w: &Words, key: &str, unit: &str) -> String {
    match unit {
        "" => label(w, key),
        unit => text!(w, "calc-form-with-unit", of = label(w, key), unit = unit),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use clubphysics::calc::topics;
    use quantity::Units;
    use std::collections::BTreeSet;

    fn w() -> Words {
        Words::english(Units::default())
    }

    #[test]
    fn every_example_comes_back_from_its_form_and_calculates() {
        for topic in topics() {
            let example = (topic.example)();
            let asks = asks(topic);
            let mut form = typed(&w(), &asks, &example);
            let document = document(&w(), &asks, &mut form);
            assert!(form.is_sound(), "{}: {form:?}", topic.name);
            let (a, b) = ((topic.run)(example).expect("example"), (topic.run)(document).expect(topic.name));
            let texts = [a, b].map(|v| v.to_string().chars().filter(char::is_ascii_alphabetic).collect::<String>());
            assert_eq!(texts[0], texts[1], "{}", topic.name);
        }
    }

    /// The form comes from the schema, and the schema is that of the document: each field that is asked is one that the
    /// topic knows, and each field of the example is asked.
    #[test]
    fn what_is_asked_is_what_the_document_has() {
        fn names(value: &Value, path: &str, found: &mut BTreeSet<String>) {
            match value {
                Value::Object(map) => map.iter().for_each(|(key, inside)| {
                    names(inside, &if path.is_empty() { key.clone() } else { format!("{path}.{key}") }, found);
                }),
                _ => {
                    found.insert(path.to_owned());
                }
            }
        }
        for topic in topics() {
            let asks = asks(topic);
            let mut given = BTreeSet::new();
            names(&(topic.example)(), "", &mut given);
            let asked: BTreeSet<String> = asks.iter().map(|ask| ask.key.clone()).collect();
            assert!(given.is_subset(&asked), "{}: {:?}", topic.name, given.difference(&asked));
            for ask in &asks {
                let mut document = (topic.example)();
                if let Some(object) = document.as_object_mut()
                    && fields::at(&Value::Object(object.clone()), &ask.key).is_null()
                {
                    put(object, &ask.key, Value::Null);
                    if let Err(error) = (topic.run)(document) {
                        let refusal = error.refusal();
                        let code = refusal.fact().code();
                        assert_ne!(code, "calc_read.unknown_field", "{} {}: {error}", topic.name, ask.key);
                    }
                }
            }
        }
    }

    /// A field that an input or an output gains needs its label, and a choice its word.
    #[test]
    fn every_name_of_every_document_has_its_words() {
        let mut told = Vec::new();
        for topic in topics() {
            for whole in [(topic.input)(), (topic.output)()] {
                let schemas = whole["components"]["schemas"].as_object().into_iter().flat_map(|map| map.values());
                for schema in schemas.chain(std::iter::once(&whole)).filter(|s| s["properties"]["code"].is_null()) {
                    told.extend(schema["properties"].as_object().into_iter().flatten().map(|(key, _)| named(key).0));
                    told.extend(keys_of(schema).into_iter().map(choice));
                }
            }
        }
        assert!(told.len() > 300, "{}", told.len());
        for label in &told {
            if let Some(fact::Figure::Fact(of)) = label.figure("of") {
                words::check::texts_of_list(std::slice::from_ref(of));
            }
        }
        words::check::texts_of_list(&told);
    }

    #[test]
    fn names_become_words_and_units() {
        assert_eq!((label(&w(), "butt_trim_mm_sd"), named("butt_trim_mm_sd").1), ("butt trim ±".to_owned(), "mm"));
        assert_eq!((label(&w(), "moment_oz_in"), named("moment_oz_in").1), ("moment".to_owned(), "oz·in"));
        assert_eq!((label(&w(), "points"), named("points").1), ("points".to_owned(), ""));
        let frequency = topics().iter().find(|topic| topic.name == "frequency").expect("it");
        let asks = asks(frequency);
        let what_if = asks.iter().find(|ask| ask.key == "what_if").expect("a list");
        let Way::Rows(columns) = &what_if.way else { panic!("{what_if:?}") };
        assert!(columns.iter().any(|column| column.heading(&w()) == "head mass (g)"), "{columns:?}");
    }

    /// What errs together is named by the places of the document, as they stand in the address.
    #[test]
    fn correlations_can_be_typed() {
        let topic = &topics()[0];
        let asks = asks(topic);
        let typed_in = "one figure, other figure, coefficient\nparts[0].mass_g, parts[1].mass_g, 0.9";
        let mut pairs: Vec<(String, String)> = typed(&w(), &asks, &(topic.example)()).pairs().to_vec();
        pairs.iter_mut().filter(|(name, _)| name == "correlations").for_each(|(_, text)| *text = typed_in.to_owned());
        let mut form = Entries::new(pairs);
        let document = document(&w(), &asks, &mut form);
        assert!(form.is_sound(), "{form:?}");
        assert_eq!(document["correlations"][0]["b"], "parts[1].mass_g");
        assert_eq!(document["correlations"][0]["coefficient"], 0.9);
        clubphysics::calc::run("swing-weight", document).expect("a good document");
    }
}
