//! Conversions between the wire types of a kit in the log and the types of the bench.

use restwater_bench::hooklength::Hooklength;
use restwater_bench::tie_up::Allowances;
use restwater_bench::units::LineLength;
use restwater_log as log;
use restwater_log::{LineMaterial, ShotMetal};

/// A pop-up as measured on the bench.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Measured {
    /// Lift of the bait in mg under water.
    pub lift_mg: u32,
    /// Minutes it had soaked when that was measured.
    pub soaked_min: u16,
    /// Weight of the hook in air, mg.
    pub hook_mg: u32,
    /// Counterweight to hook.
    pub height: LineLength,
    /// Diameter of that line in thousandths of a millimetre.
    pub line_um: u16,
    /// What that line is made of.
    pub line: LineMaterial,
    /// What the shot is made of.
    pub shot: ShotMetal,
}

impl Default for Measured {
    fn default() -> Self {
        measured(&log::Measured::default())
    }
}

/// A hooklength from the log.
pub fn hooklength(wire: &log::Hooklength) -> Hooklength {
    Hooklength {
        length: LineLength::from_tenths_mm(wire.length_tenth_mm),
        diameter_um: wire.diameter_um,
        hook_size: wire.hook_size,
        hair_mm: wire.hair_mm,
    }
}

/// A hooklength for the log.
pub fn logged_hooklength(hooklength: &Hooklength) -> log::Hooklength {
    log::Hooklength {
        length_tenth_mm: hooklength.length.tenths_mm(),
        diameter_um: hooklength.diameter_um,
        hook_size: hooklength.hook_size,
        hair_mm: hooklength.hair_mm,
    }
}

/// Allowances from the log.
pub fn allowances(wire: &log::Allowances) -> Allowances {
    Allowances {
        hook_knot: LineLength::from_tenths_mm(wire.hook_knot_tenth_mm),
        loop_length: LineLength::from_tenths_mm(wire.loop_length_tenth_mm),
        tag: LineLength::from_tenths_mm(wire.tag_tenth_mm),
    }
}

/// Allowances for the log.
pub fn logged_allowances(allowances: &Allowances) -> log::Allowances {
    log::Allowances {
        hook_knot_tenth_mm: allowances.hook_knot.tenths_mm(),
        loop_length_tenth_mm: allowances.loop_length.tenths_mm(),
        tag_tenth_mm: allowances.tag.tenths_mm(),
    }
}

/// A measured pop-up from the log.
pub fn measured(wire: &log::Measured) -> Measured {
    Measured {
        lift_mg: wire.lift_mg,
        soaked_min: wire.soaked_min,
        hook_mg: wire.hook_mg,
        height: LineLength::from_tenths_mm(wire.height_tenth_mm),
        line_um: wire.line_um,
        line: wire.line,
        shot: wire.shot,
    }
}

/// A measured pop-up for the log.
pub fn logged_measured(measured: &Measured) -> log::Measured {
    log::Measured {
        lift_mg: measured.lift_mg,
        soaked_min: measured.soaked_min,
        hook_mg: measured.hook_mg,
        height_tenth_mm: measured.height.tenths_mm(),
        line_um: measured.line_um,
        line: measured.line,
        shot: measured.shot,
    }
}
