//! Labels: each gets the first free place of those offered, so that none ever covers another.
//!
//! If a label finds no place it is shortened, then made smaller (never below the size of 100 % text), then
//! replaced by a number that the key explains, and finally moved to the key.

use super::kept::{Kept, OUTLINE_DP};
use super::pack::Pack;
use super::record::{KeyLine, LabelRole};
use super::text;
use super::view::{Rect, View};
use crate::frame::Point;

/// What a label may cover where there is no place that is clear of everything.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Over {
    /// Nothing.
    Nothing,
    /// The sides of outlines and of the corners of the cell that is aimed at.
    Outlines,
    /// Marks too.
    Marks,
}

/// A label looking for a place.
pub(crate) struct Label {
    pub role: LabelRole,
    /// Its possible texts and sizes, best first.
    pub tries: Vec<(String, f64)>,
    /// Whether a number may replace it.
    pub numbered: bool,
    /// Its text in the key if it finds no place; `None` leaves it out completely.
    pub key: Option<String>,
    /// Drawn with a box.
    pub boxed: bool,
    /// What it may cover at the most.
    pub over: Over,
}

/// Returns the possible middle points for a box of this width and height, best first.
pub(crate) type Places<'a> = dyn Fn(f64, f64) -> Vec<Point> + 'a;
/// Whether a box of this width and height round a point is where the label belongs.
pub(crate) type Fits<'a> = dyn Fn(Point, f64, f64) -> bool + 'a;

/// Every place is where it belongs.
pub(crate) fn anywhere(_: Point, _: f64, _: f64) -> bool {
    true
}

/// Places labels one after the other.
pub(crate) struct Placer<'v> {
    view: &'v View,
    taken: Vec<Rect>,
    marks: Vec<Rect>,
    /// Round marks: the middle and the radius.
    discs: Vec<(Point, f64)>,
    /// The sides of the corners of the cell that is aimed at.
    sides: Vec<Rect>,
    kept: &'v [Kept],
    numbers: u32,
}

impl<'v> Placer<'v> {
    pub fn new(view: &'v View, kept: &'v [Kept]) -> Self {
        Self {
            view,
            taken: Vec::new(),
            marks: Vec::new(),
            discs: Vec::new(),
            sides: Vec::new(),
            kept,
            numbers: 0,
        }
    }

    /// Keeps the space of a mark free.
    pub fn keep_clear(&mut self, r: Rect) {
        self.marks.push(r);
    }

    /// Keeps the space of a round mark free.
    pub fn keep_clear_of_disc(&mut self, at: Point, radius: f64) {
        self.discs.push((at, radius));
    }

    /// Keeps the side of a corner free as long as there is other room.
    pub fn keep_clear_of_side(&mut self, r: Rect) {
        self.sides.push(r);
    }

    /// The marks so far.
    pub fn marks(&self) -> &[Rect] {
        &self.marks
    }

    /// Whether a mark with its number has room in a rectangle; `is_label` for one that holds a number, as labels are placed.
    pub fn has_room_for(&self, r: &Rect, is_label: bool) -> bool {
        let free = if is_label { self.is_free(r, Over::Nothing) } else { self.is_clear(r, Over::Nothing) };
        free && !self.taken.iter().any(|t| t.meets(r))
    }

    /// How far the nearest mark is from a point.
    pub fn clearance(&self, p: Point) -> f64 {
        let marks = self.marks.iter().map(|m| m.middle().distance(p));
        marks.chain(self.discs.iter().map(|(at, _)| at.distance(p))).fold(f64::INFINITY, f64::min)
    }

    /// How many labels and marks a line runs through; those that contain its end don't count.
    pub fn crossed(&self, from: Point, to: Point) -> usize {
        let through = |r: &&Rect| r.is_crossed_by(from, to) && r.nearest(to) != to;
        self.taken.iter().filter(through).count() + self.marks.iter().filter(through).count()
    }

    /// Places a label, or puts it into the key.
    pub fn place(&mut self, pack: &mut Pack, label: &Label, places: &Places) {
        if !self.find(pack, label, places, &anywhere) {
            self.explain(pack, label, places);
        }
    }

    /// Puts a label into the key, with a number in its place if it may have one.
    fn explain(&mut self, pack: &mut Pack, label: &Label, places: &Places) {
        let Some(explained) = &label.key else { return };
        let wanted = label.tries.first().map_or(0.0, |t| t.1);
        let number = self.numbers + 1;
        let said = number.to_string();
        let tried = (said.as_str(), wanted);
        let found = label.numbered && self.try_text(pack, label, tried, places, &anywhere, Over::Nothing);
        if found {
            self.numbers = number;
        }
        let number = found.then_some(number);
        pack.scene.key.push(KeyLine::new(number, explained.clone(), label.role));
    }

