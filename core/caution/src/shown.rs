//! Which cautions to show now: each once for a peg and never again there.

use super::table::{ALL, AppliesWhen, Caution, Region};

/// A caution that was shown and dismissed at a peg.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Seen {
    /// The peg: the caller's key of water and peg, or of the session if the peg has no name.
    pub peg: String,
    /// Id of the caution.
    pub id: String,
}

/// The circumstances of the day, as far as they are known. Unknown ones count as true.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Occasion {
    /// Nobody within call.
    pub alone: Option<bool>,
    /// Fishing in the dark.
    pub dark: Option<bool>,
    /// Air temperature, tenths of a degree Celsius.
    pub air: Option<i16>,
    /// Water temperature, tenths of a degree Celsius.
    pub water: Option<i16>,
    /// Keepnets or sacks in use.
    pub keepnets: Option<bool>,
    /// Lead in the box.
    pub lead: Option<bool>,
}

/// Water below this is cold enough for cold-water shock, tenths of a degree (lifeboat and safety
/// charities' figure, as read in stored copies).
const COLD_WATER: i16 = 150;
/// Air below this chills wet hands, tenths of a degree: the project's own choice, no source, on the careful
/// side.
const COLD_AIR: i16 = 100;
/// Air at or below this may freeze in the hours to come, tenths of a degree: the project's own choice, no source, on
/// the careful side.
const FROST_AIR: i16 = 30;

impl Occasion {
    fn applies(&self, when: AppliesWhen) -> bool {
        let below = |t: Option<i16>, limit: i16| t.is_none_or(|t| t < limit);
        match when {
            AppliesWhen::Always => true,
            AppliesWhen::AloneOrDark => self.alone.unwrap_or(true) || self.dark.unwrap_or(true),
            AppliesWhen::Cold => below(self.water, COLD_WATER) || below(self.air, COLD_AIR),
            AppliesWhen::Frost => below(self.air, FROST_AIR + 1),
            AppliesWhen::Keepnets => self.keepnets.unwrap_or(true),
            AppliesWhen::Lead => self.lead.unwrap_or(true),
        }
    }
}

/// The cautions of a region that apply to the occasion, seen or not, in the order of the table.
pub fn that_apply(region: Region, occasion: &Occasion) -> Vec<&'static Caution> {
    ALL.iter().filter(|c| c.regions.contains(&region) && occasion.applies(c.applies_when)).collect()
}

/// How many cautions are shown at a peg, since a list of two dozen teaches an angler to skip it. The
/// project's own choice, no source.
const AT_A_PEG: usize = 4;

/// The few cautions shown at a peg: the first of the table that apply to the occasion. The others can be read
/// in the list.
pub fn at_a_peg(region: Region, occasion: &Occasion) -> Vec<&'static Caution> {
    let mut first = that_apply(region, occasion);
    first.truncate(AT_A_PEG);
    first
}

