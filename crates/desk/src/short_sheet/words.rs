//! The words of a short sheet: how a text falls into phrases and what each phrase says.

use crate::short_sheet::{ShortError, WordFault};
use quantity::{INCH_MM, LengthUnit, SwingWeight};
use quantity::{MassUnit, parse_length, parse_length_offset, parse_mass, parse_mass_offset};
use quantity::{parse_angle, parse_angle_offset, parse_frequency, parse_swing_weight, parse_swing_weight_offset};
use trade::kind::{ClubKind, Facing, LengthTo, SoftSide};
use trade::reading::What;

/// Longest difference of length that a sheet can mean; more is a slip or another club's number.
const LENGTH_OFFSET_MAX_MM: f64 = 3.0 * INCH_MM;
/// Lengths that a club can have.
const LENGTH_MM: std::ops::RangeInclusive<f64> = 18.0 * INCH_MM..=51.0 * INCH_MM;
/// Largest difference of loft or lie that a sheet can mean.
const ANGLE_OFFSET_MAX_DEG: f64 = 6.0;

/// A club as it is named on a short sheet: its number and, where it was said, its kind.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Atom {
    /// The number in capitals, without the word for its kind.
    pub number: String,
    /// Kind, where it was said ("5w", "7-iron").
    pub kind: Option<ClubKind>,
}

/// What one phrase says.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Word {
    /// One club, or the clubs from one to another.
    Clubs(Atom, Option<Atom>),
    /// Clubs one by one, written without spaces: 5,7,9.
    Several(Vec<Word>),
    /// Every club of a kind.
    Kind(ClubKind),
    /// What follows holds for all clubs again.
    All,
    LengthOffset(f64),
    Length(f64),
    LengthTo(LengthTo),
    LieOffset(f64),
    Lie(f64),
    LoftOffset(f64),
    Loft(f64),
    /// Swing weight in points, and what it steps by from club to club.
    SwingWeight(Option<f64>, Option<f64>),
    /// Full layers, lower-hand layers.
    Wraps(Option<u8>, Option<u8>),
    GripGraphics(Facing),
    ShaftGraphics(Facing),
    /// Cycles a minute, and what they step by.
    Cpm(f64, Option<f64>),
    /// Grams of the whole club, and what they step by.
    TotalMass(f64, Option<f64>),
    SoftSide(SoftSide),
    AdapterSetting(String),
    SwingWeightTolerance(f64),
    LengthTolerance(f64),
    AngleTolerance(f64),
    CpmTolerance(f64),
    /// Points that wedges have more than the rest.
    WedgeOffset(f64),
}

impl Word {
    /// Whether it names clubs and so starts or extends a group.
    pub(super) const fn names_clubs(&self) -> bool {
        matches!(self, Self::Clubs(..) | Self::Several(_) | Self::Kind(_) | Self::All)
    }
}

/// A phrase with the place where it starts, in characters from 1.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Phrase {
    pub text: String,
    pub at: usize,
    pub word: Word,
}

/// Most bytes of a short sheet: fourteen clubs, each with every word of its own, take less than half of it.
const SHEET_MAX_BYTES: usize = 4096;
/// Most words of one phrase. The longest that means something, "soft side to away from the target", has seven; a unit
/// or a sign may stand apart.
const PHRASE_MAX_WORDS: usize = 10;
/// Most bytes of one phrase, such as fourteen clubs one by one without spaces.
const PHRASE_MAX_BYTES: usize = 80;

/// Reads a whole short sheet. `numbers` are those of the set's head models.
pub(super) fn phrases(short: &str, numbers: &[&str]) -> Result<Vec<Phrase>, ShortError> {
    phrases_by(short, numbers, &mut |text| phrase(text, numbers))
}

