//! What a simulated shop may be: every distribution that a true value is drawn from stands in this file.
//!
//! The ranges are those of the trade, common practice without a source unless a line says otherwise. Those named as they
//! stand have their middle where the belief starts from; [`World::Wide`] draws from others (`Wide`) that lie off it and reach
//! further, and gives the clubs a form that the belief does not know. The belief sees neither.

use crate::draw::{Draw, Stream};
use crate::settings::{Settings, Trouble, World};

/// Grams of adhesive that a shop's joints take on average: 1 to 3.
const JOINT_G: (f64, f64) = (1.0, 3.0);
/// Scatter of a mix about the shop's mean, and of a joint about its mix, g.
const MIX_SD_G: f64 = 0.15;
const JOINT_SD_G: f64 = 0.25;
/// How far from the middle of the bore the adhesive's centre lies, mm either way.
const JOINT_ARM_MM: f64 = 4.0;
/// Share by which a tape's mass per area may differ from its sheet, either way.
const TAPE_SHARE: f64 = 0.15;
/// Scatter of a job's tape (how it is stretched), share; of one club's, g a layer; and of where it ends, mm.
const TAPE_JOB_SD_SHARE: f64 = 0.03;
const TAPE_SD_G: f64 = 0.06;
const TAPE_END_SD_MM: f64 = 3.0;
/// Centre of a grip model from its cap, in: 3.7 to 4.3; scatter of single grips, mm.
const GRIP_CENTRE_IN: (f64, f64) = (3.7, 4.3);
const GRIP_CENTRE_SD_MM: f64 = 0.5;
/// Thickness of a grip model's cap, mm: 2.5 to 3.5; scatter of single grips, mm.
const CAP_MM: (f64, f64) = (2.5, 3.5);
const CAP_SD_MM: f64 = 0.08;
/// What a loose maker's grips scatter: 0.05 in in their centre, 0.012 in in their cap.
const LOOSE_CENTRE_SD_MM: f64 = 1.27;
const LOOSE_CAP_SD_MM: f64 = 0.305;
/// A head model's centre beyond the ground point, mm either way: a few millimetres for irons; then number by number,
/// and head by head.
const OFFSET_MM: f64 = 4.0;
const OFFSET_NUMBER_SD_MM: f64 = 0.4;
const OFFSET_SD_MM: f64 = 0.3;
/// The same of a maker whose heads differ more: most lie within 3 mm.
const LOOSE_OFFSET_SD_MM: f64 = 1.5;
/// How far a shaft model's balance point lies from its sheet, mm either way, and the scatter of single shafts.
const SHAFT_CENTRE_MM: f64 = 5.0;
const SHAFT_CENTRE_SD_MM: f64 = 1.5;
/// Bulge of a shaft's mass line against a straight one, share of the mean density either way.
const SHAFT_BULGE: f64 = 0.1;
/// Scatter of masses in the boxes: heads of a number, shafts, grips, g.
const HEAD_SD_G: (f64, f64) = (1.0, 1.5);
const SHAFT_SD_G: f64 = 1.0;
const GRIP_SD_G: f64 = 1.2;
const SCATTERED_GRIP_SD_G: f64 = 3.0;
/// Scatter of weights in the tray and of ferrules in the bag, g.
const TIP_WEIGHT_SD_G: f64 = 0.05;
const FERRULE_SD_G: f64 = 0.05;
/// What turning takes off a ferrule in a shop, g, and its scatter.
const TURNINGS_G: (f64, f64) = (0.15, 0.45);
const TURNINGS_SD_G: f64 = 0.08;
/// Solvent in a fresh grip, g: 2 to 3; its scatter.
const SOLVENT_G: (f64, f64) = (2.0, 3.0);
const SOLVENT_SD_G: f64 = 0.4;
/// Error of a saw cut, mm.
const CUT_SD_MM: f64 = 0.6;
/// How a weight slips in the tip, mm.
const TIP_PLACE_SD_MM: f64 = 1.0;
/// The balance scale: what it is off by on a day, points, and the share of its variance that is the same every day (days are
/// correlated by as much); drift through a day, points; noise of a re-seated reading.
const OFFSET_SD_POINTS: f64 = 0.2;
const HABIT_SHARE: f64 = 0.6;
const DRIFT_SD_POINTS: f64 = 0.08;
const DRIFT_TROUBLE_POINTS: f64 = 0.3;
const NOISE_POINTS: (f64, f64) = (0.08, 0.12);
/// What the fitting bay's scale is off in an awkward shop, points.
const BAY_POINTS: f64 = 0.2;
/// Error of the figure on the check weight, points.
const CHECK_SD_POINTS: f64 = 0.04;
/// The mass scale: offset of the day and noise, g.
const MASS_OFFSET_SD_G: f64 = 0.03;
const MASS_NOISE_G: f64 = 0.03;
/// Errors of a rule, of a caliper on a cap, of a grip balanced on an edge, mm.
const RULE_SD_MM: f64 = 0.3;
const CALIPER_SD_MM: f64 = 0.1;
const EDGE_SD_MM: f64 = 0.6;
/// How the wide world differs. All figures: a judgement, no source, so that most means lie within two and some beyond three
/// standard deviations of what a new shop starts from.
struct Wide;

