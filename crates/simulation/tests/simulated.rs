//! Goal: the simulation is the same for the same seed, its builders come out in the order that the trade would expect,
//! a shop without scatter misses nothing, and the belief's bands hold within what so few clubs can tell. Method: small
//! runs with fixed seeds; shares with their cluster limits.

use simulation::hands::{Skill, by_hand, ceiling};
use simulation::job::SimulatedJob;
use simulation::shop::SimulatedShop;
use simulation::tally::{Tally, share};
use simulation::{Outcome, Reference, Setting, Settings, SimulationError, Trouble, World, report, run_group};

fn groups(settings: &Settings) -> Vec<Outcome> {
    (0..settings.groups()).flat_map(|group| run_group(settings, group, &mut || ()).expect("a group")).collect()
}

/// Shops as the belief expects them, with the target known in true points.
fn as_believed() -> Settings {
    Settings { reference: Reference::Perfect, world: World::AsBelieved, ..Settings::default() }
}

fn shops(count: u64, settings: &Settings, build: impl Fn(&SimulatedShop, &SimulatedJob) -> Tally) -> Tally {
    let mut all = Tally::default();
    for id in 1..=count {
        let shop = SimulatedShop::draw(settings, id);
        all.join(&build(&shop, &SimulatedJob::draw(settings, &shop, 0)));
    }
    all
}

#[test]
fn one_seed_is_one_report_and_groups_do_not_know_of_each_other() {
    let settings = Settings { jobs: 10, only: "new_plain".into(), ..Settings::default() };
    let mut built = 0;
    let once = run_group(&settings, 3, &mut || built += 1).expect("a group");
    assert_eq!(built, settings.steps_a_group());
    // Another group in between changes nothing.
    let hands = Settings { only: "rules".into(), ..settings.clone() };
    run_group(&hands, 2, &mut || ()).expect("a group");
    assert_eq!(once, run_group(&settings, 3, &mut || ()).expect("a group"));
    let other = Settings { seed: 2, ..settings };
    assert_ne!(once, run_group(&other, 3, &mut || ()).expect("a group"));
}

#[test]
fn builders_come_in_the_order_of_their_skill() {
    let settings = as_believed();
    let of = |skill| shops(200, &settings, |shop, job| by_hand(&settings, shop, job, skill)).within_03;
    let (rules, grips, corrects) = (of(Skill::Rules).yes, of(Skill::Grips).yes, of(Skill::Corrects).yes);
    let best = shops(200, &settings, |shop, job| ceiling(&settings, shop, job, 1)).within_03;
    // 1,600 clubs each: five points in a hundred are more than chance.
    assert!(rules + 80 < grips && grips + 80 < corrects && corrects + 80 < best.yes, "{rules} {grips} {corrects}");
    assert!(best.yes > 1550, "{best:?}");
}

#[test]
fn every_builder_is_held_against_a_skilled_hand_in_the_same_jobs() {
    let of = |key: &str| {
        let settings = Settings { jobs: 40, only: key.into(), ..as_believed() };
        report(&settings, &groups(&settings)).lines.swap_remove(0)
    };
    let (itself, rules) = (of("corrects"), of("rules"));
    let none = itself.against_hand.expect("forty shops");
    assert_eq!((none.percent, none.limits_percent, none.clusters), (0.0, [0.0, 0.0], 40));
    let worse = rules.against_hand.expect("forty shops");
    let apart = rules.within_03.expect("clubs").percent - itself.within_03.expect("clubs").percent;
    assert!((worse.percent - apart).abs() < 1e-9 && worse.limits_percent[1] < 0.0, "{worse:?} {apart}");
}

#[test]
fn the_adhesive_of_an_awkward_shop_is_twice_or_half_as_heavy() {
    let joint_g = |troubles: &[Trouble]| {
        SimulatedShop::draw(&Settings { troubles: troubles.to_vec(), ..Settings::default() }, 7).joint_g
    };
    let usual = joint_g(&[]);
    assert!((joint_g(&[Trouble::HeavyAdhesive]) - 2.0 * usual).abs() < 1e-12);
    assert!((joint_g(&[Trouble::LightAdhesive]) - usual / 2.0).abs() < 1e-12);
}

#[test]
fn a_shop_without_scatter_misses_nothing() {
    let settings = Settings { scatter: 0.0, ..as_believed() };
    let best = shops(20, &settings, |shop, job| ceiling(&settings, shop, job, 1));
    assert_eq!((best.within_03.yes, best.within_03.of), (160, 160));
    assert!(best.error.rms() < 0.02, "a scale's last digit: {}", best.error.rms());
    let settings = Settings { jobs: 10, only: "new_four_3".into(), ..settings };
    let line = &report(&settings, &groups(&settings)).lines[0];
    let within = line.within_03.expect("clubs");
    assert!((within.percent - 100.0).abs() < 1e-9 && within.of == 80, "{within:?}");
}

