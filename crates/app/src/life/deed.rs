//! What happens to a part by hand: reserved, given back, used, pulled, cut, corrected, scrapped, restored.

use super::{PartLife, part_of};
use crate::job::JobFile;
use crate::look_up::LookUp;
use crate::stock::mass_of;
use crate::{App, AppError};
use bench::remedy::Progress;
use fact::{Fact, Refusal, Told};
use serde::{Deserialize, Serialize};
use store::{LifeNote, PartFilter, Tx};
use trade::because::{self, Because};
use trade::error::Noun;
use trade::error::within;
use trade::event_kind::EventKind;
use trade::fit;
use trade::id::JobId;
use trade::job::{JobClub, JobState};
use trade::life::{LifeStep, differences};
use trade::model::PartKind;
use trade::part::{Part, PartState};
use trade::part_field::{self, with_part_figures};
use trade::plan::ClubPlan;
use trade::reading::{What, standing};
use utoipa::ToSchema;

/// What is done with a part by hand.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum PartDeed {
    /// Hold it for a club that has no plan yet: the plan keeps to it.
    Reserve,
    /// Give it back from a job to the shelf.
    Return,
    /// It went into a club outside of any job.
    Use,
    /// Put it aside as unfit.
    Scrap,
    /// Take it back into stock after it was put aside, pulled or ordered.
    Restore,
    /// A figure was wrong.
    #[default]
    Correct,
    /// It was pulled out of its club.
    Pull,
    /// A shaft was cut wrongly; it stays good for shorter clubs.
    Miscut,
}

with_part_figures! {
    /// A deed with what it needs.
    #[derive(Debug, Clone, Default, Deserialize, ToSchema)]
    #[serde(deny_unknown_fields)]
    pub struct PartAction {
        /// What is done.
        pub deed: PartDeed,
        /// Version of the part that was looked at.
        #[serde(default)]
        pub version: Option<i64>,
        /// The job that it is reserved for.
        #[serde(default)]
        pub job: Option<i64>,
        /// Place of the club in its tray.
        #[serde(default)]
        pub slot: Option<i64>,
        /// Mass as it is weighed now, in workshop notation.
        #[serde(default)]
        pub mass_typed: Option<String>,
        /// How much of a wrong cut went off the tip.
        #[serde(default)]
        pub off_the_tip_mm: Option<f64>,
        /// A pulled part is free of adhesive, weighed again and good.
        #[serde(default)]
        pub clean: bool,
        /// Where it lies from now on.
        #[serde(default)]
        pub place: Option<String>,
        /// The club that it is planned for is to lose its plan and wait.
        #[serde(default)]
        pub lose_plan: bool,
        /// Why; needed to scrap, to use without a job and to take a plan away.
        #[serde(default)]
        pub reason: String,
        /// Who.
        pub by: String,
    }
}

/// A part in the hands of a job.
struct Hands {
    file: JobFile,
    club: JobClub,
}

impl Hands {
    fn told(&self) -> Told {
        DeedFault::ClubOf { number: self.club.target.number.clone(), job: self.file.job.number }.into()
    }

    /// Whether an accepted plan counts with the part.
    fn plans_with(&self, part: &Part) -> bool {
        self.file.job.state == JobState::Planned
            && self.club.plan.as_ref().is_some_and(|p| p.parts.iter().any(|planned| planned.part == part.id))
    }

    fn progress(&self) -> Result<Progress, AppError> {
        Ok(Progress::of(&self.file.assembly().believe(&self.file.readings)?, &self.club))
    }
}

/// Refuses a figure that the part cannot have, whether the deed uses it or not.
fn figures_can_be(part: &Part, action: &PartAction) -> Result<(), AppError> {
    let mut given = Part::new(&part.code, part.kind, &part.model);
    action.put_figures(&mut given);
    let mut with = part.clone();
    action.put_figures(&mut with);
    for (field, figure) in part_field::figures() {
        if let (Some(value), Some((low, high))) = ((figure.get)(&given), (figure.range)(&with)) {
            within(field.key, value, low, high, field.measure.sign())?;
        }
    }
    Ok(())
}

