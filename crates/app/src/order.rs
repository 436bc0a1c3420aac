//! Orders of parts: placed, received, cancelled; what a job waits for; what is short.

use crate::job::JobFile;
use crate::kept_job::KeptJob;
use crate::look_up::LookUp;
use crate::needs::PlanStock;
use crate::{App, AppError, load_library};
use desk::order::{Wanted, wanted};
use desk::planner;
use desk::stock_csv;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use store::{OrderFilter, Tx};
use trade::error::Noun;
use trade::job::{Job, JobState};
use trade::model::{Library, Model, PartKind};
use trade::order::OrderState;
use trade::order::{ForJob, Order, OrderEvent, OrderLine, OrderStep, OrderView, check_count, check_line};
use trade::part::Part;
use trade::plan::Plan;
use trade::shaft::TipShape;
use utoipa::ToSchema;

/// How many of an order are for a job.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct JobCount {
    /// Running number of the job.
    pub job: i64,
    /// How many; left out: 1.
    #[serde(default = "one")]
    #[schema(minimum = 1, maximum = 10000)]
    pub count: i64,
}

const fn one() -> i64 {
    1
}

/// Parts to order.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct NewOrder {
    /// Of whom; may be settled later.
    #[serde(default)]
    #[schema(max_length = 200)]
    pub supplier: String,
    /// Code of the model.
    pub model: String,
    /// Number of a head or taper blank.
    #[serde(default)]
    pub number: Option<String>,
    /// How many.
    #[schema(minimum = 1, maximum = 10000)]
    pub count: i64,
    /// Lightest that will do.
    #[serde(default)]
    pub from_g: Option<f64>,
    /// Heaviest that will do.
    #[serde(default)]
    pub to_g: Option<f64>,
    /// Which jobs they are for.
    #[serde(default)]
    pub jobs: Vec<JobCount>,
    /// A remark.
    #[serde(default)]
    #[schema(max_length = 2000)]
    pub note: String,
    /// When it was ordered; left out: today.
    #[serde(default)]
    #[schema(value_type = Option<String>, format = Date)]
    pub ordered_on: Option<Date>,
    /// When it is expected.
    #[serde(default)]
    #[schema(value_type = Option<String>, format = Date)]
    pub expected_on: Option<Date>,
    /// Who orders.
    pub by: String,
}

/// Parts that came.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Receive {
    /// How many came.
    #[schema(minimum = 1, maximum = 10000)]
    pub count: i64,
    /// Another model, where one came in the place of what was ordered.
    #[serde(default)]
    pub model: Option<String>,
    /// Another number, where one came in the place of what was ordered.
    #[serde(default)]
    pub number: Option<String>,
    /// The rest will not come.
    #[serde(default)]
    pub short: bool,
    /// It is so although it is more than was to come.
    #[serde(default)]
    pub anyway: bool,
    /// A remark.
    #[serde(default)]
    pub note: String,
    /// Who.
    pub by: String,
    /// Version of the order that was looked at.
    #[serde(default)]
    pub version: Option<i64>,
}

/// Cancelling an order, or closing it short.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct CloseOrder {
    /// The rest does not come; left out or false: the builder cancels it.
    #[serde(default)]
    pub short: bool,
    /// Why.
    #[schema(min_length = 3)]
    pub reason: String,
    /// Who.
    pub by: String,
    /// Version of the order that was looked at.
    #[serde(default)]
    pub version: Option<i64>,
}

/// New details of an order: its supplier, when it is expected, a remark. Fields left out stay as they are.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TellOrder {
    /// Who the parts come from; empty while that is not settled.
    #[serde(default)]
    pub supplier: Option<String>,
    /// When it is expected.
    #[serde(default)]
    #[schema(value_type = Option<String>, format = Date)]
    pub expected_on: Option<Date>,
    /// A remark.
    #[serde(default)]
    pub note: String,
    /// Who.
    pub by: String,
    /// Version of the order that was looked at.
    #[serde(default)]
    pub version: Option<i64>,
}

/// Ordering what the plan of a job lacks.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct OrderForJob {
    /// Of whom; left out: of whom each model was ordered last.
    #[serde(default)]
    pub supplier: Option<String>,
    /// When it is expected.
    #[serde(default)]
    #[schema(value_type = Option<String>, format = Date)]
    pub expected_on: Option<Date>,
    /// Who.
    pub by: String,
}

