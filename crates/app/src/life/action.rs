//! What can be done with a part by hand, and how it is asked for.
//!
//! A document, a form and a command line are flat: any field may stand beside any other. [`Deed`] holds what goes with
//! one deed and nothing else, and [`Deed::read`] is the one way from the one to the other, so that what does not belong
//! together is refused in the same words wherever it comes from.

use crate::AppError;
use crate::life::fault::DeedFault;
use serde::{Deserialize, Serialize};
use trade::kind::closed_list;
use trade::part::named_fields::with_part_figures;
use utoipa::ToSchema;

closed_list! {
    /// What is done with a part by hand.
    PartDeed {
        /// Hold it for a club that has no plan yet: the plan keeps to it.
        Reserve = "reserve";
        /// Give it back from a job to the shelf.
        Return = "return";
        /// It went into a club outside of any job.
        Use = "use";
        /// Put it aside as unfit.
        Scrap = "scrap";
        /// Take it back into stock after it was put aside, pulled or ordered.
        Restore = "restore";
        /// A figure was wrong.
        Correct = "correct";
        /// It was pulled out of its club.
        Pull = "pull";
        /// A shaft was cut wrongly; it stays good for shorter clubs.
        Miscut = "miscut";
    }
}

with_part_figures! {
    /// A deed with what it needs, as a document of the API: a field that does not go with its deed is refused.
    #[derive(Debug, Clone, Deserialize, ToSchema)]
    #[serde(deny_unknown_fields)]
    #[schema(as = PartAction)]
    pub struct AskedAction {
        /// What is done.
        pub deed: PartDeed,
        /// Version of the part that was looked at.
        #[serde(default)]
        pub version: Option<i64>,
        /// The job that it is reserved for.
        #[serde(default)]
        pub job: Option<i64>,
        /// Place of the club in its tray.
        #[serde(default)]
        pub slot: Option<i64>,
        /// Mass as it is weighed now, in workshop notation.
        #[serde(default)]
        pub mass_typed: Option<String>,
        /// How much of a wrong cut went off the tip.
        #[serde(default)]
        pub off_the_tip_mm: Option<f64>,
        /// A pulled part is free of adhesive, weighed again and good.
        #[serde(default)]
        pub clean: bool,
        /// Where it lies from now on.
        #[serde(default)]
        pub place: Option<String>,
        /// The club that it is planned for is to lose its plan and wait.
        #[serde(default)]
        pub lose_plan: bool,
        /// Why; needed to scrap, to use without a job and to take a plan away.
        #[serde(default)]
        pub reason: String,
        /// Who.
        pub by: String,
    }
}

with_part_figures! {
    /// Figures of a part, those that are given.
    #[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
    pub struct PartFigures {}
}

/// What is given beside the name of a deed, wherever it was asked for: nothing of it, before anything is.
#[derive(Debug, Clone, Default)]
pub struct Given {
    /// The job that it is reserved for.
    pub job: Option<i64>,
    /// Place of the club in its tray.
    pub slot: Option<i64>,
    /// Mass as it is weighed now, in workshop notation.
    pub mass_typed: Option<String>,
    /// How much of a wrong cut went off the tip, mm.
    pub off_the_tip_mm: Option<f64>,
    /// A pulled part is free of adhesive, weighed again and good.
    pub clean: bool,
    /// Where it lies from now on.
    pub place: Option<String>,
    /// The club that it is planned for is to lose its plan and wait.
    pub lose_plan: bool,
    /// Why.
    pub reason: String,
    /// The figures of the part that are given.
    pub figures: PartFigures,
}

/// A deed with what it needs.
#[derive(Debug, Clone)]
pub struct PartAction {
    /// What is done.
    pub deed: Deed,
    /// Version of the part that was looked at; none: not checked.
    pub version: Option<i64>,
    /// Who.
    pub by: String,
}

