//! Stock of the invented shop: drawn from a seed, so that every demonstration is the same.

use super::models::{IRONS, TRAY_G, WEDGES, models};
use quantity::{decimal, round_to};
use trade::model::{Library, PartKind};
use trade::part::Part;

/// A small permuted congruential generator (PCG-XSH-RR 64/32; M. O'Neill 2014), so that no clock and no global state
/// enters.
struct Draw(u64);

impl Draw {
    const fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(2_862_933_555_777_941_757).wrapping_add(3_037_000_493))
    }

    /// Uniform from 0 to 1.
    fn uniform(&mut self) -> f64 {
        let state = self.0;
        self.0 = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        let mixed = (((state >> 18) ^ state) >> 27) as u32;
        f64::from(mixed.rotate_right((state >> 59) as u32)) / f64::from(u32::MAX)
    }

    /// Bell-shaped about nothing with standard deviation 1, never beyond 2.5: the sum of twelve uniform draws, limited.
    fn bell(&mut self) -> f64 {
        let sum: f64 = (0..12).map(|_| self.uniform()).sum();
        (sum - 6.0).clamp(-2.5, 2.5)
    }
}

/// Frequency of a raw taper blank of 40 in on the invented shop's clamp, cycles a minute.
const TAPER_CPM: f64 = 296.0;
/// Power of the free length by which a shorter blank of the same mass swings faster: three halves by its length alone, the rest by
/// its thicker wall (by integration of a tube of 112 g under 205 g, 36.5 to 40 in).
const THINNER: f64 = 1.89;
/// What is clamped of it, mm: five inches.
const CLAMPED_MM: f64 = 127.0;
/// Scatter of single shafts about their blank's frequency, cycles a minute.
const CPM_SD: f64 = 2.2;

/// The stock as parts are carried in: ids empty, everything free.
struct Stock {
    draw: Draw,
    library: Library,
    parts: Vec<Part>,
}

/// All parts in stock for a seed. Heads scatter by 1.5 g, shafts and grips by what their models say.
#[must_use]
pub fn parts(seed: u64) -> Vec<Part> {
    let mut stock = Stock { draw: Draw::new(seed), library: models().into_iter().collect(), parts: Vec::new() };
    for number in IRONS {
        stock.heads("SISKIN", number, "S", 30);
        stock.heads("REDSTART", number, "R", 14);
        stock.heads("SISKIN-L", number, "SL", 12);
    }
    for number in WEDGES {
        stock.heads("WHINCHAT", number, "W", 12);
    }
    stock.heads("FIELDFARE", "1", "F", 8);
    stock.heads("FIELDFARE", "3", "F", 6);
    stock.heads("DOTTEREL", "PT", "D", 6);
    stock.shafts("TRAMONTANA-P", None, "TP", 72);
    for number in IRONS.iter().chain(&WEDGES) {
        stock.shafts("LIBECCIO-T", Some(number), "LT", 10);
    }
    stock.shafts("LEVANTER-W", None, "LW", 10);
    stock.shafts("GREGALE-P", None, "GP", 6);
    stock.grips("OLIVINE", "OL", 80);
    stock.grips("FELDSPAR", "FE", 24);
    stock.grips("GNEISS", "GN", 6);
    for g in TRAY_G {
        stock.bulk(PartKind::TipWeight, &format!("TIP-{g}"), &format!("TRAY-{g}"), 40, "tray");
    }
    for size in ["370", "355", "335"] {
        stock.bulk(PartKind::Ferrule, &format!("FERRULE-{size}"), &format!("FER-{size}"), 150, "drawer 1");
    }
    stock.bulk(PartKind::Adapter, "FIELDFARE-A", "ADA-F", 8, "drawer 2");
    stock.bulk(PartKind::Adhesive, "DOLERITE", "DOL-1", 3, "cupboard");
    stock.bulk(PartKind::Tape, "TAPE-2S", "TAPE-1", 6, "drawer 3");
    stock.bulk(PartKind::Tape, "TAPE-BUILD", "TAPE-2", 4, "drawer 3");
    stock.plucked("LIBECCIO-T", seed);
    stock.parts
}

