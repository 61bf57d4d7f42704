import RestwaterKit
import SwiftUI

/// A line that is typed, and passed on letter by letter.
struct FieldView: View {
    let field: Field
    let spoken: String
    let ink: Ink
    let tap: (Ask) -> Void
    @State private var typed = ""
    @FocusState private var typing: Bool

    var body: some View {
        HStack(spacing: field.em) {
            Text(verbatim: field.label).font(Look.font(.medium, size: field.em)).accessibilityHidden(true)
            VStack(spacing: 2) {
                TextField("", text: $typed)
                    .font(Look.font(.bold, size: field.em * 1.2))
                    .focused($typing)
                    // Latitude and longitude may be negative, and the decimal pad has no sign.
                    .keyboardType(field.takesFigure ? .numbersAndPunctuation : .default)
                    .submitLabel(.done)
                    .autocorrectionDisabled()
                    .accessibilityLabel(Text(verbatim: spoken))
                Rectangle().frame(height: 1)
            }
        }
        .foregroundStyle(Color(ink, .ink))
        .tint(Color(ink, .accent))
        // The core's answer to a letter must not overtake the next letter.
        .onChange(of: field.value, initial: true) { _, value in if !typing || field.isHeld { typed = value } }
        .onChange(of: typed) { _, text in if typing { tap(field.ask(text)) } }
    }
}
