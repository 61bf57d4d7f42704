//! One session as the oracle reads it: casts, rods, things in the swim, and true times.

use super::oracle::{Entry, Oracle, Truths};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet, HashMap, HashSet};

/// A true time and the boots whose clocks it was read from.
#[derive(Debug, Clone, PartialEq)]
pub struct When {
    /// Milliseconds, or `None` if only another phone knows it.
    pub ms: Option<i64>,
    /// The boots.
    pub boots: BTreeSet<String>,
}

impl When {
    fn later(&self, seconds: i64) -> Self {
        Self { ms: self.ms.map(|ms| ms + seconds * 1_000), boots: self.boots.clone() }
    }

    /// The earlier of two, which depends on the clocks of both.
    fn no_later(self, limit: Option<&When>) -> Self {
        let Some(limit) = limit else { return self };
        let boots = self.boots.union(&limit.boots).cloned().collect();
        Self { ms: self.ms.zip(limit.ms).map(|(a, b)| a.min(b)), boots }
    }
}

/// A cast.
#[derive(Debug, Clone, PartialEq)]
pub struct Cast {
    /// The entry that began it.
    pub id: String,
    /// Its rod.
    pub rod: u64,
    /// The splash.
    pub start: When,
    /// The bite.
    pub bite: Option<When>,
    /// What ended it, and when.
    pub end: Option<(String, When)>,
    /// Where it was aimed: the latest entry about its rod's spot before it.
    pub spot: Option<Value>,
    /// What was logged after its wait, beyond which no correction can move it: the outcome of its bite, the
    /// next splash of its rod, the end of the session.
    limit: Option<When>,
}

/// A session.
#[derive(Debug, Default)]
pub struct Session {
    /// Whether taps go to it.
    pub open: bool,
    /// Whether its beginning is in the log.
    pub begun: bool,
    /// Its casts.
    pub casts: Vec<Cast>,
    /// Names of marks, features and hazards.
    pub things: BTreeMap<String, String>,
    /// What each rod does: the place of its cast.
    pub rods: Vec<Option<usize>>,
    /// Texts of notes.
    pub notes: Vec<String>,
    /// The lines of the plan that it follows, if any.
    pub plan: Option<Value>,
    spots: Vec<Option<Value>>,
    /// How far the wall clock's errors differ within the session, by device: how far a gap between two boots may be off.
    pub spread_ms: i64,
    /// The true time of all-out, if a match is set: by the phone's clock as it was when the match was first set.
    pub all_out_ms: Option<i64>,
    /// How far that clock was ahead.
    match_off: Option<i64>,
    ended: Option<When>,
}

/// What was entered about other entries afterwards; the latest counts.
#[derive(Default)]
struct Said<'a> {
    back_s: HashMap<&'a str, i64>,
    ends: HashMap<&'a str, &'a Entry>,
    amended: HashMap<&'a str, Vec<&'a Entry>>,
}

/// Reads a session.
pub fn session(oracle: &Oracle, id: &str, truths: &Truths) -> Session {
    let ordered = oracle.ordered(Some(id));
    let void = Oracle::void(&ordered);
    let in_force: Vec<&Entry> = ordered.iter().copied().filter(|entry| !void.contains(&entry.id)).collect();
    let said = said(&in_force);
    let mut session = Session { spread_ms: spread(&ordered, truths), ..Session::default() };
    for entry in in_force.iter().filter(|entry| entry.amends.is_none()) {
        session.take(entry, &said, truths);
    }
    session.note_limits();
    for at in 0..session.casts.len() {
        session.remember(at, &said, truths);
    }
    for entry in in_force.iter().filter(|entry| entry.kind == "cast_added") {
        if session.add_forgotten(entry) {
            session.remember(session.casts.len() - 1, &said, truths);
        }
    }
    session
}

fn said<'a>(in_force: &[&'a Entry]) -> Said<'a> {
    let mut said = Said::default();
    for entry in in_force {
        let Some(target) = entry.amends.as_deref() else { continue };
        match entry.kind.as_str() {
            "time_set" => drop(said.back_s.insert(target, number(entry, "back_s").unwrap_or(0))),
            "cast_end_set" => drop(said.ends.insert(target, entry)),
            _ => said.amended.entry(target).or_default().push(entry),
        }
    }
    said
}

