//! What a sheet would cost by the shop's price list: its parts by model, and the usual work.

use std::collections::BTreeMap;
use trade::model::Library;
use trade::price::{Per, PriceLine, PriceList};
use trade::sheet::Sheet;

/// The lines of a quote: each model of the sheet that has a price, with its pieces, in the order of the clubs; then the usual
/// work. A model without a price is left out.
#[must_use]
pub fn proposed(sheet: &Sheet, prices: &PriceList, library: &Library) -> Vec<PriceLine> {
    let mut pieces: Vec<(&str, i64)> = Vec::new();
    for club in &sheet.clubs {
        let parts =
            [Some(&club.head_model), Some(&club.shaft_model), Some(&club.grip_model), club.ferrule_model.as_ref()];
        for model in parts.into_iter().flatten() {
            match pieces.iter_mut().find(|(code, _)| code.eq_ignore_ascii_case(model)) {
                Some((_, n)) => *n += 1,
                None => pieces.push((model, 1)),
            }
        }
    }
    let priced: BTreeMap<String, i64> = prices.parts.iter().map(|p| (p.model.to_lowercase(), p.each_minor)).collect();
    let parts = pieces.into_iter().filter_map(|(code, count)| {
        let each_minor = *priced.get(&code.to_lowercase())?;
        let what = library.get(code).map_or_else(|| code.to_owned(), |model| model.name().to_owned());
        Some(PriceLine { what, count, each_minor })
    });
    let clubs = i64::try_from(sheet.clubs.len()).unwrap_or(i64::MAX);
    let work = prices.work.iter().filter(|work| work.usual).map(|work| PriceLine {
        what: work.name.clone(),
        count: if work.per == Per::Club { clubs.max(1) } else { 1 },
        each_minor: work.each_minor,
    });
    parts.chain(work).collect()
}
