//! Whether the models of one club go together: hand, kind, bore and tip, blank, trim, ferrule, adapter, bend.

use crate::mass_model::{Ingredients, MassModel};
use crate::sheet_check::{Named, Severity, SheetProblem};
use quantity::decimal;
use trade::ferrule::ferrule_fits;
use trade::fit::tip_fits_bore;
use trade::head::{HeadModel, HeadNumber};
use trade::kind::ClubKind;
use trade::model::{Library, Model, PartKind};
use trade::part::Part;
use trade::shaft::{ShaftModel, TipShape};
use trade::sheet::Sheet;
use trade::shop::Shop;

/// A tip this much under the bore is loose: a 0.355 in tip in a 0.370 in bore is 0.38 mm under. The bond line is best at
/// 0.1 to 0.2 mm a side (an adhesives-industry guide, §3.4.3; lap-joint studies).
const LOOSE_MM: f64 = 0.3;

pub(super) fn check(
    sheet: &Sheet,
    club: &Named<'_>,
    library: &Library,
    shop: &Shop,
    stock: &[Part],
    found: &mut Vec<SheetProblem>,
) {
    let number = club.club.number.clone();
    let mut push = |severity, field: &str, words: String, next: String| {
        found.push(SheetProblem::new(severity, club.field(field), words, next).of(&number));
    };
    if let Some(head) = club.head {
        if head.hand != sheet.hand {
            push(
                Severity::Stop,
                "head_model",
                format!("{} is a {} head and the sheet is for a {} player", head.name, head.hand, sheet.hand),
                "Choose the model of the player's hand, or correct the hand of the sheet".into(),
            );
        }
        if head.club_kind != club.club.club_kind {
            push(
                Severity::Stop,
                "club_kind",
                format!("{} is of the kind {}, and the sheet says {}", head.name, head.club_kind, club.club.club_kind),
                format!("Write {}, or choose another head model", head.club_kind),
            );
        }
    }
    small_things(club, shop, &mut push);
    let (Some(head), Some(shaft)) = (club.head, club.shaft) else { return };
    bore_and_tip(club, head, shaft, library, &mut push);
    ferrule(club, shaft, library, &mut push);
    let Some(entry) = club.number else { return };
    let blank_there = blank(head, entry, shaft, &mut push);
    if !club.sound {
        return;
    }
    bend(club, head, entry, stock, &mut push);
    if blank_there {
        trim(club, entry, shaft, library, shop, &mut push);
    }
}

fn small_things(club: &Named<'_>, shop: &Shop, push: &mut impl FnMut(Severity, &str, String, String)) {
    if club.club.adhesive.is_none() && shop.adhesive.is_none() {
        push(
            Severity::Warn,
            "adhesive",
            "no adhesive is named here or for the shop".into(),
            "Name one: its mass and its cure times count".into(),
        );
    }
    let wraps = club.club.wraps;
    let layers = wraps.base.saturating_add(wraps.full).saturating_add(wraps.lower_hand);
    if layers > 0 && club.club.tape.is_none() && shop.tape.is_none() {
        push(
            Severity::Warn,
            "tape",
            "it has layers of tape, and no tape is named here or for the shop".into(),
            "Name one: its mass counts".into(),
        );
    }
    if wraps.base == 0 {
        push(
            Severity::Note,
            "wraps",
            "no base layer carries the grip".into(),
            "Nothing to do if the grip goes on without tape".into(),
        );
    }
    if layers > 8 && club.sound {
        push(
            Severity::Warn,
            "wraps",
            format!("{layers} layers of tape are more than a grip usually goes over"),
            "Choose a larger grip, if it was not a slip".into(),
        );
    }
}

