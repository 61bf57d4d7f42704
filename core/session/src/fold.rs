//! The fold: ops in, session out.

use super::alternation_begun::begun;
use super::at_the_water::Made;
use super::cast::{Cast, CastEnd, EndCause};
use super::end_corrected::Correction;
use super::ends::that_count;
use super::mending::{self, Later};
use super::model::{Doubt, DoubtKind, LastTimed, Loss, Rod, RodState, Session};
use super::step::Step;
use super::time_line::stamp_of;
use super::{Stamp, TimeLine};
use restwater_log::{Op, Payload, RodNumber, SessionSetup, SwimSetup, effective, sorted};
use uuid::Uuid;

/// The most rods a session can have: a rod's number is one digit wherever it is written, and nobody fishes
/// with ten. A set-up that asks for more gets this many.
pub const MOST_RODS: RodNumber = 9;

/// Folds the ops of one session. They may come in any order, and duplicates count once.
pub fn fold(id: Uuid, ops: &[Op]) -> Session {
    folded(id, ops, None)
}

/// Folds them as far as one of them.
pub(super) fn fold_until(id: Uuid, ops: &[Op], last: Uuid) -> Session {
    folded(id, ops, Some(last))
}

fn folded(id: Uuid, ops: &[Op], last: Option<Uuid>) -> Session {
    let ordered = sorted(ops);
    let in_force = effective(&ordered);
    let (line, stamps) = TimeLine::of(&in_force);
    let mut folding = Folding::new(id);
    let tapped = that_count(&in_force, &stamps);
    for (entry, stamp) in &tapped {
        let ends = entry.said.ends.iter();
        let ends = ends.filter_map(|op| Correction::of(op, line.place(op.device, &op.at)));
        folding.take(&Step {
            op: entry.op,
            at: stamp_of(entry, stamp, &tapped),
            tapped: (*stamp).clone(),
            payload: entry.payload,
            setup: entry.setup.as_ref(),
            confirmed: entry.said.confirmed,
            ends: ends.collect(),
        });
        if last == Some(entry.op.id) {
            break;
        }
    }
    folding.session.time_line = line;
    folding.session.note_there(&folding.there);
    mending::apply(&mut folding.session, &folding.said_later);
    folding.settle_fish();
    folding.session
}

struct Folding {
    session: Session,
    /// Corrections to casts and entries that were made afterwards.
    said_later: Later,
    /// When each rod was last used, after corrections.
    rod_last: Vec<Option<Stamp>>,
    /// When something else was logged at the water.
    there: Vec<Stamp>,
}

impl Folding {
    fn new(id: Uuid) -> Self {
        let session = Session {
            id,
            setup: SessionSetup::default(),
            time_line: TimeLine::default(),
            started: None,
            ended: None,
            rods: Vec::new(),
            casts: Vec::new(),
            marks: Vec::new(),
            kept_back: Vec::new(),
            swim: SwimSetup::default(),
            outline_cm: Vec::new(),
            landmarks: Vec::new(),
            alternation: None,
            peg_place: None,
            match_day: None,
            fish: Vec::new(),
            scales: Vec::new(),
            others: Vec::new(),
            section: None,
            match_rule: String::new(),
            breaks: Vec::new(),
            fed: Vec::new(),
            shown: Vec::new(),
            neighbours: Vec::new(),
            notes: Vec::new(),
            conditions: Vec::new(),
            losses: Vec::new(),
            next_time: Vec::new(),
            plan: None,
            doubts: Vec::new(),
            there_until: None,
            last_timed: None,
        };
        Self { session, said_later: Later::default(), rod_last: Vec::new(), there: Vec::new() }
    }

    fn take(&mut self, step: &Step) {
        self.said_later.note(step);
        self.session.note_local_time(step);
        if Made::of(step.payload).is_there() {
            self.there.push(step.at.clone());
        }
        if step.at.shown.approx_s > 0 {
            self.doubt(step.op.id, DoubtKind::Approximate);
        }
        match step.payload.rod() {
            Some(rod) => self.take_for_rod(rod, step),
            None => self.take_for_session(step),
        }
    }

