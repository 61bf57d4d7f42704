//! The bindings generator, pinned to the same uniffi as the library.
fn main() {
    uniffi::uniffi_bindgen_main();
}
