//! The fitting sheet: who, what, and the readings of the reference club that the fitting settled on.

use crate::club_name::ClubName;
use crate::grip::GripSize;
use crate::kind::{ClubKind, Facing, Hand, LengthTo, SoftSide, closed_list};
use crate::price::PriceLine;
use crate::shop::Shop;
use crate::wrap::Wraps;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

closed_list! {
    /// The law that ties the clubs of a set together.
    SetRule {
        /// Every club as its row says.
        AsWritten = "as_written";
        /// One swing weight for all.
        ConstantSwingWeight = "constant_swing_weight" was "constant_balance";
        /// Swing weight that steps from club to club.
        SteppedSwingWeight = "stepped_swing_weight" was "stepped_balance";
        /// One moment of inertia about the butt.
        EqualInertia = "equal_inertia";
    }
}

/// A fitting sheet for a set.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Sheet {
    /// Who the clubs are for. Where the sheet belongs to a customer it is their name, and follows it.
    pub player: String,
    /// Number of the customer that it belongs to; left out where it belongs to nobody.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub customer: Option<i64>,
    /// When the set is due.
    #[schema(value_type = String, format = Date)]
    pub due: Date,
    /// The player's hand.
    pub hand: Hand,
    /// Anything else that the bench should know.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// The law of the set, kept for the record; the clubs hold what it gave.
    pub rule: SetRule,
    /// The sheet as it was written short, where it was.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub written: String,
    /// The reference club, where it was read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reference: Option<ReferenceClub>,
    /// What it is to cost, line by line; empty where nobody has quoted for it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub quote: Vec<PriceLine>,
    /// The clubs to build.
    pub clubs: Vec<SheetClub>,
}

/// What was read on the reference club, and on what.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReferenceClub {
    /// Number or letter of the club: `6`, `PW`.
    pub number: String,
    /// How long it is, from where the shaft axis meets the ground to `length_to`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length_mm: Option<f64>,
    /// Where that length ends at the butt: at the cap or at the end of the shaft.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub length_to: Option<LengthTo>,
    /// Swing weight in points since A0.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[serde(alias = "balance_points")]
    pub swing_weight_points: Option<f64>,
    /// What the whole club weighs.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub total_mass_g: Option<f64>,
    /// Balance point from the cap.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub balance_point_mm: Option<f64>,
    /// Loft of its head as it was measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub loft_deg: Option<f64>,
    /// Lie as it was measured: the angle between shaft and ground.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lie_deg: Option<f64>,
    /// Frequency as it was read, clamped at `clamp_mm`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cpm: Option<f64>,
    /// The length clamped for the frequency.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub clamp_mm: Option<f64>,
    /// The scale that read the swing weight: the shop's own key of it, or the name of the fitting bay's.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub scale: String,
    /// Model code of its grip.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grip_model: Option<String>,
    /// Thickness of its grip's cap.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cap_mm: Option<f64>,
    /// Mass of the coupler of a fitting club, which the built club does not have.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub coupler_g: Option<f64>,
    /// When it was read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = Date)]
    pub read_on: Option<Date>,
    /// How well its true swing weight is known, one standard deviation, where the figure is the true one and not what a scale
    /// showed on a day, as from a calibrated scale: 0 for exact. Left out: it is what the scale showed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub swing_weight_sd_points: Option<f64>,
    /// What it showed at other times or on other scales.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub also_read: Vec<ReferenceReading>,
}

/// What the reference club showed once more: on another day, on another scale, or on the same again.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ReferenceReading {
    /// Swing weight in points since A0.
    pub swing_weight_points: f64,
    /// The scale: the shop's own key or name of it, or the name of another.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub scale: String,
    /// When it was read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = Date)]
    pub read_on: Option<Date>,
}

impl ReferenceClub {
    /// All that a scale showed of it, that from which the targets come first; empty where that is its true swing weight or
    /// was not read.
    #[must_use]
    pub fn shown(&self) -> Vec<ReferenceReading> {
        let first = self.swing_weight_points.filter(|_| self.swing_weight_sd_points.is_none());
        let first = first.map(|swing_weight_points| ReferenceReading {
            swing_weight_points,
            scale: self.scale.clone(),
            read_on: self.read_on,
        });
        first.into_iter().chain(self.also_read.iter().cloned()).collect()
    }
}

/// How far from the target is still good.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Tolerances {
    /// How far its swing weight may be off the target; 0.3 points where no tolerances are given.
    #[serde(alias = "balance_points")]
    pub swing_weight_points: f64,
    /// How much longer or shorter the club may be; 1.5 mm where no tolerances are given.
    pub length_mm: f64,
    /// How much weaker or stronger its loft may be; 0.5° where no tolerances are given.
    pub loft_deg: f64,
    /// How much flatter or more upright its lie may be; 0.5° where no tolerances are given.
    pub lie_deg: f64,
    /// How far its frequency may be off the target; 2 cpm where no tolerances are given.
    pub cpm: f64,
}

