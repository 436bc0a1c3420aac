//! Figures as the trade writes them.

use bench::club_state::AskState;
use bench::target::Target;
use jiff::Timestamp;
use quantity::{LengthUnit, decimal};
use trade::reading::Unit;
use trade::reading::What;
use words::Words;

/// A value of a reading in its own unit.
pub(crate) fn value(w: &Words, what: What, value: f64) -> String {
    match what.unit() {
        Unit::Points => w.swing_weight(value),
        Unit::Gram => w.mass(value),
        Unit::Millimetre => w.length_to(value, 2),
        Unit::Degree => w.angle(value),
        Unit::Cpm => format!("{} cpm", decimal(value, 1)),
        Unit::None => "done".to_owned(),
    }
}

/// Half width of a band in the unit that [`value`] shows.
pub(crate) fn band(w: &Words, what: What, band: f64) -> String {
    match what.unit() {
        Unit::Millimetre if w.units.length == LengthUnit::Inch => decimal(band / quantity::INCH_MM, 2),
        Unit::Gram => w.mass_figure(band.max(0.05)),
        _ => decimal(band.max(0.05), 1),
    }
}

/// Beside the largest figure of a step: `± 0.3 expected`; `± 0.5° asked` where nothing is forecast and the sheet asks.
pub(crate) fn expected_note(w: &Words, ask: &AskState) -> String {
    match (&ask.expected, &ask.target) {
        (Some(e), _) => format!("± {} expected", band(w, ask.what, e.band)),
        (None, Some(t)) => format!("± {} asked", band(w, ask.what, t.tolerance)),
        (None, None) => String::new(),
    }
}

/// The largest figure of a step: what is expected, or what the sheet asks where nothing is forecast.
pub(crate) fn expected(w: &Words, ask: &AskState) -> String {
    match (&ask.expected, &ask.target) {
        (Some(e), _) => value(w, ask.what, e.value),
        (None, Some(t)) => value(w, ask.what, t.value),
        (None, None) => String::new(),
    }
}

/// `D9.7 ± 0.6`: a forecast that stands, or stood when its reading came.
pub(crate) fn forecast(w: &Words, what: What, middle: f64, half: f64) -> String {
    format!("{} ± {}", value(w, what, middle), band(w, what, half))
}

/// `asked 21.0° ± 0.5°`: what the sheet asks.
pub(crate) fn asked(w: &Words, what: What, target: &Target) -> String {
    let sign = if what.unit() == Unit::Degree { "°" } else { "" };
    format!("asked {} ± {}{sign}", value(w, what, target.value), band(w, what, target.tolerance))
}

/// A reading less what was expected of it: `+0.3`, `−0.04 in`, `0.0`.
pub(crate) fn difference(w: &Words, what: What, by: f64) -> String {
    let size = match what.unit() {
        Unit::Points => decimal(by.abs(), 1),
        _ => value(w, what, by.abs()),
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
pub(crate) fn as_read(w: &Words, what: What, read: f64, typed: &str) -> String {
    match what {
        What::Done => "done".to_owned(),
        _ if what.unit() == Unit::Points && typed.trim().parse::<f64>().is_ok() => value(w, what, read),
        _ => typed.to_owned(),
    }
}

/// Which unit an entry without one is taken in.
pub(crate) fn unit_hint(w: &Words, what: What) -> &'static str {
    match what.unit() {
        // A letter and points says itself what it is.
        Unit::Points | Unit::None => "",
        Unit::Gram => w.mass_sign(),
        Unit::Millimetre => w.length_sign(),
        Unit::Degree => "degrees",
        Unit::Cpm => "cpm",
    }
}

/// `2 h 05 min`, `14 min`, `over`.
pub(crate) fn left(w: &Words, now: Timestamp, until: Timestamp) -> String {
    let minutes = (until.as_second() - now.as_second() + 59) / 60;
    match minutes {
        m if m <= 0 => "over".to_owned(),
        m if m < 60 => format!("{m} min"),
        m if m < 48 * 60 => format!("{} h {:02} min", m / 60, m % 60),
        m => format!("{} days", m / 60 / 24),
    }
}
