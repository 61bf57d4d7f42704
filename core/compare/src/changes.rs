//! Changes found from the record itself: what differs between consecutive casts of a rod.

use super::Factor;
use super::alternation::Side;
use super::blocks::SidedCast;
use super::cast_row::CastRow;
use std::collections::{BTreeMap, BTreeSet};

/// One pair of values of one factor that was changed from the one to the other on some rod.
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// What was changed.
    pub factor: Factor,
    /// Value before the first such change that was seen (side A).
    pub before: String,
    /// Value after it (side B).
    pub after: String,
    /// Indices, in the rows given, of the casts of side A and of side B: only casts of rods on which both
    /// values were fished.
    pub places: [Vec<usize>; 2],
    /// Other factors that have no value on both sides, so that their effect can't be separated from this
    /// one's.
    pub changed_together: Vec<Factor>,
}

impl Change {
    /// The casts with their sides, scored within rod and spot (within rod, when the spot is what was
    /// changed).
    pub fn sided(&self, rows: &[CastRow]) -> Vec<SidedCast> {
        let mut strata: BTreeMap<(u8, Option<&str>), usize> = BTreeMap::new();
        let mut casts = Vec::new();
        for (side, places) in [Side::A, Side::B].into_iter().zip(&self.places) {
            for row in places.iter().map(|&i| &rows[i]) {
                let spot = row.setup.get(&Factor::Spot).filter(|_| self.factor != Factor::Spot);
                let fresh = strata.len();
                let stratum = *strata.entry((row.rod, spot.map(String::as_str))).or_insert(fresh);
                casts.push(SidedCast { rod: row.rod, at_min: row.at_min, wait: row.wait, side, stratum });
            }
        }
        casts
    }
}

/// A switch on one rod: factor, value before, value after.
type Switch<'a> = (Factor, &'a str, &'a str);

