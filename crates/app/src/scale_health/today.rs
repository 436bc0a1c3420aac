//! What Today says of the scales.

use crate::{App, AppError, load_shop};
use desk::scale_health::trust;
use jiff::civil::Date;
use jiff::{SignedDuration, Timestamp};
use serde::Serialize;
use trade::gauge::Measures;
use trade::scale_event::{Happened, ScaleEvent, standing_checks};
use trade::trust::TrustSaid;
use utoipa::ToSchema;

/// A scale on the Today page.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct ScaleToday {
    /// Short key of the instrument in the shop's settings, for example `bench`.
    pub key: String,
    /// What people call it.
    pub name: String,
    /// Whether there is something to check it with.
    pub has_standard: bool,
    /// Whether it is a scale that is read every day, a mass or a swing weight.
    pub daily: bool,
    /// Whether it was checked today.
    pub checked: bool,
    /// What is said of it where it is not trusted.
    #[serde(flatten)]
    #[schema(schema_with = fact::schema_where_any)]
    pub said: Option<TrustSaid>,
    /// Whether it can be trusted again with a reason, since it passed its last check.
    pub passed: bool,
}

/// Since which day a scale is not trusted, by the last word on it; none where it is.
fn lost_since(events: &[ScaleEvent], scale: &str) -> Option<Date> {
    let spoken = |e: &&ScaleEvent| matches!(e.what, Happened::Distrusted { .. } | Happened::Trusted { .. });
    match events.iter().rev().filter(|e| e.scale == scale).find(spoken).map(|e| &e.what) {
        Some(Happened::Distrusted { since, .. }) => Some(*since),
        _ => None,
    }
}

impl App {
    /// Which scales are to be checked today, and which are not trusted; and whether anything was read today already.
    ///
    /// # Errors
    /// What the store says.
    pub async fn scales_today(&self) -> Result<(Vec<ScaleToday>, bool), AppError> {
        let mut tx = self.store.read().await?;
        let shop = load_shop(&mut tx).await?;
        let today = self.today();
        let morning = today.to_zoned_datetime(jiff::tz::TimeZone::system()).map(|z| z.timestamp());
        let morning = morning.unwrap_or_else(|_| self.now());
        // Only what is said of today: the checks since yesterday, or since the first day on which a scale that is not
        // trusted was not.
        let before = |at: Timestamp| at.checked_sub(SignedDuration::from_hours(24)).unwrap_or(Timestamp::MIN);
        let mut events = tx.scale_events_between(before(morning), Timestamp::MAX).await?;
        let lost = shop.instruments().iter().filter_map(|gauge| lost_since(&events, &gauge.key)).min();
        if let Some(day) = lost
            && let Ok(from) = day.to_zoned_datetime(jiff::tz::TimeZone::system()).map(|z| z.timestamp())
            && from < morning
        {
            events = tx.scale_events_between(before(from), Timestamp::MAX).await?;
        }
        let mut all = Vec::new();
        for gauge in shop.instruments() {
            let events: Vec<ScaleEvent> = events.iter().filter(|e| e.scale == gauge.key).cloned().collect();
            let trust = trust(&events, &gauge, today);
            all.push(ScaleToday {
                has_standard: !shop.standards_of(&gauge.key).is_empty(),
                checked: standing_checks(&events).iter().any(|(e, _)| e.day == today),
                daily: matches!(gauge.measures, Measures::Mass | Measures::SwingWeight),
                said: trust.said,
                passed: trust.passed.is_some(),
                key: gauge.key,
                name: gauge.name,
            });
        }
        let read = tx.read_since(morning).await?;
        Ok((all, read))
    }
}
