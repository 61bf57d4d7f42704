//! Where and how long, decided together, as the Bank and the Swim show it.

use super::clock_steps::{STEPS, stepped};
use super::*;
use restwater_exchange::Progress;
use restwater_log::EndSaid;
use restwater_screen::{Alarm, FilesTap, MatchTap, MendTap, PhoneTap, RuleTap, Span, SwimView};
use restwater_session::{SwimKept, where_next};
use std::ops::ControlFlow;
use std::path::PathBuf;

fn go(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

pub(super) fn aimed(cdeg: i32) -> Action {
    tackle(TackleTap::Bearing { cdeg })
}

pub(super) const BITES: i32 = -2_000;
pub(super) const DRY: i32 = 2_000;

impl Phone {
    pub(super) fn the_swim(&mut self, ms: i64) -> SwimView {
        match self.app().screen(Which::Swim, &at(ms)).unwrap() {
            Screen::Swim(swim) => swim,
            other => panic!("{other:?}"),
        }
    }

    /// One cast: a bite after five minutes, or wound in after eighteen. Gives the time of the next.
    pub(super) fn fish_at(&mut self, now: i64, bearing: i32) -> i64 {
        self.tap(now, &aimed(bearing)).unwrap();
        self.tap(now + 10_000, &CAST).unwrap();
        if bearing == BITES {
            self.tap(now + 5 * MIN, &BITE).unwrap();
            self.tap(now + 6 * MIN, &LANDED).unwrap();
            return now + 9 * MIN;
        }
        self.tap(now + 18 * MIN, &WOUND_IN).unwrap();
        now + 20 * MIN
    }

    /// Both spots in turn. Gives the time of the next cast.
    fn fish_both(&mut self, rounds: usize) -> i64 {
        (0..rounds).fold(MIN, |now, _| {
            let now = self.fish_at(now, BITES);
            self.fish_at(now, DRY)
        })
    }

    /// After six rounds rod 2's bait goes out on the good spot, and a minute later rod 1's on the dry one.
    fn both_rods_out(&mut self) -> i64 {
        let now = self.fish_both(6);
        self.tap(now, &Action::Tackle { rod: 2, tap: TackleTap::Bearing { cdeg: BITES } }).unwrap();
        self.tap(now + 10_000, &Action::Cast { rod: 2 }).unwrap();
        self.tap(now + MIN, &aimed(DRY)).unwrap();
        self.tap(now + MIN + 10_000, &CAST).unwrap();
        now
    }
}

/// Bites on one spot, none on another, several times over.
pub(super) fn two_spots(rounds: usize) -> (Phone, i64) {
    let mut phone = started();
    let mut now = MIN;
    for _ in 0..rounds {
        now = phone.fish_at(now, BITES);
        now = phone.fish_at(now, DRY);
    }
    (phone, now)
}

/// What both screens say about the spots.
fn says(phone: &mut Phone, now: i64) -> (Vec<String>, Vec<String>) {
    let spots = |line: &String| line.contains("of 100 such spots");
    let (bank, swim) = (phone.bank(now).advice.more, phone.the_swim(now));
    let lines = swim.reasons.into_iter().chain(swim.others);
    (bank.into_iter().filter(spots).collect(), lines.filter(spots).collect())
}

#[test]
fn a_cast_on_the_dry_spot_is_to_be_followed_by_a_move_and_the_swim_says_where_fish_are_likelier() {
    let (mut phone, now) = two_spots(6);
    phone.tap(now, &aimed(DRY)).unwrap();
    phone.tap(now + 10_000, &CAST).unwrap();
    let bank = phone.bank(now + MIN).advice;
    assert!(bank.more[0].starts_with("Then move to 20° left, "), "{:?}", bank.more);
    assert!(
        bank.more[0].contains("Nothing here in 107 min over 6 casts before this one."),
        "{:?}",
        bank.more
    );
    let minutes: f64 =
        bank.headline.rsplit(|c: char| !c.is_ascii_digit()).find_map(|d| d.parse().ok()).unwrap();
    assert!(minutes < 18.0, "{}", bank.headline);
    assert_eq!(phone.bank(now + MIN).strip.recast_min, Some(minutes), "one figure");
    let Screen::Waits(waits) = phone.app().screen(Which::Waits, &at(now + MIN)).unwrap() else { panic!() };
    let same = format!("At the spot of rod 1, leave a cast {minutes} min.");
    assert!(waits.counts.ends_with(&same), "what the Bank says is named here too: {}", waits.counts);
    let later = phone.bank(now + (minutes as i64 + 2) * MIN).advice;
    assert_eq!((later.tone, &later.more[0]), (AdviceTone::Past, &bank.more[0]));
    let swim = phone.the_swim(now + MIN);
    assert!(swim.reasons[0].contains("of 100 such spots hold fish"), "{:?}", swim.reasons);
    assert!(swim.headline.contains("20° left"), "both screens send to one place: {}", swim.headline);
}

#[test]
fn on_one_spot_and_in_a_short_record_spots_are_not_mentioned() {
    let (mut one, now) = with_bites(6);
    assert_eq!(says(&mut one, now + MIN), (Vec::new(), Vec::new()));
    let Screen::Waits(waits) = one.app().screen(Which::Waits, &at(now + MIN)).unwrap() else { panic!() };
    assert!(!waits.counts.contains("spot"), "{}", waits.counts);
    let (mut short, now) = two_spots(1);
    assert_eq!(says(&mut short, now + MIN), (Vec::new(), Vec::new()));
}

/// The record decides, so days of any length on one spot, dry ones too, have the Bank and the Swim as they were.
#[test]
fn on_one_spot_where_next_and_how_long_are_what_they_were_to_the_bit() {
    let mut phone = started();
    let mut now = MIN;
    for cast in 0..9 {
        if cast % 3 == 0 {
            now = phone.fish_at(now, BITES);
        } else {
            phone.tap(now, &aimed(BITES)).unwrap();
            phone.tap(now + 10_000, &CAST).unwrap();
            phone.tap(now + 18 * MIN, &WOUND_IN).unwrap();
            now += 20 * MIN;
        }
        let stamp = phone.app().on_line(&at(now));
        let session = phone.app().session().unwrap().clone();
        let swim = restwater_session::swim_of(&session).unwrap();
        let figures = swim.figures(stamp.at_ms);
        let log = phone.app().journal.in_memory();
        let advisor = &mut phone.app().advisor;
        let told = where_next(&session, &swim, &figures, advisor.waits(&session, log), &stamp);
        assert_eq!(told, swim.where_next(&figures));
        let reading = advisor.read(&session, log, 1, &stamp).unwrap();
        assert_eq!(reading.advice, advisor.waits(&session, log).unwrap().advice());
        assert_eq!(reading.spots, None);
    }
}

/// A cast without a bite that is corrected to a bite after five minutes counts as if it had been logged like that; UNDO takes it
/// back.
#[test]
fn a_corrected_cast_counts_as_what_it_was_corrected_to() {
    let (mut phone, now) = two_spots(6);
    let before = says(&mut phone, now);
    let session = phone.app().session().unwrap().clone();
    let op = session.casts.last().unwrap().op;
    let start = session.casts.last().unwrap().start.at_ms;
    let mend = |tap| Action::Mend { op, tap };
    phone.tap(now, &mend(MendTap::End { end: EndSaid::Lost })).unwrap();
    phone.tap(now + 2_000, &mend(MendTap::After { minutes: 5 })).unwrap();
    let (mut logged, next) = two_spots(5);
    let bites = logged.fish_at(next, BITES);
    logged.tap(bites, &aimed(DRY)).unwrap();
    logged.tap(bites + 10_000, &CAST).unwrap();
    assert_eq!(logged.app().session().unwrap().casts.last().unwrap().start.at_ms, start);
    logged.tap(start + 5 * MIN, &BITE).unwrap();
    logged.tap(start + 5 * MIN + 1_000, &Action::Lost { rod: 1 }).unwrap();
    let mended = says(&mut phone, now);
    assert_ne!(mended, before);
    assert_eq!(mended, says(&mut logged, now));
    phone.tap(now + 4_000, &Action::Undo).unwrap();
    phone.tap(now + 6_000, &Action::Undo).unwrap();
    assert_eq!(says(&mut phone, now), before);
}

#[test]
fn a_restart_says_the_same_of_the_spots() {
    let (mut phone, now) = two_spots(6);
    let before = says(&mut phone, now);
    assert!(!before.0.is_empty() && !before.1.is_empty(), "{before:?}");
    phone.open();
    assert_eq!(says(&mut phone, now), before);
}

#[test]
fn a_wall_clock_that_was_set_does_not_move_the_belief() {
    let (mut phone, now) = two_spots(6);
    let before = (phone.bank(now).advice, phone.the_swim(now));
    for (name, step) in STEPS {
        let now = stepped(step, now);
        let Screen::Bank(bank) = phone.app().screen(Which::Bank, &now).unwrap() else { panic!() };
        let Screen::Swim(swim) = phone.app().screen(Which::Swim, &now).unwrap() else { panic!() };
        assert_eq!((bank.advice, swim), before, "{name}");
    }
}

#[test]
fn a_cast_that_is_taken_back_is_as_if_it_had_never_been() {
    let (mut phone, now) = two_spots(6);
    let before = says(&mut phone, now + 40 * MIN);
    let next = phone.fish_at(now, BITES);
    assert_ne!(says(&mut phone, now + 40 * MIN), before);
    // Landed, the bite, the cast and where it went.
    for undo in 0..4 {
        phone.tap(next + undo * 1_000, &Action::Undo).unwrap();
    }
    assert_eq!(says(&mut phone, now + 40 * MIN), before);
}

#[test]
fn a_partners_day_does_not_move_my_belief() {
    let mut theirs = Phone::with_ids_from(500);
    theirs.tap(-600 * MIN, &typed(TypedInto::Water, "Mill pool")).unwrap();
    theirs.tap(-599 * MIN, &START).unwrap();
    let mut at_ms = -598 * MIN;
    for _ in 0..6 {
        // Bites where mine are not.
        for (bearing, after, end) in [(DRY, 5, BITE), (BITES, 18, WOUND_IN)] {
            theirs.tap(at_ms, &aimed(bearing)).unwrap();
            theirs.tap(at_ms + 10_000, &CAST).unwrap();
            theirs.tap(at_ms + after * MIN, &end).unwrap();
            at_ms += 22 * MIN;
        }
    }
    theirs.tap(at_ms, &Action::EndSession).unwrap();
    theirs.tap(at_ms + MIN, &Action::Files { tap: FilesTap::Span { span: Span::Everything } }).unwrap();
    let file = PathBuf::from(theirs.app().send(&at(at_ms + MIN), &mut go).unwrap().path);
    let (mut mine, now) = two_spots(6);
    let before = says(&mut mine, now);
    mine.app().take_in(&file, "a friend", &at(now), &mut go).unwrap();
    assert_eq!(says(&mut mine, now), before);
}

/// What is logged of the water under a running cast changes what the Bank says at once, and a restart says the same.
#[test]
fn a_snag_logged_where_the_bank_sends_the_next_cast_sends_it_elsewhere() {
    let (mut phone, now) = two_spots(6);
    phone.tap(now, &aimed(DRY)).unwrap();
    phone.tap(now + 10_000, &CAST).unwrap();
    let first = |phone: &mut Phone, ms| phone.bank(ms).advice.more[0].clone();
    let before = first(&mut phone, now + MIN);
    assert!(before.starts_with("Then move to "), "{before}");
    let cell = move_to(&mut phone).unwrap();
    phone.tap(now + 2 * MIN, &Action::Swim { tap: SwimTap::Cell { cell } }).unwrap();
    let snag = SwimTap::Hazard { hazard: restwater_screen::HazardKind::Snag };
    phone.tap(now + 2 * MIN + 1_000, &Action::Swim { tap: snag }).unwrap();
    assert_ne!(move_to(&mut phone), Some(cell));
    let said = first(&mut phone, now + 3 * MIN);
    assert_ne!(said, before);
    phone.open();
    assert_eq!(first(&mut phone, now + 3 * MIN), said);
}

/// Where the Bank sends rod 1 after the cast that it has out.
pub(super) fn move_to(phone: &mut Phone) -> Option<restwater_swim::CellId> {
    let session = phone.app().session().unwrap().clone();
    let splash = session.running(1).unwrap().start.clone();
    let log = phone.app().journal.in_memory();
    let posterior = phone.app().advisor.waits(&session, log).unwrap();
    restwater_session::leave_by_spots(&session, posterior, 1, &splash, &mut SwimKept::default())
        .and_then(|leave| leave.move_to)
}

/// The other rod's bait is on the good spot: the Bank sends no cast onto it, whatever happens on that rod while this one is out.
#[test]
fn no_rod_is_sent_onto_the_bait_of_another() {
    let mut phone = rods::with_rods(2);
    let now = phone.both_rods_out();
    phone.tap(now + MIN + 20_000, &Action::ChooseRod { rod: 1 }).unwrap();
    let session = phone.app().session().unwrap().clone();
    let swim = restwater_session::swim_of(&session).unwrap();
    let figures = swim.figures(session.running(1).unwrap().start.at_ms);
    let baits: Vec<_> = swim
        .cells()
        .iter()
        .zip(&figures.cells)
        .filter(|(_, known)| known.out_now)
        .map(|(cell, _)| cell.id)
        .collect();
    assert!(!baits.is_empty());
    let to = move_to(&mut phone).expect("the dry spot is to be left");
    assert!(!baits.contains(&to), "{to:?} of {baits:?}");
    let said = phone.bank(now + 2 * MIN).advice.more[0].clone();
    assert_eq!(phone.bank(now + 10 * MIN).advice.more[0], said, "one answer as long as the cast is out");
}

/// Rod 1 fishes the dry spot and rod 2 the good one. Each rings at its own minute, the rod with the fewest minutes left is
/// due first, and the figures of the match are the same whichever rod is chosen.
#[test]
fn each_rod_rings_at_its_own_minute_whichever_is_chosen() {
    let mut phone = rods::with_rods(2);
    phone.tap(1_000, &Action::Phone { tap: PhoneTap::Alarm { alarm: Alarm::Recast } }).unwrap();
    phone.tap(2_000, &Action::Match { tap: MatchTap::Rule { rule: RuleTap::Begin } }).unwrap();
    // The rod on the good spot has waited longer, and is to wait longer still.
    let now = phone.both_rods_out();
    let then = now + 2 * MIN;
    let splash = |rod: u8| if rod == 1 { now + MIN + 10_000 } else { now + 10_000 };
    let mut seen = Vec::new();
    for chosen in [1, 2] {
        phone.tap(then, &Action::ChooseRod { rod: chosen }).unwrap();
        let bank = phone.bank(then);
        let minutes = bank.strip.recast_min.unwrap();
        let alarms = phone.app().watch(&at(then)).alarms;
        let own = alarms.iter().find(|alarm| alarm.rod == Some(chosen)).unwrap();
        let due = own.at_wall_ms - at(splash(chosen)).wall_ms;
        assert_eq!(due, (minutes * 60_000.0) as i64, "rod {chosen}: the minute of the Bank");
        let Screen::Match(match_day) = phone.app().screen(Which::Match, &at(then)).unwrap() else { panic!() };
        let marks = bank.rods.iter().map(|rod| rod.label.clone()).collect::<Vec<_>>();
        seen.push((alarms, marks, match_day.lines, match_day.coming, minutes));
    }
    let [rod_1, rod_2] = &seen[..] else { panic!() };
    assert!(rod_1.4 + 2.0 < rod_2.4, "the spots tell: {} and {}", rod_1.4, rod_2.4);
    assert_eq!((&rod_1.0, &rod_1.1), (&rod_2.0, &rod_2.1));
    assert_eq!((&rod_1.2, &rod_1.3), (&rod_2.2, &rod_2.3));
    assert_eq!(rod_1.1, ["Rod 1: due first", "Rod 2"]);
}

/// EARLIER shows where next as it was read then, with the baits that were out.
#[test]
fn an_earlier_moment_ranks_the_spots_as_they_were_ranked_then() {
    let (mut phone, now) = two_spots(6);
    phone.tap(now, &aimed(DRY)).unwrap();
    phone.tap(now + 10_000, &CAST).unwrap();
    let live = phone.the_swim(now + 8 * MIN);
    phone.tap(now + 12 * MIN, &WOUND_IN).unwrap();
    phone.tap(now + 18 * MIN, &Action::Replay { steps_back: 1 }).unwrap();
    let replayed = phone.the_swim(now + 18 * MIN);
    assert!(!replayed.replay.is_empty());
    assert_eq!(
        (replayed.headline, replayed.reasons, replayed.others),
        (live.headline, live.reasons, live.others)
    );
}

/// Twitches restart the wait and are not casts.
#[test]
fn a_cast_that_was_twitched_is_one_dry_cast() {
    let mut phone = Phone::new();
    phone.tap(-5_000, &Action::Setup { tap: SetupTap::TwitchRestarts { restarts: true } }).unwrap();
    phone.tap(0, &START).unwrap();
    let mut now = MIN;
    for _ in 0..6 {
        now = phone.fish_at(now, BITES);
        phone.tap(now, &aimed(DRY)).unwrap();
        for (after, action) in [(10_000, CAST), (6 * MIN, Action::Twitch { rod: 1 }), (18 * MIN, WOUND_IN)] {
            phone.tap(now + after, &action).unwrap();
        }
        now += 20 * MIN;
    }
    phone.tap(now, &aimed(DRY)).unwrap();
    phone.tap(now + 10_000, &CAST).unwrap();
    let said = phone.bank(now + MIN).advice.more;
    assert!(said.iter().any(|line| line.contains("over 6 casts before this one")), "{said:?}");
}

#[test]
fn a_spot_where_no_cast_can_land_is_refused() {
    let mut phone = started();
    let far =
        Spot { mark: None, bearing_cdeg: 0, reach: Reach::Yards { hundredths: 100_000 }, clipped: false };
    let refused = phone.tap(1_000, &Action::SetSpot { rod: 1, spot: far }).unwrap_err();
    assert_eq!(refused.kind(), ErrorKind::BadInput);
    let zero = Action::Swim { tap: SwimTap::RestTarget { minutes: 0 } };
    assert_eq!(phone.tap(2_000, &zero).unwrap_err().kind(), ErrorKind::BadInput);
    assert_eq!(phone.app().ops().len(), 1);
}
