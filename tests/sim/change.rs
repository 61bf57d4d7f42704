//! "Did it matter?": how often changes that do nothing are called "clearly better", and how often one that
//! matters is. The verdict is read after every cast of the day, as an angler may read it.

use super::day::{DAY, EXTRA, TURN};
use super::feeds::{Feeds, When};
use super::luck::Luck;
use super::water::Water;
use restwater_compare::poisson_rates::Tally;
use restwater_compare::{
    AlternationPlan, CLEAR_BELOW, CastRow, Change, Factor, Side, Verdict, any_look_p,
    change_findings_without_power, find_changes,
};
use restwater_waits::Wait;
use std::collections::BTreeMap;

/// How the angler changes things.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Habit {
    /// The colour by the alternation plan, cast by cast, on one spot, and nothing else.
    Alternating,
    /// The colour every half hour, on one spot, and nothing else.
    HalfHours,
    /// The colour once, halfway through the day, on one spot, and nothing else.
    Once,
    /// The colour by the alternation plan, four casts on each spot, bait and hooklength now and then.
    Everything,
    /// The colour after two casts in a row without a bite, the spots in turn, bait and hooklength now and then.
    OnAWhim,
    /// Feed every hour on the hour, on one spot, and nothing else: it counts for half an hour.
    FeedsByTheHour,
    /// Feed after two casts in a row without a bite, if the last feed no longer counts, on one spot, and
    /// nothing else.
    FeedsWhenDry,
}

