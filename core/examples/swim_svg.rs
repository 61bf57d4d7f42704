//! Draws swims of an invented day to SVG, to be looked at: `cargo run -p restwater-core --example swim_svg -- FOLDER`.
//!
//! It also shows a shell how a packed scene is drawn, role by role. All data here is invented.
// Bools name the look of a picture; the example draws, it decides nothing.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::struct_excessive_bools)]

use restwater_core::swim::{
    AimingMark, CastAt, Detail, Fan, Feature, FeatureKind, FillRole, Hand, Hazard, KeptBack, LineRole,
    MarkShape, Neighbours, SceneAsk, SceneWords, Spot, Swim, SwimInput, SwimScene,
};
use std::fmt::Write as _;

const MINUTE: i64 = 60_000;

fn main() {
    let folder = std::env::args().nth(1).expect("usage: swim_svg FOLDER");
    std::fs::create_dir_all(&folder).expect("the folder can be made");
    for (name, casts, size, look) in pictures() {
        let svg = picture(casts, size, look);
        std::fs::write(format!("{folder}/{name}.svg"), svg).expect("the file can be written");
    }
}

/// Width and height in pixels, pixels per millimetre, text scale.
type Size = (f64, f64, f64, f64);

#[derive(Clone, Copy, Default)]
struct Look {
    night: bool,
    small: bool,
    left: bool,
    bounded: bool,
    scattered: bool,
}

fn pictures() -> Vec<(&'static str, usize, Size, Look)> {
    let phone = (411.0, 500.0, 6.3, 1.0);
    let day = Look::default();
    vec![
        ("casts-0", 0, phone, day),
        ("casts-1", 1, phone, day),
        ("casts-12", 12, phone, day),
        ("casts-60", 60, phone, day),
        ("casts-60-night", 60, phone, Look { night: true, ..day }),
        ("casts-60-left", 60, phone, Look { left: true, ..day }),
        ("casts-12-text-200", 12, (411.0, 500.0, 6.3, 2.0), day),
        ("casts-60-text-200", 60, (411.0, 500.0, 6.3, 2.0), day),
        ("casts-60-bounded", 60, phone, Look { bounded: true, ..day }),
        ("casts-60-scattered", 60, phone, Look { scattered: true, ..day }),
        ("casts-500-scattered", 500, phone, Look { scattered: true, ..day }),
        ("small-phone", 12, (320.0, 330.0, 6.3, 1.0), day),
        ("small-phone-text-200", 12, (320.0, 330.0, 6.3, 2.0), day),
        ("large-phone", 60, (1290.0, 1500.0, 18.1, 1.0), day),
        ("bank-fan", 12, (134.0, 124.0, 6.3, 1.0), Look { small: true, ..day }),
        ("bank-fan-60", 60, (134.0, 124.0, 6.3, 1.0), Look { small: true, ..day }),
    ]
}

fn picture(casts: usize, (width, height, px_per_mm, text): Size, look: Look) -> String {
    let swim = Swim::new(day_of(casts, look)).expect("the invented day is sound");
    let now = 6 * 60 * MINUTE;
    let figures = swim.figures(now);
    let next = swim.where_next(&figures).ranked.first().map(|n| n.cell);
    let mut ask = SceneAsk::new(width, height, px_per_mm, text).expect("the canvas is sound");
    ask.next = next;
    ask.hand = if look.left { Hand::Left } else { Hand::Right };
    ask.detail = if look.small { Detail::Small } else { Detail::Full };
    let scene = swim.scene(&figures, &ask, &SceneWords::default()).expect("the scene can be drawn");
    svg(&scene, look.night)
}

fn day_of(casts: usize, look: Look) -> SwimInput {
    let mark =
        |id: &str, name: &str, bearing_deg: f64| AimingMark { id: id.into(), name: name.into(), bearing_deg };
    let spot = |bearing_deg: f64, range_m: f64| Spot { bearing_deg, range_m };
    let outline = Neighbours {
        left_peg_m: Some(24.0),
        right_peg_m: Some(30.0),
        far_bank_m: 52.0,
        far_bank_pegged: false,
    };
    SwimInput {
        marks: vec![mark("a", "Dead tree", -17.0), mark("b", "Gate", -3.0), mark("c", "Hut", 16.0)],
        fan: Some(Fan { from_deg: -28.0, to_deg: 28.0 }),
        boundary: look.bounded.then(|| outline.outline().expect("the outline is sound")),
        casts: (0..casts).map(|i| cast(i, casts, look)).collect(),
        kept_back: (casts > 1)
            .then(|| KeptBack {
                fan: Fan { from_deg: -28.0, to_deg: 28.0 },
                band: restwater_core::swim::Band { from_m: 50.0, to_m: 60.0 },
                since_ms: 214 * MINUTE,
                released_ms: None,
            })
            .into_iter()
            .collect(),
        features: vec![Feature { name: "bar".into(), kind: FeatureKind::Bar, spot: spot(20.0, 26.0) }],
        hazards: vec![Hazard { name: "snag".into(), spot: spot(-22.0, 24.0), clear_m: 3.0 }],
        ..SwimInput::default()
    }
}

