//! Which other part would do for a club that cannot be built: parts that fit it but that the plan does not allow, nearest
//! first, with what they would cost in points and grams.

use super::{Fitting, Shelf, seats};
use bench::assembly::Assembly;
use matching::{Candidate, Choice};
use trade::club_name::ClubName;
use trade::error::TradeError;
use trade::fit;
use trade::model::PartKind;
use trade::part::Part;
use trade::plan::Instead;
use trade::swing_weight::points_per_g;

fact::facts! {
    /// Why a part that would do is not in the plan.
    pub enum InsteadWhy: "planner_instead_why" {
        /// Another club of the plan has it.
        Taken {
            /// Which club of the plan has it.
            club: ClubName,
            /// Its job, where several are planned together.
            job: Option<i64>,
        },
        /// A job outside the plan holds it.
        Held {
            /// Running number of that job.
            job: i64,
            /// Number of its club.
            number: String,
        },
        /// The head of a neighbouring number, stronger than asked.
        Stronger {
            /// The number that it is made for: `6`, `PW`.
            number: String,
            /// By how much less loft than asked it has.
            by_deg: f64,
        },
        /// The head of a neighbouring number, weaker than asked.
        Weaker {
            /// The number that it is made for: `6`, `PW`.
            number: String,
            /// By how much more loft than asked it has.
            by_deg: f64,
        },
        /// The same number of another head model.
        OtherHead {
            /// Name of the model.
            head: String,
            /// The number that it is made for: `6`, `PW`.
            number: String,
        },
        /// The blank of another number.
        OtherBlank {
            /// The number that it is cut for: `6`, `PW`.
            number: String,
        },
        /// Another shaft model.
        OtherShaft {
            /// Name of the model.
            shaft: String,
        },
        /// Another grip model.
        OtherGrip {
            /// Name of the model.
            grip: String,
        },
    }
}

fact::facts! {
    /// What a part would do in the place of one that is missing.
    pub enum InsteadOf: "planner_instead" {
        /// With a weight in the tip.
        WithTip {
            /// Code of the part.
            part: String,
            /// Why the plan does not use it.
            why: InsteadWhy,
            /// Distance from the target.
            off_points: f64,
            /// Weight that would go into the tip.
            tip_g: f64,
        },
        /// Without one.
        WithoutTip {
            /// Code of the part.
            part: String,
            /// Why the plan does not use it.
            why: InsteadWhy,
            /// Distance from the target.
            off_points: f64,
        },
    }
}

/// So many of each sort are named.
const NAMED: usize = 2;

/// Who has a part: a club, of a job where several are planned together.
#[derive(Clone)]
pub(super) struct Whose {
    pub club: ClubName,
    pub job: Option<i64>,
}

/// Which parts a plan uses, and for whom.
#[derive(Default)]
pub(super) struct Used(Vec<(PartKind, usize, Whose)>);

impl Used {
    /// Notes the parts of one club.
    pub fn note(&mut self, choice: &Choice, whose: &Whose) {
        let parts = [(PartKind::Head, choice.head), (PartKind::Shaft, choice.shaft), (PartKind::Grip, choice.grip)];
        let adapter = choice.adapter.map(|part| (PartKind::Adapter, part));
        self.0.extend(parts.into_iter().chain(adapter).map(|(kind, part)| (kind, part, whose.clone())));
    }

    /// Adds what another job's clubs take.
    pub fn extend(&mut self, other: Self) {
        self.0.extend(other.0);
    }

    /// Who has a part, where every piece of it is spoken for.
    fn by(&self, kind: PartKind, part: usize, pieces: u32) -> Option<&Whose> {
        let mut holders = self.0.iter().filter(|(k, p, _)| *k == kind && *p == part);
        holders.nth((pieces as usize).checked_sub(1)?).map(|x| &x.2)
    }
}

