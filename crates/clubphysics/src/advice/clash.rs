//! Figures that do not go together.

fact::facts! {
    /// Two inputs that contradict each other or do not go together.
    pub enum Clash: "clash" {
        /// An input cannot be correlated with itself.
        SameInput {
            /// Its name.
            name: String,
        },
        /// The standard deviation of … changes what there is to calculate.
        DeviationChanges {
            /// Its name.
            name: String,
        },
        /// Second-order terms are asked for with correlated inputs.
        SecondOrderCorrelated,
        /// The stated correlations cannot all hold at once.
        CorrelationsImpossible,
        /// … and … are both given.
        BothGiven {
            /// First.
            first: String,
            /// Second.
            second: String,
        },
        /// … and … are both given, and each determines the other.
        BothDetermine {
            /// First.
            first: String,
            /// Second.
            second: String,
        },
        /// `tip_trim_mm` is … on a taper tip.
        TaperTrim {
            /// Trim mm.
            trim_mm: f64,
        },
        /// … has … points.
        Points {
            /// Which field of the document.
            field: String,
            /// How many.
            n: usize,
        },
        /// Both points of … are at … °C.
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
        /// Neither the shaft nor the tip body has mass.
        NoMass,
        /// Clamp and trims leave … of free shaft.
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
        /// `stiffness_line` has three rows at ….
        ThreeRows {
            /// Place mm.
            place_mm: f64,
        },
        /// `stiffness_line` has all its rows at ….
        OnePlace {
            /// Place mm.
            place_mm: f64,
        },
        /// `axis_1` has … samples, but `axis_2` has ….
        SamplesDiffer {
            /// First.
            first: usize,
            /// Second.
            second: usize,
        },
        /// The samples do not determine a tone.
        NoTone,
        /// `angles_deg` are so close together that a bow cannot be told from an asymmetry.
        AnglesTooClose,
        /// Exactly one of `forces_n`, `deflections_mm` and `frequencies_cpm` is needed.
        OneKind,
        /// … has … entries, but `angles_deg` has ….
        ReadingsDiffer {
            /// Which field of the document.
            field: String,
            /// How many.
            n: usize,
            /// Angles.
            angles: usize,
        },
        /// … does not go with the kind of reading given.
        OtherKind {
            /// Which field of the document.
            field: String,
        },
        /// The readings change so much around the shaft that one direction would have no stiffness.
        NoStiffDirection,
        /// The club is given twice, by parts and by `total_mass_g` or `balance_point_mm`.
        ClubTwice,
        /// … is given without parts.
        WithoutParts {
            /// Which field of the document.
            field: String,
        },
        /// `total_mass_g_sd` or `balance_point_mm_sd` is given with parts.
        DeviationsWithParts,
        /// The part named grip weighs …, but `what_if`.grip takes off ….
        NamedGrip {
            /// Named g.
            named_g: f64,
            /// Off g.
            off_g: f64,
        },
    }
}
