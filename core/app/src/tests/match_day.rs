//! A match, tap by tap.

use super::*;
use restwater_log::{FishWeight, OtherPeg, Side, WeightUnit};
use restwater_match_day::{rules::OverLimit, weight::Weight};
use restwater_screen::{
    FishTap, FishView, MatchPhase, MatchTap, MatchView, NetWarning, RuleTap, Signal, UsualClass, WeightView,
};
use restwater_session::{MatchSetup, catch};

pub(super) fn tap(tap: MatchTap) -> Action {
    Action::Match { tap }
}

fn fish(tap: FishTap) -> Action {
    Action::Fish { cast: None, tap }
}

fn rule(rule: RuleTap) -> Action {
    tap(MatchTap::Rule { rule })
}

fn limit(net: &str, limit: Weight) -> RuleTap {
    RuleTap::Limit { net: net.into(), limit: Some(limit) }
}

fn class(name: &str) -> Action {
    fish(FishTap::Class { name: name.into() })
}

pub(super) fn weight(count: i64) -> Action {
    fish(FishTap::Weight { unit: WeightUnit::Drams, count, guessed: false })
}

pub(super) fn weighed_in(net: &str, count: i64) -> Action {
    tap(MatchTap::WeighedIn { net: net.into(), unit: WeightUnit::Drams, count })
}

impl Phone {
    pub(super) fn view(&mut self, ms: i64) -> MatchView {
        let moment = Moment { boot: format!("boot-{}", self.boots), ..at(ms) };
        match self.app().screen(Which::Match, &moment).unwrap() {
            Screen::Match(view) => view,
            other => panic!("{other:?}"),
        }
    }

    pub(super) fn fish(&mut self, ms: i64) -> FishView {
        match self.app().screen(Which::Fish, &at(ms)).unwrap() {
            Screen::Fish(view) => view,
            other => panic!("{other:?}"),
        }
    }

    pub(super) fn pad(&mut self, ms: i64) -> WeightView {
        match self.app().screen(Which::Weight, &at(ms)).unwrap() {
            Screen::Weight(view) => view,
            other => panic!("{other:?}"),
        }
    }

    /// Casts, plays and lands a fish within twelve minutes.
    pub(super) fn land(&mut self, ms: i64) {
        for (after, action) in [(0, CAST), (10 * MIN, BITE), (11 * MIN, LANDED)] {
            self.tap(ms + after, &action).unwrap();
        }
    }

    fn rules_now(&mut self) -> MatchSetup {
        self.app().session().unwrap().match_day.clone().unwrap().setup
    }
}

/// A session at 22:13, all-in at 22:30 and all-out five hours later, two nets of 30 lb.
pub(super) fn in_match() -> Phone {
    let mut phone = started();
    let limits = ["Net 1", "Net 2"].map(|net| limit(net, Weight::Drams(7_680)));
    for (i, tap) in (1..).zip([RuleTap::Begin, RuleTap::Nets { count: 2 }].into_iter().chain(limits)) {
        phone.tap(i * 2_000, &rule(tap)).unwrap();
    }
    phone
}

/// A minute after all-in.
pub(super) const FISHING: i64 = 18 * MIN;

#[test]
fn a_match_is_set_by_taps_and_its_time_is_shown_on_the_bank() {
    let mut phone = started();
    assert_eq!(phone.view(0).phase, MatchPhase::NoMatch);
    assert_eq!(phone.bank(0).header.length, "0 min since the start");
    let mut phone = in_match();
    let view = phone.view(10_000);
    assert_eq!((view.phase, view.digits.as_str()), (MatchPhase::Before, "16:30"));
    assert_eq!(phone.bank(10_000).header.length, "16 min to all-in");
    let view = phone.view(FISHING);
    assert_eq!((view.phase, view.digits.as_str()), (MatchPhase::Fishing, "4:58:40"));
    assert_eq!(view.says, "to all-out at 03:30.");
    assert_eq!(phone.bank(FISHING).header.length, "4 h 58 to all-out");
    let alarms = phone.view(FISHING).alarms;
    assert_eq!(alarms.iter().map(|a| a.minutes).collect::<Vec<_>>(), [30, 10]);
    assert_eq!(alarms[0].at_ms - at(0).wall_ms, 316 * MIN + 40_000 - 30 * MIN);
    // They ring whatever the rods do: the phone asks for them after each tap.
    let rings = phone.app().watch(&at(FISHING)).alarms;
    assert_eq!(
        rings.iter().map(|a| (a.id.as_str(), a.at_wall_ms)).collect::<Vec<_>>(),
        [("match-30", alarms[0].at_ms), ("match-10", alarms[1].at_ms),]
    );
    assert_eq!(rings[0].title, "30 min to all-out.");
}

