//! Parts on order: what was asked of whom, what has come of it, and which jobs wait for it.
//!
//! An order is one line: so many of one model and number. What happens to it is appended to it and never changed; where
//! it stands follows from that.

use crate::error::{TradeError, within};
use crate::id::{EventId, JobId, OrderId};
use crate::kind::closed_list;
use crate::model::PartKind;
use crate::part::possible_mass_g;
use jiff::Timestamp;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Most pieces of one order, to catch a slip of the key.
pub const COUNT_MAX: i64 = 10_000;

closed_list! {
    /// What can happen to an order.
    OrderStep {
        /// Parts came.
        Received = "received";
        /// The rest will not come.
        Short = "short";
        /// It was cancelled.
        Cancelled = "cancelled";
        /// The supplier or the day that it is expected on is another.
        Told = "told";
    }
}

closed_list! {
    /// Where an order stands.
    OrderState {
        /// Nothing has come yet.
        Ordered = "ordered";
        /// Some have come, the others are still to come.
        PartlyHere = "partly_here";
        /// All have come.
        Here = "here";
        /// Fewer came than were ordered, and no more will.
        Short = "short";
        /// Cancelled.
        Cancelled = "cancelled";
    }
}

/// How many of an order are meant for a job.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ForJob {
    /// Identity of the job that they are meant for.
    pub job: JobId,
    /// Its running number.
    pub number: i64,
    /// How many.
    pub count: i64,
}

/// What was ordered.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct OrderLine {
    /// Identity.
    pub id: OrderId,
    /// The running number that people say.
    pub order: i64,
    /// Of whom; empty while it is not settled.
    pub supplier: String,
    /// What sort of part is ordered: heads, shafts, grips …
    pub kind: PartKind,
    /// Code of the model.
    pub model: String,
    /// The number of a head or taper blank.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub number: Option<String>,
    /// How many.
    pub count: i64,
    /// Lightest that will do.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from_g: Option<f64>,
    /// Heaviest that will do.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub to_g: Option<f64>,
    /// Which jobs they are for, the first served first.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub jobs: Vec<ForJob>,
    /// A remark.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// When it was ordered.
    #[schema(value_type = String, format = Date)]
    pub ordered_on: Date,
    /// When it is expected.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = Date)]
    pub expected_on: Option<Date>,
    /// Who ordered.
    pub by: String,
    /// When that was written down.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
}

/// What happened to an order.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct OrderEvent {
    /// Identity.
    pub id: EventId,
    /// What happened: parts came, it was cancelled, closed short …
    pub step: OrderStep,
    /// How many came; 0 where nothing did.
    pub count: i64,
    /// Another model than was ordered, where one came in its place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub model: Option<String>,
    /// Another number than was ordered, where one came in its place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub number: Option<String>,
    /// The supplier from now on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub supplier: Option<String>,
    /// The day that it is expected on from now on.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = Date)]
    pub expected_on: Option<Date>,
    /// Why, or a remark.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// Who.
    pub by: String,
    /// When.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
}

impl OrderEvent {
    /// Whether what came is not what was ordered.
    #[must_use]
    pub const fn is_substitute(&self) -> bool {
        self.model.is_some() || self.number.is_some()
    }
}

/// An order with all that happened to it.
#[derive(Debug, Clone, PartialEq)]
pub struct Order {
    /// What was ordered.
    pub line: OrderLine,
    /// What happened since, in order.
    pub events: Vec<OrderEvent>,
}

/// An order as it stands on a day.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct OrderView {
    /// What was ordered; its supplier and day are those that hold now.
    #[serde(flatten)]
    pub line: OrderLine,
    /// Where it stands.
    pub state: OrderState,
    /// How many came, others in their place counted in.
    pub received: i64,
    /// How many of those are of another model or number.
    pub substituted: i64,
    /// How many are still to come.
    pub open: i64,
    /// Days since it was expected, where it is late.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub days_late: Option<i64>,
    /// Goes up by one with everything that happens to it.
    pub version: i64,
    /// What happened since it was ordered.
    pub events: Vec<OrderEvent>,
}

impl Order {
    fn sum(&self, of: impl Fn(&OrderEvent) -> bool) -> i64 {
        self.events.iter().filter(|e| e.step == OrderStep::Received && of(e)).map(|e| e.count).sum()
    }

    fn last(&self, step: OrderStep) -> Option<&OrderEvent> {
        self.events.iter().rev().find(|e| e.step == step)
    }

    /// How many came, others in their place counted in.
    #[must_use]
    pub fn received(&self) -> i64 {
        self.sum(|_| true)
    }

    /// How many came of another model or number.
    #[must_use]
    pub fn substituted(&self) -> i64 {
        self.sum(OrderEvent::is_substitute)
    }

    /// How many are still to come.
    #[must_use]
    pub fn open(&self) -> i64 {
        if self.closed().is_some() { 0 } else { (self.line.count - self.received()).max(0) }
    }

    /// What ended it, where something did.
    fn closed(&self) -> Option<&OrderEvent> {
        self.last(OrderStep::Cancelled).or_else(|| self.last(OrderStep::Short))
    }

    /// Where it stands.
    #[must_use]
    pub fn state(&self) -> OrderState {
        let received = self.received();
        if received >= self.line.count {
            OrderState::Here
        } else if received == 0 && self.last(OrderStep::Cancelled).is_some() {
            OrderState::Cancelled
        } else if self.closed().is_some() {
            OrderState::Short
        } else if received > 0 {
            OrderState::PartlyHere
        } else {
            OrderState::Ordered
        }
    }

