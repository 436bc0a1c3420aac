//! The guide: chapters in Markdown, which the project shows as files and the program as pages.

use std::borrow::Cow;

/// A chapter of the guide.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Chapter {
    /// Name of its file without the ending; the same in every language.
    pub key: &'static str,
    /// Its Markdown.
    pub text: Cow<'static, str>,
}

impl Chapter {
    /// Its title: the first heading.
    #[must_use]
    pub fn title(&self) -> &str {
        self.text.lines().find_map(|line| line.strip_prefix("# ")).unwrap_or(self.key)
    }

    /// The same with every letter changed that is not part of a link's address.
    pub(crate) fn changed(&self, change: fn(&str) -> String) -> Self {
        let mut pieces = self.text.split("](");
        let mut text = change(pieces.next().unwrap_or_default());
        for piece in pieces {
            let (address, rest) = piece.split_once(')').unwrap_or((piece, ""));
            text.push_str("](");
            text.push_str(address);
            text.push(')');
            text.push_str(&change(rest));
        }
        Self { key: self.key, text: Cow::Owned(text) }
    }
}

/// The chapters of a language: the guide, and what else of the documentation is for those who run a shop.
macro_rules! books {
    ($($key:literal)*; $($other:literal)*) => {
        /// The English chapters.
        pub(crate) fn english() -> Vec<Chapter> {
            vec![
                $(Chapter { key: $key, text: Cow::Borrowed(include_str!(concat!("../../../docs/guide/", $key, ".md"))) },)*
                $(Chapter { key: $other, text: Cow::Borrowed(include_str!(concat!("../../../docs/", $other, ".md"))) },)*
            ]
        }

        /// The German chapters. What is for programmers and administrators is in English.
        pub(crate) fn german() -> Vec<Chapter> {
            vec![
                $(Chapter { key: $key, text: Cow::Borrowed(include_str!(concat!("../../../docs/guide/de/", $key, ".md"))) },)*
                $(Chapter { key: $other, text: Cow::Borrowed(include_str!(concat!("../../../docs/", $other, ".md"))) },)*
            ]
        }
    };
}

books! {
    "set-up"
    "stock"
    "sheet"
    "plan"
    "bench"
    "doubt"
    "glue"
    "finish"
    "records"
    "scales"
    "labels"
    "other-jobs"
    "learned"
    "backup"
    "run"
    "programs"
    "quick-card"
    ;
    "install"
    "security"
    "api"
    "one-set"
}

#[cfg(test)]
mod tests {
    use super::{Chapter, english};

    #[test]
    fn every_chapter_has_a_title_and_the_book_lists_it() {
        let book = include_str!("../../../docs/guide/README.md");
        for chapter in english() {
            assert_ne!(chapter.title(), chapter.key);
            let listed = book.contains(&format!("]({}.md)", chapter.key));
            let of_guide = ["install", "security", "api", "one-set"].iter().all(|other| *other != chapter.key);
            assert_eq!(listed, of_guide, "{}", chapter.key);
        }
    }

    #[test]
    fn a_changed_chapter_keeps_the_addresses_of_its_links() {
        let chapter = Chapter { key: "x", text: "See [Glue](glue.md) and [it](b.md#c).".into() };
        assert_eq!(chapter.changed(str::to_uppercase).text, "SEE [GLUE](glue.md) AND [IT](b.md#c).");
    }
}
