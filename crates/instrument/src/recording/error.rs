//! Why a recording was refused.

use thiserror::Error;

/// Why a recording was refused, with the place and what to do next.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum RecordingError {
    /// Nothing in it.
    #[error("the recording is empty: record again, or choose another file")]
    Empty,
    /// Not the format it should be.
    #[error("this is no WAV file that can be read ({reason}): save it as uncompressed PCM or float")]
    NotWav {
        /// What the reader stumbled over.
        reason: String,
    },
    /// Not one or two axes.
    #[error("the recording has {count} axes, but 1 to {limit} are read: leave out the others")]
    Axes {
        /// Axes found.
        count: usize,
        /// Most that are read.
        limit: usize,
    },
    /// Too few samples.
    #[error("the recording has {count} samples, but needs at least {limit}: record for longer")]
    TooShort {
        /// Samples found.
        count: usize,
        /// Least that are read.
        limit: usize,
    },
    /// Too many samples.
    #[error("the recording has more than {limit} samples: cut out the swing, a minute at most")]
    TooLong {
        /// Most that are read.
        limit: usize,
    },
    /// A sample rate of zero.
    #[error("the file gives a sample rate of {value_hz} Hz: save it again with the rate it was recorded at")]
    Rate {
        /// Rate as found, Hz.
        value_hz: f64,
    },
    /// A row that is no row of numbers.
    #[error("row {row}, column {column}: {text:?} is not a number; write plain figures, one row for each instant")]
    NotANumber {
        /// Row in the file, the first is 1.
        row: u64,
        /// Column, the first is 1.
        column: usize,
        /// What stands there.
        text: String,
    },
    /// A row of another length than the first.
    #[error("row {row} has {count} columns, but the first has {expected}: write time and one or two axes in every row")]
    Ragged {
        /// Row in the file, the first is 1.
        row: u64,
        /// Columns found.
        count: usize,
        /// Columns of the first row.
        expected: usize,
    },
    /// A time column whose unit is not known.
    #[error("the time column is headed {heading:?}: head it time_s, time_ms or time_us")]
    TimeUnit {
        /// Heading as found.
        heading: String,
    },
    /// A time that is not later than the one before.
    #[error("row {row}: time {value_s} s does not come after {limit_s} s; sort the rows by time")]
    TimeBackwards {
        /// Row in the file, the first is 1.
        row: u64,
        /// Time found, s.
        value_s: f64,
        /// Time of the row before, s.
        limit_s: f64,
    },
    /// A step that differs from the others.
    #[error(
        "row {row}: time is {off_s} s off an even spacing, but at most {limit_s} s is taken; record at a fixed rate, or \
         look for missing rows"
    )]
    Uneven {
        /// Row in the file, the first is 1.
        row: u64,
        /// Distance from the even grid, s.
        off_s: f64,
        /// Most that is taken, s.
        limit_s: f64,
    },
    /// The table itself cannot be read.
    #[error("the table cannot be read ({reason}): save it as CSV in UTF-8")]
    NotATable {
        /// What the reader stumbled over.
        reason: String,
    },
}
