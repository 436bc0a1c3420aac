//! Measured margins against the limits of the Equipment Rules of golf.
//!
//! Source of the limits: The R&A and USGA, Equipment Rules, effective 2019, Part 2 (clauses as cited on each line), local
//! rule G-10, and Rule 4.1b(1) of the Rules of Golf. Only the governing bodies rule on a club: these are measured figures
//! beside published limits, and what was not measured is marked so.

use crate::grip::{GripModel, GripShape};
use crate::head::HeadModel;
use crate::kind::{ClubKind, LengthTo, closed_list};
use crate::sheet::SheetClub;
use crate::sole::Sole;
use fact::{Fact, Told};
use quantity::INCH_MM;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// Shortest length of a club (2.1c).
pub(crate) const LENGTH_MIN_MM: f64 = 18.0 * INCH_MM;
/// Longest length of a club that is not a putter (2.1c).
pub(crate) const LENGTH_MAX_MM: f64 = 48.0 * INCH_MM;
/// Longest length under local rule G-10, where it is in force, putters excluded.
pub(crate) const LENGTH_LOCAL_MM: f64 = 46.0 * INCH_MM;
/// Least angle of the shaft from the vertical, seen along the line of play (2.1d).
pub(crate) const SHAFT_LEAN_MIN_DEG: f64 = 10.0;
/// Shortest grip (2.3a).
pub(crate) const GRIP_LENGTH_MIN_MM: f64 = 7.0 * INCH_MM;
/// Largest grip across (2.3b).
pub(crate) const GRIP_WIDEST_MM: f64 = 1.75 * INCH_MM;
/// Most clubs that a player may carry (Rule 4.1b(1)).
pub const CLUBS_MAX: usize = 14;
/// Clause of a length under the local rule, which holds only where it is in force.
pub(crate) const CLAUSE_LOCAL: &str = "G-10";

closed_list! {
    /// What the rules limit.
    Limited {
        /// Length of the club.
        Length = "length";
        /// Angle of the shaft from the vertical, seen along the line of play.
        ShaftLean = "shaft_lean";
        /// Angle of the shaft from the vertical, seen from the side.
        ShaftAlong = "shaft_along";
        /// The shaft, straight from grip to neck.
        StraightShaft = "straight_shaft";
        /// Bending and twisting of the shaft.
        Bending = "bending";
        /// Where the shaft joins the head.
        Neck = "neck";
        /// Length of the grip.
        GripLength = "grip_length";
        /// Width of the grip.
        GripAcross = "grip_across";
        /// Outside shape of the grip.
        GripShape = "grip_shape";
        /// Size and inertia of a wood's head.
        WoodHead = "wood_head";
        /// Clubs that a player carries.
        Clubs = "clubs";
    }
}

fact::facts! {
    /// A limit of the rules.
    pub enum RuleLimit: "rules_limit" {
        /// Not shorter than this.
        LengthAtLeast {
            /// The limit, millimetres.
            at_mm: f64,
        },
        /// Not longer than this.
        LengthAtMost {
            /// The limit, millimetres.
            at_mm: f64,
        },
        /// No smaller angle than this.
        AngleAtLeast {
            /// The limit, degrees.
            at_deg: f64,
        },
        /// No more clubs than this.
        ClubsAtMost {
            /// The limit.
            n: usize,
        },
        /// How far the shaft may lean along the line of play.
        LeanAlong {
            /// Forward at most, degrees.
            forward_deg: f64,
            /// Back at most, degrees.
            back_deg: f64,
        },
        /// The shaft is straight down to this far above the sole.
        Straight {
            /// Above the sole, millimetres.
            above_sole_mm: f64,
        },
        /// The shaft bends and twists the same however it is turned.
        BendsAlike,
        /// The shaft joins the head at the heel.
        Neck {
            /// Longest neck, millimetres.
            most_mm: f64,
        },
        /// The grip is circular across.
        RoundGrip,
        /// The size of a wood's head.
        WoodHead {
            /// Heel to toe at most, millimetres; this is also more than face to back.
            heel_to_toe_mm: f64,
            /// Sole to crown at most, millimetres.
            height_mm: f64,
            /// Volume at most, cubic centimetres.
            volume_cc: f64,
            /// What is still allowed beyond it when it is measured, cubic centimetres.
            volume_play_cc: f64,
            /// Moment of inertia about the vertical axis at most, g·cm².
            inertia_g_cm2: f64,
            /// What is still allowed beyond it when it is measured, g·cm².
            inertia_play_g_cm2: f64,
        },
    }
}

