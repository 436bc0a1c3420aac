//! ESC/POS: `ESC @` begins, `ESC t 16` chooses code page 1252, `GS ( k` a QR symbol, `GS h`, `GS w`, `GS H` and `GS k 73` bars, `ESC E` and
//! `GS !` letters, `GS V 66` cuts; `DLE EOT` for its state.

use super::{Places, PrinterSaid, in_1252};

const ESC: u8 = 0x1b;
const GS: u8 = 0x1d;
/// `DLE EOT 2` asks why it is off line, `DLE EOT 4` for the paper.
pub(super) const QUESTION: &[u8] = &[0x10, 0x04, 2, 0x10, 0x04, 4];

/// One label, cut behind it.
pub(super) fn page(bytes: &mut Vec<u8>, code: &str, at: &Places) {
    bytes.extend([ESC, b'@', ESC, b't', 16]);
    symbol(bytes, &[65, 50, 0]); // model 2
    symbol(bytes, &[67, u8::try_from(at.qr_module.clamp(1, 16)).unwrap_or(3)]); // dots of a module
    symbol(bytes, &[69, 49]); // error correction M
    let mut stored = vec![80, 48];
    stored.extend_from_slice(code.as_bytes());
    symbol(bytes, &stored);
    symbol(bytes, &[81, 48]); // print it
    for (line, text) in (0..).zip(&at.texts) {
        // The code stands out: twice as high and wide, and bold.
        let (bold, size) = if line == 0 { (1, 0x11) } else { (0, 0x00) };
        bytes.extend([ESC, b'E', bold, GS, b'!', size]);
        bytes.extend(in_1252(&text.3));
        bytes.push(b'\n');
    }
    if let Some(bars) = at.bars {
        let high = u8::try_from(bars.high.clamp(1, 255)).unwrap_or(u8::MAX);
        let module = u8::try_from(bars.module.clamp(2, 6)).unwrap_or(2);
        // Set B; a brace in it is doubled.
        let data = code.replace('{', "{{");
        let length = u8::try_from(data.len() + 2).unwrap_or(u8::MAX);
        bytes.extend([GS, b'h', high, GS, b'w', module, GS, b'H', 0, GS, b'k', 73, length, b'{', b'B']);
        bytes.extend_from_slice(data.as_bytes());
        bytes.push(b'\n');
    }
    bytes.extend([GS, b'V', 66, 0]);
}

/// `GS ( k` with its length, for the QR symbol (49).
fn symbol(bytes: &mut Vec<u8>, what: &[u8]) {
    let [low, high] = u16::try_from(what.len() + 1).unwrap_or(u16::MAX).to_le_bytes();
    bytes.extend([GS, b'(', b'k', low, high, 49]);
    bytes.extend_from_slice(what);
}

/// Two bytes: why it is off line (2: cover, 5: paper, 6: an error), then the paper (5 and 6: at its end). Bit 4 and bit 1 are set in
/// each, bits 0 and 7 are not.
pub(super) fn answer(bytes: &[u8]) -> Option<Option<PrinterSaid>> {
    let states: Vec<u8> = bytes.iter().copied().filter(|byte| byte & 0b1001_0011 == 0b0001_0010).collect();
    let [offline, paper, ..] = states.as_slice() else { return None };
    Some(if paper & 0x60 != 0 || offline & 0x20 != 0 {
        Some(PrinterSaid::NoPaper)
    } else if offline & 0x04 != 0 {
        Some(PrinterSaid::Open)
    } else if offline & 0x40 != 0 {
        Some(PrinterSaid::Wrong)
    } else {
        None
    })
}
