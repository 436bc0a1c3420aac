//! What a form of each kind of model asks, in the trade's words: one table for reading, showing and naming mistakes.

use super::EntryName;
use super::entries::{Entries, FormFault, plain, plain_number, typed_length, typed_swing_weight};
use fact::{Fact, Figure, Refusal, Told};
use quantity::LengthUnit;
use serde_json::{Map, Number, Value};
use trade::error::TradeError;
use trade::grip::GripShape;
use trade::kind::ClubKind;
use trade::kind::Facing;
use trade::kind::Hand;
use trade::kind::LengthTo;
use trade::model::Model;
use trade::model::PartKind;
use trade::shaft::ShaftMaterial;
use trade::shaft::TipShape;
use words::Words;

/// How a value is typed.
#[derive(Clone, Copy)]
pub(super) enum Way {
    Text,
    /// A number in this unit.
    Number(&'static str),
    /// A length that people write in inches.
    Length,
    /// A swing weight by its letter.
    SwingWeight,
    YesNo,
    /// One of a closed list.
    Choice(fn() -> Vec<(&'static str, &'static str)>),
    /// The code of a model of this kind.
    Model(PartKind),
    /// A list: one row a line under a header line.
    Rows(&'static [Ask]),
}

/// One value of a model.
#[derive(Clone, Copy)]
pub(super) struct Ask {
    /// Its name in the document; a dot leads into a part of it.
    pub key: &'static str,
    pub label: &'static str,
    pub hint: &'static str,
    pub way: Way,
    pub optional: bool,
}

const fn ask(key: &'static str, label: &'static str, way: Way) -> Ask {
    Ask { key, label, hint: "", way, optional: false }
}

impl Ask {
    const fn hint(self, hint: &'static str) -> Self {
        Self { hint, ..self }
    }

    const fn optional(self) -> Self {
        Self { optional: true, ..self }
    }
}

macro_rules! choice {
    ($list:ident) => {
        Way::Choice(|| $list::ALL.iter().map(|v| (v.key(), v.word())).collect())
    };
}

const MM: Way = Way::Number("mm");
const G: Way = Way::Number("g");
const DEG: Way = Way::Number("°");

const HEAD_NUMBERS: [Ask; 8] = [
    ask("number", "number", Way::Text),
    ask("mass_g", "mass", G),
    ask("loft_deg", "loft", DEG),
    ask("lie_deg", "lie", DEG),
    ask("bounce_deg", "bounce", DEG).optional(),
    ask("bore_to_ground_mm", "bore to ground", MM),
    ask("chart.length_mm", "length", Way::Length),
    ask("chart.swing_weight_points", "swing weight", Way::SwingWeight),
];
const SCREWS: [Ask; 2] = [ask("label", "stamp", Way::Text), ask("mass_g", "mass", G)];
const BLANKS: [Ask; 4] = [
    ask("number", "number", Way::Text).optional(),
    ask("mass_g", "mass", G),
    ask("length_mm", "length", Way::Length),
    ask("balance_point_mm", "balance point", MM),
];
const TRIMS: [Ask; 2] = [ask("number", "number", Way::Text), ask("trim_mm", "tip trim", Way::Length)];
const CURE: [Ask; 2] = [ask("hours", "hours", Way::Number("h")), ask("at_c", "temperature", Way::Number("°C"))];

const HEAD: &[Ask] = &[
    ask("club_kind", "Club", choice!(ClubKind)),
    ask("hand", "Hand", choice!(Hand)),
    ask("bore_diameter_mm", "Bore", MM).hint("Inside diameter"),
    ask("bore_depth_mm", "Depth of the bore", MM).hint("How far the tip goes in"),
    ask("bend_limit_deg", "Most bend of loft or lie", DEG).hint("0: must not be bent"),
    ask("chart_length_to", "Lengths of the chart", choice!(LengthTo)),
    ask("offset_mm", "Centre beyond the ground point", MM)
        .hint("Along the shaft axis; minus toward the butt. Empty: what such heads have")
        .optional(),
    ask("offset_sd_mm", "How surely that is known ±", MM).optional(),
    ask("takes_adapter", "The shaft goes into an adapter", Way::YesNo),
    ask("numbers", "Numbers and the maker's chart", Way::Rows(&HEAD_NUMBERS))
        .hint("Bore to ground: from the bottom of the bore to where the shaft axis meets the ground"),
    ask("screws", "Screws that can be swapped", Way::Rows(&SCREWS)).optional(),
];
const ADAPTER: &[Ask] = &[
    ask("mass_g", "Mass", G),
    ask("length_mm", "From the bottom of its bore to its lower end", MM),
    ask("bore_diameter_mm", "Bore for the tip", MM),
    ask("fits_head_model", "Fits the head", Way::Model(PartKind::Head)),
    ask("setting", "Setting that clubs are built at", Way::Text).optional(),
];
const SHAFT: &[Ask] = &[
    ask("material", "Made of", choice!(ShaftMaterial)),
    ask("tip", "Tip", choice!(TipShape)),
    ask("tip_diameter_mm", "Tip diameter", MM),
    ask("butt_diameter_mm", "Butt diameter", MM),
    ask("mass_sd_g", "Scatter of single shafts ±", G),
    ask("neighbour_blanks", "Neighbouring blanks that may be used", Way::Number("numbers"))
        .hint("0 for none; always with a reason"),
    ask("graphics_side", "Label faces, with the mark up", choice!(Facing)).hint("Not said: all round").optional(),
    ask("blanks", "Raw blanks", Way::Rows(&BLANKS))
        .hint("Parallel tip: one line without number. Taper tip: one line a number. Balance point from the butt"),
    ask("tip_trim", "The maker's tip trim", Way::Rows(&TRIMS)).optional(),
];
const GRIP: &[Ask] = &[
    ask("mass_g", "Mass", G),
    ask("mass_sd_g", "Scatter of single grips ±", G),
    ask("core_diameter_mm", "Core", MM).hint("The butt that it is made for"),
    ask("length_mm", "Length", MM),
    ask("centre_mm", "Where it balances, from the cap", MM),
    ask("cap_mm", "Thickness of the cap", MM),
    ask("widest_mm", "Widest diameter", MM).hint("For the rules' limit; empty: not known").optional(),
    ask("shape", "Shape", choice!(GripShape)),
];
const TIP_WEIGHT: &[Ask] = &[
    ask("mass_g", "Mass", G),
    ask("tip_min_mm", "Smallest tip it goes into", MM),
    ask("tip_max_mm", "Largest tip it goes into", MM),
    ask("length_mm", "Length inside the shaft", MM),
    ask("flange_mm", "Flange that stays outside", MM).hint("0 for none; it lifts the tip off the bottom of the bore"),
];
const FERRULE: &[Ask] =
    &[ask("inside_diameter_mm", "Inside diameter", MM), ask("length_mm", "Length", MM), ask("mass_g", "Mass", G)];
const ADHESIVE: &[Ask] = &[
    ask("resin_per_hardener_by_mass", "Resin to one part of hardener, by mass", Way::Number("parts")),
    ask("resin_per_hardener_by_volume", "Resin to one part of hardener, by volume", Way::Number("parts")),
    ask("resin_density_g_per_ml", "Density of the resin", Way::Number("g/ml")),
    ask("hardener_density_g_per_ml", "Density of the hardener", Way::Number("g/ml")),
    ask("pot_life_min", "Pot life", Way::Number("min")),
    ask("pot_life_at_c", "at", Way::Number("°C")),
    ask("pot_life_mass_g", "for this much in one cup", G),
    ask("joint_mass_g", "One joint takes", G).hint("Resin, hardener and spacers together"),
    ask("joint_mass_sd_g", "How surely that is known ±", G),
    ask("handling", "Strong enough to handle", Way::Rows(&CURE)).hint("One line, or two at different temperatures"),
    ask("full_cure", "Full cure", Way::Rows(&CURE)).hint("Strong enough to bend and to swing"),
];
const TAPE: &[Ask] = &[
    ask("mass_per_area_g_per_m2", "Mass with its adhesive, without liner", Way::Number("g/m²")),
    ask("thickness_mm", "Thickness as it lies", MM),
    ask("width_mm", "Width of the roll", MM),
];

/// What a model of this kind says beside code, name and label.
pub(super) const fn asks(kind: PartKind) -> &'static [Ask] {
    match kind {
        PartKind::Head => HEAD,
        PartKind::Adapter => ADAPTER,
        PartKind::Shaft => SHAFT,
        PartKind::Grip => GRIP,
        PartKind::TipWeight => TIP_WEIGHT,
        PartKind::Ferrule => FERRULE,
        PartKind::Adhesive => ADHESIVE,
        PartKind::Tape => TAPE,
    }
}

/// The value under a key with dots.
fn at<'a>(value: &'a Value, key: &str) -> &'a Value {
    key.split('.').fold(value, |inside, step| &inside[step])
}

