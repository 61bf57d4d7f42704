//! Did it matter, over days: one pair of values of one factor, and the days on which the two were alternated.
//!
//! One day has a dozen bites, which can't show a ratio of two. With another day on the same question the
//! evidence multiplies. Every day, and every rod and spot of it, has its own rate; they share only the ratio
//! r of the two sides. So for each r, the bet over days is the product of the bets of their strata, and the
//! mean over r is taken last:
//!
//!   e = E_r [ product over days and strata of r^x_A (T / (r T_A + T_B))^x ].
//!
//! If the sides are alike this ever reaches 1 / alpha with probability alpha at most, however many days are
//! fished and whenever it is read (Ville 1939; see [`any_look_p`](crate::any_look_p) for one day). Besides
//! the minutes, the bets use the waits by their partial likelihood, compared at equal waits (safe log-rank:
//! ter Schure, Pérez-Ortiz, Ly and Grünwald 2020; with casts that begin one after another it holds nearly,
//! not exactly), and the casts in pairs, with or without a bite (safe test of two proportions: Turner, Ly and
//! Grünwald 2024). Half of the stake is on the minutes and half on the waits, and their mean decides: the
//! minutes find most where bites come evenly, the waits where bites come at one time after the splash, and a
//! mean of fair bets is fair. The casts alone find less than either in nearly all cases and are only shown.
//!
//! All three assume that the bites of a day are independent, but fish feed in spells. So a clear answer also
//! needs what a single day needs: a permutation of whole blocks within their days ([`permutation_p`]), and a
//! posterior that allows for what spells alone could have done on each day
//! ([`spell_variance`](crate::spell_variance)).
//!
//! A day counts if the two were changed back and forth often enough on it, and nothing else was changed with
//! them each time. Otherwise the hour, or the other factor, may be the reason, and many such days would only
//! make it look more certain.

mod by_casts;
mod curve;
mod day;
mod more_days;

pub use day::{Compared, DayOfQuestion, SideCount, compared, may_be_asked};
pub use more_days::{MOST_DAYS, MoreDays, more_days};

use super::alternation::Side;
use super::belief::Belief;
use super::permutation::{Stratum, permutation_p};
use super::verdict::{FEWEST_BITES, FEWEST_CASTS, LEANS_FROM, is_clear};
use curve::Curve;
use libm::exp;
use serde::{Deserialize, Serialize};

/// The verdict on a question.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum OverDays {
    /// "Can't tell yet": the default.
    CantTellYet,
    /// "Leans to ...".
    LeansTo(Side),
    /// "... clearly better over these days".
    ClearlyBetter(Side),
}

/// The present value of one unit staked against "they are alike", by each method of comparison.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stakes {
    /// By bites in minutes out.
    pub minutes: f64,
    /// By the waits, compared at equal waits.
    pub waits: f64,
    /// By casts with a bite, in pairs.
    pub casts: f64,
    /// Half by the minutes, half by the waits: the stake that decides.
    pub decides: f64,
}

/// The result for a question.
#[derive(Debug, Clone, PartialEq)]
pub struct Question {
    /// Days that count.
    pub days: usize,
    /// Days on which the two were compared, but changed too seldom, or together with something else.
    pub other_days: usize,
    /// What each side brought on the days that count; on all where none does.
    pub sides: [SideCount; 2],
    /// The position of the question in the order in which they first counted, from 1. It determines the
    /// question's share of the error.
    pub place: usize,
    /// The present value of the stakes.
    pub stakes: Stakes,
    /// One over the stake that decides, times k (k + 1) for the k-th question, at most 1. It may be read at
    /// any look on any day.
    pub any_look_p: f64,
    /// p of the permutation of whole blocks within their days; 1 if there are no blocks.
    pub block_p: f64,
    /// Ratio of the rates A / B if they differ at all: the posterior median by the minutes, between its 95 %
    /// limits.
    pub ratio: [f64; 3],
    /// Which side is better: the smaller claim of minutes and waits.
    pub belief: Belief,
    /// The verdict.
    pub verdict: OverDays,
}

impl Question {
    /// Casts on both sides.
    pub fn casts(&self) -> usize {
        self.sides[0].casts + self.sides[1].casts
    }

    /// The side to begin with next time: the one with fewer casts.
    pub fn first_next_time(&self) -> Side {
        if self.sides[1].casts < self.sides[0].casts { Side::B } else { Side::A }
    }
}

/// Evaluates a question over the days so far; `place` is its position among all questions, from 1. `seed`
/// determines the random permutations.
pub fn question(days: &[DayOfQuestion], place: usize, seed: u64) -> Question {
    let place = place.max(1);
    let counted: Vec<&DayOfQuestion> = days.iter().filter(|day| day.counts).collect();
    let stakes = stakes(days);
    let belief = belief(&counted);
    let of = |side: usize| -> SideCount {
        if counted.is_empty() {
            days.iter().map(|day| day.sides[side]).sum()
        } else {
            counted.iter().map(|day| day.sides[side]).sum()
        }
    };
    let mut question = Question {
        days: counted.len(),
        other_days: days.len() - counted.len(),
        sides: [of(0), of(1)],
        place,
        stakes,
        any_look_p: (share_of_error(place) / stakes.decides).min(1.0),
        block_p: block_p(&counted, seed),
        ratio: counted.iter().map(|day| &day.minutes_blurred).sum::<Curve>().ratio(),
        belief,
        verdict: OverDays::CantTellYet,
    };
    question.verdict = verdict(&question);
    question
}

/// The present value of the stakes over these days; a day that doesn't count stakes nothing.
pub fn stakes(days: &[DayOfQuestion]) -> Stakes {
    let counted = || days.iter().filter(|day| day.counts);
    let sum = |of: fn(&DayOfQuestion) -> &Curve| exp(counted().map(of).sum::<Curve>().ln_e_value());
    let (minutes, waits) = (sum(|day| &day.minutes), sum(|day| &day.waits));
    let casts = by_casts::e_value(counted().map(|day| day.pairs.as_slice()));
    Stakes { minutes, waits, casts, decides: 0.5 * (minutes + waits) }
}

/// How many times larger the stake must be for the k-th question than for a single one.
fn share_of_error(place: usize) -> f64 {
    let k = place as f64;
    k * (k + 1.0)
}

fn belief(counted: &[&DayOfQuestion]) -> Belief {
    let by = |of: fn(&DayOfQuestion) -> &Curve| counted.iter().map(|day| of(day)).sum::<Curve>().belief();
    by(|day| &day.minutes_blurred).more_cautious(by(|day| &day.waits_blurred))
}

fn block_p(counted: &[&DayOfQuestion], seed: u64) -> f64 {
    let strata: Vec<Stratum> = counted.iter().filter_map(|day| day.blocks.clone()).collect();
    if strata.is_empty() {
        return 1.0;
    }
    permutation_p(&strata, seed).map_or(1.0, |p| p.two_sided)
}

fn verdict(question: &Question) -> OverDays {
    let [a, b] = question.sides;
    if question.days == 0 || a.bites + b.bites < FEWEST_BITES || a.casts.min(b.casts) < FEWEST_CASTS {
        return OverDays::CantTellYet;
    }
    let (side, p) = question.belief.better();
    if p < LEANS_FROM || p.is_nan() {
        OverDays::CantTellYet
    } else if is_clear(question.belief, question.block_p, question.any_look_p) {
        OverDays::ClearlyBetter(side)
    } else {
        OverDays::LeansTo(side)
    }
}

#[cfg(test)]
mod tests;