impl App {
    /// Does something with a part by hand.
    ///
    /// # Errors
    /// A part that is not in a state for it, with the words of what holds it; figures that cannot be; a missing reason; a
    /// version that is out of date; what the store says.
    pub async fn part_deed(&self, code: &str, action: &PartAction) -> Result<PartLife, AppError> {
        let mut tx = self.store.write().await?.signed(&action.by);
        let part = part_of(&mut tx, code).await?;
        if action.version.is_some_and(|seen| seen != part.version) {
            return Err(AppError::conflict(DeedFault::Stale { code: part.code.clone() }));
        }
        figures_can_be(&part, action)?;
        match action.deed {
            PartDeed::Reserve => self.reserve(&mut tx, &part, action).await?,
            PartDeed::Return => self.give_back(&mut tx, part, action).await?,
            PartDeed::Use => self.use_alone(&mut tx, part, action).await?,
            PartDeed::Scrap => self.scrap(&mut tx, part, action).await?,
            PartDeed::Restore => self.restore(&mut tx, part, action).await?,
            PartDeed::Correct => self.correct(&mut tx, part, action).await?,
            PartDeed::Pull => self.pull(&mut tx, part, action).await?,
            PartDeed::Miscut => self.miscut(&mut tx, part, action).await?,
        }
        tx.commit().await?;
        self.tell(None, "stock");
        self.part_life(code).await
    }

    async fn reserve(&self, tx: &mut Tx, part: &Part, action: &PartAction) -> Result<(), AppError> {
        let (Some(number), Some(slot)) = (action.job, action.slot) else {
            return Err(AppError::invalid(DeedFault::NoClub));
        };
        let file = JobFile::load(tx, number).await?;
        let club = file.club_at(slot)?;
        let target = &club.target;
        let refused = |fault: DeedFault| Err(AppError::conflict(fault));
        let (code, club_number) = (|| part.code.clone(), || target.number.clone());
        if !matches!(file.job.state, JobState::Open | JobState::Planned) {
            return refused(DeedFault::JobNotUnderWay { job: number, state: file.job.state });
        }
        if club.plan.is_some() {
            return refused(DeedFault::Planned { number: club_number(), job: number });
        }
        if !fit::serves(part, target, &file.library) {
            return refused(DeedFault::Misfit {
                code: code(),
                kind: part.kind,
                model: part.model.clone(),
                number: part.number.clone(),
                club: club_number(),
                job: number,
            });
        }
        let theirs = crate::needs::reserved(tx, &file.job.id).await?;
        if let Some(other) = theirs.iter().find(|p| p.kind == part.kind && p.club.as_ref() == Some(&club.id)) {
            return refused(DeedFault::ReservedAlready { code: other.code.clone(), club: club_number(), job: number });
        }
        if part.count.is_some() {
            return refused(DeedFault::BoxReserved { code: code() });
        }
        Ok(tx.hold(&part.id, &file.job.id, &club.id, self.now()).await?)
    }

    async fn give_back(&self, tx: &mut Tx, part: Part, action: &PartAction) -> Result<(), AppError> {
        if part.state != PartState::Held {
            return Err(AppError::conflict(match part.state {
                PartState::Used => DeedFault::Used { code: part.code.clone() },
                state => DeedFault::InNoJob { code: part.code.clone(), state },
            }));
        }
        let part = self.take_out(tx, part, LifeStep::Returned, action).await?;
        if let Some(place) = &action.place {
            let moved = Part { place: place.trim().to_owned(), ..part };
            tx.update_part(&moved, self.now()).await?;
        }
        Ok(())
    }

    async fn use_alone(&self, tx: &mut Tx, part: Part, action: &PartAction) -> Result<(), AppError> {
        crate::need::need_reason(&action.reason)?;
        if !part.is_free() {
            return Err(self.not_free(tx, &part).await?);
        }
        let used = match part.count {
            Some(count) => Part { count: Some(count - 1), ..part.clone() },
            None => Part { state: PartState::Used, ..part.clone() },
        };
        self.change_to(tx, &part, used, LifeStep::Used, action).await
    }

