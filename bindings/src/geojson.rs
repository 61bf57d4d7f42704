//! The swim as a file: GeoJSON out and in, and the peg's place as the Swim screen types it.
//!
//! Each record is the core's own type, declared again for uniffi: the compiler refuses one that differs.

use crate::error::RestwaterError;
use crate::object::Restwater;
use restwater_core::app::{GeoJsonLook, Update};
use restwater_core::log::Moment;
use restwater_core::screen::{PegPlaceView, TypedField};

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

/// What taking a GeoJSON file in would add to the session, in words.
#[uniffi::remote(Record)]
pub struct GeoJsonLook {
    /// "New from the file: 3 marks, 1 hazard, an outline."
    pub says: String,
    /// Each thing it would add.
    pub adds: Vec<String>,
    /// What is here already.
    pub already: Vec<String>,
    /// What could not be used.
    pub skipped: Vec<String>,
    /// Entries it would write; 0 where there is nothing new.
    pub entries: u32,
}

#[uniffi::export]
impl Restwater {
    /// The swim of the session as GeoJSON (RFC 7946): marks, features, hazards, outlines. Positions are left out unless
    /// asked for, and then need the peg's place.
    pub fn export_geojson(&self, with_position: bool) -> Result<String, RestwaterError> {
        self.with(|app| app.export_geojson(with_position))
    }

    /// What taking this text in would add. Changes nothing.
    pub fn look_at_geojson(&self, text: &str) -> Result<GeoJsonLook, RestwaterError> {
        self.with(|app| app.look_at_geojson(text))
    }

    /// Takes it in as entries that one UNDO takes back together.
    pub fn import_geojson(&self, text: &str, at: &Moment) -> Result<Update, RestwaterError> {
        self.with(|app| app.import_geojson(text, at))
    }
}
