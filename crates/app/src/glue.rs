//! Adhesive: what to weigh out, the batch, its clocks.

use crate::clock_watch::ClockUse;
use crate::job::JobFile;
use crate::kept_job::KeptJob;
pub use crate::let_pass::{BatchLetPass, LetBatchPass};
use crate::let_pass::{CureLetPass, Given};
use crate::look_up::LookUp;
use crate::need::need_name;
use crate::{App, AppError, load_library, load_shop};
use bench::club_state::ClubState;
use bench::glue::{
    Batch, Mix, MixWarning, glued_from, gluing_words, is_gluing, mix, pot_life_until, ready_at, refuse_cold_room,
    room_warnings,
};
use bench::learned::Learned;
use fact::Told;
use jiff::{SignedDuration, Timestamp};
use serde::{Deserialize, Serialize};
use std::sync::Arc;
use store::Tx;
use trade::error::Noun;
use trade::event_kind::EventKind;
use trade::id::ClubId;
use trade::kind::Role;
use trade::model::Library;
use trade::reading::{Reading, Unit, What, standing};
use trade::shop::Shop;
use trade::step::{Step, Strength};
use utoipa::ToSchema;

/// A batch that is being mixed.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NewBatch {
    /// Number of the job.
    pub job: i64,
    /// Places in the tray of the clubs glued from it.
    #[schema(min_items = 1)]
    pub slots: Vec<i64>,
    /// Code of the adhesive; left out: the shop's own.
    #[serde(default)]
    pub adhesive: Option<String>,
    /// Lot on the tins.
    #[schema(min_length = 1, pattern = r"\S")]
    pub lot: String,
    /// Share of spacers, percent by mass; left out: the shop's own.
    #[serde(default)]
    #[schema(minimum = 0, maximum = 30)]
    pub bead_share_percent: Option<f64>,
    /// Temperature of the room; left out: the shop's own.
    #[serde(default)]
    #[schema(minimum = -10, maximum = 50)]
    pub room_c: Option<f64>,
    /// When it was mixed, for a cup that is entered late; left out: now. The pot life and the cure go by it.
    #[serde(default)]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub mixed_at: Option<Timestamp>,
    /// Why clubs are glued on which something is open (doubted, not read, off target, glued already); the record keeps it.
    /// Left out: such clubs are refused by name.
    #[serde(default)]
    pub reason: Option<String>,
    /// Why the clock may start in a room colder than the product's sheet: what the maker says at this temperature.
    #[serde(default)]
    pub cold_reason: Option<String>,
    /// Who mixes.
    pub by: String,
    /// A key of the sender's own: the same one again starts nothing twice.
    #[serde(default)]
    pub request_key: Option<String>,
}

/// Taking a batch back that was entered wrongly.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TakeBackBatch {
    /// Why, for the record.
    #[schema(min_length = 3)]
    pub reason: String,
    /// Who.
    pub by: String,
}

/// A batch with its clocks.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct BatchView {
    /// What was mixed: adhesive and lot, when, how warm the room was, and which clubs were glued from it.
    pub batch: Batch,
    /// Name of the adhesive's model; the batch itself holds its code.
    pub adhesive_name: String,
    /// Its clubs, job by job.
    pub clubs: Vec<GluedClubs>,
    /// When the cup goes off.
    #[schema(value_type = String, format = DateTime)]
    pub pot_life_until: Timestamp,
    /// When the clubs may be handled, gripped and balanced.
    #[schema(value_type = String, format = DateTime)]
    pub handling_at: Timestamp,
    /// When they may be bent, handed over and swung.
    #[schema(value_type = String, format = DateTime)]
    pub full_cure_at: Timestamp,
    /// What its room means for these times.
    pub warnings: Vec<MixWarning>,
    /// Where somebody let it pass before its time, the latest first.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub let_pass: Vec<BatchLetPass>,
}

