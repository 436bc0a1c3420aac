//! Where the values of an expanded club come from, as facts.

use trade::club_name::ClubName;
use trade::kind::LengthTo;

fact::facts! {
    /// Where a value of an expanded club comes from.
    pub enum ValueFrom: "sheet_origin" {
        /// The head model of the set that has this number.
        Head {
            /// The club whose head it is.
            club: ClubName,
            /// Name of the head model.
            head: String,
        },
        /// As it was written.
        Written {
            /// The phrase of the short sheet.
            text: String,
        },
        /// Layers of tape as they were written, beside the base.
        WrittenWraps {
            /// The phrase of the short sheet.
            text: String,
            /// Layers of base.
            n: i64,
        },
        /// Layers of tape as the customer likes them.
        CustomersWraps,
        /// A length as it was written.
        WrittenLength {
            /// The phrase of the short sheet.
            text: String,
            /// What it ends at.
            to: LengthTo,
        },
        /// The head's chart.
        ChartLength {
            /// The chart's length to that end, millimetres.
            chart_mm: f64,
            /// What it ends at.
            to: LengthTo,
        },
        /// The head's chart and what was written.
        ChartAndWrittenLength {
            /// The chart's length to that end, millimetres.
            chart_mm: f64,
            /// The phrase of the short sheet.
            text: String,
            /// What it ends at.
            to: LengthTo,
        },
        /// The head's chart and how much longer the fitted club is than its own.
        ChartAndFittedLength {
            /// The chart's length to that end, millimetres.
            chart_mm: f64,
            /// How much longer, millimetres.
            by_mm: f64,
            /// The fitted club.
            club: ClubName,
            /// What it ends at.
            to: LengthTo,
        },
        /// The head's chart.
        ChartAngle {
            /// The chart's angle, degrees.
            chart_deg: f64,
        },
        /// The head's chart and what was written.
        ChartAndWrittenAngle {
            /// The chart's angle, degrees.
            chart_deg: f64,
            /// The phrase of the short sheet.
            text: String,
        },
        /// The head's chart and how the fitted club differs from its own.
        ChartAndFittedAngle {
            /// The chart's angle, degrees.
            chart_deg: f64,
            /// The difference, degrees.
            by_deg: f64,
            /// The fitted club.
            club: ClubName,
        },
    }
}

fact::facts! {
    /// Where the swing weight of an expanded club comes from.
    pub enum SwingWeightFrom: "sheet_swing_weight" {
        /// The head's chart.
        Chart {
            /// The chart's swing weight, points since A0.
            chart_points: f64,
        },
        /// The head's chart, as equal inertia holds for the fitted club's kind alone.
        ChartOfOtherKind {
            /// The chart's swing weight, points since A0.
            chart_points: f64,
        },
        /// As it was written.
        Written {
            /// The phrase of the short sheet.
            text: String,
        },
        /// Steps that were written, from the fitted club's.
        WrittenFromFitted {
            /// The phrase of the short sheet.
            text: String,
            /// The fitted club's swing weight, points since A0.
            fitted_points: f64,
            /// The fitted club.
            club: ClubName,
        },
        /// The fitted club's.
        Fitted {
            /// Its swing weight, points since A0.
            fitted_points: f64,
            /// The fitted club.
            club: ClubName,
        },
        /// Equal inertia.
        EqualInertia {
            /// What it makes, points since A0.
            swing_weight_points: f64,
            /// Moment of inertia about the butt, kg·cm².
            inertia_kg_cm2: f64,
            /// The fitted club that has it.
            club: ClubName,
            /// Head and tip weight that it takes, grams.
            head_g: f64,
        },
    }
}

fact::facts! {
    /// A swing weight with what was written for the wedges.
    pub enum WedgeFrom: "sheet_wedge" {
        /// Both.
        Offset {
            /// Where the swing weight of the set comes from.
            what: SwingWeightFrom,
            /// The phrase of the short sheet.
            text: String,
        },
    }
}