    /// Places a label; false if there is no room for it.
    pub fn find(&mut self, pack: &mut Pack, label: &Label, places: &Places, fits: &Fits) -> bool {
        [Over::Nothing, Over::Outlines, Over::Marks]
            .into_iter()
            .take_while(|over| *over <= label.over)
            .any(|over| self.find_over(pack, label, places, fits, over))
    }

    /// The same, covering no more than that.
    pub fn find_over(
        &mut self,
        pack: &mut Pack,
        label: &Label,
        places: &Places,
        fits: &Fits,
        over: Over,
    ) -> bool {
        let wanted = label.tries.first().map_or(0.0, |t| t.1);
        let outlined = !self.sides.is_empty() || !self.kept.is_empty();
        if over == Over::Outlines && !outlined {
            return false;
        }
        for (said, size) in &label.tries {
            if self.try_text(pack, label, (said, *size), places, fits, over) {
                // If the label is smaller than the reader's text size, the key repeats it at full size.
                if let Some(text) = label.key.clone().filter(|_| *size < wanted) {
                    pack.scene.key.push(KeyLine::new(None, text, label.role));
                }
                return true;
            }
        }
        false
    }

    fn try_text(
        &mut self,
        pack: &mut Pack,
        label: &Label,
        (said, size): (&str, f64),
        places: &Places,
        fits: &Fits,
        over: Over,
    ) -> bool {
        let (w, h) = box_of(label, said, size);
        for middle in places(w, h) {
            let r = Rect::round(middle.x, middle.y, w, h);
            if self.is_free(&r, over) && fits(middle, w, h) {
                self.put(pack, label, said, size, r);
                return true;
            }
        }
        false
    }

    /// Whether a label has room in a rectangle.
    pub fn is_free(&self, r: &Rect, over: Over) -> bool {
        // A small gap stays between two labels.
        let wide = r.grown(1.5 * self.view.dp);
        self.view.holds(r) && !self.taken.iter().any(|t| t.meets(&wide)) && self.is_clear(r, over)
    }

    /// Whether there is nothing in a rectangle but labels and what may be covered.
    fn is_clear(&self, r: &Rect, over: Over) -> bool {
        if over == Over::Marks {
            return true;
        }
        let in_disc = |(at, radius): &(Point, f64)| r.nearest(*at).distance(*at) < *radius;
        !self.marks.iter().any(|m| m.meets(r))
            && !self.discs.iter().any(in_disc)
            && (over == Over::Outlines || !self.is_on_outline(r))
    }

    fn is_on_outline(&self, r: &Rect) -> bool {
        let half = OUTLINE_DP / 2.0 * self.view.dp;
        self.sides.iter().any(|side| side.meets(r))
            || self.kept.iter().flat_map(|k| &k.rings).any(|edge| edge.runs_through(r, half))
    }

    /// Puts a label where it is known to have room.
    pub fn put(&mut self, pack: &mut Pack, label: &Label, said: &str, size: f64, r: Rect) {
        self.taken.push(r);
        pack.label(said, size, label.role, label.boxed, r);
    }
}

pub(crate) fn box_of(label: &Label, said: &str, size: f64) -> (f64, f64) {
    let pad = if label.boxed { 0.5 * size } else { 0.25 * size };
    (text::width(said, size) + pad, 1.2 * size)
}

/// A lattice over the bounds of rings, the points nearest to `wish` first and `wish` before them; ties go to the side away from
/// the thumb.
pub(crate) fn lattice_in(rings: &[&[Point]], wish: Point, side: f64) -> Vec<Point> {
    const STEPS: i32 = 8;
    let all = || rings.iter().copied().flatten();
    let low = |f: fn(&Point) -> f64| all().map(f).fold(f64::INFINITY, f64::min);
    let high = |f: fn(&Point) -> f64| all().map(f).fold(f64::NEG_INFINITY, f64::max);
    let (x0, x1, y0, y1) = (low(|p| p.x), high(|p| p.x), low(|p| p.y), high(|p| p.y));
    let mut places = vec![wish];
    for i in 0..=STEPS {
        for j in 0..=STEPS {
            let (s, t) = (f64::from(i) / f64::from(STEPS), f64::from(j) / f64::from(STEPS));
            places.push(Point { x: x0 * (1.0 - s) + x1 * s, y: y0 * (1.0 - t) + y1 * t });
        }
    }
    // Rounded, so that a mirrored ring offers the mirrored places in the same order.
    let key = |p: &Point| ((p.distance(wish) * 16.0).round() as i64, (p.x * side * 16.0).round() as i64);
    places.sort_by_cached_key(key);
    places
}
