//! The height ladder: pop-up heights from 2 in to 5 ft, and what was tried on each.

use super::units::LineLength;
use serde::{Deserialize, Serialize};

/// Heights in inches to start with: common practice, no source; editable.
pub const STARTING_INCHES: [u32; 11] = [2, 4, 6, 9, 12, 18, 24, 30, 36, 48, 60];

/// Height of the first cast in 8 to 10 ft of water, inches: common practice, no source; editable.
pub const FIRST_INCHES: u32 = 18;

/// The starting ladder.
pub fn starting_ladder() -> Vec<LineLength> {
    STARTING_INCHES.iter().map(|&i| LineLength::from_tenths_mm(i * 254)).collect()
}

/// A wait with a pop-up, as the ladder counts it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeightCast {
    /// Whether the wait began with a cast; one that began with a twitch is more of the same cast.
    pub begins: bool,
    /// Counterweight to hook.
    pub height: LineLength,
    /// Minutes out.
    pub minutes: f64,
    /// Bites on it.
    pub bites: u16,
}

/// The casts and bites of a rung.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Rung {
    /// Its height.
    pub height: LineLength,
    /// Casts nearest to it.
    pub casts: u32,
    /// Minutes they were out.
    pub minutes: f64,
    /// Bites on them.
    pub bites: u32,
}

/// Why a ladder can't be made.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum LadderError {
    /// No rungs.
    #[error("the ladder has no heights")]
    Empty,
    /// A height twice, or of nothing.
    #[error("the height {0} twice, or zero")]
    BadRung(LineLength),
    /// Impossible minutes.
    #[error("a cast of {0} minutes can't be counted")]
    BadMinutes(f64),
}

/// Each rung, low to high, with the casts whose height is nearest to it (halfway goes to the lower).
pub fn tried(heights: &[LineLength], casts: &[HeightCast]) -> Result<Vec<Rung>, LadderError> {
    let mut sorted = heights.to_vec();
    sorted.sort_unstable();
    if sorted.is_empty() {
        return Err(LadderError::Empty);
    }
    if sorted[0].tenths_mm() == 0 {
        return Err(LadderError::BadRung(sorted[0]));
    }
    if let Some(twice) = sorted.windows(2).find(|w| w[0] == w[1]) {
        return Err(LadderError::BadRung(twice[0]));
    }
    let mut rungs: Vec<Rung> =
        sorted.iter().map(|&height| Rung { height, casts: 0, minutes: 0.0, bites: 0 }).collect();
    for cast in casts {
        if !cast.minutes.is_finite() || cast.minutes < 0.0 {
            return Err(LadderError::BadMinutes(cast.minutes));
        }
        let nearest = rungs.iter_mut().min_by_key(|r| r.height.tenths_mm().abs_diff(cast.height.tenths_mm()));
        if let Some(rung) = nearest {
            rung.casts += u32::from(cast.begins);
            rung.minutes += cast.minutes;
            rung.bites += u32::from(cast.bites);
        }
    }
    Ok(rungs)
}

/// Rungs not tried yet, nearest to `from` first: a list to choose from, not advice.
pub fn untried(rungs: &[Rung], from: LineLength) -> Vec<LineLength> {
    let mut heights: Vec<LineLength> = rungs.iter().filter(|r| r.casts == 0).map(|r| r.height).collect();
    restwater_sorting::by_key(&mut heights, |h| (h.tenths_mm().abs_diff(from.tenths_mm()), *h));
    heights
}

#[cfg(test)]
mod tests {
    use super::*;

    fn inches(i: u32) -> LineLength {
        LineLength::from_tenths_mm(i * 254)
    }

    #[test]
    fn casts_count_on_the_nearest_rung() {
        let casts = [
            HeightCast { begins: true, height: inches(18), minutes: 15.0, bites: 0 },
            HeightCast { begins: true, height: inches(17), minutes: 10.0, bites: 1 },
            HeightCast { begins: true, height: inches(72), minutes: 20.0, bites: 0 },
        ];
        let rungs = tried(&starting_ladder(), &casts).unwrap();
        assert_eq!(rungs.len(), 11);
        let at = |i| *rungs.iter().find(|r| r.height == inches(i)).unwrap();
        assert_eq!((at(18).casts, at(18).bites), (2, 1));
        assert!((at(18).minutes - 25.0).abs() < 1e-12);
        assert_eq!(at(60).casts, 1, "above the ladder counts on its top rung");
    }

    #[test]
    fn untried_heights_come_nearest_first() {
        let casts = [HeightCast { begins: true, height: inches(FIRST_INCHES), minutes: 15.0, bites: 0 }];
        let rungs = tried(&starting_ladder(), &casts).unwrap();
        let next = untried(&rungs, inches(FIRST_INCHES));
        assert_eq!(next[..3], [inches(12), inches(24), inches(9)]);
        assert_eq!(next.len(), 10);
    }

    #[test]
    fn impossible_ladders_and_casts_are_refused() {
        assert_eq!(tried(&[], &[]), Err(LadderError::Empty));
        assert_eq!(tried(&[inches(2), inches(2)], &[]), Err(LadderError::BadRung(inches(2))));
        let bad = HeightCast { begins: true, height: inches(2), minutes: f64::NAN, bites: 0 };
        assert!(matches!(tried(&[inches(2)], &[bad]), Err(LadderError::BadMinutes(_))));
    }
}
