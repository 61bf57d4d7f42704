//! The bench, conditions and cautions through the app, tap by tap.

use super::*;
use restwater_bench::BenchError;
use restwater_bench::cut_down::CutDownError;
use restwater_bench::fall::FallError;
use restwater_bench::hooklength::WalletError;
use restwater_log::{Rig, kit_of};
use restwater_screen::{Leaf, LeavesView};
use restwater_session::NotNow;

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

    fn bench(&mut self, ms: i64, field: &str, value: &str) -> Result<Update, AppError> {
        self.tap(ms, &Action::ChooseBench { field: field.into(), value: value.into() })
    }

    /// A wallet of six ties of 3 ft, of which two are to be carried, and four of 18 in that are to be carried.
    fn wallet(&mut self) {
        self.bench(0, "tied", "6").unwrap();
        self.bench(1_000, "wanted", "2").unwrap();
        self.bench(2_000, "length", "4572").unwrap();
        self.bench(3_000, "wanted", "5").unwrap();
    }
}

fn says(phone: &mut Phone, id: &str) -> String {
    phone.leaf(Which::Bench, 100_000, id).says
}

#[test]
fn an_evening_at_the_bench_by_taps_alone() {
    let mut phone = Phone::new();
    phone.wallet();
    assert_eq!(says(&mut phone, "cut-down"), "4 to cut down, 72 in cut off in all.");
    assert_eq!(says(&mut phone, "tie-up"), "1 to tie.");
    let update = phone.bench(4_000, "cut_all", "").unwrap();
    assert!(update.changed);
    assert_eq!(update.undo_label.as_deref(), Some("cut down 22:13"));
    let have = |phone: &mut Phone| phone.leaf(Which::Bench, 5_000, "hooklengths").lines;
    let values: Vec<String> = have(&mut phone).into_iter().map(|line| line.value).collect();
    assert_eq!(values, ["4 of 5", "2 of 2"]);
    for (s, (field, value)) in
        (10..).zip([("spool_add", ""), ("hook_knot", "600"), ("loop_length", "250"), ("tag", "100")])
    {
        phone.bench(s * 1_000, field, value).unwrap();
    }
    let tie_up = phone.leaf(Which::Bench, 20_000, "tie-up");
    assert_eq!(tie_up.lines[0].detail, "cut 57.72 cm each", "18 in + 6 + 2 x 2.5 + 1 cm");
    phone.bench(21_000, "tie_all", "").unwrap();
    assert_eq!(says(&mut phone, "tie-up"), "Nothing to tie: the wallet holds what is to be carried.");
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
    phone.bench(0, "tied", "3").unwrap();
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
fn undo_goes_back_through_day_and_kit_in_the_order_of_the_taps() {
    let mut phone = Phone::new();
    phone.bench(0, "tied", "3").unwrap();
    phone.tap(MIN, &START).unwrap();
    phone.tap(2 * MIN, &CAST).unwrap();
    phone.tap(3 * MIN, &Action::EndSession).unwrap();
    phone.bench(4 * MIN, "wanted", "2").unwrap();
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
fn bad_input_is_named_and_changes_nothing() {
    let mut phone = Phone::new();
    phone.bench(0, "tied", "2").unwrap();
    let refused =
        |phone: &mut Phone, s: i64, field: &str, value: &str| match phone.bench(s * 1_000, field, value) {
            Err(AppError::Bench(error)) => error,
            other => panic!("{field} {value}: {other:?}"),
        };
    let kit = kit_of(phone.app().journal.store().device());
    let before = phone.app().journal.recent().kit(kit).to_vec();
    assert_eq!(refused(&mut phone, 10, "tied", "-3"), BenchError::Negative(-3));
    assert_eq!(refused(&mut phone, 11, "wanted", "-1"), BenchError::Negative(-1));
    assert!(matches!(
        refused(&mut phone, 12, "tied", "99999"),
        BenchError::Wallet(WalletError::Absurd(99_999))
    ));
    assert!(matches!(
        refused(&mut phone, 13, "cut", "4572 3"),
        BenchError::Wallet(WalletError::NotThatMany { have: 2, asked: 3, .. })
    ));
    assert!(matches!(refused(&mut phone, 14, "cut", "9144 1"), BenchError::NotShorter { .. }));
    assert_eq!(refused(&mut phone, 15, "cut_all", ""), BenchError::NothingTo("cut down"));
    assert_eq!(refused(&mut phone, 16, "bottom", ""), BenchError::NotFalling);
    assert_eq!(refused(&mut phone, 17, "calibrate", ""), BenchError::NoFall);
    assert_eq!(refused(&mut phone, 18, "lift", "-500"), BenchError::Negative(-500));
    assert!(matches!(refused(&mut phone, 19, "spool_gone", "none"), BenchError::NoSuchSpool));
    for (field, value) in
        [("tied", "many"), ("length", "long"), ("song", "1"), ("hook", "0"), ("line", "rope")]
    {
        let error = phone.bench(30_000, field, value).unwrap_err();
        assert!(error.kind() == ErrorKind::BadInput, "{field} {value}");
    }
    assert_eq!(phone.app().journal.recent().kit(kit), before.as_slice());
    let error = phone.bench(40_000, "tied", "-3").unwrap_err();
    assert_eq!(phone.app().message(&error), "-3 is less than nothing: enter how many there are.");
    assert!(CutDownError::TooMany { ties: 1, needs: 201 }.to_string().contains("plan them in parts"));
}

#[test]
fn a_fall_is_timed_by_two_taps_and_a_fall_of_no_time_is_refused() {
    let mut phone = Phone::new();
    phone.bench(0, "splash", "").unwrap();
    let refused = phone.bench(0, "bottom", "").unwrap_err();
    assert!(matches!(refused, AppError::Bench(BenchError::Fall(FallError::NoTime(_)))), "{refused:?}");
    phone.bench(3_400, "bottom", "").unwrap();
    phone.bench(5_000, "calibrate", "").unwrap();
    let fall = phone.leaf(Which::Bench, 6_000, "fall");
    assert_eq!(fall.says, "3.4 s: 3 m deep, between 2.5 and 3.6 m.");
    phone.bench(10_000, "splash", "").unwrap();
    let refused = phone.bench(500_000, "bottom", "").unwrap_err();
    assert!(matches!(refused, AppError::Bench(BenchError::Fall(FallError::TooLong(_)))));
    assert!(matches!(phone.bench(510_000, "bottom", ""), Err(AppError::Bench(BenchError::NotFalling))));
}

#[test]
fn lead_is_named_where_it_is_entered_and_not_forbidden() {
    let mut phone = Phone::new();
    let caution = |phone: &mut Phone| phone.leaf(Which::Bench, 100_000, "pop-up").caution;
    assert_eq!(caution(&mut phone), "", "tungsten");
    phone.bench(0, "shot_metal", "lead").unwrap();
    assert!(caution(&mut phone).starts_with("Lead of this weight is not to be used in England and Wales"));
    phone.tap(1_000, &Action::ChooseCautions { field: "region".into(), value: "scotland".into() }).unwrap();
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
    let popup = Action::Choose { rod: 1, field: "popup".into(), value: "457".into() };
    phone.tap(1_000, &popup).unwrap();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(16 * MIN, &BITE).unwrap();
    phone.tap(17 * MIN, &LANDED).unwrap();
    phone.tap(18 * MIN, &Action::EndSession).unwrap();
    phone.tap(900 * MIN, &START).unwrap();
    let leaf = phone.leaf(Which::Bench, 901 * MIN, "heights");
    let rung = leaf.lines.iter().find(|line| line.label == "18 in").unwrap();
    assert_eq!(rung.value, "1 bite in 1 cast, 15 min");
    // Garwood (1936): 1 bite in a quarter of an hour, 0.0253 to 5.5716 expected.
    assert_eq!(rung.detail, "4 an hour, 0.1 to 22.3");
    phone.bench(902 * MIN, "heights_of", "this").unwrap();
    assert!(phone.leaf(Which::Bench, 903 * MIN, "heights").says.starts_with("No height tried yet."));
}

#[test]
fn conditions_are_six_taps_and_a_calm_saves_one() {
    let mut phone = started();
    let mut answered = Vec::new();
    let mut ms = MIN;
    loop {
        let leaf = phone.leaf(Which::Conditions, ms, "now");
        if leaf.keys[0].field == "again" {
            break;
        }
        let key = leaf.keys[0].clone();
        answered.push(key.field.clone());
        phone.tap(ms, &Action::ChooseConditions { field: key.field, value: key.value }).unwrap();
        ms += 1_000;
    }
    assert_eq!(answered, ["water", "air", "wind", "cloud", "colour"], "the first strength is a calm");
    assert_eq!(phone.leaf(Which::Conditions, ms, "now").lines.len(), 5);
    let refused = Action::ChooseConditions { field: "water".into(), value: "-10".into() };
    let error = phone.tap(ms + 1_000, &refused).unwrap_err();
    assert_eq!(phone.app().message(&error), "-1 C is no lake: fresh water is 0 to 35, below that it is ice.");
    phone.tap(ms + 2_000, &Action::ChooseConditions { field: "again".into(), value: String::new() }).unwrap();
    assert_eq!(phone.leaf(Which::Conditions, ms, "now").keys[0].field, "water");
}

#[test]
fn cautions_are_asked_once_per_peg() {
    let mut phone = Phone::new();
    let setup = |phone: &mut Phone, ms, field: &str, value: &str| {
        phone.tap(ms, &Action::ChooseSetup { field: field.into(), value: value.into() }).unwrap();
    };
    setup(&mut phone, 0, "water", "Mill pool");
    setup(&mut phone, 1_000, "peg", "14");
    let begun = phone.tap(2_000, &START).unwrap();
    assert!(begun.notice.contains("cautions for this peg are new"), "{}", begun.notice);
    let all = Action::ChooseCautions { field: "seen".into(), value: "all".into() };
    phone.tap(3_000, &all).unwrap();
    let list = phone.leaf(Which::Cautions, 4_000, "list");
    assert_eq!(list.says, "Mill pool, 14: all put away. They stay here to read.");
    assert!(phone.tap(5_000, &all).is_err(), "nothing is left to put away");
    phone.tap(6_000, &Action::EndSession).unwrap();
    phone.open();
    let again = phone.tap(MIN, &START).unwrap();
    assert!(!again.notice.contains("cautions"), "{}", again.notice);
    phone.tap(2 * MIN, &Action::EndSession).unwrap();
    setup(&mut phone, 3 * MIN, "peg", "15");
    assert!(phone.tap(4 * MIN, &START).unwrap().notice.contains("cautions for this peg are new"));
}

#[test]
fn the_list_of_screens_follows_the_day() {
    let mut phone = Phone::new();
    let open = |phone: &mut Phone| phone.app().doors().doors.iter().map(|d| d.which).collect::<Vec<_>>();
    assert!(open(&mut phone).contains(&Which::Setup));
    phone.tap(0, &START).unwrap();
    assert!(!open(&mut phone).contains(&Which::Setup) && open(&mut phone).contains(&Which::Conditions));
}
