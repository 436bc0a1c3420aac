//! Typed quantities and the notation of the workshop.
//!
//! The types are newtypes over `f64`; a constructor or a getter always names its unit, so that a gram can never be
//! taken for an ounce. [`SwingMoment`] holds what a builder calls swing weight, and [`SwingWeight`] is the same figure on the
//! trade's letter scale.
//!
//! # Examples
//!
//! ```
//! use quantity::{SwingWeight, Length, LengthUnit, Mass, SwingMoment, parse_length};
//!
//! let length = parse_length("36 3/4", LengthUnit::Inch)?;
//! assert_eq!(length.mm(), 933.45);
//! let moment = SwingMoment::of(Mass::from_oz(13.25), Length::from_inch(30.0), Length::from_inch(14.0));
//! assert_eq!(SwingWeight::from(moment).to_string(), "C9.1");
//! # Ok::<(), quantity::NotationError>(())
//! ```

mod angle;
mod frequency;
mod length;
mod mass;
mod notation;
mod rounding;
mod scalar;
mod swing_moment;
mod swing_weight;
mod units;

pub use angle::Angle;
pub use frequency::Frequency;
pub use length::{INCH_MM, Length, LengthUnit};
pub use mass::{GRAIN_G, Mass, MassUnit, OZ_G, POUND_G};
pub use notation::{
    Notation, NotationError, Problem, parse_angle, parse_angle_offset, parse_frequency, parse_length,
    parse_length_offset, parse_mass, parse_mass_offset, parse_swing_weight, parse_swing_weight_offset,
};
pub use rounding::{decimal, round_to};
pub use swing_moment::{A0_OZ_IN, A0_POINTS, FULCRUM_IN, POINT_G_IN, POINT_OZ_IN, SwingMoment};
pub use swing_weight::SwingWeight;
pub use units::Units;
