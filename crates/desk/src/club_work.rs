//! Work on clubs that are there: from what is asked and what a club is made of to what it is to become and what goes on it.
//!
//! What is new follows from the kind of job, which is data; all else stays as it came. Masses and places are those of the
//! plan, so that the belief, the bench and the record treat the club as any other (`bench::assembly`).

use clubphysics::trim::Shaft;
use serde::{Deserialize, Serialize};
use trade::action::Action;
use trade::club::Club;
use trade::error::{TradeError, within};
use trade::fit;
use trade::grip::GripSize;
use trade::id::ClubCode;
use trade::job::ClubWork;
use trade::job_kind::{Asked, JobKind};
use trade::kind::{Facing, LengthTo};
use trade::model::{Library, PartKind, as_it_came};
use trade::part::Part;
use trade::plan::{ClubPlan, Extra};
use trade::reading::What;
use trade::sheet::{SheetClub, Tolerances};
use trade::wrap::Wraps;
use utoipa::ToSchema;

/// Most that a shaft is lengthened by an extension, mm: 3 in, common practice, no source.
const MOST_EXTENSION_MM: f64 = 76.2;
/// How far an extension reaches into the shaft, mm (common practice, no source).
const EXTENSION_INSERT_MM: f64 = 50.0;
/// A length that differs by less was not meant to change, mm.
const SAME_LENGTH_MM: f64 = 0.3;

/// What is asked of one club that is there. What is left out stays as it came.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
pub struct AskedOfClub {
    /// Code of the club.
    #[schema(value_type = String, example = "C1")]
    pub club: String,
    /// Key of the kind of job: `regrip`.
    pub kind: String,
    /// Model code of the new grip.
    pub grip_model: Option<String>,
    /// Layers of tape under it; left out: one base layer.
    pub wraps: Option<Wraps>,
    /// How thick the grip is to be where the hands hold it; left out: as the grip is.
    pub grip_size: Option<GripSize>,
    /// Which way the label of the grip faces.
    pub grip_graphics: Option<Facing>,
    /// Model code of the new shaft.
    pub shaft_model: Option<String>,
    /// Model code of the new ferrule.
    pub ferrule_model: Option<String>,
    /// Code of the adhesive of the new joint; left out: the shop's.
    pub adhesive: Option<String>,
    /// Length of the finished club to the cap.
    #[schema(minimum = 400, maximum = 1350)]
    pub length_mm: Option<f64>,
    /// What the piece weighs that lengthens the shaft, with its adhesive.
    #[schema(minimum = 0, maximum = 60)]
    pub extension_mass_g: Option<f64>,
    /// Swing weight of the finished club, points since A0; left out: it keeps what it comes with.
    #[schema(minimum = -60, maximum = 160)]
    pub swing_weight_points: Option<f64>,
    /// Moment of inertia about the butt that the finished club is to have: its swing weight is then whatever gives it.
    #[schema(minimum = 500, maximum = 9000)]
    pub inertia_kg_cm2: Option<f64>,
    /// Loft of the finished club.
    #[schema(minimum = 0, maximum = 80)]
    pub loft_deg: Option<f64>,
    /// Lie of the finished club.
    #[schema(minimum = 40, maximum = 80)]
    pub lie_deg: Option<f64>,
}

impl AskedOfClub {
    /// Refuses figures that no club has.
    fn check(&self) -> Result<(), TradeError> {
        let figures = [
            ("length_mm", self.length_mm, 400.0, 1350.0, "mm"),
            ("extension_mass_g", self.extension_mass_g, 0.0, 60.0, "g"),
            ("swing_weight_points", self.swing_weight_points, -60.0, 160.0, "points"),
            ("inertia_kg_cm2", self.inertia_kg_cm2, 500.0, 9000.0, "kg·cm²"),
            ("loft_deg", self.loft_deg, 0.0, 80.0, "°"),
            ("lie_deg", self.lie_deg, 40.0, 80.0, "°"),
        ];
        for (name, value, low, high, unit) in figures {
            if let Some(value) = value {
                within(name, value, low, high, unit)?;
            }
        }
        self.grip_size.map_or(Ok(()), |size| size.check())
    }

