//! Goal: what a builder says of his shop counts as a reading at a middle iron, by how sure he is, and can be withdrawn.
//! Method: the moments of a joint, a wrap and a grip about the fulcrum are written out here for a 7-iron of 37 in, and the
//! mean and the spread that a reading leaves of a Gaussian by its textbook formula.

use crate::set::Set;
use bench::learned::Learned;
use bench::told::{Sureness, ToldFigure, ToldOf};
use trade::model::PartKind;
use trade::reading::What;

/// g·in in one point.
const POINT: f64 = 49.6117;

fn told(of: ToldOf, model: &str, change_points: f64, sure: Sureness) -> ToldFigure {
    ToldFigure { of, model: model.into(), change_points, sure, by: "Ines".into(), at: crate::set::time(0) }
}

/// Mean and standard deviation of a shared deviation before anything is read at the bench.
fn marginal(set: &Set, key: &str) -> (f64, f64) {
    let assembly = set.assembly();
    let belief = assembly.job_model().unwrap().solve(&assembly.known_before()).unwrap();
    let found = belief.marginal(key).unwrap();
    (found.mean, found.sd)
}

/// What a reading `y = constant + gain·x` of spread `sd` leaves of x that was 0 ± `prior`.
fn conditioned(prior: f64, gain: f64, y_less_constant: f64, sd: f64) -> (f64, f64) {
    let weight = gain * prior * prior / (gain * gain * prior * prior + sd * sd);
    (weight * y_less_constant, prior * (1.0 - weight * gain).sqrt())
}

fn near(found: (f64, f64), expected: (f64, f64)) {
    assert!((found.0 - expected.0).abs() < 1e-4 && (found.1 - expected.1).abs() < 1e-4, "{found:?} for {expected:?}");
}

#[test]
fn a_joint_and_a_wrap_are_read_at_a_middle_iron() {
    let set = Set::planned();
    let adhesive = set.library.adhesive(set.shop.adhesive.as_ref().unwrap()).unwrap().clone();
    let tape = set.library.tape(set.shop.tape.as_ref().unwrap()).unwrap().clone();
    for (sure, sd) in [(Sureness::Sure, 0.2), (Sureness::Figure, 0.3), (Sureness::About, 0.45)] {
        let mut said = Set::planned();
        said.learned.tell(told(ToldOf::Joint, &adhesive.code, 1.2, sure));
        // [m(L − 15.2) − turnings(L − 16.8)]/49.61; turnings of 0.3 ± 0.15 g.
        let by_model = (adhesive.joint_mass_g * (37.0 - 15.2) - 0.3 * (37.0 - 16.8)) / POINT;
        let spread = f64::hypot(sd, 0.15 * (37.0 - 16.8) / POINT);
        let expected = conditioned(adhesive.joint_mass_sd_g, (37.0 - 15.2) / POINT, 1.2 - by_model, spread);
        near(marginal(&said, &format!("adhesive:{}", adhesive.code)), expected);
        let mut said = Set::planned();
        said.learned.tell(told(ToldOf::Wrap, &tape.code, -0.4, sure));
        // 8.8·m/49.61 of a strip of 251 mm once round a butt of 15.24 mm.
        let strip_g = 251.0 * std::f64::consts::PI * 15.24 * tape.mass_per_area_g_per_m2 / 1e6;
        let by_model = -8.8 * strip_g / POINT;
        near(marginal(&said, &format!("tape:{}", tape.code)), conditioned(0.2, by_model, -0.4 - by_model, sd));
    }
}

#[test]
fn a_grip_is_read_by_its_centre_and_its_cap_together() {
    let mut said = Set::planned();
    let grip = said.library.grip("OLIVINE").unwrap().clone();
    // [m(14 − x) − 390·cap]/49.61 is taken off.
    let by_model = -(grip.mass_g * (14.0 - grip.centre_mm / 25.4) - 390.0 * grip.cap_mm / 25.4) / POINT;
    said.learned.tell(told(ToldOf::Grip, "OLIVINE", by_model + 0.5, Sureness::Figure));
    let (centre, cap) = (4.3 / 25.4, 0.64 / 25.4);
    let (of_centre, of_cap) = (grip.mass_g / POINT, 390.0 / POINT);
    // The reading's deviation is shared out by how much of its variance each has.
    let total = (of_centre * centre).powi(2) + (of_cap * cap).powi(2) + 0.3f64.powi(2);
    let share = |gain: f64, sd: f64| (gain * sd * sd / total * 0.5, sd * (1.0 - gain * gain * sd * sd / total).sqrt());
    near(marginal(&said, "grip_centre:OLIVINE"), share(of_centre, centre));
    near(marginal(&said, "cap:OLIVINE"), share(of_cap, cap));
}

#[test]
fn a_ferrule_of_a_bag_may_weigh_something_else_once_a_builder_says_so() {
    let mut said = Set::planned();
    let code = said.library.of_kind(PartKind::Ferrule).next().unwrap().code().to_owned();
    let ferrule = said.library.ferrule(&code).unwrap().clone();
    let by_model = ferrule.mass_g * (37.0 - 16.8) / POINT;
    said.learned.tell(told(ToldOf::Ferrule, &code, by_model + 0.3, Sureness::Sure));
    near(marginal(&said, &format!("ferrule:{code}")), conditioned(0.15, (37.0 - 16.8) / POINT, 0.3, 0.2));
}