fn put(object: &mut Map<String, Value>, key: &str, value: Value) {
    match key.split_once('.') {
        None => {
            object.insert(key.to_owned(), value);
        }
        Some((first, rest)) => {
            let inner = object.entry(first).or_insert_with(|| Value::Object(Map::new()));
            if let Value::Object(inner) = inner {
                put(inner, rest, value);
            }
        }
    }
}

fn shown(w: &Words, value: &Value, way: Way) -> String {
    match (value, way) {
        (Value::Number(n), Way::Length) => typed_length(w, n.as_f64().unwrap_or(0.0)),
        (Value::Number(n), Way::SwingWeight) => typed_swing_weight(w, n.as_f64().unwrap_or(0.0)),
        (Value::Number(n), _) => plain(n.as_f64().unwrap_or(0.0)),
        (Value::String(text), _) => text.clone(),
        (Value::Bool(true), _) => "1".to_owned(),
        _ => String::new(),
    }
}

/// The header line of a list.
pub(super) fn header(w: &Words, columns: &[Ask]) -> String {
    columns.iter().map(|c| c.label).collect::<Vec<_>>().join(", ")
}

/// A model as its form shows it.
pub(super) fn typed(w: &Words, model: &Model) -> Entries {
    let value = serde_json::to_value(model).unwrap_or_default();
    let mut pairs: Vec<(String, String)> =
        ["code", "name", "label"].map(|k| (k.to_owned(), shown(w, &value[k], Way::Text))).to_vec();
    for ask in asks(model.kind()) {
        let text = match ask.way {
            Way::Rows(columns) => {
                let rows = at(&value, ask.key).as_array().cloned().unwrap_or_default();
                let lines = rows
                    .iter()
                    .map(|row| columns.iter().map(|c| shown(w, at(row, c.key), c.way)).collect::<Vec<_>>().join(", "));
                std::iter::once(header(w, columns)).chain(lines).collect::<Vec<_>>().join("\n")
            }
            way => shown(w, at(&value, ask.key), way),
        };
        pairs.push((ask.key.to_owned(), text));
    }
    Entries::new(pairs)
}

