//! The one table of cautions. Change a text, an authority or a date here and in
//! `locales/en-GB/caution.ftl`, and nowhere else. Laws change: go through it every year.

use serde::{Deserialize, Serialize};

/// Month of the last review of the whole table.
pub const REVIEWED: &str = "2026-11";

/// Message that closes every card: follow local rules, the venue and the licensing authority.
pub const CLOSING_ID: &str = "caution-closing";

/// The region of a water.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum Region {
    /// England.
    England,
    /// Wales.
    Wales,
    /// Scotland.
    Scotland,
    /// Northern Ireland.
    NorthernIreland,
    /// Anywhere else: local law is not known here.
    Elsewhere,
}

impl Region {
    /// Every region.
    pub const ALL: [Self; 5] =
        [Self::England, Self::Wales, Self::Scotland, Self::NorthernIreland, Self::Elsewhere];
}

/// The source of a caution's text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Basis {
    /// Read in a stored copy of the authority's page or paper; its own date could not be verified.
    AsStored,
    /// Read as quoted by others.
    SecondHand,
    /// Common practice, no source.
    CommonPractice,
}

impl Basis {
    /// The message for it, with the argument `$read`, the month of [`Caution::read`].
    pub const fn id(self) -> &'static str {
        match self {
            Self::AsStored => "caution-basis-stored",
            Self::SecondHand => "caution-basis-second-hand",
            Self::CommonPractice => "caution-basis-practice",
        }
    }
}

/// When a caution applies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AppliesWhen {
    /// At every peg.
    Always,
    /// Alone, or in the dark.
    AloneOrDark,
    /// When air or water is cold.
    Cold,
    /// When it freezes.
    Frost,
    /// When keepnets or sacks are used.
    Keepnets,
    /// When lead is in the box.
    Lead,
}

/// One caution. Its words are the Fluent message `id`; `id`-title is the heading of the card and
/// `id`-authority names the authority.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Caution {
    /// Message id.
    pub id: &'static str,
    /// The source of the text.
    pub basis: Basis,
    /// Month in which it was read or noted.
    pub read: &'static str,
    /// Where it applies.
    pub regions: &'static [Region],
    /// When it applies.
    pub applies_when: AppliesWhen,
}

impl Caution {
    /// Message that heads the card.
    pub fn title_id(&self) -> String {
        format!("{}-title", self.id)
    }

    /// Message that names the authority.
    pub fn authority_id(&self) -> String {
        format!("{}-authority", self.id)
    }
}

const EVERYWHERE: &[Region] = &Region::ALL;
const ENGLAND_AND_WALES: &[Region] = &[Region::England, Region::Wales];
const BEYOND: &[Region] = &[Region::Scotland, Region::NorthernIreland, Region::Elsewhere];
const GREAT_BRITAIN: &[Region] = &[Region::England, Region::Wales, Region::Scotland];
const UK: &[Region] = &[Region::England, Region::Wales, Region::Scotland, Region::NorthernIreland];

const fn caution(
    id: &'static str,
    basis: Basis,
    regions: &'static [Region],
    applies_when: AppliesWhen,
) -> Caution {
    Caution { id, basis, read: "2026-11", regions, applies_when }
}

