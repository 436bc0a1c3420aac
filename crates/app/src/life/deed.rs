//! What happens to a part by hand: reserved, given back, used, pulled, cut, corrected, scrapped, restored.

use super::action::{Deed, Note, PartAction, PartFigures, Pulled};
use super::fault::DeedFault;
use super::{PartLife, part_of};
use crate::kept_job::KeptJob;
use crate::look_up::LookUp;
use crate::stock::mass_of;
use crate::{App, AppError};
use bench::remedy::Progress;
use fact::{Fact, Refusal, Told};
use std::sync::Arc;
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
use trade::part_field;
use trade::plan::ClubPlan;
use trade::reading::{What, standing};

/// A part in the hands of a job.
struct Hands {
    file: Arc<KeptJob>,
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
        Ok(Progress::of(&self.file.believe()?, &self.club))
    }
}

/// Refuses a figure that the part cannot have.
fn figures_can_be(part: &Part, deed: &Deed) -> Result<(), AppError> {
    let figures = match deed {
        Deed::Correct { figures, .. } => figures.clone(),
        Deed::Pull { length_mm, .. } => PartFigures { length_mm: *length_mm, ..PartFigures::default() },
        Deed::Miscut { length_mm, .. } => PartFigures { length_mm: Some(*length_mm), ..PartFigures::default() },
        _ => return Ok(()),
    };
    let mut given = Part::new(&part.code, part.kind, &part.model);
    figures.put_figures(&mut given);
    let mut with = part.clone();
    figures.put_figures(&mut with);
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
        figures_can_be(&part, &action.deed)?;
        let by = action.by.as_str();
        match &action.deed {
            Deed::Reserve { job, slot } => self.reserve(&mut tx, &part, *job, *slot).await?,
            Deed::Return { lose_plan, note } => {
                let going = Going { lose_plan: *lose_plan, reason: &note.reason, by, cut_stays: true };
                self.give_back(&mut tx, part, &going, note).await?;
            }
            Deed::Use { note } => self.use_alone(&mut tx, part, note).await?,
            Deed::Scrap { lose_plan, note } => {
                let going = Going { lose_plan: *lose_plan, reason: &note.reason, by, cut_stays: false };
                self.scrap(&mut tx, part, &going, note).await?;
            }
            Deed::Restore { mass_typed, note } => self.restore(&mut tx, part, mass_typed.as_deref(), note).await?,
            Deed::Correct { mass_typed, figures, note } => {
                self.correct(&mut tx, part, mass_typed.as_deref(), figures, note).await?;
            }
            Deed::Pull { pulled, length_mm, lose_plan, note } => {
                let going = Going { lose_plan: *lose_plan, reason: &note.reason, by, cut_stays: false };
                self.pull(&mut tx, part, pulled, *length_mm, &going, note).await?;
            }
            Deed::Miscut { length_mm, off_the_tip_mm, mass_typed, lose_plan, note } => {
                let going = Going { lose_plan: *lose_plan, reason: &note.reason, by, cut_stays: false };
                let cut = Cut { length_mm: *length_mm, off_the_tip_mm: *off_the_tip_mm, mass_typed };
                self.miscut(&mut tx, part, &cut, &going, note).await?;
            }
        }
        tx.commit().await?;
        self.tell(None, "stock");
        self.part_life(code).await
    }

    async fn reserve(&self, tx: &mut Tx, part: &Part, number: i64, slot: i64) -> Result<(), AppError> {
        let file = self.kept_job(tx, number).await?;
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

    async fn give_back(&self, tx: &mut Tx, part: Part, going: &Going<'_>, note: &Note) -> Result<(), AppError> {
        if part.state != PartState::Held {
            return Err(AppError::conflict(match part.state {
                PartState::Used => DeedFault::Used { code: part.code.clone() },
                state => DeedFault::InNoJob { code: part.code.clone(), state },
            }));
        }
        let part = self.take_out(tx, part, LifeStep::Returned, going).await?;
        if let Some(place) = &note.place {
            let moved = Part { place: place.trim().to_owned(), ..part };
            tx.update_part(&moved, self.now()).await?;
        }
        Ok(())
    }

    async fn use_alone(&self, tx: &mut Tx, part: Part, note: &Note) -> Result<(), AppError> {
        if !part.is_free() {
            return Err(self.not_free(tx, &part).await?);
        }
        let used = match part.count {
            Some(count) => Part { count: Some(count - 1), ..part.clone() },
            None => Part { state: PartState::Used, ..part.clone() },
        };
        self.change_to(tx, &part, used, LifeStep::Used, note).await
    }

    async fn scrap(&self, tx: &mut Tx, part: Part, going: &Going<'_>, note: &Note) -> Result<(), AppError> {
        let part = match part.state {
            PartState::Held => self.take_out(tx, part, LifeStep::Freed, going).await?,
            PartState::Used | PartState::Rejected => return Err(self.not_free(tx, &part).await?),
            PartState::Free | PartState::Pulled | PartState::Ordered => part,
        };
        let scrapped = Part { state: PartState::Rejected, ..part.clone() };
        self.change_to(tx, &part, scrapped, LifeStep::Scrapped, note).await
    }

    async fn restore(&self, tx: &mut Tx, part: Part, mass_typed: Option<&str>, note: &Note) -> Result<(), AppError> {
        if matches!(part.state, PartState::Free | PartState::Held | PartState::Used) {
            return Err(AppError::conflict(DeedFault::NotAside { code: part.code.clone(), state: part.state }));
        }
        let mut back = Part { state: PartState::Free, ..part.clone() };
        weigh(&mut back, mass_typed)?;
        if part.state == PartState::Pulled && mass_typed.is_none() {
            return Err(AppError::invalid(DeedFault::MassChanged { code: part.code.clone() }));
        }
        self.change_to(tx, &part, back, LifeStep::Restored, note).await
    }

    async fn correct(
        &self,
        tx: &mut Tx,
        part: Part,
        mass_typed: Option<&str>,
        figures: &PartFigures,
        note: &Note,
    ) -> Result<(), AppError> {
        let mut right = part.clone();
        weigh(&mut right, mass_typed)?;
        figures.put_figures(&mut right);
        if differences(&part, &right).is_empty() {
            return Err(AppError::invalid(DeedFault::SameFigures { code: part.code.clone() }));
        }
        self.change_to(tx, &part, right, LifeStep::Corrected, note).await?;
        self.plan_follows(tx, &part).await
    }

    /// A plan that counts with a part counts with its figures as they are now.
    pub(crate) async fn plan_follows(&self, tx: &mut Tx, part: &Part) -> Result<(), AppError> {
        let Some(hands) =
            self.hands_of(tx, part).await?.filter(|h| part.state == PartState::Held && h.plans_with(part))
        else {
            return Ok(());
        };
        let Some(plan) = &hands.club.plan else { return Ok(()) };
        let parts = parts_of(tx, plan).await?;
        let lines = crate::needs::lines_for(tx, &hands.file.library, &hands.file.shop.clamp, &parts).await?;
        let anew = crate::plan::replan(&hands.file, &hands.club, &parts, &lines)?;
        tx.save_club(&JobClub { plan: Some(anew), ..hands.club.clone() }, &hands.file.job.id).await?;
        self.tell(Some(hands.file.job.number), "plan");
        Ok(())
    }

    async fn pull(
        &self,
        tx: &mut Tx,
        part: Part,
        how: &Pulled,
        length_mm: Option<f64>,
        going: &Going<'_>,
        note: &Note,
    ) -> Result<(), AppError> {
        if part.count.is_some() || !matches!(part.state, PartState::Held | PartState::Used) {
            return Err(AppError::conflict(DeedFault::InNoClub { code: part.code.clone(), state: part.state }));
        }
        let hands = self.hands_of(tx, &part).await?;
        let plan = hands.as_ref().and_then(|h| h.club.plan.clone());
        if let Some(hands) = &hands
            && hands.plans_with(&part)
        {
            if part.state == PartState::Held && !hands.progress()?.glued {
                return Err(AppError::conflict(DeedFault::NotGlued { code: part.code.clone(), club: hands.told() }));
            }
            need_lost(&part, hands, going, Lost::TakenApart)?;
            self.take_apart(tx, hands, &part, going).await?;
        } else if part.state == PartState::Held {
            return Err(AppError::conflict(DeedFault::OnlyReserved { code: part.code.clone() }));
        }
        // As taking the club apart has left it.
        let part = part_of(tx, &part.code).await?;
        let (state, mass_typed) = match how {
            Pulled::Clean { mass_typed } => (PartState::Free, Some(mass_typed.as_str())),
            Pulled::AsItIs { mass_typed } => (PartState::Pulled, mass_typed.as_deref()),
        };
        let mut pulled = Part { state, job: None, club: None, ..part.clone() };
        if part.kind == PartKind::Shaft {
            cut_as_planned(&mut pulled, plan.as_ref().filter(|p| p.parts.iter().any(|x| x.part == part.id)), &part);
            pulled.length_mm = length_mm.or(pulled.length_mm);
        }
        weigh(&mut pulled, mass_typed)?;
        let of = hands.as_ref().map(|h| (&h.file.job.id, &h.club));
        self.change_of(tx, &part, pulled, LifeStep::Pulled, note, of).await
    }

    /// Takes a club under way apart: its single parts but the first, which the caller sees to, are pulled, pieces of
    /// boxes are gone, its readings speak of something that is not there any more, and it waits for a new plan.
    async fn take_apart(&self, tx: &mut Tx, hands: &Hands, first: &Part, going: &Going<'_>) -> Result<(), AppError> {
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
            let note = Note { place: None, reason: going.reason.to_owned() };
            self.change_of(tx, &part, pulled, LifeStep::Pulled, &note, Some((job, club))).await?;
        }
        self.lose_plan(tx, hands, going).await
    }

    /// The club has no plan any more; its readings are taken back with the reason.
    async fn lose_plan(&self, tx: &mut Tx, hands: &Hands, going: &Going<'_>) -> Result<(), AppError> {
        let (file, club) = (&hands.file, &hands.club);
        tx.release_club(&club.id, self.now()).await?;
        // Saved before its readings are taken back, which moves its version on.
        tx.save_club(&JobClub { plan: None, ..club.clone() }, &file.job.id).await?;
        let reason = Because::PlanLost { reason: because::written(going.reason) }.told();
        for reading in standing(&file.readings) {
            let of_scale = matches!(reading.what, What::CheckWeight | What::ReferenceSwingWeight);
            // What was read before the work is still true of the club as it came.
            let before = file.job.is_of_club_as_it_came(reading);
            if reading.club == club.id && !of_scale && !before {
                tx.take_back(&reading.id, &reason, going.by, self.now()).await?;
            }
        }
        let note = serde_json::json!({ "reason": going.reason });
        self.log(tx, Some(&file.job.id), Some(&club.id), EventKind::PlanLost, going.by, note).await?;
        self.tell(Some(file.job.number), "plan");
        Ok(())
    }

    async fn miscut(
        &self,
        tx: &mut Tx,
        part: Part,
        cut: &Cut<'_>,
        going: &Going<'_>,
        note: &Note,
    ) -> Result<(), AppError> {
        let refused = |fault: DeedFault| Err(AppError::invalid(fault));
        if part.kind != PartKind::Shaft {
            return refused(DeedFault::NotCut { code: part.code.clone(), kind: part.kind });
        }
        let Cut { length_mm, off_the_tip_mm: off_tip_mm, mass_typed } = *cut;
        let library = crate::load_library(tx).await?;
        let model = library.shaft(&part.model)?;
        let blank = model.blank(part.number.as_deref().unwrap_or_default()).map(|b| b.length_mm);
        let before_mm = part.length_mm.or(blank).unwrap_or(f64::INFINITY);
        if length_mm >= before_mm || !(0.0..=before_mm - length_mm + 0.5).contains(&off_tip_mm) {
            return refused(DeedFault::NotACut { code: part.code.clone(), before_mm, length_mm, tip_mm: off_tip_mm });
        }
        let part = match part.state {
            PartState::Held => self.take_out(tx, part, LifeStep::Freed, going).await?,
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
        weigh(&mut shorter, Some(mass_typed))?;
        self.change_to(tx, &part, shorter, LifeStep::Cut, note).await
    }

    /// Takes a held part out of its club's hands: reserved ones at once, planned ones only where the club is to lose its
    /// plan. Returns it as it is then.
    async fn take_out(&self, tx: &mut Tx, part: Part, step: LifeStep, going: &Going<'_>) -> Result<Part, AppError> {
        if part.count.is_some() {
            return Err(AppError::conflict(DeedFault::Box { code: part.code.clone() }));
        }
        let hands = self.hands_of(tx, &part).await?;
        let reason = because::typed(going.reason);
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
            if part.kind == PartKind::Shaft && progress.cut && going.cut_stays {
                return Err(AppError::conflict(DeedFault::CutAlready { code: part.code.clone(), club: hands.told() }));
            }
            need_lost(&part, &hands, going, Lost::AnotherPlan)?;
            tx.free_part(&part.id, step, reason.as_ref(), self.now()).await?;
            self.lose_plan(tx, &hands, going).await?;
        } else {
            tx.free_part(&part.id, step, reason.as_ref(), self.now()).await?;
        }
        part_of(tx, &part.code).await
    }

    /// Why a part is not free, with the job and club that have it.
    async fn not_free(&self, tx: &mut Tx, part: &Part) -> Result<AppError, AppError> {
        let (code, state) = (part.code.clone(), part.state);
        let club = self.hands_of(tx, part).await?.map(|hands| hands.told());
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

    /// The job and club that hold or used a part.
    async fn hands_of(&self, tx: &mut Tx, part: &Part) -> Result<Option<Hands>, AppError> {
        let (Some(job), Some(club)) = (&part.job, &part.club) else { return Ok(None) };
        let Some(job) = tx.job(job).await? else { return Ok(None) };
        let file = self.kept_job_of(tx, job).await?;
        let club = file.job.club(club).cloned();
        Ok(club.map(|club| Hands { file, club }))
    }

    async fn change_to(
        &self,
        tx: &mut Tx,
        before: &Part,
        after: Part,
        step: LifeStep,
        note: &Note,
    ) -> Result<(), AppError> {
        self.change_of(tx, before, after, step, note, None).await
    }

    /// Saves a part as it is now, and writes into its life what changed.
    async fn change_of(
        &self,
        tx: &mut Tx,
        before: &Part,
        mut after: Part,
        step: LifeStep,
        note: &Note,
        of: Option<(&JobId, &JobClub)>,
    ) -> Result<(), AppError> {
        if let Some(place) = &note.place {
            place.trim().clone_into(&mut after.place);
        }
        after.check()?;
        tx.update_part(&after, self.now()).await?;
        let reason = because::typed(&note.reason);
        let entry = LifeNote {
            part: &before.id,
            step,
            job: of.map(|(job, _)| job),
            club: of.map(|(_, club)| &club.id),
            figures: &differences(before, &after),
            reason: reason.as_ref(),
        };
        Ok(tx.append_life(entry, self.now()).await?)
    }
}

