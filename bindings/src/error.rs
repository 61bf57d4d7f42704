//! One flat error: what kind, what to show, and the detail for a report.

use restwater_app::{App, AppError, ErrorKind};
use restwater_screen::Wording;

/// What a shell can tell apart; each says what the user can do next.
#[derive(Debug, Clone, Copy, PartialEq, Eq, uniffi::Enum)]
pub enum Kind {
    /// Not possible now: the text says what to do first.
    NotNow,
    /// A value that can't be used: pick or type another.
    BadInput,
    /// The log is damaged: restore or salvage.
    Damaged,
    /// Written by a newer version: update.
    Newer,
    /// Not a log of ours: choose another folder.
    Foreign,
    /// Can't be written here: free the folder.
    ReadOnly,
    /// Another program has it: close that.
    Busy,
    /// Not saved: free some space and tap again.
    NotSaved,
    /// A file from elsewhere can't be read: the text names the place.
    BadFile,
    /// A fault of ours: nothing was lost.
    Internal,
}

/// Why a call did nothing.
#[derive(Debug, thiserror::Error, uniffi::Error)]
pub enum RestwaterError {
    /// The only case: the kind tells errors apart.
    #[error("{text}")]
    Failed {
        /// What a shell can tell apart.
        kind: Kind,
        /// What to show, in the user's language.
        text: String,
        /// For a report.
        detail: String,
    },
}

impl RestwaterError {
    /// An error of the running app.
    pub(crate) fn of(app: &App, error: &AppError) -> Self {
        Self::Failed { kind: kind(error.kind()), text: app.message(error), detail: format!("{error:?}") }
    }

    /// An error before there is an app.
    pub(crate) fn at_opening(error: &AppError) -> Self {
        let text = error.message(&Wording::new());
        Self::Failed { kind: kind(error.kind()), text, detail: format!("{error:?}") }
    }

    /// An error whose own words are what to show.
    pub(crate) fn plain(kind: Kind, error: &impl std::error::Error) -> Self {
        Self::Failed { kind, text: error.to_string(), detail: format!("{error:?}") }
    }

    /// A call before this one panicked.
    pub(crate) fn broken() -> Self {
        Self::Failed {
            kind: Kind::Internal,
            text: "A fault of ours. Nothing was lost: close the app and open it again.".into(),
            detail: "a call before this one panicked".into(),
        }
    }
}

fn kind(kind: ErrorKind) -> Kind {
    match kind {
        ErrorKind::NotNow => Kind::NotNow,
        ErrorKind::BadInput => Kind::BadInput,
        ErrorKind::Damaged => Kind::Damaged,
        ErrorKind::Newer => Kind::Newer,
        ErrorKind::Foreign => Kind::Foreign,
        ErrorKind::ReadOnly => Kind::ReadOnly,
        ErrorKind::Busy => Kind::Busy,
        ErrorKind::NotSaved => Kind::NotSaved,
        ErrorKind::BadFile => Kind::BadFile,
        ErrorKind::Internal => Kind::Internal,
    }
}
