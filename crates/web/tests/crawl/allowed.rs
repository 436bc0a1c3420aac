//! What may stand on a page though it is no text of the catalogue, or shows another unit: each with its reason. What is not
//! met any more fails the test, so that the list stays short.

/// One exception.
pub struct Allowed {
    /// Beginning of the address of the page.
    pub on: &'static str,
    /// What stands there, whole.
    pub text: &'static str,
}

const fn on(on: &'static str, text: &'static str) -> Allowed {
    Allowed { on, text }
}

/// Words that are no texts.
pub const WORDS: &[Allowed] = &[
    // Columns of a file are named by their keys in every language, and a file holds codes.
    on("/stock/import", "code,kind,model,number,mass_g\nH7-014,head,HERON,7,268.4"),
    // Languages have their names in themselves.
    on("/tablet", "English"),
    on("/tablet", "Deutsch"),
    // The name of a key, as it stands on the key.
    on("/bench/", "Enter"),
    // The short notation of a sheet is the same for everybody, as it is typed.
    on("/style", "5–PW, +1/2, 2 up, D3, 2 wraps"),
];

/// Names that somebody typed, where no document of the shop holds them. They may stand within a text.
pub const NAMES: &[Allowed] = &[
    // The worked examples of calculations are documents that the page, the command line and the API share.
    on("/calc/", "half an inch off the butt"),
    on("/calc/", "next head"),
    on("/calc/", "tip weight"),
    on("/calc/", "head"),
    on("/calc/", "shaft"),
    on("/calc/", "grip"),
    // Invented models of the gallery.
    on("/style", "Quarrel CB"),
];

/// Figures that show how an entry may be typed: in any unit, whoever reads.
pub const EXAMPLES: &[Allowed] = &[
    on("/sheets/new", "+1/2 · -1/4 in · +12 mm · 1/2 over · std · 36 3/4 in · to the cap · to the shaft end"),
    on("/sheets/new", "±0.3 (points) · ±1.5 mm · ±0.5° · ±2 cpm"),
    on("/sheets/new", "total 428 g · total 428 g +7 a club"),
];

/// Notes which exceptions were met.
#[derive(Default)]
pub struct Met(std::collections::BTreeSet<(&'static str, &'static str)>);

impl Met {
    /// Whether a text of a page is an exception as a whole.
    pub fn whole(&mut self, list: &[Allowed], address: &str, text: &str) -> bool {
        let found = list.iter().find(|one| address.starts_with(one.on) && one.text == text.trim());
        self.0.extend(found.map(|one| (one.on, one.text)));
        found.is_some()
    }

    /// A text without the names that are exceptions on its page.
    pub fn without(&mut self, list: &[Allowed], address: &str, text: &str) -> String {
        let mut rest = text.to_owned();
        for one in list.iter().filter(|one| address.starts_with(one.on)) {
            if rest.contains(one.text) {
                self.0.insert((one.on, one.text));
                rest = rest.replace(one.text, " ");
            }
        }
        rest
    }

    /// Fails where an exception was not met.
    pub fn all_of(&self, lists: &[&[Allowed]]) {
        let idle: Vec<&str> = lists
            .iter()
            .flat_map(|list| list.iter())
            .filter(|one| !self.0.contains(&(one.on, one.text)))
            .map(|one| one.text)
            .collect();
        assert!(idle.is_empty(), "no page has these any more, so they need no exception: {idle:?}");
    }
}
