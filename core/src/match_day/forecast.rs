//! What the rest of the match is likely to hold: casts, bites, weight, the last useful cast.

pub mod compound;
