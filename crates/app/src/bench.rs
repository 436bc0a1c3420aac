//! The bench: readings in, what they mean out.

use crate::clock_watch::ClockUse;
pub use crate::entry::{Entry, check_typed};
use crate::entry::{EntryRefused, need_once, value_of};
use crate::job::JobFile;
use crate::kept_job::KeptJob;
use crate::lanes::Lane;
use crate::let_pass::Given;
pub use crate::let_pass::LetPassRequest;
use crate::look_up::LookUp;
use crate::meanwhile::{Shown, need_unread, request_key};
use crate::need::{need_at_bench, need_name, need_past, need_reason};
use crate::open::reason_for;
use crate::{App, AppError};
use bench::belief::{Believed, Expectation};
use bench::cause::{Cause, Likely, Telling};
use bench::club_state::{ClubState, StepStatus};
use bench::glue::{Gate, glued_from};
use bench::meaning::Meaning;
use bench::offer::Bundle;
use bench::open_point::Final;
use bench::remedy::{Ranking, Remedy};
use fact::Fact;
use serde::{Deserialize, Serialize};
use std::sync::Arc;
use store::Tx;
use trade::because::{self, Because};
use trade::error::{Noun, within};
use trade::event_kind::EventKind;
use trade::id::{ClubId, ReadingId};
use trade::job::{JobClub, JobState};
use trade::kind::Role;
use trade::reading::{Reading, Unit, What, check_value};
use trade::step::{Step, Strength};
use utoipa::ToSchema;

/// Readings of one club at one step: all are kept or none.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NewReadings {
    /// Place in the tray.
    pub slot: i64,
    /// Key of the step.
    pub step: String,
    /// What was read.
    pub entries: Vec<Entry>,
    /// What was on the club; left out: what the step says.
    #[serde(default)]
    pub on: Option<Vec<Role>>,
    /// Who.
    pub by: String,
    /// Version of the club that the screen showed; left out: not checked.
    #[serde(default)]
    pub version: Option<i64>,
    /// Readings of the club at this step that the sender knows: ids of those that its screen showed, and request keys of its
    /// own entries. An entry with `at` whose version is out of date is kept all the same, unless it would take the place of a
    /// reading that is not among them.
    #[serde(default)]
    pub seen: Vec<String>,
    /// When it was read, for entries that a screen kept while the network was away; left out: now.
    #[serde(default)]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub at: Option<jiff::Timestamp>,
    /// Why a shaft is cut, a club bent or handed over on which something is open (doubted, not read, off); the record keeps
    /// it. Left out: such a club is refused by name, unless it was passed over before.
    #[serde(default)]
    pub reason: Option<String>,
    /// A key of the sender's own: the same one again keeps nothing twice.
    #[serde(default)]
    pub request_key: Option<String>,
}

/// What became of readings.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct Kept {
    /// The readings as kept.
    pub readings: Vec<Reading>,
    /// What the last of them means.
    pub meaning: Meaning,
    /// What can still be done, the best first.
    pub remedies: Vec<Remedy>,
    /// Where the club stands now.
    pub club: ClubState,
    /// Whether these had been sent before; nothing was kept twice.
    pub repeated: bool,
}

/// A doubted reading with what may be behind it.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct DoubtedReading {
    /// The doubted reading, as it was kept.
    pub reading: Reading,
    /// What is likely; none where nothing is known of it.
    #[serde(flatten, skip_serializing_if = "Option::is_none")]
    #[schema(schema_with = fact::schema_where_any)]
    pub likely: Option<Likely>,
    /// Causes, the likeliest first.
    pub causes: Vec<Cause>,
    /// The measurement that would tell the leading ones apart.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub telling: Option<Telling>,
}

