//! The calculations against what is known of them from outside.

mod bad_input;
mod cups;
mod deviations_are_complete;
mod draws;
mod elements;
mod fraction;
mod plausible;
mod pluck;
mod soft_side;
mod spoken;
mod stiffness_profile;
mod topics;
mod val_glue;
mod val_grip_size;
mod val_inertia;
mod val_lie;
mod val_swing_weight;
mod val_topics_by_simulation;
mod val_trim;
mod val_uncertainty;
mod vibration;
mod vibration_clamped;
mod vibration_close_rows;
mod vibration_topics;

/// A refusal in the words of a program's answers: millimetres and grams, as in the names of the fields.
fn told(error: &clubphysics::PhysicsError) -> String {
    words::check::InWords::in_words(error.clone())
}

/// The field of a refusal, or what it says where it has none.
fn field(error: &clubphysics::PhysicsError) -> String {
    error.field().map_or_else(|| told(error), str::to_owned)
}
