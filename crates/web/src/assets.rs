//! Style sheet, scripts and mark, carried inside the binary and named by their content, so that a browser may keep
//! them for ever and still never shows an old one.

use axum::extract::Path;
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{IntoResponse, Response};
use fnv::FnvHasher;
use rust_embed::{EmbeddedFile, RustEmbed};
use std::hash::Hasher;

#[derive(RustEmbed)]
#[folder = "assets"]
struct Assets;

/// Route for [`serve`].
pub const ROUTE: &str = "/assets/{tag}/{*name}";

const FOR_EVER: &str = "public, max-age=31536000, immutable";
const ASK_AGAIN: &str = "no-cache";

/// One tag over the content of all files: they refer to each other by plain names, so they change together.
fn tag() -> String {
    // Over the files' SHA-256 sums; names come sorted, so that the tag depends on content alone.
    let mut names: Vec<_> = Assets::iter().collect();
    names.sort();
    let mut sum = FnvHasher::default();
    for name in names {
        let hash = Assets::get(&name).map(|file| file.metadata.sha256_hash()).unwrap_or_default();
        sum.write(name.as_bytes());
        sum.write(&hash);
    }
    format!("{:016x}", sum.finish())
}

/// The tag, worked out once. Development builds read the files anew, so that an edit shows without a restart.
fn current_tag() -> String {
    static ONCE: std::sync::LazyLock<String> = std::sync::LazyLock::new(tag);
    if cfg!(debug_assertions) { tag() } else { ONCE.clone() }
}

/// Address of a file: `/assets/<tag>/setwright.css`.
#[must_use]
pub fn asset_url(name: &str) -> String {
    format!("/assets/{}/{name}", current_tag())
}

/// A file's content as it is carried, such as for a page that must stand alone.
#[must_use]
pub fn asset(name: &str) -> Option<Vec<u8>> {
    Assets::get(name).map(|file| file.data.into_owned())
}

/// Serves a file. Under the current tag it may be kept for ever; under an old one it is asked for again.
pub async fn serve(Path((tag, name)): Path<(String, String)>, headers: HeaderMap) -> Response {
    let Some(file) = Assets::get(&name) else {
        return (StatusCode::NOT_FOUND, [(header::CACHE_CONTROL, ASK_AGAIN)], "There is no such file.\n")
            .into_response();
    };
    answer(&name, file, tag == current_tag(), headers.get(header::IF_NONE_MATCH).and_then(|value| value.to_str().ok()))
}

fn answer(name: &str, file: EmbeddedFile, current: bool, known: Option<&str>) -> Response {
    let hash = file.metadata.sha256_hash();
    let etag = format!("\"{}\"", hash[..12].iter().map(|byte| format!("{byte:02x}")).collect::<String>());
    let caching = if current { FOR_EVER } else { ASK_AGAIN };
    let fresh = known.is_some_and(|known| known.split(',').any(|one| one.trim().trim_start_matches("W/") == etag));
    let head = [(header::ETAG, etag), (header::CACHE_CONTROL, caching.to_owned())];
    if fresh {
        return (StatusCode::NOT_MODIFIED, head).into_response();
    }
    (head, [(header::CONTENT_TYPE, kind(name))], file.data.into_owned()).into_response()
}

fn kind(name: &str) -> &'static str {
    match name.rsplit('.').next() {
        Some("css") => "text/css; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("svg") => "image/svg+xml",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    async fn get(tag: &str, name: &str, known: Option<&str>) -> Response {
        let mut headers = HeaderMap::new();
        if let Some(known) = known {
            headers.insert(header::IF_NONE_MATCH, known.parse().unwrap());
        }
        serve(Path((tag.to_owned(), name.to_owned())), headers).await
    }

    #[tokio::test]
    async fn a_named_file_is_kept_for_ever_and_confirmed_by_its_content() {
        let url = asset_url("setwright.css");
        let tag = url.split('/').nth(2).unwrap();
        let first = get(tag, "setwright.css", None).await;
        assert_eq!(first.status(), StatusCode::OK);
        assert_eq!(first.headers()[header::CACHE_CONTROL], FOR_EVER);
        assert_eq!(first.headers()[header::CONTENT_TYPE], "text/css; charset=utf-8");
        let etag = first.headers()[header::ETAG].to_str().unwrap().to_owned();
        assert_eq!(
            get(tag, "setwright.css", Some(&format!("\"x\", W/{etag}"))).await.status(),
            StatusCode::NOT_MODIFIED
        );
        assert_eq!(get(tag, "setwright.css", Some("\"other\"")).await.status(), StatusCode::OK);
    }

    #[tokio::test]
    async fn an_old_tag_is_served_but_not_kept() {
        let old = get("0000", "bench.js", None).await;
        assert_eq!(old.status(), StatusCode::OK);
        assert_eq!(old.headers()[header::CACHE_CONTROL], ASK_AGAIN);
        assert_eq!(get("0000", "../Cargo.toml", None).await.status(), StatusCode::NOT_FOUND);
    }

    #[test]
    fn style_and_scripts_stay_light() {
        let bytes: usize = Assets::iter().filter_map(|name| Assets::get(&name)).map(|file| file.data.len()).sum();
        assert!(bytes < 76_000, "style and scripts weigh {bytes} bytes; 76,000 are the limit");
    }

    #[test]
    fn scripts_name_only_files_that_exist() {
        for name in Assets::iter().filter(|name| name.ends_with(".js")) {
            let text = String::from_utf8(asset(&name).unwrap()).unwrap();
            for line in text.lines().filter(|line| line.starts_with("import ")) {
                let from = line.split("\"./").nth(1).and_then(|rest| rest.split('"').next()).unwrap();
                assert!(Assets::get(from).is_some(), "{name} imports {from}, which is not there");
            }
        }
    }
}
