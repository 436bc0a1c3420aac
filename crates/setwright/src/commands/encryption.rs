//! Encrypted connections and a name in the network, where the settings ask for them.

use crate::config::Settings;
use crate::failure::Failure;
use app::App;
use jiff::Timestamp;
use reach::{Announced, Encrypted, Names, Renewing, Root, Vouched, in_the_network, towards_the_network};
use std::net::SocketAddr;
use std::sync::Arc;
use std::time::Duration;
use tokio::net::TcpListener;

/// How often it is asked whether the certificate is to be renewed: an address that a router has changed is in the certificate after this time.
const RENEW_EVERY: Duration = Duration::from_secs(60);

/// Encrypted connections that are taken.
pub(super) struct Encryption {
    pub listener: Encrypted,
    certificate: Certificate,
    address: SocketAddr,
}

/// Where the certificate is from.
pub(super) struct Certificate {
    /// This machine's own root; none where the shop brought a certificate.
    root: Option<Arc<Root>>,
    shown: Vouched,
    names: Vec<String>,
}

impl Encryption {
    /// Takes encrypted connections of a listener.
    ///
    /// # Errors
    /// A root or certificate that cannot be used.
    pub(super) fn of(listener: TcpListener, settings: &Settings, now: Timestamp) -> Result<Self, Failure> {
        let names = settings.names.list().to_vec();
        let (root, shown) = match &settings.certificate {
            Some((certificate, key)) => (None, Vouched::brought(certificate, key).map_err(Failure::outside)?),
            None => {
                let root = Root::open_or_make(&settings.root_folder, &names, now).map_err(Failure::outside)?;
                let shown = root.vouch(&of_the_day(&names), now).map_err(Failure::outside)?;
                (Some(Arc::new(root)), shown)
            }
        };
        let listener = Encrypted::on(listener, &shown).map_err(Failure::outside)?;
        let address = towards_the_network(listener.local_address());
        Ok(Self { listener, certificate: Certificate { root, shown, names }, address })
    }

    /// What to type into a tablet: the machine's first name, where it has one.
    pub(super) fn address(&self, settings: &Settings) -> String {
        encrypted_address(settings, self.address)
    }

    /// Whether others than this machine reach it.
    pub(super) fn in_network(&self) -> bool {
        !self.listener.local_address().ip().is_loopback()
    }

    /// What the pages tell of it; `plain` is where a tablet that does not trust the machine yet begins.
    pub(super) fn told(&self, plain: Option<String>) -> web::Encryption {
        web::Encryption {
            port: self.address.port(),
            root: self.certificate.root.as_ref().map(|root| (root.der().to_vec(), root.fingerprint())),
            begins_at: plain,
        }
    }

    /// The listener, and what renews its certificate as long as it is awaited.
    pub(super) fn parted(self, app: App) -> (Encrypted, impl Future<Output = ()> + Send + 'static) {
        let renewing = self.listener.renewing();
        (self.listener, renew(self.certificate, renewing, app))
    }
}

/// What to type into a tablet for encrypted connections.
pub(super) fn encrypted_address(settings: &Settings, listening: SocketAddr) -> String {
    let listening = towards_the_network(listening);
    match settings.names.list().first() {
        Some(name) => format!("https://{name}:{}", listening.port()),
        None => format!("https://{listening}"),
    }
}

fn of_the_day(names: &[String]) -> Names {
    Names { names: names.to_vec(), addresses: in_the_network() }
}

async fn renew(mut certificate: Certificate, renewing: Renewing, app: App) {
    let Some(root) = certificate.root else { return };
    let mut turns = tokio::time::interval(RENEW_EVERY);
    loop {
        turns.tick().await;
        let (names, now) = (of_the_day(&certificate.names), app.now());
        if !certificate.shown.is_to_be_renewed(&names, now) {
            continue;
        }
        match root.vouch(&names, now) {
            Ok(vouched) => {
                renewing.show(&vouched);
                certificate.shown = vouched;
                tracing::info!("the certificate was renewed");
            }
            Err(error) => tracing::warn!(?error, "the certificate could not be renewed"),
        }
    }
}

/// Announces the machine's name as long as it is held. Without a network the work goes on: the log says so.
pub(super) fn announced(settings: &Settings, plain: SocketAddr, encrypted: Option<&Encryption>) -> Option<Announced> {
    let name = settings.network_name.as_ref()?;
    let port = encrypted.map_or(plain.port(), |encryption| encryption.address.port());
    match Announced::new(name, port, encrypted.is_some()) {
        Ok(announced) => Some(announced),
        Err(error) => {
            tracing::warn!(?error, "the machine's name is not announced");
            None
        }
    }
}