    async fn scrap(&self, tx: &mut Tx, part: Part, action: &PartAction) -> Result<(), AppError> {
        crate::need::need_reason(&action.reason)?;
        let part = match part.state {
            PartState::Held => self.take_out(tx, part, LifeStep::Freed, action).await?,
            PartState::Used | PartState::Rejected => return Err(self.not_free(tx, &part).await?),
            PartState::Free | PartState::Pulled | PartState::Ordered => part,
        };
        let scrapped = Part { state: PartState::Rejected, ..part.clone() };
        self.change_to(tx, &part, scrapped, LifeStep::Scrapped, action).await
    }

    async fn restore(&self, tx: &mut Tx, part: Part, action: &PartAction) -> Result<(), AppError> {
        if matches!(part.state, PartState::Free | PartState::Held | PartState::Used) {
            return Err(AppError::conflict(DeedFault::NotAside { code: part.code.clone(), state: part.state }));
        }
        let mut back = Part { state: PartState::Free, ..part.clone() };
        weigh(&mut back, action)?;
        if part.state == PartState::Pulled && action.mass_typed.as_deref().is_none_or(|t| t.trim().is_empty()) {
            return Err(AppError::invalid(DeedFault::MassChanged { code: part.code.clone() }));
        }
        self.change_to(tx, &part, back, LifeStep::Restored, action).await
    }

    async fn correct(&self, tx: &mut Tx, part: Part, action: &PartAction) -> Result<(), AppError> {
        let mut right = part.clone();
        weigh(&mut right, action)?;
        action.put_figures(&mut right);
        if differences(&part, &right).is_empty() {
            return Err(AppError::invalid(DeedFault::SameFigures { code: part.code.clone() }));
        }
        self.change_to(tx, &part, right, LifeStep::Corrected, action).await?;
        self.plan_follows(tx, &part).await
    }

    /// A plan that counts with a part counts with its figures as they are now.
    pub(crate) async fn plan_follows(&self, tx: &mut Tx, part: &Part) -> Result<(), AppError> {
        let Some(hands) = hands(tx, part).await?.filter(|h| part.state == PartState::Held && h.plans_with(part)) else {
            return Ok(());
        };
        let Some(plan) = &hands.club.plan else { return Ok(()) };
        let parts = parts_of(tx, plan).await?;
        let lines = crate::needs::lines_for(tx, &hands.file.library, &parts).await?;
        let anew = crate::plan::replan(&hands.file, &hands.club, &parts, &lines)?;
        tx.save_club(&JobClub { plan: Some(anew), ..hands.club.clone() }, &hands.file.job.id).await?;
        self.tell(Some(hands.file.job.number), "plan");
        Ok(())
    }

    async fn pull(&self, tx: &mut Tx, part: Part, action: &PartAction) -> Result<(), AppError> {
        if part.count.is_some() || !matches!(part.state, PartState::Held | PartState::Used) {
            return Err(AppError::conflict(DeedFault::InNoClub { code: part.code.clone(), state: part.state }));
        }
        let hands = hands(tx, &part).await?;
        let plan = hands.as_ref().and_then(|h| h.club.plan.clone());
        if let Some(hands) = &hands
            && hands.plans_with(&part)
        {
            if part.state == PartState::Held && !hands.progress()?.glued {
                return Err(AppError::conflict(DeedFault::NotGlued { code: part.code.clone(), club: hands.told() }));
            }
            need_lost(&part, hands, action, Lost::TakenApart)?;
            self.take_apart(tx, hands, &part, action).await?;
        } else if part.state == PartState::Held {
            return Err(AppError::conflict(DeedFault::OnlyReserved { code: part.code.clone() }));
        }
        // As taking the club apart has left it.
        let part = part_of(tx, &part.code).await?;
        let mut pulled = Part {
            state: if action.clean { PartState::Free } else { PartState::Pulled },
            job: None,
            club: None,
            ..part.clone()
        };
        if part.kind == PartKind::Shaft {
            cut_as_planned(&mut pulled, plan.as_ref().filter(|p| p.parts.iter().any(|x| x.part == part.id)), &part);
            pulled.length_mm = action.length_mm.or(pulled.length_mm);
        }
        weigh(&mut pulled, action)?;
        if action.clean && action.mass_typed.as_deref().is_none_or(|t| t.trim().is_empty()) {
            return Err(AppError::invalid(DeedFault::NoMass { code: part.code.clone() }));
        }
        let of = hands.as_ref().map(|h| (&h.file.job.id, &h.club));
        self.change_of(tx, &part, pulled, LifeStep::Pulled, action, of).await
    }

