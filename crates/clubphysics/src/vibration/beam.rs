//! The clamped shaft with its head as an Euler–Bernoulli beam of finite elements.

use super::band::{Band, dot};
use super::chain::Chain;
use super::line::{StiffnessLine, Stretch};
use crate::advice::{Advice, Clash, Settling};
use crate::error::PhysicsError;

/// Gauss–Legendre rule of five points on (-1, 1): exact to the ninth degree, above the eighth that a solid cone needs.
const GAUSS: [(f64, f64); 5] = [
    (0.0, 0.568_888_888_888_888_9),
    (0.538_469_310_105_683_1, 0.478_628_670_499_366_5),
    (-0.538_469_310_105_683_1, 0.478_628_670_499_366_5),
    (0.906_179_845_938_664, 0.236_926_885_056_189_1),
    (-0.906_179_845_938_664, 0.236_926_885_056_189_1),
];

/// Steps of the iteration before it is given up. A cantilever needs about ten.
const STEPS_MAX: usize = 500;

/// Relative change of the eigenvalue at which the iteration has settled.
const SETTLED: f64 = 1e-13;

/// A rigid body fixed to the tip of the shaft.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct RigidTip {
    /// Mass, kg, at least 0; 0 is a bare tip.
    pub mass_kg: f64,
    /// Distance of its centre of mass beyond the tip along the shaft axis, m.
    pub offset_m: f64,
    /// Moment of inertia about its own centre of mass, across the shaft axis, kg·m².
    pub inertia_kg_m2: f64,
}

/// One way the beam swings.
#[derive(Debug, Clone)]
pub struct Mode {
    /// Angular frequency, rad/s.
    pub angular_rad_s: f64,
    /// Deflection (m) and slope (rad) of each free node from the clamp to the tip, of unit modal mass.
    pub shape: Vec<f64>,
}

impl Mode {
    /// Cycles per minute.
    #[must_use]
    pub fn frequency_cpm(&self) -> f64 {
        self.angular_rad_s * 30.0 / std::f64::consts::PI
    }

    /// Share of a gram at the centre of the tip body in the modal mass: the square of the mode there.
    #[must_use]
    pub(crate) fn at_tip_body(&self, offset_m: f64) -> f64 {
        let last = self.shape.len();
        self.shape[last - 2] + offset_m * self.shape[last - 1]
    }
}

/// Flexibility and mass of a clamped shaft.
///
/// Cubic Hermite elements with consistent mass; stiffness and mass of the table are integrated exactly. A node lies on
/// every row of the table, and as many more as give the elements that are asked for. Rows may be as close to each
/// other and to the ends as they like: what a load does is added up along the `Chain`, which loses nothing in a short
/// element.
///
/// Accuracy: with 40 elements the first frequency is within 1e-6 of the analytic value for uniform, tapered and
/// tip-loaded beams, see `tests/vibration.rs`; with 30, within 1e-5 of an integration of the beam's equation for rows at
/// any distance from each other and from the cuts, see `tests/vibration_close_rows.rs`.
#[derive(Debug, Clone)]
pub struct Beam {
    mass: Band,
    chain: Chain,
    nodes_m: Vec<f64>,
    shaft_mass_kg: f64,
    free_length_m: f64,
}

impl Beam {
    /// Clamps the shaft at `clamp_m` and ends it at `tip_m`, both measured from the raw butt.
    ///
    /// # Errors
    /// [`PhysicsError::Contradiction`] when the table does not cover the free part, or the free part has no length.
    pub fn new(
        line: &StiffnessLine,
        clamp_m: f64,
        tip_m: f64,
        tip: RigidTip,
        elements: usize,
    ) -> Result<Self, PhysicsError> {
        check_cover(line, clamp_m, tip_m)?;
        Self::build(line, clamp_m, tip_m, tip, elements)
    }

