//! Planning: propose from what is free, hold it when accepted, put another part in place of a planned one.

use crate::job::JobFile;
use crate::kept_job::KeptJob;
use crate::look_up::LookUp;
use crate::needs::{PlanStock, lines_for};
use crate::{App, AppError};
use bench::remedy;
use bench::trim_to_cpm::with_tip_trim;
use desk::club_work::pieces_of;
use desk::order::Wanted;
use desk::planner::{self, Lines, Lock, Picks};
use fact::{Fact, Told};
use serde::{Deserialize, Serialize};
use store::Tx;
use trade::action::Action;
use trade::because::{self, Because};
use trade::error::Noun;
use trade::event_kind::EventKind;
use trade::id::ClubId;
use trade::job::{ClubWork, Job, JobClub, JobState};
use trade::life::LifeStep;
use trade::model::PartKind;
use trade::part::{Part, PartState};
use trade::part_codes::PartCodes;
use trade::plan::{ClubPlan, Extra, Plan, PlannedPart};
use trade::reading::{Reading, standing};
use utoipa::ToSchema;

/// A proposed plan and the mark by which it is accepted.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct Proposal {
    /// The parts proposed for each club; nothing is kept until the plan is accepted.
    pub plan: Plan,
    /// Send this back to accept exactly this plan.
    pub fingerprint: String,
}

/// Accepting a proposal.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Accept {
    /// The mark of the proposal that was looked at.
    pub fingerprint: String,
    /// The locks that it was made with.
    #[serde(default)]
    pub locks: Vec<Lock>,
    /// Build what can be built and leave out what cannot.
    #[serde(default)]
    pub partly: bool,
    /// Why a neighbouring number's blank is used, where the plan uses one; the job keeps it.
    #[serde(default)]
    pub neighbour_reason: String,
    /// Who accepts.
    pub by: String,
}

/// Another part in place of a planned one.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Swap {
    /// What is changed.
    pub kind: PartKind,
    /// Code of the part to take, two tip weights joined by `+`; empty to leave a tip weight or ferrule out.
    #[serde(default)]
    pub code: PartCodes,
    /// Why, for the record.
    #[serde(default)]
    pub reason: String,
    /// Who.
    pub by: String,
    /// Version of the club that was looked at.
    #[serde(default)]
    pub version: Option<i64>,
}

/// Something added to a club beyond its parts.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AddExtra {
    /// What: lead tape, powder, counterweight or screw.
    pub action: Action,
    /// How much came on; negative for a lighter screw.
    pub mass_g: f64,
    /// Who.
    pub by: String,
    /// Version of the club that was looked at.
    #[serde(default)]
    pub version: Option<i64>,
}

impl App {
    /// Proposes a plan from the parts that are free now. Nothing is held yet.
    ///
    /// # Errors
    /// No such job; one that is planned already; models missing; a lock that cannot be kept; what the store says.
    pub async fn propose(&self, number: i64, locks: &[Lock]) -> Result<Proposal, AppError> {
        let mut tx = self.store.read().await?;
        let file = JobFile::load(&mut tx, number).await?;
        let stock = PlanStock::load(&mut tx, &[&file.job]).await?;
        self.proposal(&file, &stock, locks)
    }

    /// As [`Self::propose`], of a job that the caller has read already; and what the plan lacks, less what is ordered.
    ///
    /// # Errors
    /// As [`Self::propose`].
    pub async fn propose_for(&self, file: &JobFile, locks: &[Lock]) -> Result<(Proposal, Vec<Wanted>), AppError> {
        let mut tx = self.store.read().await?;
        let stock = PlanStock::load(&mut tx, &[&file.job]).await?;
        let proposal = self.proposal(file, &stock, locks)?;
        let wanted = crate::order::wanted_of(&mut tx, file, &proposal.plan, &stock.parts).await?;
        Ok((proposal, wanted))
    }

    fn proposal(&self, file: &JobFile, stock: &PlanStock, locks: &[Lock]) -> Result<Proposal, AppError> {
        need_open(file)?;
        let locks = planner::kept(&file.job, &stock.parts, locks);
        let plan = planner::propose_with(file.assembly(), stock.supply(), &locks, &mut |p| self.proven.set(p))?;
        Ok(Proposal { fingerprint: planner::fingerprint(&plan), plan })
    }

