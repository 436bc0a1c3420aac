//! A name in the local network, without a server of names: multicast DNS (RFC 6762) and its list of services (RFC 6763).

use crate::fault::ReachFault;
use mdns_sd::{DaemonEvent, ServiceDaemon, ServiceInfo};

/// A name that is announced until this is dropped.
pub struct Announced {
    daemon: ServiceDaemon,
}

impl Announced {
    /// Announces `name.local` for all addresses of this machine, now and later, with a service of the web on a port.
    ///
    /// # Errors
    /// A name that is not valid; a network that cannot be reached.
    pub fn new(name: &str, port: u16, encrypted: bool) -> Result<Self, ReachFault> {
        let fault = |log: mdns_sd::Error| ReachFault::Announce { name: format!("{name}.local"), log: log.to_string() };
        let kind = if encrypted { "_https._tcp.local." } else { "_http._tcp.local." };
        let service = ServiceInfo::new(kind, name, &format!("{name}.local."), "", port, None).map_err(fault)?;
        let daemon = ServiceDaemon::new().map_err(fault)?;
        let events = daemon.monitor().map_err(fault)?;
        daemon.register(service.enable_addr_auto()).map_err(fault)?;
        std::thread::Builder::new()
            .name("network name".into())
            .spawn(move || {
                while let Ok(event) = events.recv() {
                    match event {
                        // Another machine of the network has it already.
                        DaemonEvent::NameChange(change) => {
                            tracing::warn!(
                                wanted = change.original,
                                is = change.new_name,
                                "the name in the network is taken"
                            );
                        }
                        DaemonEvent::Error(error) => tracing::debug!(%error, "announcing the name"),
                        _ => {}
                    }
                }
            })
            .map_err(|e| ReachFault::Announce { name: format!("{name}.local"), log: e.to_string() })?;
        Ok(Self { daemon })
    }
}

impl Drop for Announced {
    fn drop(&mut self) {
        let _ = self.daemon.shutdown();
    }
}
