//! The Files screen: exports, imports, backups, and the words for what a check or a file contains.

use super::{FormChoice, Span};

use super::club::{club_row, made_of};
use super::date::date_words;
use super::figures::clock_of;
use super::{Action, Arg, Choice, ChoiceRow, FilesTap, Refused, Wording};
use restwater_exchange::{Place, Tally, Trailer};
use restwater_log::ClubStart;
use restwater_session::Session;
use restwater_store::{BackupFile, CheckReport, ImportRow, SalvageReport};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// One import, as the list shows it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ImportLine {
    /// Its id.
    pub id: Uuid,
    /// Who, when, how many entries.
    pub says: String,
    /// Whether it is undone at present.
    pub undone: bool,
    /// The word on its key: undo or redo.
    pub key: String,
    /// The same with what it undoes, for a screen reader.
    pub key_spoken: String,
    /// What that key sends.
    pub action: Action,
}

/// One backup, as the list shows it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct BackupLine {
    /// Where it is.
    pub path: String,
    /// When it was made.
    pub says: String,
    /// What its key does.
    pub key: String,
    /// The same with which backup, for a screen reader.
    pub key_spoken: String,
}

/// The Files screen.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct FilesView {
    /// What it is about.
    pub title: String,
    /// The choices in a sentence.
    pub says: String,
    /// Which sessions, which form, position, formulas.
    pub rows: Vec<ChoiceRow>,
    /// The key that makes the file and shares it.
    pub send: String,
    /// The key that makes the file and saves it where the user chooses.
    pub save: String,
    /// The key that imports a file.
    pub take_in: String,
    /// The key that has the user pick a folder for copies of backups.
    pub folder: String,
    /// The key of the list of imports.
    pub imports_key: String,
    /// The key of the list of backups.
    pub backups_key: String,
    /// The key that makes a backup now.
    pub back_up: String,
    /// The key that checks the log.
    pub look_over: String,
    /// Label of the field for the partner's name.
    pub source_label: String,
    /// Imports, latest first.
    pub imports: Vec<ImportLine>,
    /// Backups, latest first.
    pub backups: Vec<BackupLine>,
    /// The text for an empty list of imports.
    pub none: String,
    /// The text for an empty list of backups.
    pub no_backups: String,
}

/// What a file would add, or has added.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct IncomingView {
    /// What it is about.
    pub title: String,
    /// A sentence each.
    pub lines: Vec<String>,
    /// Whether there is something to import.
    pub brings: bool,
    /// Whether the file was whole.
    pub whole: bool,
    /// The key that imports it.
    pub take_in: String,
    /// The key that declines it.
    pub leave: String,
    /// Entries not in the log before.
    pub new: u64,
    /// Entries known before.
    pub known: u64,
    /// How many of the new entries are of a newer version and kept unread.
    pub newer: u64,
    /// Records that can't be read.
    pub damaged: u64,
    /// Sessions with something new.
    pub sessions: u64,
}

/// Before a file is imported, or after.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stage {
    /// What it would add.
    Before,
    /// What it has added.
    After,
}

/// What the Files screen is made from.
pub struct FilesInput<'a> {
    /// The words of the locale.
    pub words: &'a Wording,
    /// The session that the screens show, if one is open.
    pub session: Option<&'a Session>,
    /// Which sessions go out.
    pub span: Span,
    /// In which form.
    pub form: FormChoice,
    /// Whether the position of the peg is included.
    pub place: Place,
    /// Whether texts that a spreadsheet would take for formulas stay as typed.
    pub formulas_as_typed: bool,
    /// Files taken in, with their state.
    pub imports: &'a [ImportRow],
    /// Backups there are, each with the minutes east of UTC when it was made.
    pub backups: &'a [(BackupFile, i16)],
    /// The club whose start was taken, and whether this version can use it.
    pub club: Option<(&'a ClubStart, bool)>,
}

