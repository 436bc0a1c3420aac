//! The calendar of the shop: due dates, ends of cures, parts that are expected.

use crate::order::OrderQuery;
use crate::{App, AppError};
use desk::calendar::{CalendarEntry, CalendarWhat, to_ics};
use jiff::SignedDuration;
use std::collections::BTreeSet;
use trade::job::JobState;
use words::Words;

/// Batches mixed longer ago have no clock that still runs: no adhesive that a shop glues clubs with cures for two months.
const MIXED_WITHIN_DAYS: i64 = 60;
/// How long the end of a cure stays in the calendar.
const OVER_SINCE_DAYS: i64 = 14;

impl App {
    /// What is in the calendar, the earliest first: the jobs that are not over, the clocks of joints that still run or ended
    /// lately, the orders that are expected.
    ///
    /// # Errors
    /// What the store says.
    pub async fn calendar(&self) -> Result<Vec<CalendarEntry>, AppError> {
        let mut found = Vec::new();
        let mut tx = self.store.read().await?;
        for state in JobState::UNDER_WAY {
            for job in tx.jobs(Some(state)).await? {
                let page = if state == JobState::Open { "plan" } else { "bench" };
                let (number, n) = (job.number, job.clubs.len());
                let what = CalendarWhat::JobDue { job: number, player: job.sheet.player, n };
                let uid = uid(job.id.as_str(), "due");
                found.push(CalendarEntry::on(uid, job.sheet.due, format!("/{page}/{number}"), what));
            }
        }
        drop(tx);
        let over = self.now() - SignedDuration::from_hours(24 * OVER_SINCE_DAYS);
        for view in self.recent_batches(MIXED_WITHIN_DAYS).await? {
            if view.batch.taken_back.is_some() {
                continue;
            }
            let jobs: Vec<i64> = view.clubs.iter().map(|c| c.job).collect::<BTreeSet<_>>().into_iter().collect();
            let (batch, id) = (view.batch.number, view.batch.id.as_str());
            let page = jobs.first().map_or_else(|| "/glue".to_owned(), |job| format!("/bench/{job}"));
            let clocks = [
                ("handling", view.handling_at, CalendarWhat::Handling { batch, jobs: jobs.clone() }),
                ("cure", view.full_cure_at, CalendarWhat::FullCure { batch, jobs }),
            ];
            let running = clocks.into_iter().filter(|(_, at, _)| *at > over);
            found.extend(running.map(|(end, at, what)| CalendarEntry::at(uid(id, end), at, page.clone(), what)));
        }
        let (orders, _) = self.orders(&OrderQuery { open: true, ..OrderQuery::default() }).await?;
        for view in orders {
            let Some(on) = view.line.expected_on else { continue };
            let (order, n, model, supplier) = (view.line.order, view.open, view.line.model, view.line.supplier);
            let what = if supplier.is_empty() {
                CalendarWhat::PartsExpected { order, n, model }
            } else {
                CalendarWhat::PartsExpectedFrom { order, n, model, supplier }
            };
            let uid = uid(view.line.id.as_str(), "expected");
            found.push(CalendarEntry::on(uid, on, format!("/orders/{order}"), what));
        }
        found.sort_by(|a, b| a.begins().cmp(&b.begins()).then_with(|| a.uid.cmp(&b.uid)));
        Ok(found)
    }

    /// The same as an iCalendar file. With the `address` that the shop is reached by, each entry leads to its page.
    ///
    /// # Errors
    /// What the store says.
    pub async fn calendar_file(&self, words: &Words, address: Option<&str>) -> Result<String, AppError> {
        let entries = self.calendar().await?;
        Ok(to_ics(&self.shop().await?.name, &entries, words, self.now(), address))
    }
}

/// The identity of what it is about is its own in the whole world already; with it goes which of its days is meant.
fn uid(id: &str, which: &str) -> String {
    format!("{id}-{which}@setwright")
}