    fn take_for_rod(&mut self, rod: RodNumber, step: &Step) {
        let slot = self.slot(rod);
        match step.payload {
            Payload::RigSet { rig, .. } => return self.with_rod(slot, |r| r.rig = rig.clone()),
            Payload::SpotSet { spot, .. } => return self.with_rod(slot, |r| r.spot = Some(spot.clone())),
            Payload::FeederSet { fill_mg, .. } => return self.with_rod(slot, |r| r.fill_mg = *fill_mg),
            Payload::AlternationStarted { .. } => return self.alternate(slot, step),
            Payload::HooklengthLost { .. } => return self.hooklength_lost(slot, step),
            _ => self.touch(slot, step),
        }
        match step.payload {
            Payload::Cast { .. } => self.cast(slot, step),
            Payload::Bite { .. } => self.bite(slot, step),
            Payload::Landed { fish, .. } => self.outcome(slot, step, EndCause::Landed { fish: fish.clone() }),
            Payload::Lost { .. } => self.outcome(slot, step, EndCause::Lost),
            Payload::Missed { .. } => self.outcome(slot, step, EndCause::Missed),
            Payload::WoundIn { .. } => self.wound_in(slot, step),
            Payload::Liner { .. } => self.on_cast(slot, step, |cast, at| cast.liners.push(at)),
            Payload::Indication { .. } => self.on_cast(slot, step, |cast, at| cast.indications.push(at)),
            Payload::Twitch { .. } => self.on_cast(slot, step, |cast, at| cast.twitches.push(at)),
            _ => {}
        }
    }

    fn take_for_session(&mut self, step: &Step) {
        let session = &mut self.session;
        match step.payload {
            Payload::SessionStarted(setup) => self.start(step.setup.unwrap_or(setup), step),
            Payload::SessionEnded => self.end(step),
            Payload::AlternationEnded => session.alternation = None,
            Payload::Away => {
                session.go_away(step);
                self.note_break(step, self.rods_last_used());
            }
            Payload::Returned => {
                let since = session.away().map(|rest| rest.from.clone());
                session.come_back(step);
                self.note_break(step, since);
            }
            Payload::Fed(said) => {
                session.take_feed(step, said);
                self.note_timed(step, self.session.started.clone());
            }
            Payload::FishShown { sign, place } => {
                session.take_shown(step, *sign, *place);
                self.note_timed(step, self.session.started.clone());
            }
            Payload::NeighbourCaught { side } => {
                session.take_neighbour(step, *side);
                self.note_timed(step, self.session.started.clone());
            }
            Payload::Noted { .. } | Payload::PlannedNext { .. } | Payload::ConditionsSet(_) => {
                session.take_said(step);
            }
            Payload::MarkSet { .. }
            | Payload::KeptBack { .. }
            | Payload::Released { .. }
            | Payload::SwimSet(_)
            | Payload::OutlineSet { .. }
            | Payload::FeatureSet { .. }
            | Payload::HazardSet { .. }
            | Payload::PegPlaced { .. } => session.take_swim(step),
            Payload::MatchSet(_)
            | Payload::MatchOff
            | Payload::FishSet(_)
            | Payload::NetWeighed { .. }
            | Payload::OtherNetTold { .. }
            | Payload::SectionSet { .. }
            | Payload::MatchRuleSaid { .. } => {
                session.take_match(step);
            }
            Payload::PlanTaken { .. } | Payload::PlanDropped => session.take_plan(step),
            Payload::Unknown { .. } => self.doubt(step.op.id, DoubtKind::Newer),
            // Undo and amended times are resolved before the fold; the other kinds are about a rod or belong
            // to a kit.
            _ => {}
        }
    }

    /// Begins a test and ends the one that was running.
    fn alternate(&mut self, slot: usize, step: &Step) {
        let Some(rod) = self.session.rods.get(slot) else { return };
        let begun = begun(step, rod, self.session.casts.len());
        self.session.alternation = begun.or_else(|| self.session.alternation.take());
    }

    /// Applies the details of fish once all landings are known, since an op may come before the landing it is
    /// about.
    fn settle_fish(&mut self) {
        for op in self.session.fish_without_landing() {
            if !self.said_later.is_confirmed(op) {
                self.doubt(op, DoubtKind::NoLanding);
            }
        }
        self.session.weigh_landed();
    }

