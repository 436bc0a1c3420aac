//! Whether the models of one club go together: hand, kind, bore and tip, blank, trim, ferrule, adapter, bend.

use crate::mass_model::{Ingredients, MassModel};
use crate::sheet_check::{BoreOf, FitFinding, Named, Severity, SheetNext, SheetProblem};
use trade::ferrule::ferrule_fits;
use trade::fit::tip_fits_bore;
use trade::head::{HeadModel, HeadNumber};
use trade::kind::ClubKind;
use trade::model::{Library, Model, PartKind};
use trade::part::Part;
use trade::reading::What;
use trade::shaft::{ShaftModel, TipShape};
use trade::sheet::Sheet;
use trade::shop::Shop;

/// A tip this much under the bore is loose: a 0.355 in tip in a 0.370 in bore is 0.38 mm under. The bond line is best at
/// 0.1 to 0.2 mm a side (an adhesives-industry guide, §3.4.3; lap-joint studies).
const LOOSE_MM: f64 = 0.3;

/// Notes a finding: how much it weighs, its field, what was found, what to do.
type Push<'a> = dyn FnMut(Severity, &str, FitFinding, SheetNext) + 'a;

pub(super) fn check(
    sheet: &Sheet,
    club: &Named<'_>,
    library: &Library,
    shop: &Shop,
    stock: &[Part],
    found: &mut Vec<SheetProblem>,
) {
    let mut put = |severity, field: &str, fact: FitFinding, next: SheetNext| {
        found.push(SheetProblem::new(severity, club.field(field), &fact, &next).of(club.club));
    };
    let push: &mut Push<'_> = &mut put;
    if let Some(head) = club.head {
        if head.hand != sheet.hand {
            let fact = FitFinding::WrongHand { head: head.name.clone(), hand: head.hand, player: sheet.hand };
            push(Severity::Stop, "head_model", fact, SheetNext::ChooseHand);
        }
        if head.club_kind != club.club.club_kind {
            let (kind, asked) = (head.club_kind, club.club.club_kind);
            let fact = FitFinding::WrongKind { head: head.name.clone(), kind, asked };
            push(Severity::Stop, "club_kind", fact, SheetNext::WriteKind { kind });
        }
    }
    small_things(club, shop, push);
    let (Some(head), Some(shaft)) = (club.head, club.shaft) else { return };
    bore_and_tip(club, head, shaft, library, push);
    ferrule(club, shaft, library, push);
    let Some(entry) = club.number else { return };
    let blank_there = blank(club, entry, shaft, push);
    if !club.sound {
        return;
    }
    bend(club, head, entry, (stock, library), push);
    if blank_there {
        trim(club, entry, shaft, library, shop, push);
    }
}

fn small_things(club: &Named<'_>, shop: &Shop, push: &mut Push<'_>) {
    if club.club.adhesive.is_none() && shop.adhesive.is_none() {
        push(Severity::Warn, "adhesive", FitFinding::NoAdhesive, SheetNext::NameAdhesive);
    }
    let wraps = club.club.wraps;
    let layers = wraps.base.saturating_add(wraps.full).saturating_add(wraps.lower_hand);
    if layers > 0 && club.club.tape.is_none() && shop.tape.is_none() {
        push(Severity::Warn, "tape", FitFinding::NoTape, SheetNext::NameTape);
    }
    if wraps.base == 0 {
        push(Severity::Note, "wraps", FitFinding::NoBaseLayer, SheetNext::IfNoTape);
    }
    if layers > 8 && club.sound {
        push(Severity::Warn, "wraps", FitFinding::ManyLayers { n: i64::from(layers) }, SheetNext::LargerGrip);
    }
}

