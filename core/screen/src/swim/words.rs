//! The sentences of the Swim screen: reasons for and against a cell, what is known of it, the next few, the drift.

use super::{OTHERS, SwimScreen, counts_in_yards};
use crate::Arg;
use crate::feed::feed_weight;
use crate::figures::{whole, whole_reached};
use crate::place::reach_words;
use restwater_swim::range::METRES_PER_YARD;
use restwater_swim::{Against, CellFigures, DriftAlong, DriftLean, NextSpot, Reason};

impl SwimScreen<'_> {
    pub(super) fn reason(&self, reason: &Reason) -> String {
        let say = |id: &str, args: &[(&str, Arg)]| self.words.say_with(id, args);
        match reason {
            Reason::NeverDisturbed => say("reason-never", &[]),
            Reason::QuietLately { target_min } => {
                say("reason-quiet", &[("minutes", Arg::Text(&whole(*target_min)))])
            }
            Reason::RestedLongEnough { minutes, .. } => {
                say("reason-rested", &[("minutes", Arg::Text(&whole_reached(*minutes)))])
            }
            Reason::NearLastBites { bites, metres, minutes_ago } => say(
                "reason-near-bites",
                &[
                    ("bites", Arg::Count(*bites as usize)),
                    ("distance", Arg::Text(&self.away(*metres, 0))),
                    ("minutes", Arg::Text(&whole_reached(*minutes_ago))),
                ],
            ),
            Reason::BehindLastBite { minutes_ago } => {
                say("reason-behind", &[("minutes", Arg::Text(&whole_reached(*minutes_ago)))])
            }
            Reason::LinersHere { liners } => {
                say("reason-liners-here", &[("liners", Arg::Count(*liners as usize))])
            }
            Reason::LinersBeside { liners } => {
                say("reason-liners-beside", &[("liners", Arg::Count(*liners as usize))])
            }
            Reason::ShownNear { times, metres, minutes_ago } => say(
                "reason-shown",
                &[
                    ("times", Arg::Count(*times as usize)),
                    ("metres", Arg::Count(libm::round(*metres) as usize)),
                    ("distance", Arg::Text(&self.away(*metres, 0))),
                    ("minutes", Arg::Text(&whole_reached(*minutes_ago))),
                ],
            ),
            Reason::Fed { minutes_ago } => {
                say("reason-fed", &[("minutes", Arg::Text(&whole_reached(*minutes_ago)))])
            }
            Reason::FishHere { of_100, per_hour, elsewhere_per_hour } => say(
                "reason-fish-here",
                &[
                    ("here", Arg::Count(*of_100 as usize)),
                    ("rate", Arg::Text(&self.words.figure(*per_hour, 1))),
                    ("other", Arg::Text(&self.words.figure(*elsewhere_per_hour, 1))),
                ],
            ),
            Reason::NotTried { of_100, per_hour } => self.told("reason-not-tried", *of_100, *per_hour),
            Reason::UsualStart { .. } => say("reason-usual-start", &[]),
        }
    }

    pub(super) fn against(&self, against: &Against) -> String {
        let say = |id: &str, args: &[(&str, Arg)]| self.words.say_with(id, args);
        match against {
            Against::BaitOut => say("against-bait-out", &[]),
            Against::RestedTooShort { minutes, target_min } => say(
                "against-rested",
                &[
                    ("minutes", Arg::Text(&whole_reached(*minutes))),
                    ("target", Arg::Text(&whole(*target_min))),
                ],
            ),
            Against::MaybeDisturbed { casts } => {
                say("against-maybe", &[("casts", Arg::Count((*casts).round().max(1.0) as usize))])
            }
            Against::NothingHere { casts, minutes, .. } if self.is_early() => say(
                "against-nothing-yet",
                &[("casts", Arg::Count(*casts as usize)), ("minutes", Arg::Text(&whole(*minutes)))],
            ),
            Against::NothingHere { casts, minutes, of_100, per_hour } => say(
                "against-nothing-here",
                &[
                    ("casts", Arg::Count(*casts as usize)),
                    ("minutes", Arg::Text(&whole(*minutes))),
                    ("here", Arg::Count(*of_100 as usize)),
                    ("rate", Arg::Text(&self.words.figure(*per_hour, 1))),
                ],
            ),
            Against::FishAway { of_100, per_hour } => self.told("against-fish-away", *of_100, *per_hour),
            Against::NearBoundary { metres } => {
                say("against-boundary", &[("distance", Arg::Text(&self.away(*metres, 1)))])
            }
            Against::KeptBack { minutes } => {
                say("against-kept", &[("minutes", Arg::Text(&whole_reached(*minutes)))])
            }
            Against::BeyondCast { .. } => say("against-beyond", &[]),
            Against::NearHazard { name, metres } => {
                let unnamed = self.words.say("against-hazard-unnamed");
                let name = if name.is_empty() { &unnamed } else { name };
                say(
                    "against-hazard",
                    &[("name", Arg::Text(name)), ("distance", Arg::Text(&self.away(*metres, 1)))],
                )
            }
        }
    }

    /// A distance in the unit of the rod's reach.
    fn away(&self, metres: f64, decimals: usize) -> String {
        if counts_in_yards(self.session, self.rod) {
            let yards = self.words.figure(metres / METRES_PER_YARD, decimals);
            return self.words.say_with("swim-yards", &[("yards", Arg::Text(&yards))]);
        }
        let metres = self.words.figure(metres, decimals);
        self.words.say_with("swim-metres", &[("metres", Arg::Text(&metres))])
    }

    /// A share of spots with fish, and what a cast there is expected to bring.
    fn told(&self, id: &str, of_100: u32, per_hour: f64) -> String {
        let rate = self.words.figure(per_hour, 1);
        self.words.say_with(id, &[("here", Arg::Count(of_100 as usize)), ("rate", Arg::Text(&rate))])
    }

    /// What is known of a cell; of feed and of fish that showed only where there was any.
    pub(super) fn cell(&self, figures: &CellFigures) -> String {
        let mut said = self.fished_words(figures);
        if let Some(minutes) = figures.fed_min {
            let (minutes, weight) =
                (whole_reached(minutes), feed_weight(self.words, self.weights, figures.fed_mg));
            let args = [("minutes", Arg::Text(&minutes)), ("weight", Arg::Text(&weight))];
            said = self.words.sentences(&[&said, &self.words.say_with("cell-fed", &args)]);
        }
        if let Some(minutes) = figures.shown_min {
            let minutes = whole_reached(minutes);
            let args = [("times", Arg::Count(figures.shown as usize)), ("minutes", Arg::Text(&minutes))];
            said = self.words.sentences(&[&said, &self.words.say_with("cell-shown", &args)]);
        }
        said
    }

    fn fished_words(&self, figures: &CellFigures) -> String {
        self.words.say_with(
            "cell-figures",
            &[
                ("casts", Arg::Count(figures.casts as usize)),
                ("bites", Arg::Count(figures.bites as usize)),
                ("minutes", Arg::Text(&whole(figures.wait_min))),
                ("lost", Arg::Count(figures.lost as usize)),
                ("liners", Arg::Count(figures.liners as usize)),
            ],
        )
    }

    pub(super) fn others(&self) -> Vec<String> {
        if self.all_out.is_some() {
            return Vec::new();
        }
        let line = |next: &NextSpot| {
            let is_told = |a: &&Against| matches!(a, Against::NothingHere { .. } | Against::FishAway { .. });
            let against = next.against.iter().filter(is_told).map(|a| self.against(a));
            let reasons: Vec<String> = next.reasons.iter().map(|r| self.reason(r)).chain(against).collect();
            let aimed = self.words.listed(&[self.direction(next), reach_words(self.words, self.reach(next))]);
            format!("{}.", self.words.labelled(&aimed, &self.words.apart(&reasons)))
        };
        self.next.ranked.iter().filter(|next| Some(next.cell) != self.ring).take(OTHERS).map(line).collect()
    }

    pub(super) fn drift_words(&self) -> Vec<String> {
        let along = |along: &DriftAlong, up: &str, down: &str| -> Option<String> {
            along.bites.as_ref()?;
            match along.lean {
                DriftLean::Up => Some(self.words.say(up)),
                DriftLean::Down => Some(self.words.say(down)),
                DriftLean::WithTheCasts => Some(self.words.say("drift-with-casts")),
                DriftLean::CantTellYet => None,
            }
        };
        let mut lines: Vec<String> = Vec::new();
        lines.extend(along(&self.drift.out, "drift-out", "drift-in"));
        lines.extend(along(&self.drift.across, "drift-right", "drift-left"));
        if lines.is_empty() {
            lines.push(self.words.say("drift-cant-tell"));
        }
        lines
    }

    /// The evidence for the words about the drift, for the full list.
    pub(super) fn drift_figures(&self) -> Vec<String> {
        let along = |way: &str, along: &DriftAlong| -> Option<String> {
            let trend = along.bites.as_ref().filter(|_| along.lean != DriftLean::CantTellYet)?;
            let (tau, p) = (self.words.figure(trend.tau_b, 2), self.words.figure(along.any_look_p, 3));
            let args = [
                ("way", Arg::Text(way)),
                ("tau", Arg::Text(&tau)),
                ("p", Arg::Text(&p)),
                ("n", Arg::Count(trend.n as usize)),
            ];
            Some(self.words.say_with("drift-figures", &args))
        };
        [along("out", &self.drift.out), along("across", &self.drift.across)].into_iter().flatten().collect()
    }
}
