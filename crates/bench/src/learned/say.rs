//! What a learned value is: which part or scale it is of, and in which unit it is shown.

use crate::learned::{CLAMP_GIVES_MM, GRIP_GIVES_MM, LearnedKey, ScatterKey, Scattered, ValueKey};
use crate::told::{ToldOf, of_told_key};
use fact::facts;
use quantity::INCH_MM;
use serde::Serialize;
use trade::model::Library;
use trade::reading::What;
use trade::scale::Scale;
use trade::shop::Shop;
use utoipa::ToSchema;

facts! {
    /// What a learned value or scatter figure is of, by the names of parts and scales.
    pub enum LearnedWhat: "learned_what" {
        /// How far a head's centre lies beyond the ground point.
        HeadCentre {
            /// Name of the head.
            head: String,
        },
        /// Where a grip's centre is from its cap.
        GripCentre {
            /// Name of the grip.
            grip: String,
        },
        /// How thick a grip's cap is.
        Cap {
            /// Name of the grip.
            grip: String,
        },
        /// Where the balance point of the cut shaft is against its mass line.
        ShaftCentre {
            /// Name of the shaft.
            shaft: String,
        },
        /// What is cut off a shaft weighs against its mass line.
        ShaftCut {
            /// Name of the shaft.
            shaft: String,
        },
        /// How stiff a shaft is against its model's table, or against what its mass and diameters make expected.
        ShaftStiffness {
            /// Name of the shaft.
            shaft: String,
        },
        /// How much stiffer its tip half is against that than its butt half.
        ShaftTilt {
            /// Name of the shaft.
            shaft: String,
        },
        /// How much longer a shaft acts in the clamp than it is.
        ClampGives,
        /// How much longer still with a grip in the clamp.
        GripGives,
        /// What one joint takes of an adhesive.
        Joint {
            /// Name of the adhesive.
            adhesive: String,
        },
        /// What a tape weighs against its model.
        TapeMass {
            /// Name of the tape.
            tape: String,
        },
        /// Solvent left in a fresh grip.
        Solvent,
        /// What a scale usually shows too much.
        ScaleOffset {
            /// Name of the scale.
            scale: String,
        },
        /// One reading of a scale to the next.
        ScaleNoise {
            /// Name of the scale.
            scale: String,
        },
        /// What a scale is off by, one day to the next.
        ScaleToday {
            /// Name of the scale.
            scale: String,
        },
        /// How far a scale drifts one way over a day of work.
        ScaleDrift {
            /// Name of the scale.
            scale: String,
        },
        /// A builder's readings against the shop's.
        Hand {
            /// The builder's name.
            name: String,
        },
        /// What a builder said.
        Told {
            /// What the figure is for: gluing a joint, a grip, a wrap of tape or a ferrule.
            of: ToldOf,
            /// Name of the model.
            name: String,
        },
        /// Pieces or jobs, one to the next.
        Scatter {
            /// What scatters: the adhesive of joints, the tape of clubs, the caps of grips …
            of: Scattered,
        },
        /// A value of another version of the program.
        Unknown {
            /// The key under which that version kept it.
            key: String,
        },
    }
}

/// Unit in which a learned figure is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
pub enum LearnedUnit {
    /// Millimetres.
    #[serde(rename = "mm")]
    Millimetre,
    /// Grams.
    #[serde(rename = "g")]
    Gram,
    /// Points of swing weight.
    #[serde(rename = "points")]
    Points,
    /// Cycles a minute.
    #[serde(rename = "cpm")]
    Cpm,
    /// Degrees.
    #[serde(rename = "°")]
    Degree,
    /// Hundredths of the whole.
    #[serde(rename = "%")]
    Percent,
    /// How many times as much.
    #[serde(rename = "times")]
    Times,
    /// Not known.
    #[serde(rename = "")]
    Unknown,
}

/// What a learned value or scatter figure is.
#[derive(Debug, Clone, PartialEq)]
pub struct Said {
    /// Which value it is, with the name of the part or scale.
    pub what: LearnedWhat,
    /// Unit in which it is shown.
    pub unit: LearnedUnit,
    /// Factor from the figure as kept to that unit.
    pub factor: f64,
    /// The model's own figure in that unit, where the value is a deviation from one.
    pub nominal: Option<f64>,
}

