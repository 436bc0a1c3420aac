//! Values and exact derivatives of everything that can be read or asked for.

use crate::club::{OnClub, Role};
use crate::error::EstimationError as E;
use crate::layout::{ClubLayout, Layout, PieceLayout, Value, gripped};
use crate::reading::{OtherClub, Probe, Quantity};
use quantity::{A0_POINTS, FULCRUM_IN, POINT_G_IN};

/// A question with its names looked up.
#[derive(Debug, Clone)]
pub(crate) struct Question {
    pub club: Option<usize>,
    pub on: OnClub,
    pub kind: Kind,
    pub scale: Option<ScaleTerms>,
    /// A shared deviation that is taken off the value.
    pub less: Option<usize>,
    /// Another club, without deviations of its own, whose same quantity is taken off, and what is on it.
    pub less_club: Option<(usize, OnClub)>,
}

#[derive(Debug, Clone)]
pub(crate) enum Kind {
    PartMass(Role),
    PartArm(Role),
    Cap,
    TotalMass,
    SwingWeight,
    BalancePoint,
    Inertia,
    SwingPeriod {
        pivot_in: f64,
        gravity_in_s2: f64,
    },
    ShaftLength,
    LengthToCap,
    /// `constant + Σ gain · shared`; the mass is what a fulcrum error acts on.
    Shared {
        constant: f64,
        terms: Vec<(usize, f64)>,
        swing_weight_mass_g: Option<f64>,
    },
}

#[derive(Debug, Clone)]
pub(crate) struct ScaleTerms {
    pub scale: usize,
    offset: usize,
    gain: usize,
    fulcrum: usize,
    drift: Vec<(usize, f64)>,
}

/// A value and its derivatives with respect to the whitened states of one club and of the job.
#[derive(Debug, Clone)]
pub(crate) struct Row {
    pub club: Option<usize>,
    pub local: Vec<f64>,
    pub shared: Vec<f64>,
    pub value: f64,
}

/// Where the states stand: whitened, and for the shared ones also in their own units.
#[derive(Debug, Clone)]
pub(crate) struct Point {
    pub local: Vec<Vec<f64>>,
    pub whitened: Vec<f64>,
    pub shared: Vec<f64>,
}

impl Point {
    pub fn prior(layout: &Layout) -> Self {
        let whitened = vec![0.0; layout.shared_keys.len()];
        let local = layout.clubs.iter().map(|club| vec![0.0; club.states.len()]).collect();
        Self { local, shared: layout.shared_values(&whitened), whitened }
    }

    /// The point `step` times a direction further.
    pub fn moved(&self, layout: &Layout, step: f64, local: &[Vec<f64>], shared: &[f64]) -> Self {
        let add = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a + step * b).collect::<Vec<_>>();
        let whitened = add(&self.whitened, shared);
        let local = self.local.iter().zip(local).map(|(a, b)| add(a, b)).collect();
        Self { local, shared: layout.shared_values(&whitened), whitened }
    }
}

