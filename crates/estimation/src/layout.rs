//! The job laid out as numbers: which state stands where.
//!
//! States are *whitened*: each is a deviation in units of its own prior standard deviation, so that the prior is the
//! unit matrix and nothing depends on whether a value is in grams, inches or points. What is known exactly has no
//! state. Clubs, shared keys and scales stand in the order of their names.

use crate::club::{Club, Datum, OnClub, Piece, Prior, Role};
use crate::drift::DriftLayout;
use crate::error::{CovarianceFault, EstimationError as E};
use crate::job::{JobModel, JointPrior, ScalePrior};
use std::collections::BTreeMap;

/// A value: mean, own state, shared terms.
#[derive(Debug, Clone, Default)]
pub(crate) struct Value {
    pub mean: f64,
    pub sd: f64,
    pub own: Option<usize>,
    pub shared: Vec<(usize, f64)>,
}

impl Value {
    /// The value itself, at a point in the space of states.
    pub fn at(&self, local: &[f64], shared: &[f64]) -> f64 {
        let own = self.own.map_or(0.0, |i| self.sd * local[i]);
        self.mean + own + self.shared.iter().map(|(k, gain)| gain * shared[*k]).sum::<f64>()
    }
}

#[derive(Debug, Clone)]
pub(crate) struct PieceLayout {
    pub role: Role,
    pub mass: Value,
    pub arm: Value,
    pub moves: bool,
    pub from_cap: bool,
    pub own_inertia_g_in2: f64,
}

/// What a club's own state belongs to, for the budget.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum LocalState {
    Piece(Role),
    Length,
    Cap,
}

#[derive(Debug, Clone)]
pub(crate) struct ClubLayout {
    pub key: String,
    pub pieces: Vec<PieceLayout>,
    pub length: Value,
    pub cap: Value,
    pub target_points: f64,
    pub tolerance_points: f64,
    pub states: Vec<LocalState>,
}

#[derive(Debug, Clone)]
pub(crate) struct ScaleLayout {
    pub key: String,
    pub offset: usize,
    pub gain: usize,
    pub fulcrum: usize,
    pub noise_sd: f64,
    pub resolution: f64,
    pub drift: DriftLayout,
}

/// What a shared state belongs to, for the budget.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum SharedOwner {
    Key,
    Scale(usize),
}

#[derive(Debug, Clone)]
pub(crate) struct Layout {
    pub clubs: Vec<ClubLayout>,
    pub scales: Vec<ScaleLayout>,
    pub shared_keys: Vec<String>,
    pub shared_owner: Vec<SharedOwner>,
    pub shared_mean: Vec<f64>,
    /// Row `k`: how the shared deviation `k` is made of the whitened states.
    pub shared_factor: Vec<Vec<(usize, f64)>>,
}

impl Layout {
    pub fn new(job: &JobModel) -> Result<Self, E> {
        let mut shared = Collected::default();
        for prior in &job.shared {
            E::finite(|| format!("shared[{}].mean_shift", prior.key), prior.mean_shift)?;
            E::not_negative(|| format!("shared[{}].sd", prior.key), prior.sd)?;
            shared.add(prior.key.clone(), SharedOwner::Key, prior.mean_shift, prior.sd)?;
        }
        let mut sorted_scales: Vec<&ScalePrior> = job.scales.iter().collect();
        sorted_scales.sort_by(|a, b| a.key.cmp(&b.key));
        for (number, scale) in sorted_scales.iter().enumerate() {
            collect_scale(&mut shared, scale, number)?;
        }
        let (shared_keys, shared_owner, shared_mean, shared_sd) = shared.in_order();
        let index = |key: &str| shared_keys.binary_search_by(|k| k.as_str().cmp(key)).ok();
        let scales = sorted_scales.iter().map(|scale| scale_layout(scale, &index)).collect();
        let shared_factor = factor(&job.joint, &shared_sd, &index)?;
        let mut sorted_clubs: Vec<&Club> = job.clubs.iter().collect();
        sorted_clubs.sort_by(|a, b| a.key.cmp(&b.key));
        if let Some(pair) = sorted_clubs.windows(2).find(|pair| pair[0].key == pair[1].key) {
            return Err(E::Duplicate { what: "clubs", key: pair[0].key.clone() });
        }
        let clubs = sorted_clubs.iter().map(|club| club_layout(club, &index)).collect::<Result<_, _>>()?;
        Ok(Self { clubs, scales, shared_keys, shared_owner, shared_mean, shared_factor })
    }