    /// Takes a club under way apart: its single parts but the first, which the caller sees to, are pulled, pieces of
    /// boxes are gone, its readings speak of something that is not there any more, and it waits for a new plan.
    async fn take_apart(&self, tx: &mut Tx, hands: &Hands, first: &Part, action: &PartAction) -> Result<(), AppError> {
        let (job, club) = (&hands.file.job.id, &hands.club);
        tx.use_up_pieces(&club.id).await?;
        let theirs = PartFilter { job: Some(job.clone()), ..PartFilter::default() };
        for part in tx.parts(&theirs).await? {
            let in_club =
                matches!(part.state, PartState::Held | PartState::Used) && part.club.as_ref() == Some(&club.id);
            if !in_club || part.id == first.id {
                continue;
            }
            let mut pulled = Part { state: PartState::Pulled, job: None, club: None, ..part.clone() };
            if part.kind == PartKind::Shaft {
                cut_as_planned(&mut pulled, club.plan.as_ref(), &part);
            }
            let bare = PartAction { mass_typed: None, place: None, ..action.clone() };
            self.change_of(tx, &part, pulled, LifeStep::Pulled, &bare, Some((job, club))).await?;
        }
        self.lose_plan(tx, hands, action).await
    }

    /// The club has no plan any more; its readings are taken back with the reason.
    async fn lose_plan(&self, tx: &mut Tx, hands: &Hands, action: &PartAction) -> Result<(), AppError> {
        let (file, club) = (&hands.file, &hands.club);
        tx.release_club(&club.id, self.now()).await?;
        // Saved before its readings are taken back, which moves its version on.
        tx.save_club(&JobClub { plan: None, ..club.clone() }, &file.job.id).await?;
        let reason = Because::PlanLost { reason: because::written(&action.reason) }.told();
        for reading in standing(&file.readings) {
            let of_scale = matches!(reading.what, What::CheckWeight | What::ReferenceSwingWeight);
            if reading.club == club.id && !of_scale {
                tx.take_back(&reading.id, &reason, &action.by, self.now()).await?;
            }
        }
        let note = serde_json::json!({ "reason": action.reason.trim() });
        self.log(tx, Some(&file.job.id), Some(&club.id), EventKind::PlanLost, &action.by, note).await?;
        self.tell(Some(file.job.number), "plan");
        Ok(())
    }

    async fn miscut(&self, tx: &mut Tx, part: Part, action: &PartAction) -> Result<(), AppError> {
        let refused = |fault: DeedFault| Err(AppError::invalid(fault));
        if part.kind != PartKind::Shaft {
            return refused(DeedFault::NotCut { code: part.code.clone(), kind: part.kind });
        }
        let Some(length_mm) = action.length_mm else {
            return refused(DeedFault::NoLength { code: part.code.clone() });
        };
        let library = crate::load_library(tx).await?;
        let model = library.shaft(&part.model)?;
        let blank = model.blank(part.number.as_deref().unwrap_or_default()).map(|b| b.length_mm);
        let before_mm = part.length_mm.or(blank).unwrap_or(f64::INFINITY);
        let off_tip_mm = action.off_the_tip_mm.unwrap_or(0.0);
        if length_mm >= before_mm || !(0.0..=before_mm - length_mm + 0.5).contains(&off_tip_mm) {
            return refused(DeedFault::NotACut { code: part.code.clone(), before_mm, length_mm, tip_mm: off_tip_mm });
        }
        let part = match part.state {
            PartState::Held => self.take_out(tx, part, LifeStep::Freed, action).await?,
            PartState::Used | PartState::Rejected => return Err(self.not_free(tx, &part).await?),
            _ => part,
        };
        let mut shorter = Part {
            length_mm: Some(length_mm),
            // Both move with the cut; the mass is asked for, the balance point follows the model's until it is measured.
            balance_point_mm: None,
            mass_g: None,
            mass_typed: String::new(),
            tip_trimmed_mm: Some(part.tip_trimmed_mm.unwrap_or(0.0) + off_tip_mm).filter(|mm| *mm > 0.0),
            ..part.clone()
        };
        weigh(&mut shorter, action)?;
        if shorter.mass_g.is_none() {
            return refused(DeedFault::NoWeight { code: part.code.clone() });
        }
        self.change_to(tx, &part, shorter, LifeStep::Cut, action).await
    }

