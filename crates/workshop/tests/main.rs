//! The shop from the front desk to the finished club: one program, so that what it is built of is linked once.

mod bench_side;
mod causes;
mod front_desk;
mod health;
mod learning;
mod stock_desk;
