//! EPL2: a line a command. `N` empties the picture, `q` and `Q` set width, height and gap, `I` the code page, `b` draws a QR symbol, `B`
//! bars, `A` letters, `P` prints.

use super::{Places, in_1252};
use trade::label_printer::Fineness;

/// Fonts 1 to 4: width and height of a letter with its gap, dots, at 203 and at 300 dots an inch.
const FONTS_203: [(u32, u32); 4] = [(10, 14), (12, 18), (14, 22), (16, 26)];
const FONTS_300: [(u32, u32); 4] = [(14, 22), (18, 30), (22, 38), (26, 46)];

/// One label.
pub(super) fn page(bytes: &mut Vec<u8>, code: &str, at: &Places, copies: u32, fineness: Fineness) {
    let line = |bytes: &mut Vec<u8>, command: String, text: Option<&[u8]>| {
        bytes.extend_from_slice(command.as_bytes());
        if let Some(text) = text {
            bytes.push(b'"');
            bytes.extend_from_slice(text);
            bytes.push(b'"');
        }
        bytes.push(b'\n');
    };
    // The empty line ends what another program may have left unfinished.
    line(bytes, "\nN".into(), None);
    line(bytes, "I8,A,001".into(), None);
    line(bytes, format!("q{}", at.width), None);
    line(bytes, format!("Q{},{}", at.height, at.gap), None);
    let (x, y) = at.qr_at;
    line(bytes, format!("b{x},{y},Q,m2,s{},eM,iA,", at.qr_module), Some(&quoted(code.as_bytes())));
    if let Some(bars) = at.bars {
        let (narrow, wide) = (bars.module, bars.module * 2);
        let command = format!("B{},{},0,1,{narrow},{wide},{},N,", bars.x, bars.y, bars.high);
        line(bytes, command, Some(&quoted(code.as_bytes())));
    }
    let fonts = match fineness {
        Fineness::Dpi203 => FONTS_203,
        Fineness::Dpi300 => FONTS_300,
    };
    for (x, y, high, text) in &at.texts {
        let letters = u32::try_from(text.chars().count().max(1)).unwrap_or(u32::MAX);
        let room = at.width.saturating_sub(at.edge + x);
        let fits = |(wide, tall): &&(u32, u32)| *tall <= *high && wide.saturating_mul(letters) <= room;
        let chosen = fonts.iter().rposition(|font| fits(&font)).unwrap_or(0);
        // The smallest letters of the printer may still be too wide: what would run over the edge is left out.
        let most = usize::try_from(room / fonts[chosen].0).unwrap_or(0);
        let text: String = text.chars().take(most).collect();
        line(bytes, format!("A{x},{y},0,{},1,1,N,", chosen + 1), Some(&quoted(&in_1252(&text))));
    }
    line(bytes, format!("P{copies}"), None);
}

/// Between quotes a quote and a backslash have a backslash before them.
fn quoted(text: &[u8]) -> Vec<u8> {
    let mut out = Vec::with_capacity(text.len());
    for byte in text.iter().copied().filter(|byte| !byte.is_ascii_control()) {
        if matches!(byte, b'"' | b'\\') {
            out.push(b'\\');
        }
        out.push(byte);
    }
    out
}
