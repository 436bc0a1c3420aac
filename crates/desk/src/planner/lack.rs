//! What a club lacks, and what to order.

use super::Fitting;
use matching::{Unbuildable, Why};
use trade::job::JobClub;
use trade::model::PartKind;
use trade::plan::Missing;

fact::facts! {
    /// Why a club cannot be built as the sheet asks, and what to do.
    pub enum Lack: "planner_lack" {
        /// No ferrule; the plan goes on without.
        Ferrule,
        /// No head that is free and weighed.
        NoHead {
            /// Name of the model.
            head: String,
            /// The number that the club needs: `6`, `PW`.
            number: String,
            /// Lightest to order; none where no head would do.
            from_g: Option<f64>,
            /// Heaviest to order.
            to_g: Option<f64>,
        },
        /// No shaft that fits.
        NoShaft {
            /// Name of the model.
            shaft: String,
            /// How much must be left after the tip trim.
            needed_mm: f64,
        },
        /// No free grip of the model.
        NoGrip,
        /// No free adapter for the head.
        NoAdapter {
            /// Name of the head model.
            head: String,
        },
        /// The nearest choice stays under the target.
        Short {
            /// How far under it stays.
            by_points: f64,
            /// Swing weight that the sheet asks, points since A0.
            target_points: f64,
            /// Lightest head to order.
            from_g: Option<f64>,
            /// Heaviest head to order.
            to_g: Option<f64>,
        },
        /// The nearest choice stays over the target.
        Over {
            /// How far over it stays.
            by_points: f64,
            /// Swing weight that the sheet asks, points since A0.
            target_points: f64,
            /// Lightest head to order.
            from_g: Option<f64>,
            /// Heaviest head to order.
            to_g: Option<f64>,
        },
        /// One part is locked to two clubs.
        LockedTwice {
            /// What sort of part is locked: head, shaft, grip or adapter.
            kind: PartKind,
        },
        /// Other clubs take the last head that fits.
        LastHeadTaken {
            /// Lightest head to order.
            from_g: Option<f64>,
            /// Heaviest head to order.
            to_g: Option<f64>,
        },
        /// Other clubs take the last shaft that fits.
        LastShaftTaken,
        /// Other clubs take the last adapter that fits.
        LastAdapterTaken,
        /// Other clubs take the last grip.
        LastGripTaken,
    }
}

/// A club lacks a part of a kind.
pub(super) fn lacks(club: &JobClub, kind: PartKind, model: &str, lack: Lack) -> Missing {
    Missing {
        number: club.target.number.clone(),
        kind,
        model: model.to_owned(),
        fact: lack.into(),
        order_from_g: None,
        order_to_g: None,
        instead: Vec::new(),
    }
}

/// What a club lacks; `kept` says whether a piece of a kind is kept for it.
pub(super) fn name_missing(
    fitting: &Fitting<'_>,
    lack: &Unbuildable,
    kept: impl Fn(matching::PartKind, usize) -> bool,
) -> Missing {
    let club = fitting.club;
    let target = &club.target;
    let (head, shaft) = (fitting.head_model, fitting.shaft_model);
    let with_window = |window: Option<matching::HeadWindow>, fact: &dyn Fn(Option<f64>, Option<f64>) -> Lack| {
        let (order_from_g, order_to_g) = window.and_then(|w| w.low_g.zip(w.high_g)).unzip();
        let fact = fact(order_from_g, order_to_g);
        Missing { order_from_g, order_to_g, ..lacks(club, PartKind::Head, &head.code, fact) }
    };
    let why = match lack.why {
        // Nobody asked for it: there is one piece for two clubs.
        Why::LockedTwice { kind, part, window, .. } if !kept(kind, part) => Why::Short { kind, window },
        other => other,
    };
    match why {
        Why::NoHead { window } => with_window(window, &|from_g, to_g| Lack::NoHead {
            head: head.name.clone(),
            number: target.number.clone(),
            from_g,
            to_g,
        }),
        Why::NoShaft => {
            let lack = Lack::NoShaft { shaft: shaft.name.clone(), needed_mm: fitting.places.tip_mm };
            lacks(club, PartKind::Shaft, &shaft.code, lack)
        }
        Why::NoGrip => lacks(club, PartKind::Grip, &target.grip_model, Lack::NoGrip),
        Why::NoAdapter => lacks(club, PartKind::Adapter, &head.code, Lack::NoAdapter { head: head.name.clone() }),
        Why::OutOfReach { lacking_points, window } => with_window(Some(window), &|from_g, to_g| {
            let by_points = lacking_points.abs() + fitting.need.loss.reach_points();
            let target_points = target.swing_weight_points;
            if lacking_points > 0.0 {
                Lack::Short { by_points, target_points, from_g, to_g }
            } else {
                Lack::Over { by_points, target_points, from_g, to_g }
            }
        }),
        Why::LockedTwice { kind, .. } => {
            let (kind, model) = match kind {
                matching::PartKind::Shaft => (PartKind::Shaft, &shaft.code),
                matching::PartKind::Grip => (PartKind::Grip, &target.grip_model),
                matching::PartKind::Adapter => (PartKind::Adapter, &head.code),
                _ => (PartKind::Head, &head.code),
            };
            lacks(club, kind, model, Lack::LockedTwice { kind })
        }
        Why::Short { kind, window } => match kind {
            matching::PartKind::Head => with_window(window, &|from_g, to_g| Lack::LastHeadTaken { from_g, to_g }),
            matching::PartKind::Shaft => lacks(club, PartKind::Shaft, &shaft.code, Lack::LastShaftTaken),
            matching::PartKind::Adapter => lacks(club, PartKind::Adapter, &head.code, Lack::LastAdapterTaken),
            _ => lacks(club, PartKind::Grip, &target.grip_model, Lack::LastGripTaken),
        },
    }
}