#[test]
fn what_is_withdrawn_was_never_said() {
    let silent = Set::planned();
    let mut said = Set::planned();
    let adhesive = said.shop.adhesive.clone().unwrap();
    said.learned.tell(told(ToldOf::Joint, &adhesive, 1.15, Sureness::Sure));
    let (before, with) = (silent.state(1).finish.unwrap(), said.state(1).finish.unwrap());
    assert!(with.swing_weight_points > before.swing_weight_points + 0.1, "{with:?} {before:?}");
    assert!(with.own_band_points < before.own_band_points);
    // Said again, the later figure counts and not both.
    said.learned.tell(told(ToldOf::Joint, &adhesive, 1.5, Sureness::About));
    assert_eq!(said.learned.told.len(), 1);
    assert!(said.learned.withdraw(ToldOf::Grip, "OLIVINE").is_err(), "nobody said anything of a grip");
    said.learned.withdraw(ToldOf::Joint, &adhesive).unwrap();
    assert_eq!(said.learned, Learned::default());
    assert_eq!(said.state(1).finish.unwrap(), before);
}

/// What is carried to the next job is what the clubs taught: a figure that was said counts in each job anew, and once.
#[test]
fn the_shop_learns_from_its_clubs_alone() {
    let learned = |say: bool| {
        let mut set = Set::planned();
        let adhesive = set.shop.adhesive.clone().unwrap();
        for slot in 1..=4 {
            set.read_off(slot, "dry", 0.1, slot);
            set.read(slot, "glue", What::Done, 0.0, 10);
            set.read_off(slot, "cured", 0.2, 600 + slot);
        }
        if say {
            set.learned.tell(told(ToldOf::Joint, &adhesive, 1.1, Sureness::Sure));
        }
        set.learned.after(&set.assembly().believe(&set.readings).unwrap()).unwrap()
    };
    let (silent, said) = (learned(false), learned(true));
    assert_eq!(said.told.len(), 1);
    assert!(!silent.values.is_empty());
    assert_eq!(said.without_told(), silent);
}

/// A shop whose joints take twice the adhesive: the trade's figure does not outvote the builder who knows it.
#[test]
fn a_builder_is_believed_before_his_clubs_have_shown_anything() {
    let mut set = Set::planned();
    let adhesive = set.library.adhesive(set.shop.adhesive.as_ref().unwrap()).unwrap().clone();
    let twice = (2.0 * adhesive.joint_mass_g * (37.0 - 15.2) - 0.3 * (37.0 - 16.8)) / POINT;
    set.learned.tell(told(ToldOf::Joint, &adhesive.code, twice, Sureness::Sure));
    for slot in 1..=4 {
        set.read_off(slot, "dry", 0.0, slot);
    }
    let believed = set.assembly().believe(&set.readings).unwrap();
    let (mass_g, _) = believed.piece(&set.club(1), trade::kind::Role::Adhesive).unwrap().unwrap();
    assert!(mass_g > 1.3 * adhesive.joint_mass_g, "{mass_g}");
}

/// Many clubs that speak against a figure win: it is doubted, and no club is.
#[test]
fn clubs_that_speak_against_a_figure_are_believed() {
    let mut set = Set::planned();
    let adhesive = set.shop.adhesive.clone().unwrap();
    for slot in 1..=4 {
        set.read_off(slot, "dry", 0.0, slot);
        set.read(slot, "glue", What::Done, 0.0, 10);
        set.read_off(slot, "cured", 0.0, 600 + slot);
    }
    let silent = set.state(1).finish.unwrap();
    set.learned.tell(told(ToldOf::Joint, &adhesive, 3.0, Sureness::Sure));
    let believed = set.assembly().believe(&set.readings).unwrap();
    assert!(set.readings.iter().all(|r| !believed.is_doubted(&r.id)));
    // With a reading set aside every combination of usual and unusual means is solved by itself; without, some are derived
    // from others to a thousandth of a point.
    let advice = bench::work_order::set_advice(&believed, &set.spares(), &[]).unwrap().unwrap();
    assert_eq!(advice.told_aside.len(), 1, "and it is said that the figure is not used");
    let now = set.state(1).finish.unwrap().swing_weight_points;
    assert!((now - silent.swing_weight_points).abs() < 2e-3, "{now} {}", silent.swing_weight_points);
}

#[test]
fn an_impossible_figure_is_asked_back() {
    let library = Set::open().library;
    let adhesive = library.of_kind(PartKind::Adhesive).next().unwrap().code().to_owned();
    let words = words::Words::english(quantity::Units::default());
    let refused = |of, model: &str, on, off| {
        let fault = ToldFigure::checked(of, model.into(), on, off, &library).expect_err("refused");
        words.refusal(&fault.refusal())
    };
    assert_eq!(ToldFigure::checked(ToldOf::Joint, adhesive.clone(), Some(0.75), None, &library), Ok(0.75));
    assert_eq!(ToldFigure::checked(ToldOf::Grip, "OLIVINE".into(), None, Some(9.5), &library), Ok(-9.5));
    // As a signed figure it says the same.
    assert_eq!(ToldFigure::checked(ToldOf::Grip, "OLIVINE".into(), Some(-9.5), None, &library), Ok(-9.5));
    for (says, of, model, on, off) in [
        ("puts on", ToldOf::Joint, adhesive.as_str(), None, Some(0.75)),
        ("takes off", ToldOf::Grip, "OLIVINE", Some(9.5), None),
        ("between", ToldOf::Joint, adhesive.as_str(), Some(30.0), None),
        ("between", ToldOf::Joint, adhesive.as_str(), Some(0.0), None),
        ("between", ToldOf::Joint, adhesive.as_str(), Some(f64::NAN), None),
        ("one figure", ToldOf::Joint, adhesive.as_str(), None, None),
        ("one figure", ToldOf::Joint, adhesive.as_str(), Some(0.7), Some(0.7)),
        ("NOBODY", ToldOf::Joint, "NOBODY", Some(0.75), None),
    ] {
        let words = refused(of, model, on, off);
        assert!(words.contains(says), "{words}");
    }
}
