//! Readings as they enter the equations: singly, or together where they share their rounding.

use crate::layout::Layout;
use crate::predict::Question;
use crate::reading::Observation;
use crate::rounding::{interval_estimate, is_coarse, step_variance};

/// One reading, or several that share their rounding error, as it enters the equations.
#[derive(Debug, Clone)]
pub(crate) struct Term {
    pub question: Question,
    pub members: Vec<usize>,
    pub value: f64,
    pub variance: f64,
    pub coarse: bool,
}

/// Readings as they enter: singly, or together where they share their rounding.
pub(crate) fn terms(layout: &Layout, readings: &[Observation], questions: &[Question]) -> Vec<Term> {
    let mut terms: Vec<Term> = Vec::with_capacity(readings.len());
    for (i, (reading, question)) in readings.iter().zip(questions).enumerate() {
        if !reading.is_believed() {
            continue;
        }
        let coarse = is_coarse(reading.sd, reading.resolution);
        let shares = |term: &&mut Term| term.coarse && same_display(layout, &readings[term.members[0]], reading);
        if let Some(term) = terms.iter_mut().filter(|_| coarse).find(shares) {
            term.members.push(i);
            continue;
        }
        let variance = reading.sd.powi(2) + step_variance(reading.resolution);
        let question = question.clone();
        terms.push(Term { question, members: vec![i], value: reading.value, variance, coarse });
    }
    for term in terms.iter_mut().filter(|term| term.members.len() > 1) {
        let values: Vec<(f64, f64)> = term.members.iter().map(|i| (readings[*i].value, readings[*i].sd)).collect();
        (term.value, term.variance) = interval_estimate(&values, readings[term.members[0]].resolution);
    }
    terms
}

/// Do two coarse readings show the same value on the same display?
fn same_display(layout: &Layout, a: &Observation, b: &Observation) -> bool {
    let same_span = || match &a.scale {
        Some(key) => layout
            .scale(key, "")
            .is_ok_and(|i| layout.scales[i].drift.span(a.at_h) == layout.scales[i].drift.span(b.at_h)),
        None => true,
    };
    a.club == b.club
        && a.quantity == b.quantity
        && (a.on == b.on || !a.quantity.depends_on_stage())
        && a.scale == b.scale
        && a.resolution.to_bits() == b.resolution.to_bits()
        && same_span()
}
