//! The clubs of a sheet against each other: the same club twice, lengths and lofts out of order.

use crate::sheet_check::{Named, Severity, SheetProblem};
use crate::short_sheet::{canonical, family};
use quantity::{Length, decimal};
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
            found.push(
                SheetProblem::new(
                    Severity::Stop,
                    club.field("number"),
                    format!("the {} {} is on the sheet twice", club.club.club_kind, club.club.number),
                    "Take one out, or give it its right number",
                )
                .of(&club.club.number),
            );
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
        found.push(SheetProblem::new(
            Severity::Warn,
            format!("clubs[{}].length_to", i + 1),
            format!("the length of the {} is {} and that of the {} {}", a.number, a.length_to, b.number, b.length_to),
            "Measure all clubs of a set to the same end",
        ));
    }
}

fn lofts(strong: &Named<'_>, weak: &Named<'_>, found: &mut Vec<SheetProblem>) {
    let (a, b) = (strong.club.loft_deg, weak.club.loft_deg);
    let words = match a.total_cmp(&b) {
        Ordering::Less => return,
        Ordering::Equal => format!("its loft of {}° is that of the {} too", decimal(b, 1), strong.club.number),
        Ordering::Greater => format!(
            "its loft of {}° is stronger than the {}'s {}°, the order is turned round",
            decimal(b, 1),
            strong.club.number,
            decimal(a, 1)
        ),
    };
    found.push(
        SheetProblem::new(Severity::Warn, weak.field("loft_deg"), words, "Correct the loft of one of the two")
            .of(&weak.club.number),
    );
}

fn lengths(long: &Named<'_>, short: &Named<'_>, found: &mut Vec<SheetProblem>) {
    const SAME_MM: f64 = 0.05;
    let (Some(a), Some(b)) = (long.to_cap_mm(), short.to_cap_mm()) else { return };
    let inches = |mm: f64| format!("{} in", decimal(Length::from_mm(mm).inch(), 2));
    let wedges = long.club.club_kind == ClubKind::Wedge && short.club.club_kind == ClubKind::Wedge;
    let (severity, words, next) = if (a - b).abs() <= SAME_MM {
        let severity = if wedges { Severity::Note } else { Severity::Warn };
        let words = format!("its length of {} is that of the {} too", inches(b), long.club.number);
        (severity, words, "Nothing to do if they are meant to be one length")
    } else if b > a {
        let words = format!("at {} it is longer than the {} at {}", inches(b), long.club.number, inches(a));
        (Severity::Warn, words, "Correct the length of one of the two")
    } else {
        return;
    };
    found.push(SheetProblem::new(severity, short.field("length_mm"), words, next).of(&short.club.number));
}
