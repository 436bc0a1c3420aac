//! What a reading means and what to do now, as facts.

use crate::cause::{Likely, TellingSays};
use crate::chance::Chance;
use crate::open_point::OpenFact;
use crate::reach::VerdictReach;
use crate::remedy::RemedySays;
use trade::reading::What;
use trade::reading_figure::ReadingFigure;

fact::facts! {
    /// How far a reading is from what all others make expected.
    pub enum OffBy: "off_by" {
        /// Swing weight, less.
        LessPoints {
            /// By how much.
            by_points: f64,
        },
        /// Swing weight, more.
        MorePoints {
            /// By how much.
            by_points: f64,
        },
        /// Mass, less.
        Lighter {
            /// By how much.
            by_g: f64,
        },
        /// Mass, more.
        Heavier {
            /// By how much.
            by_g: f64,
        },
        /// Length, less.
        Shorter {
            /// By how much.
            by_mm: f64,
        },
        /// Length, more.
        Longer {
            /// By how much.
            by_mm: f64,
        },
        /// Anything else, less.
        Less {
            /// By how much.
            by: ReadingFigure,
        },
        /// Anything else, more.
        More {
            /// By how much.
            by: ReadingFigure,
        },
    }
}

impl OffBy {
    pub(super) fn of(what: What, by: f64) -> Self {
        let (more, size) = (by > 0.0, by.abs());
        match ReadingFigure::half(what, size) {
            ReadingFigure::Points { by_points } if more => Self::MorePoints { by_points },
            ReadingFigure::Points { by_points } => Self::LessPoints { by_points },
            ReadingFigure::Mass { value_g } if more => Self::Heavier { by_g: value_g },
            ReadingFigure::Mass { value_g } => Self::Lighter { by_g: value_g },
            ReadingFigure::Length { value_mm } if is_length(what) && more => Self::Longer { by_mm: value_mm },
            ReadingFigure::Length { value_mm } if is_length(what) => Self::Shorter { by_mm: value_mm },
            by if more => Self::More { by },
            by => Self::Less { by },
        }
    }
}

/// Whether a reading in millimetres is the length of something, and not the place of a balance point.
const fn is_length(what: What) -> bool {
    matches!(what, What::ShaftLength | What::FinishedLength)
}

fact::facts! {
    /// How a loft or lie is.
    pub enum AngleSays: "angle" {
        /// As the sheet asks.
        LoftGood {
            /// As read.
            read_deg: f64,
        },
        /// Too much loft.
        LoftWeak {
            /// As read.
            read_deg: f64,
            /// What the sheet asks.
            asked_deg: f64,
            /// By how much.
            by_deg: f64,
        },
        /// Too little loft.
        LoftStrong {
            /// As read.
            read_deg: f64,
            /// What the sheet asks.
            asked_deg: f64,
            /// By how much.
            by_deg: f64,
        },
        /// As the sheet asks.
        LieGood {
            /// As read.
            read_deg: f64,
        },
        /// Too upright.
        LieUpright {
            /// As read.
            read_deg: f64,
            /// What the sheet asks.
            asked_deg: f64,
            /// By how much.
            by_deg: f64,
        },
        /// Too flat.
        LieFlat {
            /// As read.
            read_deg: f64,
            /// What the sheet asks.
            asked_deg: f64,
            /// By how much.
            by_deg: f64,
        },
    }
}

fact::facts! {
    /// What to do about a loft or lie.
    pub enum AngleToDo: "angle_to_do" {
        /// The loft is not read yet.
        ReadLoft,
        /// The lie is not read yet.
        ReadLie,
        /// Bend it to less loft.
        BendStronger {
            /// By how much.
            by_deg: f64,
            /// What the maker allows.
            limit_deg: f64,
        },
        /// Bend it to more loft.
        BendWeaker {
            /// By how much.
            by_deg: f64,
            /// What the maker allows.
            limit_deg: f64,
        },
        /// Bend it upright.
        BendUpright {
            /// By how much.
            by_deg: f64,
            /// What the maker allows.
            limit_deg: f64,
        },
        /// Bend it flat.
        BendFlat {
            /// By how much.
            by_deg: f64,
            /// What the maker allows.
            limit_deg: f64,
        },
        /// The adapter comes nearer at another setting; it is set, never bent.
        SetAdapter {
            /// Its name as it is printed on the adapter: `+1`.
            setting: String,
        },
        /// It may not be bent so far.
        OtherHead {
            /// What the maker allows.
            limit_deg: f64,
        },
    }
}

