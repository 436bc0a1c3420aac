//! How a tablet is told to trust this machine, so that what it sends and sees is encrypted.

use super::{PageError, PageResult};
use crate::access::{TRUST, TRUST_FILE};
use crate::door::{Door, Encryption, host_of};
use crate::problem::{EdgeFault, Problem};
use crate::reader::Reader;
use app::App;
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::IntoResponse;
use axum::routing::get;
use axum::{Extension, Router};
use look::{ButtonKind, PageFrame, link_button, page, section};
use maud::{Markup, html};
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route(TRUST, get(show)).route(TRUST_FILE, get(file))
}

/// Devices whose way to trust a certificate is told, each as a text of its own.
const DEVICES: [&str; 5] = ["android", "ipad", "windows", "mac", "linux"];

fn root(door: &Door) -> Result<(&Encryption, &(Vec<u8>, String)), PageError> {
    let found = door.encryption.as_deref().and_then(|encryption| Some((encryption, encryption.root.as_ref()?)));
    found.ok_or_else(|| PageError(Problem::new(StatusCode::NOT_FOUND, "not_found", EdgeFault::NoOwnRoot)))
}

async fn show(Reader(w): Reader, Extension(door): Extension<Door>, headers: HeaderMap) -> PageResult {
    let (encryption, _) = root(&door)?;
    let host = host_of(&headers).filter(|host| !host.is_empty()).unwrap_or_else(|| "localhost".to_owned());
    let address = format!("https://{host}:{}/", encryption.port);
    let body = html! {
        p { (w.text("trust-about")) }
        (section(&w.text("trust-first"), &html! {}, &html! {
            div.actions { (link_button(TRUST_FILE, &w.text("trust-get"), ButtonKind::Primary, None, "")) }
            // Its figures do not stand here: whoever changed the certificate on its way would have changed them, too.
            p.hint { (w.text("trust-compare")) }
        }))
        (section(&w.text("trust-second"), &html! {}, &html! {
            @for device in DEVICES {
                details {
                    summary { (w.text(&format!("trust-{device}"))) }
                    p { (w.text(&format!("trust-{device}-how"))) }
                }
            }
        }))
        (section(&w.text("trust-third"), &html! {}, &html! {
            p { (w.text("trust-open-about")) }
            div.actions { (link_button(&address, &text!(w, "trust-open", address = address.clone()), ButtonKind::Primary, None, "")) }
        }))
        p.hint { (w.text("trust-only-here")) }
    };
    let frame = PageFrame {
        title: w.text("trust-title"),
        bare: true,
        tablet: crate::tablet::here(),
        body,
        ..PageFrame::default()
    };
    Ok(page(&w, &frame).into_response())
}

/// The sum of the certificate, to be compared by eye, in groups that a narrow page may break between.
pub(super) fn fingerprint_of(w: &Words, fingerprint: &str) -> Markup {
    let pairs: Vec<&str> = fingerprint.split(':').collect();
    html! {
        p.hint { (w.text("trust-figures")) }
        p { code { @for (i, group) in pairs.chunks(4).enumerate() { @if i > 0 { ":" wbr; } (group.join(":")) } } }
    }
}

async fn file(Extension(door): Extension<Door>) -> PageResult {
    let (_, (der, _)) = root(&door)?;
    // The type by which tablets know a certificate to trust (RFC 2585 has pkix-cert; this older one is the one that all of them
    // take: from memory).
    let headers = [
        (header::CONTENT_TYPE, "application/x-x509-ca-cert"),
        (header::CONTENT_DISPOSITION, "attachment; filename=\"setwright.crt\""),
    ];
    Ok((headers, der.clone()).into_response())
}
