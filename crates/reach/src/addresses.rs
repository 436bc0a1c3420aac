//! The addresses of this machine.

use std::net::{IpAddr, Ipv4Addr, Ipv6Addr, SocketAddr, UdpSocket};

/// The address that this machine would use towards the network: a datagram socket that is only connected sends nothing, and
/// 192.0.2.1 and 2001:db8::1 are addresses for examples (RFC 5737, RFC 3849).
fn own(here: IpAddr, there: IpAddr) -> Option<IpAddr> {
    let socket = UdpSocket::bind((here, 0)).ok()?;
    socket.connect((there, 9)).ok()?;
    let own = socket.local_addr().ok()?.ip();
    (!own.is_unspecified() && !own.is_loopback()).then_some(own)
}

/// The addresses of this machine in its network, that of version 4 first; none without a network.
#[must_use]
pub fn in_the_network() -> Vec<IpAddr> {
    let four = own(Ipv4Addr::UNSPECIFIED.into(), Ipv4Addr::new(192, 0, 2, 1).into());
    let six = own(Ipv6Addr::UNSPECIFIED.into(), Ipv6Addr::new(0x2001, 0xdb8, 0, 0, 0, 0, 0, 1).into());
    [four, six].into_iter().flatten().collect()
}

/// The address to type into a tablet. A server that listens on all addresses of a machine is reached by the one that the
/// machine itself would use towards the network.
#[must_use]
pub fn towards_the_network(listening: SocketAddr) -> SocketAddr {
    if !listening.ip().is_unspecified() {
        return listening;
    }
    let ip = in_the_network().first().copied().unwrap_or(IpAddr::from(Ipv4Addr::LOCALHOST));
    SocketAddr::new(ip, listening.port())
}
