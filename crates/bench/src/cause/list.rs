//! Everything that may be wrong with one club, from its real pieces and those that lie about in the shop.

use super::anatomy::Alter;
use super::case::{Candidate, Case, Seen, Span, Stage};
use super::kinds::CauseKind as Kind;
use super::says::CauseSays as Says;
use super::slips::slips;
use crate::solvent::SOLVENT_G;
use estimation::{Effect, Hypothesis};
use fact::Fact;
use quantity::INCH_MM;
use trade::club_name::ClubName;
use trade::error::TradeError;
use trade::kind::Role;
use trade::model::{Model, PartKind};
use trade::reading::Unit;
use trade::reading_figure::ReadingFigure;

/// Two mistakes in one club come together this much oftener than by chance: in a hurry both are made (no source).
const TOGETHER: f64 = 30.0;
/// Mass of a model's head about its nominal one, g, where none of them is weighed.
const HEAD_SD_G: f64 = 1.5;
/// How far off a mass is that was noted wrong, g: a digit misread or the neighbour's line, of a head or a shaft, and of a grip.
/// Common practice, no source.
const NOTED_SD_G: f64 = 6.0;
const NOTED_GRIP_SD_G: f64 = 4.0;
// Sizes of mistakes: common practice, no source.

/// Film and label: mean and standard deviation, g.
const FILM_G: (f64, f64) = (1.2, 0.6);
/// How far a butt is off its stop: mean and standard deviation, mm.
const OFF_STOP_MM: (f64, f64) = (4.0, 2.5);
/// How far a head is off its seat: mean and standard deviation, mm.
const OFF_SEAT_MM: (f64, f64) = (5.0, 2.5);
/// How far a cut is off: inches, share of such slips.
const CUT_OFF_IN: [(f64, f64); 6] = [(0.5, 0.3), (-0.5, 0.3), (1.0, 0.1), (-1.0, 0.1), (0.25, 0.1), (-0.25, 0.1)];
/// How far a grip is off its home: mean and standard deviation, mm.
const OFF_HOME_MM: (f64, f64) = (5.0, 2.5);
/// What is not known of the mass of a strip of tape, as a share of it.
const STRIP_SHARE_SD: f64 = 0.2;
/// How well the mass of a part is known that could take another's place, g: weighed, or stated on its bag.
pub(super) const WEIGHED_SD_G: f64 = 0.1;
/// What something else may do to a reading: points, grams, inches.
pub(super) const ELSE: (f64, f64, f64) = (3.0, 10.0, 0.6);

/// Share of an alteration's chances that falls on each stage at which it may come about: loose, dry, tip, glued,
/// gripped. What the club has not come to yet has not happened yet.
type Shares = [f64; 5];

/// One amount that an alteration may have.
struct Amount {
    share: f64,
    mean: f64,
    sd: f64,
    says: Says,
}

impl Amount {
    const fn new(share: f64, mean: f64, sd: f64, says: Says) -> Self {
        Self { share, mean, sd, says }
    }
}

