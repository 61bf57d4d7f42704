//! Where next: cells ranked by stated reasons, each with its figures.

use super::cells::{Cell, CellId, Swim};
use super::fished::{CellFigures, CellState, SwimFigures, known_by, minutes_between};
use super::frame::Spot;
use super::input::CastAt;
use super::reasons::{Against, Reason};
use super::worth::SpotsWorth;
use serde::{Deserialize, Serialize};
use std::cmp::Ordering;

/// Fewer casts than this are expected to have reached water that is probably undisturbed: the chance of any is
/// no higher than that (Boole's inequality).
const NOT_LIKELY: f64 = 0.5;

/// A spot with the reasons for and against it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct NextSpot {
    /// The cell.
    pub cell: CellId,
    /// Where to aim.
    pub spot: Spot,
    /// The reasons for it.
    pub reasons: Vec<Reason>,
    /// The reasons against it.
    pub against: Vec<Against>,
    /// The figures behind it.
    pub figures: CellFigures,
    /// Distance to the latest bite, metres; `None` before the first.
    pub last_bite_m: Option<f64>,
}

/// Why it is time to go into kept-back water.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum GoInBecause {
    /// This number of casts in a row ended without a bite.
    NoBites {
        /// How many.
        casts: u32,
    },
    /// No other water that can be cast to has rested.
    NothingElseRested,
    /// It is the time that the angler planned for it.
    Planned,
}

/// Kept-back water that has rested and is wanted now.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct GoIn {
    /// The cell to release.
    pub cell: CellId,
    /// For how long it was kept back, minutes.
    pub minutes: f64,
    /// Why.
    pub because: GoInBecause,
}

/// From this many casts in a row without a bite on, the record says that the fish are elsewhere: the project's own choice,
/// no source.
const DRY_CASTS: usize = 4;

/// Spots in order, and those set aside.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct WhereNext {
    /// Best first: what a cast is worth where the record tells cells apart, in tenths of a bite an hour; then
    /// most reasons less objections, then nearest to the latest bite (before the first: to the usual start), then longest
    /// rested, then straightest out, then left before right.
    pub ranked: Vec<NextSpot>,
    /// Not proposed: kept back, out of reach or by a hazard.
    pub set_aside: Vec<NextSpot>,
    /// Bites this rests on.
    pub bites: u32,
    /// Kept-back water to go into now, if there is any.
    pub go_in: Option<GoIn>,
}

/// Whether nobody can cast there, kept back or not.
fn is_closed(against: &Against) -> bool {
    matches!(against, Against::BeyondCast { .. } | Against::NearHazard { .. } | Against::BaitOut)
}

/// Kept-back water in the order in which one goes into it: nearest to the latest bite, then kept the longest, then straightest out.
fn nearer_kept(a: &NextSpot, b: &NextSpot) -> Ordering {
    let away = |n: &NextSpot| n.last_bite_m.unwrap_or(0.0);
    let kept = |n: &NextSpot| n.figures.kept_back_min.unwrap_or(0.0);
    let aside = |n: &NextSpot| n.spot.bearing_deg.abs();
    away(a)
        .total_cmp(&away(b))
        .then_with(|| kept(b).total_cmp(&kept(a)))
        .then_with(|| aside(a).total_cmp(&aside(b)))
        .then_with(|| a.cell.cmp(&b.cell))
}

/// A bite: where it was and when.
struct Bite {
    spot: Spot,
    minutes_ago: f64,
}

impl Swim {
    /// Ranks the cells of the swim for the next cast by reasons; promises nothing.
    pub fn where_next(&self, figures: &SwimFigures) -> WhereNext {
        self.where_next_by_worth(figures, None)
    }

    /// The same with what the record says about fish at the cells, if it says anything.
    pub fn where_next_by_worth(&self, figures: &SwimFigures, worth: Option<&SpotsWorth>) -> WhereNext {
        let bites = self.bites_until(figures.at_ms);
        let mut ranked = Vec::new();
        let mut set_aside = Vec::new();
        for (cell, known) in self.cells().iter().zip(&figures.cells) {
            let Some(spot) = cell.aim else { continue };
            let next = self.weigh(cell, spot, known, &bites, figures);
            let barred = next.against.iter().any(|a| {
                let is_mild = matches!(
                    a,
                    Against::BaitOut
                        | Against::RestedTooShort { .. }
                        | Against::MaybeDisturbed { .. }
                        | Against::NearBoundary { .. }
                );
                !is_mild
            });
            if barred { set_aside.push(next) } else { ranked.push(next) }
        }
        let worth_of = |n: &NextSpot| worth.map_or(0.0, |worth| worth.of_cast(n.cell));
        restwater_sorting::by(&mut ranked, |a, b| {
            worth_of(b).total_cmp(&worth_of(a)).then_with(|| self.before(a, b))
        });
        let go_in = self.go_in(figures, &ranked, &set_aside);
        // Added after the sorting: a figure ranks a cell by itself and is not one more reason in the count.
        for next in ranked.iter_mut().chain(&mut set_aside) {
            next.reasons.splice(0..0, worth.and_then(|worth| worth.reason(next.cell)));
            next.against.splice(0..0, worth.and_then(|worth| worth.objection(next.cell)));
            let fed = next.figures.fed_min.filter(|minutes| *minutes <= self.input().bite_memory_min);
            next.reasons.splice(0..0, fed.map(|minutes_ago| Reason::Fed { minutes_ago }));
        }
        let known = self.casts_until(figures.at_ms).filter(|c| known_by(c, figures.at_ms));
        WhereNext { ranked, set_aside, bites: known.map(|c| c.bites).sum(), go_in }
    }

