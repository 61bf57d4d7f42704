//! The uniffi surface of restwater-core. No rule lives here.
uniffi::setup_scaffolding!("restwater");

/// Version of the core that the shell was loaded with, as `major.minor.patch`.
#[uniffi::export]
#[must_use]
pub fn core_version() -> String {
    env!("CARGO_PKG_VERSION").to_owned()
}