impl Wide {
    /// Grams of adhesive in a joint, and twice as often as not toward the heavy side of the usual 2 g.
    const JOINT_G: (f64, f64) = (1.0, 3.8);
    /// Grams of it that lie above the tip in three shops of ten, and how far above the end of the bore, mm.
    const ABOVE_TIP: (f64, (f64, f64), f64) = (0.3, (0.2, 0.6), 12.0);
    /// Mass per area of the tape against its sheet.
    const TAPE_SHARE: (f64, f64) = (0.75, 1.4);
    /// How much sooner than the grip the tape ends in half of the shops, mm.
    const TAPE_SHORT: (f64, (f64, f64)) = (0.5, (5.0, 25.0));
    /// How far grips are stretched as they go on in half of the shops, mm.
    const STRETCH: (f64, (f64, f64)) = (0.5, (1.0, 5.0));
    const GRIP_CENTRE_IN: (f64, f64) = (3.6, 4.5);
    const CAP_MM: (f64, f64) = (2.3, 4.0);
    /// A head's centre beyond the ground point, mm, of a model; and what bores off the axis add number by number.
    const OFFSET_MM: (f64, f64) = (-4.0, 7.0);
    const OFF_AXIS_SD_MM: f64 = 0.8;
    const SHAFT_CENTRE_MM: (f64, f64) = (-7.0, 5.0);
    const TURNINGS_G: (f64, f64) = (0.15, 0.7);
    /// Pieces scatter so much more than the belief expects.
    const PIECES: f64 = 1.3;
}

/// Points by which a club with average parts is too light in this shop without a tip weight: heads are light on
/// purpose, and a shop orders what suits its own joints and grips.
const LIGHT_POINTS: (f64, f64) = (1.4, 3.6);
/// Targets of a job about D2, points either way, so that heads are 0.6 to 4.4 points light.
const TARGET_POINTS: f64 = 0.8;

/// Single draws and scatter of one simulated shop.
#[derive(Debug, Clone, PartialEq)]
pub struct SimulatedShop {
    /// Seed of all draws.
    pub seed: u64,
    /// Which shop.
    pub id: u64,
    /// Mean mass of a joint's adhesive, g.
    pub joint_g: f64,
    /// Where it lies against the middle of the bore, mm toward the tip.
    pub joint_arm_mm: f64,
    /// True mass per area of the tape against its sheet.
    pub tape_share: f64,
    /// Mean of what turning takes off, g.
    pub turnings_g: f64,
    /// Mean solvent in a fresh grip, g.
    pub solvent_g: f64,
    /// Shift of the shaft model's balance point, mm.
    pub shaft_centre_mm: f64,
    /// Bulge of the shaft model's mass line.
    pub shaft_bulge: f64,
    /// Noise of the balance scale, points.
    pub noise_points: f64,
    /// What the check weight's figure is wrong by, points.
    pub check_error_points: f64,
    /// What the scale that read the reference club shows too much, points.
    pub bay_points: f64,
    /// What the balance scale shows too much on every day, points.
    pub habit_points: f64,
    /// Adhesive that lies above the tip, g.
    pub above_tip_g: f64,
    /// How far above the end of the bore it lies, mm.
    pub above_tip_mm: f64,
    /// How much sooner than the grip the tape ends, mm.
    pub tape_short_mm: f64,
    /// How far a grip is stretched as it goes on, mm.
    pub stretch_mm: f64,
    /// How everything else scatters.
    pub scatter: Scatter,
}

/// Standard deviations of jobs and pieces.
#[derive(Debug, Clone, Copy, PartialEq)]
#[allow(missing_docs)]
pub struct Scatter {
    pub mix_g: f64,
    pub joint_g: f64,
    pub tape_job_share: f64,
    pub tape_g: f64,
    pub tape_end_mm: f64,
    pub grip_centre_mm: f64,
    pub cap_mm: f64,
    pub head_offset_number_mm: f64,
    pub head_offset_mm: f64,
    pub shaft_centre_mm: f64,
    pub head_g: f64,
    pub shaft_g: f64,
    pub grip_g: f64,
    pub tip_weight_g: f64,
    pub ferrule_g: f64,
    pub turnings_g: f64,
    pub solvent_g: f64,
    pub cut_mm: f64,
    pub tip_place_mm: f64,
    /// In all; a day's own is the part of it that is not the same every day: see [`Scatter::day_points`].
    pub offset_points: f64,
    pub drift_points: f64,
    /// Drift that is there every day with either sign.
    pub drift_fixed_points: f64,
    pub mass_offset_g: f64,
    pub mass_noise_g: f64,
    pub rule_mm: f64,
    pub caliper_mm: f64,
    pub edge_mm: f64,
}

