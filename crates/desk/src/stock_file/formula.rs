//! Cells that a spreadsheet would run.
//!
//! A list comes from a supplier, is stored, and goes out as a file that somebody opens in a spreadsheet. A cell that begins
//! with `=`, `+`, `-` or `@` is a formula there, and so is one behind a tab or a line break (common knowledge of the web's
//! trade, from memory: OWASP, *CSV Injection*). It leaves with an apostrophe before it, and loses it on the way in. A cell
//! that has apostrophes before such a sign gets one more, so that every text comes back as it was.

use std::borrow::Cow;

const GUARD: char = '\'';

/// What follows the apostrophes begins as a formula does. A negative figure is a figure.
fn would_run(cell: &str) -> bool {
    let bare = cell.trim_start_matches(GUARD);
    bare.starts_with(['=', '+', '@', '\t', '\r', '\n', '＝', '＋', '－', '＠'])
        || (bare.starts_with('-') && bare.parse::<f64>().is_err())
}

/// The cell as it goes into a file.
pub(crate) fn guarded(cell: &str) -> Cow<'_, str> {
    if would_run(cell) { Cow::Owned(format!("{GUARD}{cell}")) } else { Cow::Borrowed(cell) }
}

/// The cell as it was before [`guarded`].
pub(super) fn bare(cell: &str) -> &str {
    match cell.strip_prefix(GUARD) {
        Some(rest) if would_run(cell) => rest,
        _ => cell,
    }
}

#[cfg(test)]
mod tests {
    use super::{bare, guarded};
    use proptest::prelude::*;

    #[test]
    fn what_a_spreadsheet_would_run_is_guarded_and_nothing_else() {
        for cell in ["=1+1", "+1", "@SUM(A1)", "-2+3", "\t=1", "\r=1", "\n=1", "＝1", "'=1", "-x"] {
            assert_eq!(guarded(cell), format!("'{cell}"), "{cell:?}");
        }
        for cell in ["", "-2.5", "S7-01", "37 1/4", "'quoted'", "it's", "e 0,3", "'-2.5"] {
            assert_eq!(guarded(cell), cell);
        }
    }

    proptest! {
        /// Goal: no text is lost or gained on the way out and in. Method: texts of the signs that matter.
        #[test]
        fn every_text_comes_back(cell in "['=+@a1\\-\t\r\n＝ .]{0,6}") {
            let out = guarded(&cell);
            prop_assert_eq!(bare(&out), cell.as_str());
            prop_assert!(!out.starts_with(['=', '+', '@', '\t', '\r', '\n']), "{}", out);
        }
    }
}
