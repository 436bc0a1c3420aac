//! Builders without Setwright: round rules, grips chosen by mass, each club corrected by the ones before; and the
//! ceiling, a decision maker who knows every true mean of the shop and of the day.

use crate::club::{Build, CURED, DRY, FINISHED, Faults, TrueClub};
use crate::draw::{Draw, Stream};
use crate::job::{CLUBS, HEADS_A_NUMBER, Knowledge, SimulatedJob};
use crate::models::{IRONS, TIP_CAP_G, TRAY_G};
use crate::scale::{Instruments, Moment, Name};
use crate::settings::{Settings, Trouble};
use crate::shop::SimulatedShop;
use crate::tally::Tally;
use trade::kind::Role;
use trade::reading::What;

/// What the trade counts with: grams in the tip for a point, grams of grip for a point (common practice, no source).
const TIP_G_A_POINT: f64 = 2.0;
/// What a skilled hand counts with for an iron, g (derived: 49.6 / (36 − 14) = 2.26).
const SKILLED_TIP_G_A_POINT: f64 = 2.25;
const GRIP_G_A_POINT: f64 = 5.0;
/// A builder knows his own shop's figures to half a point. How far they are off beyond that, points, and in how many shops: a
/// mixture over builders, a judgement without source.
const FIGURES_OFF_POINTS: [(f64, f64); 3] = [(0.0, 0.5), (0.25, 0.3), (0.5, 0.2)];
/// The club by which he knows them: the middle of the set.
const MIDDLE: usize = 3;

/// How far a builder goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Skill {
    /// Round rules before gluing, nothing after it.
    Rules,
    /// Also picks the grip by its mass after the cure reading.
    Grips,
    /// Also takes the head that leaves least to correct, and corrects each club by what the ones before it finished at: one
    /// grip after another.
    Corrects,
    /// Also takes off what his check weight shows.
    Checked,
}

/// What a builder takes his own shop's figures for: what joint, grip and a wrap do to an iron in his shop, points.
pub(crate) struct Figures {
    pub(crate) joint_adds: f64,
    pub(crate) grip_takes: f64,
    pub(crate) wrap_takes: f64,
}

impl Figures {
    pub(crate) fn of(settings: &Settings, shop: &SimulatedShop, job: &SimulatedJob) -> Self {
        // What he knows is his shop's, not today's; a grip that he never had he knows by those that he had.
        let job = if job.new_models { &SimulatedJob::draw(settings, shop, 0) } else { job };
        let with_wraps = |wraps: u8| {
            let mut other = job.clone();
            (other.full_wraps, other.day.mix_g, other.day.tape_share) = (wraps, 0.0, 0.0);
            let build = as_they_come(&other, MIDDLE);
            other.put_together(shop, MIDDLE, &build, Faults::default(), Knowledge::Means)
        };
        let (none, one) = (with_wraps(0), with_wraps(1));
        // His grips weigh what the box says on average; the one in hand differs by so much.
        let grip_g = job.piece(&as_they_come(job, MIDDLE).grip).weighed_g - job.nominal.grip_g;
        let cured = none.swing_weight_points(&CURED);
        let true_figures = [
            cured - none.swing_weight_points(&DRY),
            cured - none.finish_points() - grip_g / GRIP_G_A_POINT,
            none.finish_points() - one.finish_points(),
        ];
        let mut draw = Draw::of(settings.seed, Stream::Figures, &[shop.id]);
        let mut pick = draw.uniform(0.0, 1.0);
        let mut off_points = 0.0;
        for (sd, share) in FIGURES_OFF_POINTS {
            if pick >= 0.0 {
                off_points = sd;
            }
            pick -= share;
        }
        let f = settings.scatter;
        let mut taken_for = |value: f64, step: f64| {
            let rounded = if f > 0.0 { (value / step).round() * step } else { value };
            rounded + f * draw.normal(0.0, off_points * step / 0.5)
        };
        let [joint, grip, wrap] = true_figures;
        // A wrap is a small figure: known to a quarter.
        Self { joint_adds: taken_for(joint, 0.5), grip_takes: taken_for(grip, 0.5), wrap_takes: taken_for(wrap, 0.25) }
    }
}

/// Stage numbers, for the names of readings.
pub(crate) mod stage {
    pub(crate) const CHECK: u64 = 1;
    pub const PARTS: u64 = 2;
    pub(crate) const CUT: u64 = 3;
    pub const DRY: u64 = 4;
    pub const TIP: u64 = 5;
    pub const GLUE: u64 = 6;
    pub(crate) const RECHECK: u64 = 7;
    pub const CURED: u64 = 8;
    pub const TAPE: u64 = 9;
    pub(crate) const GRIPPED: u64 = 10;
    pub const FINISH: u64 = 11;
}

