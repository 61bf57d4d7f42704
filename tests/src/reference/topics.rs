//! Which topics are answered, and by which file.

use super::{Topic, binomial_fisher, compound, gamma_poisson, logrank, poisson_rates};

/// Every topic the core answers so far.
pub const ALL: &[Topic] =
    &[binomial_fisher::TOPIC, compound::TOPIC, gamma_poisson::TOPIC, logrank::TOPIC, poisson_rates::TOPIC];
