//! The bench, conditions and cautions through the app, tap by tap.

use super::*;
use restwater_bench::BenchError;
use restwater_bench::fall::FallError;
use restwater_bench::hooklength::WalletError;
use restwater_caution::table::Region;
use restwater_log::{Rig, ShotMetal, kit_of};
use restwater_screen::{CautionsTap, ConditionsTap, Leaf, LeavesView};
use restwater_session::NotNow;
use restwater_sky::conditions::{Answer, WaterColour, WindStrength};

impl Phone {
    pub(super) fn leaves(&mut self, which: Which, ms: i64) -> LeavesView {
        match self.app().screen(which, &at(ms)).unwrap() {
            Screen::Bench(view) | Screen::Book(view) | Screen::Conditions(view) | Screen::Cautions(view) => {
                view
            }
            other => panic!("{other:?}"),
        }
    }

    pub(super) fn leaf(&mut self, which: Which, ms: i64, id: &str) -> Leaf {
        let view = self.leaves(which, ms);
        view.leaves.into_iter().find(|leaf| leaf.id == id).unwrap()
    }

    pub(super) fn bench(&mut self, ms: i64, tap: BenchTap) -> Result<Update, AppError> {
        self.tap(ms, &Action::Bench { tap })
    }

    /// A wallet of six ties of 3 ft, of which two are to be carried, and four of 18 in that are to be carried.
    fn wallet(&mut self) {
        self.bench(0, BenchTap::Tied { count: 6 }).unwrap();
        self.bench(1_000, BenchTap::Wanted { count: 2 }).unwrap();
        self.bench(2_000, BenchTap::Length { tenth_mm: 4_572 }).unwrap();
        self.bench(3_000, BenchTap::Wanted { count: 5 }).unwrap();
    }
}

fn says(phone: &mut Phone, id: &str) -> String {
    phone.leaf(Which::Bench, 100_000, id).says
}

#[test]
fn an_evening_at_the_bench_needs_only_taps() {
    let mut phone = Phone::new();
    phone.wallet();
    assert_eq!(says(&mut phone, "cut-down"), "4 to cut down, 72 in cut off in all.");
    assert_eq!(says(&mut phone, "tie-up"), "1 to tie.");
    let update = phone.bench(4_000, BenchTap::CutAll).unwrap();
    assert!(update.changed);
    assert_eq!(phone.undoes().as_deref(), Some("cut down 22:13"));
    let have = |phone: &mut Phone| phone.leaf(Which::Bench, 5_000, "hooklengths").lines;
    let values: Vec<String> = have(&mut phone).into_iter().map(|line| line.value).collect();
    assert_eq!(values, ["4 tied, 5 to carry", "2 tied, 2 to carry"]);
    let spool = [
        BenchTap::AddSpool,
        BenchTap::HookKnot { tenth_mm: 600 },
        BenchTap::LoopLength { tenth_mm: 250 },
        BenchTap::Tags { tenth_mm: 100 },
    ];
    for (s, tap) in (10..).zip(spool) {
        phone.bench(s * 1_000, tap).unwrap();
    }
    let tie_up = phone.leaf(Which::Bench, 20_000, "tie-up");
    assert_eq!(tie_up.lines[0].detail, "cut 57.7 cm each", "18 in + 6 + 2 x 2.5 + 1 cm");
    phone.bench(21_000, BenchTap::TieAll).unwrap();
    assert_eq!(says(&mut phone, "tie-up"), "Nothing to tie: the wallet holds all you want to carry.");
    assert_eq!(phone.leaf(Which::Bench, 22_000, "spools").lines[0].value, "49.42 m");
    phone.tap(23_000, &Action::Undo).unwrap();
    assert_eq!(
        phone.leaf(Which::Bench, 24_000, "spools").lines[0].value,
        "50 m",
        "line and tie come back together"
    );
    phone.open();
    phone.tap(25_000, &Action::Undo).unwrap();
    phone.open();
    assert_eq!(phone.leaf(Which::Bench, 26_000, "hooklengths").lines.len(), 2, "over a restart");
}

