//! Goal: a reference club that was read on the shop's own scale carries what that scale was off by on that day, and
//! nothing more is promised than that allows. Method: the variances that the sum of truth, habit, day and noise gives are
//! written out here; a long run of drawn shops then says how often the band of the finish held.
//!
//! Figures (derivation): reading of the reference r = T + h + d + e with habit h and day d of variance s²/2 each (a new
//! shop's split) and noise e of variance n². The target in true points is T = r − h − d − e. A check weight tells h + d'
//! of the bench's day d'. Left of T when that is known: another day s²/2 + (s²/2)²/s² … = 3 s²/4 + n²; the same day n².

use crate::set::{Set, time};
use bench::offer::Measure;
use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64Mcg;
use trade::reading::What;

/// Half width of a 95 % band in standard deviations.
const BAND_95: f64 = 1.96;
/// What the shop states of its balance scale, points: offset, noise of one reading, step of the display.
const OFFSET_SD: f64 = 0.2;
const NOISE_SD: f64 = 0.08;
const STEP: f64 = 0.1;

/// A set whose target rests on a reading of the reference club on the shop's own scale.
fn set(points: f64, same_day: bool) -> Set {
    let mut set = Set::planned();
    let scale = &mut set.shop.balance_scale;
    (scale.offset_sd, scale.noise_sd, scale.display_step) = (OFFSET_SD, NOISE_SD, STEP);
    let key = scale.key.clone();
    let reference =
        serde_json::json!({ "number": "7", "swing_weight_points": points, "scale": key, "read_on": "2026-02-28" });
    set.job.sheet.reference = Some(serde_json::from_value(reference).expect("a reference club"));
    for club in &mut set.job.clubs {
        club.target.swing_weight_points = points;
    }
    if same_day {
        set.watch.bench_days = vec![(jiff::civil::date(2026, 2, 28), time(0))];
    }
    set
}

/// What the target leaves open of a finish, points: the variance of the finish less that of its true swing weight.
fn open_by_target(set: &Set) -> f64 {
    let finish = set.state(1).finish.expect("a finish");
    let variance = |band: f64| (band / BAND_95).powi(2);
    (variance(finish.band_points) - variance(finish.own_band_points)).max(0.0).sqrt()
}

/// Tells what the scale is off by today, as well as many readings can.
fn offset_known(set: &mut Set) {
    set.shop.check_weight.as_mut().expect("a check weight").sd_points = 1e-4;
    let points = set.shop.check_weight.as_ref().expect("a check weight").swing_weight_points;
    for minute in 1..=60 {
        set.read(1, "dry", What::CheckWeight, points, minute);
    }
}

#[test]
fn a_target_is_known_no_better_than_its_reading() {
    let noise = NOISE_SD.hypot(STEP / 12f64.sqrt());
    // Before anything is read on the bench, both days are open alike.
    let whole = OFFSET_SD.hypot(noise);
    assert!((open_by_target(&set(32.0, false)) - whole).abs() < 0.003);

    let mut other_day = set(32.0, false);
    offset_known(&mut other_day);
    let left = (0.75 * OFFSET_SD * OFFSET_SD + noise * noise).sqrt();
    assert!((open_by_target(&other_day) - left).abs() < 0.004, "{} for {left}", open_by_target(&other_day));

    let mut same_day = set(32.0, true);
    offset_known(&mut same_day);
    assert!((open_by_target(&same_day) - noise).abs() < 0.004, "{} for {noise}", open_by_target(&same_day));
}

/// What the scale is off by is the same in the target and in the finish of that day: it cancels without a check weight.
#[test]
fn the_same_day_cancels_by_itself() {
    let finish_after = |same_day| {
        let mut set = set(32.0, same_day);
        for slot in 1..=4 {
            set.read_off(slot, "dry", 0.0, slot);
            set.read(slot, "glue", What::Done, 0.0, 10);
            set.read_off(slot, "cured", 0.0, 20 + slot);
            set.read_off(slot, "finish", 0.0, 30 + slot);
        }
        set.state(1).finish.expect("a finish")
    };
    let (same, other) = (finish_after(true), finish_after(false));
    let noise = NOISE_SD.hypot(STEP / 12f64.sqrt());
    let sd = |band: f64| band / BAND_95;
    // Of the same day: the reading of the finish and that of the reference, each with its noise.
    assert!(sd(same.band_points) < 1.1 * noise * 2f64.sqrt(), "{}", sd(same.band_points));
    // Of another: two days' own parts on top, of variance s²/2 each.
    assert!(
        sd(other.band_points) > 0.8 * (OFFSET_SD * OFFSET_SD + 2.0 * noise * noise).sqrt(),
        "{}",
        sd(other.band_points)
    );
    assert!(same.band_points < same.own_band_points, "the true swing weight alone is known less well");
}

