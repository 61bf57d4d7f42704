//! What covers what on a picture of the swim. It is for tests: nothing should.

use super::scene::{LabelRole, LineRole, MarkShape, SwimScene};

/// Left, top, right and bottom, pixels.
type Sides = [f32; 4];
type At = [f32; 2];

/// Roundings stay below this, pixels.
const HAIR: f32 = 0.5;
/// From this turn on, in degrees, an outline has a corner.
const CORNER_DEG: f32 = 30.0;

/// A ring of the next cast: its middle, and the inner and outer edge of its line.
struct RingLine {
    at: At,
    inner: f32,
    outer: f32,
}

struct Picture<'a> {
    scene: &'a SwimScene,
    labels: Vec<(LabelRole, &'a str, Sides)>,
    marks: Vec<(MarkShape, Sides)>,
    rings: Vec<RingLine>,
    /// The pieces of the outlines of kept-back water, with half of their width.
    outlines: Vec<(At, At, f32)>,
    corners: Vec<At>,
    aimed: Vec<At>,
}

/// Each fault in words. Baits, features and hazards are where the angler put them, so these may lie on each other, on an outline and
/// under the ring of someone who stays at a spot; nothing else may cover anything.
pub fn covered(scene: &SwimScene) -> Vec<String> {
    let picture = Picture::of(scene);
    let mut faults = picture.labels_on_anything();
    faults.extend(picture.marks_on_anything());
    faults.extend(picture.rings_on_anything());
    faults
}

fn meet(a: &Sides, b: &Sides) -> bool {
    a[0] + HAIR < b[2] && b[0] + HAIR < a[2] && a[1] + HAIR < b[3] && b[1] + HAIR < a[3]
}

fn far(a: At, b: At) -> f32 {
    (a[0] - b[0]).hypot(a[1] - b[1])
}

/// The distances of the nearest and the farthest point of a box.
fn span(at: At, b: &Sides) -> (f32, f32) {
    let near = [at[0].clamp(b[0], b[2]), at[1].clamp(b[1], b[3])];
    let corners = [[b[0], b[1]], [b[2], b[1]], [b[0], b[3]], [b[2], b[3]]];
    (far(at, near), corners.iter().map(|corner| far(at, *corner)).fold(0.0, f32::max))
}

fn holds(b: &Sides, p: At) -> bool {
    p[0] > b[0] + HAIR && p[0] < b[2] - HAIR && p[1] > b[1] + HAIR && p[1] < b[3] - HAIR
}

/// Whether a line of that half width runs through a box, by points along it.
fn runs_through(&(a, b, half): &(At, At, f32), sides: &Sides) -> bool {
    let wide = [sides[0] - half, sides[1] - half, sides[2] + half, sides[3] + half];
    let steps = (far(a, b).ceil() as u16).max(1);
    (0..=steps).any(|i| {
        let t = f32::from(i) / f32::from(steps);
        holds(&wide, [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])])
    })
}

/// Whether the angler set the place of a mark.
fn is_fixed(shape: MarkShape) -> bool {
    matches!(shape, MarkShape::FeatureSquare | MarkShape::HazardCross | MarkShape::OutNow)
}

