//! Goal: shares of sets and their limits are those of hand arithmetic and of published tables.

use estimation::share::{Count, paired, share};

/// By hand: two clusters of eight, all and none: p = 0.5, sum of squares 2·4² = 32, variance 32·2/16² = 0.25
/// against 0.25/16 of independent cases: sixteen times as much.
#[test]
fn clusters_that_agree_within_widen_the_limits() {
    let apart = share(&[Count { yes: 8, of: 8 }, Count { yes: 0, of: 8 }]).expect("cases");
    assert!((apart.percent - 50.0).abs() < 1e-9 && (apart.design_effect - 16.0).abs() < 1e-9);
    let mixed = share(&[Count { yes: 4, of: 8 }, Count { yes: 4, of: 8 }]).expect("cases");
    assert!((mixed.design_effect - 1.0).abs() < 1e-9);
    assert!(apart.limits_percent[0] < mixed.limits_percent[0]);
    assert!(share(&[]).is_none());
}

/// Wilson's limits of 16 of 16, computed with `statsmodels.stats.proportion.proportion_confint(16, 16,
/// method="wilson")`: 0.8064 to 1.
#[test]
fn nothing_but_successes_still_leaves_a_limit() {
    let all = share(&[Count { yes: 8, of: 8 }, Count { yes: 8, of: 8 }]).expect("cases");
    assert!((all.limits_percent[0] - 80.64).abs() < 0.01, "{all:?}");
    assert!((all.limits_percent[1] - 100.0).abs() < 1e-9);
}

/// Clusters of one size make it the paired t interval. By hand: differences 1, 0, 3, 0 of eight clubs; mean 1, variance 2,
/// t = 3.182 for three degrees of freedom at 95 % (printed tables of Student's t): 1 ± 3.182 · √(2 / 4).
#[test]
fn two_shares_of_the_same_sets_are_compared_set_by_set() {
    let of = |yes| Count { yes, of: 8 };
    let sets = [(of(8), of(7)), (of(6), of(6)), (of(7), of(4)), (of(5), of(5))];
    let more = paired(&sets).expect("four sets");
    assert!((more.percent - 12.5).abs() < 1e-9, "{more:?}");
    let in_clubs = more.limits_percent.map(|percent| percent * 8.0 / 100.0);
    assert!((in_clubs[0] + 1.250_3).abs() < 1e-3 && (in_clubs[1] - 3.250_3).abs() < 1e-3, "{in_clubs:?}");
    assert_eq!(more.clusters, 4);
    assert!(paired(&sets[..1]).is_none() && paired(&[]).is_none());
}