/// Makes the Files screen.
pub fn files_view(input: &FilesInput) -> FilesView {
    let words = input.words;
    let says = match (input.session, input.span) {
        (None, _) if input.form == FormChoice::Map => words.say("files-no-session"),
        (None, Span::This) => words.say("files-no-session"),
        _ => words.say(&format!("files-says-{}", input.form.name())),
    };
    FilesView {
        title: words.say("files-title"),
        says,
        rows: rows(input)
            .into_iter()
            .chain(input.club.map(|(start, usable)| club_row(words, start, usable)))
            .collect(),
        send: words.say("files-send"),
        save: words.say("files-save"),
        take_in: words.say("files-take-in"),
        folder: words.say("files-folder"),
        imports_key: words.say("files-imports"),
        backups_key: words.say("files-backups"),
        back_up: words.say("files-back-up"),
        look_over: words.say("files-look-over"),
        source_label: words.say("files-source"),
        imports: input.imports.iter().map(|row| import_line(words, row)).collect(),
        backups: input
            .backups
            .iter()
            .map(|(file, offset_min)| BackupLine {
                path: file.path.to_string_lossy().into_owned(),
                says: stamp(words, file.wall_ms, *offset_min),
                key: words.say("files-restore"),
                key_spoken: String::new(),
            })
            .collect(),
        none: words.say("files-none"),
        no_backups: words.say("files-no-backups"),
    }
}

fn rows(input: &FilesInput) -> Vec<ChoiceRow> {
    let words = input.words;
    let row = |tag: &str, choices: Vec<Choice>, source: String| {
        ChoiceRow::of(tag, words.say(&format!("files-{tag}")), choices, source)
    };
    let choice = |tag: String, label, chosen, tap| Choice::new(tag, label, chosen, Action::Files { tap });
    let form = |(form, name): (FormChoice, &str)| {
        let label = words.say(&format!("files-form-{name}"));
        choice(name.to_owned(), label, form == input.form, FilesTap::Form { form })
    };
    let mut rows = vec![row("form", FormChoice::ALL.map(form).to_vec(), String::new())];
    if !matches!(input.form, FormChoice::Report | FormChoice::Map) {
        let span =
            |span: Span| choice(span.tag(), span.says(words), span == input.span, FilesTap::Span { span });
        rows.push(row("span", Span::ALL.map(span).to_vec(), String::new()));
    }
    match input.form {
        FormChoice::Entries | FormChoice::Map => {
            let now = input.place == Place::Included;
            let position = |(tag, included): (&str, bool)| {
                let label = words.say(&format!("files-place-{tag}"));
                choice(tag.to_owned(), label, now == included, FilesTap::Position { included })
            };
            let choices = [("left_out", false), ("included", true)].map(position).to_vec();
            rows.push(row("place", choices, words.say("files-place-how")));
        }
        FormChoice::Casts | FormChoice::Fish | FormChoice::Sessions | FormChoice::Club => {
            let formulas = |(tag, as_typed): (&str, bool)| {
                let label = words.say(&format!("files-formulas-{tag}"));
                choice(
                    tag.to_owned(),
                    label,
                    input.formulas_as_typed == as_typed,
                    FilesTap::Formulas { as_typed },
                )
            };
            let choices = [("marked", false), ("as_typed", true)].map(formulas).to_vec();
            rows.push(row("formulas", choices, words.say("files-formulas-how")));
        }
        FormChoice::Report => {}
    }
    rows
}

fn import_line(words: &Wording, row: &ImportRow) -> ImportLine {
    let when = stamp(words, row.wall_ms, row.offset_min);
    let args = [
        ("source", Arg::Text(&row.source)),
        ("when", Arg::Text(&when)),
        ("ops", Arg::Count(row.ops as usize)),
    ];
    ImportLine {
        id: row.id,
        says: words.say_with(if row.undone { "files-import-back" } else { "files-import" }, &args),
        undone: row.undone,
        action: if row.undone {
            Action::RedoImport { id: row.id }
        } else {
            Action::UndoImport { id: row.id }
        },
        key: words.say(if row.undone { "files-redo-import" } else { "files-undo-import" }),
        key_spoken: String::new(),
    }
}

