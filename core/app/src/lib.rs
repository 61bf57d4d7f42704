//! Connects all parts: a tap becomes one op in the log, and the screens are computed from the log.
// The code that uniffi generates is unsafe; builds without that feature forbid it for everything written by
// hand.
#![cfg_attr(not(feature = "uniffi"), forbid(unsafe_code))]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

/// The type that uniffi's derives refer to. It is declared by hand because uniffi's scaffolding would also
/// export a runtime, which only the crate `bindings` needs.
#[cfg(feature = "uniffi")]
#[doc(hidden)]
pub struct UniFfiTag;
#[cfg(feature = "uniffi")]
uniffi::use_remote_type!(restwater_log::Uuid);

mod action;
mod advisor;
mod backup_clock;
mod bankside;
mod begin;
mod bench;
mod book;
mod chosen_rod;
mod club;
mod day;
mod day_card;
mod day_on_map;
mod earlier;
mod entropy;
mod error;
mod feed;
mod files;
mod fish;
mod folded;
mod geojson;
mod journal;
mod kit;
mod late;
mod learning;
mod match_day;
mod mend;
mod outside;
mod plan;
mod questions;
mod recent;
mod repeat;
mod ring;
mod seen;
mod sessions;
mod settings;
mod setup;
mod spelling;
mod spots;
mod subject;
mod summaries;
mod swim;
mod swim_typed;
mod tackle;
mod typed;
mod undo;
mod update;
mod watch;
mod whose;
mod writing;

pub use day::{DayError, DayTap, read_day};
pub use entropy::Entropy;
pub use error::{AppError, ErrorKind, WhatTyped};
pub use files::{BackupMade, Outgoing};
pub use repeat::REPEAT_MS;
pub use restwater_screen::Action;
use restwater_screen::PhoneChoices;
pub use restwater_screen::{Alarm, Hand, Scheme, Screen, Settings, Which};
pub use restwater_store::superfluous_copies;
pub use swim::{FanGlass, swim_legend};
pub use update::Update;

use action::LONGEST_TEXT;
use advisor::Advisor;
use bankside::Asking;
use book::BookState;
use feed::FeedState;
use files::FilesState;
use fish::FishState;
use folded::Folded;
use journal::{Beside, Journal};
use learning::Learning;
use match_day::MatchState;
use plan::PlanState;
use questions::Questions;
use repeat::LastTap;
use restwater_log::{Entry, Moment, Op, RodNumber, SessionSetup};
use restwater_screen as screen;
use restwater_screen::{Arg, BankInput, BenchChoices, Wording};
use restwater_session::{Session, Stamp, TimeLine};
use sessions::Sessions;
use setup::SetupState;
use std::path::Path;
use swim::{AtAim, SwimState};
use uuid::Uuid;

/// The app: one journal, one phone.
pub struct App {
    journal: Journal,
    words: &'static Wording,
    advisor: Advisor,
    learning: Learning,
    match_day: MatchState,
    fish: FishState,
    feed: FeedState,
    /// Whether fish that show themselves are logged at the aim on the map.
    seen_at_aim: bool,
    settings: Settings,
    chosen: RodNumber,
    draft: SessionSetup,
    last_tap: Option<LastTap>,
    swim: SwimState,
    files: FilesState,
    folded: Folded,
    sessions: Sessions,
    questions: Questions,
    kit_id: Uuid,
    region: kit::WaterRegion,
    bench: BenchChoices,
    asking: Asking,
    book: BookState,
    setup: SetupState,
    plan: PlanState,
    mending: Option<Uuid>,
    phone: PhoneChoices,
    /// The phones whose sessions are the angler's, including this one.
    mine: Vec<Uuid>,
}

