//! Models and parts: look up, add, change, import, export.

use crate::lanes::Lane;
use crate::look_up::LookUp;
use crate::{App, AppError, load_library};
use desk::stock_file::ModelFileFault;
use desk::stock_file::{self, BadModel, BadRow, RowWarning};
use fact::Refusal;
use serde::{Deserialize, Serialize};
use store::{LifeNote, PartFilter, Tx};
use trade::because;
use trade::error::Noun;
use trade::event_kind::EventKind;
use trade::life::{FigureChange, LifeStep, differences};
use trade::model::{Model, PartKind};
use trade::part::named_fields::{with_part_figures, with_part_filters};
use trade::part::{Part, PartState};
use utoipa::ToSchema;

/// Most bytes of a file to import: some 100,000 parts.
pub const IMPORT_MAX_BYTES: usize = 8 * 1024 * 1024;

with_part_filters! {
    /// Which parts to list.
    #[derive(Debug, Clone, Default, Deserialize, ToSchema, utoipa::IntoParams)]
    #[into_params(parameter_in = Query)]
    #[serde(deny_unknown_fields, default)]
    pub struct PartQuery {
        /// All but those in this state.
        pub without: Option<PartState>,
        /// Text in code, lot or place.
        pub text: Option<String>,
        /// How many parts at most.
        pub limit: Option<i64>,
        /// How many parts to leave out at the beginning.
        pub offset: Option<i64>,
    }
}

impl PartQuery {
    fn filter(&self) -> PartFilter {
        PartFilter {
            fields: self.wanted_fields(),
            without: self.without,
            text: self.text.as_ref().map(|text| text.trim().to_owned()).filter(|text| !text.is_empty()),
            limit: self.limit,
            offset: self.offset.unwrap_or(0),
            ..PartFilter::default()
        }
    }
}

with_part_figures! {
    /// A part to add.
    #[derive(Debug, Clone, Deserialize, ToSchema)]
    #[serde(deny_unknown_fields)]
    pub struct NewPart {
        /// Code on the label.
        #[schema(min_length = 1, max_length = 64, pattern = r"\S")]
        pub code: String,
        /// What sort of part it is: head, shaft, grip … Its model must be of the same kind.
        pub kind: PartKind,
        /// Code of the model.
        pub model: String,
        /// Number of a head or taper blank.
        #[serde(default)]
        pub number: Option<String>,
        /// What the shop's scale shows for it; left out: `mass_typed` is read.
        #[serde(default)]
        pub mass_g: Option<f64>,
        /// The mass as typed, in workshop notation; used where `mass_g` is left out.
        #[serde(default)]
        pub mass_typed: String,
        /// How many, for counted bulk.
        #[serde(default)]
        #[schema(minimum = 0, maximum = 1000000)]
        pub count: Option<i64>,
        /// The maker's lot or serial; empty where none is noted.
        #[serde(default)]
        pub lot: String,
        /// Where the part lies in the shop; empty where that is not noted.
        #[serde(default)]
        pub place: String,
        /// Number of the customer whose it is; left out: the shop's.
        #[serde(default)]
        pub owner: Option<i64>,
        /// State; left out: free.
        #[serde(default)]
        pub state: Option<PartState>,
    }
}

with_part_figures! {
    /// A change of a part by hand. Fields left out stay.
    #[derive(Debug, Clone, Default, Deserialize, ToSchema)]
    #[serde(deny_unknown_fields)]
    pub struct PartChange {
        /// Version that was looked at.
        pub version: i64,
        /// Mass as typed, in workshop notation.
        #[serde(default)]
        pub mass_typed: Option<String>,
        /// State: ordered, free, pulled or rejected; held and used come from jobs.
        #[serde(default)]
        pub state: Option<PartState>,
        /// Where the part lies in the shop.
        #[serde(default)]
        pub place: Option<String>,
        /// The maker's lot or serial.
        #[serde(default)]
        pub lot: Option<String>,
        /// Whose it is: the code or number of a customer, or `shop`.
        #[serde(default)]
        pub owner: Option<String>,
        /// Count of a bulk.
        #[serde(default)]
        #[schema(minimum = 0, maximum = 1000000)]
        pub count: Option<i64>,
        /// Why.
        #[serde(default)]
        pub reason: String,
        /// Who.
        pub by: String,
    }
}

