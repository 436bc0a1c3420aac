//! What is simulated.

use crate::error::{Setting, SimulationError};
use serde::Serialize;

/// What can make a shop awkward.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Trouble {
    /// The balance scale drifts by 0.3 point in a day.
    Drift,
    /// Twice the adhesive in every joint.
    HeavyAdhesive,
    /// Half the adhesive in every joint.
    LightAdhesive,
    /// Grips scatter by 3 g instead of 1.2 g.
    ScatteredGrips,
    /// 12 spare grips instead of 60.
    FewGrips,
    /// Half of the jobs are built from head and grip models that the shop has never had.
    NewModels,
    /// The fitting bay's scale shows 0.2 point too much or too little.
    BayScale,
    /// Single grips scatter by 0.05 in in their centre and 0.012 in in their cap.
    LooseGrips,
    /// The centres of single heads scatter by 1.5 mm: most lie within 3 mm.
    LooseHeads,
    /// The joint cures over night: another day, another offset of the scale.
    Overnight,
}

impl Trouble {
    /// All of them.
    pub const ALL: [Self; 10] = [
        Self::Drift,
        Self::HeavyAdhesive,
        Self::LightAdhesive,
        Self::ScatteredGrips,
        Self::FewGrips,
        Self::NewModels,
        Self::BayScale,
        Self::LooseGrips,
        Self::LooseHeads,
        Self::Overnight,
    ];

    /// Its name on the command line.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Drift => "drift",
            Self::HeavyAdhesive => "heavy-adhesive",
            Self::LightAdhesive => "light-adhesive",
            Self::ScatteredGrips => "scattered-grips",
            Self::FewGrips => "few-grips",
            Self::NewModels => "new-models",
            Self::BayScale => "bay-scale",
            Self::LooseGrips => "loose-grips",
            Self::LooseHeads => "loose-heads",
            Self::Overnight => "overnight",
        }
    }

    /// The trouble of this name.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|t| t.key() == key)
    }
}

/// What the sheet's target rests on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Reference {
    /// The reference club was read once on the shop's own scale, on another day: the sheet holds what was shown, with that
    /// day's offset and noise.
    OwnScale,
    /// The target is known in true points.
    Perfect,
}

/// Where the shops come from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum World {
    /// Means range wider than what the belief starts from and off its middle, pieces scatter more, and some things are as the
    /// belief does not think them: glue above the tip, tape that ends short, stretched grips, bores off the axis.
    Wide,
    /// The middle of each range is what a new shop starts from, pieces scatter as the belief expects, forms are alike.
    AsBelieved,
}

/// A choice of a setting by its name on the command line.
macro_rules! by_key {
    ($name:ident { $($variant:ident = $key:literal),* }) => {
        impl $name {
            /// All of them.
            pub const ALL: &'static [Self] = &[$(Self::$variant),*];

            /// Its name on the command line.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Self::$variant => $key),* }
            }

            /// The one of this name.
            #[must_use]
            pub fn from_key(key: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|one| one.key() == key)
            }
        }
    };
}
by_key!(Reference { OwnScale = "own-scale", Perfect = "perfect" });
by_key!(World { Wide = "wide", AsBelieved = "as-believed" });

/// Settings of a simulation.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Settings {
    /// Jobs of eight clubs that every strategy is judged by. They come in groups of [`Settings::JOBS_A_GROUP`].
    pub jobs: u32,
    /// Seed of all draws.
    pub seed: u64,
    /// Jobs that a known shop has built before it is judged.
    pub known_after: u32,
    /// What makes the shops awkward.
    pub troubles: Vec<Trouble>,
    /// Share of clubs with a seeded blunder.
    pub blunders: f64,
    /// Factor on everything that scatters and on everything that is not known; 0: every shop is as its models say and
    /// every scale true.
    pub scatter: f64,
    /// Each club finished before the next is begun, instead of a set glued as one batch.
    pub one_at_a_time: bool,
    /// What the sheet's target rests on.
    pub reference: Reference,
    /// Where the shops come from.
    pub world: World,
    /// Only the strategies whose key contains this; empty: all.
    pub only: String,
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            jobs: 100,
            seed: 1,
            known_after: 10,
            troubles: Vec::new(),
            blunders: 0.0,
            scatter: 1.0,
            one_at_a_time: false,
            reference: Reference::OwnScale,
            world: World::Wide,
            only: String::new(),
        }
    }
}

impl Settings {
    /// Jobs that are simulated together: so many new shops, and one shop that builds so many after it is known.
    pub const JOBS_A_GROUP: u32 = 10;

    /// How many groups there are.
    #[must_use]
    pub const fn groups(&self) -> u32 {
        self.jobs.div_ceil(Self::JOBS_A_GROUP)
    }

    /// Whether a trouble is on.
    #[must_use]
    pub fn has(&self, trouble: Trouble) -> bool {
        self.troubles.contains(&trouble)
    }

    /// Refuses settings that mean nothing.
    ///
    /// # Errors
    /// The first setting out of its range.
    pub fn check(&self) -> Result<(), SimulationError> {
        let within = |what: Setting, value: f64, low: f64, high: f64| {
            if value.is_finite() && (low..=high).contains(&value) {
                Ok(())
            } else {
                Err(SimulationError::Setting { what, value, low, high })
            }
        };
        within(Setting::Jobs, f64::from(self.jobs), 1.0, 100_000.0)?;
        within(Setting::KnownAfter, f64::from(self.known_after), 0.0, 1000.0)?;
        within(Setting::Blunders, self.blunders, 0.0, 1.0)?;
        within(Setting::Scatter, self.scatter, 0.0, 5.0)
    }
}
