//! The kit, folded from the entries of a kit session and the losses of the days.
//!
//! A pure function of the two sets, read in the order of the log: any order of arrival gives the same kit.
//! Impossible entries (such as more cut down than there are, after a merge) are applied as far as possible
//! and listed in `odd`.
#![forbid(unsafe_code)]
#![deny(missing_docs)]
#![cfg_attr(test, allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::float_cmp))]

pub mod evening;
mod logged;
mod plans;

pub use logged::{
    Measured, allowances, hooklength, logged_allowances, logged_hooklength, logged_measured, measured,
};
pub use plans::nearest_plan;

use restwater_bench::fall::Calibration;
use restwater_bench::hooklength::{Hooklength, Wallet};
use restwater_bench::ladder::starting_ladder;
use restwater_bench::shot::{ShotSize, starting_table};
use restwater_bench::tie_up::Allowances;
use restwater_bench::units::LineLength;
use restwater_caution::shown::Seen;
use restwater_log::{Op, Payload, ShotWeight, effective, sorted};
use restwater_session::{Loss, Plan};
use std::collections::{BTreeMap, HashSet};
use uuid::Uuid;

/// A rig has its hooklength in whole millimetres. Within this tolerance it matches a kind in the wallet, in
/// tenths of a millimetre.
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

/// The contents of a kit.
#[derive(Debug, Clone, PartialEq)]
pub struct Kit {
    /// The hooklengths that exist, without those lost.
    pub wallet: Wallet,
    /// Hooklengths to carry.
    pub wanted: Wallet,
    /// How many losses were removed from the wallet.
    pub lost: usize,
    /// Losses that match no kind in the wallet, or several, and have to be removed by hand.
    pub lost_unknown: Vec<Loss>,
    /// Spools with line on them, in the order they were added.
    pub spools: Vec<Spool>,
    /// What a tie uses beyond its length.
    pub allowances: Allowances,
    /// Whether they were measured; otherwise they are zero.
    pub allowances_measured: bool,
    /// The pop-up.
    pub pop_up: Measured,
    /// Whether it was measured; otherwise it is a default.
    pub pop_up_measured: bool,
    /// Shot in the box.
    pub shot: Vec<ShotSize>,
    /// Falls at known depths.
    pub falls: Vec<TimedFall>,
    /// Heights of the ladder, low to high.
    pub ladder: Vec<LineLength>,
    /// Cautions dismissed, by peg.
    pub seen: Vec<Seen>,
    /// Plans by their day, counted from 1 January 1970; a day without a line has none.
    pub plans: BTreeMap<i32, Plan>,
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
            plans: BTreeMap::new(),
            odd: Vec::new(),
        }
    }
}

/// Folds the ops of a kit that `users` fish with, and the losses that they and the phones which wrote in it have logged on their
/// days. Losses of a partner who never wrote in this kit don't affect it.
pub fn fold(ops: &[Op], losses: &[Loss], users: &[Uuid]) -> Kit {
    let ordered = sorted(ops);
    let phones: HashSet<Uuid> = ops.iter().map(|op| op.device).chain(users.iter().copied()).collect();
    let mut losses: Vec<Loss> = losses.iter().filter(|l| phones.contains(&l.order.1)).copied().collect();
    let in_force = effective(&ordered);
    // Hooklengths lost before the first one was entered were never in the wallet.
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
            Payload::HooklengthsTied { .. }
            | Payload::HooklengthsCounted { .. }
            | Payload::HooklengthsTakenOut { .. }
            | Payload::HooklengthsCutDown { .. }
            | Payload::HooklengthsWanted { .. } => self.take_hooklengths(op, payload),
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
            Payload::PlanSet { .. } | Payload::PlanCleared { .. } => plans::take(&mut self.plans, payload),
            // Which club's start is in use concerns advice, not the wallet; and whatever a newer version wrote, it took no
            // hooklength out of this one.
            Payload::ClubTaken(_) | Payload::ClubLeft | Payload::Unknown { .. } => {}
            // Entries of a day are not part of a kit.
            _ => self.note(op, false),
        }
    }

    /// What is in the wallet, and what is to be carried.
    fn take_hooklengths(&mut self, op: Uuid, payload: &Payload) {
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
            _ => {}
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

    /// Removes as many as there are, up to `count`, and returns how many.
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

    /// Removes a loss if exactly one kind in the wallet matches it.
    fn lose(&mut self, loss: Loss) {
        let fitting: Vec<Hooklength> =
            self.wallet.tied().iter().map(|t| t.hooklength).filter(|h| fits(loss, *h)).collect();
        match fitting.as_slice() {
            [one] if self.wallet.remove(*one, 1).is_ok() => self.lost += 1,
            _ => self.lost_unknown.push(loss),
        }
    }

    /// Unclear losses are settled when a kind that matches them is removed or counted.
    fn settle(&mut self, hooklength: Hooklength, count: u16) {
        let mut left = count;
        self.lost_unknown.retain(|loss| {
            let settled = left > 0 && fits(*loss, hooklength);
            left -= u16::from(settled);
            !settled
        });
    }

    /// Hooklengths beyond those to be carried, which may be cut down.
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
mod tests;
