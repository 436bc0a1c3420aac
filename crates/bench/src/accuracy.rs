//! How well one reading of a length, an angle or a frequency is known: by the shop's own gauge as it was stated, studied and learned
//! from repeats; by what is usual for an instrument that was never studied.

use crate::learned::{Learned, ScatterKey};
use serde::{Deserialize, Serialize};
use trade::reading::What;
use trade::shop::Shop;
use utoipa::ToSchema;

/// Half width of a 95 % band in standard deviations.
pub const BAND_95: f64 = 1.959_963_984_540_054;

/// The instrument that a value was read on, as far as it says how well that is known.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct ReadOn {
    /// What the shop calls it; none for one that it has neither stated nor studied.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub gauge: Option<String>,
    /// Standard deviation of one re-seated reading, in the unit of the value, as learned from repeats.
    pub noise_sd: f64,
    /// Standard deviation of what the instrument may be off by, same unit.
    pub offset_sd: f64,
    /// How many readings the value is the mean of.
    pub readings: i64,
}

impl ReadOn {
    /// Half width of the 95 % band of the value.
    #[must_use]
    pub fn band(&self) -> f64 {
        let readings = (self.readings.max(1) as f64).sqrt();
        BAND_95 * (self.noise_sd / readings).hypot(self.offset_sd)
    }
}

/// The accuracy of the mean of `readings` readings. `None` for a quantity that a scale reads: its belief is kept elsewhere.
///
/// # Examples
///
/// ```
/// use bench::accuracy::read_on;
/// use bench::learned::Learned;
/// use trade::reading::What;
/// use trade::shop::Shop;
///
/// // A machine for loft and lie that nobody has studied is taken to be good to a quarter of a degree.
/// let (shop, learned) = (Shop::default(), Learned::default());
/// let one = read_on(&shop, &learned, What::Lie, 0.0, 1).expect("an angle");
/// assert!((one.band() - 0.25).abs() < 0.01 && one.gauge.is_none());
/// // Four readings take half of the noise away, and nothing of what the machine is off by.
/// let four = read_on(&shop, &learned, What::Lie, 0.0, 4).expect("an angle");
/// assert!(four.band() < one.band() && four.band() > 1.96 * four.offset_sd);
/// assert!(read_on(&shop, &learned, What::HeadMass, 0.0, 1).is_none());
/// ```
#[must_use]
pub fn read_on(shop: &Shop, learned: &Learned, what: What, display_step: f64, readings: i64) -> Option<ReadOn> {
    let (gauge, stated) = shop.gauge_for(what)?;
    let step = display_step.max(gauge.display_step);
    let noise_sd = noise_sd(learned, &gauge.key, gauge.noise_sd).hypot(step / 12f64.sqrt());
    Some(ReadOn { gauge: stated.then_some(gauge.name), noise_sd, offset_sd: gauge.offset_sd, readings })
}

/// The noise of a gauge as learned from repeats, else as stated.
pub(crate) fn noise_sd(learned: &Learned, gauge: &str, stated_sd: f64) -> f64 {
    learned.scatter_sd(&ScatterKey::Noise(gauge.to_owned()).to_string(), stated_sd)
}
