//! Figures that do not go together.

fact::facts! {
    /// Two inputs that contradict each other or do not go together.
    pub enum Clash: "clash" {
        /// An input cannot be correlated with itself.
        SameInput {
            /// The correlation as an error names it: `correlation of mass_g and mass_g`.
            name: String,
        },
        /// The standard deviation of … changes what there is to calculate.
        DeviationChanges {
            /// Field of the input whose standard deviation it is.
            name: String,
        },
        /// Second-order terms are asked for with correlated inputs.
        SecondOrderCorrelated,
        /// The stated correlations cannot all hold at once.
        CorrelationsImpossible,
        /// … and … are both given.
        BothGiven {
            /// Field that is given: one of the two.
            first: String,
            /// Field that is given: the other.
            second: String,
        },
        /// … and … are both given, and each determines the other.
        BothDetermine {
            /// Field that is given: one of the two.
            first: String,
            /// Field that is given: the other.
            second: String,
        },
        /// `tip_trim_mm` is … on a taper tip.
        TaperTrim {
            /// What is to be cut off the tip, millimetres.
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
            /// Temperature of the colder one, degrees Celsius.
            at_c: f64,
        },
        /// `stiffness_line` gives a stretch of the shaft no stiffness.
        NoStiffness {
            /// Where that stretch begins, millimetres from the butt end.
            from_mm: f64,
            /// Where it ends, millimetres from the butt end.
            to_mm: f64,
        },
        /// Neither the shaft nor the tip body has mass.
        NoMass,
        /// Clamp and trims leave … of free shaft.
        NoFreeShaft {
            /// Shaft left between the clamp and the cut tip, millimetres; under 1, or below 0 where they overlap.
            free_mm: f64,
        },
        /// `stiffness_line` does not cover the whole of the free shaft.
        NotCovered {
            /// First place of the table, millimetres from the butt end.
            from_mm: f64,
            /// Last place of the table, millimetres from the butt end.
            to_mm: f64,
            /// Where the clamp ends, millimetres from the butt end.
            free_from_mm: f64,
            /// Where the shaft ends at its cut tip, millimetres from the butt end.
            free_to_mm: f64,
        },
        /// `stiffness_line` has three rows at ….
        ThreeRows {
            /// The place that all three have, millimetres from the end that the table is measured from.
            place_mm: f64,
        },
        /// `stiffness_line` has all its rows at ….
        OnePlace {
            /// The place that all have, millimetres from the end that the table is measured from.
            place_mm: f64,
        },
        /// `axis_1` has … samples, but `axis_2` has ….
        SamplesDiffer {
            /// Samples of `axis_1`.
            first: usize,
            /// Samples of `axis_2`.
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
            /// Entries of that field.
            n: usize,
            /// Entries of `angles_deg`.
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
            /// What the part weighs in the list of parts, grams.
            named_g: f64,
            /// What `what_if.grip.old_mass_g` takes off, grams.
            off_g: f64,
        },
    }
}
