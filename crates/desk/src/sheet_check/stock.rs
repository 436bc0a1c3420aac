//! What no part in stock can reach.

use crate::mass_model::{Ingredients, MassModel};
use crate::sheet_check::{Named, Severity, SheetNext, SheetProblem, StockFinding};
use trade::club_name::ClubName;
use trade::fit::{BlankUse, blank_use};
use trade::model::{Library, PartKind};
use trade::part::Part;
use trade::shop::Shop;
use trade::tip_weight::tip_weight_fits;

/// The head masses with which a club can reach its swing weight, from the lightest shaft and grip that would do to the
/// heaviest, with nothing to the shop's most in the tip.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeadWindow {
    /// Lightest head: with the shop's most tip weight.
    pub from_g: f64,
    /// Heaviest head: with nothing in the tip.
    pub to_g: f64,
}

/// The window of head mass for a club of a sheet, by the nominal figures of its models.
///
/// # Errors
/// A model that the library lacks, or a length that is none.
pub fn head_window(
    club: &trade::sheet::SheetClub,
    library: &Library,
    shop: &Shop,
) -> Result<HeadWindow, trade::error::TradeError> {
    let model = MassModel::of(&Ingredients::of_sheet(club, library, shop)?)?;
    Ok(window(&model, club.swing_weight_points, 0.0, shop.tip_weight_cap_g))
}

fn window(model: &MassModel, points: f64, tolerance: f64, cap_g: f64) -> HeadWindow {
    let to_g = model.head_for_swing_weight_g(points + tolerance);
    let lowest = model.head_for_swing_weight_g(points - tolerance);
    let tip_share = (model.swing_weight_points(0.0, 1.0) - model.swing_weight_points(0.0, 0.0))
        / (model.swing_weight_points(1.0, 0.0) - model.swing_weight_points(0.0, 0.0));
    HeadWindow { from_g: lowest - cap_g * tip_share, to_g }
}

