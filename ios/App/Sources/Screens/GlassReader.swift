import RestwaterKit
import SwiftUI
import UIKit

/// Provides the measures of the whole screen: its size in points, what the system reserves, and how large a millimetre
/// and the text are.
struct GlassReader<Content: View>: View {
    @ViewBuilder let content: (GlassMeasure) -> Content
    /// Grows with the text size of the phone, to the largest of the accessibility sizes.
    @ScaledMetric(relativeTo: .body) private var hundred: CGFloat = 100

    var body: some View {
        GeometryReader { inside in
            let edges = inside.safeAreaInsets
            content(
                GlassMeasure(
                    width: inside.size.width + edges.leading + edges.trailing,
                    height: inside.size.height + edges.top + edges.bottom,
                    pointsPerMm: GlassMeasure.pointsPerMmHere, textScale: Double(hundred) / 100, insetTop: edges.top, insetBottom: edges.bottom
                )
            )
            .frame(
                width: inside.size.width + edges.leading + edges.trailing, height: inside.size.height + edges.top + edges.bottom,
                alignment: .topLeading
            )
            .ignoresSafeArea()
        }
        // A keyboard covers the lower keys while a name is typed; the rest stays where it is.
        .ignoresSafeArea(.keyboard)
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
