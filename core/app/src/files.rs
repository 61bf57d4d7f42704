//! The taps of the Files screen: files in and out, backups, and checking the log.

use super::geojson::geojson_in;
use super::journal::{Beside, Journal};
use super::{App, AppError, entropy};
use restwater_exchange::{
    CsvOptions, ExchangeError, Incoming, OnProgress, Place, Selection, Table, Tally, club_phone, export_to,
    import, looks_like_a_store, preview, preview_backup, redo_import, restore, undo_import, write_atomically,
    write_csv,
};
use restwater_log::{CLOCKS_CHANGE_MIN, Moment, clocks_forward_min, is_kit};
use restwater_match_day::clock::DAY_MS;
use restwater_report::{WhoseDay, report};
use restwater_screen::{
    Arg, FilesInput, FilesTap, FilesView, FormChoice, IncomingView, Span, Stage, Wording, files_view,
    incoming_map, incoming_view,
};
use restwater_session::NotNow;
use restwater_store::{BackupFile, FILE_NAME, SessionRow, Store, backups};
use restwater_waits::Shapes;
use serde::{Deserialize, Serialize};
use std::fs::{self, File};
use std::io::{BufReader, Write};
use std::ops::ControlFlow;
use std::path::{Path, PathBuf};
use uuid::Uuid;

/// Where backups go, beside the log.
const BACKUPS: &str = "backups";
/// Where files are made for the shell to pass on.
const OUTGOING: &str = "outgoing";
/// How many files are kept there: the one being handed on and a few earlier ones, in case handing over is
/// slow.
const OUTGOING_KEPT: usize = 4;
/// A backup is due when the log has grown and the latest is this old.
const BACKUP_EVERY_MS: u64 = 3_600_000;
/// The setting that stores how far the latest backup goes.
const BACKED_UP: &str = "backed-up";
const LATEST_BACKUP: &str = "latest-backup";
/// A partner's name is cut to this many characters.
const SOURCE_CHARS: usize = 60;

/// What is chosen on the Files screen; it is not part of the log.
#[derive(Debug, Clone, Copy, Default, Serialize, Deserialize)]
pub(super) struct FilesState {
    span: Span,
    form: FormChoice,
    place: Place,
    formulas_as_typed: bool,
}

/// A file made to be handed on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Outgoing {
    /// Its path; the file is complete and on stable storage.
    pub path: String,
    /// The name to offer.
    pub name: String,
    /// Its media type.
    pub media_type: String,
    /// The notice once it has been passed on or saved: its contents and its name.
    pub says: String,
}

/// A backup just made, for the shell to copy where the user wants one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct BackupMade {
    /// Where it is.
    pub path: String,
    /// A sentence saying that it was made and verified, and when.
    pub says: String,
}

