//! The past of the invented shop: jobs that are really run through the bench's own calls, on a clock set weeks back,
//! with readings of clubs whose truth is [`simulation::past`]. What the advice says is done.

use crate::PastJob;
use app::bench::{DoubtedReading, Entry, NewReadings};
use app::clock::{Clock as _, SetClock};
use app::glue::{BatchView, NewBatch};
use app::kept_job::KeptJob;
use app::plan::{Accept, Swap};
use app::scale_health::NewCheck;
use app::sheet::Approve;
use app::{App, AppError};
use bench::cause::CauseKind;
use bench::offer::{Measure, offers};
use bench::record::{ClubRecord, Verdict};
use jiff::civil::Date;
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp, ToSpan};
use quantity::{Length, SwingWeight, decimal};
use simulation::advice::{choose_grips, choose_tips};
use simulation::past::{Assembled, Occasion, PastShop};
use std::sync::Arc;
use store::{PartFilter, Tx};
use trade::gauge::{Measures, print_value};
use trade::id::ReadingId;
use trade::job::JobClub;
use trade::kind::Role;
use trade::model::PartKind;
use trade::part::{Part, PartState};
use trade::part_codes::PartCodes;
use trade::reading::{Unit, What};
use trade::step::{Step, Strength};

/// Who does what in the demonstration.
pub(crate) const BY: &str = "Ines";
/// Extra measurements that a club is taken up for, at most, and the clubs that they are made on.
const EXTRAS: usize = 2;
const EXTRAS_ON: usize = 2;
/// From which reading of a club on one counts beside the first, instead of taking its place.
const AGAIN: u64 = 2;
/// How often the reference club is put on the scale of the bench's first day.
const REFERENCE_SEATED: u64 = 4;
/// How often a check weight is read of a morning.
const CHECKS: u64 = 2;
/// Minutes for taking a club up, and for each thing that is read of it.
const MINUTES: (i64, i64) = (2, 2);

/// Builds the finished jobs, the earliest first.
pub(crate) async fn load_past(app: &App, seed: u64) -> Result<(), AppError> {
    let shop = PastShop::of(seed);
    for (place, job) in crate::past(app.today()).iter().enumerate() {
        let clock = Arc::new(SetClock::at(morning(job.begun)));
        let app = app.on_clock(clock.clone());
        // Once, in the first set, a weight stays in the tray.
        PastWork::begin(app, clock, &shop, job, place == 0).await?.run().await?;
    }
    Ok(())
}

/// Accepts the plan of a job as it is proposed.
pub(crate) async fn plan(app: &App, number: i64) -> Result<(), AppError> {
    let proposal = app.propose(number, &[]).await?;
    let accept = Accept {
        fingerprint: proposal.fingerprint,
        locks: Vec::new(),
        partly: true,
        neighbour_reason: String::new(),
        by: BY.into(),
    };
    app.accept(number, &accept).await?;
    Ok(())
}

/// When the shop opens on a day.
pub(crate) fn morning(day: Date) -> Timestamp {
    // A day far outside of the calendar has no morning; none of the past is.
    TimeZone::system().to_timestamp(day.at(8, 30, 0, 0)).unwrap_or(Timestamp::UNIX_EPOCH)
}

/// The work on one job.
struct PastWork<'a> {
    app: App,
    clock: Arc<SetClock>,
    shop: &'a PastShop,
    number: i64,
    steps: Vec<Step>,
    parts: Vec<Part>,
    /// The job as it stands.
    file: Arc<KeptJob>,
    begun: Date,
    /// Days since the first.
    day: i64,
    batch: Option<BatchView>,
    /// Readings of a step that are not on disk yet: all clubs of a step are kept at once.
    open: Option<Tx>,
    slip: bool,
}

impl<'a> PastWork<'a> {
    /// Saves the sheet, approves it, accepts its plan.
    async fn begin(
        app: App,
        clock: Arc<SetClock>,
        shop: &'a PastShop,
        job: &PastJob,
        slip: bool,
    ) -> Result<Self, AppError> {
        let saved = app.save_sheet(&job.sheet).await?;
        let made = app.approve_sheet(&saved.id, &Approve { steps: None, by: BY.into() }).await?;
        plan(&app, made.number).await?;
        let parts = app.store().read().await?.parts(&PartFilter::default()).await?;
        Ok(Self {
            file: app.job_file(made.number).await?,
            app,
            clock,
            shop,
            number: made.number,
            steps: made.steps,
            parts,
            begun: job.begun,
            day: 0,
            batch: None,
            open: None,
            slip,
        })
    }