    /// Accepts a proposal: holds its parts, all or none.
    ///
    /// # Errors
    /// Stock that changed since the proposal; clubs without parts where `partly` is not set; what the store says.
    pub async fn accept(&self, number: i64, accept: &Accept) -> Result<Plan, AppError> {
        let mut tx = self.store.write().await?.signed(&accept.by);
        let file = JobFile::load(&mut tx, number).await?;
        let stock = PlanStock::load(&mut tx, &[&file.job]).await?;
        let Proposal { plan, fingerprint } = self.proposal(&file, &stock, &accept.locks)?;
        if fingerprint != accept.fingerprint {
            return Err(AppError::conflict(PlanFault::StockChanged));
        }
        need_built(&file, &plan, accept.partly)?;
        if plan.clubs.iter().flatten().any(|c| c.neighbour_blank.is_some()) {
            crate::need::need_reason(&accept.neighbour_reason)?;
        }
        let note = serde_json::json!({
            "fingerprint": accept.fingerprint, "neighbour_reason": accept.neighbour_reason.trim()
        });
        self.hold_plan(tx, &file.job, &plan, &accept.by, note).await?;
        Ok(plan)
    }

    /// Holds the parts of an accepted plan, all or none; the job goes to the bench.
    pub(crate) async fn hold_plan(
        &self,
        mut tx: Tx,
        job: &Job,
        plan: &Plan,
        by: &str,
        note: serde_json::Value,
    ) -> Result<(), AppError> {
        let now = self.now();
        // What was reserved by hand stays held where the plan uses it for the same club, and is free otherwise.
        let mut kept = Vec::new();
        for part in crate::needs::reserved(&mut tx, &job.id).await? {
            let planned_there = job.clubs.iter().zip(&plan.clubs).any(|(club, plan)| {
                part.club.as_ref() == Some(&club.id)
                    && plan.iter().flat_map(|p| &p.parts).any(|planned| planned.part == part.id)
            });
            if planned_there {
                kept.push(part.id);
            } else {
                tx.free_part(&part.id, LifeStep::Freed, Some(&Because::NotInPlan.told()), now).await?;
            }
        }
        for (club, club_plan) in job.clubs.iter().zip(&plan.clubs) {
            let Some(club_plan) = club_plan else { continue };
            for part in club_plan.parts.iter().filter(|p| !kept.contains(&p.part)) {
                tx.hold(&part.part, &job.id, &club.id, now).await?;
            }
            tx.save_club(&JobClub { plan: Some(club_plan.clone()), ..club.clone() }, &job.id).await?;
        }
        tx.save_job(&Job { state: JobState::Planned, ..job.clone() }).await?;
        self.log(&mut tx, Some(&job.id), None, EventKind::PlanAccepted, by, note).await?;
        tx.commit().await?;
        self.tell(Some(job.number), "plan");
        Ok(())
    }

    /// Puts another part in place of a planned one. The old one is free again; readings taken with it on the club are
    /// taken back with a reason, since they speak of a club that is not there any more. A part that another club of the
    /// job holds changes places with the planned one.
    ///
    /// # Errors
    /// A part that is not free or does not fit; a club without a plan; a version that is out of date.
    pub async fn swap(&self, number: i64, slot: i64, swap: &Swap) -> Result<ClubPlan, AppError> {
        let mut tx = self.store.write().await?.signed(&swap.by);
        let file = self.kept_job(&mut tx, number).await?;
        let club = file.club_at(slot)?;
        crate::need::need_version(club, swap.version)?;
        let (parts, partner) = picked(&mut tx, &file, club, swap).await?;
        let reason = Because::OtherPart { kind: swap.kind, reason: because::written(&swap.reason) }.told();
        let theirs = partner.iter().flat_map(|(_, parts)| parts);
        let lines = lines_for(&mut tx, &file.library, &file.shop.clamp, parts.iter().chain(theirs)).await?;
        let with = |club, parts: &[Part]| {
            let kinds = vec![(swap.kind, reason.clone())];
            Ok::<_, AppError>(Exchanged { club, plan: replan(&file, club, parts, &lines)?, kinds })
        };
        let mut changed = vec![with(club, &parts)?];
        if let Some((other, parts)) = &partner {
            changed.push(with(other, parts)?);
        }
        exchange(&mut tx, &file, &changed, &swap.by, self.now()).await?;
        for x in &changed {
            let note = serde_json::json!({ "kind": swap.kind.key(), "code": swap.code, "reason": swap.reason });
            self.log(&mut tx, Some(&file.job.id), Some(&x.club.id), EventKind::PartSwapped, &swap.by, note).await?;
        }
        tx.commit().await?;
        self.tell(Some(number), "plan");
        Ok(changed.swap_remove(0).plan)
    }

