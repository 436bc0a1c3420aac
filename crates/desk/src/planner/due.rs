//! Which due dates hold: what can be built whole from what is here, which job should wait for which delivery, what to
//! order and by when, and whom a part goes to of which there are too few.

use super::to_come::{Key, May, Source, ToCome, asked, last_day, on_order, to_order, with_parts_to_come};
use super::{Ground, Shelf};
use crate::ask::{AskClub, AskGround, ask};
use crate::order::{Expected, PartCount, Waiting};
use jiff::civil::Date;
use matching::{Choice, DayProblem, DaySolution, MatchError, WholeJobs};
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};
use trade::error::TradeError;
use trade::model::{Library, PartKind};
use trade::order::Order;
use trade::part::Part;
use utoipa::ToSchema;

/// What plans jobs that share their stock, within the time that there is.
pub trait SolveDay {
    /// The plan that is asked for.
    ///
    /// # Errors
    /// As [`matching::solve_day`].
    fn day(&mut self, problem: &DayProblem) -> Result<DaySolution, MatchError>;

    /// A plan beside it, in which parts count that are not here; a short search does.
    ///
    /// # Errors
    /// As [`matching::solve_day`].
    fn to_come(&mut self, problem: &DayProblem) -> Result<DaySolution, MatchError>;

    /// Which jobs can be built whole.
    ///
    /// # Errors
    /// As [`matching::whole_jobs`].
    fn whole(&mut self, problem: &DayProblem) -> Result<WholeJobs, MatchError>;
}

fact::facts! {
    /// How a job stands against the day that it is due.
    pub enum DueState: "planner_due" {
        /// All its clubs can be built from what is here.
        Here,
        /// It waits for what is on order, and holds its day.
        Waits {
            /// When the last of it is expected.
            complete_on: Date,
        },
        /// What is on order for it comes too late.
        Late {
            /// When the last of it is expected.
            complete_on: Date,
        },
        /// It waits for what is on order, and nobody has named a day.
        NoDay,
        /// Parts must be ordered that can still come in time.
        Order {
            /// The last day that they may come on.
            by_on: Date,
        },
        /// Parts must be ordered, and the last day that they may come on is over.
        OrderLate {
            /// The last day that they could have come on.
            by_on: Date,
        },
        /// Some club cannot be built with parts that were ordered either; the plan says why.
        Cannot,
    }
}

fact::facts! {
    /// Whom parts go to of which there are too few.
    pub enum Goes: "planner_goes" {
        /// A job takes them from what is here.
        Here {
            /// Running number of the job.
            job: i64,
            /// When it is due.
            due_on: Date,
            /// How many.
            n: i64,
        },
        /// A job waits for them.
        Waits {
            /// Running number of the job.
            job: i64,
            /// When it is due.
            due_on: Date,
            /// How many.
            n: i64,
            /// Running number of the order.
            order: i64,
            /// When they are expected.
            expected: Expected,
        },
        /// They are to be ordered for a job.
        Order {
            /// Running number of the job.
            job: i64,
            /// When it is due.
            due_on: Date,
            /// How many.
            n: i64,
            /// The last day that they may come on.
            by_on: Date,
        },
    }
}

fact::facts! {
    /// Parts of which there are fewer than the jobs want.
    pub enum TooFew: "planner_too_few" {
        /// The jobs want more than the shop has.
        Parts {
            /// How many are wanted of what.
            parts: PartCount,
            /// How many of them are here.
            n: i64,
        },
    }
}

fact::facts! {
    /// What to order.
    pub enum ToOrder: "planner_to_order" {
        /// Heads within a window of masses.
        Heads {
            /// How many of what.
            parts: PartCount,
            /// Lightest that will do.
            from_g: f64,
            /// Heaviest that will do.
            to_g: f64,
            /// The last day that they may come on.
            by_on: Date,
            /// Running numbers of the jobs that they are for.
            jobs: Vec<i64>,
        },
        /// Other parts.
        Parts {
            /// How many of what.
            parts: PartCount,
            /// The last day that they may come on.
            by_on: Date,
            /// Running numbers of the jobs that they are for.
            jobs: Vec<i64>,
        },
    }
}

/// Parts to order so that due dates hold.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct OrderFor {
    /// What sort of part to order: head, shaft, grip or adapter.
    pub kind: PartKind,
    /// Code of the model.
    pub model: String,
    /// The number of a head or taper blank.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub number: Option<String>,
    /// How many.
    pub count: i64,
    /// Lightest head that will do, with the most that the shop puts into a tip; none for other parts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from_g: Option<f64>,
    /// Heaviest head that will do; none for other parts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub to_g: Option<f64>,
    /// The last day that they may come on: the day before the first of these jobs is due.
    #[schema(value_type = String, format = Date)]
    pub by_on: Date,
    /// Running numbers of the jobs that they are for, the earliest due first.
    pub jobs: Vec<i64>,
    /// All of it.
    #[serde(flatten)]
    pub fact: ToOrder,
}

