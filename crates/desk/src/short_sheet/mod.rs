//! The sheet as builders write it: `5–PW, +1/2, 2 up, D3, 2 wraps`, relative to the head models' charts.
//!
//! # Grammar
//! Phrases in any order, separated by commas, semicolons or lines. A comma between two digits is a decimal comma.
//!
//! | what | how it is written |
//! |---|---|
//! | clubs | `5-PW`, `5 to P`, `5, 7, 9`, `5,7,9`, `3w`, `7-iron`, `driver`, `wedges`, `all`; PW is P, SW is S, GW, AW and A are G, LW is L |
//! | length | `+1/2`, `-1/4 in`, `+12 mm`, `1/2 over`, `std`, or absolute `36 3/4 in`, `93.3 cm`; `to the cap`, `to the shaft end` |
//! | lie | `2 up`, `1° flat`, `2 down`, `lie 62`, `lie +1` |
//! | loft | `1 strong`, `1 weak`, `loft 34`, `loft -1` |
//! | swing weight | `D3`, `D2.5`, `D2 +0.5 a club`, `+0.5 a club` (from the fitted club), `wedges +2 points` |
//! | tape | `2 wraps` (two full layers beside the base), `2 wraps + 1 lower hand`, `no wraps` |
//! | labels | `grip down`, `logo away`, `shaft up` |
//! | frequency | `300 cpm`, `300 cpm +4 a club` |
//! | whole mass | `total 428 g`, `total 428 g +7 a club` |
//! | soft side | `soft side heel`, `toe`, `target`, `away` |
//! | adapter | `adapter +1`, `adapter at flat`: the setting that it is built at |
//! | tolerance | `±0.3` (points), `±1.5 mm` (length), `±0.5°` (loft and lie), `±2 cpm` |
//!
//! What stands before the first clubs holds for all; clubs start a group, and what follows holds for that group until
//! the next clubs are named. Clubs that follow each other directly are one group. `all` goes back to what holds for
//! all. A group's own word wins over what holds for all; one word said twice in one place is refused.
//!
//! A step (`+0.5 a club`) counts from the first club of its group, in the order of the head models. `wedges +2 points`
//! is added last, to the clubs of wedge models and to the G, S, L and U of an iron model; P counts as the last iron.
//!
//! A word that cannot be read is refused with its place; nothing is guessed and nothing dropped.

mod clubs;
mod fault;
mod origin;
mod set_rule;
mod words;

pub(crate) use clubs::{canonical, family};
pub use fault::{KnownClubs, ShortError, WordFault};

pub use origin::{SwingWeightFrom, ValueFrom, WedgeFrom};

use crate::short_sheet::clubs::{Roster, Seat};
use crate::short_sheet::set_rule::Fitted;
use crate::short_sheet::words::{Phrase, Word, phrases};
use fact::{Fact, Told};
use quantity::round_to;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use trade::club_name::ClubName;
use trade::kind::{ClubKind, LengthTo};
use trade::model::Library;
use trade::sheet::{ReferenceClub, SetRule, SheetClub, Tolerances};
use trade::shop::Shop;
use trade::wrap::Wraps;
use utoipa::ToSchema;

/// A model for the clubs of one kind, or for all kinds that have no model of their own.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct KindChoice {
    /// The kind; left out: every kind without a choice of its own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub club_kind: Option<ClubKind>,
    /// Code of the model.
    pub model: String,
}

/// The models that a set is made of.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SetModels {
    /// Codes of the head models; a set may span woods, irons and wedges.
    pub heads: Vec<String>,
    /// Shaft models.
    pub shafts: Vec<KindChoice>,
    /// Grip models.
    pub grips: Vec<KindChoice>,
    /// Ferrule models, where there are any.
    #[serde(default)]
    pub ferrules: Vec<KindChoice>,
    /// Adhesive; left out: the shop's own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub adhesive: Option<String>,
    /// Tape; left out: the shop's own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tape: Option<String>,
}

/// What a short sheet is read against.
#[derive(Debug, Clone, Copy)]
pub struct ExpandContext<'a> {
    /// All models.
    pub library: &'a Library,
    /// The models of this set.
    pub models: &'a SetModels,
    /// The shop, for what the set leaves out.
    pub shop: &'a Shop,
    /// Tolerances where the sheet says none.
    pub tolerances: Tolerances,
    /// Layers of tape where the sheet says none; its base layer also holds where it does.
    pub wraps: Wraps,
}