/// Finds every change, in the order in which they could first be seen: when the first cast with the new value was over. So the
/// place of a change stays, whatever comes in later on another rod. Going from recorded to not recorded is not a change. Changing
/// back is the same change, not another.
pub fn find_changes(rows: &[CastRow]) -> Vec<Change> {
    let order = time_order(rows);
    let mut last: BTreeMap<u8, usize> = BTreeMap::new();
    let mut made: Vec<(f64, u8, Switch<'_>)> = Vec::new();
    for &place in &order {
        let row = &rows[place];
        if let Some(before) = last.insert(row.rod, place) {
            let over_min = row.at_min + row.wait.minutes();
            made.extend(switches(&rows[before], row).map(|switch| (over_min, row.rod, switch)));
        }
    }
    restwater_sorting::by(&mut made, |x, y| x.0.total_cmp(&y.0));
    let mut found: Vec<(Switch<'_>, BTreeSet<u8>)> = Vec::new();
    for (_, rod, switch) in made {
        match found.iter_mut().find(|(known, _)| same_pair(known, &switch)) {
            Some((_, rods)) => {
                rods.insert(rod);
            }
            None => found.push((switch, BTreeSet::from([rod]))),
        }
    }
    found.into_iter().map(|(switch, rods)| gather(rows, &order, switch, &rods)).collect()
}

fn time_order(rows: &[CastRow]) -> Vec<usize> {
    restwater_sorting::places(rows.len(), &|i, j| {
        rows[i].at_min.total_cmp(&rows[j].at_min).then(rows[i].rod.cmp(&rows[j].rod))
    })
}

fn switches<'a>(before: &'a CastRow, after: &'a CastRow) -> impl Iterator<Item = Switch<'a>> {
    after.setup.iter().filter_map(|(&factor, value)| {
        let old = before.setup.get(&factor)?;
        (old != value).then_some((factor, old.as_str(), value.as_str()))
    })
}

fn same_pair(x: &Switch<'_>, y: &Switch<'_>) -> bool {
    x.0 == y.0 && ((x.1, x.2) == (y.1, y.2) || (x.1, x.2) == (y.2, y.1))
}

fn gather(
    rows: &[CastRow],
    order: &[usize],
    (factor, before, after): Switch<'_>,
    rods: &BTreeSet<u8>,
) -> Change {
    let with = |value: &str| -> Vec<usize> {
        let fits = |&i: &usize| {
            rods.contains(&rows[i].rod) && rows[i].setup.get(&factor).is_some_and(|v| v == value)
        };
        order.iter().copied().filter(fits).collect()
    };
    let places = [with(before), with(after)];
    let changed_together = changed_together(rows, &places, factor);
    Change { factor, before: before.to_owned(), after: after.to_owned(), places, changed_together }
}

/// Factors recorded on both sides of which the two sides share no value.
fn changed_together(rows: &[CastRow], places: &[Vec<usize>; 2], factor: Factor) -> Vec<Factor> {
    let values = |side: usize, other: Factor| -> BTreeSet<&str> {
        places[side].iter().filter_map(|&i| rows[i].setup.get(&other)).map(String::as_str).collect()
    };
    let all: BTreeSet<Factor> =
        places.iter().flatten().flat_map(|&i| rows[i].setup.keys().copied()).collect();
    all.into_iter()
        .filter(|&other| other != factor)
        .filter(|&other| {
            let (a, b) = (values(0, other), values(1, other));
            !a.is_empty() && !b.is_empty() && a.is_disjoint(&b)
        })
        .collect()
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;
    use restwater_waits::Wait;

    /// A row from "bait pink, height 20" style words.
    pub(crate) fn row(rod: u8, at_min: f64, minutes: f64, bite: bool, setup: &[(Factor, &str)]) -> CastRow {
        CastRow {
            twitched: false,
            rod,
            at_min,
            wait: Wait::new(minutes, bite).unwrap(),
            setup: setup.iter().map(|&(f, v)| (f, v.to_owned())).collect(),
        }
    }

    fn colours(rod: u8, list: &[&str]) -> Vec<CastRow> {
        list.iter()
            .enumerate()
            .map(|(i, colour)| row(rod, 10.0 * i as f64, 8.0, false, &[(Factor::Colour, colour)]))
            .collect()
    }

    #[test]
    fn without_a_change_nothing_is_found() {
        assert!(find_changes(&[]).is_empty());
        assert!(find_changes(&colours(1, &["pink", "pink"])).is_empty());
    }

    #[test]
    fn changing_back_is_the_same_change() {
        let changes = find_changes(&colours(1, &["pink", "white", "pink", "white", "white"]));
        assert_eq!(changes.len(), 1);
        assert_eq!((changes[0].before.as_str(), changes[0].after.as_str()), ("pink", "white"));
        assert_eq!(changes[0].places, [vec![0, 2], vec![1, 3, 4]]);
    }

    #[test]
    fn a_third_value_makes_a_second_change_not_a_third() {
        let changes = find_changes(&colours(1, &["pink", "white", "yellow"]));
        let pairs: Vec<(&str, &str)> =
            changes.iter().map(|c| (c.before.as_str(), c.after.as_str())).collect();
        assert_eq!(pairs, [("pink", "white"), ("white", "yellow")]);
    }

    #[test]
    fn rods_are_treated_separately_and_the_order_of_rows_does_not_matter() {
        let mut rows = colours(1, &["pink", "pink", "white"]);
        rows.extend(colours(2, &["white", "white", "white"]));
        let changes = find_changes(&rows);
        assert_eq!(changes.len(), 1);
        // Rod 2 never changed, so its casts are no evidence about the change.
        assert_eq!(changes[0].places, [vec![0, 1], vec![2]]);
        rows.reverse();
        let again = find_changes(&rows);
        assert_eq!((again[0].before.as_str(), again[0].places[1].len()), ("pink", 1));
    }

    #[test]
    fn not_recorded_is_no_change() {
        let rows = [row(1, 0.0, 8.0, false, &[(Factor::Bait, "maize")]), row(1, 10.0, 8.0, false, &[])];
        assert!(find_changes(&rows).is_empty());
    }

    /// Rod 2's cast began first and was wound in last: its change is the newer one to everybody who looked before.
    #[test]
    fn changes_are_numbered_by_when_they_were_seen() {
        use Factor::{Bait, Colour};
        let mut rows = vec![
            row(2, 0.0, 4.0, false, &[(Colour, "pink")]),
            row(1, 1.0, 8.0, false, &[(Bait, "maize")]),
            row(1, 11.0, 8.0, false, &[(Bait, "worm")]),
        ];
        let factors =
            |rows: &[CastRow]| find_changes(rows).into_iter().map(|change| change.factor).collect::<Vec<_>>();
        assert_eq!(factors(&rows), [Bait]);
        rows.push(row(2, 5.0, 60.0, false, &[(Colour, "white")]));
        assert_eq!(factors(&rows), [Bait, Colour], "a place once given is kept");
    }

    #[test]
    fn what_was_always_changed_with_it_is_named() {
        use Factor::{Colour, Height, Lead};
        let setups = [("pink", "20", "1"), ("white", "40", "1"), ("pink", "20", "2"), ("white", "60", "2")];
        let rows: Vec<CastRow> = setups
            .iter()
            .enumerate()
            .map(|(i, (c, h, l))| row(1, i as f64, 8.0, false, &[(Colour, c), (Height, h), (Lead, l)]))
            .collect();
        let changes = find_changes(&rows);
        let colour = changes.iter().find(|c| c.factor == Colour).unwrap();
        assert_eq!(colour.changed_together, [Height]);
    }

    #[test]
    fn casts_are_scored_within_rod_and_spot() {
        use Factor::{Colour, Spot};
        let rows = [
            row(1, 0.0, 8.0, false, &[(Colour, "pink"), (Spot, "point")]),
            row(1, 1.0, 8.0, false, &[(Colour, "white"), (Spot, "point")]),
            row(1, 2.0, 8.0, false, &[(Colour, "white"), (Spot, "bay")]),
        ];
        let changes = find_changes(&rows);
        let strata = |factor| -> Vec<usize> {
            let change = changes.iter().find(|c| c.factor == factor).unwrap();
            change.sided(&rows).iter().map(|c| c.stratum).collect()
        };
        assert_eq!(strata(Colour), [0, 0, 1]);
        assert_eq!(strata(Spot), [0, 0, 0]);
    }
}
