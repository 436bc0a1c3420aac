//! Which head masses to ask a supplier for: the window in which a head can be brought to its swing weight, and how likely a
//! head of the supplier's is to lie in it.
//!
//! Definition (derived from the moment about the 14-inch fulcrum, `M = Σ mᵢ·(xᵢ − 14 in)`; the apparatus: US patent
//! 1,953,916): with everything else as its model says, the swing weight `B` is reached by a head of mass
//! `h(t, g) = (B − M(shaft, joint, tape) − g·(x_grip − 14) − t·(x_tip − 14)) / (x_head − 14)`, where `t` is what goes
//! into the tip and `g` the mass of the grip. The heaviest head that will do has nothing in the tip and the heaviest grip
//! of the stock; the lightest has the shop's most in the tip and the lightest grip.
//!
//! A head drawn from a supplier of mean `µ` and scatter `σ` lies inside with probability
//! `Φ((to − µ)/σ) − Φ((from − µ)/σ)`. A shaft drawn blindly moves both limits alike, so that it counts as more scatter
//! of the head: `σ² + (σ_shaft·∂B/∂shaft / ∂B/∂head)²`.
//!
//! Domain: figures of the models, weights of the tray fine enough not to matter. Accuracy: that of the models' figures;
//! the probability to 0.005 against a simulation of 200,000 heads (`tests/stock_desk`).

use crate::mass_model::{Ingredients, MassModel};
use crate::weight_class::mean_and_sd;
use estimation::normal;
use serde::{Deserialize, Serialize};
use trade::error::{TradeError, within};
use trade::kind::LengthTo;
use trade::model::{Library, PartKind};
use trade::part::{Part, possible_mass_g};
use trade::sheet::{SheetClub, Tolerances};
use trade::shop::Shop;
use trade::wrap::Wraps;
use utoipa::ToSchema;

/// How sure the number of heads to order makes it that enough are inside.
pub(crate) const SURE: f64 = 0.95;
/// Scatter of heads of one number where neither the supplier nor the stock says it, g: a gram or more, common practice,
/// no source.
pub(crate) const USUAL_HEAD_SD_G: f64 = 1.5;
/// Fewest weighed heads from which the scatter of the stock is taken.
const ENOUGH: usize = 5;

/// A club as far as its head mass goes.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct AskClub {
    /// Code of the head model.
    pub head_model: String,
    /// Number of the head.
    pub number: String,
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
    /// Swing weight in points since A0.
    #[schema(minimum = -30, maximum = 120)]
    #[serde(alias = "balance_points")]
    pub swing_weight_points: f64,
    /// Layers of tape.
    #[serde(default)]
    pub wraps: Wraps,
}

impl From<&SheetClub> for AskClub {
    fn from(club: &SheetClub) -> Self {
        Self {
            head_model: club.head_model.clone(),
            number: club.number.clone(),
            shaft_model: club.shaft_model.clone(),
            grip_model: club.grip_model.clone(),
            ferrule_model: club.ferrule_model.clone(),
            adhesive: club.adhesive.clone(),
            tape: club.tape.clone(),
            length_mm: club.length_mm,
            length_to: club.length_to,
            swing_weight_points: club.swing_weight_points,
            wraps: club.wraps,
        }
    }
}

impl AskClub {
    fn target(&self, library: &Library) -> Result<SheetClub, TradeError> {
        let (head, number) = library.head_number(&self.head_model, &self.number)?;
        Ok(SheetClub {
            number: number.number.clone(),
            club_kind: head.club_kind,
            head_model: head.code.clone(),
            shaft_model: self.shaft_model.clone(),
            grip_model: self.grip_model.clone(),
            ferrule_model: self.ferrule_model.clone(),
            adhesive: self.adhesive.clone(),
            tape: self.tape.clone(),
            length_mm: self.length_mm,
            length_to: self.length_to,
            swing_weight_points: self.swing_weight_points,
            loft_deg: number.loft_deg,
            lie_deg: number.lie_deg,
            cpm: None,
            total_mass_g: None,
            inertia_kg_cm2: None,
            grip_size: None,
            grip_graphics: None,
            adapter_setting: None,
            swing_weight_free: false,
            shaft_graphics: None,
            soft_side: None,
            tip_weight: None,
            wraps: self.wraps,
            tolerances: Tolerances::default(),
        })
    }
}