#[test]
fn a_hooklength_lost_with_its_cast_leaves_the_wallet() {
    let mut phone = Phone::new();
    phone.bench(0, BenchTap::Tied { count: 3 }).unwrap();
    phone.tap(MIN, &START).unwrap();
    let rig = Rig { hooklength_mm: Some(914), hook_size: Some(16), ..Rig::default() };
    let lost = Action::HooklengthLost { rod: 1 };
    let refused = phone.tap(2 * MIN, &lost).unwrap_err();
    assert!(matches!(refused, AppError::NotNow(NotNow::NoCastYet(1))));
    phone.tap(3 * MIN, &Action::SetRig { rod: 1, rig }).unwrap();
    phone.tap(4 * MIN, &CAST).unwrap();
    phone.tap(5 * MIN, &WOUND_IN).unwrap();
    phone.tap(6 * MIN, &lost).unwrap();
    assert!(matches!(phone.tap(7 * MIN, &lost), Err(AppError::NotNow(NotNow::LostAlready(1)))));
    let leaf = phone.leaf(Which::Bench, 8 * MIN, "hooklengths");
    assert_eq!((leaf.lines[0].value.as_str(), leaf.notes.len()), ("2 tied", 1));
    phone.tap(9 * MIN, &Action::Undo).unwrap();
    assert_eq!(phone.leaf(Which::Bench, 10 * MIN, "hooklengths").lines[0].value, "3 tied");
}

#[test]
fn undo_goes_back_through_session_and_kit_in_the_order_of_the_taps() {
    let mut phone = Phone::new();
    phone.bench(0, BenchTap::Tied { count: 3 }).unwrap();
    phone.tap(MIN, &START).unwrap();
    phone.tap(2 * MIN, &CAST).unwrap();
    phone.tap(3 * MIN, &Action::EndSession).unwrap();
    phone.bench(4 * MIN, BenchTap::Wanted { count: 2 }).unwrap();
    phone.open();
    let labels: Vec<String> = (5..10)
        .map(|minute| {
            let label =
                phone.bank(minute * MIN).keys.iter().find(|k| k.key == Key::Undo).unwrap().sub.clone();
            phone.tap(minute * MIN, &Action::Undo).unwrap();
            label.unwrap()
        })
        .collect();
    assert_eq!(labels, ["to carry 22:17", "end 22:16", "cast 22:15", "start 22:14", "tied 22:13"]);
    assert!(matches!(phone.tap(20 * MIN, &Action::Undo), Err(AppError::NothingToUndo)));
}

#[test]
fn bad_input_is_refused_by_name_and_changes_nothing() {
    let mut phone = Phone::new();
    phone.bench(0, BenchTap::Tied { count: 2 }).unwrap();
    let refused = |phone: &mut Phone, s: i64, tap: BenchTap| match phone.bench(s * 1_000, tap) {
        Err(AppError::Bench(error)) => error,
        other => panic!("{other:?}"),
    };
    let kit = kit_of(phone.app().journal.store().device());
    let before = phone.app().journal.recent().kit(kit).to_vec();
    let cut = |tenth_mm, count| BenchTap::CutDown { tenth_mm, count };
    assert!(matches!(
        refused(&mut phone, 12, BenchTap::Tied { count: 65_000 }),
        BenchError::Wallet(WalletError::Absurd(65_002))
    ));
    assert!(matches!(
        refused(&mut phone, 13, cut(4_572, 3)),
        BenchError::Wallet(WalletError::NotThatMany { have: 2, asked: 3, .. })
    ));
    assert!(matches!(refused(&mut phone, 14, cut(9_144, 1)), BenchError::NotShorter { .. }));
    assert_eq!(refused(&mut phone, 15, BenchTap::CutAll), BenchError::NothingToCutDown);
    assert_eq!(refused(&mut phone, 16, BenchTap::Bottom), BenchError::NotFalling);
    assert_eq!(refused(&mut phone, 17, BenchTap::Calibrate), BenchError::NoFall);
    let gone = BenchTap::SpoolGone { spool: Uuid::from_u128(5) };
    assert!(matches!(refused(&mut phone, 19, gone), BenchError::NoSuchSpool));
    let out_of_range = [
        BenchTap::Length { tenth_mm: 0 },
        BenchTap::Length { tenth_mm: 100_000_001 },
        BenchTap::HookSize { size: 0 },
        BenchTap::Hair { mm: Some(101) },
        BenchTap::Lift { mg: 0 },
        BenchTap::Water { tenth_c: -1 },
        BenchTap::ShotSize { name: " ".into() },
    ];
    for tap in out_of_range {
        let error = phone.bench(30_000, tap.clone()).unwrap_err();
        assert!(error.kind() == ErrorKind::BadInput, "{tap:?}");
    }
    assert_eq!(phone.app().journal.recent().kit(kit), before.as_slice());
    let error = phone.bench(40_000, BenchTap::Lift { mg: 0 }).unwrap_err();
    assert_eq!(phone.app().message(&error), "\"0\" can't be used here. Pick one of the choices.");
}

