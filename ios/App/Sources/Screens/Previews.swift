#if DEBUG
import RestwaterKit
import SwiftUI

/// The Bank with a log of its own in a temporary folder, by day.
struct SheetView_Previews: PreviewProvider {
    static var previews: some View {
        PreviewScreen(contacts: Contacts())
    }
}

/// Opens that log, begins a session and casts.
private struct PreviewScreen: View {
    let contacts: Contacts
    @StateObject private var opening = Opening(
        folder: FileManager.default.temporaryDirectory.appendingPathComponent("preview-\(UUID().uuidString)", isDirectory: true)
    )

    var body: some View {
        Group {
            if case .open(let state) = opening.stage { SheetView(state: state, contacts: contacts) }
        }
        .task {
            do {
                let state = try await opening.ready()
                state.phase(.active)
                state.tap(.start(.send(action: .startSession(setup: nil))))
                await state.settled()
                // A tap within the time of a double tap after START would count as one.
                try await Task.sleep(for: .seconds(1))
                if let cast = OutsideKey(id: "CAST") { _ = try await state.tapFromOutside(cast) }
            } catch {
                Log.fault("opening the preview's log", error)
            }
        }
    }
}
#endif