fn cast(i: usize, of: usize, look: Look) -> CastAt {
    // A plain lattice of spots, walked through; scattered ones by the golden ratio.
    let spots = [(-17.0, 35.0), (-3.0, 35.0), (-17.0, 45.0), (16.0, 35.0), (-3.0, 45.0), (6.5, 25.0)];
    let (bearing_deg, range_m) = if look.scattered {
        let t = i as f64;
        (-27.0 + 54.0 * (t * 0.618_034).fract(), 12.0 + 37.0 * (t * 0.754_878).fract())
    } else {
        spots[(i * 7 + i / 5) % spots.len()]
    };
    let whole = |n: usize| i64::try_from(n).unwrap_or(i64::MAX);
    let each = 350 * MINUTE / whole(of.max(1));
    let start_ms = whole(i) * each;
    let bites = u32::from(i % 5 == 2);
    let last = i + 1 == of;
    CastAt {
        spot: Spot { bearing_deg, range_m },
        clipped: true,
        lead_g: Some(28.35),
        start_ms,
        end_ms: (!last).then_some(start_ms + each * 4 / 5),
        bites,
        bite_ms: None,
        liners: u32::from(i % 7 == 3),
        lost: u32::from(i % 11 == 7),
        landed: bites,
    }
}

/// Ink of each role, for one scheme.
struct Scheme {
    paper: &'static str,
    ink: &'static str,
    soft: &'static str,
    water: &'static str,
    accent: &'static str,
}

fn svg(scene: &SwimScene, night: bool) -> String {
    let day =
        Scheme { paper: "#FBF8F1", ink: "#14181C", soft: "#5A6168", water: "#E9EEF0", accent: "#C2410C" };
    let dark =
        Scheme { paper: "#101418", ink: "#F3EFE6", soft: "#A8B0B6", water: "#1B2228", accent: "#FF9A52" };
    let s = if night { dark } else { day };
    let (w, h) = (scene.width_px, scene.height_px);
    let key_height = 20.0 * scene.key.len() as f32;
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}\" height=\"{}\"><rect width=\"100%\" height=\"100%\" fill=\"{}\"/>\n",
        h + key_height,
        s.paper
    );
    fills(&mut out, scene, &s);
    for stroke in scene.hatch_xy.chunks_exact(4) {
        let [x1, y1, x2, y2] = [stroke[0], stroke[1], stroke[2], stroke[3]];
        let width = scene.hatch_width;
        let _ = writeln!(
            out,
            "<line x1=\"{x1}\" y1=\"{y1}\" x2=\"{x2}\" y2=\"{y2}\" stroke=\"{}\" stroke-width=\"{width}\"/>",
            s.ink
        );
    }
    lines(&mut out, scene, &s);
    marks(&mut out, scene, &s);
    labels(&mut out, scene, &s);
    for (i, line) in scene.key.iter().enumerate() {
        let number = line.number.map_or("-".to_owned(), |n| n.to_string());
        let y = h + 15.0 + 20.0 * i as f32;
        let _ = writeln!(
            out,
            "<text x=\"8\" y=\"{y}\" font-size=\"14\" font-family=\"DejaVu Sans\" fill=\"{}\">{number} {}</text>",
            s.ink,
            line.text.replace('<', "&lt;")
        );
    }
    out.push_str("</svg>\n");
    out
}

fn points(xy: &[f32]) -> String {
    let mut out = String::new();
    for p in xy.chunks_exact(2) {
        let _ = write!(out, "{:.1},{:.1} ", p[0], p[1]);
    }
    out
}

fn fills(out: &mut String, scene: &SwimScene, s: &Scheme) {
    for (part, role) in scene.fill_start.windows(2).zip(&scene.fill_role) {
        let xy = &scene.fill_xy[2 * part[0] as usize..2 * part[1] as usize];
        let ink = match role {
            FillRole::Water => s.water,
            FillRole::Peg => s.ink,
        };
        let _ = writeln!(out, "<polygon points=\"{}\" fill=\"{ink}\"/>", points(xy));
    }
}

