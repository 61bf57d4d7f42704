//! A list of one value of each case of an enum, for tests.

/// One value of each case: `every!(NotNow { NoSession, FishOn: (1), NoSuchRod: { rod: 3, rods: 1 } })`.
#[macro_export]
macro_rules! every {
    ($of:ident { $($case:ident $(: $with:tt)?),* $(,)? }) => {{
        // Nothing calls it: that it compiles says that no case is missing from the list.
        #[allow(dead_code)]
        fn all_are_listed(one: &$of) {
            match one { $($of::$case { .. } => {})* }
        }
        vec![$($crate::every!(@ $of $case $($with)?)),*]
    }};
    (@ $of:ident $case:ident) => { $of::$case };
    (@ $of:ident $case:ident ($($value:expr),*)) => { $of::$case($($value),*) };
    (@ $of:ident $case:ident {$($field:ident: $value:expr),*}) => { $of::$case { $($field: $value),* } };
}
