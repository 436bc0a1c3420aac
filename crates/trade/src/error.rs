//! What the rules of the trade refuse, as facts.

use clubphysics::plausible::Plausible;
use fact::{Fact, Measure, Refusal, Told};
use std::fmt;

/// A refusal by the rules of the trade. The variants are what a program tells apart; what is wrong and what to do next is in
/// the [`Refusal`].
#[derive(Debug, Clone, PartialEq)]
pub enum TradeError {
    /// A figure is not possible for what it describes.
    Impossible(Refusal),
    /// A text could not be read.
    Unreadable(Refusal),
    /// Something named does not exist.
    Unknown(Refusal),
    /// The document breaks a rule of the trade.
    Refused(Refusal),
    /// The belief could not be worked out from the figures.
    Belief(estimation::EstimationError),
    /// A calculation refused its figures.
    Physics(clubphysics::PhysicsError),
    /// The choice of parts could not be worked out.
    Matching(matching::MatchError),
    /// The program itself is wrong: nothing in what was given is at fault. The text is for the log.
    Fault(String),
}

fact::facts! {
    /// What is refused of one entry of a document or a form.
    pub enum EntryFault: "entry" {
        /// A figure outside of what is possible.
        OutOfRange {
            /// Which entry.
            entry: Entry,
            /// What was given.
            value: Measure,
            /// Least that is possible.
            low: Measure,
            /// Greatest that is possible.
            high: Measure,
        },
        /// A figure where there is nothing to measure.
        NoFigure {
            /// Which entry.
            entry: Entry,
        },
        /// A text that is not in the notation of the entry.
        Unreadable {
            /// Which entry.
            entry: Entry,
            /// What was read, where reading stopped.
            what: Told,
        },
    }
}

fact::facts! {
    /// An entry, as a person finds it.
    pub enum Entry: "entry_of" {
        /// A field by its name.
        Field {
            /// Name in the document.
            name: String,
        },
        /// A field of one number of a head model.
        Number {
            /// Number of the head as its model lists it: `6`, `PW`.
            number: String,
            /// Name of the field.
            name: String,
        },
        /// A field of a shaft's blank.
        Blank {
            /// The number that it is for; absent where it is for all.
            number: Option<String>,
            /// Name of the field.
            name: String,
        },
        /// What comes off the tip for a number.
        TipTrim {
            /// Number of the head that the trim is for: `6`, `PW`.
            number: String,
        },
        /// Length of a club.
        LengthOf {
            /// Number of the club.
            number: String,
        },
        /// What is read.
        Reading {
            /// The quantity that is read, for example the swing weight.
            what: Told,
        },
    }
}

impl Entry {
    /// The entry as a program finds it: the name of its field where it is one.
    #[must_use]
    pub fn path(&self) -> String {
        match self {
            Self::Field { name } => name.clone(),
            Self::Number { number, name } => format!("number {number}: {name}"),
            Self::Blank { number: Some(number), name } => format!("blank for {number}: {name}"),
            Self::Blank { number: None, name } => format!("blank for all numbers: {name}"),
            Self::TipTrim { number } => format!("tip trim of {number}"),
            Self::LengthOf { number } => format!("length of the {number}"),
            // A closed list's code ends in the key of the member.
            Self::Reading { what } => what.code().rsplit('.').next().unwrap_or_default().to_owned(),
        }
    }
}

impl From<&str> for Entry {
    fn from(name: &str) -> Self {
        Self::Field { name: name.to_owned() }
    }
}

impl From<String> for Entry {
    fn from(name: String) -> Self {
        Self::Field { name }
    }
}

fact::facts! {
    /// Something that was named and does not exist.
    pub enum NotFound: "not_found" {
        /// There is none of this name.
        Named {
            /// What sort of thing.
            what: Noun,
            /// The name that was given.
            name: String,
        },
        /// There is no model of this kind.
        Model {
            /// What sort of model was looked for: of heads, shafts, grips …
            kind: Told,
            /// The code that was given.
            code: String,
        },
        /// A head model without this number.
        Number {
            /// The number that the head model does not have: `6`, `PW`.
            number: String,
            /// Name of the model.
            model: String,
        },
        /// A shaft model without a blank for a number.
        Blank {
            /// Number of the club that needs a blank: `6`, `PW`.
            number: String,
            /// Code of the shaft model.
            model: String,
        },
    }
}

