import RestwaterKit
import SwiftUI

/// The screens, or why there are none.
struct RootView: View {
    let phone: Phone
    @Environment(\.scenePhase) private var scenePhase

    var body: some View {
        content
            .onChange(of: scenePhase, initial: true) { _, now in phone.phase(now) }
            .onOpenURL { phone.takeIn($0) }
    }

    @ViewBuilder private var content: some View {
        switch phone.state {
        case .success(let state):
            SheetView(state: state, contacts: phone.contacts).fileExchange(of: state)
        case .failure(let refusal):
            GlassReader { measure in
                PiecesView(sheet: .trouble(refusal.text, on: measure, letters: .phone), ink: .day) { _ in } aim: { _ in }
            }
        }
    }
}
