//! Every topic by its name: a JSON document in, a JSON document out.

use crate::advice::{Advice, ReadFault};
use serde_json::Value;

pub use crate::topic::Topic;
use crate::{PhysicsError, topic::nearest};

/// All topics, in the order of a menu.
#[must_use]
pub fn topics() -> &'static [Topic] {
    const TOPICS: &[Topic] = &[
        crate::swing_weight::TOPIC,
        crate::inertia::TOPIC,
        crate::trim::TOPIC,
        crate::vibration::TOPIC,
        crate::soft_side::TOPIC,
        crate::pluck::TOPIC,
        crate::grip_size::TOPIC,
        crate::lie::TOPIC,
        crate::glue::TOPIC,
    ];
    TOPICS
}

/// Runs the topic of this name.
///
/// # Errors
///
/// [`PhysicsError::Unreadable`] where there is no such topic or the document has an unknown field,
/// [`PhysicsError::WrongKind`] where a value is of the wrong kind, [`PhysicsError::Missing`] where one is left out; else
/// what the topic itself refuses.
///
/// # Examples
///
/// ```
/// let input = serde_json::json!({ "total_mass_g": 349.8, "balance_point_mm": 824.0 });
/// let output = clubphysics::calc::run("swing-weight", input)?;
/// assert_eq!(output["letter"], "D8.0");
/// # Ok::<(), clubphysics::PhysicsError>(())
/// ```
pub fn run(topic: &str, input: Value) -> Result<Value, PhysicsError> {
    let Some(found) = topics().iter().find(|known| known.name == topic) else {
        let names: Vec<&str> = topics().iter().map(|known| known.name).collect();
        return Err(PhysicsError::Unreadable {
            what: ReadFault::NoTopic { name: topic.to_owned() },
            advice: Box::new(Advice::Topics {
                near: nearest(topic, &names).map(str::to_owned),
                known: names.into_iter().map(str::to_owned).collect(),
            }),
        });
    };
    (found.run)(input)
}