    /// Ines begins a job, Tobin takes the next day.
    fn by(&self) -> String {
        if self.day % 2 == 0 { BY.into() } else { "Tobin".into() }
    }

    fn later(&self, minutes: i64) {
        self.clock.advance(SignedDuration::from_mins(minutes));
    }

    /// Puts the clock to a morning of the job, and checks the scales.
    async fn morning_of(&mut self, day: i64) -> Result<(), AppError> {
        self.day = day;
        let opens = morning(self.begun.saturating_add(day.days()));
        self.clock.advance(opens.duration_since(self.clock.now()));
        for gauge in self.file.shop.instruments() {
            let Some(standard) = self.file.shop.standards_of(&gauge.key).into_iter().next() else { continue };
            for nth in 0..CHECKS {
                self.later(1);
                let when = self.occasion(0, 0, nth);
                let shown = match gauge.measures {
                    Measures::SwingWeight => self.shop.shows_check_weight(standard.value, when),
                    Measures::Mass => self.shop.shows_mass(standard.value, when),
                    _ => continue,
                };
                let check = NewCheck {
                    standard: Some(standard.key.clone()),
                    typed: print_value(&gauge, shown),
                    confirmed: true,
                    at: None,
                    by: self.by(),
                    request_key: None,
                };
                self.app.check_scale(&gauge.key, &check).await?;
            }
        }
        self.look().await
    }

    /// The job as it stands now.
    async fn look(&mut self) -> Result<(), AppError> {
        self.file = self.app.job_file(self.number).await?;
        Ok(())
    }

    fn clubs(&self) -> Vec<JobClub> {
        self.file.job.clubs.clone()
    }

    fn occasion(&self, slot: i64, step: usize, nth: u64) -> Occasion {
        let opened = morning(self.begun.saturating_add(self.day.days()));
        let hours = self.clock.now().duration_since(opened).as_secs_f64() / 3600.0;
        Occasion { job: self.number, slot, step, nth, day: self.day, hours }
    }

    async fn run(mut self) -> Result<(), AppError> {
        for at in 0..self.steps.len() {
            let step = self.steps[at].clone();
            self.wait_for(at, &step).await?;
            for (role, kind) in [(Role::TipWeight, PartKind::TipWeight), (Role::Grip, PartKind::Grip)] {
                if step.on.contains(&role) && !self.steps[..at].iter().any(|s| s.on.contains(&role)) {
                    self.choose(kind, at).await?;
                }
            }
            if step.glues {
                self.glue().await?;
                continue;
            }
            let clubs = self.clubs();
            let forgotten = self.forgotten(at, &clubs);
            // A grip is weighed when it is chosen.
            let asks = step.asks.iter().copied().filter(|what| chosen_late(*what).is_none()).collect();
            let step = Step { asks, ..step };
            let weighs = |step: &Step| step.asks.contains(&What::SwingWeight);
            if weighs(&step) && !self.steps[..at].iter().any(weighs) {
                self.read_reference(at, &step).await?;
            }
            for club in &clubs {
                self.read(club, at, &step, forgotten == Some(club.slot)).await?;
            }
            self.put_down().await?;
            if step.on.contains(&Role::Grip)
                && !step.on.contains(&Role::Solvent)
                && step.asks.contains(&What::SwingWeight)
            {
                self.read_again(at, &step).await?;
            }
        }
        Ok(())
    }

    /// Waits for the joint, and overnight where solvent has to dry.
    async fn wait_for(&mut self, at: usize, step: &Step) -> Result<(), AppError> {
        let dries = at > 0 && self.steps[at - 1].on.contains(&Role::Solvent) && !step.on.contains(&Role::Solvent);
        if at == 0 || dries {
            self.morning_of(if dries { self.day + 1 } else { self.day }).await?;
        }
        let ready = self.batch.as_ref().map(|b| match step.needs {
            Strength::None => b.batch.mixed_at,
            Strength::Handling => b.handling_at,
            Strength::Full => b.full_cure_at,
        });
        while ready.is_some_and(|ready| self.clock.now() < ready) {
            self.morning_of(self.day + 1).await?;
        }
        Ok(())
    }

    /// The club whose weight stays in the tray, where it should go in: the one with the most.
    fn forgotten(&self, at: usize, clubs: &[JobClub]) -> Option<i64> {
        let first = self.steps.iter().position(|s| s.on.contains(&Role::TipWeight));
        if !self.slip || first != Some(at) {
            return None;
        }
        let tip_g = |c: &JobClub| c.plan.as_ref().map_or(0.0, |p| p.mass_g(Role::TipWeight));
        clubs.iter().max_by(|a, b| tip_g(a).total_cmp(&tip_g(b))).map(|c| c.slot)
    }