    /// Keeps what was added to a club beyond its parts: lead tape, powder, a plug in the butt, another screw. Readings
    /// from before it go on counting, moved by what is known of it.
    ///
    /// # Errors
    /// A mass that cannot be; something that is not added; a club without a plan; a version that is out of date.
    pub async fn add_extra(&self, number: i64, slot: i64, add: &AddExtra) -> Result<ClubPlan, AppError> {
        let mut tx = self.store.write().await?;
        let file = JobFile::load(&mut tx, number).await?;
        crate::need::need_at_bench(&file.job)?;
        let club = file.club_at(slot)?;
        crate::need::need_version(club, add.version)?;
        let mut plan = need_plan(&file, club)?.clone();
        let arm_mm = remedy::place_of(file.assembly(), club, add.action)?;
        remedy::check_extra(add.action, add.mass_g)?;
        plan.extras.push(Extra { action: add.action, mass_g: add.mass_g, arm_mm, at: self.now() });
        tx.save_club(&JobClub { plan: Some(plan.clone()), ..club.clone() }, &file.job.id).await?;
        let note = serde_json::json!({ "action": add.action.key(), "mass_g": add.mass_g });
        self.log(&mut tx, Some(&file.job.id), Some(&club.id), EventKind::ExtraAdded, &add.by, note).await?;
        tx.commit().await?;
        self.tell(Some(number), "plan");
        Ok(plan)
    }
}

/// Something must be built, and everything unless that is not asked for.
pub(crate) fn need_built(file: &JobFile, plan: &Plan, partly: bool) -> Result<(), AppError> {
    let clubs = file.job.clubs.iter().zip(&plan.clubs);
    let lacking: Vec<&str> = clubs.filter(|(_, p)| p.is_none()).map(|(c, _)| c.target.number.as_str()).collect();
    if lacking.len() == file.job.clubs.len() || (!partly && !lacking.is_empty()) {
        return Err(AppError::conflict(PlanFault::Lacking {
            clubs: lacking.iter().map(|n| (*n).to_owned()).collect(),
        }));
    }
    Ok(())
}

/// A club with its new plan, and of which kinds it has other parts now.
pub(crate) struct Exchanged<'a> {
    /// The club as it was.
    pub club: &'a JobClub,
    /// Its new plan.
    pub plan: ClubPlan,
    /// Kinds that changed, each with why readings taken with the old part are taken back.
    pub kinds: Vec<(PartKind, Told)>,
}

/// Puts other parts in place of planned ones, all or none: the old are free, the new held, and readings that speak of a
/// club that is not there any more are taken back.
pub(crate) async fn exchange(
    tx: &mut Tx,
    file: &JobFile,
    changed: &[Exchanged<'_>],
    by: &str,
    now: jiff::Timestamp,
) -> Result<(), AppError> {
    // Clubs may change places with a part, so all are free before any is held.
    for x in changed {
        tx.release_club(&x.club.id, now).await?;
    }
    for x in changed {
        let changed = JobClub { plan: Some(x.plan.clone()), ..x.club.clone() };
        for part in changed.parts_from_stock() {
            tx.hold(part, &file.job.id, &x.club.id, now).await?;
        }
        tx.save_club(&changed, &file.job.id).await?;
        for (kind, reason) in &x.kinds {
            for reading in outdated(&file.job, &file.readings, &x.club.id, *kind) {
                tx.take_back(&reading.id, reason, by, now).await?;
            }
        }
    }
    Ok(())
}

fn need_plan<'a>(file: &JobFile, club: &'a JobClub) -> Result<&'a ClubPlan, AppError> {
    club.plan.as_ref().ok_or_else(|| AppError::conflict(PlanFault::NoPlan { slot: club.slot, job: file.job.number }))
}

type Partner<'a> = Option<(&'a JobClub, Vec<Part>)>;

