import RestwaterKit
import SwiftUI

/// Draws marks and nothing else: the view that shows them says what is spoken.
struct MarkCanvas: View, Equatable {
    let marks: [Mark]
    let look: Look

    var body: some View {
        Canvas { context, _ in
            for mark in marks { draw(mark, in: &context) }
        }
    }

    private func draw(_ mark: Mark, in context: inout GraphicsContext) {
        switch mark {
        case .fill(let outline, let tint):
            context.fill(Path(outline), with: .color(Color(look.ink, tint)))
        case .line(let outline, let tint, let stroke):
            context.stroke(Path(outline), with: .color(Color(look.ink, tint)), style: StrokeStyle(stroke))
        case .text(let letter):
            draw(letter, in: context)
        case .inside(let outline, let marks):
            var clipped = context
            clipped.clip(to: Path(outline))
            for mark in marks { draw(mark, in: &clipped) }
        }
    }

    private func draw(_ letter: Letter, in context: GraphicsContext) {
        let text = Text(verbatim: letter.text)
            .font(look.font(letter))
            .foregroundStyle(Color(look.ink, letter.tint))
        let resolved = context.resolve(text)
        let room = CGSize(width: CGFloat.infinity, height: CGFloat.infinity)
        var moved = context
        moved.translateBy(x: letter.at.x, y: letter.at.y - resolved.firstBaseline(in: room))
        moved.draw(resolved, at: .zero, anchor: .topLeading)
    }
}
