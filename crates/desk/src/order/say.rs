//! What a job waits for, in words.

use jiff::civil::Date;
use serde::Serialize;
use trade::id::JobId;
use trade::model::{Library, PartKind};
use trade::order::Order;
use utoipa::ToSchema;

/// Parts that a job waits for.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct Waiting {
    /// Running number of the order; none where nothing is ordered yet.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub order: Option<i64>,
    /// What.
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
    /// All of it in words, for example “waits for 2 heads Siskin 7, expected Tuesday”.
    pub words: String,
}

/// What a job waits for on a day, of all orders; the earliest expected first, those without a day last.
#[must_use]
pub fn waiting(orders: &[Order], job: &JobId, library: &Library, today: Date) -> Vec<Waiting> {
    let mut found: Vec<Waiting> = orders
        .iter()
        .filter_map(|order| {
            let count = order.open_for(job);
            (count > 0).then(|| {
                let line = &order.line;
                let named = named_count(count, line.kind, &line.model, line.number.as_deref(), library);
                Waiting {
                    order: Some(line.order),
                    kind: line.kind,
                    model: line.model.clone(),
                    number: line.number.clone(),
                    count,
                    expected_on: order.expected_on(),
                    days_late: order.days_late(today),
                    words: format!("waits for {named}, {}", when(order, today)),
                }
            })
        })
        .collect();
    found.sort_by_key(|w| (w.expected_on.is_none(), w.expected_on, w.order));
    found
}

/// `2 heads Siskin 7`, `1 shaft Tramontana parallel`.
#[must_use]
pub fn named_count(count: i64, kind: PartKind, model: &str, number: Option<&str>, library: &Library) -> String {
    let name = library.get(model).map_or(model, trade::model::Model::name);
    let number = number.map(|n| format!(" {n}")).unwrap_or_default();
    format!("{count} {kind}{} {name}{number}", if count == 1 { "" } else { "s" })
}

fn when(order: &Order, today: Date) -> String {
    let Some(day) = order.expected_on() else { return "no day named yet".to_owned() };
    let days = (day - today).get_days();
    let dated = day.strftime("%A %-d %b").to_string();
    match days {
        0 => "expected today".to_owned(),
        1 => "expected tomorrow".to_owned(),
        2..=6 => format!("expected {}", day.strftime("%A")),
        7.. => format!("expected {dated}"),
        -1 => format!("overdue: they were expected yesterday, {dated}"),
        _ => format!("{} days overdue: they were expected on {dated}", -days),
    }
}
