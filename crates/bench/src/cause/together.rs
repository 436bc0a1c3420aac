//! What this club has in common with others of the set: pieces exchanged, a scale off zero, joints all heavy or all
//! light, and what looks say.

use super::anatomy::{Alter, Anatomy};
use super::case::{Candidate, Case, Other, Seen, SeenBy, Span, Stage};
use super::kinds::CauseKind as Kind;
use super::list::{ELSE, WEIGHED_SD_G};
use super::says::CauseSays as Says;
use super::set::{self, FerruleOff, Member};
use crate::belief::Believed;
use crate::learned::ValueKey;
use estimation::{Change, Effect, Hypothesis};
use jiff::Timestamp;
use trade::error::TradeError;
use trade::id::ClubId;
use trade::kind::Role;
use trade::model::PartKind;
use trade::reading::{Unit, What};

/// Readings on a scale before and after the suspected ones that a run may reach to: about those of one step.
const RUN_BEFORE: usize = 6;
const RUN_AFTER: usize = 12;
/// By how much a mass scale is off that was not zeroed, g (common practice, no source).
const OFF_ZERO_SD_G: f64 = 5.0;
/// Weights and grips closer than this cannot be told apart, g.
const ALIKE_G: f64 = 0.05;
/// Share of looks that are answered wrongly.
const LOOK_WRONG: f64 = 0.005;
/// A bad reading of another club, for each reading that is doubted there.
const BAD_READING: f64 = 0.02;
/// How many doubted readings of other clubs are weighed both ways; those furthest in time are left out.
const MOST_BOTH_WAYS: usize = 2;
/// All joints of the set take more or less adhesive than usual: how likely, by how much on average and how far about it,
/// the scatter of single joints with it. A tenth of the shops lie a quarter above the usual, three times as wide (common
/// practice, no source).
const ALL_JOINTS: f64 = 0.1;
const ALL_JOINTS_SHARE: f64 = 0.25;

/// A piece that two clubs may exchange.
struct Piece {
    kind: Kind,
    role: Role,
    part: PartKind,
    /// Share of the chances on each stage from which the exchange shows: dry, tip, glued, gripped.
    shares: [(Stage, f64); 4],
}

const EXCHANGED: [Piece; 3] = [
    Piece {
        kind: Kind::HeadsExchanged,
        role: Role::Head,
        part: PartKind::Head,
        shares: [(Stage::Dry, 0.5), (Stage::Tip, 0.3), (Stage::Glued, 0.2), (Stage::Gripped, 0.0)],
    },
    Piece {
        kind: Kind::TipsExchanged,
        role: Role::TipWeight,
        part: PartKind::TipWeight,
        shares: [(Stage::Dry, 0.0), (Stage::Tip, 0.6), (Stage::Glued, 0.4), (Stage::Gripped, 0.0)],
    },
    Piece {
        kind: Kind::GripsExchanged,
        role: Role::Grip,
        part: PartKind::Grip,
        shares: [(Stage::Dry, 0.0), (Stage::Tip, 0.0), (Stage::Glued, 0.0), (Stage::Gripped, 1.0)],
    },
];

/// The readings of a club that a gram more of a piece shows in, from a stage on or at that stage only.
fn member(anatomy: &Anatomy, seen: &[Seen], role: Role, from: Stage, only: bool) -> Member {
    let there = |s: &&Seen| s.stage >= from && !(only && (s.stage > from || s.planned));
    let effect = |s: &Seen| Effect { reading: s.obs.id.clone(), per_unit: anatomy.effect(Alter::Mass(role), &s.obs) };
    let per_g = seen.iter().filter(there).map(effect).filter(|e| e.per_unit != 0.0).collect();
    Member { mass_g: anatomy.mass_g(role), per_g }
}