/// The parts of a club's plan after a swap, and those of the club that it changes places with, if any.
async fn picked<'a>(
    tx: &mut Tx,
    file: &'a KeptJob,
    club: &JobClub,
    swap: &Swap,
) -> Result<(Vec<Part>, Partner<'a>), AppError> {
    let plan = need_plan(file, club)?;
    let (mut parts, old) = split(tx, club, plan, swap.kind).await?;
    let optional = matches!(swap.kind, PartKind::TipWeight | PartKind::Ferrule);
    if swap.code.is_empty() && !optional {
        return Err(AppError::invalid(PlanFault::NeedsPart { kind: swap.kind }));
    }
    if swap.code.len() > if swap.kind == PartKind::TipWeight { 2 } else { 1 } {
        return Err(AppError::invalid(PlanFault::TooMany { code: swap.code.to_string() }));
    }
    let mut partner = None;
    for code in swap.code.iter() {
        let part =
            tx.part_by_code(code).await?.ok_or_else(|| AppError::not_found(Noun::Part, code, &LookUp::OnLabel))?;
        let of_job = part.state == PartState::Held && part.job.as_ref() == Some(&file.job.id);
        if part.kind != swap.kind || !(part.is_free() || of_job) {
            return Err(AppError::conflict(PlanFault::NotFree {
                code: code.to_owned(),
                kind: part.kind,
                state: part.state,
                wanted: swap.kind,
            }));
        }
        if of_job
            && part.club.as_ref() != Some(&club.id)
            && let Some(other) = part.club.as_ref().and_then(|id| file.job.club(id))
        {
            let (mut theirs, _) = split(tx, other, need_plan(file, other)?, swap.kind).await?;
            theirs.extend(old.iter().cloned());
            partner = Some((other, theirs));
        }
        parts.push(part);
    }
    if let Some((other, _)) = &partner {
        need_changeable(file, other, swap.kind)?;
    }
    Ok((parts, partner))
}

/// The parts of a club's plan with another weight or grip, where the parts of several clubs change together, and the codes
/// of what was there before.
pub(crate) async fn picked_for_set(
    tx: &mut Tx,
    file: &KeptJob,
    club: &JobClub,
    (kind, code): (PartKind, &PartCodes),
    may_take: impl Fn(&Part) -> bool,
) -> Result<(Vec<Part>, PartCodes), AppError> {
    let plan = need_plan(file, club)?;
    let (mut parts, old) = split(tx, club, plan, kind).await?;
    if code.is_empty() && kind != PartKind::TipWeight {
        return Err(AppError::invalid(PlanFault::NeedsPart { kind }));
    }
    if code.len() > if kind == PartKind::TipWeight { 2 } else { 1 } {
        return Err(AppError::invalid(PlanFault::TooMany { code: code.to_string() }));
    }
    for code in code.iter() {
        let part =
            tx.part_by_code(code).await?.ok_or_else(|| AppError::not_found(Noun::Part, code, &LookUp::OnLabel))?;
        if part.kind != kind || !may_take(&part) {
            return Err(AppError::conflict(PlanFault::NotFree {
                code: code.to_owned(),
                kind: part.kind,
                state: part.state,
                wanted: kind,
            }));
        }
        parts.push(part);
    }
    Ok((parts, old.into_iter().map(|part| part.code).collect()))
}

/// A part that is glued or gripped on another club is not there to be exchanged.
pub(crate) fn need_changeable(file: &KeptJob, other: &JobClub, kind: PartKind) -> Result<(), AppError> {
    let believed = file.believe()?;
    let progress = remedy::Progress::of(&believed, other);
    let fixed = match kind {
        PartKind::Grip => progress.gripped,
        PartKind::Shaft => progress.glued || progress.cut,
        _ => progress.glued,
    };
    if fixed {
        return Err(AppError::conflict(PlanFault::OnAnother { kind, number: other.target.number.clone() }));
    }
    Ok(())
}

/// The parts of a plan without those of a kind, and those of that kind.
async fn split(
    tx: &mut Tx,
    club: &JobClub,
    plan: &ClubPlan,
    kind: PartKind,
) -> Result<(Vec<Part>, Vec<Part>), AppError> {
    let (mut others, mut of_kind) = (Vec::new(), Vec::new());
    let stays = |planned: &PlannedPart| club.work.as_ref().is_some_and(|w| w.came.pieces.parts.contains(planned));
    for planned in plan.parts.iter().filter(|planned| !stays(planned)) {
        let part = tx
            .part(&planned.part)
            .await?
            .ok_or_else(|| AppError::not_found(Noun::Part, planned.code.clone(), &LookUp::Choose))?;
        if planned.kind == kind { of_kind.push(part) } else { others.push(part) }
    }
    Ok((others, of_kind))
}

