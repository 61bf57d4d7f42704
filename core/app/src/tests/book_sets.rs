//! Two sets of sessions in the Book: which sessions are days of a set.

use super::book::water;
use super::*;
use restwater_screen::BookSet;

/// One good day and four sessions without a cast against five ordinary days: one day is not a set.
#[test]
fn a_session_without_a_cast_is_no_day_of_a_set() {
    let mut phone = Phone::new();
    phone.day(0, "Mill pool", 12, 12);
    for day in 1..5 {
        phone.day(day, "Mill pool", 0, 0);
    }
    for day in 5..10 {
        phone.day(day, "Alder Pool", 12, 1);
    }
    let now = 50 * 24 * 60 * MIN;
    phone.tap(now, &water(BookSet::A, "Mill pool")).unwrap();
    phone.tap(now + 1_000, &water(BookSet::B, "Alder Pool")).unwrap();
    let sets = phone.leaf(Which::Book, now + 2_000, "sets");
    assert_eq!(sets.says, "Can't tell yet: 1 session in the smaller set; 3 are needed.");
    assert_eq!(sets.lines[0].label, "A: Mill pool, 1 session");
    assert_eq!(sets.lines[1].label, "B: Alder Pool, 5 sessions");
}
