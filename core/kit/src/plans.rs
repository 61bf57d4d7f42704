//! Plans for coming days, folded from the entries of a kit, and which of them a day follows.

use restwater_log::Payload;
use restwater_session::Plan;
use std::collections::BTreeMap;

/// A plan also counts for days this near to its own, as for a match that was put off over the weekend. A
/// choice.
const NEAR_DAYS: i32 = 3;

/// Applies an entry; the latest entry of each line counts.
pub(super) fn take(plans: &mut BTreeMap<i32, Plan>, payload: &Payload) {
    match payload {
        Payload::PlanSet { day, line } => plans.entry(*day).or_default().set(line),
        Payload::PlanCleared { day, line } => {
            if let Some(plan) = plans.get_mut(day) {
                plan.clear(line);
            }
        }
        _ => {}
    }
    plans.retain(|_, plan| !plan.is_empty());
}

/// The plan that a day follows, with the plan's own day: the nearest of those within reach, and of two
/// equally near the later one. The plan of a past day counts only if nothing was fished since: `last_fished`
/// is the last day of a session.
pub fn nearest_plan(
    plans: &BTreeMap<i32, Plan>,
    today: i32,
    last_fished: Option<i32>,
) -> Option<(i32, &Plan)> {
    let open = |day: i32| day >= today || last_fished.is_none_or(|last| last < day);
    let near = plans.iter().map(|(day, plan)| (*day, plan)).filter(|(day, _)| {
        i64::from(*day).abs_diff(i64::from(today)) <= NEAR_DAYS.unsigned_abs().into() && open(*day)
    });
    near.min_by_key(|(day, _)| (day.abs_diff(today), *day < today))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Kit, fold};
    use proptest::prelude::*;
    use restwater_log::{Op, PlanKey, PlanLine};
    use restwater_session::written::Written;

    fn leave(minutes: u16) -> PlanLine {
        PlanLine::Leave { minutes }
    }

    fn on(days: &[i32]) -> BTreeMap<i32, Plan> {
        let mut plans = BTreeMap::new();
        for day in days {
            take(&mut plans, &Payload::PlanSet { day: *day, line: leave(20) });
        }
        plans
    }

    fn lines(kit: &Kit, day: i32) -> Vec<PlanLine> {
        kit.plans.get(&day).map_or_else(Vec::new, |plan| plan.lines().cloned().collect())
    }

    #[test]
    fn the_nearest_plan_is_the_one_of_the_day() {
        let day = |plans: &[i32], today, last| nearest_plan(&on(plans), today, last).map(|(day, _)| day);
        assert_eq!(day(&[99, 100, 101], 100, Some(100)), Some(100), "a second session of the day has it too");
        assert_eq!(day(&[99, 101], 100, None), Some(101));
        assert_eq!(day(&[98, 103], 100, None), Some(98), "put off by two days");
        assert_eq!(day(&[98, 103], 100, Some(98)), Some(103), "it was fished");
        assert_eq!(day(&[98], 100, Some(99)), None);
        assert_eq!(day(&[96, 104], 100, None), None);
        assert_eq!(day(&[i32::MIN, i32::MAX], 0, None), None);
    }

    #[test]
    fn lines_are_set_replaced_removed_and_restored() {
        let mut kit = Written::by(0xD1);
        kit.log(0, Payload::PlanSet { day: 7, line: leave(20) });
        let later = kit.log(1, Payload::PlanSet { day: 7, line: leave(15) });
        let peg = PlanLine::Peg { peg: "A4".into(), note: "margins".into() };
        kit.log(2, Payload::PlanSet { day: 7, line: peg.clone() });
        assert_eq!(lines(&fold(&kit.ops, &[], &[]), 7), [peg.clone(), leave(15)]);
        kit.undo(3, &[later]);
        assert_eq!(lines(&fold(&kit.ops, &[], &[]), 7), [peg, leave(20)]);
        kit.log(4, Payload::PlanCleared { day: 7, line: PlanKey::Peg { peg: "a4 ".into() } });
        kit.log(5, Payload::PlanCleared { day: 7, line: PlanKey::Leave });
        let empty = fold(&kit.ops, &[], &[]);
        assert!(empty.plans.is_empty(), "no plan, no trace of it");
        assert!(empty.odd.is_empty());
    }

    #[test]
    fn if_two_phones_write_a_line_the_later_entry_counts() {
        let (mut one, mut two) = (Written::by(0xD1), Written::by(0xD2));
        one.log(0, Payload::PlanSet { day: 7, line: leave(20) });
        two.log(10, Payload::PlanSet { day: 7, line: leave(25) });
        let peg = |note: &str| PlanLine::Peg { peg: "4".into(), note: note.into() };
        two.log(20, Payload::PlanSet { day: 7, line: peg("bread") });
        one.log(30, Payload::PlanSet { day: 7, line: peg("corn") });
        let all: Vec<Op> = [two.ops, one.ops].concat();
        assert_eq!(lines(&fold(&all, &[], &[]), 7), [peg("corn"), leave(25)]);
    }

    fn any_entry() -> impl Strategy<Value = Payload> {
        let line = prop_oneof![
            (8..30_u16).prop_map(leave),
            ("[ab]", "[xy]?").prop_map(|(peg, note)| PlanLine::Peg { peg, note }),
        ];
        let key = prop_oneof![Just(PlanKey::Leave), "[abAB]".prop_map(|peg| PlanKey::Peg { peg })];
        prop_oneof![
            3 => (0..3_i32, line).prop_map(|(day, line)| Payload::PlanSet { day, line }),
            1 => (0..3_i32, key).prop_map(|(day, line)| Payload::PlanCleared { day, line }),
        ]
    }

    proptest! {
        /// The plans don't depend on the order in which the entries of two phones arrive. They are what
        /// reading the log from its beginning gives, where the latest entry of each line counts.
        #[test]
        fn any_order_of_arrival_gives_the_same_plans(
            entries in prop::collection::vec((any_entry(), any::<bool>(), 0..5_u8, any::<prop::sample::Index>()), 1..30),
            seed in any::<u64>(),
        ) {
            let mut phones = [Written::by(0xD1), Written::by(0xD2)];
            let mut ids = Vec::new();
            for (s, (entry, second, how, which)) in (0_i64..).zip(entries) {
                let phone = &mut phones[usize::from(second)];
                ids.push(match how {
                    0 if !ids.is_empty() => phone.undo(s, &[ids[which.index(ids.len())]]),
                    _ => phone.log(s, entry),
                });
            }
            let ops: Vec<Op> = phones.into_iter().flat_map(|phone| phone.ops).collect();
            let mut shuffled = ops.clone();
            shuffled.sort_by_key(|op| op.id.as_u128().wrapping_mul(u128::from(seed) | 1));
            let kit = fold(&ops, &[], &[]);
            prop_assert_eq!(&fold(&shuffled, &[], &[]).plans, &kit.plans);
            let ordered = restwater_log::sorted(&ops);
            let in_force = restwater_log::effective(&ordered);
            let mut last: BTreeMap<(i32, String), Option<&PlanLine>> = BTreeMap::new();
            let name = |key: &PlanKey| format!("{key:?}").to_lowercase();
            for step in &in_force {
                match step.payload {
                    Payload::PlanSet { day, line } => last.insert((*day, name(&line.key())), Some(line)),
                    Payload::PlanCleared { day, line } => last.insert((*day, name(line)), None),
                    other => panic!("{other:?}"),
                };
            }
            let mut expected: Vec<(i32, &PlanLine)> =
                last.into_iter().filter_map(|((day, _), line)| Some((day, line?))).collect();
            let mut found: Vec<(i32, &PlanLine)> =
                kit.plans.iter().flat_map(|(day, plan)| plan.lines().map(|line| (*day, line))).collect();
            let order = |(day, line): &(i32, &PlanLine)| (*day, format!("{line:?}"));
            expected.sort_by_key(order);
            found.sort_by_key(order);
            prop_assert_eq!(found, expected);
        }
    }
}
