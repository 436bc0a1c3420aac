//! The soft side of a club's shaft: found by a sweep or a pluck, kept as the reading that the glue page goes by, and checked on the
//! finished club.

use crate::bench::{Entry, NewReadings};
use crate::need::need_name;
use crate::{App, AppError};
use bench::accuracy::read_on;
use bench::soft_side::{SoftSideFound, least_difference_cpm, of_pluck, of_sweep, two_planes};
use clubphysics::pluck::PluckInput;
use clubphysics::soft_side::SoftSideInput;
use fact::{Fact, Told};
use serde::{Deserialize, Serialize};
use trade::event_kind::EventKind;
use trade::reading::{Reading, What, check_value};
use utoipa::ToSchema;

/// Readings around a shaft, to find its soft side: a sweep or a recording.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct FindSoftSide {
    /// Deflections, forces or frequencies at angles from the label, clockwise seen from the butt.
    #[serde(default)]
    pub sweep: Option<SoftSideInput>,
    /// A recording of the plucked shaft on two axes, the first along the label.
    #[serde(default)]
    pub pluck: Option<PluckInput>,
    /// Keep what is found as the reading of the club's soft side.
    #[serde(default)]
    pub keep: bool,
    /// Who; may be left out where nothing is kept.
    #[serde(default)]
    pub by: String,
}

/// What was found, and the reading that was kept.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct SoftSideKept {
    /// What the readings say.
    #[serde(flatten)]
    pub found: SoftSideFound,
    /// The reading as it was kept; none where nothing was kept.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reading: Option<Reading>,
}

/// A finished club, plucked in two planes.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReadTwoPlanes {
    /// Swinging along the line of play, cycles a minute.
    pub along_line_cpm: f64,
    /// Swinging from heel to toe.
    pub heel_toe_cpm: f64,
    /// Who.
    pub by: String,
}

/// What two planes say.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct TwoPlanesRead {
    /// Whether the soft side is where the sheet wants it.
    pub says: Told,
    /// What two readings must differ by to say anything, cycles a minute.
    pub least_cpm: f64,
}

impl App {
    /// Finds the soft side of a club's shaft, and keeps it as its reading where that is asked.
    ///
    /// # Errors
    /// No such job or club; a job whose steps read no soft side; readings that tell nothing, where they are to be kept; as a reading;
    /// what the store says.
    pub async fn find_soft_side(&self, number: i64, slot: i64, find: &FindSoftSide) -> Result<SoftSideKept, AppError> {
        let found = match (&find.sweep, &find.pluck) {
            (Some(sweep), None) => of_sweep(sweep)?,
            (None, Some(recording)) => of_pluck(recording)?,
            _ => return Err(AppError::invalid(SoftSideFault::OneOfTwo)),
        };
        let file = self.job_file(number).await?;
        let club = file.club_at(slot)?;
        if !find.keep {
            return Ok(SoftSideKept { found, reading: None });
        }
        need_name(&find.by)?;
        let step = file.job.steps_of(club).find(|step| step.asks.contains(&What::SoftSide));
        let step =
            step.ok_or_else(|| AppError::conflict(SoftSideFault::NotAsked { number: club.target.number.clone() }))?;
        let Some(read) = found.read() else { return Err(AppError::invalid(SoftSideFault::NothingToMark)) };
        let entry = Entry {
            what: What::SoftSide,
            typed: read.written(),
            value: Some(read.at_deg),
            pivot_mm: None,
            again: false,
        };
        let new = NewReadings {
            slot,
            step: step.key.clone(),
            entries: vec![entry],
            on: None,
            by: find.by.clone(),
            version: None,
            seen: Vec::new(),
            at: None,
            reason: None,
            request_key: None,
        };
        let kept = self.read(number, &new).await?;
        Ok(SoftSideKept { found, reading: kept.readings.into_iter().last() })
    }

    /// Whether a finished club swings as its soft side was to be turned. The readings are kept in the job's log.
    ///
    /// # Errors
    /// No such job or club; frequencies that no club has; nobody named; what the store says.
    pub async fn two_planes(&self, number: i64, slot: i64, read: &ReadTwoPlanes) -> Result<TwoPlanesRead, AppError> {
        need_name(&read.by)?;
        for cpm in [read.along_line_cpm, read.heel_toe_cpm] {
            check_value(What::Cpm, cpm)?;
        }
        let mut tx = self.store.write().await?.signed(&read.by);
        let file = self.kept_job(&mut tx, number).await?;
        let club = file.club_at(slot)?;
        let noise_cpm = read_on(&file.shop, &file.learned, What::Cpm, 0.0, 1).map_or(0.0, |on| on.noise_sd);
        let say = two_planes(club.target.soft_side, read.along_line_cpm, read.heel_toe_cpm, noise_cpm);
        let note = serde_json::json!({ "along_line_cpm": read.along_line_cpm, "heel_toe_cpm": read.heel_toe_cpm, "says": say.told() });
        self.log(&mut tx, Some(&file.job.id), Some(&club.id), EventKind::TwoPlanesRead, &read.by, note).await?;
        tx.commit().await?;
        Ok(TwoPlanesRead { says: say.told(), least_cpm: least_difference_cpm(noise_cpm) })
    }
}

fact::facts! {
    /// What is refused of a soft side.
    pub(crate) enum SoftSideFault: "soft_side_fault" {
        OneOfTwo,
        NotAsked { number: String },
        NothingToMark,
    }
}
