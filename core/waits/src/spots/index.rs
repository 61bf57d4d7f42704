//! What a cast at a spot is worth, and how long to leave it there: the bites of one visit over its minutes, including the
//! turn-round and the time that a bite costs, for the best leave time. The idea is that of an index for each of several places
//! (Gittins 1979; Whittle 1988 where they change while one is elsewhere), cut down to one visit so that it can be explained.

use super::{Spot, SpotBeliefs, SpotLeave, SpotWorth, Then, dot};

/// A bite at a spot that wasn't known to have fish counts this much more, in proportion to how little was known: later
/// casts can go back there. Set by simulation (docs/advice.md).
const COME_BACK: f64 = 1.0;

/// A spot at a moment.
struct Visit {
    /// By world and shape: chance of fish over the chance for any spot.
    times: Vec<Vec<f32>>,
    /// By world: minutes until fish are back.
    back_in: Vec<f64>,
    here: f64,
    /// Share of casts with a bite by each step, and the mean of the smaller of wait and time.
    bitten: Vec<f64>,
    waiting: Vec<f64>,
    /// The step at which a cast is worth most, and what it is worth in bites per minute.
    best: (usize, f64),
}

/// Another spot that can be cast to.
struct Other<'a> {
    spot: Option<usize>,
    place: &'a Spot,
    visit: Visit,
}

/// Sums over shapes and worlds: casts still waiting, their bites at the next place, their minutes there.
#[derive(Default, Clone, Copy)]
struct Sums {
    still: f64,
    bites: f64,
    minutes: f64,
    here: f64,
}

/// What the sums of one world are made of: a figure for each shape.
struct OfShapes<'a> {
    weights: &'a [f32],
    /// Chance of fish here over the chance for any spot.
    times: &'a [f32],
    /// Share of casts with a bite by now.
    so_far: &'a [f32],
    home: &'a [f32],
    /// Share of casts with a bite by the end of the next one.
    bitten: &'a [f32],
    /// Mean of its wait or its time.
    waits: &'a [f32],
    /// Minutes that the next cast can have a bite.
    fishing: f32,
}

impl OfShapes<'_> {
    /// Sums over the shapes: casts that still wait, fish that are here and have not bitten, bites of the next cast and the
    /// minutes that they save of it. `among` is how many of the next casts meet fish, by `still`, the fish here, and `by`.
    /// Eight shapes at a time: this runs for every minute that a cast might be left.
    fn sums(&self, by: &[f32], among: impl Fn(f32, f32, f32) -> f32) -> [f64; 4] {
        let mut sums = [[0.0_f32; 8]; 4];
        let rows = [self.weights, self.times, self.so_far, self.home, self.bitten, self.waits, by];
        let (eights, rest) = (rows.map(|row| row.as_chunks::<8>().0), rows.map(|row| row.as_chunks::<8>().1));
        for k in 0..eights[0].len() {
            let eight = eights.map(|row| row[k]);
            for i in 0..8 {
                let of = self.of(&among, eight.map(|row| row[i]));
                for n in 0..4 {
                    sums[n][i] += of[n];
                }
            }
        }
        let mut sums = sums.map(|lanes| lanes.iter().map(|lane| f64::from(*lane)).sum::<f64>());
        for k in 0..rest[0].len() {
            let of = self.of(&among, rest.map(|row| row[k]));
            sums.iter_mut().zip(of).for_each(|(sum, of)| *sum += f64::from(of));
        }
        sums
    }

    #[inline]
    fn of(
        &self,
        among: impl Fn(f32, f32, f32) -> f32,
        [weight, times, so_far, home, bitten, waits, by]: [f32; 7],
    ) -> [f32; 4] {
        let still = weight * positive(1.0 - times * so_far);
        let fish = weight * times * positive(home - so_far);
        let among = among(still, fish, by);
        [still, fish, among * bitten, among * positive(self.fishing - waits)]
    }
}

/// A number that isn't negative, in a single instruction, unlike `f32::max`, which has to look for what isn't a number.
#[inline]
fn positive(x: f32) -> f32 {
    if x > 0.0 { x } else { 0.0 }
}

