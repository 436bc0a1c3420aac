//! How tablets reach this machine.

use super::encryption::encrypted_address;
use super::{print_json, reader, say};
use crate::config::{Serve, Which};
use crate::failure::{CommandFault, Failure};
use jiff::Timestamp;
use reach::{Root, towards_the_network};
use serde::Serialize;
use std::net::SocketAddr;
use words::text;

/// The addresses of this machine as the settings have them.
#[derive(Debug, Serialize)]
struct Reached {
    /// To type into a tablet; none where only this machine itself reaches the bench.
    address: Option<String>,
    /// Where a tablet begins that is to trust this machine's own root; none without one.
    trust_address: Option<String>,
    /// SHA-256 of the root, as the tablet shows it; none without a root, or before the bench was opened once.
    root_sha256: Option<String>,
    /// Whether connections from the network are encrypted.
    encrypted: bool,
}

/// Tells how tablets reach this machine, with a picture to point a camera at.
///
/// # Errors
/// Settings that cannot be read; a root that cannot be.
pub fn reach(arguments: &Serve) -> Result<(), Failure> {
    let settings = arguments.settings(Which::Shop)?;
    let place = |place: &str| -> Result<Option<SocketAddr>, Failure> {
        let unknown = |log: String| Failure::outside(CommandFault::ListenUnknown { place: place.to_owned(), log });
        let found = std::net::ToSocketAddrs::to_socket_addrs(place).map_err(|e| unknown(e.to_string()))?;
        Ok(found.map(towards_the_network).find(|found| !found.ip().is_loopback()))
    };
    let plain = place(&settings.listen)?.map(|address| format!("http://{address}"));
    let encrypted = settings.https.as_deref().map(place).transpose()?.flatten();
    let own_root = encrypted.is_some() && settings.certificate.is_none();
    let root = match own_root {
        true => Root::found(&settings.root_folder, Timestamp::now()).map_err(Failure::outside)?,
        false => None,
    };
    let reached = Reached {
        address: encrypted.map(|address| encrypted_address(&settings, address)).or_else(|| plain.clone()),
        trust_address: plain.filter(|_| own_root),
        root_sha256: root.map(|root| root.fingerprint()),
        encrypted: encrypted.is_some(),
    };
    if arguments.database.json {
        return print_json(&reached);
    }
    let w = reader();
    let Some(address) = &reached.address else { return say(&(w.text("reach-only-here") + "\n")) };
    let first = reached.trust_address.as_ref().unwrap_or(address);
    let mut lines = vec![text!(w, "keys-address", address = address.clone())];
    if let Some(trust) = &reached.trust_address {
        lines.push(text!(w, "keys-trust-about", address = trust.clone()));
    }
    if let Some(sum) = &reached.root_sha256 {
        lines.push(w.text("trust-figures"));
        lines.push(sum.clone());
    }
    if !reached.encrypted {
        lines.push(w.text("keys-not-encrypted"));
    }
    lines.push(look::qr_in_terminal(first));
    say(&(lines.join("\n") + "\n"))
}
