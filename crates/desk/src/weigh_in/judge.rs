//! The odds of what a weighed part is.

use super::bend::{BendDoubt, bend_doubts};
use super::spread::{Spread, numbers, spread, wrapping_g};
use serde::{Deserialize, Serialize};
use trade::club_name::ClubName;
use trade::error::{FindIt, NotFound, Noun, TradeError};
use trade::kind::closed_list;
use trade::model::{Library, Model, PartKind};
use trade::part::{Part, possible_mass_g};
use utoipa::ToSchema;

closed_list! {
    /// What a weighed part may be.
    Looks {
        /// What was said of it.
        AsSaid = "as_said";
        /// The number before or after.
        Neighbour = "neighbour";
        /// Another number of the model.
        OtherNumber = "other_number";
        /// Another model of the same kind of part.
        OtherModel = "other_model";
        /// It still wears a film, a label or a wrapper.
        Wrapped = "wrapped";
        /// Nothing known: the pan was not empty, something touched it, the key slipped.
        Slip = "slip";
    }
}

// How often each happens, before the mass is known. Common practice, no source; only their order of size matters, since
// a wrong number changes the density by hundreds.
const NEIGHBOUR: f64 = 0.02;
const OTHER_NUMBER: f64 = 0.005;
const OTHER_MODEL: f64 = 0.005;
const WRAPPED: f64 = 0.007;
const SLIP: f64 = 0.01;
/// Less than this for what was said is a question.
const ASK_BELOW: f64 = 0.5;
/// Fewer odds than this are not worth a line.
const SHOWN_ABOVE: f64 = 0.01;

/// One thing that a weighed part may be, with its odds.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Likely {
    /// What sort of thing.
    pub looks: Looks,
    /// Code of the model.
    pub model: String,
    /// Its number, where it has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub number: Option<String>,
    /// What such a part is expected to weigh; none for a slip.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub expected_g: Option<f64>,
    /// Probability among all that was weighed up, 0 to 1.
    pub probability: f64,
    /// In words: `it looks like the next number: 8-iron heads are 7.0 g heavier`.
    #[serde(flatten)]
    pub fact: LikelyFact,
}

fact::facts! {
    /// What a weighed part may be, in words.
    pub enum LikelyFact: "weigh_likely" {
        /// What was said of it.
        AsSaid,
        /// A head of the next number.
        NextHead {
            /// The number that the head would be of: `6`, `PW`.
            number: String,
            /// The club that it is for.
            club: ClubName,
            /// How much more or less such a part weighs.
            by_g: f64,
            /// `heavier` or `lighter`.
            way: String,
        },
        /// A head of the number before.
        BeforeHead {
            /// The number that the head would be of: `6`, `PW`.
            number: String,
            /// The club that it is for.
            club: ClubName,
            /// How much more or less such a part weighs.
            by_g: f64,
            /// `heavier` or `lighter`.
            way: String,
        },
        /// A head of another number.
        OtherHead {
            /// The number that the head would be of: `6`, `PW`.
            number: String,
            /// The club that it is for.
            club: ClubName,
            /// How much more or less such a part weighs.
            by_g: f64,
            /// `heavier` or `lighter`.
            way: String,
        },
        /// A blank of the next number.
        NextShaft {
            /// The number that the blank would be for: `6`, `PW`.
            number: String,
            /// How much more or less such a part weighs.
            by_g: f64,
            /// `heavier` or `lighter`.
            way: String,
        },
        /// A blank of the number before.
        BeforeShaft {
            /// The number that the blank would be for: `6`, `PW`.
            number: String,
            /// How much more or less such a part weighs.
            by_g: f64,
            /// `heavier` or `lighter`.
            way: String,
        },
        /// A blank of another number.
        OtherShaft {
            /// The number that the blank would be for: `6`, `PW`.
            number: String,
            /// How much more or less such a part weighs.
            by_g: f64,
            /// `heavier` or `lighter`.
            way: String,
        },
        /// A part of another model.
        OtherModel {
            /// Name of that model.
            model: String,
            /// Number, where it has one.
            number: Option<String>,
            /// What such a part weighs.
            expected_g: f64,
        },
        /// Something is still on it.
        Wrapped {
            /// How much too heavy it is.
            by_g: f64,
        },
        /// Nothing known.
        Slip,
    }
}