#[test]
fn a_fall_is_timed_by_two_taps_and_a_fall_of_zero_time_is_refused() {
    let mut phone = Phone::new();
    phone.bench(0, BenchTap::Splash).unwrap();
    let refused = phone.bench(0, BenchTap::Bottom).unwrap_err();
    assert!(matches!(refused, AppError::Bench(BenchError::Fall(FallError::NoTime(_)))), "{refused:?}");
    phone.bench(3_400, BenchTap::Bottom).unwrap();
    phone.bench(5_000, BenchTap::Calibrate).unwrap();
    let fall = phone.leaf(Which::Bench, 6_000, "fall");
    // Each of the two presses may be 0.3 s early or late.
    assert_eq!(fall.says, "3.4 s: 3 m deep, between 2.1 and 4.3 m.");
    let key = |phone: &mut Phone, s: i64| {
        let fall = phone.leaf(Which::Bench, s * 1_000, "fall");
        fall.keys.into_iter().find(|key| key.label == "KEEP").unwrap().enabled
    };
    assert!(!key(&mut phone, 7), "one fall counts once");
    let again = phone.bench(8_000, BenchTap::Calibrate).unwrap_err();
    assert!(matches!(again, AppError::Bench(BenchError::FallKept)), "{again:?}");
    phone.tap(8_500, &Action::Undo).unwrap();
    assert!(key(&mut phone, 9), "after UNDO it can be kept again");
    phone.bench(9_500, BenchTap::Calibrate).unwrap();
    phone.bench(10_000, BenchTap::Splash).unwrap();
    let refused = phone.bench(500_000, BenchTap::Bottom).unwrap_err();
    assert!(matches!(refused, AppError::Bench(BenchError::Fall(FallError::TooLong(_)))));
    assert!(matches!(phone.bench(510_000, BenchTap::Bottom), Err(AppError::Bench(BenchError::NotFalling))));
}

#[test]
fn lead_is_pointed_out_where_it_is_entered_but_not_forbidden() {
    let mut phone = Phone::new();
    let caution = |phone: &mut Phone| phone.leaf(Which::Bench, 100_000, "pop-up").caution;
    assert_eq!(caution(&mut phone), "", "tungsten");
    phone.bench(0, BenchTap::Metal { metal: ShotMetal::Lead }).unwrap();
    assert!(caution(&mut phone).starts_with("Lead of this weight is not to be used in England and Wales"));
    phone.tap(1_000, &Action::Cautions { tap: CautionsTap::Region { region: Region::Scotland } }).unwrap();
    assert!(caution(&mut phone).starts_with("Rules on lead weights differ here"));
    phone.open();
    assert!(
        caution(&mut phone).starts_with("Rules on lead weights differ here"),
        "the region outlives a restart"
    );
}

#[test]
fn heights_tried_come_from_the_casts_of_all_days() {
    let mut phone = started();
    phone.tap(1_000, &tackle(TackleTap::PopUp { mm: 457 })).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(16 * MIN, &BITE).unwrap();
    phone.tap(17 * MIN, &LANDED).unwrap();
    phone.tap(18 * MIN, &Action::EndSession).unwrap();
    phone.tap(900 * MIN, &START).unwrap();
    let leaf = phone.leaf(Which::Bench, 901 * MIN, "heights");
    assert!(ranges_are_on_their_axis(&leaf) > 0);
    let rung = leaf.lines.iter().find(|line| line.label == "18 in").unwrap();
    assert_eq!(rung.value, "1 bite in 1 cast, 15 min");
    // Garwood (1936): 1 bite in a quarter of an hour, 0.0253 to 5.5716 expected.
    assert_eq!(rung.detail, "4 an hour, 0.1 to 22.3");
    phone.bench(902 * MIN, BenchTap::HeightsOf { all: false }).unwrap();
    assert!(phone.leaf(Which::Bench, 903 * MIN, "heights").says.starts_with("No height tried yet."));
}