impl SpotBeliefs {
    /// What a cast at a spot at a moment is worth; `None` is a spot that was never fished.
    #[inline(never)]
    pub fn worth(&self, spot: Option<usize>, at_min: f64) -> SpotWorth {
        self.spot(spot).map_or(SpotWorth { here: 0.0, per_hour: 0.0, rank: 0.0 }, |spot| {
            let Visit { here, best: (_, rate), .. } = self.visit(spot, at_min);
            let rank = 60.0 * rate;
            SpotWorth { here, per_hour: rank / come_back(here), rank }
        })
    }

    /// How long to leave a cast that went to `spot` at a moment, and what then; `open` are the other spots that can be cast to
    /// now.
    #[inline(never)]
    pub fn leave(&self, spot: Option<usize>, at_min: f64, open: &[Option<usize>]) -> Option<SpotLeave> {
        let here = self.visit(self.spot(spot)?, at_min);
        let best = self.best_other(spot, at_min, open);
        let mut last = None;
        for (step, &point) in self.steps.iter().enumerate().take(self.steps.len() - 1) {
            let (rate, leave) = self.if_left(&here, point, best.as_ref(), at_min);
            if self.waiting_on(&here, step) < rate {
                return Some(SpotLeave { leave_min: Some(self.shapes.times[point]), ..leave });
            }
            last = Some(leave);
        }
        last
    }

