//! The one long-lived object of a shell.

use crate::days;
use crate::entropy::SystemEntropy;
use crate::error::RestwaterError;
use restwater_app::{Action, App, AppError, DayTap, ErrorKind, FanGlass, Screen, Settings, Update, Which};
use restwater_layout::{
    BankLayout, Glass, GridAsk, GridPage, MatchLayout, PadAsk, PadWords, PagerWords, Rect, RowAsk, RowPlace,
    SwimLayout, SwimPadAsk,
};
use restwater_log::Moment;
use restwater_screen::{Key, ScreenListView, WatchView, Wording};
use restwater_swim::{FaceWidths, SwimScene};
use std::path::Path;
use std::sync::{Arc, Mutex, MutexGuard};

/// The app on this phone. Calls are answered one after another; make them off the main thread.
#[derive(uniffi::Object)]
pub struct Restwater {
    app: Mutex<App>,
}

impl Restwater {
    pub(crate) fn app(&self) -> Result<MutexGuard<'_, App>, RestwaterError> {
        self.app.lock().map_err(|poisoned| RestwaterError::broken(poisoned.get_ref()))
    }

    pub(crate) fn with<T>(
        &self,
        call: impl FnOnce(&mut App) -> Result<T, AppError>,
    ) -> Result<T, RestwaterError> {
        let mut app = self.app()?;
        call(&mut app).map_err(|error| RestwaterError::of(&app, &error))
    }
}

#[uniffi::export]
impl Restwater {
    /// Opens the log in the folder, or begins one there. Everything is said in the first language that is here of those that
    /// tags of BCP 47 ask for, with commas between them as in "nl, de-AT"; in British English where none is.
    #[uniffi::constructor]
    pub fn open(dir: &str, now: &Moment, language: &str) -> Result<Arc<Self>, RestwaterError> {
        let app = App::open(Path::new(dir), Box::new(SystemEntropy::default()), now);
        let mut app = app.map_err(|error| RestwaterError::at_opening(&error, language))?;
        app.set_language(language);
        Ok(Arc::new(Self { app: Mutex::new(app) }))
    }

    /// The phone's language was changed.
    pub fn set_language(&self, language: &str) -> Result<(), RestwaterError> {
        self.app()?.set_language(language);
        Ok(())
    }

    /// One tap. What it wrote is on stable storage when this returns; on an error nothing was changed.
    pub fn act(&self, action: &Action, at: &Moment) -> Result<Update, RestwaterError> {
        self.with(|app| app.act(action, at))
    }

    /// A tap on a key outside the app, for the rod that the key was shown for; without a rod, for the chosen one. A key that is
    /// not offered now is refused with the reason.
    pub fn act_outside(&self, key: Key, rod: Option<u8>, at: &Moment) -> Result<Update, RestwaterError> {
        self.with(|app| app.act_outside(key, rod, at))
    }

    /// What the screens are about and what is half typed on them, for the shell to keep with the open screen.
    pub fn subject(&self) -> Result<String, RestwaterError> {
        self.with(|app| app.subject())
    }

    /// Makes the screens be about that again in a new process; false if that is no longer possible, and then the screen of that
    /// time may not be shown.
    pub fn restore_subject(&self, subject: &str) -> Result<bool, RestwaterError> {
        self.with(|app| app.restore_subject(subject))
    }

    /// What a text typed on a screen would be written about: another string where it would go elsewhere. A text that was not
    /// sent is kept with it, and shown only where it is the same.
    pub fn about(&self, which: Which, now: &Moment) -> Result<String, RestwaterError> {
        Ok(self.app()?.about(which, now))
    }

    /// What a screen shows now.
    pub fn screen(&self, which: Which, now: &Moment) -> Result<Screen, RestwaterError> {
        self.with(|app| app.screen(which, now))
    }

    /// The same as JSON, for the day player; refused by a phone's library.
    pub fn screen_json(&self, which: Which, now: &Moment) -> Result<String, RestwaterError> {
        let screen = self.with(|app| app.screen(which, now))?;
        days::screen_json(&screen)
    }

    /// The picture of the swim for a canvas: one call a frame.
    pub fn swim_scene(&self, now: &Moment, glass: &FanGlass) -> Result<SwimScene, RestwaterError> {
        self.with(|app| app.swim_scene(now, glass))
    }

    /// A tap on that picture, in px; false beside the water.
    pub fn swim_tap(&self, glass: &FanGlass, x: f64, y: f64) -> Result<bool, RestwaterError> {
        self.with(|app| app.swim_tap(glass, x, y))
    }

    /// The screens that can be opened now.
    pub fn screen_list(&self) -> Result<ScreenListView, RestwaterError> {
        self.with(|app| Ok(app.screen_list()))
    }

