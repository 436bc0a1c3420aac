//! What a plan says for itself: why these parts, what is missing and what to order.

use super::{Fitting, Shelf, deviations};
use matching::{Unbuildable, Why};
use quantity::{SwingWeight, decimal};
use trade::fit::BlankUse;
use trade::job::JobClub;
use trade::model::PartKind;
use trade::plan::Missing;

/// Why this choice, in words a builder would use.
pub(super) fn reasons(fitting: &Fitting<'_>, shelf: &Shelf<'_>, choice: &matching::Choice) -> Vec<String> {
    let head = shelf.heads[choice.head];
    let mut words = Vec::new();
    let head_g = head.mass_g.unwrap_or_default();
    let off_g = head_g - fitting.head_number.mass_g;
    words.push(format!(
        "Head {} is {} g {} its number's {} g.",
        head.code,
        decimal(off_g.abs(), 1),
        if off_g < 0.0 { "under" } else { "over" },
        decimal(fitting.head_number.mass_g, 1)
    ));
    if fitting.head_masses.last(head_g) {
        words.push("No other head of its number is within a gram: it is the last of its kind.".into());
    }
    words.push(if choice.tip_g > 0.0 {
        format!(
            "{} g in the tip leave it {} from target.",
            decimal(choice.tip_g, 1),
            points_words(choice.deviation_points)
        )
    } else {
        format!("No weight in the tip: {} from target.", points_words(choice.deviation_points))
    });
    if let (Some(off_g), Some(asked_g)) = (choice.mass_residual_g, fitting.club.target.total_mass_g) {
        words.push(format!(
            "The whole club comes to {} g, {} g {} the sheet's.",
            decimal(asked_g + off_g, 1),
            decimal(off_g.abs(), 1),
            if off_g < 0.0 { "under" } else { "over" }
        ));
    }
    if choice.shaft_residual_g.abs() >= 0.05 {
        words.push(format!(
            "Its shaft is {} g {} the model's own line.",
            decimal(choice.shaft_residual_g.abs(), 1),
            if choice.shaft_residual_g < 0.0 { "under" } else { "over" }
        ));
    }
    if let Some((part, _, BlankUse::Neighbour(_))) = fitting.shafts.iter().find(|(part, _, _)| *part == choice.shaft) {
        let blank = shelf.shafts[*part].number.as_deref().unwrap_or("?");
        words.push(format!("The blank is the {blank}'s: give the reason before you cut."));
    }
    let grip = shelf.grips[choice.grip];
    if let Some(mass_g) = grip.mass_g.filter(|&mass_g| deviations(fitting.grip_model, mass_g).abs() >= 1.0) {
        let off_g = mass_g - fitting.grip_model.mass_g;
        words.push(format!(
            "Its grip is {} g {} its model's: one that could put another club right.",
            decimal(off_g.abs(), 1),
            if off_g < 0.0 { "under" } else { "over" }
        ));
    }
    if let Some(adapter) = choice.adapter.map(|at| shelf.adapters[at])
        && let Some((mass_g, nominal_g)) = adapter.mass_g.zip(fitting.adapter.map(|model| model.mass_g))
        && adapter.count.is_none()
        && (mass_g - nominal_g).abs() >= 0.05
    {
        words.push(format!(
            "Adapter {} is {} g {} its model's {} g.",
            adapter.code,
            decimal((mass_g - nominal_g).abs(), 1),
            if mass_g < nominal_g { "under" } else { "over" },
            decimal(nominal_g, 1)
        ));
    }
    let bend = fitting.club.target.lie_deg - head.lie_deg.unwrap_or(fitting.head_number.lie_deg);
    if bend.abs() > fitting.head_model.bend_limit_deg + 1e-9 {
        words.push(format!("Lie asks for {}°, more than the maker allows.", decimal(bend, 1)));
    }
    words
}

fn points_words(points: f64) -> String {
    let n = decimal(points.abs(), 2);
    format!("{n} points")
}