fact::facts! {
    /// What something is, in a sentence about its name.
    pub enum Noun: "noun" {
        /// A model of any kind.
        Model,
        /// A usual model.
        UsualModel,
        /// A part.
        Part,
        /// A sheet.
        Sheet,
        /// A customer.
        Customer,
        /// A job.
        Job,
        /// A club.
        Club,
        /// A club of a job.
        ClubOfJob,
        /// An earlier reading of a club.
        EarlierReading,
        /// A place in the tray.
        Slot,
        /// A step of a job.
        Step,
        /// A reading.
        Reading,
        /// A scale or another instrument.
        Scale,
        /// A check weight.
        CheckWeight,
        /// A check of a scale.
        Check,
        /// A study of an instrument.
        Study,
        /// A batch of adhesive.
        Batch,
        /// An order.
        Order,
        /// A weight of the plan's choice.
        PlanWeight,
        /// A record.
        Record,
        /// A label's code.
        Label,
        /// Remembered columns of a list.
        Layout,
        /// A part or a job card.
        PartOrCard,
        /// A kind of job.
        JobKind,
        /// A value that the shop has learned.
        Learned,
        /// A mark on a club.
        Mark,
        /// Whatever a text may stand for.
        Anything,
    }
}

fact::facts! {
    /// What to do about something that does not exist.
    pub enum FindIt: "find_it" {
        /// What there is instead.
        Known {
            /// The names.
            known: Vec<String>,
        },
        /// What there is instead, or add it as a model.
        KnownOrAdd {
            /// The codes.
            known: Vec<String>,
        },
        /// Add a model of this kind.
        AddModel {
            /// What sort of model it is: of heads, shafts, grips …
            kind: Told,
        },
        /// Look it up among the models.
        LookUpModel,
        /// Add a blank to a shaft model.
        AddBlank,
        /// Choose a shaft model that has a blank for the number.
        ChooseShaft,
        /// Take one of these words.
        OneOf {
            /// The words.
            known: Vec<String>,
        },
    }
}

fact::facts! {
    /// What the program could not work out.
    pub enum WorkFault: "work_fault" {
        /// A forecast.
        Belief {
            /// Why.
            what: Told,
        },
        /// A plan.
        Plan {
            /// Why.
            what: Told,
        },
        /// Anything: the program itself is wrong.
        Program {
            /// What happened, as the log has it.
            log: String,
        },
    }
}

impl TradeError {
    /// The document breaks a rule of the trade.
    #[must_use]
    pub fn refused(refusal: impl Into<Refusal>) -> Self {
        Self::Refused(refusal.into())
    }

    /// Something named does not exist, and what to do about it.
    #[must_use]
    pub fn not_found(fact: &NotFound, next: &FindIt) -> Self {
        Self::Unknown(Refusal::new(fact).next(next))
    }

    /// A text of an entry could not be read; `why` says what stands in its way.
    #[must_use]
    pub fn unreadable(entry: impl Into<Entry>, why: &impl Fact) -> Self {
        let entry = entry.into();
        let at = entry.path();
        Self::Unreadable(Refusal::new(&EntryFault::Unreadable { entry, what: why.told() }).at(at))
    }

    /// What is wrong, what to do next and at which entry.
    #[must_use]
    pub fn refusal(&self) -> Refusal {
        match self {
            Self::Impossible(refusal) | Self::Unreadable(refusal) | Self::Unknown(refusal) | Self::Refused(refusal) => {
                refusal.clone()
            }
            Self::Belief(error) => WorkFault::Belief { what: error.told() }.into(),
            Self::Physics(error) => error.refusal(),
            Self::Matching(error) => WorkFault::Plan { what: error.told() }.into(),
            Self::Fault(log) => WorkFault::Program { log: log.clone() }.into(),
        }
    }

    /// The field that the message belongs beside, where there is one.
    #[must_use]
    pub fn field(&self) -> Option<&str> {
        match self {
            Self::Impossible(refusal) | Self::Unreadable(refusal) => refusal.entry(),
            Self::Physics(error) => error.field(),
            _ => None,
        }
    }
}

