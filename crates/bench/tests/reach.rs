//! Goal: a club on its target can be called in, and what is said to settle it does. Method: a finished club read on its target
//! again and again in a new shop; then what was named is read as often as it was named, showing what is expected.

use crate::set::Set;
use bench::reach::{VerdictReach, reach};
use bench::record::{Beside, Verdict, record};
use trade::reading::What;

fn verdict(set: &Set) -> (Verdict, Option<VerdictReach>) {
    let believed = set.assembly().believe(&set.readings).unwrap();
    let beside = Beside { batches: &[], let_pass: &[], passed: &[] };
    let made = record(&believed, &set.readings, &beside).unwrap();
    let line = made.clubs[0].lines.iter().find(|line| line.what == What::SwingWeight && !line.within_set).unwrap();
    let found = reach(&believed, &set.club(1)).unwrap();
    assert_eq!(line.reach.is_some(), found.is_some(), "the record says the same");
    (line.verdict, found)
}

/// A set whose first club is finished on its target, read so many times; the sheet's figure as it stands.
fn finished(mut set: Set, times: i64) -> Set {
    for slot in 1..=4 {
        set.read_off(slot, "dry", 0.0, slot);
        set.read(slot, "glue", What::Done, 0.0, 10);
        set.read_off(slot, "cured", 0.0, 600 + slot);
    }
    for minute in 0..times {
        set.read_off(1, "finish", 0.0, 900 + minute);
        let finish = set.state(1).finish.unwrap();
        set.job.clubs[0].target.swing_weight_points = finish.swing_weight_points;
    }
    set
}

#[test]
fn what_is_said_to_settle_a_club_settles_it() {
    let mut set = Set::planned();
    set.job.sheet.reference = None;
    let mut set = finished(set, 5);
    let (was, found) = verdict(&set);
    assert_eq!(was, Verdict::TooClose, "five readings on the same scale say nothing of its offset");
    let Some(VerdictReach::CheckWeight { n }) = found else { panic!("{found:?}") };
    for reading in 0..n {
        let believed = set.assembly().believe(&set.readings).unwrap();
        let shows = believed.expected(&set.club(1), What::CheckWeight, &[]).unwrap().unwrap().value;
        set.read(1, "finish", What::CheckWeight, shows, 950 + reading);
        if reading + 1 < n {
            assert_eq!(verdict(&set).0, Verdict::TooClose, "{} of {n} readings would have done", reading + 1);
        }
    }
    assert_eq!(verdict(&set), (Verdict::In, None));
}

#[test]
fn nothing_is_asked_of_a_club_that_is_out_or_not_read() {
    let mut set = Set::planned();
    set.job.sheet.reference = None;
    assert_eq!(verdict(&set), (Verdict::NotRead, None));
    let mut set = finished(set, 1);
    set.job.clubs[0].target.swing_weight_points += 2.0;
    assert_eq!(verdict(&set), (Verdict::Out, None));
    // On the edge of its tolerance no reading calls it in.
    set.job.clubs[0].target.swing_weight_points -= 2.0 - 0.29;
    assert!(matches!(verdict(&set), (Verdict::TooClose, Some(VerdictReach::TooNear { .. }))), "{:?}", verdict(&set));
}