/// How one job stands against the day that it is due.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct JobDue {
    /// Running number of the job.
    pub number: i64,
    /// When it is due.
    #[schema(value_type = String, format = Date)]
    pub due_on: Date,
    /// What it waits for.
    pub waits: Vec<Waiting>,
    /// What to order for it.
    pub to_order: Vec<OrderFor>,
    /// How it stands.
    #[serde(flatten)]
    pub fact: DueState,
}

/// Parts of one model and number of which there are fewer than the jobs want.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Scarce {
    /// What sort of part it is: head, shaft, grip or adapter.
    pub kind: PartKind,
    /// Code of the model.
    pub model: String,
    /// The number of a head or taper blank.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub number: Option<String>,
    /// Whom those go to that are here, and where the others get theirs; the earliest due first.
    pub goes: Vec<Goes>,
    /// How many are wanted and how many are here.
    #[serde(flatten)]
    pub fact: TooFew,
}

/// A job without which two or more others could be built whole.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct StandsInTheWay {
    /// Running number of the job.
    pub job: i64,
    /// Running numbers of the jobs that could be built in its place.
    pub builds: Vec<i64>,
}

/// Which due dates hold, with what is here, what is on order, and what should be ordered.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct DueDates {
    /// Running numbers of the jobs of which all clubs can be built from what is here: the earliest due, and each that can be
    /// built beside those due before it.
    pub whole: Vec<i64>,
    /// The job that keeps most others from being built whole, where it keeps two or more.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub in_the_way: Option<StandsInTheWay>,
    /// Whether both of these are proven; else a job that is not named might still be built.
    pub proven: bool,
    /// The jobs one by one, the earliest due first.
    pub jobs: Vec<JobDue>,
    /// Parts of which there are too few, and whom they go to.
    pub scarce: Vec<Scarce>,
    /// What to order so that most due dates hold, the most urgent first.
    pub to_order: Vec<OrderFor>,
}

/// What the question is asked of.
pub(super) struct Asked<'g, 'a> {
    pub grounds: &'g [Ground<'a>],
    pub shelf: &'g Shelf<'a>,
    pub problem: &'g DayProblem,
    pub parts: &'a [Part],
    pub orders: &'a [Order],
    pub today: Date,
}

/// Which due dates hold; `complete` where the day's plan builds all clubs.
pub(super) fn due_dates(
    asked: &Asked<'_, '_>,
    complete: bool,
    solve: &mut dyn SolveDay,
) -> Result<DueDates, TradeError> {
    let number = |i: &usize| asked.grounds[*i].assembly.job.number;
    if complete {
        let all = (0..asked.grounds.len()).map(|i| number(&i)).collect();
        let jobs = asked.grounds.iter().map(|g| job_due(g, DueState::Here)).collect();
        return Ok(DueDates {
            whole: all,
            in_the_way: None,
            proven: true,
            jobs,
            scarce: Vec::new(),
            to_order: Vec::new(),
        });
    }
    let whole = solve.whole(asked.problem)?;
    let library = asked.grounds[0].assembly.library;
    let mut to_come = on_order(asked.grounds, asked.orders, library, asked.today)?;
    let with = |to_come: &[ToCome], may: &[May]| {
        with_parts_to_come(asked.problem, asked.grounds, asked.shelf, asked.orders, to_come, may)
    };
    // Which jobs hold their day with what comes in time, the earliest due first.
    let in_time = |item: &ToCome| asked.grounds.iter().any(|g| item.in_time(g.assembly.job.sheet.due));
    let holds = if to_come.iter().any(in_time) {
        solve.whole(&with(&to_come, &vec![May::WaitInTime; asked.grounds.len()]))?.whole
    } else {
        whole.whole.clone()
    };
    // The others may wait longer, and have parts ordered: as few as can be.
    to_come.extend(to_order(asked.grounds, library)?);
    let may: Vec<May> = holds.iter().map(|&holds| if holds { May::WaitInTime } else { May::Order }).collect();
    let plan = solve.to_come(&with(&to_come, &may))?;
    let told = Told { asked, to_come: &to_come, library, plan: &plan };
    let jobs = (0..asked.grounds.len()).map(|i| told.job(i)).collect::<Result<Vec<_>, _>>()?;
    let to_order = all_orders(&jobs, library);
    let way = whole.in_the_way.as_ref();
    Ok(DueDates {
        whole: (0..asked.grounds.len()).filter(|&i| whole.whole[i]).map(|i| number(&i)).collect(),
        in_the_way: way
            .map(|way| StandsInTheWay { job: number(&way.job), builds: way.builds.iter().map(number).collect() }),
        proven: whole.proven,
        jobs,
        scarce: told.scarce(),
        to_order,
    })
}

