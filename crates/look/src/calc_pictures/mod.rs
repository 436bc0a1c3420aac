//! Pictures of the calculations: one small drawing a topic, each made twice from one geometry, for wide and for narrow
//! places. What a line or a mark means stands beside it as text; colours only repeat what the dashes and forms say.

mod around;
mod axes;
mod bend;
mod glue;
mod grip;
mod lie;
mod modes;
mod pivot;
mod profile;
mod recording;
mod shaft;

pub use around::{AroundView, around};
pub use bend::{BendView, bend};
pub use glue::{CureLine, CureView, JointView, cure, joint};
pub use grip::{GripPlace, GripView, grip};
pub use lie::{AimView, LieView, aim, lie};
pub use modes::{ModesView, modes};
pub use pivot::{PivotPart, PivotView, SeriesView, pivot, series};
pub use profile::{ProfilePlace, ProfileView, profile};
pub use recording::{PlaneView, RecordingView, recording};
pub use shaft::{FinishView, ShaftView, shaft};

#[cfg(test)]
mod tests;
