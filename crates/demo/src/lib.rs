//! An invented shop for demonstration and tests: its models, its stock and a few sheets.
//!
//! Names are those of birds, winds and minerals and of nobody's products; players are nobody. The figures hang together
//! as a real shop's do: heads rise about 7 g a number, lengths fall by half an inch, and with the nominal parts every
//! sheet is reached with 2 to 6 g in the tip, because the heads are a few grams light on purpose.
//!
//! The data stand alone; with the feature `load` the shop is also put into a database by the use cases of `app`, with
//! jobs that it finished weeks ago.

#[cfg(feature = "load")]
mod load;
mod models;
mod parts;
#[cfg(feature = "load")]
mod past_work;
mod scales;
mod sheets;

#[cfg(feature = "load")]
pub use load::{load, open};
pub use models::models;
pub use parts::parts;
pub use scales::{DemoCheck, checks, study};
pub use sheets::{PastJob, past, sheets};

use trade::check_weight::CheckWeight;
use trade::clamp::Clamp;
use trade::shop::{Shop, Units};
use words::Words;

/// The invented shop.
#[must_use]
pub fn shop() -> Shop {
    let words = Words::english(Units::default());
    Shop {
        name: "Quillmere Bench".into(),
        room_c: 21.0,
        adhesive: Some("DOLERITE".into()),
        tape: Some("TAPE-2S".into()),
        check_weight: Some(CheckWeight {
            name: "Check club, red band".into(),
            swing_weight_points: 31.4,
            sd_points: 0.04,
            mass_g: 412.0,
        }),
        standards: scales::standards(),
        gauges: scales::gauges(),
        clamp: Clamp { test_weight_g: Some(205.0), ..Clamp::default() },
        ..Shop::named(|id| words.text(id))
    }
}