    /// As [`Beam::new`], but the ends may lie a step of a derivative outside the table.
    pub(super) fn build(
        line: &StiffnessLine,
        clamp_m: f64,
        tip_m: f64,
        tip: RigidTip,
        elements: usize,
    ) -> Result<Self, PhysicsError> {
        let nodes = place_nodes(line, clamp_m, tip_m, elements);
        let size = 2 * (nodes.len() - 1);
        let mut chain = Chain::with_capacity(nodes.len() - 1);
        let mut mass = Band::zeros(size);
        let mut shaft_mass_kg = 0.0;
        for (e, pair) in nodes.windows(2).enumerate() {
            let element = Element::integrate(line, pair[0], pair[1]);
            shaft_mass_kg += element.mass_kg;
            if !chain.push(pair[1] - pair[0], element.far_end) {
                return Err(limp(pair[0], pair[1]));
            }
            for i in 0..4 {
                for j in 0..=i {
                    // The first node is held: its two freedoms do not exist.
                    if let (Some(row), Some(column)) = ((2 * e + i).checked_sub(2), (2 * e + j).checked_sub(2)) {
                        mass.add(row, column, element.mass[i][j]);
                    }
                }
            }
        }
        let (deflection, slope) = (size - 2, size - 1);
        mass.add(deflection, deflection, tip.mass_kg);
        mass.add(slope, deflection, tip.mass_kg * tip.offset_m);
        mass.add(slope, slope, tip.inertia_kg_m2 + tip.mass_kg * tip.offset_m * tip.offset_m);
        Ok(Self { mass, chain, nodes_m: nodes, shaft_mass_kg, free_length_m: tip_m - clamp_m })
    }

    /// Mass of the shaft between clamp and tip, kg.
    #[must_use]
    pub(crate) fn shaft_mass_kg(&self) -> f64 {
        self.shaft_mass_kg
    }

    /// Length between clamp and tip, m.
    #[must_use]
    pub(crate) fn free_length_m(&self) -> f64 {
        self.free_length_m
    }

    /// Freedoms of the model.
    #[must_use]
    pub fn freedoms(&self) -> usize {
        self.mass.size()
    }

    /// Places of the nodes from the butt of the raw shaft, m: the clamp, then those that [`Mode::shape`] is of.
    #[must_use]
    pub(crate) fn nodes_m(&self) -> &[f64] {
        &self.nodes_m
    }

    /// Deflection (m) and slope (rad) of each free node under a force across the axis at the tip.
    #[must_use]
    pub(crate) fn bent_shape(&self, load_n: f64) -> Vec<f64> {
        let mut shape = self.tip_load();
        self.chain.bend(&mut shape);
        shape.iter_mut().for_each(|value| *value *= load_n);
        shape
    }

    /// Deflection of the tip under a force across the axis there, m. No gravity, small slopes.
    #[must_use]
    pub(crate) fn tip_deflection_m(&self, load_n: f64) -> f64 {
        let shape = self.bent_shape(load_n);
        shape[shape.len() - 2]
    }

    /// The slowest mode, by inverse iteration from the shape under a tip load.
    ///
    /// # Errors
    /// [`PhysicsError::Contradiction`] when nothing has mass, [`PhysicsError::NotConverged`].
    pub fn first_mode(&self) -> Result<Mode, PhysicsError> {
        self.next_mode(&[])?.ok_or_else(nothing_swings)
    }

    /// The slowest `count` modes. Fewer come back when fewer freedoms carry mass, as on a massless shaft.
    ///
    /// # Errors
    /// As [`Beam::first_mode`].
    pub fn modes(&self, count: usize) -> Result<Vec<Mode>, PhysicsError> {
        let mut found: Vec<Mode> = Vec::with_capacity(count);
        while found.len() < count {
            match self.next_mode(&found)? {
                Some(mode) => found.push(mode),
                None => break,
            }
        }
        if found.is_empty() { Err(nothing_swings()) } else { Ok(found) }
    }

    fn tip_load(&self) -> Vec<f64> {
        let mut load = vec![0.0; self.freedoms()];
        let at = load.len() - 2;
        load[at] = 1.0;
        load
    }

