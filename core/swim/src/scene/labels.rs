//! Labels: each gets the first free place of those offered, so that none ever covers another.
//!
//! If a label finds no place it is shortened, then made smaller (never below the size of 100 % text), then
//! replaced by a number that the key explains, and finally moved to the key.

use super::pack::Pack;
use super::record::{KeyLine, LabelRole};
use super::text;
use super::view::{Rect, View};
use crate::frame::Point;

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
    /// Whether it may cover marks if there is no other place.
    pub over_marks: bool,
}

/// Returns the possible middle points for a box of this width and height, best first.
pub(crate) type Places<'a> = dyn Fn(f64, f64) -> Vec<Point> + 'a;

/// Places labels one after the other.
pub(crate) struct Placer<'v> {
    view: &'v View,
    taken: Vec<Rect>,
    marks: Vec<Rect>,
    numbers: u32,
}

impl<'v> Placer<'v> {
    pub fn new(view: &'v View) -> Self {
        Self { view, taken: Vec::new(), marks: Vec::new(), numbers: 0 }
    }

    /// Keeps the space of a mark free.
    pub fn keep_clear(&mut self, r: Rect) {
        self.marks.push(r);
    }

    /// Keeps the labels placed so far clear of marks that come after them.
    pub fn keep_clear_of_labels(&mut self) {
        self.marks.extend(self.taken.iter().copied());
    }

    /// Whether there is no mark in a rectangle.
    pub fn has_no_mark_in(&self, r: &Rect) -> bool {
        !self.marks.iter().any(|m| m.meets(r))
    }

    /// Whether there is neither a mark nor a label in a rectangle; for one that holds a label, as labels are placed.
    pub fn has_room_for(&self, r: &Rect, is_label: bool) -> bool {
        if is_label {
            return self.is_free(r, false);
        }
        self.has_no_mark_in(r) && !self.taken.iter().any(|t| t.meets(r))
    }

    /// How far the nearest mark is from a point.
    pub fn clearance(&self, p: Point) -> f64 {
        let middle = |m: &Rect| Point { x: m.x + m.w / 2.0, y: m.y + m.h / 2.0 };
        self.marks.iter().map(|m| middle(m).distance(p)).fold(f64::INFINITY, f64::min)
    }

    /// Places a label, or puts it into the key.
    pub fn place(&mut self, pack: &mut Pack, label: &Label, places: &Places) {
        let wanted = label.tries.first().map_or(0.0, |t| t.1);
        for over in [false, true].into_iter().take(if label.over_marks { 2 } else { 1 }) {
            for (said, size) in &label.tries {
                if self.try_text(pack, label, said, *size, places, over) {
                    // If the label is smaller than the reader's text size, the key repeats it at full size.
                    if let Some(text) = label.key.clone().filter(|_| *size < wanted) {
                        pack.scene.key.push(KeyLine::new(None, text, label.role));
                    }
                    return;
                }
            }
        }
        let Some(explained) = &label.key else { return };
        let number = self.numbers + 1;
        let found = label.numbered && self.try_text(pack, label, &number.to_string(), wanted, places, false);
        if found {
            self.numbers = number;
        }
        let number = found.then_some(number);
        pack.scene.key.push(KeyLine::new(number, explained.clone(), label.role));
    }

    fn try_text(
        &mut self,
        pack: &mut Pack,
        label: &Label,
        said: &str,
        size: f64,
        places: &Places,
        over: bool,
    ) -> bool {
        let (w, h) = box_of(label, said, size);
        for middle in places(w, h) {
            let r = Rect::round(middle.x, middle.y, w, h);
            if self.is_free(&r, over) {
                self.put(pack, label, said, size, r);
                return true;
            }
        }
        false
    }

    fn is_free(&self, r: &Rect, over_marks: bool) -> bool {
        // A small gap stays between two labels.
        let gap = 1.5 * self.view.dp;
        let wide = Rect { x: r.x - gap, y: r.y - gap, w: r.w + 2.0 * gap, h: r.h + 2.0 * gap };
        self.view.holds(r)
            && !self.taken.iter().any(|t| t.meets(&wide))
            && (over_marks || !self.marks.iter().any(|m| m.meets(r)))
    }

    fn put(&mut self, pack: &mut Pack, label: &Label, said: &str, size: f64, r: Rect) {
        self.taken.push(r);
        pack.label(said, size, label.role, label.boxed, r);
    }
}

fn box_of(label: &Label, said: &str, size: f64) -> (f64, f64) {
    let pad = if label.boxed { 0.5 * size } else { 0.25 * size };
    (text::width(said, size) + pad, 1.2 * size)
}

/// Places in a ring, nearest to `wish` first, on a lattice over its bounds; ties go to the side away from
/// the thumb.
pub(crate) fn places_in(rings: &[Vec<Point>], wish: Point, side: f64) -> Vec<Point> {
    const STEPS: i32 = 8;
    let all = || rings.iter().flatten();
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
    let inside = |p: &Point| rings.iter().filter(|r| crate::planar::ring_contains(r, *p)).count() % 2 == 1;
    places.retain(inside);
    // Rounded, so that a mirrored ring offers the mirrored places in the same order.
    let key = |p: &Point| ((p.distance(wish) * 16.0).round() as i64, (p.x * side * 16.0).round() as i64);
    places.sort_by_key(key);
    places
}
