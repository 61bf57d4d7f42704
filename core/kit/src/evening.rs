//! The evening's work: which spare ties to cut down, and what to tie from which spool.

use super::Kit;
use restwater_bench::cut_down::{self, Cut, CutDownError, Need};
use restwater_bench::hooklength::{Hooklength, Tied};
use restwater_bench::tie_up::{self, TieUp, TieUpError};
use restwater_bench::units::LineLength;
use std::collections::BTreeMap;
use uuid::Uuid;

/// What is to be tied from one line.
#[derive(Debug, Clone, PartialEq)]
pub struct OneLine {
    /// Thousandths of a millimetre.
    pub diameter_um: u16,
    /// The hooklengths to be tied from it.
    pub to_tie: Vec<Tied>,
    /// Its spools, in the order that the plan uses.
    pub spools: Vec<Uuid>,
    /// The plan, or why there is none.
    pub plan: Result<TieUp, TieUpError>,
}

/// The evening's work.
#[derive(Debug, Clone, PartialEq)]
pub struct Evening {
    /// Cuts, longest first.
    pub cuts: Vec<Cut>,
    /// Line cut off in all.
    pub waste: LineLength,
    /// What is left to tie, for each line from thin to thick.
    pub lines: Vec<OneLine>,
}

/// Plans the evening: of the missing hooklengths, as many as possible are cut from spare ties of the same
/// line, hook and hair, with the least waste; the rest are tied from the spools.
pub fn evening(kit: &Kit) -> Result<Evening, CutDownError> {
    let loops = kit.allowances.loop_length.tenths_mm().saturating_mul(2);
    let new_loop = LineLength::from_tenths_mm(loops.saturating_add(kit.allowances.tag.tenths_mm()));
    let mut missing: BTreeMap<Hooklength, u16> =
        kit.wallet.still_to_tie(&kit.wanted).iter().map(|t| (t.hooklength, t.count)).collect();
    let spare = kit.spare();
    let hairs: std::collections::BTreeSet<Option<u16>> = missing.keys().map(|h| h.hair_mm).collect();
    let mut cuts: Vec<Cut> = Vec::new();
    for hair in hairs {
        let ties: Vec<Hooklength> = spare.iter().filter(|t| t.hair_mm == hair).copied().collect();
        let needs: Vec<Need> =
            missing.iter().filter(|(h, _)| h.hair_mm == hair).flat_map(|(h, n)| needs(*h, *n)).collect();
        for cut in as_many_as_can_be(&ties, needs, new_loop)? {
            let made = Hooklength { length: cut.need.length, ..cut.tie };
            if let Some(left) = missing.get_mut(&made) {
                *left = left.saturating_sub(1);
            }
            cuts.push(cut);
        }
    }
    restwater_sorting::by(&mut cuts, |a, b| b.need.cmp(&a.need).then(a.tie.cmp(&b.tie)));
    let waste = cuts.iter().map(|cut| cut.waste.tenths_mm()).fold(0, u32::saturating_add);
    missing.retain(|_, count| *count > 0);
    Ok(Evening { cuts, waste: LineLength::from_tenths_mm(waste), lines: lines(kit, &missing) })
}

fn needs(hooklength: Hooklength, count: u16) -> impl Iterator<Item = Need> {
    let need = Need {
        length: hooklength.length,
        diameter_um: Some(hooklength.diameter_um),
        hook_size: Some(hooklength.hook_size),
    };
    std::iter::repeat_n(need, usize::from(count))
}

/// The cut-down plan without the needs that can't be met along with the longer ones.
fn as_many_as_can_be(
    ties: &[Hooklength],
    mut needs: Vec<Need>,
    new_loop: LineLength,
) -> Result<Vec<Cut>, CutDownError> {
    // Each tie serves at most one need, so if there are more needs, the shortest are left for tying from the
    // spools.
    needs.sort_unstable_by(|a, b| b.cmp(a));
    loop {
        let unmet = match cut_down::plan(ties, &needs, new_loop) {
            Ok(plan) => return Ok(plan.cuts),
            Err(too_many @ CutDownError::TooMany { .. }) => return Err(too_many),
            Err(
                CutDownError::NoTieLongEnough { need, .. }
                | CutDownError::NoTieOfThatKind { need }
                | CutDownError::NotEnoughTies { need, .. },
            ) => need,
        };
        match needs.iter().position(|need| *need == unmet) {
            Some(i) => drop(needs.remove(i)),
            None => return Ok(Vec::new()),
        }
    }
}

