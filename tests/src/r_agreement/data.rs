//! Random censored waits of two sides: seeded, of many sizes, with and without ties, from
//! hardly censored to mostly censored.

use restwater_compare::chance::Chance;
use restwater_waits::Wait;
use std::fmt::Write as _;

/// How many sets are compared.
pub const SETS: usize = 200;

/// One row: side (1 or 2), wait.
pub type Row = (u8, Wait);

/// One set of waits.
pub struct Set {
    /// Its rows.
    pub rows: Vec<Row>,
}

impl Set {
    /// The waits of side 1 or 2.
    pub fn side(&self, side: u8) -> Vec<Wait> {
        self.rows.iter().filter(|r| r.0 == side).map(|r| r.1).collect()
    }

    /// All waits.
    pub fn waits(&self) -> Vec<Wait> {
        self.rows.iter().map(|r| r.1).collect()
    }

    /// Whether all figures exist: both sides have data, and bites come at two or more times while both are
    /// out.
    fn is_usable(&self) -> bool {
        let mut bites: Vec<f64> = self.rows.iter().filter(|r| r.1.is_bite()).map(|r| r.1.minutes()).collect();
        bites.sort_by(f64::total_cmp);
        bites.dedup();
        let longest = |side| self.side(side).iter().map(|w| w.minutes()).fold(0.0, f64::max);
        let together = longest(1).min(longest(2));
        bites.len() >= 2 && bites[0] <= together && self.side(1).len() > 1 && self.side(2).len() > 1
    }
}

/// All sets of this seed.
pub fn sets(seed: u64) -> Vec<Set> {
    let mut usable = (0..).map(|stream| draw(&mut Chance::new(seed, stream))).filter(Set::is_usable);
    usable.by_ref().take(SETS).collect()
}

fn draw(chance: &mut Chance) -> Set {
    let most = if chance.happens(0.2) { 250 } else { 50 };
    let n = 6 + chance.below(most);
    let shape = 0.5 + 2.5 * chance.uniform();
    let scale = [6.0 + 20.0 * chance.uniform(), 6.0 + 20.0 * chance.uniform()];
    let leave = 5.0 + 25.0 * chance.uniform();
    let step = [0.0, 0.5, 2.0][chance.below(3)];
    let rows = (0..n).filter_map(|_| {
        let side = 1 + chance.below(2) as u8;
        let bite_at = scale[usize::from(side - 1)] * chance.exponential().powf(1.0 / shape);
        // Some casts are wound in early, at any time, not only at the leave time.
        let out = if chance.happens(0.3) { leave * chance.uniform() } else { leave };
        let minutes = bite_at.min(out);
        let rounded = if step > 0.0 { (minutes / step).ceil() * step } else { minutes.max(1e-3) };
        Wait::new(rounded, bite_at <= out).ok().map(|w| (side, w))
    });
    Set { rows: rows.collect() }
}

/// The sets as R reads them: 17 digits, so that no bit is lost.
pub fn csv(sets: &[Set]) -> String {
    let mut text = String::from("set,group,minutes,bite\n");
    for (i, set) in sets.iter().enumerate() {
        for (side, wait) in &set.rows {
            let bite = u8::from(wait.is_bite());
            let _ = writeln!(text, "{i},{side},{:.17e},{bite}", wait.minutes());
        }
    }
    text
}