#[test]
fn the_signal_sets_the_difference_between_the_two_clocks() {
    let mut phone = in_match();
    // All-in is due at 22:30:00 and sounds when the phone shows 22:30:40.
    let heard = 16 * MIN + 40_000 + 40_000;
    phone.tap(heard, &tap(MatchTap::Heard { signal: Signal::AllIn })).unwrap();
    assert_eq!(phone.rules_now().offset_ms, -40_000);
    let view = phone.view(heard);
    assert_eq!(view.digits, "5:00:00");
    assert_eq!(view.notes, ["The match clock is 40 s behind the phone."]);
}

#[test]
fn impossible_values_are_refused_in_words_and_change_nothing() {
    let mut phone = started();
    let refused = |phone: &mut Phone, ms, action: &Action| {
        let before = phone.app().ops().to_vec();
        let error = phone.tap(ms, action).unwrap_err();
        assert_eq!(phone.app().ops(), before.as_slice());
        phone.app().message(&error)
    };
    assert_eq!(
        refused(&mut phone, 1_000, &weighed_in("Net 1", 256)),
        "No match is set. Set all-in and all-out first, under MATCH."
    );
    let net = fish(FishTap::Net { name: "Net 1".into() });
    assert!(refused(&mut phone, 2_000, &net).starts_with("No match is set."));
    assert!(refused(&mut phone, 4_000, &class("Carp")).starts_with("No such fish is landed."));
    let mut phone = in_match();
    let mut setup = phone.rules_now();
    setup.all_out_ms = setup.all_in_ms - 60 * MIN;
    assert_eq!(
        refused(&mut phone, 20_000, &tap(MatchTap::Set { setup })),
        "All-out comes 60 min before all-in: check both times and the date."
    );
    let mut setup = phone.rules_now();
    setup.rules.nets[1].name = " net 1".into();
    assert_eq!(
        refused(&mut phone, 21_000, &tap(MatchTap::Set { setup })),
        "Two nets are called \"net 1\": give each its own name."
    );
    assert_eq!(
        refused(&mut phone, 22_000, &weight(256)),
        "No such fish is landed. Tap LANDED first, then enter its weight."
    );
    assert_eq!(
        refused(&mut phone, 23_000, &weighed_in("Net 1", 256)),
        "The match has not begun: weigh in after all-out."
    );
    phone.land(FISHING);
    let later = FISHING + 12 * MIN;
    assert_eq!(
        refused(&mut phone, later, &weight(-300)),
        "A weight can't be below 0: enter -1 lb 2 oz 12 dr again."
    );
    assert!(refused(&mut phone, later + 1_000, &weight(0)).contains("weigh the fish"));
    assert!(refused(&mut phone, later + 2_000, &weight(9_000_000)).contains("check the unit"));
    assert!(refused(&mut phone, later + 3_000, &weight(i64::MIN)).contains("below 0"));
    assert!(refused(&mut phone, later + 4_000, &class("Marlin")).contains("choose one of the classes"));
    let nowhere = fish(FishTap::Net { name: "Net 7".into() });
    assert!(refused(&mut phone, later + 5_000, &nowhere).contains("choose another"));
    assert!(refused(&mut phone, later + 6_000, &weighed_in("Net 2", 90_000_000)).contains("check the unit"));
    assert!(refused(&mut phone, later + 7_000, &fish(FishTap::Meant { back: 4 })).contains("LANDED"));
    assert!(
        refused(&mut phone, later + 8_000, &rule(RuleTap::Landing { minutes: 121 })).contains("Pick one")
    );
    assert!(refused(&mut phone, later + 9_000, &fish(FishTap::Weighed)).contains("A weight must be above 0"));
    assert!(phone.tap(later + 10_000, &tap(MatchTap::Off)).is_ok());
    assert!(refused(&mut phone, later + 11_000, &tap(MatchTap::Off)).starts_with("No match is set."));
}

