//! Figures as the trade writes them.

use crate::units;
use bench::club_state::AskState;
use bench::target::Target;
use jiff::Timestamp;
use quantity::{Angle, Length, LengthUnit, SwingWeight, decimal};
use trade::reading::{Unit, What};

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
pub(crate) fn swing_weight(points: f64) -> String {
    SwingWeight::from_points(points).to_string()
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
        Unit::Points => swing_weight(value),
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

/// Beside the largest figure of a step: `± 0.3 expected`; `± 0.5° asked` where nothing is forecast and the sheet asks.
pub(crate) fn expected_note(ask: &AskState) -> String {
    match (&ask.expected, &ask.target) {
        (Some(e), _) => format!("± {} expected", band(ask.what, e.band)),
        (None, Some(t)) => format!("± {} asked", band(ask.what, t.tolerance)),
        (None, None) => String::new(),
    }
}

/// The largest figure of a step: what is expected, or what the sheet asks where nothing is forecast.
pub(crate) fn expected(ask: &AskState) -> String {
    match (&ask.expected, &ask.target) {
        (Some(e), _) => value(ask.what, e.value),
        (None, Some(t)) => value(ask.what, t.value),
        (None, None) => String::new(),
    }
}

/// `D9.7 ± 0.6`: a forecast that stands, or stood when its reading came.
pub(crate) fn forecast(what: What, middle: f64, half: f64) -> String {
    format!("{} ± {}", value(what, middle), band(what, half))
}

/// `asked 21.0° ± 0.5°`: what the sheet asks.
pub(crate) fn asked(what: What, target: &Target) -> String {
    let sign = if what.unit() == Unit::Degree { "°" } else { "" };
    format!("asked {} ± {}{sign}", value(what, target.value), band(what, target.tolerance))
}

/// A reading less what was expected of it: `+0.3`, `−0.04 in`, `0.0`.
pub(crate) fn difference(what: What, by: f64) -> String {
    let size = match what.unit() {
        Unit::Points => decimal(by.abs(), 1),
        _ => value(what, by.abs()),
    };
    let nothing = size.chars().all(|c| !c.is_ascii_digit() || c == '0');
    let sign = if nothing {
        ""
    } else if by < 0.0 {
        "−"
    } else {
        "+"
    };
    format!("{sign}{size}")
}

/// What was read as it was typed; a swing weight that came as bare points in letters as well.
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
        Unit::Points | Unit::None => "",
        Unit::Gram => units::mass_sign(),
        Unit::Millimetre => units::length_sign(),
        Unit::Degree => "degrees",
        Unit::Cpm => "cpm",
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
