//! Putting short lists in order.
//!
//! The standard library compiles a stable sort anew for every closure, some 8 kB each, which came to a tenth of the whole
//! library. Here it is compiled once, over places. Long lists (a log's entries, an import) keep the standard one.
#![forbid(unsafe_code)]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

use std::cmp::Ordering;

/// Sorts by a comparison; equal ones stay as they stood.
pub fn by<T>(list: &mut [T], compare: impl Fn(&T, &T) -> Ordering) {
    let places = places(list.len(), &|i, j| compare(&list[i], &list[j]));
    put(list, places);
}

/// Sorts by a key; equal ones stay as they stood.
pub fn by_key<T, K: Ord>(list: &mut [T], key: impl Fn(&T) -> K) {
    by(list, |a, b| key(a).cmp(&key(b)));
}

/// The places 0 to `count` in the order of what stands there; equal ones as they stand.
pub fn places(count: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut places: Vec<usize> = (0..count).collect();
    places.sort_by(|&i, &j| compare(i, j));
    places
}

/// Brings to each place what stood at `places` of it.
fn put<T>(list: &mut [T], mut places: Vec<usize>) {
    for i in 0..places.len() {
        let mut from = places[i];
        // What stood before here has been swapped on, to where its own place was filled from.
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
