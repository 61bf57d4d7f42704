import RestwaterKit
import SwiftUI

/// The screens, or the reason why there are none.
struct RootView: View {
    let phone: Phone
    @ObservedObject var opening: Opening
    @Environment(\.scenePhase) private var scenePhase

    var body: some View {
        content
            .onChange(of: scenePhase, initial: true) { _, now in phone.phase(now) }
            .onOpenURL { phone.session.takeIn($0) }
    }

    @ViewBuilder private var content: some View {
        switch opening.stage {
        case .open(let state):
            SheetView(state: state, contacts: phone.session.contacts).fileDialogs(of: state)
        case .opening, .failed:
            GlassReader { measure in
                PiecesView(sheet: opening.trouble(on: measure, letters: .phone(bold: false)), look: Look(ink: .day)) { ask in
                    if ask == .salvage { opening.salvage() }
                } aim: { _ in
                }
            }
        }
    }
}