/// Reads a cell or a field; none where it is empty.
fn read(w: &Words, text: &str, way: Way) -> Result<Option<Value>, String> {
    let text = text.trim();
    let number = |v: f64| Number::from_f64(v).map(Value::Number).ok_or_else(|| format!("“{text}” is not a number"));
    if matches!(way, Way::YesNo) {
        return Ok(Some(Value::Bool(!text.is_empty())));
    }
    if text.is_empty() {
        return Ok(None);
    }
    match way {
        Way::Number("numbers") => text
            .parse::<u8>()
            .map(|n| Some(Value::from(n)))
            .map_err(|_| told(w, &FormFault::NotATip { text: text.to_owned() })),
        Way::Number(_) => plain_number(text).map_err(|fault| told(w, &fault)).and_then(number).map(Some),
        Way::Length => quantity::parse_length(text, LengthUnit::Inch)
            .map_err(|e| told(w, &e))
            .and_then(|l| number(l.mm()))
            .map(Some),
        Way::SwingWeight => {
            quantity::parse_swing_weight(text).map_err(|e| told(w, &e)).and_then(|b| number(b.points())).map(Some)
        }
        Way::Text | Way::Choice(_) | Way::Model(_) | Way::Rows(_) | Way::YesNo => {
            Ok(Some(Value::String(text.to_owned())))
        }
    }
}

