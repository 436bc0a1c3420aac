//! ZPL II: `^XA … ^XZ` around each label, `^CI28` for UTF-8, `^PW`, `^LL`, `^LH`, `^FO … ^FS` for each field, `^A0` letters, `^BQ` a QR
//! symbol, `^BY` and `^BC` bars, `^FH` for letters that are commands, `^PQ` copies; `~HS` for its state.

use super::{Places, PrinterSaid};
use std::fmt::Write;

/// Host status: the printer answers three lines between STX and ETX.
pub(super) const QUESTION: &[u8] = b"~HS";

/// One label.
pub(super) fn page(bytes: &mut Vec<u8>, code: &str, at: &Places, copies: u32) {
    let mut page = String::new();
    // Writing to a string does not fail.
    let _ = write!(page, "^XA^CI28^PW{}^LL{}^LH0,0", at.width, at.height);
    // Model 2, error correction M, the printer chooses the mode.
    let (x, y) = at.qr_at;
    let _ = write!(page, "^FO{x},{y}^BQN,2,{}^FH^FDMA,{}^FS", at.qr_module, escaped(code));
    if let Some(bars) = at.bars {
        // In the bars `>` begins a change of set, and `>0` is the sign itself.
        let data = escaped(&code.replace('>', ">0"));
        let _ = write!(page, "^FO{},{}^BY{}^BCN,{},N,N,N^FH^FD{data}^FS", bars.x, bars.y, bars.module, bars.high);
    }
    for (x, y, high, text) in &at.texts {
        let wide = high * 9 / 10;
        let _ = write!(page, "^FO{x},{y}^A0N,{high},{wide}^FH^FD{}^FS", escaped(text));
    }
    let _ = write!(page, "^PQ{copies}^XZ\r\n");
    bytes.extend_from_slice(page.as_bytes());
}

/// A text whose signs are no commands: `^`, `~` and the mark of `^FH` itself as hexadecimal digits.
fn escaped(text: &str) -> String {
    let mut out = String::new();
    for letter in text.chars().filter(|letter| !letter.is_control()) {
        match letter {
            '^' | '~' | '_' => {
                let _ = write!(out, "_{:02X}", u32::from(letter));
            }
            other => out.push(other),
        }
    }
    out
}

/// The first line has the paper and the pause as its second and third figure, the second line head and ribbon as its third and
/// fourth.
pub(super) fn answer(bytes: &[u8]) -> Option<Option<PrinterSaid>> {
    let text = String::from_utf8_lossy(bytes);
    let lines: Vec<Vec<&str>> = text
        .split('\u{3}')
        .filter_map(|line| line.split_once('\u{2}'))
        .map(|(_, line)| line.split(',').map(str::trim).collect())
        .collect();
    let [first, second, ..] = lines.as_slice() else { return None };
    let on = |line: &[&str], place: usize| line.get(place).is_some_and(|flag| *flag == "1");
    Some(if on(first, 1) {
        Some(PrinterSaid::NoPaper)
    } else if on(second, 2) {
        Some(PrinterSaid::Open)
    } else if on(second, 3) {
        Some(PrinterSaid::NoRibbon)
    } else if on(first, 2) {
        Some(PrinterSaid::Paused)
    } else {
        None
    })
}