#[test]
fn a_cast_twitched_twice_is_one_cast_of_its_height() {
    let mut phone = Phone::new();
    phone.tap(0, &Action::Setup { tap: SetupTap::TwitchRestarts { restarts: true } }).unwrap();
    phone.tap(1_000, &START).unwrap();
    phone.tap(2_000, &tackle(TackleTap::PopUp { mm: 457 })).unwrap();
    for (minute, action) in
        [(1, CAST), (6, Action::Twitch { rod: 1 }), (11, Action::Twitch { rod: 1 }), (16, BITE), (17, LANDED)]
    {
        phone.tap(minute * MIN, &action).unwrap();
    }
    let leaf = phone.leaf(Which::Bench, 18 * MIN, "heights");
    let rung = leaf.lines.iter().find(|line| line.label == "18 in").unwrap();
    assert_eq!(rung.value, "1 bite in 1 cast, 15 min");
}

#[test]
fn conditions_are_six_taps_and_a_calm_saves_one() {
    let mut phone = started();
    let mut answered = Vec::new();
    let mut ms = MIN;
    loop {
        let leaf = phone.leaf(Which::Conditions, ms, "now");
        let action = leaf.keys[0].tap.action().unwrap().clone();
        let Action::Conditions { tap: ConditionsTap::Answer { answer } } = &action else { break };
        answered.push(*answer);
        phone.tap(ms, &action).unwrap();
        ms += 1_000;
    }
    let first = [
        Answer::Water(20),
        Answer::Air(10),
        Answer::Wind(WindStrength::Calm),
        Answer::Cloud(0),
        Answer::Colour(WaterColour::Clear),
    ];
    assert_eq!(answered, first, "the first strength is a calm");
    assert_eq!(phone.leaf(Which::Conditions, ms, "now").lines.len(), 5);
    let refused = Action::Conditions { tap: ConditionsTap::Answer { answer: Answer::Water(-10) } };
    let error = phone.tap(ms + 1_000, &refused).unwrap_err();
    assert_eq!(
        phone.app().message(&error),
        "−1 °C can't be used for the water: enter 0 to 35. Below 0 it is ice."
    );
    phone.tap(ms + 2_000, &Action::Conditions { tap: ConditionsTap::Again }).unwrap();
    assert_eq!(
        phone.leaf(Which::Conditions, ms, "now").keys[0].tag,
        "water-0",
        "about the 2 degrees just logged"
    );
}

#[test]
fn cautions_are_shown_once_for_each_peg() {
    let mut phone = Phone::new();
    phone.tap(0, &typed(TypedInto::Water, "Mill pool")).unwrap();
    phone.tap(1_000, &typed(TypedInto::Peg, "14")).unwrap();
    let begun = phone.tap(2_000, &START).unwrap();
    assert!(begun.notice.contains("cautions for this peg are new"), "{}", begun.notice);
    let all = Action::Cautions { tap: CautionsTap::AllSeen };
    phone.tap(3_000, &all).unwrap();
    let list = phone.leaf(Which::Cautions, 4_000, "list");
    assert_eq!(list.says, "All read for Mill pool, Peg\u{a0}14. They stay here.");
    assert!(phone.tap(5_000, &all).is_err(), "nothing is left to put away");
    phone.tap(6_000, &Action::EndSession).unwrap();
    phone.open();
    let again = phone.tap(MIN, &START).unwrap();
    assert!(!again.notice.contains("cautions"), "{}", again.notice);
    phone.tap(2 * MIN, &Action::EndSession).unwrap();
    phone.tap(3 * MIN, &typed(TypedInto::Peg, "15")).unwrap();
    assert!(phone.tap(4 * MIN, &START).unwrap().notice.contains("cautions for this peg are new"));
}

/// Peg 14 of an unnamed water is not peg 14 of the next.
#[test]
fn cautions_of_a_water_without_a_name_are_asked_at_each_session() {
    let mut phone = Phone::new();
    phone.tap(0, &typed(TypedInto::Peg, "14")).unwrap();
    phone.tap(1_000, &START).unwrap();
    phone.tap(2_000, &Action::Cautions { tap: CautionsTap::AllSeen }).unwrap();
    phone.tap(3_000, &Action::EndSession).unwrap();
    let again = phone.tap(7 * 24 * 60 * MIN, &START).unwrap();
    assert!(again.notice.contains("cautions for this peg are new"), "{}", again.notice);
}