/// That all joints of the set are heavier or lighter than usual, once that is likelier than not.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn all_joints(believed: &Believed<'_>) -> Result<Option<Says>, TradeError> {
    let mixture = believed.mixture();
    let joints = mixture.parts.iter().flat_map(|part| &part.wide);
    let mut joints = joints.filter(|key| matches!(key.parse(), Ok(ValueKey::Adhesive(_))));
    let Some(key) = joints.find(|key| mixture.chance_wide(key) > 0.5) else { return Ok(None) };
    let by_g = mixture.mean(|belief| belief.marginal(key).map(|f| f.mean))?;
    Ok(Some(if by_g < 0.0 { Says::JointsLight { by_g: -by_g } } else { Says::JointsHeavy { by_g } }))
}

impl Case<'_> {
    /// Heads, tip weights and grips that this club and another one of the set have exchanged. The effects on both clubs
    /// are weighed together, so that both are named.
    pub(super) fn exchanges(&self, all: &mut Vec<Candidate>) {
        for piece in &EXCHANGED {
            for other in &self.others {
                if let Some((prior, says)) = self.may_be_exchanged(piece, other) {
                    self.exchange(all, piece, other, prior, &says);
                }
            }
        }
    }

    /// How likely this club and another one are to have exchanged a piece, and what it is called.
    fn may_be_exchanged(&self, piece: &Piece, other: &Other<'_>) -> Option<(f64, Says)> {
        let (own_g, other_g) = (self.anatomy.mass_g(piece.role), other.anatomy.mass_g(piece.role));
        if own_g <= 0.0 || other_g <= 0.0 || (own_g - other_g).abs() <= ALIKE_G {
            return None;
        }
        let job = self.believed.assembly.job;
        let (own, theirs) = (&self.club.target, &other.club.target);
        let mut pair = [self.club, other.club];
        pair.sort_by_key(|c| c.slot);
        let [first, second] = pair.map(|c| c.target.name());
        let built = || job.clubs.iter().filter(|c| c.plan.is_some());
        Some(match piece.part {
            PartKind::Head => {
                let set: Vec<_> = built().filter(|c| c.target.head_model == own.head_model).collect();
                let at = |id: &ClubId| set.iter().position(|c| c.id == *id);
                let apart = at(&self.club.id)?.abs_diff(at(&other.club.id)?);
                (set::heads_prior(set.len(), apart), Says::HeadsExchanged { first, second })
            }
            PartKind::Grip => {
                let of_model = built().filter(|c| c.target.grip_model == theirs.grip_model).count();
                if own.grip_model != theirs.grip_model {
                    return None;
                }
                (set::grips_prior(of_model), Says::GripsExchanged { first, second })
            }
            _ => {
                let masses: Vec<f64> = built().filter_map(|c| Some(c.plan.as_ref()?.mass_g(piece.role))).collect();
                let masses: Vec<f64> = masses.into_iter().filter(|g| *g > 0.0).collect();
                let unlike = |i: usize| masses[i + 1..].iter().filter(|g| (**g - masses[i]).abs() > ALIKE_G).count();
                let pairs = (0..masses.len()).map(unlike).sum();
                (set::tips_prior(pairs), Says::TipsExchanged { first, second })
            }
        })
    }

    fn exchange(&self, all: &mut Vec<Candidate>, piece: &Piece, other: &Other<'_>, prior: f64, says: &Says) {
        let is_read = |stage: Stage| {
            let at = |s: &Seen| s.stage == stage && !s.planned;
            self.seen.iter().any(at) || other.seen.iter().any(at)
        };
        // What came about at a stage at which nothing was read shows at the next one.
        let mut carried = 0.0;
        for (stage, share) in piece.shares {
            carried += share;
            if carried <= 0.0 || !is_read(stage) {
                continue;
            }
            let share = std::mem::take(&mut carried);
            let outlasts = piece.role != Role::Grip && self.seen.iter().any(|s| s.stage > stage && !s.planned);
            let spans: &[(bool, f64)] = if outlasts { &[(false, 0.7), (true, 0.3)] } else { &[(false, 1.0)] };
            for (only, of) in spans {
                let own = member(&self.anatomy, &self.seen, piece.role, stage, *only);
                let theirs = member(&other.anatomy, &other.seen, piece.role, stage, *only);
                let is_of = |s: &&Seen| own.per_g.iter().any(|e| e.reading == s.obs.id);
                let Some(from) = self.seen.iter().position(|s| is_of(&s)) else {
                    continue;
                };
                let first = self.seen.iter().filter(|s| !s.planned && is_of(s)).map(|s| s.reading.at).min();
                let key = piece.kind.key();
                let hypothesis = set::exchange(key, prior * share * of, (&own, &theirs), WEIGHED_SD_G);
                let (kinds, alter) = (vec![piece.kind], Some(Alter::Mass(piece.role)));
                let other_number = self.club.target.number != other.club.target.number;
                let seen_by: Option<SeenBy> = first.filter(|_| piece.role == Role::Head && other_number).map(|from| {
                    let last = self.seen.iter().filter(|s| *only && s.stage == stage && !s.planned);
                    SeenBy { look: What::HeadNumber, from, until: last.map(|s| s.reading.at).max() }
                });
                all.push(Candidate {
                    kinds,
                    says: says.clone(),
                    alter,
                    hypothesis,
                    from,
                    seen_by: seen_by.into_iter().collect(),
                });
            }
        }
    }

    /// A scale off zero for a run of readings of any club in which a suspected one lies.
    pub(super) fn off_zero(&self, all: &mut Vec<Candidate>) {
        let mut scales: Vec<&String> = self.suspects().filter_map(|(_, s)| s.obs.scale.as_ref()).collect();
        scales.sort();
        scales.dedup();
        for scale in scales {
            let of_scale: Vec<_> = self.on_scale.iter().filter(|r| r.scale == *scale).collect();
            let suspected = |id: &str| self.suspects().any(|(_, s)| s.obs.id == id);
            let first = of_scale.iter().position(|r| suspected(&r.id)).unwrap_or(0);
            let last = of_scale.iter().rposition(|r| suspected(&r.id)).unwrap_or(0);
            let window = &of_scale[first.saturating_sub(RUN_BEFORE)..of_scale.len().min(last + 1 + RUN_AFTER)];
            let ends = of_scale.len() <= last + 1 + RUN_AFTER;
            let points = *scale == self.believed.assembly.shop.balance_scale.key;
            let sd = if points { set::OFF_ZERO_SD_POINTS } else { OFF_ZERO_SD_G };
            // The set counts a bad reading as 0.02 over its readings, the case as so much for each: the runs keep their part.
            let to_case = Kind::SomethingElse.prior() * window.len() as f64 / BAD_READING;
            for run in set::runs(window.len()) {
                let of_run = &window[run.from..=run.to];
                let Some(seen) = of_run.iter().find(|r| suspected(&r.id)) else { continue };
                let from = self.seen.iter().position(|s| s.obs.id == seen.id).unwrap_or(self.asked);
                let goes_on = run.open && ends;
                let planned = self.seen.iter().filter(|s| goes_on && s.planned && s.obs.scale.as_ref() == Some(scale));
                let ids = of_run.iter().map(|r| r.id.as_str()).chain(planned.map(|s| s.obs.id.as_str()));
                let kind = Kind::ScaleNotZeroed;
                let until = if goes_on { None } else { of_run.last().map(|r| r.at) };
                let from_at = of_run.first().map_or(self.seen[self.asked].reading.at, |r| r.at);
                all.push(Candidate {
                    kinds: vec![kind],
                    says: if run.from < run.to {
                        Says::ScaleOffZero { n: i64::try_from(run.to - run.from + 1).unwrap_or(i64::MAX) }
                    } else {
                        Says::ScaleNotZeroed
                    },
                    alter: None,
                    hypothesis: set::off_zero(kind.key(), run.prior * to_case, ids, sd),
                    from,
                    seen_by: vec![SeenBy { look: What::EmptyScale, from: from_at, until }],
                });
            }
        }
    }

    /// The ferrule off at the dry fit, and put on later or never.
    pub(super) fn ferrule_off_dry(&self, all: &mut Vec<Candidate>) {
        let effects = |stages: &dyn Fn(&Seen) -> bool| -> Vec<Effect> {
            let of = self.seen.iter().filter(|s| s.stage > Stage::Loose && stages(s));
            of.map(|s| Effect { reading: s.obs.id.clone(), per_unit: self.anatomy.effect(Alter::FerruleOff, &s.obs) })
                .filter(|e| e.per_unit != 0.0)
                .collect()
        };
        let dry = effects(&|s| s.stage == Stage::Dry && !s.planned);
        let until_glued = effects(&|s| s.stage == Stage::Tip || s.stage == Stage::Dry && s.planned);
        let glued = effects(&|s| s.stage > Stage::Tip);
        let kind = Kind::FerruleMissing;
        let last = |stages: &dyn Fn(Stage) -> bool| {
            self.seen
                .iter()
                .rev()
                .find(|s| !s.planned && s.stage > Stage::Loose && stages(s.stage))
                .map(|s| s.reading.at)
        };
        for (span, hypothesis) in set::ferrule_off(kind.key(), [&dry, &until_glued, &glued]) {
            let named = hypothesis.changes.first().map_or(&[][..], |c| &c.effects);
            let Some(from) = self.seen.iter().position(|s| !s.planned && named.iter().any(|e| e.reading == s.obs.id))
            else {
                continue;
            };
            let until = match span {
                FerruleOff::StillOff => None,
                FerruleOff::DryOnly => last(&|s| s == Stage::Dry),
                FerruleOff::UntilGlued if glued.is_empty() => None,
                FerruleOff::UntilGlued => last(&|s| s <= Stage::Tip),
            };
            let still = until.is_none();
            all.push(Candidate {
                kinds: vec![kind],
                says: if still { Says::FerruleMissing } else { Says::FerruleWasOff },
                alter: Some(Alter::FerruleOff),
                hypothesis,
                from,
                seen_by: vec![SeenBy { look: What::FerruleOn, from: self.seen[from].reading.at, until }],
            });
        }
    }

    /// All joints of the adhesive take more or less of it than usual.
    pub(super) fn all_joints(&self, all: &mut Vec<Candidate>) {
        let assembly = self.believed.assembly;
        let used =
            |target: &trade::sheet::SheetClub| target.adhesive.clone().or_else(|| assembly.shop.adhesive.clone());
        let Some(code) = used(&self.club.target) else { return };
        let Ok(adhesive) = assembly.library.adhesive(&code) else { return };
        let Some((mean_sd_g, piece_sd_g)) = assembly.unlearned_joint_sd_g(adhesive) else { return };
        let glued = |anatomy: &Anatomy, seen: &[Seen]| -> Vec<Effect> {
            member(anatomy, seen, Role::Adhesive, Stage::Glued, false).per_g
        };
        let mut clubs = vec![glued(&self.anatomy, &self.seen)];
        clubs.extend(self.others.iter().filter(|o| used(&o.club.target).as_ref() == Some(&code)).map(|o| {
            let counted: Vec<Seen> = o.seen.iter().filter(|s| !s.suspect).cloned().collect();
            glued(&o.anatomy, &counted)
        }));
        clubs.retain(|effects| !effects.is_empty());
        if clubs.len() < 2 {
            return;
        }
        let Some(from) = self.seen.iter().position(|s| !s.planned && clubs[0].iter().any(|e| e.reading == s.obs.id))
        else {
            return;
        };
        let wider = 8_f64.sqrt();
        let mean =
            Change { mean: ALL_JOINTS_SHARE * adhesive.joint_mass_g, sd: wider * mean_sd_g, effects: clubs.concat() };
        // Half as much again of each joint's own scatter.
        let own_sd = 1.25_f64.sqrt() * piece_sd_g;
        let own = clubs.into_iter().map(|effects| Change { mean: 0.0, sd: own_sd, effects });
        let changes = std::iter::once(mean).chain(own).collect();
        let kind = Kind::AllJoints;
        all.push(Candidate {
            kinds: vec![kind],
            says: Says::JointsHeavy { by_g: 0.0 },
            alter: Some(Alter::Mass(Role::Adhesive)),
            hypothesis: Hypothesis { changes, ..Hypothesis::nothing(kind.key(), ALL_JOINTS / (1.0 - ALL_JOINTS)) },
            from,
            seen_by: Vec::new(),
        });
    }

    /// The look that shows a cause of one club, where there is one.
    pub(super) fn shown_by(&self, kind: Kind, from: usize, span: Span) -> Option<SeenBy> {
        let look = match kind {
            Kind::FerruleMissing => What::FerruleOn,
            // What tells a neighbour's head from a mass that was noted wrong: on every scale they are alike.
            Kind::NeighbourHead => What::HeadNumber,
            _ => return None,
        };
        let reading = &self.seen[from].reading;
        let until = match span {
            Span::On => None,
            Span::Only => Some(reading.at),
            Span::Step => {
                let of_step = self.seen.iter().filter(|s| !s.planned && s.reading.step == reading.step);
                of_step.map(|s| s.reading.at).max()
            }
        };
        Some(SeenBy { look, from: reading.at, until })
    }

    /// Probability of the answers of all looks so far under a candidate.
    pub(super) fn chance_of_looks(&self, candidate: &Candidate) -> f64 {
        let answered = self.looks.iter().map(|look| {
            let yes = candidate.says_yes(look.what, Some(look.at));
            if look.value > 0.5 { yes } else { 1.0 - yes }
        });
        answered.product()
    }

    /// Whether a look was taken after everything that was read: it would say the same again.
    pub(super) fn is_looked_at(&self, what: What) -> bool {
        let last = self.on_scale.iter().map(|r| r.at).max();
        self.looks.iter().any(|look| look.what == what && last.is_none_or(|last| look.at >= last))
    }

    /// Each candidate with the doubted readings of other clubs both as they are and as plain bad readings: a reading
    /// that is not believed there is no evidence here but for what it may be.
    pub(super) fn both_ways(&self, all: &mut Vec<Candidate>) {
        let named = |id: &str| {
            all.iter().any(|c| c.hypothesis.changes.iter().flat_map(|c| &c.effects).any(|e| e.reading == id))
        };
        let elsewhere = self.others.iter().flat_map(|o| &o.seen);
        let mut doubted: Vec<&Seen> =
            elsewhere.filter(|s| self.believed.is_doubted(&s.reading.id) && named(&s.obs.id)).collect();
        let at = self.seen[self.asked].reading.at;
        doubted.sort_by_key(|s| (s.reading.at.duration_since(at).abs(), s.obs.id.clone()));
        let left_out: Vec<String> = doubted.iter().skip(MOST_BOTH_WAYS).map(|s| s.obs.id.clone()).collect();
        for change in all.iter_mut().flat_map(|c| &mut c.hypothesis.changes) {
            change.effects.retain(|e| !left_out.contains(&e.reading));
        }
        for seen in doubted.into_iter().take(MOST_BOTH_WAYS) {
            let sd = match seen.reading.what.unit() {
                Unit::Points => ELSE.0,
                Unit::Gram => ELSE.1,
                _ => ELSE.2,
            };
            let bad = Hypothesis::shift("bad", 1.0, seen.obs.id.clone(), 0.0, sd).changes;
            let also_bad: Vec<Candidate> = all
                .iter()
                .map(|c| {
                    let mut also = c.clone();
                    also.hypothesis.changes.extend(bad.iter().cloned());
                    also.hypothesis.prior *= BAD_READING;
                    also
                })
                .collect();
            all.extend(also_bad);
        }
    }
}

impl Candidate {
    /// Chance that a look is answered yes, now or at a time of before.
    pub(super) fn says_yes(&self, look: What, at: Option<Timestamp>) -> f64 {
        let there = self.seen_by.iter().any(|state| {
            let ended = state.until.is_some_and(|until| at.is_none_or(|at| at > until));
            let begun = at.is_none_or(|at| at >= state.from);
            state.look == look && begun && !ended
        });
        if there { LOOK_WRONG } else { 1.0 - LOOK_WRONG }
    }
}
