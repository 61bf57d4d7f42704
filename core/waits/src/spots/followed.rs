//! The forward filter of a day, kept between taps, so that a tap only adds one cast.
//!
//! The filter of a shape depends on no other shape. So a shape that becomes relevant later can be run through the earlier casts
//! on its own, and a continued filter gives bit for bit the result of a fresh one.

use super::super::Wait;
use super::super::likelihood::Likelihood;
use super::super::shapes::Shapes;
use super::filter::weigh;
use super::{LASTING, RESTS, Spot, SpotCast, SpotEvent, World};
use std::sync::Arc;

/// Likelihoods below this are scaled up, so that a long day stays within the range of single precision. One cast reduces a
/// likelihood to no less than a millionth of it, far above the smallest positive number.
const LOW: f32 = 1.0 / HIGH;
/// The scale factor: a power of two, so that no bit is lost.
const HIGH: f32 = 1_099_511_627_776.0;
/// Its exponent.
pub(super) const HIGH_EXPONENT: i32 = 40;

/// The filter of a day, kept for the next question.
#[derive(Debug, Clone, Default)]
pub struct SpotsKept(pub(super) Option<Arc<Followed>>);

/// Some shapes and the casts that they were filtered through.
#[derive(Debug, Clone)]
pub(super) struct Followed {
    pub(super) shapes: Arc<Shapes>,
    pub(super) worlds: Vec<World>,
    /// The shapes, in the order in which they became relevant.
    pub(super) kinds: Vec<usize>,
    /// Share of spots that hold fish, by shape, and one over that share.
    pub(super) home: Vec<f32>,
    over_home: Vec<f32>,
    /// What was followed, in order of time.
    pub(super) events: Vec<SpotEvent>,
    /// By world and shape: the prior of the world times the likelihood of the casts, scaled by [`HIGH`] as often as `raised` says.
    pub(super) likely: Vec<Vec<f32>>,
    pub(super) raised: Vec<i32>,
    /// The spots of the record.
    pub(super) spots: Vec<Spot>,
    /// One that was never fished.
    pub(super) untouched: Spot,
}

/// The ways in which spots may differ, with the belief in each; `rest_min` is the angler's own figure for how long water is rested.
pub(super) fn worlds(rest_min: f64) -> (Vec<World>, Vec<f64>) {
    let of = |(lasting_min, a): (f64, f64)| {
        RESTS.map(|(share, b)| (World { lasting_min, rest_min: share * rest_min.max(0.0) }, a * b))
    };
    LASTING.into_iter().flat_map(of).unzip()
}

impl Followed {
    /// Those shapes before the first cast.
    pub(super) fn new(shapes: &Arc<Shapes>, kinds: Vec<usize>, rest_min: f64) -> Self {
        let (worlds, beliefs) = worlds(rest_min);
        let home: Vec<f32> = kinds.iter().map(|&k| shapes.ever[k] as f32).collect();
        let untouched = Spot {
            here: vec![home.clone(); worlds.len()],
            known_min: f64::NEG_INFINITY,
            disturbed_min: f64::NEG_INFINITY,
        };
        Self {
            shapes: Arc::clone(shapes),
            worlds,
            over_home: home.iter().map(|home| 1.0 / home).collect(),
            home,
            events: Vec::new(),
            likely: beliefs.iter().map(|belief| vec![*belief as f32; kinds.len()]).collect(),
            raised: vec![0; kinds.len()],
            kinds,
            spots: Vec::new(),
            untouched,
        }
    }

    /// Whether a record with that many spots begins with the events that were filtered.
    pub(super) fn begins(
        &self,
        shapes: &Arc<Shapes>,
        rest_min: f64,
        spots: usize,
        events: &[SpotEvent],
    ) -> bool {
        Arc::ptr_eq(&self.shapes, shapes)
            && self.worlds == worlds(rest_min).0
            && self.spots.len() <= spots
            && events.starts_with(&self.events)
    }

    /// More spots, none of which was fished.
    pub(super) fn grow(&mut self, spots: usize) {
        self.spots.resize(spots.max(self.spots.len()), self.untouched.clone());
    }

