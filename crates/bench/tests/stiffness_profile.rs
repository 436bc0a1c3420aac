//! A shaft that was read at several clamp lengths: its club is forecast by its own line. Readings and clubs are those of a truth that
//! `flex.rs` integrates by itself.

use crate::flex::{Draw, TYPICAL, Truth, dry, expected, planned, true_cpm};
use crate::set::{Set, time};
use bench::flex::StiffnessFrom;
use bench::stiffness_profile::{ShaftStiffness, shaft_stiffness};
use bench::trim_to_cpm::{Slope, SlopeAsked, set_cpm};
use trade::model::PartKind;
use trade::part::Part;
use trade::plan::PlannedPart;
use trade::reading::What;
use trade::stiffness_profile::StiffnessReading;

fn planned_shaft(set: &mut Set, slot: i64) -> &mut PlannedPart {
    let plan = set.job.clubs[slot as usize - 1].plan.as_mut().unwrap();
    plan.parts.iter_mut().find(|part| part.kind == PartKind::Shaft).unwrap()
}

/// The raw shaft of a club, clamped at so many lengths, as a meter with a noise of 0.3 cpm reads it.
fn readings(
    set: &mut Set,
    slot: i64,
    truth: &Truth,
    piece: f64,
    lengths: usize,
    draw: &mut Draw,
) -> Vec<StiffnessReading> {
    let held_before = set.shop.clamp.held_mm;
    let weight_g = set.shop.clamp.test_weight_g.unwrap();
    let read = |i: usize| {
        let held_mm = held_before + (600.0 - held_before) * i as f64 / (lengths.max(2) - 1) as f64;
        set.shop.clamp.held_mm = held_mm;
        let cpm = true_cpm(set, slot, truth, piece, None) + 0.3 * draw.bell();
        StiffnessReading {
            held_mm,
            weight_g,
            weight_beyond_tip_mm: 0.0,
            cpm: Some((cpm * 10.0).round() / 10.0),
            deflection_mm: None,
        }
    };
    let found = (0..lengths).map(read).collect();
    set.shop.clamp.held_mm = held_before;
    found
}

/// Reads the shaft of a club and puts what it told into the plan, as the shop does.
fn profiled(set: &mut Set, slot: i64, readings: &[StiffnessReading]) -> ShaftStiffness {
    let planned = planned_shaft(set, slot).clone();
    let part = set.parts.iter().find(|part| part.id == planned.part).unwrap().clone();
    let number = set.job.clubs[slot as usize - 1].target.number.clone();
    let part = Part { mass_g: Some(planned.mass_g), balance_point_mm: None, number: Some(number), ..part };
    let model = set.library.shaft(&part.model).unwrap();
    let found = shaft_stiffness(&set.shop, &set.learned, model, &part, readings).unwrap();
    planned_shaft(set, slot).profile = Some(found.kept("Ada", time(0)));
    found
}

fn rests_on(set: &Set) -> Option<StiffnessFrom> {
    let asked = SlopeAsked { slope: Slope::Step, step_cpm: 4.3, level_cpm: None };
    let found = set_cpm(&set.assembly().believe(&[]).unwrap(), asked).unwrap();
    found.clubs.iter().find(|club| club.slot == 3).unwrap().rests_on
}

