//! Nothing: the work is in `benches/counted.rs`. Cargo asks each package for a target that needs no feature.
