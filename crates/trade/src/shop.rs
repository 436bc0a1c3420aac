//! What the shop says of itself once, and what its scales are worth.

use crate::check_weight::{CHECK_WEIGHT, CheckWeight};
use crate::clamp::Clamp;
use crate::connection::Connection;
use crate::error::{FindIt, NotFound, Noun};
use crate::error::{TradeError, plausible, within};
use crate::gauge::{Gauge, GaugeFault, Measures, Standard, need_name};
use crate::label_printer::{LabelPrinter, check_printers};
use crate::pendulum::Pendulum;
use crate::plan_weights::PlanWeights;
use crate::price::PriceList;
use crate::reading::{Unit, What};
use crate::scale::Scale;
use crate::step::{Step, check_template};
use clubphysics::plausible::{BEADS_PERCENT, ROOM_C};
pub use quantity::Units;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Somebody who works here.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Person {
    /// The name that stands beside the readings.
    pub name: String,
    /// Units on the pages: `in-g`, `mm-g`, `in-oz` or `mm-oz`.
    #[schema(value_type = String, pattern = "^(in|mm)-(g|oz)$", example = "in-g")]
    pub units: Units,
}

/// How parts are weighed in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
pub struct WeighInSettings {
    /// Whether the label of each part is printed as it is kept.
    pub print_labels: bool,
    /// Whether a tone says that a part is kept or questioned.
    pub sound: bool,
}

impl Default for WeighInSettings {
    fn default() -> Self {
        Self { print_labels: false, sound: true }
    }
}

/// The shop.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Shop {
    /// Name of the shop.
    pub name: String,
    /// Temperature that the shop keeps, for pot life and cure.
    #[schema(minimum = -10, maximum = 50)]
    pub room_c: f64,
    /// The scale that swing weights are read on.
    pub balance_scale: Scale,
    /// The scale that parts and clubs are weighed on.
    pub mass_scale: Scale,
    /// The weight that the balance scale is checked with.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub check_weight: Option<CheckWeight>,
    /// Scales on a serial line.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub scales: Vec<Connection>,
    /// Other gauges by name: frequency, loft and lie, length.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub gauges: Vec<Gauge>,
    /// The clamp that frequencies are read in.
    #[serde(default, skip_serializing_if = "Clamp::is_default")]
    pub clamp: Clamp,
    /// How the swing of a club is timed, for its inertia.
    #[serde(default, skip_serializing_if = "Pendulum::is_default")]
    pub pendulum: Pendulum,
    /// What the instruments are held against, besides the check weight of the balance scale.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub standards: Vec<Standard>,
    /// How parts are weighed in.
    #[serde(default)]
    pub weigh_in: WeighInSettings,
    /// Printers for labels.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub label_printers: Vec<LabelPrinter>,
    /// The adhesive used where a sheet names none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub adhesive: Option<String>,
    /// The tape used where a sheet names none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tape: Option<String>,
    /// Most grams of tip weight in one club before another head is the better answer (8 to 10 g: common practice).
    #[schema(minimum = 0, maximum = 40)]
    pub tip_weight_cap_g: f64,
    /// What things cost in a plan, against a club that misses its tolerance.
    #[serde(default)]
    pub plan_weights: PlanWeights,
    /// Share of spacers in the mix, percent by mass.
    #[schema(minimum = 0, maximum = 30)]
    pub bead_share_percent: f64,
    /// Who works here, as they named themselves at a tablet.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub people: Vec<Person>,
    /// What parts and work cost the customer.
    #[serde(default)]
    pub prices: PriceList,
    /// The shop's own steps; a job takes a copy.
    #[schema(min_items = 1)]
    pub steps: Vec<Step>,
}

