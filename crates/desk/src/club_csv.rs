//! Clubs, jobs, readings and records as CSV files, for a spreadsheet or another program.
//!
//! Headings are those of the JSON documents, with their units; a decimal point, commas between, times in UTC. No cell is a
//! formula to a spreadsheet, whatever somebody typed as a name.

use crate::stock_csv::{figure, file, maybe};
use bench::finished_club::FinishedClub;
use fact::Fact;
use jiff::Timestamp;
use jiff::civil::Date;
use trade::club::Club;
use trade::job::JobState;
use trade::reading::{Reading, What};

/// What is read of a club and still holds once it is built, in the order of the columns.
const FIGURES: [What; 10] = [
    What::SwingWeight,
    What::TotalMass,
    What::FinishedLength,
    What::BalancePoint,
    What::Loft,
    What::Lie,
    What::Cpm,
    What::SwingInertia,
    What::GripSize,
    What::GripSizeLower,
];

/// A job as a row.
#[derive(Debug, Clone, PartialEq)]
pub struct JobRow {
    /// Running number.
    pub number: i64,
    /// Who the clubs are built for.
    pub player: String,
    /// When it is due.
    pub due: Date,
    /// Where it stands.
    pub state: JobState,
    /// Numbers of its clubs, in the order of the tray.
    pub clubs: Vec<String>,
    /// When it was finished, where that was noted.
    pub finished_at: Option<Timestamp>,
}

/// A reading with where it was taken.
#[derive(Debug, Clone, PartialEq)]
pub struct PlacedReading {
    /// Running number of the job.
    pub job: i64,
    /// Place of the club in the tray.
    pub slot: i64,
    /// Number or letter of the club.
    pub number: String,
    /// What was read, by whom, when, and what was expected.
    pub reading: Reading,
}

/// Clubs that live on, one a row, each with the number of the job in which it is being worked on. A figure that was not read
/// is an empty cell.
#[must_use]
pub fn clubs(clubs: &[(Club, Option<i64>)]) -> String {
    let mut header: Vec<String> = [
        "code",
        "label",
        "player",
        "customer",
        "kind",
        "number",
        "hand",
        "head_model",
        "shaft_model",
        "grip_model",
        "asked_length_mm",
        "asked_swing_weight_points",
        "asked_loft_deg",
        "asked_lie_deg",
        "asked_cpm",
    ]
    .map(str::to_owned)
    .to_vec();
    header.extend(FIGURES.map(read_heading));
    header.extend(["head_code", "shaft_code", "grip_code", "job"].map(str::to_owned));
    let row = |(club, job): &(Club, Option<i64>)| {
        let row = &club.made.row;
        let part = |kind| club.made.pieces.part(kind).map_or_else(String::new, |part| part.code.clone());
        let mut cells = vec![
            club.code.0.clone(),
            club.label.clone(),
            club.player.clone(),
            maybe(club.owner),
            row.club_kind.key().to_owned(),
            row.number.clone(),
            club.hand.key().to_owned(),
            row.head_model.clone(),
            row.shaft_model.clone(),
            row.grip_model.clone(),
            figure(row.length_mm, 1),
            figure(row.swing_weight_points, 2),
            figure(row.loft_deg, 2),
            figure(row.lie_deg, 2),
            maybe(row.cpm),
        ];
        cells.extend(FIGURES.map(|what| maybe(club.figure(what).map(|read| read.value))));
        cells.extend(
            [trade::model::PartKind::Head, trade::model::PartKind::Shaft, trade::model::PartKind::Grip].map(part),
        );
        cells.push(maybe(*job));
        cells
    };
    let header: Vec<&str> = header.iter().map(String::as_str).collect();
    file(&header, clubs.iter().map(row))
}

/// `read_swing_weight_points`; a frequency is called as it is elsewhere.
fn read_heading(what: What) -> String {
    match what.unit().key() {
        unit if unit == what.key() => format!("read_{unit}"),
        unit => format!("read_{}_{unit}", what.key()),
    }
}

