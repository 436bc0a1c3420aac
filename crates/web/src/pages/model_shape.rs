//! What a form of each kind of model asks: one table for reading, showing and naming mistakes.

use super::EntryName;
use super::entries::Entries;
use super::fields::{self, Ask, Way};
use fact::{Fact, Figure, Refusal, Told};
use serde_json::Value;
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

fn ask(key: &'static str, label: &'static str, way: Way) -> Ask {
    Ask::new(key, Told::new(label), way)
}

macro_rules! choice {
    ($list:ident) => {
        Way::Choice($list::ALL.iter().map(|v| (v.key().to_owned(), v.told())).collect())
    };
}

const MM: Way = Way::Number("mm");
const G: Way = Way::Number("g");
const DEG: Way = Way::Number("°");

fn head_numbers() -> Vec<Ask> {
    vec![
        ask("number", "model_form.head_numbers_number", Way::Text),
        ask("mass_g", "model_form.head_numbers_mass_g", G),
        ask("loft_deg", "model_form.head_numbers_loft_deg", DEG),
        ask("lie_deg", "model_form.head_numbers_lie_deg", DEG),
        ask("bounce_deg", "model_form.head_numbers_bounce_deg", DEG).optional(),
        ask("bore_to_ground_mm", "model_form.head_numbers_bore_to_ground_mm", MM),
        ask("chart.length_mm", "model_form.head_numbers_chart_length_mm", Way::Length),
        ask("chart.swing_weight_points", "model_form.head_numbers_chart_swing_weight_points", Way::SwingWeight),
    ]
}

fn screws() -> Vec<Ask> {
    vec![ask("label", "model_form.screws_label", Way::Text), ask("mass_g", "model_form.screws_mass_g", G)]
}

fn settings() -> Vec<Ask> {
    vec![
        ask("name", "model_form.settings_name", Way::Text),
        ask("loft_deg", "model_form.settings_loft_deg", DEG),
        ask("lie_deg", "model_form.settings_lie_deg", DEG),
        ask("face_deg", "model_form.settings_face_deg", DEG),
        ask("length_mm", "model_form.settings_length_mm", MM),
    ]
}

fn blanks() -> Vec<Ask> {
    vec![
        ask("number", "model_form.blanks_number", Way::Text).optional(),
        ask("mass_g", "model_form.blanks_mass_g", G),
        ask("length_mm", "model_form.blanks_length_mm", Way::Length),
        ask("balance_point_mm", "model_form.blanks_balance_point_mm", MM),
    ]
}

fn trims() -> Vec<Ask> {
    vec![ask("number", "model_form.trims_number", Way::Text), ask("trim_mm", "model_form.trims_trim_mm", Way::Length)]
}

fn stiffness() -> Vec<Ask> {
    vec![
        ask("from_tip_mm", "model_form.stiffness_from_tip_mm", MM),
        ask("stiffness_n_m2", "model_form.stiffness_stiffness_n_m2", Way::Number("N·m²")),
    ]
}

fn cure() -> Vec<Ask> {
    vec![
        ask("hours", "model_form.cure_hours", Way::Number("h")),
        ask("at_c", "model_form.cure_at_c", Way::Number("°C")),
    ]
}

