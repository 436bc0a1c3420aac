//! The short cautions that stand beside a step, where the hazard is.
//!
//! Each is a sentence or two and leaves the rest to those who know: the maker's sheet, the local rules, a qualified
//! person. What is behind them: epoxy is a skin sensitiser (Health and Safety Executive, epoxy resins); eye protection
//! at saw and grinder (29 CFR 1910.133); dust needs extraction and a respirator (COSHH, general dust limits of 10 and
//! 4 mg/m³); a grinder's rest at most 1/8 in from its wheel (29 CFR 1910.215(a)(4)); nitrile or butyl gloves against epoxy
//! (from memory; the adhesive's own sheet names the glove); 100 g of mixed resin in one cup can run away above 200 °C (a resin maker's safety page); lead is washed
//! off before eating (29 CFR 1910.1025).

use crate::step::Caution;

fact::facts! {
    /// What a person at the step should have in mind.
    pub enum CautionSays: "caution_says" {
        /// At a saw, a grinder or a heat gun.
        Cutting,
        /// With epoxy.
        Epoxy,
        /// With grip solvent.
        Solvent,
        /// Bending a hosel.
        Bending,
        /// Before a club is swung.
        Swing,
        /// Turning or sanding a ferrule.
        Turning,
        /// Roughening a tip, cleaning a hosel.
        Preparing,
        /// Cutting an old grip off.
        Stripping,
        /// Heating a hosel and pulling its head.
        Pulling,
        /// With lead on the bench, tape or powder.
        Lead,
        /// With a club that may be broken.
        Damage,
    }
}

impl From<Caution> for CautionSays {
    fn from(caution: Caution) -> Self {
        match caution {
            Caution::Cutting => Self::Cutting,
            Caution::Epoxy => Self::Epoxy,
            Caution::Solvent => Self::Solvent,
            Caution::Bending => Self::Bending,
            Caution::Swing => Self::Swing,
            Caution::Turning => Self::Turning,
            Caution::Preparing => Self::Preparing,
            Caution::Stripping => Self::Stripping,
            Caution::Pulling => Self::Pulling,
            Caution::Damage => Self::Damage,
            Caution::Lead => Self::Lead,
        }
    }
}
