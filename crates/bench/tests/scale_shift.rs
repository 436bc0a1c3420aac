//! Goal: what a job believes of today's scale is told where it changes a figure, and not before.
//! Method: a set whose readings all lie off by the same amount, which the scale alone explains together with what the clubs
//! share; the forecast of a club held against the same club on a scale that shows what is there.

use crate::set::Set;
use bench::scale_shift::{ShiftSays, scale_shift};
use trade::reading::What;

#[test]
fn a_scale_is_steady_until_readings_say_otherwise() {
    let set = Set::planned();
    let believed = set.assembly().believe(&set.readings).unwrap();
    let shift = scale_shift(&believed).unwrap();
    assert_eq!((shift.shown, shift.fact), (false, ShiftSays::Steady));
    assert!(
        shift.shift_points.abs() < 1e-9 && shift.band_points > 0.1,
        "{} ± {}",
        shift.shift_points,
        shift.band_points
    );
}

#[test]
fn a_check_weight_that_reads_low_is_told_and_moves_the_forecast_by_as_much() {
    let mut set = Set::planned();
    let weight = set.shop.check_weight.as_ref().unwrap().swing_weight_points;
    let before = set.expected(1, "dry");
    for minute in 1..=4 {
        set.read(1, "dry", What::CheckWeight, weight - 0.4, minute);
    }
    let believed = set.assembly().believe(&set.readings).unwrap();
    let shift = scale_shift(&believed).unwrap();
    assert!(shift.shown && shift.shift_points < -0.2, "{shift:?}");
    assert!(matches!(shift.fact, ShiftSays::Low { by_points } if (by_points + shift.shift_points).abs() < 1e-12));
    // What the scale will show of a club goes down by just that.
    let moved = set.expected(1, "dry") - before;
    assert!((moved - shift.shift_points).abs() < 0.05, "{moved} for {}", shift.shift_points);
}
