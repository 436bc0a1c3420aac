//! What the shop learns, by the keys under which it is stored: read and written here alone.
//!
//! A part of the program that treats one sort of value apart matches on [`ValueKey`], [`Scattered`] or [`ScatterKey`], so
//! that a new sort does not compile until each of them handles it.

use crate::learned::JOB_LEVEL;
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;
use trade::kind::closed_list;
use utoipa::ToSchema;

/// A value that is carried from job to job, with the model, scale or nothing that it belongs to.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum ValueKey {
    /// How far a head's centre lies beyond the ground point; code of the head.
    Delta(String),
    /// Where a grip's centre is; code of the grip.
    GripCentre(String),
    /// How thick a grip's cap is; code of the grip.
    Cap(String),
    /// Where the balance point of a cut shaft is; code of the shaft.
    ShaftCentre(String),
    /// What is cut off a shaft weighs; code of the shaft.
    ShaftCut(String),
    /// How stiff a shaft model is against its table or tube, as a logarithm; code of the shaft.
    Stiffness(String),
    /// How much stiffer it is toward its tip than that, as a logarithm; code of the shaft.
    StiffnessTilt(String),
    /// How much longer a shaft acts in the shop's clamp than it is, beyond the usual.
    ClampGives,
    /// The same with a grip in the clamp.
    GripGives,
    /// What one joint takes of an adhesive; its code.
    Adhesive(String),
    /// What a tape weighs; its code.
    Tape(String),
    /// Solvent left in a fresh grip.
    Solvent,
    /// What a scale is usually off by; key of the scale.
    UsualOffset(String),
}

closed_list! {
    /// What scatters from one piece to the next, or from one job to the next.
    Scattered {
        /// Adhesive of one joint.
        AdhesivePiece = "adhesive.piece";
        /// Adhesive of one job.
        AdhesiveJob = "adhesive.job";
        /// Tape of one club.
        TapePiece = "tape.piece";
        /// Tape of one job.
        TapeJob = "tape.job";
        /// Solvent in one grip.
        SolventPiece = "solvent.piece";
        /// Solvent of one job.
        SolventJob = "solvent.job";
        /// Caps of grips.
        CapPiece = "cap.piece";
        /// Centres of grips.
        GripCentrePiece = "grip_centre.piece";
        /// Balance points of cut shafts.
        ShaftCentrePiece = "shaft_centre.piece";
        /// Stiffness of single shafts.
        StiffnessPiece = "stiffness.piece";
    }
}

/// A scatter figure.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ScatterKey {
    /// Of pieces or jobs.
    Of(Scattered),
    /// One re-seated reading of a scale to the next; key of the scale.
    Noise(String),
    /// What a scale is off by from day to day; key of the scale.
    Today(String),
    /// How far a scale drifts one way over a day of work; key of the scale.
    Drift(String),
    /// A builder's readings against the shop's; the builder's name.
    Hand(String),
}

/// Anything that the shop learns.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LearnedKey {
    /// A value with its mean.
    Value(ValueKey),
    /// A scatter figure.
    Scatter(ScatterKey),
}

/// A key that this version does not know.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct UnknownKey;

impl ValueKey {
    /// Key of what one job deviates from this value; it is forgotten with the job.
    #[must_use]
    pub fn of_job(&self) -> String {
        format!("{self}{JOB_LEVEL}")
    }

    /// The scatter figure that tells how far single jobs deviate from this value; none where jobs are not told apart.
    #[must_use]
    pub(crate) const fn scattered_by_job(&self) -> Option<Scattered> {
        match self {
            Self::Adhesive(_) => Some(Scattered::AdhesiveJob),
            Self::Tape(_) => Some(Scattered::TapeJob),
            Self::Solvent => Some(Scattered::SolventJob),
            Self::Delta(_)
            | Self::GripCentre(_)
            | Self::Cap(_)
            | Self::ShaftCentre(_)
            | Self::ShaftCut(_)
            | Self::Stiffness(_)
            | Self::StiffnessTilt(_)
            | Self::ClampGives
            | Self::GripGives
            | Self::UsualOffset(_) => None,
        }
    }
}

/// As it is stored.
impl fmt::Display for ValueKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Delta(head) => write!(f, "delta:{head}"),
            Self::GripCentre(grip) => write!(f, "grip_centre:{grip}"),
            Self::Cap(grip) => write!(f, "cap:{grip}"),
            Self::ShaftCentre(shaft) => write!(f, "shaft_centre:{shaft}"),
            Self::ShaftCut(shaft) => write!(f, "shaft_cut:{shaft}"),
            Self::Stiffness(shaft) => write!(f, "stiffness:{shaft}"),
            Self::StiffnessTilt(shaft) => write!(f, "stiffness_tilt:{shaft}"),
            Self::ClampGives => f.write_str("clamp_gives"),
            Self::GripGives => f.write_str("grip_gives"),
            Self::Adhesive(code) => write!(f, "adhesive:{code}"),
            Self::Tape(code) => write!(f, "tape:{code}"),
            Self::Solvent => f.write_str("solvent"),
            Self::UsualOffset(scale) => write!(f, "usual_offset:{scale}"),
        }
    }
}