    /// The best of the other spots.
    fn best_other(&self, spot: Option<usize>, at_min: f64, open: &[Option<usize>]) -> Option<Other<'_>> {
        let others = open.iter().filter(|other| **other != spot || other.is_none());
        let others = others.filter_map(|&other| {
            let place = self.spot(other)?;
            Some(Other { spot: other, place, visit: self.visit(place, at_min) })
        });
        others.reduce(|a, b| if b.visit.best.1 > a.visit.best.1 { b } else { a })
    }

    /// What to do with a cast that had no bite by a time, and the bites per minute of the next cast then.
    fn if_left(&self, here: &Visit, step: usize, best: Option<&Other>, at_min: f64) -> (f64, SpotLeave) {
        let stay = self.after(here, step, None, at_min);
        let left = stay.here / stay.still.max(1e-12);
        let recast = SpotLeave { leave_min: None, then: Then::RecastHere, here: left, there: left };
        let Some(Other { spot, place, visit }) = best else { return (self.rate(stay), recast) };
        let move_on = self.after(here, step, Some((place, visit)), at_min);
        if self.rate(move_on) > self.rate(stay) {
            (self.rate(move_on), SpotLeave { then: Then::MoveTo(*spot), there: visit.here, ..recast })
        } else {
            (self.rate(stay), recast)
        }
    }

    fn visit(&self, spot: &Spot, at_min: f64) -> Visit {
        let (mut times, mut back_in, mut here) = (Vec::new(), Vec::new(), 0.0);
        for (w, world) in self.followed.worlds.iter().enumerate() {
            let kept = world.kept(at_min - spot.known_min);
            let mut row = Vec::with_capacity(self.home.len());
            for ((chance, home), weight) in self.here_at(spot, w, kept).zip(&self.home).zip(&self.weights[w])
            {
                here += f64::from(chance * weight);
                row.push(chance / home);
            }
            times.push(row);
            back_in.push(world.back_in(spot.disturbed_min, at_min));
        }
        let bitten = self.bitten_by(&times, &back_in);
        let waiting = self.waits(&bitten);
        let more = come_back(here);
        let mut best = (0, 0.0);
        for (i, (b, w)) in bitten.iter().zip(&waiting).enumerate() {
            let rate = b * more / (w + self.costs.turn_round_min + self.costs.bite_extra_min * b);
            if rate > best.1 {
                best = (i, rate);
            }
        }
        Visit { times, back_in, here, bitten, waiting, best }
    }

    /// Share of casts with a bite by each step.
    fn bitten_by(&self, times: &[Vec<f32>], back_in: &[f64]) -> Vec<f64> {
        let mut bitten = vec![0.0; self.steps.len()];
        let mut done = vec![false; self.followed.worlds.len()];
        for w in 0..self.followed.worlds.len() {
            if std::mem::replace(&mut done[w], true) {
                continue;
            }
            // Worlds with one time until the fish are back share their rows.
            let mut sum: Vec<f32> = self.weights[w].iter().zip(&times[w]).map(|(a, b)| a * b).collect();
            for other in w + 1..self.followed.worlds.len() {
                if !done[other] && back_in[other] == back_in[w] {
                    done[other] = true;
                    let more = self.weights[other].iter().zip(&times[other]);
                    sum.iter_mut().zip(more).for_each(|(sum, (a, b))| *sum += a * b);
                }
            }
            for (bitten, &step) in bitten.iter_mut().zip(&self.steps) {
                let minutes = self.shapes.times[step] - back_in[w];
                if minutes > 0.0 {
                    *bitten += f64::from(dot(&sum, self.row(self.point(minutes))));
                }
            }
        }
        bitten
    }

    /// Mean of the smaller of wait and time, by trapezoids.
    fn waits(&self, bitten: &[f64]) -> Vec<f64> {
        let (mut sum, mut before) = (0.0, (0.0, 0.0));
        let of = |(&b, &step): (&f64, &usize)| {
            let t = self.shapes.times[step];
            sum += (t - before.0) * (1.0 - 0.5 * (b + before.1));
            before = (t, b);
            sum
        };
        bitten.iter().zip(&self.steps).map(of).collect()
    }

    /// The most bites per minute that waiting on after a step without a bite brings.
    fn waiting_on(&self, here: &Visit, step: usize) -> f64 {
        let (b, w) = (here.bitten[step], here.waiting[step]);
        let later = here.bitten[step + 1..].iter().zip(&here.waiting[step + 1..]);
        later
            .map(|(&b1, &w1)| (b1 - b) / (w1 - w + self.costs.bite_extra_min * (b1 - b)).max(1e-9))
            .fold(0.0, f64::max)
    }

    /// What the next cast brings after one here that had no bite by a time: at another place, or here again.
    fn after(&self, here: &Visit, step: usize, to: Option<(&Spot, &Visit)>, at_min: f64) -> Sums {
        let (waited, turn) = (self.shapes.times[step], self.costs.turn_round_min);
        let target = to.map_or(here, |(_, visit)| visit);
        let minutes = self.shapes.times[self.steps[target.best.0]];
        let mut sums = Sums::default();
        for (w, world) in self.followed.worlds.iter().enumerate() {
            let so_far = self.row(self.point(waited - here.back_in[w]));
            let back_in = match to {
                None => (world.rest_min - turn).max(0.0),
                Some((spot, _)) => world.back_in(spot.disturbed_min, at_min + waited + turn),
            };
            let (fishing, point) = (minutes - back_in, self.point(minutes - back_in));
            let (bitten, waits) = (self.row(point), self.waits_at(point));
            let shapes = OfShapes {
                weights: &self.weights[w],
                times: &here.times[w],
                so_far,
                home: &self.home,
                bitten,
                waits,
                fishing: fishing as f32,
            };
            // The next cast meets the same fish, if they are here; fish by chance, as every cast does; or those of another spot.
            let [still, fish, bites, saved] = match to {
                None if world.lasting_min > 0.0 => shapes.sums(&self.over_home, |_, fish, over| fish * over),
                None => shapes.sums(&self.home, |still, _, _| still),
                Some((_, visit)) => shapes.sums(&visit.times[w], |still, _, times| still * times),
            };
            sums.still += still;
            sums.here += fish;
            sums.bites += bites;
            sums.minutes += still * minutes - saved;
        }
        sums
    }

    /// Bites per minute of the next cast.
    fn rate(&self, sums: Sums) -> f64 {
        let Sums { still, bites, minutes, .. } = sums;
        bites / (still * self.costs.turn_round_min + minutes + self.costs.bite_extra_min * bites).max(1e-12)
    }

    /// The point nearest to a time.
    fn point(&self, minutes: f64) -> usize {
        if minutes <= 0.0 {
            return 0;
        }
        let (point, part) = self.shapes.place(minutes);
        if part < 0.5 { point } else { point + 1 }
    }
}

/// How much a bite counts at a spot that has fish with this chance.
fn come_back(here: f64) -> f64 {
    1.0 + COME_BACK * (1.0 - here)
}
