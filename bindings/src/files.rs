//! Records of the Files and Mend screens, and long work: made, taken in and looked over off the main thread, with
//! its progress in sight and a way to give it up.

use crate::entropy::SystemEntropy;
use crate::error::{Kind, RestwaterError};
use crate::object::Restwater;
use restwater_app::{App, AppError, BackupMade, Outgoing};
use restwater_exchange::OnProgress;
use restwater_log::Moment;
use restwater_screen::{
    BackupLine, ChoiceRow, FilesView, ImportLine, IncomingView, MendLine, MendOpen, MendView,
};
use std::ops::ControlFlow;
use std::path::Path;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::{Arc, OnceLock};
use tokio::runtime::{Builder, Runtime};
use uuid::Uuid;

/// One import, as the list shows it.
#[uniffi::remote(Record)]
pub struct ImportLine {
    /// Its id.
    pub id: Uuid,
    /// Who, when, how many entries.
    pub says: String,
    /// Whether it is taken back at present.
    pub undone: bool,
    /// What its key does: take it back, or bring it back.
    pub key: String,
}

/// One backup, as the list shows it.
#[uniffi::remote(Record)]
pub struct BackupLine {
    /// Where it is.
    pub path: String,
    /// When it was made.
    pub says: String,
    /// What its key does.
    pub key: String,
}

/// The Files screen.
#[uniffi::remote(Record)]
pub struct FilesView {
    /// What it is about.
    pub title: String,
    /// What the choices come to, in a sentence.
    pub says: String,
    /// Which sessions, which form, position, formulas.
    pub rows: Vec<ChoiceRow>,
    /// The key that makes the file and hands it on.
    pub send: String,
    /// The key that makes the file and saves it in a place of the user's.
    pub save: String,
    /// The key that takes a file in.
    pub take_in: String,
    /// The key that has the user pick a folder for copies of backups.
    pub folder: String,
    /// The key of the list of imports.
    pub imports_key: String,
    /// The key of the list of backups.
    pub backups_key: String,
    /// The key that makes a backup now.
    pub back_up: String,
    /// The key that looks the log over.
    pub look_over: String,
    /// Label of the field for the partner's name.
    pub source_label: String,
    /// Imports, latest first.
    pub imports: Vec<ImportLine>,
    /// Backups, latest first.
    pub backups: Vec<BackupLine>,
    /// What stands in place of an empty list.
    pub none: String,
}

/// What a file would bring, or has brought.
#[uniffi::remote(Record)]
pub struct IncomingView {
    /// What it is about.
    pub title: String,
    /// A sentence each.
    pub lines: Vec<String>,
    /// Whether there is something to take in.
    pub brings: bool,
    /// Whether the file was whole.
    pub whole: bool,
    /// The key that takes it in.
    pub take_in: String,
    /// The key that leaves it.
    pub leave: String,
    /// Entries not in the log before.
    pub new: u64,
    /// Entries known before.
    pub known: u64,
    /// Of the new: mends and undos.
    pub amended: u64,
    /// Of the new: of a newer version, kept unread.
    pub newer: u64,
    /// Records that can't be read.
    pub damaged: u64,
    /// Entries left out since another has their id.
    pub clashes: u64,
    /// Sessions with something new.
    pub sessions: u64,
}

/// One doubtful entry of the list.
#[uniffi::remote(Record)]
pub struct MendLine {
    /// The entry.
    pub op: Uuid,
    /// What it is and when.
    pub what: String,
    /// Why it is doubtful.
    pub why: String,
}

/// The entry that is open.
#[uniffi::remote(Record)]
pub struct MendOpen {
    /// The entry.
    pub op: Uuid,
    /// What it is and when.
    pub what: String,
    /// Why it is doubtful, or that it no longer is.
    pub why: String,
    /// What can be said of it.
    pub rows: Vec<ChoiceRow>,
}

/// The Mend screen.
#[uniffi::remote(Record)]
pub struct MendView {
    /// What it is about.
    pub title: String,
    /// How many there are, or that there is none.
    pub says: String,
    /// The doubtful entries, in the order of the day.
    pub lines: Vec<MendLine>,
    /// The entry that is open, if one is.
    pub open: Option<MendOpen>,
}

/// A backup just made, for the shell to copy where the user wants one.
#[uniffi::remote(Record)]
pub struct BackupMade {
    /// Where it is.
    pub path: String,
    /// That it was made and read again, and when.
    pub says: String,
}

/// A file made to be handed on.
#[uniffi::remote(Record)]
pub struct Outgoing {
    /// Where it is, whole and on stable storage.
    pub path: String,
    /// The name to offer.
    pub name: String,
    /// Its media type.
    pub media_type: String,
    /// What is in it, in words.
    pub says: String,
}

