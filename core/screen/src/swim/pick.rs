//! The keys that pick a spot in two taps: a ray, then a band of it, each with what is known of it.

use super::{SwimPad, SwimScreen};
use crate::figures::whole;
use crate::{Action, Arg, SwimTap, Wording};
use restwater_swim::{CellFigures, CellId};
use serde::{Deserialize, Serialize};

/// A key that picks a ray or a cell.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct SwimPick {
    /// A name for tests.
    pub tag: String,
    /// "Dead tree", or "30-40 m".
    pub label: String,
    /// What else is known of it, small; may be empty.
    pub sub: String,
    /// What a screen reader says.
    pub spoken: String,
    /// What a tap on it sends.
    pub action: Action,
}

/// Which keys pick, as the Swim screen remembers it between taps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Picking {
    /// A ray.
    #[default]
    Ray,
    /// A cell of this ray.
    Cell(usize),
    /// None: the ring is moved by steps.
    Done,
}

impl SwimScreen<'_> {
    pub(super) fn pad(&self) -> SwimPad {
        match self.picking {
            Picking::Ray => SwimPad::Rays,
            Picking::Cell(_) => SwimPad::Cells,
            Picking::Done => SwimPad::Steps,
        }
    }

    pub(super) fn picks(&self) -> Vec<SwimPick> {
        match self.picking {
            Picking::Ray => {
                let rays = self.swim.rays().into_iter().enumerate();
                rays.map(|(i, columns)| self.ray(i, &columns)).collect()
            }
            Picking::Cell(ray) => {
                let cells = self.swim.cells_of_ray(ray);
                let one = cells.windows(2).all(|w| w[0].column == w[1].column);
                cells.into_iter().filter_map(|id| self.pick_cell(id, one)).collect()
            }
            Picking::Done => Vec::new(),
        }
    }

    /// "Gate: which band?", while a cell of a ray is picked.
    pub(super) fn which_band(&self) -> Option<String> {
        let Picking::Cell(ray) = self.picking else { return None };
        let columns = self.swim.rays().into_iter().nth(ray)?;
        let names: Vec<String> = columns.iter().map(|c| self.column_name(*c)).collect();
        Some(self.words.say_with("swim-which-band", &[("where", Arg::Text(&names.join(", ")))]))
    }

    fn ray(&self, i: usize, columns: &[u32]) -> SwimPick {
        // A mark has the large line; what lies beside it the small one.
        let (on_marks, beside): (Vec<&u32>, Vec<&u32>) =
            columns.iter().partition(|c| self.mark_of(**c).is_some());
        let names: Vec<String> = on_marks.into_iter().chain(beside).map(|c| self.column_name(*c)).collect();
        let (label, others) = names.split_first().map_or((String::new(), &[][..]), |(a, b)| (a.clone(), b));
        SwimPick {
            tag: format!("ray-{i}"),
            label,
            sub: others.join(", "),
            spoken: self.words.say_with("swim-ray-spoken", &[("where", Arg::Text(&names.join(", ")))]),
            action: Action::Swim { tap: SwimTap::Ray { ray: u32::try_from(i).unwrap_or(u32::MAX) } },
        }
    }

    /// `one`: all keys are of one ray, whose name stands above them.
    fn pick_cell(&self, id: CellId, one: bool) -> Option<SwimPick> {
        let place = self.swim.place(id)?;
        let sector = self.swim.cells()[place].sector;
        let args = [("from", whole(sector.inner_m)), ("to", whole(sector.outer_m))];
        let label = self
            .words
            .say_with("swim-band-key", &[("from", Arg::Text(&args[0].1)), ("to", Arg::Text(&args[1].1))]);
        let (name, known) = (self.column_name(id.column), rest_words(self.words, &self.figures.cells[place]));
        Some(SwimPick {
            tag: format!("cell-{}-{}", id.column, id.row),
            sub: if one { known.clone() } else { name.clone() },
            spoken: [name, label.clone(), known].join(", "),
            label,
            action: Action::Swim { tap: SwimTap::Cell { cell: id } },
        })
    }
}

/// "rested 48 min", "kept back", "fresh".
fn rest_words(words: &Wording, cell: &CellFigures) -> String {
    match (cell.kept_back_min, cell.rested_min) {
        (Some(_), _) => words.say("swim-pick-kept"),
        (None, Some(minutes)) => {
            words.say_with("swim-pick-rested", &[("minutes", Arg::Text(&whole(minutes)))])
        }
        (None, None) => words.say("swim-pick-fresh"),
    }
}