/// Clubs of one job that were glued from a batch.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct GluedClubs {
    /// Number of the job.
    pub job: i64,
    /// Numbers of the clubs, in the order of the tray.
    pub numbers: Vec<String>,
}

/// A mixed cup and how long it is good.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cup {
    /// Number of its batch.
    pub number: i64,
    /// When it goes off.
    pub until: Timestamp,
}

impl From<&BatchView> for Cup {
    fn from(view: &BatchView) -> Self {
        Self { number: view.batch.number, until: view.pot_life_until }
    }
}

impl App {
    /// What to weigh out for a number of joints, and the times of the room.
    ///
    /// # Errors
    /// No joints, an unknown adhesive, a figure that no batch has; what the store says.
    pub async fn mix(
        &self,
        adhesive: Option<&str>,
        joints: usize,
        bead_share_percent: Option<f64>,
        room_c: Option<f64>,
    ) -> Result<Mix, AppError> {
        let mut tx = self.store.read().await?;
        let shop = load_shop(&mut tx).await?;
        let library = load_library(&mut tx).await?;
        let learned = crate::load_learned(&mut tx).await?;
        weigh_out(&shop, &library, &learned, adhesive, joints, bead_share_percent, room_c)
    }

    /// Starts a batch: its clocks run, and its clubs count as glued.
    ///
    /// # Errors
    /// Clubs on which something is open, without a reason; clubs that are not at the bench; no lot, nobody named; a room
    /// that is too cold for the product's sheet, without a reason; a time before the job or after now; a clock that cannot
    /// be relied on; what the store says.
    pub async fn start_batch(&self, new: &NewBatch) -> Result<BatchView, AppError> {
        let mut tx = self.store.write().await?;
        let file = self.kept_job(&mut tx, new.job).await?;
        if let Some(before) = batch_before(&mut tx, &file, new).await? {
            return view_of(before, &file);
        }
        crate::need::need_at_bench(&file.job)?;
        need_name(&new.by)?;
        self.need_sound_clock(&mut tx, ClockUse::Cure).await?;
        let now = self.now();
        if let Some(at) = new.mixed_at {
            crate::need::need_past(at, file.job.made_at, now)?;
        }
        if new.lot.trim().is_empty() {
            return Err(AppError::invalid(BatchFault::LotMissing));
        }
        let code = adhesive_code(new.adhesive.as_deref(), file.shop.adhesive.as_deref())?.to_owned();
        let room_c = new.room_c.unwrap_or(file.shop.room_c);
        let bead_share_percent = new.bead_share_percent.unwrap_or(file.shop.bead_share_percent);
        let model = file.library.adhesive(&code)?;
        refuse_cold_room(model, room_c, new.cold_reason.as_deref())?;
        let amounts = file.mix(Some(&code), new.slots.len(), Some(bead_share_percent), Some(room_c))?;
        let gluing = clubs_to_glue(&file, &new.slots)?;
        let clubs: Vec<ClubId> = gluing.iter().map(|(club, _)| club.clone()).collect();
        let believed = file.believe()?;
        let states = file.states_of(&believed, now)?;
        // Clubs of one cup may be glued at steps of different kinds of job: a head here, an extension there.
        let mut passed_over = Vec::new();
        for step in file.job.steps.iter().filter(|step| step.glues) {
            let of_step =
                |state: &&ClubState| gluing.iter().any(|(club, at)| *club == state.club && at.key == step.key);
            let states: Vec<ClubState> = states.iter().filter(of_step).cloned().collect();
            let open = file.open_on(&believed, &states, step)?;
            if let Some(reason) = crate::open::reason_for(step, &open, new.reason.as_deref())? {
                passed_over.push((step, open, reason));
            }
        }
        let batch = Batch {
            id: crate::new_id().as_str().into(),
            number: tx.next_batch_number().await?,
            adhesive: code,
            lot: new.lot.trim().to_owned(),
            clubs: clubs.clone(),
            bead_share_percent,
            room_c,
            cold_reason: new.cold_reason.as_deref().map(str::trim).filter(|r| !r.is_empty()).map(str::to_owned),
            resin_g: amounts.resin_g,
            hardener_g: amounts.hardener_g,
            beads_g: amounts.beads_g,
            mixed_at: new.mixed_at.unwrap_or(now),
            by: new.by.clone(),
            taken_back: None,
        };
        tx.insert_batch(&batch, new.request_key.as_deref()).await?;
        for (club, step) in &gluing {
            tx.append_reading(&glued_now(&file, step, club, &batch), None, None).await?;
        }
        for (step, open, reason) in &passed_over {
            self.pass_open(&mut tx, &file, step, open, reason, &new.by).await?;
        }
        let note = serde_json::json!({ "batch": batch.number, "lot": batch.lot });
        self.log(&mut tx, Some(&file.job.id), None, EventKind::BatchMixed, &new.by, note).await?;
        tx.commit().await?;
        self.tell(Some(new.job), "batch");
        view_of(batch, &file)
    }

