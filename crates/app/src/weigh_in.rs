//! Weigh-in: one part after the other gets its mass, its code and its place in the stock.

use crate::look_up::LookUp;
use crate::stock::unreadable;
use crate::{App, AppError, load_library};
use desk::stock_file::{self, BadRow, CellFault};
use desk::weigh_in::{Judged, Spread, judge, spread};
use fact::Fact;
use serde::{Deserialize, Serialize};
use store::{LifeNote, PartFilter, Tx};
use trade::because::Because;
use trade::error::Noun;
use trade::event_kind::EventKind;
use trade::id::PartId;
use trade::life::LifeStep;
use trade::model::{Library, Model, PartKind};
use trade::part::named_fields::with_typed_part_figures;
use trade::part::{Part, PartState};
use trade::part_field::Field;
use utoipa::ToSchema;

/// Parts of a model that are looked at when the next one is judged: the last ones.
const LOOKED_AT: i64 = 600;
/// Longest code of a part.
const CODE_MAX: usize = 32;

with_typed_part_figures! {
    /// A part to weigh in, its figures as typed.
    #[derive(Debug, Clone, Default, Deserialize, ToSchema)]
    #[serde(deny_unknown_fields, default)]
    pub struct WeighIn {
        /// Code of the model.
        pub model: String,
        /// Number of a head or taper blank.
        pub number: String,
        /// Code on the label; empty: the next one of this model and number.
        pub code: String,
        /// The code is only a proposal: where it is taken by now, the next free one is given.
        pub code_proposed: bool,
        /// Mass in workshop notation, grams where no unit stands.
        pub mass: String,
        /// How many, for a box that is counted and weighed at use.
        pub count: String,
        /// The maker's lot or serial; empty where none is noted.
        pub lot: String,
        /// Where the part is put away in the shop; empty where that is not noted.
        pub place: String,
        /// Whose it is: the code or number of a customer; empty: the shop's.
        pub owner: String,
        /// The mass that was questioned, as it was typed: it is right and is kept.
        pub sure: String,
        /// A key of the sender's own: the same one again keeps nothing twice.
        #[schema(max_length = 64, pattern = "^[A-Za-z0-9-]*$")]
        pub request_key: String,
        /// Who.
        pub by: String,
    }
}

/// What became of a part that was weighed in.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum WeighedIn {
    /// It is in the stock.
    Kept(Box<WeighedPart>),
    /// Its mass is questioned; nothing is kept until it is sent again with `sure`.
    Questioned(Box<Judged>),
    /// A figure cannot be used.
    Refused(Box<BadRow>),
}

/// A part that was weighed in.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct WeighedPart {
    /// The part as it was kept.
    pub part: Part,
    /// What its mass says.
    pub judged: Judged,
    /// Code of the next one.
    pub next_code: String,
    /// It had been sent before; nothing was kept twice.
    pub repeated: bool,
}

/// A mass to judge, kept nowhere.
#[derive(Debug, Clone, Default, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
pub struct ToJudge {
    /// Code of the model.
    pub model: String,
    /// Number of a head or taper blank.
    pub number: Option<String>,
    /// What the shop's scale shows for it, grams; left out: `mass` is read.
    pub mass_g: Option<f64>,
    /// Mass in workshop notation; used where `mass_g` is left out.
    pub mass: String,
    /// Loft of a head as received.
    pub loft_deg: Option<f64>,
    /// Lie of a head as received.
    pub lie_deg: Option<f64>,
}

/// A weigh-in that is taken back.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct TakeBackPart {
    /// Code of the part.
    pub code: String,
    /// Its identity, so that another part that got the code since is not meant.
    pub id: String,
    /// Who.
    #[serde(default)]
    pub by: String,
}

/// What a weigh-in page shows of one model and number.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct WeighView {
    /// What they weigh.
    pub spread: Option<Spread>,
    /// The numbers beside it with what they weigh, as far as there are any.
    pub beside: Vec<(String, f64)>,
    /// The last parts that came in, the newest first.
    pub last: Vec<Part>,
    /// How many of this model and number are in the books.
    pub count: i64,
    /// Code of the next one.
    pub next_code: String,
}

