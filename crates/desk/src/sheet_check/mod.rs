//! What is wrong or doubtful in a sheet, before anything is planned.
//!
//! Nothing is repaired here: every finding names the club and the field, says by how much, and what to do next.

mod fit;
mod order;
mod stock;

pub use stock::{HeadWindow, head_window};

use fact::Refusal;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use quantity::{FULCRUM_IN, INCH_MM, POINT_G_IN, SwingWeight, decimal};
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::error::within;
use trade::grip::GripModel;
use trade::head::{HeadModel, HeadNumber};
use trade::kind::{LengthTo, closed_list};
use trade::model::Library;
use trade::part::{CPM_LEAST, CPM_MOST, Part};
use trade::rules::{self, RuleFigures};
use trade::scale::Scale;
use trade::shaft::ShaftModel;
use trade::sheet::{ReferenceClub, Sheet, SheetClub};
use trade::shop::Shop;
use utoipa::ToSchema;
use words::{Language, Words};

closed_list! {
    /// How much a finding weighs.
    Severity {
        /// The sheet cannot be built as it stands.
        Stop = "stop", "must be put right";
        /// It can be built, but something is probably wrong.
        Warn = "warn", "look at this";
        /// Worth knowing.
        Note = "note", "note";
    }
}

/// One finding.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct SheetProblem {
    /// How much it weighs.
    pub severity: Severity,
    /// Number of the club; none where it is about the sheet, `reference` findings carry the reference club's number.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub club: Option<String>,
    /// The field of the document, for example `clubs[2].lie_deg` or `reference.swing_weight_points`.
    pub field: String,
    /// What was found.
    pub words: String,
    /// What to do next.
    pub next: String,
    /// Clause of the Equipment Rules, where it is about one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub clause: Option<String>,
}

impl SheetProblem {
    fn new(severity: Severity, field: impl Into<String>, words: impl Into<String>, next: impl Into<String>) -> Self {
        Self { severity, club: None, field: field.into(), words: words.into(), next: next.into(), clause: None }
    }

    fn of(mut self, number: &str) -> Self {
        self.club = Some(number.to_owned());
        self
    }

    /// A refusal of the workshop's rules, beside the field it belongs to.
    fn refused(field: &str, error: &TradeError) -> Self {
        let (words, next) = told(&error.refusal());
        Self::new(Severity::Stop, field, words, next)
    }
}

/// A refusal in words: what is wrong, and what to do next.
fn told(refusal: &Refusal) -> (String, String) {
    let words = Words::of_documents(Language::english(), TimeZone::UTC);
    let next = words.next(refusal).unwrap_or_else(|| words.text("sheet-correct-it"));
    (words.told(refusal.fact()), next)
}

impl std::fmt::Display for SheetProblem {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}: ", self.field)?;
        if let Some(club) = &self.club {
            write!(f, "the {club}: ")?;
        }
        write!(f, "{}", self.words)?;
        if let Some(clause) = &self.clause {
            write!(f, " ({clause})")?;
        }
        write!(f, ". {}", self.next)
    }
}

/// A club of the sheet with the models it names, as far as there are any.
struct Named<'a> {
    pub index: usize,
    pub club: &'a SheetClub,
    pub head: Option<&'a HeadModel>,
    pub number: Option<&'a HeadNumber>,
    pub shaft: Option<&'a ShaftModel>,
    pub grip: Option<&'a GripModel>,
    /// Whether all its figures are possible; what reckons with them waits for that.
    pub sound: bool,
}

impl Named<'_> {
    fn field(&self, name: &str) -> String {
        format!("clubs[{}].{name}", self.index)
    }

    /// Length to the cap, where the cap is known.
    fn to_cap_mm(&self) -> Option<f64> {
        match self.club.length_to {
            LengthTo::Cap => Some(self.club.length_mm),
            LengthTo::ShaftEnd => self.grip.map(|g| self.club.length_mm + g.cap_mm),
        }
    }
}

/// Most clubs of a sheet. Fourteen are played (Rules of Golf, 4.1b); a shop may write two sets and spare clubs together.
const CLUBS_MAX: usize = 40;

