//! What to think about before the glue is mixed, and what its figures leave out.

fact::facts! {
    /// A time that the sheet of an adhesive states.
    pub enum CureTime: "cure_time" {
        /// How long a cup can be worked.
        PotLife,
        /// Strong enough to handle.
        Handling,
        /// Strong enough to bend and to swing.
        FullCure,
    }
}

fact::facts! {
    /// What to think about before the glue is mixed.
    pub enum GlueRemark: "glue_remark" {
        /// The gap is thinner than a strong bond wants.
        GapThin {
            /// The gap on one side of the tip, millimetres.
            gap_mm: f64,
            /// The least gap at which bonds are strongest, millimetres.
            low_mm: f64,
            /// The greatest, millimetres.
            high_mm: f64,
        },
        /// The gap is wide.
        GapWide {
            /// The gap on one side of the tip, millimetres.
            gap_mm: f64,
        },
        /// The joints need less than a scale weighs out well, so more is mixed.
        LeastMixed {
            /// What the joints need with the spare, grams.
            needed_g: f64,
            /// What is mixed, grams.
            least_g: f64,
            /// What the last digit of the scale is worth, grams.
            scale_g: f64,
        },
        /// The shop is colder than the temperatures at which the sheet states a pot life.
        PotLifeColder {
            /// Temperature of the shop, degrees Celsius.
            room_c: f64,
            /// The coldest temperature of the sheet, degrees Celsius.
            sheet_c: f64,
        },
        /// The shop is colder than the temperatures at which the sheet states a time of the cure.
        CureColder {
            /// Which time.
            time: CureTime,
            /// Temperature of the shop, degrees Celsius.
            room_c: f64,
            /// The coldest temperature of the sheet, degrees Celsius.
            sheet_c: f64,
        },
        /// The shop is warmer than the temperatures of the sheet.
        Warmer {
            /// Which time.
            time: CureTime,
            /// Temperature of the shop, degrees Celsius.
            room_c: f64,
            /// The warmest temperature of the sheet, degrees Celsius.
            sheet_c: f64,
        },
        /// One cup holds more than the pot life is stated for.
        CupLarge {
            /// What is in the cup, grams.
            mix_g: f64,
            /// What the pot life is stated for, grams.
            stated_g: f64,
        },
        /// One cup goes off before all joints are glued.
        SeveralCups {
            /// Joints to glue.
            joints: u32,
            /// What gluing them takes, minutes.
            work_min: f64,
            /// How long one cup for all of them can be worked, minutes.
            good_min: f64,
            /// Cups to mix, one after the other.
            cups: u32,
            /// Joints to glue from one cup.
            joints_a_cup: u32,
            /// Resin in each cup, grams.
            resin_g: f64,
            /// Hardener in each cup, grams.
            hardener_g: f64,
            /// Spacers in each cup, grams.
            spacers_g: f64,
        },
        /// A cup goes off before one joint is glued.
        CupTooShort {
            /// How long a cup for one joint can be worked, minutes.
            good_min: f64,
        },
    }
}

fact::facts! {
    /// How the strength on the sheet compares with the stress of a slow straight pull.
    pub enum PullReserve: "pull_reserve" {
        /// The strength is this many times the stress.
        Times {
            /// Rounded down to one digit: the stress is a mean, and no strength is known better.
            times: f64,
        },
        /// The stress is above the strength.
        Exceeded,
    }
}

fact::facts! {
    /// What the figures of the pull take for granted.
    pub enum PullAssumption: "pull_assumption" {
        /// The head moves on a circle.
        OnACircle,
        /// The pull is straight and even.
        StraightAndEven,
        /// What is not counted.
        NotCounted,
    }
}
