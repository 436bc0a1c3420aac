//! A club that was there before the job, beside the club that the work makes of it.
//!
//! The belief has both as clubs of their own: the club as it came and the club as it leaves. What stays on the club is one
//! and the same piece, so that its deviations are shared by both: a reading of the club as it came narrows what is known
//! of the club as it leaves, and the other way round. All deviations of the club as it came are shared ones, so that the
//! change of a quantity by the work can be asked for as a difference (`estimation::Probe::less_club`).

use super::{Assembly, CUT_SD_MM, Shared, inch};
use estimation::{Club, OnClub, Prior, Probe, Share};
use std::collections::BTreeMap;
use trade::error::TradeError;
use trade::id::ClubId;
use trade::job::{ClubWork, JobClub};
use trade::kind::Role;
use trade::model::PartKind;
use trade::plan::ClubPlan;
use trade::sheet::SheetClub;

/// Whether a club of the belief is a club as it came.
pub(super) fn is_view(club: &JobClub) -> bool {
    club.id.0.ends_with(":came")
}

impl Assembly<'_> {
    /// The club of the belief; for work on a club that was there before, the club as it came first.
    pub(super) fn with_the_club_as_it_came(
        &self,
        club: &JobClub,
        plan: &ClubPlan,
        shared: &mut Shared,
    ) -> Result<Vec<Club>, TradeError> {
        let mut leaves = self.club(club, plan, shared)?;
        let (Some(work), Some(view)) = (&club.work, club.as_it_came()) else { return Ok(vec![leaves]) };
        let mut came = self.club(&view, &work.came.pieces, shared)?;
        let mut tie = Tie { id: club.id.0.as_str(), shared };
        let keys = tie.share_all(&mut came);
        tie.keep(work, plan, &keys, &mut leaves);
        Ok(vec![came, leaves])
    }

    /// The change of the swing weight by the work, where a club keeps what it came with.
    pub(crate) fn change_probe(&self, club: &ClubId, finish: Probe) -> Option<Probe> {
        let found = self.job.club(club)?;
        found.work.as_ref().filter(|work| work.keeps_swing_weight)?;
        Some(finish.less_club(found.came_id().0, OnClub::finished()))
    }

    /// What a club's finish is to be, as it is asked for: what a club keeps is asked for as a change, which is to be nothing.
    pub(crate) fn asked_of(&self, finish: &Probe, target: &SheetClub) -> f64 {
        if finish.less_club.is_some() { 0.0 } else { target.swing_weight_points }
    }
}

/// The names of the shared deviations of a club as it came: of each piece of a role its mass and its arm.
type Keys = BTreeMap<(Role, usize), (Option<String>, Option<String>)>;

struct Tie<'a> {
    id: &'a str,
    shared: &'a mut Shared,
}

impl Tie<'_> {
    /// Turns the deviation that a value has of its own into a shared one.
    fn share(&mut self, prior: &mut Prior, name: &str) -> Option<String> {
        if prior.piece_sd <= 0.0 {
            return None;
        }
        let key = self.shared.key(format!("came:{}:{name}", self.id), prior.piece_sd);
        prior.piece_sd = 0.0;
        prior.shared.push(Share { key: key.clone(), gain: 1.0 });
        Some(key)
    }

    fn share_all(&mut self, came: &mut Club) -> Keys {
        let mut keys = Keys::new();
        let mut seen: BTreeMap<Role, usize> = BTreeMap::new();
        for piece in &mut came.pieces {
            let place = seen.entry(piece.role).or_default();
            let name = format!("{}:{place}", piece.role.key());
            let mass = self.share(&mut piece.mass_g, &format!("{name}:mass"));
            let arm = self.share(&mut piece.arm_in, &format!("{name}:arm"));
            keys.insert((piece.role, *place), (mass, arm));
            *place += 1;
        }
        self.share(&mut came.cap_in, "cap");
        if came.length_sd_in > 0.0 {
            let key = self.shared.key(format!("came:{}:length", self.id), came.length_sd_in);
            came.length_sd_in = 0.0;
            came.length_shared.push(Share { key, gain: 1.0 });
        }
        keys
    }

    /// What stays on the club has the deviations of the club as it came.
    fn keep(&mut self, work: &ClubWork, plan: &ClubPlan, keys: &Keys, leaves: &mut Club) {
        let mut seen: BTreeMap<Role, usize> = BTreeMap::new();
        for piece in &mut leaves.pieces {
            let place = seen.entry(piece.role).or_default();
            let at = (piece.role, *place);
            *place += 1;
            let Some((mass, arm)) = keys.get(&at).filter(|_| stays(work, plan, at)) else { continue };
            same(&mut piece.mass_g, mass);
            same(&mut piece.arm_in, arm);
        }
        if work.keeps(plan, PartKind::Grip) {
            same(&mut leaves.cap_in, &Some(format!("came:{}:cap", self.id)));
        }
        if work.keeps(plan, PartKind::Shaft) {
            // A cut or an extension adds its own error to the length that the club came with.
            let changed = (plan.cut_shaft_mm - work.came.pieces.cut_shaft_mm).abs() > 0.05;
            leaves.length_sd_in = if changed { inch(CUT_SD_MM) } else { 0.0 };
            leaves.length_shared.push(Share { key: format!("came:{}:length", self.id), gain: 1.0 });
        }
    }
}

fn same(prior: &mut Prior, key: &Option<String>) {
    if let Some(key) = key {
        prior.piece_sd = 0.0;
        prior.shared.push(Share { key: key.clone(), gain: 1.0 });
    }
}

/// Whether a piece of a role, by its place among those of its role, is one that the club came with.
fn stays(work: &ClubWork, plan: &ClubPlan, (role, place): (Role, usize)) -> bool {
    match role {
        Role::Head => work.keeps(plan, PartKind::Head),
        Role::Adapter => work.keeps(plan, PartKind::Adapter),
        Role::Shaft => work.keeps(plan, PartKind::Shaft),
        Role::Adhesive => work.keeps_joint(plan),
        Role::Ferrule | Role::Turnings => {
            work.keeps(plan, PartKind::Ferrule) && work.keeps(plan, PartKind::Head) && work.keeps(plan, PartKind::Shaft)
        }
        Role::TipWeight => work.keeps(plan, PartKind::TipWeight) && work.keeps(plan, PartKind::Shaft),
        Role::Grip | Role::Tape => work.keeps(plan, PartKind::Grip),
        // What was on it comes first in the list of what was added.
        Role::Extra => place < work.came.pieces.extras.len(),
        Role::Screw | Role::Solvent => false,
    }
}
