//! Labels for parts: the code as QR and as Code 128, and in letters with the mass, the model and the number.

use maud::{Markup, PreEscaped, html};
use words::{Words, text};

/// Width of a label, in millimetres.
pub const LABEL_WIDTH_MM: f64 = 62.0;
/// Height of a label, in millimetres.
pub const LABEL_HEIGHT_MM: f64 = 29.0;
/// Pixels a millimetre of a picture for screens: the thinnest bar is four pixels wide.
const PX_PER_MM: f64 = 21.1;
/// Thinnest bar, in millimetres: what hand scanners read from paper. Common practice, no source.
const BAR_MIN_MM: f64 = 0.19;
/// Widest bar, in millimetres: four dots of a printer with 300 dots an inch.
const BAR_MAX_MM: f64 = 0.35;
/// Side of the QR symbol with its quiet zone, in millimetres.
const QR_MM: f64 = 19.0;
/// Modules of white that ISO/IEC 18004 asks around a QR symbol.
const QR_QUIET: usize = 4;
/// Modules of white that ISO/IEC 15417 asks at each end of a Code 128 symbol.
const BAR_QUIET: usize = 10;

/// What stands on a label.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PartLabel {
    /// The part's code.
    pub code: String,
    /// Model and number: `Siskin 7`.
    pub what: String,
    /// The mass in letters: `265.1 g`; empty where it is not weighed.
    pub mass: String,
}

/// Paper of a page of labels.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum LabelPaper {
    /// A sheet of paper with labels side by side.
    #[default]
    Sheet,
    /// A strip with one label a page, 62 × 29 mm.
    Strip,
}

impl LabelPaper {
    /// The paper with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        match key {
            "sheet" => Some(Self::Sheet),
            "strip" => Some(Self::Strip),
            _ => None,
        }
    }
}

/// Labels to print.
#[must_use]
pub fn label_page(w: &Words, labels: &[PartLabel], paper: LabelPaper) -> Markup {
    html! {
        div.labels.strip[paper == LabelPaper::Strip] {
            @for label in labels { div.part-label { (PreEscaped(label_svg(w, label))) } }
        }
    }
}

/// A document of its own with labels to print, for the command line.
#[must_use]
pub fn label_document(w: &Words, labels: &[PartLabel], paper: LabelPaper) -> String {
    let page = match paper {
        LabelPaper::Sheet => "@page { margin: 8mm; } .labels { display: flex; flex-wrap: wrap; gap: 2mm; }",
        LabelPaper::Strip => {
            "@page { size: 62mm 29mm; margin: 0; } .part-label { break-after: page; } .part-label:last-child { break-after: auto; }"
        }
    };
    html! {
        (maud::DOCTYPE)
        html lang=(w.language_code()) {
            head {
                meta charset="utf-8";
                title { (w.text("label-title")) }
                style { (PreEscaped("body { margin: 0; } .part-label { break-inside: avoid; } .part-label svg { display: block; } ")) (PreEscaped(page)) }
            }
            body { (label_page(w, labels, paper)) }
        }
    }
    .into_string()
}

/// One label as an SVG picture of 62 × 29 mm.
#[must_use]
pub fn label_svg(w: &Words, label: &PartLabel) -> String {
    html! {
        svg xmlns="http://www.w3.org/2000/svg" width="62mm" height="29mm" viewBox="0 0 62 29" role="img"
            aria-label=(text!(w, "label-of-part", code = label.code, what = label.what, mass = label.mass)) { (drawing(w, label)) }
    }
    .into_string()
}