    /// Takes a batch back that was entered wrongly: no club is glued from it, and its clocks stop. It stays in the record
    /// with the reason.
    ///
    /// # Errors
    /// No such batch; one that is taken back; a reading that rests on its joint; no reason, nobody named; what the store
    /// says.
    pub async fn take_back_batch(&self, number: i64, request: &TakeBackBatch) -> Result<BatchView, AppError> {
        crate::need::need_reason(&request.reason)?;
        need_name(&request.by)?;
        let why = request.reason.trim();
        let mut tx = self.store.write().await?;
        let (batch, file) = self.batch_of_job(&mut tx, number).await?;
        need_nothing_rests_on(&file, &batch)?;
        tx.take_back_batch(&batch.id, why, &request.by, self.now()).await?;
        // Readings that a later gluing replaced go too: they would stand again once that gluing is taken back.
        let glued = file.readings.iter().filter(|r| r.taken_back.is_none() && is_gluing(&file.job, r, &batch));
        for reading in glued {
            tx.take_back(&reading.id, &Told::verbatim(why), &request.by, self.now()).await?;
        }
        let note = serde_json::json!({ "batch": number, "reason": why });
        self.log(&mut tx, Some(&file.job.id), None, EventKind::BatchTakenBack, &request.by, note).await?;
        tx.commit().await?;
        self.tell(Some(file.job.number), "batch");
        view_of(Batch { taken_back: Some(why.to_owned()), ..batch }, &file)
    }

    /// Lets a batch pass before its time: all its clubs, at every step that needs no more than a strength, with one reason.
    ///
    /// # Errors
    /// No such batch; one that is taken back; no strength, no reason, nobody named; what the store says.
    pub async fn let_batch_pass(&self, number: i64, request: &LetBatchPass) -> Result<BatchView, AppError> {
        crate::need::need_reason(&request.reason)?;
        need_name(&request.by)?;
        if request.strength == Strength::None {
            return Err(AppError::invalid(BatchFault::NoStrength));
        }
        let mut tx = self.store.write().await?;
        let (batch, file) = self.batch_of_job(&mut tx, number).await?;
        if batch.taken_back.is_some() {
            return Err(AppError::conflict(BatchFault::TakenBack { batch: number }));
        }
        crate::need::need_at_bench(&file.job)?;
        let given = Given { strength: request.strength, step: None, reason: request.reason.trim(), by: &request.by };
        self.let_cure_pass(&mut tx, &file.job.id, &batch, given).await?;
        tx.commit().await?;
        self.tell(Some(file.job.number), "batch");
        let file = self.job_file(file.job.number).await?;
        view_of(batch, &file)
    }

