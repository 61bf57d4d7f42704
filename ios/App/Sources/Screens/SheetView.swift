import RestwaterKit
import SwiftUI

/// The screen that shows, drawn from the one state. Reads the clock again each second while the app is in front.
struct SheetView: View {
    @ObservedObject var state: RestwaterState
    let contacts: Contacts
    @Environment(\.scenePhase) private var scenePhase

    var body: some View {
        GlassReader { measure in
            let sheet = Sheet.of(state.seen, on: measure, letters: .phone)
            PiecesView(sheet: sheet, ink: .of(state.seen.scheme)) { ask in
                if contacts.tapCounts { state.tap(ask) }
            } aim: { point in
                if contacts.tapCounts { state.aim(x: point.x, y: point.y) }
            }
            .onChange(of: sheet.fan, initial: true) { _, place in state.placeFan(place) }
            .onChange(of: sheet.scene, initial: true) { _, place in state.placeScene(place) }
        }
        .preferredColorScheme(state.seen.scheme == .day ? .light : .dark)
        .persistentSystemOverlays(.hidden)
        .task(id: scenePhase) {
            while scenePhase == .active && !Task.isCancelled {
                state.refresh()
                try? await Task.sleep(for: .seconds(1))
            }
        }
        .onChange(of: state.seen.notice) { _, notice in
            if !notice.isEmpty { AccessibilityNotification.Announcement(notice).post() }
        }
    }
}
