//! Goal: a tablet that trusts this machine's root, and only such a one, gets an encrypted connection by every name and address that
//! it is reached by; the root is valid for nothing else; what goes wrong is told.
//! Method: real connections over loopback; the other side is rustls with its own checks of certificates (RFC 5280 by webpki), told
//! to trust the root's certificate and nothing else.

use jiff::{SignedDuration, Timestamp};
use reach::{Announced, Encrypted, Names, ReachFault, Root, Vouched};
use rustls::pki_types::{CertificateDer, ServerName};
use rustls::{ClientConfig, RootCertStore};
use std::net::{IpAddr, SocketAddr};
use std::path::Path;
use std::sync::Arc;
use std::time::Duration;
use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::{TcpListener, TcpStream};
use tokio_rustls::TlsConnector;

fn now() -> Timestamp {
    Timestamp::now()
}

fn names(names: &[&str]) -> Names {
    Names {
        names: names.iter().map(|name| (*name).to_owned()).collect(),
        addresses: vec!["192.168.1.20".parse().unwrap()],
    }
}

fn root(folder: &Path, further: &[&str]) -> Root {
    let further: Vec<String> = further.iter().map(|name| (*name).to_owned()).collect();
    Root::open_or_make(&folder.join("tls"), &further, now()).unwrap()
}

/// Serves connections that say what was said to them, in capital letters.
async fn echo(vouched: &Vouched) -> (SocketAddr, reach::Renewing) {
    let mut encrypted = Encrypted::on(TcpListener::bind("127.0.0.1:0").await.unwrap(), vouched).unwrap();
    let (address, renewing) = (encrypted.local_address(), encrypted.renewing());
    tokio::spawn(async move {
        loop {
            let (mut stream, _) = encrypted.accept().await;
            tokio::spawn(async move {
                let mut said = [0; 5];
                if stream.read_exact(&mut said).await.is_ok() {
                    let _ = stream.write_all(&said.to_ascii_uppercase()).await;
                    let _ = stream.shutdown().await;
                }
            });
        }
    });
    (address, renewing)
}

/// What a tablet that trusts a root hears, reaching the machine by a name.
async fn ask(root: &[u8], name: &str, at: SocketAddr) -> Result<String, String> {
    let mut trusted = RootCertStore::empty();
    trusted.add(CertificateDer::from(root.to_vec())).unwrap();
    let config = ClientConfig::builder_with_provider(Arc::new(rustls::crypto::ring::default_provider()))
        .with_safe_default_protocol_versions()
        .unwrap()
        .with_root_certificates(trusted)
        .with_no_client_auth();
    let name = ServerName::try_from(name.to_owned()).unwrap();
    let stream = TcpStream::connect(at).await.unwrap();
    let mut stream = TlsConnector::from(Arc::new(config)).connect(name, stream).await.map_err(|e| e.to_string())?;
    stream.write_all(b"hello").await.map_err(|e| e.to_string())?;
    let mut heard = String::new();
    stream.read_to_string(&mut heard).await.map_err(|e| e.to_string())?;
    Ok(heard)
}

#[tokio::test]
async fn a_tablet_that_trusts_the_root_comes_in_by_every_name_of_the_machine_and_by_no_other() {
    let folder = tempfile::tempdir().unwrap();
    let root = root(folder.path(), &["bench.shop.example"]);
    let vouched = root.vouch(&names(&["bench.local", "bench.shop.example"]), now()).unwrap();
    let (at, _) = echo(&vouched).await;
    for name in ["bench.local", "bench.shop.example", "localhost", "127.0.0.1", "::1", "192.168.1.20"] {
        assert_eq!(ask(root.der(), name, at).await.as_deref(), Ok("HELLO"), "{name}");
    }
    for other in ["other.local", "shop.example", "192.168.1.21"] {
        let refused = ask(root.der(), other, at).await.unwrap_err();
        assert!(refused.contains("not valid for name"), "{other}: {refused}");
    }
    // Another machine's root is no reason to trust this one.
    let elsewhere = tempfile::tempdir().unwrap();
    let other = self::root(elsewhere.path(), &[]);
    assert!(ask(other.der(), "bench.local", at).await.unwrap_err().contains("UnknownIssuer"));
}

