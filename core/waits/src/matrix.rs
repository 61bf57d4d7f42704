//! Symmetric positive definite systems of at most three unknowns.

/// Lower Cholesky factor; `None` if the matrix isn't positive definite.
pub(crate) fn cholesky(m: &[[f64; 3]; 3]) -> Option<[[f64; 3]; 3]> {
    let mut l = [[0.0; 3]; 3];
    for i in 0..3 {
        for j in 0..=i {
            let mut sum = m[i][j];
            for (a, b) in l[i].iter().zip(&l[j]).take(j) {
                sum -= a * b;
            }
            if i == j {
                if sum.is_nan() || sum <= 1e-14 * m[i][i].abs() {
                    return None;
                }
                l[i][i] = sum.sqrt();
            } else {
                l[i][j] = sum / l[j][j];
            }
        }
    }
    Some(l)
}

/// Solves m x = b; `None` where m isn't positive definite.
pub(crate) fn solve(m: &[[f64; 3]; 3], b: &[f64; 3]) -> Option<[f64; 3]> {
    let l = cholesky(m)?;
    let mut y = [0.0; 3];
    for i in 0..3 {
        let done: f64 = (0..i).map(|j| l[i][j] * y[j]).sum();
        y[i] = (b[i] - done) / l[i][i];
    }
    let mut x = [0.0; 3];
    for i in (0..3).rev() {
        let done: f64 = (i + 1..3).map(|j| l[j][i] * x[j]).sum();
        x[i] = (y[i] - done) / l[i][i];
    }
    Some(x)
}

/// Inverse; `None` if the matrix isn't positive definite.
pub(crate) fn inverse(m: &[[f64; 3]; 3]) -> Option<[[f64; 3]; 3]> {
    Some([solve(m, &[1.0, 0.0, 0.0])?, solve(m, &[0.0, 1.0, 0.0])?, solve(m, &[0.0, 0.0, 1.0])?])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_inverse_times_the_matrix_is_one() {
        let m = [[4.0, 1.0, -0.5], [1.0, 3.0, 0.2], [-0.5, 0.2, 2.0]];
        let inv = inverse(&m).unwrap();
        for (i, row) in m.iter().enumerate() {
            for (j, column) in inv.iter().enumerate() {
                // The inverse is symmetric: its rows are its columns.
                let sum: f64 = row.iter().zip(column).map(|(a, b)| a * b).sum();
                assert!((sum - if i == j { 1.0 } else { 0.0 }).abs() < 1e-14);
            }
        }
    }

    #[test]
    fn a_matrix_that_is_not_positive_definite_is_refused() {
        assert!(cholesky(&[[1.0, 2.0, 0.0], [2.0, 1.0, 0.0], [0.0, 0.0, 1.0]]).is_none());
    }
}
