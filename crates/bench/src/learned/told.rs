//! What builders said, among what the shop knows.
//!
//! A middle iron is 37 in long (L, a 7-iron: common practice, no source). A point is 49.61 g·in about a fulcrum 14 in from the end.
//! From the lever (derived): the adhesive lies 1.2 in and the ferrule 2.8 in from the ground point, so that a joint puts on
//! `[m(L − 15.2) − turnings·(L − 16.8)]/49.61` and a ferrule `m(L − 16.8)/49.61`; a wrap lies 8.8 in behind the fulcrum and takes
//! off `8.8·m/49.61`; a grip of mass m with its centre x from its cap takes off `[m(14 − x) − 390·cap]/49.61`, since its cap
//! carries the 390 g of the rest of the club that much further out.

use super::{Learned, ValueKey};
use crate::told::{ToldFault, ToldFigure, ToldOf};
use quantity::{FULCRUM_IN, INCH_MM, POINT_G_IN};
use trade::error::TradeError;
use trade::model::Library;
use trade::places::TURNINGS_G;

/// What a shop does not know of a model's grip centre, mm, and the scatter of single grips.
pub(crate) const GRIP_CENTRE_SD_MM: (f64, f64) = (4.3, 0.7);
/// What a shop does not know of a model's cap thickness, mm, and the scatter of single grips.
pub(crate) const CAP_SD_MM: (f64, f64) = (0.64, 0.1);
/// Share of a tape's stated mass per area that a shop does not know, and what a job's own hand adds to it.
pub(crate) const TAPE_SHARE_SD: (f64, f64) = (0.2, 0.03);
/// Length of a middle iron, in.
const MIDDLE_IRON_IN: f64 = 37.0;
/// How far the adhesive's middle and the ferrule's lie from the ground point, in.
const ADHESIVE_UP_IN: f64 = 1.2;
const FERRULE_UP_IN: f64 = 2.8;
/// How far a wrap lies behind the fulcrum, in.
const TAPE_BEHIND_IN: f64 = 8.8;
/// What the cap carries further out, g.
const CLUB_WITHOUT_GRIP_G: f64 = 390.0;
/// One wrap under a usual grip: a strip from the shaft's end to short of the mouth of a 10.5 in grip, once round a butt of 0.600 in,
/// mm (common practice, no source).
const STRIP_MM: (f64, f64) = (251.0, std::f64::consts::PI * 15.24);
/// How far a bag's ferrules may lie from what it states, g, once a builder says something else (a judgement, no source).
const FERRULE_SD_G: f64 = 0.15;

/// A figure as the belief has it: a constant and shared deviations, each with its factor.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Tied {
    /// By the models' own figures, points.
    pub model_points: f64,
    /// Key, points a unit, standard deviation that a new shop starts with.
    pub shares: Vec<(String, f64, f64)>,
    /// What the figure leaves open besides, points.
    pub own_sd_points: f64,
}

impl Tied {
    /// None where the library has no such model.
    pub fn of(of: ToldOf, model: &str, library: &Library) -> Option<Self> {
        let joint_in = MIDDLE_IRON_IN - ADHESIVE_UP_IN - FULCRUM_IN;
        let ferrule_in = MIDDLE_IRON_IN - FERRULE_UP_IN - FULCRUM_IN;
        let mut own_sd_points = 0.0;
        let (model_g_in, shares) = match of {
            ToldOf::Joint => {
                let adhesive = library.adhesive(model).ok()?;
                let key = ValueKey::Adhesive(adhesive.code.clone()).to_string();
                own_sd_points = TURNINGS_G.1 * ferrule_in / POINT_G_IN;
                let moment = adhesive.joint_mass_g * joint_in - TURNINGS_G.0 * ferrule_in;
                (moment, vec![(key, joint_in, adhesive.joint_mass_sd_g)])
            }
            ToldOf::Wrap => {
                let tape = library.tape(model).ok()?;
                let key = ValueKey::Tape(tape.code.clone()).to_string();
                let moment = -TAPE_BEHIND_IN * STRIP_MM.0 * STRIP_MM.1 * tape.mass_per_area_g_per_m2 * 1e-6;
                (moment, vec![(key, moment, TAPE_SHARE_SD.0)])
            }
            ToldOf::Grip => {
                let grip = library.grip(model).ok()?;
                let centre = ValueKey::GripCentre(grip.code.clone()).to_string();
                let cap = ValueKey::Cap(grip.code.clone()).to_string();
                let moment =
                    grip.mass_g * (FULCRUM_IN - grip.centre_mm / INCH_MM) - CLUB_WITHOUT_GRIP_G * grip.cap_mm / INCH_MM;
                let shares = vec![
                    (centre, grip.mass_g, GRIP_CENTRE_SD_MM.0 / INCH_MM),
                    (cap, CLUB_WITHOUT_GRIP_G, CAP_SD_MM.0 / INCH_MM),
                ];
                (-moment, shares)
            }
            ToldOf::Ferrule => {
                let ferrule = library.ferrule(model).ok()?;
                (ferrule.mass_g * ferrule_in, vec![(ferrule_key(&ferrule.code), ferrule_in, FERRULE_SD_G)])
            }
        };
        let shares = shares.into_iter().map(|(key, gain, sd)| (key, gain / POINT_G_IN, sd)).collect();
        Some(Self { model_points: model_g_in / POINT_G_IN, shares, own_sd_points })
    }
}

