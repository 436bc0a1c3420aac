//! Usual models: heads, shafts, grips and small things that are nobody's, to begin with before a maker's figures are at hand.
//!
//! They are data (`data/usual_models.json`), and beside each figure stands where it comes from ([`UsualSource`]). No model is a
//! copy of one that is sold. What is not known is said to be uncertain: heads, shafts and grips scatter about these figures
//! more than about a maker's, so that a weighing is believed and not doubted.

use crate::kind::{Hand, closed_list};
use crate::model::Model;
use fact::Fact;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use std::collections::BTreeMap;
use std::sync::LazyLock;
use utoipa::ToSchema;

closed_list! {
    /// Where a figure of a usual model comes from.
    UsualSource {
        /// What is usual in the trade; no source.
        CommonPractice = "common_practice";
        /// Usual, and the same step from number to number: 7 g a head.
        SevenGrams = "seven_grams";
        /// Usual, and the same step from number to number: half an inch a club.
        HalfInch = "half_inch";
        /// A size that such things are sold in; from memory.
        SoldSizes = "sold_sizes";
        /// The class that the model stands for.
        MassClass = "mass_class";
        /// From memory.
        FromMemory = "from_memory";
        /// A wide guess without a source.
        WideGuess = "wide_guess";
        /// On the careful side; the maker's sheet comes first.
        Cautious = "cautious";
        /// Worked out from the density of brass and the thickness of the pin.
        Brass = "brass";
        /// Worked out from the two densities.
        Densities = "densities";
    }
}

fact::facts! {
    /// What a usual model is called until the shop calls it something else.
    pub enum UsualName: "usual_name" {
        /// Irons with a plain back.
        BladeIrons,
        /// Irons with a hollowed back.
        CavityIrons,
        /// Wedges by loft.
        Wedges,
        /// A driver.
        Driver,
        /// Fairway woods.
        FairwayWoods,
        /// Hybrids.
        Hybrids,
        /// A putter.
        Putter,
        /// Any of the heads, for left-handed players.
        LeftHand {
            /// Which.
            of: fact::Told,
        },
        /// Parallel tip, for irons.
        SteelIronShaft {
            /// Mass of the raw blank.
            mass_g: f64,
        },
        /// Taper tip, for irons.
        SteelTaperShaft {
            /// Mass of the raw blank.
            mass_g: f64,
        },
        /// Parallel tip, for irons.
        GraphiteIronShaft {
            /// Mass of the raw blank.
            mass_g: f64,
        },
        /// For driver and fairway woods.
        GraphiteWoodShaft {
            /// Mass of the raw blank.
            mass_g: f64,
        },
        /// For hybrids.
        GraphiteHybridShaft {
            /// Mass of the raw blank.
            mass_g: f64,
        },
        /// For putters.
        SteelPutterShaft,
        /// Thinner than standard.
        UndersizeGrip,
        /// Standard thickness.
        StandardGrip,
        /// A size up.
        MidsizeGrip,
        /// Two sizes up.
        JumboGrip,
        /// With a flat.
        PutterGrip,
        /// A brass pin in the tip.
        TipWeight {
            /// What it weighs.
            mass_g: f64,
        },
        /// For a tip of this diameter.
        Ferrule {
            /// Inside diameter.
            inside_mm: f64,
        },
        /// Under the grip.
        DoubleSidedTape,
        /// To make the grip thicker.
        BuildUpTape,
        /// Pot life of minutes.
        QuickAdhesive,
        /// Cures overnight to handle, two days to swing.
        DayAdhesive,
        /// Long pot life, slow cure.
        SlowAdhesive,
    }
}

/// A usual model and where its figures come from.
#[derive(Debug, Clone)]
pub struct UsualModel {
    /// What it is called.
    pub name: UsualName,
    /// The model, still without a name.
    pub model: Model,
    /// Where each figure comes from, by its place in the document: `numbers.mass_g` is the mass of every number.
    pub from: BTreeMap<String, UsualSource>,
}

impl UsualModel {
    /// The model with a name in somebody's language.
    #[must_use]
    pub fn named(&self, name: String) -> Model {
        let mut model = self.model.clone();
        model.rename(name);
        model
    }
}

/// One entry of the file.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Entry {
    sort: String,
    #[serde(default)]
    left_hand_too: bool,
    model: Value,
    from: BTreeMap<String, UsualSource>,
}