#[test]
fn a_shaft_with_a_soft_spot_is_forecast_by_its_own_line() {
    let mut set = planned();
    let (on, truth) = (dry(&set), Truth { level: -0.10, tilt: 0.08, gives_mm: 7.0, spot: -0.15, ..TYPICAL });
    let before = expected(&set.assembly().believe(&[]).unwrap(), &set, 3, &on);
    let beside = expected(&set.assembly().believe(&[]).unwrap(), &set, 6, &on);
    let read = readings(&mut set, 3, &truth, 0.0, 7, &mut Draw(2));
    let found = profiled(&mut set, 3, &read);
    assert!(found.rests_on == StiffnessFrom::Tube && found.band_percent < 0.5 * found.model_band_percent, "{found:?}");
    assert!(found.readings.iter().all(|reading| !reading.doubted), "{found:?}");
    assert!((2..=8).contains(&found.enough_readings), "{}", found.enough_readings);
    let believed = set.assembly().believe(&[]).unwrap();
    assert_eq!(rests_on(&set), Some(StiffnessFrom::Profile));
    let after = expected(&believed, &set, 3, &on);
    let true_three = true_cpm(&set, 3, &truth, 0.0, Some(&on));
    assert!(after.1 < before.1 / 4.0, "{before:?} {after:?}");
    assert!((after.0 - true_three).abs() < after.1, "{after:?} against {true_three}");
    // It is of the same model as its neighbours, in the same clamp.
    let beside_after = expected(&believed, &set, 6, &on);
    let true_six = true_cpm(&set, 6, &truth, 0.0, Some(&on));
    assert!(
        beside_after.1 < 0.6 * beside.1 && (beside_after.0 - true_six).abs() < beside_after.1,
        "{beside_after:?} {true_six}"
    );
    // A shaft that was cut since is forecast by its model.
    planned_shaft(&mut set, 3).tip_lost_mm = Some(12.7);
    assert_eq!(rests_on(&set), Some(StiffnessFrom::Tube));
}

/// Shops drawn from what a new shop does not know, each with one shaft read at seven lengths: the finished reading of its club falls
/// in its band. 60 clubs of 60 shops: two and a half standard errors of 95 % are 7 %, of a root mean square 0.23.
#[test]
fn bands_of_measured_shafts_hold() {
    let mut draw = Draw(23);
    let (mut inside, mut z2, mut widths, clubs) = (0u32, 0.0, 0.0, 60);
    let mut set = planned();
    let on = dry(&set);
    for _ in 0..clubs {
        let truth = Truth {
            level: 0.15 * draw.bell(),
            tilt: 0.20 * draw.bell(),
            gives_mm: 4.0 + 4.0 * draw.bell(),
            head_mm: 3.0 * draw.bell(),
            spot: 0.08 * draw.bell(),
            ..TYPICAL
        };
        let piece = 0.02 * draw.bell();
        let read = readings(&mut set, 3, &truth, piece, 7, &mut draw);
        profiled(&mut set, 3, &read);
        let (value, band) = expected(&set.assembly().believe(&[]).unwrap(), &set, 3, &on);
        let cut = Truth { gives_mm: truth.gives_mm + 0.8 * draw.bell(), ..truth };
        let seen = true_cpm(&set, 3, &cut, piece, Some(&on)) + 0.3 * draw.bell();
        inside += u32::from((seen - value).abs() <= band);
        z2 += ((seen - value) / (band / 1.96)).powi(2);
        widths += band;
    }
    let (share, scale) = (f64::from(inside) / f64::from(clubs), (z2 / f64::from(clubs)).sqrt());
    println!("inside {share:.3}, root mean square of z {scale:.3}, band ± {:.1} cpm", widths / f64::from(clubs));
    assert!(share >= 0.88 && (0.75..1.23).contains(&scale), "{share} {scale}");
}

#[test]
fn a_profile_and_the_clubs_read_before_are_one_belief() {
    // The shaft's own readings and then the club: the second reading is told from what the first say, and stays believed.
    let mut set = planned();
    let (on, truth) = (dry(&set), Truth { level: 0.12, spot: 0.10, gives_mm: 2.0, ..TYPICAL });
    let read = readings(&mut set, 3, &truth, 0.0, 6, &mut Draw(7));
    profiled(&mut set, 3, &read);
    let cpm = true_cpm(&set, 3, &truth, 0.0, Some(&on));
    let good = set.read(3, "cpm", What::Cpm, (cpm * 10.0).round() / 10.0, 1);
    assert!(!set.assembly().believe(&set.readings).unwrap().is_doubted(&good));
    // Clamped an inch short, it is: without its profile nobody could tell, the band of a new shop is far wider.
    set.readings.clear();
    let slow = true_cpm(&set, 3, &Truth { gives_mm: truth.gives_mm + 25.4, ..truth }, 0.0, Some(&on));
    let wrong = set.read(3, "cpm", What::Cpm, (slow * 10.0).round() / 10.0, 2);
    assert!(set.assembly().believe(&set.readings).unwrap().is_doubted(&wrong));
    planned_shaft(&mut set, 3).profile = None;
    assert!(!set.assembly().believe(&set.readings).unwrap().is_doubted(&wrong));
}