impl App {
    /// Opens the log in `dir`, or begins one there.
    pub fn open(dir: &Path, entropy: Box<dyn Entropy>, now: &Moment) -> Result<Self, AppError> {
        let journal = Journal::open(dir, entropy, now)?;
        let store = journal.store();
        let settings = settings::load_settings(store)?;
        let phone = settings::load_phone(store)?;
        let draft = settings::load_draft(store)?;
        let (setup, plan) = (SetupState::load(store)?, PlanState::load(store)?);
        let match_day = MatchState::load(store)?;
        let (kit_id, region) =
            (kit::kit_in_use(store, journal.recent().kits())?, kit::WaterRegion::load(store)?);
        let mine = settings::load_mine(store)?;
        let advisor = Advisor::load(&journal, phone.whose, &mine)?;
        let current = journal.recent().current().map(|loaded| &loaded.session);
        let chosen = journal.beside(Beside::ChosenRod, chosen_rod::load(store, current)).unwrap_or(1);
        Ok(Self {
            journal,
            words: Wording::shared("en-GB"),
            advisor,
            learning: Learning::default(),
            match_day,
            fish: FishState::default(),
            feed: FeedState::default(),
            seen_at_aim: false,
            settings,
            chosen,
            draft,
            last_tap: None,
            swim: SwimState::default(),
            files: FilesState::default(),
            folded: Folded::default(),
            sessions: Sessions::default(),
            questions: Questions::default(),
            kit_id,
            region,
            bench: BenchChoices::default(),
            asking: Asking::default(),
            book: BookState::default(),
            setup,
            plan,
            mending: None,
            phone,
            mine,
        })
    }

    /// Sets the language to the first available one among these BCP 47 tags, separated by commas as in "nl, de-AT"; British
    /// English if none is available. Everything that was already put in words is made again.
    pub fn set_language(&mut self, tags: &str) {
        self.words = Wording::shared(tags);
        self.region.guess_by(tags);
        self.learning.forget_views();
        self.book.forget();
    }

