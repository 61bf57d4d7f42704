//! Writes a shared value as the value itself, for `#[serde(with)]`.

use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::sync::Arc;

pub(super) fn serialize<T: Serialize, S: Serializer>(
    value: &Arc<T>,
    serializer: S,
) -> Result<S::Ok, S::Error> {
    value.as_ref().serialize(serializer)
}

pub(super) fn deserialize<'de, T: Deserialize<'de>, D: Deserializer<'de>>(
    deserializer: D,
) -> Result<Arc<T>, D::Error> {
    T::deserialize(deserializer).map(Arc::new)
}
