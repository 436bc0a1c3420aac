//! The head, as a model: its numbers, chart and screws.

use crate::error::Entry;
use crate::error::TradeError;
use crate::error::within;
use crate::kind::{ClubKind, Hand, LengthTo};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A head model with all its numbers.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct HeadModel {
    /// The shop's short code.
    #[schema(min_length = 1, max_length = 32, pattern = r"^[A-Za-z0-9._-]+$")]
    pub code: String,
    /// Name on the box.
    #[schema(min_length = 1, pattern = r"\S")]
    pub name: String,
    /// Free label of the shop.
    #[serde(default)]
    pub label: String,
    /// What sort of club it makes.
    pub club_kind: ClubKind,
    /// Whether it is for right-handed or left-handed players.
    pub hand: Hand,
    /// How wide the hosel is inside, where the shaft's tip goes in.
    #[schema(minimum = 6, maximum = 20)]
    pub bore_diameter_mm: f64,
    /// Depth of the bore: how far the shaft's tip goes in.
    #[schema(minimum = 10, maximum = 80)]
    pub bore_depth_mm: f64,
    /// Where the head's centre lies along the shaft axis beyond the point where the axis meets the ground (negative:
    /// toward the butt). Left out: the prior of the club kind.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(minimum = -40, maximum = 40)]
    pub offset_mm: Option<f64>,
    /// Standard deviation of `offset_mm`. Left out: the prior of the club kind.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0, maximum = 20)]
    pub offset_sd_mm: Option<f64>,
    /// Scatter of single heads about the mass of their number, where it is known to be more or less than a maker's usual one;
    /// left out: the usual one, 1.5 to 2 g.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0, maximum = 20)]
    pub mass_sd_g: Option<f64>,
    /// How high the shaft axis lies above a table that heel and sole touch: about the hosel's outside radius. Left out: the
    /// usual figure of the kind stands in where the rules' measure of length is told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0, maximum = 30)]
    pub heel_radius_mm: Option<f64>,
    /// From the shaft axis to where the sole rests on the ground, toward the toe. Left out: as for `heel_radius_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0, maximum = 150)]
    pub sole_contact_mm: Option<f64>,
    /// Radius of the sole from heel to toe; large for a flat one. Left out: as for `heel_radius_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0, maximum = 20000)]
    pub sole_radius_mm: Option<f64>,
    /// How far the maker allows loft or lie to be bent; 0 where it must not be bent.
    #[schema(minimum = 0, maximum = 8)]
    pub bend_limit_deg: f64,
    /// Screws that can be swapped to change the mass; empty where there are none.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub screws: Vec<ScrewOption>,
    /// Whether the shaft goes into an adapter and not straight into the bore.
    #[serde(default)]
    pub takes_adapter: bool,
    /// What the lengths of the chart are measured to.
    pub chart_length_to: LengthTo,
    /// The numbers of the model.
    #[schema(min_items = 1)]
    pub numbers: Vec<HeadNumber>,
}

/// One number of a head model.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct HeadNumber {
    /// "4", "P", "56" …
    pub number: String,
    /// Nominal mass.
    #[schema(minimum = 120, maximum = 600)]
    pub mass_g: f64,
    /// Nominal loft.
    #[schema(minimum = 0, maximum = 80)]
    pub loft_deg: f64,
    /// Nominal lie.
    #[schema(minimum = 40, maximum = 80)]
    pub lie_deg: f64,
    /// Nominal bounce, where the maker gives it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(minimum = -10, maximum = 30)]
    pub bounce_deg: Option<f64>,
    /// From the bottom of the bore to the point where the shaft axis meets the ground.
    #[schema(minimum = 0, maximum = 80)]
    pub bore_to_ground_mm: f64,
    /// The maker's standard build of this number.
    pub chart: ChartEntry,
}

/// The maker's standard build of one number: what a short sheet is relative to.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ChartEntry {
    /// Standard length.
    #[schema(minimum = 400, maximum = 1300)]
    pub length_mm: f64,
    /// Standard swing weight, in points since A0 (`D2` = 32).
    #[schema(minimum = -60, maximum = 160)]
    #[serde(alias = "balance_points")]
    pub swing_weight_points: f64,
}

/// A screw that can be swapped.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ScrewOption {
    /// What is stamped on it.
    pub label: String,
    /// What the screw weighs.
    #[schema(minimum = 0.1, maximum = 60)]
    pub mass_g: f64,
}

