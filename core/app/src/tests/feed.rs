//! Feed: by the Bank's keys, by the screens behind them, and by a feeder with each cast.

use super::*;
use restwater_log::{FeedAmount, FeedKind, FeedMeasure, WaterPlace, WeightUnit};
use restwater_screen::{FeedTap, FishKey, FishView, KeyTap, KeyWeight, PhoneTap, WeightView};
use restwater_session::{FedHere, feed_mg};

fn feed(tap: FeedTap) -> Action {
    Action::Feed { tap }
}

const HANDFUL: Action =
    Action::Feed { tap: FeedTap::Measure { what: FeedKind::Loose, measure: FeedMeasure::Handful } };

impl Phone {
    fn feed_screen(&mut self, ms: i64) -> FishView {
        match self.app().screen(Which::Feed, &at(ms)).unwrap() {
            Screen::Feed(view) => view,
            other => panic!("{other:?}"),
        }
    }

    fn feed_pad(&mut self, ms: i64) -> WeightView {
        match self.app().screen(Which::FeedWeight, &at(ms)).unwrap() {
            Screen::FeedWeight(view) => view,
            other => panic!("{other:?}"),
        }
    }

    pub(super) fn bank_key(&mut self, ms: i64, key: Key) -> restwater_screen::KeyView {
        self.bank(ms).keys.into_iter().find(|view| view.key == key).unwrap()
    }

    fn send_key(&mut self, ms: i64, key: &FishKey) -> Update {
        let KeyTap::Send { action } = &key.tap else { panic!("{} sends nothing", key.tag) };
        self.tap(ms, action).unwrap()
    }

    fn fed(&mut self, ms: i64) -> Option<FedHere> {
        let chosen = self.app().chosen;
        let now = self.app().on_line(&at(ms));
        let session = self.app().session().unwrap();
        session.fed_here(chosen, session.rod(chosen).unwrap().spot.as_ref(), &now)
    }
}

fn tagged<'a>(keys: &'a [FishKey], tag: &str) -> &'a FishKey {
    keys.iter().find(|key| key.tag == tag).unwrap()
}

fn with_a_spot() -> Phone {
    let mut phone = started();
    phone.tap(1_000, &tackle(TackleTap::Reach { reach: Reach::Yards { hundredths: 3_000 } })).unwrap();
    phone
}

#[test]
fn the_first_feed_is_chosen_and_then_one_tap_repeats_it() {
    let mut phone = with_a_spot();
    let key = phone.bank_key(MIN, Key::Feed);
    assert_eq!(
        (key.sub.as_deref(), key.tap),
        (Some("what and how much"), KeyTap::Open { which: Which::Feed })
    );
    let view = phone.feed_screen(MIN);
    assert_eq!((view.title.as_str(), view.says[0].as_str()), ("Feed at the spot", "Nothing fed here yet."));
    let handful = &view.classes[0];
    assert_eq!(
        (handful.label.as_str(), handful.sub.as_str(), handful.closes),
        ("HANDFUL", "loose, 1 oz each", true)
    );
    let update = phone.send_key(2 * MIN, handful);
    assert_eq!(update.notice, "Fed: a handful, loose.");
    assert_eq!(phone.undoes().as_deref(), Some("feed 22:15"));
    let key = phone.bank_key(3 * MIN, Key::Feed);
    assert_eq!((key.sub.as_deref(), &key.tap), (Some("a handful, loose"), &feed(FeedTap::Again).into()));
    assert_eq!(phone.bank_key(3 * MIN, Key::FeedOther).tap, KeyTap::Open { which: Which::Feed });
    phone.tap(10 * MIN, key.tap.action().unwrap()).unwrap();
    let here = phone.fed(15 * MIN).unwrap();
    assert_eq!((here.mg, here.since_min), (60_000, 5.0));
    assert_eq!(phone.feed_screen(15 * MIN).says[0], "Fed 5 min ago, 2 oz here this session.");
    let spot = phone.bank(15 * MIN).spot;
    assert!(spot.ends_with("Fed 5 min ago, 2 oz in all."), "{spot}");
    // When the last feed is undone, the key shows the one before it again.
    phone.tap(16 * MIN, &Action::Undo).unwrap();
    phone.tap(17 * MIN, &Action::Undo).unwrap();
    assert!(phone.fed(18 * MIN).is_none());
    let refused = phone.tap(19 * MIN, &feed(FeedTap::Again)).unwrap_err();
    assert_eq!(phone.app().message(&refused), "Nothing was fed yet. Choose what to feed first.");
}

