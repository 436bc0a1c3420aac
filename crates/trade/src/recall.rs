//! Recall: whom a lot, a part, a model, a scale or a builder reached, and the mark on a club until somebody has looked.

use crate::error::TradeError;
use crate::id::{ClubCode, ClubId, EventId};
use crate::model::PartKind;
use fact::{Refusal, Told};
use jiff::Timestamp;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// The longest text of a mark, in letters.
const LONGEST_WORD: usize = 300;

/// What is called back: one of lot, part, model, scale and builder; days go with a scale or a builder.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Recall {
    /// A lot of adhesive or of parts, as it stands on the tins or the box. Capitals do not matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lot: Option<String>,
    /// Code of one part, or of a box of equal parts.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub part: Option<String>,
    /// Code of a model: of heads, shafts, grips, ferrules, tip weights, adapters, adhesive or tape.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub model: Option<String>,
    /// Key of a scale: what was read on it, within the days where they are given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub scale: Option<String>,
    /// Name of a builder: what they read, glued or did, within the days where they are given. Capitals do not matter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub builder: Option<String>,
    /// The first day, of a scale or a builder; left out: all days.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = Date)]
    pub from: Option<Date>,
    /// The last day; left out: until today.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = Date)]
    pub to: Option<Date>,
}

fact::facts! {
    /// What is called back, as it is told.
    pub enum RecallOf: "recall_of" {
        /// A lot of adhesive or of parts.
        Lot {
            /// As it stands on the tins or the box.
            lot: String,
        },
        /// One part, or a box of equal parts.
        Part {
            /// Its code.
            part: String,
        },
        /// A model.
        Model {
            /// Its code.
            model: String,
        },
        /// What was read on a scale, on any day.
        Scale {
            /// Its key.
            scale: String,
        },
        /// What was read on a scale within days.
        ScaleDays {
            /// Its key.
            scale: String,
            /// The first day.
            from_on: Date,
            /// The last day.
            to_on: Date,
        },
        /// What a builder did, on any day.
        Builder {
            /// Their name.
            builder: String,
        },
        /// What a builder did within days.
        BuilderDays {
            /// Their name.
            builder: String,
            /// The first day.
            from_on: Date,
            /// The last day.
            to_on: Date,
        },
    }
}

impl Recall {
    /// What is called back: exactly one thing, blanks around it left out. Days end today where no last one is given.
    ///
    /// # Errors
    /// Nothing or several things named; days of a lot, a part or a model; a last day without a first one, or before it.
    ///
    /// # Examples
    ///
    /// ```
    /// use trade::recall::{Recall, RecallOf};
    ///
    /// let today = jiff::civil::date(2031, 4, 1);
    /// let recall = Recall { lot: Some(" D-12 ".into()), ..Recall::default() };
    /// assert_eq!(recall.of(today)?, RecallOf::Lot { lot: "D-12".into() });
    /// assert!(Recall::default().of(today).is_err());
    /// # Ok::<(), trade::error::TradeError>(())
    /// ```
    pub fn of(&self, today: Date) -> Result<RecallOf, TradeError> {
        let refused = |fault: &RecallFault, at: &str| Err(TradeError::refused(Refusal::new(fault).at(at)));
        let said = |text: &Option<String>| text.as_deref().map(str::trim).filter(|t| !t.is_empty()).map(str::to_owned);
        let fields = [&self.lot, &self.part, &self.model, &self.scale, &self.builder].map(said);
        match fields.iter().filter(|one| one.is_some()).count() {
            1 => {}
            0 => return refused(&RecallFault::Nothing, "lot"),
            _ => return refused(&RecallFault::Several, "lot"),
        }
        let [lot, part, model, scale, builder] = fields;
        let days = match (self.from, self.to) {
            (None, None) => None,
            (None, Some(_)) => return refused(&RecallFault::NoFirstDay, "from"),
            (Some(from), to) if from > to.unwrap_or(today) => return refused(&RecallFault::Backwards, "to"),
            (Some(from), to) => Some((from, to.unwrap_or(today))),
        };
        if days.is_some() && scale.is_none() && builder.is_none() {
            return refused(&RecallFault::NoDays, "from");
        }
        Ok(match (lot, part, model, scale, builder, days) {
            (Some(lot), ..) => RecallOf::Lot { lot },
            (_, Some(part), ..) => RecallOf::Part { part },
            (_, _, Some(model), ..) => RecallOf::Model { model },
            (_, _, _, Some(scale), _, Some((from_on, to_on))) => RecallOf::ScaleDays { scale, from_on, to_on },
            (_, _, _, Some(scale), ..) => RecallOf::Scale { scale },
            (.., builder, days) => {
                let builder = builder.unwrap_or_default();
                match days {
                    Some((from_on, to_on)) => RecallOf::BuilderDays { builder, from_on, to_on },
                    None => RecallOf::Builder { builder },
                }
            }
        })
    }
}

