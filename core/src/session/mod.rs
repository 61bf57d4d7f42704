//! Ops folded into a session: rods, casts, ends, bites, rigs, peg.
