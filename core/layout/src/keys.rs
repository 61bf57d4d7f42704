//! The thumb pad: three rows from the bottom corner of the chosen hand.
//!
//! ```text
//!   far side                     hand
//!   +-------+ +-------+ +-------+
//!   | UNDO  | | LINER | | LANDED|      small keys, 15 mm
//!   +-------+ +-------+ +-------+
//!   +-----------+   +-----------+
//!   |  WOUND IN |   |   BITE    |      the pair, 20 mm, 6 mm apart
//!   +-----------+   +-----------+
//!                                      6 mm: the notice line
//!   +-------+ +-----------------+
//!   | MORE  | |      CAST       |      20 mm
//!   +-------+ +-----------------+
//! ```
//!
//! On a screen too low for three rows (a phone on its side), the small keys are stacked beside the two rows
//! of large ones, and the words take the other side of the screen:
//!
//! ```text
//!   words   +-------+ +-----------+   +-----------+
//!           | UNDO  | |  WOUND IN |   |   BITE    |
//!           +-------+ +-----------+   +-----------+
//!           | LINER |
//!           +-------+ +-------+ +-----------------+
//!           | LANDED| | MORE  | |      CAST       |
//!           +-------+ +-------+ +-----------------+
//! ```
//!
//! A cold thumb often taps twice, so the keys that appear after a tap must not put one that logs something
//! else under the same thumb. While a fish is on, the place of BITE stays empty; when no rod is out, the
//! place of WOUND IN holds words, and only the swim opens where BITE was; and LANDED and LOST are never where
//! CAST will be. Three large keys and a wide CAST do not all fit beside the empty place of BITE, so MISSED is
//! where CAST will be: after a missed fish the next tap is a cast anyway.
//!
//! ```text
//!   +-------+ +-------+ +-------+
//!   | UNDO  | | 1 MIN | | Tackle|
//!   +-------+ +-------+ +-------+
//!   spot                +-------+
//!   rig                 | Swim  |      nothing out: where to cast next
//!                       +-------+
//!   +-------+ +-----------------+
//!   | MORE  | |      CAST       |
//!   +-------+ +-----------------+
//! ```
//!
//! MORE opens a sheet with every other key of the state: see [`super::sheet`].

use super::least::{FOOT_MM, HEAD_MM, MARGIN_MM};
use super::{
    GAP_MM, KeyPlace, Millimetres, OPPOSITE_GAP_MM, PRIMARY_MM, PadAsk, REACH_MM, Rect, SECONDARY_MM,
};
use restwater_screen::{BankState, Key};

/// A key grows up to this height if the rules leave room, mm.
const ROOMY_MM: f64 = 25.0;
/// Width of the keys of the other screens on a screen on its side, mm.
const COLUMN_MM: f64 = 24.0;

/// The pad in millimetres of glass.
pub(super) struct Pad {
    pub(super) keys: Vec<KeyPlace>,
    pub(super) more: Option<Rect>,
    pub(super) next_rod: Option<Rect>,
    /// Where the words of the pair's row go if nothing is out.
    pub(super) beside_thumb: Rect,
    pub(super) latest: Option<Rect>,
    pub(super) notice: Rect,
    /// Where the words go.
    pub(super) words: Rect,
}

/// The position of the small keys.
#[derive(Clone, Copy)]
enum Small {
    /// Side by side, with this width, this high above the bottom.
    Row { width: f64, y: f64 },
    /// One below the other, this far from the hand's edge.
    Column { x: f64 },
}

/// Heights of the rows, from the bottom of the screen, and widths, from the edge on the hand's side.
pub(super) struct Rows {
    width: f64,
    height: f64,
    top: f64,
    left_handed: bool,
    content: f64,
    cast_y: f64,
    cast_h: f64,
    pair_y: f64,
    pair_h: f64,
    small: Small,
}

impl Rows {
    pub(super) fn on(glass: &Millimetres) -> Self {
        if glass.on_its_side() { Self::beside(glass) } else { Self::below(glass) }
    }

    /// Three rows below the words.
    fn below(glass: &Millimetres) -> Self {
        let content = glass.width - 2.0 * MARGIN_MM;
        let cast_y = glass.bottom + FOOT_MM;
        let least_y = cast_y + 2.0 * PRIMARY_MM + OPPOSITE_GAP_MM + GAP_MM;
        let far = |w: f64| MARGIN_MM + 2.0 * (w + GAP_MM);
        let across = far(SECONDARY_MM);
        let highest = libm::sqrt(REACH_MM * REACH_MM - across * across);
        let lower_part = super::LOWER_PART * glass.height - SECONDARY_MM;
        let slack = (highest.min(lower_part) - least_y).max(0.0);
        // Extra room goes first to the gap between BITE and the key that undoes it, then to the keys.
        let gap = GAP_MM + slack.min(OPPOSITE_GAP_MM - GAP_MM);
        let grow = ((slack - (gap - GAP_MM)) / 2.0).min(ROOMY_MM - PRIMARY_MM);
        let y = cast_y + 2.0 * (PRIMARY_MM + grow) + OPPOSITE_GAP_MM + gap;
        let fill = (content - 2.0 * GAP_MM) / 3.0;
        let reached = libm::sqrt((REACH_MM * REACH_MM - y * y).max(0.0));
        let width = ((reached - MARGIN_MM - 2.0 * GAP_MM) / 2.0).clamp(SECONDARY_MM, fill.max(SECONDARY_MM));
        Self::of(glass, content, grow, Small::Row { width, y })
    }

