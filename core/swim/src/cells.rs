//! The swim cut into cells, clipped by its boundary.

use super::columns::{self, Column, Columns};
use super::error::{SwimError, finite, positive};
use super::frame::{Point, Spot};
use super::input::{Band, CastAt, Fan, SwimInput};
use super::planar::{check_outline, distance_to_ring, ring_centroid, ring_contains};
use super::scatter::check_lead;
use super::sector::{AnnularSector, CHORD_ERROR_M, arc};
use super::water::Water;
use serde::{Deserialize, Serialize};

/// A cell by its place: column from the left, row (band) from the peg, both from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct CellId {
    /// Column from the left.
    pub column: u32,
    /// Band from the peg outwards.
    pub row: u32,
}

/// One cell: a column of the fan crossed with a band.
#[derive(Debug, Clone, PartialEq)]
pub struct Cell {
    /// Its place.
    pub id: CellId,
    /// The sector before clipping.
    pub sector: AnnularSector,
    /// The part of its water that is inside the boundary.
    pub water: Water,
    /// Area inside the boundary, square metres.
    pub area_m2: f64,
    /// Whether the boundary leaves all of it.
    pub whole: bool,
    /// Where a cast for this cell is aimed: mid-band on the column's aim, moved if the boundary cuts that
    /// off; `None` if only a sliver is left.
    pub aim: Option<Spot>,
}

/// A swim: its input checked, its cells cut.
#[derive(Debug, Clone, PartialEq)]
pub struct Swim {
    input: SwimInput,
    fan: Fan,
    columns: Columns,
    bands: Vec<Band>,
    cells: Vec<Cell>,
    places: Vec<Option<u32>>,
    boundary: Option<Vec<Point>>,
    water: Water,
    area_m2: f64,
}

/// What the cells of a swim follow from.
struct Ground {
    fan: Fan,
    columns: Columns,
    bands: Vec<Band>,
    boundary: Option<Vec<Point>>,
}

impl Ground {
    fn of(input: &SwimInput) -> Result<Self, SwimError> {
        let marks = columns::ordered_marks(&input.marks)?;
        let spots: Vec<Spot> = input.spots().collect();
        let fan = columns::fan_for(input.fan, &marks, &spots)?;
        let bands = columns::bands(&input.bands, &spots)?;
        let boundary = input.boundary.as_deref().map(check_outline).transpose()?;
        let columns = Columns { columns: columns::columns(fan, &marks), marks };
        Ok(Self { fan, columns, bands, boundary })
    }
}

impl Swim {
    /// Checks everything in `input` and cuts the swim into cells.
    pub fn new(input: SwimInput) -> Result<Self, SwimError> {
        check(&input)?;
        let ground = Ground::of(&input)?;
        Self::on(ground, input)
    }

    /// The same, but reusing the cells of an earlier swim where they have not changed, as with most casts. The flag says whether
    /// they were reused: if so, casts to the same spots reach the same cells.
    pub fn renewed(before: Option<Self>, input: SwimInput) -> Result<(Self, bool), SwimError> {
        check(&input)?;
        let ground = Ground::of(&input)?;
        match before.filter(|before| before.is_on(&ground, &input)) {
            Some(mut swim) => {
                // The names of marks may have changed.
                (swim.columns, swim.input) = (ground.columns, input);
                restwater_sorting::by(&mut swim.input.casts, in_order);
                Ok((swim, true))
            }
            None => Ok((Self::on(ground, input)?, false)),
        }
    }

    /// Whether it has the cells of that ground, and casts reach as far.
    fn is_on(&self, ground: &Ground, input: &SwimInput) -> bool {
        self.fan == ground.fan
            && self.columns.columns == ground.columns.columns
            && self.bands == ground.bands
            && self.boundary == ground.boundary
            && self.input.scatter == input.scatter
            && self.input.disturbance == input.disturbance
    }

    fn on(ground: Ground, input: SwimInput) -> Result<Self, SwimError> {
        let Ground { fan, columns, bands, boundary } = ground;
        let whole_fan = Water::of_ring(&fan_ring(&columns.columns, &bands));
        let clip = boundary.as_deref().map(Water::of_ring);
        let water = clip.as_ref().map_or_else(|| whole_fan.clone(), |b| whole_fan.and(b));
        let area_m2 = water.area_m2();
        if area_m2 < 0.01 {
            return Err(SwimError::NoWater);
        }
        let mut swim = Self {
            input,
            fan,
            columns,
            bands,
            cells: Vec::new(),
            places: Vec::new(),
            boundary,
            water,
            area_m2,
        };
        swim.cut(clip.as_ref());
        restwater_sorting::by(&mut swim.input.casts, in_order);
        Ok(swim)
    }

    fn cut(&mut self, clip: Option<&Water>) {
        for (row, band) in (0u32..).zip(&self.bands) {
            for (column, c) in (0u32..).zip(&self.columns.columns) {
                let cell = cut_cell(CellId { column, row }, c, *band, self.boundary.as_deref(), clip);
                self.places.push(cell.as_ref().map(|_| self.cells.len() as u32));
                self.cells.extend(cell);
            }
        }
    }