impl App {
    /// Makes the file that the Files screen asks for, on stable storage, for the shell to pass on.
    pub fn send(&mut self, now: &Moment, progress: &mut OnProgress<'_>) -> Result<Outgoing, AppError> {
        let state = self.files;
        let (stem, ending, media_type) = match state.form {
            FormChoice::Entries => ("", "restwater.json-seq", restwater_exchange::MEDIA_TYPE),
            FormChoice::Casts => ("-casts", "csv", "text/csv"),
            FormChoice::Fish => ("-fish", "csv", "text/csv"),
            FormChoice::Sessions => ("-sessions", "csv", "text/csv"),
            FormChoice::Report => ("-report", "html", "text/html"),
            FormChoice::Map => ("-swim", "geojson", "application/geo+json"),
            FormChoice::Club => ("-club-days", "csv", "text/csv"),
        };
        let sessions;
        let what = match state.span {
            Span::This => Selection::Session(self.session().ok_or(NotNow::NoSession)?.id),
            Span::Days(days) => {
                sessions = self.sessions_of_days(days, now)?;
                Selection::Sessions(&sessions)
            }
            Span::Everything => Selection::Everything,
        };
        // A map and a report are of one session, whatever span was chosen for other kinds of file.
        let of_one = state.span == Span::This || matches!(state.form, FormChoice::Map | FormChoice::Report);
        let started = self.session().filter(|_| of_one).and_then(|session| session.started.as_ref());
        let day = started.map_or(now, |at| &at.shown);
        // The tables of many anglers are put into one folder (docs/pooling.md).
        let whose = match state.form {
            FormChoice::Casts | FormChoice::Fish | FormChoice::Sessions | FormChoice::Club => {
                format!("-{:.6}", club_phone(self.journal.store().device()))
            }
            FormChoice::Entries | FormChoice::Report | FormChoice::Map => String::new(),
        };
        let name = format!("restwater-{}{stem}{whose}.{ending}", restwater_screen::iso_day(day));
        let dir = self.outgoing()?;
        let path = dir.join(&name);
        let count = match state.form {
            FormChoice::Entries => export_to(self.journal.store(), what, state.place, &path, progress)?.ops,
            FormChoice::Report => {
                let session = self.session().ok_or(NotNow::NoSession)?;
                let whose = if self.is_of_another(session.id)? { WhoseDay::Other } else { WhoseDay::Own };
                let text = report(self.words, session, whose);
                write_atomically(&path, |out| Ok(out.write_all(text.as_bytes())?))?;
                session.casts.len() as u64
            }
            FormChoice::Map => {
                let (text, things) = self.export_geojson(state.place == Place::Included)?;
                write_atomically(&path, |out| Ok(out.write_all(text.as_bytes())?))?;
                things
            }
            FormChoice::Casts => self.table(what, Table::Casts, &path, progress)?,
            FormChoice::Fish => self.table(what, Table::Fish, &path, progress)?,
            FormChoice::Sessions => self.table(what, Table::Sessions, &path, progress)?,
            FormChoice::Club => {
                // Each day has a row for each kind of shape.
                let rows = self.table(what, Table::ClubDays, &path, progress)?;
                rows / Shapes::usual().kind_names().len() as u64
            }
        };
        let contents = restwater_screen::outgoing_words(self.words, state.form, count);
        let says = self.words.labelled(&contents, &name);
        let path = path.to_string_lossy().into_owned();
        Ok(Outgoing { path, name, media_type: media_type.into(), says })
    }

    fn table(
        &self,
        what: Selection<'_>,
        table: Table,
        path: &Path,
        progress: &mut OnProgress<'_>,
    ) -> Result<u64, AppError> {
        let options = CsvOptions { neutralise_formulas: !self.files.formulas_as_typed };
        Ok(write_atomically(path, |out| {
            write_csv(self.journal.store(), what, table, options, &self.mine, out, progress)
        })?)
    }

    /// The sessions that were fished on the latest days; one over midnight is of both days.
    fn sessions_of_days(&mut self, days: u16, now: &Moment) -> Result<Vec<Uuid>, AppError> {
        self.sessions.refresh(&self.journal)?;
        // The range begins at midnight, so that every day is a whole day.
        let midnight_ms = restwater_screen::midnight(now) - (i64::from(days) - 1) * DAY_MS;
        let from_ms = self.by_its_own_clock(midnight_ms, now.offset_min)?;
        // A session that began after now did so by a clock that has been set back since.
        let open = self.session().filter(|session| session.is_open()).map(|session| session.id);
        Ok(self.sessions.fished_from(from_ms, open))
    }

    /// Corrects a midnight that was computed with the present offset by the offset that the phone had then, since the clocks may
    /// have been changed in between. Only sessions that began near it show that offset, and only they could fall on the wrong
    /// side of it.
    fn by_its_own_clock(&self, midnight_ms: i64, offset_min: i16) -> Result<i64, AppError> {
        let store = self.journal.store();
        let near = |row: &SessionRow| {
            row.began.wall_ms.saturating_sub(midnight_ms).saturating_abs() <= CLOCKS_CHANGE_MIN * 60_000
        };
        let Some(row) = store.sessions()?.into_iter().find(|row| !is_kit(row.id) && near(row)) else {
            return Ok(midnight_ms);
        };
        let ops = store.ops_of(row.id)?;
        let then =
            ops.iter().find(|op| op.order() == row.began.order).map_or(offset_min, |op| op.at.offset_min);
        Ok(midnight_ms + clocks_forward_min(then, offset_min) * 60_000)
    }

