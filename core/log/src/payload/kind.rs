//! The kind of an entry: its written name, its data, and what can be asked of every kind.

use super::Payload;
use crate::setup::RodNumber;
use serde_json::Value;
use strum::VariantNames;
use uuid::Uuid;

/// The kinds this version reads.
fn known_kinds() -> impl Iterator<Item = &'static str> {
    // The variant for unknown kinds is not a kind itself.
    Payload::VARIANTS.iter().copied().filter(|kind| *kind != "unknown")
}

impl Payload {
    /// Its data, as written beside its kind.
    pub(crate) fn content(&self) -> Result<Option<Value>, serde_json::Error> {
        if let Self::Unknown { payload, .. } = self {
            return Ok(payload.clone());
        }
        // Serde writes a kind with data as {kind: data}, and one without data as its name.
        Ok(match serde_json::to_value(self)? {
            Value::Object(whole) => whole.into_iter().next().map(|(_, content)| content),
            _ => None,
        })
    }

    /// The kind as it is written.
    pub fn kind(&self) -> &str {
        match self {
            Self::Unknown { kind, .. } => kind,
            known => known.into(),
        }
    }

    /// Whether this version can read the kind. A known kind with a wrong payload is an error; unknown kinds
    /// are kept.
    pub(crate) fn kind_is_known(kind: &str) -> bool {
        known_kinds().any(|known| known == kind)
    }

    /// The entries that it puts out of force, by undo, removal or otherwise: as long as this entry is in
    /// force itself, they do not count.
    pub fn voids(&self) -> Option<&[Uuid]> {
        match self {
            Self::Undone { targets }
            | Self::Removed { targets }
            | Self::ImportUndone { targets, .. }
            | Self::ImportRedone { targets, .. } => Some(targets),
            _ => None,
        }
    }

