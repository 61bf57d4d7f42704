import Foundation
import RestwaterCore

/// The colours of a scheme, as sRGB. Shapes and words carry the meaning; these only make them readable.
public struct Ink: Equatable, Sendable {
    let paper, ink, soft, water, accent: UInt32

    /// Ink on paper: daylight.
    public static let day = Ink(paper: 0xFBF8F1, ink: 0x14181C, soft: 0x454C53, water: 0xE9EEF0, accent: 0x8F2C00)
    /// Chalk on ink: night.
    public static let night = Ink(paper: 0x10151A, ink: 0xF3EFE4, soft: 0xB9C0C6, water: 0x1A242C, accent: 0xFF9D5C)

    /// The colours of a scheme. If the phone asks for more contrast, everything is drawn in full ink on the plainest
    /// paper; shapes carry the meaning of the softer tints.
    public static func of(_ scheme: Scheme, increasedContrast: Bool = false) -> Ink {
        switch (scheme, increasedContrast) {
        case (.day, false): .day
        case (.night, false): .night
        case (.day, true): Ink(paper: 0xFFFFFF, ink: 0x000000, soft: 0x000000, water: 0xF4F6F7, accent: 0x7A2100)
        case (.night, true): Ink(paper: 0x000000, ink: 0xFFFFFF, soft: 0xFFFFFF, water: 0x12181D, accent: 0xFFC59A)
        }
    }

    /// 0xRRGGBB of a tint.
    public func rgb(_ tint: Tint) -> UInt32 {
        switch tint {
        case .paper: paper
        case .ink: ink
        case .soft: soft
        case .water: water
        case .accent: accent
        }
    }

    /// Red, green and blue of a tint, 0 to 1.
    public func parts(_ tint: Tint) -> (red: Double, green: Double, blue: Double) {
        let all = rgb(tint)
        func part(_ shift: UInt32) -> Double { Double(all >> shift & 0xFF) / 255 }
        return (part(16), part(8), part(0))
    }

    /// Contrast of two tints as WCAG 2.2 defines it: (lighter + 0.05) / (darker + 0.05) in relative luminance.
    public func contrast(_ a: Tint, _ b: Tint) -> Double {
        let light = [luminance(parts(a)), luminance(parts(b))].sorted()
        return (light[1] + 0.05) / (light[0] + 0.05)
    }
}

/// Relative luminance as WCAG 2.2 defines it, from sRGB.
private func luminance(_ c: (red: Double, green: Double, blue: Double)) -> Double {
    func linear(_ v: Double) -> Double { v <= 0.04045 ? v / 12.92 : pow((v + 0.055) / 1.055, 2.4) }
    return 0.2126 * linear(c.red) + 0.7152 * linear(c.green) + 0.0722 * linear(c.blue)
}
