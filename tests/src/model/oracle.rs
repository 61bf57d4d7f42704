//! What must be true, worked out naively: plain structs, no type and no function of the core.
//!
//! The oracle of a phone keeps every entry that was confirmed to the angler or imported from a file, and what
//! the angler did on that phone in the order of the taps. What counts, which session is shown and what UNDO
//! names follow only from that; times come from the model's own true clock.

use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet, HashMap, HashSet};

/// One entry, read from its JSON.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// Its id.
    pub id: String,
    /// The phone that wrote it.
    pub device: String,
    /// Hybrid clock as text, which sorts like the clock.
    pub clock: String,
    /// Its session.
    pub session: String,
    /// Its kind.
    pub kind: String,
    /// Its content.
    pub payload: Value,
    /// The entry that it amends.
    pub amends: Option<String>,
    /// Wall clock when it was tapped.
    pub wall_ms: i64,
    /// Minutes east of UTC then.
    pub offset_min: i64,
    /// The whole entry.
    pub whole: Value,
}

impl Entry {
    /// Reads an entry.
    pub fn of(whole: Value) -> Option<Self> {
        let text = |field: &str| whole[field].as_str().map(str::to_owned);
        let at = &whole["at"];
        Some(Self {
            id: text("id")?,
            clock: text("hlc")?,
            session: text("session")?,
            kind: text("kind")?,
            payload: whole.get("payload").cloned().unwrap_or_default(),
            amends: text("amends"),
            wall_ms: at["wall"].as_i64()?,
            offset_min: at["offset"].as_i64()?,
            device: text("device")?,
            whole,
        })
    }

    fn place(&self) -> (&str, &str, &str) {
        (&self.clock, &self.device, &self.id)
    }

    /// Its rod, if it has one.
    pub fn rod(&self) -> Option<u64> {
        self.payload.get("rod").and_then(Value::as_u64).map(|rod| rod.clamp(1, 9))
    }

    /// The entries that it declares void.
    fn targets(&self) -> impl Iterator<Item = &str> {
        let points = matches!(self.kind.as_str(), "undone" | "removed" | "import_undone" | "import_redone");
        let targets = self.payload.get("targets").and_then(Value::as_array).filter(|_| points);
        targets.into_iter().flatten().filter_map(Value::as_str)
    }

    /// "cast 07:45": the word of its kind and the local time of the tap.
    fn says(&self) -> String {
        let minutes = (self.wall_ms + self.offset_min * 60_000).div_euclid(60_000).rem_euclid(1_440);
        format!("{} {:02}:{:02}", word(&self.kind), minutes / 60, minutes % 60)
    }

    /// Whether the clock may have been reset when it was tapped: it showed a time before 2020, or a fortnight behind the log.
    fn is_under_a_reset_clock(&self) -> bool {
        let log_ms = self.clock.split('-').next().and_then(|ms| ms.parse().ok()).unwrap_or(self.wall_ms);
        self.wall_ms < 1_577_836_800_000 || log_ms - self.wall_ms > 14 * 86_400_000
    }
}

/// The word for an entry of a kind.
fn word(kind: &str) -> &'static str {
    const WORDS: &[(&str, &str)] = &[
        ("session_started", "start"),
        ("session_ended", "end"),
        ("cast", "cast"),
        ("bite", "bite"),
        ("landed", "landed"),
        ("lost", "lost"),
        ("missed", "missed"),
        ("liner", "liner"),
        ("indication", "knock"),
        ("wound_in", "wound in"),
        ("twitch", "twitch"),
        ("away", "away"),
        ("returned", "back"),
        ("fed", "feed"),
        ("feeder_set", "feeder"),
        ("fish_shown", "fish showing"),
        ("neighbour_caught", "neighbour's fish"),
        ("rig_set", "rig"),
        ("spot_set", "spot"),
        ("noted", "note"),
        ("time_set", "time back"),
        ("cast_end_set", "end of a cast"),
        ("cast_added", "cast added"),
        ("confirmed", "as it is"),
        ("mark_set", "mark"),
        ("kept_back", "kept back"),
        ("released", "released"),
        ("swim_set", "swim"),
        ("alternation_started", "test"),
        ("alternation_ended", "end of test"),
        ("feature_set", "feature"),
        ("outline_set", "outline"),
        ("hazard_set", "hazard"),
        ("peg_placed", "peg position"),
        ("match_set", "match"),
        ("match_off", "no match"),
        ("fish_set", "fish"),
        ("net_weighed", "weigh-in"),
        ("conditions_set", "weather"),
        ("hooklength_lost", "hooklength lost"),
        ("planned_next", "plan"),
        ("hooklengths_tied", "tied"),
        ("hooklengths_counted", "count"),
        ("hooklengths_taken_out", "taken out"),
        ("hooklengths_cut_down", "cut down"),
        ("hooklengths_wanted", "to carry"),
        ("spool_added", "spool"),
        ("spool_left", "spool"),
        ("allowances_set", "knots"),
        ("pop_up_set", "pop-up"),
        ("shot_set", "shot"),
        ("fall_timed", "fall"),
        ("ladder_set", "ladder"),
        ("cautions_seen", "cautions"),
        ("plan_set", "plan"),
        ("plan_cleared", "line out of the plan"),
        ("plan_taken", "plan for today"),
        ("plan_dropped", "no plan today"),
        ("club_taken", "the club's start"),
        ("club_left", "leaving the club"),
    ];
    WORDS.iter().find(|(name, _)| *name == kind).map_or("", |(_, word)| word)
}