impl Default for Tolerances {
    /// What most shops accept: common practice, no source.
    fn default() -> Self {
        Self { swing_weight_points: 0.3, length_mm: 1.5, loft_deg: 0.5, lie_deg: 0.5, cpm: 2.0 }
    }
}

/// One club of a sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct SheetClub {
    /// "5", "P", "1" …
    pub number: String,
    /// What sort of club.
    pub club_kind: ClubKind,
    /// Code of the head model.
    pub head_model: String,
    /// Code of the shaft model.
    pub shaft_model: String,
    /// Code of the grip model.
    pub grip_model: String,
    /// Code of the ferrule model, where there is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ferrule_model: Option<String>,
    /// Code of the adhesive; left out: the shop's own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub adhesive: Option<String>,
    /// Code of the tape; left out: the shop's own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tape: Option<String>,
    /// How long the club is to be, from where the shaft axis meets the ground to `length_to`.
    pub length_mm: f64,
    /// Where that length ends at the butt: at the cap or at the end of the shaft.
    pub length_to: LengthTo,
    /// Swing weight in points since A0 (`D2` = 32).
    #[serde(alias = "balance_points")]
    pub swing_weight_points: f64,
    /// Whether the club is built without a swing weight being asked, as most putters are: `swing_weight_points` is then what
    /// such a club has, no step reads it, and nothing is held against it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub swing_weight_free: bool,
    /// Loft asked of the finished head.
    pub loft_deg: f64,
    /// Lie asked of the finished head: the angle between shaft and ground.
    pub lie_deg: f64,
    /// Frequency, where the fitting asks for one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cpm: Option<f64>,
    /// Mass of the whole club, where the fitting asks for one: parts of another mass are then chosen where they help.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub total_mass_g: Option<f64>,
    /// Moment of inertia about the butt, where the clubs are to be equal in it. The swing weight is then the one that this inertia
    /// gives with the head brought to it, and its tolerance counts as what so much at the head does to the inertia.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub inertia_kg_cm2: Option<f64>,
    /// Which way the grip's label faces.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grip_graphics: Option<Facing>,
    /// Which way the shaft's label faces.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub shaft_graphics: Option<Facing>,
    /// Where the soft side is turned.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub soft_side: Option<SoftSide>,
    /// Setting of the adapter, as its model names it; left out: the one that the model is built at.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub adapter_setting: Option<String>,
    /// Layers of tape.
    #[serde(default)]
    pub wraps: Wraps,
    /// How thick the grip is to be where the hands hold it, where a size is asked.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grip_size: Option<GripSize>,
    /// Whether weight may go into the tip. Left out: into any club but a driver.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tip_weight: Option<bool>,
    /// How far from the target is still good.
    #[serde(default)]
    pub tolerances: Tolerances,
}

/// Half of a range that no club leaves, points.
pub const ANYWHERE_POINTS: f64 = 1000.0;

impl SheetClub {
    /// Whether weight may go into the tip: as the sheet says, else into any club but a driver, which is brought to its swing
    /// weight by its screws. (Common practice, no source.)
    #[must_use]
    pub fn may_have_tip_weight(&self) -> bool {
        self.tip_weight.unwrap_or(!(self.club_kind == ClubKind::Wood && self.number == "1"))
    }

    /// How far from its target the swing weight is still good, points: anywhere, where none is asked.
    #[must_use]
    pub fn swing_weight_tolerance(&self) -> f64 {
        if self.swing_weight_free { ANYWHERE_POINTS } else { self.tolerances.swing_weight_points }
    }

    /// The same as a plan counts with it: no more than matching weighs up, which every club of a kind lies within.
    #[must_use]
    pub fn planned_tolerance(&self) -> f64 {
        self.swing_weight_tolerance().min(20.0)
    }

    /// The club as a figure of a fact: the 7-iron, the PW.
    #[must_use]
    pub fn name(&self) -> ClubName {
        ClubName::of(self.club_kind, &self.number)
    }

    /// Code of the adhesive that it is glued with: its own, else the shop's; none where neither names one.
    #[must_use]
    pub fn adhesive_in<'a>(&'a self, shop: &'a Shop) -> Option<&'a String> {
        self.adhesive.as_ref().or(shop.adhesive.as_ref())
    }

    /// Code of the tape under its grip: its own, else the shop's; none where neither names one.
    #[must_use]
    pub fn tape_in<'a>(&'a self, shop: &'a Shop) -> Option<&'a String> {
        self.tape.as_ref().or(shop.tape.as_ref())
    }
}