impl Question {
    /// A probe that names no time is asked for when its scale was last read; `latest_h` says when, hours by scale, and
    /// where it is too short the time is 0.
    pub fn new(layout: &Layout, probe: &Probe, latest_h: &[f64], who: &str) -> Result<Self, E> {
        let kind = match &probe.quantity {
            Quantity::PartMass(role) => Kind::PartMass(*role),
            Quantity::PartArm(role) => Kind::PartArm(*role),
            Quantity::CapThickness => Kind::Cap,
            Quantity::TotalMass => Kind::TotalMass,
            Quantity::SwingWeight => Kind::SwingWeight,
            Quantity::BalancePoint => Kind::BalancePoint,
            Quantity::Inertia => Kind::Inertia,
            Quantity::SwingPeriod { pivot_in, gravity_in_s2 } => {
                let pivot_in = E::finite(|| format!("{who}.pivot_in"), *pivot_in)?;
                let gravity_in_s2 = E::positive(|| format!("{who}.gravity_in_s2"), *gravity_in_s2)?;
                Kind::SwingPeriod { pivot_in, gravity_in_s2 }
            }
            Quantity::ShaftLength => Kind::ShaftLength,
            Quantity::LengthToCap => Kind::LengthToCap,
            Quantity::Shared(key) => shared_kind(0.0, vec![(layout.shared(key, who)?, 1.0)], None),
            Quantity::Combination(shares) => {
                let term = |share: &crate::Share| {
                    E::finite(|| format!("{who}.shared[{}].gain", share.key), share.gain)?;
                    Ok((layout.shared(&share.key, who)?, share.gain))
                };
                shared_kind(0.0, shares.iter().map(term).collect::<Result<_, E>>()?, None)
            }
            Quantity::CheckWeight { true_points, mass_g, shared } => {
                E::finite(|| format!("{who}.true_points"), *true_points)?;
                E::not_negative(|| format!("{who}.mass_g"), *mass_g)?;
                shared_kind(*true_points, own_error(layout, shared.as_deref(), who)?, Some(*mass_g))
            }
            Quantity::CheckMass { true_g, shared } => {
                E::not_negative(|| format!("{who}.true_g"), *true_g)?;
                shared_kind(*true_g, own_error(layout, shared.as_deref(), who)?, None)
            }
        };
        let club = match &probe.club {
            Some(key) if probe.quantity.needs_club() => Some(layout.club(key, who)?),
            None if probe.quantity.needs_club() => return Err(E::ClubMissing { wanted_by: who.into() }),
            _ => None,
        };
        if let (Some(i), Kind::PartMass(role) | Kind::PartArm(role)) = (club, &kind) {
            let club = &layout.clubs[i];
            if club.pieces.iter().all(|piece| piece.role != *role) {
                return Err(E::NoPiece { club: club.key.clone(), role: *role });
            }
        }
        let scale = match &probe.scale {
            None => None,
            Some(key) => {
                let scale = layout.scale(key, who)?;
                let at_h = probe.at_h.unwrap_or_else(|| latest_h.get(scale).copied().unwrap_or(0.0));
                let at_h = E::finite(|| format!("{who}.at_h"), at_h)?;
                let s = &layout.scales[scale];
                let drift = s.drift.terms(&s.key, at_h)?;
                Some(ScaleTerms { scale, offset: s.offset, gain: s.gain, fulcrum: s.fulcrum, drift })
            }
        };
        let less = probe.less.as_deref().map(|key| layout.shared(key, who)).transpose()?;
        let less_club = probe.less_club.as_ref().map(|other| other_club(layout, other, who)).transpose()?;
        Ok(Self { club, on: probe.on, kind, scale, less, less_club })
    }

    /// The value at a point, and its derivatives there.
    pub fn row(&self, layout: &Layout, point: &Point) -> Result<Row, E> {
        let club = self.club.map(|i| (&layout.clubs[i], point.local[i].as_slice()));
        let mut slope = Slope {
            local: club.map_or_else(Vec::new, |(_, local)| vec![0.0; local.len()]),
            shared: vec![0.0; layout.shared_keys.len()],
        };
        let scale = self.scale.as_ref();
        // A scale with a relative error shows that much more of everything that it weighs.
        let gain = scale.map_or(0.0, |s| point.shared[s.gain]);
        let is_swing_weight =
            matches!(self.kind, Kind::SwingWeight | Kind::Shared { swing_weight_mass_g: Some(_), .. });
        let mut value = match (&self.kind, club) {
            (Kind::Shared { constant, terms, .. }, _) => {
                terms.iter().for_each(|(k, g)| slope.shared[*k] += g * (1.0 + gain));
                constant + terms.iter().map(|(k, g)| g * point.shared[*k]).sum::<f64>()
            }
            (kind, Some((club, local))) => {
                let at = ClubPoint { club, local, shared: &point.shared, on: self.on };
                at.quantity(kind, 1.0 + gain, &mut slope)?
            }
            (_, None) => return Err(E::ClubMissing { wanted_by: "forecast".into() }),
        };
        if let Some(s) = scale {
            let whole = if is_swing_weight { value + A0_POINTS } else { value };
            slope.shared[s.gain] += whole;
            slope.shared[s.offset] += 1.0;
            value += gain * whole + point.shared[s.offset];
            for (k, part) in &s.drift {
                slope.shared[*k] += part;
                value += part * point.shared[*k];
            }
            if is_swing_weight {
                value += self.fulcrum(s.fulcrum, club, point, &mut slope);
            }
        }
        if let Some(k) = self.less {
            slope.shared[k] -= 1.0;
            value -= point.shared[k];
        }
        if let Some((other, on)) = self.less_club {
            // Its own list of local states is empty, so only shared slopes are added.
            let mut of_other = Slope { local: Vec::new(), shared: slope.shared };
            let at = ClubPoint { club: &layout.clubs[other], local: &[], shared: &point.shared, on };
            let taken_off = at.quantity(&self.kind, -1.0, &mut of_other)?;
            slope.shared = of_other.shared;
            value -= taken_off;
        }
        Ok(Row { club: self.club, local: slope.local, shared: layout.whiten(&slope.shared), value })
    }

