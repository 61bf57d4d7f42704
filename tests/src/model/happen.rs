//! What happens to a phone besides taps: moved clocks, restarts, kills, files, a failing disk.

use super::act::{self, Refused};
use super::check::{Broken, broken};
use super::day::Step;
use super::device::Sent;
use super::foreign::{Later, entries_in, junk, later, map};
use super::oracle::{Entry, Oracle};
use super::world::{World, boot_of, io};
use crate::powercut::{acknowledge, on_disk, set_room};
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;
use std::collections::{BTreeSet, HashSet};
use std::fs;
use std::path::Path;

fn unexpected(promise: &'static str) -> impl Fn(Refused) -> Broken {
    move |refused| Broken { promise, why: refused.why }
}

impl World {
    /// A step that is not a tap.
    pub(super) fn happen(&mut self, name: &str, step: &Step) -> Result<(), Broken> {
        let (side, now) = (step.phone, self.now);
        let device = &mut self.sides[side].device;
        match name {
            "jump" => {
                let off = device.read(now).wall_ms - now + step.number("ms");
                device.clock.set_off(now, off);
            }
            "right" => device.clock.set_off(now, 0),
            "reset" => device.clock.set_wall(now, step.number("wall_ms")),
            "zone" => device.clock.set_zone(step.number("offset_min") as i16),
            "drift" => device.clock.drift_ppm = step.number("ppm"),
            "boot" => {
                device.close();
                device.clock.boot(now);
            }
            "restart" => return self.restart(side, false),
            "kill" => return self.restart(side, true),
            "export" => return self.export(side),
            "import" => return self.import(side, step),
            "swap" => return self.swap(),
            "foreign" => return self.foreign(side, step),
            "back_up" => return self.back_up(side),
            "restore" => return self.restore(side, step),
            "look_over" => return self.look_over(side),
            "screens" => return self.screens(side, step),
            "watch" => return self.watch(side),
            "page" => return self.page(side, step),
            "salvage" => return self.salvage(side, step),
            "disk" => return self.disk(side, step),
            other => return broken("the model itself works", format!("no event is called {other}")),
        }
        Ok(())
    }

    /// The app is closed or killed and comes back: everything confirmed is there.
    fn restart(&mut self, side: usize, kill: bool) -> Result<(), Broken> {
        let device = &mut self.sides[side].device;
        if kill && device.dir().exists() && !device.on_disk {
            device.kill().map_err(io)?;
        } else {
            device.close();
        }
        self.app(side)?;
        self.whole_log(side)
    }

    /// An op file with everything, kept for later imports.
    fn export(&mut self, side: usize) -> Result<(), Broken> {
        let reading = self.unhurried(side);
        let made =
            act::send(self.app(side)?, "entries", &reading).map_err(unexpected("a file can be made"))?;
        let bytes = fs::read(made).map_err(io)?;
        let entries = entries_in(&bytes);
        let (device, oracle) = (&self.sides[side].device, &self.sides[side].oracle);
        let there: BTreeSet<&str> = entries.iter().map(|entry| entry.id.as_str()).collect();
        let expected = oracle.to_send();
        if expected != there {
            let why = format!("{} entries in the file, {} to send", there.len(), expected.len());
            return broken("a file with everything holds everything", why);
        }
        let path = device.file(&format!("sent-{}", device.sent.len()));
        fs::write(&path, bytes).map_err(io)?;
        self.sides[side].device.sent.push(Sent { path, entries });
        Ok(())
    }

    fn sent(&self, from: usize, number: i64) -> Option<&Sent> {
        let sent = &self.sides[from.min(1)].device.sent;
        sent.get(usize::try_from(number).ok()?.checked_rem(sent.len())?)
    }

    /// Imports a file of either phone, new or old.
    fn import(&mut self, side: usize, step: &Step) -> Result<(), Broken> {
        let from = usize::from(step.number("from") == 1);
        let Some(sent) = self.sent(from, step.number("file")) else { return Ok(()) };
        let (path, entries) = (sent.path.clone(), sent.entries.clone());
        self.take_in(side, &path, entries)
    }