fn head() -> Vec<Ask> {
    vec![
        ask("club_kind", "model_form.head_club_kind", choice!(ClubKind)),
        ask("hand", "model_form.head_hand", choice!(Hand)),
        ask("bore_diameter_mm", "model_form.head_bore_diameter_mm", MM).hint("model_form.head_bore_diameter_mm_hint"),
        ask("bore_depth_mm", "model_form.head_bore_depth_mm", MM).hint("model_form.head_bore_depth_mm_hint"),
        ask("bend_limit_deg", "model_form.head_bend_limit_deg", DEG).hint("model_form.head_bend_limit_deg_hint"),
        ask("chart_length_to", "model_form.head_chart_length_to", choice!(LengthTo)),
        ask("offset_mm", "model_form.head_offset_mm", MM).hint("model_form.head_offset_mm_hint").optional(),
        ask("offset_sd_mm", "model_form.head_offset_sd_mm", MM).optional(),
        ask("mass_sd_g", "model_form.head_mass_sd_g", G).hint("model_form.head_mass_sd_g_hint").optional(),
        ask("heel_radius_mm", "model_form.head_heel_radius_mm", MM).optional(),
        ask("sole_contact_mm", "model_form.head_sole_contact_mm", MM)
            .hint("model_form.head_sole_contact_mm_hint")
            .optional(),
        ask("sole_radius_mm", "model_form.head_sole_radius_mm", MM).optional(),
        ask("takes_adapter", "model_form.head_takes_adapter", Way::YesNo),
        ask("numbers", "model_form.head_numbers", Way::Rows(head_numbers())).hint("model_form.head_numbers_hint"),
        ask("screws", "model_form.head_screws", Way::Rows(screws())).optional(),
    ]
}

fn adapter() -> Vec<Ask> {
    vec![
        ask("mass_g", "model_form.adapter_mass_g", G),
        ask("length_mm", "model_form.adapter_length_mm", MM),
        ask("bore_diameter_mm", "model_form.adapter_bore_diameter_mm", MM),
        ask("fits_head_model", "model_form.adapter_fits_head_model", Way::Model(PartKind::Head)),
        ask("setting", "model_form.adapter_setting", Way::Text).optional(),
        ask("settings", "model_form.adapter_settings", Way::Rows(settings()))
            .hint("model_form.adapter_settings_hint")
            .optional(),
    ]
}

fn shaft() -> Vec<Ask> {
    vec![
        ask("material", "model_form.shaft_material", choice!(ShaftMaterial)),
        ask("tip", "model_form.shaft_tip", choice!(TipShape)),
        ask("tip_diameter_mm", "model_form.shaft_tip_diameter_mm", MM),
        ask("butt_diameter_mm", "model_form.shaft_butt_diameter_mm", MM),
        ask("mass_sd_g", "model_form.shaft_mass_sd_g", G),
        ask("neighbour_blanks", "model_form.shaft_neighbour_blanks", Way::Count)
            .hint("model_form.shaft_neighbour_blanks_hint"),
        ask("graphics_side", "model_form.shaft_graphics_side", choice!(Facing))
            .hint("model_form.shaft_graphics_side_hint")
            .optional(),
        ask("blanks", "model_form.shaft_blanks", Way::Rows(blanks())).hint("model_form.shaft_blanks_hint"),
        ask("tip_trim", "model_form.shaft_tip_trim", Way::Rows(trims())).optional(),
        ask("stiffness", "model_form.shaft_stiffness", Way::Rows(stiffness()))
            .hint("model_form.shaft_stiffness_hint")
            .optional(),
        ask("stiffness_sd_percent", "model_form.shaft_stiffness_sd_percent", Way::Number("%")).optional(),
    ]
}

fn grip() -> Vec<Ask> {
    vec![
        ask("mass_g", "model_form.grip_mass_g", G),
        ask("mass_sd_g", "model_form.grip_mass_sd_g", G),
        ask("core_diameter_mm", "model_form.grip_core_diameter_mm", MM).hint("model_form.grip_core_diameter_mm_hint"),
        ask("length_mm", "model_form.grip_length_mm", MM),
        ask("centre_mm", "model_form.grip_centre_mm", MM),
        ask("cap_mm", "model_form.grip_cap_mm", MM),
        ask("widest_mm", "model_form.grip_widest_mm", MM).hint("model_form.grip_widest_mm_hint").optional(),
        ask("upper_mm", "model_form.grip_upper_mm", MM).hint("model_form.grip_upper_mm_hint").optional(),
        ask("lower_mm", "model_form.grip_lower_mm", MM).hint("model_form.grip_lower_mm_hint").optional(),
        ask("shape", "model_form.grip_shape", choice!(GripShape)),
    ]
}

