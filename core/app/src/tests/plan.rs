//! The plan for a day: written at home, shown on the Bank when due, and compared with the day on its card.

use super::clock_steps::{STEPS, stepped};
use super::*;
use restwater_exchange::Progress;
use restwater_log::{MoveAt, PlanLine};
use restwater_screen::{DayInput, KeyTap, Leaf, PlanTap};
use std::ops::ControlFlow;
use std::path::Path;

/// From the evening of the tests, 22:13:20, to 10:13:20 on the next day.
const MORNING: i64 = 12 * 60 * MIN;

fn plan(tap: PlanTap) -> Action {
    Action::Plan { tap }
}

fn wraps(hundredths: u32) -> Reach {
    Reach::Wraps { hundredths, span_tenth_mm: 36_576 }
}

fn bait(name: &str) -> TackleTap {
    TackleTap::Bait { name: name.into() }
}

fn start_at(peg: &str) -> Action {
    let setup = SessionSetup { peg: Some(peg.into()), ..SessionSetup::default() };
    Action::StartSession { setup: Some(setup) }
}

/// What is tapped and typed in the evening.
fn evening() -> Vec<Action> {
    vec![
        typed(TypedInto::PlanPeg, "14: bread to the island"),
        typed(TypedInto::PlanPeg, "22"),
        plan(PlanTap::Rig { rod: 1, change: bait("bread") }),
        plan(PlanTap::Reach { reach: wraps(1_400) }),
        plan(PlanTap::Leave { minutes: Some(20) }),
        plan(PlanTap::Move { at: Some(MoveAt::AllIn { minutes: 90 }) }),
    ]
}

/// A phone on which tomorrow is planned.
fn planned() -> Phone {
    let mut phone = Phone::new();
    for (s, action) in (0..).zip(evening()) {
        assert!(phone.tap(s * 1_000, &action).unwrap().changed, "{action:?}");
    }
    phone
}

/// The morning after, at peg 14.
fn begun() -> Phone {
    let mut phone = planned();
    phone.tap(MORNING, &start_at("14")).unwrap();
    phone
}

fn bank_at(phone: &mut Phone, now: &Moment) -> BankView {
    match phone.app().screen(Which::Bank, now).unwrap() {
        Screen::Bank(bank) => bank,
        other => panic!("{other:?}"),
    }
}

/// The sentences of the Bank that are the plan's.
fn due(bank: &BankView) -> Vec<String> {
    let said = std::iter::once(&bank.advice.detail).chain(&bank.advice.more);
    said.filter(|text| text.starts_with("Plan")).cloned().collect()
}

fn due_at(phone: &mut Phone, ms: i64) -> Vec<String> {
    let bank = phone.bank(ms);
    due(&bank)
}

fn leaf(phone: &mut Phone, ms: i64, id: &str) -> Leaf {
    phone.leaf(Which::Bench, ms, id)
}

fn card(phone: &mut Phone, ms: i64) -> Vec<String> {
    let leaf = day_card::leaf(phone, Which::Day, ms);
    leaf.lines.iter().filter(|line| line.label == "Plan").map(|line| line.detail.clone()).collect()
}

fn lines(phone: &mut Phone) -> Vec<PlanLine> {
    phone.app().session().unwrap().plan.as_ref().map_or_else(Vec::new, |plan| plan.lines.clone())
}

