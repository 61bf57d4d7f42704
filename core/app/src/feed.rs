//! Feed: the taps of the Bank's FEED keys and of the two screens behind them.

use super::error::within;
use super::{App, AppError};
use restwater_log::{
    FeedAmount, FeedKind, FeedMeasure, FeedSaid, Moment, Payload, Spot, WaterPlace, WeightUnit,
};
use restwater_screen as screen;
use restwater_screen::{Arg, FEED_WAYS, FeedInput, FeedTap, FishView, WeightView, feed_way, takes_digit};
use restwater_session::{NotNow, Session, point_of, reach_m};
use serde::{Deserialize, Serialize};

/// Nobody feeds more at once, in mg: 100 kg.
pub(super) const HEAVIEST_FEED_MG: u32 = 100_000_000;
/// Nobody feeds more of a measure at once.
const MOST_MEASURES: u16 = 1_000;
/// Sixteen drams are an ounce.
const DRAMS_PER_OUNCE: u32 = 16;

/// What is remembered between taps; it is not part of the log.
#[derive(Clone, Serialize, Deserialize)]
pub(super) struct FeedState {
    count: u16,
    at_aim: bool,
    kind: FeedKind,
    /// A weight that is being typed, and the unit it was typed in.
    typed: Option<(WeightUnit, String)>,
}

impl Default for FeedState {
    fn default() -> Self {
        Self { count: 1, at_aim: false, kind: FeedKind::Loose, typed: None }
    }
}

impl App {
    /// What is fed by hand, in measures.
    pub(super) fn feed_screen(&mut self, now: &Moment) -> FishView {
        self.with_feed(now, screen::feed_view)
    }

    /// The number pad for feed by weight.
    pub(super) fn feed_weight_screen(&mut self, now: &Moment) -> WeightView {
        self.with_feed(now, screen::feed_weight_view)
    }

    fn with_feed<T>(&mut self, now: &Moment, make: impl Fn(&FeedInput) -> T) -> T {
        let session = self.session().filter(|session| session.is_open());
        make(&FeedInput {
            session,
            rod: self.chosen,
            spot: session.and_then(|session| spot_now(session, self.chosen)),
            at_aim: self.feed.at_aim,
            aim: if self.feed.at_aim { self.aimed_place().ok() } else { None },
            now: &self.on_line(now),
            count: self.feed.count,
            guesses: &self.phone.feed,
            kind: self.feed.kind,
            typed: self.feed_typed(),
            unit: self.weights(),
            words: self.words,
        })
    }

    /// A tap about feed.
    pub(super) fn feed_tap(&mut self, tap: FeedTap, at: &Moment) -> Result<String, AppError> {
        match tap {
            FeedTap::Again => return self.feed_again(at),
            FeedTap::Measure { what, measure } => {
                let amount = self.measures(what, measure, self.feed.count)?;
                return self.feed(what, amount, at);
            }
            FeedTap::Weighed => {
                let count: u32 = self.feed_typed().parse().map_err(|_| AppError::unknown("feed", "0"))?;
                return self.feed_weight(self.feed.kind, self.weights(), count, at);
            }
            FeedTap::Weight { what, unit, count } => {
                let amount = FeedAmount::Weight { unit, count: within("feed", count, 1, HEAVIEST_FEED_MG)? };
                return self.feed(what, amount, at);
            }
            FeedTap::Count { count } => self.feed.count = within("feed", count, 1, MOST_MEASURES)?,
            FeedTap::AtAim { aim } => self.feed.at_aim = aim,
            FeedTap::Kind { what } => self.feed.kind = what,
            FeedTap::Digit { digit } if takes_digit(self.feed_typed(), digit) => {
                let typed = format!("{}{digit}", self.feed_typed());
                self.feed.typed = Some((self.weights(), typed));
            }
            FeedTap::Digit { .. } => {}
            FeedTap::Clear => self.feed.typed = None,
        }
        Ok(String::new())
    }

    /// The weight being typed; nothing of one that was typed in another unit.
    fn feed_typed(&self) -> &str {
        let unit = self.weights();
        self.feed.typed.as_ref().filter(|(of, _)| *of == unit).map_or("", |(_, typed)| typed)
    }

    /// The screens of feed were closed: an unfinished figure does not belong to the next feed.
    pub(super) fn leave_feed(&mut self) {
        self.feed.typed = None;
    }