impl App {
    /// Keeps readings of one club, all or none, and says what they mean.
    ///
    /// # Errors
    /// An entry that cannot be read or cannot be; a step that waits for its cure; a club that changed on another
    /// screen; what the store says.
    pub async fn read(&self, number: i64, new: &NewReadings) -> Result<Kept, AppError> {
        let mut tx = self.store.write().await?.signed(&new.by);
        let job = self.kept_job(&mut tx, number).await?;
        let club = job.club_at(new.slot)?.clone();
        job.step(&new.step)?;
        let before = self.kept_before(&mut tx, &job, &club, new).await?;
        let repeated = before.is_some();
        let (job, kept) = match before {
            Some(kept) => (job, kept),
            None => self.keep(&mut tx, &job, new).await?,
        };
        // Nothing is kept that the belief of the job cannot work with: every later look at the job would fail.
        let believed = job.believe()?;
        // From here on the reading is safe and it is the next writer's turn; what it means is worked out after.
        if repeated {
            drop(tx);
        } else {
            self.commit_with(tx, &job).await?;
            self.tell(Some(number), "reading");
        }
        self.on_lane(Lane::Bench, || self.answer(&job, &believed, kept, repeated)).await
    }

    /// Keeps readings that were not sent before, with what follows from them, in a transaction that the caller commits:
    /// the job as it is then, and the readings.
    ///
    /// The belief is solved before the readings come in, since each is kept with what was expected of it, and the caller
    /// solves it with them: no solve can be had from the other, as every reading is tested against all others.
    ///
    /// # Errors
    /// A club that is not of the job or was changed since, an entry that cannot be read or looks wrong; what the store
    /// says.
    pub async fn keep(
        &self,
        tx: &mut Tx,
        file: &KeptJob,
        new: &NewReadings,
    ) -> Result<(Arc<KeptJob>, Vec<Reading>), AppError> {
        let club = file.club_at(new.slot)?;
        let step = file.step(&new.step)?;
        need_at_bench(&file.job)?;
        if new.entries.is_empty() {
            return Err(AppError::invalid(EntryRefused::Nothing { step: step.label.clone() }));
        }
        need_once(&new.entries)?;
        let waits_for_cure = step.needs != Strength::None;
        self.need_sound_clock(tx, if waits_for_cure { ClockUse::Cure } else { ClockUse::Reading }).await?;
        if let Some(at) = new.at {
            need_past(at, file.job.made_at, self.now())?;
        }
        // What was sent at once was read at once.
        let at = new.at.unwrap_or_else(|| self.now());
        let readings = new
            .entries
            .iter()
            .map(|entry| reading_of_entry(file, club, step, new, entry, at))
            .collect::<Result<Vec<_>, _>>()?;
        let readings = with_forecasts(file, readings)?;
        let typed: Vec<(&Reading, bool)> = readings.iter().zip(new.entries.iter().map(|e| e.again)).collect();
        let shown = Shown { version: new.version, late: new.at.is_some(), seen: &new.seen };
        need_unread(tx, file, club, &typed, shown).await?;
        // After the entries were read: a slip of the key is said at once, not after the cure.
        self.need_gate(file, club, step)?;
        let passed = self.need_clear(tx, file, club, step, new).await?;
        let (mut kept, mut came_in, mut version) = (Vec::with_capacity(readings.len()), Vec::new(), club.version);
        for (i, reading) in readings.iter().enumerate() {
            let key = new.request_key.as_ref().map(|k| request_key(k, i));
            let appended = tx.append_reading(reading, None, key.as_deref()).await?;
            version = appended.club_version;
            if !appended.repeated {
                came_in.push(appended.reading.clone());
            }
            kept.push(appended.reading);
            self.note_bench_check(tx, &file.shop, reading).await?;
        }
        let last = file.job.is_last_of(club, step);
        let club = club.id.clone();
        let after = file.after(tx, &club, version, came_in).await?;
        let after = if passed { after.with_passed(tx).await? } else { after };
        // Only the last step of a club has consequences.
        let after = if last { self.finished(tx, after, &club, new).await? } else { after };
        Ok((after, kept))
    }