/// A club without the part that is missing.
struct Rest<'a, 'p> {
    fitting: &'a Fitting<'p>,
    /// Head, shaft, grip and adapter that are left over and nearest to the middle of those that fit.
    left: [Option<Candidate>; 4],
}

/// What would do in place of what is missing.
pub(super) fn instead(
    assembly: Assembly<'_>,
    fitting: &Fitting<'_>,
    shelf: &Shelf<'_>,
    used: &Used,
    kind: PartKind,
) -> Result<Vec<Instead>, TradeError> {
    let need = &fitting.need;
    let middle = |list: &[Candidate], kind: PartKind, parts: &[&Part]| {
        let mut left: Vec<Candidate> =
            list.iter().filter(|c| used.by(kind, c.part, shelf.count(parts[c.part])).is_none()).copied().collect();
        left.sort_by(|a, b| a.points.total_cmp(&b.points));
        left.get(left.len() / 2).copied()
    };
    let left = [
        middle(&need.heads, PartKind::Head, &shelf.heads),
        middle(&need.shafts, PartKind::Shaft, &shelf.shafts),
        middle(&need.grips, PartKind::Grip, &shelf.grips),
        middle(need.adapters.as_deref().unwrap_or_default(), PartKind::Adapter, &shelf.adapters),
    ];
    let rest = Rest { fitting, left };
    let mut out = Vec::new();
    let none = Vec::new();
    let (own, parts, place) = match kind {
        PartKind::Head => (&need.heads, &shelf.heads, 0),
        PartKind::Shaft => (&need.shafts, &shelf.shafts, 1),
        PartKind::Grip => (&need.grips, &shelf.grips, 2),
        PartKind::Adapter => (need.adapters.as_ref().unwrap_or(&none), &shelf.adapters, 3),
        _ => return Ok(out),
    };
    // Those that fit and another club has.
    let mut taken: Vec<Instead> = own
        .iter()
        .filter_map(|c| {
            let whose = used.by(kind, c.part, shelf.count(parts[c.part]))?;
            let why = InsteadWhy::Taken { club: whose.club.clone(), job: whose.job };
            rest.with(place, c.points).map(|x| x.named(kind, parts[c.part], why))
        })
        .collect();
    nearest(&mut taken, &mut out);
    // Those that fit and a job outside the plan holds.
    let mut held = Vec::new();
    let customer = assembly.job.sheet.customer;
    for h in shelf.held.iter().filter(|h| !h.fixed && h.part.kind == kind && h.part.may_go_to(customer)) {
        let Some((points, _)) = of_fitting(assembly, fitting, &h.part)? else { continue };
        let why = InsteadWhy::Held { job: h.job, number: h.club.clone() };
        let named = rest.with(place, points).map(|x| x.named(kind, &h.part, why));
        held.extend(named.map(|x| Instead { held_by: Some(h.job), ..x }));
    }
    nearest(&mut held, &mut out);
    // Those that are free and the sheet does not ask for.
    let mut free = Vec::new();
    for (part, p) in parts.iter().enumerate() {
        let fits = own.iter().any(|c| c.part == part);
        if fits || !p.may_go_to(customer) || used.by(kind, part, shelf.count(p)).is_some() {
            continue;
        }
        let other = match kind {
            PartKind::Head => other_head(assembly, fitting, p)?,
            PartKind::Shaft => other_shaft(assembly, fitting, p)?,
            PartKind::Grip => other_grip(assembly, p)?,
            // An adapter of another head or length does not go in.
            _ => None,
        };
        let Some((points, why)) = other else { continue };
        free.extend(rest.with(place, points).map(|x| x.named(kind, p, why)));
    }
    nearest(&mut free, &mut out);
    Ok(out)
}