/// The bore that the tip goes into: the head's own, or that of the adapter it takes.
fn bore_and_tip(club: &Named<'_>, head: &HeadModel, shaft: &ShaftModel, library: &Library, push: &mut Push<'_>) {
    let (bore_mm, bore) = if head.takes_adapter {
        let adapter = library.of_kind(PartKind::Adapter).find_map(|m| match m {
            Model::Adapter(a) if a.fits_head_model == head.code => Some(a),
            _ => None,
        });
        let Some(adapter) = adapter else {
            let fact = FitFinding::NoAdapterModel { head: head.name.clone() };
            push(Severity::Stop, "head_model", fact, SheetNext::AddAdapter);
            return;
        };
        (adapter.bore_diameter_mm, BoreOf::Adapter { name: adapter.name.clone() })
    } else {
        (head.bore_diameter_mm, BoreOf::Head { name: head.name.clone() })
    };
    let (name, tip_mm) = (shaft.name.clone(), shaft.tip_diameter_mm);
    let play_mm = bore_mm - tip_mm;
    if play_mm < 0.0 {
        let fact = FitFinding::TipTooThick { shaft: name, tip_mm, bore, bore_mm };
        push(Severity::Stop, "shaft_model", fact, SheetNext::ThinnerShaft);
    } else if !tip_fits_bore(tip_mm, bore_mm) {
        let fact = FitFinding::TipTooThin { shaft: name, tip_mm, bore, bore_mm, play_mm };
        push(Severity::Stop, "shaft_model", fact, SheetNext::ShaftOfBore);
    } else if play_mm > LOOSE_MM {
        let fact = FitFinding::TipLoose { shaft: name, tip_mm, bore, bore_mm, play_mm };
        push(Severity::Warn, "shaft_model", fact, SheetNext::UseShim);
    }
    if shaft.tip == TipShape::Taper && !shaft.tip_trim.is_empty() {
        let fact = FitFinding::TaperTrim { shaft: shaft.name.clone() };
        push(Severity::Warn, "shaft_model", fact, SheetNext::TakeTrimOut { club: club.club.name() });
    }
}

fn ferrule(club: &Named<'_>, shaft: &ShaftModel, library: &Library, push: &mut Push<'_>) {
    let Some(ferrule) = club.club.ferrule_model.as_deref().and_then(|code| library.ferrule(code).ok()) else { return };
    if !ferrule_fits(ferrule, shaft.tip_diameter_mm) {
        let tip_mm = shaft.tip_diameter_mm;
        let (name, inside_mm) = (ferrule.name.clone(), ferrule.inside_diameter_mm);
        let fact = FitFinding::FerruleSize { ferrule: name, inside_mm, tip_mm };
        push(Severity::Warn, "ferrule_model", fact, SheetNext::FerruleOfTip);
    }
}

/// Whether there is a blank for the number. A neighbour's may stand in for one that is not in stock, not for one that
/// the model does not have: its trim and its rule are the number's own.
fn blank(club: &Named<'_>, entry: &HeadNumber, shaft: &ShaftModel, push: &mut Push<'_>) -> bool {
    if shaft.blank(&entry.number).is_some() {
        return true;
    }
    let known = shaft.blanks.iter().filter_map(|b| b.number.as_deref()).map(Into::into).collect();
    let fact = FitFinding::NoBlank { shaft: shaft.name.clone(), club: club.club.name(), known };
    push(Severity::Stop, "shaft_model", fact, SheetNext::ShaftWithNumber);
    false
}

fn trim(club: &Named<'_>, entry: &HeadNumber, shaft: &ShaftModel, library: &Library, shop: &Shop, push: &mut Push<'_>) {
    let model = Ingredients::of_sheet(club.club, library, shop).and_then(|i| MassModel::of(&i));
    let model = match model {
        Ok(model) => model,
        // What the library lacks has been said beside its own field.
        Err(trade::error::TradeError::Unknown(_)) => return,
        Err(e) => {
            let what = e.refusal().fact().clone();
            push(Severity::Stop, "length_mm", FitFinding::CannotBeCut { what }, SheetNext::CorrectLength);
            return;
        }
    };
    let short_mm = -model.butt_cut_mm;
    if short_mm > 0.5 {
        let trim_mm = shaft.tip_trim_mm(&entry.number);
        let raw_mm = shaft.blank(&entry.number).map_or(0.0, |b| b.length_mm);
        let fact = FitFinding::BlankTooShort {
            shaft: shaft.name.clone(),
            blank_mm: raw_mm,
            trim_mm: Some(trim_mm).filter(|mm| *mm > 0.0),
            needed_mm: model.cut_shaft_mm,
            short_mm,
        };
        push(Severity::Stop, "shaft_model", fact, SheetNext::LongerBlank);
    }
}

