//! The grammar of the short sheet.

use super::{SetRule, explained, irons, numbers, read_with, refused, w};
use proptest::prelude::*;
use rstest::rstest;
use trade::kind::{Facing, LengthTo, SoftSide};
use words::check::InWords;

const ALL: &[&str] = &["SISKIN", "WHINCHAT", "FIELDFARE", "DOTTEREL"];

/// The line that every builder writes, field by field against the chart of the Siskin (37 in, 62°, D2 for the 7).
#[test]
fn the_usual_line() {
    let clubs = irons("5–PW, +1/2, 2 up, D3, 2 wraps").unwrap();
    assert_eq!(numbers(&clubs), "5 6 7 8 9 P");
    let seven = &clubs[2];
    assert!((seven.length_mm - 37.5 * 25.4).abs() < 1e-9);
    assert_eq!(seven.length_to, LengthTo::Cap);
    assert_eq!((seven.lie_deg, seven.loft_deg, seven.swing_weight_points), (64.0, 31.0, 33.0));
    assert_eq!((seven.wraps.base, seven.wraps.full, seven.wraps.lower_hand), (1, 2, 0));
    assert_eq!((seven.head_model.as_str(), seven.shaft_model.as_str()), ("SISKIN", "TRAMONTANA-P"));
    assert_eq!(seven.ferrule_model.as_deref(), Some("FERRULE-370"));
}

#[rstest]
#[case("D3, 2 up; +1/2\n5 – PW 2 wraps")]
#[case("5-PW\r\n+1/2\r\n2 up\r\nD3\r\n2 wraps")]
#[case("  5 to p +0.5 in 2° upright d3 2 wraps")]
#[case("D3; 5-P; 1/2 over, lie +2, 2 WRAPS")]
#[case("5, 6, 7, 8, 9, P, +12.7 mm, 2 up, D3,0, 2 wraps")]
#[case("5,6,7,8-9,PW +½ 2 up D3 2 wraps")]
fn the_same_in_other_words(#[case] short: &str) {
    let usual = irons("5–PW, +1/2, 2 up, D3, 2 wraps").unwrap();
    let same = irons(short).unwrap();
    assert_eq!(numbers(&same), numbers(&usual));
    for (a, b) in same.iter().zip(&usual) {
        assert!((a.length_mm - b.length_mm).abs() < 1e-9, "{} {}", a.length_mm, b.length_mm);
        assert_eq!((a.lie_deg, a.swing_weight_points, a.wraps), (b.lie_deg, b.swing_weight_points, b.wraps));
    }
}

#[test]
fn groups_have_their_own_words() {
    let clubs = irons("2 up, 1 wrap; 5-9 D2; P-G D4, 1 flat, 2 wraps + 1 lower hand").unwrap();
    let said: Vec<_> =
        clubs.iter().map(|c| (c.number.as_str(), c.swing_weight_points, c.lie_deg, c.wraps.full)).collect();
    assert_eq!(said[0], ("5", 32.0, 63.0, 1));
    assert_eq!(said[4], ("9", 32.0, 65.0, 1));
    assert_eq!(said[5], ("P", 34.0, 62.5, 2));
    assert_eq!(clubs[6].wraps.lower_hand, 1);
    assert_eq!(clubs[0].wraps.lower_hand, 0);
}

#[test]
fn all_goes_back_to_every_club() {
    let clubs = irons("5-9 D2; P D4; all, 2 wraps, ±0.5").unwrap();
    assert!(clubs.iter().all(|c| c.wraps.full == 2 && c.tolerances.swing_weight_points == 0.5));
}

