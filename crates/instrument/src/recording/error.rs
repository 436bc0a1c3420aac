//! Why a recording was refused.

fact::facts! {
    /// Why a recording was refused, with the place and what to do next.
    pub enum RecordingError: "recording" {
        /// Nothing in it.
        Empty,
        /// Not the format it should be.
        NotWav {
            /// What the reader stumbled over.
            reason: String,
        },
        /// Not one or two axes.
        Axes {
            /// Axes found.
            count: usize,
            /// Most that are read.
            limit: usize,
        },
        /// Too few samples.
        TooShort {
            /// Samples found.
            count: usize,
            /// Least that are read.
            limit: usize,
        },
        /// Too many samples.
        TooLong {
            /// Most that are read.
            limit: usize,
        },
        /// A sample rate of zero.
        Rate {
            /// Rate as found, Hz.
            value_hz: f64,
        },
        /// A row that is no row of numbers.
        NotANumber {
            /// Row in the file, the first is 1.
            row: u64,
            /// Column, the first is 1.
            column: usize,
            /// What stands there.
            text: String,
        },
        /// A row of another length than the first.
        Ragged {
            /// Row in the file, the first is 1.
            row: u64,
            /// Columns found.
            count: usize,
            /// Columns of the first row.
            expected: usize,
        },
        /// A time column whose unit is not known.
        TimeUnit {
            /// Heading as found.
            heading: String,
        },
        /// A time that is not later than the one before.
        TimeBackwards {
            /// Row in the file, the first is 1.
            row: u64,
            /// Time found, s.
            value_s: f64,
            /// Time of the row before, s.
            limit_s: f64,
        },
        /// A step that differs from the others.
        Uneven {
            /// Row in the file, the first is 1.
            row: u64,
            /// Distance from the even grid, s.
            off_s: f64,
            /// Most that is taken, s.
            limit_s: f64,
        },
        /// The table itself cannot be read.
        NotATable {
            /// What the reader stumbled over.
            reason: String,
        },
    }
}

/// The form of a log.
impl std::fmt::Display for RecordingError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        fact::Fact::told(self).fmt(f)
    }
}

impl std::error::Error for RecordingError {}