/// How far the head must be bent, nominal or as the heads in stock were received, against the maker's limit.
fn bend(
    club: &Named<'_>,
    head: &HeadModel,
    entry: &HeadNumber,
    (stock, library): (&[Part], &Library),
    push: &mut Push<'_>,
) {
    let setting = club.club.adapter_setting.as_deref();
    let adapter = library.adapters_of(&head.code).next().filter(|_| head.takes_adapter);
    if let Some(name) = setting.filter(|name| adapter.is_none_or(|a| a.built_at(Some(name)).is_none())) {
        let (setting, known) = (name.to_owned(), adapter.map_or(&[][..], |a| &a.settings));
        let known: Vec<String> = known.iter().map(|s| s.name.clone()).collect();
        let next = if known.is_empty() { SheetNext::EnterSettings } else { SheetNext::ChooseSetting { known } };
        push(Severity::Stop, "adapter_setting", FitFinding::NoSuchSetting { setting, head: head.name.clone() }, next);
        return;
    }
    let turned_deg = adapter.map_or((0.0, 0.0), |a| a.turns_deg(setting));
    let heads: Vec<&Part> = stock
        .iter()
        .filter(|p| p.kind == PartKind::Head && p.model == head.code && p.is_free())
        .filter(|p| p.number.as_deref().is_some_and(|n| n.eq_ignore_ascii_case(&entry.number)))
        .collect();
    let t = club.club.tolerances;
    type Received = fn(&Part) -> Option<f64>;
    let sides: [(What, &str, f64, f64, f64, Received); 2] = [
        (What::Loft, "loft_deg", club.club.loft_deg, entry.loft_deg + turned_deg.0, t.loft_deg, |p| p.loft_deg),
        (What::Lie, "lie_deg", club.club.lie_deg, entry.lie_deg + turned_deg.1, t.lie_deg, |p| p.lie_deg),
    ];
    let sides_made = (sides[0].3, sides[1].3);
    let setting_now = adapter.map(|a| setting.unwrap_or(&a.setting));
    for (what, field, asked_deg, made_deg, tolerance_deg, received) in sides {
        let by_deg = (asked_deg - made_deg).abs();
        let turned_deg = if what == What::Loft { turned_deg.0 } else { turned_deg.1 };
        if by_deg <= head.bend_limit_deg + 1e-9 {
            continue;
        }
        let within = |deg: f64| (asked_deg - deg - turned_deg).abs() <= head.bend_limit_deg;
        let limit_deg = Some(head.bend_limit_deg).filter(|deg| *deg > 0.0);
        if heads.iter().filter_map(|p| received(p)).any(within) {
            let fact = FitFinding::BendFromStock { what, asked_deg, made_deg, by_deg, limit_deg };
            push(Severity::Warn, field, fact, SheetNext::PlanMeasuredHead);
        } else if by_deg <= head.bend_limit_deg + tolerance_deg {
            let fact = FitFinding::BendToLimit { what, asked_deg, made_deg, by_deg, limit_deg };
            push(Severity::Warn, field, fact, SheetNext::MeasureLooseHead);
        } else {
            let stiff = head.club_kind == ClubKind::Wood || limit_deg.is_none();
            let asked = (club.club.loft_deg - sides_made.0, club.club.lie_deg - sides_made.1);
            let nearest = adapter.and_then(|a| a.nearest(setting, asked));
            let other = nearest.filter(|n| !setting_now.is_some_and(|now| n.is_called(now)));
            let next = match other {
                Some(setting) => SheetNext::SetAdapter { setting: setting.name.clone() },
                None if stiff => SheetNext::OtherHead,
                None => SheetNext::BendLess,
            };
            let fact = FitFinding::BendTooFar { what, asked_deg, made_deg, by_deg, limit_deg };
            push(Severity::Stop, field, fact, next);
        }
    }
}
