//! Parts: weighed pieces and counted bulk.

use crate::column::{Columns, Query, Row, document, finite, key, query, time_text};
use crate::error::StoreError;
use crate::error::Stored;
use crate::tx::Tx;
use jiff::Timestamp;
use sqlx::AssertSqlSafe;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;
use trade::customer::number_of;
use trade::error::Noun;
use trade::id::{ClubId, JobId, PartId};
use trade::model::PartKind;
use trade::part::named_fields::Wanted;
use trade::part::{Part, PartState};
use trade::part_field::{self, Field};
use trade::stiffness_profile::ShaftProfile;

/// Which parts are asked for. What is left out does not matter; all that is given must hold.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct PartFilter {
    /// What they are.
    pub kind: Option<PartKind>,
    /// Code of their model.
    pub model: Option<String>,
    /// Number of the head or taper blank; capitals do not matter.
    pub number: Option<String>,
    /// Where they are in their life.
    pub state: Option<PartState>,
    /// All but those that are here in their life.
    pub without: Option<PartState>,
    /// Words of which each occurs in code, model, number, lot or place; capitals do not matter.
    pub text: Option<String>,
    /// The job that holds or used them.
    pub job: Option<JobId>,
    /// The customer whose they are.
    pub owner: Option<i64>,
    /// Fields with what they must be. A figure that the store has no column for is left aside.
    pub fields: Vec<(&'static Field, Wanted)>,
    /// At most so many; all when left out.
    pub limit: Option<i64>,
    /// So many are skipped first.
    pub offset: i64,
}

/// The figures of a part as they came in, by their keys. The SI columns beside are for other programs; a figure that was
/// converted there and back could differ in its last digit.
type Given = BTreeMap<String, f64>;

const COLUMNS: &str = "id, code, kind, model, number, mass_typed, count, given, lot, place, owner, state, job, club, version,
     CASE WHEN kind = 'shaft' THEN
         (SELECT body FROM shaft_profile WHERE shaft_profile.part = part.id ORDER BY shaft_profile.seq DESC LIMIT 1) END AS profile";

impl Tx {
    /// Saves a new part, with the version that it carries.
    ///
    /// # Errors
    /// [`StoreError::CodeTaken`] when its code (capitals do not matter) or identity is there already,
    /// [`StoreError::Missing`] when its model, job or club is not, [`StoreError::NotStorable`] for a figure that is no
    /// number.
    pub async fn insert_part(&mut self, part: &Part, now: Timestamp) -> Result<(), StoreError> {
        self.check_part(part).await?;
        if self.any(query("SELECT 1 FROM part WHERE id = $1").bind(part.id.0.clone())).await? {
            return Err(StoreError::CodeTaken { code: part.id.0.clone() });
        }
        let seq = self.next(query("SELECT COALESCE(MAX(seq), 0) + 1 FROM part")).await?;
        let insert = query(AssertSqlSafe(format!("INSERT INTO part ({}) VALUES {}", inserted(), row_of_places(0))));
        let insert = bind_part(insert, part, now)?.bind(part.id.0.clone()).bind(part.version).bind(seq);
        self.change(insert).await?;
        self.write_came_in(std::slice::from_ref(part), now).await
    }

    /// Saves many new parts that no job holds, as a list brings them; their codes are looked up by the dozen.
    ///
    /// # Errors
    /// As [`Self::insert_part`], at the first part that cannot be saved; [`StoreError::NotStorable`] for one that a job
    /// holds.
    pub async fn insert_parts(&mut self, parts: &[Part], now: Timestamp) -> Result<(), StoreError> {
        /// Values that every SQLite takes in one statement.
        const VALUES: usize = 999;
        let mut models = BTreeSet::new();
        for part in parts {
            let refused = |problem: &str| StoreError::NotStorable {
                what: format!("the part {}", part.code),
                problem: problem.to_owned(),
            };
            if part.state == PartState::Held || part.job.is_some() || part.club.is_some() {
                return Err(refused("a list cannot bring parts that a job holds"));
            }
            if part.count.is_some_and(|count| count < 0) {
                return Err(refused("its count is below zero"));
            }
            self.owner_must_be_there(part).await?;
            if models.insert(part.model.as_str()) {
                self.model_code(&part.model).await?;
            }
        }
        let mut seq = self.next(query("SELECT COALESCE(MAX(seq), 0) + 1 FROM part")).await?;
        for some in parts.chunks(VALUES / width()) {
            self.none_taken(some).await?;
            let mut sql = format!("INSERT INTO part ({}) VALUES ", inserted());
            for i in 0..some.len() {
                sql.push_str(if i == 0 { "" } else { ", " });
                sql.push_str(&row_of_places(i * width()));
            }
            let mut insert = query(AssertSqlSafe(sql));
            for part in some {
                insert = bind_part(insert, part, now)?.bind(part.id.0.clone()).bind(part.version).bind(seq);
                seq += 1;
            }
            self.change(insert).await?;
            self.write_came_in(some, now).await?;
        }
        Ok(())
    }