/// The plan of a club with these parts, and what every reading should show with them.
pub(crate) fn replan(file: &JobFile, club: &JobClub, parts: &[Part], lines: &Lines) -> Result<ClubPlan, AppError> {
    if let Some(work) = &club.work {
        return replan_work(file, club, work, parts);
    }
    let picks = Picks::of(parts, |kind| AppError::conflict(PlanFault::Missing { kind }))?;
    let plan = planner::plan_with(file.assembly(), club, &picks)?;
    // A tip trim that was taken stays with its shaft.
    let trimmed = club.plan.as_ref().filter(|old| {
        let shaft = |plan: &ClubPlan| plan.part(PartKind::Shaft).map(|part| part.part.clone());
        shaft(old) == shaft(&plan) && (old.tip_trim_mm - plan.tip_trim_mm).abs() > 0.01
    });
    let plan = match trimmed {
        Some(old) if old.tip_trim_mm <= plan.tip_trim_mm + plan.butt_cut_mm => {
            with_tip_trim(&file.library, club, &plan, old.tip_trim_mm)?
        }
        _ => plan,
    };
    let mut plan = lines.note(file.library.shaft(&picks.shaft.model)?, picks.shaft, club, plan);
    plan.extras = club.plan.as_ref().map_or_else(Vec::new, |p| p.extras.clone());
    // Expected readings of the whole job with the new part in place.
    let mut plans: Vec<Option<ClubPlan>> =
        file.job.clubs.iter().map(|c| if c.id == club.id { Some(plan.clone()) } else { c.plan.clone() }).collect();
    for other in plans.iter_mut().flatten() {
        other.expected.clear();
    }
    planner::expect(file.assembly(), &mut plans)?;
    let place = file.job.clubs.iter().position(|c| c.id == club.id);
    Ok(place.and_then(|i| plans[i].clone()).unwrap_or(plan))
}

/// The plan of a club that was there before, with these parts on it.
fn replan_work(file: &JobFile, club: &JobClub, work: &ClubWork, parts: &[Part]) -> Result<ClubPlan, AppError> {
    let now = club.plan.as_ref();
    let extension = now.map(|plan| plan.extras_g(Action::ButtExtension)).filter(|mass_g| *mass_g > 0.0);
    let at = now.and_then(|plan| plan.extras.last()).map_or(file.job.made_at, |extra| extra.at);
    let picks: Vec<&Part> = parts.iter().collect();
    let mut plan = pieces_of(&file.library, work, &club.target, &picks, extension, at)?;
    if let Some(now) = now {
        // What was added since stays on it.
        plan.extras.clone_from(&now.extras);
    }
    Ok(plan)
}

/// Readings that stand and were taken with a part of this kind on the club, or of it.
pub(crate) fn outdated<'a>(job: &Job, readings: &'a [Reading], club: &ClubId, kind: PartKind) -> Vec<&'a Reading> {
    let Some(role) = trade::kind::Role::from_key(kind.key()) else { return Vec::new() };
    standing(readings)
        .into_iter()
        .filter(|r| r.club == *club && r.what != trade::reading::What::Done && !job.is_of_club_as_it_came(r))
        .filter(|r| match r.what.mass_of() {
            Some(of) => of == role,
            None => r.on.contains(&role),
        })
        .collect()
}

pub(crate) fn need_open(file: &JobFile) -> Result<(), AppError> {
    if file.job.state == JobState::Open {
        Ok(())
    } else {
        Err(AppError::conflict(PlanFault::AtBench { job: file.job.number, state: file.job.state }))
    }
}

fact::facts! {
    /// What is refused of a plan.
    pub(crate) enum PlanFault: "plan_fault" {
        StockChanged,
        Lacking { clubs: Vec<String> },
        NoPlan { slot: i64, job: i64 },
        NeedsPart { kind: PartKind },
        TooMany { code: String },
        NotFree { code: String, kind: PartKind, state: PartState, wanted: PartKind },
        OnAnother { kind: PartKind, number: String },
        Missing { kind: PartKind },
        AtBench { job: i64, state: JobState },
    }
}