/// Checks a sheet against the models, the free parts in stock and the shop. The order is that of the sheet: what is
/// about all of it first, then club by club.
///
/// Findings of [`Severity::Stop`] mean that the sheet cannot be built as it stands.
#[must_use]
pub fn check(sheet: &Sheet, library: &Library, stock: &[Part], shop: &Shop, today: Date) -> Vec<SheetProblem> {
    if sheet.clubs.len() > CLUBS_MAX {
        return vec![SheetProblem::new(
            Severity::Stop,
            "clubs",
            format!("{} clubs are more than one sheet holds", sheet.clubs.len()),
            format!("Write at most {CLUBS_MAX} on a sheet"),
        )];
    }
    let mut found = Vec::new();
    check_whole(sheet, today, &mut found);
    if let Some(reference) = &sheet.reference {
        check_reference(sheet, reference, library, shop, today, &mut found);
    }
    let clubs: Vec<Named<'_>> =
        sheet.clubs.iter().enumerate().map(|(index, club)| named(index, club, library, &mut found)).collect();
    order::check(sheet, &clubs, &mut found);
    for club in &clubs {
        fit::check(sheet, club, library, shop, stock, &mut found);
        check_rules(club, &mut found);
        check_tolerances(club, shop, &mut found);
        stock::check(club, library, stock, shop, &mut found);
    }
    let rank = |p: &SheetProblem| {
        sheet
            .clubs
            .iter()
            .enumerate()
            .position(|(i, _)| p.field.starts_with(&format!("clubs[{i}]")))
            .map_or(0, |i| i + 1)
    };
    found.sort_by_key(|p| (rank(p), p.severity));
    found
}

fn check_whole(sheet: &Sheet, today: Date, found: &mut Vec<SheetProblem>) {
    if sheet.player.trim().is_empty() {
        found.push(SheetProblem::new(Severity::Stop, "player", "no player is named", "Write the player's name"));
    }
    if sheet.clubs.is_empty() {
        found.push(SheetProblem::new(
            Severity::Stop,
            "clubs",
            "the sheet has no clubs",
            "Add at least one, for example by writing 5-PW",
        ));
    }
    if sheet.due < today {
        let days = (today - sheet.due).get_days();
        let days = if days == 1 { "a day".to_owned() } else { format!("{days} days") };
        found.push(SheetProblem::new(
            Severity::Note,
            "due",
            format!("it was due on {}, {days} ago", sheet.due),
            "Agree a new date, or leave it if the date is meant",
        ));
    }
    let margin = rules::clubs_margin(sheet.clubs.len());
    if margin.is_beyond() {
        found.push(SheetProblem {
            clause: Some(margin.clause),
            ..SheetProblem::new(
                Severity::Note,
                "clubs",
                format!("the sheet has {} clubs, and a player carries at most {}", sheet.clubs.len(), rules::CLUBS_MAX),
                "Nothing to do if some stay at home",
            )
        });
    }
}

