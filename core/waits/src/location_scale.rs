//! Newton search for ln t = intercept + effect x group + exp(ln spread) x error, with right censoring.

use super::special::{LN_SQRT_TWO_PI, ln_normal_upper, mills};
use super::{BiteError, Wait};
use libm::{exp, log, log1p};

/// Law of the error.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Spread {
    /// Smallest extreme value: Weibull waits.
    ExtremeValue,
    /// Normal: log-normal waits.
    Normal,
    /// Logistic: log-logistic waits.
    Logistic,
}

/// The maximum and the inverse observed information there, in (intercept, effect, ln spread); the
/// effect's row is zero if there is one group only.
pub(crate) struct Maximum {
    pub intercept: f64,
    pub effect: f64,
    pub ln_spread: f64,
    pub ln_likelihood: f64,
    pub covariance: [[f64; 3]; 3],
}

/// ln of density or tail of the error at z, with its first two derivatives.
#[inline]
fn term(spread: Spread, z: f64, bite: bool) -> (f64, f64, f64) {
    match spread {
        Spread::ExtremeValue => {
            let e = exp(z);
            if bite { (z - e, 1.0 - e, -e) } else { (-e, -e, -e) }
        }
        Spread::Normal if bite => (-0.5 * z * z - LN_SQRT_TWO_PI, -z, -1.0),
        Spread::Normal => {
            let m = mills(z);
            (ln_normal_upper(z), -m, -m * (m - z))
        }
        Spread::Logistic => {
            let e = exp(-z.abs());
            let p = if z > 0.0 { 1.0 / (1.0 + e) } else { e / (1.0 + e) };
            let ln = z.max(0.0) + log1p(e);
            if bite { (z - 2.0 * ln, 1.0 - 2.0 * p, -2.0 * p * (1.0 - p)) } else { (-ln, -p, -p * (1.0 - p)) }
        }
    }
}

struct Surface {
    value: f64,
    gradient: [f64; 3],
    hessian: [[f64; 3]; 3],
}

/// One cast: ln t, the group mark, and whether a bite ended it.
struct Row {
    y: f64,
    second: bool,
    bite: bool,
}

fn surface(spread: Spread, rows: &[Row], at: [f64; 3]) -> Surface {
    let inverse = exp(-at[2]);
    // Sums over the first and the second group: value, g, z g, g'', z g'', z z g'', bites.
    let mut sums = [[0.0; 6]; 2];
    let mut bites = 0.0;
    for row in rows {
        let centre = if row.second { at[0] + at[1] } else { at[0] };
        let z = (row.y - centre) * inverse;
        let (value, first, second) = term(spread, z, row.bite);
        let sum = &mut sums[usize::from(row.second)];
        sum[0] += value;
        sum[1] += first;
        sum[2] += z * first;
        sum[3] += second;
        sum[4] += z * second;
        sum[5] += z * z * second;
        bites += if row.bite { 1.0 } else { 0.0 };
    }
    let [a, b] = sums;
    let all = |k: usize| a[k] + b[k];
    let cross = |k: &[f64; 6]| (k[1] + k[4]) * inverse;
    let square = inverse * inverse;
    let (h01, h02, h12) = (b[3] * square, cross(&a) + cross(&b), cross(&b));
    Surface {
        value: all(0) - bites * at[2],
        gradient: [-all(1) * inverse, -b[1] * inverse, -bites - all(2)],
        hessian: [[all(3) * square, h01, h02], [h01, b[3] * square, h12], [h02, h12, all(2) + all(5)]],
    }
}

