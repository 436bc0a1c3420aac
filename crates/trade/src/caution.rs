//! The short cautions that stand beside a step, where the hazard is.
//!
//! Each is a sentence or two and leaves the rest to those who know: the maker's sheet, the local rules, a qualified
//! person. What is behind them: epoxy is a skin sensitiser (Health and Safety Executive, epoxy resins); eye protection
//! at saw and grinder (29 CFR 1910.133); dust needs extraction and a respirator (COSHH, general dust limits of 10 and
//! 4 mg/m³); 100 g of mixed resin in one cup can run away above 200 °C (a resin maker's safety page); lead is washed
//! off before eating (29 CFR 1910.1025).

use crate::step::Caution;

/// What a person at the step should have in mind.
#[must_use]
pub const fn words(caution: Caution) -> &'static str {
    match caution {
        Caution::Cutting => {
            "Eye protection on, work clamped, extraction and a particle respirator running: never cut or sand composite \
             dry without them. The maker's sheet of the tool and the local safety rules come first."
        }
        Caution::Epoxy => {
            "Gloves on and the room aired: epoxy makes skin allergic, and a full cup can heat up by itself. Follow the \
             adhesive's own sheet and the local safety rules."
        }
        Caution::Solvent => {
            "Solvent burns and its vapour is not for breathing: air the room, gloves on, no flame, no heat gun near. \
             Follow the product's own sheet and the local safety rules."
        }
        Caution::Bending => {
            "Eye protection on and the head clamped: too much bend, or heat, can crack a hosel. Stay within the head \
             maker's limit; if in doubt, a qualified person decides."
        }
        Caution::Swing => {
            "Nobody swings this club before the adhesive maker's full cure. If the joint is in doubt, a qualified person \
             decides."
        }
        Caution::Turning => {
            "Eye protection on, sleeves and hair away from the belt, extraction running. Follow the tool's own sheet and \
             the local safety rules."
        }
    }
}

/// What to have in mind where lead is on the bench (tape or powder), which no step asks for by itself.
#[must_use]
pub const fn lead_words() -> &'static str {
    "Lead is toxic: gloves on, wash hands before eating or drinking, sweep up nothing dry. Follow the product's own \
     sheet and the local safety rules."
}
