//! What the checks of the day do to the belief of a job.

use bench::assembly::Assembly;
use bench::belief::BAND_95;
use bench::learned::Learned;
use bench::scale_watch::{ScaleWatch, WatchedCheck};
use bench::today_offset::today_offset;
use jiff::Timestamp;
use jiff::civil::date;
use trade::check_weight::CheckWeight;
use trade::id::{ClubId, JobId, ReadingId};
use trade::job::{Job, JobState};
use trade::model::Library;
use trade::part::Part;
use trade::reading::{Reading, What};
use trade::scale_event::CheckRead;
use trade::shop::Shop;
use trade::trust::{Reason, Trust, TrustCause};

struct Set {
    job: Job,
    library: Library,
    shop: Shop,
}

fn time(minute: i64) -> Timestamp {
    Timestamp::from_second(1_772_438_400 + 60 * minute).expect("a time")
}

impl Set {
    fn planned() -> Self {
        let shop = Shop {
            check_weight: Some(CheckWeight {
                name: "check club".into(),
                swing_weight_points: 31.4,
                sd_points: 0.04,
                mass_g: 412.0,
            }),
            ..demo::shop()
        };
        let sheet = demo::sheets(date(2026, 3, 2)).remove(0);
        let mut job = Job::of_sheet(&sheet, shop.steps.clone(), time(0));
        job.state = JobState::Planned;
        let parts: Vec<Part> = demo::parts(7);
        let library: Library = demo::models().into_iter().collect();
        let set = Self { job, library, shop };
        let plan = desk::planner::propose(set.assembly(ScaleWatch::nothing()), &parts, &[]).expect("a plan");
        let mut job = set.job.clone();
        for (club, plan) in job.clubs.iter_mut().zip(plan.clubs) {
            club.plan = plan;
        }
        Self { job, ..set }
    }

    fn assembly<'a>(&'a self, watch: &'a ScaleWatch) -> Assembly<'a> {
        Assembly { job: &self.job, library: &self.library, shop: &self.shop, learned: Learned::nothing(), watch }
    }

    fn reading(&self, what: What, value: f64, minute: i64) -> Reading {
        let club = self.job.clubs.iter().find(|c| c.plan.is_some()).expect("a planned club");
        let step = self.job.steps.iter().find(|s| s.asks.contains(&What::SwingWeight)).expect("a step");
        Reading {
            id: ReadingId(format!("r{minute:04}")),
            job: JobId("job".into()),
            club: club.id.clone(),
            step: step.key.clone(),
            what,
            value,
            unit: what.unit(),
            typed: value.to_string(),
            on: step.on.clone(),
            scale: None,
            display_step: 0.1,
            at: time(minute),
            by: "Ines".into(),
            replaces: None,
            taken_back: None,
            pivot_mm: None,
            insisted: false,
            forecast: None,
        }
    }

    /// What the first swing weight of the first club should show, and its band.
    fn expected(&self, watch: &ScaleWatch, readings: &[Reading]) -> (f64, f64) {
        let club: ClubId = self.reading(What::SwingWeight, 0.0, 0).club;
        let on = self.reading(What::SwingWeight, 0.0, 0).on;
        let believed = self.assembly(watch).believe(readings).expect("believed");
        let expected = believed.expected(&club, What::SwingWeight, &on).expect("sound").expect("a forecast");
        (expected.value, expected.band)
    }
}

fn check(error: f64, minute: i64) -> WatchedCheck {
    WatchedCheck {
        id: format!("c{minute:04}"),
        scale: "balance".into(),
        at: time(minute),
        by: "Ines".into(),
        read: CheckRead {
            standard: "check_weight".into(),
            name: "check club".into(),
            typed: String::new(),
            reading: 31.4 + error,
            certified: 31.4,
            certified_sd: 0.04,
            tolerance: 0.6,
            display_step: 0.1,
            noise_sd: 0.1,
            kept_though: None,
            job: None,
        },
    }
}

fn distrust(off_by: f64) -> (String, Trust) {
    let reasons = vec![Reason { cause: TrustCause::Tolerance, finding: fact::Told::verbatim("") }];
    let trust = Trust {
        trusted: false,
        since: None,
        off_by: Some(off_by),
        reasons,
        said: None,
        passed: None,
        extra_sd: off_by.abs(),
    };
    ("balance".into(), trust)
}