    /// The folder for files being handed on, with the oldest ones cleared away.
    fn outgoing(&self) -> Result<PathBuf, AppError> {
        let dir = self.journal.store().dir().join(OUTGOING);
        fs::create_dir_all(&dir).map_err(ExchangeError::from)?;
        let mut there: Vec<(std::time::SystemTime, PathBuf)> = fs::read_dir(&dir)
            .map_err(ExchangeError::from)?
            .filter_map(|entry| {
                let path = entry.ok()?.path();
                Some((fs::metadata(&path).ok()?.modified().ok()?, path))
            })
            .collect();
        there.sort();
        for (_, path) in there.iter().rev().skip(OUTGOING_KEPT - 1) {
            // If removal fails it is tried again next time.
            let _ = fs::remove_file(path);
        }
        Ok(dir)
    }

    /// What importing a file would add, without changing anything. An op file, a backup and a swim as GeoJSON
    /// are recognised by their contents.
    pub fn look_into(
        &mut self,
        file: &Path,
        now: &Moment,
        progress: &mut OnProgress<'_>,
    ) -> Result<IncomingView, AppError> {
        if let Some(text) = geojson_in(file)? {
            return Ok(incoming_map(self.words, &self.look_at_geojson(&text)?, Stage::Before));
        }
        if let Some(view) = self.look_at_club(file)? {
            return Ok(view);
        }
        let tally = if looks_like_a_store(file)? {
            preview_backup(self.journal.store(), file, now.wall_ms, progress)?
        } else {
            preview(self.journal.store(), open(file)?, now.wall_ms, progress)?
        };
        Ok(incoming_view(self.words, &tally, Stage::Before))
    }

    /// Imports a file: every complete entry in it, in one transaction, as one import that one tap undoes. A
    /// swim as GeoJSON adds entries to the session, which one tap of UNDO removes together.
    pub fn take_in(
        &mut self,
        file: &Path,
        source: &str,
        at: &Moment,
        progress: &mut OnProgress<'_>,
    ) -> Result<IncomingView, AppError> {
        if let Some(text) = geojson_in(file)? {
            let tally = self.import_geojson(&text, at)?;
            return Ok(incoming_map(self.words, &tally, Stage::After));
        }
        let source = source.trim();
        let name: String = source.chars().take(SOURCE_CHARS).collect();
        if let Some(view) = self.take_club(file, &name, at)? {
            return Ok(view);
        }
        let source = if source.is_empty() { self.words.say("files-unnamed") } else { source.to_owned() };
        let incoming = Incoming {
            id: self.journal.new_id(at),
            source: source.chars().take(SOURCE_CHARS).collect(),
            at: self.journal.here(at),
        };
        let tally: Tally = if looks_like_a_store(file)? {
            self.journal.exchange(at, |store, _, new_id| restore(store, file, &incoming, new_id, progress))?
        } else {
            let from = open(file)?;
            self.journal.exchange(at, |store, _, new_id| import(store, from, &incoming, new_id, progress))?
        };
        self.reload();
        Ok(incoming_view(self.words, &tally, Stage::After))
    }

    /// Undoes a whole import.
    pub(super) fn undo_import(&mut self, id: Uuid, at: &Moment) -> Result<String, AppError> {
        self.journal.exchange(at, |store, at, new_id| undo_import(store, id, at, new_id))?;
        self.reload();
        Ok(self.words.say("files-import-undone"))
    }

    /// Redoes an import that was undone.
    pub(super) fn redo_import(&mut self, id: Uuid, at: &Moment) -> Result<String, AppError> {
        self.journal.exchange(at, |store, at, new_id| redo_import(store, id, at, new_id))?;
        self.reload();
        Ok(self.words.say("files-import-redone"))
    }

