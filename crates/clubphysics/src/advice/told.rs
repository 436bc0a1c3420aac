//! What is told beside an advice: what could not be read, what was found and what was wanted.

fact::facts! {
    /// Why the document of a calculation cannot be read, or its result not written.
    pub enum ReadFault: "calc_read" {
        /// Correlations name “…”, which is not an input of this calculation.
        NotAnInput {
            /// What the correlation names.
            name: String,
        },
        /// There is no topic “…”.
        NoTopic {
            /// What was asked for.
            name: String,
        },
        /// The document has a field that is not known.
        UnknownField {
            /// The field as the document writes it.
            name: String,
            /// Field that holds it; none at the top of the document.
            place: Option<String>,
        },
        /// Unknown choice “…” for ….
        UnknownChoice {
            /// The choice as the document writes it.
            name: String,
            /// Field that it was given for.
            place: String,
        },
        /// Something in the document does not read.
        Other {
            /// Field that it is in.
            place: String,
            /// What the reader of the document met, in its own English.
            log: String,
        },
        /// The result cannot be written (…).
        Unwritable {
            /// What the writer of JSON met, in its own English.
            log: String,
        },
        /// The figures are so extreme that … is not a number any more.
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
        /// The two planes.
        TwoPlanes,
        /// Tone.
        Tone,
        /// The bending mode of the shaft.
        BendingMode,
        /// The stiffness along a shaft.
        StiffnessProfile,
    }
}

fact::facts! {
    /// What was found in place of what a field takes.
    pub enum Found: "found" {
        /// An empty value.
        Null,
        /// A bare `true` or `false`.
        Word {
            /// `true` or `false`.
            word: String,
        },
        /// The number ….
        Number {
            /// The digits as the document writes them.
            text: String,
        },
        /// The text “…”.
        Text {
            /// All of it: at most 40 characters.
            text: String,
        },
        /// A text too long to show whole.
        LongText {
            /// Its first 40 characters.
            text: String,
        },
        /// List.
        List,
        /// An object with named fields.
        Object,
    }
}

fact::facts! {
    /// What a field takes.
    pub enum Wanted: "wanted" {
        /// Number.
        Number,
        /// A whole number of zero or more.
        Count,
        /// True or false.
        YesNo,
        /// Text.
        Text,
        /// One of its words.
        Choice,
        /// List.
        List,
        /// An object with named fields.
        Object,
    }
}

fact::facts! {
    /// What a figure is of.
    #[derive(Copy, Eq)]
    pub enum Quantity: "quantity" {
        /// The length of a shaft.
        LengthShaft,
        /// The length of a club.
        LengthClub,
        /// The mass of a shaft.
        MassShaft,
        /// The mass of a club.
        MassClub,
        /// The mass of a part.
        MassPart,
        /// The balance point of a club.
        BalancePointClub,
        /// A place on a club.
        PlaceOnClub,
        /// The fulcrum.
        Fulcrum,
        /// The mass of a grip.
        MassGrip,
        /// The centre of a grip.
        CentreGrip,
        /// The length of a grip.
        LengthGrip,
        /// The cap of a grip.
        CapGrip,
        /// A change of length.
        ChangeLength,
        /// A metre of shaft.
        MetreShaft,
        /// The bore's distance to the ground.
        BoresDistanceToGround,
        /// The depth of a bore.
        DepthBore,
        /// The tip of a shaft.
        TipShaft,
        /// The sole's point of contact.
        SolesPointContact,
        /// The radius of a hosel.
        RadiusHosel,
        /// The radius of a sole.
        RadiusSole,
        /// The mass of a head.
        MassHead,
        /// The head on a clamped shaft.
        HeadOnClampedShaft,
        /// The speed of a head.
        SpeedHead,
        /// The radius of a swing.
        RadiusSwing,
        /// The shear strength of an adhesive.
        ShearStrengthAdhesive,
        /// The density of an adhesive.
        DensityAdhesive,
        /// The adhesive of a joint.
        AdhesiveJoint,
        /// The temperature of a workshop.
        TemperatureWorkshop,
        /// A temperature of a product's sheet.
        TemperatureProductsSheet,
        /// The frequency of a clamped shaft.
        FrequencyClampedShaft,
        /// The factor on a stiffness table.
        FactorOnStiffnessTable,
        /// The radius of gyration of a club.
        RadiusGyrationClub,
        /// The spacers of a mix.
        SpacersMix,
        /// The spare of a mix.
        SpareMix,
        /// The joints of a batch.
        JointsBatch,
    }
}
