//! The kit: what the entries of a kit session and the losses of the days come to.
//!
//! A pure function of the two sets, read in the order of the log: any order of arrival gives the same kit. What
//! can't be (more cut down than there are, after a merge) is done as far as it goes and named in `odd`.
#![forbid(unsafe_code)]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

pub mod evening;
mod logged;

pub use logged::{
    Measured, allowances, hooklength, logged_allowances, logged_hooklength, logged_measured, measured,
};

use restwater_bench::fall::Calibration;
use restwater_bench::hooklength::{Hooklength, Wallet};
use restwater_bench::ladder::starting_ladder;
use restwater_bench::shot::{ShotSize, starting_table};
use restwater_bench::tie_up::Allowances;
use restwater_bench::units::LineLength;
use restwater_caution::shown::Seen;
use restwater_log::{Op, Payload, ShotWeight, effective, sorted};
use restwater_session::Loss;
use std::collections::HashSet;
use uuid::Uuid;

/// A rig says its hooklength to the millimetre: within this it is a kind of the wallet, in tenths of a millimetre.
const SAME_TENTHS: u32 = 5;

/// Line on a spool.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Spool {
    /// The op that added it.
    pub id: Uuid,
    /// Thousandths of a millimetre.
    pub diameter_um: u16,
    /// What is left.
    pub left: LineLength,
}

/// A calibrating fall with its op.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TimedFall {
    /// The op.
    pub op: Uuid,
    /// Depth and time.
    pub fall: Calibration,
}

/// Everything a kit holds.
#[derive(Debug, Clone, PartialEq)]
pub struct Kit {
    /// Hooklengths there are, losses taken out.
    pub wallet: Wallet,
    /// Hooklengths to carry.
    pub wanted: Wallet,
    /// Losses taken out of the wallet.
    pub lost: usize,
    /// Losses that fit no kind of the wallet, or several: to be taken out by hand.
    pub lost_unknown: Vec<Loss>,
    /// Spools with line on them, in the order they were added.
    pub spools: Vec<Spool>,
    /// What a tie uses beyond its length.
    pub allowances: Allowances,
    /// Whether they were measured; else they are nothing.
    pub allowances_measured: bool,
    /// The pop-up.
    pub pop_up: Measured,
    /// Whether it was measured; else it is a starting point.
    pub pop_up_measured: bool,
    /// Shot in the box.
    pub shot: Vec<ShotSize>,
    /// Falls at known depths.
    pub falls: Vec<TimedFall>,
    /// Heights of the ladder, low to high.
    pub ladder: Vec<LineLength>,
    /// Cautions put away, by peg.
    pub seen: Vec<Seen>,
    /// Entries that could not be done in full.
    pub odd: Vec<Uuid>,
}

impl Default for Kit {
    fn default() -> Self {
        Self {
            wallet: Wallet::default(),
            wanted: Wallet::default(),
            lost: 0,
            lost_unknown: Vec::new(),
            spools: Vec::new(),
            allowances: Allowances::default(),
            allowances_measured: false,
            pop_up: Measured::default(),
            pop_up_measured: false,
            shot: starting_table(),
            falls: Vec::new(),
            ladder: starting_ladder(),
            seen: Vec::new(),
            odd: Vec::new(),
        }
    }
}

/// Folds the ops of a kit, and the losses that the phones which wrote them have logged on their days. A partner's
/// losses, who never wrote in this kit, leave it alone.
pub fn fold(ops: &[Op], losses: &[Loss]) -> Kit {
    let ordered = sorted(ops);
    let phones: HashSet<Uuid> = ops.iter().map(|op| op.device).collect();
    let mut losses: Vec<Loss> = losses.iter().filter(|l| phones.contains(&l.order.1)).copied().collect();
    let in_force = effective(&ordered);
    // What was lost before the first hooklength was entered was never in the wallet.
    let begun = in_force.iter().find(|step| is_of_the_wallet(step.payload)).map(|step| step.op.order());
    losses.retain(|loss| begun.is_some_and(|begun| loss.order > begun));
    restwater_sorting::by_key(&mut losses, |loss| loss.order);
    losses.dedup_by_key(|loss| loss.order);
    let mut lost = losses.into_iter().peekable();
    let mut kit = Kit::default();
    for step in in_force {
        while let Some(loss) = lost.next_if(|loss| loss.order < step.op.order()) {
            kit.lose(loss);
        }
        kit.take(step.op.id, step.payload);
    }
    lost.for_each(|loss| kit.lose(loss));
    kit
}

