//! The stock against the sheets to come: of each model and number what is there, what is held, what is asked for.

use crate::ask::{AskClub, AskGround, ask};
use crate::order::{adapter_of, blank_number};
use jiff::civil::Date;
use serde::Serialize;
use std::collections::BTreeMap;
use trade::error::TradeError;
use trade::id::ClubId;
use trade::model::{Library, PartKind};
use trade::order::Order;
use trade::part::{Part, PartState};
use trade::sheet::SheetClub;
use trade::shop::Shop;
use utoipa::ToSchema;

/// A club that is still to be given its parts.
#[derive(Debug, Clone, Copy)]
pub struct OpenClub<'a> {
    /// Number of its job; none for a sheet that is not approved yet.
    pub job: Option<i64>,
    /// Its identity in the job.
    pub id: Option<&'a ClubId>,
    /// The customer whose club it is; none where it is nobody's.
    pub customer: Option<i64>,
    /// When it is due.
    pub due: Date,
    /// What it is to become.
    pub target: &'a SheetClub,
}

/// How the stock of one model and number stands against what is asked for.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct Need {
    /// What sort of part is needed: heads, shafts, grips …
    pub kind: PartKind,
    /// Code of the model.
    pub model: String,
    /// The number of a head or taper blank.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub number: Option<String>,
    /// In stock and free.
    pub free: i64,
    /// Of those not weighed yet: no plan can take such a head or shaft.
    pub not_weighed: i64,
    /// Held for clubs of jobs.
    pub held: i64,
    /// Still to come of what is ordered.
    pub on_order: i64,
    /// Needed by jobs that have no parts yet.
    pub needed_by_jobs: i64,
    /// Needed by sheets that are not approved yet.
    pub needed_by_sheets: i64,
    /// How many more are needed than are free.
    pub short: i64,
    /// How many of those are not ordered either.
    pub to_order: i64,
    /// Jobs that go short, the latest due first to go without: number and how many.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub jobs_short: Vec<JobShort>,
}

/// A job that goes short.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct JobShort {
    /// Its running number.
    pub job: i64,
    /// How many it lacks.
    pub count: i64,
}

