//! Builds a day op by op, for tests.

use super::Stamp;
use restwater_log::{HybridClock, Moment, Op, Payload, SessionSetup};
use std::sync::Arc;
use uuid::Uuid;

/// Builds the ops of one session by one phone.
pub struct Written {
    /// The ops so far.
    pub ops: Vec<Op>,
    /// The phone that writes them.
    pub device: Uuid,
    clock: HybridClock,
    boot: String,
}

/// The session of every day that is built here.
pub const SESSION: Uuid = Uuid::from_u128(0x5E55);
const START_MS: i64 = 1_700_000_000_000;

/// A moment this many seconds into the day.
pub fn second(s: i64) -> Moment {
    Moment {
        wall_ms: START_MS + s * 1_000,
        offset_min: 0,
        zone: "Etc/UTC".into(),
        mono_ms: 1_000_000 + s * 1_000,
        boot: "first".into(),
        approx_s: 0,
    }
}

/// The same second on the time line of a day whose session this phone began.
pub fn stamp(s: i64) -> Stamp {
    Stamp { shown: Arc::new(second(s)), at_ms: s * 1_000, uncertain_ms: 0, run: Some(0) }
}

impl Written {
    /// A day that begins with this many rods.
    pub fn new(rods: u8) -> Self {
        let mut day = Self {
            ops: Vec::new(),
            device: Uuid::from_u128(0xD1),
            clock: HybridClock::default(),
            boot: "first".into(),
        };
        day.log(0, Payload::SessionStarted(SessionSetup { rods, ..SessionSetup::default() }));
        day
    }

    /// A day of another phone, without its start.
    pub fn by(device: u128) -> Self {
        Self {
            device: Uuid::from_u128(device),
            ops: Vec::new(),
            clock: HybridClock::default(),
            boot: "first".into(),
        }
    }

    /// Logs at a second of the day and returns the op's id.
    pub fn log(&mut self, s: i64, payload: Payload) -> Uuid {
        self.push(s, payload, None)
    }

    /// Amends an op.
    pub fn amend(&mut self, s: i64, target: Uuid, payload: Payload) -> Uuid {
        self.push(s, payload, Some(target))
    }

    /// Undoes ops.
    pub fn undo(&mut self, s: i64, targets: &[Uuid]) -> Uuid {
        self.push(s, Payload::Undone { targets: targets.to_vec() }, None)
    }

    /// The phone is restarted.
    pub fn reboot(&mut self) {
        self.boot = "second".into();
    }

    fn push(&mut self, s: i64, payload: Payload, amends: Option<Uuid>) -> Uuid {
        let at = Moment { boot: self.boot.clone(), ..second(s) };
        self.write(at, payload, amends, None)
    }

    /// Writes any entry, at a moment of any clock.
    pub fn write(&mut self, at: Moment, payload: Payload, amends: Option<Uuid>, group: Option<Uuid>) -> Uuid {
        let id = Uuid::from_u128(self.device.as_u128() << 64 | (self.ops.len() as u128 + 1));
        let hlc = self.clock.tick(at.wall_ms);
        self.ops.push(Op { id, device: self.device, hlc, at, session: SESSION, payload, amends, group });
        id
    }
}
