//! Tables of time and one or two axes.

use csv::{ReaderBuilder, StringRecord};

use super::wav::{AXES_MAX, SAMPLES_MIN};
use super::{Recording, RecordingError, SAMPLES_MAX};

/// Share of a step by which a time may stand off the even grid. Loggers print times with few decimals.
const UNEVEN_SHARE: f64 = 0.25;

/// Reads a table with time in the first column and one or two axes after it.
///
/// Columns are parted by comma, semicolon or tab; with semicolon or tab a decimal comma is read too. A first row of
/// words is a heading: time may be headed `time_s`, `time_ms` or `time_us` (also `t`, `time`, `seconds`, `ms`, `us`,
/// with or without a bracketed unit); without a heading it is in seconds. Empty rows and rows that start with `#` are
/// passed over.
///
/// # Errors
/// [`RecordingError`] naming the row (and column) of a figure that cannot be read, a time that does not come after the
/// one before, or one that breaks the even spacing.
pub fn read_csv(bytes: &[u8]) -> Result<Recording, RecordingError> {
    let bytes = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    let text = std::str::from_utf8(bytes)
        .map_err(|error| RecordingError::NotATable { reason: format!("byte {} is not UTF-8", error.valid_up_to()) })?;
    let delimiter = delimiter(text).ok_or(RecordingError::Empty)?;
    let mut table = Table::new(delimiter != b',');
    let mut reader = ReaderBuilder::new()
        .delimiter(delimiter)
        .has_headers(false)
        .flexible(true)
        .comment(Some(b'#'))
        .trim(csv::Trim::All)
        .from_reader(text.as_bytes());
    let mut record = StringRecord::new();
    loop {
        match reader.read_record(&mut record) {
            Ok(true) => table.take(&record)?,
            Ok(false) => break,
            Err(error) => return Err(RecordingError::NotATable { reason: error.to_string() }),
        }
    }
    table.finish()
}

/// The separator of the first row that holds anything: semicolon and tab never stand in a number, a comma may.
fn delimiter(text: &str) -> Option<u8> {
    let row = text.lines().map(str::trim).find(|row| !row.is_empty() && !row.starts_with('#'))?;
    let found = [b';', b'\t'].into_iter().find(|delimiter| row.as_bytes().contains(delimiter));
    Some(found.unwrap_or(b','))
}

/// The table as far as it has been read.
struct Table {
    decimal_comma: bool,
    columns: Option<usize>,
    seconds_per_unit: f64,
    times_s: Vec<f64>,
    rows: Vec<u64>,
    axes: Vec<Vec<f64>>,
}

impl Table {
    fn new(decimal_comma: bool) -> Self {
        Self { decimal_comma, columns: None, seconds_per_unit: 1.0, times_s: vec![], rows: vec![], axes: vec![] }
    }

    fn take(&mut self, record: &StringRecord) -> Result<(), RecordingError> {
        let row = record.position().map_or(0, csv::Position::line);
        if record.iter().all(str::is_empty) {
            return Ok(());
        }
        let expected = match self.columns {
            Some(expected) => expected,
            None => self.open(record)?,
        };
        if record.len() != expected {
            return Err(RecordingError::Ragged { row, count: record.len(), expected });
        }
        if self.times_s.is_empty() && self.rows.is_empty() && self.heading(record)? {
            return Ok(());
        }
        if self.times_s.len() >= SAMPLES_MAX {
            return Err(RecordingError::TooLong { limit: SAMPLES_MAX });
        }
        let time_s = self.number(record, 0, row)? * self.seconds_per_unit;
        if let Some(&limit_s) = self.times_s.last()
            && time_s <= limit_s
        {
            return Err(RecordingError::TimeBackwards { row, value_s: time_s, limit_s });
        }
        for column in 1..expected {
            let value = self.number(record, column, row)?;
            self.axes[column - 1].push(value);
        }
        self.times_s.push(time_s);
        self.rows.push(row);
        Ok(())
    }

    /// Takes the number of columns from the first row.
    fn open(&mut self, record: &StringRecord) -> Result<usize, RecordingError> {
        let axes = record.len() - 1;
        if axes == 0 || axes > AXES_MAX {
            return Err(RecordingError::Axes { count: axes, limit: AXES_MAX });
        }
        self.axes = vec![Vec::new(); axes];
        self.columns = Some(record.len());
        Ok(record.len())
    }

    /// Takes a row of words for a heading, with the unit of time.
    fn heading(&mut self, record: &StringRecord) -> Result<bool, RecordingError> {
        if record.iter().any(|text| self.parse(text).is_some()) {
            return Ok(false);
        }
        let text = record.get(0).unwrap_or_default();
        let plain: String = text.to_lowercase().chars().filter(|c| c.is_alphanumeric() || *c == 'µ').collect();
        self.seconds_per_unit = match plain.as_str() {
            "time" | "t" | "s" | "sec" | "seconds" | "times" | "ts" | "timesec" | "timeseconds" => 1.0,
            "ms" | "milliseconds" | "timems" | "tms" | "timemilliseconds" => 1e-3,
            "us" | "µs" | "microseconds" | "timeus" | "timeµs" | "tus" | "tµs" | "timemicroseconds" => 1e-6,
            _ => return Err(RecordingError::TimeUnit { heading: text.to_owned() }),
        };
        Ok(true)
    }

    fn parse(&self, text: &str) -> Option<f64> {
        let value: f64 = if self.decimal_comma { text.replace(',', ".").parse().ok()? } else { text.parse().ok()? };
        value.is_finite().then_some(value)
    }

    fn number(&self, record: &StringRecord, column: usize, row: u64) -> Result<f64, RecordingError> {
        let text = record.get(column).unwrap_or_default();
        self.parse(text).ok_or_else(|| RecordingError::NotANumber { row, column: column + 1, text: text.to_owned() })
    }

    /// The rate from first to last time, and every time held against that even grid.
    fn finish(self) -> Result<Recording, RecordingError> {
        let count = self.times_s.len();
        if count < SAMPLES_MIN {
            return Err(if count == 0 {
                RecordingError::Empty
            } else {
                RecordingError::TooShort { count, limit: SAMPLES_MIN }
            });
        }
        let first_s = self.times_s[0];
        let step_s = (self.times_s[count - 1] - first_s) / (count - 1) as f64;
        let limit_s = UNEVEN_SHARE * step_s;
        for (i, (time_s, row)) in self.times_s.iter().zip(&self.rows).enumerate() {
            let off_s = time_s - (first_s + step_s * i as f64);
            if off_s.abs() > limit_s {
                return Err(RecordingError::Uneven { row: *row, off_s, limit_s });
            }
        }
        Ok(Recording { sample_rate_hz: 1.0 / step_s, axes: self.axes, full_scale: None })
    }
}
