//! Days that change while they are fished: bites come later and later after the splash, or sooner and sooner.
//!
//! Most of the prior weight is on days that stay as they are. In the rest, weight moves with every minute
//! that a bait is out from each shape to its neighbours, which differ only in when the bites come (fixed
//! share; Herbster and Warmuth 1998, Machine Learning 32). The casts show which part is right, so a day that
//! stays as it is loses little. Moves are accepted as in a Metropolis walk (1953) on the prior, so that time
//! alone, without evidence from a cast, changes nothing.

use super::Wait;
use super::curves::SHARES;

/// Probability that a day changes: one in five. A guess, checked by simulation (docs/advice.md).
pub(crate) const CHANGES: f64 = 0.2;
/// Share of the weight of a place that moves towards its two neighbours in a minute. Set by simulation
/// (docs/advice.md).
const MOVES_A_MINUTE: f64 = 0.01;
/// A longer cast moves no more weight than one of this many minutes.
const LONGEST_MIN: f64 = 60.0;

/// The position of a curve among those that differ from it only in place.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Stop {
    /// Which curves belong together, and the position among them.
    pub track: usize,
    pub step: usize,
    /// Its shape with the smallest share of casts that get a bite; the other shares follow.
    pub first: usize,
    pub shares: usize,
}

/// A few shapes in a row, as many neighbours, and the shares of moves that are accepted there and back.
#[derive(Debug, Clone)]
struct Way<const N: usize> {
    from: usize,
    to: usize,
    accepted: [[f32; N]; 2],
}

/// The connections along which weight moves.
#[derive(Debug, Clone)]
pub(crate) struct Drift {
    /// Between constant rates, which have no shares.
    single: Vec<Way<1>>,
    shares: Vec<Way<{ SHARES.len() }>>,
}

impl<const N: usize> Way<N> {
    fn new(prior: &[f64], from: usize, to: usize) -> Self {
        let accepted = |from: usize, to: usize| {
            std::array::from_fn(|i| (prior[to + i] / prior[from + i]).min(1.0) as f32)
        };
        Self { from, to, accepted: [accepted(from, to), accepted(to, from)] }
    }

    fn from(&self) -> std::ops::Range<usize> {
        self.from..self.from + N
    }

    fn to(&self) -> std::ops::Range<usize> {
        self.to..self.to + N
    }

    /// What goes there, less what comes back.
    #[inline]
    fn gone(&self, each_way: f64, weights: &[f64]) -> [f64; N] {
        let ([there, back], from, to) = (&self.accepted, &weights[self.from()], &weights[self.to()]);
        let mut gone = [0.0; N];
        for i in 0..N {
            gone[i] = each_way * (f64::from(there[i]) * from[i] - f64::from(back[i]) * to[i]);
        }
        gone
    }

    #[inline]
    fn go_on(&self, gone: &[f64; N], weights: &mut [f64]) {
        weights[self.from()].iter_mut().zip(gone).for_each(|(w, gone)| *w -= gone);
        weights[self.to()].iter_mut().zip(gone).for_each(|(w, gone)| *w += gone);
    }
}

/// Moves weights on all ways at once.
fn along<const N: usize>(ways: &[Way<N>], each_way: f64, moving: &mut [f64], all: &mut [f64]) {
    let gone: Vec<[f64; N]> = ways.iter().map(|way| way.gone(each_way, moving)).collect();
    for (way, gone) in ways.iter().zip(&gone) {
        way.go_on(gone, moving);
        way.go_on(gone, all);
    }
}

impl Drift {
    /// The connections between the stops of shapes with these prior weights.
    pub(crate) fn new(prior: &[f64], stops: &[Stop]) -> Self {
        let mut drift = Self { single: Vec::new(), shares: Vec::new() };
        for stop in stops {
            let beside = |other: &&Stop| other.track == stop.track && other.step == stop.step + 1;
            let Some(next) = stops.iter().find(beside) else { continue };
            if stop.shares == 1 {
                drift.single.push(Way::new(prior, stop.first, next.first));
            } else {
                drift.shares.push(Way::new(prior, stop.first, next.first));
            }
        }
        drift
    }