impl Stock {
    fn part(&mut self, kind: PartKind, model: &str, code: &str, place: String) -> Part {
        let lot = format!("{}-{}", &model[..1], 100 + (self.draw.uniform() * 3.0) as u32);
        Part { lot, place, ..Part::new(code, kind, model) }
    }

    /// Mass to the tenth of a gram that the scale shows.
    fn weighed(&mut self, mut part: Part, nominal_g: f64, sd_g: f64) -> Part {
        let mass_g = round_to(nominal_g + sd_g * self.draw.bell(), 1);
        part.mass_typed = decimal(mass_g, 1);
        part.mass_g = Some(mass_g);
        part
    }

    fn heads(&mut self, model: &str, number: &str, prefix: &str, count: usize) {
        const HEAD_SD_G: f64 = 1.5;
        let Some(entry) = self.library.head_number(model, number).ok().map(|(_, n)| n.clone()) else { return };
        for i in 1..=count {
            let code = format!("{prefix}{number}-{i:02}");
            let mut part = self.part(PartKind::Head, model, &code, format!("shelf {prefix}{number}"));
            part.number = Some(number.into());
            // One head in three was put into the gauge when it came in.
            if i % 3 == 1 {
                part.loft_deg = Some(round_to(entry.loft_deg + 0.4 * self.draw.bell(), 1));
                part.lie_deg = Some(round_to(entry.lie_deg + 0.4 * self.draw.bell(), 1));
            }
            let part = self.weighed(part, entry.mass_g, HEAD_SD_G);
            self.parts.push(part);
        }
    }

    fn shafts(&mut self, model: &str, number: Option<&str>, prefix: &str, count: usize) {
        let Some((blank, sd_g)) =
            self.library.shaft(model).ok().and_then(|s| Some((s.blank(number.unwrap_or(""))?.clone(), s.mass_sd_g)))
        else {
            return;
        };
        let stem = format!("{prefix}{}", number.unwrap_or(""));
        for i in 1..=count {
            let mut part = self.part(PartKind::Shaft, model, &format!("{stem}-{i:02}"), format!("rack {stem}"));
            part.number = number.map(str::to_owned);
            // One shaft in four was balanced on an edge when it came in.
            if i % 4 == 1 {
                part.length_mm = Some(round_to(blank.length_mm, 1));
                part.balance_point_mm = Some(round_to(blank.balance_point_mm + 2.0 * self.draw.bell(), 1));
            }
            let part = self.weighed(part, blank.mass_g, sd_g);
            self.parts.push(part);
        }
    }

    /// Four of five shafts of a model were clamped and plucked when they came in. Drawn apart from all else, so that the
    /// masses stay what they are without.
    fn plucked(&mut self, model: &str, seed: u64) {
        let mut draw = Draw::new(seed ^ 0x63_70_6d);
        let Ok(model) = self.library.shaft(model) else { return };
        let longest_mm = model.blanks.iter().map(|b| b.length_mm).fold(0.0, f64::max);
        let free_mm = |length_mm: f64| length_mm - CLAMPED_MM;
        for (i, part) in self.parts.iter_mut().filter(|p| p.model == model.code).enumerate() {
            let Some(blank) = model.blank(part.number.as_deref().unwrap_or_default()) else { continue };
            // A cantilever with a weight at its tip: the shorter by so much, the faster by its power.
            let centre_cpm = TAPER_CPM * (free_mm(longest_mm) / free_mm(blank.length_mm)).powf(THINNER);
            let cpm = centre_cpm + CPM_SD * draw.bell();
            if i % 5 != 4 {
                part.cpm = Some(round_to(cpm, 1));
            }
        }
    }

    fn grips(&mut self, model: &str, prefix: &str, count: usize) {
        let Some((nominal_g, sd_g)) = self.library.grip(model).ok().map(|g| (g.mass_g, g.mass_sd_g)) else { return };
        for i in 1..=count {
            let part = self.part(PartKind::Grip, model, &format!("{prefix}-{i:02}"), format!("box {prefix}"));
            let part = self.weighed(part, nominal_g, sd_g);
            self.parts.push(part);
        }
    }

    fn bulk(&mut self, kind: PartKind, model: &str, code: &str, count: i64, place: &str) {
        let part = self.part(kind, model, code, place.into());
        self.parts.push(Part { count: Some(count), ..part });
    }
}