/// "17 Jan 2026 12:46", local.
fn stamp(words: &Wording, wall_ms: i64, offset_min: i16) -> String {
    let (day, time) = (date_words(words, wall_ms, offset_min), clock_of(wall_ms, offset_min));
    words.say_with("files-stamp", &[("day", Arg::Text(&day)), ("time", Arg::Text(&time))])
}

/// The contents of an exported file, in words.
pub fn outgoing_words(words: &Wording, form: FormChoice, count: u64) -> String {
    words.say_with(&format!("files-made-{}", form.name()), &[("count", Arg::Count(count as usize))])
}

/// What a file adds, in sentences.
pub fn incoming_view(words: &Wording, tally: &Tally, stage: Stage) -> IncomingView {
    let after = stage == Stage::After;
    let brings = tally.new > 0 || tally.brought_back > 0 || tally.mended > 0;
    IncomingView {
        title: words.say(if after { "incoming-title-after" } else { "incoming-title" }),
        lines: incoming_lines(words, tally, after),
        brings,
        whole: tally.is_whole(),
        take_in: words.say("incoming-take"),
        leave: leave_label(words, !after && brings),
        new: tally.new,
        known: tally.known,
        newer: tally.newer,
        damaged: tally.damaged,
        sessions: tally.sessions.len() as u64,
    }
}

/// What a swim as GeoJSON adds, in words.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct MapTally {
    /// "New from the file: 3 marks, 1 hazard, an outline."
    pub says: String,
    /// Each thing it adds.
    pub adds: Vec<String>,
    /// What is here already.
    pub already: Vec<String>,
    /// What could not be used.
    pub skipped: Vec<String>,
    /// Entries it writes; 0 if there is nothing new.
    pub entries: u64,
}

/// The key that leaves the page: DON'T IMPORT is a choice only while there is something to import.
fn leave_label(words: &Wording, choice: bool) -> String {
    words.say(if choice { "incoming-leave" } else { "incoming-done" })
}

/// What a swim as GeoJSON adds, in sentences.
pub fn incoming_map(words: &Wording, tally: &MapTally, stage: Stage) -> IncomingView {
    let after = stage == Stage::After;
    let listed = |id: &str, all: &[String]| {
        (!all.is_empty()).then(|| words.say_with(id, &[("what", Arg::Text(&words.listed(all)))]))
    };
    let undo = (after && tally.entries > 0).then(|| words.say("incoming-map-undo"));
    let further = [
        undo,
        listed("incoming-map-adds", &tally.adds),
        listed("incoming-map-already", &tally.already),
        listed("incoming-map-skipped", &tally.skipped),
    ];
    IncomingView {
        title: words.say(if after { "incoming-title-after" } else { "incoming-title" }),
        lines: std::iter::once(tally.says.clone()).chain(further.into_iter().flatten()).collect(),
        brings: tally.entries > 0,
        whole: true,
        take_in: words.say("incoming-take"),
        leave: leave_label(words, !after && tally.entries > 0),
        new: tally.entries,
        known: tally.already.len() as u64,
        newer: 0,
        damaged: 0,
        sessions: u64::from(tally.entries > 0),
    }
}

/// What is in use when a club's file arrives.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ClubNow {
    /// No club's start.
    None,
    /// The same start.
    Same,
    /// Another start.
    Another,
}

/// What a club's file would change, or has changed.
pub fn incoming_club(words: &Wording, start: &ClubStart, now: ClubNow, stage: Stage) -> IncomingView {
    let known = now == ClubNow::Same;
    let after = stage == Stage::After;
    let state = match (now, after) {
        (_, true) => Some("club-back"),
        (ClubNow::Same, false) => Some("club-known"),
        (ClubNow::Another, false) => Some("club-replaces"),
        (ClubNow::None, false) => None,
    };
    IncomingView {
        title: words.say(if after { "incoming-title-after" } else { "incoming-title" }),
        lines: made_of(words, start).into_iter().chain(state.map(|id| words.say(id))).collect(),
        brings: !known && !after,
        whole: true,
        take_in: words.say("incoming-take"),
        leave: leave_label(words, !after && !known),
        new: u64::from(!known),
        known: u64::from(known),
        newer: 0,
        damaged: 0,
        sessions: 0,
    }
}

