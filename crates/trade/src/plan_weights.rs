//! What things cost in a plan, as the shop wants them weighed against each other.

use crate::error::{FindIt, NotFound, Noun, TradeError, within};
use matching::CostWeights;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// What things cost in a plan. The unit of all of them is one club that certainly finishes out of tolerance, which
/// itself is not adjustable: a tip weight of 5 g at the default costs as much as 2.5 % of chance in one club.
///
/// The defaults keep the order that builders give: finishing in tolerance, grams and pieces of tip weight, whole mass, frequency,
/// evenness of the shafts' masses, what is left for others. How far they lie apart is a judgement (no source).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
pub struct PlanWeights {
    /// Of a gram in the tip.
    #[schema(minimum = 0, maximum = 1)]
    pub tip_per_g: f64,
    /// Of a second weight in one tip, beside its grams: where one does, one is taken.
    pub second_tip: f64,
    /// Of a gram that the whole club is off the sheet's whole mass, where the sheet asks for one.
    #[schema(minimum = 0, maximum = 1)]
    pub mass_per_g: f64,
    /// Of a shaft whose frequency lies one tolerance of the sheet off its line; it grows with the square, up to three
    /// tolerances (see [`crate::frequency_line`]).
    #[schema(minimum = 0, maximum = 1)]
    pub cpm_per_tolerance: f64,
    /// Of a gram between the shafts of a set that lie highest over and deepest under their model's own line of masses.
    #[schema(minimum = 0, maximum = 1)]
    pub shaft_range_per_g: f64,
    /// Of spending a grip that lies one standard deviation from its model's mass and could still put another club
    /// right; it grows with the square.
    #[schema(minimum = 0, maximum = 1)]
    pub spent_grip: f64,
    /// Of taking a head while no other of its number is left within a gram; half of it where there is one other.
    #[schema(minimum = 0, maximum = 1)]
    pub rare_head: f64,
    /// Of a neighbouring number's blank.
    #[schema(minimum = 0, maximum = 1)]
    pub neighbour_blank: f64,
    /// Of putting another part in the place of one that the club has already, when a job is planned anew.
    #[schema(minimum = 0, maximum = 1)]
    pub changed_part: f64,
}

impl Default for PlanWeights {
    fn default() -> Self {
        Self {
            tip_per_g: 0.005,
            second_tip: 0.002,
            mass_per_g: 0.002,
            cpm_per_tolerance: 0.004,
            shaft_range_per_g: 0.010,
            spent_grip: 0.001,
            rare_head: 0.002,
            neighbour_blank: 0.5,
            changed_part: 0.02,
        }
    }
}

/// Of any weight: a missed club for a gram is more than anybody means.
const MOST: f64 = 1.0;

impl PlanWeights {
    /// Refuses weights that no plan can be made with.
    ///
    /// # Errors
    /// A weight that is negative, not finite or above 1.
    pub fn check(&self) -> Result<(), TradeError> {
        for (name, value) in self.named() {
            within(format!("plan_weights.{name}"), value, 0.0, MOST, "")?;
        }
        Ok(())
    }

    /// Every weight by the name of its field, in the order of the asked preference.
    #[must_use]
    pub fn named(&self) -> [(&'static str, f64); 9] {
        [
            ("tip_per_g", self.tip_per_g),
            ("second_tip", self.second_tip),
            ("mass_per_g", self.mass_per_g),
            ("cpm_per_tolerance", self.cpm_per_tolerance),
            ("shaft_range_per_g", self.shaft_range_per_g),
            ("spent_grip", self.spent_grip),
            ("rare_head", self.rare_head),
            ("neighbour_blank", self.neighbour_blank),
            ("changed_part", self.changed_part),
        ]
    }

    /// The same with one changed by the name of its field.
    ///
    /// # Errors
    /// A name that is none; a weight that no plan can be made with.
    pub fn with(mut self, name: &str, value: f64) -> Result<Self, TradeError> {
        let field = match name.trim() {
            "tip_per_g" => &mut self.tip_per_g,
            "second_tip" => &mut self.second_tip,
            "mass_per_g" => &mut self.mass_per_g,
            "cpm_per_tolerance" => &mut self.cpm_per_tolerance,
            "shaft_range_per_g" => &mut self.shaft_range_per_g,
            "spent_grip" => &mut self.spent_grip,
            "rare_head" => &mut self.rare_head,
            "neighbour_blank" => &mut self.neighbour_blank,
            "changed_part" => &mut self.changed_part,
            other => {
                return Err(TradeError::not_found(
                    &NotFound::Named { what: Noun::PlanWeight, name: other.to_owned() },
                    &FindIt::OneOf { known: self.named().map(|(name, _)| name.to_owned()).to_vec() },
                ));
            }
        };
        *field = value;
        self.check()?;
        Ok(self)
    }

    /// The most that the choice of one club's parts counts beside grams.
    fn of_parts(&self) -> f64 {
        self.second_tip + self.neighbour_blank + 9.0 * self.spent_grip + self.rare_head
    }

    /// Those that the matching itself works with; the others are put on the candidates.
    #[must_use]
    pub fn of_matching(&self) -> CostWeights {
        // However much a shop minds grams, a club that can be built is not left unbuilt for them: 200 g off the whole
        // mass, 40 g in the tip and 40 g between shafts are more than any club has.
        let worst = 1.0 + 200.0 * self.mass_per_g + 40.0 * (self.tip_per_g + self.shaft_range_per_g);
        let usual = CostWeights::default();
        CostWeights {
            unbuilt: usual.unbuilt.max(worst + self.of_parts()),
            tip_per_g: self.tip_per_g,
            second_tip: self.second_tip,
            mass_per_g: self.mass_per_g,
            shaft_range_per_g: self.shaft_range_per_g,
            ..usual
        }
    }
}
