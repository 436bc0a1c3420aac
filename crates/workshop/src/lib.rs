//! The trade's nouns and what follows from them: models and parts, the fitting sheet, the plan, the steps of the
//! bench, readings, the adhesive batch and the record. Pure: no I/O, no clock, no randomness; the time is a parameter.
//!
//! Documents that cross the API are plain structs whose numeric fields end in their unit. Lengths are millimetres,
//! masses grams, swing weights points since A0 (so `D2` is 32.0, `D0` is 30.0), angles degrees.

pub mod ask;
pub mod assembly;
pub mod beam;
pub mod belief;
pub mod bench;
pub mod capability;
pub mod cause;
pub mod caution;
pub mod connection;
pub mod demo;
pub mod error;
pub mod fit;
pub mod funnel;
pub mod glue;
pub mod health;
pub mod id;
pub mod job;
pub mod kind;
pub mod learned;
pub mod life;
pub mod measure;
pub mod model;
pub mod needs;
pub mod open_point;
pub mod order;
pub mod part;
mod places;
pub mod plan;
pub mod planner;
pub mod reading;
pub mod record;
pub mod remedy;
pub mod rules;
pub mod scan;
pub mod sheet;
pub mod shop;
pub mod sorting;
pub mod step;
pub mod stock_csv;
pub mod stock_file;
pub mod target;
mod tip_weight;
pub mod weigh_in;

pub use error::WorkshopError;
