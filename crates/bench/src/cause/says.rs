//! What a cause is in this club, what to do about it, and what is likely.

use super::kinds::CauseKind as Kind;
use crate::chance::Odds;
use fact::Told;
use trade::club_name::ClubName;
use trade::model::PartKind;
use trade::reading_figure::ReadingFigure;

fact::facts! {
    /// What may be behind a reading that does not fit.
    pub enum CauseSays: "cause" {
        /// Nothing is wrong.
        NothingWrong,
        /// The head of another number is on.
        NeighbourHead {
            /// Whose head is on.
            found: ClubName,
            /// The club.
            own: ClubName,
        },
        /// Another head of the right number.
        OtherHead {
            /// The club whose number the right and the wrong head have.
            club: ClubName,
        },
        /// The mass noted for a part when it came in is wrong.
        MassNoted {
            /// Which part.
            part: PartKind,
        },
        /// Film or label on the head.
        FilmOn,
        /// The head is off its seat.
        HeadNotSeated,
        /// The tip weight holds the head off.
        TipNotSeated,
        /// The screw is too heavy.
        ScrewHeavier {
            /// By how much.
            by_g: f64,
        },
        /// The screw is too light.
        ScrewLighter {
            /// By how much.
            by_g: f64,
        },
        /// No ferrule.
        FerruleMissing,
        /// The tip is empty.
        TipLeftOut {
            /// What should be in it.
            planned_g: f64,
        },
        /// Another weight is in the tip.
        TipSwapped {
            /// The weight that seems to be in it.
            found_g: f64,
            /// What should be in it.
            planned_g: f64,
        },
        /// A weight is in a tip that should be empty.
        TipAdded {
            /// The weight that seems to be in it.
            found_g: f64,
        },
        /// Another grip.
        OtherGrip,
        /// No cap.
        CapMissing,
        /// The grip stands off the butt.
        GripNotHome,
        /// No grip.
        GripOff,
        /// The grip is on too early.
        GripOn,
        /// One strip of tape too many.
        StripMore,
        /// One strip of tape too few.
        StripLess,
        /// The grip is wet.
        SolventIn,
        /// The shaft is too long.
        ShaftLong {
            /// By how much.
            by_mm: f64,
        },
        /// The shaft is too short.
        ShaftShort {
            /// By how much.
            by_mm: f64,
        },
        /// Another shaft.
        OtherShaft,
        /// The butt did not touch the stop.
        ButtOffStop,
        /// The scale was not zeroed.
        ScaleNotZeroed,
        /// The scale was off zero for a run of readings.
        ScaleOffZero {
            /// How many readings.
            n: i64,
        },
        /// The ferrule was off at an earlier reading; it is on now.
        FerruleWasOff,
        /// Two clubs have each other's head.
        HeadsExchanged {
            /// One club.
            first: ClubName,
            /// The other.
            second: ClubName,
        },
        /// Two clubs have each other's grip.
        GripsExchanged {
            /// One club.
            first: ClubName,
            /// The other.
            second: ClubName,
        },
        /// Two clubs have each other's tip weight.
        TipsExchanged {
            /// One club.
            first: ClubName,
            /// The other.
            second: ClubName,
        },
        /// All joints are heavier than usual.
        JointsHeavy {
            /// By how much.
            by_g: f64,
        },
        /// All joints are lighter than usual.
        JointsLight {
            /// By how much.
            by_g: f64,
        },
        /// The clamp holds less of the butt than it should.
        ClampedShort,
        /// The clamp holds more of the butt than it should.
        ClampedDeep,
        /// More is cut off the tip than planned.
        TipTrimMore {
            /// By how much.
            by_mm: f64,
        },
        /// Less is cut off the tip than planned.
        TipTrimLess {
            /// By how much.
            by_mm: f64,
        },
        /// The shaft planned for another club of the set is in this one.
        ShaftOfClub {
            /// The other club.
            club: ClubName,
        },
        /// The shaft is of a stiffer flex than planned.
        StifferShaft,
        /// The shaft is of a softer flex than planned.
        SofterShaft,
        /// The frequency of the raw shaft was noted wrong.
        RawNoted,
        /// The head is not firm on the shaft.
        HeadLoose,
        /// Two digits changed places.
        DigitsSwapped {
            /// The figure with its two digits changed back.
            meant: ReadingFigure,
        },
        /// A swing too many or too few was counted.
        SwingsMiscounted {
            /// The period with one swing more or less.
            meant: ReadingFigure,
        },
        /// Another unit.
        OtherUnit {
            /// The figure in the right unit.
            meant: ReadingFigure,
        },
        /// It was misread, … was meant.
        Misread {
            /// The figure that the display probably showed.
            meant: ReadingFigure,
        },
        /// Something else with the reading.
        ElseReading,
        /// Something else with the club.
        ElseClub,
        /// Two of them at once.
        Both {
            /// One.
            first: Told,
            /// The other.
            second: Told,
        },
    }
}