#[test]
fn the_rest_of_the_words() {
    let short = "4-5, loft 20, lie 62.5, 93.3 cm to the shaft end, grip down, shaft up, soft side heel, 300 cpm +4 a club, \
                 total 428 g +7 a club, ±0.2, ±1 mm, ±0.4°, ±3 cpm";
    let clubs = irons(short).unwrap();
    let c = &clubs[1];
    assert_eq!((c.loft_deg, c.lie_deg, c.length_mm, c.length_to), (20.0, 62.5, 933.0, LengthTo::ShaftEnd));
    assert_eq!((c.grip_graphics, c.shaft_graphics), (Some(Facing::Down), Some(Facing::Up)));
    assert_eq!((c.soft_side, clubs[0].cpm, c.cpm), (Some(SoftSide::Heel), Some(300.0), Some(304.0)));
    assert_eq!((clubs[0].total_mass_g, c.total_mass_g), (Some(428.0), Some(435.0)));
    let set = irons("4, adapter +1; 5, adapter at flat; 6").unwrap();
    let settings: Vec<_> = set.iter().map(|club| club.adapter_setting.as_deref()).collect();
    assert_eq!(settings, [Some("+1"), Some("flat"), None]);
    assert_eq!(irons("7, total 15.1 oz").unwrap()[0].total_mass_g.map(f64::round), Some(428.0));
    let t = c.tolerances;
    assert_eq!((t.swing_weight_points, t.length_mm, t.loft_deg, t.lie_deg, t.cpm), (0.2, 1.0, 0.4, 0.4, 3.0));
    let strong = irons("7, 1 strong; 8, 1.5 weak").unwrap();
    assert_eq!((strong[0].loft_deg, strong[1].loft_deg), (30.0, 36.5));
}

/// A chart to the cap and a sheet to the shaft's end differ by the grip's cap, 3 mm on the Olivine.
/// A child's club lies below the letters. By hand: (120 − 161) / 1.75 = −23.43 points.
#[test]
fn a_childs_club_is_asked_for_by_its_moment() {
    let clubs = irons("7, A-22").unwrap();
    assert_eq!(clubs[0].swing_weight_points, -22.0);
    let clubs = irons("7, 120 oz in").unwrap();
    assert!((clubs[0].swing_weight_points + 41.0 / 1.75).abs() < 1e-6, "{}", clubs[0].swing_weight_points);
    assert!(irons("7, 20 oz in").is_err(), "no club with a head and a shaft");
}

#[test]
fn a_length_to_the_other_end_is_turned_with_the_cap() {
    let clubs = irons("7, +1/4, to the shaft end").unwrap();
    assert!((clubs[0].length_mm - (37.25 * 25.4 - 3.0)).abs() < 1e-9);
    assert_eq!(clubs[0].length_to, LengthTo::ShaftEnd);
}

#[test]
fn numbers_across_models() {
    let read = |short| read_with(ALL, short, SetRule::AsWritten, None);
    assert_eq!(numbers(&read("9-54, driver, putter 34 1/2 in").unwrap()), "1 9 P G 50 54 PT");
    assert_eq!(numbers(&read("GW, 7-iron, 3w").unwrap()), "3 7 G");
    assert_eq!(numbers(&read("wedges D5").unwrap()), "50 54 58");
    let spread = read("P-50, D2, wedges +2 points").unwrap();
    assert_eq!(spread.iter().map(|c| c.swing_weight_points).collect::<Vec<_>>(), [32.0, 34.0, 34.0]);
}