fact::facts! {
    /// Why a club is in a recall.
    pub enum Reach: "recall_reach" {
        /// It was glued from a batch.
        Batch {
            /// Number of the batch.
            batch: i64,
            /// Lot of its adhesive.
            lot: String,
            /// When it was mixed.
            mixed_at: Timestamp,
        },
        /// It has a part.
        Part {
            /// What sort of part.
            kind: PartKind,
            /// Its code.
            part: String,
        },
        /// It had a part, which was pulled out of it or gave way to another.
        HadPart {
            /// What sort of part.
            kind: PartKind,
            /// Its code.
            part: String,
        },
        /// It may have tape of a roll: no step notes the roll, only the sort of tape, and it was put on while the roll was in the shop.
        MayHaveTape {
            /// Code of the roll.
            part: String,
            /// When the tape was first read on the club.
            since_at: Timestamp,
        },
        /// Its sheet names the model, and no part of it was noted: tape, or what was there before the job.
        Named {
            /// Code of the model.
            model: String,
        },
        /// It was read on the scale.
        Read {
            /// How many readings.
            n: i64,
            /// The first of them.
            first_at: Timestamp,
            /// The last of them.
            last_at: Timestamp,
        },
        /// The builder read it.
        ReadBy {
            /// How many readings.
            n: i64,
            /// The first of them.
            first_at: Timestamp,
            /// The last of them.
            last_at: Timestamp,
        },
        /// The builder did something else with it that the log notes.
        DoneBy {
            /// How many entries.
            n: i64,
            /// The last of them.
            last_at: Timestamp,
        },
        /// The builder mixed the batch that it was glued from.
        MixedBy {
            /// Number of the batch.
            batch: i64,
            /// When it was mixed.
            mixed_at: Timestamp,
        },
    }
}

/// A mark on a club: what to look at, until somebody has.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct ClubMark {
    /// Identity of the mark.
    pub id: EventId,
    /// Identity of the club within its job; none where it was never in one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub club: Option<ClubId>,
    /// Its own code; none as long as it was not handed over.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub code: Option<ClubCode>,
    /// What to look at, as it was written.
    pub word: String,
    /// The recall that it came from.
    pub of: Told,
    /// Who marked it.
    pub by: String,
    /// When.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
    /// What was found, once somebody has looked; none while the mark stands.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cleared: Option<MarkCleared>,
}

/// That somebody has looked at a marked club.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct MarkCleared {
    /// What was found or done, as it was written.
    pub word: String,
    /// Who looked.
    pub by: String,
    /// When.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
}

/// Refuses what says nothing, and what no line has room for.
///
/// # Errors
/// Fewer than three letters; more than 300.
pub fn check_word(word: &str) -> Result<(), TradeError> {
    let letters = word.trim().chars().count();
    let fault = match letters {
        0..3 => RecallFault::NoWord,
        3..=LONGEST_WORD => return Ok(()),
        _ => RecallFault::LongWord { letters, most: LONGEST_WORD },
    };
    Err(TradeError::refused(Refusal::new(&fault).at("word")))
}

fact::facts! {
    /// What is refused of a recall or of a mark.
    pub enum RecallFault: "recall_fault" {
        /// Nothing is named.
        Nothing,
        /// Several things are named.
        Several,
        /// Days are given that nothing goes by.
        NoDays,
        /// A last day without a first one.
        NoFirstDay,
        /// The last day is before the first.
        Backwards,
        /// A mark, or what was found, says nothing.
        NoWord,
        /// It is too long.
        LongWord {
            /// Letters that it has.
            letters: usize,
            /// Letters that it may have.
            most: usize,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;

    #[test]
    fn one_thing_is_called_back_and_days_go_with_a_scale_or_a_builder() {
        let today = date(2031, 4, 9);
        let code = |recall: &Recall| recall.of(today).map_err(|e| e.refusal().fact().code().to_owned());
        let day = Some(date(2031, 4, 1));
        let scale = Recall { scale: Some("balance".into()), ..Recall::default() };
        assert_eq!(code(&scale), Ok(RecallOf::Scale { scale: "balance".into() }));
        let days = RecallOf::ScaleDays { scale: "balance".into(), from_on: date(2031, 4, 1), to_on: today };
        assert_eq!(code(&Recall { from: day, ..scale.clone() }), Ok(days));
        let lot = Recall { lot: Some("D-1".into()), ..Recall::default() };
        for (recall, refused) in [
            (Recall { from: day, ..lot.clone() }, "no_days"),
            (Recall { scale: Some("x".into()), ..lot }, "several"),
            (Recall { lot: Some("  ".into()), ..Recall::default() }, "nothing"),
            (Recall { from: day, to: Some(date(2031, 3, 31)), ..scale.clone() }, "backwards"),
            (Recall { from: Some(date(2031, 4, 10)), ..scale.clone() }, "backwards"),
            (Recall { to: day, ..scale }, "no_first_day"),
        ] {
            assert_eq!(code(&recall), Err(format!("recall_fault.{refused}")));
        }
    }

    #[test]
    fn a_mark_says_something_in_a_line() {
        assert!(check_word("look at the ferrule").is_ok());
        assert!(check_word(" x ").is_err() && check_word(&"x".repeat(301)).is_err());
    }
}