impl LearnedUnit {
    /// Factor from the figure as kept: arms and caps are kept in inches, tape and what is cut off as shares.
    const fn factor(self) -> f64 {
        match self {
            Self::Millimetre => INCH_MM,
            Self::Percent => 100.0,
            Self::Gram | Self::Points | Self::Cpm | Self::Degree | Self::Times | Self::Unknown => 1.0,
        }
    }
}

fn said(what: LearnedWhat, unit: LearnedUnit, nominal: Option<f64>) -> Said {
    Said { what, unit, factor: unit.factor(), nominal }
}

/// Says what is kept under a key; what was kept by another version of the program has no unit.
#[must_use]
pub fn say(key: &str, library: &Library, shop: &Shop) -> Said {
    if let Some((of, code)) = of_told_key(key) {
        let model = library.of_kind(of.kind()).find(|model| model.code() == code);
        let name = model.map_or_else(|| code.to_owned(), |model| model.name().to_owned());
        return said(LearnedWhat::Told { of, name }, LearnedUnit::Points, None);
    }
    match key.parse() {
        Ok(LearnedKey::Value(value)) => of_value(value, library, shop),
        Ok(LearnedKey::Scatter(scatter)) => of_scatter(scatter, shop),
        Err(_) => said(LearnedWhat::Unknown { key: key.to_owned() }, LearnedUnit::Unknown, None),
    }
}

fn of_value(key: ValueKey, library: &Library, shop: &Shop) -> Said {
    use LearnedUnit::{Gram, Millimetre, Percent};
    match key {
        ValueKey::Delta(code) => {
            let model = library.head(&code).ok();
            let head = model.map_or(code, |m| m.name.clone());
            said(LearnedWhat::HeadCentre { head }, Millimetre, model.map(|m| m.offset_prior_mm().0))
        }
        ValueKey::GripCentre(code) => {
            let model = library.grip(&code).ok();
            let grip = model.map_or(code, |m| m.name.clone());
            said(LearnedWhat::GripCentre { grip }, Millimetre, model.map(|m| m.centre_mm))
        }
        ValueKey::Cap(code) => {
            let model = library.grip(&code).ok();
            let grip = model.map_or(code, |m| m.name.clone());
            said(LearnedWhat::Cap { grip }, Millimetre, model.map(|m| m.cap_mm))
        }
        ValueKey::ShaftCentre(code) => {
            let shaft = library.shaft(&code).ok().map_or(code, |m| m.name.clone());
            said(LearnedWhat::ShaftCentre { shaft }, Millimetre, None)
        }
        ValueKey::ShaftCut(code) => {
            let shaft = library.shaft(&code).ok().map_or(code, |m| m.name.clone());
            said(LearnedWhat::ShaftCut { shaft }, Percent, None)
        }
        ValueKey::Stiffness(code) => {
            let shaft = library.shaft(&code).ok().map_or(code, |m| m.name.clone());
            said(LearnedWhat::ShaftStiffness { shaft }, Percent, None)
        }
        ValueKey::StiffnessTilt(code) => {
            let shaft = library.shaft(&code).ok().map_or(code, |m| m.name.clone());
            said(LearnedWhat::ShaftTilt { shaft }, Percent, None)
        }
        ValueKey::ClampGives => said(LearnedWhat::ClampGives, Millimetre, Some(CLAMP_GIVES_MM.0)),
        ValueKey::GripGives => said(LearnedWhat::GripGives, Millimetre, Some(GRIP_GIVES_MM.0)),
        ValueKey::Adhesive(code) => {
            let model = library.adhesive(&code).ok();
            let adhesive = model.map_or(code, |m| m.name.clone());
            said(LearnedWhat::Joint { adhesive }, Gram, model.map(|m| m.joint_mass_g))
        }
        ValueKey::Tape(code) => {
            let tape = library.tape(&code).ok().map_or(code, |m| m.name.clone());
            said(LearnedWhat::TapeMass { tape }, Percent, None)
        }
        ValueKey::Solvent => said(LearnedWhat::Solvent, Gram, Some(crate::solvent::SOLVENT_G.0)),
        ValueKey::UsualOffset(key) => {
            let (scale, unit) = scale(key, shop);
            said(LearnedWhat::ScaleOffset { scale }, unit, None)
        }
    }
}

