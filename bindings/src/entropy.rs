//! Random bytes from the phone.

use restwater_app::Entropy;

/// The system's generator. If it fails, which doesn't happen on a supported phone after boot, ids use a
/// counter within the process instead. They stay unique on this phone, since they contain the time as well.
#[derive(Default)]
pub(crate) struct SystemEntropy {
    fallback: u64,
}

impl Entropy for SystemEntropy {
    fn fill(&mut self, bytes: &mut [u8]) {
        if getrandom::fill(bytes).is_err() {
            for chunk in bytes.chunks_mut(8) {
                self.fallback = self.fallback.wrapping_add(0x9E37_79B9_7F4A_7C15);
                chunk.copy_from_slice(&self.fallback.to_be_bytes()[..chunk.len()]);
            }
        }
    }
}