#[test]
fn a_fish_is_weighed_on_the_number_pad_corrected_and_undone() {
    let mut phone = in_match();
    phone.land(FISHING);
    let mut now = FISHING + 12 * MIN;
    assert!(phone.view(now).fish_waits);
    for tap in [FishTap::Digit { digit: 2 }, FishTap::NextUnit, FishTap::Digit { digit: 1 }] {
        now += 200;
        phone.tap(now, &fish(tap)).unwrap();
    }
    assert_eq!(phone.pad(now).figure, "2 lb 1 oz");
    phone.tap(now + 1_000, &fish(FishTap::Weighed)).unwrap();
    let view = phone.view(now + 2_000);
    assert_eq!((view.nets[0].holds.as_str(), view.fish_waits), ("1 fish, 2 lb\u{a0}1 oz", false));
    assert_eq!(phone.pad(now).figure, "2 lb\u{a0}1 oz");
    phone.tap(now + 3_000, &weight(600)).unwrap();
    assert_eq!(phone.view(now + 4_000).nets[0].holds, "1 fish, 2 lb\u{a0}5 oz\u{a0}8 dr");
    phone.open();
    phone.tap(now + 5_000, &Action::Undo).unwrap();
    assert!(phone.undoes().is_some_and(|label| label.starts_with("fish")));
    assert_eq!(phone.view(now + 6_000).nets[0].holds, "1 fish, 2 lb\u{a0}1 oz");
    let fish = catch(phone.app().session().unwrap());
    assert_eq!(fish[0].weight, Some(FishWeight::Weighed { unit: WeightUnit::Drams, count: 528 }));
}

#[test]
fn class_weights_are_learned_and_nets_carry_over_and_warn() {
    let mut phone = in_match();
    let mut now = FISHING;
    for i in 0..5 {
        phone.land(now);
        phone.tap(now + 12 * MIN, &class("Carp")).unwrap();
        if i < 2 {
            phone.tap(now + 12 * MIN + 1_000, &weight(1_536)).unwrap();
        }
        now += 15 * MIN;
    }
    let view = phone.view(now);
    // Two of 6 lb against a guess of 5 lb that counts as three: 5 lb 6 oz.
    let carp = phone.fish(now).classes.into_iter().find(|k| k.label == "CARP").unwrap();
    assert!(carp.weight == restwater_screen::KeyWeight::Chosen && carp.sub == "5 lb\u{a0}6 oz", "{carp:?}");
    assert_eq!(view.nets[0].holds, "5 fish, about 28 lb");
    assert_eq!(
        (view.nets[0].warning, view.nets[0].says.as_str()),
        (NetWarning::AtLimit, "may be at the limit")
    );
    phone.tap(now, &fish(FishTap::Net { name: "Net 2".into() })).unwrap();
    let view = phone.view(now + 1_000);
    assert!(view.nets[1].in_use && view.nets[1].holds.starts_with("1 fish"));
    phone.tap(now + 2_000, &fish(FishTap::PutBack { back: true })).unwrap();
    let view = phone.view(now + 3_000);
    assert_eq!(view.nets[1].holds, "empty");
    assert_eq!(view.notes, ["1 fish was put back."]);
    phone.tap(now + 4_000, &fish(FishTap::Meant { back: 4 })).unwrap();
    assert!(phone.fish(now + 5_000).title.starts_with("Fish 1, landed 22:42"));
}

