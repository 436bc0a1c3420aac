//! Length as the Equipment Rules measure woods and irons: on a horizontal plane, the sole against a plane of 60°.
//!
//! Source of the method and limits: Equipment Rules effective 2019, part 2, clause 2.1c. The geometry is derived: in
//! the plane of shaft axis and sole, the shaft axis lies a heel radius r above the horizontal plane; the sole is an arc
//! of radius R that rests on the ground at a distance s from the axis when the club stands at its lie angle. Turning
//! the ground to 60° moves the touching point, and the plane meets the horizontal one at
//! `(s·sin(60° − lie) + R·(1 − cos(60° − lie)))/sin 60° − r/tan 60°` beyond the point where axis and ground line meet.

use crate::advice::Advice;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use crate::{
    PhysicsError, check, plausible,
    real::Real,
    uncertainty::{Estimate, Inputs, Var},
};

/// Inclination of the measuring plane.
const PLANE_DEG: f64 = 60.0;
/// Longest club but putters: 48 in. Source: Equipment Rules, 2.1c.
const LONGEST_MM: f64 = 1219.2;
/// Shortest club: 18 in. Source: Equipment Rules, 2.1c.
const SHORTEST_MM: f64 = 457.2;
/// Optional limit of local rule G-10, 46 in, putters excluded.
const LOCAL_LONGEST_MM: f64 = 1168.4;

/// Lie and heel of a wood or an iron. Putters are not measured this way.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct RulesLengthInput {
    /// Lie angle in degrees, 40 to 80.
    pub lie_deg: f64,
    /// Standard deviation of `lie_deg`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lie_deg_sd: Option<f64>,
    /// Height of the shaft axis above the horizontal plane at the heel, in millimetres: about the hosel's radius.
    pub heel_radius_mm: f64,
    /// From the shaft axis to the point where the sole rests, along the ground toward the toe, in millimetres.
    pub sole_contact_mm: f64,
    /// Radius of the sole from heel to toe in millimetres; nothing pivots about the contact point.
    #[serde(default)]
    pub sole_radius_mm: f64,
}

/// Length by the 60-degree plane, with the room left to the limits. A report of figures, not a ruling.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, ToSchema)]
pub struct RulesLengthOutput {
    /// Length from the planes' intersection to the top of the grip, in millimetres.
    pub length_mm: f64,
    /// Standard deviation of `length_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length_mm_sd: Option<f64>,
    /// What the method adds to the length along the axis to the cap, in millimetres.
    pub beyond_axis_length_mm: f64,
    /// Standard deviation of `beyond_axis_length_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub beyond_axis_length_mm_sd: Option<f64>,
    /// Room below the limit of 48 in (Equipment Rules 2.1c, putters excluded), in millimetres.
    pub below_48_in_mm: f64,
    /// Standard deviation of `below_48_in_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub below_48_in_mm_sd: Option<f64>,
    /// Room below the optional limit of 46 in (local rule G-10, putters excluded), in millimetres.
    pub below_46_in_mm: f64,
    /// Standard deviation of `below_46_in_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub below_46_in_mm_sd: Option<f64>,
    /// Room above the limit of 18 in (Equipment Rules 2.1c), in millimetres.
    pub above_18_in_mm: f64,
    /// Standard deviation of `above_18_in_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub above_18_in_mm_sd: Option<f64>,
}

/// The geometry among the inputs.
#[derive(Clone, Copy)]
pub(super) struct RulesGeometry {
    lie: Var,
    heel_radius_mm: f64,
    sole_contact_mm: f64,
    sole_radius_mm: f64,
}

impl RulesGeometry {
    pub fn read(input: &RulesLengthInput, inputs: &mut Inputs) -> Result<Self, PhysicsError> {
        const STEEPEST_DEG: f64 = 80.0;
        const FLATTEST_DEG: f64 = 40.0;
        let advice = Advice::LieOfWoodOrIron;
        check::at_least("finished.rules.lie_deg", input.lie_deg, FLATTEST_DEG, "deg", advice.clone())?;
        check::at_most("finished.rules.lie_deg", input.lie_deg, STEEPEST_DEG, "deg", advice)?;
        Ok(Self {
            lie: inputs.add("finished.rules.lie_deg", input.lie_deg, input.lie_deg_sd)?,
            heel_radius_mm: plausible::HEEL_RADIUS_MM.check("finished.rules.heel_radius_mm", input.heel_radius_mm)?,
            sole_contact_mm: plausible::SOLE_CONTACT_MM
                .check("finished.rules.sole_contact_mm", input.sole_contact_mm)?,
            sole_radius_mm: plausible::SOLE_RADIUS_MM.check("finished.rules.sole_radius_mm", input.sole_radius_mm)?,
        })
    }

    pub fn lie(&self) -> Var {
        self.lie
    }

    /// What the method adds to the length along the axis to the cap.
    pub fn beyond_axis_length_mm<T: Real>(&self, lie_deg: T) -> T {
        beyond_axis_length(lie_deg, self.heel_radius_mm, self.sole_contact_mm, self.sole_radius_mm)
    }
}

fn beyond_axis_length<T: Real>(lie_deg: T, heel_radius_mm: f64, sole_contact_mm: f64, sole_radius_mm: f64) -> T {
    let plane = PLANE_DEG.to_radians();
    let turn = (-lie_deg + PLANE_DEG) * 1f64.to_radians();
    let touch = turn.sin() * sole_contact_mm + (-turn.cos() + 1.0) * sole_radius_mm;
    touch / plane.sin() - heel_radius_mm / plane.tan()
}

/// What the 60-degree plane adds to the length along the shaft axis to the cap, millimetres; negative where it takes away.
/// The figures are those of [`RulesLengthInput`]; whether they are plausible is the caller's to check.
///
/// # Examples
///
/// ```
/// use clubphysics::trim::beyond_axis_length_mm;
///
/// // A driver that rests 55 mm from its shaft axis, at a lie of 54°, is longer by the rules than along its axis.
/// assert!((beyond_axis_length_mm(54.0, 6.0, 55.0, 300.0) - 5.07).abs() < 0.01);
/// // At the plane's own angle only the hosel's radius counts: 6 mm / tan 60°.
/// assert!((beyond_axis_length_mm(60.0, 6.0, 55.0, 300.0) + 3.46).abs() < 0.01);
/// ```
#[must_use]
pub fn beyond_axis_length_mm(lie_deg: f64, heel_radius_mm: f64, sole_contact_mm: f64, sole_radius_mm: f64) -> f64 {
    beyond_axis_length(lie_deg, heel_radius_mm, sole_contact_mm, sole_radius_mm)
}

impl RulesLengthOutput {
    /// From the length and what of it lies beyond the length along the axis.
    pub(super) fn new(length: Estimate, beyond_axis_length: Estimate) -> Self {
        // The limits are exact: the room to them is as sure as the length.
        Self {
            length_mm: length.value,
            length_mm_sd: length.sd,
            beyond_axis_length_mm: beyond_axis_length.value,
            beyond_axis_length_mm_sd: beyond_axis_length.sd,
            below_48_in_mm: LONGEST_MM - length.value,
            below_48_in_mm_sd: length.sd,
            below_46_in_mm: LOCAL_LONGEST_MM - length.value,
            below_46_in_mm_sd: length.sd,
            above_18_in_mm: length.value - SHORTEST_MM,
            above_18_in_mm_sd: length.sd,
        }
    }
}
