//! One flat error: what kind, what to show, and the detail for a report.

use restwater_app::{App, AppError, ErrorKind};
use restwater_screen::{Arg, Wording};

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

    /// A fault of the phone or of the app, in the words of the running app.
    pub(crate) fn internal(app: &App, error: &impl std::error::Error) -> Self {
        let text = app.words().say_with("error-internal", &[("detail", Arg::Text(&error.to_string()))]);
        Self::Failed { kind: ErrorKind::Internal, text, detail: format!("{error:?}") }
    }

    /// An error of the calling code, which no tap can cause: in its own words, which are English.
    pub(crate) fn plain(kind: ErrorKind, error: &impl std::error::Error) -> Self {
        Self::Failed { kind, text: error.to_string(), detail: format!("{error:?}") }
    }

    /// A call before this one panicked: the words of the app are as they were.
    pub(crate) fn broken(app: &App) -> Self {
        Self::Failed {
            kind: ErrorKind::Internal,
            text: app.words().say("error-broken"),
            detail: "a call before this one panicked".into(),
        }
    }
}
