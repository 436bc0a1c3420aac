//! What can be wrong with a request for a plan.

use fact::{Fact, Figure, Measure, ToFigure, Told};

/// Which kind of part a message is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum PartKind {
    /// Club head.
    Head,
    /// Shaft.
    Shaft,
    /// Grip.
    Grip,
    /// Tip weight from the tray.
    Tip,
    /// Adapter between head and shaft.
    Adapter,
}

impl ToFigure for PartKind {
    fn to_figure(&self) -> Figure {
        let key = match self {
            Self::Head => "head",
            Self::Shaft => "shaft",
            Self::Grip => "grip",
            Self::Tip => "tip_weight",
            Self::Adapter => "adapter",
        };
        Figure::Fact(Told::of_list("PartKind", key))
    }
}

fact::facts! {
    /// A figure of a question to the planner.
    pub enum Asked: "planner_asked" {
        /// Base deviation.
        BaseDeviation,
        /// Cap of tip weight.
        CapOfTipWeight,
        /// Contribution of a part.
        ContributionOfPart,
        /// Contribution of a tip weight.
        ContributionOfTipWeight,
        /// Cost of an unbuilt club.
        CostOfUnbuiltClub,
        /// Extra cost of a part.
        ExtraCostOfPart,
        /// Loss of a pair of tip weights.
        LossOfPairOfTipWeights,
        /// Mass of a part.
        MassOfPart,
        /// Mass of a tip weight.
        MassOfTipWeight,
        /// Mass of the parts not chosen.
        MassOfPartsNotChosen,
        /// Nominal shaft mass.
        NominalShaftMass,
        /// Points per gram of head.
        PointsPerGramOfHead,
        /// Priority of a job.
        PriorityOfJob,
        /// Quantum of cost.
        QuantumOfCost,
        /// Target mass.
        TargetMass,
        /// Weight of the loss.
        WeightOfLoss,
        /// Zero of the head scale.
        ZeroOfHeadScale,
        /// Weight of a gram of tip weight.
        WeightOfGramOfTipWeight,
        /// Weight of a second tip weight.
        WeightOfSecondTipWeight,
        /// Weight of a gram of shaft range.
        WeightOfGramOfShaftRange,
        /// Weight of a gram of whole mass.
        WeightOfGramOfWholeMass,
        /// Standard deviation of the finish.
        StandardDeviationOfFinish,
        /// Tolerance.
        Tolerance,
        /// Standard deviation of what the reading tells.
        StandardDeviationOfWhatReadingTells,
        /// Standard deviation of what stays unknown.
        StandardDeviationOfWhatStaysUnknown,
        /// Spread of the spare grips.
        SpreadOfSpareGrips,
        /// Number of spare grips.
        NumberOfSpareGrips,
    }
}

/// A request that cannot be planned as it stands. A club that merely cannot be built is not an error: it is named in
/// the solution.
#[derive(Debug, Clone, PartialEq)]
pub enum MatchError {
    /// There is nothing to plan.
    NoClubs,
    /// A figure is not a number or infinite.
    NotFinite {
        /// Index of the club over all sets, in the order given.
        club: usize,
        /// Which figure.
        what: Asked,
        /// The offending value.
        value: f64,
    },
    /// A figure is outside what a workshop can mean.
    OutOfRange {
        /// Which figure.
        what: Asked,
        /// The offending value.
        value: f64,
        /// Least accepted value.
        low: f64,
        /// Greatest accepted value.
        high: f64,
        /// Unit of all three.
        unit: &'static str,
    },
    /// A club names a part that the stock does not list.
    UnknownPart {
        /// Index of the club over all sets.
        club: usize,
        /// Kind of part.
        kind: PartKind,
        /// The part number named.
        part: usize,
        /// How many parts of that kind the stock has.
        count: usize,
    },
    /// A club lists one part twice, which would leave its contribution ambiguous.
    ListedTwice {
        /// Index of the club over all sets.
        club: usize,
        /// Kind of part.
        kind: PartKind,
        /// The part listed twice.
        part: usize,
    },
    /// A plan offered for re-planning does not belong to this problem.
    PlanShape {
        /// Clubs in the plan.
        got: usize,
        /// Clubs in the problem.
        expected: usize,
    },
    /// The rows of a cost table are not equally long.
    CostRow {
        /// Index of the row in the table, from 0.
        row: usize,
        /// Its length.
        got: usize,
        /// Length of the first row.
        expected: usize,
    },
    /// A cost of a table is not a number or -∞.
    CostValue {
        /// Index of the row in the table, from 0.
        row: usize,
        /// Index of the column in its row, from 0.
        column: usize,
        /// The offending value.
        value: f64,
    },
    /// The check refused a plan. This is a fault of this crate and of nothing in the question; the plan is not returned.
    CheckFailed(String),
}