    /// A fulcrum that stands `f` inches too near the butt adds `f` to the arm of everything on it.
    fn fulcrum(&self, key: usize, club: Option<(&ClubLayout, &[f64])>, point: &Point, slope: &mut Slope) -> f64 {
        let per_g = point.shared[key] / POINT_G_IN;
        let mass_g = match (&self.kind, club) {
            (Kind::Shared { swing_weight_mass_g: Some(mass_g), .. }, _) => *mass_g,
            (_, Some((club, local))) => {
                let at = ClubPoint { club, local, shared: &point.shared, on: self.on };
                at.pieces().map(|piece| slope.add(&piece.mass, per_g, local, &point.shared)).sum()
            }
            _ => 0.0,
        };
        slope.shared[key] += mass_g / POINT_G_IN;
        per_g * mass_g
    }
}

fn other_club(layout: &Layout, other: &OtherClub, who: &str) -> Result<(usize, OnClub), E> {
    let place = layout.club(&other.club, who)?;
    if layout.clubs[place].states.is_empty() {
        Ok((place, other.on))
    } else {
        Err(E::OwnDeviations { club: other.club.clone(), wanted_by: who.into() })
    }
}

fn shared_kind(constant: f64, terms: Vec<(usize, f64)>, swing_weight_mass_g: Option<f64>) -> Kind {
    Kind::Shared { constant, terms, swing_weight_mass_g }
}

fn own_error(layout: &Layout, key: Option<&str>, who: &str) -> Result<Vec<(usize, f64)>, E> {
    key.map(|key| Ok((layout.shared(key, who)?, 1.0))).into_iter().collect()
}

/// Derivatives: of the club's own states whitened, of the shared ones in their own units.
struct Slope {
    local: Vec<f64>,
    shared: Vec<f64>,
}

impl Slope {
    /// Add `factor` times the derivative of a value, and return the value.
    fn add(&mut self, value: &Value, factor: f64, local: &[f64], shared: &[f64]) -> f64 {
        if let Some(i) = value.own {
            self.local[i] += factor * value.sd;
        }
        for (k, gain) in &value.shared {
            self.shared[*k] += factor * gain;
        }
        value.at(local, shared)
    }
}

struct ClubPoint<'a> {
    club: &'a ClubLayout,
    local: &'a [f64],
    shared: &'a [f64],
    on: OnClub,
}