impl Default for Shop {
    /// A new shop: priors wide, steps of the trade; everything is called by its key until [`Shop::named`] gives it a name.
    fn default() -> Self {
        Self {
            name: "shop".into(),
            room_c: 20.0,
            balance_scale: Scale {
                key: "balance".into(),
                name: "balance".into(),
                display_step: 0.1,
                noise_sd: 0.1,
                offset_sd: 0.2,
                drift_sd_per_root_h: 0.04,
                drift_sd_per_day: None,
            },
            mass_scale: Scale {
                key: "mass".into(),
                name: "mass".into(),
                display_step: 0.1,
                noise_sd: 0.05,
                offset_sd: 0.05,
                drift_sd_per_root_h: 0.0,
                drift_sd_per_day: None,
            },
            check_weight: None,
            scales: Vec::new(),
            gauges: Vec::new(),
            clamp: Clamp::default(),
            pendulum: Pendulum::default(),
            standards: Vec::new(),
            weigh_in: WeighInSettings::default(),
            label_printers: Vec::new(),
            adhesive: None,
            tape: None,
            tip_weight_cap_g: 9.0,
            plan_weights: PlanWeights::default(),
            bead_share_percent: 5.0,
            people: Vec::new(),
            prices: PriceList::default(),
            steps: crate::step::full_build(),
        }
    }
}

impl Shop {
    /// A new shop with the names of a language, from its texts: the shop's own, its scales', its steps'. The shop changes
    /// them as it likes.
    #[must_use]
    pub fn named(text: impl Fn(&str) -> String) -> Self {
        let mut shop = Self { name: text("shop-new"), ..Self::default() };
        shop.balance_scale.name = text("shop-new-balance-scale");
        shop.mass_scale.name = text("shop-new-gram-scale");
        crate::step::name_steps(&mut shop.steps, &text);
        shop
    }

    /// Refuses a shop that the bench could not work with.
    ///
    /// # Errors
    /// An impossible figure, an unsound template.
    pub fn check(&self) -> Result<(), TradeError> {
        plausible("room_c", self.room_c, &ROOM_C)?;
        within("tip_weight_cap_g", self.tip_weight_cap_g, 0.0, 40.0, "g")?;
        plausible("bead_share_percent", self.bead_share_percent, &BEADS_PERCENT)?;
        self.clamp.check()?;
        self.pendulum.check()?;
        self.plan_weights.check()?;
        self.prices.check()?;
        for (name, scale, unit) in
            [("balance_scale", &self.balance_scale, "points"), ("mass_scale", &self.mass_scale, "g")]
        {
            within(format!("{name}.display_step"), scale.display_step, 0.0, 5.0, unit)?;
            within(format!("{name}.noise_sd"), scale.noise_sd, 0.001, 5.0, unit)?;
            within(format!("{name}.offset_sd"), scale.offset_sd, 0.0, 5.0, unit)?;
            within(format!("{name}.drift_sd_per_root_h"), scale.drift_sd_per_root_h, 0.0, 5.0, unit)?;
            if let Some(sd) = scale.drift_sd_per_day {
                within(format!("{name}.drift_sd_per_day"), sd, 0.0, 5.0, unit)?;
            }
        }
        for (i, scale) in self.scales.iter().enumerate() {
            scale.check()?;
            if self.scales[..i].iter().any(|other| other.key == scale.key || other.port == scale.port) {
                return Err(TradeError::refused(ShopFault::ScaleTwice {
                    key: scale.key.clone(),
                    port: scale.port.clone(),
                }));
            }
        }
        if let Some(check) = &self.check_weight {
            let (low, high) = What::SwingWeight.possible();
            within("check_weight.swing_weight_points", check.swing_weight_points, low, high, "points")?;
            within("check_weight.sd_points", check.sd_points, 0.001, 1.0, "points")?;
            within("check_weight.mass_g", check.mass_g, 50.0, 1000.0, "g")?;
        }
        if self.balance_scale.key == self.mass_scale.key || self.balance_scale.key.is_empty() {
            return Err(TradeError::refused(ShopFault::ScaleKeys));
        }
        self.check_gauges()?;
        check_printers(&self.label_printers)?;
        check_template(&self.steps)
    }
}