/// Where each phrase ends is found by trying the longest first. What is tried is bounded in words and bytes: a line of
/// any length is read in a time that grows with its length and no faster.
fn phrases_by(
    short: &str,
    numbers: &[&str],
    phrase: &mut impl FnMut(&str) -> Option<Outcome>,
) -> Result<Vec<Phrase>, ShortError> {
    if short.len() > SHEET_MAX_BYTES {
        return Err(ShortError::TooLong { n: short.chars().count(), most: SHEET_MAX_BYTES });
    }
    let mut read: Vec<Phrase> = Vec::new();
    // Characters up to a byte, counted on from the last place that was asked for.
    let (mut counted_to, mut counted) = (0, 0);
    for (start, end) in pieces(short) {
        let words = words_of(short, start, end);
        let mut next = 0;
        while next < words.len() {
            let text_to = |last: usize| &short[words[next].0..words[last].1];
            counted += short[counted_to..words[next].0].chars().count();
            counted_to = words[next].0;
            let at = counted + 1;
            let last_tried = words.len().min(next + PHRASE_MAX_WORDS);
            let found = (next..last_tried).rev().find_map(|last| {
                let text = text_to(last);
                let outcome = if text.len() > PHRASE_MAX_BYTES { None } else { phrase(text) };
                outcome.map(|outcome| (last, text, outcome))
            });
            let Some((last, text, outcome)) = found else {
                // "2 sideways": the 2 was taken for a club, but belongs to what cannot be read.
                let from = if next > 0 && lone_number(read.last()) { next - 1 } else { next };
                let at = short[..words[from].0].chars().count() + 1;
                // What follows on the line may be long; its beginning is what cannot be read.
                let to = words.len().min(from + PHRASE_MAX_WORDS);
                return Err(unreadable(&short[words[from].0..words[to - 1].1], at));
            };
            let word = outcome.map_err(|fault| ShortError::word(text, at, fault))?;
            if last > next {
                refuse_two_meanings(
                    &short[words[next].0..words[next].1],
                    &short[words[next + 1].0..words[last].1],
                    numbers,
                )
                .map_err(|fault| ShortError::word(text, at, fault))?;
            }
            read.push(Phrase { text: text.to_owned(), at, word });
            next = last + 1;
        }
    }
    Ok(read)
}

/// Whether the phrase before is a figure that was taken for one club.
fn lone_number(before: Option<&Phrase>) -> bool {
    before.is_some_and(|p| matches!(p.word, Word::Clubs(_, None)) && p.text.chars().all(|c| c.is_ascii_digit()))
}

/// "3 1/2 over" is three and a half inches, or half an inch on the 3: the writer must say which.
fn refuse_two_meanings(first: &str, rest: &str, numbers: &[&str]) -> Result<(), WordFault> {
    let named = matches!(atom(first, numbers), Some(a) if numbers.iter().any(|n| n.eq_ignore_ascii_case(&a.number)));
    let stands_alone = matches!(phrase(rest, numbers), Some(Ok(word)) if !word.names_clubs());
    if named && stands_alone {
        return Err(WordFault::TwoMeanings);
    }
    Ok(())
}

/// Byte ranges between separators. A comma between two digits is a decimal comma and stays.
fn pieces(short: &str) -> Vec<(usize, usize)> {
    let mut found = Vec::new();
    let mut start = 0;
    let mut before: Option<char> = None;
    let mut chars = short.char_indices().peekable();
    while let Some((i, c)) = chars.next() {
        let next = chars.peek().map(|&(_, c)| c);
        let digit = |c: Option<char>| c.is_some_and(|c| c.is_ascii_digit());
        let splits = match c {
            ';' | '\n' | '\r' => true,
            ',' => !(digit(before) && digit(next)),
            _ => false,
        };
        if splits {
            found.push((start, i));
            start = i + c.len_utf8();
        }
        before = Some(c);
    }
    found.push((start, short.len()));
    found
}