/// Leaves out free heads that no club which asks for them can be brought to its swing weight with, and those that nobody has
/// weighed: of the heads that are on order, so that a job is told to wait for them only while none here would do.
///
/// # Errors
/// As [`ask`].
pub fn only_heads_that_do(
    parts: &mut Vec<Part>,
    clubs: &[OpenClub<'_>],
    orders: &[Order],
    library: &Library,
    shop: &Shop,
) -> Result<(), TradeError> {
    let mut windows: BTreeMap<(String, String), Vec<(f64, f64)>> = BTreeMap::new();
    for club in clubs {
        let target = club.target;
        let ordered = |order: &&Order| {
            let line = &order.line;
            (line.kind, &line.model, line.number.as_ref()) == (PartKind::Head, &target.head_model, Some(&target.number))
        };
        if orders.iter().any(|order| order.open() > 0 && ordered(&order)) {
            let within_points = target.tolerances.swing_weight_points;
            let ground = AskGround { library, shop, parts, supply: &[], cap_g: None, within_points };
            let key = (target.head_model.clone(), target.number.clone());
            let found = ask(&[AskClub::from(target)], ground)?;
            windows.entry(key).or_default().extend(found.iter().map(|head| (head.from_g, head.to_g)));
        }
    }
    parts.retain(|part| {
        let Some(number) = part.number.clone().filter(|_| part.kind == PartKind::Head && part.is_free()) else {
            return true;
        };
        let Some(windows) = windows.get(&(part.model.clone(), number)) else { return true };
        part.mass_g.is_some_and(|g| windows.iter().any(|&(from_g, to_g)| (from_g..=to_g).contains(&g)))
    });
    Ok(())
}

/// Kind, model and number of a part.
pub type Key = (PartKind, String, Option<String>);

/// Puts the stock against the clubs that have no parts yet, by kind, model and number. `bulk_held` is how many pieces of
/// a counted bulk are held. Free parts are given to the jobs in the order in which they are due, jobs before sheets.
///
/// Masses are not looked at: what fits by count may still miss its swing weight, which only a plan can tell.
#[must_use]
pub fn needs(
    clubs: &[OpenClub<'_>],
    parts: &[Part],
    bulk_held: &BTreeMap<String, i64>,
    orders: &[Order],
    library: &Library,
) -> Vec<Need> {
    let mut rows: BTreeMap<Key, Need> = BTreeMap::new();
    // What a customer brought is no stock: it only takes a wish of that customer's clubs away.
    let mut brought: BTreeMap<(i64, Key), i64> = BTreeMap::new();
    for part in parts {
        if let Some(owner) = part.owner {
            if part.state == PartState::Free {
                let key = (part.kind, part.model.clone(), part.number.clone());
                *brought.entry((owner, key)).or_default() += part.count.unwrap_or(1);
            }
            continue;
        }
        let row = row(&mut rows, (part.kind, part.model.clone(), part.number.clone()));
        match part.state {
            PartState::Free => {
                row.free += part.count.unwrap_or(1);
                if part.mass_g.is_none() && matches!(part.kind, PartKind::Head | PartKind::Shaft) {
                    row.not_weighed += 1;
                }
                row.held += bulk_held.get(part.id.as_str()).copied().unwrap_or(0);
            }
            PartState::Held => row.held += 1,
            _ => {}
        }
    }
    for order in orders.iter().filter(|o| o.open() > 0) {
        let line = &order.line;
        row(&mut rows, (line.kind, line.model.clone(), line.number.clone())).on_order += order.open();
    }
    let mut asked: Vec<&OpenClub<'_>> = clubs.iter().collect();
    asked.sort_by_key(|c| (c.job.is_none(), c.due, c.job));
    for club in asked {
        for key in wishes(club.target, library) {
            let kind = key.0;
            // What is reserved for this very club is not asked for again.
            if club.id.is_some_and(|id| parts.iter().any(|p| p.kind == kind && p.club.as_ref() == Some(id))) {
                continue;
            }
            let own = club.customer.and_then(|customer| brought.get_mut(&(customer, key.clone()))).filter(|n| **n > 0);
            if let Some(left) = own {
                *left -= 1;
                continue;
            }
            let row = row(&mut rows, key);
            match club.job {
                Some(job) => {
                    row.needed_by_jobs += 1;
                    if row.needed_by_jobs > row.free {
                        match row.jobs_short.iter_mut().find(|s| s.job == job) {
                            Some(short) => short.count += 1,
                            None => row.jobs_short.push(JobShort { job, count: 1 }),
                        }
                    }
                }
                None => row.needed_by_sheets += 1,
            }
        }
    }
    for row in rows.values_mut() {
        row.short = (row.needed_by_jobs + row.needed_by_sheets - row.free).max(0);
        row.to_order = (row.short - row.on_order).max(0);
    }
    rows.into_values().filter(|r| r.free + r.held + r.on_order + r.needed_by_jobs + r.needed_by_sheets > 0).collect()
}

fn row(rows: &mut BTreeMap<Key, Need>, key: Key) -> &mut Need {
    let (kind, model, number) = key.clone();
    rows.entry(key).or_insert(Need {
        kind,
        model,
        number,
        free: 0,
        not_weighed: 0,
        held: 0,
        on_order: 0,
        needed_by_jobs: 0,
        needed_by_sheets: 0,
        short: 0,
        to_order: 0,
        jobs_short: Vec::new(),
    })
}

/// What a club asks for: one of each.
#[must_use]
pub fn wishes(target: &SheetClub, library: &Library) -> Vec<Key> {
    let mut keys = vec![
        (PartKind::Head, target.head_model.clone(), Some(target.number.clone())),
        (PartKind::Shaft, target.shaft_model.clone(), blank_number(target, library)),
        (PartKind::Grip, target.grip_model.clone(), None),
    ];
    keys.extend(target.ferrule_model.iter().map(|model| (PartKind::Ferrule, model.clone(), None)));
    if library.head(&target.head_model).is_ok_and(|h| h.takes_adapter) {
        keys.extend(adapter_of(&target.head_model, library).map(|model| (PartKind::Adapter, model.to_owned(), None)));
    }
    keys
}
