//! The picture of the swim: one packed record a frame, made for any canvas.

mod ask;
mod record;

pub use ask::{Detail, Hand, SceneAsk, SceneWords};
pub use record::{FillRole, KeyLine, LabelRole, LineRole, MarkShape, SwimScene};