impl Scatter {
    /// What one day adds to what the balance scale shows too much on every day, points.
    #[must_use]
    pub fn day_points(&self) -> f64 {
        self.offset_points * (1.0 - HABIT_SHARE).sqrt()
    }
}

impl SimulatedShop {
    /// Draws a shop.
    #[must_use]
    pub fn draw(settings: &Settings, id: u64) -> Self {
        let f = settings.scatter;
        let mut draw = Draw::of(settings.seed, Stream::Shop, &[id]);
        let mut between = |(low, high): (f64, f64)| {
            let middle = f64::midpoint(low, high);
            draw.uniform(middle - f * (middle - low), middle + f * (high - middle))
        };
        let heavy = if settings.has(Trouble::HeavyAdhesive) { 2.0 } else { 1.0 };
        let heavy = if settings.has(Trouble::LightAdhesive) { heavy / 2.0 } else { heavy };
        let wide = settings.world == World::Wide;
        let of = |usual: (f64, f64), other: (f64, f64)| if wide { other } else { usual };
        let joint_g = heavy * between(of(JOINT_G, Wide::JOINT_G));
        let joint_arm_mm = between((-JOINT_ARM_MM, JOINT_ARM_MM));
        let tape_share = between(of((1.0 - TAPE_SHARE, 1.0 + TAPE_SHARE), Wide::TAPE_SHARE));
        let turnings_g = between(of(TURNINGS_G, Wide::TURNINGS_G));
        let solvent_g = between(SOLVENT_G);
        let shaft_centre_mm = between(of((-SHAFT_CENTRE_MM, SHAFT_CENTRE_MM), Wide::SHAFT_CENTRE_MM));
        let shaft_bulge = between((-SHAFT_BULGE, SHAFT_BULGE));
        let noise_points = f * between(NOISE_POINTS);
        let head_g = f * between(HEAD_SD_G);
        let check_error_points = f * draw.normal(0.0, CHECK_SD_POINTS);
        let pieces = if wide { f * Wide::PIECES } else { f };
        let mut form = Draw::of(settings.seed, Stream::Form, &[id]);
        let mut in_some = |(share, (low, high)): (f64, (f64, f64))| {
            let (there, how_much) = (form.uniform(0.0, 1.0) < share, form.uniform(low, high));
            if wide && there { f * how_much } else { 0.0 }
        };
        let (of_shops, above_g, above_tip_mm) = Wide::ABOVE_TIP;
        let above_tip_g = in_some((of_shops, above_g));
        let tape_short_mm = in_some(Wide::TAPE_SHORT);
        let stretch_mm = in_some(Wide::STRETCH);
        let habit_points = f * form.normal(0.0, OFFSET_SD_POINTS * HABIT_SHARE.sqrt());
        let bay_points = f * if settings.has(Trouble::BayScale) { BAY_POINTS * draw.sign() } else { 0.0 };
        let loose = settings.has(Trouble::LooseGrips);
        let grip_g = if settings.has(Trouble::ScatteredGrips) { SCATTERED_GRIP_SD_G } else { GRIP_SD_G };
        let drift_fixed = if settings.has(Trouble::Drift) { DRIFT_TROUBLE_POINTS } else { 0.0 };
        Self {
            seed: settings.seed,
            id,
            joint_g,
            joint_arm_mm,
            tape_share,
            turnings_g,
            solvent_g,
            shaft_centre_mm,
            shaft_bulge,
            noise_points,
            check_error_points,
            bay_points,
            habit_points,
            above_tip_g,
            above_tip_mm,
            tape_short_mm,
            stretch_mm,
            scatter: Scatter {
                mix_g: f * MIX_SD_G,
                joint_g: pieces * heavy * JOINT_SD_G,
                tape_job_share: f * TAPE_JOB_SD_SHARE,
                tape_g: pieces * TAPE_SD_G,
                tape_end_mm: pieces * TAPE_END_SD_MM,
                grip_centre_mm: pieces * if loose { LOOSE_CENTRE_SD_MM } else { GRIP_CENTRE_SD_MM },
                cap_mm: pieces * if loose { LOOSE_CAP_SD_MM } else { CAP_SD_MM },
                head_offset_number_mm: f * OFFSET_NUMBER_SD_MM.hypot(if wide { Wide::OFF_AXIS_SD_MM } else { 0.0 }),
                head_offset_mm: if settings.has(Trouble::LooseHeads) {
                    f * LOOSE_OFFSET_SD_MM
                } else {
                    pieces * OFFSET_SD_MM
                },
                shaft_centre_mm: pieces * SHAFT_CENTRE_SD_MM,
                head_g,
                shaft_g: f * SHAFT_SD_G,
                // Spare grips are the means of correction: they stay as they are.
                grip_g,
                tip_weight_g: f * TIP_WEIGHT_SD_G,
                ferrule_g: f * FERRULE_SD_G,
                turnings_g: pieces * TURNINGS_SD_G,
                solvent_g: f * SOLVENT_SD_G,
                cut_mm: f * CUT_SD_MM,
                tip_place_mm: f * TIP_PLACE_SD_MM,
                offset_points: f * OFFSET_SD_POINTS,
                drift_points: f * DRIFT_SD_POINTS,
                drift_fixed_points: f * drift_fixed,
                mass_offset_g: f * MASS_OFFSET_SD_G,
                mass_noise_g: f * MASS_NOISE_G,
                rule_mm: f * RULE_SD_MM,
                caliper_mm: f * CALIPER_SD_MM,
                edge_mm: f * EDGE_SD_MM,
            },
        }
    }
}

