//! Blunders, each as it happens to a true club or to a reading of it.

use super::shop::{Bench, TrueClub};
use quantity::INCH_MM;
use trade::kind::Role;
use trade::reading::{Reading, Unit, What};

/// A club as it lies on the scale.
pub struct Seen {
    pub club: TrueClub,
    pub on: Vec<Role>,
    pub gap_in: f64,
    pub head_out_in: f64,
    pub shaft_longer_in: f64,
    pub shown: f64,
    pub off_zero: bool,
    pub other_number: bool,
}

impl Seen {
    fn all(&self) -> Vec<(f64, f64)> {
        let gripped = self.on.contains(&Role::Grip);
        let lift = if gripped { self.club.cap_in } else { 0.0 } + self.gap_in;
        let of = self.club.pieces.iter().filter(|p| self.on.contains(&p.role));
        let mut all: Vec<(f64, f64)> = of
            .map(|p| {
                let out = if p.role == Role::Head { self.head_out_in } else { 0.0 };
                let moved = if p.moves || p.role == Role::Shaft { self.shaft_longer_in } else { 0.0 };
                (p.mass_g, p.arm_in + out + moved + lift)
            })
            .collect();
        if self.shaft_longer_in != 0.0 && self.on.contains(&Role::Shaft) {
            all.push((self.shaft_longer_in * 2.9, self.shaft_longer_in / 2.0 + lift));
        }
        all
    }

    /// Points since A0, by ounces and inches: 161 oz·in at A0, 1.75 oz·in a point.
    fn swing_weight(&self) -> f64 {
        let oz_in: f64 = self.all().iter().map(|(g, x)| g / 28.349_523_125 * (x - 14.0)).sum();
        (oz_in - 161.0) / 1.75
    }

    fn of(&self, role: Role) -> f64 {
        self.club.pieces.iter().filter(|p| p.role == role).map(|p| p.mass_g).sum()
    }

    /// The true value of what is read; of the check weight the given one.
    pub fn truth(&self, what: What, check_points: f64) -> f64 {
        match what.unit() {
            Unit::Points if what == What::CheckWeight => check_points,
            Unit::Points => self.swing_weight(),
            Unit::None if what == What::FerruleOn => f64::from(u8::from(self.of(Role::Ferrule) > 0.0)),
            Unit::None if what == What::HeadNumber => f64::from(u8::from(!self.other_number)),
            Unit::None => 1.0,
            Unit::Gram => self.mass(what),
            _ => self.length_mm(what),
        }
    }

    fn mass(&self, what: What) -> f64 {
        match what {
            What::TotalMass => self.all().iter().map(|(g, _)| g).sum(),
            What::ShaftMass => self.of(Role::Shaft) + 2.9 * self.shaft_longer_in,
            other => self.of(other.mass_of().unwrap()),
        }
    }

    fn length_mm(&self, what: What) -> f64 {
        let shaft_in = self.club.length_in + self.shaft_longer_in;
        match what {
            What::ShaftLength => shaft_in * INCH_MM - self.club.tip_to_ground_mm,
            What::FinishedLength => (shaft_in + self.club.cap_in + self.head_out_in) * INCH_MM,
            What::BalancePoint => {
                let all = self.all();
                let mass_g: f64 = all.iter().map(|(g, _)| g).sum();
                all.iter().map(|(g, x)| g * x).sum::<f64>() / mass_g * INCH_MM
            }
            other => panic!("no length {other:?}"),
        }
    }
}

/// What goes wrong.
#[derive(Debug, Clone, PartialEq)]
pub enum Slip {
    /// Another head of the same number.
    Head(f64),
    /// The head of another number.
    OtherNumber(f64),
    HeadGrams(f64),
    TipOut,
    TipIs(f64),
    HeadOut(f64),
    FerruleOff,
    SolventIn,
    Gap(f64),
    GripOn,
    GripOff,
    CapOff,
    GripOut(f64),
    GripIs(f64),
    Tape(f64),
    Longer(f64),
    ScaleOff(f64),
    SwapDigits,
    Off(f64),
}

/// How long it lasts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Lasts {
    /// That reading only.
    Reading,
    /// From that step on.
    On,
    /// At that step.
    Step,
    /// From that step on until the club is glued.
    UntilGlued,
    /// On the balance scale for all clubs from the reading on.
    Scale,
}