    /// The words in the current language.
    pub fn words(&self) -> &'static Wording {
        self.words
    }

    /// One tap. What it wrote is on stable storage when this returns; on an error nothing was changed.
    pub fn act(&mut self, action: &Action, at: &Moment) -> Result<Update, AppError> {
        let at = &self.journal.here(at);
        if self.is_repeated_by(action, at) {
            let notice = self.words.say("notice-repeat");
            return Ok(self.update(at, false, true, notice));
        }
        for (field, text) in action.texts() {
            let count = text.chars().count();
            if count > LONGEST_TEXT {
                return Err(AppError::TooLong { field, count, most: LONGEST_TEXT });
            }
        }
        let (before, fish_on) = (self.journal.version(), self.fish_on());
        let notice = match self.perform(action, at) {
            Ok(notice) => {
                if self.journal.version() > before {
                    self.journal.beside(Beside::AfterTheTap, Ok::<(), AppError>(()));
                }
                notice
            }
            // The entry is stored, and a later failure can't undo that: the app works without what failed,
            // and the check says so.
            Err(error) if self.journal.version() > before => {
                self.journal.beside::<(), _>(Beside::AfterTheTap, Err(error));
                self.words.say("notice-logged-alone")
            }
            Err(error) => return Err(error),
        };
        if self.journal.version() > before {
            self.follow_fish(&fish_on);
        }
        self.last_tap = Some(LastTap::new(action, at));
        let mut update = self.update(at, self.journal.version() > before, false, notice);
        update.opens = match action {
            Action::EndSession if update.changed => Some(Which::Day),
            Action::StartSession { .. } if update.changed => Some(Which::Bank),
            _ => None,
        };
        Ok(update)
    }

    /// Whether a tap would be an accidental second one.
    fn is_repeated_by(&self, action: &Action, at: &Moment) -> bool {
        self.last_tap.as_ref().is_some_and(|last| last.is_repeated_by(action, at))
    }

    /// Performs the tap and returns the notice. An action writes only once, so an error after that is not
    /// about entries.
    fn perform(&mut self, action: &Action, at: &Moment) -> Result<String, AppError> {
        let notice = match action {
            Action::Undo => self.undo(at)?,
            Action::Redo => self.redo(at)?,
            Action::TimeBack { minutes } => self.time_back(*minutes, at)?,
            Action::Tackle { rod, tap } => self.tackle_tap(*rod, tap, at)?,
            Action::Setup { tap } => self.setup_tap(tap)?,
            Action::ChooseRod { rod } => self.choose_rod(*rod)?,
            Action::Waits { tap } => self.waits_tap(tap)?,
            Action::StartAlternation { a, b } => self.start_alternation(a, b, at)?,
            Action::SetNextStep => self.set_next_step(at)?,
            Action::Set { hand, scheme } => self.set(*hand, *scheme)?,
            Action::StepAim { step } => self.step_aim(*step, at)?,
            Action::Replay { steps_back } => self.replay(*steps_back, at)?,
            Action::CastHere => self.at_aim(&AtAim::Cast, at)?,
            Action::KeepBack => self.at_aim(&AtAim::Keep, at)?,
            Action::Release => self.at_aim(&AtAim::Release, at)?,
            Action::MarkHere { name } => self.at_aim(&AtAim::Mark { name: name.clone() }, at)?,
            Action::PlacePegAsTyped => self.place_peg_as_typed(at)?,
            Action::Swim { tap } => self.swim_choice(tap, at)?,
            Action::Match { tap } => self.match_tap(tap, at)?,
            Action::Fish { cast, tap } => self.fish_tap(*cast, tap, at)?,
            Action::Feed { tap } => self.feed_tap(*tap, at)?,
            Action::Seen { tap } => self.seen_tap(*tap, at)?,
            Action::Book { tap } => self.book_tap(tap, at)?,
            Action::Conditions { tap } => self.conditions_tap(*tap, at)?,
            Action::Cautions { tap } => self.cautions_tap(tap, at)?,
            Action::Bench { tap } => self.bench_tap(tap, at)?,
            Action::Plan { tap } => self.plan_tap(tap, at)?,
            Action::Files { tap } => self.files_tap(*tap, at)?,
            Action::Phone { tap } => self.phone_tap(*tap)?,
            Action::Opened => String::new(),
            Action::Back => self.leave_screen(),
            Action::OpenDoubt { op } => self.open_doubt(*op)?,
            Action::Mend { op, tap } => self.mend(*op, *tap, at)?,
            Action::Typed { into, text } => self.typed(*into, text, at)?,
            Action::UndoImport { id } => self.undo_import(*id, at)?,
            Action::RedoImport { id } => self.redo_import(*id, at)?,
            other => self.log(other, at)?,
        };
        Ok(notice)
    }

    /// BACK to the Bank, which shows the present: what was chosen for viewing on the previous screen no longer applies.
    fn leave_screen(&mut self) -> String {
        self.leave_fish();
        self.leave_feed();
        self.leave_swim();
        self.leave_plan();
        String::new()
    }

    /// What a screen shows now.
    pub fn screen(&mut self, which: Which, now: &Moment) -> Result<Screen, AppError> {
        let now = &self.journal.here(now);
        self.catch_up();
        let made = match which {
            Which::Bank => Screen::Bank(self.bank(now)),
            Which::Setup => Screen::Setup(self.setup(now)?),
            Which::Waits => Screen::Waits(self.waits(now)),
            Which::Changes => Screen::Changes(self.changes()),
            Which::Match => Screen::Match(self.match_view(now)),
            Which::Fish => Screen::Fish(self.fish_screen()),
            Which::Weight => Screen::Weight(self.weight_screen()),
            Which::Feed => Screen::Feed(self.feed_screen(now)),
            Which::FeedWeight => Screen::FeedWeight(self.feed_weight_screen(now)),
            Which::Seen => Screen::Seen(self.seen_screen(now)),
            Which::Tackle => Screen::Tackle(self.tackle()?),
            Which::Swim => Screen::Swim(self.swim_view(now)?),
            Which::Book => Screen::Book(self.book(now)?),
            Which::Conditions => Screen::Conditions(self.conditions()),
            Which::Cautions => Screen::Cautions(self.cautions()),
            Which::Bench => Screen::Bench(self.bench(now)?),
            Which::Phone => Screen::Phone(self.phone_screen()),
            Which::Mend => Screen::Mend(self.mend_screen(now)?),
            Which::Files => Screen::Files(self.files_screen(now)?),
            Which::Day => Screen::Day(self.day_card(now)),
            Which::Welcome => Screen::Welcome(self.welcome()),
            Which::Legend => Screen::Legend(screen::legend(self.words)),
        };
        Ok(made.spoken(self.words))
    }

    /// Hand and scheme as last set, with the night scheme while it is dark at the peg if that was chosen.
    pub fn settings(&self, now: &Moment) -> Settings {
        let dark = self.phone.night_at_dusk && self.is_dark(&self.journal.here(now));
        Settings { scheme: if dark { Scheme::Night } else { self.settings.scheme }, ..self.settings }
    }

    /// The session that the screens show.
    pub fn session(&self) -> Option<&Session> {
        self.journal.recent().current().map(|loaded| &loaded.session)
    }

    /// A moment of this phone on the time line of that session.
    fn on_line(&self, moment: &Moment) -> Stamp {
        let device = self.journal.store().device();
        match self.session() {
            Some(session) => session.time_line.place(device, moment),
            None => TimeLine::default().place(device, moment),
        }
    }

    /// The ops of that session as they were written.
    pub fn ops(&self) -> &[Op] {
        self.journal.recent().current().map_or(&[], |loaded| &loaded.ops)
    }

    /// The message of an error.
    pub fn message(&self, error: &AppError) -> String {
        error.message(self.words)
    }

    /// Closes the log while the app is in the background.
    pub fn pause(&mut self) -> Result<(), AppError> {
        Ok(self.journal.pause()?)
    }

    /// Opens the log again.
    pub fn resume(&mut self) -> Result<(), AppError> {
        Ok(self.journal.resume()?)
    }

    /// The screens that can be opened now.
    pub fn screen_list(&self) -> screen::ScreenListView {
        let session = self.session();
        screen::screen_list(self.words, session.is_some(), session.is_some_and(Session::is_open))
    }

    fn bank(&mut self, now: &Moment) -> screen::BankView {
        self.bank_of(self.chosen, now)
    }

    /// The Bank as if this rod were chosen.
    fn bank_of(&mut self, rod: RodNumber, now: &Moment) -> screen::BankView {
        let landed = self.landed_fish(rod);
        let session = self.journal.recent().current().map(|loaded| &loaded.session);
        let now = self.on_line(now);
        let reading =
            session.and_then(|session| self.advisor.read(session, self.journal.in_memory(), rod, &now));
        let leaves = session
            .map_or_else(Vec::new, |session| self.advisor.leaves(session, self.journal.in_memory(), &now));
        let club = session.and_then(|session| self.advisor.club().fitted_to(session));
        screen::bank(&BankInput {
            session,
            chosen: rod,
            now: &now,
            reading: reading.as_ref(),
            leaves: &leaves,
            club,
            landed: landed.as_ref(),
            undo: self.journal.recent().undo(),
            redo: self.journal.recent().redo().map(|(entry, _)| entry),
            latest: self.journal.recent().latest(3),
            weights: self.weights(),
            words: self.words,
        })
    }

    fn update(&mut self, at: &Moment, changed: bool, repeated: bool, notice: String) -> Update {
        let screen = Screen::Bank(self.bank(at)).spoken(self.words);
        Update { screen, changed, repeated, notice, opens: None }
    }

    fn say_what(&self, id: &str, kind: &str) -> String {
        let what = screen::kind_words(self.words, kind);
        self.words.say_with(id, &[("what", Arg::Text(&what))])
    }

    fn say_entry(&self, id: &str, entry: &Entry) -> String {
        self.words.say_with(id, &[("what", Arg::Text(&screen::entry_words(self.words, entry)))])
    }
}

#[cfg(test)]
mod tests;
