//! Goal: what a page shows is a text of the catalogue, a figure in the reader's units, or what the shop itself entered;
//! nothing else. Method: the demonstration's pages are followed from link to link as a person could, in a made-up
//! language and under each setting of the units, and everything a person can see or hear of them is looked at.

mod allowed;
mod language;
mod page;
mod site;
mod units;

pub use page::Seen;
pub use site::Site;