    /// The readings that were sent before with the same key; none where the key is new.
    ///
    /// Every entry of the request must be the one that was kept: a corrected second figure under the key of the first
    /// attempt is another request, and must not be taken for the old one.
    async fn kept_before(
        &self,
        tx: &mut Tx,
        file: &JobFile,
        club: &JobClub,
        new: &NewReadings,
    ) -> Result<Option<Vec<Reading>>, AppError> {
        let Some(key) = &new.request_key else { return Ok(None) };
        let mut kept = Vec::new();
        while let Some(reading) = tx.reading_by_request_key(&request_key(key, kept.len())).await? {
            kept.push(reading);
        }
        let Some(first) = kept.first() else { return Ok(None) };
        let same = |(entry, reading): (&Entry, &Reading)| {
            entry.what == reading.what && value_of(entry, &file.shop.pendulum).is_ok_and(|value| value == reading.value)
        };
        let all_same = kept.len() == new.entries.len() && new.entries.iter().zip(&kept).all(same);
        if first.club != club.id || first.step != new.step || !all_same {
            let as_kept = |r: &Reading| EntryRefused::AsKept { what: r.what, typed: r.typed.clone() }.into();
            return Err(AppError::conflict(EntryRefused::KeptBefore { entries: kept.iter().map(as_kept).collect() }));
        }
        // As they stand in the job: what was taken back since says so.
        let as_it_stands = |r: Reading| file.readings.iter().find(|other| other.id == r.id).cloned().unwrap_or(r);
        Ok(Some(kept.into_iter().map(as_it_stands).collect()))
    }

    /// Takes a reading back: "that was wrong". It stays in the record.
    ///
    /// # Errors
    /// No such reading; one that is taken back already; what the store says.
    pub async fn take_back(
        &self,
        number: i64,
        reading: &ReadingId,
        why: &str,
        by: &str,
    ) -> Result<ClubState, AppError> {
        let mut tx = self.store.write().await?;
        let file = self.kept_job(&mut tx, number).await?;
        let found = reading_of(&file, reading)?;
        if found.taken_back.is_some() {
            return Err(AppError::conflict(EntryRefused::TakenBack));
        }
        crate::glue::need_no_batch(&file, found)?;
        let club = found.club.clone();
        let reason = because::typed(why).unwrap_or_else(|| Because::Wrong.told());
        tx.take_back(reading, &reason, by, self.now()).await?;
        self.withdraw_bench_check(&mut tx, &file.shop, reading.as_str(), reason, by).await?;
        let file = self.kept_job(&mut tx, number).await?;
        let believed = file.believe()?;
        self.commit_with(tx, &file).await?;
        self.tell(Some(number), "reading");
        self.on_lane(Lane::Bench, || self.state_of(&file, &believed, &club)).await
    }

    /// The builder stands by a doubted reading: it is believed, and the record says so.
    ///
    /// # Errors
    /// No such reading; no reason; what the store says.
    pub async fn insist(&self, number: i64, reading: &ReadingId, why: &str, by: &str) -> Result<ClubState, AppError> {
        need_reason(why)?;
        let mut tx = self.store.write().await?;
        let club = reading_of(&*self.kept_job(&mut tx, number).await?, reading)?.club.clone();
        tx.insist(reading, why.trim(), by, self.now()).await?;
        let file = self.kept_job(&mut tx, number).await?;
        let believed = file.believe()?;
        self.commit_with(tx, &file).await?;
        self.tell(Some(number), "reading");
        self.on_lane(Lane::Bench, || self.state_of(&file, &believed, &club)).await
    }

