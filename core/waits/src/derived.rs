//! What follows from the weights of the shapes: posterior means by leave time, and the time to leave the next cast for.

use super::fed::FedShapes;
use super::leave_time::Means;
use super::posterior::WaitPosterior;
use super::sums::{Derived, Rows, Sums};

impl WaitPosterior {
    /// The rows of the shapes that count.
    pub(crate) fn rows<'a>(&'a self, own: Option<&'a FedShapes>) -> Rows<'a> {
        match own {
            Some(own) => Rows {
                bitten: own.bitten.as_chunks().0,
                waiting: own.waiting.as_chunks().0,
                ever: &own.ever,
                curves: own.bitten.as_chunks().0,
                made_of: None,
            },
            None => Rows {
                bitten: self.shapes.bitten.as_chunks().0,
                waiting: self.shapes.waiting.as_chunks().0,
                ever: &self.shapes.ever,
                curves: self.shapes.curves.as_chunks().0,
                made_of: Some(&self.shapes.made_of),
            },
        }
    }

    /// Posterior means by leave time.
    pub(crate) fn means(&self) -> &Means {
        &self.derived().means
    }

    pub(crate) fn derived(&self) -> &Derived {
        self.derived_of(self.fed)
    }

    /// What follows from the weights for casts in fed water, or for others.
    pub(crate) fn derived_of(&self, fed: bool) -> &Derived {
        let fed = fed && self.feed_counts();
        self.derived[usize::from(fed)].get_or_init(|| {
            let (likely, own) = match self.by_feed.shapes_of(&self.shapes, fed) {
                Some((likely, own)) => (likely, Some(own)),
                None => (self.likely(), None),
            };
            let mut sums = Sums::new(self.rows(own.as_deref()), self.costs, &likely);
            let means = sums.means(&likely, &self.shapes.times, self.horizon() - 1);
            let leave = self.explore(&sums);
            Derived { likely, own, means, leave }
        })
    }
}

#[cfg(test)]
mod tests;