fn lines(out: &mut String, scene: &SwimScene, s: &Scheme) {
    for ((part, role), width) in scene.line_start.windows(2).zip(&scene.line_role).zip(&scene.line_width) {
        let xy = &scene.line_xy[2 * part[0] as usize..2 * part[1] as usize];
        let (ink, dash) = match role {
            LineRole::Outline | LineRole::CellEdge | LineRole::KeptBack | LineRole::ChosenRing => (s.ink, ""),
            LineRole::Band => (s.soft, ""),
            LineRole::Ray | LineRole::HazardClear => (s.soft, " stroke-dasharray=\"2 4\""),
            LineRole::KeptBackInner => (s.paper, ""),
            LineRole::NextRing => (s.accent, ""),
        };
        let _ = writeln!(
            out,
            "<polyline points=\"{}\" fill=\"none\" stroke=\"{ink}\" stroke-width=\"{width}\" stroke-linejoin=\"round\" stroke-linecap=\"round\"{dash}/>",
            points(xy)
        );
    }
}

fn marks(out: &mut String, scene: &SwimScene, s: &Scheme) {
    for ((at, size), shape) in scene.mark_xy.chunks_exact(2).zip(&scene.mark_size).zip(&scene.mark_shape) {
        let (x, y, r) = (at[0], at[1], *size);
        let paper = s.paper;
        let open = format!("fill=\"{paper}\" stroke=\"{}\" stroke-width=\"{}\"", s.ink, r * 0.34);
        let solid = format!("fill=\"{}\" stroke=\"{paper}\" stroke-width=\"{}\"", s.ink, r * 0.2);
        let _ = match shape {
            MarkShape::CastDot => writeln!(out, "<circle cx=\"{x}\" cy=\"{y}\" r=\"{r}\" {solid}/>"),
            MarkShape::NextDot => {
                writeln!(out, "<circle cx=\"{x}\" cy=\"{y}\" r=\"{r}\" fill=\"{}\"/>", s.accent)
            }
            MarkShape::OutNow => writeln!(
                out,
                "<circle cx=\"{x}\" cy=\"{y}\" r=\"{r}\" {open}/><circle cx=\"{x}\" cy=\"{y}\" r=\"{}\" {solid}/>",
                r * 0.4
            ),
            MarkShape::BiteDiamond => writeln!(
                out,
                "<polygon points=\"{x},{} {},{y} {x},{} {},{y}\" {solid}/>",
                y - r,
                x + r,
                y + r,
                x - r
            ),
            MarkShape::LinerTriangle => writeln!(
                out,
                "<polygon points=\"{x},{} {},{} {},{}\" {open}/>",
                y - r,
                x + r * 0.95,
                y + r * 0.75,
                x - r * 0.95,
                y + r * 0.75
            ),
            MarkShape::LostCross => {
                let k = r * 0.8;
                let d = format!(
                    "M{},{}L{},{}M{},{}L{},{}",
                    x - k,
                    y - k,
                    x + k,
                    y + k,
                    x - k,
                    y + k,
                    x + k,
                    y - k
                );
                writeln!(
                    out,
                    "<path d=\"{d}\" stroke=\"{paper}\" stroke-width=\"{}\" stroke-linecap=\"round\"/><path d=\"{d}\" stroke=\"{}\" stroke-width=\"{}\" stroke-linecap=\"round\"/>",
                    r * 0.85,
                    s.ink,
                    r * 0.45
                )
            }
            MarkShape::FeatureSquare => {
                let k = r * 0.8;
                writeln!(
                    out,
                    "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" {open}/>",
                    x - k,
                    y - k,
                    2.0 * k,
                    2.0 * k
                )
            }
            MarkShape::HazardCross => {
                let k = r * 0.45;
                writeln!(
                    out,
                    "<path d=\"M{x},{}L{},{y}L{x},{}L{},{y}Z\" {open}/><path d=\"M{x},{}L{x},{}M{},{y}L{},{y}\" stroke=\"{}\" stroke-width=\"{}\"/>",
                    y - r,
                    x + r,
                    y + r,
                    x - r,
                    y - k,
                    y + k,
                    x - k,
                    x + k,
                    s.ink,
                    r * 0.3
                )
            }
        };
    }
}

fn labels(out: &mut String, scene: &SwimScene, s: &Scheme) {
    for (i, text) in scene.label_text.iter().enumerate() {
        let b = &scene.label_box[4 * i..4 * i + 4];
        if scene.label_boxed[i] {
            let _ = writeln!(
                out,
                "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" rx=\"3\" fill=\"{}\" stroke=\"{}\"/>",
                b[0], b[1], b[2], b[3], s.paper, s.ink
            );
        }
        let _ = writeln!(
            out,
            "<text x=\"{}\" y=\"{}\" font-family=\"DejaVu Sans\" font-weight=\"600\" font-size=\"{}\" text-anchor=\"middle\" fill=\"{}\">{text}</text>",
            scene.label_at[2 * i],
            scene.label_at[2 * i + 1],
            scene.label_size[i],
            s.ink
        );
    }
}
