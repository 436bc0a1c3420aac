//! The demonstration, followed from page to page.

use super::page::{Seen, seen};
use crate::support::Bench;
use crate::support::answer::Answer;
use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet, VecDeque};
use tower::ServiceExt;
use words::Language;

/// How many pages of one kind are looked at: the lives of six hundred parts are made by one function.
const OF_A_KIND: usize = 4;

/// The demonstration's site in some language.
pub struct Site {
    bench: Bench,
}

/// A page with what is seen on it.
pub struct Visited {
    pub address: String,
    pub seen: Vec<Seen>,
}

impl Site {
    pub async fn open(language: &'static Language) -> Self {
        let mut bench = Bench::open().await;
        assert!(::demo::load(&bench.app).await.expect("the invented shop"));
        bench.router = web::router_in(bench.app.clone(), web::ServerNames::default(), language);
        Self { bench }
    }

    async fn get(&self, address: &str, units: &str) -> Answer {
        let request = Request::builder()
            .uri(address)
            .header(header::COOKIE, format!("units={units}"))
            .body(Body::empty())
            .expect("a request");
        Answer::of(self.bench.router.clone().oneshot(request).await.expect("an answer")).await
    }

    /// Every kind of page that can be reached from Today by links, in these units.
    pub async fn pages(&self, units: &str) -> Vec<Visited> {
        let mut met: BTreeSet<String> = BTreeSet::new();
        let mut kinds: BTreeMap<String, usize> = BTreeMap::new();
        // The page of the look is led to by no other.
        let mut waiting = VecDeque::from(["/".to_owned(), "/style".to_owned()]);
        let mut pages = Vec::new();
        while let Some(address) = waiting.pop_front() {
            if address.starts_with("/api/") || address.starts_with("/assets/") || !met.insert(address.clone()) {
                continue;
            }
            let of_kind = kinds.entry(kind(&address)).or_default();
            if *of_kind == OF_A_KIND {
                continue;
            }
            *of_kind += 1;
            let answer = self.get(&address, units).await;
            if !answer.kind.starts_with("text/html") {
                continue;
            }
            assert!(answer.status == StatusCode::OK, "{address}: {} {}", answer.status, answer.text);
            let (seen, links) = seen(&answer.text);
            waiting.extend(links.into_iter().map(|link| link.split('#').next().unwrap_or_default().to_owned()));
            pages.push(Visited { address, seen });
        }
        pages
    }

    /// Everything that somebody typed or a file brought: every string of the documents that the shop keeps.
    pub async fn entered(&self) -> Vec<String> {
        let mut strings = BTreeSet::new();
        for list in [
            "shop",
            "models",
            "models/usual",
            "parts?limit=5000",
            "jobs",
            "sheets",
            "customers",
            "prices",
            "orders",
            "batches",
            "learned",
            "scales",
            "scales/health",
            "gauge-studies",
        ] {
            collect(&self.bench.get(&format!("/{list}")).await, &mut strings);
        }
        for list in ["jobs", "jobs?state=finished", "jobs?state=dropped", "sheets", "customers"] {
            let listed = self.bench.get(&format!("/{list}")).await;
            let list = list.split('?').next().unwrap_or(list);
            for one in listed.as_array().or_else(|| listed["items"].as_array()).into_iter().flatten() {
                let id = &one[if list == "sheets" { "id" } else { "number" }];
                let id = id.as_str().map_or(id.to_string(), str::to_owned);
                collect(&self.bench.get(&format!("/{list}/{id}")).await, &mut strings);
                if list == "jobs" {
                    collect(&self.bench.get(&format!("/jobs/{id}/record")).await, &mut strings);
                    // Reasons that somebody gave.
                    collect(&self.bench.get(&format!("/jobs/{id}/ledger")).await, &mut strings);
                }
            }
        }
        // A name begins a heading with a capital.
        let capitals: Vec<String> = strings.iter().map(|name| words::capital(name)).collect();
        let mut strings: Vec<String> = strings.into_iter().chain(capitals).collect();
        strings.sort_by_key(|s| std::cmp::Reverse(s.len()));
        strings
    }
}

/// The names of one document; a fact's own sentence is none of them.
fn collect(value: &Value, into: &mut BTreeSet<String>) {
    collect_of("", value, into);
}

/// Fields that hold what somebody typed, even where it is one small word.
const TYPED: [&str; 6] = ["name", "place", "scale", "reason", "note", "by"];

fn collect_of(field: &str, value: &Value, into: &mut BTreeSet<String>) {
    match value {
        // A key of a closed list, as `tip_weight`, is no name.
        Value::String(text) if !TYPED.contains(&field) && text.bytes().all(|b| b.is_ascii_lowercase() || b == b'_') => {
        }
        Value::String(text) => {
            into.insert(text.clone());
        }
        Value::Array(items) => items.iter().for_each(|item| collect_of(field, item, into)),
        Value::Object(fields) => {
            fields.iter().filter(|(name, _)| *name != "words").for_each(|(name, value)| collect_of(name, value, into));
        }
        _ => {}
    }
}

/// An address without what names one thing of many: `/plan/4/again?job=4` is `/plan/_/again?job`.
fn kind(address: &str) -> String {
    let (path, query) = address.split_once('?').unwrap_or((address, ""));
    let named = |part: &str| part.bytes().any(|b| b.is_ascii_digit() || b.is_ascii_uppercase() || b == b'%');
    let path: Vec<&str> = path.split('/').map(|part| if named(part) { "_" } else { part }).collect();
    let keys: Vec<&str> = query.split('&').filter_map(|pair| pair.split('=').next()).collect();
    format!("{}?{}", path.join("/"), keys.join("&"))
}
