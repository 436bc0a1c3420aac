//! The one measurement with which a finished club can be called in.
//!
//! A club on its target may be too close to call because the scale's offset of the day or the target itself is not known well
//! enough. Reading the club over and over narrows neither: what does is read here, one kind at a time, the shortest first, as
//! often as it takes to say “in” if it shows what is expected.

use crate::belief::{BAND_95, Believed};
use crate::offer::swing_weight_checks;
use estimation::Probe;
use estimation::conformity::{Limits, Verdict, judge};
use trade::error::TradeError;
use trade::id::ClubId;
use trade::kind::Role;
use trade::reading::What;

/// How sure one must be to call a club in or out: a probability.
pub const ASKED_CONFIDENCE: f64 = 0.95;
/// More readings of one kind than this are not asked for.
const MOST_READINGS: usize = 4;

fact::facts! {
    /// What settles whether a finished club is in.
    pub enum VerdictReach: "verdict_reach" {
        /// Its swing weight read again, re-seated.
        Again {
            /// How many times.
            n: i64,
        },
        /// The check weight on the balance scale.
        CheckWeight {
            /// How many times.
            n: i64,
        },
        /// The reference club on the balance scale.
        Reference {
            /// How many times.
            n: i64,
        },
        /// No reading would: it lies too near to the edge of its tolerance.
        TooNear {
            /// How far inside the edge it lies.
            inside_points: f64,
        },
        /// No reading of the shop would.
        Never,
    }
}

impl VerdictReach {
    fn of(what: What, n: i64) -> Self {
        match what {
            What::CheckWeight => Self::CheckWeight { n },
            What::ReferenceSwingWeight => Self::Reference { n },
            _ => Self::Again { n },
        }
    }

    /// What is read for it; none where nothing helps.
    #[must_use]
    pub const fn what(&self) -> Option<What> {
        match self {
            Self::Again { .. } => Some(What::SwingWeight),
            Self::CheckWeight { .. } => Some(What::CheckWeight),
            Self::Reference { .. } => Some(What::ReferenceSwingWeight),
            Self::TooNear { .. } | Self::Never => None,
        }
    }
}

/// What settles whether a finished club is in; none where its finished swing weight is not read yet, where in or out can be
/// said already, and where it is expected to be out.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn reach(believed: &Believed<'_>, club: &ClubId) -> Result<Option<VerdictReach>, TradeError> {
    let Some(found) = believed.assembly.job.club(club) else { return Ok(None) };
    let standing = believed.standing();
    let finished = standing.iter().rfind(|r| {
        r.club == *club && r.what == What::SwingWeight && r.on.contains(&Role::Grip) && !believed.is_doubted(&r.id)
    });
    let (Some(finished), Some(finish)) = (finished, believed.finish(club)?) else { return Ok(None) };
    let limits = Limits::around(0.0, finish.tolerance_points);
    let says = |sd: f64| judge(finish.deviation_points, sd, limits, ASKED_CONFIDENCE).map(|judged| judged.verdict);
    let inside_points = finish.tolerance_points - finish.deviation_points.abs();
    if inside_points <= 0.0 || says(finish.band_points / BAND_95)? != Verdict::TooClose {
        return Ok(None);
    }
    let probe = believed.assembly.finish_probe(club);
    let checks = swing_weight_checks(believed, found, &finished.on);
    for n in 1..=MOST_READINGS {
        for (what, reading) in &checks {
            let planned: Vec<(Probe, f64)> = vec![reading.clone(); n];
            if says(believed.sd_after(&probe, &planned)?)? == Verdict::In {
                return Ok(Some(VerdictReach::of(*what, n as i64)));
            }
        }
    }
    // Even all of them together would not.
    let all: Vec<(Probe, f64)> = checks.iter().flat_map(|(_, reading)| vec![reading.clone(); MOST_READINGS]).collect();
    let together = believed.sd_after(&probe, &all)?;
    let near = judge(0.0, together, limits, ASKED_CONFIDENCE)?.verdict == Verdict::In;
    Ok(Some(if near { VerdictReach::TooNear { inside_points } } else { VerdictReach::Never }))
}
