//! What is needed against what is there: the waits of jobs, the stock against the sheets to come.

use crate::{App, AppError, load_library, load_shop};
use bench::remedy::Progress;
use desk::needs::{Need, OpenClub, needs, only_heads_that_do, wishes};
use desk::order::{PartCount, Wait, Waiting, waiting};
use desk::planner::{HeldPart, Lines, Supply};
use desk::stock_csv;
use std::collections::{BTreeMap, BTreeSet};
use store::{OrderFilter, Tx};
use trade::clamp::Clamp;
use trade::frequency_line::FrequencyLine;
use trade::id::JobId;
use trade::job::{Job, JobClub, JobState};
use trade::model::{Library, PartKind};
use trade::order::Order;
use trade::part::{Part, PartState};
use trade::reading::standing;

impl App {
    /// What each job under way waits for: parts on order, and parts that are short and not ordered. A job that has all
    /// its parts waits for nothing.
    ///
    /// # Errors
    /// What the store says.
    pub async fn waits(&self) -> Result<BTreeMap<i64, Vec<Waiting>>, AppError> {
        let mut tx = self.store.read().await?;
        let jobs = lacking(&mut tx).await?;
        if jobs.is_empty() {
            return Ok(BTreeMap::new());
        }
        let library = load_library(&mut tx).await?;
        let orders = tx.orders(&OrderFilter { open: true, ..OrderFilter::default() }).await?;
        let shop = load_shop(&mut tx).await?;
        let clubs: Vec<OpenClub<'_>> = jobs.iter().flat_map(open_clubs).collect();
        let mut parts = parts_for(&mut tx, &clubs).await?;
        let rows = needs(&clubs, &parts, &BTreeMap::new(), &orders, &library);
        // By what would do, not by count alone: else a job would wait for heads that are on order although its plan builds it.
        only_heads_that_do(&mut parts, &clubs, &orders, &library, &shop)?;
        let that_do = needs(&clubs, &parts, &BTreeMap::new(), &orders, &library);
        let short_of =
            |row: &Need, job: i64| -> i64 { row.jobs_short.iter().filter(|s| s.job == job).map(|s| s.count).sum() };
        let today = self.today();
        let mut found = BTreeMap::new();
        for job in &jobs {
            let asked: Vec<_> = open_clubs(job).flat_map(|club| wishes(club.target, &library)).collect();
            let mut waits = waiting(&orders, &job.id, &library, today, |kind, model, number| {
                // What its sheet does not ask for was ordered with a purpose that only the orderer knows.
                if !asked.contains(&(kind, model.to_owned(), number.map(str::to_owned))) {
                    return i64::MAX;
                }
                let own = |row: &&Need| (row.kind, &*row.model, row.number.as_deref()) == (kind, model, number);
                that_do.iter().find(own).map_or(0, |row| short_of(row, job.number))
            });
            for row in &rows {
                let short = short_of(row, job.number);
                let ordered: i64 = waits
                    .iter()
                    .filter(|w| {
                        w.order.is_some() && (w.kind, &w.model, &w.number) == (row.kind, &row.model, &row.number)
                    })
                    .map(|w| w.count)
                    .sum();
                let count = short - ordered;
                if count > 0 {
                    let parts = PartCount::of(count, row.kind, &row.model, row.number.as_deref(), &library);
                    waits.push(Waiting {
                        order: None,
                        kind: row.kind,
                        model: row.model.clone(),
                        number: row.number.clone(),
                        count,
                        expected_on: None,
                        days_late: None,
                        fact: Wait::NotOrdered { parts },
                    });
                }
            }
            if !waits.is_empty() {
                found.insert(job.number, waits);
            }
        }
        Ok(found)
    }

    /// Where the raw shafts of this one's blank lie, of all that are in stock; none for any other part.
    ///
    /// # Errors
    /// What the store says.
    pub async fn frequency_line(&self, part: &Part) -> Result<Option<FrequencyLine>, AppError> {
        if part.kind != PartKind::Shaft {
            return Ok(None);
        }
        let mut tx = self.store.read().await?;
        let library = load_library(&mut tx).await?;
        let Ok(model) = library.shaft(&part.model) else { return Ok(None) };
        let clamp = load_shop(&mut tx).await?.clamp;
        Ok(lines_for(&mut tx, &library, &clamp, [part]).await?.of_blank(model, part))
    }

    /// The stock against the sheets to come: jobs whose clubs have no parts yet, and sheets that are not approved.
    ///
    /// # Errors
    /// What the store says.
    pub async fn stock_needs(&self) -> Result<Vec<Need>, AppError> {
        let mut tx = self.store.read().await?;
        let library = load_library(&mut tx).await?;
        let jobs = lacking(&mut tx).await?;
        let sheets = tx.open_sheets().await?;
        let orders = tx.orders(&OrderFilter { open: true, ..OrderFilter::default() }).await?;
        let mut clubs: Vec<OpenClub<'_>> = jobs.iter().flat_map(open_clubs).collect();
        clubs.extend(sheets.iter().flat_map(|row| {
            let due = row.sheet.due;
            let customer = row.sheet.customer;
            row.sheet.clubs.iter().map(move |target| OpenClub { job: None, id: None, customer, due, target })
        }));
        let mut parts = Vec::clone(&*tx.parts_in(PartState::Free).await?);
        parts.extend_from_slice(&tx.parts_in(PartState::Held).await?);
        Ok(needs(&clubs, &parts, &tx.bulk_held().await?, &orders, &library))
    }

