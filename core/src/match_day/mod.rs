//! Match day: the clock, the casts it leaves, the weight in the nets and the weigh-in.

pub mod casts_left;
pub mod class;
pub mod clock;
pub mod forecast;
pub mod length_weight;
pub mod own_count;
pub mod rest;
pub mod rules;
pub mod running;
pub mod setup;
pub mod weigh_in;
pub mod weight;
