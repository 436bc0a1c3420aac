//! Serves the style sheet, scripts and mark of [`look::assets`].

use axum::extract::Path;
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{IntoResponse, Response};
use look::assets::{Asset, asset, current_tag};

/// Route for [`serve`].
pub const ROUTE: &str = "/assets/{tag}/{*name}";

/// What every address of [`ROUTE`] begins with.
pub(crate) const FOLDER: &str = "/assets/";

const FOR_EVER: &str = "public, max-age=31536000, immutable";
const ASK_AGAIN: &str = "no-cache";

/// Serves a file. Under the current tag it may be kept for ever; under an old one it is asked for again.
pub async fn serve(Path((tag, name)): Path<(String, String)>, headers: HeaderMap) -> Response {
    let Some(file) = asset(&name) else {
        return (StatusCode::NOT_FOUND, [(header::CACHE_CONTROL, ASK_AGAIN)], "There is no such file.\n")
            .into_response();
    };
    answer(&name, file, tag == current_tag(), headers.get(header::IF_NONE_MATCH).and_then(|value| value.to_str().ok()))
}

fn answer(name: &str, file: Asset, current: bool, known: Option<&str>) -> Response {
    let hash = file.sha256;
    let etag = format!("\"{}\"", hash[..12].iter().map(|byte| format!("{byte:02x}")).collect::<String>());
    let caching = if current { FOR_EVER } else { ASK_AGAIN };
    let fresh = known.is_some_and(|known| known.split(',').any(|one| one.trim().trim_start_matches("W/") == etag));
    let head = [(header::ETAG, etag), (header::CACHE_CONTROL, caching.to_owned())];
    if fresh {
        return (StatusCode::NOT_MODIFIED, head).into_response();
    }
    (head, [(header::CONTENT_TYPE, kind(name))], file.content.into_owned()).into_response()
}

fn kind(name: &str) -> &'static str {
    match name.rsplit('.').next() {
        Some("css") => "text/css; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("svg") => "image/svg+xml",
        Some("woff2") => "font/woff2",
        Some("txt") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use look::assets::asset_url;

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
}