/// Looks the models up and refuses impossible figures.
fn named<'a>(index: usize, club: &'a SheetClub, library: &'a Library, found: &mut Vec<SheetProblem>) -> Named<'a> {
    let field = |name: &str| format!("clubs[{index}].{name}");
    let before = found.len();
    let mut figure = |name: &str, value: f64, low: f64, high: f64, unit: &'static str| {
        if let Err(e) = within(name, value, low, high, unit) {
            found.push(SheetProblem::refused(&field(name), &e).of(&club.number));
        }
    };
    figure("length_mm", club.length_mm, 400.0, 1300.0, "mm");
    figure("swing_weight_points", club.swing_weight_points, -20.0, 90.0, "points");
    figure("loft_deg", club.loft_deg, 0.0, 80.0, "°");
    figure("lie_deg", club.lie_deg, 40.0, 80.0, "°");
    if let Some(cpm) = club.cpm {
        figure("cpm", cpm, CPM_LEAST, CPM_MOST, "cpm");
    }
    if let Some(mass_g) = club.total_mass_g {
        figure("total_mass_g", mass_g, 150.0, 1200.0, "g");
    }
    let t = club.tolerances;
    figure("tolerances.swing_weight_points", t.swing_weight_points, 0.001, 10.0, "points");
    figure("tolerances.length_mm", t.length_mm, 0.01, 30.0, "mm");
    figure("tolerances.loft_deg", t.loft_deg, 0.01, 5.0, "°");
    figure("tolerances.lie_deg", t.lie_deg, 0.01, 5.0, "°");
    figure("tolerances.cpm", t.cpm, 0.01, 30.0, "cpm");
    figure(
        "wraps",
        f64::from(club.wraps.base) + f64::from(club.wraps.full) + f64::from(club.wraps.lower_hand),
        0.0,
        20.0,
        "layers",
    );
    let sound = found.len() == before;

    let mut keep = |name: &str, e: &TradeError| found.push(SheetProblem::refused(&field(name), e).of(&club.number));
    let head = library.head(&club.head_model).inspect_err(|e| keep("head_model", e)).ok();
    let shaft = library.shaft(&club.shaft_model).inspect_err(|e| keep("shaft_model", e)).ok();
    let grip = library.grip(&club.grip_model).inspect_err(|e| keep("grip_model", e)).ok();
    if let Some(code) = &club.ferrule_model {
        let _ = library.ferrule(code).inspect_err(|e| keep("ferrule_model", e));
    }
    if let Some(code) = &club.adhesive {
        let _ = library.adhesive(code).inspect_err(|e| keep("adhesive", e));
    }
    if let Some(code) = &club.tape {
        let _ = library.tape(code).inspect_err(|e| keep("tape", e));
    }
    let number = head.and_then(|h| h.number(&club.number));
    if let Some(head) = head
        && number.is_none()
    {
        let known = head.numbers.iter().map(|n| n.number.as_str()).collect::<Vec<_>>().join(", ");
        found.push(
            SheetProblem::new(
                Severity::Stop,
                field("number"),
                format!("{} has no number {}", head.name, club.number),
                format!("Choose one of {known}, or another head model"),
            )
            .of(&club.number),
        );
    }
    Named { index, club, head, number, shaft, grip, sound }
}

/// Limits of the Equipment Rules that the sheet's own figures lie beyond. The optional local rule is a note.
fn check_rules(club: &Named<'_>, found: &mut Vec<SheetProblem>) {
    if !club.sound {
        return;
    }
    let figures = RuleFigures::of_sheet(club.club, club.grip);
    let beyond = rules::margins(&figures).into_iter().filter(rules::Margin::is_beyond).collect::<Vec<_>>();
    let too_long = beyond.iter().filter(|m| m.what == "length").count() > 1;
    for margin in beyond {
        let local = margin.clause.starts_with("local");
        if local && too_long {
            continue;
        }
        let name = match margin.what.as_str() {
            "length" => "length_mm",
            "shaft from the vertical" => "lie_deg",
            _ => "grip_model",
        };
        let severity = if local { Severity::Note } else { Severity::Warn };
        found.push(
            SheetProblem {
                clause: Some(margin.clause),
                ..SheetProblem::new(
                    severity,
                    club.field(name),
                    margin.words,
                    "Change it, or tell the player that the club is beyond a limit of the Equipment Rules",
                )
            }
            .of(&club.club.number),
        );
    }
}

fn check_tolerances(club: &Named<'_>, shop: &Shop, found: &mut Vec<SheetProblem>) {
    let points = club.club.tolerances.swing_weight_points;
    if !club.sound {
        return;
    }
    let scale = &shop.balance_scale;
    let floor = 2.0 * scale.noise_sd.hypot(scale.display_step / 12f64.sqrt());
    if points < floor {
        found.push(
            SheetProblem::new(
                Severity::Warn,
                club.field("tolerances.swing_weight_points"),
                format!(
                    "±{} points is finer than the {} can tell (one reading is known to ±{})",
                    decimal(points, 2),
                    scale.name,
                    decimal(floor, 2)
                ),
                "Allow more, usually ±0.3",
            )
            .of(&club.club.number),
        );
    } else if points > 2.0 {
        found.push(
            SheetProblem::new(
                Severity::Warn,
                club.field("tolerances.swing_weight_points"),
                format!("±{} points is more than any player overlooks", decimal(points, 1)),
                "Give less, usually ±0.3, if it was a slip",
            )
            .of(&club.club.number),
        );
    }
}