impl FromStr for ValueKey {
    type Err = UnknownKey;

    fn from_str(key: &str) -> Result<Self, UnknownKey> {
        let Some((sort, of)) = key.split_once(':') else {
            return match key {
                "solvent" => Ok(Self::Solvent),
                "clamp_gives" => Ok(Self::ClampGives),
                "grip_gives" => Ok(Self::GripGives),
                _ => Err(UnknownKey),
            };
        };
        let of = of.to_owned();
        Ok(match sort {
            "delta" => Self::Delta(of),
            "grip_centre" => Self::GripCentre(of),
            "cap" => Self::Cap(of),
            "shaft_centre" => Self::ShaftCentre(of),
            "shaft_cut" => Self::ShaftCut(of),
            "stiffness" => Self::Stiffness(of),
            "stiffness_tilt" => Self::StiffnessTilt(of),
            "adhesive" => Self::Adhesive(of),
            "tape" => Self::Tape(of),
            "usual_offset" => Self::UsualOffset(of),
            _ => return Err(UnknownKey),
        })
    }
}

/// As it is stored.
impl fmt::Display for ScatterKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Of(scattered) => f.write_str(scattered.key()),
            Self::Noise(scale) => write!(f, "noise:{scale}"),
            Self::Today(scale) => write!(f, "today:{scale}"),
            Self::Drift(scale) => write!(f, "drift:{scale}"),
            Self::Hand(name) => write!(f, "hand:{name}"),
        }
    }
}

impl FromStr for ScatterKey {
    type Err = UnknownKey;

    fn from_str(key: &str) -> Result<Self, UnknownKey> {
        if let Some(scattered) = Scattered::from_key(key) {
            return Ok(Self::Of(scattered));
        }
        match key.split_once(':') {
            Some(("noise", scale)) => Ok(Self::Noise(scale.to_owned())),
            Some(("today", scale)) => Ok(Self::Today(scale.to_owned())),
            Some(("drift", scale)) => Ok(Self::Drift(scale.to_owned())),
            Some(("hand", name)) => Ok(Self::Hand(name.to_owned())),
            _ => Err(UnknownKey),
        }
    }
}

impl fmt::Display for LearnedKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Value(key) => key.fmt(f),
            Self::Scatter(key) => key.fmt(f),
        }
    }
}

impl FromStr for LearnedKey {
    type Err = UnknownKey;

    fn from_str(key: &str) -> Result<Self, UnknownKey> {
        key.parse().map(Self::Value).or_else(|UnknownKey| key.parse().map(Self::Scatter))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_stored_key_is_read_and_written_as_it_was() {
        // The keys of databases that are in use; none may ever change.
        let stored = [
            "delta:SISKIN",
            "grip_centre:OLIVINE-58",
            "cap:OLIVINE-58",
            "shaft_centre:TRAMONTANA",
            "shaft_cut:TRAMONTANA",
            "adhesive:DOLERITE",
            "tape:TAPE-2S",
            "stiffness:TRAMONTANA",
            "stiffness_tilt:TRAMONTANA",
            "clamp_gives",
            "grip_gives",
            "stiffness.piece",
            "solvent",
            "usual_offset:balance",
            "adhesive.piece",
            "adhesive.job",
            "tape.piece",
            "tape.job",
            "solvent.piece",
            "solvent.job",
            "cap.piece",
            "grip_centre.piece",
            "shaft_centre.piece",
            "noise:balance",
            "today:mass",
            "hand:Ada: the second",
        ];
        for key in stored {
            assert_eq!(key.parse::<LearnedKey>().map(|k| k.to_string()), Ok(key.to_owned()));
        }
        assert_eq!("adhesive.whatever".parse::<LearnedKey>(), Err(UnknownKey));
        assert_eq!("turned:7".parse::<LearnedKey>(), Err(UnknownKey));
    }

    #[test]
    fn what_a_job_deviates_is_a_key_beside_the_value() {
        assert_eq!(ValueKey::Adhesive("DOLERITE".into()).of_job(), "adhesive:DOLERITE@job");
        assert_eq!(ValueKey::Solvent.scattered_by_job(), Some(Scattered::SolventJob));
        assert_eq!(ValueKey::Cap("OLIVINE".into()).scattered_by_job(), None);
    }
}