/// Labels under each other as one SVG picture, large enough for a screen: no module is narrower than four pixels.
#[must_use]
pub fn label_picture(w: &Words, labels: &[PartLabel]) -> String {
    #[allow(clippy::cast_precision_loss, reason = "a count of labels")]
    let height_mm = LABEL_HEIGHT_MM * labels.len() as f64;
    html! {
        svg xmlns="http://www.w3.org/2000/svg" width=(px(LABEL_WIDTH_MM)) height=(px(height_mm))
            viewBox={ "0 0 " (LABEL_WIDTH_MM) " " (height_mm) } {
            @for (i, label) in labels.iter().enumerate() {
                g transform={ "translate(0 " (i * 29) ")" } { (drawing(w, label)) }
            }
        }
    }
    .into_string()
}

fn px(mm: f64) -> String {
    format!("{:.0}", mm * PX_PER_MM)
}

fn drawing(w: &Words, label: &PartLabel) -> Markup {
    let bars = bars(&label.code);
    // Without bars there is room for larger letters, but all labels of a sheet look the same.
    let size = |text: &str, most: f64, room: f64| {
        let letters = f64::from(u32::try_from(text.chars().count().max(1)).unwrap_or(u32::MAX));
        format!("{:.2}", (room / (0.62 * letters)).min(most))
    };
    html! {
        rect width="62" height="29" fill="#fff" {}
        (qr(&label.code))
        g fill="#000" font-family="system-ui, sans-serif" {
            text x="21" y="7" font-size=(size(&label.code, 5.5, 40.0)) font-weight="700" { (label.code) }
            text x="21" y="12.2" font-size=(size(&label.what, 3.6, 40.0)) { (label.what) }
            text x="21" y="17.8" font-size=(size(&label.mass, 4.6, 40.0)) font-weight="700" { (label.mass) }
        }
        @if let Some(path) = bars { path d=(path) fill="#000" shape-rendering="crispEdges" {} }
        @else { text x="31" y="25" font-size="2.8" text-anchor="middle" fill="#000" { (w.text("label-scan-square")) } }
    }
}

/// The code as a QR symbol in the upper left corner.
fn qr(code: &str) -> Markup {
    let Ok(symbol) = fast_qr::QRBuilder::new(code).build() else { return html! {} };
    let modules = symbol.size;
    #[allow(clippy::cast_precision_loss, reason = "at most 177 modules")]
    let module_mm = QR_MM / (modules + 2 * QR_QUIET) as f64;
    let mut path = String::new();
    for y in 0..modules {
        for x in 0..modules {
            if symbol[y][x].value() {
                path.push_str(&format!("M{} {}h1v1h-1z", x + QR_QUIET, y + QR_QUIET));
            }
        }
    }
    html! { path transform={ "translate(0.5 0.5) scale(" (module_mm) ")" } d=(path) fill="#000" shape-rendering="crispEdges" {} }
}

/// The code as Code 128 (set B) across the foot of the label; none where its bars would be too thin to scan.
fn bars(code: &str) -> Option<String> {
    // The library chooses the set by this letter before the text.
    let symbol = barcoders::sym::code128::Code128::new(format!("\u{181}{code}")).ok()?.encode();
    #[allow(clippy::cast_precision_loss, reason = "some hundred modules")]
    let module_mm = ((LABEL_WIDTH_MM - 1.0) / (symbol.len() + 2 * BAR_QUIET) as f64).min(BAR_MAX_MM);
    if module_mm < BAR_MIN_MM {
        return None;
    }
    #[allow(clippy::cast_precision_loss, reason = "some hundred modules")]
    let left_mm = (LABEL_WIDTH_MM - module_mm * symbol.len() as f64) / 2.0;
    let mut path = String::new();
    let mut at = 0;
    while at < symbol.len() {
        let wide = symbol[at..].iter().take_while(|m| **m == symbol[at]).count();
        if symbol[at] == 1 {
            #[allow(clippy::cast_precision_loss, reason = "some hundred modules")]
            let (x, w) = (left_mm + module_mm * at as f64, module_mm * wide as f64);
            path.push_str(&format!("M{x:.4} 20.5h{w:.4}v7.5h-{w:.4}z"));
        }
        at += wide;
    }
    Some(path)
}
