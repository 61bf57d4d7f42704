//! The entries of a match, folded into a session.

use super::Logged;
use super::cast::{CastEnd, EndCause};
use super::match_record::Section;
use super::match_record::{LocalTime, MatchDay, NetScales, OtherNet, SaidFish};
use super::model::Session;
use super::step::Step;
use crate::MatchSetup;
use restwater_log::{FishWeight, Payload};
use restwater_match_day::rules::same_name;
use restwater_match_day::weight::Weight;
use uuid::Uuid;

impl Session {
    /// Applies an op of the match; a later one about the same fish or net replaces the earlier one.
    pub(super) fn take_match(&mut self, step: &Step) {
        let op = step.op.id;
        match step.payload {
            Payload::MatchSet(setup) => self.set_match(MatchSetup::from_logged(setup), step),
            Payload::MatchOff => self.match_day = None,
            Payload::FishSet(said) => {
                let fish = SaidFish { op, said: said.clone() };
                match self.fish.iter_mut().find(|f| f.said.cast == said.cast) {
                    Some(place) => *place = fish,
                    None => self.fish.push(fish),
                }
            }
            Payload::NetWeighed { net, shown } => {
                let scales = NetScales {
                    op,
                    at: step.at.clone(),
                    net: net.clone(),
                    shown: Weight::from_logged(shown),
                };
                match self.scales.iter_mut().find(|s| same_name(&s.net, net)) {
                    Some(place) => *place = scales,
                    None => self.scales.push(scales),
                }
            }
            Payload::OtherNetTold { peg, shown, guessed } => {
                let (at, shown) = (step.at.clone(), Weight::from_logged(shown));
                let told = OtherNet { op, at, peg: *peg, shown, guessed: *guessed };
                match self.others.iter_mut().find(|other| other.peg == *peg) {
                    Some(place) => *place = told,
                    None => self.others.push(told),
                }
            }
            Payload::SectionSet { left, right } => {
                self.section = Some(Section { left: *left, right: *right });
            }
            Payload::MatchRuleSaid { text } => self.match_rule.clone_from(text),
            _ => {}
        }
    }

    /// The latest set-up counts. It keeps the link to the time line of the first set-up by the same phone, made by what the phone's
    /// clock showed: its times are of that clock, even if it had been reset and is put right by a later entry.
    fn set_match(&mut self, setup: MatchSetup, step: &Step) {
        let device = step.op.device;
        let tied = self.match_day.as_ref().filter(|m| m.device == device);
        let wall_ms = step.op.at.wall_ms;
        let put_right_ms = step.tapped.shown.wall_ms.saturating_sub(wall_ms);
        let (wall_at_start_ms, put_right_ms) = tied
            .map_or((wall_ms.saturating_sub(step.tapped.at_ms), put_right_ms), |m| {
                (m.wall_at_start_ms, m.put_right_ms)
            });
        let local = LocalTime::set_at(&step.op.at, step.tapped.at_ms);
        let op = step.op.id;
        self.match_day = Some(MatchDay { op, setup, device, wall_at_start_ms, put_right_ms, local });
    }

    /// Notes whether the clocks of the phone that set the match had changed by this entry.
    pub(super) fn note_local_time(&mut self, step: &Step) {
        if let Some(day) = self.match_day.as_mut().filter(|day| day.device == step.op.device) {
            day.local.note(&step.op.at, step.tapped.at_ms);
        }
    }

    /// Whether a fish was landed on this cast.
    pub fn has_landed(&self, cast: Uuid) -> bool {
        let landed = |end: &CastEnd| matches!(end.cause, EndCause::Landed { .. });
        self.casts.iter().any(|c| c.op == cast && c.end.as_ref().is_some_and(landed))
    }

    /// Ops about fish that have no landing in force.
    pub(super) fn fish_without_landing(&self) -> Vec<Uuid> {
        self.fish.iter().filter(|f| !self.has_landed(f.said.cast)).map(|f| f.op).collect()
    }