    /// Moves the weights of a changing day by the time a cast was out; `all` contains the weights of both
    /// kinds of days.
    pub(crate) fn go_on(&self, wait: Wait, moving: &mut [f64], all: &mut [f64]) {
        along(&self.single, each_way(wait), moving, all);
        along(&self.shares, each_way(wait), moving, all);
    }
}

/// Share of the weight that moves towards each neighbour while a cast is out.
fn each_way(wait: Wait) -> f64 {
    0.5 * MOVES_A_MINUTE * wait.minutes().min(LONGEST_MIN)
}

#[cfg(test)]
impl Drift {
    /// The shape after a cast, drawn with a uniform number between 0 and 1.
    pub(crate) fn moved(&self, shape: usize, wait: Wait, mut u: f64) -> usize {
        for (i, j, [there, back]) in self.each() {
            let (to, accepted) = match shape {
                from if from == i => (j, there),
                from if from == j => (i, back),
                _ => continue,
            };
            u -= each_way(wait) * f64::from(accepted);
            if u < 0.0 {
                return to;
            }
        }
        shape
    }

    /// Each shape with a neighbour, and the shares of moves that are accepted there and back.
    fn each(&self) -> impl Iterator<Item = (usize, usize, [f32; 2])> {
        fn of<const N: usize>(way: &Way<N>) -> impl Iterator<Item = (usize, usize, [f32; 2])> {
            let [there, back] = way.accepted;
            (0..N).map(move |i| (way.from + i, way.to + i, [there[i], back[i]]))
        }
        self.single.iter().flat_map(of).chain(self.shares.iter().flat_map(of))
    }
}

#[cfg(test)]
mod tests {
    use super::super::shapes::Shapes;
    use super::super::{Record, SHAPE_PRIORS, Settings, WaitPosterior};
    use super::*;

    fn wait(minutes: f64, bite: bool) -> Wait {
        Wait::new(minutes, bite).unwrap()
    }

    #[test]
    fn time_alone_changes_nothing() {
        let shapes = Shapes::new(&SHAPE_PRIORS);
        let (mut moving, mut all) = (shapes.prior.clone(), shapes.prior.clone());
        for _ in 0..30 {
            shapes.drift().go_on(wait(20.0, false), &mut moving, &mut all);
        }
        for ((a, b), prior) in moving.iter().zip(&all).zip(&shapes.prior) {
            assert!((a - prior).abs() < 1e-6 && a == b, "{a} {b} {prior}");
        }
    }

    #[test]
    fn weight_moves_to_neighbouring_places_and_none_is_lost() {
        let shapes = Shapes::new(&SHAPE_PRIORS);
        let way = shapes.drift().each().nth(200).unwrap();
        let mut moving = vec![0.0; shapes.count()];
        moving[way.0] = 1.0;
        let mut all = moving.clone();
        shapes.drift().go_on(wait(20.0, false), &mut moving, &mut all);
        assert!((moving.iter().sum::<f64>() - 1.0).abs() < 1e-12);
        assert!((moving[way.1] - 0.1 * f64::from(way.2[0])).abs() < 1e-9);
        assert!((2..=3).contains(&moving.iter().filter(|w| **w > 0.0).count()));
    }

    /// Bites come a minute later with every third cast: a model that allows for it expects the next one
    /// later.
    #[test]
    fn a_moving_window_is_followed() {
        let day: Vec<Wait> = (0..24)
            .map(|i| {
                if i % 3 == 2 {
                    wait(16.0 + 0.33 * f64::from(i), false)
                } else {
                    wait(10.0 + 0.33 * f64::from(i), true)
                }
            })
            .collect();
        let late = |changing: f64| {
            let settings = Settings { changing, ..Settings::default() };
            let plan = WaitPosterior::new(&Record::of_today(&day), &settings).unwrap();
            plan.waiting_on(15.0).unwrap().bite_in_five
        };
        assert!(late(CHANGES) > late(0.0) + 0.1, "{} {}", late(CHANGES), late(0.0));
    }
}
