//! Figures given in another unit than the field's: what was probably meant.

fact::facts! {
    /// A unit that is mistaken for the one of a field.
    #[derive(Copy, Eq)]
    pub enum SlipUnit: "slip_unit" {
        /// Inches.
        Inches,
        /// Centimetres.
        Centimetres,
        /// Metres.
        Metres,
        /// Ounces.
        Ounces,
        /// Kilograms.
        Kilograms,
        /// Degrees Fahrenheit.
        Fahrenheit,
        /// Kelvins.
        Kelvins,
        /// Millimetres.
        Millimetres,
        /// Grams a millimetre.
        GramsAMillimetre,
        /// Grams an inch.
        GramsAnInch,
        /// Miles an hour.
        MilesAnHour,
        /// Kilometres an hour.
        KilometresAnHour,
        /// Pounds by square inch.
        PoundsASquareInch,
        /// Kilopascals.
        Kilopascals,
        /// Kilograms a cubic metre.
        KilogramsACubicMetre,
        /// Hertz.
        Hertz,
    }
}

fact::facts! {
    /// What a figure in another unit was probably meant as.
    pub enum LooksLike: "looks_like" {
        /// It is plausible in this unit.
        Unit {
            /// The unit that was probably meant.
            unit: SlipUnit,
            /// The figure as it was given.
            given: f64,
            /// Sign of the unit that was probably meant.
            given_in: &'static str,
            /// The same in the unit of the field.
            meant: f64,
            /// Sign of the unit of the field.
            meant_in: &'static str,
        },
    }
}