/// Finds the maximum; ln t is centred first, so the answer doesn't depend on the unit of time.
pub(crate) fn maximise(
    spread: Spread,
    waits: &[Wait],
    second: Option<&[bool]>,
    model: &'static str,
) -> Result<Maximum, BiteError> {
    let mut rows: Vec<Row> = Vec::with_capacity(waits.len());
    for (i, wait) in waits.iter().enumerate() {
        // A cast wound in at once is no evidence: S(0) = 1.
        if wait.minutes() > 0.0 {
            let second = second.is_some_and(|s| s[i]);
            rows.push(Row { y: log(wait.minutes()), second, bite: wait.is_bite() });
        }
    }
    let (mut bites, mut sum_bites, mut mean, mut square) = (0.0, 0.0, 0.0, 0.0);
    for row in &rows {
        mean += row.y;
        if row.bite {
            bites += 1.0;
            sum_bites += row.y;
        }
    }
    mean /= rows.len() as f64;
    for row in &mut rows {
        row.y -= mean;
        square += row.y * row.y;
    }
    let deviation = (square / rows.len() as f64).sqrt().max(1e-3);
    let start = [sum_bites / bites - mean, 0.0, log(deviation)];
    let mut found = climb(spread, &rows, start, second.is_some(), model)?;
    found.intercept += mean;
    found.ln_likelihood -= sum_bites;
    Ok(found)
}

fn climb(
    spread: Spread,
    rows: &[Row],
    start: [f64; 3],
    grouped: bool,
    model: &'static str,
) -> Result<Maximum, BiteError> {
    let unsettled = BiteError::NotSettled { model };
    let mut at = start;
    let mut here = surface(spread, rows, at);
    for _ in 0..200 {
        let mut ridge = 0.0;
        let step = loop {
            match solve(&here.hessian, ridge, &here.gradient, grouped) {
                Some(step) => break step,
                None if ridge > 1e12 => return Err(unsettled),
                None => ridge = if ridge == 0.0 { 1e-3 * (1.0 + rows.len() as f64) } else { ridge * 4.0 },
            }
        };
        let length = step.iter().fold(0.0, |m: f64, s| m.max(s.abs()));
        let mut factor = if length > 2.0 { 2.0 / length } else { 1.0 };
        loop {
            let next = [at[0] + factor * step[0], at[1] + factor * step[1], at[2] + factor * step[2]];
            let there = surface(spread, rows, next);
            if there.value >= here.value - 1e-13 * here.value.abs() {
                (at, here) = (next, there);
                break;
            }
            factor *= 0.5;
            if factor < 1e-12 {
                return Err(unsettled);
            }
        }
        if at[2].abs() > 14.0 {
            return Err(unsettled);
        }
        // Newton converges quadratically: a step of 1e-8 leaves an error of about 1e-16.
        if ridge == 0.0 && factor * length < 1e-8 {
            return finish(at, &here, grouped).ok_or(unsettled);
        }
    }
    Err(unsettled)
}

fn finish(at: [f64; 3], here: &Surface, grouped: bool) -> Option<Maximum> {
    let mut covariance = [[0.0; 3]; 3];
    for i in 0..3 {
        if i == 1 && !grouped {
            continue;
        }
        let mut unit = [0.0; 3];
        unit[i] = 1.0;
        covariance[i] = solve(&here.hessian, 0.0, &unit, grouped)?;
    }
    Some(Maximum { intercept: at[0], effect: at[1], ln_spread: at[2], ln_likelihood: here.value, covariance })
}

/// Solves (ridge - H) x = g by Cholesky; `None` if the matrix isn't positive definite. Without
/// groups the middle row is left out.
fn solve(hessian: &[[f64; 3]; 3], ridge: f64, g: &[f64; 3], grouped: bool) -> Option<[f64; 3]> {
    let mut m = [[0.0; 3]; 3];
    for i in 0..3 {
        for j in 0..3 {
            m[i][j] = -hessian[i][j];
        }
        m[i][i] += ridge;
    }
    let mut rhs = *g;
    if !grouped {
        m[1] = [0.0, 1.0, 0.0];
        (m[0][1], m[2][1], rhs[1]) = (0.0, 0.0, 0.0);
    }
    super::matrix::solve(&m, &rhs)
}
