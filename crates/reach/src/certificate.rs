//! The machine's own root, and certificates from it.

use crate::fault::ReachFault;
use jiff::{SignedDuration, Timestamp, tz::TimeZone};
use rcgen::{
    BasicConstraints, CertificateParams, CidrSubnet, DistinguishedName, DnType, ExtendedKeyUsagePurpose,
    GeneralSubtree, IsCa, Issuer, KeyPair, KeyUsagePurpose, NameConstraints, PKCS_ECDSA_P256_SHA256, SanType,
    date_time_ymd,
};
use rustls::crypto::ring;
use rustls::pki_types::pem::PemObject;
use rustls::pki_types::{CertificateDer, PrivateKeyDer, PrivatePkcs8KeyDer};
use rustls::sign::CertifiedKey;
use sha2::{Digest, Sha256};
use std::fmt::Write as _;
use std::fs::OpenOptions;
use std::io::Write;
use std::net::{IpAddr, Ipv4Addr, Ipv6Addr};
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// The root lasts ten years: whoever set the shop up once shall not do it again with each new tablet (a judgement).
const ROOT_YEARS: i16 = 10;
/// A certificate from it lasts 397 days, as long as browsers take (CA/Browser Forum Baseline Requirements 6.3.2, from
/// memory).
const LEAF: SignedDuration = SignedDuration::from_hours(396 * 24);
/// A new one is made when less is left of it.
const RENEWED: SignedDuration = SignedDuration::from_hours(30 * 24);
/// Made valid a day before, since the clocks of tablets differ.
const EARLIER: SignedDuration = SignedDuration::from_hours(24);

/// Ends of names that no public authority gives out: for machines of a local network (RFC 6762, RFC 8375; `internal` is reserved
/// for private use by ICANN; `lan` is common in home routers, common practice, no source).
const LOCAL_ENDS: [&str; 5] = ["local", "localhost", "home.arpa", "internal", "lan"];

/// Name of the root's certificate, its key and its further names, in its folder.
const ROOT_FILE: &str = "root.pem";
const KEY_FILE: &str = "root.key";
const NAMES_FILE: &str = "root.names";

/// The names and addresses in a certificate.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Names {
    /// Names of the machine, in small letters.
    pub names: Vec<String>,
    /// Its addresses in the network. `localhost` and the machine's own loopback addresses are always in the certificate as well.
    pub addresses: Vec<IpAddr>,
}

/// The machine's own root.
///
/// It is valid only for machines of a local network and for the names that it was made with (RFC 5280 4.2.1.10), so a stolen one
/// lets nobody pose as a bank.
pub struct Root {
    folder: PathBuf,
    certificate: CertificateDer<'static>,
    key: KeyPair,
    /// Names outside a local network that it is valid for.
    further: Vec<String>,
}

/// A certificate with its key, and until when it is good.
#[derive(Clone)]
pub struct Vouched {
    /// What connections are encrypted with.
    pub key: Arc<CertifiedKey>,
    /// The names and addresses in it.
    pub names: Names,
    /// When it ends; none for one that the shop brought itself.
    pub ends: Option<Timestamp>,
}

impl Vouched {
    /// Whether another is to be made: it ends within a month, or the machine has other addresses by now. One that the shop
    /// brought is its own.
    #[must_use]
    pub fn is_to_be_renewed(&self, names: &Names, now: Timestamp) -> bool {
        self.ends
            .is_some_and(|ends| now.saturating_add(RENEWED).map_or(true, |soon| soon >= ends) || self.names != *names)
    }

    /// A certificate that the shop brought, with those between it and its root, and its key, each in a PEM file.
    ///
    /// # Errors
    /// Files that cannot be read, that hold something else, or that do not belong together.
    pub fn brought(certificate: &Path, key: &Path) -> Result<Self, ReachFault> {
        let chain: Vec<CertificateDer<'static>> = CertificateDer::pem_slice_iter(&read(certificate)?)
            .collect::<Result<_, _>>()
            .map_err(|e| not_readable(certificate, &e))?;
        if chain.is_empty() {
            return Err(not_readable(certificate, &"no certificate"));
        }
        let secret = PrivateKeyDer::from_pem_slice(&read(key)?).map_err(|e| not_readable(key, &e))?;
        Ok(Self { key: certified(chain, secret)?, names: Names::default(), ends: None })
    }
}

