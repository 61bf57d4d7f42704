//! A set-up that several phones corrected. An amendment contains the whole set-up, but says only what it changed.

use super::SessionSetup;
use std::collections::HashMap;
use uuid::Uuid;

/// The set-up of a START as its amendments leave it, taken in the order of the log.
pub(super) struct Amended<'a> {
    /// As START said it.
    start: &'a SessionSetup,
    now: SessionSetup,
    /// What each phone said last.
    by: HashMap<Uuid, &'a SessionSetup>,
}

impl<'a> Amended<'a> {
    pub(super) fn of(start: &'a SessionSetup) -> Self {
        Self { start, now: start.clone(), by: HashMap::new() }
    }

    /// Takes an amendment: what it changed counts, and the rest stays as the other phones left it. It was made from all earlier
    /// ones if its phone had them, otherwise from what that phone had said itself; nothing in it says which. A phone corrects
    /// one thing at a time, so the one from which it differs less is taken. On a single phone they are the same.
    pub(super) fn take(&mut self, phone: Uuid, said: &'a SessionSetup) {
        let own = self.by.get(&phone).copied().unwrap_or(self.start);
        let (of_own, of_all) = (said.changed_from(own), said.changed_from(&self.now));
        let changed = if (1..=of_all.len()).contains(&of_own.len()) { of_own } else { of_all };
        for field in changed {
            field.copy(said, &mut self.now);
        }
        self.by.insert(phone, said);
    }

    pub(super) fn into_setup(self) -> SessionSetup {
        self.now
    }
}

#[derive(Clone, Copy)]
enum Field {
    Water,
    Peg,
    Depth,
    Span,
    Rods,
    Settle,
    Twitch,
}

impl Field {
    const ALL: [Self; 7] =
        [Self::Water, Self::Peg, Self::Depth, Self::Span, Self::Rods, Self::Settle, Self::Twitch];

    fn copy(self, from: &SessionSetup, to: &mut SessionSetup) {
        match self {
            Self::Water => to.water.clone_from(&from.water),
            Self::Peg => to.peg.clone_from(&from.peg),
            Self::Depth => to.depth_cm = from.depth_cm,
            Self::Span => to.span_tenth_mm = from.span_tenth_mm,
            Self::Rods => to.rods = from.rods,
            Self::Settle => to.settle_s = from.settle_s,
            Self::Twitch => to.twitch_restarts = from.twitch_restarts,
        }
    }

    fn differs(self, one: &SessionSetup, other: &SessionSetup) -> bool {
        match self {
            Self::Water => one.water != other.water,
            Self::Peg => one.peg != other.peg,
            Self::Depth => one.depth_cm != other.depth_cm,
            Self::Span => one.span_tenth_mm != other.span_tenth_mm,
            Self::Rods => one.rods != other.rods,
            Self::Settle => one.settle_s != other.settle_s,
            Self::Twitch => one.twitch_restarts != other.twitch_restarts,
        }
    }
}

impl SessionSetup {
    fn changed_from(&self, before: &Self) -> Vec<Field> {
        Field::ALL.into_iter().filter(|field| field.differs(self, before)).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn setup(water: Option<&str>, peg: Option<&str>) -> SessionSetup {
        SessionSetup { water: water.map(Into::into), peg: peg.map(Into::into), ..SessionSetup::default() }
    }

    /// The set-up after amendments, each of a phone.
    fn after(start: &SessionSetup, said: &[(u128, SessionSetup)]) -> SessionSetup {
        let mut all = Amended::of(start);
        for (phone, said) in said {
            all.take(Uuid::from_u128(*phone), said);
        }
        all.into_setup()
    }

    #[test]
    fn what_two_phones_corrected_apart_is_all_corrected() {
        let start = setup(None, None);
        let (water, peg) = ((1, setup(Some("Mill"), None)), (2, setup(None, Some("14"))));
        let both = setup(Some("Mill"), Some("14"));
        assert_eq!(after(&start, &[water.clone(), peg.clone()]), both);
        assert_eq!(after(&start, &[peg.clone(), water.clone()]), both);
        let again = (1, setup(Some("Alder"), None));
        assert_eq!(after(&start, &[water, peg, again]), setup(Some("Alder"), Some("14")));
    }

    #[test]
    fn a_phone_that_had_the_others_correction_may_take_it_back() {
        let start = setup(None, None);
        let water = (1, setup(Some("Mill"), None));
        assert_eq!(after(&start, &[water.clone(), (2, setup(None, None))]), start);
        let peg = (2, setup(Some("Mill"), Some("14")));
        let none = (2, setup(None, Some("14")));
        assert_eq!(after(&start, &[water, peg, none]), setup(None, Some("14")));
    }

    proptest! {
        #[test]
        fn on_one_phone_the_last_amendment_counts_as_it_is(
            said in prop::collection::vec((0_u8..3, 0_u8..3, 1_u8..4), 1..6)
        ) {
            let setup = |(water, peg, rods): &(u8, u8, u8)| SessionSetup {
                water: Some(*water).filter(|n| *n > 0).map(|n| n.to_string()),
                peg: Some(*peg).filter(|n| *n > 0).map(|n| n.to_string()),
                rods: *rods,
                ..SessionSetup::default()
            };
            let all: Vec<_> = said.iter().map(|said| (1, setup(said))).collect();
            prop_assert_eq!(after(&SessionSetup::default(), &all), all.last().unwrap().1.clone());
        }
    }
}
