//! The same again: clubs that are there as rows of a new sheet whose targets are what was built and read, not what the old
//! sheet asked; and what of their parts can be had today.

use serde::Serialize;
use trade::club::Club;
use trade::id::ClubCode;
use trade::kind::LengthTo;
use trade::model::{Library, PartKind, as_it_came};
use trade::part::Part;
use trade::plan::PlannedPart;
use trade::reading::What;
use trade::sheet::SheetClub;
use utoipa::ToSchema;

use crate::match_set::MatchedClub;

/// A difference of mass that no scale of a bench shows twice the same (common practice, no source).
const SAME_G: f64 = 0.15;

/// A club as it is to be built again.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct AgainClub {
    /// Code of the club that it is to be like.
    pub like: ClubCode,
    /// The new row: its models, layers and tolerances are those of the club, its targets what was read of it last.
    pub row: SheetClub,
    /// What differs from the old sheet, and what can be had of its parts today.
    #[schema(value_type = Vec<fact::Told>)]
    pub says: Vec<AgainSays>,
}

fact::facts! {
    /// What is to be known before a club is built again.
    pub enum AgainSays: "again" {
        /// Built otherwise than its sheet asked.
        SwingWeight {
            /// What the sheet asked.
            asked_points: f64,
            /// What was read last, and is asked now.
            built_points: f64,
        },
        /// Built longer or shorter than its sheet asked.
        Length {
            /// What the sheet asked.
            asked_mm: f64,
            /// What was read last, to the cap, and is asked now.
            built_mm: f64,
        },
        /// Built with another loft than its sheet asked.
        Loft {
            /// What the sheet asked.
            asked_deg: f64,
            /// What was read last, and is asked now.
            built_deg: f64,
        },
        /// Built with another lie than its sheet asked.
        Lie {
            /// What the sheet asked.
            asked_deg: f64,
            /// What was read last, and is asked now.
            built_deg: f64,
        },
        /// Never read: what its sheet asked stands in.
        NotRead {
            /// The quantity.
            what: What,
        },
        /// The figure is that of the line through the other clubs of the set, as they are today.
        AsOthers {
            /// The quantity.
            what: What,
        },
        /// What the club came with has no maker's model: another must be chosen.
        NoModel {
            /// Head, shaft or grip.
            kind: PartKind,
        },
        /// The model is not in the library any more.
        ModelGone {
            /// Head, shaft or grip.
            kind: PartKind,
            /// Its code.
            model: String,
        },
        /// No part of the model is free.
        NoneFree {
            /// Head, shaft or grip.
            kind: PartKind,
            /// Its code.
            model: String,
        },
        /// Parts of the model are free, and none of them is weighed.
        NoneWeighed {
            /// Head, shaft or grip.
            kind: PartKind,
            /// How many.
            n: i64,
        },
        /// The nearest free part weighs the same.
        Same {
            /// Head, shaft or grip.
            kind: PartKind,
            /// Its code.
            part: String,
        },
        /// The nearest free part is heavier.
        Heavier {
            /// Head, shaft or grip.
            kind: PartKind,
            /// Its code.
            part: String,
            /// By how much.
            by_g: f64,
        },
        /// The nearest free part is lighter.
        Lighter {
            /// Head, shaft or grip.
            kind: PartKind,
            /// Its code.
            part: String,
            /// By how much.
            by_g: f64,
        },
        /// The nearest free part is of another lot.
        OtherLot {
            /// Head, shaft or grip.
            kind: PartKind,
            /// That of the free part, as its maker wrote it.
            lot: String,
            /// The lot of what is in the club.
            was: String,
        },
    }
}

/// A club as it is to be built again; with `others` each figure of the line through them takes the place of its own.
#[must_use]
pub fn again(
    club: &Club,
    others: Option<&MatchedClub>,
    library: &Library,
    free: &[Part],
    customer: Option<i64>,
) -> AgainClub {
    let old = &club.made.row;
    let mut row = SheetClub { cpm: None, total_mass_g: None, ..old.clone() };
    let mut says = Vec::new();
    let mut built = |what: What| {
        if let Some(target) = others.and_then(|o| o.targets.iter().find(|target| target.what == what)) {
            says.push(AgainSays::AsOthers { what });
            return Some(target.value);
        }
        let read = club.figure(what).map(|figure| figure.value);
        if read.is_none() && !matches!(what, What::Cpm | What::TotalMass) {
            says.push(AgainSays::NotRead { what });
        }
        read
    };
    let swing_weight = if old.swing_weight_free { None } else { built(What::SwingWeight) };
    let (length, loft, lie) = (built(What::FinishedLength), built(What::Loft), built(What::Lie));
    (row.cpm, row.total_mass_g) = (built(What::Cpm).or(old.cpm), built(What::TotalMass));
    if let Some(built_points) = swing_weight {
        row.swing_weight_points = built_points;
        push_off(&mut says, old.swing_weight_points, built_points, 0.05, |asked_points, built_points| {
            AgainSays::SwingWeight { asked_points, built_points }
        });
    }
    if let Some(built_mm) = length {
        let asked_mm = library
            .grip(&old.grip_model)
            .map_or(old.length_mm, |grip| old.length_to.to_cap_mm(old.length_mm, grip.cap_mm));
        (row.length_mm, row.length_to) = (built_mm, LengthTo::Cap);
        push_off(&mut says, asked_mm, built_mm, 0.4, |asked_mm, built_mm| AgainSays::Length { asked_mm, built_mm });
    }
    if let Some(built_deg) = loft {
        row.loft_deg = built_deg;
        push_off(&mut says, old.loft_deg, built_deg, 0.05, |asked_deg, built_deg| AgainSays::Loft {
            asked_deg,
            built_deg,
        });
    }
    if let Some(built_deg) = lie {
        row.lie_deg = built_deg;
        push_off(&mut says, old.lie_deg, built_deg, 0.05, |asked_deg, built_deg| AgainSays::Lie {
            asked_deg,
            built_deg,
        });
    }
    for kind in [PartKind::Head, PartKind::Shaft, PartKind::Grip] {
        let model = match kind {
            PartKind::Head => &old.head_model,
            PartKind::Shaft => &old.shaft_model,
            _ => &old.grip_model,
        };
        says.extend(stock_says(kind, model, club, library, free, customer));
    }
    AgainClub { like: club.code.clone(), row, says }
}