/// What a part that fits the club as the sheet asks adds to its swing weight, and to its mass as it is cut.
pub(super) fn of_fitting(
    assembly: Assembly<'_>,
    fitting: &Fitting<'_>,
    part: &Part,
) -> Result<Option<(f64, f64)>, TradeError> {
    if !fit::serves(part, &fitting.club.target, assembly.library) {
        return Ok(None);
    }
    Ok(match part.kind {
        PartKind::Head => part.mass_g.zip(fitting.need.head_scale).map(|(g, scale)| (g * scale.points_per_g, g)),
        PartKind::Shaft => cut_shaft(assembly, fitting, part)?,
        PartKind::Grip => {
            let mass_g = part.mass_g.unwrap_or(fitting.grip_model.mass_g);
            other_grip(assembly, part)?.map(|(points, _)| (points, mass_g))
        }
        PartKind::Adapter => of_adapter(assembly, fitting, part)?,
        _ => None,
    })
}

/// The same of an adapter, if it is as long and as wide as those that the club is planned with.
fn of_adapter(assembly: Assembly<'_>, fitting: &Fitting<'_>, part: &Part) -> Result<Option<(f64, f64)>, TradeError> {
    let Some(planned) = fitting.adapter else { return Ok(None) };
    let model = assembly.library.adapter(&part.model)?;
    if !seats::alike(planned, model) {
        return Ok(None);
    }
    let arm_mm = fitting.places.adapter_mm(planned.length_mm) + fitting.grip_model.cap_mm;
    let mass_g = part.mass_g.unwrap_or(model.mass_g);
    Ok(Some((mass_g * points_per_g(arm_mm), mass_g)))
}

fn nearest(found: &mut Vec<Instead>, out: &mut Vec<Instead>) {
    found.sort_by(|a, b| {
        let key = |x: &Instead| (x.deviation_points.abs() * 10.0).round() + x.tip_g / 10.0;
        key(a).total_cmp(&key(b)).then_with(|| a.code.cmp(&b.code))
    });
    found.truncate(NAMED);
    out.append(found);
}

/// A head of another number or model that takes the shaft: points and what is different.
fn other_head(
    assembly: Assembly<'_>,
    fitting: &Fitting<'_>,
    part: &Part,
) -> Result<Option<(f64, InsteadWhy)>, TradeError> {
    let (Some(mass_g), Some(number)) = (part.mass_g, part.number.as_deref()) else { return Ok(None) };
    let model = assembly.library.head(&part.model)?;
    let target = &fitting.club.target;
    let place = |n: &str| model.numbers.iter().position(|own| own.number.eq_ignore_ascii_case(n));
    let (Some(has), Some(wanted)) = (place(number), place(&target.number)) else { return Ok(None) };
    let same = model.code == fitting.head_model.code;
    // One number away in its own model, or the very number in another.
    let near = if same { has.abs_diff(wanted) == 1 } else { has == wanted };
    if !near || model.takes_adapter || !fit::head_takes_shaft(model, None, fitting.shaft_model) {
        return Ok(None);
    }
    let scale = fitting.need.head_scale.map_or(0.0, |s| s.points_per_g);
    let loft = part.loft_deg.unwrap_or(model.numbers[has].loft_deg) - target.loft_deg;
    let (number, by_deg) = (number.to_owned(), loft.abs());
    let why = if !same {
        InsteadWhy::OtherHead { head: model.name.clone(), number }
    } else if loft < 0.0 {
        InsteadWhy::Stronger { number, by_deg }
    } else {
        InsteadWhy::Weaker { number, by_deg }
    };
    Ok(Some((mass_g * scale, why)))
}

/// A shaft of another blank or model that goes into the bore and is long enough.
fn other_shaft(
    assembly: Assembly<'_>,
    fitting: &Fitting<'_>,
    part: &Part,
) -> Result<Option<(f64, InsteadWhy)>, TradeError> {
    let Some((points, _)) = cut_shaft(assembly, fitting, part)? else { return Ok(None) };
    let model = assembly.library.shaft(&part.model)?;
    let why = if model.code == fitting.shaft_model.code {
        let blank = part.number.as_deref().unwrap_or(&fitting.club.target.number);
        InsteadWhy::OtherBlank { number: blank.to_owned() }
    } else {
        InsteadWhy::OtherShaft { shaft: model.name.clone() }
    };
    Ok(Some((points, why)))
}

