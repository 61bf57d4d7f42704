import RestwaterKit
import SwiftUI

/// Converts the kit's plain values to SwiftUI's.
extension Color {
    init(_ ink: Ink, _ tint: Tint) {
        let parts = ink.parts(tint)
        self.init(.sRGB, red: parts.red, green: parts.green, blue: parts.blue, opacity: 1)
    }
}

extension StrokeStyle {
    init(_ stroke: Stroke) {
        self.init(
            lineWidth: stroke.width, lineCap: stroke.round ? .round : .butt, lineJoin: .miter, miterLimit: 10,
            dash: stroke.dashes.map { CGFloat($0) }, dashPhase: 0
        )
    }
}

extension Path {
    init(_ outline: Outline) {
        self.init()
        for part in outline.parts {
            switch part {
            case .move(let to): move(to: CGPoint(x: to.x, y: to.y))
            case .line(let to): addLine(to: CGPoint(x: to.x, y: to.y))
            case .close: closeSubpath()
            case .rect(let rect, let corner):
                let place = CGRect(x: rect.left, y: rect.top, width: rect.width, height: rect.height)
                if corner > 0 { addRoundedRect(in: place, cornerSize: CGSize(width: corner, height: corner)) } else { addRect(place) }
            case .circle(let at, let radius):
                addEllipse(in: CGRect(x: at.x - radius, y: at.y - radius, width: 2 * radius, height: 2 * radius))
            case .leftHalf(let at, let radius):
                move(to: CGPoint(x: at.x, y: at.y - radius))
                // In a canvas y points down, so SwiftUI calls the direction from top over left to bottom anticlockwise.
                addArc(
                    center: CGPoint(x: at.x, y: at.y), radius: radius, startAngle: .degrees(-90), endAngle: .degrees(90), clockwise: true
                )
                closeSubpath()
            }
        }
    }
}