    /// Its input, with the casts in chronological order.
    pub fn input(&self) -> &SwimInput {
        &self.input
    }

    /// Edges of the fan.
    pub fn fan(&self) -> Fan {
        self.fan
    }

    /// Columns, left to right, and the marks they are named after.
    pub fn columns(&self) -> &Columns {
        &self.columns
    }

    /// Bands, from the peg outwards, without gaps.
    pub fn bands(&self) -> &[Band] {
        &self.bands
    }

    /// Every cell with water in it: band by band from the peg, left to right.
    pub fn cells(&self) -> &[Cell] {
        &self.cells
    }

    /// All the water of the swim.
    pub fn water(&self) -> &Water {
        &self.water
    }

    /// Area of the swim, square metres.
    pub fn area_m2(&self) -> f64 {
        self.area_m2
    }

    /// The cell at a place.
    pub fn cell(&self, id: CellId) -> Result<&Cell, SwimError> {
        self.place(id).map(|i| &self.cells[i]).ok_or(SwimError::NoSuchCell { column: id.column, row: id.row })
    }

    /// The index of a cell in [`Swim::cells`].
    pub fn place(&self, id: CellId) -> Option<usize> {
        let width = self.columns.columns.len() as u32;
        if id.column >= width {
            return None;
        }
        self.places.get((id.row * width + id.column) as usize).copied().flatten().map(|i| i as usize)
    }

    /// Whether a spot lies in the swim.
    pub fn holds(&self, spot: Spot) -> bool {
        self.cell_of(spot).is_some()
    }

    /// The cell a spot lies in; a spot outside the fan, the bands or the boundary lies in none.
    pub fn cell_of(&self, spot: Spot) -> Option<CellId> {
        let (column, row) = (self.column_of(spot.bearing_deg)?, self.row_of(spot.range_m)?);
        let id = CellId { column, row };
        (self.in_boundary(spot.point()) && self.place(id).is_some()).then_some(id)
    }

    /// Whether a point lies inside the boundary, or nothing bounds the fan.
    pub fn in_boundary(&self, p: Point) -> bool {
        self.boundary.as_ref().is_none_or(|ring| ring_contains(ring, p))
    }

    /// Distance of a spot from the boundary, metres; `None` if nothing bounds the fan.
    pub fn boundary_distance(&self, spot: Spot) -> Option<f64> {
        self.boundary.as_ref().map(|ring| distance_to_ring(ring, spot.point()))
    }

    /// The column a bearing lies in.
    pub fn column_of(&self, bearing_deg: f64) -> Option<u32> {
        let columns = &self.columns.columns;
        let inside = bearing_deg >= self.fan.from_deg && bearing_deg <= self.fan.to_deg;
        let at = columns.iter().position(|c| bearing_deg < c.to_deg).unwrap_or(columns.len() - 1);
        inside.then_some(at as u32)
    }

    /// The band a range lies in.
    pub fn row_of(&self, range_m: f64) -> Option<u32> {
        let (first, last) = (self.bands.first()?, self.bands.last()?);
        let inside = range_m >= first.from_m && range_m <= last.to_m;
        let at = self.bands.iter().position(|b| range_m < b.to_m).unwrap_or(self.bands.len() - 1);
        inside.then_some(at as u32)
    }

    /// A spot at a bearing and range; refused outside the swim.
    pub fn spot_at(&self, bearing_deg: f64, range_m: f64) -> Result<Spot, SwimError> {
        let spot = Spot::new(bearing_deg, range_m)?;
        if self.holds(spot) { Ok(spot) } else { Err(SwimError::OutsideSwim { bearing_deg, range_m }) }
    }
}

/// Orders casts by time, and casts of equal time by everything else, so that no sum depends on the order in
/// which they came.
fn in_order(a: &CastAt, b: &CastAt) -> std::cmp::Ordering {
    let lead = |c: &CastAt| c.lead_g.unwrap_or(-1.0);
    let counts = |c: &CastAt| (c.end_ms, c.clipped, c.bites, c.bite_ms, c.liners, c.lost, c.landed);
    let waits = |c: &CastAt| (c.waits_from_ms, c.waits_to_ms);
    a.start_ms
        .cmp(&b.start_ms)
        .then_with(|| a.spot.bearing_deg.total_cmp(&b.spot.bearing_deg))
        .then_with(|| a.spot.range_m.total_cmp(&b.spot.range_m))
        .then_with(|| lead(a).total_cmp(&lead(b)))
        .then_with(|| counts(a).cmp(&counts(b)))
        .then_with(|| waits(a).cmp(&waits(b)))
}

