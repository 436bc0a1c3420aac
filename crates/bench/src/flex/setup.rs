//! One club in the clamp: what it should read before anything was read, and how that moves with what is not known.

use super::profile::{shape_keys, with_shape};
use super::shaft::{InHand, RawShaft};
use super::{Known, PERCENT, StiffnessFrom};
use crate::assembly::{Assembly, in_head};
use crate::learned::{CLAMP_GIVES_MM, GRIP_GIVES_MM, ValueKey};
use clubphysics::vibration::{ClampedMode, RigidTip};
use estimation::Share;
use quantity::INCH_MM;
use trade::error::TradeError;
use trade::job::JobClub;
use trade::kind::Role;
use trade::model::PartKind;
use trade::places::{HEAD_INERTIA_KG_CM2, Places};
use trade::plan::ClubPlan;
use trade::reading::What;

/// Finite elements of the shaft: sixteen bring the frequency within 1e-4 of itself.
const ELEMENTS: usize = 16;
/// Standard deviations of a saw cut and of a cut length that was read with a rule, mm.
const CUT_SD_MM: f64 = 0.8;
const READ_SD_MM: f64 = 0.4;
/// Mass of a weighed head and of one that is not, g.
const HEAD_SD_G: (f64, f64) = (0.1, 2.0);
/// A head's own inertia across the shaft's axis, g·cm².
const HEAD_INERTIA_G_CM2: (f64, f64) = (HEAD_INERTIA_KG_CM2.0 * 1000.0, HEAD_INERTIA_KG_CM2.1 * 1000.0);

/// What is in the clamp.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum InClamp<'a> {
    /// The raw shaft with the shop's weight at its tip, before any cut.
    Raw,
    /// The cut shaft with these pieces on it; without a head among them, with the shop's weight at its tip.
    Cut(&'a [Role]),
}

/// A reading as a straight line of what is not known, in hundredths of the logarithm of cycles a minute.
#[derive(Debug, Clone)]
pub(super) struct Linear {
    /// Reading less the sum of the shares.
    pub constant: f64,
    pub shares: Vec<Share>,
    /// The mode that it was made from.
    pub mode: ClampedMode,
}

/// A club with its shaft as a spring.
#[derive(Debug, Clone)]
pub(super) struct Setup<'a> {
    pub assembly: Assembly<'a>,
    pub club: &'a JobClub,
    pub plan: &'a ClubPlan,
    pub raw: RawShaft,
    /// The length of the cut shaft as it was read, mm.
    pub read_mm: Option<f64>,
    /// More cut off the tip than the plan says, and as much less off the butt, mm.
    pub more_tip_mm: f64,
}

impl<'a> Setup<'a> {
    /// None where the club has no plan, its shaft came with it from elsewhere, or its model has no blank for it.
    pub(super) fn of(assembly: Assembly<'a>, club: &'a JobClub, read_mm: Option<f64>) -> Option<Self> {
        let plan = club.plan.as_ref()?;
        let model = assembly.library.shaft(&plan.part(PartKind::Shaft)?.model).ok()?;
        if trade::model::as_it_came::is(&model.code) {
            return None;
        }
        let part = plan.part(PartKind::Shaft)?;
        let shaft = InHand {
            blank: model.blank(plan.neighbour_blank.as_deref().unwrap_or(&club.target.number))?,
            mass_g: part.mass_g,
            length_mm: plan.cut_shaft_mm + plan.butt_cut_mm + plan.tip_trim_mm,
            balance_mm: None,
            tip_lost_mm: part.tip_lost_mm.unwrap_or(0.0),
            profile: part.profile.as_ref(),
        };
        let raw = RawShaft::of(model, shaft);
        Some(Self { assembly, club, plan, raw, read_mm, more_tip_mm: 0.0 })
    }

    /// Code of the shaft's model.
    pub(super) fn shaft_model(&self) -> &str {
        self.plan.part(PartKind::Shaft).map_or("", |part| &part.model)
    }

    fn head_key(&self) -> String {
        format!("flex_head:{}", self.plan.part(PartKind::Head).map_or("", |part| &part.model))
    }

    /// What the club's reading is made of, with the standard deviation that each has where nothing was learned of it.
    pub(super) fn keys(&self) -> Result<Vec<(String, f64)>, TradeError> {
        let shaft = self.shaft_model().to_owned();
        let mut keys = vec![
            (ValueKey::Stiffness(shaft.clone()).to_string(), self.raw.level_sd),
            (ValueKey::StiffnessTilt(shaft).to_string(), self.raw.tilt_sd),
            (ValueKey::ClampGives.to_string(), CLAMP_GIVES_MM.1 / INCH_MM),
            (ValueKey::GripGives.to_string(), GRIP_GIVES_MM.1 / INCH_MM),
            (self.head_key(), self.head_place()?.1),
            (super::piece_key(&self.club.id), self.assembly.stiffness_piece_sd()),
            (super::build_key(&self.club.id), 1.0),
        ];
        if self.raw.from == StiffnessFrom::Profile {
            keys.extend(shape_keys(&self.club.id).map(|key| (key, 1.0)));
        }
        Ok(keys)
    }

