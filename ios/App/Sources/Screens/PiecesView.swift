import RestwaterKit
import SwiftUI

/// Every piece of a sheet at its place, whatever the direction of the language.
struct PiecesView: View {
    let sheet: Sheet
    let look: Look
    let tap: (Ask) -> Void
    let aim: (CGPoint) -> Void

    var body: some View {
        ZStack(alignment: .topLeading) {
            Color(look.ink, .paper)
            ForEach(sheet.pieces) { piece in
                PieceView(piece: piece, look: look, tap: tap, aim: aim)
                    .equatable()
                    .frame(width: piece.place.width, height: piece.place.height)
                    .offset(x: piece.place.left, y: piece.place.top)
            }
        }
        .environment(\.layoutDirection, .leftToRight)
        .accessibilityElement(children: .contain)
    }
}