    /// Takes a held part out of its club's hands: reserved ones at once, planned ones only where the club is to lose its
    /// plan. Returns it as it is then.
    async fn take_out(&self, tx: &mut Tx, part: Part, step: LifeStep, action: &PartAction) -> Result<Part, AppError> {
        if part.count.is_some() {
            return Err(AppError::conflict(DeedFault::Box { code: part.code.clone() }));
        }
        let hands = hands(tx, &part).await?;
        let reason = because::typed(&action.reason);
        if let Some(hands) = hands.filter(|h| h.plans_with(&part)) {
            let progress = hands.progress()?;
            let fixed = if part.kind == PartKind::Grip { progress.gripped } else { progress.glued };
            if fixed {
                let (code, club) = (part.code.clone(), hands.told());
                return Err(AppError::conflict(match part.kind {
                    PartKind::Grip => DeedFault::Gripped { code, club },
                    _ => DeedFault::Glued { code, club },
                }));
            }
            if part.kind == PartKind::Shaft && progress.cut && action.deed == PartDeed::Return {
                return Err(AppError::conflict(DeedFault::CutAlready { code: part.code.clone(), club: hands.told() }));
            }
            need_lost(&part, &hands, action, Lost::AnotherPlan)?;
            tx.free_part(&part.id, step, reason.as_ref(), self.now()).await?;
            self.lose_plan(tx, &hands, action).await?;
        } else {
            tx.free_part(&part.id, step, reason.as_ref(), self.now()).await?;
        }
        part_of(tx, &part.code).await
    }

    /// Why a part is not free, with the job and club that have it.
    async fn not_free(&self, tx: &mut Tx, part: &Part) -> Result<AppError, AppError> {
        let (code, state) = (part.code.clone(), part.state);
        let club = hands(tx, part).await?.map(|hands| hands.told());
        if let (PartState::Used, Some(club)) = (state, &club) {
            return Ok(AppError::conflict(DeedFault::InClub { code, club: club.clone() }));
        }
        let next = match state {
            PartState::Used => DeedFault::PullFirst,
            PartState::Held => DeedFault::GiveBackFirst,
            PartState::Rejected => DeedFault::AsideAlready,
            PartState::Pulled => DeedFault::CleanFirst,
            PartState::Ordered => DeedFault::BookInFirst,
            PartState::Free => DeedFault::BoxEmpty,
        };
        Ok(AppError::Conflict(Refusal::new(&DeedFault::NotFree { code, state, club }).next(&next)))
    }

    async fn change_to(
        &self,
        tx: &mut Tx,
        before: &Part,
        after: Part,
        step: LifeStep,
        action: &PartAction,
    ) -> Result<(), AppError> {
        self.change_of(tx, before, after, step, action, None).await
    }

    /// Saves a part as it is now, and writes into its life what changed.
    async fn change_of(
        &self,
        tx: &mut Tx,
        before: &Part,
        mut after: Part,
        step: LifeStep,
        action: &PartAction,
        of: Option<(&JobId, &JobClub)>,
    ) -> Result<(), AppError> {
        if let Some(place) = &action.place {
            place.trim().clone_into(&mut after.place);
        }
        after.check()?;
        tx.update_part(&after, self.now()).await?;
        let reason = because::typed(&action.reason);
        let note = LifeNote {
            part: &before.id,
            step,
            job: of.map(|(job, _)| job),
            club: of.map(|(_, club)| &club.id),
            figures: &differences(before, &after),
            reason: reason.as_ref(),
        };
        Ok(tx.append_life(note, self.now()).await?)
    }
}

