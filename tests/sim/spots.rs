//! Where to fish and how long, decided together: an angler who goes where the Swim's headline says and leaves each cast for the
//! minutes that the Bank's headline ends with, against others on the same days.

use super::angler::Angler;
use super::day::{Bank, DAY, EXTRA, TURN, fish};
use super::luck::{Luck, SPOTS};
use super::restwater::{Restwater, just_before_a_cast, minutes_shown};
use super::share::{Share, oracle};
use super::water::Water;
use restwater_log::{Payload, Reach, Spot, SwimSetup, WeightUnit};
use restwater_screen::{Reading, SpotsReading, SwimPad, SwimScreen, Wording, swim_view};
use restwater_session::{Session, Stamp, SwimKept, fold, leave_by_spots, swim_of, where_next, written};
use restwater_waits::{AdviceState, Record, Settings, Wait, WaitPosterior};

/// Aiming marks, one for each spot: no name is part of another.
const MARKS: [&str; SPOTS] = ["oak", "gate", "reeds", "pylon", "church", "willow"];
/// Hundredths of a degree between two of them, by how many there are: the fan then has as many columns as marks.
const APART_CDEG: [i32; SPOTS + 1] = [1_400, 1_400, 1_400, 1_400, 1_400, 1_400, 1_300];
/// The range of all casts, cm.
const RANGE_CM: u32 = 3_000;

/// What all of them caught on one water.
#[derive(Debug, Clone, Default)]
pub struct Caught {
    /// Bites an hour: as the screens advise, in turn by the advice, in turn with the best leave time known, on one spot by the
    /// advice.
    pub per_hour: [Share; 4],
    /// As the screens advise, over the best in turn and over the advice in turn.
    pub over: [Share; 2],
    /// The share of casts whose leave time the spots decided.
    pub told: Share,
}

/// Somebody who reads the screens. The log is a real one and is folded before every cast.
struct Reader {
    day: written::Written,
    posterior: WaitPosterior,
    opened: WaitPosterior,
    words: Wording,
    spots: usize,
    aimed: Option<usize>,
    told: [u32; 2],
}

impl Reader {
    fn new(spots: usize) -> Option<Self> {
        let record = Record { turn_round_min: TURN, bite_extra_min: EXTRA, ..Record::of_today(&[]) };
        let opened = WaitPosterior::new(&record, &Settings::default()).ok()?;
        let mut reader = Self {
            day: written::Written::new(1),
            posterior: opened.clone(),
            opened,
            words: Wording::new(),
            spots,
            aimed: None,
            told: [0; 2],
        };
        reader.begin();
        Some(reader)
    }

    fn spot(&self, spot: usize) -> Spot {
        let apart = APART_CDEG[self.spots];
        let of = |count: usize| i32::try_from(count).unwrap_or(0);
        let bearing_cdeg = apart * of(spot) - apart * of(self.spots - 1) / 2;
        Spot { mark: None, bearing_cdeg, reach: Reach::Metres { cm: RANGE_CM }, clipped: true }
    }

    fn begin(&mut self) {
        self.posterior = self.opened.clone();
        self.aimed = None;
        self.day = written::Written::new(1);
        // One band, so that there are as many squares as spots.
        let swim = SwimSetup { band_cm: Some(2 * RANGE_CM), ..SwimSetup::default() };
        self.day.log(0, Payload::SwimSet(swim));
        for (spot, name) in MARKS.iter().enumerate().take(self.spots) {
            let bearing_cdeg = self.spot(spot).bearing_cdeg;
            self.day.log(0, Payload::MarkSet { name: (*name).to_owned(), bearing_cdeg });
        }
    }

    /// The session as it is, and a moment of it.
    fn session(&self, clock: f64) -> (Session, Stamp) {
        let session = fold(written::SESSION, &self.day.ops);
        let now = session.time_line.place(self.day.device, &written::second(second(clock)));
        (session, now)
    }

    /// Where the Swim's headline sends the next cast.
    fn next(&self, clock: f64) -> Option<usize> {
        let (session, now) = self.session(clock);
        let swim = swim_of(&session).ok()?;
        let figures = swim.figures(now.at_ms);
        let next = where_next(&session, &swim, &figures, Some(&self.posterior), &now);
        let ring = next.ranked.first().map(|n| n.cell);
        let view = swim_view(&SwimScreen {
            session: &session,
            swim: &swim,
            figures: &figures,
            next: &next,
            drift: swim.drift(now.at_ms),
            aimed: ring,
            known: None,
            planned: false,
            stay: None,
            all_out: None,
            ring,
            pad: SwimPad::Plain,
            rod: 1,
            replay: None,
            steps_back: 0,
            name: "",
            place: [String::new(), String::new(), String::new()],
            weights: WeightUnit::Grams,
            words: &self.words,
        });
        // A square between two marks names both.
        MARKS.iter().position(|mark| view.headline.contains(&format!(": {mark},")))
    }

