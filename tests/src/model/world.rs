//! Two phones, one true time, and what is done to them step by step.

use super::act;
use super::check::{self, Broken, Now, broken};
use super::clock::{Clock, Reading};
use super::day::{Day, Step};
use super::device::Device;
use super::naive::{self, Session};
use super::oracle::{Entry, Oracle, Truth, Truths};
use super::plans;
use serde_json::{Map, Value};
use std::path::Path;

/// 2026-01-17 07:00 UTC, where each day begins.
const BEGIN_MS: i64 = 1_768_633_200_000;
/// Taps that go to the session shown.
const OF_SESSION: &[&str] = &[
    "end_session",
    "cast",
    "bite",
    "landed",
    "lost",
    "missed",
    "liner",
    "indication",
    "wound_in",
    "twitch",
    "set_rig",
    "set_spot",
    "time_back",
    "note",
    "set_mark",
    "place_peg",
    "conditions",
    "swim",
    "mend",
    "match",
    "fish",
    "feed",
    "seen",
    "away",
    "returned",
];

/// A phone with what must be true about it.
pub struct Side {
    /// The phone.
    pub device: Device,
    /// What must be true.
    pub oracle: Oracle,
}

/// The whole model.
pub struct World {
    /// The true time.
    pub now: i64,
    /// The two phones.
    pub sides: Vec<Side>,
    /// True times of all entries.
    pub truths: Truths,
    /// Seed of the day.
    pub seed: u64,
    /// Steps that did something, to show that the day is not idle.
    pub taken: u64,
    /// Taps that were refused.
    pub refused: u64,
}

/// Plays a day in an empty folder; returns the world after it, or the first broken promise and at which step.
pub fn play(day: &Day, folder: &Path) -> Result<World, (usize, Broken)> {
    let setup = |e: std::io::Error| (0, Broken { promise: "the model can begin", why: e.to_string() });
    let mut world = World::new(day.seed, folder).map_err(setup)?;
    for (step, number) in day.steps.iter().zip(0..) {
        world.step(step).map_err(|why| (number, why))?;
    }
    let last = day.steps.len();
    for side in 0..2 {
        world.whole_log(side).map_err(|why| (last, why))?;
    }
    Ok(world)
}

fn own_fault(why: impl Into<String>) -> Broken {
    Broken { promise: "the model itself works", why: why.into() }
}

/// An error with the model's own files.
pub fn io(error: impl std::fmt::Display) -> Broken {
    own_fault(error.to_string())
}

impl World {
    fn new(seed: u64, folder: &Path) -> std::io::Result<Self> {
        let side = |number: u64, drift: i64| -> std::io::Result<Side> {
            let folder = folder.join(format!("phone-{number}"));
            let device = Device::new(folder, seed.wrapping_mul(2) + number, Clock::new(BEGIN_MS, drift))?;
            Ok(Side { device, oracle: Oracle::default() })
        };
        let sides = vec![side(0, 17)?, side(1, -40)?];
        Ok(Self { now: BEGIN_MS, sides, truths: Truths::new(), seed, taken: 0, refused: 0 })
    }

    /// One step, and everything that is checked after it.
    pub fn step(&mut self, step: &Step) -> Result<(), Broken> {
        self.now += step.after_ms;
        self.taken += 1;
        let bank = match step.name() {
            None => self.tap(step.phone, &step.what)?,
            Some(name) => self.happen(name, step).map(|()| None)?,
        };
        self.check_with(step.phone, bank)
    }

    /// The clocks of a phone, later than the rule about repeated taps can reach: the model taps these keys to check
    /// something, so the app mustn't take them for accidents.
    pub(super) fn unhurried(&mut self, side: usize) -> Reading {
        self.now += restwater_app::REPEAT_MS;
        self.sides[side].device.read(self.now)
    }

