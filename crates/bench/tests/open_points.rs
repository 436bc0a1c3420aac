//! Goal: before a shaft is cut, a club glued, bent or handed over, everything that is open on it is found, and nothing else;
//! what was passed over stays passed over until the club is read once more; an override of a cure holds for its batch.
//! Method: a set of the demonstration shop with one club for each thing that may be open; the gates against clocks counted by
//! hand from the adhesive's own sheet.

use crate::set::{Set, time};
use bench::club_state::{ClubState, Surroundings, club_state};
use bench::glue::{Batch, CureOverride, Gate, ready_at};
use bench::open_point::{Final, OpenClub, OpenPoint, Passed, open_club};
use jiff::Timestamp;
use trade::id::{BatchId, ClubId};
use trade::model::{Model, PartKind};
use trade::plan::PlannedPart;
use trade::reading::What;
use trade::step::Strength;

fn batch(number: i64, clubs: &[ClubId]) -> Batch {
    Batch {
        id: BatchId(format!("batch-{number}")),
        number,
        adhesive: "DOLERITE".into(),
        lot: "K-1".into(),
        clubs: clubs.to_vec(),
        bead_share_percent: 1.0,
        room_c: 23.0,
        cold_reason: None,
        resin_g: 6.0,
        hardener_g: 6.0,
        beads_g: 0.1,
        mixed_at: time(60),
        by: "Ada".into(),
        taken_back: None,
    }
}

struct At<'a> {
    set: &'a Set,
    batches: Vec<Batch>,
    overrides: Vec<CureOverride>,
    passed: Vec<Passed>,
    now: Timestamp,
}

impl<'a> At<'a> {
    fn of(set: &'a Set) -> Self {
        Self { set, batches: Vec::new(), overrides: Vec::new(), passed: Vec::new(), now: time(120) }
    }

    fn state(&self, slot: i64) -> ClubState {
        let believed = self.set.assembly().believe(&self.set.readings).unwrap();
        let around = Surroundings { batches: &self.batches, overrides: &self.overrides, now: self.now };
        club_state(&believed, around, self.set.job.club(&self.set.club(slot)).unwrap()).unwrap()
    }

    fn open(&self, slot: i64, step: &str) -> Option<OpenClub> {
        let believed = self.set.assembly().believe(&self.set.readings).unwrap();
        let step = self.set.job.step(step).unwrap();
        open_club(&believed, &self.state(slot), &self.batches, &self.set.spares(), step, &self.passed, &[]).unwrap()
    }

    /// What is open, by its name in documents, each with the step where it is put right.
    fn names(&self, slot: i64, step: &str) -> Vec<(String, String)> {
        let Some(open) = self.open(slot, step) else { return Vec::new() };
        assert_eq!(open.points.len(), open.steps.len());
        assert_eq!(open.points.len(), open.facts.len());
        let name = |point: &OpenPoint| serde_json::to_value(point).unwrap()["open"].as_str().unwrap().to_owned();
        open.points.iter().map(name).zip(open.steps).collect()
    }

    fn gate(&self, slot: i64, step: &str) -> Gate {
        self.state(slot).steps.into_iter().find(|s| s.key == step).unwrap().gate
    }
}

fn named(found: &[(String, String)], point: &str, step: &str) -> bool {
    found.iter().any(|(name, at)| name == point && at == step)
}

#[test]
fn what_cannot_be_undone_follows_from_what_a_step_says_of_itself() {
    let set = Set::planned();
    let finals: Vec<(&str, Final)> = set
        .job
        .steps
        .iter()
        .filter_map(|step| Final::of(&set.job, step).map(|kind| (step.key.as_str(), kind)))
        .collect();
    // Loft and lie of the loose head, as received, are only read.
    assert_eq!(
        finals,
        [("cut", Final::Cut), ("glue", Final::Glue), ("bend", Final::Bend), ("hand_over", Final::HandOver)]
    );
}

#[test]
fn before_the_cut_a_head_beyond_bending_and_a_doubted_reading_are_open() {
    let mut set = Set::planned();
    assert_eq!(At::of(&set).names(1, "cut"), [], "a planned club is cut without a question");
    let target = set.job.clubs[0].target.loft_deg;
    let limit = set.library.head(&set.job.clubs[0].target.head_model).unwrap().bend_limit_deg;
    set.read(1, "received", What::Loft, target + limit + 1.0, 1);
    let found = At::of(&set).names(1, "cut");
    assert!(named(&found, "beyond_bending", "received"), "{found:?}");
    // Half an inch and more off what is planned, and as heavy as the neighbour's head.
    let head_g = set.job.clubs[1].plan.as_ref().unwrap().mass_g(trade::kind::Role::Head);
    set.read(2, "weighed", What::HeadMass, head_g + 7.0, 2);
    let found = At::of(&set).names(2, "cut");
    assert!(named(&found, "doubted", "weighed"), "{found:?}");
    // Whatever is not to be undone there alone.
    assert_eq!(At::of(&set).names(1, "dry"), []);
}