/// Where a part lies from now on, and why: what most deeds may say beside their own.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Note {
    /// Where it lies from now on; none: where it lay.
    pub place: Option<String>,
    /// Why; may be empty.
    pub reason: String,
}

/// A part that comes out of its club.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Pulled {
    /// Free of adhesive, good, and weighed again: it is free.
    Clean {
        /// What it weighs now, in workshop notation.
        mass_typed: String,
    },
    /// As it came out: it waits to be cleaned.
    AsItIs {
        /// What it weighs now, where it was weighed.
        mass_typed: Option<String>,
    },
}

/// What is done with a part by hand, each with what it needs and nothing else.
#[derive(Debug, Clone, PartialEq)]
pub enum Deed {
    /// Hold it for a club that has no plan yet.
    Reserve {
        /// Running number of the job.
        job: i64,
        /// Place of the club in its tray.
        slot: i64,
    },
    /// Give it back from a job to the shelf.
    Return {
        /// The club that it is planned for is to lose its plan and wait.
        lose_plan: bool,
        /// Place and reason.
        note: Note,
    },
    /// It went into a club outside of any job.
    Use {
        /// Place and reason.
        note: Note,
    },
    /// Put it aside as unfit.
    Scrap {
        /// The club that it is planned for is to lose its plan and wait.
        lose_plan: bool,
        /// Place and reason.
        note: Note,
    },
    /// Take it back into stock.
    Restore {
        /// What it weighs now, where it was weighed.
        mass_typed: Option<String>,
        /// Place and reason.
        note: Note,
    },
    /// A figure was wrong.
    Correct {
        /// What it weighs, where that was wrong.
        mass_typed: Option<String>,
        /// The figures that were wrong, as they are.
        figures: PartFigures,
        /// Place and reason.
        note: Note,
    },
    /// It was pulled out of its club.
    Pull {
        /// How it came out.
        pulled: Pulled,
        /// How long a shaft is now, mm; none: as long as it was cut.
        length_mm: Option<f64>,
        /// The club is to lose its plan and wait.
        lose_plan: bool,
        /// Place and reason.
        note: Note,
    },
    /// A shaft was cut wrongly.
    Miscut {
        /// How long it is now, mm.
        length_mm: f64,
        /// How much of the cut went off the tip, mm.
        off_the_tip_mm: f64,
        /// What it weighs now, in workshop notation.
        mass_typed: String,
        /// The club that it is planned for is to lose its plan and wait.
        lose_plan: bool,
        /// Place and reason.
        note: Note,
    },
}

/// What a deed may be given beside its own name, by the names of the document.
const fn goes_with(deed: PartDeed) -> &'static [&'static str] {
    match deed {
        PartDeed::Reserve => &["job", "slot"],
        PartDeed::Return | PartDeed::Scrap => &["lose_plan", "place", "reason"],
        PartDeed::Use => &["place", "reason"],
        PartDeed::Restore => &["mass_typed", "place", "reason"],
        PartDeed::Correct => &["mass_typed", "figures", "place", "reason"],
        PartDeed::Pull => &["mass_typed", "clean", "length_mm", "lose_plan", "place", "reason"],
        PartDeed::Miscut => &["mass_typed", "length_mm", "off_the_tip_mm", "lose_plan", "place", "reason"],
    }
}

