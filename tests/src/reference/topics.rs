//! Which topics are computed, and by which file.

use super::{
    Topic, binomial_fisher, common_practice, compound, fed_casts, gamma_poisson, geodesy, lengthweight,
    logrank, over_days, physics, planar, poisson_rates, renewal, sun, survival_bayes, survival_km,
    survival_parametric,
};

/// Every topic that the core computes so far.
pub const ALL: &[Topic] = &[
    binomial_fisher::TOPIC,
    common_practice::TOPIC,
    compound::TOPIC,
    fed_casts::TOPIC,
    gamma_poisson::TOPIC,
    geodesy::TOPIC,
    lengthweight::TOPIC,
    logrank::TOPIC,
    over_days::TOPIC,
    physics::TOPIC,
    planar::TOPIC,
    poisson_rates::TOPIC,
    renewal::TOPIC,
    sun::TOPIC,
    survival_bayes::TOPIC,
    survival_km::TOPIC,
    survival_parametric::TOPIC,
];