    /// What it gives a figure or a model for.
    fn given(&self) -> Vec<Asked> {
        let given = [
            (Asked::GripModel, self.grip_model.is_some()),
            (Asked::Wraps, self.wraps.is_some()),
            (Asked::GripSize, self.grip_size.is_some()),
            (Asked::GripGraphics, self.grip_graphics.is_some()),
            (Asked::ShaftModel, self.shaft_model.is_some()),
            (Asked::FerruleModel, self.ferrule_model.is_some()),
            (Asked::Adhesive, self.adhesive.is_some()),
            (Asked::Length, self.length_mm.is_some()),
            (Asked::ExtensionMass, self.extension_mass_g.is_some()),
            (Asked::SwingWeight, self.swing_weight_points.is_some()),
            (Asked::SwingInertia, self.inertia_kg_cm2.is_some()),
            (Asked::Loft, self.loft_deg.is_some()),
            (Asked::Lie, self.lie_deg.is_some()),
        ];
        given.into_iter().filter(|(_, is)| *is).map(|(asked, _)| asked).collect()
    }
}

/// The work of a kind on a club: what it came as, and what was known of it.
#[must_use]
pub fn work_of(kind: &JobKind, club: &Club, asked: &AskedOfClub) -> ClubWork {
    ClubWork {
        club: club.code.clone(),
        kind: kind.key.clone(),
        keeps_swing_weight: asked.swing_weight_points.is_none() && asked.inertia_kg_cm2.is_none(),
        opens_joint: kind.opens_joint,
        extension_mass_g: asked.extension_mass_g,
        came: club.made.clone(),
        known: club.figures.clone(),
    }
}