/// Byte ranges of the words of a piece.
fn words_of(short: &str, start: usize, end: usize) -> Vec<(usize, usize)> {
    let mut found = Vec::new();
    let mut from = None;
    for (i, c) in short[start..end].char_indices() {
        match (c.is_whitespace(), from) {
            (true, Some(f)) => {
                found.push((f, start + i));
                from = None;
            }
            (false, None) => from = Some(start + i),
            _ => {}
        }
    }
    found.extend(from.map(|f| (f, end)));
    found
}

/// A phrase that no reader took: what can be said of it.
fn unreadable(text: &str, at: usize) -> ShortError {
    let plain = text.to_lowercase();
    let bare_number = plain.strip_prefix(['+', '-', '−']).is_some_and(|r| parse_angle(r).is_ok());
    let fault = if bare_number {
        WordFault::WhichFigure
    } else if starts_with_letter_and_digit(&plain) && !text.contains(',') {
        WordFault::SwingWeight
    } else if text.starts_with(['+', '-', '−']) && parse_length_offset(text, LengthUnit::Inch).is_ok() {
        WordFault::LengthOffset
    } else if parse_length(text, LengthUnit::Inch).is_ok() {
        WordFault::Length
    } else if plain.starts_with("graphics") {
        WordFault::Graphics
    } else if text.contains(',') {
        WordFault::Comma
    } else {
        WordFault::NotAWord
    };
    ShortError::word(text, at, fault)
}

/// "d12": meant as a swing weight.
fn starts_with_letter_and_digit(plain: &str) -> bool {
    let mut chars = plain.chars();
    chars.next().is_some_and(|c| c.is_ascii_alphabetic()) && chars.next().is_some_and(|c| c.is_ascii_digit())
}

type Outcome = Result<Word, WordFault>;

/// What a phrase says; none where it is not a phrase as a whole.
fn phrase(text: &str, numbers: &[&str]) -> Option<Outcome> {
    let plain = text.to_lowercase();
    let plain = plain.split_whitespace().collect::<Vec<_>>().join(" ");
    clubs(text, &plain, numbers)
        .or_else(|| settled(&plain))
        .map(Ok)
        .or_else(|| wraps(&plain))
        .or_else(|| tolerance(&plain))
        .or_else(|| wedge_offset(&plain))
        .or_else(|| swing_weight(&plain))
        .or_else(|| cpm(&plain))
        .or_else(|| total_mass(&plain))
        .or_else(|| angles(&plain))
        .or_else(|| length(&plain))
}

fn kind_word(word: &str) -> Option<ClubKind> {
    Some(match word {
        "w" | "wood" | "woods" => ClubKind::Wood,
        "h" | "hybrid" | "hybrids" => ClubKind::Hybrid,
        "i" | "iron" | "irons" => ClubKind::Iron,
        "wedge" | "wedges" => ClubKind::Wedge,
        "putter" | "putters" => ClubKind::Putter,
        _ => return None,
    })
}

/// A single club, by syntax or because a head model has this number.
fn atom(text: &str, numbers: &[&str]) -> Option<Atom> {
    let text = text.trim();
    if let Some(known) = numbers.iter().find(|n| n.eq_ignore_ascii_case(text)) {
        return Some(Atom { number: known.to_uppercase(), kind: None });
    }
    let plain = text.to_lowercase();
    let digits = plain.chars().take_while(char::is_ascii_digit).count();
    if digits > 2 {
        return None;
    }
    if digits > 0 {
        let (number, rest) = plain.split_at(digits);
        let rest = rest.trim_start_matches(['-', ' ']);
        let kind = if rest.is_empty() { None } else { Some(kind_word(rest)?) };
        return Some(Atom { number: number.to_owned(), kind });
    }
    let letters = ["p", "pw", "s", "sw", "g", "gw", "a", "aw", "l", "lw", "u", "uw"];
    match plain.as_str() {
        "driver" => Some(Atom { number: "1".into(), kind: Some(ClubKind::Wood) }),
        letter if letters.contains(&letter) => Some(Atom { number: letter.to_uppercase(), kind: None }),
        _ => None,
    }
}

