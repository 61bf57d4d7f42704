import RestwaterKit
import SwiftUI

/// The screens, or the reason why there are none.
struct RootView: View {
    let phone: Phone
    @ObservedObject var opening: Opening
    @Environment(\.scenePhase) private var scenePhase
    @Environment(\.colorSchemeContrast) private var contrast

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
            GlassReader(paper: Color(look.ink, .paper)) { measure in
                PiecesView(sheet: opening.trouble(on: measure, letters: .phone(bold: false)), look: look) { ask in
                    if ask == .salvage { opening.salvage() }
                } aim: { _ in
                }
            }
            .preferredColorScheme(opening.settings.scheme == .day ? .light : .dark)
        }
    }

    /// As last chosen: white paper would blind at night.
    private var look: Look { Look(ink: .of(opening.settings.scheme, increasedContrast: contrast == .increased)) }
}