/// What a club is to become: its row of the job's sheet.
///
/// # Errors
/// A figure that the kind does not ask; one that it needs and has not; a model that the library lacks; a length that the
/// club cannot get.
pub fn row_of(library: &Library, kind: &JobKind, club: &Club, asked: &AskedOfClub) -> Result<SheetClub, TradeError> {
    let refuse = |fault: ClubWorkFault| TradeError::refused(fault);
    asked.check()?;
    if let Some(asked) = asked.given().into_iter().find(|given| !kind.asks(*given)) {
        return Err(refuse(ClubWorkFault::NotAsked { kind: kind.key.clone(), asked }));
    }
    for (what, missing) in [
        (Asked::GripModel, kind.takes.contains(&PartKind::Grip) && asked.grip_model.is_none()),
        (Asked::ShaftModel, kind.takes.contains(&PartKind::Shaft) && asked.shaft_model.is_none()),
        (Asked::ExtensionMass, kind.asks(Asked::ExtensionMass) && asked.extension_mass_g.is_none()),
        (
            Asked::Length,
            kind.asks(Asked::Length) && !kind.takes.contains(&PartKind::Shaft) && asked.length_mm.is_none(),
        ),
    ] {
        if missing {
            return Err(refuse(ClubWorkFault::Needs { kind: kind.key.clone(), asked: what }));
        }
    }
    if kind.takes.is_empty() && kind.asks(Asked::Loft) && asked.loft_deg.is_none() && asked.lie_deg.is_none() {
        return Err(refuse(ClubWorkFault::Needs { kind: kind.key.clone(), asked: Asked::Loft }));
    }
    if asked.swing_weight_points.is_some() && asked.inertia_kg_cm2.is_some() {
        return Err(refuse(ClubWorkFault::WeightAndInertia { club: club.code.0.clone() }));
    }
    let unread = club.figure(What::SwingWeight).is_none() && !club.built_here();
    if kind.asks(Asked::SwingWeight) && asked.swing_weight_points.is_none() && !kind.reads_on_arrival() && unread {
        // Nothing will tell what it is to keep.
        return Err(refuse(ClubWorkFault::Needs { kind: kind.key.clone(), asked: Asked::SwingWeight }));
    }
    for what in &kind.needs {
        if club.figure(*what).is_none() && !club.built_here() {
            let fault = ClubWorkFault::Unread { kind: kind.key.clone(), what: *what, club: club.code.0.clone() };
            return Err(refuse(fault));
        }
    }
    let came = &club.made.row;
    let mut row = came.clone();
    if kind.takes.contains(&PartKind::Grip) {
        row.grip_model = asked.grip_model.clone().unwrap_or_default();
        row.wraps = asked.wraps.unwrap_or(Wraps { base: 1, full: 0, lower_hand: 0 });
        row.tape = None;
        row.grip_size = asked.grip_size;
        row.grip_graphics = asked.grip_graphics.or(row.grip_graphics);
    }
    if kind.takes.contains(&PartKind::Shaft) {
        row.shaft_model = asked.shaft_model.clone().unwrap_or_default();
        row.ferrule_model = asked.ferrule_model.clone();
        row.adhesive = asked.adhesive.clone();
        check_bore(library, club, &row)?;
    } else if kind.opens_joint && (asked.ferrule_model.is_some() || club.built_here()) {
        // Without a new ferrule the joint of a club from elsewhere stays one unknown piece, its ferrule in it.
        row.ferrule_model = asked.ferrule_model.clone().or(row.ferrule_model);
        row.adhesive = asked.adhesive.clone();
    }
    let pieces = &club.made.pieces;
    match asked.length_mm {
        Some(length_mm) => (row.length_mm, row.length_to) = (length_mm, LengthTo::Cap),
        // The shaft stays: so does its length to the butt, and the cap is that of the grip that it gets.
        None => {
            let to_shaft_end_mm = pieces.cut_shaft_mm + pieces.tip_to_ground_mm;
            let to_cap_mm = to_shaft_end_mm + library.grip(&row.grip_model)?.cap_mm;
            (row.length_mm, row.length_to) = (to_cap_mm, LengthTo::Cap);
        }
    }
    let read = |what| club.figure(what).map(|figure| figure.value);
    let weight_asked = asked.swing_weight_points.is_some() || asked.inertia_kg_cm2.is_some();
    row.swing_weight_free &= !weight_asked && read(What::SwingWeight).is_none();
    row.swing_weight_points =
        asked.swing_weight_points.or_else(|| read(What::SwingWeight)).unwrap_or(came.swing_weight_points);
    row.loft_deg = asked.loft_deg.or_else(|| read(What::Loft)).unwrap_or(came.loft_deg);
    row.lie_deg = asked.lie_deg.or_else(|| read(What::Lie)).unwrap_or(came.lie_deg);
    // What nobody asks for has no tolerance, and so no verdict.
    let tolerances = Tolerances::default();
    row.tolerances = Tolerances {
        loft_deg: if asked.loft_deg.is_some() { tolerances.loft_deg } else { 0.0 },
        lie_deg: if asked.lie_deg.is_some() { tolerances.lie_deg } else { 0.0 },
        ..tolerances
    };
    row.cpm = None;
    row.total_mass_g = None;
    row.inertia_kg_cm2 = asked.inertia_kg_cm2;
    check_lengths(library, kind, club, &row)?;
    Ok(row)
}

/// Refuses a shaft that the head cannot hold: its tip must go into the bore, or into that of the adapter. Nobody has
/// measured the bore of a head from elsewhere; there the usual bores of such heads must have one that takes the tip.
fn check_bore(library: &Library, club: &Club, row: &SheetClub) -> Result<(), TradeError> {
    let shaft = library.shaft(&row.shaft_model)?;
    let (code, tip_mm) = (club.code.0.clone(), shaft.tip_diameter_mm);
    if club.built_here() {
        let head = library.head(&row.head_model)?;
        let adapter = club.made.pieces.part(PartKind::Adapter);
        let adapter = adapter.map(|part| library.adapter(&part.model)).transpose()?;
        let bore_mm = adapter.map_or(head.bore_diameter_mm, |adapter| adapter.bore_diameter_mm);
        if !fit::tip_fits_bore(tip_mm, bore_mm) {
            let fault = ClubWorkFault::Bore { club: code, shaft: shaft.code.clone(), tip_mm, bore_mm };
            return Err(TradeError::refused(fault));
        }
        return Ok(());
    }
    let usual = as_it_came::usual_tips_mm(row.club_kind);
    let fits = |usual_mm: &f64| fit::tip_fits_bore(tip_mm, usual_mm + as_it_came::BORE_OVER_TIP_MM);
    if let (Some(least_mm), Some(most_mm)) = (usual.first(), usual.last())
        && !usual.iter().any(fits)
    {
        let (shaft, least_mm, most_mm) = (shaft.code.clone(), *least_mm, *most_mm);
        return Err(TradeError::refused(ClubWorkFault::UnusualTip { club: code, shaft, tip_mm, least_mm, most_mm }));
    }
    Ok(())
}