    /// Inverse iteration in the space that is mass-orthogonal to the modes found so far.
    fn next_mode(&self, found: &[Mode]) -> Result<Option<Mode>, PhysicsError> {
        let size = self.freedoms();
        let mut inertia = vec![0.0; size];
        let weighted: Vec<Vec<f64>> = found
            .iter()
            .map(|mode| {
                self.mass.times(&mode.shape, &mut inertia);
                inertia.clone()
            })
            .collect();
        let mut x = if found.is_empty() { self.tip_load() } else { start_shape(size, found.len()) };
        self.chain.bend(&mut x);
        let mut before = 0.0;
        let mut change = f64::INFINITY;
        for step in 0..STEPS_MAX {
            let length = dot(&x, &x).sqrt();
            for (mode, row) in found.iter().zip(&weighted) {
                let along = dot(row, &x);
                x.iter_mut().zip(&mode.shape).for_each(|(value, part)| *value -= along * part);
            }
            self.mass.times(&x, &mut inertia);
            let modal_mass = dot(&x, &inertia);
            // What is left of the vector is rounding: every freedom with mass is already in `found`.
            if length == 0.0 || dot(&x, &x).sqrt() < 1e-11 * length || modal_mass <= 0.0 {
                return Ok(None);
            }
            let scale = modal_mass.sqrt().recip();
            x.iter_mut().for_each(|value| *value *= scale);
            inertia.iter_mut().for_each(|value| *value *= scale);
            let normed = x.clone();
            x.copy_from_slice(&inertia);
            self.chain.bend(&mut x);
            // Rayleigh quotient of the flexibility: xᵀ·M·K⁻¹·M·x at unit modal mass is 1/ω².
            let flexibility = dot(&inertia, &x);
            change = ((flexibility - before) / flexibility).abs();
            before = flexibility;
            if step > 0 && change < SETTLED {
                return Ok(Some(Mode { angular_rad_s: flexibility.sqrt().recip(), shape: normed }));
            }
        }
        Err(PhysicsError::NotConverged { what: Settling::BendingMode, residual: change, steps: STEPS_MAX })
    }
}

/// Refuses a stretch of shaft that does not resist bending.
fn limp(from_m: f64, to_m: f64) -> PhysicsError {
    PhysicsError::Contradiction {
        what: Clash::NoStiffness { from_mm: from_m * 1000.0, to_mm: to_m * 1000.0 },
        advice: Box::new(Advice::StiffnessAboveZero),
    }
}

/// A load pattern that is not blind to the wanted mode: signs that change more often for higher modes.
fn start_shape(size: usize, order: usize) -> Vec<f64> {
    (0..size)
        .map(|i| {
            let along = (i / 2 + 1) as f64 / (size / 2) as f64;
            if i % 2 == 0 { ((order as f64 + 0.47) * 3.0 * along).sin() + 0.1 * along } else { 0.003 * along }
        })
        .collect()
}

fn nothing_swings() -> PhysicsError {
    PhysicsError::Contradiction { what: Clash::NoMass, advice: Box::new(Advice::MassOfShaftOrHead) }
}

fn check_cover(line: &StiffnessLine, clamp_m: f64, tip_m: f64) -> Result<(), PhysicsError> {
    const ROUNDING_M: f64 = 1e-9;
    let free_m = tip_m - clamp_m;
    if free_m.is_nan() || free_m < 1e-3 {
        return Err(PhysicsError::Contradiction {
            what: Clash::NoFreeShaft { free_mm: (tip_m - clamp_m) * 1000.0 },
            advice: Box::new(Advice::CheckClampAndTrims),
        });
    }
    let (first, last) = line.covers_m();
    if first > clamp_m + ROUNDING_M || last < tip_m - ROUNDING_M {
        return Err(PhysicsError::Contradiction {
            what: Clash::NotCovered {
                from_mm: first * 1000.0,
                to_mm: last * 1000.0,
                free_from_mm: clamp_m * 1000.0,
                free_to_mm: tip_m * 1000.0,
            },
            advice: Box::new(Advice::RowsToBothEnds),
        });
    }
    Ok(())
}

