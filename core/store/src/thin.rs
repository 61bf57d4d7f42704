//! Which backups are kept: many from the last hours, fewer from earlier days, weeks and months.

use std::collections::BTreeSet;

const HOUR_MS: i64 = 3_600_000;
const DAY_MS: i64 = 24 * HOUR_MS;

/// How many are kept for each length of span: the latest in each of this many spans that contain one.
const KEPT: [(i64, usize); 4] = [(HOUR_MS, 24), (DAY_MS, 14), (7 * DAY_MS, 8), (30 * DAY_MS, 24)];

/// The backups to keep, by their wall time in ms. The latest is always kept.
pub fn kept(times: &BTreeSet<i64>) -> BTreeSet<i64> {
    let mut keep = BTreeSet::new();
    for (span, count) in KEPT {
        let mut seen: Option<i64> = None;
        let mut left = count;
        for time in times.iter().rev() {
            let slot = time.div_euclid(span);
            if seen == Some(slot) {
                continue;
            }
            if left == 0 {
                break;
            }
            keep.insert(*time);
            seen = Some(slot);
            left -= 1;
        }
    }
    keep
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn three_years_of_a_backup_every_quarter_of_an_hour_thin_to_a_few_dozen() {
        let mut times = BTreeSet::new();
        for n in 0..3 * 365 * 96_i64 {
            times.insert(n * HOUR_MS / 4);
            if n % 96 == 0 {
                times = kept(&times);
            }
        }
        let times = kept(&times);
        let last = *times.last().unwrap();
        let within = |ms: i64| times.iter().filter(|t| last - **t < ms).count();
        assert!((24..=26).contains(&within(DAY_MS)), "{}", within(DAY_MS));
        assert!((36..=40).contains(&within(14 * DAY_MS)), "{}", within(14 * DAY_MS));
        assert!(times.len() <= 70, "{}", times.len());
        assert!(last - times.first().unwrap() > 600 * DAY_MS, "the oldest is from two years back");
    }

    proptest! {
        #[test]
        fn thinning_keeps_the_latest_and_doing_it_twice_changes_nothing(times in proptest::collection::btree_set(-1_000_000_000_000_i64..2_000_000_000_000, 0..300)) {
            let once = kept(&times);
            prop_assert!(once.is_subset(&times));
            prop_assert_eq!(once.last(), times.last());
            prop_assert_eq!(&kept(&once), &once);
            prop_assert!(once.len() <= 70);
        }
    }
}
