//! Parts on order, and what happened to each order.

use crate::column::{Columns, Query, Row, document, finite, query, time_text};
use crate::error::StoreError;
use crate::error::Stored;
use crate::tx::Tx;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use sqlx::AssertSqlSafe;
use std::collections::BTreeMap;
use trade::error::Noun;
use trade::id::{EventId, JobId, OrderId};
use trade::model::PartKind;
use trade::order::{ForJob, Order, OrderEvent, OrderLine, OrderStep};

/// Which orders are asked for.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct OrderFilter {
    /// Only those of which something is still to come.
    pub open: bool,
    /// Only those for a job.
    pub job: Option<JobId>,
    /// Only those of a model.
    pub model: Option<String>,
    /// Only the one with this running number.
    pub number: Option<i64>,
    /// At most so many, the newest first; all when left out.
    pub limit: Option<i64>,
    /// So many are skipped first.
    pub offset: i64,
}

/// The masses as they came in; see the same of a part.
#[derive(Debug, PartialEq, Serialize, Deserialize)]
struct Given {
    #[serde(default, skip_serializing_if = "Option::is_none")]
    from_g: Option<f64>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    to_g: Option<f64>,
}

/// Of an order something is still to come.
const IS_OPEN: &str = "NOT EXISTS (SELECT 1 FROM part_order_event e
         WHERE e.part_order = o.id AND e.step IN ('short', 'cancelled'))
     AND o.count > (SELECT COALESCE(SUM(e.count), 0) FROM part_order_event e WHERE e.part_order = o.id)";

impl Tx {
    /// The number for the next order. It stays free only until this transaction ends.
    ///
    /// # Errors
    /// The database failed.
    pub async fn next_order_number(&mut self) -> Result<i64, StoreError> {
        self.next(query("SELECT COALESCE(MAX(number), 0) + 1 FROM part_order")).await
    }

