//! Columns and rows of the swim: a column round each aiming mark and between marks that are far apart, and a
//! row for each band.
//!
//! Casts are aimed at marks, so a mark is in the middle of its column and the edge between two columns is
//! half-way between their middles. So casts at a mark are not split between two cells.

use super::error::SwimError;
use super::frame::{Spot, check_bearing};
use super::input::{AimingMark, Band, Fan};
use serde::{Deserialize, Serialize};

/// Wider gaps between marks get columns of their own, degrees.
const WIDEST_GAP_DEG: f64 = 14.0;
/// Intended width of columns without a mark, degrees.
const PLAIN_COLUMN_DEG: f64 = 10.0;
/// Half the default width of the fan, degrees.
const PLAIN_FAN_DEG: f64 = 25.0;

/// What a column is named after. Numbers are indices into [`Columns::marks`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum ColumnName {
    /// Round this mark.
    On(u32),
    /// Between two marks.
    Between(u32, u32),
    /// Left of the first mark.
    LeftOf(u32),
    /// Right of the last mark.
    RightOf(u32),
    /// No mark to name it after; it is named by its bearing.
    Plain,
}

/// One column of the fan.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Column {
    /// Left edge, degrees.
    pub from_deg: f64,
    /// Where casts are aimed, degrees.
    pub aim_deg: f64,
    /// Right edge, degrees.
    pub to_deg: f64,
    /// What it is named after.
    pub name: ColumnName,
}

/// The columns of a swim, left to right, and its marks in the same order.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Columns {
    /// Columns from left to right, without gaps.
    pub columns: Vec<Column>,
    /// Aiming marks from left to right.
    pub marks: Vec<AimingMark>,
}

/// Marks in order, each with an id and a bearing of its own.
pub(crate) fn ordered_marks(marks: &[AimingMark]) -> Result<Vec<AimingMark>, SwimError> {
    let mut sorted = marks.to_vec();
    for mark in &sorted {
        check_bearing(mark.bearing_deg)?;
    }
    restwater_sorting::by(&mut sorted, |a, b| {
        a.bearing_deg.total_cmp(&b.bearing_deg).then_with(|| a.id.cmp(&b.id))
    });
    for pair in sorted.windows(2) {
        if pair[0].bearing_deg == pair[1].bearing_deg {
            return Err(SwimError::MarksOnOneBearing(pair[0].name.clone(), pair[1].name.clone()));
        }
    }
    let mut ids: Vec<_> = sorted.iter().map(|m| &m.id).collect();
    ids.sort();
    if let Some(pair) = ids.windows(2).find(|w| w[0] == w[1]) {
        return Err(SwimError::SameMarkTwice(pair[0].clone()));
    }
    Ok(sorted)
}

/// The fan given, or one wide enough for marks and spots.
pub(crate) fn fan_for(given: Option<Fan>, marks: &[AimingMark], spots: &[Spot]) -> Result<Fan, SwimError> {
    if let Some(fan) = given {
        fan.check()?;
        return Ok(fan);
    }
    let bearings = marks.iter().map(|m| (m.bearing_deg, 6.0));
    let bearings = bearings.chain(spots.iter().map(|spot| (spot.bearing_deg, 2.0)));
    let (mut left, mut right) = (PLAIN_FAN_DEG, PLAIN_FAN_DEG);
    for (bearing, margin) in bearings {
        // In steps of five degrees, so that the fan does not creep with every spot.
        let wide = |b: f64| (((b + margin) / 5.0).ceil() * 5.0).min(90.0);
        left = left.max(wide(-bearing));
        right = right.max(wide(bearing));
    }
    Ok(Fan { from_deg: -left, to_deg: right })
}