/// Reads a list: a header line that names the columns in any order, then one row a line.
fn rows(w: &Words, text: &str, columns: &[Ask]) -> Result<Vec<Value>, String> {
    let mut lines = text.lines().zip(1..).filter(|(line, _)| !line.trim().is_empty());
    let Some((first, _)) = lines.next() else { return Ok(Vec::new()) };
    // Where cells need a decimal comma, semicolons or tabs stand between them.
    let between = ['\t', ';'].into_iter().find(|c| first.contains(*c)).unwrap_or(',');
    let cells = |line: &str| line.split(between).map(|c| c.trim().to_owned()).collect::<Vec<_>>();
    let heads = cells(first)
        .iter()
        .map(|head| {
            columns.iter().find(|c| c.label.eq_ignore_ascii_case(head)).ok_or_else(|| {
                format!("The first line must name the columns: {}. “{head}” is none of them", header(w, columns))
            })
        })
        .collect::<Result<Vec<_>, _>>()?;
    if let Some(lacking) = columns.iter().find(|c| !c.optional && !heads.iter().any(|h| h.key == c.key)) {
        return Err(format!("The column {} is missing in the first line", lacking.label));
    }
    lines.map(|(line, at)| row(w, &cells(line), &heads, at, between)).collect()
}

fn row(w: &Words, cells: &[String], heads: &[&Ask], line: i32, between: char) -> Result<Value, String> {
    if cells.len() != heads.len() {
        let advice = if between == ',' { "; for decimal commas put semicolons between the cells" } else { "" };
        return Err(format!(
            "Line {line} has {} cells, the first line {}. Mend the line{advice}",
            cells.len(),
            heads.len()
        ));
    }
    let mut object = Map::new();
    for (cell, head) in cells.iter().zip(heads) {
        match read(w, cell, head.way).map_err(|e| format!("Line {line}, {}: {e}", head.label))? {
            Some(value) => put(&mut object, head.key, value),
            None if head.optional => {}
            None => return Err(format!("Line {line}: the {} is missing", head.label)),
        }
    }
    Ok(Value::Object(object))
}

/// Builds the model from its form; what is wrong stands beside its field afterwards.
pub(super) fn model(w: &Words, form: &mut Entries, kind: PartKind) -> Option<Model> {
    let mut object = Map::new();
    object.insert("kind".into(), kind.key().into());
    for (key, label) in
        [("code", "Give it a short code of the shop's own"), ("name", "Give the name that stands on the box")]
    {
        let text = form.some(key);
        if let Some(text) = form.needed(key, text, label) {
            object.insert(key.into(), text.into());
        }
    }
    object.insert("label".into(), form.text("label").into());
    for ask in asks(kind) {
        let text = form.raw(ask.key).to_owned();
        let value = match ask.way {
            Way::Rows(columns) => rows(w, &text, columns).map(|list| Some(Value::Array(list))),
            way => read(w, &text, way),
        };
        match value {
            Ok(Some(value)) => put(&mut object, ask.key, value),
            Ok(None) if ask.optional => {}
            Ok(None) => form.refuse(ask.key, "Fill this in"),
            Err(words) => form.refuse(ask.key, words),
        }
    }
    if !form.is_sound() {
        return None;
    }
    let model = match document::read_value::<Model>(Value::Object(object)) {
        Ok(model) => model,
        Err(error) => {
            form.refuse("code", told(w, &error));
            return None;
        }
    };
    if let Err(error) = model.check() {
        let field = beside(kind, &error);
        form.refuse(field, in_words(w, kind, &error));
        return None;
    }
    Some(model)
}

/// A fact beside its entry: what is wrong and what to do next.
fn told(w: &Words, fact: &impl Fact) -> String {
    super::beside(w, &Refusal::new(fact))
}

/// The field of the form beside which a refusal belongs.
fn beside(kind: PartKind, error: &TradeError) -> &'static str {
    let refusal = error.refusal();
    let told = refusal.fact();
    let entry = match told.figure("entry") {
        Some(Figure::Fact(entry)) => Some(entry),
        _ => None,
    };
    let name = entry.and_then(|entry| entry.figure("name")).and_then(text_of).unwrap_or_default();
    let strength = told.figure("strength").and_then(|strength| match strength {
        Figure::Fact(told) => Some(told.code()),
        _ => None,
    });
    let key = match (entry.map(Told::code), told.code(), strength) {
        (Some("entry_of.number"), ..) | (_, "head_fault.no_numbers" | "head_fault.number_twice", _) => "numbers",
        (Some("entry_of.blank"), ..) | (_, "shaft_fault.no_blank" | "shaft_fault.blank_for_tip", _) => "blanks",
        (Some("entry_of.tip_trim"), ..) => "tip_trim",
        (_, "adhesive_fault.ratios_disagree", _) => "resin_per_hardener_by_mass",
        (_, _, Some("strength.handling")) => "handling",
        (_, _, Some("strength.full")) => "full_cure",
        // A field of a row: `handling.hours`, `screws.mass_g`.
        _ => name.split('.').next().unwrap_or_default(),
    };
    asks(kind).iter().find(|ask| ask.key == key).map_or("code", |ask| ask.key)
}

