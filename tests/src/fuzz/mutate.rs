//! Seeded mutation of stored inputs, for systems without libFuzzer: it is not guided by coverage.

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// Pieces that get further into a parser than random bytes do.
const PIECES: &[&[u8]] = &[
    b"\x1e",
    b"\n",
    b"{",
    b"}",
    b"[",
    b"]",
    b"\"",
    b",",
    b":",
    b"null",
    b"true",
    b"-0",
    b"1e400",
    b"9007199254740993",
    b"18446744073709551616",
    b"\\ud800",
    b"\\u0000",
    b"\xff",
    b"\xc3\x28",
    b"\"amends\":",
    b"\"targets\":[]",
    b"\"kind\":\"undone\"",
    b"\"kind\":\"later\"",
    b"\"rod\":0",
    b"\"rod\":255",
    b"\"hlc\":\"999999999999999-999999\"",
    b"=1+1",
    b"@",
    b"'",
    b"\r\n",
    b"\"\"",
    b"\t",
    b"{\"count\":0,\"ids\":\"",
    b"\"at\": \"24:00:00\"",
    b"#",
];

/// Makes inputs from stored ones.
pub struct Mutator {
    rng: ChaCha8Rng,
    kept: Vec<Vec<u8>>,
}

impl Mutator {
    /// Longest input made, in bytes.
    pub const LONGEST: usize = 1 << 16;

    /// A mutator of these inputs; the same seed makes the same inputs.
    pub fn new(seed: u64, kept: Vec<Vec<u8>>) -> Self {
        Self { rng: ChaCha8Rng::seed_from_u64(seed), kept }
    }

    /// The next input.
    pub fn make(&mut self) -> Vec<u8> {
        let mut input = self.pick();
        for _ in 0..self.rng.random_range(1..=6) {
            self.change(&mut input);
        }
        input.truncate(Self::LONGEST);
        input
    }

    fn pick(&mut self) -> Vec<u8> {
        if self.kept.is_empty() {
            return Vec::new();
        }
        let n = self.rng.random_range(0..self.kept.len());
        self.kept[n].clone()
    }

    fn change(&mut self, input: &mut Vec<u8>) {
        let at = self.rng.random_range(0..=input.len());
        let len = self.rng.random_range(0..=(input.len() - at).min(64));
        match self.rng.random_range(0..8) {
            0 if at < input.len() => input[at] ^= 1 << self.rng.random_range(0..8),
            1 if at < input.len() => input[at] = self.rng.random(),
            2 => drop(input.drain(at..at + len)),
            3 => input.truncate(at),
            4 => {
                let again = input[at..at + len].to_vec();
                drop(input.splice(at..at, again));
            }
            5 => {
                let other = self.pick();
                let from = self.rng.random_range(0..=other.len());
                input.truncate(at);
                input.extend(&other[from..]);
            }
            _ => {
                let piece = PIECES[self.rng.random_range(0..PIECES.len())];
                drop(input.splice(at..at + len.min(piece.len()), piece.iter().copied()));
            }
        }
    }
}