#[test]
fn the_forecast_cannot_tell_before_three_bites_and_gives_ranges_afterwards() {
    let mut phone = in_match();
    let value = |view: &MatchView, label: &str| {
        let all = view.lines.iter().chain(&view.coming);
        all.clone().find(|l| l.label.starts_with(label)).map(|l| l.value.clone()).unwrap()
    };
    let early = phone.view(FISHING);
    for label in ["Bites to come", "Weight to come", "Expected finish", "Winding in to recast"] {
        assert_eq!(value(&early, label), "can't tell yet", "{label}");
    }
    // Casts left are always shown. By hand, without any bite: the time left by the leave times in the note, each plus a
    // turn-round, guessed as 2 min, which may be twice that.
    for minute in 0..60 {
        let view = phone.view(FISHING + minute * MIN);
        let line = view.lines.iter().find(|l| l.label.starts_with("Casts left")).unwrap();
        let note =
            view.coming_figures.lines.iter().find(|note| note.contains("guessed leave times, ")).unwrap();
        let times: Vec<f64> = note.split_whitespace().filter_map(|word| word.parse().ok()).collect();
        let [leave, then] = times[..] else { panic!("{note}") };
        let left = 4.0 * 60.0 + 58.0 + 40.0 / 60.0 - minute as f64;
        // The later time is rounded to the minute, which over ten casts is up to five.
        let least = [0.6, -0.6].map(|by| 1.0 + ((left - leave - 4.0) / (then + by + 4.0)).floor());
        let told: f64 = line.value.strip_prefix("at least ").unwrap().parse().unwrap();
        assert!(least[0] <= told && told <= least[1], "{} min after all-in: {told} {least:?}", minute + 1);
    }
    let mut now = FISHING;
    for _ in 0..5 {
        phone.land(now);
        phone.tap(now + 12 * MIN, &weight(1_024)).unwrap();
        now += 15 * MIN;
    }
    let view = phone.view(now);
    assert!(value(&view, "Bites to come").contains("about"), "{:?}", view.coming);
    assert!(value(&view, "Expected finish").contains("lb"), "{:?}", view.coming);
    // 3:30 is all-out. The line says until when a cast is worth winding in for, with the reason behind it.
    let late = value(&view, "Winding in to recast");
    let time = late.strip_prefix("worth it until ").unwrap();
    assert!(time.starts_with("03:"), "{late}");
    let how = view
        .coming_figures
        .lines
        .iter()
        .find(|note| note.starts_with(&format!("After {time} (03:")))
        .unwrap();
    assert!(how.contains("less than half the chance of a full cast"), "{how}");
    let near = phone.view(312 * MIN);
    assert_eq!(value(&near, "Winding in to recast"), "a cast costs nothing until all-out");
    phone.tap(312 * MIN, &CAST).unwrap();
    assert_eq!(value(&phone.view(313 * MIN), "Winding in to recast"), "no longer worth it");
    assert_eq!(value(&view, "Light"), "can't tell: the peg has no place yet");
}

#[test]
fn the_weigh_in_is_compared_with_the_own_count_even_when_the_session_is_over() {
    let mut phone = in_match();
    phone.land(FISHING);
    phone.tap(FISHING + 12 * MIN, &weight(1_024)).unwrap();
    let over = 330 * MIN;
    assert_eq!(phone.view(over).phase, MatchPhase::Landing);
    phone.tap(over, &Action::EndSession).unwrap();
    phone.tap(over + MIN, &weighed_in("net 1", 1_032)).unwrap();
    let page = phone.view(over + 2 * MIN).weigh_in.unwrap();
    assert_eq!(page.lines[0].value, "4 lb\u{a0}0 oz\u{a0}8 dr, 8 dr over own count, within its range");
    phone.tap(over + 3 * MIN, &weighed_in("Net 1", 1_300)).unwrap();
    let page = phone.view(over + 4 * MIN).weigh_in.unwrap();
    let over = "5 lb\u{a0}1 oz\u{a0}4 dr, 1 lb\u{a0}1 oz\u{a0}4 dr over own count, outside its range";
    assert_eq!(page.lines[0].value, over);
    assert!(page.notes[0].starts_with("More than you logged"), "{:?}", page.notes);
    assert_eq!(phone.app().session().unwrap().scales[0].shown, Weight::Drams(1_300));
}