#[test]
fn bands_hold_within_what_so_few_clubs_can_tell() {
    // One grip is measured, no longer two, as the offer says: with one cure reading 95.0 per cent of these 160 clubs come in, of
    // which the lower limit is 90.4; three readings bring the 92 that is asked below.
    let settings = Settings { jobs: 20, only: "new_joints_3".into(), ..as_believed() };
    let made = report(&settings, &groups(&settings));
    let line = made.lines.iter().find(|l| l.key == "new_joints_3").expect("its line");
    for band in &line.bands {
        assert!(band.held.limits_percent[1] >= 94.0, "{}: {:?}", band.stage, band.held);
        assert!(band.half_width_points > 0.05 && band.half_width_points < 2.5);
    }
    let widths: Vec<f64> = line.bands.iter().map(|b| b.half_width_points).collect();
    assert!(widths.windows(2).all(|w| w[1] < w[0] + 0.02), "what is read only narrows: {widths:?}");
    assert!(line.within_03.expect("clubs").limits_percent[0] > 92.0, "{:?}", line.within_03);
}

#[test]
fn blunders_are_doubted_when_they_shift_a_reading_far() {
    let settings = Settings { jobs: 10, only: "new_joints_3".into(), blunders: 0.25, ..as_believed() };
    let line = &report(&settings, &groups(&settings)).lines[0];
    let all = line.blunders.iter().find(|b| b.kind == "all").expect("blunders");
    let large = all.large_found.expect("large ones");
    assert!(all.seeded >= 10 && large.of >= 5 && large.limits_percent[1] >= 95.0, "{all:?}");
}

#[test]
fn an_awkward_shop_is_awkward() {
    let with = |trouble| Settings { troubles: vec![trouble], ..as_believed() };
    let plain = SimulatedShop::draw(&as_believed(), 7);
    let heavy = SimulatedShop::draw(&with(Trouble::HeavyAdhesive), 7);
    assert!((heavy.joint_g - 2.0 * plain.joint_g).abs() < 1e-12 && (heavy.tape_share - plain.tape_share).abs() < 1e-12);
    let bay = SimulatedShop::draw(&with(Trouble::BayScale), 7);
    assert!((bay.bay_points.abs() - 0.2).abs() < 1e-12);
    let few = SimulatedJob::draw(&with(Trouble::FewGrips), &plain, 0);
    let loose = SimulatedShop::draw(&with(Trouble::LooseHeads), 7);
    assert!(
        (loose.scatter.head_offset_mm - 1.5).abs() < 1e-12
            && loose.scatter.head_offset_mm > 4.0 * plain.scatter.head_offset_mm
    );
    let many = SimulatedJob::draw(&as_believed(), &plain, 0);
    assert_eq!(many.parts.len() - few.parts.len(), 48);
    assert_eq!(Trouble::from_key("drift"), Some(Trouble::Drift));
    assert!(Trouble::ALL.into_iter().all(|t| Trouble::from_key(t.key()) == Some(t)));
}

/// The wide world lies off what the belief starts from and gives clubs another form; the reference is a reading with the
/// offset of its day, of which the part that is there every day is in today's readings too.
#[test]
fn a_fair_court_does_not_draw_from_the_priors() {
    let (wide, believed) = (Settings::default(), as_believed());
    let draw = |settings: &Settings| (1..=400).map(|id| SimulatedShop::draw(settings, id)).collect::<Vec<_>>();
    let (shops, usual) = (draw(&wide), draw(&believed));
    let mean =
        |of: &[SimulatedShop], pick: fn(&SimulatedShop) -> f64| of.iter().map(pick).sum::<f64>() / of.len() as f64;
    // The middle of 1.0 to 3.8 g, and of 1 to 3 g: by hand.
    assert!((mean(&shops, |s| s.joint_g) - 2.4).abs() < 0.15 && (mean(&usual, |s| s.joint_g) - 2.0).abs() < 0.1);
    let some = |of: &[SimulatedShop], pick: fn(&SimulatedShop) -> f64| of.iter().filter(|s| pick(s) > 0.0).count();
    assert!((90..=150).contains(&some(&shops, |s| s.above_tip_g)), "three in ten of 400");
    assert!(
        (160..=240).contains(&some(&shops, |s| s.tape_short_mm))
            && (160..=240).contains(&some(&shops, |s| s.stretch_mm))
    );
    assert_eq!(some(&usual, |s| s.above_tip_g + s.tape_short_mm + s.stretch_mm), 0);
    let (mut same, mut squares) = (0.0, [0.0; 2]);
    for shop in &shops {
        let job = SimulatedJob::draw(&wide, shop, 0);
        let (reference, today) = (job.reference_error_points, job.day.offset_points[0]);
        same += reference * today;
        squares[0] += reference * reference;
        squares[1] += today * today;
        assert!(
            SimulatedJob::draw(&Settings { reference: Reference::Perfect, ..wide.clone() }, shop, 0)
                .reference_error_points
                == 0.0
        );
    }
    // Correlation of two days 0.6, less for the noise of the reference's reading: 0.024/√(0.04 · 0.05) = 0.54 (by hand).
    let correlation = same / (squares[0] * squares[1]).sqrt();
    assert!((correlation - 0.54).abs() < 0.12, "{correlation}");
}

