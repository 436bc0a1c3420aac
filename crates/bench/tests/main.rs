//! The bench, from the first reading to what the shop learns: one program, so that what it is built of is linked once.

mod accuracy;
mod bridge;
mod causes;
mod flex;
mod glue;
mod grip_size;
mod learning;
mod meaning;
mod offer;
mod open_points;
mod reach;
mod reference;
mod remedies;
mod scale_shift;
mod scale_watch;
mod set;
mod set_fit;
mod stiffness_profile;
mod swing_inertia;
mod tip_weights;
mod told;