/// Whether an entry puts hooklengths into the wallet.
fn is_of_the_wallet(payload: &Payload) -> bool {
    matches!(payload, Payload::HooklengthsTied { .. } | Payload::HooklengthsCounted { .. })
}

impl Kit {
    fn take(&mut self, op: Uuid, payload: &Payload) {
        match payload {
            Payload::HooklengthsTied { hooklength: kind, count } => self.put(op, hooklength(kind), *count),
            Payload::HooklengthsCounted { hooklength: kind, count } => {
                let kind = hooklength(kind);
                let have = self.wallet.count(kind);
                let done = self.wallet.remove(kind, have).and(self.wallet.add(kind, *count));
                self.note(op, done.is_ok());
                self.settle(kind, u16::MAX);
            }
            Payload::HooklengthsTakenOut { hooklength: kind, count } => {
                self.pull(op, hooklength(kind), *count);
                self.settle(hooklength(kind), *count);
            }
            Payload::HooklengthsCutDown { from, to_tenth_mm, count } => {
                let (from, to) = (hooklength(from), LineLength::from_tenths_mm(*to_tenth_mm));
                let shorter = to.tenths_mm() > 0 && to < from.length;
                if shorter {
                    let cut = self.pull(op, from, *count);
                    self.put(op, Hooklength { length: to, ..from }, cut);
                }
                self.note(op, shorter);
            }
            Payload::HooklengthsWanted { hooklength: kind, count } => {
                let kind = hooklength(kind);
                let had = self.wanted.count(kind);
                let done = self.wanted.remove(kind, had).and(self.wanted.add(kind, *count));
                self.note(op, done.is_ok());
            }
            Payload::SpoolAdded { diameter_um, length_tenth_mm } => {
                let left = LineLength::from_tenths_mm(*length_tenth_mm);
                self.spools.push(Spool { id: op, diameter_um: *diameter_um, left });
            }
            Payload::SpoolLeft { spool, left_tenth_mm } => {
                let left = LineLength::from_tenths_mm(*left_tenth_mm);
                let there = self.spools.iter_mut().find(|s| s.id == *spool);
                let found = there.map(|spool| spool.left = left).is_some();
                self.note(op, found);
                self.spools.retain(|s| s.left.tenths_mm() > 0);
            }
            Payload::AllowancesSet(wire) => {
                (self.allowances, self.allowances_measured) = (allowances(wire), true);
            }
            Payload::PopUpSet(wire) => (self.pop_up, self.pop_up_measured) = (measured(wire), true),
            Payload::ShotSet(weight) => self.set_shot(weight),
            Payload::FallTimed { depth_cm, fall_ms } => self.falls.push(TimedFall {
                op,
                fall: Calibration {
                    depth_m: f64::from(*depth_cm) / 100.0,
                    fall_s: f64::from(*fall_ms) / 1_000.0,
                },
            }),
            Payload::LadderSet { heights_tenth_mm } => {
                self.ladder =
                    heights_tenth_mm.iter().map(|&height| LineLength::from_tenths_mm(height)).collect();
                self.ladder.sort_unstable();
                self.ladder.dedup();
                self.ladder.retain(|height| height.tenths_mm() > 0);
            }
            Payload::CautionsSeen { peg, cautions } => {
                let seen = cautions.iter().map(|id| Seen { peg: peg.clone(), id: id.clone() });
                self.seen.extend(seen);
            }
            // What belongs to a day is no part of a kit.
            _ => self.note(op, false),
        }
    }