    /// Makes the extra measurements that are offered, on the first clubs: they tell of the others too.
    async fn measure_more(&mut self, at: usize, free: &[Part]) -> Result<(), AppError> {
        for club in self.clubs().iter().take(EXTRAS_ON) {
            for _ in 0..EXTRAS {
                let bundle = offers(&self.file.believe()?, &club.id, &self.file.spares_of(free), &[])?;
                let sought = bundle.offers.into_iter().find(|o| o.measure != Measure::Again);
                let Some(offer) = sought else { break };
                let extra = Step { asks: vec![offer.what], on: offer.on, ..self.steps[at].clone() };
                self.keep(club, at, &extra, &extra.on, 0).await?;
            }
        }
        Ok(())
    }

    /// The reference club on the bench's own scale, re-seated: what the targets are is known no better than it is.
    async fn read_reference(&mut self, at: usize, step: &Step) -> Result<(), AppError> {
        let Some(club) = self.clubs().into_iter().next() else { return Ok(()) };
        let reference = Step { asks: vec![What::ReferenceSwingWeight], on: Vec::new(), ..step.clone() };
        for nth in AGAIN..AGAIN + REFERENCE_SEATED {
            self.keep(&club, at, &reference, &[], nth).await?;
        }
        self.put_down().await
    }

    /// Reads once more, re-seated, what could not be said to be in tolerance.
    async fn read_again(&mut self, at: usize, step: &Step) -> Result<(), AppError> {
        let record = self.app.record(self.number).await?;
        let close =
            |club: &ClubRecord| club.lines.iter().any(|l| l.unit == Unit::Points && l.verdict == Verdict::TooClose);
        let again = Step { asks: vec![What::SwingWeight], ..step.clone() };
        for found in record.clubs.iter().filter(|c| close(c)) {
            let club = self.file.club_at(found.slot)?.clone();
            self.keep(&club, at, &again, &again.on, AGAIN).await?;
        }
        self.put_down().await
    }

    /// Makes what is offered to measure, takes another weight or grip where the advice says so, and weighs what was
    /// chosen where a step before asks it.
    async fn choose(&mut self, kind: PartKind, at: usize) -> Result<(), AppError> {
        let free = self.app.store().read().await?.parts_in(PartState::Free).await?;
        self.measure_more(at.saturating_sub(1), &free).await?;
        self.put_down().await?;
        let ids: Vec<_> = self.clubs().into_iter().map(|c| c.id).collect();
        let choices = match kind {
            PartKind::Grip => choose_grips(&self.file.believe()?, &ids, &free)?,
            _ => choose_tips(&self.file.believe()?, &ids, &free)?,
        };
        let slot_of = |id| self.file.job.club(&id).map(|c| c.slot);
        let chosen = choices.into_iter().filter_map(|(id, codes)| Some((slot_of(id)?, PartCodes::from_iter(codes?))));
        for (slot, code) in chosen {
            let swap = Swap { kind, code, reason: "as advised".into(), by: self.by(), version: None };
            self.app.swap(self.number, slot, &swap).await?;
        }
        self.look().await?;
        for (place, step) in self.steps.clone().iter().enumerate().take(at) {
            let asks = step.asks.iter().copied().filter(|what| chosen_late(*what) == Some(kind)).collect();
            let weigh = Step { asks, ..step.clone() };
            for club in &self.clubs() {
                self.keep(club, place, &weigh, &weigh.on, 0).await?;
            }
        }
        self.put_down().await
    }

    async fn glue(&mut self) -> Result<(), AppError> {
        self.later(10);
        let lot = self.parts.iter().find(|p| p.kind == PartKind::Adhesive).map(|p| p.lot.clone()).unwrap_or_default();
        let new = NewBatch {
            job: self.number,
            slots: self.file.job.clubs.iter().map(|c| c.slot).collect(),
            adhesive: None,
            lot,
            bead_share_percent: None,
            room_c: None,
            mixed_at: None,
            reason: None,
            cold_reason: None,
            by: self.by(),
            request_key: None,
        };
        self.batch = Some(self.app.start_batch(&new).await?);
        self.look().await
    }

