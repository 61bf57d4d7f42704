//! One entry of the log.

use super::{Hlc, Moment, Payload};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

/// One thing that was logged. Never changed, never deleted.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Op {
    /// Version 7 UUID, unique over all phones.
    pub id: Uuid,
    /// The phone that wrote it.
    pub device: Uuid,
    /// Its place in the order of the log.
    pub hlc: Hlc,
    /// When it happened, as the phone knew it.
    pub at: Moment,
    /// The session it belongs to.
    pub session: Uuid,
    /// What it says.
    #[serde(flatten)]
    pub payload: Payload,
    /// The op whose time or payload this one replaces.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub amends: Option<Uuid>,
    /// Ops of one group are undone together.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub group: Option<Uuid>,
}

/// What the log is ordered by: clock, then device, then id.
pub type OpOrder = (Hlc, Uuid, Uuid);

impl Op {
    /// Its place in the order of the log.
    pub fn order(&self) -> OpOrder {
        (self.hlc, self.device, self.id)
    }

    /// What undo takes back together with it: its group, or itself.
    pub fn entry(&self) -> Uuid {
        self.group.unwrap_or(self.id)
    }
}