/// Once the reference club has been on today's scale, a check weight adds nothing; on another day the reference club is
/// worth more than the check weight.
#[test]
fn what_is_worth_measuring_follows() {
    let offers = |same_day: bool| {
        let mut set = set(32.0, same_day);
        for slot in 1..=4 {
            set.read_off(slot, "dry", 0.0, slot);
        }
        let believed = set.assembly().believe(&set.readings).expect("a belief");
        let spares = set.spares();
        bench::offer::offers(&believed, &set.club(1), &spares, &[]).expect("offers").offers
    };
    let gain = |same_day: bool, measure: Measure| {
        offers(same_day).iter().find(|o| o.measure == measure).map_or(0.0, |o| o.clubs_gained)
    };
    assert!(gain(true, Measure::CheckWeight) < 0.1, "{}", gain(true, Measure::CheckWeight));
    let (reference, check) = (gain(false, Measure::Reference), gain(false, Measure::CheckWeight));
    assert!(reference > check, "{reference} clubs against {check}");
}

/// Shops are drawn with a habit and a day of their own; the reference is read on one day and the bench on another, or on
/// the same. The finish is held against the true target.
#[test]
fn the_band_of_the_finish_holds() {
    for (same_day, checked) in [(false, false), (false, true), (true, false), (true, true)] {
        let (mut inside, runs) = (0, 250);
        for seed in 0..runs {
            let mut draw = Pcg64Mcg::seed_from_u64(seed);
            let mut normal = |sd: f64| {
                // Box and Muller (1958).
                let (u, v): (f64, f64) = (draw.random::<f64>().max(1e-300), draw.random());
                sd * (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * v).cos()
            };
            let round = |v: f64| (v / STEP).round() * STEP;
            let own = OFFSET_SD / 2f64.sqrt();
            let habit = normal(own);
            let (that_day, this_day) = (normal(own), normal(own));
            let this_day = if same_day { that_day } else { this_day };
            let truth = 32.0 + normal(0.5);
            let shown = round(truth + habit + that_day + normal(NOISE_SD));
            let mut set = set(shown, same_day);
            let off = habit + this_day;
            if checked {
                let certified = set.shop.check_weight.as_ref().expect("a check weight").swing_weight_points;
                for minute in 1..=3 {
                    let shows = round(certified + off + normal(NOISE_SD));
                    set.read(1, "dry", What::CheckWeight, shows, minute);
                }
            }
            // A finished club whose true swing weight is wherever it is: read once.
            let built = truth + normal(0.2);
            set.read(1, "glue", What::Done, 0.0, 10);
            set.read(1, "finish", What::SwingWeight, round(built + off + normal(NOISE_SD)), 1500);
            set.insist();
            let finish = set.state(1).finish.expect("a finish");
            let missed = finish.deviation_points - (built - truth);
            inside += u32::from(missed.abs() <= finish.band_points);
        }
        // Binomial, 250 at 0.95: fewer than 224 or more than 248 come less than once in a thousand.
        assert!((224..=250).contains(&inside), "same day {same_day}, checked {checked}: {inside} of {runs}");
    }
}

/// The worked numbers of a reference that is read on one day and a bench that reads on another. With T the club's true swing
/// weight, o the offset of the scale today and r what the sheet says it showed, only u² = Var(T + o − r) counts for a
/// finish. Offsets of 0.2 points, 0.6 of it lasting (correlation of two days), noise 0.085 with its rounding:
/// same day u = 0.085; another day r = T + o' + e, so that u² = Var(o − o' − e) = 2·0.2²·(1 − 0.6) + 0.085².
mod worked {
    use super::{Set, What, time};
    use bench::learned::{Learned, LearnedValue, Scatter};
    use jiff::civil::date;

    const OFFSET: f64 = 0.2;
    const BETWEEN_DAYS: f64 = 0.6;
    const NOISE: f64 = 0.085;
    const POINTS: f64 = 32.0;
    const BAY: &str = "fitting bay";

