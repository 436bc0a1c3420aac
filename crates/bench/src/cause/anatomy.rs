//! What a change in the pieces of a club does to each reading of it.

use estimation::{Datum, JobModel, Observation, OnClub, Prior, Quantity, Role};
use quantity::{FULCRUM_IN, POINT_G_IN};

/// A change of a club, for which one unit is a gram, an inch, or the whole of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Alter {
    /// A gram more of the piece of a role, at its own place.
    Mass(Role),
    /// A gram more at a place from the butt, inches, from the moment that a role is on.
    At(Role, f64),
    /// The shaft an inch longer at the butt.
    Length,
    /// The head an inch further out than its seat.
    HeadOut,
    /// An inch of air between the butt and the stop.
    Gap,
    /// An inch less of the grip's cap.
    CapOff,
    /// The grip an inch short of its seat: its cap stands off the shaft's end.
    GripOut,
    /// The whole ferrule off, with what turning would take off it.
    FerruleOff,
    /// The whole grip off where it should be on.
    GripOff,
    /// The whole grip on where it should be off.
    GripOn,
}

#[derive(Debug, Clone, Copy)]
struct Mass {
    role: Role,
    mass_g: f64,
    /// From the butt end of the shaft.
    arm_in: f64,
    moves: bool,
    /// Inertia about its own centre.
    own_g_in2: f64,
}

/// The pieces of one club as the belief starts with them.
#[derive(Debug, Clone)]
pub(super) struct Anatomy {
    pieces: Vec<Mass>,
    cap_in: f64,
    length_in: f64,
}

impl Anatomy {
    /// The club of a job's model; none where it has no plan.
    pub(super) fn of(model: &JobModel, club: &str) -> Option<Self> {
        let found = model.clubs.iter().find(|c| c.key == club)?;
        let learned = |key: &str| model.shared.iter().find(|s| s.key == key).map_or(0.0, |s| s.mean_shift);
        let mean = |prior: &Prior| prior.mean + prior.shared.iter().map(|s| s.gain * learned(&s.key)).sum::<f64>();
        let cap_in = mean(&found.cap_in);
        let pieces = found
            .pieces
            .iter()
            .map(|piece| Mass {
                role: piece.role,
                mass_g: mean(&piece.mass_g),
                arm_in: mean(&piece.arm_in) - if piece.arm_from == Datum::GripCap { cap_in } else { 0.0 },
                moves: piece.moves_with_length,
                own_g_in2: piece.own_inertia_g_in2,
            })
            .collect();
        Some(Self { pieces, cap_in, length_in: found.shaft_length_in })
    }

    /// Mass of a role; 0 where the club has no such piece.
    pub(super) fn mass_g(&self, role: Role) -> f64 {
        self.pieces.iter().filter(|p| p.role == role).map(|p| p.mass_g).sum()
    }

    pub(super) fn has(&self, role: Role) -> bool {
        self.pieces.iter().any(|p| p.role == role)
    }

    fn arm_in(&self, role: Role) -> f64 {
        let mass_g = self.mass_g(role);
        let of = self.pieces.iter().filter(|p| p.role == role);
        if mass_g > 0.0 {
            of.map(|p| p.mass_g * p.arm_in).sum::<f64>() / mass_g
        } else {
            of.map(|p| p.arm_in).next().unwrap_or(0.0)
        }
    }

    fn on(&self, on: OnClub) -> impl Iterator<Item = &Mass> {
        self.pieces.iter().filter(move |p| on.contains(p.role))
    }

    /// How much further from the stop everything lies than from the butt.
    fn lift_in(&self, on: OnClub) -> f64 {
        if on.contains(Role::Grip) { self.cap_in } else { 0.0 }
    }

