//! Every page can be read and touched: text of pictures is 11 px and more, targets are 24 px and more (WCAG 2.2, 2.5.8), and
//! twice the text fits (1.4.4): nothing overflows the page, on a tablet and on a phone.

use crate::harness::Bench;
use crate::pages;
use serde_json::{Value, json};

/// What is too small on the page that is open. A link within a sentence may be as narrow as its word.
const SMALL: &str = r#"(() => {
    const seen = (e) => { const r = e.getBoundingClientRect(); return r.width > 0 && r.height > 0 && !e.closest('.hidden'); };
    const out = [];
    for (const text of document.querySelectorAll('svg text')) {
        if (!seen(text) || text.closest('.card-sheet, .job-card, .part-label')) continue;
        const m = text.getScreenCTM();
        const px = parseFloat(getComputedStyle(text).fontSize) * Math.hypot(m.a, m.b);
        if (px < 10.95) out.push(`${px.toFixed(1)} px: ${text.textContent} in ${text.closest('figure')?.className}`);
    }
    for (const one of document.querySelectorAll('a[href], button, input:not([type=hidden]), select, summary')) {
        if (!seen(one)) continue;
        const target = one.matches('[type=checkbox], [type=radio]') ? one.closest('label') ?? one : one;
        const r = target.getBoundingClientRect();
        const inline = getComputedStyle(one).display === 'inline';
        if (r.height < 23.95 || (!inline && r.width < 23.95)) {
            out.push(`${Math.round(r.width)} x ${Math.round(r.height)}: ${one.tagName} ${one.className} ${one.textContent.trim().slice(0, 30)}`);
        }
    }
    return out;
})()"#;

/// What lies beyond the page's edge.
const BEYOND: &str = "(() => {
    const page = document.documentElement;
    if (page.scrollWidth <= page.clientWidth + 1) return [];
    const wide = [...document.querySelectorAll('main *, .head *, .foot *')].filter((e) => e.getBoundingClientRect().right > page.clientWidth + 1 && !e.closest('.table-wrap, .clubs, .places, .tabs, .grid-wrap'));
    return [`${page.scrollWidth - page.clientWidth} px: ${wide.slice(0, 3).map((e) => e.tagName + '.' + e.className).join(', ')}`];
})()";

#[tokio::test]
async fn text_of_pictures_and_targets_are_large_enough() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    // The measure itself must find what is small.
    browser.open("/").await;
    // The page's own rules let no style in by an attribute.
    let small = "(() => {
        const main = document.querySelector('main');
        main.insertAdjacentHTML('beforeend', '<svg width=\"20\" height=\"20\"><text y=\"9\">a</text></svg><button>b</button>');
        main.lastElementChild.previousElementSibling.firstElementChild.style.fontSize = '9px';
        Object.assign(main.lastElementChild.style, { all: 'unset', fontSize: '9px' });
    })()";
    browser.value(small).await;
    assert_eq!(browser.value(SMALL).await.as_array().map(Vec::len), Some(2), "{}", browser.value(SMALL).await);
    let mut wrong = Vec::new();
    for (width, height) in [(1024, 768), (390, 844)] {
        browser.size(width, height).await;
        for page in pages::all(&bench) {
            browser.open(&page).await;
            let found = browser.value(SMALL).await;
            wrong.extend(found.as_array().expect("a list").iter().map(|one| format!("{page} at {width}: {one}")));
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    browser.close().await;
}

#[tokio::test]
async fn twice_the_text_fits_the_page() {
    let bench = Bench::open();
    let browser = bench.browser().await;
    // 200 % in the browser's settings, with the wide spacing of 1.4.12.
    let larger = "document.documentElement.style.fontSize = '200%';
        document.head.insertAdjacentHTML('beforeend', '<style>* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }</style>')";
    let mut wrong: Vec<String> = Vec::new();
    for (width, height) in [(1024, 768), (768, 1024)] {
        browser.size(width, height).await;
        // The gallery of components is for those who make pages.
        for page in pages::all(&bench).into_iter().filter(|page| page != "/style") {
            browser.open(&page).await;
            for (how, script) in [("as it is", "0"), ("at 200 %", larger)] {
                browser.value(&format!("(() => {{ {script} }})()")).await;
                let found: Value = browser.value(BEYOND).await;
                if found != json!([]) {
                    wrong.push(format!("{page} at {width} {how}: {found}"));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    browser.close().await;
}
