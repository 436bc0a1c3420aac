//! What happens at the bench: what is believed of every club, what a reading means, what may be behind a doubted one,
//! what can still be done, what is worth measuring, the glue, the record and what the shop learns. Pure: no I/O, no
//! clock, no randomness; the time is a parameter.

pub mod accuracy;
mod ahead;
pub mod angle_effect;
pub mod assembly;
pub mod beam;
pub mod belief;
pub mod bend;
pub mod capability;
pub mod cause;
pub mod chance;
mod clock;
pub mod club_state;
pub mod cpm_remedy;
pub mod doubt;
pub mod flex;
pub mod funnel;
pub mod glue;
pub mod grip_size;
pub mod held;
pub mod learned;
pub mod learning;
pub mod ledger;
pub mod meaning;
pub mod offer;
pub mod open_point;
pub mod player_sheet;
pub mod reach;
pub mod record;
pub mod reference;
pub mod remedy;
pub mod scale_shift;
pub mod scale_watch;
pub mod scan;
pub mod seal;
pub mod set_fit;
pub mod soft_side;
pub mod solvent;
pub mod stiffness_profile;
pub mod swing_inertia;
pub mod target;
pub mod today_offset;
pub mod told;
pub mod trim_to_cpm;
pub mod work_order;
pub mod wrap_advice;