/// Columns of a fan for marks in order. Marks outside the fan make no column.
pub(crate) fn columns(fan: Fan, marks: &[AimingMark]) -> Vec<Column> {
    let inside: Vec<(u32, f64)> = (0u32..)
        .zip(marks)
        .map(|(i, m)| (i, m.bearing_deg))
        .filter(|&(_, b)| b > fan.from_deg && b < fan.to_deg)
        .collect();
    let aims = if inside.is_empty() { plain_aims(fan) } else { aims_round(fan, &inside) };
    edges_between(fan, &aims)
}

fn plain_aims(fan: Fan) -> Vec<(f64, ColumnName)> {
    let width = fan.to_deg - fan.from_deg;
    let n = (width / PLAIN_COLUMN_DEG).round().max(1.0);
    let at = |i: f64| (fan.from_deg * (2.0 * n - 2.0 * i - 1.0) + fan.to_deg * (2.0 * i + 1.0)) / (2.0 * n);
    (0..n as u32).map(|i| (at(f64::from(i)), ColumnName::Plain)).collect()
}

fn aims_round(fan: Fan, marks: &[(u32, f64)]) -> Vec<(f64, ColumnName)> {
    let mut aims = Vec::new();
    let (first, first_at) = marks[0];
    let (more, step) = beyond(first_at - fan.from_deg);
    for k in (1..=more).rev() {
        aims.push((first_at - f64::from(k) * step, ColumnName::LeftOf(first)));
    }
    for (i, &(mark, at)) in marks.iter().enumerate() {
        aims.push((at, ColumnName::On(mark)));
        if let Some(&(next, next_at)) = marks.get(i + 1) {
            let parts = ((next_at - at) / WIDEST_GAP_DEG).ceil().max(1.0) as u32;
            for k in 1..parts {
                let t = f64::from(k) / f64::from(parts);
                aims.push((at * (1.0 - t) + next_at * t, ColumnName::Between(mark, next)));
            }
        }
    }
    let (last, last_at) = marks[marks.len() - 1];
    let (more, step) = beyond(fan.to_deg - last_at);
    for k in 1..=more {
        aims.push((last_at + f64::from(k) * step, ColumnName::RightOf(last)));
    }
    aims
}

/// How many columns fit between the column of the outermost mark and the edge of the fan, and their spacing.
fn beyond(gap_deg: f64) -> (u32, f64) {
    let more = (gap_deg / PLAIN_COLUMN_DEG - 0.5).round().max(0.0);
    (more as u32, gap_deg / (more + 0.5))
}

fn edges_between(fan: Fan, aims: &[(f64, ColumnName)]) -> Vec<Column> {
    let middle = |i: usize| f64::midpoint(aims[i].0, aims[i + 1].0);
    (0..aims.len())
        .map(|i| Column {
            from_deg: if i == 0 { fan.from_deg } else { middle(i - 1) },
            aim_deg: aims[i].0,
            to_deg: if i + 1 == aims.len() { fan.to_deg } else { middle(i) },
            name: aims[i].1,
        })
        .collect()
}

/// Bands in order, with gaps filled. If none are given, bands of 10 m (20 m if they reach beyond 120 m) from
/// 10 m to 60 m, and further in or out if there are spots.
pub(crate) fn bands(given: &[Band], spots: &[Spot]) -> Result<Vec<Band>, SwimError> {
    if given.is_empty() {
        return Ok(plain_bands(spots));
    }
    let mut sorted = given.to_vec();
    for band in &sorted {
        band.check()?;
    }
    restwater_sorting::by(&mut sorted, |a, b| a.from_m.total_cmp(&b.from_m));
    let mut whole: Vec<Band> = Vec::new();
    for band in sorted {
        if let Some(before) = whole.last().copied() {
            if band.from_m < before.to_m {
                return Err(SwimError::BandsOverlap { before_to_m: before.to_m, from_m: band.from_m });
            }
            if band.from_m > before.to_m {
                whole.push(Band { from_m: before.to_m, to_m: band.from_m });
            }
        }
        whole.push(band);
    }
    Ok(whole)
}

