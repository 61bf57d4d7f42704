//! Entries logged between casts, action by action: each survives a restart, can be exchanged with another
//! phone, keeps its time when the phone's clock is moved, and can be undone and redone.

use super::*;
use restwater_exchange::Progress;
use restwater_log::{FeedKind, FeedMeasure, FishSign, Side};
use restwater_screen::{FeedTap, FishTap, PlanTap, SeenTap};
use restwater_session::{catch, fold};
use std::ops::ControlFlow;
use std::path::Path;

/// An action, what has to happen before it, and how the session shows it.
struct Kept {
    ready: &'static [(i64, Action)],
    action: Action,
    shows: fn(&Session) -> String,
}

/// The minute at which it is tapped.
const TAPPED: i64 = 20;

impl Kept {
    fn phone(&self) -> Phone {
        let mut phone = started();
        for (minute, action) in self.ready {
            phone.tap(minute * MIN, action).unwrap();
        }
        phone
    }

    fn tapped(&self) -> (Phone, String, String) {
        let mut phone = self.phone();
        let before = self.shown(&mut phone);
        phone.tap(TAPPED * MIN, &self.action).unwrap();
        let after = self.shown(&mut phone);
        assert_ne!(before, after, "the session shows it");
        (phone, before, after)
    }

    fn shown(&self, phone: &mut Phone) -> String {
        (self.shows)(phone.app().session().unwrap())
    }

    fn outlives_a_restart(&self) {
        let (mut phone, _, after) = self.tapped();
        phone.open();
        assert_eq!(self.shown(&mut phone), after);
        phone.boots = 1;
        phone.open();
        assert_eq!(self.shown(&mut phone), after);
    }

    fn goes_to_another_phone(&self) {
        let (mut phone, _, after) = self.tapped();
        let mut go = |_: Progress| ControlFlow::Continue(());
        let sent = phone.app().send(&at(40 * MIN), &mut go).unwrap();
        let mut theirs = Phone::with_ids_from(90);
        for _ in 0..2 {
            theirs.app().take_in(Path::new(&sent.path), "a friend", &at(41 * MIN), &mut go).unwrap();
        }
        let id = phone.app().session().unwrap().id;
        let ops = theirs.app().journal.store().ops_of(id).unwrap();
        assert_eq!((self.shows)(&fold(id, &ops)), after);
    }

    fn keeps_its_time_when_the_clock_is_moved(&self) {
        let (_, _, after) = self.tapped();
        for step in [-1_700_000_000_000, 365 * 86_400_000, -120 * MIN] {
            let mut phone = self.phone();
            let moved = Moment { wall_ms: at(TAPPED * MIN).wall_ms + step, ..at(TAPPED * MIN) };
            phone.app().act(&self.action, &moved).unwrap();
            assert_eq!(self.shown(&mut phone), after, "{step}");
        }
    }

    fn is_taken_back_and_brought_back(&self) {
        let (mut phone, before, after) = self.tapped();
        phone.tap((TAPPED + 1) * MIN, &Action::Undo).unwrap();
        assert_eq!(self.shown(&mut phone), before);
        phone.open();
        phone.tap((TAPPED + 2) * MIN, &Action::Redo).unwrap();
        assert_eq!(self.shown(&mut phone), after);
    }
}

macro_rules! kept {
    ($($name:ident: $kept:expr;)+) => {$(
        mod $name {
            use super::*;

            #[test]
            fn outlives_a_restart() {
                $kept.outlives_a_restart();
            }

            #[test]
            fn goes_to_another_phone() {
                $kept.goes_to_another_phone();
            }

            #[test]
            fn keeps_its_time_when_the_clock_is_moved() {
                $kept.keeps_its_time_when_the_clock_is_moved();
            }

            #[test]
            fn is_taken_back_and_brought_back() {
                $kept.is_taken_back_and_brought_back();
            }
        }
    )+};
}

const LANDED_ALREADY: &[(i64, Action)] = &[(1, CAST), (10, BITE), (12, LANDED)];
const HANDFUL: FeedTap = FeedTap::Measure { what: FeedKind::Loose, measure: FeedMeasure::Handful };