/// The reference club's readings: possible, complete, and at one with each other.
fn check_reference(
    sheet: &Sheet,
    r: &ReferenceClub,
    library: &Library,
    shop: &Shop,
    today: Date,
    found: &mut Vec<SheetProblem>,
) {
    let before = found.len();
    let mut push = |severity, name: &str, words: String, next: &str| {
        found.push(SheetProblem::new(severity, format!("reference.{name}"), words, next).of(&r.number));
    };
    let figures = [
        ("length_mm", r.length_mm, 400.0, 1300.0, "mm"),
        ("swing_weight_points", r.swing_weight_points, -20.0, 90.0, "points"),
        ("total_mass_g", r.total_mass_g, 200.0, 1000.0, "g"),
        ("balance_point_mm", r.balance_point_mm, 300.0, 1200.0, "mm"),
        ("loft_deg", r.loft_deg, 0.0, 80.0, "°"),
        ("lie_deg", r.lie_deg, 40.0, 80.0, "°"),
        ("cpm", r.cpm, CPM_LEAST, CPM_MOST, "cpm"),
        ("clamp_mm", r.clamp_mm, 20.0, 300.0, "mm"),
        ("cap_mm", r.cap_mm, 0.5, 15.0, "mm"),
        ("coupler_g", r.coupler_g, 0.1, 40.0, "g"),
    ];
    for (name, value, low, high, unit) in figures {
        if let Some(Err(e)) = value.map(|v| within(name, v, low, high, unit)) {
            push(Severity::Stop, name, told(&e.refusal()).0, "Correct the reading and its unit, or leave it out");
        }
    }
    if r.length_mm.is_some() && r.length_to.is_none() {
        push(
            Severity::Warn,
            "length_to",
            "its length does not say whether it ends at the cap or at the shaft's end, 2.5 to 3.5 mm apart".into(),
            "Say which",
        );
    }
    if r.swing_weight_points.is_some() && r.scale.trim().is_empty() {
        push(
            Severity::Note,
            "scale",
            "its swing weight does not say which scale read it; two scales can differ by more than the tolerance"
                .into(),
            "Name the scale, and read the club again on your own when it is here",
        );
    }
    if r.cpm.is_some() && r.clamp_mm.is_none() {
        push(Severity::Note, "clamp_mm", "its cpm does not say how much was clamped".into(), "Give the clamped length");
    }
    if r.read_on.is_some_and(|day| day > today) {
        push(Severity::Warn, "read_on", "it was read on a day that is still to come".into(), "Correct the date");
    }
    if let Some(grip) = r.grip_model.as_ref().filter(|g| library.grip(g).is_err()) {
        push(
            Severity::Warn,
            "grip_model",
            format!("its grip model “{grip}” is not known"),
            "Add the model, or give its cap's thickness and leave the model out",
        );
    }
    if let Some(coupler_g) = r.coupler_g {
        push(
            Severity::Note,
            "coupler_g",
            format!(
                "its reading includes a coupler of {} g, which the built club does not have",
                decimal(coupler_g, 1)
            ),
            "The target stays what the player felt; the built head carries that mass instead",
        );
    }
    let known = sheet
        .clubs
        .iter()
        .find(|c| crate::short_sheet::canonical(&c.number) == crate::short_sheet::canonical(r.number.trim()));
    if let (Some(club), Some(read)) = (known, r.swing_weight_points)
        && (club.swing_weight_points - read).abs() > club.tolerances.swing_weight_points
        && club.swing_weight_points.is_finite()
        && read.is_finite()
    {
        push(
            Severity::Note,
            "swing_weight_points",
            format!(
                "it read {}, and the sheet asks {} of the same number",
                SwingWeight::from_points(read).letter_short(),
                SwingWeight::from_points(club.swing_weight_points).letter_short()
            ),
            "Nothing to do if the fitting meant that",
        );
    }
    if found.len() == before || found[before..].iter().all(|p| p.severity != Severity::Stop) {
        found.extend(contradiction(r, library, shop).map(|p| p.of(&r.number)));
        found.extend(balance_point_beyond_club(r).map(|p| p.of(&r.number)));
    }
}

