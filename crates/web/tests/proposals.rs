//! Goal: what was proposed before is never shown after something that it follows from has changed, by whichever program.
//! Method: one program that has proposed before, another on the same database that changes things, and after each change
//! a third, just started, that remembers nothing: the first must say what the third says.

use app::matched::DayRequest;
use app::plan::Accept;
use app::stock::{PartChange, PartQuery};
use app::{App, SetClock};
use axum::Router;
use axum::body::Body;
use axum::http::Request;
use desk::planner::Lock;
use desk::planner::WhichPlan;
use jiff::SignedDuration;
use serde_json::{Value, json};
use std::sync::Arc;
use tower::ServiceExt;
use trade::model::{Model, PartKind};
use trade::part::PartState;
use trade::shop::Shop;

/// The job that waits for its plan.
const JOB: i64 = 2;

struct Programs {
    url: String,
    clock: Arc<SetClock>,
    first: App,
    other: App,
    _folder: tempfile::TempDir,
}

impl Programs {
    async fn open() -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let url = format!("sqlite:{}", folder.path().join("shop.db").display());
        let clock = Arc::new(SetClock::at("2026-03-02T08:00:00Z".parse().expect("a time")));
        let first = App::open(&url, clock.clone()).await.expect("a shop");
        ::demo::load(&first).await.expect("the invented shop");
        let other = App::open(&url, clock.clone()).await.expect("the same shop");
        Self { url, clock, first, other, _folder: folder }
    }

    /// What the first program says, which must be what one that was just started says.
    async fn said(&self) -> Value {
        let fresh = App::open(&self.url, self.clock.clone()).await.expect("the same shop");
        let (now, anew) = (answers(&self.first).await, answers(&fresh).await);
        assert_eq!(now, anew, "what was remembered differs from what is worked out anew");
        assert_eq!(answers(&self.first).await, now, "asked twice");
        let (page, page_anew) = (page(&self.first).await, page(&fresh).await);
        assert_eq!(page, page_anew);
        fresh.close().await;
        now
    }

    async fn head(&self) -> String {
        let plan = self.first.propose(JOB, &[]).await.expect("a proposal").plan;
        let club = plan.clubs[0].as_ref().expect("built");
        club.part(PartKind::Head).expect("a head").code.clone()
    }

    async fn change(&self, code: &str, change: PartChange) {
        let version = self.other.part(code).await.expect("the part").version;
        let change = PartChange { version, by: "Jay".into(), reason: "looked again".into(), ..change };
        self.other.change_part(code, &change).await.expect("changed");
    }

    async fn put(&self, shop: &Shop) {
        self.other.save_shop(shop).await.expect("saved");
    }
}

/// The proposal, the plans to choose from and the plan of the day.
async fn answers(app: &App) -> Value {
    // The first plan that is found: a search for a time would find what the machine has the time for.
    let day = DayRequest { jobs: Vec::new(), seconds: 0.0, seed: 0, weights: None, which: WhichPlan::Together };
    let day = app.plan_day(&day, |_| true).await.expect("a day");
    json!({
        "proposal": app.propose(JOB, &[]).await.expect("a proposal"),
        "options": app.plan_options(JOB, &[]).await.expect("options"),
        "day": day,
    })
}

async fn page(app: &App) -> String {
    let router: Router = web::router(app.clone(), web::ServerNames::default());
    let request = Request::builder().uri(format!("/plan/{JOB}")).body(Body::empty()).expect("a request");
    let answer = router.oneshot(request).await.expect("an answer");
    assert!(answer.status().is_success());
    let body = axum::body::to_bytes(answer.into_body(), 1 << 20).await.expect("a body");
    String::from_utf8(body.to_vec()).expect("text")
}

#[tokio::test]
async fn a_change_by_another_program_shows_in_the_next_look() {
    let shop = Programs::open().await;
    let at_first = shop.said().await;
    let mut before = at_first.clone();
    let changed = |now: &Value, before: &mut Value, what: &str| {
        assert_ne!(now["proposal"], before["proposal"], "{what}");
        assert_ne!(now["day"], before["day"], "{what}");
        before.clone_from(now);
    };

    let head = shop.head().await;
    let mass_g = shop.first.part(&head).await.expect("the head").mass_g.expect("weighed");
    let weighs = |g: f64| PartChange { mass_typed: Some(format!("{g:.1} g")), ..PartChange::default() };
    shop.change(&head, weighs(mass_g - 6.0)).await;
    changed(&shop.said().await, &mut before, "the head that was proposed weighs less");
    // As it was: what was known of it may be said again, and is said.
    shop.change(&head, weighs(mass_g)).await;
    let again = shop.said().await;
    assert_eq!(again["proposal"], at_first["proposal"]);
    before = again;

    shop.change(&head, PartChange { state: Some(PartState::Rejected), ..PartChange::default() }).await;
    assert_ne!(shop.head().await, head);
    changed(&shop.said().await, &mut before, "the head is gone");

    let models = shop.other.models(Some(PartKind::Grip)).await.expect("models");
    for model in models {
        let Model::Grip(grip) = model else { continue };
        let centre_mm = grip.centre_mm + 8.0;
        shop.other.put_model(&Model::Grip(trade::grip::GripModel { centre_mm, ..grip })).await.expect("saved");
    }
    changed(&shop.said().await, &mut before, "the grips' weight sits elsewhere");

    let own = shop.other.shop().await.expect("the shop");
    let counts = |value| own.plan_weights.with("rare_head", value).expect("a weight");
    shop.put(&Shop { plan_weights: counts(0.2), ..own.clone() }).await;
    changed(&shop.said().await, &mut before, "a head of which there are few counts more");
    shop.put(&Shop { plan_weights: counts(0.4), ..own.clone() }).await;
    changed(&shop.said().await, &mut before, "and twice as much");

    // Nothing of this is stored: the day counts a job the more the nearer its day is.
    shop.clock.advance(SignedDuration::from_hours(24 * 5));
    let now = shop.said().await;
    assert_eq!(now["proposal"], before["proposal"]);
    assert_ne!(now["day"]["jobs"][0]["priority"], before["day"]["jobs"][0]["priority"]);
}

