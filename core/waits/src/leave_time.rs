//! From posterior means by leave time to the best leave time and the near-best band.

/// Posterior means by leave time.
#[derive(Debug, Clone, Default)]
pub(crate) struct Means {
    /// Minutes.
    pub times: Vec<f64>,
    /// Mean of R, bites per minute.
    pub rate: Vec<f64>,
    /// Mean share bitten.
    pub bitten: Vec<f64>,
    /// Mean of the smaller of wait and t.
    pub waiting: Vec<f64>,
    /// Mean share of casts that ever get a bite.
    pub ever: f64,
    /// Mean of (share still waiting at t) x (rate of fresh casts left for the best time). Divided by the mean
    /// share still waiting, it is the rate of fresh casts once a cast has waited t without a bite.
    pub fresh: Vec<f64>,
    /// How many of the times are within the horizon, up to which leave times are considered.
    pub known: usize,
}

/// Leave times whose rate is near the best.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Band {
    /// Best leave time within the horizon, and its rate in bites per minute.
    pub best: f64,
    pub best_rate: f64,
    /// Whether the best time is inside the horizon, not at its end.
    pub inside: bool,
    /// The first near-best leave time.
    pub from: f64,
    /// The last one; `None` if the band extends to the horizon.
    pub until: Option<f64>,
}

/// The near-best band around the best leave time.
pub(crate) fn band(means: &Means, near_best: f64) -> Band {
    let (times, rate) = (&means.times[..means.known], &means.rate[..means.known]);
    let mut top = 0;
    for i in 1..rate.len() {
        if rate[i] > rate[top] {
            top = i;
        }
    }
    let last = rate.len() - 1;
    // The end of the horizon counts as best only if the rate there is higher by at least one in a thousand.
    let inside = top < last && rate[last] < rate[top] * 0.999;
    let (best, best_rate) = peak(times, rate, top);
    let level = near_best * best_rate;
    let mut low = top;
    while low > 0 && rate[low - 1] >= level {
        low -= 1;
    }
    let from = match low {
        // A cast of no length catches nothing.
        0 => crossing((0.0, 0.0), (times[0], rate[0]), level),
        i => crossing((times[i - 1], rate[i - 1]), (times[i], rate[i]), level),
    };
    let mut high = top;
    while high < last && rate[high + 1] >= level {
        high += 1;
    }
    let until =
        (high < last).then(|| crossing((times[high], rate[high]), (times[high + 1], rate[high + 1]), level));
    Band { best, best_rate, inside, from: from.min(best), until: until.map(|u| u.max(best)) }
}

/// The top of the parabola through the highest point and its neighbours.
fn peak(times: &[f64], rate: &[f64], top: usize) -> (f64, f64) {
    if top == 0 || top + 1 == rate.len() {
        return (times[top], rate[top]);
    }
    let (a, b, c) = (times[top - 1], times[top], times[top + 1]);
    let left = (rate[top] - rate[top - 1]) / (b - a);
    let right = (rate[top + 1] - rate[top]) / (c - b);
    let curve = (right - left) / (c - a);
    if curve >= 0.0 {
        return (b, rate[top]);
    }
    let slope = left + curve * (b - a);
    let t = (b - 0.5 * slope / curve).clamp(a, c);
    (t, rate[top] + slope * (t - b) + curve * (t - b) * (t - b))
}

fn crossing(a: (f64, f64), b: (f64, f64), level: f64) -> f64 {
    if a.1 == b.1 { b.0 } else { a.0 + (b.0 - a.0) * ((level - a.1) / (b.1 - a.1)).clamp(0.0, 1.0) }
}

/// A mean curve at any time, interpolated linearly between its points and from 0 at 0.
pub(crate) fn at(times: &[f64], values: &[f64], t: f64) -> f64 {
    let i = times.partition_point(|&x| x < t);
    match (i, times.get(i)) {
        (_, None) => values.last().copied().unwrap_or(0.0),
        (0, Some(&b)) => values[0] * (t / b).max(0.0),
        (i, Some(&b)) => {
            let a = times[i - 1];
            values[i - 1] + (values[i] - values[i - 1]) * (t - a) / (b - a)
        }
    }
}
