//! The shaft, as a model: its blanks, its tip and how the tip is trimmed.

use crate::error::Entry;
use crate::error::TradeError;
use crate::error::within;
use crate::kind::{Facing, closed_list};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

closed_list! {
    /// What a shaft is made of.
    ShaftMaterial {
        /// Steel.
        Steel = "steel";
        /// Carbon or other fibres.
        Composite = "composite";
    }
}

closed_list! {
    /// Shape of the tip.
    TipShape {
        /// One blank for all numbers, tip cut by number.
        Parallel = "parallel";
        /// A blank for each number, cut at the butt only.
        Taper = "taper";
    }
}

/// A shaft model.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ShaftModel {
    /// The shop's short code.
    #[schema(min_length = 1, max_length = 32, pattern = r"^[A-Za-z0-9._-]+$")]
    pub code: String,
    /// Name on the box.
    #[schema(min_length = 1, pattern = r"\S")]
    pub name: String,
    /// Free label of the shop.
    #[serde(default)]
    pub label: String,
    /// Steel or composite.
    pub material: ShaftMaterial,
    /// Parallel or taper tip.
    pub tip: TipShape,
    /// Diameter of the tip that goes into the bore.
    #[schema(minimum = 6, maximum = 14)]
    pub tip_diameter_mm: f64,
    /// Diameter at the butt.
    #[schema(minimum = 10, maximum = 25)]
    pub butt_diameter_mm: f64,
    /// Which way the label faces when the maker's mark is turned up; left out where the label is all round.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub graphics_side: Option<Facing>,
    /// The raw blanks: one without number for a parallel tip, one a number for a taper tip.
    #[schema(min_items = 1)]
    pub blanks: Vec<ShaftBlank>,
    /// How much is cut off the tip for each number; empty: nothing.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub tip_trim: Vec<TipTrim>,
    /// Scatter of single shafts about the blank's mass.
    #[schema(minimum = 0, maximum = 10)]
    pub mass_sd_g: f64,
    /// Bending stiffness along the raw shaft, as the maker states it or as it was measured; empty: not known.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub stiffness: Vec<StiffnessRow>,
    /// How far that table as a whole may be off, one standard deviation in percent of the stiffness; left out: 5 %, a wide
    /// guess without a source.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(minimum = 0.1, maximum = 50)]
    pub stiffness_sd_percent: Option<f64>,
    /// How much neighbouring blanks the shop may use on purpose: 1 allows the next longer or shorter number's blank,
    /// always with a reason that the job keeps; 0 allows none.
    #[serde(default)]
    #[schema(maximum = 255)]
    pub neighbour_blanks: u8,
}

/// A raw blank as it comes from the maker.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ShaftBlank {
    /// The number that a taper blank belongs to.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub number: Option<String>,
    /// Nominal raw mass.
    #[schema(minimum = 20, maximum = 250)]
    pub mass_g: f64,
    /// Raw length.
    #[schema(minimum = 500, maximum = 1400)]
    pub length_mm: f64,
    /// Balance point from the butt end of the raw blank.
    pub balance_point_mm: f64,
}

/// One row of a shaft's stiffness table.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct StiffnessRow {
    /// Place on the raw shaft, from its tip end.
    #[schema(minimum = 0, maximum = 1400)]
    pub from_tip_mm: f64,
    /// Bending stiffness there: modulus times second moment of area. It runs straight from row to row, and even beyond the
    /// first and the last.
    #[schema(minimum = 0.5, maximum = 500)]
    pub stiffness_n_m2: f64,
}

/// The maker's tip trim of one number.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TipTrim {
    /// Number of the club that the shaft is trimmed for: `6`, `PW`.
    pub number: String,
    /// Cut off the tip.
    #[schema(minimum = 0, maximum = 250)]
    pub trim_mm: f64,
}

/// Rows of a stiffness table closer than this are one place written twice.
const LEAST_APART_MM: f64 = 1.0;

impl ShaftModel {
    /// The blank that belongs to a number: the number's own for a taper tip, the only one for a parallel tip.
    #[must_use]
    pub fn blank(&self, number: &str) -> Option<&ShaftBlank> {
        self.blanks
            .iter()
            .find(|b| b.number.as_deref().is_some_and(|n| n.eq_ignore_ascii_case(number)))
            .or_else(|| self.blanks.iter().find(|b| b.number.is_none()))
    }

    /// What the maker cuts off the tip for a number, 0 where nothing is said.
    #[must_use]
    pub fn tip_trim_mm(&self, number: &str) -> f64 {
        self.tip_trim.iter().find(|t| t.number.eq_ignore_ascii_case(number)).map_or(0.0, |t| t.trim_mm)
    }

    pub(crate) fn check(&self) -> Result<(), TradeError> {
        within("tip_diameter_mm", self.tip_diameter_mm, 6.0, 14.0, "mm")?;
        within("butt_diameter_mm", self.butt_diameter_mm, 10.0, 25.0, "mm")?;
        within("mass_sd_g", self.mass_sd_g, 0.0, 10.0, "g")?;
        if self.blanks.is_empty() {
            return Err(TradeError::refused(ShaftFault::NoBlank { code: self.code.clone() }));
        }
        for blank in &self.blanks {
            let field = |name: &str| Entry::Blank { number: blank.number.clone(), name: name.to_owned() };
            within(field("mass_g"), blank.mass_g, 20.0, 250.0, "g")?;
            within(field("length_mm"), blank.length_mm, 500.0, 1400.0, "mm")?;
            within(
                field("balance_point_mm"),
                blank.balance_point_mm,
                blank.length_mm / 3.0,
                blank.length_mm * 2.0 / 3.0,
                "mm",
            )?;
            let numbered = blank.number.is_some();
            if (self.tip == TipShape::Taper) != numbered {
                return Err(TradeError::refused(ShaftFault::BlankForTip {
                    code: self.code.clone(),
                    tip: self.tip,
                    number: blank.number.clone(),
                }));
            }
        }
        for (i, row) in self.stiffness.iter().enumerate() {
            within(format!("stiffness[{i}].from_tip_mm"), row.from_tip_mm, 0.0, 1400.0, "mm")?;
            within(format!("stiffness[{i}].stiffness_n_m2"), row.stiffness_n_m2, 0.5, 500.0, "N·m²")?;
        }
        if self.stiffness.windows(2).any(|pair| pair[1].from_tip_mm - pair[0].from_tip_mm < LEAST_APART_MM) {
            return Err(TradeError::refused(ShaftFault::StiffnessOrder { code: self.code.clone() }));
        }
        if let Some(sd) = self.stiffness_sd_percent {
            within("stiffness_sd_percent", sd, 0.1, 50.0, "%")?;
        }
        for trim in &self.tip_trim {
            within(Entry::TipTrim { number: trim.number.clone() }, trim.trim_mm, 0.0, 250.0, "mm")?;
        }
        Ok(())
    }
}

fact::facts! {
    /// What is refused of a shaft model.
    pub(crate) enum ShaftFault: "shaft_fault" {
        NoBlank { code: String },
        BlankForTip { code: String, tip: crate::shaft::TipShape, number: Option<String> },
        StiffnessOrder { code: String },
    }
}
