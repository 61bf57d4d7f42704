//! An empty uniffi library with bundled SQLite, for `./dev bench library` and `./dev bench ffi`.

uniffi::setup_scaffolding!("restwater_empty");

/// A call that does nothing: what crossing the boundary costs.
#[uniffi::export]
pub fn nothing() {}

/// Keeps SQLite in the library, as an app that opens a file would.
#[uniffi::export]
#[must_use]
pub fn opens(path: &str) -> bool {
    rusqlite::Connection::open(path).is_ok()
}
