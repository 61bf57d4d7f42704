//! What the screens are about, and what is half typed on them: the part of their state that is stored neither in the log nor beside
//! it. A shell keeps it together with the open screen, so that a new process shows that screen about the same thing again.

use super::book::BookChoices;
use super::feed::FeedState;
use super::files::FilesState;
use super::match_day::scales_of;
use super::plan::DayShown;
use super::swim_typed::Typed;
use super::{App, AppError, Which};
use restwater_log::Moment;
use restwater_match_day::typed::TypedWeight;
use restwater_screen::{BenchChoices, CastFilter, OnScales, SwimPad};
use restwater_session::{Session, fold};
use restwater_swim::Spot;
use serde::{Deserialize, Serialize};
use uuid::Uuid;

#[derive(Serialize, Deserialize)]
struct Subject {
    /// The session that the screens showed. Nothing else is meant in another one.
    session: Option<Uuid>,
    /// The session opened in the Book.
    opened: Option<Uuid>,
    /// The doubtful entry that is open.
    mending: Option<Uuid>,
    /// The fish chosen, and how many were landed then.
    fish: Option<(Uuid, usize)>,
    /// Digits of the weight of a fish.
    weight: Option<(Uuid, String)>,
    feed: FeedState,
    seen_at_aim: bool,
    aimed: Option<Spot>,
    typed: Typed,
    /// Which keys the Swim shows, and how far back its map is.
    #[serde(default)]
    pad: SwimPad,
    #[serde(default)]
    steps_back: i64,
    /// What is on the scales, and the digits typed for it.
    #[serde(default)]
    scales: (Option<OnScales>, Option<String>),
    #[serde(default)]
    bench: BenchChoices,
    #[serde(default)]
    book: BookChoices,
    /// Which casts Waits counts, and the time left that is chosen there.
    #[serde(default)]
    casts: (CastFilter, Option<u32>),
    #[serde(default)]
    files: FilesState,
    /// The day that the page with the plan shows.
    #[serde(default)]
    plans_for: Option<DayShown>,
}

impl App {
    /// What the screens are about, for [`Self::restore_subject`].
    pub fn subject(&self) -> Result<String, AppError> {
        let weight = self.fish.typed.as_ref();
        let subject = Subject {
            session: self.session().map(|session| session.id),
            opened: self.book.opened.as_ref().map(|session| session.id),
            mending: self.mending,
            fish: self.fish.chosen,
            weight: weight.map(|(fish, typed)| (*fish, typed.digits())),
            feed: self.feed.clone(),
            seen_at_aim: self.seen_at_aim,
            aimed: self.swim.aimed,
            typed: self.swim.typed.clone(),
            pad: self.swim.pad,
            steps_back: self.swim.steps_back,
            scales: self.match_day.scales_kept(),
            bench: self.bench.clone(),
            book: self.book.chosen.clone(),
            casts: self.learning.casts_chosen(),
            files: self.files,
            plans_for: self.plan.shown,
        };
        super::settings::text_of(&subject)
    }

    /// What a text typed on a screen would be written about: another string where it would go elsewhere. A shell keeps a text
    /// that was not sent with it, and shows it only where it is the same.
    pub fn about(&self, which: Which, now: &Moment) -> String {
        match which {
            Which::Bench => format!("day {}", self.planned_day(now)),
            Which::Book => about(self.book.opened.as_ref().or_else(|| self.session())),
            // What is typed on that screen is about the rod that is chosen.
            Which::Tackle => format!("{}/rod {}", about(self.session()), self.chosen),
            _ => about(self.session()),
        }
    }

    /// Makes the screens be about this again. Returns false, and changes nothing, if that is no longer possible: then no screen
    /// of that time may be shown, and nothing that was typed on it sent.
    pub fn restore_subject(&mut self, subject: &str) -> Result<bool, AppError> {
        self.catch_up();
        let Ok(subject) = serde_json::from_str::<Subject>(subject) else { return Ok(false) };
        if subject.session != self.session().map(|session| session.id) {
            return Ok(false);
        }
        let opened = subject.opened.map(|id| self.still_there(id)).transpose()?;
        if matches!(opened, Some(None)) {
            return Ok(false);
        }
        let scales = scales_of(self.weights());
        let match_scales = scales_of(self.unit().unwrap_or(self.phone.weights));
        self.book.opened = opened.flatten();
        self.mending = subject.mending;
        self.fish.chosen = subject.fish;
        self.fish.typed = subject.weight.map(|(fish, digits)| (fish, TypedWeight::again(scales, &digits)));
        (self.feed, self.seen_at_aim) = (subject.feed, subject.seen_at_aim);
        (self.swim.aimed, self.swim.typed) = (subject.aimed, subject.typed);
        (self.swim.pad, self.swim.steps_back) = (subject.pad, subject.steps_back);
        let (on_scales, digits) = subject.scales;
        self.match_day.put_back(on_scales, digits.map(|digits| TypedWeight::again(match_scales, &digits)));
        (self.bench, self.files) = (subject.bench, subject.files);
        self.book.chosen = subject.book;
        self.plan.shown = subject.plans_for;
        self.learning.choose_casts(subject.session, subject.casts);
        Ok(true)
    }

    /// That session, if it is still in the log and its START counts.
    fn still_there(&self, id: Uuid) -> Result<Option<Session>, AppError> {
        let session = fold(id, &self.journal.store().ops_of(id)?);
        Ok(Some(session).filter(|session| session.started.is_some()))
    }
}

fn about(session: Option<&Session>) -> String {
    session.map(|session| format!("session {}", session.id)).unwrap_or_default()
}
