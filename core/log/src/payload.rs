//! What an op says: one variant for each thing an angler can log.

use super::fish::FishWeight;
use super::kit::{Measured, ShotWeight};
use super::match_day::{FishSaid, MatchSetup};
use super::neighbour::OtherPeg;
use super::setup::{RodNumber, SessionSetup, SwimSetup};
use super::tackle::{Factor, Rig, Spot};
use super::wire::{Allowances, Conditions, FeatureKind, Hooklength, Weight};
use serde::{Deserialize, Serialize};
use serde_json::Value;
use strum::{IntoStaticStr, VariantNames};
use uuid::Uuid;

/// What ended a cast, as remembered afterwards.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum EndSaid {
    /// Wound in by choice.
    WoundIn,
    /// A bite, and the fish in the net.
    Landed,
    /// A bite, and the fish came off.
    Lost,
    /// A bite that was missed.
    Missed,
}

/// What an op says. In an op's JSON its kind and what it holds stand side by side, as `kind` and `payload`
/// ([`super::op_from_bytes`], [`super::canonical_bytes`]).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, IntoStaticStr, VariantNames)]
#[serde(rename_all = "snake_case")]
#[strum(serialize_all = "snake_case")]
pub enum Payload {
    /// A session begins.
    SessionStarted(SessionSetup),
    /// It is over; what is still out is wound in.
    SessionEnded,
    /// The lead hit the water.
    Cast {
        /// Which rod.
        rod: RodNumber,
    },
    /// A pull worth striking.
    Bite {
        /// Which rod.
        rod: RodNumber,
    },
    /// The fish is in the net.
    Landed {
        /// Which rod.
        rod: RodNumber,
        /// What it weighs, where that is known.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        fish: Option<FishWeight>,
    },
    /// A hooked fish came off.
    Lost {
        /// Which rod.
        rod: RodNumber,
    },
    /// The bite was missed.
    Missed {
        /// Which rod.
        rod: RodNumber,
    },
    /// A fish swam into the line.
    Liner {
        /// Which rod.
        rod: RodNumber,
    },
    /// The tip moved without a pull.
    Indication {
        /// Which rod.
        rod: RodNumber,
    },
    /// Wound in by the angler's own choice.
    WoundIn {
        /// Which rod.
        rod: RodNumber,
    },
    /// The bait was moved without a recast.
    Twitch {
        /// Which rod.
        rod: RodNumber,
    },
    /// The angler goes away from the rods: nothing that counts fishing runs until it is said that the angler is back, a bait
    /// is cast, or the session is over.
    Away,
    /// The angler is back.
    Returned,
    /// What is on the line from the next cast on.
    RigSet {
        /// Which rod.
        rod: RodNumber,
        /// The whole rig.
        rig: Rig,
    },
    /// Where the next casts of a rod go.
    SpotSet {
        /// Which rod.
        rod: RodNumber,
        /// The spot.
        spot: Spot,
    },
    /// A note in the angler's words.
    Noted {
        /// The note.
        text: String,
    },
    /// Amends the time of another op: this many seconds before it was tapped, in all.
    TimeSet {
        /// Seconds back from the time as tapped.
        back_s: u32,
    },
    /// Amends a cast: what ended it, as remembered afterwards.
    CastEndSet {
        /// What ended it.
        end: EndSaid,
        /// The bite, or else the end, this many seconds after the splash; as it was where that is not said.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        after_s: Option<u32>,
    },
    /// A cast that was forgotten, told by the cast of the same rod before it.
    CastAdded {
        /// The op of that cast.
        after: Uuid,
        /// Seconds from the end of that cast to this splash.
        lag_s: u32,
        /// Seconds from the splash to the bite or the end.
        wait_s: u32,
        /// What ended it.
        end: EndSaid,
    },
    /// Amends an entry: it is right as it stands.
    Confirmed,
    /// UNDO was pressed: these ops no longer count. Undoing an undo is REDO. (Versions before the kinds below existed wrote it
    /// for a removal and for an import that was taken back, too; those keep what they meant then.)
    Undone {
        /// The ops that are undone together.
        targets: Vec<Uuid>,
    },
    /// The angler took these away: a mark, a feature, a hazard. An entry like any other: UNDO brings them back.
    Removed {
        /// The ops that no longer count.
        targets: Vec<Uuid>,
    },
    /// A whole import was taken back, by its own key and not by UNDO.
    ImportUndone {
        /// The import.
        import: Uuid,
        /// The ops that it brought, as many as one op may name.
        targets: Vec<Uuid>,
    },
    /// It was brought back by its own key.
    ImportRedone {
        /// The import.
        import: Uuid,
        /// The ops that took it back.
        targets: Vec<Uuid>,
    },
    /// Something to aim at on the far bank.
    MarkSet {
        /// Its name.
        name: String,
        /// Degrees clockwise from straight out, in hundredths.
        bearing_cdeg: i32,
    },
    /// Water the angler has decided to rest.
    KeptBack {
        /// From this bearing, in hundredths of a degree,
        from_cdeg: i32,
        /// clockwise to this one.
        to_cdeg: i32,
        /// From this range in cm
        from_cm: u32,
        /// out to this one.
        to_cm: u32,
    },
    /// Kept-back water may be fished again.
    Released {
        /// The op that kept it back.
        kept: Uuid,
    },
    /// The swim's bounds, bands and rest target.
    SwimSet(SwimSetup),
    /// The outline of the swim, where it is known better than by the pegs beside it.
    OutlineSet {
        /// Corners in order in the peg frame, in cm: right of straight out, then straight out. None: taken away again.
        corners_cm: Vec<(i32, i32)>,
    },
    /// Something on the bottom or seen on the water.
    FeatureSet {
        /// What kind.
        feature: FeatureKind,
        /// Its name; may be empty.
        name: String,
        /// Degrees clockwise from straight out, in hundredths.
        bearing_cdeg: i32,
        /// Range in cm.
        range_cm: u32,
    },
    /// Something to keep clear of: a snag, a line overhead.
    HazardSet {
        /// Its name; may be empty.
        name: String,
        /// Degrees clockwise from straight out, in hundredths.
        bearing_cdeg: i32,
        /// Range in cm.
        range_cm: u32,
        /// How far to keep clear of it, in cm.
        clear_cm: u32,
    },
    /// Where the peg lies on the earth (WGS 84). Never needed, and left out of exports unless asked for.
    PegPlaced {
        /// Latitude in 1e-7 degrees.
        lat_e7: i64,
        /// Longitude in 1e-7 degrees.
        lon_e7: i64,
        /// Degrees clockwise from true north of straight out, in hundredths.
        straight_out_cdeg: i32,
    },
    /// A test of two values of one thing begins: cast in turn, A B B A, on one spot.
    AlternationStarted {
        /// Which rod.
        rod: RodNumber,
        /// What is alternated.
        factor: Factor,
        /// Value A, spelled as the rows of casts spell it.
        a: String,
        /// Value B.
        b: String,
        /// Whether the first cast is with B.
        b_first: bool,
        /// Casts planned, a multiple of four.
        casts: u16,
    },
    /// It is over.
    AlternationEnded,
    /// A match and its rules.
    MatchSet(MatchSetup),
    /// It is no match after all.
    MatchOff,
    /// What a landed fish weighs, which net it went into, or that it was put back.
    FishSet(FishSaid),
    /// What the scales showed for a net at the weigh-in.
    NetWeighed {
        /// Name of the net.
        net: String,
        /// What they showed.
        shown: Weight,
    },
    /// What another angler's nets weigh in a match.
    OtherNetTold {
        /// Whose.
        peg: OtherPeg,
        /// How much.
        shown: Weight,
        /// Whether it is a guess by eye; it was called at the scales otherwise.
        guessed: bool,
    },
    /// How far the section of the match reaches.
    SectionSet {
        /// Pegs to the left of the angler's own.
        left: u8,
        /// Pegs to the right.
        right: u8,
    },
    /// What the match says of fish that die or go back, in the organiser's words; empty where nothing is said any more.
    MatchRuleSaid {
        /// The rule.
        text: String,
    },
    /// Air, water, wind, cloud and colour as they are now; what was known before stands in it again.
    ConditionsSet(Conditions),
    /// The hooklength of the rod's last cast was lost with it.
    HooklengthLost {
        /// Which rod.
        rod: RodNumber,
    },
    /// What the angler means to do next time.
    PlannedNext {
        /// The plan.
        text: String,
    },
    /// So many were tied. This and what follows down to the cautions belong to a kit ([`super::kit_of`]), not to a day.
    HooklengthsTied {
        /// Which.
        hooklength: Hooklength,
        /// How many.
        count: u16,
    },
    /// The wallet was counted: it holds this many of this kind.
    HooklengthsCounted {
        /// Which.
        hooklength: Hooklength,
        /// How many.
        count: u16,
    },
    /// So many were thrown or given away, or lost on a cast that is not in the log.
    HooklengthsTakenOut {
        /// Which.
        hooklength: Hooklength,
        /// How many.
        count: u16,
    },
    /// So many were cut down.
    HooklengthsCutDown {
        /// From which.
        from: Hooklength,
        /// To this length, in tenths of a millimetre.
        #[serde(rename = "to")]
        to_tenth_mm: u32,
        /// How many.
        count: u16,
    },
    /// So many of this kind are to be carried; 0 for none.
    HooklengthsWanted {
        /// Which.
        hooklength: Hooklength,
        /// How many.
        count: u16,
    },
    /// A spool of hooklength line.
    SpoolAdded {
        /// Its diameter in thousandths of a millimetre.
        diameter_um: u16,
        /// Line on it, in tenths of a millimetre.
        #[serde(rename = "length")]
        length_tenth_mm: u32,
    },
    /// Line left on a spool; none takes it off the bench.
    SpoolLeft {
        /// The op that added it.
        spool: Uuid,
        /// What is left, in tenths of a millimetre.
        #[serde(rename = "left")]
        left_tenth_mm: u32,
    },
    /// Line that a tie uses beyond its finished length.
    AllowancesSet(Allowances),
    /// A pop-up as measured.
    PopUpSet(Measured),
    /// What a size of shot weighs, or that it is not in the box.
    ShotSet(ShotWeight),
    /// A fall of the lead timed at a plumbed depth.
    FallTimed {
        /// Depth in cm.
        depth_cm: u32,
        /// Splash to bottom in milliseconds.
        fall_ms: u32,
    },
    /// The heights of the ladder.
    LadderSet {
        /// Counterweight to hook, in tenths of a millimetre.
        #[serde(rename = "heights")]
        heights_tenth_mm: Vec<u32>,
    },
    /// Cautions seen and put away at a peg.
    CautionsSeen {
        /// Water and peg.
        peg: String,
        /// Their ids.
        cautions: Vec<String>,
    },
    /// Written by a newer version: kept and passed on unread.
    #[serde(skip)]
    Unknown {
        /// Its kind, as written.
        kind: String,
        /// Its payload, as written.
        payload: Option<Value>,
    },
}

