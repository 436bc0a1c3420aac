//! Goal: what is sent to a label printer says the code to a scanner, in three page languages, and stays on the label. Method: a
//! reader of each language by itself, written from the commands as their manuals name them (from memory); codes with the signs
//! that are commands there; sizes from a small label to a large one. Sizes of the symbols: ISO/IEC 18004 and 15417, from memory.

use desk::label::{Label, PrinterSaid, answer, pages};
use proptest::prelude::*;
use trade::label_printer::{Fineness, LabelPrinter, PageLanguage};

/// A label as a printer would draw it.
#[derive(Debug, Default, Clone, PartialEq)]
struct Drawn {
    qr: Option<(u32, u32, u32, String)>,
    bars: Option<(u32, u32, u32, u32, String)>,
    texts: Vec<(u32, u32, u32, String)>,
    size: (u32, u32),
    copies: u32,
}

fn printer(language: PageLanguage, width_mm: f64, height_mm: f64) -> LabelPrinter {
    LabelPrinter {
        name: "shelf".into(),
        to: "printer.local".into(),
        language,
        fineness: Fineness::Dpi203,
        width_mm,
        height_mm,
        gap_mm: 3.0,
    }
}

fn label(code: &str) -> Label {
    Label { code: code.into(), lines: vec!["Siskin 7-iron".into(), "265.1 g".into()] }
}

fn sent(language: PageLanguage, code: &str) -> Vec<u8> {
    pages(&printer(language, 62.0, 29.0), &[label(code)], 2).expect("pages")
}

fn numbers(text: &str) -> Vec<u32> {
    text.split(',').map(|n| n.trim().parse().unwrap_or(0)).collect()
}

/// Reads ZPL II: a command begins with `^`, its data goes to the next one.
fn zpl(bytes: &[u8]) -> Vec<Drawn> {
    let text = String::from_utf8(bytes.to_vec()).expect("UTF-8");
    let mut labels = Vec::new();
    for page in text.split("^XA").skip(1) {
        let page = page.split("^XZ").next().expect("an end");
        let mut drawn = Drawn::default();
        let (mut at, mut field, mut module, mut hex) = ((0, 0), String::new(), 0, false);
        for command in page.split('^').skip(1) {
            let (name, data) = command.split_at(2);
            match name {
                "PW" => drawn.size.0 = data.parse().expect("a width"),
                "LL" => drawn.size.1 = data.parse().expect("a height"),
                "PQ" => drawn.copies = data.trim().parse().expect("a count"),
                "FO" => at = (numbers(data)[0], numbers(data)[1]),
                "BY" => module = data.parse().expect("a module"),
                "BQ" | "BC" | "A0" => field = command.to_owned(),
                "FH" => hex = true,
                "FD" => {
                    assert!(hex, "a text without ^FH: {command}");
                    let data = unhex(data);
                    match &field[..2] {
                        "BQ" => {
                            let size = numbers(&field[2..])[2];
                            let data = data.strip_prefix("MA,").expect("level and mode");
                            drawn.qr = Some((at.0, at.1, size, data.to_owned()));
                        }
                        "BC" => {
                            let high = numbers(&field[2..])[1];
                            drawn.bars = Some((at.0, at.1, module, high, data.replace(">0", ">")));
                        }
                        _ => drawn.texts.push((at.0, at.1, numbers(&field[2..])[1], data)),
                    }
                }
                "FS" => (field, hex) = (String::new(), false),
                "CI" => assert_eq!(data, "28"),
                "LH" => assert_eq!(data, "0,0"),
                other => panic!("an unknown command {other}"),
            }
        }
        labels.push(drawn);
    }
    labels
}

fn unhex(text: &str) -> String {
    let (mut out, mut rest) = (Vec::new(), text.as_bytes());
    while let [first, others @ ..] = rest {
        if *first == b'_' {
            let digits = std::str::from_utf8(&others[..2]).expect("digits");
            out.push(u8::from_str_radix(digits, 16).expect("hexadecimal"));
            rest = &others[2..];
        } else {
            out.push(*first);
            rest = others;
        }
    }
    String::from_utf8(out).expect("UTF-8")
}