impl Root {
    /// Reads the root in a folder. Where there is none, makes one, and the folder too.
    ///
    /// # Errors
    /// A folder that cannot be written to; half a root; files that hold something else.
    pub fn open_or_make(folder: &Path, names: &[String], now: Timestamp) -> Result<Self, ReachFault> {
        let (root, key) = (folder.join(ROOT_FILE), folder.join(KEY_FILE));
        match (root.exists(), key.exists()) {
            (true, true) => Self::open(folder),
            (false, false) => Self::make(folder, names, now),
            (true, false) => Err(ReachFault::HalfARoot { path: key.display().to_string() }),
            (false, true) => Err(ReachFault::HalfARoot { path: root.display().to_string() }),
        }
    }

    /// Reads the root in a folder; none if the folder has none.
    ///
    /// # Errors
    /// As [`open_or_make`](Self::open_or_make).
    pub fn found(folder: &Path, now: Timestamp) -> Result<Option<Self>, ReachFault> {
        let any = [ROOT_FILE, KEY_FILE].iter().any(|file| folder.join(file).exists());
        any.then(|| Self::open_or_make(folder, &[], now)).transpose()
    }

    fn open(folder: &Path) -> Result<Self, ReachFault> {
        let (root, secret, further) = (folder.join(ROOT_FILE), folder.join(KEY_FILE), folder.join(NAMES_FILE));
        let certificate = CertificateDer::from_pem_slice(&read(&root)?).map_err(|e| not_readable(&root, &e))?;
        let text = String::from_utf8(read(&secret)?).map_err(|e| not_readable(&secret, &e))?;
        let key = KeyPair::from_pem(&text).map_err(|e| not_readable(&secret, &e))?;
        let further = match std::fs::read_to_string(&further) {
            Ok(text) => text.lines().map(str::to_owned).collect(),
            Err(e) if e.kind() == std::io::ErrorKind::NotFound => Vec::new(),
            Err(e) => return Err(file(&further, &e)),
        };
        Ok(Self { folder: folder.to_owned(), certificate, key, further })
    }

    fn make(folder: &Path, names: &[String], now: Timestamp) -> Result<Self, ReachFault> {
        let further: Vec<String> = names.iter().filter(|name| !is_local(name)).cloned().collect();
        let key = KeyPair::generate_for(&PKCS_ECDSA_P256_SHA256).map_err(|e| unusable(&e))?;
        let mut params = CertificateParams::default();
        lasting(&mut params, day_of(now - EARLIER, 0), day_of(now, ROOT_YEARS));
        params.distinguished_name = name_of(&key);
        params.is_ca = IsCa::Ca(BasicConstraints::Constrained(0));
        params.key_usages = vec![KeyUsagePurpose::KeyCertSign, KeyUsagePurpose::CrlSign];
        let names =
            LOCAL_ENDS.map(str::to_owned).into_iter().chain(further.iter().cloned()).map(GeneralSubtree::DnsName);
        params.name_constraints = Some(NameConstraints {
            permitted_subtrees: names.chain(local_addresses().map(GeneralSubtree::IpAddress)).collect(),
            excluded_subtrees: Vec::new(),
        });
        let certificate = params.self_signed(&key).map_err(|e| unusable(&e))?;
        private_folder(folder)?;
        // The key first: with the certificate alone a start would say that half is missing, and the root would be lost as well.
        write_new(&folder.join(KEY_FILE), key.serialize_pem().as_bytes())?;
        write_new(&folder.join(NAMES_FILE), further.join("\n").as_bytes())?;
        write_new(&folder.join(ROOT_FILE), certificate.pem().as_bytes())?;
        Ok(Self { folder: folder.to_owned(), certificate: certificate.der().clone(), key, further })
    }

