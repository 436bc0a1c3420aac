//! Lists of the shop as CSV files: clubs, jobs, readings, records. Parts and orders have theirs beside their nouns.

use crate::recall::{evening, morning};
use crate::{App, AppError};
use bench::finished_club::FinishedClub;
use desk::club_csv::{self, JobRow};
use jiff::Timestamp;
use jiff::civil::Date;
use serde::Deserialize;
use trade::job::JobState;
use utoipa::IntoParams;

/// Most readings in one file: some hundred megabytes would be held at once otherwise, and no spreadsheet opens more than a
/// million rows.
pub const READINGS_MAX: i64 = 250_000;

/// Which readings.
#[derive(Debug, Clone, Default, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
#[serde(deny_unknown_fields)]
pub struct ReadingsOf {
    /// The first day; left out: from the beginning.
    #[param(value_type = Option<String>, format = Date)]
    pub from: Option<Date>,
    /// The last day; left out: until today.
    #[param(value_type = Option<String>, format = Date)]
    pub to: Option<Date>,
    /// Running number of a job; left out: of every job.
    pub job: Option<i64>,
}

impl App {
    /// The clubs that live on, of all or of one customer, as a CSV file.
    ///
    /// # Errors
    /// No such customer; what the store says.
    pub async fn export_clubs(&self, search: &str, owner: Option<i64>) -> Result<String, AppError> {
        if let Some(owner) = owner {
            self.customer(owner).await?;
        }
        let found = self.clubs(search, owner, i64::MAX).await?;
        Ok(club_csv::clubs(&found.into_iter().map(|line| (line.club, line.job)).collect::<Vec<_>>()))
    }

    /// The jobs, those under way and those that are over, as a CSV file by number.
    ///
    /// # Errors
    /// What the store says.
    pub async fn export_jobs(&self) -> Result<String, AppError> {
        let mut rows: Vec<JobRow> = self
            .job_names(JobState::ALL)
            .await?
            .into_iter()
            .map(|job| JobRow {
                number: job.number,
                player: job.player,
                due: job.due,
                state: job.state,
                clubs: job.clubs,
                finished_at: job.finished_at,
            })
            .collect();
        rows.sort_by_key(|job| job.number);
        Ok(club_csv::jobs(&rows))
    }

    /// Readings at the bench as a CSV file, in the order of their arrival, with those that were taken back.
    ///
    /// # Errors
    /// A last day before the first; no such job; more readings than one file takes; what the store says.
    pub async fn export_readings(&self, of: &ReadingsOf) -> Result<String, AppError> {
        if of.from.zip(of.to).is_some_and(|(from, to)| from > to) {
            return Err(AppError::invalid(ExportFault::Backwards));
        }
        let since = of.from.map_or(Timestamp::UNIX_EPOCH, morning);
        let until = of.to.map_or(Timestamp::MAX, evening);
        let mut tx = self.store.read().await?;
        let job = match of.job {
            Some(number) => Some(crate::order::job_of(&mut tx, number).await?.id),
            None => None,
        };
        let count = tx.count_placed_readings(job.as_ref(), since, until).await?;
        if count > READINGS_MAX {
            return Err(AppError::invalid(ExportFault::TooMany { n: count, most: READINGS_MAX }));
        }
        Ok(club_csv::readings(&tx.placed_readings(job.as_ref(), since, until).await?))
    }

    /// Where the finished clubs came out, as a CSV file.
    ///
    /// # Errors
    /// What the store says.
    pub async fn export_records(&self) -> Result<String, AppError> {
        let mut tx = self.store.read().await?;
        let finished = tx.finished_clubs().await?;
        let mut players: std::collections::BTreeMap<i64, String> = std::collections::BTreeMap::new();
        for job in tx.job_lines(JobState::Finished, None, i64::MAX).await? {
            players.insert(job.number, job.player);
        }
        let player = |club: &FinishedClub| players.get(&club.job_number).map_or("", String::as_str);
        Ok(club_csv::records(finished.iter().map(|club| (club, player(club)))))
    }
}

fact::facts! {
    /// Why a list is not written.
    pub(crate) enum ExportFault: "export_fault" {
        Backwards,
        TooMany { n: i64, most: i64 },
    }
}
