//! A club that matches others: from the line through what was measured of them to a job that builds it.

use crate::club_job::NewClubJob;
use crate::{App, AppError};
use desk::match_set::MatchModels;
use jiff::civil::Date;
use serde::Deserialize;
use trade::job::Job;
use trade::model::Library;
use utoipa::ToSchema;

/// A club that is to be built to match others.
#[derive(Debug, Clone, PartialEq, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NewMatch {
    /// Codes of the clubs that were measured: three at least, all of one sort. The job is their player's and their owner's.
    pub clubs: Vec<String>,
    /// Number or letter of the club that is to match them.
    pub number: String,
    /// Which models it is built of, and whether it matches in swing weight or in swing inertia.
    pub models: MatchModels,
    /// When it is due.
    #[schema(value_type = String, format = Date)]
    pub due: Date,
    /// Who makes the job.
    pub by: String,
}

impl App {
    /// Makes the job of one club that is to match others that were measured.
    ///
    /// # Errors
    /// As matching refuses and as a job is refused.
    pub async fn new_match_job(&self, new: NewMatch) -> Result<Job, AppError> {
        let found = self.match_to_set(&new.clubs, &new.number).await?;
        let library: Library = self.models(None).await?.into_iter().collect();
        let row = found.row(&library, &self.shop().await?, new.models)?;
        let first = self.club(new.clubs.first().map_or("", String::as_str)).await?.club;
        let job = NewClubJob {
            due: new.due,
            player: first.player,
            note: String::new(),
            clubs: Vec::new(),
            new_clubs: vec![row],
            hand: Some(first.hand),
            customer: first.owner,
            neighbour_reason: String::new(),
            by: new.by,
        };
        self.new_club_job(&job).await
    }
}
