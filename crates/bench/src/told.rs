//! What a builder knows of his own shop: what a joint, a usual grip, a wrap of tape and a ferrule put on the swing weight of
//! a club or take off it, in points, as builders say it.
//!
//! Such a figure enters the belief of every job as a reading at a middle iron, not as another prior: it counts by how sure
//! the builder is, is doubted like a reading where the shop's clubs speak against it, and can be withdrawn as if it had
//! never been said. What the shop learns from its clubs is kept apart from it.

use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::kind::{Role, closed_list};
use trade::model::{Library, PartKind};
use utoipa::ToSchema;

closed_list! {
    /// What a builder can say a figure of.
    ToldOf {
        /// What gluing one joint does, the ferrule's turnings taken off.
        Joint = "joint";
        /// A usual grip.
        Grip = "grip";
        /// One full wrap of tape under it.
        Wrap = "wrap";
        /// A ferrule, before it is turned.
        Ferrule = "ferrule";
    }
}

closed_list! {
    /// How sure a builder is of a figure.
    Sureness {
        /// He has seen it on many clubs.
        Sure = "sure";
        /// The figure that he works with.
        Figure = "figure";
        /// Only about that much.
        About = "about";
    }
}

impl Sureness {
    /// Standard deviation of the figure, points: chosen where builders who err by half a point are not misled and those who are
    /// right lose nothing (from simulated shops).
    #[must_use]
    pub const fn sd_points(self) -> f64 {
        match self {
            Self::Sure => 0.2,
            Self::Figure => 0.3,
            Self::About => 0.45,
        }
    }
}

impl ToldOf {
    /// Whether it puts on swing weight; what does not takes it off.
    #[must_use]
    pub const fn puts_on(self) -> bool {
        matches!(self, Self::Joint | Self::Ferrule)
    }

    /// The kind of model that the figure is of.
    #[must_use]
    pub const fn kind(self) -> PartKind {
        match self {
            Self::Joint => PartKind::Adhesive,
            Self::Grip => PartKind::Grip,
            Self::Wrap => PartKind::Tape,
            Self::Ferrule => PartKind::Ferrule,
        }
    }

    /// The piece of a club in which it shows.
    pub(crate) const fn role(self) -> Role {
        match self {
            Self::Joint => Role::Adhesive,
            Self::Grip => Role::Grip,
            Self::Wrap => Role::Tape,
            Self::Ferrule => Role::Ferrule,
        }
    }

    /// Least and most that it can be, points: adhesive of 0.4 to 7 g, grips of 20 to 80 g, wraps of 0.3 to 8 g, ferrules of 0.3 to
    /// 5 g by the formulas above.
    #[must_use]
    pub const fn limits_points(self) -> (f64, f64) {
        match self {
            Self::Joint => (0.1, 3.0),
            Self::Grip => (3.0, 16.0),
            Self::Wrap => (0.05, 1.5),
            Self::Ferrule => (0.1, 2.0),
        }
    }
}

/// What a builder has said.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ToldFigure {
    /// What the figure is for: gluing a joint, a grip, a wrap of tape or a ferrule.
    pub of: ToldOf,
    /// Code of the adhesive, grip, tape or ferrule.
    pub model: String,
    /// What it puts on, points; less than 0 what it takes off.
    pub change_points: f64,
    /// How sure he is.
    pub sure: Sureness,
    /// Who said it.
    pub by: String,
    /// When.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
}

impl ToldFigure {
    /// Checks a figure as it was said: exactly one of what it puts on and what it takes off.
    ///
    /// # Errors
    /// Neither or both; the wrong way round; more or less than can be; a model that is not there.
    pub fn checked(
        of: ToldOf,
        model: String,
        puts_on_points: Option<f64>,
        takes_off_points: Option<f64>,
        library: &Library,
    ) -> Result<f64, TradeError> {
        let refuse = |fault: ToldFault| Err(TradeError::refused(fault));
        let (points, on) = match (puts_on_points, takes_off_points) {
            (Some(points), None) => (points, true),
            (None, Some(points)) => (points, false),
            _ => return refuse(ToldFault::OneFigure { of }),
        };
        // Less than nothing put on is taken off.
        let (points, on) = if points < 0.0 { (-points, !on) } else { (points, on) };
        let (least_points, most_points) = of.limits_points();
        if on != of.puts_on() {
            return refuse(if on { ToldFault::PutsOn { of, points } } else { ToldFault::TakesOff { of, points } });
        }
        if !(least_points..=most_points).contains(&points) {
            return refuse(ToldFault::Limits { of, points, least_points, most_points });
        }
        if library.of_kind(of.kind()).all(|known| known.code() != model) {
            let known = library.of_kind(of.kind()).map(|m| m.code().to_owned()).collect::<Vec<_>>();
            let known = Some(known).filter(|known| !known.is_empty());
            return refuse(ToldFault::UnknownModel { of, model, known });
        }
        Ok(if on { points } else { -points })
    }

    /// Its name in the ledger.
    #[must_use]
    pub fn key(&self) -> String {
        told_key(self.of, &self.model)
    }
}

/// Name of a figure in the ledger.
#[must_use]
pub fn told_key(of: ToldOf, model: &str) -> String {
    format!("told:{}:{model}", of.key())
}

/// What a name of the ledger is of.
#[must_use]
pub fn of_told_key(key: &str) -> Option<(ToldOf, &str)> {
    let (of, model) = key.strip_prefix("told:")?.split_once(':')?;
    Some((ToldOf::from_key(of)?, model))
}

fact::facts! {
    /// What is refused of a figure that a builder says.
    pub enum ToldFault: "told_fault" {
        /// Neither or both of what it puts on and takes off.
        OneFigure {
            /// What the figure is for: a joint, a grip, a wrap or a ferrule.
            of: ToldOf,
        },
        /// It takes off, and was said to put on.
        PutsOn {
            /// What the figure is for: a grip or a wrap, which lie behind the fulcrum.
            of: ToldOf,
            /// How much.
            points: f64,
        },
        /// It puts on, and was said to take off.
        TakesOff {
            /// What the figure is for: a joint or a ferrule, which lie by the head.
            of: ToldOf,
            /// How much.
            points: f64,
        },
        /// More or less than can be.
        Limits {
            /// What the figure is for: a joint, a grip, a wrap or a ferrule.
            of: ToldOf,
            /// How much was said.
            points: f64,
            /// The smallest figure that is taken for it.
            least_points: f64,
            /// The largest figure that is taken for it.
            most_points: f64,
        },
        /// No model has that code.
        UnknownModel {
            /// What the figure is for: a joint, a grip, a wrap or a ferrule.
            of: ToldOf,
            /// The code.
            model: String,
            /// The codes that there are.
            known: Option<Vec<String>>,
        },
        /// No model is named, and there is more than one or none.
        NoModel {
            /// What the figure is for: a joint, a grip, a wrap or a ferrule.
            of: ToldOf,
            /// The codes that there are.
            known: Option<Vec<String>>,
        },
        /// Nothing was said of it.
        NotTold {
            /// What a figure was looked for: a joint, a grip, a wrap or a ferrule.
            of: ToldOf,
            /// Code of the model.
            model: String,
        },
    }
}