    /// A shop whose scale is known to keep six tenths of the variance of its offset from day to day.
    fn set(read: &[(&str, i8, f64)]) -> Set {
        let mut set = Set::planned();
        let scale = &mut set.shop.balance_scale;
        (scale.offset_sd, scale.noise_sd, scale.display_step) = (OFFSET, NOISE, 0.0);
        let key = scale.key.clone();
        let habit = OFFSET * OFFSET * BETWEEN_DAYS;
        scale.drift_sd_per_root_h = 0.0;
        scale.drift_sd_per_day = Some(0.0);
        let value = |key: String, prior_sd| LearnedValue {
            key,
            mean_shift: 0.0,
            prior_sd,
            clubs: 0,
            jobs: 0,
            from: Vec::new(),
            pinned: false,
        };
        let scatter = |key: &str, sd, prior_sd| Scatter { key: key.into(), sd, prior_sd, weight: 1.0, pinned: true };
        // The prior figures are a new shop's, so that what was learned holds. Solvent is known, so that a reading of the
        // finish is one of its swing weight and nothing else; where the head's centre is, is not known at all, so that the
        // scale's offset cannot be told from what the club should weigh.
        let today = (OFFSET * OFFSET * (1.0 - BETWEEN_DAYS)).sqrt();
        let new_shop = OFFSET * std::f64::consts::FRAC_1_SQRT_2;
        set.learned = Learned {
            values: vec![
                value("delta:SISKIN".into(), 1.0),
                value("solvent".into(), 1.0),
                value(format!("usual_offset:{key}"), new_shop),
            ],
            covariance: vec![vec![9.0, 0.0, 0.0], vec![0.0, 1e-12, 0.0], vec![0.0, 0.0, habit]],
            scatter: vec![
                scatter("solvent.job", 1e-6, 0.4),
                scatter("solvent.piece", 1e-6, 0.5),
                scatter(&format!("today:{key}"), today, OFFSET * (1.0 - new_shop.powi(2) / OFFSET.powi(2)).sqrt()),
            ],
            ..Learned::default()
        };
        let scale = |name: &str| if name == BAY { BAY.to_owned() } else { key.clone() };
        let row = |(name, day, points): &(&str, i8, f64)| serde_json::json!({ "swing_weight_points": points, "scale": scale(name), "read_on": date(2026, 2, *day) });
        let mut club = row(&read[0]);
        club["number"] = "7".into();
        club["also_read"] = read[1..].iter().map(row).collect();
        set.job.sheet.reference = Some(serde_json::from_value(club).expect("a reference club"));
        for club in &mut set.job.clubs {
            club.target.swing_weight_points = POINTS;
        }
        set.watch.bench_days = vec![(date(2026, 2, 28), time(0))];
        set
    }

    /// Reads the finish of the first club so often that its own noise is nothing, and says what is left of its deviation: u.
    fn left(set: &mut Set) -> f64 {
        set.read(1, "glue", What::Done, 0.0, 10);
        for minute in 0..900 {
            set.read(1, "finish", What::SwingWeight, POINTS, 400 + minute / 10);
            let last = set.readings.last_mut().expect("a reading");
            (last.display_step, last.insisted) = (0.0, true);
        }
        let finish = set.state(1).finish.expect("a finish");
        finish.band_points / bench::belief::BAND_95
    }

    /// u of the first reading with `n` re-reads today, from the formula: today's readings are as one of noise NOISE/√n; the
    /// other day's tells the same with more noise; each counts by the inverse of its variance.
    fn with_rereads(other: f64, n: u32) -> f64 {
        (1.0 / (1.0 / (other * other) + f64::from(n) / (NOISE * NOISE))).sqrt()
    }

    fn near(found: f64, expected: f64) {
        assert!((found - expected).abs() < 0.003, "{found} for {expected}");
    }

    #[test]
    fn the_day_of_the_reference_is_all_that_counts() {
        near(left(&mut set(&[("", 28, POINTS)])), NOISE);
        let other = (2.0 * OFFSET * OFFSET * (1.0 - BETWEEN_DAYS) + NOISE * NOISE).sqrt();
        assert!((0.17..0.20).contains(&other), "{other}");
        near(left(&mut set(&[("", 20, POINTS)])), other);
        for n in [1, 2] {
            let mut set = set(&[("", 20, POINTS)]);
            for minute in 0..i64::from(n) {
                set.read(1, "dry", What::ReferenceSwingWeight, POINTS, minute);
                set.readings.last_mut().expect("a reading").display_step = 0.0;
            }
            near(left(&mut set), with_rereads(other, n));
        }
    }

