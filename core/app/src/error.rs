//! Errors as a shell shows them: what went wrong and what to do next.

use super::journal::JournalError;
use restwater_bench::BenchError;
use restwater_exchange::{ClubFault, ExchangeError};
use restwater_log::{CanonicalError, RodNumber};
use restwater_screen::{Arg, Refused, Wording};
use restwater_session::NotNow;
use restwater_session::match_setup::MatchError;
use restwater_sky::conditions::ConditionsError;
use restwater_sky::daylight::SkyError;
use restwater_store::StoreError;
use restwater_swim::{EarthError, GeoJsonError, SwimError};
use restwater_waits::BiteError;

/// What a shell can tell apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum ErrorKind {
    /// Not possible now; the message says what to do first.
    NotNow,
    /// A value that can't be used; pick or type another.
    BadInput,
    /// The log is damaged; restore or salvage.
    Damaged,
    /// Written by a newer version; update.
    Newer,
    /// Not a log of ours; choose another folder.
    Foreign,
    /// Can't be written here; free the folder.
    ReadOnly,
    /// Another program has it; close that.
    Busy,
    /// No space, or the phone can't write; free some and tap again.
    NotSaved,
    /// A file from elsewhere can't be read; the message names the place.
    BadFile,
    /// A fault of ours; nothing was lost.
    Internal,
}

/// What something was typed for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WhatTyped {
    /// Degrees north.
    Latitude,
    /// Degrees east.
    Longitude,
    /// Degrees clockwise from north.
    Bearing,
    /// A length with its unit.
    Length,
    /// A weight with its unit.
    Weight,
    /// A peg and what to do there.
    PegNote,
    /// A time of day, or minutes after all-in.
    Time,
}

impl std::fmt::Display for WhatTyped {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::Latitude => "latitude",
            Self::Longitude => "longitude",
            Self::Bearing => "bearing",
            Self::Length => "length",
            Self::Weight => "weight",
            Self::PegNote => "peg-note",
            Self::Time => "time",
        })
    }
}

