//! The place of a total in its section, as far as the other totals are known.

/// A total between two weights, in grams; both ends are equal if it was weighed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TotalRange {
    /// As little as it may be.
    pub low_g: f64,
    /// As much as it may be.
    pub high_g: f64,
}

/// Places that a total may take; 1 is the heaviest.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Place {
    /// The best of them.
    pub best: u32,
    /// The worst.
    pub worst: u32,
    /// The number of totals.
    pub of: u32,
}

/// Places of a total among others, of which some are not known at all. Equal totals share the better place
/// (standard competition ranking: 1, 2, 2, 4).
pub fn place(mine: TotalRange, others: &[TotalRange], unknown: u32) -> Place {
    let count = |is: &dyn Fn(&&TotalRange) -> bool| others.iter().filter(is).count() as u32;
    let certainly_ahead = count(&|other| other.low_g > mine.high_g);
    let maybe_ahead = count(&|other| other.high_g > mine.low_g);
    Place {
        best: 1 + certainly_ahead,
        worst: 1 + maybe_ahead + unknown,
        of: 1 + others.len() as u32 + unknown,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn exactly(grams: f64) -> TotalRange {
        TotalRange { low_g: grams, high_g: grams }
    }

    #[test]
    fn weighed_totals_have_one_place_and_equal_ones_share_it() {
        let others = [exactly(900.0), exactly(700.0), exactly(700.0), exactly(100.0)];
        let at = |grams| place(exactly(grams), &others, 0);
        assert_eq!(at(1_000.0), Place { best: 1, worst: 1, of: 5 });
        assert_eq!(at(700.0), Place { best: 2, worst: 2, of: 5 });
        assert_eq!(at(500.0), Place { best: 4, worst: 4, of: 5 });
        assert_eq!(place(exactly(500.0), &others, 3), Place { best: 4, worst: 7, of: 8 });
    }

    proptest! {
        /// For any totals within the ranges, the place by the definition of the ranking (one more than the
        /// number of heavier totals) is within the places given, and both ends are reached.
        #[test]
        fn the_true_place_is_within_the_places_given(
            ranges in proptest::collection::vec((0.0..5_000.0_f64, 0.0..2_000.0_f64, 0.0..=1.0_f64), 1..9),
            unknown in proptest::collection::vec(0.0..9_000.0_f64, 0..4),
        ) {
            let range = |&(low_g, width, _): &(f64, f64, f64)| TotalRange { low_g, high_g: low_g + width };
            let of = |&(low, width, share): &(f64, f64, f64)| low + share * width;
            let others: Vec<TotalRange> = ranges[1..].iter().map(range).collect();
            let told = place(range(&ranges[0]), &others, unknown.len() as u32);
            let ranked = |mine: f64, others: &mut dyn Iterator<Item = f64>| 1 + others.filter(|o| *o > mine).count() as u32;
            let all = || ranges[1..].iter().map(of).chain(unknown.iter().copied());
            let true_place = ranked(of(&ranges[0]), &mut all());
            prop_assert!((told.best..=told.worst).contains(&true_place));
            prop_assert_eq!(told.of as usize, ranges.len() + unknown.len());
            let mine = range(&ranges[0]);
            prop_assert_eq!(told.best, ranked(mine.high_g, &mut others.iter().map(|o| o.low_g)));
            let heaviest = others.iter().map(|o| o.high_g).chain(unknown.iter().map(|_| f64::INFINITY));
            prop_assert_eq!(told.worst, ranked(mine.low_g, &mut heaviest.into_iter()));
        }
    }
}
