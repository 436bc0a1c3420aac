//! Trying a change: another grip, another length, grams at a place.

use crate::advice::{Advice, Clash};
use quantity::{INCH_MM, OZ_G, SwingWeight};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::kernel::points;
use crate::{
    PhysicsError, check, plausible,
    real::{Dual, Real},
    uncertainty::{Estimate, Inputs, Point, Var, results},
};

/// A change to a club. The parts of it happen in this order: grip, length, added masses.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
#[schema(as = SwingWeightWhatIf)]
pub struct WhatIf {
    /// A grip put on or changed. The part named "grip" comes off for it; on a club given whole say what comes off.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grip: Option<GripChange>,
    /// Length added at the butt in millimetres; negative shortens. The grip stays at the butt: it is the one under
    /// `grip`, else the part named "grip"; where neither is known the whole club is taken as bare.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub longer_mm: Option<f64>,
    /// Standard deviation of `longer_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub longer_mm_sd: Option<f64>,
    /// Density of the shaft at the butt in grams a metre; where left out, length is added or taken without mass.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub butt_density_g_m: Option<f64>,
    /// Thickness of the cap under which the piece of shaft is added or taken, in millimetres; where left out, 3 mm under
    /// a grip (from memory: caps are 2.5 to 3.5 mm), the cap of a grip that is put on a bare club, nothing on a bare club.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cap_mm: Option<f64>,
    /// Masses added, each at a place on the changed club.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub add: Vec<AddedMass>,
}

/// A grip put on a bare club, or one grip for another.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
pub struct GripChange {
    /// Mass of the grip taken off, in grams; nothing for a bare club. Left out where a part is named "grip".
    pub old_mass_g: f64,
    /// Its centre from the butt end, in millimetres. Left out where a part is named "grip".
    pub old_position_mm: f64,
    /// Mass of the new grip in grams; nothing leaves the club bare.
    pub mass_g: f64,
    /// Standard deviation of `mass_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mass_g_sd: Option<f64>,
    /// Its centre from the end of its cap, in millimetres.
    pub position_mm: f64,
    /// Standard deviation of `position_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub position_mm_sd: Option<f64>,
    /// Thickness of the new cap less that of the old one, in millimetres: every arm of the bare club grows by it.
    pub cap_change_mm: f64,
    /// Standard deviation of `cap_change_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cap_change_mm_sd: Option<f64>,
}

/// Grams added at a place; negative takes them away.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AddedMass {
    /// What it is, in the shop's words; it is only handed back.
    #[serde(default)]
    pub name: String,
    /// Mass in grams, up to 4000; negative for what is taken off.
    pub mass_g: f64,
    /// Standard deviation of `mass_g`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mass_g_sd: Option<f64>,
    /// Place from the butt end of the changed club, in millimetres.
    pub position_mm: f64,
    /// Standard deviation of `position_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub position_mm_sd: Option<f64>,
}

/// The club after the change.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct WhatIfOutput {
    /// Moment about the fulcrum in ounce inches.
    pub moment_oz_in: f64,
    /// Standard deviation of `moment_oz_in`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub moment_oz_in_sd: Option<f64>,
    /// Letter form.
    pub letter: String,
    /// Points above A0.
    pub points: f64,
    /// Standard deviation of `points`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub points_sd: Option<f64>,
    /// Points more than before.
    pub change_points: f64,
    /// Standard deviation of `change_points`, in which what both states share cancels.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub change_points_sd: Option<f64>,
    /// Mass of the whole club in grams.
    pub total_mass_g: f64,
    /// Standard deviation of `total_mass_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub total_mass_g_sd: Option<f64>,
    /// Balance point from the butt end in millimetres.
    pub balance_point_mm: f64,
    /// Standard deviation of `balance_point_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub balance_point_mm_sd: Option<f64>,
    /// What each step of the change gave; they add up to `change_points`.
    pub effects: Vec<Effect>,
}

fact::facts! {
    /// A step of a change.
    pub enum ChangeStep: "change_step" {
        /// Another grip.
        Grip,
        /// Another length.
        Length,
        /// A mass that is added or taken off, without a name.
        Mass,
        /// A mass by the name that the input gives it.
        Named {
            /// What the input calls the mass, for example `lead tape`.
            name: String,
        },
    }
}

/// One step of a change.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
#[schema(as = SwingWeightEffect)]
pub struct Effect {
    /// Which step.
    pub step: ChangeStep,
    /// Points it gave.
    pub change_points: f64,
    /// Standard deviation of `change_points`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub change_points_sd: Option<f64>,
}

/// Mass and first moment about the butt end: all that a change needs to know of a club.
#[derive(Debug, Clone, Copy)]
pub(super) struct Whole<T> {
    pub mass_g: T,
    pub first_g_mm: T,
}

impl<T: Real> Whole<T> {
    pub fn moment_oz_in(&self, fulcrum_mm: f64) -> T {
        (self.first_g_mm - self.mass_g * fulcrum_mm) / (INCH_MM * OZ_G)
    }