/// Refuses a grip that is longer than the shaft that stands out of the head, and a length that this kind cannot give.
fn check_lengths(library: &Library, kind: &JobKind, club: &Club, row: &SheetClub) -> Result<(), TradeError> {
    let (grip, head) = (library.grip(&row.grip_model)?, library.head(&row.head_model)?);
    let named = || club.code.0.clone();
    let ground_mm = row.length_to.to_cap_mm(row.length_mm, grip.cap_mm) - grip.cap_mm;
    let shaft_mm = ground_mm - club.made.pieces.tip_to_ground_mm;
    let free_mm = shaft_mm - head.bore_depth_mm;
    if kind.takes.contains(&PartKind::Grip) && grip.length_mm - grip.cap_mm > free_mm {
        let fault = ClubWorkFault::GripTooLong { club: named(), grip_mm: grip.length_mm, shaft_mm: free_mm };
        return Err(TradeError::refused(fault));
    }
    if kind.takes.contains(&PartKind::Shaft) || !kind.asks(Asked::Length) {
        return Ok(());
    }
    let (by_mm, asked_mm) = (shaft_mm - club.made.pieces.cut_shaft_mm, ground_mm + grip.cap_mm);
    let now_mm = asked_mm - by_mm;
    if kind.asks(Asked::ExtensionMass) {
        if by_mm < SAME_LENGTH_MM {
            return Err(TradeError::refused(ClubWorkFault::Shorter { club: named(), asked_mm, now_mm }));
        }
        if by_mm > MOST_EXTENSION_MM {
            let fault = ClubWorkFault::TooLong { club: named(), by_mm, most_mm: MOST_EXTENSION_MM };
            return Err(TradeError::refused(fault));
        }
    } else if by_mm > -SAME_LENGTH_MM {
        return Err(TradeError::refused(ClubWorkFault::Longer { club: named(), asked_mm, now_mm }));
    }
    Ok(())
}