    /// Casts there, and reads how long to leave it.
    fn cast(&mut self, clock: f64, spot: usize) -> Option<f64> {
        if self.aimed.replace(spot) != Some(spot) {
            let spot = self.spot(spot);
            self.day.log(second(clock), Payload::SpotSet { rod: 1, spot });
        }
        self.day.log(second(clock), Payload::Cast { rod: 1 });
        let (session, now) = self.session(clock);
        let advice = self.posterior.advice();
        let known = advice.state != AdviceState::CantTellYet;
        let leave =
            leave_by_spots(&session, &self.posterior, 1, &now, &mut SwimKept::default()).filter(|_| known);
        self.told[0] += u32::from(leave.is_some());
        self.told[1] += 1;
        let advice = leave.as_ref().map_or(advice, |leave| leave.over(advice));
        let spots = leave.map(|leave| SpotsReading { leave, move_to: None });
        let reading = Reading { waited_min: Some(0.0), spots, ..just_before_a_cast(advice) };
        minutes_shown(&self.words, &session, &now, &reading)
    }

    /// The end of the cast that went out at `clock`.
    fn ended(&mut self, clock: f64, out: f64, bite: bool) {
        let at = second(clock + out);
        if bite {
            self.day.log(at, Payload::Bite { rod: 1 });
            self.day.log(at + 1, Payload::Missed { rod: 1 });
        } else {
            self.day.log(at, Payload::WoundIn { rod: 1 });
        }
        if let Ok(wait) = Wait::new(out, bite) {
            self.posterior.add(wait);
        }
    }

    /// A day by what the screens say.
    fn day(&mut self, water: &Water, luck: &Luck) -> usize {
        self.begin();
        let (mut clock, mut casts, mut bites) = (0.0, 0, 0);
        let mut disturbed = [-1e9; SPOTS];
        while clock < DAY {
            let fate = *luck.cast(casts);
            let spot = self.next(clock).unwrap_or(casts % water.spots);
            let leave = self.cast(clock, spot).unwrap_or(f64::NAN);
            let wait = water.wait(luck, casts, clock, spot, disturbed[spot], 1.0);
            let bite = wait.is_some_and(|w| w <= leave);
            let out = wait.filter(|_| bite).unwrap_or(leave);
            if clock + out > DAY {
                break;
            }
            self.ended(clock, out, bite);
            clock += out;
            disturbed[spot] = clock;
            clock += TURN * (0.7 + 0.6 * fate.u[3]) + if bite { EXTRA * (0.5 + fate.u[4]) } else { 0.0 };
            casts += 1;
            bites += usize::from(bite);
        }
        bites
    }
}

/// Seconds of the log at a minute of the day.
fn second(clock: f64) -> i64 {
    30 + (60.0 * clock).round() as i64
}

/// Fishes the days of one water.
pub fn caught(water: &Water, days: u64, run: u64) -> Caught {
    let mut found = Caught::default();
    let mut knows = oracle(water, run);
    let (mut advice, one_spot) = (Restwater::default(), Water { spots: 1, ..*water });
    let Some(mut reader) = Reader::new(water.spots) else { return found };
    for luck in (0..days).map(|day| Luck::of_day(water.seed(run) ^ 0x0005_9075, day)) {
        let told = reader.day(water, &luck);
        let mut by_advice = |water: &Water| {
            advice.begin(&[]);
            fish(water, &luck, &mut advice, Bank::all_in()).bites
        };
        let (in_turn, stay) = (by_advice(water), by_advice(&one_spot));
        let best = fish(water, &luck, &mut knows, Bank::all_in()).bites;
        for (share, bites) in found.per_hour.iter_mut().zip([told, in_turn, best, stay]) {
            share.add(bites as f64, DAY / 60.0);
        }
        found.over[0].add(told as f64, best as f64);
        found.over[1].add(told as f64, in_turn as f64);
    }
    let [told, casts] = reader.told;
    found.told.add(f64::from(told), f64::from(casts));
    found
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::super::spot_waters::{kept_back, looked_at};
    use super::*;
    use std::collections::HashSet;

    #[test]
    fn the_swim_has_as_many_squares_as_the_water_has_spots_and_each_is_read_by_its_mark() {
        for spots in 4..=SPOTS {
            let mut reader = Reader::new(spots).unwrap();
            let swim = swim_of(&reader.session(0.0).0).unwrap();
            assert_eq!(swim.cells().len(), spots);
            let at = |spot| f64::from(reader.spot(spot).bearing_cdeg) / 100.0;
            let cells: HashSet<_> = (0..spots)
                .map(|spot| {
                    swim.cell_of(restwater_swim::Spot { bearing_deg: at(spot), range_m: 30.0 }).unwrap()
                })
                .collect();
            assert_eq!(cells.len(), spots);
            for cast in 0..spots {
                let clock = 20.0 * cast as f64;
                let to = reader.next(clock).unwrap();
                assert!(reader.cast(clock, to).unwrap() > 0.0);
                reader.ended(clock, 12.0, cast == 1);
            }
        }
    }

    #[test]
    fn no_water_is_in_both_lists() {
        let (first, second) = (looked_at(), kept_back());
        let names: HashSet<&str> = first.iter().chain(&second).map(|w| w.name).collect();
        assert_eq!(names.len(), first.len() + second.len());
    }
}