fact::facts! {
    /// What a mass says of the part.
    pub enum MassFinding: "weigh_finding" {
        /// It weighs what it should.
        AsExpected,
        /// Its mass was not given, or its model gives none to compare with.
        NotCompared,
        /// It looks like something else.
        Looks {
            /// What it weighs, as it was entered.
            mass_g: f64,
            /// Like what.
            likely: LikelyFact,
        },
        /// It weighs more than such a part should, and nothing known explains it.
        TooHeavy {
            /// What it weighs, as it was entered.
            mass_g: f64,
            /// How much more.
            by_g: f64,
            /// Number of the part, where it has one.
            number: Option<String>,
            /// What sort of part it is: head, shaft, grip …
            kind: PartKind,
            /// What it should weigh.
            expected_g: f64,
        },
        /// It weighs less than such a part should, and nothing known explains it.
        TooLight {
            /// What it weighs, as it was entered.
            mass_g: f64,
            /// How much less.
            by_g: f64,
            /// Number of the part, where it has one.
            number: Option<String>,
            /// What sort of part it is: head, shaft, grip …
            kind: PartKind,
            /// What it should weigh.
            expected_g: f64,
        },
    }
}

fact::facts! {
    /// What to do about a mass in question.
    pub enum MassNext: "weigh_next" {
        /// Take the film or label off.
        TakeOff,
        /// Read the number on the head.
        ReadSole,
        /// Read what is printed on the part.
        ReadPart,
        /// Weigh it again.
        WeighAgain,
    }
}

/// What a mass says of the part that was weighed.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Judged {
    /// What parts of this model and number weigh; none where the model gives no mass.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spread: Option<Spread>,
    /// Whether to ask before it is kept.
    pub questioned: bool,
    /// What its mass says.
    #[serde(flatten)]
    pub finding: MassFinding,
    /// What to do, where there is a question.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next: Option<MassNext>,
    /// What it may be, the likeliest first; those below one in a hundred are left out.
    pub likely: Vec<Likely>,
    /// Why a head as received cannot be bent to its model's figures; empty where it can.
    pub bend: Vec<BendDoubt>,
}

impl Judged {
    /// The likeliest explanation other than what was said, where that is the question.
    #[must_use]
    pub fn instead(&self) -> Option<&Likely> {
        self.likely.first().filter(|first| self.questioned && first.looks != Looks::AsSaid)
    }
}

/// Judges the mass of a part against its model and number, the numbers beside it and the other models of its kind.
/// `weighed` are parts weighed before, of any model: they say what a lot really weighs.
///
/// # Errors
/// A model or number that is not there; a mass that no part of this kind can have.
pub fn judge(library: &Library, part: &Part, weighed: &[Part]) -> Result<Judged, TradeError> {
    part.check()?;
    let model = library.get(&part.model).ok_or_else(|| {
        let fault = NotFound::Named { what: Noun::Model, name: part.model.clone() };
        TradeError::not_found(&fault, &FindIt::LookUpModel)
    })?;
    let bend = match (model, part.number.as_deref()) {
        (Model::Head(head), Some(number)) => {
            library.head_number(&part.model, number)?;
            bend_doubts(head, number, part.loft_deg, part.lie_deg)
        }
        _ => Vec::new(),
    };
    let own = spread(library, &part.model, part.number.as_deref(), weighed);
    let plain = |spread| Judged {
        spread,
        questioned: false,
        finding: MassFinding::NotCompared,
        next: None,
        likely: vec![],
        bend: bend.clone(),
    };
    let (Some(mass_g), Some(own)) = (part.mass_g, own.clone()) else { return Ok(plain(own)) };
    let likely = odds(library, model, part, mass_g, &own, weighed);
    let as_said = likely.iter().find(|l| l.looks == Looks::AsSaid).map_or(0.0, |l| l.probability);
    let mut judged = Judged { likely, finding: MassFinding::AsExpected, ..plain(Some(own.clone())) };
    if as_said < ASK_BELOW {
        judged.questioned = true;
        let (finding, next) = question(&judged.likely, mass_g, &own, part);
        (judged.finding, judged.next) = (finding, Some(next));
    }
    judged.likely.retain(|l| l.probability >= SHOWN_ABOVE || l.looks == Looks::AsSaid);
    Ok(judged)
}

