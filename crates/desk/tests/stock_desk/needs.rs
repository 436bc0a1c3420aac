//! The stock against the sheets to come.

use super::{job, library, now, today, weighed};
use desk::needs::{JobShort, Need, OpenClub, needs};
use std::collections::BTreeMap;
use trade::model::PartKind;
use trade::order::{Order, OrderLine};
use trade::part::{Part, PartState};

fn heads(count: usize) -> Vec<Part> {
    (1..=count).map(|i| weighed(PartKind::Head, "SISKIN", &format!("S7-{i}"), Some("7"), 265.0)).collect()
}

fn on_order(count: i64) -> Order {
    Order {
        line: OrderLine {
            id: "o".into(),
            order: 1,
            supplier: String::new(),
            kind: PartKind::Head,
            model: "SISKIN".into(),
            number: Some("7".into()),
            count,
            from_g: None,
            to_g: None,
            jobs: Vec::new(),
            note: String::new(),
            ordered_on: today(),
            expected_on: None,
            by: String::new(),
            at: now(),
        },
        events: Vec::new(),
    }
}

fn find<'a>(rows: &'a [Need], kind: PartKind, number: Option<&str>) -> &'a Need {
    rows.iter().find(|r| r.kind == kind && r.number.as_deref() == number).unwrap()
}

#[test]
fn the_job_that_is_due_last_goes_short_first() {
    let (first, mut second) = (job("SISKIN", 1), job("SISKIN", 2));
    second.sheet.due = first.sheet.due.tomorrow().unwrap();
    let third = job("SISKIN", 3);
    let mut clubs: Vec<OpenClub<'_>> = Vec::new();
    // In the wrong order on purpose; the third is a sheet that is not approved.
    for club in &second.clubs {
        clubs.push(OpenClub {
            customer: None,
            job: Some(2),
            id: Some(&club.id),
            due: second.sheet.due,
            target: &club.target,
        });
    }
    for club in &first.clubs {
        clubs.push(OpenClub {
            customer: None,
            job: Some(1),
            id: Some(&club.id),
            due: first.sheet.due,
            target: &club.target,
        });
    }
    for club in &third.clubs {
        clubs.push(OpenClub { customer: None, job: None, id: None, due: third.sheet.due, target: &club.target });
    }
    let mut parts = heads(1);
    parts.push(Part { mass_g: None, ..weighed(PartKind::Head, "SISKIN", "S7-9", Some("7"), 1.0) });
    parts.push(Part { state: PartState::Rejected, ..weighed(PartKind::Head, "SISKIN", "S7-8", Some("7"), 265.0) });
    let rows = needs(&clubs, &parts, &BTreeMap::new(), &[on_order(2)], &library());
    let seven = find(&rows, PartKind::Head, Some("7"));
    assert_eq!((seven.free, seven.not_weighed, seven.held, seven.on_order), (2, 1, 0, 2));
    assert_eq!((seven.needed_by_jobs, seven.needed_by_sheets, seven.short, seven.to_order), (2, 1, 1, 0));
    assert!(seven.jobs_short.is_empty());
    // With one head only, the second job goes without.
    let rows = needs(&clubs, &heads(1), &BTreeMap::new(), &[], &library());
    let seven = find(&rows, PartKind::Head, Some("7"));
    assert_eq!(seven.jobs_short, [JobShort { job: 2, count: 1 }]);
    assert_eq!((seven.short, seven.to_order), (2, 2));
    // Parallel shafts and grips are of no number: eight clubs a set.
    assert_eq!(find(&rows, PartKind::Shaft, None).needed_by_jobs, 16);
    assert_eq!(find(&rows, PartKind::Grip, None).needed_by_sheets, 8);
    assert_eq!(find(&rows, PartKind::Ferrule, None).short, 24);
}

#[test]
fn taper_blanks_count_by_number_adapters_for_heads_that_take_them_and_boxes_by_their_count() {
    let (wedges, driver) = (job("WHINCHAT", 1), job("FIELDFARE", 2));
    let clubs: Vec<OpenClub<'_>> = [&wedges, &driver]
        .iter()
        .flat_map(|j| {
            j.clubs.iter().map(|c| OpenClub {
                customer: None,
                job: Some(j.number),
                id: Some(&c.id),
                due: j.sheet.due,
                target: &c.target,
            })
        })
        .collect();
    let adapters = Part { id: "box".into(), count: Some(3), ..Part::new("ADA-F", PartKind::Adapter, "FIELDFARE-A") };
    let held = BTreeMap::from([("box".to_owned(), 2)]);
    let rows = needs(&clubs, std::slice::from_ref(&adapters), &held, &[], &library());
    for number in ["54", "58"] {
        assert_eq!(find(&rows, PartKind::Shaft, Some(number)).needed_by_jobs, 1, "{rows:?}");
    }
    let box_of = find(&rows, PartKind::Adapter, None);
    assert_eq!((box_of.free, box_of.held, box_of.needed_by_jobs, box_of.short), (3, 2, 1, 0));
}

#[test]
fn what_is_reserved_for_a_club_is_not_asked_for_again() {
    let job = job("SISKIN", 1);
    let club = job.clubs.iter().find(|c| c.target.number == "7").unwrap();
    let open =
        [OpenClub { customer: None, job: Some(1), id: Some(&club.id), due: job.sheet.due, target: &club.target }];
    let mut parts = heads(1);
    parts[0].state = PartState::Held;
    parts[0].club = Some(club.id.clone());
    let rows = needs(&open, &parts, &BTreeMap::new(), &[], &library());
    let seven = find(&rows, PartKind::Head, Some("7"));
    assert_eq!((seven.held, seven.needed_by_jobs, seven.short), (1, 0, 0));
}

#[test]
fn what_a_customer_brought_serves_that_customer_alone_and_is_no_stock() {
    let job = job("SISKIN", 1);
    let club = job.clubs.iter().find(|c| c.target.number == "7").unwrap();
    let asked = |customer| {
        let open = [OpenClub { customer, job: Some(1), id: Some(&club.id), due: job.sheet.due, target: &club.target }];
        let mut parts = heads(1);
        parts[0].owner = Some(3);
        let rows = needs(&open, &parts, &BTreeMap::new(), &[], &library());
        rows.into_iter().find(|r| r.kind == PartKind::Head).map(|r| (r.free, r.short))
    };
    assert_eq!(asked(None), Some((0, 1)), "nobody's job goes short beside it");
    assert_eq!(asked(Some(4)), Some((0, 1)), "and so does another customer's");
    assert_eq!(asked(Some(3)), None, "their own job needs none from the shop");
}
