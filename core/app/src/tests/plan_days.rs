//! Which day a plan is for, and the day whose plan a session adopts.

use super::clock_steps::{STEPS, stepped};
use super::*;
use restwater_log::{MoveAt, PlanLine};
use restwater_screen::{MatchTap, PlanTap, RuleTap};

/// The tests begin at 22:13:20 on a Tuesday, which is day 19 675 since 1970.
const TUESDAY: i32 = 19_675;
const HOUR: i64 = 60 * MIN;
const DAY: i64 = 24 * HOUR;
/// Midnight before it.
const MIDNIGHT: i64 = -(22 * HOUR + 13 * MIN + 20_000);

fn plan(tap: PlanTap) -> Action {
    Action::Plan { tap }
}

fn day(day: i32) -> Action {
    plan(PlanTap::Day { day })
}

fn leave(minutes: u16) -> Action {
    plan(PlanTap::Leave { minutes: Some(minutes) })
}

fn lines(phone: &mut Phone) -> Vec<PlanLine> {
    phone.app().session().unwrap().plan.as_ref().map_or_else(Vec::new, |plan| plan.lines.clone())
}

impl Phone {
    /// The day that the Bench plans, by its words.
    fn plans_for(&mut self, ms: i64) -> String {
        self.leaf(Which::Bench, ms, "plan").says
    }

    fn planned(&mut self) -> Vec<i32> {
        self.app().plans().unwrap().into_keys().collect()
    }
}

/// START on Friday at 18:00 with the plan of Saturday: 14:00 is Saturday's.
#[test]
fn a_time_of_day_is_that_of_the_plans_own_day() {
    let mut phone = Phone::new();
    let start = MIDNIGHT + 18 * HOUR;
    phone.tap(start - 2 * MIN, &day(TUESDAY + 1)).unwrap();
    phone.tap(start - MIN, &plan(PlanTap::Move { at: Some(MoveAt::Clock { minute: 14 * 60 }) })).unwrap();
    phone.tap(start, &START).unwrap();
    assert_eq!(lines(&mut phone).len(), 1);
    let due = |phone: &mut Phone, ms| {
        let bank = phone.bank(ms);
        let said = std::iter::once(bank.advice.detail).chain(bank.advice.more);
        said.filter(|text| text.starts_with("Plan")).collect::<Vec<_>>()
    };
    assert_eq!(due(&mut phone, start + MIN), [""; 0]);
    phone.tap(MIDNIGHT + DAY + 11 * HOUR, &CAST).unwrap();
    phone.tap(MIDNIGHT + DAY + 12 * HOUR, &WOUND_IN).unwrap();
    assert_eq!(due(&mut phone, MIDNIGHT + DAY + 14 * HOUR + MIN), ["Plan, 14:00: fish kept-back water."]);
    let session = phone.app().session().unwrap();
    let outcomes = restwater_session::plan_outcomes(session);
    let at_ms = outcomes.iter().find_map(|outcome| match outcome {
        restwater_session::PlanOutcome::Move { at_ms, .. } => Some(*at_ms),
        _ => None,
    });
    assert_eq!(at_ms, Some(20 * HOUR));
}