#[tokio::test]
async fn the_page_of_a_day_does_not_wait_for_its_search() {
    let shop = Programs::open().await;
    // One club of one job is proven at once; the sets beside it are not.
    let sheets = shop.first.sheets().await.expect("sheets");
    for sheet in sheets.iter().filter(|s| s.job.is_none() || s.job == Some(1)) {
        let sheet = shop.first.sheet(&sheet.id).await.expect("the sheet").sheet;
        let saved = shop.first.save_sheet(&sheet).await.expect("saved");
        let approve = app::sheet::Approve { steps: None, by: "Ada".into() };
        shop.first.approve_sheet(&saved.id, &approve).await.expect("approved");
    }
    let mut live = shop.first.listen();
    let request = DayRequest { jobs: Vec::new(), seconds: 0.5, seed: 0, weights: None, which: WhichPlan::Together };
    let soon = shop.first.plan_day_soon(&request, false).await.expect("a first plan");
    assert_eq!(soon.day.jobs.len(), soon.files.len());
    assert!(soon.day.bound <= soon.day.cost);
    assert!(soon.search.is_some(), "so many clubs are not proven in the first round");
    while live.recv().await.expect("the program is there").what != "plan" {}
    let later = shop.first.plan_day_soon(&request, false).await.expect("what was found");
    assert!(later.search.is_none() && later.day.cost <= soon.day.cost, "{} {}", later.day.cost, soon.day.cost);
    // A longer search goes on from a look that asks for it, and ends when somebody has had enough.
    {
        assert!(later.day.gap > 0.0, "so many clubs are not proven in half a second");
        let longer = DayRequest { seconds: 100.0, ..request.clone() };
        let on = shop.first.plan_day_soon(&longer, true).await.expect("what was found").search.expect("it goes on");
        assert!((on.asked_s - 100.0).abs() < 1e-9);
        let seen = shop.first.plan_day_soon(&request, false).await.expect("what was found");
        assert!(seen.search.is_some() && seen.day.cost <= later.day.cost);
        shop.first.stop_day_search();
        while live.recv().await.expect("the program is there").what != "plan" {}
        let after = shop.first.plan_day_soon(&request, false).await.expect("what was found");
        assert!(after.search.is_none() && after.day.cost <= later.day.cost && after.day.bound >= later.day.bound);
    }
    // Another program changes the stock: what was found is of no use any more.
    let head = later.day.jobs.iter().find(|j| j.number == JOB).and_then(|j| j.plan.clubs[0].as_ref()).expect("built");
    let head = head.part(PartKind::Head).expect("a head").code.clone();
    shop.change(&head, PartChange { state: Some(PartState::Rejected), ..PartChange::default() }).await;
    let anew = shop.first.plan_day_soon(&request, false).await.expect("a first plan");
    assert!(anew.search.is_some());
    let taken = |p: &trade::plan::PlannedPart| p.code == head;
    assert!(!anew.day.jobs.iter().flat_map(|j| &j.plan.clubs).flatten().flat_map(|c| &c.parts).any(taken));
}

#[tokio::test]
async fn locks_and_parts_that_others_take_count_at_once() {
    let shop = Programs::open().await;
    shop.said().await;
    let head = shop.head().await;
    let query = PartQuery {
        model: Some("FIELDFARE".into()),
        state: Some(PartState::Free),
        number: Some("1".into()),
        ..PartQuery::default()
    };
    let (heads, _) = shop.first.parts(&query).await.expect("heads");
    for other in heads.iter().filter(|h| h.code != head && h.mass_g.is_some()) {
        let lock = [Lock { slot: 1, code: other.code.clone() }];
        let Ok(locked) = shop.first.propose(JOB, &lock).await else { continue };
        if let Some(club) = &locked.plan.clubs[0] {
            assert_eq!(club.part(PartKind::Head).map(|p| p.code.as_str()), Some(other.code.as_str()));
        }
    }
    assert_eq!(shop.head().await, head, "without a lock as before");

    let seen = shop.first.propose(JOB, &[]).await.expect("a proposal").fingerprint;
    let accept = |fingerprint: String| Accept {
        fingerprint,
        locks: Vec::new(),
        partly: true,
        neighbour_reason: String::new(),
        by: "Ada".into(),
    };
    shop.change(&head, PartChange { state: Some(PartState::Pulled), ..PartChange::default() }).await;
    let refused = shop.first.accept(JOB, &accept(seen)).await.expect_err("it was looked at before the change");
    assert_eq!(refused.refusal().fact().code(), "plan_fault.stock_changed", "{refused}");
    let seen = shop.first.propose(JOB, &[]).await.expect("a proposal").fingerprint;
    shop.other.accept(JOB, &accept(seen)).await.expect("accepted by the other program");
    let over = shop.first.propose(JOB, &[]).await.expect_err("it has its plan");
    assert_eq!(over.refusal().fact().code(), "plan_fault.at_bench", "{over}");
}
