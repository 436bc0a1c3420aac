//! A job on clubs that are there: its kinds, its sheet, what goes on each club.

use crate::known_customer::sheet_taken_in;
use crate::needs::PlanStock;
use crate::plan::PlanFault;
use crate::{App, AppError, load_learned, load_library, load_shop};
use bench::assembly::Assembly;
use bench::learned::Learned;
use bench::scale_watch::ScaleWatch;
use desk::club_work::{AskedOfClub, ClubWorkFault, nearest, pieces_of, row_of, work_of};
use desk::planner;
use desk::sheet_check::Severity;
use jiff::civil::Date;
use quantity::Units;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use store::{SheetRow, Tx};
use trade::club::Club;
use trade::error::Noun;
use trade::event_kind::EventKind;
use trade::id::{ClubCode, JobId};
use trade::job::{Job, JobClub, JobState};
use trade::job_kind::{JobKind, of_the_trade};
use trade::kind::Hand;
use trade::model::{Library, PartKind};
use trade::part::Part;
use trade::sheet::{SetRule, Sheet, SheetClub};
use trade::shop::Shop;
use trade::step::{NEW_CLUB, Step};
use trade::swing_weight::points_per_g;
use utoipa::ToSchema;
use words::Words;

/// A job on clubs that are there.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NewClubJob {
    /// When it is due.
    #[schema(value_type = String, format = Date)]
    pub due: Date,
    /// Who it is for; left out: who plays the first club.
    #[serde(default)]
    pub player: String,
    /// Anything else that the bench should know.
    #[serde(default)]
    pub note: String,
    /// What is asked of each club that is there; may be empty where new ones are built.
    #[serde(default)]
    pub clubs: Vec<AskedOfClub>,
    /// Clubs that are built new from stock in the same job, as rows of a sheet.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub new_clubs: Vec<SheetClub>,
    /// Whether the player is right-handed or left-handed, where no club that is there says it; left out: right.
    #[serde(default)]
    pub hand: Option<Hand>,
    /// Running number of the customer whose the new clubs are, where no club that is there says it.
    #[serde(default)]
    pub customer: Option<i64>,
    /// Why a neighbouring number's blank is used for a new club, where the plan uses one; the job keeps it.
    #[serde(default)]
    pub neighbour_reason: String,
    /// Who makes the job.
    pub by: String,
}

/// A kind of job with its name.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct KindView {
    /// What the shop calls it.
    pub name: String,
    /// What is done, in a sentence; empty for a kind of the shop's own.
    pub say: String,
    /// Whether the trade has it: then it cannot be changed.
    pub of_the_trade: bool,
    /// The kind itself, its steps with their names.
    pub kind: JobKind,
}

impl App {
    /// The kinds of job: those of the trade, then the shop's own.
    ///
    /// # Errors
    /// What the store says.
    pub async fn job_kinds(&self, w: &Words) -> Result<Vec<KindView>, AppError> {
        let mut tx = self.store.read().await?;
        let own = tx.job_kinds().await?;
        let named = |kind: &JobKind| KindView {
            name: name_of(kind, w),
            say: if kind.is_of_the_trade() { w.text(&format!("{}-say", text_id(&kind.key))) } else { String::new() },
            of_the_trade: kind.is_of_the_trade(),
            kind: JobKind { steps: kind.named_steps(|id| w.text(id)), ..kind.clone() },
        };
        Ok(of_the_trade().iter().chain(&own).map(named).collect())
    }

    /// Keeps a kind of job of the shop's own, over the one with its key. Jobs that are made keep their steps.
    ///
    /// # Errors
    /// A kind that the bench could not follow; what the store says.
    pub async fn save_job_kind(&self, kind: &JobKind) -> Result<JobKind, AppError> {
        // Before its steps are named: the trade has names for its own steps alone.
        kind.check()?;
        let w = Words::english(Units::default());
        let kind = JobKind { steps: kind.named_steps(|id| w.text(id)), ..kind.clone() };
        let mut tx = self.store.write().await?;
        tx.save_job_kind(&kind).await?;
        tx.commit().await?;
        Ok(kind)
    }

    /// Takes a kind of job of the shop's own away.
    ///
    /// # Errors
    /// No such kind; what the store says.
    pub async fn remove_job_kind(&self, key: &str) -> Result<(), AppError> {
        let mut tx = self.store.write().await?;
        if !tx.remove_job_kind(key).await? {
            return Err(unknown_kind(key, &tx.job_kinds().await?));
        }
        tx.commit().await?;
        Ok(())
    }

