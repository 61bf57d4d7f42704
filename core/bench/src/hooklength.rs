//! Hooklengths in the wallet: what is tied, what was lost, what is still to tie.

use super::units::LineLength;
use serde::{Deserialize, Serialize};

/// A tied hooklength. Sorted by length first, so lists read from short to long.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Hooklength {
    /// From the loop to the bend of the hook.
    pub length: LineLength,
    /// Line diameter in thousandths of a millimetre (0.12 mm is 120).
    pub diameter_um: u16,
    /// Size on the packet: the bigger the number the smaller the hook.
    pub hook_size: u8,
    /// Length of the hair in millimetres, if there is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hair_mm: Option<u16>,
}

/// A number of one kind of hooklength.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Tied {
    /// Which.
    pub hooklength: Hooklength,
    /// How many.
    pub count: u16,
}

/// Why the wallet can't be changed in this way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum WalletError {
    /// No length, no diameter, or a diameter of rope.
    #[error("a hooklength needs a length and a diameter between 0.04 and 1 mm")]
    NotAHooklength,
    /// More taken out than are in.
    #[error("the wallet holds {have} of that {length} hooklength, not {asked}")]
    NotThatMany {
        /// Which length.
        length: LineLength,
        /// How many there are.
        have: u16,
        /// How many were asked for.
        asked: u16,
    },
    /// More than a wallet holds.
    #[error("{0} of one hooklength is more than a wallet holds")]
    Absurd(u32),
}

/// No wallet holds more of one kind.
const MOST: u32 = 1_000;

/// All tied hooklengths, one entry for each kind, short to long.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Wallet {
    tied: Vec<Tied>,
}

impl Wallet {
    /// Puts `count` more in.
    pub fn add(&mut self, hooklength: Hooklength, count: u16) -> Result<(), WalletError> {
        if hooklength.length.tenths_mm() == 0 || !(40..=1000).contains(&hooklength.diameter_um) {
            return Err(WalletError::NotAHooklength);
        }
        let sum = u32::from(self.count(hooklength)) + u32::from(count);
        if sum > MOST {
            return Err(WalletError::Absurd(sum));
        }
        self.set(hooklength, sum as u16);
        Ok(())
    }

    /// Takes `count` out.
    pub fn remove(&mut self, hooklength: Hooklength, count: u16) -> Result<(), WalletError> {
        let have = self.count(hooklength);
        let Some(left) = have.checked_sub(count) else {
            return Err(WalletError::NotThatMany { length: hooklength.length, have, asked: count });
        };
        self.set(hooklength, left);
        Ok(())
    }

    fn set(&mut self, hooklength: Hooklength, count: u16) {
        match self.tied.binary_search_by_key(&hooklength, |t| t.hooklength) {
            Ok(i) if count == 0 => drop(self.tied.remove(i)),
            Ok(i) => self.tied[i].count = count,
            Err(_) if count == 0 => {}
            Err(i) => self.tied.insert(i, Tied { hooklength, count }),
        }
    }

    /// How many of one kind.
    pub fn count(&self, hooklength: Hooklength) -> u16 {
        self.tied.binary_search_by_key(&hooklength, |t| t.hooklength).map_or(0, |i| self.tied[i].count)
    }

    /// The entries, short to long.
    pub fn tied(&self) -> &[Tied] {
        &self.tied
    }

    /// Every single hooklength, short to long, as the cut-down plan needs them.
    pub fn each(&self) -> Vec<Hooklength> {
        self.tied.iter().flat_map(|t| std::iter::repeat_n(t.hooklength, usize::from(t.count))).collect()
    }

    /// What this wallet lacks to contain all of `wanted`.
    pub fn still_to_tie(&self, wanted: &Wallet) -> Vec<Tied> {
        wanted
            .tied
            .iter()
            .filter_map(|w| {
                let count = w.count.saturating_sub(self.count(w.hooklength));
                (count > 0).then_some(Tied { hooklength: w.hooklength, count })
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn inches(length: f64) -> Hooklength {
        Hooklength {
            length: LineLength::from_inches(length).unwrap(),
            diameter_um: 120,
            hook_size: 16,
            hair_mm: None,
        }
    }

    #[test]
    fn taking_out_more_than_there_are_changes_nothing() {
        let mut wallet = Wallet::default();
        wallet.add(inches(36.0), 2).unwrap();
        let before = wallet.clone();
        assert!(matches!(
            wallet.remove(inches(36.0), 3),
            Err(WalletError::NotThatMany { have: 2, asked: 3, .. })
        ));
        assert_eq!(wallet, before);
        assert!(matches!(wallet.add(inches(36.0), 2_000), Err(WalletError::Absurd(2_002))));
    }

    #[test]
    fn what_is_still_to_tie_is_the_difference() {
        let (mut have, mut wanted) = (Wallet::default(), Wallet::default());
        have.add(inches(36.0), 2).unwrap();
        wanted.add(inches(36.0), 6).unwrap();
        wanted.add(inches(60.0), 4).unwrap();
        let counts: Vec<u16> = have.still_to_tie(&wanted).iter().map(|t| t.count).collect();
        assert_eq!(counts, vec![4, 4]);
        assert!(wanted.still_to_tie(&have).is_empty());
    }

    #[test]
    fn a_hooklength_without_a_length_is_none() {
        let mut wallet = Wallet::default();
        let nothing = Hooklength { length: LineLength::default(), ..inches(1.0) };
        assert_eq!(wallet.add(nothing, 1), Err(WalletError::NotAHooklength));
    }
}
