//! Waits: how long from splash to bite, and how long to leave the next cast.

mod wait;

pub use wait::{Wait, WaitError};