impl<'a> ExpandContext<'a> {
    /// With the usual tolerances and one base layer of tape.
    #[must_use]
    pub fn new(library: &'a Library, models: &'a SetModels, shop: &'a Shop) -> Self {
        let wraps = Wraps { base: 1, full: 0, lower_hand: 0 };
        Self { library, models, shop, tolerances: Tolerances::default(), wraps }
    }
}

/// Where a field of an expanded club came from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Origin {
    /// Field of the club.
    pub field: String,
    /// Where its value came from.
    #[serde(flatten)]
    pub fact: Told,
}

impl Origin {
    fn new(field: &str, fact: &impl Fact) -> Self {
        Self { field: field.into(), fact: fact.told() }
    }
}

/// A club of an expanded sheet, and where its fields came from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Expanded {
    /// The club as it goes onto the sheet, every field filled in.
    pub club: SheetClub,
    /// Its fields, for approval.
    pub origins: Vec<Origin>,
}

/// Expands a short sheet into its clubs. See the module for the grammar, [`explain`] for what came from where.
///
/// With a reference club, what the sheet does not say is taken from it for the clubs of its own kind (irons and wedges
/// count as one): its length against its chart, its lie and loft against their chart, its swing weight.
///
/// # Errors
/// [`ShortError`] with the word, its place and an example; or with what the set lacks.
pub fn expand(
    short: &str,
    ctx: &ExpandContext<'_>,
    rule: SetRule,
    reference: Option<&ReferenceClub>,
) -> Result<Vec<SheetClub>, ShortError> {
    Ok(explain(short, ctx, rule, reference)?.into_iter().map(|e| e.club).collect())
}

/// Expands a short sheet and says for each field of each club where it came from.
///
/// # Errors
/// As [`expand`].
pub fn explain(
    short: &str,
    ctx: &ExpandContext<'_>,
    rule: SetRule,
    reference: Option<&ReferenceClub>,
) -> Result<Vec<Expanded>, ShortError> {
    let roster = Roster::of(ctx)?;
    let groups = Groups::read(short, &roster)?;
    let fitted = reference.map(|r| Fitted::of(r, &roster, ctx)).transpose()?;
    let mut expanded = Vec::new();
    for (seat, group) in groups.seats() {
        expanded.push(groups.club(seat, group, ctx, fitted.as_ref())?);
    }
    set_rule::apply(&mut expanded, &groups, ctx, rule, fitted.as_ref())?;
    Ok(expanded)
}

/// A word of the sheet with where it was said.
#[derive(Debug, Clone)]
struct Said {
    pub word: Word,
    pub text: String,
    pub at: usize,
}

impl Said {
    fn written(&self) -> ValueFrom {
        ValueFrom::Written { text: self.text.clone() }
    }
}

/// Which field a word sets. Two words of one slot in one place contradict each other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Slot {
    Length,
    LengthTo,
    Lie,
    Loft,
    SwingWeight,
    FullWraps,
    LowerWraps,
    GripGraphics,
    ShaftGraphics,
    Cpm,
    TotalMass,
    SoftSide,
    AdapterSetting,
    SwingWeightTolerance,
    LengthTolerance,
    AngleTolerance,
    CpmTolerance,
    WedgeOffset,
}

const fn slots(word: &Word) -> &'static [Slot] {
    match word {
        Word::Clubs(..) | Word::Several(_) | Word::Kind(_) | Word::All => &[],
        Word::LengthOffset(_) | Word::Length(_) => &[Slot::Length],
        Word::LengthTo(_) => &[Slot::LengthTo],
        Word::LieOffset(_) | Word::Lie(_) => &[Slot::Lie],
        Word::LoftOffset(_) | Word::Loft(_) => &[Slot::Loft],
        Word::SwingWeight(..) => &[Slot::SwingWeight],
        Word::Wraps(Some(_), Some(_)) => &[Slot::FullWraps, Slot::LowerWraps],
        Word::Wraps(_, Some(_)) => &[Slot::LowerWraps],
        Word::Wraps(_, None) => &[Slot::FullWraps],
        Word::GripGraphics(_) => &[Slot::GripGraphics],
        Word::ShaftGraphics(_) => &[Slot::ShaftGraphics],
        Word::Cpm(..) => &[Slot::Cpm],
        Word::TotalMass(..) => &[Slot::TotalMass],
        Word::SoftSide(_) => &[Slot::SoftSide],
        Word::AdapterSetting(_) => &[Slot::AdapterSetting],
        Word::SwingWeightTolerance(_) => &[Slot::SwingWeightTolerance],
        Word::LengthTolerance(_) => &[Slot::LengthTolerance],
        Word::AngleTolerance(_) => &[Slot::AngleTolerance],
        Word::CpmTolerance(_) => &[Slot::CpmTolerance],
        Word::WedgeOffset(_) => &[Slot::WedgeOffset],
    }
}