impl Fact for MatchError {
    fn told(&self) -> Told {
        match self {
            Self::NoClubs => Told::new("planner_refused.no_clubs"),
            Self::NotFinite { club, what, value } => Told::new("planner_refused.not_finite")
                .with("club", &(club + 1))
                .with("what", what)
                .with("value", value),
            Self::OutOfRange { what, value, low, high, unit } => {
                let of = |value: &f64| Measure::new(*value, unit);
                let told = Told::new("planner_refused.out_of_range").with("what", what).with("value", &of(value));
                told.with("low", &of(low)).with("high", &of(high))
            }
            Self::UnknownPart { club, kind, part, count } => {
                let told = Told::new("planner_refused.unknown_part").with("club", &(club + 1)).with("kind", kind);
                told.with("part", &(part + 1)).with("n", count)
            }
            Self::ListedTwice { club, kind, part } => {
                let told = Told::new("planner_refused.listed_twice").with("club", &(club + 1)).with("kind", kind);
                told.with("part", &(part + 1))
            }
            Self::PlanShape { got, expected } => {
                Told::new("planner_refused.plan_shape").with("got", got).with("expected", expected)
            }
            Self::CostRow { row, got, expected } => {
                let told = Told::new("planner_refused.cost_row").with("row", &(row + 1));
                told.with("got", got).with("expected", expected)
            }
            Self::CostValue { row, column, value } => {
                let told = Told::new("planner_refused.cost_value").with("row", &(row + 1));
                told.with("column", &(column + 1)).with("value", value)
            }
            Self::CheckFailed(log) => Told::new("planner_refused.check_failed").with("log", log),
        }
    }
}

impl From<MatchError> for fact::Refusal {
    fn from(error: MatchError) -> Self {
        Self::new(&error)
    }
}

/// The form of a log.
impl std::fmt::Display for MatchError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        self.told().fmt(f)
    }
}

impl std::error::Error for MatchError {}

#[cfg(test)]
mod tests {
    use super::{Asked, MatchError, PartKind};

    /// Every refusal has a text that uses only its figures; a missing one stops the test.
    #[test]
    fn every_refusal_has_its_text() {
        let words = words::Words::english(quantity::Units::default());
        let (what, kind) = (Asked::MassOfPart, PartKind::Tip);
        for (error, text) in [
            (MatchError::NoClubs, "there is no club to plan"),
            (
                MatchError::NotFinite { club: 2, what: Asked::MassOfPart, value: f64::NAN },
                "mass of a part of club 3 is NaN",
            ),
            (MatchError::OutOfRange { what, value: -1.0, low: 0.0, high: 1e4, unit: "g" }, "between 0 g and 10000 g"),
            (MatchError::UnknownPart { club: 0, kind, part: 8, count: 7 }, "tip weight 9"),
            (MatchError::ListedTwice { club: 0, kind, part: 1 }, "lists tip weight 2 twice"),
            (MatchError::PlanShape { got: 1, expected: 2 }, "1 clubs"),
            (MatchError::CostRow { row: 1, got: 1, expected: 2 }, "row 2"),
            (MatchError::CostValue { row: 1, column: 1, value: f64::NAN }, "column 2"),
            (MatchError::CheckFailed("x".into()), "failed its check: x"),
        ] {
            let told = words.tell(&error);
            assert!(told.contains(text), "{told}");
        }
    }
}
