//! What all operations of the API have in common, said once and added to each: the errors that can come of what it takes,
//! the noun that it belongs to, what its path parameters mean, an example of its body.
//!
//! A handler's own annotation says only what is its own. [`complete`] adds the rest by what it finds there, so that a new
//! operation cannot leave it out.

mod errors;
mod examples;
mod schemas;

pub(super) use errors::{Conflict, NotFound};

use super::calc;
use crate::problem::ProblemDocument;
use quantity::Units;
use serde_json::Value;
use std::collections::BTreeMap;
use utoipa::OpenApi;
use utoipa::openapi::path::{Operation, Parameter, ParameterIn, PathItem};
use utoipa::openapi::schema::{ArrayItems, Schema};
use utoipa::openapi::security::{Http, HttpAuthScheme, SecurityRequirement, SecurityScheme};
use utoipa::openapi::tag::Tag;
use utoipa::openapi::{Content, RefOr, Response};
use words::Words;

#[derive(OpenApi)]
#[openapi(
    info(
        title = "Setwright",
        version = "1",
        description = "The bench of a golf club builder: sheets, stock, plans, readings, glue, records. Numeric \
                       fields end in their unit; swing weights are points since A0 (D2 is 32). Errors are problem \
                       documents (RFC 9457). Fields may be added to answers; a client skips those that it does not \
                       know.",
        license(name = "MIT", identifier = "MIT")
    ),
    servers((url = "/api/v1", description = "This shop")),
    components(schemas(ProblemDocument))
)]
pub(super) struct Described;

/// Name of the way in which a key is sent.
const KEY: &str = "key";

/// Each noun: its tag, what it is, and the paths that belong to it. The longest path that fits counts.
const NOUNS: [(&str, &str, &[&str]); 20] = [
    (
        "shop",
        "The shop itself: room, scales, steps, people, the clock that it works by, its backups.",
        &["/shop", "/clock", "/backups"],
    ),
    ("keys", "Who may come in from outside this machine.", &["/keys"]),
    ("models", "What the maker says of heads, shafts, grips and small parts.", &["/models"]),
    (
        "parts",
        "Weighed and counted parts: weigh-in, lists in and out, labels, the life of a part.",
        &["/parts", "/layouts", "/labels.svg", "/labels/print"],
    ),
    ("codes", "What a scanned code or a typed text stands for.", &["/scan", "/cards", "/find"]),
    (
        "orders",
        "Orders, what jobs wait for, what is short, what to ask a supplier for.",
        &["/orders", "/waits", "/needs", "/ask", "/jobs/{number}/order"],
    ),
    ("sheets", "Fitting sheets.", &["/sheets"]),
    (
        "customers",
        "Whom clubs are built for: kept, found, exported, deleted on request.",
        &["/customers", "/sheets/{id}/customer"],
    ),
    (
        "prices",
        "What parts and work cost, quotes and bills.",
        &["/prices", "/sheets/{id}/quote", "/jobs/{number}/bill"],
    ),
    (
        "jobs",
        "Jobs, their kinds and their records, and the calendar of their days.",
        &["/jobs", "/job-kinds", "/records", "/seals", "/calendar"],
    ),
    (
        "clubs",
        "Clubs that live on: what they are made of, what was read of them, what was done.",
        &["/clubs", "/match-set", "/again"],
    ),
    (
        "recall",
        "Whom a lot, a part, a model, a scale or a builder reached, and the marks on clubs until somebody has looked.",
        &["/recall", "/marks"],
    ),
    (
        "plans",
        "Which part goes into which club.",
        &["/jobs/{number}/plan", "/jobs/{number}/clubs/{slot}/parts", "/jobs/{number}/clubs/{slot}/extras", "/match"],
    ),
    (
        "bench",
        "Readings at the bench, what they mean and what to do.",
        &[
            "/jobs/{number}/readings",
            "/readings",
            "/jobs/{number}/let-pass",
            "/jobs/{number}/clubs",
            "/jobs/{number}/advice",
            "/jobs/{number}/grips",
            "/jobs/{number}/cpm",
            "/jobs/{number}/grip-sizes",
            "/jobs/{number}/decline-offer",
            "/jobs/{number}/open",
            "/jobs/{number}/done",
        ],
    ),
    ("adhesive", "Mixes and batches of adhesive.", &["/glue", "/batches"]),
    ("calculations", "The physics of a club, without the shop.", &["/calc"]),
    ("learned", "What the shop has learned, and how well it meets its tolerances.", &["/learned", "/capability"]),
    ("scales", "Scales: what they show, their checks and trust.", &["/scales"]),
    ("gauge studies", "How much of the spread is the scale and the hands.", &["/gauge-studies"]),
    ("description", "Changes as they happen, and this document.", &["/live", "/openapi.json"]),
];

/// What the path parameters mean, and an example. The first line that fits counts.
const PARAMETERS: [(&str, &str, &str, &str); 19] = [
    ("/keys/", "number", "Running number of the key.", "1"),
    ("/batches/", "number", "Running number of the batch.", "1"),
    ("/customers/", "number", "Running number of the customer.", "1"),
    ("/orders/", "number", "Running number of the order.", "1"),
    ("/jobs/", "number", "Running number of the job.", "1"),
    ("/jobs/", "slot", "Place of the club in the tray, from 1.", "4"),
    ("/jobs/", "id", "Identity of the reading.", "0199c2a4-5b1e-7d0a-9c3e-2f6f1f0b7a55"),
    ("/sheets/", "id", "Identity of the sheet.", "0199c2a4-5b1e-7d0a-9c3e-2f6f1f0b7a55"),
    ("/clubs/", "code", "Code on the club's label. Capitals do not matter.", "C1"),
    ("/marks/", "id", "Identity of the mark.", "0199c2a4-5b1e-7d0a-9c3e-2f6f1f0b7a55"),
    ("/job-kinds/", "key", "Key of the kind.", "clean"),
    ("/models/", "code", "Code of the model. Capitals do not matter.", "SISKIN"),
    ("/parts/", "code", "Code on the part's label. Capitals do not matter.", "S7-02"),
    ("/cards/", "code", "Code on the job card.", "J1-4"),
    ("/scan/", "code", "What the scanner read: the code of a part, or of a job card.", "S7-02"),
    ("/layouts/", "name", "Name of the layout.", "Supplier A"),
    ("/scales/", "scale", "Key of the scale.", "balance"),
    ("/scales/", "check", "Identity of the check.", "0199c2a4-5b1e-7d0a-9c3e-2f6f1f0b7a55"),
    ("/gauge-studies/", "study", "Identity of the study.", "0199c2a4-5b1e-7d0a-9c3e-2f6f1f0b7a55"),
];

