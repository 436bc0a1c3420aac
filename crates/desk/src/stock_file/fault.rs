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
        /// Impossible.
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
        /// No model.
        NoModel,
        /// Unknown model.
        UnknownModel {
            /// What there is instead.
            known: Option<Vec<String>>,
        },
        /// Model spelling.
        ModelSpelling {
            /// Its code.
            code: String,
        },
        /// Other kind.
        OtherKind {
            /// Model.
            model: PartKind,
            /// What kind of part.
            kind: PartKind,
        },
        /// Parallel number.
        ParallelNumber,
        /// No numbers.
        NoNumbers {
            /// What kind of part.
            kind: PartKind,
        },
        /// Number missing.
        NumberMissing {
            /// What there is instead.
            known: Vec<String>,
        },
        /// Unknown number.
        UnknownNumber {
            /// What there is instead.
            known: Vec<String>,
        },
        /// Code missing.
        CodeMissing,
        /// Bad code.
        BadCode,
        /// Code in stock.
        CodeInStock,
        /// Code before.
        CodeBefore {
            /// Line, from 1.
            line: u64,
        },
        /// Kind missing.
        KindMissing {
            /// What there is instead.
            known: Vec<String>,
        },
        /// Unknown kind.
        UnknownKind {
            /// What there is instead.
            known: Vec<String>,
        },
        /// Of job.
        OfJob {
            /// State.
            state: PartState,
        },
        /// Unknown state.
        UnknownState,
        /// Bad count.
        BadCount,
        /// Not weighed.
        NotWeighed {
            /// What kind of part.
            kind: PartKind,
        },
        /// Neither mass nor count.
        NeitherMassNorCount,
        /// Quote open.
        QuoteOpen {
            /// Has.
            has: usize,
            /// Width.
            width: usize,
        },
        /// Too many cells.
        TooManyCells {
            /// Has.
            has: usize,
            /// Width.
            width: usize,
        },
        /// Too few cells.
        TooFewCells {
            /// Has.
            has: usize,
            /// Width.
            width: usize,
        },
        /// Formula.
        Formula {
            /// Name of the cell in its sheet.
            place: String,
        },
        /// Date.
        Date {
            /// Name of the cell in its sheet.
            place: String,
        },
        /// Error.
        Error {
            /// Name of the cell in its sheet.
            place: String,
            /// Error.
            error: String,
        },
        /// Merged.
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