    /// The root's certificate as tablets take it: DER (ITU-T X.690).
    #[must_use]
    pub fn der(&self) -> &[u8] {
        &self.certificate
    }

    /// SHA-256 of the certificate, by which a person tells on a tablet that it is this one: hexadecimal digits in pairs.
    #[must_use]
    pub fn fingerprint(&self) -> String {
        let digest = Sha256::digest(&self.certificate);
        digest.iter().enumerate().fold(String::new(), |mut text, (i, byte)| {
            let _ = write!(text, "{}{byte:02X}", if i == 0 { "" } else { ":" });
            text
        })
    }

    /// A certificate for the names and addresses of the machine. An address outside a local network is left out: the root is
    /// not valid for it.
    ///
    /// # Errors
    /// A name that the root is not valid for.
    pub fn vouch(&self, names: &Names, now: Timestamp) -> Result<Vouched, ReachFault> {
        if let Some(name) = names.names.iter().find(|name| !self.covers(name)) {
            return Err(ReachFault::NotCovered { name: name.clone(), folder: self.folder.display().to_string() });
        }
        let key = KeyPair::generate_for(&PKCS_ECDSA_P256_SHA256).map_err(|e| unusable(&e))?;
        let spoken_for: Vec<&str> = names.names.iter().map(String::as_str).chain(["localhost"]).collect();
        let addresses = names.addresses.iter().filter(|ip| is_local_address(**ip)).copied();
        let addresses = addresses.chain([Ipv4Addr::LOCALHOST.into(), Ipv6Addr::LOCALHOST.into()]);
        let mut params = CertificateParams::default();
        let ends = now + LEAF;
        lasting(&mut params, day_of(now - EARLIER, 0), day_of(ends, 0));
        params.distinguished_name = DistinguishedName::new();
        params.distinguished_name.push(DnType::CommonName, spoken_for[0]);
        params.subject_alt_names = spoken_for
            .iter()
            .map(|name| (*name).try_into().map(SanType::DnsName).map_err(|e| unusable(&e)))
            .collect::<Result<_, _>>()?;
        params.subject_alt_names.extend(addresses.map(SanType::IpAddress));
        params.key_usages = vec![KeyUsagePurpose::DigitalSignature];
        params.extended_key_usages = vec![ExtendedKeyUsagePurpose::ServerAuth];
        params.use_authority_key_identifier_extension = true;
        let mut of_root = CertificateParams::default();
        of_root.distinguished_name = name_of(&self.key);
        of_root.key_usages = vec![KeyUsagePurpose::KeyCertSign, KeyUsagePurpose::CrlSign];
        let issuer = Issuer::from_params(&of_root, &self.key);
        let certificate = params.signed_by(&key, &issuer).map_err(|e| unusable(&e))?;
        let secret = PrivateKeyDer::from(PrivatePkcs8KeyDer::from(key.serialize_der()));
        let chain = vec![certificate.der().clone(), self.certificate.clone()];
        Ok(Vouched { key: certified(chain, secret)?, names: names.clone(), ends: Some(ends) })
    }

    fn covers(&self, name: &str) -> bool {
        is_local(name) || self.further.iter().any(|further| is_below(name, further))
    }
}

/// Whether a name can only be one of a local network.
fn is_local(name: &str) -> bool {
    LOCAL_ENDS.iter().any(|end| is_below(name, end))
}

/// Whether a name is that of a domain, or of a machine in it.
fn is_below(name: &str, domain: &str) -> bool {
    name.strip_suffix(domain).is_some_and(|start| start.is_empty() || start.ends_with('.'))
}