    /// The codes of all parts there ever were: none is used twice.
    ///
    /// # Errors
    /// The database failed.
    pub async fn part_codes(&mut self) -> Result<Vec<String>, StoreError> {
        let rows = self.rows(query("SELECT code FROM part ORDER BY seq")).await?;
        rows.iter().map(|row| row.text("code")).collect()
    }

    /// Refuses parts whose code or identity is in the store already, or twice among them.
    async fn none_taken(&mut self, parts: &[Part]) -> Result<(), StoreError> {
        let places = |from: usize| (from..from + parts.len()).map(|i| format!("${i}")).collect::<Vec<_>>().join(", ");
        let sql =
            format!("SELECT code FROM part WHERE code_key IN ({}) OR id IN ({})", places(1), places(1 + parts.len()));
        let codes = parts.iter().map(|p| key(&p.code));
        let mut asked = query(AssertSqlSafe(sql));
        for value in codes.clone().chain(parts.iter().map(|p| p.id.0.clone())) {
            asked = asked.bind(value);
        }
        if let Some(row) = self.row(asked).await? {
            return Err(StoreError::CodeTaken { code: row.text("code")? });
        }
        let mut seen = BTreeSet::new();
        match parts.iter().find(|p| !seen.insert(key(&p.code))) {
            Some(twice) => Err(StoreError::CodeTaken { code: twice.code.clone() }),
            None => Ok(()),
        }
    }

    /// Saves a changed part over the version that it was loaded at. Returns the new version.
    ///
    /// # Errors
    /// [`StoreError::Stale`] when another change came first; [`StoreError::Missing`]; [`StoreError::CodeTaken`];
    /// [`StoreError::NotStorable`].
    pub async fn update_part(&mut self, part: &Part, now: Timestamp) -> Result<i64, StoreError> {
        let saved = query("SELECT version FROM part WHERE id = $1").bind(part.id.0.clone());
        let Some(saved) = self.row(saved).await? else {
            return Err(StoreError::Missing { what: Noun::Part, name: part.code.clone() });
        };
        let saved_version = saved.whole("version")?;
        if saved_version != part.version {
            return Err(StoreError::Stale { what: Stored::Part { code: part.code.clone() }, saved_version });
        }
        self.check_part(part).await?;
        let set: Vec<String> = written().zip(1..).map(|(column, place)| format!("{column} = ${place}")).collect();
        let after = set.len();
        let update = query(AssertSqlSafe(format!(
            "UPDATE part SET {}, version = version + 1 WHERE id = ${} AND version = ${}",
            set.join(", "),
            after + 1,
            after + 2
        )));
        self.change(bind_part(update, part, now)?.bind(part.id.0.clone()).bind(part.version)).await?;
        Ok(part.version + 1)
    }

