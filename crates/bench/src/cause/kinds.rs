//! The causes by name, and how often each happens.

use serde::{Deserialize, Serialize};
use trade::kind::closed_list;
use utoipa::ToSchema;

closed_list! {
    /// What may be behind a doubted reading.
    CauseKind {
        /// Nothing: one of the few good readings that lie far out.
        Nothing = "nothing_wrong";
        /// Something that is not in this list.
        SomethingElse = "something_else";
        /// The head of the next number.
        NeighbourHead = "neighbour_head";
        /// Another piece of the same model than the plan says.
        WrongPart = "wrong_part";
        /// No weight in the tip.
        TipLeftOut = "tip_left_out";
        /// Another weight in the tip.
        TipSwapped = "tip_swapped";
        /// The weight stands out of the tip.
        TipNotSeated = "tip_not_seated";
        /// The head is not down on the shaft.
        HeadNotSeated = "head_not_seated";
        /// No ferrule.
        FerruleMissing = "ferrule_missing";
        /// Film or label still on the head.
        FilmOn = "film_on";
        /// Solvent still in the grip.
        SolventIn = "solvent_in";
        /// The butt does not touch the stop.
        ButtOffStop = "butt_off_stop";
        /// The grip is on where it should not be yet.
        GripOn = "grip_on";
        /// The grip is missing.
        GripOff = "grip_off";
        /// The grip has no cap.
        CapMissing = "cap_missing";
        /// The grip is not pushed home.
        GripNotHome = "grip_not_home";
        /// Another grip than planned, or a strip of tape more or less: nothing that can be weighed tells them apart.
        GripOrTape = "grip_or_tape";
        /// The shaft is cut half an inch or an inch off.
        CutOff = "cut_off";
        /// The scale was not zeroed.
        ScaleNotZeroed = "scale_not_zeroed";
        /// This club's head and another club's are exchanged.
        HeadsExchanged = "heads_exchanged";
        /// This club's grip and another club's are exchanged.
        GripsExchanged = "grips_exchanged";
        /// This club's tip weight and another club's are exchanged.
        TipsExchanged = "tips_exchanged";
        /// All joints of the set take more or less adhesive than usual.
        AllJoints = "all_joints";
        /// Two digits changed places.
        DigitsSwapped = "digits_swapped";
        /// A letter, a digit or a mark of the rule read one off.
        Misread = "misread";
        /// Ounces taken for grams.
        WrongUnit = "wrong_unit";
        /// Another screw in the head.
        ScrewSwapped = "screw_swapped";
        /// The clamp holds too little or too much of the butt.
        ClampedOff = "clamped_off";
        /// The tip is trimmed as for another number.
        TipTrimOff = "tip_trim_off";
        /// The shaft is that of another club of the set.
        OtherShaft = "other_shaft";
        /// The shaft is of another flex than planned.
        WrongFlex = "wrong_flex";
        /// The frequency of the raw shaft is not what was noted when it came in.
        RawNoted = "raw_noted";
        /// The head is not firm on the shaft.
        HeadLoose = "head_loose";
        /// One swing too many or too few was counted while the club was timed.
        SwingsMiscounted = "swings_miscounted";
        /// The mass of a part is not what was noted when it came in.
        MassNoted = "mass_noted";
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
            Self::ClampedOff | Self::SwingsMiscounted => 0.010,
            Self::TipTrimOff | Self::OtherShaft => 0.004,
            Self::HeadLoose => 0.006,
            Self::WrongFlex | Self::RawNoted => 0.003,
            Self::GripOn | Self::GripOff | Self::WrongUnit | Self::MassNoted => 0.001,
        }
    }
}