    pub fn club(&self, key: &str, wanted_by: &str) -> Result<usize, E> {
        self.clubs.binary_search_by(|club| club.key.as_str().cmp(key)).map_err(|_| E::Unknown {
            what: "clubs",
            key: key.into(),
            wanted_by: wanted_by.into(),
        })
    }

    pub fn scale(&self, key: &str, wanted_by: &str) -> Result<usize, E> {
        self.scales.binary_search_by(|scale| scale.key.as_str().cmp(key)).map_err(|_| E::Unknown {
            what: "scales",
            key: key.into(),
            wanted_by: wanted_by.into(),
        })
    }

    pub fn shared(&self, key: &str, wanted_by: &str) -> Result<usize, E> {
        self.shared_keys.binary_search_by(|k| k.as_str().cmp(key)).map_err(|_| E::Unknown {
            what: "shared",
            key: key.into(),
            wanted_by: wanted_by.into(),
        })
    }

    /// The shared deviations in their own units at a whitened point.
    pub fn shared_values(&self, whitened: &[f64]) -> Vec<f64> {
        self.shared_factor
            .iter()
            .zip(&self.shared_mean)
            .map(|(row, mean)| mean + row.iter().map(|(col, f)| f * whitened[*col]).sum::<f64>())
            .collect()
    }

    /// A gradient with respect to the shared deviations turned into one with respect to the whitened states.
    pub fn whiten(&self, gradient: &[f64]) -> Vec<f64> {
        let mut out = vec![0.0; gradient.len()];
        for (row, g) in self.shared_factor.iter().zip(gradient) {
            if *g != 0.0 {
                for (col, f) in row {
                    out[*col] += g * f;
                }
            }
        }
        out
    }
}

#[derive(Default)]
struct Collected(BTreeMap<String, (SharedOwner, f64, f64)>);

type Columns = (Vec<String>, Vec<SharedOwner>, Vec<f64>, Vec<f64>);

impl Collected {
    fn add(&mut self, key: String, owner: SharedOwner, mean: f64, sd: f64) -> Result<(), E> {
        if self.0.insert(key.clone(), (owner, mean, sd)).is_some() {
            return Err(E::Duplicate { what: "shared", key });
        }
        Ok(())
    }

    fn in_order(self) -> Columns {
        let mut columns = Columns::default();
        for (key, (owner, mean, sd)) in self.0 {
            columns.0.push(key);
            columns.1.push(owner);
            columns.2.push(mean);
            columns.3.push(sd);
        }
        columns
    }
}

fn collect_scale(shared: &mut Collected, scale: &ScalePrior, number: usize) -> Result<(), E> {
    let place = |what: &str| format!("scales[{}].{what}", scale.key);
    E::finite(|| place("offset_mean"), scale.offset_mean)?;
    E::finite(|| place("gain_mean"), scale.gain_mean)?;
    E::not_negative(|| place("offset_sd"), scale.offset_sd)?;
    E::not_negative(|| place("gain_sd"), scale.gain_sd)?;
    E::not_negative(|| place("fulcrum_sd_in"), scale.fulcrum_sd_in)?;
    E::not_negative(|| place("noise_sd"), scale.noise_sd)?;
    E::not_negative(|| place("resolution"), scale.resolution)?;
    let owner = SharedOwner::Scale(number);
    shared.add(ScalePrior::offset_key(&scale.key), owner, scale.offset_mean, scale.offset_sd)?;
    shared.add(ScalePrior::gain_key(&scale.key), owner, scale.gain_mean, scale.gain_sd)?;
    shared.add(ScalePrior::fulcrum_key(&scale.key), owner, 0.0, scale.fulcrum_sd_in)?;
    let Some(drift) = &scale.drift else { return Ok(()) };
    let states = drift.states(&scale.key, (scale.offset_mean, scale.offset_sd))?;
    states.into_iter().try_for_each(|(key, mean, sd)| shared.add(key, owner, mean, sd))
}

