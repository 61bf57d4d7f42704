import RestwaterKit
import SwiftUI
import UIKit

/// Provides the measures of the screen that can be used: its size in points, what the system reserves, and how large a millimetre
/// and the text are. At the sides, where the camera is if the phone is on its side, nothing is drawn.
struct GlassReader<Content: View>: View {
    let paper: Color
    @ViewBuilder let content: (GlassMeasure) -> Content
    /// Grows with the text size of the phone, to the largest of the accessibility sizes.
    @ScaledMetric(relativeTo: .body) private var hundred: CGFloat = 100

    var body: some View {
        // The outer reader is made smaller by a keyboard, the inner one is not: what is drawn keeps its places, and the difference
        // is what the keyboard covers.
        GeometryReader { outside in
            GeometryReader { inside in
                let edges = inside.safeAreaInsets
                let height = inside.size.height + edges.top + edges.bottom
                ZStack(alignment: .topLeading) {
                    paper
                    content(measure(inside, keyboard: outside.safeAreaInsets.bottom))
                        .frame(width: inside.size.width, height: height, alignment: .topLeading)
                        .offset(x: edges.leading)
                }
                .frame(width: inside.size.width + edges.leading + edges.trailing, height: height, alignment: .topLeading)
                .ignoresSafeArea()
                .statusBarHidden(inside.size.width > height)
            }
            .ignoresSafeArea(.keyboard)
        }
    }

    private func measure(_ inside: GeometryProxy, keyboard: CGFloat) -> GlassMeasure {
        let edges = inside.safeAreaInsets
        var measure = GlassMeasure(
            width: inside.size.width, height: inside.size.height + edges.top + edges.bottom,
            pointsPerMm: GlassMeasure.pointsPerMmHere, textScale: Double(hundred) / 100, insetTop: edges.top, insetBottom: edges.bottom
        )
        measure.keyboard = keyboard > edges.bottom ? keyboard : 0
        return measure
    }
}

extension GlassMeasure {
    /// Points per millimetre of this phone's screen.
    @MainActor static var pointsPerMmHere: Double {
        let screen = UIScreen.main
        return pointsPerMm(
            pixelWidth: screen.nativeBounds.width, pixelHeight: screen.nativeBounds.height, pixelsPerPoint: screen.nativeScale
        )
    }
}
