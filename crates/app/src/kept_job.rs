//! A job's file as it is kept between requests, with what was worked out from it.
//!
//! A reading at the bench takes three requests: the screen of a club, the form, the screen that the form leads to. Each
//! needs the same file and the same belief. They are kept, and given out only where the database is in the very state
//! that they were read in: every transaction that changes anything counts that state up, whichever program made it.
//! What is worked out follows from the file alone, so it is as good as the file.

use crate::job::JobFile;
use crate::{App, AppError};
use bench::belief::{Believed, Solved};
use bench::cause::Cause;
use bench::club_state::ClubState;
use bench::offer::Bundle;
use bench::record::Record;
use bench::remedy::{Ranking, Remedy, Spare};
use bench::set_fit::SetFit;
use bench::work_order::SetAdvice;
use std::collections::BTreeMap;
use std::ops::Deref;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex, OnceLock, PoisonError};
use store::Tx;
use trade::id::{ClubId, ReadingId};
use trade::job::Job;
use trade::part::Part;
use trade::reading::Reading;

/// Jobs that are kept: those at the benches of a busy day. One of eight clubs takes less than 1 MB.
const KEPT: usize = 32;

/// How often a program did what costs most at the bench, since it was started.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct WorkDone {
    /// The file of a job was read from the database.
    pub loads: u64,
    /// The belief of a job was solved.
    pub solves: u64,
    /// What can be done about a club was worked out and ranked.
    pub rankings: u64,
    /// The measurements worth their while on a club were looked for.
    pub offers: u64,
}

impl WorkDone {
    /// What was done since an earlier moment.
    #[must_use]
    pub const fn since(self, earlier: Self) -> Self {
        Self {
            loads: self.loads - earlier.loads,
            solves: self.solves - earlier.solves,
            rankings: self.rankings - earlier.rankings,
            offers: self.offers - earlier.offers,
        }
    }
}

/// What counts the work of a program.
#[derive(Debug, Default)]
struct Tally {
    loads: AtomicU64,
    solves: AtomicU64,
    rankings: AtomicU64,
    offers: AtomicU64,
}

fn count(counter: &AtomicU64) {
    counter.fetch_add(1, Ordering::Relaxed);
}

/// A job's file with its belief, the parts that are free beside it, and what was worked out from them. Nothing in it
/// changes; a reading that comes in makes another.
#[derive(Debug)]
pub struct KeptJob {
    file: JobFile,
    /// The free parts, read in the same transaction.
    parts: Arc<Vec<Part>>,
    solved: OnceLock<Solved>,
    /// Remedies by club, with the state of the club that they were ranked for: it holds what time changes.
    ranked: Mutex<BTreeMap<ClubId, (ClubState, Ranking)>>,
    offered: Mutex<BTreeMap<ClubId, Bundle>>,
    advised: OnceLock<Option<SetAdvice>>,
    fitted: OnceLock<SetFit>,
    tally: Arc<Tally>,
}

impl Deref for KeptJob {
    type Target = JobFile;

    fn deref(&self) -> &JobFile {
        &self.file
    }
}

impl KeptJob {
    fn new(file: JobFile, parts: Arc<Vec<Part>>, tally: Arc<Tally>) -> Self {
        Self {
            file,
            parts,
            solved: OnceLock::new(),
            ranked: Mutex::default(),
            offered: Mutex::default(),
            advised: OnceLock::new(),
            fitted: OnceLock::new(),
            tally,
        }
    }

    /// The job after readings of a club that were kept in a transaction just now, and that did not finish the club: the
    /// readings, the version of the club, and what is known of the scales by them. Everything else stands as it was
    /// read, so it need not be read again.
    ///
    /// # Errors
    /// What the store says.
    pub(crate) async fn after(
        &self,
        tx: &mut Tx,
        club: &ClubId,
        version: i64,
        new: Vec<Reading>,
    ) -> Result<Arc<Self>, AppError> {
        let file = self.file.after(tx, club, version, new).await?;
        Ok(Arc::new(Self::new(file, Arc::clone(&self.parts), Arc::clone(&self.tally))))
    }

    /// The job once somebody has gone on with something open.
    ///
    /// # Errors
    /// What the store says.
    pub(crate) async fn with_passed(&self, tx: &mut Tx) -> Result<Arc<Self>, AppError> {
        let file = self.file.with_passed(tx).await?;
        Ok(Arc::new(Self::new(file, Arc::clone(&self.parts), Arc::clone(&self.tally))))
    }

