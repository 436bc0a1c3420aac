//! The nouns of the trade and what each must be: models and parts, the fitting sheet, the plan, the steps of a job,
//! readings, scales and the shop. Pure: no I/O, no clock, no randomness; the time is a parameter.
//!
//! Documents that cross the API are plain structs whose numeric fields end in their unit. Lengths are millimetres,
//! masses grams, swing weights points since A0 (so `D2` is 32.0, `D0` is 30.0), angles degrees.

pub mod access;
pub mod action;
pub mod adapter;
pub mod adhesive;
pub mod arrival;
pub mod because;
pub mod caution;
pub mod check_weight;
pub mod clamp;
pub mod club;
pub mod club_name;
pub mod connection;
pub mod customer;
pub mod error;
pub mod event_kind;
pub mod ferrule;
pub mod fit;
pub mod frequency_line;
pub mod gauge;
pub mod grip;
pub mod head;
pub mod id;
pub mod job;
pub mod job_kind;
pub mod kind;
pub mod label_printer;
pub mod life;
pub mod model;
pub mod order;
pub mod part;
pub mod part_codes;
pub mod pendulum;
pub mod places;
pub mod plan;
pub mod plan_weights;
pub mod price;
pub mod reading;
pub mod reading_figure;
pub mod recall;
pub mod rules;
pub mod scale;
pub mod scale_event;
pub mod shaft;
pub mod sheet;
pub mod shop;
pub mod soft_side;
pub mod sole;
pub mod step;
pub mod stiffness_profile;
pub mod swing_weight;
pub mod tape;
pub mod tip_weight;
pub mod trust;
pub mod wrap;

pub use part::field as part_field;