/// Clubs by number, range, list or kind.
fn clubs(text: &str, plain: &str, numbers: &[&str]) -> Option<Word> {
    if matches!(plain, "all" | "every club" | "all clubs") {
        return Some(Word::All);
    }
    if plain.len() > 1
        && let Some(kind) = kind_word(plain)
    {
        return Some(Word::Kind(kind));
    }
    if let Some(one) = atom(text, numbers) {
        return Some(Word::Clubs(one, None));
    }
    if text.contains(',') {
        let parts: Option<Vec<Word>> = text.split(',').map(|part| clubs(part, part, numbers)).collect();
        return parts.map(Word::Several);
    }
    let dashes = text.char_indices().filter(|(_, c)| matches!(c, '-' | '–' | '—' | '−' | '‐' | '‑'));
    let dashed = dashes.map(|(i, c)| (i, i + c.len_utf8()));
    let worded = text.to_ascii_lowercase().find(" to ").map(|i| (i, i + 4));
    dashed.chain(worded).find_map(|(before, after)| {
        let from = atom(&text[..before], numbers)?;
        let to = atom(&text[after..], numbers)?;
        // `A-22` is a swing weight below A0 and no row of clubs.
        let below_a0 = from.number == "A" && to.kind.is_none() && to.number.parse::<u8>().is_ok();
        (!below_a0 || numbers.contains(&to.number.as_str())).then_some(Word::Clubs(from, Some(to)))
    })
}

/// Phrases without a figure.
fn settled(plain: &str) -> Option<Word> {
    let facing = |word: &str| match word {
        "up" => Some(Facing::Up),
        "down" => Some(Facing::Down),
        "away" => Some(Facing::Away),
        _ => None,
    };
    if let Some(side) = plain.strip_prefix("soft side ") {
        return Some(Word::SoftSide(match side.trim_start_matches("to the ").trim_start_matches("to ") {
            "heel" => SoftSide::Heel,
            "toe" => SoftSide::Toe,
            "target" => SoftSide::Target,
            "away" | "away from target" | "away from the target" => SoftSide::AwayFromTarget,
            _ => return None,
        }));
    }
    let after = |prefixes: &[&str]| prefixes.iter().find_map(|prefix| plain.strip_prefix(prefix));
    if let Some(name) = after(&["adapter at ", "adapter "]) {
        return Some(Word::AdapterSetting(name.to_owned()));
    }
    if let Some(side) = after(&["grip graphics ", "grip logo ", "grip label ", "grip ", "logo "]) {
        return facing(side).map(Word::GripGraphics);
    }
    if let Some(side) = after(&["shaft graphics ", "shaft logo ", "shaft label ", "shaft "]) {
        return facing(side).map(Word::ShaftGraphics);
    }
    Some(match plain {
        "to cap" | "to the cap" => Word::LengthTo(LengthTo::Cap),
        "to shaft end" | "to the shaft end" => Word::LengthTo(LengthTo::ShaftEnd),
        "std" | "standard" | "std length" | "standard length" => Word::LengthOffset(0.0),
        "std lie" | "standard lie" => Word::LieOffset(0.0),
        "std loft" | "standard loft" => Word::LoftOffset(0.0),
        "no wraps" => Word::Wraps(Some(0), None),
        _ => return None,
    })
}