    /// Saves a new order.
    ///
    /// # Errors
    /// [`StoreError::CodeTaken`] when its number or identity is there already; [`StoreError::Missing`] for an unknown
    /// model or job; [`StoreError::NotStorable`] for a count below 1 or a mass that is no number.
    pub async fn insert_order(&mut self, line: &OrderLine) -> Result<(), StoreError> {
        let what = format!("order {}", line.order);
        let same = query("SELECT 1 FROM part_order WHERE id = $1 OR number = $2");
        if self.any(same.bind(line.id.0.clone()).bind(line.order)).await? {
            return Err(StoreError::CodeTaken { code: what });
        }
        let refused = |problem: &str| StoreError::NotStorable { what: what.clone(), problem: problem.to_owned() };
        if line.count < 1 || line.jobs.iter().any(|j| j.count < 1) {
            return Err(refused("its count is below 1"));
        }
        let model = self.model_code(&line.model).await?;
        for job in &line.jobs {
            self.job_must_exist(&job.job).await?;
        }
        let kg = |value: Option<f64>| -> Result<Option<f64>, StoreError> {
            Ok(value.map(|g| finite(&what, g)).transpose()?.map(|g| g / 1000.0))
        };
        let given = Given { from_g: line.from_g, to_g: line.to_g };
        let insert = query(
            "INSERT INTO part_order (id, number, supplier, kind, model, part_number, count, from_kg, to_kg, given, note,
                 ordered_on, expected_on, ordered_by, saved_at)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15)",
        );
        let insert = insert
            .bind(line.id.0.clone())
            .bind(line.order)
            .bind(line.supplier.clone())
            .bind(line.kind.key())
            .bind(model)
            .bind(line.number.clone())
            .bind(line.count)
            .bind(kg(line.from_g)?)
            .bind(kg(line.to_g)?)
            .bind(document(&what, &given)?)
            .bind(line.note.clone())
            .bind(line.ordered_on.to_string())
            .bind(line.expected_on.map(|d| d.to_string()))
            .bind(line.by.clone())
            .bind(time_text(line.at));
        self.change(insert).await?;
        for (place, wish) in (1_i64..).zip(&line.jobs) {
            let insert = query("INSERT INTO part_order_job (part_order, place, job, count) VALUES ($1, $2, $3, $4)");
            let insert = insert.bind(line.id.0.clone()).bind(place).bind(wish.job.0.clone()).bind(wish.count);
            self.change(insert).await?;
        }
        Ok(())
    }

    /// Appends what happened to an order. `version` is the number of things that had happened to it when it was looked
    /// at.
    ///
    /// # Errors
    /// [`StoreError::Stale`] when something else happened in between; [`StoreError::Missing`] for an unknown order or
    /// model; [`StoreError::NotStorable`] for a count that does not go with it.
    pub async fn append_order_event(
        &mut self,
        order: &OrderId,
        event: &OrderEvent,
        version: Option<i64>,
    ) -> Result<(), StoreError> {
        let row = self.row(query("SELECT number FROM part_order WHERE id = $1").bind(order.0.clone())).await?;
        let Some(row) = row else { return Err(StoreError::Missing { what: Noun::Order, name: order.0.clone() }) };
        let number = row.whole("number")?;
        let what = format!("order {number}");
        let happened = query("SELECT COUNT(*) FROM part_order_event WHERE part_order = $1").bind(order.0.clone());
        let saved_version = self.number(happened).await?;
        if version.is_some_and(|seen| seen != saved_version) {
            return Err(StoreError::Stale { what: Stored::Order { order: number }, saved_version });
        }
        if event.count < 0 || (event.step == OrderStep::Received) != (event.count > 0) {
            let problem = format!("{} does not go with a count of {}", event.step.key(), event.count);
            return Err(StoreError::NotStorable { what, problem });
        }
        let model = match &event.model {
            Some(model) => Some(self.model_code(model).await?),
            None => None,
        };
        let seq = self.next(query("SELECT COALESCE(MAX(seq), 0) + 1 FROM part_order_event")).await?;
        let insert = query(
            "INSERT INTO part_order_event (id, seq, part_order, step, count, model, part_number, supplier, expected_on,
                 note, done_by, happened_at)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12)",
        );
        let insert = insert
            .bind(event.id.0.clone())
            .bind(seq)
            .bind(order.0.clone())
            .bind(event.step.key())
            .bind(event.count)
            .bind(model)
            .bind(event.number.clone())
            .bind(event.supplier.clone())
            .bind(event.expected_on.map(|d| d.to_string()))
            .bind(event.note.clone())
            .bind(event.by.clone())
            .bind(time_text(event.at));
        self.change(insert).await?;
        Ok(())
    }

    /// The orders that a filter asks for, the newest first.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn orders(&mut self, filter: &OrderFilter) -> Result<Vec<Order>, StoreError> {
        let chosen = Chosen::by(filter);
        let (limit, offset) = (filter.limit.unwrap_or(i64::MAX).max(0), filter.offset.max(0));
        let at = chosen.values.len();
        let sql = format!(
            "SELECT id, number, supplier, kind, model, part_number, count, given, note, ordered_on, expected_on,
                 ordered_by, saved_at FROM part_order o {} ORDER BY number DESC LIMIT ${} OFFSET ${}",
            chosen.clause,
            at + 1,
            at + 2
        );
        let lines = self.rows(chosen.bind(sql).bind(limit).bind(offset)).await?;
        // Lists of everything that belongs to the chosen: few rows, and one question each instead of one an order.
        let of = format!("SELECT id FROM part_order o {}", chosen.clause);
        let jobs = format!(
            "SELECT w.part_order, w.job, w.count, j.number FROM part_order_job w JOIN job j ON j.id = w.job
             WHERE w.part_order IN ({of}) ORDER BY w.place"
        );
        let mut jobs_of: BTreeMap<String, Vec<ForJob>> = BTreeMap::new();
        for row in self.rows(chosen.bind(jobs)).await? {
            let wish =
                ForJob { job: JobId(row.text("job")?), number: row.whole("number")?, count: row.whole("count")? };
            jobs_of.entry(row.text("part_order")?).or_default().push(wish);
        }
        let events = format!(
            "SELECT id, part_order, step, count, model, part_number, supplier, expected_on, note, done_by, happened_at
             FROM part_order_event WHERE part_order IN ({of}) ORDER BY seq"
        );
        let mut events_of: BTreeMap<String, Vec<OrderEvent>> = BTreeMap::new();
        for row in self.rows(chosen.bind(events)).await? {
            events_of.entry(row.text("part_order")?).or_default().push(event_of(&row)?);
        }
        lines
            .iter()
            .map(|row| {
                let id = row.text("id")?;
                Ok(Order {
                    events: events_of.remove(&id).unwrap_or_default(),
                    line: line_of(row, jobs_of.remove(&id).unwrap_or_default())?,
                })
            })
            .collect()
    }

    /// How many orders a filter asks for, its limit and offset left aside.
    ///
    /// # Errors
    /// The database failed.
    pub async fn count_orders(&mut self, filter: &OrderFilter) -> Result<i64, StoreError> {
        let chosen = Chosen::by(filter);
        let sql = format!("SELECT COUNT(*) FROM part_order o {}", chosen.clause);
        self.number(chosen.bind(sql)).await
    }

    /// The supplier of whom a model was ordered last; none where nobody was named yet.
    ///
    /// # Errors
    /// The database failed.
    pub async fn last_supplier(&mut self, model: &str) -> Result<Option<String>, StoreError> {
        let lookup = query(
            "SELECT supplier FROM (SELECT o.number, COALESCE((SELECT e.supplier FROM part_order_event e
                     WHERE e.part_order = o.id AND e.supplier IS NOT NULL ORDER BY e.seq DESC LIMIT 1), o.supplier)
                 AS supplier FROM part_order o WHERE o.model = $1) named
             WHERE supplier <> '' ORDER BY number DESC LIMIT 1",
        );
        self.row(lookup.bind(model.to_owned())).await?.map(|row| row.text("supplier")).transpose()
    }
}

