//! Orders: where they stand, who waits for them, what is refused or asked about.

use super::{job, library, now, shop_of, today};
use desk::order::{waiting, wanted};
use desk::planner;
use jiff::civil::date;
use rstest::rstest;
use trade::id::JobId;
use trade::model::PartKind;
use trade::order::OrderAsk;
use trade::order::{ForJob, Order, OrderEvent, OrderLine, OrderState, OrderStep, check_line};
use trade::part::Part;
use words::check::InWords;

fn line(count: i64) -> OrderLine {
    OrderLine {
        id: "o".into(),
        order: 12,
        supplier: "Harrowgate Castings".into(),
        kind: PartKind::Head,
        model: "SISKIN".into(),
        number: Some("7".into()),
        count,
        from_g: Some(264.0),
        to_g: Some(268.0),
        jobs: Vec::new(),
        note: String::new(),
        ordered_on: today(),
        expected_on: Some(date(2026, 3, 10)),
        by: "Ines".into(),
        at: now(),
    }
}

fn event(step: OrderStep, count: i64) -> OrderEvent {
    OrderEvent {
        id: "e".into(),
        step,
        count,
        model: None,
        number: None,
        supplier: None,
        expected_on: None,
        note: String::new(),
        by: "Ines".into(),
        at: now(),
    }
}

fn order(count: i64, events: &[(OrderStep, i64)]) -> Order {
    Order { line: line(count), events: events.iter().map(|(s, n)| event(*s, *n)).collect() }
}

#[rstest]
#[case(&[], OrderState::Ordered, 4)]
#[case(&[(OrderStep::Received, 1)], OrderState::PartlyHere, 3)]
#[case(&[(OrderStep::Received, 1), (OrderStep::Received, 3)], OrderState::Here, 0)]
#[case(&[(OrderStep::Received, 6)], OrderState::Here, 0)]
#[case(&[(OrderStep::Received, 1), (OrderStep::Short, 0)], OrderState::Short, 0)]
#[case(&[(OrderStep::Short, 0)], OrderState::Short, 0)]
#[case(&[(OrderStep::Cancelled, 0)], OrderState::Cancelled, 0)]
#[case(&[(OrderStep::Received, 1), (OrderStep::Cancelled, 0)], OrderState::Short, 0)]
#[case(&[(OrderStep::Cancelled, 0), (OrderStep::Received, 4)], OrderState::Here, 0)]
fn where_an_order_stands(#[case] events: &[(OrderStep, i64)], #[case] state: OrderState, #[case] open: i64) {
    let order = order(4, events);
    assert_eq!((order.state(), order.open()), (state, open));
}

#[test]
fn more_than_ordered_and_what_was_cancelled_is_asked_about() {
    let fresh = order(4, &[]);
    assert_eq!(fresh.asks(4), None);
    let told = |ask: OrderAsk| words::Words::english(quantity::Units::default()).tell(&ask);
    assert_eq!(fresh.asks(5).map(told).unwrap(), "5 are more than the 4 of order 12 that are still to come");
    let here = order(4, &[(OrderStep::Received, 4)]);
    assert_eq!(here.asks(1).map(told).unwrap(), "all of order 12 are here already");
    let mut gone = order(4, &[(OrderStep::Cancelled, 0)]);
    gone.events[0].note = "the player chose others".into();
    assert_eq!(gone.asks(1).map(told).unwrap(), "order 12 was cancelled by Ines (“the player chose others”)");
}

#[test]
fn what_came_goes_to_the_jobs_in_their_order_and_a_substitute_serves_none() {
    let mut both = order(5, &[]);
    let wish = |job: &str, number, count| ForJob { job: JobId(job.into()), number, count };
    both.line.jobs = vec![wish("a", 3, 2), wish("b", 4, 2)];
    let open = |o: &Order| (o.open_for(&JobId("a".into())), o.open_for(&JobId("b".into())));
    assert_eq!(open(&both), (2, 2));
    both.events.push(event(OrderStep::Received, 3));
    assert_eq!(open(&both), (0, 1));
    both.events.pop();
    // Two others in their place: three are to come, and both jobs lack what they wait for.
    both.events.push(OrderEvent { number: Some("8".into()), ..event(OrderStep::Received, 2) });
    assert_eq!((both.substituted(), both.open()), (2, 3));
    assert_eq!(open(&both), (2, 1));
    both.events.push(event(OrderStep::Cancelled, 0));
    assert_eq!(open(&both), (0, 0), "nobody waits for what was cancelled");
}

#[test]
fn a_job_waits_in_words() {
    let mut two = order(2, &[]);
    let job = JobId("a".into());
    two.line.jobs = vec![ForJob { job: job.clone(), number: 3, count: 2 }];
    let words = |o: &Order, day| {
        words::Words::english(quantity::Units::default())
            .tell(&waiting(std::slice::from_ref(o), &job, &library(), day, |_, _, _| 2)[0].fact)
    };
    // 10 March 2026 is a Tuesday.
    assert_eq!(words(&two, date(2026, 3, 5)), "waits for 2 heads Siskin 7, expected Tuesday");
    assert_eq!(words(&two, date(2026, 3, 2)), "waits for 2 heads Siskin 7, expected Tuesday 10 Mar");
    assert_eq!(words(&two, date(2026, 3, 9)), "waits for 2 heads Siskin 7, expected tomorrow");
    assert_eq!(words(&two, date(2026, 3, 10)), "waits for 2 heads Siskin 7, expected today");
    assert_eq!(
        words(&two, date(2026, 3, 14)),
        "waits for 2 heads Siskin 7, 4 days overdue: they were expected on Tuesday 10 Mar"
    );
    two.events.push(OrderEvent { expected_on: Some(date(2026, 3, 16)), ..event(OrderStep::Told, 0) });
    assert_eq!(words(&two, date(2026, 3, 14)), "waits for 2 heads Siskin 7, expected Monday", "the new day holds");
    two.line.expected_on = None;
    two.events = vec![event(OrderStep::Received, 1)];
    assert_eq!(words(&two, date(2026, 3, 14)), "waits for 1 head Siskin 7, no day named yet");
    two.events.push(event(OrderStep::Received, 1));
    assert!(waiting(&[two], &job, &library(), today(), |_, _, _| 2).is_empty());
}