/// Why a call did nothing.
#[derive(Debug, thiserror::Error)]
pub enum AppError {
    /// Not possible in this state of the session.
    #[error(transparent)]
    NotNow(#[from] NotNow),
    /// Nothing to undo.
    #[error("there is nothing to undo")]
    NothingToUndo,
    /// Nothing to redo.
    #[error("there is nothing to bring back")]
    NothingToRedo,
    /// No time to set back.
    #[error("there is no time to set back yet")]
    NothingToSetBack,
    /// Setting back would put an entry before an earlier one.
    #[error("before the entry at {0}")]
    BeforeEarlier(String),
    /// Setting START back would put it into the session before.
    #[error("the session before ended at {0}")]
    BeforeSession(String),
    /// A text too long to keep.
    #[error("{field} is too long: {count} characters, at most {most}")]
    TooLong {
        /// Which field.
        field: &'static str,
        /// How long it is.
        count: usize,
        /// How long it may be.
        most: usize,
    },
    /// A choice that isn't one.
    #[error("\"{value}\" is no value for {field}")]
    UnknownChoice {
        /// Of what.
        field: &'static str,
        /// What was given.
        value: String,
    },
    /// No cell of the swim is aimed at, or none of that kind.
    #[error("no such cell of the swim is chosen")]
    NoCell,
    /// The Swim shows an earlier moment, for which nothing can be logged any more.
    #[error("the Swim shows an earlier moment")]
    EarlierShown,
    /// Something typed in a form that can't be read.
    #[error("\"{text}\" is no {what}")]
    NotRead {
        /// What it was typed for.
        what: WhatTyped,
        /// What was typed.
        text: String,
    },
    /// A new name was asked for and none typed.
    #[error("no name is typed")]
    NothingTyped,
    /// A note or a plan without a word.
    #[error("nothing is written")]
    EmptyText,
    /// A place on the earth that can't be used.
    #[error(transparent)]
    Earth(#[from] EarthError),
    /// A GeoJSON file that can't be read or written.
    #[error(transparent)]
    GeoJson(#[from] GeoJsonError),
    /// There is no such entry to correct in the session shown.
    #[error("there is no such entry in this session")]
    NoSuchEntry,
    /// The entry has nothing of the kind that was to be corrected.
    #[error("there is nothing of that kind to mend in this entry")]
    NotOfThatEntry,
    /// An impossible spot, mark or outline.
    #[error(transparent)]
    Swim(#[from] SwimError),
    /// An impossible rule, weight or net of a match.
    #[error(transparent)]
    Match(#[from] MatchError),
    /// Not possible on the bench.
    #[error(transparent)]
    Bench(#[from] BenchError),
    /// Impossible conditions.
    #[error(transparent)]
    Conditions(#[from] ConditionsError),
    /// A place or a date for which the light isn't known.
    #[error(transparent)]
    Sky(#[from] SkyError),
    /// No such caution to mark as read.
    #[error("that caution was already marked as read")]
    NoSuchCaution,
    /// The Book shows another day than the one that the entry is for.
    #[error("the book shows another day")]
    AnotherDay,
    /// No such session in the Book.
    #[error("that session is not in the book any more")]
    NoSuchSession,
    /// No club's start is in use.
    #[error("no club's start is in use")]
    NoClub,
    /// The store failed.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// A file can't be exchanged.
    #[error(transparent)]
    Exchange(ExchangeError),
    /// An op could not be written, which is a fault in this program.
    #[error(transparent)]
    Canonical(#[from] CanonicalError),
    /// The record could not be computed, which is a fault in this program.
    #[error(transparent)]
    Bite(#[from] BiteError),
}

/// A figure if it is within its range, otherwise the error that names the range.
pub(super) fn within<N: Copy + PartialOrd + std::fmt::Display>(
    field: &'static str,
    value: N,
    least: N,
    most: N,
) -> Result<N, AppError> {
    if least <= value && value <= most { Ok(value) } else { Err(AppError::unknown(field, value)) }
}

impl From<JournalError> for AppError {
    fn from(error: JournalError) -> Self {
        Self::Store(error.0)
    }
}

impl From<ExchangeError> for AppError {
    fn from(error: ExchangeError) -> Self {
        match error {
            ExchangeError::Store(error) => Self::Store(error),
            other => Self::Exchange(other),
        }
    }
}

impl AppError {
    /// The error for a value that is not among a field's choices. It shows as much of the value as fits a
    /// sentence.
    pub(super) fn unknown(field: &'static str, value: impl std::fmt::Display) -> Self {
        Self::UnknownChoice { field, value: value.to_string().chars().take(60).collect() }
    }

    /// What a shell can tell apart.
    pub fn kind(&self) -> ErrorKind {
        match self {
            Self::NotNow(_)
            | Self::NothingToUndo
            | Self::NothingToRedo
            | Self::NothingToSetBack
            | Self::NoCell
            | Self::EarlierShown
            | Self::NothingTyped
            | Self::EmptyText
            | Self::GeoJson(GeoJsonError::PegNeeded)
            | Self::AnotherDay
            | Self::NoSuchSession
            | Self::NoSuchCaution
            | Self::NoClub
            | Self::NoSuchEntry
            | Self::NotOfThatEntry
            | Self::BeforeEarlier(_)
            | Self::BeforeSession(_)
            | Self::Match(MatchError::WeighInBeforeAllIn) => ErrorKind::NotNow,
            Self::TooLong { .. }
            | Self::UnknownChoice { .. }
            | Self::NotRead { .. }
            | Self::Earth(_)
            | Self::Swim(_)
            | Self::Match(_)
            | Self::Bench(_)
            | Self::Conditions(_)
            | Self::Sky(_) => ErrorKind::BadInput,
            Self::GeoJson(_) => ErrorKind::BadFile,
            Self::Store(error) => store_kind(error),
            Self::Exchange(error) => exchange_kind(error),
            Self::Canonical(_) | Self::Bite(_) => ErrorKind::Internal,
        }
    }

    /// The message to show: what went wrong and what to do next, in the user's language.
    pub fn message(&self, words: &Wording) -> String {
        match self {
            Self::NotNow(error) => not_now(words, *error),
            Self::NothingToUndo => words.say("error-nothing-to-undo"),
            Self::NothingToRedo => words.say("error-nothing-to-redo"),
            Self::NothingToSetBack => words.say("error-nothing-to-set-back"),
            Self::BeforeEarlier(time) => words.say_with("error-before-earlier", &[("time", Arg::Text(time))]),
            Self::BeforeSession(time) => words.say_with("error-before-session", &[("time", Arg::Text(time))]),
            Self::TooLong { count, most, .. } => {
                let args = [("count", Arg::Count(*count)), ("most", Arg::Count(*most))];
                words.say_with("error-too-long", &args)
            }
            // The name of the field is the program's own.
            Self::UnknownChoice { value, .. } => {
                words.say_with("error-unknown-choice", &[("value", Arg::Text(value))])
            }
            Self::NoSuchEntry => words.say("error-no-such-entry"),
            Self::NotOfThatEntry => words.say("error-not-of-that-entry"),
            Self::NoCell => words.say("error-no-cell"),
            Self::EarlierShown => words.say("error-earlier-shown"),
            Self::NothingTyped => words.say("error-nothing-typed"),
            Self::EmptyText => words.say("error-empty-text"),
            Self::NotRead { what, text } => {
                let args = [("value", Arg::Text(text)), ("typed", Arg::Count(text.len()))];
                words.say_with(&format!("error-no-{what}"), &args)
            }
            Self::AnotherDay => words.say("error-another-day"),
            Self::NoSuchSession => words.say("error-no-such-session"),
            Self::NoSuchCaution => words.say("error-no-such-caution"),
            Self::NoClub => words.say("error-no-club"),
            Self::Swim(error) => error.said(words),
            Self::Earth(error) => error.said(words),
            Self::GeoJson(error) => error.said(words),
            Self::Match(error) => error.said(words),
            Self::Bench(error) => error.said(words),
            Self::Conditions(error) => error.said(words),
            Self::Sky(error) => error.said(words),
            Self::Store(error) => store_message(words, error),
            Self::Exchange(error) => exchange_message(words, error),
            Self::Canonical(_) | Self::Bite(_) => detailed(words, "error-internal", &self.to_string()),
        }
    }
}

fn detailed(words: &Wording, id: &str, detail: &str) -> String {
    words.say_with(id, &[("detail", Arg::Text(detail))])
}

fn not_now(words: &Wording, error: NotNow) -> String {
    let with_rod = |id: &str, rod: RodNumber| words.say_with(id, &[("rod", Arg::Text(&rod.to_string()))]);
    match error {
        NotNow::NoSession => words.say("error-no-session"),
        NotNow::SessionOpen => words.say("error-session-open"),
        NotNow::NoSuchRod { rod, rods } => words.say_with(
            "error-no-such-rod",
            &[("rod", Arg::Text(&rod.to_string())), ("rods", Arg::Text(&rods.to_string()))],
        ),
        NotNow::RodCount(rods) => {
            words.say_with("error-rod-count", &[("rods", Arg::Text(&rods.to_string()))])
        }
        NotNow::NoTest => words.say("error-no-test"),
        NotNow::TestIsComplete => words.say("error-test-complete"),
        NotNow::NoMatch => words.say("error-no-match"),
        NotNow::NoLanding => words.say("error-no-landing"),
        NotNow::NothingOut(rod) => with_rod("error-nothing-out", rod),
        NotNow::FishOn(rod) => with_rod("error-fish-on", rod),
        NotNow::NoCastYet(rod) => with_rod("error-no-cast-yet", rod),
        NotNow::LostAlready(rod) => with_rod("error-lost-already", rod),
        NotNow::RodOut(rod) => with_rod("error-rod-out", rod),
        NotNow::RodWasOut(rod) => with_rod("error-rod-was-out", rod),
        NotNow::AwayAlready => words.say("error-away-already"),
        NotNow::NotAway => words.say("error-not-away"),
        NotNow::NoPlan => words.say("error-no-plan"),
        NotNow::NothingFed => words.say("error-nothing-fed"),
        NotNow::NoFishOn(rod) => with_rod("error-no-fish-on", rod),
    }
}

fn store_kind(error: &StoreError) -> ErrorKind {
    match error {
        StoreError::Damaged(_) => ErrorKind::Damaged,
        StoreError::Newer { .. } => ErrorKind::Newer,
        StoreError::Foreign(_) => ErrorKind::Foreign,
        StoreError::ReadOnly(_) => ErrorKind::ReadOnly,
        StoreError::Busy => ErrorKind::Busy,
        StoreError::NoSpace | StoreError::Io(_) | StoreError::Sqlite(_) => ErrorKind::NotSaved,
        StoreError::OutOfRange(_) => ErrorKind::BadInput,
        StoreError::Clash(_) | StoreError::Op(_) => ErrorKind::Internal,
    }
}

fn exchange_kind(error: &ExchangeError) -> ErrorKind {
    match error {
        ExchangeError::NotOpFile(_) | ExchangeError::Header(_) | ExchangeError::TooMany(_) => {
            ErrorKind::BadFile
        }
        ExchangeError::Newer { .. } | ExchangeError::Club(ClubFault::Newer) => ErrorKind::Newer,
        ExchangeError::Club(_) => ErrorKind::BadFile,
        ExchangeError::Cancelled | ExchangeError::NoSuchImport(_) => ErrorKind::NotNow,
        ExchangeError::Io(_) => ErrorKind::NotSaved,
        ExchangeError::Store(error) => store_kind(error),
    }
}

fn exchange_message(words: &Wording, error: &ExchangeError) -> String {
    match error {
        ExchangeError::NotOpFile(looks) => {
            let id = format!("error-file-{}", looks.name());
            detailed(words, "error-not-op-file", &words.say(&id))
        }
        ExchangeError::Newer { .. } => words.say("error-file-newer"),
        ExchangeError::Club(fault) => club_message(words, fault),
        ExchangeError::Header(fault) => detailed(words, "error-file-header", &fault.said(words)),
        ExchangeError::TooMany(most) => detailed(words, "error-file-too-many", &most.to_string()),
        ExchangeError::Cancelled => words.say("error-cancelled"),
        ExchangeError::NoSuchImport(_) => words.say("error-no-such-import"),
        ExchangeError::Io(error) => detailed(words, "error-file-io", &error.to_string()),
        ExchangeError::Store(error) => store_message(words, error),
    }
}

fn club_message(words: &Wording, fault: &ClubFault) -> String {
    match fault {
        ClubFault::Newer => words.say("error-file-newer"),
        ClubFault::Older => words.say("error-club-older"),
        ClubFault::Damaged(_) => words.say("error-club-damaged"),
        ClubFault::Weights(_) => words.say("error-club-weights"),
        ClubFault::FewAnglers(found) => detailed(words, "error-club-few", &found.to_string()),
        ClubFault::TooLarge(_) => words.say("error-club-large"),
    }
}

fn store_message(words: &Wording, error: &StoreError) -> String {
    match error {
        StoreError::Newer { found, known } => words.say_with(
            "error-newer",
            &[("found", Arg::Text(&found.to_string())), ("known", Arg::Text(&known.to_string()))],
        ),
        StoreError::Damaged(_) => words.say("error-damaged"),
        StoreError::Foreign(_) => words.say("error-foreign"),
        StoreError::ReadOnly(_) => words.say("error-read-only"),
        StoreError::Busy => words.say("error-busy"),
        StoreError::NoSpace => words.say("error-no-space"),
        StoreError::OutOfRange(_) => words.say("error-clock-range"),
        StoreError::Io(_) | StoreError::Sqlite(_) => detailed(words, "error-io", &error.to_string()),
        StoreError::Clash(_) | StoreError::Op(_) => detailed(words, "error-internal", &error.to_string()),
    }
}
