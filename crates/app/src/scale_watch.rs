//! What a job must know of the shop's scales.

use crate::AppError;
use bench::scale_watch::{ScaleWatch, WatchedCheck};
use desk::scale_health::trust;
use jiff::civil::Date;
use jiff::{SignedDuration, Timestamp};
use std::collections::BTreeMap;
use store::Tx;
use trade::id::JobId;
use trade::job::{Job, JobState};
use trade::reading::Reading;
use trade::scale_event::{ScaleEvent, standing_checks};
use trade::shop::Shop;

/// A check this long before the first reading of a job still belongs to its day.
const OF_THE_DAY: SignedDuration = SignedDuration::from_hours(12);

/// What a job must know of the scales: the checks of its days, and which scales are not trusted. Of a finished job what
/// was known at its last reading, so that its record stays what it was.
pub(crate) async fn watch_of_job(
    tx: &mut Tx,
    shop: &Shop,
    job: &Job,
    readings: &[Reading],
) -> Result<ScaleWatch, AppError> {
    let standing = trade::reading::standing(readings);
    let first = standing.iter().map(|r| r.at).min();
    let last = standing.iter().map(|r| r.at).max();
    let over = matches!(job.state, JobState::Finished | JobState::Dropped);
    let until = if over { last.unwrap_or(job.made_at) } else { Timestamp::MAX };
    let from = match first {
        Some(first) => first - OF_THE_DAY,
        // Nothing was read yet: the day of the newest check, if that is not from before the job was made.
        None => match tx.newest_check(until).await? {
            Some(newest) => (newest - OF_THE_DAY).max(job.made_at - OF_THE_DAY),
            None => job.made_at,
        },
    };
    let today = last.unwrap_or(job.made_at).max(from).to_zoned_datetime(jiff::tz::TimeZone::UTC).date();
    let mut made = watch(tx, shop, from, until, today, Some(&job.id)).await?;
    made.bench_days = bench_days(shop, &standing, &made);
    Ok(made)
}

/// The days on which the job's bench reads on the balance scale, by the shop's own calendar.
fn bench_days(shop: &Shop, standing: &[&Reading], watch: &ScaleWatch) -> Vec<(Date, Timestamp)> {
    let balance = &shop.balance_scale.key;
    let zone = jiff::tz::TimeZone::system();
    let on_scale = standing.iter().filter(|r| r.scale.as_ref() == Some(balance)).map(|r| r.at);
    let checks = watch.checks.iter().filter(|c| c.scale == *balance).map(|c| c.at);
    let mut days: BTreeMap<Date, Timestamp> = BTreeMap::new();
    for at in on_scale.chain(checks) {
        let first = days.entry(at.to_zoned_datetime(zone.clone()).date()).or_insert(at);
        *first = at.min(*first);
    }
    days.into_iter().collect()
}

/// What a job that began now would know.
pub(crate) async fn watch_now(tx: &mut Tx, shop: &Shop, now: Timestamp, today: Date) -> Result<ScaleWatch, AppError> {
    watch(tx, shop, now - OF_THE_DAY, Timestamp::MAX, today, None).await
}

async fn watch(
    tx: &mut Tx,
    shop: &Shop,
    from: Timestamp,
    until: Timestamp,
    today: Date,
    job: Option<&JobId>,
) -> Result<ScaleWatch, AppError> {
    let mut events = tx.scale_events_between(from, until).await?;
    events.retain(|e| e.at <= until && e.kept_at <= until);
    let mut made = ScaleWatch::default();
    for gauge in shop.instruments() {
        let own: Vec<ScaleEvent> = events.iter().filter(|e| e.scale == gauge.key).cloned().collect();
        let checks = standing_checks(&own).into_iter().filter(|(e, _)| e.at >= from);
        // What was read at the job's own bench is among its readings already.
        let apart = checks.filter(|(_, c)| job.is_none() || c.job.as_ref() != job);
        made.checks.extend(apart.map(|(event, read)| WatchedCheck::of(event, read)));
        let trust = trust(&own, &gauge, today);
        if !trust.trusted {
            made.not_trusted.push((gauge.key, trust));
        }
    }
    Ok(made)
}