/// What the model knows about an entry's time, which no phone knows.
#[derive(Debug, Clone)]
pub struct Truth {
    /// When it was tapped.
    pub at: i64,
    /// How far the wall clock was ahead then.
    pub wall_off: i64,
    /// Which boot of which phone: "0 boot-1".
    pub boot: String,
}

/// The true times of entries by their ids.
pub type Truths = HashMap<String, Truth>;

/// Something that the angler did, which one press of UNDO undoes.
#[derive(Debug, Clone, PartialEq)]
pub struct Deed {
    /// The entries that it wrote.
    pub ids: Vec<String>,
    /// What UNDO calls it; a kind without a word of its own begins with a space.
    pub says: String,
    /// Whether the screens may show another time, since the clock was reset and later entries put it right.
    pub put_right: bool,
    /// The entries that undid it.
    pub taken_back_by: Vec<String>,
}

impl Deed {
    /// What a text that names it has to contain: its word and its time, or its word alone if the time may be another.
    pub fn named(&self) -> &str {
        let word = self.says.rsplit_once(' ').map_or("", |(word, _)| word);
        if self.put_right { word } else { &self.says }
    }
}

/// What must be true of one phone.
#[derive(Debug, Clone, Default)]
pub struct Oracle {
    /// Its device id, known from its first entry.
    pub device: String,
    /// Every entry in its log.
    pub log: BTreeMap<String, Entry>,
    /// What the angler did and has not undone, latest last.
    pub done: Vec<Deed>,
    /// What was undone and may be redone, latest last.
    pub undone: Vec<Deed>,
}

impl Oracle {
    /// The angler did something that wrote these entries.
    pub fn did(&mut self, mut entries: Vec<Entry>) {
        entries.sort_by(|a, b| a.place().cmp(&b.place()));
        // A bite that is logged with its outcome is named after the outcome.
        let outcome = entries.iter().rfind(|entry| matches!(entry.kind.as_str(), "landed" | "lost"));
        let Some(first) = outcome.or(entries.first()) else { return };
        self.device.clone_from(&first.device);
        let ids = entries.iter().map(|entry| entry.id.clone()).collect();
        let put_right = first.is_under_a_reset_clock();
        self.done.push(Deed { ids, says: first.says(), put_right, taken_back_by: Vec::new() });
        self.undone.clear();
        self.add(entries);
    }

    /// What UNDO has to name: the last deed that was not removed with an import.
    pub fn undo(&self) -> Option<&Deed> {
        self.done.get(self.last_there(&self.done)?)
    }

    /// What REDO has to name.
    pub fn redo(&self) -> Option<&Deed> {
        self.undone.get(self.last_there(&self.undone)?)
    }

    /// UNDO was pressed and confirmed; the deed that it had to name.
    pub fn pressed_undo(&mut self, entries: Vec<Entry>) -> Option<Deed> {
        let place = self.last_there(&self.done);
        let taken_back_by = entries.iter().map(|entry| entry.id.clone()).collect();
        self.add(entries);
        let deed = Deed { taken_back_by, ..self.done.remove(place?) };
        self.undone.push(deed.clone());
        Some(deed)
    }

    /// REDO was pressed and confirmed; the deed that it had to name.
    pub fn pressed_redo(&mut self, entries: Vec<Entry>) -> Option<Deed> {
        let place = self.last_there(&self.undone);
        self.add(entries);
        let deed = self.undone.remove(place?);
        self.done.push(deed.clone());
        Some(deed)
    }

