//! How an alternating test begins.

use super::alternation::Alternation;
use super::logged::factor_from_logged;
use super::model::Rod;
use super::rows::value_of;
use super::step::Step;
use restwater_compare::Factor;
use restwater_log::Payload;

/// The test that an entry begins, on a rod as it is then.
pub(super) fn begun(step: &Step, state: &Rod, after_cast: usize) -> Option<Alternation> {
    let Payload::AlternationStarted { rod, factor, a, b, b_first, casts } = step.payload else {
        return None;
    };
    let factor = factor_from_logged(*factor);
    let spot = value_of(Factor::Spot, &state.rig, state.spot.as_ref());
    Some(Alternation {
        op: step.op.id,
        rod: *rod,
        factor,
        a: a.clone(),
        b: b.clone(),
        b_first: *b_first,
        casts: *casts,
        began: step.at.clone(),
        after_cast,
        spot: spot.filter(|_| factor != Factor::Spot),
    })
}
