//! Which errors an operation can answer with, by what it takes.

use crate::access::COME_IN_API;
use crate::problem::PROBLEM_TYPE;
use std::collections::BTreeMap;
use utoipa::IntoResponses;
use utoipa::openapi::path::{Operation, ParameterIn};
use utoipa::openapi::{ContentBuilder, Ref, RefOr, Response, ResponseBuilder};

/// Each error: its status, the name of its response, when it comes.
const ERRORS: [(&str, &str, &str); 11] = [
    ("400", "Unreadable", "A value in the address cannot be read: a word where a number belongs, an unknown name."),
    (
        "401",
        "NoKey",
        "From outside this machine nobody comes in without a key. Send it as `Authorization: Bearer` and its secret.",
    ),
    (
        "403",
        "NotAllowed",
        "The key does not go so far, the six digits are wrong, or a page of another site sent this from a browser. Nothing was \
         changed. Programs that send no `Origin` are not hindered.",
    ),
    ("404", "NotFound", "What the address or the body names does not exist."),
    (
        "409",
        "Conflict",
        "Not possible now: somebody else changed it first, a part is taken, or a step has to wait. Load it again and \
         decide.",
    ),
    ("413", "TooLarge", "The body is larger than 8 MB. Send it in pieces."),
    ("415", "NotJson", "The body was not sent as `application/json`."),
    (
        "421",
        "UnknownName",
        "The server does not go by the name in `Host`. Use its address in figures, or start it with `--name` and the name.",
    ),
    (
        "422",
        "Refused",
        "A value is not possible. `detail` says what is wrong and what to do; `pointer` or `field` say where it is.",
    ),
    ("500", "Failed", "The program made a mistake. Nothing was half saved."),
    ("503", "Unavailable", "The database cannot serve now. Nothing was saved; try again."),
];

/// Paths that are answered without the shop's database.
const WITHOUT_STORE: [&str; 5] = ["/calc", "/live", "/scales", "/openapi.json", "/sheets/schema"];

/// What is posted only to ask: nothing is changed, so nothing can be in the way of it.
const ASKS: [&str; 6] = ["/ask", "/ask/export", "/match/set", "/parts/judge", "/sheets/check", "/sheets/expand"];

/// 409, for an operation that changes nothing and still needs the job in a certain state.
pub(in crate::api) struct Conflict;

/// 404, for an operation that names something in its query. Where the path or a body does, it is added anyway.
pub(in crate::api) struct NotFound;

impl IntoResponses for Conflict {
    fn responses() -> BTreeMap<String, RefOr<Response>> {
        BTreeMap::from([reference("409")])
    }
}

impl IntoResponses for NotFound {
    fn responses() -> BTreeMap<String, RefOr<Response>> {
        BTreeMap::from([reference("404")])
    }
}

/// A reference to the shared response of a status.
fn reference(status: &str) -> (String, RefOr<Response>) {
    let name = ERRORS.iter().find(|(s, ..)| *s == status).map_or("Failed", |(_, name, _)| name);
    (status.to_owned(), RefOr::Ref(Ref::from_response_name(name)))
}

/// The shared responses, by name.
pub(super) fn responses() -> impl Iterator<Item = (String, RefOr<Response>)> {
    ERRORS.iter().map(|(_, name, what)| {
        let body = ContentBuilder::new().schema(Some(Ref::from_schema_name("Problem"))).build();
        let response = ResponseBuilder::new().description(*what).content(PROBLEM_TYPE, body).build();
        ((*name).to_owned(), RefOr::T(response))
    })
}

/// Adds the errors that follow from what an operation takes.
pub(super) fn add(path: &str, method: &str, operation: &mut Operation) {
    let takes = |place: ParameterIn| {
        operation.parameters.iter().flatten().any(|p| matches!(p, RefOr::T(p) if p.parameter_in == place))
    };
    let (in_path, in_query) = (takes(ParameterIn::Path), takes(ParameterIn::Query));
    let body = match &operation.request_body {
        Some(RefOr::T(body)) => Some(body),
        _ => None,
    };
    let json = body.is_some_and(|b| b.content.contains_key("application/json"));
    let store = !WITHOUT_STORE.iter().any(|p| {
        // The scales that are connected are known without the store; their health is kept in it.
        path == *p || (*p != "/scales" && path.starts_with(&format!("{p}/")))
    });
    let possible = [
        ("400", in_path || in_query),
        ("401", path != COME_IN_API),
        ("403", method != "GET" || path == "/keys"),
        ("404", store && (in_path || body.is_some())),
        ("409", store && method != "GET" && !ASKS.contains(&path)),
        ("413", body.is_some()),
        ("415", json),
        ("421", true),
        ("422", in_path || in_query || body.is_some()),
        ("500", true),
        ("503", store),
    ];
    for (status, possible) in possible {
        if possible {
            let (status, response) = reference(status);
            operation.responses.responses.entry(status).or_insert(response);
        }
    }
}