    /// The part with this identity.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn part(&mut self, id: &PartId) -> Result<Option<Part>, StoreError> {
        let sql = format!("SELECT {COLUMNS} FROM part WHERE id = $1");
        let row = self.row(query(AssertSqlSafe(sql)).bind(id.0.clone())).await?;
        row.as_ref().map(part_of).transpose()
    }

    /// The part with this code. Capitals do not matter.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn part_by_code(&mut self, code: &str) -> Result<Option<Part>, StoreError> {
        let sql = format!("SELECT {COLUMNS} FROM part WHERE code_key = $1");
        let row = self.row(query(AssertSqlSafe(sql)).bind(key(code))).await?;
        row.as_ref().map(part_of).transpose()
    }

    /// The parts that a filter asks for, in the order in which they came into the store.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn parts(&mut self, filter: &PartFilter) -> Result<Vec<Part>, StoreError> {
        let mut chosen = Chosen::by(filter);
        let limit = chosen.value(Value::Whole(filter.limit.unwrap_or(i64::MAX).max(0)));
        let offset = chosen.value(Value::Whole(filter.offset.max(0)));
        let sql = format!("SELECT {COLUMNS} FROM part{} ORDER BY seq LIMIT {limit} OFFSET {offset}", chosen.clause());
        let rows = self.rows(chosen.bind(sql)).await?;
        rows.iter().map(part_of).collect()
    }

    /// All parts in a state, in the order in which they came into the store. Read again only where the stock has changed
    /// since they were read last; meant for states that few parts are in, free or held.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn parts_in(&mut self, state: PartState) -> Result<Arc<Vec<Part>>, StoreError> {
        let count = self.number(query("SELECT number FROM stock_change WHERE id = 1")).await?;
        let remembered = self.remembered();
        if !self.writing()
            && let Some(parts) = remembered.parts.at(state, count)
        {
            return Ok(parts);
        }
        let filter = PartFilter { state: Some(state), ..PartFilter::default() };
        let parts = Arc::new(self.parts(&filter).await?);
        if !self.writing() {
            remembered.parts.keep(state, count, &parts);
        }
        Ok(parts)
    }

    /// How many parts of each kind a filter asks for, its limit and offset left aside.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn count_kinds(&mut self, filter: &PartFilter) -> Result<Vec<(PartKind, i64)>, StoreError> {
        let chosen = Chosen::by(filter);
        let sql = format!("SELECT kind, COUNT(*) AS pieces FROM part{} GROUP BY kind", chosen.clause());
        let rows = self.rows(chosen.bind(sql)).await?;
        rows.iter().map(|row| Ok((row.word("kind", PartKind::from_key)?, row.whole("pieces")?))).collect()
    }

    /// How many parts a filter asks for, its limit and offset left aside.
    ///
    /// # Errors
    /// The database failed.
    pub async fn count_parts(&mut self, filter: &PartFilter) -> Result<i64, StoreError> {
        let chosen = Chosen::by(filter);
        let sql = format!("SELECT COUNT(*) FROM part{}", chosen.clause());
        self.number(chosen.bind(sql)).await
    }

    /// Refuses a part of a customer who is not there.
    async fn owner_must_be_there(&mut self, part: &Part) -> Result<(), StoreError> {
        let Some(owner) = part.owner else { return Ok(()) };
        match self.customer(owner).await? {
            Some(row) if row.deleted_at.is_none() || part.version > 0 => Ok(()),
            _ => Err(StoreError::Missing { what: Noun::Customer, name: trade::customer::code(owner) }),
        }
    }

    /// Refuses a customer's part in a club of somebody else.
    pub(crate) async fn must_be_of_its_customer(
        &mut self,
        owner: Option<i64>,
        code: &str,
        job: &JobId,
    ) -> Result<(), StoreError> {
        let Some(owner) = owner else { return Ok(()) };
        let theirs = query("SELECT 1 FROM job WHERE id = $1 AND customer = $2");
        if self.any(theirs.bind(job.0.clone()).bind(owner)).await? {
            return Ok(());
        }
        Err(StoreError::PartOfCustomer { code: code.to_owned(), owner: trade::customer::code(owner) })
    }

    /// What must hold of a part before it is written.
    async fn check_part(&mut self, part: &Part) -> Result<(), StoreError> {
        let refused = |problem: &str| StoreError::NotStorable {
            what: format!("the part {}", part.code),
            problem: problem.to_owned(),
        };
        if part.count.is_some_and(|count| count < 0) {
            return Err(refused("its count is below zero"));
        }
        if part.state == PartState::Held && (part.job.is_none() || part.club.is_none()) {
            return Err(refused("it is held, but for no club"));
        }
        let other = query("SELECT 1 FROM part WHERE code_key = $1 AND id <> $2");
        if self.any(other.bind(key(&part.code)).bind(part.id.0.clone())).await? {
            return Err(StoreError::CodeTaken { code: part.code.clone() });
        }
        self.model_code(&part.model).await?;
        self.owner_must_be_there(part).await?;
        if let Some(job) = &part.job {
            self.job_must_exist(job).await?;
            self.must_be_of_its_customer(part.owner, &part.code, job).await?;
        }
        if let Some(club) = &part.club {
            self.job_of_club(club).await?;
        }
        Ok(())
    }
}

