//! What happens at the desk, before and beside the bench: the short sheet, the check of a sheet, the plan, lists of parts
//! in and out, orders and needs, the weigh-in, weight classes, and whether the scales may be relied on. Pure: no I/O, no
//! clock, no randomness; the time is a parameter.

pub mod ask;
pub mod calendar;
pub mod club_csv;
pub mod club_work;
pub mod label;
pub mod ledger_csv;
pub mod mass_model;
pub mod match_set;
pub mod needs;
pub mod order;
pub mod planner;
pub mod quote;
pub mod recall;
pub mod same_again;
pub mod scale_health;
pub mod sheet_check;
pub mod short_sheet;
pub mod stock_csv;
pub mod stock_file;
pub mod weigh_in;
pub mod weight_class;