    /// Where the head's centre lies beyond the ground point, as learned, mm, and what is not known of it.
    fn head_place(&self) -> Result<(f64, f64), TradeError> {
        let Some(part) = self.plan.part(PartKind::Head) else { return Ok((0.0, 0.0)) };
        let (mean, sd) = self.assembly.library.head(&part.model)?.offset_prior_mm();
        let learned = self.assembly.learned;
        let at = learned.position(&ValueKey::Delta(part.model.clone()).to_string());
        Ok(at.map_or((mean, sd), |at| {
            (mean + learned.values[at].mean_shift * INCH_MM, learned.covariance[at][at].max(0.0).sqrt() * INCH_MM)
        }))
    }

    /// The reading of what is in the clamp; none for a bare shaft where the shop has not said what hangs at its tip.
    pub(super) fn linear(&self, what: InClamp<'_>, known: &Known<'_>) -> Result<Option<Linear>, TradeError> {
        let clamp = &self.assembly.shop.clamp;
        let on: &[Role] = if let InClamp::Cut(on) = what { on } else { &[] };
        let gripped = on.contains(&Role::Grip);
        let with_head = on.contains(&Role::Head);
        let tip_end_mm = self.raw.length_mm - self.tip_cut_mm(what);
        let butt_mm = match what {
            InClamp::Raw => 0.0,
            InClamp::Cut(_) => tip_end_mm - self.read_mm.unwrap_or(self.plan.cut_shaft_mm),
        };
        let Some((body, end_mm)) = (if with_head {
            Some(self.head_body(on, tip_end_mm)?)
        } else {
            clamp.test_weight_g.map(|mass_g| (Body::of(&[(mass_g, clamp.test_weight_centre_mm)]), tip_end_mm))
        }) else {
            return Ok(None);
        };
        let cap_mm = if gripped { self.assembly.library.grip(&self.club.target.grip_model)?.cap_mm } else { 0.0 };
        let keys = self.keys()?;
        let shaft = [&keys[0].0, &keys[1].0, &keys[2].0, &keys[3].0, &keys[4].0];
        let before = shaft.map(|key| known.mean(key));
        // What clamp and grip give is kept in inches, as all lengths that the shop learns.
        let grip_mm = if gripped { GRIP_GIVES_MM.0 + before[3] * INCH_MM } else { 0.0 };
        let gives_mm = CLAMP_GIVES_MM.0 + before[2] * INCH_MM + grip_mm;
        let held_mm = clamp.held_mm - cap_mm - gives_mm;
        let inertia_g_cm2 = if with_head { HEAD_INERTIA_G_CM2.0 } else { 0.0 };
        let tip = RigidTip {
            mass_kg: body.mass_g / 1000.0,
            offset_m: body.centre_mm / 1000.0,
            inertia_kg_m2: body.inertia_g_mm2 * 1e-9 + inertia_g_cm2 * 1e-7,
        };
        let own = self.raw.measured(known, &keys);
        let line = self.raw.line(before[1], own.as_ref())?;
        let (mode, bending) =
            ClampedMode::with_bending(&line, (butt_mm + held_mm) / 1000.0, end_mm / 1000.0, tip, ELEMENTS)?;
        let mut shares = vec![
            share(shaft[0], 0.5 * PERCENT),
            share(shaft[1], mode.by_tilt * PERCENT),
            share(shaft[2], mode.by_free_mm * INCH_MM * PERCENT),
            share(&keys[5].0, 0.5 * PERCENT),
        ];
        if gripped {
            shares.push(share(shaft[3], mode.by_free_mm * INCH_MM * PERCENT));
        }
        if with_head {
            let head_g = self.plan.mass_g(Role::Head);
            let beyond_m = self.head_beyond_mm(tip_end_mm, end_mm)? / 1000.0;
            shares.push(share(shaft[4], mode.by_place_mm(head_g / 1000.0, beyond_m) * PERCENT));
        }
        if let InClamp::Cut(_) = what {
            shares.push(share(&keys[6].0, self.build_sd(&mode, with_head)));
        }
        // The stiffness enters the logarithm as it is; all else was worked out at what is expected of it.
        let at_means: f64 = shares.iter().map(|s| s.gain * known.mean(&s.key)).sum();
        let level = 0.5 * PERCENT * before[0];
        let linear = Linear { constant: mode.ln_cpm * PERCENT + level - at_means, shares, mode };
        Ok(Some(match own {
            Some(own) => with_shape(self, linear, &own, &bending),
            None => linear,
        }))
    }

    /// What had been cut off the tip when this was read, mm.
    fn tip_cut_mm(&self, what: InClamp<'_>) -> f64 {
        match what {
            InClamp::Raw => 0.0,
            InClamp::Cut(_) => self.plan.tip_trim_mm + self.more_tip_mm,
        }
    }

