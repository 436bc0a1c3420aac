//! What a job waits for.

use super::PartCount;
use jiff::civil::Date;
use serde::Serialize;
use std::collections::BTreeMap;
use trade::id::JobId;
use trade::model::{Library, PartKind};
use trade::order::Order;
use utoipa::ToSchema;

fact::facts! {
    /// When parts are expected, as it is told on a day.
    pub enum Expected: "order_expected" {
        /// Nobody has named a day.
        NoDay,
        /// Expected today.
        Today,
        /// Expected tomorrow.
        Tomorrow,
        /// Within a week.
        Soon {
            /// The day.
            expected_on: Date,
        },
        /// Later.
        Later {
            /// The day.
            expected_on: Date,
        },
        /// They were expected yesterday.
        Yesterday {
            /// The day.
            expected_on: Date,
        },
        /// They are late by more than a day.
        Overdue {
            /// By how many.
            days: i32,
            /// The day that they were expected on.
            expected_on: Date,
        },
    }
}

impl Expected {
    /// How the day that parts are expected on is told today.
    #[must_use]
    pub fn of(expected_on: Option<Date>, today: Date) -> Self {
        let Some(expected_on) = expected_on else { return Self::NoDay };
        match (expected_on - today).get_days() {
            0 => Self::Today,
            1 => Self::Tomorrow,
            2..=6 => Self::Soon { expected_on },
            7.. => Self::Later { expected_on },
            -1 => Self::Yesterday { expected_on },
            days => Self::Overdue { days: -days, expected_on },
        }
    }
}

fact::facts! {
    /// What a job waits for or lacks.
    pub enum Wait: "order_wait" {
        /// Parts on order.
        Ordered {
            /// What is on order and how many.
            parts: PartCount,
            /// When they are expected.
            expected: Expected,
        },
        /// Parts that nobody has ordered.
        NotOrdered {
            /// What is lacking and how many.
            parts: PartCount,
        },
    }
}

/// Parts that a job waits for.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Waiting {
    /// Running number of the order; none where nothing is ordered yet.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub order: Option<i64>,
    /// What sort of part it waits for: heads, shafts, grips …
    pub kind: PartKind,
    /// Code of the model.
    pub model: String,
    /// The number of a head or taper blank.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub number: Option<String>,
    /// How many.
    pub count: i64,
    /// When they are expected.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = Date)]
    pub expected_on: Option<Date>,
    /// Days since they were expected, where they are late.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub days_late: Option<i64>,
    /// All of it, for example “waits for 2 heads Siskin 7, expected Tuesday”.
    #[serde(flatten)]
    pub fact: Wait,
}

impl Waiting {
    /// `count` parts that wait for an open order, with the delivery told relative to `today`.
    #[must_use]
    pub fn on_order(order: &Order, count: i64, library: &Library, today: Date) -> Self {
        let line = &order.line;
        let parts = PartCount::of(count, line.kind, &line.model, line.number.as_deref(), library);
        Self {
            order: Some(line.order),
            kind: line.kind,
            model: line.model.clone(),
            number: line.number.clone(),
            count,
            expected_on: order.expected_on(),
            days_late: order.days_late(today),
            fact: Wait::Ordered { parts, expected: Expected::of(order.expected_on(), today) },
        }
    }
}

/// What a job waits for on a day, of all orders; the earliest expected first, those without a day last. `lacks` says how many
/// of a kind, model and number the job has not here: what was ordered for it beside those keeps nobody waiting.
#[must_use]
pub fn waiting(
    orders: &[Order],
    job: &JobId,
    library: &Library,
    today: Date,
    lacks: impl Fn(PartKind, &str, Option<&str>) -> i64,
) -> Vec<Waiting> {
    let mut open: Vec<&Order> = orders.iter().filter(|order| order.open_for(job) > 0).collect();
    open.sort_by_key(|order| (order.expected_on().is_none(), order.expected_on(), order.line.order));
    let mut left = BTreeMap::new();
    let mut found = Vec::new();
    for order in open {
        let line = &order.line;
        let number = line.number.as_deref();
        let left =
            left.entry((line.kind, &line.model, number)).or_insert_with(|| lacks(line.kind, &line.model, number));
        let count = order.open_for(job).min(*left);
        if count <= 0 {
            continue;
        }
        *left -= count;
        found.push(Waiting::on_order(order, count, library, today));
    }
    found
}