    /// Everything complete in the file is in the log afterwards; on a full disk all of it or nothing.
    fn take_in(&mut self, side: usize, path: &Path, entries: Vec<Entry>) -> Result<(), Broken> {
        let reading = self.sides[side].device.read(self.now);
        let full = self.sides[side].device.on_disk;
        match act::take_in(self.app(side)?, path, &reading) {
            Ok(()) => {
                let held: Vec<String> = entries.iter().map(|entry| entry.id.clone()).collect();
                self.sides[side].oracle.add_new(entries);
                self.brought_back(side, &held)?;
            }
            Err(refused) if full && refused.not_saved => {}
            Err(refused) => return broken("a file of ours is taken in", refused.why),
        }
        self.whole_log(side)
    }

    /// What a file contains is in force again if it came with an import that was undone. The log gains the
    /// entry that says so, and nothing else.
    fn brought_back(&mut self, side: usize, held: &[String]) -> Result<(), Broken> {
        if self.sides[side].oracle.taken_back().is_disjoint(&held.iter().cloned().collect()) {
            return Ok(());
        }
        let said = self.new_entries(side, true)?;
        if let Some(other) = said.iter().find(|entry| !entry.kind.starts_with("import_")) {
            return broken("an import brings what is in the file", format!("it wrote {}", other.kind));
        }
        let before = self.sides[side].oracle.taken_back();
        self.sides[side].oracle.add(said);
        let held: HashSet<String> = held.iter().cloned().collect();
        let expected: HashSet<String> = before.difference(&held).cloned().collect();
        let after: HashSet<String> = self.sides[side].oracle.taken_back();
        let logged = |ids: HashSet<String>| -> HashSet<String> {
            let log = &self.sides[side].oracle.log;
            ids.into_iter()
                .filter(|id| log.get(id).is_some_and(|entry| !entry.kind.starts_with("import_")))
                .collect()
        };
        if logged(after.clone()) != logged(expected) {
            let why = format!("{} entries stay taken back of {}", after.len(), before.len());
            return broken("what a file holds is no longer taken back, the rest is", why);
        }
        Ok(())
    }

    /// Each phone passes everything to the other: then both show the same.
    fn swap(&mut self) -> Result<(), Broken> {
        for side in [0, 1] {
            self.export(side)?;
        }
        for (side, from) in [(0, 1), (1, 0)] {
            let Some(sent) = self.sides[from].device.sent.last() else { continue };
            let (path, entries) = (sent.path.clone(), sent.entries.clone());
            self.take_in(side, &path, entries)?;
            self.check(side)?;
        }
        for form in ["sessions", "casts"] {
            let mut said = Vec::new();
            for side in [0, 1] {
                let reading = self.unhurried(side);
                let made =
                    act::send(self.app(side)?, form, &reading).map_err(unexpected("a file can be made"))?;
                let table = fs::read_to_string(made).map_err(io)?;
                said.push(
                    without_entries(&table)
                        .map_err(|error| Broken { promise: "a table can be read", why: error.to_string() })?,
                );
            }
            if said[0] != said[1] {
                let differ = said[0].lines().zip(said[1].lines()).find(|(a, b)| a != b);
                return broken("two phones say the same after a swap", format!("{form}: {differ:?}"));
            }
        }
        Ok(())
    }

    fn foreign(&mut self, side: usize, step: &Step) -> Result<(), Broken> {
        let path = self.sides[side].device.file("foreign");
        let of = step.number("of");
        match step.text("kind") {
            "cut" => {
                let Some(sent) = self.sent(1 - side, of) else { return Ok(()) };
                let bytes = fs::read(&sent.path).map_err(io)?;
                let bytes = &bytes[..bytes.len() * usize::try_from(step.number("at")).unwrap_or(0) / 1_000];
                fs::write(&path, bytes).map_err(io)?;
                let entries = entries_in(bytes);
                if bytes.len() < 64 {
                    self.refused_file(side, &path)
                } else {
                    self.take_in(side, &path, entries)
                }
            }
            "later" => {
                let (bytes, entries) = self.later_file(side, step)?;
                fs::write(&path, bytes).map_err(io)?;
                self.take_in(side, &path, entries)
            }
            "map" => self.map(side, &path, of),
            _ => {
                fs::write(&path, junk(of)).map_err(io)?;
                self.refused_file(side, &path)
            }
        }
    }