#[tokio::test]
async fn the_root_is_made_once_and_only_its_owner_reads_it() {
    let folder = tempfile::tempdir().unwrap();
    assert!(Root::found(&folder.path().join("tls"), now()).unwrap().is_none());
    let first = root(folder.path(), &[]);
    let again = root(folder.path(), &["later.example"]);
    assert_eq!((first.der(), first.fingerprint()), (again.der(), again.fingerprint()));
    assert_eq!(first.fingerprint().split(':').count(), 32);
    // A certificate of either is good under the root that tablets took.
    let (at, _) = echo(&again.vouch(&names(&["bench.local"]), now()).unwrap()).await;
    assert_eq!(ask(first.der(), "bench.local", at).await.as_deref(), Ok("HELLO"));
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        let mode = |path: &str| std::fs::metadata(folder.path().join(path)).unwrap().permissions().mode() & 0o777;
        assert_eq!((mode("tls"), mode("tls/root.key")), (0o700, 0o600));
    }
}

/// Whoever steals the root's key cannot pose as anybody outside the shop: browsers hold a root to the names in it.
#[tokio::test]
async fn the_root_speaks_for_a_local_network_and_its_own_names_alone() {
    let folder = tempfile::tempdir().unwrap();
    let root = root(folder.path(), &["bench.shop.example"]);
    for name in ["bank.example", "bench.shop.example.bank.example", "mybench.shop.example", "alocal"] {
        let refused = root.vouch(&names(&[name]), now()).err().unwrap();
        assert!(matches!(&refused, ReachFault::NotCovered { name: said, .. } if said == name), "{refused:?}");
    }
    let key = rcgen::KeyPair::from_pem(&std::fs::read_to_string(folder.path().join("tls/root.key")).unwrap()).unwrap();
    let forged = |name: &str| {
        // The root's own name, as its holder reads it off the certificate.
        let digest =
            sha2::Digest::finalize(sha2::Digest::chain_update(<sha2::Sha256 as sha2::Digest>::new(), key_of(&key)));
        let mut of_root = rcgen::CertificateParams::default();
        of_root.distinguished_name = rcgen::DistinguishedName::new();
        let own = format!("Setwright bench {:02x}{:02x}{:02x}{:02x}", digest[0], digest[1], digest[2], digest[3]);
        of_root.distinguished_name.push(rcgen::DnType::CommonName, own);
        let own = rcgen::KeyPair::generate().unwrap();
        let leaf = rcgen::CertificateParams::new([name.to_owned()]).unwrap();
        let leaf = leaf.signed_by(&own, &rcgen::Issuer::from_params(&of_root, &key)).unwrap();
        let (certificate, secret) = (folder.path().join("forged.pem"), folder.path().join("forged.key"));
        std::fs::write(&certificate, leaf.pem()).unwrap();
        std::fs::write(&secret, own.serialize_pem()).unwrap();
        Vouched::brought(&certificate, &secret).unwrap()
    };
    let (at, _) = echo(&forged("other.local")).await;
    assert_eq!(ask(root.der(), "other.local", at).await.as_deref(), Ok("HELLO"), "the forger has the key");
    for name in ["bank.example", "8.8.8.8"] {
        let (at, _) = echo(&forged(name)).await;
        let refused = ask(root.der(), name, at).await.unwrap_err();
        assert!(refused.contains("NameConstraint"), "{name}: {refused}");
    }
}

fn key_of(key: &rcgen::KeyPair) -> Vec<u8> {
    key.public_key_raw().to_vec()
}

#[tokio::test]
async fn a_certificate_is_renewed_before_it_ends_and_when_the_machine_moves() {
    let folder = tempfile::tempdir().unwrap();
    let root = root(folder.path(), &[]);
    let here = names(&["bench.local"]);
    let vouched = root.vouch(&here, now()).unwrap();
    let later = |days: i64| now() + SignedDuration::from_hours(24 * days);
    assert!(!vouched.is_to_be_renewed(&here, later(364)));
    assert!(vouched.is_to_be_renewed(&here, later(367)));
    let moved = Names { addresses: vec!["192.168.1.77".parse::<IpAddr>().unwrap()], ..here.clone() };
    assert!(vouched.is_to_be_renewed(&moved, now()));
    // A page that is open stays open; the next connection is shown the new one.
    let (at, renewing) = echo(&vouched).await;
    assert!(ask(root.der(), "192.168.1.77", at).await.is_err());
    renewing.show(&root.vouch(&moved, now()).unwrap());
    assert_eq!(ask(root.der(), "192.168.1.77", at).await.as_deref(), Ok("HELLO"));
    // What the shop brought is its own to renew.
    assert!(!Vouched { ends: None, ..vouched }.is_to_be_renewed(&moved, later(4000)));
    // An address of the public internet is left out, since the root is not valid for it.
    let public = Names { addresses: vec!["203.0.113.9".parse().unwrap()], ..here };
    let (at, _) = echo(&root.vouch(&public, now()).unwrap()).await;
    assert!(ask(root.der(), "203.0.113.9", at).await.is_err());
    assert_eq!(ask(root.der(), "bench.local", at).await.as_deref(), Ok("HELLO"));
}

