//! The bench, from the first reading to what the shop learns: one program, so that what it is built of is linked once.

mod bridge;
mod causes;
mod glue;
mod learning;
mod meaning;
mod offer;
mod reach;
mod reference;
mod remedies;
mod scale_watch;
mod set;
mod tip_weights;
mod told;