fn check(input: &SwimInput) -> Result<(), SwimError> {
    for spot in input.spots() {
        Spot::new(spot.bearing_deg, spot.range_m)?;
    }
    for cast in &input.casts {
        check_lead(cast.lead_g)?;
        if let Some(end_ms) = cast.end_ms.filter(|end| *end < cast.start_ms) {
            return Err(SwimError::EndsBeforeStart { start_ms: cast.start_ms, end_ms });
        }
    }
    for kept in &input.kept_back {
        kept.fan.check()?;
        kept.band.check()?;
        if let Some(end_ms) = kept.released_ms.filter(|end| *end < kept.since_ms) {
            return Err(SwimError::EndsBeforeStart { start_ms: kept.since_ms, end_ms });
        }
    }
    for hazard in &input.hazards {
        Spot::new(hazard.spot.bearing_deg, hazard.spot.range_m)?;
        positive("the distance to stay clear of a hazard", hazard.clear_m)?;
    }
    for feature in &input.features {
        Spot::new(feature.spot.bearing_deg, feature.spot.range_m)?;
    }
    if finite("the rest target", input.rest_target_min)? < 0.0 {
        return Err(SwimError::NotPositive { what: "the rest target", value: input.rest_target_min });
    }
    positive("the distance that counts as near", input.near_m)?;
    positive("the time a bite is remembered", input.bite_memory_min)?;
    input.castable_m.map_or(Ok(0.0), |m| positive("the longest cast of today", m))?;
    input.usual_start.map_or(Ok(()), Band::check)?;
    input.scatter.check().and(input.disturbance.check())
}

/// The fan as one ring, with the same points as the arcs of its cells.
fn fan_ring(columns: &[Column], bands: &[Band]) -> Vec<Point> {
    let (Some(near), Some(far)) = (bands.first(), bands.last()) else { return Vec::new() };
    let mut ring = Vec::new();
    for c in columns.iter().rev() {
        ring.extend(arc(c.to_deg, c.from_deg, far.to_m, CHORD_ERROR_M));
    }
    if near.from_m > 0.0 {
        for c in columns {
            ring.extend(arc(c.from_deg, c.to_deg, near.from_m, CHORD_ERROR_M));
        }
    } else {
        ring.push(Point { x: 0.0, y: 0.0 });
    }
    ring.dedup();
    ring
}

fn cut_cell(
    id: CellId,
    c: &Column,
    b: Band,
    boundary: Option<&[Point]>,
    clip: Option<&Water>,
) -> Option<Cell> {
    let sector = AnnularSector { from_deg: c.from_deg, to_deg: c.to_deg, inner_m: b.from_m, outer_m: b.to_m };
    let ring = sector.ring(CHORD_ERROR_M);
    let middle = Spot { bearing_deg: c.aim_deg, range_m: f64::midpoint(b.from_m, b.to_m) };
    let uncut = Water::of_ring(&ring);
    let (water, whole) = match (boundary, clip) {
        (Some(edge), Some(clip)) => match beside(edge, &ring, middle.point()) {
            Beside::Inside => (uncut, true),
            Beside::Outside => return None,
            Beside::Across => (uncut.and(clip), false),
        },
        _ => (uncut, true),
    };
    let area_m2 = water.area_m2();
    if area_m2 < 1e-6 {
        return None;
    }
    let aim = if whole { Some(middle) } else { aim_in(&water, c, b, middle) };
    Some(Cell { id, sector, water, area_m2, whole, aim })
}

enum Beside {
    Inside,
    Outside,
    Across,
}

/// Whether a ring is inside or outside the boundary or crosses it, judged by the distance of its middle if
/// that is enough.
fn beside(edge: &[Point], ring: &[Point], middle: Point) -> Beside {
    let radius = ring.iter().map(|p| p.distance(middle)).fold(0.0, f64::max);
    if distance_to_ring(edge, middle) <= radius {
        Beside::Across
    } else if ring_contains(edge, middle) {
        Beside::Inside
    } else {
        Beside::Outside
    }
}

/// The middle of the band on the column's aim; if that isn't water, the nearest water on the aim, otherwise
/// the middle of the water that is left.
fn aim_in(water: &Water, c: &Column, b: Band, middle: Spot) -> Option<Spot> {
    let mut tries: Vec<f64> = (1..20).map(|i| f64::from(i) / 20.0).collect();
    restwater_sorting::by(&mut tries, |x, y| (x - 0.5).abs().total_cmp(&(y - 0.5).abs()));
    let on_aim = tries.into_iter().map(|t| Spot { range_m: b.from_m + t * (b.to_m - b.from_m), ..middle });
    let mut on_aim = on_aim.filter(|s| water.contains(s.point()));
    on_aim.next().or_else(|| {
        let rings = water.rings();
        let largest = rings.iter().max_by(|x, y| {
            super::planar::ring_area_m2(x).abs().total_cmp(&super::planar::ring_area_m2(y).abs())
        })?;
        let centre = ring_centroid(largest);
        let (bearing_deg, range_m) = super::frame::bearing_range(centre);
        let spot = Spot { bearing_deg, range_m };
        let in_column = bearing_deg > c.from_deg && bearing_deg < c.to_deg;
        // Polygons have chords for arcs: a sliver can lie wholly outside its band, where no cast counts for it.
        let in_band = range_m >= b.from_m && range_m < b.to_m;
        (in_column && in_band && water.contains(centre)).then_some(spot)
    })
}