fact::facts! {
    /// How a length was come by.
    pub enum LengthBasis: "length_basis" {
        /// By the 60° plane, from the head's own contact figures.
        Plane {
            /// Along the shaft axis, millimetres.
            axis_mm: f64,
        },
        /// By the 60° plane, from usual contact figures of such heads.
        PlaneAssumed {
            /// Along the shaft axis, millimetres.
            axis_mm: f64,
            /// What the assumed figures leave open, half width of a 95 % band, millimetres.
            open_mm: f64,
        },
        /// Along the shaft axis: a putter, or a club whose lie is not known.
        Axis,
    }
}

fact::facts! {
    /// How a club lies against a limit of the rules.
    pub enum RuleFinding: "rules" {
        /// A length inside its limit.
        LengthInside {
            /// What is limited.
            what: Limited,
            /// As measured, millimetres.
            measured_mm: f64,
            /// How far inside, millimetres.
            by_mm: f64,
            /// The limit, millimetres.
            limit_mm: f64,
        },
        /// A length beyond its limit.
        LengthBeyond {
            /// What is limited.
            what: Limited,
            /// As measured, millimetres.
            measured_mm: f64,
            /// How far beyond, millimetres.
            by_mm: f64,
            /// The limit, millimetres.
            limit_mm: f64,
        },
        /// A length exactly at its limit.
        LengthAt {
            /// What is limited.
            what: Limited,
            /// The limit, millimetres.
            limit_mm: f64,
        },
        /// An angle inside its limit.
        AngleInside {
            /// What is limited.
            what: Limited,
            /// As measured, degrees.
            measured_deg: f64,
            /// How far inside, degrees.
            by_deg: f64,
            /// The limit, degrees.
            limit_deg: f64,
        },
        /// An angle beyond its limit.
        AngleBeyond {
            /// What is limited.
            what: Limited,
            /// As measured, degrees.
            measured_deg: f64,
            /// How far beyond, degrees.
            by_deg: f64,
            /// The limit, degrees.
            limit_deg: f64,
        },
        /// An angle exactly at its limit.
        AngleAt {
            /// What is limited.
            what: Limited,
            /// The limit, degrees.
            limit_deg: f64,
        },
        /// How many clubs a player carries.
        Clubs {
            /// Clubs of the set.
            n: usize,
            /// Most that a player may carry in a round.
            limit: usize,
        },
        /// Not measured.
        NotMeasured {
            /// What is limited.
            what: Limited,
        },
        /// The grip's model is round; the grip was not measured.
        GripRound,
        /// The grip's model has a rib.
        GripRibbed,
        /// The grip's model has flat sides.
        GripFlatSided,
    }
}

/// What is known of one club, for the comparison. What is `None` was not measured.
///
/// The rules measure the length of woods and irons from a plane at 60° against the sole; what that adds to a length from
/// where the shaft axis meets the ground follows from lie and sole, and the margins hold it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct RuleFigures {
    /// What sort of club.
    pub club_kind: ClubKind,
    /// Length from where the shaft axis meets the ground to the outside of the cap.
    pub length_to_cap_mm: Option<f64>,
    /// Angle between shaft and ground at address, degrees.
    pub lie_deg: Option<f64>,
    /// How long the grip is, from the outside of its cap to its mouth.
    pub grip_length_mm: Option<f64>,
    /// Largest outside diameter of the grip.
    pub grip_widest_mm: Option<f64>,
    /// Whether the grip is round, has a rib or flat sides.
    pub grip_shape: Option<GripShape>,
    /// Where the sole rests; without it lengths are told along the shaft axis.
    pub sole: Option<Sole>,
}

