//! Invented logs for tests, benches and fuzzing: whole days of taps from a seed. They are nobody's record.

use rand::{Rng, RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use restwater_log::{
    ClassGuess, Conditions, FishSaid, FishWeight, Hooklength, HybridClock, LeadMaterial, MatchRules,
    MatchSetup, Moment, NetHolds, NetRule, Op, Payload, Reach, Rig, SessionSetup, Spot, Weight, WeightUnit,
    kit_of,
};
use uuid::Uuid;

/// 2026-01-10 08:00 UTC, when the invented logs begin.
pub const BEGIN_MS: i64 = 1_768_032_000_000;

/// Writes the log of one phone.
pub struct Phone {
    rng: ChaCha8Rng,
    device: Uuid,
    clock: HybridClock,
    wall_ms: i64,
    session: Uuid,
    ops: Vec<Op>,
}

impl Phone {
    /// A phone that begins to log.
    pub fn new(seed: u64) -> Self {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let device = Uuid::from_u128(rng.random());
        Self {
            rng,
            device,
            clock: HybridClock::default(),
            wall_ms: BEGIN_MS,
            session: Uuid::nil(),
            ops: vec![],
        }
    }

    /// Its device id.
    pub fn device(&self) -> Uuid {
        self.device
    }

    /// A version 7 UUID for the present moment (RFC 9562, section 5.7).
    pub fn new_id(&mut self) -> Uuid {
        let ms = u128::from(self.wall_ms.unsigned_abs()) << 80;
        let random: u128 = self.rng.random::<u128>() & 0x0fff_3fff_ffff_ffff_ffff;
        Uuid::from_u128(ms | random | 0x7000_8000_0000_0000_0000)
    }

    /// The present moment, some seconds after the last.
    pub fn tick(&mut self) -> Moment {
        self.wall_ms += self.rng.random_range(1_000..90_000);
        Moment {
            wall_ms: self.wall_ms,
            offset_min: 60,
            zone: "Etc/GMT-1".into(),
            mono_ms: self.wall_ms - BEGIN_MS,
            boot: "boot-1".into(),
            approx_s: 0,
        }
    }

    /// Logs one op.
    pub fn log(&mut self, payload: Payload, amends: Option<Uuid>) -> Op {
        let at = self.tick();
        let id = self.new_id();
        let hlc = self.clock.tick(at.wall_ms);
        let op = Op { id, device: self.device, hlc, at, session: self.session, payload, amends, group: None };
        self.ops.push(op.clone());
        op
    }

    /// Begins a session.
    pub fn begin(&mut self) -> Uuid {
        self.wall_ms += 86_400_000;
        self.session = self.new_id();
        let setup = SessionSetup {
            water: Some("Alder Pit".into()),
            peg: Some(format!("{}", self.rng.random_range(1..40))),
            rods: 2,
            ..SessionSetup::default()
        };
        self.log(Payload::SessionStarted(setup), None);
        self.session
    }

    /// Logs into a session that another phone began.
    pub fn join(&mut self, session: Uuid) {
        self.session = session;
    }

    /// One more tap of a day, of any kind.
    pub fn tap(&mut self) -> Op {
        let rod = self.rng.random_range(1..=2);
        let earlier = self.ops.get(self.rng.random_range(0..self.ops.len().max(1))).map(|op| op.id);
        match (self.rng.random_range(0..100), earlier) {
            (0..=4, Some(id)) => self.log(Payload::TimeSet { back_s: 60 }, Some(id)),
            (5..=8, Some(id)) => self.log(Payload::Undone { targets: vec![id] }, None),
            (9..=10, _) => {
                self.log(Payload::Noted { text: "wind \"west\", 2 °C\n= ice, é, 🎣".into() }, None)
            }
            (11..=12, _) => {
                let payload = Some(serde_json::json!({"depth": [1, 2.5, {"unit": "m"}]}));
                self.log(Payload::Unknown { kind: "thermocline_felt".into(), payload }, None)
            }
            (13..=16, _) => self.rig(rod),
            (17..=20, _) => self.spot(rod),
            (21..=55, _) => self.log(Payload::Cast { rod }, None),
            (56..=70, _) => self.log(Payload::Bite { rod }, None),
            (71..=80, _) => {
                let fish =
                    FishWeight::Weighed { unit: WeightUnit::Drams, count: self.rng.random_range(20..3_000) };
                self.log(Payload::Landed { rod, fish: Some(fish) }, None)
            }
            (81..=86, _) => self.log(Payload::Missed { rod }, None),
            (87..=90, _) => self.log(Payload::Liner { rod }, None),
            (95..=97, Some(id)) => self.fish(id),
            (98, _) => self.match_day(),
            (99, _) => {
                let shown = Weight::Grams(self.rng.random_range(500..40_000));
                self.log(Payload::NetWeighed { net: "Net 1".into(), shown }, None)
            }
            (91..=92, _) => self.log(Payload::HooklengthLost { rod }, None),
            (93..=94, _) => {
                let conditions =
                    Conditions { water_tenth_c: Some(52), air_tenth_c: Some(31), ..Conditions::default() };
                self.log(Payload::ConditionsSet(conditions), None)
            }
            _ => self.log(Payload::WoundIn { rod }, None),
        }
    }

    /// An entry about the fish of a cast that may or may not have landed one.
    fn fish(&mut self, cast: Uuid) -> Op {
        let weight = FishWeight::Guessed { unit: WeightUnit::Grams, count: self.rng.random_range(50..9_000) };
        let class = (self.rng.random_range(0..2) == 0).then(|| "Carp".to_owned());
        let (net, put_back) = (Some("Net 1".to_owned()), self.rng.random_range(0..9) == 0);
        let said = FishSaid { cast, class, weight: Some(weight), net, put_back };
        self.log(Payload::FishSet(said), None)
    }

    fn match_day(&mut self) -> Op {
        let net =
            NetRule { name: "Net 1".into(), limit: Some(Weight::Drams(12_800)), holds: NetHolds::Anything };
        let setup = MatchSetup {
            all_in_ms: self.wall_ms,
            all_out_ms: self.wall_ms + 18_000_000,
            offset_ms: self.rng.random_range(-90..90) * 1_000,
            unit: WeightUnit::Drams,
            mark: Weight::Drams(16),
            rules: MatchRules { nets: vec![net], alarms_min: vec![30, 10], ..MatchRules::default() },
            classes: vec![ClassGuess { name: "Carp".into(), guess: Weight::Drams(1_280) }],
        };
        self.log(Payload::MatchSet(setup), None)
    }

    /// An evening at the bench: entries in the kit of this phone.
    pub fn evening(&mut self) -> Vec<Op> {
        let day = std::mem::replace(&mut self.session, kit_of(self.device));
        let hooklength =
            Hooklength { length_tenth_mm: 9_144, diameter_um: 120, hook_size: 16, hair_mm: None };
        let ops = [
            Payload::HooklengthsTied { hooklength, count: self.rng.random_range(1..9) },
            Payload::HooklengthsCutDown { from: hooklength, to_tenth_mm: 4_572, count: 1 },
            Payload::HooklengthsWanted { hooklength, count: 4 },
            Payload::CautionsSeen { peg: "Alder Pit / 7".into(), cautions: vec!["caution-ice".into()] },
        ]
        .map(|payload| self.log(payload, None));
        self.session = day;
        ops.to_vec()
    }

    fn rig(&mut self, rod: u8) -> Op {
        let rig = Rig {
            bait: Some("bread".into()),
            popup_mm: Some(self.rng.random_range(50..1_500)),
            lead_mg: Some(28_350),
            material: Some(LeadMaterial::NonToxic),
            ..Rig::default()
        };
        self.log(Payload::RigSet { rod, rig }, None)
    }

    fn spot(&mut self, rod: u8) -> Op {
        let reach = Reach::Wraps { hundredths: self.rng.random_range(400..1_500), span_tenth_mm: 36_576 };
        let spot =
            Spot { mark: None, bearing_cdeg: self.rng.random_range(-4_500..4_500), reach, clipped: true };
        self.log(Payload::SpotSet { rod, spot }, None)
    }

    /// Everything logged so far.
    pub fn ops(&self) -> &[Op] {
        &self.ops
    }

    /// Drops what was logged so far, since a long log would not fit in memory.
    pub fn forget(&mut self) {
        self.ops.clear();
    }

    /// Random numbers of the same seed, for the test itself.
    pub fn rng(&mut self) -> &mut impl Rng {
        &mut self.rng
    }
}

/// This many sessions with this many ops each.
pub fn log_of(seed: u64, sessions: usize, ops_each: usize) -> Vec<Op> {
    let mut phone = Phone::new(seed);
    for _ in 0..sessions {
        phone.begin();
        for _ in 1..ops_each {
            phone.tap();
        }
    }
    phone.ops
}
