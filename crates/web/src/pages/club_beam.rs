//! A club of a job on the beam.

use super::bench::club_name;
use app::job::JobFile;
use bench::beam::BeamPart;
use bench::belief::Finish;
use look::{BeamPiece, BeamView, ClubShape, PieceKind, beam};
use maud::Markup;
use quantity::INCH_MM;
use trade::job::JobClub;
use trade::kind::ClubKind;
use trade::kind::Role;
use words::Words;

/// The club with what hangs on it, where it stands now and where it will finish.
pub(super) fn club_beam(
    w: &Words,
    file: &JobFile,
    club: &JobClub,
    pieces: Vec<BeamPart>,
    now_points: Option<f64>,
    finish: Option<Finish>,
) -> Markup {
    let plan_ground = club.plan.as_ref().map_or(0.0, |p| p.cut_shaft_mm + p.tip_to_ground_mm);
    let cap_mm = file.library.grip(&club.target.grip_model).map_or(3.0, |g| g.cap_mm);
    beam(
        w,
        &BeamView {
            id: format!("beam-{}", club.slot),
            club: club_name(w, club),
            shape: shape_of(club.target.club_kind),
            length_in: plan_ground / INCH_MM,
            cap_in: cap_mm / INCH_MM,
            pieces: pieces
                .into_iter()
                .map(|p| BeamPiece {
                    label: piece_name(w, p.role),
                    mass_g: p.mass_g,
                    arm_in: p.arm_mm / INCH_MM,
                    points: p.points,
                    on: p.on,
                    kind: piece_kind(p.role),
                })
                .collect(),
            now_points,
            forecast_points: finish.map(|f| f.swing_weight_points),
            forecast_band_points: finish.map_or(0.0, |f| f.band_points),
            target_points: (!club.target.swing_weight_free).then_some(club.target.swing_weight_points),
            tolerance_points: club.target.tolerances.swing_weight_points,
            slim: true,
            ..BeamView::default()
        },
    )
}

/// What hangs on the beam, by its name.
pub(super) fn piece_name(w: &Words, role: Role) -> String {
    w.text(&format!("beam-piece-{}", role.key().replace('_', "-")))
}

fn piece_kind(role: Role) -> PieceKind {
    match role {
        Role::Head => PieceKind::Head,
        Role::Adapter => PieceKind::Adapter,
        Role::Shaft => PieceKind::Shaft,
        Role::Ferrule => PieceKind::Ferrule,
        Role::TipWeight => PieceKind::TipWeight,
        Role::Adhesive => PieceKind::Adhesive,
        Role::Tape => PieceKind::Tape,
        Role::Grip => PieceKind::Grip,
        Role::Screw | Role::Turnings | Role::Solvent | Role::Extra => PieceKind::Other,
    }
}

/// The outline that a kind of club is drawn with.
pub(super) fn shape_of(kind: ClubKind) -> ClubShape {
    match kind {
        ClubKind::Wood => ClubShape::Wood,
        ClubKind::Hybrid => ClubShape::Hybrid,
        ClubKind::Iron => ClubShape::Iron,
        ClubKind::Wedge => ClubShape::Wedge,
        ClubKind::Putter => ClubShape::Putter,
    }
}