/// From 22:00 to 07:00, with the clocks changed in between: 06:00 is what they show in the morning.
#[test]
fn a_time_of_day_over_a_change_of_the_clocks_is_that_of_the_new_time() {
    for (before, after) in [(60, 0), (0, 60)] {
        let local = |ms: i64, offset_min: i16| {
            let ms = MIDNIGHT + ms - i64::from(offset_min) * MIN;
            Moment { offset_min, ..at(ms) }
        };
        let (evening, morning) = (|ms| local(ms, before), |ms| local(DAY + ms, after));
        let mut phone = Phone::new();
        let clock = plan(PlanTap::Move { at: Some(MoveAt::Clock { minute: 6 * 60 }) });
        for (minute, action) in [(0, day(TUESDAY)), (1, clock), (10, START)] {
            phone.app().act(&action, &evening(22 * HOUR + minute * MIN)).unwrap();
        }
        let due = |phone: &mut Phone, now: &Moment| match phone.app().screen(Which::Bank, now).unwrap() {
            Screen::Bank(bank) => {
                let said = std::iter::once(bank.advice.detail).chain(bank.advice.more);
                said.filter(|text| text.starts_with("Plan")).collect::<Vec<_>>()
            }
            other => panic!("{other:?}"),
        };
        assert_eq!(due(&mut phone, &morning(5 * HOUR + 59 * MIN)), [""; 0], "{after}");
        let said = ["Plan, 06:00: fish kept-back water."];
        assert_eq!(due(&mut phone, &morning(6 * HOUR + MIN)), said, "{after}");
        phone.app().act(&Action::EndSession, &morning(7 * HOUR)).unwrap();
        let card = super::day_card::leaf_at(&mut phone, Which::Day, &morning(8 * HOUR)).lines;
        let card = card.into_iter().find(|line| line.label == "Plan").unwrap().detail;
        assert_eq!(card, "Kept-back water at 06:00. No cast went there.", "{after}");
    }
}

/// START at 22:00 with the plan of that evening, which is dropped after midnight and adopted again.
#[test]
fn a_session_over_midnight_takes_up_the_plan_of_the_day_on_which_it_began() {
    let mut phone = Phone::new();
    let noon = MIDNIGHT + 11 * HOUR;
    for (s, action) in (0..).zip([day(TUESDAY), leave(20), day(TUESDAY + 1), leave(45)]) {
        phone.tap(noon + s * 1_000, &action).unwrap();
    }
    phone.tap(MIDNIGHT + 22 * HOUR, &START).unwrap();
    assert_eq!(lines(&mut phone), [PlanLine::Leave { minutes: 20 }]);
    let after = MIDNIGHT + DAY + 10 * MIN;
    phone.tap(after, &plan(PlanTap::Today { takes: false })).unwrap();
    assert_eq!(lines(&mut phone), []);
    let key = phone.leaf(Which::Bench, after + MIN, "plan").keys.remove(0);
    assert_eq!(key.label, "TODAY");
    phone.tap(after + 2 * MIN, key.tap.action().unwrap()).unwrap();
    assert_eq!(lines(&mut phone), [PlanLine::Leave { minutes: 20 }]);
}

/// With no other plan than that of the evening, it is not gone after midnight.
#[test]
fn the_plan_of_a_session_over_midnight_is_still_there() {
    let mut phone = Phone::new();
    let noon = MIDNIGHT + 11 * HOUR;
    phone.tap(noon, &day(TUESDAY)).unwrap();
    phone.tap(noon + 1_000, &leave(20)).unwrap();
    phone.tap(MIDNIGHT + 22 * HOUR, &START).unwrap();
    let after = MIDNIGHT + 4 * DAY;
    phone.tap(after, &plan(PlanTap::Today { takes: false })).unwrap();
    assert_eq!(phone.leaf(Which::Bench, after + MIN, "plan").keys.remove(0).label, "TODAY");
    phone.tap(after + 2 * MIN, &plan(PlanTap::Today { takes: true })).unwrap();
    assert_eq!(lines(&mut phone), [PlanLine::Leave { minutes: 20 }]);
}

/// "Tomorrow" was chosen on Tuesday, and the app stayed in memory until Thursday evening.
#[test]
fn a_chosen_day_that_is_over_counts_no_more() {
    let mut phone = Phone::new();
    phone.tap(0, &day(TUESDAY + 1)).unwrap();
    assert!(phone.plans_for(MIN).contains("tomorrow"), "{}", phone.plans_for(MIN));
    phone.tap(2 * DAY, &leave(20)).unwrap();
    assert_eq!(phone.planned(), [TUESDAY + 3]);
}

