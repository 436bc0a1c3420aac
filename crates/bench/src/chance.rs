//! A chance as people say it.

fact::facts! {
    /// How likely something is, as people say it.
    pub enum Odds: "odds" {
        /// 0.985 and more.
        Sure,
        /// 0.945 to 0.985.
        NearlySure,
        /// 0.05 to 0.945, in tenths.
        InTen {
            /// How many of ten.
            n: i64,
        },
        /// 0.035 to 0.05.
        Seldom,
        /// Less.
        HardlyEver,
    }
}

impl Odds {
    /// A probability in these steps.
    #[must_use]
    pub fn of(probability: f64) -> Self {
        let tenths = (probability * 10.0).round();
        if probability >= 0.985 {
            Self::Sure
        } else if probability >= 0.945 {
            Self::NearlySure
        } else if tenths >= 1.0 {
            Self::InTen { n: tenths.min(9.0) as i64 }
        } else if probability >= 0.035 {
            Self::Seldom
        } else {
            Self::HardlyEver
        }
    }
}

fact::facts! {
    /// How likely a club finishes in tolerance.
    pub enum Chance: "chance" {
        /// So likely.
        Inside {
            /// How likely.
            odds: Odds,
        },
        /// Less than once in twenty.
        Miss,
    }
}

impl Chance {
    /// A probability of finishing in tolerance.
    #[must_use]
    pub fn of(probability: f64) -> Self {
        match Odds::of(probability) {
            Odds::Seldom | Odds::HardlyEver => Self::Miss,
            odds => Self::Inside { odds },
        }
    }
}
