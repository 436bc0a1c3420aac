//! Entries that look like a slip are asked about, sound ones are not.

use super::{gram_scale, w, weight};
use desk::scale_health::{LooksLike, question};
use trade::check_weight::CheckWeight;
use trade::gauge::{Gauge, Measures, Standard, parse_value};
use trade::shop::Shop;

fn asked(typed: &str) -> Option<desk::scale_health::Doubtful> {
    let all = [weight("w200", 200.0), weight("w500", 500.0)];
    let value = parse_value(Measures::Mass, typed).expect("it can be read");
    question(&gram_scale(), &all[0], &all, typed, value)
}

#[test]
fn ounces_typed_as_grams_are_asked_about() {
    // 200 g are 7.0548 oz.
    let found = asked("7.05").expect("a question");
    assert_eq!(found.looks_like, LooksLike::OtherUnit { typed: "7.05 oz".into() });
    assert_eq!(w().tell(&found.said), "7.1 g is far from the 200.0 g of 200 g weight, but 7.05 oz would be right");
    assert_eq!(asked("7.055 oz"), None, "with its unit it is right");
    // Grams typed with oz, and a decimal comma.
    assert_eq!(asked("200 oz").expect("a question").looks_like, LooksLike::OtherUnit { typed: "200 g".into() });
    assert_eq!(asked("7,05").expect("a question").looks_like, LooksLike::OtherUnit { typed: "7,05 oz".into() });
    assert_eq!(asked("0.2").expect("a question").looks_like, LooksLike::OtherUnit { typed: "0.2 kg".into() });
}

#[test]
fn another_weight_of_the_shop_is_asked_about() {
    let found = asked("500.1").expect("a question");
    assert_eq!(found.looks_like, LooksLike::OtherStandard { standard: "w500".into(), name: "500 g weight".into() });
    assert!(w().tell(&found.next).contains("Was 500 g weight on it?"), "{:?}", found.next);
}

#[test]
fn a_drifted_scale_is_not_asked_about_but_a_wild_figure_is() {
    for typed in ["200", "200.3", "200.6", "201.5"] {
        assert_eq!(asked(typed), None, "{typed}");
    }
    let found = asked("212").expect("a question");
    assert_eq!(found.looks_like, LooksLike::FarOff);
    assert!(w().tell(&found.said).contains("12.0 g away"), "{:?}", found.said);
}

#[test]
fn what_no_weight_can_be_is_refused_with_its_range() {
    for typed in ["-3", "0", "", "NaN", "inf", "two", "1e9", "200 gr", "0.01"] {
        let refused = parse_value(Measures::Mass, typed).expect_err(typed);
        assert_eq!(refused.field(), Some("reading"), "{typed}: {refused}");
    }
    assert!(parse_value(Measures::SwingWeight, "12").is_err(), "points or a moment?");
    assert!((parse_value(Measures::SwingWeight, "C9.5").expect("read") - 29.5).abs() < 1e-9);
    assert!((parse_value(Measures::Length, "37 in").expect("read") - 939.8).abs() < 1e-9);
    assert!((parse_value(Measures::Frequency, "255").expect("read") - 255.0).abs() < 1e-9);
    assert!(parse_value(Measures::Angle, "61.5°").is_ok());
}

type Change = dyn Fn(&mut Shop);

#[test]
fn the_shop_refuses_gauges_and_weights_that_could_not_be() {
    let with = |change: &Change| {
        let mut shop = Shop {
            check_weight: Some(CheckWeight {
                name: "club".into(),
                swing_weight_points: 31.0,
                sd_points: 0.05,
                mass_g: 410.0,
            }),
            standards: vec![weight("w200", 200.0)],
            gauges: vec![Gauge {
                key: "cpm".into(),
                name: "frequency gauge".into(),
                measures: Measures::Frequency,
                display_step: 0.1,
                noise_sd: 0.3,
                offset_sd: 0.0,
            }],
            ..Shop::default()
        };
        change(&mut shop);
        shop.check()
    };
    assert_eq!(with(&|_| {}), Ok(()));
    let broken: [(&str, &Change); 8] = [
        ("no such scale", &|s| s.standards[0].scale = "none".into()),
        ("negative", &|s| s.standards[0].value = -1.0),
        ("no number", &|s| s.standards[0].sd = f64::NAN),
        ("no tolerance", &|s| s.standards[0].tolerance = Some(0.0)),
        ("no name", &|s| s.standards[0].name = " ".into()),
        ("twice", &|s| s.standards.push(weight("w200", 100.0))),
        ("the key of the shop's own", &|s| s.standards[0].key = "check_weight".into()),
        ("the key of a scale", &|s| s.gauges[0].key = "mass".into()),
    ];
    for (what, change) in broken {
        assert!(with(change).is_err(), "{what}");
    }
    let shop = Shop { standards: vec![weight("w200", 200.0)], ..Shop::default() };
    assert_eq!(shop.instruments().len(), 2);
    assert!(shop.standards_of("balance").is_empty());
    assert_eq!(shop.standards_of("mass").iter().map(|s| s.key.as_str()).collect::<Vec<_>>(), ["w200"]);
}

/// Without a stated tolerance: three times what offset, reading and standard leave open, no less than two steps.
#[test]
fn a_tolerance_that_is_not_stated_follows_from_the_scale() {
    let standard = Standard { tolerance: None, ..weight("w200", 200.0) };
    // √(0.05² + 0.1²/12 + 0.05² + 0.01²) = 0.0770 (by hand).
    assert!((standard.tolerance_on(&gram_scale()) - 0.2309).abs() < 5e-4);
    let coarse = Gauge { display_step: 0.5, noise_sd: 0.001, offset_sd: 0.0, ..gram_scale() };
    assert!((standard.tolerance_on(&coarse) - 1.0).abs() < 1e-9);
}