    /// Two rows and a column beside the words.
    fn beside(glass: &Millimetres) -> Self {
        let least = 2.0 * PRIMARY_MM + OPPOSITE_GAP_MM;
        let aside = 2.0 * MARGIN_MM + 2.0 * GAP_MM + SECONDARY_MM;
        // Half of the screen, but no key farther than a thumb reaches.
        let highest = glass.bottom + FOOT_MM + 2.0 * (SECONDARY_MM + GAP_MM);
        let reached = libm::sqrt(REACH_MM * REACH_MM - highest * highest) - MARGIN_MM - GAP_MM;
        let content = (glass.width / 2.0 - aside).clamp(least, reached.max(least));
        let room = glass.height - glass.top - glass.bottom - FOOT_MM - HEAD_MM - OPPOSITE_GAP_MM;
        let grow = (room / 2.0 - PRIMARY_MM).clamp(0.0, ROOMY_MM - PRIMARY_MM);
        Self::of(glass, content, grow, Small::Column { x: content + GAP_MM })
    }

    fn of(glass: &Millimetres, content: f64, grow: f64, small: Small) -> Self {
        let Millimetres { width, height, top, left_handed, .. } = *glass;
        let cast_y = glass.bottom + FOOT_MM;
        let (cast_h, pair_h) = (PRIMARY_MM + grow, PRIMARY_MM + grow);
        let pair_y = cast_y + cast_h + OPPOSITE_GAP_MM;
        Self { width, height, top, left_handed, content, cast_y, cast_h, pair_y, pair_h, small }
    }

    /// Where the words go.
    fn words(&self) -> Rect {
        let whole = Rect {
            left: MARGIN_MM,
            top: self.top,
            width: self.width - 2.0 * MARGIN_MM,
            height: self.height - self.top,
        };
        match self.small {
            Small::Row { .. } => Rect { height: self.small(2).top - self.top, ..whole },
            Small::Column { x } => {
                let pad = x + SECONDARY_MM + GAP_MM;
                let left = whole.left + if self.left_handed { pad } else { 0.0 };
                Rect { left, width: whole.width - pad, height: whole.height - self.cast_y, ..whole }
            }
        }
    }

    /// A rectangle given from the hand's bottom corner; mirrored for the left hand.
    fn rect(&self, x: f64, y: f64, width: f64, height: f64) -> Rect {
        let x = x + MARGIN_MM;
        let left = if self.left_handed { x } else { self.width - x - width };
        Rect { left, top: self.height - y - height, width, height }
    }

    /// CAST, on the hand's side.
    fn cast(&self) -> Rect {
        self.rect(0.0, self.cast_y, self.content - PRIMARY_MM - GAP_MM, self.cast_h)
    }

    /// The place beside CAST, on the far side.
    pub(super) fn beside_cast(&self) -> Rect {
        self.rect(self.content - PRIMARY_MM, self.cast_y, PRIMARY_MM, self.cast_h)
    }

    /// What is left of CAST's row when the place beside it means the opposite.
    fn missed(&self) -> Rect {
        self.rect(0.0, self.cast_y, self.content - PRIMARY_MM - OPPOSITE_GAP_MM, self.cast_h)
    }

    fn half(&self) -> f64 {
        (self.content - OPPOSITE_GAP_MM) / 2.0
    }

    /// The one of the pair on the hand's side.
    fn near(&self) -> Rect {
        self.rect(0.0, self.pair_y, self.half(), self.pair_h)
    }

    /// The one of the pair on the far side.
    fn far(&self) -> Rect {
        self.rect(self.half() + OPPOSITE_GAP_MM, self.pair_y, self.half(), self.pair_h)
    }

    /// With no rod out, the key in the pair's row: at the thumb, where BITE was.
    fn at_thumb(&self) -> Rect {
        self.rect(0.0, self.pair_y, PRIMARY_MM, self.pair_h)
    }

    /// What that leaves of the row. It holds words, since a second tap on WOUND IN lands here.
    fn beside_thumb(&self) -> Rect {
        let x = PRIMARY_MM + GAP_MM;
        self.rect(x, self.pair_y, self.content - x, self.pair_h)
    }