    /// Standard deviation by the cuts of a club and by its head, hundredths.
    fn build_sd(&self, mode: &ClampedMode, with_head: bool) -> f64 {
        let length_sd_mm = if self.read_mm.is_some() { READ_SD_MM } else { CUT_SD_MM };
        let head = if with_head {
            let weighed = self.plan.part(PartKind::Head).is_some_and(|part| part.weighed);
            let sd_g = if weighed { HEAD_SD_G.0 } else { HEAD_SD_G.1 };
            let mass = mode.by_mass_g(mode.tip().offset_m) * sd_g;
            mass.hypot(mode.by_inertia_g_cm2() * HEAD_INERTIA_G_CM2.1)
        } else {
            0.0
        };
        let cuts = (mode.by_free_mm * length_sd_mm).hypot(mode.by_tip_trim_mm * CUT_SD_MM);
        (head.hypot(cuts) * PERCENT).max(0.05)
    }

    /// Where the free shaft ends in a head, mm from the raw butt: at the mouth of its bore, within which nothing bends.
    fn places(&self, tip_end_mm: f64) -> Result<(Places, f64), TradeError> {
        let part = self.plan.part(PartKind::Head).map_or("", |part| &part.model);
        let depth_mm = self.assembly.library.head(part)?.bore_depth_mm;
        Ok((Places::new(tip_end_mm, self.plan.tip_to_ground_mm, depth_mm), tip_end_mm - depth_mm))
    }

    fn head_beyond_mm(&self, tip_end_mm: f64, end_mm: f64) -> Result<f64, TradeError> {
        Ok(self.places(tip_end_mm)?.0.head_mm(self.head_place()?.0) - end_mm)
    }

    /// Everything beyond the mouth of the bore as one rigid body, and where that mouth is.
    fn head_body(&self, on: &[Role], tip_end_mm: f64) -> Result<(Body, f64), TradeError> {
        let (places, end_mm) = self.places(tip_end_mm)?;
        let library = self.assembly.library;
        let mut pieces = Vec::new();
        let screws: f64 = self.plan.extras.iter().filter(|extra| in_head(extra)).map(|extra| extra.mass_g).sum();
        let (offset_mm, _) = self.head_place()?;
        pieces.push((self.plan.mass_g(Role::Head) + screws, places.head_mm(offset_mm) - end_mm));
        // What was added near the tip swings with it; what sits under the hands does not.
        let low = |arm_mm: f64| arm_mm > 0.7 * self.plan.cut_shaft_mm;
        let extras = self.plan.extras.iter().filter(|extra| !in_head(extra) && low(extra.arm_mm));
        pieces.extend(extras.map(|e| (e.mass_g, tip_end_mm - self.plan.cut_shaft_mm + e.arm_mm - end_mm)));
        if on.contains(&Role::Adapter)
            && let Some(part) = self.plan.part(PartKind::Adapter)
        {
            pieces.push((part.mass_g, places.adapter_mm(library.adapter(&part.model)?.length_mm) - end_mm));
        }
        if on.contains(&Role::TipWeight) {
            pieces.push((self.plan.mass_g(Role::TipWeight), tip_end_mm - 10.0 - end_mm));
        }
        if on.contains(&Role::Ferrule) {
            pieces.push((self.plan.mass_g(Role::Ferrule), 0.0));
        }
        if on.contains(&Role::Adhesive)
            && let Some(code) = self.club.target.adhesive_in(self.assembly.shop)
        {
            let model = library.adhesive(code)?;
            let mass_g = self.assembly.learned.joint_mass_g(model).unwrap_or(model.joint_mass_g);
            pieces.push((mass_g, places.adhesive_mm() - end_mm));
        }
        let stub_mm = tip_end_mm - end_mm;
        pieces.push((self.raw.mass_before_g(tip_end_mm, stub_mm), stub_mm / 2.0));
        Ok((Body::of(&pieces), end_mm))
    }

    /// The latest believed length of the cut shaft among these readings, mm.
    pub(super) fn read_length_mm(
        club: &JobClub,
        readings: &[&trade::reading::Reading],
        aside: &[String],
    ) -> Option<f64> {
        let of_club = |r: &&&trade::reading::Reading| {
            r.club == club.id && r.what == What::ShaftLength && !aside.iter().any(|id| id == r.id.as_str())
        };
        readings.iter().rev().find(of_club).map(|r| r.value)
    }
}

pub(super) fn share(key: &str, gain: f64) -> Share {
    Share { key: key.to_owned(), gain }
}

/// Several masses as one rigid body.
#[derive(Debug, Clone, Copy)]
struct Body {
    mass_g: f64,
    centre_mm: f64,
    inertia_g_mm2: f64,
}

impl Body {
    fn of(pieces: &[(f64, f64)]) -> Self {
        let mass_g: f64 = pieces.iter().map(|(m, _)| m).sum();
        let centre_mm = pieces.iter().map(|(m, x)| m * x).sum::<f64>() / mass_g.max(1e-9);
        let inertia_g_mm2 = pieces.iter().map(|(m, x)| m * (x - centre_mm).powi(2)).sum();
        Self { mass_g, centre_mm, inertia_g_mm2 }
    }
}