fn setup_row(phone: &mut Phone, ms: i64) -> Option<restwater_screen::ChoiceRow> {
    match phone.app().screen(Which::Setup, &at(ms)).unwrap() {
        Screen::Setup(view) => view.rows.into_iter().find(|row| row.tag == "plan"),
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_plan_is_written_by_taps_and_each_can_be_undone_by_one() {
    let mut phone = planned();
    let whole = leaf(&mut phone, 10_000, "plan");
    assert_eq!(whole.says, "For tomorrow: the Bank shows each line when it is due.");
    let shown: Vec<(String, String)> =
        whole.lines.iter().map(|line| (line.label.clone(), line.detail.clone())).collect();
    let said = |label: &str, value: &str| (label.to_owned(), value.to_owned());
    assert_eq!(
        shown,
        [
            said("Peg\u{a0}14", "bread to the island"),
            said("Peg\u{a0}22", ""),
            said("Rod 1", "bread"),
            said("Where to start", "14 wraps of 12 ft (51.2 m)"),
            said("Leave the first casts", "20 min"),
            said("Into kept-back water", "90 min after all-in"),
        ]
    );
    let first = phone.leaves(Which::Bench, 11_000).leaves.remove(0);
    assert_eq!(first.keys.iter().find(|key| key.tag == "leaf-plan").unwrap().sub, "tomorrow: 6 lines");
    let undone = phone.tap(12_000, &Action::Undo).unwrap();
    assert!(undone.notice.starts_with("plan 22:13"), "{}", undone.notice);
    assert_eq!(leaf(&mut phone, 13_000, "plan").lines.len(), 5);
    phone.open();
    phone.tap(14_000, &Action::Redo).unwrap();
    phone.tap(15_000, &plan(PlanTap::NoPeg { peg: "22".into() })).unwrap();
    phone.tap(16_000, &plan(PlanTap::NoRig { rod: 1 })).unwrap();
    assert!(!phone.tap(17_000, &plan(PlanTap::NoRig { rod: 1 })).unwrap().changed, "there is none");
    assert_eq!(leaf(&mut phone, 18_000, "plan").lines.len(), 4);
    phone.tap(19_000, &Action::Undo).unwrap();
    assert_eq!(leaf(&mut phone, 20_000, "plan").lines.len(), 5);
}

#[test]
fn impossible_figures_are_refused_and_change_nothing() {
    let mut phone = planned();
    let refused = [
        plan(PlanTap::Leave { minutes: Some(0) }),
        plan(PlanTap::Move { at: Some(MoveAt::Clock { minute: 1_440 }) }),
        plan(PlanTap::Reach { reach: Reach::Metres { cm: 0 } }),
        plan(PlanTap::Bearing { cdeg: 9_100 }),
        plan(PlanTap::Mark { name: " ".into() }),
        plan(PlanTap::Rig { rod: 0, change: bait("bread") }),
        plan(PlanTap::Rig { rod: 1, change: TackleTap::Clip { clipped: true } }),
        plan(PlanTap::Day { day: i32::MAX }),
        typed(TypedInto::PlanPeg, " "),
        typed(TypedInto::PlanMove, "noon"),
        typed(TypedInto::PlanMark, ""),
    ];
    let before = leaf(&mut phone, 10_000, "plan");
    for (s, action) in (11..).zip(refused) {
        let error = phone.tap(s * 1_000, &action).unwrap_err();
        let message = phone.app().message(&error);
        assert!(message.ends_with('.') && !message.contains("error-"), "{message}");
    }
    assert_eq!(leaf(&mut phone, 30_000, "plan"), before);
}

#[test]
fn the_bank_shows_each_line_when_it_is_due_without_moving_a_key() {
    let mut phone = begun();
    let mut plain = Phone::new();
    plain.tap(MORNING, &start_at("14")).unwrap();
    let mut at_minute = |minute: i64, action: Option<Action>| {
        let ms = MORNING + minute * MIN;
        if let Some(action) = action {
            phone.tap(ms, &action).unwrap();
            plain.tap(ms, &action).unwrap();
        }
        let (with, without) = (phone.bank(ms + 10_000), plain.bank(ms + 10_000));
        assert_eq!(due(&without), [""; 0], "no plan, no trace of it");
        // Nothing else of the headline is the plan's: its minutes, until the record can tell.
        let of_plan = ["Your plan: 20 min. Can't tell yet.", "Past the 20 min of your plan. Can't tell yet."];
        let can_tell = !without.advice.headline.starts_with("Can't tell yet. ");
        assert!(
            can_tell && with.advice.headline == without.advice.headline
                || of_plan.contains(&&*with.advice.headline)
        );
        assert_eq!((&with.rods, with.state), (&without.rods, without.state));
        let keys = |bank: &BankView| bank.keys.iter().map(|key| (key.key, key.enabled)).collect::<Vec<_>>();
        assert_eq!(keys(&with), keys(&without));
        due(&with)
    };
    assert_eq!(
        at_minute(1, None),
        ["Plan for peg\u{a0}14: bread to the island.",],
        "the rig and the spot are on the rod"
    );
    assert_eq!(at_minute(5, Some(CAST)), [""; 0], "the minutes are the headline");
    assert_eq!(at_minute(20, Some(BITE)), [""; 0], "a fish is on");
    for (minute, action) in [(22, LANDED), (30, CAST), (50, CAST), (70, CAST)] {
        assert_eq!(at_minute(minute, Some(action)), [""; 0]);
    }
    assert_eq!(at_minute(90, None), ["Plan, 11:43: fish kept-back water."]);
    assert_eq!(at_minute(121, None), [""; 0]);
}

#[test]
fn the_card_compares_the_plan_with_the_day() {
    let mut phone = begun();
    let spot = Spot { mark: None, bearing_cdeg: 0, reach: wraps(1_600), clipped: true };
    phone.tap(MORNING + 5_000, &Action::SetSpot { rod: 1, spot }).unwrap();
    phone.tap(MORNING + 6_000, &Action::Tackle { rod: 1, tap: bait("bread") }).unwrap();
    for (minute, action) in [(1, CAST), (13, WOUND_IN), (15, CAST), (40, BITE), (41, LANDED)] {
        phone.tap(MORNING + minute * MIN, &action).unwrap();
    }
    let end = MORNING + 3 * 60 * MIN;
    phone.tap(end, &Action::EndSession).unwrap();
    let says = ["One of pegs 14, 22. You drew 14. Rod 1 with bread: as planned. \
        Start at 14 wraps. You started at 16 wraps. \
        Leave the first casts 20 min. The first 2 were left 12, 25 min. \
        Kept-back water at 11:43. No cast went there."];
    assert_eq!(card(&mut phone, end + 1_000), says);
    let shared = day_card::leaf(&mut phone, Which::Day, end + 1_000).keys.remove(0).tap;
    let KeyTap::Share { text } = shared else { panic!("{shared:?}") };
    assert!(text.contains(&format!("\nPlan: {}\n", says[0])), "{text}");
    // At home the plan of that day is rewritten: the plan of the session stays as it was.
    phone.tap(end + 60 * MIN, &plan(PlanTap::Reach { reach: wraps(900) })).unwrap();
    phone.open();
    assert_eq!(card(&mut phone, end + 61 * MIN), says);
}

#[test]
fn without_a_plan_there_is_no_trace_of_one() {
    let mut phone = started();
    phone.tap(MIN, &CAST).unwrap();
    phone.tap(20 * MIN, &Action::EndSession).unwrap();
    assert!(phone.app().ops().iter().all(|op| !op.payload.kind().starts_with("plan_")));
    assert!(card(&mut phone, 21 * MIN).is_empty() && setup_row(&mut phone, 22 * MIN).is_none());
    assert!(leaf(&mut phone, 23 * MIN, "plan").keys.is_empty());
}

#[test]
fn one_tap_drops_the_plan_before_the_start_and_survives_a_restart() {
    let mut phone = planned();
    let row = setup_row(&mut phone, MORNING - MIN).unwrap();
    assert_eq!((row.value.as_str(), row.choices.len()), ("for today", 2));
    phone.tap(MORNING - 50_000, &row.choices[1].action).unwrap();
    phone.open();
    assert_eq!(setup_row(&mut phone, MORNING - 40_000).unwrap().value, "not today");
    phone.tap(MORNING, &start_at("14")).unwrap();
    assert_eq!((due_at(&mut phone, MORNING + MIN), lines(&mut phone).len()), (Vec::new(), 0));
    // The angler changes their mind: one tap on the Bench.
    let key = leaf(&mut phone, MORNING + MIN, "plan").keys.remove(0);
    assert_eq!(key.label, "TODAY");
    let KeyTap::Send { action } = key.tap else { panic!("{:?}", key.tap) };
    phone.tap(MORNING + 2 * MIN, &action).unwrap();
    assert_eq!(due_at(&mut phone, MORNING + 3 * MIN).len(), 1);
}

#[test]
fn one_tap_drops_the_plan_during_the_day_and_undo_restores_it() {
    let mut phone = begun();
    let key = leaf(&mut phone, MORNING + MIN, "plan").keys.remove(0);
    assert_eq!(key.label, "NOT TODAY");
    let KeyTap::Send { action } = key.tap else { panic!("{:?}", key.tap) };
    phone.tap(MORNING + 2 * MIN, &action).unwrap();
    assert_eq!(phone.undoes().as_deref(), Some("no plan today 10:15"));
    assert!(due_at(&mut phone, MORNING + 3 * MIN).is_empty());
    assert!(phone.tap(MORNING + 4 * MIN, &action).is_err(), "there is none to put aside");
    phone.open();
    phone.tap(MORNING + 5 * MIN, &Action::Undo).unwrap();
    assert_eq!(due_at(&mut phone, MORNING + 6 * MIN).len(), 1);
    phone.tap(MORNING + 7 * MIN, &Action::Undo).unwrap();
    assert!(phone.app().session().is_none_or(|session| !session.is_open()), "START goes with its plan");
    phone.tap(MORNING + 8 * MIN, &start_at("14")).unwrap();
    assert_eq!(due_at(&mut phone, MORNING + 9 * MIN).len(), 1, "and is adopted again");
}

#[test]
fn the_nearest_plan_counts_unless_it_has_been_used() {
    let mut phone = planned();
    phone.tap(20_000, &Action::StartSession { setup: None }).unwrap();
    assert_eq!(lines(&mut phone).len(), 6, "a day early");
    phone.tap(30_000, &Action::EndSession).unwrap();
    phone.tap(MORNING, &START).unwrap();
    assert_eq!(lines(&mut phone).len(), 6, "on its day");
    phone.tap(MORNING + MIN, &Action::EndSession).unwrap();
    phone.tap(MORNING + 24 * 60 * MIN, &START).unwrap();
    assert_eq!(lines(&mut phone).len(), 0, "it was fished by");
    let mut put_off = planned();
    put_off.tap(MORNING + 48 * 60 * MIN, &START).unwrap();
    assert_eq!(lines(&mut put_off).len(), 6, "two days late");
}

#[test]
fn setting_the_clock_neither_shows_a_line_early_nor_hides_it() {
    let mut phone = begun();
    phone.tap(MORNING + 5 * MIN, &CAST).unwrap();
    let moments = [MORNING + 10 * MIN, MORNING + 89 * MIN, MORNING + 91 * MIN, MORNING + 119 * MIN];
    let truly: Vec<usize> = moments.iter().map(|ms| due_at(&mut phone, *ms).len()).collect();
    assert_eq!(truly, [0, 0, 1, 1]);
    for (what, step) in STEPS {
        for (ms, count) in moments.iter().zip(&truly) {
            let bank = bank_at(&mut phone, &stepped(step, *ms));
            assert_eq!(due(&bank).len(), *count, "{what}");
        }
    }
    let (_, back) = STEPS[2];
    phone.app().act(&WOUND_IN, &stepped(back, MORNING + 20 * MIN)).unwrap();
    phone.open();
    let bank = bank_at(&mut phone, &stepped(back, MORNING + 91 * MIN));
    assert_eq!(due(&bank).len(), 1, "and after a restart");
}

#[test]
fn no_line_is_lost_when_the_phone_restarts() {
    let mut phone = begun();
    phone.boots = 1;
    phone.open();
    let now = Moment { mono_ms: 60_000, boot: "boot-1".into(), ..at(MORNING + 91 * MIN) };
    let bank = bank_at(&mut phone, &now);
    assert!(due(&bank).iter().any(|line| line.ends_with("fish kept-back water.")), "{:?}", due(&bank));
}

#[test]
fn a_partners_plan_is_never_used() {
    let mut theirs = planned();
    theirs.tap(20_000, &START).unwrap();
    let mut go = |_: Progress| ControlFlow::Continue(());
    theirs
        .tap(
            21_000,
            &Action::Files {
                tap: restwater_screen::FilesTap::Span { span: restwater_screen::Span::Everything },
            },
        )
        .unwrap();
    let sent = theirs.app().send(&at(MIN), &mut go).unwrap();
    let mut phone = Phone::with_ids_from(90);
    phone.app().take_in(Path::new(&sent.path), "a partner", &at(2 * MIN), &mut go).unwrap();
    let kits = phone.app().journal.recent().kits().len();
    assert_eq!(kits, 1, "their kit came in");
    phone.open();
    assert!(leaf(&mut phone, 3 * MIN, "plan").lines.is_empty());
    phone.tap(MORNING, &start_at("14")).unwrap();
    assert_eq!((lines(&mut phone).len(), due_at(&mut phone, MORNING + MIN).len()), (0, 0));
    // A plan written on this phone goes into this phone's own kit.
    phone.tap(MORNING + 2 * MIN, &Action::EndSession).unwrap();
    phone.tap(MORNING + 3 * MIN, &plan(PlanTap::Leave { minutes: Some(8) })).unwrap();
    assert_eq!(phone.app().journal.recent().kits().len(), 2);
    phone.open();
    assert_eq!(leaf(&mut phone, MORNING + 4 * MIN, "plan").lines.len(), 1);
    phone.tap(MORNING + 5 * MIN, &START).unwrap();
    assert_eq!(lines(&mut phone), [PlanLine::Leave { minutes: 8 }]);
}

/// The card in every language, with every message of the plan made.
#[test]
fn the_plan_is_shown_in_every_language() {
    let mut phone = begun();
    phone.tap(MORNING + MIN, &CAST).unwrap();
    phone.tap(MORNING + 20 * MIN, &WOUND_IN).unwrap();
    let now = at(MORNING + 30 * MIN);
    let (waits, changes) = (phone.app().waits(&now), phone.app().changes());
    for tag in ["en-GB", "de-DE", "fr-FR"] {
        let words = Wording::shared(tag);
        let session = phone.app().session();
        let view = screen::day(&DayInput { session, waits: &waits, changes: &changes, advice: None, words });
        let plan: Vec<&str> = view.leaves[0]
            .lines
            .iter()
            .filter(|line| line.label == words.say("day-plan"))
            .map(|line| line.detail.as_str())
            .collect();
        let [plan] = plan[..] else { panic!("{tag}: {plan:?}") };
        assert!(plan.matches(". ").count() >= 4 && !plan.contains("plan-"), "{tag}: {plan}");
    }
}

#[test]
fn a_day_logged_under_next_years_date_does_not_keep_a_plan_from_being_taken_later() {
    let (_, next_year) = STEPS[1];
    let mut put_off = planned();
    put_off.app().act(&start_at("9"), &stepped(next_year, 10 * MIN)).unwrap();
    put_off.app().act(&Action::EndSession, &stepped(next_year, 20 * MIN)).unwrap();
    put_off.tap(MORNING + 48 * 60 * MIN, &START).unwrap();
    assert_eq!(lines(&mut put_off).len(), 6, "two days late");
}
