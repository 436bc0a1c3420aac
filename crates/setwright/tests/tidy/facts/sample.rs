//! A declaration for the test of the reader of declarations.

fact::facts! {
    /// Two members, one of them with what may confuse a reader.
    #[allow(dead_code, reason = "the test looks at the declaration alone")]
    pub enum Sample: "sample_area" {
        /// A comment, with a comma { and a brace.
        TooWeak {
            /// How many, and of what.
            by: Vec<f64>,
            /// Degrees.
            #[allow(unused, reason = "an attribute [with] brackets")]
            limit_deg: f64,
        },
        /// Holds nothing.
        Plain,
    }
}
