use super::super::shapes::{SHAPE_PRIORS, Shapes};
use super::*;

/// A day effect as it is defined: a normal factor on the log scale, within the family.
fn by_definition(shapes: &Shapes, sd: f64, take: &mut dyn FnMut(usize, usize, f64)) {
    for family in &shapes.families {
        let of = |from: &[f64; 2], to: &[f64; 2]| {
            exp(-0.5 * ((from[0] - to[0]) / sd).powi(2) - 0.5 * ((from[1] - to[1]) / sd).powi(2))
        };
        for (i, from) in family.keenness.iter().enumerate() {
            let sum: f64 = family.keenness.iter().map(|to| of(from, to)).sum();
            for (j, to) in family.keenness.iter().enumerate() {
                take(family.first + i, family.first + j, of(from, to) / sum);
            }
        }
    }
}

#[test]
fn days_scatter_about_their_water_as_the_definition_says() {
    let shapes = Shapes::new(&SHAPE_PRIORS);
    let values: Vec<f64> = (0..shapes.count()).map(|i| 0.01 + (i as f64 * 0.618_034).fract()).collect();
    for (scatter, &(sd, _)) in SCATTERS.iter().enumerate() {
        let (mut means, mut moved) = (vec![0.0; values.len()], vec![0.0; values.len()]);
        if sd > 0.0 {
            by_definition(&shapes, sd, &mut |from, to, p| {
                means[from] += p * values[to];
                moved[to] += p * values[from];
            });
        } else {
            means.clone_from(&values);
            moved.clone_from(&values);
        }
        let close = |ours: &[f64], wanted: &[f64]| {
            ours.iter().zip(wanted).all(|(a, b)| (a - b).abs() <= 1e-12 * b.abs())
        };
        assert!(close(&shapes.day_effects().means(scatter, &values), &means), "{sd}");
        assert!(close(&shapes.day_effects().moved(scatter, values.clone()), &moved), "{sd}");
    }
}
