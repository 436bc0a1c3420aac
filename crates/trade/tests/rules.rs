//! Margins against the Equipment Rules, and the cautions.

use quantity::{LengthUnit, MassUnit, Units};
use trade::caution::CautionSays;
use trade::grip::GripShape;
use trade::kind::ClubKind;
use trade::rules::{Limited, RuleFigures, clubs_margin, margins};
use trade::sole::Sole;
use trade::step::Caution;
use words::Words;

fn figures(club_kind: ClubKind) -> RuleFigures {
    RuleFigures {
        club_kind,
        length_to_cap_mm: Some(950.0),
        lie_deg: Some(62.0),
        grip_length_mm: Some(267.0),
        grip_widest_mm: None,
        grip_shape: Some(GripShape::Round),
        sole: None,
    }
}

/// Limits in inches from the Equipment Rules (effective 2019, Part 2), turned into millimetres by hand: 18 in is 457.2,
/// 48 in 1219.2, 46 in 1168.4, 7 in 177.8, 1.75 in 44.45 mm.
#[test]
fn margins_by_hand() {
    let found = margins(&figures(ClubKind::Iron));
    let of = |clause: &str, n: usize| found.iter().filter(|m| m.clause.starts_with(clause)).nth(n).unwrap();
    assert!((of("2.1c", 0).margin.unwrap() - 492.8).abs() < 1e-9);
    assert!((of("2.1c", 1).margin.unwrap() - 269.2).abs() < 1e-9);
    assert!((of("G-10", 0).margin.unwrap() - 218.4).abs() < 1e-9);
    assert_eq!(of("2.1d", 0).measured, Some(28.0));
    assert_eq!(of("2.1d", 0).margin, Some(18.0));
    assert!((of("2.3a", 0).margin.unwrap() - 89.2).abs() < 1e-9);
    assert_eq!(of("2.3b", 0).measured, None);
}

#[test]
fn putters_are_excepted_where_the_rules_except_them() {
    let found = margins(&RuleFigures { length_to_cap_mm: Some(1250.0), ..figures(ClubKind::Putter) });
    assert!(found.iter().all(|m| !m.is_beyond()));
    assert!(!found.iter().any(|m| m.clause.contains("G-10") || m.clause == "2.2c" || m.what == Limited::GripShape));
    let wood = margins(&RuleFigures { length_to_cap_mm: Some(1250.0), ..figures(ClubKind::Wood) });
    assert_eq!(wood.iter().filter(|m| m.is_beyond()).count(), 2);
}

/// By hand, as in `trade::sole`: a 54° driver with contact 50, radius 280 and heel 6 mm is 4.342 mm longer by the plane, so one
/// of 1,216 mm along its axis (47.87 in) is beyond 48 in; a putter is measured along its axis.
#[test]
fn a_flat_driver_is_measured_by_the_plane() {
    let sole = Sole { heel_radius_mm: 6.0, contact_mm: 50.0, radius_mm: 280.0, assumed: false };
    let driver = RuleFigures {
        length_to_cap_mm: Some(1216.0),
        lie_deg: Some(54.0),
        sole: Some(sole),
        ..figures(ClubKind::Wood)
    };
    let at_most = |figures: &RuleFigures| margins(figures).into_iter().filter(|m| m.clause == "2.1c").nth(1);
    let line = at_most(&driver).unwrap();
    assert!((line.measured.unwrap() - 1220.342).abs() < 0.002 && line.is_beyond() && !line.is_near(), "{line:?}");
    assert!(!at_most(&RuleFigures { sole: None, ..driver }).unwrap().is_beyond());
    let assumed = at_most(&RuleFigures { sole: Some(Sole { assumed: true, ..sole }), ..driver }).unwrap();
    assert!(assumed.is_near() && assumed.open.unwrap() > 2.0, "{assumed:?}");
    let words = |m: &trade::rules::Margin| Words::english(Units::default()).told(m.basis.as_ref().unwrap());
    assert!(words(&assumed).contains("assumed, not measured") && words(&line).contains("60° plane"));
    let putter = RuleFigures { club_kind: ClubKind::Putter, ..driver };
    assert_eq!(putter.length_by_rules_mm(), Some(1216.0));
}

