//! An empty uniffi library with bundled SQLite, for `./dev bench library` and `./dev bench ffi`.

uniffi::setup_scaffolding!("restwater_empty");

/// A call that does nothing, to measure the cost of crossing the boundary.
#[uniffi::export]
pub fn nothing() {}

/// Keeps SQLite linked into the library, as in an app that opens a file.
#[uniffi::export]
#[must_use]
pub fn opens(path: &str) -> bool {
    rusqlite::Connection::open(path).is_ok()
}
