//! Where the fish are: for each spot the chance that it has fish now, and what a cast there is worth.
//!
//! Each spot has fish or has none, and changes between the two now and then: a hidden Markov chain with two states for each spot,
//! filtered forward through its casts (Rabiner 1989). A cast without a bite multiplies the odds of fish by the chance of waiting
//! that long among fish without one; a bite makes fish nearly certain; between casts the odds return to those of any spot. The
//! law of the wait among fish is that of the shapes of [`WaitPosterior`], whose share of casts that ever get a bite becomes the
//! share of spots with fish. How long a spot keeps its fish, and how long they stay away after a cast ended there or a lead
//! landed beside it, can each take a few values, which the record weighs. One of the values is that spots don't differ and that
//! for every cast it is drawn anew whether it meets fish; this is what the posterior alone assumes.

mod filter;
mod followed;
mod index;

pub use followed::SpotsKept;

use super::costs::Costs;
use super::shapes::{POINTS, Shapes};
use super::{Wait, WaitPosterior};
use followed::{Followed, HIGH_EXPONENT, worlds};
use std::sync::{Arc, OnceLock};

/// A finished cast, or a stretch of one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpotCast {
    /// Which spot it was in.
    pub spot: usize,
    /// Its splash, in minutes on the same time line as all others.
    pub at_min: f64,
    /// How long it was out, and whether a bite ended it.
    pub wait: Wait,
}

/// What happened at the spots.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SpotEvent {
    /// A cast that says something about the fish.
    Fished(SpotCast),
    /// A cast was taken out of it, or a lead landed so near that it reached the water.
    Disturbed {
        /// Which spot.
        spot: usize,
        /// When.
        at_min: f64,
    },
}

impl SpotEvent {
    pub(crate) fn at_min(&self) -> f64 {
        match self {
            Self::Fished(cast) => cast.at_min,
            Self::Disturbed { at_min, .. } => *at_min,
        }
    }
}

/// One way in which spots may differ.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct World {
    /// Mean minutes until it is drawn anew whether a spot has fish; 0 if that is drawn for every cast.
    pub lasting_min: f64,
    /// Minutes that fish stay away from a disturbed spot.
    pub rest_min: f64,
}

/// For how long a spot stays as it is, minutes, with the prior probability of each: a guess. Zero means that spots don't differ.
const LASTING: [(f64, f64); 3] = [(0.0, 0.5), (30.0, 0.2), (90.0, 0.3)];
/// For how long fish stay away, as a share of the angler's rest target, with the prior probability of each: a guess.
const RESTS: [(f64, f64); 3] = [(0.0, 0.4), (0.25, 0.3), (0.5, 0.3)];
/// Shapes below this share of the heaviest, by today's record, are left out, and so are all but the heaviest.
const LIGHTEST: f64 = 1e-4;
/// How many shapes are weighed at most.
const MOST_SHAPES: usize = 800;
/// From this Bayes factor on, how long to leave a cast follows from where else one could cast. Where spots don't differ it is
/// reached on at most one day in twenty (Ville 1939), as with everything that is claimed at any look.
const DIFFER_LEAST: f64 = 20.0;
/// If more than this share of spots has fish, they are taken to be everywhere. It is between two of the shares of the shapes.
const EVERYWHERE: f64 = 0.95;

/// What is believed about the spots after a record.
#[derive(Debug, Clone)]
pub struct SpotBeliefs {
    shapes: Arc<Shapes>,
    costs: Costs,
    /// The shapes that are weighed.
    kinds: Vec<usize>,
    /// Share of spots that have fish, by shape.
    home: Vec<f32>,
    /// One over that share.
    over_home: Vec<f32>,
    /// The leave times to choose from, as points of the shapes.
    steps: Vec<usize>,
    /// The weighed shapes at each point in time, computed when first asked for: most taps never do.
    columns: OnceLock<Columns>,
    /// Weight of each shape in each world; all together 1.
    weights: Vec<Vec<f32>>,
    /// Prior probability that spots differ, that every cast draws anew, and that fish are everywhere; see
    /// [`SpotBeliefs::differ`].
    before: [f64; 3],
    /// The filter of the record, for these shapes and perhaps more.
    followed: Arc<Followed>,
    /// The index of each of the shapes in it.
    at: Vec<usize>,
}

/// The weighed shapes by point in time, one row for each time.
#[derive(Debug, Clone)]
struct Columns {
    /// Share of casts with a bite by then.
    bitten: Vec<f32>,
    /// Mean of the smaller of wait and time.
    waiting: Vec<f32>,
}

