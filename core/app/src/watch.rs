//! What the system shows and sounds outside the app: a line and keys on the lock screen, and alarms.

use super::error::within;
use super::feed::HEAVIEST_FEED_MG;
use super::{App, AppError, settings};
use restwater_log::Moment;
use restwater_screen::{
    Alarm, PhoneChoices, PhoneTap, PhoneView, Scheme, Settings, WatchInput, WatchView, feed_way, midnight,
    phone_view, watch_view,
};
use restwater_session::{PegPlace, Session};
use restwater_sky::daylight::{Light, Place, daylight};

/// Longest alarm that can be set, in minutes.
const LONGEST_ALARM_MIN: u16 = 240;

impl App {
    /// What the system is to show and sound outside the app. The shell calls this after each tap.
    pub fn watch(&mut self, now: &Moment) -> WatchView {
        let now = &self.journal.here(now);
        self.catch_up();
        let bank = self.bank(now);
        let session = self.journal.recent().current().map(|loaded| &loaded.session).filter(|s| s.is_open());
        let now = &self.on_line(now);
        let leaves = session
            .map_or_else(Vec::new, |session| self.advisor.leaves(session, self.journal.in_memory(), now));
        let (words, phone) = (self.words, self.phone);
        watch_view(&WatchInput { words, session, bank: &bank, leaves: &leaves, phone, now })
    }

    /// The Phone screen.
    pub(super) fn phone_screen(&self) -> PhoneView {
        phone_view(self.words, self.phone, self.settings)
    }

    /// Stores hand, scheme, and whether the night scheme switches on at dusk, all or nothing.
    pub(super) fn keep_looks(&mut self, settings: Settings, phone: PhoneChoices) -> Result<(), AppError> {
        settings::save_looks(self.journal.store(), settings, phone)?;
        (self.settings, self.phone) = (settings, phone);
        Ok(())
    }

    /// Whether it is darker than civil twilight at the peg of the session shown; false if its position is
    /// unknown.
    pub(super) fn is_dark(&self, now: &Moment) -> bool {
        let Some(place) = self.session().and_then(|session| self.peg_of(session)) else { return false };
        let place = Place { lat: place.lat_e7 as f64 / 1e7, lon: place.lon_e7 as f64 / 1e7 };
        let now = Moment { wall_ms: self.time_of_day(now), ..now.clone() };
        daylight(midnight(&now), place).is_ok_and(|day| day.light_at(now.wall_ms) == Light::Dark)
    }

    /// The place of its peg, otherwise of the peg of one of the angler's last days on the same water.
    pub(super) fn peg_of(&self, session: &Session) -> Option<PegPlace> {
        let water = session.setup.water.as_deref();
        let mut before = self.advisor.earlier().iter().filter(|before| {
            !before.of_another && restwater_session::same_water(before.day.water.as_deref(), water)
        });
        session.peg_place.or_else(|| before.find_map(|before| before.day.peg_place))
    }

    /// The wall time to use for the position of the sun.
    fn time_of_day(&self, now: &Moment) -> i64 {
        let started = self.session().filter(|session| session.is_open()).and_then(|s| s.started.as_ref());
        started.map_or(now.wall_ms, |started| self.on_line(now).wall_since(started))
    }

    /// One of the choices of the Phone screen.
    pub(super) fn phone_tap(&mut self, tap: PhoneTap) -> Result<String, AppError> {
        let mut phone = self.phone;
        match tap {
            PhoneTap::Alarm { alarm: Alarm::After(minutes) } => {
                phone.alarm = Alarm::After(within("alarm", minutes, 1, LONGEST_ALARM_MIN)?);
            }
            PhoneTap::Alarm { alarm } => phone.alarm = alarm,
            PhoneTap::Awake { on } => phone.awake = on,
            PhoneTap::Weights { unit } => phone.weights = unit,
            PhoneTap::Feed { what, measure, mg } => {
                let place = feed_way(what, measure).ok_or_else(|| AppError::unknown("feed", "measure"))?;
                phone.feed = phone.feed.with(place, within("feed", mg, 1, HEAVIEST_FEED_MG)?);
            }
            PhoneTap::NightAtDusk => {
                phone.night_at_dusk = true;
                let settings = Settings { scheme: Scheme::Day, ..self.settings };
                self.keep_looks(settings, phone)?;
                return Ok(String::new());
            }
        }
        settings::save_phone(self.journal.store(), phone)?;
        if phone.weights != self.phone.weights {
            // It shows feed in that unit.
            self.book.forget();
        }
        self.phone = phone;
        Ok(String::new())
    }
}
