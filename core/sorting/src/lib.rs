//! Sorts short lists.
//!
//! The standard library compiles a separate stable sort for every closure, some 8 kB each, which amounted to
//! a tenth of the whole library. Here it is compiled once, over indices. Long lists (a log's entries, an
//! import) use the standard one.
#![forbid(unsafe_code)]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

use std::cmp::Ordering;

/// Sorts by a comparison; equal elements keep their order.
pub fn by<T>(list: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    let places = places(list.len(), &|i, j| compare(&list[i], &list[j]));
    put(list, places);
}

/// Sorts by a key; equal elements keep their order.
pub fn by_key<T, K: Ord>(list: &mut [T], key: impl Fn(&T) -> K) {
    by(list, |a, b| key(a).cmp(&key(b)));
}

/// The indices from 0 to `count`, sorted by their elements; equal ones keep their order.
pub fn places(count: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = (0..count).collect();
    places.sort_by(|&i, &j| compare(i, j));
    places
}

/// Applies a permutation in place: element `i` becomes the one that was at `places[i]`.
fn put<T>(list: &mut [T], mut places: Vec<usize>) {
    for i in 0..places.len() {
        let mut from = places[i];
        // An element from before `i` has been swapped away; follow it to where it is now.
        while from < i {
            from = places[from];
        }
        list.swap(i, from);
        places[i] = from;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn it_sorts_as_the_standard_library_does(list in proptest::collection::vec((0u8..6, any::<u16>()), 0..80)) {
            let (mut ours, mut theirs) = (list.clone(), list);
            by_key(&mut ours, |pair| pair.0);
            theirs.sort_by_key(|pair| pair.0);
            prop_assert_eq!(&ours, &theirs);
            by(&mut ours, |a, b| b.1.cmp(&a.1));
            theirs.sort_by_key(|pair| std::cmp::Reverse(pair.1));
            prop_assert_eq!(ours, theirs);
        }
    }
}