    /// Makes a job on clubs that are there: what goes on them is chosen from stock and held, and the clubs go to the bench.
    ///
    /// # Errors
    /// No club, the same club twice, or one that is in another open job; an unknown kind; a figure that the kind needs and lacks,
    /// or does not ask for; a part that is not in stock; what the store says. Nothing is kept then.
    pub async fn new_club_job(&self, new: &NewClubJob) -> Result<Job, AppError> {
        let mut tx = self.store.write().await?.signed(&new.by);
        let job = self.club_job(&mut tx, new).await?;
        let sheet = SheetRow {
            id: job.sheet_id.clone(),
            sheet: job.sheet.clone(),
            approved_job: None,
            version: 1,
            saved_at: self.now(),
        };
        tx.insert_sheet(&sheet).await?;
        let job = self.with_parts(&mut tx, job).await?;
        tx.insert_job(&job).await?;
        tx.update_sheet(&SheetRow { approved_job: Some(job.id.clone()), ..sheet }, self.now()).await?;
        if job.clubs.iter().filter_map(|club| club.plan.as_ref()).any(|plan| plan.neighbour_blank.is_some()) {
            crate::need::need_reason(&new.neighbour_reason)?;
        }
        for club in &job.clubs {
            for part in club.parts_from_stock() {
                tx.hold(part, &job.id, &club.id, self.now()).await?;
            }
        }
        let codes: Vec<&str> = new.clubs.iter().map(|c| c.club.as_str()).collect();
        let note = serde_json::json!({ "clubs": codes, "neighbour_reason": new.neighbour_reason.trim() });
        self.log(&mut tx, Some(&job.id), None, EventKind::SheetApproved, &new.by, note).await?;
        tx.commit().await?;
        self.tell(Some(job.number), "plan");
        Ok(job)
    }

    /// The job with its clubs as they came and their rows, without what goes on them.
    async fn club_job(&self, tx: &mut Tx, new: &NewClubJob) -> Result<Job, AppError> {
        if new.clubs.is_empty() && new.new_clubs.is_empty() {
            return Err(AppError::invalid(ClubWorkFault::NoClubs));
        }
        let (own, library) = (tx.job_kinds().await?, load_library(tx).await?);
        let number = tx.next_job_number().await?;
        let mut clubs: Vec<JobClub> = Vec::with_capacity(new.clubs.len());
        let mut kinds: Vec<&JobKind> = Vec::new();
        let mut first: Option<Club> = None;
        let mut whose: Option<(i64, ClubCode)> = None;
        for (asked, slot) in new.clubs.iter().zip(1_i64..) {
            let club = self.free_club(tx, &asked.club).await?;
            if clubs.iter().any(|other| other.work.as_ref().is_some_and(|work| work.club == club.code)) {
                return Err(AppError::invalid(ClubWorkFault::Twice { club: club.code.0 }));
            }
            match (&whose, club.owner) {
                (Some((one, code)), Some(other)) if *one != other => {
                    // A customer's parts go into that customer's clubs; a job is of one customer, as its sheet is.
                    let fault = ClubWorkFault::TwoCustomers { club: code.0.clone(), other: club.code.0 };
                    return Err(AppError::conflict(fault));
                }
                (None, Some(owner)) => whose = Some((owner, club.code.clone())),
                _ => {}
            }
            let kind = of_the_trade().iter().chain(&own).find(|kind| kind.key == asked.kind);
            let kind = kind.ok_or_else(|| unknown_kind(&asked.kind, &own))?;
            if !kinds.iter().any(|one| one.key == kind.key) {
                kinds.push(kind);
            }
            let row = row_of(&library, kind, &club, asked)?;
            clubs.push(JobClub {
                id: crate::new_id().as_str().into(),
                slot,
                card: format!("J{number}-{slot}"),
                target: row,
                work: Some(work_of(kind, &club, asked)),
                plan: None,
                version: 0,
            });
            first.get_or_insert(club);
        }
        let built = JobKind {
            key: NEW_CLUB.to_owned(),
            label: String::new(),
            takes: Vec::new(),
            asks: Vec::new(),
            needs: Vec::new(),
            opens_joint: false,
            steps: load_shop(tx).await?.steps.clone(),
        };
        if !new.new_clubs.is_empty() {
            kinds.push(&built);
        }
        for (row, slot) in new.new_clubs.iter().zip(clubs.len() as i64 + 1..) {
            let (id, card) = (crate::new_id().as_str().into(), format!("J{number}-{slot}"));
            clubs.push(JobClub { id, slot, card, target: row.clone(), work: None, plan: None, version: 0 });
        }
        let customer = whose.map_or(new.customer, |(owner, _)| Some(owner));
        let unsaid = (String::new(), new.hand.unwrap_or(Hand::Right));
        let (player, hand) = first.map_or(unsaid, |club| (club.player, club.hand));
        let named = new.player.trim();
        let sheet = Sheet {
            player: if named.is_empty() { player } else { named.to_owned() },
            customer,
            due: new.due,
            hand,
            note: new.note.trim().to_owned(),
            rule: SetRule::AsWritten,
            written: String::new(),
            reference: None,
            quote: Vec::new(),
            clubs: clubs.iter().map(|club| club.target.clone()).collect(),
        };
        let sheet = sheet_taken_in(tx, &sheet).await?;
        // The rows of clubs that are there were checked against those clubs.
        let only_new = Sheet { clubs: new.new_clubs.clone(), ..sheet.clone() };
        if !only_new.clubs.is_empty()
            && let Some(stop) = self.problems(tx, &only_new).await?.iter().find(|p| p.severity == Severity::Stop)
        {
            return Err(crate::sheet::stopped(stop));
        }
        let w = Words::english(Units::default());
        Ok(Job {
            id: JobId(crate::new_id()),
            number,
            sheet_id: crate::new_id().as_str().into(),
            sheet,
            state: JobState::Planned,
            steps: steps_of_kinds(&kinds, &w),
            made_at: self.now(),
            clubs,
            version: 0,
        })
    }

