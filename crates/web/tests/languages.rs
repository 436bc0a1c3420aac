//! A page is in the language that its tablet is set to, else in the first that the browser asks for and there is; so are the
//! sentences of the API. Codes and figures are the same in every language.

use crate::support::Bench;
use crate::support::answer::Answer;
use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use serde_json::Value;
use tower::ServiceExt;

async fn ask(bench: &Bench, address: &str, wish: &str, cookie: &str) -> Answer {
    let request = Request::get(address).header(header::ACCEPT_LANGUAGE, wish).header(header::COOKIE, cookie);
    let request = request.body(Body::empty()).expect("a request");
    Answer::of(bench.router.clone().oneshot(request).await.expect("an answer")).await
}

#[tokio::test]
async fn a_page_is_in_the_language_of_its_tablet() {
    let bench = Bench::open().await;
    for (wish, cookie, code, title) in [
        ("", "", "en", "Today"),
        ("de-AT,de;q=0.9,en;q=0.8", "", "de", "Heute"),
        ("fr-FR,de;q=0.7,en;q=0.3", "", "de", "Heute"),
        ("la,fr;q=0.5", "", "en", "Today"),
        ("de", "language=en", "en", "Today"),
        ("en-GB", "language=de", "de", "Heute"),
        ("de", "language=", "de", "Heute"),
        ("en", "language=xx", "en", "Today"),
    ] {
        let page = ask(&bench, "/", wish, cookie).await.text;
        assert!(page.contains(&format!("<html lang=\"{code}\"")), "{wish} {cookie}");
        assert!(page.contains(&format!("<h1>{title}</h1>")), "{wish} {cookie}");
    }
}

#[tokio::test]
async fn figures_have_the_sign_of_the_language_or_of_the_tablet() {
    let bench = Bench::open().await;
    assert!(::demo::load(&bench.app).await.expect("the invented shop"));
    for (cookie, sign, comma) in [
        ("language=de", ',', true),
        ("language=de; decimal=point", '.', false),
        ("language=en", '.', false),
        ("language=en; decimal=comma", ',', true),
    ] {
        let page = ask(&bench, "/scales", "", cookie).await.text;
        assert_eq!(page.contains("data-decimal=\"comma\""), comma, "{cookie}");
        let figures = |sign: char| {
            page.split(" g").filter(move |before| {
                let mut last = before.chars().rev();
                last.next().is_some_and(|c| c.is_ascii_digit()) && last.next() == Some(sign)
            })
        };
        let other = if sign == ',' { '.' } else { ',' };
        assert!(figures(sign).count() > 0 && figures(other).count() == 0, "{cookie}");
    }
}

#[tokio::test]
async fn the_tablet_is_set_by_its_page() {
    let bench = Bench::open().await;
    let page = ask(&bench, "/tablet", "", "").await.text;
    assert!(page.contains("<option value=\"de\">Deutsch</option>"), "{page}");
    let kept = bench.form("/tablet", &[("language", "de"), ("letters", "on")]).await;
    let cookies: Vec<_> = kept.headers.get_all(header::SET_COOKIE).iter().filter_map(|c| c.to_str().ok()).collect();
    assert!(cookies.iter().any(|cookie| cookie.starts_with("language=de;")), "{cookies:?}");
    let page = ask(&bench, "/tablet", "en", "language=de").await.text;
    assert!(page.contains("<option value=\"de\" selected>Deutsch</option>"), "{page}");
}

#[tokio::test]
async fn a_problem_is_told_in_the_language_that_is_asked_for() {
    let bench = Bench::open().await;
    let problem = async |wish: &str| {
        let answer = ask(&bench, "/api/v1/jobs/77", wish, "").await;
        assert_eq!(answer.status, StatusCode::NOT_FOUND, "{}", answer.text);
        serde_json::from_str::<Value>(&answer.text).expect("a problem")
    };
    let (english, german) = (problem("en").await, problem("de").await);
    for same in ["type", "status", "code"] {
        assert_eq!(english[same], german[same], "{same}");
    }
    assert_eq!(english["figures"]["name"], german["figures"]["name"]);
    assert_ne!(english["detail"], german["detail"]);
    assert_eq!(german["title"], "Nicht gefunden");
}
