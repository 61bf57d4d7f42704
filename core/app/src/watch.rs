//! What goes on while the app is not looked at: a line for the lock screen, keys on it, and what is to ring when.

use super::error::within;
use super::feed::HEAVIEST_FEED_MG;
use super::{App, AppError, settings};
use restwater_log::Moment;
use restwater_screen::{
    Alarm, PhoneChoices, PhoneTap, PhoneView, Scheme, WatchInput, WatchView, feed_way, midnight, phone_view,
    watch_view,
};
use restwater_sky::daylight::{Light, Place, daylight};

/// Longest alarm that can be set, in minutes.
const LONGEST_ALARM_MIN: u16 = 240;

impl App {
    /// What is to be seen and heard while the app is not looked at. The shell asks after each tap.
    pub fn watch(&mut self, now: &Moment) -> WatchView {
        let now = &self.journal.here(now);
        self.catch_up();
        let bank = self.bank(now);
        let session = self.journal.recent().current().map(|loaded| &loaded.session).filter(|s| s.is_open());
        let now = &self.on_line(now);
        watch_view(&WatchInput { words: &self.words, session, bank: &bank, phone: self.phone, now })
    }

    /// The Phone screen.
    pub(super) fn phone_screen(&self) -> PhoneView {
        phone_view(&self.words, self.phone, self.settings)
    }

    /// Whether the night scheme comes by itself at dusk.
    pub(super) fn choose_dusk(&mut self, on: bool) -> Result<(), AppError> {
        let phone = PhoneChoices { night_at_dusk: on, ..self.phone };
        settings::save_phone(self.journal.store(), phone)?;
        self.phone = phone;
        Ok(())
    }

    /// Whether it is darker than civil twilight at the peg; where its place is not known it is taken for light.
    pub(super) fn is_dark(&self, now: &Moment) -> bool {
        let Some((lat, lon)) = self.placed() else { return false };
        let place = Place { lat: lat as f64 / 1e7, lon: lon as f64 / 1e7 };
        daylight(midnight(now), place).is_ok_and(|day| day.light_at(now.wall_ms) == Light::Dark)
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
                self.set(None, Some(Scheme::Day))?;
                phone = self.phone;
                phone.night_at_dusk = true;
            }
        }
        settings::save_phone(self.journal.store(), phone)?;
        self.phone = phone;
        Ok(String::new())
    }
}