/// The addresses that a root is valid for: those of private networks (RFC 1918, RFC 4193), of a line without a router (RFC 3927,
/// RFC 4291) and of the machine itself.
fn local_addresses() -> impl Iterator<Item = CidrSubnet> {
    let four = [
        ([10, 0, 0, 0], [255, 0, 0, 0]),
        ([172, 16, 0, 0], [255, 240, 0, 0]),
        ([192, 168, 0, 0], [255, 255, 0, 0]),
        ([169, 254, 0, 0], [255, 255, 0, 0]),
        ([127, 0, 0, 0], [255, 0, 0, 0]),
    ];
    let starts = |start: [u8; 2], bits: [u8; 2]| {
        let wide = |two: [u8; 2]| std::array::from_fn(|i| two.get(i).copied().unwrap_or(0));
        CidrSubnet::V6(wide(start), wide(bits))
    };
    let six = [
        starts([0xfc, 0], [0xfe, 0]),
        starts([0xfe, 0x80], [0xff, 0xc0]),
        CidrSubnet::V6(Ipv6Addr::LOCALHOST.octets(), [0xff; 16]),
    ];
    four.into_iter().map(|(net, mask)| CidrSubnet::V4(net, mask)).chain(six)
}

fn is_local_address(ip: IpAddr) -> bool {
    match ip.to_canonical() {
        IpAddr::V4(ip) => ip.is_private() || ip.is_link_local() || ip.is_loopback(),
        IpAddr::V6(ip) => ip.is_unique_local() || ip.is_unicast_link_local() || ip.is_loopback(),
    }
}

/// The root's name tells it from another one of the same program: by its key.
fn name_of(key: &KeyPair) -> DistinguishedName {
    let digest = Sha256::digest(key.public_key_raw());
    let mut name = DistinguishedName::new();
    name.push(
        DnType::CommonName,
        format!("Setwright bench {:02x}{:02x}{:02x}{:02x}", digest[0], digest[1], digest[2], digest[3]),
    );
    name
}

/// The day of a moment in years, months and days, so many years later.
fn day_of(moment: Timestamp, years: i16) -> (i32, u8, u8) {
    let date = moment.to_zoned_datetime(TimeZone::UTC).date();
    let (month, day) = (date.month().unsigned_abs(), date.day().unsigned_abs());
    // A 29th of February has no anniversary in most years.
    (i32::from(date.year() + years), month, if years > 0 { day.min(28) } else { day })
}

/// From the day of one moment to that of another.
fn lasting(params: &mut CertificateParams, from: (i32, u8, u8), to: (i32, u8, u8)) {
    params.not_before = date_time_ymd(from.0, from.1, from.2);
    params.not_after = date_time_ymd(to.0, to.1, to.2);
}

fn certified(
    chain: Vec<CertificateDer<'static>>,
    secret: PrivateKeyDer<'static>,
) -> Result<Arc<CertifiedKey>, ReachFault> {
    let key = CertifiedKey::from_der(chain, secret, &ring::default_provider()).map_err(|e| unusable(&e))?;
    Ok(Arc::new(key))
}

/// A folder that only its owner may look into.
fn private_folder(folder: &Path) -> Result<(), ReachFault> {
    let mut builder = std::fs::DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(folder).map_err(|e| file(folder, &e))
}

/// A new file that only its owner may read, on the disk before it is used.
fn write_new(path: &Path, text: &[u8]) -> Result<(), ReachFault> {
    let mut options = OpenOptions::new();
    options.write(true).create(true).truncate(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let written = options.open(path).and_then(|mut out| out.write_all(text).and_then(|()| out.sync_all()));
    written.map_err(|e| file(path, &e))
}

fn read(path: &Path) -> Result<Vec<u8>, ReachFault> {
    std::fs::read(path).map_err(|e| file(path, &e))
}

fn file(path: &Path, error: &std::io::Error) -> ReachFault {
    ReachFault::File { path: path.display().to_string(), log: error.to_string() }
}

fn not_readable(path: &Path, error: &impl ToString) -> ReachFault {
    ReachFault::NotReadable { path: path.display().to_string(), log: error.to_string() }
}

fn unusable(error: &impl ToString) -> ReachFault {
    ReachFault::Unusable { log: error.to_string() }
}