    fn with(self, mass_g: T, place_mm: T) -> Self {
        Self { mass_g: self.mass_g + mass_g, first_g_mm: self.first_g_mm + mass_g * place_mm }
    }

    /// The butt end moves: every arm grows.
    fn moved(self, by_mm: T) -> Self {
        Self { first_g_mm: self.first_g_mm + self.mass_g * by_mm, ..self }
    }
}

/// A mass and its place.
pub(super) type Hung = (Dual, Dual);

/// Cap of a usual grip (from memory: 2.5 to 3.5 mm).
const USUAL_CAP_MM: f64 = 3.0;

/// The inputs of a change among those of the club.
pub(super) struct Change {
    grip: Option<NewGrip>,
    /// The length, the density of the shaft there, and the cap above it where it is known.
    longer: Option<(Var, f64, Option<f64>)>,
    add: Vec<(String, Var, Var)>,
}

/// A grip put on: what comes off for it, mass and place of the new one, how the cap changes.
#[derive(Clone, Copy)]
struct NewGrip {
    /// Mass and place of a grip that is not among the parts.
    old: Option<[Var; 2]>,
    mass: Var,
    place: Var,
    cap: Var,
}

results! {
    /// The club after the change.
    pub(super) struct Changed {
        moment_oz_in,
        /// Against the club before it.
        change_points,
        mass_g,
        balance_point_mm,
        points,
    }
}

results! {
    /// What one step of the change does.
    pub(super) struct Step { change_points }
}

impl Change {
    /// Checks the change and adds its inputs. `named_g` is the mass of the part named "grip".
    pub fn read(what_if: &WhatIf, named_g: Option<f64>, inputs: &mut Inputs) -> Result<Self, PhysicsError> {
        let grip = what_if.grip.as_ref().map(|grip| read_grip(grip, named_g, inputs)).transpose()?;
        let density_g_m = what_if.butt_density_g_m.unwrap_or(0.0);
        plausible::SHAFT_DENSITY_G_M.check("what_if.butt_density_g_m", density_g_m)?;
        let cap_mm = what_if.cap_mm.map(|cap_mm| plausible::CAP_MM.check("what_if.cap_mm", cap_mm)).transpose()?;
        let longer = what_if.longer_mm.map(|longer_mm| {
            plausible::LENGTHENING_MM.check("what_if.longer_mm", longer_mm)?;
            inputs.add("what_if.longer_mm", longer_mm, what_if.longer_mm_sd)
        });
        let mut add = Vec::new();
        for (i, added) in what_if.add.iter().enumerate() {
            let field = format!("what_if.add[{i}]");
            plausible::PART_MASS_G.check(&format!("{field}.mass_g"), added.mass_g.abs())?;
            plausible::PLACE_MM.check(&format!("{field}.position_mm"), added.position_mm)?;
            let name = if added.name.is_empty() { format!("added mass {}", i + 1) } else { added.name.clone() };
            let mass = inputs.add(format!("{field}.mass_g"), added.mass_g, added.mass_g_sd)?;
            add.push((
                name,
                mass,
                inputs.add(format!("{field}.position_mm"), added.position_mm, added.position_mm_sd)?,
            ));
        }
        Ok(Self { grip, longer: longer.transpose()?.map(|var| (var, density_g_m, cap_mm)), add })
    }

    /// The club after each step. `grip` is the mass and place of the grip that is on it before, where known.
    fn steps(
        &self,
        x: &Point<'_, Dual>,
        club: Whole<Dual>,
        grip: Option<Hung>,
    ) -> Result<Vec<Whole<Dual>>, PhysicsError> {
        let mut states = Vec::with_capacity(2 + self.add.len());
        let mut now = club;
        let zero = Dual::fixed(0.0);
        let mut staying = grip;
        let mut cap_mm = Dual::fixed(if grip.is_some() { USUAL_CAP_MM } else { 0.0 });
        if let Some(NewGrip { old, mass, place, cap }) = self.grip {
            let (off_g, off_mm) = old.map(|[mass, place]| (x[mass], x[place])).or(grip).unwrap_or((zero, zero));
            now = now.with(-off_g, off_mm).moved(x[cap]).with(x[mass], x[place]);
            // The cap is known where the club was bare; else it is the usual one, changed by so much.
            let before_mm = if off_g.value > 0.0 { USUAL_CAP_MM } else { 0.0 };
            cap_mm = x[cap] + before_mm;
            staying = Some((x[mass], x[place]));
            states.push(now);
        }
        if let Some((longer, density_g_m, given_cap_mm)) = self.longer {
            let (grip_g, grip_mm) = staying.unwrap_or((zero, zero));
            let cap_mm = given_cap_mm.map_or(cap_mm, Dual::fixed);
            // Adding: the grip comes off, arms grow, the new piece fills the gap. Taking: with a negative piece. The
            // shaft's end lies under the cap, from the outside of which every place counts.
            let piece_g = x[longer] * (density_g_m / 1000.0);
            let bare = now.with(-grip_g, grip_mm).moved(x[longer]).with(piece_g, cap_mm + x[longer] * 0.5);
            now = bare.with(grip_g, grip_mm);
            states.push(now);
        }
        for (_, mass, place) in &self.add {
            now = now.with(x[*mass], x[*place]);
            states.push(now);
        }
        if let Some(last) = states.last() {
            check::positive("mass of the club after what_if", last.mass_g.value, "g")?;
        }
        Ok(states)
    }