/// In the evening the next day is planned, but a plan that is being written doesn't change its day.
#[test]
fn the_lines_of_one_plan_go_to_one_day() {
    let mut phone = Phone::new();
    let evening = MIDNIGHT + 17 * HOUR;
    phone.tap(evening - 2 * MIN, &leave(20)).unwrap();
    phone.tap(evening + MIN, &typed(TypedInto::PlanPeg, "14: bread")).unwrap();
    assert_eq!(phone.planned(), [TUESDAY]);
    let says = phone.plans_for(evening + 2 * MIN);
    assert!(says.contains("today"), "{says}");
    // The next day it is over, and the evening plans the day after again.
    phone.tap(evening + DAY + HOUR, &leave(30)).unwrap();
    assert_eq!(phone.planned(), [TUESDAY, TUESDAY + 2]);
}

/// The page said "today" when the line was typed, and it was sent after the clock had struck.
#[test]
fn a_line_goes_to_the_day_that_the_page_shows() {
    let evening = MIDNIGHT + 17 * HOUR;
    // A new process brings the page back as it was if the shell kept it; otherwise it is opened again and says for which day it is.
    for (restarted, kept) in [(false, true), (true, true), (true, false)] {
        let mut phone = Phone::new();
        let says = phone.plans_for(evening - MIN);
        assert!(says.contains("today"), "{says}");
        let about = phone.app().about(Which::Bench, &at(evening - MIN));
        let subject = phone.app().subject().unwrap();
        if restarted {
            phone.open();
        }
        if restarted && kept {
            assert!(phone.app().restore_subject(&subject).unwrap());
        }
        let drafts = phone.app().about(Which::Bench, &at(evening + MIN)) == about;
        assert_eq!(drafts, kept, "a text that was not sent stays with its day");
        let says = phone.plans_for(evening + MIN);
        assert!(says.contains(if kept { "today" } else { "tomorrow" }), "{says}");
        phone.tap(evening + 2 * MIN, &typed(TypedInto::PlanPeg, "14: bread")).unwrap();
        assert_eq!(phone.planned(), [TUESDAY + i32::from(!kept)]);
    }
    // Who has left the page finds another day on it in the evening, and so does who comes back to it after hours.
    let mut phone = Phone::new();
    phone.plans_for(evening - MIN);
    phone.tap(evening - MIN + 2_000, &Action::Back).unwrap();
    let says = phone.plans_for(evening + MIN);
    assert!(says.contains("tomorrow"), "{says}");
    let mut phone = Phone::new();
    phone.plans_for(evening - HOUR);
    let says = phone.plans_for(evening + 2 * HOUR);
    assert!(says.contains("tomorrow"), "{says}");
}

/// Planned at dinner for the afternoon: it is today's, and so is its time of day.
#[test]
fn a_plan_written_after_noon_is_for_the_afternoon_of_that_day() {
    for planned in [11 * HOUR + 50 * MIN, 12 * HOUR + 5 * MIN] {
        let mut phone = Phone::new();
        let clock = Some(MoveAt::Clock { minute: 15 * 60 });
        phone.tap(MIDNIGHT + planned, &plan(PlanTap::Move { at: clock })).unwrap();
        assert_eq!(phone.planned(), [TUESDAY]);
        phone.tap(MIDNIGHT + 12 * HOUR + 10 * MIN, &START).unwrap();
        assert_eq!(lines(&mut phone).len(), 1);
        phone.tap(MIDNIGHT + 13 * HOUR, &CAST).unwrap();
        let advice = phone.bank(MIDNIGHT + 15 * HOUR + MIN).advice;
        assert_eq!(advice.detail, "Plan, 15:00: fish kept-back water.");
    }
}

/// Fished from six to ten in the morning: what is planned at eleven is for the next day.
#[test]
fn once_a_session_of_the_day_has_ended_the_next_day_is_planned() {
    let mut phone = Phone::new();
    phone.tap(MIDNIGHT + 6 * HOUR, &START).unwrap();
    phone.tap(MIDNIGHT + 10 * HOUR, &Action::EndSession).unwrap();
    phone.open();
    phone.tap(MIDNIGHT + 11 * HOUR, &leave(20)).unwrap();
    assert_eq!(phone.planned(), [TUESDAY + 1]);
}