/// The bore that the tip goes into: the head's own, or that of the adapter it takes.
fn bore_and_tip(
    club: &Named<'_>,
    head: &HeadModel,
    shaft: &ShaftModel,
    library: &Library,
    push: &mut impl FnMut(Severity, &str, String, String),
) {
    let (bore_mm, whose) = if head.takes_adapter {
        let adapter = library.of_kind(PartKind::Adapter).find_map(|m| match m {
            Model::Adapter(a) if a.fits_head_model == head.code => Some(a),
            _ => None,
        });
        let Some(adapter) = adapter else {
            push(
                Severity::Stop,
                "head_model",
                format!("{} takes an adapter, and no adapter model fits it", head.name),
                "Add the adapter under Stock, Models".into(),
            );
            return;
        };
        (adapter.bore_diameter_mm, format!("the adapter {}", adapter.name))
    } else {
        (head.bore_diameter_mm, head.name.clone())
    };
    let tip_mm = shaft.tip_diameter_mm;
    let over = tip_mm - bore_mm;
    let sizes = format!("the tip of {} is {} and the bore of {whose} {}", shaft.name, size(tip_mm), size(bore_mm));
    if over > 0.0 {
        push(
            Severity::Stop,
            "shaft_model",
            format!("{sizes}: it does not go in"),
            "Choose a shaft of the bore's size; reaming is for the head maker's limits only".into(),
        );
    } else if !tip_fits_bore(tip_mm, bore_mm) {
        push(
            Severity::Stop,
            "shaft_model",
            format!("{sizes}: {} mm of play, more than adhesive fills", decimal(-over, 2)),
            "Choose a shaft of the bore's size".into(),
        );
    } else if -over > LOOSE_MM {
        push(
            Severity::Warn,
            "shaft_model",
            format!("{sizes}: {} mm of play", decimal(-over, 2)),
            "Use a shim, or a shaft of the bore's size".into(),
        );
    }
    if shaft.tip == TipShape::Taper && !shaft.tip_trim.is_empty() {
        push(
            Severity::Warn,
            "shaft_model",
            format!("{} has a taper tip and a tip trim; taper tips are cut at the butt only", shaft.name),
            format!("Take the trim out of the model, if the {} is not meant to be softer or stiffer", club.club.number),
        );
    }
}

fn ferrule(
    club: &Named<'_>,
    shaft: &ShaftModel,
    library: &Library,
    push: &mut impl FnMut(Severity, &str, String, String),
) {
    let Some(ferrule) = club.club.ferrule_model.as_deref().and_then(|code| library.ferrule(code).ok()) else { return };
    if !ferrule_fits(ferrule, shaft.tip_diameter_mm) {
        push(
            Severity::Warn,
            "ferrule_model",
            format!(
                "the ferrule {} is {} inside and the tip {}",
                ferrule.name,
                size(ferrule.inside_diameter_mm),
                size(shaft.tip_diameter_mm)
            ),
            "Choose a ferrule of the tip's size".into(),
        );
    }
}

/// Millimetres with the thousandths of an inch that the trade says.
fn size(mm: f64) -> String {
    format!("{} mm ({} in)", decimal(mm, 2), decimal(mm / quantity::INCH_MM, 3))
}

/// Whether there is a blank for the number. A neighbour's may stand in for one that is not in stock, not for one that
/// the model does not have: its trim and its rule are the number's own.
fn blank(
    head: &HeadModel,
    entry: &HeadNumber,
    shaft: &ShaftModel,
    push: &mut impl FnMut(Severity, &str, String, String),
) -> bool {
    if shaft.blank(&entry.number).is_some() {
        return true;
    }
    let known: Vec<&str> = shaft.blanks.iter().filter_map(|b| b.number.as_deref()).collect();
    push(
        Severity::Stop,
        "shaft_model",
        format!(
            "{} has no taper blank for the {} of {}: it has {}",
            shaft.name,
            entry.number,
            head.name,
            known.join(", ")
        ),
        "Choose a shaft model with this number, or add the blank to the model".into(),
    );
    false
}

