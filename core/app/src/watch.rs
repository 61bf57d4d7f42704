//! What goes on while the app is not looked at: a line for the lock screen, keys on it, and what is to ring when.

use super::{App, AppError, settings};
use restwater_log::Moment;
use restwater_screen::{Alarm, PhoneView, WatchInput, WatchView, phone_view, watch_view};

/// Longest alarm that can be set, in minutes.
const LONGEST_ALARM_MIN: u16 = 240;

impl App {
    /// What is to be seen and heard while the app is not looked at. The shell asks after each tap.
    pub fn watch(&mut self, now: &Moment) -> WatchView {
        let bank = self.bank(now);
        let session = self.recent.current().map(|loaded| &loaded.session).filter(|s| s.is_open());
        let now = &self.on_line(now);
        watch_view(&WatchInput { words: &self.words, session, bank: &bank, phone: self.phone, now })
    }

    /// The Phone screen.
    pub(super) fn phone_screen(&self) -> PhoneView {
        phone_view(&self.words, self.phone, self.settings)
    }

    /// One of the choices of the Phone screen.
    pub(super) fn choose_phone(&mut self, field: &str, value: &str) -> Result<String, AppError> {
        let unknown = || AppError::unknown(field, value);
        let mut phone = self.phone;
        match (field, value) {
            ("alarm", "off") => phone.alarm = Alarm::Off,
            ("alarm", "hold") => phone.alarm = Alarm::Hold,
            ("alarm", "recast") => phone.alarm = Alarm::Recast,
            ("alarm", minutes) => {
                let minutes = minutes
                    .parse()
                    .ok()
                    .filter(|m| (1..=LONGEST_ALARM_MIN).contains(m))
                    .ok_or_else(unknown)?;
                phone.alarm = Alarm::After(minutes);
            }
            ("awake", "on") => phone.awake = true,
            ("awake", "off") => phone.awake = false,
            ("hand", "right") => return self.set(Some(super::Hand::Right), None),
            ("hand", "left") => return self.set(Some(super::Hand::Left), None),
            ("scheme", "day") => return self.set(None, Some(super::Scheme::Day)),
            ("scheme", "night") => return self.set(None, Some(super::Scheme::Night)),
            _ => return Err(unknown()),
        }
        settings::save_phone(&mut self.store, phone)?;
        self.phone = phone;
        Ok(String::new())
    }
}
