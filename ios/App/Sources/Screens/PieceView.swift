import RestwaterKit
import SwiftUI

/// One piece: a key that turns round while it is touched, a picture that is aimed at, a line that is typed, or words.
struct PieceView: View {
    let piece: Piece
    let ink: Ink
    let tap: (Ask) -> Void
    let aim: (CGPoint) -> Void

    var body: some View {
        content
            .accessibilityLabel(Text(verbatim: piece.spoken))
            .accessibilityAddTraits(traits)
            .accessibilityHidden(piece.spoken.isEmpty)
            .accessibilitySortPriority(-piece.order)
            .accessibilityIdentifier(piece.tag)
    }

    @ViewBuilder private var content: some View {
        if let field = piece.field {
            FieldView(field: field, ink: ink, tap: tap)
        } else if let ask = piece.ask {
            Button { tap(ask) } label: { Color.clear }
                .buttonStyle(TurnsRound(piece: piece, ink: ink))
                .disabled(!piece.enabled)
        } else if piece.aims {
            MarkCanvas(marks: piece.marks, ink: ink)
                .contentShape(Rectangle())
                .onTapGesture(coordinateSpace: .local) { aim($0) }
        } else {
            MarkCanvas(marks: piece.marks, ink: ink).allowsHitTesting(false).accessibilityElement()
        }
    }

    private var traits: AccessibilityTraits {
        var traits: AccessibilityTraits = []
        switch piece.role {
        case .heading: traits.insert(.isHeader)
        case .picture: traits.insert(.isImage)
        case .key, .tab: traits.insert(.isButton)
        case .words: break
        }
        if piece.selected { traits.insert(.isSelected) }
        if piece.announced { traits.insert(.updatesFrequently) }
        return traits
    }
}

/// Ink for paper while a thumb is on it; it acts when the thumb lifts.
private struct TurnsRound: ButtonStyle {
    let piece: Piece
    let ink: Ink

    func makeBody(configuration: Configuration) -> some View {
        let touched = configuration.isPressed && !piece.pressed.isEmpty
        MarkCanvas(marks: touched ? piece.pressed : piece.marks, ink: ink).contentShape(Rectangle())
    }
}
