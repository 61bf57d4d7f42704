//! The app on a real store, tap by tap.

mod advice;
mod aim;
mod all_out;
mod any_choice;
mod any_tap;
mod at_a_glance;
mod away;
mod bench;
mod book;
mod book_reading;
mod book_sets;
mod casts_left;
mod clock_steps;
mod club;
mod day_card;
mod emptied;
mod every_error;
mod feed;
mod few_bites;
mod files;
mod fish;
mod habit;
mod hazards;
mod kept;
mod language;
mod late;
mod late_doubts;
mod late_start;
mod learning;
mod left_open;
mod left_screens;
mod mend;
mod nets;
mod new_process;
mod phone_screen;
mod plan;
mod plan_days;
mod plan_used;
mod put_away;
mod questions;
mod rods;
mod said_again;
mod salvaged;
mod seams;
mod second_thoughts;
mod section;
mod seen;
mod sent;
mod settling;
mod setup_again;
mod spots;
mod spots_elsewhere;
mod spots_kept;
mod spots_now;
mod taken_back;
mod times_put_right;
mod two_phones;
mod undone_twice;
mod waits_spot;
mod watch;
mod weighed_in;
mod what_leaves;
mod whose;
mod words;

use super::*;
use proptest::prelude::*;
use restwater_compare::FactorValue;
use restwater_log::{Payload, Reach, Spot};
use restwater_screen::{
    AdviceTone, BankState, BankView, BenchTap, Key, SetupTap, SwimKey, SwimTap, TackleTap, TypedInto,
    WaitsTap,
};
use restwater_session::EndCause;
use restwater_swim::Step;
use tempfile::TempDir;

mod match_day;
mod match_figures;
mod match_hours;
mod match_rules;
mod match_words;
mod swim_files;
mod swim_known;
mod swim_pick;
mod swim_reach;
mod swim_says;
mod swim_screen;

/// Counts up, so that ids differ and the same taps give the same log.
struct Counting(u64);

impl Entropy for Counting {
    fn fill(&mut self, bytes: &mut [u8]) {
        self.0 += 1;
        bytes.fill(0);
        let n = bytes.len();
        bytes[n - 8..].copy_from_slice(&self.0.to_be_bytes());
    }
}

struct Phone {
    dir: TempDir,
    app: Option<App>,
    boots: u32,
    opens: u64,
}

fn at(ms: i64) -> Moment {
    Moment {
        wall_ms: 1_700_000_000_000 + ms,
        offset_min: 0,
        zone: "Etc/UTC".into(),
        mono_ms: 50_000 + ms,
        boot: "boot-0".into(),
        approx_s: 0,
    }
}

const MIN: i64 = 60_000;

impl Phone {
    fn new() -> Self {
        Self::with_ids_from(0)
    }

    /// A phone whose ids, including its own, start elsewhere, so that it is another device.
    fn with_ids_from(opens: u64) -> Self {
        let mut phone = Self { dir: TempDir::new().unwrap(), app: None, boots: 0, opens };
        phone.open();
        phone
    }

    fn open(&mut self) {
        self.opens += 1;
        drop(self.app.take());
        let entropy = Box::new(Counting(self.opens * 1_000_000));
        self.app = Some(App::open(self.dir.path(), entropy, &at(0)).unwrap());
    }

    fn app(&mut self) -> &mut App {
        self.app.as_mut().unwrap()
    }

    /// What UNDO would undo next, in words.
    fn undoes(&mut self) -> Option<String> {
        let app = self.app();
        app.journal.recent().undo().map(|entry| restwater_screen::entry_words(app.words, entry))
    }

    fn tap(&mut self, ms: i64, action: &Action) -> Result<Update, AppError> {
        let moment = Moment { boot: format!("boot-{}", self.boots), ..at(ms) };
        self.app().act(action, &moment)
    }

    /// The angler looks at what has come up: what follows is not an accidental second tap, even in the same moment.
    fn look(&mut self) {
        self.app().last_tap = None;
    }

    fn bank(&mut self, ms: i64) -> BankView {
        let moment = Moment { boot: format!("boot-{}", self.boots), ..at(ms) };
        match self.app().screen(Which::Bank, &moment).unwrap() {
            Screen::Bank(bank) => bank,
            other => panic!("{other:?}"),
        }
    }
}