fn trim(
    club: &Named<'_>,
    entry: &HeadNumber,
    shaft: &ShaftModel,
    library: &Library,
    shop: &Shop,
    push: &mut impl FnMut(Severity, &str, String, String),
) {
    let model = Ingredients::of_sheet(club.club, library, shop).and_then(|i| MassModel::of(&i));
    let model = match model {
        Ok(model) => model,
        // What the library lacks has been said beside its own field.
        Err(trade::error::TradeError::Unknown(_)) => return,
        Err(e) => {
            push(Severity::Stop, "length_mm", super::told(&e.refusal()).0, "Correct the length".into());
            return;
        }
    };
    let short_mm = -model.butt_cut_mm;
    if short_mm > 0.5 {
        let trim_mm = shaft.tip_trim_mm(&entry.number);
        let raw_mm = shaft.blank(&entry.number).map_or(0.0, |b| b.length_mm);
        let trimmed =
            if trim_mm > 0.0 { format!(" after a tip trim of {} mm", decimal(trim_mm, 1)) } else { String::new() };
        push(
            Severity::Stop,
            "shaft_model",
            format!(
                "the blank of {} is {} mm long{trimmed} and the club needs {} mm of shaft: {} mm too short",
                shaft.name,
                decimal(raw_mm, 1),
                decimal(model.cut_shaft_mm, 1),
                decimal(short_mm, 1)
            ),
            "Choose a longer blank, less trim or a shorter club".into(),
        );
    }
}

/// How far the head must be bent, nominal or as the heads in stock were received, against the maker's limit.
fn bend(
    club: &Named<'_>,
    head: &HeadModel,
    entry: &HeadNumber,
    stock: &[Part],
    push: &mut impl FnMut(Severity, &str, String, String),
) {
    let heads: Vec<&Part> = stock
        .iter()
        .filter(|p| p.kind == PartKind::Head && p.model == head.code && p.is_free())
        .filter(|p| p.number.as_deref().is_some_and(|n| n.eq_ignore_ascii_case(&entry.number)))
        .collect();
    let t = club.club.tolerances;
    type Received = fn(&Part) -> Option<f64>;
    let sides: [(&str, f64, f64, f64, Received); 2] = [
        ("loft", club.club.loft_deg, entry.loft_deg, t.loft_deg, |p| p.loft_deg),
        ("lie", club.club.lie_deg, entry.lie_deg, t.lie_deg, |p| p.lie_deg),
    ];
    for (name, asked, nominal, tolerance, received) in sides {
        let by = asked - nominal;
        if by.abs() <= head.bend_limit_deg + 1e-9 {
            continue;
        }
        let near = heads.iter().filter_map(|p| received(p)).any(|deg| (asked - deg).abs() <= head.bend_limit_deg);
        let bend = format!(
            "{name} {}° is {}° from the {}° that the head is made with, and its maker allows {}",
            decimal(asked, 1),
            decimal(by.abs(), 1),
            decimal(nominal, 1),
            if head.bend_limit_deg > 0.0 {
                format!("{}°", decimal(head.bend_limit_deg, 1))
            } else {
                "no bending".into()
            }
        );
        let field = format!("{name}_deg");
        if near {
            push(
                Severity::Warn,
                &field,
                format!("{bend}; a head in stock was received near enough"),
                "Plan with the head that was measured".into(),
            );
        } else if by.abs() <= head.bend_limit_deg + tolerance {
            push(
                Severity::Warn,
                &field,
                format!("{bend}; bent to the limit it is within the tolerance"),
                "Measure the loose head before it is glued".into(),
            );
        } else {
            let advice = if head.club_kind == ClubKind::Wood || head.bend_limit_deg == 0.0 {
                "Choose another number or head model"
            } else {
                "Ask less of it, or measure loose heads: one may have been received nearer"
            };
            push(Severity::Stop, &field, bend, advice.into());
        }
    }
}
