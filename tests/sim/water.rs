//! Waters whose truth is known: when fish bite after a splash, and what complicates the simple picture.

use super::day::{DAY, EXTRA, TURN};
use super::luck::{CastLuck, HOURS, Luck, SPELL};

/// When a bite comes after the splash, without complications.
#[derive(Debug, Clone, Copy)]
pub enum Bites {
    /// A share of the casts gets a bite, all of them near one moment (normal, cut off at zero).
    Window { centre: f64, sd: f64, share: f64 },
    /// Fish come by at a constant rate: exponential waits.
    Constant { mean: f64 },
    /// Fish come to the splash at once or not at all, spread evenly over the first minutes.
    Early { from: f64, until: f64, share: f64 },
    /// Two windows.
    Two { first: [f64; 3], second: [f64; 3] },
    /// Gamma waits of shape 2 (a rising hazard), with a share of casts that get none.
    Rising { mean: f64 },
}

/// The kinds of water that the goals tell apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Bites in one narrow window.
    NarrowWindow,
    /// Bites at a constant rate.
    ConstantRate,
    /// Bites soon after the splash or not at all.
    EarlyOnly,
    /// Bites in two windows.
    TwoPeaked,
    /// Spots without fish.
    NobodyHome,
    /// The bites change over the day.
    Drift,
    /// A cast empties its spot for a while.
    Disturbance,
    /// Good and bad casts, spots and hours.
    Overdispersed,
    /// Late taps and forgotten ends.
    Misreported,
}

/// A water.
#[derive(Debug, Clone, Copy)]
pub struct Water {
    pub name: &'static str,
    pub kind: Kind,
    pub bites: Bites,
    /// Bites at the end of the day, if the day drifts linearly from `bites` to these.
    pub evening: Option<Bites>,
    /// Spots fished in turn.
    pub spots: usize,
    /// Chance that fish are at a spot, drawn again each hour; 1 = always.
    pub home: f64,
    /// Mean and sd of the minutes fish stay away from a spot after a cast lands on it or ends there.
    pub away: Option<[f64; 2]>,
    /// Log-sd of how keen the fish are between casts, spots and hours.
    pub uneven: [f64; 3],
    /// Whether bites come in runs: spells of about an hour with nearly twice the bites, and spells with next to none.
    pub runs: bool,
    /// Log-sd of how keen the fish are between days.
    pub between_days: f64,
    /// Whether taps come 5 to 30 s late.
    pub late: bool,
    /// Share of ends that are never tapped.
    pub forgotten: f64,
    /// Minutes between two looks at the clock; 0 = the angler sees the exact minute.
    pub looks: f64,
}

impl Water {
    pub(super) const fn plain(name: &'static str, kind: Kind, bites: Bites) -> Self {
        Self {
            name,
            kind,
            bites,
            evening: None,
            spots: 1,
            home: 1.0,
            away: None,
            uneven: [0.0; 3],
            runs: false,
            between_days: 0.0,
            late: false,
            forgotten: 0.0,
            looks: 0.0,
        }
    }

    /// Seed of its days, from its name and the number of the run (FNV-1a).
    pub fn seed(&self, run: u64) -> u64 {
        self.name
            .bytes()
            .chain(run.to_le_bytes())
            .fold(0xCBF2_9CE4_8422_2325, |h, b| (h ^ u64::from(b)).wrapping_mul(0x0100_0000_01B3))
    }

    /// Whether a day has so few bites that many more days are needed to distinguish shares.
    pub fn slow(&self) -> bool {
        match self.bites {
            Bites::Constant { mean } => self.kind == Kind::ConstantRate && mean > 15.0,
            Bites::Window { centre, .. } => self.kind == Kind::NarrowWindow && centre > 17.0,
            _ => false,
        }
    }

    /// The bites at a moment of the day (minutes since all-in).
    pub fn bites_at(&self, clock: f64, day: f64) -> Bites {
        match self.evening {
            None => self.bites,
            Some(evening) => blend(self.bites, evening, (clock / day).clamp(0.0, 1.0)),
        }
    }

    /// How keen the fish are on a day, apart from everything else.
    fn day(&self, luck: &Luck) -> f64 {
        (self.between_days * luck.day).exp()
    }

    /// How keen the fish are in the spell of a moment.
    fn run(&self, luck: &Luck, clock: f64) -> f64 {
        let spell = luck.spells[((clock / SPELL) as usize).min(luck.spells.len() - 1)];
        match (self.runs, spell) {
            (false, _) => 1.0,
            (true, true) => 1.9,
            (true, false) => 0.1,
        }
    }

    /// The true bites per hour of a day for casts left for `leave` minutes, if only days differ.
    pub fn rate_on(&self, luck: &Luck, leave: f64) -> f64 {
        60.0 * self.bites.on_a_keener_day(self.day(luck)).rate_at(leave, TURN, EXTRA)
    }

    /// The wait that a cast would have if left out long enough; `None` = no bite however long. `disturbed` is
    /// the clock of the last disturbance of the spot; `keener` multiplies how keen the fish are.
    pub fn wait(
        &self,
        luck: &Luck,
        cast: usize,
        clock: f64,
        spot: usize,
        disturbed: f64,
        keener: f64,
    ) -> Option<f64> {
        let fate = luck.cast(cast);
        let hour = ((clock / DAY * HOURS as f64) as usize).min(HOURS - 1);
        if luck.home[hour][spot] >= self.home {
            return None;
        }
        let log_sd = self.uneven;
        let keen = (log_sd[0] * fate.z[1] + log_sd[1] * luck.spots[spot] + log_sd[2] * luck.hours[hour]
            - 0.5 * log_sd.iter().map(|s| s * s).sum::<f64>())
        .exp()
            * self.day(luck)
            * self.run(luck, clock);
        let wait = self.bites_at(clock, DAY).wait(fate, keen * keener)?;
        let back = match self.away {
            None => 0.0,
            Some([mean, sd]) => (disturbed + (mean + sd * fate.z[2]).max(0.0) - clock).max(0.0),
        };
        Some(back + wait)
    }
}