fn balance_point_beyond_club(r: &ReferenceClub) -> Option<SheetProblem> {
    let (at_mm, length_mm) = (r.balance_point_mm?, r.length_mm?);
    let share = at_mm / length_mm;
    // A club balances at 0.72 to 0.82 of its length from the butt. Derived from the fixtures of irons and drivers, wide.
    if (0.6..0.92).contains(&share) {
        return None;
    }
    Some(SheetProblem::new(
        Severity::Warn,
        "reference.balance_point_mm",
        format!(
            "it balances {} mm from the cap on a length of {} mm; clubs balance at about three quarters of their length",
            decimal(at_mm, 0),
            decimal(length_mm, 0)
        ),
        "Measure from the cap's outside to the edge it balances on, both in the same unit",
    ))
}

/// What the fitting's readings of mass, balance point and swing weight are worth where nothing better is said: standard
/// deviations in g, mm and points. Common practice, no source.
const MASS_SD_G: f64 = 0.3;
const BALANCE_POINT_SD_MM: f64 = 1.0;
const OTHER_SCALE_SD_POINTS: f64 = 0.3;

/// Mass × balance point against swing weight: `points = W·(x − 14 in)/49.61 g·in − 92`, x from the cap, where the club sits
/// on the stop. The uncertainty is that of first order in all three.
fn contradiction(r: &ReferenceClub, library: &Library, shop: &Shop) -> Option<SheetProblem> {
    const A0_POINTS: f64 = 92.0;
    let (mass_g, at_mm, read) = (r.total_mass_g?, r.balance_point_mm?, r.swing_weight_points?);
    let points = |at_mm: f64| mass_g * (at_mm / INCH_MM - FULCRUM_IN) / POINT_G_IN - A0_POINTS;
    let reckoned = points(at_mm);
    let of_mass = (at_mm / INCH_MM - FULCRUM_IN) / POINT_G_IN * MASS_SD_G;
    let of_point = mass_g / INCH_MM / POINT_G_IN * BALANCE_POINT_SD_MM;
    let of_scale = scale_sd(&r.scale, &shop.balance_scale);
    let sd = of_mass.hypot(of_point).hypot(of_scale);
    let apart = reckoned - read;
    let ratio = apart.abs() / sd;
    if ratio <= 2.0 {
        return None;
    }
    let letter = |p: f64| SwingWeight::from_points(p).letter(1);
    let mut words = format!(
        "{} g balancing {} mm from the cap makes {}, but {} was read: {} points apart, where the readings explain ±{} \
         (mass ±{}, balance point ±{}, scale ±{})",
        decimal(mass_g, 1),
        decimal(at_mm, 1),
        letter(reckoned),
        letter(read),
        decimal(apart.abs(), 1),
        decimal(2.0 * sd, 1),
        decimal(2.0 * of_mass, 2),
        decimal(2.0 * of_point, 2),
        decimal(2.0 * of_scale, 2),
    );
    let cap_mm =
        r.cap_mm.or_else(|| r.grip_model.as_ref().and_then(|g| library.grip(g).ok()).map(|g| g.cap_mm)).unwrap_or(3.0);
    let without_cap = (points(at_mm + cap_mm) - read).abs();
    let next = if without_cap < sd {
        format!(
            "They agree if the balance point was measured from the shaft's end, {} mm inside the cap: measure from the \
             outside of the cap",
            decimal(cap_mm, 1)
        )
    } else {
        "Read all three again, or leave out the one that is not trusted".to_owned()
    };
    let severity = if ratio > 5.0 { Severity::Stop } else { Severity::Warn };
    if severity == Severity::Stop {
        words.push_str("; these are not readings of one club");
    }
    Some(SheetProblem::new(severity, "reference.swing_weight_points", words, next))
}

/// What the reading of a swing weight is worth: the shop's own scale by its figures, any other by common practice.
fn scale_sd(name: &str, own: &Scale) -> f64 {
    let display = own.display_step / 12f64.sqrt();
    if name.trim().eq_ignore_ascii_case(&own.key) || name.trim().eq_ignore_ascii_case(&own.name) {
        own.noise_sd.hypot(own.offset_sd).hypot(display)
    } else {
        OTHER_SCALE_SD_POINTS.hypot(display)
    }
}