/// A condition with its values; the text holds only names of columns and numbered placeholders.
struct Chosen {
    clause: String,
    values: Vec<Value>,
}

#[derive(Clone)]
enum Value {
    Text(String),
    Whole(i64),
}

impl Chosen {
    fn by(filter: &OrderFilter) -> Self {
        let (mut conditions, mut values) = (Vec::new(), Vec::new());
        if filter.open {
            conditions.push(IS_OPEN.to_owned());
        }
        let mut add = |condition: &str, value: Value| {
            values.push(value);
            conditions.push(condition.replace('?', &format!("${}", values.len())));
        };
        if let Some(job) = &filter.job {
            add("o.id IN (SELECT w.part_order FROM part_order_job w WHERE w.job = ?)", Value::Text(job.0.clone()));
        }
        if let Some(model) = &filter.model {
            add("o.model = ?", Value::Text(model.clone()));
        }
        if let Some(number) = filter.number {
            add("o.number = ?", Value::Whole(number));
        }
        let clause = if conditions.is_empty() { String::new() } else { format!("WHERE {}", conditions.join(" AND ")) };
        Self { clause, values }
    }

    fn bind(&self, sql: String) -> Query {
        self.values.iter().fold(query(AssertSqlSafe(sql)), |bound, value| match value {
            Value::Text(text) => bound.bind(text.clone()),
            Value::Whole(number) => bound.bind(*number),
        })
    }
}

fn day(row: &Row, column: &'static str) -> Result<Option<Date>, StoreError> {
    let Some(text) = row.maybe_text(column)? else { return Ok(None) };
    text.parse().map(Some).map_err(|e: jiff::Error| StoreError::Damaged {
        what: format!("the column “{column}” of a row"),
        problem: e.to_string(),
    })
}

fn line_of(row: &Row, jobs: Vec<ForJob>) -> Result<OrderLine, StoreError> {
    let given: Given = row.body("given")?;
    let ordered_on = day(row, "ordered_on")?.ok_or_else(|| StoreError::Damaged {
        what: "the column “ordered_on” of a row".into(),
        problem: "it is empty".into(),
    })?;
    Ok(OrderLine {
        id: OrderId(row.text("id")?),
        order: row.whole("number")?,
        supplier: row.text("supplier")?,
        kind: row.word("kind", PartKind::from_key)?,
        model: row.text("model")?,
        number: row.maybe_text("part_number")?,
        count: row.whole("count")?,
        from_g: given.from_g,
        to_g: given.to_g,
        jobs,
        note: row.text("note")?,
        ordered_on,
        expected_on: day(row, "expected_on")?,
        by: row.text("ordered_by")?,
        at: row.time("saved_at")?,
    })
}

fn event_of(row: &Row) -> Result<OrderEvent, StoreError> {
    Ok(OrderEvent {
        id: EventId(row.text("id")?),
        step: row.word("step", OrderStep::from_key)?,
        count: row.whole("count")?,
        model: row.maybe_text("model")?,
        number: row.maybe_text("part_number")?,
        supplier: row.maybe_text("supplier")?,
        expected_on: day(row, "expected_on")?,
        note: row.text("note")?,
        by: row.text("done_by")?,
        at: row.time("happened_at")?,
    })
}