/// A part that goes from a club: what may be lost for it, and why.
struct Going<'a> {
    /// The club that it is planned for is to lose its plan and wait.
    lose_plan: bool,
    reason: &'a str,
    by: &'a str,
    /// It goes as it came: a shaft that is cut for the club cannot.
    cut_stays: bool,
}

/// A wrong cut: how long the shaft is now, how much of the cut went off the tip, what it weighs now.
struct Cut<'a> {
    length_mm: f64,
    off_the_tip_mm: f64,
    mass_typed: &'a str,
}

/// What becomes of a club whose part goes.
#[derive(Debug, Clone, Copy)]
enum Lost {
    TakenApart,
    AnotherPlan,
}

/// A plan is only taken away where that is said, with a reason.
fn need_lost(part: &Part, hands: &Hands, going: &Going<'_>, lost: Lost) -> Result<(), AppError> {
    if going.lose_plan {
        return crate::need::need_reason(going.reason);
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
fn weigh(part: &mut Part, mass_typed: Option<&str>) -> Result<(), AppError> {
    if let Some(typed) = mass_typed.map(str::trim) {
        part.mass_g = mass_of(typed)?;
        typed.clone_into(&mut part.mass_typed);
    }
    Ok(())
}

async fn parts_of(tx: &mut Tx, plan: &ClubPlan) -> Result<Vec<Part>, AppError> {
    let mut parts = Vec::with_capacity(plan.parts.len());
    for planned in &plan.parts {
        let part = tx.part(&planned.part).await?;
        parts.push(part.ok_or_else(|| AppError::not_found(Noun::Part, planned.code.clone(), &LookUp::PlanAgain))?);
    }
    Ok(parts)
}