impl Columns {
    fn new(shapes: &Shapes, kinds: &[usize]) -> Self {
        let column =
            |of: &[f32]| (0..POINTS).flat_map(|i| kinds.iter().map(move |&k| of[k * POINTS + i])).collect();
        Self { bitten: column(&shapes.bitten), waiting: column(&shapes.waiting) }
    }
}

/// What is believed about one spot.
#[derive(Debug, Clone)]
struct Spot {
    /// Chance of fish by world and shape at `known_min`.
    here: Vec<Vec<f32>>,
    known_min: f64,
    disturbed_min: f64,
}

/// What a cast at a spot is worth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpotWorth {
    /// Chance that it has fish.
    pub here: f64,
    /// Bites an hour of a cast there, left for its best time.
    pub per_hour: f64,
    /// The same for comparing spots: a bite where fish weren't known counts more, since one can come back.
    pub rank: f64,
}

/// What to do when a cast has waited long enough.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Then {
    /// Cast to the same spot again.
    RecastHere,
    /// Cast to that spot; `None` is one that was never fished.
    MoveTo(Option<usize>),
}

/// How long to leave a cast, if the spots decide it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpotLeave {
    /// Minutes after the splash; `None` if waiting on remains best.
    pub leave_min: Option<f64>,
    /// What then.
    pub then: Then,
    /// Chance that fish are here once it has waited that long without a bite.
    pub here: f64,
    /// Chance that there are fish where it goes then.
    pub there: f64,
}

impl WaitPosterior {
    /// What the record says of `spots` spots. Events may come in any order; `rest_min` is the angler's own figure for how long
    /// water is rested.
    pub fn spots(&self, spots: usize, events: &[SpotEvent], rest_min: f64) -> SpotBeliefs {
        self.spots_kept(&mut SpotsKept::default(), spots, events, f64::INFINITY, rest_min)
    }

    /// The same, going on with what was kept of the record the last time, where it begins alike. What happened before `settled_min`
    /// is kept for the next time: a bait that is out will have waited longer by then.
    // Inlined into a crate that is optimised for size, its loops would not be vectorised. The same is true wherever this
    // attribute is used here.
    #[inline(never)]
    pub fn spots_kept(
        &self,
        kept: &mut SpotsKept,
        spots: usize,
        events: &[SpotEvent],
        settled_min: f64,
        rest_min: f64,
    ) -> SpotBeliefs {
        let kinds = self.heaviest();
        let mut ordered = events.to_vec();
        restwater_sorting::by(&mut ordered, |a, b| a.at_min().total_cmp(&b.at_min()));
        let goes_on = |followed: &Arc<Followed>| {
            followed.begins(&self.shapes, rest_min, spots, &ordered)
                && followed.kinds.len() <= 2 * MOST_SHAPES
        };
        let begun = kept.0.take().filter(goes_on);
        let mut followed =
            begun.unwrap_or_else(|| Arc::new(Followed::new(&self.shapes, kinds.clone(), rest_min)));
        let on = Arc::make_mut(&mut followed);
        on.grow(spots);
        on.follow_too(missing(&kinds, &on.kinds), rest_min);
        let settled = ordered.partition_point(|event| event.at_min() < settled_min);
        for event in ordered[..settled].iter().skip(on.events.len()) {
            on.take(event);
        }
        kept.0 = Some(Arc::clone(&followed));
        let done = followed.events.len();
        if done < ordered.len() {
            let on = Arc::make_mut(&mut followed);
            ordered[done..].iter().for_each(|event| on.take(event));
        }
        self.beliefs(kinds, followed)
    }

    /// The beliefs after the filtered record.
    fn beliefs(&self, kinds: Vec<usize>, followed: Arc<Followed>) -> SpotBeliefs {
        let mut places = vec![0; self.shapes.count()];
        followed.kinds.iter().enumerate().for_each(|(place, &k)| places[k] = place);
        let at: Vec<usize> = kinds.iter().map(|&k| places[k]).collect();
        let home: Vec<f32> = at.iter().map(|&at| followed.home[at]).collect();
        let everywhere = self.everywhere();
        let lasting: f64 = LASTING.iter().filter(|(min, _)| *min > 0.0).map(|(_, share)| share).sum();
        let before = [(1.0 - everywhere) * lasting, (1.0 - everywhere) * (1.0 - lasting), everywhere];
        SpotBeliefs {
            shapes: Arc::clone(&self.shapes),
            costs: self.costs,
            over_home: home.iter().map(|home| 1.0 / home).collect(),
            home,
            steps: steps(&self.shapes),
            columns: OnceLock::new(),
            weights: self.weigh_spots(&kinds, &at, &followed),
            before,
            followed,
            at,
            kinds,
        }
    }