#[test]
fn lines_in_words() {
    let wood = RuleFigures {
        length_to_cap_mm: Some(1225.0),
        lie_deg: Some(80.0),
        grip_widest_mm: Some(45.0),
        ..figures(ClubKind::Wood)
    };
    let lines = |w: &Words| {
        let line = |m: &trade::rules::Margin| {
            let clause = words::text!(w, "rules-clause", clause = m.clause);
            format!("{clause} | {} | {}", w.told(&m.limit), w.told(&m.fact))
        };
        margins(&wood).iter().map(line).collect::<Vec<_>>().join("\n")
    };
    let metric = Words::english(Units { length: LengthUnit::Millimetre, mass: MassUnit::Gram });
    insta::assert_snapshot!(lines(&Words::english(Units::default())), @r##"
    2.1c | at least 18 in | length 48.23 in, 30.23 in inside the limit of 18 in
    2.1c | at most 48 in | length 48.23 in, 0.23 in beyond the limit of 48 in
    local rule G-10, where it is in force | at most 46 in | length 48.23 in, 2.23 in beyond the limit of 46 in
    2.1d | at least 10.0° | shaft from the vertical exactly at the limit of 10.0°
    2.1d | at most 20° forward and 10° back | shaft along the line of play: not measured
    2.2a | straight from the top of the grip to within 5 in above the sole | straight shaft: not measured
    2.2b | the same however the shaft is turned | bending and twisting: not measured
    2.2c | shaft at the heel, neck at most 5 in | neck: not measured
    2.3a | at least 7 in | grip length 10.51 in, 3.51 in inside the limit of 7 in
    2.3b | at most 1 3/4 in | grip across 1.77 in, 0.02 in beyond the limit of 1 3/4 in
    2.3b | circular across, except putters | grip round by its model; not measured
    2.4b(i) | heel to toe at most 5 in and more than face to back, sole to crown at most 2.80 in, at most 460 cc (+10), inertia at most 5900 g·cm² (+100) | wood head: not measured
    "##);
    insta::assert_snapshot!(lines(&metric), @r##"
    2.1c | at least 457.2 mm | length 1225.0 mm, 767.8 mm inside the limit of 457.2 mm
    2.1c | at most 1219.2 mm | length 1225.0 mm, 5.8 mm beyond the limit of 1219.2 mm
    local rule G-10, where it is in force | at most 1168.4 mm | length 1225.0 mm, 56.6 mm beyond the limit of 1168.4 mm
    2.1d | at least 10.0° | shaft from the vertical exactly at the limit of 10.0°
    2.1d | at most 20° forward and 10° back | shaft along the line of play: not measured
    2.2a | straight from the top of the grip to within 127.0 mm above the sole | straight shaft: not measured
    2.2b | the same however the shaft is turned | bending and twisting: not measured
    2.2c | shaft at the heel, neck at most 127.0 mm | neck: not measured
    2.3a | at least 177.8 mm | grip length 267.0 mm, 89.2 mm inside the limit of 177.8 mm
    2.3b | at most 44.5 mm | grip across 45.0 mm, 0.6 mm beyond the limit of 44.5 mm
    2.3b | circular across, except putters | grip round by its model; not measured
    2.4b(i) | heel to toe at most 127.0 mm and more than face to back, sole to crown at most 71.1 mm, at most 460 cc (+10), inertia at most 5900 g·cm² (+100) | wood head: not measured
    "##);
}

#[test]
fn nothing_measured_is_no_verdict() {
    let nothing = RuleFigures {
        club_kind: ClubKind::Iron,
        length_to_cap_mm: Some(f64::NAN),
        lie_deg: None,
        grip_length_mm: None,
        grip_widest_mm: None,
        grip_shape: None,
        sole: None,
    };
    let found = margins(&nothing);
    assert!(
        found
            .iter()
            .all(|m| m.margin.is_none() && Words::english(Units::default()).told(&m.fact).ends_with("not measured"))
    );
    let all = ClubKind::ALL.iter().flat_map(|k| margins(&figures(*k))).map(|m| format!("{m:?}")).collect::<String>();
    assert!(!all.to_lowercase().contains("conform"));
}

#[test]
fn fourteen_clubs() {
    assert!(!clubs_margin(14).is_beyond());
    assert_eq!(clubs_margin(15).margin, Some(-1.0));
}

/// One or two sentences each, and each leaves the last word to somebody else.
#[test]
fn cautions_are_short_and_defer() {
    let w = words::Words::english(quantity::Units::default());
    let says = |caution: Caution| w.tell(&CautionSays::from(caution));
    for caution in Caution::ALL {
        let words = says(*caution);
        assert!((1..=2).contains(&words.matches(". ").count().saturating_add(1)), "{words}");
        assert!(words.len() < 260, "{words}");
        assert!(["maker", "sheet", "qualified", "local"].iter().any(|w| words.contains(w)), "{words}");
    }
    assert!(says(Caution::Swing).contains("full cure"));
    assert!(w.tell(&CautionSays::Lead).contains("wash your hands"));
}