    /// Runs further shapes through the same casts.
    pub(super) fn follow_too(&mut self, kinds: Vec<usize>, rest_min: f64) {
        if kinds.is_empty() {
            return;
        }
        let mut more = Self::new(&self.shapes, kinds, rest_min);
        more.grow(self.spots.len());
        for event in &self.events {
            more.take(event);
        }
        self.kinds.extend(more.kinds);
        self.home.extend(more.home);
        self.over_home.extend(more.over_home);
        self.raised.extend(more.raised);
        extend(&mut self.likely, more.likely);
        extend(&mut self.untouched.here, more.untouched.here);
        for (spot, more) in self.spots.iter_mut().zip(more.spots) {
            extend(&mut spot.here, more.here);
        }
    }

    /// Adds the next event.
    pub(super) fn take(&mut self, event: &SpotEvent) {
        self.events.push(*event);
        match event {
            SpotEvent::Fished(cast) => self.fished(cast),
            SpotEvent::Disturbed { spot, at_min } => {
                if let Some(spot) = self.spots.get_mut(*spot) {
                    spot.disturbed_min = spot.disturbed_min.max(*at_min);
                }
            }
        }
    }

    /// A cast: each shape in each world by how likely it makes the cast, and the chance of fish by Bayes' rule.
    fn fished(&mut self, cast: &SpotCast) {
        let Some(spot) = self.spots.get(cast.spot) else { return };
        let (known_min, disturbed_min) = (spot.known_min, spot.disturbed_min);
        // Worlds in which fish are back at the same time make the cast equally likely among fish.
        let mut likely: Vec<(f64, (Vec<f32>, f32))> = Vec::new();
        for (w, world) in self.worlds.iter().enumerate() {
            let back_in = world.back_in(disturbed_min, cast.at_min);
            let known = likely.iter().position(|(of, _)| *of == back_in).unwrap_or_else(|| {
                likely.push((back_in, self.likely_of(cast, back_in)));
                likely.len() - 1
            });
            let kept = world.kept(cast.at_min - known_min);
            let here = &mut self.spots[cast.spot].here[w];
            weigh(&mut self.likely[w], here, &self.home, kept, &likely[known].1);
        }
        self.raise();
        let spot = &mut self.spots[cast.spot];
        spot.known_min = known_min.max(cast.at_min + cast.wait.minutes());
    }

    /// Scales up the likelihoods that have become small.
    fn raise(&mut self) {
        let mut top = vec![0.0_f32; self.kinds.len()];
        for row in &self.likely {
            top.iter_mut().zip(row).for_each(|(top, x)| *top = if *x > *top { *x } else { *top });
        }
        for (shape, _) in top.iter().enumerate().filter(|(_, top)| **top < LOW) {
            self.likely.iter_mut().for_each(|row| row[shape] *= HIGH);
            self.raised[shape] += 1;
        }
    }

    /// How likely the cast is among fish that come back after some minutes, by shape, and where there are none.
    pub(super) fn likely_of(&self, cast: &SpotCast, back_in: f64) -> (Vec<f32>, f32) {
        let minutes = cast.wait.minutes() - back_in;
        let wait = Wait::new(minutes.max(0.0), cast.wait.is_bite()).unwrap_or(cast.wait);
        let likelihood = Likelihood::new(&self.shapes, wait);
        let without = likelihood.of(0.0, 0.0) as f32;
        if minutes <= 0.0 {
            return (vec![without; self.kinds.len()], without);
        }
        let (before, after) = likelihood.rows(&self.shapes);
        let of_kinds = |row: &[f32]| -> Vec<f32> { self.kinds.iter().map(|&k| row[k]).collect() };
        (likelihood.among(&of_kinds(before), &of_kinds(after), &self.over_home), without)
    }
}

fn extend(rows: &mut [Vec<f32>], more: Vec<Vec<f32>>) {
    rows.iter_mut().zip(more).for_each(|(row, more)| row.extend(more));
}
