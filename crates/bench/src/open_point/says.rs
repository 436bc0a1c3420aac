//! What is open on a club, as it is told.

use jiff::Timestamp;
use trade::reading::What;
use trade::step::Strength;

fact::facts! {
    /// The same as it is told, each quantity with its unit.
    pub enum OpenFact: "open_point" {
        /// A reading is doubted.
        Doubted {
            /// What the builder calls the step.
            step: String,
            /// What was read.
            what: What,
        },
        /// It was never read.
        Unread {
            /// The quantity that should have been read.
            what: What,
        },
        /// A swing weight outside of what the sheet asks.
        OffSwingWeight {
            /// The quantity that is off: the swing weight.
            what: What,
            /// What is believed after all readings, points since A0.
            now_points: f64,
            /// What the sheet asks, points since A0.
            asked_points: f64,
            /// Half width of the tolerance.
            tolerance_points: f64,
        },
        /// A mass outside of what the sheet asks.
        OffMass {
            /// Which mass was read.
            what: What,
            /// The reading.
            now_g: f64,
            /// What the sheet asks.
            asked_g: f64,
            /// Half width of the tolerance.
            tolerance_g: f64,
        },
        /// A length outside of what the sheet asks.
        OffLength {
            /// Which length was read: that of the finished club.
            what: What,
            /// The reading.
            now_mm: f64,
            /// What the sheet asks.
            asked_mm: f64,
            /// Half width of the tolerance.
            tolerance_mm: f64,
        },
        /// An angle outside of what the sheet asks.
        OffAngle {
            /// Which angle was read: loft or lie.
            what: What,
            /// The reading.
            now_deg: f64,
            /// What the sheet asks.
            asked_deg: f64,
            /// Half width of the tolerance.
            tolerance_deg: f64,
        },
        /// A frequency outside of what the sheet asks.
        OffFrequency {
            /// The quantity that is off: the frequency.
            what: What,
            /// The reading.
            now_cpm: f64,
            /// What the sheet asks.
            asked_cpm: f64,
            /// Half width of the tolerance.
            tolerance_cpm: f64,
        },
        /// The loft is weaker than the head may be bent.
        LoftWeak {
            /// By how much.
            by_deg: f64,
            /// What the maker allows.
            limit_deg: f64,
        },
        /// The loft is stronger than the head may be bent.
        LoftStrong {
            /// By how much.
            by_deg: f64,
            /// What the maker allows.
            limit_deg: f64,
        },
        /// The lie is flatter than the head may be bent.
        LieFlat {
            /// By how much.
            by_deg: f64,
            /// What the maker allows.
            limit_deg: f64,
        },
        /// The lie is more upright than the head may be bent.
        LieUpright {
            /// By how much.
            by_deg: f64,
            /// What the maker allows.
            limit_deg: f64,
        },
        /// The loft is weaker than any setting of the adapter mends.
        SetWeak {
            /// By how much at the nearest setting.
            by_deg: f64,
            /// Its name, as it is printed on the adapter.
            setting: String,
        },
        /// The loft is stronger than any setting of the adapter mends.
        SetStrong {
            /// By how much at the nearest setting.
            by_deg: f64,
            /// Its name, as it is printed on the adapter.
            setting: String,
        },
        /// The lie is flatter than any setting of the adapter mends.
        SetFlat {
            /// By how much at the nearest setting.
            by_deg: f64,
            /// Its name, as it is printed on the adapter.
            setting: String,
        },
        /// The lie is more upright than any setting of the adapter mends.
        SetUpright {
            /// By how much at the nearest setting.
            by_deg: f64,
            /// Its name, as it is printed on the adapter.
            setting: String,
        },
        /// The club will finish too light.
        Light {
            /// By how much.
            by_points: f64,
        },
        /// The club will finish too heavy.
        Heavy {
            /// By how much.
            by_points: f64,
        },
        /// The shaft is shorter than planned.
        CutShort {
            /// By how much.
            by_mm: f64,
        },
        /// It is glued already.
        Glued {
            /// Number of the batch.
            batch: i64,
        },
        /// Its joint has not the strength yet.
        NotCured {
            /// What the step needs.
            strength: Strength,
            /// When it will have it.
            until_at: Timestamp,
        },
        /// It is in no batch of adhesive.
        NotGlued,
        /// A recall marked it, and nobody has looked yet.
        Marked {
            /// What to look at, as it was written.
            word: String,
        },
    }
}