fn incoming_lines(words: &Wording, tally: &Tally, after: bool) -> Vec<String> {
    let count = |id: &str, n: u64| words.say_with(id, &[("count", Arg::Count(n as usize))]);
    let sessions = count("incoming-sessions", tally.sessions.len() as u64);
    let new = Arg::Count(tally.new as usize);
    let id = match (tally.new > 0 && tally.sessions.is_empty(), after) {
        (true, false) => "incoming-kit",
        (true, true) => "incoming-kit-after",
        (false, false) => "incoming-new",
        (false, true) => "incoming-new-after",
    };
    let news = words.say_with(id, &[("count", new), ("sessions", Arg::Text(&sessions))]);
    // If nothing is new but something can be restored, "nothing new" alone would be misleading.
    let restores = tally.brought_back > 0 || tally.mended > 0;
    let mut lines: Vec<String> = (tally.new > 0 || !restores).then_some(news).into_iter().collect();
    for (id, n) in [
        (if after { "incoming-back-after" } else { "incoming-back" }, tally.brought_back),
        (if after { "incoming-mended-after" } else { "incoming-mended" }, tally.mended),
        ("incoming-known", tally.known - tally.brought_back.min(tally.known)),
        ("incoming-amended", tally.amended),
        ("incoming-newer", tally.newer),
        ("incoming-clashes", tally.clashes),
        ("incoming-damaged", tally.damaged),
    ] {
        if n > 0 {
            lines.push(count(id, n));
        }
    }
    if let Some(fault) = tally.faults.first() {
        let place = fault.said(words);
        lines.push(words.say_with("incoming-first-fault", &[("place", Arg::Text(&place))]));
    }
    match tally.trailer {
        Trailer::Fits => {}
        Trailer::Missing => lines.push(words.say("incoming-cut")),
        Trailer::Differs { said } => lines.push(count("incoming-differs", said)),
    }
    for clock in tally.clocks.values() {
        if let Some(minutes) = minutes_off(clock.ahead_ms) {
            lines.push(count("incoming-clock-ahead", minutes));
        }
        if let Some(minutes) = minutes_off(clock.set_back_ms) {
            lines.push(count("incoming-clock-back", minutes));
        }
    }
    lines
}

fn minutes_off(ms: i64) -> Option<u64> {
    u64::try_from(ms / 60_000).ok().filter(|minutes| *minutes > 0)
}

/// The result of checking the log, in words.
pub fn check_words(words: &Wording, found: &CheckReport, repaired: bool) -> String {
    let ops = Arg::Count(found.ops as usize);
    if found.is_clean() {
        return words.say_with("check-clean", &[("ops", ops)]);
    }
    if repaired {
        let count = Arg::Count(found.sessions.len() + found.snapshots.len());
        return words.say_with("check-repaired", &[("ops", ops), ("count", count)]);
    }
    if found.damaged_ops == 0 {
        return words.say_with("check-file-damaged", &[("ops", ops)]);
    }
    words.say_with("check-damaged", &[("ops", ops), ("count", Arg::Count(found.damaged_ops as usize))])
}

/// What was saved of a damaged log.
pub fn salvage_words(words: &Wording, report: &SalvageReport) -> String {
    let saved = Arg::Count(report.saved as usize);
    let aside = report.set_aside.file_name().unwrap_or_default().to_string_lossy().into_owned();
    let aside = Arg::Text(&aside);
    match report.lost {
        None => words.say_with("salvage-unknown", &[("saved", saved), ("aside", aside)]),
        Some(lost) => {
            let lost = Arg::Count(lost as usize);
            words.say_with("salvage", &[("saved", saved), ("lost", lost), ("aside", aside)])
        }
    }
}

/// What a new backup is called.
pub fn backup_words(words: &Wording, made: &BackupFile, offset_min: i16) -> String {
    let when = stamp(words, made.wall_ms, offset_min);
    words.say_with("files-backed-up", &[("when", Arg::Text(&when))])
}
