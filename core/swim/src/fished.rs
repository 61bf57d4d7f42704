//! Fished, rested, fresh and kept-back water at one moment.

use super::cells::{Cell, CellId, Swim};
use super::disc_area::{Disc, covered_m2};
use super::error::SwimError;
use super::frame::{Point, point_at};
use super::input::{CastAt, KeptBack};
use super::scatter::normal_between;

use super::water::{Near, Water};
use serde::{Deserialize, Serialize};
use std::cell::OnceCell;

/// Milliseconds in a minute.
const MINUTE_MS: f64 = 60_000.0;
/// How many points of equal probability are used in each direction in a clipped cell.
const DRAWS: usize = 9;

/// What is known about one cell.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct CellFigures {
    /// Which cell.
    pub cell: CellId,
    /// Area inside the boundary, square metres.
    pub area_m2: f64,
    /// Expected number of casts that disturbed it.
    pub disturbances: f64,
    /// The same for casts that are more recent than the rest target.
    pub lately: f64,
    /// Casts meant for it.
    pub casts: u32,
    /// Minutes that these casts are known to have waited up to the moment, as their waits are counted everywhere.
    pub wait_min: f64,
    /// Bites on casts meant for it.
    pub bites: u32,
    /// Liners on casts meant for it (the fish touched the line somewhere on the way).
    pub liners: u32,
    /// Fish lost on casts meant for it.
    pub lost: u32,
    /// Fish landed on casts meant for it.
    pub landed: u32,
    /// Minutes since the last landing of a lead that reached it with probability one half or more;
    /// `None` where none did.
    pub rested_min: Option<f64>,
    /// Minutes it has been kept back; `None` if it is not.
    pub kept_back_min: Option<f64>,
    /// Whether a bait is meant to be in it now.
    pub out_now: bool,
    /// Feed that went into it, mg.
    pub fed_mg: u64,
    /// Minutes since the last feed; `None` if there was none.
    pub fed_min: Option<f64>,
    /// How often fish showed themselves in it.
    pub shown: u32,
    /// Minutes since they last did.
    pub shown_min: Option<f64>,
}

/// The state of a cell as the picture shows it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum CellState {
    /// A bait is in it, or the last lead that reached it landed less than a third of the rest target ago.
    JustFished,
    /// The last lead landed longer ago than that, but not yet as long ago as the rest target.
    Resting,
    /// The last lead landed at least as long ago as the rest target, or never today.
    Free,
}

/// The share of the rest target that counts as just fished. It is the project's own choice; the rest target
/// is the angler's.
const JUST_FISHED: f64 = 1.0 / 3.0;

/// A stretch of kept-back water at one moment.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct KeptBackNow {
    /// The water.
    pub water: KeptBack,
    /// For how long, minutes.
    pub minutes: f64,
    /// Casts meant for it since it was kept back.
    pub casts_into: u32,
}

/// The swim at one moment.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SwimFigures {
    /// The moment, in milliseconds on the time line of the casts.
    pub at_ms: i64,
    /// One entry for each cell, in the order of [`Swim::cells`].
    pub cells: Vec<CellFigures>,
    /// Area of the swim, square metres.
    pub swim_m2: f64,
    /// Area outside every disc that a cast disturbed within the rest target.
    pub fresh_m2: f64,
    /// Area inside any of them.
    pub disturbed_m2: f64,
    /// Casts so far.
    pub casts: u32,
    /// Of these, casts meant for a spot outside the fan, the bands or the boundary; they are not drawn.
    pub casts_outside: u32,
    /// Water kept back now.
    pub kept_back: Vec<KeptBackNow>,
    /// Whether scatter or disturbance are guesses, so that fished and rested are guesses too.
    pub rests_on_guesses: bool,
}

impl CellFigures {
    fn new(cell: &Cell) -> Self {
        Self {
            cell: cell.id,
            area_m2: cell.area_m2,
            disturbances: 0.0,
            lately: 0.0,
            casts: 0,
            wait_min: 0.0,
            bites: 0,
            liners: 0,
            lost: 0,
            landed: 0,
            rested_min: None,
            kept_back_min: None,
            out_now: false,
            fed_mg: 0,
            fed_min: None,
            shown: 0,
            shown_min: None,
        }
    }

    /// Just fished, resting or free, by the angler's rest target.
    pub fn state(&self, target_min: f64) -> CellState {
        match self.rested_min {
            _ if self.out_now => CellState::JustFished,
            Some(minutes) if minutes < JUST_FISHED * target_min => CellState::JustFished,
            Some(minutes) if minutes < target_min => CellState::Resting,
            _ => CellState::Free,
        }
    }
}