type Specs = BTreeMap<Slot, Said>;

/// The groups of a short sheet.
struct Groups<'a> {
    all: Specs,
    groups: Vec<(Vec<Seat<'a>>, Specs)>,
}

impl<'a> Groups<'a> {
    fn read(short: &str, roster: &Roster<'a>) -> Result<Self, ShortError> {
        let mut made = Self { all: Specs::new(), groups: Vec::new() };
        // None: what holds for all. Some(open): the last group, open while only clubs have been named.
        let mut group: Option<bool> = None;
        for phrase in phrases(short, &roster.numbers())? {
            if phrase.word == Word::All {
                group = None;
            } else if phrase.word.names_clubs() {
                let seats = roster.named(&phrase, &phrase.word)?;
                if group != Some(true) {
                    made.groups.push((Vec::new(), Specs::new()));
                }
                group = Some(true);
                made.add(seats, &phrase)?;
            } else {
                group = group.map(|_| false);
                let specs = match (group, made.groups.last_mut()) {
                    (Some(_), Some((_, specs))) => specs,
                    _ => &mut made.all,
                };
                say(specs, phrase)?;
            }
        }
        if made.groups.is_empty() {
            return Err(ShortError::NoClubs { known: roster.known() });
        }
        Ok(made)
    }

    fn add(&mut self, seats: Vec<Seat<'a>>, phrase: &Phrase) -> Result<(), ShortError> {
        for seat in seats {
            if self.groups.iter().any(|(there, _)| there.iter().any(|s| s.place == seat.place)) {
                return Err(ShortError::word(
                    &phrase.text,
                    phrase.at,
                    WordFault::NamedBefore { number: seat.number.number.clone() },
                ));
            }
            if let Some((there, _)) = self.groups.last_mut() {
                there.push(seat);
            }
        }
        Ok(())
    }

