//! The clocks of one phone, driven by the true time, which only the model knows.

/// A reading of a phone's clocks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reading {
    /// Wall clock, ms since 1970 UTC.
    pub wall_ms: i64,
    /// Monotonic clock, ms since the boot.
    pub mono_ms: i64,
    /// The plain count of boots, as Android provides it: two phones may have the same.
    pub boot: String,
    /// Minutes east of UTC.
    pub offset_min: i16,
}

/// A wall clock that drifts and is moved, and a monotonic clock that restarts at each boot.
#[derive(Debug, Clone)]
pub struct Clock {
    /// The error of the wall clock (wall minus true) when it was last set.
    wall_off_ms: i64,
    set_at: i64,
    /// Parts per million by which the wall clock gains.
    pub drift_ppm: i64,
    booted_at: i64,
    boots: u32,
    offset_min: i16,
}

impl Clock {
    /// A phone that was booted an hour before `now`, its wall clock right.
    pub fn new(now: i64, drift_ppm: i64) -> Self {
        Self { wall_off_ms: 0, set_at: now, drift_ppm, booted_at: now - 3_600_000, boots: 1, offset_min: 0 }
    }

    /// What the clocks show.
    pub fn read(&self, now: i64) -> Reading {
        Reading {
            wall_ms: now + self.wall_off_ms + (now - self.set_at) * self.drift_ppm / 1_000_000,
            mono_ms: now - self.booted_at,
            boot: format!("boot-{}", self.boots),
            offset_min: self.offset_min,
        }
    }

    /// Sets the wall clock to be this much ahead of the true time.
    pub fn set_off(&mut self, now: i64, off_ms: i64) {
        (self.wall_off_ms, self.set_at) = (off_ms, now);
    }

    /// Sets the wall clock to a time.
    pub fn set_wall(&mut self, now: i64, wall_ms: i64) {
        self.set_off(now, wall_ms - now);
    }

    /// Sets another time zone.
    pub fn set_zone(&mut self, offset_min: i16) {
        self.offset_min = offset_min;
    }

    /// Restarts the phone.
    pub fn boot(&mut self, now: i64) {
        (self.booted_at, self.boots) = (now - 20_000, self.boots + 1);
    }
}