static USUAL: LazyLock<Vec<UsualModel>> =
    LazyLock::new(|| read(include_str!("../../data/usual_models.json")).unwrap_or_default());

/// All usual models, in the order in which a builder looks for them.
///
/// # Examples
///
/// ```
/// use trade::model::usual::{usual_model, usual_models};
///
/// let irons = usual_model("any-cavity").expect("irons");
/// assert_eq!(irons.model.part_mass_g(Some("7")), Some(270.0));
/// assert!(usual_models().iter().all(|usual| usual.model.code().starts_with("ANY-")));
/// ```
#[must_use]
pub fn usual_models() -> &'static [UsualModel] {
    &USUAL
}

/// The usual model with this code; capitals do not matter.
#[must_use]
pub fn usual_model(code: &str) -> Option<&'static UsualModel> {
    usual_models().iter().find(|usual| usual.model.code().eq_ignore_ascii_case(code.trim()))
}

fn read(text: &str) -> Result<Vec<UsualModel>, String> {
    let entries: Vec<Entry> = serde_json::from_str(text).map_err(|e| e.to_string())?;
    let mut made = Vec::new();
    for Entry { sort, left_hand_too, mut model, from } in entries {
        // A name is a text of each language, so the file has none.
        model["name"] = "".into();
        let model: Model = serde_json::from_value(model).map_err(|e| format!("{sort}: {e}"))?;
        let name = name_of(&sort, &model).ok_or_else(|| format!("{sort} has no name"))?;
        let left = left_hand_too.then(|| left_of(&model)).flatten();
        let left =
            left.map(|model| UsualModel { name: UsualName::LeftHand { of: name.told() }, model, from: from.clone() });
        made.push(UsualModel { name, model, from });
        made.extend(left);
    }
    Ok(made)
}

/// The same head for left-handed players.
fn left_of(model: &Model) -> Option<Model> {
    let Model::Head(head) = model else { return None };
    let mut left = head.clone();
    left.code.push_str("-LEFT");
    left.hand = Hand::Left;
    Some(Model::Head(left))
}

