//! How the tablets of a shop reach this machine: certificates from a root of its own, encrypted connections, and a name in the
//! network.
//!
//! A browser gives camera, notifications and work without network only to pages that came encrypted (W3C Secure Contexts). A shop
//! has no name in the public internet that an authority could vouch for, so that this machine vouches for itself: it makes a root
//! once, which each tablet is told to trust, and certificates from it for its names and addresses of the day.

mod addresses;
mod announce;
mod certificate;
mod encrypted;
mod fault;

pub use addresses::{in_the_network, towards_the_network};
pub use announce::Announced;
pub use certificate::{Names, Root, Vouched};
pub use encrypted::{Encrypted, Renewing, Stream};
pub use fault::ReachFault;