fn tip_weight() -> Vec<Ask> {
    vec![
        ask("mass_g", "model_form.tip_weight_mass_g", G),
        ask("tip_min_mm", "model_form.tip_weight_tip_min_mm", MM),
        ask("tip_max_mm", "model_form.tip_weight_tip_max_mm", MM),
        ask("length_mm", "model_form.tip_weight_length_mm", MM),
        ask("flange_mm", "model_form.tip_weight_flange_mm", MM).hint("model_form.tip_weight_flange_mm_hint"),
    ]
}

fn ferrule() -> Vec<Ask> {
    vec![
        ask("inside_diameter_mm", "model_form.ferrule_inside_diameter_mm", MM),
        ask("length_mm", "model_form.ferrule_length_mm", MM),
        ask("mass_g", "model_form.ferrule_mass_g", G),
    ]
}

fn adhesive() -> Vec<Ask> {
    vec![
        ask("resin_per_hardener_by_mass", "model_form.adhesive_resin_per_hardener_by_mass", Way::Number("")),
        ask("resin_per_hardener_by_volume", "model_form.adhesive_resin_per_hardener_by_volume", Way::Number("")),
        ask("resin_density_g_per_ml", "model_form.adhesive_resin_density_g_per_ml", Way::Number("g/ml")),
        ask("hardener_density_g_per_ml", "model_form.adhesive_hardener_density_g_per_ml", Way::Number("g/ml")),
        ask("pot_life_min", "model_form.adhesive_pot_life_min", Way::Number("min")),
        ask("pot_life_at_c", "model_form.adhesive_pot_life_at_c", Way::Number("°C")),
        ask("pot_life_mass_g", "model_form.adhesive_pot_life_mass_g", G),
        ask("joint_mass_g", "model_form.adhesive_joint_mass_g", G).hint("model_form.adhesive_joint_mass_g_hint"),
        ask("joint_mass_sd_g", "model_form.adhesive_joint_mass_sd_g", G),
        ask("handling", "model_form.adhesive_handling", Way::Rows(cure())).hint("model_form.adhesive_handling_hint"),
        ask("full_cure", "model_form.adhesive_full_cure", Way::Rows(cure())).hint("model_form.adhesive_full_cure_hint"),
    ]
}

fn tape() -> Vec<Ask> {
    vec![
        ask("mass_per_area_g_per_m2", "model_form.tape_mass_per_area_g_per_m2", Way::Number("g/m²")),
        ask("thickness_mm", "model_form.tape_thickness_mm", MM),
        ask("width_mm", "model_form.tape_width_mm", MM),
    ]
}

/// What a model of this kind says beside code, name and label.
pub(super) fn asks(kind: PartKind) -> Vec<Ask> {
    match kind {
        PartKind::Head => head(),
        PartKind::Adapter => adapter(),
        PartKind::Shaft => shaft(),
        PartKind::Grip => grip(),
        PartKind::TipWeight => tip_weight(),
        PartKind::Ferrule => ferrule(),
        PartKind::Adhesive => adhesive(),
        PartKind::Tape => tape(),
    }
}

/// What the form calls a figure of a model, by its place in the document: `numbers.mass_g`.
pub(super) fn figure_label(kind: PartKind, place: &str) -> Option<Told> {
    asks(kind).into_iter().find_map(|ask| {
        let column = place.strip_prefix(ask.key.as_str()).and_then(|rest| rest.strip_prefix('.'));
        match (&ask.way, column) {
            (Way::Rows(columns), Some(key)) => columns.iter().find(|c| c.key == key).map(|c| c.label.clone()),
            _ => (ask.key == place).then_some(ask.label),
        }
    })
}