/// Which orders to list.
#[derive(Debug, Clone, Default, Deserialize, ToSchema, utoipa::IntoParams)]
#[into_params(parameter_in = Query)]
#[serde(deny_unknown_fields, default)]
pub struct OrderQuery {
    /// Only those of which something is still to come.
    pub open: bool,
    /// Only those for a job.
    pub job: Option<i64>,
    /// Only those of a model.
    pub model: Option<String>,
    /// At most so many, the newest first.
    pub limit: Option<i64>,
    /// How many to leave out at the beginning.
    pub offset: Option<i64>,
}

/// Parts that were booked in, and what to weigh now.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct Received {
    /// The order as it stands now.
    pub order: OrderView,
    /// Model of what came.
    pub model: String,
    /// Number of what came.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub number: Option<String>,
    /// How many to weigh in.
    pub to_weigh: i64,
}

impl App {
    /// Places orders, all or none.
    ///
    /// # Errors
    /// A count, mass or day that cannot be; an unknown model, number or job; what the store says.
    pub async fn place_orders(&self, new: &[NewOrder]) -> Result<Vec<OrderView>, AppError> {
        if new.is_empty() {
            return Err(AppError::invalid(OrderRefused::Nothing));
        }
        let mut tx = self.store.write().await?;
        let library = load_library(&mut tx).await?;
        let mut placed = Vec::with_capacity(new.len());
        for (index, order) in new.iter().enumerate() {
            let of_entry = |error: AppError| error.of_entry(index, new.len());
            let line = self.line_of(&mut tx, &library, order).await.map_err(of_entry)?;
            tx.insert_order(&line).await.map_err(|error| of_entry(error.into()))?;
            placed.push(Order { line, events: Vec::new() }.view(self.today()));
        }
        tx.commit().await?;
        self.tell(None, "stock");
        Ok(placed)
    }

    async fn line_of(&self, tx: &mut Tx, library: &Library, new: &NewOrder) -> Result<OrderLine, AppError> {
        // Said first: a count that cannot be would else be blamed on the jobs.
        check_count(new.count)?;
        let (kind, number) = checked_model(library, &new.model, new.number.as_deref())?;
        let mut jobs = Vec::with_capacity(new.jobs.len());
        for wish in &new.jobs {
            let job = job_of(tx, wish.job).await?;
            if !matches!(job.state, JobState::Open | JobState::Planned) {
                return Err(AppError::conflict(OrderRefused::JobWaitsNot { job: job.number, state: job.state }));
            }
            jobs.push(ForJob { job: job.id, number: job.number, count: wish.count });
        }
        let line = OrderLine {
            id: crate::new_id().as_str().into(),
            order: tx.next_order_number().await?,
            supplier: new.supplier.trim().to_owned(),
            kind,
            model: library.get(new.model.trim()).map_or_else(|| new.model.clone(), |m| m.code().to_owned()),
            number,
            count: new.count,
            from_g: new.from_g,
            to_g: new.to_g,
            jobs,
            note: new.note.trim().to_owned(),
            ordered_on: new.ordered_on.unwrap_or_else(|| self.today()),
            expected_on: new.expected_on,
            by: new.by.trim().to_owned(),
            at: self.now(),
        };
        check_line(&line)?;
        Ok(line)
    }

    /// Orders, the newest first, and how many there are in all.
    ///
    /// # Errors
    /// No such job; what the store says.
    pub async fn orders(&self, query: &OrderQuery) -> Result<(Vec<OrderView>, i64), AppError> {
        let mut tx = self.store.read().await?;
        let job = match query.job {
            Some(number) => Some(job_of(&mut tx, number).await?.id),
            None => None,
        };
        let filter = OrderFilter {
            open: query.open,
            job,
            model: query.model.clone().filter(|m| !m.is_empty()),
            limit: query.limit,
            offset: query.offset.unwrap_or(0),
            ..OrderFilter::default()
        };
        let today = self.today();
        let found = tx.orders(&filter).await?.iter().map(|o| o.view(today)).collect();
        Ok((found, tx.count_orders(&filter).await?))
    }