fn of_scatter(key: ScatterKey, shop: &Shop) -> Said {
    use LearnedUnit::{Gram, Millimetre, Percent, Times};
    match key {
        ScatterKey::Of(of) => {
            let unit = match of {
                Scattered::AdhesivePiece
                | Scattered::AdhesiveJob
                | Scattered::TapePiece
                | Scattered::SolventPiece
                | Scattered::SolventJob => Gram,
                Scattered::TapeJob | Scattered::StiffnessPiece => Percent,
                Scattered::CapPiece | Scattered::GripCentrePiece | Scattered::ShaftCentrePiece => Millimetre,
            };
            said(LearnedWhat::Scatter { of }, unit, None)
        }
        ScatterKey::Noise(key) => match gauge(&key, shop) {
            // Kept in the unit of the instrument, a length in millimetres.
            Some((scale, unit)) => Said { factor: 1.0, ..said(LearnedWhat::ScaleNoise { scale }, unit, None) },
            None => {
                let (scale, unit) = scale(key, shop);
                said(LearnedWhat::ScaleNoise { scale }, unit, None)
            }
        },
        ScatterKey::Today(key) => {
            let (scale, unit) = scale(key, shop);
            said(LearnedWhat::ScaleToday { scale }, unit, None)
        }
        ScatterKey::Drift(key) => {
            let (scale, unit) = scale(key, shop);
            said(LearnedWhat::ScaleDrift { scale }, unit, None)
        }
        ScatterKey::Hand(name) => said(LearnedWhat::Hand { name }, Times, None),
    }
}

/// Name and unit of a scale; one that the shop no longer has counts as a balance scale, since most of what is learned of
/// scales is.
/// A gauge that is no scale, by the name that the shop gave it, else by what it reads.
fn gauge(key: &str, shop: &Shop) -> Option<(String, LearnedUnit)> {
    let of = |what: What, unit: LearnedUnit| {
        let (gauge, _) = shop.gauge_for(what).filter(|(gauge, _)| gauge.key == key)?;
        Some((gauge.name, unit))
    };
    of(What::Cpm, LearnedUnit::Cpm)
        .or_else(|| of(What::FinishedLength, LearnedUnit::Millimetre))
        .or_else(|| of(What::Lie, LearnedUnit::Degree))
}

fn scale(key: String, shop: &Shop) -> (String, LearnedUnit) {
    let known: Option<&Scale> = [&shop.balance_scale, &shop.mass_scale].into_iter().find(|s| s.key == key);
    let unit =
        if known.is_none_or(|s| s.key == shop.balance_scale.key) { LearnedUnit::Points } else { LearnedUnit::Gram };
    (known.map_or(key, |s| s.name.clone()), unit)
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    #[test]
    fn each_key_is_said_by_the_name_of_its_part_or_scale() {
        let words = words::Words::english(Units::default());
        let (library, shop) = (Library::default(), Shop::named(|id| words.text(id)));
        let told = |key: &str| words.tell(&say(key, &library, &shop).what);
        assert_eq!(told("usual_offset:balance"), "the balance scale reads high by");
        assert_eq!(told("tape.piece"), "tape, one club to the next, a layer");
        // A model that was taken away is still said, by its code.
        assert_eq!(told("cap:OLIVINE"), "OLIVINE: thickness of the cap");
        assert_eq!(say("noise:mass", &library, &shop).unit, LearnedUnit::Gram);
        assert_eq!(say("hand:Ada", &library, &shop).unit, LearnedUnit::Times);
        let other = say("of another version", &library, &shop);
        assert_eq!((other.unit, other.factor), (LearnedUnit::Unknown, 1.0));
    }
}