    /// The rod it is about, if it is about one.
    pub fn rod(&self) -> Option<RodNumber> {
        match self {
            Self::Cast { rod }
            | Self::Bite { rod }
            | Self::Landed { rod, .. }
            | Self::Lost { rod }
            | Self::Missed { rod }
            | Self::Liner { rod }
            | Self::Indication { rod }
            | Self::WoundIn { rod }
            | Self::Twitch { rod }
            | Self::RigSet { rod, .. }
            | Self::SpotSet { rod, .. }
            | Self::FeederSet { rod, .. }
            | Self::HooklengthLost { rod }
            | Self::AlternationStarted { rod, .. } => Some(*rod),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn read(written: &Value) -> Payload {
        let text = written.get("payload").map(Value::to_string);
        crate::canonical::payload_of(written["kind"].as_str().unwrap(), text.as_deref()).unwrap()
    }

    fn hooklength() -> Value {
        json!({"length": 9_144, "diameter_um": 120, "hook_size": 16, "hair_mm": 8})
    }

    fn club_taken() -> Value {
        json!({"kind": "club_taken", "payload": {"name": "Alder AC", "shapes": 1, "anglers": 52, "days": 611, "waters": 9,
            "fitted": [{"of": "all", "anglers": 52, "days": 611, "weights": [400_000, 600_000]},
                {"of": "water", "water": "Alder Pool", "anglers": 7, "days": 80, "weights": [0, 1_000_000]},
                {"of": "month", "month": 11, "anglers": 31, "days": 140, "weights": [500_000, 500_000]},
                {"of": "water_temperature", "from": 40, "until": 80, "anglers": 9, "days": 60, "weights": [1, 999_999]}],
            "sha256": "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08"}})
    }

    #[test]
    fn every_known_kind_is_written_as_it_is_read() {
        let examples = [
            json!({"kind": "session_started", "payload": {"span_tenth_mm": 20_000, "rods": 2, "settle_s": 0, "twitch_restarts": false}}),
            json!({"kind": "session_ended"}),
            json!({"kind": "cast", "payload": {"rod": 1}}),
            json!({"kind": "bite", "payload": {"rod": 1}}),
            json!({"kind": "landed", "payload": {"rod": 1, "fish": {"by": "weighed", "unit": "drams", "count": 1_100}}}),
            json!({"kind": "lost", "payload": {"rod": 1}}),
            json!({"kind": "missed", "payload": {"rod": 1}}),
            json!({"kind": "liner", "payload": {"rod": 1}}),
            json!({"kind": "indication", "payload": {"rod": 1}}),
            json!({"kind": "wound_in", "payload": {"rod": 1}}),
            json!({"kind": "twitch", "payload": {"rod": 1}}),
            json!({"kind": "away"}),
            json!({"kind": "returned"}),
            json!({"kind": "fed", "payload": {"what": "loose", "rod": 1,
                "amount": {"by": "measures", "measure": "handful", "count": 2, "each_mg": 30_000},
                "place": {"bearing_cdeg": -500, "range_cm": 3_475}}}),
            json!({"kind": "feeder_set", "payload": {"rod": 1, "fill_mg": 30_000}}),
            json!({"kind": "fish_shown", "payload": {"sign": "bubbles", "place": {"bearing_cdeg": 200, "range_cm": 4_000}}}),
            json!({"kind": "neighbour_caught", "payload": {"side": "across"}}),
            json!({"kind": "rig_set", "payload": {"rod": 1, "rig": {"bait": "bread", "popup_mm": 450}}}),
            json!({"kind": "spot_set", "payload": {"rod": 1, "spot": {"bearing_cdeg": -500, "clipped": true,
                "reach": {"unit": "wraps", "hundredths": 950, "span_tenth_mm": 36_576}}}}),
            json!({"kind": "noted", "payload": {"text": "ice in the margin"}}),
            json!({"kind": "time_set", "payload": {"back_s": 60}}),
            json!({"kind": "cast_end_set", "payload": {"end": "landed", "after_s": 840}}),
            json!({"kind": "cast_added", "payload": {"after": "01938f4c-0000-7000-8000-000000000001", "lag_s": 120,
                "wait_s": 900, "end": "wound_in"}}),
            json!({"kind": "confirmed"}),
            json!({"kind": "undone", "payload": {"targets": []}}),
            json!({"kind": "removed", "payload": {"targets": ["01938f4c-0000-7000-8000-000000000001"]}}),
            json!({"kind": "import_undone", "payload": {"import": "01938f4c-0000-7000-8000-000000000003",
                "targets": ["01938f4c-0000-7000-8000-000000000001"]}}),
            json!({"kind": "import_redone", "payload": {"import": "01938f4c-0000-7000-8000-000000000003",
                "targets": ["01938f4c-0000-7000-8000-000000000002"]}}),
            json!({"kind": "mark_set", "payload": {"name": "gate", "bearing_cdeg": 100}}),
            json!({"kind": "kept_back", "payload": {"from_cdeg": -3_000, "to_cdeg": 3_000, "from_cm": 3_500, "to_cm": 5_500}}),
            json!({"kind": "released", "payload": {"kept": "01938f4c-0000-7000-8000-000000000001"}}),
            json!({"kind": "swim_set", "payload": {"far_bank_pegged": false, "left_peg_cm": 1_500, "rest_target_min": 40}}),
            json!({"kind": "outline_set", "payload": {"corners_cm": [[-1_200, 0], [1_200, 0], [0, 5_000]]}}),
            json!({"kind": "feature_set", "payload": {"feature": "drop_off", "name": "shelf", "bearing_cdeg": 0, "range_cm": 2_500}}),
            json!({"kind": "hazard_set", "payload": {"name": "snag", "bearing_cdeg": 900, "range_cm": 3_000, "clear_cm": 300}}),
            json!({"kind": "peg_placed", "payload": {"lat_e7": 514_800_000, "lon_e7": -10_000_000, "straight_out_cdeg": 21_000}}),
            json!({"kind": "alternation_started", "payload": {"rod": 1, "factor": "height", "a": "45.7 cm", "b": "61 cm",
                "b_first": true, "casts": 8}}),
            json!({"kind": "alternation_ended"}),
            json!({"kind": "match_set", "payload": {"all_in_ms": 1_768_642_200_000_i64, "all_out_ms": 1_768_660_200_000_i64,
                "offset_ms": -20_000, "unit": "drams", "mark": {"drams": 16},
                "rules": {"nets": [{"name": "Net 1", "limit": {"drams": 12_800}, "holds": "anything"}],
                    "over_limit": "counts_to_the_limit", "counting": {"all_but": ["Pike"]}, "landing_min": 15, "alarms_min": [30, 10]},
                "classes": [{"name": "Carp", "guess": {"drams": 1_280}}]}}),
            json!({"kind": "match_off"}),
            json!({"kind": "fish_set", "payload": {"cast": "01938f4c-0000-7000-8000-000000000001", "class": "Carp",
                "weight": {"by": "weighed", "unit": "drams", "count": 1_100}, "net": "Net 1", "put_back": false}}),
            json!({"kind": "net_weighed", "payload": {"net": "Net 1", "shown": {"grams": 12_340}}}),
            json!({"kind": "other_net_told", "payload": {"peg": {"side": "left", "place": 2}, "shown": {"drams": 3_100}, "guessed": true}}),
            json!({"kind": "section_set", "payload": {"left": 4, "right": 5}}),
            json!({"kind": "match_rule_said", "payload": {"text": "dead fish don't count"}}),
            json!({"kind": "conditions_set", "payload": {"air": 35, "water": 52, "wind": "light", "wind_from": "sw", "cloud": 6, "colour": "tinged"}}),
            json!({"kind": "hooklength_lost", "payload": {"rod": 1}}),
            json!({"kind": "planned_next", "payload": {"text": "begin at 2 ft"}}),
            json!({"kind": "hooklengths_tied", "payload": {"hooklength": hooklength(), "count": 6}}),
            json!({"kind": "hooklengths_counted", "payload": {"hooklength": hooklength(), "count": 4}}),
            json!({"kind": "hooklengths_taken_out", "payload": {"hooklength": hooklength(), "count": 1}}),
            json!({"kind": "hooklengths_cut_down", "payload": {"from": hooklength(), "to": 4_572, "count": 2}}),
            json!({"kind": "hooklengths_wanted", "payload": {"hooklength": hooklength(), "count": 10}}),
            json!({"kind": "spool_added", "payload": {"diameter_um": 120, "length": 500_000}}),
            json!({"kind": "spool_left", "payload": {"spool": "01938f4c-0000-7000-8000-000000000002", "left": 300_000}}),
            json!({"kind": "allowances_set", "payload": {"hook_knot": 600, "loop_length": 250, "tag": 100}}),
            json!({"kind": "pop_up_set", "payload": {"lift_mg": 500, "soaked_min": 20, "hook_mg": 100, "height": 4_572, "line_um": 160,
                "line": "nylon", "shot": "tungsten"}}),
            json!({"kind": "shot_set", "payload": {"size": "BB", "mg": 390}}),
            json!({"kind": "fall_timed", "payload": {"depth_cm": 300, "fall_ms": 3_400}}),
            json!({"kind": "ladder_set", "payload": {"heights": [508, 4_572]}}),
            json!({"kind": "cautions_seen", "payload": {"peg": "Alder Pool / 14", "cautions": ["caution-ice"]}}),
            json!({"kind": "plan_set", "payload": {"day": 20_470, "line": {"line": "start",
                "spot": {"mark": "gate", "reach": {"unit": "wraps", "hundredths": 1_400, "span_tenth_mm": 36_576}}}}}),
            json!({"kind": "plan_cleared", "payload": {"day": 20_470, "line": {"line": "peg", "peg": "14"}}}),
            json!({"kind": "plan_taken", "payload": {"day": 20_470, "lines": [
                {"line": "peg", "peg": "14", "note": "bread to the island"},
                {"line": "rig", "rod": 1, "rig": {"bait": "bread", "popup_mm": 457}},
                {"line": "start", "spot": {"bearing_cdeg": -500}},
                {"line": "leave", "minutes": 20},
                {"line": "move", "at": {"by": "clock", "minute": 750}},
                {"line": "move", "at": {"by": "all_in", "minutes": 90}}]}}),
            json!({"kind": "plan_dropped"}),
            club_taken(),
            json!({"kind": "club_left"}),
        ];
        assert_eq!(examples.len(), known_kinds().count());
        for (example, kind) in examples.iter().zip(known_kinds()) {
            let payload = read(example);
            assert_eq!(payload.kind(), kind);
            assert!(!matches!(payload, Payload::Unknown { .. }), "{kind}");
            assert_eq!(payload.content().unwrap(), example.get("payload").cloned());
            // Feed may name a rod, but is not an entry about that rod.
            let rod = example["payload"]["rod"].as_u64().filter(|_| kind != "fed");
            assert_eq!(payload.rod().map(u64::from), rod, "{kind}");
        }
    }

    #[test]
    fn a_kind_of_a_later_version_is_kept_as_written() {
        let named_so = read(&json!({"kind": "unknown", "payload": {"kind": "x"}}));
        assert!(matches!(&named_so, Payload::Unknown { kind, .. } if kind == "unknown"));
        let later = json!({"kind": "thermocline_felt", "payload": {"deep": [1, 2]}});
        let payload = read(&later);
        assert!(matches!(&payload, Payload::Unknown { kind, .. } if kind == "thermocline_felt"));
        assert_eq!(payload.content().unwrap(), later.get("payload").cloned());
    }
}
