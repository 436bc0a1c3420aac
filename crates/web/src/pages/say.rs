//! Figures as the trade writes them.

use bench::club_state::AskState;
use bench::open_point::OpenClub;
use bench::target::Target;
use jiff::Timestamp;
use quantity::{LengthUnit, decimal};
use trade::reading::Unit;
use trade::reading::What;
use words::{Words, text};

/// A value of a reading in its own unit.
pub(crate) fn value(w: &Words, what: What, value: f64) -> String {
    match what.unit() {
        Unit::Points => w.swing_weight(value),
        Unit::Gram => w.mass(value),
        Unit::Millimetre => w.length_to(value, 2),
        Unit::Degree => w.angle(value),
        Unit::Cpm => text!(w, "reading-cpm", figure_cpm = value),
        Unit::Second => text!(w, "reading-seconds", figure_s = value),
        Unit::KgCm2 => text!(w, "reading-inertia", figure_kg_cm2 = value),
        Unit::None if what.is_look() => w.text(if value > 0.5 { "reading-yes" } else { "reading-no" }),
        Unit::None => w.tell(&What::Done),
    }
}

/// Half width of a band in the unit that [`value`] shows.
pub(crate) fn band(w: &Words, what: What, band: f64) -> String {
    match what.unit() {
        Unit::Millimetre if w.units.length == LengthUnit::Inch => w.printed(&decimal(band / quantity::INCH_MM, 2)),
        Unit::Gram => w.mass_figure(band.max(0.05)),
        Unit::Second => w.printed(&decimal(band.max(0.0005), 3)),
        Unit::KgCm2 => w.printed(&decimal(band.max(0.5), 0)),
        _ => w.printed(&decimal(band.max(0.05), 1)),
    }
}

/// Beside the largest figure of a step: `± 0.3 expected`; `± 0.5° asked` where nothing is forecast and the sheet asks.
pub(crate) fn expected_note(w: &Words, ask: &AskState) -> String {
    match (&ask.expected, &ask.target) {
        (Some(e), _) => text!(w, "reading-band-expected", band = band(w, ask.what, e.band)),
        (None, Some(t)) => text!(w, "reading-band-asked", band = half(w, ask.what, t.tolerance)),
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
    text!(w, "reading-with-band", value = value(w, what, middle), band = band(w, what, half))
}

/// `asked 21.0° ± 0.5°`: what the sheet asks.
pub(crate) fn asked(w: &Words, what: What, target: &Target) -> String {
    text!(w, "reading-asked", value = value(w, what, target.value), band = half(w, what, target.tolerance))
}

/// Half width of a tolerance: as [`band`], an angle with its sign.
fn half(w: &Words, what: What, tolerance: f64) -> String {
    match what.unit() {
        Unit::Degree => w.angle(tolerance),
        _ => band(w, what, tolerance),
    }
}

/// What is open on a club: “swing weight at “Dry” is doubted and lie is not read”.
pub(crate) fn open(w: &Words, club: &OpenClub) -> String {
    w.list(&club.facts.iter().map(|fact| w.told(fact)).collect::<Vec<_>>())
}

/// A reading less what was expected of it: `+0.3`, `−0.04 in`, `0.0`.
pub(crate) fn difference(w: &Words, what: What, by: f64) -> String {
    let size = match what.unit() {
        Unit::Points => w.printed(&decimal(by.abs(), 1)),
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

/// What was read as it was typed; a bare number of a program, in the unit that it is kept in, as the reader would write it.
pub(crate) fn as_read(w: &Words, what: What, read: f64, typed: &str) -> String {
    match what {
        What::Done => w.tell(&What::Done),
        _ if what.is_look() => value(w, what, read),
        _ if typed.trim().parse::<f64>().is_ok_and(|bare| (bare - read).abs() < 1e-9) => value(w, what, read),
        _ => typed.to_owned(),
    }
}

/// Which unit an entry without one is taken in.
pub(crate) fn unit_hint(w: &Words, what: What) -> String {
    match what.unit() {
        // A letter and points says itself what it is.
        Unit::Points | Unit::None => String::new(),
        Unit::Gram => w.mass_sign().to_owned(),
        Unit::Millimetre => w.length_sign().to_owned(),
        Unit::Degree => w.text("reading-unit-degrees"),
        Unit::Cpm => w.tell(&Unit::Cpm),
        Unit::Second => w.tell(&Unit::Second),
        Unit::KgCm2 => w.tell(&Unit::KgCm2),
    }
}

/// `2 h 05 min`, `14 min`, `over`.
pub(crate) fn left(w: &Words, now: Timestamp, until: Timestamp) -> String {
    let minutes = (until.as_second() - now.as_second() + 59) / 60;
    match minutes {
        m if m <= 0 => w.text("left-over"),
        m if m < 60 => text!(w, "left-minutes", minutes = m),
        m if m < 48 * 60 => text!(w, "left-hours", hours = m / 60, minutes = format!("{:02}", m % 60)),
        m => text!(w, "left-days", days = m / 60 / 24),
    }
}
