//! Words that a shell passes to the system: channels of notifications, permissions, files of others.

use super::Wording;
use serde::{Deserialize, Serialize};

/// The words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ShellWords {
    /// The channel of the running wait.
    pub channel_wait: String,
    /// The channel of alarms.
    pub channel_alarm: String,
    /// Notifications are not allowed, so an alarm is sure to sound only while the app is in the foreground.
    pub no_notifications: String,
    /// Notifications are allowed, but alarms among them make no sound.
    pub alarms_silent: String,
    /// Do not disturb lets no alarm sound.
    pub alarms_undisturbed: String,
    /// The phone's settings let the app's notifications make no sound, or let a Focus hold them back.
    pub alarm_sounds_off: String,
    /// The phone did not take an alarm.
    pub alarm_not_set: String,
    /// The running wait is switched off: notifications of its channel, or Live Activities.
    pub wait_hidden: String,
    /// Exact alarms are not allowed, so one may ring late.
    pub late_alarms: String,
    /// The phone was restarted and has not been unlocked since, so no file can be read yet.
    pub phone_locked: String,
    /// Access to a file or folder was taken away, or never given.
    pub file_not_allowed: String,
    /// The file or folder is no longer there.
    pub file_gone: String,
    /// There is no space left.
    pub file_no_space: String,
    /// Something else went wrong with it.
    pub file_failed: String,
    /// The system ended the app before a file was saved or sent.
    pub file_unfinished: String,
    /// The log is being opened, so a tap was not logged.
    pub still_opening: String,
    /// The key that salvages a damaged log.
    pub salvage: String,
    /// This device has no receiver to ask for its position.
    pub no_receiver: String,
    /// The position may not be read.
    pub position_not_allowed: String,
    /// The receiver is switched off, or gave none in time.
    pub position_not_found: String,
}

impl ShellWords {
    /// The words in a language.
    pub fn of(words: &Wording) -> Self {
        let say = |id: &str| words.say(id);
        Self {
            channel_wait: say("shell-channel-wait"),
            channel_alarm: say("shell-channel-alarm"),
            no_notifications: say("shell-no-notifications"),
            alarms_silent: say("shell-alarms-silent"),
            alarms_undisturbed: say("shell-alarms-undisturbed"),
            alarm_sounds_off: say("shell-alarm-sounds-off"),
            alarm_not_set: say("shell-alarm-not-set"),
            wait_hidden: say("shell-wait-hidden"),
            late_alarms: say("shell-late-alarms"),
            phone_locked: say("shell-phone-locked"),
            file_not_allowed: say("shell-file-not-allowed"),
            file_gone: say("shell-file-gone"),
            file_no_space: say("shell-file-no-space"),
            file_failed: say("shell-file-failed"),
            file_unfinished: say("shell-file-unfinished"),
            still_opening: say("shell-still-opening"),
            salvage: say("shell-salvage"),
            no_receiver: say("shell-no-receiver"),
            position_not_allowed: say("shell-position-not-allowed"),
            position_not_found: say("shell-position-not-found"),
        }
    }
}

/// An accuracy worse than this is too rough for a peg, in metres: our own choice.
const ROUGH_M: f64 = 50.0;

/// The notice about a position from the phone, with its stated accuracy.
pub fn position_words(words: &Wording, accuracy_m: f64) -> String {
    // An accuracy that is NaN or negative counts as rough.
    let good = (0.0..=ROUGH_M).contains(&accuracy_m);
    words.say(if good { "shell-position-read" } else { "shell-position-rough" })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rough_position_is_called_rough() {
        let words = Wording::new();
        assert!(position_words(&words, 8.0).ends_with("then SET PLACE."));
        for rough in [2_000.0, -1.0, f64::NAN] {
            assert!(position_words(&words, rough).contains("rough"));
        }
    }

    #[test]
    fn every_word_is_there() {
        let text = serde_json::to_string(&ShellWords::of(&Wording::new())).unwrap();
        assert!(!text.contains("\"shell-"), "{text}");
    }
}
