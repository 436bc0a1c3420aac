//! How well a length, an angle and a frequency are known in the record: by the shop's own gauge, its repeats, or what is usual.

use crate::set::Set;
use bench::learned::Learned;
use bench::record::{Beside, Line, record};
use trade::gauge::{Gauge, Measures};
use trade::reading::What;

fn line(set: &Set, what: What) -> Line {
    let beside = Beside { batches: &[], let_pass: &[], passed: &[] };
    let record = record(&set.assembly().believe(&set.readings).unwrap(), &set.readings, &beside).unwrap();
    record.clubs[0].lines.iter().find(|line| line.what == what && !line.within_set).unwrap().clone()
}

fn read_deg(set: &mut Set, value: f64, minute: i64) {
    set.read(1, "finish", What::Lie, value, minute);
    set.readings.last_mut().unwrap().display_step = 0.0;
}

#[test]
fn an_angle_is_known_as_well_as_its_gauge_and_its_repeats() {
    let mut set = Set::planned();
    set.shop.gauges.retain(|gauge| gauge.measures != Measures::Angle);
    let asked = set.job.clubs[0].target.lie_deg;
    read_deg(&mut set, asked + 0.4, 1);
    // Never studied: a quarter of a degree, by hand 1.96·√(0.1² + 0.08²) = 0.251.
    let usual = line(&set, What::Lie);
    assert!((usual.band.unwrap() - 0.251).abs() < 1e-3 && usual.read_on.as_ref().unwrap().gauge.is_none(), "{usual:?}");
    // The shop's own machine, as its study found it: 1.96·√(0.4² + 0.3²) = 0.98.
    set.shop.gauges.push(Gauge {
        key: "bending".into(),
        name: "bending machine".into(),
        measures: Measures::Angle,
        display_step: 0.0,
        noise_sd: 0.4,
        offset_sd: 0.3,
    });
    let own = line(&set, What::Lie);
    assert!((own.band.unwrap() - 0.98).abs() < 1e-3, "{own:?}");
    assert_eq!(own.read_on.as_ref().unwrap().gauge.as_deref(), Some("bending machine"));
    // Read four times: the mean of the readings, with half of the noise: 1.96·√(0.2² + 0.3²) = 0.7067.
    for (minute, value) in [(2, 0.6), (3, 0.2), (4, 0.8)] {
        read_deg(&mut set, asked + value, minute);
    }
    let mean = line(&set, What::Lie);
    assert!(
        (mean.built.unwrap() - asked - 0.5).abs() < 1e-9 && mean.read_on.as_ref().unwrap().readings == 4,
        "{mean:?}"
    );
    assert!((mean.band.unwrap() - 0.7067).abs() < 1e-3, "{mean:?}");
}

/// A machine that scatters 0.3° where 0.1° is usual: its repeats teach it, job by job; a shop whose machine keeps what is usual
/// stays there. Readings by a formula with the right mean square about their own mean, not drawn.
#[test]
fn repeats_teach_the_noise_of_a_gauge() {
    let after = |scatter: f64| {
        let mut learned = Learned::default();
        for job in 0..8 {
            let mut set = Set::planned();
            set.shop.gauges.retain(|gauge| gauge.measures != Measures::Angle);
            set.learned = learned.clone();
            set.job.number = job + 1;
            for slot in 1..=8 {
                // Two readings ±s/√2 about their mean: their variance is s².
                for (minute, side) in [(1, 1.0), (2, -1.0)] {
                    let value = 61.0 + side * scatter / 2f64.sqrt();
                    set.read(slot, "finish", What::Lie, value, 10 * slot + minute);
                    set.readings.last_mut().unwrap().display_step = 0.0;
                }
            }
            learned = learned.after(&set.assembly().believe(&set.readings).unwrap()).unwrap();
        }
        learned.scatter_sd("noise:angle", 0.1)
    };
    let (wide, usual) = (after(0.3), after(0.1));
    assert!((0.25..0.31).contains(&wide), "{wide}");
    assert!((usual - 0.1).abs() < 0.005, "{usual}");
}
