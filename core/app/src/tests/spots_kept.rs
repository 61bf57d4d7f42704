//! What is cached about the spots between taps changes no figure: whatever happened, the Bank shows what a computation from
//! the session alone gives.

use super::clock_steps::{STEPS, stepped};
use super::spots::{BITES, DRY, aimed};
use super::*;
use crate::spots::SpotsAsked;
use proptest::prelude::*;
use restwater_exchange::Progress;
use restwater_log::{EndSaid, FeedKind, FeedMeasure, FishSign};
use restwater_screen::{FeedTap, FilesTap, MendTap, SeenTap, Span};
use restwater_session::SwimKept;
use std::ops::ControlFlow;
use std::path::{Path, PathBuf};

fn go(_: Progress) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

/// What happens next, on a day with two spots and two rods.
#[derive(Debug, Clone)]
enum Next {
    /// A whole cast of a rod: a bite after some minutes, or none.
    Cast {
        rod: u8,
        dry: bool,
        minutes: i64,
    },
    /// A bait goes out and stays out.
    Out {
        rod: u8,
        dry: bool,
    },
    In {
        rod: u8,
    },
    Undo,
    Redo,
    /// The end of the nth cast is corrected.
    Mend {
        cast: usize,
        minutes: u32,
    },
    Neighbour,
    /// The map reaches elsewhere: a rod is sent far out or aside, feed goes in or fish show there, bands of a width are chosen.
    Map(usize),
    Clock(usize),
    TakeIn,
    TakeBack,
    Restart,
}

fn any_next() -> impl Strategy<Value = Next> {
    let rod = 1..3_u8;
    prop_oneof![
        9 => (rod.clone(), any::<bool>(), 1..25_i64).prop_map(|(rod, dry, minutes)| Next::Cast { rod, dry, minutes }),
        2 => (rod.clone(), any::<bool>()).prop_map(|(rod, dry)| Next::Out { rod, dry }),
        2 => rod.prop_map(|rod| Next::In { rod }),
        2 => Just(Next::Undo),
        1 => Just(Next::Redo),
        2 => (0..12_usize, 1..12_u32).prop_map(|(cast, minutes)| Next::Mend { cast, minutes }),
        1 => Just(Next::Neighbour),
        2 => (0..MAP.len()).prop_map(Next::Map),
        1 => (0..STEPS.len()).prop_map(Next::Clock),
        1 => Just(Next::TakeIn),
        1 => Just(Next::TakeBack),
        1 => Just(Next::Restart),
    ]
}

const FAR: Reach = Reach::Metres { cm: 13_000 };
const NEAR: Reach = Reach::Metres { cm: 3_500 };

/// Taps after which the map may reach elsewhere. Feed and fish are at the spot of rod 1.
const MAP: [Action; 7] = [
    Action::Tackle { rod: 2, tap: TackleTap::Reach { reach: FAR } },
    Action::Tackle { rod: 2, tap: TackleTap::Reach { reach: NEAR } },
    Action::SetSpot { rod: 1, spot: Spot { mark: None, bearing_cdeg: -4_500, reach: FAR, clipped: true } },
    Action::SetSpot { rod: 1, spot: Spot { mark: None, bearing_cdeg: BITES, reach: NEAR, clipped: true } },
    Action::Feed { tap: FeedTap::Measure { what: FeedKind::Ball, measure: FeedMeasure::Ball } },
    Action::Seen { tap: SeenTap::Sign { sign: FishSign::Bubbles } },
    Action::Swim { tap: SwimTap::Band { cm: Some(750) } },
];

struct Day {
    phone: Phone,
    now: i64,
    clock: Option<usize>,
}

impl Day {
    fn moment(&self) -> Moment {
        self.clock.map_or_else(|| at(self.now), |step| stepped(STEPS[step].1, self.now))
    }

    /// A tap a little later; one that is refused changes nothing.
    fn tap(&mut self, action: &Action) {
        self.now += 11_000;
        let moment = self.moment();
        self.phone.app().act(action, &moment).ok();
    }

    fn out(&mut self, rod: u8, dry: bool) {
        self.tap(&Action::Tackle { rod, tap: TackleTap::Bearing { cdeg: if dry { DRY } else { BITES } } });
        self.tap(&Action::Cast { rod });
    }

