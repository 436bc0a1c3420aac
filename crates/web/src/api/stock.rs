//! Models and parts.

use super::File;
use super::described::{Conflict, NotFound};
use crate::asked::{Asked, Path};
use crate::file::csv_file;
use crate::pages::labels::{asked_parts, labels_of, print_asked};
use crate::problem::EdgeFault;
use crate::problem::{ApiError, Body, Problem};
use crate::reader::{Answer, Reader};
use app::App;
use app::label_print::{LabelsSent, PrintLabels};
use app::stiffness_profile::{ReadShaft, StiffnessOfShaft};
use app::stock::{ModelsKept, NewPart, PartChange, PartQuery, PartsImported};
use app::stock_list::Scanned;
use app::usual::{KeepUsual, UsualKept, UsualView};
use app::weigh_in::{TakeBackPart, ToJudge, WeighIn, WeighedIn};
use axum::body::Bytes;
use axum::extract::State;
use axum::http::{StatusCode, header};
use axum::response::IntoResponse;
use desk::stock_file::Imported;
use desk::stock_file::Layout;
use desk::stock_file::Mapping;
use desk::weigh_in::Judged;
use fact::{Fact, Told};
use look::label_picture;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use trade::model::Model;
use trade::model::PartKind;
use trade::part::Part;
use utoipa::openapi::schema::{AnyOfBuilder, ObjectBuilder, Schema};
use utoipa::openapi::{Ref, RefOr};
use utoipa::{IntoParams, PartialSchema, ToSchema};
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(list_models, save_model))
        .routes(routes!(get_model, delete_model))
        .routes(routes!(import_models))
        .routes(routes!(list_usual_models, keep_usual_models))
        .routes(routes!(list_parts, add_parts))
        .routes(routes!(get_part, change_part))
        .routes(routes!(get_profile, put_profile))
        .routes(routes!(judge_part))
        .routes(routes!(weigh_in_part))
        .routes(routes!(take_back_weigh_in))
        .routes(routes!(import_parts))
        .routes(routes!(list_layouts, save_layout))
        .routes(routes!(delete_layout))
        .routes(routes!(export_parts_csv))
        .routes(routes!(export_parts_xlsx))
        .routes(routes!(draw_labels))
        .routes(routes!(print_labels))
        .routes(routes!(look_up_code))
}

#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
struct ModelQuery {
    /// Only models of this kind.
    kind: Option<PartKind>,
}

/// Models, by code.
#[utoipa::path(get, path = "/models", params(ModelQuery), responses((status = 200, body = Vec<Model>)))]
async fn list_models(State(app): State<App>, Asked(query): Asked<ModelQuery>) -> Result<Answer<Vec<Model>>, ApiError> {
    Ok(Answer(app.models(query.kind).await?))
}

/// Add a model, or replace the one with its code.
#[utoipa::path(post, path = "/models", request_body = Model,
    responses((status = 201, body = Model)))]
async fn save_model(State(app): State<App>, Body(model): Body<Model>) -> Result<(StatusCode, Answer<Model>), ApiError> {
    app.put_model(&model).await?;
    Ok((StatusCode::CREATED, Answer(model)))
}

/// One model.
#[utoipa::path(get, path = "/models/{code}", params(("code" = String, Path)),
    responses((status = 200, body = Model)))]
async fn get_model(State(app): State<App>, Path(code): Path<String>) -> Result<Answer<Model>, ApiError> {
    Ok(Answer(app.model(&code).await?))
}

/// Take a model away that nothing uses.
#[utoipa::path(delete, path = "/models/{code}", params(("code" = String, Path)),
    responses((status = 204)))]
