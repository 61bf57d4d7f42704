//! The Cautions screen: each caution names its source, how and when its text was read, and where it applies.
//! It never covers a logging key: it is opened, read, and dismissed for the peg with one tap.

use super::{Action, Arg, CautionsTap, Choice, ChoiceRow, KeyTap, Leaf, LeafKey, LeavesView, Wording};
use restwater_caution::shown::{Occasion, Seen, at_a_peg, that_apply};
use restwater_caution::table::{ALL, CLOSING_ID, Caution, REVIEWED, Region};

/// What the screen is made from.
pub struct CautionsInput<'a> {
    /// The country that the water is in.
    pub region: Region,
    /// What the day is like.
    pub occasion: Occasion,
    /// The key of the peg in the log.
    pub peg: &'a str,
    /// The peg in words; empty if it has no name.
    pub peg_words: &'a str,
    /// Cautions that were dismissed.
    pub seen: &'a [Seen],
    /// The sentences.
    pub words: &'a Wording,
}

impl CautionsInput<'_> {
    fn is_seen(&self, caution: &Caution) -> bool {
        self.seen.iter().any(|s| s.peg == self.peg && s.id == caution.id)
    }

    /// The cautions of the region in two lists: the few for this peg that were not dismissed yet, and the rest, which begins with
    /// those that apply to the day.
    fn ordered(&self) -> (Vec<&'static Caution>, Vec<&'static Caution>) {
        let few = at_a_peg(self.region, &self.occasion);
        let open: Vec<&Caution> = few.into_iter().filter(|c| !self.is_seen(c)).collect();
        let applying = that_apply(self.region, &self.occasion);
        let mut rest: Vec<&Caution> = Vec::new();
        for caution in applying.into_iter().chain(ALL.iter().filter(|c| c.regions.contains(&self.region))) {
            if !open.iter().chain(&rest).any(|other| other.id == caution.id) {
                rest.push(caution);
            }
        }
        (open, rest)
    }
}

/// Makes the screen.
pub fn cautions(input: &CautionsInput) -> LeavesView {
    let words = input.words;
    let (open, away) = input.ordered();
    let mut first = Leaf::new(words, "cautions", "list");
    let id = if input.peg_words.is_empty() { "cautions-says-no-peg" } else { "cautions-says" };
    first.says =
        words.say_with(id, &[("count", Arg::Count(open.len())), ("peg", Arg::Text(input.peg_words))]);
    first.notes.push(words.say_with("cautions-reviewed", &[("month", Arg::Text(REVIEWED))]));
    first.notes.push(words.say(CLOSING_ID));
    first.rows.push(region_row(words, input.region));
    if !open.is_empty() {
        let all = Action::Cautions { tap: CautionsTap::AllSeen };
        let key = LeafKey::new("seen-all", words.say("cautions-key-all"), all);
        // The next thing to tap is the first that is still to be read.
        first.keys.push(LeafKey { sub: words.say("cautions-key-all-sub"), ..key });
    }
    let mut leaves = Vec::new();
    for (i, caution) in open.iter().chain(&away).enumerate() {
        let is_open = i < open.len();
        let leaf = card(input, caution, is_open, open.get(i + 1).filter(|_| is_open).copied());
        let state = if is_open {
            "cautions-new"
        } else if input.is_seen(caution) {
            "cautions-seen"
        } else {
            "cautions-to-read"
        };
        first.list.push(LeafKey { solid: is_open && i == 0, ..leaf.opener(words.say(state)) });
        leaves.push(leaf);
    }
    LeavesView { leaves: std::iter::once(first).chain(leaves).collect() }
}

