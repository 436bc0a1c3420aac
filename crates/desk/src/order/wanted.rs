//! What to order for a plan that lacks parts.

use serde::Serialize;
use trade::fit;
use trade::id::JobId;
use trade::job::Job;
use trade::model::{Library, PartKind};
use trade::order::Order;
use trade::part::Part;
use trade::plan::{Missing, Plan};
use trade::shaft::TipShape;
use trade::sheet::SheetClub;
use utoipa::ToSchema;

/// Parts to order for a job.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct Wanted {
    /// What sort of part to order: heads, shafts, grips …
    pub kind: PartKind,
    /// Code of the model.
    pub model: String,
    /// The number of a head or taper blank.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub number: Option<String>,
    /// How many the job lacks.
    pub count: i64,
    /// How many of those are ordered for it already.
    pub ordered: i64,
    /// Lightest that will do.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from_g: Option<f64>,
    /// Heaviest that will do.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub to_g: Option<f64>,
    /// Numbers of the clubs that lack them.
    pub clubs: Vec<String>,
}

impl Wanted {
    /// How many are still to be ordered.
    #[must_use]
    pub fn to_order(&self) -> i64 {
        (self.count - self.ordered).max(0)
    }
}

/// What a job lacks by its plan, less what is ordered for it already.
///
/// A plan names for each club the first part that it lacks. A club that is left out needs every part, so the kinds of
/// which there is not one in stock are named as well: it would not help to order them one after the other.
#[must_use]
pub fn wanted(job: &Job, plan: &Plan, library: &Library, parts: &[Part], orders: &[Order]) -> Vec<Wanted> {
    let mut found: Vec<Wanted> = Vec::new();
    for missing in &plan.missing {
        // A club that has its plan holds what it needs, though no more of it may be in stock.
        let club = job.clubs.iter().find(|c| c.target.number == missing.number).filter(|c| c.plan.is_none());
        if let Some(wish) = club.and_then(|club| of_missing(missing, &club.target, library)) {
            add(&mut found, wish);
        }
    }
    for (club, _) in job.clubs.iter().zip(&plan.clubs).filter(|(_, plan)| plan.is_none()) {
        let named = |kind| plan.missing.iter().any(|m| m.number == club.target.number && m.kind == kind);
        for kind in [PartKind::Head, PartKind::Shaft, PartKind::Grip] {
            let none_fits =
                !parts.iter().any(|p| p.kind == kind && p.is_free() && fit::serves(p, &club.target, library));
            if none_fits && !named(kind) {
                add(&mut found, plain(kind, &club.target, library));
            }
        }
        let fits = |p: &&Part| p.kind == PartKind::Adapter && p.is_free() && fit::serves(p, &club.target, library);
        if library.head(&club.target.head_model).is_ok_and(|head| head.takes_adapter)
            && !parts.iter().any(|p| fits(&p))
            && !named(PartKind::Adapter)
            && let Some(model) = adapter_of(&club.target.head_model, library)
        {
            add(&mut found, Wanted { model: model.to_owned(), ..plain(PartKind::Adapter, &club.target, library) });
        }
    }
    let mut ordered: Vec<i64> = orders.iter().map(|o| o.open_for(&job.id)).collect();
    for wish in &mut found {
        for (order, open) in orders.iter().zip(&mut ordered) {
            if order.line.kind == wish.kind && order.line.model == wish.model && order.line.number == wish.number {
                let taken = (*open).min(wish.count - wish.ordered);
                wish.ordered += taken;
                *open -= taken;
            }
        }
    }
    found
}

/// Puts like with like; heads of another window are another order.
fn add(found: &mut Vec<Wanted>, wish: Wanted) {
    let near = |a: Option<f64>, b: Option<f64>| match (a, b) {
        (Some(a), Some(b)) => (a - b).abs() < 0.05,
        (a, b) => a == b,
    };
    let same = found.iter_mut().find(|w| {
        w.kind == wish.kind
            && w.model == wish.model
            && w.number == wish.number
            && near(w.from_g, wish.from_g)
            && near(w.to_g, wish.to_g)
    });
    match same {
        Some(same) => {
            same.count += wish.count;
            same.clubs.extend(wish.clubs);
        }
        None => found.push(wish),
    }
}

/// What the club's model and number ask for of a kind, without a window.
fn plain(kind: PartKind, target: &SheetClub, library: &Library) -> Wanted {
    let (model, number) = match kind {
        PartKind::Head => (&target.head_model, Some(target.number.clone())),
        PartKind::Shaft => (&target.shaft_model, blank_number(target, library)),
        _ => (&target.grip_model, None),
    };
    Wanted {
        kind,
        model: model.clone(),
        number,
        count: 1,
        ordered: 0,
        from_g: None,
        to_g: None,
        clubs: vec![target.number.clone()],
    }
}

/// The number that the shaft's blank is ordered by; none for a parallel tip.
pub(crate) fn blank_number(target: &SheetClub, library: &Library) -> Option<String> {
    library.shaft(&target.shaft_model).ok().filter(|s| s.tip == TipShape::Taper).map(|_| target.number.clone())
}

/// The adapter model that a head takes; none where the library has none for it.
pub(crate) fn adapter_of<'a>(head: &str, library: &'a Library) -> Option<&'a str> {
    library.adapters_of(head).next().map(|adapter| adapter.code.as_str())
}

fn of_missing(missing: &Missing, target: &SheetClub, library: &Library) -> Option<Wanted> {
    let wish = plain(missing.kind, target, library);
    match missing.kind {
        PartKind::Head => Some(Wanted { from_g: missing.order_from_g, to_g: missing.order_to_g, ..wish }),
        PartKind::Shaft | PartKind::Grip => Some(wish),
        // The plan names the head that lacks its adapter.
        PartKind::Adapter => Some(Wanted { model: adapter_of(&target.head_model, library)?.to_owned(), ..wish }),
        _ => Some(Wanted { model: missing.model.clone(), ..wish }),
    }
}

/// The job that an order names for a number of parts.
#[must_use]
pub fn for_job(job: &Job, count: i64) -> trade::order::ForJob {
    trade::order::ForJob { job: JobId(job.id.0.clone()), number: job.number, count }
}