    /// Copies the log into the folder of backups, verifies the copy and thins older ones; returns `None` if
    /// it was cancelled.
    pub fn back_up(
        &mut self,
        now: &Moment,
        progress: &mut OnProgress<'_>,
    ) -> Result<Option<BackupMade>, AppError> {
        let dir = self.backup_dir();
        let mut pages = |left: u64, all: u64| {
            let done = all.saturating_sub(left);
            progress(restwater_exchange::Progress { ops: done, bytes: done * 4_096 })
        };
        let Some(made) = self.journal.store().backup(&dir, now.wall_ms, &mut pages)? else { return Ok(None) };
        // The backup is made and verified; if that can't be noted, the next one is due early.
        let store = self.journal.store();
        self.journal.beside(Beside::Backup, store.set_setting(BACKED_UP, &backed_up(&self.journal)));
        let name = made.path.file_name().unwrap_or_default().to_string_lossy();
        self.journal.beside(Beside::Backup, store.set_setting(LATEST_BACKUP, &name));
        self.note_backup(&made, now);
        let says = restwater_screen::backup_words(self.words, &made, now.offset_min);
        Ok(Some(BackupMade { path: made.path.to_string_lossy().into_owned(), says }))
    }

    /// The same, but only if the log has grown and the latest backup is an hour old.
    pub fn back_up_if_due(&mut self, now: &Moment) -> Result<Option<BackupMade>, AppError> {
        let grown = self.journal.store().setting(BACKED_UP)?.as_deref() != Some(&backed_up(&self.journal));
        // A backup made while the phone's clock was ahead says nothing about now.
        let recent = |backup: &BackupFile| now.wall_ms.abs_diff(backup.wall_ms) < BACKUP_EVERY_MS;
        let old = !self.backups()?.iter().any(recent);
        let empty = self.journal.version() == 0;
        if empty || !grown || !old {
            return Ok(None);
        }
        self.back_up(now, &mut |_| ControlFlow::Continue(()))
    }

    /// Where the backup is that was made last, for the shell to copy if it hasn't yet: a copy can fail, and the folder for copies
    /// can be picked later. `None` if there is none.
    pub fn latest_backup(&self) -> Result<Option<String>, AppError> {
        let all = self.backups()?;
        let name = self.journal.store().setting(LATEST_BACKUP)?;
        // A clock that was reset doesn't make the one made last the latest by its name.
        let made_last =
            all.iter().find(|backup| backup.path.file_name().and_then(|n| n.to_str()) == name.as_deref());
        Ok(made_last.or(all.first()).map(|backup| backup.path.to_string_lossy().into_owned()))
    }

    pub(super) fn backups(&self) -> Result<Vec<BackupFile>, AppError> {
        Ok(backups(&self.backup_dir())?)
    }

    fn backup_dir(&self) -> PathBuf {
        self.journal.store().dir().join(BACKUPS)
    }

    /// Checks the whole log: the file, every entry against its hash, every projection against the log.
    /// Projections that don't agree with the log are rebuilt.
    pub fn look_over(&mut self) -> Result<String, AppError> {
        let mut found = self.journal.store().check(&mut super::summaries::snapshot_body)?;
        if !found.file.is_empty() && self.journal.reindex().is_ok() {
            found = self.journal.store().check(&mut super::summaries::snapshot_body)?;
        }
        let repaired = !found.is_clean() && found.is_repairable();
        if repaired {
            self.journal.rebuild()?;
            self.reload();
        }
        let says = restwater_screen::check_words(self.words, &found, repaired);
        let Some(why) = self.journal.done_without() else { return Ok(says) };
        let without = self.words.say_with("check-without", &[("why", Arg::Text(&why))]);
        Ok(self.words.sentences(&[&says, &without]))
    }

