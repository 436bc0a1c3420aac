//! What sits between head and shaft: which adapters a club may take, and which ferrule it gets.
//!
//! Which adapter of those that fit alike goes into which club is chosen with head, shaft, grip and tip weight. Adapters
//! of another length make another cut, so a club is planned for one length and bore. A ferrule hardly matters to the
//! swing weight: each club gets its own piece, the first that is left.

use super::Shelf;
use bench::assembly::Assembly;
use std::collections::BTreeMap;
use trade::adapter::AdapterModel;
use trade::error::TradeError;
use trade::fit;
use trade::head::HeadModel;
use trade::job::JobClub;
use trade::model::PartKind;
use trade::part::Part;
use trade::shaft::ShaftModel;

/// Adapters are alike within this, mm.
const ALIKE_MM: f64 = 0.05;

/// Adapters with which a head and a shaft go together alike.
pub(super) struct Seat<'a> {
    /// The model of one of them: its length and bore are those of all.
    pub model: &'a AdapterModel,
    /// Places on the shelf.
    pub adapters: Vec<usize>,
}

/// Whether a club that is planned with one can be built with the other.
pub(super) fn alike(a: &AdapterModel, b: &AdapterModel) -> bool {
    let near = |a: f64, b: f64| (a - b).abs() < ALIKE_MM;
    near(a.length_mm, b.length_mm) && near(a.bore_diameter_mm, b.bore_diameter_mm) && a.settings == b.settings
}

/// What the clubs before have been given, so that none of it is counted on twice.
#[derive(Default)]
pub(super) struct Given {
    /// How many clubs are planned for a seat, by the first of its adapters.
    seats: BTreeMap<usize, u32>,
    /// How many pieces are taken of each ferrule.
    ferrules: BTreeMap<usize, u32>,
}

impl Given {
    /// The seat of a club whose head takes an adapter: that of the adapter which it has already, since its shaft may be
    /// cut for it; else of the one that is kept for it; else, of those whose bore takes the shaft, the one with most
    /// adapters left. Without any on the shelf the first model of the library that fits stands for it.
    pub fn seat<'a>(
        &mut self,
        assembly: Assembly<'a>,
        club: &JobClub,
        (head, shaft): (&HeadModel, &ShaftModel),
        shelf: &Shelf<'a>,
        kept: Option<usize>,
    ) -> Result<Option<Seat<'a>>, TradeError> {
        if !head.takes_adapter {
            return Ok(None);
        }
        let mut seats: Vec<Seat<'a>> = Vec::new();
        for (at, part) in shelf.adapters.iter().enumerate() {
            let model = assembly.library.adapter(&part.model)?;
            if model.fits_head_model != head.code || !part.may_go_to(assembly.job.sheet.customer) {
                continue;
            }
            match seats.iter_mut().find(|s| alike(s.model, model)) {
                Some(seat) => seat.adapters.push(at),
                None => seats.push(Seat { model, adapters: vec![at] }),
            }
        }
        let has = club.plan.as_ref().and_then(|plan| plan.part(PartKind::Adapter));
        let has = has.and_then(|planned| shelf.adapters.iter().position(|p| p.id == planned.part));
        let of = |at: Option<usize>| at.and_then(|at| seats.iter().position(|s| s.adapters.contains(&at)));
        let fits = |s: &Seat<'_>| fit::tip_fits_bore(shaft.tip_diameter_mm, s.model.bore_diameter_mm);
        let left = |s: &Seat<'_>| {
            let there: u32 = s.adapters.iter().map(|&at| shelf.count(shelf.adapters[at])).sum();
            there.saturating_sub(self.seats.get(&s.adapters[0]).copied().unwrap_or_default())
        };
        // Of several as good the first.
        let most_left = || (0..seats.len()).rev().max_by_key(|&i| (fits(&seats[i]), left(&seats[i])));
        if let Some(at) = of(has).or_else(|| of(kept)).or_else(most_left) {
            let seat = seats.swap_remove(at);
            *self.seats.entry(seat.adapters[0]).or_default() += 1;
            return Ok(Some(seat));
        }
        let models = || assembly.library.adapters_of(&head.code);
        let model = models().find(|a| fit::tip_fits_bore(shaft.tip_diameter_mm, a.bore_diameter_mm));
        Ok(model.or_else(|| models().next()).map(|model| Seat { model, adapters: Vec::new() }))
    }

    /// The ferrule of a club: the one that it has or that is reserved for it, else the first of which a piece is left.
    pub fn ferrule<'a>(&mut self, club: &JobClub, customer: Option<i64>, shelf: &Shelf<'a>) -> Option<&'a Part> {
        let code = club.target.ferrule_model.as_ref()?;
        let has = club.plan.as_ref().and_then(|plan| plan.part(PartKind::Ferrule)).map(|p| &p.part);
        let own = |p: &Part| Some(&p.id) == has || p.club.as_ref() == Some(&club.id);
        // Reserved for another club it is not free for this one.
        let open = |p: &Part| own(p) || p.club.is_none();
        let left = |at: usize| shelf.count(shelf.ferrules[at]) > self.ferrules.get(&at).copied().unwrap_or_default();
        let fit = || {
            shelf
                .ferrules
                .iter()
                .enumerate()
                .filter(|(at, p)| &p.model == code && open(p) && p.may_go_to(customer) && left(*at))
        };
        let (at, part) = fit().find(|(_, p)| own(p)).or_else(|| fit().next())?;
        *self.ferrules.entry(at).or_default() += 1;
        Some(part)
    }
}