/// A model as its form shows it.
pub(super) fn typed(w: &Words, model: &Model) -> Entries {
    let value = serde_json::to_value(model).unwrap_or_default();
    let text = |key: &str| (key.to_owned(), value[key].as_str().unwrap_or_default().to_owned());
    let mut pairs = ["code", "name", "label"].map(text).to_vec();
    pairs.extend(fields::typed(w, &asks(model.kind()), &value));
    Entries::new(pairs)
}

/// Builds the model from its form; what is wrong stands beside its field afterwards.
pub(super) fn model(w: &Words, form: &mut Entries, kind: PartKind) -> Option<Model> {
    let mut object = fields::document(w, &asks(kind), form);
    object.insert("kind".into(), kind.key().into());
    for (key, missing) in [("code", "model-form-code-missing"), ("name", "model-form-name-missing")] {
        let text = form.some(key);
        if let Some(text) = form.needed(key, text, &w.text(missing)) {
            object.insert(key.into(), text.into());
        }
    }
    object.insert("label".into(), form.text("label").into());
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
        form.refuse(&field, in_words(w, kind, &error));
        return None;
    }
    Some(model)
}

/// A fact beside its entry: what is wrong and what to do next.
fn told(w: &Words, fact: &impl Fact) -> String {
    super::beside(w, &Refusal::new(fact))
}

/// The field of the form beside which a refusal belongs.
fn beside(kind: PartKind, error: &TradeError) -> String {
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
        (_, "shaft_fault.stiffness_order", _) => "stiffness",
        _ if name.starts_with("stiffness[") => "stiffness",
        (_, "adhesive_fault.ratios_disagree", _) => "resin_per_hardener_by_mass",
        (_, _, Some("strength.handling")) => "handling",
        (_, _, Some("strength.full")) => "full_cure",
        // A field of a row: `handling.hours`, `screws.mass_g`.
        _ => name.split('.').next().unwrap_or_default(),
    };
    if asks(kind).iter().any(|ask| ask.key == key) { key.to_owned() } else { "code".to_owned() }
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
    let asks = asks(kind);
    let inside = asks.iter().filter_map(|ask| if let Way::Rows(columns) = &ask.way { Some(columns) } else { None });
    let found = asks.iter().find(|ask| ask.key == name).or_else(|| inside.flatten().find(|ask| ask.key == key));
    let Some(label) = found.map(|ask| w.tell(&ask.label)) else { return super::beside(w, &refusal) };
    let label = EntryName::Labelled { label };
    let named = match entry.code() {
        "entry_of.field" => label.told(),
        // Which number or blank it is stays in the sentence.
        _ => Refusal::new(entry).with_figure("name", &label).fact().clone(),
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
        let said = fields::rows(&w(), "number, trim\n", &trims()).unwrap_err();
        assert!(said.contains("“trim”"), "{said}");
        let said = fields::rows(&w(), "number, tip trim\n5, 1 1/2\n6, two\n", &trims()).unwrap_err();
        assert!(said.starts_with("Line 3, tip trim"), "{said}");
        let said = fields::rows(&w(), "number, tip trim\n5, 1,5\n", &trims()).unwrap_err();
        assert!(said.contains("semicolons"), "{said}");
        assert_eq!(fields::rows(&w(), "number; tip trim\n5; 1,5\n", &trims()).unwrap().len(), 1);
    }

    #[test]
    fn an_impossible_figure_stands_beside_its_field() {
        let grip = demo::models().into_iter().find(|m| m.kind() == PartKind::Grip).unwrap();
        // A bare figure is in the unit of the reader.
        for (length, shown) in [(quantity::LengthUnit::Millimetre, "80 mm"), (quantity::LengthUnit::Inch, "80 in")] {
            let w = Words::english(Units { length, ..Units::default() });
            let mut form = typed(&w, &grip);
            form.set("cap_mm", "80");
            assert!(model(&w, &mut form, PartKind::Grip).is_none());
            let words = form.error("cap_mm").expect("beside the cap");
            assert!(words.starts_with(&format!("Thickness of the cap is {shown}")), "{words}");
        }
    }
}
