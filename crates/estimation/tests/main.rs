//! The belief against published figures, other programs and simulation.

mod belief;
mod carry;
mod choice;
mod common;
mod control;
mod doubt;
mod honesty;
mod hypothesis;
mod mixture;
mod published;
mod reference;
mod scatter;
mod share;
mod worth;
