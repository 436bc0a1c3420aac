//! Why a club is left unbuilt, and what to order.

use crate::cost::{enough_tips, under_cap};
use crate::error::PartKind;
use crate::model::{Candidate, ClubNeed, JobSet, Stock};
use crate::solution::{Choice, HeadWindow, Unbuildable, Why};

/// Names the reason for every unbuilt club of a plan.
pub(crate) fn unbuildable(sets: &[JobSet], stock: &Stock, plan: &[Vec<Option<Choice>>]) -> Vec<Unbuildable> {
    let left = left_over(stock, plan);
    let mut out = Vec::new();
    for (s, (set, choices)) in sets.iter().zip(plan).enumerate() {
        for (c, (club, choice)) in set.clubs.iter().zip(choices).enumerate() {
            if choice.is_none() {
                out.push(Unbuildable { set: s, club: c, why: why(sets, club, stock, &left, plan) });
            }
        }
    }
    out
}

fn why(sets: &[JobSet], club: &ClubNeed, stock: &Stock, left: &Stock, plan: &[Vec<Option<Choice>>]) -> Why {
    let all = Reach::of(club, stock);
    if all.shafts.is_none() {
        return Why::NoShaft;
    }
    if all.grips.is_none() {
        return Why::NoGrip;
    }
    if all.adapters.is_none() {
        return Why::NoAdapter;
    }
    if all.heads.is_none() {
        return Why::NoHead { window: all.window(club) };
    }
    if let (Some(lacking_points), Some(window)) = (all.lacking(club), all.window(club))
        && lacking_points != 0.0
    {
        return Why::OutOfReach { lacking_points, window };
    }
    let rest = Reach::of(club, left);
    let window = rest.window(club).or_else(|| all.window(club));
    if let Some(locked) = locked_twice(sets, club, stock, plan, window) {
        return locked;
    }
    let kind = if rest.heads.is_none() {
        PartKind::Head
    } else if rest.shafts.is_none() {
        PartKind::Shaft
    } else if rest.grips.is_none() {
        PartKind::Grip
    } else if rest.adapters.is_none() {
        PartKind::Adapter
    } else {
        // Parts are left of every kind, but not the ones that would do; a head is what is ordered by mass.
        PartKind::Head
    };
    Why::Short { kind, window }
}

fn locked_twice(
    sets: &[JobSet],
    club: &ClubNeed,
    stock: &Stock,
    plan: &[Vec<Option<Choice>>],
    window: Option<HeadWindow>,
) -> Option<Why> {
    for kind in SINGLE {
        let [only] = list_of(club, kind) else { continue };
        if capacity(stock, kind)[only.part] != 1 {
            continue;
        }
        for (other_set, (set, choices)) in sets.iter().zip(plan).enumerate() {
            for (other_club, (need, choice)) in set.clubs.iter().zip(choices).enumerate() {
                let locked = list_of(need, kind).len() == 1;
                if locked && choice.as_ref().is_some_and(|x| part_of(x, kind) == Some(only.part)) {
                    return Some(Why::LockedTwice { kind, part: only.part, other_set, other_club, window });
                }
            }
        }
    }
    None
}

/// Kinds of which a club takes one.
const SINGLE: [PartKind; 4] = [PartKind::Head, PartKind::Shaft, PartKind::Grip, PartKind::Adapter];

fn list_of(club: &ClubNeed, kind: PartKind) -> &[Candidate] {
    match kind {
        PartKind::Head => &club.heads,
        PartKind::Shaft => &club.shafts,
        PartKind::Grip => &club.grips,
        PartKind::Adapter => club.adapters.as_deref().unwrap_or_default(),
        PartKind::Tip => &[],
    }
}

fn part_of(choice: &Choice, kind: PartKind) -> Option<usize> {
    match kind {
        PartKind::Head => Some(choice.head),
        PartKind::Shaft => Some(choice.shaft),
        PartKind::Grip => Some(choice.grip),
        PartKind::Adapter => choice.adapter,
        PartKind::Tip => None,
    }
}

fn capacity(stock: &Stock, kind: PartKind) -> &[u32] {
    match kind {
        PartKind::Head => &stock.heads,
        PartKind::Shaft => &stock.shafts,
        PartKind::Grip => &stock.grips,
        PartKind::Adapter => &stock.adapters,
        PartKind::Tip => &[],
    }
}

