//! All rules of Restwater, with no platform in them.
//!
//! A tap becomes one op in an append-only log; everything on a screen is computed from the log.
//! Rooms, in the order data walks through them: [`log`] → [`session`] → the answers
//! ([`bite`], [`compare`], [`swim`], [`match_day`], [`bench`], [`sky`], [`caution`]) →
//! [`screen`]. [`store`] keeps the log, [`exchange`] carries it between phones, and
//! [`app`] is the one place where the parts meet.
#![forbid(unsafe_code)]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

pub mod app;
pub mod bench;
pub mod bite;
pub mod caution;
pub mod compare;
pub mod exchange;
pub mod log;
pub mod match_day;
mod order;
pub mod screen;
pub mod session;
pub mod sky;
pub mod store;
pub mod swim;
