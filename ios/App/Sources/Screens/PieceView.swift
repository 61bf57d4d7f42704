import RestwaterKit
import SwiftUI

/// One piece: a key that inverts while it is touched, a picture to aim at, a line to type, or words.
struct PieceView: View, Equatable {
    let piece: Piece
    let look: Look
    let tap: (Ask) -> Void
    let aim: (CGPoint) -> Void
    /// Whether its line is being typed.
    let typing: (Bool) -> Void

    /// Only what is drawn and spoken decides whether it is drawn again; a tap always calls the same state.
    nonisolated static func == (a: PieceView, b: PieceView) -> Bool { a.piece == b.piece && a.look == b.look }

    var body: some View {
        content
            .accessibilitySortPriority(-piece.order)
            .accessibilityIdentifier(piece.tag)
    }

    @ViewBuilder private var content: some View {
        if let field = piece.field {
            ZStack(alignment: .topLeading) {
                MarkCanvas(marks: piece.marks, look: look).allowsHitTesting(false).accessibilityHidden(true)
                FieldView(field: field, spoken: piece.spoken, ink: look.ink, tap: tap, typing: typing)
                    .frame(width: field.box.width, height: field.box.height)
                    .offset(x: field.box.left, y: field.box.top)
            }
        } else if let ask = piece.ask {
            Button {
                tap(ask)
            } label: {
                Color.clear
            }
            .buttonStyle(TurnsRound(piece: piece, look: look))
            .disabled(!piece.enabled)
            // What one sees is a canvas; VoiceOver, Voice Control and Switch Control find a button with its words.
            .accessibilityRepresentation {
                Button {
                    tap(ask)
                } label: {
                    Text(verbatim: piece.spoken)
                }
                .disabled(!piece.enabled)
                .accessibilityAddTraits(traits)
            }
        } else if piece.aims {
            spoken(MarkCanvas(marks: piece.marks, look: look))
                .contentShape(Rectangle())
                .onTapGesture(coordinateSpace: .local) { aim($0) }
        } else {
            spoken(MarkCanvas(marks: piece.marks, look: look)).allowsHitTesting(false)
        }
    }

    private func spoken(_ drawing: MarkCanvas) -> some View {
        drawing
            .accessibilityElement()
            .accessibilityLabel(Text(verbatim: piece.spoken))
            .accessibilityAddTraits(traits)
            .accessibilityHidden(piece.spoken.isEmpty)
    }

    private var traits: AccessibilityTraits {
        var traits: AccessibilityTraits = []
        switch piece.role {
        case .heading: traits.insert(.isHeader)
        case .picture: traits.insert(.isImage)
        case .key, .tab, .words: break
        }
        if piece.selected { traits.insert(.isSelected) }
        if !piece.announced.isEmpty { traits.insert(.updatesFrequently) }
        return traits
    }
}

/// Swaps ink and paper while a thumb is on it; it acts when the thumb lifts.
private struct TurnsRound: ButtonStyle {
    let piece: Piece
    let look: Look

    func makeBody(configuration: Configuration) -> some View {
        let touched = configuration.isPressed && !piece.pressed.isEmpty
        MarkCanvas(marks: touched ? piece.pressed : piece.marks, look: look).contentShape(Rectangle())
    }
}