/// The stock less what a plan takes.
fn left_over(stock: &Stock, plan: &[Vec<Option<Choice>>]) -> Stock {
    let mut left = stock.clone();
    for choice in plan.iter().flatten().flatten() {
        for (list, part) in
            [(&mut left.heads, choice.head), (&mut left.shafts, choice.shaft), (&mut left.grips, choice.grip)]
        {
            list[part] = list[part].saturating_sub(1);
        }
        if let Some(adapter) = choice.adapter {
            left.adapters[adapter] = left.adapters[adapter].saturating_sub(1);
        }
        for &tip in &choice.tips {
            left.tips[tip].count = left.tips[tip].count.saturating_sub(1);
        }
    }
    left
}

/// Least and greatest contribution of each kind from what is there.
struct Reach {
    heads: Option<(f64, f64)>,
    shafts: Option<(f64, f64)>,
    grips: Option<(f64, f64)>,
    /// Nothing where the club takes none.
    adapters: Option<(f64, f64)>,
    /// No tip weight up to the most that the cap allows.
    tips: (f64, f64),
}

impl Reach {
    fn of(club: &ClubNeed, stock: &Stock) -> Self {
        let of = |kind| ends(list_of(club, kind), capacity(stock, kind));
        Self {
            heads: of(PartKind::Head),
            shafts: of(PartKind::Shaft),
            grips: of(PartKind::Grip),
            adapters: if club.adapters.is_some() { of(PartKind::Adapter) } else { Some((0.0, 0.0)) },
            tips: tip_ends(club, stock),
        }
    }

    /// How far the nearest combination is out of the loss curve's reach; positive: too light in the head.
    fn lacking(&self, club: &ClubNeed) -> Option<f64> {
        let h = self.heads?;
        let (low, high) = self.without_head(club)?;
        let (low, high) = (low + h.0, high + h.1);
        let reach = usable_reach(club);
        Some(if high < -reach {
            -reach - high
        } else if low > reach {
            reach - low
        } else {
            0.0
        })
    }

    /// Least and greatest deviation without a head.
    fn without_head(&self, club: &ClubNeed) -> Option<(f64, f64)> {
        let (s, g, a) = (self.shafts?, self.grips?, self.adapters?);
        let all = [s, g, a, self.tips];
        let sum = |end: fn(&(f64, f64)) -> f64| club.base_points + all.iter().map(end).sum::<f64>();
        Some((sum(|x| x.0), sum(|x| x.1)))
    }

    /// Contributions of a head that some shaft, grip, adapter and tip weight bring within reach.
    fn window(&self, club: &ClubNeed) -> Option<HeadWindow> {
        let (low, high) = self.without_head(club)?;
        let reach = usable_reach(club);
        let (low_points, high_points) = (-reach - high, reach - low);
        let grams = |points: f64| club.head_scale.map(|h| h.zero_mass_g + points / h.points_per_g);
        Some(HeadWindow { low_points, high_points, low_g: grams(low_points), high_g: grams(high_points) })
    }
}

/// Deviation up to which the loss curve plans at all.
fn usable_reach(club: &ClubNeed) -> f64 {
    let mut usable = (0..=club.loss.half().0).rev().map(|i| f64::from(i) * crate::loss::STEP_POINTS);
    usable.find(|&r| club.loss.cost(r).is_some() || club.loss.cost(-r).is_some()).unwrap_or(0.0)
}

fn ends(list: &[Candidate], capacity: &[u32]) -> Option<(f64, f64)> {
    let there = list.iter().filter(|c| capacity[c.part] > 0).map(|c| c.points);
    there.fold(None, |span, p| Some(span.map_or((p, p), |(lo, hi): (f64, f64)| (lo.min(p), hi.max(p)))))
}

fn tip_ends(club: &ClubNeed, stock: &Stock) -> (f64, f64) {
    let there = |tips: &[usize]| {
        tips.iter().all(|&tip| enough_tips(stock, tip, tips.iter().copied()))
            && under_cap(club, stock, tips.iter().copied())
    };
    let points_of = |tip: usize| club.tips.iter().find(|f| f.tip == tip).map(|f| f.points);
    let singles = club.tips.iter().filter(|f| there(&[f.tip])).map(|f| f.points);
    let pairs = club.tip_pairs.iter().filter(|p| there(&[p.lower, p.upper]));
    let pairs = pairs.filter_map(|p| Some(points_of(p.lower)? + points_of(p.upper)? - p.lost_points));
    singles.chain(pairs).fold((0.0, 0.0), |(low, high): (f64, f64), x| (low.min(x), high.max(x)))
}
