//! The law that ties the clubs of a set together, and what one fitted club gives to the others.

use crate::mass_model::{Ingredients, MassModel};
use crate::short_sheet::clubs::{Roster, Seat, family};
use crate::short_sheet::words::{Atom, Word};
use crate::short_sheet::{
    ExpandContext, Expanded, Groups, Origin, ShortError, Slot, SwingWeightFrom, WedgeFrom, WordFault,
};
use quantity::{A0_POINTS, FULCRUM_IN, INCH_MM, POINT_G_IN, round_to};
use trade::club_name::ClubName;
use trade::error::TradeError;
use trade::kind::{ClubKind, LengthTo};
use trade::sheet::{ReferenceClub, SetRule};

/// The fitted club, with the seat it takes in the set's models.
pub(super) struct Fitted<'a> {
    pub seat: Seat<'a>,
    read: ReferenceClub,
}

impl<'a> Fitted<'a> {
    pub(super) fn of(read: &ReferenceClub, roster: &Roster<'a>, ctx: &ExpandContext<'a>) -> Result<Self, ShortError> {
        let plain = read.number.trim().to_uppercase();
        let suffix = plain.chars().last().filter(|_| plain.starts_with(|c: char| c.is_ascii_digit()));
        let (number, kind) = match suffix {
            Some('W') => (plain.trim_end_matches('W').to_owned(), Some(ClubKind::Wood)),
            Some('H') => (plain.trim_end_matches('H').to_owned(), Some(ClubKind::Hybrid)),
            Some('I') => (plain.trim_end_matches('I').to_owned(), Some(ClubKind::Iron)),
            _ => (plain.clone(), None),
        };
        let found = roster.find(&Atom { number, kind });
        match found.as_slice() {
            [seat] => Ok(Self { seat: *seat, read: read.clone() }),
            [] => Err(ShortError::FittedUnknown { number: read.number.clone(), known: ctx.models.heads.clone() }),
            _ => Err(ShortError::FittedSeveral { number: read.number.clone() }),
        }
    }

    /// The fitted club, and how much its lie differs from its chart, degrees.
    pub(super) fn lie_offset(&self) -> Option<(ClubName, f64)> {
        let lie_deg = self.read.lie_deg.filter(|v| v.is_finite())?;
        Some((self.seat.name(), lie_deg - self.seat.number.lie_deg))
    }

    /// The same of its loft.
    pub(super) fn loft_offset(&self) -> Option<(ClubName, f64)> {
        let loft_deg = self.read.loft_deg.filter(|v| v.is_finite())?;
        Some((self.seat.name(), loft_deg - self.seat.number.loft_deg))
    }

    /// How much longer it is than its chart, both to the same end.
    pub(super) fn length_offset_mm(&self, ctx: &ExpandContext<'a>) -> Result<Option<f64>, ShortError> {
        let Some(length_mm) = self.read.length_mm.filter(|v| v.is_finite()) else { return Ok(None) };
        let Some(to) = self.read.length_to else {
            return Err(ShortError::FittedLengthEnd);
        };
        let shift_mm = match (to, self.seat.head.chart_length_to) {
            (LengthTo::Cap, LengthTo::ShaftEnd) => -self.cap_mm(ctx)?,
            (LengthTo::ShaftEnd, LengthTo::Cap) => self.cap_mm(ctx)?,
            _ => 0.0,
        };
        Ok(Some(length_mm + shift_mm - self.seat.number.chart.length_mm))
    }

    fn cap_mm(&self, ctx: &ExpandContext<'a>) -> Result<f64, ShortError> {
        let of_model = |code: &String| ctx.library.grip(code).ok().map(|g| g.cap_mm);
        self.read
            .cap_mm
            .or_else(|| self.read.grip_model.as_ref().and_then(of_model))
            .ok_or(ShortError::FittedCapUnknown)
    }

    /// Its swing weight as read, or from its mass and balance point.
    pub(super) fn swing_weight_points(&self) -> Option<f64> {
        let from_mass = || {
            let (mass_g, at_mm) = (self.read.total_mass_g?, self.read.balance_point_mm?);
            Some(mass_g * (at_mm / INCH_MM - FULCRUM_IN) / POINT_G_IN - A0_POINTS)
        };
        self.read.swing_weight_points.or_else(from_mass).filter(|v| v.is_finite())
    }
}