/// The demonstration's adapter has settings a degree apart.
#[test]
fn a_club_with_an_adapter_is_set_and_open_only_beyond_its_settings() {
    let mut set = Set::planned();
    let adapter = set.library.iter().find_map(|model| match model {
        Model::Adapter(adapter) => Some(adapter.clone()),
        _ => None,
    });
    let adapter = adapter.expect("an adapter");
    let plan = set.job.clubs[0].plan.as_mut().unwrap();
    let head = plan.part(PartKind::Head).unwrap().clone();
    plan.parts.push(PlannedPart {
        kind: PartKind::Adapter,
        model: adapter.code.clone(),
        mass_g: adapter.mass_g,
        ..head
    });
    let most = adapter.settings.iter().max_by(|a, b| a.loft_deg.total_cmp(&b.loft_deg)).unwrap();
    let (target, turned) = (set.job.clubs[0].target.loft_deg, most.loft_deg - adapter.turns_deg(None).0);
    // As much too strong as its strongest turn mends, lie as that turn leaves it.
    set.read(1, "received", What::Loft, target - turned, 1);
    let lie = set.job.clubs[0].target.lie_deg - most.lie_deg + adapter.turns_deg(None).1;
    set.read(1, "received", What::Lie, lie, 2);
    // The weight of the adapter is another matter.
    let beyond = |set: &Set| -> Vec<OpenPoint> {
        let open = At::of(set).open(1, "cut").map(|open| open.points).unwrap_or_default();
        open.into_iter().filter(|point| matches!(point, OpenPoint::BeyondBending { .. })).collect()
    };
    assert_eq!(beyond(&set), []);
    set.read(1, "received", What::Loft, target - turned - 2.0, 3);
    let found = beyond(&set);
    assert!(
        matches!(&found[..], [OpenPoint::BeyondBending { what: What::Loft, by_deg, setting: Some(setting), .. }]
            if (by_deg - 2.0).abs() < 1e-9 && *setting == most.name),
        "{found:?}"
    );
}

#[test]
fn before_the_glue_a_short_shaft_and_an_unread_swing_weight_are_open() {
    let mut set = Set::planned();
    let found = At::of(&set).names(1, "glue");
    assert_eq!(found, [("unread".to_owned(), "dry".to_owned())]);
    set.read_off(1, "dry", 0.0, 1);
    assert_eq!(At::of(&set).names(1, "glue"), []);
    let plan = set.job.clubs[0].plan.as_ref().unwrap();
    let tolerance = set.job.clubs[0].target.tolerances.length_mm;
    set.read(1, "cut", What::ShaftLength, plan.cut_shaft_mm - tolerance - 0.6, 2);
    let at = At::of(&set);
    let open = at.open(1, "glue").expect("something is open");
    let short = open.points.iter().find_map(|point| match point {
        OpenPoint::CutShort { by_mm, .. } => Some(*by_mm),
        _ => None,
    });
    assert!((short.expect("cut short") - tolerance - 0.6).abs() < 1e-9, "{open:?}");
    // Cut longer, it can be cut once more. Another set: a shaft that is read longer than it was read before is doubted.
    let mut set = Set::planned();
    set.read_off(1, "dry", 0.0, 1);
    set.read(1, "cut", What::ShaftLength, set.job.clubs[0].plan.as_ref().unwrap().cut_shaft_mm + tolerance + 0.6, 3);
    assert!(named(&At::of(&set).names(1, "glue"), "off", "cut"), "{:?}", At::of(&set).names(1, "glue"));
}

/// A set whose first two clubs are glued from batch 3.
fn glued(set: &mut Set) -> Vec<Batch> {
    for slot in [1, 2] {
        set.read_off(slot, "dry", 0.0, slot);
        set.read(slot, "glue", What::Done, 0.0, 60);
    }
    vec![batch(3, &[set.club(1), set.club(2)])]
}

#[test]
fn bending_waits_for_the_cure_and_for_a_swing_weight_with_the_joint() {
    let mut set = Set::planned();
    let batches = glued(&mut set);
    let mut at = At { batches, ..At::of(&set) };
    let found = at.names(1, "bend");
    assert!(named(&found, "not_cured", "glue") && named(&found, "unread", "cured"), "{found:?}");
    assert!(named(&at.names(1, "hand_over"), "not_cured", "glue"));
    assert!(named(&at.names(3, "bend"), "not_glued", "glue"), "{:?}", at.names(3, "bend"));
    at.now = time(60 + 48 * 60);
    assert_eq!(at.names(1, "bend"), [("unread".to_owned(), "cured".to_owned())]);
}

