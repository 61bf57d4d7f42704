//! What the Bank says about how long the angler leaves casts.

use super::*;

/// Seconds out, and whether a bite ended it. Casts that are held get their bite, so the wind-ins alone look like a habit of
/// 12 min, while most casts were left for longer than that.
const DAY: [(i64, bool); 15] = [
    (612, false),
    (660, false),
    (924, true),
    (624, false),
    (978, true),
    (726, false),
    (1_032, true),
    (906, true),
    (1_200, false),
    (948, true),
    (852, true),
    (1_350, false),
    (1_134, true),
    (1_056, true),
    (966, true),
];

#[test]
fn what_the_habit_costs_is_counted_over_all_casts_and_not_over_the_wind_ins_alone() {
    let mut phone = started();
    let mut now = 2 * MIN;
    for (out_s, bite) in DAY {
        phone.tap(now, &CAST).unwrap();
        now += out_s * 1_000;
        phone.tap(now, if bite { &BITE } else { &WOUND_IN }).unwrap();
        if bite {
            phone.tap(now + MIN, &LANDED).unwrap();
        }
        now += 3 * MIN;
    }
    let advice = phone.bank(now).advice;
    let said = advice.more.iter().find_map(|line| {
        line.strip_prefix("Your usual leave times cost about ")?.strip_suffix("\u{a0}% of the bites.")
    });
    let lost: u32 = said.unwrap_or_else(|| panic!("{advice:?}")).parse().unwrap();
    // 9 bites in 15 casts and 5.4 hours with the turn-rounds: 1.7 an hour, where the best of the record is about 2.
    assert!((5..=35).contains(&lost), "{lost} %");
}