    /// The hooklength was lost with the rod's last cast, whether that is out or in; this counts once a cast.
    fn hooklength_lost(&mut self, slot: usize, step: &Step) {
        let number = slot as RodNumber + 1;
        let last = self.session.casts.iter_mut().rev().find(|cast| cast.rod == number);
        let Some(cast) = last.filter(|cast| cast.hooklength_lost.is_none()) else {
            return self.doubt(step.op.id, DoubtKind::NothingOut);
        };
        cast.hooklength_lost = Some(step.op.id);
        let (length_mm, hook_size) = (cast.rig.hooklength_mm, cast.rig.hook_size);
        self.session.losses.push(Loss { order: step.op.order(), length_mm, hook_size });
    }

    fn doubt(&mut self, op: Uuid, kind: DoubtKind) {
        self.session.doubts.push(Doubt { op, kind });
    }

    fn start(&mut self, setup: &SessionSetup, step: &Step) {
        if self.session.started.is_none() {
            self.session.started = Some(step.at.clone());
            self.note_timed(step, None);
        }
        self.session.setup = setup.clone();
        let rods = setup.rods.clamp(1, MOST_RODS);
        self.grow_to(rods);
    }

    fn grow_to(&mut self, rods: RodNumber) {
        for number in (self.session.rods.len() as RodNumber + 1)..=rods {
            let (state, rig) = (RodState::Ready { since: None }, restwater_log::Rig::default());
            self.session.rods.push(Rod { number, state, rig, spot: None, fill_mg: None });
            self.rod_last.push(None);
        }
    }

    /// The index of a rod in the list. A rod that the set-up doesn't have, which a merge may bring, is added.
    fn slot(&mut self, rod: RodNumber) -> usize {
        let number = rod.clamp(1, MOST_RODS);
        self.grow_to(number);
        usize::from(number) - 1
    }

    fn with_rod(&mut self, slot: usize, change: impl FnOnce(&mut Rod)) {
        if let Some(rod) = self.session.rods.get_mut(slot) {
            change(rod);
        }
    }

    /// Notes that a rod was used at this time, and what is doubtful about the time.
    fn touch(&mut self, slot: usize, step: &Step) {
        let not_before = self.rod_last.get(slot).cloned().flatten();
        if let Some(before) = &not_before {
            let span = step.at.since(before);
            if span.ms < 0 {
                self.doubt(step.op.id, DoubtKind::BackInTime);
            }
            if span.jump_ms != 0 || span.is_open() {
                self.doubt(step.op.id, DoubtKind::ClockMoved);
            }
        }
        let begun = self.session.started.as_ref().is_some_and(|start| step.at.ms_since(start) >= 0);
        if !begun || self.session.ended.is_some() {
            self.doubt(step.op.id, DoubtKind::OutsideSession);
        }
        self.note_timed(step, not_before.or_else(|| self.session.started.clone()));
        if let Some(last) = self.rod_last.get_mut(slot) {
            *last = Some(step.at.clone());
        }
    }

    /// Notes the entry that setting the time back would change.
    fn note_timed(&mut self, step: &Step, not_before: Option<Stamp>) {
        self.session.last_timed = Some(LastTimed::of(step, not_before));
    }

    /// The same for a break. One that was entered afterwards, for a gap between casts or after END, is not the last event.
    fn note_break(&mut self, step: &Step, not_before: Option<Stamp>) {
        let since = self.rods_last_used().is_some_and(|used| step.at.ms_since(&used) < 0);
        if self.session.ended.is_none() && !since {
            self.note_timed(step, not_before);
        }
    }

    fn running(&self, slot: usize) -> Option<usize> {
        match self.session.rods.get(slot)?.state {
            RodState::Out { cast } | RodState::FishOn { cast } => Some(cast),
            RodState::Ready { .. } => None,
        }
    }

    fn set_state(&mut self, slot: usize, state: RodState) {
        if let Some(rod) = self.session.rods.get_mut(slot) {
            rod.state = state;
        }
    }

