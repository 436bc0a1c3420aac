//! Why a short sheet is refused.

use fact::{Fact, Refusal};
use trade::error::EntryFault;
use trade::error::TradeError;
use trade::kind::ClubKind;

fact::facts! {
    /// Why a short sheet is refused.
    pub enum ShortError: "short_sheet" {
        /// Word.
        Word {
            /// Word.
            word: String,
            /// How many.
            n: usize,
            /// What it is.
            what: WordFault,
        },
        /// No clubs.
        NoClubs {
            /// What there is instead.
            known: Vec<KnownClubs>,
        },
        /// Too long.
        TooLong {
            /// How many.
            n: usize,
            /// Most that is taken.
            most: usize,
        },
        /// No head model.
        NoHeadModel,
        /// Models.
        Models {
            /// What it is.
            what: Refusal,
        },
        /// Cap needed.
        CapNeeded {
            /// What it is.
            what: Refusal,
        },
        /// Inertia needs models.
        InertiaNeedsModels {
            /// What it is.
            what: Refusal,
        },
        /// No shaft for.
        NoShaftFor {
            /// What kind of part.
            kind: ClubKind,
        },
        /// No grip for.
        NoGripFor {
            /// What kind of part.
            kind: ClubKind,
        },
        /// Fitted unknown.
        FittedUnknown {
            /// Number of the club.
            number: String,
            /// What there is instead.
            known: Vec<String>,
        },
        /// Fitted several.
        FittedSeveral {
            /// Number of the club.
            number: String,
        },
        /// Fitted length end.
        FittedLengthEnd,
        /// Fitted cap unknown.
        FittedCapUnknown,
        /// Unequal swing weights.
        UnequalSwingWeights {
            /// Number of the club.
            number: String,
            /// First points.
            first_points: f64,
            /// Other.
            other: String,
            /// Other points.
            other_points: f64,
        },
        /// No step.
        NoStep,
        /// Inertia needs fitted.
        InertiaNeedsFitted,
        /// Fitted other kind.
        FittedOtherKind {
            /// Number of the club.
            number: String,
        },
        /// No head for inertia.
        NoHeadForInertia {
            /// Number of the club.
            number: String,
            /// Fitted.
            fitted: String,
        },
    }
}

fact::facts! {
    /// What is wrong with one phrase of a short sheet.
    pub enum WordFault: "short_word" {
        /// Two meanings.
        TwoMeanings,
        /// Named before.
        NamedBefore {
            /// Number of the club.
            number: String,
        },
        /// Said before.
        SaidBefore {
            /// Word.
            word: String,
            /// How many.
            n: usize,
        },
        /// Which figure.
        WhichFigure,
        /// Swing weight.
        SwingWeight,
        /// Length offset.
        LengthOffset,
        /// Length.
        Length,
        /// Graphics.
        Graphics,
        /// Comma.
        Comma,
        /// Not a word.
        NotAWord,
        /// Layers.
        Layers {
            /// Most that is taken.
            most: u8,
        },
        /// Tolerance.
        Tolerance,
        /// Wedge offset.
        WedgeOffset {
            /// Limit points.
            limit_points: f64,
        },
        /// Swing weight step.
        SwingWeightStep {
            /// Limit points.
            limit_points: f64,
        },
        /// Swing weight range.
        SwingWeightRange {
            /// Low points.
            low_points: f64,
            /// High points.
            high_points: f64,
        },
        /// Frequency.
        Frequency,
        /// Total mass.
        TotalMass {
            /// Low g.
            low_g: f64,
            /// High g.
            high_g: f64,
            /// Step g.
            step_g: f64,
        },
        /// Lie.
        Lie {
            /// Low deg.
            low_deg: f64,
            /// High deg.
            high_deg: f64,
        },
        /// Loft.
        Loft {
            /// Low deg.
            low_deg: f64,
            /// High deg.
            high_deg: f64,
        },
        /// No model of kind.
        NoModelOfKind {
            /// What kind of part.
            kind: ClubKind,
            /// What there is instead.
            known: Vec<KnownClubs>,
        },
        /// No such club.
        NoSuchClub {
            /// Number of the club.
            number: String,
            /// What there is instead.
            known: Vec<KnownClubs>,
        },
        /// Backwards.
        Backwards,
        /// Different kinds.
        DifferentKinds,
        /// Several.
        Several {
            /// What there is instead.
            known: Vec<KnownClubs>,
        },
        /// No fitted club.
        NoFittedClub,
        /// Steps under one swing weight.
        StepsUnderOneSwingWeight,
        /// Second swing weight.
        SecondSwingWeight {
            /// First points.
            first_points: f64,
        },
        /// Swing weight under inertia.
        SwingWeightUnderInertia,
        /// Bend lie.
        BendLie {
            /// Limit deg.
            limit_deg: f64,
        },
        /// Bend loft.
        BendLoft {
            /// Limit deg.
            limit_deg: f64,
        },
    }
}

fact::facts! {
    /// The numbers that a head model of the set has.
    pub enum KnownClubs: "known_clubs" {
        /// Model.
        Model {
            /// Its code.
            code: String,
            /// Numbers.
            numbers: Vec<String>,
        },
    }
}

impl ShortError {
    /// A phrase that could not be read or does not fit; `at_character` is where it begins, from 1.
    pub(super) fn word(word: &str, at_character: usize, what: WordFault) -> Self {
        Self::Word { word: word.to_owned(), n: at_character, what }
    }
}

/// The form of a log.
impl std::fmt::Display for ShortError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        self.told().fmt(f)
    }
}

impl std::error::Error for ShortError {}

/// The entry of a sheet that holds the short sheet.
pub(super) const WRITTEN: &str = "written";

impl From<ShortError> for TradeError {
    fn from(error: ShortError) -> Self {
        let fault = EntryFault::Unreadable { entry: WRITTEN.into(), what: error.told() };
        Self::Unreadable(Refusal::new(&fault).at(WRITTEN))
    }
}
