//! What hangs on the beam: each piece of a club with its mass, its arm and its points, as believed now.

use crate::belief::{Believed, points_per_g};
use crate::error::WorkshopError;
use crate::id::ClubId;
use crate::kind::Role;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// One piece on the beam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct BeamPart {
    /// What it is.
    pub role: Role,
    /// Mass.
    pub mass_g: f64,
    /// Arm from the butt end of the shaft.
    pub arm_mm: f64,
    /// What it adds to the reading of the finished club, points.
    pub points: f64,
    /// Whether it is on the club at this step.
    pub on: bool,
}

/// The pieces of one club as they hang on the beam at a step.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn beam_parts(believed: &Believed<'_>, club: &ClubId, on: &[Role]) -> Result<Vec<BeamPart>, WorkshopError> {
    let Some(found) = believed.assembly.job.club(club) else { return Ok(Vec::new()) };
    let cap_mm = believed.assembly.library.grip(&found.target.grip_model)?.cap_mm;
    let mut parts = Vec::new();
    for role in
        [Role::Head, Role::Adapter, Role::Shaft, Role::Ferrule, Role::TipWeight, Role::Adhesive, Role::Tape, Role::Grip]
    {
        if let Some((mass_g, arm_mm)) = believed.piece(club, role)? {
            let from_stop_mm = if role == Role::Grip { arm_mm } else { arm_mm + cap_mm };
            parts.push(BeamPart {
                role,
                mass_g,
                arm_mm: from_stop_mm - cap_mm,
                points: mass_g * points_per_g(from_stop_mm),
                on: on.contains(&role),
            });
        }
    }
    Ok(parts)
}