/// Hands whose figures are right to half a point, off by 0.25 point more and off by 0.5 more were simulated apart from this
/// code: with a check weight, glued as one batch, 87.4, 72.1 and 53.5 per cent. Of the mixture drawn here that is 76.0 (by
/// hand); the limits leave it to the clusters of 150 sets, and to shops that are not the same.
#[test]
fn a_hand_knows_its_own_shop() {
    let settings = as_believed();
    let of = |skill| shops(150, &settings, |shop, job| by_hand(&settings, shop, job, skill)).within_03;
    let (corrects, checked) = (of(Skill::Corrects), of(Skill::Checked));
    let percent = 100.0 * f64::from(checked.yes) / f64::from(checked.of);
    assert!((percent - 76.0).abs() < 8.0, "{percent}");
    assert!(checked.yes > corrects.yes, "where the target is true a check weight helps: {corrects:?} {checked:?}");
}

#[test]
fn settings_that_mean_nothing_are_refused() {
    for (what, settings) in [
        (Setting::Jobs, Settings { jobs: 0, ..Settings::default() }),
        (Setting::Blunders, Settings { blunders: f64::NAN, ..Settings::default() }),
        (Setting::Scatter, Settings { scatter: -1.0, ..Settings::default() }),
    ] {
        let refused = run_group(&settings, 0, &mut || ()).expect_err("nothing to simulate");
        assert!(matches!(&refused, SimulationError::Setting { what: named, .. } if *named == what), "{refused}");
    }
}

#[test]
fn a_share_of_many_clubs_is_narrow() {
    let settings = as_believed();
    let tallies: Vec<Tally> = (1..=100)
        .map(|n| shops(1, &Settings { seed: n, ..settings.clone() }, |s, j| ceiling(&settings, s, j, 1)))
        .collect();
    let found = share(&tallies.iter().map(|t| t.within_03).collect::<Vec<_>>()).expect("clubs");
    assert!(found.limits_percent[1] - found.limits_percent[0] < 4.0 && found.percent > 96.0, "{found:?}");
}

/// Work on clubs that nobody knows, drawn off what the belief starts from: the band holds as often as it says, within what so
/// few clubs can tell, and each reading makes more clubs right.
#[test]
fn bands_hold_for_clubs_from_elsewhere() {
    let settings = Settings { seed: 5, world: simulation::World::AsBelieved, ..Settings::default() };
    let tallies = simulation::kind::run_kind(&settings, "regrip", 0..120, &mut || ()).expect("regrips");
    let lines: Vec<_> = tallies
        .iter()
        .zip(simulation::kind::Depth::ALL)
        .map(|(tally, depth)| tally.line("regrip", depth, 120))
        .collect();
    for line in &lines {
        let held = line.held.expect("clubs");
        assert!(held.limits_percent[1] >= 94.0 && held.percent >= 89.0, "{line:?}");
    }
    let within = |i: usize| lines[i].within_03.expect("clubs").percent;
    assert!(within(2) > within(0) + 10.0, "{lines:?}");
    let again = simulation::kind::run_kind(&settings, "regrip", 0..120, &mut || ()).expect("regrips");
    assert_eq!(again[0].line("regrip", simulation::kind::Depth::Arrived, 120), lines[0], "the same seed");
    assert!(simulation::kind::run_kind(&settings, "polish", 0..1, &mut || ()).is_err());
}

/// Sets trimmed to a slope, in shops off the priors: advice brings more clubs onto it than the maker's chart, by more than the
/// limits of both shares, and its bands hold. Twenty shops tell shares to some eight in a hundred; the figures of `docs/simulation.md`
/// are of more.
#[test]
fn advised_trims_beat_the_chart_and_their_bands_hold() {
    let settings = simulation::Settings { known_after: 2, ..simulation::Settings::default() };
    let lines = simulation::frequency::lines(&simulation::frequency::run_cpm(&settings, 0..20, &mut || {}).unwrap());
    let of = |hand: &str, shop: &str| lines.iter().find(|l| l.hand == hand && l.shop == shop).unwrap();
    for shop in ["new", "known"] {
        let (chart, advised) = (of("the maker's chart", shop), of("advised", shop));
        let (low, high) = (advised.within.unwrap().limits_percent[0], chart.within.unwrap().limits_percent[1]);
        assert!(low > high, "{shop}: {advised:?} {chart:?}");
        let held = advised.band_held.unwrap();
        assert!(held.percent > 90.0 && held.limits_percent[1] >= 95.0, "{held:?}");
    }
}