impl Habit {
    /// All of them, with their names.
    pub const ALL: [(Self, &'static str); 5] = [
        (Self::Alternating, "alternating"),
        (Self::HalfHours, "by half hours"),
        (Self::Once, "once"),
        (Self::Everything, "everything"),
        (Self::OnAWhim, "on a whim"),
    ];

    /// The ways to feed, with their names.
    pub const FEEDING: [(Self, &'static str); 2] =
        [(Self::FeedsByTheHour, "fed by the hour"), (Self::FeedsWhenDry, "fed when dry")];

    /// The factor that may matter to the fish, and the value that they may prefer.
    fn changes(self) -> (Factor, &'static str) {
        match self {
            Self::FeedsByTheHour | Self::FeedsWhenDry => (Factor::Feed, "fed"),
            _ => (Factor::Colour, "B"),
        }
    }

    fn feeds(self, times: f64) -> Feeds {
        match self {
            Self::FeedsByTheHour => Feeds::new(When::ByTheHour, times),
            Self::FeedsWhenDry => Feeds::new(When::Dry, times),
            _ => Feeds::never(),
        }
    }

    fn one_thing_only(self) -> bool {
        !matches!(self, Self::Everything | Self::OnAWhim)
    }
}

/// Minutes for which every cast is left.
const LEAVE: f64 = 20.0;

/// The verdicts of many days.
#[derive(Debug, Clone, Copy, Default)]
pub struct Said {
    /// Days.
    pub days: f64,
    /// Changes for which the log had data at all-out, over all days.
    pub offered: f64,
    /// Days with a false "clearly better" at all-out: for a change that does nothing, or for the worse
    /// colour.
    pub untrue: f64,
    /// Days with one at any look.
    pub untrue_ever: f64,
    /// Days on which the better colour is called so at all-out.
    pub found: f64,
    /// Days on which it is at any look.
    pub found_ever: f64,
}

impl Said {
    /// A count as a share of the days, with its standard error.
    pub fn share(&self, count: f64) -> (f64, f64) {
        let p = count / self.days;
        (p, (p * (1.0 - p) / self.days).sqrt())
    }
}

/// The verdicts at one look.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
struct Look {
    untrue: bool,
    found: bool,
}

/// Days on which colour B, or feed, makes the fish `effect` times as keen; 1 = it does nothing.
pub fn said(water: &Water, habit: Habit, effect: f64, days: u64, run: u64) -> Said {
    let mut said = Said { days: days as f64, ..Said::default() };
    for day in 0..days {
        let rows = fish(water, &Luck::of_day(water.seed(run) ^ 0x00C0_1085, day), habit, effect);
        let (mut last, mut ever) = (Look::default(), Look::default());
        for casts in 1..=rows.len() {
            last = look(water, &rows[..casts], habit, effect, day);
            ever = Look { untrue: ever.untrue || last.untrue, found: ever.found || last.found };
        }
        let one = |yes: bool| f64::from(u8::from(yes));
        said.offered += find_changes(&rows).len() as f64;
        said.untrue += one(last.untrue);
        said.untrue_ever += one(ever.untrue);
        said.found += one(last.found);
        said.found_ever += one(ever.found);
    }
    said
}

fn look(water: &Water, rows: &[CastRow], habit: Habit, effect: f64, seed: u64) -> Look {
    // If no change is striking, the rest need not be computed.
    if !find_changes(rows).iter().any(|change| striking(change, rows)) {
        return Look::default();
    }
    let mut look = Look::default();
    for finding in change_findings_without_power(rows, seed).unwrap_or_default() {
        let Verdict::ClearlyBetterHereToday(side) = finding.verdict else { continue };
        let value = if side == Side::A { &finding.a.value } else { &finding.b.value };
        let (factor, better) = habit.changes();
        let does = finding.factor == factor && effect != 1.0;
        look.found |= does && value == better;
        look.untrue |= if does { value != better } else { does_nothing(water, finding.factor) };
    }
    look
}

/// Whether a change of this factor truly does nothing. Colour, bait and hooklength do nothing; if spots truly
/// differ, or hold fish at different hours, any claim about them may be right.
fn does_nothing(water: &Water, factor: Factor) -> bool {
    factor != Factor::Spot || (water.home >= 1.0 && water.uneven[1] == 0.0)
}

/// "Clearly better" needs at least this much; see `verdict` of the core.
fn striking(change: &Change, rows: &[CastRow]) -> bool {
    let tally = |side: usize| {
        let waits = || change.places[side].iter().map(|&i| rows[i].wait);
        Tally {
            bites: waits().filter(|w| w.is_bite()).count() as u64,
            time: waits().map(Wait::minutes).sum(),
        }
    };
    any_look_p(tally(0), tally(1)) < CLEAR_BELOW
}

/// A day's casts as logged.
pub fn fish(water: &Water, luck: &Luck, habit: Habit, effect: f64) -> Vec<CastRow> {
    let plan = AlternationPlan::new(Side::A, usize::MAX);
    let mut rows: Vec<CastRow> = Vec::new();
    let (mut clock, mut blanks, mut on_b, mut bait, mut link) = (0.0, 0, false, 0, 0);
    let mut feeds = habit.feeds(effect);
    let mut disturbed = vec![-1e9; water.spots];
    while clock < DAY {
        let cast = rows.len();
        let fate = luck.cast(cast);
        on_b = match habit {
            Habit::Alternating | Habit::Everything => plan.side(cast) == Some(Side::B),
            Habit::HalfHours => (clock / 30.0) as usize % 2 == 1,
            Habit::Once => clock >= DAY / 2.0,
            Habit::OnAWhim => on_b != (blanks == 2),
            Habit::FeedsByTheHour | Habit::FeedsWhenDry => feeds.before(clock).0,
        };
        blanks %= 2;
        bait = (bait + usize::from(fate.u[8] < 0.25)) % 3;
        link = (link + usize::from(fate.u[9] < 0.25)) % 2;
        let spot = match habit {
            Habit::Everything => cast / 4 % water.spots,
            Habit::OnAWhim => cast % water.spots,
            _ => 0,
        };
        let keen = if on_b { effect } else { 1.0 };
        let late = |u: f64| if water.late { (5.0 + 25.0 * u) / 60.0 } else { 0.0 };
        let leave = LEAVE + late(fate.u[5]);
        let wait = water.wait(luck, cast, clock, spot, disturbed[spot], keen).filter(|w| *w <= leave);
        let out = wait.unwrap_or(leave);
        if clock + out > DAY {
            break;
        }
        let end = out - late(fate.u[5]) + if wait.is_some() { late(fate.u[6]) } else { 0.0 };
        let between = TURN + if wait.is_some() { EXTRA } else { 0.0 };
        // An end that was never tapped is assumed one turn-round before the next splash, without a bite.
        let seen = fate.u[7] >= water.forgotten;
        let (minutes, bite) = if seen { (end, wait.is_some()) } else { (out + between - TURN, false) };
        let Ok(logged) = Wait::new(minutes.max(0.0), bite) else { break };
        let setup = setup(habit, [usize::from(on_b), spot, bait, link]);
        rows.push(CastRow { rod: 1, at_min: clock, wait: logged, setup, twitched: false });
        clock += out;
        disturbed[spot] = clock;
        clock += between;
        blanks = if wait.is_some() { 0 } else { blanks + 1 };
        feeds.after(wait.is_some());
    }
    rows
}

fn setup(habit: Habit, [colour, spot, bait, link]: [usize; 4]) -> BTreeMap<Factor, String> {
    if habit.changes().0 == Factor::Feed {
        let mut setup = BTreeMap::from([(Factor::Feed, ["not fed", "fed"][colour].to_owned())]);
        setup.extend((colour == 1).then(|| (Factor::FeedAmount, "under 100 g".to_owned())));
        return setup;
    }
    let mut setup = BTreeMap::from([(Factor::Colour, ["A", "B"][colour].to_owned())]);
    if !habit.one_thing_only() {
        setup.insert(Factor::Spot, spot.to_string());
        setup.insert(Factor::Bait, bait.to_string());
        setup.insert(Factor::Hooklength, link.to_string());
    }
    setup
}