    /// Adds weights that were entered later to the landings.
    pub(super) fn weigh_landed(&mut self) {
        for cast in &mut self.casts {
            let Some(said) = self.fish.iter().find(|f| f.said.cast == cast.op).map(|f| &f.said) else {
                continue;
            };
            let Some(EndCause::Landed { fish }) = cast.end.as_mut().map(|end| &mut end.cause) else {
                continue;
            };
            let class = said.class.as_ref().map(|name| FishWeight::Class { name: name.clone() });
            if let Some(weight) = said.weight.clone().or(class) {
                *fish = Some(weight);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::written::{SESSION, Written};
    use super::super::{DoubtKind, catch, fold};
    use super::*;
    use restwater_log as log;
    use restwater_log::{EndSaid, FishSaid, WeightUnit};
    use restwater_match_day::rules::{MatchRules, NetHolds, NetRule};

    fn setup(all_out_ms: i64) -> MatchSetup {
        let net = |name: &str| NetRule { name: name.into(), limit: None, holds: NetHolds::Anything };
        MatchSetup {
            all_in_ms: 0,
            all_out_ms,
            offset_ms: 0,
            unit: WeightUnit::Drams,
            mark: Weight::Drams(16),
            rules: MatchRules { nets: vec![net("1"), net("2")], ..MatchRules::default() },
            classes: Vec::new(),
        }
    }

    fn land(day: &mut Written, s: i64) -> [Uuid; 2] {
        let cast = day.log(s, Payload::Cast { rod: 1 });
        day.log(s + 600, Payload::Bite { rod: 1 });
        [cast, day.log(s + 660, Payload::Landed { rod: 1, fish: None })]
    }

    fn said(cast: Uuid) -> FishSaid {
        FishSaid { cast, class: None, weight: None, net: None, put_back: false }
    }

    fn weighed(count: u32) -> FishWeight {
        FishWeight::Weighed { unit: WeightUnit::Drams, count }
    }

    #[test]
    fn the_last_match_set_counts_and_undo_restores_the_previous_one() {
        let mut day = Written::new(1);
        day.log(10, Payload::MatchSet(setup(1_000).logged()));
        let later = day.log(20, Payload::MatchSet(setup(2_000).logged()));
        let of = |day: &Written| fold(SESSION, &day.ops).match_day.map(|m| m.setup.all_out_ms);
        assert_eq!(of(&day), Some(2_000));
        day.undo(30, &[later]);
        assert_eq!(of(&day), Some(1_000));
        day.log(40, Payload::MatchOff);
        assert_eq!(of(&day), None);
    }

    #[test]
    fn a_weight_entered_later_is_the_weight_landed_and_can_be_corrected() {
        let mut day = Written::new(1);
        let [cast, _] = land(&mut day, 10);
        day.log(800, Payload::FishSet(FishSaid { class: Some("Carp".into()), ..said(cast) }));
        day.log(900, Payload::FishSet(FishSaid { weight: Some(weighed(1_100)), ..said(cast) }));
        let cause = |day: &Written| fold(SESSION, &day.ops).casts[0].end.clone().unwrap().cause;
        assert_eq!(cause(&day), EndCause::Landed { fish: Some(weighed(1_100)) });
        let last = day.log(950, Payload::FishSet(FishSaid { weight: Some(weighed(1_200)), ..said(cast) }));
        assert_eq!(cause(&day), EndCause::Landed { fish: Some(weighed(1_200)) });
        day.undo(960, &[last]);
        assert_eq!(cause(&day), EndCause::Landed { fish: Some(weighed(1_100)) });
    }

    #[test]
    fn a_fish_whose_landing_was_undone_is_a_doubt_and_is_not_in_the_catch() {
        let mut day = Written::new(1);
        let [cast, landed] = land(&mut day, 10);
        let about = day.log(800, Payload::FishSet(FishSaid { weight: Some(weighed(1_100)), ..said(cast) }));
        day.undo(900, &[landed]);
        let session = fold(SESSION, &day.ops);
        assert_eq!(session.doubts.last().map(|d| (d.op, d.kind)), Some((about, DoubtKind::NoLanding)));
        assert!(catch(&session).is_empty());
    }

    #[test]
    fn details_of_a_fish_are_kept_when_the_end_of_its_cast_is_corrected() {
        let mut day = Written::new(1);
        let [cast, _] = land(&mut day, 10);
        day.log(800, Payload::FishSet(FishSaid { weight: Some(weighed(1_100)), ..said(cast) }));
        day.amend(900, cast, Payload::CastEndSet { end: EndSaid::Landed, after_s: Some(500) });
        let session = fold(SESSION, &day.ops);
        assert_eq!(catch(&session)[0].weight, Some(weighed(1_100)));
        assert!(session.doubts.is_empty(), "{:?}", session.doubts);
        day.amend(950, cast, Payload::CastEndSet { end: EndSaid::Lost, after_s: None });
        let session = fold(SESSION, &day.ops);
        assert!(catch(&session).is_empty() && session.doubts.iter().any(|d| d.kind == DoubtKind::NoLanding));
    }

    #[test]
    fn a_net_weighed_again_is_corrected() {
        let mut day = Written::new(1);
        day.log(10, Payload::NetWeighed { net: "Net 1".into(), shown: log::Weight::Drams(100) });
        day.log(20, Payload::NetWeighed { net: " net 1".into(), shown: log::Weight::Drams(200) });
        let scales = fold(SESSION, &day.ops).scales;
        assert_eq!(scales.iter().map(|s| s.shown).collect::<Vec<_>>(), [Weight::Drams(200)]);
    }
}
