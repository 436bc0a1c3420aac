//! Solving a job for its readings: in one piece, in one order.

use crate::arrow::Arrow;
use crate::belief::Belief;
use crate::error::EstimationError as E;
use crate::job::JobModel;
use crate::layout::Layout;
use crate::predict::{Point, Question, Row};
use crate::reading::Observation;
use crate::term::{Term, terms};
use std::sync::Arc;

/// A change of less than this many prior standard deviations counts as settled; Newton's next step is far smaller.
const SETTLED: f64 = 1e-7;
/// Rounds whose step is worked out over the readings alone. Two or three settle what fits; what needs more is solved with the
/// whole factor, which loses nothing to sharp readings.
const LIGHT_ROUNDS: usize = 4;
/// Two or three for readings that fit. One that lies tens of standard deviations out makes the steps shrink by an eighth
/// only each round; it must still be solved, for it to be doubted.
const ROUNDS: usize = 400;
/// Prior standard deviation over a reading's: its square times the rounding of a double must stay far below 1, or the
/// prior of what the reading does not tell would drown in it.
const SHARPEST: f64 = 3e6;

impl JobModel {
    /// Solve the whole job for the believed readings.
    ///
    /// The result depends on the set of readings only, bit for bit, not on the order in which they are given; leaving
    /// a reading out, or giving it with [`crate::Standing::Doubted`], gives exactly the belief without it.
    ///
    /// # Errors
    ///
    /// Numbers that are not finite, negative standard deviations, unknown or doubled names, readings without any
    /// uncertainty, and an iteration that does not settle.
    ///
    /// # Examples
    ///
    /// ```
    /// use estimation::{Club, JobModel, Observation, OnClub, Piece, Prior, Quantity, Role};
    /// // A head that should weigh 256.0 ± 0.3 g reads 256.4 ± 0.3 g. Two figures of equal standing are averaged, and the
    /// // standard deviation falls by √2 to 0.2121 g.
    /// let head = Piece::new(Role::Head, Prior::new(256.0, 0.3), Prior::known(37.0));
    /// let job = JobModel { clubs: vec![Club::new("iron-7", 36.5).with_piece(head)], ..JobModel::default() };
    /// let mass = Quantity::PartMass(Role::Head);
    /// let reading = Observation::new("r1", mass.clone(), 256.4, 0.3).of_club("iron-7", OnClub::NONE);
    /// let believed = job.solve(&[reading])?.forecast("iron-7", &mass, OnClub::NONE, None)?;
    /// assert!((believed.mean - 256.2).abs() < 1e-9 && (believed.sd - 0.2121).abs() < 5e-5);
    /// # Ok::<(), estimation::EstimationError>(())
    /// ```
    pub fn solve(&self, readings: &[Observation]) -> Result<Belief, E> {
        Belief::new(Arc::new(Layout::new(self)?), in_order(readings)?)
    }
}

pub(crate) fn in_order(readings: &[Observation]) -> Result<Vec<Observation>, E> {
    let mut readings = readings.to_vec();
    readings.sort_by(|a, b| a.id.cmp(&b.id));
    if let Some(pair) = readings.windows(2).find(|pair| pair[0].id == pair[1].id) {
        return Err(E::Duplicate { what: "readings", key: pair[0].id.clone() });
    }
    for reading in &readings {
        let place = |what: &str| format!("readings[{}].{what}", reading.id);
        E::finite(|| place("value"), reading.value)?;
        E::finite(|| place("at_h"), reading.at_h)?;
        E::not_negative(|| place("sd"), reading.sd)?;
        E::not_negative(|| place("resolution"), reading.resolution)?;
        if reading.sd == 0.0 && reading.resolution == 0.0 {
            return Err(E::ReadingWithoutUncertainty { id: reading.id.clone() });
        }
    }
    Ok(readings)
}

impl Belief {
    pub(crate) fn new(layout: Arc<Layout>, readings: Vec<Observation>) -> Result<Self, E> {
        match Self::settle(layout, readings, ROUNDS)? {
            (belief, None) => Ok(belief),
            (_, Some(last_step)) => Err(E::NotConverged { iterations: ROUNDS, last_step }),
        }
    }

