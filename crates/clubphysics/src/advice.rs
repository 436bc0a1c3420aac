//! What to do about a refused figure, and the closed lists of what is told beside it.

use crate::slip::LooksLike;
use fact::Measure;

fact::facts! {
    /// What to do about a refused entry.
    pub enum Advice: "advice" {
        /// Shaft bends everywhere.
        ShaftBendsEverywhere,
        /// Enter measured figure.
        EnterMeasuredFigure,
        /// Enter figure without sign.
        EnterFigureWithoutSign,
        /// Standard deviation given alone.
        StandardDeviationGivenAlone,
        /// Give weighed figure geometry.
        GiveWeighedFigureGeometry,
        /// Give describe joint.
        GiveDescribeJoint,
        /// Ratio volume needs densities.
        RatioVolumeNeedsDensities,
        /// Give one point sheet.
        GiveOnePointSheet,
        /// Take two temperatures sheet.
        TakeTwoTemperaturesSheet,
        /// Warmth shortens every time.
        WarmthShortensEveryTime,
        /// Give one two points.
        GiveOneTwoPoints,
        /// Give one point sheet two.
        GiveOnePointSheetTwo,
        /// Tip does fit into.
        TipDoesFitInto,
        /// Give diameter millimetres.
        GiveDiameterMillimetres,
        /// Ask joint batch cure.
        AskJointBatchCure,
        /// Give weighed mass alone.
        GiveWeighedMassAlone,
        /// Looks like millimetres give.
        LooksLikeMillimetresGive,
        /// Core inside grip must.
        CoreInsideGripMust,
        /// Looks like millimetres give thickness.
        LooksLikeMillimetresGiveThickness,
        /// Looks like millimetres give diameter.
        LooksLikeMillimetresGiveDiameter,
        /// List place along grip.
        ListPlaceAlongGrip,
        /// Count layers again.
        CountLayersAgain,
        /// Give tape s length.
        GiveTapeSLength,
        /// Balance point lies shaft.
        BalancePointLiesShaft,
        /// Length leaves shaft head.
        LengthLeavesShaftHead,
        /// List lengths set.
        ListLengthsSet,
        /// Give parts pendulum reading.
        GivePartsPendulumReading,
        /// Part even rod has.
        PartEvenRodHas,
        /// Club must hang balance.
        ClubMustHangBalance,
        /// Let swing less give.
        LetSwingLessGive,
        /// List parts club mass.
        ListPartsClubMass,
        /// Ask length aim bend.
        AskLengthAimBend,
        /// Give loft degrees vertical.
        GiveLoftDegreesVertical,
        /// Hands must club.
        HandsMustClub,
        /// Short club cannot reach.
        ShortClubCannotReach,
        /// Give error lie lie.
        GiveErrorLieLie,
        /// Give measured angle beside.
        GiveMeasuredAngleBeside,
        /// Give wanted lie wanted.
        GiveWantedLieWanted,
        /// Maker s limit holds.
        MakerSLimitHolds,
        /// Lie angle between shaft.
        LieAngleBetweenShaft,
        /// Check wanted angles step.
        CheckWantedAnglesStep,
        /// Record swing least four.
        RecordSwingLeastFour,
        /// Give both axes same.
        GiveBothAxesSame,
        /// Silent check sensor plugged.
        SilentCheckSensorPlugged,
        /// Record longer10 s.
        RecordLonger10S,
        /// Give samples per second.
        GiveSamplesPerSecond,
        /// Clubs swing36.
        ClubsSwing36,
        /// Record higher rate100.
        RecordHigherRate100,
        /// Record higher rate look.
        RecordHigherRateLook,
        /// Give largest size sample.
        GiveLargestSizeSample,
        /// Record longer10 s more.
        RecordLonger10SMore,
        /// Count first sample.
        CountFirstSample,
        /// Recording ends.
        RecordingEnds,
        /// Start before end part.
        StartBeforeEndPart,
        /// Use longer part recording.
        UseLongerPartRecording,
        /// Swing stands out noise.
        SwingStandsOutNoise,
        /// Turn gain down record.
        TurnGainDownRecord,
        /// Correlations noise cannot found.
        CorrelationsNoiseCannotFound,
        /// Spread angles around whole.
        SpreadAnglesAroundWhole,
        /// Give kind reading was.
        GiveKindReadingWas,
        /// Read six more different.
        ReadSixMoreDifferent,
        /// Give one reading each.
        GiveOneReadingEach,
        /// Give what was held.
        GiveWhatWasHeld,
        /// Reading without error leave.
        ReadingWithoutErrorLeave,
        /// Leave out give readings.
        LeaveOutGiveReadings,
        /// Enter reading without sign.
        EnterReadingWithoutSign,
        /// About005 usual.
        About005Usual,
        /// Give least asymmetry worth.
        GiveLeastAsymmetryWorth,
        /// Give least bow worth.
        GiveLeastBowWorth,
        /// Give deflection rollers hold.
        GiveDeflectionRollersHold,
        /// Check readings slip keys.
        CheckReadingsSlipKeys,
        /// Give one two.
        GiveOneTwo,
        /// Give total mass g.
        GiveTotalMassG,
        /// Leave out list parts.
        LeaveOutListParts,
        /// Give mass g sd.
        GiveMassGSd,
        /// Leave old mass g.
        LeaveOldMassG,
        /// Check figures extreme values.
        CheckFiguresExtremeValues,
        /// Check figures slip key.
        CheckFiguresSlipKey,
        /// Add document.
        AddDocument,
        /// See example calculation.
        SeeExampleCalculation,
        /// Sort table butt end.
        SortTableButtEnd,
        /// Shaft mass line balances.
        ShaftMassLineBalances,
        /// Give density least both.
        GiveDensityLeastBoth,
        /// Give each step s.
        GiveEachStepS,
        /// Give lie wood iron.
        GiveLieWoodIron,
        /// Cuts must leave piece.
        CutsMustLeavePiece,
        /// Give mass line one.
        GiveMassLineOne,
        /// Taper tips cut butt.
        TaperTipsCutButt,
        /// Sd given alone.
        SdGivenAlone,
        /// Leave one them out.
        LeaveOneThemOut,
        /// Give finished length butt.
        GiveFinishedLengthButt,
        /// Tip would reach into.
        TipWouldReachInto,
        /// Table must reach butt.
        TableMustReachButt,
        /// Raw shaft too short.
        RawShaftTooShort,
        /// Start table butt end.
        StartTableButtEnd,
        /// Share between01.
        ShareBetween01,
        /// Give number readings less.
        GiveNumberReadingsLess,
        /// Name two different inputs.
        NameTwoDifferentInputs,
        /// Leave out standard deviation.
        LeaveOutStandardDeviation,
        /// Leave correlations out use.
        LeaveCorrelationsOutUse,
        /// Check their signs what.
        CheckTheirSignsWhat,
        /// Correlation lies between1.
        CorrelationLiesBetween1,
        /// Give stiffness n m.
        GiveStiffnessNM,
        /// Give mass shaft head.
        GiveMassShaftHead,
        /// Check length clamp trims.
        CheckLengthClampTrims,
        /// Add rows up both.
        AddRowsUpBoth,
        /// Shaft used up shorten.
        ShaftUsedUpShorten,
        /// About30 good figure.
        About30GoodFigure,
        /// Give stiffness both ends.
        GiveStiffnessBothEnds,
        /// Thin table out one.
        ThinTableOutOne,
        /// Ask others second document.
        AskOthersSecondDocument,
        /// Give length raw shaft.
        GiveLengthRawShaft,
        /// Give force bends shaft.
        GiveForceBendsShaft,
        /// Give mass head zero.
        GiveMassHeadZero,
        /// Give zero body small.
        GiveZeroBodySmall,
        /// Give length butt inside.
        GiveLengthButtInside,
        /// Cut takes away give.
        CutTakesAwayGive,
        /// Step takes two rows.
        StepTakesTwoRows,
        /// Give rows two places.
        GiveRowsTwoPlaces,
        /// Give mass metre shaft.
        GiveMassMetreShaft,
        /// Sort table position smallest.
        SortTablePositionSmallest,
        /// Give standard deviation zero.
        GiveStandardDeviationZero,
        /// Meant.
        Meant {
            /// What it looks like.
            meant: LooksLike,
        },
        /// Range.
        Range {
            /// Out of how many.
            of: Quantity,
            /// Least.
            low: Measure,
            /// Greatest.
            high: Measure,
        },
        /// Inputs.
        Inputs {
            /// What there is instead.
            known: Vec<String>,
        },
        /// Topics.
        Topics {
            /// Near.
            near: Option<String>,
            /// What there is instead.
            known: Vec<String>,
        },
        /// Known.
        Known {
            /// Near.
            near: Option<String>,
            /// What there is instead.
            known: Vec<String>,
        },
        /// One swing.
        OneSwing {
            /// Shortest s.
            shortest_s: f64,
            /// Longest s.
            longest_s: f64,
        },
        /// Check table.
        CheckTable {
            /// Table cpm.
            table_cpm: f64,
            /// Reading cpm.
            reading_cpm: f64,
        },
        /// Read without head.
        ReadWithoutHead {
            /// Table cpm.
            table_cpm: f64,
            /// Reading cpm.
            reading_cpm: f64,
        },
        /// Half swing.
        HalfSwing {
            /// One s.
            one_s: f64,
        },
        /// Several swings.
        SeveralSwings {
            /// How many.
            n: u32,
            /// One s.
            one_s: f64,
        },
        /// Too short.
        TooShort {
            /// Has.
            has: Measure,
            /// Needed.
            needed: Measure,
        },
        /// Part too short.
        ShortAfterPluck {
            /// Has.
            has: Measure,
            /// Needed.
            needed: Measure,
        },
    }
}

