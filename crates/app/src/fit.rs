//! What is fitted across a set: the weights and grips that are advised, taken for all clubs in one step or for some; and two
//! clubs that have each other's piece, put right in one step.

use crate::job::JobFile;
use crate::kept_job::KeptJob;
use crate::look_up::LookUp;
use crate::need::{need_at_bench, need_name};
use crate::needs::lines_for;
use crate::plan::{Exchanged, exchange, need_changeable, picked_for_set, replan};
use crate::{App, AppError};
use bench::set_fit::{SetFit, changing_places};
use fact::Told;
use serde::{Deserialize, Serialize};
use store::{Event, Tx};
use trade::because::Because;
use trade::error::Noun;
use trade::event_kind::EventKind;
use trade::id::{ClubId, EventId, ReadingId};
use trade::job::{Job, JobClub};
use trade::kind::Role;
use trade::model::PartKind;
use trade::part::{Part, PartState};
use trade::part_codes::PartCodes;
use trade::reading::{Reading, standing};
use utoipa::ToSchema;

/// What goes into a club.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct FitPick {
    /// Place in the tray.
    pub slot: i64,
    /// What is changed: a tip weight or a grip.
    pub kind: PartKind,
    /// Code of the part, two tip weights joined by `+`; empty to leave the tip empty.
    pub code: PartCodes,
}

/// Taking what is advised for a set.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TakeFit {
    /// What goes into which club; left out: all that is advised now.
    #[serde(default)]
    pub picks: Option<Vec<FitPick>>,
    /// Who.
    pub by: String,
}

/// What was taken, all or none.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct FitTaken {
    /// What goes into which club now.
    pub taken: Vec<FitPick>,
    /// What was planned there before: the same request with these picks takes it back.
    pub before: Vec<FitPick>,
    /// What is to be fitted now.
    pub fit: SetFit,
}

/// Two clubs that had each other's piece and were put right.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ExchangeParts {
    /// What they had of each other: head, tip weight or grip.
    pub kind: PartKind,
    /// Their places in the tray.
    #[schema(min_items = 2, max_items = 2)]
    pub slots: Vec<i64>,
    /// Who exchanged them.
    pub by: String,
}

/// Taking the last exchange back.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct UndoExchange {
    /// Who.
    pub by: String,
}

/// What became of an exchange.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct PartsExchanged {
    /// What was exchanged.
    pub kind: PartKind,
    /// Places in the tray.
    pub slots: Vec<i64>,
    /// Readings that were taken with the wrong piece on the club: they count no more. After the exchange is taken back, the
    /// readings that count in their place.
    pub readings: Vec<ReadingId>,
}

impl App {
    /// What is to be fitted in each club of a set now, and the list to fetch it by.
    ///
    /// # Errors
    /// No such job; figures that the belief cannot work with; what the store says.
    pub async fn fit(&self, number: i64) -> Result<SetFit, AppError> {
        let file = self.job_file(number).await?;
        let believed = file.believe()?;
        let states = file.states_of(&believed, self.now())?;
        file.set_fit(&believed, &states)
    }

    /// Takes what is advised for a set, or what is asked for, into the plans of its clubs, all or none. Readings with what
    /// was there before are taken back with a reason.
    ///
    /// # Errors
    /// Nothing advised; a club twice, one that is glued or gripped, a part that is not free; nobody named; what the store
    /// says.
    pub async fn take_fit(&self, number: i64, take: &TakeFit) -> Result<FitTaken, AppError> {
        need_name(&take.by)?;
        let mut tx = self.store.write().await?.signed(&take.by);
        let file = self.kept_job(&mut tx, number).await?;
        need_at_bench(&file.job)?;
        let picks = match &take.picks {
            Some(picks) => picks.clone(),
            None => {
                let believed = file.believe()?;
                let states = file.states_of(&believed, self.now())?;
                let fit = file.set_fit(&believed, &states)?;
                fit.to_take()
                    .map(|(row, advised, kind)| FitPick { slot: row.slot, kind, code: advised.code.clone() })
                    .collect()
            }
        };
        if picks.is_empty() {
            return Err(AppError::conflict(FitFault::Nothing { job: number }));
        }
        let picks = with_partners(&file.job, picks);
        let mut before = Vec::with_capacity(picks.len());
        let mut chosen: Vec<(&JobClub, &FitPick, Vec<Part>)> = Vec::with_capacity(picks.len());
        for pick in &picks {
            if !matches!(pick.kind, PartKind::TipWeight | PartKind::Grip) {
                return Err(AppError::invalid(FitFault::Kind { kind: pick.kind }));
            }
            if chosen.iter().any(|(club, ..)| club.slot == pick.slot) {
                return Err(AppError::invalid(FitFault::Twice { slot: pick.slot }));
            }
            let club = file.club_at(pick.slot)?;
            need_changeable(&file, club, pick.kind)?;
            let may_take = |part: &Part| is_for_set(&file, part, club, pick.kind, &picks);
            let wanted = (pick.kind, &pick.code);
            let (parts, old) = picked_for_set(&mut tx, &file, club, wanted, may_take).await?;
            before.push(FitPick { slot: pick.slot, kind: pick.kind, code: old });
            chosen.push((club, pick, parts));
        }
        let lines =
            lines_for(&mut tx, &file.library, &file.shop.clamp, chosen.iter().flat_map(|(.., parts)| parts)).await?;
        let changed = chosen
            .iter()
            .map(|(club, pick, parts)| {
                let reason = Because::OtherPart { kind: pick.kind, reason: None };
                let kinds = vec![(pick.kind, Told::from(reason))];
                Ok(Exchanged { club, plan: replan(&file, club, parts, &lines)?, kinds })
            })
            .collect::<Result<Vec<_>, AppError>>()?;
        exchange(&mut tx, &file, &changed, &take.by, self.now()).await?;
        for (club, pick, _) in &chosen {
            let note = serde_json::json!({ "kind": pick.kind.key(), "code": pick.code, "reason": "" });
            self.log(&mut tx, Some(&file.job.id), Some(&club.id), EventKind::PartSwapped, &take.by, note).await?;
        }
        tx.commit().await?;
        self.tell(Some(number), "plan");
        Ok(FitTaken { taken: picks, before, fit: self.fit(number).await? })
    }