fact::facts! {
    /// What a reading means.
    pub enum MeaningSays: "meaning" {
        /// It is kept, and says nothing about a finish.
        Kept,
        /// Where the club will finish.
        Finish {
            /// Swing weight of the finished club.
            finish_points: f64,
            /// Half width of its 95 % band.
            band_points: f64,
            /// How likely in tolerance as it stands, nothing chosen any more.
            chance: Chance,
            /// How likely with the readings to come and its grip chosen by them, where those are still to come.
            ahead: Option<Chance>,
        },
        /// The same where another reading of the step is off.
        OffSheet {
            /// The other readings of the step that lie outside of what the sheet asks.
            off: Vec<OpenFact>,
            /// Swing weight of the finished club.
            finish_points: f64,
            /// Half width of its 95 % band.
            band_points: f64,
            /// How likely in tolerance.
            chance: Chance,
        },
        /// One of loft and lie.
        Angle {
            /// How it is.
            angle: AngleSays,
        },
        /// Loft and lie, in the order of the step.
        Angles {
            /// How one of them is.
            first: AngleSays,
            /// How the other is.
            second: AngleSays,
        },
        /// A frequency, as the sheet asks.
        CpmGood {
            /// As read.
            read_cpm: f64,
            /// What the sheet asks.
            asked_cpm: f64,
        },
        /// A frequency of which the sheet asks nothing, beside what was expected.
        CpmExpected {
            /// As read.
            read_cpm: f64,
            /// What was expected before it.
            expected_cpm: f64,
            /// Half width of the 95 % band of that.
            band_cpm: f64,
        },
        /// The reading is doubted.
        Doubted {
            /// How far off it is.
            off: OffBy,
        },
        /// The same where nothing is forecast.
        DoubtedOnly,
    }
}

fact::facts! {
    /// What to do now.
    pub enum NextSays: "next" {
        /// Go on.
        Step {
            /// What the builder calls the step.
            step: String,
        },
        /// Nothing is left to do.
        Done,
        /// The finished club is in tolerance; go on.
        InTolerance {
            /// What the builder calls the step.
            step: String,
        },
        /// The finished club is in tolerance, and nothing is left to do.
        InToleranceDone,
        /// The finished club is expected in tolerance and too close to be called in: what settles it.
        Settle {
            /// What to read.
            reach: VerdictReach,
        },
        /// Something of the step is off.
        PutRight,
        /// The best remedy.
        Remedy {
            /// What to do to the club, and where it finishes with that.
            remedy: RemedySays,
        },
        /// The best remedy of a club that will rather miss.
        RatherOut {
            /// What to do to the club, and where it finishes with that.
            remedy: RemedySays,
        },
        /// A heavier grip will bring a club in that would rather miss.
        HeavierGripLater {
            /// How likely in tolerance then.
            chance: Chance,
        },
        /// A lighter grip will bring a club in that would rather miss.
        LighterGripLater {
            /// How likely in tolerance then.
            chance: Chance,
        },
        /// The club is too light, and nothing at hand helps.
        TooLight {
            /// By how much.
            by_points: f64,
        },
        /// The club is too heavy, and nothing at hand helps.
        TooHeavy {
            /// By how much.
            by_points: f64,
        },
        /// The forecast is wide, and a later step narrows it.
        WideReadStep {
            /// What the builder calls the step.
            step: String,
        },
        /// The forecast is wide, and the same reading once more narrows it.
        WideReadAgain,
        /// The forecast is wide, and the check weight narrows it.
        WideReadCheckWeight,
        /// The forecast is wide, and no reading narrows it much.
        Wide,
        /// What is likely behind a doubted reading.
        Likely {
            /// The likeliest cause or two, with their odds.
            likely: Likely,
            /// What would tell, where something does.
            telling: Option<TellingSays>,
        },
        /// The same where the doubted reading is an earlier one.
        StillDoubted {
            /// What was read.
            what: What,
            /// What the builder calls its step.
            step: String,
            /// The likeliest cause or two, with their odds.
            likely: Likely,
            /// What would tell, where something does.
            telling: Option<TellingSays>,
        },
        /// Nothing is known of what may be behind a doubted reading.
        ReadAgain,
        /// Loft and lie are as asked.
        NothingToBend,
        /// What to do about loft or lie.
        Angle {
            /// What to do about the loft or the lie: read it, or how far to bend it and which way.
            to_do: AngleToDo,
        },
        /// What to do about both.
        Angles {
            /// What to do about one of them, the loft or the lie, before the other.
            first: AngleToDo,
            /// What to do about the other.
            second: AngleToDo,
        },
    }
}