/// "2 wraps", "2 wraps + 1 lower hand", "1 lower hand".
fn wraps(plain: &str) -> Option<Outcome> {
    const LAYERS_MAX: u8 = 12;
    let count = |text: &str, words: &[&str]| {
        words.iter().find_map(|w| text.trim().strip_suffix(w)).and_then(|n| n.trim().parse::<u8>().ok())
    };
    let full = |text: &str| count(text, &["wraps", "wrap"]);
    let lower = |text: &str| {
        count(
            text,
            &["wraps lower hand", "wrap lower hand", "lower hand wraps", "lower hand wrap", "lower hand", "lower"],
        )
    };
    let read = match plain.split_once('+') {
        Some((a, b)) if !a.trim().is_empty() => (Some(full(a)?), Some(lower(b)?)),
        Some(_) => return None,
        None => match (lower(plain), full(plain)) {
            (Some(n), _) => (None, Some(n)),
            (None, Some(n)) => (Some(n), None),
            (None, None) => return None,
        },
    };
    if read.0.max(read.1).is_some_and(|n| n > LAYERS_MAX) {
        return Some(Err(WordFault::Layers { most: LAYERS_MAX }));
    }
    Some(Ok(Word::Wraps(read.0, read.1)))
}

/// "±0.3", "±1 mm", "±0.5°", "±2 cpm".
fn tolerance(plain: &str) -> Option<Outcome> {
    let rest = plain.strip_prefix('±').or_else(|| plain.strip_prefix("+/-")).or_else(|| plain.strip_prefix("+-"))?;
    let rest = rest.trim();
    let word = if let Ok(points) = parse_swing_weight_offset(rest) {
        Word::SwingWeightTolerance(points.point_difference())
    } else if let Some(cpm) = rest.strip_suffix("cpm").and_then(|n| parse_frequency(n).ok()) {
        Word::CpmTolerance(cpm.cpm())
    } else if let Ok(angle) = parse_angle(rest) {
        Word::AngleTolerance(angle.deg())
    } else {
        Word::LengthTolerance(parse_length(rest, LengthUnit::Millimetre).ok()?.mm())
    };
    let size = match word {
        Word::SwingWeightTolerance(v) | Word::CpmTolerance(v) | Word::AngleTolerance(v) | Word::LengthTolerance(v) => v,
        _ => return None,
    };
    if !(size.is_finite() && size > 0.0 && size <= 30.0) {
        return Some(Err(WordFault::Tolerance));
    }
    Some(Ok(word))
}

/// "wedges +2 points".
fn wedge_offset(plain: &str) -> Option<Outcome> {
    const WEDGE_MAX_POINTS: f64 = 20.0;
    let rest = plain.strip_prefix("wedges ").or_else(|| plain.strip_prefix("wedge "))?;
    let rest = rest.trim();
    if !rest.starts_with(['+', '-', '−', '–']) {
        return None;
    }
    let points = parse_swing_weight_offset(rest).ok()?.point_difference();
    if points.abs() > WEDGE_MAX_POINTS {
        return Some(Err(WordFault::WedgeOffset { limit_points: WEDGE_MAX_POINTS }));
    }
    Some(Ok(Word::WedgeOffset(points)))
}

/// The step of "… +0.5 a club".
fn step(plain: &str) -> Option<&str> {
    ["a club", "per club", "each club", "/club"].iter().find_map(|w| plain.strip_suffix(w)).map(str::trim)
}

/// "D3", "D2.5", "D2 +0.5 a club", "+0.5 a club".
fn swing_weight(plain: &str) -> Option<Outcome> {
    const STEP_MAX_POINTS: f64 = 5.0;
    let (start, by) = match step(plain) {
        None => (plain, None),
        Some(both) => {
            let sign = both.rfind(['+', '−', '-', '–'])?;
            let by = parse_swing_weight_offset(&both[sign..]).ok()?.point_difference();
            (both[..sign].trim(), Some(by))
        }
    };
    let points = match (start, by) {
        ("", Some(_)) => None,
        _ => Some(SwingWeight::from(parse_swing_weight(start).ok()?)),
    };
    if by.is_some_and(|by| by.abs() > STEP_MAX_POINTS) {
        return Some(Err(WordFault::SwingWeightStep { limit_points: STEP_MAX_POINTS }));
    }
    // A child's club lies far below the letters; what can be read of a club can be asked for.
    let (low_points, _) = What::SwingWeight.possible();
    if points.is_some_and(|b| !b.on_scale(1) && !(low_points..0.0).contains(&b.points())) {
        return Some(Err(WordFault::SwingWeightRange { low_points, high_points: 69.9 }));
    }
    Some(Ok(Word::SwingWeight(points.map(SwingWeight::points), by)))
}

