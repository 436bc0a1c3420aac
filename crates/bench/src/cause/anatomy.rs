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

    /// Grams and gram-inches about the stop that a unit adds with these pieces on.
    fn adds(&self, alter: Alter, on: OnClub) -> (f64, f64) {
        let whole = |on: OnClub| self.on(on).map(|p| p.mass_g).sum::<f64>();
        match alter {
            Alter::Mass(role) if on.contains(role) => (1.0, self.arm_in(role) + self.lift_in(on)),
            Alter::At(role, arm_in) if on.contains(role) => (1.0, arm_in + self.lift_in(on)),
            Alter::Length if on.contains(Role::Shaft) => {
                let moved: f64 = self.on(on).filter(|p| p.moves || p.role == Role::Shaft).map(|p| p.mass_g).sum();
                let more_g = self.shaft_g_per_in();
                (more_g, moved + more_g * self.lift_in(on))
            }
            Alter::HeadOut => (0.0, self.on(on).filter(|p| p.role == Role::Head).map(|p| p.mass_g).sum()),
            Alter::Gap => (0.0, whole(on)),
            Alter::CapOff if on.contains(Role::Grip) => (0.0, -whole(on)),
            Alter::GripOut if on.contains(Role::Grip) => (0.0, whole(on.without(Role::Grip))),
            Alter::FerruleOff => {
                let of = self.on(on).filter(|p| matches!(p.role, Role::Ferrule | Role::Turnings));
                of.fold((0.0, 0.0), |(grams, moment), p| {
                    (grams - p.mass_g, moment - p.mass_g * (p.arm_in + self.lift_in(on)))
                })
            }
            Alter::GripOff if on.contains(Role::Grip) => {
                let (grip_g, without) = (self.mass_g(Role::Grip), on.without(Role::Grip));
                let arm_in = self.arm_in(Role::Grip) + self.cap_in;
                (-grip_g, -grip_g * arm_in - self.cap_in * whole(without))
            }
            Alter::GripOn if on.contains(Role::Shaft) && !on.contains(Role::Grip) => {
                let grip_g = self.mass_g(Role::Grip);
                let arm_in = self.arm_in(Role::Grip) + self.cap_in;
                (grip_g, grip_g * arm_in + self.cap_in * whole(on))
            }
            _ => (0.0, 0.0),
        }
    }

    fn shaft_g_per_in(&self) -> f64 {
        if self.length_in > 0.0 { self.mass_g(Role::Shaft) / self.length_in } else { 0.0 }
    }

    /// Points that a unit adds to the swing weight with these pieces on.
    pub(super) fn points(&self, alter: Alter, on: OnClub) -> f64 {
        let (grams, moment) = self.adds(alter, on);
        (moment - FULCRUM_IN * grams) / POINT_G_IN
    }

    /// What a unit adds to a reading, in the reading's unit.
    pub(super) fn effect(&self, alter: Alter, reading: &Observation) -> f64 {
        match &reading.quantity {
            Quantity::SwingWeight => self.points(alter, reading.on),
            Quantity::TotalMass => self.adds(alter, reading.on).0,
            Quantity::BalancePoint => {
                let (mut mass_g, mut moment) = (0.0, 0.0);
                for piece in self.on(reading.on) {
                    mass_g += piece.mass_g;
                    moment += piece.mass_g * (piece.arm_in + self.lift_in(reading.on));
                }
                let (grams, more) = self.adds(alter, reading.on);
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
