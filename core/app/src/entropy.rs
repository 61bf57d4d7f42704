//! The source of the random part of ids: the shell's generator, or a seeded one in a test.

/// A source of random bytes. The core has none of its own.
pub trait Entropy: Send {
    /// Fills the bytes.
    fn fill(&mut self, bytes: &mut [u8]);
}

/// A version 7 UUID at this wall time.
pub(super) fn new_id(entropy: &mut dyn Entropy, wall_ms: i64) -> uuid::Uuid {
    let mut random = [0_u8; 10];
    entropy.fill(&mut random);
    let ms = u64::try_from(wall_ms).unwrap_or(0);
    uuid::Builder::from_unix_timestamp_millis(ms, &random).into_uuid()
}