    /// Grams, gram-inches about the stop and grams times square inches about it that a unit adds with these pieces on.
    fn adds(&self, alter: Alter, on: OnClub) -> [f64; 3] {
        let lift_in = self.lift_in(on);
        let at = |grams: f64, arm_in: f64| [grams, grams * arm_in, grams * arm_in * arm_in];
        // Pieces that lie an inch farther from the stop.
        let farther = |moved: &dyn Fn(&Mass) -> bool, on: OnClub| {
            let of = self.on(on).filter(|p| moved(p));
            of.fold([0.0; 3], |[_, moment, inertia], p| {
                [0.0, moment + p.mass_g, inertia + 2.0 * p.mass_g * (p.arm_in + lift_in)]
            })
        };
        let times = |by: f64, of: [f64; 3]| of.map(|one| by * one);
        let sum = |a: [f64; 3], b: [f64; 3]| [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
        match alter {
            Alter::Mass(role) if on.contains(role) => at(1.0, self.arm_in(role) + lift_in),
            Alter::At(role, arm_in) if on.contains(role) => at(1.0, arm_in + lift_in),
            Alter::Length if on.contains(Role::Shaft) => {
                sum(farther(&|p| p.moves || p.role == Role::Shaft, on), at(self.shaft_g_per_in(), lift_in))
            }
            Alter::HeadOut => farther(&|p| p.role == Role::Head, on),
            Alter::Gap => farther(&|_| true, on),
            Alter::CapOff if on.contains(Role::Grip) => times(-1.0, farther(&|_| true, on)),
            Alter::GripOut if on.contains(Role::Grip) => farther(&|p| p.role != Role::Grip, on),
            Alter::FerruleOff => {
                let of = self.on(on).filter(|p| matches!(p.role, Role::Ferrule | Role::Turnings));
                of.fold([0.0; 3], |whole, p| sum(whole, at(-p.mass_g, p.arm_in + lift_in)))
            }
            Alter::GripOff if on.contains(Role::Grip) => {
                let grip = at(-self.mass_g(Role::Grip), self.arm_in(Role::Grip) + self.cap_in);
                sum(grip, times(-self.cap_in, farther(&|_| true, on.without(Role::Grip))))
            }
            Alter::GripOn if on.contains(Role::Shaft) && !on.contains(Role::Grip) => {
                let grip = at(self.mass_g(Role::Grip), self.arm_in(Role::Grip) + self.cap_in);
                sum(grip, times(self.cap_in, farther(&|_| true, on)))
            }
            _ => [0.0; 3],
        }
    }

    /// Seconds that a unit adds to the period of a club that hangs from a pivot: half of dI/I less dM/M of it. A club that hangs
    /// has no stop to be off.
    fn period_s(&self, alter: Alter, on: OnClub, pivot_in: f64, gravity_in_s2: f64) -> f64 {
        if alter == Alter::Gap {
            return 0.0;
        }
        let about = |[grams, moment, inertia]: [f64; 3]| {
            (moment - pivot_in * grams, inertia - 2.0 * pivot_in * moment + pivot_in * pivot_in * grams)
        };
        let whole = self.on(on).fold([0.0; 3], |[grams, moment, inertia], p| {
            let arm_in = p.arm_in + self.lift_in(on);
            let own = p.own_g_in2;
            [grams + p.mass_g, moment + p.mass_g * arm_in, inertia + p.mass_g * arm_in * arm_in + own]
        });
        let (moment, inertia) = about(whole);
        if moment <= 0.0 {
            return 0.0;
        }
        let (by_moment, by_inertia) = about(self.adds(alter, on));
        let period_s = std::f64::consts::TAU * (inertia / (gravity_in_s2 * moment)).sqrt();
        0.5 * period_s * (by_inertia / inertia - by_moment / moment)
    }

    fn shaft_g_per_in(&self) -> f64 {
        if self.length_in > 0.0 { self.mass_g(Role::Shaft) / self.length_in } else { 0.0 }
    }

    /// Points that a unit adds to the swing weight with these pieces on.
    pub(super) fn points(&self, alter: Alter, on: OnClub) -> f64 {
        let [grams, moment, _] = self.adds(alter, on);
        (moment - FULCRUM_IN * grams) / POINT_G_IN
    }

    /// What a unit adds to a reading, in the reading's unit.
    pub(super) fn effect(&self, alter: Alter, reading: &Observation) -> f64 {
        match &reading.quantity {
            Quantity::SwingWeight => self.points(alter, reading.on),
            Quantity::TotalMass => self.adds(alter, reading.on)[0],
            Quantity::Inertia => self.adds(alter, reading.on)[2],
            Quantity::SwingPeriod { pivot_in, gravity_in_s2 } => {
                self.period_s(alter, reading.on, *pivot_in, *gravity_in_s2)
            }
            Quantity::BalancePoint => {
                let (mut mass_g, mut moment) = (0.0, 0.0);
                for piece in self.on(reading.on) {
                    mass_g += piece.mass_g;
                    moment += piece.mass_g * (piece.arm_in + self.lift_in(reading.on));
                }
                let [grams, more, _] = self.adds(alter, reading.on);
                if mass_g > 0.0 { (more - moment / mass_g * grams) / mass_g } else { 0.0 }
            }
            Quantity::PartMass(role) => match alter {
                Alter::Mass(changed) if changed == *role => 1.0,
                Alter::Length if *role == Role::Shaft => self.shaft_g_per_in(),
                _ => 0.0,
            },
            Quantity::PartArm(Role::Shaft) if alter == Alter::Length => {
                1.0 - self.arm_in(Role::Shaft) / self.length_in.max(1.0)
            }
            Quantity::ShaftLength if alter == Alter::Length => 1.0,
            Quantity::LengthToCap => match alter {
                Alter::Length | Alter::HeadOut | Alter::GripOut => 1.0,
                Alter::CapOff => -1.0,
                Alter::GripOff => -self.cap_in,
                _ => 0.0,
            },
            Quantity::CapThickness if alter == Alter::CapOff => -1.0,
            _ => 0.0,
        }
    }
}