/// What an import of parts kept and refused.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct PartsImported {
    /// Parts kept.
    pub kept: i64,
    /// Doubts about kept rows.
    pub warnings: Vec<RowWarning>,
    /// Headings of columns that were not used.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub unused: Vec<String>,
    /// Refused rows.
    pub bad: Vec<BadRow>,
    /// The refused rows as a CSV file to mend and import again; empty where none was refused.
    pub bad_csv: String,
}

/// What an import of models kept and refused.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct ModelsKept {
    /// Codes of the models kept.
    pub kept: Vec<String>,
    /// Refused entries.
    pub bad: Vec<BadModel>,
}

impl App {
    /// Models, of one kind or all, by code.
    ///
    /// # Errors
    /// What the store says.
    pub async fn models(&self, kind: Option<PartKind>) -> Result<Vec<Model>, AppError> {
        let mut tx = self.store.read().await?;
        Ok(tx.models(kind).await?)
    }

    /// One model.
    ///
    /// # Errors
    /// No such model; what the store says.
    pub async fn model(&self, code: &str) -> Result<Model, AppError> {
        let mut tx = self.store.read().await?;
        tx.model(code).await?.ok_or_else(|| AppError::not_found(Noun::Model, code, &LookUp::Models))
    }

    /// Adds a model or replaces the one with its code.
    ///
    /// # Errors
    /// Impossible figures; another kind under the same code; what the store says.
    pub async fn put_model(&self, model: &Model) -> Result<(), AppError> {
        model.check()?;
        let mut tx = self.store.write().await?;
        if let Some(other) = tx.model(model.code()).await?
            && other.kind() != model.kind()
        {
            return Err(AppError::conflict(StockFault::ModelCodeTaken {
                code: model.code().to_owned(),
                kind: other.kind(),
            }));
        }
        tx.put_model(model, self.now()).await?;
        tx.commit().await?;
        self.tell(None, "stock");
        Ok(())
    }

    /// Takes a model away that nothing uses.
    ///
    /// # Errors
    /// Parts or sheets that use it; no such model; what the store says.
    pub async fn remove_model(&self, code: &str) -> Result<(), AppError> {
        let mut tx = self.store.write().await?;
        tx.remove_model(code).await?;
        tx.commit().await?;
        self.tell(None, "stock");
        Ok(())
    }

    /// Imports a JSON file of models: the good ones are kept, the others named.
    ///
    /// # Errors
    /// A file that is no list of models; what the store says.
    pub async fn import_models(&self, json: &str) -> Result<ModelsKept, AppError> {
        let read = self.on_lane(Lane::Desk, || stock_file::read_models(json)).await.map_err(|e| unreadable(&e))?;
        let mut tx = self.store.write().await?;
        let mut kept = Vec::new();
        let mut bad = read.bad;
        for (entry, model) in (1..).zip(&read.good) {
            match tx.model(model.code()).await? {
                Some(other) if other.kind() != model.kind() => bad.push(BadModel {
                    entry,
                    code: model.code().to_owned(),
                    problem: ModelFileFault::CodeOfOther { kind: other.kind() }.into(),
                }),
                _ => {
                    tx.put_model(model, self.now()).await?;
                    kept.push(model.code().to_owned());
                }
            }
        }
        tx.commit().await?;
        self.tell(None, "stock");
        Ok(ModelsKept { kept, bad })
    }

    /// All models as a JSON file.
    ///
    /// # Errors
    /// What the store says.
    pub async fn export_models(&self) -> Result<String, AppError> {
        let models = self.models(None).await?;
        stock_file::write_models(&models)
            .map_err(|e| AppError::invalid(StockFault::ModelsUnwritable { log: e.to_string() }))
    }

