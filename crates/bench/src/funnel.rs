//! The funnel: where a club was seen to finish after each stage, and how narrow the stages to come will make it.

use crate::belief::{BAND_95, Believed};
use estimation::{NO_DOUBT, Probe};
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::id::ClubId;
use trade::reading::{Reading, What};
use utoipa::ToSchema;

/// One stage of the funnel: a step that reads the swing weight.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct FunnelPoint {
    /// Key of the step.
    pub step: String,
    /// What the builder calls it.
    pub label: String,
    /// Finish minus target as seen at this stage, points; for stages to come, as seen now.
    pub deviation_points: f64,
    /// Half width of its 95 % band at this stage; for stages to come, what the readings up to it would leave.
    pub band_points: f64,
    /// Where the reading of this stage alone points, finish minus target; none where nothing was read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reading_points: Option<f64>,
    /// Whether that reading is doubted.
    pub doubted: bool,
}

impl Believed<'_> {
    /// The funnel of one club; empty without a plan or without a step that reads the swing weight.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn funnel(&self, club: &ClubId) -> Result<Vec<FunnelPoint>, TradeError> {
        let job = self.assembly.job;
        let (Some(found), Some(finish)) = (job.club(club), self.finish(club)?) else { return Ok(Vec::new()) };
        let target = found.target.swing_weight_points;
        let model = self.assembly.job_model()?;
        let probe = self.assembly.finish_probe(club);
        let standing = self.standing();
        let place = |step: &str| job.steps.iter().position(|s| s.key == step);
        let mut points = Vec::new();
        let mut planned: Vec<(Probe, f64)> = Vec::new();
        for (at, step) in job.steps.iter().enumerate().filter(|(_, s)| s.asks.contains(&What::SwingWeight)) {
            let read: Option<&Reading> = standing
                .iter()
                .rev()
                .find(|r| r.club == *club && r.step == step.key && r.what == What::SwingWeight)
                .copied();
            let point = if let Some(reading) = read {
                let so_far: Vec<Reading> = standing
                    .iter()
                    .filter(|r| place(&r.step).is_some_and(|p| p <= at) && !self.is_doubted(&r.id))
                    .map(|r| Reading::clone(r))
                    .collect();
                let mut seen = self.assembly.observations(&so_far);
                seen.retain(|o| !self.is_set_aside(&o.id));
                let then = self.assembly.weigh_up(&model, &seen, NO_DOUBT)?.forecast(|belief| belief.answer(&probe))?;
                let expected = self.expected(club, What::SwingWeight, &reading.on)?.map_or(reading.value, |e| e.value);
                FunnelPoint {
                    step: step.key.clone(),
                    label: step.label.clone(),
                    deviation_points: then.mean - target,
                    band_points: BAND_95 * then.sd,
                    reading_points: Some(finish.deviation_points + reading.value - expected),
                    doubted: self.is_doubted(&reading.id),
                }
            } else {
                planned.push(self.assembly.swing_weight_reading(found, &step.on));
                FunnelPoint {
                    step: step.key.clone(),
                    label: step.label.clone(),
                    deviation_points: finish.deviation_points,
                    band_points: BAND_95 * self.sd_after(&probe, &planned)?,
                    reading_points: None,
                    doubted: false,
                }
            };
            points.push(point);
        }
        Ok(points)
    }
}
