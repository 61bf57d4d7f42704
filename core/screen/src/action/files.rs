//! Choices for a file to export.

use crate::{Arg, Wording};
use serde::{Deserialize, Serialize};

/// Which sessions go out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum Span {
    /// The session shown.
    #[default]
    This,
    /// Those that began within a number of days, today included.
    Days(u16),
    /// All.
    Everything,
}

impl Span {
    pub(crate) const ALL: [Self; 6] =
        [Self::This, Self::Days(1), Self::Days(7), Self::Days(31), Self::Days(366), Self::Everything];

    pub(crate) fn tag(self) -> String {
        match self {
            Self::This => "this".into(),
            Self::Days(days) => days.to_string(),
            Self::Everything => "all".into(),
        }
    }

    pub(crate) fn says(self, words: &Wording) -> String {
        match self {
            Self::This => words.say("files-span-this"),
            Self::Days(days) => words.say_with("files-span-days", &[("days", Arg::Count(usize::from(days)))]),
            Self::Everything => words.say("files-span-all"),
        }
    }
}

/// What kind of file goes out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum FormChoice {
    /// Entries, for another phone.
    #[default]
    Entries,
    /// A report of the session, to read or print.
    Report,
    /// A table of casts.
    Casts,
    /// A table of fish.
    Fish,
    /// A table of sessions.
    Sessions,
    /// The swim of the session: marks, features, hazards, outlines, as GeoJSON.
    Map,
    /// A table of days, from which a club makes its start for advice.
    Club,
}

impl FormChoice {
    pub(crate) const ALL: [(Self, &'static str); 7] = [
        (Self::Entries, "entries"),
        (Self::Report, "report"),
        (Self::Casts, "casts"),
        (Self::Fish, "fish"),
        (Self::Sessions, "sessions"),
        (Self::Map, "map"),
        (Self::Club, "club"),
    ];

    pub(crate) fn name(self) -> &'static str {
        Self::ALL.into_iter().find(|(form, _)| *form == self).map_or("entries", |(_, name)| name)
    }
}
