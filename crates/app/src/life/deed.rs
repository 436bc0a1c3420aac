//! What happens to a part by hand: reserved, given back, used, pulled, cut, corrected, scrapped, restored.

use super::{PartLife, part_of};
use crate::job::JobFile;
use crate::stock::mass_of;
use crate::{App, AppError};
use bench::remedy::Progress;
use serde::{Deserialize, Serialize};
use store::{LifeNote, PartFilter, Tx};
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
    fn words(&self) -> String {
        format!("the {} of job {}", self.club.target.number, self.file.job.number)
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
            return Err(AppError::Conflict {
                what: format!("{} was changed on another screen in the meantime", part.code),
                next: "Nothing was changed. Look at it as it is now, then do it again".into(),
            });
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
            return Err(AppError::Invalid {
                what: "for which club it is reserved is not said".into(),
                next: "Give the job and the place in its tray".into(),
            });
        };
        let file = JobFile::load(tx, number).await?;
        let club = file.club_at(slot)?;
        let target = &club.target;
        let refused = |what: String, next: &str| Err(AppError::Conflict { what, next: next.to_owned() });
        if !matches!(file.job.state, JobState::Open | JobState::Planned) {
            return refused(format!("job {number} is {}", file.job.state), "Choose a job under way");
        }
        if club.plan.is_some() {
            return refused(
                format!("the {} of job {number} has its plan already", target.number),
                "Put the part in the place of a planned one at the bench",
            );
        }
        if !fit::serves(part, target, &file.library) {
            let number_of = part.number.as_deref().map(|n| format!(" {n}")).unwrap_or_default();
            return refused(
                format!(
                    "{} is a {} {}{number_of}, and the {} of job {number} asks for another",
                    part.code, part.kind, part.model, target.number
                ),
                "Choose a part of the club's own model and number",
            );
        }
        let theirs = crate::needs::reserved(tx, &file.job.id).await?;
        if let Some(other) = theirs.iter().find(|p| p.kind == part.kind && p.club.as_ref() == Some(&club.id)) {
            return refused(
                format!("{} is reserved for the {} of job {number} already", other.code, target.number),
                "Give that one back to the shelf first",
            );
        }
        if part.count.is_some() {
            return refused(
                format!("{} is a box: its pieces are taken when a plan is accepted", part.code),
                "Reserve single parts only",
            );
        }
        Ok(tx.hold(&part.id, &file.job.id, &club.id, self.now()).await?)
    }

    async fn give_back(&self, tx: &mut Tx, part: Part, action: &PartAction) -> Result<(), AppError> {
        if part.state != PartState::Held {
            return Err(AppError::Conflict {
                what: format!("{} is {} and in no job's hands", part.code, part.state),
                next: if part.state == PartState::Used {
                    "It is in a club: pull it out of there first".into()
                } else {
                    "Nothing needs to be done".into()
                },
            });
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
            return Err(AppError::Conflict {
                what: format!("{} is {} and was not put aside", part.code, part.state),
                next: "Nothing needs to be done".into(),
            });
        }
        let mut back = Part { state: PartState::Free, ..part.clone() };
        weigh(&mut back, action)?;
        if part.state == PartState::Pulled && action.mass_typed.as_deref().is_none_or(|t| t.trim().is_empty()) {
            return Err(AppError::Invalid {
                what: format!("{} was pulled out of a club, and its mass is another now", part.code),
                next: "Take the adhesive off, weigh it, and give the mass".into(),
            });
        }
        self.change_to(tx, &part, back, LifeStep::Restored, action).await
    }

    async fn correct(&self, tx: &mut Tx, part: Part, action: &PartAction) -> Result<(), AppError> {
        let mut right = part.clone();
        weigh(&mut right, action)?;
        action.put_figures(&mut right);
        if differences(&part, &right).is_empty() {
            return Err(AppError::Invalid {
                what: format!("{} has these figures already", part.code),
                next: "Give what is right instead".into(),
            });
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
            return Err(AppError::Conflict {
                what: format!("{} is {} and in no club", part.code, part.state),
                next: "Scan the part that was pulled, or correct its mass".into(),
            });
        }
        let hands = hands(tx, &part).await?;
        let plan = hands.as_ref().and_then(|h| h.club.plan.clone());
        if let Some(hands) = &hands
            && hands.plans_with(&part)
        {
            if part.state == PartState::Held && !hands.progress()?.glued {
                return Err(AppError::Conflict {
                    what: format!("{} is held for {} and not glued yet", part.code, hands.words()),
                    next: "Give it back to the shelf instead".into(),
                });
            }
            need_lost(&part, hands, action, "taken apart")?;
            self.take_apart(tx, hands, &part, action).await?;
        } else if part.state == PartState::Held {
            return Err(AppError::Conflict {
                what: format!("{} is only reserved", part.code),
                next: "Give it back to the shelf instead".into(),
            });
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
            return Err(AppError::Invalid {
                what: format!("{} goes back to the shelf, and what it weighs now is not said", part.code),
                next: "Weigh it without its old adhesive, and give the mass".into(),
            });
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
        let reason = format!("read before the club lost its plan: {}", action.reason.trim());
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
        let refused = |what: String, next: &str| Err(AppError::Invalid { what, next: next.to_owned() });
        if part.kind != PartKind::Shaft {
            return refused(format!("{} is a {} and is not cut", part.code, part.kind), "Scan the shaft");
        }
        let Some(length_mm) = action.length_mm else {
            return refused(format!("how long {} is now is not said", part.code), "Measure it, and give the length");
        };
        let library = crate::load_library(tx).await?;
        let model = library.shaft(&part.model)?;
        let blank = model.blank(part.number.as_deref().unwrap_or_default()).map(|b| b.length_mm);
        let before_mm = part.length_mm.or(blank).unwrap_or(f64::INFINITY);
        let off_tip_mm = action.off_the_tip_mm.unwrap_or(0.0);
        if length_mm >= before_mm || !(0.0..=before_mm - length_mm + 0.5).contains(&off_tip_mm) {
            return refused(
                format!(
                    "{} was {before_mm:.1} mm long, and {length_mm:.1} mm with {off_tip_mm:.1} mm off the tip is no cut of it",
                    part.code
                ),
                "Measure it again: the length as it is now, and what of the cut went off the tip",
            );
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
            return refused(format!("what {} weighs now is not said", part.code), "Weigh it, and give the mass");
        }
        self.change_to(tx, &part, shorter, LifeStep::Cut, action).await
    }

    /// Takes a held part out of its club's hands: reserved ones at once, planned ones only where the club is to lose its
    /// plan. Returns it as it is then.
    async fn take_out(&self, tx: &mut Tx, part: Part, step: LifeStep, action: &PartAction) -> Result<Part, AppError> {
        if part.count.is_some() {
            return Err(AppError::Conflict {
                what: format!("{} is a box", part.code),
                next: "Count it again where its count is wrong".into(),
            });
        }
        let hands = hands(tx, &part).await?;
        let reason = action.reason.trim();
        if let Some(hands) = hands.filter(|h| h.plans_with(&part)) {
            let progress = hands.progress()?;
            let fixed = if part.kind == PartKind::Grip { progress.gripped } else { progress.glued };
            if fixed {
                return Err(AppError::Conflict {
                    what: format!(
                        "{} is on {} for good: it is {}",
                        part.code,
                        hands.words(),
                        if part.kind == PartKind::Grip { "gripped" } else { "glued" }
                    ),
                    next: "Pull it out of the club: that takes the club apart".into(),
                });
            }
            if part.kind == PartKind::Shaft && progress.cut && action.deed == PartDeed::Return {
                return Err(AppError::Conflict {
                    what: format!("{} is cut for {} already", part.code, hands.words()),
                    next: "Say that it was cut wrongly, with its length and mass as they are now".into(),
                });
            }
            need_lost(&part, &hands, action, "given another plan")?;
            tx.free_part(&part.id, step, reason, self.now()).await?;
            self.lose_plan(tx, &hands, action).await?;
        } else {
            tx.free_part(&part.id, step, reason, self.now()).await?;
        }
        part_of(tx, &part.code).await
    }

    /// Why a part is not free, with the job and club that have it.
    async fn not_free(&self, tx: &mut Tx, part: &Part) -> Result<AppError, AppError> {
        let of = match hands(tx, part).await? {
            Some(hands) => format!(" {} {}", if part.state == PartState::Used { "in" } else { "for" }, hands.words()),
            None => String::new(),
        };
        let next = match part.state {
            PartState::Used => "Pull it out of the club first",
            PartState::Held => "Give it back to the shelf first",
            PartState::Rejected => "It is put aside already",
            PartState::Pulled => "Clean and weigh it, and take it back into stock first",
            PartState::Ordered => "Book it in first",
            PartState::Free => "The box is empty: count it again",
        };
        Ok(AppError::Conflict { what: format!("{} is {}{of}", part.code, part.state), next: next.to_owned() })
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
        let note = LifeNote {
            part: &before.id,
            step,
            job: of.map(|(job, _)| job),
            club: of.map(|(_, club)| &club.id),
            figures: &differences(before, &after),
            reason: action.reason.trim(),
        };
        Ok(tx.append_life(note, self.now()).await?)
    }
}

/// A plan is only taken away where that is said, with a reason.
fn need_lost(part: &Part, hands: &Hands, action: &PartAction, what_then: &str) -> Result<(), AppError> {
    if action.lose_plan {
        return crate::need::need_reason(&action.reason);
    }
    Err(AppError::Conflict {
        what: format!("{} is {} for {}", part.code, part.state, hands.words()),
        next: format!(
            "Put another in its place at the bench, or say that the {} is to be {what_then}",
            hands.club.target.number
        ),
    })
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
        parts.push(part.ok_or_else(|| AppError::not_found("part", planned.code.clone(), "Plan the job anew"))?);
    }
    Ok(parts)
}