    /// Of whom, as was said last.
    #[must_use]
    pub fn supplier(&self) -> &str {
        self.events.iter().rev().find_map(|e| e.supplier.as_deref()).unwrap_or(&self.line.supplier)
    }

    /// When it is expected, as was said last.
    #[must_use]
    pub fn expected_on(&self) -> Option<Date> {
        self.events.iter().rev().find_map(|e| e.expected_on).or(self.line.expected_on)
    }

    /// Days since it was expected; none where nothing is to come or it is not late.
    #[must_use]
    pub fn days_late(&self, today: Date) -> Option<i64> {
        let days = i64::from((today - self.expected_on()?).get_days());
        (self.open() > 0 && days > 0).then_some(days)
    }

    /// How many a job still waits for. What came is given to the jobs in their order; others that came in the place of
    /// what was ordered serve none, but are not to come any more either.
    #[must_use]
    pub fn open_for(&self, job: &JobId) -> i64 {
        let mut came = self.received() - self.substituted();
        let mut open = self.open();
        for wish in &self.line.jobs {
            let lacking = wish.count - came.min(wish.count);
            came -= wish.count - lacking;
            let waits = lacking.min(open);
            open -= waits;
            if wish.job == *job {
                return waits;
            }
        }
        0
    }

    /// As it stands on a day.
    #[must_use]
    pub fn view(&self, today: Date) -> OrderView {
        OrderView {
            line: OrderLine {
                supplier: self.supplier().to_owned(),
                expected_on: self.expected_on(),
                ..self.line.clone()
            },
            state: self.state(),
            received: self.received(),
            substituted: self.substituted(),
            open: self.open(),
            days_late: self.days_late(today),
            version: i64::try_from(self.events.len()).unwrap_or(i64::MAX),
            events: self.events.clone(),
        }
    }

    /// What must be asked before so many are booked in: more than were ordered, or none were to come any more.
    #[must_use]
    pub fn asks(&self, count: i64) -> Option<OrderAsk> {
        let order = self.line.order;
        if let Some(end) = self.closed() {
            let (by, note) = (end.by.clone(), Some(end.note.clone()).filter(|note| !note.is_empty()));
            return Some(match end.step {
                OrderStep::Cancelled => OrderAsk::Cancelled { order, by, note },
                _ => OrderAsk::ClosedShort { order, by, note },
            });
        }
        let open = self.open();
        (count > open).then_some(match open {
            0 => OrderAsk::AllHere { order },
            open => OrderAsk::More { order, n: count, open },
        })
    }
}

/// Refuses an order that nobody can mean.
///
/// # Errors
/// A count below 1 or beyond [`COUNT_MAX`]; a mass that no such part has, or a window upside down; a day before it was
/// ordered; more for the jobs than are ordered.
pub fn check_line(line: &OrderLine) -> Result<(), TradeError> {
    check_count(line.count)?;
    let (low, high) = possible_mass_g(line.kind);
    for (field, value) in [("from_g", line.from_g), ("to_g", line.to_g)] {
        if let Some(value) = value {
            within(field, value, low, high, "g")?;
        }
    }
    if let (Some(from_g), Some(to_g)) = (line.from_g, line.to_g)
        && from_g > to_g
    {
        return Err(TradeError::refused(OrderFault::MassesBackwards { from_g, to_g }));
    }
    if let Some(expected_on) = line.expected_on
        && expected_on < line.ordered_on
    {
        let ordered_on = line.ordered_on;
        return Err(TradeError::refused(OrderFault::ExpectedTooEarly { expected_on, ordered_on }));
    }
    if line.supplier.chars().count() > 200 || line.note.chars().count() > 2000 {
        return Err(TradeError::refused(OrderFault::TooLong));
    }
    for job in &line.jobs {
        check_count(job.count)?;
    }
    let for_jobs: i64 = line.jobs.iter().map(|j| j.count).sum();
    if for_jobs > line.count {
        return Err(TradeError::refused(OrderFault::MoreForJobs { for_jobs, ordered: line.count }));
    }
    Ok(())
}

/// Refuses a count that nobody can mean.
///
/// # Errors
/// Below 1 or beyond [`COUNT_MAX`].
pub fn check_count(count: i64) -> Result<(), TradeError> {
    if (1..=COUNT_MAX).contains(&count) {
        Ok(())
    } else {
        Err(TradeError::refused(OrderFault::BadCount { n: count, most: COUNT_MAX }))
    }
}

fact::facts! {
    /// What is refused of an order.
    pub(crate) enum OrderFault: "order_fault" {
        MassesBackwards { from_g: f64, to_g: f64 },
        ExpectedTooEarly { expected_on: jiff::civil::Date, ordered_on: jiff::civil::Date },
        TooLong,
        MoreForJobs { for_jobs: i64, ordered: i64 },
        BadCount { n: i64, most: i64 },
    }
}

fact::facts! {
    /// What is asked before parts of an order are booked in.
    pub enum OrderAsk: "order_ask" {
        /// Cancelled.
        Cancelled {
            /// Its running number.
            order: i64,
            /// Who cancelled it.
            by: String,
            /// The remark made then; none where nothing was said.
            note: Option<String>,
        },
        /// Closed short.
        ClosedShort {
            /// Its running number.
            order: i64,
            /// Who closed it.
            by: String,
            /// The remark made then; none where nothing was said.
            note: Option<String>,
        },
        /// All of order … are here already.
        AllHere {
            /// Its running number.
            order: i64,
        },
        /// … are more than the … of order … that are still to come.
        More {
            /// Its running number.
            order: i64,
            /// How many have come now.
            n: i64,
            /// How many of it are still to come.
            open: i64,
        },
    }
}
