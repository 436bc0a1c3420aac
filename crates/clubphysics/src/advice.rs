//! What to do about a refused figure.

mod clash;
mod told;

pub use clash::Clash;
pub use told::{Found, Quantity, ReadFault, Settling, Wanted};

use crate::slip::LooksLike;
use fact::Measure;

fact::facts! {
    /// What to do about a refused entry.
    pub enum Advice: "advice" {
        /// A shaft bends everywhere a little; only the very tip of a table may be zero.
        ShaftBendsEverywhere,
        /// Enter the measured figure.
        EnterMeasuredFigure,
        /// Enter the figure without a sign, or leave it out.
        EnterFigureWithoutSign,
        /// Its standard deviation is given alone.
        DeviationApart,
        /// Give the weighed figure or the geometry, not both.
        WeighedOrGeometry,
        /// Give it, or describe the joint.
        GiveOrDescribeJoint,
        /// A ratio by volume needs the densities of both parts to be weighed out.
        RatioVolumeNeedsDensities,
        /// Give one point of the sheet, or the two between which the shop's temperature lies.
        OnePointOrTwoAround,
        /// Take two temperatures from the sheet, or give one point alone.
        TwoTemperatures,
        /// Warmth shortens every time; the two points are probably exchanged.
        WarmthShortens,
        /// Give one or two points of the sheet for pot_life, handling or full_cure.
        PointsOfATime,
        /// Give one point of the sheet, or two.
        OnePointOrTwo,
        /// The tip does not fit into the bore; ream it, or measure both again.
        TipDoesNotFit,
        /// Give the diameter in millimetres.
        DiameterInMm,
        /// Ask for joint, batch, cure or pull.
        AskOfGlue,
        /// Give the weighed mass alone, it is the better figure.
        WeighedMassAlone,
        /// This looks like millimetres; give the place in inches below the cap.
        PlaceInInches,
        /// The core is inside the grip and must be narrower.
        CoreNarrowerThanGrip,
        /// This looks like millimetres; give the thickness in inches.
        ThicknessInInches,
        /// This looks like millimetres; give the diameter in inches.
        DiameterInInches,
        /// List a place along the grip, or leave the list out.
        ListAPlaceOnGrip,
        /// Count the layers again.
        CountLayersAgain,
        /// Give the tape's length in inches.
        TapeLengthInInches,
        /// The balance point lies on the shaft; measure it from the butt end.
        BalancePointOnShaft,
        /// This length leaves no shaft, or the head within the fulcrum.
        LengthLeavesNoShaft,
        /// List the lengths of the set.
        ListLengthsOfSet,
        /// Give parts, a pendulum reading, or a series of lengths.
        PartsPendulumOrSeries,
        /// A part is an even rod or has its own inertia, give one.
        RodOrOwnInertia,
        /// The club must hang with its balance point below the pivot; measure both from the butt end.
        HangBelowPivot,
        /// Let it swing less, and give the greatest angle from the vertical.
        SwingLess,
        /// List the parts of the club with mass and place.
        ListPartsOfClub,
        /// Ask for length, aim or bend.
        AskOfLie,
        /// Give the loft in degrees from the vertical.
        LoftFromVertical,
        /// The hands must be on the club.
        HandsOnClub,
        /// So short a club cannot reach the ground with the hands at this height.
        ClubCannotReach,
        /// Give the error of the lie, not the lie itself.
        ErrorNotLie,
        /// Give the measured angle beside the wanted one.
        MeasuredBesideWanted,
        /// Give the wanted lie, the wanted loft, or both.
        WantedLieOrLoft,
        /// The maker's limit holds; take another head, or set allow_beyond_limit at the risk of a crack.
        MakersLimitHolds,
        /// The lie is the angle between shaft and ground.
        LieIsToTheGround,
        /// Check the wanted angles and step_deg.
        CheckAnglesAndStep,
        /// Record the swing for at least four periods, without a stop.
        RecordFourPeriods,
        /// Give both axes at the same instants.
        AxesAtSameInstants,
        /// It is silent: check that the sensor is plugged in and the right input was recorded.
        CheckSensor,
        /// Record for longer: 10 s or more is good.
        RecordLonger,
        /// Give the samples per second.
        SamplesASecond,
        /// Clubs swing at 3 to 6 Hz, bare shafts at up to 20 Hz.
        UsualFrequencies,
        /// Record at a higher rate, 100 samples a second or more.
        RecordFaster,
        /// Record at a higher rate, or look for lower frequencies.
        RecordFasterOrLookLower,
        /// Give the largest size a sample can have.
        LargestSample,
        /// Record for longer, 10 s or more.
        RecordTenSeconds,
        /// Count from the first sample.
        CountFirstSample,
        /// The recording ends there.
        RecordingEndsThere,
        /// Start before the end of the part to use.
        StartBeforeEnd,
        /// Use a longer part of the recording.
        UseLongerPart,
        /// No swing stands out of the noise: record a plucked club, closer or with more gain.
        NoSwingInNoise,
        /// Turn the gain down and record again, or use a later part with start_s.
        TurnGainDown,
        /// With correlations the noise cannot be found from the readings: give the standard deviation of one.
        GiveNoiseWithCorrelations,
        /// Spread the angles around the whole turn, 30 or 60 degrees apart.
        SpreadAngles,
        /// Give the kind of reading that was taken, and leave the others out.
        OneKindOfReading,
        /// Read at six or more different directions around the shaft; twelve, 30 degrees apart, are better.
        ReadSixDirections,
        /// Give one reading for each angle.
        OneReadingAnAngle,
        /// Give what was held fixed while the shaft was turned.
        WhatWasHeld,
        /// No reading is without error: leave it out to have it found from the readings.
        NoReadingWithoutError,
        /// Leave it out, or give the readings it belongs to.
        LeaveOutOrGiveReadings,
        /// Enter the reading without a sign.
        EnterReadingWithoutSign,
        /// 0.05 is usual.
        AboutOneInTwenty,
        /// Give the least asymmetry worth turning a shaft for.
        LeastAsymmetry,
        /// Give the least bow worth a remark.
        LeastBow,
        /// Give the deflection that the rollers hold.
        DeflectionOfRollers,
        /// Check the readings for a slip of the keys.
        CheckReadings,
        /// Give one of the two.
        OneOfTheTwo,
        /// Give total_mass_g and balance_point_mm, or a list of parts.
        TotalMassOrParts,
        /// Leave it out, or list the parts.
        LeaveOutOrListParts,
        /// Give mass_g_sd and position_mm_sd of the parts.
        DeviationsOfParts,
        /// Leave old_mass_g out: the grip that is named comes off.
        LeaveOldMassOut,
        /// Check the figures for extreme values.
        CheckExtremeFigures,
        /// Check the figures for a slip of the key or of the unit.
        CheckFigures,
        /// Add it to the document.
        AddDocument,
        /// See the example of this calculation.
        SeeExample,
        /// Sort the table from the butt end to the tip end, each place once.
        SortFromButt,
        /// No shaft of this mass line balances there; measure again, from the butt end.
        NoShaftBalancesThere,
        /// Give the density at least at both ends.
        DensityAtBothEnds,
        /// Give each step's length and mass.
        EachStepWhole,
        /// Give the lie of a wood or an iron; a putter is measured along its axis.
        LieOfWoodOrIron,
        /// The cuts must leave a piece of the shaft.
        CutsLeaveAPiece,
        /// Give the mass line one way.
        MassLineOneWay,
        /// Taper tips are cut at the butt only; set allow_taper_tip_trim to cut it all the same.
        TaperTipAtButt,
        /// Its sd is given alone.
        SdApart,
        /// Leave one of them out.
        LeaveOneOut,
        /// Give the finished length, or butt_trim_mm to learn which length results.
        LengthOrButtTrim,
        /// The tip would not reach into the bore.
        TipOutsideBore,
        /// The table must reach from the butt end to the tip end of this shaft.
        TableToBothEnds,
        /// The raw shaft is too short for this finished length; take a longer blank or trim less at the tip.
        RawShaftTooShort,
        /// Start the table at the butt end, at 0.
        StartTableAtButt,
        /// A share between 0 and 1, such as 0.95.
        ShareFromZeroToOne,
        /// Give the number of readings less the number of figures taken from them.
        DegreesOfFreedom,
        /// Name two different inputs.
        TwoDifferentInputs,
        /// Leave out the standard deviation of a mass or inertia that is zero.
        NoDeviationOfZero,
        /// Leave the correlations out, or use the first order.
        CorrelationsOrFirstOrder,
        /// Check their signs: what goes with a third thing goes together.
        CheckSigns,
        /// A correlation lies between -1 and 1.
        CorrelationRange,
        /// Give the stiffness there in N·m², above zero; a steel iron shaft has 20 to 30 near its tip.
        StiffnessAboveZero,
        /// Give the mass of the shaft or of the head.
        MassOfShaftOrHead,
        /// Check length, clamp and trims and their unit, mm.
        CheckClampAndTrims,
        /// Add rows up to both ends of the free part, or check which end the positions are measured from.
        RowsToBothEnds,
        /// The shaft is used up: shorten the cuts or check the length and its unit, mm.
        ShaftUsedUp,
        /// 30 is a good figure.
        AboutThirty,
        /// Give the stiffness at both ends of the shaft.
        StiffnessAtBothEnds,
        /// Thin the table out: one row a centimetre is plenty.
        ThinTableOut,
        /// Ask for the others in a second document.
        AskInSecondDocument,
        /// Give the length of the raw shaft.
        LengthOfRawShaft,
        /// Give the force that bends the shaft; 1 kg hung is 9.80665 N.
        ForceThatBends,
        /// Give the mass of the head, or zero for a bare shaft.
        MassOfHeadOrZero,
        /// Give zero for a body that is small.
        ZeroForSmallBody,
        /// Give the length of butt inside the clamp.
        LengthInClamp,
        /// A cut takes away; give zero for none.
        CutOrZero,
        /// A step takes two rows, one for each side; remove the third.
        TwoRowsAStep,
        /// Give rows at two places at least.
        RowsAtTwoPlaces,
        /// Give the mass of a metre of shaft, zero or more.
        MassOfAMetre,
        /// Sort the table by position, smallest first.
        SortByPosition,
        /// Give a standard deviation of zero or more, or leave it out.
        DeviationZeroOrMore,
        /// What the figure was probably meant to be.
        Meant {
            /// What it looks like.
            meant: LooksLike,
        },
        /// The range that is accepted.
        Range {
            /// Which figure has this range, for example the length of a club.
            of: Quantity,
            /// Least that is accepted.
            low: Measure,
            /// Greatest that is accepted.
            high: Measure,
        },
        /// The inputs that a correlation may name.
        Inputs {
            /// What there is instead.
            known: Vec<String>,
        },
        /// The topics that can be asked for.
        Topics {
            /// The topic spelled most like the one that was asked for; none where none is close.
            near: Option<String>,
            /// What there is instead.
            known: Vec<String>,
        },
        /// The fields or choices that are known at this place.
        Known {
            /// The known one spelled most like what was given; none where none is close.
            near: Option<String>,
            /// What there is instead.
            known: Vec<String>,
        },
        /// How long one swing may take; time ten swings and divide by ten.
        OneSwing {
            /// Least time that one swing there and back takes, seconds.
            shortest_s: f64,
            /// Greatest time that one swing there and back takes, seconds.
            longest_s: f64,
        },
        /// The stiffness table does not give the reading; check clamp, head, unit and shaft.
        CheckTable {
            /// Frequency that the stiffness table gives, cycles per minute.
            table_cpm: f64,
            /// Frequency that was read, cycles per minute.
            reading_cpm: f64,
        },
        /// The reading is so high that the shaft was probably read without its head.
        ReadWithoutHead {
            /// Frequency that the stiffness table gives with the head on, cycles per minute.
            table_cpm: f64,
            /// Frequency that was read, cycles per minute.
            reading_cpm: f64,
        },
        /// This looks like half a swing; one swing, there and back, is then … s.
        HalfSwing {
            /// Time of one swing there and back if that is so, seconds.
            one_s: f64,
        },
        /// This looks like the time of several swings.
        SeveralSwings {
            /// How many swings: 2, 5, 10 or 20.
            n: u32,
            /// Time of one swing there and back if that is so, seconds.
            one_s: f64,
        },
        /// The recording is too short, … where … are needed; record for 10 s or more.
        TooShort {
            /// How long the part of the recording to be used lasts.
            has: Measure,
            /// How long it must last at least.
            needed: Measure,
        },
        /// The recording is too short after the pluck.
        ShortAfterPluck {
            /// How long the recording lasts after the pluck.
            has: Measure,
            /// How long it must last at least.
            needed: Measure,
        },
    }
}