    /// All clubs in the order of the set, each with its group.
    fn seats(&self) -> Vec<(Seat<'a>, usize)> {
        let in_group =
            |(g, (seats, _)): (usize, &(Vec<Seat<'a>>, Specs))| seats.iter().map(move |s| (*s, g)).collect::<Vec<_>>();
        let mut all: Vec<_> = self.groups.iter().enumerate().flat_map(in_group).collect();
        all.sort_by_key(|(s, _)| s.place);
        all
    }

    /// Seats again, for the rule of the set.
    fn seated(&self) -> Vec<(Seat<'a>, usize)> {
        self.seats()
    }

    /// What was said of a slot for a group, its own before what holds for all.
    fn said(&self, group: usize, slot: Slot) -> Option<&Said> {
        self.groups[group].1.get(&slot).or_else(|| self.all.get(&slot))
    }

    /// How many clubs stand before this one where a step counts from: in its group, or in the whole set where the step
    /// holds for all.
    fn steps_before(&self, seat: Seat<'a>, group: usize, slot: Slot) -> usize {
        let own = self.groups[group].1.contains_key(&slot);
        self.seats().iter().filter(|(s, g)| s.place < seat.place && (!own || *g == group)).count()
    }

    fn club(
        &self,
        seat: Seat<'a>,
        group: usize,
        ctx: &ExpandContext<'a>,
        fitted: Option<&Fitted<'a>>,
    ) -> Result<Expanded, ShortError> {
        let kind = seat.head.club_kind;
        let shaft_model = chosen(&ctx.models.shafts, kind, ShortError::NoShaftFor { kind })?;
        let grip_model = chosen(&ctx.models.grips, kind, ShortError::NoGripFor { kind })?;
        let ferrule_model = choice(&ctx.models.ferrules, kind).map(str::to_owned);
        let mut origins = Vec::new();
        let mut note = |field: &str, from: ValueFrom| origins.push(Origin::new(field, &from));
        note("head_model", ValueFrom::Head { club: seat.name(), head: seat.head.name.clone() });
        let fitted = fitted.filter(|f| f.seat.family() == seat.family());
        let get = |slot| self.said(group, slot);

        let (length_mm, length_to, from) = self.length(seat, group, &grip_model, ctx, fitted)?;
        note("length_mm", from);
        let (lie_deg, from) = angle(get(Slot::Lie), seat.number.lie_deg, fitted.and_then(Fitted::lie_offset));
        note("lie_deg", from);
        let (loft_deg, from) = angle(get(Slot::Loft), seat.number.loft_deg, fitted.and_then(Fitted::loft_offset));
        note("loft_deg", from);
        let mut wraps = ctx.wraps;
        for slot in [Slot::FullWraps, Slot::LowerWraps] {
            if let Some(said) = get(slot)
                && let Word::Wraps(full, lower) = said.word
            {
                match slot {
                    Slot::FullWraps => wraps.full = full.unwrap_or(wraps.full),
                    _ => wraps.lower_hand = lower.unwrap_or(wraps.lower_hand),
                }
                note("wraps", ValueFrom::WrittenWraps { text: said.text.clone(), n: i64::from(wraps.base) });
            }
        }
        let usual = Wraps { base: 1, full: 0, lower_hand: 0 };
        if ctx.wraps != usual && get(Slot::FullWraps).is_none() && get(Slot::LowerWraps).is_none() {
            note("wraps", ValueFrom::CustomersWraps);
        }
        let mut stepped = |slot, field| {
            let said = get(slot)?;
            let (Word::Cpm(start, by) | Word::TotalMass(start, by)) = said.word else { return None };
            note(field, said.written());
            Some(round_to(start + by.unwrap_or(0.0) * self.steps_before(seat, group, slot) as f64, 6))
        };
        let cpm = stepped(Slot::Cpm, "cpm");
        let total_mass_g = stepped(Slot::TotalMass, "total_mass_g");
        let mut tolerances = ctx.tolerances;
        for slot in [Slot::SwingWeightTolerance, Slot::LengthTolerance, Slot::AngleTolerance, Slot::CpmTolerance] {
            let Some(said) = get(slot) else { continue };
            match said.word {
                Word::SwingWeightTolerance(v) => tolerances.swing_weight_points = v,
                Word::LengthTolerance(v) => tolerances.length_mm = v,
                Word::AngleTolerance(v) => (tolerances.loft_deg, tolerances.lie_deg) = (v, v),
                Word::CpmTolerance(v) => tolerances.cpm = v,
                _ => {}
            }
            note("tolerances", said.written());
        }
        let grip_graphics =
            get(Slot::GripGraphics).and_then(|s| if let Word::GripGraphics(f) = s.word { Some(f) } else { None });
        let shaft_graphics =
            get(Slot::ShaftGraphics).and_then(|s| if let Word::ShaftGraphics(f) = s.word { Some(f) } else { None });
        let soft_side = get(Slot::SoftSide).and_then(|s| if let Word::SoftSide(f) = s.word { Some(f) } else { None });
        let adapter_setting = get(Slot::AdapterSetting)
            .and_then(|s| if let Word::AdapterSetting(name) = &s.word { Some(name.clone()) } else { None });
        for (slot, field) in [
            (Slot::AdapterSetting, "adapter_setting"),
            (Slot::GripGraphics, "grip_graphics"),
            (Slot::ShaftGraphics, "shaft_graphics"),
            (Slot::SoftSide, "soft_side"),
        ] {
            if let Some(said) = get(slot) {
                note(field, said.written());
            }
        }
        let club = SheetClub {
            number: seat.number.number.clone(),
            club_kind: kind,
            head_model: seat.head.code.clone(),
            shaft_model,
            grip_model,
            ferrule_model,
            adhesive: ctx.models.adhesive.clone(),
            tape: ctx.models.tape.clone(),
            length_mm: round_to(length_mm, 6),
            length_to,
            swing_weight_points: seat.number.chart.swing_weight_points,
            loft_deg: round_to(loft_deg, 6),
            lie_deg: round_to(lie_deg, 6),
            cpm,
            total_mass_g,
            inertia_kg_cm2: None,
            grip_size: None,
            grip_graphics,
            adapter_setting,
            swing_weight_free: kind == ClubKind::Putter && get(Slot::SwingWeight).is_none(),
            shaft_graphics,
            soft_side,
            tip_weight: None,
            wraps,
            tolerances,
        };
        Ok(Expanded { club, origins })
    }

    /// Length, what it is measured to, and where it came from.
    fn length(
        &self,
        seat: Seat<'a>,
        group: usize,
        grip_model: &str,
        ctx: &ExpandContext<'a>,
        fitted: Option<&Fitted<'a>>,
    ) -> Result<(f64, LengthTo, ValueFrom), ShortError> {
        let chart_to = seat.head.chart_length_to;
        let length_to = match self.said(group, Slot::LengthTo) {
            Some(Said { word: Word::LengthTo(to), .. }) => *to,
            _ => chart_to,
        };
        let cap_mm = || {
            let grip = ctx.library.grip(grip_model);
            grip.map(|g| g.cap_mm).map_err(|e| ShortError::CapNeeded { what: e.refusal() })
        };
        let chart_mm = match (chart_to, length_to) {
            (LengthTo::Cap, LengthTo::ShaftEnd) => seat.number.chart.length_mm - cap_mm()?,
            (LengthTo::ShaftEnd, LengthTo::Cap) => seat.number.chart.length_mm + cap_mm()?,
            _ => seat.number.chart.length_mm,
        };
        Ok(match self.said(group, Slot::Length) {
            Some(Said { word: Word::Length(length_mm), text, .. }) => {
                (*length_mm, length_to, ValueFrom::WrittenLength { text: text.clone(), to: length_to })
            }
            Some(Said { word: Word::LengthOffset(by_mm), text, .. }) => {
                let from = ValueFrom::ChartAndWrittenLength { chart_mm, text: text.clone(), to: length_to };
                (chart_mm + by_mm, length_to, from)
            }
            _ => match fitted.map(|f| Ok((f, f.length_offset_mm(ctx)?))).transpose()? {
                Some((fitted, Some(by_mm))) => {
                    let club = fitted.seat.name();
                    let from = ValueFrom::ChartAndFittedLength { chart_mm, by_mm, club, to: length_to };
                    (chart_mm + by_mm, length_to, from)
                }
                _ => (chart_mm, length_to, ValueFrom::ChartLength { chart_mm, to: length_to }),
            },
        })
    }
}

/// An angle from what was said, the fitted club's offset, or the chart.
fn angle(said: Option<&Said>, chart_deg: f64, fitted: Option<(ClubName, f64)>) -> (f64, ValueFrom) {
    match said {
        Some(Said { word: Word::LieOffset(by) | Word::LoftOffset(by), text, .. }) => {
            (chart_deg + by, ValueFrom::ChartAndWrittenAngle { chart_deg, text: text.clone() })
        }
        Some(said @ Said { word: Word::Lie(deg) | Word::Loft(deg), .. }) => (*deg, said.written()),
        _ => match fitted {
            Some((club, by_deg)) => (chart_deg + by_deg, ValueFrom::ChartAndFittedAngle { chart_deg, by_deg, club }),
            None => (chart_deg, ValueFrom::ChartAngle { chart_deg }),
        },
    }
}

fn choice(choices: &[KindChoice], kind: ClubKind) -> Option<&str> {
    let own = choices.iter().find(|c| c.club_kind == Some(kind));
    own.or_else(|| choices.iter().find(|c| c.club_kind.is_none())).map(|c| c.model.as_str())
}

fn chosen(choices: &[KindChoice], kind: ClubKind, lacking: ShortError) -> Result<String, ShortError> {
    choice(choices, kind).map(str::to_owned).ok_or(lacking)
}

/// Enters a word; the same slot twice in one place is refused.
fn say(specs: &mut Specs, phrase: Phrase) -> Result<(), ShortError> {
    let said = Said { word: phrase.word, text: phrase.text, at: phrase.at };
    for &slot in slots(&said.word) {
        if let Some(before) = specs.get(&slot) {
            return Err(ShortError::word(
                &said.text,
                said.at,
                WordFault::SaidBefore { word: before.text.clone(), n: before.at },
            ));
        }
        specs.insert(slot, said.clone());
    }
    Ok(())
}
