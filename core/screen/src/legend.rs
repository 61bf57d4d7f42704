//! What each symbol means. A symbol means the same in every picture: the strip of the Bank, the map of the
//! swim, the charts of the waits.

use super::{Leaf, LeafLine, LeavesView, Wording};

/// The symbols, in the order in which an angler meets them.
const SIGNS: [&str; 9] =
    ["diamond", "stroke", "triangle", "cross", "accent", "bracket", "tint", "dots", "hatching"];

/// Makes the page.
pub fn legend(words: &Wording) -> LeavesView {
    let mut leaf = Leaf::new(words, "legend", "signs");
    leaf.says = words.say("legend-signs-says");
    leaf.lines = SIGNS
        .iter()
        .map(|sign| LeafLine {
            detail: words.say(&format!("sign-{sign}-means")),
            ..LeafLine::heading(words.say(&format!("sign-{sign}")))
        })
        .collect();
    LeavesView { leaves: vec![leaf] }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_symbol_has_one_meaning_in_words() {
        let page = legend(&Wording::new()).leaves.remove(0);
        assert_eq!(page.lines.len(), SIGNS.len());
        let mut meanings: Vec<&str> = page.lines.iter().map(|line| line.detail.as_str()).collect();
        assert!(meanings.iter().all(|meaning| !meaning.is_empty() && !meaning.starts_with("sign-")));
        meanings.sort_unstable();
        meanings.dedup();
        assert_eq!(meanings.len(), SIGNS.len(), "two signs mean the same");
    }
}