fn scale_layout(scale: &ScalePrior, index: &impl Fn(&str) -> Option<usize>) -> ScaleLayout {
    // Every key was put there by `collect_scale`, so the look-ups cannot miss.
    let at = |key: String| index(&key).unwrap_or_default();
    let offset = at(ScalePrior::offset_key(&scale.key));
    ScaleLayout {
        key: scale.key.clone(),
        offset,
        gain: at(ScalePrior::gain_key(&scale.key)),
        fulcrum: at(ScalePrior::fulcrum_key(&scale.key)),
        noise_sd: scale.noise_sd,
        resolution: scale.resolution,
        drift: scale.drift.as_ref().map(|drift| drift.layout(&scale.key, offset, index)).unwrap_or_default(),
    }
}

fn club_layout(club: &Club, index: &impl Fn(&str) -> Option<usize>) -> Result<ClubLayout, E> {
    let mut states = Vec::new();
    let mut value = |prior: &Prior, what: &str, owner: LocalState| -> Result<Value, E> {
        let place = || format!("clubs[{}].{what}", club.key);
        E::finite(place, prior.mean)?;
        E::not_negative(|| format!("{}.sd", place()), prior.piece_sd)?;
        let own = (prior.piece_sd > 0.0).then(|| {
            states.push(owner);
            states.len() - 1
        });
        let shared = prior.shared.iter().map(|share| {
            E::finite(|| format!("{}.shared[{}].gain", place(), share.key), share.gain)?;
            let key = || E::Unknown { what: "shared", key: share.key.clone(), wanted_by: place() };
            Ok((index(&share.key).ok_or_else(key)?, share.gain))
        });
        Ok(Value { mean: prior.mean, sd: prior.piece_sd, own, shared: shared.collect::<Result<_, E>>()? })
    };
    let mut pieces = Vec::with_capacity(club.pieces.len());
    for piece in &club.pieces {
        let owner = LocalState::Piece(piece.role);
        E::not_negative(|| format!("clubs[{}].{}.mass_g", club.key, piece.role.key()), piece.mass_g.mean)?;
        pieces.push(PieceLayout {
            role: piece.role,
            mass: value(&piece.mass_g, &format!("{}.mass_g", piece.role.key()), owner)?,
            arm: value(&piece.arm_in, &format!("{}.arm_in", piece.role.key()), owner)?,
            moves: piece.moves_with_length,
            from_cap: piece.arm_from == Datum::GripCap,
            own_inertia_g_in2: own_inertia(club, piece)?,
        });
    }
    let length = Prior { shared: club.length_shared.clone(), ..Prior::new(club.shaft_length_in, club.length_sd_in) };
    let length = value(&length, "shaft_length_in", LocalState::Length)?;
    let cap = value(&club.cap_in, "cap_in", LocalState::Cap)?;
    E::finite(|| format!("clubs[{}].target_points", club.key), club.target_points)?;
    E::not_negative(|| format!("clubs[{}].tolerance_points", club.key), club.tolerance_points)?;
    Ok(ClubLayout {
        key: club.key.clone(),
        pieces,
        length,
        cap,
        target_points: club.target_points,
        tolerance_points: club.tolerance_points,
        states,
    })
}

fn own_inertia(club: &Club, piece: &Piece) -> Result<f64, E> {
    E::not_negative(|| format!("clubs[{}].{}.own_inertia_g_in2", club.key, piece.role.key()), piece.own_inertia_g_in2)
}

