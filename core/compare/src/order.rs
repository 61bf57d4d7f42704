//! Tests whether values come in random order, in a way that may be read at any moment.
//!
//! If they do, the rank of the newest of n is uniform on 1..n and independent of the earlier ranks (Rényi
//! 1962). So fair odds can be offered on each rank as it comes. The value of one unit staked on high ranks,
//! or on low ones, is an e-value at every moment: it reaches 20 at any time with probability 1/20 at most
//! (Ville 1939). The tests are those of Vovk, Nouretdinov and Gammerman 2003 (Testing exchangeability
//! on-line) and of Vovk 2021 (Testing randomness online, Statistical Science 36); here ties share their odds,
//! so that no random numbers are needed.

use libm::exp;

/// How strongly the stakes lean to one end: half on a slight trend, half on a steep one. An assumption, not a
/// fact.
const LEANS: [f64; 2] = [1.0, 3.0];

/// The present value of the stakes on a rising and on a falling order.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Order {
    rising: [f64; 2],
    falling: [f64; 2],
}

impl Default for Order {
    fn default() -> Self {
        Self { rising: [1.0; 2], falling: [1.0; 2] }
    }
}

impl Order {
    /// The stakes after these values, in the order in which they came.
    pub fn of(values: &[f64]) -> Self {
        let mut order = Self::default();
        (1..=values.len()).for_each(|n| order.add(&values[..n]));
        order
    }

    /// Adds the newest value, which is the last of `all`. All values may have been scored again because of
    /// it.
    pub fn add(&mut self, all: &[f64]) {
        let Some(newest) = all.last() else { return };
        let below = all.iter().filter(|v| *v < newest).count();
        let tied = all.iter().filter(|v| *v == newest).count();
        for (stake, lean) in self.rising.iter_mut().zip(LEANS) {
            *stake *= odds(below..below + tied, all.len(), lean);
        }
        for (stake, lean) in self.falling.iter_mut().zip(LEANS) {
            *stake *= odds(below..below + tied, all.len(), -lean);
        }
    }

    /// The e-value against random order: the mean of all stakes.
    pub fn e_value(&self) -> f64 {
        let all = self.rising.iter().chain(&self.falling);
        all.sum::<f64>() / (2 * LEANS.len()) as f64
    }

    /// Anytime-valid p: one over the e-value, at most 1.
    pub fn p(&self) -> f64 {
        1.0_f64.min(self.e_value().recip())
    }

    /// Whether later ones are higher, rather than lower.
    pub fn rises(&self) -> bool {
        self.rising.iter().sum::<f64>() > self.falling.iter().sum::<f64>()
    }
}

/// What a stake of one on one of `n` equally likely ranks pays when the rank is one of `ranks` (counted from
/// 0), with stakes that grow by rank, from exp(-lean) at the lowest to exp(lean) at the highest.
fn odds(ranks: std::ops::Range<usize>, n: usize, lean: f64) -> f64 {
    if n < 2 {
        return 1.0;
    }
    let stake = |rank: usize| exp(lean * (2.0 * rank as f64 / (n - 1) as f64 - 1.0));
    let tied = ranks.len() as f64;
    n as f64 * ranks.map(stake).sum::<f64>() / tied / (0..n).map(stake).sum::<f64>()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every order of 0..n, with the value of the stakes after each element.
    fn orders(n: usize, see: &mut impl FnMut(&[Order])) {
        fn go(deck: &mut Vec<f64>, from: usize, path: &mut Vec<Order>, see: &mut impl FnMut(&[Order])) {
            if from == deck.len() {
                return see(path);
            }
            for i in from..deck.len() {
                deck.swap(from, i);
                let mut order = path.last().copied().unwrap_or_default();
                order.add(&deck[..=from]);
                path.push(order);
                go(deck, from + 1, path, see);
                path.pop();
                deck.swap(from, i);
            }
        }
        let mut deck: Vec<f64> = (0..n).map(|i| i as f64).collect();
        go(&mut deck, 0, &mut Vec::new(), see);
    }

    /// Ville's bound, and that the odds are fair, by going through all 40,320 orders of eight.
    #[test]
    fn over_all_orders_the_odds_are_fair_and_at_most_one_in_twenty_reaches_twenty() {
        let (mut all, mut ever, mut sum) = (0_u32, 0_u32, 0.0);
        orders(8, &mut |path| {
            all += 1;
            ever += u32::from(path.iter().any(|order| order.e_value() >= 20.0));
            sum += path[7].e_value();
        });
        assert_eq!(all, 40_320);
        assert!((sum / f64::from(all) - 1.0).abs() < 1e-9, "{}", sum / f64::from(all));
        let share = f64::from(ever) / f64::from(all);
        assert!(share <= 0.05 && share > 0.01, "{share}");
    }

    /// The newest of n is the highest with probability 1 / n (Rényi 1962): a stake on that alone would pay n,
    /// a milder one less.
    #[test]
    fn what_a_rank_pays() {
        assert!((odds(2..3, 3, 50.0) - 3.0).abs() < 1e-9);
        assert!(odds(0..1, 3, 50.0) < 1e-9);
        // By hand: stakes e^-1, 1, e^1.
        let e = std::f64::consts::E;
        assert!((odds(2..3, 3, 1.0) - 3.0 * e / (e + 1.0 + 1.0 / e)).abs() < 1e-12);
        // A value tied with all others is no evidence.
        assert!((odds(0..3, 3, 1.0) - 1.0).abs() < 1e-12);
        assert_eq!(odds(0..1, 1, 1.0), 1.0);
    }

    #[test]
    fn a_rise_differs_from_a_fall_and_from_random_order() {
        let rise = Order::of(&[1.0, 2.0, 3.0, 4.0, 5.0, 6.0]);
        let fall = Order::of(&[6.0, 5.0, 4.0, 3.0, 2.0, 1.0]);
        assert!(rise.p() < 0.05 && rise.rises() && fall.p() < 0.05 && !fall.rises());
        assert!((rise.e_value() - fall.e_value()).abs() < 1e-9);
        assert!(Order::of(&[3.0, 1.0, 2.0, 4.0, 1.5, 2.5]).p() > 0.3);
        assert_eq!(Order::of(&[2.0; 9]).p(), 1.0);
        assert_eq!(Order::of(&[]).p(), 1.0);
    }
}
