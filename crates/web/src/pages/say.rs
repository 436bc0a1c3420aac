//! Figures as the trade writes them.

use crate::units;
use jiff::Timestamp;
use quantity::{Angle, Balance, Length, LengthUnit, decimal};
use workshop::bench::AskState;
use workshop::reading::{Unit, What};

/// `36 3/4 in (933.5 mm)`; `36.71 in (932.4 mm)` where it is no even fraction; the person's own unit first.
pub(crate) fn length(mm: f64) -> String {
    let (inches, metric) = (inches(mm), Length::from_mm(mm).print(LengthUnit::Millimetre, 1));
    if units::now().length == LengthUnit::Inch {
        format!("{inches} ({metric})")
    } else {
        format!("{metric} ({inches})")
    }
}

/// One figure of a length: `36.75 in`, `933.5 mm`.
pub(crate) fn short_length(mm: f64) -> String {
    let unit = units::now().length;
    Length::from_mm(mm).print(unit, if unit == LengthUnit::Inch { 2 } else { 1 })
}

/// A mass: `256.1 g`, `9.034 oz`.
pub(crate) fn mass(mass_g: f64) -> String {
    units::mass(mass_g)
}

/// A length in inches: an even fraction down to 1/32, else to the hundredth.
fn inches(mm: f64) -> String {
    let length = Length::from_mm(mm);
    let in_32nds = length.inch() * 32.0;
    if (in_32nds - in_32nds.round()).abs() < 1e-6 {
        length.print_inches()
    } else {
        format!("{} in", decimal(length.inch(), 2))
    }
}

/// `D2.1`.
pub(crate) fn balance(points: f64) -> String {
    Balance::from_points(points).to_string()
}

/// `61.5°`.
pub(crate) fn angle(deg: f64) -> String {
    Angle::from_deg(deg).print(1)
}

/// `+1.0°`, `−0.5°`, `0°`.
pub(crate) fn signed_angle(deg: f64) -> String {
    let sign = if deg > 0.05 {
        "+"
    } else if deg < -0.05 {
        "−"
    } else {
        ""
    };
    format!("{sign}{}°", decimal(deg.abs(), 1))
}

/// A value of a reading in its own unit.
pub(crate) fn value(what: What, value: f64) -> String {
    match what.unit() {
        Unit::Points => balance(value),
        Unit::Gram => mass(value),
        Unit::Millimetre => short_length(value),
        Unit::Degree => angle(value),
        Unit::Cpm => format!("{} cpm", decimal(value, 1)),
        Unit::None => "done".to_owned(),
    }
}

/// Half width of a band in the unit that [`value`] shows.
pub(crate) fn band(what: What, band: f64) -> String {
    match what.unit() {
        Unit::Millimetre if units::now().length == LengthUnit::Inch => decimal(band / quantity::INCH_MM, 2),
        Unit::Gram => units::mass_figure(band.max(0.05)),
        _ => decimal(band.max(0.05), 1),
    }
}

/// `± 0.3 expected`, or what is asked where nothing can be expected.
pub(crate) fn expected_note(ask: &AskState) -> String {
    ask.expected.as_ref().map_or_else(String::new, |e| format!("± {} expected", band(ask.what, e.band)))
}

/// An example of an entry, for the empty field.
pub(crate) fn example(what: What) -> &'static str {
    let (own, otherwise) = examples(what);
    units::example(own, otherwise, what.unit())
}

/// Examples in inches or grams, and in millimetres or ounces.
fn examples(what: What) -> (&'static str, &'static str) {
    match what {
        What::Balance => ("D8.9", "D8.9"),
        What::HeadMass => ("256.1", "9.034"),
        What::ShaftMass => ("98.6", "3.478"),
        What::GripMass => ("50.2", "1.771"),
        What::AdapterMass => ("5.1", "0.18"),
        What::FerruleMass => ("1.4", "0.05"),
        What::TipWeightMass => ("4.0", "0.141"),
        What::TapeMass => ("3.2", "0.113"),
        What::TotalMass => ("421.5", "14.868"),
        What::BalancePoint => ("28 1/2", "723.9"),
        What::ShaftLength => ("35 3/4", "908.1"),
        What::FinishedLength => ("37 1/2", "952.5"),
        What::Loft => ("30.5", "30.5"),
        What::Lie => ("62", "62"),
        What::Cpm => ("302", "302"),
        What::SoftSide => ("45", "45"),
        What::GripCentre => ("103 mm", "103"),
        What::CapThickness => ("3.1 mm", "3.1"),
        What::ShaftBalancePoint => ("17 1/2", "444.5"),
        What::CheckWeight => ("D0.1", "D0.1"),
        What::ReferenceBalance => ("D2.1", "D2.1"),
        What::Done => ("", ""),
    }
}

/// What was read as it was typed; a balance that came as bare points in letters as well.
pub(crate) fn as_read(what: What, read: f64, typed: &str) -> String {
    match what {
        What::Done => "done".to_owned(),
        _ if what.unit() == Unit::Points && typed.trim().parse::<f64>().is_ok() => value(what, read),
        _ => typed.to_owned(),
    }
}

/// Which unit an entry without one is taken in.
pub(crate) fn unit_hint(what: What) -> &'static str {
    match what.unit() {
        // A letter and points says itself what it is.
        Unit::Points => "",
        Unit::Gram => units::example("g, or 8.1 oz", "oz, or 229.6 g", what.unit()),
        Unit::Millimetre => units::example("in, or 933.5 mm", "mm, or 36 3/4 in", what.unit()),
        Unit::Degree => "degrees",
        Unit::Cpm => "cpm",
        Unit::None => "",
    }
}

/// `2 h 05 min`, `14 min`, `over`.
pub(crate) fn left(now: Timestamp, until: Timestamp) -> String {
    let minutes = (until.as_second() - now.as_second() + 59) / 60;
    match minutes {
        m if m <= 0 => "over".to_owned(),
        m if m < 60 => format!("{m} min"),
        m if m < 48 * 60 => format!("{} h {:02} min", m / 60, m % 60),
        m => format!("{} days", m / 60 / 24),
    }
}

/// The day of a time, in the shop's own time zone.
pub(crate) fn day(at: Timestamp) -> jiff::civil::Date {
    at.to_zoned_datetime(jiff::tz::TimeZone::system()).date()
}

/// Day and time as the shop writes them, in the machine's own time zone.
pub(crate) fn when(at: Timestamp) -> String {
    at.to_zoned_datetime(jiff::tz::TimeZone::system()).strftime("%-d %b %Y %H:%M").to_string()
}