    /// Orders as a CSV file.
    ///
    /// # Errors
    /// As [`Self::orders`].
    pub async fn export_orders(&self, query: &OrderQuery) -> Result<String, AppError> {
        let (orders, _) = self.orders(&OrderQuery { limit: None, offset: None, ..query.clone() }).await?;
        Ok(stock_csv::orders(&orders))
    }

    /// One order by its running number.
    ///
    /// # Errors
    /// No such order; what the store says.
    pub async fn order(&self, number: i64) -> Result<OrderView, AppError> {
        let mut tx = self.store.read().await?;
        Ok(order_of(&mut tx, number).await?.view(self.today()))
    }

    /// Books in what came of an order. What came is weighed in next.
    ///
    /// # Errors
    /// A count that cannot be; more than was to come or a cancelled order, unless it is said that it is so; an unknown
    /// model or number; a version that is out of date.
    pub async fn receive_order(&self, number: i64, receive: &Receive) -> Result<Received, AppError> {
        check_count(receive.count)?;
        let mut tx = self.store.write().await?;
        let library = load_library(&mut tx).await?;
        let mut order = order_of(&mut tx, number).await?;
        need_order_version(&order, receive.version)?;
        let (model, came_number) = came(&library, &order.line, receive)?;
        if let Some(ask) = order.asks(receive.count).filter(|_| !receive.anyway) {
            return Err(AppError::conflict(ask));
        }
        let other_model = (model != order.line.model).then(|| model.clone());
        let other_number = came_number.clone().filter(|_| other_model.is_some() || came_number != order.line.number);
        let event = OrderEvent {
            count: receive.count,
            model: other_model,
            number: other_number,
            note: receive.note.trim().to_owned(),
            ..self.order_event(OrderStep::Received, &receive.by)
        };
        tx.append_order_event(&order.line.id, &event, None).await?;
        order.events.push(event);
        if receive.short && order.open() > 0 {
            let event =
                OrderEvent { note: receive.note.trim().to_owned(), ..self.order_event(OrderStep::Short, &receive.by) };
            tx.append_order_event(&order.line.id, &event, None).await?;
            order.events.push(event);
        }
        tx.commit().await?;
        self.tell(None, "stock");
        Ok(Received { order: order.view(self.today()), model, number: came_number, to_weigh: receive.count })
    }

    /// Cancels an order, or closes it short: nothing more is to come of it.
    ///
    /// # Errors
    /// No reason; an order of which nothing is to come; a version that is out of date.
    pub async fn close_order(&self, number: i64, close: &CloseOrder) -> Result<OrderView, AppError> {
        crate::need::need_reason(&close.reason)?;
        let mut tx = self.store.write().await?;
        let mut order = order_of(&mut tx, number).await?;
        need_order_version(&order, close.version)?;
        if order.open() == 0 {
            return Err(AppError::conflict(OrderRefused::NothingToCome { order: number, state: order.state() }));
        }
        let step = if close.short { OrderStep::Short } else { OrderStep::Cancelled };
        let event = OrderEvent { note: close.reason.trim().to_owned(), ..self.order_event(step, &close.by) };
        tx.append_order_event(&order.line.id, &event, None).await?;
        tx.commit().await?;
        order.events.push(event);
        self.tell(None, "stock");
        Ok(order.view(self.today()))
    }

    /// Says another supplier or another day of an order.
    ///
    /// # Errors
    /// Nothing said; a day before it was ordered; a version that is out of date.
    pub async fn tell_order(&self, number: i64, told: &TellOrder) -> Result<OrderView, AppError> {
        let mut tx = self.store.write().await?;
        let mut order = order_of(&mut tx, number).await?;
        need_order_version(&order, told.version)?;
        let supplier = told.supplier.as_ref().map(|s| s.trim().to_owned()).filter(|s| s != order.supplier());
        let expected_on = told.expected_on.filter(|d| Some(*d) != order.expected_on());
        if supplier.is_none() && expected_on.is_none() && told.note.trim().is_empty() {
            return Err(AppError::invalid(OrderRefused::NothingChanged));
        }
        let next = OrderLine {
            supplier: supplier.clone().unwrap_or_default(),
            expected_on,
            note: told.note.clone(),
            ..order.line.clone()
        };
        check_line(&next)?;
        let event = OrderEvent {
            supplier,
            expected_on,
            note: told.note.trim().to_owned(),
            ..self.order_event(OrderStep::Told, &told.by)
        };
        tx.append_order_event(&order.line.id, &event, None).await?;
        tx.commit().await?;
        order.events.push(event);
        self.tell(None, "stock");
        Ok(order.view(self.today()))
    }