/// 23 lb 6 oz: six taps and one that confirms the figure.
#[test]
fn a_net_is_weighed_on_the_number_pad_and_undone() {
    let mut phone = in_match();
    let page = |phone: &mut Phone, ms| phone.view(ms).weigh_in.unwrap();
    let press = |phone: &mut Phone, ms, tag: &str| {
        let page = page(phone, ms);
        let key = page.pad.iter().chain([&page.weighed]).find(|key| key.tag == tag).unwrap().clone();
        assert!(key.enabled, "{tag}");
        phone.tap(ms, &tap(key.tap)).unwrap()
    };
    let before = 20_000;
    press(&mut phone, before, "digit-9");
    assert!(!page(&mut phone, before).weighed.enabled, "nothing is weighed before all-in");
    let over = 331 * MIN;
    press(&mut phone, over - 2_000, "rub-out");
    press(&mut phone, over, "next-net");
    let mut now = over + 1_000;
    for key in ["digit-2", "digit-3", "unit", "digit-6"] {
        now += 200;
        press(&mut phone, now, key);
    }
    let shown = page(&mut phone, now);
    assert_eq!((shown.title.as_str(), shown.figure.as_str()), ("Weigh-in: Net 2", "23 lb 6 oz"));
    assert_eq!((shown.weighed.label.as_str(), shown.weighed.sub.as_str()), ("23 lb\u{a0}6 oz", "Net 2"));
    assert_eq!(shown.pad.len(), 12);
    press(&mut phone, now + 1_000, "take-weight");
    assert_eq!(phone.app().session().unwrap().scales[0].shown, Weight::Drams(23 * 256 + 96));
    assert_eq!(page(&mut phone, now + 2_000).figure, "23 lb\u{a0}6 oz", "and 0 lb before it was weighed");
    phone.open();
    phone.tap(now + 3_000, &Action::Undo).unwrap();
    assert!(phone.app().session().unwrap().scales.is_empty());
}

#[test]
fn limits_keep_the_unit_in_which_they_were_given() {
    let mut phone = in_match();
    phone.tap(20_000, &rule(RuleTap::Unit { unit: WeightUnit::Grams })).unwrap();
    let setup = phone.rules_now();
    assert_eq!(setup.rules.nets[0].limit, Some(Weight::Drams(7_680)));
    assert_eq!((setup.mark, setup.classes[3].guess), (Weight::Grams(10), Weight::Grams(2_270)));
    phone.tap(22_000, &rule(limit("Net 2", Weight::Grams(15_000)))).unwrap();
    assert_eq!(phone.rules_now().rules.nets[1].limit, Some(Weight::Grams(15_000)));
}

#[test]
fn classes_and_whether_they_count_are_toggled() {
    let mut phone = in_match();
    phone.tap(20_000, &rule(RuleTap::Class { class: UsualClass::Pike })).unwrap();
    phone.tap(22_000, &rule(RuleTap::Counting { class: "Pike".into() })).unwrap();
    let setup = phone.rules_now();
    assert!(setup.class("Pike").is_some() && !setup.rules.counts("pike") && setup.rules.counts("Carp"));
    phone.tap(24_000, &rule(RuleTap::Counting { class: "Pike".into() })).unwrap();
    phone.tap(26_000, &rule(RuleTap::Class { class: UsualClass::Pike })).unwrap();
    let setup = phone.rules_now();
    assert!(setup.class("Pike").is_none() && setup.rules.counts("Pike"));
    assert_eq!(phone.view(30_000).rows.iter().filter(|r| r.tag.starts_with("guess-")).count(), 4);
}