    /// Kept-back water that has rested, if the rest of the swim has nothing to offer.
    fn go_in(&self, figures: &SwimFigures, ranked: &[NextSpot], set_aside: &[NextSpot]) -> Option<GoIn> {
        let target = self.input().rest_target_min;
        let free = |n: &NextSpot| n.figures.state(target) == CellState::Free;
        let because = if !ranked.is_empty() && !ranked.iter().any(free) {
            GoInBecause::NothingElseRested
        } else {
            GoInBecause::NoBites { casts: self.dry_casts(figures.at_ms)? }
        };
        let only_kept = |n: &&NextSpot| n.against.iter().all(|a| matches!(a, Against::KeptBack { .. }));
        let rested = |n: &&NextSpot| n.figures.kept_back_min.is_some_and(|m| m >= target) && free(n);
        let best = set_aside.iter().filter(only_kept).filter(rested).min_by(|a, b| nearer_kept(a, b))?;
        Some(GoIn { cell: best.cell, minutes: best.figures.kept_back_min?, because })
    }

    /// The kept-back water to go into at the time that was planned for it: rested or not, but rested water first.
    pub fn go_in_as_planned(&self, next: &WhereNext) -> Option<GoIn> {
        let target = self.input().rest_target_min;
        let free = |n: &NextSpot| n.figures.state(target) == CellState::Free;
        let only_kept = |n: &&NextSpot| {
            n.against.iter().any(|a| matches!(a, Against::KeptBack { .. }))
                && !n.against.iter().any(is_closed)
        };
        let kept = next.set_aside.iter().filter(only_kept);
        let best = kept.min_by(|a, b| free(b).cmp(&free(a)).then_with(|| nearer_kept(a, b)))?;
        Some(GoIn { cell: best.cell, minutes: best.figures.kept_back_min?, because: GoInBecause::Planned })
    }

    /// How many casts have ended without a bite since the last bite of any rod, up to a moment; none below [`DRY_CASTS`].
    fn dry_casts(&self, at_ms: i64) -> Option<u32> {
        let with_bite =
            self.casts_until(at_ms).filter(|c| c.bites > 0 && known_by(c, at_ms)).map(CastAt::bite_time);
        let others = self.input().other_bites_ms.iter().copied().filter(|bite| *bite <= at_ms);
        let last_bite = with_bite.chain(others).max();
        let dry = |c: &&CastAt| {
            let ended = c.end_ms.filter(|end| c.end_seen && *end <= at_ms);
            c.bites == 0 && ended.is_some_and(|end| last_bite.is_none_or(|bite| end > bite))
        };
        let dry = self.casts_until(at_ms).filter(dry).count();
        (dry >= DRY_CASTS).then_some(dry as u32)
    }

    /// Bites by a moment, latest first.
    fn bites_until(&self, at_ms: i64) -> Vec<Bite> {
        let mut casts: Vec<&CastAt> =
            self.casts_until(at_ms).filter(|c| c.bites > 0 && known_by(c, at_ms)).collect();
        restwater_sorting::by_key(&mut casts, |c| std::cmp::Reverse(c.bite_time()));
        let bite = |c: &&CastAt| Bite { spot: c.spot, minutes_ago: minutes_between(c.bite_time(), at_ms) };
        casts.iter().map(bite).collect()
    }