/// An element over which the stiffness changes by more than this share (as a logarithm) is split: the cubic of an
/// element does not follow a curvature that halves within it, which would leave 3e-5 of the third mode.
const STEEP: f64 = 0.25;

/// Pieces of a steep span at most: four bring a stiffness that halves well below the stated accuracy.
const STEEP_PIECES_MAX: usize = 4;

/// Nodes on every row of the table, the rest spread to even lengths.
fn place_nodes(line: &StiffnessLine, clamp_m: f64, tip_m: f64, elements: usize) -> Vec<f64> {
    let spans = line.spans(clamp_m, tip_m);
    let even_m = (tip_m - clamp_m) / elements as f64;
    let mut counts: Vec<usize> =
        spans.iter().map(|span| ((span.steepness / STEEP).ceil() as usize).clamp(1, STEEP_PIECES_MAX)).collect();
    // Elements between close rows are no help to the rest of the shaft, so they do not count among those asked for.
    let extra: usize =
        spans.iter().zip(&counts).filter(|(span, _)| span.length_m() < 0.5 * even_m).map(|(_, count)| count).sum();
    for _ in counts.iter().sum::<usize>()..elements + extra {
        let size = |i: usize| spans[i].length_m() / counts[i] as f64;
        let longest = (0..counts.len()).max_by(|a, b| size(*a).total_cmp(&size(*b))).unwrap_or(0);
        // A table of many rows is fine enough by itself.
        if size(longest) <= even_m {
            break;
        }
        counts[longest] += 1;
    }
    let mut nodes = vec![clamp_m];
    for (span, &count) in spans.iter().zip(&counts) {
        let step_m = span.length_m() / count as f64;
        nodes.extend((1..count).map(|j| span.from_m + step_m * j as f64));
        nodes.push(span.to_m);
    }
    nodes
}

/// One element of the beam.
struct Element {
    /// Stiffness of the end nearer to the tip while the other is held: force by deflection, moment by deflection,
    /// moment by slope.
    far_end: [f64; 3],
    /// Consistent mass; only the lower triangle is filled.
    mass: [[f64; 4]; 4],
    mass_kg: f64,
}

impl Element {
    fn integrate(line: &StiffnessLine, from_m: f64, to_m: f64) -> Self {
        let mut element = Self { far_end: [0.0; 3], mass: [[0.0; 4]; 4], mass_kg: 0.0 };
        for stretch in line.overlapping(from_m, to_m) {
            element.add_piece(stretch, from_m, to_m);
        }
        element
    }

    /// Adds the integral over the part of the element that lies in one stretch of the table.
    fn add_piece(&mut self, stretch: &Stretch, from_m: f64, to_m: f64) {
        let (start, end) = stretch.clip(from_m, to_m);
        let length = to_m - from_m;
        let inverse = 1.0 / length;
        let half = 0.5 * (end - start);
        let middle = 0.5 * (end + start);
        for (point, weight) in GAUSS {
            let x = middle + half * point;
            let (stiffness_n_m2, mass_kg_m) = stretch.at(x);
            let s = (x - from_m) * inverse;
            let shape = [
                1.0 + s * s * (2.0 * s - 3.0),
                length * s * (1.0 + s * (s - 2.0)),
                s * s * (3.0 - 2.0 * s),
                length * s * s * (s - 1.0),
            ];
            // Curvature by the deflection and by the slope of the far end.
            let (by_deflection, by_slope) = ((6.0 - 12.0 * s) * inverse * inverse, (6.0 * s - 2.0) * inverse);
            let (k, m) = (stiffness_n_m2 * weight * half, mass_kg_m * weight * half);
            self.mass_kg += m;
            self.far_end[0] += k * by_deflection * by_deflection;
            self.far_end[1] += k * by_deflection * by_slope;
            self.far_end[2] += k * by_slope * by_slope;
            for i in 0..4 {
                for j in 0..=i {
                    self.mass[i][j] += m * shape[i] * shape[j];
                }
            }
        }
    }
}
