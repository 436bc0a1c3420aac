//! The rules of a set and what one fitted club gives to the others.

use super::{ReferenceClub, SetRule, explained, numbers, read_with, reference, set_of, shop_of, w};
use trade::kind::LengthTo;
use trade::sheet::SheetClub;
use words::check::InWords;

fn fitted() -> ReferenceClub {
    ReferenceClub {
        length_mm: Some(37.5 * 25.4),
        length_to: Some(LengthTo::Cap),
        swing_weight_points: Some(32.4),
        lie_deg: Some(63.0),
        loft_deg: Some(30.0),
        ..reference("7")
    }
}

fn irons(short: &str, rule: SetRule, fitted: Option<&ReferenceClub>) -> Result<Vec<SheetClub>, String> {
    read_with(&["SISKIN"], short, rule, fitted).map_err(InWords::in_words)
}

/// The fitted 7 is half an inch over its chart of 37 in, 1 up, 1 strong and reads D2.4.
#[test]
fn one_fitted_club_yields_a_set() {
    let clubs = irons("4-P", SetRule::ConstantSwingWeight, Some(&fitted())).unwrap();
    assert_eq!(numbers(&clubs), "4 5 6 7 8 9 P");
    let four = &clubs[0];
    assert!((four.length_mm - 39.0 * 25.4).abs() < 1e-9);
    assert_eq!((four.lie_deg, four.loft_deg, four.swing_weight_points), (61.5, 20.0, 32.4));
    assert!(clubs.iter().all(|c| c.swing_weight_points == 32.4));
    // What is written wins.
    let written = irons("4-P, std, D3", SetRule::ConstantSwingWeight, Some(&fitted())).unwrap();
    assert!((written[0].length_mm - 38.5 * 25.4).abs() < 1e-9);
    assert_eq!(written[0].swing_weight_points, 33.0);
}

/// Length to the shaft's end against a chart to the cap: the fitted club's own cap of 4 mm lies between.
#[test]
fn the_fitted_length_is_turned_with_its_own_cap() {
    let to_end = ReferenceClub {
        length_mm: Some(37.5 * 25.4 - 4.0),
        length_to: Some(LengthTo::ShaftEnd),
        cap_mm: Some(4.0),
        ..fitted()
    };
    let clubs = irons("4-P", SetRule::ConstantSwingWeight, Some(&to_end)).unwrap();
    assert!((clubs[3].length_mm - 37.5 * 25.4).abs() < 1e-9);
}

#[test]
fn steps_count_from_the_first_club_or_the_fitted_one() {
    let points = |clubs: Vec<SheetClub>| clubs.iter().map(|c| c.swing_weight_points).collect::<Vec<_>>();
    assert_eq!(
        points(irons("5-8, D1 +0.5 a club", SetRule::SteppedSwingWeight, None).unwrap()),
        [31.0, 31.5, 32.0, 32.5]
    );
    assert_eq!(
        points(irons("5-8, +0.5 a club", SetRule::SteppedSwingWeight, Some(&fitted())).unwrap()),
        [31.4, 31.9, 32.4, 32.9]
    );
    assert_eq!(
        points(irons("5-6 D1 +0.5 a club; 8-9 D3 -1/2 a club", SetRule::AsWritten, None).unwrap()),
        [31.0, 31.5, 33.0, 32.5]
    );
}

/// Equal inertia, reckoned here by other means: the whole club as thin slices, with the head that the rule says, has one
/// inertia about the butt for all clubs, and the balance it gives is the one on the sheet. The shorter the club, the more
/// its swing weight falls short of the longer one's: the head that keeps inertia is heavier than the one that keeps swing weight
/// (US patent 3,698,239), so swing weight rises toward the short irons.
#[test]
fn equal_inertia_is_equal() {
    let clubs = irons("4-P, 1 wrap", SetRule::EqualInertia, Some(&fitted())).unwrap();
    assert_eq!(clubs[3].swing_weight_points, 32.4);
    assert!(clubs.windows(2).all(|w| w[0].swing_weight_points < w[1].swing_weight_points));
    let inertia: Vec<f64> =
        clubs.iter().map(|c| super::demo::slices(c).inertia_at_swing_weight(c.swing_weight_points)).collect();
    for i in &inertia {
        // A tenth of a point is 5 g·in of head and grip: about 1 kg·cm² of 2,700.
        assert!((i - inertia[3]).abs() < 3.0, "{inertia:?}");
    }
    // Independent cross-check of the size of the step: half an inch shorter at equal inertia asks 8.06 to 8.6 g of head
    // instead of 6.9 to 7.2 g at equal swing weight (derived fixtures), so the step is about 1.2 to 1.4 g of head, 0.5 to
    // 0.65 point.
    for w in clubs.windows(2) {
        let step = w[1].swing_weight_points - w[0].swing_weight_points;
        assert!((0.3..=0.8).contains(&step), "{step}");
    }
}