/// Who never agrees on a key, and who forgot the `s`, keep nobody else waiting.
#[tokio::test]
async fn slow_and_plain_connections_hinder_no_other() {
    let folder = tempfile::tempdir().unwrap();
    let root = root(folder.path(), &[]);
    let (at, _) = echo(&root.vouch(&names(&[]), now()).unwrap()).await;
    let mut silent = Vec::new();
    for _ in 0..100 {
        silent.push(TcpStream::connect(at).await.unwrap());
    }
    let heard = tokio::time::timeout(Duration::from_secs(5), ask(root.der(), "localhost", at)).await;
    assert_eq!(heard.expect("in time").as_deref(), Ok("HELLO"));
    let mut plain = TcpStream::connect(at).await.unwrap();
    plain.write_all(b"GET / HTTP/1.1\r\nHost: bench.local\r\n\r\n").await.unwrap();
    let mut heard = String::new();
    let _ = plain.read_to_string(&mut heard).await;
    assert!(heard.starts_with("HTTP/1.1 400") && heard.contains("write https:// before it"), "{heard}");
    drop(silent);
}

#[test]
fn half_a_root_and_files_of_another_sort_are_named() {
    let folder = tempfile::tempdir().unwrap();
    let tls = folder.path().join("tls");
    let told = |fault: &ReachFault| words::Words::english(quantity::Units::default()).tell(fault);
    root(folder.path(), &[]);
    let (certificate, key) = (tls.join("root.pem"), tls.join("root.key"));
    let good = std::fs::read(&key).unwrap();
    std::fs::write(&key, "no key at all").unwrap();
    let fault = Root::open_or_make(&tls, &[], now()).err().unwrap();
    assert!(matches!(&fault, ReachFault::NotReadable { path, .. } if path.ends_with("root.key")), "{}", told(&fault));
    std::fs::remove_file(&key).unwrap();
    let fault = Root::open_or_make(&tls, &[], now()).err().unwrap();
    assert!(matches!(&fault, ReachFault::HalfARoot { path } if path.ends_with("root.key")), "{}", told(&fault));
    assert!(
        told(&fault).contains("half of this machine’s root is missing")
            || told(&fault).contains("half of this machine's root")
    );
    // Nothing was made over what was there.
    assert!(certificate.exists() && !key.exists());
    std::fs::write(&key, good).unwrap();
    assert!(Root::open_or_make(&tls, &[], now()).is_ok());
    // A certificate with the key of another.
    let elsewhere = tempfile::tempdir().unwrap();
    root(elsewhere.path(), &[]);
    let fault = Vouched::brought(&certificate, &elsewhere.path().join("tls/root.key")).err().unwrap();
    assert!(matches!(fault, ReachFault::Unusable { .. }), "{fault:?}");
    let fault = Vouched::brought(&tls.join("none.pem"), &key).err().unwrap();
    assert!(matches!(fault, ReachFault::File { .. }), "{fault:?}");
    let fault = Vouched::brought(&key, &key).err().unwrap();
    assert!(matches!(fault, ReachFault::NotReadable { .. }), "{fault:?}");
}

/// The name is found by another voice on the same network, as a tablet asks for it (RFC 6762).
#[test]
fn the_name_is_found_in_the_network() {
    let name = format!("bench-{}", std::process::id());
    let _announced = Announced::new(&name, 7443, true).expect("announced");
    let asking = mdns_sd::ServiceDaemon::new().expect("a voice");
    let heard = asking.browse("_https._tcp.local.").expect("asked");
    let wanted = format!("{name}.local.");
    let end = std::time::Instant::now() + Duration::from_secs(20);
    while std::time::Instant::now() < end {
        if let Ok(mdns_sd::ServiceEvent::ServiceResolved(found)) = heard.recv_timeout(Duration::from_secs(1))
            && found.host == wanted
        {
            assert_eq!(found.port, 7443);
            assert!(!found.addresses.is_empty());
            return;
        }
    }
    panic!("{wanted} was not found");
}
