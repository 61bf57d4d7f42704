import Foundation

/// A sine with some of its octave and twelfth, which a small loudspeaker plays better than the fundamental; -1 to 1.
func wave(_ turns: Double) -> Double {
    let x = 2 * Double.pi * turns
    return 0.55 * sin(x) + 0.3 * sin(2 * x) + 0.15 * sin(3 * x)
}