impl ClubPoint<'_> {
    fn pieces(&self) -> impl Iterator<Item = &PieceLayout> {
        self.club.pieces.iter().filter(|piece| self.on.contains(piece.role))
    }

    fn get(&self, value: &Value) -> f64 {
        value.at(self.local, self.shared)
    }

    /// Distance of a piece from the end on the stop, and how often the cap is in it.
    fn lever(&self, piece: &PieceLayout) -> (f64, f64) {
        // A loose grip is balanced from its own cap. On the club that cap is the end on the stop, so nothing is added. What
        // counts from the cap while no grip is on counts from the bare butt then, and the cap comes off.
        let cap_times = f64::from(u8::from(gripped(self.on))) - f64::from(u8::from(piece.from_cap));
        let moved = if piece.moves { self.get(&self.club.length) - self.club.length.mean } else { 0.0 };
        (self.get(&piece.arm) + moved + cap_times * self.get(&self.club.cap), cap_times)
    }

    fn add(&self, slope: &mut Slope, value: &Value, factor: f64) -> f64 {
        slope.add(value, factor, self.local, self.shared)
    }

    fn add_lever(&self, slope: &mut Slope, piece: &PieceLayout, cap_times: f64, factor: f64) {
        self.add(slope, &piece.arm, factor);
        if cap_times != 0.0 {
            self.add(slope, &self.club.cap, factor * cap_times);
        }
        if piece.moves {
            self.add(slope, &self.club.length, factor);
        }
    }

    /// The quantity, adding `times` its derivatives to the slope.
    fn quantity(&self, kind: &Kind, times: f64, slope: &mut Slope) -> Result<f64, E> {
        Ok(match kind {
            Kind::PartMass(role) => {
                let same = self.club.pieces.iter().filter(|piece| piece.role == *role);
                same.map(|piece| self.add(slope, &piece.mass, times)).sum()
            }
            Kind::PartArm(role) => self.part_arm(*role, times, slope)?,
            Kind::Cap => self.add(slope, &self.club.cap, times),
            Kind::TotalMass => self.pieces().map(|piece| self.add(slope, &piece.mass, times)).sum(),
            Kind::SwingWeight => self.swing_weight(times, slope),
            Kind::BalancePoint => self.balance_point(times, slope)?,
            Kind::Inertia => self.inertia(times, slope),
            Kind::SwingPeriod { pivot_in, gravity_in_s2 } => self.period(*pivot_in, *gravity_in_s2, times, slope)?,
            Kind::ShaftLength => self.add(slope, &self.club.length, times),
            Kind::LengthToCap => self.add(slope, &self.club.length, times) + self.add(slope, &self.club.cap, times),
            // Shared quantities are answered before a club is looked at.
            Kind::Shared { constant, .. } => *constant,
        })
    }

    fn swing_weight(&self, times: f64, slope: &mut Slope) -> f64 {
        let mut moment_g_in = 0.0;
        let times = times / POINT_G_IN;
        for piece in self.pieces() {
            let (lever_in, cap_times) = self.lever(piece);
            let mass_g = self.add(slope, &piece.mass, times * (lever_in - FULCRUM_IN));
            self.add_lever(slope, piece, cap_times, times * mass_g);
            moment_g_in += mass_g * (lever_in - FULCRUM_IN);
        }
        moment_g_in / POINT_G_IN - A0_POINTS
    }

    fn balance_point(&self, times: f64, slope: &mut Slope) -> Result<f64, E> {
        let (mut mass_g, mut moment_g_in) = (0.0, 0.0);
        for piece in self.pieces() {
            let m = self.get(&piece.mass);
            mass_g += m;
            moment_g_in += m * self.lever(piece).0;
        }
        if mass_g <= 0.0 {
            return Err(E::NothingOnClub { club: self.club.key.clone(), mass_g });
        }
        let centre_in = moment_g_in / mass_g;
        // The slope of Σmx/Σm by one mass is its distance from the centre over Σm: a piece that sits at the balance point
        // leaves it where it is, however heavy.
        for piece in self.pieces() {
            let (lever_in, cap_times) = self.lever(piece);
            let m = self.add(slope, &piece.mass, times * (lever_in - centre_in) / mass_g);
            self.add_lever(slope, piece, cap_times, times * m / mass_g);
        }
        Ok(centre_in)
    }

    fn inertia(&self, times: f64, slope: &mut Slope) -> f64 {
        let mut inertia_g_in2 = 0.0;
        for piece in self.pieces() {
            let (lever_in, cap_times) = self.lever(piece);
            let mass_g = self.add(slope, &piece.mass, times * lever_in * lever_in);
            self.add_lever(slope, piece, cap_times, times * 2.0 * mass_g * lever_in);
            inertia_g_in2 += mass_g * lever_in * lever_in + piece.own_inertia_g_in2;
        }
        inertia_g_in2
    }

    /// `2π √(I / (g M))`: the inertia I = Σ m (x − p)² about the pivot, and the moment M = Σ m (x − p) about it.
    fn period(&self, pivot_in: f64, gravity_in_s2: f64, times: f64, slope: &mut Slope) -> Result<f64, E> {
        let (mut inertia, mut moment) = (0.0, 0.0);
        for piece in self.pieces() {
            let (mass_g, from_in) = (self.get(&piece.mass), self.lever(piece).0 - pivot_in);
            moment += mass_g * from_in;
            inertia += mass_g * from_in * from_in + piece.own_inertia_g_in2;
        }
        if moment <= 0.0 || inertia <= 0.0 {
            return Err(E::NothingHangs { club: self.club.key.clone(), pivot_in });
        }
        let period_s = 2.0 * std::f64::consts::PI * (inertia / (gravity_in_s2 * moment)).sqrt();
        // dT/T is half of dI/I less dM/M.
        let (by_inertia, by_moment) = (times * period_s / (2.0 * inertia), -times * period_s / (2.0 * moment));
        for piece in self.pieces() {
            let (lever_in, cap_times) = self.lever(piece);
            let from_in = lever_in - pivot_in;
            let mass_g = self.add(slope, &piece.mass, by_inertia * from_in * from_in + by_moment * from_in);
            self.add_lever(slope, piece, cap_times, mass_g * (2.0 * by_inertia * from_in + by_moment));
        }
        Ok(period_s)
    }

    fn part_arm(&self, role: Role, times: f64, slope: &mut Slope) -> Result<f64, E> {
        let same: Vec<&PieceLayout> = self.club.pieces.iter().filter(|piece| piece.role == role).collect();
        if let [piece] = same.as_slice() {
            return Ok(self.add(slope, &piece.arm, times));
        }
        let mass_g: f64 = same.iter().map(|piece| self.get(&piece.mass)).sum();
        if mass_g <= 0.0 {
            return Err(E::NothingOnClub { club: self.club.key.clone(), mass_g });
        }
        let moment = same.iter().map(|piece| self.get(&piece.mass) * self.get(&piece.arm)).sum::<f64>();
        let centre_in = moment / mass_g;
        for piece in same {
            let arm_in = self.get(&piece.arm);
            let m = self.add(slope, &piece.mass, times * (arm_in - centre_in) / mass_g);
            self.add(slope, &piece.arm, times * m / mass_g);
        }
        Ok(centre_in)
    }
}
