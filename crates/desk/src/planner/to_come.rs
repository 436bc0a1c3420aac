//! Parts that are not here: on order, or still to be ordered. What they weigh is not known before they come, so each counts
//! as its model says, and a head that is still to be ordered as the club would like it.

use super::instead::of_fitting;
use super::{Fitting, Ground, Shelf};
use crate::order::blank_number;
use jiff::ToSpan;
use jiff::civil::Date;
use matching::{Candidate, ClubNeed, DayProblem};
use std::collections::BTreeMap;
use trade::error::TradeError;
use trade::fit::{BlankUse, blank_use};
use trade::model::{Library, PartKind};
use trade::order::Order;
use trade::part::Part;

/// Where a part that is not here comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Source {
    /// An order, by its place among those given.
    Order(usize),
    /// It would have to be ordered.
    ToOrder,
}

/// Parts of one model and number that are not here.
pub(super) struct ToCome {
    pub part: Part,
    pub count: u32,
    pub from: Source,
    /// The day that they are expected on, tomorrow where that is over; none where nobody has named one.
    pub expected_on: Option<Date>,
    /// What one of them does in each club of each job that it fits: points and mass.
    does: Vec<Vec<Option<(f64, f64)>>>,
}

/// What waiting for a part costs a plan, in clubs that are sure to miss: more than any built club can lose, so that nobody
/// waits for a better one, and less in all four kinds than a club left unbuilt. (A judgement, no source.)
const WAITS: f64 = 1.2;
const WAITS_TOO_LONG: f64 = 1.7;
const ORDERS: f64 = 2.2;
/// For parts that were ordered for other jobs.
const MEANT_FOR_OTHERS: f64 = 0.01;

/// A part must be here a day before a job is due: what is glued cures overnight. (A judgement, no source.)
pub(super) fn last_day(due: Date) -> Date {
    due.checked_sub(1.day()).unwrap_or(due)
}

/// A part as its model says.
fn nominal(kind: PartKind, model: &str, number: Option<&str>, library: &Library) -> Option<Part> {
    if !matches!(kind, PartKind::Head | PartKind::Shaft | PartKind::Grip | PartKind::Adapter) {
        return None;
    }
    let mass_g = library.get(model).filter(|one| one.kind() == kind)?.part_mass_g(number)?;
    Some(Part { number: number.map(str::to_owned), mass_g: Some(mass_g), ..Part::new("", kind, model) })
}