/// Gives every club its swing weight by the rule of the set.
pub(super) fn apply<'a>(
    clubs: &mut [Expanded],
    groups: &Groups<'a>,
    ctx: &ExpandContext<'a>,
    rule: SetRule,
    fitted: Option<&Fitted<'a>>,
) -> Result<(), ShortError> {
    match rule {
        SetRule::ConstantSwingWeight => refuse_several_swing_weights(groups)?,
        SetRule::SteppedSwingWeight => require_step(groups)?,
        SetRule::EqualInertia => refuse_written_swing_weight(groups)?,
        SetRule::AsWritten => {}
    }
    let seated = groups.seated();
    let equal = if rule == SetRule::EqualInertia { Some(Inertia::of(clubs, &seated, ctx, fitted)?) } else { None };
    for (made, &(seat, group)) in clubs.iter_mut().zip(&seated) {
        let (mut points, from) = match &equal {
            Some(inertia) => inertia.swing_weight(made, seat, ctx)?,
            None => written_swing_weight(groups, seat, group, fitted)?,
        };
        if let SwingWeightFrom::EqualInertia { inertia_kg_cm2, .. } = &from {
            made.club.inertia_kg_cm2 = Some(round_to(*inertia_kg_cm2, 1));
        }
        if let Some(said) = groups.said(group, Slot::WedgeOffset)
            && let Word::WedgeOffset(by) = said.word
            && seat.is_wedge()
        {
            points += by;
            // What is asked beside the others is no longer equal to them.
            made.club.inertia_kg_cm2 = None;
            let with_offset = WedgeFrom::Offset { what: from, text: said.text.clone() };
            made.origins.push(Origin::new("swing_weight_points", &with_offset));
        } else {
            made.origins.push(Origin::new("swing_weight_points", &from));
        }
        made.club.swing_weight_points = round_to(points, 6);
    }
    if rule == SetRule::ConstantSwingWeight {
        refuse_unequal(clubs, &seated)?;
    }
    Ok(())
}

/// Swing weight as written (with its step), as the fitted club, or as the chart.
fn written_swing_weight<'a>(
    groups: &Groups<'a>,
    seat: Seat<'a>,
    group: usize,
    fitted: Option<&Fitted<'a>>,
) -> Result<(f64, SwingWeightFrom), ShortError> {
    let fitted = fitted.filter(|f| f.seat.family() == seat.family());
    let read = fitted.and_then(|f| f.swing_weight_points().map(|points| (f, points)));
    if let Some(said) = groups.said(group, Slot::SwingWeight)
        && let Word::SwingWeight(start, by) = said.word
    {
        let Some(start) = start else {
            let by = by.unwrap_or(0.0);
            let Some((f, points)) = read else {
                return Err(ShortError::word(&said.text, said.at, WordFault::NoFittedClub));
            };
            // Counted over the clubs of the models, so that the fitted club itself keeps its reading.
            let steps = seat.place as f64 - f.seat.place as f64;
            let (text, club) = (said.text.clone(), f.seat.name());
            let from = SwingWeightFrom::WrittenFromFitted { text, fitted_points: points, club };
            return Ok((points + by * steps, from));
        };
        let steps = groups.steps_before(seat, group, Slot::SwingWeight) as f64;
        let from = SwingWeightFrom::Written { text: said.text.clone() };
        return Ok((start + by.unwrap_or(0.0) * steps, from));
    }
    Ok(match read {
        Some((f, points)) => (points, SwingWeightFrom::Fitted { fitted_points: points, club: f.seat.name() }),
        None => {
            let chart_points = seat.number.chart.swing_weight_points;
            (chart_points, SwingWeightFrom::Chart { chart_points })
        }
    })
}

fn refuse_several_swing_weights(groups: &Groups<'_>) -> Result<(), ShortError> {
    let mut first: Option<f64> = None;
    for (_, group) in groups.seated() {
        let Some(said) = groups.said(group, Slot::SwingWeight) else { continue };
        let Word::SwingWeight(start, by) = said.word else { continue };
        if by.is_some() {
            return Err(ShortError::word(&said.text, said.at, WordFault::StepsUnderOneSwingWeight));
        }
        if let (Some(a), Some(b)) = (first, start)
            && (a - b).abs() > 1e-9
        {
            return Err(ShortError::word(&said.text, said.at, WordFault::SecondSwingWeight { first_points: a }));
        }
        first = first.or(start);
    }
    Ok(())
}