    /// One tap; returns the Bank screen if it was accepted.
    fn tap(&mut self, side: usize, line: &Map<String, Value>) -> Result<Option<act::Bank>, Broken> {
        let Some(line) = self.resolved(side, line) else { return Ok(None) };
        let action = act::action(&line).map_err(own_fault)?;
        let verb = line.get("do").and_then(Value::as_str).unwrap_or_default();
        let reading = self.sides[side].device.read(self.now);
        let before = self.sides[side].oracle.shown().map(str::to_owned);
        let app = self.app(side)?;
        let tapped = match act::tap(app, &action, &reading) {
            Ok(tapped) => tapped,
            Err(refused) => return self.refusal(side, verb, &refused).map(|()| None),
        };
        self.sides[side].device.chose(verb, line.get("tap").unwrap_or_default());
        if !tapped.changed {
            return Ok(Some(tapped.bank));
        }
        let everywhere = verb.ends_with("_import");
        let new = self.new_entries(side, everywhere)?;
        if new.is_empty() {
            return broken("nothing confirmed is lost", format!("{verb} was confirmed and wrote nothing"));
        }
        let in_book = line.get("into").is_some_and(|into| into == "note" || into == "plan");
        // One whose START was undone is no longer open in the Book.
        let in_force = |id: &String| naive::session(&self.sides[side].oracle, id, &self.truths).begun;
        let meant = self.sides[side].device.opened.clone().filter(|id| in_book && in_force(id)).or(before);
        if (in_book || OF_SESSION.contains(&verb))
            && let Some(entry) = new.iter().find(|entry| Some(&entry.session) != meant.as_ref())
        {
            let why = format!("{verb} went to {}, meant was {meant:?}", entry.session);
            return broken("a tap goes to the session shown", why);
        }
        plans::taken(&self.sides[side].oracle, &new)?;
        self.take(side, verb, new, &tapped.notice)?;
        Ok(Some(tapped.bank))
    }

    /// A tap that was refused stored nothing; on a full disk that is checked at once.
    fn refusal(&mut self, side: usize, verb: &str, refused: &act::Refused) -> Result<(), Broken> {
        self.refused += 1;
        let full = self.sides[side].device.on_disk;
        if refused.fault || (refused.not_saved && !full) {
            return broken("a tap that can't be taken says why", format!("{verb}: {}", refused.why));
        }
        let oracle = &self.sides[side].oracle;
        let known = verb == "undo" && oracle.undo().is_some() || verb == "redo" && oracle.redo().is_some();
        if known && !refused.not_saved {
            return broken("UNDO and REDO do what they name", format!("{verb} was refused: {}", refused.why));
        }
        if refused.not_saved { self.whole_log(side) } else { Ok(()) }
    }

    /// The oracle learns what a confirmed tap wrote.
    fn take(&mut self, side: usize, verb: &str, new: Vec<Entry>, notice: &str) -> Result<(), Broken> {
        let oracle = &mut self.sides[side].oracle;
        let named = match verb {
            "undo" => oracle.pressed_undo(new),
            "redo" => oracle.pressed_redo(new),
            "undo_import" | "redo_import" => {
                oracle.add(new);
                return Ok(());
            }
            _ => {
                oracle.did(new);
                return Ok(());
            }
        };
        if named.as_ref().is_none_or(|deed| !notice.contains(deed.named())) {
            let why = format!("{verb} says \"{notice}\", expected {:?}", named.map(|deed| deed.says));
            return broken("UNDO and REDO name the angler's last deed", why);
        }
        Ok(())
    }

    /// The app of a side, which is opened if necessary.
    pub fn app(&mut self, side: usize) -> Result<&mut restwater_app::App, Broken> {
        let device = &mut self.sides[side].device;
        let full = device.on_disk;
        let opened = device.app(self.now);
        opened.map_err(|why| Broken {
            promise: if full { "the app opens on a full disk" } else { "the app opens" },
            why,
        })
    }

    /// Notes the true time of the entries just written, in the session shown or everywhere, and returns them.
    pub fn new_entries(&mut self, side: usize, everywhere: bool) -> Result<Vec<Entry>, Broken> {
        let now = self.now;
        self.app(side)?;
        let Side { device, oracle } = &mut self.sides[side];
        let known = |id: &str| oracle.log.contains_key(id);
        let mut new = device.app(now).map(|app| act::new_entries(app, known)).map_err(io)?;
        if everywhere || new.is_empty() {
            new = device.stored().map_err(io)?;
        }
        let new: Vec<Entry> = new
            .into_iter()
            .filter_map(Entry::of)
            .filter(|entry| !oracle.log.contains_key(&entry.id))
            .collect();
        let boot = boot_of(side, &self.sides[side].device.read(now));
        for entry in &new {
            let truth = Truth { at: now, wall_off: entry.wall_ms - now, boot: boot.clone() };
            self.truths.insert(entry.id.clone(), truth);
        }
        Ok(new)
    }