#[test]
fn three_balls_take_two_taps_and_the_last_kind_of_feed_comes_first() {
    let mut phone = with_a_spot();
    let count = tagged(&phone.feed_screen(MIN).small, "count").clone();
    assert_eq!((count.label.as_str(), count.sub.as_str()), ("1 ×", "tap: 2"));
    phone.send_key(MIN, &count);
    let count = tagged(&phone.feed_screen(MIN).small, "count").clone();
    phone.send_key(MIN + 300, &count);
    let ball = tagged(&phone.feed_screen(MIN).classes, "ball").clone();
    assert_eq!(ball.label, "3 BALLS");
    phone.send_key(2 * MIN, &ball);
    let view = phone.feed_screen(3 * MIN);
    assert_eq!((view.classes[0].label.as_str(), view.classes.len()), ("BALL", 7));
    assert_eq!(phone.fed(3 * MIN).unwrap().mg, 240_000);
}

#[test]
fn feed_goes_to_the_aim_on_the_map_and_is_repeated_there() {
    let mut phone = with_a_spot();
    phone.tap(MIN, &Action::StepAim { step: Step::Left }).unwrap();
    phone.tap(MIN + 500, &Action::StepAim { step: Step::Out }).unwrap();
    phone.tap(2 * MIN, &feed(FeedTap::AtAim { aim: true })).unwrap();
    assert_eq!(phone.feed_screen(2 * MIN).title, "Feed at the aim on the map");
    phone.tap(3 * MIN, &HANDFUL).unwrap();
    let first = phone.app().session().unwrap().fed[0].said;
    assert_eq!(first.rod, None);
    phone.tap(4 * MIN, &feed(FeedTap::AtAim { aim: false })).unwrap();
    phone.tap(5 * MIN, &feed(FeedTap::Again)).unwrap();
    let session = phone.app().session().unwrap();
    assert_eq!(session.fed[1].said, first);
    assert!(session.fed[0].said.place.is_some() && phone.fed(6 * MIN).is_none());
}

/// Twelve ounces were typed and not fed.
#[test]
fn a_figure_left_unfinished_is_gone_and_is_never_read_in_another_unit() {
    let grams = Action::Phone { tap: PhoneTap::Weights { unit: WeightUnit::Grams } };
    for (left, unit, figure) in [(true, true, "0 g"), (false, true, "0 g"), (true, false, "0 oz")] {
        let mut phone = with_a_spot();
        for digit in [1, 2] {
            phone.tap(MIN + i64::from(digit) * 200, &feed(FeedTap::Digit { digit })).unwrap();
        }
        assert_eq!(phone.feed_pad(2 * MIN).figure, "12 oz");
        if left {
            phone.tap(2 * MIN, &Action::Back).unwrap();
        }
        if unit {
            phone.tap(3 * MIN, &grams).unwrap();
        }
        let pad = phone.feed_pad(4 * MIN);
        assert_eq!((pad.figure.as_str(), pad.weighed.enabled), (figure, false));
        assert!(phone.tap(5 * MIN, &feed(FeedTap::Weighed)).is_err());
        phone.tap(6 * MIN, &feed(FeedTap::Digit { digit: 3 })).unwrap();
        assert_eq!(phone.feed_pad(6 * MIN).figure, figure.replace('0', "3"));
    }
}

