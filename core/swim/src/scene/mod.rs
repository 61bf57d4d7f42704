//! The picture of the swim: one packed record a frame, made for any canvas.

mod ask;
mod draw;
mod hatch;
mod hit;
mod labels;
mod marks;
mod names;
mod pack;
mod record;
mod text;
mod view;

pub use ask::{Detail, Hand, SceneAsk, SceneWords};
pub use hit::{Step, TARGET_MM};
pub use record::{FillRole, KeyLine, LabelRole, LineRole, MarkShape, SwimScene};
