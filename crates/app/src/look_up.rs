//! Where to look up what was not found.

fact::facts! {
    /// Where to look up what was not found.
    pub(crate) enum LookUp: "look_up" {
        Stock,
        Models,
        UsualModels,
        OnLabel,
        Today,
        Orders,
        AddModel,
        Sheets,
        Customers,
        Layouts,
        Glue,
        Card,
        Code,
        Find,
        Choose,
        LoadJob,
        LoadClub,
        PlanAgain,
        StockChanged,
        Scales,
        Places { most: usize },
        AddModelOf { kind: trade::model::PartKind },
        LoadScale { name: String },
        StudyPlaces { most: usize },
        Clubs,
        HasKinds { known: Vec<String> },
        HasSteps { known: Vec<String> },
        HasWeights { name: String, known: Vec<String> },
    }
}
