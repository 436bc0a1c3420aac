//! A mass held against its model: what is asked, and what is kept without a word. The Siskin irons of the invented shop:
//! 258.0 g the 6, 265.5 g the 7, 273.0 g the 8; the Redstart's own masses lie elsewhere.

use super::library;
use desk::weigh_in::{Judged, Looks, judge, spread};
use rstest::rstest;
use trade::error::TradeError;
use trade::model::PartKind;
use trade::part::Part;

fn head(number: &str, mass_g: f64) -> Part {
    Part { number: Some(number.into()), mass_g: Some(mass_g), ..Part::new("H", PartKind::Head, "SISKIN") }
}

fn judged(part: &Part, weighed: &[Part]) -> Judged {
    judge(&library(), part, weighed).unwrap()
}

/// Ten heads of the 7 that the maker made 2 g too heavy, as a lot may be.
fn heavy_lot() -> Vec<Part> {
    [267.1, 268.3, 266.8, 267.9, 267.4, 266.5, 268.0, 267.2, 267.7, 267.0].iter().map(|g| head("7", *g)).collect()
}

fn w() -> words::Words {
    words::Words::english(quantity::Units::default())
}

#[rstest]
#[case::as_the_maker_says(265.5, None)]
#[case::two_grams_off(267.5, None)]
#[case::four_grams_off(261.5, None)]
#[case::the_next_number(272.6, Some(Looks::Neighbour))]
#[case::the_number_before(258.3, Some(Looks::Neighbour))]
#[case::two_numbers_on(280.4, Some(Looks::OtherNumber))]
#[case::far_from_all(345.0, Some(Looks::Slip))]
fn heads_without_others_weighed(#[case] mass_g: f64, #[case] instead: Option<Looks>) {
    let judged = judged(&head("7", mass_g), &[]);
    assert_eq!(judged.instead().map(|l| l.looks), instead, "{judged:?}");
    assert_eq!(judged.questioned, instead.is_some());
    let sum: f64 = judged.likely.iter().map(|l| l.probability).sum();
    assert!(sum <= 1.0 + 1e-12 && sum > 0.9, "{judged:?}");
}

#[test]
fn the_words_name_what_it_looks_like() {
    let next = judged(&head("7", 272.6), &[]);
    assert_eq!(w().tell(&next.finding), "272.6 g: it looks like the next number, 8: 8-iron heads are 7.5 g heavier");
    assert_eq!(next.next.map(|next| w().tell(&next)).as_deref(), Some("Look at the number on its sole"));
    assert_eq!(next.likely[0].number.as_deref(), Some("8"));
    let slip = judged(&head("7", 345.0), &[]);
    assert_eq!(w().tell(&slip.finding), "345.0 g is 79.5 g more than the 7 should weigh, 265.5 g");
}

/// The same 4.5 g too much: of a first head nobody can say; after ten of its lot it stands out.
#[test]
fn what_was_weighed_before_sharpens_the_question() {
    let part = head("7", 263.0);
    assert!(!judged(&part, &[]).questioned);
    let sharp = judged(&part, &heavy_lot());
    let spread = sharp.spread.clone().unwrap();
    // By hand: the mean of the ten is 267.39; with the maker's 265.5 counted 2.25 times, (2.25·265.5 + 10·267.39)/12.25.
    assert!((spread.mean_g.unwrap() - 267.39).abs() < 1e-9);
    assert!((spread.next_g - 267.042_857).abs() < 1e-6, "{spread:?}");
    let as_said = |j: &Judged| j.likely.iter().find(|l| l.looks == Looks::AsSaid).unwrap().probability;
    assert!(as_said(&sharp) < as_said(&judged(&part, &[])), "{sharp:?}");
}

#[test]
fn a_film_left_on_is_asked_of_a_head_that_is_a_little_too_heavy() {
    // Tight lot at 265.5: 3.6 g more is too much for it and too little for the 8.
    let tight: Vec<Part> = (0..60).map(|i| head("7", 265.5 + 0.1 * f64::from(i % 5 - 2))).collect();
    let film = judged(&head("7", 268.4), &tight);
    assert_eq!(film.instead().map(|l| l.looks), Some(Looks::Wrapped), "{film:?}");
    let words = w().tell(&film.finding);
    assert!(words.ends_with("2.9 g too heavy: a film or a label may still be on it"), "{words}");
    // As much too light is no film.
    let light = judged(&head("7", 262.6), &tight);
    assert_ne!(light.instead().map(|l| l.looks), Some(Looks::Wrapped), "{light:?}");
}

#[test]
fn another_model_is_named() {
    let library = library();
    let grip = |mass_g| Part { mass_g: Some(mass_g), ..Part::new("G", PartKind::Grip, "OLIVINE") };
    let odd = judge(&library, &grip(82.3), &[]).unwrap();
    assert_eq!(odd.instead().map(|l| (l.looks, l.model.as_str())), Some((Looks::OtherModel, "GNEISS")), "{odd:?}");
    let words = w().tell(&odd.finding);
    assert!(words.contains("it looks like another model: the "), "{words}");
    assert!(!judge(&library, &grip(51.0), &[]).unwrap().questioned);
}

#[test]
fn a_head_that_cannot_be_bent_is_told_when_it_comes_in() {
    let nominal = library().head_number("SISKIN", "7").map(|(_, n)| (n.loft_deg, n.lie_deg)).unwrap();
    let with = |loft, lie| Part { loft_deg: loft, lie_deg: lie, ..head("7", 265.5) };
    assert!(judged(&with(Some(nominal.0 + 1.9), Some(nominal.1 - 2.0)), &[]).bend.is_empty());
    let bent = judged(&with(None, Some(nominal.1 - 4.5)), &[]);
    assert_eq!(bent.bend.len(), 1, "{bent:?}");
    let words = w().tell(&bent.bend[0]);
    assert!(words.starts_with("its lie is ") && words.contains("4.5° off the model's"), "{words}");
    assert!(!bent.questioned, "it weighs what it should");
}

#[test]
fn what_no_part_can_be_is_refused_by_name() {
    let library = library();
    let refused = |part: &Part| judge(&library, part, &[]).unwrap_err();
    assert!(matches!(refused(&head("7", 26.5)), TradeError::Impossible { .. }));
    assert!(matches!(refused(&head("7", f64::NAN)), TradeError::Impossible { .. }));
    assert!(matches!(refused(&head("7", -1.0)), TradeError::Impossible { .. }));
    assert!(matches!(refused(&head("77", 265.5)), TradeError::Unknown { .. }));
    let nowhere = Part { model: "NOWHERE".into(), ..head("7", 265.5) };
    assert!(matches!(refused(&nowhere), TradeError::Unknown { .. }));
    // Without a mass there is nothing to ask.
    let ordered = Part { mass_g: None, ..head("7", 0.0) };
    assert!(!judge(&library, &ordered, &[]).unwrap().questioned);
}

#[test]
fn parts_of_other_numbers_and_boxes_are_not_counted_among_the_weighed() {
    let mut parts = heavy_lot();
    parts.push(head("8", 273.1));
    parts.push(Part { count: Some(20), mass_g: Some(265.0), ..head("7", 0.0) });
    let seven = spread(&library(), "SISKIN", Some("7"), &parts).unwrap();
    assert_eq!(seven.weighed_g.len(), 10);
    assert!(spread(&library(), "SISKIN", None, &parts).is_none(), "a head has a number");
    assert!(spread(&library(), "TAPE-2S", None, &parts).is_none(), "a roll has no mass to be held against");
}