    /// What was removed with an undone import is not offered: a file of an older version may do that to this
    /// phone's entries.
    fn last_there(&self, deeds: &[Deed]) -> Option<usize> {
        let mut gone: HashSet<&str> = HashSet::new();
        if self.log.values().any(|entry| entry.kind == "import_undone") {
            let ordered = self.ordered(None);
            let void = Self::void(&ordered);
            let in_force = ordered.into_iter().filter(|e| e.kind == "import_undone" && !void.contains(&e.id));
            gone = in_force.flat_map(Entry::targets).collect();
        }
        let is_gone = |id: &String| gone.contains(id.as_str());
        deeds
            .iter()
            .rposition(|deed| !deed.ids.iter().all(is_gone) && !deed.taken_back_by.iter().any(is_gone))
    }

    /// Adds entries that are not a deed of this angler.
    pub fn add(&mut self, entries: Vec<Entry>) {
        self.log.extend(entries.into_iter().map(|entry| (entry.id.clone(), entry)));
    }

    /// Adds entries from a file; existing ones stay as they are.
    pub fn add_new(&mut self, entries: Vec<Entry>) {
        for entry in entries {
            self.log.entry(entry.id.clone()).or_insert(entry);
        }
    }

    /// All entries of a session in the order of the log, or of all of them.
    pub fn ordered(&self, session: Option<&str>) -> Vec<&Entry> {
        let mut entries: Vec<&Entry> =
            self.log.values().filter(|entry| session.is_none_or(|id| entry.session == id)).collect();
        entries.sort_by(|a, b| a.place().cmp(&b.place()));
        entries
    }

    /// The ids of what does not count: an entry that is itself undone undoes nothing.
    pub fn void(ordered: &[&Entry]) -> HashSet<String> {
        let mut void: HashSet<String> = HashSet::new();
        for entry in ordered.iter().rev() {
            if !void.contains(&entry.id) {
                void.extend(entry.targets().filter(|id| *id != entry.id).map(str::to_owned));
            }
        }
        void
    }

    /// The entries from imports that were undone here, and the entries that undid those restored since.
    pub fn taken_back(&self) -> HashSet<String> {
        let said: Vec<&Entry> =
            self.ordered(None).into_iter().filter(|entry| entry.kind.starts_with("import_")).collect();
        Self::void(&said)
    }

    /// What a complete export contains: everything but what was undone with an import here, the entries that say so,
    /// and places of the peg that are undone or replaced.
    pub fn to_send(&self) -> BTreeSet<&str> {
        let (taken_back, left) = (self.taken_back(), self.places_left());
        let stays = |entry: &&Entry| {
            entry.kind.starts_with("import_")
                || taken_back.contains(&entry.id)
                || left.contains(entry.id.as_str())
        };
        self.log.values().filter(|entry| !stays(entry)).map(|entry| entry.id.as_str()).collect()
    }

    /// The places of the peg that no screen shows any more: all of a session but the last one in force.
    fn places_left(&self) -> BTreeSet<&str> {
        let mut left = BTreeSet::new();
        for session in self.log.values().map(|entry| entry.session.as_str()).collect::<BTreeSet<_>>() {
            let ordered = self.ordered(Some(session));
            let void = Self::void(&ordered);
            let places = || ordered.iter().filter(|entry| entry.kind == "peg_placed");
            let shown = places().rev().find(|entry| !void.contains(&entry.id)).map(|entry| entry.id.as_str());
            left.extend(places().map(|entry| entry.id.as_str()).filter(|id| Some(*id) != shown));
        }
        left
    }

    /// The session that has to be shown: the latest in the order of the log that this phone began and has not
    /// undone.
    pub fn shown(&self) -> Option<&str> {
        let ordered = self.ordered(None);
        let void = Self::void(&ordered);
        let own = |entry: &&&Entry| {
            entry.kind == "session_started" && entry.device == self.device && !void.contains(&entry.id)
        };
        ordered.iter().rev().find(own).map(|entry| entry.session.as_str())
    }

    /// The sessions that have an entry, without kits.
    pub fn sessions(&self) -> Vec<&str> {
        self.of_version(b'7')
    }

    /// The kits that have an entry.
    pub fn kits(&self) -> Vec<&str> {
        self.of_version(b'8')
    }

    fn of_version(&self, version: u8) -> Vec<&str> {
        let mut ids: Vec<&str> = self.log.values().map(|entry| entry.session.as_str()).collect();
        ids.retain(|id| id.as_bytes().get(14) == Some(&version));
        ids.sort_unstable();
        ids.dedup();
        ids
    }
}