const START: Action = Action::StartSession { setup: None };
const CAST: Action = Action::Cast { rod: 1 };
const BITE: Action = Action::Bite { rod: 1 };
const WOUND_IN: Action = Action::WoundIn { rod: 1 };
const LANDED: Action = Action::Landed { rod: 1, fish: None };

fn typed(into: TypedInto, text: &str) -> Action {
    Action::Typed { into, text: text.into() }
}

fn tackle(tap: TackleTap) -> Action {
    Action::Tackle { rod: 1, tap }
}

fn started() -> Phone {
    let mut phone = Phone::new();
    phone.tap(-5_000, &typed(TypedInto::Water, "Mill pool")).unwrap();
    phone.tap(0, &START).unwrap();
    phone.look();
    phone
}

#[test]
fn one_tap_is_one_op_and_the_clock_starts_with_it() {
    let mut phone = started();
    let update = phone.tap(MIN, &CAST).unwrap();
    assert!(update.changed);
    assert_eq!(phone.undoes().as_deref(), Some("cast 22:14"));
    assert_eq!(phone.app().ops().len(), 2);
    let bank = phone.bank(MIN + 1_300_000);
    assert_eq!((bank.state, bank.rods[0].digits.as_str()), (BankState::Out, "21:40"));
    assert_eq!(bank.rods[0].since, "out since 22:14");
}

#[test]
fn a_refused_tap_changes_nothing_and_says_what_to_do() {
    let mut phone = Phone::new();
    let refused = phone.tap(0, &CAST).unwrap_err();
    assert_eq!(refused.kind(), ErrorKind::NotNow);
    assert_eq!(phone.app().message(&refused), "No session is open. Start one first.");
    phone.tap(MIN, &START).unwrap();
    let refused = phone.tap(2 * MIN, &LANDED).unwrap_err();
    assert_eq!(phone.app().message(&refused), "No fish is on rod 1. Tap BITE first.");
    assert_eq!(phone.app().ops().len(), 1);
    let refused = phone.tap(3 * MIN, &Action::Cast { rod: 3 }).unwrap_err();
    assert_eq!(phone.app().message(&refused), "There is no rod 3. This session has 1.");
}

#[test]
fn an_accidental_second_tap_is_ignored_and_the_angler_sees_that_it_was() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    let second = phone.tap(MIN + 650, &CAST).unwrap();
    assert!(second.repeated && !second.changed);
    assert_eq!(second.notice, "Second tap ignored.");
    assert_eq!(phone.app().session().unwrap().casts.len(), 1);
    phone.tap(MIN + 701, &CAST).unwrap();
    assert_eq!(phone.app().session().unwrap().casts.len(), 2);
}

#[test]
fn a_restart_and_a_reboot_keep_the_running_wait() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.open();
    assert_eq!(phone.bank(11 * MIN).rods[0].digits, "10:00");
    phone.boots = 1;
    phone.open();
    let bank = phone.bank(16 * MIN);
    assert_eq!(bank.rods[0].digits, "15:00");
    assert_eq!(bank.rods[0].since, "out since about 22:14", "measured by the wall clock after a reboot");
}

#[test]
fn moving_the_wall_clock_does_not_change_the_running_wait() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    let moved = Moment { wall_ms: at(0).wall_ms - 120 * MIN, ..at(11 * MIN) };
    let Screen::Bank(bank) = phone.app().screen(Which::Bank, &moved).unwrap() else { panic!() };
    assert_eq!(bank.rods[0].digits, "10:00");
    assert_eq!(bank.rods[0].since, "out since about 22:14");
}

#[test]
fn undo_has_no_limit_and_survives_a_restart() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(15 * MIN, &BITE).unwrap();
    phone.tap(16 * MIN, &LANDED).unwrap();
    phone.open();
    for (i, label) in [(0, Some("bite 22:28")), (1, Some("cast 22:14")), (2, Some("start 22:13"))] {
        phone.tap((20 + i) * MIN, &Action::Undo).unwrap();
        assert_eq!(phone.undoes().as_deref(), label);
    }
    phone.tap(24 * MIN, &Action::Undo).unwrap();
    assert!(phone.app().session().is_none());
    assert!(matches!(phone.tap(25 * MIN, &Action::Undo), Err(AppError::NothingToUndo)));
    phone.open();
    for i in 0..4 {
        phone.tap((30 + i) * MIN, &Action::Redo).unwrap();
    }
    let end = phone.app().session().unwrap().casts[0].end.clone().unwrap();
    assert_eq!(end.cause, EndCause::Landed { fish: None });
    assert!(matches!(phone.tap(40 * MIN, &Action::Redo), Err(AppError::NothingToRedo)));
}