/// A line was added while the session ran, which was for that day.
#[test]
fn the_evening_after_a_session_with_a_line_added_in_it_plans_the_next_day() {
    let mut phone = Phone::new();
    phone.tap(MIDNIGHT + 8 * HOUR, &START).unwrap();
    phone.tap(MIDNIGHT + 9 * HOUR, &leave(20)).unwrap();
    phone.tap(MIDNIGHT + 15 * HOUR, &Action::EndSession).unwrap();
    phone.open();
    phone.tap(MIDNIGHT + 19 * HOUR, &leave(30)).unwrap();
    assert_eq!(phone.planned(), [TUESDAY, TUESDAY + 1]);
}

/// A line was added in the morning, the day was fished, and in the evening the next day is planned.
#[test]
fn the_evening_after_a_session_plans_the_next_day() {
    let mut phone = Phone::new();
    let morning = MIDNIGHT + 7 * HOUR;
    phone.tap(morning, &leave(20)).unwrap();
    phone.tap(morning + HOUR, &START).unwrap();
    assert_eq!(lines(&mut phone).len(), 1);
    phone.tap(morning + 8 * HOUR, &Action::EndSession).unwrap();
    phone.tap(morning + 12 * HOUR, &leave(30)).unwrap();
    assert_eq!(phone.planned(), [TUESDAY, TUESDAY + 1]);
    // A later day that was chosen stays chosen over a START.
    phone.tap(morning + 13 * HOUR, &day(TUESDAY + 5)).unwrap();
    phone.tap(morning + DAY, &START).unwrap();
    phone.tap(morning + DAY + HOUR, &leave(40)).unwrap();
    assert_eq!(phone.planned(), [TUESDAY, TUESDAY + 1, TUESDAY + 5]);
}

#[test]
fn the_lines_of_one_plan_go_to_one_day_over_a_restart() {
    let mut phone = Phone::new();
    phone.tap(0, &day(TUESDAY + 4)).unwrap();
    phone.tap(MIN, &typed(TypedInto::PlanPeg, "14: bread")).unwrap();
    phone.open();
    phone.tap(2 * MIN, &leave(20)).unwrap();
    assert_eq!(phone.planned(), [TUESDAY + 4]);
    // A day that was only chosen is kept as well.
    phone.tap(3 * MIN, &day(TUESDAY + 6)).unwrap();
    phone.open();
    phone.tap(4 * MIN, &leave(30)).unwrap();
    assert_eq!(phone.planned(), [TUESDAY + 4, TUESDAY + 6]);
}

/// START under a reset clock: the plan of the day that it was is the plan of today.
#[test]
fn a_session_begun_under_a_reset_clock_takes_up_and_uses_up_the_plan_of_its_day() {
    let (_, reset) = STEPS[0];
    let mut phone = Phone::new();
    phone.tap(-MIN, &day(TUESDAY)).unwrap();
    phone.tap(-MIN + 2_000, &leave(20)).unwrap();
    phone.app().act(&START, &stepped(reset, 0)).unwrap();
    assert_eq!(lines(&mut phone).len(), 0);
    phone.tap(5 * MIN, &CAST).unwrap();
    phone.tap(10 * MIN, &plan(PlanTap::Today { takes: true })).unwrap();
    assert_eq!(lines(&mut phone).len(), 1);
    phone.tap(20 * MIN, &Action::EndSession).unwrap();
    phone.tap(DAY, &START).unwrap();
    assert_eq!(lines(&mut phone).len(), 0, "Tuesday was fished");
}