fact::facts! {
    /// Two inputs that contradict each other or do not go together.
    pub enum Clash: "clash" {
        /// Same input.
        SameInput {
            /// Its name.
            name: String,
        },
        /// Deviation changes.
        DeviationChanges {
            /// Its name.
            name: String,
        },
        /// Second order correlated.
        SecondOrderCorrelated,
        /// Correlations impossible.
        CorrelationsImpossible,
        /// Both given.
        BothGiven {
            /// First.
            first: String,
            /// Second.
            second: String,
        },
        /// Both determine.
        BothDetermine {
            /// First.
            first: String,
            /// Second.
            second: String,
        },
        /// Taper trim.
        TaperTrim {
            /// Trim mm.
            trim_mm: f64,
        },
        /// Points.
        Points {
            /// Which field of the document.
            field: String,
            /// How many.
            n: usize,
        },
        /// Same temperature.
        SameTemperature {
            /// Which field of the document.
            field: String,
            /// At c.
            at_c: f64,
        },
        /// No stiffness.
        NoStiffness {
            /// From mm.
            from_mm: f64,
            /// To mm.
            to_mm: f64,
        },
        /// No mass.
        NoMass,
        /// No free shaft.
        NoFreeShaft {
            /// Free mm.
            free_mm: f64,
        },
        /// Not covered.
        NotCovered {
            /// From mm.
            from_mm: f64,
            /// To mm.
            to_mm: f64,
            /// Free from mm.
            free_from_mm: f64,
            /// Free to mm.
            free_to_mm: f64,
        },
        /// Three rows.
        ThreeRows {
            /// Place mm.
            place_mm: f64,
        },
        /// One place.
        OnePlace {
            /// Place mm.
            place_mm: f64,
        },
        /// Samples differ.
        SamplesDiffer {
            /// First.
            first: usize,
            /// Second.
            second: usize,
        },
        /// No tone.
        NoTone,
        /// Angles too close.
        AnglesTooClose,
        /// One kind.
        OneKind,
        /// Readings differ.
        ReadingsDiffer {
            /// Which field of the document.
            field: String,
            /// How many.
            n: usize,
            /// Angles.
            angles: usize,
        },
        /// Other kind.
        OtherKind {
            /// Which field of the document.
            field: String,
        },
        /// No stiff direction.
        NoStiffDirection,
        /// Club twice.
        ClubTwice,
        /// Without parts.
        WithoutParts {
            /// Which field of the document.
            field: String,
        },
        /// Deviations with parts.
        DeviationsWithParts,
        /// Named grip.
        NamedGrip {
            /// Named g.
            named_g: f64,
            /// Off g.
            off_g: f64,
        },
    }
}