#[test]
fn feed_is_typed_in_ounces_or_grams_and_kept_as_it_was_typed() {
    let mut phone = with_a_spot();
    assert!(!phone.feed_pad(MIN).weighed.enabled);
    for digit in [0, 1, 2] {
        phone.tap(MIN + i64::from(digit) * 200, &feed(FeedTap::Digit { digit })).unwrap();
    }
    let pad = phone.feed_pad(MIN);
    assert_eq!((pad.figure.as_str(), pad.pad.len()), ("12 oz", 12));
    let kind = pad.pad.iter().find(|key| key.tag == "kind").unwrap().clone();
    phone.send_key(MIN + 1_000, &kind);
    let pad = phone.feed_pad(MIN);
    assert_eq!((pad.says.as_str(), pad.weighed.sub.as_str()), ("balls", "12 oz, balls"));
    let weighed = pad.weighed.clone();
    assert_eq!(phone.send_key(2 * MIN, &weighed).notice, "Fed: 12 oz, balls.");
    phone.tap(3 * MIN, &Action::Phone { tap: PhoneTap::Weights { unit: WeightUnit::Grams } }).unwrap();
    for (ms, digit) in [(0, 2), (300, 5), (600, 0)] {
        phone.tap(4 * MIN + ms, &feed(FeedTap::Digit { digit })).unwrap();
    }
    phone.tap(5 * MIN, &feed(FeedTap::Weighed)).unwrap();
    let amounts: Vec<FeedAmount> =
        phone.app().session().unwrap().fed.iter().map(|fed| fed.said.amount).collect();
    assert_eq!(amounts[0], FeedAmount::Weight { unit: WeightUnit::Drams, count: 192 });
    assert_eq!(amounts[1], FeedAmount::Weight { unit: WeightUnit::Grams, count: 250 });
    assert!(phone.tap(6 * MIN, &feed(FeedTap::Weighed)).is_err(), "nothing is typed");
}

#[test]
fn changing_the_guess_of_a_measure_does_not_change_earlier_feed() {
    let mut phone = with_a_spot();
    phone.tap(MIN, &HANDFUL).unwrap();
    let (what, measure) = (FeedKind::Loose, FeedMeasure::Handful);
    phone.tap(2 * MIN, &Action::Phone { tap: PhoneTap::Feed { what, measure, mg: 45_000 } }).unwrap();
    phone.open();
    phone.tap(3 * MIN, &HANDFUL).unwrap();
    let each: Vec<u64> =
        phone.app().session().unwrap().fed.iter().map(|fed| feed_mg(&fed.said.amount)).collect();
    assert_eq!(each, [30_000, 45_000]);
    let refused = phone.tap(4 * MIN, &Action::Phone { tap: PhoneTap::Feed { what, measure, mg: 0 } });
    assert_eq!(refused.unwrap_err().kind(), ErrorKind::BadInput);
}

#[test]
fn a_feeder_feeds_with_each_cast_and_undoing_the_cast_removes_that_feed() {
    let mut phone = with_a_spot();
    let each_cast = tagged(&phone.feed_screen(MIN).small, "feeder").clone();
    assert_eq!(each_cast.weight, KeyWeight::Outline);
    phone.send_key(MIN, &each_cast);
    assert_eq!(tagged(&phone.feed_screen(MIN).small, "feeder").weight, KeyWeight::Chosen);
    let entries = phone.app().ops().len();
    phone.tap(2 * MIN, &CAST).unwrap();
    assert_eq!(phone.app().ops().len(), entries + 1, "what a feeder feeds is no entry of its own");
    assert_eq!(phone.fed(10 * MIN).unwrap().since_min, 8.0);
    phone.tap(12 * MIN, &WOUND_IN).unwrap();
    phone.tap(14 * MIN, &CAST).unwrap();
    assert_eq!(phone.fed(15 * MIN).unwrap().mg, 60_000);
    phone.tap(16 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.fed(17 * MIN).unwrap().mg, 30_000);
    assert!(phone.tap(18 * MIN, &tackle(TackleTap::Feeder { mg: Some(0) })).is_err());
    phone.tap(19 * MIN, &tackle(TackleTap::Feeder { mg: None })).unwrap();
    phone.tap(20 * MIN, &CAST).unwrap();
    assert_eq!(phone.fed(21 * MIN).unwrap().mg, 30_000);
}