impl Swim {
    /// The figures of every cell at a moment. Later casts are left out, so an earlier moment replays the day.
    pub fn figures(&self, at_ms: i64) -> SwimFigures {
        let mut cells: Vec<CellFigures> = self.cells().iter().map(CellFigures::new).collect();
        let (mut casts, mut casts_outside) = (0, 0);
        for cast in self.casts_until(at_ms) {
            casts += 1;
            self.spread(cast, at_ms, &mut cells);
            match self.cell_of(cast.spot).and_then(|id| self.place(id)) {
                Some(place) => count(&mut cells[place], cast, at_ms),
                None => casts_outside += 1,
            }
        }
        self.add_seen(at_ms, &mut cells);
        let kept_back = self.kept_back_now(at_ms);
        for figures in &mut cells {
            figures.kept_back_min = self.kept_back_for(figures.cell, &kept_back);
        }
        let disturbed_m2 = covered_m2(self.water(), &self.discs(at_ms));
        let input = self.input();
        SwimFigures {
            at_ms,
            cells,
            swim_m2: self.area_m2(),
            fresh_m2: (self.area_m2() - disturbed_m2).max(0.0),
            disturbed_m2,
            casts,
            casts_outside,
            kept_back,
            rests_on_guesses: input.scatter.is_guess || input.disturbance.is_guess,
        }
    }

    /// Casts that had landed by a moment, in order of time.
    pub fn casts_until(&self, at_ms: i64) -> impl Iterator<Item = &CastAt> + '_ {
        self.input().casts.iter().take_while(move |c| c.start_ms <= at_ms)
    }

    /// The discs that casts disturbed within the rest target before a moment, round the spots they were meant
    /// for. They may reach beyond the swim.
    pub(crate) fn discs(&self, at_ms: i64) -> Vec<Disc> {
        let input = self.input();
        let mut discs: Vec<Disc> = self
            .casts_until(at_ms)
            .filter(|c| minutes_between(c.start_ms, at_ms) < input.rest_target_min)
            .map(|c| (c.spot.point(), input.disturbance.radius_m(c.lead_g)))
            .collect();
        discs.sort_by(|a, b| a.0.x.total_cmp(&b.0.x).then(a.0.y.total_cmp(&b.0.y)).then(a.1.total_cmp(&b.1)));
        discs.dedup();
        discs
    }

    /// Refuses a place that is not a cell of this swim.
    pub fn check_cell(&self, id: CellId) -> Result<(), SwimError> {
        self.cell(id).map(|_| ())
    }

    /// Adds a cast to the cells it may have reached.
    fn spread(&self, cast: &CastAt, at_ms: i64, cells: &mut [CellFigures]) {
        let rested = minutes_between(cast.start_ms, at_ms);
        for (figures, reached) in cells.iter_mut().zip(self.chances(cast)) {
            figures.disturbances += reached;
            if rested < self.input().rest_target_min {
                figures.lately += reached;
            }
            if reached >= 0.5 {
                figures.rested_min = Some(rested);
            }
        }
    }

    /// For each cell, the probability that a cast's lead disturbed its water.
    pub(crate) fn chances(&self, cast: &CastAt) -> Vec<f64> {
        let reach = self.input().disturbance.radius_m(cast.lead_g);
        let landing = Landing::of(self, cast);
        let by_row: Vec<_> = self.bands().iter().map(|b| landing.in_range(b.from_m, b.to_m, reach)).collect();
        let columns = &self.columns().columns;
        let by_column: Vec<_> =
            columns.iter().map(|c| landing.in_bearing(c.from_deg, c.to_deg, reach)).collect();
        let draws = OnceCell::new();
        let of = |cell: &Cell| {
            let reached = by_row[cell.id.row as usize] * by_column[cell.id.column as usize];
            let is_clipped = !cell.whole && reached > 1e-9;
            if is_clipped {
                Landing::in_water(draws.get_or_init(|| landing.draws()), &cell.water, reach)
            } else {
                reached
            }
        };
        self.cells().iter().map(of).collect()
    }

    fn kept_back_now(&self, at_ms: i64) -> Vec<KeptBackNow> {
        let held = |k: &&KeptBack| k.since_ms <= at_ms && k.released_ms.is_none_or(|end| end > at_ms);
        let now = |k: &KeptBack| KeptBackNow {
            water: *k,
            minutes: minutes_between(k.since_ms, at_ms),
            casts_into: self
                .casts_until(at_ms)
                .filter(|c| c.start_ms >= k.since_ms && k.holds(c.spot.bearing_deg, c.spot.range_m))
                .count() as u32,
        };
        self.input().kept_back.iter().filter(held).map(now).collect()
    }

    /// For how long the middle of a cell has been kept back: the longest if several stretches contain it.
    fn kept_back_for(&self, id: CellId, kept: &[KeptBackNow]) -> Option<f64> {
        let aim = self.cell(id).ok()?.aim?;
        let holds = |k: &&KeptBackNow| k.water.holds(aim.bearing_deg, aim.range_m);
        kept.iter().filter(holds).map(|k| k.minutes).reduce(f64::max)
    }
}