fact::facts! {
    /// Why the document of a calculation cannot be read, or its result not written.
    pub enum ReadFault: "calc_read" {
        /// Not an input.
        NotAnInput {
            /// Its name.
            name: String,
        },
        /// No topic.
        NoTopic {
            /// Its name.
            name: String,
        },
        /// Unknown field.
        UnknownField {
            /// Its name.
            name: String,
            /// Where it is.
            place: Option<String>,
        },
        /// Unknown choice.
        UnknownChoice {
            /// Its name.
            name: String,
            /// Where it is.
            place: String,
        },
        /// Other.
        Other {
            /// Where it is.
            place: String,
            /// Log.
            log: String,
        },
        /// Not a word.
        NotAWord {
            /// Its name.
            name: String,
        },
        /// Unwritable.
        Unwritable {
            /// Log.
            log: String,
        },
        /// Extreme.
        Extreme {
            /// Where it is.
            place: String,
        },
    }
}

fact::facts! {
    /// A computation that goes in steps.
    #[derive(Copy, Eq)]
    pub enum Settling: "settling" {
        /// Two planes.
        TwoPlanes,
        /// Tone.
        Tone,
        /// Bending mode.
        BendingMode,
    }
}

fact::facts! {
    /// What was found in place of what a field takes.
    pub enum Found: "found" {
        /// Null.
        Null,
        /// Word.
        Word {
            /// Word.
            word: String,
        },
        /// Number.
        Number {
            /// Text.
            text: String,
        },
        /// Text.
        Text {
            /// Text.
            text: String,
        },
        /// Long text.
        LongText {
            /// Text.
            text: String,
        },
        /// List.
        List,
        /// Object.
        Object,
    }
}

