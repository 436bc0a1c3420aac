//! Lie and loft: what length does to the lie, what a wrong lie does to the aim, and bending within the maker's limit.
//!
//! Definitions (derived): hands at a fixed height, `sin(lie′) = (L − h)·sin(lie)/(L′ − h)` with h from the butt down to
//! the hands; aim error of a lie error `atan(tan(loft)·sin(Δlie))`, toward the heel where it is too upright. Bending the loft
//! by a degree moves the bounce by the same degree, since both turn with the head (common practice, no source).

mod document;
mod kernel;
mod topic;

pub use document::{
    AimInput, AimOutput, BendInput, BendOutput, BendRemark, BendStep, BounceOutput, LengthInput, LengthOutput,
    LieInput, LieOutput,
};
pub use kernel::{aim_error_deg, lie_at_length_deg};
pub use topic::{TOPIC, lie};
