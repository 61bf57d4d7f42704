//! Which topics are answered, and by which file.

use super::{
    Topic, binomial_fisher, common_practice, compound, gamma_poisson, geodesy, logrank, planar,
    poisson_rates, renewal, survival_bayes, survival_km, survival_parametric,
};

/// Every topic the core answers so far.
pub const ALL: &[Topic] = &[
    binomial_fisher::TOPIC,
    common_practice::TOPIC,
    compound::TOPIC,
    gamma_poisson::TOPIC,
    geodesy::TOPIC,
    logrank::TOPIC,
    planar::TOPIC,
    poisson_rates::TOPIC,
    renewal::TOPIC,
    survival_bayes::TOPIC,
    survival_km::TOPIC,
    survival_parametric::TOPIC,
];