    pub(super) fn pair_row(&self) -> Rect {
        self.rect(0.0, self.pair_y, self.content, self.pair_h)
    }

    /// Whether three keys fit side by side in the pair's row.
    pub(super) fn three_fit(&self) -> bool {
        self.content >= 3.0 * SECONDARY_MM + 2.0 * GAP_MM
    }

    /// Key number `i` of three in the pair's row, counted from the hand.
    fn third(&self, i: u8) -> Rect {
        let width = (self.content - 2.0 * GAP_MM) / 3.0;
        self.rect(f64::from(i) * (width + GAP_MM), self.pair_y, width, self.pair_h)
    }

    /// The corner at the thumb, where BACK is on the other screens.
    pub(super) fn corner(&self) -> Rect {
        let width = match self.small {
            Small::Row { .. } => PRIMARY_MM,
            Small::Column { .. } => COLUMN_MM,
        };
        self.rect(0.0, self.cast_y, width, self.cast_h)
    }

    /// What that leaves of the lowest row, with the phone upright.
    pub(super) fn beside_corner(&self) -> Rect {
        let x = PRIMARY_MM + GAP_MM;
        self.rect(x, self.cast_y, self.content - x, self.cast_h)
    }

    /// On a screen on its side: the key above the corner.
    pub(super) fn above_corner(&self) -> Rect {
        self.rect(0.0, self.pair_y, COLUMN_MM, self.pair_h)
    }

    /// A small key beside the corner, on the far side of that column.
    pub(super) fn small_beside_column(&self) -> Rect {
        self.rect(COLUMN_MM + GAP_MM, self.cast_y, SECONDARY_MM, self.cast_h)
    }

    /// Everything on the far side of that column.
    pub(super) fn beside_column(&self) -> Rect {
        self.beyond(COLUMN_MM + GAP_MM)
    }

    /// Everything on the far side of that column and of the small key beside it.
    pub(super) fn beyond_small(&self) -> Rect {
        self.beyond(COLUMN_MM + SECONDARY_MM + 2.0 * GAP_MM)
    }

    fn beyond(&self, x: f64) -> Rect {
        self.rect(x, self.cast_y, self.width - 2.0 * MARGIN_MM - x, self.height - self.top - self.cast_y)
    }

    fn notice(&self) -> Rect {
        self.rect(0.0, self.cast_y + self.cast_h + 0.5, self.content, OPPOSITE_GAP_MM - 1.0)
    }

    /// Small key number `i` counted from the hand.
    fn small(&self, i: u8) -> Rect {
        let i = f64::from(i);
        match self.small {
            Small::Row { width, y } => self.rect(i * (width + GAP_MM), y, width, SECONDARY_MM),
            Small::Column { x } => {
                self.rect(x, self.cast_y + i * (SECONDARY_MM + GAP_MM), SECONDARY_MM, SECONDARY_MM)
            }
        }
    }
}

/// What is in the two changing places of the small row; the third is always UNDO.
enum Slot {
    Key(Key),
    More,
    NextRod,
}

/// What the anglers around do, from the thumb of the right hand, so that one reads them from left to right as they sit.
const ONE_ROD: [Key; 4] = [Key::NeighbourRight, Key::NeighbourLeft, Key::Feed, Key::NeighbourAcross];
/// The same where the first row of three has another two keys.
const SEVERAL_RODS: [Key; 4] = [Key::NeighbourRight, Key::NeighbourAcross, Key::NeighbourLeft, Key::Feed];

/// The two small keys beside UNDO, nearest to the hand first.
fn small_keys(state: BankState, several_rods: bool, three_fit: bool) -> [Option<Slot>; 2] {
    let key = |k| Some(Slot::Key(k));
    let next = |alone| if several_rods { Some(Slot::NextRod) } else { key(alone) };
    match state {
        BankState::NoSession => [None, key(Key::Redo)],
        BankState::Ready | BankState::Over => [key(Key::Tackle), next(Key::TimeBack)],
        BankState::Away => [key(Key::Away), next(Key::TimeBack)],
        BankState::Landed => [key(if three_fit { Key::Fish } else { Key::Weigh }), next(Key::TimeBack)],
        // The angler's hands may have been full at the bite, so LANDED is one tap, whatever the number of rods.
        BankState::Out => [key(Key::LandedLate), next(Key::Liner)],
        // LOST is in the place beside CAST now, so MORE takes the place of LINER, which has no use here.
        BankState::FishOn => [Some(Slot::More), next(Key::TimeBack)],
    }
}