/// Those of the few that were not seen at `peg` yet. A caution that was seen is not replaced by another, whether it still applies
/// or not: it goes on taking up its part of the room. Only the first four of the table are shown whatever else was seen, since
/// they are what kills once it is cold.
pub fn to_show(region: Region, occasion: &Occasion, peg: &str, seen: &[Seen]) -> Vec<&'static Caution> {
    let seen_here = |c: &Caution| seen.iter().any(|s| s.peg == peg && s.id == c.id);
    let first: Vec<&str> =
        ALL.iter().filter(|c| c.regions.contains(&region)).take(AT_A_PEG).map(|c| c.id).collect();
    let mut room = AT_A_PEG.saturating_sub(ALL.iter().filter(|c| seen_here(c)).count());
    let mut shown = at_a_peg(region, occasion);
    shown.retain(|c| !seen_here(c));
    shown.retain(|c| {
        let fits = room > 0 || first.contains(&c.id);
        room = room.saturating_sub(usize::from(fits));
        fits
    });
    shown
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ids(cautions: &[&Caution]) -> Vec<&'static str> {
        cautions.iter().map(|c| c.id).collect()
    }

    #[test]
    fn a_caution_is_shown_once_at_a_peg_and_again_at_the_next() {
        let day = Occasion::default();
        let first = to_show(Region::England, &day, "peg 14", &[]);
        assert_eq!(first[0].id, "caution-power-lines");
        let seen: Vec<Seen> = first.iter().map(|c| Seen { peg: "peg 14".into(), id: c.id.into() }).collect();
        assert!(to_show(Region::England, &day, "peg 14", &seen).is_empty());
        assert_eq!(to_show(Region::England, &day, "peg 15", &seen).len(), first.len());
    }

    #[test]
    fn a_peg_shows_four_and_what_kills_in_the_cold_comes_first() {
        let winter = Occasion { air: Some(10), water: Some(40), ..Occasion::default() };
        assert_eq!(
            ids(&to_show(Region::England, &winter, "peg 14", &[])),
            ["caution-power-lines", "caution-cold-water", "caution-ice", "caution-carbon-monoxide"]
        );
        let summer = Occasion { air: Some(200), water: Some(190), ..Occasion::default() };
        let shown = ids(&to_show(Region::England, &summer, "peg 14", &[]));
        assert_eq!(shown.len(), AT_A_PEG);
        assert!(shown.contains(&"caution-lightning") && !shown.contains(&"caution-ice"), "{shown:?}");
    }

    #[test]
    fn a_caution_that_was_seen_is_not_replaced_by_the_next_of_the_table() {
        let day = Occasion::default();
        let seen = [Seen { peg: "peg 14".into(), id: "caution-power-lines".into() }];
        let left = to_show(Region::England, &day, "peg 14", &seen);
        assert_eq!(left.len(), AT_A_PEG - 1);
    }

    /// All four were read; then it warms up, and one of them no longer applies.
    #[test]
    fn a_caution_that_was_read_is_not_replaced_when_the_weather_changes() {
        let at = |air| Occasion { air: Some(air), water: Some(170), ..Occasion::default() };
        let (cold, warm) = (at(10), at(200));
        let read: Vec<Seen> = to_show(Region::England, &cold, "peg 14", &[])
            .iter()
            .map(|c| Seen { peg: "peg 14".into(), id: c.id.into() })
            .collect();
        assert_eq!(read.len(), AT_A_PEG);
        let first = ids(&at_a_peg(Region::England, &warm));
        assert!(
            read.iter().any(|seen| !first.contains(&seen.id.as_str())),
            "one of them moved up: {first:?}"
        );
        assert!(to_show(Region::England, &warm, "peg 14", &read).is_empty());
        // Of those that still apply, as many are shown as are left of the four.
        let left = ids(&to_show(Region::England, &warm, "peg 14", &read[..2]));
        assert_eq!(left.len(), AT_A_PEG - 2);
        assert_eq!(to_show(Region::England, &warm, "peg 15", &read).len(), AT_A_PEG, "another peg");
        // Read in summer: what kills in the cold is still to be read once it is cold.
        let read: Vec<Seen> =
            first.iter().map(|id| Seen { peg: "peg 14".into(), id: (*id).to_owned() }).collect();
        assert_eq!(
            ids(&to_show(Region::England, &cold, "peg 14", &read)),
            ["caution-cold-water", "caution-ice", "caution-carbon-monoxide"]
        );
    }

    #[test]
    fn unknown_circumstances_count_as_true() {
        let unknown = ids(&that_apply(Region::Wales, &Occasion::default()));
        for id in
            ["caution-ice", "caution-alone", "caution-keepnet-use", "caution-lead", "caution-cold-water"]
        {
            assert!(unknown.contains(&id), "{id}");
        }
    }

    #[test]
    fn a_mild_day_without_nets_or_lead_has_few_cautions() {
        let mild = Occasion {
            alone: Some(false),
            dark: Some(false),
            air: Some(180),
            water: Some(170),
            keepnets: Some(false),
            lead: Some(false),
        };
        let short = ids(&that_apply(Region::England, &mild));
        for id in
            ["caution-ice", "caution-alone", "caution-keepnet-form", "caution-lead", "caution-cold-water"]
        {
            assert!(!short.contains(&id), "{id}");
        }
        assert!(short.contains(&"caution-power-lines"));
        let alone = Occasion { alone: Some(true), ..mild };
        assert!(ids(&that_apply(Region::England, &alone)).contains(&"caution-alone"));
        let cold = Occasion { water: Some(149), ..mild };
        assert!(ids(&that_apply(Region::England, &cold)).contains(&"caution-cold-water"));
    }

    #[test]
    fn the_law_of_one_country_is_not_shown_in_another() {
        let away = ids(&that_apply(Region::Elsewhere, &Occasion::default()));
        for id in [
            "caution-close-season",
            "caution-licence",
            "caution-lead",
            "caution-power-lines-emergency",
            "caution-power-lines-emergency-ni",
        ] {
            assert!(!away.contains(&id), "{id}");
        }
        let north = ids(&that_apply(Region::NorthernIreland, &Occasion::default()));
        assert!(north.contains(&"caution-power-lines-emergency-ni"), "its network has a number of its own");
        assert!(!north.contains(&"caution-power-lines-emergency"));
        assert!(away.contains(&"caution-lead-elsewhere") && away.contains(&"caution-licence-elsewhere"));
    }
}
