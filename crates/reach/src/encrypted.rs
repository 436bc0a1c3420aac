//! Connections that are encrypted (TLS 1.2 and 1.3: RFC 5246, RFC 8446) before they are handed on.

use crate::certificate::Vouched;
use crate::fault::ReachFault;
use rustls::ServerConfig;
use rustls::crypto::ring;
use rustls::server::{ClientHello, ResolvesServerCert};
use rustls::sign::CertifiedKey;
use std::net::SocketAddr;
use std::sync::{Arc, RwLock};
use std::time::Duration;
use tokio::io::AsyncWriteExt;
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::{Semaphore, mpsc};
use tokio::task::AbortHandle;
use tokio_rustls::TlsAcceptor;
use tokio_rustls::server::TlsStream;

/// An encrypted connection.
pub type Stream = TlsStream<TcpStream>;

/// A tablet agrees within milliseconds; whoever takes longer than this holds a place for nothing.
const AGREED_WITHIN: Duration = Duration::from_secs(10);
/// So many may be agreeing at a time.
const AGREEING: usize = 256;
/// So many may wait to be taken.
const WAITING: usize = 64;
/// After an error of the system, such as too many open files.
const REST: Duration = Duration::from_millis(500);

/// Takes connections, agrees on a key with each beside the others, and hands them on.
pub struct Encrypted {
    agreed: mpsc::Receiver<(Stream, SocketAddr)>,
    local: SocketAddr,
    shown: Arc<Shown>,
    taking: AbortHandle,
}

/// The certificate that is shown, which may be renewed while connections are open.
#[derive(Debug)]
struct Shown(RwLock<Arc<CertifiedKey>>);

impl ResolvesServerCert for Shown {
    fn resolve(&self, _: ClientHello<'_>) -> Option<Arc<CertifiedKey>> {
        self.0.read().ok().map(|key| Arc::clone(&key))
    }
}

/// Lets the certificate of a listener be renewed.
#[derive(Clone)]
pub struct Renewing(Arc<Shown>);

impl Renewing {
    /// Shows another certificate from the next connection on.
    pub fn show(&self, vouched: &Vouched) {
        if let Ok(mut key) = self.0.0.write() {
            *key = Arc::clone(&vouched.key);
        }
    }
}

impl Encrypted {
    /// Takes connections of a listener from now on.
    ///
    /// # Errors
    /// A certificate that cannot be used; what the system says of the listener.
    pub fn on(listener: TcpListener, vouched: &Vouched) -> Result<Self, ReachFault> {
        let unusable = |log: String| ReachFault::Unusable { log };
        let local = listener.local_addr().map_err(|e| unusable(e.to_string()))?;
        let shown = Arc::new(Shown(RwLock::new(Arc::clone(&vouched.key))));
        let mut config = ServerConfig::builder_with_provider(Arc::new(ring::default_provider()))
            .with_safe_default_protocol_versions()
            .map_err(|e| unusable(e.to_string()))?
            .with_no_client_auth()
            .with_cert_resolver(Arc::clone(&shown) as Arc<dyn ResolvesServerCert>);
        config.alpn_protocols = vec![b"http/1.1".to_vec()];
        let (hand_on, agreed) = mpsc::channel(WAITING);
        let taking = tokio::spawn(take(listener, TlsAcceptor::from(Arc::new(config)), hand_on)).abort_handle();
        Ok(Self { agreed, local, shown, taking })
    }

    /// The next connection that agreed on a key.
    pub async fn accept(&mut self) -> (Stream, SocketAddr) {
        match self.agreed.recv().await {
            Some(next) => next,
            // The task that takes connections ends with the runtime only.
            None => std::future::pending().await,
        }
    }

    /// Where it listens.
    #[must_use]
    pub const fn local_address(&self) -> SocketAddr {
        self.local
    }

    /// By which its certificate is renewed.
    #[must_use]
    pub fn renewing(&self) -> Renewing {
        Renewing(Arc::clone(&self.shown))
    }
}

impl Drop for Encrypted {
    fn drop(&mut self) {
        self.taking.abort();
    }
}

async fn take(listener: TcpListener, acceptor: TlsAcceptor, hand_on: mpsc::Sender<(Stream, SocketAddr)>) {
    let places = Arc::new(Semaphore::new(AGREEING));
    loop {
        let Ok(place) = Arc::clone(&places).acquire_owned().await else { return };
        let (stream, from) = match listener.accept().await {
            Ok(taken) => taken,
            Err(error) => {
                tracing::debug!(%error, "a connection could not be taken");
                tokio::time::sleep(REST).await;
                continue;
            }
        };
        let (acceptor, hand_on) = (acceptor.clone(), hand_on.clone());
        tokio::spawn(async move {
            let agreed = tokio::time::timeout(AGREED_WITHIN, agree(stream, acceptor)).await;
            // Only agreeing is bounded: an open page keeps its connection for hours.
            drop(place);
            if let Ok(Some(stream)) = agreed {
                let _ = hand_on.send((stream, from)).await;
            }
        });
    }
}

/// The first byte of a connection that wants to be encrypted: the record of a handshake (RFC 8446 5.1).
const HANDSHAKE: u8 = 0x16;

/// What is answered to an address that was typed without its `s`. No browser has shown words of this program before the
/// connection stands, so that they are the same in all languages.
const PLAIN: &[u8] =
    b"HTTP/1.1 400 Bad Request\r\nContent-Type: text/plain; charset=utf-8\r\nConnection: close\r\n\r\n\
                       This address is encrypted: write https:// before it.\n";

async fn agree(mut stream: TcpStream, acceptor: TlsAcceptor) -> Option<Stream> {
    let mut first = [0];
    if stream.peek(&mut first).await.ok()? == 1 && first[0] != HANDSHAKE {
        let _ = stream.write_all(PLAIN).await;
        let _ = stream.shutdown().await;
        return None;
    }
    match acceptor.accept(stream).await {
        Ok(stream) => Some(stream),
        Err(error) => {
            tracing::debug!(%error, "no key was agreed on");
            None
        }
    }
}