    fn close(&mut self, slot: usize, cast: usize, cause: EndCause, step: &Step) {
        if let Some(cast) = self.session.casts.get_mut(cast) {
            cast.end = Some(CastEnd { cause, at: step.at.clone(), op: step.op.id });
            self.said_later.note_closed(cast.op, step);
        }
        self.set_state(slot, RodState::Ready { since: Some(step.at.clone()) });
    }

    /// Closes a cast that is out because another entry shows that the rod must be in.
    fn close_unseen(&mut self, slot: usize, step: &Step, without_bite: EndCause, doubt: Option<DoubtKind>) {
        let Some(cast) = self.running(slot) else { return };
        let Some((op, bitten)) = self.session.casts.get(cast).map(|c| (c.op, c.bite.is_some())) else {
            return;
        };
        if bitten {
            self.close(slot, cast, EndCause::OutcomeNotSeen, step);
            self.doubt(op, DoubtKind::OutcomeNotSeen);
        } else {
            self.close(slot, cast, without_bite, step);
            if let Some(kind) = doubt {
                self.doubt(op, kind);
            }
        }
    }

    fn cast(&mut self, slot: usize, step: &Step) {
        self.session.close_break(&step.at);
        self.close_unseen(slot, step, EndCause::EndNotSeen, Some(DoubtKind::EndNotSeen));
        let Some(rod) = self.session.rods.get(slot) else { return };
        let cast = Cast {
            op: step.op.id,
            rod: rod.number,
            start: step.at.clone(),
            rig: rod.rig.clone(),
            spot: rod.spot.clone(),
            fill_mg: rod.fill_mg,
            bite: None,
            liners: Vec::new(),
            indications: Vec::new(),
            twitches: Vec::new(),
            end: None,
            latest: None,
            hooklength_lost: None,
        };
        self.session.casts.push(cast);
        self.set_state(slot, RodState::Out { cast: self.session.casts.len() - 1 });
    }

    fn bite(&mut self, slot: usize, step: &Step) {
        match self.session.rods.get(slot).map(|r| r.state.clone()) {
            Some(RodState::Out { cast }) => {
                if let Some(cast) = self.session.casts.get_mut(cast) {
                    cast.bite = Some((step.at.clone(), step.op.id));
                }
                self.set_state(slot, RodState::FishOn { cast });
            }
            Some(RodState::FishOn { .. }) => self.doubt(step.op.id, DoubtKind::SecondBite),
            _ => self.doubt(step.op.id, DoubtKind::NothingOut),
        }
    }

    fn outcome(&mut self, slot: usize, step: &Step, cause: EndCause) {
        match self.session.rods.get(slot).map(|r| r.state.clone()) {
            Some(RodState::FishOn { cast }) => self.close(slot, cast, cause, step),
            _ => self.doubt(step.op.id, DoubtKind::NoFishOn),
        }
    }

    fn wound_in(&mut self, slot: usize, step: &Step) {
        if self.running(slot).is_none() {
            self.doubt(step.op.id, DoubtKind::NothingOut);
        }
        self.close_unseen(slot, step, EndCause::WoundIn, None);
    }

    fn on_cast(&mut self, slot: usize, step: &Step, note: impl FnOnce(&mut Cast, Stamp)) {
        match self.running(slot).and_then(|cast| self.session.casts.get_mut(cast)) {
            Some(cast) => note(cast, step.at.clone()),
            None => self.doubt(step.op.id, DoubtKind::NothingOut),
        }
    }

    /// When any rod was last used; the start before that.
    fn rods_last_used(&self) -> Option<Stamp> {
        let used = self.rod_last.iter().flatten().max_by_key(|at| at.at_ms);
        used.or(self.session.started.as_ref()).cloned()
    }

    fn end(&mut self, step: &Step) {
        for slot in 0..self.session.rods.len() {
            self.close_unseen(slot, step, EndCause::SessionEnded, None);
        }
        let rest = self.session.breaks.last().map(|rest| rest.to.as_ref().unwrap_or(&rest.from).clone());
        self.note_timed(step, self.rods_last_used().into_iter().chain(rest).max_by_key(|at| at.at_ms));
        self.session.close_break(&step.at);
        self.session.alternation = None;
        self.session.ended = Some(step.at.clone());
    }
}
