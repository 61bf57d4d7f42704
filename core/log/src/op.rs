//! One entry of the log.

use super::{Hlc, Moment, Payload};
use serde::ser::{Error, Serialize, Serializer};
use serde_json::Value;
use uuid::Uuid;

/// One thing that was logged. Never changed, never deleted.
#[derive(Debug, Clone, PartialEq)]
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
    pub payload: Payload,
    /// The op whose time or payload this one replaces.
    pub amends: Option<Uuid>,
    /// Ops of one group are undone together.
    pub group: Option<Uuid>,
}

/// An op in its written form, with kind and payload side by side.
#[derive(serde::Serialize)]
struct Written<'a> {
    id: Uuid,
    device: Uuid,
    hlc: Hlc,
    at: &'a Moment,
    session: Uuid,
    kind: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    payload: Option<Value>,
    #[serde(skip_serializing_if = "Option::is_none")]
    amends: Option<Uuid>,
    #[serde(skip_serializing_if = "Option::is_none")]
    group: Option<Uuid>,
}

impl Serialize for Op {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        Written {
            id: self.id,
            device: self.device,
            hlc: self.hlc,
            at: &self.at,
            session: self.session,
            kind: self.payload.kind(),
            payload: self.payload.content().map_err(S::Error::custom)?,
            amends: self.amends,
            group: self.group,
        }
        .serialize(serializer)
    }
}

/// The sort key of the log: clock, then device, then id.
pub type OpOrder = (Hlc, Uuid, Uuid);

impl Op {
    /// Whether it is a step of UNDO and REDO. Undoing and redoing an import have keys of their own.
    pub fn is_step_of_undo(&self) -> bool {
        !matches!(self.payload, Payload::ImportUndone { .. } | Payload::ImportRedone { .. })
    }

    /// Its place in the order of the log.
    pub fn order(&self) -> OpOrder {
        (self.hlc, self.device, self.id)
    }

    /// The id of what is undone together with it: its group, or itself.
    pub fn entry(&self) -> Uuid {
        self.group.unwrap_or(self.id)
    }
}
