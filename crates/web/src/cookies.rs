//! What a tablet keeps for its person and of itself: the name, the units, its colours and keys, in cookies with
//! percent-encoded values.

use axum::http::header::{COOKIE, SET_COOKIE};
use axum::http::{HeaderMap, HeaderName};
use cookie::time::Duration;
use cookie::{Cookie, SameSite};

/// Name of the cookie that knows who is at the tablet.
pub(crate) const WHO: &str = "who";

/// Name of the cookie that knows the units of whoever is at the tablet.
pub(crate) const UNITS: &str = "units";

/// Name of the cookie that knows the colours of the tablet: `light`, `dark`.
pub(crate) const THEME: &str = "theme";

/// Name of the cookie that knows how decimals are printed: `comma`, `point`.
pub(crate) const DECIMAL: &str = "decimal";

/// Name of the cookie that knows the language of the tablet: `de`.
pub(crate) const LANGUAGE: &str = "language";

/// Name of the cookie that knows whether single letters press buttons: `off`.
pub(crate) const LETTERS: &str = "letters";

/// Name of the cookie that knows the key of the foot pedal: `PageDown`.
pub(crate) const PEDAL: &str = "pedal";

/// Name of the cookie with the secret that lets a tablet in. No script can read it.
pub(crate) const KEY: &str = "key";

/// Name of the cookie that tells the next page what was just done: the name of a text.
pub(crate) const DONE: &str = "done";

/// The value that a request brings under a name, if it brings one.
pub(crate) fn brought(headers: &HeaderMap, name: &str) -> Option<String> {
    let texts = headers.get_all(COOKIE).iter().filter_map(|value| value.to_str().ok());
    let mut cookies = texts.flat_map(Cookie::split_parse_encoded).filter_map(Result::ok);
    cookies.find(|cookie| cookie.name() == name).map(|cookie| cookie.value().trim().to_owned())
}

/// The header that lets a tablet keep a value for a year.
pub(crate) fn keep(name: &str, value: &str) -> (HeaderName, String) {
    let cookie = Cookie::build((name, value)).path("/").max_age(Duration::days(365)).same_site(SameSite::Lax).build();
    (SET_COOKIE, cookie.encoded().to_string())
}

/// The header that lets a tablet keep the secret that it is let in by. It goes over lines that can be read only where the shop
/// is reached by such.
pub(crate) fn keep_key(secret: &str, over_tls: bool) -> (HeaderName, String) {
    // The longest that browsers keep a cookie: draft-ietf-httpbis-rfc6265bis, 5.5.
    let days = Duration::days(400);
    let cookie = Cookie::build((KEY, secret)).path("/").max_age(days).same_site(SameSite::Lax);
    (SET_COOKIE, cookie.http_only(true).secure(over_tls).build().encoded().to_string())
}

/// The header that lets a tablet keep a value for the next page only; an empty one is forgotten at once.
pub(crate) fn keep_for_next(name: &str, value: &str) -> (HeaderName, String) {
    let age = if value.is_empty() { Duration::ZERO } else { Duration::minutes(1) };
    let cookie = Cookie::build((name, value)).path("/").max_age(age).same_site(SameSite::Lax).http_only(true).build();
    (SET_COOKIE, cookie.encoded().to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn request(cookies: &[&str]) -> HeaderMap {
        cookies.iter().map(|text| (COOKIE, text.parse().expect("a header"))).collect()
    }

    #[test]
    fn what_is_kept_comes_back_whatever_the_name() {
        for name in ["Ada", "Zoë Łukasz", "5½″; who=Eve", "100 %", "a,b\\\"c\"", "dry\r\nSet-Cookie: x=y", "李明"]
        {
            let (_, kept) = keep(WHO, name);
            let (pair, attributes) = kept.split_once(';').expect("attributes");
            assert!(pair.bytes().all(|b| b.is_ascii_graphic()), "{pair}");
            for attribute in ["Path=/", "Max-Age=31536000", "SameSite=Lax"] {
                assert!(attributes.split(';').any(|a| a.trim() == attribute), "{attributes}");
            }
            let brought_back = format!("units=mm-oz; {pair}; other=1");
            assert_eq!(brought(&request(&[&brought_back]), WHO).as_deref(), Some(name));
        }
    }

    #[test]
    fn a_value_is_found_in_any_of_the_headers_and_the_first_one_counts() {
        let headers = request(&["a=1;who = Ada ", "units=mm-g; who=Bo"]);
        assert_eq!(brought(&headers, WHO).as_deref(), Some("Ada"));
        assert_eq!(brought(&headers, UNITS).as_deref(), Some("mm-g"));
        assert_eq!(brought(&headers, "b"), None);
    }
}