    fn note(&mut self, op: Uuid, done: bool) {
        if !done && self.odd.last() != Some(&op) {
            self.odd.push(op);
        }
    }

    fn put(&mut self, op: Uuid, hooklength: Hooklength, count: u16) {
        let done = self.wallet.add(hooklength, count).is_ok();
        self.note(op, done);
    }

    /// Takes out as many as there are, up to `count`; how many that was.
    fn pull(&mut self, op: Uuid, hooklength: Hooklength, count: u16) -> u16 {
        let taken = count.min(self.wallet.count(hooklength));
        let done = self.wallet.remove(hooklength, taken).is_ok();
        self.note(op, done && taken == count);
        taken
    }

    fn set_shot(&mut self, weight: &ShotWeight) {
        let grams = f64::from(weight.mg) / 1_000.0;
        match self.shot.iter().position(|size| size.name == weight.size) {
            Some(i) if weight.mg == 0 => drop(self.shot.remove(i)),
            Some(i) => self.shot[i].grams = grams,
            None if weight.mg == 0 => {}
            None => self.shot.push(ShotSize { name: weight.size.clone(), grams }),
        }
        restwater_sorting::by(&mut self.shot, |a, b| {
            b.grams.total_cmp(&a.grams).then_with(|| a.name.cmp(&b.name))
        });
    }

    /// Takes a loss out where one kind of the wallet fits it and no other does.
    fn lose(&mut self, loss: Loss) {
        let fitting: Vec<Hooklength> =
            self.wallet.tied().iter().map(|t| t.hooklength).filter(|h| fits(loss, *h)).collect();
        match fitting.as_slice() {
            [one] if self.wallet.remove(*one, 1).is_ok() => self.lost += 1,
            _ => self.lost_unknown.push(loss),
        }
    }

    /// Losses that could not be told apart are settled by taking out, or counting, a kind that fits them.
    fn settle(&mut self, hooklength: Hooklength, count: u16) {
        let mut left = count;
        self.lost_unknown.retain(|loss| {
            let settled = left > 0 && fits(*loss, hooklength);
            left -= u16::from(settled);
            !settled
        });
    }

    /// Hooklengths beyond what is to be carried: what may be cut down.
    pub fn spare(&self) -> Vec<Hooklength> {
        let spare = |tied: &restwater_bench::hooklength::Tied| {
            let keep = self.wanted.count(tied.hooklength).min(tied.count);
            std::iter::repeat_n(tied.hooklength, usize::from(tied.count - keep))
        };
        self.wallet.tied().iter().flat_map(spare).collect()
    }
}

