//! Fish that show themselves: the taps of the Bank's key and of the screen behind it.

use super::feed::{place_of, spot_now};
use super::{App, AppError};
use restwater_log::{FishSign, Moment, Payload, WaterPlace};
use restwater_screen as screen;
use restwater_screen::{Arg, FishView, SeenInput, SeenTap};
use restwater_session::NotNow;

impl App {
    /// The screen of fish that show.
    pub(super) fn seen_screen(&self, now: &Moment) -> FishView {
        let session = self.session().filter(|session| session.is_open());
        let has_spot = session.and_then(|session| spot_now(session, self.chosen)).is_some();
        let at_aim = self.seen_at_aim || !has_spot;
        screen::seen_view(&SeenInput {
            session,
            rod: self.chosen,
            at_aim,
            has_spot,
            aim: if at_aim { self.aimed_place().ok() } else { None },
            now: &self.on_line(now),
            words: self.words,
        })
    }

    /// A tap about fish that show.
    pub(super) fn seen_tap(&mut self, tap: SeenTap, at: &Moment) -> Result<String, AppError> {
        match tap {
            SeenTap::Sign { sign } => {
                let (place, at_aim) = self.seen_place()?;
                self.fish_shown(sign, place, at_aim, at)
            }
            SeenTap::Neighbour { side } | SeenTap::NeighbourHere { side } => {
                self.log_here(Payload::NeighbourCaught { side }, at)?;
                let what = self.words.say(screen::neighbour_words_id(side));
                Ok(self.words.say_with("notice-seen", &[("what", Arg::Text(&what))]))
            }
            SeenTap::AtAim { aim } => {
                self.seen_at_aim = aim;
                Ok(String::new())
            }
        }
    }

    /// The place of fish that show, and whether it is the aim: the rod's spot, or the aim if that was chosen or no spot is set.
    fn seen_place(&self) -> Result<(WaterPlace, bool), AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        match spot_now(session, self.chosen).filter(|_| !self.seen_at_aim) {
            Some(spot) => Ok((place_of(spot), false)),
            None => Ok((self.aimed_place()?, true)),
        }
    }

    /// Logs fish that showed, and names the place if it is that of the aim.
    pub(super) fn fish_shown(
        &mut self,
        sign: FishSign,
        place: WaterPlace,
        at_aim: bool,
        at: &Moment,
    ) -> Result<String, AppError> {
        let payload = Payload::FishShown { sign, place };
        if let Some(session) = self.session() {
            restwater_session::check_swim(session, &payload, None)?;
        }
        self.log_here(payload, at)?;
        let what = screen::sign_words(self.words, sign);
        Ok(self.say_at("notice-seen", &what, Some(place).filter(|_| at_aim)))
    }
}