    fn later_file(&self, side: usize, step: &Step) -> Result<(Vec<u8>, Vec<Entry>), Broken> {
        let oracle = &self.sides[side].oracle;
        let naive = self.naive(side);
        let things = naive.iter().flat_map(|session| session.things.keys());
        let casts = naive.iter().flat_map(|session| session.casts.iter().map(|cast| &cast.id));
        let ids: Vec<&String> = things.chain(casts).collect();
        let number = u64::try_from(step.number("of")).unwrap_or(0);
        let entry = number.checked_rem(ids.len() as u64).and_then(|place| ids.get(place as usize));
        later(&Later {
            // No two strangers' files have ids in common: equal ids with different contents are a forgery,
            // which a swap can't settle.
            number: self.taken + self.seed % 1_000 * 1_000,
            session: oracle.shown(),
            entry: entry.map(|id| id.as_str()),
            wall_ms: self.now + step.number("off_ms"),
            seen: oracle.log.values().map(|entry| entry.clock.as_str()).max().unwrap_or_default(),
        })
        .map_err(io)
    }

    /// A file that is not ours changes nothing.
    fn refused_file(&mut self, side: usize, path: &Path) -> Result<(), Broken> {
        let reading = self.sides[side].device.read(self.now);
        // The core may refuse it or not; it must change nothing.
        let _ = act::take_in(self.app(side)?, path, &reading);
        self.whole_log(side)
    }

    /// Imports a map of the swim: entries of the session, undone as one.
    fn map(&mut self, side: usize, path: &Path, of: i64) -> Result<(), Broken> {
        fs::write(path, map(of.rem_euclid(60) - 25)).map_err(io)?;
        let reading = self.sides[side].device.read(self.now);
        if act::take_in(self.app(side)?, path, &reading).is_ok() {
            let new = self.new_entries(side, false)?;
            self.sides[side].oracle.did(new);
        }
        self.whole_log(side)
    }

    fn back_up(&mut self, side: usize) -> Result<(), Broken> {
        let reading = self.sides[side].device.read(self.now);
        let made = act::back_up(self.app(side)?, &reading).map_err(unexpected("a backup can be made"))?;
        let Some(made) = made else { return Ok(()) };
        let kept = self.sides[side].device.file(&format!("backup-{}", self.sides[side].device.backups.len()));
        fs::copy(made, &kept).map_err(io)?;
        self.sides[side].device.backups.push(kept);
        Ok(())
    }

    /// An old backup adds nothing that is not there already.
    fn restore(&mut self, side: usize, step: &Step) -> Result<(), Broken> {
        let backups = &self.sides[side].device.backups;
        let number = usize::try_from(step.number("of")).unwrap_or(0);
        let Some(path) = number.checked_rem(backups.len()).and_then(|n| backups.get(n)).cloned() else {
            return Ok(());
        };
        self.take_in(side, &path, Vec::new())
    }

    fn look_over(&mut self, side: usize) -> Result<(), Broken> {
        let said = act::look_over(self.app(side)?).map_err(unexpected("the log can be looked over"))?;
        if !said.starts_with("All well") {
            return broken("the log is well", said);
        }
        self.whole_log(side)
    }

