//! All tests of the crate from outside, one program.

mod assignment;
mod behaviour;
mod exhaustive;
mod families;
mod linear;