    /// The screen that the app opens with: once, before anything was logged, the cards of the first opening.
    pub fn first_screen(&self) -> Result<Which, RestwaterError> {
        self.with(App::first_screen)
    }

    /// What is to be seen and heard while the app is not looked at. The shell asks after each tap.
    pub fn watch(&self, now: &Moment) -> Result<WatchView, RestwaterError> {
        self.with(|app| Ok(app.watch(now)))
    }

    /// Hand and scheme as last set.
    pub fn settings(&self, now: &Moment) -> Result<Settings, RestwaterError> {
        self.with(|app| Ok(app.settings(now)))
    }

    /// Puts the log aside while the app is in the background.
    pub fn pause(&self) -> Result<(), RestwaterError> {
        self.with(App::pause)
    }

    /// Takes it up again.
    pub fn resume(&self) -> Result<(), RestwaterError> {
        self.with(App::resume)
    }
}

/// Where everything of the Bank is on a screen of this size.
#[uniffi::export]
pub fn bank_layout(glass: Glass, ask: PadAsk) -> Result<BankLayout, RestwaterError> {
    restwater_layout::bank_layout(&glass, ask)
        .map_err(|error| RestwaterError::plain(ErrorKind::BadInput, &error))
}

/// The words on the screen that are in no record.
#[uniffi::export]
#[must_use]
pub fn pad_words(language: &str) -> PadWords {
    PadWords::of(Wording::shared(language))
}

/// The words of the pager on page `page`, from 1, of `pages`.
#[uniffi::export]
#[must_use]
pub fn pager_words(page: u32, pages: u32, language: &str) -> PagerWords {
    PagerWords::of(Wording::shared(language), page, pages)
}

/// A contact wider than this, in millimetres, is a palm or a sleeve, not a tap.
#[uniffi::export]
#[must_use]
pub fn palm_mm() -> f64 {
    restwater_layout::PALM_MM
}

/// Em of the smaller line on a key at 100 %, in millimetres: larger text makes it no smaller.
#[uniffi::export]
#[must_use]
pub fn sub_mm() -> f64 {
    restwater_layout::SUB_EM
}

/// Where everything of the Swim is on a screen of this size.
#[uniffi::export]
#[must_use]
pub fn swim_layout(glass: &Glass, ask: SwimPadAsk) -> SwimLayout {
    restwater_layout::swim_layout(glass, ask)
}

/// How wide the letters of the app's typeface are: what a shell measures lines with before it draws them.
#[uniffi::export]
#[must_use]
pub fn face_widths() -> FaceWidths {
    restwater_swim::face_widths()
}

/// The samples of the Swim screen's legend as a picture, one row each.
#[uniffi::export]
pub fn swim_legend(glass: &FanGlass, language: &str) -> Result<SwimScene, RestwaterError> {
    restwater_app::swim_legend(glass, Wording::shared(language))
        .map_err(|error| RestwaterError::plain(ErrorKind::BadInput, &error))
}

/// Where the keys of the Match screen are on a screen of this size.
#[uniffi::export]
pub fn match_layout(glass: &Glass) -> Result<MatchLayout, RestwaterError> {
    restwater_layout::match_layout(glass).map_err(|error| RestwaterError::plain(ErrorKind::BadInput, &error))
}

/// Where the keys of one page of a grid are.
#[uniffi::export]
#[must_use]
pub fn key_grid(ask: &GridAsk) -> GridPage {
    restwater_layout::key_grid(ask)
}

/// The places of the lines of one page of a list; beyond the end, the last page.
#[uniffi::export]
#[must_use]
pub fn list_page(place: Rect, px_per_mm: f64, lines: u32, page: u32, large: bool) -> GridPage {
    restwater_layout::list_page(place, px_per_mm, lines, page, large)
}

/// Height of what a line of a list says above its details, px, given the height of the line and those that both texts ask for.
#[uniffi::export]
#[must_use]
pub fn line_says(height: f64, px_per_mm: f64, says: f64, details: f64) -> f64 {
    restwater_layout::line_says(height, px_per_mm, says, details)
}

/// Where the parts of a page of choices are.
#[uniffi::export]
#[must_use]
pub fn row_place(ask: &RowAsk) -> RowPlace {
    restwater_layout::row_place(ask)
}

/// What a key of the Bank does for a rod; none for a key that opens a screen.
#[uniffi::export]
#[must_use]
pub fn key_action(key: Key, rod: u8) -> Option<Action> {
    Action::of_key(key, rod).action().cloned()
}

/// Reads a day file: JSON lines of times and taps. An error names line and column. Refused by a phone's library.
#[uniffi::export]
pub fn read_day(text: &str) -> Result<Vec<DayTap>, RestwaterError> {
    days::read(text)
}