    /// A batch by its number, and the job whose clubs were glued from it.
    async fn batch_of_job(&self, tx: &mut Tx, number: i64) -> Result<(Batch, Arc<KeptJob>), AppError> {
        let unknown = || AppError::not_found(Noun::Batch, number.to_string(), &LookUp::Glue);
        let batch = tx.batch_by_number(number).await?.ok_or_else(unknown)?;
        let job = match batch.clubs.first() {
            Some(club) => {
                let job = tx.job_of_club(club).await?;
                tx.job(&job).await?
            }
            None => None,
        };
        let job = job.ok_or_else(|| AppError::not_found(Noun::Job, number.to_string(), &LookUp::Glue))?;
        let file = self.kept_job_of(tx, job).await?;
        Ok((batch, file))
    }

    /// Cups that are still good, the latest first.
    ///
    /// # Errors
    /// What the store says.
    pub async fn running_cups(&self) -> Result<Vec<Cup>, AppError> {
        // No adhesive that a shop glues clubs with stays good for two days.
        let since = self.now() - SignedDuration::from_hours(48);
        let mut tx = self.store.read().await?;
        let batches = tx.batches_since(since).await?;
        if batches.is_empty() {
            return Ok(Vec::new());
        }
        let library = load_library(&mut tx).await?;
        let cup = |b: &Batch| Ok(Cup { number: b.number, until: pot_life_until(b, library.adhesive(&b.adhesive)?)? });
        let mut cups =
            batches.iter().rev().filter(|b| b.taken_back.is_none()).map(cup).collect::<Result<Vec<_>, AppError>>()?;
        cups.retain(|cup| cup.until > self.now());
        Ok(cups)
    }

    /// Batches of the last days whose clocks still matter, the latest first.
    ///
    /// # Errors
    /// What the store says.
    pub async fn recent_batches(&self, days: i64) -> Result<Vec<BatchView>, AppError> {
        let since = self.now() - SignedDuration::from_hours(24 * days);
        let mut tx = self.store.read().await?;
        let batches = tx.batches_since(since).await?;
        if batches.is_empty() {
            return Ok(Vec::new());
        }
        let library = load_library(&mut tx).await?;
        let mut glued = tx.clubs_glued_since(since).await?;
        let let_pass: Vec<CureLetPass> =
            tx.events_of_batches_since(EventKind::LetPass, since).await?.iter().filter_map(CureLetPass::of).collect();
        let mut views = Vec::with_capacity(batches.len());
        for batch in batches {
            let clubs = glued.remove(&batch.id).unwrap_or_default();
            let of_batch = let_pass_of(&batch, &let_pass);
            views.push(batch_view(batch, &library, &clubs, of_batch)?);
        }
        views.sort_by_key(|v| std::cmp::Reverse(v.batch.mixed_at));
        Ok(views)
    }
}

/// The batch that was started with the same key; a key that was used for another batch is refused.
async fn batch_before(tx: &mut Tx, file: &JobFile, new: &NewBatch) -> Result<Option<Batch>, AppError> {
    let Some(key) = &new.request_key else { return Ok(None) };
    let Some(before) = tx.batch_by_request_key(key).await? else { return Ok(None) };
    let slot_of = |id: &ClubId| file.job.club(id).map(|club| club.slot);
    let same_clubs = before.clubs.iter().map(slot_of).eq(new.slots.iter().map(|slot| Some(*slot)));
    let said = |figure: Option<f64>, kept: f64| figure.is_none_or(|figure| (figure - kept).abs() < 1e-9);
    // What moves the clocks or stands in the record counts: a time that is corrected under the old key would be lost.
    // What was left out was the shop's own, or now, when the batch was started.
    let same = same_clubs
        && before.lot == new.lot.trim()
        && new.adhesive.as_deref().map(str::trim).is_none_or(|code| code.is_empty() || code == before.adhesive)
        && said(new.bead_share_percent, before.bead_share_percent)
        && said(new.room_c, before.room_c)
        && new.mixed_at.is_none_or(|at| at == before.mixed_at);
    if same {
        return Ok(Some(before));
    }
    Err(AppError::conflict(BatchFault::StartedBefore { batch: before.number }))
}

