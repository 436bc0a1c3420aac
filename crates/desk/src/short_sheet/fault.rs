//! Why a short sheet is refused.

use fact::{Fact, Refusal};
use trade::error::EntryFault;
use trade::error::TradeError;
use trade::kind::ClubKind;

fact::facts! {
    /// Why a short sheet is refused.
    pub enum ShortError: "short_sheet" {
        /// One phrase of the sheet cannot be read or does not fit the others.
        Word {
            /// The phrase as it was written.
            word: String,
            /// Where the phrase begins: its first character, counted from 1.
            n: usize,
            /// What is wrong with the phrase.
            what: WordFault,
        },
        /// The sheet does not say which clubs of ….
        NoClubs {
            /// What there is instead.
            known: Vec<KnownClubs>,
        },
        /// This text has … characters, and a short sheet has at most ….
        TooLong {
            /// How many.
            n: usize,
            /// Most that is taken.
            most: usize,
        },
        /// The set has no head model.
        NoHeadModel,
        /// A head model is not known.
        Models {
            /// Why the model was not found, and what to do.
            what: Refusal,
        },
        /// The grip's cap is needed to turn one length into the other, and its model is not known.
        CapNeeded {
            /// Why the model was not found, and what to do.
            what: Refusal,
        },
        /// Equal inertia needs all models of the set, and one is lacking or does not fit.
        InertiaNeedsModels {
            /// Why the club could not be worked out, and what to do.
            what: Refusal,
        },
        /// The set has no shaft model for a ….
        NoShaftFor {
            /// What kind of part.
            kind: ClubKind,
        },
        /// The set has no grip model for a ….
        NoGripFor {
            /// What kind of part.
            kind: ClubKind,
        },
        /// The fitted club is a …, which no head model of the set has.
        FittedUnknown {
            /// Number of the club.
            number: String,
            /// What there is instead.
            known: Vec<String>,
        },
        /// The fitted club is a …, and more than one club of the set has that number.
        FittedSeveral {
            /// Number of the club.
            number: String,
        },
        /// The length of the fitted club does not say what it is measured to.
        FittedLengthEnd,
        /// The fitted club and the chart are measured to different ends, and the fitted club's cap is not known.
        FittedCapUnknown,
        /// The rule of the set is one swing weight, and two clubs would get different ones.
        UnequalSwingWeights {
            /// Number of the club.
            number: String,
            /// Swing weight that the club named by `number` would get, points since A0.
            first_points: f64,
            /// Number of the other club.
            other: String,
            /// Swing weight that the other club would get, points since A0.
            other_points: f64,
        },
        /// The rule of the set is a stepped swing weight, but no step is written.
        NoStep,
        /// Equal inertia needs the fitted club with its swing weight.
        InertiaNeedsFitted,
        /// The fitted … is of another kind than every club of the set.
        FittedOtherKind {
            /// Number of the club.
            number: String,
        },
        /// No head gives the … the inertia of the fitted ….
        NoHeadForInertia {
            /// Number of the club.
            number: String,
            /// Number of the fitted club.
            fitted: String,
        },
    }
}

fact::facts! {
    /// What is wrong with one phrase of a short sheet.
    pub enum WordFault: "short_word" {
        /// It can mean one figure, or a club and a figure; put a comma after the club, or a + before the figure.
        TwoMeanings,
        /// The … is named before.
        NamedBefore {
            /// Number of the club.
            number: String,
        },
        /// “…” at character … already gives this for the same clubs.
        SaidBefore {
            /// The earlier phrase as it was written.
            word: String,
            /// Where the earlier phrase begins: its first character, counted from 1.
            n: usize,
        },
        /// It does not say whether it is length, loft or lie.
        WhichFigure,
        /// A swing weight has a letter from A to G and points from 0 to 9.9.
        SwingWeight,
        /// No club is so much longer or shorter than its chart.
        LengthOffset,
        /// A length needs its unit, a difference its sign, and both must be possible for a club.
        Length,
        /// It does not say whether grip or shaft is meant.
        Graphics,
        /// A comma between two digits is a decimal comma; put a space after a comma that separates.
        Comma,
        /// It is not a word of the short sheet.
        NotAWord,
        /// A grip goes over … layers at most.
        Layers {
            /// Most that is taken.
            most: u8,
        },
        /// A tolerance must be more than 0 and no more than 30.
        Tolerance,
        /// Wedges may have … more or less than their set at most.
        WedgeOffset {
            /// Most points that wedges may lie above or below their set.
            limit_points: f64,
        },
        /// A set may step by … a club at most.
        SwingWeightStep {
            /// Most points from one club to the next.
            limit_points: f64,
        },
        /// A swing weight is between … and ….
        SwingWeightRange {
            /// Least swing weight that is taken, points since A0.
            low_points: f64,
            /// Greatest swing weight that is taken, points since A0.
            high_points: f64,
        },
        /// A club's frequency is 50 to 600 cpm, and a set steps by 30 cpm a club at most.
        Frequency,
        /// No club is so light or heavy, or no set steps by so much.
        TotalMass {
            /// Least mass of a whole club that is taken.
            low_g: f64,
            /// Greatest mass of a whole club that is taken.
            high_g: f64,
            /// Most that one club may weigh more or less than the next.
            step_g: f64,
        },
        /// A lie is between … and ….
        Lie {
            /// Flattest lie that is taken.
            low_deg: f64,
            /// Most upright lie that is taken.
            high_deg: f64,
        },
        /// A loft is between … and ….
        Loft {
            /// Least loft that is taken.
            low_deg: f64,
            /// Greatest loft that is taken.
            high_deg: f64,
        },
        /// The set has no … model, but ….
        NoModelOfKind {
            /// What kind of part.
            kind: ClubKind,
            /// What there is instead.
            known: Vec<KnownClubs>,
        },
        /// There is no … in ….
        NoSuchClub {
            /// Number of the club.
            number: String,
            /// What there is instead.
            known: Vec<KnownClubs>,
        },
        /// The range runs backwards.
        Backwards,
        /// Its ends are clubs of different kinds.
        DifferentKinds,
        /// More than one club of the set has this number: it is in ….
        Several {
            /// What there is instead.
            known: Vec<KnownClubs>,
        },
        /// There is no fitted club whose swing weight it could start from.
        NoFittedClub,
        /// The rule of the set is one swing weight, and this steps; choose the stepped rule or write one swing weight.
        StepsUnderOneSwingWeight,
        /// The rule of the set is one swing weight, and … is written for other clubs.
        SecondSwingWeight {
            /// Swing weight that is written first, points since A0.
            first_points: f64,
        },
        /// Swing weight under inertia.
        SwingWeightUnderInertia,
        /// A head bends … at most.
        BendLie {
            /// Most that a lie may be changed from the chart.
            limit_deg: f64,
        },
        /// A head bends … at most.
        BendLoft {
            /// Most that a loft may be changed from the chart.
            limit_deg: f64,
        },
    }
}

fact::facts! {
    /// The numbers that a head model of the set has.
    pub enum KnownClubs: "known_clubs" {
        /// A head model with its numbers.
        Model {
            /// Code of the head model.
            code: String,
            /// Numbers of its heads, as the model lists them.
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
