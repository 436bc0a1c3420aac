//! Bending a club to its sheet: which way, how far, and how much of a bend came back on this very head.

use crate::club_state::StepState;
use crate::target::Target;
use trade::id::ClubId;
use trade::job::JobClub;
use trade::kind::Role;
use trade::model::Library;
use trade::reading::{Reading, What};

/// How a built club is to be bent in one angle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bend {
    /// The angle as it was read last, degrees.
    pub read_deg: f64,
    /// What the sheet asks, degrees.
    pub asked_deg: f64,
    /// How far the angle is still to move, degrees; 0 where it matches the sheet.
    pub by_deg: f64,
    /// How much of the last bend came back, degrees: what was lacking before it less what it moved. None before the second
    /// reading, and where the head moved as far as it was meant to or farther.
    pub came_back_deg: Option<f64>,
}

/// Less than a bending machine's gauge shows, degrees (common practice, no source): no spring-back is told from it.
const SEEN_DEG: f64 = 0.25;

/// How a club is to be bent in loft or lie; none before it is read, loose head or built.
#[must_use]
pub fn bend(readings: &[Reading], club: &ClubId, what: What, asked: &Target) -> Option<Bend> {
    let mine = |r: &&Reading| r.club == *club && r.what == what && r.taken_back.is_none();
    let built = |r: &&Reading| r.on.contains(&Role::Adhesive);
    let all: Vec<&Reading> = readings.iter().filter(mine).collect();
    let on_club: Vec<&Reading> = all.iter().copied().filter(|r| built(r)).collect();
    let last = on_club.last().or(all.last())?;
    let lacking = asked.value - last.value;
    let by_deg = if lacking.abs() <= asked.tolerance + 1e-9 { 0.0 } else { lacking };
    // A reading that was corrected shows the same angle; one after a bend, another.
    let before = on_club.iter().rev().nth(1).or_else(|| {
        let loose = all.iter().rev().find(|r| !built(r));
        loose.filter(|_| !on_club.is_empty())
    });
    let came_back_deg = before.and_then(|before| {
        let (meant, moved) = (asked.value - before.value, last.value - before.value);
        let back = (meant - moved) * meant.signum();
        let bent = meant.abs() > asked.tolerance && moved.abs() > SEEN_DEG && moved.signum() == meant.signum();
        (bent && back > SEEN_DEG).then_some(back)
    });
    Some(Bend { read_deg: last.value, asked_deg: asked.value, by_deg, came_back_deg })
}

/// The setting of a club's adapter that comes nearer to the sheet than the one that it is built at, by what a step read; none
/// where there is no adapter, no better setting, or nothing off.
#[must_use]
pub fn better_setting(library: &Library, club: &JobClub, step: &StepState) -> Option<String> {
    let adapter = club.plan.as_ref()?.adapter(library)?;
    let lacking = |what: What| {
        let ask = step.asks.iter().find(|ask| ask.what == what);
        ask.and_then(|ask| Some(ask.target?.value - ask.reading.as_ref()?.value)).unwrap_or(0.0)
    };
    let now = club.target.adapter_setting.as_deref();
    let lacking = (lacking(What::Loft), lacking(What::Lie));
    let best = adapter.nearest(now, lacking)?;
    let (loft_now, lie_now) = adapter.turns_deg(now);
    let left = (best.loft_deg - loft_now - lacking.0).hypot(best.lie_deg - lie_now - lacking.1);
    (left + SEEN_DEG < lacking.0.hypot(lacking.1)).then(|| best.name.clone())
}

#[cfg(test)]
mod tests {
    use super::*;
    use trade::reading::Unit;

    fn reading(at: usize, value: f64, built: bool) -> Reading {
        Reading {
            id: format!("r{at}").as_str().into(),
            job: "j".into(),
            club: "c".into(),
            step: "bend".to_owned(),
            what: What::Loft,
            value,
            unit: Unit::Degree,
            typed: value.to_string(),
            on: if built { vec![Role::Head, Role::Adhesive] } else { Vec::new() },
            scale: None,
            display_step: 0.5,
            at: jiff::Timestamp::UNIX_EPOCH,
            by: "Ada".to_owned(),
            replaces: None,
            taken_back: None,
            pivot_mm: None,
            insisted: false,
            forecast: None,
        }
    }

    fn asked() -> Target {
        Target { value: 50.0, tolerance: 0.5 }
    }

    #[test]
    fn what_is_lacking_is_told_with_its_way() {
        let bent = |values: &[(f64, bool)]| {
            let readings: Vec<Reading> =
                values.iter().enumerate().map(|(at, (value, built))| reading(at, *value, *built)).collect();
            bend(&readings, &"c".into(), What::Loft, &asked())
        };
        assert_eq!(bent(&[]), None);
        // The loose head tells it before the built club is read.
        let loose = bent(&[(51.5, false)]).expect("a bend");
        assert_eq!((loose.by_deg, loose.came_back_deg), (-1.5, None));
        // Bent 1.5° strong, and 0.6° came back.
        let again = bent(&[(51.5, false), (51.5, true), (50.6, true)]).expect("a bend");
        assert!((again.by_deg + 0.6).abs() < 1e-9 && again.came_back_deg.is_some_and(|d| (d - 0.6).abs() < 1e-9));
        // Within the tolerance nothing is left to bend; the wrong way is no spring-back.
        let there = bent(&[(51.5, true), (50.2, true)]).expect("a bend");
        assert_eq!((there.by_deg, there.came_back_deg), (0.0, None));
        assert_eq!(bent(&[(51.5, true), (52.5, true)]).expect("a bend").came_back_deg, None);
    }
}