    /// The job with what goes on its clubs: of each model the free part that brings its club nearest to where it is to be.
    async fn with_parts(&self, tx: &mut Tx, mut job: Job) -> Result<Job, AppError> {
        let used = self.plan_works(tx, &mut job).await?;
        let (library, shop, learned) = (load_library(tx).await?, load_shop(tx).await?, load_learned(tx).await?);
        let watch = ScaleWatch::default();
        let all = (&*library, &*shop, &*learned);
        self.plan_new_clubs(tx, &mut job, &used, all).await?;
        let assembly = Assembly { job: &job, library: &library, shop: &shop, learned: &learned, watch: &watch };
        let believed = assembly.believe(&[])?;
        let chances = job.clubs.iter().map(|club| believed.finish(&club.id)).collect::<Result<Vec<_>, _>>()?;
        for (club, finish) in job.clubs.iter_mut().zip(chances) {
            if let (Some(plan), Some(finish)) = (&mut club.plan, finish) {
                plan.chance = finish.chance;
            }
        }
        Ok(job)
    }

    /// Plans the clubs of a job that are there and have no plan; returns how many pieces of each part that takes.
    ///
    /// # Errors
    /// A part that is not in stock; what the store says.
    pub(crate) async fn plan_works(&self, tx: &mut Tx, job: &mut Job) -> Result<BTreeMap<String, i64>, AppError> {
        let (library, shop, learned) = (load_library(tx).await?, load_shop(tx).await?, load_learned(tx).await?);
        let own = tx.job_kinds().await?;
        let parts = Self::free_parts_for(tx, job.sheet.customer).await?;
        let mut owners: Vec<Option<i64>> = Vec::new();
        for club in &job.clubs {
            let owner = match &club.work {
                Some(work) => crate::club::owned(tx, work.club.as_str()).await?.owner,
                None => job.sheet.customer,
            };
            owners.push(owner);
        }
        let mut used: BTreeMap<&str, i64> = BTreeMap::new();
        let watch = ScaleWatch::default();
        for (i, owner) in owners.into_iter().enumerate() {
            let lacks = job.clubs[i].plan.is_none();
            let Some(work) = job.clubs[i].work.clone().filter(|_| lacks) else { continue };
            let takes = of_the_trade().iter().chain(&own).find(|kind| kind.key == work.kind);
            let takes = takes.map(|kind| kind.takes.clone()).unwrap_or_default();
            let row = job.clubs[i].target.clone();
            let mut picks: Vec<&Part> = Vec::new();
            // The grip comes last: its mass is what brings the club home.
            for kind in [PartKind::Shaft, PartKind::Ferrule, PartKind::Grip] {
                let model = match kind {
                    PartKind::Shaft => Some(&row.shaft_model),
                    PartKind::Grip => Some(&row.grip_model),
                    _ => row.ferrule_model.as_ref(),
                };
                let Some(model) = model.filter(|_| takes.contains(&kind)) else { continue };
                let left = |part: &&Part| part.count.unwrap_or(1) > used.get(part.code.as_str()).copied().unwrap_or(0);
                let may = |part: &&Part| part.kind == kind && part.is_free() && part.may_go_to(owner);
                let free: Vec<&Part> = parts.iter().filter(may).filter(left).collect();
                let mut choice = nearest(&free, (model, 0.0), 0.0, 0.0);
                if kind == PartKind::Grip && choice.is_some() {
                    let grip = library.grip(model)?;
                    let mut with_any = picks.clone();
                    with_any.extend(choice);
                    let plan = pieces_of(&library, &work, &row, &with_any, work.extension_mass_g, self.now())?;
                    let any_g = plan.mass_g(trade::kind::Role::Grip);
                    job.clubs[i].plan = Some(plan);
                    let alone = Job { clubs: vec![job.clubs[i].clone()], ..job.clone() };
                    let assembly =
                        Assembly { job: &alone, library: &library, shop: &shop, learned: &learned, watch: &watch };
                    let off = assembly.believe(&[])?.finish(&alone.clubs[0].id)?.map_or(0.0, |f| f.deviation_points);
                    let per_g = points_per_g(grip.centre_mm);
                    choice = nearest(&free, (model, grip.mass_g), off + per_g * (grip.mass_g - any_g), per_g);
                }
                let part = choice.ok_or_else(|| {
                    let club = work.club.0.clone();
                    AppError::conflict(ClubWorkFault::NoPart { club, kind, model: model.clone() })
                })?;
                *used.entry(part.code.as_str()).or_default() += 1;
                picks.push(part);
            }
            job.clubs[i].plan = Some(pieces_of(&library, &work, &row, &picks, work.extension_mass_g, self.now())?);
        }
        Ok(used.into_iter().map(|(code, count)| (code.to_owned(), count)).collect())
    }

