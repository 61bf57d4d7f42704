//! Breaks: the angler was away from the rods. Nothing that counts fishing runs meanwhile.

use super::Stamp;
use super::fold::Step;
use super::model::{Doubt, DoubtKind, RodState, Session};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// One break.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Break {
    /// The op that began it.
    pub op: Uuid,
    /// Since when.
    pub from: Stamp,
    /// Until when: the angler was back, a bait was cast, or the session was over. None while it lasts.
    pub to: Option<Stamp>,
}

impl Session {
    /// The break that lasts, if one does.
    pub fn away(&self) -> Option<&Break> {
        self.breaks.last().filter(|last| last.to.is_none())
    }

    /// A break begins. One that lasts already goes on.
    pub(super) fn go_away(&mut self, step: &Step) {
        if self.away().is_none() {
            self.breaks.push(Break { op: step.op.id, from: step.at.clone(), to: None });
        }
    }

    /// The angler is back.
    pub(super) fn come_back(&mut self, step: &Step) {
        if self.away().is_none() {
            self.doubts.push(Doubt { op: step.op.id, kind: DoubtKind::NoBreak });
        }
        self.close_break(&step.at);
    }

    /// Ends the break that lasts, as a cast or the end of the session does. What is in counts its turn-round from there.
    pub(super) fn close_break(&mut self, at: &Stamp) {
        let Some(last) = self.breaks.last_mut().filter(|last| last.to.is_none()) else { return };
        // After a merge it may be closed by what lies before it: then it was none.
        let to = if at.ms_since(&last.from) < 0 { last.from.clone() } else { at.clone() };
        last.to = Some(to.clone());
        for rod in &mut self.rods {
            if let RodState::Ready { since: Some(since) } = &mut rod.state
                && to.ms_since(since) > 0
            {
                *since = to.clone();
            }
        }
    }

    /// Minutes of the session that were fished: neither on a break nor, in a match, before all-in or after all-out, unless a
    /// bait was out then. None before it is over.
    pub fn fished_min(&self) -> Option<f64> {
        let (started, ended) = (self.started.as_ref()?, self.ended.as_ref()?);
        let (mut from_ms, mut to_ms) = (started.at_ms, ended.at_ms);
        if let Some(day) = &self.match_day {
            let at_ms = |signal_ms: i64| {
                let phone_ms = signal_ms.saturating_sub(day.setup.offset_ms);
                started.at_ms.saturating_add(phone_ms.saturating_sub(day.phone_ms(started)))
            };
            let first = self.casts.iter().map(|cast| cast.start.at_ms).min();
            let last = self.casts.iter().filter_map(|cast| cast.wait_end()).map(|end| end.at_ms).max();
            let (all_in, all_out) = (at_ms(day.setup.all_in_ms), at_ms(day.setup.all_out_ms));
            from_ms = from_ms.max(first.map_or(all_in, |first| first.min(all_in)));
            to_ms = to_ms.min(last.map_or(all_out, |last| last.max(all_out)));
        }
        let away = self.overlap_min(from_ms, to_ms);
        Some((to_ms.saturating_sub(from_ms) as f64 / 60_000.0 - away).max(0.0))
    }

    /// Minutes of breaks between two stamps; a break that lasts counts up to the second.
    pub fn break_min(&self, from: &Stamp, to: &Stamp) -> f64 {
        self.overlap_min(from.at_ms, to.at_ms)
    }

    fn overlap_min(&self, from_ms: i64, to_ms: i64) -> f64 {
        let overlap = |rest: &Break| {
            let end = rest.to.as_ref().map_or(to_ms, |end| end.at_ms).min(to_ms);
            end.saturating_sub(rest.from.at_ms.max(from_ms)).max(0) as f64 / 60_000.0
        };
        self.breaks.iter().map(overlap).sum()
    }
}