impl App {
    /// Weighs a part in: refuses what cannot be, asks where the mass speaks for something else, keeps the rest.
    ///
    /// # Errors
    /// No such model; a code that is taken; what the store says. A figure that cannot be used and a mass in question
    /// are answers and no errors.
    pub async fn weigh_in(&self, new: &WeighIn) -> Result<WeighedIn, AppError> {
        let mut tx = self.store.write().await?.signed(&new.by);
        let library = load_library(&mut tx).await?;
        let model = model_of(&library, &new.model)?;
        let weighed = last_of_model(&mut tx, model.code()).await?;
        if let Some(part) = kept_before(&mut tx, &new.request_key).await? {
            let judged = judge(&library, &part, &weighed)?;
            let next_code = free_code(&mut tx, &following(&part.code)).await?;
            return Ok(WeighedIn::Kept(Box::new(WeighedPart { part, judged, next_code, repeated: true })));
        }
        let number = Some(new.number.trim()).filter(|n| !n.is_empty());
        let wanted = match new.code.trim() {
            "" => first_code(&weighed, model.code(), number),
            code => code.to_owned(),
        };
        let proposed = new.code.trim().is_empty() || new.code_proposed;
        let code = if proposed { free_code(&mut tx, &wanted).await? } else { wanted };
        let mut part = match read_part(&library, model, new, &code)? {
            Ok(part) => part,
            Err(bad) => return Ok(WeighedIn::Refused(bad)),
        };
        let judged = judge(&library, &part, &weighed)?;
        if judged.questioned && (new.sure.trim().is_empty() || new.sure.trim() != new.mass.trim()) {
            return Ok(WeighedIn::Questioned(Box::new(judged)));
        }
        part.id =
            PartId::from(if new.request_key.is_empty() { crate::new_id() } else { new.request_key.clone() }.as_str());
        tx.insert_part(&part, self.now()).await?;
        let note = serde_json::json!({
            "code": part.code, "part": part.id, "mass_g": part.mass_g, "kept_though": judged.questioned.then_some(&judged.finding)
        });
        self.log(&mut tx, None, None, EventKind::PartWeighedIn, &new.by, note).await?;
        let next_code = free_code(&mut tx, &following(&part.code)).await?;
        tx.commit().await?;
        self.tell(None, "stock");
        Ok(WeighedIn::Kept(Box::new(WeighedPart { part, judged, next_code, repeated: false })))
    }

    /// Says what a mass speaks for, and keeps nothing.
    ///
    /// # Errors
    /// No such model or number; a figure that cannot be; what the store says.
    pub async fn judge_part(&self, asked: &ToJudge) -> Result<Judged, AppError> {
        let mut tx = self.store.read().await?;
        let library = load_library(&mut tx).await?;
        let model = model_of(&library, &asked.model)?;
        let mass_g = match asked.mass_g {
            Some(mass_g) => Some(mass_g),
            None => crate::stock::mass_of(&asked.mass)?,
        };
        if mass_g.is_none() {
            return Err(AppError::invalid(WeighInFault::NoMass));
        }
        let part = Part {
            number: asked.number.clone(),
            mass_g,
            loft_deg: asked.loft_deg,
            lie_deg: asked.lie_deg,
            ..Part::new("judged", model.kind(), model.code())
        };
        let weighed = last_of_model(&mut tx, model.code()).await?;
        Ok(judge(&library, &part, &weighed)?)
    }

    /// What the weigh-in page of a model and number shows.
    ///
    /// # Errors
    /// No such model; what the store says.
    pub async fn weigh_view(&self, model: &str, number: Option<&str>) -> Result<WeighView, AppError> {
        /// Parts in the running list.
        const LISTED: usize = 8;
        let mut tx = self.store.read().await?;
        let library = load_library(&mut tx).await?;
        let model = model_of(&library, model)?;
        let weighed = last_of_model(&mut tx, model.code()).await?;
        let of_number = |p: &&Part| match (p.number.as_deref(), number) {
            (Some(a), Some(b)) => a.eq_ignore_ascii_case(b),
            (a, b) => a.is_none() && b.is_none(),
        };
        let filter =
            PartFilter { model: Some(model.code().into()), number: number.map(str::to_owned), ..<_>::default() };
        let aside = PartFilter { state: Some(PartState::Rejected), ..filter.clone() };
        let count = tx.count_parts(&filter).await? - tx.count_parts(&aside).await?;
        let next_code = free_code(&mut tx, &first_code(&weighed, model.code(), number)).await?;
        Ok(WeighView {
            spread: spread(&library, model.code(), number, &weighed),
            beside: beside(&library, model, number, &weighed),
            last: weighed.iter().filter(of_number).rev().take(LISTED).cloned().collect(),
            count,
            next_code,
        })
    }