    /// Two clubs that had each other's piece are put right, in one step: the readings that were taken with the wrong piece on
    /// count no more, and both clubs are read again.
    ///
    /// # Errors
    /// Not two clubs of the job with parts; a piece that is glued in; nobody named; what the store says.
    pub async fn exchange_parts(&self, number: i64, asked: &ExchangeParts) -> Result<PartsExchanged, AppError> {
        need_name(&asked.by)?;
        let mut tx = self.store.write().await?;
        let file = self.kept_job(&mut tx, number).await?;
        need_at_bench(&file.job)?;
        let [one, other] = two_clubs(&file, &asked.slots)?;
        let role = match asked.kind {
            PartKind::Head => Role::Head,
            PartKind::TipWeight => Role::TipWeight,
            PartKind::Grip => Role::Grip,
            kind => return Err(AppError::invalid(FitFault::Kind { kind })),
        };
        for club in [one, other] {
            if role != Role::Grip {
                need_changeable(&file, club, asked.kind)?;
            }
        }
        let wrong: Vec<&Reading> = with_wrong_piece(&file, [&one.id, &other.id], role)?;
        if wrong.is_empty() {
            return Err(AppError::conflict(FitFault::NotRead {
                kind: asked.kind,
                first: one.target.number.clone(),
                second: other.target.number.clone(),
            }));
        }
        let mut readings = Vec::with_capacity(wrong.len());
        for reading in wrong {
            let whose = if reading.club == one.id { other } else { one };
            let reason = Because::Exchanged { kind: asked.kind, club: whose.target.name() };
            tx.take_back(&reading.id, &reason.into(), &asked.by, self.now()).await?;
            readings.push(reading.id.clone());
        }
        let done = PartsExchanged { kind: asked.kind, slots: vec![one.slot, other.slot], readings };
        let note = serde_json::json!(done);
        self.log(&mut tx, Some(&file.job.id), None, EventKind::PartsExchanged, &asked.by, note).await?;
        tx.commit().await?;
        self.tell(Some(number), "reading");
        Ok(done)
    }

    /// Takes the last exchange of a job back: the readings count again as they were taken.
    ///
    /// # Errors
    /// No exchange; clubs that were read since; nobody named; what the store says.
    pub async fn undo_exchange(&self, number: i64, undo: &UndoExchange) -> Result<PartsExchanged, AppError> {
        need_name(&undo.by)?;
        let mut tx = self.store.write().await?;
        let file = self.kept_job(&mut tx, number).await?;
        need_at_bench(&file.job)?;
        let (event, done) = last_exchange(&mut tx, &file).await?;
        let clubs: Vec<ClubId> =
            done.slots.iter().map(|slot| Ok(file.club_at(*slot)?.id.clone())).collect::<Result<_, AppError>>()?;
        let since = standing(&file.readings).into_iter().find(|r| clubs.contains(&r.club) && r.at > event.at);
        if let Some(reading) = since {
            let number = file.job.club(&reading.club).map_or_else(String::new, |c| c.target.number.clone());
            return Err(AppError::conflict(FitFault::ReadSince { number }));
        }
        let mut readings = Vec::with_capacity(done.readings.len());
        for id in &done.readings {
            let Some(was) = file.readings.iter().find(|r| r.id == *id) else { continue };
            // A reading that was taken back stays so; the same entry stands again under an identity of its own.
            let again = Reading {
                id: crate::new_id().as_str().into(),
                replaces: None,
                taken_back: None,
                pivot_mm: None,
                insisted: false,
                ..was.clone()
            };
            readings.push(tx.append_reading(&again, None, None).await?.reading.id);
        }
        let note = serde_json::json!({ "exchange": event.id });
        self.log(&mut tx, Some(&file.job.id), None, EventKind::PartsExchangeUndone, &undo.by, note).await?;
        tx.commit().await?;
        self.tell(Some(number), "reading");
        Ok(PartsExchanged { readings, ..done })
    }
}