fn job_due(ground: &Ground<'_>, fact: DueState) -> JobDue {
    let job = ground.assembly.job;
    JobDue { number: job.number, due_on: job.sheet.due, waits: Vec::new(), to_order: Vec::new(), fact }
}

/// The plan with parts to come, as it is told.
struct Told<'t, 'g, 'a> {
    asked: &'t Asked<'g, 'a>,
    to_come: &'t [ToCome],
    library: &'t Library,
    plan: &'t DaySolution,
}

impl Told<'_, '_, '_> {
    /// What a club takes that is not here.
    fn taken(&self, choice: &Choice) -> Vec<&ToCome> {
        let stock = &self.asked.problem.stock;
        let parts = [
            (PartKind::Head, Some(choice.head), stock.heads.len()),
            (PartKind::Shaft, Some(choice.shaft), stock.shafts.len()),
            (PartKind::Grip, Some(choice.grip), stock.grips.len()),
            (PartKind::Adapter, choice.adapter, stock.adapters.len()),
        ];
        let of = |kind| self.to_come.iter().filter(move |item| item.part.kind == kind);
        parts.into_iter().filter_map(|(kind, part, here)| of(kind).nth(part?.checked_sub(here)?)).collect()
    }

    fn job(&self, i: usize) -> Result<JobDue, TradeError> {
        let ground = &self.asked.grounds[i];
        let (job, due) = (ground.assembly.job, ground.assembly.job.sheet.due);
        let (mut waits, mut to_order): (BTreeMap<usize, i64>, Vec<OrderFor>) = (BTreeMap::new(), Vec::new());
        let mut complete_on = Some(self.asked.today);
        let mut cannot = false;
        for (fitting, choice) in ground.fittings.iter().zip(&self.plan.sets[i].clubs) {
            let Some(choice) = choice else {
                cannot = true;
                continue;
            };
            for item in self.taken(choice) {
                match item.from {
                    Source::Order(order) => {
                        *waits.entry(order).or_default() += 1;
                        complete_on = complete_on.zip(item.expected_on).map(|(a, b)| a.max(b));
                    }
                    Source::ToOrder => {
                        let masses = self.masses(ground, fitting, item)?;
                        let part = &item.part;
                        let key = (part.kind, part.model.clone(), part.number.clone());
                        add(
                            &mut to_order,
                            OrderFor::one(key, masses, last_day(due), job.number, self.library),
                            self.library,
                        );
                    }
                }
            }
        }
        let by_on = last_day(due);
        let fact = match complete_on {
            _ if cannot => DueState::Cannot,
            _ if !to_order.is_empty() && by_on < self.asked.today => DueState::OrderLate { by_on },
            _ if !to_order.is_empty() => DueState::Order { by_on },
            _ if waits.is_empty() => DueState::Here,
            Some(complete_on) if complete_on <= by_on => DueState::Waits { complete_on },
            Some(complete_on) => DueState::Late { complete_on },
            None => DueState::NoDay,
        };
        let waits = waits.into_iter().map(|(order, count)| self.waiting(order, count)).collect();
        Ok(JobDue { waits, to_order, ..job_due(ground, fact) })
    }

    fn waiting(&self, at: usize, count: i64) -> Waiting {
        Waiting::on_order(&self.asked.orders[at], count, self.library, self.asked.today)
    }

    /// Lightest and heaviest head to ask for; none for other parts.
    fn masses(
        &self,
        ground: &Ground<'_>,
        fitting: &super::Fitting<'_>,
        item: &ToCome,
    ) -> Result<Option<(f64, f64)>, TradeError> {
        if item.part.kind != PartKind::Head {
            return Ok(None);
        }
        let shop = ground.assembly.shop;
        let within_points = fitting.club.target.planned_tolerance();
        let asked =
            AskGround { library: self.library, shop, parts: self.asked.parts, supply: &[], cap_g: None, within_points };
        let found = ask(&[AskClub::from(&fitting.club.target)], asked)?;
        Ok(found.first().map(|head| (head.from_g, head.to_g)))
    }

    /// Parts that some club takes from what is not here, and whom those go to that are.
    fn scarce(&self) -> Vec<Scarce> {
        let key = |item: &ToCome| (item.part.kind, item.part.model.clone(), item.part.number.clone());
        let choices = || self.plan.sets.iter().flat_map(|set| set.clubs.iter().flatten());
        let short: BTreeSet<Key> = choices().flat_map(|choice| self.taken(choice)).map(key).collect();
        let mut found: BTreeMap<&Key, (i64, i64, Vec<Goes>)> = BTreeMap::new();
        for (i, ground) in self.asked.grounds.iter().enumerate() {
            let job = ground.assembly.job;
            // From here first, then of each order, then what is to be ordered.
            let mut counts: BTreeMap<(&Key, usize), i64> = BTreeMap::new();
            for (fitting, choice) in ground.fittings.iter().zip(&self.plan.sets[i].clubs) {
                let Some(choice) = choice else { continue };
                let taken = self.taken(choice);
                for wish in asked(fitting, self.library) {
                    let Some(short) = short.get(&wish) else { continue };
                    let place = match taken.iter().find(|item| item.part.kind == wish.0).map(|item| item.from) {
                        None => 0,
                        Some(Source::Order(at)) => at + 1,
                        Some(Source::ToOrder) => usize::MAX,
                    };
                    *counts.entry((short, place)).or_default() += 1;
                }
            }
            for ((key, place), n) in counts {
                let (job, due_on) = (job.number, job.sheet.due);
                let goes = match place {
                    0 => Goes::Here { job, due_on, n },
                    usize::MAX => Goes::Order { job, due_on, n, by_on: last_day(due_on) },
                    at => {
                        let order = &self.asked.orders[at - 1];
                        let expected = Expected::of(order.expected_on(), self.asked.today);
                        Goes::Waits { job, due_on, n, order: order.line.order, expected }
                    }
                };
                let (wanted, here, all) = found.entry(key).or_default();
                *wanted += n;
                *here += if place == 0 { n } else { 0 };
                all.push(goes);
            }
        }
        let row = |((kind, model, number), (wanted, n, goes)): (&Key, (i64, i64, Vec<Goes>))| Scarce {
            kind: *kind,
            model: model.clone(),
            number: number.clone(),
            goes,
            fact: TooFew::Parts { parts: PartCount::of(wanted, *kind, model, number.as_deref(), self.library), n },
        };
        found.into_iter().map(row).collect()
    }
}