/// All cautions, in the order in which they are shown: first what kills on a cold bank.
pub const ALL: [Caution; 29] = [
    caution("caution-power-lines", Basis::SecondHand, EVERYWHERE, AppliesWhen::Always),
    caution("caution-cold-water", Basis::AsStored, EVERYWHERE, AppliesWhen::Cold),
    caution("caution-ice", Basis::AsStored, EVERYWHERE, AppliesWhen::Frost),
    caution("caution-carbon-monoxide", Basis::AsStored, EVERYWHERE, AppliesWhen::Cold),
    caution("caution-lightning", Basis::SecondHand, EVERYWHERE, AppliesWhen::Always),
    caution("caution-hypothermia", Basis::AsStored, EVERYWHERE, AppliesWhen::Cold),
    caution("caution-power-lines-emergency", Basis::AsStored, GREAT_BRITAIN, AppliesWhen::Always),
    caution(
        "caution-power-lines-emergency-ni",
        Basis::AsStored,
        &[Region::NorthernIreland],
        AppliesWhen::Always,
    ),
    caution("caution-alone", Basis::AsStored, EVERYWHERE, AppliesWhen::AloneOrDark),
    caution("caution-bank", Basis::SecondHand, EVERYWHERE, AppliesWhen::Always),
    caution("caution-weather", Basis::SecondHand, UK, AppliesWhen::Always),
    caution("caution-frostbite", Basis::AsStored, EVERYWHERE, AppliesWhen::Frost),
    caution("caution-hook-in-eye", Basis::AsStored, EVERYWHERE, AppliesWhen::Always),
    caution("caution-casting", Basis::CommonPractice, EVERYWHERE, AppliesWhen::Always),
    caution("caution-leptospirosis", Basis::SecondHand, EVERYWHERE, AppliesWhen::Always),
    caution("caution-tetanus", Basis::SecondHand, EVERYWHERE, AppliesWhen::Always),
    caution("caution-lead", Basis::AsStored, ENGLAND_AND_WALES, AppliesWhen::Lead),
    caution("caution-lead-elsewhere", Basis::SecondHand, BEYOND, AppliesWhen::Lead),
    caution("caution-close-season", Basis::AsStored, ENGLAND_AND_WALES, AppliesWhen::Always),
    caution("caution-licence", Basis::AsStored, ENGLAND_AND_WALES, AppliesWhen::Always),
    caution("caution-licence-elsewhere", Basis::CommonPractice, BEYOND, AppliesWhen::Always),
    caution("caution-rods", Basis::AsStored, ENGLAND_AND_WALES, AppliesWhen::Always),
    caution("caution-rods-on-licence", Basis::SecondHand, ENGLAND_AND_WALES, AppliesWhen::Always),
    caution("caution-keepnet-form", Basis::SecondHand, ENGLAND_AND_WALES, AppliesWhen::Keepnets),
    caution("caution-keepnet-use", Basis::SecondHand, EVERYWHERE, AppliesWhen::Keepnets),
    caution("caution-fish-handling", Basis::CommonPractice, EVERYWHERE, AppliesWhen::Always),
    caution("caution-fish-frost", Basis::SecondHand, EVERYWHERE, AppliesWhen::Frost),
    caution("caution-wildlife", Basis::CommonPractice, EVERYWHERE, AppliesWhen::Always),
    caution("caution-clean", Basis::CommonPractice, EVERYWHERE, AppliesWhen::Always),
];

#[cfg(test)]
mod tests {
    use super::super::lead_rule::LeadRule;
    use super::*;
    use fluent_bundle::{FluentArgs, FluentBundle, FluentResource, FluentValue};

    fn bundle() -> FluentBundle<FluentResource> {
        let text = include_str!("../../locales/en-GB/caution.ftl");
        let resource = FluentResource::try_new(text.to_owned()).expect("the file parses whole");
        let mut bundle = FluentBundle::new(vec!["en-GB".parse().expect("a language")]);
        bundle.set_use_isolating(false);
        bundle.add_resource(resource).expect("no id stands twice");
        bundle
    }

    fn value(bundle: &FluentBundle<FluentResource>, id: &str) -> String {
        let message = bundle.get_message(id).unwrap_or_else(|| panic!("no message {id}"));
        let pattern = message.value().unwrap_or_else(|| panic!("{id} says nothing"));
        let mut args = FluentArgs::new();
        args.set("read", FluentValue::from(REVIEWED));
        let mut errors = Vec::new();
        let text = bundle.format_pattern(pattern, Some(&args), &mut errors).into_owned();
        assert!(errors.is_empty(), "{id}: {errors:?}");
        assert!(!text.is_empty(), "{id}");
        text
    }

    #[test]
    fn every_id_has_its_words() {
        let bundle = bundle();
        for caution in ALL {
            value(&bundle, caution.id);
            value(&bundle, &caution.title_id());
            value(&bundle, &caution.authority_id());
        }
        for basis in [Basis::AsStored, Basis::SecondHand, Basis::CommonPractice] {
            assert!(value(&bundle, basis.id()).contains(REVIEWED));
        }
        for rule in [LeadRule::NotToBeUsed, LeadRule::AtTheLimit, LeadRule::CheckLocally] {
            assert!(value(&bundle, rule.id().unwrap()).ends_with(&value(&bundle, CLOSING_ID)));
        }
        assert_eq!(value(&bundle, CLOSING_ID), "Follow local rules, the venue and the licensing authority.");
    }

    #[test]
    fn the_file_has_no_messages_without_a_caution() {
        let text = include_str!("../../locales/en-GB/caution.ftl");
        let known = |id: &str| {
            ALL.iter().any(|c| c.id == id || c.title_id() == id || c.authority_id() == id)
                || id == CLOSING_ID
                || id.starts_with("caution-basis-")
                || id.starts_with("lead-rule-")
        };
        let ids = text.lines().filter(|l| l.starts_with(|c: char| c.is_ascii_lowercase()));
        for id in ids.map(|l| l.split(" =").next().unwrap_or(l)) {
            assert!(known(id), "{id}");
        }
    }

    #[test]
    fn no_caution_occurs_twice_and_each_applies_somewhere() {
        for (i, caution) in ALL.iter().enumerate() {
            assert!(ALL[..i].iter().all(|other| other.id != caution.id), "{}", caution.id);
            assert!(!caution.regions.is_empty() && caution.read.len() == 7);
        }
    }
}