/// True values of a head model.
#[derive(Debug, Clone, PartialEq)]
pub struct HeadTruth {
    /// Centre beyond the ground point, mm, number by number.
    pub offset_mm: Vec<f64>,
    /// Points by which a nominal club of each number is too light for D2 without a weight in the tip.
    pub light_points: Vec<f64>,
}

impl HeadTruth {
    /// Draws the truth of a head model with so many numbers.
    #[must_use]
    pub fn draw(settings: &Settings, shop: &SimulatedShop, model: u64, numbers: usize) -> Self {
        let mut draw = Draw::of(shop.seed, Stream::Head, &[shop.id, model]);
        let (low_mm, high_mm) = if settings.world == World::Wide { Wide::OFFSET_MM } else { (-OFFSET_MM, OFFSET_MM) };
        let of_model_mm = draw.uniform(settings.scatter * low_mm, settings.scatter * high_mm);
        let offset_mm =
            (0..numbers).map(|_| of_model_mm + draw.normal(0.0, shop.scatter.head_offset_number_mm)).collect();
        let light_points = (0..numbers).map(|_| draw.uniform(LIGHT_POINTS.0, LIGHT_POINTS.1)).collect();
        Self { offset_mm, light_points }
    }
}

/// True means of a grip model.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GripTruth {
    /// Centre from the outside of its cap, mm.
    pub centre_mm: f64,
    /// Thickness of its cap, mm.
    pub cap_mm: f64,
}

impl GripTruth {
    /// What the middle of the range is: the maker's figures.
    #[must_use]
    pub const fn nominal() -> Self {
        Self {
            centre_mm: f64::midpoint(GRIP_CENTRE_IN.0, GRIP_CENTRE_IN.1) * 25.4,
            cap_mm: f64::midpoint(CAP_MM.0, CAP_MM.1),
        }
    }

    /// Draws the truth of a grip model.
    #[must_use]
    pub fn draw(settings: &Settings, shop: &SimulatedShop, model: u64) -> Self {
        let mut draw = Draw::of(shop.seed, Stream::Grip, &[shop.id, model]);
        let nominal = Self::nominal();
        let wide = settings.world == World::Wide;
        let mut around = |nominal_mm: f64, (low, high): (f64, f64), unit_mm: f64| {
            let f = settings.scatter;
            draw.uniform(nominal_mm + f * (low * unit_mm - nominal_mm), nominal_mm + f * (high * unit_mm - nominal_mm))
        };
        let centre_mm = around(nominal.centre_mm, if wide { Wide::GRIP_CENTRE_IN } else { GRIP_CENTRE_IN }, 25.4);
        let cap_mm = around(nominal.cap_mm, if wide { Wide::CAP_MM } else { CAP_MM }, 1.0);
        Self { centre_mm, cap_mm }
    }
}

/// Target of a job about D2, points.
#[must_use]
pub(crate) fn target_shift_points(draw: &mut Draw) -> f64 {
    (draw.uniform(-TARGET_POINTS, TARGET_POINTS) * 10.0).round() / 10.0
}

/// Middle of the range of a joint's adhesive: what the tin says that a joint takes, g.
pub(crate) const JOINT_NOMINAL_G: f64 = f64::midpoint(JOINT_G.0, JOINT_G.1);