#[test]
fn setting_the_time_of_feed_back_does_not_change_fish_and_casts() {
    let mut phone = with_a_spot();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(5 * MIN, &HANDFUL).unwrap();
    phone.tap(6 * MIN, &Action::TimeBack { minutes: 1 }).unwrap();
    assert_eq!(phone.fed(10 * MIN).unwrap().since_min, 6.0);
    let session = phone.app().session().unwrap();
    assert_eq!(session.casts[0].start.at_ms, MIN);
    let place = session.fed[0].said.place.unwrap();
    assert_eq!(place, WaterPlace { bearing_cdeg: 0, range_cm: 2_743 });
}

#[test]
fn an_accidental_second_tap_feeds_once() {
    let mut phone = with_a_spot();
    phone.tap(MIN, &HANDFUL).unwrap();
    phone.tap(2 * MIN, &feed(FeedTap::Again)).unwrap();
    assert!(phone.tap(2 * MIN + 500, &feed(FeedTap::Again)).unwrap().repeated);
    assert_eq!(phone.app().session().unwrap().fed.len(), 2);
}

/// What the Bank reads of the chosen rod.
fn reading(phone: &mut Phone, ms: i64) -> restwater_screen::Reading {
    let app = phone.app();
    let now = app.on_line(&at(ms));
    let session = app.journal.recent().current().map(|loaded| &loaded.session).unwrap();
    app.advisor.read(session, app.journal.in_memory(), app.chosen, &now).unwrap()
}

/// Every other cast gets a bite after five minutes, every fourth after fourteen. If there is feed, the former
/// are fed.
fn cast_eight_times(phone: &mut Phone, feeds: bool) -> i64 {
    let mut now = MIN;
    for i in 0..8 {
        if feeds && i % 2 == 1 {
            phone.tap(now, &HANDFUL).unwrap();
        }
        phone.tap(now + MIN, &CAST).unwrap();
        let bite = i % 4 != 0;
        now += MIN + if i % 2 == 1 { 5 * MIN } else { 14 * MIN };
        phone.tap(now, if bite { &BITE } else { &WOUND_IN }).unwrap();
        if bite {
            phone.tap(now + MIN, &LANDED).unwrap();
        }
        // Feed counts for half an hour.
        now += 31 * MIN;
    }
    now
}

#[test]
fn the_bank_uses_the_water_of_the_cast_that_is_out_and_then_that_of_the_next() {
    let mut phone = with_a_spot();
    let now = cast_eight_times(&mut phone, true);
    let other = reading(&mut phone, now);
    phone.tap(now, &HANDFUL).unwrap();
    let fed = reading(&mut phone, now + MIN);
    assert!(fed.advice.best_rate_per_hour > 1.1 * other.advice.best_rate_per_hour);
    assert_eq!(
        reading(&mut phone, now + 31 * MIN).advice,
        other.advice,
        "half an hour later it no longer counts"
    );
    let mut chance = |splash: i64| {
        phone.tap(splash, &CAST).unwrap();
        let read = reading(&mut phone, splash + 3 * MIN);
        phone.tap(splash + 4 * MIN, &Action::Undo).unwrap();
        read.waiting.unwrap().bite_in_five
    };
    let (in_it, later) = (chance(now + 2 * MIN), chance(now + 40 * MIN));
    assert!(in_it > 1.1 * later, "{in_it} {later}");
    // A restart gives the same result.
    phone.open();
    assert_eq!(reading(&mut phone, now + MIN).advice, fed.advice);
}

#[test]
fn after_undoing_feed_the_advice_is_as_if_it_had_never_been_logged() {
    let mut phone = with_a_spot();
    let now = cast_eight_times(&mut phone, true);
    let knew = reading(&mut phone, now).advice;
    let fed: Vec<_> = phone.app().session().unwrap().fed.iter().map(|fed| fed.op).collect();
    for op in fed {
        phone.tap(now, &Action::Mend { op, tap: restwater_screen::MendTap::Remove }).unwrap();
    }
    let never = reading(&mut phone, now).advice;
    assert!(never != knew);
    let mut other = with_a_spot();
    let at_ms = cast_eight_times(&mut other, false);
    assert_eq!(never, reading(&mut other, at_ms).advice);
}