    /// Lets a step of a club pass before its strength, with a reason that the record keeps. Where the club is in a batch, the
    /// override belongs to the batch: all its clubs and all steps that need no more than this one.
    ///
    /// # Errors
    /// No reason, nobody named; no such club or step; what the store says.
    pub async fn let_pass(&self, number: i64, request: &LetPassRequest) -> Result<(), AppError> {
        need_reason(&request.reason)?;
        need_name(&request.by)?;
        let mut tx = self.store.write().await?;
        let file = self.kept_job(&mut tx, number).await?;
        let club = file.club_at(request.slot)?;
        let step = file.step(&request.step)?;
        match glued_from(&file.batches, &club.id) {
            Some(batch) if step.needs != Strength::None => {
                let given = Given { strength: step.needs, step: Some(step), reason: &request.reason, by: &request.by };
                self.let_cure_pass(&mut tx, &file.job.id, batch, given).await?;
            }
            _ => {
                let note = serde_json::json!({ "step": request.step, "reason": request.reason.trim() });
                self.log(&mut tx, Some(&file.job.id), Some(&club.id), EventKind::LetPass, &request.by, note).await?;
            }
        }
        tx.commit().await?;
        self.tell(Some(number), "reading");
        Ok(())
    }

    /// What the readings of a club at a step mean, where none was taken there its last reading; what can still be done about
    /// it, and which extra measurements are worth their minutes; from a belief that the caller has already.
    ///
    /// # Errors
    /// No such club; figures that the belief cannot work with.
    pub fn at_bench(
        &self,
        file: &KeptJob,
        believed: &Believed<'_>,
        slot: i64,
        step: &str,
    ) -> Result<AtBench, AppError> {
        let club = file.club_at(slot)?;
        let standing = trade::reading::standing(&file.readings);
        let of_club = || standing.iter().rev().filter(|r| r.club == club.id && r.what != What::Done);
        // One verdict over all readings of a step: a doubted one before the last one.
        let here = || of_club().filter(|r| r.step == step);
        let last = here().find(|r| believed.is_doubted(&r.id)).or_else(|| here().next()).or_else(|| of_club().next());
        let last = last.map(|r| (*r).clone());
        let state = self.state_of(file, believed, &club.id)?;
        let Ranking { remedies, chance_ahead } = file.ranking(believed, &state)?;
        let spares = file.spares();
        let meaning =
            last.map(|reading| bench::meaning::meaning(believed, &state, &reading, &spares, &remedies)).transpose()?;
        let offers = file.offers(believed, &club.id)?;
        Ok(AtBench { meaning, remedies, chance_ahead, offers })
    }

    /// What may be behind each doubted reading of a club, the latest last; empty where none is doubted.
    ///
    /// # Errors
    /// No such job or club; figures that the belief cannot work with; what the store says.
    pub async fn causes(&self, number: i64, slot: i64) -> Result<Vec<DoubtedReading>, AppError> {
        let file = self.job_file(number).await?;
        let club = file.club_at(slot)?;
        let believed = file.believe()?;
        let spares = file.spares();
        let standing = believed.standing();
        let doubted = standing.into_iter().filter(|r| r.club == club.id && believed.is_doubted(&r.id));
        doubted
            .map(|reading| {
                let inquest = bench::cause::inquire(&believed, reading, &spares)?;
                let likely = inquest.likely();
                let bench::cause::Inquest { causes, telling } = inquest;
                Ok(DoubtedReading { reading: reading.clone(), likely, causes, telling })
            })
            .collect()
    }

    fn need_gate(&self, file: &JobFile, club: &JobClub, step: &Step) -> Result<(), AppError> {
        let around = file.around(self.now());
        match Gate::of(file.assembly(), club, step, around.batches, around.overrides, around.now)? {
            Gate::Open | Gate::LetPass => Ok(()),
            Gate::Waits { strength, until } => Err(AppError::Waits { step: step.label.clone(), strength, until }),
            Gate::NotGlued => {
                Err(AppError::NotGlued { step: step.label.clone(), strength: step.needs, slot: club.slot })
            }
        }
    }