fn plain_bands(spots: &[Spot]) -> Vec<Band> {
    let ranges = || spots.iter().map(|spot| spot.range_m);
    let far = ranges().fold(59.0, f64::max);
    let step = if far > 120.0 { 20.0 } else { 10.0 };
    let near = if ranges().fold(far, f64::min) < 10.0 { 0.0 } else { 10.0 };
    let mut bands = if near == 0.0 { vec![Band { from_m: 0.0, to_m: 10.0 }] } else { Vec::new() };
    let mut from_m = 10.0;
    while from_m <= far {
        bands.push(Band { from_m, to_m: from_m + step });
        from_m += step;
    }
    bands
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mark(id: &str, bearing_deg: f64) -> AimingMark {
        AimingMark { id: id.into(), name: id.into(), bearing_deg }
    }

    #[test]
    fn a_mark_is_inside_its_own_column() {
        let marks = ordered_marks(&[mark("hut", 17.0), mark("tree", -17.0), mark("gate", -3.0)]).unwrap();
        let fan = fan_for(None, &marks, &[]).unwrap();
        let columns = columns(fan, &marks);
        let named: Vec<_> = columns.iter().map(|c| c.name).collect();
        assert_eq!(
            named,
            [ColumnName::On(0), ColumnName::On(1), ColumnName::Between(1, 2), ColumnName::On(2)]
        );
        assert!(columns.windows(2).all(|w| w[0].to_deg == w[1].from_deg));
        assert!(columns.iter().all(|c| c.from_deg < c.aim_deg && c.aim_deg < c.to_deg));
        assert_eq!((columns[0].from_deg, columns[3].to_deg), (-25.0, 25.0));
    }

    #[test]
    fn without_marks_the_fan_has_plain_columns() {
        let fan = fan_for(None, &[], &[]).unwrap();
        let columns = columns(fan, &[]);
        assert_eq!(columns.len(), 5);
        assert_eq!(columns[2].aim_deg, 0.0);
    }

    #[test]
    fn bands_are_sorted_filled_and_checked() {
        let band = |from_m, to_m| Band { from_m, to_m };
        let got = bands(&[band(40.0, 50.0), band(20.0, 30.0)], &[]).unwrap();
        assert_eq!(got, [band(20.0, 30.0), band(30.0, 40.0), band(40.0, 50.0)]);
        assert!(matches!(bands(&[band(20.0, 20.0)], &[]), Err(SwimError::BandWithoutWidth { .. })));
        assert!(matches!(bands(&[band(30.0, 20.0)], &[]), Err(SwimError::BandWithoutWidth { .. })));
        assert!(matches!(bands(&[band(f64::NAN, 20.0)], &[]), Err(SwimError::NotANumber { .. })));
        assert!(matches!(bands(&[band(0.0, 914.4)], &[]), Err(SwimError::RangeTooLong { .. })));
        assert!(matches!(
            bands(&[band(10.0, 25.0), band(20.0, 30.0)], &[]),
            Err(SwimError::BandsOverlap { .. })
        ));
        assert_eq!(bands(&[], &[]).unwrap().len(), 5);
    }

    #[test]
    fn marks_on_the_same_bearing_are_refused() {
        assert!(matches!(
            ordered_marks(&[mark("a", 3.0), mark("b", 3.0)]),
            Err(SwimError::MarksOnOneBearing(..))
        ));
        assert!(matches!(ordered_marks(&[mark("a", 3.0), mark("a", 4.0)]), Err(SwimError::SameMarkTwice(_))));
        assert!(matches!(ordered_marks(&[mark("a", 120.0)]), Err(SwimError::BearingBehind(_))));
        let flat = Fan { from_deg: 10.0, to_deg: 10.0 };
        assert!(matches!(fan_for(Some(flat), &[], &[]), Err(SwimError::FanWithoutWidth { .. })));
    }
}