    /// The record as the job stands now.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn record(&self) -> Result<Record, AppError> {
        Ok(bench::record::record(&self.believe()?, &self.readings, &self.beside())?)
    }

    /// What is believed after the readings so far; solved once.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn believe(&self) -> Result<Believed<'_>, AppError> {
        if let Some(solved) = self.solved.get() {
            return Ok(self.assembly().believed(&self.readings, solved));
        }
        count(&self.tally.solves);
        let believed = self.assembly().believe(&self.readings)?;
        // Two who ask at once solve twice, to the same bits.
        let _ = self.solved.set(believed.solved());
        Ok(believed)
    }

    /// Calls `with` with what is believed without some of the readings. Without any of them left out that is the belief as
    /// it stands.
    ///
    /// # Errors
    /// Figures that the belief cannot work with; those of `with`.
    pub(crate) fn believing_without<T>(
        &self,
        left_out: &[ReadingId],
        with: impl FnOnce(&Believed<'_>) -> Result<T, AppError>,
    ) -> Result<T, AppError> {
        if left_out.is_empty() {
            return with(&self.believe()?);
        }
        let others: Vec<Reading> = self.readings.iter().filter(|r| !left_out.contains(&r.id)).cloned().collect();
        count(&self.tally.solves);
        with(&self.assembly().believe(&others)?)
    }

    /// Where every club stands.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn states(&self, now: jiff::Timestamp) -> Result<Vec<ClubState>, AppError> {
        self.states_of(&self.believe()?, now)
    }

    /// Free parts that could take the place of planned ones, with the mass to count with.
    #[must_use]
    pub fn spares(&self) -> Vec<Spare<'_>> {
        self.file.spares_of(&self.parts)
    }

    /// What is to be fitted in each club now; worked out once. Time changes nothing of it.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn set_fit(&self, believed: &Believed<'_>, states: &[ClubState]) -> Result<SetFit, AppError> {
        if let Some(fit) = self.fitted.get() {
            return Ok(fit.clone());
        }
        let fit = bench::set_fit::set_fit(believed, states, &self.spares())?;
        Ok(self.fitted.get_or_init(|| fit).clone())
    }

    /// What can still be done about a club and helps, the best first.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn remedies(&self, believed: &Believed<'_>, state: &ClubState) -> Result<Vec<Remedy>, AppError> {
        Ok(self.ranking(believed, state)?.remedies)
    }

    /// The same with the chance that they are held against; worked out once for each state of the club.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn ranking(&self, believed: &Believed<'_>, state: &ClubState) -> Result<Ranking, AppError> {
        let ranked = || self.ranked.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some((_, ranking)) = ranked().get(&state.club).filter(|(of, _)| of == state) {
            return Ok(ranking.clone());
        }
        count(&self.tally.rankings);
        let ranking = bench::remedy::ranking(believed, state, &self.spares())?;
        ranked().insert(state.club.clone(), (state.clone(), ranking.clone()));
        Ok(ranking)
    }

    /// What is most likely behind the last doubted reading of a club, where it has a name and stands out; none where none is
    /// doubted.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn likely_cause(&self, believed: &Believed<'_>, club: &ClubId) -> Result<Option<Cause>, AppError> {
        let standing = believed.standing();
        let doubted = standing.iter().rev().find(|r| r.club == *club && believed.is_doubted(&r.id));
        let Some(reading) = doubted else { return Ok(None) };
        let inquest = bench::cause::inquire(believed, reading, &self.spares())?;
        Ok(inquest.causes.into_iter().next().filter(|cause| cause.is_named() && cause.probability >= 0.5))
    }

    /// Extra measurements of a club that are worth their while and that nobody has declined, the most worth a minute
    /// first; looked for once.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn offers(&self, believed: &Believed<'_>, club: &ClubId) -> Result<Bundle, AppError> {
        let offered = || self.offered.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(offers) = offered().get(club) {
            return Ok(offers.clone());
        }
        count(&self.tally.offers);
        let offers = bench::offer::offers(believed, club, &self.spares(), &self.declined)?;
        offered().insert(club.clone(), offers.clone());
        Ok(offers)
    }

    /// What is worth doing before the set is glued; worked out once. Time changes nothing of it.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn set_advice(&self) -> Result<Option<SetAdvice>, AppError> {
        if let Some(advice) = self.advised.get() {
            return Ok(advice.clone());
        }
        let advice = bench::work_order::set_advice(&self.believe()?, &self.spares(), &self.declined)?;
        Ok(self.advised.get_or_init(|| advice).clone())
    }
}