#[test]
fn undo_goes_back_into_the_previous_session() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(9 * MIN, &Action::EndSession).unwrap();
    phone.tap(60 * MIN, &START).unwrap();
    phone.tap(61 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.undoes().as_deref(), Some("end 22:22"));
    phone.tap(62 * MIN, &Action::Undo).unwrap();
    assert!(phone.app().session().unwrap().is_open());
    assert!(matches!(phone.bank(63 * MIN).state, BankState::Out));
}

#[test]
fn a_session_that_is_resumed_does_not_also_count_as_an_earlier_one() {
    let (mut phone, now) = with_bites(4);
    phone.tap(now + 20 * MIN, &Action::EndSession).unwrap();
    phone.tap(now + 60 * MIN, &START).unwrap();
    for undo in 61..63 {
        phone.tap(now + undo * MIN, &Action::Undo).unwrap();
        let shown = phone.bank(now + undo * MIN);
        phone.open();
        assert_eq!(phone.bank(now + undo * MIN), shown);
    }
    phone.tap(now + 63 * MIN, &Action::Redo).unwrap();
    phone.tap(now + 64 * MIN, &Action::Redo).unwrap();
    let shown = phone.bank(now + 65 * MIN);
    phone.open();
    assert_eq!(phone.bank(now + 65 * MIN), shown);
}

#[test]
fn the_last_time_can_be_set_back_but_not_beyond_the_previous_entry() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(10 * MIN, &BITE).unwrap();
    phone.tap(11 * MIN, &Action::TimeBack { minutes: 1 }).unwrap();
    phone.tap(12 * MIN, &Action::TimeBack { minutes: 5 }).unwrap();
    let wait = |phone: &mut Phone| {
        let session = phone.app().session().unwrap();
        restwater_session::waits_of(session)[0].minutes()
    };
    assert_eq!(wait(&mut phone), 3.0);
    let refused = phone.tap(13 * MIN, &Action::TimeBack { minutes: 5 }).unwrap_err();
    assert_eq!(
        phone.app().message(&refused),
        "That would put it before the entry at 22:14. Undo that one first, or set back less."
    );
    phone.tap(14 * MIN, &Action::Undo).unwrap();
    assert_eq!(wait(&mut phone), 8.0);
}

#[test]
fn a_choice_changes_one_thing_and_the_rest_carries_over() {
    let mut phone = started();
    phone.tap(1_000, &tackle(TackleTap::Bait { name: "bread".into() })).unwrap();
    phone.tap(2_000, &tackle(TackleTap::PopUp { mm: 457 })).unwrap();
    phone.tap(3_000, &tackle(TackleTap::Bearing { cdeg: -1_250 })).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    let bank = phone.bank(2 * MIN);
    assert_eq!(bank.rig, "bread, 18 in pop-up");
    assert_eq!(bank.spot, "13° left, 9.5 wraps of 12 ft (34.7 m), clipped up");
    let refused = phone.tap(3 * MIN, &tackle(TackleTap::HookSize { size: 99 })).unwrap_err();
    assert_eq!(refused.kind(), ErrorKind::BadInput);
    assert_eq!(phone.app().message(&refused), "\"99\" can't be used here. Pick one of the choices.");
}

#[test]
fn hand_scheme_and_set_up_survive_a_restart() {
    let mut phone = Phone::new();
    phone.tap(0, &Action::Set { hand: Some(Hand::Left), scheme: Some(Scheme::Night) }).unwrap();
    phone.tap(1_000, &typed(TypedInto::Peg, "22")).unwrap();
    phone.tap(2_000, &Action::Setup { tap: SetupTap::Rods { rods: 2 } }).unwrap();
    phone.open();
    assert_eq!(phone.app().settings(&at(0)), Settings { hand: Hand::Left, scheme: Scheme::Night });
    phone.tap(MIN, &START).unwrap();
    let bank = phone.bank(2 * MIN);
    assert_eq!((bank.header.place.as_str(), bank.rods.len()), ("Peg\u{a0}22", 2));
}