/// What a supplier says of the heads of a number.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Supply {
    /// Code of the head model.
    pub head_model: String,
    /// Number of the head.
    pub number: String,
    /// Mean mass of them.
    #[schema(minimum = 120, maximum = 600)]
    pub mean_g: f64,
    /// Their scatter: standard deviation.
    #[schema(minimum = 0, maximum = 30)]
    pub sd_g: f64,
}

/// Where the mean and scatter of the heads come from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum SupplyFrom {
    /// The supplier said so.
    Stated,
    /// From the heads of this number that the shop has weighed.
    Stock,
    /// The model's mass and the usual scatter.
    Model,
}

/// What to ask for.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct HeadAsk {
    /// Number of the head.
    pub number: String,
    /// Code of the head model.
    pub head_model: String,
    /// Length asked for.
    pub length_mm: f64,
    /// Swing weight asked for, points since A0.
    #[serde(alias = "balance_points")]
    pub swing_weight_points: f64,
    /// Lightest head that will do.
    pub from_g: f64,
    /// Heaviest head that will do.
    pub to_g: f64,
    /// The head that needs nothing in the tip with the mean grip.
    pub bare_g: f64,
    /// Most that goes into the tip.
    pub cap_g: f64,
    /// Weighed grips of the model that are free; 0 where the model's own mass was taken.
    pub grips: usize,
    /// Lightest grip counted with.
    pub grip_from_g: f64,
    /// Heaviest grip counted with.
    pub grip_to_g: f64,
    /// Mean mass of the heads to be had.
    pub mean_g: f64,
    /// Their scatter: standard deviation.
    pub sd_g: f64,
    /// Where these two come from.
    pub supply_from: SupplyFrom,
    /// Probability that one of them lies inside the window.
    pub inside: f64,
    /// The same where the shaft is taken as it comes too.
    pub inside_any_shaft: f64,
    /// How many heads to order so that one lies inside with 95 % (any shaft); none where it is hopeless.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub order_for_one: Option<u32>,
}

/// What to work with.
#[derive(Debug, Clone, Copy)]
pub struct AskGround<'a> {
    /// The models.
    pub library: &'a Library,
    /// The shop that builds the club: its most in the tip, its own adhesive and tape.
    pub shop: &'a Shop,
    /// The stock: free grips, and weighed heads for their scatter.
    pub parts: &'a [Part],
    /// What suppliers say; the first that names a model and number counts.
    pub supply: &'a [Supply],
    /// Most in the tip; none for the shop's own.
    pub cap_g: Option<f64>,
    /// How far from its swing weight a club may stay and still count as reaching it.
    pub within_points: f64,
}

/// Which head mass to ask for, for each club.
///
/// # Errors
/// A model that the library lacks; a length or swing weight that cannot be; a mean, scatter, cap or tolerance out of range.
pub fn ask(clubs: &[AskClub], ground: AskGround<'_>) -> Result<Vec<HeadAsk>, TradeError> {
    within("within_points", ground.within_points, 0.0, 5.0, "points")?;
    if let Some(cap_g) = ground.cap_g {
        within("cap_g", cap_g, 0.0, 40.0, "g")?;
    }
    let (low, high) = possible_mass_g(PartKind::Head);
    for supply in ground.supply {
        within("mean_g", supply.mean_g, low, high, "g")?;
        within("sd_g", supply.sd_g, 0.0, 30.0, "g")?;
    }
    clubs.iter().map(|club| ask_one(club, ground)).collect()
}