    /// The belief after so many rounds at most, and how long the last step was where it had not settled by then: enough
    /// to see which reading lies far out.
    pub(crate) fn settle(
        layout: Arc<Layout>,
        readings: Vec<Observation>,
        rounds: usize,
    ) -> Result<(Self, Option<f64>), E> {
        let questions =
            readings.iter().map(|r| Question::new(&layout, &r.probe(), &[], &format!("readings[{}]", r.id)));
        let questions: Vec<Question> = questions.collect::<Result<_, E>>()?;
        let latest_h = latest_times(&layout, &readings, &questions);
        let terms = terms(&layout, &readings, &questions);
        let sizes: Vec<usize> = layout.clubs.iter().map(|club| club.states.len()).collect();
        let mut at = Settling::new(&layout, &terms, Point::prior(&layout))?;
        for ((row, variance), term) in at.rows.iter().zip(&terms) {
            let square = row.local.iter().chain(&row.shared).map(|x| x * x).sum::<f64>();
            let ratio = (square / variance).sqrt();
            if ratio > SHARPEST {
                let id = readings[term.members[0]].id.clone();
                return Err(E::TooSharp { id, ratio, limit: SHARPEST });
            }
        }
        for round in 1.. {
            let (mut local, mut shared) = at.descent(&terms);
            let mut arrow = None;
            if round <= LIGHT_ROUNDS {
                Arrow::step(&at.rows, &mut local, &mut shared);
            } else {
                let whole = Arrow::new(&sizes, layout.shared_keys.len(), &at.rows);
                whole.solve(&mut local, &mut shared);
                arrow = Some(whole);
            }
            let last_step = local.iter().flatten().chain(&shared).fold(0.0, |most: f64, x| most.max(x.abs()));
            if !last_step.is_finite() {
                return Err(E::NotConverged { iterations: round, last_step });
            }
            if last_step <= SETTLED || round >= rounds {
                let unsettled = (last_step > SETTLED).then_some(last_step);
                let point = at.point.moved(&layout, 1.0, &local, &shared);
                let arrow = arrow.unwrap_or_else(|| Arrow::new(&sizes, layout.shared_keys.len(), &at.rows));
                let (rows, misfit) = (Arc::new(at.rows), at.misfit);
                let (arrow, readings, terms) = (Arc::new(arrow), Arc::new(readings), Arc::new(terms));
                let belief = Self { layout, point, arrow, readings, terms, rows, latest_h, misfit, tilt: None };
                return Ok((belief, unsettled));
            }
            at = at.downhill(&layout, &terms, &local, &shared)?;
        }
        // Not reached: the rounds are counted without end.
        Err(E::NotConverged { iterations: rounds, last_step: f64::INFINITY })
    }
}

/// The time that a question means when it names none, for each scale: its last reading that was believed, or now if that is
/// later.
fn latest_times(layout: &Layout, readings: &[Observation], questions: &[Question]) -> Vec<f64> {
    let first = |scale: &crate::layout::ScaleLayout| scale.drift.asked_h();
    let mut latest: Vec<f64> = layout.scales.iter().map(first).collect();
    for (reading, question) in readings.iter().zip(questions).filter(|(reading, _)| reading.is_believed()) {
        if let Some(terms) = &question.scale {
            latest[terms.scale] = latest[terms.scale].max(reading.at_h);
        }
    }
    latest
}

/// Where the iteration stands.
struct Settling {
    point: Point,
    rows: Vec<(Row, f64)>,
    misfit: f64,
}

impl Settling {
    fn new(layout: &Layout, terms: &[Term], point: Point) -> Result<Self, E> {
        let row = |term: &Term| Ok((term.question.row(layout, &point)?, term.variance));
        let rows = terms.iter().map(row).collect::<Result<Vec<(Row, f64)>, E>>()?;
        let readings =
            rows.iter().zip(terms).map(|((row, variance), term)| (term.value - row.value).powi(2) / variance);
        let prior = point.local.iter().flatten().chain(&point.whitened).map(|x| x * x);
        let misfit = readings.sum::<f64>() + prior.sum::<f64>();
        Ok(Self { point, rows, misfit })
    }

    /// Half the downward gradient of the misfit.
    fn descent(&self, terms: &[Term]) -> (Vec<Vec<f64>>, Vec<f64>) {
        let negative = |states: &Vec<f64>| states.iter().map(|x| -x).collect::<Vec<f64>>();
        let mut local: Vec<Vec<f64>> = self.point.local.iter().map(negative).collect();
        let mut shared = negative(&self.point.whitened);
        for ((row, variance), term) in self.rows.iter().zip(terms) {
            let pull = (term.value - row.value) / variance;
            if let Some(club) = row.club {
                local[club].iter_mut().zip(&row.local).for_each(|(x, g)| *x += pull * g);
            }
            shared.iter_mut().zip(&row.shared).for_each(|(x, g)| *x += pull * g);
        }
        (local, shared)
    }

    /// A full step, or as much of it as does not make the misfit worse.
    fn downhill(&self, layout: &Layout, terms: &[Term], local: &[Vec<f64>], shared: &[f64]) -> Result<Self, E> {
        let mut step = 1.0;
        loop {
            let next = Self::new(layout, terms, self.point.moved(layout, step, local, shared))?;
            // Near the bottom rounding alone may raise the misfit by a few last digits.
            if next.misfit <= self.misfit * (1.0 + 1e-9) + 1e-9 || step < 1e-6 {
                return Ok(next);
            }
            step *= 0.5;
        }
    }
}