/// The pieces of a club as it leaves: those that it keeps, those that go on it, and how its shaft is cut.
///
/// # Errors
/// A model that the library lacks; a cut that leaves no shaft.
pub fn pieces_of(
    library: &Library,
    work: &ClubWork,
    row: &SheetClub,
    picks: &[&Part],
    extension_mass_g: Option<f64>,
    at: jiff::Timestamp,
) -> Result<ClubPlan, TradeError> {
    let came = &work.came.pieces;
    let mut pieces = ClubPlan { expected: Vec::new(), reasons: Vec::new(), chance: 0.0, ..came.clone() };
    for kind in [PartKind::Shaft, PartKind::Grip, PartKind::Ferrule, PartKind::TipWeight] {
        let new: Vec<&&Part> = picks.iter().filter(|part| part.kind == kind).collect();
        if !new.is_empty() {
            pieces.parts.retain(|part| part.kind != kind);
        }
        for part in new {
            pieces.parts.push(crate::planner::planned(part, mass_of(library, part)?));
        }
    }
    let grip = library.grip(&row.grip_model)?;
    let cut_shaft_mm = row.length_to.to_cap_mm(row.length_mm, grip.cap_mm) - grip.cap_mm - pieces.tip_to_ground_mm;
    if let Some(part) = picks.iter().find(|part| part.kind == PartKind::Shaft) {
        return with_new_shaft(library, work, row, part, (pieces, cut_shaft_mm));
    }
    let by_mm = cut_shaft_mm - came.cut_shaft_mm;
    if by_mm < -SAME_LENGTH_MM {
        let shaft = Shaft {
            mass_g: came.cut_shaft_mass_g,
            length_mm: came.cut_shaft_mm,
            balance_point_mm: came.cut_shaft_balance_point_mm,
        };
        let cut = shaft.cut(0.0, -by_mm)?;
        (pieces.cut_shaft_mm, pieces.cut_shaft_mass_g) = (cut_shaft_mm, cut.mass_g);
        pieces.cut_shaft_balance_point_mm = cut.balance_point_mm;
        pieces.butt_cut_mm -= by_mm;
        // What was in the butt came off with it or moves toward the stop.
        pieces.extras.iter_mut().for_each(|extra| extra.arm_mm = (extra.arm_mm + by_mm).max(0.0));
    } else if by_mm > SAME_LENGTH_MM {
        pieces.cut_shaft_mm = cut_shaft_mm;
        pieces.cut_shaft_balance_point_mm += by_mm;
        pieces.extras.iter_mut().for_each(|extra| extra.arm_mm += by_mm);
        let whole_mm = by_mm + EXTENSION_INSERT_MM;
        let mass_g = extension_mass_g.unwrap_or(0.0);
        pieces.extras.push(Extra { action: Action::ButtExtension, mass_g, arm_mm: whole_mm / 2.0, at });
    }
    Ok(pieces)
}

/// The pieces with a new shaft: its tip is cut as its maker says, its butt to the length.
fn with_new_shaft(
    library: &Library,
    work: &ClubWork,
    row: &SheetClub,
    part: &Part,
    (mut pieces, cut_shaft_mm): (ClubPlan, f64),
) -> Result<ClubPlan, TradeError> {
    let model = library.shaft(&part.model)?;
    let raw = fit::raw_shaft(model, part, &row.number)?;
    let trimmed_mm = part.tip_trimmed_mm.unwrap_or(0.0);
    let Some(cut) = fit::cut(model, raw, trimmed_mm, &row.number, cut_shaft_mm)? else {
        let short_mm = (cut_shaft_mm + model.tip_trim_mm(&row.number) - trimmed_mm - raw.length_mm).max(0.0);
        let (club, part) = (work.club.0.clone(), part.code.clone());
        return Err(TradeError::refused(ClubWorkFault::ShaftTooShort { club, part, short_mm }));
    };
    (pieces.tip_trim_mm, pieces.butt_cut_mm) = (cut.tip_trim_mm, cut.butt_cut_mm);
    (pieces.cut_shaft_mm, pieces.cut_shaft_mass_g) = (cut_shaft_mm, cut.shaft.mass_g);
    pieces.cut_shaft_balance_point_mm = cut.shaft.balance_point_mm;
    // What was in the old tip or butt went with the old shaft.
    pieces.parts.retain(|part| part.kind != PartKind::TipWeight);
    pieces.extras.retain(|extra| matches!(extra.action, Action::LeadTape | Action::Screw));
    Ok(pieces)
}

/// The mass that a part counts with: its own, or its model's.
fn mass_of(library: &Library, part: &Part) -> Result<f64, TradeError> {
    if let Some(mass_g) = part.mass_g {
        return Ok(mass_g);
    }
    Ok(match part.kind {
        PartKind::Grip => library.grip(&part.model)?.mass_g,
        PartKind::Ferrule => library.ferrule(&part.model)?.mass_g,
        PartKind::TipWeight => library.tip_weight(&part.model)?.mass_g,
        _ => library.shaft(&part.model)?.blanks.first().map_or(0.0, |blank| blank.mass_g),
    })
}