/// The keys behind MORE, the most used first. The key whose place on the pad the next rod takes comes first. While a bait is out,
/// Tackle is under Screens alone, as many taps away: what it changes is for the next cast.
///
/// First come FEED and what neighbours land, in every state with a session. FEED is not beside BACK, where the screen that it opens
/// has a key that opens another: a cold thumb that taps twice would be two screens away.
pub(super) fn further_keys(
    state: BankState,
    several_rods: bool,
    three_fit: bool,
    left_handed: bool,
) -> Vec<Key> {
    let mut keys = if several_rods { beside_back(state) } else { Vec::new() };
    let mut around = if several_rods { SEVERAL_RODS } else { ONE_ROD };
    if left_handed {
        let place = |key| around.iter().position(|other| *other == key);
        if let Some((left, right)) = place(Key::NeighbourLeft).zip(place(Key::NeighbourRight)) {
            around.swap(left, right);
        }
    }
    match state {
        BankState::NoSession => {}
        // The same keys in these states, except that I'M BACK and Tackle exchange places, and so do END and CAST.
        BankState::Ready | BankState::Away | BankState::Over => {
            let other = if state == BankState::Away { Key::Tackle } else { Key::Away };
            let last = if state == BankState::Over { Key::Cast } else { Key::End };
            keys.extend(around);
            keys.extend([Key::Redo, other, Key::FeedOther, Key::Seen, Key::TimeBackFive, last]);
        }
        BankState::Landed => {
            keys.extend(around);
            if !three_fit {
                keys.push(Key::Fish);
            }
            keys.extend([Key::Redo, Key::Away, Key::FeedOther, Key::Seen, Key::TimeBackFive]);
            keys.extend([Key::Tackle, Key::End]);
        }
        BankState::Out => {
            keys.extend(around);
            keys.extend([Key::TimeBack, Key::LostLate, Key::Seen, Key::FeedOther, Key::TimeBackFive]);
            keys.extend([Key::Indication, Key::Twitch, Key::Redo, Key::End]);
        }
        BankState::FishOn => keys.extend([Key::TimeBackFive, Key::Redo]),
    }
    // Each key once, at its first place.
    (0..keys.len()).filter(|&i| !keys[..i].contains(&keys[i])).map(|i| keys[i]).collect()
}

/// With several rods: the key whose place on the pad the next rod takes, and a second key to fill the row.
fn beside_back(state: BankState) -> Vec<Key> {
    match state {
        BankState::NoSession => vec![],
        BankState::Out => vec![Key::Liner, Key::TimeBack],
        _ => vec![Key::TimeBack, Key::Redo],
    }
}

/// Places the keys of the pad.
pub(super) fn place(glass: &Millimetres, ask: PadAsk) -> Pad {
    let rows = Rows::on(glass);
    let place = |key, rect| KeyPlace { key, rect };
    let (mut more, mut next_rod, mut latest) = (None, None, None);
    let mut keys = match ask.state {
        BankState::NoSession => vec![place(Key::Start, rows.pair_row())],
        BankState::Ready | BankState::Away | BankState::Over => {
            more = Some(rows.beside_cast());
            let wide = if ask.state == BankState::Over { Key::End } else { Key::Cast };
            vec![place(wide, rows.cast()), place(Key::Swim, rows.at_thumb())]
        }
        // After LANDED only a class key may be under the thumb, and it doesn't respond at once.
        BankState::Landed => {
            more = Some(rows.beside_cast());
            let mut keys = vec![place(Key::Cast, rows.cast())];
            if rows.three_fit() {
                let thirds = [(Key::Weigh, 0), (Key::PutBack, 1), (Key::FishClass, 2)];
                keys.extend(thirds.map(|(key, i)| place(key, rows.third(i))));
            } else {
                keys.extend([place(Key::PutBack, rows.near()), place(Key::FishClass, rows.far())]);
            }
            keys
        }
        BankState::Out => {
            more = Some(rows.beside_cast());
            vec![
                place(Key::Bite, rows.near()),
                place(Key::WoundIn, rows.far()),
                place(Key::Cast, rows.cast()),
            ]
        }
        BankState::FishOn => {
            latest = Some(rows.near());
            let three =
                [(Key::Landed, rows.far()), (Key::Lost, rows.beside_cast()), (Key::Missed, rows.missed())];
            three.into_iter().map(|(k, r)| place(k, r)).collect()
        }
    };
    for (i, slot) in (0u8..).zip(small_keys(ask.state, ask.rods > 1, rows.three_fit())) {
        match slot {
            Some(Slot::Key(key)) => keys.push(place(key, rows.small(i))),
            Some(Slot::More) => more = Some(rows.small(i)),
            Some(Slot::NextRod) => next_rod = Some(rows.small(i)),
            None => {}
        }
    }
    keys.push(place(Key::Undo, rows.small(2)));
    let (beside_thumb, notice, words) = (rows.beside_thumb(), rows.notice(), rows.words());
    Pad { keys, more, next_rod, beside_thumb, latest, notice, words }
}

#[cfg(test)]
mod tests;