#[test]
fn one_override_opens_a_batch_and_no_more_than_its_strength() {
    let mut set = Set::planned();
    let batches = glued(&mut set);
    let mut at = At { batches, ..At::of(&set) };
    let handling = ["turned", "cured", "gripped", "finish"];
    for slot in [1, 2] {
        for step in handling.iter().chain(&["bend", "hand_over"]) {
            assert!(matches!(at.gate(slot, step), Gate::Waits { .. }), "{step}");
        }
    }
    at.overrides = vec![CureOverride::Batch { batch: 3, strength: Strength::Handling }];
    for slot in [1, 2] {
        assert!(handling.iter().all(|step| at.gate(slot, step) == Gate::LetPass));
        assert!(matches!(at.gate(slot, "bend"), Gate::Waits { .. }), "no club is bent on handling strength");
    }
    at.overrides = vec![CureOverride::Batch { batch: 3, strength: Strength::Full }];
    for slot in [1, 2] {
        assert!(handling.iter().chain(&["bend", "hand_over"]).all(|step| at.gate(slot, step) == Gate::LetPass));
        assert!(!named(&at.names(slot, "bend"), "not_cured", "glue"));
    }
    // Another batch's word is none of theirs, nor is that of a batch before a club was glued once more.
    at.overrides = vec![CureOverride::Batch { batch: 4, strength: Strength::Full }];
    assert!(matches!(at.gate(1, "cured"), Gate::Waits { .. }));
    let later = Batch { mixed_at: time(100), ..batch(5, &[set.club(1)]) };
    at.batches.push(later);
    at.overrides = vec![CureOverride::Batch { batch: 3, strength: Strength::Full }];
    assert!(matches!(at.gate(1, "cured"), Gate::Waits { .. }));
    assert_eq!(at.gate(2, "cured"), Gate::LetPass);
    // As earlier versions kept it: one step of one club.
    at.overrides = vec![CureOverride::Step { club: set.club(2), step: "cured".into() }];
    assert_eq!(at.gate(2, "cured"), Gate::LetPass);
    assert!(matches!(at.gate(2, "gripped"), Gate::Waits { .. }));
    // The clock runs on: once the time is over, nothing is overridden.
    let adhesive = set.library.adhesive("DOLERITE").unwrap();
    at.now = ready_at(&at.batches[0], adhesive, Strength::Handling).unwrap().unwrap();
    assert_eq!(at.gate(2, "cured"), Gate::Open);
}

#[test]
fn what_was_passed_over_is_asked_again_once_the_club_is_read_again() {
    let mut set = Set::planned();
    let target = set.job.clubs[0].target.loft_deg;
    let limit = set.library.head(&set.job.clubs[0].target.head_model).unwrap().bend_limit_deg;
    set.read(1, "received", What::Loft, target + limit + 1.0, 1);
    let open = At::of(&set).open(1, "cut").expect("something is open");
    assert_eq!(open.passed, None);
    let passed = Passed {
        club: set.club(1),
        step: "cut".into(),
        points: open.points,
        reason: "the player wants it weak".into(),
        by: "Ada".into(),
        at: time(5),
    };
    let with =
        |set: &Set, step: &str| At { passed: vec![passed.clone()], ..At::of(set) }.open(1, step).expect("open").passed;
    assert_eq!(with(&set, "cut").map(|p| p.reason).as_deref(), Some("the player wants it weak"));
    assert_eq!(with(&set, "glue"), None, "another step asks for itself");
    // Readings of other clubs change nothing of it; one of this club does.
    set.read_off(2, "dry", 0.1, 6);
    assert!(with(&set, "cut").is_some());
    set.read(1, "received", What::Loft, target + limit + 1.5, 7);
    assert_eq!(with(&set, "cut"), None);
}

/// Records of earlier versions name no reading.
#[test]
fn points_of_earlier_versions_are_read_on() {
    let old = r#"[{"open":"doubted","step":"Dry","what":"swing_weight"},{"open":"unread","what":"lie"},
        {"open":"off","what":"loft","value":51.5,"unit":"deg","target":{"value":50.0,"tolerance":0.5}},
        {"open":"beyond_bending","what":"lie","by_deg":3.0,"limit_deg":2.0},
        {"open":"off_target","deviation_points":0.8,"tolerance_points":0.3,"chance":0.1},{"open":"glued","batch":2}]"#;
    let points: Vec<OpenPoint> = serde_json::from_str(old).unwrap();
    assert_eq!(points.len(), 6);
    // And written as they were.
    let again: serde_json::Value = serde_json::to_value(&points).unwrap();
    assert_eq!(again, serde_json::from_str::<serde_json::Value>(old).unwrap());
}
