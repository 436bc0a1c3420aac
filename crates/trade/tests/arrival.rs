//! Goal: figures of clubs as they are built are taken, those that contradict their kind or each other are asked about.
//! Method: usual clubs and slips; the one moment is worked out by hand beside its check.

use quantity::INCH_MM;
use trade::arrival::{Arrival, ArrivalOdd};
use trade::kind::ClubKind;
use trade::reading::What;

#[test]
fn a_figure_that_no_club_has_is_refused() {
    assert!(Arrival { swing_weight_points: Some(400.0), ..Arrival::default() }.check().is_err());
    assert!(Arrival { grip_size_mm: Some(5.0), ..Arrival::default() }.check().is_err());
    assert!(Arrival::default().check().is_ok());
}

fn iron() -> Arrival {
    let read = (Some(32.1), Some(431.0), Some(939.8));
    Arrival { swing_weight_points: read.0, total_mass_g: read.1, length_mm: read.2, ..Arrival::default() }
}

#[test]
fn clubs_as_they_are_built_are_not_asked_about() {
    assert_eq!(iron().odd(ClubKind::Iron, "7"), []);
    let driver = Arrival {
        swing_weight_points: Some(33.0),
        total_mass_g: Some(312.0),
        length_mm: Some(1143.0),
        cpm: Some(255.0),
        loft_deg: Some(10.5),
        lie_deg: Some(58.0),
        ..Arrival::default()
    };
    assert_eq!(driver.odd(ClubKind::Wood, "1"), []);
    // A putter with a counterweight, a heavy wedge.
    let putter = Arrival { total_mass_g: Some(700.0), length_mm: Some(889.0), ..Arrival::default() };
    assert_eq!(putter.odd(ClubKind::Putter, "P"), []);
    let wedge = Arrival {
        swing_weight_points: Some(36.0),
        total_mass_g: Some(470.0),
        length_mm: Some(889.0),
        cpm: Some(330.0),
        ..Arrival::default()
    };
    assert_eq!(wedge.odd(ClubKind::Wedge, "56"), []);
}

#[test]
fn figures_that_contradict_the_kind_or_each_other_are_asked_about() {
    let whats = |arrival: &Arrival, kind, number: &str| -> Vec<What> {
        let odd = arrival.odd(kind, number).into_iter();
        odd.filter_map(|odd| if let ArrivalOdd::OfKind { what, .. } = odd { Some(what) } else { None }).collect()
    };
    let short = Arrival { length_mm: Some(36.0 * INCH_MM), ..Arrival::default() };
    assert_eq!(whats(&short, ClubKind::Wood, "1"), [What::FinishedLength]);
    let soft = Arrival { cpm: Some(60.0), ..Arrival::default() };
    assert_eq!(whats(&soft, ClubKind::Wedge, "56"), [What::Cpm]);
    let light = Arrival { total_mass_g: Some(210.0), ..Arrival::default() };
    assert_eq!(whats(&light, ClubKind::Iron, "7"), [What::TotalMass]);
    // By hand: D2.1 is 217.2 oz·in or 156,400 g·mm; at 340 g the club would balance 460 mm beyond the fulcrum.
    let thin = Arrival { total_mass_g: Some(340.0), ..iron() };
    let odd = thin.odd(ClubKind::Iron, "7");
    assert!(odd.is_empty(), "{odd:?}");
    let long =
        Arrival { length_mm: Some(1016.0), swing_weight_points: Some(15.0), total_mass_g: Some(530.0), ..iron() };
    let odd = long.odd(ClubKind::Iron, "7");
    assert!(
        odd.iter().any(|odd| matches!(odd, ArrivalOdd::Balance { balance_mm, .. } if (balance_mm - 611.0).abs() < 5.0)),
        "{odd:?}"
    );
    let pieces = Arrival { head_mass_g: Some(268.0), shaft_mass_g: Some(120.0), grip_mass_g: Some(50.0), ..iron() };
    assert!(
        matches!(pieces.odd(ClubKind::Iron, "7")[..], [ArrivalOdd::PiecesOverWhole { pieces_g, .. }] if (pieces_g - 438.0).abs() < 1e-9)
    );
}