    /// The weight of each shape in each world, all together 1: its weight before today times how likely it makes the record.
    fn weigh_spots(&self, kinds: &[usize], at: &[usize], followed: &Followed) -> Vec<Vec<f32>> {
        let before = self.by_feed.before();
        let least = at.iter().map(|&at| followed.raised[at]).min().unwrap_or(0);
        let of = |(&k, &at): (&usize, &usize)| {
            // Beyond this nothing remains of it in double precision.
            let raised = (followed.raised[at] - least).min(50);
            libm::ldexp(before[k], -HIGH_EXPONENT * raised)
        };
        let of_shapes: Vec<f64> = kinds.iter().zip(at).map(of).collect();
        let row = |likely: &Vec<f32>| -> Vec<f64> {
            of_shapes.iter().zip(at).map(|(weight, &at)| weight * f64::from(likely[at])).collect()
        };
        let mut rows: Vec<Vec<f64>> = followed.likely.iter().map(row).collect();
        let mut total: f64 = rows.iter().flatten().sum();
        // A record that no shape can have produced leaves the beliefs unchanged.
        if total <= 0.0 {
            let beliefs = worlds(0.0).1;
            rows = beliefs.iter().map(|belief| kinds.iter().map(|&k| belief * before[k]).collect()).collect();
            total = rows.iter().flatten().sum();
        }
        let over = 1.0 / total;
        rows.iter().map(|row| row.iter().map(|w| (w * over) as f32).collect()).collect()
    }

    /// Chance, before the first cast of today, that fish are all but everywhere.
    fn everywhere(&self) -> f64 {
        let before = self.by_feed.before();
        let sum = |counts: fn(f64) -> bool| -> f64 {
            let some = before.iter().zip(&self.shapes.ever).filter(|(_, ever)| counts(**ever));
            some.map(|(weight, _)| weight).sum()
        };
        sum(|ever| ever > EVERYWHERE) / sum(|_| true)
    }

    /// The shapes that today's record does not rule out; if there are too many, the heaviest of them.
    fn heaviest(&self) -> Vec<usize> {
        let before = self.by_feed.before();
        let counts = |k: &usize| self.weights[*k] > LIGHTEST && before[*k] > 0.0;
        let kinds: Vec<usize> = (0..self.weights.len()).filter(counts).collect();
        if kinds.len() <= MOST_SHAPES {
            return kinds;
        }
        let mut weights: Vec<f64> = kinds.iter().map(|&k| self.weights[k]).collect();
        let (_, &mut least, _) = weights.select_nth_unstable_by(MOST_SHAPES - 1, |a, b| b.total_cmp(a));
        let heavier = kinds.iter().filter(|&&k| self.weights[k] > least).count();
        let mut alike = MOST_SHAPES - heavier;
        // Of those that weigh the same as the lightest, the first.
        let keeps = |k: &usize| {
            let weight = self.weights[*k];
            let is_first = weight == least && alike > 0;
            alike -= usize::from(is_first);
            weight > least || is_first
        };
        kinds.into_iter().filter(keeps).collect()
    }
}

/// Those of some shapes that have no filter yet.
fn missing(kinds: &[usize], followed: &[usize]) -> Vec<usize> {
    let count = kinds.iter().chain(followed).max().map_or(0, |last| last + 1);
    let mut known = vec![false; count];
    for &k in followed {
        known[k] = true;
    }
    kinds.iter().copied().filter(|&k| !known[k]).collect()
}

/// The leave times to choose from: every minute up to twenty, then longer and longer steps to three hours.
fn steps(shapes: &Shapes) -> Vec<usize> {
    let is_step = |t: f64| match t {
        t if t <= 20.0 => t.fract() == 0.0,
        t if t <= 30.0 => t % 2.0 == 0.0,
        t if t <= 60.0 => t % 5.0 == 0.0,
        t => t % 20.0 == 0.0,
    };
    (1..POINTS).filter(|&i| is_step(shapes.times[i])).collect()
}

/// A scalar product in eight sums, in one order on every platform.
fn dot(a: &[f32], b: &[f32]) -> f32 {
    let mut sums = [0.0_f32; 8];
    let (a, b) = (a.chunks_exact(8), b.chunks_exact(8));
    let rest: f32 = a.remainder().iter().zip(b.remainder()).map(|(x, y)| x * y).sum();
    for (x, y) in a.zip(b) {
        for i in 0..8 {
            sums[i] += x[i] * y[i];
        }
    }
    sums.iter().sum::<f32>() + rest
}

#[cfg(test)]
mod tests;