/// A length as the rules measure it.
struct Measured {
    mm: f64,
    open_mm: f64,
    basis: LengthBasis,
}

impl RuleFigures {
    /// The length as the rules measure it: woods and irons by the 60° plane, putters along the axis; along the axis too
    /// where sole or lie are not known. None where the length is not.
    #[must_use]
    pub fn length_by_rules_mm(&self) -> Option<f64> {
        self.measured().map(|measured| measured.mm)
    }

    fn measured(&self) -> Option<Measured> {
        let axis_mm = self.length_to_cap_mm.filter(|mm| mm.is_finite())?;
        let known = self.sole.zip(self.lie_deg.filter(|deg| deg.is_finite()));
        let Some((sole, lie_deg)) = known.filter(|_| self.club_kind != ClubKind::Putter) else {
            return Some(Measured { mm: axis_mm, open_mm: 0.0, basis: LengthBasis::Axis });
        };
        let open_mm = sole.open_mm(lie_deg);
        let basis =
            if sole.assumed { LengthBasis::PlaneAssumed { axis_mm, open_mm } } else { LengthBasis::Plane { axis_mm } };
        Some(Measured { mm: axis_mm + sole.beyond_mm(lie_deg), open_mm, basis })
    }

    /// The figures that a sheet asks for; without a head model its sole is taken to be usual.
    #[must_use]
    pub fn of_sheet(club: &SheetClub, head: Option<&HeadModel>, grip: Option<&GripModel>) -> Self {
        let cap_mm = grip.map(|g| g.cap_mm);
        Self {
            club_kind: club.club_kind,
            length_to_cap_mm: match club.length_to {
                LengthTo::Cap => Some(club.length_mm),
                LengthTo::ShaftEnd => cap_mm.map(|cap_mm| club.length_mm + cap_mm),
            },
            lie_deg: Some(club.lie_deg),
            grip_length_mm: grip.map(|g| g.length_mm),
            grip_widest_mm: grip.and_then(|g| g.widest_mm),
            grip_shape: grip.map(|g| g.shape),
            sole: Some(head.map_or(Sole::usual(club.club_kind), Sole::of)),
        }
    }
}

/// One line: a clause, its limit, and how far the club is from it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Margin {
    /// Clause of the Equipment Rules (Part 2), of the Rules of Golf, or `CLAUSE_LOCAL`.
    pub clause: String,
    /// What is limited.
    pub what: Limited,
    /// What the clause sets: a least or greatest length, angle or number.
    pub limit: Told,
    /// Measured value in `unit`; none where it was not measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub measured: Option<f64>,
    /// How far inside the limit, in `unit`; negative beyond it; none where not measured or not a figure.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub margin: Option<f64>,
    /// Half width of the 95 % band of `measured`, in `unit`, where it rests on assumed figures of the head: a margin
    /// smaller than that is to be measured as the rules do.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub open: Option<f64>,
    /// How a club's length was come by; none for other figures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub basis: Option<Told>,
    /// Unit of `measured` and `margin`: `mm`, `°` or `clubs`; empty where there is none.
    pub unit: String,
    /// How the club lies against the limit.
    #[serde(flatten)]
    pub fact: Told,
}

impl Margin {
    /// Whether a measured figure lies beyond its limit.
    #[must_use]
    pub fn is_beyond(&self) -> bool {
        self.margin.is_some_and(|m| m < 0.0)
    }

    /// Whether a figure lies so near its limit that assumed figures of the head decide.
    #[must_use]
    pub fn is_near(&self) -> bool {
        self.margin.zip(self.open).is_some_and(|(margin, open)| margin.abs() < open)
    }

    /// Whether the limit holds only where a local rule is in force.
    #[must_use]
    pub fn is_local(&self) -> bool {
        self.clause == CLAUSE_LOCAL
    }
}

