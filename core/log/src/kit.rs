//! The kit of an angler, which outlives a session, and the data of its entries.
//!
//! Inventory, bench figures and cautions seen belong to no day, so each phone has a separate session for
//! them: the kit. It has everything that a session has: ops, undo, merge, export, backup. Its id is derived
//! from the phone's, so the contents of a partner's file never get mixed into the own wallet. The id is a
//! version 8 UUID, so a list of sessions can tell a kit from a day without reading an op.

use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use uuid::{Builder, Uuid};

/// The id of a phone's kit: a version 8 UUID (RFC 9562, section 5.8) derived from its device id.
pub fn kit_of(device: Uuid) -> Uuid {
    let mut hash = Sha256::new();
    hash.update(b"restwater kit of ");
    hash.update(device.as_bytes());
    let digest = hash.finalize();
    let mut bytes = [0_u8; 16];
    bytes.copy_from_slice(&digest[..16]);
    Builder::from_custom_bytes(bytes).into_uuid()
}

/// Whether a session is a kit: days have version 7 ids.
pub fn is_kit(session: Uuid) -> bool {
    session.get_version_num() == 8
}

/// The material of a hooklength.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum LineMaterial {
    /// Nylon.
    #[default]
    Nylon,
    /// Fluorocarbon.
    Fluorocarbon,
    /// Braid: it floats.
    Braid,
}

/// What shot is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum ShotMetal {
    /// Solid tungsten.
    #[default]
    Tungsten,
    /// Tin.
    Tin,
    /// Steel.
    Steel,
    /// Lead.
    Lead,
}

/// A pop-up as measured on the bench.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Measured {
    /// Lift of the bait in mg under water.
    pub lift_mg: u32,
    /// Minutes it had soaked when the lift was measured.
    pub soaked_min: u16,
    /// Weight of the hook in air, mg.
    pub hook_mg: u32,
    /// Counterweight to hook, in tenths of a millimetre.
    #[serde(rename = "height")]
    pub height_tenth_mm: u32,
    /// Diameter of that line in thousandths of a millimetre.
    pub line_um: u16,
    /// What that line is made of.
    pub line: LineMaterial,
    /// What the shot is made of.
    pub shot: ShotMetal,
}

impl Default for Measured {
    /// A starting point, not a measurement: 0.5 g of lift after 20 min, a hook of 0.1 g, 18 in of 0.16 mm nylon.
    fn default() -> Self {
        Self {
            lift_mg: 500,
            soaked_min: 20,
            hook_mg: 100,
            height_tenth_mm: 4_572,
            line_um: 160,
            line: LineMaterial::Nylon,
            shot: ShotMetal::Tungsten,
        }
    }
}

/// What one shot of a size weighs.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct ShotWeight {
    /// As the angler calls the size.
    pub size: String,
    /// mg in air; 0 if it is not in the box.
    pub mg: u32,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_kit_differs_from_a_day_and_belongs_to_one_phone() {
        let (one, other) = (Uuid::from_u128(1), Uuid::from_u128(2));
        assert!(is_kit(kit_of(one)) && kit_of(one) != kit_of(other));
        assert_eq!(kit_of(one), kit_of(one));
        let day = Builder::from_unix_timestamp_millis(1_768_640_400_000, &[7; 10]).into_uuid();
        assert!(!is_kit(day) && !is_kit(Uuid::nil()));
    }
}