impl Given {
    /// The names of what is given, as a document has them; blanks are nothing.
    fn names(&self) -> Vec<&'static str> {
        let typed = |text: &Option<String>| text.as_deref().is_some_and(|t| !t.trim().is_empty());
        let own = [
            ("job", self.job.is_some()),
            ("slot", self.slot.is_some()),
            ("mass_typed", typed(&self.mass_typed)),
            ("off_the_tip_mm", self.off_the_tip_mm.is_some()),
            ("clean", self.clean),
            ("place", typed(&self.place)),
            ("lose_plan", self.lose_plan),
            ("reason", !self.reason.trim().is_empty()),
        ];
        own.into_iter().filter(|(_, given)| *given).map(|(name, _)| name).chain(self.figure_names()).collect()
    }

    fn figure_names(&self) -> Vec<&'static str> {
        self.figures.given_figures().into_iter().map(|(key, _)| key).collect()
    }

    /// The first thing given that does not go with a deed.
    fn beside(&self, deed: PartDeed) -> Option<&'static str> {
        let goes = |name: &str| goes_with(deed).contains(&name);
        let figures = self.figure_names();
        let goes_along = |name: &&'static str| goes(name) || goes("figures") && figures.contains(name);
        self.names().into_iter().find(|name| !goes_along(name))
    }
}

impl Deed {
    /// A deed from its name and what is given beside it, for the part with a code.
    ///
    /// # Errors
    /// Something that does not go with the deed; something that it needs and that is not given.
    pub fn read(code: &str, deed: PartDeed, given: Given) -> Result<Self, AppError> {
        let invalid = |fault: DeedFault| Err(AppError::invalid(fault));
        if let Some(field) = given.beside(deed) {
            return invalid(DeedFault::NotOfDeed { field: field.to_owned(), deed });
        }
        let Given { job, slot, mass_typed, off_the_tip_mm, clean, place, lose_plan, reason, figures } = given;
        let mass_typed = mass_typed.filter(|typed| !typed.trim().is_empty());
        let note = Note { place, reason: reason.trim().to_owned() };
        let length_mm = figures.length_mm;
        let code = || code.to_owned();
        Ok(match deed {
            PartDeed::Reserve => {
                let (Some(job), Some(slot)) = (job, slot) else { return invalid(DeedFault::NoClub) };
                Self::Reserve { job, slot }
            }
            PartDeed::Return => Self::Return { lose_plan, note },
            PartDeed::Use | PartDeed::Scrap => {
                crate::need::need_reason(&note.reason)?;
                if deed == PartDeed::Use { Self::Use { note } } else { Self::Scrap { lose_plan, note } }
            }
            PartDeed::Restore => Self::Restore { mass_typed, note },
            PartDeed::Correct => Self::Correct { mass_typed, figures, note },
            PartDeed::Pull => {
                let pulled = match (clean, mass_typed) {
                    (true, Some(mass_typed)) => Pulled::Clean { mass_typed },
                    (true, None) => return invalid(DeedFault::NoMass { code: code() }),
                    (false, mass_typed) => Pulled::AsItIs { mass_typed },
                };
                Self::Pull { pulled, length_mm, lose_plan, note }
            }
            PartDeed::Miscut => {
                let Some(length_mm) = length_mm else { return invalid(DeedFault::NoLength { code: code() }) };
                let Some(mass_typed) = mass_typed else { return invalid(DeedFault::NoWeight { code: code() }) };
                let off_the_tip_mm = off_the_tip_mm.unwrap_or(0.0);
                Self::Miscut { length_mm, off_the_tip_mm, mass_typed, lose_plan, note }
            }
        })
    }
}