/// What is on order and not meant for jobs outside the day.
pub(super) fn on_order(
    grounds: &[Ground<'_>],
    orders: &[Order],
    library: &Library,
    today: Date,
) -> Result<Vec<ToCome>, TradeError> {
    let tomorrow = today.checked_add(1.day()).unwrap_or(today);
    let mut found = Vec::new();
    for (at, order) in orders.iter().enumerate() {
        let line = &order.line;
        let mine = |job: &trade::id::JobId| grounds.iter().any(|g| g.assembly.job.id == *job);
        let others: i64 = line.jobs.iter().filter(|wish| !mine(&wish.job)).map(|wish| order.open_for(&wish.job)).sum();
        let Ok(count @ 1..) = u32::try_from((order.open() - others).max(0)) else { continue };
        let Some(mut part) = nominal(line.kind, &line.model, line.number.as_deref(), library) else { continue };
        if let (Some(from_g), Some(to_g)) = (line.from_g, line.to_g) {
            part.mass_g = Some(f64::midpoint(from_g, to_g));
        }
        let expected_on = order.expected_on().map(|day| day.max(tomorrow));
        found.push(ToCome::new(part, count, Source::Order(at), expected_on, grounds)?);
    }
    Ok(found)
}

/// One of each part that the clubs of these jobs ask for, as often as it may be wanted.
pub(super) fn to_order(grounds: &[Ground<'_>], library: &Library) -> Result<Vec<ToCome>, TradeError> {
    let mut keys: BTreeMap<Key, u32> = BTreeMap::new();
    for fitting in grounds.iter().flat_map(|g| &g.fittings) {
        for key in asked(fitting, library) {
            *keys.entry(key).or_default() += 1;
        }
    }
    let mut found = Vec::new();
    for ((kind, model, number), count) in keys {
        let Some(part) = nominal(kind, &model, number.as_deref(), library) else { continue };
        found.push(ToCome::new(part, count, Source::ToOrder, None, grounds)?);
    }
    Ok(found)
}

/// Kind, model and number of a part.
pub(super) type Key = (PartKind, String, Option<String>);

/// What a club asks for: one of each.
pub(super) fn asked(fitting: &Fitting<'_>, library: &Library) -> Vec<Key> {
    let target = &fitting.club.target;
    let mut keys = vec![
        (PartKind::Head, target.head_model.clone(), Some(fitting.head_number.number.clone())),
        (PartKind::Shaft, target.shaft_model.clone(), blank_number(target, library)),
        (PartKind::Grip, target.grip_model.clone(), None),
    ];
    keys.extend(fitting.adapter.map(|model| (PartKind::Adapter, model.code.clone(), None)));
    keys
}

impl ToCome {
    fn new(
        part: Part,
        count: u32,
        from: Source,
        expected_on: Option<Date>,
        grounds: &[Ground<'_>],
    ) -> Result<Self, TradeError> {
        let mut does = Vec::with_capacity(grounds.len());
        for ground in grounds {
            let one = |fitting: &Fitting<'_>| {
                let own = part.kind != PartKind::Shaft
                    || blank_use(fitting.shaft_model, &part, &fitting.club.target.number) == Some(BlankUse::Own);
                if own { of_fitting(ground.assembly, fitting, &part) } else { Ok(None) }
            };
            does.push(ground.fittings.iter().map(one).collect::<Result<_, _>>()?);
        }
        Ok(Self { part, count, from, expected_on, does })
    }

    /// Whether it is here in time for a job.
    pub fn in_time(&self, due: Date) -> bool {
        self.expected_on.is_some_and(|day| day <= last_day(due))
    }
}

/// Which parts that are not here a job may count on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum May {
    /// Those on order that come in time.
    WaitInTime,
    /// All that are on order, and any that would have to be ordered.
    Order,
}

/// The day's problem with parts to come, which the stock has after its own.
pub(super) fn with_parts_to_come(
    problem: &DayProblem,
    grounds: &[Ground<'_>],
    shelf: &Shelf<'_>,
    orders: &[Order],
    to_come: &[ToCome],
    may: &[May],
) -> DayProblem {
    let mut more = problem.clone();
    for item in to_come {
        let stock = match item.part.kind {
            PartKind::Head => &mut more.stock.heads,
            PartKind::Shaft => &mut more.stock.shafts,
            PartKind::Grip => &mut more.stock.grips,
            _ => &mut more.stock.adapters,
        };
        let at = stock.len();
        stock.push(item.count);
        for (i, ground) in grounds.iter().enumerate() {
            let job = ground.assembly.job;
            let cost = match item.from {
                Source::Order(_) if item.in_time(job.sheet.due) => WAITS,
                _ if may[i] == May::WaitInTime => continue,
                Source::Order(_) => WAITS_TOO_LONG,
                Source::ToOrder => ORDERS,
            };
            let meant = match item.from {
                Source::Order(order) => &orders[order].line.jobs[..],
                Source::ToOrder => &[],
            };
            let others = !meant.is_empty() && meant.iter().all(|wish| wish.job != job.id);
            let extra_cost = cost + if others { MEANT_FOR_OTHERS } else { 0.0 };
            for (k, fitting) in ground.fittings.iter().enumerate() {
                // What is kept for a club goes there and nothing else does.
                let Some((points, mass_g)) = item.does[i][k] else { continue };
                if ground.keeps(fitting, item.part.kind, shelf) {
                    continue;
                }
                let need = &mut more.sets[i].clubs[k];
                let one = Candidate { part: at, points, mass_g, extra_cost };
                match item.part.kind {
                    PartKind::Head => need.heads.push(one),
                    PartKind::Shaft => need.shafts.push(one),
                    PartKind::Grip => need.grips.push(one),
                    _ => need.adapters.iter_mut().for_each(|list| list.push(one)),
                }
            }
        }
    }
    let first = problem.stock.heads.len();
    for need in more.sets.iter_mut().flat_map(|set| &mut set.clubs) {
        as_the_club_likes(need, |part| {
            let mut heads = to_come.iter().filter(|item| item.part.kind == PartKind::Head);
            part >= first && heads.nth(part - first).is_some_and(|item| item.from == Source::ToOrder)
        });
    }
    more
}

/// A head that is still to be ordered is asked for by its mass: one that needs nothing in the tip with shaft and grip of the
/// middle.
fn as_the_club_likes(need: &mut ClubNeed, to_order: impl Fn(usize) -> bool) {
    let middle = |list: &[Candidate]| {
        let mut points: Vec<f64> = list.iter().map(|c| c.points).collect();
        points.sort_by(f64::total_cmp);
        points.get(points.len() / 2).copied()
    };
    let adapter = need.adapters.as_ref().map_or(Some(0.0), |list| middle(list));
    let (Some(shaft), Some(grip), Some(adapter), Some(scale)) =
        (middle(&need.shafts), middle(&need.grips), adapter, need.head_scale)
    else {
        return;
    };
    let points = -(need.base_points + shaft + grip + adapter);
    for head in need.heads.iter_mut().filter(|head| to_order(head.part)) {
        (head.points, head.mass_g) = (points, (points / scale.points_per_g).max(0.0));
    }
}
