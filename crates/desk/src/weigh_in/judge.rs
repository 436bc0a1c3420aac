//! The odds of what a weighed part is.

use super::bend::bend_doubts;
use super::spread::{Spread, numbers, spread, wrapping_g};
use quantity::decimal;
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::error::{FindIt, NotFound, Noun};
use trade::kind::closed_list;
use trade::model::{Library, Model, PartKind};
use trade::part::{Part, possible_mass_g};
use utoipa::ToSchema;

closed_list! {
    /// What a weighed part may be.
    Looks {
        /// What was said of it.
        AsSaid = "as_said", "as said";
        /// The number before or after.
        Neighbour = "neighbour", "the number beside it";
        /// Another number of the model.
        OtherNumber = "other_number", "another number";
        /// Another model of the same kind of part.
        OtherModel = "other_model", "another model";
        /// It still wears a film, a label or a wrapper.
        Wrapped = "wrapped", "still wrapped";
        /// Nothing known: the pan was not empty, something touched it, the key slipped.
        Slip = "slip", "a slip";
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
    pub words: String,
}

/// What a mass says of the part that was weighed.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Judged {
    /// What parts of this model and number weigh; none where the model gives no mass.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spread: Option<Spread>,
    /// Whether to ask before it is kept.
    pub questioned: bool,
    /// The question in a sentence without its stop; empty where there is none.
    pub words: String,
    /// What to do; empty where there is no question.
    pub next: String,
    /// What it may be, the likeliest first; those below one in a hundred are left out.
    pub likely: Vec<Likely>,
    /// Why a head as received cannot be bent to its model's figures; empty where it can.
    pub bend: Vec<String>,
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
        words: String::new(),
        next: String::new(),
        likely: vec![],
        bend: bend.clone(),
    };
    let (Some(mass_g), Some(own)) = (part.mass_g, own.clone()) else { return Ok(plain(own)) };
    let likely = odds(library, model, part, mass_g, &own, weighed);
    let as_said = likely.iter().find(|l| l.looks == Looks::AsSaid).map_or(0.0, |l| l.probability);
    let mut judged = Judged { likely, ..plain(Some(own.clone())) };
    if as_said < ASK_BELOW {
        judged.questioned = true;
        let (words, next) = question(&judged.likely, mass_g, &own, part);
        (judged.words, judged.next) = (words, next);
    }
    judged.likely.retain(|l| l.probability >= SHOWN_ABOVE || l.looks == Looks::AsSaid);
    Ok(judged)
}

/// Every explanation with its probability, the likeliest first.
fn odds(library: &Library, model: &Model, part: &Part, mass_g: f64, own: &Spread, weighed: &[Part]) -> Vec<Likely> {
    let kind = model.kind();
    let mut list = Vec::new();
    let mut add = |looks, model: &str, number: Option<&str>, expected_g, weight: f64, words: String| {
        let number = number.map(str::to_owned);
        list.push(Likely { looks, model: model.to_owned(), number, expected_g, probability: weight, words });
    };
    let said = 1.0 - NEIGHBOUR - OTHER_NUMBER - OTHER_MODEL - WRAPPED - SLIP;
    let own_number = part.number.as_deref();
    add(
        Looks::AsSaid,
        model.code(),
        own_number,
        Some(own.next_g),
        said * own.density(mass_g),
        "it is what was said".into(),
    );
    let all = numbers(model);
    let at = all.iter().position(|n| n.zip(own_number).is_some_and(|(a, b)| a.eq_ignore_ascii_case(b)));
    let others = f64::from(u32::try_from(all.len().saturating_sub(3).max(1)).unwrap_or(1));
    for (i, number) in all.iter().enumerate().filter(|(i, _)| at.is_some_and(|at| at != *i)) {
        let Some(spread) = spread(library, model.code(), *number, weighed) else { continue };
        let beside = at.is_some_and(|at| at.abs_diff(i) == 1);
        let (looks, prior) =
            if beside { (Looks::Neighbour, NEIGHBOUR / 2.0) } else { (Looks::OtherNumber, OTHER_NUMBER / others) };
        let after = at.is_some_and(|at| i > at);
        let words =
            number_words(model, number.unwrap_or_default(), beside.then_some(after), spread.next_g - own.next_g);
        add(looks, model.code(), *number, Some(spread.next_g), prior * spread.density(mass_g), words);
    }
    let strangers: Vec<(&Model, Option<&str>)> = library
        .iter()
        .filter(|m| m.kind() == kind && m.code() != model.code())
        .flat_map(|m| numbers(m).into_iter().map(move |n| (m, n)))
        .collect();
    let many = f64::from(u32::try_from(strangers.len().max(1)).unwrap_or(u32::MAX));
    for (other, number) in &strangers {
        let Some(spread) = spread(library, other.code(), *number, weighed) else { continue };
        let number_text = number.map(|n| format!(" {n}")).unwrap_or_default();
        let words = format!(
            "it looks like another model: the {}{number_text} weighs {} g",
            other.name(),
            decimal(spread.next_g, 1)
        );
        add(
            Looks::OtherModel,
            other.code(),
            *number,
            Some(spread.next_g),
            OTHER_MODEL / many * spread.density(mass_g),
            words,
        );
    }
    if let Some((least, most)) = wrapping_g(kind) {
        let words = format!("it is {} g too heavy: is a film or a label still on it", decimal(mass_g - own.next_g, 1));
        add(
            Looks::Wrapped,
            model.code(),
            own_number,
            Some(own.next_g),
            WRAPPED * with_more(own, mass_g, least, most),
            words,
        );
    }
    let (low, high) = possible_mass_g(kind);
    add(Looks::Slip, model.code(), own_number, None, SLIP / (high - low), "nothing known weighs that".into());
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

/// `it looks like the next number: 8-iron heads are 7.0 g heavier`.
fn number_words(model: &Model, number: &str, beside_after: Option<bool>, apart_g: f64) -> String {
    let which = match beside_after {
        Some(true) => format!("the next number, {number}"),
        Some(false) => format!("the number before, {number}"),
        None => format!("another number, {number}"),
    };
    let what = match model {
        Model::Head(head) => format!("{number}-{} heads", head.club_kind.word()),
        _ => format!("{number} {}s", model.kind().word()),
    };
    let how = if apart_g > 0.0 { "heavier" } else { "lighter" };
    format!("it looks like {which}: {what} are {} g {how}", decimal(apart_g.abs(), 1))
}

fn question(likely: &[Likely], mass_g: f64, own: &Spread, part: &Part) -> (String, String) {
    let mass = decimal(mass_g, 1);
    let first = likely.iter().find(|l| l.looks != Looks::AsSaid);
    let apart = mass_g - own.next_g;
    let name = part.number.as_deref().map_or_else(|| format!("this {}", part.kind), |n| format!("the {n}"));
    match first {
        Some(first) if first.looks != Looks::Slip => {
            let look = match first.looks {
                Looks::Wrapped => "Take it off and weigh it again",
                _ if part.kind == PartKind::Head => "Look at the number on its sole",
                _ => "Look at what stands on it",
            };
            (format!("{mass} g: {}", first.words), look.to_owned())
        }
        _ => {
            let how = if apart > 0.0 { "more" } else { "less" };
            let words = format!(
                "{mass} g is {} g {how} than {name} should weigh, {} g",
                decimal(apart.abs(), 1),
                decimal(own.next_g, 1)
            );
            (words, "Weigh it again on an empty pan".to_owned())
        }
    }
}
