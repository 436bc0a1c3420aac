//! Sheets of the invented shop, each expanded from how a builder would write it.

use super::models::models;
use crate::kind::{ClubKind, Hand, LengthTo};
use crate::model::Library;
use crate::sheet::{ExpandContext, KindChoice, ReferenceClub, SetModels, SetRule, Sheet, expand};
use jiff::ToSpan;
use jiff::civil::Date;
use quantity::INCH_MM;

/// What one sheet is written from.
struct Written {
    player: &'static str,
    due_in_days: i64,
    hand: Hand,
    note: &'static str,
    rule: SetRule,
    short: &'static str,
    heads: &'static [&'static str],
    shafts: &'static [(Option<ClubKind>, &'static str)],
    grips: &'static [(Option<ClubKind>, &'static str)],
    ferrule: Option<&'static str>,
    reference: Option<ReferenceClub>,
}

/// The sheets: a set of eight irons with its fitted 7-iron, a driver, two wedges, a putter, a left-hander's irons.
#[must_use]
pub fn sheets(today: Date) -> Vec<Sheet> {
    let library: Library = models().into_iter().collect();
    written(today).into_iter().filter_map(|w| sheet(w, &library, today)).collect()
}

fn sheet(w: Written, library: &Library, today: Date) -> Option<Sheet> {
    let shop = super::shop();
    let choices = |list: &[(Option<ClubKind>, &str)]| {
        list.iter().map(|(club_kind, model)| KindChoice { club_kind: *club_kind, model: (*model).into() }).collect()
    };
    let models = SetModels {
        heads: w.heads.iter().map(|h| (*h).into()).collect(),
        shafts: choices(w.shafts),
        grips: choices(w.grips),
        ferrules: w.ferrule.map(|f| KindChoice { club_kind: None, model: f.into() }).into_iter().collect(),
        adhesive: None,
        tape: None,
    };
    let ctx = ExpandContext::new(library, &models, &shop);
    // The texts are ours and tests hold that they read; a sheet that did not would be missing, not wrong.
    let clubs = expand(w.short, &ctx, w.rule, w.reference.as_ref()).ok()?;
    Some(Sheet {
        player: w.player.into(),
        due: today.saturating_add(w.due_in_days.days()),
        hand: w.hand,
        note: w.note.into(),
        rule: w.rule,
        written: w.short.into(),
        reference: w.reference,
        clubs,
    })
}

fn written(today: Date) -> Vec<Written> {
    let fitted_seven = ReferenceClub {
        number: "7".into(),
        length_mm: Some(37.25 * INCH_MM),
        length_to: Some(LengthTo::Cap),
        balance_points: Some(32.1),
        total_mass_g: Some(428.6),
        balance_point_mm: Some(720.4),
        loft_deg: Some(31.0),
        lie_deg: Some(63.0),
        cpm: Some(312.0),
        clamp_mm: Some(127.0),
        scale: "balance".into(),
        grip_model: Some("OLIVINE".into()),
        cap_mm: Some(3.0),
        coupler_g: None,
        read_on: Some(today.saturating_sub(4.days())),
    };
    vec![
        Written {
            player: "Odell Farrowby",
            due_in_days: 21,
            hand: Hand::Right,
            note: "Likes the label out of sight",
            rule: SetRule::ConstantBalance,
            short: "4-G, +1/4, 1 up, D2, 1 wrap, logo down, ±0.3",
            heads: &["SISKIN"],
            shafts: &[(None, "TRAMONTANA-P")],
            grips: &[(None, "OLIVINE")],
            ferrule: Some("FERRULE-370"),
            reference: Some(fitted_seven),
        },
        Written {
            player: "Imre Tansley-Brook",
            due_in_days: 9,
            hand: Hand::Right,
            note: "",
            rule: SetRule::AsWritten,
            short: "driver, -1/4, D2, shaft up",
            heads: &["FIELDFARE"],
            shafts: &[(None, "LEVANTER-W")],
            grips: &[(None, "OLIVINE")],
            ferrule: Some("FERRULE-335"),
            reference: None,
        },
        Written {
            player: "Wystan Pellow",
            due_in_days: 12,
            hand: Hand::Right,
            note: "",
            rule: SetRule::AsWritten,
            short: "1 flat, 2 wraps + 1 lower hand; 54 D4; 58 D5",
            heads: &["WHINCHAT"],
            shafts: &[(None, "LIBECCIO-T")],
            grips: &[(None, "FELDSPAR")],
            ferrule: Some("FERRULE-355"),
            reference: None,
        },
        Written {
            player: "Oriel Quennell",
            due_in_days: 5,
            hand: Hand::Right,
            note: "",
            rule: SetRule::AsWritten,
            short: "putter, 34 1/2 in, 1 flat, ±0.5",
            heads: &["DOTTEREL"],
            shafts: &[(None, "GREGALE-P")],
            grips: &[(None, "GNEISS")],
            ferrule: None,
            reference: None,
        },
        Written {
            player: "Tamsin Averholt",
            due_in_days: 30,
            hand: Hand::Left,
            note: "Short fingers: no extra tape",
            rule: SetRule::SteppedBalance,
            short: "5-P, -1/4, 1 flat, C9.5 +0.1 a club, no wraps",
            heads: &["SISKIN-L"],
            shafts: &[(None, "TRAMONTANA-P")],
            grips: &[(None, "FELDSPAR")],
            ferrule: Some("FERRULE-370"),
            reference: None,
        },
    ]
}