impl AskedAction {
    /// The action that a document asks for.
    ///
    /// # Errors
    /// As [`Deed::read`].
    pub fn read(self, code: &str) -> Result<PartAction, AppError> {
        let mut figures = PartFigures::default();
        for (key, value) in self.given_figures() {
            figures.set_figure(key, Some(value));
        }
        let Self { deed, version, job, slot, mass_typed, off_the_tip_mm, clean, place, lose_plan, reason, by, .. } =
            self;
        let given = Given { job, slot, mass_typed, off_the_tip_mm, clean, place, lose_plan, reason, figures };
        Ok(PartAction { deed: Deed::read(code, deed, given)?, version, by })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::{Value, json};

    fn read(document: Value) -> Result<Deed, String> {
        let asked: AskedAction = serde_json::from_value(document).map_err(|e| e.to_string())?;
        asked.read("H7-03").map(|action| action.deed).map_err(|e| e.refusal().fact().code().to_owned())
    }

    /// Documents as clients of earlier versions send them.
    #[test]
    fn documents_of_earlier_versions_are_read() {
        let note = |reason: &str| Note { place: None, reason: reason.into() };
        let read = |document| read(document).expect("read");
        assert_eq!(
            read(json!({ "deed": "reserve", "job": 1, "slot": 4, "by": "Ada" })),
            Deed::Reserve { job: 1, slot: 4 }
        );
        assert_eq!(
            read(json!({ "deed": "return", "place": "shelf 2", "by": "Bo" })),
            Deed::Return { lose_plan: false, note: Note { place: Some("shelf 2".into()), reason: String::new() } }
        );
        assert_eq!(
            read(json!({ "deed": "scrap", "reason": "dented", "lose_plan": true, "by": "Ada" })),
            Deed::Scrap { lose_plan: true, note: note("dented") }
        );
        assert_eq!(
            read(json!({ "deed": "correct", "cpm": 266.0, "reason": "clamped again", "version": 3, "by": "Ada" })),
            Deed::Correct {
                mass_typed: None,
                figures: PartFigures { cpm: Some(266.0), ..PartFigures::default() },
                note: note("clamped again")
            }
        );
        assert_eq!(
            read(json!({ "deed": "pull", "clean": true, "mass_typed": "103.4", "length_mm": null, "by": "Ada" })),
            Deed::Pull {
                pulled: Pulled::Clean { mass_typed: "103.4".into() },
                length_mm: None,
                lose_plan: false,
                note: note("")
            }
        );
        assert_eq!(
            read(
                json!({ "deed": "miscut", "length_mm": 900.0, "mass_typed": "104.0", "reason": "slipped", "by": "Ada" })
            ),
            Deed::Miscut {
                length_mm: 900.0,
                off_the_tip_mm: 0.0,
                mass_typed: "104.0".into(),
                lose_plan: false,
                note: note("slipped")
            }
        );
    }

    /// Each deed with each field: what does not go with it is refused, and nothing that does.
    #[test]
    fn a_field_that_does_not_go_with_its_deed_is_refused_by_name() {
        let fields = [
            ("job", json!(1)),
            ("slot", json!(2)),
            ("mass_typed", json!("100 g")),
            ("off_the_tip_mm", json!(3.0)),
            ("clean", json!(true)),
            ("place", json!("shelf 2")),
            ("lose_plan", json!(true)),
            ("cpm", json!(260.0)),
        ];
        for deed in PartDeed::ALL {
            for (field, value) in &fields {
                let mut document = json!({ "deed": deed.key(), "by": "Ada" });
                document[*field] = value.clone();
                let goes = goes_with(*deed).contains(field) || (*field == "cpm" && *deed == PartDeed::Correct);
                let refused = read(document).is_err_and(|code| code == "deed_fault.not_of_deed");
                assert_eq!(refused, !goes, "{deed:?} with {field}");
            }
        }
    }

    #[test]
    fn what_a_deed_needs_must_be_given() {
        for (document, code) in [
            (json!({ "deed": "reserve", "job": 1, "by": "Ada" }), "deed_fault.no_club"),
            (json!({ "deed": "use", "by": "Ada" }), "need_fault.no_reason"),
            (json!({ "deed": "scrap", "reason": " ", "by": "Ada" }), "need_fault.no_reason"),
            (json!({ "deed": "pull", "clean": true, "by": "Ada" }), "deed_fault.no_mass"),
            (json!({ "deed": "miscut", "mass_typed": "104", "by": "Ada" }), "deed_fault.no_length"),
            (json!({ "deed": "miscut", "length_mm": 900.0, "by": "Ada" }), "deed_fault.no_weight"),
        ] {
            assert_eq!(read(document.clone()).expect_err("refused"), code, "{document}");
        }
    }
}
