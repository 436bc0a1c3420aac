//! The form of a calculation, made from the document that its topic gives as an example: what is asked, under which
//! name, in which unit, and how what was typed becomes the document again.

use super::entries::{Entries, capital, plain, plain_number};
use serde_json::{Map, Value};
use words::Words;

/// How a value of the document is typed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Way {
    Number,
    Text,
    YesNo,
    Choice(&'static [&'static str]),
    /// Numbers, one after the other.
    List,
    /// One row a line under a header line; the keys of its columns.
    Rows(Vec<String>),
}

/// One value of the document: its place with dots, `finished.cap_mm`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Ask {
    pub path: String,
    pub way: Way,
}

/// Closed lists by the last word of their place.
const CHOICES: [(&str, &[&str]); 7] = [
    ("ratio", &["by_mass", "by_volume"]),
    ("convention", &["to_cap", "to_shaft_end"]),
    ("tip", &["parallel", "taper"]),
    ("measured_from", &["butt", "tip"]),
    ("between_rows", &["straight", "thin_cone", "solid_cone"]),
    ("shaft_law", &["stretched", "cut_at_butt"]),
    ("mark", &["soft", "stiff"]),
];

/// Fields that a topic knows beside those of its example. One that is missing here can still be given in the address.
const MORE: [(&str, &[&str]); 9] = [
    (
        "swing-weight",
        &[
            "correlations",
            "total_mass_g",
            "balance_point_mm",
            "fulcrum_in",
            "what_if.longer_mm",
            "what_if.butt_density_g_m",
            "what_if.cap_mm",
        ],
    ),
    ("inertia", &["correlations", "axis_mm", "pendulum.pivot_mm", "series.butt_density_g_m", "series.shaft_law"]),
    ("trim", &["correlations", "tip", "butt_trim_mm", "allow_taper_tip_trim", "finished.off_bottom_mm"]),
    (
        "frequency",
        &["correlations", "length_mm", "clamp_mm", "tip_trim_mm", "butt_trim_mm", "tip_load_n", "between_rows"],
    ),
    (
        "soft-side",
        &[
            "correlations",
            "forces_n_sd",
            "frequencies_cpm",
            "deflections_mm",
            "fixed_force_n",
            "asymmetry_that_matters_percent",
            "mark",
        ],
    ),
    ("pluck", &["full_scale", "start_s", "end_s", "lowest_hz", "highest_hz"]),
    ("grip-size", &["correlations", "tape.growth_a_layer_in", "tape.layer_mass_g", "tape.cap_in"]),
    (
        "lie",
        &[
            "correlations",
            "bend.step_deg",
            "bend.already_bent_lie_deg",
            "bend.already_bent_loft_deg",
            "bend.allow_beyond_limit",
        ],
    ),
    ("glue", &["correlations", "joint.bottom_gap_mm", "batch.adhesive_a_joint_g", "cure.handling"]),
];