    /// What a step asks of one club. A doubted reading is looked into at once.
    async fn read(&mut self, club: &JobClub, at: usize, step: &Step, forgotten: bool) -> Result<(), AppError> {
        let mut on = step.on.clone();
        if forgotten {
            on.retain(|role| *role != Role::TipWeight);
        }
        if self.keep(club, at, step, &on, 0).await?.is_empty() {
            return Ok(());
        }
        self.put_down().await?;
        let doubted = self.app.causes(self.number, club.slot).await?;
        for DoubtedReading { reading, causes, .. } in &doubted {
            let left_out = causes.iter().any(|c| c.key == CauseKind::TipLeftOut.key());
            if left_out && forgotten {
                let why = "its weight is not in the tip; put in now";
                self.app.take_back(self.number, &reading.id, why, &self.by()).await?;
                self.later(5);
                self.look().await?;
            }
        }
        // Anything else is seated anew and read once more; the second reading takes the place of the first.
        let doubted = self.keep(club, at, step, &step.on, 1).await?;
        self.put_down().await?;
        for reading in doubted {
            self.app.insist(self.number, &reading, "seated anew, read twice", &self.by()).await?;
        }
        self.look().await
    }

    /// Puts the readings so far on disk.
    async fn put_down(&mut self) -> Result<(), AppError> {
        if let Some(tx) = self.open.take() {
            tx.commit().await?;
        }
        Ok(())
    }

    /// Enters what the instruments show of a club with these pieces on it, as the bench does but without asking what it
    /// means; gives those of the readings that are doubted.
    async fn keep(
        &mut self,
        club: &JobClub,
        at: usize,
        step: &Step,
        on: &[Role],
        nth: u64,
    ) -> Result<Vec<ReadingId>, AppError> {
        if step.asks.is_empty() {
            return Ok(Vec::new());
        }
        self.later(MINUTES.0 + MINUTES.1 * i64::try_from(step.asks.len()).unwrap_or(1));
        let entries = self.entries(club, at, step, on, nth)?;
        if entries.is_empty() {
            return Ok(Vec::new());
        }
        let new = NewReadings {
            slot: club.slot,
            step: step.key.clone(),
            entries,
            on: Some(step.on.clone()),
            by: self.by(),
            version: None,
            seen: Vec::new(),
            at: None,
            reason: None,
            request_key: None,
        };
        let mut tx = match self.open.take() {
            Some(tx) => tx,
            None => self.app.store().write().await?.signed(&new.by),
        };
        let (file, kept) = self.app.keep(&mut tx, &self.file, &new).await?;
        self.open = Some(tx);
        self.file = file;
        let believed = self.file.believe()?;
        Ok(kept.into_iter().map(|r| r.id).filter(|id| believed.is_doubted(id)).collect())
    }

    fn entries(&self, club: &JobClub, at: usize, step: &Step, on: &[Role], nth: u64) -> Result<Vec<Entry>, AppError> {
        let Some(plan) = &club.plan else { return Ok(Vec::new()) };
        let made = Assembled {
            library: &self.file.library,
            shop: &self.file.shop,
            job: self.number,
            club,
            plan,
            parts: &self.parts,
        };
        let truth = self.shop.club(made)?;
        let when = self.occasion(club.slot, at, nth);
        let reference = self.file.job.sheet.reference.as_ref().and_then(|reference| reference.swing_weight_points);
        let shown = |what: &What| {
            let value = match what {
                What::ReferenceSwingWeight => reference.map(|points| self.shop.shows_reference(points, when)),
                what => self.shop.shows(&truth, *what, on, when),
            };
            value.map(|value| (*what, value))
        };
        let entry =
            |(what, value)| Entry { what, typed: typed(what, value), value: None, pivot_mm: None, again: nth >= AGAIN };
        Ok(step.asks.iter().filter_map(shown).map(entry).collect())
    }
}

/// The kind of part that a step weighs before it is known which one the club gets.
fn chosen_late(what: What) -> Option<PartKind> {
    let kinds = [PartKind::TipWeight, PartKind::Grip];
    kinds.into_iter().find(|kind| what.mass_of().is_some_and(|role| role.key() == kind.key()))
}

/// A reading as a builder writes it.
fn typed(what: What, value: f64) -> String {
    match what.unit() {
        Unit::Points => SwingWeight::from_points(value).letter(1),
        // In inches where that is a fraction of one, as lengths of clubs are cut; small parts are measured in millimetres.
        Unit::Millimetre => match Length::from_mm(value).print_inches() {
            inches if inches.contains('.') => format!("{} mm", decimal(value, 1)),
            inches => inches,
        },
        Unit::Gram => decimal(value, 1),
        Unit::Degree => decimal(value, 2).trim_end_matches('0').trim_end_matches('.').to_owned(),
        Unit::Cpm | Unit::KgCm2 => decimal(value, 0),
        Unit::Second => format!("{}/1", decimal(value, 3)),
        Unit::None => String::new(),
    }
}