fact::facts! {
    /// What to do about a cause.
    pub enum CauseToDo: "cause_to_do" {
        /// Read again.
        SeatAgain,
        /// Look the club over.
        LookOver,
        /// Take the planned head.
        TakeHead,
        /// Take the planned part.
        TakePart,
        /// Correct the mass of the part.
        CorrectMass,
        /// Put the weight in.
        FillTip,
        /// Weigh what is in the tip.
        WeighTip,
        /// The same where the joint is glued.
        GluedTip,
        /// Push the weight down.
        PushTip,
        /// Push the head down.
        PushHead,
        /// The same where the joint is glued.
        GluedHead,
        /// Put the ferrule on.
        PutFerrule,
        /// The same where the joint is glued.
        GluedFerrule,
        /// Peel the head.
        Peel,
        /// Let it dry.
        Dry,
        /// Push the butt home.
        PushButt,
        /// The grip is on: enter the reading at the right step.
        EnterAtItsStep,
        /// The grip is off: put it on, or enter the reading at the right step.
        PutGrip,
        /// Look at the cap.
        LookAtCap,
        /// Push the grip home.
        PushGrip,
        /// Compare the grip and count the strips.
        CompareGrip,
        /// Cut the shaft.
        CutShaft,
        /// Take a longer shaft.
        LongerShaft,
        /// The same where the joint is glued.
        ExtendShaft,
        /// Zero the scale.
        ZeroScale,
        /// Zero the scale and read the whole run again.
        ZeroScaleReadRun {
            /// How many readings.
            n: i64,
        },
        /// Take the reading without the ferrule back.
        TakeBackWithoutFerrule,
        /// Exchange the two heads.
        ExchangeHeads,
        /// The same where a joint is glued.
        GluedHeads,
        /// Exchange the two grips.
        ExchangeGrips,
        /// Exchange the two tip weights.
        ExchangeTips,
        /// The same where a joint is glued.
        GluedTips,
        /// Believe the readings of the glued clubs.
        BelieveJoints,
        /// Look at the display.
        LookAtDisplay,
        /// Time the swing again.
        TimeAgain,
        /// Put the right screw in.
        TakeScrew,
        /// Clamp the club again.
        ClampAgain,
        /// Measure the shaft's tip.
        MeasureTip,
        /// Compare the shaft with the card.
        CompareShaft,
        /// Correct the frequency of the shaft.
        CorrectRaw,
        /// Push the head firm and read again.
        FirmHead,
        /// The same where the joint is glued.
        GluedLoose,
        /// Two things, one after the other.
        Both {
            /// What to do before anything else.
            first: Told,
            /// What to do after that.
            second: Told,
        },
    }
}

impl CauseToDo {
    /// What to do about one cause of a club; `glued`: its joint is.
    pub(super) fn of(kind: Kind, says: &CauseSays, glued: bool) -> Self {
        match kind {
            Kind::Nothing => Self::SeatAgain,
            Kind::SomethingElse => Self::LookOver,
            Kind::NeighbourHead => Self::TakeHead,
            Kind::WrongPart => Self::TakePart,
            Kind::MassNoted => Self::CorrectMass,
            Kind::TipLeftOut | Kind::TipSwapped | Kind::TipNotSeated if glued => Self::GluedTip,
            Kind::TipLeftOut => Self::FillTip,
            Kind::TipSwapped => Self::WeighTip,
            Kind::TipNotSeated => Self::PushTip,
            Kind::HeadNotSeated if glued => Self::GluedHead,
            Kind::HeadNotSeated => Self::PushHead,
            Kind::FerruleMissing if *says == CauseSays::FerruleWasOff => Self::TakeBackWithoutFerrule,
            Kind::FerruleMissing if glued => Self::GluedFerrule,
            Kind::FerruleMissing => Self::PutFerrule,
            Kind::FilmOn => Self::Peel,
            Kind::SolventIn => Self::Dry,
            Kind::ButtOffStop => Self::PushButt,
            Kind::GripOn => Self::EnterAtItsStep,
            Kind::GripOff => Self::PutGrip,
            Kind::CapMissing => Self::LookAtCap,
            Kind::GripNotHome => Self::PushGrip,
            Kind::GripOrTape => Self::CompareGrip,
            Kind::CutOff => match says {
                CauseSays::ShaftLong { .. } => Self::CutShaft,
                _ if glued => Self::ExtendShaft,
                _ => Self::LongerShaft,
            },
            Kind::ScaleNotZeroed => match says {
                CauseSays::ScaleOffZero { n } => Self::ZeroScaleReadRun { n: *n },
                _ => Self::ZeroScale,
            },
            Kind::HeadsExchanged if glued => Self::GluedHeads,
            Kind::HeadsExchanged => Self::ExchangeHeads,
            Kind::GripsExchanged => Self::ExchangeGrips,
            Kind::TipsExchanged if glued => Self::GluedTips,
            Kind::TipsExchanged => Self::ExchangeTips,
            Kind::AllJoints => Self::BelieveJoints,
            Kind::ClampedOff => Self::ClampAgain,
            Kind::TipTrimOff => Self::MeasureTip,
            Kind::OtherShaft | Kind::WrongFlex => Self::CompareShaft,
            Kind::RawNoted => Self::CorrectRaw,
            Kind::HeadLoose if glued => Self::GluedLoose,
            Kind::HeadLoose => Self::FirmHead,
            Kind::DigitsSwapped | Kind::Misread | Kind::WrongUnit => Self::LookAtDisplay,
            Kind::SwingsMiscounted => Self::TimeAgain,
            Kind::ScrewSwapped => Self::TakeScrew,
        }
    }
}

fact::facts! {
    /// What is likely behind a doubted reading, in one sentence.
    pub enum Likely: "likely" {
        /// One cause is likelier than all others together.
        Most {
            /// What is likely wrong with the club or the reading.
            cause: CauseSays,
            /// How likely.
            odds: Odds,
            /// What to do about it.
            to_do: CauseToDo,
        },
        /// One cause stands out a little.
        Maybe {
            /// What may be wrong with the club or the reading.
            cause: CauseSays,
            /// How likely.
            odds: Odds,
            /// What to do about it.
            to_do: CauseToDo,
        },
        /// It may be: … (…), or … (…).
        OneOfTwo {
            /// The likelier one, or the one that can be looked at.
            first: CauseSays,
            /// How likely.
            first_odds: Odds,
            /// The other one.
            second: CauseSays,
            /// How likely.
            second_odds: Odds,
        },
    }
}