/// "300 cpm", "300 cpm +4 a club".
fn cpm(plain: &str) -> Option<Outcome> {
    let (start, by) = match step(plain) {
        None => (plain, None),
        Some(both) => {
            let sign = both.rfind(['+', '−', '-', '–'])?;
            let factor = if both[sign..].starts_with('+') { 1.0 } else { -1.0 };
            let size = both[sign..].trim_start_matches(['+', '−', '-', '–']);
            let by = parse_frequency(size.trim()).ok()?.cpm();
            (both[..sign].trim(), Some(by * factor))
        }
    };
    if !start.contains(|c: char| c.is_alphabetic()) {
        return None;
    }
    let value = parse_frequency(start).ok()?.cpm();
    if !(50.0..=600.0).contains(&value) || by.is_some_and(|by| by.abs() > 30.0) {
        return Some(Err(WordFault::Frequency));
    }
    Some(Ok(Word::Cpm(value, by)))
}

/// "total 428 g", "total 428 g +7 a club".
fn total_mass(plain: &str) -> Option<Outcome> {
    let plain = plain.strip_prefix("total ")?;
    let (start, by) = match step(plain) {
        None => (plain, None),
        Some(both) => {
            let sign = both.rfind(['+', '−', '-', '–'])?;
            (both[..sign].trim(), Some(parse_mass_offset(&both[sign..], MassUnit::Gram).ok()?.g()))
        }
    };
    let value = parse_mass(start, MassUnit::Gram).ok()?.g();
    let (low_g, high_g, step_g) = (150.0, 1200.0, 60.0);
    if !(low_g..=high_g).contains(&value) || by.is_some_and(|by| by.abs() > step_g) {
        return Some(Err(WordFault::TotalMass { low_g, high_g, step_g }));
    }
    Some(Ok(Word::TotalMass(value, by)))
}

/// "2 up", "1° flat", "1 strong", "lie 62", "loft +1".
fn angles(plain: &str) -> Option<Outcome> {
    let limit_deg = ANGLE_OFFSET_MAX_DEG;
    let (bend_lie, bend_loft) = (WordFault::BendLie { limit_deg }, WordFault::BendLoft { limit_deg });
    let bounded = |deg: f64, word: fn(f64) -> Word, fault: &WordFault| {
        if deg.abs() <= limit_deg { Ok(word(deg)) } else { Err(fault.clone()) }
    };
    let (low_lie, high_lie, low_loft, high_loft) = (40.0, 80.0, 0.0, 80.0);
    for (name, absolute, offset, (low, high), fault, bend) in [
        (
            "lie",
            Word::Lie as fn(f64) -> Word,
            Word::LieOffset as fn(f64) -> Word,
            (low_lie, high_lie),
            WordFault::Lie { low_deg: low_lie, high_deg: high_lie },
            &bend_lie,
        ),
        (
            "loft",
            Word::Loft,
            Word::LoftOffset,
            (low_loft, high_loft),
            WordFault::Loft { low_deg: low_loft, high_deg: high_loft },
            &bend_loft,
        ),
    ] {
        let Some(rest) = plain.strip_prefix(name).and_then(|r| r.strip_prefix(' ')) else { continue };
        if let Ok(angle) = parse_angle(rest) {
            let inside = (low..=high).contains(&angle.deg());
            return Some(if inside { Ok(absolute(angle.deg())) } else { Err(fault) });
        }
        return parse_angle_offset(rest).ok().map(|a| bounded(a.deg(), offset, bend));
    }
    let lie = ["up", "upright", "flat", "down"];
    if lie.iter().any(|w| plain.strip_suffix(w).is_some_and(|r| !r.ends_with(char::is_alphabetic))) {
        return parse_angle_offset(plain).ok().map(|a| bounded(a.deg(), Word::LieOffset, &bend_lie));
    }
    for (word, sign) in [("strong", -1.0), ("weak", 1.0)] {
        if let Some(rest) = plain.strip_suffix(word) {
            let size = parse_angle(rest.trim()).ok()?.deg();
            return Some(bounded(size * sign, Word::LoftOffset, &bend_loft));
        }
    }
    None
}

