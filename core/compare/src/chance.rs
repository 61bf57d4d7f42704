//! Seeded chance: the same seed gives the same draws on every platform.
//!
//! The stream is ChaCha with 8 rounds (Bernstein 2008), from `rand_chacha`, which promises a stable stream.
//! The conversion of its bits (to reals, bounded integers, variates) is written here, so that no update of a
//! library can change a figure that an angler has already seen.

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// A seeded stream of draws.
#[derive(Debug, Clone)]
pub struct Chance(ChaCha8Rng);

impl Chance {
    /// The stream number `stream` of `seed`; streams of one seed do not overlap.
    pub fn new(seed: u64, stream: u64) -> Self {
        let mut key = [0u8; 32];
        key[..8].copy_from_slice(&seed.to_le_bytes());
        let mut rng = ChaCha8Rng::from_seed(key);
        rng.set_stream(stream);
        Self(rng)
    }

    /// The next 64 bits.
    pub fn bits(&mut self) -> u64 {
        self.0.next_u64()
    }

    /// Uniform on [0, 1): the upper 53 bits over 2^53.
    pub fn uniform(&mut self) -> f64 {
        (self.bits() >> 11) as f64 * (1.0 / 9_007_199_254_740_992.0)
    }

    /// Uniform on (0, 1], safe under a logarithm.
    pub fn uniform_above_zero(&mut self) -> f64 {
        1.0 - self.uniform()
    }

    /// Uniform on 0..n, without bias (Lemire, ACM Trans. Model. Comput. Simul. 29(1), 2019).
    /// `n` = 0 gives 0.
    pub fn below(&mut self, n: usize) -> usize {
        let n = n as u64;
        if n == 0 {
            return 0;
        }
        let threshold = n.wrapping_neg() % n;
        loop {
            let wide = u128::from(self.bits()) * u128::from(n);
            if wide as u64 >= threshold {
                return (wide >> 64) as usize;
            }
        }
    }

    /// True with probability `p`.
    pub fn happens(&mut self, p: f64) -> bool {
        self.uniform() < p
    }

    /// Exponential with mean 1, by inversion.
    pub fn exponential(&mut self) -> f64 {
        -libm::log(self.uniform_above_zero())
    }

    /// Standard normal (Box and Muller 1958, the cosine half).
    pub fn normal(&mut self) -> f64 {
        let radius = libm::sqrt(2.0 * self.exponential());
        radius * libm::cos(core::f64::consts::TAU * self.uniform())
    }

    /// Gamma with this shape and scale 1 (Marsaglia and Tsang, ACM TOMS 26:363-372, 2000; shapes
    /// below 1 by their boost). `shape` must be above zero; anything else gives 0.
    pub fn gamma(&mut self, shape: f64) -> f64 {
        if shape.is_nan() || shape <= 0.0 {
            return 0.0;
        }
        if shape < 1.0 {
            let boost = libm::pow(self.uniform_above_zero(), 1.0 / shape);
            return self.gamma(shape + 1.0) * boost;
        }
        let d = shape - 1.0 / 3.0;
        let c = 1.0 / libm::sqrt(9.0 * d);
        loop {
            let x = self.normal();
            let v = 1.0 + c * x;
            if v <= 0.0 {
                continue;
            }
            let v = v * v * v;
            let u = self.uniform_above_zero();
            if libm::log(u) < 0.5 * x * x + d - d * v + d * libm::log(v) {
                return d * v;
            }
        }
    }

    /// Beta(a, b) from two gammas; 0.5 when both shapes are unusable.
    pub fn beta(&mut self, a: f64, b: f64) -> f64 {
        let x = self.gamma(a);
        let y = self.gamma(b);
        if x + y > 0.0 { x / (x + y) } else { 0.5 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Strombergson, "Test Vectors for the Stream Cipher ChaCha" (Internet draft, 2013), TC1: 256-bit
    /// key and IV all zero, 8 rounds, first 32 bytes of the key stream. (From memory.)
    #[test]
    fn the_stream_is_chacha8() {
        let mut chance = Chance::new(0, 0);
        let bytes: Vec<u8> = (0..4).flat_map(|_| chance.bits().to_le_bytes()).collect();
        let published = "3e00ef2f895f40d67f5bb8e81f09a5a12c840ec3ce9a7f3b181be188ef711a1e";
        let digits = |i: usize| u8::from_str_radix(&published[2 * i..2 * i + 2], 16).unwrap();
        assert_eq!(bytes, (0..32).map(digits).collect::<Vec<u8>>());
    }

    #[test]
    fn the_same_seed_repeats_and_streams_differ() {
        let draw = |seed, stream| {
            let mut c = Chance::new(seed, stream);
            (c.uniform(), c.below(1000), c.normal(), c.gamma(0.3))
        };
        assert_eq!(draw(7, 1), draw(7, 1));
        assert_ne!(draw(7, 1), draw(7, 2));
        assert_ne!(draw(7, 1), draw(8, 1));
    }

    fn mean_and_variance(mut draw: impl FnMut() -> f64) -> (f64, f64) {
        let n = 40_000;
        let xs: Vec<f64> = (0..n).map(|_| draw()).collect();
        let mean = xs.iter().sum::<f64>() / f64::from(n);
        let variance = xs.iter().map(|x| (x - mean) * (x - mean)).sum::<f64>() / f64::from(n - 1);
        (mean, variance)
    }

    #[test]
    fn variates_have_the_moments_of_their_laws() {
        let mut c = Chance::new(11, 0);
        // Five standard errors of the mean of 40,000; variance within 8 %.
        for (shape, seed) in [(0.4, 1), (1.0, 2), (3.7, 3)] {
            let mut g = Chance::new(seed, 0);
            let (mean, variance) = mean_and_variance(|| g.gamma(shape));
            assert!((mean - shape).abs() < 5.0 * (shape / 40_000.0_f64).sqrt(), "gamma {shape}: {mean}");
            assert!((variance / shape - 1.0).abs() < 0.08, "gamma {shape}: {variance}");
        }
        let (mean, variance) = mean_and_variance(|| c.normal());
        assert!(mean.abs() < 0.025 && (variance - 1.0).abs() < 0.08);
        let (mean, variance) = mean_and_variance(|| c.exponential());
        assert!((mean - 1.0).abs() < 0.025 && (variance - 1.0).abs() < 0.08);
        let (mean, _) = mean_and_variance(|| c.beta(2.0, 3.0));
        assert!((mean - 0.4).abs() < 0.005);
    }

    #[test]
    fn below_stays_below_its_bound_and_reaches_every_value() {
        let mut c = Chance::new(3, 0);
        let mut seen = [0u32; 7];
        for _ in 0..7_000 {
            seen[c.below(7)] += 1;
        }
        assert!(seen.iter().all(|&n| n > 800 && n < 1200), "{seen:?}");
        assert_eq!(c.below(0), 0);
        assert_eq!(c.below(1), 0);
    }
}
