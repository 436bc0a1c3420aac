//! A page can be read and touched: text of pictures is 11 px and more, targets are 24 px and more (WCAG 2.2, 2.5.8), and
//! twice the text fits (1.4.4): nothing overflows the page.

use crate::harness::Browser;

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

/// 200 % in the browser's settings, with the wide spacing of 1.4.12. As a sheet of the document's own: a page of ours lets no
/// style into its text.
const LARGER: &str = "document.documentElement.style.fontSize = '200%';
    const wide = new CSSStyleSheet();
    wide.replaceSync('* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }');
    document.adoptedStyleSheets.push(wide);";

async fn list(browser: &Browser, expression: &str) -> Vec<String> {
    let found = browser.value(expression).await;
    found.as_array().expect("a list").iter().map(|one| one.as_str().expect("text").to_owned()).collect()
}

/// What is too small on the page that is open.
pub async fn small(browser: &Browser) -> Vec<String> {
    list(browser, SMALL).await
}

/// What lies beyond the edge of the page that is open.
pub async fn beyond(browser: &Browser) -> Vec<String> {
    list(browser, BEYOND).await
}

/// Sets the page that is open in twice the text.
pub async fn enlarge(browser: &Browser) {
    browser.value(&format!("(() => {{ {LARGER} }})()")).await;
}

/// Fails where the measure is blind: what is small must be found.
pub async fn is_awake(browser: &Browser) {
    browser.open("/").await;
    // The page's own rules let no style in by an attribute.
    let tiny = "(() => {
        const main = document.querySelector('main');
        main.insertAdjacentHTML('beforeend', '<svg width=\"20\" height=\"20\"><text y=\"9\">a</text></svg><button>b</button>');
        main.lastElementChild.previousElementSibling.firstElementChild.style.fontSize = '9px';
        Object.assign(main.lastElementChild.style, { all: 'unset', fontSize: '9px' });
    })()";
    browser.value(tiny).await;
    let found = small(browser).await;
    assert_eq!(found.len(), 2, "{found:?}");
}
