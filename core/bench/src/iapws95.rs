//! Density of liquid water by the international standard, IAPWS-95.
//!
//! Source: IAPWS R6-95(2018), Revised Release on the IAPWS Formulation 1995 for the
//! Thermodynamic Properties of Ordinary Water Substance; Wagner and Pruss, J. Phys. Chem.
//! Ref. Data 31:387-535 (2002), table 6.2.
#![allow(clippy::unreadable_literal)] // coefficients are written as the release prints them

/// Critical density, kg/m3.
const CRITICAL_DENSITY: f64 = 322.0;
/// Critical temperature, K.
const CRITICAL_TEMPERATURE: f64 = 647.096;
/// Specific gas constant of water, J/(kg K).
const GAS_CONSTANT: f64 = 461.51805;

/// Terms 1 to 51 of the residual part: (n, d, t, c); c = 0 if there is no exponential.
///
/// Terms 52 to 56 live near the critical point: each carries a factor below exp(-80) at the
/// density of liquid water under 100 C, so they can't move any digit of it and are left out.
const TERMS: [(f64, i32, f64, i32); 51] = [
    (0.012533547935523, 1, -0.5, 0),
    (7.8957634722828, 1, 0.875, 0),
    (-8.7803203303561, 1, 1.0, 0),
    (0.31802509345418, 2, 0.5, 0),
    (-0.26145533859358, 2, 0.75, 0),
    (-0.0078199751687981, 3, 0.375, 0),
    (0.0088089493102134, 4, 1.0, 0),
    (-0.66856572307965, 1, 4.0, 1),
    (0.20433810950965, 1, 6.0, 1),
    (-6.6212605039687e-05, 1, 12.0, 1),
    (-0.19232721156002, 2, 1.0, 1),
    (-0.25709043003438, 2, 5.0, 1),
    (0.16074868486251, 3, 4.0, 1),
    (-0.040092828925807, 4, 2.0, 1),
    (3.9343422603254e-07, 4, 13.0, 1),
    (-7.5941377088144e-06, 5, 9.0, 1),
    (0.00056250979351888, 7, 3.0, 1),
    (-1.5608652257135e-05, 9, 4.0, 1),
    (1.1537996422951e-09, 10, 11.0, 1),
    (3.6582165144204e-07, 11, 4.0, 1),
    (-1.3251180074668e-12, 13, 13.0, 1),
    (-6.2639586912454e-10, 15, 1.0, 1),
    (-0.10793600908932, 1, 7.0, 2),
    (0.017611491008752, 2, 1.0, 2),
    (0.22132295167546, 2, 9.0, 2),
    (-0.40247669763528, 2, 10.0, 2),
    (0.58083399985759, 3, 10.0, 2),
    (0.0049969146990806, 4, 3.0, 2),
    (-0.031358700712549, 4, 7.0, 2),
    (-0.74315929710341, 4, 10.0, 2),
    (0.4780732991548, 5, 10.0, 2),
    (0.020527940895948, 6, 6.0, 2),
    (-0.13636435110343, 6, 10.0, 2),
    (0.014180634400617, 7, 10.0, 2),
    (0.0083326504880713, 9, 1.0, 2),
    (-0.029052336009585, 9, 2.0, 2),
    (0.038615085574206, 9, 3.0, 2),
    (-0.020393486513704, 9, 4.0, 2),
    (-0.0016554050063734, 9, 8.0, 2),
    (0.0019955571979541, 10, 6.0, 2),
    (0.00015870308324157, 10, 9.0, 2),
    (-1.638856834253e-05, 12, 8.0, 2),
    (0.043613615723811, 3, 16.0, 3),
    (0.034994005463765, 4, 22.0, 3),
    (-0.076788197844621, 4, 23.0, 3),
    (0.022446277332006, 5, 23.0, 3),
    (-6.2689710414685e-05, 14, 10.0, 4),
    (-5.5711118565645e-10, 3, 50.0, 6),
    (-0.19905718354408, 6, 44.0, 6),
    (0.31777497330738, 6, 46.0, 6),
    (-0.11841182425981, 6, 50.0, 6),
];

/// Pressure in Pa, and its derivative by density in Pa m3/kg, at `kelvin` and `density` kg/m3.
fn pressure(kelvin: f64, density: f64) -> (f64, f64) {
    let tau = CRITICAL_TEMPERATURE / kelvin;
    let delta = density / CRITICAL_DENSITY;
    let (mut first, mut second) = (0.0, 0.0); // delta phi_delta, delta^2 phi_delta_delta
    for (n, d, t, c) in TERMS {
        let power = if c == 0 { 0.0 } else { libm::pow(delta, f64::from(c)) };
        let value = n * libm::pow(delta, f64::from(d)) * libm::pow(tau, t) * libm::exp(-power);
        let slope = f64::from(d) - f64::from(c) * power;
        first += value * slope;
        second += value * (slope * (slope - 1.0) - f64::from(c * c) * power);
    }
    let rt = GAS_CONSTANT * kelvin;
    (density * rt * (1.0 + first), rt * (1.0 + 2.0 * first + second))
}

/// Density in kg/m3 of liquid water at `kelvin` and `pascal`, by Newton's method from `start`.
pub(super) fn liquid_density(kelvin: f64, pascal: f64, start: f64) -> f64 {
    let mut density = start;
    for _ in 0..12 {
        let (p, dp) = pressure(kelvin, density);
        let step = (p - pascal) / dp;
        density -= step;
        if step.abs() < 1e-12 * density {
            break;
        }
    }
    density
}

#[cfg(test)]
mod tests {
    use super::*;

    /// IAPWS R6-95(2018), table 7: the three liquid points at 300 K.
    #[test]
    fn printed_pressures_of_the_release() {
        for (density, mpa) in [(996.5560, 0.0992418352), (1005.308, 20.0022515), (1188.202, 700.004704)] {
            let (p, _) = pressure(300.0, density);
            assert!((p / 1e6 - mpa).abs() < 6e-9 * mpa.max(1.0), "{density}: {p}");
        }
    }

    #[test]
    fn density_gives_back_its_pressure() {
        let density = liquid_density(283.15, 101_325.0, 999.7);
        assert!((pressure(283.15, density).0 - 101_325.0).abs() < 1e-3);
    }
}
