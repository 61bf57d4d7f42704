//! The merge law: the union of two logs by id.
//!
//! A log is a map from id to the canonical bytes known for it. That is one sequence of bytes, unless a file
//! was tampered with: then every variant is kept and the id is reported, so that merging is a join of sets:
//! commutative, associative, idempotent. A store keeps the variant that it had and reports the other.

use std::collections::{BTreeMap, BTreeSet};
use uuid::Uuid;

/// A log as the merge sees it.
pub type Variants = BTreeMap<Uuid, BTreeSet<Vec<u8>>>;

/// The union of two logs.
pub fn merge(one: &Variants, other: &Variants) -> Variants {
    let mut union = one.clone();
    for (id, variants) in other {
        union.entry(*id).or_default().extend(variants.iter().cloned());
    }
    union
}

/// The ids for which the log has more than one content.
pub fn clashes(log: &Variants) -> Vec<Uuid> {
    log.iter().filter(|(_, variants)| variants.len() > 1).map(|(id, _)| *id).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn logs() -> impl Strategy<Value = Variants> {
        let bytes = proptest::collection::vec(0_u8..3, 0..3);
        let variants = proptest::collection::btree_set(bytes, 1..3);
        proptest::collection::btree_map((0_u128..12).prop_map(Uuid::from_u128), variants, 0..10)
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(10_000))]
        #[test]
        fn merging_is_a_join(a in logs(), b in logs(), c in logs()) {
            prop_assert_eq!(merge(&a, &b), merge(&b, &a));
            prop_assert_eq!(merge(&merge(&a, &b), &c), merge(&a, &merge(&b, &c)));
            prop_assert_eq!(merge(&a, &a), a.clone());
            let both = merge(&a, &b);
            prop_assert_eq!(merge(&both, &a), both.clone(), "nothing is gained by a second swap");
            prop_assert!(a.iter().all(|(id, v)| both[id].is_superset(v)), "nothing is lost");
        }
    }

    #[test]
    fn one_id_with_two_contents_is_reported() {
        let log = |byte: u8| Variants::from([(Uuid::from_u128(7), BTreeSet::from([vec![byte]]))]);
        assert!(clashes(&merge(&log(1), &log(1))).is_empty());
        assert_eq!(clashes(&merge(&log(1), &log(2))), vec![Uuid::from_u128(7)]);
    }
}
