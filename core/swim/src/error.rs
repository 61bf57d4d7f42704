//! What can be wrong with a swim, and what to do about it.

/// Why a swim, a spot or an outline can't be used. Every message says what to do next.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum SwimError {
    /// Not a number, or infinite.
    #[error("{what} must be a number, not {value}")]
    NotANumber {
        /// Which figure.
        what: &'static str,
        /// What was given.
        value: f64,
    },
    /// A figure that must be above zero.
    #[error("{what} must be more than 0, not {value}")]
    NotPositive {
        /// Which figure.
        what: &'static str,
        /// What was given.
        value: f64,
    },
    /// A bearing behind the peg.
    #[error("a bearing of {0} degrees is behind the peg")]
    BearingBehind(f64),
    /// A range nobody casts.
    #[error("a range of {range_m:.0} m is beyond any cast (limit {limit_m:.0} m)")]
    RangeTooLong {
        /// Range in metres.
        range_m: f64,
        /// The longest range accepted, metres.
        limit_m: f64,
    },
    /// A band without width, or turned round.
    #[error("the band from {from_m} m to {to_m} m has no width")]
    BandWithoutWidth {
        /// Near edge, metres.
        from_m: f64,
        /// Far edge, metres.
        to_m: f64,
    },
    /// Two bands share water.
    #[error("the band from {from_m} m begins inside the band that ends at {before_to_m} m")]
    BandsOverlap {
        /// Where the earlier band ends, metres.
        before_to_m: f64,
        /// Where the later one begins, metres.
        from_m: f64,
    },
    /// Two marks share an id.
    #[error("two aiming marks share the id {0}")]
    SameMarkTwice(String),
    /// Two marks are on one bearing.
    #[error("aiming marks {0} and {1} have the same bearing")]
    MarksOnOneBearing(String, String),
    /// An outline of fewer than three corners.
    #[error("an outline needs at least three corners, not {0}")]
    TooFewCorners(usize),
    /// An outline that crosses itself.
    #[error("the outline crosses itself: side {side} meets side {other} near x {x:.1} m, y {y:.1} m")]
    OutlineCrosses {
        /// Which side (0 is from the first corner to the second).
        side: usize,
        /// Which other side.
        other: usize,
        /// Where, metres right of straight out.
        x: f64,
        /// Where, metres straight out.
        y: f64,
    },
    /// An outline without water in it, or with none within reach of the peg.
    #[error("the outline leaves no water in front of the peg")]
    NoWater,
    /// A spot outside the swim.
    #[error("{range_m:.1} m at {bearing_deg:.0} degrees is outside this swim")]
    OutsideSwim {
        /// Bearing, degrees right of straight out.
        bearing_deg: f64,
        /// Range, metres.
        range_m: f64,
    },
    /// A cast that ends before it starts.
    #[error("a cast that starts at {start_ms} ends earlier, at {end_ms}")]
    EndsBeforeStart {
        /// Splash, UTC milliseconds.
        start_ms: i64,
        /// End, UTC milliseconds.
        end_ms: i64,
    },
    /// A fan without width.
    #[error("the fan from {from_deg} to {to_deg} degrees has no width")]
    FanWithoutWidth {
        /// Left edge, degrees.
        from_deg: f64,
        /// Right edge, degrees.
        to_deg: f64,
    },
    /// A canvas that is too small for a picture.
    #[error("{what} of {value} can't hold the swim")]
    NoRoomToDraw {
        /// Which figure.
        what: &'static str,
        /// What was given.
        value: f64,
    },
    /// No cell of that row and column.
    #[error("the swim has no cell in column {column}, band {row}")]
    NoSuchCell {
        /// Column from the left, 0 first.
        column: u32,
        /// Band from the peg, 0 first.
        row: u32,
    },
}

/// `value` if it is a finite number.
pub(crate) fn finite(what: &'static str, value: f64) -> Result<f64, SwimError> {
    if value.is_finite() { Ok(value) } else { Err(SwimError::NotANumber { what, value }) }
}

/// `value` if it is a finite number above 0.
pub(crate) fn positive(what: &'static str, value: f64) -> Result<f64, SwimError> {
    if finite(what, value)? > 0.0 { Ok(value) } else { Err(SwimError::NotPositive { what, value }) }
}