/// Completes the description. Called once, after all operations are in it.
pub(super) fn complete(api: &mut utoipa::openapi::OpenApi) {
    // This machine needs no key, everything else does.
    api.security = Some(vec![SecurityRequirement::default(), SecurityRequirement::new(KEY, Vec::<String>::new())]);
    api.tags = Some(
        NOUNS
            .iter()
            .map(|(name, what, _)| {
                let mut tag = Tag::new(*name);
                tag.description = Some((*what).to_owned());
                tag
            })
            .collect(),
    );
    let components = api.components.get_or_insert_default();
    schemas::mend(components);
    let mut bearer = Http::new(HttpAuthScheme::Bearer);
    bearer.description = Some("The secret of a key, from anywhere but this machine itself.".to_owned());
    components.add_security_scheme(KEY, SecurityScheme::Http(bearer));
    components.responses.extend(errors::responses());
    for (path, item) in &mut api.paths.paths {
        for (method, operation) in operations(item) {
            operation.tags = noun(path).map(|noun| vec![noun.to_owned()]);
            describe_parameters(path, operation);
            describe_calculation(operation);
            for response in operation.responses.responses.values_mut() {
                if let RefOr::T(response) = response {
                    describe(response, &components.schemas);
                }
            }
            errors::add(path, method, operation);
            examples::add(operation);
        }
    }
}

/// The operations of a path with their methods.
fn operations(item: &mut PathItem) -> impl Iterator<Item = (&'static str, &mut Operation)> {
    [
        ("GET", &mut item.get),
        ("PUT", &mut item.put),
        ("POST", &mut item.post),
        ("PATCH", &mut item.patch),
        ("DELETE", &mut item.delete),
    ]
    .into_iter()
    .filter_map(|(method, operation)| operation.as_mut().map(|o| (method, o)))
}

fn noun(path: &str) -> Option<&'static str> {
    let fits = |root: &str| path.strip_prefix(root).is_some_and(|rest| rest.is_empty() || rest.starts_with('/'));
    NOUNS
        .iter()
        .flat_map(|(noun, _, roots)| roots.iter().map(move |root| (*noun, *root)))
        .filter(|(_, root)| fits(root))
        .max_by_key(|(_, root)| root.len())
        .map(|(noun, _)| noun)
}

fn describe_parameters(path: &str, operation: &mut Operation) {
    for parameter in operation.parameters.iter_mut().flatten() {
        if let RefOr::T(Parameter { name, parameter_in: ParameterIn::Path, description, schema, .. }) = parameter
            && let Some((.., what, usual)) =
                PARAMETERS.iter().find(|(root, of, ..)| path.starts_with(root) && of == name)
        {
            *description = Some((*what).to_owned());
            if let Some(RefOr::T(Schema::Object(schema))) = schema {
                schema.examples = vec![usual.parse::<i64>().map_or_else(|_| Value::from(*usual), Value::from)];
            }
        }
    }
}

/// A calculation says of itself what it answers.
fn describe_calculation(operation: &mut Operation) {
    if let Some(topic) = operation.operation_id.as_deref().and_then(calc::topic_of) {
        // The description is in English, as its names are.
        let w = Words::english(Units::default());
        operation.summary = Some(w.tell(&topic.title()));
        operation.description = Some(w.tell(&topic.summary()));
    }
}

/// An answer that says nothing of itself says what is in it.
fn describe(response: &mut Response, schemas: &BTreeMap<String, RefOr<Schema>>) {
    if !response.description.is_empty() {
        return;
    }
    let body = response.content.iter().next();
    let said = match body {
        None => Some("Done. There is nothing to return.".to_owned()),
        Some((kind, _)) if kind == "text/csv" => Some("A CSV file.".to_owned()),
        Some((_, RefOr::T(Content { schema: Some(schema), .. }))) => said_of(schema, schemas),
        Some(_) => None,
    };
    response.description = said.unwrap_or_else(|| "Done.".to_owned());
}

fn said_of(schema: &RefOr<Schema>, schemas: &BTreeMap<String, RefOr<Schema>>) -> Option<String> {
    match schema {
        RefOr::Ref(to) => match schemas.get(to.ref_location.rsplit('/').next()?)? {
            RefOr::T(Schema::Object(o)) => o.description.clone(),
            RefOr::T(Schema::OneOf(o)) => o.description.clone(),
            RefOr::T(Schema::AnyOf(o)) => o.description.clone(),
            RefOr::T(Schema::AllOf(o)) => o.description.clone(),
            _ => None,
        },
        RefOr::T(Schema::Array(list)) => match &list.items {
            ArrayItems::RefOrSchema(item) => Some(format!("A list. Each entry: {}", said_of(item, schemas)?)),
            ArrayItems::False => None,
        },
        RefOr::T(_) => None,
    }
}
