//! Whether two sessions were fished at one place, by the names that the angler gave it.

use restwater_match_day::rules::same_name;

/// Whether two sessions were on the same water, in whatever case its name was typed. A water without a name is never the same
/// as another.
pub fn same_water(one: Option<&str>, other: Option<&str>) -> bool {
    one.zip(other).is_some_and(|(one, other)| same_name(one, other))
}

/// Whether two sessions were on the same peg of the same water, both named; each place is a water and a peg.
pub fn same_peg(one: (Option<&str>, Option<&str>), other: (Option<&str>, Option<&str>)) -> bool {
    let same_peg = one.1.zip(other.1).is_some_and(|(one, other)| same_name(one, other));
    same_water(one.0, other.0) && same_peg
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_is_the_same_in_any_case_of_letters_and_only_with_both_names() {
        assert!(same_water(Some("Mill pool"), Some(" mill Pool")));
        assert!(!same_water(None, None) && !same_water(Some("Mill pool"), None));
        let mill = |peg| (Some("Mill pool"), peg);
        assert!(same_peg(mill(Some("14a")), (Some("mill pool"), Some("14A"))));
        assert!(!same_peg(mill(None), mill(None)) && !same_peg(mill(Some("14")), mill(Some("15"))));
        assert!(!same_peg(mill(Some("14")), (Some("Long lake"), Some("14"))));
    }
}