    /// Sets a damaged log aside and begins a new one with every entry that could be saved. What was saved and
    /// lost, in `words`.
    pub fn salvage(
        dir: &Path,
        mut entropy: Box<dyn super::Entropy>,
        now: &Moment,
        words: &Wording,
    ) -> Result<String, AppError> {
        let device = entropy::new_id(entropy.as_mut(), now.wall_ms);
        // The new file renumbers its entries, so the number noted for the old file doesn't apply to it.
        let saved = Store::salvage(dir, device, now.wall_ms, &[BACKED_UP])?;
        Ok(restwater_screen::salvage_words(words, &saved))
    }

    /// Recognises that the log in `dir` was copied here from another phone by the system; the other phone may go on with its own
    /// copy. From then on this phone writes as a device of its own, and the other one counts as the angler's too. Otherwise an
    /// import between the two would show the days and the last taps of one on the other as its own. `mark` is a file in a place
    /// that no transfer and no backup of the phone includes. Called before the log is opened.
    pub fn after_transfer(
        dir: &Path,
        mark: &Path,
        mut entropy: Box<dyn super::Entropy>,
        now: &Moment,
    ) -> Result<(), AppError> {
        if mark.exists() {
            return Ok(());
        }
        if dir.join(FILE_NAME).exists() {
            let device = entropy::new_id(entropy.as_mut(), now.wall_ms);
            let mut store = Store::open(dir, device)?;
            let before = store.device();
            // This comes first, so that the earlier days are the angler's even if the process ends here.
            super::settings::add_mine(&store, before)?;
            super::kit::stay_with(&store, before)?;
            store.change_device(device)?;
        }
        write_atomically(mark, |out| Ok(out.write_all(b"This phone's log is its own.\n")?))?;
        Ok(())
    }

    /// The Files screen.
    pub(super) fn files_screen(&self, now: &Moment) -> Result<FilesView, AppError> {
        Ok(files_view(&FilesInput {
            words: self.words,
            session: self.session(),
            span: self.files.span,
            form: self.files.form,
            place: self.files.place,
            formulas_as_typed: self.files.formulas_as_typed,
            imports: &self.journal.store().imports()?,
            backups: &self.dated_backups(now)?,
            club: self.advisor.club().start().map(|start| (start, self.advisor.club().is_usable())),
        }))
    }

    /// One of the choices of the Files screen.
    pub(super) fn files_tap(&mut self, tap: FilesTap, at: &Moment) -> Result<String, AppError> {
        match tap {
            FilesTap::LeaveClub => return self.leave_club(at),
            FilesTap::Span { span } => self.files.span = span,
            FilesTap::Form { form } => self.files.form = form,
            FilesTap::Position { included } => {
                self.files.place = if included { Place::Included } else { Place::LeftOut };
            }
            FilesTap::Formulas { as_typed } => self.files.formulas_as_typed = as_typed,
        }
        Ok(String::new())
    }

    /// Reads the log again after entries were added other than by a tap.
    fn reload(&mut self) {
        // Projections may have been rebuilt, which doesn't change the version of the log.
        self.sessions = super::Sessions::default();
        self.questions = super::Questions::default();
        self.load_advisor();
        self.learning = super::Learning::default();
        self.book.forget();
        let opened = self.read_opened_again();
        if self.journal.beside(Beside::AfterTheTap, opened).is_none() {
            self.book.opened = None;
        }
        let (store, kits) = (self.journal.store(), self.journal.recent().kits());
        let kit = self.journal.beside(Beside::AfterTheTap, super::kit::kit_in_use(store, kits));
        self.kit_id = kit.unwrap_or(self.kit_id);
        // The session shown may be another one; the choice of its rod is stored.
        self.follow_session(None);
        self.follow_place_of_its_session();
        self.mending = None;
        self.last_tap = None;
    }
}

/// How far a backup goes, in the form that the setting stores.
fn backed_up(journal: &Journal) -> String {
    format!("entry {}", journal.version())
}

fn open(file: &Path) -> Result<BufReader<File>, AppError> {
    Ok(BufReader::with_capacity(1 << 16, File::open(file).map_err(ExchangeError::from)?))
}