/// Reads EPL2: a line a command, texts between quotes with a backslash before a quote and itself.
fn epl(bytes: &[u8]) -> Vec<Drawn> {
    let mut labels: Vec<Drawn> = Vec::new();
    for line in bytes.split(|byte| *byte == b'\n').filter(|line| !line.is_empty()) {
        let quote = line.iter().position(|byte| *byte == b'"');
        let (head, data) = line.split_at(quote.unwrap_or(line.len()));
        let head = std::str::from_utf8(head).expect("ASCII");
        let mut text = Vec::new();
        let mut inside = data.iter().skip(1);
        while let Some(byte) = inside.next() {
            match byte {
                b'\\' => text.push(*inside.next().expect("an escaped sign")),
                b'"' => break,
                other => text.push(*other),
            }
        }
        assert!(inside.next().is_none(), "something behind the text of {head}");
        // Code page 1252 is Latin-1 for the letters of this test.
        let text: String = text.iter().map(|byte| char::from(*byte)).collect();
        let (name, rest) = head.split_at(1);
        if name == "N" {
            labels.push(Drawn::default());
            continue;
        }
        let drawn = labels.last_mut().expect("N first");
        match name {
            "I" => assert_eq!(rest, "8,A,001"),
            "q" => drawn.size.0 = rest.parse().expect("a width"),
            "Q" => drawn.size.1 = numbers(rest)[0],
            "P" => drawn.copies = rest.parse().expect("a count"),
            "b" => {
                let parts: Vec<&str> = rest.split(',').collect();
                assert_eq!((parts[2], parts[3], parts[5], parts[6]), ("Q", "m2", "eM", "iA"));
                let size = parts[4].trim_start_matches('s').parse().expect("a size");
                drawn.qr = Some((numbers(rest)[0], numbers(rest)[1], size, text));
            }
            "B" => {
                let n = numbers(rest);
                assert_eq!((n[2], n[3]), (0, 1), "upright, Code 128");
                drawn.bars = Some((n[0], n[1], n[4], n[6], text));
            }
            "A" => {
                // Fonts 1 to 4 at 203 dots: 8 × 12, 10 × 16, 12 × 20, 14 × 24, with two dots between letters.
                let n = numbers(rest);
                drawn.texts.push((n[0], n[1], [14, 18, 22, 26][n[3] as usize - 1], text));
            }
            other => panic!("an unknown command {other}"),
        }
    }
    labels
}

/// Reads ESC/POS, a label to each cut.
fn esc_pos(bytes: &[u8]) -> Vec<Drawn> {
    let mut labels = Vec::new();
    let (mut drawn, mut stored, mut module, mut high, mut size, mut line) =
        (Drawn::default(), String::new(), 0, 0, 0, Vec::new());
    let mut at = 0;
    while at < bytes.len() {
        match &bytes[at..] {
            [0x1b, b'@', ..] => at += 2,
            [0x1b, b't', page, ..] => {
                assert_eq!(*page, 16);
                at += 3;
            }
            [0x1b, b'E', ..] | [0x1d, b'!', ..] => at += 3,
            [0x1d, b'(', b'k', low, top, 49, function, rest @ ..] => {
                let length = usize::from(*low) + 256 * usize::from(*top);
                let data = &rest[..length - 2];
                match function {
                    65 => assert_eq!(data, [50, 0]),
                    67 => size = u32::from(data[0]),
                    69 => assert_eq!(data, [49]),
                    80 => stored = String::from_utf8(data[1..].to_vec()).expect("UTF-8"),
                    81 => drawn.qr = Some((0, 0, size, stored.clone())),
                    other => panic!("function {other}"),
                }
                at += 5 + length;
            }
            [0x1d, b'h', dots, ..] => {
                high = u32::from(*dots);
                at += 3;
            }
            [0x1d, b'w', dots, ..] => {
                module = u32::from(*dots);
                at += 3;
            }
            [0x1d, b'H', 0, ..] => at += 3,
            [0x1d, b'k', 73, length, b'{', b'B', rest @ ..] => {
                let data = String::from_utf8(rest[..usize::from(*length) - 2].to_vec()).expect("ASCII");
                drawn.bars = Some((0, 0, module, high, data.replace("{{", "{")));
                at += 4 + usize::from(*length);
            }
            [0x1d, b'V', 66, 0, ..] => {
                drawn.copies = 1;
                labels.push(std::mem::take(&mut drawn));
                at += 4;
            }
            [b'\n', ..] => {
                if !line.is_empty() {
                    drawn.texts.push((0, 0, 0, line.iter().map(|byte: &u8| char::from(*byte)).collect()));
                    line.clear();
                }
                at += 1;
            }
            [byte, ..] => {
                assert!(*byte >= 0x20, "an unknown command {:?}", &bytes[at..(at + 4).min(bytes.len())]);
                line.push(*byte);
                at += 1;
            }
            [] => break,
        }
    }
    assert!(line.is_empty() && drawn == Drawn::default(), "a label that is not cut");
    labels
}

