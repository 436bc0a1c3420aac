//! Models as a JSON list.

use super::StockFileError;
use fact::{Fact, Told};
use serde::{Deserialize, Serialize};
use serde_json::Value;
use trade::model::Model;
use utoipa::ToSchema;

/// What reading a list of models gave.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct ModelsImported {
    /// The sound ones, in the order of the file.
    pub good: Vec<Model>,
    /// The refused ones.
    pub bad: Vec<BadModel>,
}

/// A refused model.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct BadModel {
    /// Place in the list, from 1.
    pub entry: usize,
    /// Its code, where it has one.
    pub code: String,
    /// What is wrong with it.
    pub problem: Told,
}

/// Reads a JSON list of models, or an object with the list under `models`. A bad entry does not hold up the good ones.
///
/// # Errors
/// [`StockFileError::NotJson`] where the text is not such a list.
pub fn read_models(json: &str) -> Result<ModelsImported, StockFileError> {
    let value: Value = document::read(json.as_bytes()).map_err(|e| {
        let (line, column) = e.at.unwrap_or((1, 1));
        StockFileError::NotJson { line, column, what: e.what.clone() }
    })?;
    let list = match value {
        Value::Array(list) => list,
        Value::Object(mut map) if map.len() == 1 && map.get("models").is_some_and(Value::is_array) => {
            match map.remove("models") {
                Some(Value::Array(list)) => list,
                _ => Vec::new(),
            }
        }
        _ => return Err(StockFileError::NotJson { line: 1, column: 1, what: ModelFileFault::NotAList.told() }),
    };
    let mut made = ModelsImported::default();
    for (i, value) in list.into_iter().enumerate() {
        let code = value.get("code").and_then(Value::as_str).unwrap_or_default().to_owned();
        match sound(value, &made.good) {
            Ok(model) => made.good.push(model),
            Err(problem) => made.bad.push(BadModel { entry: i + 1, code, problem }),
        }
    }
    Ok(made)
}

fn sound(value: Value, before: &[Model]) -> Result<Model, Told> {
    let model: Model = document::read_value(value).map_err(|e| ModelFileFault::Field { what: e.told() }.told())?;
    model.check().map_err(|e| e.refusal().fact().clone())?;
    if before.iter().any(|m| m.code().eq_ignore_ascii_case(model.code())) {
        return Err(ModelFileFault::CodeTwice { code: model.code().to_owned() }.told());
    }
    Ok(model)
}

/// Writes models as a JSON list that [`read_models`] takes.
///
/// # Errors
/// None in practice: a model with a figure that is not finite has no JSON, and none such passes the checks.
pub fn write_models(models: &[Model]) -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(models)?;
    text.push('\n');
    Ok(text)
}

fact::facts! {
    /// What is refused of a list of models.
    pub enum ModelFileFault: "model_file_fault" {
        /// It is not a list of models.
        NotAList,
        /// A field of the model does not read, is lacking or is not known.
        Field {
            /// Which field it is, and what is wrong there.
            what: Told,
        },
        /// The code … is in the list before.
        CodeTwice {
            /// The code that stands twice, as the later model writes it; capitals do not matter.
            code: String,
        },
        /// This is the code of a … already.
        CodeOfOther {
            /// What kind of part.
            kind: trade::model::PartKind,
        },
    }
}