/// Every explanation with its probability, the likeliest first.
fn odds(library: &Library, model: &Model, part: &Part, mass_g: f64, own: &Spread, weighed: &[Part]) -> Vec<Likely> {
    let kind = model.kind();
    let mut list = Vec::new();
    let mut add = |looks, model: &str, number: Option<&str>, expected_g, weight: f64, fact| {
        let number = number.map(str::to_owned);
        list.push(Likely { looks, model: model.to_owned(), number, expected_g, probability: weight, fact });
    };
    let said = 1.0 - NEIGHBOUR - OTHER_NUMBER - OTHER_MODEL - WRAPPED - SLIP;
    let own_number = part.number.as_deref();
    add(Looks::AsSaid, model.code(), own_number, Some(own.next_g), said * own.density(mass_g), LikelyFact::AsSaid);
    let all = numbers(model);
    let at = all.iter().position(|n| n.zip(own_number).is_some_and(|(a, b)| a.eq_ignore_ascii_case(b)));
    let others = f64::from(u32::try_from(all.len().saturating_sub(3).max(1)).unwrap_or(1));
    for (i, number) in all.iter().enumerate().filter(|(i, _)| at.is_some_and(|at| at != *i)) {
        let Some(spread) = spread(library, model.code(), *number, weighed) else { continue };
        let beside = at.is_some_and(|at| at.abs_diff(i) == 1);
        let (looks, prior) =
            if beside { (Looks::Neighbour, NEIGHBOUR / 2.0) } else { (Looks::OtherNumber, OTHER_NUMBER / others) };
        let after = at.is_some_and(|at| i > at);
        let apart_g = spread.next_g - own.next_g;
        let fact = other_number(model, number.unwrap_or_default(), beside.then_some(after), apart_g);
        add(looks, model.code(), *number, Some(spread.next_g), prior * spread.density(mass_g), fact);
    }
    let strangers: Vec<(&Model, Option<&str>)> = library
        .iter()
        .filter(|m| m.kind() == kind && m.code() != model.code())
        .flat_map(|m| numbers(m).into_iter().map(move |n| (m, n)))
        .collect();
    let many = f64::from(u32::try_from(strangers.len().max(1)).unwrap_or(u32::MAX));
    for (other, number) in &strangers {
        let Some(spread) = spread(library, other.code(), *number, weighed) else { continue };
        let fact = LikelyFact::OtherModel {
            model: other.name().to_owned(),
            number: number.map(str::to_owned),
            expected_g: spread.next_g,
        };
        add(
            Looks::OtherModel,
            other.code(),
            *number,
            Some(spread.next_g),
            OTHER_MODEL / many * spread.density(mass_g),
            fact,
        );
    }
    if let Some((least, most)) = wrapping_g(kind) {
        add(
            Looks::Wrapped,
            model.code(),
            own_number,
            Some(own.next_g),
            WRAPPED * with_more(own, mass_g, least, most),
            LikelyFact::Wrapped { by_g: mass_g - own.next_g },
        );
    }
    let (low, high) = possible_mass_g(kind);
    add(Looks::Slip, model.code(), own_number, None, SLIP / (high - low), LikelyFact::Slip);
    let sum: f64 = list.iter().map(|l| l.probability).sum();
    for one in &mut list {
        one.probability /= sum;
    }
    list.sort_by(|a, b| b.probability.total_cmp(&a.probability));
    list
}

/// Density of a mass that holds something more, anywhere between two figures as likely: the mean of the density over
/// them, by the middle of forty pieces.
fn with_more(own: &Spread, mass_g: f64, least_g: f64, most_g: f64) -> f64 {
    const PIECES: u32 = 40;
    let step = (most_g - least_g) / f64::from(PIECES);
    (0..PIECES).map(|i| own.density(mass_g - least_g - step * (f64::from(i) + 0.5))).sum::<f64>() / f64::from(PIECES)
}

/// The explanation that it is another number of the model: the one after the number that was said, the one before, or any.
fn other_number(model: &Model, number: &str, beside_after: Option<bool>, apart_g: f64) -> LikelyFact {
    let (number, by_g) = (number.to_owned(), apart_g.abs());
    let way = if apart_g > 0.0 { "heavier" } else { "lighter" }.to_owned();
    match (model, beside_after) {
        (Model::Head(head), Some(true)) => {
            LikelyFact::NextHead { club: ClubName::of(head.club_kind, &number), number, by_g, way }
        }
        (Model::Head(head), Some(false)) => {
            LikelyFact::BeforeHead { club: ClubName::of(head.club_kind, &number), number, by_g, way }
        }
        (Model::Head(head), None) => {
            LikelyFact::OtherHead { club: ClubName::of(head.club_kind, &number), number, by_g, way }
        }
        (_, Some(true)) => LikelyFact::NextShaft { number, by_g, way },
        (_, Some(false)) => LikelyFact::BeforeShaft { number, by_g, way },
        (_, None) => LikelyFact::OtherShaft { number, by_g, way },
    }
}

fn question(likely: &[Likely], mass_g: f64, own: &Spread, part: &Part) -> (MassFinding, MassNext) {
    let first = likely.iter().find(|l| l.looks != Looks::AsSaid);
    let apart_g = mass_g - own.next_g;
    match first {
        Some(first) if first.looks != Looks::Slip => {
            let next = match first.looks {
                Looks::Wrapped => MassNext::TakeOff,
                _ if part.kind == PartKind::Head => MassNext::ReadSole,
                _ => MassNext::ReadPart,
            };
            (MassFinding::Looks { mass_g, likely: first.fact.clone() }, next)
        }
        _ => {
            let (by_g, number, kind, expected_g) = (apart_g.abs(), part.number.clone(), part.kind, own.next_g);
            let finding = if apart_g > 0.0 {
                MassFinding::TooHeavy { mass_g, by_g, number, kind, expected_g }
            } else {
                MassFinding::TooLight { mass_g, by_g, number, kind, expected_g }
            };
            (finding, MassNext::WeighAgain)
        }
    }
}