impl Bites {
    /// The bites with fish `keen` times as keen as usual, if they are then still of the same kind.
    pub(super) fn on_a_keener_day(self, keen: f64) -> Self {
        match self {
            Self::Window { centre, sd, share } => Self::Window { centre, sd, share: keener(share, keen) },
            Self::Constant { mean } => Self::Constant { mean: mean / keen },
            Self::Early { from, until, share } => Self::Early { from, until, share: keener(share, keen) },
            Self::Two { .. } | Self::Rising { .. } => self,
        }
    }

    /// Bites per minute of casts left for `leave` minutes, by renewal reward.
    pub(super) fn rate_at(&self, leave: f64, turn: f64, extra: f64) -> f64 {
        let steps = 400;
        let step = leave / f64::from(steps);
        let out: f64 = (1..=steps)
            .map(|i| step * (1.0 - 0.5 * (self.by(step * f64::from(i - 1)) + self.by(step * f64::from(i)))))
            .sum();
        self.by(leave) / (out + turn + extra * self.by(leave))
    }

    /// The wait for given luck, with fish `keen` times as keen as usual, which multiplies rates and the odds
    /// of a bite.
    pub fn wait(&self, fate: &CastLuck, keen: f64) -> Option<f64> {
        match *self {
            Self::Window { centre, sd, share } => {
                (fate.u[0] < keener(share, keen)).then(|| (centre + sd * fate.z[0]).max(0.1))
            }
            Self::Constant { mean } => Some(-mean / keen * (1.0 - fate.u[2]).ln()),
            Self::Early { from, until, share } => {
                (fate.u[0] < keener(share, keen)).then(|| from + (until - from) * fate.u[2])
            }
            Self::Two { first, second } => {
                let (a, b) = (keener(first[2], keen), keener(second[2] / (1.0 - first[2]), keen));
                let peak = if fate.u[0] < a {
                    first
                } else if fate.u[1] < b {
                    second
                } else {
                    return None;
                };
                Some((peak[0] + peak[1] * fate.z[0]).max(0.1))
            }
            Self::Rising { mean } => Some(-mean / keen / 2.0 * ((1.0 - fate.u[2]) * (1.0 - fate.u[1])).ln()),
        }
    }

    /// Share of casts with a bite by `t` minutes, for the renewal-reward check.
    pub fn by(&self, t: f64) -> f64 {
        let peak = |centre: f64, sd: f64| {
            if t < 0.1 { 0.0 } else { 0.5 * erfc(-(t - centre) / sd / std::f64::consts::SQRT_2) }
        };
        match *self {
            Self::Window { centre, sd, share } => share * peak(centre, sd),
            Self::Constant { mean } => 1.0 - (-t / mean).exp(),
            Self::Early { from, until, share } => share * ((t - from) / (until - from)).clamp(0.0, 1.0),
            Self::Two { first, second } => {
                first[2] * peak(first[0], first[1]) + second[2] * peak(second[0], second[1])
            }
            Self::Rising { mean } => 1.0 - (1.0 + 2.0 * t / mean) * (-2.0 * t / mean).exp(),
        }
    }

    /// Best fixed leave time by renewal reward, with `turn` minutes a cast and `extra` a bite.
    pub fn best_leave(&self, turn: f64, extra: f64) -> f64 {
        let step = 0.05;
        let (mut out, mut best, mut best_rate) = (0.0, 300.0, 0.0);
        for i in 1..=6000 {
            let t = f64::from(i) * step;
            let bites = self.by(t);
            out += step * (1.0 - 0.5 * (self.by(t - step) + bites));
            let rate = bites / (out + turn + extra * bites);
            if rate > best_rate + 1e-12 {
                (best, best_rate) = (t, rate);
            }
        }
        best
    }
}

/// A share whose odds are multiplied by `keen`.
fn keener(share: f64, keen: f64) -> f64 {
    share * keen / (1.0 - share + share * keen)
}

/// Complementary error function (Numerical Recipes' Chebyshev fit, accurate to 1e-7): enough for a best leave
/// time to the nearest twentieth of a minute.
fn erfc(x: f64) -> f64 {
    let z = x.abs();
    let t = 1.0 / (1.0 + 0.5 * z);
    let poly = [
        -1.265_512_23,
        1.000_023_68,
        0.374_091_96,
        0.096_784_18,
        -0.186_288_06,
        0.278_868_07,
        -1.135_203_98,
        1.488_515_87,
        -0.822_152_23,
        0.170_872_77,
    ];
    let series = poly.iter().rev().fold(0.0, |sum, c| sum * t + c);
    let tail = t * (-z * z + series).exp();
    if x >= 0.0 { tail } else { 2.0 - tail }
}

fn blend(morning: Bites, evening: Bites, x: f64) -> Bites {
    let mix = |a: f64, b: f64| a + (b - a) * x;
    match (morning, evening) {
        (Bites::Window { centre: a, sd: b, share: c }, Bites::Window { centre: d, sd: e, share: f }) => {
            Bites::Window { centre: mix(a, d), sd: mix(b, e), share: mix(c, f) }
        }
        (Bites::Constant { mean: a }, Bites::Constant { mean: b }) => Bites::Constant { mean: mix(a, b) },
        _ => {
            if x < 0.5 {
                morning
            } else {
                evening
            }
        }
    }
}
