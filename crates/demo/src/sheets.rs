//! Sheets of the invented shop, each expanded from how a builder would write it.

use super::models::models;
use desk::short_sheet::{ExpandContext, KindChoice, SetModels, expand};
use jiff::ToSpan;
use jiff::civil::Date;
use quantity::INCH_MM;
use trade::kind::{ClubKind, Hand, LengthTo};
use trade::model::Library;
use trade::sheet::{ReferenceClub, SetRule, Sheet};

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

/// A job that was finished weeks ago.
#[derive(Debug, Clone, PartialEq)]
pub struct PastJob {
    /// The first day at the bench, a Monday.
    pub begun: Date,
    /// What its player asked for; the job was made from it.
    pub sheet: Sheet,
}

/// The finished jobs, the earliest first: two sets of irons and a wedge.
#[must_use]
pub fn past(today: Date) -> Vec<PastJob> {
    let library: Library = models().into_iter().collect();
    let monday = today.saturating_sub(i64::from(today.weekday().to_monday_zero_offset()).days());
    let weeks_ago = |weeks: i64| monday.saturating_sub(weeks.weeks());
    let jobs =
        [(weeks_ago(10), past_irons(weeks_ago(10))), (weeks_ago(7), past_taper_irons()), (weeks_ago(5), past_wedge())];
    let made = jobs.into_iter().filter_map(|(begun, w)| Some(PastJob { begun, sheet: sheet(w, &library, begun)? }));
    made.collect()
}

fn past_irons(begun: Date) -> Written {
    Written {
        player: "Hesper Wainfleet",
        due_in_days: 11,
        hand: Hand::Right,
        note: "Plays in gloves all year",
        rule: SetRule::ConstantSwingWeight,
        short: "4-G, +1/4, 1 flat, D2, 1 wrap, ±0.3",
        heads: &["SISKIN"],
        shafts: &[(None, "TRAMONTANA-P")],
        grips: &[(None, "OLIVINE")],
        ferrule: Some("FERRULE-370"),
        reference: Some(ReferenceClub {
            number: "6".into(),
            length_mm: Some(37.75 * INCH_MM),
            length_to: Some(LengthTo::Cap),
            swing_weight_points: Some(31.9),
            total_mass_g: Some(421.8),
            balance_point_mm: None,
            loft_deg: Some(27.0),
            lie_deg: Some(60.5),
            cpm: Some(305.0),
            clamp_mm: Some(127.0),
            scale: "balance".into(),
            grip_model: Some("OLIVINE".into()),
            cap_mm: Some(3.0),
            coupler_g: None,
            read_on: Some(begun),
            swing_weight_sd_points: None,
            also_read: Vec::new(),
        }),
    }
}

fn past_taper_irons() -> Written {
    Written {
        player: "Corin Maddoxley",
        due_in_days: 14,
        hand: Hand::Right,
        note: "",
        rule: SetRule::ConstantSwingWeight,
        short: "5-P, +1/4, 1 up, D2, 1 wrap, ±0.3",
        heads: &["REDSTART"],
        shafts: &[(None, "LIBECCIO-T")],
        grips: &[(None, "OLIVINE")],
        ferrule: Some("FERRULE-355"),
        reference: None,
    }
}

fn past_wedge() -> Written {
    Written {
        player: "Sabeth Orrin",
        due_in_days: 8,
        hand: Hand::Right,
        note: "Only the one, to go with her own set",
        rule: SetRule::AsWritten,
        short: "58 D5, 1 flat, 1 wrap",
        heads: &["WHINCHAT"],
        shafts: &[(None, "LIBECCIO-T")],
        grips: &[(None, "FELDSPAR")],
        ferrule: Some("FERRULE-355"),
        reference: None,
    }
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
        customer: None,
        quote: Vec::new(),
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
        swing_weight_points: Some(32.1),
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
        swing_weight_sd_points: None,
        also_read: Vec::new(),
    };
    vec![
        Written {
            player: "Odell Farrowby",
            due_in_days: 21,
            hand: Hand::Right,
            note: "Likes the label out of sight",
            rule: SetRule::ConstantSwingWeight,
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
            rule: SetRule::SteppedSwingWeight,
            short: "5-P, -1/4, 1 flat, C9.5 +0.1 a club, no wraps",
            heads: &["SISKIN-L"],
            shafts: &[(None, "TRAMONTANA-P")],
            grips: &[(None, "FELDSPAR")],
            ferrule: Some("FERRULE-370"),
            reference: None,
        },
    ]
}
