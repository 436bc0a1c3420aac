//! What fits what, and how a shaft is cut for a club.

use crate::error::TradeError;
use crate::error::{FindIt, NotFound};
use crate::grip::GripModel;
use crate::head::{HeadModel, HeadNumber};
use crate::kind::LengthTo;
use crate::model::{Library, PartKind};
use crate::part::Part;
use crate::shaft::{ShaftModel, TipShape};
use crate::sheet::SheetClub;
use clubphysics::trim::{Convention, FinishedLength, Shaft};

/// How much wider than the tip a bore may be and still hold it on a bond line of 0.1 to 0.2 mm; above it a shim or a
/// coarser filler is needed (common practice, no source).
pub(crate) const BORE_PLAY_MAX_MM: f64 = 0.5;

/// Whether a shaft's tip goes into a bore and is held there.
///
/// # Examples
///
/// ```
/// use trade::fit::tip_fits_bore;
///
/// // A parallel tip of 0.370 in and a taper tip of 0.355 in in a bore of 9.5 mm, and a wood's tip of 0.335 in, which would
/// // rattle: the usual sizes of the trade, from memory.
/// assert!(tip_fits_bore(0.370 * 25.4, 9.5));
/// assert!(tip_fits_bore(0.355 * 25.4, 9.5));
/// assert!(!tip_fits_bore(0.335 * 25.4, 9.5));
/// ```
#[must_use]
pub fn tip_fits_bore(tip_diameter_mm: f64, bore_diameter_mm: f64) -> bool {
    let play_mm = bore_diameter_mm - tip_diameter_mm;
    (0.0..=BORE_PLAY_MAX_MM).contains(&play_mm)
}

/// How much more than the model's tip trim may be gone from the tip of a shaft that is used again (common practice, no
/// source: a saw's width).
pub(crate) const TRIM_PLAY_MM: f64 = 3.0;

/// Why a blank is used for a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BlankUse {
    /// It is the number's own, or serves all numbers.
    Own,
    /// It is the neighbouring number's, which the model allows: so many places away in the model's list.
    Neighbour(u8),
}

/// Whether a shaft may be used for a number, by its blank.
#[must_use]
pub fn blank_use(model: &ShaftModel, part: &Part, number: &str) -> Option<BlankUse> {
    if model.tip == TipShape::Parallel {
        return Some(BlankUse::Own);
    }
    let place =
        |n: &str| model.blanks.iter().position(|b| b.number.as_deref().is_some_and(|own| own.eq_ignore_ascii_case(n)));
    let (own, wanted) = (place(part.number.as_deref()?)?, place(number)?);
    match own.abs_diff(wanted) {
        0 => Some(BlankUse::Own),
        n if n <= usize::from(model.neighbour_blanks) => u8::try_from(n).ok().map(BlankUse::Neighbour),
        _ => None,
    }
}

/// A shaft cut for a club.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cut {
    /// Cut off the tip.
    pub tip_trim_mm: f64,
    /// Cut off the butt after the tip.
    pub butt_cut_mm: f64,
    /// What is left.
    pub shaft: Shaft,
}

/// Length of the cut shaft that gives the sheet's length, "to the ground line".
///
/// # Errors
/// Figures that leave no shaft.
pub fn cut_length_mm(
    club: &SheetClub,
    head: &HeadNumber,
    grip: &GripModel,
    off_bottom_mm: f64,
) -> Result<f64, TradeError> {
    Ok(FinishedLength {
        finished_length_mm: club.length_mm,
        convention: match club.length_to {
            LengthTo::ShaftEnd => Convention::ToShaftEnd,
            LengthTo::Cap => Convention::ToCap,
        },
        cap_mm: grip.cap_mm,
        bore_to_ground_mm: head.bore_to_ground_mm,
        off_bottom_mm,
    }
    .cut_shaft_length_mm()?)
}

/// The raw shaft of a part: its own figures where measured, else its blank's.
///
/// # Errors
/// A shaft whose model has no blank for it.
pub fn raw_shaft(model: &ShaftModel, part: &Part, number: &str) -> Result<Shaft, TradeError> {
    let blank = model.blank(part.number.as_deref().unwrap_or(number)).ok_or_else(|| {
        let fault = NotFound::Blank { number: number.to_owned(), model: model.code.clone() };
        TradeError::not_found(&fault, &FindIt::AddBlank)
    })?;
    let length_mm = part.length_mm.unwrap_or(blank.length_mm);
    Ok(Shaft {
        mass_g: part.mass_g.unwrap_or(blank.mass_g),
        length_mm,
        balance_point_mm: part.balance_point_mm.unwrap_or(blank.balance_point_mm * length_mm / blank.length_mm),
    })
}

/// Cuts a raw shaft to a length: the model's tip trim first, less what its tip has lost already, the rest off the butt;
/// none where it is too short, or its tip has lost more than this number allows.
///
/// # Errors
/// Figures that no shaft has.
pub fn cut(
    model: &ShaftModel,
    raw: Shaft,
    trimmed_mm: f64,
    number: &str,
    cut_mm: f64,
) -> Result<Option<Cut>, TradeError> {
    let wanted_mm = model.tip_trim_mm(number);
    if trimmed_mm > wanted_mm + TRIM_PLAY_MM {
        return Ok(None);
    }
    let tip_trim_mm = (wanted_mm - trimmed_mm).max(0.0);
    let butt_cut_mm = raw.length_mm - tip_trim_mm - cut_mm;
    if butt_cut_mm < 0.0 {
        return Ok(None);
    }
    Ok(Some(Cut { tip_trim_mm, butt_cut_mm, shaft: raw.cut(tip_trim_mm, butt_cut_mm)? }))
}

/// Whether the head goes with the shaft at all: bore against tip.
#[must_use]
pub fn head_takes_shaft(head: &HeadModel, adapter_bore_mm: Option<f64>, shaft: &ShaftModel) -> bool {
    tip_fits_bore(shaft.tip_diameter_mm, adapter_bore_mm.unwrap_or(head.bore_diameter_mm))
}

/// Whether a part is of the model and number that a club of a sheet asks for. Tip weights serve any club: what fits a tip
/// is its plan's concern.
#[must_use]
pub fn serves(part: &Part, target: &SheetClub, library: &Library) -> bool {
    let numbered = || part.number.as_deref().is_some_and(|n| n.eq_ignore_ascii_case(&target.number));
    match part.kind {
        PartKind::Head => part.model == target.head_model && numbered(),
        PartKind::Shaft => {
            part.model == target.shaft_model
                && library.shaft(&part.model).is_ok_and(|model| blank_use(model, part, &target.number).is_some())
        }
        PartKind::Grip => part.model == target.grip_model,
        PartKind::Ferrule => target.ferrule_model.as_ref() == Some(&part.model),
        PartKind::Adapter => library.adapter(&part.model).is_ok_and(|a| a.fits_head_model == target.head_model),
        PartKind::TipWeight => true,
        PartKind::Adhesive | PartKind::Tape => false,
    }
}
