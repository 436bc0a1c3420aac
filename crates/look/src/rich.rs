//! A text with marked phrases as markup: the text says where the link stands, the page what it is.

use fact::Figure;
use maud::{Markup, html};
use words::{Piece, Words};

/// A text whose phrases are marked, `Go to <a>Sheets</a>.`: each marked phrase becomes what the page makes of it.
///
/// `mark` is given the name of the mark and the phrase within it. Most callers use [`rich!`](crate::rich!).
#[must_use]
pub fn rich(w: &Words, id: &str, figures: &[(&str, Figure)], mark: impl Fn(&str, &str) -> Markup) -> Markup {
    html! {
        @for piece in w.pieces(id, figures) {
            @match piece {
                Piece::Text(text) => { (text) }
                Piece::Marked(name, inner) => { (mark(&name, &inner)) }
            }
        }
    }
}

/// A text with marked phrases and figures by name:
/// `rich!(w, "job-none", |_, inner| html! { a href="/sheets" { (inner) } }, job = 4)`.
#[macro_export]
macro_rules! rich {
    ($words:expr, $id:literal, $mark:expr $(, $name:ident = $value:expr)* $(,)?) => {
        $crate::rich($words, $id, &[$((stringify!($name), words::figure(&$value))),*], $mark)
    };
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::{LengthUnit, MassUnit, Units};

    #[test]
    fn a_text_without_marks_is_escaped_text() {
        let w = Words::english(Units { length: LengthUnit::Inch, mass: MassUnit::Gram });
        let text = rich!(&w, "list-last", |_, inner| html! { b { (inner) } }, a = "<b>x</b>", b = "y");
        assert_eq!(text.into_string(), "&lt;b&gt;x&lt;/b&gt; and y");
    }
}