fn name_of(sort: &str, model: &Model) -> Option<UsualName> {
    let mass_g = match model {
        Model::Shaft(shaft) => shaft.blanks.first().map_or(0.0, |blank| blank.mass_g),
        other => other.part_mass_g(None).unwrap_or_default(),
    };
    Some(match sort {
        "blade_irons" => UsualName::BladeIrons,
        "cavity_irons" => UsualName::CavityIrons,
        "wedges" => UsualName::Wedges,
        "driver" => UsualName::Driver,
        "fairway_woods" => UsualName::FairwayWoods,
        "hybrids" => UsualName::Hybrids,
        "putter" => UsualName::Putter,
        "steel_iron_shaft" => UsualName::SteelIronShaft { mass_g },
        "steel_taper_shaft" => UsualName::SteelTaperShaft { mass_g },
        "graphite_iron_shaft" => UsualName::GraphiteIronShaft { mass_g },
        "graphite_wood_shaft" => UsualName::GraphiteWoodShaft { mass_g },
        "graphite_hybrid_shaft" => UsualName::GraphiteHybridShaft { mass_g },
        "steel_putter_shaft" => UsualName::SteelPutterShaft,
        "undersize_grip" => UsualName::UndersizeGrip,
        "standard_grip" => UsualName::StandardGrip,
        "midsize_grip" => UsualName::MidsizeGrip,
        "jumbo_grip" => UsualName::JumboGrip,
        "putter_grip" => UsualName::PutterGrip,
        "tip_weight" => UsualName::TipWeight { mass_g },
        "ferrule" => {
            let Model::Ferrule(ferrule) = model else { return None };
            UsualName::Ferrule { inside_mm: ferrule.inside_diameter_mm }
        }
        "double_sided_tape" => UsualName::DoubleSidedTape,
        "build_up_tape" => UsualName::BuildUpTape,
        "quick_adhesive" => UsualName::QuickAdhesive,
        "day_adhesive" => UsualName::DayAdhesive,
        "slow_adhesive" => UsualName::SlowAdhesive,
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::head_takes_shaft;
    use std::collections::BTreeSet;

    fn all() -> Vec<UsualModel> {
        read(include_str!("../../data/usual_models.json")).unwrap_or_else(|e| panic!("{e}"))
    }

    /// Places of the figures of a document, those of all rows of a list as one.
    fn figures(value: &Value, place: &str, into: &mut BTreeSet<String>) {
        let below = |name: &str| if place.is_empty() { name.to_owned() } else { format!("{place}.{name}") };
        match value {
            Value::Number(_) => {
                into.insert(place.to_owned());
            }
            Value::Object(object) => object.iter().for_each(|(name, value)| figures(value, &below(name), into)),
            Value::Array(list) => list.iter().for_each(|value| figures(value, place, into)),
            _ => {}
        }
    }

    /// Goal: no figure without its source, no source without its figure.
    #[test]
    fn every_figure_says_where_it_comes_from() {
        let all = all();
        assert!(all.len() >= 40, "{}", all.len());
        for usual in &all {
            let mut there = BTreeSet::new();
            figures(&serde_json::to_value(&usual.model).unwrap(), "", &mut there);
            let said: BTreeSet<String> = usual.from.keys().cloned().collect();
            assert_eq!(there, said, "{}", usual.model.code());
        }
    }

    #[test]
    fn all_are_sound_and_have_codes_and_names_of_their_own() {
        let all = all();
        let codes: BTreeSet<&str> = all.iter().map(|u| u.model.code()).collect();
        let names: BTreeSet<String> = all.iter().map(|u| serde_json::to_string(&u.name).unwrap()).collect();
        assert_eq!((codes.len(), names.len()), (all.len(), all.len()));
        for usual in &all {
            usual.named("A name".into()).check().unwrap_or_else(|e| panic!("{}: {e:?}", usual.model.code()));
            assert!(usual.model.check().is_err(), "{} must get its name from a language", usual.model.code());
        }
        // Each head that a player may want in the left hand is there for it, and equal but for the hand.
        let heads = || all.iter().filter_map(|u| if let Model::Head(head) = &u.model { Some(head) } else { None });
        let of = |hand: Hand| heads().filter(move |head| head.hand == hand).count();
        assert_eq!(of(Hand::Left), of(Hand::Right));
    }

    /// Irons are 7 g and half an inch apart (common practice, no source); a gap wedge follows the PW closer than that.
    #[test]
    fn irons_step_by_seven_grams_and_half_an_inch() {
        for code in ["ANY-BLADE", "ANY-CAVITY"] {
            let Some(Model::Head(head)) = usual_model(code).map(|usual| &usual.model) else { panic!("{code}") };
            assert!(head.numbers.len() >= 8, "{code}");
            for pair in head.numbers.windows(2) {
                let step = pair[1].mass_g - pair[0].mass_g;
                let shorter_mm = pair[0].chart.length_mm - pair[1].chart.length_mm;
                assert!((step - 7.0).abs() < 1e-9, "{code} {}: {step}", pair[1].number);
                assert!((shorter_mm - 12.7).abs() < 1e-9, "{code} {}: {shorter_mm}", pair[1].number);
                assert!(pair[1].loft_deg > pair[0].loft_deg + 2.0 && pair[1].lie_deg > pair[0].lie_deg, "{code}");
            }
        }
    }

    /// A pin of 1/4 in brass, 8.47 g/cm³ (density from memory): 2.68 g a centimetre.
    #[test]
    fn brass_pins_are_as_long_as_their_mass_says() {
        for usual in usual_models() {
            let Model::TipWeight(weight) = &usual.model else { continue };
            let by_density_mm = weight.mass_g / 2.682 * 10.0;
            assert!((weight.length_mm - by_density_mm).abs() < 0.1, "{}: {by_density_mm}", weight.code);
        }
    }

    /// Goal: whoever keeps them all can build with each head. The shafts that go into its bore have its numbers.
    #[test]
    fn every_head_has_a_shaft_for_each_of_its_numbers() {
        for usual in usual_models() {
            let Model::Head(head) = &usual.model else { continue };
            for number in &head.numbers {
                let fits = usual_models().iter().any(|other| {
                    matches!(&other.model, Model::Shaft(shaft)
                        if shaft.blank(&number.number).is_some() && head_takes_shaft(head, None, shaft))
                });
                assert!(fits, "{} {}", head.code, number.number);
            }
        }
    }
}
