//! What the check of a sheet finds in its readings, figures and order.

use super::{library, line, shop_of, today};
use desk::sheet_check::check;
use desk::sheet_check::{Severity, SheetProblem};
use proptest::prelude::*;
use trade::kind::LengthTo;
use trade::sheet::Sheet;

pub(super) fn irons() -> Sheet {
    shop_of::sheets(today()).remove(0)
}

pub(super) fn found(sheet: &Sheet) -> Vec<SheetProblem> {
    check(sheet, &library(), &shop_of::parts(7), &shop_of::shop(), today())
}

pub(super) fn lines(sheet: &Sheet) -> String {
    found(sheet).iter().map(|p| format!("{}: {}", p.severity.key(), line(p))).collect::<Vec<_>>().join("\n")
}

pub(super) fn changed(change: impl FnOnce(&mut Sheet)) -> Sheet {
    let mut sheet = irons();
    change(&mut sheet);
    sheet
}

#[test]
fn a_sound_sheet_has_nothing_against_it() {
    assert_eq!(lines(&irons()), "");
}

/// 428.6 g at 720.4 mm is 428.6·(720.4/25.4 − 14)/49.6117 − 92 = 32.06 points (derived). Three points off is far beyond
/// what 0.3 g, 1 mm and a scale explain; a grip's cap of 3 mm is 1.02 points.
#[test]
fn readings_that_contradict_each_other() {
    let with = |points: f64, at_mm: f64| {
        lines(&changed(|s| {
            let r = s.reference.as_mut().unwrap();
            (r.swing_weight_points, r.balance_point_mm) = (Some(points), Some(at_mm));
        }))
    };
    assert_eq!(with(32.1, 720.4), "");
    let text = [with(32.1, 717.4), with(35.2, 720.4)].join("\n\n");
    insta::assert_snapshot!(text, @r##"
    warn: reference.swing_weight_points: the 7: 428.6 g balancing 28.24 in from the cap makes D1.1, but D2.1 was read: 1.0 point apart, where the readings explain ±0.8 (mass ±0.17, balance point ±0.68, scale ±0.45). They agree if the balance point was measured from the shaft end, 0.12 in inside the cap: measure from the outside of the cap

    stop: reference.swing_weight_points: the 7: 428.6 g balancing 28.36 in from the cap makes D2.1, but D5.2 was read: 3.1 points apart, where the readings explain ±0.8 (mass ±0.17, balance point ±0.68, scale ±0.45); these are not readings of one club. Read all three again, or leave out the one that you do not trust
    note: reference.swing_weight_points: the 7: it read D5.2, and the sheet asks D2.0 of the same number. Nothing to do if the fitting meant that
    "##);
}

/// A scale of unknown worth explains more than the shop's own.
#[test]
fn the_uncertainty_is_that_of_the_scale_named() {
    let with = |scale: &str| {
        let sheet = changed(|s| {
            let r = s.reference.as_mut().unwrap();
            (r.swing_weight_points, r.scale) = (Some(31.18), scale.into());
        });
        found(&sheet)
            .iter()
            .filter(|p| p.severity == Severity::Warn && p.field == "reference.swing_weight_points")
            .count()
    };
    assert_eq!((with("balance"), with("fitting bay")), (1, 0));
}

#[test]
fn the_reference_must_say_what_its_figures_mean() {
    let sheet = changed(|s| {
        let r = s.reference.as_mut().unwrap();
        (r.length_to, r.clamp_mm, r.coupler_g) = (None, None, Some(5.0));
        r.scale.clear();
        r.grip_model = Some("NOBODY".into());
        r.read_on = Some(today().tomorrow().unwrap());
        r.balance_point_mm = Some(900.0);
        r.total_mass_g = None;
        s.clubs[3].swing_weight_points = 33.0;
    });
    insta::assert_snapshot!(lines(&sheet), @r##"
    warn: reference.length_to: the 7: its length may end at the cap or at the shaft end, the thickness of the cap apart. Enter which of the two it is
    warn: reference.read_on: the 7: it was read on 3 Mar 2026, which is still to come. Correct the date
    warn: reference.grip_model: the 7: there is no grip model “NOBODY”. Add the model, or enter the thickness of its cap and leave the model out
    warn: reference.balance_point_mm: the 7: it balances 35.43 in from the cap on a length of 37 1/4 in; clubs balance at about three quarters of their length. Measure from the outside of the cap to the edge it balances on, both in the same unit
    note: reference.scale: the 7: no scale is named for its swing weight; two scales can differ by more than the tolerance. Enter the scale, and read the club on your own when it is here
    note: reference.clamp_mm: the 7: no clamped length is given for its frequency. Enter the clamped length
    note: reference.coupler_g: the 7: its swing weight includes a coupler of 5.0 g, which the built club does not have. The target stays what the player felt; the built head carries that mass instead
    note: reference.swing_weight_points: the 7: it read D2.1, and the sheet asks D3.0 of the same number. Nothing to do if the fitting meant that
    "##);
}

#[test]
fn impossible_figures_stop() {
    let sheet = changed(|s| {
        s.clubs[0].length_mm = f64::NAN;
        s.clubs[1].swing_weight_points = f64::INFINITY;
        s.clubs[2].lie_deg = -61.0;
        s.clubs[3].loft_deg = 0.0 - 1.0;
        s.clubs[4].cpm = Some(0.0);
        s.clubs[5].tolerances.swing_weight_points = 0.0;
        s.clubs[6].wraps.full = 200;
        s.reference.as_mut().unwrap().total_mass_g = Some(5000.0);
    });
    insta::assert_snapshot!(lines(&sheet), @r##"
    stop: reference.total_mass_g: the 7: total_mass_g is 5000 g: it must be between 200 g and 1000 g. Correct the reading and its unit, or leave it out
    stop: clubs[0].length_mm: the 4-iron: length_mm is –: it must be between 15.75 in and 51.18 in. Check the figure and its unit
    stop: clubs[1].swing_weight_points: the 5-iron: swing_weight_points is inf points: it must be between −60 points and 160 points. Check the figure and its unit
    stop: clubs[2].lie_deg: the 6-iron: lie_deg is −61°: it must be between 40° and 80°. Check the figure and its unit
    stop: clubs[3].loft_deg: the 7-iron: loft_deg is −1°: it must be between 0° and 80°. Check the figure and its unit
    stop: clubs[4].cpm: the 8-iron: cpm is 0 cpm: it must be between 50 cpm and 600 cpm. Check the figure and its unit
    stop: clubs[5].tolerances.swing_weight_points: the 9-iron: tolerances.swing_weight_points is 0 points: it must be between 0.001 points and 10 points. Check the figure and its unit
    stop: clubs[6].wraps: the PW: wraps is 201 layers: it must be between 0 layers and 20 layers. Check the figure and its unit
    "##);
}

#[test]
fn order_and_doubles() {
    let sheet = changed(|s| {
        s.clubs[1].length_mm = s.clubs[0].length_mm;
        s.clubs[3].length_mm = s.clubs[2].length_mm + 6.35;
        s.clubs[5].loft_deg = s.clubs[4].loft_deg;
        s.clubs[6].loft_deg = 38.5;
        s.clubs[7].number = "P".into();
        s.clubs[7].length_to = LengthTo::ShaftEnd;
    });
    insta::assert_snapshot!(lines(&sheet), @r##"
    warn: clubs[1].length_mm: the 5-iron: 38 3/4 in is also the length of the 4-iron. Nothing to do if they are meant to be one length
    warn: clubs[3].length_mm: the 7-iron: at 38 in it is longer than the 6-iron at 37 3/4 in. Correct the length of one of the two
    warn: clubs[3].swing_weight_points: the 7-iron: the stock does not reach D2.0: the lightest free head, 261.8 g, makes D2.5 with nothing in the tip. Order heads of 248.9 to 261.3 g, or change length, grip or swing weight
    stop: clubs[5].loft_deg: the 9-iron: loft 35.0° is 5.0° from the 40.0° of the model, and the maker allows 3.0°. Ask for less, or measure loose heads: one may be nearer as received
    warn: clubs[5].loft_deg: the 9-iron: 35.0° is also the loft of the 8-iron. Correct the loft of one of the two
    stop: clubs[6].loft_deg: the PW: loft 38.5° is 6.5° from the 45.0° of the model, and the maker allows 3.0°. Ask for less, or measure loose heads: one may be nearer as received
    stop: clubs[7].number: the PW: this club is on the sheet twice. Take one out, or give it its right number
    stop: clubs[7].loft_deg: the PW: loft 50.0° is 5.0° from the 45.0° of the model, and the maker allows 3.0°. Ask for less, or measure loose heads: one may be nearer as received
    warn: clubs[7].length_to: the length of the PW is to the cap, that of the PW to the shaft end. Measure all clubs of a set to the same end
    "##);
}

#[test]
fn the_whole_sheet() {
    let late = changed(|s| {
        s.due = today().yesterday().unwrap();
        s.player = " ".into();
        s.clubs.clear();
        s.reference = None;
    });
    insta::assert_snapshot!(lines(&late), @r##"
    stop: player: no player is named. Write the player's name
    stop: clubs: the sheet has no clubs. Add at least one, for example by writing 5-PW
    note: due: it was due yesterday, 1 Mar 2026. Agree a new date, or leave it if this date is meant
    "##);
}

#[test]
fn tolerances_that_no_scale_can_hold() {
    let sheet = changed(|s| {
        s.clubs[0].tolerances.swing_weight_points = 0.05;
        s.clubs[1].tolerances.swing_weight_points = 4.0;
    });
    insta::assert_snapshot!(lines(&sheet), @r##"
    warn: clubs[0].tolerances.swing_weight_points: the 4-iron: ±0.05 points is finer than the balance scale can tell; one reading is known to ±0.21 points. Allow more, usually ±0.3 points
    warn: clubs[1].tolerances.swing_weight_points: the 5-iron: ±4.0 points is more than any player overlooks. Allow less, usually ±0.3 points
    "##);
}

#[test]
fn problems_cross_the_api() {
    let sheet = changed(|s| s.clubs[0].length_mm = 1230.0);
    let all = found(&sheet);
    let json = serde_json::to_string(&all).unwrap();
    assert_eq!(serde_json::from_str::<Vec<SheetProblem>>(&json).unwrap(), all);
    assert!(all.iter().any(|p| p.clause.as_deref() == Some("2.1c") && p.severity == Severity::Warn));
    assert!(!all.iter().any(|p| p.clause.as_deref().is_some_and(|c| c.contains("G-10"))));
    let local = found(&changed(|s| s.clubs[0].length_mm = 1180.0));
    assert!(
        local.iter().any(|p| p.clause.as_deref().is_some_and(|c| c.contains("G-10")) && p.severity == Severity::Note)
    );
}

proptest! {
    /// Whatever figures stand there, the check comes back; figures that are none always stop.
    #[test]
    fn never_panics(index in 0usize..8, value in any::<f64>(), field in 0usize..8) {
        let sheet = changed(|s| {
            let r = s.reference.as_mut().unwrap();
            let c = &mut s.clubs[index];
            match field {
                0 => c.length_mm = value,
                1 => c.swing_weight_points = value,
                2 => c.loft_deg = value,
                3 => c.lie_deg = value,
                4 => c.tolerances.swing_weight_points = value,
                5 => r.balance_point_mm = Some(value),
                6 => r.total_mass_g = Some(value),
                _ => r.swing_weight_points = Some(value),
            }
        });
        let stops = found(&sheet).iter().any(|p| p.severity == Severity::Stop);
        prop_assert!(stops || value.is_finite());
    }
}
