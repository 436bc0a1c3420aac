//! Calculations by name.

use super::File;
use crate::asked::Path;
use crate::problem::{ApiError, Body};
use crate::reader::{Answer, Reader};
use app::App;
use axum::extract::State;
use axum::routing::post;
use clubphysics::calc::Topic;
use clubphysics::pluck::PluckOutput;
use serde::Serialize;
use serde_json::Value;
use utoipa::ToSchema;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

pub(super) fn router() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(list_topics))
        .merge(calculations())
        .routes(routes!(calculate_pluck_recording))
        .route("/calc/{topic}", post(unknown))
}

/// A calculation that can be asked for.
#[derive(Debug, Serialize, ToSchema)]
struct TopicView {
    /// Name in the address.
    name: &'static str,
    /// What a reader calls the calculation.
    title: String,
    /// What it does.
    summary: String,
    /// An input that works.
    example: Value,
}

/// All calculations, each with an input that works.
#[utoipa::path(get, path = "/calc", responses((status = 200, body = Vec<TopicView>)))]
async fn list_topics(Reader(w): Reader) -> Answer<Vec<TopicView>> {
    Answer(
        clubphysics::calc::topics()
            .iter()
            .map(|t| TopicView {
                name: t.name,
                title: w.tell(&t.title()),
                summary: w.tell(&t.summary()),
                example: (t.example)(),
            })
            .collect(),
    )
}

/// A calculation that was asked for by a name that is none: the answer says which there are.
async fn unknown(
    State(app): State<App>,
    Path(topic): Path<String>,
    Body(input): Body<Value>,
) -> Result<Answer<Value>, ApiError> {
    Ok(Answer(app.calculate(&topic, input).await?))
}

/// One operation for each calculation, so that its documents are described field by field.
macro_rules! calculations {
    ($($handler:ident, $path:literal, $topic:ident, $input:ident => $output:ident;)*) => {
        $(
            #[utoipa::path(post, path = $path, request_body = clubphysics::$topic::$input,
                responses((status = 200, body = clubphysics::$topic::$output)))]
            async fn $handler(State(app): State<App>, Body(input): Body<Value>) -> Result<Answer<Value>, ApiError> {
                Ok(Answer(app.calculate(clubphysics::$topic::TOPIC.name, input).await?))
            }
        )*

        fn calculations() -> OpenApiRouter<App> {
            OpenApiRouter::new()$(.routes(routes!($handler)))*
        }

        /// The topic that an operation calculates.
        pub(super) fn topic_of(operation: &str) -> Option<&'static Topic> {
            [$((stringify!($handler), &clubphysics::$topic::TOPIC)),*]
                .into_iter()
                .find_map(|(handler, topic)| (handler == operation).then_some(topic))
        }
    };
}

calculations! {
    calculate_swing_weight, "/calc/swing-weight", swing_weight, SwingWeightInput => SwingWeightOutput;
    calculate_inertia, "/calc/inertia", inertia, InertiaInput => InertiaOutput;
    calculate_trim, "/calc/trim", trim, TrimInput => TrimOutput;
    calculate_frequency, "/calc/frequency", vibration, FrequencyInput => FrequencyOutput;
    calculate_soft_side, "/calc/soft-side", soft_side, SoftSideInput => SoftSideOutput;
    calculate_pluck, "/calc/pluck", pluck, PluckInput => PluckOutput;
    calculate_grip_size, "/calc/grip-size", grip_size, GripSizeInput => GripSizeOutput;
    calculate_lie, "/calc/lie", lie, LieInput => LieOutput;
    calculate_glue, "/calc/glue", glue, GlueInput => GlueOutput;
}

/// Run `pluck` on a recording as it is: a WAV file, or a CSV table of time and one or two axes.
#[utoipa::path(post, path = "/calc/pluck/recording", request_body(content = File, content_type = "application/octet-stream"),
    responses((status = 200, body = PluckOutput)))]
async fn calculate_pluck_recording(
    State(app): State<App>,
    bytes: axum::body::Bytes,
) -> Result<Answer<Value>, ApiError> {
    Ok(Answer(app.calculate_pluck(&bytes).await?))
}