impl<'a> Picture<'a> {
    fn of(scene: &'a SwimScene) -> Self {
        let boxes = scene.label_box.chunks_exact(4).zip(&scene.label_text).zip(&scene.label_role);
        let label = |((b, text), role): ((&[f32], &'a String), &LabelRole)| {
            (*role, text.as_str(), [b[0], b[1], b[0] + b[2], b[1] + b[3]])
        };
        let marks = scene.mark_xy.chunks_exact(2).zip(&scene.mark_size).zip(&scene.mark_shape);
        let mark = |((at, size), shape): ((&[f32], &f32), &MarkShape)| {
            let size = 0.98 * size;
            (*shape, [at[0] - size, at[1] - size, at[0] + size, at[1] + size])
        };
        let mut picture = Self {
            scene,
            labels: boxes.map(label).collect(),
            marks: marks.map(mark).collect(),
            rings: Vec::new(),
            outlines: Vec::new(),
            corners: Vec::new(),
            aimed: Vec::new(),
        };
        for i in 0..scene.line_role.len() {
            picture.take_line(i);
        }
        picture
    }

    fn take_line(&mut self, i: usize) {
        let scene = self.scene;
        let part = 2 * scene.line_start[i] as usize..2 * scene.line_start[i + 1] as usize;
        let points: Vec<At> = scene.line_xy[part].chunks_exact(2).map(|p| [p[0], p[1]]).collect();
        let half = scene.line_width[i] / 2.0;
        let closed = points.len() > 3 && points.first() == points.last();
        match scene.line_role[i] {
            LineRole::NextRing if closed => {
                let middle = |k: usize| {
                    let all = points.iter().map(|p| p[k]);
                    f32::midpoint(all.clone().fold(f32::MAX, f32::min), all.fold(f32::MIN, f32::max))
                };
                let at = [middle(0), middle(1)];
                let radius = far(at, points[0]);
                self.rings.push(RingLine { at, inner: radius - half, outer: radius + half });
            }
            LineRole::KeptBack if closed => {
                self.outlines.extend(points.windows(2).map(|two| (two[0], two[1], half)));
                self.corners.extend(corners(&points[..points.len() - 1]));
            }
            LineRole::Aimed if points.len() == 3 => self.aimed.push(points[1]),
            _ => {}
        }
    }

    fn labels_on_anything(&self) -> Vec<String> {
        let mut faults = Vec::new();
        for (i, (role, text, at)) in self.labels.iter().enumerate() {
            let others = self.labels[i + 1..].iter().filter(|(.., b)| meet(at, b));
            faults.extend(others.map(|b| format!("{text} on {}", b.1)));
            let marks = self.marks.iter().filter(|(_, b)| meet(at, b));
            faults.extend(marks.map(|b| format!("{text} on {:?}", b.0)));
            for ring in &self.rings {
                let (near, end) = span(ring.at, at);
                // Figures inside a ring are not as large as their box.
                let inside = *role == LabelRole::Rested && end < ring.outer;
                if near < ring.outer - HAIR && !inside {
                    faults.push(format!("{text} on the ring"));
                }
            }
            // What is about the water of one cell may touch the sides of its outline, where that is narrow.
            let own = matches!(role, LabelRole::KeptBack | LabelRole::Rested);
            if !own && self.outlines.iter().any(|line| runs_through(line, at)) {
                faults.push(format!("{text} on the outline of kept-back water"));
            }
            let hidden = self.corners.iter().chain(&self.aimed).filter(|p| holds(at, **p));
            faults.extend(hidden.map(|_| format!("{text} on a corner")));
        }
        faults
    }

    fn marks_on_anything(&self) -> Vec<String> {
        let mut faults = Vec::new();
        for (i, (shape, at)) in self.marks.iter().enumerate() {
            let others = self.marks[i + 1..].iter().filter(|(other, b)| {
                meet(at, b) && !(is_fixed(*shape) && (is_fixed(*other) || *other == MarkShape::NextDot))
            });
            faults.extend(others.map(|b| format!("{shape:?} on {:?}", b.0)));
            if is_fixed(*shape) || *shape == MarkShape::NextDot {
                continue;
            }
            if self.outlines.iter().any(|line| runs_through(line, at)) {
                faults.push(format!("{shape:?} on the outline of kept-back water"));
            }
            if self.aimed.iter().any(|p| holds(at, *p)) {
                faults.push(format!("{shape:?} on a corner of the cell that is aimed at"));
            }
            let half = (at[2] - at[0]) / 2.0;
            let middle = [f32::midpoint(at[0], at[2]), f32::midpoint(at[1], at[3])];
            let on_ring = |ring: &&RingLine| far(ring.at, middle) < ring.outer + 0.7 * half - HAIR;
            faults.extend(self.rings.iter().filter(on_ring).map(|_| format!("{shape:?} on the ring")));
        }
        faults
    }

    /// A mark whose place is given is inside a ring or outside it, not under its line, and so is a corner of kept-back water.
    /// Between several of them there may be no room for a ring.
    fn rings_on_anything(&self) -> Vec<String> {
        let middle = |at: &Sides| [f32::midpoint(at[0], at[2]), f32::midpoint(at[1], at[3])];
        let fixed = self.marks.iter().filter(|(shape, _)| is_fixed(*shape));
        let fixed = fixed.map(|(shape, at)| (format!("{shape:?}"), middle(at), (at[2] - at[0]) / 2.0));
        let corners = self.corners.iter().map(|p| ("a corner of kept-back water".to_owned(), *p, 0.0));
        let all: Vec<(String, At, f32)> = fixed.chain(corners).collect();
        let mut faults = Vec::new();
        for ring in &self.rings {
            let near: Vec<_> = all.iter().filter(|(_, at, _)| far(ring.at, *at) < 3.0 * ring.outer).collect();
            // Where the boundary cuts kept-back water it has more corners than are counted here.
            let outlined = self.outlines.iter().any(|(a, ..)| far(ring.at, *a) < 3.0 * ring.outer);
            if let ([(what, at, half)], false) = (&near[..], outlined) {
                let away = far(ring.at, *at);
                if away - half < ring.outer - HAIR && away + half > ring.inner + HAIR {
                    faults.push(format!("the ring on {what}"));
                }
            }
        }
        faults
    }
}

/// Where a closed line turns sharply.
fn corners(ring: &[At]) -> Vec<At> {
    let n = ring.len();
    let turns = |i: &usize| {
        let (a, b, c) = (ring[(i + n - 1) % n], ring[*i], ring[(i + 1) % n]);
        let (before, after) = ((b[1] - a[1]).atan2(b[0] - a[0]), (c[1] - b[1]).atan2(c[0] - b[0]));
        let turn = (after - before).abs().to_degrees();
        far(a, b) > HAIR && far(b, c) > HAIR && turn.min(360.0 - turn) > CORNER_DEG
    };
    (0..n).filter(turns).map(|i| ring[i]).collect()
}
