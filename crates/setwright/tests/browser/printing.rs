//! What comes out of the printer.

use crate::harness::{Bench, Browser};

/// Paper that lies in the printer, in inches.
const A4: (f64, f64) = (8.27, 11.69);

/// Pages of a PDF with their sizes in points. The browser writes its page objects as plain text.
fn pages(pdf: &[u8]) -> Vec<(f64, f64)> {
    let text = String::from_utf8_lossy(pdf);
    text.split("/Type /Page\n")
        .skip(1)
        .map(|page| {
            let (_, media) = page.split_once("/MediaBox [").expect("a page has its size");
            let figures: Vec<f64> =
                media.split(']').next().unwrap_or_default().split_whitespace().map(figure).collect();
            (figures[2] - figures[0], figures[3] - figures[1])
        })
        .collect()
}

fn figure(text: &str) -> f64 {
    text.parse().expect("a figure")
}

/// As many pages as labels, each of the label's size, 62 mm by 29 mm.
pub async fn prints_labels(browser: &Browser, count: usize) {
    let pages = pages(&browser.print(A4).await);
    assert_eq!(pages.len(), count, "{pages:?}");
    for (width, height) in pages {
        let off = (width - 62.0 / 25.4 * 72.0).abs().max((height - 29.0 / 25.4 * 72.0).abs());
        assert!(off < 1.0, "{width} x {height} points");
    }
}

#[tokio::test]
async fn a_strip_has_as_many_labels_as_parts() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    for codes in ["S7-01", "S7-01,S7-02,S7-03"] {
        browser.open(&format!("/labels?codes={codes}&paper=strip")).await;
        prints_labels(&browser, codes.split(',').count()).await;
    }
    browser.open("/labels?kind=head&paper=strip").await;
    let heads = browser.value("document.querySelectorAll('.part-label').length").await.as_u64().expect("a count");
    assert!(heads > 20, "{heads}");
    prints_labels(&browser, usize::try_from(heads).expect("few")).await;
    browser.close().await;
}

/// A sheet of Letter, which is wider and lower than A4.
const LETTER: (f64, f64) = (8.5, 11.0);

#[tokio::test]
async fn job_cards_come_four_on_a_sheet_or_one_on_a_card() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    for (paper, sheets) in [(A4, 2), (LETTER, 2)] {
        browser.open("/plan/1/cards").await;
        assert_eq!(browser.value("document.querySelectorAll('.job-card').length").await, 8);
        let pages = pages(&browser.print(paper).await);
        assert_eq!(pages.len(), sheets, "{pages:?}");
        let off = |(width, height): &(f64, f64)| (width - paper.0 * 72.0).abs().max((height - paper.1 * 72.0).abs());
        assert!(pages.iter().all(|page| off(page) < 1.5), "{pages:?}");
    }
    // A6, 105 mm by 148 mm.
    browser.open("/plan/1/cards?paper=one").await;
    let pages = pages(&browser.print(A4).await);
    assert_eq!(pages.len(), 8, "{pages:?}");
    for (width, height) in pages {
        let off = (width - 105.0 / 25.4 * 72.0).abs().max((height - 148.0 / 25.4 * 72.0).abs());
        assert!(off < 1.0, "{width} x {height} points");
    }
    browser.close().await;
}