/// What a shaft adds, cut for the club, and its mass then; nothing where it does not go into the bore or is too short.
fn cut_shaft(assembly: Assembly<'_>, fitting: &Fitting<'_>, part: &Part) -> Result<Option<(f64, f64)>, TradeError> {
    let model = assembly.library.shaft(&part.model)?;
    let number = &fitting.club.target.number;
    let bore = fitting.adapter.map(|model| model.bore_diameter_mm);
    let blank = part.number.as_deref().unwrap_or(number);
    if part.mass_g.is_none() || !fit::head_takes_shaft(fitting.head_model, bore, model) || model.blank(blank).is_none()
    {
        return Ok(None);
    }
    let raw = fit::raw_shaft(model, part, number)?;
    // Tip trims are known for the model's own numbers only.
    let Ok(Some(cut)) = fit::cut(model, raw, part.tip_trimmed_mm.unwrap_or(0.0), number, fitting.places.tip_mm) else {
        return Ok(None);
    };
    let cap_mm = fitting.grip_model.cap_mm;
    Ok(Some((cut.shaft.mass_g * points_per_g(cut.shaft.balance_point_mm + cap_mm), cut.shaft.mass_g)))
}

fn other_grip(assembly: Assembly<'_>, part: &Part) -> Result<Option<(f64, InsteadWhy)>, TradeError> {
    let model = assembly.library.grip(&part.model)?;
    let mass_g = part.mass_g.unwrap_or(model.mass_g);
    Ok(Some((mass_g * points_per_g(model.centre_mm), InsteadWhy::OtherGrip { grip: model.name.clone() })))
}

/// How a club would come out.
struct Outcome {
    deviation_points: f64,
    tip_g: f64,
}

impl Rest<'_, '_> {
    /// The club with these points in place of a part, with the tip weight that brings it nearest and that the
    /// shop allows. Nothing where another part is lacking too.
    fn with(&self, place: usize, points: f64) -> Option<Outcome> {
        let need = &self.fitting.need;
        let mut bare = need.base_points + points;
        let takes = |i: usize| i != 3 || need.adapters.is_some();
        for (i, part) in self.left.iter().enumerate().filter(|(i, _)| *i != place && takes(*i)) {
            bare += part.as_ref().or_else(|| self.of_all(i)).map(|c| c.points)?;
        }
        let per_g = self.per_tip_g()?;
        let grams = (-bare / per_g).clamp(0.0, need.tip_cap_g).round();
        Some(Outcome { deviation_points: bare + grams * per_g, tip_g: grams })
    }

    /// Where all are taken, one of those that fit speaks for the kind.
    fn of_all(&self, i: usize) -> Option<&Candidate> {
        let need = &self.fitting.need;
        let adapters = need.adapters.as_deref().unwrap_or_default();
        [&need.heads[..], &need.shafts, &need.grips, adapters][i].first()
    }

    /// What a gram in the tip does; a weight sits little below the head.
    fn per_tip_g(&self) -> Option<f64> {
        let scale = self.fitting.need.head_scale?.points_per_g;
        (scale > 0.0).then_some(scale)
    }
}

impl Outcome {
    fn named(&self, kind: PartKind, part: &Part, why: InsteadWhy) -> Instead {
        let (code, tip_g) = (part.code.clone(), self.tip_g);
        let off_points = self.deviation_points.abs();
        let fact = if tip_g > 0.0 {
            InsteadOf::WithTip { part: code.clone(), why, off_points, tip_g }
        } else {
            InsteadOf::WithoutTip { part: code.clone(), why, off_points }
        };
        Instead { kind, code, held_by: None, fact: fact.into(), deviation_points: self.deviation_points, tip_g }
    }
}
