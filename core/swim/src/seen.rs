//! Events other than casts and bites: feed that went in, and fish that showed themselves. Each is marked in
//! its cell.

use super::cells::Swim;
use super::fished::{CellFigures, minutes_between};
use super::frame::Spot;
use super::reasons::Reason;

impl Swim {
    /// Adds feed and sightings up to a moment to their cells.
    pub(crate) fn add_seen(&self, at_ms: i64, cells: &mut [CellFigures]) {
        let place = |spot: Spot| self.cell_of(spot).and_then(|id| self.place(id));
        for fed in self.input().fed.iter().filter(|fed| fed.at_ms <= at_ms) {
            let Some(cell) = place(fed.spot).and_then(|place| cells.get_mut(place)) else { continue };
            cell.fed_mg = cell.fed_mg.saturating_add(fed.mg);
            cell.fed_min = Some(shorter(cell.fed_min, minutes_between(fed.at_ms, at_ms)));
        }
        for shown in self.input().shown.iter().filter(|shown| shown.at_ms <= at_ms) {
            let Some(cell) = place(shown.spot).and_then(|place| cells.get_mut(place)) else { continue };
            cell.shown = cell.shown.saturating_add(1);
            cell.shown_min = Some(shorter(cell.shown_min, minutes_between(shown.at_ms, at_ms)));
        }
    }

    /// Fish that showed themselves near a spot, counted for as long as a bite is remembered: the latest of
    /// them, and how many.
    pub(crate) fn shown_near(&self, spot: Spot, at_ms: i64) -> Option<Reason> {
        let input = self.input();
        let near = input.shown.iter().filter(|shown| shown.at_ms <= at_ms).filter_map(|shown| {
            let (metres, minutes_ago) =
                (shown.spot.point().distance(spot.point()), minutes_between(shown.at_ms, at_ms));
            (metres <= input.near_m && minutes_ago <= input.bite_memory_min).then_some((minutes_ago, metres))
        });
        let near: Vec<(f64, f64)> = near.collect();
        let &(minutes_ago, metres) = near.iter().min_by(|a, b| a.0.total_cmp(&b.0))?;
        Some(Reason::ShownNear { times: near.len() as u32, metres, minutes_ago })
    }
}

/// The shorter of two elapsed times.
fn shorter(before: Option<f64>, minutes: f64) -> f64 {
    before.map_or(minutes, |before| before.min(minutes))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::input::{Band, FedAt, ShownAt, SwimInput};

    const MIN: i64 = 60_000;

    fn at(range_m: f64) -> Spot {
        Spot { bearing_deg: 0.0, range_m }
    }

    fn swim() -> Swim {
        let fed = |range_m, minute: i64, mg| FedAt { spot: at(range_m), at_ms: minute * MIN, mg };
        let shown = |range_m, minute: i64| ShownAt { spot: at(range_m), at_ms: minute * MIN };
        let input = SwimInput {
            bands: vec![Band { from_m: 10.0, to_m: 60.0 }],
            fed: vec![fed(30.0, 20, 50), fed(30.0, 10, 70), fed(70.0, 10, 9)],
            shown: vec![shown(50.0, 5), shown(50.0, 30), shown(50.0, 90)],
            ..SwimInput::default()
        };
        Swim::new(input).unwrap()
    }

    #[test]
    fn feed_is_added_up_where_it_went_in_and_replayed() {
        let swim = swim();
        let place = swim.place(swim.cell_of(at(30.0)).unwrap()).unwrap();
        let of = |minute: i64| {
            let cell = swim.figures(minute * MIN).cells[place];
            (cell.fed_mg, cell.fed_min)
        };
        assert_eq!(of(5), (0, None));
        assert_eq!(of(15), (70, Some(5.0)));
        assert_eq!(of(50), (120, Some(30.0)));
        let all: u64 = swim.figures(50 * MIN).cells.iter().map(|cell| cell.fed_mg).sum();
        assert_eq!(all, 120, "what went in beyond the swim is in no cell of it");
    }

    #[test]
    fn fish_that_showed_themselves_are_a_reason_for_as_long_as_a_bite_is_remembered() {
        let swim = swim();
        let reason = |minute: i64, range_m| swim.shown_near(at(range_m), minute * MIN);
        assert_eq!(reason(4, 50.0), None);
        assert_eq!(reason(35, 48.0), Some(Reason::ShownNear { times: 2, metres: 2.0, minutes_ago: 5.0 }));
        assert_eq!(reason(70, 50.0), Some(Reason::ShownNear { times: 1, metres: 0.0, minutes_ago: 40.0 }));
        assert_eq!(reason(35, 34.0), None, "16 m away");
        let place = swim.place(swim.cell_of(at(50.0)).unwrap()).unwrap();
        assert_eq!(swim.figures(35 * MIN).cells[place].shown, 2);
    }
}