/// Codes with the signs that are commands in one of the languages.
const CODES: [&str; 8] = ["S7-02", "a^XZ~HS_1", "x\"y\\z", "{B}{{", ">0>1>", "C12", "A,B,C", "TP-21 #4"];

#[test]
fn each_code_comes_out_as_it_went_in() {
    for code in CODES {
        for (language, read) in [
            (PageLanguage::Zpl, zpl as fn(&[u8]) -> Vec<Drawn>),
            (PageLanguage::Epl, epl),
            (PageLanguage::EscPos, esc_pos),
        ] {
            let drawn = read(&sent(language, code));
            // Two copies: a count in two of the languages, two labels in the third.
            let copies: u32 = drawn.iter().map(|label| label.copies).sum();
            assert_eq!(copies, 2, "{language:?}");
            for label in &drawn {
                assert_eq!(label.qr.as_ref().map(|qr| qr.3.as_str()), Some(code), "{language:?}");
                assert_eq!(label.bars.as_ref().map(|bars| bars.4.as_str()), Some(code), "{language:?}");
                let texts: Vec<&str> = label.texts.iter().map(|text| text.3.as_str()).collect();
                assert_eq!(texts, [code, "Siskin 7-iron", "265.1 g"], "{language:?}");
            }
        }
    }
}

/// Letters beyond ASCII: all of them in UTF-8, those of code page 1252 in the two others; no bars, which hold ASCII alone.
#[test]
fn a_name_keeps_its_letters_where_the_language_has_them() {
    let label = Label { code: "S7".into(), lines: vec!["Müller Ł".into()] };
    let of = |language| pages(&printer(language, 62.0, 29.0), std::slice::from_ref(&label), 1).expect("pages");
    assert_eq!(zpl(&of(PageLanguage::Zpl))[0].texts[1].3, "Müller Ł");
    assert_eq!(epl(&of(PageLanguage::Epl))[0].texts[1].3, "Müller ?");
    assert_eq!(esc_pos(&of(PageLanguage::EscPos))[0].texts[1].3, "Müller ?");
    let umlaut = Label { code: "Ü7".into(), lines: Vec::new() };
    let drawn = zpl(&pages(&printer(PageLanguage::Zpl, 62.0, 29.0), &[umlaut], 1).expect("pages"));
    assert_eq!((drawn[0].qr.as_ref().map(|qr| qr.3.as_str()), &drawn[0].bars), (Some("Ü7"), &None));
}

#[test]
fn nothing_blank_is_printed() {
    let of = |labels: &[Label], copies, width_mm, height_mm| {
        let refused = pages(&printer(PageLanguage::Zpl, width_mm, height_mm), labels, copies).expect_err("refused");
        refused.fact().code().to_owned()
    };
    assert_eq!(of(&[], 1, 62.0, 29.0), "label_fault.nothing");
    assert_eq!(of(&[label("  ")], 1, 62.0, 29.0), "label_fault.no_code");
    assert_eq!(of(&[label("A")], 0, 62.0, 29.0), "printer_setting.copies");
    assert_eq!(of(&[label("A")], 51, 62.0, 29.0), "printer_setting.copies");
    assert_eq!(of(&[label("H7-0412"), label(&"X".repeat(200))], 1, 62.0, 29.0), "label_fault.too_long");
    // A symbol of 29 modules with its white is 11.1 mm high at 0.3 mm a module: 10 mm are too low for it.
    assert_eq!(of(&[label(&"X".repeat(40))], 1, 30.0, 10.0), "label_fault.too_small");
}

