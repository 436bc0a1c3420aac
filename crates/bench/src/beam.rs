//! What hangs on the beam: each piece of a club with its mass, its arm and its points, as believed now.

use crate::belief::Believed;
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::id::ClubId;
use trade::kind::Role;
use trade::swing_weight::points_per_g;
use utoipa::ToSchema;

/// One piece on the beam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct BeamPart {
    /// What the piece is for the club: head, shaft, tip weight, grip …
    pub role: Role,
    /// What it weighs, as believed now.
    pub mass_g: f64,
    /// Arm from the butt end of the shaft.
    pub arm_mm: f64,
    /// What it adds to the reading of the finished club, points.
    pub points: f64,
    /// Whether it is on the club at this step.
    pub on: bool,
}

/// What a change of masses would move, points.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Moved {
    /// Of the club as it is at the step.
    pub now_points: f64,
    /// Of the finished club.
    pub finish_points: f64,
}

/// Hangs other masses in the place of those planned, for a look at what they would do: role and mass in grams. Each
/// keeps its arm, so that its points go with its mass (the moment is mass times arm less the fulcrum's, US patent
/// 1,953,916). A tip weight where none is planned hangs where the adhesive is, beside it. Roles that the club has not,
/// and masses below 0, change nothing.
pub fn what_if(parts: &mut Vec<BeamPart>, masses: &[(Role, f64)]) -> Moved {
    let mut moved = Moved::default();
    for &(role, mass_g) in masses {
        if !(mass_g.is_finite() && mass_g >= 0.0) {
            continue;
        }
        let like = |wanted: Role| parts.iter().position(|p| p.role == wanted && p.mass_g > 0.0);
        let (at, was_points) = match (like(role), role) {
            (Some(at), _) => (at, parts[at].points),
            (None, Role::TipWeight) => {
                let Some(beside) = like(Role::Adhesive) else { continue };
                parts.insert(beside, BeamPart { role, ..parts[beside].clone() });
                (beside, 0.0)
            }
            _ => continue,
        };
        let piece = &mut parts[at];
        let points = mass_g * piece.points / piece.mass_g;
        moved.finish_points += points - was_points;
        if piece.on {
            moved.now_points += points - was_points;
        }
        (piece.mass_g, piece.points) = (mass_g, points);
    }
    moved
}

/// The pieces of one club as they hang on the beam at a step.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn beam_parts(believed: &Believed<'_>, club: &ClubId, on: &[Role]) -> Result<Vec<BeamPart>, TradeError> {
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

#[cfg(test)]
mod tests {
    use super::*;

    fn piece(role: Role, mass_g: f64, points: f64, on: bool) -> BeamPart {
        BeamPart { role, mass_g, arm_mm: 900.0, points, on }
    }

    #[test]
    fn another_mass_moves_the_club_by_its_own_points() {
        let mut parts = vec![
            piece(Role::Head, 250.0, 125.0, true),
            piece(Role::Adhesive, 1.6, 0.72, false),
            piece(Role::Grip, 50.0, -10.0, false),
        ];
        // A head 4 g heavier is 2 points more, now and at the end; a grip 5 g heavier is a point less, at the end only
        // (by hand from the points a gram above: 0.5 and -0.2).
        let moved = what_if(&mut parts, &[(Role::Head, 254.0), (Role::Grip, 55.0)]);
        assert!((moved.now_points - 2.0).abs() < 1e-12 && (moved.finish_points - 1.0).abs() < 1e-12, "{moved:?}");
        assert_eq!((parts[0].mass_g, parts[2].mass_g), (254.0, 55.0));
        // A weight where none was: 0.45 points a gram, as the adhesive beside it.
        let moved = what_if(&mut parts, &[(Role::TipWeight, 2.0)]);
        assert!((moved.finish_points - 0.9).abs() < 1e-12 && moved.now_points == 0.0, "{moved:?}");
        assert_eq!(parts.iter().filter(|p| p.role == Role::TipWeight).count(), 1);
        assert_eq!(parts.iter().find(|p| p.role == Role::Adhesive).map(|p| p.mass_g), Some(1.6));
        // What cannot be changes nothing.
        let before = parts.clone();
        let moved = what_if(&mut parts, &[(Role::Adapter, 3.0), (Role::Head, f64::NAN), (Role::Grip, -1.0)]);
        assert_eq!((moved, &parts), (Moved::default(), &before));
    }
}
