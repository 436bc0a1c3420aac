//! Goal: a reading goes into the belief by the same conversion by which a forecast comes out of it. Method: for everything
//! that can be read, a reading that shows the forecast must leave it where it is, and one that shows a little more must
//! pull it towards itself and not past it. A wrong sign, factor or shift in one direction would break either.

use crate::set::Set;
use trade::reading::What;

/// What the belief of masses, arms and lengths knows, with the step at which the club is as it must be.
const KNOWN: [(What, &str); 13] = [
    (What::HeadMass, "weighed"),
    (What::ShaftMass, "weighed"),
    (What::FerruleMass, "weighed"),
    (What::TipWeightMass, "weighed"),
    (What::TapeMass, "weighed"),
    (What::GripMass, "weighed"),
    (What::TotalMass, "cured"),
    (What::SwingWeight, "dry"),
    (What::BalancePoint, "cured"),
    (What::ShaftLength, "cut"),
    (What::FinishedLength, "finish"),
    (What::GripCentre, "weighed"),
    (What::CapThickness, "weighed"),
];

fn forecast(set: &Set, what: What, step: &str) -> Option<(f64, f64)> {
    let on = set.job.step(step).unwrap().on.clone();
    let believed = set.assembly().believe(&set.readings).unwrap();
    believed.expected(&set.club(1), what, &on).unwrap().map(|e| (e.value, e.band))
}

#[test]
fn a_reading_goes_in_as_a_forecast_comes_out() {
    // A club whose plan has everything that can be weighed.
    let planned = Set::planned();
    let known = |what: What| KNOWN.iter().find(|(known, _)| *known == what).map_or("dry", |(_, step)| *step);
    let mut went_round = 0;
    for what in What::ALL.iter().copied() {
        let step = known(what);
        let Some((value, band)) = forecast(&planned, what, step) else {
            assert!(!KNOWN.iter().any(|(k, _)| *k == what && planned_has(&planned, what)), "{what:?} has no forecast");
            continue;
        };
        assert!(band > 0.0, "{what:?}");
        for off in [0.0, 0.4 * band, -0.4 * band] {
            let mut set = Set::planned();
            set.read(1, step, what, value + off, 1);
            // To the last bit, without the rounding of a display.
            set.readings[0].display_step = 0.0;
            set.insist();
            let (then, band_then) = forecast(&set, what, step).expect("as before");
            let moved = then - value;
            assert!(band_then < band, "{what:?}: read once, it is known better: {band_then} of {band}");
            if off == 0.0 {
                assert!(
                    moved.abs() < 1e-6 * value.abs().max(1.0),
                    "{what:?} shows its forecast {value} and moves it by {moved}"
                );
            } else {
                let share = moved / off;
                assert!(
                    share > 0.01 && share < 1.0 + 1e-9,
                    "{what:?} shows {off} more and moves the forecast by {moved}"
                );
            }
        }
        went_round += 1;
    }
    assert!(went_round >= KNOWN.len() - 2, "only {went_round} went round");
}

/// Whether the plan of the first club has the piece, where it is a piece's mass.
fn planned_has(set: &Set, what: What) -> bool {
    what.mass_of().is_none_or(|role| set.job.clubs[0].plan.as_ref().is_some_and(|plan| plan.mass_g(role) > 0.0))
}