    /// Opens screens; within a boot the swim does not depend on the wall clock.
    fn screens(&mut self, side: usize, step: &Step) -> Result<(), Broken> {
        let reading = self.sides[side].device.read(self.now);
        let shown = self.sides[side].oracle.shown().map(str::to_owned);
        let boot = boot_of(side, &reading);
        let of_session = |entry: &&Entry| Some(&entry.session) == shown.as_ref();
        let in_boot = self.sides[side]
            .oracle
            .log
            .values()
            .filter(of_session)
            .all(|entry| self.truths.get(&entry.id).is_some_and(|truth| truth.boot == boot));
        let app = self.app(side)?;
        let from = usize::try_from(step.number("from")).unwrap_or(0);
        act::open_screens(app, from, &reading).map_err(unexpected("every screen can be shown"))?;
        if !in_boot {
            return Ok(());
        }
        let here = act::swim_words(app, &reading);
        for off in [-3 * 3_600_000, 3 * 3_600_000] {
            let moved = super::clock::Reading { wall_ms: reading.wall_ms + off, ..reading.clone() };
            let there = act::swim_words(app, &moved);
            if here != there {
                return broken(
                    "the swim does not go by the wall clock",
                    format!("{here:?} became {there:?}"),
                );
            }
        }
        Ok(())
    }

    /// Some steps on a disk with little room, or one whose power is cut at some write; then the app is opened
    /// again.
    fn disk(&mut self, side: usize, step: &Step) -> Result<(), Broken> {
        self.app(side)?;
        let room = usize::try_from(step.number("room")).ok().filter(|_| step.what.contains_key("room"));
        self.sides[side].device.close();
        self.sides[side].device.on_disk = true;
        let mut before = vec![self.sides[side].oracle.clone()];
        let (outcome, disk) = on_disk(None, || {
            let outcome = self.on_the_disk(side, step, room, &mut before);
            // Its files disappear with the disk.
            self.sides[side].device.close();
            outcome
        });
        self.sides[side].device.on_disk = false;
        outcome?;
        let moment = match step.text("end") {
            "kill" | "power" => disk.moments() * usize::try_from(step.number("at")).unwrap_or(0) / 1_000,
            _ => disk.moments(),
        };
        let (left, safe) = if step.text("end") == "power" {
            disk.cut(moment, &mut ChaCha8Rng::seed_from_u64(self.seed))
        } else {
            disk.killed(moment)
        };
        self.sides[side].device.put(&left).map_err(io)?;
        self.after_cut(side, before.split_off(safe.last().copied().unwrap_or(0)))
    }

    fn on_the_disk(
        &mut self,
        side: usize,
        step: &Step,
        room: Option<usize>,
        before: &mut Vec<Oracle>,
    ) -> Result<(), Broken> {
        self.app(side)?;
        acknowledge(0);
        set_room(room);
        for inner in &step.within() {
            self.step(&Step { phone: side, ..inner.clone() })?;
            before.push(self.sides[side].oracle.clone());
            acknowledge(before.len() - 1);
        }
        Ok(())
    }

    /// After a power cut the log is as it was after the last confirmed step, or after one not yet confirmed.
    fn after_cut(&mut self, side: usize, mut may_be: Vec<Oracle>) -> Result<(), Broken> {
        self.app(side)?;
        let stored = self.sides[side].device.stored().map_err(io)?;
        let stored: BTreeSet<String> =
            stored.into_iter().filter_map(Entry::of).map(|entry| entry.id).collect();
        if let Some(place) = may_be.iter().position(|oracle| oracle.log.keys().eq(stored.iter())) {
            self.sides[side].oracle = may_be.swap_remove(place);
        } else if !may_be.is_empty() {
            self.sides[side].oracle = may_be.swap_remove(0);
        }
        self.whole_log(side)
    }
}

/// A table without its count of entries: what was taken back is counted where it was, and does not travel.
fn without_entries(table: &str) -> Result<String, csv::Error> {
    let mut reader = csv::ReaderBuilder::new().has_headers(false).from_reader(table.as_bytes());
    let rows = reader.records().collect::<Result<Vec<_>, _>>()?;
    let column = rows.first().and_then(|header| header.iter().position(|name| name == "entries"));
    let cut = |cells: &csv::StringRecord| {
        let cells = cells.iter().enumerate().filter(|(i, _)| Some(*i) != column);
        cells.map(|(_, cell)| cell).collect::<Vec<_>>().join("|") + "\n"
    };
    Ok(rows.iter().map(cut).collect())
}