    fn happen(&mut self, next: &Next, file: &Path) {
        match *next {
            Next::Cast { rod, dry, minutes } => {
                self.out(rod, dry);
                self.now += minutes * MIN;
                if dry {
                    self.tap(&Action::WoundIn { rod });
                } else {
                    self.tap(&Action::Bite { rod });
                    self.tap(&Action::Landed { rod, fish: None });
                }
            }
            Next::Out { rod, dry } => self.out(rod, dry),
            Next::In { rod } => self.tap(&Action::WoundIn { rod }),
            Next::Undo => self.tap(&Action::Undo),
            Next::Redo => self.tap(&Action::Redo),
            Next::Mend { cast, minutes } => {
                let op = self.phone.app().session().and_then(|session| Some(session.casts.get(cast)?.op));
                for tap in [MendTap::End { end: EndSaid::Lost }, MendTap::After { minutes }] {
                    if let Some(op) = op {
                        self.tap(&Action::Mend { op, tap });
                    }
                }
            }
            Next::Neighbour => self.tap(&Action::SetMark { name: "gate".into(), bearing_cdeg: 1_000 }),
            Next::Map(n) => self.tap(&MAP[n]),
            Next::Clock(step) => self.clock = Some(step),
            Next::TakeIn => {
                let moment = self.moment();
                self.phone.app().take_in(file, "a friend", &moment, &mut go).unwrap();
            }
            Next::TakeBack => {
                let moment = self.moment();
                let Screen::Files(files) = self.phone.app().screen(Which::Files, &moment).unwrap() else {
                    panic!()
                };
                let import = files.imports.first().map(|import| import.id);
                if let Some(id) = import {
                    self.tap(&Action::UndoImport { id });
                }
            }
            Next::Restart => self.phone.open(),
        }
        self.now += MIN;
    }

    /// For each rod the answer with the cache is compared with a fresh one; returns how many rods have an answer.
    fn compare(&mut self) -> usize {
        let moment = self.moment();
        let app = self.phone.app();
        let now = app.on_line(&moment);
        let log = app.journal.in_memory();
        let Some(session) = app.journal.recent().current().map(|loaded| loaded.session.clone()) else {
            return 0;
        };
        let mut told = 0;
        for rod in [1, 2] {
            let Some(read) = app.advisor.read(&session, log, rod, &now) else { continue };
            let posterior = app.advisor.waits(&session, log).unwrap();
            let anew = SpotsAsked::new(&session, log, rod, &now);
            let anew = anew.answer(&session, posterior, &now, &mut SwimKept::default());
            told += usize::from(anew.is_some());
            // The spots have no answer while nothing is known about the waits.
            if read.advice.state != restwater_waits::AdviceState::CantTellYet {
                assert_eq!(read.spots, anew, "rod {rod}");
            }
            let (casts, unseen) = restwater_session::casts_by_telling(&session);
            assert_eq!((read.casts, read.unseen), (casts, unseen));
            assert_eq!(read.habit, restwater_session::habit_before_bites(&session));
        }
        told
    }
}

/// Five casts with a bite and four dry ones, enough for the spots to give advice on the cast that is out.
fn begun() -> Day {
    let mut day = Day { phone: rods::with_rods(2), now: MIN, clock: None };
    for _ in 0..4 {
        day.happen(&Next::Cast { rod: 1, dry: false, minutes: 4 }, Path::new(""));
        day.happen(&Next::Cast { rod: 1, dry: true, minutes: 18 }, Path::new(""));
    }
    day.happen(&Next::Cast { rod: 1, dry: false, minutes: 4 }, Path::new(""));
    day.happen(&Next::Out { rod: 1, dry: true }, Path::new(""));
    day
}

/// A partner's day, and what they wrote in it.
fn theirs() -> (Phone, PathBuf) {
    let mut theirs = Phone::with_ids_from(500);
    theirs.tap(-600 * MIN, &START).unwrap();
    theirs.tap(-599 * MIN, &aimed(DRY)).unwrap();
    theirs.tap(-598 * MIN, &CAST).unwrap();
    theirs.tap(-590 * MIN, &BITE).unwrap();
    theirs.tap(-580 * MIN, &Action::EndSession).unwrap();
    theirs.tap(-579 * MIN, &Action::Files { tap: FilesTap::Span { span: Span::Everything } }).unwrap();
    let file = PathBuf::from(theirs.app().send(&at(-578 * MIN), &mut go).unwrap().path);
    (theirs, file)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn what_is_kept_changes_no_figure(nexts in proptest::collection::vec(any_next(), 1..14)) {
        let (_theirs, file) = theirs();
        let mut day = begun();
        prop_assert!(day.compare() > 0, "the spots of this day tell");
        for next in &nexts {
            day.happen(next, &file);
            day.compare();
        }
    }
}
