//! The app on a real store, tap by tap.

mod bench;
mod book;
mod clock_steps;
mod files;
mod mend;
mod watch;

use super::*;
use proptest::prelude::*;
use restwater_log::{Reach, Spot};
use restwater_screen::{AdviceTone, BankState, BankView, Key, MatchTap, SwimKey};
use restwater_session::EndCause;
use restwater_swim::Step;
use tempfile::TempDir;

mod match_day;
mod swim_pick;
mod swim_screen;

/// Counts up: ids differ and the same taps give the same log.
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
        let mut phone = Self { dir: TempDir::new().unwrap(), app: None, boots: 0, opens: 0 };
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

    fn tap(&mut self, ms: i64, action: &Action) -> Result<Update, AppError> {
        let moment = Moment { boot: format!("boot-{}", self.boots), ..at(ms) };
        self.app().act(action, &moment)
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

fn started() -> Phone {
    let mut phone = Phone::new();
    phone.tap(-5_000, &Action::ChooseSetup { field: "water".into(), value: "Mill pool".into() }).unwrap();
    phone.tap(0, &START).unwrap();
    phone
}

#[test]
fn one_tap_is_one_op_and_the_clock_runs_from_it() {
    let mut phone = started();
    let update = phone.tap(MIN, &CAST).unwrap();
    assert!(update.changed);
    assert_eq!(update.undo_label.as_deref(), Some("cast 22:14"));
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
fn a_second_tap_within_the_rule_is_ignored_and_seen_to_be() {
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
fn restart_and_reboot_keep_the_running_wait() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.open();
    assert_eq!(phone.bank(11 * MIN).rods[0].digits, "10:00");
    phone.boots = 1;
    phone.open();
    let bank = phone.bank(16 * MIN);
    assert_eq!(bank.rods[0].digits, "15:00");
    assert!(bank.rods[0].approximate, "measured by the wall clock after a reboot");
}

#[test]
fn a_wall_clock_moved_meanwhile_does_not_move_the_wait() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    let moved = Moment { wall_ms: at(0).wall_ms - 120 * MIN, ..at(11 * MIN) };
    let Screen::Bank(bank) = phone.app().screen(Which::Bank, &moved).unwrap() else { panic!() };
    assert_eq!(bank.rods[0].digits, "10:00");
    assert!(bank.rods[0].approximate);
}

#[test]
fn undo_has_no_limit_and_survives_a_restart() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(15 * MIN, &BITE).unwrap();
    phone.tap(16 * MIN, &LANDED).unwrap();
    phone.open();
    for (i, label) in [(0, Some("bite 22:28")), (1, Some("cast 22:14")), (2, Some("start 22:13"))] {
        assert_eq!(phone.tap((20 + i) * MIN, &Action::Undo).unwrap().undo_label.as_deref(), label);
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
fn undo_walks_back_into_the_session_before() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(9 * MIN, &Action::EndSession).unwrap();
    phone.tap(60 * MIN, &START).unwrap();
    let first = phone.tap(61 * MIN, &Action::Undo).unwrap();
    assert_eq!(first.undo_label.as_deref(), Some("end 22:22"));
    phone.tap(62 * MIN, &Action::Undo).unwrap();
    assert!(phone.app().session().unwrap().is_open());
    assert!(matches!(phone.bank(63 * MIN).state, BankState::Out));
}

#[test]
fn a_day_taken_up_again_is_not_an_earlier_one_too() {
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
fn the_last_time_goes_back_but_not_beyond_the_entry_before() {
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
    let choose =
        |field: &str, value: &str| Action::Choose { rod: 1, field: field.into(), value: value.into() };
    phone.tap(1_000, &choose("bait", "bread")).unwrap();
    phone.tap(2_000, &choose("popup", "457")).unwrap();
    phone.tap(3_000, &choose("bearing", "-1250")).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    let bank = phone.bank(2 * MIN);
    assert_eq!(bank.rig, "bread, 18 in pop-up");
    assert_eq!(bank.spot, "12.5° left, 9.5 wraps of 12 ft, 34.7 m, clipped up");
    let refused = phone.tap(3 * MIN, &choose("hook", "many")).unwrap_err();
    assert_eq!(refused.kind(), ErrorKind::BadInput);
    assert_eq!(phone.app().message(&refused), "\"many\" is no value for hook. Pick one of the choices.");
}

#[test]
fn hand_scheme_and_set_up_outlive_a_restart() {
    let mut phone = Phone::new();
    phone.tap(0, &Action::Set { hand: Some(Hand::Left), scheme: Some(Scheme::Night) }).unwrap();
    phone.tap(1_000, &Action::ChooseSetup { field: "peg".into(), value: "22".into() }).unwrap();
    phone.tap(2_000, &Action::ChooseSetup { field: "rods".into(), value: "2".into() }).unwrap();
    phone.open();
    assert_eq!(phone.app().settings(), Settings { hand: Hand::Left, scheme: Scheme::Night });
    phone.tap(MIN, &START).unwrap();
    let bank = phone.bank(2 * MIN);
    assert_eq!((bank.header.place.as_str(), bank.rods.len()), ("Peg 22", 2));
}

/// Invented day: bites at about a quarter of an hour, winding in at twenty minutes without one.
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
fn before_three_bites_it_cannot_tell_and_after_them_it_says_when() {
    let (mut phone, now) = with_bites(2);
    let early = phone.bank(now + 5 * MIN).advice;
    assert_eq!((early.headline.as_str(), early.tone), ("Can't tell yet.", AdviceTone::Unknown));
    let (mut phone, now) = with_bites(4);
    let hold = phone.bank(now + 5 * MIN).advice;
    assert!(hold.headline.starts_with("Hold until 1"), "{}", hold.headline);
    assert_eq!(hold.tone, AdviceTone::Hold);
    assert_eq!(hold.detail, "4 bites in 8 casts; early to say.");
}

#[test]
fn what_was_learned_last_time_speaks_today() {
    let (mut phone, now) = with_bites(8);
    phone.tap(now + 20 * MIN, &Action::EndSession).unwrap();
    phone.open();
    phone.tap(now + 1_000 * MIN, &START).unwrap();
    phone.tap(now + 1_001 * MIN, &CAST).unwrap();
    let today = phone.bank(now + 1_003 * MIN);
    assert!(today.advice.headline.starts_with("Hold until 1"), "{}", today.advice.headline);
    assert_eq!(today.advice.detail, "No cast has ended yet; early to say.");
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

#[test]
fn water_is_kept_back_released_and_the_past_replayed() {
    let mut phone = started();
    phone.tap(MIN, &Action::KeepBack).unwrap();
    assert!(phone.app().session().unwrap().kept_back[0].released.is_none());
    phone.tap(30 * MIN, &Action::Replay { steps_back: 99 }).unwrap();
    let Screen::Swim(past) = phone.app().screen(Which::Swim, &at(30 * MIN)).unwrap() else { panic!() };
    assert_eq!((past.steps_back, past.replay.as_str()), (3, "As it was at 22:13"));
    assert!(
        past.keys.iter().all(|k| k.key != SwimKey::CastHere || !k.enabled),
        "the past can't be cast into"
    );
    phone.tap(31 * MIN, &Action::Replay { steps_back: 0 }).unwrap();
    let glass =
        FanGlass { width_px: 1_000.0, height_px: 1_000.0, px_per_mm: 16.0, text_scale: 1.0, small: false };
    let scene = phone.app().swim_scene(&at(31 * MIN), &glass).unwrap();
    assert!(scene.line_role.contains(&restwater_swim::LineRole::KeptBack));
    // The ring goes straight out to the edge by a tap, then in by two steps: onto the water kept back.
    assert!(phone.app().swim_tap(&at(31 * MIN), &glass, 500.0, 197.0).unwrap());
    assert!(matches!(phone.tap(32 * MIN, &Action::Release), Err(AppError::NoCell)), "nothing is kept there");
    phone.tap(33 * MIN, &Action::StepAim { step: Step::In }).unwrap();
    phone.tap(34 * MIN, &Action::StepAim { step: Step::In }).unwrap();
    phone.tap(35 * MIN, &Action::Release).unwrap();
    assert!(phone.app().session().unwrap().kept_back[0].released.is_some());
}

#[test]
fn a_spot_no_cast_can_lie_on_is_refused() {
    let mut phone = started();
    let far =
        Spot { mark: None, bearing_cdeg: 0, reach: Reach::Yards { hundredths: 100_000 }, clipped: false };
    let refused = phone.tap(1_000, &Action::SetSpot { rod: 1, spot: far }).unwrap_err();
    assert_eq!(refused.kind(), ErrorKind::BadInput);
    let zero = Action::ChooseSwim { field: "rest".into(), value: "0".into() };
    assert_eq!(phone.tap(2_000, &zero).unwrap_err().kind(), ErrorKind::BadInput);
    assert_eq!(phone.app().ops().len(), 1);
}

fn any_action() -> impl Strategy<Value = Action> {
    let rod = 0..4_u8;
    prop_oneof![
        1 => Just(START),
        1 => Just(Action::EndSession),
        6 => rod.clone().prop_map(|rod| Action::Cast { rod }),
        5 => rod.clone().prop_map(|rod| Action::Bite { rod }),
        4 => rod.clone().prop_map(|rod| Action::Landed { rod, fish: None }),
        2 => rod.clone().prop_map(|rod| Action::Lost { rod }),
        2 => rod.clone().prop_map(|rod| Action::Missed { rod }),
        3 => rod.clone().prop_map(|rod| Action::WoundIn { rod }),
        1 => rod.clone().prop_map(|rod| Action::Liner { rod }),
        1 => rod.clone().prop_map(|rod| Action::Twitch { rod }),
        2 => (0..700_u32).prop_map(|minutes| Action::TimeBack { minutes }),
        1 => (rod.clone(), "[a-z]{0,6}", "[ -~]{0,8}").prop_map(|(rod, field, value)| Action::Choose { rod, field, value }),
        1 => rod.prop_map(|rod| Action::ChooseRod { rod }),
        1 => "\\PC{0,20}".prop_map(|text| Action::Note { text }),
        6 => match_day::any_match_tap(),
        2 => (prop::sample::select(vec!["tied", "taken_out", "wanted", "cut", "cut_all", "tie_all", "length", "spool_add", "splash", "bottom", "calibrate", "lift", "rung", "shot"]), prop::sample::select(vec!["", "1", "3", "-2", "4572", "4572 2", "x"]))
            .prop_map(|(field, value)| Action::ChooseBench { field: field.into(), value: value.into() }),
        1 => (prop::sample::select(vec!["water", "air", "wind", "skip", "again"]), prop::sample::select(vec!["50", "-900", "calm", "water", ""]))
            .prop_map(|(field, value)| Action::ChooseConditions { field: field.into(), value: value.into() }),
        1 => (prop::sample::select(vec!["seen", "region"]), prop::sample::select(vec!["all", "wales", "x"]))
            .prop_map(|(field, value)| Action::ChooseCautions { field: field.into(), value: value.into() }),
        1 => (prop::sample::select(vec!["note", "plan", "open", "lat", "season", "a_water", "close", "keep_place"]), prop::sample::select(vec!["", "dec-feb", "520000000", "-"]))
            .prop_map(|(field, value)| Action::ChooseBook { field: field.into(), value: value.into() }),
        1 => (prop::sample::select(vec!["copy", "draw", "pack"]), prop::sample::select(vec!["last", "7", "\"Mat\"", "none", "x"]))
            .prop_map(|(field, value)| Action::ChooseSetup { field: field.into(), value: value.into() }),
        1 => (0..4_u8).prop_map(|rod| Action::HooklengthLost { rod }),
        1 => Just(Action::KeepBack),
        1 => Just(Action::CastHere),
        1 => Just(Action::Release),
        3 => Just(Action::Undo),
        2 => Just(Action::Redo),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    /// No sequence of taps panics; a refusal leaves the log as it was; a restart shows the same screen.
    #[test]
    fn any_taps_leave_a_log_that_reopens_the_same(steps in proptest::collection::vec((any_action(), 0..600_000_i64), 1..40)) {
        let mut phone = started();
        let mut now = 1_000;
        for (action, gap) in steps {
            now += gap;
            let before = phone.app().ops().to_vec();
            if phone.tap(now, &action).is_err() {
                prop_assert_eq!(phone.app().ops(), before.as_slice());
            }
        }
        phone.tap(now + 1_000, &Action::ChooseRod { rod: 1 }).ok();
        let shown = phone.bank(now + 10_000);
        // The fish that is meant and the figure being stepped are no entries: they go with the app.
        phone.tap(now + 9_000, &Action::Match { tap: MatchTap::Fish { back: 0 } }).ok();
        let nets = phone.app().screen(Which::Match, &at(now + 10_000)).unwrap();
        let learned = screens(&mut phone, now + 10_000);
        phone.open();
        prop_assert_eq!(phone.bank(now + 10_000), shown);
        prop_assert_eq!(screens(&mut phone, now + 10_000), learned);
        let Screen::Match(after) = phone.app().screen(Which::Match, &at(now + 10_000)).unwrap() else { panic!() };
        let Screen::Match(before) = nets else { panic!() };
        prop_assert_eq!((before.nets, before.coming, before.rows), (after.nets, after.coming, after.rows));
    }
}

fn screens(phone: &mut Phone, ms: i64) -> (restwater_screen::WaitsView, restwater_screen::ChangesView) {
    let waits = match phone.app().screen(Which::Waits, &at(ms)).unwrap() {
        Screen::Waits(waits) => waits,
        other => panic!("{other:?}"),
    };
    match phone.app().screen(Which::Changes, &at(ms)).unwrap() {
        Screen::Changes(changes) => (waits, changes),
        other => panic!("{other:?}"),
    }
}

#[test]
fn waits_and_changes_are_there_before_the_first_session() {
    let mut phone = Phone::new();
    let (waits, changes) = screens(&mut phone, 0);
    assert!(waits.charts.is_empty() && waits.counts.starts_with("Start a session"));
    assert!(changes.changes.is_empty() && changes.says.starts_with("Start a session"));
}

#[test]
fn which_casts_count_is_kept_until_it_is_changed() {
    let (mut phone, now) = with_bites(4);
    let choose = |field: &str, value: &str| Action::ChooseCasts { field: field.into(), value: value.into() };
    let update = phone.tap(now + 1_000, &choose("left", "120")).unwrap();
    assert!(!update.changed, "a way of looking is no entry");
    let (waits, _) = screens(&mut phone, now + 2_000);
    assert_eq!(waits.counts, "4 bites in 8 casts, 137 min in the water.");
    assert_eq!(waits.forecast.map(|f| f.left.value), Some("120 min".into()));
    phone.tap(now + 3_000, &choose("rod", "2")).unwrap();
    let (waits, _) = screens(&mut phone, now + 4_000);
    assert_eq!(waits.counts, "No bites in 0 casts, 0 min in the water.");
    let refused = phone.tap(now + 5_000, &choose("left", "soon")).unwrap_err();
    assert_eq!(phone.app().message(&refused), "\"soon\" is no value for left. Pick one of the choices.");
}

#[test]
fn earlier_sessions_stand_beside_today() {
    let (mut phone, now) = with_bites(6);
    phone.tap(now + 20 * MIN, &Action::EndSession).unwrap();
    phone.tap(now + 1_000 * MIN, &START).unwrap();
    phone.tap(now + 1_001 * MIN, &CAST).unwrap();
    phone.tap(now + 1_020 * MIN, &WOUND_IN).unwrap();
    let (waits, _) = screens(&mut phone, now + 1_021 * MIN);
    let earlier = waits.charts.iter().find(|c| c.kind == restwater_screen::ChartKind::Earlier).unwrap();
    assert!(
        earlier.notes[0].starts_with("This session: no bites in 1 cast. Earlier: 6 in 13"),
        "{:?}",
        earlier.notes
    );
}

#[test]
fn a_test_is_started_set_up_and_ended_by_taps() {
    let mut phone = started();
    let colour = |value: &str| Action::Choose { rod: 1, field: "colour".into(), value: value.into() };
    let mut now = MIN;
    for value in ["white", "white", "pink"] {
        phone.tap(now, &colour(value)).unwrap();
        phone.tap(now + 1_000, &CAST).unwrap();
        phone.tap(now + 10 * MIN, &WOUND_IN).unwrap();
        now += 12 * MIN;
    }
    let (_, changes) = screens(&mut phone, now);
    let key = changes.changes[0].start.clone().unwrap();
    let start = Action::StartAlternation { factor: key.factor, a: key.a, b: key.b };
    phone.tap(now, &start).unwrap();
    let (_, changes) = screens(&mut phone, now);
    assert_eq!(changes.test.as_ref().map(|t| t.says.as_str()), Some("Next on rod 1: white."));
    assert!(changes.test.is_some_and(|t| t.steps.len() >= 8));
    let set = phone.tap(now + 1_000, &Action::SetNextStep).unwrap();
    assert_eq!(set.undo_label.as_deref().map(|l| l.starts_with("rig")), Some(true));
    assert_eq!(phone.app().session().unwrap().rods[0].rig.colour.as_deref(), Some("white"));
    phone.tap(now + 2_000, &Action::EndAlternation).unwrap();
    assert!(screens(&mut phone, now + 3_000).1.test.is_none());
    let refused = phone.tap(now + 4_000, &Action::EndAlternation).unwrap_err();
    assert_eq!(phone.app().message(&refused), "No test runs. Start one from a change under Did it matter?");
    phone.tap(now + 5_000, &Action::Undo).unwrap();
    phone.open();
    assert!(screens(&mut phone, now + 6_000).1.test.is_some(), "undo brings it back, over a restart");
    let never =
        Action::StartAlternation { factor: restwater_compare::Factor::Bait, a: "x".into(), b: "y".into() };
    assert_eq!(phone.tap(now + 7_000, &never).unwrap_err().kind(), ErrorKind::BadInput);
}
