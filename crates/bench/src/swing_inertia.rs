//! Swing inertia: the moment of inertia of a finished club about its butt, from the same pieces as the swing weight, with its
//! band; what a timed swing tells of it; and clubs that are to be equal in it.
//!
//! A club whose sheet asks an inertia is aimed at it with its swing weight: the swing weight that it has once so much mass is added
//! at or taken off the head that the inertia is right. A tolerance of the swing weight is then one of the inertia, by what the same
//! mass at the head does to both; and a mass anywhere else counts by what it does to the inertia, so that a lighter grip, which
//! moves the swing weight and hardly the inertia, helps nothing.

use crate::assembly::Assembly;
use crate::assembly::inertia::KG_CM2_PER_G_IN2;
use crate::belief::{BAND_95, Believed, finished_inertia};
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::id::ClubId;
use trade::job::{Job, JobClub};
use trade::places::HEAD_INERTIA_KG_CM2;
use trade::reading::{Reading, What};
use utoipa::ToSchema;

/// The swing inertia of a club as it will be finished.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct SwingInertia {
    /// Moment of inertia about the butt end, where the cap touches the stop of the scale.
    pub value_kg_cm2: f64,
    /// Half width of its 95 % band.
    pub band_kg_cm2: f64,
    /// What the sheet asks, where it asks for one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub target_kg_cm2: Option<f64>,
    /// How far from that is still good: what the tolerance of the swing weight is at the head.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tolerance_kg_cm2: Option<f64>,
    /// How many timed swings and readings of an inertia stand of it.
    pub readings: usize,
}

impl Assembly<'_> {
    /// The job with the swing weights of the clubs whose sheet asks an inertia, as they are believed after these readings; none
    /// where no club with a plan is asked for one.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn aimed_by_inertia(&self, readings: &[Reading]) -> Result<Option<Job>, TradeError> {
        let asked = |club: &JobClub| club.target.inertia_kg_cm2.is_some() && club.plan.is_some();
        if !self.job.clubs.iter().any(asked) {
            return Ok(None);
        }
        let believed = self.believe(readings)?;
        let mut job = self.job.clone();
        for club in job.clubs.iter_mut().filter(|club| asked(club)) {
            let probe = self.finish_probe(&club.id);
            let now_points = believed.mixture().forecast(|belief| belief.answer(&probe))?.mean;
            if let Some(off) = believed.off_inertia(club)? {
                club.target.swing_weight_points = now_points - off.as_one().mean;
            }
        }
        Ok(Some(job))
    }
}

impl Believed<'_> {
    /// The swing inertia of a club as it will be finished; none for a club without a plan.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn swing_inertia(&self, club: &ClubId) -> Result<Option<SwingInertia>, TradeError> {
        let Some(found) = self.assembly.job.club(club).filter(|club| club.plan.is_some()) else { return Ok(None) };
        let forecast = self.mixture().forecast(|belief| belief.answer(&finished_inertia(club)))?;
        let aim = self.assembly.inertia_aim(found)?;
        let told = |r: &&&Reading| {
            r.club == *club && matches!(r.what, What::SwingPeriod | What::SwingInertia) && !self.is_doubted(&r.id)
        };
        Ok(Some(SwingInertia {
            value_kg_cm2: forecast.mean * KG_CM2_PER_G_IN2,
            band_kg_cm2: BAND_95 * (forecast.sd * KG_CM2_PER_G_IN2).hypot(HEAD_INERTIA_KG_CM2.1),
            target_kg_cm2: aim.map(|aim| aim.target_kg_cm2),
            tolerance_kg_cm2: aim
                .filter(|_| !found.target.swing_weight_free)
                .map(|aim| found.target.tolerances.swing_weight_points / aim.points_per_kg_cm2),
            readings: self.standing().iter().filter(told).count(),
        }))
    }
}