    fn weigh(
        &self,
        cell: &Cell,
        spot: Spot,
        known: &CellFigures,
        bites: &[Bite],
        figures: &SwimFigures,
    ) -> NextSpot {
        let mut reasons = Vec::new();
        let mut against = self.objections(spot, known);
        let target_min = self.input().rest_target_min;
        match known.rested_min {
            // Water with a bait in it doesn't rest, however long the bait has lain there.
            _ if known.out_now => against.push(Against::BaitOut),
            Some(minutes) if minutes < target_min => {
                against.push(Against::RestedTooShort { minutes, target_min });
            }
            _ if known.lately >= NOT_LIKELY => {
                against.push(Against::MaybeDisturbed { casts: known.lately });
            }
            None if known.disturbances < NOT_LIKELY => reasons.push(Reason::NeverDisturbed),
            None => reasons.push(Reason::QuietLately { target_min }),
            Some(minutes) => {
                reasons.push(Reason::RestedLongEnough { minutes, target_min });
            }
        }
        reasons.extend(self.near_bites(spot, bites));
        reasons.extend(self.behind_last_bite(cell.id, bites));
        reasons.extend(self.liners_round(cell.id, known, figures));
        reasons.extend(self.shown_near(spot, figures.at_ms));
        if let Some(band) = self.input().usual_start.filter(|_| bites.is_empty()) {
            let middle = f64::midpoint(band.from_m, band.to_m);
            if self.row_of(middle) == Some(cell.id.row) {
                reasons.push(Reason::UsualStart { band });
            }
        }
        let last_bite_m = bites.first().map(|b| b.spot.point().distance(spot.point()));
        NextSpot { cell: cell.id, spot, reasons, against, figures: *known, last_bite_m }
    }

    fn objections(&self, spot: Spot, known: &CellFigures) -> Vec<Against> {
        let mut against = Vec::new();
        if let Some(minutes) = known.kept_back_min {
            against.push(Against::KeptBack { minutes });
        }
        if let Some(castable_m) = self.input().castable_m.filter(|m| spot.range_m > *m) {
            against.push(Against::BeyondCast { range_m: spot.range_m, castable_m });
        }
        if let Some(metres) = self.boundary_distance(spot).filter(|m| *m < self.input().disturbance.unknown_m)
        {
            against.push(Against::NearBoundary { metres });
        }
        for hazard in &self.input().hazards {
            let metres = hazard.spot.point().distance(spot.point());
            if metres < hazard.clear_m {
                against.push(Against::NearHazard { name: hazard.name.clone(), metres });
            }
        }
        against
    }

    fn near_bites(&self, spot: Spot, bites: &[Bite]) -> Option<Reason> {
        let input = self.input();
        let near = bites.iter().filter(|b| b.minutes_ago <= input.bite_memory_min).filter_map(|b| {
            let metres = b.spot.point().distance(spot.point());
            (metres <= input.near_m).then_some((metres, b.minutes_ago))
        });
        let near: Vec<_> = near.collect();
        let &(metres, minutes_ago) = near.first()?;
        Some(Reason::NearLastBites { bites: near.len() as u32, metres, minutes_ago })
    }

    fn behind_last_bite(&self, id: CellId, bites: &[Bite]) -> Option<Reason> {
        let last = bites.first().filter(|b| b.minutes_ago <= self.input().bite_memory_min)?;
        let bitten = self.cell_of(last.spot)?;
        (id.column == bitten.column && id.row == bitten.row + 1)
            .then_some(Reason::BehindLastBite { minutes_ago: last.minutes_ago })
    }

    fn liners_round(&self, id: CellId, known: &CellFigures, figures: &SwimFigures) -> Vec<Reason> {
        let mut reasons = Vec::new();
        if known.liners > 0 {
            reasons.push(Reason::LinersHere { liners: known.liners });
        }
        let sides = [id.column.checked_sub(1), id.column.checked_add(1)];
        let beside = sides.into_iter().flatten().map(|column| CellId { column, ..id });
        let liners = beside.filter_map(|c| self.place(c)).map(|i| figures.cells[i].liners).sum();
        if liners > 0 {
            reasons.push(Reason::LinersBeside { liners });
        }
        reasons
    }

    fn before(&self, a: &NextSpot, b: &NextSpot) -> Ordering {
        let weight = |n: &NextSpot| n.reasons.len() as f64 - n.against.len() as f64;
        let start = self.input().usual_start.map(|s| f64::midpoint(s.from_m, s.to_m));
        let away = |n: &NextSpot| n.last_bite_m.or(start.map(|m| (n.spot.range_m - m).abs())).unwrap_or(0.0);
        let rested = |n: &NextSpot| n.figures.rested_min.unwrap_or(f64::INFINITY);
        weight(b)
            .total_cmp(&weight(a))
            .then_with(|| away(a).total_cmp(&away(b)))
            .then_with(|| rested(b).total_cmp(&rested(a)))
            .then_with(|| a.spot.bearing_deg.abs().total_cmp(&b.spot.bearing_deg.abs()))
            .then_with(|| a.cell.cmp(&b.cell))
    }
}