/// Read before START without a water: that holds for this START, and not for other pegs and later days.
#[test]
fn cautions_read_before_the_start_of_an_unnamed_water_are_not_read_for_ever() {
    let mut phone = Phone::new();
    let says = |phone: &mut Phone, ms| phone.leaf(Which::Cautions, ms, "list").says;
    let all = Action::Cautions { tap: CautionsTap::AllSeen };
    for day in 0..2 {
        let now = day * 24 * 60 * MIN;
        for (peg, after) in [("14", 0), ("15", 10_000)] {
            phone.tap(now + after, &typed(TypedInto::Peg, peg)).unwrap();
            let unread = says(&mut phone, now + after + 1_000);
            assert!(!unread.starts_with("All read"), "day {day}, peg {peg}: {unread}");
            phone.tap(now + after + 2_000, &all).unwrap();
            phone.open();
            let read = says(&mut phone, now + after + 3_000);
            assert!(read.starts_with("All read"), "day {day}, peg {peg}: {read}");
        }
        phone.tap(now + 20_000, &START).unwrap();
        phone.tap(now + 22_000, &all).unwrap();
        phone.tap(now + 24_000, &Action::EndSession).unwrap();
    }
}

/// Read by a partner, whose kit came in by a file, is not read by this angler.
#[test]
fn cautions_that_a_partner_read_are_shown_to_the_angler() {
    let go = &mut |_: restwater_exchange::Progress| std::ops::ControlFlow::Continue(());
    let at_the_peg = |entropy| {
        let mut phone = Phone::with_ids_from(entropy);
        phone.tap(0, &typed(TypedInto::Water, "Mill pool")).unwrap();
        phone.tap(1_000, &typed(TypedInto::Peg, "14")).unwrap();
        phone
    };
    let (mut theirs, mut mine) = (at_the_peg(300), at_the_peg(400));
    theirs.tap(2_000, &START).unwrap();
    theirs.tap(3_000, &Action::Cautions { tap: CautionsTap::AllSeen }).unwrap();
    let all = restwater_screen::FilesTap::Span { span: restwater_screen::Span::Everything };
    theirs.tap(4_000, &Action::Files { tap: all }).unwrap();
    let path = theirs.app().send(&at(5_000), go).unwrap().path;
    mine.app().take_in(std::path::Path::new(&path), "a friend", &at(6_000), go).unwrap();
    let begun = mine.tap(7_000, &START).unwrap();
    assert!(begun.notice.contains("cautions for this peg are new"), "{}", begun.notice);
}

#[test]
fn the_list_of_screens_depends_on_the_state_of_the_day() {
    let mut phone = Phone::new();
    let open = |phone: &mut Phone| phone.app().doors().doors.iter().map(|d| d.which).collect::<Vec<_>>();
    assert!(open(&mut phone).contains(&Which::Setup));
    phone.tap(0, &START).unwrap();
    assert!(!open(&mut phone).contains(&Which::Setup) && open(&mut phone).contains(&Which::Conditions));
}

/// Every range of a leaf ends on the axis that is drawn with it, and the axis ends at its last figure.
#[track_caller]
pub(super) fn ranges_are_on_their_axis(leaf: &Leaf) -> usize {
    let spans: Vec<_> = leaf.lines.iter().filter_map(|line| line.span).collect();
    assert_eq!(leaf.axis.is_some(), !spans.is_empty(), "{}", leaf.id);
    if let Some(axis) = &leaf.axis {
        assert!(!axis.label.is_empty() && axis.from == 0.0 && axis.ticks.len() >= 2, "{axis:?}");
        assert!(axis.ticks.iter().all(|tick| (axis.from..=axis.to + 1e-9).contains(&tick.at)), "{axis:?}");
        for span in &spans {
            let at = span.at.unwrap_or(span.low);
            assert!(
                axis.from <= span.low && span.low <= at && at <= span.high && span.high <= axis.to,
                "{span:?}"
            );
        }
    }
    spans.len()
}