#[test]
fn what_came_from_where() {
    let made = explained(&["SISKIN"], "2 up, 7-8, +1/2, D2 +0.5 a club, 2 wraps", SetRule::AsWritten, None);
    let lines: Vec<_> = made[1].origins.iter().map(|o| format!("{}: {}", o.field, w().told(&o.fact))).collect();
    insta::assert_snapshot!(lines.join("\n"), @r##"
    head_model: 8-iron of Siskin
    length_mm: chart 36 1/2 in and written “+1/2”, to the cap
    lie_deg: chart 62.5° and written “2 up”
    loft_deg: chart 35.0°
    wraps: written “2 wraps”, beside 1 of base
    swing_weight_points: written “D2 +0.5 a club”
    "##);
}

#[test]
fn refusals_name_the_word_and_its_place() {
    let texts = [
        "",
        "5-PW, 2 sideways, D3",
        "5-PW, +2",
        "5-PW, 1/2",
        "5-PW, D3, D4",
        "3-5",
        "P-5",
        "5-7, 7",
        "5-PW, D12",
        "5-PW, 12 up",
        "5-PW, +9 in",
        "5-PW, graphics down",
        "5-PW, D2,5-3",
        "7 1/2 up",
        "5-PW, 99 wraps",
        "5-PW, +0.5 a club",
        "5-PW, ±0",
        "D3",
    ];
    let said: Vec<_> = texts.iter().map(|t| format!("{t:?} -> {}", refused(t))).collect();
    insta::assert_snapshot!(said.join("\n"), @r##"
    "" -> the sheet does not say which clubs of SISKIN (4, 5, 6, 7, 8, 9, P and G). Write their numbers, for example 5-PW
    "5-PW, 2 sideways, D3" -> “2 sideways” at character 7: it is not a word of the short sheet. Write for example 5-PW, +1/2, 2 up, D3, 2 wraps
    "5-PW, +2" -> “+2” at character 7: it does not say whether it is length, loft or lie. Write for example +1/2 in, 1 strong or 2 up
    "5-PW, 1/2" -> “1/2” at character 7: a length needs its unit, a difference its sign, and both must be possible for a club. Write for example 36 3/4 in or +1/2
    "5-PW, D3, D4" -> “D4” at character 11: “D3” at character 7 already gives this for the same clubs. Write for example 5-9 D2; P-S D4
    "3-5" -> “3-5” at character 1: there is no 3 in SISKIN (4, 5, 6, 7, 8, 9, P and G). Write for example 5-PW
    "P-5" -> “P-5” at character 1: the range runs backwards. Write for example 5-PW
    "5-7, 7" -> “7” at character 6: the 7 is named before. Write for example 5-9 D2; P-S D4
    "5-PW, D12" -> “D12” at character 7: a swing weight has a letter from A to G and points from 0 to 9.9. Write for example D3 or D2.5
    "5-PW, 12 up" -> “12 up” at character 7: a head bends 6° at most. Write for example 2 up or lie 62
    "5-PW, +9 in" -> “+9 in” at character 7: no club is so much longer or shorter than its chart. Write for example +1/2 in
    "5-PW, graphics down" -> “graphics down” at character 7: it does not say whether grip or shaft is meant. Write for example grip down or shaft up
    "5-PW, D2,5-3" -> “D2,5-3” at character 7: a comma between two digits is a decimal comma; put a space after a comma that separates. Write for example 5-PW, +1/2, 2 up, D3, 2 wraps
    "7 1/2 up" -> “7 1/2 up” at character 1: a head bends 6° at most. Write for example 2 up or lie 62
    "5-PW, 99 wraps" -> “99 wraps” at character 7: a grip goes over 12 layers at most. Write for example 2 wraps + 1 lower hand
    "5-PW, +0.5 a club" -> “+0.5 a club” at character 7: there is no fitted club whose swing weight it could start from. Write for example D2 +0.5 a club
    "5-PW, ±0" -> “±0” at character 7: a tolerance must be more than 0 and no more than 30. Write for example ±0.3
    "D3" -> the sheet does not say which clubs of SISKIN (4, 5, 6, 7, 8, 9, P and G). Write their numbers, for example 5-PW
    "##);
}

#[test]
fn a_number_of_two_models_is_not_guessed() {
    let mut text = String::new();
    for short in ["1", "5w", "3w-5", "putter, wood", "hybrids"] {
        match read_with(&["SISKIN", "SISKIN-L", "FIELDFARE"], short, SetRule::AsWritten, None) {
            Ok(clubs) => text.push_str(&format!("{short} -> {}\n", numbers(&clubs))),
            Err(e) => text.push_str(&format!("{short} -> {}\n", e.in_words())),
        }
    }
    let twice = read_with(&["SISKIN", "SISKIN-L"], "5-P", SetRule::AsWritten, None).unwrap_err();
    text.push_str(&twice.in_words());
    insta::assert_snapshot!(text, @r##"
    1 -> 1
    5w -> “5w” at character 1: there is no 5 in FIELDFARE (1 and 3), SISKIN (4, 5, 6, 7, 8, 9, P and G) and SISKIN-L (4, 5, 6, 7, 8, 9, P and G). Write for example 5-PW
    3w-5 -> “3w-5” at character 1: its ends are clubs of different kinds. Write for example 3w-5w, 5-PW
    putter, wood -> “putter” at character 1: the set has no putter model, but FIELDFARE (1 and 3), SISKIN (4, 5, 6, 7, 8, 9, P and G) and SISKIN-L (4, 5, 6, 7, 8, 9, P and G). Write for example 5-PW
    hybrids -> “hybrids” at character 1: the set has no hybrid model, but FIELDFARE (1 and 3), SISKIN (4, 5, 6, 7, 8, 9, P and G) and SISKIN-L (4, 5, 6, 7, 8, 9, P and G). Write for example 5-PW
    “5-P” at character 1: more than one club of the set has this number: it is in SISKIN (4, 5, 6, 7, 8, 9, P and G) and SISKIN-L (4, 5, 6, 7, 8, 9, P and G). Write for example 5w or 5i
    "##);
}

/// Pieces that builders write, and pieces that nobody does.
fn soup() -> impl Strategy<Value = String> {
    let known = prop::sample::select(vec![
        "5-PW",
        "4",
        "P",
        "+1/2",
        "-1/4 in",
        "2 up",
        "D3",
        "2 wraps",
        "1 lower hand",
        "std",
        "all",
        ",",
        ";",
        "\n",
        "D2,5",
        "wedges",
        "+2 points",
        "±0.3",
        "300 cpm",
        "a club",
        "grip down",
        "soft side",
        "36 3/4 in",
        "–",
        "½",
        "°",
        "7,8",
    ]);
    prop::collection::vec(prop_oneof![3 => known.prop_map(str::to_owned), 1 => any::<String>()], 0..12)
        .prop_map(|words| words.join(" "))
}

proptest! {
    #[test]
    fn any_text_is_read_or_refused(text in soup()) {
        for rule in SetRule::ALL {
            match read_with(ALL, &text, *rule, None) {
                Ok(clubs) => prop_assert!(!clubs.is_empty()),
                Err(e) => prop_assert!(!e.in_words().is_empty()),
            }
        }
    }

    /// Figures printed as a builder would write them come back as they were.
    #[test]
    fn what_is_printed_is_read(
        sixteenths in -32i32..=32, lie in -40i32..=40, loft in -20i32..=20, points in 200i32..=399,
        full in 0u8..=4, lower in 0u8..=3, from in 0usize..8, count in 1usize..=8,
    ) {
        let all = ["4", "5", "6", "7", "8", "9", "P", "G"];
        let to = (from + count - 1).min(7);
        let letter = ['A', 'B', 'C', 'D'][usize::try_from(points / 100).unwrap()];
        let swing_weight = format!("{letter}{}", f64::from(points % 100) / 10.0);
        let word = |tenths: i32, more: &str, less: &str| {
            format!("{} {}", f64::from(tenths.abs()) / 10.0, if tenths < 0 { less } else { more })
        };
        let short = format!(
            "{}-{}, {}{}/16 in, {}, {}, {swing_weight}, {full} wraps + {lower} lower hand",
            all[from], all[to], if sixteenths < 0 { "-" } else { "+" }, sixteenths.abs(),
            word(lie, "up", "flat"), word(loft, "weak", "strong"),
        );
        let chart = irons("4-G").unwrap();
        let clubs = irons(&short).unwrap();
        prop_assert_eq!(clubs.len(), to - from + 1);
        for (club, chart) in clubs.iter().zip(&chart[from..]) {
            prop_assert!((club.length_mm - chart.length_mm - f64::from(sixteenths) * 25.4 / 16.0).abs() < 1e-9);
            prop_assert!((club.lie_deg - chart.lie_deg - f64::from(lie) / 10.0).abs() < 1e-9);
            prop_assert!((club.loft_deg - chart.loft_deg - f64::from(loft) / 10.0).abs() < 1e-9);
            prop_assert!((club.swing_weight_points - f64::from(points) / 10.0).abs() < 1e-6);
            prop_assert_eq!((club.wraps.base, club.wraps.full, club.wraps.lower_hand), (1, full, lower));
        }
    }
}