/// Units by the end of a name, the longest first.
const UNITS: [(&str, &str); 25] = [
    ("_kj_mol", "kJ/mol"),
    ("_kg_cm2", "kg·cm²"),
    ("_g_cm2", "g·cm²"),
    ("_n_m2", "N·m²"),
    ("_m_s2", "m/s²"),
    ("_oz_in", "oz·in"),
    ("_g_ml", "g/ml"),
    ("_g_m2", "g/m²"),
    ("_g_cm", "g·cm"),
    ("_g_m", "g/m"),
    ("_m_s", "m/s"),
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

/// The trade's word where the plain one would not do.
const WORDS: [(&str, &str); 21] = [
    ("a", "one figure"),
    ("b", "other figure"),
    ("correlations", "errors that go together"),
    ("moment_12_in", "moment about 12 in"),
    ("letter", "swing weight"),
    ("position", "place from the butt"),
    ("what_if", "what if"),
    ("convention", "length is measured"),
    ("tip_body", "head"),
    ("stiffness_line", "stiffness along the shaft"),
    ("measured_from", "places count from the"),
    ("axis_1", "readings"),
    ("axis_2", "readings across"),
    ("limit", "most that it may be bent"),
    ("bead_share", "spacers, share of the whole mix"),
    ("spare", "spare, on top of the need"),
    ("ring", "adhesive in the gap"),
    ("beyond_ring", "adhesive beside the gap"),
    ("in_joints", "what the joints need"),
    ("tip_load", "pull on the tip"),
    ("depth", "depth of the bore"),
];

/// Label and unit of a name: `butt_trim_mm_sd` is `butt trim ±` in mm.
pub(super) fn named(w: &Words, key: &str) -> (String, &'static str) {
    let (base, sd) = key.strip_suffix("_sd").map_or((key, false), |base| (base, true));
    let base = base.strip_suffix("_95").unwrap_or(base);
    let found = UNITS.iter().find(|(end, _)| base.ends_with(end) && base.len() > end.len());
    let (stem, unit) = found.map_or((base, ""), |(end, unit)| (&base[..base.len() - end.len()], *unit));
    let words = WORDS.iter().find(|(k, _)| *k == stem).map_or_else(|| stem.replace('_', " "), |(_, w)| (*w).to_owned());
    (if sd { format!("{words} ±") } else { words }, unit)
}

/// Label with its unit in one: `mass (g)`.
pub(super) fn head(w: &Words, key: &str) -> String {
    let key = key.rsplit('.').next().unwrap_or(key);
    match named(w, key) {
        (label, "") => label,
        (label, unit) => format!("{label} ({unit})"),
    }
}

/// The last word of a place.
pub(super) fn last(path: &str) -> &str {
    path.rsplit('.').next().unwrap_or(path)
}

/// What stands before the last word of a place.
pub(super) fn group(path: &str) -> &str {
    path.rsplit_once('.').map_or("", |(front, _)| front)
}

/// What a topic asks, in the order of its example, then what it knows beside that.
pub(super) fn asks(w: &Words, topic: &str, example: &Value) -> Vec<Ask> {
    let mut found = Vec::new();
    collect("", example, &mut found);
    for path in MORE.iter().filter(|(name, _)| *name == topic).flat_map(|(_, list)| *list) {
        if !found.iter().any(|a| a.path == *path) {
            let way = match last(path) {
                "frequencies_cpm" | "deflections_mm" => Way::List,
                "handling" => Way::Rows(vec!["temperature_c".into(), "time_min".into()]),
                "correlations" => Way::Rows(vec!["a".into(), "b".into(), "coefficient".into()]),
                name if name.starts_with("allow_") => Way::YesNo,
                name => choice(name).unwrap_or(Way::Number),
            };
            found.push(Ask { path: (*path).to_owned(), way });
        }
    }
    // What belongs together stands together, the plain values of the document first.
    found.sort_by_key(|a| (!group(&a.path).is_empty(), group(&a.path).to_owned()));
    found
}

fn choice(name: &str) -> Option<Way> {
    CHOICES.iter().find(|(key, _)| *key == name).map(|(_, list)| Way::Choice(list))
}

fn collect(path: &str, value: &Value, found: &mut Vec<Ask>) {
    let mut push = |way| found.push(Ask { path: path.to_owned(), way });
    match value {
        Value::Object(map) => {
            for (key, inside) in map {
                let path = if path.is_empty() { key.clone() } else { format!("{path}.{key}") };
                collect(&path, inside, found);
            }
        }
        Value::Array(list) if list.first().is_some_and(Value::is_object) => push(Way::Rows(columns(list))),
        Value::Array(_) => push(Way::List),
        Value::Bool(_) => push(Way::YesNo),
        Value::String(_) => push(choice(last(path)).unwrap_or(Way::Text)),
        Value::Number(_) | Value::Null => push(Way::Number),
    }
}

/// The columns of a list: every key of any row, the name first.
fn columns(rows: &[Value]) -> Vec<String> {
    let mut keys: Vec<String> = Vec::new();
    for row in rows {
        let mut inside = Vec::new();
        collect("", row, &mut inside);
        for ask in inside {
            if !keys.contains(&ask.path) {
                keys.push(ask.path);
            }
        }
    }
    keys.sort_by_key(|k| k != "name");
    keys
}

/// Heading of a list's column; keys with a dot keep their first word: `head mass (g)`.
fn column_head(w: &Words, key: &str) -> String {
    match key.split_once('.') {
        Some((front, rest)) => format!("{} {}", named(w, front).0, head(w, rest)),
        None => head(w, key),
    }
}

/// The first line of a list, for who starts it from nothing.
pub(super) fn first_line(w: &Words, keys: &[String]) -> String {
    keys.iter().map(|k| column_head(w, k)).collect::<Vec<_>>().join(", ")
}

fn at<'a>(value: &'a Value, path: &str) -> &'a Value {
    path.split('.').fold(value, |inside, step| &inside[step])
}

/// One value as it is typed.
fn shown(w: &Words, value: &Value) -> String {
    match value {
        Value::Number(n) => plain(n.as_f64().unwrap_or(0.0)),
        Value::String(text) => text.clone(),
        Value::Bool(true) => "1".to_owned(),
        _ => String::new(),
    }
}

