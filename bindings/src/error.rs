//! One flat error: what kind, what to show, and the detail for a report.

use restwater_app::{App, AppError, ErrorKind};
use restwater_screen::Wording;

/// Why a call did nothing.
#[derive(Debug, thiserror::Error, uniffi::Error)]
pub enum RestwaterError {
    /// The only case: the kind tells errors apart.
    #[error("{text}")]
    Failed {
        /// What a shell can tell apart.
        kind: ErrorKind,
        /// What to show, in the user's language.
        text: String,
        /// For a report.
        detail: String,
    },
}

impl RestwaterError {
    /// An error of the running app.
    pub(crate) fn of(app: &App, error: &AppError) -> Self {
        Self::Failed { kind: error.kind(), text: app.message(error), detail: format!("{error:?}") }
    }

    /// An error before there is an app, in the words of a language.
    pub(crate) fn at_opening(error: &AppError, language: &str) -> Self {
        let text = error.message(Wording::shared(language));
        Self::Failed { kind: error.kind(), text, detail: format!("{error:?}") }
    }

    /// An error whose own words are what to show.
    pub(crate) fn plain(kind: ErrorKind, error: &impl std::error::Error) -> Self {
        Self::Failed { kind, text: error.to_string(), detail: format!("{error:?}") }
    }

    /// A call before this one panicked.
    pub(crate) fn broken() -> Self {
        Self::Failed {
            kind: ErrorKind::Internal,
            text: "A fault of ours. Nothing was lost: close the app and open it again.".into(),
            detail: "a call before this one panicked".into(),
        }
    }
}
