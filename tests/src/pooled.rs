//! Days of many simulated anglers, as their phones logged them.

use crate::sim::angler::Habit;
use crate::sim::day::{Bank, Cast, TURN, fish};
use crate::sim::luck::Luck;
use crate::sim::water::Water;
use restwater_log::{Conditions, HybridClock, Moment, Op, Payload, SessionSetup, WeightUnit};
use restwater_match_day::rules::MatchRules;
use restwater_match_day::weight::Weight;
use restwater_session::{Logged, MatchSetup, Session, fold};
use uuid::Uuid;

/// 2025-11-01 08:00 UTC.
const BEGIN_MS: i64 = 1_761_984_000_000;
/// Days from November to March.
const WINTER: u64 = 151;
/// When those anglers wind in.
const LEAVE_MIN: [f64; 4] = [8.0, 12.0, 18.0, 25.0];
/// How late the last bait of a match is wound in, counted from its splash, and when its all-out was.
const WOUND_IN_MIN: f64 = 70.0;
const ALL_OUT_MIN: f64 = 10.0;

/// What is unusual about a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Oddity {
    /// Nothing.
    None,
    /// A match: the bait settles for a minute, and the last cast was wound in an hour after all-out.
    Match,
    /// Far west of Greenwich, with a clock that read 1970 for one cast.
    ClockSet,
    /// A twitch restarts the wait.
    Twitched,
    /// A cast between the first two was entered at home.
    Mended,
    /// That cast was then undone.
    Undone,
    /// All casts were undone at home, so that none is left.
    Emptied,
    /// The whole day was undone at home, its START too.
    Taken,
}

impl Oddity {
    /// All of them.
    pub const ALL: [Self; 8] = [
        Self::None,
        Self::Match,
        Self::ClockSet,
        Self::Twitched,
        Self::Mended,
        Self::Undone,
        Self::Emptied,
        Self::Taken,
    ];

    /// How many entries were made at home, after the day was sent for the first time.
    pub fn at_home(self) -> usize {
        match self {
            Self::Mended => 2,
            Self::Undone | Self::Emptied | Self::Taken => 1,
            _ => 0,
        }
    }
}

/// A simulated day as logged.
pub struct Day {
    id: Uuid,
    ops: Vec<Op>,
}

impl Day {
    /// The day, by the core.
    pub fn session(&self) -> Session {
        fold(self.id, &self.ops)
    }

    /// How many entries it has.
    pub fn entries(&self) -> u64 {
        self.ops.len() as u64
    }

    /// The day as it was before its last entries.
    #[must_use]
    pub fn before_last(&self, entries: usize) -> Day {
        Day { id: self.id, ops: self.ops[..self.ops.len().saturating_sub(entries)].to_vec() }
    }
}

/// A simulated day as logged by its angler, with how cold the water was if that was logged.
pub fn one_day(water: &Water, number: u64, water_tenth_c: Option<i16>) -> Day {
    odd_day(water, Some(water.name), number, water_tenth_c, Oddity::None)
}

/// A day with something unusual on a water that its angler calls so.
pub fn odd_day(
    water: &Water,
    called: Option<&str>,
    number: u64,
    water_tenth_c: Option<i16>,
    oddity: Oddity,
) -> Day {
    let mut habit = Habit(LEAVE_MIN[(number % 4) as usize]);
    let day = fish(water, &Luck::of_day(water.seed(0), number), &mut habit, Bank::all_in());
    let begin = BEGIN_MS + ((number * 37) % WINTER).cast_signed() * 86_400_000;
    let mut log = Log::new(number, begin, oddity);
    let setup = SessionSetup {
        water: called.map(str::to_owned),
        rods: 1,
        settle_s: if oddity == Oddity::Match { 60 } else { 0 },
        twitch_restarts: oddity == Oddity::Twitched,
        ..SessionSetup::default()
    };
    log.add(0.0, Payload::SessionStarted(setup));
    if water_tenth_c.is_some() {
        log.add(0.0, Payload::ConditionsSet(Conditions { water_tenth_c, ..Conditions::default() }));
    }
    let mut clock = 1.0;
    for (n, cast) in day.log.iter().enumerate() {
        log.clock_at_1970 = oddity == Oddity::ClockSet && n == 1;
        clock = log.cast(clock, cast);
    }
    log.clock_at_1970 = false;
    if oddity == Oddity::Match {
        clock = log.last_of_a_match(clock);
    }
    log.add(clock + 1.0, Payload::SessionEnded);
    if matches!(oddity, Oddity::Mended | Oddity::Undone) && day.log.len() > 1 {
        log.cast_between(1.0 + day.log[0].minutes);
    }
    if oddity == Oddity::Undone {
        let targets = log.ops[log.ops.len() - 2..].iter().map(|op| op.id).collect();
        log.add(clock + 2.0, Payload::Undone { targets });
    }
    if matches!(oddity, Oddity::Emptied | Oddity::Taken) {
        let stays = |op: &&Op| {
            oddity == Oddity::Emptied
                && matches!(op.payload, Payload::SessionStarted(_) | Payload::SessionEnded)
        };
        let targets = log.ops.iter().filter(|op| !stays(op)).map(|op| op.id).collect();
        log.add(clock + 2.0, Payload::Undone { targets });
    }
    Day { id: log.session, ops: log.ops }
}