fn fish(session: &Session) -> String {
    format!("{:?}", catch(session).iter().map(|f| (&f.class, &f.weight, f.put_back)).collect::<Vec<_>>())
}

fn breaks(session: &Session) -> String {
    let of = |rest: &restwater_session::Break| (rest.from.at_ms, rest.to.as_ref().map(|to| to.at_ms));
    format!("{:?}", session.breaks.iter().map(of).collect::<Vec<_>>())
}

fn ends(session: &Session) -> String {
    let of = |cast: &restwater_session::Cast| {
        let bite = cast.bite.as_ref().map(|(at, _)| at.at_ms);
        (bite, cast.end.as_ref().map(|end| (end.cause.clone(), end.at.at_ms)))
    };
    format!("{:?}", session.casts.iter().map(of).collect::<Vec<_>>())
}

fn feed(session: &Session) -> String {
    format!("{:?}", session.feedings().iter().map(|f| (f.at.at_ms, f.amount)).collect::<Vec<_>>())
}

kept! {
    away: Kept { ready: &[(1, CAST), (15, WOUND_IN)], action: Action::Away, shows: breaks };
    returned: Kept { ready: &[(1, CAST), (15, WOUND_IN), (16, Action::Away)], action: Action::Returned, shows: breaks };
    put_back: Kept {
        ready: LANDED_ALREADY,
        action: Action::Fish { cast: None, tap: FishTap::PutBack { back: true } },
        shows: fish,
    };
    class: Kept {
        ready: LANDED_ALREADY,
        action: Action::Fish { cast: None, tap: FishTap::Class { name: "Roach".into() } },
        shows: fish,
    };
    weight: Kept {
        ready: LANDED_ALREADY,
        action: Action::Fish {
            cast: None,
            tap: FishTap::Weight { unit: restwater_log::WeightUnit::Drams, count: 1_728, guessed: false },
        },
        shows: fish,
    };
    landed_while_out: Kept { ready: &[(1, CAST)], action: LANDED, shows: ends };
    lost_while_out: Kept { ready: &[(1, CAST)], action: Action::Lost { rod: 1 }, shows: ends };
    fed: Kept { ready: &[(1, CAST)], action: Action::Feed { tap: HANDFUL }, shows: feed };
    fed_again: Kept {
        ready: &[(1, Action::Feed { tap: HANDFUL })],
        action: Action::Feed { tap: FeedTap::Again },
        shows: feed,
    };
    feeder_set: Kept {
        ready: &[],
        action: Action::Tackle { rod: 1, tap: TackleTap::Feeder { mg: Some(30_000) } },
        shows: |session| format!("{:?}", session.rods[0].fill_mg),
    };
    fish_shown: Kept {
        ready: &[(1, Action::StepAim { step: Step::Out })],
        action: Action::Seen { tap: SeenTap::Sign { sign: FishSign::Bubbles } },
        shows: |session| format!("{:?}", session.shown.iter().map(|s| (s.at.at_ms, s.sign)).collect::<Vec<_>>()),
    };
    neighbour_caught: Kept {
        ready: &[],
        action: Action::Seen { tap: SeenTap::Neighbour { side: Side::Across } },
        shows: |session| format!("{:?}", session.neighbours.iter().map(|f| (f.at.at_ms, f.side)).collect::<Vec<_>>()),
    };
    plan_dropped: Kept {
        ready: &[
            (1, Action::Plan { tap: PlanTap::Leave { minutes: Some(20) } }),
            (2, Action::Plan { tap: PlanTap::Today { takes: true } }),
        ],
        action: Action::Plan { tap: PlanTap::Today { takes: false } },
        shows: |session| format!("{:?}", session.plan.as_ref().map(|plan| &plan.lines)),
    };
    fed_with_a_cast: Kept {
        ready: &[(1, Action::Tackle { rod: 1, tap: TackleTap::Feeder { mg: Some(30_000) } })],
        action: CAST,
        shows: feed,
    };
}
