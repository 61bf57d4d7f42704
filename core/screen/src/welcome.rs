//! The three cards of the first opening: log, wait, where. They can be skipped, and read again from the list of screens.

use super::{KeyTap, Leaf, LeafKey, LeavesView, Which, Wording};

/// The cards, in their order.
const CARDS: [&str; 3] = ["log", "wait", "where"];

/// Makes the cards; the last one offers START where no session is open.
pub fn welcome(words: &Wording, open: bool) -> LeavesView {
    let leaves = CARDS.iter().enumerate().map(|(i, id)| {
        let mut leaf = Leaf::new(words, "welcome", id);
        leaf.says = words.say(&format!("welcome-{id}-says"));
        leaf.notes = vec![words.say(&format!("welcome-{id}-more"))];
        match CARDS.get(i + 1) {
            Some(next) => {
                let tap = KeyTap::Leaf { id: (*next).into() };
                let key = LeafKey::new(format!("to-{next}"), words.say("welcome-next"), tap);
                leaf.keys.push(LeafKey { solid: true, ..key });
            }
            None if !open => leaf.keys.push(LeafKey::start(words)),
            None => {}
        }
        let skip = LeafKey::new("skip-", words.say("welcome-skip"), KeyTap::Open { which: Which::Bank });
        leaf.keys.push(LeafKey { sub: words.say("welcome-skip-sub"), ..skip });
        leaf
    });
    LeavesView { leaves: leaves.collect() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn three_cards_lead_to_start_and_each_can_be_skipped() {
        let cards = welcome(&Wording::new(), false).leaves;
        assert_eq!(cards.len(), 3);
        for card in &cards {
            assert!(!card.title.is_empty() && !card.says.starts_with("welcome-"), "{card:?}");
            assert!(card.keys.iter().any(|key| key.tap == KeyTap::Open { which: Which::Bank }));
        }
        let onward: Vec<&KeyTap> = cards.iter().map(|card| &card.keys[0].tap).collect();
        let leaf = |id: &str| KeyTap::Leaf { id: id.into() };
        assert_eq!(onward, [&leaf("wait"), &leaf("where"), &KeyTap::Open { which: Which::Setup }]);
    }
}
