//! A match whose nets and classes were named in another language, a section of which one side is known, and the rule on fish that
//! were put back.

use super::match_day::{FISHING, in_match, tap, weight};
use super::*;
use restwater_screen::{ChoiceRow, FishTap, MatchTap, RuleTap, UsualClass};

fn rule(rule: RuleTap) -> Action {
    tap(MatchTap::Rule { rule })
}

impl Phone {
    fn rule_row(&mut self, ms: i64, tag: &str) -> ChoiceRow {
        self.view(ms).rows.into_iter().find(|row| row.tag == tag).unwrap()
    }

    fn choose(&mut self, ms: i64, row: &str, choice: &str) {
        let row = self.rule_row(ms, row);
        let action = row.choices.iter().find(|one| one.tag == choice).unwrap().action.clone();
        self.tap(ms, &action).unwrap();
    }

    fn nets_named(&mut self) -> Vec<String> {
        let rules = &self.app().match_setup().unwrap().rules;
        rules.nets.iter().map(|net| net.name.clone()).collect()
    }
}

#[test]
fn after_a_change_of_language_the_next_net_has_the_next_number() {
    let mut phone = in_match();
    phone.app().set_language("de");
    phone.tap(20_000, &rule(RuleTap::Nets { count: 3 })).unwrap();
    assert_eq!(phone.nets_named(), ["Net 1", "Net 2", "Netz 3"]);
    phone.app().set_language("en");
    phone.tap(22_000, &rule(RuleTap::Nets { count: 4 })).unwrap();
    assert_eq!(phone.nets_named(), ["Net 1", "Net 2", "Netz 3", "Net 4"]);
    // Nets that a file named differently: no number occurs twice, in any language.
    let mut setup = phone.app().match_setup().unwrap().clone();
    setup.rules.nets.truncate(1);
    setup.rules.nets[0].name = "Bourriche 2".into();
    phone.tap(24_000, &tap(MatchTap::Set { setup })).unwrap();
    phone.tap(26_000, &rule(RuleTap::Nets { count: 2 })).unwrap();
    assert_eq!(phone.nets_named(), ["Bourriche 2", "Net 3"]);
}

#[test]
fn after_a_change_of_language_a_class_is_the_same_class() {
    let mut phone = in_match();
    phone.app().set_language("de");
    let row = phone.rule_row(20_000, "classes");
    let chosen: Vec<&str> = row.choices.iter().filter(|one| one.chosen).map(|one| one.tag.as_str()).collect();
    assert_eq!(chosen, ["kind-silver", "kind-skimmer", "kind-stockie", "kind-carp"]);
    phone.choose(20_000, "classes", "kind-carp");
    phone.choose(22_000, "classes", "kind-pike");
    let classes = |phone: &mut Phone| -> Vec<String> {
        phone.app().match_setup().unwrap().classes.iter().map(|class| class.name.clone()).collect()
    };
    assert_eq!(classes(&mut phone), ["Silver", "Skimmer", "Stockie", "Hecht"]);
    phone.app().set_language("fr");
    phone.tap(24_000, &rule(RuleTap::Class { class: UsualClass::Pike })).unwrap();
    assert_eq!(classes(&mut phone), ["Silver", "Skimmer", "Stockie"]);
}

/// "Section: pegs left" 3, and nothing of the right.
#[test]
fn one_side_of_the_section_says_nothing_of_the_other() {
    let mut phone = in_match();
    phone.land(FISHING);
    phone.tap(FISHING + 12 * MIN, &weight(1_024)).unwrap();
    let mut now = FISHING + 13 * MIN;
    phone.choose(now, "section-left", "3");
    now += MIN;
    let (left, right) = (phone.rule_row(now, "section-left"), phone.rule_row(now, "section-right"));
    assert_eq!((left.value.as_str(), right.value.as_str()), ("3", "not entered"));
    assert!(right.choices.iter().all(|choice| !choice.chosen), "{right:?}");
    assert_eq!(left.source, "Counts once the other side is entered.");
    assert_eq!(phone.app().session().unwrap().section, None, "no place in a section of unknown extent");
    phone.open();
    assert_eq!(phone.rule_row(now, "section-left").value, "3", "over a restart");
    // Another figure for the same side replaces it.
    phone.choose(now, "section-left", "4");
    phone.choose(now + MIN, "section-right", "0");
    let section = phone.app().session().unwrap().section.unwrap();
    assert_eq!((section.left, section.right), (4, 0));
    now += 2 * MIN;
    let (left, right) = (phone.rule_row(now, "section-left"), phone.rule_row(now, "section-right"));
    assert_eq!((left.value.as_str(), left.source.as_str(), right.value.as_str()), ("4", "", "0"));
    // UNDO leaves the side that was said first.
    phone.tap(now, &Action::Undo).unwrap();
    assert_eq!(
        (phone.rule_row(now, "section-left").value.as_str(), phone.app().session().unwrap().section),
        ("4", None)
    );
    phone.choose(now + 1_000, "section-right", "1");
    // From then on each side is changed alone.
    phone.choose(now + 2_000, "section-right", "2");
    let section = phone.app().session().unwrap().section.unwrap();
    assert_eq!((section.left, section.right), (4, 2));
}

#[test]
fn a_fish_put_back_in_a_match_is_worded_by_the_organisers_rule() {
    let mut phone = in_match();
    phone.land(FISHING);
    phone
        .tap(FISHING + 12 * MIN, &Action::Fish { cast: None, tap: FishTap::PutBack { back: true } })
        .unwrap();
    let says = |phone: &mut Phone| phone.fish(FISHING + 14 * MIN).says.join(" ");
    let said = says(&mut phone);
    assert!(said.contains("Put back: not in the count. Ask the organiser."), "{said}");
    phone.tap(FISHING + 13 * MIN, &typed(TypedInto::MatchRule, "fish put back count half.")).unwrap();
    let said = says(&mut phone);
    assert!(said.contains("Put back: not in the count. The rule: fish put back count half."), "{said}");
    assert!(!said.contains(".."), "{said}");
}
