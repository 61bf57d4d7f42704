//! A phone for tests: seeded ids, and this machine's own clocks.

use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;
use restwater_app::{App, DayTap, Entropy, read_day};
use restwater_log::Moment;
use std::error::Error;
use std::time::{SystemTime, UNIX_EPOCH};

/// Random bytes from a seed.
pub struct Seeded(ChaCha8Rng);

impl Seeded {
    /// The same seed gives the same ids.
    pub fn new(seed: u64) -> Self {
        Self(ChaCha8Rng::seed_from_u64(seed))
    }
}

impl Entropy for Seeded {
    fn fill(&mut self, bytes: &mut [u8]) {
        self.0.fill_bytes(bytes);
    }
}

/// Plays a day file into a log of its own and calls `each` after every line; returns the app at the end.
pub fn play(
    text: &str,
    each: impl FnMut(&DayTap, &mut App) -> Result<(), Box<dyn Error>>,
) -> Result<App, Box<dyn Error>> {
    play_in("en-GB", text, each)
}

/// The same on a phone in another language.
pub fn play_in(
    language: &str,
    text: &str,
    mut each: impl FnMut(&DayTap, &mut App) -> Result<(), Box<dyn Error>>,
) -> Result<App, Box<dyn Error>> {
    let dir = tempfile::tempdir()?;
    let day = read_day(text)?;
    let begins = &day.first().ok_or("a day has lines")?.at;
    let mut app = App::open(dir.path(), Box::new(Seeded::new(1)), begins)?;
    app.set_language(language);
    for tap in &day {
        if let Some(action) = &tap.action {
            app.act(action, &tap.at).map_err(|error| format!("{action:?}: {}", app.message(&error)))?;
        }
        each(tap, &mut app)?;
    }
    Ok(app)
}

/// Now, by the machine's wall clock, uptime and boot id.
pub fn now() -> Result<Moment, Box<dyn Error>> {
    let wall_ms = i64::try_from(SystemTime::now().duration_since(UNIX_EPOCH)?.as_millis())?;
    let uptime = std::fs::read_to_string("/proc/uptime")?;
    let seconds: f64 = uptime.split(' ').next().unwrap_or("0").parse()?;
    let boot = std::fs::read_to_string("/proc/sys/kernel/random/boot_id")?.trim().to_owned();
    Ok(Moment {
        wall_ms,
        offset_min: 0,
        zone: "Etc/UTC".into(),
        mono_ms: (seconds * 1_000.0) as i64,
        boot,
        approx_s: 0,
    })
}