/// A limit on one side.
#[derive(Clone, Copy)]
enum Limit {
    AtLeast(f64),
    AtMost(f64),
}

impl Limit {
    const fn at(self) -> f64 {
        match self {
            Self::AtLeast(at) | Self::AtMost(at) => at,
        }
    }

    fn margin(self, value: f64) -> f64 {
        match self {
            Self::AtLeast(at) => value - at,
            Self::AtMost(at) => at - value,
        }
    }
}

/// Margins of one club, in the order of the clauses, and what was not measured.
///
/// # Examples
///
/// ```
/// use trade::kind::ClubKind;
/// use trade::rules::{RuleFigures, margins};
///
/// let iron = RuleFigures {
///     club_kind: ClubKind::Iron,
///     length_to_cap_mm: Some(38.0 * 25.4),
///     lie_deg: Some(62.0),
///     grip_length_mm: None,
///     grip_widest_mm: None,
///     grip_shape: None,
///     sole: None,
/// };
/// // Equipment Rules, Part 2, 2.1c: 18 to 48 in long.
/// let length: Vec<f64> = margins(&iron).iter().filter(|m| m.clause == "2.1c").filter_map(|m| m.margin).collect();
/// assert_eq!(length.len(), 2);
/// assert!((length[0] - 20.0 * 25.4).abs() < 1e-9 && (length[1] - 10.0 * 25.4).abs() < 1e-9);
/// ```
#[must_use]
pub fn margins(club: &RuleFigures) -> Vec<Margin> {
    let putter = club.club_kind == ClubKind::Putter;
    let by_rules = club.measured();
    let length = |clause, limit| {
        let line = length_line(clause, Limited::Length, by_rules.as_ref().map(|m| m.mm), limit);
        let open = by_rules.as_ref().map(|m| m.open_mm).filter(|mm| *mm > 0.0);
        Margin { open, basis: by_rules.as_ref().map(|m| m.basis.told()), ..line }
    };
    let mut lines = vec![length("2.1c", Limit::AtLeast(LENGTH_MIN_MM))];
    if !putter {
        lines.push(length("2.1c", Limit::AtMost(LENGTH_MAX_MM)));
        lines.push(length(CLAUSE_LOCAL, Limit::AtMost(LENGTH_LOCAL_MM)));
    }
    lines.push(lean_line(club.lie_deg.map(|lie_deg| 90.0 - lie_deg)));
    let along = RuleLimit::LeanAlong { forward_deg: 20.0, back_deg: 10.0 };
    lines.push(unmeasured("2.1d", Limited::ShaftAlong, &along));
    let straight = RuleLimit::Straight { above_sole_mm: 5.0 * INCH_MM };
    lines.push(unmeasured("2.2a", Limited::StraightShaft, &straight));
    lines.push(unmeasured("2.2b", Limited::Bending, &RuleLimit::BendsAlike));
    if !putter {
        lines.push(unmeasured("2.2c", Limited::Neck, &RuleLimit::Neck { most_mm: 5.0 * INCH_MM }));
    }
    let grip_length = Limit::AtLeast(GRIP_LENGTH_MIN_MM);
    lines.push(length_line("2.3a", Limited::GripLength, club.grip_length_mm, grip_length));
    lines.push(length_line("2.3b", Limited::GripAcross, club.grip_widest_mm, Limit::AtMost(GRIP_WIDEST_MM)));
    if !putter {
        lines.push(grip_shape(club.grip_shape));
    }
    if club.club_kind == ClubKind::Wood {
        let head = RuleLimit::WoodHead {
            heel_to_toe_mm: 5.0 * INCH_MM,
            height_mm: 2.8 * INCH_MM,
            volume_cc: 460.0,
            volume_play_cc: 10.0,
            inertia_g_cm2: 5900.0,
            inertia_play_g_cm2: 100.0,
        };
        lines.push(unmeasured("2.4b(i)", Limited::WoodHead, &head));
    }
    lines
}

