//! Days of many simulated anglers, as their phones logged them.

use crate::sim::angler::Habit;
use crate::sim::day::{Bank, Cast, TURN, fish};
use crate::sim::luck::Luck;
use crate::sim::water::Water;
use restwater_log::{Conditions, HybridClock, Moment, Op, Payload, SessionSetup};
use restwater_session::{Session, fold};
use uuid::Uuid;

/// 2025-11-01 08:00 UTC.
pub const BEGIN_MS: i64 = 1_761_984_000_000;
/// Days from November to March.
const WINTER: u64 = 151;
/// When those anglers wind in.
const LEAVE_MIN: [f64; 4] = [8.0, 12.0, 18.0, 25.0];

/// A simulated day as logged by its angler, with how cold the water was if that was logged.
pub fn one_day(water: &Water, number: u64, water_tenth_c: Option<i16>) -> Session {
    let mut habit = Habit(LEAVE_MIN[(number % 4) as usize]);
    let day = fish(water, &Luck::of_day(water.seed(0), number), &mut habit, Bank::all_in());
    let begin = BEGIN_MS + ((number * 37) % WINTER).cast_signed() * 86_400_000;
    let session = Uuid::from_u128(0x5E55_0000_0000_0000 + u128::from(number));
    let mut log = Log { session, begin, clock: HybridClock::default(), ops: Vec::new() };
    let setup = SessionSetup { water: Some(water.name.into()), rods: 1, ..SessionSetup::default() };
    log.add(0.0, Payload::SessionStarted(setup));
    if water_tenth_c.is_some() {
        log.add(0.0, Payload::ConditionsSet(Conditions { water_tenth_c, ..Conditions::default() }));
    }
    let mut clock = 1.0;
    for cast in &day.log {
        clock = log.cast(clock, cast);
    }
    log.add(clock + 1.0, Payload::SessionEnded);
    fold(session, &log.ops)
}

struct Log {
    session: Uuid,
    begin: i64,
    clock: HybridClock,
    ops: Vec<Op>,
}

impl Log {
    /// Logs a cast at a minute of the day; returns the minute of the next one.
    fn cast(&mut self, minute: f64, cast: &Cast) -> f64 {
        self.add(minute, Payload::Cast { rod: 1 });
        let end = minute + cast.minutes;
        if cast.bite {
            self.add(end, Payload::Bite { rod: 1 });
            self.add(end + 0.5, Payload::Landed { rod: 1, fish: None });
        } else if cast.end_seen {
            self.add(end, Payload::WoundIn { rod: 1 });
        }
        end + TURN
    }

    /// Logs to the second, as a phone's clock would show it.
    fn add(&mut self, minute: f64, payload: Payload) {
        let ms = (minute * 60.0).round() as i64 * 1_000;
        let at = Moment {
            wall_ms: self.begin + ms,
            offset_min: 0,
            zone: "Etc/UTC".into(),
            mono_ms: ms,
            boot: "one".into(),
            approx_s: 0,
        };
        let hlc = self.clock.tick(at.wall_ms);
        let id = Uuid::from_u128(self.session.as_u128() << 64 | (self.ops.len() as u128 + 1));
        let device = Uuid::from_u128(1);
        self.ops.push(Op { id, device, hlc, at, session: self.session, payload, amends: None, group: None });
    }
}