    /// Two other days: their offsets have the habit in common. By the formula of the best mean of two readings that correlate,
    /// with a = Var(o − o' − e) on the diagonal and b = Var(o) − 2·Cov + Cov beside it.
    #[test]
    fn several_days_of_one_scale_and_another_scale_count_by_their_variances() {
        let (day, lasting) = (OFFSET * OFFSET * (1.0 - BETWEEN_DAYS), OFFSET * OFFSET * BETWEEN_DAYS);
        // Today's own part is in both, each other day's own and its noise in one: (today) + (day + noise)/2.
        let two_days = (day + (day + NOISE * NOISE) / 2.0).sqrt();
        near(left(&mut set(&[("", 19, POINTS), ("", 20, POINTS)])), two_days);
        // Twice on one other day: only the noise is halved.
        let twice = (2.0 * day + NOISE * NOISE / 2.0).sqrt();
        near(left(&mut set(&[("", 20, POINTS), ("", 20, POINTS)])), twice);
        // Another scale shares nothing with today's: 0.2² for its offset, habit and day of today's in full.
        let elsewhere = OFFSET * OFFSET + NOISE * NOISE + day + lasting;
        near(left(&mut set(&[(BAY, 20, POINTS)])), elsewhere.sqrt());
        // Both, with habit and day of today's in common: the other day's reading has only its day and noise besides.
        let (a, b, both) = (2.0 * day + NOISE * NOISE, elsewhere, day);
        let best = (a * b - both * both) / (a + b - 2.0 * both);
        near(left(&mut set(&[("", 20, POINTS), (BAY, 20, POINTS)])), best.sqrt());
    }

    /// What the check weight takes out of the clubs it takes out of the target as well, where both were read on one day.
    #[test]
    fn a_check_weight_does_not_shift_clubs_against_a_reference_of_the_same_day() {
        for (read, shift) in [
            (vec![("", 28, POINTS)], 0.0),
            // Once more on the bench's day: that counts, whatever scale and day the first was read on.
            (vec![(BAY, 20, POINTS), ("", 28, POINTS), ("", 28, POINTS), ("", 28, POINTS)], 0.06),
        ] {
            let finish = |off: Option<f64>| {
                let mut set = set(&read);
                if let Some(off) = off {
                    let points = set.shop.check_weight.as_ref().expect("a check weight").swing_weight_points;
                    (1..=9).for_each(|m| _ = set.read(1, "dry", What::CheckWeight, points + off, m));
                    set.insist();
                }
                left(&mut set);
                set.state(1).finish.expect("a finish")
            };
            let (without, with) = (finish(None), finish(Some(0.4)));
            assert!((with.swing_weight_points - without.swing_weight_points).abs() < shift + 0.02, "{read:?}");
            assert!((with.deviation_points - without.deviation_points).abs() < shift + 0.02, "{read:?}");
        }
    }

    /// A figure in true points has no scale's offset in it: exact, or as the sheet says.
    #[test]
    fn a_figure_in_true_points_carries_what_the_sheet_says() {
        for sd in [0.0, 0.05] {
            let mut set = set(&[("", 20, POINTS)]);
            set.job.sheet.reference.as_mut().expect("a reference club").swing_weight_sd_points = Some(sd);
            let today = OFFSET;
            near(left(&mut set), today.hypot(sd));
        }
    }
}

/// A sheet that was written before a reference club could have several readings is read as it was, and written as it was.
#[test]
fn an_old_sheet_is_read_as_before() {
    let old = serde_json::json!({
        "number": "7", "balance_points": 32.1, "scale": "balance", "read_on": "2026-02-20", "total_mass_g": 428.6
    });
    let club: trade::sheet::ReferenceClub = serde_json::from_value(old).expect("an old reference club");
    let shown = club.shown();
    assert_eq!((shown.len(), shown[0].swing_weight_points, shown[0].scale.as_str()), (1, 32.1, "balance"));
    assert_eq!(shown[0].read_on, Some(jiff::civil::date(2026, 2, 20)));
    let written = serde_json::to_value(&club).expect("written");
    let names: Vec<&str> = written.as_object().expect("an object").keys().map(String::as_str).collect();
    assert_eq!(names.len(), 5, "{names:?}");
}
