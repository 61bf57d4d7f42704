//! The three cards of the app's first start: log, wait, where. Each can be skipped and offers START, and they
//! can be read again from the list of screens.

use super::{KeyTap, Leaf, LeafKey, LeavesView, Which, Wording};

/// The cards, in their order.
const CARDS: [&str; 3] = ["log", "wait", "where"];

/// Makes the cards; each offers START if no session is open.
pub fn welcome(words: &Wording, open: bool) -> LeavesView {
    let leaves = CARDS.iter().enumerate().map(|(i, id)| {
        let mut leaf = Leaf::new(words, "welcome", id);
        leaf.says = words.say(&format!("welcome-{id}-says"));
        leaf.notes = vec![words.say(&format!("welcome-{id}-more"))];
        let next = CARDS.get(i + 1);
        leaf.keys.extend(next.map(|next| {
            let tap = KeyTap::Leaf { id: (*next).into() };
            let key = LeafKey::new(format!("to-{next}"), words.say("welcome-next"), tap);
            LeafKey { solid: true, ..key }
        }));
        if !open {
            leaf.keys.push(LeafKey { solid: next.is_none(), ..LeafKey::start_now(words) });
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
        let leaf = |id: &str| KeyTap::Leaf { id: id.into() };
        let start = KeyTap::from(crate::Action::StartSession { setup: None });
        let onward: Vec<&KeyTap> = cards.iter().map(|card| &card.keys[0].tap).collect();
        assert_eq!(onward, [&leaf("wait"), &leaf("where"), &start]);
        assert!(cards.iter().all(|card| card.keys.iter().any(|key| key.tap == start)));
        let open = welcome(&Wording::new(), true).leaves;
        assert!(open.iter().flat_map(|card| &card.keys).all(|key| key.tap != start), "one session at a time");
    }
}