impl Shop {
    /// Every instrument of the shop: the balance scale, the gram scale, then the others.
    #[must_use]
    pub fn instruments(&self) -> Vec<Gauge> {
        let scales = [
            Gauge::of_scale(&self.balance_scale, Measures::SwingWeight),
            Gauge::of_scale(&self.mass_scale, Measures::Mass),
        ];
        scales.into_iter().chain(self.gauges.iter().cloned()).collect()
    }

    /// The instrument with this key.
    ///
    /// # Errors
    /// There is none.
    pub fn instrument(&self, key: &str) -> Result<Gauge, TradeError> {
        let all = self.instruments();
        let next = FindIt::Known { known: all.iter().map(|g| g.key.clone()).collect() };
        let found = all.iter().find(|g| g.key == key).cloned();
        found.ok_or_else(|| TradeError::not_found(&NotFound::Named { what: Noun::Scale, name: key.to_owned() }, &next))
    }

    /// The gauge that a length, an angle or a frequency is read with, and whether the shop has stated it; none for what scales
    /// read.
    #[must_use]
    pub fn gauge_for(&self, what: What) -> Option<(Gauge, bool)> {
        let measures = match what.unit() {
            _ if matches!(what, What::GripSize | What::GripSizeLower) => Measures::Diameter,
            Unit::Millimetre => Measures::Length,
            Unit::Degree => Measures::Angle,
            Unit::Cpm => Measures::Frequency,
            Unit::Gram | Unit::Points | Unit::Second | Unit::KgCm2 | Unit::None => return None,
        };
        let stated = self.gauges.iter().find(|gauge| gauge.measures == measures);
        Some(stated.map_or_else(|| (Gauge::never_studied(measures), false), |gauge| (gauge.clone(), true)))
    }

    /// What an instrument is held against; of the balance scale the shop's check weight first.
    #[must_use]
    pub fn standards_of(&self, scale: &str) -> Vec<Standard> {
        let own = self.check_weight.as_ref().filter(|_| scale == self.balance_scale.key).map(|check| Standard {
            key: CHECK_WEIGHT.into(),
            name: check.name.clone(),
            scale: scale.to_owned(),
            value: check.swing_weight_points,
            sd: check.sd_points,
            certified_on: None,
            certificate: String::new(),
            tolerance: None,
            mass_g: Some(check.mass_g),
        });
        own.into_iter().chain(self.standards.iter().filter(|s| s.scale == scale).cloned()).collect()
    }

    /// Refuses gauges and standards that could not be.
    pub(crate) fn check_gauges(&self) -> Result<(), TradeError> {
        let all = self.instruments();
        for (i, gauge) in all.iter().enumerate() {
            // The figures of the first two are checked with the shop's own.
            if i > 1 {
                gauge.check()?;
            } else {
                need_name(&gauge.key, &gauge.name, GaugeFault::InstrumentUnnamed)?;
            }
            if all[..i].iter().any(|other| other.key == gauge.key) {
                return Err(TradeError::refused(ShopFault::InstrumentTwice { key: gauge.key.clone() }));
            }
        }
        for (i, standard) in self.standards.iter().enumerate() {
            standard.check(&self.instrument(&standard.scale)?)?;
            if standard.key == CHECK_WEIGHT || self.standards[..i].iter().any(|other| other.key == standard.key) {
                return Err(TradeError::refused(ShopFault::CheckWeightTwice { key: standard.key.clone() }));
            }
        }
        Ok(())
    }
}

fact::facts! {
    /// What is refused of the shop's settings.
    pub(crate) enum ShopFault: "shop_fault" {
        ScaleTwice { key: String, port: String },
        ScaleKeys,
        InstrumentTwice { key: String },
        CheckWeightTwice { key: String },
    }
}