/// A long piece of work: how far it has come, and the way to give it up. A task that is dropped gives up too.
#[derive(Default, uniffi::Object)]
pub struct Work {
    done: AtomicU64,
    given_up: AtomicBool,
}

#[uniffi::export]
impl Work {
    /// Work that has not begun.
    #[uniffi::constructor]
    #[must_use]
    pub fn new() -> Arc<Self> {
        Arc::default()
    }

    /// Gives it up; what it was about to change stays as it was.
    pub fn give_up(&self) {
        self.given_up.store(true, Ordering::Relaxed);
    }

    /// Entries dealt with so far (pages of a backup).
    pub fn done(&self) -> u64 {
        self.done.load(Ordering::Relaxed)
    }
}

/// Gives the work up when the task that waits for it is dropped.
struct GiveUpWithTask(Arc<Work>);

impl Drop for GiveUpWithTask {
    fn drop(&mut self) {
        self.0.give_up();
    }
}

/// Where long work runs: one thread of tokio's for blocking calls, made when first needed.
fn runtime() -> Result<&'static Runtime, RestwaterError> {
    static RUNTIME: OnceLock<Runtime> = OnceLock::new();
    if let Some(runtime) = RUNTIME.get() {
        return Ok(runtime);
    }
    let made = Builder::new_multi_thread().worker_threads(1).max_blocking_threads(1).build();
    let made = made.map_err(|error| RestwaterError::plain(Kind::Internal, &error))?;
    Ok(RUNTIME.get_or_init(|| made))
}

impl Restwater {
    /// Runs a call on the app off the caller's thread. Taps wait meanwhile; a question for the progress doesn't.
    async fn long<T: Send + 'static>(
        self: Arc<Self>,
        work: Arc<Work>,
        call: impl FnOnce(&mut App, &mut OnProgress<'_>) -> Result<T, AppError> + Send + 'static,
    ) -> Result<T, RestwaterError> {
        let guard = GiveUpWithTask(Arc::clone(&work));
        let task = runtime()?.spawn_blocking(move || {
            let mut progress = |at: restwater_exchange::Progress| {
                work.done.store(at.ops, Ordering::Relaxed);
                if work.given_up.load(Ordering::Relaxed) {
                    ControlFlow::Break(())
                } else {
                    ControlFlow::Continue(())
                }
            };
            self.with(|app| call(app, &mut progress))
        });
        let answer = task.await.map_err(|_| RestwaterError::broken());
        drop(guard);
        answer?
    }
}

#[uniffi::export]
impl Restwater {
    /// Makes the file that the Files screen asks for; the shell hands it on.
    pub async fn send(self: Arc<Self>, now: Moment, work: Arc<Work>) -> Result<Outgoing, RestwaterError> {
        self.long(work, move |app, progress| app.send(&now, progress)).await
    }

    /// What taking in the file would bring. Changes nothing.
    pub async fn look_into(
        self: Arc<Self>,
        path: String,
        now: Moment,
        work: Arc<Work>,
    ) -> Result<IncomingView, RestwaterError> {
        self.long(work, move |app, progress| app.look_into(Path::new(&path), &now, progress)).await
    }

    /// Takes a file in, whole or not at all; `source` is what the user calls where it came from.
    pub async fn take_in(
        self: Arc<Self>,
        path: String,
        source: String,
        at: Moment,
        work: Arc<Work>,
    ) -> Result<IncomingView, RestwaterError> {
        self.long(work, move |app, progress| app.take_in(Path::new(&path), &source, &at, progress)).await
    }

    /// Makes a backup now, and reads it again. None where it was given up.
    pub async fn back_up(
        self: Arc<Self>,
        now: Moment,
        work: Arc<Work>,
    ) -> Result<Option<BackupMade>, RestwaterError> {
        self.long(work, move |app, progress| app.back_up(&now, progress)).await
    }

    /// Makes a backup where one is due; the shell asks when it goes to the background and when a session ends.
    pub async fn back_up_if_due(self: Arc<Self>, now: Moment) -> Result<Option<BackupMade>, RestwaterError> {
        self.long(Work::new(), move |app, _| app.back_up_if_due(&now)).await
    }

    /// Looks the whole log over, and makes anew what doesn't follow from it. What was found, in words.
    pub async fn look_over(self: Arc<Self>) -> Result<String, RestwaterError> {
        self.long(Work::new(), |app, _| app.look_over()).await
    }
}

/// Sets a damaged log aside and begins a new one with every entry that could be saved; the log is opened after
/// it. What was saved and lost, in words.
#[uniffi::export]
pub fn salvage(dir: &str, now: &Moment) -> Result<String, RestwaterError> {
    App::salvage(Path::new(dir), Box::new(SystemEntropy::default()), now)
        .map_err(|error| RestwaterError::at_opening(&error))
}
