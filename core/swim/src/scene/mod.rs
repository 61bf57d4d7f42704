//! The picture of the swim: one packed record per frame, for any canvas.

mod ask;
mod beside;
mod draw;
mod flag;
mod hatch;
mod hit;
mod kept;
mod labels;
mod legend;
mod marks;
mod names;
mod pack;
mod record;
mod text;
mod view;
mod widths;

pub use ask::{Detail, Hand, SceneAsk, SceneWords};
pub use hit::Step;
pub use legend::{LEGEND, LegendSample, legend};
pub use record::{FillRole, KeyLine, LabelRole, LineRole, MarkShape, SwimScene};
pub use text::{ClockCut, FaceWidths, LetterWidth, face_widths};