impl KeptBack {
    /// Whether it contains a bearing and range. Like the cells, it doesn't contain its right and far edge, where the next
    /// cell begins.
    pub fn holds(&self, bearing_deg: f64, range_m: f64) -> bool {
        bearing_deg >= self.fan.from_deg
            && bearing_deg < self.fan.to_deg
            && range_m >= self.band.from_m
            && range_m < self.band.to_m
    }
}

/// Minutes from one moment to another.
pub(crate) fn minutes_between(from_ms: i64, to_ms: i64) -> f64 {
    (to_ms.saturating_sub(from_ms)) as f64 / MINUTE_MS
}

/// Whether the end of a cast (or its bite) was known by a moment.
pub(crate) fn known_by(cast: &CastAt, at_ms: i64) -> bool {
    cast.bite_ms.or(cast.end_ms).is_none_or(|ms| ms <= at_ms)
}

fn count(figures: &mut CellFigures, cast: &CastAt, at_ms: i64) {
    figures.casts += 1;
    figures.wait_min +=
        minutes_between(cast.waits_from_ms, cast.waits_to_ms.unwrap_or(at_ms).min(at_ms)).max(0.0);
    figures.out_now |= cast.end_ms.is_none_or(|end| end > at_ms);
    if known_by(cast, at_ms) {
        figures.bites += cast.bites;
        figures.liners += cast.liners;
        figures.lost += cast.lost;
        figures.landed += cast.landed;
    }
}

/// Where a cast may have landed: bearing and range normal and independent round its spot.
struct Landing {
    bearing_deg: f64,
    bearing_sd: f64,
    range_m: f64,
    range_sd: f64,
}

impl Landing {
    fn of(swim: &Swim, cast: &CastAt) -> Self {
        let scatter = &swim.input().scatter;
        Self {
            bearing_deg: cast.spot.bearing_deg,
            bearing_sd: scatter.bearing_sd_deg,
            range_m: cast.spot.range_m,
            range_sd: scatter.range_sd_m(cast.clipped, cast.spot.range_m),
        }
    }

    /// Probability of landing within `reach` of a stretch of range.
    fn in_range(&self, from_m: f64, to_m: f64, reach: f64) -> f64 {
        within(self.range_m, self.range_sd, from_m, to_m, reach)
    }

    /// The same for a stretch of bearings; `reach` becomes an angle as seen from the peg at the range of the
    /// cast.
    fn in_bearing(&self, from_deg: f64, to_deg: f64, reach: f64) -> f64 {
        let seen = libm::asin((reach / self.range_m).min(1.0)).to_degrees();
        within(self.bearing_deg, self.bearing_sd, from_deg, to_deg, seen)
    }

    /// The same for clipped water, over a lattice of equally likely landings.
    fn in_water(draws: &[Point], water: &Water, reach: f64) -> f64 {
        let near = Near::of(water, reach);
        let reached = draws.iter().filter(|p| near.takes(**p)).count();
        reached as f64 / draws.len() as f64
    }

    /// The lattice.
    fn draws(&self) -> Vec<Point> {
        let ranges = QUANTILES.map(|v| self.range_m + v * self.range_sd);
        let at = |u: &f64| {
            // A unit vector on the bearing; times a range it is the point there to the bit.
            let one = point_at(self.bearing_deg + u * self.bearing_sd, 1.0);
            ranges.map(|range| Point { x: range * one.x, y: range * one.y })
        };
        QUANTILES.iter().flat_map(at).collect()
    }
}

/// Standard normal quantiles at (i + 1/2) / 9 (Python's statistics.NormalDist).
const QUANTILES: [f64; DRAWS] = [
    -1.593_218_818_023_05,
    -0.967_421_566_101_701,
    -0.589_455_797_849_779,
    -0.282_216_147_062_508,
    0.0,
    0.282_216_147_062_508,
    0.589_455_797_849_779,
    0.967_421_566_101_701,
    1.593_218_818_023_05,
];

fn within(mean: f64, sd: f64, from: f64, to: f64, reach: f64) -> f64 {
    let far = 8.0 * sd + reach;
    if mean + far < from || mean - far > to {
        return 0.0;
    }
    normal_between(mean, sd, from - reach, to + reach)
}