impl Case<'_> {
    /// All candidates; the first is that nothing is wrong.
    pub(super) fn candidates(&self) -> Result<Vec<Candidate>, TradeError> {
        let mut all = Vec::new();
        self.head(&mut all)?;
        self.joint(&mut all)?;
        self.grip_end(&mut all)?;
        self.shaft(&mut all)?;
        self.readings_alone(&mut all);
        self.off_zero(&mut all);
        self.exchanges(&mut all);
        self.all_joints(&mut all);
        self.pairs(&mut all);
        let wrong: f64 = all.iter().map(|c| c.hypothesis.prior).sum();
        let nothing = Candidate {
            kinds: vec![Kind::Nothing],
            says: Says::NothingWrong,
            alter: None,
            hypothesis: Hypothesis::nothing(Kind::Nothing.key(), (1.0 - wrong).max(0.5)),
            from: self.asked,
            seen_by: Vec::new(),
        };
        all.insert(0, nothing);
        self.both_ways(&mut all);
        for candidate in &mut all {
            candidate.hypothesis.prior *= self.chance_of_looks(candidate);
        }
        Ok(all)
    }

    /// An alteration that comes about at some step and lasts, or is noticed and put right after that step.
    fn lasting(&self, all: &mut Vec<Candidate>, kind: Kind, alter: Alter, shares: Shares, amounts: &[Amount]) {
        let onsets = self.onsets(alter);
        for &(from, stage) in &onsets {
            let same = onsets.iter().filter(|(_, s)| *s == stage).count().max(1) as f64;
            // What came about at a stage at which nothing was read shows at the next one.
            let before =
                onsets.iter().map(|(_, s)| *s as usize + 1).filter(|s| *s <= stage as usize).max().unwrap_or(0);
            let share = shares[before..=stage as usize].iter().sum::<f64>() / same;
            if share <= 0.0 {
                continue;
            }
            let outlasts = self.outlasts(alter, from);
            let spans: &[(Span, f64)] =
                if outlasts { &[(Span::On, 0.6), (Span::Step, 0.4)] } else { &[(Span::On, 1.0)] };
            for amount in amounts {
                for (span, of) in spans {
                    let effects = self.effects(alter, from, *span);
                    let change = Self::change(amount.mean, amount.sd, effects);
                    let prior = kind.prior() * share * amount.share * of;
                    all.push(Candidate {
                        kinds: vec![kind],
                        says: amount.says.clone(),
                        alter: Some(alter),
                        hypothesis: Hypothesis { changes: vec![change], ..Hypothesis::nothing(kind.key(), prior) },
                        from,
                        seen_by: self.shown_by(kind, from, *span).into_iter().collect(),
                    });
                }
            }
        }
    }

    /// A mass that was noted wrong when the part came in: it shows from the first reading with the part on.
    fn noted(&self, all: &mut Vec<Candidate>, role: Role, part: PartKind, sd_g: f64) {
        // Each of head, shaft and grip is weighed and written down by itself, and each may go wrong.
        let amount = [Amount::new(1.0, 0.0, sd_g, Says::MassNoted { part })];
        self.lasting(all, Kind::MassNoted, Alter::Mass(role), [1.0, 0.0, 0.0, 0.0, 0.0], &amount);
    }

    fn head(&self, all: &mut Vec<Candidate>) -> Result<(), TradeError> {
        let target = &self.club.target;
        let (model, number) = self.believed.assembly.library.head_number(&target.head_model, &target.number)?;
        let own_g = self.anatomy.mass_g(Role::Head);
        let place = model.numbers.iter().position(|n| n.number == number.number).unwrap_or(0);
        let neighbours: Vec<_> = [place.checked_sub(1), Some(place + 1)]
            .into_iter()
            .flatten()
            .filter_map(|i| model.numbers.get(i))
            .collect();
        let mut amounts = Vec::new();
        for neighbour in &neighbours {
            let each = 1.0 / neighbours.len() as f64;
            let found = ClubName::of(target.club_kind, &neighbour.number);
            let says = Says::NeighbourHead { found, own: target.name() };
            let of_job = self.believed.assembly.job.clubs.iter().find(|c| {
                c.target.head_model == target.head_model && c.target.number.eq_ignore_ascii_case(&neighbour.number)
            });
            let held = of_job.and_then(|c| c.plan.as_ref()).and_then(|p| p.part(PartKind::Head)).map(|p| p.mass_g);
            let (mean, sd) = self
                .spread(PartKind::Head, &model.code, Some(&neighbour.number))
                .unwrap_or((neighbour.mass_g, HEAD_SD_G));
            if let Some(mass_g) = held {
                amounts.push(Amount::new(0.6 * each, mass_g - own_g, WEIGHED_SD_G, says.clone()));
            }
            let rest = if held.is_some() { 0.4 } else { 1.0 };
            amounts.push(Amount::new(rest * each, mean - own_g, sd, says));
        }
        let head = Alter::Mass(Role::Head);
        self.lasting(all, Kind::NeighbourHead, head, [0.3, 0.3, 0.15, 0.25, 0.0], &amounts);
        if let Some((mean, sd)) = self.spread(PartKind::Head, &model.code, Some(&number.number)) {
            let other = [Amount::new(0.5, mean - own_g, sd, Says::OtherHead { club: target.name() })];
            self.lasting(all, Kind::WrongPart, head, [0.3, 0.3, 0.15, 0.25, 0.0], &other);
        }
        self.noted(all, Role::Head, PartKind::Head, NOTED_SD_G);
        let film = [Amount::new(1.0, FILM_G.0, FILM_G.1, Says::FilmOn)];
        self.lasting(all, Kind::FilmOn, head, [0.0, 0.6, 0.2, 0.2, 0.0], &film);
        self.screws(all, head, &model.screws.iter().map(|s| s.mass_g).collect::<Vec<_>>());
        let seat = |says: Says| [Amount::new(1.0, OFF_SEAT_MM.0 / INCH_MM, OFF_SEAT_MM.1 / INCH_MM, says)];
        self.lasting(all, Kind::HeadNotSeated, Alter::HeadOut, [0.0, 0.5, 0.1, 0.4, 0.0], &seat(Says::HeadNotSeated));
        if self.anatomy.has(Role::TipWeight) {
            let seat = seat(Says::TipNotSeated);
            self.lasting(all, Kind::TipNotSeated, Alter::HeadOut, [0.0, 0.0, 0.8, 0.2, 0.0], &seat);
        }
        Ok(())
    }

    fn screws(&self, all: &mut Vec<Candidate>, head: Alter, masses: &[f64]) {
        let mut steps: Vec<f64> = Vec::new();
        for a in masses {
            for b in masses {
                if (a - b).abs() > 0.05 && !steps.iter().any(|s| (s - (a - b)).abs() < 0.05) {
                    steps.push(a - b);
                }
            }
        }
        let each = 1.0 / steps.len().max(1) as f64;
        let says = |by_g: f64| match by_g > 0.0 {
            true => Says::ScrewHeavier { by_g },
            false => Says::ScrewLighter { by_g: -by_g },
        };
        let amounts: Vec<Amount> = steps.iter().map(|s| Amount::new(each, *s, WEIGHED_SD_G, says(*s))).collect();
        self.lasting(all, Kind::ScrewSwapped, head, [0.1, 0.5, 0.2, 0.2, 0.0], &amounts);
    }

    fn joint(&self, all: &mut Vec<Candidate>) -> Result<(), TradeError> {
        let shares = [0.0, 0.0, 0.5, 0.5, 0.0];
        let own_g = self.anatomy.mass_g(Role::TipWeight);
        if self.anatomy.has(Role::Ferrule) {
            self.ferrule_off_dry(all);
            let missing = [Amount::new(1.0, 1.0, 0.06, Says::FerruleMissing)];
            let ferrule = Alter::FerruleOff;
            self.lasting(all, Kind::FerruleMissing, ferrule, [0.0, 0.0, 0.4, 0.6, 0.0], &missing);
        }
        if own_g > 0.0 {
            let out = [Amount::new(1.0, -own_g, 0.05, Says::TipLeftOut { planned_g: own_g })];
            self.lasting(all, Kind::TipLeftOut, Alter::Mass(Role::TipWeight), shares, &out);
        }
        self.other_weights(all, own_g, shares)
    }

    /// Another weight of the tray.
    fn other_weights(&self, all: &mut Vec<Candidate>, own_g: f64, shares: Shares) -> Result<(), TradeError> {
        let library = self.believed.assembly.library;
        let plan = self.club.plan.as_ref();
        let tip_mm = plan.map_or(0.0, |p| p.cut_shaft_mm);
        let alter = if own_g > 0.0 {
            Alter::Mass(Role::TipWeight)
        } else {
            Alter::At(Role::TipWeight, (tip_mm - 10.0) / INCH_MM)
        };
        let says = |found_g: f64| match own_g > 0.0 {
            true => Says::TipSwapped { found_g, planned_g: own_g },
            false => Says::TipAdded { found_g },
        };
        let shaft = library.shaft(&self.club.target.shaft_model)?;
        let tray: Vec<f64> = library
            .of_kind(PartKind::TipWeight)
            .filter_map(|m| if let Model::TipWeight(w) = m { Some(w) } else { None })
            .filter(|w| trade::tip_weight::tip_weight_fits(w, shaft.tip_diameter_mm))
            .map(|w| w.mass_g)
            .filter(|g| (g - own_g).abs() > 0.2)
            .collect();
        // Of the weights that are not the planned ones half lie in another club's tip, where there is one: see `exchanges`.
        let in_others = self.others.iter().any(|o| own_g > 0.0 && o.anatomy.mass_g(Role::TipWeight) > 0.0);
        let each = if in_others { 0.5 } else { 1.0 } / tray.len().max(1) as f64;
        let amounts: Vec<Amount> = tray.iter().map(|g| Amount::new(each, g - own_g, WEIGHED_SD_G, says(*g))).collect();
        self.lasting(all, Kind::TipSwapped, alter, shares, &amounts);
        Ok(())
    }

    fn grip_end(&self, all: &mut Vec<Candidate>) -> Result<(), TradeError> {
        let library = self.believed.assembly.library;
        let grip = library.grip(&self.club.target.grip_model)?;
        let gripped = [0.0, 0.0, 0.0, 0.0, 1.0];
        let own_g = self.anatomy.mass_g(Role::Grip);
        let (mean, sd) = self.spread(PartKind::Grip, &grip.code, None).unwrap_or((own_g, grip.mass_sd_g));
        let other = [Amount::new(0.5, mean - own_g, sd, Says::OtherGrip)];
        self.lasting(all, Kind::GripOrTape, Alter::Mass(Role::Grip), [0.3, 0.0, 0.0, 0.0, 0.7], &other);
        self.noted(all, Role::Grip, PartKind::Grip, NOTED_GRIP_SD_G);
        let cap_in = grip.cap_mm / INCH_MM;
        let cap = [Amount::new(1.0, cap_in, 0.1 * cap_in, Says::CapMissing)];
        self.lasting(all, Kind::CapMissing, Alter::CapOff, gripped, &cap);
        let short = [Amount::new(1.0, OFF_HOME_MM.0 / INCH_MM, OFF_HOME_MM.1 / INCH_MM, Says::GripNotHome)];
        self.lasting(all, Kind::GripNotHome, Alter::GripOut, gripped, &short);
        self.lasting(all, Kind::GripOff, Alter::GripOff, gripped, &[Amount::new(1.0, 1.0, 0.03, Says::GripOff)]);
        let on = [Amount::new(1.0, 1.0, 0.03, Says::GripOn)];
        self.lasting(all, Kind::GripOn, Alter::GripOn, [0.0, 0.4, 0.3, 0.3, 0.0], &on);
        if self.anatomy.has(Role::Tape) {
            let wraps = self.club.target.wraps;
            let layers = f64::from(wraps.base + wraps.full) + f64::from(wraps.lower_hand) / 2.0;
            let strip_g = self.anatomy.mass_g(Role::Tape) / layers.max(0.5);
            let amounts = [(Says::StripMore, 1.0), (Says::StripLess, -1.0)]
                .map(|(says, sign)| Amount::new(0.25, sign * strip_g, STRIP_SHARE_SD * strip_g, says));
            self.lasting(all, Kind::GripOrTape, Alter::Mass(Role::Tape), gripped, &amounts);
        }
        // A wet grip read as a dry one: only where the reading says that no solvent is in it.
        let arm_in = grip.length_mm / 2.0 / INCH_MM;
        let wet = Alter::At(Role::Grip, arm_in);
        for (from, _) in self.onsets(wet) {
            if self.seen[from].obs.on.contains(Role::Solvent) {
                continue;
            }
            let change = Self::change(SOLVENT_G.0, SOLVENT_G.1, self.effects(wet, from, Span::Step));
            let hypothesis = Hypothesis {
                changes: vec![change],
                ..Hypothesis::nothing(Kind::SolventIn.key(), Kind::SolventIn.prior())
            };
            let says = Says::SolventIn;
            all.push(Candidate {
                kinds: vec![Kind::SolventIn],
                says,
                alter: Some(wet),
                hypothesis,
                from,
                seen_by: Vec::new(),
            });
        }
        Ok(())
    }

    fn shaft(&self, all: &mut Vec<Candidate>) -> Result<(), TradeError> {
        let shaft = self.believed.assembly.library.shaft(&self.club.target.shaft_model)?;
        let amounts: Vec<Amount> = CUT_OFF_IN
            .iter()
            .map(|(off, share)| {
                let by_mm = off.abs() * INCH_MM;
                let says = if *off > 0.0 { Says::ShaftLong { by_mm } } else { Says::ShaftShort { by_mm } };
                Amount::new(*share, *off, 0.03, says)
            })
            .collect();
        // A length that was read before makes it unlikely; the evidence alone says so.
        self.lasting(all, Kind::CutOff, Alter::Length, [0.7, 0.2, 0.05, 0.05, 0.0], &amounts);
        let sd = std::f64::consts::SQRT_2 * shaft.mass_sd_g;
        self.noted(all, Role::Shaft, PartKind::Shaft, NOTED_SD_G);
        let other = [Amount::new(0.2, 0.0, sd, Says::OtherShaft)];
        self.lasting(all, Kind::WrongPart, Alter::Mass(Role::Shaft), [0.6, 0.3, 0.0, 0.1, 0.0], &other);
        Ok(())
    }

    /// What concerns single readings: how they were taken and typed.
    fn readings_alone(&self, all: &mut Vec<Candidate>) {
        let one = |kind: Kind, prior: f64, from: usize, says: Says| Candidate {
            kinds: vec![kind],
            says,
            alter: None,
            hypothesis: Hypothesis::nothing(kind.key(), prior),
            from,
            seen_by: Vec::new(),
        };
        for (i, seen) in self.suspects() {
            let what = seen.reading.what;
            let id = seen.obs.id.clone();
            let alone = |per_unit| vec![Effect { reading: id.clone(), per_unit }];
            if what.unit() == Unit::Points && seen.stage > Stage::Loose {
                let effects = self.effects(Alter::Gap, i, Span::Only);
                let change = Self::change(OFF_STOP_MM.0 / INCH_MM, OFF_STOP_MM.1 / INCH_MM, effects);
                let kind = Kind::ButtOffStop;
                let mut found = one(kind, kind.prior(), i, Says::ButtOffStop);
                found.alter = Some(Alter::Gap);
                found.hypothesis.changes.push(change);
                all.push(found);
            }
            for slip in slips(&seen.reading) {
                let meant = ReadingFigure::of(what, slip.meant);
                let says = match slip.kind {
                    Kind::DigitsSwapped => Says::DigitsSwapped { meant },
                    Kind::WrongUnit => Says::OtherUnit { meant },
                    Kind::SwingsMiscounted => Says::SwingsMiscounted { meant },
                    _ => Says::Misread { meant },
                };
                let mut found = one(slip.kind, slip.kind.prior() * slip.share, i, says);
                found.hypothesis.misread.push(Self::meant(seen, slip.meant, slip.stretch));
                all.push(found);
            }
            let sd = match what.unit() {
                Unit::Points => ELSE.0,
                Unit::Gram => ELSE.1,
                _ => ELSE.2,
            };
            let kind = Kind::SomethingElse;
            let mut found = one(kind, kind.prior(), i, Says::ElseReading);
            found.hypothesis.changes.push(Self::change(0.0, sd, alone(1.0)));
            all.push(found);
            self.something_lasting(all, i, seen);
        }
    }

    /// Something unknown that stays with the club: any points and any grams.
    fn something_lasting(&self, all: &mut Vec<Candidate>, from: usize, seen: &Seen) {
        if seen.stage == Stage::Loose {
            return;
        }
        let on = |unit: Unit| {
            let later = self.seen[from..].iter().filter(|s| s.stage > Stage::Loose && s.reading.what.unit() == unit);
            later.map(|s| Effect { reading: s.obs.id.clone(), per_unit: 1.0 }).collect::<Vec<_>>()
        };
        let kind = Kind::SomethingElse;
        let changes = [(Unit::Points, ELSE.0), (Unit::Gram, ELSE.1), (Unit::Millimetre, ELSE.2)]
            .into_iter()
            .map(|(unit, sd)| Self::change(0.0, sd, on(unit)))
            .filter(|c| !c.effects.is_empty())
            .collect();
        all.push(Candidate {
            kinds: vec![kind],
            says: Says::ElseClub,
            alter: None,
            hypothesis: Hypothesis { changes, ..Hypothesis::nothing(kind.key(), kind.prior() * 0.7) },
            from,
            seen_by: Vec::new(),
        });
    }

    /// Two at once, for those that are made together.
    fn pairs(&self, all: &mut Vec<Candidate>) {
        const TOGETHER_OFTEN: [(Kind, Kind); 6] = [
            (Kind::FerruleMissing, Kind::TipLeftOut),
            (Kind::ButtOffStop, Kind::FerruleMissing),
            (Kind::ButtOffStop, Kind::TipLeftOut),
            (Kind::NeighbourHead, Kind::FerruleMissing),
            (Kind::NeighbourHead, Kind::TipLeftOut),
            (Kind::FilmOn, Kind::FerruleMissing),
        ];
        let mut found = Vec::new();
        for (first, second) in TOGETHER_OFTEN {
            for a in all.iter().filter(|c| c.kinds == [first]) {
                for b in all.iter().filter(|c| c.kinds == [second]) {
                    let apart = first != Kind::ButtOffStop && a.from != b.from;
                    if apart || a.hypothesis.prior * b.hypothesis.prior <= 0.0 {
                        continue;
                    }
                    let changes = a.hypothesis.changes.iter().chain(&b.hypothesis.changes).cloned().collect();
                    let prior = TOGETHER * a.hypothesis.prior * b.hypothesis.prior;
                    let key = format!("{}+{}", first.key(), second.key());
                    found.push(Candidate {
                        kinds: vec![first, second],
                        says: Says::Both { first: a.says.told(), second: b.says.told() },
                        alter: a.alter,
                        hypothesis: Hypothesis { changes, ..Hypothesis::nothing(key, prior) },
                        from: a.from.min(b.from),
                        seen_by: [a.seen_by.as_slice(), &b.seen_by].concat(),
                    });
                }
            }
        }
        all.extend(found);
    }

    /// Mean and scatter of the free pieces of a model and number, by weight; none where fewer than three are weighed.
    fn spread(&self, kind: PartKind, model: &str, number: Option<&str>) -> Option<(f64, f64)> {
        let masses: Vec<f64> = self
            .spares
            .iter()
            .filter(|s| s.part.kind == kind && s.part.model == model && s.part.mass_g.is_some())
            .filter(|s| number.is_none_or(|n| s.part.number.as_deref().is_some_and(|own| own.eq_ignore_ascii_case(n))))
            .map(|s| s.mass_g)
            .collect();
        if masses.len() < 3 {
            return None;
        }
        let n = masses.len() as f64;
        let mean = masses.iter().sum::<f64>() / n;
        let variance = masses.iter().map(|m| (m - mean).powi(2)).sum::<f64>() / (n - 1.0);
        Some((mean, variance.sqrt().max(0.1)))
    }
}
