//! The simulated bank: seeded days on waters whose truth is known, fished by fixed habits, by the usual rule,
//! by Restwater's advice and by an angler who knows the truth.
//!
//! Nothing here uses the core's models of waits: the waters have shapes of their own, so that the advice is
//! measured on something that it was not derived from. All figures are invented; they are never presented as
//! facts.

pub mod angler;
pub mod belief;
pub mod book;
pub mod change;
pub mod claims;
pub mod club;
pub mod day;
pub mod fed;
pub mod feeds;
pub mod goal;
pub mod looks;
pub mod luck;
pub mod questions;
pub mod restwater;
pub mod sbc;
pub mod share;
pub mod spot_waters;
pub mod spots;
pub mod table;
pub mod water;
pub mod waters;

use std::sync::atomic::{AtomicUsize, Ordering};

/// Processes `items` on two threads and returns the answers in their order.
pub fn on_two_threads<T: Sync, A: Send>(items: &[T], work: impl Fn(&T) -> A + Sync) -> Vec<A> {
    let next = AtomicUsize::new(0);
    let one = || {
        let mut done = Vec::new();
        while let Some((i, item)) = {
            let i = next.fetch_add(1, Ordering::Relaxed);
            items.get(i).map(|item| (i, item))
        } {
            done.push((i, work(item)));
        }
        done
    };
    let mut answers: Vec<(usize, A)> = std::thread::scope(|scope| {
        let threads = [scope.spawn(one), scope.spawn(one)];
        threads
            .into_iter()
            .flat_map(|t| t.join().unwrap_or_else(|panic| std::panic::resume_unwind(panic)))
            .collect()
    });
    answers.sort_by_key(|(i, _)| *i);
    answers.into_iter().map(|(_, answer)| answer).collect()
}
