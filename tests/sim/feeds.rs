//! When an angler feeds, and how much keener that makes the fish.

/// Minutes for which feed counts, as in the core.
pub const FED_WITHIN: f64 = restwater_session::FED_WITHIN_MIN as f64;

/// How an angler feeds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum When {
    /// Every hour on the hour.
    ByTheHour,
    /// After two casts in a row without a bite, if the last feed no longer counts.
    Dry,
}

/// An angler's feed over a day.
#[derive(Debug, Clone, Copy)]
pub struct Feeds {
    when: Option<When>,
    /// How many times as keen the fish are while it counts.
    times: f64,
    fed_at: f64,
    blanks: u32,
}

impl Feeds {
    /// No feed at all.
    pub fn never() -> Self {
        Self { when: None, times: 1.0, fed_at: f64::NEG_INFINITY, blanks: 0 }
    }

    /// Feed that makes the fish `times` as keen while it counts.
    pub fn new(when: When, times: f64) -> Self {
        Self { when: Some(when), times, ..Self::never() }
    }

    /// Feeds if it is time to; returns whether a cast would be in fed water now, and how keen the fish are
    /// there.
    pub fn before(&mut self, clock: f64) -> (bool, f64) {
        match self.when {
            None => return (false, 1.0),
            Some(When::ByTheHour) => self.fed_at = (clock / 60.0).floor() * 60.0,
            Some(When::Dry) if self.blanks == 2 && clock - self.fed_at > FED_WITHIN => self.fed_at = clock,
            Some(When::Dry) => {}
        }
        self.blanks %= 2;
        let fed = clock - self.fed_at <= FED_WITHIN;
        (fed, if fed { self.times } else { 1.0 })
    }

    /// Records the result of the cast.
    pub fn after(&mut self, bite: bool) {
        self.blanks = if bite { 0 } else { self.blanks + 1 };
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn feed_by_the_hour_counts_for_half_of_it_and_when_dry_after_two_blanks() {
        let mut hourly = Feeds::new(When::ByTheHour, 2.0);
        assert_eq!([0.0, 29.0, 31.0, 61.0].map(|clock| hourly.before(clock).0), [true, true, false, true]);
        let mut dry = Feeds::new(When::Dry, 2.0);
        let bites = [false, false, true, false, false];
        let fed: Vec<f64> = bites
            .iter()
            .enumerate()
            .map(|(i, &bite)| {
                let keener = dry.before(20.0 * i as f64).1;
                dry.after(bite);
                keener
            })
            .collect();
        assert_eq!(fed, [1.0, 1.0, 2.0, 2.0, 1.0]);
        assert_eq!(Feeds::never().before(5.0), (false, 1.0));
    }
}
