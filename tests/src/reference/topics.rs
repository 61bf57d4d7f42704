//! Which topics are computed, and by which file.

use super::{
    Topic, binomial, common_practice, fed_casts, geodesy, logrank, meeus, over_days, physics, planar,
    poisson_rates, sun, survival_km, wait_shapes,
};

/// Every topic that is computed.
pub const ALL: &[Topic] = &[
    binomial::TOPIC,
    common_practice::TOPIC,
    fed_casts::TOPIC,
    geodesy::TOPIC,
    logrank::TOPIC,
    meeus::TOPIC,
    over_days::TOPIC,
    physics::TOPIC,
    planar::TOPIC,
    poisson_rates::TOPIC,
    sun::TOPIC,
    survival_km::TOPIC,
    wait_shapes::TOPIC,
];
