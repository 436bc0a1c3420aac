//! Style sheet, scripts and mark, carried inside the binary and named by their content, so that a browser may keep
//! them for ever and still never shows an old one.

use fnv::FnvHasher;
use rust_embed::RustEmbed;
use std::borrow::Cow;
use std::hash::Hasher;

#[derive(RustEmbed)]
#[folder = "assets"]
struct Assets;

/// One file as it is carried.
#[derive(Debug, Clone)]
pub struct Asset {
    /// Bytes of the file, as the browser gets them.
    pub content: Cow<'static, [u8]>,
    /// SHA-256 of the content.
    pub sha256: [u8; 32],
}

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

/// The tag of all files, worked out once. Development builds read the files anew, so that an edit shows without a restart.
#[must_use]
pub fn current_tag() -> String {
    static ONCE: std::sync::LazyLock<String> = std::sync::LazyLock::new(tag);
    if cfg!(debug_assertions) { tag() } else { ONCE.clone() }
}

/// Address of a file: `/assets/<tag>/setwright.css`.
#[must_use]
pub fn asset_url(name: &str) -> String {
    format!("/assets/{}/{name}", current_tag())
}

/// A file as it is carried; none of that name: nothing.
#[must_use]
pub fn asset(name: &str) -> Option<Asset> {
    Assets::get(name).map(|file| Asset { content: file.data, sha256: file.metadata.sha256_hash() })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn style_and_scripts_stay_light() {
        let bytes: usize = Assets::iter().filter_map(|name| Assets::get(&name)).map(|file| file.data.len()).sum();
        assert!(bytes < 76_000, "style and scripts weigh {bytes} bytes; 76,000 are the limit");
    }

    #[test]
    fn scripts_name_only_files_that_exist() {
        for name in Assets::iter().filter(|name| name.ends_with(".js")) {
            let text = String::from_utf8(asset(&name).unwrap().content.into_owned()).unwrap();
            for line in text.lines().filter(|line| line.starts_with("import ")) {
                let from = line.split("\"./").nth(1).and_then(|rest| rest.split('"').next()).unwrap();
                assert!(Assets::get(from).is_some(), "{name} imports {from}, which is not there");
            }
        }
    }
}
