//! Empty: the work is in `benches/counted.rs`. Cargo requires each package to have a target that needs no
//! feature.