/// The last exchange of a job that was not taken back.
async fn last_exchange(tx: &mut Tx, file: &JobFile) -> Result<(Event, PartsExchanged), AppError> {
    let events = tx.events(Some(&file.job.id), 10_000).await?;
    let undone: Vec<EventId> = events
        .iter()
        .filter(|e| e.kind == EventKind::PartsExchangeUndone)
        .filter_map(|e| serde_json::from_value(e.body.get("exchange")?.clone()).ok())
        .collect();
    let mut exchanges = events.into_iter().filter(|e| e.kind == EventKind::PartsExchanged && !undone.contains(&e.id));
    let found = exchanges.next().and_then(|e| Some((serde_json::from_value(e.body.clone()).ok()?, e)));
    found
        .map(|(done, event)| (event, done))
        .ok_or_else(|| AppError::not_found(Noun::Reading, file.job.number.to_string(), &LookUp::LoadClub))
}

fn two_clubs<'f>(file: &'f JobFile, slots: &[i64]) -> Result<[&'f JobClub; 2], AppError> {
    let &[one, other] = slots else { return Err(AppError::invalid(FitFault::TwoClubs)) };
    if one == other {
        return Err(AppError::invalid(FitFault::TwoClubs));
    }
    let clubs = [file.club_at(one.min(other))?, file.club_at(one.max(other))?];
    match clubs.iter().find(|club| club.plan.is_none()) {
        Some(club) => Err(AppError::conflict(FitFault::NoParts { number: club.target.number.clone() })),
        None => Ok(clubs),
    }
}

/// The readings of two clubs with the piece on, from the first step on at which one of them is doubted; all of them where
/// none is.
fn with_wrong_piece<'f>(file: &'f KeptJob, clubs: [&ClubId; 2], role: Role) -> Result<Vec<&'f Reading>, AppError> {
    let believed = file.believe()?;
    let step_of = |reading: &Reading| file.job.steps.iter().position(|step| step.key == reading.step);
    let with: Vec<&Reading> = standing(&file.readings)
        .into_iter()
        .filter(|r| clubs.contains(&&r.club) && r.on.contains(&role) && r.what != trade::reading::What::Done)
        .collect();
    let doubted = with.iter().filter(|r| believed.is_doubted(&r.id)).filter_map(|r| step_of(r)).min();
    Ok(with.into_iter().filter(|r| doubted.is_none_or(|from| step_of(r) >= Some(from))).collect())
}

/// The picks, and those of the clubs whose planned grip goes onto another meanwhile.
fn with_partners(job: &Job, mut picks: Vec<FitPick>) -> Vec<FitPick> {
    let grip_of = |club: &'_ JobClub| Some((club.slot, club.plan.as_ref()?.part(PartKind::Grip)?.code.clone()));
    let planned: Vec<(i64, String)> = job.clubs.iter().filter_map(grip_of).collect();
    let planned: Vec<(i64, &str)> = planned.iter().map(|(slot, code)| (*slot, code.as_str())).collect();
    let grips = picks.iter().filter(|pick| pick.kind == PartKind::Grip);
    let taken: Vec<(i64, &str)> = grips.filter_map(|pick| Some((pick.slot, pick.code.iter().next()?))).collect();
    let partners: Vec<FitPick> = changing_places(&planned, &taken)
        .into_iter()
        .map(|(slot, code)| FitPick { slot, kind: PartKind::Grip, code: PartCodes::one(code) })
        .collect();
    picks.extend(partners);
    picks
}

/// Whether a part is there for a club of a set whose parts change together: free, or held by one of them that gives it up.
fn is_for_set(file: &JobFile, part: &Part, club: &JobClub, kind: PartKind, picks: &[FitPick]) -> bool {
    let gives_up = |id: &ClubId| {
        *id == club.id || file.job.club(id).is_some_and(|c| picks.iter().any(|p| p.slot == c.slot && p.kind == kind))
    };
    let held_here = part.state == PartState::Held && part.job.as_ref() == Some(&file.job.id);
    part.is_free() || (held_here && part.club.as_ref().is_some_and(gives_up))
}

fact::facts! {
    /// What is refused of fitting a set.
    pub(crate) enum FitFault: "fit_fault" {
        Nothing { job: i64 },
        Kind { kind: PartKind },
        Twice { slot: i64 },
        TwoClubs,
        NoParts { number: String },
        NotRead { kind: PartKind, first: String, second: String },
        ReadSince { number: String },
    }
}