/// An invented day: bites come after about a quarter of an hour, other casts are wound in at twenty minutes.
fn with_bites(bites: usize) -> (Phone, i64) {
    let mut phone = started();
    let mut now = MIN;
    for i in 0..bites {
        phone.tap(now, &CAST).unwrap();
        now += 20 * MIN;
        phone.tap(now, &WOUND_IN).unwrap();
        now += 2 * MIN;
        phone.tap(now, &CAST).unwrap();
        now += 14 * MIN + i64::try_from(i).unwrap() * 10_000;
        phone.tap(now, &BITE).unwrap();
        now += MIN;
        phone.tap(now, &LANDED).unwrap();
        now += 3 * MIN;
    }
    phone.tap(now, &CAST).unwrap();
    (phone, now)
}

#[test]
fn before_three_bites_the_bank_cannot_tell_and_after_them_it_gives_a_time() {
    let (mut phone, now) = with_bites(2);
    let early = phone.bank(now + 5 * MIN).advice;
    assert_eq!(early.tone, AdviceTone::Unknown);
    assert!(
        early.headline.starts_with("Can't tell yet. Try ") && early.headline.ends_with(" min."),
        "{}",
        early.headline
    );
    let (mut phone, now) = with_bites(4);
    let hold = phone.bank(now + 5 * MIN).advice;
    assert!(hold.headline.starts_with("Try about 1"), "{}", hold.headline);
    assert_eq!(hold.tone, AdviceTone::Hold);
    assert_eq!(hold.detail, "4 bites in 8 casts so far.");
}

#[test]
fn the_previous_session_counts_in_todays_advice() {
    let (mut phone, now) = with_bites(8);
    phone.tap(now + 20 * MIN, &Action::EndSession).unwrap();
    phone.open();
    phone.tap(now + 1_000 * MIN, &START).unwrap();
    phone.tap(now + 1_001 * MIN, &CAST).unwrap();
    let today = phone.bank(now + 1_003 * MIN);
    assert!(today.advice.headline.starts_with("Hold until 1"), "{}", today.advice.headline);
    assert_eq!(today.advice.detail, "No cast has ended yet. 1 earlier session of yours counts too.");
    let longer = " min is longer than the bites suggest: to find out what comes later.";
    assert!(today.advice.more.iter().any(|more| more.ends_with(longer)), "{:?}", today.advice.more);
    let mut fresh = started();
    fresh.tap(MIN, &CAST).unwrap();
    assert_eq!(fresh.bank(3 * MIN).strip.hold_min, None, "no band before the record tells anything");
}

#[test]
fn the_keys_follow_the_state() {
    let mut phone = started();
    let keys = |phone: &mut Phone, ms| {
        let bank = phone.bank(ms);
        bank.keys.iter().filter(|k| k.enabled).map(|k| k.key).collect::<Vec<_>>()
    };
    assert!(!keys(&mut phone, 0).contains(&Key::Bite));
    phone.tap(MIN, &CAST).unwrap();
    assert!(keys(&mut phone, MIN).contains(&Key::Bite));
    phone.tap(2 * MIN, &BITE).unwrap();
    let fish_on = keys(&mut phone, 2 * MIN);
    assert!(fish_on.contains(&Key::Landed) && !fish_on.contains(&Key::Cast));
}

#[test]
fn a_spot_is_picked_by_steps_and_cast_to() {
    let mut phone = started();
    phone.tap(1_000, &Action::SetMark { name: "Gate".into(), bearing_cdeg: 300 }).unwrap();
    phone.tap(2_000, &Action::StepAim { step: Step::Out }).unwrap();
    let Screen::Swim(before) = phone.app().screen(Which::Swim, &at(3_000)).unwrap() else { panic!() };
    assert!(before.keys.iter().any(|k| k.key == SwimKey::CastHere && k.enabled));
    phone.tap(4_000, &Action::CastHere).unwrap();
    let spot = phone.app().session().unwrap().rods[0].spot.clone().unwrap();
    let words = screen::spot_words(&Wording::new(), phone.app().session().unwrap(), Some(&spot));
    assert!(
        before.headline.ends_with(words.trim_end_matches(", clipped up")),
        "{} / {words}",
        before.headline
    );
}