    fn order_event(&self, step: OrderStep, by: &str) -> OrderEvent {
        OrderEvent {
            id: crate::new_id().as_str().into(),
            step,
            count: 0,
            model: None,
            number: None,
            supplier: None,
            expected_on: None,
            note: String::new(),
            by: by.trim().to_owned(),
            at: self.now(),
        }
    }

    /// What a job lacks by its plan, less what is ordered for it.
    ///
    /// # Errors
    /// No such job; a job that is finished; what the store says.
    pub async fn wanted(&self, number: i64) -> Result<Vec<Wanted>, AppError> {
        let mut tx = self.store.read().await?;
        let file = self.kept_job(&mut tx, number).await?;
        let stock = crate::needs::stock_of(&mut tx, &file.job).await?;
        let plan = self.plan_now(&file, &stock)?;
        wanted_of(&mut tx, &file, &plan, &stock.parts).await
    }

    /// Orders what the plan of a job lacks and nobody has ordered for it yet.
    ///
    /// # Errors
    /// A plan that lacks nothing that is not ordered; what the store says.
    pub async fn order_for_job(&self, number: i64, wish: &OrderForJob) -> Result<Vec<OrderView>, AppError> {
        let mut new = Vec::new();
        for wanted in self.wanted(number).await?.iter().filter(|w| w.to_order() > 0) {
            let supplier = match &wish.supplier {
                Some(supplier) => supplier.clone(),
                None => self.last_supplier(&wanted.model).await?.unwrap_or_default(),
            };
            new.push(NewOrder {
                supplier,
                model: wanted.model.clone(),
                number: wanted.number.clone(),
                count: wanted.to_order(),
                // What is asked of a supplier is a tenth of a gram inside the window.
                from_g: wanted.from_g.map(|g| (g * 10.0).ceil() / 10.0),
                to_g: wanted.to_g.map(|g| (g * 10.0).floor() / 10.0),
                jobs: vec![JobCount { job: number, count: wanted.to_order() }],
                note: String::new(),
                ordered_on: None,
                expected_on: wish.expected_on,
                by: wish.by.clone(),
            });
        }
        if new.is_empty() {
            return Err(AppError::conflict(OrderRefused::JobLacksNothing { job: number }));
        }
        self.place_orders(&new).await
    }

    /// The supplier of whom a model was ordered last.
    ///
    /// # Errors
    /// What the store says.
    pub async fn last_supplier(&self, model: &str) -> Result<Option<String>, AppError> {
        Ok(self.store.read().await?.last_supplier(model).await?)
    }

    /// The plan of a job as it would be now: proposed where it has none, made again where some clubs have none.
    fn plan_now(&self, file: &KeptJob, stock: &PlanStock) -> Result<Plan, AppError> {
        let mut solve = |p: &matching::SetProblem| self.proven.set(p);
        match file.job.state {
            JobState::Open => {
                let kept = planner::kept(&file.job, &stock.parts, &[]);
                Ok(planner::propose_with(file.assembly(), stock.supply(), &kept, &mut solve)?)
            }
            JobState::Planned => {
                // What the planned clubs hold already must be there for them, and is missed by none.
                let believed = file.believe()?;
                Ok(planner::propose_again_with(&believed, stock.supply(), &[], &mut solve)?.plan)
            }
            state => Err(AppError::conflict(OrderRefused::JobLacksNothingAs { job: file.job.number, state })),
        }
    }
}

/// What a plan lacks, less what is ordered for its job.
pub(crate) async fn wanted_of(
    tx: &mut Tx,
    file: &JobFile,
    plan: &Plan,
    parts: &[Part],
) -> Result<Vec<Wanted>, AppError> {
    let filter = OrderFilter { open: true, job: Some(file.job.id.clone()), ..OrderFilter::default() };
    let orders = tx.orders(&filter).await?;
    Ok(wanted(&file.job, plan, &file.library, parts, &orders))
}