/// Key of what a model's ferrules weigh beyond what their bag states, g: in a belief only where a builder has said something.
pub(crate) fn ferrule_key(code: &str) -> String {
    format!("ferrule:{code}")
}

/// A figure beside what is known without it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BesideTold {
    /// By the models' own figures, points.
    pub model_points: f64,
    /// By what the shop's clubs have taught, points, and its standard deviation; none where they have taught nothing.
    pub learned_points: Option<(f64, f64)>,
}

impl Learned {
    /// The figure that a builder said of something.
    #[must_use]
    pub fn told_of(&self, of: ToldOf, model: &str) -> Option<&ToldFigure> {
        self.told.iter().find(|t| t.of == of && t.model == model)
    }

    /// Takes a figure in; what was said of the same before goes out.
    pub fn tell(&mut self, figure: ToldFigure) {
        self.told.retain(|t| (t.of, &t.model) != (figure.of, &figure.model));
        self.told.push(figure);
        self.told.sort_by(|a, b| (a.of, &a.model).cmp(&(b.of, &b.model)));
        self.not_asked = false;
    }

    /// Takes a figure out, as if it had never been said.
    ///
    /// # Errors
    /// Nothing was said of it.
    pub fn withdraw(&mut self, of: ToldOf, model: &str) -> Result<(), TradeError> {
        let before = self.told.len();
        self.told.retain(|t| t.of != of || t.model != model);
        if self.told.len() == before {
            let model = model.to_owned();
            return Err(TradeError::refused(ToldFault::NotTold { of, model }));
        }
        Ok(())
    }

    /// What is known of something without what a builder said of it; none for a model that is not there.
    #[must_use]
    pub fn beside_told(&self, of: ToldOf, model: &str, library: &Library) -> Option<BesideTold> {
        let tied = Tied::of(of, model, library)?;
        let at: Vec<(usize, f64)> =
            tied.shares.iter().filter_map(|(key, gain, _)| Some((self.position(key)?, *gain))).collect();
        let mean = at.iter().map(|(i, gain)| gain * self.values[*i].mean_shift).sum::<f64>();
        let of_row =
            |i: usize, gain: f64| at.iter().map(|(j, other)| gain * other * self.covariance[i][*j]).sum::<f64>();
        let learned = at.iter().map(|(i, gain)| of_row(*i, *gain)).sum::<f64>();
        // What was not learned is as open as in a new shop.
        let open = tied.shares.iter().filter(|(key, _, _)| self.position(key).is_none());
        let open = open.map(|(_, gain, sd)| (gain * sd).powi(2)).sum::<f64>();
        let sd = (learned + open + tied.own_sd_points.powi(2)).max(0.0).sqrt();
        let learned_points = (!at.is_empty()).then_some((tied.model_points + mean, sd));
        Some(BesideTold { model_points: tied.model_points, learned_points })
    }

    /// The same without what builders said.
    #[must_use]
    pub fn without_told(&self) -> Self {
        Self { told: Vec::new(), ..self.clone() }
    }
}