async fn delete_model(State(app): State<App>, Path(code): Path<String>) -> Result<StatusCode, ApiError> {
    app.remove_model(&code).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// A list of models, alone or under `models`. An entry that is not a good model does not hold up the others: the answer
/// names it.
#[derive(ToSchema)]
#[serde(untagged)]
#[allow(dead_code, reason = "only described: each entry is read by itself")]
enum ModelList {
    /// The list alone.
    #[schema(title = "ModelsAlone")]
    Alone(Vec<ModelEntry>),
    /// The list under its name.
    #[schema(title = "ModelsUnderName")]
    #[serde(deny_unknown_fields)]
    UnderName {
        /// Models to add; one with a code that is there already replaces the old one.
        models: Vec<ModelEntry>,
    },
}

/// A model, or an object that is meant to be one.
struct ModelEntry;

impl PartialSchema for ModelEntry {
    fn schema() -> RefOr<Schema> {
        let object =
            ObjectBuilder::new().title(Some("ModelToBe")).description(Some("An object that is meant to be one."));
        let one = AnyOfBuilder::new().item(Ref::from_schema_name("Model")).item(object);
        RefOr::T(one.description(Some("A model, or an object that is meant to be one.")).build().into())
    }
}

impl ToSchema for ModelEntry {}

/// The first entry of a list of models that is not even an object: then the list is not one of models.
fn not_an_object(list: &Value) -> Option<Problem> {
    let (root, entries) = match list {
        Value::Array(entries) => ("", entries),
        Value::Object(wrapped) => ("/models", wrapped.get("models")?.as_array()?),
        _ => return None,
    };
    let at = entries.iter().position(|entry| !entry.is_object())?;
    let place = format!("{root}/{at}");
    Some(Problem::invalid(EdgeFault::NotAModel { place: place.clone() }).at(&place))
}

/// Import a JSON list of models: good ones are kept, bad ones named.
#[utoipa::path(post, path = "/models/import", request_body = ModelList, responses((status = 200, body = ModelsKept)))]
async fn import_models(
    State(app): State<App>,
    body: Result<Body<Value>, ApiError>,
) -> Result<Answer<ModelsKept>, ApiError> {
    let Body(list) = body.map_err(|error| match error.0.status() {
        StatusCode::UNPROCESSABLE_ENTITY => ApiError(error.0.within(|what| EdgeFault::NotModels { what }.into())),
        _ => error,
    })?;
    match not_an_object(&list) {
        Some(problem) => Err(problem.into()),
        None => Ok(Answer(app.import_models(&list.to_string()).await?)),
    }
}

/// Models that are nobody's, to begin with: usual figures, each with where it comes from. A weighing corrects them.
#[utoipa::path(get, path = "/models/usual", params(ModelQuery), responses((status = 200, body = Vec<UsualView>)))]
async fn list_usual_models(
    State(app): State<App>,
    Reader(w): Reader,
    Asked(query): Asked<ModelQuery>,
) -> Result<Answer<Vec<UsualView>>, ApiError> {
    Ok(Answer(app.usual_models(query.kind, |name| w.tell(name)).await?))
}

/// Keep usual models in the shop, all or none, with names in the reader's language. One that the shop has stays as it is.
#[utoipa::path(post, path = "/models/usual", request_body = KeepUsual,
    responses((status = 200, body = UsualKept), NotFound))]
async fn keep_usual_models(
    State(app): State<App>,
    Reader(w): Reader,
    Body(wanted): Body<KeepUsual>,
) -> Result<Answer<UsualKept>, ApiError> {
    Ok(Answer(app.keep_usual(&wanted, |name| w.tell(name)).await?))
}

/// A page of parts.
#[derive(Debug, Serialize, ToSchema)]
struct PartsPage {
    /// How many there are in all.
    total: i64,
    /// The parts asked for.
    parts: Vec<Part>,
}

/// Parts in the order in which they came in.
#[utoipa::path(get, path = "/parts", params(PartQuery), responses((status = 200, body = PartsPage)))]
async fn list_parts(State(app): State<App>, Asked(query): Asked<PartQuery>) -> Result<Answer<PartsPage>, ApiError> {
    let (parts, total) = app.parts(&query).await?;
    Ok(Answer(PartsPage { total, parts }))
}

/// Add parts, all or none.
#[utoipa::path(post, path = "/parts", request_body = Vec<NewPart>,
    responses((status = 201, body = Vec<Part>)))]
async fn add_parts(
    State(app): State<App>,
    Body(new): Body<Vec<NewPart>>,
) -> Result<(StatusCode, Answer<Vec<Part>>), ApiError> {
    Ok((StatusCode::CREATED, Answer(app.add_parts(&new).await?)))
}

/// One part.
#[utoipa::path(get, path = "/parts/{code}", params(("code" = String, Path)),
    responses((status = 200, body = Part)))]
async fn get_part(State(app): State<App>, Path(code): Path<String>) -> Result<Answer<Part>, ApiError> {
    Ok(Answer(app.part(&code).await?))
}

/// Change a part by hand. Fields left out stay.
#[utoipa::path(patch, path = "/parts/{code}", params(("code" = String, Path)), request_body = PartChange,
    responses((status = 200, body = Part)))]
async fn change_part(
    State(app): State<App>,
    Path(code): Path<String>,
    Body(change): Body<PartChange>,
) -> Result<Answer<Part>, ApiError> {
    Ok(Answer(app.change_part(&code, &change).await?))
}

/// How stiff a shaft is along its length, with its band and its model's, and how many readings it takes.
#[utoipa::path(get, path = "/parts/{code}/profile", params(("code" = String, Path)),
    responses((status = 200, body = StiffnessOfShaft)))]
async fn get_profile(State(app): State<App>, Path(code): Path<String>) -> Result<Answer<StiffnessOfShaft>, ApiError> {
    Ok(Answer(app.shaft_stiffness(&code).await?))
}

