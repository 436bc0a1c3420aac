//! Labels as a printer reads them: the code as a QR symbol and as Code 128, and in letters with what it is.
//!
//! Three page languages, each only with commands that its published manual describes. The manuals could not be opened here:
//! commands and their values are from memory of them, and each is named beside the bytes that it makes. The printer draws the codes
//! itself; the sizes are worked out here, so that nothing is sent that would not be on the label.

mod epl;
mod esc_pos;
mod zpl;

use trade::label_printer::{LabelPrinter, MOST_COPIES, PageLanguage, PrinterSetting};

/// Bytes that a QR symbol of error correction M holds, by its version from 1 (ISO/IEC 18004, table 7, from memory).
const QR_M_BYTES: [usize; 6] = [14, 26, 42, 62, 84, 106];
/// Modules of white around a QR symbol (ISO/IEC 18004).
const QR_QUIET: u32 = 4;
/// Modules of white at each end of a Code 128 symbol (ISO/IEC 15417).
const BAR_QUIET: u32 = 10;
/// Thinnest module of a QR symbol, millimetres: what a hand scanner reads from paper. Common practice, no source.
const QR_MODULE_MM: f64 = 0.3;
/// Thinnest bar, millimetres. Common practice, no source.
const BAR_MM: f64 = 0.19;
/// Lowest bars, millimetres. Common practice, no source.
const BARS_HIGH_MM: f64 = 6.0;
/// Smallest and largest letters, millimetres.
const LETTERS_MM: (f64, f64) = (2.0, 5.5);
/// How wide a letter is against its height, on average, in a printer's own narrow type. From memory.
const LETTER_WIDE: f64 = 0.6;
/// White at the edge of a label, millimetres.
const EDGE_MM: f64 = 1.0;

/// What is on one label.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Label {
    /// The code that a scanner reads.
    pub code: String,
    /// What it is, line by line: model and number, mass. An empty line is left out.
    pub lines: Vec<String>,
}

fact::facts! {
    /// Why labels are not sent to a printer. Nothing was printed.
    pub enum LabelFault: "label_fault" {
        /// There is nothing to print.
        Nothing,
        /// A label without a code.
        NoCode,
        /// The code does not fit the label so that a scanner could read it.
        TooSmall {
            /// The code that was to be on it, as the part or club has it.
            code: String,
            /// How wide the label is.
            width_mm: f64,
            /// How high it is.
            height_mm: f64,
        },
        /// More letters than a code on a label has.
        TooLong {
            /// The code as the part or club has it.
            code: String,
            /// Most bytes.
            most: usize,
        },
    }
}

/// Where everything is on a label, in dots.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Places {
    width: u32,
    height: u32,
    gap: u32,
    edge: u32,
    /// Dots of a module of the QR symbol.
    qr_module: u32,
    /// Where the QR symbol begins, with its white left of it and above.
    qr_at: (u32, u32),
    /// The bars, where they can be scanned: where they begin, dots of the thinnest, their height.
    bars: Option<Bars>,
    /// Each line: where it begins, height of its letters, the text.
    texts: Vec<(u32, u32, u32, String)>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Bars {
    x: u32,
    y: u32,
    module: u32,
    high: u32,
}

/// Modules on a side of the QR symbol of a code, at error correction M.
fn qr_modules(code: &str) -> Option<u32> {
    let version = QR_M_BYTES.iter().position(|most| code.len() <= *most)?;
    // Version 1 has 21 modules, each further one four more (ISO/IEC 18004).
    u32::try_from(21 + 4 * version).ok()
}

/// Dots of a length.
fn dots(mm: f64, dots_per_mm: f64) -> u32 {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a label is some thousand dots wide")]
    let dots = (mm.max(0.0) * dots_per_mm).round() as u32;
    dots
}

fn places(printer: &LabelPrinter, label: &Label) -> Result<Places, LabelFault> {
    let code = label.code.trim();
    if code.is_empty() {
        return Err(LabelFault::NoCode);
    }
    let most = QR_M_BYTES[QR_M_BYTES.len() - 1];
    let modules = qr_modules(code).ok_or_else(|| LabelFault::TooLong { code: code.to_owned(), most })?;
    let per_mm = printer.fineness.dots_per_mm();
    let of = |mm: f64| dots(mm, per_mm);
    let (width, height, edge) = (of(printer.width_mm), of(printer.height_mm), of(EDGE_MM));
    let too_small =
        || LabelFault::TooSmall { code: code.to_owned(), width_mm: printer.width_mm, height_mm: printer.height_mm };
    let bars_high = of((printer.height_mm * 0.25).max(BARS_HIGH_MM));
    let bars = bars_of(code, width, height, edge, bars_high, of(BAR_MM).max(1));
    // The bars leave only where they would take the room of the square code.
    let with_bars = bars.map(|bars| qr_module(modules, width, bars.y, edge));
    let least = of(QR_MODULE_MM).max(1);
    let (bars, module) = match with_bars {
        Some(module) if module >= least => (bars, module),
        _ => (None, qr_module(modules, width, height, edge)),
    };
    if module < least {
        return Err(too_small());
    }
    let white = QR_QUIET * module;
    let qr_at = (edge.max(white), edge.max(white));
    let left = qr_at.0 + modules * module + white;
    let bottom = bars.map_or(height, |bars| bars.y);
    let texts = texts_of(code, label, (left, edge), width.saturating_sub(edge), bottom, per_mm);
    Ok(Places { width, height, gap: of(printer.gap_mm), edge, qr_module: module, qr_at, bars, texts })
}

