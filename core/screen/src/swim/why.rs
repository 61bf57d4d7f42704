//! Why the cell is proposed, as the sentences under the headline, and how many bites that rests on.

use super::SwimScreen;
use crate::figures::whole;
use crate::{Arg, sentence_case};
use restwater_session::on_swim;
use restwater_swim::{CellState, GoInBecause, NextSpot, Reason};

impl SwimScreen<'_> {
    /// "Rested 48 min; a liner beside it. 3 bites so far: too few to be sure."
    pub(super) fn why(&self, next: &NextSpot) -> String {
        let mut reasons = self.reasons(next);
        let (go_in, moving, leaving) = (self.go_in_because(next), self.moving(next), self.leaving(next));
        reasons.truncate(if go_in.is_some() || moving.is_some() || leaving.is_some() { 1 } else { 2 });
        reasons.extend(go_in.or(moving));
        let reasons = self.words.apart(&reasons);
        let first = if reasons.is_empty() {
            self.words.say("swim-no-reason")
        } else {
            format!("{}.", sentence_case(&reasons))
        };
        self.words.sentences(&[&first, &leaving.unwrap_or_default(), &self.bites()])
    }

    /// How many bites the map rests on, and how many are not on it.
    fn bites(&self) -> String {
        let (on_map, elsewhere) = (self.next.bites as usize, self.bites_without_a_spot());
        let on_map_words = self.words.say_with("swim-bites", &[("bites", Arg::Count(on_map))]);
        if elsewhere == 0 {
            return on_map_words;
        }
        let elsewhere = self.words.say_with("swim-bites-no-spot", &[("bites", Arg::Count(elsewhere))]);
        if on_map == 0 { elsewhere } else { self.words.sentences(&[&on_map_words, &elsewhere]) }
    }

    /// Bites up to the moment shown whose casts had no spot.
    pub(super) fn bites_without_a_spot(&self) -> usize {
        let bites = self.swim.input().other_bites_ms.iter();
        bites.filter(|bite| **bite <= self.figures.at_ms).count()
    }

    /// Why the proposal leaves a spot that gives bites for water that wasn't fished: nobody knows, and that is said.
    fn leaving(&self, next: &NextSpot) -> Option<String> {
        let last = self.find(self.last_cell()?)?;
        let gives =
            last.figures.bites > 0 && last.reasons.iter().any(|r| matches!(r, Reason::NearLastBites { .. }));
        let proposed = self.ring == Some(next.cell) && !self.is_sent_to(next);
        (proposed && gives && last.cell != next.cell && next.figures.casts == 0)
            .then(|| self.words.say("swim-leaving"))
    }

    /// Whether the angler chose the cell for the rod's next cast.
    fn is_sent_to(&self, next: &NextSpot) -> bool {
        let sent = self.session.rod(self.rod).and_then(|rod| rod.spot.as_ref());
        sent.and_then(|spot| self.swim.cell_of(on_swim(spot))) == Some(next.cell)
    }

    /// Why it is time to go into kept-back water, if the cell is in it.
    fn go_in_because(&self, next: &NextSpot) -> Option<String> {
        let go_in = self.next.go_in.filter(|go_in| go_in.cell == next.cell)?;
        Some(match go_in.because {
            GoInBecause::NoBites { casts } => {
                self.words.say_with("swim-go-in-dry", &[("casts", Arg::Count(casts as usize))])
            }
            GoInBecause::NothingElseRested => self.words.say("swim-go-in-rest"),
            GoInBecause::Planned => self.words.say("swim-go-in-plan"),
        })
    }

    /// Says that moving is better than waiting: this water is rested, while that of the last cast is not, and
    /// had no bite lately.
    fn moving(&self, next: &NextSpot) -> Option<String> {
        let (target, last) = (self.swim.input().rest_target_min, self.find(self.last_cell()?)?);
        let bitten = last.reasons.iter().any(|r| matches!(r, Reason::NearLastBites { .. }));
        let waits = self.ring == Some(next.cell) && next.cell != last.cell && !bitten;
        let left = target - last.figures.rested_min.filter(|_| !last.figures.out_now)?;
        (waits && left >= 1.0 && next.figures.state(target) == CellState::Free)
            .then(|| self.words.say_with("swim-moving", &[("minutes", Arg::Text(&whole(left)))]))
    }
}