#[test]
fn the_rules_refuse_what_contradicts_them() {
    use SetRule::{ConstantSwingWeight, EqualInertia, SteppedSwingWeight};
    let no_end = ReferenceClub { length_to: None, ..fitted() };
    let other_end = ReferenceClub { length_to: Some(LengthTo::ShaftEnd), ..fitted() };
    let unread = ReferenceClub { swing_weight_points: None, ..fitted() };
    let unknown = reference("2");
    let said: Vec<String> = [
        irons("5-9 D2; P D4", ConstantSwingWeight, None),
        irons("5-9, D2 +0.5 a club", ConstantSwingWeight, None),
        irons("5-9, D2", SteppedSwingWeight, None),
        irons("5-9, D2", EqualInertia, Some(&fitted())),
        irons("5-9", EqualInertia, None),
        irons("5-9", EqualInertia, Some(&unread)),
        irons("5-9", ConstantSwingWeight, Some(&no_end)),
        irons("5-9", ConstantSwingWeight, Some(&other_end)),
        irons("5-9", ConstantSwingWeight, Some(&unknown)),
        read_with(&["WHINCHAT"], "50-58 D3; 58 D4", ConstantSwingWeight, None).map_err(InWords::in_words),
    ]
    .into_iter()
    .map(|r| r.unwrap_err())
    .collect();
    insta::assert_snapshot!(said.join("\n"), @r##"
    “D4” at character 11: the rule of the set is one swing weight, and D2 is written for other clubs. Write for example D3, wedges +2 points
    “D2 +0.5 a club” at character 6: the rule of the set is one swing weight, and this steps; choose the stepped rule or write one swing weight. Write for example D3
    the rule of the set is a stepped swing weight, but no step is written. Write the step, for example D2 +0.5 a club
    “D2” at character 6: the rule of the set is equal inertia, which gives each club its swing weight; leave this out or choose another rule. Write for example 5-PW, +1/2, 2 up
    equal inertia needs the fitted club with its swing weight. Give the number and the swing weight (or mass and balance point) of the fitted club
    equal inertia needs the fitted club with its swing weight. Give the number and the swing weight (or mass and balance point) of the fitted club
    the length of the fitted club does not say what it is measured to. Write whether it ends at the cap or at the shaft's end, or write the set's length
    the fitted club and the chart are measured to different ends, and the fitted club's cap is not known. Give the thickness of its grip's cap or its grip model
    the fitted club is a 2, which no head model of the set has. Choose its number, or other head models than SISKIN
    “58” at character 11: the 58 is named before. Write for example 5-9 D2; P-S D4
    "##);
}

#[test]
fn the_expansion_says_what_the_rule_did() {
    let made = explained(&["SISKIN"], "6-7", SetRule::EqualInertia, Some(&fitted()));
    let lines: Vec<_> = made[0].origins.iter().map(|o| format!("{}: {}", o.field, w().told(&o.fact))).collect();
    insta::assert_snapshot!(lines.join("\n"), @r##"
    head_model: 6-iron of Siskin
    length_mm: chart 37 1/2 in and +1/2 in as the fitted 7-iron, to the cap
    lie_deg: chart 61.5° and +1.0° as the fitted 7-iron
    loft_deg: chart 27.0° and −1.0° as the fitted 7-iron
    swing_weight_points: D1.7 from equal inertia, 2730 kg·cm² about the butt as the fitted 7-iron: head and tip weight about 258.1 g
    "##);
}

#[test]
fn the_models_of_a_set_cross_the_api_as_json() {
    let models = set_of(&["SISKIN"]);
    let json = serde_json::to_string(&models).unwrap();
    assert_eq!(serde_json::from_str::<desk::short_sheet::SetModels>(&json).unwrap(), models);
    let e = serde_json::from_str::<desk::short_sheet::SetModels>(r#"{"heads":[],"shafts":[],"grips":[],"shaft":"x"}"#);
    assert!(e.unwrap_err().to_string().contains("unknown field `shaft`"));
    assert_eq!(shop_of::shop().adhesive.as_deref(), Some("DOLERITE"));
}