/// The Swim proposes kept-back water neither before its time nor elsewhere when the Bank says that the time has come.
#[test]
fn the_swim_sends_the_next_cast_into_kept_back_water_when_the_plan_says_so() {
    let mut phone = Phone::new();
    phone.tap(0, &plan(PlanTap::Move { at: Some(MoveAt::AllIn { minutes: 120 }) })).unwrap();
    phone.tap(MIN, &START).unwrap();
    phone.tap(MIN + 5_000, &Action::CastHere).unwrap();
    let aim = Action::StepAim { step: restwater_swim::Step::Out };
    phone.tap(MIN + 10_000, &aim).unwrap();
    phone.tap(MIN + 20_000, &Action::KeepBack).unwrap();
    let said = |phone: &mut Phone, minute: i64| {
        let swim = swim_screen::swim(phone, minute * MIN);
        let bank = phone.bank(minute * MIN).advice;
        let due =
            bank.more.into_iter().chain([bank.detail]).any(|line| line.contains("fish kept-back water"));
        (swim.headline.starts_with("Into kept-back water"), due, swim.why)
    };
    // Five casts without a bite: without the plan it would be time to go in.
    for cast in 0..5 {
        phone.tap((5 + 20 * cast) * MIN, &CAST).unwrap();
        phone.tap((20 + 20 * cast) * MIN, &WOUND_IN).unwrap();
    }
    let (goes_in, due, _) = said(&mut phone, 110);
    assert_eq!((goes_in, due), (false, false), "kept back until later");
    phone.tap(111 * MIN, &CAST).unwrap();
    phone.tap(119 * MIN, &BITE).unwrap();
    phone.tap(120 * MIN, &LANDED).unwrap();
    let (goes_in, due, why) = said(&mut phone, 122);
    assert_eq!((goes_in, due), (true, true), "its time has come, whatever bites");
    assert!(why.contains("as you planned"), "{why}");
    let (goes_in, due, _) = said(&mut phone, 152);
    assert_eq!((goes_in, due), (false, false), "decided against");
}

#[test]
fn a_plan_that_was_dropped_before_midnight_is_not_adopted_after_it() {
    let mut phone = Phone::new();
    phone.tap(0, &day(TUESDAY)).unwrap();
    phone.tap(MIN, &leave(20)).unwrap();
    phone.tap(MIDNIGHT + DAY - 2 * MIN, &plan(PlanTap::Today { takes: false })).unwrap();
    phone.open();
    phone.tap(MIDNIGHT + DAY + 5 * MIN, &START).unwrap();
    assert_eq!(lines(&mut phone), [], "after a restart too");
}

/// A line of the plan must not contradict the rules of the match.
#[test]
fn after_all_out_and_in_a_session_left_open_no_line_of_the_plan_is_due() {
    let mut phone = Phone::new();
    phone.tap(-60 * MIN, &day(TUESDAY)).unwrap();
    let at_290 = Some(MoveAt::AllIn { minutes: 290 });
    phone.tap(-59 * MIN, &plan(PlanTap::Move { at: at_290 })).unwrap();
    phone.tap(0, &START).unwrap();
    phone.tap(2_000, &Action::Match { tap: MatchTap::Rule { rule: RuleTap::Begin } }).unwrap();
    phone.tap(20 * MIN, &CAST).unwrap();
    phone.tap(300 * MIN, &WOUND_IN).unwrap();
    assert!(phone.bank(310 * MIN).advice.detail.starts_with("Plan, "), "still due before all-out");
    for restarted in [false, true] {
        if restarted {
            phone.open();
        }
        let advice = phone.bank(320 * MIN).advice;
        let said = (advice.headline.as_str(), advice.detail.as_str());
        assert_eq!(said, ("All out.", "Weigh in under Match. END closes the session."));
    }
    let mut phone = Phone::new();
    phone.tap(-60 * MIN, &day(TUESDAY)).unwrap();
    phone.tap(-59 * MIN, &plan(PlanTap::Bearing { cdeg: 500 })).unwrap();
    phone.tap(0, &START).unwrap();
    let advice = phone.bank(14 * HOUR).advice;
    let said = (advice.headline.as_str(), advice.detail.as_str());
    assert_eq!(said, ("Still open since 14 Nov 2023.", "END closes it, then START begins a new one."));
}