fn text_of(figure: &Figure) -> Option<&str> {
    match figure {
        Figure::Text(text) => Some(text),
        _ => None,
    }
}

/// A refusal with the form's own word for its field.
fn in_words(w: &Words, kind: PartKind, error: &TradeError) -> String {
    let refusal = error.refusal();
    let Some(Figure::Fact(entry)) = refusal.fact().figure("entry") else { return super::beside(w, &refusal) };
    let name = entry.figure("name").and_then(text_of).unwrap_or_default();
    let key = name.rsplit('.').next().unwrap_or(name);
    let inside =
        asks(kind).iter().filter_map(|ask| if let Way::Rows(columns) = ask.way { Some(columns) } else { None });
    let own = asks(kind).iter().find(|ask| ask.key == name);
    let label =
        own.or_else(|| inside.flat_map(|columns| columns.iter()).find(|ask| ask.key == key)).map(|ask| ask.label);
    let Some(label) = label else { return super::beside(w, &refusal) };
    let label = EntryName::Labelled { label: label.to_owned() };
    let named = match entry.code() {
        "entry_of.field" => label.told(),
        // Which number or blank it is stays in the sentence.
        _ => {
            let mut entry = Refusal::new(entry);
            entry = entry.with_figure("name", &label);
            entry.fact().clone()
        }
    };
    super::beside(w, &refusal.with_figure("entry", &named))
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    #[test]
    fn every_model_of_the_invented_shop_comes_back_from_its_form() {
        for made in demo::models() {
            let mut form = typed(&w(), &made);
            let back = model(&w(), &mut form, made.kind()).unwrap_or_else(|| panic!("{}: {form:?}", made.code()));
            let (before, after) = (serde_json::to_value(&made).unwrap(), serde_json::to_value(&back).unwrap());
            same(&before, &after, made.code());
        }
    }

    /// Equal but for the last digit of a length that went through inches.
    fn same(a: &Value, b: &Value, place: &str) {
        match (a, b) {
            (Value::Number(x), Value::Number(y)) => {
                let apart = (x.as_f64().unwrap() - y.as_f64().unwrap()).abs();
                assert!(apart < 0.02, "{place}: {x} came back as {y}");
            }
            (Value::Object(x), Value::Object(y)) => {
                assert_eq!(x.keys().collect::<Vec<_>>(), y.keys().collect::<Vec<_>>(), "{place}");
                x.iter().for_each(|(k, v)| same(v, &y[k], &format!("{place}.{k}")));
            }
            (Value::Array(x), Value::Array(y)) => {
                assert_eq!(x.len(), y.len(), "{place}");
                x.iter().zip(y).for_each(|(v, w)| same(v, w, place));
            }
            _ => assert_eq!(a, b, "{place}"),
        }
    }

    #[test]
    fn a_mistake_in_a_list_is_named_by_line_and_column() {
        let said = rows(&w(), "number, trim\n", &TRIMS).unwrap_err();
        assert!(said.contains("“trim”"), "{said}");
        let said = rows(&w(), "number, tip trim\n5, 1 1/2\n6, two\n", &TRIMS).unwrap_err();
        assert!(said.starts_with("Line 3, tip trim"), "{said}");
        let said = rows(&w(), "number, tip trim\n5, 1,5\n", &TRIMS).unwrap_err();
        assert!(said.contains("semicolons"), "{said}");
        assert_eq!(rows(&w(), "number; tip trim\n5; 1,5\n", &TRIMS).unwrap().len(), 1);
    }

    #[test]
    fn an_impossible_figure_stands_beside_its_field() {
        let grip = demo::models().into_iter().find(|m| m.kind() == PartKind::Grip).unwrap();
        let mut form = typed(&w(), &grip);
        form.set("cap_mm", "80");
        assert!(model(&w(), &mut form, PartKind::Grip).is_none());
        let words = form.error("cap_mm").expect("beside the cap");
        assert!(words.starts_with("Thickness of the cap is 80"), "{words}");
    }
}