    /// Takes a weigh-in back: the part is put aside under another code, so that its own is free again. Taken back twice
    /// is taken back once.
    ///
    /// # Errors
    /// A part that a job holds or that was changed since; what the store says.
    pub async fn take_back_part(&self, taken: &TakeBackPart) -> Result<(), AppError> {
        let mut tx = self.store.write().await?.signed(&taken.by);
        let Some(mut part) = tx.part(&PartId::from(taken.id.as_str())).await? else {
            return Err(AppError::not_found(Noun::Part, taken.code.clone(), &LookUp::Stock));
        };
        let aside = format!("{}.back", taken.code.trim());
        if part.state == PartState::Rejected && part.code.starts_with(&aside) {
            return Ok(());
        }
        if !part.code.eq_ignore_ascii_case(taken.code.trim()) || part.version != 0 || !part.is_free() {
            return Err(AppError::conflict(WeighInFault::Changed { code: part.code.clone() }));
        }
        part.code = free_code(&mut tx, &format!("{aside}1")).await?;
        part.state = PartState::Rejected;
        tx.update_part(&part, self.now()).await?;
        let reason = Because::WeighInBack.told();
        let note = LifeNote {
            part: &part.id,
            step: LifeStep::Scrapped,
            job: None,
            club: None,
            figures: &[],
            reason: Some(&reason),
        };
        tx.append_life(note, self.now()).await?;
        let note = serde_json::json!({ "code": taken.code.trim(), "part": part.id, "now": part.code });
        self.log(&mut tx, None, None, EventKind::PartTakenBack, &taken.by, note).await?;
        tx.commit().await?;
        self.tell(None, "stock");
        Ok(())
    }
}

fn model_of<'a>(library: &'a Library, code: &str) -> Result<&'a Model, AppError> {
    library.get(code.trim()).ok_or_else(|| AppError::not_found(Noun::Model, code, &LookUp::Models))
}

/// The last parts of a model that came in, in their order, without those that were put aside.
async fn last_of_model(tx: &mut Tx, model: &str) -> Result<Vec<Part>, AppError> {
    let filter = PartFilter { model: Some(model.to_owned()), ..PartFilter::default() };
    let offset = (tx.count_parts(&filter).await? - LOOKED_AT).max(0);
    let mut parts = tx.parts(&PartFilter { offset, ..filter }).await?;
    parts.retain(|p| p.state != PartState::Rejected);
    Ok(parts)
}

/// The part that was kept under this key before; a key that is none is refused.
async fn kept_before(tx: &mut Tx, key: &str) -> Result<Option<Part>, AppError> {
    if key.is_empty() {
        return Ok(None);
    }
    if key.len() > 64 || !key.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-') {
        return Err(AppError::invalid(WeighInFault::BadKey { key: key.to_owned() }));
    }
    Ok(tx.part(&PartId::from(key)).await?)
}

/// The numbers beside this one with what they weigh.
fn beside(library: &Library, model: &Model, number: Option<&str>, weighed: &[Part]) -> Vec<(String, f64)> {
    let (Model::Head(head), Some(number)) = (model, number) else { return Vec::new() };
    let Some(at) = head.numbers.iter().position(|n| n.number.eq_ignore_ascii_case(number)) else { return Vec::new() };
    [at.checked_sub(1), at.checked_add(1)]
        .into_iter()
        .flatten()
        .filter_map(|i| head.numbers.get(i))
        .filter_map(|n| Some((n.number.clone(), spread(library, &head.code, Some(&n.number), weighed)?.next_g)))
        .collect()
}

