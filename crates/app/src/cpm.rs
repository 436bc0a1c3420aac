//! The frequencies of a set, and the tip trims that bring its clubs to a slope.

use crate::{App, AppError};
use bench::trim_to_cpm::{STEP_CPM, SetCpm, Slope, SlopeAsked, set_cpm};
use trade::error::TradeError;
use trade::reading::What;

/// The slope of a set as somebody asks for it; what is left out is as usual for the job.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct AskCpm {
    /// Which law; none: what the sheet asks, or the usual step where it asks nothing.
    pub slope: Option<Slope>,
    /// Cycles a minute for a half inch less of length.
    pub step_cpm: Option<f64>,
    /// What the first club of the tray is to read.
    pub level_cpm: Option<f64>,
}

/// Steps of a set beyond this are slips of the key, cycles a half inch.
const STEP_MOST_CPM: f64 = 30.0;

impl App {
    /// What each club of a job will read in the clamp, what it is to read, and the tip trim that brings it there.
    ///
    /// # Errors
    /// No such job; a slope that no set has; figures that the belief cannot work with; what the store says.
    pub async fn set_cpm(&self, number: i64, ask: AskCpm) -> Result<SetCpm, AppError> {
        let job = self.job_file(number).await?;
        let usual = SlopeAsked::usual(&job.job);
        let limit = |name: &str, value: Option<f64>, low: f64, high: f64| -> Result<(), TradeError> {
            value.map_or(Ok(()), |value| trade::error::within(name, value, low, high, "cpm").map(|_| ()))
        };
        let (low, high) = What::Cpm.possible();
        limit("level_cpm", ask.level_cpm, low, high)?;
        limit("step_cpm", ask.step_cpm, -STEP_MOST_CPM, STEP_MOST_CPM)?;
        let asked = SlopeAsked {
            slope: ask.slope.unwrap_or(usual.slope),
            step_cpm: ask.step_cpm.unwrap_or(STEP_CPM),
            level_cpm: ask.level_cpm,
        };
        Ok(set_cpm(&job.believe()?, asked)?)
    }
}
