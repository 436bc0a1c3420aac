//! Weight classes and the tray.

use super::weighed;
use desk::weight_class::{Classes, mean_and_sd, sort};
use rstest::rstest;
use trade::model::PartKind;
use trade::part::Part;
use words::check::InWords;

fn parts(masses_g: &[f64]) -> Vec<Part> {
    let one = |(i, m): (usize, &f64)| weighed(PartKind::Head, "SISKIN", &format!("S7-{i:02}"), Some("7"), *m);
    masses_g.iter().enumerate().map(one).collect()
}

fn sizes(masses_g: &[f64], classes: Classes) -> Vec<usize> {
    sort(&parts(masses_g), classes, 10).unwrap().classes.iter().map(|c| c.parts.len()).collect()
}

#[test]
fn classes_of_a_width_begin_at_its_multiples_and_a_mass_on_a_limit_belongs_above() {
    let masses = [265.0, 264.9, 266.9, 263.0, 264.0, 268.1];
    let sorting = sort(&parts(&masses), Classes::WidthG(1.0), 10).unwrap();
    let shown: Vec<(&str, f64, usize)> =
        sorting.classes.iter().map(|c| (c.name.as_str(), c.from_g, c.parts.len())).collect();
    assert_eq!(
        shown,
        [("A", 263.0, 1), ("B", 264.0, 2), ("C", 265.0, 1), ("D", 266.0, 1), ("E", 267.0, 0), ("F", 268.0, 1)]
    );
    // Tenths are no binary fractions: each of these lies on the lower limit of its own class.
    assert_eq!(sizes(&[0.3, 0.6, 0.7, 1.1], Classes::WidthG(0.1)), [1, 0, 0, 1, 1, 0, 0, 0, 1]);
}

#[test]
fn a_count_of_classes_takes_in_the_heaviest() {
    assert_eq!(sizes(&[260.0, 262.0, 264.0, 266.0, 268.0], Classes::Count(4)), [1, 1, 1, 2]);
    assert_eq!(sizes(&[260.0, 260.0, 260.0], Classes::Count(3)), [3, 0, 0], "alike parts are one class");
    assert_eq!(sizes(&[], Classes::Count(3)), Vec::<usize>::new());
}

#[test]
fn every_part_has_one_place_in_the_tray_and_the_lightest_lies_first() {
    let masses: Vec<f64> = (0..47).map(|i| 260.0 + f64::from(i * 37 % 47) * 0.2).collect();
    let sorting = sort(&parts(&masses), Classes::WidthG(2.0), 6).unwrap();
    let mut seen = std::collections::BTreeSet::new();
    let mut last = (0, 0, 0.0);
    for part in sorting.classes.iter().flat_map(|c| &c.parts) {
        assert!(seen.insert(part.code.clone()) && part.column <= 6 && part.row <= sorting.tray_rows);
        assert!((part.row, part.column) > (last.0, last.1) && part.mass_g >= last.2, "{part:?} after {last:?}");
        last = (part.row, part.column, part.mass_g);
    }
    assert_eq!((seen.len(), sorting.count), (47, 47));
    for class in sorting.classes.iter().filter(|c| !c.parts.is_empty()) {
        assert_eq!(class.parts[0].column, 1, "a class begins a row");
    }
}

#[test]
fn mean_and_scatter_of_a_list_worked_by_hand() {
    // Deviations −2, −1, 0, 1, 2 about 266: squares sum to 10, over 4.
    let (mean, sd) = mean_and_sd([264.0, 265.0, 266.0, 267.0, 268.0].into_iter());
    assert_eq!(mean, 266.0);
    assert!((sd - 2.5_f64.sqrt()).abs() < 1e-12);
    assert_eq!(mean_and_sd(std::iter::empty()), (0.0, 0.0));
    assert_eq!(mean_and_sd(std::iter::once(5.0)), (5.0, 0.0));
}

#[rstest]
#[case(Classes::WidthG(0.0), 10, "width_g is 0 g")]
#[case(Classes::WidthG(-1.0), 10, "width_g is −1 g")]
#[case(Classes::WidthG(f64::NAN), 10, "width_g is NaN")]
#[case(Classes::WidthG(0.1), 10, "classes")]
#[case(Classes::Count(0), 10, "0 classes")]
#[case(Classes::Count(1000), 10, "1000 classes")]
#[case(Classes::Count(3), 0, "0 places")]
fn what_makes_no_sorting_is_refused(#[case] classes: Classes, #[case] columns: usize, #[case] words: &str) {
    let refused = sort(&parts(&[250.0, 270.0]), classes, columns).unwrap_err().in_words();
    assert!(refused.contains(words), "{refused}");
}

#[test]
fn what_is_not_weighed_is_named() {
    let mut some = parts(&[265.0, 266.0]);
    some.push(Part::new("S7-NEW", PartKind::Head, "SISKIN"));
    let sorting = sort(&some, Classes::Count(2), 10).unwrap();
    assert_eq!((sorting.count, sorting.not_weighed), (2, vec!["S7-NEW".to_owned()]));
}

/// NumAcc4 of the NIST StRD: 10,000,000.2, then 500 times 10,000,000.1 and 10,000,000.3; certified mean 10,000,000.2 and standard
/// deviation 0.1 (from memory). The naive sum of squares loses all digits of the deviation.
#[test]
fn a_small_scatter_of_large_figures_keeps_its_digits() {
    let figures =
        std::iter::once(10_000_000.2).chain((0..1000).map(|i| if i % 2 == 0 { 10_000_000.1 } else { 10_000_000.3 }));
    let (mean, sd) = mean_and_sd(figures);
    assert!((mean - 10_000_000.2).abs() < 1e-7, "{mean}");
    assert!((sd - 0.1).abs() < 1e-7, "{sd}");
}