/// Two and three heads are ordered for a job, those of the second order to come first.
#[test]
fn a_job_waits_for_no_more_than_it_lacks() {
    let job = JobId("a".into());
    let ordered = |number, count, day| {
        let mut one = order(count, &[]);
        one.line.order = number;
        one.line.expected_on = Some(date(2026, 3, day));
        one.line.jobs = vec![ForJob { job: job.clone(), number: 3, count }];
        one
    };
    let orders = [ordered(1, 2, 12), ordered(2, 3, 10)];
    let waits = |lacks| {
        let found = waiting(&orders, &job, &library(), date(2026, 3, 2), |_, _, _| lacks);
        found.iter().map(|w| (w.order, w.count)).collect::<Vec<_>>()
    };
    assert_eq!(waits(9), [(Some(2), 3), (Some(1), 2)]);
    assert_eq!(waits(4), [(Some(2), 3), (Some(1), 1)]);
    assert_eq!(waits(3), [(Some(2), 3)]);
    assert_eq!(waits(0), []);
}

#[test]
fn an_order_that_nobody_can_mean_is_refused_by_name() {
    assert!(check_line(&line(1)).is_ok());
    type Spoil = fn(&mut OrderLine);
    let cases: [(Spoil, &str); 7] = [
        (|l| l.count = 0, "0 is not a number of parts"),
        (|l| l.count = -3, "-3 is not a number of parts"),
        (|l| l.from_g = Some(f64::NAN), "from_g"),
        (|l| l.to_g = Some(26.8), "to_g is 26.8 g"),
        (|l| l.from_g = Some(270.0), "run from 270 g to 268 g"),
        (|l| l.expected_on = Some(date(2026, 2, 1)), "before it was ordered"),
        (|l| l.jobs = vec![ForJob { job: JobId("a".into()), number: 3, count: 9 }], "9 are meant for jobs"),
    ];
    for (spoil, words) in cases {
        let mut bad = line(4);
        spoil(&mut bad);
        let refused = check_line(&bad).unwrap_err().in_words();
        assert!(refused.contains(words), "{refused}");
    }
}

#[test]
fn a_plan_without_heads_and_grips_names_both_to_order_with_the_window() {
    let (library, shop, learned) = (library(), shop_of::shop(), bench::learned::Learned::default());
    let job = job("SISKIN", 3);
    let assembly = bench::assembly::Assembly {
        job: &job,
        library: &library,
        shop: &shop,
        learned: &learned,
        watch: bench::scale_watch::ScaleWatch::nothing(),
    };
    let parts: Vec<Part> = shop_of::parts(7)
        .into_iter()
        .map(|p| Part { id: p.code.as_str().into(), ..p })
        .filter(|p| p.kind != PartKind::Grip && !(p.model == "SISKIN" && p.number.as_deref() == Some("7")))
        .collect();
    let plan = planner::propose(assembly, &parts, &[]).unwrap();
    let found = wanted(&job, &plan, &library, &parts, &[]);
    let of = |kind| found.iter().find(|w| w.kind == kind).unwrap();
    assert_eq!(found.iter().map(|w| w.kind).collect::<std::collections::BTreeSet<_>>().len(), 2, "{found:?}");
    assert_eq!((of(PartKind::Head).number.as_deref(), of(PartKind::Head).count), (Some("7"), 1));
    assert_eq!((of(PartKind::Grip).model.as_str(), of(PartKind::Grip).count), ("OLIVINE", 8));

    let with_grips = shop_of::parts(7).into_iter().map(|p| Part { id: p.code.as_str().into(), ..p });
    let parts: Vec<Part> = with_grips.filter(|p| !(p.model == "SISKIN" && p.number.as_deref() == Some("7"))).collect();
    let plan = planner::propose(assembly, &parts, &[]).unwrap();
    let found = wanted(&job, &plan, &library, &parts, &[]);
    let [head] = found.as_slice() else { panic!("{found:?}") };
    assert!(head.from_g.unwrap() < 265.5 && head.to_g.unwrap() > 265.5, "the model's mass lies inside: {head:?}");
    assert_eq!((head.clubs.as_slice(), head.to_order()), (&["7".to_owned()][..], 1));
    // What is ordered already is not ordered twice.
    let mut ordered = order(1, &[]);
    ordered.line.jobs = vec![ForJob { job: job.id.clone(), number: 3, count: 1 }];
    let again = wanted(&job, &plan, &library, &parts, &[ordered.clone()]);
    assert_eq!((again[0].ordered, again[0].to_order()), (1, 0));
    ordered.line.jobs[0].job = JobId("another".into());
    assert_eq!(wanted(&job, &plan, &library, &parts, &[ordered])[0].to_order(), 1, "another job's is not this one's");
}
