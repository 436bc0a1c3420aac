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

macro_rules! chapters {
    ($($key:literal = $file:literal;)*) => {
        vec![$(Chapter { key: $key, text: Cow::Borrowed(include_str!(concat!("../../../docs/", $file))) },)*]
    };
}

/// The English chapters: the guide, and what else of the documentation is for those who run a shop.
pub(crate) fn english() -> Vec<Chapter> {
    chapters! {
        "set-up" = "guide/set-up.md";
        "stock" = "guide/stock.md";
        "sheet" = "guide/sheet.md";
        "plan" = "guide/plan.md";
        "bench" = "guide/bench.md";
        "doubt" = "guide/doubt.md";
        "glue" = "guide/glue.md";
        "finish" = "guide/finish.md";
        "records" = "guide/records.md";
        "scales" = "guide/scales.md";
        "labels" = "guide/labels.md";
        "other-jobs" = "guide/other-jobs.md";
        "learned" = "guide/learned.md";
        "backup" = "guide/backup.md";
        "run" = "guide/run.md";
        "programs" = "guide/programs.md";
        "install" = "install.md";
        "security" = "security.md";
        "api" = "api.md";
        "one-set" = "one-set.md";
    }
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