/// The columns that every change writes, in the order in which [`bind_part`] binds them.
fn written() -> impl Iterator<Item = &'static str> {
    const BEFORE: [&str; 7] = ["code", "code_key", "kind", "model", "number", "mass_typed", "count"];
    const AFTER: [&str; 9] = ["given", "lot", "place", "owner", "state", "job", "club", "search", "saved_at"];
    let figures = part_field::figures().filter_map(|(_, figure)| figure.si).map(|(name, _)| name);
    BEFORE.into_iter().chain(figures).chain(AFTER)
}

/// The same with those that only a new part gets.
fn written_new() -> impl Iterator<Item = &'static str> {
    written().chain(["id", "version", "seq"])
}

/// The columns of a new part, for a statement.
fn inserted() -> String {
    written_new().collect::<Vec<_>>().join(", ")
}

/// How many there are.
fn width() -> usize {
    written_new().count()
}

/// Placeholders for one new part, numbered from the one after `before`.
fn row_of_places(before: usize) -> String {
    format!("({})", (1..=width()).map(|i| format!("${}", before + i)).collect::<Vec<_>>().join(", "))
}

/// Binds the values of [`written`].
fn bind_part(statement: Query, part: &Part, now: Timestamp) -> Result<Query, StoreError> {
    let what = format!("the part {}", part.code);
    let mut given = Given::new();
    for (field, value) in part_field::figures().filter_map(|(field, f)| (f.get)(part).map(|value| (field, value))) {
        finite(&what, value)?;
        given.insert(field.key.to_owned(), value);
    }
    let number = part.number.as_deref().unwrap_or_default();
    let search = [part.code.as_str(), &part.model, number, &part.lot, &part.place].join("\n").to_lowercase();
    let mut bound = statement
        .bind(part.code.clone())
        .bind(key(&part.code))
        .bind(part.kind.key())
        .bind(part.model.clone())
        .bind(part.number.clone())
        .bind(part.mass_typed.clone())
        .bind(part.count);
    for (_, of) in part_field::figures() {
        if let Some((_, si)) = of.si {
            bound = bound.bind((of.get)(part).map(|value| si(value + 0.0)));
        }
    }
    Ok(bound
        .bind(document(&what, &given)?)
        .bind(part.lot.clone())
        .bind(part.place.clone())
        .bind(part.owner)
        .bind(part.state.key())
        .bind(part.job.as_ref().map(|id| id.0.clone()))
        .bind(part.club.as_ref().map(|id| id.0.clone()))
        .bind(search)
        .bind(time_text(now)))
}

fn part_of(row: &Row) -> Result<Part, StoreError> {
    let given: Given = row.body("given")?;
    let (code, model) = (row.text("code")?, row.text("model")?);
    let mut part = Part {
        id: PartId(row.text("id")?),
        number: row.maybe_text("number")?,
        mass_typed: row.text("mass_typed")?,
        profile: row.maybe_body("profile")?.filter(|profile: &ShaftProfile| !profile.readings.is_empty()),
        count: row.maybe_whole("count")?,
        lot: row.text("lot")?,
        place: row.text("place")?,
        owner: row.maybe_whole("owner")?,
        state: row.word("state", PartState::from_key)?,
        job: row.maybe_text("job")?.map(JobId),
        club: row.maybe_text("club")?.map(ClubId),
        version: row.whole("version")?,
        ..Part::new(&code, row.word("kind", PartKind::from_key)?, &model)
    };
    for (field, of) in part_field::figures() {
        (of.set)(&mut part, given.get(field.key).copied());
    }
    Ok(part)
}

enum Value {
    Text(String),
    Whole(i64),
    Real(f64),
}

