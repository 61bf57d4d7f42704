#![no_main]
libfuzzer_sys::fuzz_target!(|data: &[u8]| restwater_tests::fuzz::fuzz_csv(data));
