//! What can be wrong with a request for a plan.

use thiserror::Error;

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

impl std::fmt::Display for PartKind {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::Head => "head",
            Self::Shaft => "shaft",
            Self::Grip => "grip",
            Self::Tip => "tip weight",
            Self::Adapter => "adapter",
        })
    }
}

/// A request that cannot be planned as it stands. A club that merely cannot be built is not an error: it is named in
/// the solution.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum MatchError {
    /// There is nothing to plan.
    #[error("no club to plan: give at least one club")]
    NoClubs,
    /// A figure is not a number or infinite.
    #[error(
        "{what} of club {club} is {value}, which is not a finite number: correct the reading or leave the part out"
    )]
    NotFinite {
        /// Index of the club over all sets, in the order given.
        club: usize,
        /// Which figure.
        what: &'static str,
        /// The offending value.
        value: f64,
    },
    /// A figure is outside what a workshop can mean.
    #[error("{what} is {value} {unit}, outside {low} to {high} {unit}: check the figure and its unit")]
    OutOfRange {
        /// Which figure.
        what: &'static str,
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
    #[error("club {club} names {kind} {part}, but the stock lists only {count}: add the part to the stock first")]
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
    #[error("club {club} lists {kind} {part} twice: keep one of the two")]
    ListedTwice {
        /// Index of the club over all sets.
        club: usize,
        /// Kind of part.
        kind: PartKind,
        /// The part listed twice.
        part: usize,
    },
    /// A plan offered for re-planning does not belong to this problem.
    #[error("the plan has {got} clubs but the problem has {expected}: give the plan that belongs to these clubs")]
    PlanShape {
        /// Clubs in the plan.
        got: usize,
        /// Clubs in the problem.
        expected: usize,
    },
    /// The rows of a cost table are not equally long.
    #[error("row {row} of the costs has {got} entries but the first has {expected}: give one cost for every column")]
    CostRow {
        /// The row.
        row: usize,
        /// Its length.
        got: usize,
        /// Length of the first row.
        expected: usize,
    },
    /// A cost of a table is not a number or -∞.
    #[error("cost of row {row}, column {column} is {value}: give a number, or infinity for a pair that is not allowed")]
    CostValue {
        /// The row.
        row: usize,
        /// The column.
        column: usize,
        /// The offending value.
        value: f64,
    },
    /// The check refused a plan. This is a fault of this crate and of nothing in the question; the plan is not returned.
    #[error("the plan failed its check: {0}")]
    CheckFailed(String),
}