/// A document as its form shows it.
pub(super) fn typed(w: &Words, asks: &[Ask], document: &Value) -> Entries {
    let pairs = asks.iter().map(|ask| {
        let value = at(document, &ask.path);
        let text = match (&ask.way, value) {
            (Way::Rows(keys), Value::Array(rows)) => {
                let lines =
                    rows.iter().map(|row| keys.iter().map(|k| shown(w, at(row, k))).collect::<Vec<_>>().join(", "));
                std::iter::once(first_line(w, keys)).chain(lines).collect::<Vec<_>>().join("\n")
            }
            (Way::List, Value::Array(list)) => list.iter().map(|one| shown(w, one)).collect::<Vec<_>>().join(" "),
            _ => shown(w, value),
        };
        (ask.path.clone(), text)
    });
    Entries::new(pairs.collect())
}

fn put(object: &mut Map<String, Value>, path: &str, value: Value) {
    match path.split_once('.') {
        None => {
            object.insert(path.to_owned(), value);
        }
        Some((first, rest)) => {
            let inner = object.entry(first).or_insert_with(|| Value::Object(Map::new()));
            if let Value::Object(inner) = inner {
                put(inner, rest, value);
            }
        }
    }
}

/// A number of the document; whole ones stay whole, since counts must be.
fn number(w: &Words, text: &str) -> Result<Value, String> {
    let value = plain_number(text).map_err(|fault| super::beside(w, &fact::Refusal::new(&fault)))?;
    let whole = value.fract() == 0.0 && value.abs() < 1e15;
    // Whole and small, so the cast cannot lose anything.
    Ok(if whole { Value::from(value as i64) } else { Value::from(value) })
}

/// The document that was typed; what could not be read stands beside its field.
pub(super) fn document(w: &Words, asks: &[Ask], form: &mut Entries) -> Value {
    let mut object = Map::new();
    for ask in asks {
        let text = form.text(&ask.path).to_owned();
        if text.is_empty() {
            continue;
        }
        let value = match &ask.way {
            Way::Number => number(w, &text).map(Some),
            Way::Text | Way::Choice(_) => Ok(Some(Value::String(text))),
            Way::YesNo => Ok(Some(Value::Bool(true))),
            Way::List => list(w, &text).map(Some),
            Way::Rows(keys) => rows(w, &text, keys).map(|rows| (!rows.is_empty()).then_some(Value::Array(rows))),
        };
        match value {
            Ok(Some(value)) => put(&mut object, &ask.path, value),
            Ok(None) => {}
            Err(words) => form.refuse(&ask.path, words),
        }
    }
    // What no field shows may still be given in the address; the topic refuses by name what it does not know.
    let unknown: Vec<(String, String)> = form
        .pairs()
        .iter()
        .filter(|(name, text)| !text.trim().is_empty() && !asks.iter().any(|a| a.path == *name))
        .cloned()
        .collect();
    for (name, text) in unknown {
        put(&mut object, &name, number(w, &text).unwrap_or(Value::String(text)));
    }
    Value::Object(object)
}

fn list(w: &Words, text: &str) -> Result<Value, String> {
    let words = text.split([' ', ';', '\n', '\r', '\t']).filter(|word| !word.is_empty());
    let numbers: Vec<Value> = words.map(|word| number(w, word.trim_end_matches(','))).collect::<Result<_, _>>()?;
    Ok(Value::Array(numbers))
}

/// Columns that hold words.
const TEXTS: [&str; 3] = ["name", "a", "b"];

fn rows(w: &Words, text: &str, keys: &[String]) -> Result<Vec<Value>, String> {
    let mut lines = text.lines().zip(1..).filter(|(line, _)| !line.trim().is_empty());
    let Some((first, _)) = lines.next() else { return Ok(Vec::new()) };
    let between = ['\t', ';'].into_iter().find(|c| first.contains(*c)).unwrap_or(',');
    let cells = |line: &str| line.split(between).map(|c| c.trim().to_owned()).collect::<Vec<_>>();
    let heads = cells(first);
    let columns = heads
        .iter()
        .map(|head| {
            let known =
                keys.iter().find(|k| column_head(w, k).eq_ignore_ascii_case(head) || k.eq_ignore_ascii_case(head));
            known.ok_or_else(|| {
                format!("The first line names the columns: {}. “{head}” is none of them", first_line(w, keys))
            })
        })
        .collect::<Result<Vec<_>, _>>()?;
    lines
        .map(|(line, at)| {
            let cells = cells(line);
            if cells.len() > columns.len() {
                let said = "has more cells than the first line; for decimal commas put semicolons between the cells";
                return Err(format!("Line {at} {said}"));
            }
            let mut object = Map::new();
            for (cell, key) in cells.iter().zip(&columns).filter(|(cell, _)| !cell.is_empty()) {
                let value = if TEXTS.contains(&key.as_str()) {
                    Value::String(cell.clone())
                } else {
                    number(w, cell).map_err(|e| format!("Line {at}, {}: {e}", column_head(w, key)))?
                };
                put(&mut object, key, value);
            }
            Ok(Value::Object(object))
        })
        .collect()
}