pub(super) fn check(club: &Named<'_>, library: &Library, stock: &[Part], shop: &Shop, found: &mut Vec<SheetProblem>) {
    let (true, Some(head), Some(entry), Some(shaft)) = (club.sound, club.head, club.number, club.shaft) else { return };
    if shaft.blank(&entry.number).is_none() {
        return;
    }
    let of = |kind: PartKind, model: &str| -> Vec<&Part> {
        stock.iter().filter(|p| p.kind == kind && p.model == model && p.is_free()).collect()
    };
    let numbered = |p: &&&Part| p.number.as_deref().is_some_and(|n| n.eq_ignore_ascii_case(&entry.number));
    let heads: Vec<&Part> = of(PartKind::Head, &head.code).iter().filter(numbered).copied().collect();
    let all_shafts = of(PartKind::Shaft, &shaft.code);
    let used_as = |use_: fn(BlankUse) -> bool| -> Vec<&Part> {
        let fits = |p: &&&Part| blank_use(shaft, p, &entry.number).is_some_and(use_);
        all_shafts.iter().filter(fits).copied().collect()
    };
    let mut shafts = used_as(|u| u == BlankUse::Own);
    let grips = of(PartKind::Grip, &club.club.grip_model);
    let mut push = |field: &str, fact: StockFinding, next: SheetNext| {
        found.push(SheetProblem::new(Severity::Warn, club.field(field), &fact, &next).of(club.club));
    };
    let neighbours = used_as(|u| matches!(u, BlankUse::Neighbour(_)));
    if shafts.is_empty() && !neighbours.is_empty() {
        let mut numbers: Vec<&str> = neighbours.iter().filter_map(|p| p.number.as_deref()).collect();
        numbers.dedup();
        let blanks = numbers.into_iter().map(|n| ClubName::of(club.club.club_kind, n)).collect();
        let fact = StockFinding::NeighbourBlank { shaft: shaft.name.clone(), club: club.club.name(), blanks };
        push("shaft_model", fact, SheetNext::OrderBlank);
        shafts = neighbours;
    }
    if shafts.is_empty() {
        push("shaft_model", StockFinding::NoShaft { shaft: shaft.name.clone() }, SheetNext::OrderShaft);
    }
    if grips.is_empty() {
        let grip = club.grip.map_or_else(|| club.club.grip_model.clone(), |g| g.name.clone());
        push("grip_model", StockFinding::NoGrip { grip }, SheetNext::OrderGrip);
    }
    if let Some(code) = &club.club.ferrule_model
        && of(PartKind::Ferrule, code).is_empty()
    {
        let ferrule = library.ferrule(code).map_or_else(|_| code.clone(), |f| f.name.clone());
        push("ferrule_model", StockFinding::NoFerrule { ferrule }, SheetNext::Order);
    }
    let Ok(ingredients) = Ingredients::of_sheet(club.club, library, shop) else { return };
    if head.takes_adapter
        && !stock.iter().any(|p| p.kind == PartKind::Adapter && p.is_free() && fits(library, p, &head.code))
    {
        push("head_model", StockFinding::NoAdapter { head: head.name.clone() }, SheetNext::Order);
    }
    // The extremes of shafts and grips in stock: if none of these reaches, nothing does. Where there are none, the model's.
    let spread = |parts: &[&Part]| extremes(parts.iter().filter_map(|p| p.mass_g));
    let with = |shaft_g: Option<f64>, grip_g: Option<f64>| {
        MassModel::of(&Ingredients { shaft_mass_g: shaft_g, grip_mass_g: grip_g, ..ingredients })
    };
    let (shaft_g, grip_g) = (spread(&shafts), spread(&grips));
    let Ok(lightest) = with(shaft_g.map(|s| s.0), grip_g.map(|g| g.1)) else { return };
    let Ok(heaviest) = with(shaft_g.map(|s| s.1), grip_g.map(|g| g.0)) else { return };
    if club.club.swing_weight_free {
        return;
    }
    let (points, tolerance) = (club.club.swing_weight_points, club.club.tolerances.swing_weight_points);
    let swap_g = screws(head);
    let tip_g = most_in_tip_g(library, stock, shop, shaft.tip_diameter_mm);
    // Heads that some shaft, grip and tip weight bring within the tolerance, as the plan looks for them.
    let from_g = window(&heaviest, points, tolerance, tip_g).from_g - swap_g;
    let to_g = window(&lightest, points, tolerance, tip_g).to_g + swap_g;
    let Some((low_g, high_g)) = extremes(heads.iter().map(|h| h.mass_g.unwrap_or(entry.mass_g))) else {
        let fact = StockFinding::NoHead { head: head.name.clone(), club: club.club.name() };
        push("head_model", fact, SheetNext::OrderHeads { from_g, to_g });
        return;
    };
    let lowest = lightest.swing_weight_points(low_g - swap_g, 0.0);
    let highest = heaviest.swing_weight_points(high_g + swap_g, tip_g);
    let fact = if lowest > points + tolerance {
        StockFinding::HeadsTooHeavy { asked_points: points, head_g: low_g, reads_points: lowest }
    } else if highest < points - tolerance {
        let tip_g = Some(tip_g).filter(|g| *g > 0.0);
        StockFinding::HeadsTooLight { asked_points: points, head_g: high_g, reads_points: highest, tip_g }
    } else {
        return;
    };
    push("swing_weight_points", fact, SheetNext::OrderHeadsOrChange { from_g, to_g });
}

/// Smallest and largest.
fn extremes(values: impl Iterator<Item = f64>) -> Option<(f64, f64)> {
    values.filter(|v| v.is_finite()).fold(None, |range, v| match range {
        None => Some((v, v)),
        Some((low, high)) => Some((v.min(low), v.max(high))),
    })
}

/// What swapping the screw can take off or add: a head is weighed with a screw in it, and which one is not known here.
fn screws(head: &trade::head::HeadModel) -> f64 {
    extremes(head.screws.iter().map(|s| s.mass_g)).map_or(0.0, |(light, heavy)| heavy - light)
}

/// Most that can go into the tip: the shop's cap where the tray has a weight that fits, else nothing.
fn most_in_tip_g(library: &Library, stock: &[Part], shop: &Shop, tip_mm: f64) -> f64 {
    let fitting = stock
        .iter()
        .filter(|p| p.kind == PartKind::TipWeight && p.is_free())
        .any(|p| library.tip_weight(&p.model).is_ok_and(|w| tip_weight_fits(w, tip_mm)));
    if fitting { shop.tip_weight_cap_g } else { 0.0 }
}

fn fits(library: &Library, part: &Part, head: &str) -> bool {
    library.adapter(&part.model).is_ok_and(|a| a.fits_head_model == head)
}
