//! Which topics are answered, and by which file.

use super::{Topic, renewal, survival_km, survival_parametric};

/// Every topic the core answers so far.
pub const ALL: &[Topic] = &[renewal::TOPIC, survival_km::TOPIC, survival_parametric::TOPIC];