/// A part is read like a row of a list, so that both are held against the same rules.
fn read_part(
    library: &Library,
    model: &Model,
    new: &WeighIn,
    code: &str,
) -> Result<Result<Part, Box<BadRow>>, AppError> {
    let mut cells = vec![
        ("code", code),
        ("kind", model.kind().key()),
        ("model", model.code()),
        ("number", &new.number),
        ("mass_g", &new.mass),
        ("lot", &new.lot),
        ("place", &new.place),
        ("owner", &new.owner),
        ("count", &new.count),
    ];
    let typed = new.typed_figures().into_iter();
    cells.extend(typed.filter_map(|(name, typed)| Field::by_name(name).map(|field| (field.key, typed))));
    let bulk = !matches!(model.kind(), PartKind::Head | PartKind::Shaft);
    if bulk && new.mass.trim().is_empty() && new.count.trim().is_empty() {
        return Ok(Err(Box::new(BadRow::of_row(1, "mass_g", &CellFault::NeitherMassNorCount))));
    }
    let quoted = |text: &str| format!("\"{}\"", text.trim().replace('"', "\"\""));
    let heads = cells.iter().map(|(key, _)| *key).collect::<Vec<_>>().join(",");
    let row = cells.iter().map(|(_, text)| quoted(text)).collect::<Vec<_>>().join(",");
    let read =
        stock_file::read(format!("{heads}\r\n{row}\r\n").as_bytes(), library, &[]).map_err(|e| unreadable(&e))?;
    match (read.parts.into_iter().next(), read.bad.into_iter().next()) {
        (Some(part), _) => Ok(Ok(part)),
        (None, Some(bad)) => Ok(Err(Box::new(bad))),
        (None, None) => Err(AppError::Internal("a part was neither read nor refused".into())),
    }
}

/// The code after the last of this model and number; a first one made of both where there is none.
fn first_code(weighed: &[Part], model: &str, number: Option<&str>) -> String {
    let same = |p: &&Part| match (p.number.as_deref(), number) {
        (Some(a), Some(b)) => a.eq_ignore_ascii_case(b),
        (a, b) => a.is_none() && b.is_none(),
    };
    let last = weighed.iter().rev().filter(same).map(|p| following(&p.code)).find(|code| !code.is_empty());
    last.unwrap_or_else(|| {
        let number = number.map(|n| format!("-{n}")).unwrap_or_default();
        let sound: String =
            number.chars().filter(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '_' | '.')).collect();
        let most = CODE_MAX - "-001".len() - sound.len().min(16);
        format!("{}{sound}-001", model.chars().take(most).collect::<String>())
    })
}

/// The code after this one: its last digits counted up, their width kept; empty where it ends in no digit.
fn following(code: &str) -> String {
    let digits = code.chars().rev().take_while(char::is_ascii_digit).count();
    let (front, last) = code.split_at(code.len() - digits);
    match last.parse::<u64>() {
        Ok(n) if n < u64::MAX => format!("{front}{:0digits$}", n + 1),
        _ => String::new(),
    }
}

/// This code or the first after it that no part has; empty where it cannot be counted up.
async fn free_code(tx: &mut Tx, code: &str) -> Result<String, AppError> {
    /// Codes that are tried; whoever has more of one number in a row types the next one.
    const TRIES: usize = 2000;
    let mut code = code.to_owned();
    for _ in 0..TRIES {
        if code.is_empty() || tx.part_by_code(&code).await?.is_none() {
            return Ok(code);
        }
        code = following(&code);
    }
    Ok(String::new())
}

fact::facts! {
    /// What is refused of weighing a part in.
    pub(crate) enum WeighInFault: "weigh_in_fault" {
        NoMass,
        Changed { code: String },
        BadKey { key: String },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_next_code_counts_up() {
        assert_eq!(following("H7-014"), "H7-015");
        assert_eq!(following("H7-099"), "H7-100");
        assert_eq!(following("S9"), "S10");
        assert_eq!(following("GRIP"), "");
        assert_eq!(following(""), "");
        assert_eq!(following("9999999999999999999999"), "", "more than can be counted");
    }

    #[test]
    fn the_first_code_is_made_of_model_and_number() {
        let part =
            |code: &str, number: &str| Part { number: Some(number.into()), ..Part::new(code, PartKind::Head, "M") };
        assert_eq!(first_code(&[], "SISKIN", Some("7")), "SISKIN-7-001");
        assert_eq!(first_code(&[], "OLIVINE", None), "OLIVINE-001");
        let parts = [part("S7-30", "7"), part("S8-12", "8"), part("odd", "7")];
        assert_eq!(first_code(&parts, "M", Some("7")), "S7-31");
        let long = first_code(&[], "ABCDEFGHIJKLMNOPQRSTUVWXYZABCDEF", Some("56/12"));
        assert!(long.len() <= CODE_MAX && long.ends_with("-5612-001"), "{long}");
    }
}
