//! From types back to pieces, and from columns to choices with their reasons in figures.

use crate::compiled::Compiled;
use crate::cost::{Built, Tariff};
use crate::error::PartKind;
use crate::index::{ByType, Ty};
use crate::model::{ClubNeed, CostWeights, JobSet, Stock};
use crate::prices::by_type;
use crate::solution::Choice;
use crate::table::Column;

/// Hands out the pieces of each type in ascending order of their numbers.
struct Pieces {
    next: ByType<(usize, u32)>,
}

impl Pieces {
    fn take(&mut self, p: &Compiled, kind: PartKind, ty: Ty) -> usize {
        let (member, used) = &mut self.next[kind][ty];
        let members = &p.types[kind][ty].members;
        while *member + 1 < members.len() && *used >= members[*member].1 {
            (*member, *used) = (*member + 1, 0);
        }
        *used += 1;
        members[*member].0
    }
}

/// Choices for all clubs, set by set, with what each costs; or which part does not belong where it was put.
pub(crate) fn choices(
    p: &Compiled,
    sets: &[JobSet],
    stock: &Stock,
    weights: &CostWeights,
    columns: &[Option<Column>],
) -> Result<Vec<Vec<Option<Choice>>>, String> {
    let mut pieces = Pieces { next: by_type(p, (0, 0)) };
    let mut at = 0;
    let mut out = Vec::with_capacity(sets.len());
    for set in sets {
        let tariff = Tariff::new(weights, set.priority);
        let mut row = Vec::with_capacity(set.clubs.len());
        for need in &set.clubs {
            let choice = columns[at].map(|column| {
                let mut taken = Taken::default();
                for (k, ty) in column.uses() {
                    let piece = pieces.take(p, k, ty);
                    match k {
                        PartKind::Head => taken.head = piece,
                        PartKind::Shaft => taken.shaft = piece,
                        PartKind::Grip => taken.grip = piece,
                        PartKind::Tip => taken.tips.push(piece),
                        PartKind::Adapter => taken.adapter = Some(piece),
                    }
                }
                choice(need, stock, &tariff, weights.quantum, taken)
            });
            row.push(choice.transpose()?);
            at += 1;
        }
        out.push(row);
    }
    Ok(out)
}

/// The pieces of one club.
#[derive(Default)]
struct Taken {
    head: usize,
    shaft: usize,
    grip: usize,
    adapter: Option<usize>,
    tips: Vec<usize>,
}

fn choice(need: &ClubNeed, stock: &Stock, tariff: &Tariff, quantum: f64, taken: Taken) -> Result<Choice, String> {
    let Taken { head, shaft, grip, adapter, tips } = taken;
    let built = Built::new(need, [head, shaft, grip], adapter, &tips)?;
    let tip_g: f64 = tips.iter().map(|&t| stock.tips[t].grams).sum();
    Ok(Choice {
        head,
        shaft,
        grip,
        adapter,
        deviation_points: built.deviation_points(),
        tip_g,
        shaft_residual_g: built.shaft.mass_g - need.shaft_nominal_g,
        mass_residual_g: need.mass_target.map(|m| m.base_mass_g + built.mass_g() + tip_g - m.target_g),
        cost: built.terms(tariff, stock)?.told(quantum),
        tips,
    })
}
