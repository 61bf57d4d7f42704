//! Counting the lead down: fall time to depth.
//!
//! On a tight line a lead swings in and falls more slowly than on a slack one, so no table is used: the speed
//! comes from one or more falls at a plumbed depth. Depth = speed x time, with limits from how early or late
//! a tap can be.

use serde::{Deserialize, Serialize};

/// A fall timed at a known depth.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Calibration {
    /// Plumbed depth, metres.
    pub depth_m: f64,
    /// Splash to bottom, seconds.
    pub fall_s: f64,
}

/// The speed those falls give.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct SinkSpeed {
    /// Metres a second.
    pub speed: f64,
    /// The lowest speed that the reaction time allows.
    pub low: f64,
    /// The highest speed that the reaction time allows.
    pub high: f64,
    /// From how many falls.
    pub falls: u16,
}

/// A depth with its limits, metres.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Depth {
    /// Best value.
    pub depth_m: f64,
    /// Lower limit.
    pub low_m: f64,
    /// Upper limit.
    pub high_m: f64,
}

/// Why a fall gives no depth.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum FallError {
    /// No time at all, or less than none.
    #[error("a fall of {0} s has no depth")]
    NoTime(f64),
    /// Longer than a fall in any stillwater.
    #[error("a fall of {0} s is longer than a lead takes to any bottom here")]
    TooLong(f64),
    /// An impossible depth.
    #[error("a plumbed depth of {0} m can't be used: it goes from 0.1 to 100 m")]
    BadDepth(f64),
    /// An impossible reaction time.
    #[error("a reaction time of {0} s can't be used: it goes from 0 to 5 s")]
    BadReaction(f64),
    /// Nothing to calibrate by.
    #[error("no fall at a known depth yet")]
    NotCalibrated,
    /// The falls are shorter than they may be mistimed by.
    #[error("the falls are no longer than twice the reaction time of {0} s")]
    TooShort(f64),
}

/// Longest fall accepted, seconds.
const LONGEST_S: f64 = 120.0;

fn time(fall_s: f64) -> Result<f64, FallError> {
    if !fall_s.is_finite() || fall_s <= 0.0 {
        return Err(FallError::NoTime(fall_s));
    }
    if fall_s > LONGEST_S { Err(FallError::TooLong(fall_s)) } else { Ok(fall_s) }
}

fn reaction(reaction_s: f64) -> Result<f64, FallError> {
    if (0.0..=5.0).contains(&reaction_s) { Ok(reaction_s) } else { Err(FallError::BadReaction(reaction_s)) }
}

/// The sink speed of one lead on one line from falls at known depths: all depths over all times.
///
/// Each of the two presses that time a fall may be off by `reaction_s` either way, so a fall by twice that at worst. Over n
/// falls independent errors add as sqrt(n) times the error of one, which gives the limits.
pub fn calibrate(falls: &[Calibration], reaction_s: f64) -> Result<SinkSpeed, FallError> {
    let r = reaction(reaction_s)?;
    if falls.is_empty() {
        return Err(FallError::NotCalibrated);
    }
    let (mut depth, mut seconds) = (0.0, 0.0);
    for fall in falls {
        if !(0.1..=100.0).contains(&fall.depth_m) {
            return Err(FallError::BadDepth(fall.depth_m));
        }
        depth += fall.depth_m;
        seconds += time(fall.fall_s)?;
    }
    let off = error_of_fall(r) * (falls.len() as f64).sqrt();
    if seconds <= off {
        return Err(FallError::TooShort(r));
    }
    Ok(SinkSpeed {
        speed: depth / seconds,
        low: depth / (seconds + off),
        high: depth / (seconds - off),
        falls: falls.len() as u16,
    })
}

/// The depth for a fall of `fall_s` seconds. The limits combine the worst cases of the calibration and of
/// the two presses of this fall.
pub fn depth(speed: &SinkSpeed, fall_s: f64, reaction_s: f64) -> Result<Depth, FallError> {
    let (t, off) = (time(fall_s)?, error_of_fall(reaction(reaction_s)?));
    let (low_m, high_m) = (speed.low * (t - off).max(0.0), speed.high * (t + off));
    Ok(Depth { depth_m: speed.speed * t, low_m, high_m })
}

/// By how much a fall may be mistimed: one press too early and the other too late.
fn error_of_fall(reaction_s: f64) -> f64 {
    2.0 * reaction_s
}

#[cfg(test)]
mod tests {
    use super::*;

    const ONE: [Calibration; 1] = [Calibration { depth_m: 3.0, fall_s: 3.0 }];

    #[test]
    fn the_calibrated_spot_gives_back_its_depth() {
        let speed = calibrate(&ONE, 0.5).unwrap();
        let found = depth(&speed, 3.0, 0.5).unwrap();
        assert!((found.depth_m - 3.0).abs() < 1e-12);
        // Splash half a second late and bottom half a second early, and the other way round.
        assert!((found.low_m - 3.0 / 4.0 * 2.0).abs() < 1e-12);
        assert!((found.high_m - 3.0 / 2.0 * 4.0).abs() < 1e-12);
    }

    #[test]
    fn more_falls_narrow_the_speed() {
        let one = calibrate(&ONE, 0.5).unwrap();
        let four = calibrate(&[ONE[0]; 4], 0.5).unwrap();
        assert!((one.speed - four.speed).abs() < 1e-12);
        assert!(four.high - four.low < 0.6 * (one.high - one.low));
    }

    #[test]
    fn a_fall_of_zero_seconds_is_none() {
        let speed = calibrate(&ONE, 0.5).unwrap();
        assert_eq!(depth(&speed, 0.0, 0.5), Err(FallError::NoTime(0.0)));
        assert_eq!(depth(&speed, -2.0, 0.5), Err(FallError::NoTime(-2.0)));
        assert!(matches!(depth(&speed, f64::NAN, 0.5), Err(FallError::NoTime(_))));
        assert_eq!(depth(&speed, 900.0, 0.5), Err(FallError::TooLong(900.0)));
    }

    #[test]
    fn useless_calibrations_are_refused() {
        assert_eq!(calibrate(&[], 0.5), Err(FallError::NotCalibrated));
        let quick = [Calibration { depth_m: 0.5, fall_s: 0.4 }];
        assert_eq!(calibrate(&quick, 0.5), Err(FallError::TooShort(0.5)));
        let dry = [Calibration { depth_m: 0.0, fall_s: 2.0 }];
        assert_eq!(calibrate(&dry, 0.5), Err(FallError::BadDepth(0.0)));
        assert_eq!(calibrate(&ONE, -0.1), Err(FallError::BadReaction(-0.1)));
    }
}