    /// Plans the clubs of a job that are built new, from what the clubs that are there have left in stock.
    async fn plan_new_clubs(
        &self,
        tx: &mut Tx,
        job: &mut Job,
        used: &BTreeMap<String, i64>,
        (library, shop, learned): (&Library, &Shop, &Learned),
    ) -> Result<(), AppError> {
        let fresh: Vec<JobClub> = job.clubs.iter().filter(|club| club.work.is_none()).cloned().collect();
        if fresh.is_empty() {
            return Ok(());
        }
        let fresh = Job { clubs: fresh, ..job.clone() };
        let mut stock = PlanStock::load(tx, &[&fresh]).await?;
        for part in &mut stock.parts {
            if let Some(n) = used.get(&part.code) {
                part.count = Some(part.count.unwrap_or(1) - n);
            }
        }
        stock.parts.retain(|part| part.count.is_none_or(|count| count > 0));
        let watch = ScaleWatch::default();
        let assembly = Assembly { job: &fresh, library, shop, learned, watch: &watch };
        let plan = planner::propose_with(assembly, stock.supply(), &[], &mut |p| self.proven.set(p))?;
        let clubs = fresh.clubs.iter().zip(plan.clubs);
        let mut lacking = Vec::new();
        for (club, plan) in clubs {
            match (plan, job.clubs.iter_mut().find(|one| one.id == club.id)) {
                (Some(plan), Some(one)) => one.plan = Some(plan),
                _ => lacking.push(club.target.number.clone()),
            }
        }
        if lacking.is_empty() { Ok(()) } else { Err(AppError::conflict(PlanFault::Lacking { clubs: lacking })) }
    }
}

/// The steps of a job of these kinds: those that several have stand once, and say whose they are where not all have them.
fn steps_of_kinds(kinds: &[&JobKind], w: &Words) -> Vec<Step> {
    if let [only] = kinds {
        return only.named_steps(|id| w.text(id));
    }
    let (mut steps, mut last): (Vec<Step>, Vec<Step>) = (Vec::new(), Vec::new());
    for kind in kinds {
        let named = kind.named_steps(|id| w.text(id));
        let n = named.len();
        for (i, step) in named.into_iter().enumerate() {
            let into = if i + 1 == n { &mut last } else { &mut steps };
            match into.iter_mut().find(|other| Step { only: Vec::new(), ..(*other).clone() } == step) {
                Some(same) => same.only.push(kind.key.clone()),
                None => {
                    let taken = into.iter().any(|other| other.key == step.key);
                    let key = if taken { format!("{}_{}", step.key, kind.key) } else { step.key.clone() };
                    into.push(Step { key, only: vec![kind.key.clone()], ..step });
                }
            }
        }
    }
    steps.extend(last);
    steps
}

fn text_id(key: &str) -> String {
    format!("job-kind-{}", key.replace('_', "-"))
}

/// What a kind of job is called.
#[must_use]
pub fn name_of(kind: &JobKind, w: &Words) -> String {
    if kind.is_of_the_trade() { w.text(&text_id(&kind.key)) } else { kind.label.clone() }
}

fn unknown_kind(key: &str, own: &[JobKind]) -> AppError {
    let known = of_the_trade().iter().chain(own).map(|kind| kind.key.clone()).collect();
    AppError::not_found(Noun::JobKind, key, &crate::look_up::LookUp::HasKinds { known })
}