    /// Parts, in the order in which they came in, and how many there are in all.
    ///
    /// # Errors
    /// What the store says.
    pub async fn parts(&self, query: &PartQuery) -> Result<(Vec<Part>, i64), AppError> {
        let mut tx = self.store.read().await?;
        let filter = query.filter();
        Ok((tx.parts(&filter).await?, tx.count_parts(&filter).await?))
    }

    /// How many parts of each kind there are.
    ///
    /// # Errors
    /// What the store says.
    pub async fn count_kinds(&self, query: &PartQuery) -> Result<Vec<(PartKind, i64)>, AppError> {
        let mut tx = self.store.read().await?;
        Ok(tx.count_kinds(&query.filter()).await?)
    }

    /// One part by its code.
    ///
    /// # Errors
    /// No such part; what the store says.
    pub async fn part(&self, code: &str) -> Result<Part, AppError> {
        let mut tx = self.store.read().await?;
        tx.part_by_code(code.trim()).await?.ok_or_else(|| AppError::not_found(Noun::Part, code, &LookUp::OnLabel))
    }

    /// Adds parts, all or none.
    ///
    /// # Errors
    /// Impossible figures, an unknown model or number, a code that is taken; what the store says.
    pub async fn add_parts(&self, new: &[NewPart]) -> Result<Vec<Part>, AppError> {
        let mut tx = self.store.write().await?;
        let library = load_library(&mut tx).await?;
        let now = self.now();
        let mut added = Vec::with_capacity(new.len());
        for (index, part) in new.iter().enumerate() {
            let of_entry = |error: AppError| error.of_entry(index, new.len());
            let part = made(part).map_err(of_entry)?;
            check_model(&library, &part).map_err(of_entry)?;
            tx.insert_part(&part, now).await.map_err(|error| of_entry(error.into()))?;
            added.push(part);
        }
        tx.commit().await?;
        self.tell(None, "stock");
        Ok(added)
    }

    /// Changes a part by hand.
    ///
    /// # Errors
    /// A part that changed in between, or that a job holds; impossible figures; what the store says.
    pub async fn change_part(&self, code: &str, change: &PartChange) -> Result<Part, AppError> {
        let mut tx = self.store.write().await?.signed(&change.by);
        let mut part = tx
            .part_by_code(code.trim())
            .await?
            .ok_or_else(|| AppError::not_found(Noun::Part, code, &LookUp::OnLabel))?;
        let before = part.clone();
        if let Some(state) = change.state.filter(|s| *s != part.state) {
            let by_hand = |s| !matches!(s, PartState::Held | PartState::Used);
            if !by_hand(state) || !by_hand(part.state) {
                return Err(AppError::conflict(StockFault::NotByHand {
                    code: code.to_owned(),
                    state: part.state,
                    to: state,
                }));
            }
            part.state = state;
        }
        if let Some(typed) = &change.mass_typed {
            part.mass_g = mass_of(typed)?;
            part.mass_typed = typed.trim().to_owned();
        }
        if let Some(place) = &change.place {
            part.place.clone_from(place);
        }
        if let Some(lot) = &change.lot {
            part.lot.clone_from(lot);
        }
        if let Some(owner) = &change.owner {
            part.owner = owner_of(owner)?;
        }
        part.count = change.count.or(part.count);
        change.put_figures(&mut part);
        part.version = change.version;
        part.check()?;
        tx.update_part(&part, self.now()).await?;
        self.note_change(&mut tx, &before, &part, &change.reason).await?;
        part.version += 1;
        let note = serde_json::json!({ "code": part.code, "reason": change.reason, "state": part.state.key() });
        self.log(&mut tx, None, None, EventKind::PartChanged, &change.by, note).await?;
        tx.commit().await?;
        self.tell(None, "stock");
        Ok(part)
    }