/// Jobs, one a row.
#[must_use]
pub fn jobs(jobs: &[JobRow]) -> String {
    let row = |job: &JobRow| {
        vec![
            job.number.to_string(),
            job.player.clone(),
            job.due.to_string(),
            job.state.key().to_owned(),
            job.clubs.len().to_string(),
            job.clubs.join(" "),
            maybe(job.finished_at),
        ]
    };
    file(&["job", "player", "due", "state", "clubs", "numbers", "finished_at"], jobs.iter().map(row))
}

/// Readings, one a row, in the order of their arrival; those that were replaced or taken back too, marked as such.
#[must_use]
pub fn readings(readings: &[PlacedReading]) -> String {
    let header = [
        "id",
        "job",
        "slot",
        "number",
        "step",
        "what",
        "value",
        "unit",
        "typed",
        "scale",
        "at",
        "by",
        "forecast",
        "forecast_band",
        "replaces",
        "taken_back",
        "stood_by",
    ];
    let row = |one: &PlacedReading| {
        let read = &one.reading;
        let looked = read.what == What::Done;
        vec![
            read.id.0.clone(),
            one.job.to_string(),
            one.slot.to_string(),
            one.number.clone(),
            read.step.clone(),
            read.what.key().to_owned(),
            if looked { String::new() } else { read.value.to_string() },
            if looked { String::new() } else { read.unit.key().to_owned() },
            read.typed.clone(),
            read.scale.clone().unwrap_or_default(),
            read.at.to_string(),
            read.by.clone(),
            maybe(read.forecast.map(|forecast| figure(forecast.value, 4))),
            maybe(read.forecast.map(|forecast| figure(forecast.band, 4))),
            read.replaces.as_ref().map(|id| id.0.clone()).unwrap_or_default(),
            read.taken_back.as_ref().map(|why| why.told().to_string()).unwrap_or_default(),
            if read.insisted { "yes".to_owned() } else { String::new() },
        ]
    };
    file(&header, readings.iter().map(row))
}

/// Where finished clubs came out, one a row, each with the name of its player.
#[must_use]
pub fn records<'a>(records: impl IntoIterator<Item = (&'a FinishedClub, &'a str)>) -> String {
    let header = [
        "job",
        "player",
        "number",
        "head_model",
        "finished_at",
        "target_points",
        "built_points",
        "deviation_points",
        "band_points",
        "tolerance_points",
        "verdict",
    ];
    let row = |(one, player): (&FinishedClub, &str)| {
        vec![
            one.job_number.to_string(),
            player.to_owned(),
            one.number.clone(),
            one.head_model.clone(),
            one.finished_at.to_string(),
            figure(one.target_points, 2),
            figure(one.target_points + one.deviation_points, 3),
            figure(one.deviation_points, 3),
            figure(one.band_points, 3),
            figure(one.tolerance_points, 2),
            one.verdict.key().to_owned(),
        ]
    };
    file(&header, records.into_iter().map(row))
}

#[cfg(test)]
mod tests {
    use super::{JobRow, jobs, read_heading};
    use jiff::civil::date;
    use trade::job::JobState;
    use trade::reading::What;

    /// A spreadsheet runs what begins with one of these signs (OWASP, "CSV Injection": = + - @, tab and CR).
    #[test]
    fn no_name_becomes_a_formula() {
        for name in ["=1+1", "+1", "-1+2", "@SUM(A1)", "\t=1", "=cmd|' /C calc'!A0"] {
            let row = JobRow {
                number: 1,
                player: name.to_owned(),
                due: date(2026, 12, 4),
                state: JobState::Open,
                clubs: vec!["7".into()],
                finished_at: None,
            };
            let text = jobs(&[row]);
            let mut read = csv::Reader::from_reader(text.as_bytes());
            let row = read.records().next().expect("a row").expect("CSV");
            assert!(row[1].starts_with('\'') && row[1].ends_with(name.trim_start()), "{text}");
        }
    }

    #[test]
    fn headings_end_in_their_unit_once() {
        assert_eq!(read_heading(What::SwingWeight), "read_swing_weight_points");
        assert_eq!(read_heading(What::Cpm), "read_cpm");
        assert_eq!(read_heading(What::Loft), "read_loft_deg");
    }
}
