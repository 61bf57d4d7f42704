import RestwaterKit
import SwiftUI
import UIKit

/// A line that is typed, and passed on letter by letter. Its label and its line are marks of its piece.
struct FieldView: View {
    let field: Field
    let spoken: String
    let ink: Ink
    let tap: (Ask) -> Void
    /// Told when it begins or ends to be typed.
    let typing: (Bool) -> Void
    @State private var typed = ""
    @State private var line = TypedText()
    @FocusState private var focused: Bool

    var body: some View {
        TextField("", text: $typed)
            .font(Look.font(.bold, size: field.em))
            .focused($focused)
            .keyboardType(keyboard)
            .textInputAutocapitalization(capitals)
            .submitLabel(.done)
            .autocorrectionDisabled()
            .accessibilityLabel(Text(verbatim: spoken))
            .foregroundStyle(Color(ink, .ink))
            .tint(Color(ink, .accent))
            .onChange(of: field.value, initial: true) { _, value in answered(value, typing: focused) }
            .onChange(of: typed) { _, text in
                guard text != line.shown else { return }
                line.typed(text)
                tap(field.ask(text))
            }
            .onChange(of: focused) { _, now in
                answered(field.value, typing: now)
                typing(now)
            }
    }

    private func answered(_ value: String, typing: Bool) {
        line.answered(value, typing: typing)
        typed = line.shown
    }

    private var keyboard: UIKeyboardType {
        switch field.keyboard {
        case .name, .text: .default
        // A figure has a unit, and degrees may be negative: the decimal pad has neither letters nor a sign.
        case .figure, .degrees: .numbersAndPunctuation
        }
    }

    private var capitals: TextInputAutocapitalization {
        switch field.keyboard {
        case .name: .words
        case .text: .sentences
        case .figure, .degrees: .never
        }
    }
}