/// What becomes of a club whose part goes.
#[derive(Debug, Clone, Copy)]
enum Lost {
    TakenApart,
    AnotherPlan,
}

/// A plan is only taken away where that is said, with a reason.
fn need_lost(part: &Part, hands: &Hands, action: &PartAction, lost: Lost) -> Result<(), AppError> {
    if action.lose_plan {
        return crate::need::need_reason(&action.reason);
    }
    let (code, state, club) = (part.code.clone(), part.state, hands.told());
    let number = hands.club.target.number.clone();
    Err(AppError::conflict(match lost {
        Lost::TakenApart => DeedFault::WouldTakeApart { code, state, club, number },
        Lost::AnotherPlan => DeedFault::WouldReplan { code, state, club, number },
    }))
}

/// What a plan has cut off a shaft, for one that comes out of its club again.
fn cut_as_planned(pulled: &mut Part, plan: Option<&ClubPlan>, before: &Part) {
    pulled.balance_point_mm = None;
    if let Some(plan) = plan {
        pulled.length_mm = Some((plan.cut_shaft_mm * 10.0).round() / 10.0);
        pulled.tip_trimmed_mm = Some(before.tip_trimmed_mm.unwrap_or(0.0) + plan.tip_trim_mm).filter(|mm| *mm > 0.0);
    }
}

/// The mass as it is weighed now, where it is given.
fn weigh(part: &mut Part, action: &PartAction) -> Result<(), AppError> {
    if let Some(typed) = action.mass_typed.as_deref().map(str::trim).filter(|t| !t.is_empty()) {
        part.mass_g = mass_of(typed)?;
        typed.clone_into(&mut part.mass_typed);
    }
    Ok(())
}

/// The job and club that hold or used a part.
async fn hands(tx: &mut Tx, part: &Part) -> Result<Option<Hands>, AppError> {
    let (Some(job), Some(club)) = (&part.job, &part.club) else { return Ok(None) };
    let Some(job) = tx.job(job).await? else { return Ok(None) };
    let file = JobFile::load(tx, job.number).await?;
    let club = file.job.club(club).cloned();
    Ok(club.map(|club| Hands { file, club }))
}

async fn parts_of(tx: &mut Tx, plan: &ClubPlan) -> Result<Vec<Part>, AppError> {
    let mut parts = Vec::with_capacity(plan.parts.len());
    for planned in &plan.parts {
        let part = tx.part(&planned.part).await?;
        parts.push(part.ok_or_else(|| AppError::not_found(Noun::Part, planned.code.clone(), &LookUp::PlanAgain))?);
    }
    Ok(parts)
}

fact::facts! {
    /// What is refused of what is done with a part.
    pub(crate) enum DeedFault: "deed_fault" {
        Stale { code: String },
        NoClub,
        InNoJob { code: String, state: PartState },
        NotAside { code: String, state: PartState },
        MassChanged { code: String },
        SameFigures { code: String },
        InNoClub { code: String, state: PartState },
        NotGlued { code: String, club: Told },
        OnlyReserved { code: String },
        NoMass { code: String },
        Box { code: String },
        CutAlready { code: String, club: Told },
        Used { code: String },
        Gripped { code: String, club: Told },
        Glued { code: String, club: Told },
        NotFree { code: String, state: PartState, club: Option<Told> },
        InClub { code: String, club: Told },
        ClubOf { number: String, job: i64 },
        WouldTakeApart { code: String, state: PartState, club: Told, number: String },
        WouldReplan { code: String, state: PartState, club: Told, number: String },
        PullFirst,
        GiveBackFirst,
        AsideAlready,
        CleanFirst,
        BookInFirst,
        BoxEmpty,
        JobNotUnderWay { job: i64, state: JobState },
        Planned { number: String, job: i64 },
        Misfit { code: String, kind: PartKind, model: String, number: Option<String>, club: String, job: i64 },
        ReservedAlready { code: String, club: String, job: i64 },
        BoxReserved { code: String },
        NotCut { code: String, kind: PartKind },
        NoLength { code: String },
        NotACut { code: String, before_mm: f64, length_mm: f64, tip_mm: f64 },
        NoWeight { code: String },
    }
}