/// The clubs at these places, each once, with their parts chosen, and the step where each is glued.
fn clubs_to_glue(file: &JobFile, slots: &[i64]) -> Result<Vec<(ClubId, Step)>, AppError> {
    if file.job.steps.iter().all(|step| !step.glues) {
        return Err(AppError::conflict(BatchFault::NoGluing { job: file.job.number }));
    }
    let mut clubs: Vec<(ClubId, Step)> = Vec::new();
    for &slot in slots {
        let club = file.club_at(slot)?;
        if club.plan.is_none() {
            return Err(AppError::conflict(BatchFault::NoParts { number: club.target.number.clone() }));
        }
        if clubs.iter().any(|(other, _)| *other == club.id) {
            return Err(AppError::invalid(BatchFault::ClubTwice { slot }));
        }
        let step = file.job.steps_of(club).find(|step| step.glues).cloned();
        let number = || club.target.number.clone();
        clubs.push((
            club.id.clone(),
            step.ok_or_else(|| AppError::conflict(BatchFault::NotGlued { number: number() }))?,
        ));
    }
    Ok(clubs)
}

/// That a club was glued from a batch, as a reading of its step.
fn glued_now(file: &JobFile, step: &Step, club: &ClubId, batch: &Batch) -> Reading {
    let before = standing(&file.readings).into_iter().rev().find(|r| r.club == *club && r.step == step.key);
    Reading {
        id: crate::new_id().as_str().into(),
        job: file.job.id.clone(),
        club: club.clone(),
        step: step.key.clone(),
        what: What::Done,
        value: 0.0,
        unit: Unit::None,
        typed: gluing_words(batch),
        on: step.on.clone(),
        scale: None,
        display_step: 0.0,
        at: batch.mixed_at,
        by: batch.by.clone(),
        replaces: before.map(|r| r.id.clone()),
        taken_back: None,
        pivot_mm: None,
        insisted: false,
        forecast: None,
    }
}

/// Refuses to take a gluing back by itself: the clocks of its batch would run on.
pub(crate) fn need_no_batch(file: &JobFile, reading: &Reading) -> Result<(), AppError> {
    let batch = file.batches.iter().find(|b| b.taken_back.is_none() && is_gluing(&file.job, reading, b));
    batch.map_or(Ok(()), |batch| Err(AppError::conflict(BatchFault::GluedAlready { batch: batch.number })))
}

/// Refuses where a club was read with the batch's adhesive on it: what was read is on a joint that is there.
fn need_nothing_rests_on(file: &JobFile, batch: &Batch) -> Result<(), AppError> {
    let rests = |r: &&&Reading| {
        let latest = glued_from(&file.batches, &r.club).is_some_and(|b| b.id == batch.id);
        let later =
            file.job.step(&r.step).is_some_and(|step| !step.glues && !step.before && step.on.contains(&Role::Adhesive));
        let done_since = file.job.step(&r.step).is_some_and(|step| step.needs != Strength::None);
        latest && (later || done_since)
    };
    let standing = standing(&file.readings);
    let Some(reading) = standing.iter().find(rests) else { return Ok(()) };
    let number = file.job.club(&reading.club).map_or("", |club| club.target.number.as_str());
    let step = file.job.step(&reading.step).map_or("", |step| step.label.as_str());
    Err(AppError::conflict(BatchFault::ReadSince {
        number: number.to_owned(),
        step: step.to_owned(),
        batch: batch.number,
    }))
}