/// The free part that brings a club nearest to its target: `off_points` is where it finishes with a part of the model's own
/// mass, `per_g` what a gram of it does. None where no part of the model is free.
#[must_use]
pub fn nearest<'a>(
    free: &[&'a Part],
    (model, nominal_g): (&str, f64),
    off_points: f64,
    per_g: f64,
) -> Option<&'a Part> {
    let off = |part: &Part| (off_points + per_g * (part.mass_g.unwrap_or(nominal_g) - nominal_g)).abs();
    let of_model = free.iter().copied().filter(|part| part.model.eq_ignore_ascii_case(model));
    of_model.min_by(|a, b| off(a).total_cmp(&off(b)).then_with(|| a.code.cmp(&b.code)))
}

/// Whether two codes name one club. Capitals do not matter.
#[must_use]
pub fn same_code(one: &ClubCode, other: &str) -> bool {
    one.as_str().eq_ignore_ascii_case(other.trim())
}

/// Whether a club came from elsewhere with a head that nobody knows the model of.
#[must_use]
pub fn is_from_elsewhere(row: &SheetClub) -> bool {
    as_it_came::is(&row.head_model)
}

fact::facts! {
    /// What is refused of work on a club.
    pub enum ClubWorkFault: "club_work_fault" {
        /// A figure that the kind does not ask for.
        NotAsked {
            /// Key of the kind.
            kind: String,
            /// What was given.
            asked: Asked,
        },
        /// A club gets the swing weight that its inertia gives it; it cannot be asked for another.
        WeightAndInertia {
            /// Code of the club.
            club: String,
        },
        /// A figure that the kind needs.
        Needs {
            /// Key of the kind.
            kind: String,
            /// What was not given.
            asked: Asked,
        },
        /// Something that the plan rests on and that was never read of the club.
        Unread {
            /// Key of the kind.
            kind: String,
            /// What is to be read.
            what: What,
            /// Code of the club.
            club: String,
        },
        /// The grip would reach down to the head.
        GripTooLong {
            /// Code of the club.
            club: String,
            /// How long the grip is.
            grip_mm: f64,
            /// How much shaft stands out of the head.
            shaft_mm: f64,
        },
        /// A cut was asked that would lengthen.
        Longer {
            /// Code of the club.
            club: String,
            /// The length asked, to the cap.
            asked_mm: f64,
            /// How long it is with that grip.
            now_mm: f64,
        },
        /// An extension was asked that would shorten.
        Shorter {
            /// Code of the club.
            club: String,
            /// The length asked, to the cap.
            asked_mm: f64,
            /// How long it is with that grip.
            now_mm: f64,
        },
        /// Too long an extension.
        TooLong {
            /// Code of the club.
            club: String,
            /// How much longer it would get.
            by_mm: f64,
            /// The most that is trusted.
            most_mm: f64,
        },
        /// A blank that does not reach.
        ShaftTooShort {
            /// Code of the club.
            club: String,
            /// Code of the shaft.
            part: String,
            /// How much is missing.
            short_mm: f64,
        },
        /// A tip that the bore does not take or hold.
        Bore {
            /// Code of the club.
            club: String,
            /// Code of the shaft's model.
            shaft: String,
            /// How thick its tip is.
            tip_mm: f64,
            /// How wide the bore is.
            bore_mm: f64,
        },
        /// A tip that no usual head of that sort takes or holds, where nobody has measured the bore.
        UnusualTip {
            /// Code of the club.
            club: String,
            /// Code of the shaft's model.
            shaft: String,
            /// How thick its tip is.
            tip_mm: f64,
            /// The thinnest tip that such heads are made for.
            least_mm: f64,
            /// The thickest.
            most_mm: f64,
        },
        /// Clubs of two customers in one job.
        TwoCustomers {
            /// Code of a club of the one.
            club: String,
            /// Code of a club of the other.
            other: String,
        },
        /// Nothing to put on.
        NoPart {
            /// Code of the club.
            club: String,
            /// What is missing.
            kind: PartKind,
            /// Code of its model.
            model: String,
        },
        /// It is being worked on.
        InJob {
            /// Code of the club.
            club: String,
            /// Number of that job.
            job: i64,
        },
        /// The same club twice in one job.
        Twice {
            /// Code of the club.
            club: String,
        },
        /// A job without clubs.
        NoClubs,
    }
}
