//! Causes and measurements in the words of the bench.

use quantity::{INCH_MM, SwingWeight, decimal};
use trade::reading::{Unit, What};

/// A probability as people say it: "9 in 10".
#[must_use]
pub fn odds(probability: f64) -> String {
    let tenths = (probability * 10.0).round();
    if probability >= 0.985 {
        "99 in 100".into()
    } else if probability >= 0.945 {
        "19 in 20".into()
    } else if tenths >= 1.0 {
        format!("{} in 10", decimal(tenths.min(9.0), 0))
    } else if probability >= 0.035 {
        "1 in 20".into()
    } else {
        "under 1 in 20".into()
    }
}

/// A value as it is written at the bench.
pub(crate) fn value(what: What, value: f64) -> String {
    match what.unit() {
        Unit::Points => SwingWeight::from_points(value).letter(1),
        Unit::Gram => format!("{} g", decimal(value, 1)),
        Unit::Millimetre => format!("{} in", decimal(value / INCH_MM, 2)),
        Unit::Degree => format!("{}°", decimal(value, 1)),
        Unit::Cpm => format!("{} cpm", decimal(value, 0)),
        Unit::None => "done".into(),
    }
}

/// What to measure, as an order.
pub(super) fn order(what: What) -> &'static str {
    match what {
        What::HeadMass => "Take the head off and weigh it by itself",
        What::ShaftMass => "Take the head off and weigh the shaft by itself",
        What::GripMass => "Weigh the grip by itself",
        What::TotalMass => "Weigh the club as it lies there",
        What::SwingWeight => "Seat it again, butt on the stop, and read the swing weight once more",
        What::ShaftLength => "Take the head off and measure the shaft",
        What::FinishedLength => "Measure the length to the cap",
        What::BalancePoint => "Find its balance point on an edge",
        What::CheckWeight => "Put the check weight on the scale",
        _ => "Read it once more",
    }
}