/// When a stage of a club comes in the day.
#[must_use]
pub fn moment(settings: &Settings, stage: u64, slot: usize) -> Moment {
    let at_h = match stage {
        stage::CHECK => 0.0,
        stage::PARTS => 0.25,
        stage::CUT => 0.5,
        stage::DRY => 1.0,
        stage::TIP => 2.0,
        stage::GLUE => 2.75,
        stage::RECHECK => 4.9,
        stage::CURED => 5.0,
        stage::TAPE => 5.7,
        stage::GRIPPED => 6.0,
        _ => 7.5,
    };
    if settings.one_at_a_time {
        return Moment { hours: slot as f64 + at_h / 8.0, day: 0 };
    }
    let day = usize::from(settings.has(Trouble::Overnight) && stage >= stage::RECHECK);
    Moment { hours: at_h + 0.06 * slot as f64, day }
}

/// Parts as they come: the first head of the number, the first shafts and grips of the box.
#[must_use]
pub(crate) fn as_they_come(job: &SimulatedJob, slot: usize) -> Build {
    Build {
        head: format!("H{}-1", IRONS[slot].0),
        shaft: format!("S-{:02}", slot + 1),
        grip: format!("G-{:02}", slot + 1),
        tips_g: Vec::new(),
        tip_trim_mm: job.nominal.tip_trim_mm[slot],
        cut_mm: job.cut_mm(slot),
    }
}

/// The nearest that the tray can give: nothing, one weight, or two up to the cap.
#[must_use]
pub(crate) fn nearest_tips_g(wanted_g: f64) -> Vec<f64> {
    let single = TRAY_G.iter().map(|&g| vec![f64::from(g)]);
    let pairs = TRAY_G
        .iter()
        .enumerate()
        .flat_map(|(i, &a)| TRAY_G[i..].iter().map(move |&b| vec![f64::from(a), f64::from(b)]));
    std::iter::once(Vec::new())
        .chain(single)
        .chain(pairs)
        .filter(|tips| tips.iter().sum::<f64>() <= TIP_CAP_G + 1e-9)
        .min_by(|a, b| {
            let off = |tips: &Vec<f64>| (tips.iter().sum::<f64>() - wanted_g).abs();
            off(a).total_cmp(&off(b)).then(a.len().cmp(&b.len()))
        })
        .unwrap_or_default()
}

struct Hands<'a> {
    settings: &'a Settings,
    shop: &'a SimulatedShop,
    job: &'a SimulatedJob,
    tools: Instruments<'a>,
}

impl Hands<'_> {
    fn club(&self, slot: usize, build: &Build) -> TrueClub {
        self.job.put_together(self.shop, slot, build, Faults::default(), Knowledge::Everything)
    }

    fn swing_weight(&self, club: &TrueClub, on: &[Role], slot: usize, stage: u64, nth: u64) -> f64 {
        let name = Name { slot, stage, what: What::SwingWeight, nth };
        self.tools.swing_weight(club.swing_weight_points(on), moment(self.settings, stage, slot), name)
    }

    /// What the scale shows too much by the check weight, two readings, as the display gives it.
    fn zero(&self, stage: u64) -> f64 {
        let shown = |nth| {
            let name = Name { slot: 0, stage, what: What::CheckWeight, nth };
            self.tools.swing_weight(
                crate::CHECK_POINTS + self.shop.check_error_points,
                moment(self.settings, stage, 0),
                name,
            )
        };
        f64::midpoint(shown(0), shown(1)) - crate::CHECK_POINTS
    }

    fn goal_points(&self) -> f64 {
        self.job.target_points - self.job.reference_error_points
    }
}