/// Any rule of the day, sensible or not.
fn any_rule() -> impl Strategy<Value = RuleTap> {
    let weight = || {
        prop_oneof![(-100..10_000_i64).prop_map(Weight::Drams), (-100..10_000_i64).prop_map(Weight::Grams)]
    };
    let by = || prop_oneof![-100..100_i32, Just(i32::MIN)];
    let name = || proptest::sample::select(vec!["Net 1", "Net 9", "Carp", "Eel"]).prop_map(str::to_owned);
    prop_oneof![
        2 => Just(RuleTap::Begin),
        1 => by().prop_map(|minutes| RuleTap::MoveAllIn { minutes }),
        1 => by().prop_map(|minutes| RuleTap::MoveAllOut { minutes }),
        1 => by().prop_map(|seconds| RuleTap::MoveClock { seconds }),
        1 => Just(RuleTap::SameClock),
        1 => (0..12_u8).prop_map(|count| RuleTap::Nets { count }),
        1 => (name(), proptest::option::of(weight())).prop_map(|(net, limit)| RuleTap::Limit { net, limit }),
        1 => Just(RuleTap::Over { over: OverLimit::DoesNotCount }),
        1 => (0..200_u16).prop_map(|minutes| RuleTap::Landing { minutes }),
        1 => (0..2_000_u16).prop_map(|minutes| RuleTap::Alarm { minutes }),
        1 => proptest::sample::select(UsualClass::ALL.to_vec()).prop_map(|class| RuleTap::Class { class }),
        1 => name().prop_map(|class| RuleTap::Counting { class }),
        1 => (name(), weight()).prop_map(|(class, weight)| RuleTap::Guess { class, weight }),
        1 => Just(RuleTap::Unit { unit: WeightUnit::Grams }),
        1 => weight().prop_map(|mark| RuleTap::Mark { mark }),
    ]
}

fn any_net() -> impl Strategy<Value = String> {
    proptest::sample::select(vec!["Net 1", "Net 2", "Net 9"]).prop_map(str::to_owned)
}

fn any_unit() -> impl Strategy<Value = WeightUnit> {
    prop_oneof![Just(WeightUnit::Drams), Just(WeightUnit::Grams)]
}

/// Any tap about a landed fish, sensible or not.
pub(super) fn any_fish_tap() -> impl Strategy<Value = Action> {
    prop_oneof![
        1 => (0..4_u32).prop_map(|back| FishTap::Meant { back }),
        4 => (0..12_u8).prop_map(|digit| FishTap::Digit { digit }),
        2 => Just(FishTap::NextUnit),
        1 => Just(FishTap::RubOut),
        2 => Just(FishTap::Weighed),
        1 => Just(FishTap::Guessed),
        1 => Just(FishTap::NoWeight),
        2 => (any_unit(), -5..60_000_i64, any::<bool>())
            .prop_map(|(unit, count, guessed)| FishTap::Weight { unit, count, guessed }),
        2 => proptest::sample::select(vec!["Carp", "Silver", "Eel", " "]).prop_map(|n| FishTap::Class { name: n.into() }),
        1 => any_net().prop_map(|name| FishTap::Net { name }),
        1 => any::<bool>().prop_map(|back| FishTap::PutBack { back }),
    ]
    .prop_map(fish)
}

/// Any tap of the Match screen, sensible or not.
pub(super) fn any_match_tap() -> impl Strategy<Value = Action> {
    prop_oneof![
        4 => any_rule().prop_map(|rule| MatchTap::Rule { rule }),
        1 => proptest::sample::select(vec![Signal::AllIn, Signal::AllOut]).prop_map(|signal| MatchTap::Heard { signal }),
        1 => Just(MatchTap::Off),
        3 => (0..12_u8).prop_map(|digit| MatchTap::ScalesDigit { digit }),
        1 => Just(MatchTap::ScalesUnit),
        1 => Just(MatchTap::ScalesRubOut),
        1 => any_net().prop_map(|name| MatchTap::ScalesNet { name }),
        1 => Just(MatchTap::WeighIn),
        1 => (0..30_u8).prop_map(|place| MatchTap::ScalesPeg { peg: OtherPeg { side: Side::Left, place } }),
        1 => (0..25_u8).prop_map(|pegs| MatchTap::SectionSide { side: Side::Left, pegs }),
        1 => (0..30_u8, 0..3_u8).prop_map(|(left, right)| MatchTap::Section { left, right }),
        1 => (any_net(), any_unit(), 1..9_000_i64).prop_map(|(net, unit, count)| MatchTap::WeighedIn { net, unit, count }),
    ]
    .prop_map(tap)
}