fn ask_one(club: &AskClub, ground: AskGround<'_>) -> Result<HeadAsk, TradeError> {
    within("swing_weight_points", club.swing_weight_points, -30.0, 120.0, "points")?;
    let target = club.target(ground.library)?;
    let plain = Ingredients::of_sheet(&target, ground.library, ground.shop)?;
    let grips: Vec<f64> = ground
        .parts
        .iter()
        .filter(|p| p.kind == PartKind::Grip && p.model == plain.grip.code && p.is_free())
        .filter_map(|p| p.mass_g)
        .collect();
    let lightest = grips.iter().copied().reduce(f64::min).unwrap_or(plain.grip.mass_g);
    let heaviest = grips.iter().copied().reduce(f64::max).unwrap_or(plain.grip.mass_g);
    let mean_grip = if grips.is_empty() { plain.grip.mass_g } else { mean_and_sd(grips.iter().copied()).0 };
    let with_grip = |mass_g: f64| MassModel::of(&Ingredients { grip_mass_g: Some(mass_g), ..plain });
    let model = with_grip(mean_grip)?;
    let per_head_g = model.swing_weight_points(1.0, 0.0) - model.swing_weight_points(0.0, 0.0);
    let per_tip_g = model.swing_weight_points(0.0, 1.0) - model.swing_weight_points(0.0, 0.0);
    if per_head_g <= 0.0 {
        return Err(TradeError::refused(AskFault::InsideFulcrum { number: target.number.clone() }));
    }
    let cap_g = ground.cap_g.unwrap_or(ground.shop.tip_weight_cap_g);
    let from_g = with_grip(lightest)?.head_for_swing_weight_g(club.swing_weight_points - ground.within_points)
        - cap_g * per_tip_g / per_head_g;
    let to_g = with_grip(heaviest)?.head_for_swing_weight_g(club.swing_weight_points + ground.within_points);
    let (mean_g, sd_g, supply_from) = supply(&plain, ground);
    let blank_g = plain.shaft.blank(&target.number).map_or(0.0, |b| b.mass_g);
    let with_shaft = |mass_g: f64| MassModel::of(&Ingredients { shaft_mass_g: Some(mass_g), ..plain });
    let per_shaft_g =
        with_shaft(blank_g + 1.0)?.swing_weight_points(0.0, 0.0) - with_shaft(blank_g)?.swing_weight_points(0.0, 0.0);
    let shaft_sd_as_head_g = plain.shaft.mass_sd_g * per_shaft_g / per_head_g;
    let inside_any_shaft = normal::between(from_g, to_g, mean_g, sd_g.hypot(shaft_sd_as_head_g));
    Ok(HeadAsk {
        number: target.number.clone(),
        head_model: target.head_model.clone(),
        length_mm: club.length_mm,
        swing_weight_points: club.swing_weight_points,
        from_g,
        to_g,
        bare_g: model.head_for_swing_weight_g(club.swing_weight_points),
        cap_g,
        grips: grips.len(),
        grip_from_g: lightest,
        grip_to_g: heaviest,
        mean_g,
        sd_g,
        supply_from,
        inside: normal::between(from_g, to_g, mean_g, sd_g),
        inside_any_shaft,
        order_for_one: heads_to_order(1, inside_any_shaft, SURE),
    })
}

/// Mean and scatter of the heads to be had: as stated, else of the weighed ones in stock, else the model's.
fn supply(of: &Ingredients<'_>, ground: AskGround<'_>) -> (f64, f64, SupplyFrom) {
    let (head, number) = (of.head, of.number);
    let stated = ground
        .supply
        .iter()
        .find(|s| s.head_model.eq_ignore_ascii_case(&head.code) && s.number.eq_ignore_ascii_case(&number.number));
    if let Some(stated) = stated {
        return (stated.mean_g, stated.sd_g, SupplyFrom::Stated);
    }
    let numbered = |p: &Part| p.number.as_deref().is_some_and(|n| n.eq_ignore_ascii_case(&number.number));
    let weighed: Vec<f64> = ground
        .parts
        .iter()
        .filter(|p| p.kind == PartKind::Head && p.model == head.code && numbered(p))
        .filter_map(|p| p.mass_g)
        .collect();
    if weighed.len() >= ENOUGH {
        let (mean_g, sd_g) = mean_and_sd(weighed.iter().copied());
        return (mean_g, sd_g, SupplyFrom::Stock);
    }
    (number.mass_g, head.mass_sd_g.unwrap_or(USUAL_HEAD_SD_G), SupplyFrom::Model)
}

/// How many to order so that at least `needed` lie inside with probability `sure`, where each does with probability
/// `inside`; none where more than a thousand would be needed.
#[must_use]
pub fn heads_to_order(needed: u32, inside: f64, sure: f64) -> Option<u32> {
    const MOST: u32 = 1_000;
    if needed == 0 {
        return Some(0);
    }
    if !(inside > 0.0 && inside <= 1.0 && sure > 0.0 && sure < 1.0) {
        return None;
    }
    // Probabilities of 0, 1 … `needed` or more inside, after each further head.
    let places = usize::try_from(needed).ok()?;
    let mut chance = vec![0.0; places + 1];
    chance[0] = 1.0;
    for ordered in 1..=MOST {
        for k in (0..=places).rev() {
            let from_below = if k > 0 { chance[k - 1] * inside } else { 0.0 };
            let stays = if k == places { chance[k] } else { chance[k] * (1.0 - inside) };
            chance[k] = from_below + stays;
        }
        if chance[places] >= sure {
            return Some(ordered);
        }
    }
    None
}

fact::facts! {
    /// What is refused of asking for heads by weight.
    pub(crate) enum AskFault: "ask_fault" {
        InsideFulcrum { number: String },
    }
}
