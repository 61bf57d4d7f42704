//! A log for the tests of this crate: entries a minute apart, identified by short numbers.

use crate::{Hlc, Moment, Op, Payload};
use uuid::Uuid;

pub const SESSION: Uuid = Uuid::from_u128(1);
pub const MINE: Uuid = Uuid::from_u128(2);
pub const THEIRS: Uuid = Uuid::from_u128(3);

pub fn id(n: u64) -> Uuid {
    Uuid::from_u128(u128::from(n) + 1_000)
}

/// The entry `n` minutes after the first, by this phone.
pub fn op(n: u64, payload: Payload) -> Op {
    let ms = n * 60_000;
    Op {
        id: id(n),
        device: MINE,
        hlc: Hlc { ms, count: 0 },
        at: Moment {
            wall_ms: i64::try_from(ms).unwrap(),
            offset_min: 0,
            zone: String::new(),
            mono_ms: i64::try_from(ms).unwrap(),
            boot: "one".into(),
            approx_s: 0,
        },
        session: SESSION,
        payload,
        amends: None,
        group: None,
    }
}

/// The entry `n` minutes after the first, which amends entry `target`.
pub fn amending(n: u64, target: u64, payload: Payload) -> Op {
    Op { amends: Some(id(target)), ..op(n, payload) }
}

pub fn undone(n: u64, target: u64) -> Op {
    op(n, Payload::Undone { targets: vec![id(target)] })
}

pub fn cast(n: u64) -> Op {
    op(n, Payload::Cast { rod: 1 })
}