    /// The same as a CSV file.
    ///
    /// # Errors
    /// As [`Self::stock_needs`].
    pub async fn export_needs(&self) -> Result<String, AppError> {
        Ok(stock_csv::needs(&self.stock_needs().await?))
    }
}

/// Free parts, those that a job holds, and what the others hold.
pub(crate) async fn stock_of(tx: &mut Tx, job: &Job) -> Result<PlanStock, AppError> {
    let mut stock = PlanStock::load(tx, &[job]).await?;
    for planned in job.clubs.iter().filter_map(|c| c.plan.as_ref()).flat_map(|p| &p.parts) {
        if stock.parts.iter().all(|p| p.id != planned.part)
            && let Some(part) = tx.part(&planned.part).await?
        {
            stock.parts.push(part);
        }
    }
    Ok(stock)
}

/// What a plan is made from.
pub(crate) struct PlanStock {
    /// Free parts, and those that the job itself holds.
    pub parts: Vec<Part>,
    /// What other jobs hold.
    pub held: Vec<HeldPart>,
    /// What is on order, where the plan asks.
    pub orders: Vec<Order>,
}

impl PlanStock {
    pub fn supply(&self) -> Supply<'_> {
        Supply { parts: &self.parts, held: &self.held, orders: &self.orders }
    }

    /// Free parts, those that these jobs have in their hands already, and what the others hold.
    pub async fn load(tx: &mut Tx, jobs: &[&Job]) -> Result<Self, AppError> {
        // What belongs to a customer is there for the jobs of that customer alone.
        let ours = |part: &&Part| part.owner.is_none() || jobs.iter().any(|job| part.may_go_to(job.sheet.customer));
        let mut parts: Vec<Part> = App::free_parts(tx).await?.iter().filter(ours).cloned().collect();
        let mut others = BTreeMap::<JobId, Vec<Part>>::new();
        for part in tx.parts_in(PartState::Held).await?.iter().filter(ours) {
            match &part.job {
                Some(id) if jobs.iter().any(|job| job.id == *id) => parts.push(part.clone()),
                Some(id) => others.entry(id.clone()).or_default().push(part.clone()),
                None => {}
            }
        }
        let mut held = Vec::new();
        for (id, theirs) in others {
            let Some(other) = tx.job(&id).await? else { continue };
            let readings = tx.readings(&id).await?;
            let standing = standing(&readings);
            for part in theirs {
                let Some(club) = part.club.as_ref().and_then(|id| other.club(id)) else { continue };
                let done = Progress::by_hand(&other, &standing, club);
                let fixed = match part.kind {
                    PartKind::Grip => done.gripped,
                    PartKind::Shaft => done.cut || done.glued,
                    _ => done.glued,
                };
                held.push(HeldPart { job: other.number, club: club.target.number.clone(), fixed, part });
            }
        }
        Ok(Self { parts, held, orders: Vec::new() })
    }

    /// The same with what is on order.
    pub async fn with_orders(mut self, tx: &mut Tx) -> Result<Self, AppError> {
        self.orders = tx.orders(&OrderFilter { open: true, ..OrderFilter::default() }).await?;
        Ok(self)
    }
}

/// The frequency lines of the models of these shafts, of all that are in stock.
pub(crate) async fn lines_for<'a>(
    tx: &mut Tx,
    library: &Library,
    clamp: &Clamp,
    shafts: impl IntoIterator<Item = &'a Part>,
) -> Result<Lines, AppError> {
    let models: BTreeSet<&str> =
        shafts.into_iter().filter(|p| p.kind == PartKind::Shaft).map(|p| p.model.as_str()).collect();
    let mut measured = Vec::new();
    for state in [PartState::Free, PartState::Held] {
        let all = tx.parts_in(state).await?;
        measured.extend(all.iter().filter(|p| models.contains(p.model.as_str())).cloned());
    }
    Ok(Lines::of(library, clamp, &measured))
}

/// Single parts that are held for a job.
pub(crate) async fn reserved(tx: &mut Tx, job: &JobId) -> Result<Vec<Part>, AppError> {
    let held = tx.parts_in(PartState::Held).await?;
    Ok(held.iter().filter(|p| p.job.as_ref() == Some(job)).cloned().collect())
}

/// Jobs of which some club has no parts yet.
pub(crate) async fn lacking(tx: &mut Tx) -> Result<Vec<Job>, AppError> {
    let mut found = tx.jobs(Some(JobState::Open)).await?;
    let planned = tx.jobs(Some(JobState::Planned)).await?;
    found.extend(planned.into_iter().filter(|j| j.clubs.iter().any(|c| c.plan.is_none())));
    Ok(found)
}

fn open_clubs(job: &Job) -> impl Iterator<Item = OpenClub<'_>> {
    job.clubs.iter().filter(|c: &&JobClub| c.plan.is_none()).map(|club| OpenClub {
        job: Some(job.number),
        id: Some(&club.id),
        customer: job.sheet.customer,
        due: job.sheet.due,
        target: &club.target,
    })
}

/// Free and held parts of the models that these clubs ask for, and all adapters.
async fn parts_for(tx: &mut Tx, clubs: &[OpenClub<'_>]) -> Result<Vec<Part>, AppError> {
    let mut models = BTreeSet::new();
    for target in clubs.iter().map(|c| c.target) {
        models.extend(
            [&target.head_model, &target.shaft_model, &target.grip_model].into_iter().chain(&target.ferrule_model),
        );
    }
    let mut parts = Vec::new();
    for state in [PartState::Free, PartState::Held] {
        let all = tx.parts_in(state).await?;
        parts.extend(all.iter().filter(|p| p.kind == PartKind::Adapter || models.contains(&p.model)).cloned());
    }
    Ok(parts)
}