/// The largest module at which the symbol takes no more than half of the width and fits above what is below it.
fn qr_module(modules: u32, width: u32, bottom: u32, edge: u32) -> u32 {
    let room = (width / 2).min(bottom.saturating_sub(edge));
    // Printers take 1 to 10 dots.
    (room / (modules + 2 * QR_QUIET)).min(10)
}

/// The bars at the foot; none where they would be too thin to scan, or the code has letters that they cannot hold.
fn bars_of(code: &str, width: u32, height: u32, edge: u32, high: u32, least: u32) -> Option<Bars> {
    if !code.bytes().all(|b| (b' '..=b'~').contains(&b)) {
        return None;
    }
    // Start, a symbol for each letter, check digit: 11 modules each; the stop has 13 (ISO/IEC 15417).
    let modules = u32::try_from(11 * (code.len() + 2) + 13).ok()?;
    let module = (width / (modules + 2 * BAR_QUIET)).min(4);
    let y = height.checked_sub(high + edge)?;
    (module >= least).then(|| Bars { x: (width - modules * module) / 2, y, module, high })
}

/// The code in large letters and the lines under it, right of the square code, as large as they fit.
fn texts_of(
    code: &str,
    label: &Label,
    (left, top): (u32, u32),
    right: u32,
    bottom: u32,
    per_mm: f64,
) -> Vec<(u32, u32, u32, String)> {
    let lines: Vec<&str> = std::iter::once(code)
        .chain(label.lines.iter().map(|line| line.trim()).filter(|line| !line.is_empty()))
        .collect();
    let room = f64::from(right.saturating_sub(left));
    let (least, most) = (LETTERS_MM.0 * per_mm, LETTERS_MM.1 * per_mm);
    let line_room = f64::from(bottom.saturating_sub(top)) / lines.len() as f64 / 1.25;
    let mut y = top;
    let mut found = Vec::new();
    for line in lines {
        let letters = line.chars().count().max(1) as f64;
        let high = (room / (LETTER_WIDE * letters)).min(line_room).min(most).max(least);
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "letters of a label")]
        let (fit, high) = ((room / (LETTER_WIDE * high)).floor() as usize, high.round() as u32);
        if fit == 0 || y + high > bottom {
            // The code itself is in the symbol: what has no room is left out.
            continue;
        }
        found.push((left, y, high, line.chars().take(fit).collect()));
        y += high + high / 4;
    }
    found
}

/// The bytes to send to a printer for the labels, `copies` of each.
///
/// # Errors
/// Nothing to print, a label without a code or with one that does not fit; more copies than anybody means. No label is then
/// left out in silence.
pub fn pages(printer: &LabelPrinter, labels: &[Label], copies: u32) -> Result<Vec<u8>, fact::Refusal> {
    if labels.is_empty() {
        return Err(LabelFault::Nothing.into());
    }
    check_copies(copies)?;
    let mut bytes = Vec::new();
    for label in labels {
        let code = label.code.trim();
        let at = places(printer, label)?;
        match printer.language {
            PageLanguage::Zpl => zpl::page(&mut bytes, code, &at, copies),
            PageLanguage::Epl => epl::page(&mut bytes, code, &at, copies, printer.fineness),
            PageLanguage::EscPos => (0..copies).for_each(|_| esc_pos::page(&mut bytes, code, &at)),
        }
    }
    Ok(bytes)
}

/// Refuses a count that nobody means.
///
/// # Errors
/// No copy, or more than anybody means.
pub fn check_copies(copies: u32) -> Result<(), PrinterSetting> {
    let meant = (1..=MOST_COPIES).contains(&copies);
    if meant { Ok(()) } else { Err(PrinterSetting::Copies { most: MOST_COPIES }) }
}

/// What a printer of a language is asked to tell whether it can print; none where its language has no short question.
#[must_use]
pub fn question(language: PageLanguage) -> Option<&'static [u8]> {
    match language {
        PageLanguage::Zpl => Some(zpl::QUESTION),
        PageLanguage::Epl => None,
        PageLanguage::EscPos => Some(esc_pos::QUESTION),
    }
}

fact::facts! {
    /// What a printer said that keeps it from printing.
    pub enum PrinterSaid: "printer_said" {
        /// No label is in it.
        NoPaper,
        /// No ribbon is in it.
        NoRibbon,
        /// Its head or cover is open.
        Open,
        /// Somebody stopped it.
        Paused,
        /// Something else is wrong with it.
        Wrong,
    }
}

/// What an answer to [`question`] says: `Some(None)` for a printer that can print, `Some(Some(…))` for what is wrong, none where
/// it is no whole answer yet.
#[must_use]
pub fn answer(language: PageLanguage, bytes: &[u8]) -> Option<Option<PrinterSaid>> {
    match language {
        PageLanguage::Zpl => zpl::answer(bytes),
        PageLanguage::Epl => None,
        PageLanguage::EscPos => esc_pos::answer(bytes),
    }
}

/// A text in Windows code page 1252, which EPL2 and ESC/POS printers have; a letter that it lacks is a question mark.
fn in_1252(text: &str) -> Vec<u8> {
    /// The letters at 0x80 to 0x9F (the Unicode Consortium's table CP1252, from memory).
    const UPPER: [char; 32] = [
        '€', '\u{81}', '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', '\u{8d}', 'Ž', '\u{8f}', '\u{90}', '‘',
        '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', '\u{9d}', 'ž', 'Ÿ',
    ];
    let byte = |letter: char| match u32::from(letter) {
        point @ (0x20..=0x7e | 0xa0..=0xff) => u8::try_from(point).unwrap_or(b'?'),
        _ => (0x80_u8..).zip(UPPER).find(|(_, upper)| *upper == letter).map_or(b'?', |(byte, _)| byte),
    };
    text.chars().filter(|letter| !letter.is_control()).map(byte).collect()
}