    /// Refuses to go on with a club on which something is open, at a step that cannot be undone and that a reading tells of:
    /// the shaft is cut, the hosel bent. With a reason it goes on, and that is kept: gives whether it was.
    async fn need_clear(
        &self,
        tx: &mut Tx,
        file: &KeptJob,
        club: &JobClub,
        step: &Step,
        new: &NewReadings,
    ) -> Result<bool, AppError> {
        if !matches!(Final::of(&file.job, step), Some(Final::Cut | Final::Bend)) {
            return Ok(false);
        }
        let believed = file.believe()?;
        let state = self.state_of(file, &believed, &club.id)?;
        let open = file.open_on(&believed, std::slice::from_ref(&state), step)?;
        let Some(reason) = reason_for(step, &open, new.reason.as_deref())? else { return Ok(false) };
        need_name(&new.by)?;
        self.pass_open(tx, file, step, &open, reason, &new.by).await?;
        Ok(true)
    }

    /// What follows from a finished last step: the club's parts are used; with the last club the job is finished. A club
    /// on which something is open is not handed over without a reason.
    async fn finished(
        &self,
        tx: &mut Tx,
        file: Arc<KeptJob>,
        club: &ClubId,
        new: &NewReadings,
    ) -> Result<Arc<KeptJob>, AppError> {
        let believed = file.believe()?;
        let states = file.states_of(&believed, self.now())?;
        let done = |s: &ClubState| s.steps.last().is_some_and(|step| step.status == StepStatus::Done);
        let Some(state) = states.iter().find(|s| s.club == *club && done(s)) else { return Ok(file) };
        let last = file.job.club(club).and_then(|club| file.job.steps_of(club).last());
        if let Some(step) = last.filter(|step| !step.glues) {
            let open = file.open_on(&believed, std::slice::from_ref(state), step)?;
            if let Some(reason) = reason_for(step, &open, new.reason.as_deref())? {
                need_name(&new.by)?;
                self.pass_open(tx, &file, step, &open, reason, &new.by).await?;
            }
        }
        tx.use_club_parts(club, self.now()).await?;
        self.lives_on(tx, &file, &believed, club, &new.by).await?;
        let built: Vec<&ClubId> = file.job.clubs.iter().filter(|c| c.plan.is_some()).map(|c| &c.id).collect();
        if states.iter().filter(|s| built.contains(&&s.club)).all(done) {
            let mut job = file.job.clone();
            job.state = JobState::Finished;
            tx.save_job(&job).await?;
            self.log(tx, Some(&job.id), None, EventKind::JobFinished, &new.by, serde_json::json!({})).await?;
            self.learn_from(tx, &file, &new.by).await?;
        }
        // The parts, the state of the job and what the shop has learned are others now.
        self.kept_job(tx, file.job.number).await
    }

    /// What readings that were kept mean.
    fn answer(
        &self,
        file: &KeptJob,
        believed: &Believed<'_>,
        kept: Vec<Reading>,
        repeated: bool,
    ) -> Result<Kept, AppError> {
        let last = kept.last().ok_or_else(|| AppError::invalid(EntryRefused::NotKept))?;
        let club = self.state_of(file, believed, &last.club)?;
        // A doubted one among several entries is what the builder must hear of.
        let telling = kept.iter().find(|r| believed.is_doubted(&r.id)).unwrap_or(last);
        let remedies = file.remedies(believed, &club)?;
        let meaning = bench::meaning::meaning(believed, &club, telling, &file.spares(), &remedies)?;
        Ok(Kept { meaning, remedies, club, readings: kept, repeated })
    }

    /// Where one club stands, from a belief that the caller has already.
    fn state_of(&self, file: &JobFile, believed: &Believed<'_>, club: &ClubId) -> Result<ClubState, AppError> {
        let club =
            file.job.club(club).ok_or_else(|| AppError::not_found(Noun::Club, club.as_str(), &LookUp::LoadJob))?;
        Ok(bench::club_state::club_state(believed, file.around(self.now()), club)?)
    }
}

/// What a club's screen says of it.
#[derive(Debug, Clone)]
pub struct AtBench {
    /// What its last reading means; none before it.
    pub meaning: Option<Meaning>,
    /// What can still be done, the best first.
    pub remedies: Vec<Remedy>,
    /// Chance of finishing in tolerance if nothing is changed now, under the same conditions as those of the remedies.
    pub chance_ahead: Option<f64>,
    /// Extra measurements that are worth their while together, the most worth a minute first.
    pub offers: Bundle,
}

