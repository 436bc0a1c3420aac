//! Quantities as they are typed and printed.

mod letters;
mod notation;
mod round_trip;
mod units;
