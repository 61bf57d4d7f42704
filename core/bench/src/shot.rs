//! Split shot: a table to edit, and the fewest shot for a weight.

use super::material::{self, Material, MaterialError};
use serde::{Deserialize, Serialize};

/// One size of shot.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ShotSize {
    /// The angler's name for it.
    pub name: String,
    /// Grams in air.
    pub grams: f64,
}

/// The starting table: common practice, from memory, unverified; makers differ by 5 to 10 % and
/// more, so weigh ten of each and enter your own. One relation can be checked: SSG = 2 AAA = 4 BB.
pub const NOMINAL: [(&str, f64); 15] = [
    ("SSG", 1.6),
    ("AAA", 0.8),
    ("AB", 0.6),
    ("BB", 0.4),
    ("No. 1", 0.3),
    ("No. 3", 0.2),
    ("No. 4", 0.17),
    ("No. 5", 0.15),
    ("No. 6", 0.1),
    ("No. 8", 0.06),
    ("No. 9", 0.05),
    ("No. 10", 0.04),
    ("No. 11", 0.03),
    ("No. 12", 0.02),
    ("No. 13", 0.015),
];

/// The starting table, ready to edit.
pub fn starting_table() -> Vec<ShotSize> {
    NOMINAL.iter().map(|&(name, grams)| ShotSize { name: name.to_owned(), grams }).collect()
}

/// A choice of shot.
#[derive(Debug, Clone, PartialEq)]
pub struct ShotChoice {
    /// Sizes by their index in the table, and how many, heaviest first.
    pub shot: Vec<(usize, u16)>,
    /// How many in all.
    pub count: u16,
    /// Grams in air.
    pub grams: f64,
    /// Grams under water.
    pub under_water: f64,
}

/// Why no shot could be chosen.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum ShotError {
    /// An empty table.
    #[error("the shot table is empty")]
    NoTable,
    /// A shot that weighs zero or more than a lead, or whose weight is not a number.
    #[error("a shot of {0} g can't be used: weights go from 0.001 to 100 g")]
    BadShot(f64),
    /// The target or the tolerance is impossible.
    #[error("the weight to make up and its tolerance can't be below 0 g")]
    BadTarget,
    /// Nothing within tolerance.
    #[error("no {most} shot or fewer come within {tolerance} g above {wanted} g under water")]
    NoneClose {
        /// Grams under water asked for.
        wanted: f64,
        /// Grams above it allowed.
        tolerance: f64,
        /// Most shot tried.
        most: u16,
    },
    /// The material can't be used.
    #[error(transparent)]
    Material(#[from] MaterialError),
}

/// Most shot that go on one hooklength here.
const MOST_SHOT: u16 = 6;

/// The fewest shot weighing at least `wanted` and at most `wanted + tolerance` grams under water; with equal
/// numbers the lightest choice, and with equal weights the one with the heaviest single shot.
pub fn fewest(
    table: &[ShotSize],
    material: Material,
    water_c: f64,
    wanted: f64,
    tolerance: f64,
) -> Result<ShotChoice, ShotError> {
    if table.is_empty() {
        return Err(ShotError::NoTable);
    }
    if !(wanted.is_finite() && tolerance.is_finite() && wanted >= 0.0 && tolerance >= 0.0) {
        return Err(ShotError::BadTarget);
    }
    let mut order: Vec<(usize, f64, f64)> = Vec::with_capacity(table.len());
    for (i, size) in table.iter().enumerate() {
        if !(0.001..=100.0).contains(&size.grams) {
            return Err(ShotError::BadShot(size.grams));
        }
        order.push((i, size.grams, material::weight_in_water(size.grams, material, water_c)?));
    }
    restwater_sorting::by(&mut order, |a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    for count in 0..=MOST_SHOT {
        let mut search =
            Search { order: &order, low: wanted, high: wanted + tolerance, picked: Vec::new(), best: None };
        search.pick(0, count, 0.0);
        if let Some((_, picked)) = search.best {
            return Ok(choice(&order, &picked, count));
        }
    }
    Err(ShotError::NoneClose { wanted, tolerance, most: MOST_SHOT })
}

/// Tries every choice of this many shot, heaviest first, and keeps the lightest that is heavy enough.
struct Search<'a> {
    order: &'a [(usize, f64, f64)],
    low: f64,
    high: f64,
    picked: Vec<usize>,
    best: Option<(f64, Vec<usize>)>,
}