/// A reading as it would be kept.
fn reading_of_entry(
    file: &JobFile,
    club: &JobClub,
    step: &Step,
    new: &NewReadings,
    entry: &Entry,
    at: jiff::Timestamp,
) -> Result<Reading, AppError> {
    let value = value_of(entry, &file.shop.pendulum)?;
    check_value(entry.what, value)?;
    let pivot_mm = pivot_of(file, entry)?;
    let replaces = trade::reading::standing(&file.readings)
        .into_iter()
        .rev()
        // A swing from another pivot is another measurement.
        .find(|r| {
            let same = r.club == club.id && r.step == step.key && r.what == entry.what;
            same && r.pivot_mm == pivot_mm && !entry.again
        })
        .map(|r| r.id.clone());
    let (scale, display_step) = match entry.what.unit() {
        Unit::Points => (Some(&file.shop.balance_scale), file.shop.balance_scale.display_step),
        Unit::Gram => (Some(&file.shop.mass_scale), file.shop.mass_scale.display_step),
        _ => (None, 0.0),
    };
    let typed = entry.typed.trim();
    // With how many swings it is of, whatever the shop's pendulum is set to later.
    let typed = match typed.split_once('@').unwrap_or((typed, "")) {
        (time, _) if entry.what == What::SwingPeriod && !time.is_empty() && !time.contains('/') => {
            format!("{}/{}", time.trim(), file.shop.pendulum.swings)
        }
        _ => typed.to_owned(),
    };
    Ok(Reading {
        id: crate::new_id().as_str().into(),
        job: file.job.id.clone(),
        club: club.id.clone(),
        step: step.key.clone(),
        what: entry.what,
        value,
        unit: entry.what.unit(),
        typed: if typed.is_empty() { value.to_string() } else { typed },
        on: new.on.clone().unwrap_or_else(|| step.on.clone()),
        scale: scale.map(|s| s.key.clone()),
        display_step,
        at,
        by: new.by.clone(),
        replaces,
        taken_back: None,
        pivot_mm,
        insisted: false,
        forecast: None,
    })
}

/// Where the club hung while it was timed; none for all else.
fn pivot_of(file: &JobFile, entry: &Entry) -> Result<Option<f64>, AppError> {
    if let Some(pivot_mm) = entry.pivot_mm {
        within("pivot_mm", pivot_mm, -200.0, 500.0, "mm")?;
    }
    if entry.what != What::SwingPeriod {
        return Ok(None);
    }
    let pendulum = &file.shop.pendulum;
    let typed = if entry.value.is_some() { None } else { pendulum.timed(&entry.typed)?.pivot_mm };
    let pivot_mm = entry.pivot_mm.or(typed).unwrap_or(pendulum.pivot_mm);
    Ok(Some(within("pivot_mm", pivot_mm, -200.0, 500.0, "mm")?))
}

fn reading_of<'a>(file: &'a JobFile, id: &ReadingId) -> Result<&'a Reading, AppError> {
    file.readings
        .iter()
        .find(|r| r.id == *id)
        .ok_or_else(|| AppError::not_found(Noun::Reading, id.as_str(), &LookUp::LoadClub))
}

/// Readings with what the bench expected before they came. One that takes another's place is held against the forecast
/// without that other: what was wrong must not make itself look right.
fn with_forecasts(file: &KeptJob, readings: Vec<Reading>) -> Result<Vec<Reading>, AppError> {
    let replaced: Vec<ReadingId> = readings.iter().filter_map(|r| r.replaces.clone()).collect();
    file.believing_without(&replaced, |believed| {
        let with = |reading: Reading| {
            let expected = believed.expected_reading(&reading)?;
            Ok(Reading { forecast: expected.map(Expectation::stood), ..reading })
        };
        readings.into_iter().map(with).collect()
    })
}
