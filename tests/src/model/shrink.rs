//! Shrinks a broken day: steps are left out while it still breaks the same promise, then the rest is
//! simplified.

use super::day::{Day, Step};
use serde_json::json;

/// Plays of one shrink, at most.
const PLAYS: usize = 600;

/// The smallest day found that still breaks `promise`; `breaks` plays a day and names the promise that it broke.
pub fn shrink(day: &Day, promise: &str, breaks: &mut dyn FnMut(&Day) -> Option<String>) -> Day {
    let mut small = Small { day: day.clone(), promise, plays: 0, breaks };
    loop {
        let before = small.day.clone();
        small.leave_out();
        small.open_disks();
        small.make_plain();
        if small.day == before || small.plays >= PLAYS {
            return small.day;
        }
    }
}

struct Small<'a> {
    day: Day,
    promise: &'a str,
    plays: usize,
    breaks: &'a mut dyn FnMut(&Day) -> Option<String>,
}

impl Small<'_> {
    fn still(&mut self, steps: Vec<Step>) -> bool {
        if self.plays >= PLAYS {
            return false;
        }
        self.plays += 1;
        let day = Day { seed: self.day.seed, steps };
        let breaks = (self.breaks)(&day).is_some_and(|promise| promise == self.promise);
        if breaks {
            self.day = day;
        }
        breaks
    }

    /// Leaves out runs of steps, half of the day first, single steps last.
    fn leave_out(&mut self) {
        let mut run = self.day.steps.len().div_ceil(2);
        while run > 0 {
            let mut from = self.day.steps.len();
            while from > 0 {
                from = from.saturating_sub(run);
                let mut steps = self.day.steps.clone();
                steps.drain(from..(from + run).min(steps.len()));
                self.still(steps);
                from = from.min(self.day.steps.len());
            }
            run /= 2;
        }
    }

    /// Leaves out steps within a disk too, or does them on a disk that does not fail.
    fn open_disks(&mut self) {
        for place in 0..self.day.steps.len() {
            let within = self.day.steps.get(place).map(Step::within).unwrap_or_default();
            if within.is_empty() {
                continue;
            }
            let mut steps = self.day.steps.clone();
            steps.splice(place..=place, within.iter().cloned());
            if self.still(steps) {
                return;
            }
            for left_out in (0..within.len()).rev() {
                let mut fewer = self.day.steps[place].within();
                fewer.remove(left_out.min(fewer.len().saturating_sub(1)));
                let mut steps = self.day.steps.clone();
                steps[place] = steps[place].with_within(&fewer);
                self.still(steps);
            }
        }
    }

    /// Rounds times and removes details that do not matter.
    fn make_plain(&mut self) {
        for place in 0..self.day.steps.len() {
            for after_ms in [1_000, 60_000] {
                if self.day.steps[place].after_ms > after_ms {
                    let mut steps = self.day.steps.clone();
                    steps[place].after_ms = after_ms;
                    self.still(steps);
                }
            }
            for (field, plain) in
                [("setup", json!({"rods": 1})), ("end", json!("whole")), ("ms", json!(3_600_000))]
            {
                let is_there = self.day.steps[place].what.get(field).is_some_and(|value| *value != plain);
                if is_there && self.day.steps[place].what.get("op").is_none() {
                    let mut steps = self.day.steps.clone();
                    steps[place].what.insert(field.into(), plain);
                    self.still(steps);
                }
            }
        }
    }
}
