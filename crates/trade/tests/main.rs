//! The nouns of the trade: one program, so that what it is built of is linked once.

mod arrival;
mod rules;
