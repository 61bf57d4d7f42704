import RestwaterKit
import SwiftUI

/// Every piece of a sheet at its place, whatever the direction of the language.
struct PiecesView: View {
    let sheet: Sheet
    let look: Look
    let tap: (Ask) -> Void
    let aim: (CGPoint) -> Void
    /// How far the pieces are moved up, so that a keyboard does not cover the line that is typed.
    var lift = 0.0
    /// Told of the line, by its tag, that begins or ends to be typed.
    var typing: (String, Bool) -> Void = { _, _ in }

    var body: some View {
        ZStack(alignment: .topLeading) {
            ForEach(sheet.pieces) { piece in
                PieceView(piece: piece, look: look, tap: tap, aim: aim, typing: { typing(piece.tag, $0) })
                    .equatable()
                    .frame(width: piece.place.width, height: piece.place.height)
                    .offset(x: piece.place.left, y: piece.place.top - lift)
            }
        }
        .environment(\.layoutDirection, .leftToRight)
        .accessibilityElement(children: .contain)
    }
}
