//! What can still be done about a club that will not finish where it should, from what is really there.
//!
//! Every action that is still possible at this point of the club is judged by the chance of finishing in tolerance
//! *with the choices still to come*: a tip weight by what the spare grips can still correct after the cure reading, a
//! grip by what its use leaves for the other clubs of the set. Then by grams, total mass, inertia and whether it can be
//! undone.

mod before_glue;
mod grips;
mod help;
mod late;
mod progress;
mod says;

pub(crate) use grips::pool_of;
pub use grips::{GripPick, assign_grips};
pub(crate) use help::WORTH_DOING;
pub use help::{Ranking, ranking, remedies_that_help};
pub use late::{check_extra, place_of};
pub use progress::Progress;
pub use progress::cure_step;
pub use says::{Deed, RemedySays};

use crate::belief::{Believed, Finish};
use crate::chance::Chance;
use crate::club_state::ClubState;
use serde::Serialize;
use trade::action::Action;
use trade::error::TradeError;
use trade::job::JobClub;
use trade::model::PartKind;
use trade::part::Part;
use trade::part_codes::PartCodes;
use trade::places::Places;
use trade::plan::ClubPlan;
use utoipa::ToSchema;

/// A free part that could take the place of a planned one.
#[derive(Debug, Clone, Copy)]
pub struct Spare<'a> {
    /// The part, or the bulk it would come from.
    pub part: &'a Part,
    /// The mass to count with: its own, or its model's.
    pub mass_g: f64,
}

/// One thing that can still be done.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Remedy {
    /// What is done.
    pub action: Action,
    /// Which part of the plan changes; none for what is added to it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kind: Option<PartKind>,
    /// Code of the part to take, or of two tip weights; none where one is left out or none is needed.
    pub code: PartCodes,
    /// Grams more (or less) on the club than now.
    pub more_g: f64,
    /// What that adds to the inertia about the butt.
    pub more_inertia_kg_cm2: f64,
    /// Where the club would finish, with what is planned after it as it is.
    pub finish: Finish,
    /// Chance of finishing in tolerance with the choices still to come.
    pub chance_at_end: f64,
    /// Clubs of the set expected in tolerance if it is taken, where it takes something from the others.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub set_inside: Option<f64>,
    /// About how many minutes it takes.
    pub minutes: f64,
    /// Whether it can be undone without loss.
    pub can_be_undone: bool,
    /// What is done and where it leads.
    pub fact: RemedySays,
}

/// Everything that the judging of one club's remedies needs.
pub(crate) struct Case<'a> {
    pub believed: &'a Believed<'a>,
    pub club: &'a JobClub,
    pub plan: &'a ClubPlan,
    pub finish: Finish,
    pub spares: &'a [Spare<'a>],
    pub progress: Progress,
}

/// What can still be done at this point of the club, the best first; empty where nothing is open.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn remedies(believed: &Believed<'_>, state: &ClubState, spares: &[Spare<'_>]) -> Result<Vec<Remedy>, TradeError> {
    Case::of(believed, state, spares).map_or_else(|| Ok(Vec::new()), |case| case.remedies())
}

/// Chance that a club finishes in tolerance if nothing is changed now, with the choices still to come.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn chance_ahead(
    believed: &Believed<'_>,
    state: &ClubState,
    spares: &[Spare<'_>],
) -> Result<Option<f64>, TradeError> {
    Case::of(believed, state, spares).map(|case| case.chance_ahead()).transpose()
}

/// By the clubs expected inside in steps of half a hundredth, then another screw before anything else, by grams, effort, code.
fn rank(found: &mut [Remedy]) {
    // What cannot be undone must be worth two clubs in a hundred more.
    let final_cost = |r: &Remedy| if r.can_be_undone { 0.0 } else { 0.02 };
    let worth = |r: &Remedy| ((r.set_inside.unwrap_or(r.chance_at_end) - final_cost(r)) * 200.0).round();
    found.sort_by(|a, b| {
        worth(b)
            .total_cmp(&worth(a))
            .then((a.action != Action::Screw).cmp(&(b.action != Action::Screw)))
            .then(a.more_g.abs().total_cmp(&b.more_g.abs()))
            .then(a.minutes.total_cmp(&b.minutes))
            .then_with(|| a.code.cmp(&b.code))
    });
}

/// A change of the club by a mass at a place.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Change {
    pub more_g: f64,
    pub points: f64,
    /// Arm from the end that sits on the stop, mm.
    pub arm_mm: f64,
}

