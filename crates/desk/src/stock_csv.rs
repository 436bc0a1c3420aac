//! Lists of the stock as CSV files: orders, what is short, weight classes, head masses to ask for, the life of a part.
//!
//! Headings are those of the JSON documents, with their units; a decimal point, commas between.

use crate::ask::HeadAsk;
use crate::needs::Need;
use crate::stock_file::to_csv;
use crate::weight_class::Sorting;
use trade::life::{FigureChange, LifeEntry};
use trade::order::OrderView;

/// A file from rows of cells.
pub(crate) fn file(header: &[&str], rows: impl Iterator<Item = Vec<String>>) -> String {
    let heading = header.iter().map(|h| (*h).to_owned()).collect();
    to_csv(std::iter::once(heading).chain(rows))
}

/// A figure rounded to a number of decimals.
pub(crate) fn figure(value: f64, digits: usize) -> String {
    format!("{value:.digits$}")
}

/// An empty cell where there is nothing.
pub(crate) fn maybe<T: ToString>(value: Option<T>) -> String {
    value.map_or_else(String::new, |v| v.to_string())
}

/// Orders, one a row.
#[must_use]
pub fn orders(orders: &[OrderView]) -> String {
    let header = [
        "order",
        "supplier",
        "kind",
        "model",
        "number",
        "count",
        "from_g",
        "to_g",
        "received",
        "substituted",
        "open",
        "state",
        "ordered_on",
        "expected_on",
        "days_late",
        "jobs",
        "note",
        "by",
    ];
    let row = |o: &OrderView| {
        let line = &o.line;
        let jobs: Vec<String> = line.jobs.iter().map(|j| format!("{}: {}", j.number, j.count)).collect();
        vec![
            line.order.to_string(),
            line.supplier.clone(),
            line.kind.key().to_owned(),
            line.model.clone(),
            line.number.clone().unwrap_or_default(),
            line.count.to_string(),
            maybe(line.from_g.map(|g| figure(g, 1))),
            maybe(line.to_g.map(|g| figure(g, 1))),
            o.received.to_string(),
            o.substituted.to_string(),
            o.open.to_string(),
            o.state.key().to_owned(),
            line.ordered_on.to_string(),
            maybe(line.expected_on),
            maybe(o.days_late),
            jobs.join("; "),
            line.note.clone(),
            line.by.clone(),
        ]
    };
    file(&header, orders.iter().map(row))
}

/// The stock against the sheets to come, one model and number a row.
#[must_use]
pub fn needs(needs: &[Need]) -> String {
    let header = [
        "kind",
        "model",
        "number",
        "free",
        "not_weighed",
        "held",
        "on_order",
        "needed_by_jobs",
        "needed_by_sheets",
        "short",
        "to_order",
        "jobs_short",
    ];
    let row = |n: &Need| {
        let jobs: Vec<String> = n.jobs_short.iter().map(|j| format!("{}: {}", j.job, j.count)).collect();
        vec![
            n.kind.key().to_owned(),
            n.model.clone(),
            n.number.clone().unwrap_or_default(),
            n.free.to_string(),
            n.not_weighed.to_string(),
            n.held.to_string(),
            n.on_order.to_string(),
            n.needed_by_jobs.to_string(),
            n.needed_by_sheets.to_string(),
            n.short.to_string(),
            n.to_order.to_string(),
            jobs.join("; "),
        ]
    };
    file(&header, needs.iter().map(row))
}

/// Parts in their weight classes, one a row, the lightest first.
#[must_use]
pub fn sorting(sorting: &Sorting) -> String {
    let rows = sorting.classes.iter().flat_map(|class| {
        class.parts.iter().map(|p| {
            vec![
                class.name.clone(),
                figure(class.from_g, 2),
                figure(class.to_g, 2),
                p.code.clone(),
                p.mass_g.to_string(),
                p.row.to_string(),
                p.column.to_string(),
            ]
        })
    });
    file(&["class", "from_g", "to_g", "code", "mass_g", "row", "column"], rows)
}

/// Head masses to ask for, one club a row.
#[must_use]
pub fn asks(asks: &[HeadAsk]) -> String {
    let header = [
        "head_model",
        "number",
        "length_mm",
        "swing_weight_points",
        "from_g",
        "to_g",
        "bare_g",
        "cap_g",
        "grips",
        "mean_g",
        "sd_g",
        "inside",
        "inside_any_shaft",
        "order_for_one",
    ];
    let row = |a: &HeadAsk| {
        vec![
            a.head_model.clone(),
            a.number.clone(),
            figure(a.length_mm, 1),
            figure(a.swing_weight_points, 2),
            figure(a.from_g, 2),
            figure(a.to_g, 2),
            figure(a.bare_g, 2),
            figure(a.cap_g, 1),
            a.grips.to_string(),
            figure(a.mean_g, 2),
            figure(a.sd_g, 2),
            figure(a.inside, 4),
            figure(a.inside_any_shaft, 4),
            maybe(a.order_for_one),
        ]
    };
    file(&header, asks.iter().map(row))
}

/// The life of a part, one entry a row.
#[must_use]
pub fn life(life: &[LifeEntry]) -> String {
    let row = |e: &LifeEntry| {
        vec![
            e.at.to_string(),
            e.by.clone(),
            e.step.key().to_owned(),
            maybe(e.job),
            e.club.clone().unwrap_or_default(),
            e.figures.iter().map(figure_change).collect::<Vec<_>>().join("; "),
            e.reason.as_ref().map(ToString::to_string).unwrap_or_default(),
        ]
    };
    file(&["at", "by", "step", "job", "club", "figures", "reason"], life.iter().map(row))
}

/// A figure before and after as data, without a unit but that of its name: `mass_g: 265.3 > 264.9`.
fn figure_change(change: &FigureChange) -> String {
    match (change.from, change.to) {
        (None, to) => format!("{}: {}", change.field, maybe(to)),
        (Some(from), to) => format!("{}: {from} > {}", change.field, maybe(to)),
    }
}