fn view_of(batch: Batch, file: &JobFile) -> Result<BatchView, AppError> {
    let name = |id: &ClubId| file.job.club(id).map(|c| (file.job.number, c.target.number.clone()));
    let numbers: Vec<(i64, String)> = batch.clubs.iter().filter_map(name).collect();
    let of_batch = |l: &&bench::record::LetPass| l.batch == Some(batch.number) && Some(&l.club) == batch.clubs.first();
    let let_pass = file.let_pass.iter().filter(of_batch).filter_map(|l| {
        Some(BatchLetPass { strength: l.strength?, reason: l.reason.clone(), by: l.by.clone(), at: l.at })
    });
    let let_pass = let_pass.collect();
    batch_view(batch, &file.library, &numbers, let_pass)
}

/// Where a batch was let pass, of all that was let pass.
fn let_pass_of(batch: &Batch, let_pass: &[CureLetPass]) -> Vec<BatchLetPass> {
    let of_batch = let_pass.iter().filter_map(CureLetPass::of_batch);
    of_batch.filter(|(number, _)| *number == batch.number).map(|(_, let_pass)| let_pass).collect()
}

/// A batch with its clocks; its clubs by job number and number, in the order of jobs and trays.
fn batch_view(
    batch: Batch,
    library: &Library,
    glued: &[(i64, String)],
    let_pass: Vec<BatchLetPass>,
) -> Result<BatchView, AppError> {
    let adhesive = library.adhesive(&batch.adhesive)?;
    let clubs = glued
        .chunk_by(|a, b| a.0 == b.0)
        .map(|of_job| GluedClubs {
            job: of_job[0].0,
            numbers: of_job.iter().map(|(_, number)| number.clone()).collect(),
        })
        .collect();
    let at = |strength| ready_at(&batch, adhesive, strength).map(|t| t.unwrap_or(batch.mixed_at));
    Ok(BatchView {
        pot_life_until: pot_life_until(&batch, adhesive)?,
        handling_at: at(Strength::Handling)?,
        full_cure_at: at(Strength::Full)?,
        adhesive_name: adhesive.name.clone(),
        warnings: room_warnings(adhesive, batch.room_c),
        clubs,
        let_pass,
        batch,
    })
}

impl JobFile {
    /// [`App::mix`] by what is loaded already.
    ///
    /// # Errors
    /// No joints, an unknown adhesive, a figure that no batch has.
    pub fn mix(
        &self,
        adhesive: Option<&str>,
        joints: usize,
        bead_share_percent: Option<f64>,
        room_c: Option<f64>,
    ) -> Result<Mix, AppError> {
        weigh_out(&self.shop, &self.library, &self.learned, adhesive, joints, bead_share_percent, room_c)
    }
}

/// What is left out is the shop's own.
fn weigh_out(
    shop: &Shop,
    library: &Library,
    learned: &Learned,
    adhesive: Option<&str>,
    joints: usize,
    bead_share_percent: Option<f64>,
    room_c: Option<f64>,
) -> Result<Mix, AppError> {
    let model = library.adhesive(adhesive_code(adhesive, shop.adhesive.as_deref())?)?;
    let bead_share_percent = bead_share_percent.unwrap_or(shop.bead_share_percent);
    let room_c = room_c.unwrap_or(shop.room_c);
    Ok(mix(model, joints, learned.joint_mass_g(model), bead_share_percent, room_c)?)
}

fn adhesive_code<'a>(asked: Option<&'a str>, own: Option<&'a str>) -> Result<&'a str, AppError> {
    asked.filter(|c| !c.trim().is_empty()).or(own).ok_or_else(|| AppError::invalid(BatchFault::NoAdhesive))
}

fact::facts! {
    /// What is refused of gluing clubs.
    pub(crate) enum BatchFault: "batch_fault" {
        LotMissing,
        NoStrength,
        TakenBack { batch: i64 },
        StartedBefore { batch: i64 },
        NoGluing { job: i64 },
        NoParts { number: String },
        ClubTwice { slot: i64 },
        NotGlued { number: String },
        GluedAlready { batch: i64 },
        ReadSince { number: String, step: String, batch: i64 },
        NoAdhesive,
    }
}