fn push_off(says: &mut Vec<AgainSays>, asked: f64, built: f64, least: f64, say: impl Fn(f64, f64) -> AgainSays) {
    if (asked - built).abs() > least {
        says.push(say(asked, built));
    }
}

/// What can be had of one piece.
fn stock_says(
    kind: PartKind,
    model: &str,
    club: &Club,
    library: &Library,
    free: &[Part],
    customer: Option<i64>,
) -> Vec<AgainSays> {
    if as_it_came::is(model) {
        return vec![AgainSays::NoModel { kind }];
    }
    let there = match kind {
        PartKind::Head => library.head(model).is_ok(),
        PartKind::Shaft => library.shaft(model).is_ok(),
        _ => library.grip(model).is_ok(),
    };
    if !there {
        return vec![AgainSays::ModelGone { kind, model: model.to_owned() }];
    }
    let number = &club.made.pieces.head_number;
    let fits = |part: &&Part| {
        part.kind == kind
            && part.model == model
            && part.is_free()
            && part.may_go_to(customer)
            && (kind != PartKind::Head || part.number.as_ref().is_none_or(|n| n.eq_ignore_ascii_case(number)))
    };
    let fitting: Vec<&Part> = free.iter().filter(fits).collect();
    if fitting.is_empty() {
        return vec![AgainSays::NoneFree { kind, model: model.to_owned() }];
    }
    let was: Option<&PlannedPart> = club.made.pieces.parts.iter().find(|part| part.kind == kind);
    let wanted_g = was.filter(|part| part.weighed).map(|part| part.mass_g);
    let mut weighed: Vec<(&Part, f64)> = fitting.iter().filter_map(|part| Some((*part, part.mass_g?))).collect();
    let Some(wanted_g) = wanted_g.filter(|_| !weighed.is_empty()) else {
        let n = fitting.iter().map(|part| part.count.unwrap_or(1)).sum();
        return vec![AgainSays::NoneWeighed { kind, n }];
    };
    weighed.sort_by(|(a, a_g), (b, b_g)| {
        (a_g - wanted_g).abs().total_cmp(&(b_g - wanted_g).abs()).then_with(|| a.code.cmp(&b.code))
    });
    let (nearest, mass_g) = weighed[0];
    let (part, by_g) = (nearest.code.clone(), mass_g - wanted_g);
    let mut says = vec![if by_g.abs() < SAME_G {
        AgainSays::Same { kind, part }
    } else if by_g > 0.0 {
        AgainSays::Heavier { kind, part, by_g }
    } else {
        AgainSays::Lighter { kind, part, by_g: -by_g }
    }];
    let lot_was = was.map(|part| part.lot.as_str()).unwrap_or_default();
    if !lot_was.is_empty() && !nearest.lot.is_empty() && nearest.lot != lot_was {
        says.push(AgainSays::OtherLot { kind, lot: nearest.lot.clone(), was: lot_was.to_owned() });
    }
    says
}

#[cfg(test)]
mod tests {
    use super::*;
    use fact::Fact;
    use trade::arrival::Arrival;
    use trade::club::{ClubFigure, as_it_came as came};
    use trade::kind::{ClubKind, Hand};
    use trade::model::as_it_came::HeadMaterial;

    fn club() -> Club {
        let mut made = came(ClubKind::Iron, "7", HeadMaterial::Unknown, &Arrival::default());
        (made.row.swing_weight_points, made.row.loft_deg) = (32.0, 33.0);
        let figure = |what: What, value| ClubFigure {
            what,
            value,
            unit: what.unit(),
            scale: None,
            at: jiff::Timestamp::UNIX_EPOCH,
        };
        let figures = vec![figure(What::SwingWeight, 32.2), figure(What::Loft, 33.0), figure(What::TotalMass, 431.7)];
        Club {
            code: ClubCode("C7".into()),
            label: String::new(),
            player: "Ada".into(),
            owner: None,
            hand: Hand::Right,
            made,
            grip_size_mm: None,
            figures,
            version: 0,
        }
    }

    /// A figure that was read becomes the new target; one that was not keeps the old sheet's, with a note; a part of no
    /// known model has to be chosen.
    #[test]
    fn targets_are_what_was_read_last() {
        let found = again(&club(), None, &Library::default(), &[], None);
        assert_eq!((found.row.swing_weight_points, found.row.loft_deg), (32.2, 33.0));
        assert_eq!((found.row.total_mass_g, found.row.cpm), (Some(431.7), None));
        assert_eq!(found.row.lie_deg, club().made.row.lie_deg);
        let codes: Vec<String> = found.says.iter().map(|says| says.told().code().to_owned()).collect();
        let not_read = |codes: &[String]| codes.iter().filter(|code| *code == "again.not_read").count();
        assert_eq!(not_read(&codes), 2, "length and lie: {codes:?}");
        assert!(codes.contains(&"again.swing_weight".to_owned()) && !codes.contains(&"again.loft".to_owned()));
        assert_eq!(codes.iter().filter(|code| *code == "again.no_model").count(), 3, "{codes:?}");
    }
}
