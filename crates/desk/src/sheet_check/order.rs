//! The clubs of a sheet against each other: the same club twice, lengths and lofts out of order.

use crate::sheet_check::{Named, Severity, SheetFinding, SheetNext, SheetProblem};
use crate::short_sheet::{canonical, family};
use std::cmp::Ordering;
use trade::kind::ClubKind;
use trade::sheet::Sheet;

pub(super) fn check(sheet: &Sheet, clubs: &[Named<'_>], found: &mut Vec<SheetProblem>) {
    twice(clubs, found);
    mixed_ends(sheet, found);
    for kinds in 0..=3 {
        let mut of_kind: Vec<&Named<'_>> =
            clubs.iter().filter(|c| c.sound && family(c.club.club_kind) == kinds && kinds != 3).collect();
        // The order of the set is that of the models' own lofts; the sheet's loft where there is no model.
        let nominal = |c: &Named<'_>| c.number.map_or(c.club.loft_deg, |n| n.loft_deg);
        of_kind.sort_by(|a, b| nominal(a).total_cmp(&nominal(b)));
        for pair in of_kind.windows(2) {
            if nominal(pair[0]) < nominal(pair[1]) {
                lofts(pair[0], pair[1], found);
                lengths(pair[0], pair[1], found);
            }
        }
    }
}

fn twice(clubs: &[Named<'_>], found: &mut Vec<SheetProblem>) {
    for (i, club) in clubs.iter().enumerate() {
        let number = canonical(club.club.number.trim());
        let same =
            |c: &&Named<'_>| c.club.club_kind == club.club.club_kind && canonical(c.club.number.trim()) == number;
        if clubs[..i].iter().any(|c| same(&c)) {
            let fact = SheetFinding::Twice { club: club.club.name() };
            let problem = SheetProblem::new(Severity::Stop, club.field("number"), &fact, &SheetNext::TakeOneOut);
            found.push(problem.of(club.club));
        }
    }
}

/// Lengths to the cap and to the shaft's end on one sheet invite a mistake of a cap's thickness.
fn mixed_ends(sheet: &Sheet, found: &mut Vec<SheetProblem>) {
    let mixed = |a: ClubKind, b: ClubKind| (a == ClubKind::Putter) == (b == ClubKind::Putter);
    let odd =
        sheet.clubs.windows(2).position(|w| w[0].length_to != w[1].length_to && mixed(w[0].club_kind, w[1].club_kind));
    if let Some(i) = odd {
        let (a, b) = (&sheet.clubs[i], &sheet.clubs[i + 1]);
        let (one, one_to, other, other_to) = (a.name(), a.length_to, b.name(), b.length_to);
        let fact = SheetFinding::MixedEnds { one, one_to, other, other_to };
        let field = format!("clubs[{}].length_to", i + 1);
        found.push(SheetProblem::new(Severity::Warn, field, &fact, &SheetNext::OneEnd));
    }
}

fn lofts(strong: &Named<'_>, weak: &Named<'_>, found: &mut Vec<SheetProblem>) {
    let (other_deg, loft_deg) = (strong.club.loft_deg, weak.club.loft_deg);
    let other = strong.club.name();
    let fact = match other_deg.total_cmp(&loft_deg) {
        Ordering::Less => return,
        Ordering::Equal => SheetFinding::SameLoft { loft_deg, other },
        Ordering::Greater => SheetFinding::LoftOrder { loft_deg, other, other_deg },
    };
    let problem = SheetProblem::new(Severity::Warn, weak.field("loft_deg"), &fact, &SheetNext::CorrectLoft);
    found.push(problem.of(weak.club));
}

fn lengths(long: &Named<'_>, short: &Named<'_>, found: &mut Vec<SheetProblem>) {
    const SAME_MM: f64 = 0.05;
    let (Some(other_mm), Some(length_mm)) = (long.to_cap_mm(), short.to_cap_mm()) else { return };
    let wedges = long.club.club_kind == ClubKind::Wedge && short.club.club_kind == ClubKind::Wedge;
    let other = long.club.name();
    let (severity, fact, next) = if (other_mm - length_mm).abs() <= SAME_MM {
        let severity = if wedges { Severity::Note } else { Severity::Warn };
        (severity, SheetFinding::SameLength { length_mm, other }, SheetNext::IfOneLength)
    } else if length_mm > other_mm {
        (Severity::Warn, SheetFinding::LengthOrder { length_mm, other, other_mm }, SheetNext::CorrectLength)
    } else {
        return;
    };
    found.push(SheetProblem::new(severity, short.field("length_mm"), &fact, &next).of(short.club));
}
