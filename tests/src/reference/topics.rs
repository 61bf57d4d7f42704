//! Which topics are answered, and by which file.

use super::{Topic, common_practice, renewal, survival_bayes, survival_km, survival_parametric};

/// Every topic the core answers so far.
pub const ALL: &[Topic] = &[
    common_practice::TOPIC,
    renewal::TOPIC,
    survival_bayes::TOPIC,
    survival_km::TOPIC,
    survival_parametric::TOPIC,
];
