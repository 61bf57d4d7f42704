//! Compares what the app shows with the oracle.

use super::act::{Bank, CastShown, Shown};
use super::naive::{Cast, Session};
use super::oracle::{Deed, Entry, Oracle};
use std::collections::{BTreeMap, BTreeSet};

/// A broken promise, with the evidence.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Broken {
    /// Which promise.
    pub promise: &'static str,
    /// What was found and what was expected.
    pub why: String,
}

/// A promise that did not hold.
pub fn broken<T>(promise: &'static str, why: impl Into<String>) -> Result<T, Broken> {
    Err(Broken { promise, why: why.into() })
}

/// Milliseconds by which one boot's clock may drift over a day, including the rounding of screens.
const SLACK_MS: i64 = 2_500;

/// The log has what was confirmed or imported, and nothing else.
pub fn log(oracle: &Oracle, stored: &[Entry]) -> Result<(), Broken> {
    let there: BTreeMap<&str, &Entry> = stored.iter().map(|entry| (entry.id.as_str(), entry)).collect();
    if there.len() != stored.len() {
        return broken("an entry is in the log once", format!("{} rows, {} ids", stored.len(), there.len()));
    }
    for entry in oracle.log.values() {
        match there.get(entry.id.as_str()) {
            None => {
                return broken("nothing confirmed is lost", format!("{} {} is gone", entry.kind, entry.id));
            }
            Some(found) if found.whole != entry.whole => {
                return broken(
                    "an entry is never changed",
                    format!("{} became {}", entry.whole, found.whole),
                );
            }
            Some(_) => {}
        }
    }
    match stored.iter().find(|entry| !oracle.log.contains_key(&entry.id)) {
        Some(entry) => broken(
            "what was refused was not stored",
            format!("{} {} is in the log and was never confirmed", entry.kind, entry.id),
        ),
        None => Ok(()),
    }
}

/// The session shown is the right one, and agrees with the oracle's reading of the log.
pub fn shown(oracle: &Oracle, shown: Option<&Shown>, naive: Option<&Session>) -> Result<(), Broken> {
    let expected = oracle.shown();
    let found = shown.map(|session| session.id.as_str());
    if expected != found {
        let owner =
            found.and_then(|id| oracle.log.values().find(|e| e.session == id && e.kind == "session_started"));
        let foreign = owner.is_some_and(|entry| entry.device != oracle.device);
        let promise = if foreign {
            "a partner's session stays the partner's"
        } else {
            "the session shown is the latest of mine"
        };
        return broken(promise, format!("shown {found:?}, expected {expected:?}"));
    }
    let (Some(shown), Some(naive)) = (shown, naive) else { return Ok(()) };
    if shown.open != naive.open {
        return broken("the session is open until it ends", format!("shown as open: {}", shown.open));
    }
    if shown.things != naive.things {
        let why = format!("shown {:?}, expected {:?}", shown.things, naive.things);
        return broken("marks and landmarks are those set and not taken away", why);
    }
    if shown.plan != naive.plan {
        let why = format!("shown {:?}, expected {:?}", shown.plan, naive.plan);
        return broken("a session follows the plan that it adopted", why);
    }
    let rods: Vec<&str> = naive.rods.iter().map(|cast| rod(naive, *cast)).collect();
    if shown.rods != rods {
        return broken(
            "each rod does what was last tapped",
            format!("shown {:?}, expected {rods:?}", shown.rods),
        );
    }
    casts(shown, naive)
}

fn rod(naive: &Session, cast: Option<usize>) -> &'static str {
    match cast.and_then(|place| naive.casts.get(place)) {
        None => "ready",
        Some(cast) if cast.bite.is_some() => "fish_on",
        Some(_) => "out",
    }
}

fn casts(shown: &Shown, naive: &Session) -> Result<(), Broken> {
    if shown.casts.len() != naive.casts.len() {
        let why = format!("{} shown, {} expected", shown.casts.len(), naive.casts.len());
        return broken("the casts shown are those logged and not taken back", why);
    }
    for cast in &naive.casts {
        let Some(found) = shown.casts.get(&cast.id) else {
            return broken(
                "the casts shown are those logged and not taken back",
                format!("{} is not shown", cast.id),
            );
        };
        let end = cast.end.as_ref().map(|(reason, _)| reason.clone());
        if (found.rod, found.bitten, &found.end) != (cast.rod, cast.bite.is_some(), &end) {
            return broken("a cast ended as it was said to", format!("shown {found:?}, expected {cast:?}"));
        }
        if found.spot != cast.spot {
            let why = format!("shown {:?}, expected {:?}: {}", found.spot, cast.spot, cast.id);
            return broken("a cast is where it was aimed", why);
        }
        wait(found, cast, naive)?;
    }
    Ok(())
}

/// A wait is the true time that passed; if there is a reboot in between, it may be off by as much as the wall
/// clock was moved.
fn wait(found: &CastShown, cast: &Cast, naive: &Session) -> Result<(), Broken> {
    let Some((expected, one_boot)) = cast.wait() else { return Ok(()) };
    let allowed = SLACK_MS + if one_boot { 0 } else { naive.spread_ms };
    let Some(shown) = found.wait_ms else {
        return broken(
            "a wait is the time that passed",
            format!("none is shown, passed {expected} ms: {cast:?}"),
        );
    };
    if (shown - expected).abs() > allowed {
        let promise = if one_boot {
            "a wait is the time that passed"
        } else {
            "a wait over a boot is right within what the wall clock was off"
        };
        return broken(
            promise,
            format!("shown {shown} ms, passed {expected} ms, allowed {allowed} ms: {cast:?}"),
        );
    }
    Ok(())
}