/// "+1/2", "-1/4 in", "+12 mm", "1/2 over", "36 3/4 in", "length 36.5 in".
fn length(plain: &str) -> Option<Outcome> {
    let rest = plain.strip_prefix("length ").map_or(plain, str::trim);
    let signed = rest.starts_with(['+', '-', '−', '–']);
    let directed = ["over", "under", "longer", "shorter", "long", "short"].iter().any(|w| rest.ends_with(w));
    // A bare "+2" could be degrees; a fraction is only ever inches, as every builder writes them.
    let has_unit = rest.contains(|c: char| c.is_alphabetic() || matches!(c, '"' | '″' | '”' | '“' | '\'' | '′' | '’'));
    let has_fraction = rest.contains(['/', '⁄', '∕', '½', '¼', '¾', '⅛', '⅜', '⅝', '⅞']);
    if !(has_unit || has_fraction) {
        return None;
    }
    if signed || directed {
        let by_mm = parse_length_offset(rest, LengthUnit::Inch).ok()?.mm();
        let inside = by_mm.abs() <= LENGTH_OFFSET_MAX_MM;
        return inside.then_some(Ok(Word::LengthOffset(by_mm)));
    }
    let length_mm = parse_length(rest, LengthUnit::Inch).ok()?.mm();
    LENGTH_MM.contains(&length_mm).then_some(Ok(Word::Length(length_mm)))
}

#[cfg(test)]
mod tests {
    use super::*;

    const NUMBERS: [&str; 8] = ["4", "5", "6", "7", "8", "9", "P", "G"];

    /// How many texts are tried as a phrase.
    fn tries(short: &str) -> usize {
        let mut tries = 0;
        let _ = phrases_by(short, &NUMBERS, &mut |text| {
            tries += 1;
            phrase(text, &NUMBERS)
        });
        tries
    }

    /// A pasted line without commas is read in a time that grows with its length: each further word costs the same.
    #[test]
    fn a_long_line_without_separators_takes_time_in_proportion() {
        let line = |n: usize| format!("5-PW D3 ±0.3{}", " +½ 2 up D3 ±0.3".repeat(n));
        let [few, more, most] = [60, 120, 180].map(|n| tries(&line(n)));
        assert_eq!(most - more, more - few, "{few}, {more}, {most}");
        // One word of its own length tries nothing that is longer than a phrase.
        assert_eq!(tries(&"x".repeat(4000)), 0);
    }

    #[test]
    fn a_text_beyond_the_limit_is_refused_before_it_is_read() {
        let long = "D3, ".repeat(1025);
        let refused = phrases(&long, &NUMBERS).expect_err("too long").to_string();
        assert!(refused.contains("4100") && refused.contains("4096"), "{refused}");
        assert_eq!(tries(&long), 0);
    }

    /// The longest phrases that mean something are within the bounds, also with signs and units apart.
    #[test]
    fn the_longest_phrases_are_read() {
        for text in [
            "soft side to away from the target",
            "total 428 g + 7 g a club",
            "2 wraps + 1 lower hand",
            "4,5,6,7,8,9",
            "D2 + 0.5 points a club",
        ] {
            assert_eq!(phrases(text, &NUMBERS).map(|p| p.len()), Ok(1), "{text}");
        }
    }
}