/// Keep the readings of a shaft at several clamp lengths, or what it went down under a weight. They take the place of those
/// before; an empty list takes them back. With `look` nothing is kept.
#[utoipa::path(put, path = "/parts/{code}/profile", params(("code" = String, Path)), request_body = ReadShaft,
    responses((status = 200, body = StiffnessOfShaft)))]
async fn put_profile(
    State(app): State<App>,
    Path(code): Path<String>,
    Body(read): Body<ReadShaft>,
) -> Result<Answer<StiffnessOfShaft>, ApiError> {
    Ok(Answer(app.read_shaft(&code, &read).await?))
}

/// What a mass speaks for: the part that it is said to be, the number beside it, another model, a film left on. Nothing
/// is kept.
#[utoipa::path(post, path = "/parts/judge", request_body = ToJudge,
    responses((status = 200, body = Judged)))]
async fn judge_part(State(app): State<App>, Body(asked): Body<ToJudge>) -> Result<Answer<Judged>, ApiError> {
    Ok(Answer(app.judge_part(&asked).await?))
}

/// Weigh a part in. A mass that is questioned is an answer, 200, and kept nowhere until it is sent again with `sure`.
#[utoipa::path(post, path = "/parts/weigh-in", request_body = WeighIn,
    responses((status = 201, body = WeighedIn), (status = 200, body = WeighedIn, description = "questioned, or sent before")))]
async fn weigh_in_part(State(app): State<App>, Body(new): Body<WeighIn>) -> Result<impl IntoResponse, ApiError> {
    let answer = app.weigh_in(&new).await?;
    let status = match &answer {
        WeighedIn::Kept(kept) if !kept.repeated => StatusCode::CREATED,
        WeighedIn::Kept(_) | WeighedIn::Questioned(_) => StatusCode::OK,
        WeighedIn::Refused(bad) => {
            let refusal = bad.refusals().into_iter().next();
            return Err(refusal.map_or_else(|| Problem::invalid(EdgeFault::Request), Problem::invalid).into());
        }
    };
    Ok((status, Answer(answer)))
}

/// Take a weigh-in back; taken back twice is taken back once.
#[utoipa::path(post, path = "/parts/take-back", request_body = TakeBackPart,
    responses((status = 204)))]
async fn take_back_weigh_in(State(app): State<App>, Body(taken): Body<TakeBackPart>) -> Result<StatusCode, ApiError> {
    app.take_back_part(&taken).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// How a list is read.
#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
struct ImportQuery {
    /// What its columns are, as a JSON document (`Mapping`); left out: what the headings say.
    mapping: Option<String>,
    /// Name of a remembered layout that says what the columns are.
    layout: Option<String>,
    /// Only look at it: nothing is kept.
    #[serde(default)]
    look: bool,
}

impl ImportQuery {
    fn mapping(&self) -> Result<Option<Mapping>, ApiError> {
        let read = self.mapping.as_ref().map(|m| document::read::<Mapping>(m.as_bytes())).transpose();
        read.map_err(|e| ApiError(Problem::invalid(EdgeFault::Mapping { what: e.told() })))
    }
}

/// What an import gave, or would give.
#[derive(Debug, Serialize, ToSchema)]
#[serde(untagged)]
enum ImportAnswer {
    /// What was kept and refused.
    Kept(PartsImported),
    /// What would be.
    Looked(Box<ImportLook>),
}

/// A list that was looked at.
#[derive(Debug, Serialize, ToSchema)]
struct ImportLook {
    /// Sheets of the workbook.
    sheets: Vec<String>,
    /// Name of the remembered layout that it was known by.
    #[serde(skip_serializing_if = "Option::is_none")]
    known_as: Option<String>,
    /// Headings of the list.
    header: Vec<String>,
    /// What its columns were taken for.
    mapping: Mapping,
    /// Why that does not fit, and what to do.
    #[serde(skip_serializing_if = "Option::is_none")]
    refused: Option<Told>,
    /// What it would give.
    imported: Imported,
}

/// Import a list of parts, CSV or XLSX: good rows are kept, bad rows named. Which of the two it is, is seen from the file
/// itself.
#[utoipa::path(post, path = "/parts/import", params(ImportQuery),
    request_body(content((File = "text/csv"), (File = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"), (File = "application/octet-stream"))),
    responses((status = 200, body = ImportAnswer)))]
async fn import_parts(
    State(app): State<App>,
    Asked(query): Asked<ImportQuery>,
    body: Bytes,
) -> Result<Answer<ImportAnswer>, ApiError> {
    let mut mapping = query.mapping()?;
    if let Some(name) = &query.layout {
        mapping = Some(app.layout(name).await?.mapping);
    }
    if query.look {
        let looked = app.look_at_parts(&body, mapping.as_ref()).await?;
        return Ok(Answer(ImportAnswer::Looked(Box::new(ImportLook {
            known_as: looked.known_as,
            sheets: looked.table.sheets,
            header: looked.table.header,
            mapping: looked.mapping,
            refused: looked.refused.map(|refusal| refusal.told()),
            imported: looked.imported,
        }))));
    }
    Ok(Answer(ImportAnswer::Kept(app.import_mapped(&body, &mapping.unwrap_or_default(), |_, _| {}).await?)))
}

/// Remembered layouts of lists, by name.
#[utoipa::path(get, path = "/layouts", responses((status = 200, body = Vec<Layout>)))]
async fn list_layouts(State(app): State<App>) -> Result<Answer<Vec<Layout>>, ApiError> {
    Ok(Answer(app.layouts().await?))
}

/// Remember a layout, in place of the one with its name.
#[utoipa::path(post, path = "/layouts", request_body = Layout,
    responses((status = 201, body = Layout)))]
