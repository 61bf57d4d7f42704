//! The start of a session: what START writes, and the state of the screens on a new day.

use super::bankside::Asking;
use super::feed::FeedState;
use super::fish::FishState;
use super::plan::plan_on_rods;
use super::swim::SwimState;
use super::{App, AppError};
use restwater_log::{Moment, Payload, SessionSetup};
use restwater_screen as screen;

impl App {
    /// Begins a session, with the plan for today if there is one, and returns the notice.
    pub(super) fn begin(
        &mut self,
        setup: SessionSetup,
        as_set_up: bool,
        at: &Moment,
    ) -> Result<String, AppError> {
        let rods = setup.rods;
        let (id, used) = (self.journal.new_id(at), self.setup_is_used());
        let mut entries =
            if as_set_up { self.beginning(&setup)? } else { vec![Payload::SessionStarted(setup)] };
        if let Some(plan) = self.plan_to_take(at) {
            let filled = plan_on_rods(&plan, &entries, rods);
            entries.push(plan);
            entries.extend(filled);
        }
        if as_set_up {
            self.setup_used(id, used)?;
        }
        self.write_all(id, entries, at)?;
        // The session has begun: the screens are reset for a new day, whatever fails from here on.
        self.chosen = 1;
        self.swim = SwimState::default();
        self.match_day = self.match_day.of_a_new_day();
        self.fish = FishState::default();
        (self.feed, self.seen_at_aim) = (FeedState::default(), false);
        self.asking = Asking::default();
        self.mending = None;
        self.plan_used(at);
        Ok(self.begun())
    }

    /// The notice for a session that has just begun: how many cautions are new at its peg.
    fn begun(&self) -> String {
        let count = self.cautions_to_show().len();
        let kind = "session_started";
        if count == 0 {
            return self.say_what("notice-logged", kind);
        }
        let what = screen::kind_words(self.words, kind);
        let args = [("what", screen::Arg::Text(&what)), ("count", screen::Arg::Count(count))];
        self.words.say_with("notice-cautions", &args)
    }
}