/// A job that is kept, with its number and the state of the database that it was read in.
#[derive(Debug)]
struct Kept {
    number: i64,
    state: i64,
    job: Arc<KeptJob>,
}

/// The jobs that a program keeps, those asked for last at the end. Clones share them.
#[derive(Debug, Clone, Default)]
pub(crate) struct KeptJobs {
    kept: Arc<Mutex<Vec<Kept>>>,
    tally: Arc<Tally>,
}

impl KeptJobs {
    /// The job as it was read in this very state, unless a night has passed since.
    fn at(&self, number: i64, state: i64, now: jiff::Timestamp) -> Option<Arc<KeptJob>> {
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        let holds = |one: &Kept| one.number == number && one.state == state && one.job.file.still_holds_at(now);
        let place = kept.iter().position(holds)?;
        let found = kept.remove(place);
        let job = Arc::clone(&found.job);
        kept.push(found);
        Some(job)
    }

    /// Keeps a job as it stands in a state; one of a later state stays.
    fn keep(&self, number: i64, state: i64, job: &Arc<KeptJob>) {
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        if kept.iter().any(|one| one.number == number && one.state > state) {
            return;
        }
        kept.retain(|one| one.number != number);
        if kept.len() >= KEPT {
            kept.remove(0);
        }
        kept.push(Kept { number, state, job: Arc::clone(job) });
    }
}

impl App {
    /// How often this program did what costs most at the bench, since it was started.
    #[must_use]
    pub fn work_done(&self) -> WorkDone {
        let of = |counter: &AtomicU64| counter.load(Ordering::Relaxed);
        let Tally { loads, solves, rankings, offers } = &*self.jobs.tally;
        WorkDone { loads: of(loads), solves: of(solves), rankings: of(rankings), offers: of(offers) }
    }

    /// A job with everything that belongs to it.
    ///
    /// # Errors
    /// No such job; what the store says.
    pub async fn job_file(&self, number: i64) -> Result<Arc<KeptJob>, AppError> {
        let mut tx = self.store.read().await?;
        self.kept_job(&mut tx, number).await
    }

    /// A job as a transaction sees it: kept from before, or read now.
    ///
    /// # Errors
    /// No such job; what the store says.
    pub(crate) async fn kept_job(&self, tx: &mut Tx, number: i64) -> Result<Arc<KeptJob>, AppError> {
        let state = tx.state_number().await?;
        if let Some(job) = state.and_then(|state| self.jobs.at(number, state, self.now())) {
            return Ok(job);
        }
        let file = JobFile::load(tx, number).await?;
        self.kept_from(tx, state, file).await
    }

    /// [`kept_job`](Self::kept_job), of a job whose row the caller has read already.
    ///
    /// # Errors
    /// What the store says.
    pub(crate) async fn kept_job_of(&self, tx: &mut Tx, job: Job) -> Result<Arc<KeptJob>, AppError> {
        let state = tx.state_number().await?;
        if let Some(job) = state.and_then(|state| self.jobs.at(job.number, state, self.now())) {
            return Ok(job);
        }
        let file = JobFile::of(tx, job).await?;
        self.kept_from(tx, state, file).await
    }

    async fn kept_from(&self, tx: &mut Tx, state: Option<i64>, file: JobFile) -> Result<Arc<KeptJob>, AppError> {
        count(&self.jobs.tally.loads);
        let file = file.seen_at(self.now());
        let parts = Self::free_parts_for(tx, file.job.sheet.customer).await?;
        let job = Arc::new(KeptJob::new(file, parts, Arc::clone(&self.jobs.tally)));
        // What a transaction that changes things has read may still be undone.
        if let Some(state) = state {
            self.jobs.keep(job.job.number, state, &job);
        }
        Ok(job)
    }

    /// Makes a transaction last, and keeps a job as it left it.
    ///
    /// # Errors
    /// What the store says.
    pub(crate) async fn commit_with(&self, tx: Tx, job: &Arc<KeptJob>) -> Result<(), AppError> {
        let state = tx.commit_numbered().await?;
        self.jobs.keep(job.job.number, state, job);
        Ok(())
    }
}
