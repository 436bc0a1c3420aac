//! What is wrong with a cell or a row.

use fact::{Measure, Told};
use trade::model::PartKind;
use trade::part::PartState;

fact::facts! {
    /// What is wrong with a cell or a row of a list of parts.
    pub enum CellFault: "cell_fault" {
        /// The cell does not read as a figure.
        Unreadable {
            /// Why the figure cannot be read.
            what: Told,
        },
        /// The owner is no code of a customer.
        NoOwner,
        /// The part is refused for another reason.
        Part {
            /// Why the part is refused.
            what: Told,
        },
        /// … cannot be the … of a …, which is between … and ….
        Impossible {
            /// What was given.
            value: Measure,
            /// Which figure of the part it is: mass, length …
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
        /// There is a model of that code with other capitals.
        ModelSpelling {
            /// The code as the model has it.
            code: String,
        },
        /// The model is of another kind of part than the row says.
        OtherKind {
            /// Kind of part that the model is of.
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
            /// Where the row says that the part is in its life: held, used …
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
        /// The row has more or fewer cells than the header, and a quote in it is not closed.
        QuoteOpen {
            /// Cells of the row.
            has: usize,
            /// Cells of the header.
            width: usize,
        },
        /// The row has more cells than the header.
        TooManyCells {
            /// Cells of the row.
            has: usize,
            /// Cells of the header.
            width: usize,
        },
        /// The row has fewer cells than the header.
        TooFewCells {
            /// Cells of the row.
            has: usize,
            /// Cells of the header.
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
            /// What the cell shows: `#DIV/0!`, `#N/A` …
            error: String,
        },
        /// The cells … are merged, and only the first of them holds a value.
        Merged {
            /// Range of the merged cells in the sheet: `B4:B6`.
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
