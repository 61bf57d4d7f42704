//! Long work off the main thread (backup, import, check), with progress and cancelling.

use crate::entropy::SystemEntropy;
use crate::error::RestwaterError;
use crate::object::Restwater;
use restwater_app::{App, AppError, BackupMade, Outgoing};
use restwater_exchange::OnProgress;
use restwater_log::Moment;
use restwater_screen::{IncomingView, Wording};
use std::io;
use std::ops::ControlFlow;
use std::path::Path;
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::{Arc, OnceLock};
use tokio::runtime::{Builder, Runtime};

/// A long piece of work: how far it has come, and how to cancel it. It is also cancelled when its task is dropped.
#[derive(Default, uniffi::Object)]
pub struct Work {
    done: AtomicU64,
    cancelled: AtomicBool,
}

#[uniffi::export]
impl Work {
    /// Work that has not begun.
    #[uniffi::constructor]
    #[must_use]
    pub fn new() -> Arc<Self> {
        Arc::default()
    }

    /// Cancels it; what it was about to change stays as it was.
    pub fn cancel(&self) {
        self.cancelled.store(true, Ordering::Relaxed);
    }

    /// Entries dealt with so far (pages of a backup).
    pub fn done(&self) -> u64 {
        self.done.load(Ordering::Relaxed)
    }
}

/// Cancels the work when the task that waits for it is dropped.
struct CancelWithTask(Arc<Work>);

impl Drop for CancelWithTask {
    fn drop(&mut self) {
        self.0.cancel();
    }
}

/// Where long work runs: one thread of tokio's for blocking calls, made when first needed.
fn runtime() -> io::Result<&'static Runtime> {
    static RUNTIME: OnceLock<Runtime> = OnceLock::new();
    if let Some(runtime) = RUNTIME.get() {
        return Ok(runtime);
    }
    let made = Builder::new_multi_thread().worker_threads(1).max_blocking_threads(1).build()?;
    Ok(RUNTIME.get_or_init(|| made))
}

impl Restwater {
    /// Runs a call on the app off the caller's thread. Taps wait meanwhile; a question for the progress doesn't.
    async fn long<T: Send + 'static>(
        self: Arc<Self>,
        work: Arc<Work>,
        call: impl FnOnce(&mut App, &mut OnProgress<'_>) -> Result<T, AppError> + Send + 'static,
    ) -> Result<T, RestwaterError> {
        let guard = CancelWithTask(Arc::clone(&work));
        let this = Arc::clone(&self);
        let runtime = match runtime() {
            Ok(runtime) => runtime,
            Err(error) => return Err(RestwaterError::internal(&*this.app()?, &error)),
        };
        let task = runtime.spawn_blocking(move || {
            let mut progress = |at: restwater_exchange::Progress| {
                work.done.store(at.ops, Ordering::Relaxed);
                if work.cancelled.load(Ordering::Relaxed) {
                    ControlFlow::Break(())
                } else {
                    ControlFlow::Continue(())
                }
            };
            self.with(|app| call(app, &mut progress))
        });
        let answer = task.await;
        drop(guard);
        match answer {
            Ok(answer) => answer,
            Err(_) => Err(RestwaterError::broken(&*this.app()?)),
        }
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

    /// Makes a backup now, and reads it again. `None` if it was cancelled.
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

    /// Where the backup is that was made last, for the shell to copy if it hasn't yet.
    pub fn latest_backup(&self) -> Result<Option<String>, RestwaterError> {
        self.with(|app| app.latest_backup())
    }

    /// Checks the whole log and rebuilds what doesn't agree with it. Returns what was found, in words.
    pub async fn look_over(self: Arc<Self>) -> Result<String, RestwaterError> {
        self.long(Work::new(), |app, _| app.look_over()).await
    }
}

/// Which of the copies that this phone made in the angler's folder are superfluous once another was made there, by their names.
/// Only exact names of backups are ever among them.
#[uniffi::export]
#[must_use]
pub fn superfluous_copies(names: &[String], made: &str) -> Vec<String> {
    restwater_app::superfluous_copies(names, made)
}

/// Called before the log is opened: notices that the system of another phone copied it here. From then on this phone writes as
/// a device of its own, and the other one stays the angler's. `mark` is a file in a place that no transfer and no backup of
/// the phone includes.
#[uniffi::export]
pub fn after_transfer(dir: &str, mark: &str, now: &Moment, language: &str) -> Result<(), RestwaterError> {
    App::after_transfer(Path::new(dir), Path::new(mark), Box::new(SystemEntropy::default()), now)
        .map_err(|error| RestwaterError::at_opening(&error, language))
}

/// Sets a damaged log aside and begins a new one with every entry that could be saved; the log is opened after
/// it. What was saved and lost, in the language that tags of BCP 47 ask for.
#[uniffi::export]
pub fn salvage(dir: &str, now: &Moment, language: &str) -> Result<String, RestwaterError> {
    App::salvage(Path::new(dir), Box::new(SystemEntropy::default()), now, Wording::shared(language))
        .map_err(|error| RestwaterError::at_opening(&error, language))
}