impl OrderFor {
    fn one((kind, model, number): Key, masses: Option<(f64, f64)>, by_on: Date, job: i64, library: &Library) -> Self {
        let (from_g, to_g) = masses.unzip();
        let parts = PartCount::of(1, kind, &model, number.as_deref(), library);
        let fact = ToOrder::Parts { parts, by_on, jobs: Vec::new() };
        Self { kind, model, number, count: 1, from_g, to_g, by_on, jobs: vec![job], fact }.told(library)
    }

    /// The same with what it says.
    fn told(mut self, library: &Library) -> Self {
        let parts = PartCount::of(self.count, self.kind, &self.model, self.number.as_deref(), library);
        let (by_on, jobs) = (self.by_on, self.jobs.clone());
        self.fact = match (self.from_g, self.to_g) {
            (Some(from_g), Some(to_g)) => ToOrder::Heads { parts, from_g, to_g, by_on, jobs },
            _ => ToOrder::Parts { parts, by_on, jobs },
        };
        self
    }
}

/// Puts like with like; heads of another window are another order.
fn add(found: &mut Vec<OrderFor>, more: OrderFor, library: &Library) {
    let near = |a: Option<f64>, b: Option<f64>| match (a, b) {
        (Some(a), Some(b)) => (a - b).abs() < 0.05,
        (a, b) => a == b,
    };
    let same = found.iter_mut().find(|x| {
        (x.kind, &x.model, &x.number) == (more.kind, &more.model, &more.number)
            && near(x.from_g, more.from_g)
            && near(x.to_g, more.to_g)
    });
    match same {
        Some(same) => {
            same.count += more.count;
            same.by_on = same.by_on.min(more.by_on);
            let others: Vec<i64> = more.jobs.into_iter().filter(|job| !same.jobs.contains(job)).collect();
            same.jobs.extend(others);
            *same = same.clone().told(library);
        }
        None => found.push(more),
    }
}

/// What all jobs have ordered, the first to be here first.
fn all_orders(jobs: &[JobDue], library: &Library) -> Vec<OrderFor> {
    let mut all = Vec::new();
    jobs.iter().flat_map(|job| &job.to_order).for_each(|more| add(&mut all, more.clone(), library));
    all.sort_by_key(|order| order.by_on);
    all
}