/// Beside which of the asked fields a refusal belongs that names `field` of the document.
pub(super) fn beside<'a>(w: &Words, asks: &'a [Ask], field: &str) -> Option<&'a str> {
    let plain = field.split('[').next().unwrap_or(field);
    let by = |test: &dyn Fn(&str) -> bool| asks.iter().find(|a| test(&a.path)).map(|a| a.path.as_str());
    by(&|path| path == field || path == plain)
        .or_else(|| by(&|path| last(path) == plain))
        .or_else(|| by(&|path| group(path) == plain))
}

/// A refusal in the form's words: the document's name of the field becomes its label.
pub(super) fn in_words(w: &Words, said: &str, field: &str) -> String {
    match field.contains('[') {
        true => capital(said),
        false => capital(&said.replacen(field, &named(w, last(field)).0, 1)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    #[test]
    fn every_example_comes_back_from_its_form_and_calculates() {
        for topic in clubphysics::calc::topics() {
            let example = (topic.example)();
            let asks = asks(&w(), topic.name, &example);
            let mut form = typed(&w(), &asks, &example);
            let document = document(&w(), &asks, &mut form);
            assert!(form.is_sound(), "{}: {form:?}", topic.name);
            let (a, b) = ((topic.run)(example).expect("example"), (topic.run)(document).expect(topic.name));
            let texts = [a, b].map(|v| v.to_string().chars().filter(char::is_ascii_alphabetic).collect::<String>());
            assert_eq!(texts[0], texts[1], "{}", topic.name);
        }
    }

    #[test]
    fn what_is_known_beside_the_example_is_known_to_the_topic() {
        for topic in clubphysics::calc::topics() {
            for ask in asks(&w(), topic.name, &(topic.example)()) {
                let mut document = (topic.example)();
                if let Some(object) = document.as_object_mut()
                    && at(&Value::Object(object.clone()), &ask.path).is_null()
                {
                    put(object, &ask.path, Value::Null);
                    if let Err(error) = (topic.run)(document) {
                        assert!(!error.to_string().contains("unknown field"), "{} {}: {error}", topic.name, ask.path);
                    }
                }
            }
        }
    }

    #[test]
    fn names_become_words_and_units() {
        assert_eq!(named(&w(), "butt_trim_mm_sd"), ("butt trim ±".to_owned(), "mm"));
        assert_eq!(named(&w(), "moment_oz_in"), ("moment".to_owned(), "oz·in"));
        assert_eq!(named(&w(), "points"), ("points".to_owned(), ""));
        assert_eq!(column_head(&w(), "tip_body.mass_g"), "head mass (g)");
    }

    /// What errs together is named by the places of the document, as they stand in the address.
    #[test]
    fn correlations_can_be_typed() {
        let example = (clubphysics::calc::topics()[0].example)();
        let asks = asks(&w(), "swing-weight", &example);
        let typed_in = "one figure, other figure, coefficient\nparts[0].mass_g, parts[1].mass_g, 0.9";
        let mut pairs: Vec<(String, String)> = typed(&w(), &asks, &example).pairs().to_vec();
        pairs.iter_mut().filter(|(name, _)| name == "correlations").for_each(|(_, text)| *text = typed_in.to_owned());
        let mut form = Entries::new(pairs);
        let document = document(&w(), &asks, &mut form);
        assert!(form.is_sound(), "{form:?}");
        assert_eq!(document["correlations"][0]["b"], "parts[1].mass_g");
        assert_eq!(document["correlations"][0]["coefficient"], 0.9);
        clubphysics::calc::run("swing-weight", document).expect("a good document");
    }

    #[test]
    fn a_mistake_in_a_row_is_named_by_its_line() {
        let keys = ["name".to_owned(), "mass_g".to_owned()];
        let said = rows(&w(), "name, mass (g)\nhead, heavy", &keys).unwrap_err();
        assert!(said.starts_with("Line 2, mass (g)"), "{said}");
        assert_eq!(rows(&w(), "name; mass (g)\nhead; 1,5", &keys).unwrap()[0]["mass_g"], 1.5);
    }
}