    /// Checks the whole log of a side.
    pub fn whole_log(&mut self, side: usize) -> Result<(), Broken> {
        let stored = self.sides[side].device.stored().map_err(io)?;
        let stored: Vec<Entry> = stored.into_iter().filter_map(Entry::of).collect();
        check::log(&self.sides[side].oracle, &stored)
    }

    /// What the oracle reads in the session that has to be shown.
    pub fn naive(&self, side: usize) -> Option<Session> {
        let oracle = &self.sides[side].oracle;
        Some(naive::session(oracle, oracle.shown()?, &self.truths))
    }

    /// Everything that is checked after each step.
    pub fn check(&mut self, side: usize) -> Result<(), Broken> {
        self.check_with(side, None)
    }

    fn check_with(&mut self, side: usize, bank: Option<act::Bank>) -> Result<(), Broken> {
        let (now, naive) = (self.now, self.naive(side));
        let reading = self.sides[side].device.read(now);
        let app = self.app(side)?;
        let shown = act::shown(app);
        let bank = match bank {
            Some(bank) => bank,
            None => act::bank(app, &reading)
                .map_err(|refused| Broken { promise: "the Bank screen can be shown", why: refused.why })?,
        };
        let oracle = &self.sides[side].oracle;
        check::shown(oracle, shown.as_ref(), naive.as_ref())?;
        check::names(&bank, oracle)?;
        if let Some(naive) = &naive {
            let boot = boot_of(side, &reading);
            let off = self.spread_with(side, reading.wall_ms - now);
            check::clocks(&bank, naive, &Now { ms: now, boot: &boot, off })?;
        }
        Ok(())
    }

    /// The spread of the wall clock's error over the session shown, including this moment.
    pub(super) fn spread_with(&self, side: usize, off: i64) -> i64 {
        let oracle = &self.sides[side].oracle;
        let of_session = oracle.log.values().filter(|entry| Some(entry.session.as_str()) == oracle.shown());
        let offs = of_session.filter_map(|entry| self.truths.get(&entry.id)).map(|truth| truth.wall_off);
        let offs: Vec<i64> = offs.chain([off]).collect();
        offs.iter().max().zip(offs.iter().min()).map_or(0, |(most, least)| most - least)
    }

    /// The line with its references filled in: `$cast:2`, `$thing:0`, `$session:1`, `$import:0`, or `None` if there is
    /// nothing of the kind.
    fn resolved(&mut self, side: usize, line: &Map<String, Value>) -> Option<Map<String, Value>> {
        let mut line = Value::Object(line.clone());
        self.fill_in(side, &mut line)?;
        if let Value::Object(line) = line { Some(line) } else { None }
    }

    fn fill_in(&mut self, side: usize, value: &mut Value) -> Option<()> {
        match value {
            Value::Object(fields) => fields.values_mut().try_for_each(|value| self.fill_in(side, value)),
            Value::String(text) => {
                let Some((kind, number)) = reference(text) else { return Some(()) };
                let ids = self.ids(side, &kind);
                let id = ids.get(number.checked_rem(ids.len())?)?;
                *text = text.replace(&format!("${kind}:{number}"), id);
                Some(())
            }
            _ => Some(()),
        }
    }

    pub(super) fn ids(&mut self, side: usize, kind: &str) -> Vec<String> {
        let oracle = &self.sides[side].oracle;
        let owned = |ids: Vec<&str>| ids.into_iter().map(str::to_owned).collect();
        match kind {
            "session" => owned(oracle.sessions()),
            "cast" => self.naive(side).map_or_else(Vec::new, |session| owned(session.cast_ids())),
            "thing" => self.naive(side).map_or_else(Vec::new, |session| session.things.into_keys().collect()),
            "import" => {
                let reading = self.sides[side].device.read(self.now);
                self.app(side).map(|app| act::imports(app, &reading)).unwrap_or_default()
            }
            _ => Vec::new(),
        }
    }
}

/// The name of a boot that no other phone shares.
pub fn boot_of(side: usize, reading: &Reading) -> String {
    format!("{side} {}", reading.boot)
}

/// `$cast:2` in a text.
fn reference(text: &str) -> Option<(String, usize)> {
    let (kind, number) = text.split_once('$')?.1.split_once(':')?;
    Some((kind.to_owned(), number.parse().ok()?))
}