/// The limit on the number of clubs, for a whole bag.
///
/// # Examples
///
/// ```
/// use trade::rules::clubs_margin;
///
/// // Rules of Golf, 4.1b(1): no more than 14 clubs.
/// assert_eq!(clubs_margin(13).margin, Some(1.0));
/// assert!(!clubs_margin(14).is_beyond() && clubs_margin(15).is_beyond());
/// ```
#[must_use]
pub fn clubs_margin(clubs: usize) -> Margin {
    let fact = RuleFinding::Clubs { n: clubs, limit: CLUBS_MAX };
    Margin {
        measured: Some(clubs as f64),
        margin: Some(CLUBS_MAX as f64 - clubs as f64),
        unit: "clubs".into(),
        fact: fact.told(),
        ..unmeasured("Rule 4.1b(1)", Limited::Clubs, &RuleLimit::ClubsAtMost { n: CLUBS_MAX })
    }
}

fn length_line(clause: &str, what: Limited, measured_mm: Option<f64>, limit: Limit) -> Margin {
    let limit_mm = limit.at();
    let shown = match limit {
        Limit::AtLeast(at_mm) => RuleLimit::LengthAtLeast { at_mm },
        Limit::AtMost(at_mm) => RuleLimit::LengthAtMost { at_mm },
    };
    let line = unmeasured(clause, what, &shown);
    let Some(measured_mm) = measured_mm.filter(|v| v.is_finite()) else { return line };
    let margin_mm = limit.margin(measured_mm);
    let by_mm = margin_mm.abs();
    let fact = if margin_mm == 0.0 {
        RuleFinding::LengthAt { what, limit_mm }
    } else if margin_mm < 0.0 {
        RuleFinding::LengthBeyond { what, measured_mm, by_mm, limit_mm }
    } else {
        RuleFinding::LengthInside { what, measured_mm, by_mm, limit_mm }
    };
    let (measured, margin) = (Some(measured_mm), Some(margin_mm));
    Margin { measured, margin, unit: "mm".into(), fact: fact.told(), ..line }
}

fn lean_line(measured_deg: Option<f64>) -> Margin {
    let (what, limit_deg) = (Limited::ShaftLean, SHAFT_LEAN_MIN_DEG);
    let line = unmeasured("2.1d", what, &RuleLimit::AngleAtLeast { at_deg: limit_deg });
    let Some(measured_deg) = measured_deg.filter(|v| v.is_finite()) else { return line };
    let margin_deg = Limit::AtLeast(limit_deg).margin(measured_deg);
    let by_deg = margin_deg.abs();
    let fact = if margin_deg == 0.0 {
        RuleFinding::AngleAt { what, limit_deg }
    } else if margin_deg < 0.0 {
        RuleFinding::AngleBeyond { what, measured_deg, by_deg, limit_deg }
    } else {
        RuleFinding::AngleInside { what, measured_deg, by_deg, limit_deg }
    };
    let (measured, margin) = (Some(measured_deg), Some(margin_deg));
    Margin { measured, margin, unit: "°".into(), fact: fact.told(), ..line }
}

fn unmeasured(clause: &str, what: Limited, limit: &RuleLimit) -> Margin {
    Margin {
        clause: clause.into(),
        what,
        limit: limit.told(),
        measured: None,
        margin: None,
        open: None,
        basis: None,
        unit: String::new(),
        fact: RuleFinding::NotMeasured { what }.told(),
    }
}

fn grip_shape(shape: Option<GripShape>) -> Margin {
    let line = unmeasured("2.3b", Limited::GripShape, &RuleLimit::RoundGrip);
    let fact = match shape {
        None => return line,
        Some(GripShape::Round) => RuleFinding::GripRound,
        Some(GripShape::Ribbed) => RuleFinding::GripRibbed,
        Some(GripShape::FlatSided) => RuleFinding::GripFlatSided,
    };
    Margin { fact: fact.told(), ..line }
}
