//! The peg's place as the Swim screen types it.
//!
//! Each record is the core's own type, declared again for uniffi: the compiler refuses one that differs.

use restwater_screen::{PegPlaceView, TypedField};

/// Where the peg lies on the earth, as typed or as set: optional, and left out of files unless asked for.
#[uniffi::remote(Record)]
pub struct PegPlaceView {
    /// Opens these fields.
    pub label: String,
    /// "not set", or the place.
    pub value: String,
    /// What it is for.
    pub note: String,
    /// The three fields, in order.
    pub fields: Vec<TypedField>,
}

/// A line to type into.
#[uniffi::remote(Record)]
pub struct TypedField {
    /// What it is handed back by.
    pub field: String,
    /// What it is called.
    pub label: String,
    /// What stands in it.
    pub value: String,
}
