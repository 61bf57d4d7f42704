//! The swim: peg frame, spots, cells, fished and rested, kept-back water, where next.

pub mod range;
