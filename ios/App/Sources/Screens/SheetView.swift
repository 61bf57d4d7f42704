import RestwaterKit
import SwiftUI

/// The open screen, drawn from the one state. Reads the clock again each second while the app is in the foreground; a piece that
/// has not changed is not redrawn.
struct SheetView: View {
    @ObservedObject var state: RestwaterState
    let contacts: Contacts
    /// The line that is being typed, by its tag.
    @State private var typing: String?
    @Environment(\.scenePhase) private var scenePhase
    @Environment(\.legibilityWeight) private var legibilityWeight
    @Environment(\.colorSchemeContrast) private var contrast

    var body: some View {
        GlassReader(paper: Color(look.ink, .paper)) { measure in
            let sheet = Sheet.of(state.content, on: measure, letters: .phone(bold: look.bold))
            let lift = typing.map { sheet.lifted(for: $0, on: measure) } ?? 0
            PiecesView(
                sheet: sheet, look: look, tap: { ask in counted { state.tap(ask) } },
                aim: { point in counted { state.aim(x: point.x, y: point.y) } }, lift: lift,
                typing: { tag, now in if now { typing = tag } else if typing == tag { typing = nil } }
            )
            .overlay { RejectedFrame(count: state.content.rejectedTaps, color: Color(look.ink, .accent)) }
            .onChange(of: sheet) { old, new in tell(Sheet.announcements(from: old, to: new)) }
            .onChange(of: sheet.fan, initial: true) { _, place in state.placeFan(place) }
            .onChange(of: sheet.scene, initial: true) { _, place in state.placeScene(place) }
        }
        .preferredColorScheme(state.content.scheme == .day ? .light : .dark)
        .persistentSystemOverlays(.hidden)
        // At an edge a thumb taps a key first, and only its second swipe goes to the system.
        .defersSystemGestures(on: .all)
        .task(id: scenePhase) {
            while scenePhase == .active && !Task.isCancelled {
                state.tick()
                do { try await Task.sleep(for: .seconds(1)) } catch { return }
            }
        }
    }

    /// In one announcement, since a second one would cut the first one off.
    private func tell(_ sentences: [String]) {
        if !sentences.isEmpty { AccessibilityNotification.Announcement(sentences.joined(separator: "\n")).post() }
    }

    private var look: Look {
        Look(ink: .of(state.content.scheme, increasedContrast: contrast == .increased), bold: legibilityWeight == .bold)
    }

    private func counted(_ tap: () -> Void) {
        if contacts.tapCounts { tap() } else { state.tapRejected() }
    }
}

/// A frame around the screen for a moment after a rejected tap.
private struct RejectedFrame: View {
    let count: Int
    let color: Color
    @State private var shows = false

    var body: some View {
        Rectangle()
            .strokeBorder(color, lineWidth: 10)
            .opacity(shows ? 1 : 0)
            .allowsHitTesting(false)
            .accessibilityHidden(true)
            .task(id: count) {
                guard count > 0 else { return }
                shows = true
                do { try await Task.sleep(for: .milliseconds(600)) } catch { return }
                shows = false
            }
    }
}