impl HeadModel {
    /// The entry of one number.
    #[must_use]
    pub fn number(&self, number: &str) -> Option<&HeadNumber> {
        self.numbers.iter().find(|n| n.number.eq_ignore_ascii_case(number))
    }

    /// Where the head's centre lies beyond the ground point along the axis: (mean, standard deviation) in mm.
    ///
    /// Irons and wedges a few millimetres either way; a driver about 10 to 15 mm toward the butt. Derived by geometry;
    /// wide where nothing is known.
    #[must_use]
    pub fn offset_prior_mm(&self) -> (f64, f64) {
        let (mean, sd) = match self.club_kind {
            ClubKind::Iron | ClubKind::Wedge => (0.0, 3.0),
            ClubKind::Hybrid => (-5.0, 5.0),
            ClubKind::Wood => (-12.0, 5.0),
            ClubKind::Putter => (0.0, 8.0),
        };
        (self.offset_mm.unwrap_or(mean), self.offset_sd_mm.unwrap_or(sd))
    }

    /// What each screw weighs more than the one that a head comes with, which is the first: that one left out.
    pub fn screws_more_g(&self) -> impl Iterator<Item = f64> {
        let first_g = self.screws.first().map_or(0.0, |screw| screw.mass_g);
        self.screws.iter().skip(1).map(move |screw| screw.mass_g - first_g)
    }

    /// The screw that is in a head when it weighs so much more than the one that it comes with.
    #[must_use]
    pub fn screw_of(&self, more_g: f64) -> Option<&ScrewOption> {
        let mass_g = self.screws.first()?.mass_g + more_g;
        self.screws.iter().find(|screw| (screw.mass_g - mass_g).abs() < 0.05)
    }

    pub(crate) fn check(&self) -> Result<(), TradeError> {
        within("bore_diameter_mm", self.bore_diameter_mm, 6.0, 20.0, "mm")?;
        within("bore_depth_mm", self.bore_depth_mm, 10.0, 80.0, "mm")?;
        within("bend_limit_deg", self.bend_limit_deg, 0.0, 8.0, "°")?;
        let (mean, sd) = self.offset_prior_mm();
        within("offset_mm", mean, -40.0, 40.0, "mm")?;
        within("offset_sd_mm", sd, 0.0, 20.0, "mm")?;
        self.mass_sd_g.map_or(Ok(0.0), |sd_g| within("mass_sd_g", sd_g, 0.0, 20.0, "g"))?;
        for (name, value, most) in [
            ("heel_radius_mm", self.heel_radius_mm, 30.0),
            ("sole_contact_mm", self.sole_contact_mm, 150.0),
            ("sole_radius_mm", self.sole_radius_mm, 20_000.0),
        ] {
            value.map_or(Ok(0.0), |value| within(name, value, 0.0, most, "mm"))?;
        }
        for screw in &self.screws {
            within("screws.mass_g", screw.mass_g, 0.1, 60.0, "g")?;
        }
        if self.numbers.is_empty() {
            return Err(TradeError::refused(HeadFault::NoNumbers { code: self.code.clone() }));
        }
        for (i, n) in self.numbers.iter().enumerate() {
            if self.numbers[..i].iter().any(|m| m.number.eq_ignore_ascii_case(&n.number)) {
                return Err(TradeError::refused(HeadFault::NumberTwice {
                    code: self.code.clone(),
                    number: n.number.clone(),
                }));
            }
            let field = |name: &str| Entry::Number { number: n.number.clone(), name: name.to_owned() };
            within(field("mass_g"), n.mass_g, 120.0, 600.0, "g")?;
            within(field("loft_deg"), n.loft_deg, 0.0, 80.0, "°")?;
            within(field("lie_deg"), n.lie_deg, 40.0, 80.0, "°")?;
            if let Some(bounce) = n.bounce_deg {
                within(field("bounce_deg"), bounce, -10.0, 30.0, "°")?;
            }
            within(field("bore_to_ground_mm"), n.bore_to_ground_mm, 0.0, 80.0, "mm")?;
            within(field("chart.length_mm"), n.chart.length_mm, 400.0, 1300.0, "mm")?;
            within(field("chart.swing_weight_points"), n.chart.swing_weight_points, -60.0, 160.0, "points")?;
        }
        Ok(())
    }
}

fact::facts! {
    /// What is refused of a head model.
    pub(crate) enum HeadFault: "head_fault" {
        NoNumbers { code: String },
        NumberTwice { code: String, number: String },
    }
}
