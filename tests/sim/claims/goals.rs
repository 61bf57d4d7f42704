//! The goals for the claims, each met or missed.

use super::super::goal::Goal;
use super::super::share::Share;
use super::scores::{Chances, Coming};
use super::weights::Weights;
use super::{AHEAD, Claims, MOMENTS, READ_AT};

/// Chances are within five points in every bin with enough casts, and their score is near that of somebody
/// who knows the water.
pub fn of_five_minutes(rows: &[(String, Claims)]) -> Vec<Goal> {
    let of = |(name, found): &(String, Claims)| {
        let worst = bins(found)
            .filter(|(_, _, bin)| bin.tells())
            .max_by(|a, b| a.2.off().abs().total_cmp(&b.2.off().abs()));
        let off = worst.map(|(moment, from, bin)| {
            let text = format!(
                "{name}: five minutes, the worst bin ({moment}, {from} min out): claimed {:.1}, came {:.1} ± {:.1} % (goal: within 5 points)",
                100.0 * bin.claimed.value(),
                100.0 * bin.came.value(),
                100.0 * bin.came.error()
            );
            Goal { text, held: bin.off().abs() <= 0.05 }
        });
        let lost = lost(found);
        let text = format!(
            "{name}: five minutes, lost {lost:.3} nats against somebody who knows the water (goal: at most 0.02)"
        );
        off.into_iter().chain([Goal { text, held: lost <= 0.02 }])
    };
    rows.iter().flat_map(of).collect()
}

/// All bins of a water: when, minutes out, and the claims.
pub fn bins(found: &Claims) -> impl Iterator<Item = (&'static str, f64, &Chances)> {
    MOMENTS
        .into_iter()
        .zip(&found.five)
        .flat_map(|(moment, bins)| READ_AT.into_iter().zip(bins).map(move |(from, bin)| (moment, from, bin)))
}

/// Nats lost per chance.
pub fn lost(found: &Claims) -> f64 {
    let sum: f64 = bins(found).map(|(_, _, bin)| bin.lost()).sum();
    sum / bins(found).map(|(_, _, bin)| bin.came.days()).sum::<f64>()
}

/// The band of the rate contains the truth as often as stated.
pub fn of_rates(rows: &[(String, Claims)]) -> Vec<Goal> {
    let of = |(name, found): &(String, Claims)| {
        let text = |i: usize| {
            let held: &Share = &found.rate_held[i];
            format!("{:.1} ± {:.1} % {}", 100.0 * held.value(), 100.0 * held.error(), MOMENTS[i + 1])
        };
        let held = found.rate_held.iter().all(|share| (0.90..=0.98).contains(&share.value()));
        let text = format!(
            "{name}: the 95 % band of the rate at the leave advised holds the truth on {} and {} (goal: 90 to 98 %)",
            text(0),
            text(1)
        );
        Goal { text, held }
    };
    rows.iter().map(of).collect()
}

/// Ranges of bites to come contain the count as often as stated, their means are right, and their score beats
/// that of a Poisson count.
pub fn of_coming(rows: &[(String, Claims)]) -> Vec<Goal> {
    rows.iter().flat_map(|(name, found)| of_water(name, &found.coming)).collect()
}

fn of_water(name: &str, coming: &[Coming; AHEAD.len()]) -> [Goal; 3] {
    let list = |of: &dyn Fn(&Coming) -> String| {
        coming
            .iter()
            .zip(AHEAD)
            .map(|(c, ahead)| format!("{} ({ahead})", of(c)))
            .collect::<Vec<_>>()
            .join(", ")
    };
    let held = format!(
        "{name}: bites to come lie in their range, held in 100 beside the nominal share: {} (goal: within 3)",
        list(&|c| format!(
            "{:.1} ± {:.1} of {:.1}",
            100.0 * c.held.value(),
            100.0 * c.held.error(),
            100.0 * c.nominal.value()
        ))
    );
    let mean = format!(
        "{name}: bites to come, foretold over come: {} % (goal: within 7)",
        list(&|c| format!("{:.1} ± {:.1}", 100.0 * c.mean.value(), 100.0 * c.mean.error()))
    );
    let score = format!(
        "{name}: bites to come, ranked score over a gamma-Poisson forecaster's: {} % (goal: at most 100)",
        list(&|c| format!("{:.1} ± {:.1}", 100.0 * c.crps.value(), 100.0 * c.crps.error()))
    );
    [
        Goal { text: held, held: coming.iter().all(|c| (c.held.value() - c.nominal.value()).abs() <= 0.03) },
        Goal { text: mean, held: coming.iter().all(|c| (c.mean.value() - 1.0).abs() <= 0.07) },
        Goal { text: score, held: coming.iter().all(|c| c.crps.value() <= 1.0) },
    ]
}

/// Ranges of the weight to come contain it eight times in ten.
pub fn of_weights(rows: &[Weights]) -> Vec<Goal> {
    let of = |row: &Weights| {
        let (held, error) = (row.held.value(), row.held.error());
        let text = format!(
            "weight to come after {} weighed fish, CV {}: the 80 % range holds {:.1} ± {:.1} % (goal: 77 to 83 %)",
            row.weighed,
            row.spread,
            100.0 * held,
            100.0 * error
        );
        Goal { text, held: (0.77..=0.83).contains(&held) }
    };
    rows.iter().map(of).collect()
}