    /// What a change by hand is in the life of a part; a plan that counts with it follows.
    pub(crate) async fn note_change(
        &self,
        tx: &mut Tx,
        before: &Part,
        after: &Part,
        reason: &str,
    ) -> Result<(), AppError> {
        let figures = differences(before, after);
        let counted = |f: &FigureChange| f.field == "count";
        let step = match (before.state, after.state) {
            (from, to) if from == to && figures.iter().any(|f| !counted(f)) => LifeStep::Corrected,
            (from, to) if from == to => LifeStep::Changed,
            (_, PartState::Rejected) => LifeStep::Scrapped,
            (_, PartState::Pulled) => LifeStep::Pulled,
            (_, PartState::Free) => LifeStep::Restored,
            _ => LifeStep::Changed,
        };
        let reason = because::typed(reason);
        let note =
            LifeNote { part: &after.id, step, job: None, club: None, figures: &figures, reason: reason.as_ref() };
        tx.append_life(note, self.now()).await?;
        if figures.iter().any(|f| !counted(f)) { self.plan_follows(tx, after).await } else { Ok(()) }
    }

    /// The parts as a CSV file that can be imported again.
    ///
    /// # Errors
    /// What the store says.
    pub async fn export_parts(&self, query: &PartQuery) -> Result<String, AppError> {
        let (parts, _) = self.parts(&PartQuery { limit: None, offset: None, ..query.clone() }).await?;
        Ok(stock_file::write(&parts))
    }
}

pub(crate) fn unreadable(error: &stock_file::StockFileError) -> AppError {
    AppError::Invalid(Refusal::new(error))
}

pub(crate) fn mass_of(typed: &str) -> Result<Option<f64>, AppError> {
    if typed.trim().is_empty() {
        return Ok(None);
    }
    Ok(Some(quantity::parse_mass(typed, quantity::MassUnit::Gram)?.g()))
}

/// Whose a part is, as it was typed: a customer's code or number; empty or `shop`: the shop's.
pub(crate) fn owner_of(typed: &str) -> Result<Option<i64>, AppError> {
    let typed = typed.trim();
    if typed.is_empty() || typed.eq_ignore_ascii_case("shop") {
        return Ok(None);
    }
    let number = trade::customer::number_of(typed).or_else(|| typed.parse().ok());
    let missing = || AppError::not_found(Noun::Customer, typed, &LookUp::Customers);
    number.map(Some).ok_or_else(missing)
}

fn made(new: &NewPart) -> Result<Part, AppError> {
    let mut part = Part {
        id: crate::new_id().as_str().into(),
        number: new.number.as_ref().map(|n| n.trim().to_owned()).filter(|n| !n.is_empty()),
        mass_g: match new.mass_g {
            Some(mass_g) => Some(mass_g),
            None => mass_of(&new.mass_typed)?,
        },
        mass_typed: if new.mass_typed.trim().is_empty() {
            new.mass_g.map(|g| g.to_string()).unwrap_or_default()
        } else {
            new.mass_typed.trim().to_owned()
        },
        count: new.count,
        lot: new.lot.trim().to_owned(),
        place: new.place.trim().to_owned(),
        owner: new.owner,
        state: new.state.unwrap_or(PartState::Free),
        ..Part::new(new.code.trim(), new.kind, new.model.trim())
    };
    new.put_figures(&mut part);
    if part.code.is_empty() || part.code.len() > 64 {
        return Err(AppError::invalid(StockFault::BadCode { code: part.code.clone() }));
    }
    if matches!(part.state, PartState::Held | PartState::Used) {
        return Err(AppError::invalid(StockFault::NotAddedAs { code: part.code.clone(), state: part.state }));
    }
    part.check()?;
    Ok(part)
}

fn check_model(library: &trade::model::Library, part: &Part) -> Result<(), AppError> {
    let model = library
        .get(&part.model)
        .filter(|m| m.kind() == part.kind)
        .ok_or_else(|| AppError::not_found(Noun::Model, part.model.clone(), &LookUp::AddModelOf { kind: part.kind }))?;
    if let Model::Head(_) = model {
        library.head_number(&part.model, part.number.as_deref().unwrap_or_default())?;
    }
    Ok(())
}

fact::facts! {
    /// What is refused of models and parts in stock.
    pub(crate) enum StockFault: "stock_fault" {
        ModelCodeTaken { code: String, kind: PartKind },
        ModelsUnwritable { log: String },
        NotByHand { code: String, state: PartState, to: PartState },
        BadCode { code: String },
        NotAddedAs { code: String, state: PartState },
    }
}