/// A builder's set.
#[must_use]
pub fn by_hand(settings: &Settings, shop: &SimulatedShop, job: &SimulatedJob, skill: Skill) -> Tally {
    let hands = Hands { settings, shop, job, tools: Instruments { shop, job } };
    let figures = Figures::of(settings, shop, job);
    let mut tally = Tally::default();
    let corrects = skill >= Skill::Corrects;
    let zero_at = |stage| if skill == Skill::Checked { hands.zero(stage) } else { 0.0 };
    let zero = zero_at(stage::CHECK);
    let mut builds: Vec<Build> = (0..CLUBS).map(|slot| as_they_come(job, slot)).collect();
    let takes_points = figures.grip_takes + f64::from(job.full_wraps) * figures.wrap_takes;
    // A skilled hand carries two sums: what the joint added, and where the grip brought a club.
    let (mut joints, mut grips) = (Vec::new(), Vec::new());
    let mean = |of: &[f64]| if of.is_empty() { 0.0 } else { of.iter().sum::<f64>() / of.len() as f64 };
    let mut free: Vec<String> =
        job.parts.iter().filter(|p| p.kind == trade::model::PartKind::Grip).map(|p| p.code.clone()).collect();
    let mut dry = [0.0; CLUBS];
    let tip_g_a_point = if corrects { SKILLED_TIP_G_A_POINT } else { TIP_G_A_POINT };
    // Reads the club dry and chooses head and weight for it.
    let choose = |slot: usize, build: &mut Build, corrected: f64| {
        let shown = hands.swing_weight(&hands.club(slot, build), &DRY, slot, stage::DRY, 0) - zero;
        let heads = if corrects { HEADS_A_NUMBER } else { 1 };
        let first_g = job.piece(&build.head).weighed_g;
        let mut best: Option<(f64, f64, Build)> = None;
        for i in 1..=heads {
            let head = format!("H{}-{i}", IRONS[slot].0);
            let dry = shown + (job.piece(&head).weighed_g - first_g) / tip_g_a_point;
            let wanted = (job.target_points - (dry + figures.joint_adds - takes_points + corrected)) * tip_g_a_point;
            let tips_g = nearest_tips_g(wanted);
            let off_g = (tips_g.iter().sum::<f64>() - wanted).abs();
            if best.as_ref().is_none_or(|(least, ..)| off_g < least - 1e-9) {
                best = Some((off_g, dry, Build { head, tips_g, ..build.clone() }));
            }
        }
        best.map_or(shown, |(_, dry, chosen)| {
            *build = chosen;
            dry
        })
    };
    if !settings.one_at_a_time {
        for slot in 0..CLUBS {
            dry[slot] = choose(slot, &mut builds[slot], 0.0);
        }
    }
    let rezero = if settings.one_at_a_time { zero } else { zero_at(stage::RECHECK) };
    for slot in 0..CLUBS {
        if settings.one_at_a_time {
            let corrected = if corrects { mean(&joints) + mean(&grips) } else { 0.0 };
            dry[slot] = choose(slot, &mut builds[slot], corrected);
        }
        let tip_g: f64 = builds[slot].tips_g.iter().sum();
        let club = hands.club(slot, &builds[slot]);
        let cured = hands.swing_weight(&club, &CURED, slot, stage::CURED, 0) - rezero;
        joints.push(cured - (dry[slot] + figures.joint_adds + tip_g / tip_g_a_point));
        let mut forecast = cured - takes_points;
        if skill >= Skill::Grips {
            if corrects {
                forecast += mean(&grips);
            }
            let wanted_g = job.nominal.grip_g - (job.target_points - forecast) * GRIP_G_A_POINT;
            let best = (0..free.len()).min_by(|&a, &b| {
                let off = |i: usize| (job.piece(&free[i]).weighed_g - wanted_g).abs();
                off(a).total_cmp(&off(b))
            });
            if let Some(best) = best {
                builds[slot].grip = free.remove(best);
            }
        }
        let grip_g = job.piece(&builds[slot].grip).weighed_g;
        forecast -= (grip_g - job.nominal.grip_g) / GRIP_G_A_POINT;
        let club = hands.club(slot, &builds[slot]);
        let shown = hands.swing_weight(&club, &FINISHED, slot, stage::FINISH, 0) - rezero;
        // What the forecast lacks is added to what the clubs before have taught already.
        grips.push(if corrects { mean(&grips) + shown - forecast } else { shown - forecast });
        let finish = club.finish_points();
        tally.error.add(finish - forecast);
        tally.left.add(forecast - job.target_points);
        tally.finished(finish - hands.goal_points(), tip_g);
    }
    tally
}

