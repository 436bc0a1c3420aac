//! The documents of the glue topic.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

use super::{
    BatchInput, BatchOutput, CureInput, CureOutput, GlueRemark, JointInput, JointOutput, PullInput, PullOutput,
};
use crate::uncertainty::Correlation;

/// Questions about glue; any of them may be asked. `batch` and `pull` need `joint`.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
pub struct GlueInput {
    /// The gap to be filled.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joint: Option<JointInput>,
    /// Amounts for several joints.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub batch: Option<BatchInput>,
    /// Pot life and cure at a temperature.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cure: Option<CureInput>,
    /// What the swing asks of the joint.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pull: Option<PullInput>,
    /// Correlations between inputs that have standard deviations.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub correlations: Vec<Correlation>,
}

/// Answers about glue.
#[derive(Debug, Clone, Default, PartialEq, Serialize, ToSchema)]
pub struct GlueOutput {
    /// The gap and what fills it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub joint: Option<JointOutput>,
    /// Amounts to weigh out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub batch: Option<BatchOutput>,
    /// Pot life and cure.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cure: Option<CureOutput>,
    /// Force and stress.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pull: Option<PullOutput>,
    /// What to think about before the glue is mixed.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub warnings: Vec<GlueRemark>,
}
