//! The uniffi surface of restwater-core. No rule lives here.
uniffi::setup_scaffolding!("restwater");