    /// Logs feed by weight. Ounces are typed as whole numbers, but the log stores drams.
    fn feed_weight(
        &mut self,
        what: FeedKind,
        unit: WeightUnit,
        count: u32,
        at: &Moment,
    ) -> Result<String, AppError> {
        let count = match unit {
            WeightUnit::Drams => count.saturating_mul(DRAMS_PER_OUNCE),
            WeightUnit::Grams => count,
        };
        self.feed(what, FeedAmount::Weight { unit, count: within("feed", count, 1, HEAVIEST_FEED_MG)? }, at)
    }

    /// Repeats the last feed. If that went to a rod's spot, it now goes to the spot of the chosen rod, since
    /// that is what is being fished; if it went to a place on the map, it goes there again.
    fn feed_again(&mut self, at: &Moment) -> Result<String, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let last = session.fed.last().ok_or(NotNow::NothingFed)?.said;
        if last.rod.is_some() {
            let said = self.at_spot(session, last.what, last.amount);
            return self.log_feed(said, at);
        }
        self.log_feed(last, at)
    }

    /// Logs feed at the place that the keys have selected.
    fn feed(&mut self, what: FeedKind, amount: FeedAmount, at: &Moment) -> Result<String, AppError> {
        let session = self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let said = if self.feed.at_aim {
            FeedSaid { what, amount, rod: None, place: Some(self.aimed_place()?) }
        } else {
            self.at_spot(session, what, amount)
        };
        let notice = self.log_feed(said, at)?;
        (self.feed.count, self.feed.typed) = (1, None);
        Ok(notice)
    }

    /// Feed by a tap on the map: one of the measure, as its row says, in the marked cell, whatever the keys of the Bank say.
    pub(super) fn feed_on_map(
        &mut self,
        what: FeedKind,
        measure: FeedMeasure,
        at: &Moment,
    ) -> Result<String, AppError> {
        let amount = self.measures(what, measure, 1)?;
        self.session().filter(|s| s.is_open()).ok_or(NotNow::NoSession)?;
        let said = FeedSaid { what, amount, rod: None, place: Some(self.place_on_map(at)?) };
        self.log_feed(said, at)
    }

    /// An amount of feed: a count of a measure, at the angler's usual weight of one.
    fn measures(&self, what: FeedKind, measure: FeedMeasure, count: u16) -> Result<FeedAmount, AppError> {
        let place = feed_way(what, measure).ok_or_else(|| AppError::unknown("feed", "measure"))?;
        let each_mg = FEED_WAYS.get(place).map_or(1, |way| self.phone.feed.of(way));
        Ok(FeedAmount::Measures { measure, count, each_mg })
    }

    fn at_spot(&self, session: &Session, what: FeedKind, amount: FeedAmount) -> FeedSaid {
        // A spot from a file may be impossible: then the feed is logged without a place.
        let place = spot_now(session, self.chosen).map(place_of).filter(|place| point_of(*place).is_some());
        FeedSaid { what, amount, rod: Some(self.chosen), place }
    }

    fn log_feed(&mut self, said: FeedSaid, at: &Moment) -> Result<String, AppError> {
        self.log_here(Payload::Fed(said), at)?;
        let what = screen::feed_words(self.words, said.what, &said.amount, self.weights());
        Ok(self.say_at("notice-fed", &what, said.place.filter(|_| said.rod.is_none())))
    }

    /// A notice of what was logged; at a place on the map, with its name.
    pub(super) fn say_at(&self, id: &str, what: &str, place: Option<WaterPlace>) -> String {
        let Some((session, place)) = self.session().zip(place) else {
            return self.words.say_with(id, &[("what", Arg::Text(what))]);
        };
        let place = screen::place_words(self.words, session, self.chosen, place);
        let args = [("what", Arg::Text(what)), ("place", Arg::Text(&place))];
        self.words.say_with(&format!("{id}-at"), &args)
    }
}

/// The spot of the cast that a rod has out, or that of its next one.
pub(super) fn spot_now(session: &Session, rod: u8) -> Option<&Spot> {
    match session.running(rod) {
        Some(cast) => cast.spot.as_ref(),
        None => session.rod(rod)?.spot.as_ref(),
    }
}

/// The place of a spot.
pub(super) fn place_of(spot: &Spot) -> WaterPlace {
    let cm = libm::round(reach_m(spot.reach) * 100.0) as u32;
    WaterPlace { bearing_cdeg: spot.bearing_cdeg, range_cm: cm }
}
