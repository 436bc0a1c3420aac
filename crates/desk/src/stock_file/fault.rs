//! What is wrong with a cell or a row.

use fact::{Measure, Told};
use trade::model::PartKind;
use trade::part::PartState;

fact::facts! {
    /// What is wrong with a cell or a row of a list of parts.
    pub enum CellFault: "cell_fault" {
        /// Unreadable.
        Unreadable {
            /// What it is.
            what: Told,
        },
        /// Part.
        Part {
            /// What it is.
            what: Told,
        },
        /// … cannot be the … of a …, which is between … and ….
        Impossible {
            /// What was given.
            value: Measure,
            /// Its name.
            name: Told,
            /// What kind of part.
            kind: PartKind,
            /// Least.
            low: Measure,
            /// Greatest.
            high: Measure,
        },
        /// No model is named.
        NoModel,
        /// There is no such model.
        UnknownModel {
            /// What there is instead.
            known: Option<Vec<String>>,
        },
        /// There is no such model.
        ModelSpelling {
            /// Its code.
            code: String,
        },
        /// It is a … model and the row a ….
        OtherKind {
            /// Model.
            model: PartKind,
            /// What kind of part.
            kind: PartKind,
        },
        /// A parallel tip has no number.
        ParallelNumber,
        /// A … has no number.
        NoNumbers {
            /// What kind of part.
            kind: PartKind,
        },
        /// The number is missing.
        NumberMissing {
            /// What there is instead.
            known: Vec<String>,
        },
        /// The model has no such number.
        UnknownNumber {
            /// What there is instead.
            known: Vec<String>,
        },
        /// The code is missing.
        CodeMissing,
        /// This cannot be a code.
        BadCode,
        /// A part in stock has this code.
        CodeInStock,
        /// Line … has this code too.
        CodeBefore {
            /// Line, from 1.
            line: u64,
        },
        /// The kind is missing.
        KindMissing {
            /// What there is instead.
            known: Vec<String>,
        },
        /// There is no such kind of part.
        UnknownKind {
            /// What there is instead.
            known: Vec<String>,
        },
        /// A part that is … belongs to a job.
        OfJob {
            /// State.
            state: PartState,
        },
        /// There is no such state.
        UnknownState,
        /// It is not a whole number from 0.
        BadCount,
        /// A … in the shop is weighed.
        NotWeighed {
            /// What kind of part.
            kind: PartKind,
        },
        /// There is neither a mass nor a count.
        NeitherMassNorCount,
        /// The row has … cells and the header ….
        QuoteOpen {
            /// Has.
            has: usize,
            /// Width.
            width: usize,
        },
        /// The row has … cells and the header ….
        TooManyCells {
            /// Has.
            has: usize,
            /// Width.
            width: usize,
        },
        /// The row has … cells and the header ….
        TooFewCells {
            /// Has.
            has: usize,
            /// Width.
            width: usize,
        },
        /// The cell … holds a formula whose value was not saved with it.
        Formula {
            /// Name of the cell in its sheet.
            place: String,
        },
        /// The cell … is a date or a time.
        Date {
            /// Name of the cell in its sheet.
            place: String,
        },
        /// The cell … shows the error ….
        Error {
            /// Name of the cell in its sheet.
            place: String,
            /// Error.
            error: String,
        },
        /// The cells … are merged, and only the first of them holds a value.
        Merged {
            /// Cells.
            cells: String,
        },
    }
}

fact::facts! {
    /// Figures of a part, in a sentence about one.
    pub(super) enum FigureName: "figure_name" {
        Mass,
        Length,
        BalancePoint,
        Frequency,
        Loft,
        Lie,
        Other { name: String },
    }
}