/// A moment of a phone.
pub struct Now<'a> {
    /// The true time.
    pub ms: i64,
    /// The phone's boot.
    pub boot: &'a str,
    /// The spread of the wall clock's error over the session, including this moment.
    pub off: i64,
}

impl Now<'_> {
    /// How far off a time since a splash may be.
    fn allowed(&self, cast: &Cast, spread_ms: i64) -> i64 {
        let one_boot = cast.start.boots.iter().all(|of| of == self.boot);
        SLACK_MS + if one_boot { 0 } else { spread_ms.max(self.off) }
    }
}

/// The running clocks of the Bank screen.
pub fn clocks(bank: &Bank, naive: &Session, now: &Now) -> Result<(), Broken> {
    for (&(shown, out), cast) in bank.clocks.iter().zip(&naive.rods) {
        let Some(cast) = cast.and_then(|place| naive.casts.get(place)).filter(|_| out) else { continue };
        let Some(start) = cast.start.ms else { continue };
        let allowed = now.allowed(cast, naive.spread_ms);
        if (shown - (now.ms - start).max(0)).abs() > allowed {
            let why = format!("shown {shown} ms, passed {} ms, allowed {allowed} ms off", now.ms - start);
            return broken("the running clock shows the time that passed", why);
        }
    }
    Ok(())
}

/// How long after a fish an alarm that waited for it rings.
const AFTER_FISH_MS: i64 = 10_000;

/// An alarm rings for each bait that is out, the chosen number of true minutes after its splash, and for no
/// other; none while a fish is on, and the others' after it.
pub fn rings(
    rings: &BTreeMap<u64, i64>,
    naive: Option<&Session>,
    alarm_min: i64,
    now: &Now,
) -> Result<(), Broken> {
    let promise = "a bait that is out rings when the minutes have passed";
    let rods = naive.filter(|session| session.open).into_iter().flat_map(|session| (1..).zip(&session.rods));
    let casts = |place: usize| naive.and_then(|session| session.casts.get(place));
    let (on, mut out): (BTreeMap<u64, &Cast>, BTreeMap<u64, &Cast>) = rods
        .filter_map(|(rod, place)| Some((rod, casts((*place)?)?)))
        .partition(|(_, cast)| cast.bite.is_some());
    if !on.is_empty() {
        out.clear();
    }
    let fish = || naive.into_iter().flat_map(|session| &session.casts).filter(|cast| cast.bite.is_some());
    let off: Option<Vec<i64>> = fish().map(|cast| cast.end.as_ref()?.1.ms).collect();
    // At all-out the bait comes in, so no alarm rings after it.
    let over = |cast: &Cast| {
        let Some(session) = naive else { return false };
        let (Some(all_out), Some(start)) = (session.all_out_ms, cast.start.ms) else { return false };
        let allowed = now.allowed(cast, session.spread_ms);
        let ring = now
            .ms
            .max(start + alarm_min * 60_000)
            .max(off.as_ref().and_then(|off| off.iter().max().copied()).unwrap_or(0));
        start <= all_out + allowed && ring + allowed >= all_out
    };
    out.retain(|rod, cast| rings.contains_key(rod) || !over(cast));
    if !rings.keys().eq(out.keys()) {
        return broken(promise, format!("rings {rings:?}, out {:?}", out.keys()));
    }
    for ((rod, left), cast) in rings.iter().zip(out.values()) {
        let Some(start) = cast.start.ms else { continue };
        let allowed = now.allowed(cast, naive.map_or(0, |session| session.spread_ms));
        let expected = alarm_min * 60_000 - (now.ms - start).max(0);
        // One whose minute came before the last fish was off waits for that.
        let Some(off) = off.as_ref().map(|off| off.iter().max()) else { continue };
        let waits_ms = off.map(|off| off - now.ms - expected);
        let as_due = (left - expected).abs() <= allowed && waits_ms.is_none_or(|ms| ms <= allowed);
        let after = off.is_some_and(|off| (left - (off + AFTER_FISH_MS - now.ms)).abs() <= allowed);
        if !(as_due || after && waits_ms.is_some_and(|ms| ms >= -allowed)) {
            let why = format!("rod {rod}: in {left} ms, expected {expected} ms, allowed {allowed} ms off");
            return broken(promise, why);
        }
    }
    Ok(())
}

/// The page of a session in the Book has each note as often as it was written and not undone.
pub fn notes(page: &[String], naive: &Session, texts: &BTreeSet<&str>) -> Result<(), Broken> {
    for text in texts {
        let shown = page.iter().filter(|value| value == text).count();
        let expected = naive.notes.iter().filter(|note| note == text).count();
        if shown != expected {
            let why = format!("\"{text}\" is there {shown} times, expected {expected}");
            return broken("notes are in the Book where they were written", why);
        }
    }
    Ok(())
}

/// UNDO and REDO name what the angler did last and what was undone last.
pub fn names(bank: &Bank, oracle: &Oracle) -> Result<(), Broken> {
    let keys = [("UNDO", &bank.undo, oracle.undo()), ("REDO", &bank.redo, oracle.redo())];
    for (key, shown, deed) in keys {
        if !is_said(shown, deed) {
            let why = format!("{key} says \"{shown}\", expected {:?}", deed.map(|deed| &deed.says));
            return broken("UNDO and REDO name the angler's last deed", why);
        }
    }
    Ok(())
}

/// Whether a key names a deed; for a kind without a word of its own only the time is compared.
fn is_said(shown: &str, deed: Option<&Deed>) -> bool {
    match deed {
        None => shown == "nothing yet",
        Some(deed) if deed.put_right => shown.starts_with(deed.named()),
        Some(deed) if deed.says.starts_with(' ') => shown.ends_with(&deed.says),
        Some(deed) => shown == deed.says,
    }
}
