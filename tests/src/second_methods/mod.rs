//! Methods that the app does not use: published ones that the app's own figures are held against, and laws that the
//! published check data covers. Nothing here is shipped.

pub mod compound;
pub mod length_weight;
pub mod meeus;
pub mod sink;