impl<'a> Case<'a> {
    /// None for a club without a plan.
    fn of(believed: &'a Believed<'a>, state: &ClubState, spares: &'a [Spare<'a>]) -> Option<Self> {
        let club = believed.assembly.job.club(&state.club)?;
        let (plan, finish) = (club.plan.as_ref()?, state.finish?);
        Some(Self { believed, club, plan, finish, spares, progress: Progress::of(believed, club) })
    }

    /// What can still be done, the best first.
    fn remedies(&self) -> Result<Vec<Remedy>, TradeError> {
        let mut found = if !self.progress.glued && self.believed.assembly.job.steps.iter().any(|s| s.glues) {
            before_glue::remedies(self)?
        } else if self.progress.gripped {
            late::gripped(self)?
        } else {
            let mut found = grips::remedies(self)?;
            found.extend(late::ungripped(self)?);
            found
        };
        rank(&mut found);
        Ok(found)
    }

    /// Chance of finishing in tolerance if nothing is changed now, with the choices still to come.
    fn chance_ahead(&self) -> Result<f64, TradeError> {
        if self.progress.gripped || self.progress.cure_read {
            return Ok(self.finish.chance);
        }
        Ok(before_glue::Ahead::of(self)?.chance(0.0))
    }

    /// A mass at an arm from the end that sits on the stop.
    pub fn change(&self, more_g: f64, arm_mm: f64) -> Result<Change, TradeError> {
        Ok(Change { more_g, points: more_g * self.per_g(arm_mm)?, arm_mm })
    }

    /// What a gram at an arm from the stop brings toward the aim, points.
    pub fn per_g(&self, arm_mm: f64) -> Result<f64, TradeError> {
        self.believed.assembly.effect_per_g(self.club, arm_mm)
    }

    /// Thickness of the grip's cap, mm.
    pub fn cap_mm(&self) -> Result<f64, TradeError> {
        Ok(self.believed.assembly.library.grip(&self.club.target.grip_model)?.cap_mm)
    }

    /// Where the pieces of the club lie.
    pub fn places(&self) -> Result<Places, TradeError> {
        let head = self.believed.assembly.library.head(&self.club.target.head_model)?;
        Ok(Places::of_plan(self.plan, head.bore_depth_mm))
    }

    /// Arm of the head's centre from the stop of the finished club, mm.
    pub fn head_arm_mm(&self) -> Result<f64, TradeError> {
        let head = self.believed.assembly.library.head(&self.club.target.head_model)?;
        Ok(self.places()?.head_mm(head.offset_prior_mm().0) + self.cap_mm()?)
    }

    /// A remedy; `chance_at_end` none: as the finish itself says.
    pub fn remedy(
        &self,
        action: Action,
        part: Option<(PartKind, PartCodes)>,
        change: Change,
        chance_at_end: Option<f64>,
        deed: Deed,
    ) -> Remedy {
        let finish = self.finish.moved(change.points);
        let chance = chance_at_end.unwrap_or(finish.chance);
        let (kind, code) = part.map_or((None, PartCodes::none()), |(kind, code)| (Some(kind), code));
        Remedy {
            action,
            kind,
            code,
            more_g: change.more_g,
            // 1 kg·cm² is 1e5 g·mm².
            more_inertia_kg_cm2: change.more_g * change.arm_mm * change.arm_mm * 1e-5,
            fact: says(deed, &finish, chance),
            finish,
            chance_at_end: chance,
            set_inside: None,
            minutes: action.minutes(),
            can_be_undone: action.can_be_undone(),
        }
    }
}

/// Where a deed leads. A finish that only another grip brings home is not told as if it were the end.
fn says(deed: Deed, finish: &Finish, chance: f64) -> RemedySays {
    /// So much of the chance must come from the choice of grips for them to be named.
    const BY_GRIP: f64 = 0.05;
    let off_points = finish.deviation_points;
    let chance_said = Chance::of(chance);
    match chance >= finish.chance + BY_GRIP {
        true if off_points > finish.tolerance_points => RemedySays::ThenHeavierGrip { deed, chance: chance_said },
        true if off_points < -finish.tolerance_points => RemedySays::ThenLighterGrip { deed, chance: chance_said },
        _ => RemedySays::Finish { deed, finish_points: finish.swing_weight_points, chance: chance_said },
    }
}
