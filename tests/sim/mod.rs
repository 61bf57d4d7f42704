//! The simulated bank: seeded days on waters whose truth is known, fished by fixed habits, by the
//! trade's rule, by Restwater's advice and by an angler who knows the truth.
//!
//! Nothing here uses the core's models of waits: the waters have shapes of their own, so that the
//! advice is measured against something it was not written from. All figures are invented; they
//! are never shown as facts.

pub mod angler;
pub mod day;
pub mod luck;
pub mod prototype;
pub mod restwater;
pub mod share;
pub mod water;
