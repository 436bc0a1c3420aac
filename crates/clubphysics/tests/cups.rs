//! Goal: a batch is mixed in as few cups as its pot life allows.

use clubphysics::glue::{Cups, cups};

#[test]
fn cups_follow_the_time_that_the_work_takes() {
    // A pot life of 60 min is enough for 38 joints of 1.5 min after 2 min of stirring.
    assert_eq!(cups(38, |_| 60.0), Some(Cups { cups: 1, joints_a_cup: 38 }));
    assert_eq!(cups(39, |_| 60.0), Some(Cups { cups: 2, joints_a_cup: 20 }));
    // Five minutes are enough for two joints.
    assert_eq!(cups(7, |_| 5.0), Some(Cups { cups: 4, joints_a_cup: 2 }));
    assert_eq!(cups(1, |_| 3.0), None);
}
