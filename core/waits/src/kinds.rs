//! The kinds of shapes that a club's weights distinguish: the form, when the bites come, and how many casts get one.

/// Edges of the minutes by which half of the bites of a shape have come.
const HALF_BY: [f64; 9] = [0.0, 2.5, 4.0, 6.0, 9.0, 13.0, 18.0, 25.0, 35.0];
/// Edges of the minutes by which a fifth of the bites of two bunches have come, and by which most have.
const FIRST_BY: [f64; 3] = [0.0, 6.0, 12.0];
const SECOND_BY: [f64; 4] = [0.0, 14.0, 20.0, 28.0];
/// Edges of the share of casts that get a bite, in hundredths.
const SHARE: [f64; 3] = [0.0, 40.0, 70.0];
/// The names of the forms, in their order.
const FORMS: [&str; 5] = ["constant", "broad", "bunch", "even", "two"];
/// The last of them, whose kinds have two places.
const TWO: usize = 4;

/// The kinds of shapes.
#[derive(Debug, Clone)]
pub(crate) struct Kinds {
    /// The kind of each shape.
    pub of: Vec<usize>,
    /// Their names.
    pub names: Vec<String>,
    /// Their usual weights, which sum to 1.
    pub usual: Vec<f64>,
}

impl Kinds {
    /// Tells shapes apart, each given by its form, its share bitten by each of `times`, and its share ever bitten.
    pub(crate) fn new<'a>(
        times: &[f64],
        prior: &[f64],
        shapes: impl Iterator<Item = (usize, &'a [f32], f64)>,
    ) -> Self {
        let places: Vec<[usize; 4]> =
            shapes.map(|(form, bitten, ever)| place(form, times, bitten, ever)).collect();
        let mut list = places.clone();
        restwater_sorting::by_key(&mut list, |place| *place);
        list.dedup();
        let of: Vec<usize> = places.iter().map(|place| list.binary_search(place).unwrap_or(0)).collect();
        let sum: f64 = prior.iter().sum();
        let mut usual = vec![0.0; list.len()];
        for (kind, weight) in of.iter().zip(prior) {
            usual[*kind] += weight / sum;
        }
        Self { of, names: list.iter().map(name).collect(), usual }
    }
}

/// Form, when the bites come (two places for two bunches), and how many casts get one.
fn place(form: usize, times: &[f64], bitten: &[f32], ever: f64) -> [usize; 4] {
    // Curves are kept in single precision; a shape whose last bites come beyond the last time counts as late.
    let by = |share: f64| {
        let point = bitten.partition_point(|&b| f64::from(b) < share * ever);
        times[point.min(times.len() - 1)]
    };
    let share = bin(&SHARE, 100.0 * ever);
    if form == TWO {
        [form, bin(&FIRST_BY, by(0.2)), bin(&SECOND_BY, by(0.85)), share]
    } else {
        [form, bin(&HALF_BY, by(0.5)), 0, share]
    }
}

/// The last edge below a figure.
fn bin(edges: &[f64], figure: f64) -> usize {
    edges.partition_point(|&edge| edge < figure - 1e-9).max(1) - 1
}

/// "bunch 6-9 40-70": one bunch, half of whose bites have come by 6 to 9 minutes, and of 40 to 70 casts in 100.
fn name(&[form, first, second, share]: &[usize; 4]) -> String {
    let range = |edges: &[f64], i: usize, end: &str| {
        edges.get(i + 1).map_or_else(|| format!("{}-{end}", edges[i]), |to| format!("{}-{to}", edges[i]))
    };
    let of = FORMS[form];
    let share = range(&SHARE, share, "100");
    if form == TWO {
        format!("{of} {} {} {share}", range(&FIRST_BY, first, ""), range(&SECOND_BY, second, ""))
    } else {
        format!("{of} {} {share}", range(&HALF_BY, first, ""))
    }
}