/// How shared deviations are made of independent unit states.
///
/// A joint covariance is split by the symmetric root of its correlation, not by a triangular one: each unit state then
/// stays as close as can be to its own key, which keeps the budget of a forecast legible. It also takes a covariance
/// that is only semi-definite.
fn factor(
    joint: &[JointPrior],
    sd: &[f64],
    index: &impl Fn(&str) -> Option<usize>,
) -> Result<Vec<Vec<(usize, f64)>>, E> {
    let mut rows: Vec<Vec<(usize, f64)>> = sd.iter().enumerate().map(|(i, sd)| vec![(i, *sd)]).collect();
    let mut taken = vec![false; sd.len()];
    for (number, block) in joint.iter().enumerate() {
        let place = format!("joint[{number}]");
        let at = block.keys.iter().map(|key| {
            let unknown = || E::Unknown { what: "shared", key: key.clone(), wanted_by: place.clone() };
            index(key).ok_or_else(unknown)
        });
        let at: Vec<usize> = at.collect::<Result<_, E>>()?;
        for (key, i) in block.keys.iter().zip(&at) {
            if std::mem::replace(&mut taken[*i], true) {
                return Err(E::Duplicate { what: "joint", key: key.clone() });
            }
        }
        let root = correlation_root(&place, &block.covariance, at.len())?;
        for (row, i) in at.iter().enumerate() {
            rows[*i] =
                at.iter().enumerate().map(|(col, j)| (*j, root[(row, col)])).filter(|(_, f)| *f != 0.0).collect();
        }
    }
    Ok(rows)
}

/// `D·R^½` of a covariance `D·R·D`.
fn correlation_root(place: &str, covariance: &[Vec<f64>], n: usize) -> Result<nalgebra::DMatrix<f64>, E> {
    let refuse = |reason: CovarianceFault| E::NotCovariance { place: place.into(), reason };
    if covariance.len() != n || covariance.iter().any(|row| row.len() != n) {
        return Err(E::Shape { place: place.into(), found: covariance.len(), expected: n });
    }
    let matrix = nalgebra::DMatrix::from_fn(n, n, |i, j| covariance[i][j]);
    if let Some(bad) = matrix.iter().find(|value| !value.is_finite()) {
        return Err(E::NotFinite { place: place.into(), value: *bad });
    }
    let sd: Vec<f64> = (0..n).map(|i| matrix[(i, i)].max(0.0).sqrt()).collect();
    if let Some(i) = (0..n).find(|i| matrix[(*i, *i)] < 0.0) {
        return Err(refuse(CovarianceFault::NegativeVariance { value: matrix[(i, i)], row: i + 1 }));
    }
    let mut correlation = nalgebra::DMatrix::identity(n, n);
    for i in 0..n {
        for j in 0..i {
            let scale = sd[i] * sd[j];
            if (matrix[(i, j)] - matrix[(j, i)]).abs() > 1e-9 * scale {
                return Err(refuse(CovarianceFault::NotSymmetric { row: i + 1, column: j + 1 }));
            }
            let r = if scale > 0.0 { 0.5 * (matrix[(i, j)] + matrix[(j, i)]) / scale } else { 0.0 };
            correlation[(i, j)] = r;
            correlation[(j, i)] = r;
        }
    }
    let eigen = correlation.symmetric_eigen();
    let least = eigen.eigenvalues.iter().copied().fold(0.0_f64, f64::min);
    if least < -1e-9 * (n as f64) {
        return Err(refuse(CovarianceFault::NotPositive));
    }
    let roots = eigen.eigenvalues.map(|value| value.max(0.0).sqrt());
    let root = &eigen.eigenvectors * nalgebra::DMatrix::from_diagonal(&roots) * eigen.eigenvectors.transpose();
    Ok(nalgebra::DMatrix::from_fn(n, n, |i, j| sd[i] * root[(i, j)]))
}

/// Is the grip on, so that the cap lifts every piece from the stop?
pub(crate) fn gripped(on: OnClub) -> bool {
    on.contains(Role::Grip)
}
