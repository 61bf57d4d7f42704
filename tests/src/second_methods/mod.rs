//! Methods that the app does not use: published ones with which the app's own figures are compared, and
//! distributions that the published check data covers. Nothing here is shipped.

pub mod compound;
pub mod length_weight;
pub mod meeus;
pub mod sink;
