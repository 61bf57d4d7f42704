//! The canvases that the layout gives the swim on phones of four sizes. The laws of the scene are tested on
//! them here, and a test of the layout checks that this table matches what it gives.

/// A canvas on a phone.
#[derive(Debug, Clone, Copy)]
pub struct PhoneCanvas {
    /// Width and height of the screen, mm (4.7, 5, 6.1 and 6.7 in, public specification sheets, from memory).
    pub screen_mm: (f64, f64),
    /// Pixels in a millimetre.
    pub px_per_mm: f64,
    /// Text scale.
    pub text_scale: f64,
    /// Width and height of the canvas, mm.
    pub canvas_mm: (f64, f64),
}

const fn canvas(
    screen_mm: (f64, f64),
    px_per_mm: f64,
    text_scale: f64,
    canvas_mm: (f64, f64),
) -> PhoneCanvas {
    PhoneCanvas { screen_mm, px_per_mm, text_scale, canvas_mm }
}

/// Four phones at text scales of 100, 130 and 200 %, then the smallest and the largest of them on their side.
pub const PHONE_CANVASES: [PhoneCanvas; 18] = [
    canvas((58.4, 103.9), 12.84, 1.0, (54.4, 34.9)),
    canvas((58.4, 103.9), 12.84, 1.3, (54.4, 29.8)),
    canvas((58.4, 103.9), 12.84, 2.0, (54.4, 26.1)),
    canvas((62.1, 110.4), 17.4, 1.0, (58.1, 41.4)),
    canvas((62.1, 110.4), 17.4, 1.3, (58.1, 36.3)),
    canvas((62.1, 110.4), 17.4, 2.0, (58.1, 27.7)),
    canvas((64.9, 140.7), 16.634, 1.0, (60.9, 66.7)),
    canvas((64.9, 140.7), 16.634, 1.3, (60.9, 60.1)),
    canvas((64.9, 140.7), 16.634, 2.0, (60.9, 49.2)),
    canvas((71.2, 154.4), 18.11, 1.0, (67.2, 80.4)),
    canvas((71.2, 154.4), 18.11, 1.3, (67.2, 73.8)),
    canvas((71.2, 154.4), 18.11, 2.0, (67.2, 62.9)),
    canvas((103.9, 58.4), 12.84, 1.0, (44.95, 40.2)),
    canvas((103.9, 58.4), 12.84, 1.3, (44.95, 35.1)),
    canvas((103.9, 58.4), 12.84, 2.0, (44.95, 26.5)),
    canvas((154.4, 71.2), 18.11, 1.0, (81.4, 48.0)),
    canvas((154.4, 71.2), 18.11, 1.3, (81.4, 41.4)),
    canvas((154.4, 71.2), 18.11, 2.0, (81.4, 39.3)),
];