#[test]
fn a_printer_that_cannot_print_is_understood() {
    let zpl = |first: &str, second: &str| {
        let text = format!("\u{2}{first}\u{3}\r\n\u{2}{second}\u{3}\r\n\u{2}1234,0\u{3}\r\n");
        answer(PageLanguage::Zpl, text.as_bytes())
    };
    let (ready, two) = ("030,0,0,1245,000,0,0,0,000,0,0,0", "000,0,0,0,0,2,4,0,00000000,1,000");
    assert_eq!(zpl(ready, two), Some(None));
    assert_eq!(zpl("030,1,0,1245,000,0,0,0,000,0,0,0", two), Some(Some(PrinterSaid::NoPaper)));
    assert_eq!(zpl("030,0,1,1245,000,0,0,0,000,0,0,0", two), Some(Some(PrinterSaid::Paused)));
    assert_eq!(zpl(ready, "000,0,1,0,0,2,4,0,00000000,1,000"), Some(Some(PrinterSaid::Open)));
    assert_eq!(zpl(ready, "000,0,0,1,0,2,4,0,00000000,1,000"), Some(Some(PrinterSaid::NoRibbon)));
    assert_eq!(answer(PageLanguage::Zpl, b"\x02030,0,0"), None, "not whole yet");
    let esc = |bytes: &[u8]| answer(PageLanguage::EscPos, bytes);
    assert_eq!(esc(&[0x12, 0x12]), Some(None));
    assert_eq!(esc(&[0x12, 0x72]), Some(Some(PrinterSaid::NoPaper)));
    assert_eq!(esc(&[0x16, 0x12]), Some(Some(PrinterSaid::Open)));
    assert_eq!(esc(&[0x52, 0x12]), Some(Some(PrinterSaid::Wrong)));
    assert_eq!(esc(&[0x12]), None);
}

proptest! {
    /// Goal: whatever the code and the label, the code is on it whole and within its edges, or nothing is sent.
    #[test]
    fn the_code_lies_within_the_label(code in "[ -~]{1,60}", width_mm in 10.0_f64..120.0, height_mm in 10.0_f64..120.0) {
        prop_assume!(!code.trim().is_empty());
        let code = code.trim();
        for (language, read) in [(PageLanguage::Zpl, zpl as fn(&[u8]) -> Vec<Drawn>), (PageLanguage::Epl, epl)] {
            let Ok(bytes) = pages(&printer(language, width_mm, height_mm), &[label(code)], 1) else { continue };
            let drawn = &read(&bytes)[0];
            let (x, y, size, data) = drawn.qr.clone().expect("a square code");
            prop_assert_eq!(&data, code);
            // Sides of the versions at level M that hold so many bytes.
            let side = [(14, 21), (26, 25), (42, 29), (62, 33)].iter().find(|(most, _)| code.len() <= *most).expect("a version").1;
            prop_assert!(x + size * side <= drawn.size.0 && y + size * side <= drawn.size.1, "{:?}", drawn);
            prop_assert!(x >= 4 * size && y >= 4 * size, "no white around it: {:?}", drawn);
            if let Some((left, top, module, high, data)) = &drawn.bars {
                prop_assert_eq!(data, code);
                let modules = u32::try_from(11 * (code.len() + 2) + 13).expect("a count");
                prop_assert!(*left >= 10 * module && left + module * (modules + 10) <= drawn.size.0, "{:?}", drawn);
                prop_assert!(top + high <= drawn.size.1 && y + size * side <= *top, "{:?}", drawn);
            }
            for (left, top, high, _) in &drawn.texts {
                prop_assert!(*left < drawn.size.0 && top + high <= drawn.size.1 + 2, "{:?}", drawn);
            }
        }
    }
}