fn number(entry: &Entry, field: &str) -> Option<i64> {
    entry.payload.get(field).and_then(Value::as_i64)
}

fn text<'a>(entry: &'a Entry, field: &str) -> &'a str {
    entry.payload.get(field).and_then(Value::as_str).unwrap_or_default()
}

/// When an entry was tapped.
fn tapped(entry: &Entry, truths: &Truths) -> When {
    let truth = truths.get(&entry.id);
    When {
        ms: truth.map(|truth| truth.at),
        boots: truth.map(|truth| truth.boot.clone()).into_iter().collect(),
    }
}

/// The spread of the wall clocks' errors over these entries.
fn spread(entries: &[&Entry], truths: &Truths) -> i64 {
    let offs: Vec<i64> =
        entries.iter().filter_map(|e| truths.get(&e.id)).map(|truth| truth.wall_off).collect();
    offs.iter().max().zip(offs.iter().min()).map_or(0, |(most, least)| most - least)
}

impl Session {
    fn take(&mut self, entry: &Entry, said: &Said, truths: &Truths) {
        let back_s = said.back_s.get(entry.id.as_str()).copied().unwrap_or(0);
        let at = tapped(entry, truths).later(-back_s);
        let kind = entry.kind.as_str();
        match kind {
            "session_started" => {
                self.grow(number(entry, "rods").unwrap_or(1).clamp(1, 9) as usize);
                (self.begun, self.open) = (true, self.ended.is_none());
            }
            "session_ended" => {
                (self.open, self.ended) = (false, Some(at.clone()));
                for rod in 0..self.rods.len() {
                    self.close(rod, "session_ended", &at);
                }
            }
            "mark_set" | "feature_set" | "hazard_set" => {
                // Only an amendment of the same kind changes the name.
                let renamed = said.amended.get(entry.id.as_str()).into_iter().flatten().rev();
                let last = renamed.copied().find(|amend| amend.kind == kind).unwrap_or(entry);
                self.things.insert(entry.id.clone(), text(last, "name").to_owned());
            }
            "plan_taken" => self.plan = entry.payload.get("lines").cloned(),
            "plan_dropped" => self.plan = None,
            "match_off" => (self.match_off, self.all_out_ms) = (None, None),
            "match_set" => {
                let off = self.match_off.or_else(|| Some(truths.get(&entry.id)?.wall_off));
                let said = number(entry, "all_out_ms").zip(off);
                self.all_out_ms = said.map(|(ms, off)| ms - number(entry, "offset_ms").unwrap_or(0) - off);
                self.match_off = off;
            }
            "noted" => self.notes.push(text(entry, "text").to_owned()),
            _ => {}
        }
        if let Some(rod) = entry.rod() {
            self.grow(rod as usize);
            self.take_for_rod(entry, rod as usize - 1, &at);
        }
    }

    fn grow(&mut self, rods: usize) {
        let rods = self.rods.len().max(rods);
        self.rods.resize(rods, None);
        self.spots.resize(rods, None);
    }

    fn take_for_rod(&mut self, entry: &Entry, rod: usize, at: &When) {
        let bitten = self.rods[rod].is_some_and(|cast| self.casts[cast].bite.is_some());
        match entry.kind.as_str() {
            "cast" => {
                self.close(rod, "end_not_seen", at);
                let (id, start) = (entry.id.clone(), at.clone());
                let spot = self.spots[rod].clone();
                self.casts.push(Cast {
                    id,
                    rod: rod as u64 + 1,
                    start,
                    bite: None,
                    end: None,
                    spot,
                    limit: None,
                });
                self.rods[rod] = Some(self.casts.len() - 1);
            }
            "bite" => {
                if let Some(cast) = self.rods[rod].filter(|_| !bitten) {
                    self.casts[cast].bite = Some(at.clone());
                }
            }
            kind @ ("landed" | "lost" | "missed") if bitten => {
                if let Some(cast) = self.rods[rod].take() {
                    self.casts[cast].end = Some((kind.to_owned(), at.clone()));
                }
            }
            "wound_in" => self.close(rod, "wound_in", at),
            "spot_set" => self.spots[rod] = entry.payload.get("spot").cloned(),
            _ => {}
        }
    }