    /// True where the length changes and no grip was named in the change.
    pub fn lengthens_without_grip(&self) -> bool {
        self.longer.is_some() && self.grip.is_none()
    }

    /// Names of the steps.
    pub fn names(&self) -> impl Iterator<Item = ChangeStep> {
        let grip = self.grip.map(|_| ChangeStep::Grip);
        let longer = self.longer.map(|_| ChangeStep::Length);
        let added = self.add.iter().map(|(name, ..)| match name.as_str() {
            "" => ChangeStep::Mass,
            name => ChangeStep::Named { name: name.to_owned() },
        });
        grip.into_iter().chain(longer).chain(added)
    }

    /// The club after the change, and what each step did.
    pub fn results(
        &self,
        x: &Point<'_, Dual>,
        (club, grip): (Whole<Dual>, Option<Hung>),
        fulcrum_mm: f64,
    ) -> Result<(Changed<Dual>, Vec<Step<Dual>>), PhysicsError> {
        let before = points(club.moment_oz_in(fulcrum_mm));
        let states = self.steps(x, club, grip)?;
        let after = states.last().copied().unwrap_or(club);
        let moment = after.moment_oz_in(fulcrum_mm);
        let changed = Changed {
            moment_oz_in: moment,
            change_points: points(moment) - before,
            mass_g: after.mass_g,
            balance_point_mm: after.first_g_mm / after.mass_g,
            points: points(moment),
        };
        let mut last = before;
        let mut steps = Vec::with_capacity(states.len());
        for state in &states {
            let now = points(state.moment_oz_in(fulcrum_mm));
            steps.push(Step { change_points: now - last });
            last = now;
        }
        Ok((changed, steps))
    }

    pub fn output(&self, (changed, steps): (Changed<Estimate>, Vec<Step<Estimate>>)) -> WhatIfOutput {
        let moment_oz_in = changed.moment_oz_in.value;
        let swing_weight = SwingWeight::from_points(points(moment_oz_in));
        let effect = |(name, step): (ChangeStep, Step<Estimate>)| Effect {
            step: name,
            change_points: step.change_points.value,
            change_points_sd: step.change_points.sd,
        };
        WhatIfOutput {
            moment_oz_in,
            moment_oz_in_sd: changed.moment_oz_in.sd,
            letter: swing_weight.to_string(),
            points: swing_weight.points(),
            points_sd: changed.points.sd,
            change_points: changed.change_points.value,
            change_points_sd: changed.change_points.sd,
            total_mass_g: changed.mass_g.value,
            total_mass_g_sd: changed.mass_g.sd,
            balance_point_mm: changed.balance_point_mm.value,
            balance_point_mm_sd: changed.balance_point_mm.sd,
            effects: self.names().zip(steps).map(effect).collect(),
        }
    }
}

fn read_grip(grip: &GripChange, named_g: Option<f64>, inputs: &mut Inputs) -> Result<NewGrip, PhysicsError> {
    plausible::GRIP_MASS_G.check("what_if.grip.old_mass_g", grip.old_mass_g)?;
    plausible::GRIP_CENTRE_MM.check("what_if.grip.old_position_mm", grip.old_position_mm)?;
    plausible::GRIP_MASS_G.check("what_if.grip.mass_g", grip.mass_g)?;
    plausible::GRIP_CENTRE_MM.check("what_if.grip.position_mm", grip.position_mm)?;
    // A cap may also get thinner.
    plausible::CAP_MM.check("what_if.grip.cap_change_mm", grip.cap_change_mm.abs())?;
    let old = match named_g {
        Some(named_g) if grip.old_mass_g != 0.0 && grip.old_mass_g != named_g => {
            return Err(PhysicsError::Contradiction {
                what: Clash::NamedGrip { named_g, off_g: grip.old_mass_g },
                advice: Box::new(Advice::LeaveOldMassOut),
            });
        }
        // The part itself comes off, with what is not known of it.
        Some(_) if grip.old_mass_g == 0.0 => None,
        _ => Some([
            inputs.add("what_if.grip.old_mass_g", grip.old_mass_g, None)?,
            inputs.add("what_if.grip.old_position_mm", grip.old_position_mm, None)?,
        ]),
    };
    Ok(NewGrip {
        old,
        mass: inputs.add("what_if.grip.mass_g", grip.mass_g, grip.mass_g_sd)?,
        place: inputs.add("what_if.grip.position_mm", grip.position_mm, grip.position_mm_sd)?,
        cap: inputs.add("what_if.grip.cap_change_mm", grip.cap_change_mm, grip.cap_change_mm_sd)?,
    })
}
