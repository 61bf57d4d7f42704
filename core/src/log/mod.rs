//! Ops, moments, clocks, canonical bytes and the merge law.