/// The kinds this version reads.
fn known_kinds() -> impl Iterator<Item = &'static str> {
    // The variant of kinds that are not known is no kind.
    Payload::VARIANTS.iter().copied().filter(|kind| *kind != "unknown")
}

impl Payload {
    /// What it holds, as it is written beside its kind.
    pub(super) fn content(&self) -> Result<Option<Value>, serde_json::Error> {
        if let Self::Unknown { payload, .. } = self {
            return Ok(payload.clone());
        }
        // A kind that holds something is written as {kind: what it holds}, one that holds nothing as its name.
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

    /// Whether the kind is one this version should be able to read. One of these with another payload is an error; any other
    /// kind is kept.
    pub(super) fn kind_is_known(kind: &str) -> bool {
        known_kinds().any(|known| known == kind)
    }

    /// The entries that it puts out of force, whatever the angler did to put them out: as long as this one is in force itself,
    /// they do not count.
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
        let text = written.get("payload").map(|payload| serde_json::value::to_raw_value(payload).unwrap());
        super::super::canonical::payload_of(written["kind"].as_str().unwrap(), text.as_deref()).unwrap()
    }

    fn hooklength() -> Value {
        json!({"length": 9_144, "diameter_um": 120, "hook_size": 16, "hair_mm": 8})
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
        ];
        assert_eq!(examples.len(), known_kinds().count());
        for (example, kind) in examples.iter().zip(known_kinds()) {
            let payload = read(example);
            assert_eq!(payload.kind(), kind);
            assert!(!matches!(payload, Payload::Unknown { .. }), "{kind}");
            assert_eq!(payload.content().unwrap(), example.get("payload").cloned());
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