pub(crate) async fn job_of(tx: &mut Tx, number: i64) -> Result<Job, AppError> {
    tx.job_by_number(number).await?.ok_or_else(|| AppError::not_found(Noun::Job, number.to_string(), &LookUp::Today))
}

async fn order_of(tx: &mut Tx, number: i64) -> Result<Order, AppError> {
    let filter = OrderFilter { number: Some(number), ..OrderFilter::default() };
    tx.orders(&filter).await?.pop().ok_or_else(|| AppError::not_found(Noun::Order, number.to_string(), &LookUp::Orders))
}

fn need_order_version(order: &Order, version: Option<i64>) -> Result<(), AppError> {
    let now = i64::try_from(order.events.len()).unwrap_or(i64::MAX);
    match version {
        Some(seen) if seen != now => Err(AppError::conflict(OrderRefused::Stale { order: order.line.order })),
        _ => Ok(()),
    }
}

/// The model and number of what came: those of the order where nothing else is said.
fn came(library: &Library, line: &OrderLine, receive: &Receive) -> Result<(String, Option<String>), AppError> {
    let said = |text: &Option<String>| text.as_ref().map(|t| t.trim().to_owned()).filter(|t| !t.is_empty());
    let model = said(&receive.model).unwrap_or_else(|| line.model.clone());
    let number = said(&receive.number).or_else(|| line.number.clone().filter(|_| model == line.model));
    let (kind, number) = checked_model(library, &model, number.as_deref())?;
    if kind != line.kind {
        return Err(AppError::conflict(OrderRefused::OtherKind { model, kind, order: line.order, wanted: line.kind }));
    }
    Ok((library.get(&model).map_or(model.clone(), |m| m.code().to_owned()), number))
}

/// The kind of a model, and the number if it has any; the number must be one of the model's.
pub(crate) fn checked_model(
    library: &Library,
    model: &str,
    number: Option<&str>,
) -> Result<(PartKind, Option<String>), AppError> {
    let model = model.trim();
    let found = library.get(model).ok_or_else(|| AppError::not_found(Noun::Model, model, &LookUp::AddModel))?;
    let number = number.map(str::trim).filter(|n| !n.is_empty());
    let numbers: Vec<&str> = match found {
        Model::Head(head) => head.numbers.iter().map(|n| n.number.as_str()).collect(),
        Model::Shaft(shaft) if shaft.tip == TipShape::Taper => {
            shaft.blanks.iter().filter_map(|b| b.number.as_deref()).collect()
        }
        _ => Vec::new(),
    };
    let refused = |fault: OrderRefused| Err(AppError::invalid(fault));
    let known = || numbers.iter().map(|number| (*number).to_owned()).collect();
    let model = || found.name().to_owned();
    match number {
        None if numbers.is_empty() => Ok((found.kind(), None)),
        None => refused(OrderRefused::NumberMissing { model: model(), known: known() }),
        Some(number) => match numbers.iter().find(|n| n.eq_ignore_ascii_case(number)) {
            Some(own) => Ok((found.kind(), Some((*own).to_owned()))),
            None if numbers.is_empty() => refused(OrderRefused::NoNumber { kind: found.kind(), model: model() }),
            None => refused(OrderRefused::UnknownNumber { model: model(), number: number.to_owned(), known: known() }),
        },
    }
}

fact::facts! {
    /// What is refused of placing and booking in orders.
    pub(crate) enum OrderRefused: "order_refused" {
        Nothing,
        JobWaitsNot { job: i64, state: JobState },
        NothingToCome { order: i64, state: OrderState },
        NothingChanged,
        JobLacksNothing { job: i64 },
        JobLacksNothingAs { job: i64, state: JobState },
        Stale { order: i64 },
        OtherKind { model: String, kind: PartKind, order: i64, wanted: PartKind },
        NumberMissing { model: String, known: Vec<String> },
        NoNumber { kind: PartKind, model: String },
        UnknownNumber { model: String, number: String, known: Vec<String> },
    }
}
