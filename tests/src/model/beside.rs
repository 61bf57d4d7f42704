//! What a phone does besides logging: it rings, it opens earlier sessions in the Book, and it salvages a
//! damaged log.

use super::act;
use super::check::{self, Broken, Now, broken};
use super::day::Step;
use super::naive;
use super::world::{World, boot_of, io};
use std::collections::BTreeSet;

impl World {
    /// Alarms of baits that are out ring after true minutes.
    pub(super) fn watch(&mut self, side: usize) -> Result<(), Broken> {
        let Some(alarm_min) = self.sides[side].device.alarm_min else { return Ok(()) };
        let (ms, naive) = (self.now, self.naive(side));
        let reading = self.sides[side].device.read(ms);
        let rings = act::rings(self.app(side)?, &reading);
        let boot = boot_of(side, &reading);
        let off = self.spread_with(side, reading.wall_ms - ms);
        check::rings(&rings, naive.as_ref(), alarm_min, &Now { ms, boot: &boot, off })
    }

    /// A session is opened in the Book: it has its own notes and no others.
    pub(super) fn page(&mut self, side: usize, step: &Step) -> Result<(), Broken> {
        let ids = self.ids(side, "session");
        let number = usize::try_from(step.number("of")).unwrap_or(0);
        let Some(id) = number.checked_rem(ids.len()).map(|place| ids[place].clone()) else { return Ok(()) };
        let reading = self.unhurried(side);
        let page = act::page(self.app(side)?, &id, &reading).map_err(|refused| Broken {
            promise: "every session can be opened in the Book",
            why: refused.why,
        })?;
        let oracle = &self.sides[side].oracle;
        let begun = naive::session(oracle, &id, &self.truths);
        let Some(page) = page else {
            return if begun.begun { broken("every session can be opened in the Book", id) } else { Ok(()) };
        };
        self.sides[side].device.opened = Some(id);
        let noted = self.sides[side].oracle.log.values().filter(|entry| entry.kind == "noted");
        let texts: BTreeSet<&str> = noted.filter_map(|entry| entry.payload["text"].as_str()).collect();
        check::notes(&page, &begun, &texts)
    }

    /// A page of the log without entries is damaged: all entries are saved.
    pub(super) fn salvage(&mut self, side: usize, step: &Step) -> Result<(), Broken> {
        let device = &mut self.sides[side].device;
        if device.on_disk || self.sides[side].oracle.log.is_empty() {
            return Ok(());
        }
        let device = &mut self.sides[side].device;
        device.damage(usize::try_from(step.number("of")).unwrap_or(0)).map_err(io)?;
        let (seed, reading) = (device.next_seed(), device.read(self.now));
        act::salvage(&device.dir(), seed, &reading)
            .map_err(|why| Broken { promise: "a damaged log is saved", why })?;
        // The choices on the phone may be lost with the page.
        device.alarm_min = None;
        self.app(side)?;
        self.whole_log(side)
    }
}
