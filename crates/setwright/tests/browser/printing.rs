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

/// A sheet of eight clubs and of one from the invented shop, and one of fourteen: each on one sheet of either paper, with the
/// letters that it is to be set in.
#[tokio::test]
async fn a_players_sheet_is_one_sheet_of_paper_whatever_the_set() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    browser.open("/").await;
    // Fourteen clubs for a long name: the irons of job 1 with every wood, wedge and putter that the shop has a model of.
    let made = browser
        .value(
            "(async () => {
                const get = async (path) => (await fetch('/api/v1' + path)).json();
                const send = async (path, body) => (await fetch('/api/v1' + path, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) })).json();
                const models = Object.fromEntries((await get('/models')).map((model) => [model.code, model]));
                const of = async (job) => (await get('/jobs/' + job)).job.sheet;
                const all = (club, code, more) => models[code].numbers.map((n, i) => ({ ...club, head_model: code, club_kind: models[code].club_kind, number: n.number,
                    loft_deg: n.loft_deg, lie_deg: n.lie_deg, ...more[i % more.length] }));
                const { customer, ...sheet } = await of(1);
                const [wood] = (await of(2)).clubs, [wedge] = (await of(5)).clubs;
                const clubs = [...all(wood, 'FIELDFARE', [{ length_mm: 1143 }, { length_mm: 1092 }]), ...sheet.clubs, ...all(wedge, 'WHINCHAT', [{}]),
                    ...all(sheet.clubs[0], 'DOTTEREL', [{ length_mm: 863.6, swing_weight_free: true }])];
                const kept = await send('/sheets', { ...sheet, clubs, player: 'Bartłomiej Quinteros-Peñaranda of Little Wexcombe' });
                const job = await send('/sheets/' + kept.id + '/approve', { by: 'Ada' });
                return job.number ?? JSON.stringify([kept, job]);
            })()",
        )
        .await;
    assert!(made.is_u64(), "{made}");
    for (job, clubs) in [(3.to_string(), 8), (5.to_string(), 1), (made.to_string(), 14)] {
        browser.open(&format!("/records/{job}/player")).await;
        assert_eq!(browser.value("document.querySelectorAll('.drawn-club').length").await, clubs, "job {job}");
        let letter = if clubs == 14 { 'ł' } else { 'a' };
        let loaded = format!("document.fonts.ready.then(() => document.fonts.check('12pt Garamond', '{letter}'))");
        assert_eq!(browser.value(&loaded).await, true, "{letter} is not of the book face");
        for paper in [A4, LETTER] {
            let pages = pages(&browser.print(paper).await);
            assert_eq!(pages.len(), 1, "job {job} on {paper:?}: {pages:?}");
        }
    }
    browser.close().await;
}

/// The quick card of the guide hangs beside the scale: one sheet, in each language, on either paper.
#[tokio::test]
async fn the_quick_card_is_one_sheet_of_paper() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    for language in ["en", "de"] {
        browser.open("/help/quick-card").await;
        browser.value(&format!("document.cookie = 'language={language}; path=/'")).await;
        browser.open("/help/quick-card").await;
        assert_eq!(browser.value("document.documentElement.lang").await, serde_json::json!(language));
        for paper in [A4, LETTER] {
            let pages = pages(&browser.print(paper).await);
            assert_eq!(pages.len(), 1, "{language}: {pages:?}");
        }
    }
    browser.close().await;
}