fn fits(loss: Loss, hooklength: Hooklength) -> bool {
    let length = loss
        .length_mm
        .is_some_and(|mm| mm.saturating_mul(10).abs_diff(hooklength.length.tenths_mm()) <= SAME_TENTHS);
    length && loss.hook_size.is_none_or(|size| size == hooklength.hook_size)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use restwater_log::Hlc;
    use restwater_session::written::Written;

    fn tie(inches: u32, hair: Option<u16>) -> Hooklength {
        Hooklength {
            length: LineLength::from_tenths_mm(inches * 254),
            diameter_um: 120,
            hook_size: 16,
            hair_mm: hair,
        }
    }

    fn tied(inches: u32, count: u16) -> Payload {
        Payload::HooklengthsTied { hooklength: logged_hooklength(&tie(inches, None)), count }
    }

    fn loss(day: &Written, s: u64, length_mm: u32) -> Loss {
        let hlc = Hlc { ms: 1_700_000_000_000 + s * 1_000, count: 500 };
        Loss {
            order: (hlc, day.device, Uuid::from_u128(s.into())),
            length_mm: Some(length_mm),
            hook_size: Some(16),
        }
    }

    #[test]
    fn tied_cut_down_lost_and_counted() {
        let mut kit = Written::by(0xD1);
        kit.log(0, tied(36, 6));
        let to = LineLength::from_inches(18.0).unwrap();
        kit.log(
            10,
            Payload::HooklengthsCutDown {
                from: logged_hooklength(&tie(36, None)),
                to_tenth_mm: to.tenths_mm(),
                count: 2,
            },
        );
        let losses = [loss(&kit, 20, 457), loss(&kit, 30, 914), loss(&kit, 40, 300)];
        let found = fold(&kit.ops, &losses);
        assert_eq!((found.wallet.count(tie(36, None)), found.wallet.count(tie(18, None))), (3, 1));
        assert_eq!((found.lost, found.lost_unknown.len()), (2, 1));
        kit.log(50, Payload::HooklengthsCounted { hooklength: logged_hooklength(&tie(36, None)), count: 5 });
        assert_eq!(
            fold(&kit.ops, &losses).wallet.count(tie(36, None)),
            5,
            "a count stands over earlier losses"
        );
    }

    #[test]
    fn a_loss_that_may_be_either_is_asked_about() {
        let mut kit = Written::by(0xD1);
        kit.log(0, tied(36, 2));
        kit.log(1, Payload::HooklengthsTied { hooklength: logged_hooklength(&tie(36, Some(8))), count: 2 });
        let losses = [loss(&kit, 20, 914)];
        assert_eq!(fold(&kit.ops, &losses).lost_unknown.len(), 1);
        kit.log(
            30,
            Payload::HooklengthsTakenOut { hooklength: logged_hooklength(&tie(36, Some(8))), count: 1 },
        );
        let found = fold(&kit.ops, &losses);
        assert_eq!((found.lost_unknown.len(), found.wallet.count(tie(36, Some(8)))), (0, 1));
    }

    #[test]
    fn what_was_lost_before_there_was_a_kit_is_not_asked_about() {
        let mut kit = Written::by(0xD1);
        kit.log(1, Payload::CautionsSeen { peg: "14".into(), cautions: vec![] });
        kit.log(100, tied(36, 2));
        let found = fold(&kit.ops, &[loss(&kit, 20, 914)]);
        assert_eq!((found.wallet.count(tie(36, None)), found.lost_unknown.len()), (2, 0));
    }

    #[test]
    fn a_partners_losses_leave_my_wallet_alone() {
        let (mut mine, other) = (Written::by(0xD1), Written::by(0xD2));
        mine.log(0, tied(36, 2));
        let found = fold(&mine.ops, &[loss(&other, 20, 914)]);
        assert_eq!((found.wallet.count(tie(36, None)), found.lost_unknown.len()), (2, 0));
    }

    #[test]
    fn more_cut_down_than_there_are_is_done_as_far_as_it_goes_and_named() {
        let mut kit = Written::by(0xD1);
        kit.log(0, tied(36, 1));
        let to = LineLength::from_inches(18.0).unwrap();
        let op = kit.log(
            5,
            Payload::HooklengthsCutDown {
                from: logged_hooklength(&tie(36, None)),
                to_tenth_mm: to.tenths_mm(),
                count: 3,
            },
        );
        let longer = Payload::HooklengthsCutDown {
            from: logged_hooklength(&tie(18, None)),
            to_tenth_mm: tie(36, None).length.tenths_mm(),
            count: 1,
        };
        let no_cut = kit.log(6, longer);
        let found = fold(&kit.ops, &[]);
        assert_eq!(found.wallet.each(), vec![tie(18, None)]);
        assert_eq!(found.odd, vec![op, no_cut]);
    }

    #[test]
    fn spools_shot_ladder_and_undo() {
        let mut kit = Written::by(0xD1);
        let length = LineLength::from_metres(50.0).unwrap();
        let spool = kit.log(0, Payload::SpoolAdded { diameter_um: 120, length_tenth_mm: length.tenths_mm() });
        kit.log(1, Payload::SpoolLeft { spool, left_tenth_mm: 900 });
        kit.log(2, Payload::ShotSet(ShotWeight { size: "BB".into(), mg: 0 }));
        let own = kit.log(3, Payload::ShotSet(ShotWeight { size: "putty".into(), mg: 250 }));
        kit.log(
            4,
            Payload::LadderSet {
                heights_tenth_mm: [5, 2, 5].map(|inches| tie(inches, None).length.tenths_mm()).to_vec(),
            },
        );
        let found = fold(&kit.ops, &[]);
        assert_eq!(found.spools[0].left.tenths_mm(), 900);
        assert!(found.shot.iter().all(|s| s.name != "BB") && found.shot.iter().any(|s| s.name == "putty"));
        assert_eq!(found.ladder.len(), 2);
        kit.undo(5, &[own]);
        kit.log(6, Payload::SpoolLeft { spool, left_tenth_mm: 0 });
        let after = fold(&kit.ops, &[]);
        assert!(after.spools.is_empty() && after.shot.iter().all(|s| s.name != "putty"));
    }

    fn any_entry() -> impl Strategy<Value = Payload> {
        let kind = (1..6_u32, prop::option::of(5..7_u16)).prop_map(|(ft, hair)| tie(12 * ft, hair));
        let count = 0..1_200_u16;
        prop_oneof![
            4 => (kind.clone(), count.clone()).prop_map(|(hooklength, count)| Payload::HooklengthsTied { hooklength: logged_hooklength(&hooklength), count }),
            2 => (kind.clone(), count.clone()).prop_map(|(hooklength, count)| Payload::HooklengthsCounted { hooklength: logged_hooklength(&hooklength), count }),
            2 => (kind.clone(), count.clone()).prop_map(|(hooklength, count)| Payload::HooklengthsTakenOut { hooklength: logged_hooklength(&hooklength), count }),
            2 => (kind.clone(), 0..20_000_u32, count.clone()).prop_map(|(from, to, count)| Payload::HooklengthsCutDown { from: logged_hooklength(&from), to_tenth_mm: to, count }),
            1 => (kind, count).prop_map(|(hooklength, count)| Payload::HooklengthsWanted { hooklength: logged_hooklength(&hooklength), count }),
            1 => (0..90_u16, 0..9_000_u32).prop_map(|(um, l)| Payload::SpoolAdded { diameter_um: um, length_tenth_mm: l }),
            1 => prop::collection::vec(0..9_000_u32, 0..5).prop_map(|heights_tenth_mm| Payload::LadderSet { heights_tenth_mm }),
            1 => Just(Payload::Cast { rod: 1 }),
        ]
    }

    proptest! {
        #[test]
        fn any_order_of_arrival_gives_the_same_kit(
            entries in prop::collection::vec((any_entry(), any::<bool>(), any::<prop::sample::Index>(), 0..6_u8), 1..40),
            at in prop::collection::vec((0..400_u64, 1..6_u32), 0..10),
            seed in any::<u64>(),
        ) {
            let mut phones = [Written::by(0xD1), Written::by(0xD2)];
            let mut ids = Vec::new();
            for (s, (entry, second, which, how)) in (0_i64..).step_by(10).zip(entries) {
                let phone = &mut phones[usize::from(second)];
                ids.push(match how {
                    0 if !ids.is_empty() => phone.undo(s, &[ids[which.index(ids.len())]]),
                    _ => phone.log(s, entry),
                });
            }
            // No two ops have the same place in the log.
            let times = at.iter().zip(0_u64..).map(|((s, ft), i)| (s * 10 + i, ft * 305));
            let losses: Vec<Loss> = times.map(|(s, mm)| loss(&phones[0], s, mm)).collect();
            let ops: Vec<Op> = phones.into_iter().flat_map(|phone| phone.ops).collect();
            let (mut shuffled, mut other_way) = (ops.clone(), losses.clone());
            shuffled.sort_by_key(|op| op.id.as_u128().wrapping_mul(u128::from(seed) | 1));
            other_way.reverse();
            let kit = fold(&ops, &losses);
            prop_assert!(kit.wallet.tied().iter().all(|t| (1..=1_000).contains(&t.count)));
            prop_assert_eq!(fold(&shuffled, &other_way), kit);
        }
    }
}