struct Log {
    session: Uuid,
    begin: i64,
    offset_min: i16,
    twitches: bool,
    clock_at_1970: bool,
    clock: HybridClock,
    ops: Vec<Op>,
}

impl Log {
    fn new(number: u64, begin: i64, oddity: Oddity) -> Self {
        Self {
            session: Uuid::from_u128(0x5E55_0000_0000_0000 + u128::from(number)),
            begin,
            // The evening before, there.
            offset_min: if oddity == Oddity::ClockSet { -600 } else { 0 },
            twitches: oddity == Oddity::Twitched,
            clock_at_1970: false,
            clock: HybridClock::default(),
            ops: Vec::new(),
        }
    }

    /// Logs a cast at a minute of the day; returns the minute of the next one.
    fn cast(&mut self, minute: f64, cast: &Cast) -> f64 {
        self.add(minute, Payload::Cast { rod: 1 });
        if self.twitches {
            for share in [0.25, 0.5] {
                self.add(minute + share * cast.minutes, Payload::Twitch { rod: 1 });
            }
        }
        let end = minute + cast.minutes;
        if cast.bite {
            self.add(end, Payload::Bite { rod: 1 });
            self.add(end + 0.5, Payload::Landed { rod: 1, fish: None });
        } else if cast.end_seen {
            self.add(end, Payload::WoundIn { rod: 1 });
        }
        end + TURN
    }

    /// Logs a cast in the turn-round that begins at this minute.
    fn cast_between(&mut self, end: f64) {
        self.add(end + 0.75, Payload::Cast { rod: 1 });
        self.add(end + 1.75, Payload::WoundIn { rod: 1 });
    }

    /// Logs the last cast of a match and when it was; returns the minute of its end.
    fn last_of_a_match(&mut self, minute: f64) -> f64 {
        let setup = MatchSetup {
            all_in_ms: self.begin,
            all_out_ms: self.begin + ms_of(minute + ALL_OUT_MIN),
            offset_ms: 0,
            unit: WeightUnit::Grams,
            mark: Weight::Grams(10),
            rules: MatchRules::default(),
            classes: Vec::new(),
        };
        self.add(minute, Payload::Cast { rod: 1 });
        self.add(minute + 1.0, Payload::MatchSet(setup.logged()));
        self.add(minute + WOUND_IN_MIN, Payload::WoundIn { rod: 1 });
        minute + WOUND_IN_MIN
    }

    /// Logs to the second, as a phone's clock would show it.
    fn add(&mut self, minute: f64, payload: Payload) {
        let mono_ms = ms_of(minute);
        let at = Moment {
            wall_ms: if self.clock_at_1970 { 0 } else { self.begin } + mono_ms,
            offset_min: self.offset_min,
            zone: "Etc/UTC".into(),
            mono_ms,
            boot: "one".into(),
            approx_s: 0,
        };
        let hlc = self.clock.tick(at.wall_ms);
        let id = Uuid::from_u128(self.session.as_u128() << 64 | (self.ops.len() as u128 + 1));
        let device = Uuid::from_u128(1);
        self.ops.push(Op { id, device, hlc, at, session: self.session, payload, amends: None, group: None });
    }
}

fn ms_of(minute: f64) -> i64 {
    (minute * 60.0).round() as i64 * 1_000
}