async fn save_layout(
    State(app): State<App>,
    Body(layout): Body<Layout>,
) -> Result<(StatusCode, Answer<Layout>), ApiError> {
    app.put_layout(&layout).await?;
    Ok((StatusCode::CREATED, Answer(layout)))
}

/// Forget a layout.
#[utoipa::path(delete, path = "/layouts/{name}", params(("name" = String, Path)),
    responses((status = 204)))]
async fn delete_layout(State(app): State<App>, Path(name): Path<String>) -> Result<StatusCode, ApiError> {
    app.forget_layout(&name).await?;
    Ok(StatusCode::NO_CONTENT)
}

/// The parts as a CSV file that can be imported again.
#[utoipa::path(get, path = "/parts/export", params(PartQuery),
    responses((status = 200, body = String, content_type = "text/csv")))]
async fn export_parts_csv(
    State(app): State<App>,
    Asked(query): Asked<PartQuery>,
) -> Result<impl IntoResponse, ApiError> {
    Ok(csv_file("parts", app.export_parts(&query).await?))
}

/// The parts as a workbook that can be imported again.
#[utoipa::path(get, path = "/parts/export.xlsx", params(PartQuery),
    responses((status = 200, body = File,
        content_type = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet")))]
async fn export_parts_xlsx(
    State(app): State<App>,
    Asked(query): Asked<PartQuery>,
) -> Result<impl IntoResponse, ApiError> {
    let bytes = app.export_workbook(&query).await?;
    let headers = [
        (header::CONTENT_TYPE, "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"),
        (header::CONTENT_DISPOSITION, "attachment; filename=\"parts.xlsx\""),
    ];
    Ok((headers, bytes))
}

#[derive(Debug, Deserialize, IntoParams)]
#[into_params(parameter_in = Query)]
#[serde(deny_unknown_fields)]
struct LabelQuery {
    /// Codes of the parts, separated by commas.
    #[param(min_length = 1, pattern = r"\S")]
    codes: String,
}

/// Labels of parts as one SVG picture, each 62 × 29 mm, with the code as QR and as Code 128.
#[utoipa::path(get, path = "/labels.svg", params(LabelQuery),
    responses((status = 200, body = String, content_type = "image/svg+xml", description = "An SVG picture."), NotFound))]
async fn draw_labels(
    State(app): State<App>,
    Reader(w): Reader,
    Asked(query): Asked<LabelQuery>,
) -> Result<impl IntoResponse, ApiError> {
    if query.codes.trim().is_empty() {
        return Err(Problem::invalid(EdgeFault::NoCodes).into());
    }
    let (parts, _) = asked_parts(&app, &query.codes, PartQuery::default()).await?;
    let labels = labels_of(&w, &app, &parts).await?;
    Ok(([(header::CONTENT_TYPE, "image/svg+xml")], label_picture(&w, &labels)))
}

/// Print labels of parts and clubs on a printer of the shop, at once. All are laid out before the first is sent.
#[utoipa::path(post, path = "/labels/print", request_body = PrintLabels,
    responses((status = 200, body = LabelsSent), Conflict, NotFound))]
async fn print_labels(
    State(app): State<App>,
    Reader(w): Reader,
    Body(asked): Body<PrintLabels>,
) -> Result<Answer<LabelsSent>, ApiError> {
    Ok(Answer(print_asked(&w, &app, &asked).await?))
}

/// What a scanned code stands for: a part, or the club of a job card.
#[utoipa::path(get, path = "/scan/{code}", params(("code" = String, Path)),
    responses((status = 200, body = Scanned)))]
async fn look_up_code(State(app): State<App>, Path(code): Path<String>) -> Result<Answer<Scanned>, ApiError> {
    Ok(Answer(app.scanned(&code).await?))
}