impl From<TradeError> for fact::Refusal {
    fn from(error: TradeError) -> Self {
        error.refusal()
    }
}

/// The form of a log.
impl fmt::Display for TradeError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.refusal().fmt(f)
    }
}

impl std::error::Error for TradeError {}

impl From<estimation::EstimationError> for TradeError {
    fn from(error: estimation::EstimationError) -> Self {
        Self::Belief(error)
    }
}

impl From<clubphysics::PhysicsError> for TradeError {
    fn from(error: clubphysics::PhysicsError) -> Self {
        Self::Physics(error)
    }
}

impl From<matching::MatchError> for TradeError {
    fn from(error: matching::MatchError) -> Self {
        match error {
            matching::MatchError::CheckFailed(log) => Self::Fault(format!("the plan failed its check: {log}")),
            error => Self::Matching(error),
        }
    }
}

/// Refuses a figure that is not finite or lies outside what is possible.
///
/// # Errors
/// [`TradeError::Impossible`] with the entry, the value and the range.
///
/// # Examples
///
/// ```
/// use trade::error::within;
///
/// assert_eq!(within("mass_g", 254.6, 120.0, 600.0, "g")?, 254.6);
/// // The refusal names the entry that it belongs beside.
/// let refused = within("mass_g", 2546.0, 120.0, 600.0, "g").expect_err("ten times too heavy");
/// assert_eq!(refused.field(), Some("mass_g"));
/// # Ok::<(), trade::error::TradeError>(())
/// ```
pub fn within(entry: impl Into<Entry>, value: f64, low: f64, high: f64, unit: &str) -> Result<f64, TradeError> {
    if value.is_finite() && value >= low && value <= high {
        return Ok(value);
    }
    let entry = entry.into();
    let at = entry.path();
    let fault = if low < high {
        let of = |value| Measure::new(value, unit);
        EntryFault::OutOfRange { entry, value: of(value), low: of(low), high: of(high) }
    } else {
        EntryFault::NoFigure { entry }
    };
    Err(TradeError::Impossible(Refusal::new(&fault).at(at)))
}

/// Refuses a figure that its quantity cannot have, and says which unit it was probably given in. The limits are those of the
/// calculations.
///
/// # Errors
/// [`TradeError::Impossible`] with the entry, the value and the range.
pub fn plausible(entry: impl Into<Entry>, value: f64, table: &Plausible) -> Result<f64, TradeError> {
    let (low, high) = table.range();
    match (within(entry, value, low, high, table.unit()), table.meant(value)) {
        (Err(TradeError::Impossible(refusal)), Some(meant)) => Err(TradeError::Impossible(refusal.next(&meant))),
        (other, _) => other,
    }
}

#[cfg(test)]
mod tests {
    use super::TradeError;
    use matching::MatchError;
    use quantity::Units;
    use words::Words;

    #[test]
    fn a_failed_check_is_our_mistake_and_a_refusal_is_not() {
        let fault = TradeError::from(MatchError::CheckFailed("made to fail".into()));
        assert_eq!(
            Words::english(Units::default()).refusal(&fault.refusal()),
            "the program made a mistake: the plan failed its check: made to fail. Nothing was saved. Please report it to \
             the makers of the program"
        );
        assert!(matches!(TradeError::from(MatchError::NoClubs), TradeError::Matching(_)));
    }

    /// A limit is told in the units of whoever reads it.
    #[test]
    fn a_range_is_told_in_the_readers_units() {
        let refused = super::within("mass_g", 5000.0, 120.0, 600.0, "g").expect_err("too heavy").refusal();
        let (grams, ounces) = (Units::default(), Units::from_key("in-oz"));
        assert_eq!(
            Words::english(grams).refusal(&refused),
            "mass_g is 5000 g: it must be between 120 g and 600 g. Check the figure and its unit"
        );
        assert_eq!(
            Words::english(ounces).refusal(&refused),
            "mass_g is 176.370 oz: it must be between 4.233 oz and 21.164 oz. Check the figure and its unit"
        );
    }
}
