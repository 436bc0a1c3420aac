//! Orders as the desk uses them: what to order for a job, and what a job waits for. The order itself is
//! [`trade::order`].

mod parts;
mod say;
mod wanted;

pub use parts::PartCount;
pub use say::{Expected, Wait, Waiting, waiting};
pub use wanted::{Wanted, for_job, wanted};
pub(crate) use wanted::{adapter_of, blank_number};