/// One swing weight for each kind of club: the charts may not bring in a second one unseen.
fn refuse_unequal(clubs: &[Expanded], seated: &[(Seat<'_>, usize)]) -> Result<(), ShortError> {
    let plain = || clubs.iter().zip(seated).filter(|(_, (seat, _))| !seat.is_wedge());
    for (a, (seat_a, _)) in plain() {
        for (b, (seat_b, _)) in plain() {
            if seat_a.family() == seat_b.family()
                && (a.club.swing_weight_points - b.club.swing_weight_points).abs() > 1e-6
            {
                return Err(ShortError::UnequalSwingWeights {
                    number: a.club.number.clone(),
                    first_points: a.club.swing_weight_points,
                    other: b.club.number.clone(),
                    other_points: b.club.swing_weight_points,
                });
            }
        }
    }
    Ok(())
}

fn require_step(groups: &Groups<'_>) -> Result<(), ShortError> {
    let stepped = groups.seated().iter().any(|(_, group)| {
        groups.said(*group, Slot::SwingWeight).is_some_and(|s| matches!(s.word, Word::SwingWeight(_, Some(_))))
    });
    if stepped { Ok(()) } else { Err(ShortError::NoStep) }
}

fn refuse_written_swing_weight(groups: &Groups<'_>) -> Result<(), ShortError> {
    for (_, group) in groups.seated() {
        if let Some(said) = groups.said(group, Slot::SwingWeight) {
            return Err(ShortError::word(&said.text, said.at, WordFault::SwingWeightUnderInertia));
        }
    }
    Ok(())
}

/// The moment of inertia that the fitted club has, for all clubs of its kind.
struct Inertia {
    kg_cm2: f64,
    number: String,
    club: ClubName,
    family: u8,
}

impl Inertia {
    /// From the fitted club's swing weight: the head that its length, shaft and grip need for it, and the inertia of that.
    fn of<'a>(
        clubs: &[Expanded],
        seated: &[(Seat<'a>, usize)],
        ctx: &ExpandContext<'a>,
        fitted: Option<&Fitted<'a>>,
    ) -> Result<Self, ShortError> {
        let Some((fitted, points)) = fitted.and_then(|f| f.swing_weight_points().map(|points| (f, points))) else {
            return Err(ShortError::InertiaNeedsFitted);
        };
        // The set's own club of that number, else its nearest relative of the same kind, carries shaft and grip.
        let own = seated.iter().position(|(s, _)| s.place == fitted.seat.place);
        let relative = own.or_else(|| seated.iter().position(|(s, _)| s.family() == fitted.seat.family()));
        let Some(index) = relative else {
            return Err(ShortError::FittedOtherKind { number: fitted.seat.number.number.clone() });
        };
        let mut club = clubs[index].club.clone();
        club.number.clone_from(&fitted.seat.number.number);
        club.head_model.clone_from(&fitted.seat.head.code);
        if let Some(grip) = fitted.read.grip_model.as_ref().filter(|g| ctx.library.grip(g).is_ok()) {
            club.grip_model.clone_from(grip);
        }
        club.length_to = fitted.seat.head.chart_length_to;
        club.length_mm = fitted.seat.number.chart.length_mm;
        if let Some(by_mm) = fitted.length_offset_mm(ctx)? {
            club.length_mm += by_mm;
        } else if own.is_some() {
            (club.length_mm, club.length_to) = (clubs[index].club.length_mm, clubs[index].club.length_to);
        }
        let model = model_of(&Expanded { club, origins: Vec::new() }, ctx)?;
        let kg_cm2 = model.inertia_kg_cm2(model.head_for_swing_weight_g(points));
        let (seat, number) = (fitted.seat, fitted.seat.number.number.clone());
        Ok(Self { kg_cm2, number, club: seat.name(), family: seat.family() })
    }

    fn swing_weight<'a>(
        &self,
        made: &Expanded,
        seat: Seat<'a>,
        ctx: &ExpandContext<'a>,
    ) -> Result<(f64, SwingWeightFrom), ShortError> {
        if family(seat.head.club_kind) != self.family {
            let chart_points = seat.number.chart.swing_weight_points;
            return Ok((chart_points, SwingWeightFrom::ChartOfOtherKind { chart_points }));
        }
        let model = model_of(made, ctx)?;
        let head_g = model.head_for_inertia_g(self.kg_cm2);
        if !(head_g.is_finite() && head_g > 0.0) {
            return Err(ShortError::NoHeadForInertia { number: made.club.number.clone(), fitted: self.number.clone() });
        }
        // The sheet is read to a tenth of a point.
        let points = round_to(model.swing_weight_points(head_g, 0.0), 1);
        let from = SwingWeightFrom::EqualInertia {
            swing_weight_points: points,
            inertia_kg_cm2: self.kg_cm2,
            club: self.club.clone(),
            head_g,
        };
        Ok((points, from))
    }
}

fn model_of(made: &Expanded, ctx: &ExpandContext<'_>) -> Result<MassModel, ShortError> {
    let build = || -> Result<MassModel, TradeError> {
        MassModel::of(&Ingredients::of_sheet(&made.club, ctx.library, ctx.shop)?)
    };
    build().map_err(|e| ShortError::InertiaNeedsModels { what: e.refusal() })
}
