//! Goal: the plain assignment routine is optimal for any shape, with pairs that are not allowed, and says what is wrong
//! with bad costs. Method: all assignments tried on small tables; optima of larger seeded tables from scipy.
//!
//! The larger optima: `python3 crates/matching/peers/linear.py` (scipy 1.17.1, `linear_sum_assignment`).

use matching::{MatchError, assign};
use proptest::prelude::*;
use words::check::InWords;

/// Rows served and least cost, by trying all.
fn tried(costs: &[Vec<f64>], row: usize, used: &mut Vec<bool>) -> (usize, f64) {
    if row == costs.len() {
        return (0, 0.0);
    }
    let mut best = tried(costs, row + 1, used);
    for column in 0..used.len() {
        if !used[column] && costs[row][column] < f64::INFINITY {
            used[column] = true;
            let (served, cost) = tried(costs, row + 1, used);
            used[column] = false;
            let (served, cost) = (served + 1, cost + costs[row][column]);
            if served > best.0 || served == best.0 && cost < best.1 {
                best = (served, cost);
            }
        }
    }
    best
}

fn value(costs: &[Vec<f64>]) -> (usize, f64) {
    let got = assign(costs).expect("valid costs");
    let mut columns: Vec<usize> = got.iter().flatten().copied().collect();
    let served = columns.len();
    columns.sort_unstable();
    columns.dedup();
    assert_eq!(columns.len(), served, "a column was given twice");
    (served, got.iter().enumerate().filter_map(|(r, c)| c.map(|c| costs[r][c])).sum())
}

fn table() -> impl Strategy<Value = Vec<Vec<f64>>> {
    (0..=5_usize, 0..=6_usize).prop_flat_map(|(rows, columns)| {
        let entry = prop_oneof![1 => Just(f64::INFINITY), 3 => (-20..20).prop_map(|x| f64::from(x) / 4.0)];
        prop::collection::vec(prop::collection::vec(entry, columns), rows)
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 600, ..ProptestConfig::default() })]

    #[test]
    fn least_sum_of_all_assignments(costs in table()) {
        let columns = costs.first().map_or(0, Vec::len);
        prop_assert_eq!(value(&costs), tried(&costs, 0, &mut vec![false; columns]));
    }
}

/// Linear congruential costs, the same as in the script that computes the optima; rows × columns, up to `most`.
fn seeded(seed: u64, rows: usize, columns: usize, most: u64) -> Vec<Vec<f64>> {
    let mut s = seed;
    let mut next = || {
        s = (1_103_515_245 * s + 12345) % (1 << 31);
        ((s >> 16) % most) as f64
    };
    (0..rows).map(|_| (0..columns).map(|_| next()).collect()).collect()
}

#[test]
fn val_seeded_tables_against_scipy() {
    for (seed, rows, columns, most, optimum) in OPTIMA {
        let (served, sum) = value(&seeded(seed, rows, columns, most));
        assert_eq!((served, sum), (rows.min(columns), optimum), "seed {seed}, {rows} × {columns}");
    }
}

/// Seed, rows, columns, costs below, optimum.
const OPTIMA: [(u64, usize, usize, u64, f64); 8] = [
    (1, 8, 100, 1000, 88.0),
    (2, 100, 100, 100, 93.0),
    (3, 100, 100, 1000, 1485.0),
    (4, 200, 200, 100, 76.0),
    (5, 60, 400, 10000, 1551.0),
    (6, 120, 70, 500, 350.0),
    (7, 300, 300, 100, 34.0),
    (8, 400, 400, 100, 17.0),
];

#[test]
fn bad_costs_are_refused_by_name() {
    let ragged = assign(&[vec![1.0, 2.0], vec![1.0]]).expect_err("ragged");
    assert_eq!(ragged, MatchError::CostRow { row: 1, got: 1, expected: 2 });
    let nan = assign(&[vec![1.0, 2.0], vec![1.0, f64::NAN]]).expect_err("not a number");
    assert!(matches!(nan, MatchError::CostValue { row: 1, column: 1, .. }));
    let told = assign(&[[f64::NEG_INFINITY]]).expect_err("minus infinity").in_words();
    assert!(told.starts_with("the cost of row 1, column 1 is −inf"), "{told}");
    assert_eq!(assign::<Vec<f64>>(&[]).expect("nothing to do"), []);
    assert_eq!(assign(&[vec![], vec![]]).expect("no columns"), [None, None]);
}