fn lines(kit: &Kit, missing: &BTreeMap<Hooklength, u16>) -> Vec<OneLine> {
    let mut by_line: BTreeMap<u16, Vec<Tied>> = BTreeMap::new();
    for (hooklength, count) in missing {
        by_line
            .entry(hooklength.diameter_um)
            .or_default()
            .push(Tied { hooklength: *hooklength, count: *count });
    }
    let line = |(diameter_um, to_tie): (u16, Vec<Tied>)| {
        let of_it: Vec<_> = kit.spools.iter().filter(|s| s.diameter_um == diameter_um).collect();
        let lengths: Vec<LineLength> = of_it.iter().map(|spool| spool.left).collect();
        let plan = tie_up::plan(&lengths, &tie_up::cuts(&to_tie, diameter_um, kit.allowances));
        OneLine { diameter_um, to_tie, spools: of_it.iter().map(|spool| spool.id).collect(), plan }
    };
    by_line.into_iter().map(line).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Spool;

    fn tie(inches: u32) -> Hooklength {
        let length = LineLength::from_tenths_mm(inches * 254);
        Hooklength { length, diameter_um: 120, hook_size: 16, hair_mm: None }
    }

    fn kit(have: &[(u32, u16)], wanted: &[(u32, u16)], spool_m: Option<f64>) -> Kit {
        let mut kit = Kit::default();
        for (inches, count) in have {
            kit.wallet.add(tie(*inches), *count).unwrap();
        }
        for (inches, count) in wanted {
            kit.wanted.add(tie(*inches), *count).unwrap();
        }
        let spool =
            |m| Spool { id: Uuid::from_u128(1), diameter_um: 120, left: LineLength::from_metres(m).unwrap() };
        kit.spools = spool_m.map(spool).into_iter().collect();
        kit
    }

    #[test]
    fn as_much_as_possible_is_cut_down_and_the_rest_is_tied() {
        let kit = kit(&[(36, 4), (60, 1)], &[(36, 2), (18, 4)], Some(30.0));
        let plan = evening(&kit).unwrap();
        let cut: Vec<u32> = plan.cuts.iter().map(|c| c.tie.length.tenths_mm() / 254).collect();
        assert_eq!(cut, [36, 36, 60], "two 36 in and the 60 in are spare");
        assert_eq!(plan.waste.tenths_mm() / 254, 18 + 18 + 42);
        assert_eq!(plan.lines[0].to_tie, [Tied { hooklength: tie(18), count: 1 }]);
        assert!(plan.lines[0].plan.as_ref().is_ok_and(|p| p.from.len() == 1));
    }

    #[test]
    fn hooklengths_that_are_to_be_carried_are_not_cut() {
        let plan = evening(&kit(&[(36, 2)], &[(36, 2), (18, 1)], None)).unwrap();
        assert!(plan.cuts.is_empty());
        assert!(matches!(plan.lines[0].plan, Err(TieUpError::NotEnoughLine { .. })), "no spool of it");
    }

    #[test]
    fn a_full_wallet_needs_no_work() {
        let plan = evening(&kit(&[(36, 2)], &[(36, 1)], None)).unwrap();
        assert_eq!((plan.cuts.len(), plan.lines.len()), (0, 0));
    }

    #[test]
    fn another_hair_is_another_hooklength() {
        let mut kit = kit(&[(36, 2)], &[], None);
        kit.wanted.add(Hooklength { hair_mm: Some(8), ..tie(18) }, 1).unwrap();
        let plan = evening(&kit).unwrap();
        assert_eq!((plan.cuts.len(), plan.lines[0].to_tie[0].count), (0, 1));
    }
}
