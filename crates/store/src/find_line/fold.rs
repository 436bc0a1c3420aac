//! Texts as they are looked for: small letters without accents, and how far two words are apart.

/// Small letters without accents, one blank between words and one at each end: `Zoë  ŁAGA` is ` zoe laga `. What stands
/// between letters in a code stays: `d-101`, `h7-03`.
pub(crate) fn folded(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 2);
    out.push(' ');
    for c in text.chars().flat_map(char::to_lowercase) {
        match plain(c) {
            Some(letters) => out.push_str(letters),
            None if is_part_of_word(c) => out.push(c),
            None if out.ends_with(' ') => {}
            None => out.push(' '),
        }
    }
    if !out.ends_with(' ') {
        out.push(' ');
    }
    out
}

fn is_part_of_word(c: char) -> bool {
    c.is_alphanumeric() || matches!(c, '-' | '.' | '@' | '+' | '/' | '_' | '#' | '\'' | '½' | '¼' | '¾')
}

/// The plain letters of one with an accent, of the Latin blocks that European names are written in (Unicode: Latin-1
/// Supplement and Latin Extended-A); combining accents are nothing.
fn plain(c: char) -> Option<&'static str> {
    Some(match c {
        'à' | 'á' | 'â' | 'ã' | 'ä' | 'å' | 'ā' | 'ă' | 'ą' => "a",
        'æ' => "ae",
        'ç' | 'ć' | 'ĉ' | 'ċ' | 'č' => "c",
        'ď' | 'đ' | 'ð' => "d",
        'è' | 'é' | 'ê' | 'ë' | 'ē' | 'ĕ' | 'ė' | 'ę' | 'ě' => "e",
        'ĝ' | 'ğ' | 'ġ' | 'ģ' => "g",
        'ĥ' | 'ħ' => "h",
        'ì' | 'í' | 'î' | 'ï' | 'ĩ' | 'ī' | 'ĭ' | 'į' | 'ı' => "i",
        'ĵ' => "j",
        'ķ' => "k",
        'ĺ' | 'ļ' | 'ľ' | 'ŀ' | 'ł' => "l",
        'ñ' | 'ń' | 'ņ' | 'ň' | 'ŋ' => "n",
        'ò' | 'ó' | 'ô' | 'õ' | 'ö' | 'ø' | 'ō' | 'ŏ' | 'ő' => "o",
        'œ' => "oe",
        'ŕ' | 'ŗ' | 'ř' => "r",
        'ś' | 'ŝ' | 'ş' | 'š' => "s",
        'ß' => "ss",
        'ţ' | 'ť' | 'ŧ' => "t",
        'þ' => "th",
        'ù' | 'ú' | 'û' | 'ü' | 'ũ' | 'ū' | 'ŭ' | 'ů' | 'ű' | 'ų' => "u",
        'ŵ' => "w",
        'ý' | 'ÿ' | 'ŷ' => "y",
        'ź' | 'ż' | 'ž' => "z",
        '\u{300}'..='\u{36f}' => "",
        _ => return None,
    })
}

/// Whether two words are the same but for one slip of the hand: a letter wrong, missing or too many, or two neighbours swapped
/// (the restricted Damerau–Levenshtein distance, at most 1).
pub(crate) fn one_slip_apart(a: &[char], b: &[char]) -> bool {
    let front = a.iter().zip(b).take_while(|(x, y)| x == y).count();
    let (a, b) = (&a[front..], &b[front..]);
    let back = a.iter().rev().zip(b.iter().rev()).take_while(|(x, y)| x == y).count();
    match (&a[..a.len() - back], &b[..b.len() - back]) {
        ([], []) | ([_], [_] | []) | ([], [_]) => true,
        ([x, y], [p, q]) => x == q && y == p,
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn accents_capitals_and_blanks_do_not_matter() {
        assert_eq!(folded("Zoë  ŁAGA, (Søren)"), " zoe laga soren ");
        assert_eq!(folded("D-101\nGröße 7½"), " d-101 grosse 7½ ");
        assert_eq!((folded(""), folded(" ,")), (" ".into(), " ".into()));
        assert_eq!(folded("李 明"), " 李 明 ");
        assert_eq!(folded("Mu\u{308}ller"), folded("Müller"), "composed or not");
    }

    #[test]
    fn one_slip_is_a_letter_wrong_missing_too_many_or_swapped() {
        let apart = |a: &str, b: &str| one_slip_apart(&a.chars().collect::<Vec<_>>(), &b.chars().collect::<Vec<_>>());
        for slip in ["farrowby", "farowby", "farrrowby", "farrowbi", "afrrowby", "farrwoby", "farrowb", "arrowby"] {
            assert!(apart("farrowby", slip), "{slip}");
        }
        for other in ["farwby", "fxrrowbx", "owfarrby", "", "farrowbyyy", "aforrwby"] {
            assert!(!apart("farrowby", other), "{other}");
        }
    }

    /// The plain table of the distance, with swaps of neighbours: textbook recurrence, written here from memory.
    fn distance(a: &[char], b: &[char]) -> usize {
        let mut d = vec![vec![0; b.len() + 1]; a.len() + 1];
        for i in 0..=a.len() {
            for j in 0..=b.len() {
                d[i][j] = if i == 0 || j == 0 {
                    i + j
                } else {
                    let wrong = usize::from(a[i - 1] != b[j - 1]);
                    let mut least = (d[i - 1][j] + 1).min(d[i][j - 1] + 1).min(d[i - 1][j - 1] + wrong);
                    if i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] {
                        least = least.min(d[i - 2][j - 2] + 1);
                    }
                    least
                };
            }
        }
        d[a.len()][b.len()]
    }

    proptest! {
        /// Goal: the quick test says what the table of distances says. Method: words of few letters, so that slips are frequent.
        #[test]
        fn one_slip_is_a_distance_of_one_at_most(a in "[abc]{0,6}", b in "[abc]{0,6}") {
            let (a, b): (Vec<char>, Vec<char>) = (a.chars().collect(), b.chars().collect());
            prop_assert_eq!(one_slip_apart(&a, &b), distance(&a, &b) <= 1);
        }
    }
}