fact::facts! {
    /// What a field takes.
    pub enum Wanted: "wanted" {
        /// Number.
        Number,
        /// Count.
        Count,
        /// Yes no.
        YesNo,
        /// Text.
        Text,
        /// Choice.
        Choice,
        /// List.
        List,
        /// Object.
        Object,
    }
}

fact::facts! {
    /// What a figure is of.
    #[derive(Copy, Eq)]
    pub enum Quantity: "quantity" {
        /// Length shaft.
        LengthShaft,
        /// Length club.
        LengthClub,
        /// Mass shaft.
        MassShaft,
        /// Mass club.
        MassClub,
        /// Mass part.
        MassPart,
        /// Balance point club.
        BalancePointClub,
        /// Place on club.
        PlaceOnClub,
        /// Fulcrum.
        Fulcrum,
        /// Mass grip.
        MassGrip,
        /// Centre grip.
        CentreGrip,
        /// Length grip.
        LengthGrip,
        /// Cap grip.
        CapGrip,
        /// Change length.
        ChangeLength,
        /// Metre shaft.
        MetreShaft,
        /// Bores distance to ground.
        BoresDistanceToGround,
        /// Depth bore.
        DepthBore,
        /// Tip shaft.
        TipShaft,
        /// Soles point contact.
        SolesPointContact,
        /// Radius hosel.
        RadiusHosel,
        /// Radius sole.
        RadiusSole,
        /// Mass head.
        MassHead,
        /// Head on clamped shaft.
        HeadOnClampedShaft,
        /// Speed head.
        SpeedHead,
        /// Radius swing.
        RadiusSwing,
        /// Shear strength adhesive.
        ShearStrengthAdhesive,
        /// Density adhesive.
        DensityAdhesive,
        /// Adhesive joint.
        AdhesiveJoint,
        /// Temperature workshop.
        TemperatureWorkshop,
        /// Temperature products sheet.
        TemperatureProductsSheet,
        /// Frequency clamped shaft.
        FrequencyClampedShaft,
        /// Factor on stiffness table.
        FactorOnStiffnessTable,
        /// Radius gyration club.
        RadiusGyrationClub,
        /// Spacers mix.
        SpacersMix,
        /// Spare mix.
        SpareMix,
        /// Joints batch.
        JointsBatch,
    }
}