pub(super) fn lacks(club: &JobClub, kind: PartKind, model: &str, words: &str) -> Missing {
    Missing {
        number: club.target.number.clone(),
        kind,
        model: model.to_owned(),
        words: format!("{words}."),
        order_from_g: None,
        order_to_g: None,
        instead: Vec::new(),
    }
}

/// What a club lacks; `kept` says whether a piece of a kind is kept for it.
pub(super) fn name_missing(
    fitting: &Fitting<'_>,
    lack: &Unbuildable,
    kept: impl Fn(matching::PartKind, usize) -> bool,
) -> Missing {
    let club = fitting.club;
    let target = &club.target;
    let with_window = |words: String, window: Option<matching::HeadWindow>| {
        let window_g = window.and_then(|w| w.low_g.zip(w.high_g));
        Missing {
            number: target.number.clone(),
            kind: PartKind::Head,
            model: fitting.head_model.code.clone(),
            words: match window_g {
                Some((low, high)) => {
                    format!("{words}. Order one of {} to {} g", decimal(low, 1), decimal(high, 1))
                }
                None => words,
            },
            order_from_g: window_g.map(|w| w.0),
            order_to_g: window_g.map(|w| w.1),
            instead: Vec::new(),
        }
    };
    let why = match lack.why {
        // Nobody asked for it: there is one piece for two clubs.
        Why::LockedTwice { kind, part, window, .. } if !kept(kind, part) => Why::Short { kind, window },
        other => other,
    };
    match why {
        Why::NoHead { window } => {
            with_window(format!("No free, weighed {} {} head", fitting.head_model.name, target.number), window)
        }
        Why::NoShaft => lacks(
            club,
            PartKind::Shaft,
            &fitting.shaft_model.code,
            &format!(
                "No free, weighed {} shaft fits: it must leave {} mm after the tip trim and go into the bore",
                fitting.shaft_model.name,
                decimal(fitting.places.tip_mm, 0)
            ),
        ),
        Why::NoGrip => lacks(club, PartKind::Grip, &target.grip_model, "No free grip of this model"),
        Why::NoAdapter => lacks(
            club,
            PartKind::Adapter,
            &fitting.head_model.code,
            &format!("{} takes an adapter, and no free one fits it: order one", fitting.head_model.name),
        ),
        Why::OutOfReach { lacking_points, window } => with_window(
            format!(
                "The nearest choice stays {} points {} of {}",
                decimal(lacking_points.abs() + fitting.need.loss.reach_points(), 1),
                if lacking_points > 0.0 { "short" } else { "over" },
                SwingWeight::from_points(target.swing_weight_points).letter_short()
            ),
            Some(window),
        ),
        Why::LockedTwice { kind, .. } => {
            let (kind, model) = match kind {
                matching::PartKind::Shaft => (PartKind::Shaft, &fitting.shaft_model.code),
                matching::PartKind::Grip => (PartKind::Grip, &target.grip_model),
                matching::PartKind::Adapter => (PartKind::Adapter, &fitting.head_model.code),
                _ => (PartKind::Head, &fitting.head_model.code),
            };
            let words = format!("One {kind} is kept for this club and for another: keep it for one of them");
            lacks(club, kind, model, &words)
        }
        Why::Short { kind, window } => match kind {
            matching::PartKind::Head => with_window("Other clubs take the last head that fits".into(), window),
            matching::PartKind::Shaft => lacks(
                club,
                PartKind::Shaft,
                &fitting.shaft_model.code,
                "Other clubs take the last shaft that fits: order one more",
            ),
            matching::PartKind::Adapter => lacks(
                club,
                PartKind::Adapter,
                &fitting.head_model.code,
                "Other clubs take the last adapter that fits: order one more",
            ),
            _ => lacks(club, PartKind::Grip, &target.grip_model, "Other clubs take the last grip: order one more"),
        },
    }
}