    /// Closes the cast that is out: without a bite for this reason, with one because its outcome was not
    /// logged.
    fn close(&mut self, rod: usize, reason: &str, at: &When) {
        let Some(cast) = self.rods[rod].take() else { return };
        let cast = &mut self.casts[cast];
        let reason = if cast.bite.is_some() { "outcome_not_seen" } else { reason };
        cast.end = Some((reason.to_owned(), at.clone()));
    }

    fn note_limits(&mut self) {
        let mut next: HashMap<u64, When> = HashMap::new();
        for cast in self.casts.iter_mut().rev() {
            if let Some((_, end)) = &cast.end {
                // After a merge a later entry may be earlier in time: then it says nothing about the end.
                let after = next.get(&cast.rod).or(self.ended.as_ref()).filter(|after| after.ms >= end.ms);
                cast.limit = if cast.bite.is_some() { Some(end.clone()) } else { after.cloned() };
            }
            next.insert(cast.rod, cast.start.clone());
        }
    }

    /// Applies how a cast ended as remembered afterwards. One that is still out has no end to remember.
    fn remember(&mut self, at: usize, said: &Said, truths: &Truths) {
        let cast = &mut self.casts[at];
        let Some(entry) = said.ends.get(cast.id.as_str()) else { return };
        let Some((_, ended)) = cast.end.clone() else { return };
        let reason = text(entry, "end");
        let now = tapped(entry, truths);
        let limit = cast.limit.clone().unwrap_or(now);
        let after = number(entry, "after_s").map(|s| cast.start.later(s).no_later(Some(&limit)));
        let wait_end = after.unwrap_or_else(|| cast.bite.clone().unwrap_or_else(|| ended.clone()));
        if reason == "wound_in" {
            cast.bite = None;
            cast.end = Some((reason.to_owned(), wait_end));
        } else {
            let ended = if cast.bite.is_some() { ended } else { wait_end.clone() };
            cast.bite = Some(wait_end);
            cast.end = Some((reason.to_owned(), ended));
        }
    }

    /// Adds a forgotten cast after another one of its rod that has ended.
    fn add_forgotten(&mut self, entry: &Entry) -> bool {
        let before = self.casts.iter().find(|cast| cast.id == text(entry, "after"));
        let before =
            before.and_then(|cast| Some((cast.rod, cast.end.as_ref()?.1.clone(), cast.spot.clone())));
        let Some((rod, ended, spot)) = before else { return false };
        let after = |cast: &&Cast| cast.rod == rod && cast.start.ms >= ended.ms;
        let next =
            self.casts.iter().filter(after).min_by_key(|cast| cast.start.ms).map(|cast| cast.start.clone());
        let start = ended.later(number(entry, "lag_s").unwrap_or(0)).no_later(next.as_ref());
        let stop = start.later(number(entry, "wait_s").unwrap_or(0)).no_later(next.as_ref());
        // If a correction left no room for it, there was no such cast.
        if stop.ms.zip(start.ms).is_some_and(|(stop, start)| stop <= start) {
            return false;
        }
        let reason = text(entry, "end");
        let bite = (reason != "wound_in").then(|| stop.clone());
        let end = Some((reason.to_owned(), stop));
        self.casts.push(Cast { id: entry.id.clone(), rod, start, bite, end, spot, limit: next });
        true
    }

    /// Ids of the casts whose doubts can be corrected, and of everything that can be named.
    pub fn cast_ids(&self) -> Vec<&str> {
        let mut seen = HashSet::new();
        self.casts.iter().map(|cast| cast.id.as_str()).filter(|id| seen.insert(*id)).collect()
    }
}

impl Cast {
    /// The true wait in ms, and whether one boot's clock measured all of it; `None` while it is out or if the
    /// model does not know.
    pub fn wait(&self) -> Option<(i64, bool)> {
        let stop = self.bite.as_ref().or(self.end.as_ref().map(|(_, at)| at))?;
        Some((stop.ms? - self.start.ms?, self.start.boots.union(&stop.boots).count() == 1))
    }
}