fn card(input: &CautionsInput, caution: &Caution, is_open: bool, next: Option<&Caution>) -> Leaf {
    let words = input.words;
    let mut leaf = Leaf::new(words, "cautions", "list");
    leaf.id = caution.id.into();
    leaf.title = words.say(&caution.title_id());
    leaf.says = words.say(caution.id);
    let regions: Vec<String> = caution.regions.iter().map(|region| region_words(words, *region)).collect();
    let everywhere = caution.regions.len() == Region::ALL.len();
    let regions = if everywhere { words.say("cautions-everywhere") } else { words.listed(&regions) };
    // Notes, since they are small: where the text is from has no page of its own before READ.
    leaf.notes.extend([
        words.labelled(&words.say("cautions-authority"), &words.say(&caution.authority_id())),
        words.labelled(&words.say("cautions-region"), &regions),
        words.labelled(
            &words.say("cautions-text"),
            &words.say_with(caution.basis.id(), &[("read", Arg::Text(caution.read))]),
        ),
    ]);
    // Each ends by deferring to local rules.
    leaf.notes.push(words.say(CLOSING_ID));
    if is_open {
        let seen = Action::Cautions { tap: CautionsTap::Seen { caution: caution.id.to_owned() } };
        let key = LeafKey::new(format!("seen-{}", caution.id), words.say("cautions-key-seen"), seen);
        leaf.keys.push(LeafKey { sub: words.say("cautions-key-seen-sub"), solid: true, ..key });
        leaf.keys_last = true;
    }
    if let Some(next) = next {
        let tap = KeyTap::Leaf { id: next.id.to_owned() };
        let key = LeafKey::new(format!("leaf-{}", next.id), words.say("cautions-key-next"), tap);
        leaf.keys.push(LeafKey { sub: words.say(&next.title_id()), ..key });
    }
    leaf
}

fn region_words(words: &Wording, region: Region) -> String {
    words.say(&format!("region-{}", region_value(region)))
}

fn region_value(region: Region) -> &'static str {
    match region {
        Region::England => "england",
        Region::Wales => "wales",
        Region::Scotland => "scotland",
        Region::NorthernIreland => "northern-ireland",
        Region::Elsewhere => "elsewhere",
    }
}

fn region_row(words: &Wording, now: Region) -> ChoiceRow {
    let choice = |region: Region| {
        let action = Action::Cautions { tap: CautionsTap::Region { region } };
        Choice::new(region_value(region), region_words(words, region), region == now, action)
    };
    let choices = Region::ALL.into_iter().map(choice).collect();
    ChoiceRow::of("region", words.say("cautions-row-region"), choices, words.say("cautions-region-how"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn input<'a>(words: &'a Wording, seen: &'a [Seen]) -> CautionsInput<'a> {
        CautionsInput {
            region: Region::England,
            occasion: Occasion::default(),
            peg: "Alder Pool / 14",
            peg_words: "peg 14",
            seen,
            words,
        }
    }

    #[test]
    fn each_card_names_its_source_region_and_date_and_defers_to_the_authority() {
        let words = Wording::new();
        let view = cautions(&input(&words, &[]));
        assert!(view.leaves.len() > 15);
        for leaf in &view.leaves[1..] {
            let [from @ .., closing] = &leaf.notes[..] else { panic!("{}", leaf.id) };
            assert_eq!(closing, "Follow local rules, the venue and the licensing authority.");
            assert!(from.len() == 3 && from.iter().all(|note| note.contains(": ")), "{from:?}");
            assert!(from[2].contains("2026-11"), "{from:?}");
        }
        let to_see = |leaf: &&Leaf| leaf.keys.iter().any(|key| key.tag.starts_with("seen-"));
        assert_eq!(view.leaves[1..].iter().filter(to_see).count(), 4, "the peg's few");
        assert!(view.leaves[1..5].iter().all(|leaf| to_see(&leaf)), "come first");
    }

    #[test]
    fn dismissed_cautions_stay_readable_at_the_end() {
        let words = Wording::new();
        let all = cautions(&input(&words, &[]));
        let first = all.leaves[1].id.clone();
        let seen = [Seen { peg: "Alder Pool / 14".into(), id: first.clone() }];
        let after = cautions(&input(&words, &seen));
        assert_eq!(after.leaves.len(), all.leaves.len());
        assert_ne!(after.leaves[1].id, first);
        let away = after.leaves.iter().find(|leaf| leaf.id == first).unwrap();
        assert!(away.keys.is_empty());
        let elsewhere = CautionsInput { peg: "Alder Pool / 15", ..input(&words, &seen) };
        assert_eq!(cautions(&elsewhere).leaves[1].id, first, "new again at the next peg");
    }
}