/// What is reachable: true means of shop and day known, only single pieces and the noise of readings are not.
#[must_use]
pub fn ceiling(settings: &Settings, shop: &SimulatedShop, job: &SimulatedJob, cure_readings: u64) -> Tally {
    let hands = Hands { settings, shop, job, tools: Instruments { shop, job } };
    let mut tally = Tally::default();
    let goal = hands.goal_points();
    let guess = |slot: usize, build: &Build| job.put_together(shop, slot, build, Faults::default(), Knowledge::Means);
    let error_at = |slot, stage| hands.tools.swing_weight_error_points(moment(settings, stage, slot));
    // Points a piece's own scatter moves a bare club: head 0.03 g and 0.3 mm, cut 0.6 mm, shaft 1.5 mm; a joint 0.25 g.
    let s = &shop.scatter;
    let point_g_mm = 1260.0;
    let bare_variance = (s.cut_mm * 285.0 / point_g_mm).powi(2)
        + (s.head_offset_mm * 265.0 / point_g_mm).powi(2)
        + (s.shaft_centre_mm * 110.0 / point_g_mm).powi(2)
        + 0.02_f64.powi(2);
    let joint_variance = (s.joint_g * 0.44).powi(2) + (s.turnings_g * 0.42).powi(2) + 1e-6;
    let noise_variance = shop.noise_points.powi(2) + 0.01 / 12.0;

    let mut builds: Vec<Build> = (0..CLUBS).map(|slot| as_they_come(job, slot)).collect();
    let mut bare = Vec::new();
    let best_tip_g = |slot: usize, build: &Build, shift: f64| {
        let off = |g: i32| {
            let tried = Build { tips_g: nearest_tips_g(f64::from(g)), ..build.clone() };
            (guess(slot, &tried).finish_points() + shift - goal).abs()
        };
        let best = (0..=9).filter(|g| *g != 1).map(|g| (g, off(g))).min_by(|a, b| a.1.total_cmp(&b.1));
        best.unwrap_or((0, f64::INFINITY))
    };
    for (slot, build) in builds.iter_mut().enumerate() {
        // The head of the box that its weights bring nearest.
        let heads = (1..=HEADS_A_NUMBER).map(|i| Build { head: format!("H{}-{i}", IRONS[slot].0), ..build.clone() });
        let nearest = heads.min_by(|a, b| best_tip_g(slot, a, 0.0).1.total_cmp(&best_tip_g(slot, b, 0.0).1));
        *build = nearest.unwrap_or_else(|| build.clone());
        let shown =
            hands.swing_weight(&hands.club(slot, build), &DRY, slot, stage::DRY, 0) - error_at(slot, stage::DRY);
        let weight = bare_variance / (bare_variance + noise_variance);
        let shift = weight * (shown - guess(slot, build).swing_weight_points(&DRY));
        build.tips_g = nearest_tips_g(f64::from(best_tip_g(slot, build, shift).0));
        bare.push((shift, bare_variance * (1.0 - weight)));
    }
    let mut wanted = Vec::new();
    for (slot, build) in builds.iter().enumerate() {
        let club = hands.club(slot, build);
        let n = cure_readings as f64;
        let shown =
            (0..cure_readings).map(|nth| hands.swing_weight(&club, &CURED, slot, stage::CURED, nth)).sum::<f64>() / n
                - error_at(slot, stage::CURED);
        let (shift, variance) = bare[slot];
        let weight = (variance + joint_variance) / (variance + joint_variance + noise_variance / n);
        let shift = shift + weight * (shown - guess(slot, build).swing_weight_points(&CURED) - shift);
        wanted.push(shift);
    }
    let codes: Vec<&str> =
        job.parts.iter().filter(|p| p.kind == trade::model::PartKind::Grip).map(|p| p.code.as_str()).collect();
    let off = |slot: usize, grip: usize| {
        let tried = Build { grip: codes[grip].to_owned(), ..builds[slot].clone() };
        guess(slot, &tried).finish_points() + wanted[slot] - goal
    };
    let table: Vec<Vec<f64>> = (0..CLUBS).map(|slot| (0..codes.len()).map(|g| off(slot, g)).collect()).collect();
    let taken = least_squares_choice(&table);
    for slot in 0..CLUBS {
        let grip = taken[slot];
        builds[slot].grip = codes[grip].to_owned();
        let finish = hands.club(slot, &builds[slot]).finish_points();
        tally.error.add(finish - goal - table[slot][grip]);
        tally.left.add(table[slot][grip]);
        tally.finished(finish - goal, builds[slot].tips_g.iter().sum());
    }
    tally
}

/// One column a row, no column twice, with a small sum of squares: greedy, then exchanges while they help.
fn least_squares_choice(table: &[Vec<f64>]) -> Vec<usize> {
    let mut taken: Vec<usize> = Vec::new();
    for row in table {
        let best = (0..row.len()).filter(|g| !taken.contains(g)).min_by(|a, b| row[*a].abs().total_cmp(&row[*b].abs()));
        taken.extend(best);
    }
    let mut better = true;
    while better {
        better = false;
        for i in 0..taken.len() {
            for g in 0..table[i].len() {
                let now = table[i][taken[i]].powi(2);
                match taken.iter().position(|t| *t == g) {
                    None if table[i][g].powi(2) < now - 1e-12 => (taken[i], better) = (g, true),
                    Some(j) if j != i => {
                        let both = now + table[j][g].powi(2);
                        if table[i][g].powi(2) + table[j][taken[i]].powi(2) < both - 1e-12 {
                            taken.swap(i, j);
                            better = true;
                        }
                    }
                    _ => {}
                }
            }
        }
    }
    taken
}