/// A blunder at a club from a step on.
#[derive(Debug, Clone)]
pub struct Fault {
    pub slip: Slip,
    pub club: usize,
    pub step: &'static str,
    pub what: What,
    pub lasts: Lasts,
}

fn place(step: &str) -> usize {
    super::shop::STEPS.iter().position(|(key, _)| *key == step).unwrap()
}

impl Fault {
    /// Whether the reading to come is touched.
    pub fn acts(&self, bench: &Bench<'_>, club: usize, step: &str, what: What) -> bool {
        let own = club == self.club;
        let done = bench
            .readings
            .iter()
            .any(|r| r.club == bench.front.job.clubs[self.club].id && r.step == self.step && r.what == self.what);
        match self.lasts {
            Lasts::Reading => own && step == self.step && what == self.what && !done,
            Lasts::Step => own && step == self.step,
            Lasts::On => own && place(step) >= place(self.step),
            Lasts::UntilGlued => own && (place(self.step)..place("cured")).contains(&place(step)),
            Lasts::Scale => {
                let here = own && step == self.step && what == self.what;
                (here || done) && matches!(what, What::SwingWeight | What::CheckWeight | What::EmptyScale)
            }
        }
    }

    pub fn on_club(&self, seen: &mut Seen) {
        apply(&self.slip, seen);
    }

    pub fn on_display(&self, seen: &mut Seen) {
        if let Slip::ScaleOff(by) = self.slip {
            seen.shown += by;
            seen.off_zero = true;
        }
    }

    pub fn on_entry(&self, reading: &mut Reading) {
        match self.slip {
            Slip::SwapDigits => {
                let mut letters: Vec<char> = reading.typed.chars().collect();
                let point = letters.iter().position(|c| *c == '.').unwrap();
                letters.swap(point - 1, point + 1);
                reading.typed = letters.into_iter().collect();
                reading.value = match reading.what {
                    What::SwingWeight => quantity::parse_swing_weight(&reading.typed).unwrap().points(),
                    _ => reading.typed.parse().unwrap(),
                };
            }
            Slip::Off(by) => {
                reading.value += by;
                reading.typed = match reading.what {
                    What::SwingWeight => quantity::SwingWeight::from_points(reading.value).letter(1),
                    _ => format!("{:.1}", reading.value),
                };
            }
            _ => {}
        }
    }
}

fn apply(slip: &Slip, seen: &mut Seen) {
    let change = |seen: &mut Seen, role: Role, to: &dyn Fn(f64) -> f64| {
        for piece in seen.club.pieces.iter_mut().filter(|p| p.role == role) {
            piece.mass_g = to(piece.mass_g);
        }
    };
    match slip {
        Slip::Head(mass_g) => change(seen, Role::Head, &|_| *mass_g),
        Slip::OtherNumber(mass_g) => {
            change(seen, Role::Head, &|_| *mass_g);
            seen.other_number = true;
        }
        Slip::HeadGrams(more) => change(seen, Role::Head, &|g| g + more),
        Slip::TipOut => change(seen, Role::TipWeight, &|_| 0.0),
        Slip::TipIs(mass_g) => {
            // A pair of weights becomes one.
            let mut first = true;
            for piece in seen.club.pieces.iter_mut().filter(|p| p.role == Role::TipWeight) {
                piece.mass_g = if first { *mass_g } else { 0.0 };
                first = false;
            }
        }
        Slip::HeadOut(by) => seen.head_out_in = *by,
        Slip::FerruleOff => {
            change(seen, Role::Ferrule, &|_| 0.0);
            change(seen, Role::Turnings, &|_| 0.0);
        }
        Slip::SolventIn => seen.on.push(Role::Solvent),
        Slip::Gap(by) => seen.gap_in = *by,
        Slip::GripOn => seen.on.push(Role::Grip),
        Slip::GripOff => seen.on.retain(|r| *r != Role::Grip),
        Slip::CapOff => seen.club.cap_in = 0.0,
        Slip::GripOut(by) => seen.club.cap_in += by,
        Slip::GripIs(mass_g) => change(seen, Role::Grip, &|_| *mass_g),
        Slip::Tape(more) => change(seen, Role::Tape, &|g| (g + more).max(0.0)),
        Slip::Longer(by) => seen.shaft_longer_in = *by,
        Slip::ScaleOff(_) | Slip::SwapDigits | Slip::Off(_) => {}
    }
}
