//! What to pack, from the plan of the day.

use super::hooklength::Tied;
use serde::{Deserialize, Serialize};

/// The plan from which a pack list is made; every field may be empty.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct DayPlan {
    /// Rods to be set up.
    pub rods: u16,
    /// Hooklengths to carry, the spares included.
    pub hooklengths: Vec<Tied>,
    /// Shot to carry by name of the size.
    pub shot: Vec<(String, u16)>,
    /// Leads or feeders to carry by name.
    pub leads: Vec<(String, u16)>,
    /// Baits by name, with how many.
    pub baits: Vec<(String, u16)>,
    /// Keepnets the rules of the day ask for, if it is a match.
    pub keepnets: u16,
    /// Whether the last cast comes after sunset or the first before sunrise.
    pub dark: bool,
    /// Whether the night or the day goes below freezing, as far as is known.
    pub frost: bool,
}

/// One kind of thing to pack. Its words are in the wording of the screens.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Item {
    /// Rods, with a reel each.
    Rods,
    /// Tied hooklengths.
    Hooklengths(super::hooklength::Hooklength),
    /// Shot of a size.
    Shot(String),
    /// Leads or feeders.
    Leads(String),
    /// A bait.
    Bait(String),
    /// The two sticks for measuring wraps.
    DistanceSticks,
    /// Landing net.
    LandingNet,
    /// Unhooking mat.
    Mat,
    /// Forceps or disgorger.
    Disgorger,
    /// Keepnets, dry.
    Keepnets,
    /// Rod licence and the ticket of the water.
    Licence,
    /// Phone, warm and charged.
    Phone,
    /// A light.
    Light,
    /// Spare dry clothes and gloves.
    DryClothes,
    /// A first-aid kit.
    FirstAid,
}

/// One line of the list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Packed {
    /// What.
    pub item: Item,
    /// How many.
    pub count: u32,
}

/// The list: what the plan needs, then what every day needs, with nothing twice.
pub fn list(plan: &DayPlan) -> Vec<Packed> {
    let mut list: Vec<Packed> = Vec::new();
    let mut put = |item: Item, count: u32| match list.iter_mut().find(|p| p.item == item) {
        _ if count == 0 => {}
        Some(packed) => packed.count += count,
        None => list.push(Packed { item, count }),
    };
    put(Item::Rods, u32::from(plan.rods));
    for tied in &plan.hooklengths {
        put(Item::Hooklengths(tied.hooklength), u32::from(tied.count));
    }
    for (name, count) in &plan.leads {
        put(Item::Leads(name.clone()), u32::from(*count));
    }
    for (name, count) in &plan.shot {
        put(Item::Shot(name.clone()), u32::from(*count));
    }
    for (name, count) in &plan.baits {
        put(Item::Bait(name.clone()), u32::from(*count));
    }
    put(Item::Keepnets, u32::from(plan.keepnets));
    for item in [Item::LandingNet, Item::Mat, Item::Disgorger, Item::DistanceSticks] {
        put(item, 1);
    }
    for item in [Item::Licence, Item::Phone, Item::FirstAid] {
        put(item, 1);
    }
    put(Item::Light, u32::from(plan.dark));
    put(Item::DryClothes, u32::from(plan.frost));
    list
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_plan_comes_first_and_nothing_is_listed_twice() {
        let plan = DayPlan {
            rods: 2,
            shot: vec![("BB".into(), 2), ("BB".into(), 3)],
            keepnets: 2,
            dark: true,
            ..DayPlan::default()
        };
        let list = list(&plan);
        assert_eq!(list[0], Packed { item: Item::Rods, count: 2 });
        assert!(list.contains(&Packed { item: Item::Shot("BB".into()), count: 5 }));
        assert!(list.contains(&Packed { item: Item::Light, count: 1 }));
        assert!(!list.iter().any(|p| p.item == Item::DryClothes));
    }

    #[test]
    fn an_empty_plan_still_lists_what_every_day_needs() {
        let items: Vec<Item> = list(&DayPlan::default()).into_iter().map(|p| p.item).collect();
        assert!(items.contains(&Item::Licence) && items.contains(&Item::Phone));
        assert!(!items.contains(&Item::Rods));
    }
}