/// The conditions of a filter with their values, numbered as they are added.
#[derive(Default)]
struct Chosen {
    conditions: Vec<String>,
    values: Vec<Value>,
}

impl Chosen {
    fn by(filter: &PartFilter) -> Self {
        let mut chosen = Self::default();
        let plain = [
            ("kind", filter.kind.map(|k| k.key().to_owned())),
            ("model", filter.model.clone()),
            ("state", filter.state.map(|s| s.key().to_owned())),
            ("job", filter.job.as_ref().map(|id| id.0.clone())),
        ];
        for (column, wanted) in plain {
            if let Some(wanted) = wanted {
                let place = chosen.value(Value::Text(wanted));
                chosen.conditions.push(format!("{column} = {place}"));
            }
        }
        if let Some(without) = filter.without {
            // The others named one by one, so that the index of states finds them among the many that were used.
            let others = PartState::ALL.iter().filter(|s| **s != without).map(|s| format!("'{}'", s.key()));
            chosen.conditions.push(format!("state IN ({})", others.collect::<Vec<_>>().join(", ")));
        }
        if let Some(number) = &filter.number {
            let place = chosen.value(Value::Text(number.clone()));
            chosen.conditions.push(format!("LOWER(number) = LOWER({place})"));
        }
        if let Some(owner) = filter.owner {
            let place = chosen.value(Value::Whole(owner));
            chosen.conditions.push(format!("owner = {place}"));
        }
        for (field, wanted) in &filter.fields {
            chosen.field(field, wanted);
        }
        for word in filter.text.iter().flat_map(|text| text.split_whitespace()) {
            let escaped = word.to_lowercase().replace('!', "!!").replace('%', "!%").replace('_', "!_");
            let place = chosen.value(Value::Text(format!("%{escaped}%")));
            chosen.conditions.push(format!("search LIKE {place} ESCAPE '!'"));
        }
        chosen
    }

    fn field(&mut self, field: &Field, wanted: &Wanted) {
        let column = field.key;
        if let ("owner", Wanted::Is(word)) = (column, wanted) {
            return self.owner(word);
        }
        let si = field.figure.as_ref().and_then(|figure| figure.si);
        let (condition, value) = match (wanted, si) {
            // What is written with the capitals of its model or of the list is found by the index.
            (Wanted::Is(word), _) if matches!(column, "kind" | "model" | "state") => {
                (format!("{column} ="), Value::Text(word.clone()))
            }
            (Wanted::Is(word), _) => (format!("LOWER({column}) ="), Value::Text(word.to_lowercase())),
            (Wanted::AtLeast(value), Some((column, to_si))) => (format!("{column} >="), Value::Real(to_si(*value))),
            (Wanted::AtMost(value), Some((column, to_si))) => (format!("{column} <="), Value::Real(to_si(*value))),
            (Wanted::AtLeast(_) | Wanted::AtMost(_), None) => return,
        };
        let place = self.value(value);
        self.conditions.push(format!("{condition} {place}"));
    }

    /// Whose the parts are: the shop's, or a customer's by code or number.
    fn owner(&mut self, word: &str) {
        let number = number_of(word).or_else(|| word.parse().ok());
        let condition = match number {
            Some(number) => {
                let place = self.value(Value::Whole(number));
                format!("owner = {place}")
            }
            None if word.eq_ignore_ascii_case("shop") => "owner IS NULL".to_owned(),
            None => "1 = 0".to_owned(),
        };
        self.conditions.push(condition);
    }

    /// Adds a value; returns its placeholder.
    fn value(&mut self, value: Value) -> String {
        self.values.push(value);
        format!("${}", self.values.len())
    }

    fn clause(&self) -> String {
        if self.conditions.is_empty() { String::new() } else { format!(" WHERE {}", self.conditions.join(" AND ")) }
    }

    /// The query with its values. The text holds only names of columns and numbered placeholders.
    fn bind(self, sql: String) -> Query {
        self.values.into_iter().fold(query(AssertSqlSafe(sql)), |bound, value| match value {
            Value::Text(text) => bound.bind(text),
            Value::Whole(number) => bound.bind(number),
            Value::Real(number) => bound.bind(number),
        })
    }
}