/// By hand: the new shop's offset of 0.2 points against one check of variance 0.1² + 0.1²/12 + 0.04² that shows 0.6:
/// 0.6·80.43/(25 + 80.43) = 0.4577, standard deviation 0.0974.
#[test]
fn a_check_settles_what_the_scale_is_off_by_today() {
    let set = Set::planned();
    let watch = ScaleWatch { checks: vec![check(0.6, 0)], ..ScaleWatch::default() };
    let found =
        today_offset(&set.shop, Learned::nothing(), &watch, "balance").expect("sound").expect("a scale of the belief");
    assert!((found.offset - 0.4577).abs() < 1e-3, "{found:?}");
    assert!((found.offset_band - BAND_95 * 0.0974).abs() < 1e-3, "{found:?}");
    assert!((found.without_checks_band - BAND_95 * 0.2).abs() < 1e-6, "{found:?}");
    assert_eq!(found.checks, 1);
    assert_eq!(today_offset(&set.shop, Learned::nothing(), &watch, "frequency").expect("sound"), None);
    // What the next reading is expected to show moves with it; the finish is the true swing weight and does not.
    let (before, band_before) = set.expected(ScaleWatch::nothing(), &[]);
    let (after, band_after) = set.expected(&watch, &[]);
    assert!((after - before - found.offset).abs() < 1e-6, "{before} {after}");
    assert!(band_after < band_before);
}

/// The same club put on the same scale at the same time: whether it was entered at the job's bench or apart from it
/// makes no difference.
#[test]
fn a_check_counts_as_much_as_one_read_in_the_job() {
    let set = Set::planned();
    let swing_weight = set.reading(What::SwingWeight, set.expected(ScaleWatch::nothing(), &[]).0.round(), 30);
    let apart = ScaleWatch { checks: vec![check(0.3, 0)], ..ScaleWatch::default() };
    let inside = [set.reading(What::CheckWeight, 31.7, 0), swing_weight.clone()];
    let (a, a_band) = set.expected(&apart, std::slice::from_ref(&swing_weight));
    let (b, b_band) = set.expected(ScaleWatch::nothing(), &inside);
    assert!((a - b).abs() < 1e-9 && (a_band - b_band).abs() < 1e-9, "{a} ± {a_band}, {b} ± {b_band}");
}

#[test]
fn a_scale_that_is_not_trusted_widens_the_band_and_its_check_is_believed() {
    let set = Set::planned();
    let first = set.reading(What::SwingWeight, 38.0, 30);
    let value = set.expected(ScaleWatch::nothing(), &[]).0;
    let reading = Reading { value, ..first };
    let readings = std::slice::from_ref(&reading);
    let finish = |watch: &ScaleWatch| {
        let believed = set.assembly(watch).believe(readings).expect("believed");
        believed.finish(&reading.club).expect("sound").expect("a finish").band_points
    };
    let trusted = finish(ScaleWatch::nothing());
    let doubted = finish(&ScaleWatch { not_trusted: vec![distrust(1.2)], ..ScaleWatch::default() });
    assert!(doubted > trusted + 0.05, "{doubted} against {trusted}: wider, and no hard stop");
    // 1.2 points off is six standard deviations of what the scale states. Once it is not trusted, its check tells.
    let off = |watch: &ScaleWatch| {
        today_offset(&set.shop, Learned::nothing(), watch, "balance").expect("sound").expect("known").offset
    };
    let told =
        off(&ScaleWatch { checks: vec![check(1.2, 0)], not_trusted: vec![distrust(1.2)], ..ScaleWatch::default() });
    assert!((told - 1.2).abs() < 0.05, "{told}");
    let with_check =
        finish(&ScaleWatch { checks: vec![check(1.2, 0)], not_trusted: vec![distrust(1.2)], ..ScaleWatch::default() });
    assert!(with_check < doubted, "a check settles what it is off by, trusted or not");
}

/// By hand: a check that shows 0.6 moves today's offset by 0.4577, of which the next morning keeps the scale's habit. The
/// drift of the first day, 0.15 at most, is gone by then.
#[test]
fn the_morning_after_a_check_knows_the_habit_and_not_the_day() {
    let set = Set::planned();
    let watch = ScaleWatch { checks: vec![check(0.6, 0)], ..ScaleWatch::default() };
    let unknown = set.expected(ScaleWatch::nothing(), &[]);
    let today = set.expected(&watch, &[]);
    let assembly = set.assembly(&watch);
    assert!(!assembly.is_next_day(&[], time(8 * 60)), "eight hours are a long day");
    assert!(assembly.is_next_day(&[], time(15 * 60)));
    assert!(!set.assembly(ScaleWatch::nothing()).is_next_day(&[], time(15 * 60)), "nothing was read on any day");
    let next = set.expected(&ScaleWatch { next_day: true, ..watch.clone() }, &[]);
    let kept = (next.0 - unknown.0) / (today.0 - unknown.0);
    let balance = &set.shop.balance_scale;
    assert!(balance.offset_sd > 0.0 && (0.2..0.9).contains(&kept), "{kept} of it is kept");
    assert!(today.1 < next.1 && next.1 < unknown.1, "{} today, {} tomorrow, {} unread", today.1, next.1, unknown.1);
    // The first reading of the new day says so itself: nothing is left to assume.
    let read = [set.reading(What::SwingWeight, next.0, 15 * 60)];
    assert!(!assembly.is_next_day(&read, time(15 * 60 + 30)));
}
