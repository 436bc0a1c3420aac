//! The causes by name, and how often each happens.

use serde::{Deserialize, Serialize};
use trade::kind::closed_list;
use utoipa::ToSchema;

closed_list! {
    /// What may be behind a doubted reading.
    CauseKind {
        /// Nothing: one of the few good readings that lie far out.
        Nothing = "nothing_wrong", "nothing is wrong";
        /// Something that is not in this list.
        SomethingElse = "something_else", "something else";
        /// The head of the next number.
        NeighbourHead = "neighbour_head", "neighbour's head";
        /// Another piece of the same model than the plan says.
        WrongPart = "wrong_part", "another part than planned";
        /// No weight in the tip.
        TipLeftOut = "tip_left_out", "tip weight left out";
        /// Another weight in the tip.
        TipSwapped = "tip_swapped", "another tip weight";
        /// The weight stands out of the tip.
        TipNotSeated = "tip_not_seated", "tip weight not seated";
        /// The head is not down on the shaft.
        HeadNotSeated = "head_not_seated", "head not seated";
        /// No ferrule.
        FerruleMissing = "ferrule_missing", "ferrule missing";
        /// Film or label still on the head.
        FilmOn = "film_on", "film or label still on";
        /// Solvent still in the grip.
        SolventIn = "solvent_in", "solvent still in the grip";
        /// The butt does not touch the stop.
        ButtOffStop = "butt_off_stop", "butt off the stop";
        /// The grip is on where it should not be yet.
        GripOn = "grip_on", "grip on";
        /// The grip is missing.
        GripOff = "grip_off", "grip missing";
        /// The grip has no cap.
        CapMissing = "cap_missing", "cap missing";
        /// The grip is not pushed home.
        GripNotHome = "grip_not_home", "grip not pushed home";
        /// Another grip than planned, or a strip of tape more or less: nothing that can be weighed tells them apart.
        GripOrTape = "grip_or_tape", "another grip or tape than planned";
        /// The shaft is cut half an inch or an inch off.
        CutOff = "cut_off", "shaft cut off its length";
        /// The scale was not zeroed.
        ScaleNotZeroed = "scale_not_zeroed", "scale not zeroed";
        /// This club's head and another club's are exchanged.
        HeadsExchanged = "heads_exchanged", "two heads exchanged";
        /// This club's grip and another club's are exchanged.
        GripsExchanged = "grips_exchanged", "two grips exchanged";
        /// This club's tip weight and another club's are exchanged.
        TipsExchanged = "tips_exchanged", "two tip weights exchanged";
        /// All joints of the set take more or less adhesive than usual.
        AllJoints = "all_joints", "all joints heavy or light";
        /// Two digits changed places.
        DigitsSwapped = "digits_swapped", "digits swapped";
        /// A letter, a digit or a mark of the rule read one off.
        Misread = "misread", "read one off";
        /// Ounces taken for grams.
        WrongUnit = "wrong_unit", "another unit";
        /// Another screw in the head.
        ScrewSwapped = "screw_swapped", "another screw in the head";
    }
}

impl CauseKind {
    /// How often it happens, for one club or, where it concerns a single reading, for one reading. Common practice, no
    /// source; of a worked example are those of the tip weight, the ferrule, the head and of something else. What is
    /// left to 1 is that nothing is wrong.
    pub(super) const fn prior(self) -> f64 {
        match self {
            // Filled up to 1 with all others counted.
            Self::Nothing => 0.0,
            // Of the set, and spread over its clubs and readings: see `set`.
            Self::HeadsExchanged
            | Self::GripsExchanged
            | Self::TipsExchanged
            | Self::AllJoints
            | Self::ScaleNotZeroed => 0.0,
            Self::TipSwapped => 0.010,
            Self::SomethingElse | Self::TipLeftOut => 0.006,
            Self::NeighbourHead | Self::ButtOffStop => 0.005,
            Self::HeadNotSeated => 0.004,
            Self::FerruleMissing | Self::DigitsSwapped | Self::WrongPart => 0.003,
            Self::SolventIn | Self::TipNotSeated | Self::GripOrTape => 0.003,
            Self::CutOff | Self::Misread | Self::ScrewSwapped | Self::FilmOn => 0.002,
            Self::GripNotHome | Self::CapMissing => 0.002,
            Self::GripOn | Self::GripOff | Self::WrongUnit => 0.001,
        }
    }
}