impl Search<'_> {
    fn pick(&mut self, from: usize, left: u16, sum: f64) {
        if left == 0 {
            let lighter = self.best.as_ref().is_none_or(|(best, _)| sum < *best);
            if sum >= self.low && sum <= self.high && lighter {
                self.best = Some((sum, self.picked.clone()));
            }
            return;
        }
        for at in from..self.order.len() {
            let under_water = self.order[at].2;
            if sum + under_water * f64::from(left) < self.low {
                break; // the rest are lighter still
            }
            self.picked.push(at);
            self.pick(at, left - 1, sum + under_water);
            self.picked.pop();
        }
    }
}

fn choice(order: &[(usize, f64, f64)], picked: &[usize], count: u16) -> ShotChoice {
    let mut shot: Vec<(usize, u16)> = Vec::new();
    for &at in picked {
        let size = order[at].0;
        match shot.last_mut() {
            Some((last, n)) if *last == size => *n += 1,
            _ => shot.push((size, 1)),
        }
    }
    let grams = picked.iter().map(|&at| order[at].1).sum();
    let under_water = picked.iter().map(|&at| order[at].2).sum();
    ShotChoice { shot, count, grams, under_water }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(table: &[ShotSize], choice: &ShotChoice) -> Vec<(String, u16)> {
        choice.shot.iter().map(|&(i, n)| (table[i].name.clone(), n)).collect()
    }

    #[test]
    fn one_shot_is_used_if_one_is_enough() {
        let table = starting_table();
        let choice = fewest(&table, Material::Tungsten, 5.0, 0.36, 0.05).unwrap();
        assert_eq!(
            names(&table, &choice),
            vec![("BB".to_owned(), 1)],
            "0.4 g of tungsten is 0.379 g under water"
        );
    }

    #[test]
    fn two_are_used_if_one_does_not_fit_and_the_lightest_pair_is_chosen() {
        let table = starting_table();
        let choice = fewest(&table, Material::Tungsten, 5.0, 0.46, 0.03).unwrap();
        assert_eq!(choice.count, 2);
        assert!(choice.under_water >= 0.46 && choice.under_water <= 0.49);
        // 0.3 + 0.2 = 0.5 g in air is the lightest pair of 0.485 g or more.
        assert!((choice.grams - 0.5).abs() < 1e-12);
    }

    #[test]
    fn nothing_wanted_takes_no_shot() {
        assert_eq!(fewest(&starting_table(), Material::Tin, 5.0, 0.0, 0.0).unwrap().count, 0);
    }

    #[test]
    fn bad_tables_and_targets_are_refused() {
        assert_eq!(fewest(&[], Material::Tin, 5.0, 0.1, 0.1), Err(ShotError::NoTable));
        let none = vec![ShotSize { name: "hole".into(), grams: 0.0 }];
        assert_eq!(fewest(&none, Material::Tin, 5.0, 0.1, 0.1), Err(ShotError::BadShot(0.0)));
        let table = starting_table();
        assert_eq!(fewest(&table, Material::Tin, 5.0, f64::NAN, 0.1), Err(ShotError::BadTarget));
        assert!(matches!(fewest(&table, Material::Tin, 5.0, 50.0, 0.1), Err(ShotError::NoneClose { .. })));
    }

    #[test]
    fn the_one_relation_that_can_be_checked() {
        let grams = |name| NOMINAL.iter().find(|(n, _)| *n == name).unwrap().1;
        assert!(grams("SSG") == 2.0 * grams("AAA") && grams("AAA") == 2.0 * grams("BB"));
    }
}
